"""From text to rows of cells, and the numbers and lengths in them."""

from __future__ import annotations

import csv
import math
import re
from collections.abc import Set
from dataclasses import dataclass, replace
from functools import cached_property
from typing import Final, Literal

from planner.plan.survey import MAX_READINGS
from planner.units import VULGAR, LengthSyntaxError, LengthUnit, parse_length

MAX_BYTES: Final = 64_000_000
MAX_ROWS: Final = MAX_READINGS + 500
"""Enough for every reading a survey may hold, with headings."""
MAX_COLUMNS: Final = 200

Separator = Literal["tabs", "semicolons", "bars", "commas", "spaces"]
SEPARATORS: Final[dict[str, Separator]] = {
    "\t": "tabs", ";": "semicolons", ",": "commas", " ": "spaces", "|": "bars",
}  # fmt: skip
_COMMENT: Final = re.compile(r"#\s*[^\W\d].*\s|##")


class TableError(ValueError):
    """A table that cannot be read; the message is one sentence with row and column."""


def quoted(text: str) -> str:
    """A cell's text for a message: short, on one line."""
    shown = " ".join(text.split())
    if len(shown) > 30:
        shown = shown[:29] + "…"
    return f"'{shown}'"


@dataclass(frozen=True)
class Cells:
    """Rows of cells as text, blank rows, comments and what is hidden left out.

    ``numbers`` gives each row's number in the source and ``columns`` each column's, from 1;
    ``whole`` are all rows with something in them by their number, to be shown. ``separated``
    says in a word what parted the cells, ``notes`` in sentences what was left out or stands
    elsewhere. ``sheet`` is the name of a workbook's sheet.
    """

    rows: tuple[tuple[str, ...], ...] = ()
    numbers: tuple[int, ...] = ()
    separated: str = ""
    notes: tuple[str, ...] = ()
    sheet: str = ""
    columns: tuple[int, ...] = ()
    whole: tuple[tuple[int, tuple[str, ...]], ...] = ()

    @cached_property
    def width(self) -> int:
        """Cells of the longest row."""
        return max((len(row) for row in self.rows), default=0)

    def number_of(self, column: int) -> int:
        """A column's number in the source, from 1."""
        return self.columns[column] if column < len(self.columns) else column + 1

    def at(self, row: int, column: int) -> str:
        """A cell's text, empty beyond the end of its row."""
        cells = self.rows[row]
        return cells[column] if column < len(cells) else ""


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
    return kept_cells(split, SEPARATORS.get(separator, f"the sign {separator}"))


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


def kept_cells(
    rows: list[tuple[int, list[str]]],
    separated: str,
    notes: tuple[str, ...] = (),
    sheet: str = "",
    hidden: tuple[Set[int], Set[int]] = (frozenset(), frozenset()),
) -> Cells:
    """Cells of numbered rows, without blank rows, comments, indentation and what is hidden.

    ``hidden`` are rows by their numbers and columns, counted from 0. Raises ``TableError``
    where nothing is left, or too many columns.
    """
    whole: list[tuple[int, tuple[str, ...]]] = []
    for number, row in rows:
        cells = [cell.strip() for cell in row]
        while cells and not cells[-1]:
            cells.pop()
        if len(cells) > MAX_COLUMNS:
            raise TableError(
                f"row {number} has {len(cells)} columns; a table of readings may have at most "
                f"{MAX_COLUMNS}."
            )
        if cells:
            whole.append((number, tuple(cells)))
    read = {
        number: row
        for number, row in whole
        if number not in hidden[0] and not _COMMENT.match(row[0] + " ")
    }
    columns = [k for k in range(max(map(len, read.values()), default=0)) if k not in hidden[1]]
    # Columns empty in every row are only indentation.
    while len(columns) > 1 and not any(
        "".join(row[columns[0] : columns[0] + 1]) for row in read.values()
    ):
        columns.pop(0)
    kept = {n: tuple(row[k] for k in columns if k < len(row)) for n, row in read.items()}
    kept = {number: row for number, row in kept.items() if any(row)}
    if not kept:
        raise TableError("the table is empty; copy the readings together with their places.")
    return _unfolded(
        Cells(
            tuple(kept.values()), tuple(kept), separated, notes, sheet,
            tuple(k + 1 for k in columns), tuple(whole),
        )
    )  # fmt: skip


