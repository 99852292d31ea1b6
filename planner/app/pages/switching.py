"""Switching pages: all in one place of the window, each made when it is first asked for."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from PySide6.QtCore import Signal
from PySide6.QtGui import QFontMetrics, QPalette
from PySide6.QtWidgets import QHBoxLayout, QStackedWidget, QWidget

from planner.app import theme
from planner.app.fields.controls import QuietButton

Maker = Callable[[], QWidget]


class Pages(QStackedWidget):
    """Pages by key; a page that was made stays as it was left.

    ``switched(str)`` carries the key of the page now in sight.
    """

    switched = Signal(str)

    def __init__(
        self, key: str, page: QWidget, makers: Mapping[str, Maker], parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self._makers = dict(makers)
        self._made: dict[str, QWidget] = {key: page}
        self.current = key
        self.addWidget(page)

    def go(self, key: str) -> None:
        """Show a page; raises ``KeyError`` where there is none of that key."""
        page = self._made.get(key)
        if page is None:
            page = self._made[key] = self._makers[key]()
            self.addWidget(page)
        if key != self.current:
            self.current = key
            self.setCurrentWidget(page)
            self.switched.emit(key)

    def made(self, key: str) -> QWidget | None:
        """A page, if it was made already."""
        return self._made.get(key)


class PageBar(QWidget):
    """The names of the pages side by side; the one in sight is underlined by the accent."""

    def __init__(
        self, pages: Pages, names: Mapping[str, str], parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self.setAccessibleName("Pages")
        layout = QHBoxLayout(self)
        layout.setContentsMargins(theme.RHYTHM, 0, theme.RHYTHM, 0)
        layout.setSpacing(theme.HALF)
        self.buttons: dict[str, QuietButton] = {}
        for key, name in names.items():
            made = QuietButton(name, QPalette.ColorRole.WindowText)
            made.setCheckable(True)
            made.clicked.connect(lambda _on, key=key: pages.go(key))
            made.clicked.connect(lambda _on: self._mark(pages.current))
            # Room for the bold name, or it would be cut once its page is in sight.
            bold = made.font()
            bold.setBold(True)
            made.setMinimumWidth(QFontMetrics(bold).horizontalAdvance(name) + theme.WIDE)
            layout.addWidget(made)
            self.buttons[key] = made
        pages.switched.connect(self._mark)
        self._mark(pages.current)

    def _mark(self, current: str) -> None:
        for key, made in self.buttons.items():
            made.setChecked(key == current)
            font = made.font()
            font.setBold(key == current)
            made.setFont(font)
            made.updateGeometry()
