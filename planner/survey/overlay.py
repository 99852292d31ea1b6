"""Readings over an estimate: what is left between them, and what it means in words.

Arrays in, arrays out: the estimate comes as its map (cell means, rows by rising y).
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np
import numpy.typing as npt

from planner.plan.survey import Meter, Survey
from planner.survey.statistics import gain_standard, hole_means, reading_noise
from planner.units import COVERAGE

FloatArray = npt.NDArray[np.float64]
GOOD_MEAN: Final = 0.10
GOOD_POINT: Final = 0.15
"""Agreement of a careful survey with an estimate: root-sum-square of calibration 5 %,
directional error 3 %, placement 3 % and spectral error 3 % is 7 %; rounded up."""


@dataclass(frozen=True)
class Residuals:
    """Measured against estimated at the holes of a survey; all arrays (n,), PPFD.

    ``difference`` is measured minus estimated, ``ratio`` measured over estimated (NaN where
    the estimate is dark). ``dead_band`` is the half-width inside which a difference says
    nothing: 95 % of the meter's gain and noise. ``bias`` is the mean difference, ``rms``
    its root mean square, ``relative_bias`` and ``relative_rms`` over the estimated mean.
    ``r2`` is the squared correlation, None where the readings are all alike.
    ``scatter`` is the relative rms that is left when the common factor is taken out.
    """

    holes: npt.NDArray[np.intp]
    points: FloatArray
    measured: FloatArray
    estimated: FloatArray
    difference: FloatArray
    ratio: FloatArray
    dead_band: FloatArray
    bias: float
    rms: float
    mean_error: float
    relative_bias: float
    relative_rms: float
    scatter: float
    r2: float | None
    gain: float

    @property
    def outside(self) -> npt.NDArray[np.bool_]:
        """Which differences the meter's uncertainty does not explain, (n,)."""
        return np.abs(self.difference) > self.dead_band

    @property
    def poor(self) -> bool:
        """Whether a careful survey should have agreed better with the estimate."""
        return abs(self.relative_bias) > GOOD_MEAN or self.scatter > GOOD_POINT

    def words(self) -> tuple[str, ...]:
        """What the figures mean, in sentences."""
        return (self._bias_words(), self._scatter_words(), self._fit_words(), self._band_words())

    def _bias_words(self) -> str:
        percent = abs(self.relative_bias) * 100
        way = "above" if self.bias >= 0 else "below"
        said = f"On the mean the readings lie {percent:.1f} % {way} the estimate"
        if abs(self.relative_bias) <= COVERAGE * self.gain:
            return f"{said}, which the meter's calibration alone could explain."
        if abs(self.relative_bias) <= GOOD_MEAN:
            return f"{said}: more than the calibration explains, but good agreement (within 10 %)."
        return (
            f"{said}: more than a meter usually errs. Look at the lamp's photon flux, the linings "
            "and the hanging height first."
        )

    def _scatter_words(self) -> str:
        percent = self.scatter * 100
        said = f"Apart from that common factor they scatter by {percent:.1f} % (rms)"
        if self.scatter <= 0.05:
            return f"{said}: the shape of the light is right."
        if self.scatter <= GOOD_POINT:
            return f"{said}: the shape of the light is about right."
        return (
            f"{said}: the shape of the light differs. Look at the lamp's profile and place, and at "
            "the map of residuals."
        )

    def _fit_words(self) -> str:
        if self.r2 is None:
            return "The readings are all alike, so a correlation says nothing."
        return (
            f"r² = {self.r2:.2f}: the estimate follows {self.r2 * 100:.0f} % of how the readings "
            "vary from hole to hole; where the light is even this is low however good the estimate."
        )

    def _band_words(self) -> str:
        count, total = int(self.outside.sum()), len(self.holes)
        return f"{count} of {total} readings differ by more than the meter's own uncertainty."


