"""The ladder of heights in the side view: a scale beside the lamp that is raised.

Coloured and hatched where the mean light lies under and over the band, with the mean and the
lowest share of it at each step, so that one stops where it is right.
"""

from __future__ import annotations

from dataclasses import replace
from itertools import groupby
from typing import TYPE_CHECKING, Final

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPainter, QPolygonF

from planner.app.canvas.elevation_layer import Elevation
from planner.app.canvas.ink import draw_plate_text, figure_font, hatch, pen
from planner.app.plots.colours import INSIDE_RGB, OVER_RGB, UNDER_RGB, Levels
from planner.estimate.result import Estimate
from planner.metrics.figures import LOWEST, NO_VALUE, percent, ppfd
from planner.plan.groups import Chosen
from planner.plan.tiers import hangs, level_of

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


def hung(ladder: Ladder, height: float, estimate: Estimate | None) -> Rung | None:
    """The light where the lamp hangs: that of the estimate, if it is of this plan too.

    A ladder is reckoned quickly and read between its rungs; beside the figures of the page it
    would be off by one.
    """
    now = ladder.at(height)
    if now is not None and estimate is not None and ladder.fits(estimate.plan):
        there = hangs(estimate.plan, estimate.plan.lamps[ladder.lamps[0]])
        if abs(there - height) < 1e-6:
            figures = estimate.on(ladder.canopy).figures
            return replace(now, mean=figures.mean, minimum=figures.minimum)
    return now


def in_words(band: Levels | None, now: Rung | None) -> str:
    """What the scale shows where the lamp hangs, and where in it the band is met."""
    if now is None:
        return ""
    text = f"Ladder of heights: here the mean is {ppfd(now.mean)}"
    if now.min_over_mean is not None:
        text += f", the {LOWEST} {percent(now.min_over_mean)} of it"
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
    painter: QPainter, elevation: Elevation, ladder: Ladder, band: Levels | None
) -> None:
    """The scale along the right wall's inner side with the figures of its rungs.

    It stays as it is while the lamp is raised.
    """
    if len(ladder.rungs) < 2:
        return
    ink, whole = elevation.ink, _scale(elevation, ladder)
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    for low, high, place in stretches(ladder, band):
        bottom, top = _level(elevation, ladder, low), _level(elevation, ladder, high)
        area = QRectF(whole.left(), top, SCALE_PX, bottom - top)
        painter.fillRect(area, ink.faint if place is None else QColor(*_HUES[place]))
        if place:
            hatch(painter, area, area, over=place > 0, strong=True)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.setPen(pen(ink.ink, 1.0))
    painter.drawRect(whole)
    for rung in ladder.rungs:
        y = _level(elevation, ladder, rung.height)
        painter.drawLine(QPointF(whole.left(), y), QPointF(whole.left() + 4, y))
    font = figure_font(painter.font(), 0.95)
    for rung in _told(elevation, ladder, font):
        _write(
            painter, whole, rung, _level(elevation, ladder, rung.height), ink.ink, font, elevation
        )
    painter.restore()


def paint_hung(
    painter: QPainter, elevation: Elevation, ladder: Ladder, now: Rung | None, chosen: Chosen = ()
) -> None:
    """Where on the scale the lamp hangs, and what the light is there; over lamps, not on them."""
    if now is None:
        return
    whole, accent = _scale(elevation, ladder), elevation.ink.accent
    tip = QPointF(whole.left(), _level(elevation, ladder, now.height))
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    plain = figure_font(painter.font(), 0.95)
    font = figure_font(painter.font(), 1.0, bold=True)
    line, at = QFontMetricsF(font).height(), tip.y()
    bodies = [elevation.body(lamp).adjusted(-2, -2, 2, 2) for lamp in elevation.plan.lamps]
    place = _place_of(whole, now, at, font)
    over = [body for body in bodies if body.intersects(place)]
    if over:
        at = min(body.top() for body in over) - line / 2 - 2
        # In the place of a rung's figures, where there are some just above.
        above = [_level(elevation, ladder, rung.height) for rung in _told(elevation, ladder, plain)]
        at = max((y for y in above if at - 1.2 * line < y <= at), default=at)
    hidden = [_place_of(whole, now, at, font), *bodies]
    for rung in _told(elevation, ladder, plain):
        y = _level(elevation, ladder, rung.height)
        if any(_place_of(whole, rung, y, plain).intersects(one) for one in hidden):
            # No half of a figure looks out from under the one that counts.
            _write(painter, whole, rung, y, elevation.ink.paper, plain, elevation)
    if over:
        elevation.paint_lamps(painter, chosen, cords=False)
    _write(painter, whole, now, at, accent, font, elevation)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(accent)
    painter.drawPolygon(
        QPolygonF([tip, tip + QPointF(-_GAP_PX, -4.5), tip + QPointF(-_GAP_PX, 4.5)])
    )
    painter.restore()


def _told(elevation: Elevation, ladder: Ladder, font: QFont) -> list[Rung]:
    """The rungs whose figures are written: where there is room, in a narrow space the ends."""
    narrow = elevation.inside().width() < _NARROW_PX
    offered = (ladder.rungs[0], ladder.rungs[-1]) if narrow else ladder.rungs
    found: list[Rung] = []
    apart = QFontMetricsF(font).height()
    lamps = enumerate(elevation.plan.lamps)
    still = [elevation.body(lamp) for k, lamp in lamps if k not in ladder.lamps]
    for rung in offered:
        y = _level(elevation, ladder, rung.height)
        place = _place_of(_scale(elevation, ladder), rung, y, font)
        if any(body.intersects(place) for body in still):
            continue
        if not found or abs(y - _level(elevation, ladder, found[-1].height)) > apart:
            found.append(rung)
    return found


def _level(elevation: Elevation, ladder: Ladder, height: float) -> float:
    """Pixel of a height above the canopy that a ladder tells of."""
    return elevation.at(0, level_of(elevation.plan, ladder.canopy) + height).y()


def _scale(elevation: Elevation, ladder: Ladder) -> QRectF:
    """Pixel rectangle of the scale from its lowest to its highest rung."""
    top = _level(elevation, ladder, ladder.rungs[-1].height)
    bottom = _level(elevation, ladder, ladder.rungs[0].height)
    return QRectF(elevation.inside().right() - 2 - SCALE_PX, top, SCALE_PX, bottom - top)


def _place_of(whole: QRectF, rung: Rung, y: float, font: QFont) -> QRectF:
    """Where the figures of a rung stand, left of the scale."""
    metrics = QFontMetricsF(font)
    width = metrics.horizontalAdvance(rung_text(rung)) + 6
    return QRectF(
        whole.left() - _GAP_PX - 2 - width, y - metrics.height() / 2, width, metrics.height()
    )


def _write(
    painter: QPainter,
    whole: QRectF,
    rung: Rung,
    y: float,
    colour: QColor,
    font: QFont,
    elevation: Elevation,
) -> None:
    """The figures of a rung left of the scale, on a plate that keeps what lies below away."""
    text = rung_text(rung)
    painter.setFont(font)
    middle = _place_of(whole, rung, y, font).center()
    draw_plate_text(painter, middle, text, colour, elevation.ink.paper)
