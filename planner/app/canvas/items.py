"""What a drawing's hand can point at: the light at a place, and the parts that can be held."""

from __future__ import annotations

import math
from dataclasses import dataclass
from enum import StrEnum
from typing import Final

import numpy as np
import numpy.typing as npt
from PySide6.QtCore import QPointF

from planner.app.canvas.ink import Viewport
from planner.estimate.result import Estimate
from planner.metrics.figures import FIGURE, Figure, ppfd
from planner.plan.alignment import foot
from planner.plan.lamp import Lamp
from planner.plan.place import OWN, Place, PlaceKind, lining_at, opens
from planner.plan.plan import Plan
from planner.plan.space import Obstacle, Point, contains
from planner.plan.tiers import from_above
from planner.units import LengthUnit, format_length, listed

Field = npt.NDArray[np.float64]
Section = tuple[Point, Point]


# -- The light of an estimate under the pointer and along a line -----------------------


def value_at(estimate: Estimate, x: float, y: float, key: str = "mean") -> float | None:
    """PPFD, or another of the maps, at one point, on the highest canopy; None outside."""
    value = float(estimate.seen_at(np.array([x]), np.array([y]), key)[0])
    return value if math.isfinite(value) else None


def profile_along(
    estimate: Estimate, section: Section, count: int = 161, key: str = "mean"
) -> tuple[Field, Field]:
    """Distance from the section's start in metres and what lies there, seen from above."""
    (x0, y0), (x1, y1) = section
    # A hair inside the ends, which often lie exactly on a wall.
    share = np.linspace(1e-6, 1 - 1e-6, count)
    xs, ys = x0 + (x1 - x0) * share, y0 + (y1 - y0) * share
    return share * math.dist(*section), estimate.seen_at(xs, ys, key)


OFF_WALL_M = 0.01


def off_walls(section: Section, footprint: tuple[Point, ...]) -> Section:
    """The section, a centimetre into the space where it ran along a wall.

    On the wall itself there is no light to read, and wall and line cover each other.
    """
    (x0, y0), (x1, y1) = section
    for (ax, ay), (bx, by) in zip(footprint, footprint[1:] + footprint[:1], strict=True):
        length = math.hypot(bx - ax, by - ay)
        ux, uy = (bx - ax) / length, (by - ay) / length
        off = [(y - ay) * ux - (x - ax) * uy for x, y in section]
        along = sorted((x - ax) * ux + (y - ay) * uy for x, y in section)
        beside = max(map(abs, off)) < OFF_WALL_M / 2
        if beside and along[1] > 0.01 and along[0] < length - 0.01:
            # Corners run counter-clockwise: the space lies to the left of each wall.
            dx, dy = -uy * OFF_WALL_M, ux * OFF_WALL_M
            return (x0 + dx, y0 + dy), (x1 + dx, y1 + dy)
    return section


def default_section(bounds: tuple[float, float, float, float]) -> Section:
    """A level line through the middle of the space, from side to side."""
    x0, y0, x1, y1 = bounds
    middle = (y0 + y1) / 2
    return (x0, middle), (x1, middle)


# -- The parts of a drawing a hand or key can take hold of, and finding them -----------

CORNER_REACH = 8.0
WALL_REACH = 8.0
LINE_REACH = 6.0
MIN_LAMP_PX = 10.0
TURN_HANDLE_PX = 20.0


class Part(StrEnum):
    """Kinds of item on the plan view and on the elevation."""

    LAMP = "lamp"
    OBSTACLE = "obstacle"
    WALL = "wall"
    CORNER = "corner"
    SECTION = "section"
    SECTION_START = "section start"
    SECTION_END = "section end"
    TURN = "turn"
    TURN_OBSTACLE = "turn obstacle"
    CANOPY = "canopy"
    CEILING = "ceiling"
    FLOOR = "floor"
    BAND_EDGE = "band edge"
    INSIDE = "inside"
    OUTSIDE = "outside"


