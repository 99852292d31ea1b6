"""What differs between two setups: changes, derived for names and texts and to make options.

A change is a lining at a place, a lamp added, removed or replaced, or a dial turned at a
place; what none of these can say (another outline, other bands or obstacles) is a part
built anew. Changes are never stored.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Collection, Iterator, Sequence
from dataclasses import dataclass
from typing import Any, Final, TypeVar, cast

from planner.language import inside, word
from planner.plan import edits
from planner.plan.dials import dial
from planner.plan.groups import all_things, thing_at
from planner.plan.lamp import Lamp, LampModel
from planner.plan.lining import Lining
from planner.plan.place import OWN, Place, PlaceKind, every, judged, lining_at, surfaces
from planner.plan.plan import Setup
from planner.plan.tiers import canopy_under
from planner.units import LengthUnit, capital, listed

_Setup = TypeVar("_Setup", bound=Setup)
_SAME: Final = 1e-6


@dataclass(frozen=True)
class Lined:
    """A lining at a place."""

    place: Place
    lining: Lining


@dataclass(frozen=True)
class Hung:
    """A lamp added (``index`` None), removed (``lamp`` None) or replaced by another model."""

    index: int | None
    lamp: Lamp | None


@dataclass(frozen=True)
class Turned:
    """A dial turned to a value at a place."""

    dial: str
    place: Place
    value: float


@dataclass(frozen=True)
class Rebuilt:
    """A part that was built anew: ``words`` says which and how."""

    words: str


Change = Lined | Hung | Turned | Rebuilt


_TURNED: Final[dict[PlaceKind, tuple[str, ...]]] = {
    PlaceKind.SPACE: (
        "width", "depth", "space-height", "canopy", "canopy-reflectance", "photoperiod",
    ),
    PlaceKind.WALL: ("band-edge", "dirt"),
    PlaceKind.OBSTACLE: (
        "obstacle-x", "obstacle-y", "underside", "obstacle-length", "obstacle-width",
        "thickness", "obstacle-rotation",
    ),
    PlaceKind.LAMP: (
        "height", "output", "lamp-x", "lamp-y", "lamp-rotation", "tilt", "hours-run", "dust",
    ),
}  # fmt: skip
"""The dials that tell two setups apart, by the kind of place they are at."""


# -- one change -------------------------------------------------------------------------


def apply(setup: _Setup, change: Change) -> _Setup:
    """The setup (or plan) with one change made; raises ``ValueError`` when it does not fit."""
    match change:
        case Lined():
            return line(setup, change.place, change.lining)
        case Turned():
            _need(setup, change.place)
            turned: Any = dial(change.dial).put(cast("Any", setup), change.place, change.value)
            made: _Setup = turned
            return made
        case Hung():
            return _hang(setup, change)
    raise ValueError(f"{change.words}: this cannot be made as one change.")


def _need(setup: Setup, place: Place) -> None:
    if not place.fits(setup):
        band = "" if place.band is None else f", band {place.band + 1}"
        raise ValueError(f"there is no {word(place.kind)} {place.index + 1}{band} here.")


def line(setup: _Setup, place: Place | None, lining: Lining) -> _Setup:
    """The setup (or plan) with a lining at a place, or on all walls over their whole height."""
    if place is None:
        return edits.line_all_walls(setup, lining)
    _need(setup, place)
    if any(old.key == lining.key for old in setup.linings):
        setup = edits.change_lining(setup, lining)
    match place.kind:
        case PlaceKind.WALL:
            bands = range(len(setup.walls[place.index].bands))
            for band in bands if place.band is None else (place.band,):
                setup = edits.line_wall(setup, place.index, band, lining)
            return setup
        case PlaceKind.CEILING:
            return edits.line_ceiling(setup, lining)
        case PlaceKind.FLOOR:
            return edits.line_floor(setup, lining)
        case PlaceKind.OBSTACLE:
            return edits.change_obstacle(setup, place.index, lining, lining=lining.key)
    raise ValueError(f"a {word(place.kind)} has no lining.")


def refit(setup: _Setup, place: Place | None, model: LampModel) -> _Setup:
    """The setup (or plan) with a lamp, or every lamp, replaced by one of another kind.

    One of another kind is new; of the same kind it is the same lamp, its numbers corrected.
    """
    if not setup.lamps:
        raise ValueError("no lamp hangs in the space; hang one first.")
    if place is not None:
        _need(setup, place)
    for index in range(len(setup.lamps)) if place is None else (place.index,):
        same = setup.lamps[index].model.key == model.key
        new: dict[str, float] = {} if same else {"hours_run": 0.0, "dust": 0.0}
        setup = edits.change_lamp(setup, index, model=model, **new)
    return setup


def _hang(setup: _Setup, change: Hung) -> _Setup:
    if change.index is None:
        return setup if change.lamp is None else edits.add_lamp(setup, change.lamp)
    place = Place(PlaceKind.LAMP, change.index)
    if change.lamp is not None:
        return refit(setup, place, change.lamp.model)
    _need(setup, place)
    return edits.remove_lamp(setup, change.index)


# -- what differs -----------------------------------------------------------------------


def differences(one: Setup, other: Setup) -> tuple[Change, ...]:
    """What leads from one setup to another, as far as light, hours and energy go."""
    # Stretching the outline takes lamps and obstacles along.
    along = _taken_along(one, other) if _stretched(one, other) else one
    return (
        *_of_the_space(one, other),
        *_of_linings(one, other),
        *_of_obstacles(along, other),
        *_of_lamps(along, other),
    )


def _taken_along(one: Setup, other: Setup) -> Setup:
    """The setup with its lamps and obstacles where the other's width and depth put them."""
    x0, y0, x1, y1 = one.space.bounds
    u0, v0, u1, v1 = other.space.bounds
    sx, sy = (u1 - u0) / (x1 - x0), (v1 - v0) / (y1 - y0)
    moved = {
        part: tuple(
            thing.model_copy(update={"x": u0 + (thing.x - x0) * sx, "y": v0 + (thing.y - y0) * sy})
            for thing in getattr(one, part)
        )
        for part in ("lamps", "obstacles")
    }
    return one.setup.model_copy(update=moved)


