"""What a user does with tables: paste, import, correct what they mean, take them."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from PySide6.QtCore import QMimeData, QPoint, QPointF, Qt, QUrl
from PySide6.QtGui import QDropEvent, QGuiApplication
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from planner.app.pages.survey.page import SurveyPage
from planner.app.pages.survey.table_dialog import TableDialog
from planner.plan.edits import changed
from tests.e2e.shell import small_plan
from tests.e2e.test_survey_page import pick, shown, undo_text
from tests.unit.app.pages.survey.surveying import invented, make_page
from tests.unit.survey.workbooks import sheet, xlsx

TABLES = Path(__file__).parents[1] / "data" / "tables"


@pytest.fixture(autouse=True)
def at_once(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("PLANNER_SYNCHRONOUS", "1")


def pasted(page: SurveyPage, text: str) -> TableDialog:
    page.importing.read_text(text)
    assert page.importing.dialog is not None, page.header.alert.text()
    return page.importing.dialog


def says(dialog: TableDialog, column: int, meaning: str) -> None:
    box = dialog.preview.heads.boxes[column]
    box.setCurrentIndex(box.findText(meaning))
    box.activated.emit(box.currentIndex())


PLACES = "x;y;ppfd\n10;10;101,5\n90;10;102,5\n10;90;103\n90;90;104"


def test_a_pasted_table_becomes_a_survey(qtbot: QtBot, tmp_path: Path) -> None:
    page, _ = make_page(qtbot, tmp_path)
    QGuiApplication.clipboard().setText(PLACES)
    page.invitation.paste.click()
    dialog = page.importing.dialog
    assert dialog is not None
    assert "semicolons" in dialog.words.text()
    assert "4 readings at 4 holes, from 102 to 104" in dialog.outcome.text()
    dialog.name_line.selectAll()
    qtbot.keyClicks(dialog.name_line, "From the sheet")
    dialog.take_button.click()
    survey = shown(page)
    assert survey.name == "From the sheet"
    assert survey.points[1] == pytest.approx((0.9, 0.1))
    assert [r.value for r in survey.readings] == [101.5, 102.5, 103, 104]
    assert undo_text(page) == "Import survey From the sheet"
    assert page.importing.dialog is None


def test_a_wrong_guess_is_corrected_in_the_preview(qtbot: QtBot, tmp_path: Path) -> None:
    page, _ = make_page(qtbot, tmp_path)
    dialog = pasted(page, PLACES)
    says(dialog, 1, "x")
    assert "no column is y" in dialog.alert.text()
    assert not dialog.take_button.isEnabled()
    nothing = dialog.drawing.picture
    assert nothing is not None
    assert not nothing.marks, "what cannot be read is not drawn"
    says(dialog, 0, "y")
    assert dialog.take_button.isEnabled()
    # The first reading stands at x 10 cm, y 10 cm, the second at x 10 cm, y 90 cm.
    drawn = dialog.drawing.picture
    assert drawn is not None
    assert drawn.marks[1].place == pytest.approx((0.1, 0.9))
    assert drawn.marks[1].text == "102"
    pick(dialog.length, "in")
    assert "Lengths are in in" in dialog.words.text()
    pick(dialog.length, "cm")
    pick(dialog.decimal, ".")
    assert "'101,5'" in dialog.alert.text()
    pick(dialog.decimal, ",")
    dialog.take_button.click()
    assert shown(page).points[1] == pytest.approx((0.1, 0.9)), "x and y were exchanged"


def test_another_separator_is_tried(qtbot: QtBot, tmp_path: Path) -> None:
    page, _ = make_page(qtbot, tmp_path, None, changed(invented(small_plan()), readings=()))
    dialog = pasted(page, "1;2\n101;102")
    pick(dialog.separator, ",")
    assert dialog.preview.columnCount() == 1
    assert "No row of numbers was found" in dialog.words.text()
    assert "change what parts the cells" in dialog.alert.text()
    pick(dialog.separator, ";")
    assert dialog.preview.columnCount() == 2
    dialog.reject()
    assert page.importing.dialog is None


def test_lux_are_read_by_a_spectrum(qtbot: QtBot, tmp_path: Path) -> None:
    page, _ = make_page(qtbot, tmp_path)
    dialog = pasted(page, PLACES.replace("ppfd", "lux"))
    factor = dialog.light.currentData()
    assert factor is not None
    assert dialog.light.isVisible()
    assert dialog.preview.heads.boxes[2].currentText() == "lux", "guessed from its heading"
    dialog.take_button.click()
    assert shown(page).lux_per_umol == factor
    assert shown(page).readings[0].value == pytest.approx(101.5 / factor)


def test_a_picture_of_the_board_goes_onto_its_holes(qtbot: QtBot, tmp_path: Path) -> None:
    plan = small_plan()
    page, _ = make_page(qtbot, tmp_path, plan, changed(invented(plan), readings=()))
    rows = "\n".join("\t".join(str(100 * r + c) for c in (1, 2, 3, 4)) for r in (3, 2, 1))
    dialog = pasted(page, rows)
    assert dialog.target.currentData() == "survey-1", "an empty board is what it is for"
    dialog.take_button.click()
    # The last row is the near side; the second row of holes is walked back.
    assert shown(page).values_at(1) == (101,)
    assert shown(page).values_at(5) == (204,)
    assert undo_text(page) == "Import readings"


def test_readings_by_hole_number_are_added_to_those_there(qtbot: QtBot, tmp_path: Path) -> None:
    page, _ = make_page(qtbot, tmp_path, None, invented(small_plan()))
    first = shown(page).values_at(1)
    dialog = pasted(page, "hole\tppfd\n1\t111\n2\t112")
    pick(dialog.target, shown(page).key)
    dialog.take_button.click()
    assert shown(page).values_at(1) == (*first, 111)


def test_a_file_is_imported(qtbot: QtBot, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    page, answers = make_page(qtbot, tmp_path)
    path = tmp_path / "readings.csv"
    path.write_text("\ufeff" + PLACES, "utf-8")
    monkeypatch.setattr(answers, "open_file", lambda *_: path)
    page.invitation.open_file.click()
    assert page.importing.dialog is not None
    page.importing.dialog.take_button.click()
    assert shown(page).name == "readings"


@pytest.mark.parametrize(("name", "taken"), [("readings.csv", True), ("cabinet.plan.json", False)])
def test_a_table_dropped_on_the_page_is_shown(
    qtbot: QtBot, tmp_path: Path, name: str, taken: bool
) -> None:
    page, _ = make_page(qtbot, tmp_path)
    path = tmp_path / name
    path.write_text(PLACES, "utf-8")
    mime = QMimeData()
    mime.setUrls([QUrl.fromLocalFile(str(path))])
    drop = QDropEvent(
        QPointF(200, 200), Qt.DropAction.CopyAction, mime, Qt.MouseButton.LeftButton,
        Qt.KeyboardModifier.NoModifier,
    )  # fmt: skip
    page.dropEvent(drop)
    assert drop.isAccepted() is taken
    assert (page.importing.dialog is not None) is taken
    if page.importing.dialog is not None:
        page.importing.dialog.reject()


def test_a_workbook_is_imported(
    qtbot: QtBot, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    plan = small_plan()
    page, answers = make_page(qtbot, tmp_path, plan, changed(invented(plan), readings=()))
    path = TABLES / "workbook.xlsx"
    meant = json.loads((TABLES / "expected.json").read_text("utf-8"))["workbook.xlsx"]
    monkeypatch.setattr(answers, "open_file", lambda *_: path)
    page.header.file_button.click()
    dialog = page.importing.dialog
    assert dialog is not None
    assert not dialog.separator.isVisible(), "a workbook has its cells"
    dialog.take_button.click()
    assert [[r.hole, r.value] for r in shown(page).readings] == meant["numbered"]


def test_hole_numbers_need_a_board_and_the_preview_says_so(qtbot: QtBot, tmp_path: Path) -> None:
    page, _ = make_page(qtbot, tmp_path)
    dialog = pasted(page, "hole\tppfd\n1\t111\n2\t112")
    assert "lay out the survey first" in dialog.alert.text()
    assert not dialog.take_button.isEnabled()
    dialog.reject()


def test_a_file_that_is_no_table_says_so_over_a_place_to_paste(
    qtbot: QtBot, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    page, answers = make_page(qtbot, tmp_path)
    path = tmp_path / "report.pdf"
    path.write_bytes(b"%PDF-1.7 nothing")
    monkeypatch.setattr(answers, "open_file", lambda *_: path)
    page.invitation.open_file.click()
    dialog = page.importing.dialog
    assert dialog is not None
    assert "This is a PDF" in dialog.alert.text()
    assert not dialog.take_button.isEnabled()
    QGuiApplication.clipboard().setText(PLACES)
    assert dialog.paste_box.isVisible()
    QTest.keyClick(dialog.paste_box, Qt.Key.Key_V, Qt.KeyboardModifier.ControlModifier)
    assert "4 readings at 4 holes" in dialog.outcome.text()
    assert not dialog.alert.text()
    QTest.mouseClick(dialog.take_button, Qt.MouseButton.LeftButton)
    assert len(shown(page).readings) == 4


def test_each_sheet_of_a_workbook_becomes_a_survey(
    qtbot: QtBot, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    plan = small_plan()
    page, answers = make_page(qtbot, tmp_path, plan, invented(plan))
    path = tmp_path / "evening.xlsx"
    rows: list[list[Any]] = [["hole", "ppfd", "old"], *([k, 200 + k, 1] for k in range(1, 13))]
    path.write_bytes(
        xlsx(
            {
                "White": sheet(rows, hidden_rows=(4,), hidden_columns=(3,)),
                "Remarks": sheet([["bought in May"]]),
                "Film": sheet([["hole", "klx"], *([k, 14 + k] for k in range(1, 13))]),
            }
        )
    )
    monkeypatch.setattr(answers, "open_file", lambda *_: path)
    QTest.mouseClick(page.header.file_button, Qt.MouseButton.LeftButton)
    dialog = page.importing.dialog
    assert dialog is not None
    assert [dialog.tabs.tabText(k) for k in range(3)] == ["White", "Remarks", "Film"]
    hidden, read = dialog.preview.item(3, 1), dialog.preview.item(1, 1)
    assert hidden is not None
    assert read is not None
    assert hidden.text() == "203", "what is hidden is shown, in grey"
    assert hidden.foreground() != read.foreground()
    assert not dialog.preview.heads.boxes[2].isEnabled(), "a hidden column has no choice"
    assert "11 readings at 11 holes" in dialog.outcome.text()
    assert "Board and conditions are those of 'Invented" in dialog.outcome.text()
    dialog.tabs.setCurrentIndex(1)
    assert dialog.outcome.text() == "This sheet is not taken."
    assert not dialog.wanted.isChecked()
    dialog.tabs.setCurrentIndex(2)
    assert dialog.preview.heads.boxes[1].currentText() == "klx"
    assert dialog.take_button.text() == "Take 2 sheets"
    QTest.mouseClick(dialog.take_button, Qt.MouseButton.LeftButton)
    assert [survey.name for survey in page.desk.surveys[1:]] == ["White", "Film"]
    assert [len(survey.readings) for survey in page.desk.surveys[1:]] == [11, 12]
    assert shown(page).name == "Film"
    assert undo_text(page) == "Import 2 sheets"


def test_a_wanted_sheet_that_cannot_be_read_holds_all_back(
    qtbot: QtBot, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    page, answers = make_page(qtbot, tmp_path)
    path = tmp_path / "evening.xlsx"
    places: list[list[Any]] = [["x cm", "y cm", "ppfd"], [10, 10, 200]]
    outside: list[list[Any]] = [["x cm", "y cm", "ppfd"], [100, 900, 200]]
    path.write_bytes(xlsx({"Good": sheet(places), "Outside": sheet(outside)}))
    monkeypatch.setattr(answers, "open_file", lambda *_: path)
    page.invitation.open_file.click()
    dialog = page.importing.dialog
    assert dialog is not None
    assert dialog.take_button.isEnabled()
    dialog.tabs.setCurrentIndex(1)
    assert "lies outside the space" in dialog.alert.text()
    QTest.mouseClick(dialog.wanted, Qt.MouseButton.LeftButton, pos=QPoint(8, 8))
    assert dialog.wanted.isChecked()
    dialog.tabs.setCurrentIndex(0)
    assert "Sheet 'Outside': The place x = 100 cm, y = 900 cm lies outside" in dialog.alert.text()
    assert not dialog.take_button.isEnabled()
    dialog.reject()


def test_other_places_than_those_of_an_empty_board_become_a_survey(
    qtbot: QtBot, tmp_path: Path
) -> None:
    plan = small_plan()
    page, _ = make_page(qtbot, tmp_path, plan, changed(invented(plan), readings=()))
    dialog = pasted(page, PLACES)
    assert dialog.target.currentData() == "", "no hole of the board is at 10 cm, 10 cm"
    assert dialog.take_button.isEnabled()
    dialog.reject()


def test_a_board_is_not_taken_for_granted_where_there_are_two(qtbot: QtBot, tmp_path: Path) -> None:
    plan = small_plan()
    other = changed(
        invented(plan, "other"), grid=None, points=((0.2, 0.2), (0.8, 0.8)), readings=()
    )
    page, _ = make_page(qtbot, tmp_path, plan, other, invented(plan))
    dialog = pasted(page, "hole\tppfd\n1\t111\n2\t112")
    assert dialog.like.isVisible()
    assert "choose on whose board they were read" in dialog.alert.text()
    assert not dialog.take_button.isEnabled()
    pick(dialog.like, "other")
    QTest.mouseClick(dialog.take_button, Qt.MouseButton.LeftButton)
    assert shown(page).points == ((0.2, 0.2), (0.8, 0.8))


def test_pasting_works_by_its_key(qtbot: QtBot, tmp_path: Path) -> None:
    page, _ = make_page(qtbot, tmp_path, None, invented(small_plan()))
    QGuiApplication.clipboard().setText(PLACES)
    page.stage.first.setFocus()
    QTest.keyClick(page.stage.first, Qt.Key.Key_V, Qt.KeyboardModifier.ControlModifier)
    assert page.importing.dialog is not None
    page.importing.dialog.reject()
