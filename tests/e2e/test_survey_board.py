"""What a user says of the board and of its doubts, and where that counts."""

from __future__ import annotations

from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QComboBox
from pytestqt.qtbot import QtBot

from planner.app.pages.survey import desk as tasks
from planner.app.pages.survey.board_panel import ASK_BOARD
from planner.plan.survey import Board, Doubts
from planner.plan.survey_edits import as_surveyed
from planner.survey.layout import grid_places
from tests.e2e.shell import small_plan
from tests.e2e.test_survey_page import shown, undo, undo_text
from tests.unit.app.pages.survey.surveying import invented, make_page


@pytest.fixture(autouse=True)
def at_once(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("PLANNER_SYNCHRONOUS", "1")


def pick(combo: QComboBox, board: Board) -> None:
    """Step down a closed list by its keys."""
    combo.setFocus()
    wanted = next(k for k in range(combo.count()) if combo.itemData(k) == board)
    for _ in range(combo.count()):
        if combo.currentIndex() == wanted:
            break
        step = Qt.Key.Key_Down if combo.currentIndex() < wanted else Qt.Key.Key_Up
        QTest.keyClick(combo, step)


def test_the_board_is_asked_for_and_stands_in_the_record(qtbot: QtBot, tmp_path: Path) -> None:
    page, _ = make_page(qtbot, tmp_path)
    page.invitation.lay_out.click()
    assert shown(page).board_unsaid
    assert page.board.made_row.error == ASK_BOARD
    pick(page.board.made_of, Board.WHITE_CARD)
    survey = shown(page)
    assert (survey.board, survey.board_reflectance) == (Board.WHITE_CARD, 0.85)
    assert survey.doubts.board_reflectance == 0.05
    assert page.board.made_row.error == ""
    page.show_task(tasks.RECORD)
    assert page.record.made_of.currentText() == "White card, 85 %"
    assert page.record.board.text() == "85 %"


def test_a_printed_board_is_never_the_canopy(qtbot: QtBot, tmp_path: Path) -> None:
    page, answers = make_page(qtbot, tmp_path)
    page.invitation.lay_out.click()
    # A metre on sheets of 190 by 261 mm that overlap by 10: 5.5 and 3.9 of them.
    assert page.board.count_note.text().startswith("The board takes 24 sheets")
    answers.to_save = tmp_path / "board.pdf"
    page.board.print_button.click()
    assert (shown(page).board, shown(page).board_reflectance) == (Board.PAPER, 0.80)
    canopy = as_surveyed(page.desk.plan, shown(page)).canopy
    assert (canopy.closed, canopy.reflectance) == (True, 0.80)
    undo(page)
    assert shown(page).board_unsaid
    assert undo_text(page) == "Lay out a survey grid"


def test_a_survey_that_does_not_say_its_board_is_asked(qtbot: QtBot, tmp_path: Path) -> None:
    page, _ = make_page(qtbot, tmp_path, None, invented(small_plan()))
    page.show_task(tasks.RECORD)
    assert page.record.made_row.error == ASK_BOARD
    assert as_surveyed(page.desk.plan, shown(page)).canopy == page.desk.plan.canopy
    page.record.board.setFocus()
    qtbot.keyClicks(page.record.board, "30")
    QTest.keyClick(page.record.board, Qt.Key.Key_Return)
    assert (shown(page).board, shown(page).board_reflectance) == (Board.OWN, 0.30)
    assert page.record.made_of.currentText() == "Own number"
    pick(page.record.made_of, Board.NONE)
    assert (shown(page).board, shown(page).board_reflectance) == (Board.NONE, None)
    assert page.record.made_row.error == "", "said: the canopy itself"


def test_how_sure_the_record_is_can_be_said(qtbot: QtBot, tmp_path: Path) -> None:
    page, _ = make_page(qtbot, tmp_path, None, invented(small_plan()))
    page.show_task(tasks.RECORD)
    for field, text, value in (
        ("hanging_height", "5 mm", 0.005),
        ("sensor_height", "1 mm", 0.001),
        ("board_reflectance", "10", 0.10),
        ("output", "3", 0.03),
        ("drift", "0", 0.0),
        ("door", "20", 0.20),
        ("cosine", "4", 0.04),
    ):
        box = page.record.doubts[field].box
        box.setFocus()
        box.selectAll()
        qtbot.keyClicks(box, text)
        QTest.keyClick(box, Qt.Key.Key_Return)
        assert getattr(shown(page).doubts, field) == pytest.approx(value), field
        assert undo_text(page).startswith("Survey doubt: ")
    for _ in range(7):
        undo(page)
    assert shown(page).doubts == Doubts()


def test_what_was_left_out_stays_left_out_by_its_place(qtbot: QtBot, tmp_path: Path) -> None:
    page, _ = make_page(qtbot, tmp_path)
    page.invitation.lay_out.click()
    middle = (0.5, 0.5)
    assert page.desk.toggle_place(13), "the middle of five by five"
    for rows, columns in ((7, 5), (7, 9), (3, 9), (5, 5)):
        assert page.desk.change_grid("rows", rows=rows, columns=columns)
        grid = shown(page).grid
        assert grid is not None
        places = grid_places(grid, small_plan().space.footprint)
        left_out = [places[k - 1] for k in grid.excluded]
        assert middle in [pytest.approx(place) for place in left_out], (rows, columns)
        assert len(shown(page).points) == rows * columns - len(left_out)
