"""What a table seems to mean, as a value that can be shown, corrected and then read by.

Nothing here changes a number: the guess names the kind of table, the columns, the marks
and the units, and says so in words for confirmation.
"""

from __future__ import annotations

import itertools
import statistics
from dataclasses import dataclass, field, replace
from enum import StrEnum
from typing import Final

from planner.survey.table_cells import Cells
from planner.survey.table_errors import TableError
from planner.survey.table_headings import (
    Heading,
    Role,
    TableLength,
    TableLight,
    is_missing,
    is_summary,
    length_unit_in,
    light_unit_in,
    read_headings,
)
from planner.survey.table_numbers import as_length, as_number, decimal_mark, looks_like_fraction

MOST_HEADING_ROWS: Final = 30
_LARGEST_PPFD: Final = 5000.0
_FEW_ROWS: Final = 4


class TableKind(StrEnum):
    """How the values of a table belong to places."""

    MATRIX = "matrix"
    """A picture of the board: rows and columns of values."""
    PLACES = "places"
    """Rows of x, y and one or more values."""
    NUMBERED = "numbered"
    """Rows of a hole number and one or more values."""
    IN_ORDER = "in order"
    """Values only, in the order the holes are visited."""


@dataclass(frozen=True)
class TableGuess:
    """An interpretation of a table, to be confirmed or corrected before it is read.

    ``heading_rows`` counts rows (of those kept) before the values. ``roles`` says what each
    column is. ``axes`` tells that a matrix carries x along its first row and y down its
    first column; ``labelled`` that it carries names there instead. ``first_row_is_top``
    says that the first row of a matrix is the far side of the plan (largest y).
    """

    kind: TableKind
    roles: tuple[Role, ...]
    heading_rows: int = 0
    decimal: str = "."
    length: TableLength = TableLength.CM
    light: TableLight = TableLight.PPFD
    axes: bool = False
    label_column: bool = False
    label_row: bool = False
    first_row_is_top: bool = True
    separated: str = ""
    doubts: tuple[str, ...] = field(default=())

    def words(self) -> tuple[str, ...]:
        """The interpretation in sentences, for a preview."""
        said = [f"Cells are parted by {self.separated}." if self.separated else ""]
        said.append(f"The decimal mark is the {'comma' if self.decimal == ',' else 'point'}.")
        if self.heading_rows:
            rows = "The first row is" if self.heading_rows == 1 else (
                f"The first {self.heading_rows} rows are"
            )  # fmt: skip
            said.append(f"{rows} heading.")
        said.append(self._kind_in_words())
        if self.kind is TableKind.PLACES or self.axes:
            said.append(f"Lengths are in {self.length.value}.")
        said.append(f"Values are in {self.light.in_words}.")
        return (*(sentence for sentence in said if sentence), *self.doubts)

    def _kind_in_words(self) -> str:
        if self.kind is TableKind.MATRIX:
            end = "far side (largest y)" if self.first_row_is_top else "near side (smallest y)"
            axes = "x along its first row and y down its first column" if self.axes else (
                "values only" if not (self.label_column or self.label_row) else "names beside them"
            )  # fmt: skip
            return f"The table is a picture of the board, with {axes}; its first row is the {end}."
        values = [k + 1 for k, role in enumerate(self.roles) if role is Role.VALUE]
        what = "column" if len(values) == 1 else "columns"
        listed = f"{what} {', '.join(map(str, values))}"
        if self.kind is TableKind.IN_ORDER:
            return f"{listed.capitalize()} holds readings in the order of the holes."
        if self.kind is TableKind.NUMBERED:
            hole = self.roles.index(Role.HOLE) + 1
            return f"Column {hole} is the hole number, {listed} the readings."
        x, y = self.roles.index(Role.X) + 1, self.roles.index(Role.Y) + 1
        return f"Column {x} is x, column {y} is y, {listed} the readings."


def guess_table(cells: Cells) -> TableGuess:
    """Guess what a table means.

    Raises
    ------
    TableError
        If it holds no numbers, or headings that name no readings.
    """
    texts = [cell for row in cells.rows for cell in row]
    mark = decimal_mark(texts)
    headings = read_headings(cells)
    if headings is not None:
        return _by_headings(cells, headings, mark)
    first = _first_row_of_numbers(cells, mark)
    return _by_shape(cells, first, mark)


# -- with headings ----------------------------------------------------------------------


