"""What a user is told to do next, under the sentence, and the button that does it."""

from __future__ import annotations

import dataclasses
from pathlib import Path

import numpy as np
import pytest
from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from planner.app.pages.sketch.page import SketchPage
from planner.estimate.result import Estimate
from planner.plan import edits
from planner.plan.place import Place, PlaceKind
from planner.plan.plan import Plan
from planner.plan.target import DliTarget, PpfdTarget
from tests.e2e.shell import small_plan
from tests.e2e.sketching import make_page, written_estimate

pytestmark = pytest.mark.gui


def page_with(qtbot: QtBot, folder: Path, plan: Plan, ppfd: float = 400) -> SketchPage:
    page = make_page(qtbot, plan, folder)
    page.show_estimate(even(plan, ppfd))
    return page


def even(plan: Plan, ppfd: float) -> Estimate:
    estimate = written_estimate(plan)
    return dataclasses.replace(estimate, ppfd=np.full_like(estimate.ppfd, ppfd))


def wanting(low: float, high: float) -> Plan:
    return edits.changed(small_plan(), target=PpfdTarget(low=low, high=high))


def test_the_output_that_helps_most_is_set_in_one_step(qtbot: QtBot, tmp_path: Path) -> None:
    page = page_with(qtbot, tmp_path, wanting(150, 250))
    line = page.strip.advice
    assert "at 50 % output" in line.words.text()
    qtbot.mouseClick(line.do_button, Qt.MouseButton.LeftButton)
    document = page.workplace.document
    assert document.plan.lamps[0].output_percent == 50
    assert document.undo_stack.undoText() == "Set output of all lamps"
    document.undo_stack.undo()
    assert document.plan.lamps[0].output_percent == 100


def test_advice_on_a_plan_that_moved_on_is_not_taken(qtbot: QtBot, tmp_path: Path) -> None:
    page = page_with(qtbot, tmp_path, wanting(150, 250))
    document = page.workplace.document
    moved = edits.change_lamp(document.plan, 0, x=0.3)
    document.apply(moved, "Move lamp")
    page.strip.advice.do_button.click()
    assert document.plan == moved


def test_where_nothing_simple_helps_the_line_says_what_is_wanted(
    qtbot: QtBot, tmp_path: Path
) -> None:
    plan = edits.changed(small_plan(), target=DliTarget(low=9, high=18), photoperiod_hours=12.5)
    # 9 mol in 12.5 h of 3600 s are 200 µmol each second.
    page = page_with(qtbot, tmp_path, plan, 300)
    line = page.strip.advice
    assert line.do_button.isHidden()
    assert line.words.text() == (
        "Wanted: 9 to 18 mol m⁻² d⁻¹, which is 200 to 400 µmol m⁻² s⁻¹ over 12.5 h."
    )


def test_an_empty_space_offers_its_first_lamp(qtbot: QtBot, tmp_path: Path) -> None:
    page = page_with(qtbot, tmp_path, small_plan(lamps=0), 0)
    line = page.strip.advice
    assert line.lamp_button.isVisible()
    line.lamp_button.setFocus()
    qtbot.keyClick(line.lamp_button, Qt.Key.Key_Space)
    assert len(page.workplace.document.plan.lamps) == 1


def test_a_plan_without_a_target_leads_to_the_choice_of_one(qtbot: QtBot, tmp_path: Path) -> None:
    page = page_with(qtbot, tmp_path, small_plan())
    page.strip.advice.target_button.click()
    assert page.workplace.selection.current == Place(PlaceKind.CANOPY)
    assert page.column.canopy_fields.target_fields.combo.hasFocus()


def test_the_drawing_does_not_jump_with_the_advice(qtbot: QtBot, tmp_path: Path) -> None:
    page = page_with(qtbot, tmp_path, wanting(150, 250))
    tops = set()
    for ppfd in (400.0, 200.0, 20.0):
        page.show_estimate(even(page.workplace.document.plan, ppfd))
        qtbot.wait(1)
        tops.add(page.plan_view.geometry().top())
    assert len(tops) == 1
