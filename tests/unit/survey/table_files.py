"""Makes the awkward tables whose bytes matter: python -m tests.unit.survey.table_files.

Workbooks with hidden, merged, uncalculated and repeated cells, several sheets, and text in
other encodings go to tests/data/tables; what they mean stands beside them in expected.json.
"""

from __future__ import annotations

import datetime as dt
from pathlib import Path
from typing import Any, Final

from tests.unit.survey.workbooks import (
    DATE,
    OWN_PERCENT,
    PERCENT,
    TIME,
    Raw,
    ods_book,
    ods_rows,
    sheet,
    xlsx,
)

FOLDER: Final = Path(__file__).parents[2] / "data" / "tables"
HEAD: Final = ["hole", "ppfd"]

SHEETS_WITHOUT_MEANING = sheet([["bought in May"], ["worth a try"]])
RECORDING_SHEET: list[list[Any]] = [
    ["Readings: Board of the cabinet"],
    ["Date", "2026-03-21", None, "Meter and its number", "Q7"],
    ["Lamp output, %", 100, None, "Hanging height", "35 cm"],
    ["Begun at", (0.75, TIME), None, "Ended at", (0.76, TIME)],
    ["hole", "x", "y", "time", "reading", "again"] * 2,
    [1, "10 cm", "10 cm", (0.750, TIME), 200, 202, 4, "30 cm", "30 cm", (0.753, TIME), 230, 231],
    [2, "30 cm", "10 cm", (0.751, TIME), 210, None, 1, "10 cm", "10 cm", (0.754, TIME), 198, None],
    [3, "10 cm", "30 cm", (0.752, TIME), 220, None],
]


def column(*values: Any) -> str:
    """A sheet of hole numbers with these readings."""
    return sheet([HEAD, *([k, value] for k, value in enumerate(values, start=1))])


def ods_column(*values: Any) -> bytes:
    rows = [HEAD, *([k, value] for k, value in enumerate(values, start=1))]
    return ods_book({"Readings": ods_rows(rows)})


