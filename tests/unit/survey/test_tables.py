"""Awkward tables, each read right or refused in one clear sentence."""

from __future__ import annotations

import dataclasses
import json
import time
from pathlib import Path
from typing import Any

import pytest

from planner.plan.survey import SurveyGrid
from planner.survey.layout import holes
from planner.survey.table_cells import MAX_ROWS, TableError, cells_of_text
from planner.survey.table_guess import TableGuess, TableKind, guess_table
from planner.survey.table_reading import (
    TableReadings,
    laid_out,
    onto_holes,
    read_table,
    seconds_of,
)
from planner.survey.table_workbook import sheets_of_bytes
from tests.unit.survey.table_files import FILES

FOLDER = Path(__file__).parents[2] / "data" / "tables"
EXPECTED: dict[str, dict[str, Any]] = json.loads((FOLDER / "expected.json").read_text("utf-8"))
LUX_PER_UMOL = 70.0
SQUARE = ((0.0, 0.0), (0.6, 0.0), (0.6, 0.6), (0.0, 0.6))


SHEETS = [
    (name, sheet, meant)
    for name, entry in EXPECTED.items()
    for sheet, meant in entry.get("sheets", {"": entry}).items()
]
"""A file, the sheet of a workbook that is meant, and what it means."""


def read(path: Path, sheet: str = "") -> TableReadings:
    sheets = sheets_of_bytes(path.read_bytes())
    cells = next(one for one in sheets if sheet in {"", one.sheet})
    return read_table(cells, guess_table(cells), lux_per_umol=LUX_PER_UMOL)


def pasted(text: str) -> tuple[TableGuess, TableReadings]:
    cells = cells_of_text(text)
    guess = guess_table(cells)
    return guess, read_table(cells, guess, lux_per_umol=LUX_PER_UMOL)


def test_every_table_has_its_meaning_and_there_are_many() -> None:
    files = {path.name for path in FOLDER.iterdir()} - {"expected.json", "README.md"}
    assert files == set(EXPECTED)
    assert len(files) >= 80
    assert set(FILES) <= files
    assert sum((FOLDER / name).stat().st_size for name in files) < 300_000


@pytest.mark.parametrize("name", [n for n, e in EXPECTED.items() if "sheets" in e])
def test_a_workbook_has_the_sheets_that_are_filled_and_in_sight(name: str) -> None:
    sheets = sheets_of_bytes((FOLDER / name).read_bytes())
    assert [one.sheet for one in sheets] == list(EXPECTED[name]["sheets"])


@pytest.mark.parametrize(
    ("name", "sheet", "meant"), [row for row in SHEETS if "refused" not in row[2]]
)
def test_read_right(name: str, sheet: str, meant: dict[str, Any]) -> None:
    found = read(FOLDER / name, sheet)
    rows = {
        "placed": [tuple(row) for row in meant.get("placed", [])],
        "numbered": [tuple(row) for row in meant.get("numbered", [])],
        "picture": [tuple(row) for row in meant.get("picture", [])],
    }
    assert [hole for hole, _ in found.numbered] == [hole for hole, _ in rows["numbered"]]
    for (_, value), (_, wanted) in zip(found.numbered, rows["numbered"], strict=True):
        assert value == pytest.approx(wanted, rel=1e-12)
    assert list(found.picture) == rows["picture"]
    assert len(found.placed) == len(rows["placed"])
    for one, other in zip(found.placed, rows["placed"], strict=True):
        assert one == pytest.approx(other, abs=1e-9)


@pytest.mark.parametrize(("name", "sheet", "meant"), [row for row in SHEETS if "refused" in row[2]])
def test_refused_in_one_sentence(name: str, sheet: str, meant: dict[str, Any]) -> None:
    with pytest.raises(TableError) as refusal:
        read(FOLDER / name, sheet)
    sentence = str(refusal.value)
    for words in meant["refused"]:
        assert words in sentence
    assert sentence.endswith(".")
    assert "\n" not in sentence
    assert len(sentence) < 200


def test_a_million_rows_are_refused_within_seconds() -> None:
    text = "hole,ppfd\n" + "1,210.5\n" * 1_000_000
    started = time.perf_counter()
    with pytest.raises(TableError, match="1000001 rows"):
        sheets_of_bytes(text.encode())[0]
    assert time.perf_counter() - started < 3


def test_as_many_rows_as_a_survey_holds_are_read_within_seconds() -> None:
    text = "hole,ppfd\n" + "1,210.5\n" * 20_000
    started = time.perf_counter()
    cells = sheets_of_bytes(text.encode())[0]
    assert read_table(cells, guess_table(cells)).count == 20_000
    assert time.perf_counter() - started < 5
    assert MAX_ROWS > 20_000


def test_the_guess_says_what_it_took_for_granted() -> None:
    guess, _ = pasted("x,y,reading,battery\n10,10,210,ok\n30,10,220,ok\n")
    said = " ".join(guess.words())
    assert "decimal mark is the point" in said
    assert "Column 1 is x, column 2 is y, column 3 the readings." in said
    assert "No unit of length is given; centimetres are supposed." in said
    assert "No unit of light is given; µmol m⁻² s⁻¹ is supposed." in said
    assert "Column 4 (battery) is passed over." in said


def test_a_guess_can_be_corrected() -> None:
    cells = cells_of_text("10,210\n20,220\n30,230\n")
    guess = guess_table(cells)
    assert guess.kind is TableKind.MATRIX
    upright = read_table(cells, guess)
    assert upright.picture[0] == (30.0, 230.0)
    turned = read_table(cells, dataclasses.replace(guess, first_row_is_top=False))
    assert turned.picture[0] == (10.0, 210.0)