def _by_headings(cells: Cells, headings: Heading, mark: str) -> TableGuess:
    roles = headings.roles
    length, length_doubts = _length_unit(cells, headings.rows, roles, headings.text, mark)
    light, light_doubts = _light_unit(cells, headings.rows, roles, headings.text, mark)
    if Role.X in roles:
        kind = TableKind.PLACES
    elif Role.HOLE in roles:
        kind = TableKind.NUMBERED
    else:
        kind = TableKind.IN_ORDER
    passed = [
        f"Column {k + 1} ({name}) is passed over."
        for k, (role, name) in enumerate(zip(roles, headings.names, strict=True))
        if role is Role.PASSED and name
    ]
    return TableGuess(
        kind=kind,
        roles=roles,
        heading_rows=headings.rows,
        decimal=mark,
        length=length,
        light=light,
        separated=cells.separated,
        doubts=(*passed, *length_doubts, *light_doubts),
    )


def _length_unit(
    cells: Cells, first: int, roles: tuple[Role, ...], heading: str, mark: str
) -> tuple[TableLength, tuple[str, ...]]:
    columns = [k for k, role in enumerate(roles) if role in {Role.X, Role.Y}]
    if not columns:
        return TableLength.CM, ()
    named = length_unit_in(heading)
    if named is not None:
        return named, ()
    texts = [cells.at(row, k) for row in range(first, len(cells.rows)) for k in columns]
    return _length_by_look(texts, mark)


def _length_by_look(texts: list[str], mark: str) -> tuple[TableLength, tuple[str, ...]]:
    if any(looks_like_fraction(text) for text in texts):
        return TableLength.INCH, ()
    numbers = [n for text in texts if (n := as_number(text, mark)) is not None]
    if numbers and max(map(abs, numbers)) <= 3 and any(n != round(n) for n in numbers):
        return TableLength.M, ("No unit of length is given; metres are supposed.",)
    if any(as_number(text, mark) is None and as_length(text, 1, mark) for text in texts):
        return TableLength.CM, ()
    return TableLength.CM, ("No unit of length is given; centimetres are supposed.",)


def _light_unit(
    cells: Cells, first: int, roles: tuple[Role, ...], heading: str, mark: str
) -> tuple[TableLight, tuple[str, ...]]:
    columns = [k for k, role in enumerate(roles) if role is Role.VALUE]
    texts = [cells.at(row, k) for row in range(first, len(cells.rows)) for k in columns]
    named = light_unit_in(heading) or next((u for t in texts if (u := light_unit_in(t))), None)
    if named is not None:
        return named, ()
    numbers = [n for text in texts if (n := as_number(text, mark)) is not None]
    if numbers and statistics.median(numbers) > _LARGEST_PPFD:
        return TableLight.LUX, ("No unit of light is given; such large numbers are taken for lux.",)
    return TableLight.PPFD, ("No unit of light is given; µmol/m²/s is supposed.",)


# -- without headings -------------------------------------------------------------------


def _first_row_of_numbers(cells: Cells, mark: str) -> int:
    """Index of the first row that is numbers but for a label in front."""
    widest = cells.width
    for row, values in enumerate(cells.rows[:MOST_HEADING_ROWS]):
        filled = [cell for cell in values if cell]
        if len(filled) == 1 and widest > 1 and as_number(filled[0], mark) is None:
            continue  # a title
        rest = [cell for cell in values[1:] if not is_missing(cell) and not is_summary(cell)]
        alone = len(values) == 1
        start = [] if not alone else [values[0]]
        if all(as_length(cell, 1.0, mark) is not None for cell in [*rest, *start]) and (
            rest or alone
        ):
            return row
    raise TableError(
        "no row of numbers was found; give a hole number and a reading in each row, or x, y and "
        "a reading, or a picture of the board."
    )


