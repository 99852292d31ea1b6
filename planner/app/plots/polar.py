"""The polar plot: how a lamp spreads its light, along and across it, 0° straight down."""

from __future__ import annotations

import math

import numpy as np
from PySide6.QtCore import QEvent, QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPaintEvent, QPolygonF
from PySide6.QtWidgets import QSizePolicy, QWidget

from planner.app.canvas.ink import Ink, figure_font, pen
from planner.app.plots.polar_curves import FloatArray, PolarCurves

RINGS = (0.25, 0.5, 0.75, 1.0)
_RAY_STEP = 30


class PolarPlot(QWidget):
    """Two curves over rings at quarters of the peak; the upper half only where light goes up."""

    def __init__(self, parent: QWidget | None = None, *, height: int = 142) -> None:
        super().__init__(parent)
        self._curves: PolarCurves | None = None
        self._height = height
        self.setAccessibleName("Polar plot")
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    @property
    def curves(self) -> PolarCurves | None:
        """What is shown."""
        return self._curves

    def show_curves(self, curves: PolarCurves | None) -> None:
        """Show the curves of a lamp; None empties the plot."""
        self._curves = curves
        self.setAccessibleDescription("" if curves is None else _in_words(curves))
        self.updateGeometry()
        self.update()

    def sizeHint(self) -> QSize:
        upward = self._curves is not None and self._curves.upward
        return QSize(240, round(self._height * 1.6) if upward else self._height)

    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() in {QEvent.Type.PaletteChange, QEvent.Type.FontChange}:
            self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        curves = self._curves
        if curves is None:
            return
        ink = Ink.of(self.palette())
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setFont(figure_font(self.font(), 0.85))
        line = QFontMetricsF(painter.font()).height()
        legend = line + 4
        area = QRectF(self.rect()).adjusted(2, 4, -2, -legend - line - 2)
        if curves.upward:
            radius = min(area.width() / 2 - 26, area.height() / 2 - 8)
            centre = QPointF(area.center().x(), area.top() + radius + 8)
        else:
            radius = min(area.width() / 2 - 26, area.height() - 4)
            centre = QPointF(area.center().x(), area.top() + 4)
        self._paint_grid(painter, centre, radius, ink, upward=curves.upward)
        shade = QColor(ink.accent)
        shade.setAlphaF(0.14)
        along = _outline(curves.angles_deg, curves.along, centre, radius)
        painter.setPen(pen(ink.accent, 2.0))
        painter.setBrush(shade)
        painter.drawPolygon(along)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        if curves.across is not None:
            across = _outline(curves.angles_deg, curves.across, centre, radius)
            dashed = pen(ink.ink, 1.6)
            dashed.setDashPattern([4, 2.5])
            painter.setPen(dashed)
            painter.drawPolygon(across)
        self._paint_legend(painter, QRectF(0, self.height() - legend, self.width(), line), ink)

    def _paint_grid(
        self, painter: QPainter, centre: QPointF, radius: float, ink: Ink, *, upward: bool
    ) -> None:
        painter.setPen(pen(ink.faint, 1.0))
        start, span = (0, 360 * 16) if upward else (180 * 16, 180 * 16)
        for ring in RINGS:
            reach = radius * ring
            box = QRectF(centre.x() - reach, centre.y() - reach, 2 * reach, 2 * reach)
            painter.drawArc(box, start, span)
        last = 180 if upward else 90
        metrics = QFontMetricsF(painter.font())
        for angle in range(-last, last + 1, _RAY_STEP):
            if upward and angle == -180:
                continue
            end = _spot(angle, 1.0, centre, radius)
            painter.setPen(pen(ink.faint, 1.0))
            painter.drawLine(centre, end)
            text = f"{abs(angle)}°"
            width = metrics.horizontalAdvance(text)
            at = _spot(angle, 1.0 + (5 + width / 2) / radius, centre, radius)
            if abs(angle) < 50 or abs(angle) > 130:
                at = _spot(angle, 1.0 + (metrics.height() / 2 + 1) / radius, centre, radius)
            painter.setPen(ink.quiet)
            box = QRectF(at.x() - width, at.y() - metrics.height() / 2, 2 * width, metrics.height())
            if angle == 0 or angle % 60 == 0 or abs(angle) in {30, 90}:
                painter.drawText(box, Qt.AlignmentFlag.AlignCenter, text)

    def _paint_legend(self, painter: QPainter, area: QRectF, ink: Ink) -> None:
        two = self._curves is not None and self._curves.across is not None
        entries = ["along the lamp", "across it"] if two else ["the same all around"]
        metrics = QFontMetricsF(painter.font())
        width = sum(metrics.horizontalAdvance(text) + 34 for text in entries)
        left = area.center().x() - width / 2
        for k, text in enumerate(entries):
            sample = pen(ink.ink if k else ink.accent, 1.8)
            if k:
                sample.setDashPattern([4, 2.5])
            painter.setPen(sample)
            middle = area.center().y()
            painter.drawLine(QPointF(left, middle), QPointF(left + 18, middle))
            painter.setPen(ink.quiet)
            room = QRectF(left + 23, area.top(), metrics.horizontalAdvance(text) + 4, area.height())
            painter.drawText(room, Qt.AlignmentFlag.AlignVCenter, text)
            left += metrics.horizontalAdvance(text) + 34


def _spot(angle_deg: float, share: float, centre: QPointF, radius: float) -> QPointF:
    angle = math.radians(angle_deg)
    reach = share * radius
    return QPointF(centre.x() + reach * math.sin(angle), centre.y() + reach * math.cos(angle))


def _outline(angles: FloatArray, shares: FloatArray, centre: QPointF, radius: float) -> QPolygonF:
    fine = np.linspace(angles[0], angles[-1], 361)
    reach = radius * np.interp(fine, angles, shares)
    turn = np.radians(fine)
    xs, ys = centre.x() + reach * np.sin(turn), centre.y() + reach * np.cos(turn)
    return QPolygonF([QPointF(float(x), float(y)) for x, y in zip(xs, ys, strict=True)])


def _in_words(curves: PolarCurves) -> str:
    planes = "the same all around" if curves.across is None else "one curve along, one across"
    peak = abs(float(curves.angles_deg[int(curves.along.argmax())]))
    up = " Some of the light goes up." if curves.upward else ""
    return (
        f"Intensity by angle from straight down, {planes}; the peak along lies at {peak:.0f}°.{up}"
    )
