"""What a user sees when readings do not fit: what was tried, what won, and its button."""

from __future__ import annotations

import threading
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLabel, QProgressBar
from pytestqt.qtbot import QtBot

from planner.app.jobs import Cancelled, Progress
from planner.app.pages.survey import desk as tasks
from planner.app.pages.survey import diagnosis as module
from planner.app.pages.survey.calibration import CalibrationResults, FoundValue
from planner.app.pages.survey.page import SurveyPage
from planner.plan import edits
from planner.plan.lamp import CosineProfile
from planner.plan.lining import OPENING
from planner.plan.plan import Plan
from planner.plan.survey import Meter, Reading
from planner.plan.survey_edits import beam_in_plan
from planner.survey.layout import row_and_column
from tests.e2e.shell import small_plan
from tests.e2e.test_survey_page import open_air_light, shown, undo, undo_text
from tests.unit.app.pages.survey.surveying import invented, make_page

METER = Meter(gain_uncertainty=0.02, noise=0.01)


@pytest.fixture(autouse=True)
def at_once(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("PLANNER_SYNCHRONOUS", "1")


def mirrored(qtbot: QtBot, folder: Path) -> tuple[SurveyPage, tuple[float, ...]]:
    """A page with readings typed mirrored left to right, and what they should have been."""
    plan: Plan = edits.change_lamp(small_plan(), 0, x=0.3)
    survey = invented(plan, "air", lining=OPENING, meter=METER)
    # E = I cosα / d², summed over points of the panel outside the program.
    right = open_air_light(plan)
    column = [row_and_column(survey, k) for k in range(1, 13)]
    there = {place: k for k, place in enumerate(column)}
    wrong = [right[there[row, 5 - at]] for row, at in column]  # type: ignore[misc]
    readings = tuple(Reading(hole=k, value=v) for k, v in enumerate(wrong, start=1))
    page, _ = make_page(qtbot, folder, plan, survey.model_copy(update={"readings": readings}))
    return page, tuple(right)


def test_a_poor_fit_is_tried_and_put_right_by_one_button(qtbot: QtBot, tmp_path: Path) -> None:
    page, right = mirrored(qtbot, tmp_path)
    page.show_task(tasks.CALIBRATE)
    QTest.mouseClick(page.calibrate.run_button, Qt.MouseButton.LeftButton)
    results = page.calibrate.results
    assert results.use_button.text() == "Use in the plan all the same"
    assert "mirrored left to right" in results.diagnosis.words.text()
    assert results.diagnosis.mend_button.isVisible()
    assert results.diagnosis.mend_button.text() == "Mirror"
    QTest.mouseClick(results.diagnosis.mend_button, Qt.MouseButton.LeftButton)
    assert undo_text(page) == "Mirror: Invented air"
    assert [shown(page).values_at(k)[0] for k in range(1, 13)] == pytest.approx(right)
    assert results.use_button.text() == "Use in the plan", "it was fitted again"
    assert not results.diagnosis.isVisible()
    undo(page)
    assert shown(page).values_at(1)[0] != pytest.approx(right[0])
    assert not results.use_button.isEnabled(), "fitted to other readings than these"


def test_a_poor_overlay_offers_to_try(qtbot: QtBot, tmp_path: Path) -> None:
    page, right = mirrored(qtbot, tmp_path)
    page.show_task(tasks.OVERLAY)
    assert page.overlay.try_button.isVisible()
    QTest.mouseClick(page.overlay.try_button, Qt.MouseButton.LeftButton)
    assert "mirrored left to right" in page.overlay.diagnosis.words.text()
    QTest.mouseClick(page.overlay.diagnosis.others_fold, Qt.MouseButton.LeftButton)
    QTest.mouseClick(page.overlay.diagnosis.mend_button, Qt.MouseButton.LeftButton)
    assert shown(page).values_at(1)[0] == pytest.approx(right[0])
    assert not page.overlay.diagnosis.isVisible()


def test_trying_runs_beside_the_window_and_can_be_cancelled(
    qtbot: QtBot, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("PLANNER_SYNCHRONOUS", "0")
    begun = threading.Event()

    def endless(progress: Progress, cancelled: Cancelled) -> object:
        progress(0.3)
        begun.set()
        while not cancelled():
            begun.wait(0.001)
        return None

    monkeypatch.setattr(module, "diagnose_job", lambda _case: endless)
    page, _ = mirrored(qtbot, tmp_path)
    page.show_task(tasks.OVERLAY)
    qtbot.waitUntil(page.overlay.try_button.isVisible, timeout=5000)
    QTest.mouseClick(page.overlay.try_button, Qt.MouseButton.LeftButton)
    assert begun.wait(2)
    panel = page.overlay.diagnosis
    qtbot.waitUntil(lambda: panel.progress.value() == 30, timeout=2000)
    assert panel.cancel_button.isVisible()
    QTest.mouseClick(panel.cancel_button, Qt.MouseButton.LeftButton)
    assert not page.diagnosing.busy
    assert not panel.isVisible()


def test_a_value_stands_with_what_its_error_is_made_of(qtbot: QtBot, tmp_path: Path) -> None:
    plan = small_plan()
    survey = invented(plan, "air", lining=OPENING, meter=METER)
    readings = tuple(Reading(hole=k, value=v) for k, v in enumerate(open_air_light(plan), start=1))
    page, _ = make_page(qtbot, tmp_path, plan, survey.model_copy(update={"readings": readings}))
    page.show_task(tasks.CALIBRATE)
    QTest.mouseClick(page.calibrate.run_button, Qt.MouseButton.LeftButton)
    results: CalibrationResults = page.calibrate.results
    answer = page.fitting.answer
    assert answer is not None, page.calibrate.alert.text()
    flux = answer.calibration.fitted[0]
    block = results.body.findChildren(FoundValue)[0]
    bars = block.findChildren(QProgressBar)
    assert bars, "something its error is made of"
    assert [bar.value() for bar in bars] == [
        round(100 * part.share) for part in flux.budget[: len(bars)]
    ]
    low, high = flux.interval()
    texts = " ".join(label.text() for label in block.findChildren(QLabel))
    # Two digits of the half-width of 8.4, as JCGM 100:2008, 7.2.6 has it.
    assert f"{low:.1f} to {high:.1f}" in texts
    assert flux.advice in texts


def test_a_lens_that_was_not_planned_is_put_into_the_plan_by_one_button(
    qtbot: QtBot, tmp_path: Path
) -> None:
    lambertian = small_plan()
    survey = invented(lambertian, "air", lining=OPENING, meter=METER)
    light = open_air_light(lambertian)  # of a beam of 120°, outside the program
    readings = tuple(Reading(hole=k, value=v) for k, v in enumerate(light, start=1))
    survey = survey.model_copy(update={"readings": readings})
    narrow = beam_in_plan(lambertian, "panel", CosineProfile(exponent=2.4))
    page, _ = make_page(qtbot, tmp_path, narrow, survey)
    page.show_task(tasks.OVERLAY)
    QTest.mouseClick(page.overlay.try_button, Qt.MouseButton.LeftButton)
    panel = page.overlay.diagnosis
    assert panel.words.text().startswith("The readings agree ")
    assert "the beam of 'Panel' is 120° wide, not 83° as planned" in panel.words.text()
    assert panel.mend_button.isVisible()
    assert panel.mend_button.text() == "Use in the plan"
    asked = page.diagnosing.case
    QTest.mouseClick(panel.mend_button, Qt.MouseButton.LeftButton)
    assert undo_text(page) == "Set beam angle"
    profile = page.desk.plan.lamps[0].model.profile
    assert isinstance(profile, CosineProfile)
    assert profile.exponent == pytest.approx(1.0, abs=0.03)
    assert not panel.isVisible()
    assert asked is not None
    page.diagnosing.ask(asked)  # of the plan as it was: its lamp is another by now
    QTest.mouseClick(panel.mend_button, Qt.MouseButton.LeftButton)
    assert panel.alert.text().endswith("The lamp has changed since; try again.")
