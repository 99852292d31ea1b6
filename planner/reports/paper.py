"""The estimate's map as one picture, with its sentence and figures, without a screen."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QImage, QImageWriter, QPainter
from PySide6.QtSvg import QSvgRenderer

from planner.estimate.result import Estimate
from planner.metrics.figures import LEADING, NO_VALUE
from planner.reports import content
from planner.reports.charts import colour_top, scale_drawing, whole_map
from planner.reports.drawings import Picture
from planner.reports.sheet import FAMILIES, ensure_application
from planner.units import LengthUnit

WIDTH: Final = 1200
_MARGIN: Final = 56.0
_PER_MM: Final = 6.4
"""Pixels for a millimetre of the drawing."""
_INK: Final = QColor(28, 32, 38)
_QUIET: Final = QColor(96, 102, 112)
_PAPER: Final = QColor(255, 255, 255)


def map_picture(
    estimate: Estimate, *, width: int = WIDTH, unit: LengthUnit = LengthUnit.CM
) -> QImage:
    """Paint the map: title, sentence, footprint with light, contours, lamps, colour scale.

    ``width`` is in pixels; the height follows from the space. Where the machine has no
    font at all the drawing comes out without text.
    """
    ensure_application()
    factor = width / WIDTH
    shown = (whole_map(estimate, unit), scale_drawing(colour_top(estimate.figures.maximum)))
    layout = _Layout.of(estimate, shown)
    image = QImage(
        QSize(width, round(layout.height * factor)), QImage.Format.Format_ARGB32_Premultiplied
    )
    image.fill(_PAPER)
    painter = QPainter(image)
    painter.setRenderHints(
        QPainter.RenderHint.Antialiasing
        | QPainter.RenderHint.TextAntialiasing
        | QPainter.RenderHint.SmoothPixmapTransform
    )
    painter.scale(factor, factor)
    try:
        _paint_heading(painter, estimate, layout)
        for picture, place in zip(shown, (layout.map, layout.scale), strict=True):
            QSvgRenderer(QByteArray(picture.svg.encode())).render(painter, place)
        _paint_figures(painter, estimate, layout)
    finally:
        painter.end()
    return image


def map_picture_png(
    estimate: Estimate, *, width: int = WIDTH, unit: LengthUnit = LengthUnit.CM
) -> bytes:
    """The map as the bytes of a PNG file."""
    image = map_picture(estimate, width=width, unit=unit)
    buffer = QBuffer()
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    QImageWriter(buffer, QByteArray(b"png")).write(image)
    return bytes(buffer.data().data())


@dataclass(frozen=True)
class _Layout:
    """The picture's vertical order: heading, drawing, its scale, figures."""

    title: QRectF
    sentence: QRectF
    map: QRectF
    scale: QRectF
    figures: QRectF
    height: float

    @classmethod
    def of(cls, estimate: Estimate, shown: tuple[Picture, Picture]) -> _Layout:
        across = WIDTH - 2 * _MARGIN
        title = QRectF(_MARGIN, 36, across, 40)
        words = QFontMetricsF(_font(17)).boundingRect(
            QRectF(0, 0, across, 1000), int(Qt.TextFlag.TextWordWrap), _unbroken_sentence(estimate)
        )
        sentence = QRectF(_MARGIN, 84, across, max(words.height(), 24) + 4)
        sizes = [(one.width * _PER_MM, one.height * _PER_MM) for one in shown]
        (wide, tall), (long, low) = sizes
        area = QRectF((WIDTH - wide) / 2, sentence.bottom() + 24, wide, tall)
        scale = QRectF((WIDTH - long) / 2, area.bottom() + 12, long, low)
        figures = QRectF(_MARGIN, scale.bottom() + 36, across, 132)
        return cls(title, sentence, area, scale, figures, figures.bottom() + 28)


def _unbroken_sentence(estimate: Estimate) -> str:
    """The sentence with its per cent signs kept on the line of their number."""
    return content.sentence(estimate).replace(" %", "\N{NO-BREAK SPACE}%")


def _font(size: float, *, bold: bool = False) -> QFont:
    font = QFont()
    font.setFamilies(FAMILIES)
    font.setPixelSize(round(size))
    font.setBold(bold)
    return font


def _paint_heading(painter: QPainter, estimate: Estimate, layout: _Layout) -> None:
    painter.setPen(_INK)
    painter.setFont(_font(28, bold=True))
    name = QFontMetricsF(painter.font()).elidedText(
        estimate.plan.name, Qt.TextElideMode.ElideRight, layout.title.width()
    )
    painter.drawText(layout.title, int(Qt.AlignmentFlag.AlignVCenter), name)
    painter.setFont(_font(17))
    painter.drawText(layout.sentence, int(Qt.TextFlag.TextWordWrap), _unbroken_sentence(estimate))


def _paint_figures(painter: QPainter, estimate: Estimate, layout: _Layout) -> None:
    figures = content.headline_figures(estimate)
    area = layout.figures
    _paint_row(painter, figures[:LEADING], QRectF(area.left(), area.top(), area.width(), 66), 26)
    by_key = {figure.key: figure for figure in figures}
    second = [
        by_key[key] for key in ("minimum", "maximum", "cv", "utilisation", "efficacy", "watts")
    ]
    _paint_row(painter, tuple(second), QRectF(area.left(), area.top() + 76, area.width(), 56), 18)


def _paint_row(
    painter: QPainter, figures: tuple[content.HeadlineFigure, ...], area: QRectF, size: int
) -> None:
    step = area.width() / len(figures)
    for index, figure in enumerate(figures):
        left = area.left() + index * step
        painter.setPen(_QUIET)
        painter.setFont(_font(14))
        painter.drawText(QPointF(left, area.top() + 14), figure.label)
        painter.setPen(_INK)
        painter.setFont(_font(size, bold=size > 20))
        baseline = area.top() + 22 + size
        painter.drawText(QPointF(left, baseline), figure.value)
        if figure.unit and figure.value != NO_VALUE:
            advance = QFontMetricsF(painter.font()).horizontalAdvance(figure.value)
            painter.setFont(_font(14))
            painter.setPen(_QUIET)
            painter.drawText(QPointF(left + advance + 6, baseline), figure.unit)
