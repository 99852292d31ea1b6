"""Maps of difference and ratio: colours that diverge from nothing, and their bar."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Final

import numpy as np
import numpy.typing as npt
from PySide6.QtCore import QPointF, QRectF, QSize
from PySide6.QtGui import QColor, QFontMetricsF, QImage, QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from planner.app.canvas.ink import Ink, figure_font, mixed, pen
from planner.app.plain import tooltip
from planner.app.plots.colour_bar import UprightBar
from planner.app.plots.colours import Rgba
from planner.light.cellmap import round_step, round_values
from planner.units import format_number

Field = npt.NDArray[np.float64]

LESS_RGB: Final = (38, 92, 172)
MORE_RGB: Final = (186, 84, 16)
LESS_RGB_DARK: Final = (104, 160, 240)
MORE_RGB_DARK: Final = (244, 150, 74)
"""Ends of the map: apart for every common kind of colour vision, and equal in lightness."""

_ENTRIES: Final = 257
_MOST_PIXELS: Final = 600
_BAR_PX = 14.0
_GAP_PX = 8.0


@dataclass(frozen=True)
class DifferenceStyle:
    """How far the colours reach either way of nothing, and in which unit.

    ``unit`` is written above the bar, ``hides`` says whether something is grey.
    """

    reach: float
    unit: tuple[str, ...]
    hides: bool = True


def rounded_reach(largest: float) -> float:
    """The round number at or above the largest difference; never 0."""
    if not (largest > 0 and math.isfinite(largest)):
        return 1.0
    step = round_step(largest, 4)
    return math.ceil(largest / step - 1e-9) * step


def diverging(ink: Ink) -> Rgba:
    """The colour table: less, the ground of the theme at nothing, more."""
    dark = ink.paper.lightnessF() < 0.5
    less, more = (LESS_RGB_DARK, MORE_RGB_DARK) if dark else (LESS_RGB, MORE_RGB)
    paper = np.array([ink.paper.red(), ink.paper.green(), ink.paper.blue()], dtype=float)
    share = np.linspace(-1.0, 1.0, _ENTRIES)[:, None]
    ends = np.where(share < 0, np.array(less, float), np.array(more, float))
    mix = paper + (ends - paper) * np.abs(share) ** 0.85
    opaque = np.full((_ENTRIES, 1), 255.0)
    return np.ascontiguousarray(np.hstack([mix, opaque]), dtype=np.uint8)


def unresolved_colour(ink: Ink) -> QColor:
    """The grey of what is too small to be told."""
    return mixed(ink.paper, ink.ink, 0.24)


def dots(size: QSize) -> tuple[int, int]:
    """Rows and columns of a picture for a rectangle of pixels."""
    return min(max(size.height(), 1), _MOST_PIXELS), min(max(size.width(), 1), _MOST_PIXELS)


def picture(
    values: Field, ratio: Field, style: DifferenceStyle, unresolved: float, ink: Ink
) -> QImage:
    """The picture of a raster of differences (rows, columns), y upward, dot by dot.

    Where the logarithm of the ratio is smaller than ``unresolved`` it is grey; where either is
    not a number nothing is painted.
    """
    rows, columns = values.shape
    known = np.isfinite(values[::-1])
    place = np.clip((np.where(known, values[::-1], 0.0) / style.reach + 1) / 2, 0.0, 1.0)
    rgba = diverging(ink)[np.rint(place * (_ENTRIES - 1)).astype(np.intp)]
    if unresolved > 0:
        grey, ratios = unresolved_colour(ink), np.maximum(ratio[::-1], 1e-9)
        rgba[np.abs(np.log(ratios)) < unresolved] = (grey.red(), grey.green(), grey.blue(), 255)
    rgba[~known] = 0
    rgba = np.ascontiguousarray(rgba)
    image = QImage(rgba.data, columns, rows, 4 * columns, QImage.Format.Format_RGBA8888)
    return image.copy()


class DifferenceBar(UprightBar):
    """A vertical bar from less to more, nothing in the middle; grey is explained below it."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__("Colour bar of differences", parent)
        self._style = DifferenceStyle(1.0, ("", ""))

    def show_style(self, style: DifferenceStyle) -> None:
        """Explain the colours of the maps."""
        self._style = style
        reach = format_number(style.reach, 1)
        words = f"Colours run from {reach} less to {reach} more, {' '.join(style.unit)}."
        if style.hides:
            words += " Grey is too small to be told apart."
        self.setAccessibleDescription(words)
        self.setToolTip(tooltip(words))
        self.updateGeometry()
        self.update()

    def sizeHint(self) -> QSize:
        metrics = QFontMetricsF(figure_font(self.font(), 0.92))
        widest = max(metrics.horizontalAdvance("+0000"), 10.0)
        unit = max((metrics.horizontalAdvance(line) for line in self._style.unit), default=0.0)
        return QSize(round(max(_BAR_PX + 2 * _GAP_PX + widest, unit) + 10), 240)

    def paintEvent(self, _event: QPaintEvent) -> None:
        ink = Ink.of(self.palette())
        painter = QPainter(self)
        painter.setFont(figure_font(self.font(), 0.92))
        metrics = QFontMetricsF(painter.font())
        line = metrics.height()
        below = 3.2 * line if self._style.hides else line
        bar = QRectF(4, 3 * line, _BAR_PX, max(self.height() - 3 * line - below, 20.0))
        table = np.ascontiguousarray(diverging(ink)[::-1])
        image = QImage(table.data, 1, len(table), 4, QImage.Format.Format_RGBA8888)
        painter.drawImage(bar, image)
        painter.setPen(pen(ink.faint, 1.0))
        painter.drawRect(bar)
        painter.setPen(ink.quiet)
        for number, text in enumerate(self._style.unit):
            painter.drawText(QPointF(4, metrics.ascent() + 2 + number * line), text)
        reach = self._style.reach
        for value in round_values(-reach, reach, max(2, min(6, int(bar.height() / (2.2 * line))))):
            y = bar.center().y() - value / reach * bar.height() / 2
            painter.setPen(pen(ink.quiet, 1.0))
            painter.drawLine(QPointF(bar.right(), y), QPointF(bar.right() + 4, y))
            painter.setPen(ink.ink)
            sign = "+" if value > 0 else "−" if value < 0 else ""
            text = sign + format_number(abs(value), 1)
            painter.drawText(QPointF(bar.right() + _GAP_PX, y + metrics.capHeight() / 2), text)
        if self._style.hides:
            box = QRectF(4, bar.bottom() + 0.6 * line, _BAR_PX, _BAR_PX)
            painter.fillRect(box, unresolved_colour(ink))
            painter.setPen(ink.quiet)
            painter.drawText(QPointF(box.right() + _GAP_PX - 2, box.bottom() - 3), "too")
            painter.drawText(QPointF(4, box.bottom() + line - 2), "small")
        painter.end()
