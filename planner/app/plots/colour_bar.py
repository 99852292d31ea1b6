"""The colour bar: which colour means how much light, with the target band marked."""

from __future__ import annotations

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QFontMetricsF,
    QImage,
    QMouseEvent,
    QPainter,
    QPainterPath,
    QPaintEvent,
)
from PySide6.QtWidgets import QSizePolicy, QWidget

from planner.app.canvas.ink import Ink, draw_plate_text, figure_font, pen
from planner.app.canvas.light_layer import LightStyle, hatch
from planner.light.cellmap import round_values
from planner.metrics.figures import ppfd
from planner.units import format_number

_BAR_PX = 14.0
_USUAL = LightStyle((0.0, 1.0), "cividis")
_GAP_PX = 8.0


class UprightBar(QWidget):
    """What stands upright beside a drawing: as narrow as its words, as tall as there is room."""

    def __init__(self, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(name)
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Expanding)

    def minimumSizeHint(self) -> QSize:
        return QSize(self.sizeHint().width(), 120)


class ColourBar(UprightBar):
    """A vertical bar from the lower to the upper level, round numbers beside it.

    Where a level can be wished for by it (``wishes``), pressing and dragging marks one, and
    ``level_wanted(float)`` carries it when the hand lets go.
    """

    level_wanted = Signal(float)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__("Colour bar", parent)
        self._style = _USUAL
        self._shown: LightStyle | None = None
        self._marked: float | None = None
        self.wishes = False
        self.show_style(self._style)

    def show_style(self, style: LightStyle) -> None:
        """Explain the colours of a drawing's light (``PlanView.light_style()``)."""
        if style == self._shown:
            return
        self._style = self._shown = style
        low, high = (format_number(level, 1) for level in style.levels)
        words = f"Colours run from {low} to {high} {' '.join(style.unit)}."
        if style.wash and style.band is not None:
            words += f" The target band is {ppfd(style.band[0])} to {ppfd(style.band[1])}."
        self.setAccessibleDescription(words)
        self.setToolTip("" if not style.wash else words)
        self.updateGeometry()
        self.update()

    def ticks(self) -> tuple[float, ...]:
        """The round numbers written beside the bar, as many as there is room for."""
        line = QFontMetricsF(figure_font(self.font(), 0.92)).height()
        wanted = max(2, min(8, int(self._bar().height() / (2.2 * line))))
        return round_values(*self._style.levels, wanted)

    def sizeHint(self) -> QSize:
        metrics = QFontMetricsF(figure_font(self.font(), 0.92))
        widest = max(metrics.horizontalAdvance("0000"), 10.0)
        unit = max(metrics.horizontalAdvance(line) for line in _USUAL.unit)
        return QSize(round(max(_BAR_PX + 2 * _GAP_PX + widest, unit) + 10), 240)

    def _bar(self) -> QRectF:
        line = QFontMetricsF(figure_font(self.font(), 0.92)).height()
        return QRectF(4, 3 * line, _BAR_PX, max(self.height() - 4 * line, 20.0))

    def place(self, value: float) -> float:
        """Vertical pixel of a value."""
        low, high = self._style.levels
        bar = self._bar()
        return bar.bottom() - (value - low) / max(high - low, 1e-12) * bar.height()

    def _level_at(self, y: float) -> float:
        low, high = self._style.levels
        bar = self._bar()
        share = min(max((bar.bottom() - y) / bar.height(), 0.0), 1.0)
        return low + share * (high - low)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        if self.wishes and event.button() is Qt.MouseButton.LeftButton:
            self._mark(self._level_at(event.position().y()))

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        if self._marked is not None:
            self._mark(self._level_at(event.position().y()))

    def mouseReleaseEvent(self, _event: QMouseEvent) -> None:
        wanted = self._marked
        if wanted is not None:
            self._mark(None)
            if round(wanted) > 0:
                self.level_wanted.emit(float(round(wanted)))

    def _mark(self, level: float | None) -> None:
        self._marked = level
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        ink = Ink.of(self.palette())
        painter = QPainter(self)
        painter.setFont(figure_font(self.font(), 0.92))
        bar, style = self._bar(), self._style
        table = style.table[::-1].copy()
        image = QImage(table.data, 1, len(table), 4, QImage.Format.Format_RGBA8888)
        painter.drawImage(bar, image)
        if style.wash and style.band is not None:
            self._paint_band(painter, bar, style, ink)
        metrics = QFontMetricsF(painter.font())
        painter.setPen(ink.quiet)
        for line, text in enumerate(style.unit):
            painter.drawText(QPointF(4, metrics.ascent() + 2 + line * metrics.height()), text)
        for value in self.ticks():
            y = self.place(value)
            painter.setPen(pen(ink.quiet, 1.0))
            painter.drawLine(QPointF(bar.right(), y), QPointF(bar.right() + 4, y))
            painter.setPen(ink.ink)
            painter.drawText(
                QPointF(bar.right() + _GAP_PX, y + metrics.capHeight() / 2),
                format_number(value, 1),
            )
        if self._marked is not None:
            y = self.place(self._marked)
            painter.setPen(pen(ink.accent, 2.0))
            painter.drawLine(QPointF(bar.left() - 3, y), QPointF(bar.right() + 3, y))
            text = format_number(self._marked, 0)
            middle = bar.right() + _GAP_PX + metrics.horizontalAdvance(text) / 2
            draw_plate_text(painter, QPointF(middle, y), text, ink.accent, ink.paper)
        painter.end()

    def _paint_band(self, painter: QPainter, bar: QRectF, style: LightStyle, ink: Ink) -> None:
        if style.band is None or style.sure is None:
            return
        low, high = (min(max(self.place(value), bar.top()), bar.bottom()) for value in style.sure)
        under, over = QPainterPath(), QPainterPath()
        under.addRect(QRectF(bar.left(), low, bar.width(), bar.bottom() - low))
        over.addRect(QRectF(bar.left(), bar.top(), bar.width(), high - bar.top()))
        hatch(painter, under, bar, QColor(255, 255, 255, 105), rising=False)
        hatch(painter, over, bar, QColor(0, 0, 0, 105), rising=True)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        for y in map(self.place, style.band):
            if bar.top() < y < bar.bottom():
                painter.setPen(pen(ink.ink, 2.0))
                painter.drawLine(QPointF(bar.left() - 3, y), QPointF(bar.right() + 3, y))
