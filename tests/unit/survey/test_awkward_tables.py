"""Tables that used to be read silently wrong: each right, or refused with a sentence.

What is right stands beside each table, written by hand.
"""

from __future__ import annotations

import io
import subprocess
import sys
import zipfile
from collections.abc import Callable
from pathlib import Path

import pytest

from planner.reports.exports import estimate_to_csv
from planner.survey.table_cells import TableError
from planner.survey.table_guess import TableKind, guess_table
from planner.survey.table_reading import TableReadings, laid_out, read_table
from planner.survey.table_workbook import sheets_of_bytes
from tests.unit.reports.sample_estimate import sample_estimate
from tests.unit.survey.workbooks import (
    DATE,
    OWN_PERCENT,
    PERCENT,
    ods,
    ods_of,
    packed,
    sheet,
    xlsx,
)

LUX_PER_UMOL = 70.0
SQUARE = ((0.0, 0.0), (0.6, 0.0), (0.6, 0.6), (0.0, 0.6))


def read(data: bytes) -> TableReadings:
    cells = sheets_of_bytes(data)[0]
    return read_table(cells, guess_table(cells), lux_per_umol=LUX_PER_UMOL)


def doubts(data: bytes) -> str:
    return " ".join(guess_table(sheets_of_bytes(data)[0]).words())


NUMBERED: dict[str, tuple[str | bytes, list[tuple[int, float]]]] = {
    "lux and PPFD": ("hole,lux,ppfd\n1,14000,200\n2,14700,210\n", [(1, 200), (2, 210)]),
    "PPFD and lux": ("hole;PPFD;lx\n1;200;14000\n2;210;14700\n", [(1, 200), (2, 210)]),
    "kilolux": ("hole,klux\n1,14\n2,14.7\n", [(1, 200), (2, 210)]),
    "klx in the cells": ("hole,reading\n1,14 klx\n2,14.7 klx\n", [(1, 200), (2, 210)]),
    # one lumen per square foot is 10.7639 lux (ISO 80000-7: lux; foot of 0.3048 m)
    "foot-candles": ("hole,fc\n1,1000\n2,2000\n", [(1, 153.770), (2, 307.540)]),
    "foot candles in words": ("hole,foot-candles\n1,1000\n2,2000\n", [(1, 153.770), (2, 307.540)]),
    "a column of errors": ("hole,ppfd,error umol\n1,200,5\n2,210,6\n", [(1, 200), (2, 210)]),
    "a temperature": ("hole,temp light,ppfd\n1,25.5,200\n2,25.6,210\n", [(1, 200), (2, 210)]),
    "a mean column": ("hole,ppfd,again,mean\n1,200,210,205\n", [(1, 200), (1, 210)]),
    "a mean row": ("hole,ppfd\n1,200\n2,210\nmean,205\n", [(1, 200), (2, 210)]),
    "the recording sheet typed in": (
        "Readings: Board\nDate,2026-01-05\nhole,x,y,reading,again,hole,x,y,reading,again\n"
        "1,10 cm,10 cm,200,202,3,10 cm,30 cm,220,\n2,30 cm,10 cm,210,,4,30 cm,30 cm,230,231\n",
        [],
    ),
    "the recording sheet without places": (
        "hole\treading\tagain\thole\treading\tagain\n1\t200\t202\t3\t220\t\n2\t210\t\t4\t230\t231\n",
        [(1, 200), (1, 202), (2, 210), (3, 220), (4, 230), (4, 231)],
    ),
    "holes and two readings without headings": (
        "1;200;202\n2;210;212\n3;220;222\n",
        [(1, 200), (1, 202), (2, 210), (2, 212), (3, 220), (3, 222)],
    ),
    "hidden row": (
        xlsx({"A": sheet([["hole", "ppfd"], [1, 200], [2, 999], [3, 220]], hidden_rows=(3,))}),
        [(1, 200), (3, 220)],
    ),
    "hidden column": (
        xlsx({"A": sheet([["hole", "ppfd", "ppfd"], [1, 999, 200]], hidden_columns=(2,))}),
        [(1, 200)],
    ),
    "hidden sheet first": (
        xlsx(
            {
                "Old": sheet([["hole", "ppfd"], [1, 999]]),
                "New": sheet([["hole", "ppfd"], [1, 200]]),
            },
            hidden=("Old",),
        ),
        [(1, 200)],
    ),
    "a date beside": (
        xlsx({"A": sheet([["date", "hole", "ppfd"], [(46027, DATE), 1, 200]])}), [(1, 200)],
    ),
    "an open document": (ods([["hole", "ppfd"], [1, 200.5], [2, 210]]), [(1, 200.5), (2, 210)]),
    "a hidden row of an open document": (
        ods([["hole", "ppfd"], [1, 200], [2, 999], [3, 220]], hidden_rows=(3,)),
        [(1, 200), (3, 220)],
    ),
    "fifteen digits": (xlsx({"A": sheet([["hole", "ppfd"], [1, 0.1 + 0.2]])}), [(1, 0.3)]),
}  # fmt: skip

