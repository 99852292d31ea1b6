"""Obstacles on both drawings: shelves, pots and boxes that stand in the light."""

from __future__ import annotations

import math

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPolygonF

from planner.app.canvas.ink import Ink, draw_handle, draw_plate_text, pen
from planner.app.canvas.items import obstacle_handle
from planner.app.canvas.outline_layer import tone
from planner.app.canvas.viewport import Viewport
from planner.plan.obstacle import Obstacle
from planner.plan.plan import Plan
from planner.plan.space import Point


def corners(obstacle: Obstacle) -> tuple[Point, ...]:
    """Corners of an obstacle on the plan, in metres."""
    angle = math.radians(obstacle.rotation_deg)
    cos, sin = math.cos(angle), math.sin(angle)
    half = ((-0.5, -0.5), (0.5, -0.5), (0.5, 0.5), (-0.5, 0.5))
    return tuple(
        (
            obstacle.x + u * obstacle.length * cos - v * obstacle.width * sin,
            obstacle.y + u * obstacle.length * sin + v * obstacle.width * cos,
        )
        for u, v in half
    )


def paint_on_plan(
    painter: QPainter, plan: Plan, viewport: Viewport, ink: Ink, active: int | None = None
) -> None:
    """All obstacles from above; dashed where they hang over the canopy.

    The active one is outlined in the accent and has its turning handle.
    """
    for k, obstacle in enumerate(plan.obstacles):
        line = pen(ink.accent, 2.4) if k == active else pen(ink.ink, 1.2)
        if obstacle.underside > plan.canopy.height:
            line.setDashPattern([5, 3])
        painter.setPen(line)
        painter.setBrush(_fill(plan, obstacle))
        painter.drawPolygon(QPolygonF([viewport.to_pixel(*corner) for corner in corners(obstacle)]))
        at = viewport.to_pixel(obstacle.x, obstacle.y)
        draw_plate_text(painter, at, obstacle.name, ink.ink, _plate(ink))
        if k == active:
            _paint_turning(painter, obstacle, viewport, ink)
    painter.setBrush(Qt.BrushStyle.NoBrush)


def _paint_turning(painter: QPainter, obstacle: Obstacle, viewport: Viewport, ink: Ink) -> None:
    angle = math.radians(obstacle.rotation_deg)
    half = obstacle.length / 2
    end = viewport.to_pixel(
        obstacle.x + half * math.cos(angle), obstacle.y + half * math.sin(angle)
    )
    handle = obstacle_handle(obstacle, viewport)
    painter.setPen(pen(ink.accent, 1.6))
    painter.drawLine(end, handle)
    draw_handle(painter, handle, ink, active=False, round_=True)


def side_box(obstacle: Obstacle, viewport: Viewport, axis: int) -> QRectF:
    """Pixel rectangle of an obstacle from the side; ``axis`` 0 shows x to the right, 1 y."""
    places = [corner[axis] for corner in corners(obstacle)]
    return QRectF(
        viewport.to_pixel(min(places), obstacle.top),
        viewport.to_pixel(max(places), obstacle.underside),
    )


def paint_from_side(
    painter: QPainter,
    plan: Plan,
    viewport: Viewport,
    ink: Ink,
    axis: int,
    active: int | None = None,
) -> None:
    """All obstacles from the side; ``axis`` 0 shows x to the right, 1 shows y."""
    for k, obstacle in enumerate(plan.obstacles):
        box = side_box(obstacle, viewport, axis)
        painter.setPen(pen(ink.accent, 2.4) if k == active else pen(ink.ink, 1.2))
        painter.setBrush(_fill(plan, obstacle))
        painter.drawRect(box)
        if box.height() > 24:
            draw_plate_text(painter, QPointF(box.center()), obstacle.name, ink.ink, _plate(ink))
    painter.setBrush(Qt.BrushStyle.NoBrush)


def _fill(plan: Plan, obstacle: Obstacle) -> QColor:
    """The tone of its material, half transparent: the light behind it stays readable."""
    lining = plan.lining(obstacle.lining)
    colour = tone(0.0 if lining.is_opening else lining.reflectance)
    colour.setAlphaF(0.55)
    return colour


def _plate(ink: Ink) -> QColor:
    ground = QColor(ink.paper)
    ground.setAlphaF(0.82)
    return ground
