"""Small controls of forms: quiet buttons, a combo the wheel passes over, a line of text."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QRect, QSize, Qt, Signal
from PySide6.QtGui import (
    QFocusEvent,
    QFont,
    QKeyEvent,
    QPainter,
    QPaintEvent,
    QPalette,
    QResizeEvent,
    QWheelEvent,
)
from PySide6.QtWidgets import QComboBox, QLineEdit, QStyle, QStyleOption, QToolButton, QWidget

from planner.app.plain import tooltip
from planner.app.quantity_box import asks_undo_or_redo
from planner.app.theme import paint_focus

_ARROW = 16
_PAD = 4
_Flag = Qt.AlignmentFlag


class QuietButton(QToolButton):
    """Text without a box, in one role of the palette; framed while it has the keyboard.

    ``arrow`` puts an arrow before it that points down once it is checked; ``underlined``
    draws a line under it while the pointer is on it.
    """

    def __init__(
        self,
        text: str,
        role: QPalette.ColorRole,
        *,
        arrow: bool = False,
        underlined: bool = False,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self._role, self._arrow, self._underlined = role, arrow, underlined
        self.setText(text)
        self.setAccessibleName(text)
        self.setAutoRaise(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)

    def sizeHint(self) -> QSize:
        metrics = self.fontMetrics()
        width = metrics.horizontalAdvance(self.text()) + 2 * _PAD + (_ARROW if self._arrow else 0)
        return QSize(width, metrics.height() + 6)

    def minimumSizeHint(self) -> QSize:
        return self.sizeHint()

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        palette = self.palette()
        area = self.rect().adjusted(_PAD, 0, -_PAD, 0)
        if self._arrow:
            self._paint_arrow(painter, QRect(area.left(), 0, _ARROW - 4, self.height()))
            area.setLeft(area.left() + _ARROW)
        font = QFont(self.font())
        font.setUnderline(self._underlined and self.underMouse())
        painter.setFont(font)
        painter.setPen(palette.color(self._role))
        side = _Flag.AlignLeft if self._arrow else _Flag.AlignHCenter
        text = self.fontMetrics().elidedText(
            self.text(), Qt.TextElideMode.ElideRight, area.width() + 1
        )
        painter.drawText(area, side | _Flag.AlignVCenter, text)
        paint_focus(self, painter)

    def _paint_arrow(self, painter: QPainter, area: QRect) -> None:
        option = QStyleOption()
        option.initFrom(self)
        option.rect = area
        option.palette.setColor(
            QPalette.ColorRole.ButtonText, self.palette().color(QPalette.ColorRole.PlaceholderText)
        )
        element = QStyle.PrimitiveElement.PE_IndicatorArrowRight
        if self.isChecked():
            element = QStyle.PrimitiveElement.PE_IndicatorArrowDown
        self.style().drawPrimitive(element, option, painter, self)


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