PICTURES: dict[str, tuple[str | bytes, list[list[float | None]]]] = {
    # near side first
    "row numbers before the readings": (
        "1;31;32;33\n2;21;22;23\n3;11;12;13\n", [[11, 12, 13], [21, 22, 23], [31, 32, 33]],
    ),
    "row and column numbers": (
        ";1;2;3\n1;31;32;33\n2;21;22;23\n", [[21, 22, 23], [31, 32, 33]],
    ),
    "column numbers over the readings": (
        "1;2;3;4\n31;32;33;34\n21;22;23;24\n", [[21, 22, 23, 24], [31, 32, 33, 34]],
    ),
    "row 1 is near": (
        ";a;b\nrow 1 (near);11;12\nrow 2;21;22\nrow 3 (far);31;32\n",
        [[11, 12], [21, 22], [31, 32]],
    ),
    "names before the rows and nothing above": (
        "far;31;32;33\nmiddle;21;22;23\nnear;11;12;13\n",
        [[11, 12, 13], [21, 22, 23], [31, 32, 33]],
    ),
    "the front in the last row": (
        ";a;b\nback;31;32\nmiddle;21;22\nfront;11;12\n", [[11, 12], [21, 22], [31, 32]],
    ),
    "a mean column under a heading": (
        ";left;right;Mean\nfar;31;33;32\nnear;11;13;12\n", [[11, 13], [31, 33]],
    ),
    "mean row and column": (
        ";left;right;average\nfar;31;33;32\nnear;11;13;12\naverage;21;23;22\n",
        [[11, 13], [31, 33]],
    ),
    "a hidden column in a picture": (
        xlsx({"A": sheet([[31, 999, 32], [21, 999, 22], [11, 999, 12]], hidden_columns=(2,))}),
        [[11, 12], [21, 22], [31, 32]],
    ),
}  # fmt: skip

