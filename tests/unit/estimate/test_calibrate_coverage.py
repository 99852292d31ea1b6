"""The 95 % intervals of a calibration hold the truth as often as they say.

For each reference scene the light at the holes comes from maps the core had no part in.
Two thousand draws of gain, noise and of every doubt about the conditions (heights, board,
output, drift, light from all sides) are fitted each. The core's prediction and Jacobian are
taken once at the truth's neighbourhood (a full fit of readings without noise) and each draw
is solved about it; that this linear step is honest is checked by full fits of some draws.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
import pytest

from planner.estimate.calibrate import fit_surveys
from planner.estimate.calibrate_model import Quantity
from planner.estimate.calibrate_parameters import Asked, Freed
from planner.estimate.calibrate_result import Fit
from planner.estimate.result import EstimateOptions
from planner.plan.lamp import CosineProfile
from planner.plan.survey import Doubts, Survey
from planner.survey.statistics import gain_standard
from planner.units import COVERAGE
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
DRAWS = 2000


@dataclass(frozen=True)
class World:
    """Readings as a careful but unlucky evening gives them, and what was written down wrong.

    ``misplaced`` is how far what is written of a height or a board lies off the truth.
    """

    surveys: list[Survey]
    misplaced: dict[tuple[Quantity, str], float]


def drawn(what: Case, seed: int, kind: str = "even", *, silent: bool = False) -> World:
    """Every doubt of the surveys drawn from what is stated of it.

    ``even`` draws inside the half-width; ``normal`` from the normal distribution of the same
    standard uncertainty, which is what intervals of 1.96 standard uncertainties stand for.
    """
    rng = np.random.default_rng(seed)

    def error(half: float) -> float:
        if silent:
            return 0.0
        if kind == "normal":
            return float(rng.normal(0.0, half / np.sqrt(3)))
        return float(rng.uniform(-half, half))

    doubts = Doubts()
    gain, uneven = 1 + error(METER.gain_uncertainty), error(doubts.cosine)
    noise = 0.0 if silent else METER.noise
    misplaced = {(Quantity.SENSOR, METER.name): error(doubts.sensor_height)}
    surveys = []
    for make, total in ((open_air, what.open_air), (lined, what.lined)):
        when = np.linspace(-0.5, 0.5, len(total))
        rest = np.maximum(total - what.open_air, 0.0)
        light = (total + uneven * rest) * (1 + error(doubts.output))
        light = light * np.exp(error(doubts.drift) * when)
        survey = make(what, read(light, rng, gain, noise))
        misplaced[Quantity.HEIGHT, survey.key] = error(doubts.hanging_height)
        misplaced[Quantity.BOARD, survey.key] = error(doubts.board_reflectance)
        surveys.append(survey)
    return World(surveys, misplaced)


def solved(what: Case, surveys: list[Survey]) -> Fit:
    wall = what.plan.walls[3].bands[0].lining
    plan = mistaken(what.plan, wall, 0.75)
    options = EstimateOptions(cells=what.cells)
    return fit_surveys(Asked(plan, surveys, Freed(reflectance=(wall,)), options))


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


def about(fit: Fit, world: World) -> np.ndarray:
    """The solution for other readings of the same holes, by one linear step.

    The fit stands at the true heights and boards; where something else is written down, what
    is known of it beforehand is known about that instead.
    """
    rows = [
        np.log(after) - np.log([reading.value for reading in survey.readings])
        for after, survey in zip(fit.after, world.surveys, strict=True)
    ]
    weighted = np.concatenate([r / w for r, w in zip(rows, fit.weights, strict=True)])
    known = [
        (v - p.start - world.misplaced.get((p.quantity, p.of), 0.0)) / p.prior
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
    fit = solved(what, drawn(what, 0, silent=True).surveys)
    true = truth(what, fit)
    error = np.sqrt(np.diag(fit.covariance()))
    shown = np.isfinite(true)
    names = [f"{p.quantity} {p.of}" for p, s in zip(fit.parameters, shown, strict=True) if s]
    for kind, least, most in (("normal", 0.93, 0.97), ("even", 0.93, 1.0)):
        inside = np.array(
            [
                np.abs(about(fit, drawn(what, seed, kind)) - true) <= COVERAGE * error
                for seed in range(DRAWS)
            ]
        )
        cover = inside[:, shown].mean(axis=0)
        assert (cover >= least).all(), (kind, names, cover)
        assert (cover <= most).all(), (kind, names, cover)


@pytest.mark.slow
@pytest.mark.parametrize("name", ["s01_cabinet_white"])
def test_the_linear_step_is_honest(name: str) -> None:
    what = case(name)
    fit = solved(what, drawn(what, 0, silent=True).surveys)
    error = np.sqrt(np.diag(fit.covariance()))
    world = drawn(what, 1)
    world = World(world.surveys, {})
    difference = (solved(what, world.surveys).values - about(fit, world)) / error
    assert np.abs(difference).max() < 0.7


def test_the_gain_of_the_draws_is_as_the_meter_says() -> None:
    assert gain_standard(METER) == pytest.approx(0.05 / np.sqrt(3))
