"""The survey board at its true size, and a sheet to write the readings on.

A PDF of several sheets to be glued together: each shows its part of the board with
registration marks where sheets meet and a bar of exactly 100 mm. Print without scaling.
"""

from __future__ import annotations

import math
import os
from dataclasses import dataclass
from enum import StrEnum
from pathlib import Path
from typing import Final

from PySide6.QtCore import QBuffer, QIODevice, QMarginsF, QPointF, QRectF, QSizeF, Qt
from PySide6.QtGui import (
    QColor,
    QFont,
    QGuiApplication,
    QPageLayout,
    QPageSize,
    QPainter,
    QPdfWriter,
    QPen,
    QPolygonF,
)

from planner.files.disk import write_atomically
from planner.plan.space import Point
from planner.plan.survey import Survey
from planner.units import LengthUnit, format_length

BAR_MM: Final = 100.0
RESOLUTION: Final = 1200
MARGIN_MM: Final = 10.0
FOOT_MM: Final = 16.0
OVERLAP_MM: Final = 10.0
MOST_SHEETS: Final = 200
_INK: Final = QColor(20, 20, 20)
_QUIET: Final = QColor(120, 120, 120)
_FAMILIES: Final = ["DejaVu Sans", "Noto Sans", "Segoe UI", "Helvetica Neue", "Arial"]
_APPLICATION: Final[list[QGuiApplication]] = []


class Paper(StrEnum):
    """Sizes a home printer takes."""

    A4 = "a4"
    LETTER = "letter"

    @property
    def size_mm(self) -> tuple[float, float]:
        """Width and height of an upright sheet."""
        return (210.0, 297.0) if self is Paper.A4 else (215.9, 279.4)


class BoardError(ValueError):
    """A board that cannot be printed; the message is a sentence."""


@dataclass(frozen=True)
class Sheet:
    """One sheet: its place in the tiling and the board's millimetres it shows.

    ``left`` and ``bottom`` are where the shown part begins on the board, counted from the
    lower left corner of the footprint's bounding rectangle.
    """

    column: int
    row: int
    left: float
    bottom: float
    width: float
    height: float

    @property
    def name(self) -> str:
        """Name printed on the sheet: column letter and row number."""
        letters = ""
        number = self.column
        while True:
            letters = chr(ord("A") + number % 26) + letters
            number = number // 26 - 1
            if number < 0:
                return f"{letters}{self.row + 1}"


def sheets(size_mm: tuple[float, float], paper: Paper) -> tuple[Sheet, ...]:
    """Divide a board among sheets that overlap by a centimetre, from the lower left.

    Raises
    ------
    BoardError
        If more than two hundred sheets would be needed.
    """
    across = paper.size_mm[0] - 2 * MARGIN_MM
    up = paper.size_mm[1] - 2 * MARGIN_MM - FOOT_MM
    columns = _count(size_mm[0], across)
    rows = _count(size_mm[1], up)
    if columns * rows > MOST_SHEETS:
        raise BoardError(
            f"this board would take {columns * rows} sheets of paper; mark the holes by the "
            "coordinates of the recording sheet instead."
        )
    return tuple(
        Sheet(c, r, c * (across - OVERLAP_MM), r * (up - OVERLAP_MM), across, up)
        for r in range(rows)
        for c in range(columns)
    )


def _count(length: float, sheet: float) -> int:
    return max(1, math.ceil((length - OVERLAP_MM) / (sheet - OVERLAP_MM) - 1e-9))


def board_pdf(
    footprint: tuple[Point, ...],
    survey: Survey,
    *,
    paper: Paper = Paper.A4,
    unit: LengthUnit = LengthUnit.CM,
    title: str = "",
) -> bytes:
    """The bytes of a PDF: the board's sheets, then the recording sheet.

    Raises
    ------
    BoardError
        If the board is too large for paper.
    """
    xs, ys = zip(*footprint, strict=True)
    size = ((max(xs) - min(xs)) * 1000, (max(ys) - min(ys)) * 1000)
    tiles = sheets(size, paper)
    ensure_application()
    buffer = QBuffer()
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    writer = QPdfWriter(buffer)
    writer.setResolution(RESOLUTION)
    writer.setTitle(f"Survey board: {title or survey.name}")
    writer.setCreator("Grow space light planner")
    writer.setPageLayout(_layout(paper))
    painter = QPainter(writer)
    try:
        for number, tile in enumerate(tiles):
            if number:
                writer.newPage()
            _paint_sheet(painter, footprint, survey, tile, tiles, paper)
        writer.newPage()
        _paint_records(painter, writer, survey, paper, unit, title)
    finally:
        painter.end()
    return bytes(buffer.data().data())


