"""The space: a footprint drawn to scale, a height, its door, canopy and obstacles."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from typing import Annotated, Final, Self

from pydantic import Field, model_validator

from planner.plan.lining import OPENING_KEY
from planner.plan.quantity import (
    MAX_CORNERS,
    AngleDeg,
    BodyLength,
    Coordinate,
    Fraction,
    Height,
    Hours,
    Key,
    Name,
    Ppfd,
    SpaceHeight,
    Value,
)
from planner.plan.target import Target
from planner.plan.wavebands import Wavebands
from planner.units import said_length

Point = tuple[float, float]
Footprint = Annotated[
    tuple[tuple[Coordinate, Coordinate], ...], Field(min_length=3, max_length=MAX_CORNERS)
]

MIN_WALL_M = 0.01
MIN_AREA_M2 = 0.005


class Space(Value):
    """An upright prism over a simple polygon.

    Corners run counter-clockwise; wall ``k`` goes from corner ``k`` to corner ``k + 1``.
    ``door`` names the wall that opens; while ``door_open`` it is an opening, whatever
    lining it carries, and ``room_light`` comes in there, as bright from every direction.
    """

    footprint: Footprint = Field(
        description="Corners of the floor plan, counter-clockwise, as [x, y] in metres."
    )
    height: SpaceHeight = Field(description="Inside height from floor to ceiling.")
    door: int | None = Field(default=None, ge=0, description="Number of the wall that opens.")
    door_open: bool = Field(default=False, description="Whether the door stands open.")
    room_light: Ppfd = Field(
        default=0.0,
        description="PPFD that the room outside sends onto the open door; 0 where it is dark.",
    )
    room_hours: Hours = Field(default=12.0, description="Hours a day the room outside is so light.")

    @model_validator(mode="after")
    def _check(self) -> Self:
        problem = footprint_problem(self.footprint)
        if problem:
            raise ValueError(problem)
        if self.door is not None and self.door >= len(self.footprint):
            raise ValueError(
                f"the door is on wall {self.door + 1}, but the footprint has "
                f"{len(self.footprint)} walls."
            )
        if self.door_open and self.door is None:
            raise ValueError("the door stands open, but no wall is named as the door.")
        return self

    @property
    def wall_count(self) -> int:
        """Number of walls, equal to the number of corners."""
        return len(self.footprint)

    @property
    def area(self) -> float:
        """Floor area in m²."""
        return signed_area(self.footprint)

    @property
    def bounds(self) -> tuple[float, float, float, float]:
        """Bounding rectangle (x0, y0, x1, y1) in metres."""
        xs, ys = zip(*self.footprint, strict=True)
        return min(xs), min(ys), max(xs), max(ys)

    def wall(self, index: int) -> tuple[Point, Point]:
        """The two ends of a wall, in drawing order."""
        corners = self.footprint
        return corners[index], corners[(index + 1) % len(corners)]

    def wall_length(self, index: int) -> float:
        """Length of a wall in metres."""
        return math.dist(*self.wall(index))


def side_of(footprint: tuple[Point, ...], wall: int) -> str:
    """On which side a wall is for one who looks from the near side: near, right, far or left."""
    count = len(footprint)
    (ax, ay), (bx, by) = footprint[wall % count], footprint[(wall + 1) % count]
    # Corners run counter-clockwise: the near wall runs to the right, the right one away.
    across, up = bx - ax, by - ay
    return ("near", "far")[across < 0] if abs(across) >= abs(up) else ("right", "left")[up < 0]


def signed_area(footprint: tuple[Point, ...]) -> float:
    """Shoelace area in m²; positive when the corners run counter-clockwise."""
    total = 0.0
    for (x0, y0), (x1, y1) in zip(footprint, footprint[1:] + footprint[:1], strict=True):
        total += x0 * y1 - x1 * y0
    return total / 2


def contains(footprint: tuple[Point, ...], x: float, y: float) -> bool:
    """Whether a point lies inside a polygon (even-odd rule)."""
    inside = False
    for (x0, y0), (x1, y1) in zip(footprint, footprint[1:] + footprint[:1], strict=True):
        if (y0 > y) != (y1 > y) and x < x0 + (y - y0) * (x1 - x0) / (y1 - y0):
            inside = not inside
    return inside


def turned_rectangle(
    x: float, y: float, length: float, width: float, rotation_deg: float
) -> tuple[Point, Point, Point, Point]:
    """Corners of a rectangle about (x, y), turned, counter-clockwise; metres."""
    angle = math.radians(rotation_deg)
    cos, sin = math.cos(angle), math.sin(angle)

    def corner(u: float, v: float) -> Point:
        return x + u * length * cos - v * width * sin, y + u * length * sin + v * width * cos

    return corner(-0.5, -0.5), corner(0.5, -0.5), corner(0.5, 0.5), corner(-0.5, 0.5)


def footprint_problem(footprint: tuple[Point, ...]) -> str | None:
    """Say in words why a footprint cannot be built, or None when it can.

    Used both by the model (to refuse) and by the sketch (to stop a drag in time).
    """
    count = len(footprint)
    for index in range(count):
        if math.dist(footprint[index], footprint[(index + 1) % count]) < MIN_WALL_M:
            return (
                f"wall {index + 1} of the footprint is shorter than {said_length(MIN_WALL_M)}; "
                "move or remove a corner."
            )
    for first in range(count):
        for second in range(first + 1, count):
            if _walls_touch(footprint, first, second):
                return (
                    f"walls {first + 1} and {second + 1} of the footprint cross or touch; "
                    "the outline must not cut itself."
                )
    area = signed_area(footprint)
    if area < 0:
        return "the corners of the footprint run clockwise; list them counter-clockwise."
    if area < MIN_AREA_M2:
        return "the footprint encloses less than 50 cm²; make the space larger."
    return None


def _walls_touch(footprint: tuple[Point, ...], first: int, second: int) -> bool:
    count = len(footprint)
    a, b = footprint[first], footprint[(first + 1) % count]
    c, d = footprint[second], footprint[(second + 1) % count]
    if second == first + 1 or (first == 0 and second == count - 1):
        # Neighbours share a corner; they clash only when one folds back onto the other.
        shared, end_one, end_two = (b, a, d) if second == first + 1 else (a, b, c)
        ux, uy = end_one[0] - shared[0], end_one[1] - shared[1]
        vx, vy = end_two[0] - shared[0], end_two[1] - shared[1]
        return abs(ux * vy - uy * vx) < 1e-12 and ux * vx + uy * vy > 0

    def within(p: Point, q: Point, r: Point) -> bool:
        return min(p[0], q[0]) - 1e-12 <= r[0] <= max(p[0], q[0]) + 1e-12 and (
            min(p[1], q[1]) - 1e-12 <= r[1] <= max(p[1], q[1]) + 1e-12
        )

    s1, s2, s3, s4 = _side(a, b, c), _side(a, b, d), _side(c, d, a), _side(c, d, b)
    if s1 * s2 < 0 and s3 * s4 < 0:
        return True
    return any(
        abs(s) < 1e-12 and within(p, q, r)
        for s, p, q, r in ((s1, a, b, c), (s2, a, b, d), (s3, c, d, a), (s4, c, d, b))
    )


def _side(p: Point, q: Point, r: Point) -> float:
    return (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])


# -- outlines of lamps and obstacles on the plan -----------------------------------------

Outline = tuple[Point, ...]

TOUCH_M: Final = 0.001
"""Bodies that touch, or cross by less than this, still count as clear of each other."""


def _edges(outline: Outline) -> Iterator[tuple[Point, Point]]:
    return zip(outline, outline[1:] + outline[:1], strict=True)


def _cross(a: Point, b: Point, c: Point, d: Point) -> bool:
    return _side(a, b, c) * _side(a, b, d) < 0 and _side(c, d, a) * _side(c, d, b) < 0


def _shrunk(outline: Outline) -> Outline:
    """A convex outline drawn in by ``TOUCH_M`` towards its centre along each axis of view."""
    x = sum(corner[0] for corner in outline) / len(outline)
    y = sum(corner[1] for corner in outline) / len(outline)
    shrunk = []
    for cx, cy in outline:
        reach = math.hypot(cx - x, cy - y)
        factor = max(reach - TOUCH_M * math.sqrt(2), 0.0) / reach if reach > 0 else 0.0
        shrunk.append((x + (cx - x) * factor, y + (cy - y) * factor))
    return tuple(shrunk)


def hull(points: Iterable[Point]) -> Outline:
    """The least convex outline about some points, counter-clockwise (Andrew, 1979)."""
    ordered = sorted(set(points))

    def half(run: Iterable[Point]) -> list[Point]:
        kept: list[Point] = []
        for x, y in run:
            while len(kept) > 1:
                (ax, ay), (bx, by) = kept[-2:]
                if (bx - ax) * (y - ay) > (by - ay) * (x - ax):
                    break
                kept.pop()
            kept.append((x, y))
        return kept[:-1]

    return tuple(half(ordered) + half(reversed(ordered))) or tuple(ordered)


def sticks_out(outline: Outline, footprint: Outline) -> bool:
    """Whether part of a convex outline lies outside a footprint.

    A point lamp (an outline without extent) sticks out only when its centre does.
    """
    inner = _shrunk(outline)
    if any(not contains(footprint, *corner) for corner in inner):
        return True
    return any(_cross(*edge, *wall) for edge in _edges(inner) for wall in _edges(footprint))


def outlines_overlap(one: Outline, other: Outline) -> bool:
    """Whether two convex outlines share area; two point lamps overlap at the same point.

    Two convex shapes are apart exactly when a line along one of their edges parts them.
    """
    axes = [
        ((ay - by) / length, (bx - ax) / length)
        for outline in (one, other)
        for (ax, ay), (bx, by) in _edges(outline)
        if (length := math.hypot(bx - ax, by - ay)) > 0
    ]
    if not axes:
        return math.dist(one[0], other[0]) < TOUCH_M
    for nx, ny in axes:
        first = [x * nx + y * ny for x, y in one]
        second = [x * nx + y * ny for x, y in other]
        if max(min(first) - max(second), min(second) - max(first)) > -TOUCH_M:
            return False
    return True


def segment_distance(outline: Outline, a: Point, b: Point) -> float:
    """Smallest distance between a convex outline and the segment from a to b (0 if they meet)."""
    if contains(outline, *a) or any(_cross(*edge, a, b) for edge in _edges(outline)):
        return 0.0
    distances = [_to_segment(corner, a, b) for corner in outline]
    distances += [_to_segment(end, *edge) for edge in _edges(outline) for end in (a, b)]
    return min(distances)


def outlines_distance(one: Outline, other: Outline) -> float:
    """Smallest distance between two convex outlines in metres; 0 where they share area."""
    if outlines_overlap(one, other):
        return 0.0
    return min(segment_distance(one, *edge) for edge in _edges(other))


def _to_segment(p: Point, a: Point, b: Point) -> float:
    length = math.dist(a, b)
    if length == 0:
        return math.dist(p, a)
    along = ((p[0] - a[0]) * (b[0] - a[0]) + (p[1] - a[1]) * (b[1] - a[1])) / length**2
    t = min(max(along, 0.0), 1.0)
    return math.dist(p, (a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])))


# -- the canopy ------------------------------------------------------------------------


LeafColours = Annotated[
    Wavebands | None,
    Field(
        description="How its reflectance is spread over the wavebands, as their proportions; null: "
        "the same in all of them."
    ),
]


class Canopy(Value):
    """A horizontal plane over the whole footprint.

    Closed: leaves (or a survey board) fill the plane; it is opaque, reflects diffusely
    and nothing below it matters. Open: the plane is only where the sensor is held, and
    light passes through it to the floor.
    """

    height: Height = Field(default=0.2, description="Height of the plane above the floor.")
    closed: bool = True
    reflectance: Fraction = Field(
        default=0.06, description="Diffuse reflectance of a closed canopy, 400-700 nm."
    )
    wavebands: LeafColours = None


# -- obstacles -------------------------------------------------------------------------


class CarriedCanopy(Value):
    """Leaves that fill the top of an obstacle: a tray on pots, a shelf of plants, a pot.

    Level with the top and as large. Without a ``target`` of its own it has the plan's. A plan is
    ``judged`` by the first that says so, and else by its own canopy.
    """

    reflectance: Fraction = Field(
        default=0.06, description="Diffuse reflectance of the leaves, 400-700 nm."
    )
    wavebands: LeafColours = None
    target: Target | None = None
    judged: bool = Field(
        default=False, description="Whether figures, options and searches speak of this canopy."
    )


class Obstacle(Value):
    """An opaque upright box, turned about the vertical, with one material on all faces.

    Its top may carry a canopy, whose leaves are then what light meets there.
    """

    name: Name = "Shelf"
    x: Coordinate = Field(description="Centre.")
    y: Coordinate = Field(description="Centre.")
    underside: Height = Field(description="Height of its underside above the floor.")
    length: BodyLength = Field(description="Along its own x axis.")
    width: BodyLength = Field(description="Along its own y axis.")
    thickness: BodyLength = Field(description="From the underside up.")
    rotation_deg: AngleDeg = 0.0
    lining: Key = Field(
        default=OPENING_KEY, description="Its material; 'open' stands for black here."
    )
    canopy: CarriedCanopy | None = Field(default=None, description="What grows on its top.")

    @property
    def top(self) -> float:
        """Height of its upper side above the floor in metres."""
        return self.underside + self.thickness

    def off_middle(self, x: float, y: float) -> Point:
        """How far a place lies off its middle along its length and its width, in metres."""
        turn = math.radians(self.rotation_deg)
        cos, sin = math.cos(turn), math.sin(turn)
        dx, dy = x - self.x, y - self.y
        return abs(dx * cos + dy * sin), abs(dy * cos - dx * sin)

    def outline(self) -> tuple[tuple[float, float], ...]:
        """Corners on the plan, in metres."""
        return turned_rectangle(self.x, self.y, self.length, self.width, self.rotation_deg)
