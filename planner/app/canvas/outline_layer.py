"""The outline: walls as thick lines whose tone and texture tell their lining, door and gaps."""

from __future__ import annotations

import math
from collections.abc import Sequence

from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPolygonF

from planner.app.canvas.ink import Ink, draw_handle, mixed, pen
from planner.app.canvas.items import wall_normal
from planner.app.canvas.viewport import Viewport
from planner.plan.lining import Lining
from planner.plan.plan import Plan

WALL_PX = 9.0
"""Thickness walls are drawn with; it lies outside the footprint."""

DOOR_PX = 30.0
"""How far the free end of a door's leaf is drawn from its wall: ajar, to save room."""

_TEXTURE_STEP = 9.0


def tone(reflectance: float) -> QColor:
    """The grey of a reflectance: CIE lightness L* of a surface of that luminance."""
    lightness = 116 * reflectance ** (1 / 3) - 16 if reflectance > 0.008856 else 903.3 * reflectance
    level = min(max(lightness / 100, 0.0), 1.0)
    return QColor.fromRgbF(level, level, level)


def footprint_polygon(plan: Plan, viewport: Viewport) -> QPolygonF:
    """The footprint in pixels."""
    return QPolygonF([viewport.to_pixel(x, y) for x, y in plan.space.footprint])


def wall_strip(plan: Plan, wall: int, viewport: Viewport, near: float, far: float) -> QPolygonF:
    """The strip of a wall between two distances outside the footprint, in pixels, mitred."""
    start, end = plan.space.wall(wall)
    count = plan.space.wall_count
    first = _mitre(plan, (wall - 1) % count, wall)
    second = _mitre(plan, wall, (wall + 1) % count)
    a, b = viewport.to_pixel(*start), viewport.to_pixel(*end)
    return QPolygonF([a + first * near, b + second * near, b + second * far, a + first * far])


def _mitre(plan: Plan, before: int, after: int) -> QPointF:
    """Pixel shift of the corner between two walls per pixel of thickness."""
    ax, ay = wall_normal(plan, before)
    bx, by = wall_normal(plan, after)
    # A needle-sharp corner would grow a spike.
    scale = max(1 + ax * bx + ay * by, 0.25)
    return QPointF((ax + bx) / scale, -(ay + by) / scale)


def paint_outline(
    painter: QPainter, plan: Plan, viewport: Viewport, ink: Ink, selected: int | None
) -> None:
    """All walls, the selected one underlaid with the accent."""
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    for wall in range(plan.space.wall_count):
        if wall != selected:
            _paint_wall(painter, plan, wall, viewport, ink)
    if selected is not None and selected < plan.space.wall_count:
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(ink.accent)
        painter.drawPolygon(wall_strip(plan, selected, viewport, -3.0, WALL_PX + 3.0))
        _paint_wall(painter, plan, selected, viewport, ink)


def _paint_wall(painter: QPainter, plan: Plan, wall: int, viewport: Viewport, ink: Ink) -> None:
    if plan.wall_opens(wall):
        _paint_gap(painter, plan, wall, viewport, ink)
        _paint_door(painter, plan, wall, viewport, ink, open_=True)
        return
    bands = plan.walls[wall].bands
    thickness = WALL_PX / len(bands)
    for k, band in enumerate(bands):
        lining = plan.lining(band.lining)
        strip = wall_strip(plan, wall, viewport, k * thickness, (k + 1) * thickness)
        if lining.is_opening:
            if len(bands) == 1:
                _paint_gap(painter, plan, wall, viewport, ink)
                return
            continue
        paint_lining(painter, strip, lining)
    painter.setPen(pen(ink.ink, 1.0))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawPolygon(wall_strip(plan, wall, viewport, 0, WALL_PX))
    if plan.space.door == wall:
        _paint_door(painter, plan, wall, viewport, ink, open_=False)


def paint_lining(painter: QPainter, strip: QPolygonF, lining: Lining) -> None:
    """A strip (four corners, long sides first and third) in the tone and texture of a lining."""
    ground = tone(lining.reflectance)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(ground)
    painter.drawPolygon(strip)
    mark = mixed(
        ground, QColor(0, 0, 0) if ground.lightnessF() > 0.45 else QColor(255, 255, 255), 0.5
    )
    start = (strip.at(0) + strip.at(3)) / 2
    end = (strip.at(1) + strip.at(2)) / 2
    dots, dashes = texture(start, end, lining.specular_share)
    if dots:
        dot_pen = pen(mark, 1.9)
        dot_pen.setCapStyle(Qt.PenCapStyle.RoundCap)
        painter.setPen(dot_pen)
        painter.drawPoints(dots)
    if dashes:
        painter.setPen(pen(mark, 1.5))
        painter.drawLines(dashes)


def texture(
    start: QPointF, end: QPointF, specular_share: float
) -> tuple[list[QPointF], list[QLineF]]:
    """Dots (diffuse) and dashes (specular) along a line, in the shares of the reflected light."""
    length = math.hypot(end.x() - start.x(), end.y() - start.y())
    count = int(length / _TEXTURE_STEP)
    if count < 1:
        return [], []
    along = (end - start) / length
    first = (length - (count - 1) * _TEXTURE_STEP) / 2
    dots: list[QPointF] = []
    dashes: list[QLineF] = []
    for k in range(count):
        at = start + along * (first + k * _TEXTURE_STEP)
        if int((k + 1) * specular_share + 1e-9) > int(k * specular_share + 1e-9):
            dashes.append(QLineF(at - along * 3.2, at + along * 3.2))
        else:
            dots.append(at)
    return dots, dashes


def _paint_gap(painter: QPainter, plan: Plan, wall: int, viewport: Viewport, ink: Ink) -> None:
    start, end = plan.space.wall(wall)
    line = pen(ink.quiet, 1.2)
    line.setDashPattern([5, 4])
    painter.setPen(line)
    painter.drawLine(viewport.to_pixel(*start), viewport.to_pixel(*end))


def _paint_door(
    painter: QPainter, plan: Plan, wall: int, viewport: Viewport, ink: Ink, *, open_: bool
) -> None:
    """The leaf and its swing, hinged at the wall's start: strong where it stands open."""
    start, end = plan.space.wall(wall)
    line = QLineF(viewport.to_pixel(*start), viewport.to_pixel(*end))
    hinge, radius = line.p1(), line.length()
    swing = math.degrees(math.asin(min(DOOR_PX / max(radius, 1.0), 0.7)))
    # Outwards is to the right of the wall's direction: clockwise on the plan.
    ajar = QLineF(line)
    ajar.setAngle(line.angle() - swing)
    painter.setPen(pen(ink.ink, 2.4) if open_ else pen(ink.quiet, 1.0))
    painter.drawLine(ajar)
    arc_pen = pen(ink.quiet, 1.0)
    arc_pen.setDashPattern([3, 3])
    painter.setPen(arc_pen)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    box = QRectF(hinge.x() - radius, hinge.y() - radius, 2 * radius, 2 * radius)
    painter.drawArc(box, round((line.angle() - swing) * 16), round(swing * 16))
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(ink.ink)
    painter.drawEllipse(hinge, 2.6, 2.6)


def paint_corners(
    painter: QPainter, plan: Plan, viewport: Viewport, ink: Ink, active: Sequence[int]
) -> None:
    """A grip on every corner."""
    for k, corner in enumerate(plan.space.footprint):
        draw_handle(painter, viewport.to_pixel(*corner), ink, active=k in active, round_=False)