def write_board(
    path: Path,
    footprint: tuple[Point, ...],
    survey: Survey,
    *,
    paper: Paper = Paper.A4,
    unit: LengthUnit = LengthUnit.CM,
    title: str = "",
) -> None:
    """Write the board's PDF to a file; raises ``OSError`` or ``BoardError``."""
    data = board_pdf(footprint, survey, paper=paper, unit=unit, title=title)
    write_atomically(path, data)


def _layout(paper: Paper) -> QPageLayout:
    width, height = paper.size_mm
    size = QPageSize(QSizeF(width, height), QPageSize.Unit.Millimeter, paper.value)
    margins = QMarginsF(0, 0, 0, 0)
    return QPageLayout(size, QPageLayout.Orientation.Portrait, margins, QPageLayout.Unit.Millimeter)


def _in_millimetres(painter: QPainter) -> None:
    painter.resetTransform()
    painter.scale(RESOLUTION / 25.4, RESOLUTION / 25.4)


def _pen(width_mm: float, colour: QColor = _INK) -> QPen:
    pen = QPen(colour, width_mm)
    pen.setJoinStyle(Qt.PenJoinStyle.MiterJoin)
    pen.setCapStyle(Qt.PenCapStyle.FlatCap)
    return pen


def _text(painter: QPainter, place: QRectF, words: str, size_mm: float, flags: int = 0) -> None:
    """Text whose letters are ``size_mm`` high; fonts want whole pixels, so it is scaled down."""
    font = QFont()
    font.setFamilies(_FAMILIES)
    font.setPixelSize(100)
    painter.save()
    painter.setFont(font)
    factor = size_mm / 100
    painter.translate(place.topLeft())
    painter.scale(factor, factor)
    inside = QRectF(0, 0, place.width() / factor, place.height() / factor)
    painter.drawText(inside, flags, words)
    painter.restore()


_CENTRE: Final = int(Qt.AlignmentFlag.AlignCenter)
_LEFT: Final = int(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)


# -- sheets of the board ----------------------------------------------------------------


def _paint_sheet(
    painter: QPainter,
    footprint: tuple[Point, ...],
    survey: Survey,
    tile: Sheet,
    tiles: tuple[Sheet, ...],
    paper: Paper,
) -> None:
    _in_millimetres(painter)
    x0, y0 = min(x for x, _ in footprint), min(y for _, y in footprint)
    frame = QRectF(MARGIN_MM, MARGIN_MM, tile.width, tile.height)

    def on_sheet(x: float, y: float) -> QPointF:
        return QPointF(
            frame.left() + (x - x0) * 1000 - tile.left,
            frame.bottom() - ((y - y0) * 1000 - tile.bottom),
        )

    painter.save()
    painter.setClipRect(frame)
    painter.setPen(_pen(0.3))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawPolygon(QPolygonF([on_sheet(x, y) for x, y in footprint]))
    diameter = survey.grid.hole_diameter * 1000 if survey.grid is not None else 24.0
    for number, (x, y) in enumerate(survey.points, start=1):
        centre = on_sheet(x, y)
        if frame.adjusted(-diameter, -diameter, diameter, diameter).contains(centre):
            _paint_hole(painter, centre, diameter, number)
    painter.restore()
    _paint_marks(painter, frame, tile, tiles)
    _paint_foot(painter, tile, len(tiles), paper)


def _paint_hole(painter: QPainter, centre: QPointF, diameter: float, number: int) -> None:
    painter.setPen(_pen(0.25))
    painter.drawEllipse(centre, diameter / 2, diameter / 2)
    painter.setPen(_pen(0.15))
    arm = min(3.0, diameter / 3)
    painter.drawLine(QPointF(centre.x() - arm, centre.y()), QPointF(centre.x() + arm, centre.y()))
    painter.drawLine(QPointF(centre.x(), centre.y() - arm), QPointF(centre.x(), centre.y() + arm))
    place = QRectF(centre.x() + diameter / 2 + 0.8, centre.y() - 2.5, 14, 5)
    painter.setPen(_pen(0.2))
    _text(painter, place, str(number), 4.0, _LEFT)


def _paint_marks(painter: QPainter, frame: QRectF, tile: Sheet, tiles: tuple[Sheet, ...]) -> None:
    """Crosses in the middle of each overlap, at the same place of the board on both sheets."""
    painter.setPen(_pen(0.15, _QUIET))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawRect(frame)
    columns = max(sheet.column for sheet in tiles)
    rows = max(sheet.row for sheet in tiles)
    half = OVERLAP_MM / 2
    ends_x = [half] * (tile.column > 0) + [tile.width - half] * (tile.column < columns)
    ends_y = [half] * (tile.row > 0) + [tile.height - half] * (tile.row < rows)
    crosses = [(x, tile.height * part) for x in ends_x for part in (0.25, 0.75)]
    crosses += [(tile.width * part, y) for y in ends_y for part in (0.25, 0.75)]
    painter.setPen(_pen(0.2))
    for x, y in crosses:
        centre = QPointF(frame.left() + x, frame.bottom() - y)
        painter.drawEllipse(centre, 2.0, 2.0)
        painter.drawLine(centre - QPointF(4, 0), centre + QPointF(4, 0))
        painter.drawLine(centre - QPointF(0, 4), centre + QPointF(0, 4))


