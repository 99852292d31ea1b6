"""A fault in a worker, a reader or a slot is told, keeps the work, and the window goes on."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from PySide6.QtCore import QTimer
from pytestqt.qtbot import QtBot

from planner.app import plan_desk
from planner.app.estimator import Estimator
from planner.app.main_window import MainWindow
from planner.app.run import FaultReporter
from planner.app.settings import Settings
from planner.estimate.result import Estimate, EstimateOptions
from planner.files.store import save_plan
from planner.plan import edits
from planner.plan.plan import Plan
from tests.e2e.shell import ReadyAnswers, made_up_light, make_window, small_plan

FAULTS = [
    MemoryError(),
    RecursionError("maximum recursion depth exceeded"),
    KeyError("lost screw"),
    ZeroDivisionError("division by zero"),
    OSError(5, "Input/output error"),
    UnicodeDecodeError("utf-8", b"\xff", 0, 1, "invalid start byte"),
    AssertionError(),
]


@pytest.mark.parametrize("fault", FAULTS, ids=lambda fault: type(fault).__name__)
def test_a_fault_in_the_worker_is_a_sentence_and_the_next_light_is_shown(
    qtbot: QtBot, fault: Exception
) -> None:
    broken = [fault]

    def light(plan: Plan, options: EstimateOptions, **named: Any) -> Estimate:
        if broken:
            raise broken[0]
        return made_up_light(plan, options, **named)

    window = MainWindow(
        small_plan(),
        settings=Settings.in_memory(),
        estimator=Estimator(light),
        questions=ReadyAnswers(),
    )
    qtbot.addWidget(window)
    window.show()
    qtbot.waitUntil(lambda: bool(window.state_line.problem), timeout=5000)
    told = window.state_line.problem
    assert len(told) > 15
    assert told.endswith(".")
    assert "\n" not in told
    broken.clear()
    window.document.apply(edits.set_height(window.document.plan, 1.8), "Lower ceiling")
    qtbot.waitUntil(lambda: window.estimate is not None, timeout=5000)
    assert window.state_line.problem == ""
    assert window.document.plan.space.height == 1.8
    window.close()


@pytest.mark.parametrize("fault", FAULTS, ids=lambda fault: type(fault).__name__)
def test_a_fault_in_the_reader_is_a_sentence_and_the_open_plan_stays(
    qtbot: QtBot, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, fault: Exception
) -> None:
    def broken(_path: Path) -> None:
        raise fault

    path = tmp_path / "cabinet.plan.json"
    save_plan(small_plan("Other"), path)
    window, answers = make_window(qtbot)
    monkeypatch.setattr(plan_desk, "open_plan", broken)
    window.desk.open_aside(path)
    qtbot.waitUntil(lambda: bool(answers.told), timeout=5000)
    assert len(answers.told) == 1
    assert len(answers.told[0]) > 15
    assert answers.told[0].endswith(".")
    assert window.document.plan == small_plan()
    monkeypatch.undo()
    window.desk.open_aside(path)
    qtbot.waitUntil(lambda: window.document.plan.name == "Other", timeout=5000)


@pytest.mark.parametrize("fault", FAULTS, ids=lambda fault: type(fault).__name__)
def test_a_fault_in_a_slot_opens_one_dialog_and_keeps_the_work(
    qtbot: QtBot, own_folders: Path, fault: Exception
) -> None:
    def slot() -> None:
        raise fault

    window, _ = make_window(qtbot)
    window.document.apply(edits.set_height(window.document.plan, 1.8), "Lower ceiling")
    reporter = FaultReporter(window.desk.rescue, window)
    reporter.install()
    try:
        with qtbot.captureExceptions():
            reporter.install()  # over the catcher of the tests
            for _ in range(3):
                QTimer.singleShot(0, slot)
            qtbot.waitUntil(lambda: reporter.dialog is not None, timeout=5000)
            reporter.remove()
        dialog = reporter.dialog
        assert dialog is not None
        assert type(fault).__name__ in dialog.report.toPlainText()
        assert len(list(own_folders.rglob("*.recovery.json"))) == 1
        dialog.close()
    finally:
        reporter.remove()
    window.document.apply(edits.set_height(window.document.plan, 1.7), "Lower ceiling")
    assert window.document.plan.space.height == 1.7
