from __future__ import annotations

import faulthandler
import logging
import sys
import threading
from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtWidgets import QLabel
from pytestqt.qtbot import QtBot

from planner.app.run import (
    LOG_BYTES,
    LOG_NAME,
    FaultReporter,
    keep_log,
    report_text,
    trace_crashes,
)


@pytest.fixture
def rescued() -> list[int]:
    return []


@pytest.fixture
def reporter(rescued: list[int], qtbot: QtBot) -> Iterator[FaultReporter]:
    def rescue() -> str:
        rescued.append(1)
        return "Your work was kept in /state/kept.json."

    made = FaultReporter(rescue)
    made.install()
    yield made
    made.remove()
    if made.dialog is not None:
        made.dialog.close()


def _fail() -> None:
    raise ArithmeticError("odd even number")


def _raise_through_hook() -> None:
    try:
        _fail()
    except ArithmeticError:
        sys.excepthook(*sys.exc_info())


def test_a_report_holds_versions_and_the_way_to_the_fault() -> None:
    try:
        _fail()
    except ArithmeticError as error:
        text = report_text(type(error), error, error.__traceback__)
    assert "Qt 6." in text
    assert "in _fail" in text
    assert "ArithmeticError: odd even number" in text


def test_a_repeated_fault_opens_one_dialog_and_says_where_the_work_is(
    reporter: FaultReporter, rescued: list[int]
) -> None:
    _raise_through_hook()
    first = reporter.dialog
    _raise_through_hook()
    assert first is not None
    assert reporter.dialog is first
    assert rescued == [1]
    assert any("/state/kept.json" in label.text() for label in first.findChildren(QLabel))


def test_a_fault_in_another_thread_is_shown_too(reporter: FaultReporter, qtbot: QtBot) -> None:
    thread = threading.Thread(target=_fail)
    thread.start()
    thread.join()
    qtbot.waitUntil(lambda: reporter.dialog is not None, timeout=1000)
    assert reporter.dialog is not None
    assert "odd even number" in reporter.dialog.report.toPlainText()


def test_a_rescue_that_fails_itself_does_not_hide_the_fault(qtbot: QtBot) -> None:
    def broken() -> str:
        raise OSError("disk full")

    reporter = FaultReporter(broken)
    reporter.install()
    try:
        _raise_through_hook()
        assert reporter.dialog is not None
        assert "odd even number" in reporter.dialog.report.toPlainText()
        (said, *_) = (label.text() for label in reporter.dialog.findChildren(QLabel))
        assert "could NOT be kept" in said
        reporter.dialog.close()
    finally:
        reporter.remove()


def test_removing_gives_the_hooks_back(qtbot: QtBot) -> None:
    before = (sys.excepthook, threading.excepthook)
    reporter = FaultReporter()
    reporter.install()
    assert sys.excepthook != before[0]
    reporter.remove()
    assert (sys.excepthook, threading.excepthook) == before


@pytest.fixture
def faulthandler_as_before() -> Iterator[None]:
    yield
    faulthandler.enable()


@pytest.mark.usefixtures("faulthandler_as_before")
def test_a_crash_trace_has_a_place_or_is_done_without(tmp_path: Path) -> None:
    trace = trace_crashes(tmp_path / "state")
    assert trace is not None
    assert faulthandler.is_enabled()
    faulthandler.disable()
    trace.close()
    blocked = tmp_path / "file"
    blocked.write_text("")
    assert trace_crashes(blocked / "state") is None


def test_a_fault_leaves_a_log_that_stays_small(tmp_path: Path, qtbot: QtBot) -> None:
    handler = keep_log(tmp_path / "state")
    assert handler is not None
    reporter = FaultReporter()
    try:
        for number in range(400):
            try:
                raise ArithmeticError(f"odd {number} " + "x" * 4000)
            except ArithmeticError as error:
                reporter.report(error)
    finally:
        logging.getLogger().removeHandler(handler)
        handler.close()
    assert reporter.dialog is not None
    reporter.dialog.close()
    files = list((tmp_path / "state").iterdir())
    assert sum(file.stat().st_size for file in files) <= 2 * LOG_BYTES
    assert "odd 399" in (tmp_path / "state" / LOG_NAME).read_text("utf-8")


def test_a_folder_that_takes_no_log_is_done_without(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("")
    assert keep_log(tmp_path / "file" / "state") is None