def _paint_foot(painter: QPainter, tile: Sheet, count: int, paper: Paper) -> None:
    """Under each sheet: its name and the bar that shows whether the printer kept the size."""
    width, height = paper.size_mm
    top = height - MARGIN_MM - FOOT_MM
    left = MARGIN_MM
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(_INK)
    painter.drawRect(QRectF(left, top + 8.0, BAR_MM, 1.5))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.setPen(_pen(0.2))
    place = QRectF(left, top + 10.2, BAR_MM, 4.5)
    _text(painter, place, "This bar is 100 mm long. Print at 100 %, without fitting.", 3.2, _LEFT)
    place = QRectF(left + BAR_MM + 6, top + 5, width - left - BAR_MM - 6 - MARGIN_MM, 9)
    words = f"Sheet {tile.name} of {count}: columns A, B, ... from the left, rows 1, 2, ... up"
    _text(painter, place, words, 3.2, _LEFT | int(Qt.TextFlag.TextWordWrap))


# -- recording sheet --------------------------------------------------------------------

_ROW_MM: Final = 7.0
_COLUMNS: Final = 2
_HEAD: Final = (
    "Date", "Meter and its number", "Lamp output, %", "Hanging height", "Lining",
    "Warm-up, minutes", "Sensor height above board", "Remarks",
)  # fmt: skip


def _paint_records(
    painter: QPainter,
    writer: QPdfWriter,
    survey: Survey,
    paper: Paper,
    unit: LengthUnit,
    title: str,
) -> None:
    width, height = paper.size_mm
    across = width - 2 * MARGIN_MM
    block = across / _COLUMNS
    number, page = 1, 0
    while number <= len(survey.points):
        if page:
            writer.newPage()
        _in_millimetres(painter)
        top = _paint_head(painter, title or survey.name, across) if page == 0 else MARGIN_MM
        rows = int((height - MARGIN_MM - top) / _ROW_MM) - 1
        for column in range(_COLUMNS):
            left = MARGIN_MM + column * block
            last = min(number + rows, len(survey.points) + 1)
            if number >= last:
                break
            _paint_table_head(painter, left, top, block)
            for line, hole in enumerate(range(number, last), start=1):
                _paint_row(painter, survey.points[hole - 1], hole, unit, left, top, line, block)
            number = last
        page += 1


def _paint_head(painter: QPainter, title: str, across: float) -> float:
    painter.setPen(_pen(0.2))
    words = f"Readings: {title}"
    # Letters are about 0.6 of their size wide; a long title is set smaller.
    size = min(6.0, across / (0.6 * len(words)))
    _text(painter, QRectF(MARGIN_MM, MARGIN_MM, across, 9), words, size, _LEFT)
    half = across / 2
    for k, words in enumerate(_HEAD):
        left = MARGIN_MM + (k % 2) * half
        line = MARGIN_MM + 12 + (k // 2) * 8
        _text(painter, QRectF(left, line, half, 5), words, 3.4, _LEFT)
        painter.drawLine(QPointF(left + 50, line + 5), QPointF(left + half - 4, line + 5))
    return MARGIN_MM + 12 + (len(_HEAD) + 1) // 2 * 8 + 3


def _paint_table_head(painter: QPainter, left: float, top: float, block: float) -> None:
    for words, at, wide in _cells(block):
        _text(painter, QRectF(left + at, top, wide, _ROW_MM), words, 3.0, _CENTRE)


def _cells(block: float) -> tuple[tuple[str, float, float], ...]:
    rest = (block - 38 - 4) / 2
    return (
        ("hole", 0, 10),
        ("x", 10, 14),
        ("y", 24, 14),
        ("reading", 38, rest),
        ("again", 38 + rest, rest),
    )


def _paint_row(
    painter: QPainter,
    point: Point,
    hole: int,
    unit: LengthUnit,
    left: float,
    top: float,
    line: int,
    block: float,
) -> None:
    words = (str(hole), format_length(point[0], unit), format_length(point[1], unit), "", "")
    painter.setPen(_pen(0.15))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    for text, (_, at, wide) in zip(words, _cells(block), strict=True):
        place = QRectF(left + at, top + line * _ROW_MM, wide, _ROW_MM)
        painter.drawRect(place)
        if text:
            _text(painter, place, text, 2.8, _CENTRE)


def ensure_application() -> None:
    """Text needs a running GUI application; without a screen an offscreen one will do."""
    if QGuiApplication.instance() is None:
        os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
        # Kept alive for the rest of the process: Qt must not lose its only application.
        _APPLICATION.append(QGuiApplication(["planner"]))
