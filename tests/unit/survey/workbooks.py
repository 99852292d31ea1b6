"""Small workbooks made by hand, XLSX and ODS, with whatever a test wants in their cells."""

from __future__ import annotations

import datetime as dt
import io
import zipfile
from collections.abc import Mapping, Sequence
from typing import Any
from xml.sax.saxutils import escape, quoteattr

MAIN = 'xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"'
DOCUMENTS = "http://schemas.openxmlformats.org/officeDocument/2006/relationships"
PACKAGE = "http://schemas.openxmlformats.org/package/2006"
STYLES = (
    f"<styleSheet {MAIN}><numFmts><numFmt numFmtId='165' formatCode='0.0%'/></numFmts>"
    "<fonts><font/></fonts><fills><fill/></fills><borders><border/></borders>"
    "<cellStyleXfs><xf/></cellStyleXfs><cellXfs><xf numFmtId='0'/><xf numFmtId='9'/>"
    "<xf numFmtId='14'/><xf numFmtId='165'/><xf numFmtId='20'/></cellXfs></styleSheet>"
)
PERCENT, DATE, OWN_PERCENT, TIME = 1, 2, 3, 4


class Raw(str):
    """The inside of a cell as it stands in the file."""


def cell(value: Any, place: str) -> str:
    """A cell: a number, a text, True, (number, style), or '=formula' that was never calculated."""
    if isinstance(value, Raw):
        return f'<c r="{place}">{value}</c>'
    if isinstance(value, bool):
        return f'<c r="{place}" t="b"><v>{int(value)}</v></c>'
    if isinstance(value, tuple):
        return f'<c r="{place}" s="{value[1]}"><v>{value[0]}</v></c>'
    if isinstance(value, int | float):
        return f'<c r="{place}"><v>{value}</v></c>'
    if value is None:
        return f'<c r="{place}"/>'
    if value.startswith("="):
        return f'<c r="{place}"><f>{escape(value[1:])}</f></c>'
    if value.startswith("#"):
        return f'<c r="{place}" t="e"><v>{escape(value)}</v></c>'
    return f'<c r="{place}" t="inlineStr"><is><t>{escape(value)}</t></is></c>'


def sheet(
    rows: Sequence[Sequence[Any]],
    hidden_rows: tuple[int, ...] = (),
    hidden_columns: tuple[int, ...] = (),
    merged: str = "",
    top: int = 1,
) -> str:
    """The text of a sheet from row ``top`` on; what is hidden is counted from 1."""
    lines = []
    for r, row in enumerate(rows, start=top):
        cells = "".join(cell(value, f"{'ABCDEFGHIJKLMN'[c]}{r}") for c, value in enumerate(row))
        hidden = ' hidden="1"' if r in hidden_rows else ""
        lines.append(f'<row r="{r}"{hidden}>{cells}</row>')
    columns = "".join(f'<col min="{k}" max="{k}" hidden="1"/>' for k in hidden_columns)
    columns = f"<cols>{columns}</cols>" if columns else ""
    merges = f'<mergeCells count="1"><mergeCell ref="{merged}"/></mergeCells>' if merged else ""
    data = f"<sheetData>{''.join(lines)}</sheetData>"
    return f"<worksheet {MAIN}>{columns}{data}{merges}</worksheet>"


def xlsx(
    sheets: Mapping[str, str], hidden: tuple[str, ...] = (), shared: str | None = None
) -> bytes:
    """A workbook of sheets given as text."""
    relation = f"{DOCUMENTS}/worksheet"
    names, relations, types = "", "", ""
    for k, name in enumerate(sheets, start=1):
        state = ' state="hidden"' if name in hidden else ""
        names += f'<sheet name={quoteattr(name)} sheetId="{k}"{state} r:id="rId{k}"/>'
        relations += f'<Relationship Id="rId{k}" Type="{relation}" Target="worksheets/s{k}.xml"/>'
        types += f'<Override PartName="/xl/worksheets/s{k}.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml"/>'  # noqa: E501
    relations += f'<Relationship Id="st" Type="{DOCUMENTS}/styles" Target="styles.xml"/>'
    if shared is not None:
        relations += (
            f'<Relationship Id="sh" Type="{DOCUMENTS}/sharedStrings" Target="sharedStrings.xml"/>'
        )
    parts = {
        "[Content_Types].xml": f'<Types xmlns="{PACKAGE}/content-types">{types}</Types>',
        "_rels/.rels": f'<Relationships xmlns="{PACKAGE}/relationships"><Relationship Id="r" '
        f'Type="{DOCUMENTS}/officeDocument" Target="xl/workbook.xml"/></Relationships>',
        "xl/workbook.xml": f'<workbook {MAIN} xmlns:r="{DOCUMENTS}"><sheets>{names}</sheets>'
        "</workbook>",
        "xl/_rels/workbook.xml.rels": f'<Relationships xmlns="{PACKAGE}/relationships">{relations}'
        "</Relationships>",
        "xl/styles.xml": STYLES,
        **{f"xl/worksheets/s{k}.xml": text for k, text in enumerate(sheets.values(), start=1)},
    }  # fmt: skip
    if shared is not None:
        parts["xl/sharedStrings.xml"] = f"<sst {MAIN}>{shared}</sst>"
    return packed(parts)


