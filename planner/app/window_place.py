"""Where the window stands: remembered, and never out of reach of the screen."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QRect, QSize, Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QMainWindow

from planner.app.settings import Settings

USUAL_SIZE: Final = QSize(1280, 800)


def restore_place(window: QMainWindow, settings: Settings) -> None:
    """Put the window where it was, or in a usual size where nothing is remembered."""
    areas = [screen.availableGeometry() for screen in QGuiApplication.screens()]
    kept = settings.values.window_rect
    if kept is None:
        window.resize(USUAL_SIZE.boundedTo(areas[0].size()) if areas else USUAL_SIZE)
    else:
        window.setGeometry(clamped(QRect(*kept), areas))
    if settings.values.maximised:
        window.setWindowState(window.windowState() | Qt.WindowState.WindowMaximized)


def keep_place(window: QMainWindow, settings: Settings) -> None:
    """Remember where the window stands (the ordinary place of a maximised one)."""
    large = window.isMaximized() or window.isFullScreen()
    rect = window.normalGeometry() if large else window.geometry()
    kept = settings.values.window_rect
    if rect.width() >= 200 and rect.height() >= 150:
        kept = (rect.x(), rect.y(), rect.width(), rect.height())
    settings.keep(window_rect=kept, maximised=window.isMaximized())


def clamped(rect: QRect, areas: list[QRect]) -> QRect:
    """The rectangle moved and, if need be, shrunk into the screen area it shares most with.

    A rectangle that touches no screen (one was unplugged) goes to the first.
    """
    if not areas:
        return rect

    def shared(area: QRect) -> int:
        common = area.intersected(rect)
        return max(common.width(), 0) * max(common.height(), 0)

    area = max(areas, key=shared)
    size = rect.size().boundedTo(area.size())
    x = min(max(rect.x(), area.x()), area.x() + area.width() - size.width())
    y = min(max(rect.y(), area.y()), area.y() + area.height() - size.height())
    return QRect(x, y, size.width(), size.height())
