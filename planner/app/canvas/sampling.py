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


def default_section(bounds: tuple[float, float, float, float]) -> Section:
    """A level line through the middle of the space, from side to side."""
    x0, y0, x1, y1 = bounds
    middle = (y0 + y1) / 2
    return (x0, middle), (x1, middle)
