"""The side elevation's geometry and its drags: heights, and nothing but heights. No Qt here."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Final, Literal

from planner.app.canvas.items import Item, Part, wall_normal
from planner.app.canvas.plan_drags import (
    Choice,
    Edit,
    Hold,
    Number,
    judging,
    moved_by,
    snapped,
    thing_choices,
)
from planner.language import word
from planner.plan import edits
from planner.plan.changes import moved_besides
from planner.plan.dials import dial
from planner.plan.groups import Chosen, can_be_chosen, named, raised
from planner.plan.lamp import CosineProfile, Lamp, TableProfile
from planner.plan.place import OWN, Place, PlaceKind
from planner.plan.plan import Plan
from planner.plan.space import Point
from planner.units import listed

Axis = Literal["x", "y"]
"""The axis looked along; the other one runs to the right on the drawing."""

_HEIGHTS: Final = {
    Part.LAMP: ("height", PlaceKind.LAMP),
    Part.OBSTACLE: ("underside", PlaceKind.OBSTACLE),
    Part.CANOPY: ("canopy", PlaceKind.SPACE),
    Part.CEILING: ("space-height", PlaceKind.SPACE),
    Part.BAND_EDGE: ("band-edge", PlaceKind.WALL),
}
"""The dial that is the height of an item, and where it is."""


def across(point: Point, axis: Axis) -> float:
    """The coordinate that runs to the right when looking along an axis."""
    return point[0] if axis == "y" else point[1]


def extent(plan: Plan, axis: Axis) -> tuple[float, float]:
    """Left and right end of the space as seen along an axis."""
    places = [across(corner, axis) for corner in plan.space.footprint]
    return min(places), max(places)


def lamp_extent(lamp: Lamp, axis: Axis) -> tuple[float, float]:
    """Left and right end of a lamp's body as seen along an axis."""
    places = [across(corner, axis) for corner in lamp.outline()]
    return min(places), max(places)


def wall_extent(plan: Plan, wall: int, axis: Axis) -> tuple[float, float]:
    """Left and right end of a wall as seen along an axis."""
    low, high = sorted(across(end, axis) for end in plan.space.wall(wall))
    return low, high


def faces_viewer(plan: Plan, wall: int, axis: Axis) -> bool:
    """Whether a wall is seen from its inner side rather than edge on or from behind."""
    nx, ny = wall_normal(plan, wall)
    # Along y one looks from the front to the back; along x from the right to the left,
    # so that y runs to the right.
    return (ny if axis == "y" else -nx) > 0.2


def seen_wall(plan: Plan, axis: Axis, selected: int | None) -> int:
    """The wall whose bands are shown: the selected one if it can be seen, else the widest."""

    def width(wall: int) -> float:
        low, high = wall_extent(plan, wall, axis)
        return high - low

    if selected is not None and selected < plan.space.wall_count and width(selected) > 0.01:
        return selected
    facing = [k for k in range(plan.space.wall_count) if faces_viewer(plan, k, axis)]
    return max(facing or range(plan.space.wall_count), key=width)


def side_wall(plan: Plan, axis: Axis, *, right: bool) -> int:
    """The wall cut at the left or right end of the drawing."""
    left_end, right_end = extent(plan, axis)
    end = right_end if right else left_end

    def off(wall: int) -> float:
        return sum(abs(across(point, axis) - end) for point in plan.space.wall(wall))

    return min(range(plan.space.wall_count), key=off)


def band_at(plan: Plan, wall: int, height: float) -> int:
    """The band of a wall at a height above the floor."""
    bands = plan.walls[wall].bands
    return next(
        (k for k, band in enumerate(bands) if band.top is None or height < band.top),
        len(bands) - 1,
    )


def band_edges(plan: Plan, wall: int) -> tuple[float, ...]:
    """Heights between the bands of a wall, from the floor up."""
    return tuple(band.top for band in plan.walls[wall].bands if band.top is not None)


def beam_half_angle(lamp: Lamp) -> float:
    """Angle from straight down to half the peak intensity, in radians."""
    profile = lamp.model.profile
    if isinstance(profile, CosineProfile):
        return math.radians(profile.beam_angle_deg / 2)
    if isinstance(profile, TableProfile):
        strongest = profile.relative
    else:  # around the lamp the widest plane counts
        strongest = tuple(max(plane) for plane in zip(*profile.relative, strict=True))
    half = max(strongest) / 2
    wide = [a for a, i in zip(profile.angles_deg, strongest, strict=True) if i >= half]
    return math.radians(min(max(wide), 85.0))


