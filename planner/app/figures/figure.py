"""One figure: large (value over label) or as a line; a click tells what it means."""

from __future__ import annotations

from PySide6.QtCore import QRect, QSize, Qt
from PySide6.QtGui import QFont, QFontMetrics, QPainter, QPaintEvent, QPalette
from PySide6.QtWidgets import QAbstractButton, QSizePolicy, QWidget

from planner.app import theme
from planner.app.outlines import paint_focus
from planner.app.plain import tooltip
from planner.metrics.figures import NO_VALUE
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
            self.setToolTip(tooltip(figure.meaning))
            self.updateGeometry()
            self.update()

    def _quiet(self) -> QPalette.ColorRole:
        return QPalette.ColorRole.PlaceholderText

    def _paint_focus(self, painter: QPainter) -> None:
        if self.underMouse() or self.isChecked():
            painter.fillRect(self.rect(), self.palette().color(QPalette.ColorRole.AlternateBase))
        paint_focus(self, painter)


class LargeFigure(FigureButton):
    """A large value with its unit, over a small label."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def _value_font(self) -> QFont:
        font = theme.tabular(self.font())
        font.setPointSizeF(self.font().pointSizeF() * 2.0)
        return font

    def _band_font(self) -> QFont:
        font = theme.tabular(self.font())
        font.setPointSizeF(self.font().pointSizeF() * 1.35)
        return font

    def sizeHint(self) -> QSize:
        large, small = QFontMetrics(self._value_font()), self.fontMetrics()
        figure = self.figure
        unit = small.horizontalAdvance(figure.unit) if figure is not None else 0
        # Room for the band is kept from the start, so that nothing moves when it comes.
        band = QFontMetrics(self._band_font()).horizontalAdvance("± 00") if unit else 0
        width = large.horizontalAdvance("0000") + band + unit + 3 * theme.RHYTHM
        return QSize(width, large.height() + small.height() + theme.RHYTHM)

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        self._paint_focus(painter)
        if self.figure is None:
            return
        font = self._value_font()
        large, small = QFontMetrics(font), self.fontMetrics()
        left, top = theme.RHYTHM, theme.HALF
        value = self.figure.value
        painter.setFont(font)
        painter.setPen(self.palette().color(QPalette.ColorRole.WindowText))
        painter.drawText(left, top + large.ascent(), value)
        width = large.horizontalAdvance(value)
        painter.setPen(self.palette().color(self._quiet()))
        if self.figure.value != NO_VALUE:
            after = left + width + 6
            if self.figure.spread:
                band = self._band_font()
                painter.setFont(band)
                painter.drawText(after, top + large.ascent(), self.figure.spread)
                after += QFontMetrics(band).horizontalAdvance(self.figure.spread) + 6
            painter.setFont(self.font())
            painter.drawText(after, top + large.ascent(), self.figure.unit)
        painter.setFont(self.font())
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
        number = QFontMetrics(theme.tabular(self.font())).horizontalAdvance(self.figure.text)
        label = self.fontMetrics().elidedText(
            self.figure.label,
            Qt.TextElideMode.ElideRight,
            area.width() - number - theme.RHYTHM,
        )
        painter.drawText(area, _Flag.AlignLeft | _Flag.AlignVCenter, label)
        painter.setFont(theme.tabular(self.font()))
        painter.setPen(self.palette().color(QPalette.ColorRole.WindowText))
        painter.drawText(area, _Flag.AlignRight | _Flag.AlignVCenter, self.figure.text)
