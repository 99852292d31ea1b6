"""What a moved lamp or obstacle lines up with, and what a measuring line is caught by.

Lines through other middles, the middle between two walls, and equal gaps to walls and
neighbours. Lengths are metres; 0 stands for x, 1 for y.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise
from typing import Final

from planner.plan.groups import Chosen, Thing, all_things, extent, thing_at
from planner.plan.place import every
from planner.plan.plan import Setup
from planner.plan.space import Outline, Point

SAME_M: Final = 1e-6
"""What differs by less is alike."""

_Span = tuple[float, float]


@dataclass(frozen=True)
class Guide:
    """Something that holds: a line through middles, or two or more equal gaps.

    ``spans`` are its pieces on the plan; those of equal gaps are alike in length.
    """

    equal_gaps: bool
    spans: tuple[tuple[Point, Point], ...]


@dataclass(frozen=True)
class _Beside:
    """One way to lie along an axis: where the middle is then, and the equal gaps it makes."""

    at: float
    gaps: tuple[_Span, ...] = ()
    to: Point | None = None


def lined_up(
    plan: Setup, places: Chosen, at: Point, reach: float
) -> tuple[Point, tuple[Guide, ...]]:
    """A place of the leader's middle, drawn to what it lines up with, and what holds there.

    Along each axis the nearest line or gap within ``reach`` is taken; ``places`` move together
    and do not line up with one another.
    """
    x = _drawn(plan, places, at, 0, reach)
    y = _drawn(plan, places, (x, at[1]), 1, reach)
    return (x, y), tuple(holding(plan, places, (x, y)))


def _drawn(plan: Setup, places: Chosen, at: Point, axis: int, reach: float) -> float:
    ways = sorted(abs(way.at - at[axis]) for way in _ways(plan, places, at, axis))
    if not ways or ways[0] > reach:
        return at[axis]
    nearest = min(_ways(plan, places, at, axis), key=lambda way: abs(way.at - at[axis]))
    return round(nearest.at, 7)


def holding(plan: Setup, places: Chosen, at: Point) -> Iterator[Guide]:
    """What holds while the leader's middle is at a place, each once."""
    for axis in (0, 1):
        said: set[object] = set()
        for way in _ways(plan, places, at, axis):
            if abs(way.at - at[axis]) > SAME_M:
                continue
            if way.to is not None and "line" not in said:
                said.add("line")
                far = [other.to for other in _lines(plan, places, axis) if _alike(other, way)]
                ends = sorted(
                    [at, *(to for to in far if to is not None)], key=lambda p: p[1 - axis]
                )
                yield Guide(False, ((ends[0], ends[-1]),))
            elif way.gaps and way.gaps not in said:
                said.add(way.gaps)
                spans = tuple(
                    (_point(low, at, axis), _point(high, at, axis)) for low, high in way.gaps
                )
                yield Guide(True, spans)


def _alike(one: _Beside, other: _Beside) -> bool:
    return abs(one.at - other.at) <= SAME_M


def _point(along: float, at: Point, axis: int) -> Point:
    return (along, at[1]) if axis == 0 else (at[0], along)


def _ways(plan: Setup, places: Chosen, at: Point, axis: int) -> Iterator[_Beside]:
    yield from _lines(plan, places, axis)
    yield from _gaps(plan, places, at, axis)


def _still(plan: Setup, places: Chosen) -> list[Thing]:
    return [thing_at(plan, place) for place in all_things(plan) if place not in places]


def _lines(plan: Setup, places: Chosen, axis: int) -> Iterator[_Beside]:
    """Lines through the middles of what stays where it is."""
    for thing in _still(plan, places):
        spot = (thing.x, thing.y)
        yield _Beside(spot[axis], to=spot)


