"""What a user types and pastes: nothing lands where it was not meant, nothing silently."""

from __future__ import annotations

from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from planner.app.pages.survey import desk as tasks
from planner.app.pages.survey.page import SurveyPage
from planner.plan.edits import changed
from planner.plan.lining import Lining
from planner.survey.statistics import summarise
from tests.e2e.shell import small_plan
from tests.e2e.test_survey_page import press, shown, type_in, undo, undo_text
from tests.unit.app.pages.survey.surveying import invented, make_page


@pytest.fixture(autouse=True)
def at_once(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("PLANNER_SYNCHRONOUS", "1")


def reading(qtbot: QtBot, folder: Path, *, read: bool = False) -> SurveyPage:
    survey = invented(small_plan())
    page, _ = make_page(qtbot, folder, None, survey if read else changed(survey, readings=()))
    page.show_task(tasks.READINGS)
    return page


def test_a_slip_of_the_decimal_mark_is_asked_at_once(qtbot: QtBot, tmp_path: Path) -> None:
    page = reading(qtbot, tmp_path)
    type_in(qtbot, page, "110")
    type_in(qtbot, page, "115")
    type_in(qtbot, page, "1180")
    assert page.desk.hole == 3, "it did not move on"
    assert "check the decimal mark" in page.entry.alert.text()
    assert shown(page).values_at(3) == ()
    type_in(qtbot, page, "118")
    assert shown(page).values_at(3) == (118,), "typed over what was asked about"
    type_in(qtbot, page, "12")
    assert "check the decimal mark" in page.entry.alert.text()
    press(page.entry.line, Qt.Key.Key_Return)
    assert shown(page).values_at(4) == (12,), "once more keeps it"
    assert page.desk.hole == 5


def test_a_zero_beside_light_is_asked_at_once(qtbot: QtBot, tmp_path: Path) -> None:
    page = reading(qtbot, tmp_path)
    type_in(qtbot, page, "1000")
    type_in(qtbot, page, "0")
    assert page.desk.hole == 2, "it did not move on"
    assert "1000 to 1000: check the sensor and the lamp." in page.entry.alert.text()
    press(page.entry.line, Qt.Key.Key_Return)
    assert shown(page).values_at(2) == (0,)
    # A dark hole beside a dark one is no surprise.
    type_in(qtbot, page, "0")
    assert shown(page).values_at(3) == (0,)


def test_a_number_with_two_readings_is_asked(qtbot: QtBot, tmp_path: Path) -> None:
    page = reading(qtbot, tmp_path)
    type_in(qtbot, page, "1,234")
    assert "can be read as 1.2340 or as 1234" in page.entry.alert.text()
    assert shown(page).readings == ()
    model = page.table.readings
    assert not model.setData(model.index(0, 3), "1,234")
    assert "can be read as" in page.header.alert.text()


def test_after_the_last_hole_nothing_is_read_into_the_first(qtbot: QtBot, tmp_path: Path) -> None:
    page = reading(qtbot, tmp_path)
    for _ in range(12):
        type_in(qtbot, page, "100")
    assert page.entry.title.text() == "All 12 holes read"
    type_in(qtbot, page, "101")
    assert len(shown(page).readings) == 12, "no hole is at hand"
    assert "All holes are read" in page.entry.alert.text()
    page.entry.line.clear()
    QTest.mouseClick(page.entry.first_button, Qt.MouseButton.LeftButton)
    assert page.entry.title.text() == "Hole 1 of 12"
    type_in(qtbot, page, "99")
    assert shown(page).values_at(1) == (100, 99)
    assert page.entry.title.text() == "All 12 holes read"
    undo(page)
    undo(page)
    assert shown(page).next_hole() == 12


def test_a_flagged_reading_is_set_aside_and_taken_back_in(qtbot: QtBot, tmp_path: Path) -> None:
    page = reading(qtbot, tmp_path, read=True)
    page.desk.set_readings(6, (900,))
    before = summarise(shown(page))
    assert before is not None
    assert [one.hole for one in before.suspects] == [6]
    page.desk.go_to(6)
    assert page.entry.aside_button.text() == "Set aside"
    QTest.mouseClick(page.entry.aside_button, Qt.MouseButton.LeftButton)
    assert undo_text(page) == "Set aside hole 6"
    after = summarise(shown(page))
    assert after is not None
    values = [r.value for r in shown(page).readings if r.hole != 6]
    assert after.mean == pytest.approx(sum(values) / 11)
    assert len(shown(page).readings) == 12, "kept in the file"
    assert page.table.readings.index(5, 3).data() == "(900)"
    assert "Set aside: 900" in page.entry.there.text()
    QTest.mouseClick(page.entry.aside_button, Qt.MouseButton.LeftButton)
    assert summarise(shown(page)) == before


@pytest.mark.parametrize("numbered", [False, True])
def test_a_table_for_the_next_lining_becomes_a_new_survey(
    qtbot: QtBot, tmp_path: Path, numbered: bool
) -> None:
    foil = Lining(key="foil", name="Foil", reflectance=0.8, low=0.7, high=0.9)
    survey = invented(small_plan(), lining=foil, output_percent=60.0)
    page, _ = make_page(qtbot, tmp_path, None, survey)
    rows = [f"{k}\t{100 + k}" for k in range(1, 13)]
    places = [f"{x}\t{y}\t{150 + x}" for x, y in ((10, 10), (50, 10), (10, 50), (50, 50))]
    text = "\n".join(["hole\treading", *rows] if numbered else ["x cm\ty cm\tPPFD", *places])
    QGuiApplication.clipboard().setText(text)
    page.paste()
    dialog = page.importing.dialog
    assert dialog is not None
    assert dialog.target.currentText() == "A new survey"
    QTest.mouseClick(dialog.take_button, Qt.MouseButton.LeftButton)
    assert len(page.desk.surveys) == 2
    assert page.desk.surveys[0] == survey, "the old one is as it was"
    new = page.desk.surveys[1]
    if numbered:
        assert new.points == survey.points
        assert [r.value for r in new.readings] == [100 + k for k in range(1, 13)]
        assert (new.output_percent, new.lining) == (60.0, None)