@dataclass(frozen=True)
class Item:
    """One part of the drawing: a place of the plan or a handle of it, or the section line.

    ``index`` counts things of its kind, ``band`` the bands of a wall from the floor up.
    """

    part: Part
    index: int = 0
    band: int = 0

    @classmethod
    def of(cls, place: Place) -> Item:
        """The item that stands for a place as a whole."""
        return cls(Part(place.kind), place.index)

    @property
    def place(self) -> Place | None:
        """The place it is of; None for the section line and what lies outside."""
        kind = _PLACES.get(self.part)
        if kind is None:
            return None
        return Place(kind, self.index, self.band if kind is PlaceKind.WALL else None)

    def fits(self, plan: Plan) -> bool:
        """Whether the plan still has it."""
        place = self.place
        if self.part is Part.BAND_EDGE:
            # The uppermost band has no edge to take hold of.
            place = Place(PlaceKind.WALL, self.index, self.band + 1)
        return place is None or place.fits(plan)


_PLACES: Final = {
    Part.LAMP: PlaceKind.LAMP,
    Part.TURN: PlaceKind.LAMP,
    Part.OBSTACLE: PlaceKind.OBSTACLE,
    Part.TURN_OBSTACLE: PlaceKind.OBSTACLE,
    Part.WALL: PlaceKind.WALL,
    Part.BAND_EDGE: PlaceKind.WALL,
    Part.CORNER: PlaceKind.CORNER,
    Part.CANOPY: PlaceKind.CANOPY,
    Part.INSIDE: PlaceKind.CANOPY,
    Part.CEILING: PlaceKind.CEILING,
    Part.FLOOR: PlaceKind.FLOOR,
}


def items_in_order(plan: Plan) -> tuple[Item, ...]:
    """All items the Tab key steps through: lamps, obstacles, walls, corners, the section."""
    return (
        *(Item(Part.LAMP, k) for k in range(len(plan.lamps))),
        *(Item(Part.OBSTACLE, k) for k in range(len(plan.obstacles))),
        *(Item(Part.WALL, k) for k in range(plan.space.wall_count)),
        *(Item(Part.CORNER, k) for k in range(plan.space.wall_count)),
        Item(Part.SECTION),
    )


def distance_to_segment(point: Point, start: Point, end: Point) -> float:
    """Distance of a point from a straight piece of line, in the points' own unit."""
    return math.dist(point, foot(point, start, end))


def reach_of(thing: Lamp | Obstacle, scale: float) -> tuple[float, float]:
    """Half length and half width in metres within which a lamp or obstacle is taken hold of."""
    least = MIN_LAMP_PX / scale
    if isinstance(thing, Lamp):
        length, width = thing.model.size
    else:
        length, width, least = thing.length, thing.width, least / 2
    return max(length / 2, least), max(width / 2, least)


def turn_handle(
    thing: Lamp | Obstacle, viewport: Viewport, beyond: float = TURN_HANDLE_PX
) -> QPointF:
    """Pixel of the handle that turns a thing, so far beyond the end of its own x axis."""
    reach = reach_of(thing, viewport.scale)[0] + beyond / viewport.scale
    angle = math.radians(thing.rotation_deg)
    return viewport.to_pixel(thing.x + reach * math.cos(angle), thing.y + reach * math.sin(angle))


def hits(thing: Lamp | Obstacle, at: Point, scale: float) -> bool:
    """Whether a world point lies on a lamp or obstacle (or near enough to a small one)."""
    half = reach_of(thing, scale)
    angle = math.radians(thing.rotation_deg)
    dx, dy = at[0] - thing.x, at[1] - thing.y
    along = dx * math.cos(angle) + dy * math.sin(angle)
    across = -dx * math.sin(angle) + dy * math.cos(angle)
    return abs(along) <= half[0] and abs(across) <= half[1]


