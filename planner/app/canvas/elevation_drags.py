"""The side elevation's geometry and its drags: heights, and nothing but heights. No Qt here."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Final, Literal

from planner.app.canvas.items import Item, Part, wall_normal
from planner.app.canvas.plan_drags import Edit, Hold, moved_lamp, moved_obstacle, snapped
from planner.plan.dials import dial
from planner.plan.edits import changed
from planner.plan.lamp import CosineProfile, Lamp, TableProfile
from planner.plan.place import Place, PlaceKind
from planner.plan.plan import Plan
from planner.plan.space import Point
from planner.units import listed

Axis = Literal["x", "y"]
"""The axis looked along; the other one runs to the right on the drawing."""

_HEIGHTS: Final = {
    Part.LAMP: ("height", PlaceKind.LAMP, "lamp"),
    Part.OBSTACLE: ("underside", PlaceKind.OBSTACLE, "obstacle"),
    Part.CANOPY: ("canopy", PlaceKind.SPACE, "canopy"),
    Part.CEILING: ("space-height", PlaceKind.SPACE, "ceiling"),
    Part.BAND_EDGE: ("band-edge", PlaceKind.WALL, ""),
}
"""The dial that is the height of an item, where it is, and what is said to be raised."""


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


def lifted(plan: Plan, item: Item, by: float, step: float | None) -> Edit:
    """An item raised by so many metres, stopped where it meets something.

    Raises
    ------
    ValueError
        If the plan cannot be built or the item has no height to change.
    """
    if item.part not in _HEIGHTS:
        raise ValueError(f"a {item.part} has no height to change.")
    key, kind, thing = _HEIGHTS[item.part]
    height = dial(key)
    of_space = kind is PlaceKind.SPACE
    band = item.band if kind is PlaceKind.WALL else None
    place = Place() if of_space else Place(kind, item.index, band)
    room, old = height.bounded(plan, place), height.get(plan, place) or 0.0
    wanted, stopped = round(snapped(old + by, step), 7), ""
    new = min(max(wanted, room.minimum), max(room.minimum, room.maximum))
    if new != wanted:
        stopped = f"{height.label}: {room.limit_text(least=new > wanted)}."
    name = f"{'Lower' if new < old else 'Raise'} {thing}" if thing else height.step_name
    return Edit(height.put(plan, place, new), name, stopped)


def nudged_across(plan: Plan, item: Item, by: Point, axis: Axis) -> Edit | None:
    """An item moved by arrow keys: up and down its height, left and right its place."""
    if by[1]:
        return lifted(plan, item, by[1], None)
    dx, dy = (by[0], 0.0) if axis == "y" else (0.0, by[0])
    if item.part is Part.OBSTACLE:
        obstacle = plan.obstacles[item.index]
        spot = (round(obstacle.x + dx, 7), round(obstacle.y + dy, 7))
        return moved_obstacle(plan, item.index, spot)
    if item.part is not Part.LAMP:
        return None
    lamp = plan.lamps[item.index]
    target = (round(lamp.x + dx, 7), round(lamp.y + dy, 7))
    return moved_lamp(plan, item.index, target)


SEEN_AS_ONE: Final = 0.005
"""Lamps whose ends and height differ by less than this look like one from the side."""


def seen_as_one(plan: Plan, index: int, axis: Axis) -> tuple[int, ...]:
    """The lamps that hide behind a lamp when looking along an axis, itself included."""
    lamp = plan.lamps[index]
    shape = (*lamp_extent(lamp, axis), lamp.hanging_height)

    def hidden(other: Lamp) -> bool:
        seen = (*lamp_extent(other, axis), other.hanging_height)
        return all(abs(a - b) < SEEN_AS_ONE for a, b in zip(shape, seen, strict=True))

    return tuple(k for k, other in enumerate(plan.lamps) if hidden(other))


@dataclass(frozen=True)
class HeightDrag:
    """A drag of one item's height that began at a world point.

    Lamps that look like one along ``axis`` stay together: the hand took hold of what it saw.
    """

    plan: Plan
    item: Item
    grabbed: Point
    axis: Axis = "y"

    def to(self, at: Point, hold: Hold) -> Edit:
        """The plan with the item at the height of the hand."""
        edit = lifted(self.plan, self.item, at[1] - self.grabbed[1], hold.step)
        if self.item.part is not Part.LAMP:
            return edit
        together = seen_as_one(self.plan, self.item.index, self.axis)
        if len(together) == 1:
            return edit
        height = edit.plan.lamps[self.item.index].hanging_height
        lamps = tuple(
            changed(lamp, hanging_height=height) if k in together else lamp
            for k, lamp in enumerate(self.plan.lamps)
        )
        numbers = listed([str(k + 1) for k in together])
        return Edit(
            changed(self.plan, lamps=lamps),
            f"{edit.label.removesuffix(' lamp')} lamps {numbers}",
            edit.stopped,
            f"Lamps {numbers} hang behind one another here and move together.",
        )
