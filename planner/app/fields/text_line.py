"""A line of text of the plan: taken over on Enter or on leaving, given back by Esc."""

from __future__ import annotations

from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent, QResizeEvent
from PySide6.QtWidgets import QLineEdit, QWidget

from planner.app.plain import tooltip
from planner.app.undo_keys import asks_undo_or_redo


class TextLine(QLineEdit):
    """Signals: ``committed(text)`` for a new text, ``reverted`` after Esc."""

    committed = Signal(str)
    reverted = Signal()

    def __init__(self, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(name)
        self._value = ""
        self._refused: str | None = None

    @property
    def is_edited(self) -> bool:
        """Whether the text was changed and not yet taken over."""
        return self.text() != self._value

    def set_value(self, value: str) -> None:
        """Show the plan's text; what is being typed stays while the plan's is the same."""
        if value != self._value or not self.is_edited:
            self.reset(value)

    def reset(self, value: str) -> None:
        """Show the plan's text and drop whatever was typed."""
        self._value, self._refused = value, None
        if self.text() != value:
            self.setText(value)
            self.setCursorPosition(0)
        self._tell_what_is_cut()

    def commit(self) -> None:
        """Ask for the text typed, if it differs from the plan's and was not refused before."""
        text = self.text()
        if text not in {self._value, self._refused}:
            self._refused = text
            self.committed.emit(text.strip())

    def _tell_what_is_cut(self) -> None:
        """A text longer than the line can be read whole under the pointer."""
        room = self.width() - 12
        cut = self.fontMetrics().horizontalAdvance(self._value) > room
        self.setToolTip(tooltip(self._value) if cut else "")

    # -- Qt ---------------------------------------------------------------------------

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._tell_what_is_cut()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            self.commit()
            event.accept()
        elif event.key() == Qt.Key.Key_Escape and self.is_edited:
            self.reset(self._value)
            self.reverted.emit()
            event.accept()
        else:
            super().keyPressEvent(event)

    def focusOutEvent(self, event: QFocusEvent) -> None:
        super().focusOutEvent(event)
        if event.reason() != Qt.FocusReason.PopupFocusReason:
            self.commit()

    def event(self, event: QEvent) -> bool:
        # An untouched line leaves undo and redo to the plan.
        if not self.is_edited and asks_undo_or_redo(event):
            event.ignore()
            return False
        return super().event(event)