REFUSED: dict[str, tuple[str | bytes, str]] = {
    "watts per square metre": ("hole,W/m²\n1,45\n2,46\n", "W/m²"),
    "watts in words": ("hole,irradiance (W m-2)\n1,45\n2,46\n", "W/m²"),
    "two units in one column": ("hole,reading\n1,14000 lux\n2,210 umol\n", "row 3, column 2"),
    "decimal commas between commas": ("hole,ppfd\n12,260\n13,261,5\n", "row 3, column 3: '5'"),
    "decimal commas without headings": ("1,260,5\n2,261,5\n3,262,0\n", "decimal comma"),
    "readings under no heading": ("hole;ppfd;\n1;200;205\n", "'205' stands under no heading"),
    "mean row without a name": ("31;35\n21;25\n11;15\n21;25\n", "the last row is the mean"),
    "mean column without a name": ("31;35;33\n21;29;25\n11;15;13\n", "the last column is the mean"),
    "sum row without a name": ("31;35\n21;25\n11;15\n63;75\n", "the last row is the sum"),
    "column numbers without a corner": ("1;2;3\n1;31;32;33\n2;21;22;23\n", "one cell less"),
    "right to left": (";right;left\nfar;31;33\nnear;11;13\n", "from right to left"),
    "a percentage": ("hole,ppfd\n1,45%\n2,46%\n", "'45%' is not a reading"),
    "TRUE": (xlsx({"A": sheet([["hole", "ppfd"], [1, True]])}), "'TRUE' is not a reading"),
    "a date as a reading": (
        xlsx({"A": sheet([["hole", "ppfd"], [1, (46027, DATE)]])}), "'2026-01-05' is not a reading",
    ),
    "a percent cell": (
        xlsx({"A": sheet([["hole", "ppfd"], [1, (0.45, PERCENT)]])}), "'45 %' is not a reading",
    ),
    "a percent cell of its own format": (
        xlsx({"A": sheet([["hole", "ppfd"], [1, (2.105, OWN_PERCENT)]])}), "'210.5 %' is not",
    ),
    "a formula never calculated": (
        xlsx({"A": sheet([["hole", "ppfd"], [1, "=A2*2"]])}), "not calculated",
    ),
    "an error": (
        xlsx({"A": sheet([["hole", "ppfd"], [1, "#DIV/0!"]])}), "'#error' is not a reading",
    ),
    "a percentage of an open document": (
        ods([["hole", "ppfd"], [1, (0.45, "percentage")]]), "'45 %' is not a reading",
    ),
    "an open formula never calculated": (
        ods([["hole", "ppfd"], [1, "=[.A2]*2"]]), "not calculated",
    ),
    "no workbook inside": (packed({"a.xml": "<a/>"}), "damaged or locked"),
    "a torn workbook": (xlsx({"A": sheet([["hole", "ppfd"], [1, 2]])})[:-40], "damaged or locked"),
    "a sheet whose tags are never closed": (
        ods_of("<table:table-row><table:table-cell>"),
        "damaged or locked",
    ),
    "an empty workbook": (xlsx({"A": sheet([])}), "no filled sheet"),
    "a cell at the far end": (
        xlsx({"A": sheet([[1]]).replace('r="A1"', 'r="XFD1048576"')}), "more than 200 columns",
    ),
    "a row at the far end": (
        xlsx({"A": sheet([[1]]).replace('r="A1"', 'r="A1048576"')}), "down to row 1048576",
    ),
}  # fmt: skip


def bytes_of(table: str | bytes) -> bytes:
    return table.encode() if isinstance(table, str) else table


@pytest.mark.parametrize("which", [name for name, (_, meant) in NUMBERED.items() if meant])
def test_readings_by_hole(which: str) -> None:
    table, meant = NUMBERED[which]
    found = read(bytes_of(table)).numbered
    assert [hole for hole, _ in found] == [hole for hole, _ in meant]
    assert [value for _, value in found] == pytest.approx([value for _, value in meant], rel=1e-5)


@pytest.mark.parametrize("which", PICTURES)
def test_pictures_of_the_board(which: str) -> None:
    table, meant = PICTURES[which]
    assert [list(row) for row in read(bytes_of(table)).picture] == meant


@pytest.mark.parametrize("which", REFUSED)
def test_refused_with_a_sentence(which: str) -> None:
    table, words = REFUSED[which]
    with pytest.raises(TableError) as refusal:
        read(bytes_of(table))
    assert words in str(refusal.value)
    assert str(refusal.value).endswith(".")


def test_the_recording_sheet_is_read_back_with_its_places() -> None:
    found = read(bytes_of(NUMBERED["the recording sheet typed in"][0]))
    assert list(found.placed) == [
        pytest.approx(row)
        for row in [
            (0.1, 0.1, 200), (0.1, 0.1, 202), (0.3, 0.1, 210),
            (0.1, 0.3, 220), (0.3, 0.3, 230), (0.3, 0.3, 231),
        ]
    ]  # fmt: skip


def test_our_own_export_is_read_back() -> None:
    estimate = sample_estimate()
    found = read(estimate_to_csv(estimate).encode())
    inside = [
        (x, y, estimate.ppfd[r, c])
        for r, y in enumerate(estimate.y)
        for c, x in enumerate(estimate.x)
        if estimate.ppfd[r, c] == estimate.ppfd[r, c]
    ]
    assert len(found.placed) == len(inside)
    for one, other in zip(found.placed, inside, strict=True):
        assert one == pytest.approx(other, abs=1e-4)


