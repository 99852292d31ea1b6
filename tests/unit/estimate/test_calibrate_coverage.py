"""The 95 % intervals of a calibration hold the truth as often as they say.

For each reference scene the light at the holes comes from maps the core had no part in.
Two thousand draws of gain, noise and of every doubt about the conditions (heights, board,
output, drift, door, light from all sides) are fitted each, and as many of gain and noise alone
with nothing in doubt. The core's prediction and Jacobian are taken once at the truth's
neighbourhood (a full fit of readings without noise) and each draw is solved about it; that this
linear step is honest is checked by full fits of some draws. No outside map has a gap at its
door, so what a gap takes away is the core's own derivative.

``python -m tests.unit.estimate.test_calibrate_coverage`` prints what is found.
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
from planner.plan.edits import changed
from planner.plan.lamp import CosineProfile
from planner.plan.survey import Doubts, Survey
from planner.survey.statistics import gain_standard
from planner.units import COVERAGE
from tests.unit.estimate.calibration_scenes import (
    BOTH,
    METER,
    TRAY,
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
    TRAY,
    BOTH,
]
DRAWS = 2000


DOOR_HALF = 0.05
UNSURE = Doubts(door=DOOR_HALF)
CERTAIN = Doubts(**dict.fromkeys(Doubts.model_fields, 0.0))
KINDS = {"certain": (0.93, 0.97), "normal": (0.93, 0.97), "even": (0.93, 1.0)}
"""How conditions are drawn, and how often intervals may hold the truth.

``certain``: nothing but gain and noise. ``normal``: from the normal distribution of the same
standard uncertainty, which is what intervals of 1.96 standard uncertainties stand for. ``even``:
inside the half-width; what hardly anything tells but the record is then always inside.
"""

Key = tuple[Quantity, str]


@dataclass(frozen=True)
class World:
    """Readings as a careful but unlucky evening gives them, and the truth about it.

    ``misplaced`` is how far what is written of a height or a board lies off the truth, ``true``
    what the other conditions were.
    """

    surveys: list[Survey]
    misplaced: dict[Key, float]
    true: dict[Key, float]


def drawn(what: Case, seed: int | None, kind: str, lost: np.ndarray | None = None) -> World:
    """Every doubt of the surveys drawn from what is stated of it; no seed: nothing is off.

    ``lost`` is what a gap of the whole door takes of the logarithm of the light at each hole.
    """
    rng = np.random.default_rng(seed or 0)
    doubts = CERTAIN if kind == "certain" else UNSURE

    def error(half: float) -> float:
        if seed is None:
            return 0.0
        if kind == "even":
            return float(rng.uniform(-half, half))
        return float(rng.normal(0.0, half / np.sqrt(3)))

    gain, uneven = error(METER.gain_uncertainty), error(doubts.cosine)
    noise = 0.0 if seed is None else METER.noise
    misplaced = {(Quantity.SENSOR, METER.name): error(doubts.sensor_height)}
    true = {(Quantity.GAIN, METER.name): gain, (Quantity.COSINE, METER.name): uneven}
    surveys = []
    air = (what.air or what).open_air
    for make, total, straight in ((open_air, air, air), (lined, what.lined, what.open_air)):
        when = np.linspace(-0.5, 0.5, len(total))
        rest = np.maximum(total - straight, 0.0)
        survey = changed(make(what, ()), doubts=doubts)
        output, drift = error(doubts.output), error(doubts.drift)
        # A door stands open or not at all: no gap is below nothing.
        door = 0.0 if survey.open_air else abs(error(doubts.door))
        light = (total + uneven * rest) * np.exp(gain + output + drift * when)
        if door and lost is not None:
            light = light * np.exp(door * lost)
        key = survey.key
        true |= {(Quantity.OUTPUT, key): output, (Quantity.DRIFT, key): drift}
        true[Quantity.DOOR, key] = door
        misplaced[Quantity.HEIGHT, key] = error(doubts.hanging_height)
        misplaced[Quantity.BOARD, key] = error(doubts.board_reflectance)
        surveys.append(changed(survey, readings=read(light, rng, 1.0, noise)))
    return World(surveys, misplaced, true)


def solved(what: Case, surveys: list[Survey]) -> Fit:
    wall = what.plan.walls[3].bands[0].lining
    plan = mistaken(what.plan, wall, 0.75)
    plan = changed(plan, space=changed(plan.space, door=0))
    options = EstimateOptions(cells=what.cells)
    return fit_surveys(Asked(plan, surveys, Freed(reflectance=(wall,)), options))


def truth(what: Case, fit: Fit, world: World) -> np.ndarray:
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
            values.append(world.true.get((p.quantity, p.of), p.start))
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


def lost_by_the_door(fit: Fit) -> np.ndarray | None:
    """∂ ln(light) / ∂ gap at the holes of the lined survey, the second of the fit."""
    column = [k for k, p in enumerate(fit.parameters) if p.quantity is Quantity.DOOR]
    if not column:
        return None
    start = len(fit.after[0])
    rows = fit.jacobian[start : start + len(fit.after[1]), column[0]]
    found: np.ndarray = rows * fit.weights[1]
    return found


def coverage(name: str, kind: str) -> tuple[Fit, np.ndarray]:
    """A fit, and for each of its parameters how often its interval held the truth."""
    what = case(name)
    fit = solved(what, drawn(what, None, kind).surveys)
    error = COVERAGE * np.sqrt(np.diag(fit.covariance()))
    lost = lost_by_the_door(fit)
    worlds = (drawn(what, seed, kind, lost) for seed in range(1, DRAWS + 1))
    inside = [np.abs(about(fit, world) - truth(what, fit, world)) <= error for world in worlds]
    return fit, np.mean(inside, axis=0)


@pytest.mark.slow
@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("name", SCENES)
def test_intervals_cover(name: str, kind: str) -> None:
    """Of every parameter where doubts are drawn as the fit takes them, else of what is fitted."""
    fit, cover = coverage(name, kind)
    found = {
        f"{p.quantity} {p.of}": float(share)
        for p, share in zip(fit.parameters, cover, strict=True)
        if p.prior is None or kind == "normal"
    }
    least, most = KINDS[kind]
    assert len(found) >= 3
    assert all(least <= share <= most for share in found.values()), found


@pytest.mark.slow
@pytest.mark.parametrize("name", ["s01_cabinet_white"])
def test_the_linear_step_is_honest(name: str) -> None:
    what = case(name)
    fit = solved(what, drawn(what, None, "even").surveys)
    error = np.sqrt(np.diag(fit.covariance()))
    world = drawn(what, 1, "even", lost_by_the_door(fit))
    world = World(world.surveys, {}, {})
    difference = (solved(what, world.surveys).values - about(fit, world)) / error
    assert np.abs(difference).max() < 0.7


def test_the_gain_of_the_draws_is_as_the_meter_says() -> None:
    assert gain_standard(METER) == pytest.approx(0.05 / np.sqrt(3))


def main() -> int:
    for name in SCENES:
        for kind in KINDS:
            fit, cover = coverage(name, kind)
            told = ", ".join(
                f"{p.quantity} {p.of} {100 * share:.1f}{'' if p.prior is None else '*'}"
                for p, share in zip(fit.parameters, cover, strict=True)
            )
            print(f"{name} {kind}: {told}", flush=True)
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
