"""Ink: the few colours and fonts of a drawing, all taken from the palette in force."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPainter, QPalette, QPen


def mixed(one: QColor, other: QColor, share: float) -> QColor:
    """The colour ``share`` of the way from ``one`` to ``other``."""
    return QColor.fromRgbF(
        *(
            float(a + (b - a) * share)
            for a, b in zip(one.getRgbF()[:3], other.getRgbF()[:3], strict=True)  # type: ignore[index]
        )
    )


@dataclass(frozen=True)
class Ink:
    """Colours of one theme.

    ``paper`` the ground, ``ink`` lines and text, ``quiet`` text of the second rank,
    ``faint`` construction lines, ``accent`` what is selected, ``alarm`` what went wrong.
    """

    paper: QColor
    ink: QColor
    quiet: QColor
    faint: QColor
    accent: QColor
    alarm: QColor

    @classmethod
    def of(cls, palette: QPalette) -> Ink:
        """The ink for a widget's palette."""
        paper = palette.color(QPalette.ColorRole.Base)
        ink = palette.color(QPalette.ColorRole.Text)
        dark = paper.lightnessF() < ink.lightnessF()
        return cls(
            paper=paper,
            ink=ink,
            quiet=mixed(ink, paper, 0.32),
            faint=mixed(ink, paper, 0.72),
            accent=palette.color(QPalette.ColorRole.Accent),
            alarm=QColor("#ff9d90") if dark else QColor("#a4281c"),
        )


def pen(colour: QColor, width: float = 1.0, style: Qt.PenStyle = Qt.PenStyle.SolidLine) -> QPen:
    """A pen of constant width on the screen."""
    result = QPen(colour, width, style)
    result.setCapStyle(Qt.PenCapStyle.FlatCap)
    return result


def figure_font(font: QFont, factor: float = 1.0, *, bold: bool = False) -> QFont:
    """The widget's font with figures of equal width."""
    result = QFont(font)
    if font.pointSizeF() > 0:
        result.setPointSizeF(font.pointSizeF() * factor)
    result.setFeature(QFont.Tag("tnum"), 1)
    if bold:
        result.setWeight(QFont.Weight.DemiBold)
    return result


def draw_plate_text(
    painter: QPainter, at: QPointF, text: str, colour: QColor, ground: QColor, angle: float = 0.0
) -> QRectF:
    """Text centred at a point on a small plate that keeps lines away from it.

    ``angle`` in degrees, clockwise on the screen. Returns the plate before turning.
    """
    metrics = QFontMetricsF(painter.font())
    size = metrics.boundingRect(text)
    plate = QRectF(0, 0, metrics.horizontalAdvance(text) + 6, size.height() + 1)
    plate.moveCenter(QPointF(0, 0))
    painter.save()
    painter.translate(at)
    painter.rotate(angle)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(ground)
    painter.drawRoundedRect(plate, 3, 3)
    painter.setPen(colour)
    painter.drawText(plate, Qt.AlignmentFlag.AlignCenter, text)
    painter.restore()
    return plate.translated(at)


def draw_handle(painter: QPainter, at: QPointF, ink: Ink, *, active: bool, round_: bool) -> None:
    """A small grip: square for corners and edges, round for turning and ends of lines."""
    half = 5.0 if active else 3.5
    painter.setPen(pen(ink.accent if active else ink.ink, 1.5))
    painter.setBrush(ink.accent if active else ink.paper)
    spot = QRectF(at.x() - half, at.y() - half, 2 * half, 2 * half)
    if round_:
        painter.drawEllipse(spot)
    else:
        painter.drawRect(spot)
