"""Mistakes planted in readings of outside maps are named, and an honest evening names none.

``python -m tests.reference.diagnosis_power`` plants each twenty times.
"""

from __future__ import annotations

import numpy as np
import pytest

from planner.estimate.calibrate_parameters import Asked, Freed
from planner.estimate.diagnose import diagnose
from planner.estimate.result import EstimateOptions
from tests.reference.diagnosis_power import PLANTED, planted
from tests.unit.estimate.calibration_scenes import METER, case, lined, open_air, read


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
@pytest.mark.parametrize("seed", range(3))
def test_an_honest_evening_names_no_suspect(seed: int) -> None:
    what, rng = case("s01_cabinet_white"), np.random.default_rng(seed)
    surveys = [
        open_air(what, read(what.open_air, rng, 1.02, METER.noise)),
        lined(what, read(what.lined, rng, 1.02, METER.noise)),
    ]
    options = EstimateOptions(cells=what.cells)
    found = diagnose(Asked(what.plan, surveys, Freed(exponent=False), options=options))
    assert found.suspects == ()
    assert "None of the usual mistakes" in found.sentence