def test_lux_without_a_spectrum_is_refused() -> None:
    cells = cells_of_text("hole,lux\n1,14000\n")
    with pytest.raises(TableError, match="spectrum"):
        read_table(cells, guess_table(cells))


def test_a_picture_fills_the_serpentine_of_its_grid() -> None:
    _, table = pasted("31,32,33\n21,22,23\n11,12,13\n")
    grid = SurveyGrid(rows=3, columns=3)
    readings = onto_holes(table, holes(grid, SQUARE), grid=grid, tolerance=0.01)
    # to and fro from the near left: the middle row is walked from the right
    assert [reading.value for reading in readings] == [11, 12, 13, 23, 22, 21, 31, 32, 33]


def test_a_picture_of_another_size_is_refused() -> None:
    _, table = pasted("31;32\n21;22\n")
    grid = SurveyGrid(rows=3, columns=3)
    with pytest.raises(TableError, match="2 rows and 2 columns"):
        onto_holes(table, holes(grid, SQUARE), grid=grid, tolerance=0.01)


def test_places_find_the_nearest_hole_or_none() -> None:
    grid = SurveyGrid(rows=3, columns=3)
    points = holes(grid, SQUARE)
    _, table = pasted("x cm,y cm,ppfd\n10.4,9.8,210\n50,30,220\n")
    readings = onto_holes(table, points, grid=grid, tolerance=0.02)
    assert [(r.hole, r.value) for r in readings] == [(1, 210.0), (4, 220.0)]
    _, far = pasted("x cm,y cm,ppfd\n20,10,210\n")
    with pytest.raises(TableError, match="no hole lies within 2 cm"):
        onto_holes(far, points, grid=grid, tolerance=0.02)


def test_a_hole_the_survey_does_not_have_is_refused() -> None:
    _, table = pasted("hole,ppfd\n1,210\n12,220\n")
    with pytest.raises(TableError, match="hole 12"):
        onto_holes(table, holes(SurveyGrid(rows=3, columns=3), SQUARE), grid=None, tolerance=0.02)


def test_a_new_survey_is_laid_out_from_places_and_from_a_picture() -> None:
    _, table = pasted("x cm,y cm,ppfd\n10,10,210\n30,10,220\n10,10,212\n")
    points, readings, grid = laid_out(table, SQUARE)
    assert [pytest.approx(point) for point in points] == [(0.1, 0.1), (0.3, 0.1)]
    assert [(r.hole, r.value) for r in readings] == [(1, 210), (2, 220), (1, 212)]
    assert grid is None
    _, picture = pasted("31;32\n21;22\n")
    points, readings, grid = laid_out(picture, SQUARE)
    assert grid is not None
    at = {
        (round(points[r.hole - 1][0], 6), round(points[r.hole - 1][1], 6)): r.value
        for r in readings
    }
    assert at == {(0.15, 0.15): 21, (0.45, 0.15): 22, (0.45, 0.45): 32, (0.15, 0.45): 31}
    with pytest.raises(TableError, match="lay out the survey first"):
        laid_out(pasted("hole,ppfd\n1,210\n2,220\n")[1], SQUARE)


def test_a_value_outside_the_space_is_refused() -> None:
    ell = ((0.0, 0.0), (1.0, 0.0), (1.0, 0.5), (0.5, 0.5), (0.5, 1.0), (0.0, 1.0))
    _, full = pasted("31;32\n21;22\n")
    with pytest.raises(TableError, match="outside the space"):
        laid_out(full, ell)
    _, cut = pasted("31;\n21;22\n")
    points, readings, _ = laid_out(cut, ell)
    assert len(points) == len(readings) == 3


@pytest.mark.parametrize("name", ["recording_sheet_times.csv", "recording_sheet.xlsx"])
def test_the_times_of_a_recording_sheet_are_kept(name: str) -> None:
    table = read(FOLDER / name)
    # A thousandth of a day, which is how the workbook counts, is 86.4 s; shown are whole minutes.
    minutes = [0, 0, 1, 2, 3] if name.endswith("csv") else [0, 0, 1.44, 2.88, 4.32, 4.32, 5.76]
    assert [moment / 60 for moment in table.times] == pytest.approx(minutes, abs=0.02)
    points, readings, _ = laid_out(table, SQUARE)
    assert [reading.at for reading in readings] == list(table.times)
    assert [r.at for r in onto_holes(table, points, grid=None, tolerance=0.01)] == list(table.times)


@pytest.mark.parametrize(
    ("text", "seconds"),
    [("18:05", 65100), ("18:05:30", 65130), ("6:05 pm", 65100), ("12:00 am", 0),
     ("12:30 pm", 45000), ("2026-03-21T18:05:00", 65100), ("18.05", None), ("25:00", None),
     ("", None), ("soon", None)],
)  # fmt: skip
def test_times_of_day(text: str, seconds: float | None) -> None:
    assert seconds_of(text) == seconds


def test_an_evening_may_go_past_midnight_and_a_missing_time_drops_them_all() -> None:
    _, late = pasted("hole;time;ppfd\n1;23:59;200\n2;0:01;210\n3;0:03;220")
    assert late.times == (0, 120, 240)
    _, some = pasted("hole;time;ppfd\n1;23:59;200\n2;;210\n3;0:03;220")
    assert some.times == ()
    assert some.left_out == ("The times are passed over: not every reading has one.",)