def _unfolded(cells: Cells) -> Cells:
    """Blocks of columns that stand side by side under the same headings, one below the other.

    So are the sheets for writing readings down by hand laid out.
    """
    for top, row in enumerate(cells.rows[:30]):
        for wide in range(2, len(row) // 2 + 1):
            names = [name.casefold() for name in row]
            words = all(re.search(r"[^\W\d_]", name) for name in names)
            if not words or len(row) % wide or names != names[:wide] * (len(row) // wide):
                continue
            rows, numbers = list(cells.rows[:top]), list(cells.numbers[:top])
            rows.append(row[:wide])
            numbers.append(cells.numbers[top])
            for start in range(0, len(row), wide):
                for number, below in zip(
                    cells.numbers[top + 1 :], cells.rows[top + 1 :], strict=True
                ):
                    block = below[start : start + wide]
                    if any(block):
                        rows.append(block)
                        numbers.append(number)
            note = f"{len(row) // wide} blocks of {wide} columns stand side by side."
            return replace(
                cells, rows=tuple(rows), numbers=tuple(numbers), notes=(*cells.notes, note),
                columns=(), whole=(),
            )  # fmt: skip
    return cells


# -- numbers and lengths ------------------------------------------------------------------

LARGEST: Final = 1.0e7
LONGEST_CELL: Final = 40
_SPACES: Final = str.maketrans("", "", " \u00a0\u2009\u202f'’")
_POINT: Final = re.compile(r"[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d{1,2})?")
_COMMA: Final = re.compile(r"[+-]?(?:\d+,?\d*|,\d+)(?:[eE][+-]?\d{1,2})?")
_GROUPED_BY_COMMA: Final = re.compile(r"[+-]?\d{1,3}(?:,\d{3})+(?:\.\d+)?")
_GROUPED_BY_POINT: Final = re.compile(r"[+-]?\d{1,3}(?:\.\d{3})+(?:,\d+)?")
_GROUPED_BY_SPACE: Final = re.compile(r"[+-]?\d{1,3}(?:[ \u00a0\u2009\u202f'’]\d{3})+(?:[.,]\d+)?")
_FRACTION: Final = re.compile(r"[+-]?(?:\d+[\s-]+)?\d+\s*[/⁄]\s*\d+")
_UNIT_AFTER: Final = re.compile(
    r"\s*(µmol|μmol|umol|ppfd|k?lux|k?lx|fc)\s*(?:/?\s*\(?m.{0,12})?$", re.IGNORECASE
)


def decimal_mark(texts: list[str]) -> str:
    """The decimal mark of a table: the point unless commas can only be decimal marks.

    A comma followed by other than three digits, or by three after a leading zero, decides;
    so does a point used as in 1.234,5. Where both marks stand in one number the last is
    the decimal mark.
    """
    commas = points = 0
    for text in texts:
        bare = text.translate(_SPACES)
        if "," in bare and "." in bare:
            if bare.rfind(",") > bare.rfind("."):
                commas += 1
            else:
                points += 1
        elif bare.count(",") == 1 and _COMMA.fullmatch(bare):
            before, after = bare.lstrip("+-").split(",")
            commas += len(after) != 3 or before in {"", "0"}
        elif bare.count(".") == 1 and _POINT.fullmatch(bare):
            before, after = bare.lstrip("+-").split(".")
            points += len(after) != 3 or before in {"", "0"}
    return "," if commas > points else "."


def as_number(text: str, mark: str) -> float | None:
    """The number a cell holds, with this decimal mark, or None when it is no number.

    Thousands may be grouped by spaces, apostrophes or the other mark; a unit of light may
    follow. What is not finite or beyond ten million is no number.
    """
    if len(text) > LONGEST_CELL:
        return None
    stripped = _UNIT_AFTER.sub("", text.strip().replace("−", "-")).strip()
    grouped = _GROUPED_BY_COMMA if mark == "." else _GROUPED_BY_POINT
    if grouped.fullmatch(stripped):
        stripped = stripped.replace("," if mark == "." else ".", "")
    elif _GROUPED_BY_SPACE.fullmatch(stripped):
        stripped = stripped.translate(_SPACES)
    pattern = _POINT if mark == "." else _COMMA
    if not stripped.isascii() or not pattern.fullmatch(stripped):
        return None
    value = float(stripped.replace(",", "."))
    return value if math.isfinite(value) and abs(value) <= LARGEST else None


def as_length(text: str, metres_per_unit: float, mark: str) -> float | None:
    """Metres a cell holds, bare numbers in units of ``metres_per_unit``; None for no length.

    Inches may be written with fractions: 23 5/8, 23-5/8, 5/8, 23⅝, with or without a sign
    for the unit. Another unit may stand behind the number.
    """
    spelt = text.strip().replace("−", "-").replace("⁄", "/")
    if len(spelt) > LONGEST_CELL or not any(sign.isdecimal() or sign in VULGAR for sign in spelt):
        return None
    for sign, fraction in VULGAR.items():
        spelt = spelt.replace(sign, f" {fraction}")
    number = as_number(spelt.strip(), mark)
    if number is not None:
        return number * metres_per_unit
    spelt = re.sub(r"\s*/\s*", "/", spelt.strip())
    spelt = re.sub(r"\binch(?:es)?\b", "in", spelt, flags=re.IGNORECASE)
    if not spelt.replace("″", '"').replace("′", "'").isascii():
        return None
    try:
        metres = parse_length(spelt, LengthUnit.INCH, strict=False)
    except (LengthSyntaxError, OverflowError):
        return None
    return metres if math.isfinite(metres) and abs(metres) <= LARGEST else None


def looks_like_fraction(text: str) -> bool:
    """Whether a cell is written as inches are: with a fraction or an inch sign."""
    stripped = text.strip()
    return (
        bool(_FRACTION.fullmatch(stripped.rstrip('"″').strip()))
        or any(sign in stripped for sign in VULGAR)
        or stripped.endswith(('"', "″"))
    )
