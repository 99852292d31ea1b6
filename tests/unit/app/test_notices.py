"""A word on the desktop after long work: to whom it is said, when not, and where no tray is."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest
from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QApplication, QWidget
from pytestqt.qtbot import QtBot

from planner.app import notices as module
from planner.app.frame import SettingsDialog
from planner.app.jobs import Lane
from planner.app.notices import Notices
from planner.app.settings import Settings
from tests.e2e.shell import make_window, trigger

pytestmark = pytest.mark.gui


class Tray(QObject):
    """A tray that notes what it is asked to show."""

    messageClicked = Signal()  # noqa: N815 - as Qt calls it
    activated = Signal(object)

    def __init__(self) -> None:
        super().__init__()
        self.shown: list[str] = []
        self.there = False

    def setIcon(self, _icon: object) -> None:
        pass

    def show(self) -> None:
        self.there = True

    def hide(self) -> None:
        self.there = False

    def showMessage(self, title: str, message: str, _icon: object, _ms: int) -> None:
        self.shown.append(f"{title} - {message}")


class Clock:
    """The time, as the test would have it."""

    def __init__(self) -> None:
        self.now = 100.0

    def __call__(self) -> float:
        return self.now


@pytest.fixture
def clock(monkeypatch: pytest.MonkeyPatch) -> Clock:
    made = Clock()
    monkeypatch.setattr("planner.app.jobs.monotonic", made)
    return made


@pytest.fixture
def desk(qtbot: QtBot, monkeypatch: pytest.MonkeyPatch) -> Callable[..., Any]:
    monkeypatch.setattr(module, "PAUSE_MS", 0)

    def make(tray: Tray | None, settings: Settings | None = None) -> Lane:
        window = QWidget()
        window.setWindowTitle("Shelf[*] - Planner")
        qtbot.addWidget(window)
        told: Any = lambda _parent: tray
        window.notices = Notices(window, settings or Settings.in_memory(), told)  # type: ignore[attr-defined]
        lane = Lane("long", synchronous=True, parent=window)
        window.notices.watch(window)  # type: ignore[attr-defined]
        window.lane = lane  # type: ignore[attr-defined]
        return lane

    return make


def work(lane: Lane, clock: Clock, seconds: float, error: Exception | None = None) -> None:
    def job(_progress: object, _cancelled: object) -> object:
        clock.now += seconds
        if error is not None:
            raise error
        return "answer"

    lane.ask("about", job, what="The sweep")
    for _ in range(3):
        QApplication.processEvents()


def test_long_work_is_told_when_nobody_looks(desk: Callable[..., Any], clock: Clock) -> None:
    tray = Tray()
    lane = desk(tray)
    work(lane, clock, 9.0)
    assert tray.shown == []
    work(lane, clock, 75.0)
    assert tray.shown == ["Shelf - Planner - The sweep: done after 1 min 15 s."]
    assert tray.there
    tray.messageClicked.emit()
    assert not tray.there
    work(lane, clock, 12.0, ValueError("No such thing."))
    assert tray.shown[1:] == ["Shelf - Planner - The sweep: ended without an answer."]


def test_work_in_pieces_is_one_wait(
    desk: Callable[..., Any], clock: Clock, monkeypatch: pytest.MonkeyPatch
) -> None:
    tray = Tray()
    lane = desk(tray)

    def job(_progress: object, _cancelled: object) -> object:
        clock.now += 6.0
        return None

    for _ in range(3):
        lane.ask("about", job, what="The odds")
    for _ in range(3):
        QApplication.processEvents()
    assert tray.shown == ["Shelf - Planner - The odds: done after 18 s."]


def test_nothing_is_told_to_whoever_looks(
    desk: Callable[..., Any], clock: Clock, qtbot: QtBot
) -> None:
    tray = Tray()
    lane = desk(tray)
    window = lane.parent()
    assert isinstance(window, QWidget)
    window.show()
    window.activateWindow()
    qtbot.waitUntil(window.isActiveWindow, timeout=2000)
    work(lane, clock, 60.0)
    assert tray.shown == []


def test_what_was_stopped_is_not_told(desk: Callable[..., Any], clock: Clock) -> None:
    tray = Tray()
    lane = desk(tray)

    def job(_progress: object, _cancelled: object) -> object:
        clock.now += 60.0
        lane.stop()
        return "a part"

    lane.ask("about", job, what="The sweep")
    for _ in range(3):
        QApplication.processEvents()
    assert tray.shown == []


def test_no_tray_is_no_fault(desk: Callable[..., Any], clock: Clock) -> None:
    work(desk(None), clock, 60.0)


def test_without_a_desktop_there_is_no_tray(qtbot: QtBot) -> None:
    holder = QObject()
    assert module._tray(holder) is None, "the off-screen platform has none"


def test_it_can_be_switched_off_in_the_settings(
    desk: Callable[..., Any], clock: Clock, qtbot: QtBot
) -> None:
    window, _ = make_window(qtbot)
    trigger(window, "settings")
    (dialog,) = window.findChildren(SettingsDialog)
    assert dialog.notices.isChecked()
    dialog.notices.click()
    assert not window.settings.values.notices
    tray = Tray()
    work(desk(tray, window.settings), clock, 60.0)
    assert tray.shown == []


def test_the_pages_lanes_are_watched(
    qtbot: QtBot, clock: Clock, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(module, "PAUSE_MS", 0)
    window, _ = make_window(qtbot)
    tray: Any = Tray()
    window.notices._make_tray = lambda _parent: tray
    window.pages.go("side")
    window.pages.go("survey")
    lanes = [*window.pages.made("side").findChildren(Lane)]  # type: ignore[union-attr]
    lanes += window.pages.made("survey").findChildren(Lane)  # type: ignore[union-attr]
    names = {lane._name.removeprefix("lane-") for lane in lanes}
    assert {"questions", "comparer", "survey-fit", "survey-diagnosis"} <= names
    for lane in lanes:
        lane.lasted.emit("The calibration", 30.0, True)
    QApplication.processEvents()
    assert len(tray.shown) == len(lanes)
