"""Direct light on the map, also where a lamp hangs so close that cells are wide beside it."""

from __future__ import annotations

import math

import numpy as np

from planner.light.direct import direct_on
from planner.light.emission import CosinePower, Source
from planner.light.field import CellGrid
from planner.light.prism import FloatArray, IntArray, Prism
from planner.light.totals import totals

_NEAREST = 0.005
"""Metres; lamps hang at least twice as high."""

_TOLERANCE = 2e-6
_MOST = 24
"""Most points along each edge of a cell."""


def direct_on_cells(grid: CellGrid, prism: Prism, source: Source) -> FloatArray:
    """Direct flux density of a unit lamp on the cells of a map, shape (C,), as cell means."""
    gap = source.centre[2] - grid.z
    if gap <= 0:
        return np.zeros(len(grid.inside))
    near = max(gap, _NEAREST)
    receivers, cell, share = grid.receivers(averaged=True)
    cells = totals(cell, share * direct_on(prism, source, receivers, None, near), len(grid.inside))
    wanted = _points_per_edge(grid, source, near)
    for count in np.unique(wanted[wanted > 2]):
        which = np.flatnonzero(wanted == count)
        points, weights = _spread(grid, prism, which, int(count))
        values = direct_on(prism, source, points.reshape(3, -1), None, near)
        cells[which] = (values.reshape(weights.shape) * weights).sum(axis=1)
    return cells


def _points_per_edge(grid: CellGrid, source: Source, gap: float) -> IntArray:
    """Gauss points that each cell (C,) needs along an edge.

    As in ``Source.nodes``: the error falls as ρ^(-2n), here with the singularity at the
    complex distance z = (r + i h) / a, r sideways and h down from the lamp, a half an edge,
    and ρ = |z + √(z² - 1)| (Trefethen, 2013, ch. 19). A beam narrower than a Lambertian
    one is as steep as a lamp hung nearer.
    """
    centre = grid.centre.reshape(2, -1)[:, grid.inside]
    local = source.axes() @ (centre - np.array(source.centre[:2])[:, None])
    beside = np.abs(local[:, None, :] - source.strips[:, :2].T[:, :, None])
    beside = np.maximum(beside - source.strips[:, 2:].T[:, :, None] / 2, 0.0)
    sideways = np.hypot(*beside).min(axis=0)
    profile = source.profile
    steep = math.sqrt((profile.exponent + 3) / 4) if isinstance(profile, CosinePower) else 1.0
    z = (sideways + 1j * gap) / (max(steep, 1.0) * max(grid.step) / 2)
    root = np.sqrt(z**2 - 1)
    ellipse = np.maximum(np.abs(z + root), np.abs(z - root))
    count = np.ceil(math.log(1 / _TOLERANCE) / (2 * np.log(ellipse)))
    points: IntArray = np.clip(count, 2, _MOST).astype(np.intp)
    return points


def _spread(
    grid: CellGrid, prism: Prism, which: IntArray, count: int
) -> tuple[FloatArray, FloatArray]:
    """Points (3, n, count²) in some cells and weights (n, count²) that add up to 1 in each."""
    x, w = np.polynomial.legendre.leggauss(count)
    u, v = (axis.ravel() for axis in np.meshgrid(x, x))
    weight = np.outer(w, w).ravel() / 4
    rows, columns = np.divmod(grid.inside[which], grid.area.shape[1])
    px = grid.x[columns][:, None] + u * grid.step[0] / 2
    py = grid.y[rows][:, None] + v * grid.step[1] / 2
    inside = prism.contains(px, py)
    weights = weight * inside
    # A sliver between all points stands for itself by its centre.
    missed = weights.sum(axis=1) <= 0
    centre = grid.centre.reshape(2, -1)[:, grid.inside[which]]
    px[missed], py[missed] = centre[0, missed, None], centre[1, missed, None]
    weights[missed] = weight
    weights /= weights.sum(axis=1, keepdims=True)
    return np.stack([px, py, np.full_like(px, grid.z)]), weights