def test_places_in_millimetres_read_as_centimetres_are_refused_by_name() -> None:
    table = read(b"x,y,ppfd\n100,100,200\n300,100,210\n")
    with pytest.raises(TableError, match=r"x = 100 cm, y = 100 cm lies outside the space"):
        laid_out(table, SQUARE)
    points, _, _ = laid_out(read(b"x mm,y mm,ppfd\n100,100,200\n300,100,210\n"), SQUARE)
    assert [pytest.approx(point) for point in points] == [(0.1, 0.1), (0.3, 0.1)]


def test_a_place_on_the_wall_is_inside() -> None:
    points, _, _ = laid_out(read(b"x cm,y cm,ppfd\n0,0,200\n60,60,210\n"), SQUARE)
    assert len(points) == 2


def test_all_filled_sheets_can_be_had() -> None:
    book = xlsx(
        {
            "Empty": sheet([]),
            "White": sheet([["hole", "ppfd"], [1, 200]]),
            "Film": sheet([["hole", "ppfd"], [1, 250]]),
        }
    )
    assert [one.sheet for one in sheets_of_bytes(book)] == ["White", "Film"]


def test_what_is_supposed_is_said() -> None:
    assert "far side is supposed" in doubts(b";a;b\nrow 1;31;32\nrow 2;21;22\n")
    assert "taken for hole numbers" in doubts(b"1;200;202\n2;210;212\n3;220;222\n")
    assert "counts 1 to 3 and is not taken for readings" in doubts(
        b"1;31;32;33\n2;21;22;23\n3;11;12;13\n"
    )
    assert "'1.234' is read as 1.234" in doubts(b"hole;ppfd\n1;1.234\n2;1.301\n")
    assert "is passed over: another says it in" in doubts(b"hole,lux,ppfd\n1,14000,200\n")
    book = xlsx({"A": sheet([["hole", "ppfd"], [1, 200], [2, 9]], hidden_rows=(3,))})
    assert "Row 3 is hidden and left out." in doubts(book)


def test_two_linings_in_two_columns_are_doubted_and_repeats_are_not() -> None:
    levels = [200, 210, 190, 205, 195]
    two = "".join(f"{k};{v};{v * 1.2:.0f}\n" for k, v in enumerate(levels, start=1))
    (said,) = read(f"hole;ppfd bare;ppfd film\n{two}".encode()).left_out
    assert "Column 3 reads +20 % against column 2 throughout" in said
    again = ((k, v, v * (1.02 if k % 2 else 0.98)) for k, v in enumerate(levels, start=1))
    lines = "".join(f"{k};{v};{w:.0f}\n" for k, v, w in again)
    assert read(f"hole;reading;again\n{lines}".encode()).left_out == ()


def test_an_even_field_has_no_mean_row() -> None:
    assert len(read(b"200;201\n200;201\n200;201\n").picture) == 3


def test_a_lux_column_alone_is_still_divided() -> None:
    guess = guess_table(sheets_of_bytes(b"hole,lux\n1,14000\n")[0])
    assert guess.kind is TableKind.NUMBERED


# -- bombs ---------------------------------------------------------------------------------


def misplaced(place: str, *, before: str = "", old: bytes = b"", new: bytes = b"") -> bytes:
    """A workbook whose one cell says it is elsewhere; with a piece of its text replaced."""
    cell_there = sheet([[1]]).replace('r="A1"', f'{before}r="{place}"')
    made, packed = xlsx({"A": cell_there}), io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(made)) as book, zipfile.ZipFile(packed, "w") as changed:
        parts = {name: book.read(name) for name in book.namelist()}
        assert old in b"".join(parts.values())
        for name, part in parts.items():
            changed.writestr(name, part.replace(old, new) if old else part)
    return packed.getvalue()