def residuals(survey: Survey, estimated_at: FloatArray) -> Residuals | None:
    """Readings against the estimate at all of the survey's points, (all points,).

    None while there are no readings. Repeated readings count as their mean.
    """
    holes, measured, counts, _ = hole_means(survey)
    if len(holes) == 0:
        return None
    estimated = estimated_at[holes - 1]
    difference = measured - estimated
    lit = estimated > 0
    ratio = np.full(len(holes), np.nan)
    ratio[lit] = measured[lit] / estimated[lit]
    mean = float(estimated.mean())
    bias, rms = float(difference.mean()), math.sqrt(float((difference**2).mean()))
    factor = float(measured.sum() / estimated.sum()) if mean > 0 else 1.0
    level = float(measured.mean())
    rest = measured - factor * estimated
    scatter = math.sqrt(float((rest**2).mean())) / level if level > 0 else 0.0
    noise, gain = reading_noise(survey), gain_standard(survey.meter)
    band = COVERAGE * np.hypot(gain, noise / np.sqrt(counts)) * np.maximum(measured, estimated)
    return Residuals(
        holes=holes,
        points=np.array(survey.points)[holes - 1],
        measured=measured,
        estimated=estimated,
        difference=difference,
        ratio=ratio,
        dead_band=band,
        bias=bias,
        rms=rms,
        mean_error=float(np.abs(difference).mean()),
        relative_bias=bias / mean if mean > 0 else 0.0,
        relative_rms=rms / mean if mean > 0 else 0.0,
        scatter=scatter,
        r2=_r2(measured, estimated),
        gain=gain,
    )


def _r2(measured: FloatArray, estimated: FloatArray) -> float | None:
    a, b = measured - measured.mean(), estimated - estimated.mean()
    size = float((a**2).sum() * (b**2).sum())
    tiny = 1e-18 * float((measured**2).sum() * (estimated**2).sum())
    return float((a * b).sum()) ** 2 / size if size > tiny else None


INTERPOLATED_LABEL: Final = "Interpolated from readings alone; between holes it is a guess."


def interpolated_map(
    x: FloatArray, y: FloatArray, inside: npt.NDArray[np.bool_], survey: Survey
) -> FloatArray | None:
    """A map of the readings alone on cells ``x`` (nx,), ``y`` (ny,); NaN where not inside.

    Thin-plate spline through the means of the holes (J. Duchon 1977): the smoothest surface
    that takes every value. None below three holes that span a plane. Show it only together
    with ``INTERPOLATED_LABEL``.
    """
    holes, means, _, _ = hole_means(survey)
    points = np.array(survey.points)[holes - 1] if len(holes) else np.zeros((0, 2))
    if len(points) < 3:
        return None
    places, index = np.unique(points, axis=0, return_inverse=True)
    count = np.bincount(index.ravel())
    values = np.bincount(index.ravel(), means) / count
    size = float(np.ptp(places, axis=0).max())
    if len(places) < 3 or np.linalg.matrix_rank(places - places[0], tol=1e-6 * size) < 2:
        return None
    from scipy.interpolate import RBFInterpolator

    spline = RBFInterpolator(places / size, values, kernel="thin_plate_spline")
    u, v = np.meshgrid(x, y)
    cells = np.column_stack([u[inside], v[inside]]) / size
    table = np.full(inside.shape, np.nan)
    table[inside] = np.maximum(spline(cells), 0.0) if len(cells) else 0.0
    return table


def common_scale(estimate: FloatArray, surveys: Sequence[Survey]) -> tuple[float, float]:
    """Lowest and highest PPFD over a map and surveys, for one colour scale for all."""
    values = [estimate[np.isfinite(estimate)]]
    values += [hole_means(survey)[1] for survey in surveys]
    joined = np.concatenate(values)
    return (float(joined.min()), float(joined.max())) if len(joined) else (0.0, 0.0)


def dead_band(meter: Meter) -> float:
    """Relative half-width (95 %) of a single reading: gain and noise together."""
    return COVERAGE * math.hypot(gain_standard(meter), meter.noise)
