"""Several things at once: what is chosen together, and the edits that take it together.

Chosen are lamps and obstacles, as a tuple of places of which the first leads: the others turn
about it, align to it and take its height. Every edit is a plan made of a plan, one undo step;
it raises ``ValueError`` where the result cannot be built.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Mapping
from enum import StrEnum
from typing import Final, TypeVar

from planner.language import word
from planner.plan import edits
from planner.plan.dials import dial
from planner.plan.edits import changed, nearest_inside
from planner.plan.lamp import Lamp
from planner.plan.place import Place, PlaceKind, every
from planner.plan.plan import Plan, Setup
from planner.plan.quantity import Quantity
from planner.plan.space import Obstacle, Outline, Point, contains, outlines_overlap
from planner.plan.tiers import carried_by, counted_from
from planner.plan.turning import within_tier

Chosen = tuple[Place, ...]
Thing = Lamp | Obstacle
_Plan = TypeVar("_Plan", bound=Setup)

_TRIES: Final = 24


class Edge(StrEnum):
    """What is brought into one line: a side or the middle, across (x) or in depth (y)."""

    LEFT = "left"
    CENTRE = "centre"
    RIGHT = "right"
    FRONT = "front"
    MIDDLE = "middle"
    BACK = "back"

    @property
    def axis(self) -> int:
        """0 where x is made alike, 1 where y is."""
        return 0 if self in {Edge.LEFT, Edge.CENTRE, Edge.RIGHT} else 1

    def of(self, low: float, high: float) -> float:
        """Where it lies on a body that reaches from low to high."""
        if self in {Edge.LEFT, Edge.FRONT}:
            return low
        return high if self in {Edge.RIGHT, Edge.BACK} else (low + high) / 2


def can_be_chosen(place: Place) -> bool:
    """Whether a place can be one of several: a lamp or an obstacle."""
    return place.kind in {PlaceKind.LAMP, PlaceKind.OBSTACLE}


def all_things(plan: Setup) -> Chosen:
    """All lamps and all obstacles."""
    return *every(plan, PlaceKind.LAMP), *every(plan, PlaceKind.OBSTACLE)


def thing_at(plan: Setup, place: Place) -> Thing:
    """The lamp or obstacle of a place."""
    things: tuple[Thing, ...] = plan.lamps if place.kind is PlaceKind.LAMP else plan.obstacles
    return things[place.index]


def named(verb: str, places: Chosen) -> str:
    """The name of a step: 'Move lamp', 'Move 3 lamps', 'Move 2 things'."""
    kinds = {place.kind for place in places}
    if len(places) == 1:
        return f"{verb} {word(places[0].kind)}"
    several = {
        PlaceKind.LAMP: f"{verb} {len(places)} lamps",
        PlaceKind.OBSTACLE: f"{verb} {len(places)} obstacles",
    }
    return several[kinds.pop()] if len(kinds) == 1 else f"{verb} {len(places)} things"


def counted(places: Chosen, words: str) -> str:
    """What is set for several things of one kind: '3 lamps: hanging height'."""
    if places[0].kind is PlaceKind.LAMP:
        return f"{len(places)} lamps: {words}"
    return f"{len(places)} obstacles: {words}"


def within(plan: Setup, one: Point, other: Point) -> Chosen:
    """The lamps and obstacles a rectangle between two corners touches."""
    (x0, x1), (y0, y1) = (sorted(ends) for ends in zip(one, other, strict=True))
    frame = ((x0, y0), (x1, y0), (x1, y1), (x0, y1))

    def touched(thing: Thing) -> bool:
        if x0 <= thing.x <= x1 and y0 <= thing.y <= y1:
            return True
        outline = thing.outline()
        return len(set(outline)) > 1 and x1 > x0 and y1 > y0 and outlines_overlap(outline, frame)

    return tuple(place for place in all_things(plan) if touched(thing_at(plan, place)))


def extent(outlines: Iterable[Outline], angle_deg: float = 0.0) -> tuple[float, float]:
    """Lowest and highest coordinate of outlines along a direction, in metres."""
    angle = math.radians(angle_deg)
    places = [x * math.cos(angle) + y * math.sin(angle) for outline in outlines for x, y in outline]
    return min(places), max(places)


def _reach(thing: Thing, axis: int) -> tuple[float, float]:
    return extent([thing.outline()], 90.0 * axis)


# -- changed together -------------------------------------------------------------------


def put_things(plan: _Plan, things: Mapping[Place, Thing]) -> _Plan:
    """The plan with these things in the place of those that were there, checked once."""
    parts = {}
    for name, kind in (("lamps", PlaceKind.LAMP), ("obstacles", PlaceKind.OBSTACLE)):
        if any(place.kind is kind for place in things):
            old = getattr(plan, name)
            parts[name] = tuple(things.get(Place(kind, k), one) for k, one in enumerate(old))
    return changed(plan, **parts) if parts else plan


def _each(plan: _Plan, places: Chosen, change: Callable[[Place, Thing], dict[str, float]]) -> _Plan:
    things = {}
    for place in places:
        thing = thing_at(plan, place)
        parts = change(place, thing)
        if any(getattr(thing, name) != value for name, value in parts.items()):
            things[place] = changed(thing, **parts)
    return put_things(plan, things)


def moved(plan: _Plan, places: Chosen, by: Point) -> _Plan:
    """All of them shifted by one vector, or as near to that as all middles stay inside.

    They slide along a wall together and keep their arrangement.
    """
    return _shifted(plan, {place: thing_at(plan, place) for place in places}, by)


def _shifted(plan: _Plan, things: Mapping[Place, Thing], by: Point) -> _Plan:
    footprint = plan.space.footprint
    middles = [(thing.x, thing.y) for thing in things.values()]
    by = _kept_inside(footprint, middles, by)
    placed: dict[Place, Thing] = {}
    for place, thing in things.items():
        # Seven digits keep 0.1 µm and no 0.30000000000000004 in files.
        spot = {"x": round(thing.x + by[0], 7), "y": round(thing.y + by[1], 7)}
        placed[place] = changed(thing, **spot) if by != (0.0, 0.0) else thing
    alike = all(thing_at(plan, place) == thing for place, thing in placed.items())
    return plan if alike else put_things(plan, placed)


def _kept_inside(footprint: Outline, middles: list[Point], by: Point) -> Point:
    """The shift, shortened or bent until every middle lies inside."""
    for _ in range(_TRIES):
        outside = [
            (x + by[0], y + by[1])
            for x, y in middles
            if not contains(footprint, x + by[0], y + by[1])
        ]
        if not outside:
            return by
        back = [(nearest_inside(footprint, spot), spot) for spot in outside]
        inner, spot = max(back, key=lambda pair: math.dist(*pair))
        by = (by[0] + inner[0] - spot[0], by[1] + inner[1] - spot[1])
    if all(contains(footprint, *middle) for middle in middles):
        return 0.0, 0.0
    raise ValueError("there is no room inside the walls for all of them like this.")


def turned(plan: _Plan, places: Chosen, by_deg: float) -> _Plan:
    """All of them turned counter-clockwise about the one that leads."""
    angle = math.radians(by_deg)
    cos, sin = math.cos(angle), math.sin(angle)
    lead = thing_at(plan, places[0])
    things: dict[Place, Thing] = {}
    for place in places:
        thing = thing_at(plan, place)
        dx, dy = thing.x - lead.x, thing.y - lead.y
        parts = {"rotation_deg": whole_turn(thing.rotation_deg + by_deg)}
        if place != places[0]:
            parts |= {
                "x": round(lead.x + dx * cos - dy * sin, 7),
                "y": round(lead.y + dx * sin + dy * cos, 7),
            }
        things[place] = changed(thing, **parts)
    return _shifted(plan, things, (0.0, 0.0))


def whole_turn(angle_deg: float) -> float:
    """The same direction between -180 (exclusive) and 180 degrees."""
    return -((-angle_deg + 180) % 360 - 180)


_HEIGHT: Final = {PlaceKind.LAMP: "height", PlaceKind.OBSTACLE: "underside"}
"""The dial that is the height of each."""
_PART: Final = {PlaceKind.LAMP: "hanging_height", PlaceKind.OBSTACLE: "underside"}
"""The field that it turns."""


def reach_of(plan: Plan, place: Place) -> Quantity:
    """Between which heights a hand carries a thing: a lamp past the tiers, to the plan's canopy."""
    room = dial(_HEIGHT[place.kind]).bounded(plan, place)
    if place.kind is not PlaceKind.LAMP:
        return room
    lamp = plan.lamps[place.index]
    least = plan.hanging_room(lamp)[0] - counted_from(plan, lamp)
    return room if least >= room.minimum else room.within(least, room.maximum)


