"""Geometry of lamp outlines on the plan: overlap, sticking out, distance. Metres."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import Final

from planner.plan.space import Point, contains

Outline = tuple[Point, ...]

TOUCH_M: Final = 0.001
"""Bodies that touch, or cross by less than this, still count as clear of each other."""


def _edges(outline: Outline) -> Iterator[tuple[Point, Point]]:
    return zip(outline, outline[1:] + outline[:1], strict=True)


def _side(p: Point, q: Point, r: Point) -> float:
    return (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])


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


def _to_segment(p: Point, a: Point, b: Point) -> float:
    length = math.dist(a, b)
    if length == 0:
        return math.dist(p, a)
    along = ((p[0] - a[0]) * (b[0] - a[0]) + (p[1] - a[1]) * (b[1] - a[1])) / length**2
    t = min(max(along, 0.0), 1.0)
    return math.dist(p, (a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])))