def moved_besides(one: Setup, other: Setup, meant: Collection[Place] = ()) -> tuple[str, str]:
    """Lamps and obstacles that an edit moved without meaning them, and a sentence about them.

    Empty where it moved none. Of a canopy that was moved away from under lamps it says that
    these stay.
    """
    if (len(one.lamps), len(one.obstacles)) != (len(other.lamps), len(other.obstacles)):
        return "", ""
    shifted = [
        place
        for place in all_things(one)
        if place not in meant and math.dist(_spot(one, place), _spot(other, place)) > _SAME
    ]
    names, sentences = "", []
    if shifted:
        names = in_words(one, shifted)
        flat = [math.dist(_spot(one, p)[:2], _spot(other, p)[:2]) > _SAME for p in shifted]
        stretched = any(flat) and _stretched(one, other) and one.space.bounds != other.space.bounds
        if stretched:
            how = "moved too, in proportion"
        elif any(flat):
            how = "moved too, to stay inside the walls"
        elif other.space.height < one.space.height:
            how = "came down too, to stay under the ceiling"
        else:
            how = "went with it"
        sentences.append(f"{capital(names)} {how}.")
    for place in meant:
        top = Place(PlaceKind.TOP, place.index)
        if place.kind is not PlaceKind.OBSTACLE or _spot(one, place) == _spot(other, place):
            continue
        over = [
            lamp
            for lamp in every(one, PlaceKind.LAMP)
            if canopy_under(one, one.lamps[lamp.index]) == top
            and _spot(one, lamp) == _spot(other, lamp)
        ]
        if over:
            sentences.append(f"{capital(in_words(one, over))} over its canopy did not move.")
    return names, " ".join(sentences)


def in_words(plan: Setup, places: Sequence[Place]) -> str:
    """Things of a plan in words: 'lamps 3 and 4 and Upper tier'."""
    numbers = [str(place.index + 1) for place in places if place.kind is PlaceKind.LAMP]
    names = [plan.obstacles[p.index].name for p in places if p.kind is PlaceKind.OBSTACLE]
    lamps = []
    if numbers:
        lamps = [f"lamps {listed(numbers)}" if len(numbers) > 1 else f"lamp {numbers[0]}"]
    return listed([*lamps, *names])


def _spot(plan: Setup, place: Place) -> tuple[float, float, float]:
    """Where a lamp or an obstacle is, in metres, its height above the floor."""
    thing = thing_at(plan, place)
    high = plan.lamp_height(thing) if isinstance(thing, Lamp) else thing.underside
    return thing.x, thing.y, high