def raised(plan: Plan, places: Chosen, by: float) -> tuple[Plan, str]:
    """All of them raised by so many metres, or as far as the first of them can go.

    Obstacles take along what hangs from them and stands on them. The text says what stopped them.
    """
    stopped, old = "", {}
    shelves = [place.index for place in places if place.kind is PlaceKind.OBSTACLE]
    along = [one for index in shelves for one in carried_by(plan, index)]
    places = tuple(dict.fromkeys((*places, *along)))
    for place in places:
        height = dial(_HEIGHT[place.kind])
        now, room = height.get(plan, place) or 0.0, reach_of(plan, place)
        most = max(room.maximum, room.minimum)
        if not room.minimum <= now + by <= most:
            by = min(max(now + by, room.minimum), most) - now
            stopped = f"{height.label}: {room.limit_text(least=by < 0 or now < room.minimum)}."
        old[place] = getattr(thing_at(plan, place), _PART[place.kind])
    after = _each(plan, places, lambda place, _: {_PART[place.kind]: round(old[place] + by, 7)})
    return after, stopped


def levelled(plan: Plan, places: Chosen) -> tuple[Plan, Chosen]:
    """Lamps as high as the first of them, each over the canopy beneath it.

    The places are those of lamps left as they were: so high they would meet a shelf or the ceiling.
    """
    height = dial("height")
    value = height.get(plan, places[0]) or 0.0
    rooms = {place: within_tier(height.quantity, plan, place) for place in places}
    able = tuple(p for p, room in rooms.items() if room.minimum <= value <= room.maximum)
    return height.turn(plan, able, value), tuple(place for place in places if place not in able)


