"""The estimate's map painted as a picture, without a screen."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Final

import numpy as np
from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QPointF, QRectF, QSize, Qt
from PySide6.QtGui import (
    QColor,
    QFont,
    QFontMetricsF,
    QImage,
    QImageWriter,
    QPainter,
    QPainterPath,
    QPen,
    QPolygonF,
)

from planner.estimate.result import Estimate
from planner.light.cellmap import CellMap, round_values
from planner.metrics.figures import LEADING, NO_VALUE, PPFD_UNIT
from planner.reports import content
from planner.reports.contrast import ink_on
from planner.reports.sheet import FAMILIES, ensure_application
from planner.units import LengthUnit, format_length

WIDTH: Final = 1200
_MARGIN: Final = 56.0
_BAR_WIDTH: Final = 22.0
_BAR_SPACE: Final = 150.0
_LARGEST_DRAWING: Final = 1100.0
_INK: Final = QColor(28, 32, 38)
_QUIET: Final = QColor(96, 102, 112)
_PAPER: Final = QColor(255, 255, 255)


@dataclass(frozen=True)
class _Frame:
    """Where the space lies on the picture: scale in pixels per metre and its rectangle."""

    scale: float
    area: QRectF
    x0: float
    y1: float

    def point(self, x: float, y: float) -> QPointF:
        return QPointF(
            self.area.left() + (x - self.x0) * self.scale,
            self.area.top() + (self.y1 - y) * self.scale,
        )

    def rect(self, x0: float, y0: float, x1: float, y1: float) -> QRectF:
        return QRectF(self.point(x0, y1), self.point(x1, y0))


def map_picture(
    estimate: Estimate, *, width: int = WIDTH, unit: LengthUnit = LengthUnit.CM
) -> QImage:
    """Paint the map: title, sentence, footprint with light, contours, lamps, colour bar.

    ``width`` is in pixels; the height follows from the space. Where the machine has no
    font at all the drawing comes out without text.
    """
    ensure_application()
    factor = width / WIDTH
    layout = _Layout.of(estimate)
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
        top = _colour_top(estimate)
        _paint_map(painter, estimate, layout.frame, top)
        _paint_lamps(painter, estimate, layout.frame)
        _paint_outline(painter, estimate, layout.frame, unit)
        _paint_bar(painter, estimate, layout.frame, top)
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
    """The picture's vertical order: heading, drawing, figures."""

    title: QRectF
    sentence: QRectF
    frame: _Frame
    figures: QRectF
    height: float

    @classmethod
    def of(cls, estimate: Estimate) -> _Layout:
        across = WIDTH - 2 * _MARGIN
        title = QRectF(_MARGIN, 36, across, 40)
        words = QFontMetricsF(_font(17)).boundingRect(
            QRectF(0, 0, across, 1000), int(Qt.TextFlag.TextWordWrap), _unbroken_sentence(estimate)
        )
        sentence = QRectF(_MARGIN, 84, across, max(words.height(), 24) + 4)
        x0, y0, x1, y1 = estimate.plan.space.bounds
        room = across - _BAR_SPACE - 60
        scale = min(room / (x1 - x0), _LARGEST_DRAWING / (y1 - y0))
        left = _MARGIN + 48 + (room - scale * (x1 - x0)) / 2
        area = QRectF(left, sentence.bottom() + 52, scale * (x1 - x0), scale * (y1 - y0))
        figures = QRectF(_MARGIN, area.bottom() + 72, across, 132)
        return cls(title, sentence, _Frame(scale, area, x0, y1), figures, figures.bottom() + 28)


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


def _colour_top(estimate: Estimate) -> float:
    """Upper end of the colour scale: the maximum, rounded up; the scale starts at dark."""
    highest = estimate.figures.maximum
    if not math.isfinite(highest) or highest <= 0:
        return 1.0
    step = 10.0 ** math.floor(math.log10(highest)) / 2
    return math.ceil(highest / step - 1e-9) * step


