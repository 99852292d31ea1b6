"""Whether a fit is to be believed, and where its error comes from.

Checked survey by survey, so that one bad evening among six cannot hide: the sum of squared
weighted residuals against χ² for the freedom the fit leaves that survey, each hole against
what noise allows, and patterns over the board and over time (left to right, near to far,
middle to rim, first to last) against noise alone. The gain is no excuse for a pattern: it is
common to all holes.

The budget tells for a fitted value what contributes how much to its variance (JCGM 100:2008,
the GUM, 5.1 and H.1): each reading and each thing known beforehand is one row of the weighted
Jacobian J with unit variance, so row r contributes (C Jᵀ)²_r to the variance, C = (JᵀJ)⁻¹.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

import numpy as np

from planner.estimate.calibrate_model import OF_A_METER, OF_A_SURVEY, Parameter, Quantity
from planner.estimate.result import FloatArray
from planner.metrics.figures import percent
from planner.units import said_length

if TYPE_CHECKING:
    from planner.estimate.calibrate_result import Fit

FALSE_ALARM: Final = 0.01
"""Chance of any warning on an evening on which all is as stated."""
_ABSORBED: Final = 0.1
"""A pattern of which the fit takes up more than all but this part is not tested."""
_HOLE_LIMIT: Final = 4.5
_FAR_PULLED: Final = 3.5
_WORTH_SAYING: Final = 0.2
"""Share of the variance from which a contribution is worth a measurement."""

_PATTERNS: Final = {
    "x": ("on the left", "on the right"),
    "y": ("on the near side", "on the far side"),
    "rim": ("in the middle", "at the rim"),
    "time": ("at first", "at last"),
}


@dataclass(frozen=True)
class SurveyCheck:
    """How well a fit stands to one survey.

    ``ratio`` is the scatter of the readings about the fit over what was stated; ``patterns``
    and ``holes`` (numbers from 1) are what stands out of noise; ``sentences`` say it. ``fine``
    when there is nothing to say.
    """

    key: str
    ratio: float
    holes: tuple[int, ...]
    patterns: tuple[str, ...]
    sentences: tuple[str, ...]

    @property
    def fine(self) -> bool:
        """Whether the readings are as the fit and their stated noise lets expect."""
        return not self.sentences


@dataclass(frozen=True)
class Contribution:
    """Part of the variance of a fitted value, by what is not quite known."""

    words: str
    share: float


def check_surveys(fit: Fit) -> tuple[SurveyCheck, ...]:
    """Check the residuals of each survey of a fit, in its order."""
    from scipy.special import chdtrc, ndtri

    root: FloatArray = fit.jacobian @ np.linalg.cholesky(_plain_covariance(fit))
    tests = len(fit.models)
    found = []
    start = 0
    for k, model in enumerate(fit.models):
        rows = slice(start, start + len(model.measured))
        start = rows.stop
        z = np.log(model.measured / fit.after[k]) / fit.weights[k]
        taken = root[rows]
        freedom = max(len(z) - float((taken**2).sum()), 1.0)
        square = float(z @ z)
        ratio = math.sqrt(square / freedom)
        said: list[str] = []
        name = model.survey.name
        if float(chdtrc(freedom, square)) < FALSE_ALARM / (3 * tests):
            said.append(
                f"The readings of '{name}' scatter {ratio:.1f} times as much as stated about "
                "the fit: something was not as it is written down."
            )
        # Each hole against the scatter of the others, or one bad hole would excuse itself.
        free: FloatArray = np.maximum(1 - (taken**2).sum(axis=1), _ABSORBED)
        others = np.sqrt(np.maximum(square - z**2 / free, 0) / max(freedom - 1, 1.0))
        limit = max(float(-ndtri(FALSE_ALARM / (6 * tests * len(z)))), _HOLE_LIMIT)
        holes = tuple(
            int(h) for h in model.holes[np.abs(z) > limit * np.maximum(others, 1) * np.sqrt(free)]
        )
        if holes:
            listed = ", ".join(str(hole) for hole in holes[:6])
            more = " and others" if len(holes) > 6 else ""
            said.append(f"In '{name}' hole {listed}{more} stands out: read it again.")
        level = float(-ndtri(FALSE_ALARM / (6 * tests * len(_PATTERNS))))
        patterns = _patterns(z, taken, model.points, model.moments, level * max(ratio, 1.0))
        weight = float(np.mean(fit.weights[k]))
        for pattern, amount in patterns.items():
            low, high = _PATTERNS[pattern]
            where = high if amount > 0 else low
            other = low if amount > 0 else high
            said.append(
                f"'{name}' reads about {abs(amount) * weight * 100:.0f} % more {where} than "
                f"{other}, against the fit; noise does not explain that."
            )
        said += _pulls(fit, model.survey.key)
        found.append(SurveyCheck(model.survey.key, ratio, holes, tuple(patterns), tuple(said)))
    return tuple(found)


def _pulls(fit: Fit, key: str) -> list[str]:
    """Conditions of a survey that the fit wants far from where they are written down."""
    said = []
    for p, value in zip(fit.parameters, fit.values.tolist(), strict=True):
        if p.of != key or p.quantity not in OF_A_SURVEY or not p.prior:
            continue
        if abs(value - p.start) > _FAR_PULLED * p.prior:
            if p.quantity is Quantity.HEIGHT:
                by = said_length(round(abs(value - p.start), 3))
            else:
                by = f"{abs(value - p.start) * 100:.0f} %"
            way = "more" if value > p.start else "less"
            said.append(f"The fit asks for {by} {way} than written: {_doubt(fit, p)}.")
    return said


def _patterns(
    z: FloatArray, taken: FloatArray, points: FloatArray, moments: FloatArray, level: float
) -> dict[str, float]:
    """Patterns beyond noise, each with its size from end to end in units of the noise."""
    middle = points.mean(axis=0)
    reach = np.maximum(np.ptp(points, axis=0), 1e-9)
    x, y = ((points - middle) / reach).T
    found = {}
    for name, shape in (("x", x), ("y", y), ("rim", np.hypot(x, y) ** 2), ("time", moments)):
        centred = shape - shape.mean()
        length = float(np.linalg.norm(centred))
        if length < 1e-6:
            continue
        unit = centred / length
        left = 1 - float(((unit @ taken) ** 2).sum())
        amount = float(unit @ z)
        if left > _ABSORBED and abs(amount) > level * math.sqrt(left):
            found[name] = amount / length * float(np.ptp(shape))
    return found


def _plain_covariance(fit: Fit) -> FloatArray:
    """(JᵀJ)⁻¹ of the stated errors alone."""
    normal = fit.jacobian.T @ fit.jacobian + 1e-6 * np.eye(fit.jacobian.shape[1])
    result: FloatArray = np.asarray(np.linalg.inv(normal), dtype=np.float64)
    return result


def budget(fit: Fit, column: int) -> tuple[Contribution, ...]:
    """What the variance of a fitted value is made of, the largest first; shares add up to 1."""
    influence: FloatArray = np.square(fit.jacobian @ _plain_covariance(fit)[column])
    total = float(influence.sum())
    priors = [p for p in fit.parameters if p.prior is not None]
    readings = len(influence) - len(priors)
    rows = [Contribution("noise and placement of the readings", influence[:readings].sum() / total)]
    for parameter, part in zip(priors, influence[readings:], strict=True):
        rows.append(Contribution(_doubt(fit, parameter), float(part) / total))
    return tuple(sorted(rows, key=lambda row: -row.share))


def next_measurement(fit: Fit, column: int) -> str:
    """Which thing known twice as well would help a value most, in a sentence; '' where none."""
    priors = [k for k, p in enumerate(fit.parameters) if p.prior is not None]
    if not priors:
        return ""
    covariance = _plain_covariance(fit)
    rows = fit.jacobian[-len(priors) :]
    # A row of twice the weight adds 3 r rᵀ to JᵀJ (J. Sherman, W. J. Morrison 1950).
    moved = rows @ covariance
    gained = 3 * moved[:, column] ** 2 / (1 + 3 * (moved * rows).sum(axis=1))
    best = int(gained.argmax())
    left = math.sqrt(max(1 - float(gained[best] / covariance[column, column]), 0.0))
    if left > 1 - _WORTH_SAYING / 2:
        return ""
    return (
        f"Known twice as well, the {_doubt(fit, fit.parameters[priors[best]])} would take its "
        f"error to {percent(left)} of that."
    )


def _doubt(fit: Fit, p: Parameter) -> str:
    """A thing known beforehand, in words with how well it was known."""
    half = (p.prior or 0.0) * math.sqrt(3)
    if p.quantity in {Quantity.HEIGHT, Quantity.SENSOR}:
        size = f"± {said_length(round(half, 3))}"
    else:
        size = f"± {half * 100:.3g} %"
    words = {
        Quantity.FLUX: "photon flux of the lamp",
        Quantity.GAIN: "gain of the meter",
        Quantity.SENSOR: "height of the sensor",
        Quantity.COSINE: "meter's response to light from all sides",
        Quantity.OUTPUT: "output of the lamps set up anew",
        Quantity.DRIFT: "drift of the lamps",
        Quantity.BOARD: "reflectance of the board",
        Quantity.DOOR: "gap of the door",
    }.get(p.quantity, p.quantity.value)
    if p.quantity in OF_A_SURVEY:
        name = next(m.survey.name for m in fit.models if m.survey.key == p.of)
        words += f" in '{name}'"
    elif p.quantity in OF_A_METER:
        words += f" '{p.of}'"
    return f"{words} ({size})"
