"""The side elevation's geometry and its drags: heights, and nothing but heights. No Qt here."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

from planner.app.canvas.items import Item, Part, wall_normal
from planner.app.canvas.plan_drags import Edit, Hold, moved_lamp, moved_obstacle, snapped
from planner.plan import edits
from planner.plan.lamp import CosineProfile, Lamp, TableProfile
from planner.plan.plan import Plan
from planner.plan.space import Point

Axis = Literal["x", "y"]
"""The axis looked along; the other one runs to the right on the drawing."""

MIN_HANGING_M = 0.01
MIN_BAND_M = 0.005
MAX_HEIGHT_M = 5.0
MIN_HEIGHT_M = 0.1


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


@dataclass(frozen=True)
class _Range:
    """How far a height may go, and what to say where it stops."""

    low: float
    high: float
    too_low: str
    too_high: str

    def within(self, value: float) -> tuple[float, str]:
        """The value or the nearest end, and the reason where it was stopped."""
        high = max(self.low, self.high)
        if value < self.low - 1e-9:
            return self.low, self.too_low
        if value > high + 1e-9:
            return high, self.too_high
        return min(max(value, self.low), high), ""


def lifted(plan: Plan, item: Item, by: float, step: float | None) -> Edit:
    """An item raised by so many metres, stopped where it meets something.

    Raises
    ------
    ValueError
        If the plan cannot be built or the item has no height to change.
    """
    if item.part is Part.LAMP:
        old = plan.lamps[item.index].hanging_height
        room = plan.space.height - plan.canopy.height
        free = _Range(
            MIN_HANGING_M,
            room,
            "The lamp stops 1 cm above the canopy; lower the canopy first.",
            "The lamp has reached the ceiling.",
        )
        new, stopped = free.within(snapped(old + by, step))
        return Edit(
            edits.change_lamp(plan, item.index, hanging_height=round(new, 7)),
            _named("lamp", new - old),
            stopped,
        )
    if item.part is Part.OBSTACLE:
        obstacle = plan.obstacles[item.index]
        free = _Range(
            0.0,
            plan.space.height - obstacle.thickness,
            "The obstacle stands on the floor.",
            "The obstacle has reached the ceiling.",
        )
        old = obstacle.underside
        new, stopped = free.within(snapped(old + by, step))
        moved = edits.change_obstacle(plan, item.index, underside=round(new, 7))
        return Edit(moved, _named("obstacle", new - old), stopped)
    if item.part is Part.CANOPY:
        old = plan.canopy.height
        lowest = min((plan.lamp_height(lamp) for lamp in plan.lamps), default=plan.space.height)
        above = "the lowest lamp; raise the lamp first" if plan.lamps else "the ceiling"
        free = _Range(
            0.0,
            lowest - MIN_HANGING_M,
            "The canopy has reached the floor.",
            f"The canopy stops 1 cm below {above}.",
        )
        new, stopped = free.within(snapped(old + by, step))
        canopy = edits.set_canopy_height(plan, round(new, 7))
        return Edit(canopy, _named("canopy", new - old), stopped)
    if item.part is Part.CEILING:
        old = plan.space.height
        least = max(MIN_HEIGHT_M, plan.canopy.height + MIN_HANGING_M)
        free = _Range(
            least,
            MAX_HEIGHT_M,
            "The ceiling stops 1 cm above the canopy; lower the canopy first.",
            f"A space is at most {MAX_HEIGHT_M:g} m high.",
        )
        new, stopped = free.within(snapped(old + by, step))
        return Edit(edits.set_height(plan, round(new, 7)), _named("ceiling", new - old), stopped)
    if item.part is Part.BAND_EDGE:
        return _edge_lifted(plan, item, by, step)
    raise ValueError(f"a {item.part} has no height to change.")


def _edge_lifted(plan: Plan, item: Item, by: float, step: float | None) -> Edit:
    edges = (0.0, *band_edges(plan, item.index), plan.space.height)
    below, old, above = edges[item.band : item.band + 3]
    beside = "The edge stops at the next edge, the floor or the ceiling."
    free = _Range(below + MIN_BAND_M, above - MIN_BAND_M, beside, beside)
    new, stopped = free.within(snapped(old + by, step))
    moved = edits.move_band_edge(plan, item.index, item.band, round(new, 7))
    return Edit(moved, "Move band edge", stopped)


def _named(thing: str, by: float) -> str:
    return f"{'Lower' if by < 0 else 'Raise'} {thing}"


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


@dataclass(frozen=True)
class HeightDrag:
    """A drag of one item's height that began at a world point."""

    plan: Plan
    item: Item
    grabbed: Point

    def to(self, at: Point, hold: Hold) -> Edit:
        """The plan with the item at the height of the hand."""
        return lifted(self.plan, self.item, at[1] - self.grabbed[1], hold.step)