OFFICE = "urn:oasis:names:tc:opendocument:xmlns"


def ods_cell(value: Any) -> str:
    """A cell: a number, a text, True, (number, type), a date, or '=formula' never calculated."""
    if isinstance(value, Raw):
        return value
    if isinstance(value, bool):
        said = str(value).lower()
        return f'<table:table-cell office:value-type="boolean" office:boolean-value="{said}"/>'
    if isinstance(value, tuple):
        return f'<table:table-cell office:value-type="{value[1]}" office:value="{value[0]}"/>'
    if isinstance(value, int | float):
        return f'<table:table-cell office:value-type="float" office:value="{value}"/>'
    if value is None:
        return "<table:table-cell/>"
    if isinstance(value, dt.date):
        said = value.isoformat()
        return f'<table:table-cell office:value-type="date" office:date-value="{said}"/>'
    if value.startswith("="):
        return f"<table:table-cell table:formula={quoteattr('of:' + value)}/>"
    return (
        f'<table:table-cell office:value-type="string"><text:p>{escape(value)}</text:p>'
        "</table:table-cell>"
    )


def ods_rows(
    rows: Sequence[Sequence[Any]],
    hidden_rows: tuple[int, ...] = (),
    hidden_columns: tuple[int, ...] = (),
) -> str:
    """The text of a sheet; ends as spreadsheets do, in a million empty rows."""
    lines = []
    for r, row in enumerate(rows, start=1):
        hidden = ' table:visibility="collapse"' if r in hidden_rows else ""
        lines.append(f"<table:table-row{hidden}>{''.join(map(ods_cell, row))}</table:table-row>")
    columns = "".join(
        '<table:table-column table:visibility="collapse"/>' if k in hidden_columns
        else "<table:table-column/>"
        for k in range(1, max(hidden_columns, default=0) + 1)
    )  # fmt: skip
    return f"{columns}{''.join(lines)}" + (
        '<table:table-row table:number-rows-repeated="1048500"><table:table-cell '
        'table:number-columns-repeated="1024"/></table:table-row>'
    )


def ods(rows: Sequence[Sequence[Any]], hidden_rows: tuple[int, ...] = ()) -> bytes:
    """A workbook with one sheet."""
    return ods_of(ods_rows(rows, hidden_rows))


def ods_of(rows: str) -> bytes:
    """A workbook of rows given as text."""
    return ods_book({"Readings": rows})


def ods_book(sheets: Mapping[str, str]) -> bytes:
    """A workbook of sheets given as text."""
    tables = "".join(
        f"<table:table table:name={quoteattr(name)}>{rows}</table:table>"
        for name, rows in sheets.items()
    )
    content = (
        f'<office:document-content xmlns:office="{OFFICE}:office:1.0" '
        f'xmlns:table="{OFFICE}:table:1.0" xmlns:text="{OFFICE}:text:1.0">'
        f"<office:body><office:spreadsheet>{tables}"
        "</office:spreadsheet></office:body></office:document-content>"
    )
    kind = "application/vnd.oasis.opendocument.spreadsheet"
    manifest = f'<manifest:manifest xmlns:manifest="{OFFICE}:manifest:1.0"/>'
    return packed({"mimetype": kind, "content.xml": content, "META-INF/manifest.xml": manifest})


def packed(parts: Mapping[str, str]) -> bytes:
    """A zip of texts."""
    stream = io.BytesIO()
    with zipfile.ZipFile(stream, "w") as book:
        for name, text in parts.items():
            # Of one date, so that the same texts make the same bytes.
            one = zipfile.ZipInfo(name, (2026, 1, 1, 0, 0, 0))
            book.writestr(one, text, zipfile.ZIP_DEFLATED)
    return stream.getvalue()
