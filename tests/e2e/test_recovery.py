"""What a user expects after a crash: the work is offered, and nothing else is touched."""

from __future__ import annotations

import sys
from pathlib import Path

import pytest
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QAbstractButton
from pytestqt.qtbot import QtBot

from planner.app.errors import FaultReporter
from planner.app.main_window import MainWindow
from planner.app.plan_desk import KEEP_AFTER_MS
from planner.app.questions import Recovered
from planner.files.recovery import leftovers
from planner.files.store import load_plan, save_plan
from tests.e2e.shell import make_window, small_plan, trigger

pytestmark = pytest.mark.gui


def copies(own_folders: Path) -> list[Path]:
    return sorted((own_folders / "state").rglob("*.recovery.json"))


def crash(window: MainWindow) -> None:
    """Let the window go as a crash does: the system drops the lock, the copy stays."""
    slot = window.desk._slot
    assert slot._lock is not None
    slot._lock.release()
    slot._lock = None
    slot.discard = lambda: None  # type: ignore[method-assign]
    window.close()


def test_unsaved_work_is_copied_aside_soon_after_a_change(qtbot: QtBot, own_folders: Path) -> None:
    window, _ = make_window(qtbot)
    assert KEEP_AFTER_MS <= 2000
    window.desk._keep.setInterval(20)
    trigger(window, "add_lamp")
    assert copies(own_folders) == []
    qtbot.waitUntil(lambda: len(copies(own_folders)) == 1, timeout=1000)


def test_the_copy_goes_when_the_work_is_saved_undone_or_the_window_closed(
    qtbot: QtBot, own_folders: Path, tmp_path: Path
) -> None:
    window, answers = make_window(qtbot)
    for ending in ("save", "undo", "close"):
        trigger(window, "add_lamp")
        assert window.desk.keep_copy() is not None
        assert len(copies(own_folders)) == 1
        answers.to_save = tmp_path / "a.plan.json"
        if ending == "close":
            window.close()
        else:
            trigger(window, ending)
        assert copies(own_folders) == [], ending


def test_the_users_file_is_never_touched_by_the_copy(qtbot: QtBot, tmp_path: Path) -> None:
    file = tmp_path / "a.plan.json"
    save_plan(small_plan(), file)
    before = file.read_bytes()
    window, _ = make_window(qtbot)
    window.desk.open(file)
    trigger(window, "add_lamp")
    window.desk.keep_copy()
    assert file.read_bytes() == before


def test_after_a_crash_the_work_is_restored_as_unsaved(
    qtbot: QtBot, own_folders: Path, tmp_path: Path
) -> None:
    file = tmp_path / "attic.plan.json"
    save_plan(small_plan("Attic"), file)
    lost, _ = make_window(qtbot)
    lost.desk.open(file)
    trigger(lost, "add_lamp")
    work = lost.document.plan
    lost.desk.keep_copy()
    crash(lost)

    window, answers = make_window(qtbot)
    answers.on_recovered = Recovered.RESTORE
    assert window.desk.offer_leftovers()
    assert answers.asked == ["recovered attic.plan.json"]
    assert window.document.plan == work
    assert window.document.path == file
    assert window.isWindowModified()
    assert load_plan(file) == small_plan("Attic"), "the file must wait for Save"
    assert len(copies(own_folders)) == 1, "restored work is kept aside until it is saved"
    trigger(window, "save")
    assert load_plan(file) == work
    assert copies(own_folders) == []


@pytest.mark.parametrize("answer", [Recovered.DISCARD, Recovered.LATER])
def test_left_work_is_thrown_away_only_on_demand(
    qtbot: QtBot, own_folders: Path, answer: Recovered
) -> None:
    lost, _ = make_window(qtbot)
    trigger(lost, "add_lamp")
    lost.desk.keep_copy()
    crash(lost)
    window, answers = make_window(qtbot)
    before = window.document.plan
    answers.on_recovered = answer
    assert not window.desk.offer_leftovers()
    assert window.document.plan == before
    assert len(leftovers()) == (1 if answer is Recovered.LATER else 0)


def test_the_work_of_a_window_that_still_runs_is_not_offered(qtbot: QtBot) -> None:
    running, _ = make_window(qtbot)
    trigger(running, "add_lamp")
    running.desk.keep_copy()
    window, answers = make_window(qtbot)
    assert not window.desk.offer_leftovers()
    assert answers.asked == []


def test_without_leftovers_nothing_is_asked(qtbot: QtBot) -> None:
    window, answers = make_window(qtbot)
    assert not window.desk.offer_leftovers()
    assert answers.asked == []


def test_an_unforeseen_fault_rescues_the_work_and_offers_a_report(
    qtbot: QtBot, own_folders: Path
) -> None:
    window, _ = make_window(qtbot)
    trigger(window, "add_lamp")
    reporter = FaultReporter(window.desk.keep_copy, window)
    reporter.install()
    try:
        for _ in range(3):
            try:
                raise KeyError("lost screw")
            except KeyError:
                sys.excepthook(*sys.exc_info())
        dialog = reporter.dialog
        assert dialog is not None
        assert dialog.isVisible()
        assert len(copies(own_folders)) == 1
        copy = next(
            b for b in dialog.findChildren(QAbstractButton) if b.accessibleName() == "Copy report"
        )
        copy.click()
        report = QGuiApplication.clipboard().text()
        assert "KeyError: 'lost screw'" in report
        assert "Python 3." in report
        dialog.close()
        assert reporter.dialog is None
    finally:
        reporter.remove()