def item_at(
    plan: Plan,
    section: Section,
    viewport: Viewport,
    pixel: QPointF,
    turning: int | None = None,
    turning_obstacle: int | None = None,
    looked: Place = OWN,
) -> Item:
    """What lies under a pixel, the smallest target first.

    ``turning`` is the lamp, ``turning_obstacle`` the obstacle that shows its turning
    handle, if any. What lies on the canopy ``looked`` at comes before what hangs higher.
    """
    small = [
        *_turning_handles(plan, viewport, turning, turning_obstacle),
        *(
            (Item(Part.CORNER, k), viewport.to_pixel(*at))
            for k, at in enumerate(plan.space.footprint)
        ),
        (Item(Part.SECTION_START), viewport.to_pixel(*section[0])),
        (Item(Part.SECTION_END), viewport.to_pixel(*section[1])),
    ]
    for item, spot in small:
        if math.hypot(spot.x() - pixel.x(), spot.y() - pixel.y()) <= CORNER_REACH:
            return item
    return _large_item_at(plan, section, viewport.to_world(pixel), viewport.scale, looked)


def _turning_handles(
    plan: Plan, viewport: Viewport, lamp: int | None, obstacle: int | None
) -> list[tuple[Item, QPointF]]:
    found = []
    if lamp is not None and lamp < len(plan.lamps):
        found.append((Item(Part.TURN, lamp), turn_handle(plan.lamps[lamp], viewport)))
    if obstacle is not None and obstacle < len(plan.obstacles):
        handle = turn_handle(plan.obstacles[obstacle], viewport)
        found.append((Item(Part.TURN_OBSTACLE, obstacle), handle))
    return found


def _large_item_at(plan: Plan, section: Section, at: Point, scale: float, looked: Place) -> Item:
    """A body, a wall or the section line under a world point."""
    for k in reversed(range(len(plan.lamps))):
        if hits(plan.lamps[k], at, scale):
            return Item(Part.LAMP, k)
    wall = nearest_wall(plan, at)
    if distance_to_segment(at, *plan.space.wall(wall)) * scale <= WALL_REACH:
        return Item(Part.WALL, wall)
    lying, higher = from_above(plan, looked)
    for k in reversed((*higher, *lying)):
        if hits(plan.obstacles[k], at, scale):
            return Item(Part.OBSTACLE, k)
    if distance_to_segment(at, *section) * scale <= LINE_REACH:
        return Item(Part.SECTION)
    inside = contains(plan.space.footprint, *at)
    return Item(Part.INSIDE if inside else Part.OUTSIDE)


def place_of(plan: Plan, item: Item, section: Section) -> Point:
    """A world point on an item, for a menu called by a key."""
    if item.part is Part.CORNER:
        return plan.space.footprint[item.index]
    if item.part is Part.WALL:
        return middle_of_wall(plan, item.index)
    if item.part is Part.LAMP:
        return plan.lamps[item.index].x, plan.lamps[item.index].y
    if item.part is Part.OBSTACLE:
        return plan.obstacles[item.index].x, plan.obstacles[item.index].y
    return section[0]


def walls_of(item: Item | None, count: int) -> frozenset[int]:
    """Walls whose lengths an item decides."""
    if item is None:
        return frozenset()
    if item.part is Part.WALL:
        return frozenset({(item.index - 1) % count, item.index, (item.index + 1) % count})
    if item.part is Part.CORNER:
        return frozenset({(item.index - 1) % count, item.index})
    return frozenset()


def middle_of_wall(plan: Plan, wall: int) -> Point:
    """The middle of a wall."""
    (x0, y0), (x1, y1) = plan.space.wall(wall)
    return (x0 + x1) / 2, (y0 + y1) / 2


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


# -- The plan drawing in words, for screen readers -------------------------------------