def height_of(item: Item) -> Number:
    """The number that is the height of an item.

    Raises
    ------
    ValueError
        If the item has no height to change.
    """
    if item.part not in _HEIGHTS:
        raise ValueError(f"a {word(item.part)} has no height to change.")
    key, kind = _HEIGHTS[item.part]
    band = item.band if kind is PlaceKind.WALL else None
    place = Place() if kind is PlaceKind.SPACE else Place(kind, item.index, band)
    return Number(dial(key), place)


def _verb(lower: bool) -> str:
    return "Lower" if lower else "Raise"


def lifted(plan: Plan, item: Item, by: float, step: float | None, among: Chosen = ()) -> Edit:
    """An item raised by so many metres, with what is selected with it, until it meets something.

    Raises
    ------
    ValueError
        If the plan cannot be built or the item has no height to change.
    """
    number = height_of(item)
    height, place, old = number.dial, number.place, number.now(plan)
    wanted = round(snapped(old + by, step), 7)
    if can_be_chosen(place):
        among = among or (place,)
        after, stopped = raised(plan, among, wanted - old)
        lower = (number.now(after) < old) if len(among) < 2 else wanted < old
        took = moved_besides(plan, after, among)[1]
        return Edit(after, named(_verb(lower), among), stopped, took)
    room = height.bounded(plan, place)
    new, stopped = min(max(wanted, room.minimum), max(room.minimum, room.maximum)), ""
    if new != wanted:
        stopped = f"{height.label}: {room.limit_text(least=new > wanted)}."
    edge = item.part is Part.BAND_EDGE
    name = height.step_name if edge else f"{_verb(new < old)} {word(item.part)}"
    after = height.put(plan, place, new)
    return Edit(after, name, stopped, moved_besides(plan, after)[1])


def nudged_across(plan: Plan, item: Item, by: Point, axis: Axis, among: Chosen = ()) -> Edit | None:
    """An item moved by arrow keys: up and down its height, left and right its place."""
    if by[1]:
        return lifted(plan, item, by[1], None, among)
    place = item.place
    if place is None or not can_be_chosen(place):
        return None
    shift = (by[0], 0.0) if axis == "y" else (0.0, by[0])
    return moved_by(plan, among or (place,), shift)


SEEN_AS_ONE: Final = 0.005
"""Lamps whose ends and height differ by less than this look like one from the side."""


def seen_as_one(plan: Plan, index: int, axis: Axis) -> tuple[int, ...]:
    """The lamps that hide behind a lamp when looking along an axis, itself included."""
    lamp = plan.lamps[index]
    shape = (*lamp_extent(lamp, axis), lamp.hanging_height, *lamp.rise)

    def hidden(other: Lamp) -> bool:
        seen = (*lamp_extent(other, axis), other.hanging_height, *other.rise)
        return all(abs(a - b) < SEEN_AS_ONE for a, b in zip(shape, seen, strict=True))

    return tuple(k for k, other in enumerate(plan.lamps) if hidden(other))


@dataclass(frozen=True)
class HeightDrag:
    """A drag of one item's height that began at a world point.

    A lamp or obstacle takes along what is selected with it (``among``, itself first). Lamps
    that look like one along ``axis`` stay together: the hand took hold of what it saw.
    """

    plan: Plan
    item: Item
    grabbed: Point
    axis: Axis = "y"
    among: Chosen = ()

    @property
    def numbers(self) -> tuple[Number, ...]:
        """What can be typed: the height."""
        return (height_of(self.item),)

    def to(self, at: Point, hold: Hold) -> Edit:
        """The plan with the item at the height of the hand."""
        return self._lifted(at[1] - self.grabbed[1], hold.step)

    def typed(self, values: tuple[float | None, ...], at: Point) -> Edit:
        """The plan with the height as typed.

        Raises
        ------
        ValueError
            If it lies outside its bounds.
        """
        number, value = height_of(self.item), values[0]
        if value is None:
            return self.to(at, Hold(None))
        number.dial.bounded(self.plan, number.place).checked(value, number.dial.label)
        return self._lifted(value - number.now(self.plan), None)

    def _lifted(self, by: float, step: float | None) -> Edit:
        hidden = self.item.part is Part.LAMP and len(self.among) < 2
        together = seen_as_one(self.plan, self.item.index, self.axis) if hidden else ()
        if len(together) < 2:
            return lifted(self.plan, self.item, by, step, self.among)
        others = [Place(PlaceKind.LAMP, k) for k in together if k != self.item.index]
        places = (Place(PlaceKind.LAMP, self.item.index), *others)
        edit = lifted(self.plan, self.item, by, step, places)
        numbers = listed([str(k + 1) for k in together])
        lower = by < 0
        return Edit(
            edit.plan,
            f"{_verb(lower)} lamps {numbers}",
            edit.stopped,
            f"Lamps {numbers} hang behind one another here and move together.",
        )


