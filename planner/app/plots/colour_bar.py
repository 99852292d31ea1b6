"""The colour bar: which colour means how much, of light with its target band or of differences."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Final

import numpy as np
from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QFontMetricsF,
    QImage,
    QMouseEvent,
    QPainter,
    QPaintEvent,
)
from PySide6.QtWidgets import QSizePolicy, QWidget

from planner.app.canvas.ink import Ink, draw_plate_text, figure_font, hatch, pen
from planner.app.canvas.light_layer import LightStyle
from planner.app.plain import explain
from planner.app.plots.colours import Levels, Rgba
from planner.light.cellmap import round_values
from planner.metrics.figures import MINUS, ppfd
from planner.units import format_number

_BAR_PX: Final = 14.0
_GAP_PX: Final = 8.0
_MOST_TICKS: Final = 8


@dataclass(frozen=True)
class Legend:
    """What a bar explains: which colours lie between two levels, and in which unit.

    ``colours`` are a table from the lower level up on a ground, ``unit`` stands over the bar line
    by line, ``words`` say it all. Where less and more are told from nothing it is ``signed``;
    ``small`` is the colour of what is too small to be told, ``wash`` light with its target band.
    """

    levels: Levels
    unit: tuple[str, ...]
    words: str
    colours: Callable[[Ink], Rgba]
    signed: bool = False
    small: Callable[[Ink], QColor] | None = None
    wash: LightStyle | None = None

    def text(self, value: float) -> str:
        """A value as it stands beside the bar."""
        text = format_number(value, 3).replace("-", MINUS)
        return f"+{text}" if self.signed and value > 0 else text


def of_light(style: LightStyle) -> Legend:
    """The legend of a drawing's light (``PlanView.light_style()``)."""
    low, high = (format_number(level, 1) for level in style.levels)
    words = f"Colours run from {low} to {high} {' '.join(style.unit)}."
    if style.name:
        words = f"{style.name}: {words}"
    washed = style.wash and style.band is not None
    if washed and style.band is not None:
        words += f" The target band is {ppfd(style.band[0])} to {ppfd(style.band[1])}."
    wash = style if washed else None
    unit = (style.name, *style.unit) if style.name else style.unit
    return Legend(style.levels, unit, words, lambda _ink: style.table, wash=wash)


_USUAL: Final = LightStyle((0.0, 1.0), "cividis")


class ColourBar(QWidget):
    """An upright bar from the lower to the upper level, round numbers beside it.

    As narrow as its words, as tall as there is room. Where a level can be wished for by it
    (``wishes``), pressing and dragging marks one, and ``level_wanted(float)`` carries it when the
    hand lets go.
    """

    level_wanted = Signal(float)

    def __init__(self) -> None:
        super().__init__()
        self.setAccessibleName("Colour bar")
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Expanding)
        self.setContextMenuPolicy(Qt.ContextMenuPolicy.ActionsContextMenu)
        self._style: LightStyle | None = None
        self._marked: float | None = None
        self.wishes = False
        self.show_style(_USUAL)

    def show_style(self, style: LightStyle) -> None:
        """Explain the colours of a drawing's light."""
        if style != self._style:
            self.show_legend(of_light(style))
            self._style = style

    def show_legend(self, legend: Legend) -> None:
        """Explain any colours."""
        self.legend, self._style = legend, None
        explain(self, legend.words)
        self.updateGeometry()
        self.update()

    def ticks(self) -> tuple[float, ...]:
        """The round numbers written beside the bar, as many as there is room for."""
        room = int(self._bar().height() / (2.2 * self._metrics().height()))
        return round_values(*self.legend.levels, max(2, min(_MOST_TICKS, room)))

    def minimumSizeHint(self) -> QSize:
        return QSize(self.sizeHint().width(), 120)

    def sizeHint(self) -> QSize:
        metrics = self._metrics()
        widest = metrics.horizontalAdvance("+0000" if self.legend.signed else "0000")
        # The unit of light always counts, so that a drawing keeps its size with another.
        unit = max(metrics.horizontalAdvance(line) for line in (*_USUAL.unit, *self.legend.unit))
        return QSize(round(max(_BAR_PX + 2 * _GAP_PX + widest, unit) + 10), 240)

    def _metrics(self) -> QFontMetricsF:
        return QFontMetricsF(figure_font(self.font(), 0.92))

    def _bar(self) -> QRectF:
        line = self._metrics().height()
        below = line if self.legend.small is None else 3.2 * line
        above = (max(len(self.legend.unit), 2) + 1) * line
        return QRectF(4, above, _BAR_PX, max(self.height() - above - below, 20.0))

    def place(self, value: float) -> float:
        """Vertical pixel of a value."""
        low, high = self.legend.levels
        bar = self._bar()
        return bar.bottom() - (value - low) / max(high - low, 1e-12) * bar.height()

    def _level_at(self, y: float) -> float:
        low, high = self.legend.levels
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
        bar, legend = self._bar(), self.legend
        table = np.ascontiguousarray(legend.colours(ink)[::-1])
        image = QImage(table.data, 1, len(table), 4, QImage.Format.Format_RGBA8888)
        painter.drawImage(bar, image)
        if legend.wash is not None:
            self._paint_band(painter, bar, legend.wash, ink)
        if legend.signed:
            painter.setPen(pen(ink.faint, 1.0))
            painter.drawRect(bar)
        metrics = QFontMetricsF(painter.font())
        painter.setPen(ink.quiet)
        for line, text in enumerate(legend.unit):
            painter.drawText(QPointF(4, metrics.ascent() + 2 + line * metrics.height()), text)
        for value in self.ticks():
            y = self.place(value)
            painter.setPen(pen(ink.quiet, 1.0))
            painter.drawLine(QPointF(bar.right(), y), QPointF(bar.right() + 4, y))
            painter.setPen(ink.ink)
            at = QPointF(bar.right() + _GAP_PX, y + metrics.capHeight() / 2)
            painter.drawText(at, legend.text(value))
        if legend.small is not None:
            box = QRectF(4, bar.bottom() + 0.6 * metrics.height(), _BAR_PX, _BAR_PX)
            painter.fillRect(box, legend.small(ink))
            painter.setPen(ink.quiet)
            painter.drawText(QPointF(box.right() + _GAP_PX - 2, box.bottom() - 3), "too")
            painter.drawText(QPointF(4, box.bottom() + metrics.height() - 2), "small")
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
        under = QRectF(bar.left(), low, bar.width(), bar.bottom() - low)
        hatch(painter, under, bar, over=False)
        above = QRectF(bar.left(), bar.top(), bar.width(), high - bar.top())
        hatch(painter, above, bar, over=True)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        for y in map(self.place, style.band):
            if bar.top() < y < bar.bottom():
                painter.setPen(pen(ink.ink, 2.0))
                painter.drawLine(QPointF(bar.left() - 3, y), QPointF(bar.right() + 3, y))
