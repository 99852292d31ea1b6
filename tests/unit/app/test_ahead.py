"""What is brought ahead comes in small pieces, and a page opened first finds all of it there."""

from __future__ import annotations

import subprocess
import sys
from functools import partial
from pathlib import Path

import pytest
from PySide6.QtCore import QCoreApplication, QEvent
from pytestqt.qtbot import QtBot

from planner.app import ahead
from planner.app.ahead import PIECES, Ahead
from planner.app.estimator import Estimator
from planner.app.fields import choosers
from planner.app.main_window import MainWindow
from planner.app.run import FaultReporter, Windows
from planner.app.settings import Settings
from tests.e2e.shell import ReadyAnswers, made_up_light, small_plan

ROOT = Path(__file__).parents[3]
LARGEST_PIECE = 10
PAGES = (
    "planner.app.pages.side.page",
    "planner.app.pages.survey.page",
    "planner.app.pages.side.sweep_board",
    "planner.app.pages.side.sweep_form",
    "planner.app.pages.side.find_form",
    "planner.app.pages.side.schedule_board",
    "planner.app.pages.side.worth_form",
)
# The window with its first light, then one piece after the other, then the pages.
PROGRAM = f"""
import sys
from importlib import import_module
import planner.app.run, planner.estimate.evaluate, planner.estimate.outlook
for group in ({PIECES!r}, {PAGES!r}):
    for name in group:
        before = set(sys.modules)
        import_module(name)
        new = [one for one in set(sys.modules) - before if one.startswith("planner")]
        print(name, len(new))
"""


def said_by(program: str) -> list[str]:
    done = subprocess.run(
        [sys.executable, "-c", program],
        cwd=ROOT,
        capture_output=True,
        text=True,
        timeout=60,
        check=False,
    )
    assert done.returncode == 0, done.stderr
    return done.stdout.splitlines()


def test_pieces_are_small_and_leave_the_pages_nothing_to_bring() -> None:
    counts = [(name, int(count)) for name, count in map(str.split, said_by(PROGRAM))]
    pieces, pages = counts[: len(PIECES)], counts[len(PIECES) :]
    assert [one for one in pieces if not 1 <= one[1] <= LARGEST_PIECE] == []
    assert [one for one in pages if one[1]] == []


def test_a_piece_a_turn_and_none_while_somebody_waits(
    qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    brought: list[str] = []
    monkeypatch.setattr(ahead, "import_module", brought.append)
    monkeypatch.setattr(ahead, "PAUSE_MS", 1)
    answers = [False, False, True, False]
    asked: list[int] = []

    def resting() -> bool:
        asked.append(len(brought))
        return answers[len(asked) - 1] if len(asked) <= len(answers) else True

    made = Ahead(resting, None, (partial(brought.append, "read"),))
    qtbot.waitUntil(lambda: made.done, timeout=2000)
    # As many were there each time it was asked: none comes unasked, and one at a time.
    assert asked[:5] == [0, 0, 0, 1, 1]
    assert asked[4:] == list(range(1, len(PIECES) + 1))
    assert brought == ["read", *PIECES]


def test_spectra_are_read_before_the_panel_of_a_lamp_asks(
    qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(ahead, "PIECES", ())
    monkeypatch.setattr(ahead, "PAUSE_MS", 1)
    read: list[int] = []
    monkeypatch.setattr(choosers, "built_in_spectra", lambda: tuple(map(read.append, (1,)))[1:])
    windows = Windows(FaultReporter())
    window = MainWindow(
        small_plan(),
        settings=Settings.of_user(),
        estimator=Estimator(made_up_light, synchronous=True),
        questions=ReadyAnswers(),
    )
    windows.show(window)
    qtbot.waitUntil(lambda: read == [1], timeout=5000)
    window.close()
    QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
