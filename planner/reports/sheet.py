"""Printed sheets: paper, ink and letters in millimetres; for readings, and for every week."""

from __future__ import annotations

import os
import re
import zlib
from collections.abc import Callable
from enum import StrEnum
from typing import TYPE_CHECKING, Final

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
)

from planner.plan.dials import dial
from planner.plan.space import Point
from planner.plan.survey import Survey
from planner.units import LengthUnit, format_length

if TYPE_CHECKING:
    from planner.estimate.stages import Schedule, Week

RESOLUTION: Final = 1200
MARGIN_MM: Final = 10.0
INK: Final = QColor(20, 20, 20)
QUIET: Final = QColor(120, 120, 120)
FAMILIES: Final = ["DejaVu Sans", "Noto Sans", "Segoe UI", "Helvetica Neue", "Arial"]
_APPLICATION: Final[list[QGuiApplication]] = []


class Paper(StrEnum):
    """Sizes a home printer takes."""

    A4 = "a4"
    LETTER = "letter"

    @property
    def size_mm(self) -> tuple[float, float]:
        """Width and height of an upright sheet."""
        return (210.0, 297.0) if self is Paper.A4 else (215.9, 279.4)


def ensure_application() -> None:
    """Text needs a running GUI application; without a screen an offscreen one will do."""
    if QGuiApplication.instance() is None:
        os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
        # Kept alive for the rest of the process: Qt must not lose its only application.
        _APPLICATION.append(QGuiApplication(["planner"]))


def page_layout(paper: Paper) -> QPageLayout:
    """An upright sheet without margins of its own."""
    size = QPageSize(QSizeF(*paper.size_mm), QPageSize.Unit.Millimeter, paper.value)
    upright, unit = QPageLayout.Orientation.Portrait, QPageLayout.Unit.Millimeter
    return QPageLayout(size, upright, QMarginsF(0, 0, 0, 0), unit)


def pdf_of(title: str, paper: Paper, paint: Callable[[QPainter, QPdfWriter], None]) -> bytes:
    """The bytes of a PDF of upright sheets, whatever ``paint`` paints on them."""
    ensure_application()
    buffer = QBuffer()
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    writer = QPdfWriter(buffer)
    writer.setResolution(RESOLUTION)
    writer.setTitle(title)
    writer.setCreator("Grow space light planner")
    writer.setPageLayout(page_layout(paper))
    painter = QPainter(writer)
    try:
        paint(painter, writer)
    finally:
        painter.end()
    return readable(bytes(buffer.data().data()))


def in_millimetres(painter: QPainter) -> None:
    """From now on the painter counts in millimetres from the upper left corner."""
    painter.resetTransform()
    painter.scale(RESOLUTION / 25.4, RESOLUTION / 25.4)


def pen_of(width_mm: float, colour: QColor = INK) -> QPen:
    """A pen of sharp corners and ends."""
    pen = QPen(colour, width_mm)
    pen.setJoinStyle(Qt.PenJoinStyle.MiterJoin)
    pen.setCapStyle(Qt.PenCapStyle.FlatCap)
    return pen


def write(painter: QPainter, place: QRectF, words: str, size_mm: float, flags: int = 0) -> None:
    """Text whose letters are ``size_mm`` high; fonts want whole pixels, so it is scaled down."""
    font = QFont()
    font.setFamilies(FAMILIES)
    font.setPixelSize(100)
    painter.save()
    painter.setFont(font)
    factor = size_mm / 100
    painter.translate(place.topLeft())
    painter.scale(factor, factor)
    inside = QRectF(0, 0, place.width() / factor, place.height() / factor)
    painter.drawText(inside, flags, words)
    painter.restore()


CENTRE: Final = int(Qt.AlignmentFlag.AlignCenter)
LEFT: Final = int(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)


# -- text that is found and copied --------------------------------------------------------

_JOINED: Final = {
    b"<0009>": b"<0020>",
    b"<00A0>": b"<0020>",
    b"<FB00>": b"<00660066>",
    b"<FB01>": b"<00660069>",
    b"<FB02>": b"<0066006C>",
    b"<FB03>": b"<006600660069>",
    b"<FB04>": b"<00660066006C>",
}


