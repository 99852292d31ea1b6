"""Names are texts: what a user or a file calls a thing is shown as it stands, never as markup.

Qt takes a text for HTML wherever it looks like it, and HTML may name pictures to be loaded.
"""

from __future__ import annotations

import html
from collections.abc import Callable
from typing import Final

from PySide6.QtCore import Qt
from PySide6.QtGui import QPalette
from PySide6.QtWidgets import QLabel, QListWidgetItem, QTableWidgetItem, QWidget


class PlainLabel(QLabel):
    """A label that shows its text as it stands.

    ``name`` is what it is to a screen reader, where its text does not say so. ``quiet`` is text
    of the second rank, ``selectable`` by the mouse.
    """

    def __init__(
        self,
        text: str = "",
        parent: QWidget | None = None,
        *,
        name: str = "",
        wrap: bool = False,
        bold: bool = False,
        quiet: bool = False,
        selectable: bool = False,
    ) -> None:
        super().__init__(parent)
        self.setTextFormat(Qt.TextFormat.PlainText)
        self.setText(text)
        self.setAccessibleName(name)
        self.setWordWrap(wrap)
        if bold:
            font = self.font()
            font.setBold(True)
            self.setFont(font)
        if quiet:
            self.setForegroundRole(QPalette.ColorRole.PlaceholderText)
        if selectable:
            self.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)


def tooltip(*paragraphs: str) -> str:
    """A tool tip of plain paragraphs, wrapped to a readable width; empty ones are left out."""
    return "".join(f"<p>{html.escape(text, quote=False)}</p>" for text in paragraphs if text)


def read_out(*paragraphs: str) -> str:
    """The same paragraphs as one plain text, for a screen reader."""
    return " ".join(text for text in paragraphs if text)


def explain(what: QWidget | QTableWidgetItem | QListWidgetItem, *paragraphs: str) -> None:
    """Give a widget or an entry a tool tip, and the same as a description in plain text.

    Without one of its own Qt reads out the tool tip, markup and all.
    """
    what.setToolTip(tooltip(*paragraphs))
    if isinstance(what, QWidget):
        what.setAccessibleDescription(read_out(*paragraphs))
    else:
        what.setData(Qt.ItemDataRole.AccessibleDescriptionRole, read_out(*paragraphs))


TIPS: Final[dict[int, Callable[..., str]]] = {
    Qt.ItemDataRole.ToolTipRole: tooltip,
    Qt.ItemDataRole.AccessibleDescriptionRole: read_out,
}
"""What a model answers to each role that explains an entry, made of its paragraphs."""
