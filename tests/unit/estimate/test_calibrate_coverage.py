"""The 95 % intervals of a calibration hold the truth as often as they say.

For each reference scene the light at the holes comes from maps the core had no part in.
Two hundred draws of gain and noise are fitted each. The core's prediction and Jacobian are
taken once at the truth's neighbourhood (a full fit of readings without noise) and each draw
is solved about it; that this linear step is honest is checked by full fits of some draws.
"""

from __future__ import annotations

import numpy as np
import pytest

from planner.estimate.calibrate import _Fitter
from planner.estimate.calibrate_model import Quantity
from planner.estimate.calibrate_parameters import Freed
from planner.estimate.calibrate_result import COVERAGE, Fit
from planner.estimate.result import EstimateOptions
from planner.plan.lamp import CosineProfile
from planner.plan.survey import Survey
from planner.survey.statistics import gain_standard
from tests.unit.estimate.calibration_scenes import (
    METER,
    Case,
    case,
    lined,
    mistaken,
    open_air,
    read,
)

SCENES = [
    "s01_cabinet_white",
    "s02_tent60_film",
    "s03_tent100_mixed",
    "s06_two_lamps_heights",
    "s08_all_walls_different",
]
DRAWS = 200


def drawn(what: Case, seed: int, *, silent: bool = False) -> list[Survey]:
    rng = np.random.default_rng(seed)
    half = METER.gain_uncertainty
    gain = 1.0 if silent else float(rng.uniform(1 - half, 1 + half))
    noise = 0.0 if silent else METER.noise
    return [
        open_air(what, read(what.open_air, rng, gain, noise)),
        lined(what, read(what.lined, rng, gain, noise)),
    ]


def solved(what: Case, surveys: list[Survey]) -> Fit:
    wall = what.plan.walls[3].bands[0].lining
    plan = mistaken(what.plan, wall, 0.75)
    options = EstimateOptions(cells=what.cells)
    return _Fitter.over(plan, surveys, Freed(reflectance=(wall,)), options, None).solve()


def truth(what: Case, fit: Fit) -> np.ndarray:
    values = []
    for p in fit.parameters:
        if p.quantity is Quantity.FLUX:
            values.append(np.log(1 / 0.8))
        elif p.quantity is Quantity.EXPONENT:
            number = int(p.of.split("-")[1])
            profile = what.plan.lamps[number].model.profile
            assert isinstance(profile, CosineProfile)
            values.append(profile.exponent)
        elif p.quantity is Quantity.REFLECTANCE:
            values.append(what.plan.lining(p.of).reflectance)
        else:
            values.append(np.nan)
    return np.array(values)


def about(fit: Fit, surveys: list[Survey]) -> np.ndarray:
    """The solution for other readings of the same holes, by one linear step."""
    rows = [
        np.log(after) - np.log([reading.value for reading in survey.readings])
        for after, survey in zip(fit.after, surveys, strict=True)
    ]
    weighted = np.concatenate([r / w for r, w in zip(rows, fit.weights, strict=True)])
    known = [
        (v - p.start) / p.prior
        for p, v in zip(fit.parameters, fit.values, strict=True)
        if p.prior is not None
    ]
    residuals = np.concatenate([weighted, known])
    step = np.linalg.lstsq(fit.jacobian, -residuals, rcond=None)[0]
    there: np.ndarray = fit.values + step
    return there


@pytest.mark.slow
@pytest.mark.parametrize("name", SCENES)
def test_intervals_cover(name: str) -> None:
    what = case(name)
    fit = solved(what, drawn(what, 0, silent=True))
    true = truth(what, fit)
    error = np.sqrt(np.diag(fit.covariance()))
    shown = np.isfinite(true)
    inside = np.array(
        [np.abs(about(fit, drawn(what, seed)) - true) <= COVERAGE * error for seed in range(DRAWS)]
    )
    cover = inside[:, shown].mean(axis=0)
    names = [f"{p.quantity} {p.of}" for p, s in zip(fit.parameters, shown, strict=True) if s]
    assert (cover >= 0.90).all(), (names, cover)
    assert cover.mean() <= 0.99, (names, cover)


@pytest.mark.slow
@pytest.mark.parametrize("name", ["s01_cabinet_white"])
def test_the_linear_step_is_honest(name: str) -> None:
    what = case(name)
    fit = solved(what, drawn(what, 0, silent=True))
    error = np.sqrt(np.diag(fit.covariance()))
    surveys = drawn(what, 1)
    difference = (solved(what, surveys).values - about(fit, surveys)) / error
    assert np.abs(difference).max() < 0.7


def test_the_gain_of_the_draws_is_as_the_meter_says() -> None:
    assert gain_standard(METER) == pytest.approx(0.05 / np.sqrt(3))
