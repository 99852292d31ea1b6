"""Surveys as values, and their edits."""

from __future__ import annotations

import pytest
from pydantic import ValidationError

from planner.catalogue.library import demo_plan
from planner.plan import survey_edits as edits
from planner.plan.edits import set_canopy
from planner.plan.lining import OPENING, Lining
from planner.plan.plan import Plan
from planner.plan.survey import Meter, Reading, Survey
from planner.plan.wavebands import LEAVES

POINTS = ((0.1, 0.1), (0.2, 0.1), (0.3, 0.1))
WHITE = Lining(key="new-white", name="New white", reflectance=0.9, low=0.85, high=0.95)


def survey(**parts: object) -> Survey:
    return Survey.model_validate({"key": "survey-1", "points": POINTS, **parts})


def test_readings_are_added_replaced_and_taken_back() -> None:
    plan = edits.add_survey(demo_plan(), survey())
    plan = edits.add_readings(plan, 0, [Reading(hole=1, value=100), Reading(hole=2, value=110)])
    plan = edits.add_readings(plan, 0, [Reading(hole=1, value=102)])
    assert plan.surveys[0].values_at(1) == (100, 102)
    assert plan.surveys[0].next_hole() == 3
    plan = edits.replace_readings(plan, 0, 1, [99])
    assert plan.surveys[0].values_at(1) == (99,)
    assert [r.hole for r in plan.surveys[0].readings] == [1, 2]
    plan = edits.replace_readings(plan, 0, 2, [])
    assert plan.surveys[0].values_at(2) == ()
    assert edits.free_key(plan) == "survey-2"
    assert edits.remove_survey(plan, 0).surveys == ()


def test_the_next_hole_goes_on_behind_the_last_and_comes_round() -> None:
    what = survey(readings=[{"hole": 2, "value": 5}])
    assert what.next_hole(2) == 3
    assert what.next_hole(3) == 1
    full = survey(readings=[{"hole": k, "value": 5} for k in (1, 2, 3)])
    assert full.next_hole() is None


@pytest.mark.parametrize(
    ("parts", "words"),
    [
        ({"readings": [{"hole": 4, "value": 5}]}, "only 3 holes"),
        ({"points": []}, "at least 1"),
        ({"meter": {"response_angles_deg": [0, 10], "response_relative": [1]}}, "2 angles but 1"),
        ({"meter": {"response_angles_deg": [9, 5], "response_relative": [1, 1]}}, "must rise"),
        ({"meter": {"response_angles_deg": [9], "response_relative": [1]}}, "at least two"),
    ],
)
def test_what_cannot_be_is_refused(parts: dict[str, object], words: str) -> None:
    with pytest.raises(ValidationError, match=words):
        survey(**parts)


def test_two_surveys_of_one_key_are_refused() -> None:
    plan = edits.add_survey(demo_plan(), survey())
    with pytest.raises(ValidationError, match="two surveys carry the key"):
        edits.add_survey(plan, survey())


def test_a_plan_with_surveys_round_trips() -> None:
    plan = edits.add_survey(
        demo_plan(),
        survey(
            date="2026-03-01", lining=WHITE, readings=[{"hole": 1, "value": 5}], note="invented"
        ),
    )
    again = Plan.model_validate_json(plan.model_dump_json())
    assert again == plan


def test_conditions_of_a_survey_are_put_on_the_plan() -> None:
    plan = demo_plan()
    height = plan.lamps[0].hanging_height
    what = survey(
        output_percent=50, hanging_height=height * 0.9, lining=WHITE, board_reflectance=0.7
    )
    found = edits.as_surveyed(plan, what)
    assert {lamp.output_percent for lamp in found.lamps} == {50}
    assert all(lamp.hanging_height == pytest.approx(height * 0.9) for lamp in found.lamps)
    assert {band.lining for cover in found.walls for band in cover.bands} == {"new-white"}
    assert found.ceiling == plan.ceiling
    assert found.canopy.closed
    assert found.canopy.reflectance == 0.7


def test_open_air_has_neither_walls_nor_ceiling() -> None:
    what = Survey(key="air", name="Open air", lining=OPENING, points=POINTS)
    assert what.open_air
    found = edits.as_surveyed(demo_plan(), what)
    assert all(found.lining(b.lining) == OPENING for c in found.walls for b in c.bands)
    assert found.ceiling == OPENING.key


def test_a_survey_of_a_tier_hangs_the_lamps_of_that_tier_alone() -> None:
    """In the invented rack two bars hang over each canopy: 0.36, 0.86 and 1.3 m over the first."""
    plan = demo_plan("rack")
    for top, turned in ((None, (0, 1)), (0.62, (2, 3)), (1.12, (4, 5))):
        lamp = plan.lamps[turned[0]]
        what = survey(on_top=top, hanging_height=lamp.hanging_height - 0.02)
        found = edits.as_surveyed(plan, what)
        for k, (new, old) in enumerate(zip(found.lamps, plan.lamps, strict=True)):
            lower = 0.02 if k in turned else 0.0
            assert new.hanging_height == pytest.approx(old.hanging_height - lower)


def test_a_tall_sensor_is_nearer_to_the_lamp() -> None:
    plan = demo_plan()
    what = survey(meter=Meter(sensor_height=0.03))
    found = edits.as_surveyed(plan, what)
    for lamp, old in zip(found.lamps, plan.lamps, strict=True):
        assert found.lamp_height(lamp) == pytest.approx(plan.lamp_height(old))
        assert lamp.hanging_height == pytest.approx(old.hanging_height - 0.03)


def test_the_surveys_own_copy_of_a_lining_holds() -> None:
    plan = demo_plan()
    key = plan.walls[0].bands[0].lining
    own = plan.lining(key).model_copy(update={"reflectance": 0.5, "low": 0.4, "high": 0.6})
    found = edits.as_surveyed(plan, survey(lining=own))
    assert found.lining(key).reflectance == 0.5


def test_a_board_has_no_colours_of_leaves() -> None:
    plan = set_canopy(demo_plan(), wavebands=LEAVES)
    assert edits.as_surveyed(plan, survey(board_reflectance=0.7)).canopy.wavebands is None
    assert edits.as_surveyed(plan, survey()).canopy.wavebands == LEAVES