def _turned(one: Setup, other: Setup, old: Place, new: Place) -> Iterator[Turned]:
    for key in _TURNED[old.kind]:
        before, now = dial(key).get(one, old), dial(key).get(other, new)
        if now is not None and (before is None or not math.isclose(before, now, abs_tol=_SAME)):
            yield Turned(key, old, now)


def _of_the_space(one: Setup, other: Setup) -> Iterator[Change]:
    stretched = _stretched(one, other)
    if not stretched:
        yield Rebuilt("another outline")
    for turned in _turned(one, other, Place(), Place()):
        if stretched or turned.dial not in {"width", "depth"}:
            yield turned
    if one.space.door != other.space.door:
        door = other.space.door
        yield Rebuilt("no door" if door is None else f"door on wall {door + 1}")
    elif one.space.door_open != other.space.door_open:
        yield Rebuilt("door open" if other.space.door_open else "door shut")
    if other.space.door_open and not math.isclose(one.room_light, other.room_light):
        yield Turned("room-light", Place(), other.room_light)
    if other.room_light and not math.isclose(one.space.room_hours, other.space.room_hours):
        yield Turned("room-hours", Place(), other.space.room_hours)
    if one.canopy.closed != other.canopy.closed:
        yield Rebuilt("closed canopy" if other.canopy.closed else "open canopy")
    if other.canopy.closed and one.canopy.wavebands != other.canopy.wavebands:
        yield Rebuilt("grey canopy" if other.canopy.wavebands is None else "canopy with colours")
    by = judged(other)
    if judged(one) != by:
        yield Rebuilt(f"judged by {'its own canopy' if by == OWN else by.inside(other)}")


def _stretched(one: Setup, other: Setup) -> bool:
    """Whether the outlines differ at most in their width and depth."""
    if len(one.walls) != len(other.walls):
        return False

    def shape(setup: Setup) -> list[tuple[float, float]]:
        x0, y0, x1, y1 = setup.space.bounds
        return [((x - x0) / (x1 - x0), (y - y0) / (y1 - y0)) for x, y in setup.space.footprint]

    pairs = zip(shape(one), shape(other), strict=True)
    return all(math.dist(first, second) < _SAME for first, second in pairs)


def _of_linings(one: Setup, other: Setup) -> Iterator[Change]:
    there = set(surfaces(one))
    for place in surfaces(other):
        lining = lining_at(other, place)
        if lining is None:
            continue
        if place.kind is PlaceKind.WALL and not _same_bands(one, other, place.index):
            if place.band == 0 and place.index < len(one.walls):
                yield Rebuilt(_other_bands(place.index))
            if place.index >= len(one.walls):
                yield Lined(place.whole, lining)
            continue
        if place in there and lining != lining_at(one, place):
            yield Lined(place, lining)
        if place in there and place.kind is PlaceKind.WALL:
            yield from _turned(one, other, place, place)


def _same_bands(one: Setup, other: Setup, wall: int) -> bool:
    if wall >= len(one.walls):
        return False
    return len(one.walls[wall].bands) == len(other.walls[wall].bands)


def _of_obstacles(one: Setup, other: Setup) -> Iterator[Change]:
    if len(one.obstacles) != len(other.obstacles):
        yield Rebuilt(f"{_count(len(other.obstacles), 'obstacle')}")
        return
    for index in range(len(one.obstacles)):
        place = Place(PlaceKind.OBSTACLE, index)
        yield from _turned(one, other, place, place)


def _count(number: int, noun: str) -> str:
    return f"no {noun}" if number == 0 else f"{number} {noun}{'s' if number > 1 else ''}"


def _of_lamps(one: Setup, other: Setup) -> Iterator[Change]:
    pairs, gone, new = _matched(one.lamps, other.lamps)
    for old, now in pairs:
        if not _same_model(one.lamps[old], other.lamps[now]):
            yield Hung(old, other.lamps[now])
        places = (Place(PlaceKind.LAMP, index) for index in (old, now))
        for turned in _turned(one, other, *places):
            # A canopy that was raised moved every lamp nearer without touching it.
            stays = math.isclose(
                one.lamp_height(one.lamps[old]), other.lamp_height(other.lamps[now]), abs_tol=1e-6
            )
            if turned.dial != "height" or not stays:
                yield turned
    for index in reversed(gone):
        yield Hung(index, None)
    for index in new:
        yield Hung(None, other.lamps[index])


def _same_model(one: Lamp, other: Lamp) -> bool:
    rest = {"source": "", "note": ""}
    return one.model.model_copy(update=rest) == other.model.model_copy(update=rest)


