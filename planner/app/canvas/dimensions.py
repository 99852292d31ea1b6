"""Dimensions: lengths written beside what they measure, and the scale bar."""

from __future__ import annotations

import math

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPainter

from planner.app.canvas.ink import Ink, draw_plate_text, pen
from planner.app.canvas.items import wall_normal
from planner.app.canvas.outline_layer import DOOR_PX, WALL_PX
from planner.app.canvas.viewport import Viewport
from planner.plan.plan import Plan
from planner.units import LengthUnit, format_length

OFFSET_PX = WALL_PX + 19.0
DOOR_OFFSET_PX = DOOR_PX + 14.0
_TICK_PX = 4.0
_NUMBER_PX = 20.0


def paint_dimension(
    painter: QPainter,
    start: QPointF,
    end: QPointF,
    shift: QPointF,
    text: str,
    ink: Ink,
    *,
    strong: bool = False,
    short: str | None = None,
) -> None:
    """A measured length: a line beside two points, ticks at its ends, the figure on it.

    ``shift`` moves the line off the points. Where the figure does not fit along the line
    its ``short`` form stands beside it, further out.
    """
    a, b = start + shift, end + shift
    length = math.hypot(b.x() - a.x(), b.y() - a.y())
    if length < 1:
        return
    along = (b - a) / length
    tick = QPointF(-along.y(), along.x()) * _TICK_PX
    line_pen = pen(ink.quiet if strong else ink.faint, 1.0)
    painter.setPen(line_pen)
    width = QFontMetricsF(painter.font()).horizontalAdvance(text) + 10
    fits = length > width + 14
    if not fits and short is not None:
        text = short
        fits = length > QFontMetricsF(painter.font()).horizontalAdvance(text) + 24
    painter.drawLine(a - tick, a + tick)
    painter.drawLine(b - tick, b + tick)
    painter.drawLine(a, b)
    angle = math.degrees(math.atan2(along.y(), along.x()))
    if angle > 90.01 or angle <= -90.01:
        angle += 180
    if abs(angle - 90) < 0.5:  # upright text reads from the right-hand side
        angle = -90
    middle = (a + b) / 2
    if not fits:
        outward = math.hypot(shift.x(), shift.y())
        middle += shift / outward * 15 if outward else tick / _TICK_PX * 15
    draw_plate_text(painter, middle, text, ink.ink if strong else ink.quiet, ink.paper, angle)


def paint_wall_lengths(
    painter: QPainter,
    plan: Plan,
    viewport: Viewport,
    ink: Ink,
    unit: LengthUnit,
    strong: frozenset[int],
) -> None:
    """Number and length of every wall beside it; those in ``strong`` stand out."""
    for wall in range(plan.space.wall_count):
        start, end = (viewport.to_pixel(*point) for point in plan.space.wall(wall))
        nx, ny = wall_normal(plan, wall)
        offset = DOOR_OFFSET_PX if plan.space.door == wall else OFFSET_PX
        measure = format_length(plan.space.wall_length(wall), unit)
        paint_dimension(
            painter,
            start,
            end,
            QPointF(nx, -ny) * offset,
            f"Wall {wall + 1}: {measure}",
            ink,
            strong=wall in strong,
            short=f"{wall + 1}: {measure}",
        )


def paint_corner_numbers(painter: QPainter, plan: Plan, viewport: Viewport, ink: Ink) -> None:
    """The number of every corner, on a small plate inside the footprint."""
    ground = QColor(ink.paper)
    ground.setAlphaF(0.82)
    count = plan.space.wall_count
    for k, corner in enumerate(plan.space.footprint):
        before, after = wall_normal(plan, (k - 1) % count), wall_normal(plan, k)
        inward = QPointF(-before[0] - after[0], before[1] + after[1])
        reach = math.hypot(inward.x(), inward.y()) or 1.0
        at = viewport.to_pixel(*corner) + inward / reach * _NUMBER_PX
        draw_plate_text(painter, at, str(k + 1), ink.ink, ground)


def scale_bar_length(scale: float, unit: LengthUnit, most_px: float) -> float:
    """The longest round length (1, 2, 5 times a power of ten of the unit) within so many pixels."""
    most = most_px / scale / unit.metres
    power: float = 10.0 ** math.floor(math.log10(most))
    return next(k * power for k in (5.0, 2.0, 1.0) if k * power <= most) * unit.metres


def paint_scale_bar(
    painter: QPainter, right: QPointF, viewport: Viewport, ink: Ink, unit: LengthUnit
) -> None:
    """A bar of a round length that ends at ``right``, its length written before it."""
    length = scale_bar_length(viewport.scale, unit, 90.0)
    pixels = length * viewport.scale
    left = QPointF(right.x() - pixels, right.y())
    painter.setPen(pen(ink.quiet, 1.4))
    up = QPointF(0, 4)
    painter.drawPolyline([left - up, left, right, right - up])
    text = format_length(length, unit)
    box = QRectF(left.x() - 120, right.y() - 14, 112, 20)
    painter.drawText(box, Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter, text)
