"""Items: the parts of a plan drawing a hand or key can take hold of, and finding them."""

from __future__ import annotations

import math
from dataclasses import dataclass
from enum import StrEnum

from PySide6.QtCore import QPointF

from planner.app.canvas.sampling import Section
from planner.app.canvas.viewport import Viewport
from planner.plan.lamp import Lamp
from planner.plan.plan import Plan
from planner.plan.space import Point, contains

CORNER_REACH = 8.0
WALL_REACH = 8.0
LINE_REACH = 6.0
MIN_LAMP_PX = 10.0
TURN_HANDLE_PX = 20.0


class Part(StrEnum):
    """Kinds of item on the plan view and on the elevation."""

    LAMP = "lamp"
    WALL = "wall"
    CORNER = "corner"
    SECTION = "section"
    SECTION_START = "section start"
    SECTION_END = "section end"
    TURN = "turn"
    CANOPY = "canopy"
    CEILING = "ceiling"
    FLOOR = "floor"
    BAND_EDGE = "band edge"
    INSIDE = "inside"
    OUTSIDE = "outside"


@dataclass(frozen=True)
class Item:
    """One part of the drawing; ``index`` counts lamps, walls or corners, ``band`` bands."""

    part: Part
    index: int = 0
    band: int = 0

    def fits(self, plan: Plan) -> bool:
        """Whether the plan still has it."""
        if self.part in {Part.LAMP, Part.TURN}:
            return self.index < len(plan.lamps)
        if self.part in {Part.WALL, Part.CORNER}:
            return self.index < plan.space.wall_count
        if self.part is Part.BAND_EDGE:
            return self.index < plan.space.wall_count and self.band + 1 < len(
                plan.walls[self.index].bands
            )
        return True


def items_in_order(plan: Plan) -> tuple[Item, ...]:
    """All items the Tab key steps through: lamps, walls, corners, the section line."""
    return (
        *(Item(Part.LAMP, k) for k in range(len(plan.lamps))),
        *(Item(Part.WALL, k) for k in range(plan.space.wall_count)),
        *(Item(Part.CORNER, k) for k in range(plan.space.wall_count)),
        Item(Part.SECTION),
    )


def distance_to_segment(point: Point, start: Point, end: Point) -> float:
    """Distance of a point from a straight piece of line, in the points' own unit."""
    return math.dist(point, nearest_on_segment(point, start, end))


def nearest_on_segment(point: Point, start: Point, end: Point) -> Point:
    """The point of a straight piece of line nearest to another point."""
    dx, dy = end[0] - start[0], end[1] - start[1]
    square = dx * dx + dy * dy
    if square == 0:
        return start
    t = ((point[0] - start[0]) * dx + (point[1] - start[1]) * dy) / square
    t = min(max(t, 0.0), 1.0)
    return start[0] + t * dx, start[1] + t * dy


def lamp_reach(lamp: Lamp, scale: float) -> tuple[float, float]:
    """Half length and half width in metres within which a lamp is taken hold of."""
    length, width = lamp.model.size
    least = MIN_LAMP_PX / scale
    return max(length / 2, least), max(width / 2, least)


def turn_handle(lamp: Lamp, viewport: Viewport) -> QPointF:
    """Pixel of the handle that turns a lamp, beyond the end of its own x axis."""
    reach = lamp_reach(lamp, viewport.scale)[0] + TURN_HANDLE_PX / viewport.scale
    angle = math.radians(lamp.rotation_deg)
    return viewport.to_pixel(lamp.x + reach * math.cos(angle), lamp.y + reach * math.sin(angle))


def hits_lamp(lamp: Lamp, at: Point, scale: float) -> bool:
    """Whether a world point lies on a lamp's body (or near enough to a small one)."""
    angle = math.radians(lamp.rotation_deg)
    dx, dy = at[0] - lamp.x, at[1] - lamp.y
    along = dx * math.cos(angle) + dy * math.sin(angle)
    across = -dx * math.sin(angle) + dy * math.cos(angle)
    half_length, half_width = lamp_reach(lamp, scale)
    return abs(along) <= half_length and abs(across) <= half_width


def item_at(
    plan: Plan, section: Section, viewport: Viewport, pixel: QPointF, turning: int | None = None
) -> Item:
    """What lies under a pixel, the smallest target first.

    ``turning`` is the lamp that shows its turning handle, if any.
    """
    spot = (pixel.x(), pixel.y())

    def near(u: float, v: float, reach: float) -> bool:
        at = viewport.to_pixel(u, v)
        return math.hypot(at.x() - spot[0], at.y() - spot[1]) <= reach

    if turning is not None and turning < len(plan.lamps):
        handle = turn_handle(plan.lamps[turning], viewport)
        if math.hypot(handle.x() - spot[0], handle.y() - spot[1]) <= CORNER_REACH:
            return Item(Part.TURN, turning)
    for k, corner in enumerate(plan.space.footprint):
        if near(*corner, CORNER_REACH):
            return Item(Part.CORNER, k)
    for end, part in zip(section, (Part.SECTION_START, Part.SECTION_END), strict=True):
        if near(*end, CORNER_REACH):
            return Item(part)
    at = viewport.to_world(pixel)
    for k in reversed(range(len(plan.lamps))):
        if hits_lamp(plan.lamps[k], at, viewport.scale):
            return Item(Part.LAMP, k)
    wall = nearest_wall(plan, at)
    if distance_to_segment(at, *plan.space.wall(wall)) * viewport.scale <= WALL_REACH:
        return Item(Part.WALL, wall)
    if distance_to_segment(at, *section) * viewport.scale <= LINE_REACH:
        return Item(Part.SECTION)
    inside = contains(plan.space.footprint, *at)
    return Item(Part.INSIDE if inside else Part.OUTSIDE)


def nearest_wall(plan: Plan, at: Point) -> int:
    """The wall a point is nearest to."""
    return min(
        range(plan.space.wall_count),
        key=lambda k: distance_to_segment(at, *plan.space.wall(k)),
    )


def wall_normal(plan: Plan, wall: int) -> Point:
    """Unit normal of a wall, out of the space."""
    (ax, ay), (bx, by) = plan.space.wall(wall)
    length = math.dist((ax, ay), (bx, by))
    return (by - ay) / length, -(bx - ax) / length
