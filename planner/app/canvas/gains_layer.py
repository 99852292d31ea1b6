"""Quiet marks at the walls: how much more light ten points of reflectance would bring."""

from __future__ import annotations

import math
from collections.abc import Sequence

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter

from planner.app.canvas.ink import Ink, draw_plate_text, figure_font, pen
from planner.app.canvas.items import wall_normal
from planner.app.canvas.viewport import Viewport
from planner.plan.place import PlaceKind
from planner.plan.plan import Plan
from planner.reports.lining_gains import LiningGain, signed

BAR_PX = 4.0
_INSET_PX = 7.0
_LABEL_PX = 22.0
_APART_PX = 34.0
_LONGEST = 0.8


def wall_gains(gains: Sequence[LiningGain]) -> dict[int, float]:
    """What each wall brings to the mean, its bands together (µmol m⁻² s⁻¹)."""
    found: dict[int, float] = {}
    for gain in gains:
        if gain.place.kind is PlaceKind.WALL:
            wall = gain.place.index
            found[wall] = found.get(wall, 0.0) + gain.mean
    return found


def paint_wall_gains(
    painter: QPainter,
    plan: Plan,
    gains: Sequence[LiningGain],
    viewport: Viewport,
    ink: Ink,
    taken: Sequence[QPointF] = (),
) -> None:
    """A bar inside each wall, as long as its gain, with the gain of the mean beside it.

    ``taken`` are pixels where something else is written.
    """
    by_wall = wall_gains(gains)
    most = max(by_wall.values(), default=0.0)
    if most <= 0:
        return
    shortest = min(plan.space.wall_length(wall) for wall in by_wall)
    longest = max(plan.space.wall_length(wall) for wall in by_wall)
    # One scale for all walls, or the bars could not be compared.
    reach = _LONGEST * min(longest, 2 * shortest) * viewport.scale / 2
    painter.setFont(figure_font(painter.font(), 0.95))
    for wall, gain in by_wall.items():
        if wall < plan.space.wall_count:
            best = gain == most
            half = min(reach, plan.space.wall_length(wall) * viewport.scale * 0.45) * gain / most
            _paint_mark(painter, plan, wall, half, signed(gain), viewport, ink, taken, best=best)


def _paint_mark(
    painter: QPainter,
    plan: Plan,
    wall: int,
    half: float,
    text: str,
    viewport: Viewport,
    ink: Ink,
    taken: Sequence[QPointF],
    *,
    best: bool,
) -> None:
    (ax, ay), (bx, by) = plan.space.wall(wall)
    nx, ny = wall_normal(plan, wall)
    inwards = QPointF(-nx, ny)
    middle = viewport.to_pixel((ax + bx) / 2, (ay + by) / 2)
    length = math.dist((ax, ay), (bx, by))
    along = QPointF((bx - ax) / length, -(by - ay) / length)
    at = middle + inwards * _INSET_PX
    colour = ink.accent if best else ink.quiet
    for ground, width in ((ink.paper, BAR_PX + 3), (colour, BAR_PX)):
        line = pen(ground, width)
        line.setCapStyle(Qt.PenCapStyle.RoundCap)
        painter.setPen(line)
        painter.drawLine(at - along * half, at + along * half)
    spot = middle + inwards * _LABEL_PX
    if any((spot - other).manhattanLength() < _APART_PX for other in taken):
        spot += along * _APART_PX
    draw_plate_text(painter, spot, text, ink.accent if best else ink.ink, ink.paper)


def paint_side_gains(painter: QPainter, gains: Sequence[LiningGain], box: QRectF, ink: Ink) -> None:
    """The gain of the ceiling and of an open canopy's floor, written inside the side view."""
    most = max((gain.mean for gain in gains), default=0.0)
    painter.setFont(figure_font(painter.font(), 0.95))
    for gain in gains:
        if gain.place.kind not in {PlaceKind.CEILING, PlaceKind.FLOOR}:
            continue
        up = gain.place.kind is PlaceKind.CEILING
        y = box.top() + 15 if up else box.bottom() - 15
        colour = ink.accent if gain.mean == most else ink.ink
        spot = QPointF(box.left() + 0.16 * box.width(), y)
        draw_plate_text(painter, spot, signed(gain.mean), colour, ink.paper)
