"""Several plans open at once, each in a window of one program."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import QCoreApplication, QEvent
from PySide6.QtWidgets import QApplication, QLabel
from pytestqt.qtbot import QtBot

from planner.app.estimator import Estimator
from planner.app.main_window import MainWindow
from planner.app.questions import Unsaved
from planner.app.run import FaultReporter, Windows
from planner.app.settings import Settings
from planner.files.recovery import leftovers
from planner.files.store import load_plan, save_plan
from planner.plan import edits
from tests.e2e.shell import ReadyAnswers, made_up_light, small_plan, trigger


@pytest.fixture
def reporter(qtbot: QtBot) -> FaultReporter:
    return FaultReporter()


@pytest.fixture
def windows(qtbot: QtBot, reporter: FaultReporter) -> Iterator[Windows]:
    made = Windows(reporter)
    yield made
    for window in list(made.open):
        window.desk.questions = ReadyAnswers()
        window.close()
    QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)


def first(qtbot: QtBot, windows: Windows) -> tuple[MainWindow, ReadyAnswers]:
    # Not through make_window: a window that was closed is gone, and qtbot would close it again.
    answers = ReadyAnswers()
    estimator = Estimator(made_up_light, synchronous=True)
    window = MainWindow(
        small_plan(), settings=Settings.of_user(), estimator=estimator, questions=answers
    )
    windows.show(window)
    return window, answers


def second(windows: Windows) -> tuple[MainWindow, ReadyAnswers]:
    before = len(windows.open)
    trigger(windows.open[0], "new_window")
    assert len(windows.open) == before + 1
    window, answers = windows.open[-1], ReadyAnswers()
    window.desk.questions = answers
    assert window.isVisible()
    return window, answers


def test_a_new_window_has_a_plan_of_its_own_and_stands_aside(
    qtbot: QtBot, windows: Windows
) -> None:
    one, _ = first(qtbot, windows)
    other, _ = second(windows)
    assert other.document.plan.name == "New grow space"
    assert other.pos() != one.pos()
    other.document.apply(edits.set_height(other.document.plan, 1.3), "Lower ceiling")
    assert one.document.plan == small_plan()
    assert not one.document.dirty


def test_the_same_plan_opens_in_one_window_only(
    qtbot: QtBot, windows: Windows, tmp_path: Path
) -> None:
    file = tmp_path / "cabinet.plan.json"
    save_plan(small_plan("Cabinet"), file)
    one, _ = first(qtbot, windows)
    other, answers = second(windows)
    assert one.desk.open(file)
    assert not other.desk.open(file)
    assert "already open in another window" in answers.told[0]
    one.close()
    assert other.desk.open(file)


def test_closing_one_window_leaves_the_other_and_its_work(
    qtbot: QtBot, windows: Windows, tmp_path: Path
) -> None:
    one, _ = first(qtbot, windows)
    other, answers = second(windows)
    other.document.apply(edits.set_height(other.document.plan, 1.3), "Lower ceiling")
    trigger(one, "close")
    assert windows.open == [other]
    assert windows.front is other
    answers.to_save = tmp_path / "kept.plan.json"
    trigger(other, "save")
    assert load_plan(tmp_path / "kept.plan.json").space.height == 1.3


def test_quitting_asks_every_window_and_stops_where_one_stays(
    qtbot: QtBot, windows: Windows
) -> None:
    one, answers = first(qtbot, windows)
    other, others = second(windows)
    for window in (one, other):
        window.document.apply(edits.set_height(window.document.plan, 1.3), "Lower ceiling")
    answers.on_unsaved = others.on_unsaved = Unsaved.CANCEL
    trigger(one, "quit")
    assert len(windows.open) == 2
    answers.on_unsaved = others.on_unsaved = Unsaved.DISCARD
    trigger(one, "quit")
    assert windows.open == []
    assert [w for w in QApplication.topLevelWidgets() if w.isVisible()] == []


def test_a_fault_is_shown_over_a_window_that_is_left_or_over_none(
    qtbot: QtBot, windows: Windows, reporter: FaultReporter
) -> None:
    one, _ = first(qtbot, windows)
    other, _ = second(windows)
    for window, said in ((other, "no unsaved work"), (one, "No plan was open any more")):
        window.close()
        QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
        reporter.report(KeyError("late screw"))
        dialog = reporter.dialog
        assert dialog is not None
        assert any(said in label.text() for label in dialog.findChildren(QLabel))
        dialog.close()


def test_a_fault_and_the_end_of_the_session_keep_the_work_of_all_windows(
    qtbot: QtBot, windows: Windows, own_folders: Path
) -> None:
    for window in (first(qtbot, windows)[0], second(windows)[0]):
        window.document.apply(edits.set_height(window.document.plan, 1.3), "Lower ceiling")
    windows.keep_copies()
    assert len(list(own_folders.rglob("*.recovery.json"))) == 2
    # Both windows still run: nothing of theirs is offered to a third.
    assert leftovers() == ([], [])
