"""Sampling: values of a map between its cell centres, and along a line."""

from __future__ import annotations

import math

import numpy as np
import numpy.typing as npt

from planner.estimate.result import Estimate
from planner.plan.space import Point, contains

Field = npt.NDArray[np.float64]
Section = tuple[Point, Point]

_ROWS_AT_ONCE = 16


def filled(field: Field) -> Field:
    """The map with its NaN cells taken from their neighbours, ring by ring.

    Interpolation at the footprint's edge then sees only light, no holes. An all-NaN map
    becomes zero.
    """
    result = field.copy()
    unknown = ~np.isfinite(result)
    if unknown.all():
        return np.zeros_like(result)
    while unknown.any():
        padded = np.pad(result, 1, constant_values=np.nan)
        shifted = np.stack(
            [
                padded[1 + dy : padded.shape[0] - 1 + dy, 1 + dx : padded.shape[1] - 1 + dx]
                for dy in (-1, 0, 1)
                for dx in (-1, 0, 1)
            ]
        )
        count = np.isfinite(shifted).sum(axis=0)
        total = np.where(np.isfinite(shifted), shifted, 0.0).sum(axis=0)
        reached = unknown & (count > 0)
        result[reached] = total[reached] / count[reached]
        unknown = ~np.isfinite(result)
    return result


def weights(cells: int, places: Field) -> Field:
    """Matrix (len(places), cells) that interpolates cell means to places by cubics.

    ``places`` in cell units, 0 at the first cell's centre. Catmull-Rom inside; towards
    the outer edge the slope of the two end cells runs on.
    """
    base = np.floor(places).astype(np.intp)
    t = places - base
    cubic = (
        ((-0.5 * t + 1.0) * t - 0.5) * t,
        (1.5 * t - 2.5) * t * t + 1.0,
        ((-1.5 * t + 2.0) * t + 0.5) * t,
        (0.5 * t - 0.5) * t * t,
    )
    matrix = np.zeros((len(places), cells))
    rows = np.arange(len(places))
    for offset, weight in zip((-1, 0, 1, 2), cubic, strict=True):
        index = base + offset
        beyond = np.maximum(np.maximum(-index, index - (cells - 1)), 0)
        end = np.clip(index, 0, cells - 1)
        inner = np.clip(np.where(index < 0, 1, np.minimum(index, cells - 2)), 0, cells - 1)
        np.add.at(matrix, (rows, end), weight * (1 + beyond))
        np.add.at(matrix, (rows, inner), -weight * beyond)
    return matrix


def resampled(field: Field, rows: int, columns: int) -> npt.NDArray[np.float32]:
    """The map at the cell centres of another raster over the same rectangle."""
    v = (np.arange(rows) + 0.5) * (field.shape[0] / rows) - 0.5
    u = (np.arange(columns) + 0.5) * (field.shape[1] / columns) - 0.5
    return interpolated(field, v, u)


def interpolated(field: Field, v: Field, u: Field) -> npt.NDArray[np.float32]:
    """The map on a raster of places (rows, columns) in cell units, never below zero."""
    # Single precision: a picture needs no more, and it is drawn while a hand waits.
    whole = filled(field).astype(np.float32)
    along = weights(whole.shape[0], v).astype(np.float32) @ whole
    across = np.ascontiguousarray(weights(whole.shape[1], u).astype(np.float32).T)
    fine = np.empty((len(v), len(u)), np.float32)
    # A few rows at a time: one large product would be split over threads, and wait for a
    # processor that is busy with the next estimate.
    for row in range(0, len(v), _ROWS_AT_ONCE):
        part = fine[row : row + _ROWS_AT_ONCE]
        np.matmul(along[row : row + _ROWS_AT_ONCE], across, out=part)
        np.maximum(part, 0.0, out=part)
    return fine


def _spacing(centres: Field) -> float:
    return float(centres[1] - centres[0]) if len(centres) > 1 else 1.0


def cell_bounds(estimate: Estimate) -> tuple[float, float, float, float]:
    """Outer rectangle (x0, y0, x1, y1) of the map's cells in metres."""
    x, y = estimate.x, estimate.y
    dx, dy = _spacing(x), _spacing(y)
    if len(x) == 1:
        x0, _, x1, _ = estimate.plan.space.bounds
        dx = x1 - x0
    if len(y) == 1:
        _, y0, _, y1 = estimate.plan.space.bounds
        dy = y1 - y0
    return (
        float(x[0]) - dx / 2,
        float(y[0]) - dy / 2,
        float(x[-1]) + dx / 2,
        float(y[-1]) + dy / 2,
    )


def values_at(estimate: Estimate, xs: Field, ys: Field) -> Field:
    """PPFD at points (bilinear between known cell centres), NaN outside the footprint."""
    field = estimate.ppfd
    rows, columns = field.shape
    x0, y0, x1, y1 = cell_bounds(estimate)
    u = np.clip((xs - x0) / (x1 - x0) * columns - 0.5, 0, columns - 1)
    v = np.clip((ys - y0) / (y1 - y0) * rows - 0.5, 0, rows - 1)
    i, j = np.floor(u).astype(np.intp), np.floor(v).astype(np.intp)
    total, weight = np.zeros(len(xs)), np.zeros(len(xs))
    for dj in (0, 1):
        for di in (0, 1):
            cell = field[np.minimum(j + dj, rows - 1), np.minimum(i + di, columns - 1)]
            share = (1 - np.abs(u - i - di)) * (1 - np.abs(v - j - dj))
            known = np.isfinite(cell)
            total += np.where(known, share * cell, 0.0)
            weight += np.where(known, share, 0.0)
    footprint = estimate.plan.space.footprint
    inside = [contains(footprint, float(x), float(y)) for x, y in zip(xs, ys, strict=True)]
    lit = np.array(inside) & (weight > 1e-9)
    return np.where(lit, total / np.where(lit, weight, 1.0), np.nan)


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