def readable(pdf: bytes) -> bytes:
    """A PDF of Qt with the letters it says its glyphs stand for put right.

    Where a font draws a space and a tab alike Qt calls it a tab, and joined letters (fi) by
    their own sign: neither is found by who searches or copies. The tables that tell are
    written anew behind the file, as an incremental update (ISO 32000-1:2008, 7.5.6).
    """
    start = re.search(rb"startxref\s+(\d+)\s+%%EOF\s*$", pdf)
    trailer = re.search(rb"trailer\s*<<(.*?)>>\s*startxref", pdf, re.DOTALL)
    if start is None or trailer is None:
        return pdf
    made, places = bytearray(pdf), []
    for number in sorted({int(found) for found in re.findall(rb"/ToUnicode (\d+) 0 R", pdf)}):
        told = _table_of_letters(pdf, number)
        better = told
        for old, new in _JOINED.items():
            better = better.replace(old, new)
        if better != told:
            data = zlib.compress(better)
            places.append((number, len(made)))
            made += b"%d 0 obj\n<< /Length %d /Filter /FlateDecode >>\nstream\n" % (
                number, len(data),
            )  # fmt: skip
            made += data + b"\nendstream\nendobj\n"
    if not places:
        return pdf
    at = len(made)
    made += b"xref\n"
    for number, place in places:
        made += b"%d 1\n%010d 00000 n \n" % (number, place)
    made += b"trailer\n<<%s/Prev %s\n>>\nstartxref\n%d\n%%%%EOF\n" % (trailer[1], start[1], at)
    return bytes(made)


def _table_of_letters(pdf: bytes, number: int) -> bytes:
    """What an object of a PDF says its glyphs stand for; empty where it cannot be read."""
    head = rb"(?<!\d)%d 0 obj\s*<<([^>]*)>>\s*stream\r?\n(.*?)\r?\nendstream" % number
    found = re.search(head, pdf, re.DOTALL)
    if found is None:
        return b""
    if b"FlateDecode" not in found[1]:
        return found[2]
    try:
        return zlib.decompress(found[2])
    except zlib.error:
        return b""


# -- recording sheet --------------------------------------------------------------------

_ROW_MM: Final = 7.0
_COLUMNS: Final = 2
_HEAD: Final = (
    "Date", "Meter and its number", "Lamp output, %", dial("height").label, "Lining",
    "Warm-up, minutes", "Sensor height above board", "Board made of", "Door shut?",
    "Begun at", "Ended at",
)  # fmt: skip


def paint_records(
    painter: QPainter,
    writer: QPdfWriter,
    survey: Survey,
    paper: Paper,
    unit: LengthUnit,
    title: str,
) -> None:
    """Paint the sheets to write readings on, beginning on the page at hand."""
    width, height = paper.size_mm
    across = width - 2 * MARGIN_MM
    block = across / _COLUMNS
    number, page = 1, 0
    # Hole 1 once more at the end: it tells how far the lamps drifted.
    order = [*range(1, len(survey.points) + 1), 1]
    while number <= len(order):
        if page:
            writer.newPage()
        in_millimetres(painter)
        top = _paint_head(painter, title or survey.name, across) if page == 0 else MARGIN_MM
        rows = int((height - MARGIN_MM - top) / _ROW_MM) - 1
        for column in range(_COLUMNS):
            left = MARGIN_MM + column * block
            last = min(number + rows, len(order) + 1)
            if number >= last:
                break
            _paint_table_head(painter, left, top, block)
            for line, hole in enumerate(order[number - 1 : last - 1], start=1):
                _paint_row(painter, survey.points[hole - 1], hole, unit, left, top, line, block)
            number = last
        page += 1


