"""The estimate's map as pixels, painted without a screen."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QRectF, QSize
from PySide6.QtGui import QColor, QImage, QImageWriter, QPainter
from PySide6.QtSvg import QSvgRenderer

from planner.estimate.result import Estimate
from planner.reports.charts import whole_map
from planner.reports.sheet import ensure_application
from planner.units import LengthUnit

WIDTH: Final = 1200


def map_picture(
    estimate: Estimate, *, width: int = WIDTH, unit: LengthUnit = LengthUnit.CM
) -> QImage:
    """Paint the map as it is drawn in lines, ``width`` pixels wide; its height follows.

    Where the machine has no font at all the drawing comes out without text.
    """
    ensure_application()
    drawn = whole_map(estimate, unit)
    size = QSize(width, round(width * drawn.height / drawn.width))
    image = QImage(size, QImage.Format.Format_ARGB32_Premultiplied)
    image.fill(QColor("white"))
    painter = QPainter(image)
    painter.setRenderHints(
        QPainter.RenderHint.Antialiasing
        | QPainter.RenderHint.TextAntialiasing
        | QPainter.RenderHint.SmoothPixmapTransform
    )
    QSvgRenderer(QByteArray(drawn.svg.encode())).render(painter, QRectF(image.rect()))
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
