"""Mistakes planted in readings of outside maps are named, and an honest evening names none.

``python -m tests.reference.diagnosis_power`` plants each twenty times.
"""

from __future__ import annotations

import dataclasses
import json

import numpy as np
import pytest

from planner.estimate.calibrate_parameters import Asked, Freed
from planner.estimate.diagnose import Diagnosis, Suspect, diagnose
from planner.estimate.result import EstimateOptions
from planner.plan.edits import changed
from tests.reference.diagnosis_power import PLANTED, planted
from tests.unit.estimate.calibration_scenes import (
    BOTH,
    FOLDER,
    METER,
    TRAY,
    case,
    direct,
    lined,
    open_air,
    read,
)


@pytest.mark.slow
@pytest.mark.parametrize("name", PLANTED)
def test_a_planted_mistake_is_named(name: str) -> None:
    found = planted(name, 1)
    assert PLANTED[name].words in found.suspects[0].words
    assert PLANTED[name].words in found.sentence


@pytest.mark.slow
def test_mending_what_was_mirrored_gives_the_readings_back() -> None:
    first = planted("mirrored", 2).suspects[0]
    assert first.times > 2
    assert first.remedy == "Mirror"
    assert first.mended is not None
    what, rng = case("s06_two_lamps_heights"), np.random.default_rng(2)
    gain = float(rng.uniform(0.95, 1.05))
    read(what.open_air, rng, gain, METER.noise)
    truth = lined(what, read(what.lined, rng, gain, METER.noise))
    assert first.mended.readings == truth.readings


@pytest.mark.slow
def test_a_height_to_set_counts_from_the_canopy_and_not_from_the_sensor() -> None:
    what, rng = case("s01_cabinet_white"), np.random.default_rng(1)
    scene = json.loads((FOLDER / "s01_cabinet_white.json").read_text("utf-8"))["scene"]
    raised = {**scene, "canopy": {"z": scene["canopy"]["z"] + 0.05}}
    light = direct(raised, np.array(what.points))
    meter = changed(METER, sensor_height=0.05, noise=0.005)
    survey = open_air(what, read(light, rng, 1.0, meter.noise), meter)
    true = what.plan.lamps[0].hanging_height
    written = changed(survey, hanging_height=true - 0.08)
    found = diagnose(Asked(what.plan, [written], Freed(flux=True, exponent=False)))
    assert found.suspects[0].mended is not None
    assert found.suspects[0].mended.hanging_height == pytest.approx(true, abs=0.01)


def test_what_every_fit_allows_for_is_not_called_better() -> None:
    dim = Suspect("flux", "a", "the lamps gave 54 % less in 'A'", "Set the output", 900.0, 1.0)
    assert "times better" not in Diagnosis((dim,)).sentence
    assert "as it is if the lamps gave 54 % less" in Diagnosis((dim,)).sentence
    assert "3.0 times better" in Diagnosis((dataclasses.replace(dim, times=3.0),)).sentence


@pytest.mark.slow
@pytest.mark.parametrize("name", ["s01_cabinet_white", TRAY, BOTH])
@pytest.mark.parametrize("seed", range(3))
def test_an_honest_evening_names_no_suspect(name: str, seed: int) -> None:
    what, rng = case(name), np.random.default_rng(seed)
    surveys = [
        open_air(what, read((what.air or what).open_air, rng, 1.02, METER.noise)),
        lined(what, read(what.lined, rng, 1.02, METER.noise)),
    ]
    options = EstimateOptions(cells=what.cells)
    found = diagnose(Asked(what.plan, surveys, Freed(exponent=False), options=options))
    assert found.suspects == ()
    assert "None of the usual mistakes" in found.sentence