def removed(plan: _Plan, places: Chosen) -> _Plan:
    """The plan without them."""
    for place in sorted(set(places), reverse=True):
        take = edits.remove_lamp if place.kind is PlaceKind.LAMP else edits.remove_obstacle
        plan = take(plan, place.index)
    return plan


# -- put in order -----------------------------------------------------------------------


def aligned(plan: _Plan, places: Chosen, edge: Edge) -> _Plan:
    """A side or the middle of each in one line with that of the leader."""
    axis = edge.axis
    line = edge.of(*_reach(thing_at(plan, places[0]), axis))
    shifts = {place: line - edge.of(*_reach(thing_at(plan, place), axis)) for place in places[1:]}
    return _placed_along(plan, shifts, axis)


def distributed(plan: _Plan, places: Chosen, axis: int) -> _Plan:
    """Equal gaps along x (0) or y (1) from one to the next; the outermost two stay."""
    reach = {place: _reach(thing_at(plan, place), axis) for place in places}
    row = sorted(places, key=lambda place: (sum(reach[place]), place))
    if len(row) < 3:
        raise ValueError("equal gaps want at least three; select more.")
    taken = sum(high - low for low, high in reach.values())
    gap = (reach[row[-1]][1] - reach[row[0]][0] - taken) / (len(row) - 1)
    shifts, at = {}, reach[row[0]][0]
    for place in row:
        low, high = reach[place]
        shifts[place] = at - low
        at += high - low + gap
    return _placed_along(plan, shifts, axis)


def spread(plan: _Plan, places: Chosen, axis: int) -> _Plan:
    """Each in the middle of its equal share of the space, in the order in which they stand."""
    x0, y0, x1, y1 = plan.space.bounds
    low, high = ((x0, x1), (y0, y1))[axis]
    spot = {place: (thing_at(plan, place).x, thing_at(plan, place).y)[axis] for place in places}
    row = sorted(places, key=lambda place: (spot[place], place))
    share = (high - low) / len(row)
    shifts = {place: low + (k + 0.5) * share - spot[place] for k, place in enumerate(row)}
    return _placed_along(plan, shifts, axis)


def _placed_along(plan: _Plan, shifts: Mapping[Place, float], axis: int) -> _Plan:
    """Each shifted along an axis by its own length; what would leave is kept inside."""

    def spot(place: Place, thing: Thing) -> dict[str, float]:
        by = shifts[place]
        if abs(by) < 1e-9:
            return {}
        wanted = (thing.x + by, thing.y) if axis == 0 else (thing.x, thing.y + by)
        x, y = nearest_inside(plan.space.footprint, wanted)
        return {"x": round(x, 7), "y": round(y, 7)}

    return _each(plan, tuple(shifts), spot)
