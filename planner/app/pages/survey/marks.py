"""Holes on a drawing: rings filled with the map's own colour, values beside, the way to go."""

from __future__ import annotations

import itertools
import math

from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPainterPath, QPolygonF

from planner.app.canvas.ink import Ink, draw_plate_text, pen
from planner.app.canvas.viewport import Viewport
from planner.app.pages.survey.picture import Mark, Picture

LEAST_RADIUS = 4.0
MOST_RADIUS = 11.0
CROWD = 600
"""Above so many holes rings are drawn plainly."""
_ROOM_FOR_TEXT = 30.0


def clip_to(painter: QPainter, footprint: QPolygonF) -> None:
    """Keep what follows inside the footprint."""
    path = QPainterPath()
    path.addPolygon(footprint)
    path.closeSubpath()
    painter.setClipPath(path)


def paint_marks(painter: QPainter, picture: Picture, viewport: Viewport, ink: Ink) -> None:
    """The way between holes, places left out, rings and their texts."""
    radius = picture.hole_diameter / 2 * viewport.scale
    radius = min(max(radius, LEAST_RADIUS), MOST_RADIUS)
    if picture.order:
        _paint_way(painter, picture, viewport, ink, radius)
    for place in picture.left_out:
        _paint_left_out(painter, viewport.to_pixel(*place), ink, radius)
    crowd = len(picture.marks) > CROWD
    on_light = not crowd and (picture.estimate is not None or picture.residuals is not None)
    # Smooth rings by the thousand would keep the hand waiting.
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, not crowd)
    for mark in picture.marks:
        _paint_ring(painter, mark, viewport.to_pixel(*mark.place), radius, ink, on_light=on_light)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    here = next((m for m in picture.marks if m.hole == picture.next_hole), None)
    if here is not None:
        _paint_next(painter, viewport.to_pixel(*here.place), radius, ink)
    if _room(picture, viewport) >= _ROOM_FOR_TEXT:
        _paint_texts(painter, picture, viewport, ink, radius)
    elif here is not None:
        text = here.text or str(here.hole)
        _paint_text(painter, viewport.to_pixel(*here.place), text, radius + 8, ink)


def _room(picture: Picture, viewport: Viewport) -> float:
    """Pixels between neighbouring holes, about: from the first hole to the one nearest to it."""
    places = [mark.place for mark in picture.marks]
    if len(places) < 2:
        return math.inf
    return min(math.dist(places[0], place) for place in places[1:]) * viewport.scale


def _paint_way(
    painter: QPainter, picture: Picture, viewport: Viewport, ink: Ink, radius: float
) -> None:
    spots = [viewport.to_pixel(*mark.place) for mark in picture.marks]
    line = pen(ink.quiet, 1.2)
    line.setDashPattern([4, 4])
    painter.setBrush(Qt.BrushStyle.NoBrush)
    for here, there in itertools.pairwise(spots):
        length = math.hypot(there.x() - here.x(), there.y() - here.y())
        if length <= 2 * radius + 6:
            continue
        along = (there - here) / length
        start, end = here + along * (radius + 2), there - along * (radius + 2)
        painter.setPen(line)
        painter.drawLine(start, end)
        side = QPointF(-along.y(), along.x())
        tip = [end, end - along * 6 + side * 3.2, end - along * 6 - side * 3.2]
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(ink.quiet)
        painter.drawPolygon(QPolygonF(tip))


def _paint_left_out(painter: QPainter, at: QPointF, ink: Ink, radius: float) -> None:
    arm = radius * 0.7
    painter.setPen(pen(ink.quiet, 1.4))
    painter.drawLine(at + QPointF(-arm, -arm), at + QPointF(arm, arm))
    painter.drawLine(at + QPointF(-arm, arm), at + QPointF(arm, -arm))


def _paint_ring(
    painter: QPainter, mark: Mark, at: QPointF, radius: float, ink: Ink, *, on_light: bool
) -> None:
    fill = QColor(*mark.colour) if mark.colour is not None else None
    painter.setBrush(fill if fill is not None else Qt.BrushStyle.NoBrush)
    if on_light:
        # A dark and a light line: one of them stands out on any colour, and both are thin
        # enough for the ring to vanish where its filling is the map's.
        painter.setPen(pen(QColor(255, 255, 255, 190), 2.4))
        painter.drawEllipse(at, radius, radius)
        painter.setPen(pen(QColor(20, 22, 22, 220), 1.1))
    else:
        painter.setPen(pen(ink.ink, 1.3))
    painter.drawEllipse(at, radius, radius)
    if mark.suspect:
        ring = pen(ink.alarm, 2.0)
        ring.setDashPattern([2.2, 1.6])
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.setPen(pen(ink.paper, 4.5))
        painter.drawEllipse(at, radius + 4, radius + 4)
        painter.setPen(ring)
        painter.drawEllipse(at, radius + 4, radius + 4)
        tip = at + QPointF(radius + 5, -radius - 5)
        painter.setPen(pen(ink.paper, 1.0))
        painter.setBrush(ink.alarm)
        corners = [QPointF(0, -5.5), QPointF(5.5, 4.0), QPointF(-5.5, 4.0)]
        painter.drawPolygon(QPolygonF([tip + corner for corner in corners]))


def _paint_next(painter: QPainter, at: QPointF, radius: float, ink: Ink) -> None:
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.setPen(pen(ink.paper, 6.0))
    painter.drawEllipse(at, radius + 6, radius + 6)
    painter.setPen(pen(ink.accent, 3.4))
    painter.drawEllipse(at, radius + 6, radius + 6)


def _paint_texts(
    painter: QPainter, picture: Picture, viewport: Viewport, ink: Ink, radius: float
) -> None:
    for mark in picture.marks:
        text = mark.text or (str(mark.hole) if picture.numbers else "")
        if text:
            wide = 8 if mark.hole == picture.next_hole else 4 if mark.suspect else 0
            at = viewport.to_pixel(*mark.place)
            _paint_text(painter, at, text, radius + wide, ink)


def _paint_text(painter: QPainter, at: QPointF, text: str, radius: float, ink: Ink) -> None:
    metrics = QFontMetricsF(painter.font())
    ground = QColor(ink.paper)
    ground.setAlphaF(0.78)
    below = at + QPointF(0, radius + 3 + metrics.height() / 2)
    draw_plate_text(painter, below, text, ink.ink, ground)
