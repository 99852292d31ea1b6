"""Measured against estimated: one dot a hole, the line of agreement and the meter's doubt."""

from __future__ import annotations

import math

import numpy as np
from PySide6.QtCore import QEvent, QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPaintEvent, QPolygonF
from PySide6.QtWidgets import QSizePolicy, QWidget

from planner.app.canvas.ink import Ink, figure_font, pen
from planner.light.cellmap import round_step, round_values
from planner.survey.overlay import Residuals
from planner.units import format_number

UNIT = "µmol m⁻² s⁻¹"
_DOT_PX = 3.2


class ScatterPlot(QWidget):
    """Equal scales on both axes; the wedge is what the meter's uncertainty explains."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._shown: Residuals | None = None
        self._suspects: frozenset[int] = frozenset()
        self._hole: int | None = None
        self.setAccessibleName("Measured against estimated")
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    @property
    def shown(self) -> Residuals | None:
        """What is plotted."""
        return self._shown

    def show_residuals(
        self, shown: Residuals | None, suspects: frozenset[int] = frozenset()
    ) -> None:
        """Plot a survey; None empties the plot. ``suspects`` are holes far off their neighbours."""
        self._shown, self._suspects = shown, suspects
        words = ""
        if shown is not None:
            words = (
                f"{len(shown.holes)} dots; readings from {shown.measured.min():.0f} to "
                f"{shown.measured.max():.0f}, estimated {shown.estimated.min():.0f} to "
                f"{shown.estimated.max():.0f} {UNIT}."
            )
        self.setAccessibleDescription(words)
        self.update()

    def mark(self, hole: int | None) -> None:
        """Ring the dot of one hole."""
        if hole != self._hole:
            self._hole = hole
            self.update()

    def ends(self) -> tuple[float, float]:
        """Both axes run between these, round numbers."""
        shown = self._shown
        if shown is None:
            return 0.0, 1.0
        values = np.concatenate([shown.measured, shown.estimated])
        low, high = float(values.min()), float(values.max())
        if low > 0.6 * high and high > low:
            step = round_step(high - low, 4)
            return max(math.floor(low / step) * step, 0.0), math.ceil(high / step) * step
        step = round_step(max(high, 1e-9), 5)
        return 0.0, math.ceil(high / step - 1e-9) * step or 1.0

    def sizeHint(self) -> QSize:
        return QSize(300, 250)

    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() in {QEvent.Type.PaletteChange, QEvent.Type.FontChange}:
            self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        shown = self._shown
        if shown is None:
            return
        ink = Ink.of(self.palette())
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setFont(figure_font(self.font(), 0.88))
        area = self._area(QFontMetricsF(painter.font()))
        low, high = self.ends()

        def spot(estimated: float, measured: float) -> QPointF:
            span = high - low
            return QPointF(
                area.left() + (estimated - low) / span * area.width(),
                area.bottom() - (measured - low) / span * area.height(),
            )

        self._paint_axes(painter, area, ink)
        painter.save()
        painter.setClipRect(area.adjusted(-1, -1, 1, 1))
        level = np.maximum(np.maximum(shown.measured, shown.estimated), 1e-12)
        band = float(np.median(shown.dead_band / level))
        wedge = [spot(low, low * (1 + band)), spot(high, high * (1 + band))]
        wedge += [spot(high, high * (1 - band)), spot(low, low * (1 - band))]
        shade = QColor(ink.quiet)
        shade.setAlphaF(0.16)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(shade)
        painter.drawPolygon(QPolygonF(wedge))
        painter.setPen(pen(ink.quiet, 1.2))
        painter.drawLine(spot(low, low), spot(high, high))
        painter.restore()
        for hole, estimated, measured in zip(
            shown.holes.tolist(), shown.estimated.tolist(), shown.measured.tolist(), strict=True
        ):
            suspect = hole in self._suspects
            painter.setPen(pen(ink.paper, 0.8))
            painter.setBrush(ink.alarm if suspect else ink.accent)
            at = spot(estimated, measured)
            painter.drawEllipse(at, _DOT_PX, _DOT_PX)
            if hole == self._hole:
                painter.setBrush(Qt.BrushStyle.NoBrush)
                painter.setPen(pen(ink.ink, 1.6))
                painter.drawEllipse(at, _DOT_PX + 3, _DOT_PX + 3)
        painter.end()

    def _area(self, metrics: QFontMetricsF) -> QRectF:
        left = metrics.horizontalAdvance("0000") + 12
        height = self.height() - 2 * metrics.height() - 26
        side = max(min(self.width() - left - 10, height), 40.0)
        return QRectF(left, metrics.height() + 6, side, side)

    def _paint_axes(self, painter: QPainter, area: QRectF, ink: Ink) -> None:
        metrics = QFontMetricsF(painter.font())
        low, high = self.ends()
        line = metrics.height()
        for value in round_values(low, high, 4):
            share = (value - low) / (high - low)
            x, y = area.left() + share * area.width(), area.bottom() - share * area.height()
            painter.setPen(pen(ink.faint, 1.0))
            painter.drawLine(QPointF(x, area.top()), QPointF(x, area.bottom()))
            painter.drawLine(QPointF(area.left(), y), QPointF(area.right(), y))
            painter.setPen(ink.quiet)
            text = format_number(value, 1)
            centre = Qt.AlignmentFlag.AlignCenter
            painter.drawText(QRectF(x - 30, area.bottom() + 2, 60, line), centre, text)
            right = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
            painter.drawText(QRectF(0, y - line / 2, area.left() - 5, line), right, text)
        painter.setPen(ink.ink)
        painter.drawText(QPointF(2, metrics.ascent()), f"measured, {UNIT}")
        foot = QRectF(area.left(), area.bottom() + line + 4, self.width() - area.left(), line + 4)
        painter.drawText(foot, Qt.AlignmentFlag.AlignLeft, f"estimated, {UNIT}")
