"""What a survey's readings say: per hole, against neighbours, in all, and over an estimate.

Three things are kept apart throughout. The *gain* of the meter is one unknown factor common
to all of its readings; *noise* differs from reading to reading; *placement* from visit to
visit. Only the last two become small by many readings or cancel out in nothing; only the
first cancels in ratios of surveys made with one meter.
"""

from __future__ import annotations

import math
from collections.abc import Collection
from dataclasses import dataclass
from typing import Final

import numpy as np
import numpy.typing as npt

from planner.plan.survey import Meter, Survey
from planner.survey.outliers import BoolArray, FloatArray, far_off_neighbours, outliers
from planner.units import COVERAGE, OF_EVEN, listed

_BESIDE: Final = 4
_NAMED: Final = 4
_SLIP: Final = 4.0


@dataclass(frozen=True)
class HoleSummary:
    """Readings of one hole: mean in µmol m⁻² s⁻¹, their number and standard deviation.

    ``spread`` is None for a single reading. ``suspect`` tells that the mean lies far off
    what the neighbours lead to expect; ``expected`` is that value.
    """

    hole: int
    x: float
    y: float
    mean: float
    count: int
    spread: float | None
    expected: float | None = None
    suspect: bool = False


@dataclass(frozen=True)
class SurveySummary:
    """A survey in figures; PPFD in µmol m⁻² s⁻¹.

    ``noise`` is the relative standard deviation of a single reading: found from repeated
    readings where there are at least five degrees of freedom, else as the meter says.
    ``mean_noise`` is the standard uncertainty of the mean by noise and placement,
    ``mean_gain`` that by the meter's gain; ``mean_uncertainty`` both together.
    """

    holes: tuple[HoleSummary, ...]
    mean: float
    minimum: float
    maximum: float
    min_over_mean: float
    noise: float
    mean_noise: float
    mean_gain: float

    @property
    def mean_uncertainty(self) -> float:
        """Standard uncertainty of the mean, gain and noise together."""
        return math.hypot(self.mean_noise, self.mean_gain)

    @property
    def suspects(self) -> tuple[HoleSummary, ...]:
        """Holes whose reading lies far off its neighbours."""
        return tuple(hole for hole in self.holes if hole.suspect)


def gain_standard(meter: Meter) -> float:
    """Relative standard uncertainty of the meter's gain."""
    return meter.gain_uncertainty * OF_EVEN


def hole_means(survey: Survey) -> tuple[npt.NDArray[np.intp], FloatArray, FloatArray, FloatArray]:
    """Holes with readings (numbers from 1), their means, counts and sums of squares, each (n,)."""
    holes = np.array([reading.hole for reading in survey.counted], dtype=np.intp)
    values = np.array([reading.value for reading in survey.counted], dtype=np.float64)
    numbers, index = np.unique(holes, return_inverse=True)
    count = np.bincount(index, minlength=len(numbers)).astype(np.float64)
    means = np.bincount(index, values, minlength=len(numbers)) / np.maximum(count, 1)
    deviations = values - means[index]
    squares = np.bincount(index, deviations**2, minlength=len(numbers)).astype(np.float64)
    return numbers, means, count, squares


def reading_moments(survey: Survey) -> FloatArray:
    """When each hole with readings was read on the mean, (n,), in the order of ``hole_means``.

    From -1/2 at the first to 1/2 at the last by the clock where each reading has its time, else
    by their order; 0 where there is but one.
    """
    counted = survey.counted
    holes = np.array([reading.hole for reading in counted], dtype=np.intp)
    when = np.linspace(-0.5, 0.5, len(holes)) if len(holes) > 1 else np.zeros(len(holes))
    clock = [reading.at for reading in counted if reading.at is not None]
    if len(clock) == len(counted) and len(set(clock)) > 1:
        seconds = np.array(clock)
        when = (seconds - seconds.min()) / np.ptp(seconds) - 0.5
    _, index = np.unique(holes, return_inverse=True)
    result: FloatArray = np.bincount(index, when) / np.maximum(np.bincount(index), 1)
    return result


@dataclass(frozen=True)
class Drift:
    """How much the lamps changed from the first reading to the last, as repeated holes tell.

    ``change`` is the logarithm of the last over the first, ``standard`` its standard
    uncertainty by the noise of single readings.
    """

    change: float
    standard: float

    def words(self) -> str:
        """What it means, in a sentence."""
        size, band = 100 * math.expm1(self.change), 100 * COVERAGE * self.standard
        said = (
            f"From the first reading to the last the light changed by {size:+.1f} % ± {band:.1f} %"
        )
        if abs(size) <= band:
            return f"{said}: no drift to be seen."
        return f"{said}; a calibration takes that off."


