"""What a user expects after a crash: the work is offered, and nothing else is touched."""

from __future__ import annotations

import errno
import os
import sys
from pathlib import Path

import pytest
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QAbstractButton, QApplication, QLabel
from pytestqt.qtbot import QtBot

from planner.app.main_window import MainWindow
from planner.app.plan_desk import KEEP_AFTER_MS
from planner.app.questions import Recovered
from planner.app.run import ErrorDialog, FaultReporter, open_window, run_window
from planner.app.settings import Settings
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
    assert len(leftovers()[0]) == (1 if answer is Recovered.LATER else 0)


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
    reporter = FaultReporter(window.desk.rescue, window)
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


def test_a_newer_file_is_said_and_kept_when_old_work_is_restored(
    qtbot: QtBot, tmp_path: Path
) -> None:
    file = tmp_path / "attic.plan.json"
    save_plan(small_plan("Attic"), file)
    lost, _ = make_window(qtbot)
    lost.desk.open(file)
    trigger(lost, "add_lamp")
    lost.desk.keep_copy()
    crash(lost)
    save_plan(small_plan("Newer"), file)

    window, answers = make_window(qtbot)
    answers.on_recovered = Recovered.RESTORE
    assert window.desk.offer_leftovers()
    assert answers.asked == ["recovered attic.plan.json over a newer file"]
    trigger(window, "save")
    assert answers.asked[-1] == "changed attic.plan.json"
    assert load_plan(file) == small_plan("Newer")
    assert window.isWindowModified()


def test_a_copy_that_cannot_be_read_is_mentioned(qtbot: QtBot, own_folders: Path) -> None:
    folder = own_folders / "state" / "recovery"
    folder.mkdir()
    (folder / "7-abc.recovery.json").write_bytes(b"{")
    window, answers = make_window(qtbot)
    assert not window.desk.offer_leftovers()
    assert "A copy of unsaved work cannot be opened" in answers.told[0]


def test_a_full_disk_is_not_called_no_unsaved_work(
    qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    window, _ = make_window(qtbot)
    assert window.desk.rescue() == "There was no unsaved work to rescue."
    trigger(window, "add_lamp")

    def full(path: Path, data: bytes) -> None:
        raise OSError(errno.ENOSPC, "No space left on device", str(path))

    monkeypatch.setattr("planner.files.recovery.write_atomically", full)
    said = window.desk.rescue()
    assert "could NOT be kept" in said
    assert "the disk is full" in said
    monkeypatch.undo()
    assert "Your work was kept in" in window.desk.rescue()


def test_a_last_plan_the_system_refuses_to_look_at_does_not_stop_the_start(
    qtbot: QtBot, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    shut = tmp_path / "shut" / "a.plan.json"
    Settings.of_user().keep(last_plan=shut, recent=(shut,), started_before=True)
    real = Path.stat

    def refused(self: Path, **how: bool) -> os.stat_result:
        if self == shut:
            raise PermissionError(errno.EACCES, "Permission denied", str(self))
        return real(self, **how)

    monkeypatch.setattr(Path, "stat", refused)
    window = open_window(Settings.of_user())
    qtbot.addWidget(window)
    assert window.document.path is None


def test_a_fault_while_the_window_is_built_is_shown_and_written_down(
    qtbot: QtBot, own_folders: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def broken(*_: object, **__: object) -> None:
        raise KeyError("no such wall")

    monkeypatch.setattr("planner.app.run.open_window", broken)
    monkeypatch.setattr("planner.app.run.trace_crashes", lambda _folder: None)
    shown: list[str] = []

    def waits(*_: object) -> int:
        for one in QApplication.topLevelWidgets():
            if isinstance(one, ErrorDialog) and one.isVisible():
                shown.extend(label.text() for label in one.findChildren(QLabel))
                one.close()
        return 0

    monkeypatch.setattr(QApplication, "exec", waits)
    assert run_window() == 1
    assert "no work is lost" in shown[0]
    assert "no such wall" in (own_folders / "state" / "planner.log").read_text("utf-8")
