"""How far a map is from a reference that has a chance error of its own."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from planner.estimate.result import Estimate

FloatArray = npt.NDArray[np.float64]

RMS, MEAN = 0.01, 0.003
"""Asked at default quality: root mean square over cells and mean, as shares of the mean."""


@dataclass(frozen=True)
class Deviation:
    """Shares of the reference mean.

    ``rms`` is as found; ``chance`` the part of it due to the reference's own standard
    error; ``mean`` the difference of means and ``mean_error`` its standard error.
    """

    rms: float
    chance: float
    mean: float
    mean_error: float
    cells: int

    @property
    def own(self) -> float:
        """What remains of ``rms`` when the reference's chance is taken off in quadrature."""
        return math.sqrt(max(self.rms**2 - self.chance**2, 0.0))

    @property
    def within(self) -> bool:
        """Whether both differences are inside the asked tolerance and the joint error.

        The mean square of n chance errors varies by √(2/n) of itself; three such and
        three standard errors of the mean are allowed.
        """
        slack = 3 * math.sqrt(2 / self.cells) * self.chance**2
        return (
            self.rms**2 - self.chance**2 <= RMS**2 + slack
            and abs(self.mean) <= MEAN + 3 * self.mean_error
        )


def deviation(
    found: Estimate,
    density: FloatArray,
    error: FloatArray,
    mean: float | None = None,
    mean_error: float | None = None,
) -> Deviation:
    """Compare an estimate with a reference map (ny, nx) and its standard error.

    Cells of which less than a third lies inside are left out of the rms. Without ``mean``
    and ``mean_error`` (area mean and its standard error) they are taken from the map.
    """
    area = found.cell_area
    if mean is None:
        mean = float(np.nansum(density * area) / area.sum())
    if mean_error is None:
        mean_error = math.sqrt(float(np.nansum((error * area) ** 2))) / float(area.sum())
    whole = area > area.max() / 3
    scale = float(density[whole].mean())
    difference = (found.ppfd - density)[whole]
    own_mean = float(np.nansum(found.ppfd * area) / area.sum())
    return Deviation(
        math.sqrt(float((difference**2).mean())) / scale,
        math.sqrt(float((error[whole] ** 2).mean())) / scale,
        own_mean / mean - 1,
        mean_error / mean,
        int(whole.sum()),
    )
