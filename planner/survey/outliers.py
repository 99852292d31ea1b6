"""Readings that cannot be: far off what their neighbours, or an estimate, lead to expect.

All by medians, which a mistyped reading does not move.
"""

from __future__ import annotations

import math
from typing import Final

import numpy as np
import numpy.typing as npt

FloatArray = npt.NDArray[np.float64]
BoolArray = npt.NDArray[np.bool_]

NEIGHBOURS: Final = 6
OUTLIER_LIMIT: Final = 4.0
"""Robust standard deviations beyond which a reading is flagged."""
_MAD_TO_SIGMA: Final = 1.4826
"""Median absolute deviation of a normal distribution to its standard deviation."""
_FEWEST_FOR_OUTLIERS: Final = 6
_LEAST_OFF: Final = 0.1
_LEAST_FAR: Final = 0.2
"""Off an estimate by less a reading is no slip of hand or pen (a rule of this program)."""


def far_off_neighbours(points: FloatArray, means: FloatArray) -> tuple[FloatArray, BoolArray]:
    """What the neighbours of each hole lead to expect, and whether it lies far off.

    The expected value is that of a plane through the (up to) six nearest other holes,
    fitted to the logarithms of their readings by least absolute deviations (so that one
    bad neighbour does not spoil it). A hole is suspect when its relative deviation from it
    exceeds four robust standard deviations (1.4826 times the median absolute deviation,
    P. J. Rousseeuw, C. Croux (1993), J. Am. Stat. Assoc. 88, 1273) of the deviations of
    all holes and also 10 %. Fewer than six lit holes tell nothing: NaN and False.

    Points (n, 2), means (n,); returns (n,) and (n,).
    """
    count = len(means)
    expected = np.full(count, np.nan)
    lit = means > 0
    if int(lit.sum()) < _FEWEST_FOR_OUTLIERS:
        return expected, np.zeros(count, dtype=np.bool_)
    logs = np.log(np.where(lit, means, 1.0))
    for k in range(count):
        distance = np.hypot(*(points - points[k]).T)
        distance[k] = np.inf
        distance[~lit] = np.inf
        order = np.argsort(distance, kind="stable")[: min(NEIGHBOURS, int(lit.sum()) - int(lit[k]))]
        expected[k] = math.exp(_plane_at(points[order] - points[k], logs[order]))
    deviation = np.where(lit, logs - np.log(expected), -np.inf)
    usual = deviation[lit]
    sigma = _MAD_TO_SIGMA * float(np.median(np.abs(usual - np.median(usual))))
    limit = max(OUTLIER_LIMIT * sigma, _LEAST_OFF)
    return expected, np.abs(deviation) > limit


MODIFIED_Z: Final = 3.5
"""Of a modified z-score beyond which a value is an outlier: B. Iglewicz, D. C. Hoaglin (1993), How
to Detect and Handle Outliers, ASQC Quality Press (from memory)."""


def outliers(
    points: FloatArray, measured: FloatArray, estimated: FloatArray, noise: float
) -> BoolArray:
    """Which readings are far from their neighbours and from the estimate alike, (n,).

    ``points`` (n, 2), ``measured`` and ``estimated`` (n,) in one unit; ``noise`` is the relative
    standard deviation of one reading. Far off is by a fifth and by ``MODIFIED_Z`` times the spread
    of the logarithms of measured over estimated: 1.4826 times their median absolute deviation,
    taken for no less than the noise. By so much an outlier lies off the median of all of them,
    off that of its nearest ones, and beyond all readings beside it. So where a shadow or a bright
    spot is expected none is called so, nor where readings and estimate part over a whole side.
    Fewer than six lit holes tell nothing.
    """
    none = np.zeros(len(measured), dtype=np.bool_)
    lit = estimated > 0
    if int((lit & (measured > 0)).sum()) < _FEWEST_FOR_OUTLIERS:
        return none
    # A zero is far off any light; a value that small keeps its logarithm a number.
    floor = 1e-6 * float(np.median(measured[lit]))
    read = np.log(np.maximum(measured, floor))
    over = np.where(lit, read - np.log(np.where(lit, estimated, 1.0)), 0.0)
    off = np.abs(over - np.median(over[lit]))
    limit = max(MODIFIED_Z * max(_MAD_TO_SIGMA * float(np.median(off[lit])), noise), _LEAST_FAR)
    found = none
    for k in np.flatnonzero(lit & (off > limit)):
        distance = np.hypot(*(points - points[k]).T)
        distance[~lit] = np.inf
        distance[k] = np.inf
        near = np.argsort(distance, kind="stable")[: min(NEIGHBOURS, int(lit.sum()) - 1)]
        beyond = max(read[k] - read[near].max(), read[near].min() - read[k])
        found[k] = beyond > limit and abs(over[k] - np.median(over[near])) > limit
    return found


def _plane_at(offsets: FloatArray, values: FloatArray) -> float:
    """Value at the origin of a plane of least absolute deviations through (n, 2) offsets."""
    reach = float(np.abs(offsets).max()) or 1.0
    table = np.column_stack([np.ones(len(values)), offsets / reach])
    # Neighbours on one side only (a corner) would let the slope run away: hold it lightly.
    ridge = np.diag([0.0, 0.05, 0.05])
    weights = np.ones(len(values))
    solution = np.array([float(np.median(values)), 0.0, 0.0])
    for _ in range(12):
        scaled = table * weights[:, None]
        solution = np.linalg.solve(table.T @ scaled + ridge, scaled.T @ values)
        weights = 1 / np.maximum(np.abs(values - table @ solution), 1e-3)
        weights /= weights.max()
    return float(solution[0])
