"""Residuals in colour: the ground at nothing, grey where the meter cannot tell, hues beyond.

Each hole colours what lies nearer to it than to any other hole: between holes nothing was
measured, and a smooth picture would claim it was.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Final

import numpy as np
import numpy.typing as npt
from PySide6.QtCore import QPointF, QRectF, QSize
from PySide6.QtGui import QFontMetricsF, QImage, QPainter, QPaintEvent, QPolygonF
from PySide6.QtWidgets import QWidget

from planner.app.canvas.ink import Ink, Viewport, figure_font, pen
from planner.app.plain import tooltip
from planner.app.plots.colour_bar import UprightBar
from planner.app.plots.colours import Rgba
from planner.app.plots.difference import diverging, unresolved_colour
from planner.light.cellmap import round_step
from planner.units import format_number

FloatArray = npt.NDArray[np.float64]

_LEAST_LIMIT: Final = 1e-9
_USUAL: Final = 0.96
"""Single wild readings take the end colours, and leave the rest its own."""
_RASTER_PX: Final = 2.0
_MOST_SIDE: Final = 480


@dataclass(frozen=True, eq=False)
class ResidualMap:
    """Values at holes about a neutral one, and how far from it nothing can be told.

    ``points`` (n, 2) in metres; ``values`` (n,), NaN where there is none; ``dead_band``
    (n,) half-widths. ``centre`` is what no difference is: 0, or 1 for ratios.
    """

    points: FloatArray
    values: FloatArray
    dead_band: FloatArray
    centre: float = 0.0
    unit: str = ""
    label: str = ""
    fixed_limit: float | None = None

    @property
    def limit(self) -> float:
        """Largest difference the colours tell apart: a round number beyond nearly all values.

        ``fixed_limit`` takes its place where several maps share one scale.
        """
        if self.fixed_limit is not None:
            return self.fixed_limit
        known = np.abs(self.values[np.isfinite(self.values)] - self.centre)
        usual = float(np.quantile(known, _USUAL, method="lower")) if len(known) else 0.0
        most = max(usual, 1.25 * self.typical_band, _LEAST_LIMIT)
        step = round_step(most, 4)
        limit = math.ceil(most / step - 1e-9) * step
        return min(limit, self.centre) if self.centre else limit

    @property
    def typical_band(self) -> float:
        """The middle of the dead bands, for the colour bar."""
        known = self.dead_band[np.isfinite(self.dead_band)]
        return float(np.median(known)) if len(known) else 0.0

    def colours(self, ink: Ink) -> Rgba:
        """Colour of each hole, (n, 4)."""
        return residual_colours(self.values - self.centre, self.limit, self.dead_band, ink)

    def text(self, value: float) -> str:
        """A value as it is written at its hole."""
        if not math.isfinite(value):
            return "–"
        if self.centre:
            return f"{value:.2f}"
        number = format_number(value, 0 if self.limit >= 10 else 1)
        return f"+{number}" if value > 0 and number != "0" else number.replace("-", "−")


def residual_colours(
    difference: FloatArray, limit: float, dead_band: FloatArray | float, ink: Ink
) -> Rgba:
    """Colours of differences (n,): grey inside the dead band, transparent where NaN."""
    table = diverging(ink)
    known = np.isfinite(difference)
    value = np.where(known, difference, 0.0)
    place = (np.clip(value / max(limit, _LEAST_LIMIT), -1.0, 1.0) + 1) / 2 * (len(table) - 1)
    result = table[np.rint(place).astype(np.intp)]
    grey = unresolved_colour(ink)
    result[np.abs(value) <= dead_band] = (grey.red(), grey.green(), grey.blue(), 255)
    result[~known] = 0
    return result


def paint_cells(
    painter: QPainter, viewport: Viewport, footprint: QPolygonF, shown: ResidualMap, ink: Ink
) -> None:
    """Colour the footprint (given in pixels) by the nearest hole."""
    if not len(shown.points):
        return
    box = footprint.boundingRect()
    columns = int(min(max(box.width() / _RASTER_PX, 1), _MOST_SIDE))
    rows = int(min(max(box.height() / _RASTER_PX, 1), _MOST_SIDE))
    u = box.left() + (np.arange(columns) + 0.5) / columns * box.width()
    v = box.top() + (np.arange(rows) + 0.5) / rows * box.height()
    x, y = (u - viewport.left) / viewport.scale, (viewport.bottom - v) / viewport.scale
    pixels = np.ascontiguousarray(shown.colours(ink)[nearest(x, y, shown.points)])
    image = QImage(pixels.data, columns, rows, 4 * columns, QImage.Format.Format_RGBA8888)
    painter.drawImage(box, image)


def nearest(x: FloatArray, y: FloatArray, points: FloatArray) -> npt.NDArray[np.intp]:
    """Index of the nearest point for a raster of places, (len(y), len(x))."""
    result = np.empty((len(y), len(x)), np.intp)
    across = (x[:, None] - points[None, :, 0]) ** 2
    for row, at in enumerate(y):
        result[row] = np.argmin(across + (at - points[:, 1])[None, :] ** 2, axis=1)
    return result


class DivergingBar(UprightBar):
    """The bar beside a residual map: its ends, its neutral value, its grey part."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__("Colour bar of differences", parent)
        self._shown: ResidualMap | None = None

    def show_map(self, shown: ResidualMap | None) -> None:
        """Explain the colours of a map."""
        self._shown = shown
        if shown is not None:
            low, high = shown.centre - shown.limit, shown.centre + shown.limit
            words = (
                f"Colours run from {format_number(low, 2)} (blue) to {format_number(high, 2)} "
                f"(orange) {shown.unit}; grey is what the meter cannot tell."
            )
            self.setAccessibleDescription(words)
            self.setToolTip(tooltip(words))
        self.update()

    def sizeHint(self) -> QSize:
        metrics = QFontMetricsF(figure_font(self.font(), 0.92))
        return QSize(round(14 + 16 + metrics.horizontalAdvance("−0000") + 10), 240)

    def paintEvent(self, _event: QPaintEvent) -> None:
        shown = self._shown
        if shown is None:
            return
        ink = Ink.of(self.palette())
        painter = QPainter(self)
        painter.setFont(figure_font(self.font(), 0.92))
        metrics = QFontMetricsF(painter.font())
        line = metrics.height()
        bar = QRectF(4, 3 * line, 14.0, max(self.height() - 4 * line, 20.0))
        values = np.linspace(shown.limit, -shown.limit, 257)
        table = np.ascontiguousarray(residual_colours(values, shown.limit, shown.typical_band, ink))
        image = QImage(table.data, 1, len(table), 4, QImage.Format.Format_RGBA8888)
        painter.drawImage(bar, image)
        painter.setPen(pen(ink.faint, 1.0))
        painter.drawRect(bar)
        painter.setPen(ink.quiet)
        for number, text in enumerate(shown.unit.split(" ", 1) if shown.unit else ("ratio",)):
            painter.drawText(QPointF(4, metrics.ascent() + 2 + number * line), text)
        painter.setPen(ink.ink)
        for share in (-1.0, -0.5, 0.0, 0.5, 1.0):
            y = bar.center().y() - share * bar.height() / 2
            painter.drawLine(QPointF(bar.right(), y), QPointF(bar.right() + 4, y))
            value = shown.centre + share * shown.limit
            digits = 3 if shown.centre else 2 if shown.limit < 10 else 0
            text = format_number(value, digits).replace("-", "−")
            painter.drawText(QPointF(bar.right() + 8, y + metrics.capHeight() / 2), text)
        painter.end()