FILES: dict[str, bytes] = {
    # -- sheets
    "sheets_three.xlsx": xlsx(
        {"White": column(200, 210), "Empty": sheet([]), "Film": column(250, 260)}
    ),
    "sheets_with_remarks.xlsx": xlsx({"Remarks": SHEETS_WITHOUT_MEANING, "Film": column(250, 260)}),
    "sheet_hidden.xlsx": xlsx({"Old": column(999), "New": column(200)}, hidden=("Old",)),
    "sheets_open.ods": ods_book(
        {"White": ods_rows([HEAD, [1, 200]]), "Film": ods_rows([HEAD, [1, 250]])}
    ),
    # -- hidden, merged, shifted
    "rows_hidden.xlsx": xlsx({"A": sheet([HEAD, [1, 200], [2, 999], [3, 220]], hidden_rows=(3,))}),
    "columns_hidden.xlsx": xlsx(
        {"A": sheet([["hole", "ppfd", "ppfd"], [1, 999, 200], [2, 999, 210]], (), (2,))}
    ),
    "columns_hidden_fault.xlsx": xlsx(
        {"A": sheet([["hole", "ppfd", "ppfd"], [1, 999, 200], [2, 999, "dim"]], (), (2,))}
    ),
    "picture_columns_hidden.xlsx": xlsx(
        {"A": sheet([[31, 999, 32], [21, 999, 22], [11, 999, 12]], hidden_columns=(2,))}
    ),
    "rows_hidden_open.ods": ods_book(
        {"A": ods_rows([HEAD, [1, 200], [2, 999], [3, 220]], hidden_rows=(3,))}
    ),
    "columns_hidden_open.ods": ods_book(
        {"A": ods_rows([["hole", "ppfd", "ppfd"], [1, 999, 200], [2, 999, 210]], (), (2,))}
    ),
    "merged_title.xlsx": xlsx(
        {"A": sheet([["The evening", None, None], HEAD, [1, 200]], merged="A1:C1")}
    ),
    "merged_holes.xlsx": xlsx(
        {"A": sheet([HEAD, [1, 200], [None, 202], [2, 210]], merged="A2:A3")}
    ),
    "shifted.xlsx": xlsx(
        {"A": sheet([[None, None, *HEAD], [None, None, 1, 200], [None, None, 2, 210]], top=5)}
    ),
    "shifted_fault.xlsx": xlsx(
        {"A": sheet([[None, None, *HEAD], [None, None, 1, 200], [None, None, 2, "dim"]], top=5)}
    ),
    "two_tables_below.xlsx": xlsx({"A": sheet([HEAD, [1, 200], HEAD, [1, 250]])}),
    # -- what is no plain number
    "dates_beside.xlsx": xlsx(
        {"A": sheet([["date", *HEAD], [(46102, DATE), 1, 200], [(46102, DATE), 2, 210]])}
    ),
    "dates_beside_open.ods": ods_book(
        {"A": ods_rows([["date", *HEAD], [dt.date(2026, 3, 21), 1, 200]])}
    ),
    "date_as_reading.xlsx": xlsx({"A": column((46102, DATE), 210)}),
    "date_as_reading_open.ods": ods_column(dt.date(2026, 3, 21)),
    "times_beside.xlsx": xlsx(
        {"A": sheet([["hole", "time", "ppfd"], [1, (0.75, TIME), 200], [2, (0.751, TIME), 210]])}
    ),
    "true_as_reading.xlsx": xlsx({"A": column(200, True)}),
    "true_as_reading_open.ods": ods_column(200, True),
    "percent.xlsx": xlsx({"A": column((0.45, PERCENT), (0.46, PERCENT))}),
    "percent_own_format.xlsx": xlsx({"A": column((2.105, OWN_PERCENT))}),
    "percent_open.ods": ods_column((0.45, "percentage")),
    "formula_uncalculated.xlsx": xlsx({"A": column(200, "=B2*1.05")}),
    "formula_uncalculated_open.ods": ods_column(200, "=[.B2]*1.05"),
    "formula_calculated.xlsx": xlsx({"A": column(200, Raw("<f>B2*1.05</f><v>210</v>"))}),
    "error_cell.xlsx": xlsx({"A": column(200, "#DIV/0!")}),
    "numbers_as_text.xlsx": xlsx({"A": column("200,5", "210,25")}),
    "binary_fractions.xlsx": xlsx({"A": column(0.1 + 0.2, 2.1e2)}),
    "mixed_signs.xlsx": xlsx({"A": column("200,5", "210.25", "220,5")}),
    # -- open documents repeat what is alike
    "rows_repeated_open.ods": ods_book(
        {
            "A": '<table:table-row table:number-rows-repeated="3"><table:table-cell '
            'office:value-type="float" office:value="1"/><table:table-cell '
            'office:value-type="float" office:value="200"/></table:table-row>'
            + ods_rows([[2, 210]])
        }
    ),
    "cells_repeated_open.ods": ods_book(
        {
            "A": "".join(
                '<table:table-row><table:table-cell table:number-columns-repeated="3" '
                f'office:value-type="float" office:value="{value}"/></table:table-row>'
                for value in (31, 21, 11)
            )
        }
    ),
    # -- the program's own
    "recording_sheet.xlsx": xlsx({"A": sheet(RECORDING_SHEET)}),
    # -- text in other clothes
    "utf16_tabs.tsv": "hole\tPPFD µmol/m²/s\n1\t200,5\n2\t210,25\n".encode("utf-16"),
    "bom_semicolons_comma.csv": "hole;PPFD\n1;200,5\n2;210,25\n".encode("utf-8-sig"),
    "mixed_signs.csv": b"hole;ppfd\n1;200,5\n2;210.25\n3;220,5\n",
    "thousands_both_signs.csv": b"hole;lux\n1;14.000,5\n2;14.700,0\n",
    "thousands_apostrophes.csv": b"hole;lux\n1;14'000.5\n2;14'700.0\n",
    "thousands_no_break.csv": "hole;lux\n1;14\u00a0000\n2;14\u202f700\n".encode(),
    "kilolux.csv": b"hole,klux\n1,14\n2,14.7\n",
    "foot_candles.tsv": b"hole\tfoot-candles\n1\t1000\n2\t2000\n",
    "watts.csv": "hole;W/m²\n1;45\n2;46\n".encode(),
    "dates_in_text.csv": b"date;hole;ppfd\n21.03.2026;1;200,5\n21.03.2026;2;210,5\n",
    "hole_one_again.csv": b"hole,ppfd\n1,200\n2,210\n3,220\n1,198\n",
    "recording_sheet_times.csv": (
        b"Readings: Board\nDate,2026-03-21\nBegun at,18:00\n"
        b"hole,x,y,time,reading,again,hole,x,y,time,reading,again\n"
        b"1,10 cm,10 cm,18:01,200,202,3,10 cm,30 cm,18:03,220,\n"
        b"2,30 cm,10 cm,18:02,210,,1,10 cm,10 cm,18:04,198,\n"
    ),
    "recording_sheet_inches.csv": (
        b"hole;x;y;time;reading;again\n1;3 15/16 in;3 15/16 in;6:01 pm;200;\n"
        b"2;11 13/16 in;3 15/16 in;6:02 pm;210;212\n"
    ),
}


def main() -> int:
    for name, data in FILES.items():
        (FOLDER / name).write_bytes(data)
        print(f"{name}: {len(data)} bytes")
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