def colour_table() -> np.ndarray[tuple[int, ...], np.dtype[np.uint8]]:
    """256 colours (red, green, blue) of the sequential map cividis, dark to light."""
    import pyqtgraph  # noqa: PLC0415 - a third of a second, and only wanted here

    table = pyqtgraph.colormap.get("cividis").getLookupTable(0.0, 1.0, 256, alpha=False)
    return np.asarray(table, dtype=np.uint8)


def _clip(estimate: Estimate, frame: _Frame) -> QPainterPath:
    path = QPainterPath()
    path.addPolygon(QPolygonF([frame.point(x, y) for x, y in estimate.plan.space.footprint]))
    path.closeSubpath()
    return path


def _paint_map(painter: QPainter, estimate: Estimate, frame: _Frame, top: float) -> None:
    read = estimate.map
    painter.save()
    painter.setClipPath(_clip(estimate, frame))
    painter.drawImage(frame.rect(*read.bounds), _heat_image(read, top, frame.scale))
    table = colour_table()
    taken: list[QRectF] = []
    for level in read.contour_levels():
        ink = QColor(*ink_on(table[min(255, int(255 * level / top))].tolist()))
        for line in read.lines(level):
            _paint_contour(painter, [frame.point(a, b) for a, b in line], level, ink, taken)
    painter.restore()


def _heat_image(read: CellMap, top: float, scale: float) -> QImage:
    """The map in colour; north (large y) uppermost."""
    x0, y0, x1, y1 = read.bounds
    columns = max(2, min(1400, round((x1 - x0) * scale)))
    rows = max(2, min(1400, round((y1 - y0) * scale)))
    fine = read.raster(rows, columns)[::-1]
    index = np.clip(fine / top * 255, 0, 255).astype(np.uint8)
    pixels = np.ascontiguousarray(colour_table()[index])
    # Copied, because the image must not outlive the array it would otherwise share.
    return QImage(pixels.data, columns, rows, 3 * columns, QImage.Format.Format_RGB888).copy()


def _paint_contour(
    painter: QPainter, points: list[QPointF], level: float, ink: QColor, taken: list[QRectF]
) -> None:
    path = QPainterPath(points[0])
    for point in points[1:]:
        path.lineTo(point)
    label = f"{level:g}"
    painter.setFont(_font(14))
    metrics = QFontMetricsF(painter.font())
    room = QRectF(0, 0, metrics.horizontalAdvance(label) + 10, metrics.height() + 2)
    spot = None
    if path.length() > 2.5 * room.width():
        spot = _label_spot(path, room, taken, painter.clipPath())
    pen = QPen(ink, 1.3)
    if spot is None:
        painter.strokePath(path, pen)
        return
    box, angle = spot
    taken.append(box.adjusted(-6, -6, 6, 6))
    painter.save()
    gap = QPainterPath()
    gap.addRect(painter.clipPath().boundingRect().adjusted(-1, -1, 1, 1))
    gap.addEllipse(box.center(), room.width() / 2, room.width() / 2)
    gap.setFillRule(Qt.FillRule.OddEvenFill)
    painter.setClipPath(gap, Qt.ClipOperation.IntersectClip)
    painter.strokePath(path, pen)
    painter.restore()
    painter.save()
    painter.translate(box.center())
    painter.rotate(angle)
    painter.setPen(ink)
    room.moveCenter(QPointF(0, 0))
    painter.drawText(room, int(Qt.AlignmentFlag.AlignCenter), label)
    painter.restore()


def _label_spot(
    path: QPainterPath, room: QRectF, taken: list[QRectF], clip: QPainterPath
) -> tuple[QRectF, float] | None:
    """A place on a line where its label meets no other label and no edge, and its slope."""
    side = room.width()
    for share in (0.5, 0.38, 0.62, 0.25, 0.75, 0.12, 0.88):
        centre = path.pointAtPercent(share)
        box = QRectF(centre.x() - side / 2, centre.y() - side / 2, side, side)
        if clip.contains(box) and not any(box.intersects(other) for other in taken):
            slope = -path.angleAtPercent(share)
            return box, (slope + 90) % 180 - 90
    return None


