"""The survey board at its true size, and a sheet to write the readings on.

A PDF of several sheets to be glued together: each shows its part of the board with
registration marks where sheets meet and a bar of exactly 100 mm. Print without scaling.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Final

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import (
    QColor,
    QPainter,
    QPdfWriter,
    QPolygonF,
)

from planner.plan.plan import Plan
from planner.plan.space import Point, side_of
from planner.plan.survey import Survey
from planner.plan.survey_edits import outline_read
from planner.reports.sheet import (
    CENTRE,
    INK,
    LEFT,
    MARGIN_MM,
    QUIET,
    Paper,
    in_millimetres,
    paint_records,
    pdf_of,
    pen_of,
    write,
)
from planner.units import LengthUnit

BAR_MM: Final = 100.0
FOOT_MM: Final = 16.0
OVERLAP_MM: Final = 10.0
MOST_SHEETS: Final = 200
CLEARANCE_MM: Final = 2.0
"""By so much the board is cut inside the walls, so that it goes in."""


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


@dataclass(frozen=True)
class Look:
    """What else a board shows.

    The number of the wall that is the door; black over all but the holes; what the meter
    should read at each hole by the plan.
    """

    door: int | None = None
    black: bool = False
    expected: tuple[float, ...] = ()


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


@dataclass(frozen=True)
class _Board:
    """What every sheet of a board is painted from."""

    footprint: tuple[Point, ...]
    survey: Survey
    tiles: tuple[Sheet, ...]
    paper: Paper
    look: Look


def board_pdf(
    footprint: tuple[Point, ...],
    survey: Survey,
    *,
    paper: Paper = Paper.A4,
    unit: LengthUnit = LengthUnit.CM,
    title: str = "",
    look: Look | None = None,
) -> bytes:
    """The bytes of a PDF: the board's sheets, how they go together, and the recording sheet.

    Raises
    ------
    BoardError
        If the board is too large for paper.
    """
    xs, ys = zip(*footprint, strict=True)
    size = ((max(xs) - min(xs)) * 1000, (max(ys) - min(ys)) * 1000)
    tiles = sheets(size, paper)
    board = _Board(footprint, survey, tiles, paper, look or Look())

    def paint(painter: QPainter, writer: QPdfWriter) -> None:
        for number, tile in enumerate(tiles):
            if number:
                writer.newPage()
            _paint_sheet(painter, board, tile)
        if len(tiles) > 1:
            writer.newPage()
            _paint_overview(painter, board)
        writer.newPage()
        paint_records(painter, writer, survey, paper, unit, title)

    return pdf_of(f"Survey board: {title or survey.name}", paper, paint)


def board_of_survey(
    plan: Plan,
    survey: Survey,
    paper: Paper,
    unit: LengthUnit,
    *,
    black: bool = False,
    expected: Sequence[float] = (),
) -> bytes:
    """``board_pdf`` of a survey of a plan; its door shows where the board fills the footprint."""
    outline = outline_read(plan, survey)
    door = plan.space.door if outline == plan.space.footprint else None
    look, title = Look(door, black, tuple(expected)), f"{plan.name}, {survey.name}"
    return board_pdf(outline, survey, paper=paper, unit=unit, title=title, look=look)


# -- sheets of the board ----------------------------------------------------------------


def _paint_sheet(painter: QPainter, board: _Board, tile: Sheet) -> None:
    footprint, survey, look = board.footprint, board.survey, board.look
    in_millimetres(painter)
    x0, y0 = min(x for x, _ in footprint), min(y for _, y in footprint)
    frame = QRectF(MARGIN_MM, MARGIN_MM, tile.width, tile.height)

    def on_sheet(x: float, y: float) -> QPointF:
        return QPointF(
            frame.left() + (x - x0) * 1000 - tile.left,
            frame.bottom() - ((y - y0) * 1000 - tile.bottom),
        )

    painter.save()
    painter.setClipRect(frame)
    painter.setPen(pen_of(0.3))
    painter.setBrush(INK if look.black else Qt.BrushStyle.NoBrush)
    _paint_outline(painter, board, on_sheet, 2.4)
    diameter = survey.grid.hole_diameter * 1000 if survey.grid is not None else 24.0
    holes = [on_sheet(x, y) for x, y in survey.points]
    taken = [_around(centre, diameter) for centre in holes]
    ink = Qt.GlobalColor.white if look.black else INK
    for number, (centre, its) in enumerate(zip(holes, tuple(taken), strict=True), start=1):
        if frame.intersects(its):
            _paint_hole(painter, centre, diameter, black=look.black)
        words = str(number)
        if look.expected:
            words += f"\n≈ {look.expected[number - 1]:.0f}"
        # A number stands whole on the sheet its hole is on, over no other hole.
        place = (
            _label_place(centre, diameter, words, frame, taken) if frame.contains(centre) else None
        )
        if place is not None:
            taken.append(place)
            painter.setPen(pen_of(0.2, QColor(ink)))
            write(painter, place, words, _LABEL_MM, CENTRE)
    painter.restore()
    _paint_marks(painter, frame, tile, board.tiles, taken[: len(holes)], taken)
    _paint_foot(painter, board, tile)


def _paint_outline(
    painter: QPainter, board: _Board, at: Callable[[float, float], QPointF], width: float
) -> list[Point]:
    """The line the board is cut along, and the door on it so wide; its corners in metres."""
    cut = _inside(board.footprint, CLEARANCE_MM / 1000)
    corners = [at(x, y) for x, y in cut]
    painter.drawPolygon(QPolygonF(corners))
    door = board.look.door
    if door is not None:
        painter.setPen(pen_of(width, QUIET))
        painter.drawLine(corners[door % len(cut)], corners[(door + 1) % len(cut)])
    return cut


_LABEL_MM: Final = 3.6


def _around(centre: QPointF, diameter: float) -> QRectF:
    return QRectF(centre.x() - diameter / 2, centre.y() - diameter / 2, diameter, diameter)


def _label_place(
    centre: QPointF, diameter: float, words: str, frame: QRectF, taken: list[QRectF]
) -> QRectF | None:
    """Where a number stands beside its hole: whole on the sheet, over nothing else."""
    lines = words.split("\n")
    wide = 0.75 * _LABEL_MM * max(len(line) for line in lines) + 1
    high = 1.3 * _LABEL_MM * len(lines)
    away = diameter / 2 + 0.6
    right, left = centre.x() + away, centre.x() - away - wide
    below, above = centre.y() + away, centre.y() - away - high
    beside = centre.y() - high / 2
    for x, y in (
        (right, beside), (left, beside), (centre.x() - wide / 2, below),
        (centre.x() - wide / 2, above), (right, below), (left, above), (right, above),
        (left, below),
    ):  # fmt: skip
        place = QRectF(x, y, wide, high)
        if frame.contains(place) and not any(place.intersects(other) for other in taken):
            return place
    return None


def _inside(footprint: tuple[Point, ...], by: float) -> list[Point]:
    """A footprint (counter-clockwise) with every wall moved inwards, in its own unit."""
    count = len(footprint)
    moved = []
    for k in range(count):
        (ax, ay), (bx, by_), (cx, cy) = (footprint[(k + n) % count] for n in (-1, 0, 1))
        first, second = math.hypot(bx - ax, by_ - ay), math.hypot(cx - bx, cy - by_)
        u, v = ((bx - ax) / first, (by_ - ay) / first), ((cx - bx) / second, (cy - by_) / second)
        # Corner of the two lines moved to their left: b + by (v - u) / (u × v), or straight on.
        cross = u[0] * v[1] - u[1] * v[0]
        if abs(cross) < 1e-6:
            moved.append((bx - by * u[1], by_ + by * u[0]))
        else:
            moved.append((bx + by * (v[0] - u[0]) / cross, by_ + by * (v[1] - u[1]) / cross))
    return moved


def _paint_hole(painter: QPainter, centre: QPointF, diameter: float, *, black: bool) -> None:
    painter.setBrush(Qt.GlobalColor.white if black else Qt.BrushStyle.NoBrush)
    painter.setPen(pen_of(0.25))
    painter.drawEllipse(centre, diameter / 2, diameter / 2)
    painter.setPen(pen_of(0.15))
    arm = min(3.0, diameter / 3)
    painter.drawLine(QPointF(centre.x() - arm, centre.y()), QPointF(centre.x() + arm, centre.y()))
    painter.drawLine(QPointF(centre.x(), centre.y() - arm), QPointF(centre.x(), centre.y() + arm))


_PARTS: Final = (0.25, 0.75, 0.35, 0.65, 0.15, 0.85, 0.5, 0.45, 0.55, 0.2, 0.8, 0.3, 0.7)


def _paint_marks(
    painter: QPainter,
    frame: QRectF,
    tile: Sheet,
    tiles: tuple[Sheet, ...],
    holes: list[QRectF],
    taken: list[QRectF],
) -> None:
    """Crosses in the middle of each overlap, at the same place of the board on both sheets.

    Each sheet is cut along its right and upper edge and glued over the strip of its neighbour,
    which has a dashed line and says so.
    """
    painter.setPen(pen_of(0.15, QUIET))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawRect(frame)
    columns = max(sheet.column for sheet in tiles)
    rows = max(sheet.row for sheet in tiles)
    half = OVERLAP_MM / 2
    ends_x = [half] * (tile.column > 0) + [tile.width - half] * (tile.column < columns)
    ends_y = [half] * (tile.row > 0) + [tile.height - half] * (tile.row < rows)

    # Chosen by the holes alone, not by what else is on this sheet: both sheets choose alike.
    near = 0.75 * _LABEL_MM * 5 + 1
    wide = [hole.adjusted(-near, -near, near, near) for hole in holes]

    def free(along: list[QPointF]) -> list[QPointF]:
        """The first two of these places over no hole, and over no number where there is room."""
        for kept_clear in (wide, holes):
            open_ = [p for p in along if not any(_around(p, 8.0).intersects(o) for o in kept_clear)]
            if len(open_) > 1:
                return open_[:2]
        return []

    def at(x: float, y: float) -> QPointF:
        return QPointF(frame.left() + x, frame.bottom() - y)

    crosses: list[QPointF] = []
    for x in ends_x:
        crosses += free([at(x, tile.height * part) for part in _PARTS])
    for y in ends_y:
        crosses += free([at(tile.width * part, y) for part in _PARTS])
    dashes = pen_of(0.15, QUIET)
    dashes.setStyle(Qt.PenStyle.DashLine)
    painter.setPen(dashes)
    if tile.column > 0:
        painter.drawLine(at(OVERLAP_MM, 0), at(OVERLAP_MM, tile.height))
    if tile.row > 0:
        painter.drawLine(at(0, OVERLAP_MM), at(tile.width, OVERLAP_MM))
    painter.setPen(pen_of(0.2, QUIET))
    edges = (
        (tile.column > 0, "glue", [at(half, tile.height * part) for part in _PARTS]),
        (tile.row > 0, "glue", [at(tile.width * part, half) for part in _PARTS]),
        (tile.column < columns, "cut", [at(tile.width - 5, tile.height * p) for p in _PARTS]),
        (tile.row < rows, "cut", [at(tile.width * p, tile.height - 3) for p in _PARTS]),
    )
    kept = [*taken, *(_around(centre, 8.0) for centre in crosses)]
    for there, words, along in edges:
        boxes = (QRectF(p.x() - 4, p.y() - 2, 8, 4) for p in along)
        place = next((b for b in boxes if not any(b.intersects(o) for o in kept)), None)
        if there and place is not None:
            write(painter, place, words, 2.8, CENTRE)
    painter.setPen(pen_of(0.2, QUIET))
    for centre in crosses:
        painter.drawEllipse(centre, 2.0, 2.0)
        painter.drawLine(centre - QPointF(4, 0), centre + QPointF(4, 0))
        painter.drawLine(centre - QPointF(0, 4), centre + QPointF(0, 4))


OVERVIEW_MM: Final = 150.0
"""The longer side of the board in the overview, at most."""


def _paint_overview(painter: QPainter, board: _Board) -> None:
    """How the sheets go together: their names and overlaps under the outline and the holes."""
    footprint, tiles, paper = board.footprint, board.tiles, board.paper
    in_millimetres(painter)
    x0, y0 = min(x for x, _ in footprint), min(y for _, y in footprint)
    wide = max(tile.left + tile.width for tile in tiles)
    high = max(tile.bottom + tile.height for tile in tiles)
    across = paper.size_mm[0] - 2 * MARGIN_MM
    scale = min(OVERVIEW_MM / max(wide, high), (across - 20) / wide)
    left, bottom = (paper.size_mm[0] - wide * scale) / 2, MARGIN_MM + 30 + high * scale

    def at(x_mm: float, y_mm: float) -> QPointF:
        return QPointF(left + x_mm * scale, bottom - y_mm * scale)

    def place(x: float, y: float) -> QPointF:
        return at((x - x0) * 1000, (y - y0) * 1000)

    painter.setPen(pen_of(0.2))
    heading = QRectF(MARGIN_MM, MARGIN_MM, across, 9)
    write(painter, heading, f"How the {len(tiles)} sheets go together", 6.0, LEFT)
    below = heading.translated(0, 10)
    write(painter, below, "Seen from above; the near side is down.", 3.6, LEFT)
    painter.setBrush(QColor(225, 225, 225))
    painter.setPen(pen_of(0.4))
    cut = _paint_outline(painter, board, place, 1.6)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.setPen(pen_of(0.2, QUIET))
    for x, y in board.survey.points:
        painter.drawEllipse(place(x, y), 0.8, 0.8)
    for tile in tiles:
        frame = QRectF(
            at(tile.left, tile.bottom + tile.height), at(tile.left + tile.width, tile.bottom)
        )
        painter.setPen(pen_of(0.25))
        painter.drawRect(frame)
        write(painter, frame, tile.name, 6.0, CENTRE)
    xs, ys = zip(*cut, strict=True)
    told = (
        f"Cut out, the board measures {(max(xs) - min(xs)) * 1000:.0f} by "
        f"{(max(ys) - min(ys)) * 1000:.0f} mm.",
        "Cut each sheet along its right and upper edge where it says so, lay it over the strip of",
        "its neighbour up to the dashed line, cross on cross, and glue.",
        _door_words(board.footprint, board.look),
    )
    painter.setPen(pen_of(0.2))
    for number, words in enumerate(told):
        line = QRectF(MARGIN_MM, bottom + 8 + 6 * number, across, 6)
        write(painter, line, words, 3.6, LEFT)


def _door_words(footprint: tuple[Point, ...], look: Look) -> str:
    """Where the door is, as one who looks at the board from its near side has it."""
    if look.door is None:
        return ""
    side = side_of(footprint, look.door)
    return f"The door is on the {side} side, a thick grey edge."


def _paint_foot(painter: QPainter, board: _Board, tile: Sheet) -> None:
    """Under each sheet: its name and place among all, which way it lies, and the bar.

    The bar shows whether the printer kept the size.
    """
    tiles = board.tiles
    width, height = board.paper.size_mm
    top = height - MARGIN_MM - FOOT_MM
    left = MARGIN_MM
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(INK)
    painter.drawRect(QRectF(left, top + 8.0, BAR_MM, 1.5))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.setPen(pen_of(0.2))
    place = QRectF(left, top + 10.2, BAR_MM, 4.5)
    write(painter, place, "This bar is 100 mm long. Print at 100 %, without fitting.", 3.2, LEFT)
    words = f"The near side is down. Cut {CLEARANCE_MM:.0f} mm inside the walls, along the line"
    words += f". {_door_words(board.footprint, board.look)}".rstrip()
    write(painter, QRectF(left, top + 2.2, width - 2 * MARGIN_MM, 4.5), words, 3.2, LEFT)
    place = QRectF(left + BAR_MM + 6, top + 7.5, 44, 8)
    words = f"Sheet {tile.name} of {len(tiles)}"
    write(painter, place, words, 4.2, LEFT)
    columns = max(sheet.column for sheet in tiles) + 1
    rows = max(sheet.row for sheet in tiles) + 1
    room = QRectF(width - MARGIN_MM - 34, top + 7, 34, 9)
    cell = min(room.width() / columns, room.height() / rows)
    for sheet in tiles:
        x, y = (
            room.right() - (columns - sheet.column) * cell,
            room.bottom() - (sheet.row + 1) * cell,
        )
        painter.setBrush(QUIET if sheet == tile else Qt.BrushStyle.NoBrush)
        painter.drawRect(QRectF(x, y, cell, cell))
    painter.setBrush(Qt.BrushStyle.NoBrush)
