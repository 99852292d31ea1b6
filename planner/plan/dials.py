"""Dials: every number of a plan that can be turned, one row each.

Fields, sweeps, variants, searches and messages read this table: what the number is called,
in which unit it stands, between which bounds it may lie in a plan as it is, how it is read,
how the plan with another value is made, and how much of the light that computes anew.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from enum import IntEnum
from typing import Any, Final

from planner.plan import edits
from planner.plan import quantity as q
from planner.plan.canopy import Canopy
from planner.plan.costs import Costs
from planner.plan.lamp import MOST_PER_JOULE, BarsBody, CosineProfile, Lamp, LampModel, PointBody
from planner.plan.lining import OPENING_KEY, Lining
from planner.plan.obstacle import Obstacle
from planner.plan.place import Place, PlaceKind, lining_at, surfaces
from planner.plan.plan import Plan
from planner.plan.quantity import Quantity
from planner.plan.setup import Setup
from planner.units import said_length

_ALIKE: Final = 1e-9
_LEAST_BAND_M: Final = 0.005
_TIMES: Final = Quantity("times", decimals=2, step=0.1).within(0.1, 5.0)


Room = Callable[[Quantity, Setup, Place], Quantity]
Turn = Callable[[Plan, Sequence[Place], float], Plan]


class Redo(IntEnum):
    """What an edit makes the core compute anew, from nothing at all to everything."""

    NOTHING = 0
    """The light stays, or is a product of what is kept: output, hours, prices."""
    LAMP = 1
    """The light of a lamp."""
    BALANCE = 2
    """The balance of all surfaces."""
    GEOMETRY = 3
    """The surfaces themselves."""


@dataclass(frozen=True)
class Dial:
    """One number of a plan.

    ``at`` is the kind of thing that has it; ``one`` reads it there, or gives None where a
    thing of that kind has no such number; ``turn`` makes the plan with another value at
    some of these places. ``room`` narrows the bounds of ``quantity``, those of the plan's
    own field, to what fits the plan as it is.
    """

    key: str
    words: str
    quantity: Quantity
    at: PlaceKind
    one: Callable[[Setup, Place], float | None]
    turn: Turn
    redo: Redo
    step_name: str
    about: str = ""
    room: Room | None = None
    where: Callable[[Setup], tuple[Place, ...]] | None = None

    @property
    def unit(self) -> str:
        """Unit of the value in the plan; shares of 1 are shown in percent."""
        if self.quantity.is_length:
            return "m"
        return self.quantity.suffix if self.quantity.factor == 1 else "1"

    @property
    def label(self) -> str:
        """The words as they stand before a field."""
        return self.words[:1].upper() + self.words[1:]

    def places(self, plan: Setup) -> tuple[Place, ...]:
        """The things of the plan that have this number."""
        found = _things(plan, self.at) if self.where is None else self.where(plan)
        return tuple(place for place in found if self.one(plan, place) is not None)

    def get(self, plan: Setup, place: Place | None = None) -> float | None:
        """The value at a place, or of all places at once; None where they differ or are none."""
        if place is not None:
            return self.one(plan, place) if self._fits(plan, place) else None
        values = [self.one(plan, one) for one in self.places(plan)]
        known = [value for value in values if value is not None]
        return known[0] if known and max(known) - min(known) < _ALIKE else None

    def bounded(self, plan: Setup, place: Place | None = None) -> Quantity:
        """The quantity with the bounds it has in this plan, at a place or at all of them."""
        found = self.quantity
        if self.room is not None:
            for one in self.places(plan) if place is None else (place,):
                found = self.room(found, plan, one)
        return found

    def bounds(self, plan: Setup, place: Place | None = None) -> tuple[float, float]:
        """Lowest and highest value in this plan."""
        found = self.bounded(plan, place)
        return found.minimum, found.maximum

    def put(self, plan: Plan, place: Place | None, value: float) -> Plan:
        """The plan with another value at a place, or at all places at once.

        Raises
        ------
        ValueError
            If there is no such place, the value lies outside the bounds, or no plan can be
            built with it.
        """
        places = self.places(plan) if place is None else (place,)
        if not places or not all(self._fits(plan, one) for one in places):
            raise ValueError(self._nowhere(plan, place))
        lead = self.label if place is None or place.kind is PlaceKind.SPACE else ""
        if place is not None and not lead:
            lead = f"{place.words(plan)}, {self.words}"
        return self.turn(plan, places, self.bounded(plan, place).checked(value, lead))

    def _fits(self, plan: Setup, place: Place) -> bool:
        return place.kind is self.at and place.fits(plan) and self.one(plan, place) is not None

    def _nowhere(self, plan: Setup, place: Place | None) -> str:
        if place is not None and place.fits(plan):
            return f"{place.words(plan)} has no {self.words}."
        if self.at is PlaceKind.LAMP and not plan.lamps:
            return f"No lamp hangs in the space, so there is no {self.words} to set."
        return f"There is nothing in the plan that has a {self.words}."


def dial(key: str) -> Dial:
    """The dial of a key.

    Raises
    ------
    ValueError
        If there is none; the message lists those there are.
    """
    found = DIALS.get(key)
    if found is None:
        raise ValueError(f"There is no number called '{key}'; there is {', '.join(DIALS)}.")
    return found


def _things(plan: Setup, kind: PlaceKind) -> tuple[Place, ...]:
    counts = {
        PlaceKind.LAMP: len(plan.lamps),
        PlaceKind.OBSTACLE: len(plan.obstacles),
        PlaceKind.WALL: len(plan.walls),
        PlaceKind.CORNER: len(plan.walls),
    }
    return tuple(Place(kind, index) for index in range(counts.get(kind, 1)))


# -- lamps and obstacles ----------------------------------------------------------------


def _of_lamp(part: str, inside: Callable[[Setup, Lamp], Any] = lambda _plan, lamp: lamp) -> Any:
    def read(plan: Setup, place: Place) -> float | None:
        value = getattr(inside(plan, plan.lamps[place.index]), part, None)
        return None if value is None else float(value)

    return read


def _each(
    change: Callable[[Plan, Place, float], Plan],
) -> Turn:
    def turn(plan: Plan, places: Sequence[Place], value: float) -> Plan:
        for place in places:
            plan = change(plan, place, value)
        return plan

    return turn


def _put_lamp(part: str) -> Turn:
    return _each(lambda plan, place, value: edits.change_lamp(plan, place.index, **{part: value}))


def with_model(plan: Plan, index: int, **parts: Any) -> Plan:
    """The plan with parts of a lamp's kind replaced."""
    model = edits.replaced(plan.lamps[index].model, **parts)
    return edits.change_lamp(plan, index, model=model)


