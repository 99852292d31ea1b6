"""How long the default fit of an open-air and a lined survey takes."""

from __future__ import annotations

import time

import numpy as np
import pytest

from planner.estimate.calibrate import calibrate
from planner.estimate.calibrate_parameters import Freed
from tests.unit.estimate.calibration_scenes import METER, case, lined, mistaken, open_air, read

BUDGET_SECONDS = 5.0


@pytest.mark.bench
@pytest.mark.parametrize(
    "name", ["s01_cabinet_white", "s02_tent60_film", "s03_tent100_mixed", "s08_all_walls_different"]
)
def test_the_default_fit_takes_at_most_five_seconds(name: str) -> None:
    what, rng = case(name), np.random.default_rng(1)
    wall = what.plan.walls[3].bands[0].lining
    surveys = [
        open_air(what, read(what.open_air, rng, 1.0, METER.noise)),
        lined(what, read(what.lined, rng, 1.0, METER.noise)),
    ]
    started = time.perf_counter()
    calibrate(mistaken(what.plan, wall, 0.7), surveys, Freed(reflectance=(wall,)))
    seconds = time.perf_counter() - started
    print(f"{name}: {seconds:.2f} s")
    assert seconds <= BUDGET_SECONDS
