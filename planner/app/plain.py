"""Names are texts: what a user or a file calls a thing is shown as it stands, never as markup.

Qt takes a text for HTML wherever it looks like it, and HTML may name pictures to be loaded.
"""

from __future__ import annotations

import html

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel, QWidget


class PlainLabel(QLabel):
    """A label that shows its text as it stands."""

    def __init__(self, text: str = "", parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setTextFormat(Qt.TextFormat.PlainText)
        self.setText(text)


def tooltip(*paragraphs: str) -> str:
    """A tool tip of plain paragraphs, wrapped to a readable width; empty ones are left out."""
    return "".join(f"<p>{html.escape(text, quote=False)}</p>" for text in paragraphs if text)


def explain(widget: QWidget, *paragraphs: str) -> None:
    """Give a widget a tool tip, and the same as a description in plain text.

    Without one of its own Qt reads out the tool tip, markup and all.
    """
    widget.setToolTip(tooltip(*paragraphs))
    widget.setAccessibleDescription(" ".join(text for text in paragraphs if text))
