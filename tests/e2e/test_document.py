"""What a user does with the plan: edits, undo and redo with names, unsaved changes."""

from __future__ import annotations

from pathlib import Path

import pytest
from pytestqt.qtbot import QtBot

from planner.app.questions import Unsaved
from planner.plan import edits
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
    assert not window.actions_["duplicate_lamp"].isEnabled()
    assert not window.actions_["remove_lamp"].isEnabled()
    window.selection.select(Place(PlaceKind.LAMP, 0))
    trigger(window, "duplicate_lamp")
    first, second = window.document.plan.lamps
    assert second.model == first.model
    assert (second.x, second.y) != (first.x, first.y)
    trigger(window, "remove_lamp")
    assert window.document.plan.lamps == (first,)
    assert not window.actions_["remove_lamp"].isEnabled()


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


@pytest.mark.parametrize("key", ["new", "open_demo"])
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


def test_the_demo_says_that_it_is_invented(qtbot: QtBot) -> None:
    window, _ = make_window(qtbot)
    trigger(window, "open_demo")
    assert "invented" in window.document.plan.note.lower()
    assert window.document.plan.lamps


def test_work_stops_with_the_window(qtbot: QtBot) -> None:
    window, _ = make_window(qtbot)
    window.close()
    before = window.estimate
    window.estimator.edit(small_plan("Late", lamps=3))
    assert window.estimate is before
