"""What a user does on the survey page: lay out, print, read, import, compare, calibrate."""

from __future__ import annotations

import dataclasses
import datetime as dt
import threading
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLabel, QWidget
from pytestqt.qtbot import QtBot

from planner.app.jobs import Cancelled, Job, Progress
from planner.app.pages.survey import calibrate_panel as fitting_module
from planner.app.pages.survey import desk as tasks
from planner.app.pages.survey.calibration import Answer, CalibrationResults, Wish, proposed
from planner.app.pages.survey.compare_panel import ComparePanel
from planner.app.pages.survey.page import SurveyPage
from planner.app.pages.survey.pictures import View
from planner.estimate.calibrate import LeftOut
from planner.estimate.calibrate_model import Quantity
from planner.estimate.calibrate_result import Calibration, Fitted, SurveyFit
from planner.plan.edits import changed
from planner.plan.lining import OPENING, Lining
from planner.plan.plan import Plan
from planner.plan.survey import Meter, Reading, Spacing, Survey
from planner.survey.layout import holes
from planner.units import LengthUnit
from tests.e2e.shell import make_window, small_plan, trigger
from tests.unit.app.pages.survey.surveying import GRID, invented, make_page

CARD = Lining(key="card", name="Card", reflectance=0.5, low=0.4, high=0.6)


