"""What a table of readings may mean: a guess to be confirmed, never taken silently."""

from __future__ import annotations

import itertools
import re
import statistics
from dataclasses import dataclass, field, replace
from enum import StrEnum
from typing import Final

from planner.language import word
from planner.plan.quantity import LARGEST_PPFD
from planner.survey.table_cells import (
    Cells,
    TableError,
    as_length,
    as_number,
    decimal_mark,
    looks_like_fraction,
    quoted,
)
from planner.survey.table_headings import (
    FAR,
    LEFT,
    NEAR,
    RIGHT,
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
from planner.units import PPFD_UNIT, listed

MOST_HEADING_ROWS: Final = 30
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
    column is and ``lights`` in which unit its readings are; ``numbers`` are the columns'
    numbers in the source. ``axes`` tells that a matrix carries x along its first row and y down its
    first column; ``labelled`` that it carries names there instead. ``first_row_is_top``
    says that the first row of a matrix is the far side of the plan (largest y).
    """

    kind: TableKind
    roles: tuple[Role, ...]
    heading_rows: int = 0
    decimal: str = "."
    length: TableLength = TableLength.CM
    lights: tuple[TableLight, ...] = ()
    axes: bool = False
    label_column: bool = False
    label_row: bool = False
    first_row_is_top: bool = True
    separated: str = ""
    numbers: tuple[int, ...] = ()
    doubts: tuple[str, ...] = field(default=())

    @property
    def values(self) -> tuple[int, ...]:
        """The columns of readings, from 0."""
        return tuple(k for k, role in enumerate(self.roles) if role is Role.VALUE)

    def light(self, column: int) -> TableLight:
        """The unit of a column of readings."""
        return self.lights[column] if column < len(self.lights) else TableLight.PPFD

    def number_of(self, column: int) -> int:
        """A column's number in the source, from 1."""
        return self.numbers[column] if column < len(self.numbers) else column + 1

    def words(self) -> tuple[str, ...]:
        """The interpretation in sentences, for a preview."""
        said = [f"Cells are parted by {word(self.separated)}." if self.separated else ""]
        said.append(f"The decimal mark is the {'comma' if self.decimal == ',' else 'point'}.")
        if self.heading_rows:
            rows = "The first row is" if self.heading_rows == 1 else (
                f"The first {self.heading_rows} rows are"
            )  # fmt: skip
            said.append(f"{rows} heading.")
        said.append(self._kind_in_words())
        if self.kind is TableKind.PLACES or self.axes:
            said.append(f"Lengths are in {self.length.value}.")
        units = dict.fromkeys(self.light(k).value for k in self.values)
        if units:
            said.append(f"Values are in {listed(list(units))}.")
        return (*(sentence for sentence in said if sentence), *self.doubts)

    def _kind_in_words(self) -> str:
        if self.kind is TableKind.MATRIX:
            end = "far side (largest y)" if self.first_row_is_top else "near side (smallest y)"
            axes = "x along its first row and y down its first column" if self.axes else (
                "values only" if not (self.label_column or self.label_row) else "names beside them"
            )  # fmt: skip
            return f"The table is a picture of the board, with {axes}; its first row is the {end}."
        values = [str(self.number_of(k)) for k in self.values]
        if not values:
            return "No column is taken for readings."
        told = f"{'column' if len(values) == 1 else 'columns'} {', '.join(values)}"
        if self.kind is TableKind.IN_ORDER:
            return f"{told.capitalize()} holds readings in the order of the holes."
        hole, x, y = (
            self.number_of(self.roles.index(role)) if role in self.roles else 0
            for role in (Role.HOLE, Role.X, Role.Y)
        )
        if self.kind is TableKind.NUMBERED:
            return f"Column {hole} is the hole number, {told} the readings."
        if not (x and y):
            return f"{told.capitalize()} holds readings; of x and y one is not named."
        return f"Column {x} is x, column {y} is y, {told} the readings."


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
        found = _by_headings(cells, headings, mark)
    else:
        found = _by_shape(cells, _first_row_of_numbers(cells, mark), mark)
    doubts = (*cells.notes, *_mark_doubts(cells, found), *found.doubts)
    return replace(found, doubts=doubts, numbers=cells.columns)


def _mark_doubts(cells: Cells, guess: TableGuess) -> tuple[str, ...]:
    """A word about numbers like 1.234 or 1,234, which may be one or a thousand."""
    texts = [
        cells.at(row, k) for row in range(guess.heading_rows, len(cells.rows)) for k in guess.values
    ]
    filled = [text for text in texts if not is_missing(text)]
    if not filled or not all(re.fullmatch(r"[1-9]\d{0,2}[.,]\d{3}", text) for text in filled):
        return ()
    read = as_number(filled[0], guess.decimal)
    return (f"{quoted(filled[0])} is read as {read:g}; if that is wrong, change the decimal mark.",)


# -- with headings ----------------------------------------------------------------------


def _by_headings(cells: Cells, headings: Heading, mark: str) -> TableGuess:
    _refuse_nameless(cells, headings, mark)
    roles, unit_doubts = _one_unit(cells, headings)
    length, length_doubts = _length_unit(cells, headings.rows, roles, headings.text, mark)
    lights, light_doubts = _light_units(cells, headings.rows, roles, headings.text, mark)
    if Role.X in roles:
        kind = TableKind.PLACES
    elif Role.HOLE in roles:
        kind = TableKind.NUMBERED
    else:
        kind = TableKind.IN_ORDER
    passed = [
        f"Column {cells.number_of(k)} ({name}) is passed over."
        for k, (role, name) in enumerate(zip(roles, headings.names, strict=True))
        if role is Role.PASSED and name and headings.roles[k] is Role.PASSED
    ]
    return TableGuess(
        kind=kind,
        roles=roles,
        heading_rows=headings.rows,
        decimal=mark,
        length=length,
        lights=lights,
        separated=cells.separated,
        doubts=(*passed, *unit_doubts, *length_doubts, *light_doubts),
    )


def _refuse_nameless(cells: Cells, headings: Heading, mark: str) -> None:
    """Refuse numbers under no heading: cut-off decimals, or readings nobody named."""
    named = max(k for k, name in enumerate(headings.names) if name) + 1
    for row in range(headings.rows, len(cells.rows)):
        for column in range(cells.width):
            inside = column < named and headings.names[column]
            text = cells.at(row, column)
            if not inside and as_number(text, mark) is not None:
                hint = " (a decimal comma?)" * (cells.separated == "commas")
                raise TableError(
                    f"row {cells.numbers[row]}, column {cells.number_of(column)}: {quoted(text)} "
                    "stands under "
                    f"no heading{hint}; name its column, or part the cells by semicolons."
                )


def _one_unit(cells: Cells, headings: Heading) -> tuple[tuple[Role, ...], tuple[str, ...]]:
    """Roles with readings in one unit only: what says the same in another is passed over."""
    units = {
        k: light_unit_in(headings.names[k])
        for k, role in enumerate(headings.roles)
        if role is Role.VALUE
    }
    told = [unit for unit in units.values() if unit is not None]
    if len(set(told)) < 2:
        return headings.roles, ()
    kept = TableLight.PPFD if TableLight.PPFD in told else told[0]
    passed = [k for k, unit in units.items() if unit not in {kept, None}]
    roles = [Role.PASSED if k in passed else role for k, role in enumerate(headings.roles)]
    return tuple(roles), tuple(
        f"Column {cells.number_of(k)} ({headings.names[k]}) is passed over: another says it in "
        f"{kept.value}."
        for k in passed
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


def _light_units(
    cells: Cells, first: int, roles: tuple[Role, ...], heading: str, mark: str
) -> tuple[tuple[TableLight, ...], tuple[str, ...]]:
    """The unit of each column: as above or in it, else as of the others, else by its size."""
    columns = [k for k, role in enumerate(roles) if role is Role.VALUE]
    texts = {k: [cells.at(row, k) for row in range(first, len(cells.rows))] for k in columns}
    told = {
        k: light_unit_in(" ".join(cells.at(row, k) for row in range(first)))
        or next((unit for text in texts[k] if (unit := light_unit_in(text))), None)
        for k in columns
    }
    usual = next((unit for unit in told.values() if unit is not None), light_unit_in(heading))
    doubts: tuple[str, ...] = ()
    if usual is None:
        numbers = [n for k in columns for t in texts[k] if (n := as_number(t, mark)) is not None]
        usual = TableLight.PPFD
        doubts = (f"No unit of light is given; {PPFD_UNIT} is supposed.",)
        if numbers and statistics.median(numbers) > LARGEST_PPFD:
            usual = TableLight.LUX
            doubts = ("No unit of light is given; such large numbers are taken for lux.",)
    return tuple(told.get(k) or usual for k in range(len(roles))), doubts


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
    _refuse_cut_decimals(cells, first, width)
    if width <= 3 and [n for n in numbers if n is not None and n != round(n)] == []:
        ascending = [n for n in numbers if n is not None]
        rising = ascending == sorted(ascending) and ascending[:1] == [1.0]
        counted = len(ascending) >= _FEW_ROWS - 1 and _counts([cells.at(r, 0) for r in body], mark)
        if rising and (width == 2 or counted):
            roles = (Role.HOLE, *[Role.VALUE] * (width - 1))
            found = _with_light(cells, first, mark, heading, TableKind.NUMBERED, roles)
            said = "The first column counts and is taken for hole numbers."
            return replace(found, doubts=(said, *found.doubts)) if width == 3 else found
    return _matrix(cells, first, mark, heading, width)


def _refuse_cut_decimals(cells: Cells, first: int, width: int) -> None:
    """Refuse '13,261,5' between commas, which is a hole and 261,5 or three numbers."""
    rows = cells.rows[first:]
    if cells.separated != "commas" or width != 3 or len(rows) < 2:
        return
    counts = _counts([row[0] for row in rows], ".")
    ends = [row[2] for row in rows if len(row) > 2]
    if counts and all(re.fullmatch(r"\d{1,2}", end) for end in ends):
        row = next(k for k, row in enumerate(rows, start=first) if len(row) > 2)
        raise TableError(
            f"row {cells.numbers[row]}: '{','.join(cells.rows[row])}' may hold a decimal comma "
            "beside the commas that part the cells; part them by semicolons."
        )


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
    above = [cells.at(first - 1, k) for k in range(1, width)] if first else []
    # A name in the corner and names below it make the first row one of readings.
    heads = not any(above) and (
        not cells.at(first, 0) or any(as_length(text, 1.0, mark) is not None for text in down[1:])
    )
    axis_x = many and corner_free and heads and _steps_evenly(across, mark)
    axis_y = many and corner_free and _steps_evenly(down[1:], mark)
    counted = axis_x and _counts(across, mark)
    names_down = not axis_y and many and all(
        as_number(text, mark) is None for text in down[1:] if not is_summary(text)
    )  # fmt: skip
    axes = axis_x and axis_y and not (counted and _counts(down[1:], mark))
    label_row = not axes and corner_free and axis_x
    label_column = not axes and (names_down or (label_row and axis_y) or (label_row and counted))
    doubts: list[str] = []
    if not axes and not corner_free and len(down) > 2 and width > 2:
        label_row, label_column = _counting(cells, first, width, mark, doubts)
    length = TableLength.CM
    top = True
    if axes:
        named = length_unit_in(heading + " " + cells.at(first, 0))
        length, told = (named, ()) if named else _length_by_look([*across, *down[1:]], mark)
        doubts += told
        top = False
    elif label_column:
        top = _first_is_far(down[label_row:], doubts)
    names = [
        cells.at(first if label_row else first - 1, k) if first or label_row else ""
        for k in range(width)
    ]
    _refuse_right_to_left(names)
    start = 1 if (axes or label_column) else 0
    roles = [Role.PASSED] * start + [Role.VALUE] * (width - start)
    for k, name in enumerate(names):
        if k >= start and is_summary(name):
            roles[k] = Role.PASSED
            doubts.append(f"Column {cells.number_of(k)} ({name}) is left out.")
    found = _with_light(
        cells, first + (axes or label_row), mark, heading, TableKind.MATRIX, tuple(roles)
    )
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


def _counting(
    cells: Cells, first: int, width: int, mark: str, doubts: list[str]
) -> tuple[bool, bool]:
    """Whether the first row and the first column count places instead of holding readings."""
    rows = range(first, len(cells.rows))
    top = list(cells.rows[first])
    down = [cells.at(row, 0) for row in rows]
    if _counts(top, mark) and len(top) == width - 1 and _counts(down[1:], mark):
        raise TableError(
            f"row {cells.numbers[first]} counts columns, but has one cell less than the rows "
            "below; put an empty cell before it."
        )
    row, column = _counts(top, mark) and len(top) == width, _counts(down, mark)
    if row:
        doubts.append(f"The first row counts 1 to {width} and is not taken for readings.")
    if column:
        doubts.append(f"The first column counts 1 to {len(down)} and is not taken for readings.")
    return row, column


def _first_is_far(labels: list[str], doubts: list[str]) -> bool:
    """Whether the first row is the far side, as the names of the rows have it."""
    first, last = labels[0], labels[-1]
    if NEAR.search(first) or FAR.search(last):
        return False
    if not (FAR.search(first) or NEAR.search(last)):
        doubts.append("Nothing says which side the first row is; the far side is supposed.")
    return True


def _refuse_right_to_left(names: list[str]) -> None:
    filled = [name for name in names if name and not is_summary(name)]
    if len(filled) > 1 and (
        (RIGHT.search(filled[0]) and not RIGHT.search(filled[-1]))
        or (LEFT.search(filled[-1]) and not LEFT.search(filled[0]))
    ):
        raise TableError(
            f"the columns run from right to left ({quoted(filled[0])} first); turn them round, so "
            "that the left side comes first."
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
    lights, doubts = _light_units(cells, first, roles, heading, mark)
    return TableGuess(
        kind=kind,
        roles=roles,
        heading_rows=first,
        decimal=mark,
        lights=lights,
        separated=cells.separated,
        doubts=doubts,
    )
