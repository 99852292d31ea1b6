"""A report painted on paper by Qt: the same leaves for the PDF, the preview and the printer.

Text is set by Qt and stays text, drawings stay lines. What came of measuring it beside a
library that prints HTML stands in DEVELOPERS.md. Counts in hundredths of a millimetre, so that
the whole pixels fonts come in are fine enough.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Final

from PySide6.QtCore import QByteArray, QPointF, QRectF, QSizeF, Qt
from PySide6.QtGui import (
    QColor,
    QFont,
    QFontMetricsF,
    QPagedPaintDevice,
    QPainter,
    QTextLayout,
    QTextOption,
)
from PySide6.QtSvg import QSvgRenderer

from planner.reports.drawings import FAINT, INK, QUIET, Picture, printable
from planner.reports.report import Pictures, Points, Report, Section, Table, Warned, Words
from planner.reports.sheet import FAMILIES, Paper, ensure_application, pdf_of

MM: Final = 100.0
"""Units in a millimetre."""
MARGIN: Final = 18 * MM
_FOOT: Final = 8 * MM
_GAP: Final = 2.0 * MM
_COLUMN_GAP: Final = 3.2 * MM
_TITLE, _HEADING, _LEAD, _TEXT, _SMALL = 6.0 * MM, 4.4 * MM, 3.5 * MM, 3.0 * MM, 2.5 * MM
_LEADING: Final = 1.32
"""Height of a line over that of its letters."""
_SHARES: Final = (0.95, 0.9, 0.85, 0.8, 0.75, 0.7)
"""How much smaller letters may be set for a section to stay on its one page."""

Paint = Callable[[QPainter, QPointF], None]


@dataclass(frozen=True)
class _Piece:
    """Something that stays whole: its height, how it is painted at a place, what goes with it.

    ``held`` pieces stay on the page of the next one; ``again`` is painted over it where the
    page before ended within the same table. ``pictures`` stand where they say from its corner.
    """

    height: float
    paint: Paint
    held: bool = False
    again: _Piece | None = None
    new_page: bool = False
    pictures: tuple[tuple[QRectF, Picture], ...] = ()


class Leaves:
    """A report divided among sheets of a paper; painted one by one."""

    def __init__(self, report: Report, paper: Paper) -> None:
        ensure_application()
        self.report, self.paper = report, paper
        width, height = (side * MM for side in paper.size_mm)
        self._size = QSizeF(width, height)
        self._across, self._down = width - 2 * MARGIN, height - 2 * MARGIN - _FOOT
        self._pages = [tuple(page) for page in self._divided()]

    def __len__(self) -> int:
        return len(self._pages)

    def paint(self, painter: QPainter, number: int) -> None:
        """Paint one leaf (from 0) with a painter that counts in hundredths of a millimetre."""
        for top, piece in self._pages[number]:
            piece.paint(painter, QPointF(MARGIN, MARGIN + top))
        foot = _Setter(_SMALL, QUIET, self._across)
        line = QPointF(MARGIN, self._size.height() - MARGIN)
        count = f"{number + 1} / {len(self._pages)}"
        wide = foot.metrics.horizontalAdvance(count) + 4 * MM
        title = foot.metrics.elidedText(
            printable(self.report.title), Qt.TextElideMode.ElideRight, self._across - wide
        )
        foot.set(title).paint(painter, line)
        foot.set(count, right=True).paint(painter, line)

    def picture_at(self, number: int, place: QPointF) -> Picture | None:
        """The drawing at a place of a leaf, in hundredths of a millimetre."""
        for top, piece in self._pages[number]:
            for area, picture in piece.pictures:
                if area.translated(MARGIN, MARGIN + top).contains(place):
                    return picture
        return None

    # -- what stands on which page ----------------------------------------------------------

    def _divided(self) -> Iterator[list[tuple[float, _Piece]]]:
        page: list[tuple[float, _Piece]] = []
        top = 0.0
        pieces = list(self._pieces())
        for k, piece in enumerate(pieces):
            # What is held to the next piece moves on with it.
            need, last = piece.height, k
            while pieces[last].held and last + 1 < len(pieces):
                last += 1
                need += pieces[last].height
            full = top > 0 and top + need > self._down + 1 and need <= self._down
            full = full or (top > 0 and top + piece.height > self._down + 1)
            if page and (full or piece.new_page):
                yield page
                page, top = [], 0.0
                if piece.again is not None:
                    page.append((0.0, piece.again))
                    top = piece.again.height
            page.append((top, piece))
            top += piece.height
        yield page

    def _pieces(self) -> Iterator[_Piece]:
        across = self._across
        title = _Setter(_TITLE, INK, across, bold=True).set(self.report.title)
        about = _after(_Setter(_SMALL, QUIET, across).set(self.report.about), _GAP)
        yield from (title, about)
        after_alone = False
        for number, section in enumerate(self.report.sections):
            taken = 0.0 if number else title.height + about.height
            pieces = self._of_section(section, self._down - taken)
            first = pieces[0]
            if number and (section.alone or after_alone):
                first = replace(first, new_page=True)
            yield first
            yield from pieces[1:]
            after_alone = section.alone

    def _of_section(self, section: Section, room: float) -> list[_Piece]:
        """The pieces of a section; one that stands alone is set smaller until it fits.

        What no page can hold however small is set to be read, on several.
        """

        def set_by(share: float) -> list[_Piece]:
            return list(_set_section(section, self._across, self._down, share))

        def fits(made: list[_Piece]) -> bool:
            return sum(piece.height for piece in made) <= room

        whole = set_by(1.0)
        if not section.alone or fits(whole):
            return whole
        least = set_by(_SHARES[-1])
        if not fits(least):
            return whole
        tried = (set_by(share) for share in _SHARES[:-1])
        return next((made for made in tried if fits(made)), least)


def _after(piece: _Piece, space: float) -> _Piece:
    return replace(piece, height=piece.height + space)


# -- setting text ---------------------------------------------------------------------------


@lru_cache(maxsize=64)
def _letters(size: int, bold: bool) -> tuple[QFont, QFontMetricsF]:
    font = QFont()
    font.setFamilies(FAMILIES)
    font.setPixelSize(size)
    font.setBold(bold)
    font.setHintingPreference(QFont.HintingPreference.PreferNoHinting)
    return font, QFontMetricsF(font)


class _Setter:
    """Sets text of one size and colour in lines of a width."""

    def __init__(self, size: float, colour: str, width: float, *, bold: bool = False) -> None:
        self.font, self.metrics = _letters(max(round(size), 1), bold)
        self.size, self.colour, self.width = size, QColor(colour), width

    def set(self, text: str, *, right: bool = False, indent: float = 0.0, bold: int = 0) -> _Piece:
        """A piece with the text in as many lines as it needs; its first ``bold`` signs are so."""
        option = QTextOption()
        option.setWrapMode(QTextOption.WrapMode.WrapAtWordBoundaryOrAnywhere)
        if right:
            option.setAlignment(Qt.AlignmentFlag.AlignRight)
        layout = QTextLayout(_lines(text), self.font)
        layout.setTextOption(option)
        if bold:
            strong = QTextLayout.FormatRange()
            strong.start, strong.length = 0, bold
            strong.format.setFontWeight(QFont.Weight.Bold)
            layout.setFormats([strong])
        layout.beginLayout()
        height = 0.0
        while (line := layout.createLine()).isValid():
            line.setLineWidth(max(self.width - indent, 1.0))
            line.setPosition(QPointF(indent, height))
            height += _LEADING * self.size
        layout.endLayout()
        colour = self.colour

        def paint(painter: QPainter, at: QPointF) -> None:
            painter.setPen(colour)
            layout.draw(painter, at)

        return _Piece(height, paint)


@lru_cache(maxsize=4096)
def _lines(text: str) -> str:
    # A break inside a paragraph is Unicode's line separator; numbers keep their units.
    joined = printable(text).replace("\n", "\u2028")
    return re.sub(r"(?<=\d) (?=[%µ°])", "\u00a0", joined)


def _set_section(section: Section, across: float, down: float, share: float) -> Iterator[_Piece]:
    heading = _Setter(_HEADING * share, INK, across, bold=True).set(section.title)
    yield _shifted(heading, 4 * MM, held=True)
    for block, follows in zip(section.blocks, (*section.blocks[1:], None), strict=True):
        match block:
            case Words():
                size = _LEAD if block.large else _SMALL if block.quiet else _TEXT
                colour = QUIET if block.quiet else INK
                made = _after(_Setter(size * share, colour, across).set(block.text), _GAP * share)
                # What leads to a table or a drawing stays with it.
                held = not block.quiet and isinstance(follows, Table | Pictures)
                yield replace(made, held=held)
            case Points():
                for line in block.lines:
                    yield _point(line, across, _TEXT * share)
                yield _space(_GAP * share)
            case Table():
                yield from _table(block, across, share)
            case Pictures():
                *before, last = _pictures(block, across, down - 20 * MM, share)
                yield from before
                # Small print under a drawing is about it.
                yield replace(last, held=isinstance(follows, Words) and follows.quiet)
            case Warned():
                yield from _warned(block, across, share)


def _shifted(piece: _Piece, space: float, *, held: bool = False) -> _Piece:
    """A piece with space over it."""

    def paint(painter: QPainter, at: QPointF) -> None:
        piece.paint(painter, at + QPointF(0, space))

    return _Piece(piece.height + space, paint, held)


def _space(height: float) -> _Piece:
    return _Piece(height, lambda _painter, _at: None)


def _point(line: str, across: float, size: float) -> _Piece:
    setter = _Setter(size, INK, across)
    dot, words = setter.set("•"), setter.set(line, indent=4 * MM)

    def paint(painter: QPainter, at: QPointF) -> None:
        dot.paint(painter, at)
        words.paint(painter, at)

    return _Piece(words.height + 0.6 * MM, paint)


def _warned(block: Warned, across: float, share: float) -> Iterator[_Piece]:
    title = f"{block.title}."
    words = _Setter(_TEXT * share, INK, across)
    sentence = words.set(f"{title} {block.sentence}", bold=len(title))
    yield _after(sentence, 0.8 * MM * share)
    for line in block.rest:
        yield _point(line, across, _SMALL * share)
    if block.rest:
        yield _space(_GAP * share)


# -- drawings -------------------------------------------------------------------------------


def _pictures(block: Pictures, across: float, down: float, share: float) -> Iterator[_Piece]:
    """Drawings in rows, at their size where the paper is wide enough; a table behind the last."""
    row: list[tuple[Picture, float, float]] = []
    used = 0.0
    for picture in block.every:
        part = min(1.0, across / (picture.width * MM), down / (picture.height * MM))
        width, height = picture.width * MM * part, picture.height * MM * part
        if row and used + width > across + 1:
            yield _row(row, share)
            row, used = [], 0.0
        row.append((picture, width, height))
        used += width + _GAP
    last = _row(row, share) if row else _space(0.0)
    beside = block.beside
    room = across - used - _GAP
    table = [] if beside is None or room < across / 4 else list(_table(beside, room, share))
    tall = sum(piece.height for piece in table)
    if table and tall <= max(last.height, down / 2):
        yield _abreast(last, table, used + _GAP)
        return
    yield last
    if beside is not None:
        yield from _table(beside, across, share)


def _abreast(left: _Piece, right: Sequence[_Piece], shift: float) -> _Piece:
    """A piece with others beside it, one under the other."""

    def paint(painter: QPainter, at: QPointF) -> None:
        left.paint(painter, at)
        place = at + QPointF(shift, 0)
        for piece in right:
            piece.paint(painter, place)
            place += QPointF(0, piece.height)

    tall = max(left.height, sum(piece.height for piece in right))
    return _Piece(tall, paint, pictures=left.pictures)


def _row(row: Sequence[tuple[Picture, float, float]], share: float) -> _Piece:
    tall = max(height for _, _, height in row)
    captions = [_Setter(_SMALL * share, QUIET, width).set(one.caption) for one, width, _ in row]
    below = max((c.height for c, (one, _, _) in zip(captions, row, strict=True) if one.caption),
                default=0.0)  # fmt: skip

    def paint(painter: QPainter, at: QPointF) -> None:
        left = at.x()
        for (picture, width, height), caption in zip(row, captions, strict=True):
            drawing = QSvgRenderer(QByteArray(picture.svg.encode()))
            drawing.render(painter, QRectF(left, at.y() + tall - height, width, height))
            if picture.caption:
                caption.paint(painter, QPointF(left, at.y() + tall))
            left += width + _GAP

    lefts = [sum(wide + _GAP for _, wide, _ in row[:k]) for k in range(len(row))]
    places = tuple(
        (QRectF(left, tall - height, width, height), picture)
        for left, (picture, width, height) in zip(lefts, row, strict=True)
    )
    return _Piece(tall + below + _GAP, paint, pictures=places)


# -- tables ---------------------------------------------------------------------------------


def _table(block: Table, across: float, share: float) -> Iterator[_Piece]:
    if block.title:
        title = _Setter(_TEXT * share, INK, across, bold=True).set(block.title)
        yield _shifted(title, 1.0 * MM, held=True)
    size = _SMALL * share * 1.08
    widths = _widths(block, across, size)
    if sum(widths) + _COLUMN_GAP * (len(widths) - 1) > across + 1:
        # Many columns: smaller letters rather than words cut in two.
        part = max(across / (sum(widths) + _COLUMN_GAP * len(widths)), 0.6)
        size *= part
        widths = _widths(block, across, size)
    head = _cells(block.heads, block.numbers, widths, size, QUIET, line=True)
    yield _Piece(head.height, head.paint, held=True)
    for row in block.rows:
        made = _cells(row, block.numbers, widths, size, INK)
        yield _Piece(made.height, made.paint, again=head)
    yield _space(_GAP * share)


def _widths(block: Table, across: float, size: float) -> list[float]:
    """Widths of the columns: what their texts need; those that need much share what is left."""
    metrics = _Setter(size, INK, across).metrics
    columns = range(len(block.heads))

    def wide(text: str) -> float:
        return metrics.horizontalAdvance(_lines(text)) + 0.02 * MM

    texts = [[row[k] for row in block.rows] for k in columns]
    heads = [wide(head) for head in block.heads]
    # Headings go over several lines before anything else does.
    words = [max(wide(word) for word in (*head.split(), "")) for head in block.heads]
    cells = [max(wide(text) for text in (*texts[k], "")) for k in columns]
    least = [
        max([words[k], *(wide(word) for text in texts[k] for word in text.split())])
        for k in columns
    ]
    room = across - _COLUMN_GAP * (len(heads) - 1)
    natural = [max(pair) for pair in zip(words, cells, strict=True)]
    wanted = [max(head - width, 0.0) for head, width in zip(heads, natural, strict=True)]
    if sum(natural) <= room:
        part = min(1.0, (room - sum(natural)) / max(sum(wanted), 1e-9))
        return [width + part * more for width, more in zip(natural, wanted, strict=True)]
    found = list(natural)
    # Columns wider than an even share of what is left are cut to it, never under their words.
    open_ = [k for k in columns if k not in block.numbers] or list(columns)
    fixed = sum(natural[k] for k in columns if k not in open_)
    while open_:
        even = (room - fixed) / len(open_)
        small = [k for k in open_ if natural[k] <= even or least[k] >= even]
        if not small:
            for k in open_:
                found[k] = even
            break
        for k in small:
            found[k] = natural[k] if natural[k] <= even else least[k]
            fixed += found[k]
            open_.remove(k)
    return found


def _cells(
    texts: Sequence[str],
    numbers: Sequence[int],
    widths: Sequence[float],
    size: float,
    colour: str,
    *,
    line: bool = False,
) -> _Piece:
    set_ = [
        _Setter(size, colour, width).set(text, right=k in numbers)
        for k, (text, width) in enumerate(zip(texts, widths, strict=True))
    ]
    tall = max((one.height for one in set_), default=0.0)
    lefts = [sum(widths[:k]) + _COLUMN_GAP * k for k in range(len(widths))]
    right = lefts[-1] + widths[-1] if lefts else 0.0

    def paint(painter: QPainter, at: QPointF) -> None:
        for left, one in zip(lefts, set_, strict=True):
            # Headings stand on their line, whatever their number of lines.
            drop = tall - one.height if line else 0.0
            one.paint(painter, at + QPointF(left, drop))
        pen = painter.pen()
        pen.setColor(QColor(FAINT))
        pen.setWidthF(0.25 * MM if line else 0.1 * MM)
        painter.setPen(pen)
        below = at.y() + tall + 0.3 * MM
        painter.drawLine(QPointF(at.x(), below), QPointF(at.x() + right, below))

    return _Piece(tall + 1.0 * MM, paint)


# -- PDF and printer ------------------------------------------------------------------------


def paint_leaves(leaves: Leaves, painter: QPainter, device: QPagedPaintDevice) -> None:
    """Paint all leaves with a painter of a device whose page layout is that of their paper."""
    painter.setRenderHints(
        QPainter.RenderHint.Antialiasing | QPainter.RenderHint.SmoothPixmapTransform
    )
    for number in range(len(leaves)):
        if number:
            device.newPage()
        painter.resetTransform()
        painter.scale(device.logicalDpiX() / 25.4 / MM, device.logicalDpiY() / 25.4 / MM)
        leaves.paint(painter, number)


def report_pdf(report: Report, paper: Paper = Paper.A4) -> bytes:
    """The report as the bytes of a PDF file, its text selectable."""
    leaves = Leaves(report, paper)
    return pdf_of(
        printable(report.title),
        paper,
        lambda painter, writer: paint_leaves(leaves, painter, writer),
    )
