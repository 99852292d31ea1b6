"""The section line: where the profile under the drawing is taken."""

from __future__ import annotations

from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QColor, QPainter

from planner.app.canvas.ink import Ink, draw_handle, pen
from planner.app.canvas.sampling import Section
from planner.app.canvas.viewport import Viewport


def paint_section(
    painter: QPainter, section: Section, viewport: Viewport, ink: Ink, *, active: bool
) -> None:
    """A dash-dotted line, as sections are drawn."""
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    start, end = (viewport.to_pixel(*point) for point in section)
    painter.setPen(pen(QColor(0, 0, 0, 80), 2.6))
    painter.drawLine(start, end)
    line = pen(ink.accent if active else QColor(255, 255, 255, 235), 1.2)
    line.setDashPattern([9, 3, 2, 3])
    painter.setPen(line)
    painter.drawLine(start, end)


def paint_section_ends(
    painter: QPainter, section: Section, viewport: Viewport, ink: Ink, *, active: bool
) -> None:
    """The grips at both ends, lettered A and B."""
    start, end = (viewport.to_pixel(*point) for point in section)
    for at in (start, end):
        draw_handle(painter, at, ink, active=active, round_=True)
    metrics = painter.fontMetrics()
    for at, other, letter in ((start, end, "A"), (end, start, "B")):
        apart = at - other
        length = max((apart.x() ** 2 + apart.y() ** 2) ** 0.5, 1.0)
        spot = at - apart / length * 15 + QPointF(0, -metrics.height() * 0.55)
        _outlined(painter, spot, letter, ink)


def _outlined(painter: QPainter, at: QPointF, letter: str, ink: Ink) -> None:
    box = painter.fontMetrics().boundingRect(letter).toRectF().adjusted(-3, 0, 3, 0)
    box.moveCenter(at)
    painter.setPen(Qt.PenStyle.NoPen)
    ground = QColor(ink.paper)
    ground.setAlphaF(0.82)
    painter.setBrush(ground)
    painter.drawRoundedRect(box, 3, 3)
    painter.setPen(ink.ink)
    painter.drawText(box, Qt.AlignmentFlag.AlignCenter, letter)
