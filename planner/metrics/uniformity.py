"""How even a map is. Every measure is named in full; there is no 'uniformity' alone."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

FloatArray = npt.NDArray[np.float64]


@dataclass(frozen=True)
class Evenness:
    """Area-weighted statistics of a map; ratios are None where the mean is nothing.

    ``min_over_mean`` is U₀ and ``min_over_max`` U_d of EN 12464-1; ``cv`` is the
    population standard deviation over the mean.
    """

    mean: float
    minimum: float
    maximum: float
    min_over_mean: float | None
    min_over_max: float | None
    cv: float | None


def evenness(values: FloatArray, weights: FloatArray) -> Evenness:
    """Statistics of values (n,) with weights (n,), cells outside left out by the caller."""
    if values.size == 0 or weights.sum() <= 0:
        return Evenness(0.0, 0.0, 0.0, None, None, None)
    mean = float(np.average(values, weights=weights))
    low, high = float(values.min()), float(values.max())
    if mean <= 0:
        return Evenness(mean, low, high, None, None, None)
    variance = float(np.average((values - mean) ** 2, weights=weights))
    return Evenness(mean, low, high, low / mean, low / high, math.sqrt(variance) / mean)


def band_shares(
    values: FloatArray, weights: FloatArray, low: float, high: float
) -> tuple[float, float, float]:
    """Shares of the area under, inside and over a band (its ends count as inside)."""
    total = float(weights.sum())
    if total <= 0:
        return 0.0, 0.0, 0.0
    under = float(weights[values < low].sum()) / total
    over = float(weights[values > high].sum()) / total
    return under, 1.0 - under - over, over
