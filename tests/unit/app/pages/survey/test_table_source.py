"""Tables on their way into a plan: other separators, other columns, onto a board or a new one."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from planner.app.pages.survey import table_source
from planner.app.pages.survey.table_source import Choice, source_of_file, source_of_text
from planner.plan.edits import changed
from planner.plan.survey_edits import add_survey
from planner.survey.table_guess import TableKind
from planner.survey.table_headings import Role, TableLight
from planner.units import PPFD_UNIT
from tests.e2e.shell import small_plan
from tests.unit.app.pages.survey.surveying import invented
from tests.unit.survey.workbooks import sheet, xlsx

PLACES = "x,y,ppfd\n10,10,101\n90,10,102\n10,90,103\n90,90,104"


def choice_of(text: str) -> Choice:
    (choice,) = source_of_text(text).choices
    return choice


def test_another_separator_gives_other_cells() -> None:
    text = "1,5;2,5\n3,5;4,5"
    assert choice_of(text).cells.rows == (("1,5", "2,5"), ("3,5", "4,5"))
    (other,) = source_of_text(text, separator=",").choices
    assert other.cells.rows == (("1", "5;2", "5"), ("3", "5;4", "5"))


@pytest.mark.parametrize("text", ["", "  \n "])
def test_nothing_says_what_to_paste(text: str) -> None:
    source = source_of_text(text)
    assert not source.choices
    assert "Nothing to read yet. Copy a hole number and a reading" in source.problem


def test_what_is_no_table_says_why(tmp_path: Path) -> None:
    path = tmp_path / "report.pdf"
    path.write_bytes(b"%PDF-1.7 nothing")
    assert "This is a PDF" in source_of_file(path).problem
    assert "cannot be read" in source_of_file(tmp_path / "gone.csv").problem


def test_a_picture_and_rows_are_two_ways_to_see_a_table() -> None:
    guess = choice_of("101\t102\t103\n104\t105\t106").guess
    assert guess.kind is TableKind.MATRIX
    rows = table_source.as_picture(guess, False)
    assert (rows.kind, rows.roles) == (TableKind.IN_ORDER, (Role.VALUE,) * 3)
    assert table_source.as_picture(rows, True).kind is TableKind.MATRIX


def test_columns_say_what_kind_of_rows_they_are() -> None:
    guess = choice_of(PLACES).guess
    # x, y, value; then x is the second column, so the first is nothing, then the first is y.
    moved = table_source.with_column(guess, 1, Role.X, TableLight.PPFD)
    assert moved.roles == (Role.PASSED, Role.X, Role.VALUE)
    moved = table_source.with_column(moved, 0, Role.Y, TableLight.PPFD)
    assert (moved.kind, moved.roles) == (TableKind.PLACES, (Role.Y, Role.X, Role.VALUE))
    by_hole = table_source.with_column(guess, 0, Role.HOLE, TableLight.PPFD)
    assert (by_hole.kind, by_hole.roles) == (
        TableKind.NUMBERED, (Role.HOLE, Role.PASSED, Role.VALUE),
    )  # fmt: skip
    alone = table_source.with_column(by_hole, 0, Role.PASSED, TableLight.PPFD)
    assert alone.kind is TableKind.IN_ORDER


def test_x_without_y_is_refused() -> None:
    choice = choice_of(PLACES)
    guess = table_source.with_column(choice.guess, 1, Role.PASSED, TableLight.PPFD)
    with pytest.raises(ValueError, match="column 1 is x, but no column is y"):
        table_source.imported(replace(choice, guess=guess), small_plan(), None)


def test_each_column_has_its_unit_and_a_picture_one_for_all() -> None:
    choice = choice_of("hole,ppfd,again\n1,200,14\n2,210,14.7")
    guess = table_source.with_column(choice.guess, 2, Role.VALUE, TableLight.KILOLUX)
    plan = small_plan()
    plan = add_survey(plan, changed(invented(plan), readings=()))
    found = table_source.imported(replace(choice, guess=guess, onto="survey-1"), plan, 70.0)
    # 14 klx over 70 lx to the µmol: 200; 14.7: 210.
    assert [r.value for r in found.readings] == pytest.approx([200, 200, 210, 210])
    picture = choice_of("101\t102\n104\t105").guess
    picture = table_source.with_column(picture, 1, Role.VALUE, TableLight.LUX)
    assert picture.lights == (TableLight.LUX, TableLight.LUX)


@pytest.mark.parametrize("choice", range(5))
def test_what_stands_beside_a_picture_can_be_chosen(choice: int) -> None:
    guess = choice_of("101\t102\t103\n104\t105\t106").guess
    assert table_source.beside_of(table_source.with_beside(guess, choice)) == choice


def test_readings_are_put_onto_a_board_beside_those_there() -> None:
    plan = small_plan()
    plan = add_survey(plan, invented(plan))
    choice = replace(choice_of("hole,ppfd\n1,101\n1,103\n12,99"), onto="survey-1")
    found = table_source.imported(choice, plan, None)
    assert [(r.hole, r.value) for r in found.readings] == [(1, 101), (1, 103), (12, 99)]
    assert len(found.survey.readings) == 12 + 3


def test_hole_numbers_need_to_be_told_whose_board_they_mean() -> None:
    plan = small_plan()
    choice = choice_of("hole,ppfd\n1,101\n12,99")
    with pytest.raises(ValueError, match="lay out the survey first"):
        table_source.imported(choice, plan, None)
    plan = add_survey(plan, invented(plan, hanging_height=0.4))
    with pytest.raises(ValueError, match="choose on whose board they were read"):
        table_source.imported(choice, plan, None)
    found = table_source.imported(replace(choice, like="survey-1"), plan, None)
    assert found.survey.points == plan.surveys[0].points
    assert found.survey.hanging_height == 0.4
    assert found.survey.lining is None
    assert "Board and conditions are those of 'Invented survey-1'" in found.remarks[0]


def test_lux_remember_their_factor_in_a_new_survey() -> None:
    choice = choice_of("x (cm),y (cm),lux\n10,10,7000\n90,10,3500\n10,90,7000\n90,90,7000")
    survey = table_source.imported(replace(choice, name="Lux"), small_plan(), 70.0).survey
    assert survey.lux_per_umol == 70.0
    assert [r.value for r in survey.readings] == [100, 50, 100, 100]
    assert survey.points[1] == pytest.approx((0.9, 0.1))


def test_each_wanted_sheet_becomes_a_survey_under_a_key_of_its_own(tmp_path: Path) -> None:
    rows: list[list[Any]] = [["x cm", "y cm", "ppfd"], [10, 10, 200], [90, 10, 210]]
    path = tmp_path / "two.xlsx"
    path.write_bytes(xlsx({"White": sheet(rows), "Film": sheet(rows), "Other": sheet(rows)}))
    source = source_of_file(path)
    assert [one.name for one in source.choices] == ["White", "Film", "Other"]
    wanted = [*source.choices[:2], replace(source.choices[2], wanted=False)]
    plan = table_source.with_tables(small_plan(), wanted, None)
    assert [(s.key, s.name) for s in plan.surveys] == [("survey-1", "White"), ("survey-2", "Film")]


@pytest.mark.parametrize(
    ("rows", "said"),
    [
        ("1;1;2", f"1 reading at 1 hole, 2 {PPFD_UNIT}."),
        ("1;1;2\n1;1;3", f"2 readings at 1 hole, from 2 to 3 {PPFD_UNIT}."),
        ("1;1;2\n9;1;2", f"2 readings at 2 holes, 2 {PPFD_UNIT}."),
    ],
)
def test_what_is_read_is_counted_in_words(rows: str, said: str) -> None:
    (choice,) = source_of_text(f"x (cm);y (cm);ppfd\n{rows}\n").choices
    assert table_source.imported(choice, small_plan(), None).sentence == said
