"""From the bytes of a file to sheets of cells: text by itself, workbooks by python-calamine.

A workbook is read from a copy of what was looked at before: packed sizes, cells and their
places are bounded, so that a small file cannot ask for the whole memory. What the reader does
not tell (hidden rows and columns, cells shown in percent, formulas never calculated) is taken
from the same sheets by patterns.
"""

from __future__ import annotations

import datetime as dt
import html
import io
import itertools
import re
import struct
import zipfile
import zlib
from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Any, Final
from xml.parsers import expat

from planner.plan.survey import MAX_READINGS
from planner.survey.table_cells import (
    MAX_COLUMNS,
    MAX_ROWS,
    Cells,
    TableError,
    cells_of_text,
    kept_cells,
    text_of_bytes,
)

MAX_UNPACKED_BYTES: Final = 60_000_000
MAX_SHEET_CELLS: Final = 300_000
MAX_SHEETS: Final = 60


def sheets_of_bytes(data: bytes) -> tuple[Cells, ...]:
    """Read the bytes of a CSV, TSV, text, XLSX or ODS file: every filled sheet in sight.

    Raises
    ------
    TableError
        If it is no table, or too large.
    """
    if not is_workbook(data):
        return (cells_of_text(text_of_bytes(data)),)
    found = tuple(_sheets(data))
    if not found:
        raise TableError("the workbook holds no filled sheet; enter the readings in the first one.")
    return found


# -- workbooks ---------------------------------------------------------------------------

_BROKEN: Final = (
    zipfile.BadZipFile, zlib.error, KeyError, EOFError, OSError, ValueError, IndexError,
    NotImplementedError, RuntimeError, struct.error, expat.ExpatError,
)  # fmt: skip
"""What a damaged archive raises; RuntimeError stands for one locked by a password."""

_DAMAGED: Final = "the workbook is damaged or locked; open it in a spreadsheet and save it as .csv."
_LARGE: Final = "the workbook is too large; copy the readings into a new one."


def is_workbook(data: bytes) -> bool:
    """Whether the bytes are a packed workbook."""
    return data.startswith(b"PK")


@dataclass
class _Marks:
    """What a sheet's own text tells beside its values; rows and columns count from 0.

    ``instead`` holds what takes the place of a value: the text of an error, '=' where a
    formula was never calculated, '%' where a number is shown in percent.
    """

    hidden_rows: set[int] = field(default_factory=set)
    hidden_columns: set[int] = field(default_factory=set)
    instead: dict[tuple[int, int], str] = field(default_factory=dict)

    def check_place(self, row: int, column: int) -> None:
        if column >= MAX_COLUMNS:
            raise TableError(
                f"row {row + 1} has more than {MAX_COLUMNS} columns; copy the readings into a "
                "sheet of their own."
            )
        if row >= 2 * MAX_ROWS:
            raise TableError(
                f"the sheet reaches down to row {row + 1}; a survey holds at most {MAX_READINGS} "
                "readings, so thin them out or average them first."
            )


def _sheets(data: bytes) -> Iterator[Cells]:
    """The filled sheets in sight of a workbook."""
    import python_calamine as calamine  # noqa: PLC0415 - only when a workbook is read

    try:
        parts = _parts(data)
        marks = _ods_marks(parts) if "content.xml" in parts else _xlsx_marks(parts)
        packed = io.BytesIO()
        with zipfile.ZipFile(packed, "w") as book:
            for name, part in parts.items():
                book.writestr(name, part)
        packed.seek(0)
        with calamine.load_workbook(packed) as opened:
            for number, told in enumerate(opened.sheets_metadata[:MAX_SHEETS]):
                in_sight = told.visible is calamine.SheetVisibleEnum.Visible
                if not in_sight or told.typ is not calamine.SheetTypeEnum.WorkSheet:
                    continue
                values = opened.get_sheet_by_index(number).to_python(skip_empty_area=False)
                its = marks.get(told.name, _Marks())
                rows, notes = _as_text(values, its)
                hidden = {row + 1 for row in its.hidden_rows}, its.hidden_columns
                if any(number not in hidden[0] for number, _ in rows):
                    yield kept_cells(rows, "", notes, told.name, hidden)
    except TableError:
        raise
    except (calamine.CalamineError, *_BROKEN) as error:
        raise TableError(_DAMAGED) from error
    except BaseException as error:
        # How the reader, which is no Python, says that it met what it did not expect.
        if type(error).__name__ == "PanicException":
            raise TableError(_DAMAGED) from None
        raise


