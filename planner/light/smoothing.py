"""Chance taken out of what is smooth by nature, as far as the data allow.

Penalised least squares: the values nearest to those found whose second differences
along rows and columns are small (Whittaker, 1923, Proc. Edinburgh Math. Soc. 41, 63).
How much smoothness is bought is settled place by place: independent parts of the data
tell what chance does to the smooth map and to what was taken out of it, and what was
taken out beyond chance is error (an unbiased estimate of risk, as in Mallows, 1973,
Technometrics 15, 661). Linear fields pass unchanged, and so do peaks that stand out of
the chance.
"""

from __future__ import annotations

from functools import lru_cache

import numpy as np

from planner.light.prism import FloatArray, IntArray

_STRENGTHS = 10.0 ** np.arange(-1.5, 5.1, 0.75)

_ABOUT = 2
"""Cells on each side over which the risk of smoothing is averaged."""


def smoothed(
    parts: FloatArray, shape: tuple[int, ...], inside: IntArray, area: FloatArray
) -> tuple[FloatArray, FloatArray]:
    """The sum (C,) of independent parts of a density (n, C) without most of its chance.

    And the mean square error left in it, by the estimate of risk that chose it; (C,).
    Parts are alike but for chance, such as what every n-th of the photons brought. Cells
    ``inside`` (C,) count through a map of this ``shape``; their ``area`` (C,) is in m².
    """
    total = parts.sum(axis=0)
    rows, columns = shape
    fits = _bent(rows, columns, inside.tobytes(), parts)
    smooth, left = fits.sum(axis=1), _variance(fits)
    beyond = (total - smooth) ** 2 - _variance(parts - fits)
    about = _about(np.concatenate([beyond, left, _variance(parts)[None]]), shape, inside)
    count = len(_STRENGTHS)
    risks = np.maximum(about[:count], 0.0) + about[count:-1]
    result, best = total, about[-1]
    for one, risk in zip(smooth, risks, strict=True):
        result, best = np.where(risk < best, one, result), np.minimum(risk, best)
    result = np.maximum(result, 0.0)
    found = float(result @ area)
    result *= float(total @ area) / found if found > 0 else 1.0
    return result, best


def _about(values: FloatArray, shape: tuple[int, ...], inside: IntArray) -> FloatArray:
    """Means over the cells about each of several maps (n, C)."""
    rows, columns = shape
    # Of values, and of ones for their number.
    table = np.zeros((len(values) + 1, rows + 2 * _ABOUT, columns + 2 * _ABOUT))
    inner = table[:, _ABOUT : _ABOUT + rows, _ABOUT : _ABOUT + columns]
    row, column = np.divmod(inside, columns)
    inner[:-1, row, column], inner[-1, row, column] = values, 1.0
    wide = range(2 * _ABOUT + 1)
    over = sum((table[:, k : k + rows] for k in wide[1:]), table[:, :rows])
    sums = sum((over[:, :, k : k + columns] for k in wide[1:]), over[:, :, :columns])
    at = sums[:, row, column]
    means: FloatArray = at[:-1] / at[-1]
    return means


def _bent(rows: int, columns: int, inside: bytes, parts: FloatArray) -> FloatArray:
    """Maps (strengths, n, C) nearest to ``parts`` (n, C) that bend less, for each strength."""
    across, inverse, beside = _bending(rows, columns, inside)
    of = np.frombuffer(inside, dtype=np.intp)
    blocks, size = inverse.shape[0], inverse.shape[-1]
    # Lines of the table run across the shorter side, two of them in a block.
    place = of if across else of % columns * rows + of // columns
    known = np.zeros((blocks * size, len(parts)))
    known[place] = parts.T
    forward: list[FloatArray] = []
    for k, one in enumerate(known.reshape(blocks, 1, size, -1)):
        if k:
            one = one - beside[k - 1].swapaxes(-1, -2) @ forward[-1]  # noqa: PLW2901
        forward.append(inverse[k] @ one)
    found = [forward[-1]]
    for k in range(blocks - 2, -1, -1):
        found.append(forward[k] - inverse[k] @ (beside[k] @ found[-1]))
    fits = np.stack(found[::-1], axis=1).reshape(len(_STRENGTHS), blocks * size, -1)
    bent: FloatArray = fits[:, place].swapaxes(1, 2)
    return bent


@lru_cache(maxsize=2)
def _bending(rows: int, columns: int, inside: bytes) -> tuple[bool, FloatArray, FloatArray]:
    """Ones on the diagonal and the sum of squared second differences, times each strength.

    Taken apart two lines at a time, beyond which no difference reaches: whether a line is a row,
    the inverses (blocks, strengths, m, m) of what is left of each block when those before it are
    eliminated, and what couples it to the next (blocks - 1, strengths, m, m).

    It depends on which cells are ``inside`` alone (indices as bytes), which stays as it is while
    a corner is dragged a little; and it is large, so that no grid keeps its own.
    """
    of = np.frombuffer(inside, dtype=np.intp)
    flat = np.zeros(rows * columns, dtype=bool)
    flat[of] = True
    table, across = flat.reshape(rows, columns), columns <= rows
    table = table if across else table.T
    size, blocks = 2 * table.shape[1], (len(table) + 1) // 2
    number = np.arange(table.size).reshape(table.shape)
    matrix = np.zeros((blocks * size,) * 2)
    for lines, free in ((number, table), (number.T, table.T)):
        three = np.stack([lines[:, :-2], lines[:, 1:-1], lines[:, 2:]])
        all_free = free[:, :-2] & free[:, 1:-1] & free[:, 2:]
        three = three[:, all_free]
        for a, first in zip((1.0, -2.0, 1.0), three, strict=True):
            for b, second in zip((1.0, -2.0, 1.0), three, strict=True):
                # No pair of cells is named twice by one of the nine.
                matrix[first, second] += a * b
    strengths = _STRENGTHS[:, None, None]
    by_block = matrix.reshape(blocks, size, blocks, size)
    beside = strengths * np.array([by_block[k, :, k + 1] for k in range(blocks - 1)]).reshape(
        -1, 1, size, size
    )
    inverse: list[FloatArray] = []
    for k in range(blocks):
        own: FloatArray = np.eye(size) + strengths * by_block[k, :, k]
        if k:
            own = own - beside[k - 1].swapaxes(-1, -2) @ inverse[-1] @ beside[k - 1]
        inverse.append(np.asarray(np.linalg.inv(own)))
    return across, np.stack(inverse), beside


def _variance(parts: FloatArray) -> FloatArray:
    """Variance of the sums of alike parts (..., n, C), shape (..., C)."""
    variance: FloatArray = parts.shape[-2] * parts.var(axis=-2, ddof=1)
    return variance
