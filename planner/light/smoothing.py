"""Chance taken out of maps that are smooth by nature, as far as the data themselves allow.

Penalised least squares: the values nearest to those found whose second differences along
rows and columns are small (Whittaker, 1923, Proc. Edinburgh Math. Soc. 41, 63). How much
smoothness is bought is settled place by place: independent parts of the data tell what
chance does to the smooth map and to what was taken out of it, and what was taken out
beyond chance is error (an unbiased estimate of risk, as in Mallows, 1973, Technometrics
15, 661). Linear fields pass unchanged, and so do peaks that stand out of the chance.
"""

from __future__ import annotations

import numpy as np

from planner.light.field import CellGrid
from planner.light.prism import FloatArray

_STRENGTHS = 10.0 ** np.arange(-1.5, 5.1, 0.75)

_ABOUT = 2
"""Cells on each side over which the risk is averaged."""


def smoothed(grid: CellGrid, parts: FloatArray) -> tuple[FloatArray, FloatArray]:
    """The sum (C,) of independent parts of a map (n, C) without most of its chance.

    And the mean square error left in it, by the estimate of risk that chose it; (C,).

    Parts are alike but for chance, such as what every n-th of the photons brought.
    """
    total = parts.sum(axis=0)
    rough = _roughness(grid)
    result, best = total, _about(grid, _variance(parts))
    for strength in _STRENGTHS:
        system = strength * rough
        system[np.diag_indices_from(system)] += 1.0
        fitted = np.linalg.solve(system, parts.T).T
        smooth = fitted.sum(axis=0)
        beyond = (total - smooth) ** 2 - _variance(parts - fitted)
        risk = np.maximum(_about(grid, beyond), 0.0) + _about(grid, _variance(fitted))
        result, best = np.where(risk < best, smooth, result), np.minimum(risk, best)
    return np.maximum(result, 0.0), best


def _variance(parts: FloatArray) -> FloatArray:
    """Variance of the sum of alike parts (n, C), shape (C,)."""
    variance: FloatArray = len(parts) * parts.var(axis=0, ddof=1)
    return variance


def _about(grid: CellGrid, values: FloatArray) -> FloatArray:
    """Means over the cells about each (C,)."""
    table = np.pad(grid.on_map(values), _ABOUT, constant_values=np.nan)
    windows = np.lib.stride_tricks.sliding_window_view(table, (2 * _ABOUT + 1,) * 2)
    means: FloatArray = np.nanmean(windows.reshape(grid.area.size, -1)[grid.inside], axis=1)
    return means


def _roughness(grid: CellGrid) -> FloatArray:
    """Sum of squared second differences of neighbouring cells as a matrix (C, C)."""
    rows, columns = grid.area.shape
    slots = np.full(rows * columns, -1, dtype=np.intp)
    slots[grid.inside] = np.arange(len(grid.inside))
    table = slots.reshape(rows, columns)
    matrix = np.zeros((len(grid.inside),) * 2)
    for lines in (table, table.T):
        three = np.stack([lines[:, :-2], lines[:, 1:-1], lines[:, 2:]]).reshape(3, -1)
        three = three[:, (three >= 0).all(axis=0)]
        for a, first in zip((1.0, -2.0, 1.0), three, strict=True):
            for b, second in zip((1.0, -2.0, 1.0), three, strict=True):
                np.add.at(matrix, (first, second), a * b)
    return matrix