def _parts(data: bytes) -> dict[str, bytes]:
    """The unpacked texts of a workbook, pictures left out, within bounds."""
    with zipfile.ZipFile(io.BytesIO(data)) as book:
        infos = [
            info for info in book.infolist()
            if info.filename.endswith((".xml", ".rels")) or info.filename == "mimetype"
        ]  # fmt: skip
        if sum(info.file_size for info in infos) > MAX_UNPACKED_BYTES or len(infos) > 1000:
            raise TableError(_LARGE)
        parts = {}
        for info in infos:
            part = parts[info.filename] = book.read(info)
            cells = sum(part.count(b"%cc%c" % (a, b)) for a in b"<:" for b in b" />")
            cells += part.count(b"table-cell") + part.count(b"<si") + part.count(b":si")
            if cells > MAX_SHEET_CELLS:
                raise TableError(
                    f"the workbook has {cells} cells or texts in one sheet; copy the readings into "
                    "a new one."
                )
            if info.filename != "mimetype":
                # The reader may wait for ever for a tag that is never closed.
                expat.ParserCreate().Parse(part, True)
        return parts


def _attributes(text: bytes) -> dict[str, str]:
    found = re.findall(rb"([\w:.-]+)\s*=\s*(?:\"([^\"]*)\"|'([^']*)')", text)
    return {
        name.decode("ascii", "replace"): html.unescape((one or other).decode("utf-8", "replace"))
        for name, one, other in found
    }


def _tags(part: bytes, *names: str) -> Iterator[tuple[str, dict[str, str], int]]:
    """Name without prefix, attributes and end of every tag of these names."""
    wanted = "|".join(names)
    # A value in quotes may hold the sign that ends a tag.
    inside = rb"((?:[^>\"']++|\"[^\"]*\"|'[^']*')*+)"
    pattern = re.compile(rb"<(?:[^\s<>/:]+:)?(%b)(?=[\s/>])%b>" % (wanted.encode(), inside))
    for match in pattern.finditer(part):
        yield match[1].decode(), _attributes(match[2]), match.end()


def _xlsx_marks(parts: dict[str, bytes]) -> dict[str, _Marks]:
    """By the names of the sheets (ECMA-376, SpreadsheetML)."""
    targets = {
        at.get("Id", ""): at.get("Target", "").removeprefix("/").removeprefix("xl/")
        for _, at, _ in _tags(parts.get("xl/_rels/workbook.xml.rels", b""), "Relationship")
    }
    percent = _percent_styles(parts.get("xl/styles.xml", b""))
    # Every sheet is looked through, whether or not its address is understood here: the reader may
    # understand it. Like the reader, by letters large or small.
    sheets = {
        name.lower(): _xlsx_sheet(part, percent)
        for name, part in parts.items()
        if b"sheetData" in part
    }
    found = {}
    for _, at, _ in _tags(parts.get("xl/workbook.xml", b""), "sheet"):
        by = next((value for key, value in at.items() if key.rpartition(":")[2] == "id"), "")
        found[at.get("name", "")] = sheets.get(f"xl/{targets.get(by)}".lower(), _Marks())
    return found


def _percent_styles(styles: bytes) -> set[int]:
    own = {at.get("numFmtId") for _, at, _ in _tags(styles, "numFmt") if "%" in at["formatCode"]}
    formats = styles[max(styles.find(b"cellXfs"), 0) : styles.find(b"</cellXfs")]
    known = [at.get("numFmtId") for _, at, _ in _tags(formats, "xf")]
    return {k for k, one in enumerate(known) if one in {"9", "10"} | own}


def _xlsx_sheet(part: bytes, percent: set[int]) -> _Marks:
    marks, row, column = _Marks(), -1, -1
    tags = [*_tags(part, "col", "row", "c"), ("", {}, len(part))]
    for (name, at, end), (_, _, after) in itertools.pairwise(tags):
        hidden = at.get("hidden") in {"1", "true"}
        if name == "col" and hidden:
            last = min(int(at.get("max", 0)), MAX_COLUMNS)
            marks.hidden_columns |= set(range(int(at.get("min", 1)) - 1, last))
        elif name == "row":
            row, column = int(at.get("r", row + 2)) - 1, -1
            if hidden:
                marks.hidden_rows.add(row)
        elif name == "c":
            row, column = _place(at.get("r", ""), (row, column + 1))
            inside = part[end:after]
            if b"<v" in inside or b":v" in inside or b"<is" in inside or b":is" in inside:
                marks.check_place(row, column)
                if at.get("t") == "e":
                    marks.instead[row, column] = "#error"
                elif at.get("t", "n") == "n" and int(at.get("s", 0)) in percent:
                    marks.instead[row, column] = "%"
            elif b"<f" in inside or b":f" in inside:
                marks.check_place(row, column)
                marks.instead[row, column] = "="
            elif column >= MAX_COLUMNS or row >= 2 * MAX_ROWS:
                marks.check_place(row, column)
    return marks


