"""What a user does with the plan: edits, undo and redo with names, unsaved changes."""

from __future__ import annotations

import math
from pathlib import Path

import pytest
from PySide6.QtCore import QEvent
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from planner.app.actions import EXAMPLES
from planner.app.canvas.items import Item, Part
from planner.app.frame import HistoryDialog
from planner.app.questions import Unsaved
from planner.folders import resource_path
from planner.plan import edits
from planner.plan.checks import Severity, findings
from planner.plan.place import Place, PlaceKind
from tests.e2e.shell import make_window, small_plan, trigger

pytestmark = pytest.mark.gui


def test_undo_and_redo_name_the_step_and_walk_it(qtbot: QtBot) -> None:
    window, _ = make_window(qtbot)
    trigger(window, "add_lamp")
    assert len(window.document.plan.lamps) == 2
    assert window.actions_["undo"].text() == "Undo Add lamp"
    trigger(window, "undo")
    assert len(window.document.plan.lamps) == 1
    assert window.actions_["redo"].text() == "Redo Add lamp"
    trigger(window, "redo")
    assert len(window.document.plan.lamps) == 2


def test_every_edit_is_followed_by_its_light(qtbot: QtBot) -> None:
    window, _ = make_window(qtbot)
    trigger(window, "add_lamp")
    assert window.estimate is not None
    assert window.estimate.figures.mean == pytest.approx(200)
    trigger(window, "undo")
    assert window.estimate.figures.mean == pytest.approx(100)


def test_a_lamp_is_duplicated_and_removed_only_when_one_is_selected(qtbot: QtBot) -> None:
    window, _ = make_window(qtbot)
    assert not window.actions_["duplicate"].isEnabled()
    assert not window.actions_["remove"].isEnabled()
    window.selection.select(Place(PlaceKind.LAMP, 0))
    trigger(window, "duplicate")
    first, second = window.document.plan.lamps
    assert second.model == first.model
    assert (second.x, second.y) != (first.x, first.y)
    trigger(window, "remove")
    assert window.document.plan.lamps == (first,)
    assert not window.actions_["remove"].isEnabled()


def test_a_lamp_of_the_catalogue_is_hung_from_the_menu(qtbot: QtBot) -> None:
    window, _ = make_window(qtbot)
    menu = window.actions_.menus["add_lamp_kind"]
    menu.aboutToShow.emit()
    offered = menu.actions()
    assert len(offered) == len(window.catalogue.lamps)
    offered[0].trigger()
    assert window.document.plan.lamps[-1].model == window.catalogue.lamps[0]


def test_the_title_marks_unsaved_changes_and_undoing_takes_the_mark_away(qtbot: QtBot) -> None:
    window, _ = make_window(qtbot)
    assert window.windowTitle() == "Shelf[*] - Grow space light planner"
    assert not window.isWindowModified()
    trigger(window, "add_lamp")
    assert window.isWindowModified()
    trigger(window, "undo")
    assert not window.isWindowModified()


def test_the_title_follows_the_name_of_the_plan(qtbot: QtBot) -> None:
    window, _ = make_window(qtbot)
    window.document.apply(edits.changed(window.document.plan, name="Attic"), "Rename plan")
    assert window.windowTitle().startswith("Attic[*]")


@pytest.mark.parametrize("answer", [Unsaved.CANCEL, Unsaved.DISCARD, Unsaved.SAVE])
def test_closing_with_unsaved_changes_asks(qtbot: QtBot, tmp_path: Path, answer: Unsaved) -> None:
    window, answers = make_window(qtbot)
    target = tmp_path / "kept.plan.json"
    answers.on_unsaved, answers.to_save = answer, target
    trigger(window, "add_lamp")
    closed = window.close()
    assert answers.asked == ["unsaved Shelf"]
    assert closed is (answer is not Unsaved.CANCEL)
    assert target.exists() is (answer is Unsaved.SAVE)
    answers.on_unsaved = Unsaved.DISCARD


def test_closing_stays_open_when_the_save_is_given_up(qtbot: QtBot) -> None:
    window, answers = make_window(qtbot)
    answers.on_unsaved, answers.to_save = Unsaved.SAVE, None
    trigger(window, "add_lamp")
    assert not window.close()
    assert window.isVisible()
    answers.on_unsaved = Unsaved.DISCARD


def test_closing_without_changes_asks_nothing(qtbot: QtBot) -> None:
    window, answers = make_window(qtbot)
    assert window.close()
    assert answers.asked == []


@pytest.mark.parametrize("key", ["new", "example_hallway-cabinet"])
def test_starting_another_plan_asks_first_and_cancel_keeps_the_plan(qtbot: QtBot, key: str) -> None:
    window, answers = make_window(qtbot)
    trigger(window, "add_lamp")
    before = window.document.plan
    answers.on_unsaved = Unsaved.CANCEL
    trigger(window, key)
    assert window.document.plan == before
    answers.on_unsaved = Unsaved.DISCARD
    trigger(window, key)
    assert window.document.plan != before
    assert window.document.path is None
    assert not window.document.dirty
    assert not window.actions_["undo"].isEnabled()


