"""Notices: what stands in the margins of a drawing, and why an edit could not be made."""

from __future__ import annotations

from pydantic import ValidationError
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPainter

from planner.app.canvas.ink import Ink

EDGE_PX = 14.0
LINE_PX = 24.0


def line_height(painter: QPainter) -> float:
    """Height of a line of text in a margin: more than usual where the font is large."""
    return max(LINE_PX, QFontMetricsF(painter.font()).height() + 6)


def reason(error: ValueError) -> str:
    """What is wrong, as one sentence to be shown on the drawing."""
    text = str(error)
    if isinstance(error, ValidationError):
        first = error.errors()[0]
        text = first["msg"].removeprefix("Value error, ")
        if first["type"] != "value_error":
            place = " ".join(str(part).replace("_", " ") for part in first["loc"])
            text = f"{place}: {text[:1].lower()}{text[1:]}"
    text = text.strip()
    return f"{text[:1].upper()}{text[1:]}" + ("" if text.endswith(".") else ".")


def paint_line(painter: QPainter, area: QRectF, text: str, colour: QColor) -> None:
    """One line of text at the left of an area, shortened at its end where it must be."""
    elided = QFontMetricsF(painter.font()).elidedText(
        text, Qt.TextElideMode.ElideRight, area.width()
    )
    painter.setPen(colour)
    painter.drawText(area, Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter, elided)


def paint_status(painter: QPainter, area: QRectF, text: str, colour: QColor) -> None:
    """A line at the foot of a drawing; one that is too long goes on in a second line."""
    if QFontMetricsF(painter.font()).horizontalAdvance(text) <= area.width():
        paint_line(painter, area, text, colour)
    else:
        paint_sentence(painter, area.adjusted(0, -line_height(painter), 0, 0), text, colour)


def paint_sentence(painter: QPainter, area: QRectF, text: str, colour: QColor) -> None:
    """A sentence in up to two lines that ends at the foot of an area."""
    painter.setPen(colour)
    painter.drawText(
        area,
        Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignBottom | Qt.TextFlag.TextWordWrap,
        text,
    )


def paint_refining(painter: QPainter, right: QPointF, ink: Ink) -> None:
    """The mark that a finer estimate is on its way, ending at ``right``."""
    text = "preview, refining"
    width = QFontMetricsF(painter.font()).horizontalAdvance(text)
    line = line_height(painter)
    box = QRectF(right.x() - width, right.y() - line / 2, width, line)
    painter.setPen(ink.quiet)
    painter.drawText(box, Qt.AlignmentFlag.AlignCenter, text)
    painter.setPen(Qt.PenStyle.NoPen)
    for k, strength in enumerate((0.35, 0.65, 1.0)):
        colour = QColor(ink.accent)
        colour.setAlphaF(strength)
        painter.setBrush(colour)
        painter.drawEllipse(QPointF(box.left() - 26 + 8 * k, right.y() + 1), 2.2, 2.2)


def paint_invitation(painter: QPainter, centre: QPointF, width: float, text: str, ink: Ink) -> None:
    """What to do first, on a plate in the middle of an empty drawing."""
    flags = Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextWordWrap
    room = QRectF(0, 0, max(width, 120.0), 400)
    box = painter.boundingRect(room, flags, text).adjusted(-12, -8, 12, 8)
    box.moveCenter(centre)
    ground = QColor(ink.paper)
    ground.setAlphaF(0.9)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(ground)
    painter.drawRoundedRect(box, 6, 6)
    painter.setPen(ink.ink)
    painter.drawText(box, flags, text)