def plan_in_words(
    plan: Plan,
    section: Section,
    unit: LengthUnit,
    focused: Item | None,
    estimate: Estimate | None,
    shown: Figure = FIGURE["mean"],
) -> str:
    """What the plan view shows: size, walls, lamps, light, and the item in hand."""
    x0, y0, x1, y1 = plan.space.bounds

    def length(metres: float) -> str:
        return format_length(metres, unit)

    parts = [
        f"Plan of a space of {plan.space.wall_count} walls, {length(x1 - x0)} wide and "
        f"{length(y1 - y0)} deep."
    ]
    if not plan.lamps:
        parts.append("No lamp hangs in it.")
    for number, lamp in enumerate(plan.lamps, start=1):
        parts.append(
            f"Lamp {number}, {lamp.label or lamp.model.name}, hangs at x {length(lamp.x)}, "
            f"y {length(lamp.y)}."
        )
    parts += [
        f"{obstacle.name} stands at x {length(obstacle.x)}, y {length(obstacle.y)}, "
        f"{length(obstacle.underside)} to {length(obstacle.top)} above the floor."
        for obstacle in plan.obstacles
    ]
    if estimate is not None and math.isfinite(estimate.figures.mean):
        figures = estimate.figures
        parts.append(
            f"The light on {estimate.place.inside(estimate.plan)} runs from "
            f"{ppfd(figures.minimum)} to {ppfd(figures.maximum)}, on average {ppfd(figures.mean)} "
            "micromoles per square metre and second."
        )
        values = estimate.every(shown.key)
        if shown.key != "mean" and np.isfinite(values).any():
            low, high = (shown.written(float(of(values))) for of in (np.nanmin, np.nanmax))
            parts.append(f"The map shows {shown.map_name}: {low} to {high} {shown.map_unit}.")
    if estimate is not None and estimate.walls is not None:
        most = [
            f"{ppfd(float(light.max()))} on wall {k}"
            for k, light in enumerate(estimate.walls, start=1)
            if not opens(estimate.plan, Place(PlaceKind.WALL, k - 1))
        ]
        parts += [f"On the walls at most: {listed(most)}."] if most else []
    if focused is not None:
        parts.append(f"In hand: {item_in_words(plan, focused, section, unit)}.")
    return " ".join(parts)


def item_in_words(plan: Plan, item: Item, section: Section, unit: LengthUnit) -> str:
    """One item: what it is, and where or how long."""
    figures = item_figures(plan, item, section, unit)
    if item.part in {Part.LAMP, Part.TURN}:
        return f"lamp {item.index + 1} at {figures}"
    if item.part in {Part.OBSTACLE, Part.TURN_OBSTACLE}:
        return f"{plan.obstacles[item.index].name} at {figures}"
    if item.part is Part.CORNER:
        return f"corner {item.index + 1} at {figures}"
    if item.part is Part.WALL:
        cover = plan.walls[item.index]
        names = ", ".join(plan.lining(band.lining).name for band in cover.bands)
        door = ", the door" if plan.space.door == item.index else ""
        return f"wall {item.index + 1}{door}, {figures}, lined with {names}"
    return f"section line {figures}"


def item_title(plan: Plan, item: Item) -> str:
    """What an item is, by name: 'Lamp 1: Bar', 'Wall 2: Foil', 'Section line'."""
    place = item.place
    if item.part is Part.BAND_EDGE:
        return f"Edge {item.band + 1} of the linings of wall {item.index + 1}"
    if place is None:
        return "Section line"
    wall = place.kind is PlaceKind.WALL and not plan.wall_opens(place.index)
    door = ", the door" if wall and plan.space.door == place.index else ""
    bands = plan.walls[place.index].bands if wall else ()
    several = lining_at(plan, place.whole) is None
    linings = ": " + listed([plan.lining(band.lining).name for band in bands]) if bands else ""
    return f"{place.whole.title(plan)}{linings if several else ''}{door}"


def item_figures(plan: Plan, item: Item, section: Section, unit: LengthUnit) -> str:
    """Where an item of the plan view is, or how long."""

    def spot(x: float, y: float) -> str:
        return f"x {format_length(x, unit)}, y {format_length(y, unit)}"

    if item.part in {Part.LAMP, Part.TURN}:
        lamp = plan.lamps[item.index]
        leans = f", {lamp.leans}" if lamp.leans else ""
        return f"{spot(lamp.x, lamp.y)}, turned by {lamp.rotation_deg:g}°{leans}"
    if item.part in {Part.OBSTACLE, Part.TURN_OBSTACLE}:
        obstacle = plan.obstacles[item.index]
        turned = f", turned by {obstacle.rotation_deg:g}°" if obstacle.rotation_deg else ""
        return f"{spot(obstacle.x, obstacle.y)}{turned}"
    if item.part is Part.CORNER:
        return spot(*plan.space.footprint[item.index])
    if item.part is Part.WALL:
        return f"{format_length(plan.space.wall_length(item.index), unit)} long"
    return f"from {spot(*section[0])} to {spot(*section[1])}"
