"""Sums by index."""

from __future__ import annotations

from typing import Any

import numpy as np
import numpy.typing as npt

FloatArray = npt.NDArray[np.float64]


def totals(index: npt.NDArray[Any], amounts: npt.NDArray[Any], count: int) -> FloatArray:
    """Sum of ``amounts`` (n,) for each ``index`` (n,) from 0 to ``count`` - 1, shape (count,)."""
    # numpy's stubs type every bincount as integers, whatever the weights.
    return np.asarray(np.bincount(index, weights=amounts, minlength=count), dtype=np.float64)