def _put_model(part: str) -> Turn:
    return _each(lambda plan, place, value: with_model(plan, place.index, **{part: value}))


def _put_body(part: str) -> Turn:
    def change(plan: Plan, place: Place, value: float) -> Plan:
        body = plan.lamps[place.index].model.body
        number = round(value) if part == "count" else value
        return with_model(plan, place.index, body=edits.replaced(body, **{part: number}))

    return _each(change)


def _model(_plan: Setup, lamp: Lamp) -> LampModel:
    return lamp.model


def _body(_plan: Setup, lamp: Lamp) -> object:
    return None if isinstance(lamp.model.body, PointBody) else lamp.model.body


def _beam(plan: Setup, place: Place) -> float | None:
    profile = plan.lamps[place.index].model.profile
    return profile.beam_angle_deg if isinstance(profile, CosineProfile) else None


def _put_beam(plan: Plan, place: Place, value: float) -> Plan:
    return with_model(plan, place.index, profile=CosineProfile.from_beam_angle(value))


def _under_ceiling(kind: Quantity, plan: Setup, _place: Place) -> Quantity:
    return kind.at_most(plan.space.height - plan.canopy.height, "the ceiling is there")


def _inside(axis: int) -> Room:
    def room(kind: Quantity, plan: Setup, _place: Place) -> Quantity:
        low, high = plan.space.bounds[axis], plan.space.bounds[axis + 2]
        return kind.at_least(low, "the walls are there").at_most(high, "the walls are there")

    return room


def _ppf_of_watts(kind: Quantity, plan: Setup, place: Place) -> Quantity:
    watts = plan.lamps[place.index].model.watts
    why = f"no lamp gives more than {MOST_PER_JOULE} µmol per joule, and this one draws {watts:g} W"
    return kind.at_most(MOST_PER_JOULE * watts, why)


def _watts_of_ppf(kind: Quantity, plan: Setup, place: Place) -> Quantity:
    ppf = plan.lamps[place.index].model.ppf
    why = f"no lamp gives more than {MOST_PER_JOULE} µmol per joule, and this one gives {ppf:g}"
    return kind.at_least(ppf / MOST_PER_JOULE, f"{why} µmol/s")