def _gaps(plan: Setup, places: Chosen, at: Point, axis: int) -> Iterator[_Beside]:
    """Gaps alike on both sides, and gaps like the next one of a row."""
    lead = thing_at(plan, places[0])
    own, across = (extent([lead.outline()], 90.0 * k) for k in (axis, 1 - axis))
    half = (own[1] - own[0]) / 2
    shift = at[1 - axis] - (lead.x, lead.y)[1 - axis]
    band = (across[0] + shift, across[1] + shift)
    chord = _chord(plan.space.footprint, at, axis)
    if chord is None:
        return
    row = _row(plan, places, band, chord, axis)
    for (_, left), (right, _) in pairwise(row):
        gap = (right - left) / 2 - half
        middle = (left + right) / 2
        if gap > SAME_M:
            yield _Beside(middle, ((left, middle - half), (middle + half, right)))
    # A row goes on with the gap it has: to the right of two, and to the left of two.
    for k in range(1, len(row) - 1):
        before, here, after = row[k - 1], row[k], row[k + 1]
        gap = here[0] - before[1]
        if gap > SAME_M and here[1] + gap + 2 * half <= after[0] + SAME_M:
            edge = here[1] + gap
            yield _Beside(edge + half, ((before[1], here[0]), (here[1], edge)))
        gap = after[0] - here[1]
        if gap > SAME_M and here[0] - gap - 2 * half >= before[1] - SAME_M:
            edge = here[0] - gap
            yield _Beside(edge - half, ((edge, here[0]), (here[1], after[0])))


def _row(plan: Setup, places: Chosen, band: _Span, chord: _Span, axis: int) -> list[_Span]:
    """What stands in a row with the leader, from wall to wall, as spans along the axis."""
    met = [(chord[0], chord[0]), (chord[1], chord[1])]
    lead = places[0].kind
    for place in every(plan, lead):
        if place in places:
            continue
        outline = [thing_at(plan, place).outline()]
        low, high = extent(outline, 90.0 * (1 - axis))
        span = extent(outline, 90.0 * axis)
        beside = low < band[1] - SAME_M and high > band[0] + SAME_M
        if beside and chord[0] <= span[0] and span[1] <= chord[1]:
            met.append(span)
    return sorted(met)


def _chord(footprint: Outline, at: Point, axis: int) -> _Span | None:
    """From wall to wall through a point, along an axis; None outside."""
    cuts = []
    for a, b in zip(footprint, footprint[1:] + footprint[:1], strict=True):
        if (a[1 - axis] > at[1 - axis]) != (b[1 - axis] > at[1 - axis]):
            share = (at[1 - axis] - a[1 - axis]) / (b[1 - axis] - a[1 - axis])
            cuts.append(a[axis] + share * (b[axis] - a[axis]))
    below = [cut for cut in cuts if cut <= at[axis]]
    above = [cut for cut in cuts if cut > at[axis]]
    return (max(below), min(above)) if below and above else None


# -- the measuring line -----------------------------------------------------------------


def caught(plan: Setup, at: Point, reach: float) -> Point:
    """A point drawn to a corner, to a lamp's or an obstacle's middle or corner, or to a wall.

    Points go before walls; the point itself where nothing is within ``reach``.
    """
    things = _still(plan, ())
    points = [
        *plan.space.footprint,
        *((thing.x, thing.y) for thing in things),
        *(corner for thing in things for corner in thing.outline()),
    ]
    nearest = min(points, key=lambda point: math.dist(point, at))
    if math.dist(nearest, at) <= reach:
        return nearest
    feet = [foot(at, *plan.space.wall(k)) for k in range(plan.space.wall_count)]
    nearest = min(feet, key=lambda point: math.dist(point, at))
    return nearest if math.dist(nearest, at) <= reach else at


def foot(point: Point, start: Point, end: Point) -> Point:
    """The point of a straight piece of line nearest to another point."""
    dx, dy = end[0] - start[0], end[1] - start[1]
    square = dx * dx + dy * dy
    if square == 0:
        return start
    t = ((point[0] - start[0]) * dx + (point[1] - start[1]) * dy) / square
    t = min(max(t, 0.0), 1.0)
    return start[0] + t * dx, start[1] + t * dy
