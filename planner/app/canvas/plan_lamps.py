"""Lamps on the plan view: their bodies as seen from above, and the handle that turns one."""

from __future__ import annotations

import math

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter

from planner.app.canvas.ink import Ink, Viewport, pen
from planner.app.canvas.items import reach_of
from planner.app.canvas.plan_layers import paint_names, paint_turning
from planner.plan.groups import Chosen
from planner.plan.lamp import Lamp, PointBody
from planner.plan.place import Place, PlaceKind
from planner.plan.plan import Plan

_PLATE = QColor(20, 20, 20, 22)
_EDGE = QColor(255, 255, 255, 235)
_EDGE_BACK = QColor(0, 0, 0, 170)
_STRIP = QColor(255, 255, 255, 120)


def paint_lamps(
    painter: QPainter, plan: Plan, viewport: Viewport, ink: Ink, chosen: Chosen, looked: Place
) -> None:
    """All lamps, those chosen in the accent, and on them the names of obstacles below.

    Over all of it the turning handle of the one that leads.
    """
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    for k, lamp in enumerate(plan.lamps):
        on = Place(PlaceKind.LAMP, k) in chosen
        _paint_lamp(painter, lamp, viewport, ink, active=on)
    paint_names(painter, plan, viewport, ink, looked)
    if chosen and chosen[0].kind is PlaceKind.LAMP and chosen[0].fits(plan):
        paint_turning(painter, plan.lamps[chosen[0].index], viewport, ink, _EDGE_BACK)


def _paint_lamp(
    painter: QPainter, lamp: Lamp, viewport: Viewport, ink: Ink, *, active: bool
) -> None:
    painter.save()
    painter.translate(viewport.to_pixel(lamp.x, lamp.y))
    painter.rotate(-lamp.rotation_deg)
    scale = viewport.scale
    edge = ink.accent if active else _EDGE
    if isinstance(lamp.model.body, PointBody):
        _paint_point(painter, edge)
    else:
        half_length, half_width = (part * scale for part in reach_of(lamp, scale))
        length, width = (part * scale for part in lamp.model.size)
        body, lean = QRectF(-length / 2, -width / 2, length, width), 1.0
        if lamp.tilt_deg:
            lean = math.cos(math.radians(lamp.tilt_deg))
            ends = [-y * scale for y, _ in lamp.section]
            width = max(ends) - min(ends)
            body = QRectF(-length / 2, min(ends), length, width)
        if width < 6:  # a thin bar is drawn as thin as it is, but never vanishes
            body = QRectF(-length / 2, body.center().y() - max(width, 3) / 2, length, max(width, 3))
        painter.setPen(Qt.PenStyle.NoPen)
        painter.fillRect(body, _PLATE)
        painter.setBrush(_STRIP if lamp.output_percent > 0 else QColor(0, 0, 0, 60))
        for x, y, strip_length, strip_width in lamp.strips():
            strip = QRectF(0, 0, strip_length * scale, max(strip_width * lean * scale, 1.5))
            strip.moveCenter(QPointF(x * scale, -y * lean * scale))
            if len(lamp.strips()) > 1:
                painter.drawRect(strip)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.setPen(pen(_EDGE_BACK, 3.6 if active else 3.0))
        painter.drawRect(body)
        painter.setPen(pen(edge, 2.2 if active else 1.4))
        painter.drawRect(body)
        if half_length > 14 and half_width > 8:
            _paint_cross(painter, edge, 4.0)
    if lamp.tilt_deg:
        _paint_way(painter, edge, -1.0 if lamp.tilt_deg > 0 else 1.0)
    painter.restore()


def _paint_way(painter: QPainter, edge: QColor, side: float) -> None:
    """An arrow from the lamp's middle to the side its light is turned to."""
    tip, back = QPointF(0.0, side * 16.0), side * 11.0
    for colour, width in ((_EDGE_BACK, 3.0), (edge, 1.3)):
        painter.setPen(pen(colour, width))
        painter.drawLine(QPointF(0.0, 0.0), tip)
        painter.drawPolyline([QPointF(-4.0, back), tip, QPointF(4.0, back)])


def _paint_point(painter: QPainter, edge: QColor) -> None:
    painter.setBrush(_PLATE)
    painter.setPen(pen(_EDGE_BACK, 3.4))
    painter.drawEllipse(QPointF(0, 0), 7, 7)
    painter.setPen(pen(edge, 1.8))
    painter.drawEllipse(QPointF(0, 0), 7, 7)
    _paint_cross(painter, edge, 10.0)


def _paint_cross(painter: QPainter, edge: QColor, reach: float) -> None:
    for colour, width in ((_EDGE_BACK, 3.0), (edge, 1.3)):
        painter.setPen(pen(colour, width))
        painter.drawLine(QPointF(-reach, 0), QPointF(reach, 0))
        painter.drawLine(QPointF(0, -reach), QPointF(0, reach))