def _bars_fit(part: str) -> Room:
    """Bars side by side take no more than the width over all of them."""

    def room(kind: Quantity, plan: Setup, place: Place) -> Quantity:
        body = plan.lamps[place.index].model.body
        if not isinstance(body, BarsBody) or part == "length":
            return kind
        bars, one = f"{body.count} bars", f"bars of {said_length(body.bar_width)}"
        wide = f"a width of {said_length(body.width)}"
        if part == "width":
            return kind.at_least(body.count * body.bar_width, f"{bars} lie in it")
        if part == "count":
            most = math.floor(body.width / body.bar_width + _ALIKE)
            return kind.at_most(most, f"{one} lie in {wide}")
        return kind.at_most(body.width / body.count, f"{bars} lie in {wide}")

    return room


def _of_obstacle(part: str) -> Callable[[Setup, Place], float | None]:
    return lambda plan, place: float(getattr(plan.obstacles[place.index], part))


def _put_obstacle(part: str) -> Turn:
    return _each(
        lambda plan, place, value: edits.change_obstacle(plan, place.index, **{part: value})
    )


def _room_with(other: str) -> Room:
    def room(kind: Quantity, plan: Setup, place: Place) -> Quantity:
        taken = getattr(plan.obstacles[place.index], other)
        return kind.at_most(plan.space.height - taken, "the ceiling is there")

    return room


# -- space, walls, corners --------------------------------------------------------------


def _extent(plan: Setup) -> tuple[float, float]:
    x0, y0, x1, y1 = plan.space.bounds
    return x1 - x0, y1 - y0


def _above_canopy(_kind: Quantity, plan: Setup, _place: Place) -> Quantity:
    return edits.ceiling_room(plan)


def _under_lamps(_kind: Quantity, plan: Setup, _place: Place) -> Quantity:
    return edits.canopy_room(plan)


def _of_corner(axis: int) -> Callable[[Setup, Place], float | None]:
    return lambda plan, place: plan.space.footprint[place.index][axis]


def _put_corner(axis: int) -> Turn:
    def change(plan: Plan, place: Place, value: float) -> Plan:
        x, y = plan.space.footprint[place.index]
        return edits.move_corner(plan, place.index, (value, y) if axis == 0 else (x, value))

    return _each(change)


def _wall_bands(plan: Setup) -> tuple[Place, ...]:
    return tuple(place for place in surfaces(plan) if place.kind is PlaceKind.WALL)


def _put_wall_length(plan: Plan, place: Place, value: float) -> Plan:
    return edits.set_wall_length(plan, place.index, value)


def _top(plan: Setup, place: Place) -> float | None:
    return None if place.band is None else plan.walls[place.index].bands[place.band].top


def _put_top(plan: Plan, place: Place, value: float) -> Plan:
    return edits.move_band_edge(plan, place.index, place.band or 0, value)


def _between_edges(kind: Quantity, plan: Setup, place: Place) -> Quantity:
    bands, band = plan.walls[place.index].bands, place.band or 0
    below = (bands[band - 1].top or 0.0) if band else 0.0
    above = bands[band + 1].top if band + 1 < len(bands) else None
    limit, what = (plan.space.height, "ceiling") if above is None else (above, "next edge")
    thin = f"the edge below is at {said_length(below)}" if below else "the floor is there"
    return kind.at_least(below + _LEAST_BAND_M, thin).at_most(
        limit - _LEAST_BAND_M, f"the {what} is at {said_length(limit)}"
    )


def _reflectance(plan: Setup, place: Place) -> float | None:
    lining = lining_at(plan, place)
    return None if lining is None or lining.is_opening else lining.reflectance


def _put_reflectance(plan: Plan, places: Sequence[Place], value: float) -> Plan:
    """Give these surfaces this reflectance at the specular share their linings have."""
    taken = {lining.key for lining in plan.linings}
    made: dict[str, Lining] = {}
    for place in places:
        old = lining_at(plan, place)
        if old is None or old.key == OPENING_KEY:
            continue
        if old.key not in made:
            key = f"swept-{len(made) + 1}"
            while key in taken:
                key += "-"
            made[old.key] = edits.replaced(
                old,
                key=key,
                # Said in the name, for a plan that adopts it; names hold 120 characters.
                name=f"{old.name[:90]}, taken as {100 * value:.0f} %",
                reflectance=value,
                low=value,
                high=value,
                source=f"A value tried in place of {old.reflectance:g}; "
                f"that one came from: {old.source}"[:4000],
            )
        bands = range(len(plan.walls[place.index].bands)) if place.band is None else [place.band]
        for band in bands:
            plan = edits.line_wall(plan, place.index, band, made[old.key])
    return plan


