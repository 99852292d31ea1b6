"""A whole evening by hand and key: board, paper, readings, tables, comparing, calibrating."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import numpy as np
import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QWidget
from pytestqt.qtbot import QtBot

from planner.app.pages.survey import desk as tasks
from planner.app.pages.survey.page import SurveyPage
from planner.estimate.calibrate_model import Quantity
from planner.plan.plan import Plan
from planner.plan.survey import Board
from tests.e2e.shell import small_plan
from tests.e2e.test_survey_page import press, shown, type_in, undo_text
from tests.unit.app.pages.survey.surveying import make_page
from tests.unit.survey.workbooks import sheet, xlsx


@pytest.fixture(autouse=True)
def at_once(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("PLANNER_SYNCHRONOUS", "1")


def click(widget: QWidget) -> None:
    assert widget.isVisible()
    assert widget.isEnabled()
    QTest.mouseClick(widget, Qt.MouseButton.LeftButton)


def turn_to(page: SurveyPage, task: int) -> None:
    tabs = page.header.tasks
    QTest.mouseClick(tabs, Qt.MouseButton.LeftButton, pos=tabs.tabRect(task).center())
    assert page.task == task


def open_air_light(plan: Plan, points: tuple[tuple[float, float], ...]) -> list[float]:
    """E = I cosα / d², I = Φ cosα / π, summed over 30 x 20 points of the panel of 300 x 200 mm."""
    lamp = plan.lamps[0]
    u = (np.arange(30) + 0.5) / 30 * 0.3 - 0.15 + lamp.x
    v = (np.arange(20) + 0.5) / 20 * 0.2 - 0.1 + lamp.y
    found = []
    for x, y in points:
        square = (u[:, None] - x) ** 2 + (v[None, :] - y) ** 2 + lamp.hanging_height**2
        found.append(float((200 / np.pi * lamp.hanging_height**2 / square**2).mean()))
    return found


def test_an_evening_from_the_first_hole_to_the_plan(qtbot: QtBot, tmp_path: Path) -> None:
    plan = small_plan()
    page, answers = make_page(qtbot, tmp_path, plan)
    rng = np.random.default_rng(7)

    # The board: laid out, its material said, printed.
    click(page.invitation.lay_out)
    turn_to(page, tasks.BOARD)
    press(page.board.made_of, Qt.Key.Key_Down)
    assert shown(page).board is Board.PAPER
    answers.to_save = tmp_path / "board.pdf"
    click(page.board.print_button)
    assert answers.to_save.read_bytes().startswith(b"%PDF")

    # In open air, by the record; then hole by hole. The lamp gives a tenth less than its label.
    turn_to(page, tasks.RECORD)
    press(page.record.lining, Qt.Key.Key_Down)
    assert shown(page).open_air
    truth = [0.9 * value for value in open_air_light(plan, shown(page).points)]
    turn_to(page, tasks.READINGS)
    while page.protocol.isVisible():
        click(page.protocol.skip_button)
    for value in truth:
        type_in(qtbot, page, f"{value * (1 + 0.01 * rng.standard_normal()):.1f}")
    assert page.desk.done
    click(page.entry.first_button)
    type_in(qtbot, page, f"{truth[0]:.1f}")
    assert "no drift to be seen" in page.entry.where.text()

    # A table, pasted: a survey of its own on the same board, said so.
    noisy = [value * (1 + 0.01 * rng.standard_normal()) for value in truth]
    text = "hole;ppfd\n" + "\n".join(f"{k};{v:.1f}" for k, v in enumerate(noisy, start=1))
    QGuiApplication.clipboard().setText(text)
    click(page.header.paste_button)
    dialog = page.importing.dialog
    assert dialog is not None
    assert "Board and conditions are those of 'Survey 1'" in dialog.outcome.text()
    click(dialog.take_button)
    assert shown(page).key == "survey-2"

    # A workbook of two evenings, in the second of which hole 7 was typed at half.
    rows: list[list[Any]] = [
        ["hole", "ppfd"],
        *([k, round(v, 1)] for k, v in enumerate(noisy, start=1)),
    ]
    spoilt: list[list[Any]] = [row if row[0] != 7 else [7, round(noisy[6] / 2, 1)] for row in rows]
    answers.to_open = tmp_path / "evenings.xlsx"
    answers.to_open.write_bytes(xlsx({"Monday": sheet(rows), "Tuesday": sheet(spoilt)}))
    click(page.header.file_button)
    assert page.importing.dialog is not None
    click(page.importing.dialog.take_button)
    assert [survey.name for survey in page.desk.surveys[2:]] == ["Monday", "Tuesday"]
    for survey in page.desk.surveys[1:]:
        page.desk.choose(survey.key)
        turn_to(page, tasks.RECORD)
        press(page.record.lining, Qt.Key.Key_Down)
    assert all(survey.open_air for survey in page.desk.surveys)

    turn_to(page, tasks.COMPARE)
    assert len(page.compare.chart.table()[1]) == 4
    assert "'Tuesday'" in page.compare.verdicts.text()

    # The fit of all four doubts Tuesday; what was tried says why, and one click mends it.
    turn_to(page, tasks.CALIBRATE)
    click(page.calibrate.run_button)
    results = page.calibrate.results
    assert "'Tuesday' hole 7 stands out" in results.alert.text()
    assert results.use_button.text() == "Use in the plan all the same"
    assert "hole 7 of 'Tuesday' is left out" in results.diagnosis.words.text()
    click(results.diagnosis.mend_button)
    assert undo_text(page) == "Set hole 7 aside: Tuesday"
    assert not results.alert.text()
    answer = page.fitting.answer
    assert answer is not None
    flux = answer.calibration.value(Quantity.FLUX)
    assert abs(flux.value - 180) < 3 * flux.standard_error
    click(results.use_button)
    assert undo_text(page) == "Use calibration in the plan"
    assert page.desk.plan.lamps[0].model.ppf == pytest.approx(flux.value)
