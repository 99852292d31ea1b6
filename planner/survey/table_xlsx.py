"""The first filled sheet of an XLSX workbook (ECMA-376, SpreadsheetML) as rows of text.

Only values are read: formulas give the value last computed, formats and dates are not
followed. The parts are read as a stream and their unpacked size is bounded, so that a
hostile file costs no more than a large one.
"""

from __future__ import annotations

import io
import re
import zipfile
import zlib
from typing import IO, Final
from xml.etree import ElementTree as ET

from planner.survey.table_errors import TableError

MAX_UNPACKED_BYTES: Final = 200_000_000

_BROKEN: Final = (
    zipfile.BadZipFile,
    zlib.error,
    ET.ParseError,
    KeyError,
    EOFError,
    OSError,
    ValueError,
    NotImplementedError,
    RuntimeError,
)
"""What a damaged archive raises; RuntimeError stands for one locked by a password."""


def is_xlsx(data: bytes) -> bool:
    """Whether the bytes are a packed workbook."""
    return data.startswith(b"PK")


def sheet_rows(
    data: bytes, max_rows: int, max_columns: int
) -> tuple[list[tuple[int, list[str]]], str]:
    """Rows (number from 1, cells) of the first sheet with any cell, and the sheet's name.

    Raises
    ------
    TableError
        If the workbook is damaged, locked, empty or too large.
    """
    try:
        with zipfile.ZipFile(io.BytesIO(data)) as book:
            if sum(part.file_size for part in book.infolist()) > MAX_UNPACKED_BYTES:
                raise TableError("the workbook is too large; copy the readings into a new one.")
            shared = _shared_texts(book)
            for name, part in _sheets(book):
                with book.open(part) as sheet:
                    rows = _rows(sheet, shared, max_rows, max_columns)
                if rows:
                    return rows, name
    except TableError:
        raise
    except _BROKEN as error:
        raise TableError(
            "the workbook is damaged or locked; open it in a spreadsheet and save it as .csv."
        ) from error
    raise TableError("the workbook holds no filled sheet; enter the readings in the first one.")


def _sheets(book: zipfile.ZipFile) -> list[tuple[str, str]]:
    """Names and parts of the sheets, in the order of their tabs."""
    targets: dict[str, str] = {}
    with book.open("xl/_rels/workbook.xml.rels") as part:
        for _, element in ET.iterparse(part):
            if _tag(element) == "Relationship":
                target = element.get("Target", "").removeprefix("/")
                path = target if target.startswith("xl/") else f"xl/{target}"
                targets[element.get("Id", "")] = path
    found: list[tuple[str, str]] = []
    with book.open("xl/workbook.xml") as part:
        for _, element in ET.iterparse(part):
            if _tag(element) == "sheet":
                by = next((v for k, v in element.attrib.items() if k.endswith("}id")), "")
                if by in targets and "worksheets/" in targets[by]:
                    found.append((element.get("name", "sheet"), targets[by]))
    return found


def _shared_texts(book: zipfile.ZipFile) -> list[str]:
    if "xl/sharedStrings.xml" not in book.namelist():
        return []
    texts: list[str] = []
    with book.open("xl/sharedStrings.xml") as part:
        for _, element in ET.iterparse(part):
            if _tag(element) == "si":
                texts.append(_text_in(element))
                element.clear()
    return texts


def _rows(
    sheet: IO[bytes], shared: list[str], max_rows: int, max_columns: int
) -> list[tuple[int, list[str]]]:
    rows: list[tuple[int, list[str]]] = []
    number = 0
    for _, element in ET.iterparse(sheet):
        if _tag(element) != "row":
            continue
        number = int(element.get("r", number + 1))
        cells: list[str] = []
        for cell in element:
            text = _value(cell, shared)
            place = _column(cell.get("r", ""), len(cells))
            if text and place >= max_columns:
                raise TableError(
                    f"row {number} has more than {max_columns} columns; copy the readings into a "
                    "sheet of their own."
                )
            if text:
                cells += [""] * (place - len(cells) + 1)
                cells[place] = text
            elif place < max_columns:
                cells += [""] * (place - len(cells) + 1)
        if any(cells):
            rows.append((number, cells))
            if len(rows) > max_rows:
                raise TableError(
                    f"the sheet has more than {max_rows} rows; thin the readings out or average "
                    "them first."
                )
        element.clear()
    return rows


def _value(cell: ET.Element, shared: list[str]) -> str:
    kind = cell.get("t", "n")
    if kind == "inlineStr":
        return _text_in(cell).strip()
    value = next((child.text or "" for child in cell if _tag(child) == "v"), "")
    if kind == "s" and value:
        index = int(value)
        if not 0 <= index < len(shared):
            raise ValueError("a cell names a text that is not there")
        return shared[index].strip()
    if kind == "n" and value:
        # Spreadsheets store what binary makes of 0.1 + 0.2; fifteen digits are what they show.
        return f"{float(value):.15g}"
    return value.strip()


def _text_in(element: ET.Element) -> str:
    return "".join(part.text or "" for part in element.iter() if _tag(part) == "t")


def _column(reference: str, otherwise: int) -> int:
    """Column from 0 of a reference like B7."""
    match = re.fullmatch(r"([A-Z]{1,3})\d+", reference)
    if not match:
        return otherwise
    column = 0
    for letter in match[1]:
        column = column * 26 + ord(letter) - ord("A") + 1
    return column - 1


def _tag(element: ET.Element) -> str:
    return element.tag.rpartition("}")[2]
