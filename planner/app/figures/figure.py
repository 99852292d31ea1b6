"""One figure: large (value over label) or as a line; a click tells what it means."""

from __future__ import annotations

from PySide6.QtCore import QRect, QSize, Qt
from PySide6.QtGui import QFont, QFontMetrics, QPainter, QPaintEvent, QPalette
from PySide6.QtWidgets import QAbstractButton, QSizePolicy, QStyle, QStyleOptionFocusRect, QWidget

from planner.app import theme
from planner.reports.content import HeadlineFigure

_Flag = Qt.AlignmentFlag


class FigureButton(QAbstractButton):
    """What both kinds share: the figure, its name for screen readers, the focus frame."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.figure: HeadlineFigure | None = None
        self.setCheckable(True)
        self.setAccessibleName("No figure yet")
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setCursor(Qt.CursorShape.PointingHandCursor)

    def show_figure(self, figure: HeadlineFigure) -> None:
        """Show a figure."""
        if figure != self.figure:
            self.figure = figure
            self.setAccessibleName(f"{figure.label}: {figure.text}")
            self.setAccessibleDescription(figure.meaning)
            self.setToolTip(f"<p>{figure.meaning}</p>")
            self.updateGeometry()
            self.update()

    def _quiet(self) -> QPalette.ColorRole:
        return QPalette.ColorRole.PlaceholderText

    def _paint_focus(self, painter: QPainter) -> None:
        if self.underMouse() or self.isChecked():
            painter.fillRect(self.rect(), self.palette().color(QPalette.ColorRole.AlternateBase))
        if self.hasFocus():
            option = QStyleOptionFocusRect()
            option.initFrom(self)
            self.style().drawPrimitive(
                QStyle.PrimitiveElement.PE_FrameFocusRect, option, painter, self
            )


class LargeFigure(FigureButton):
    """A large value with its unit, over a small label."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def _value_font(self) -> QFont:
        font = theme.tabular(self.font())
        font.setPointSizeF(self.font().pointSizeF() * 2.0)
        return font

    def sizeHint(self) -> QSize:
        large, small = QFontMetrics(self._value_font()), self.fontMetrics()
        figure = self.figure
        unit = small.horizontalAdvance(figure.unit) if figure is not None else 0
        width = large.horizontalAdvance("0000") + unit + 3 * theme.RHYTHM
        return QSize(width, large.height() + small.height() + theme.RHYTHM)

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        self._paint_focus(painter)
        if self.figure is None:
            return
        font = self._value_font()
        large, small = QFontMetrics(font), self.fontMetrics()
        left, top = theme.RHYTHM, theme.HALF
        painter.setFont(font)
        painter.setPen(self.palette().color(QPalette.ColorRole.WindowText))
        painter.drawText(left, top + large.ascent(), self.figure.value)
        width = large.horizontalAdvance(self.figure.value)
        painter.setFont(self.font())
        painter.setPen(self.palette().color(self._quiet()))
        if self.figure.value != "–":
            painter.drawText(left + width + 6, top + large.ascent(), self.figure.unit)
        painter.drawText(left, top + large.height() + small.ascent(), self.figure.label)


class FigureLine(FigureButton):
    """A label on the left and the value on the right of one line."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def sizeHint(self) -> QSize:
        return QSize(160, self.fontMetrics().height() + 6)

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        self._paint_focus(painter)
        if self.figure is None:
            return
        area = QRect(self.rect().adjusted(theme.HALF, 0, -theme.HALF, 0))
        painter.setPen(self.palette().color(self._quiet()))
        painter.drawText(area, _Flag.AlignLeft | _Flag.AlignVCenter, self.figure.label)
        painter.setFont(theme.tabular(self.font()))
        painter.setPen(self.palette().color(QPalette.ColorRole.WindowText))
        painter.drawText(area, _Flag.AlignRight | _Flag.AlignVCenter, self.figure.text)
