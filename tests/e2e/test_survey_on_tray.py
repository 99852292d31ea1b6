"""A survey read on a tray, by hand: chosen in the record, laid out over it, held against it."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest
from pytestqt.qtbot import QtBot

from planner.app.pages.survey import desk as tasks
from planner.app.pages.survey.page import SurveyPage
from planner.app.pages.survey.pictures import View, reading_picture, residual_map, residual_picture
from planner.catalogue.library import demo_plan
from planner.command_line import main
from planner.estimate.calibrate_model import expected_readings
from planner.estimate.evaluate import evaluate
from planner.files.store import save_plan
from planner.plan.edits import judge_by, remove_obstacle
from planner.plan.survey import Reading
from planner.plan.survey_edits import add_readings, change_survey
from planner.reports.board import sheets
from planner.reports.sheet import Paper
from planner.survey.layout import new_survey
from planner.survey.statistics import residuals
from tests.e2e.test_survey_page import pick, shown, undo
from tests.e2e.test_survey_tables import pasted
from tests.unit.app.pages.survey.surveying import make_page
from tests.unit.reports.test_board import pages

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


def outline_seen(page: SurveyPage, outline: tuple[tuple[float, float], ...]) -> list[bool]:
    """Whether there is a line in the middle of each side of an outline, beside what is around."""
    drawing = page.stage.first
    image, found = drawing.grab().toImage(), []
    for (ax, ay), (bx, by) in zip(outline, (*outline[1:], outline[0]), strict=True):
        at = drawing.viewport.to_pixel(ax + 0.45 * (bx - ax), ay + 0.45 * (by - ay))
        spots = [image.pixelColor(round(at.x()) + u, round(at.y()) + u).lightness()
                 for u in (-6, -1, 0, 1, 6)]  # fmt: skip
        found.append(min(spots[1:4]) < min(spots[0], spots[4]) - 30)
    return found


def test_the_drawing_and_the_board_are_those_of_the_tray(
    qtbot: QtBot, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    page = opened(qtbot, tmp_path)
    outline = page.workplace.document.plan.obstacles[UPPER].outline()
    page.show_task(tasks.BOARD)
    assert not any(outline_seen(page, outline))
    page.show_task(tasks.RECORD)
    pick(page.record.lies_on, UPPER)
    page.show_task(tasks.BOARD)
    assert all(outline_seen(page, outline))
    # At the command line the board is as large, to the byte but for the hour and the numbers of it.
    plan = page.workplace.document.plan
    save_plan(plan, tmp_path / "tray.plan.json")
    assert main(["board", str(tmp_path / "tray.plan.json"), "--out", str(tmp_path / "a.pdf")]) == 0
    assert "holes of" in capsys.readouterr().out
    own = change_survey(plan, 0, on_top=None)
    save_plan(own, tmp_path / "own.plan.json")
    assert main(["board", str(tmp_path / "own.plan.json"), "--out", str(tmp_path / "b.pdf")]) == 0
    xs, ys = zip(*outline, strict=True)
    size = (max(xs) - min(xs)) * 1000, (max(ys) - min(ys)) * 1000
    counts = [len(pages((tmp_path / name).read_bytes())) for name in ("a.pdf", "b.pdf")]
    assert counts[0] == len(sheets(size, Paper.A4)) + 2 < counts[1]


def test_residuals_colour_the_tray_alone(qtbot: QtBot, tmp_path: Path) -> None:
    page = opened(qtbot, tmp_path)
    pick(page.record.lies_on, UPPER)
    document = page.workplace.document
    expected = expected_readings(document.plan, shown(page))
    readings = [Reading(hole=k, value=0.8 * v) for k, v in enumerate(expected, start=1)]
    document.apply(add_readings(document.plan, 0, readings), "Read")
    found = residuals(shown(page), expected)
    assert found is not None
    bare = reading_picture(document.plan, shown(page), None, 1, page.workplace.display.state)
    picture = residual_picture(bare, residual_map(found, View.RATIO), "Ratio")
    drawing = page.stage.first
    page.show_task(tasks.BOARD)
    drawing.show_picture(picture)
    image = drawing.grab().toImage()
    tray = document.plan.obstacles[UPPER]

    def colour(x: float, y: float) -> int:
        at = drawing.viewport.to_pixel(x, y)
        return image.pixelColor(round(at.x()), round(at.y())).saturation()

    at = (tray.x - 0.45 * tray.length, tray.y - 0.45 * tray.width)
    assert colour(*at) > 40
    other = document.plan.obstacles[0]
    assert colour(other.x, other.y) < 10


def test_a_table_is_put_onto_a_tray(qtbot: QtBot, tmp_path: Path) -> None:
    plan = demo_plan("trays")
    page, _ = make_page(qtbot, tmp_path, plan)
    tray = plan.obstacles[UPPER]
    dialog = pasted(page, "305\t306\t307\n205\t206\t207")
    assert dialog.lies_on.isVisible()
    pick(dialog.lies_on, UPPER)
    dialog.take_button.click()
    survey = shown(page)
    assert survey.on_top == pytest.approx(tray.top)
    # By hand: middles of 3 x 2 equal parts, the last row of the table on the near side.
    place = {r.value: survey.points[r.hole - 1] for r in survey.readings}
    assert len(place) == 6
    for value, u, v in ((205, -1 / 3, -1 / 4), (307, 1 / 3, 1 / 4), (306, 0, 1 / 4)):
        expected = (tray.x + u * tray.length, tray.y + v * tray.width)
        assert place[value] == pytest.approx(expected, abs=1e-9)
    undo(page)
    assert page.workplace.document.plan == plan
    beside = pasted(page, "x (cm)\ty (cm)\tppfd\n5\t5\t100\n6\t5\t101")
    assert beside.take_button.isEnabled()
    pick(beside.lies_on, UPPER)
    assert not beside.take_button.isEnabled()
    assert "x = 5 cm, y = 5 cm lies beside the canopy it was read on" in beside.alert.text()
    beside.reject()
    empty, _ = make_page(qtbot, tmp_path / "tent", demo_plan("tent"))
    alone = pasted(empty, "305\t306\t307\n205\t206\t207")
    assert not alone.lies_on.isVisible(), "nothing to choose where there is one canopy"
    alone.reject()
