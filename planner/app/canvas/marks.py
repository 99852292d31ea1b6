"""Marks on a drawing: notices in its margins, what a lining would bring, the section line."""

from __future__ import annotations

import math
from collections.abc import Sequence

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPainter

from planner.app.canvas.ink import (
    Ink,
    Viewport,
    draw_handle,
    draw_plate_text,
    faded,
    figure_font,
    hatch,
    pen,
    plate,
)
from planner.app.canvas.items import Section, wall_normal
from planner.app.canvas.light_layer import LightStyle
from planner.app.plots import colours
from planner.plan.alignment import Guide
from planner.plan.place import PlaceKind
from planner.plan.plan import Plan
from planner.plan.space import Point
from planner.reports.advice import LiningGain, signed
from planner.units import LengthUnit, format_length

EDGE_PX = 14.0
LINE_PX = 24.0
_MOST_PX = 400.0
"""More than any words at the foot of a drawing are high."""


def line_height(painter: QPainter) -> float:
    """Height of a line of text in a margin: more than usual where the font is large."""
    return max(LINE_PX, QFontMetricsF(painter.font()).height() + 6)


def paint_line(painter: QPainter, area: QRectF, text: str, colour: QColor) -> None:
    """One line of text at the left of an area, shortened at its end where it must be."""
    elided = QFontMetricsF(painter.font()).elidedText(
        text, Qt.TextElideMode.ElideRight, area.width()
    )
    painter.setPen(colour)
    painter.drawText(area, Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter, elided)


def paint_words(
    painter: QPainter, area: QRectF, wide: QRectF, text: str, colour: QColor, ink: Ink
) -> None:
    """What is said at the foot of a drawing: a line or two, or more on a plate over all of it.

    ``area`` is the room beside the scale, ``wide`` that of the whole foot; both grow upwards.
    """
    if not text:
        return
    flags = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignBottom | Qt.TextFlag.TextWordWrap
    room = area.adjusted(0, -_MOST_PX, 0, 0)
    box = painter.boundingRect(room, flags, text)
    if box.height() > 2.5 * QFontMetricsF(painter.font()).height():
        room = wide.adjusted(0, -_MOST_PX, 0, 0)
        box = painter.boundingRect(room, flags, text)
        box = QRectF(wide.left(), box.top(), wide.width(), box.height())
    # In a low drawing the lengths of walls stand there too, and nobody reads two texts at once.
    painter.fillRect(box.adjusted(-6, -4, 6, 4), ink.paper)
    painter.setPen(colour)
    painter.drawText(room, flags, text)


def paint_refining(painter: QPainter, right: QPointF, ink: Ink) -> None:
    """The mark that a finer estimate is on its way, ending at ``right``."""
    text = "preview, refining"
    width = QFontMetricsF(painter.font()).horizontalAdvance(text)
    line = line_height(painter)
    box = QRectF(right.x() - width, right.y() - line / 2, width, line)
    painter.fillRect(box.adjusted(-36, 0, 0, 0), ink.paper)
    painter.setPen(ink.quiet)
    painter.drawText(box, Qt.AlignmentFlag.AlignCenter, text)
    painter.setPen(Qt.PenStyle.NoPen)
    for k, strength in enumerate((0.35, 0.65, 1.0)):
        colour = faded(ink.accent, strength)
        painter.setBrush(colour)
        painter.drawEllipse(QPointF(box.left() - 26 + 8 * k, right.y() + 1), 2.2, 2.2)


def paint_corner(
    painter: QPainter, right: QPointF, ink: Ink, style: LightStyle, *, refining: bool
) -> None:
    """The mark that a finer estimate is on its way, or else what the marks of the band mean."""
    if refining:
        paint_refining(painter, right, ink)
    elif style.wash and style.band is not None:
        _paint_legend(painter, right, ink)


def _paint_legend(painter: QPainter, right: QPointF, ink: Ink) -> None:
    """Three swatches with their words, ending at ``right``: under, in and over the band."""
    metrics, line = QFontMetricsF(painter.font()), line_height(painter)
    x = right.x()
    for text, rgb, over in (
        ("over", colours.OVER_RGB, True),
        ("in the band", colours.INSIDE_RGB, None),
        ("under", colours.UNDER_RGB, False),
    ):
        width = metrics.horizontalAdvance(text)
        painter.setPen(ink.quiet)
        box = QRectF(x - width, right.y() - line / 2, width, line)
        painter.drawText(box, Qt.AlignmentFlag.AlignCenter, text)
        swatch = QRectF(box.left() - 21, right.y() - 5, 16, 10)
        painter.fillRect(swatch, QColor(*rgb))
        if over is not None:
            hatch(painter, swatch, swatch, over=over, strong=True)
        x = swatch.left() - 12


def paint_invitation(painter: QPainter, centre: QPointF, width: float, text: str, ink: Ink) -> None:
    """What to do first, on a plate in the middle of an empty drawing."""
    flags = Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextWordWrap
    room = QRectF(0, 0, max(width, 120.0), 400)
    box = painter.boundingRect(room, flags, text).adjusted(-12, -8, 12, 8)
    box.moveCenter(centre)
    ground = faded(ink.paper, 0.9)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(ground)
    painter.drawRoundedRect(box, 6, 6)
    painter.setPen(ink.ink)
    painter.drawText(box, flags, text)


# -- Quiet marks at the walls ----------------------------------------------------------

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


# -- The section line ------------------------------------------------------------------