def _place(reference: str, otherwise: tuple[int, int]) -> tuple[int, int]:
    """Row and column from 0 of a reference like B7; ``otherwise`` where there is none.

    Raises ``TableError`` where it is no such reference: the reader would make something of it,
    and ends the whole program where that is a sheet larger than all memory.
    """
    if not reference:
        return otherwise
    match = re.fullmatch(r"([A-Z]{1,3})([0-9]{1,7})", reference)
    if not match:
        raise TableError(_DAMAGED)
    column = 0
    for letter in match[1]:
        column = column * 26 + ord(letter) - ord("A") + 1
    return int(match[2]) - 1, column - 1


def _ods_marks(parts: dict[str, bytes]) -> dict[str, _Marks]:
    """By the names of the sheets (OASIS OpenDocument 1.3, part 3, tables)."""
    found: dict[str, _Marks] = {}
    marks, row, column, columns, repeat, cells = _Marks(), -1, 0, 0, 1, 0
    names = ("table", "table-column", "table-row", "table-cell", "covered-table-cell")
    for name, at, _ in _tags(parts["content.xml"], *names):
        times = int(
            at.get(f"table:number-{'rows' if name == 'table-row' else 'columns'}-repeated", 1)
        )
        hidden = at.get("table:visibility", "visible") != "visible"
        if name == "table":
            marks = found[at.get("table:name", "")] = _Marks()
            row, columns, repeat = -1, 0, 1
        elif name == "table-column":
            if hidden:
                marks.hidden_columns |= set(range(columns, min(columns + times, MAX_COLUMNS)))
            columns += times
        elif name == "table-row":
            row, column, repeat = row + repeat, 0, times
            if hidden:
                marks.hidden_rows |= set(range(row, min(row + times, 2 * MAX_ROWS)))
        else:
            kind = at.get("office:value-type") or at.get("calcext:value-type")
            if kind or "table:formula" in at:
                marks.check_place(row + repeat - 1, column + times - 1)
                cells += repeat * times
                if cells > MAX_SHEET_CELLS:
                    raise TableError(_LARGE)
                sign = "%" if kind == "percentage" else "" if kind else "="
                if at.get("calcext:value-type") == "error":
                    sign = "#error"
                for place in itertools.product(
                    range(row, row + repeat), range(column, column + times)
                ):
                    if sign:
                        marks.instead[place] = sign
            column += times
    return found


def _as_text(
    values: list[list[Any]], marks: _Marks
) -> tuple[list[tuple[int, list[str]]], tuple[str, ...]]:
    rows: list[tuple[int, list[str]]] = []
    notes: list[str] = []
    for r, line in enumerate(values):
        cells = [
            _shown(value, marks.instead.get((r, c), ""))
            for c, value in enumerate(line[: MAX_COLUMNS + 1])
        ]
        if not any(cells):
            continue
        if r in marks.hidden_rows:
            notes.append(f"Row {r + 1} is hidden and left out.")
        rows.append((r + 1, cells))
        if len(rows) > MAX_ROWS:
            raise TableError(
                f"the sheet has more than {MAX_ROWS} rows; thin the readings out or average "
                "them first."
            )
    widest = max(map(len, values), default=0)
    hidden = sorted(c + 1 for c in marks.hidden_columns if c < widest)
    if hidden:
        listed = ", ".join(map(str, hidden[:10]))
        notes.insert(0, f"Hidden and left out: column {listed}.")
    return rows, tuple(notes[:10])


def _shown(value: Any, instead: str) -> str:
    """A cell's text as a spreadsheet shows it; what is no plain number cannot pass for one."""
    if instead in {"=", "#error"}:
        return "= (not calculated)" if instead == "=" else "#error"
    if isinstance(value, bool):
        return str(value).upper()
    if isinstance(value, int | float):
        # Spreadsheets store what binary makes of 0.1 + 0.2; fifteen digits are what they show.
        return f"{value * 100:.15g} %" if instead else f"{value:.15g}"
    if isinstance(value, dt.date | dt.time):
        return value.isoformat()
    return str(value)