EMPTY = "<row>" + "<c/>" * 1000 + "</row>"
BOMBS: dict[str, Callable[[], bytes]] = {
    "four million empty cells": lambda: xlsx(
        {"A": sheet([]).replace("<sheetData>", "<sheetData>" + EMPTY * 4000)}
    ),
    "eight million texts": lambda: xlsx(
        {"A": sheet([[1]])}, shared="<si><t>x</t></si>" * 8_000_000
    ),
    "a row repeated a million times": lambda: ods_of(
        '<table:table-row table:number-rows-repeated="1000000"><table:table-cell '
        'office:value-type="float" office:value="1"/></table:table-row>'
    ),
    "cells repeated": lambda: ods_of(
        '<table:table-row table:number-rows-repeated="20000"><table:table-cell '
        'table:number-columns-repeated="199" office:value-type="float" office:value="1"/>'
        "</table:table-row>"
    ),
    "an empty gap before a cell, often": lambda: ods_of(
        '<table:table-row table:number-rows-repeated="20000"><table:table-cell '
        'table:number-columns-repeated="16000"/><table:table-cell office:value-type="float" '
        'office:value="1"/></table:table-row>'
    ),
    # Each of these once made the reader ask for more memory than there is and end the program.
    "a cell of no place": lambda: misplaced("A999999999999999999993"),
    "a far cell behind a sign": lambda: misplaced("ZZZ9999999", before='of=">" '),
    "a far cell of a sheet named by another word": lambda: misplaced(
        "ZZZ9999999", old=b"r:id=", new=b"id="
    ),
    "a far cell of a sheet named in large letters": lambda: misplaced(
        "ZZZ9999999", old=b'Target="worksheets', new=b'Target="WORKSHEETS'
    ),
    "one large part": lambda: xlsx({"A": sheet([]) + " " * 90_000_000}),
}  # fmt: skip

MEASURE = """
import sys, time
from pathlib import Path
from planner.survey.table_cells import TableError
from planner.survey.table_workbook import sheets_of_bytes
data = Path(sys.argv[1]).read_bytes()
start = time.process_time()
try:
    sheets_of_bytes(data)[0]
except TableError as error:
    print(error, file=sys.stderr)
seconds = time.process_time() - start
(peak,) = (line for line in open("/proc/self/status") if line.startswith("VmHWM"))
print(seconds, int(peak.split()[1]) / 1000)
"""


@pytest.mark.parametrize("which", BOMBS)
def test_a_bomb_is_refused(which: str) -> None:
    with pytest.raises(TableError):
        sheets_of_bytes(BOMBS[which]())[0]


@pytest.mark.bench
@pytest.mark.parametrize("which", BOMBS)
def test_a_bomb_is_refused_within_a_second_and_300_mb(which: str, tmp_path: Path) -> None:
    path = tmp_path / "bomb"
    path.write_bytes(BOMBS[which]())
    told = subprocess.run(
        [sys.executable, "-c", MEASURE, str(path)],
        capture_output=True, text=True, check=True, cwd=Path(__file__).parents[3],
    )  # fmt: skip
    seconds, megabytes = map(float, told.stdout.split())
    size = path.stat().st_size / 1000
    print(f"{which}: {size:.0f} kB, {seconds:.2f} s, {megabytes:.0f} MB, {told.stderr.strip()}")
    assert told.stderr
    assert seconds < 1.0
    assert megabytes < 300


def test_a_hole_that_says_it_has_no_number_is_named() -> None:
    """It is no reading, but whoever pastes it should not have to count the rows."""
    found = read(b"hole;ppfd\n7;107\n8;108\n9;n/a\n10;110\n11;\n")
    assert found.numbered == ((7, 107), (8, 108), (10, 110))
    assert found.left_out == ("Hole 9 has no number (n/a).",)
    two = read(b"hole;ppfd\n7;n/a\n8;108\n9;109\n10;110\n11;-\n")
    assert two.left_out == ("Holes 7 and 11 have no number (n/a, -).",)
    placed = read(b"x;y;ppfd\n10;10;107\n20;10;n/a\n30;10;110\n40;10;111\n")
    assert placed.left_out == ("Row 3 has no number (n/a).",)
