"""A survey read on a tray, by hand: chosen in the record, laid out over it, held against it."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest
from pytestqt.qtbot import QtBot

from planner.app.pages.survey import desk as tasks
from planner.app.pages.survey.page import SurveyPage
from planner.catalogue.library import demo_plan
from planner.estimate.calibrate_model import expected_readings
from planner.estimate.evaluate import evaluate
from planner.plan.edits import judge_by, remove_obstacle
from planner.plan.survey import Reading
from planner.plan.survey_edits import add_readings
from planner.survey.layout import new_survey
from tests.e2e.test_survey_page import pick, shown, undo
from tests.unit.app.pages.survey.surveying import make_page

UPPER = 1


@pytest.fixture(autouse=True)
def at_once(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("PLANNER_SYNCHRONOUS", "1")


def opened(qtbot: QtBot, folder: Path, key: str = "trays") -> SurveyPage:
    plan = demo_plan(key)
    page, _ = make_page(qtbot, folder, plan, new_survey(plan))
    page.show_task(tasks.RECORD)
    return page


def test_holes_without_readings_move_onto_the_tray(qtbot: QtBot, tmp_path: Path) -> None:
    page = opened(qtbot, tmp_path)
    row, combo = page.record.lies_row, page.record.lies_on
    assert not row.label.isHidden()
    assert (combo.count(), combo.currentData()) == (3, None)
    before = shown(page).points
    pick(combo, UPPER)
    plan, survey = page.workplace.document.plan, shown(page)
    tray = plan.obstacles[UPPER]
    assert survey.on_top == pytest.approx(tray.top)
    xs, ys = np.array(survey.points).T
    assert abs(xs - tray.x).max() < tray.length / 2
    assert abs(ys - tray.y).max() < tray.width / 2
    assert combo.currentData() == UPPER
    # By another path: the plan judged by that tray, read at the holes.
    assert expected_readings(plan, survey) == pytest.approx(
        evaluate(judge_by(plan, UPPER)).at(xs, ys), rel=1e-6
    )
    undo(page)
    assert (shown(page).on_top, shown(page).points, combo.currentData()) == (None, before, None)


def test_holes_with_readings_stay_where_they_were_read(qtbot: QtBot, tmp_path: Path) -> None:
    page = opened(qtbot, tmp_path)
    document, before = page.workplace.document, shown(page).points
    document.apply(add_readings(document.plan, 0, [Reading(hole=1, value=100.0)]), "Read")
    pick(page.record.lies_on, UPPER)
    assert shown(page).points == before
    assert "lie beside the canopy" in page.record.lies_row.error


def test_a_tray_that_is_gone_is_said_beside_the_choice(qtbot: QtBot, tmp_path: Path) -> None:
    page = opened(qtbot, tmp_path)
    pick(page.record.lies_on, UPPER)
    document = page.workplace.document
    document.apply(remove_obstacle(document.plan, UPPER), "Remove obstacle")
    assert "o obstacle carries a canopy" in page.record.lies_row.error
    pick(page.record.lies_on, None)
    assert page.record.lies_row.error == ""


def test_a_plan_with_one_canopy_offers_nothing(qtbot: QtBot, tmp_path: Path) -> None:
    assert opened(qtbot, tmp_path, "tent").record.lies_row.label.isHidden()