def drift_of(survey: Survey) -> Drift | None:
    """The drift that holes read more than once show; None where none tells it.

    Least squares on the logarithms of the readings about the mean of their hole, against when
    they were read (``reading_moments``). Repeats in one go tell nothing: more uncertain than
    the light itself (a standard uncertainty above 0.5) is None.
    """
    lit = [reading for reading in survey.counted if reading.value > 0]
    if len(lit) < 2:
        return None
    alone = survey.model_copy(
        update={
            "readings": tuple(r.model_copy(update={"hole": k + 1}) for k, r in enumerate(lit)),
        }
    )
    when = reading_moments(alone)
    holes = np.array([reading.hole for reading in lit])
    logs = np.log([reading.value for reading in lit])
    for hole in np.unique(holes):
        mine = holes == hole
        when[mine] -= when[mine].mean()
        logs[mine] -= logs[mine].mean()
    weight = float((when**2).sum())
    noise = reading_noise(survey)
    if weight * 0.25 < noise**2 or noise <= 0:
        return None
    return Drift(float((when * logs).sum()) / weight, noise / math.sqrt(weight))


def without(survey: Survey, holes: Collection[int]) -> Survey:
    """The survey with the readings of some holes set aside."""
    rest = (r.model_copy(update={"aside": r.aside or r.hole in holes}) for r in survey.readings)
    return survey.model_copy(update={"readings": tuple(rest)})


def summarise(survey: Survey) -> SurveySummary | None:
    """Figures of a survey; None while it has no readings.

    All holes weigh alike, however often they were read: the mean is over places.
    """
    numbers, means, count, squares = hole_means(survey)
    if len(numbers) == 0:
        return None
    mean = float(means.mean())
    noise = reading_noise(survey)
    points = np.array(survey.points)[numbers - 1]
    expected, suspect = far_off_neighbours(points, means)
    spread = [
        math.sqrt(total / (n - 1)) if n > 1 else None
        for total, n in zip(squares.tolist(), count.tolist(), strict=True)
    ]
    holes = tuple(
        HoleSummary(
            hole=int(numbers[k]),
            x=float(points[k, 0]),
            y=float(points[k, 1]),
            mean=float(means[k]),
            count=int(count[k]),
            spread=spread[k],
            expected=None if np.isnan(expected[k]) else float(expected[k]),
            suspect=bool(suspect[k]),
        )
        for k in range(len(numbers))
    )
    # Holes are what was asked for, not a sample of the plane: only their noise counts.
    variance = float(((noise * means) ** 2 / count).sum()) / len(numbers) ** 2
    return SurveySummary(
        holes=holes,
        mean=mean,
        minimum=float(means.min()),
        maximum=float(means.max()),
        min_over_mean=float(means.min()) / mean if mean > 0 else 0.0,
        noise=noise,
        mean_noise=math.sqrt(variance),
        mean_gain=gain_standard(survey.meter) * mean,
    )


def reading_noise(survey: Survey) -> float:
    """Relative standard deviation of one reading, as the meter's record or repeats tell it.

    Repeats without moving the sensor do not show its placement, so what they show counts
    only where it is larger than what the meter's record says.
    """
    _, means, count, squares = hole_means(survey)
    lit = (means > 0) & (count > 1)
    freedom = float((count[lit] - 1).sum())
    if freedom < 5:
        return survey.meter.noise
    found = math.sqrt(float((squares[lit] / means[lit] ** 2).sum()) / freedom)
    return max(found, survey.meter.noise)


def unlikely_reading(survey: Survey, hole: int, value: float) -> tuple[float, float] | None:
    """The lowest and highest of the readings beside a hole, where a new one is far beyond them.

    Beside it are its own former readings and the four nearest holes that were read. Far beyond
    is more than four times, as a slip of the decimal mark makes it (a rule of this program);
    the light of a lamp changes less from one hole to the next. A zero is far beyond them unless
    one of them is dark too; holes that are dark say nothing of a reading that is not.
    """
    numbers, means, _, _ = hole_means(survey)
    told = means > 0 if value > 0 else means >= 0
    if not told.any():
        return None
    points = np.array(survey.points)
    away = np.hypot(*(points[numbers[told] - 1] - points[hole - 1]).T)
    near = means[told][np.argsort(away, kind="stable")[:_BESIDE]]
    low, high = float(near.min()), float(near.max())
    return (low, high) if not low / _SLIP <= value <= high * _SLIP else None


# -- readings over an estimate ----------------------------------------------------------
# The estimate comes as its map (cell means, rows by rising y) or as what it says at the holes.

GOOD_MEAN: Final = 0.10
GOOD_POINT: Final = 0.15
"""Agreement of a careful survey with an estimate: root-sum-square of calibration 5 %,
directional error 3 %, placement 3 % and spectral error 3 % is 7 %; rounded up."""
DARK: Final = 1e-3
"""PPFD below which there is no light to speak of."""
NO_LIGHT: Final = (
    "The estimate is dark at these holes, so nothing can be set against it: hang a lamp, or "
    "turn its output up."
)