# -- lamps together ---------------------------------------------------------------------


def lamp_spacing(plan: Setup) -> float | None:
    """Smallest distance between the centres of two lamps in metres; None below two."""
    places = [(lamp.x, lamp.y) for lamp in plan.lamps]
    gaps = [math.dist(a, b) for k, a in enumerate(places) for b in places[k + 1 :]]
    smallest = min(gaps, default=0.0)
    return smallest if smallest > 1e-6 else None


def _put_spacing(plan: Plan, value: float) -> Plan:
    """Spread the lamps about their middle until the nearest two are this far apart."""
    x = sum(lamp.x for lamp in plan.lamps) / len(plan.lamps)
    y = sum(lamp.y for lamp in plan.lamps) / len(plan.lamps)
    spread = value / (lamp_spacing(plan) or value)

    def moved(lamp: Lamp) -> Lamp:
        return edits.replaced(lamp, x=x + (lamp.x - x) * spread, y=y + (lamp.y - y) * spread)

    return edits.each_lamp(plan, moved)


# -- canopy, day, target, costs ---------------------------------------------------------


def _band_end(part: str, kind: str) -> Callable[[Setup, Place], float | None]:
    def read(plan: Setup, _place: Place) -> float | None:
        target = getattr(plan, "target", None)
        return getattr(target, part) if target is not None and target.kind == kind else None

    return read


def _put_band_end(part: str) -> Turn:
    def turn(plan: Plan, _places: Sequence[Place], value: float) -> Plan:
        assert plan.target is not None  # noqa: S101 - the dial has a place only with a target
        # A band changed by hand is no crop's any more.
        target = edits.replaced(plan.target, crop="", source="", **{part: value})
        return edits.changed(plan, target=target)

    return turn


def _rising(part: str) -> Room:
    def room(kind: Quantity, plan: Setup, _place: Place) -> Quantity:
        target = getattr(plan, "target", None)
        if target is None:
            return kind
        other = target.high if part == "low" else target.low
        least = 10.0**-kind.decimals
        end = f"the band {'ends' if part == 'low' else 'begins'} at {kind.text(other, None)}"
        if part == "low":
            return kind.at_most(other - least, end)
        return kind.at_least(other + least, end)

    return room


def _of_costs(part: str) -> Callable[[Setup, Place], float | None]:
    def read(plan: Setup, _place: Place) -> float | None:
        costs = getattr(plan, "costs", None)
        return None if costs is None else getattr(costs, part) or 0.0

    return read


def _put_costs(part: str) -> Turn:
    return lambda plan, _places, value: edits.changed(
        plan, costs=edits.replaced(plan.costs, **{part: value})
    )


# -- the table --------------------------------------------------------------------------

_LIGHT, _BALANCE, _ALL, _NOTHING = Redo.LAMP, Redo.BALANCE, Redo.GEOMETRY, Redo.NOTHING


def _lamp(
    key: str, words: str, part: str, redo: Redo, step: str, room: Room | None, about: str
) -> Dial:
    kind, at = q.quantity_of(Lamp, part), PlaceKind.LAMP
    return Dial(key, words, kind, at, _of_lamp(part), _put_lamp(part), redo, step, about, room)


def _kind(
    key: str, words: str, part: str, redo: Redo, step: str, room: Room | None, about: str
) -> Dial:
    get, put = _of_lamp(part, _model), _put_model(part)
    kind = q.quantity_of(LampModel, part)
    return Dial(key, words, kind, PlaceKind.LAMP, get, put, redo, step, about, room)


def _size(key: str, words: str, part: str, step: str, about: str) -> Dial:
    get, put, room = _of_lamp(part, _body), _put_body(part), _bars_fit(part)
    kind = q.quantity_of(BarsBody, part)
    return Dial(key, words, kind, PlaceKind.LAMP, get, put, _LIGHT, step, about, room)


def _obstacle(key: str, words: str, part: str, step: str, room: Room | None, about: str) -> Dial:
    kind, get, put = q.quantity_of(Obstacle, part), _of_obstacle(part), _put_obstacle(part)
    return Dial(key, words, kind, PlaceKind.OBSTACLE, get, put, _ALL, step, about, room)


