"""A list to choose from that keeps still while the column is scrolled past it."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtWidgets import QComboBox, QWidget


class StillCombo(QComboBox):
    """A combo box that takes the wheel only while it has the focus."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
        self.setMinimumContentsLength(8)

    def widen_list(self) -> None:
        """Let the opened list be as wide as its longest line, however narrow the box."""
        view = self.view()
        view.setMinimumWidth(min(view.sizeHintForColumn(0) + 32, 480))

    def wheelEvent(self, event: QWheelEvent) -> None:
        if self.hasFocus():
            super().wheelEvent(event)
        else:
            event.ignore()