def _by_shape(cells: Cells, first: int, mark: str) -> TableGuess:
    width = max(len(row) for row in cells.rows[first:])
    heading = " ".join(cell for row in cells.rows[:first] for cell in row)
    body = range(first, len(cells.rows))
    if width == 1:
        return _with_light(cells, first, mark, heading, TableKind.IN_ORDER, (Role.VALUE,))
    if _is_place_list(cells, first, mark) and width >= 3:
        roles = (Role.X, Role.Y, *[Role.VALUE] * (width - 2))
        texts = [cells.at(row, k) for row in body for k in (0, 1)]
        named = length_unit_in(heading)
        length, doubts = (named, ()) if named else _length_by_look(texts, mark)
        found = _with_light(cells, first, mark, heading, TableKind.PLACES, roles)
        return replace(found, length=length, doubts=(*doubts, *found.doubts))
    numbers = [as_number(cells.at(row, 0), mark) for row in body]
    if width == 2 and [n for n in numbers if n is not None and n != round(n)] == []:
        ascending = [n for n in numbers if n is not None]
        if ascending == sorted(ascending) and ascending[:1] == [1.0]:
            return _with_light(
                cells, first, mark, heading, TableKind.NUMBERED, (Role.HOLE, Role.VALUE)
            )
    return _matrix(cells, first, mark, heading, width)


def _is_place_list(cells: Cells, first: int, mark: str) -> bool:
    """Whether the first two columns repeat as the coordinates of a grid do."""
    rows = range(first, len(cells.rows))
    if len(rows) < _FEW_ROWS or max(len(cells.rows[row]) for row in rows) > 8:
        return False
    pairs = [(as_length(cells.at(r, 0), 1, mark), as_length(cells.at(r, 1), 1, mark)) for r in rows]
    known = [pair for pair in pairs if None not in pair]
    if len(known) < len(pairs) - 3:
        return False
    xs, ys = {pair[0] for pair in known}, {pair[1] for pair in known}
    return len(xs) * 2 <= len(known) and len(ys) * 2 <= len(known)


def _matrix(cells: Cells, first: int, mark: str, heading: str, width: int) -> TableGuess:
    down = [cells.at(row, 0) for row in range(first, len(cells.rows))]
    across = [cells.at(first, k) for k in range(1, width)]
    corner_free = as_number(cells.at(first, 0), mark) is None
    many = len(down) > 1 and width > 1
    axis_x = many and corner_free and _steps_evenly(across, mark)
    axis_y = many and corner_free and _steps_evenly(down[1:], mark)
    counted = axis_x and _counts(across, mark)
    names_down = not axis_y and many and all(
        as_number(text, mark) is None for text in down[1:] if not is_summary(text)
    )  # fmt: skip
    axes = axis_x and axis_y and not (counted and _counts(down[1:], mark))
    label_row = not axes and corner_free and axis_x
    label_column = not axes and (names_down or (label_row and axis_y) or (label_row and counted))
    length = TableLength.CM
    doubts: tuple[str, ...] = ()
    top = True
    if axes:
        named = length_unit_in(heading + " " + cells.at(first, 0))
        length, doubts = (named, ()) if named else _length_by_look([*across, *down[1:]], mark)
        top = False
    start = 1 if (axes or label_column) else 0
    roles = (*[Role.PASSED] * start, *[Role.VALUE] * (width - start))
    found = _with_light(cells, first + (axes or label_row), mark, heading, TableKind.MATRIX, roles)
    return replace(
        found,
        heading_rows=first,
        axes=axes,
        label_row=label_row,
        label_column=label_column,
        length=length,
        first_row_is_top=top,
        doubts=(*doubts, *found.doubts),
    )


def _steps_evenly(texts: list[str], mark: str) -> bool:
    numbers = [as_length(text, 1.0, mark) for text in texts if not is_summary(text)]
    known = [n for n in numbers if n is not None]
    if len(known) < len(numbers) or len(known) < 2:
        return False
    steps = [b - a for a, b in itertools.pairwise(known)]
    mean = sum(steps) / len(steps)
    return mean != 0 and all(abs(step - mean) <= 0.02 * abs(mean) + 1e-9 for step in steps)


def _counts(texts: list[str], mark: str) -> bool:
    """Whether numbers are 1, 2, 3, ... or the same downwards: names rather than lengths."""
    numbers = [as_number(text, mark) for text in texts if not is_summary(text)]
    up = [float(k) for k in range(1, len(numbers) + 1)]
    return numbers in (up, up[::-1])


def _with_light(
    cells: Cells, first: int, mark: str, heading: str, kind: TableKind, roles: tuple[Role, ...]
) -> TableGuess:
    light, doubts = _light_unit(cells, first, roles, heading, mark)
    return TableGuess(
        kind=kind,
        roles=roles,
        heading_rows=first,
        decimal=mark,
        light=light,
        separated=cells.separated,
        doubts=doubts,
    )
