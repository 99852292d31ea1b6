"""A word on the desktop when long work ends while the window is not looked at."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from typing import Final
from weakref import WeakKeyDictionary

from PySide6.QtCore import QObject, Qt, QTimer, Slot
from PySide6.QtWidgets import QApplication, QSystemTrayIcon, QWidget

from planner.app.jobs import Lane
from planner.app.settings import Settings

LONG_S: Final = 10.0
"""Whoever waits longer may have turned to something else."""
SHOWN_MS: Final = 10_000
PAUSE_MS: Final = 300
"""Work that goes on within so long has not ended."""


def _tray(parent: QObject) -> QSystemTrayIcon | None:
    """A sign for the desktop's tray; None where there is no tray, or it shows no messages."""
    if not (QSystemTrayIcon.isSystemTrayAvailable() and QSystemTrayIcon.supportsMessages()):
        return None
    return QSystemTrayIcon(parent)


class Notices(QObject):
    """Tells of long work that ended, unless the window is in hand or the user wants none.

    ``make_tray`` gives the sign in the tray, which is there only as long as the message. Where
    there is none only the task bar is asked to point at the window, if it can.
    """

    def __init__(
        self,
        window: QWidget,
        settings: Settings,
        make_tray: Callable[[QObject], QSystemTrayIcon | None] = _tray,
    ) -> None:
        super().__init__(window)
        self._window, self._settings, self._make_tray = window, settings, make_tray
        self._tray: QSystemTrayIcon | None = None
        self._spent: WeakKeyDictionary[Lane, float] = WeakKeyDictionary()
        self._gone = QTimer(self, singleShot=True, interval=SHOWN_MS)
        self._gone.timeout.connect(self._put_away)

    def watch(self, part: QObject) -> None:
        """Tell of the long work of a part of the window from now on."""
        for lane in part.findChildren(Lane):
            lane.lasted.connect(partial(self._on_lasted, lane))

    def _on_lasted(self, lane: Lane, what: str, seconds: float, well: bool) -> None:
        # Odds come side by side, one job after the other: they are one wait to the user.
        self._spent[lane] = self._spent.get(lane, 0.0) + seconds
        QTimer.singleShot(PAUSE_MS, lane, partial(self._tell, lane, what, well))

    def _tell(self, lane: Lane, what: str, well: bool) -> None:
        if lane.busy:
            return
        seconds = self._spent.pop(lane, 0.0)
        if seconds < LONG_S or not self._settings.values.notices:
            return
        # A dialog of the program is looked at just as well as its window.
        if QApplication.activeWindow() is not None:
            return
        how = f"done after {_time(seconds)}." if well else "ended without an answer."
        self._show(f"{what}: {how}")

    def _show(self, message: str) -> None:
        QApplication.alert(self._window)
        if self._tray is None:
            self._tray = self._make_tray(self)
            if self._tray is None:
                return
            self._tray.setIcon(self._window.windowIcon())
            for clicked in (self._tray.messageClicked, self._tray.activated):
                clicked.connect(self._come_forward)
        self._tray.show()
        title = self._window.windowTitle().replace("[*]", "")
        self._tray.showMessage(title, message, self._window.windowIcon(), SHOWN_MS)
        self._gone.start()

    @Slot()
    def _come_forward(self) -> None:
        self._window.setWindowState(self._window.windowState() & ~Qt.WindowState.WindowMinimized)
        self._window.raise_()
        self._window.activateWindow()
        self._put_away()

    @Slot()
    def _put_away(self) -> None:
        if self._tray is not None:
            self._tray.hide()


def _time(seconds: float) -> str:
    minutes, rest = divmod(round(seconds), 60)
    return f"{rest} s" if not minutes else f"{minutes} min {rest} s"
