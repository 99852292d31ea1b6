"""Sampling: the light of an estimate under the pointer and along a line."""

from __future__ import annotations

import math

import numpy as np
import numpy.typing as npt

from planner.estimate.result import Estimate
from planner.plan.space import Point, contains

Field = npt.NDArray[np.float64]
Section = tuple[Point, Point]


def values_at(estimate: Estimate, xs: Field, ys: Field) -> Field:
    """PPFD at points (n,), NaN outside the footprint and in what stands there."""
    points = np.column_stack([xs, ys])
    footprint = estimate.plan.space.footprint
    inside = [contains(footprint, float(x), float(y)) for x, y in points]
    known = np.array(inside) & estimate.map.covers(points)
    return np.where(known, estimate.map.at(points), np.nan)


def value_at(estimate: Estimate, x: float, y: float) -> float | None:
    """PPFD at one point, or None outside the footprint."""
    value = float(values_at(estimate, np.array([x]), np.array([y]))[0])
    return value if math.isfinite(value) else None


def profile_along(estimate: Estimate, section: Section, count: int = 161) -> tuple[Field, Field]:
    """Distance from the section's start in metres and PPFD there, NaN outside."""
    (x0, y0), (x1, y1) = section
    # A hair inside the ends, which often lie exactly on a wall.
    share = np.linspace(1e-6, 1 - 1e-6, count)
    xs, ys = x0 + (x1 - x0) * share, y0 + (y1 - y0) * share
    return share * math.dist(*section), values_at(estimate, xs, ys)


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