# -- what its menu offers, and what its measuring line is caught by ---------------------


def spot_from_side(plan: Plan, item: Item, axis: Axis) -> Point:
    """A place across and a height on an item, for a menu called by a key."""
    low, high = extent(plan, axis)
    if item.part is Part.LAMP:
        lamp = plan.lamps[item.index]
        return across((lamp.x, lamp.y), axis), plan.lamp_height(lamp)
    if item.part is Part.OBSTACLE:
        obstacle = plan.obstacles[item.index]
        return across((obstacle.x, obstacle.y), axis), (obstacle.underside + obstacle.top) / 2
    return (low + high) / 2, height_of(item).now(plan)


def side_choices(
    plan: Plan, item: Item, height: float, step: float, among: Chosen = ()
) -> tuple[Choice, ...]:
    """The entries of the side view's menu for an item, called at a height."""
    wall, band = item.index, item.band
    if item.part is Part.CANOPY:
        close = not plan.canopy.closed
        name = "Close canopy" if close else "Open canopy"
        down = Choice("Canopy down to the floor", lambda: lifted(plan, item, -5.0, None), item)
        swing = Choice(name, lambda: Edit(edits.set_canopy(plan, closed=close), name), item)
        judge = () if plan.judged_top is None else (judging(plan, OWN),)
        return (*([down] if plan.canopy.height > 0 else []), swing, *judge)
    if item.part is Part.BAND_EDGE:
        away = "Remove band edge"
        merge = Choice("Take edge away", lambda: Edit(edits.merge_band(plan, wall, band), away))
        return (merge,)
    if item.part is Part.WALL and not plan.wall_opens(wall):
        at, made = snapped(height, step), Item(Part.BAND_EDGE, wall, band)
        name = "Divide wall"
        return (
            Choice(
                "Divide wall here", lambda: Edit(edits.split_band(plan, wall, band, at), name), made
            ),
        )
    if item.part in {Part.LAMP, Part.OBSTACLE}:
        up = Choice("Up as far as it goes", lambda: lifted(plan, item, 5.0, None, among), item)
        return (*thing_choices(plan, among, turned_too=False), up)
    return ()


def caught_from_side(plan: Plan, axis: Axis, at: Point, reach: float) -> Point:
    """A point drawn to what stands out from the side.

    Ends of lamp faces and corners of obstacles go first, then the walls, floor, ceiling,
    canopy and edges of bands; the point itself where nothing is within ``reach``.
    """
    points: list[Point] = []
    for lamp in plan.lamps:
        low, high = lamp_extent(lamp, axis)
        if lamp.tilt_deg:
            face = plan.lamp_height(lamp)
            corners = (*lamp.corners(0.0)[:4], lamp.place(0.0, 0.0, 0.0))
            points += [(across((x, y), axis), face + up) for x, y, up in corners]
            continue
        points += [(u, plan.lamp_height(lamp)) for u in (low, (low + high) / 2, high)]
    for obstacle in plan.obstacles:
        ends = [across(corner, axis) for corner in obstacle.outline()]
        points += [
            (u, v) for u in (min(ends), max(ends)) for v in (obstacle.underside, obstacle.top)
        ]
    near = min(points, key=lambda point: math.dist(point, at), default=at)
    if points and math.dist(near, at) <= reach:
        return near
    levels = [0.0, plan.space.height, plan.canopy.height]
    levels += [edge for wall in range(plan.space.wall_count) for edge in band_edges(plan, wall)]
    sides = [across(corner, axis) for corner in plan.space.footprint]
    u = min(sides, key=lambda side: abs(side - at[0]))
    v = min(levels, key=lambda level: abs(level - at[1]))
    return (
        u if abs(u - at[0]) <= reach else at[0],
        v if abs(v - at[1]) <= reach else at[1],
    )