def _paint_lamps(painter: QPainter, estimate: Estimate, frame: _Frame) -> None:
    painter.save()
    painter.setClipPath(_clip(estimate, frame))
    for lamp in estimate.plan.lamps:
        if lamp.model.size == (0.0, 0.0):
            centre = frame.point(lamp.x, lamp.y)
            shape = QPainterPath()
            shape.addEllipse(centre, 7, 7)
        else:
            shape = QPainterPath()
            shape.addPolygon(QPolygonF([frame.point(x, y) for x, y in lamp.outline()]))
            shape.closeSubpath()
        # Dark beneath light, so that the outline shows on every colour of the map.
        painter.strokePath(shape, QPen(QColor(0, 0, 0, 150), 3.2))
        painter.strokePath(shape, QPen(QColor(255, 255, 255), 1.4, Qt.PenStyle.DashLine))
    painter.restore()


def _paint_outline(painter: QPainter, estimate: Estimate, frame: _Frame, unit: LengthUnit) -> None:
    space = estimate.plan.space
    for index in range(space.wall_count):
        (ax, ay), (bx, by) = space.wall(index)
        pen = QPen(_INK, 3.5)
        pen.setCapStyle(Qt.PenCapStyle.SquareCap)
        if estimate.plan.wall_opens(index):
            pen = QPen(_QUIET, 2.0, Qt.PenStyle.DotLine)
        painter.setPen(pen)
        painter.drawLine(frame.point(ax, ay), frame.point(bx, by))
    painter.setPen(_QUIET)
    painter.setFont(_font(15))
    x0, y0, x1, y1 = space.bounds
    area = frame.area
    painter.drawText(
        QRectF(area.left() - 60, area.bottom() + 10, area.width() + 120, 24),
        int(Qt.AlignmentFlag.AlignCenter),
        format_length(x1 - x0, unit),
    )
    painter.save()
    painter.translate(area.left() - 24, area.center().y())
    painter.rotate(-90)
    painter.drawText(
        QRectF(-120, -12, 240, 24),
        int(Qt.AlignmentFlag.AlignCenter),
        format_length(y1 - y0, unit),
    )
    painter.restore()


def _paint_bar(painter: QPainter, estimate: Estimate, frame: _Frame, top: float) -> None:
    height = min(frame.area.height(), 460.0)
    left = frame.area.right() + 44
    bar = QRectF(left, frame.area.top() + (frame.area.height() - height) / 2, _BAR_WIDTH, height)
    strip = np.ascontiguousarray(colour_table()[::-1].reshape(256, 1, 3))
    painter.drawImage(bar, QImage(strip.data, 1, 256, 3, QImage.Format.Format_RGB888).copy())
    painter.setFont(_font(14))
    metrics = QFontMetricsF(painter.font())
    low, high = estimate.figures.minimum, estimate.figures.maximum
    for level in sorted({0.0, *round_values(0.0, top, 5), top}):
        at = bar.bottom() - level / top * height
        painter.setPen(QPen(_INK, 1))
        painter.drawLine(QPointF(bar.right(), at), QPointF(bar.right() + 5, at))
        painter.drawText(QPointF(bar.right() + 10, at + metrics.ascent() / 2 - 2), f"{level:g}")
    if math.isfinite(low) and math.isfinite(high):
        # The part of the scale that occurs in this space.
        painter.setPen(QPen(_INK, 3))
        painter.drawLine(
            QPointF(bar.left() - 6, bar.bottom() - low / top * height),
            QPointF(bar.left() - 6, bar.bottom() - high / top * height),
        )
    painter.setPen(_QUIET)
    painter.drawText(QPointF(bar.left(), bar.top() - 14), PPFD_UNIT)


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