def _corner(axis: int) -> Dial:
    words, get, put = f"{'xy'[axis]} of the corner", _of_corner(axis), _put_corner(axis)
    key = f"corner-{'xy'[axis]}"
    return Dial(key, words, q.POSITION, PlaceKind.CORNER, get, put, _ALL, "Move corner")


def _target(kind: str, part: str, shown: Quantity) -> Dial:
    words = f"{'lower' if part == 'low' else 'upper'} end of the target"
    get, put, room = _band_end(part, kind), _put_band_end(part), _rising(part)
    step, at = "Set target band", PlaceKind.SPACE
    return Dial(f"{kind}-{part}", words, shown, at, get, put, _NOTHING, step, room=room)


def _cost(key: str, words: str, part: str, step: str, about: str, **shown: Any) -> Dial:
    kind, at = q.quantity_of(Costs, part, **shown), PlaceKind.SPACE
    return Dial(key, words, kind, at, _of_costs(part), _put_costs(part), _NOTHING, step, about)


def _space(
    key: str,
    words: str,
    kind: Quantity,
    redo: Redo,
    step: str,
    get: Callable[[Setup], float | None],
    put: Callable[[Plan, float], Plan],
    about: str = "",
    room: Room | None = None,
) -> Dial:
    def one(plan: Setup, _place: Place) -> float | None:
        return get(plan)

    def turn(plan: Plan, _places: Sequence[Place], value: float) -> Plan:
        return put(plan, value)

    return Dial(key, words, kind, PlaceKind.SPACE, one, turn, redo, step, about, room)


def _wall(
    key: str,
    words: str,
    kind: Quantity,
    redo: Redo,
    step: str,
    get: Callable[[Setup, Place], float | None],
    put: Turn,
    about: str = "",
    **rest: Any,
) -> Dial:
    return Dial(key, words, kind, PlaceKind.WALL, get, put, redo, step, about, **rest)


