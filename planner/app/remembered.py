"""What the next start finds again: plans opened lately, and where the window stood."""

from __future__ import annotations

from pathlib import Path
from typing import Final

from PySide6.QtCore import QObject, QRect, QSize, Qt, Signal
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QMainWindow, QMenu

from planner.app.plain import tooltip
from planner.app.settings import Settings
from planner.files.disk import is_file, real_path
from planner.plan.refusal import in_print

MAX_RECENT: Final = 10


class RecentPlans(QObject):
    """The list kept in the settings and a menu over it.

    Signal: ``chosen(Path)`` when an entry is picked.
    """

    chosen = Signal(object)

    def __init__(self, settings: Settings, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._settings = settings

    @property
    def paths(self) -> tuple[Path, ...]:
        """The files, newest first."""
        return self._settings.values.recent

    def add(self, path: Path) -> None:
        """Move a file to the top of the list."""
        path = real_path(path).absolute()
        others = tuple(known for known in self.paths if known != path)
        self._settings.keep(recent=(path, *others)[:MAX_RECENT])

    def clear(self) -> None:
        """Forget all."""
        self._settings.keep(recent=())

    def attach(self, menu: QMenu) -> None:
        """Fill the menu afresh whenever it opens."""
        menu.aboutToShow.connect(lambda: self.fill(menu))
        self.fill(menu)

    def fill(self, menu: QMenu) -> None:
        """Put the present list into a menu; files that are gone stand greyed."""
        menu.clear()
        paths = self.paths
        for number, path in enumerate(paths, start=1):
            found = is_file(path)
            mark = f"&{number}  " if number < 10 else f"{number}  "
            note = "" if found else "  (not found)"
            # A doubled ampersand is a plain one; a single one would be a shortcut mark.
            name = in_print(path.name).replace("&", "&&")
            action = menu.addAction(f"{mark}{name}{note}")
            action.setEnabled(found)
            action.setToolTip(tooltip(in_print(str(path))))
            action.setStatusTip(in_print(str(path)))
            action.triggered.connect(lambda _=False, path=path: self.chosen.emit(path))
        if not paths:
            menu.addAction("No plans opened yet").setEnabled(False)
        menu.addSeparator()
        clear = menu.addAction("Clear this list")
        clear.setEnabled(bool(paths))
        clear.triggered.connect(self.clear)


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
