"""The ladder of heights in the side view: a scale beside the lamp that is raised.

Coloured and hatched where the mean light lies under and over the band, with the mean and the
lowest share of it at each step, so that one stops where it is right.
"""

from __future__ import annotations

from itertools import groupby
from typing import TYPE_CHECKING, Final

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPainter, QPainterPath, QPolygonF

from planner.app.canvas.elevation_layer import Elevation
from planner.app.canvas.ink import draw_plate_text, figure_font, pen
from planner.app.canvas.light_layer import hatch
from planner.app.plots.colours import INSIDE_RGB, OVER_RGB, UNDER_RGB, Levels
from planner.metrics.figures import NO_VALUE, percent, ppfd

if TYPE_CHECKING:
    from planner.estimate.ladder import Ladder, Rung  # the whole core: not at the start

SCALE_PX: Final = 11.0
_GAP_PX: Final = 7.0
_SLICES: Final = 160
_NARROW_PX: Final = 110.0
"""In a narrower space only where the lamp hangs and the ends of the scale are told."""
_HUES: Final = {-1: UNDER_RGB, 0: INSIDE_RGB, 1: OVER_RGB}
_PLACES: Final = {-1: "under the band", 0: "in the band", 1: "over the band"}


def rung_text(rung: Rung) -> str:
    """Mean and lowest share of it: '212 · 61 %'."""
    evenness = rung.min_over_mean
    return f"{ppfd(rung.mean)} · {NO_VALUE if evenness is None else percent(evenness)}"


def in_words(ladder: Ladder, band: Levels | None, height: float) -> str:
    """What the scale shows where the lamp hangs, and where in it the band is met."""
    now = ladder.at(height)
    if now is None:
        return ""
    text = f"Ladder of heights: here the mean is {ppfd(now.mean)}"
    if now.min_over_mean is not None:
        text += f", the lowest spot {percent(now.min_over_mean)} of it"
    if band is not None:
        text += f", {_PLACES[now.against(band) or 0]}"
    return f"{text}."


def stretches(ladder: Ladder, band: Levels | None) -> list[tuple[float, float, int | None]]:
    """From which height to which the mean is under (-1), in (0) or over (1) a band."""
    low, high = ladder.rungs[0].height, ladder.rungs[-1].height
    step = (high - low) / _SLICES
    places = []
    for k in range(_SLICES):
        rung = ladder.at(low + (k + 0.5) * step)
        places.append(None if rung is None else rung.against(band))
    found, start = [], 0
    for place, run in groupby(places):
        end = start + len(list(run))
        found.append((low + start * step, low + end * step, place))
        start = end
    return found


def paint_ladder(
    painter: QPainter, elevation: Elevation, ladder: Ladder, band: Levels | None, height: float
) -> None:
    """The scale along the right wall's inner side, from its lowest to its highest rung."""
    if len(ladder.rungs) < 2:
        return
    box, ink = elevation.inside(), elevation.ink
    right = box.right() - 2
    canopy = elevation.plan.canopy.height

    def level(at: float) -> float:
        return elevation.at(0, canopy + at).y()

    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    for low, high, place in stretches(ladder, band):
        area = QRectF(right - SCALE_PX, level(high), SCALE_PX, level(low) - level(high))
        painter.fillRect(area, ink.faint if place is None else QColor(*_HUES[place]))
        if place:
            path = QPainterPath()
            path.addRect(area)
            white = QColor(255, 255, 255, 170) if place < 0 else QColor(0, 0, 0, 150)
            hatch(painter, path, area, white, rising=place > 0)
    whole = QRectF(
        right - SCALE_PX,
        level(ladder.rungs[-1].height),
        SCALE_PX,
        level(ladder.rungs[0].height) - level(ladder.rungs[-1].height),
    )
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.setPen(pen(ink.ink, 1.0))
    painter.drawRect(whole)
    _paint_rungs(painter, elevation, ladder, height, whole, level(height))
    painter.restore()


def _paint_rungs(
    painter: QPainter,
    elevation: Elevation,
    ladder: Ladder,
    height: float,
    whole: QRectF,
    hung: float,
) -> None:
    """Ticks and figures; the one where the lamp hangs first, the others where there is room."""
    ink, now = elevation.ink, ladder.at(height)
    plain = figure_font(painter.font(), 0.95)
    line = QFontMetricsF(plain).height() + 1
    ground = QColor(ink.paper)
    ground.setAlphaF(0.86)
    taken: list[float] = []

    def write(rung: Rung, y: float, colour: QColor, font: QFont) -> None:
        taken.append(y)
        text = rung_text(rung)
        painter.setFont(font)
        width = QFontMetricsF(font).horizontalAdvance(text) + 6
        middle = QPointF(whole.left() - _GAP_PX - 2 - width / 2, y)
        draw_plate_text(painter, middle, text, colour, ground)

    if now is not None:
        write(now, hung, ink.accent, figure_font(painter.font(), 1.0, bold=True))
        tip = QPointF(whole.left(), hung)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(ink.accent)
        painter.drawPolygon(
            QPolygonF([tip, tip + QPointF(-_GAP_PX, -4.5), tip + QPointF(-_GAP_PX, 4.5)])
        )
    ends = (ladder.rungs[0], ladder.rungs[-1])
    narrow = elevation.inside().width() < _NARROW_PX
    for rung in ladder.rungs:
        y = elevation.at(0, elevation.plan.canopy.height + rung.height).y()
        painter.setPen(pen(ink.ink, 1.0))
        painter.drawLine(QPointF(whole.left(), y), QPointF(whole.left() + 4, y))
        told = rung in ends or not narrow
        if told and all(abs(y - other) >= line for other in taken):
            write(rung, y, ink.ink, plain)
