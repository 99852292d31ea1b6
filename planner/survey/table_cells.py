"""From text or a file to rows of cells, each row with its number in the source."""

from __future__ import annotations

import csv
import re
from dataclasses import dataclass
from typing import Final

from planner.plan.survey import MAX_READINGS
from planner.survey.table_errors import TableError
from planner.survey.table_numbers import as_number
from planner.survey.table_xlsx import is_xlsx, sheet_rows

MAX_BYTES: Final = 64_000_000
MAX_ROWS: Final = MAX_READINGS + 500
"""Enough for every reading a survey may hold, with headings."""
MAX_COLUMNS: Final = 200

_SEPARATORS: Final = {"\t": "tabs", ";": "semicolons", "|": "bars", ",": "commas", " ": "spaces"}
_COMMENT: Final = re.compile(r"#\s*[^\W\d].*\s|##")


@dataclass(frozen=True)
class Cells:
    """Rows of cells as text, blank rows and comments left out.

    ``numbers`` gives each row's number in the source, from 1; ``separated`` says in a word
    what parted the cells.
    """

    rows: tuple[tuple[str, ...], ...]
    numbers: tuple[int, ...]
    separated: str

    @property
    def width(self) -> int:
        """Cells of the longest row."""
        return max((len(row) for row in self.rows), default=0)

    def at(self, row: int, column: int) -> str:
        """A cell's text, empty beyond the end of its row."""
        cells = self.rows[row]
        return cells[column] if column < len(cells) else ""


def cells_of_bytes(data: bytes) -> Cells:
    """Read the bytes of a CSV, TSV, text or XLSX file.

    Raises
    ------
    TableError
        If it is no table, or too large.
    """
    if is_xlsx(data):
        rows, sheet = sheet_rows(data, MAX_ROWS, MAX_COLUMNS)
        return _kept(rows, f"cells of the sheet '{sheet}'")
    return cells_of_text(text_of_bytes(data))


def text_of_bytes(data: bytes) -> str:
    """The text of a CSV, TSV or text file, whatever its encoding.

    Raises
    ------
    TableError
        If the bytes are no text.
    """
    if data.startswith(b"\xd0\xcf\x11\xe0"):
        raise TableError(
            "this is a workbook in the old binary format; save it as .xlsx or as .csv first."
        )
    if data.startswith(b"%PDF"):
        raise TableError("this is a PDF; copy the table into a spreadsheet and save it as .csv.")
    if data.startswith((b"\xff\xfe", b"\xfe\xff")):
        encodings = ["utf-16"]
    else:
        encodings = ["utf-8-sig", "cp1252", "latin-1"]
    for encoding in encodings:
        try:
            text = data.decode(encoding)
        except UnicodeDecodeError:
            continue
        if "\0" in text:
            break
        return text
    raise TableError("this is not a text file; save the table as .csv or .xlsx.")


def cells_of_text(text: str, separator: str | None = None) -> Cells:
    """Read pasted text; cells are parted by tabs, semicolons, bars, commas or spaces.

    Which of them is guessed unless a ``separator`` is given.

    Raises
    ------
    TableError
        If there is nothing in it, or too much.
    """
    text = text.removeprefix("\ufeff").replace("\r\n", "\n").replace("\r", "\n")
    if "\0" in text:
        raise TableError("the text holds zero bytes, so it is not a table; save it as .csv.")
    count = text.count("\n")
    if count > MAX_ROWS:
        raise TableError(
            f"the table has {count} rows; a survey holds at most {MAX_READINGS} readings, so "
            "thin it out or average it first."
        )
    lines = text.split("\n")
    hint = re.fullmatch(r"sep=(.)", lines[0].strip())
    if hint:
        lines[0] = ""
    separator = separator or (hint[1] if hint else _separator(lines))
    if separator == " ":
        split = [(k, line.split()) for k, line in enumerate(lines, 1)]
    else:
        split = _parsed(lines, separator)
    return _kept(split, _SEPARATORS.get(separator, f"the sign {separator}"))


def _separator(lines: list[str]) -> str:
    """What parts the cells: the sign most lines hold, commas only where they are no decimals."""
    some = [line for line in lines if line.strip()][:200]
    for sign in "\t;|":
        if sum(sign in line for line in some) * 2 > len(some):
            return sign
    for sign in "\t;|":
        if any(sign in line for line in some) and not any("," in line for line in some):
            return sign
    with_commas = [line for line in some if "," in line]
    if not with_commas:
        return " " if _all_numbers(some, ".") else ","
    # '12,5 13,0' holds decimal commas between spaces, '12,5, 13' and 'hole,ppfd' do not.
    heading_parts = "," in some[0] and not _all_numbers(some[:1], ",")
    if not heading_parts and _all_numbers(some, ",") and not _ends_with_comma(some):
        if any(len(line.split()) > 1 for line in some):
            return " "
        starts, ends = zip(*(line.strip().split(",", 1) for line in with_commas), strict=True)
        if not _counts_up(list(starts)) and all(len(end) <= 2 for end in ends):
            return " "
    return ","


def _ends_with_comma(lines: list[str]) -> bool:
    """Whether any number ends in a comma, as before a space that only looks well."""
    return any(re.search(r",\s|,$", line) for line in lines)


def _counts_up(texts: list[str]) -> bool:
    """Whether texts are 1, 2, 3, ... as hole numbers are."""
    return [text.strip() for text in texts] == [str(k) for k in range(1, len(texts) + 1)]


def _all_numbers(lines: list[str], mark: str) -> bool:
    """Whether, apart from a heading, all lines are numbers between spaces."""
    body = lines[1:] if len(lines) > 1 else lines
    return all(as_number(part, mark) is not None for line in body for part in line.split())


def _parsed(lines: list[str], separator: str) -> list[tuple[int, list[str]]]:
    reader = csv.reader((line + "\n" for line in lines), delimiter=separator)
    rows: list[tuple[int, list[str]]] = []
    try:
        before = 0
        for row in reader:
            rows.append((before + 1, row))
            before = reader.line_num
    except csv.Error as error:
        raise TableError(
            f"row {reader.line_num + 1} cannot be parted into cells ({error}); check its "
            "quotation marks."
        ) from error
    return rows


def _kept(rows: list[tuple[int, list[str]]], separated: str) -> Cells:
    kept: list[tuple[str, ...]] = []
    numbers: list[int] = []
    for number, row in rows:
        cells = [cell.strip() for cell in row]
        while cells and not cells[-1]:
            cells.pop()
        if not cells or _COMMENT.match(cells[0] + " "):
            continue
        if len(cells) > MAX_COLUMNS:
            raise TableError(
                f"row {number} has {len(cells)} columns; a table of readings may have at most "
                f"{MAX_COLUMNS}."
            )
        kept.append(tuple(cells))
        numbers.append(number)
    if not kept:
        raise TableError("the table is empty; copy the readings together with their places.")
    # Columns empty in every row are only indentation.
    while all(not row[0] for row in kept) and max(map(len, kept)) > 1:
        kept = [row[1:] or ("",) for row in kept]
    return Cells(tuple(kept), tuple(numbers), separated)