@dataclass(frozen=True)
class Residuals:
    """Measured against estimated at the holes of a survey; all arrays (n,), PPFD.

    ``difference`` is measured minus estimated, ``ratio`` measured over estimated (NaN where
    the estimate is dark). ``dead_band`` is the half-width inside which a difference says
    nothing: 95 % of the meter's gain and noise. ``bias`` is the mean difference, ``rms``
    its root mean square, ``relative_bias`` and ``relative_rms`` over the estimated mean.
    ``r2`` is the squared correlation, None where the readings are all alike.
    ``scatter`` is the relative rms that is left when the common factor is taken out.
    ``outlier`` tells of readings that cannot be (``outliers``); no figure counts them.
    """

    holes: npt.NDArray[np.intp]
    points: FloatArray
    measured: FloatArray
    estimated: FloatArray
    difference: FloatArray
    ratio: FloatArray
    dead_band: FloatArray
    outlier: BoolArray
    bias: float
    rms: float
    mean_error: float
    relative_bias: float
    relative_rms: float
    scatter: float
    r2: float | None
    gain: float

    @property
    def odd(self) -> frozenset[int]:
        """Numbers of the holes whose readings cannot be."""
        return frozenset(self.holes[self.outlier].tolist())

    @property
    def outside(self) -> npt.NDArray[np.bool_]:
        """Which differences the meter's uncertainty does not explain, (n,)."""
        return np.abs(self.difference) > self.dead_band

    @property
    def dark(self) -> bool:
        """Whether the estimate has no light to compare with."""
        return float(self.estimated.max()) < DARK

    @property
    def poor(self) -> bool:
        """Whether a careful survey should have agreed better with the estimate."""
        far = abs(self.relative_bias) > GOOD_MEAN or self.scatter > GOOD_POINT
        return far and not self.dark

    def words(self) -> tuple[str, ...]:
        """What the figures mean, in sentences."""
        if self.dark:
            return (NO_LIGHT,)
        told = (self._bias_words(), self._scatter_words(), self._fit_words(), self._band_words())
        return (self.outlier_words, *told) if self.outlier.any() else told

    @property
    def outlier_words(self) -> str:
        """Which readings cannot be, to be said before all else; '' where none."""
        which = np.flatnonzero(self.outlier).tolist()
        if not which:
            return ""
        named = [
            f"hole {self.holes[k]}, {self.measured[k]:.4g} ({self.estimated[k]:.3g} estimated)"
            for k in which[:_NAMED]
        ]
        named += [f"{len(which) - _NAMED} more"] if len(which) > _NAMED else []
        if len(which) == 1:
            return (
                f"The reading at {named[0]}, is far from its neighbours and from the estimate: "
                "read it again. The rest is told without it."
            )
        return (
            f"The readings at {listed(named)} are far from their neighbours and from the "
            "estimate: read them again. The rest is told without them."
        )

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
        count, total = int((self.outside & ~self.outlier).sum()), int((~self.outlier).sum())
        return f"{count} of {total} readings differ by more than the meter's own uncertainty."


def residuals(survey: Survey, estimated_at: FloatArray) -> Residuals | None:
    """Readings against the estimate at all of the survey's points, (all points,).

    None while there are no readings. Repeated readings count as their mean.
    """
    holes, measured, counts, _ = hole_means(survey)
    if len(holes) == 0:
        return None
    estimated = estimated_at[holes - 1]
    noise, gain = reading_noise(survey), gain_standard(survey.meter)
    points = np.array(survey.points)[holes - 1]
    dark = float(estimated.max()) < DARK
    outlier = outliers(points, measured, estimated, noise) & (not dark)
    difference = measured - estimated
    lit = estimated > 0
    ratio = np.full(len(holes), np.nan)
    ratio[lit] = measured[lit] / estimated[lit]
    band = COVERAGE * np.hypot(gain, noise / np.sqrt(counts)) * np.maximum(measured, estimated)
    # What cannot be is said of by itself, and rules no figure.
    read, told = measured[~outlier], estimated[~outlier]
    mean, apart = float(told.mean()), read - told
    bias, rms = float(apart.mean()), math.sqrt(float((apart**2).mean()))
    factor = float(read.sum() / told.sum()) if mean > 0 else 1.0
    level = float(read.mean())
    scatter = math.sqrt(float(((read - factor * told) ** 2).mean())) / level if level > 0 else 0.0
    return Residuals(
        holes=holes,
        points=points,
        measured=measured,
        estimated=estimated,
        difference=difference,
        ratio=ratio,
        dead_band=band,
        outlier=outlier,
        bias=bias,
        rms=rms,
        mean_error=float(np.abs(apart).mean()),
        relative_bias=bias / mean if mean > 0 else 0.0,
        relative_rms=rms / mean if mean > 0 else 0.0,
        scatter=scatter,
        r2=_r2(read, told),
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


def dead_band(meter: Meter) -> float:
    """Relative half-width (95 %) of a single reading: gain and noise together."""
    return COVERAGE * math.hypot(gain_standard(meter), meter.noise)