@pytest.fixture(autouse=True)
def at_once(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("PLANNER_SYNCHRONOUS", "1")


def shown(page: SurveyPage) -> Survey:
    survey = page.desk.survey
    assert survey is not None
    return survey


def undo_text(page: SurveyPage) -> str:
    return page.workplace.document.undo_stack.undoText()


def undo(page: SurveyPage) -> None:
    page.workplace.document.undo_stack.undo()


def pick(combo: Any, data: object) -> None:
    index = combo.findData(data)
    assert index >= 0
    combo.setCurrentIndex(index)
    combo.activated.emit(index)


def click_at(page: SurveyPage, x: float, y: float) -> None:
    drawing = page.stage.first
    spot = drawing.viewport.to_pixel(x, y)
    QTest.mouseClick(
        drawing, Qt.MouseButton.LeftButton, pos=QPoint(round(spot.x()), round(spot.y()))
    )


def press(widget: QWidget, key: Qt.Key) -> None:
    QTest.keyClick(widget, key)


# -- the board ----------------------------------------------------------------------------


def test_the_survey_page_comes_by_its_key(qtbot: QtBot) -> None:
    window, _ = make_window(qtbot)
    assert window.pages.made("survey") is None, "made when it is first asked for"
    trigger(window, "page_survey")
    page = window.pages.made("survey")
    assert isinstance(page, SurveyPage)
    assert page.isVisible()
    assert page.sides.currentWidget() is page.invitation
    window.close()


def test_an_empty_page_offers_the_two_ways_to_begin(qtbot: QtBot, tmp_path: Path) -> None:
    page, _ = make_page(qtbot, tmp_path)
    assert page.invitation.lay_out.text() == "Lay out a grid"
    assert page.invitation.paste.text() == "Paste readings"
    QGuiApplication.clipboard().clear()
    page.invitation.paste.click()
    dialog = page.importing.dialog
    assert dialog is not None, "the dialog opens, with a place to paste"
    assert "Nothing to read yet. Copy" in dialog.words.text()
    assert not dialog.take_button.isEnabled()
    QTest.keyClick(dialog, Qt.Key.Key_Escape)
    assert page.importing.dialog is None
    page.invitation.lay_out.click()
    assert len(shown(page).points) == 25, "a square metre by the standard: five by five"
    assert page.task == tasks.BOARD
    assert undo_text(page) == "Lay out a survey grid"
    undo(page)
    assert page.sides.currentWidget() is page.invitation


def test_fields_of_the_grid_are_named_steps(qtbot: QtBot, tmp_path: Path) -> None:
    page, _ = make_page(qtbot, tmp_path)
    page.invitation.lay_out.click()
    for field, text, name in (
        (page.board.rows, "3", "Survey grid: rows"),
        (page.board.columns, "4", "Survey grid: columns"),
        (page.board.margin, "10 cm", "Survey grid: margin"),
        (page.board.diameter, "1 in", "Survey grid: hole diameter"),
    ):
        field.box.setFocus()
        field.box.selectAll()
        qtbot.keyClicks(field.box, text)
        press(field.box, Qt.Key.Key_Return)
        assert undo_text(page) == name
    grid = shown(page).grid
    assert grid is not None
    assert (grid.rows, grid.columns, grid.margin) == (3, 4, 0.1)
    assert grid.hole_diameter == pytest.approx(0.0254)
    page.board.spacing.setCurrentIndex(1)
    page.board.spacing.activated.emit(1)
    assert shown(page).points[0] == pytest.approx((0.1, 0.1))
    assert shown(page).grid.spacing is Spacing.EDGES  # type: ignore[union-attr]
    page.board.standard.click()
    # 80 cm inside the margin: p = 0.2 · 5^log 0.8 = 0.171 m, five by five.
    assert len(shown(page).points) == 25
    assert undo_text(page) == "Survey grid by EN 12464-1"


def test_a_click_leaves_a_hole_out_and_takes_it_in_again(qtbot: QtBot, tmp_path: Path) -> None:
    page, _ = make_page(qtbot, tmp_path)
    page.invitation.lay_out.click()
    place = shown(page).points[2]
    click_at(page, *place)
    assert len(shown(page).points) == 24
    assert undo_text(page) == "Leave out place 3"
    click_at(page, 0.41, 0.41)  # between holes: nothing
    assert len(shown(page).points) == 24
    click_at(page, *place)
    assert len(shown(page).points) == 25


def test_arrows_and_space_do_what_a_click_does(qtbot: QtBot, tmp_path: Path) -> None:
    page, _ = make_page(qtbot, tmp_path)
    page.invitation.lay_out.click()
    drawing = page.stage.first
    drawing.setFocus()
    press(drawing, Qt.Key.Key_Right)
    press(drawing, Qt.Key.Key_Up)
    # Second row, walked back: hole 9 lies above hole 2.
    assert page.desk.hole == 9
    press(drawing, Qt.Key.Key_Space)
    assert len(shown(page).points) == 24


def test_a_hole_that_was_read_is_not_left_out(qtbot: QtBot, tmp_path: Path) -> None:
    page, _ = make_page(qtbot, tmp_path, None, invented(small_plan()))
    page.show_task(tasks.BOARD)
    click_at(page, *shown(page).points[0])
    assert len(shown(page).points) == 12
    assert "hole 1 has readings" in page.header.alert.text().lower()


@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_the_board_is_printed_at_true_size(qtbot: QtBot, tmp_path: Path, paper: str) -> None:
    page, answers = make_page(qtbot, tmp_path, None, invented(small_plan()))
    page.show_task(tasks.BOARD)
    answers.to_save = tmp_path / "board"
    page.board.paper.setCurrentIndex(page.board.paper.findData(paper))
    told: list[str] = []
    page.told.connect(told.append)
    page.board.print_button.click()
    data = (tmp_path / "board.pdf").read_bytes()
    assert data.startswith(b"%PDF")
    # 1 m by 1 m over sheets of 190 (195.9) mm that overlap by 10, and the recording sheet.
    assert answers.proposed[-1].name == "Invented survey-1 board.pdf"
    assert "board.pdf" in told[-1]


def test_a_folder_that_is_not_there_is_told(qtbot: QtBot, tmp_path: Path) -> None:
    page, answers = make_page(qtbot, tmp_path, None, invented(small_plan()))
    answers.to_save = tmp_path / "missing" / "board.pdf"
    page.board.print_button.click()
    assert "board.pdf" in answers.told[-1]


def test_undo_in_the_window_takes_a_reading_back(qtbot: QtBot) -> None:
    window, _ = make_window(qtbot)
    with qtbot.waitActive(window):
        window.activateWindow()
    QTest.keyClick(window, Qt.Key.Key_3, Qt.KeyboardModifier.ControlModifier)
    page = window.pages.made("survey")
    assert isinstance(page, SurveyPage)
    page.invitation.lay_out.click()
    page.show_task(tasks.READINGS)
    type_in(qtbot, page, "101")
    assert shown(page).values_at(1) == (101,)
    QTest.keyClick(page.entry.line, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert shown(page).values_at(1) == ()
    assert page.entry.line.hasFocus()
    window.close()


# -- reading ------------------------------------------------------------------------------


def type_in(qtbot: QtBot, page: SurveyPage, text: str) -> None:
    qtbot.keyClicks(page.entry.line, text)
    press(page.entry.line, Qt.Key.Key_Return)


def test_reading_by_keyboard_alone(qtbot: QtBot, tmp_path: Path) -> None:
    plan = small_plan()
    page, _ = make_page(qtbot, tmp_path, plan, changed(invented(plan), readings=()))
    page.show_task(tasks.READINGS)
    assert page.entry.line.hasFocus()
    assert page.entry.title.text() == "Hole 1 of 12"
    picture = page.stage.first.picture
    assert picture is not None
    assert picture.next_hole == 1
    type_in(qtbot, page, "101")
    type_in(qtbot, page, "98,5")
    assert page.entry.title.text() == "Hole 3 of 12"
    type_in(qtbot, page, "")  # passed over
    assert page.desk.hole == 4
    press(page.entry.line, Qt.Key.Key_Backspace)
    press(page.entry.line, Qt.Key.Key_Backspace)
    assert page.desk.hole == 2
    type_in(qtbot, page, "99.5")
    assert shown(page).values_at(2) == (98.5, 99.5), "repeated readings are kept"
    assert undo_text(page) == "Read hole 2"
    assert page.desk.hole == 3, "the next hole without a reading"
    type_in(qtbot, page, "103 104")
    assert shown(page).values_at(3) == (103, 104)
    undo(page)
    assert shown(page).values_at(3) == ()


def test_undo_goes_back_to_the_hole_it_took_a_reading_from(qtbot: QtBot, tmp_path: Path) -> None:
    unread = changed(invented(small_plan()), readings=())
    page, _ = make_page(qtbot, tmp_path, None, unread)
    page.show_task(tasks.READINGS)
    page.desk.go_to(4)
    type_in(qtbot, page, "104")
    page.desk.go_to(12)
    type_in(qtbot, page, "112")
    assert page.desk.hole == 1
    undo(page)
    assert page.entry.title.text() == "Hole 12 of 12"
    undo(page)
    assert page.entry.title.text() == "Hole 4 of 12"
    page.workplace.document.undo_stack.redo()
    assert shown(page).values_at(4) == (104,)
    assert page.entry.title.text() == "Hole 5 of 12", "as when it was typed"
    # A hole corrected in the table is not where one reads: that stays where it is.
    page.desk.set_readings(9, (109,))
    assert page.desk.hole == 5


def test_backspace_in_a_text_only_takes_a_digit(qtbot: QtBot, tmp_path: Path) -> None:
    page, _ = make_page(qtbot, tmp_path, None, invented(small_plan()))
    page.show_task(tasks.READINGS)
    before = page.desk.hole
    qtbot.keyClicks(page.entry.line, "12")
    press(page.entry.line, Qt.Key.Key_Backspace)
    assert page.entry.line.text() == "1"
    assert page.desk.hole == before
    press(page.entry.line, Qt.Key.Key_Escape)
    assert page.entry.line.text() == ""


@pytest.mark.parametrize(("text", "said"), [("12a", "is not a reading"), ("99999", "full sun")])
def test_what_is_no_reading_stays_to_be_corrected(
    qtbot: QtBot, tmp_path: Path, text: str, said: str
) -> None:
    page, _ = make_page(qtbot, tmp_path, None, invented(small_plan()))
    page.show_task(tasks.READINGS)
    before = shown(page)
    type_in(qtbot, page, text)
    assert said in page.entry.alert.text()
    assert page.entry.line.text() == text
    assert shown(page) == before


def test_delete_takes_the_last_reading_back(qtbot: QtBot, tmp_path: Path) -> None:
    page, _ = make_page(qtbot, tmp_path, None, invented(small_plan()))
    page.show_task(tasks.READINGS)
    page.desk.go_to(5)
    press(page.entry.line, Qt.Key.Key_Delete)
    assert shown(page).values_at(5) == ()
    press(page.entry.line, Qt.Key.Key_Delete)
    assert "no reading to take back" in page.entry.alert.text()


def test_lux_are_divided_as_they_are_typed(qtbot: QtBot, tmp_path: Path) -> None:
    plan = small_plan()
    page, _ = make_page(qtbot, tmp_path, plan, changed(invented(plan), readings=()))
    page.show_task(tasks.RECORD)
    page.record.shows.setCurrentIndex(1)
    page.record.shows.activated.emit(1)
    factor = shown(page).lux_per_umol
    assert factor is not None
    assert 40 < factor < 90, "lamps for plants show some 55 to 75 lux to the µmol"
    page.show_task(tasks.READINGS)
    assert page.entry.unit.text().startswith("lux")
    type_in(qtbot, page, "7000")
    assert shown(page).values_at(1)[0] == pytest.approx(7000 / factor)


def test_a_hole_is_chosen_on_the_drawing_and_in_the_table(qtbot: QtBot, tmp_path: Path) -> None:
    page, _ = make_page(qtbot, tmp_path, None, invented(small_plan()))
    page.show_task(tasks.READINGS)
    click_at(page, *shown(page).points[6])
    assert page.entry.title.text() == "Hole 7 of 12"
    assert page.table.currentIndex().row() == 6
    page.table.selectRow(2)
    assert page.desk.hole == 3


def test_readings_are_typed_over_in_the_table(qtbot: QtBot, tmp_path: Path) -> None:
    page, _ = make_page(qtbot, tmp_path, None, invented(small_plan()))
    page.show_task(tasks.READINGS)
    model = page.table.readings
    index = model.index(4, 3)
    assert model.setData(index, "120; 124")
    assert shown(page).values_at(5) == (120, 124)
    assert undo_text(page) == "Readings of hole 5"
    assert model.data(model.index(4, 4)) == "122"
    assert not model.setData(index, "much")
    assert "is not a reading" in page.header.alert.text()
    assert model.setData(index, "")
    assert shown(page).values_at(5) == ()


def test_a_reading_far_off_its_neighbours_is_flagged_and_kept(qtbot: QtBot, tmp_path: Path) -> None:
    page, _ = make_page(qtbot, tmp_path, None, invented(small_plan()))
    page.show_task(tasks.READINGS)
    assert "Far off" not in page.header.sentence.text()
    page.desk.set_readings(6, (40.0,))
    assert "hole 6 (reads 40" in page.header.sentence.text()
    assert "It is kept" in page.header.sentence.text()
    picture = page.stage.first.picture
    assert picture is not None
    assert [mark.hole for mark in picture.marks if mark.suspect] == [6]
    assert page.table.readings.data(page.table.readings.index(5, 0)) == "▲ 6"
    assert shown(page).values_at(6) == (40.0,)


# -- the record ---------------------------------------------------------------------------


def test_the_record_is_written_field_by_field(qtbot: QtBot, tmp_path: Path) -> None:
    page, _ = make_page(qtbot, tmp_path, None, invented(small_plan()))
    page.show_task(tasks.RECORD)
    record = page.record

    def write(line: Any, text: str) -> None:
        line.setFocus()
        line.selectAll()
        qtbot.keyClicks(line, text)
        press(line, Qt.Key.Key_Return)

    write(record.date_line, "2026-03-21")
    write(record.output, "80 %")
    write(record.hanging_line, "18 in")
    write(record.warm_up, "25")
    write(record.board, "85")
    write(record.note_line, "Door ajar")
    write(record.meter_line, "Meter B")
    write(record.response_line, "0: 1, 60: 0.97")
    survey = shown(page)
    assert survey.date == dt.date(2026, 3, 21)
    assert survey.output_percent == 80
    assert survey.hanging_height == pytest.approx(0.4572)
    assert survey.warm_up_minutes == 25
    assert survey.board_reflectance == pytest.approx(0.85)
    assert survey.note == "Door ajar"
    assert survey.meter == Meter(
        name="Meter B", response_angles_deg=(0, 60), response_relative=(1, 0.97)
    )
    assert undo_text(page) == "Meter: cosine response"
    write(record.date_line, "yesterday")
    assert "year, month, day" in record.date_row.error
    write(record.response_line, "good")
    assert "pairs of angle" in record.response_row.error
    record.output.selectAll()
    press(record.output, Qt.Key.Key_Delete)
    press(record.output, Qt.Key.Key_Return)
    assert shown(page).output_percent is None


def test_the_lining_of_a_survey_may_be_open_air(qtbot: QtBot, tmp_path: Path) -> None:
    page, _ = make_page(qtbot, tmp_path, None, invented(small_plan()))
    page.show_task(tasks.RECORD)
    page.record.lining.setCurrentIndex(1)
    page.record.lining.activated.emit(1)
    assert shown(page).open_air
    assert page.record.lining.currentText().startswith("Open air")


def test_inches_are_shown_where_they_are_chosen(qtbot: QtBot, tmp_path: Path) -> None:
    page, _ = make_page(qtbot, tmp_path, None, invented(small_plan(), hanging_height=0.4572))
    page.show_task(tasks.RECORD)
    page.workplace.display.update(unit=LengthUnit.INCH)
    assert page.record.hanging_line.text() == "18 in"


def test_a_copy_is_read_on_the_same_board_and_removed_again(qtbot: QtBot, tmp_path: Path) -> None:
    page, _ = make_page(qtbot, tmp_path, None, invented(small_plan()))
    page.header.copy_button.click()
    assert len(page.desk.surveys) == 2
    assert shown(page).readings == ()
    page.header.remove_button.click()
    assert len(page.desk.surveys) == 1
    page.header.remove_button.click()
    assert page.sides.currentWidget() is page.invitation


# -- overlay ------------------------------------------------------------------------------


def test_readings_lie_on_the_estimate_on_one_scale(qtbot: QtBot, tmp_path: Path) -> None:
    page, _ = make_page(qtbot, tmp_path, None, invented(small_plan(), factor=1.02))
    page.show_task(tasks.OVERLAY)
    picture = page.stage.first.picture
    assert picture is not None
    assert picture.estimate is not None
    assert picture.style is not None
    assert picture.style.levels[1] >= float(picture.estimate.ppfd.max())
    assert all(mark.colour is not None for mark in picture.marks)
    assert picture.marks[0].text == "115", "1.02 (100 + 100 · 0.125)"
    assert page.stage.light_bar.isVisible()
    assert not page.stage.residual_bar.isVisible()
    assert "2.0 % above the estimate" in page.header.sentence.text()
    assert page.overlay.values["Bias"].text().endswith("(+2.0 %)")
    assert page.overlay.values["r²"].text() == "1.00"
    assert "calibration alone could explain" in page.overlay.words.text()
    # Readings that wait for their estimate are not asked for again.
    survey = page.desk.survey
    assert survey is not None
    page.overlay.show_residuals(None, page.answers.summary(survey))
    assert page.overlay.words.text().startswith("As soon as the estimate is there")
    page.overlay.show_residuals(None, None)
    assert page.overlay.words.text().startswith("Take readings first")


def test_a_tenfold_reading_leaves_the_others_their_colours(qtbot: QtBot, tmp_path: Path) -> None:
    plan = small_plan()
    survey = invented(plan)
    readings = tuple(
        r.model_copy(update={"value": r.value * 10}) if r.hole == 6 else r for r in survey.readings
    )
    page, _ = make_page(qtbot, tmp_path, plan, survey, changed(survey, key="t", readings=readings))
    tops, suspects = [], []
    for key in ("survey-1", "t"):
        page.desk.choose(key)
        page.show_task(tasks.OVERLAY)
        picture = page.stage.first.picture
        assert picture is not None
        assert picture.style is not None
        tops.append(picture.style.levels[1])
        suspects.append(picture.marks[5].suspect)
    assert suspects == [False, True]
    # 100 + 100 x is at most 200 on the map; ten times 162.5 would stretch that to 2000.
    assert tops[0] == tops[1] < 300
    # It is said first, and what is said then is as if it were not there.
    text = page.header.sentence.text()
    assert text.startswith("The reading at hole 6, ")
    assert "from its neighbours and from the estimate: read it again" in text
    assert "0.0 % above the estimate, which the meter's calibration alone" in text
    assert text.count("hole 6") == 1
    assert page.overlay.scatter.ends()[1] < 300


@pytest.mark.parametrize(("view", "texts"), [(View.DIFFERENCE, "+"), (View.RATIO, "1.20")])
def test_residuals_diverge_from_nothing(
    qtbot: QtBot, tmp_path: Path, view: View, texts: str
) -> None:
    page, _ = make_page(qtbot, tmp_path, None, invented(small_plan(), factor=1.2))
    page.show_task(tasks.OVERLAY)
    page.overlay.choices[view].setChecked(True)
    picture = page.stage.first.picture
    assert picture is not None
    assert picture.residuals is not None
    assert all(mark.text.startswith(texts) for mark in picture.marks)
    assert page.stage.residual_bar.isVisible()
    # ± 5 % evenly likely is a standard of 2.9 %; with 2 % noise 1.96 · 3.5 % = 6.9 %.
    if view is View.RATIO:
        band = picture.residuals.dead_band / np.maximum(picture.residuals.values, 1)
        assert band == pytest.approx(np.full(12, 0.069), abs=0.001)


def test_the_map_of_readings_alone_stands_beside_and_says_so(qtbot: QtBot, tmp_path: Path) -> None:
    page, _ = make_page(qtbot, tmp_path, None, invented(small_plan()))
    page.show_task(tasks.OVERLAY)
    page.overlay.choices[View.ALONE].setChecked(True)
    second = page.stage.second
    assert second.isVisible()
    assert second.picture is not None
    assert second.picture.caption.startswith("Interpolated from readings alone")
    first = page.stage.first.picture
    assert first is not None
    assert first.style == second.picture.style, "the same scale"
    assert second.picture.estimate is not None
    # A plane of readings comes back as that plane.
    x = second.picture.estimate.x
    assert second.picture.estimate.ppfd[0] == pytest.approx(100 + 100 * x, abs=0.01)


def test_an_estimate_that_cannot_be_made_is_told_in_a_sentence(
    qtbot: QtBot, tmp_path: Path
) -> None:
    page, _ = make_page(qtbot, tmp_path, None, invented(small_plan(), hanging_height=2.5))
    page.show_task(tasks.OVERLAY)
    said = page.header.alert.text().replace("\xa0", " ")
    assert "must be at most 180 cm, not 250 cm (the ceiling is there)" in said
    assert page.stage.first.picture is not None, "the readings are shown all the same"


def test_a_new_reading_asks_for_no_new_estimate(qtbot: QtBot, tmp_path: Path) -> None:
    page, _ = make_page(qtbot, tmp_path, None, invented(small_plan()))
    page.show_task(tasks.OVERLAY)
    before = page.stage.first.picture
    page.desk.read((130.0,))
    after = page.stage.first.picture
    assert before is not None
    assert after is not None
    assert after.estimate is before.estimate
    page.desk.change("Dim", output_percent=50.0)
    newest = page.stage.first.picture
    assert newest is not None
    assert newest.estimate is not before.estimate


# -- comparison ---------------------------------------------------------------------------


def test_two_surveys_are_compared_hole_by_hole(qtbot: QtBot, tmp_path: Path) -> None:
    plan = small_plan()
    page, _ = make_page(
        qtbot, tmp_path, plan, invented(plan, "bare", 1.0), invented(plan, "lined", 1.25)
    )
    page.show_task(tasks.COMPARE)
    assert shown(page).key == "lined"
    assert page.compare.ratio.text().startswith("1.250 ±")
    assert "25.0 % above 'Invented bare'" in page.compare.verdict.text()
    assert "larger than what the readings can resolve" in page.compare.verdict.text()
    picture = page.stage.first.picture
    assert picture is not None
    assert {mark.text for mark in picture.marks} == {"1.25"}


def test_a_comparison_is_made_when_it_is_first_looked_at(qtbot: QtBot, tmp_path: Path) -> None:
    page, _ = make_page(qtbot, tmp_path, None, invented(small_plan()))
    assert not page.findChildren(ComparePanel)
    page.show_task(tasks.COMPARE)
    assert page.findChildren(ComparePanel) == [page.compare]
    assert page.compare.isVisible()


def test_a_single_survey_says_what_a_comparison_needs(qtbot: QtBot, tmp_path: Path) -> None:
    page, _ = make_page(qtbot, tmp_path, None, invented(small_plan()))
    page.show_task(tasks.COMPARE)
    assert page.compare.note.isVisible()
    assert page.compare.ratio.text() == "–"
    assert not page.compare.chart._plot.getAxis("bottom").isVisible(), "one survey has no rank"


def test_the_ranking_holds_for_any_base(qtbot: QtBot, tmp_path: Path) -> None:
    plan = small_plan()
    # 25 % below the best and 5 % below the bare wall: the bare wall is 21 % below the best.
    surveys = [
        invented(plan, key, factor, key)
        for key, factor in (("best", 1.0), ("bare", 0.75 / 0.95), ("black", 0.75))
    ]
    page, _ = make_page(qtbot, tmp_path, plan, *surveys)
    page.show_task(tasks.COMPARE)

    def ratios() -> dict[str, str]:
        _, rows = page.compare.chart.table()
        return {str(row[0]): f"{row[2]:.3f}" for row in rows}

    pick(page.compare.base, "best")
    assert ratios() == {"best": "1.000", "bare": "0.789", "black": "0.750"}
    pick(page.compare.base, "bare")
    assert ratios() == {"best": "1.267", "bare": "1.000", "black": "0.950"}
    pick(page.compare.by, "min")
    assert ratios()["black"] == "0.950"
    # By one hole of 2 % noise and setting up anew (2 %/√3): 3.31 · √(0.02² + 0.0115²) = 7.6 %,
    # by the mean of 12 holes 3.31 · √(0.0058² + 0.0115²) = 4.3 %; they are 5 % apart.
    assert "'bare' and 'black' cannot be told apart" in page.compare.verdicts.text()
    assert page.compare.chart.ranking.alike == ((1, 2),), "one bracket, around these two"
    assert "'best' is brighter than all the others" in page.compare.verdicts.text()
    pick(page.compare.by, "mean")
    assert "All of them can be told apart" in page.compare.verdicts.text()


# -- calibration --------------------------------------------------------------------------


def made_up_calibration(plan: Plan, wish: Wish) -> Calibration:
    """What a fit might say; nobody computed it."""
    model = plan.lamps[0].model.model_copy(update={"ppf": 210.0})
    lamps = tuple(lamp.model_copy(update={"model": model}) for lamp in plan.lamps)
    better = CARD.model_copy(update={"reflectance": 0.55})
    flux = Fitted(
        "Photon flux of 'Panel'", Quantity.FLUX, "panel", 210.0, 6.0, 200.0, "µmol/s",
        False, True, "Photon flux of 'Panel': 210.0 ± 6.0 µmol/s (standard error).",
    )  # fmt: skip
    rho = Fitted(
        "Reflectance of 'Card'", Quantity.REFLECTANCE, "card", 0.55, 0.3, 0.5, "", False, False,
        "Reflectance of 'Card': 55.0 % ± 30.0 % (standard error): not identifiable, these readings "
        "do not tell it.",
    )  # fmt: skip
    fits = tuple(
        SurveyFit(
            key=one.key, name=one.name, points=np.array(one.points), measured=np.ones(12),
            before=np.full(12, 1.1), after=np.full(12, 1.01), rms_before=0.1, rms_after=0.01,
        )
        for one in wish.surveys
    )  # fmt: skip
    return Calibration(
        fitted=(flux, rho), correlation=np.array([[1.0, -0.4], [-0.4, 1.0]]), surveys=fits,
        reduced=1.0, plan=plan.model_copy(update={"lamps": lamps}),
        lamps=(model.model_copy(update={"key": "panel-20260321", "name": "Panel (calibrated)"}),),
        linings=(better.model_copy(update={"key": "card-20260321", "name": "Card (calibrated)"}),),
        sentences=(flux.sentence, rho.sentence),
    )  # fmt: skip


@pytest.fixture
def made_up_fit(monkeypatch: pytest.MonkeyPatch) -> list[Wish]:
    """Fits answer at once; returns what was asked."""
    asked: list[Wish] = []

    def job(plan: Plan, wish: Wish, _kept: object) -> Job:
        asked.append(wish)
        return lambda _progress, _cancelled: Answer(plan, wish, made_up_calibration(plan, wish))

    monkeypatch.setattr(fitting_module, "fit_job", job)
    return asked


def calibrating(qtbot: QtBot, folder: Path) -> SurveyPage:
    plan = small_plan()
    page, _ = make_page(
        qtbot, folder, plan,
        invented(plan, "air", 1.0, lining=OPENING), invented(plan, "card", 1.2, lining=CARD),
    )  # fmt: skip
    page.show_task(tasks.CALIBRATE)
    return page


def test_what_is_freed_follows_the_surveys() -> None:
    plan = small_plan()
    air = invented(plan, "air", lining=OPENING)
    card = invented(plan, "card", lining=CARD)
    both, lined = proposed(plan, (air, card)), proposed(plan, (card,))
    assert (both.flux, both.profile, both.reflectance) == (True, "exponent", ("card",))
    assert (lined.flux, lined.profile, lined.reflectance) == (False, "as it is", ("card",))


def test_a_calibration_is_shown_with_errors_and_plain_words(
    qtbot: QtBot, tmp_path: Path, made_up_fit: list[Wish]
) -> None:
    page = calibrating(qtbot, tmp_path)
    assert [one.key for one in page.calibrate.chosen()] == ["air", "card"]
    page.calibrate.run_button.click()
    assert made_up_fit[-1].flux
    assert made_up_fit[-1].reflectance == ("card",)
    results = page.calibrate.results
    assert results.body.isVisible()
    assert "not identifiable" in results.sentences.text()
    texts = [label.text() for label in results.body.findChildren(QLabel)]
    # 1.96 standard errors of 6.0 either side.
    assert "210 µmol/s, 198 to 222" in texts
    assert "not told by these readings" in texts
    results.correlation_fold.click()
    cell = results.correlation.item(0, 1)
    assert cell is not None
    assert cell.text() == "-0.40"
    before, after = page.stage.first.picture, page.stage.second.picture
    assert before is not None
    assert after is not None
    assert before.caption == "Before, 10.0 % rms: measured over predicted, 'Invented card'"
    assert {mark.text for mark in after.marks} == {"1.01"}


def test_a_calibration_that_does_not_fit_says_so_before_it_is_used(qtbot: QtBot) -> None:
    results = CalibrationResults()
    qtbot.addWidget(results)
    plan = small_plan()
    wish = Wish((invented(plan, "card", lining=CARD),))
    good = made_up_calibration(plan, wish)
    results.show_answer(Answer(plan, wish, good))
    assert results.use_button.text() == "Use in the plan"
    assert not results.alert.text()
    bad = dataclasses.replace(good, warnings=("'Left' scatters 3 times as much as stated.",))
    results.show_answer(Answer(plan, wish, bad))
    assert results.use_button.text() == "Use in the plan all the same"
    assert "'Left' scatters" in results.alert.text()
    results.resize(360, 800)
    results.show()
    first = results.values.itemAt(0)
    assert first is not None
    assert results.alert.geometry().bottom() < first.geometry().top(), "read before the values"


def test_a_calibration_is_used_in_one_step(
    qtbot: QtBot, tmp_path: Path, made_up_fit: list[Wish]
) -> None:
    page = calibrating(qtbot, tmp_path)
    page.calibrate.run_button.click()
    before = page.desk.plan
    page.calibrate.results.use_button.click()
    assert undo_text(page) == "Use calibration in the plan"
    assert page.desk.plan.lamps[0].model.ppf == 210
    lining = page.desk.surveys[1].lining
    assert lining is not None
    assert (lining.key, lining.reflectance) == ("card", 0.55)
    undo(page)
    assert page.desk.plan == before
    assert page.calibrate.results.use_button.isEnabled()


def test_a_calibration_of_another_plan_is_not_used(
    qtbot: QtBot, tmp_path: Path, made_up_fit: list[Wish]
) -> None:
    page = calibrating(qtbot, tmp_path)
    page.calibrate.run_button.click()
    changed = page.desk.plan.model_copy(update={"photoperiod_hours": 12.0, "lamps": ()})
    page.workplace.document.apply(changed, "Take the lamp down")
    assert not page.calibrate.results.use_button.isEnabled()
    assert "calibrate again" in page.calibrate.results.note.text()


def test_calibrated_entries_are_kept_in_the_library(
    qtbot: QtBot, tmp_path: Path, made_up_fit: list[Wish]
) -> None:
    page = calibrating(qtbot, tmp_path)
    page.calibrate.run_button.click()
    page.calibrate.results.keep_button.click()
    shelf = page.workplace.shelf
    assert "panel-20260321" in {lamp.key for lamp in shelf.catalogue.lamps}
    assert "card-20260321" in {lining.key for lining in shelf.catalogue.linings}
    assert "Kept in the library" in page.calibrate.results.note.text()


def open_air_light(plan: Plan) -> list[float]:
    """E = I cosα / d² at the holes of ``GRID``, summed over 30 x 20 points of the panel."""
    lamp = plan.lamps[0]
    u = (np.arange(30) + 0.5) / 30 * 0.3 - 0.15 + lamp.x
    v = (np.arange(20) + 0.5) / 20 * 0.2 - 0.1 + lamp.y
    height = lamp.hanging_height
    found = []
    for x, y in holes(GRID, plan.space.footprint):
        square = (u[:, None] - x) ** 2 + (v[None, :] - y) ** 2 + height**2
        cosine = height / np.sqrt(square)
        # A Lambertian panel of 200 µmol/s: I = 200 cosα / π.
        found.append(float((200 / np.pi * cosine * cosine / square).mean()))
    return found


def test_a_lamp_weaker_than_its_label_is_found(qtbot: QtBot, tmp_path: Path) -> None:
    plan = small_plan()
    survey = invented(plan, "air", lining=OPENING, meter=Meter(gain_uncertainty=0.01, noise=0.01))
    values = [0.9 * value for value in open_air_light(plan)]
    readings = tuple(Reading(hole=k, value=value) for k, value in enumerate(values, start=1))
    page, _ = make_page(qtbot, tmp_path, plan, changed(survey, readings=readings))
    page.show_task(tasks.CALIBRATE)
    page.calibrate.run_button.click()
    answer = page.fitting.answer
    assert answer is not None, page.calibrate.alert.text()
    flux = answer.calibration.value(Quantity.FLUX)
    assert abs(flux.value - 180) < 3 * flux.standard_error
    page.calibrate.results.use_button.click()
    assert page.desk.plan.lamps[0].model.ppf == pytest.approx(flux.value)
    assert page.desk.plan.lamps[0].model.ppf_uncertainty < 0.1, "predictions carry the error"


def test_leave_one_out_is_told_in_sentences(
    qtbot: QtBot, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    rows = (LeftOut("air", "Air", 1.02, 0.03, "'Air' reads 2.0 % above what the others predict."),)
    monkeypatch.setattr(fitting_module, "leave_out_job", lambda *_: lambda *_: rows)
    page = calibrating(qtbot, tmp_path)
    page.calibrate.leave_button.click()
    assert "2.0 % above" in page.calibrate.results.left_out.text()


def test_without_a_survey_chosen_nothing_can_be_run(qtbot: QtBot, tmp_path: Path) -> None:
    page = calibrating(qtbot, tmp_path)
    for row in range(page.calibrate.surveys.count()):
        page.calibrate.surveys.item(row).setCheckState(Qt.CheckState.Unchecked)
        assert not page.calibrate.leave_button.isEnabled()
    assert not page.calibrate.run_button.isEnabled()


def test_a_fit_that_cannot_be_made_says_why(qtbot: QtBot, tmp_path: Path) -> None:
    plan = small_plan(lamps=0)
    page, _ = make_page(qtbot, tmp_path, plan, invented(plan))
    page.show_task(tasks.CALIBRATE)
    page.calibrate.flux.setChecked(True)
    page.calibrate.run_button.click()
    assert "hang one first" in page.calibrate.alert.text()


def test_a_fit_runs_beside_the_window_and_can_be_cancelled(
    qtbot: QtBot, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("PLANNER_SYNCHRONOUS", "0")
    begun = threading.Event()

    def endless(progress: Progress, cancelled: Cancelled) -> object:
        progress(0.4)
        begun.set()
        while not cancelled():
            begun.wait(0.001)
        return None

    monkeypatch.setattr(fitting_module, "fit_job", lambda *_: endless)
    page = calibrating(qtbot, tmp_path)
    page.calibrate.run_button.click()
    assert begun.wait(2)
    qtbot.waitUntil(lambda: page.calibrate.progress.value() == 40, timeout=2000)
    assert page.calibrate.cancel_button.isVisible()
    assert not page.calibrate.run_button.isEnabled()
    page.calibrate.cancel_button.click()
    assert not page.fitting.busy
    assert page.calibrate.run_button.isEnabled()
    assert not page.calibrate.progress.isVisible()


# -- the page as a whole ------------------------------------------------------------------


def test_every_task_paints_in_both_themes_and_names_what_can_be_touched(
    qtbot: QtBot, tmp_path: Path, made_up_fit: list[Wish]
) -> None:
    from planner.app import theme

    page = calibrating(qtbot, tmp_path)
    page.calibrate.run_button.click()
    for dark in (False, True):
        page.setPalette(theme.palette(dark=dark))
        for task in range(len(tasks.TASKS)):
            page.show_task(task)
            assert not page.grab().isNull()
    for widget in page.findChildren(QWidget):
        if widget.focusPolicy() & Qt.FocusPolicy.TabFocus and widget.isVisibleTo(page):
            named = widget.accessibleName() or getattr(widget, "text", lambda: "")()
            inner = widget.parent() is not None and type(widget).__name__ in {
                "QLineEdit", "QListView", "QTableView", "QScrollBar", "QHeaderView",
            }  # fmt: skip
            assert named or inner, f"{widget} has no name"


def test_at_1280_the_drawing_keeps_half_and_nothing_sticks_out(
    qtbot: QtBot, tmp_path: Path
) -> None:
    page, _ = make_page(qtbot, tmp_path, None, invented(small_plan()))
    for task in range(len(tasks.TASKS)):
        page.show_task(task)
        assert page.stage.width() >= 640
        assert page.width() == 1280, "no part asks for more"
        assert page.minimumSizeHint().width() <= 1280
        assert page.minimumSizeHint().height() <= 720


def test_the_steps_get_a_line_of_their_own_where_the_font_is_large(
    qtbot: QtBot, tmp_path: Path
) -> None:
    page, _ = make_page(qtbot, tmp_path, None, invented(small_plan()))
    beside = page.header.tasks.y()
    assert beside < page.header.surveys.height()
    font = page.font()
    font.setPointSizeF(font.pointSizeF() * 1.6)
    page.setFont(font)
    page.resize(1281, 720)
    qtbot.waitUntil(lambda: page.header.tasks.y() > page.header.surveys.height(), timeout=1000)
    assert page.header.tasks.width() >= page.header.tasks.sizeHint().width()


def test_a_plan_opened_meanwhile_is_followed(qtbot: QtBot, tmp_path: Path) -> None:
    page, _ = make_page(qtbot, tmp_path, None, invented(small_plan()))
    page.workplace.document.replace(small_plan("Other"), None)
    assert page.sides.currentWidget() is page.invitation
    assert GRID.rows == 3
