"""Buttons that look like words: a fold, a link in a sentence, a mark before a line.

They paint themselves in roles of the palette, so that they follow a change of theme at
once; a style sheet would keep the colours of the theme it was read in.
"""

from __future__ import annotations

from PySide6.QtCore import QRect, QSize, Qt
from PySide6.QtGui import QFont, QPainter, QPaintEvent, QPalette
from PySide6.QtWidgets import QStyle, QStyleOption, QToolButton, QWidget

from planner.app.outlines import paint_focus

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
