"""Changes of a board: readings stay where they were taken, or the change is refused."""

from __future__ import annotations

import pytest

from planner.plan import edits, survey_edits
from planner.plan.costs import Costs
from planner.plan.edits import changed
from planner.plan.lining import Lining
from planner.plan.lit import same_light
from planner.plan.survey import Reading, Spacing, SurveyGrid
from planner.plan.survey_edits import add_survey
from planner.survey import layout
from tests.e2e.shell import small_plan
from tests.unit.app.pages.survey.surveying import GRID, invented

SQUARE = small_plan().space.footprint


def test_a_new_survey_follows_the_standard() -> None:
    # A square metre: p = 0.2 · 5^0 = 0.2 m, five by five.
    survey = layout.new_survey(small_plan())
    assert (survey.grid.rows, survey.grid.columns) == (5, 5) if survey.grid else False
    assert len(survey.points) == 25
    assert survey.points[0] == pytest.approx((0.1, 0.1))


def test_readings_move_with_their_places() -> None:
    survey = changed(invented(small_plan()), readings=(Reading(hole=5, value=120.0),))
    place = survey.points[4]
    finer = GRID.model_copy(update={"rows": 9, "columns": 4})
    moved = layout.regridded(survey, finer, SQUARE)
    (reading,) = moved.readings
    assert moved.points[reading.hole - 1] == pytest.approx(place)


def test_a_grid_that_would_lose_a_reading_is_refused() -> None:
    survey = invented(small_plan())
    with pytest.raises(ValueError, match="12 holes have readings"):
        layout.regridded(survey, SurveyGrid(rows=4, columns=5), SQUARE)


def test_a_place_is_left_out_and_taken_in_again() -> None:
    survey = changed(invented(small_plan()), readings=())
    without = layout.excluded_toggled(survey, 2, SQUARE)
    assert len(without.points) == 11
    assert layout.places_left_out(without, SQUARE)[0][0] == 2
    assert layout.excluded_toggled(without, 2, SQUARE) == survey


def test_a_hole_with_a_reading_is_not_left_out() -> None:
    with pytest.raises(ValueError, match="hole 2 has readings"):
        layout.excluded_toggled(invented(small_plan()), 2, SQUARE)


def test_places_are_counted_row_by_row_and_holes_to_and_fro() -> None:
    survey = invented(small_plan())
    # Hole 5 is the first of the second row walked: its last column.
    assert layout.row_and_column(survey, 5) == (2, 4)
    assert layout.place_number(survey, survey.points[4], SQUARE) == 8


def test_a_copy_has_the_same_holes_and_no_readings() -> None:
    plan = add_survey(small_plan(), invented(small_plan()))
    made = layout.copied(plan, plan.surveys[0])
    assert made.points == plan.surveys[0].points
    assert made.readings == ()
    assert made.key != plan.surveys[0].key


def test_edges_put_the_outer_holes_onto_the_margin() -> None:
    survey = changed(invented(small_plan()), readings=())
    grid = SurveyGrid(rows=2, columns=2, margin=0.1, spacing=Spacing.EDGES)
    points = layout.regridded(survey, grid, SQUARE).points
    rounded = tuple((round(x, 9), round(y, 9)) for x, y in points)
    assert rounded == ((0.1, 0.1), (0.9, 0.1), (0.9, 0.9), (0.1, 0.9))


def test_calibrated_linings_reach_the_surveys_own_copies() -> None:
    card = Lining(key="card", name="Card", reflectance=0.5, low=0.4, high=0.6)
    plan = add_survey(small_plan(), invented(small_plan(), lining=card))
    better = card.model_copy(update={"reflectance": 0.55})
    used = survey_edits.used_in_plan(plan, plan, plan, [("card", better)])
    assert used.surveys[0].lining == better
    assert used.surveys[0].readings == plan.surveys[0].readings


def test_what_was_entered_after_a_calibration_stays() -> None:
    """The calibrated flux is taken over; a label, watts and a kWh price of meanwhile stay."""
    before = small_plan()
    lamp = before.lamps[0]
    brighter = lamp.model.model_copy(update={"ppf": 1.1 * lamp.model.ppf, "note": "calibrated"})
    calibrated = edits.change_lamp(before, 0, model=brighter, x=lamp.x + 0.01)
    named = edits.change_lamp(
        before, 0, label="Mine", model=lamp.model.model_copy(update={"watts": 77.0})
    )
    now = edits.changed(named, costs=Costs(price_per_kwh=0.4), target=None)
    used = survey_edits.used_in_plan(now, before, calibrated, [])
    found = used.lamps[0]
    assert (found.model.ppf, found.model.note, found.x) == (
        brighter.ppf, "calibrated", lamp.x + 0.01,
    )  # fmt: skip
    assert (found.label, found.model.watts) == ("Mine", 77.0)
    assert used.costs.price_per_kwh == 0.4


def test_surveys_and_names_do_not_change_the_light() -> None:
    plan = small_plan("One")
    other = add_survey(small_plan("Other"), invented(plan))
    assert same_light(plan, other)
    assert not same_light(plan, small_plan(lamps=2))