def _paint_head(painter: QPainter, title: str, across: float) -> float:
    painter.setPen(pen_of(0.2))
    words = f"Readings: {title}"
    # Letters are about 0.6 of their size wide; a long title is set smaller.
    size = min(6.0, across / (0.6 * len(words)))
    write(painter, QRectF(MARGIN_MM, MARGIN_MM, across, 9), words, size, LEFT)
    half = across / 2
    for k, words in enumerate(_HEAD):
        left = MARGIN_MM + (k % 2) * half
        line = MARGIN_MM + 12 + (k // 2) * 8
        write(painter, QRectF(left, line, half, 5), words, 3.4, LEFT)
        painter.drawLine(QPointF(left + 50, line + 5), QPointF(left + half - 4, line + 5))
    return MARGIN_MM + 12 + (len(_HEAD) + 1) // 2 * 8 + 3


def _paint_table_head(painter: QPainter, left: float, top: float, block: float) -> None:
    for words, at, wide in _cells(block):
        write(painter, QRectF(left + at, top, wide, _ROW_MM), words, 3.0, CENTRE)


def _cells(block: float) -> tuple[tuple[str, float, float], ...]:
    rest = (block - 50 - 4) / 2
    return (
        ("hole", 0, 10),
        ("x", 10, 14),
        ("y", 24, 14),
        ("time", 38, 12),
        ("reading", 50, rest),
        ("again", 50 + rest, rest),
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
    words = (str(hole), format_length(point[0], unit), format_length(point[1], unit), "", "", "")
    painter.setPen(pen_of(0.15))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    for text, (_, at, wide) in zip(words, _cells(block), strict=True):
        place = QRectF(left + at, top + line * _ROW_MM, wide, _ROW_MM)
        painter.drawRect(place)
        if text:
            write(painter, place, text, 2.8, CENTRE)


# -- weekly instruction -----------------------------------------------------------------

_SHADE: Final = QColor(232, 232, 232)
_WEEKLY: Final = (
    ("week", "Week", 27.0), ("stage", "Stage", 46.0), ("canopy", "Canopy at", 19.0),
    ("height", "Raise to", 20.0), ("face", "From floor", 20.0), ("output", "Dim to", 16.0),
    ("photoperiod", "Light", 16.0), ("kwh", "kWh", 14.0), ("", "Done", 12.0),
)  # fmt: skip
"""Columns of the schedule's table, what they are called where one sets them, millimetres."""
_EXPLAINED: Final = (
    "Raise to: from the lamp's lit face down to the tops of the plants. From floor: the lit face "
    "above the floor, once the canopy is as high as said."
)


def weekly_pdf(
    schedule: Schedule,
    *,
    paper: Paper = Paper.A4,
    unit: LengthUnit = LengthUnit.CM,
    currency: str = "",
) -> bytes:
    """The bytes of a PDF that says week by week what is to be set; what is set anew is shaded."""
    weeks = schedule.by_week()
    across = paper.size_mm[0] - 2 * MARGIN_MM
    whole = sum(wide for *_, wide in _WEEKLY)

    def paint(painter: QPainter, writer: QPdfWriter) -> None:
        left, number = MARGIN_MM + (across - whole) / 2, 0
        while number < len(weeks) or number == 0:
            if number:
                writer.newPage()
            in_millimetres(painter)
            painter.setPen(pen_of(0.2))
            title = f"Week by week: {schedule.name}"
            size = min(6.0, across / (0.6 * len(title)))
            write(painter, QRectF(left, MARGIN_MM, whole, 9), title, size, LEFT)
            write(painter, QRectF(left, MARGIN_MM + 10, whole, 5), schedule.sums(currency), 3.4)
            wrapped = int(Qt.TextFlag.TextWordWrap)
            write(painter, QRectF(left, MARGIN_MM + 16, whole, 9), _EXPLAINED, 2.8, wrapped)
            top = MARGIN_MM + 27
            rows = int((paper.size_mm[1] - MARGIN_MM - top) / _ROW_MM) - 1
            heads = tuple(name for _, name, _ in _WEEKLY)
            _paint_week(painter, left, top, heads, head=True)
            for line, week in enumerate(weeks[number : number + rows], start=1):
                cells = _cells_of(week, unit)
                _paint_week(painter, left, top + line * _ROW_MM, cells, shaded=week.turned)
            number += rows

    return pdf_of(f"Week by week: {schedule.name}", paper, paint)


def _cells_of(week: Week, unit: LengthUnit) -> tuple[str, ...]:
    """The texts of a line; a stage that cannot be set up has dashes."""
    from planner.estimate.stages import stage_columns  # noqa: PLC0415 - boards need no estimate

    columns = stage_columns(*(key for key, *_ in _WEEKLY if key))
    return (*(column.text(week, unit, tape=True) for column in columns), "")


def _paint_week(
    painter: QPainter,
    left: float,
    top: float,
    texts: tuple[str, ...],
    *,
    head: bool = False,
    shaded: bool = False,
) -> None:
    painter.setPen(pen_of(0.15))
    painter.setBrush(_SHADE if shaded else Qt.BrushStyle.NoBrush)
    for at, ((_, _, wide), text) in enumerate(zip(_WEEKLY, texts, strict=True)):
        place = QRectF(left, top, wide, _ROW_MM)
        if not head:
            painter.drawRect(place)
        # Letters are about 0.55 of their size wide; what is longer is cut.
        most = int((wide - 2) / (0.55 * 2.8))
        shown = text if len(text) <= most else f"{text[: most - 1]}\u2026"
        flags = LEFT if at < 2 else CENTRE
        write(painter, place.adjusted(1, 0, -1, 0), shown, 2.8, flags)
        left += wide
