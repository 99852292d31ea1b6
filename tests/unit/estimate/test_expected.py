"""Expected readings at the holes of a survey."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import event, given, settings

from planner.app.pages.survey.pictures import board_picture
from planner.estimate.calibrate_model import expected_readings
from planner.estimate.result import EstimateOptions, Quality
from planner.plan.plan import Plan
from planner.plan.refusal import refusal
from planner.plan.survey import Meter
from planner.units import LengthUnit
from tests.unit.estimate.calibration_scenes import BESIDE, TRAY, case, lined, open_air
from tests.unit.files.test_round_trip import plans

NAME = "s06_two_lamps_heights"


def test_two_lamps_in_open_air_and_in_their_tent() -> None:
    what = case(NAME)
    options = EstimateOptions(what.cells)
    air = expected_readings(what.plan, open_air(what, ()), options)
    np.testing.assert_allclose(air, what.open_air, rtol=0.012)
    tent = expected_readings(what.plan, lined(what, ()), options)
    np.testing.assert_allclose(tent, what.lined, rtol=0.04)
    assert tent.mean() == pytest.approx(what.lined.mean(), rel=0.004)


@pytest.mark.parametrize("name", [TRAY, BESIDE])
def test_on_a_tray_and_beside_it(name: str) -> None:
    what = case(name)
    found = expected_readings(what.plan, lined(what, ()), EstimateOptions(what.cells))
    np.testing.assert_allclose(found, what.lined, rtol=0.02)
    assert found.mean() == pytest.approx(what.lined.mean(), rel=0.004)


def test_a_meter_that_reads_everything_a_tenth_low() -> None:
    what = case(NAME)
    options = EstimateOptions(what.cells)
    low = Meter(response_angles_deg=(0, 90), response_relative=(0.9, 0.9))
    ideal = expected_readings(what.plan, lined(what, ()), options)
    found = expected_readings(what.plan, lined(what, (), low), options)
    np.testing.assert_allclose(found, 0.9 * ideal, rtol=1e-6)


@settings(max_examples=60)
@given(plans().filter(lambda plan: plan.surveys and plan.lamps))
def test_any_survey_is_read_or_refused_in_one_sentence(plan: Plan) -> None:
    survey, refused = plan.surveys[0], ""
    assert len(board_picture(plan, survey, 1).marks) == len(survey.points)
    options = EstimateOptions(cells=(6, 6), quality=Quality.PREVIEW)
    try:
        found = expected_readings(plan, survey, options)
    except ValueError as error:
        refused = refusal(error, LengthUnit.CM)
    event("refused" if refused else f"read on a top: {survey.on_top is not None}")
    if refused:
        assert refused.endswith(".")
        assert "\n" not in refused
    else:
        assert found.shape == (len(survey.points),)
        assert np.isfinite(found).all()
        assert found.min() >= 0