# fmt: off
_ROWS: Final = (
    _lamp("height", "hanging height", "hanging_height", _LIGHT, "Set lamp height", _under_ceiling,
          "From the lamp's lit face down to the canopy, which is the plane the plants' tops stand "
          "at. Higher gives less light, more evenly."),
    _lamp("output", "output", "output_percent", _NOTHING, "Set lamp output", None,
          "The dimmer: light and watts both follow it in proportion. Real lamps often do a "
          "little better when dimmed."),
    _wall("reflectance", "wall reflectance", q.SHARE, _BALANCE, "Set reflectance of walls",
          _reflectance, _put_reflectance, where=_wall_bands),
    _space("width", "footprint width", q.EXTENT, _ALL, "Set width",
           lambda plan: _extent(plan)[0],
           lambda plan, value: edits.set_size(plan, value, _extent(plan)[1]),
           "Inside measure from left to right, between the linings. Lamps keep their place in "
           "proportion."),
    _space("depth", "footprint depth", q.EXTENT, _ALL, "Set depth",
           lambda plan: _extent(plan)[1],
           lambda plan, value: edits.set_size(plan, _extent(plan)[0], value),
           "Inside measure from front to back, between the linings."),
    _space("size", "footprint size, times as drawn", _TIMES, _ALL, "Set size",
           lambda _plan: 1.0,
           lambda plan, value: edits.set_size(plan, *(value * side for side in _extent(plan)))),
    _space("spacing", "lamp spacing", q.EXTENT, _LIGHT, "Spread lamps",
           lamp_spacing, _put_spacing),
    _space("canopy", "canopy height", q.quantity_of(Canopy, "height"), _ALL, "Set canopy height",
           lambda plan: plan.canopy.height, edits.set_canopy_height,
           "How high above the floor the tops of the plants, or the meter, stand. Lamps stay "
           "where they hang, so their hanging height changes with it.", _under_lamps),
    _space("space-height", "inside height", q.SPACE_HEIGHT, _ALL, "Set height of the space",
           lambda plan: plan.space.height, edits.set_height,
           "Inside measure from floor to ceiling. Lamps that no longer fit come down with it.",
           _above_canopy),
    _space("canopy-reflectance", "canopy reflectance", q.SHARE, _BALANCE,
           "Set canopy reflectance", lambda plan: plan.canopy.reflectance,
           lambda plan, value: edits.set_canopy(plan, reflectance=value),
           "The part of the light that the leaves send back. Green leaves return about 5 to 10 % "
           "between 400 and 700 nm."),
    _space("photoperiod", "photoperiod", q.HOURS, _NOTHING, "Set photoperiod",
           lambda plan: plan.photoperiod_hours,
           lambda plan, value: edits.changed(plan, photoperiod_hours=value),
           "Hours of light in a day. With the PPFD it makes the day's total, the daily light "
           "integral (DLI)."),
    _lamp("lamp-x", "x of the lamp", "x", _LIGHT, "Move lamp", _inside(0),
          "Right of the zero corner."),
    _lamp("lamp-y", "y of the lamp", "y", _LIGHT, "Move lamp", _inside(1),
          "Back of the zero corner."),
    _lamp("lamp-rotation", "rotation of the lamp", "rotation_deg", _LIGHT, "Rotate lamp", None,
          "Counter-clockwise, seen from above."),
    _kind("ppf", "PPF", "ppf", _NOTHING, "Set lamp PPF", _ppf_of_watts,
          "Photosynthetic photon flux: all the light between 400 and 700 nm the lamp sends out "
          "per second, at full output. Makers print it as PPF in µmol/s."),
    _kind("watts", "watts", "watts", _NOTHING, "Set lamp watts", _watts_of_ppf,
          "Electrical power drawn at full output."),
    Dial("beam", "beam angle", q.BEAM_ANGLE, PlaceKind.LAMP, _beam, _each(_put_beam), _LIGHT,
         "Set beam angle",
         "The full angle between the directions in which the lamp sends half as much as straight "
         "down. A bare LED board has about 120°, a spot 40° or less."),
    _size("lamp-length", "length of the lamp", "length", "Set lamp size",
          "Along the lamp's own long side."),
    _size("lamp-width", "width of the lamp", "width", "Set lamp size",
          "Over the lit faces, edge to edge."),
    _size("bars", "number of bars", "count", "Set lamp bars", "How many bars there are."),
    _size("bar-width", "bar width", "bar_width", "Set lamp bars",
          "Width of the lit strip of one bar."),
    _kind("housing", "housing height", "housing_height", _ALL, "Set lamp housing", None,
          "Height of the opaque body above the lit face. It casts shadows for light that comes "
          "back from above; 0 lets light pass through the lamp."),
    _wall("wall-length", "wall length", q.EXTENT, _ALL, "Set wall length",
          lambda plan, place: plan.space.wall_length(place.index), _each(_put_wall_length),
          "The far end of the wall moves along it, and the walls beyond it move with that end."),
    _wall("band-edge", "upper edge", q.HEIGHT, _ALL, "Move band edge", _top, _each(_put_top),
          room=_between_edges, where=_wall_bands),
    _corner(0),
    _corner(1),
    _obstacle("obstacle-x", "x of the obstacle", "x", "Move obstacle", _inside(0), "Its middle."),
    _obstacle("obstacle-y", "y of the obstacle", "y", "Move obstacle", _inside(1), "Its middle."),
    _obstacle("underside", "underside", "underside", "Raise obstacle", _room_with("thickness"),
              "Height of its lower side above the floor. What lies wholly below a closed canopy "
              "gets no light and casts no shadow."),
    _obstacle("obstacle-rotation", "rotation of the obstacle", "rotation_deg", "Rotate obstacle",
              None, "Counter-clockwise, seen from above."),
    _obstacle("obstacle-length", "length of the obstacle", "length", "Set size of obstacle", None,
              "Along its own long side."),
    _obstacle("obstacle-width", "width of the obstacle", "width", "Set size of obstacle", None,
              "Across its own long side."),
    _obstacle("thickness", "thickness", "thickness", "Set size of obstacle",
              _room_with("underside"), "From its underside up."),
    _target("ppfd", "low", q.PPFD),
    _target("ppfd", "high", q.PPFD),
    _target("dli", "low", q.DLI),
    _target("dli", "high", q.DLI),
    _cost("tariff", "price of 1 kWh", "price_per_kwh", "Set tariff",
          "Leave it at 0 while it is not known.", decimals=4),
    _cost("overlap", "overlap", "overlap", "Set overlap",
          "Added to every side of a cut piece, for corners and seams."),
)
# fmt: on

DIALS: Final[dict[str, Dial]] = {row.key: row for row in _ROWS}