def paint_section(
    painter: QPainter, section: Section, viewport: Viewport, ink: Ink, *, active: bool
) -> None:
    """A dash-dotted line, as sections are drawn."""
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    start, end = (viewport.to_pixel(*point) for point in section)
    painter.setPen(pen(QColor(0, 0, 0, 80), 2.6))
    painter.drawLine(start, end)
    line = pen(ink.accent if active else QColor(255, 255, 255, 235), 1.2, dashes=(9, 3, 2, 3))
    painter.setPen(line)
    painter.drawLine(start, end)


def paint_section_ends(
    painter: QPainter, section: Section, viewport: Viewport, ink: Ink, *, active: bool
) -> None:
    """The grips at both ends, lettered A and B."""
    start, end = (viewport.to_pixel(*point) for point in section)
    for at in (start, end):
        draw_handle(painter, at, ink, active=active, round_=True)
    for letter, box in zip(
        ("A", "B"), letter_spots(section, viewport, painter.font()), strict=True
    ):
        _outlined(painter, box, letter, ink)


def letter_spots(section: Section, viewport: Viewport, font: QFont) -> tuple[QRectF, QRectF]:
    """Where the letters A and B stand."""
    start, end = (viewport.to_pixel(*point) for point in section)
    metrics = QFontMetricsF(font)
    spots = []
    for at, other, letter in ((start, end, "A"), (end, start, "B")):
        apart = at - other
        length = max((apart.x() ** 2 + apart.y() ** 2) ** 0.5, 1.0)
        box = metrics.boundingRect(letter).adjusted(-3, 0, 3, 0)
        box.moveCenter(at - apart / length * 15 + QPointF(0, -metrics.height() * 0.55))
        spots.append(box)
    return spots[0], spots[1]


def _outlined(painter: QPainter, box: QRectF, letter: str, ink: Ink) -> None:
    painter.setPen(Qt.PenStyle.NoPen)
    ground = plate(ink)
    painter.setBrush(ground)
    painter.drawRoundedRect(box, 3, 3)
    painter.setPen(ink.ink)
    painter.drawText(box, Qt.AlignmentFlag.AlignCenter, letter)


# -- what the hand holds ---------------------------------------------------------------


def paint_guides(
    painter: QPainter,
    guides: Sequence[Guide],
    viewport: Viewport,
    ink: Ink,
    unit: LengthUnit,
) -> None:
    """Lines through middles, dashed, and equal gaps with their length, while they hold."""
    # Gaps last: their lengths stand on the lines, which would strike them out.
    for guide in sorted(guides, key=lambda guide: guide.equal_gaps):
        line = pen(ink.accent, 1.2)
        if not guide.equal_gaps:
            line.setDashPattern([6, 4])
        for ends in guide.spans:
            a, b = (viewport.to_pixel(*end) for end in ends)
            painter.setPen(pen(ink.paper, 3.0))
            painter.drawLine(a, b)
            painter.setPen(line)
            painter.drawLine(a, b)
            if guide.equal_gaps:
                _paint_ticks(painter, a, b)
                text = format_length(math.dist(*ends), unit)
                draw_plate_text(painter, (a + b) / 2, text, ink.accent, ink.paper)


def _paint_ticks(painter: QPainter, a: QPointF, b: QPointF) -> None:
    apart = b - a
    length = math.hypot(apart.x(), apart.y()) or 1.0
    tick = QPointF(-apart.y(), apart.x()) / length * 4
    painter.drawLine(a - tick, a + tick)
    painter.drawLine(b - tick, b + tick)


def paint_band(painter: QPainter, band: tuple[Point, Point], viewport: Viewport, ink: Ink) -> None:
    """The rubber band: a pale rectangle in the accent."""
    fill = faded(ink.accent, 0.14)
    painter.setPen(pen(ink.accent, 1.2))
    painter.setBrush(fill)
    a, b = (viewport.to_pixel(*end) for end in band)
    painter.drawRect(QRectF(a, b).normalized())


def paint_tape(
    painter: QPainter, tape: tuple[Point, Point], text: str, viewport: Viewport, ink: Ink
) -> None:
    """The measuring line with what it measures on a plate over its middle."""
    a, b = (viewport.to_pixel(*end) for end in tape)
    for colour, width in ((ink.paper, 4.0), (ink.accent, 1.8)):
        painter.setPen(pen(colour, width))
        painter.drawLine(a, b)
        _paint_ticks(painter, a, b)
    if (b - a).manhattanLength() > 1:
        draw_plate_text(painter, (a + b) / 2 - QPointF(0, 14), text, ink.ink, ink.paper)


def paint_numbers(
    painter: QPainter,
    at: QPointF,
    lines: Sequence[tuple[str, bool]],
    room: QRectF,
    ink: Ink,
) -> None:
    """The numbers a drag sets, on a plate beside the pointer; the one typed in the accent."""
    if not lines:
        return
    metrics = QFontMetricsF(painter.font())
    step = metrics.height() + 2
    width = max(metrics.horizontalAdvance(text) for text, _ in lines) + 12
    plate = QRectF(at.x() + 18, at.y() + 18, width, step * len(lines) + 6)
    if plate.right() > room.right() - 4:
        plate.moveRight(at.x() - 18)
    if plate.bottom() > room.bottom() - 4:
        plate.moveBottom(at.y() - 18)
    plate.moveTopLeft(QPointF(max(plate.left(), room.left() + 4), max(plate.top(), room.top() + 4)))
    painter.setPen(pen(ink.quiet, 1.0))
    painter.setBrush(ink.paper)
    painter.drawRoundedRect(plate, 3, 3)
    for k, (text, typed) in enumerate(lines):
        line = QRectF(plate.left() + 6, plate.top() + 3 + k * step, width - 12, step)
        painter.setPen(ink.accent if typed else ink.ink)
        painter.drawText(line, Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter, text)