@pytest.mark.parametrize("key", [key for key, *_ in EXAMPLES])
def test_every_example_says_that_it_is_invented_and_has_nothing_amiss(
    qtbot: QtBot, key: str
) -> None:
    window, _ = make_window(qtbot)
    trigger(window, f"example_{key}")
    plan = window.document.plan
    assert plan.note.startswith("An invented example: no such ")
    assert "invented" in window.statusBar().currentMessage()
    assert plan.lamps
    assert plan.target is not None
    wrong = [f.sentence for f in findings(plan) if f.severity is Severity.WARNING]
    assert wrong == []


def test_every_invented_plan_has_its_place_in_the_menu() -> None:
    files = resource_path("demo").glob("*.plan.json")
    names = {path.name.removesuffix(".plan.json") for path in files}
    assert names == {key for key, *_ in EXAMPLES}


def test_work_stops_with_the_window(qtbot: QtBot) -> None:
    window, _ = make_window(qtbot)
    window.close()
    before = window.estimate
    window.estimator.edit(small_plan("Late", lamps=3))
    assert window.estimate is before


def test_several_are_put_in_order_from_the_menu_each_one_step(qtbot: QtBot) -> None:
    """Three lamps in a row over a metre: their shares end at 1/3 and 2/3 m."""
    window, _ = make_window(qtbot)
    for _ in range(2):
        trigger(window, "add_lamp")
    assert not window.actions_["shares_across"].isEnabled()
    trigger(window, "select_lamps")
    assert len(window.selection.chosen) == 3
    lead = window.document.plan.lamps[window.selection.current.index]
    trigger(window, "align_middle")
    trigger(window, "shares_across")
    lamps = window.document.plan.lamps
    x0, _, x1, _ = window.document.plan.space.bounds
    wide = x1 - x0
    assert sorted(lamp.x - x0 for lamp in lamps) == pytest.approx(
        [wide / 6, wide / 2, 5 * wide / 6]
    )
    assert {lamp.y for lamp in lamps} == {lead.y}
    trigger(window, "duplicate")
    trigger(window, "remove")
    stack = window.document.undo_stack
    steps = [stack.text(k) for k in range(stack.count())][2:]
    assert steps[-3:] == ["Spread 3 lamps", "Duplicate 3 lamps", "Remove 3 lamps"]
    assert window.document.plan.lamps == lamps


def test_the_history_goes_to_a_step_and_back(qtbot: QtBot) -> None:
    window, _ = make_window(qtbot)
    first = window.document.plan
    for _ in range(3):
        trigger(window, "add_lamp")
    trigger(window, "history")
    dialog = window.findChild(HistoryDialog)
    assert dialog is not None
    model = dialog.view.model()
    texts = [model.index(row, 0).data() for row in range(model.rowCount())]
    assert texts == ["As opened", "Add lamp", "Add lamp", "Add lamp"]
    dialog.view.setCurrentIndex(model.index(1, 0))
    assert len(window.document.plan.lamps) == len(first.lamps) + 1
    dialog.view.setCurrentIndex(model.index(0, 0))
    assert window.document.plan == first
    dialog.view.setCurrentIndex(model.index(3, 0))
    assert len(window.document.plan.lamps) == len(first.lamps) + 3
    dialog.close()


def test_one_key_gives_the_side_view_the_room_of_the_plan(qtbot: QtBot) -> None:
    window, _ = make_window(qtbot)
    window.resize(1280, 800)
    window.show()
    plan, side = window.page.plan_view, window.page.elevation
    qtbot.wait(50)
    before = (plan.width(), side.width())
    assert before[0] > before[1]
    trigger(window, "large_side")
    qtbot.waitUntil(lambda: abs(side.width() - before[0]) < 12)
    trigger(window, "large_side")
    qtbot.waitUntil(lambda: plan.width() == before[0])


def test_measuring_is_one_switch_for_both_drawings(qtbot: QtBot) -> None:
    window, _ = make_window(qtbot)
    trigger(window, "measure")
    assert window.page.plan_view.measuring
    assert window.page.elevation.measuring
    window.page.elevation.measure(False)
    assert not window.page.plan_view.measuring
    assert not window.actions_["measure"].isChecked()


def test_the_menu_of_the_drawing_puts_a_lamp_where_it_was_called(qtbot: QtBot) -> None:
    window, _ = make_window(qtbot)
    view = window.page.plan_view
    x0, y0, x1, y1 = window.document.plan.space.bounds
    at = (x0 + 0.25 * (x1 - x0), y0 + 0.25 * (y1 - y0))
    menu = view.menu_for(Item(Part.INSIDE), at)
    texts = {action.text(): action for action in menu.actions()}
    texts["Put a pot here"].trigger()
    pot = window.document.plan.obstacles[-1]
    assert math.dist((pot.x, pot.y), at) < 0.02
    menu.deleteLater()


def test_the_menu_of_several_can_be_called_again(qtbot: QtBot) -> None:
    """What it shares with the window's own menus does not go when it is closed."""
    window, _ = make_window(qtbot)
    trigger(window, "add_lamp")
    trigger(window, "select_lamps")
    view = window.page.plan_view
    for _ in range(2):
        menu = view.menu_for(Item(Part.LAMP, 0), (0.5, 0.5))
        assert window.actions_.menus["arrange"].menuAction() in menu.actions()
        menu.deleteLater()
        QApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    assert window.actions_.menus["arrange"].actions()
