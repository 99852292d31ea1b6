"""Readings set aside stay in the survey and count nowhere; moments follow the clock."""

from __future__ import annotations

import numpy as np
import pytest

from planner.plan.edits import changed
from planner.plan.survey import Reading
from planner.plan.survey_edits import add_survey, replace_readings, set_aside
from planner.survey.comparison import ranking
from planner.survey.statistics import reading_moments, summarise
from tests.e2e.shell import small_plan
from tests.unit.app.pages.survey.surveying import invented


def test_a_hole_set_aside_counts_nowhere_and_comes_back() -> None:
    plan = add_survey(small_plan(), invented(small_plan()))
    without = set_aside(plan, 0, 12, aside=True)
    (survey,) = without.surveys
    assert len(survey.readings) == 12
    found = summarise(survey)
    assert found is not None
    left = [r.value for r in survey.readings if r.hole != 12]
    assert found.mean == pytest.approx(sum(left) / 11)
    assert survey.next_hole() == 12, "it may be read again"
    other = changed(plan.surveys[0], key="other")
    assert ranking([survey, other]).holes == 11
    assert set_aside(without, 0, 12, aside=False) == plan


def test_readings_typed_anew_leave_what_was_set_aside() -> None:
    survey = changed(
        invented(small_plan()),
        readings=(
            Reading(hole=1, value=900.0, aside=True),
            Reading(hole=1, value=91.0, at=4.0),
            Reading(hole=2, value=92.0, at=9.0),
        ),
    )
    plan = replace_readings(add_survey(small_plan(), survey), 0, 1, (90.0, 89.0))
    assert plan.surveys[0].readings == (
        Reading(hole=1, value=900.0, aside=True),
        Reading(hole=1, value=90.0, at=4.0),
        Reading(hole=1, value=89.0),
        Reading(hole=2, value=92.0, at=9.0),
    )


def test_moments_follow_the_clock_where_every_reading_has_its_time() -> None:
    # By hand: at 0, 10 and 100 s, so -1/2, -0.4 and 1/2.
    times = (0.0, 10.0, 100.0)
    readings = tuple(Reading(hole=k + 1, value=50.0, at=t) for k, t in enumerate(times))
    survey = changed(invented(small_plan()), readings=readings)
    np.testing.assert_allclose(reading_moments(survey), [-0.5, -0.4, 0.5])
    first = readings[0].model_copy(update={"at": None})
    np.testing.assert_allclose(
        reading_moments(changed(survey, readings=(first, *readings[1:]))), [-0.5, 0.0, 0.5]
    )
