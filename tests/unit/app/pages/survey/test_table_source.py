"""Tables on their way into a plan: other separators, other kinds, onto a board or a new one."""

from __future__ import annotations

import pytest

from planner.app.pages.survey import table_source
from planner.app.pages.survey.table_source import source_of_text
from planner.plan.survey_edits import with_parts
from planner.survey.table_cells import TableError
from planner.survey.table_guess import TableGuess, TableKind, guess_table
from planner.survey.table_headings import Role
from planner.survey.table_reading import read_table
from tests.e2e.shell import small_plan
from tests.unit.app.pages.survey.surveying import invented


def guess_of(text: str) -> TableGuess:
    return guess_table(source_of_text(text).cells)


def test_another_separator_gives_other_cells() -> None:
    source = source_of_text("1,5;2,5\n3,5;4,5")
    assert source.cells.rows == (("1,5", "2,5"), ("3,5", "4,5"))
    assert source.parted_by(",").cells.rows == (("1", "5;2", "5"), ("3", "5;4", "5"))


def test_an_empty_clipboard_says_what_to_do() -> None:
    with pytest.raises(TableError, match="copy them, and paste again"):
        source_of_text("  \n ")


def test_a_kind_brings_its_usual_columns() -> None:
    guess = guess_of("101\t102\t103\n104\t105\t106")
    assert guess.kind is TableKind.MATRIX
    places = table_source.as_kind(guess, TableKind.PLACES, 3)
    assert places.roles == (Role.X, Role.Y, Role.VALUE)
    assert table_source.as_kind(guess, TableKind.NUMBERED, 2).roles == (Role.HOLE, Role.VALUE)


def test_a_kind_that_takes_more_columns_is_refused() -> None:
    with pytest.raises(ValueError, match="at least 3 columns, but the table has 2"):
        table_source.as_kind(guess_of("101\t102\n104\t105"), TableKind.PLACES, 2)


def test_columns_can_be_named_anew() -> None:
    guess = guess_of("x,y,ppfd\n10,10,101\n90,10,102\n10,90,103\n90,90,104")
    changed = table_source.with_roles(guess, 3, 1, 0, -1, (2,))
    assert changed.roles == (Role.Y, Role.X, Role.VALUE)


@pytest.mark.parametrize(
    ("columns", "sentence"),
    [((0, 0, (2,)), "column 1 is named twice"), ((0, 1, ()), "no column holds readings"),
     ((0, 7, (2,)), "there is no column 8")],
)  # fmt: skip
def test_impossible_columns_are_refused(
    columns: tuple[int, int, tuple[int, ...]], sentence: str
) -> None:
    guess = guess_of("x,y,ppfd\n10,10,101\n90,10,102\n10,90,103\n90,90,104")
    x, y, values = columns
    with pytest.raises(ValueError, match=sentence):
        table_source.with_roles(guess, 3, x, y, -1, values)


@pytest.mark.parametrize("choice", range(5))
def test_what_stands_beside_a_picture_can_be_chosen(choice: int) -> None:
    guess = guess_of("101\t102\t103\n104\t105\t106")
    assert table_source.beside_of(table_source.with_beside(guess, choice, 3)) == choice


def test_readings_are_put_onto_a_board_beside_those_there() -> None:
    plan = small_plan()
    board = with_parts(invented(plan), readings=())
    text = "hole,ppfd\n1,101\n1,103\n12,99"
    table = read_table(source_of_text(text).cells, guess_of(text))
    found = table_source.imported(table, plan, "", onto=board, lux_per_umol=None)
    assert [(r.hole, r.value) for r in found.readings] == [(1, 101), (1, 103), (12, 99)]


def test_lux_remember_their_factor_in_a_new_survey() -> None:
    plan = small_plan()
    text = "x (cm),y (cm),lux\n10,10,7000\n90,10,3500\n10,90,7000\n90,90,7000"
    table = read_table(source_of_text(text).cells, guess_of(text), lux_per_umol=70.0)
    found = table_source.imported(table, plan, "Lux", onto=None, lux_per_umol=70.0)
    assert found.survey is not None
    assert found.survey.lux_per_umol == 70.0
    assert [r.value for r in found.survey.readings] == [100, 50, 100, 100]
    assert found.survey.points[1] == pytest.approx((0.9, 0.1))