def _matched(
    one: Sequence[Lamp], other: Sequence[Lamp]
) -> tuple[list[tuple[int, int]], list[int], list[int]]:
    """Which lamp became which: the same lamp, one at the same place, one of the same model.

    Where the counts are equal what is left over is matched in order; the rest was taken
    down or hung anew.
    """
    old, new = list(range(len(one))), list(range(len(other)))
    pairs: list[tuple[int, int]] = []
    rules: list[Callable[[Lamp, Lamp], bool]] = [
        lambda a, b: a == b,
        lambda a, b: math.dist((a.x, a.y), (b.x, b.y)) < _SAME and a.model.key == b.model.key,
        lambda a, b: math.dist((a.x, a.y), (b.x, b.y)) < _SAME,
        lambda a, b: a.model.key == b.model.key,
    ]
    if len(one) == len(other):
        rules.append(lambda _a, _b: True)
    for rule in rules:
        for first in list(old):
            second = next((k for k in new if rule(one[first], other[k])), None)
            if second is not None:
                pairs.append((first, second))
                old.remove(first)
                new.remove(second)
    return sorted(pairs), old, new


# -- words ------------------------------------------------------------------------------


ALL_WALLS: Final = "all walls"


def said(one: Setup, other: Setup, unit: LengthUnit = LengthUnit.CM) -> tuple[str, ...]:
    """What differs, a few words each: 'all walls, ceiling: Foil', 'lamp 1: output 35 %'."""
    changes, walls = differences(one, other), PlaceKind.WALL
    covers = [lining_at(other, place) for place in surfaces(other) if place.kind is walls]
    newly = any(isinstance(c, Lined) and c.place.kind is walls for c in changes)
    everywhere = newly and all(cover == covers[0] for cover in covers)
    # Of walls that are lined alike over their whole height their bands say nothing more.
    whole = {_other_bands(k) for k, wall in enumerate(other.walls) if len(wall.bands) == 1}
    lined: dict[str, list[str]] = {}
    found: list[str] = []
    for change in changes:
        if isinstance(change, Lined):
            where = inside(change.place.words(one))
            if everywhere and change.place.kind is walls:
                where = ALL_WALLS
            text = _lining_words(one, change.lining)
            if where not in lined.setdefault(text, []):
                lined[text].append(where)
            found += [text] if text not in found else []
            continue
        if isinstance(change, Turned) and _by_all_lamps(change, changes, one):
            text = f"all lamps: {_dial_words(change, unit)}"
        else:
            text = words(one, change, unit)
        if text not in found and not (everywhere and text in whole):
            found.append(text)
    return tuple(f"{', '.join(lined[text])}: {text}" if text in lined else text for text in found)


def _other_bands(wall: int) -> str:
    return f"wall {wall + 1}: other bands"


def _by_all_lamps(change: Turned, changes: Sequence[Change], one: Setup) -> bool:
    alike = [
        c
        for c in changes
        if isinstance(c, Turned) and (c.dial, c.value) == (change.dial, change.value)
    ]
    return change.place.kind is PlaceKind.LAMP and len(alike) == len(one.lamps) > 1


def words(setup: Setup, change: Change, unit: LengthUnit = LengthUnit.CM) -> str:
    """One change of a setup in a few words."""
    match change:
        case Rebuilt():
            return change.words
        case Lined():
            lining = _lining_words(setup, change.lining)
            return f"{inside(change.place.words(setup))}: {lining}"
        case Turned():
            text = _dial_words(change, unit)
            if change.place.kind is PlaceKind.SPACE:
                return text
            return f"{inside(change.place.words(setup))}: {text}"
        case Hung():
            return _hung_words(change)


def _dial_words(change: Turned, unit: LengthUnit) -> str:
    turned = dial(change.dial)
    # 'lamp 1: x of the lamp' says it twice.
    return f"{turned.short} {turned.quantity.text(change.value, unit)}"


def _lining_words(setup: Setup, lining: Lining) -> str:
    old = next((one for one in setup.linings if one.key == lining.key), None)
    if old is None or old.name != lining.name or old.reflectance == lining.reflectance:
        return lining.name
    return f"{lining.name} of reflectance {lining.reflectance:.2f}"


def _hung_words(change: Hung) -> str:
    if change.lamp is None:
        return f"without lamp {(change.index or 0) + 1}"
    if change.index is None:
        return f"one more lamp: {change.lamp.label or change.lamp.model.name}"
    return f"lamp {change.index + 1}: {change.lamp.model.name}"
