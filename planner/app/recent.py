"""Recently opened plans: a short list, newest first, and the menu that shows it."""

from __future__ import annotations

from pathlib import Path
from typing import Final

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QMenu

from planner.app.settings import Settings
from planner.files.atomic import real_path
from planner.files.errors import is_file
from planner.files.place import in_print

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
            action.setToolTip(in_print(str(path)))
            action.setStatusTip(in_print(str(path)))
            action.triggered.connect(lambda _=False, path=path: self.chosen.emit(path))
        if not paths:
            menu.addAction("No plans opened yet").setEnabled(False)
        menu.addSeparator()
        clear = menu.addAction("Clear this list")
        clear.setEnabled(bool(paths))
        clear.triggered.connect(self.clear)
