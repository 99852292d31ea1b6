"""From a table and its interpretation to readings at places, or one clear sentence."""

from __future__ import annotations

import itertools
import math
import re
import statistics
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final, NoReturn

from planner.language import word
from planner.plan.quantity import LARGEST_PPFD, beyond_sun
from planner.plan.space import Point, contains
from planner.plan.survey import MAX_GRID, MAX_POINTS, MAX_READINGS, Reading, Spacing, SurveyGrid
from planner.survey.layout import grid_places, holes
from planner.survey.table_cells import Cells, TableError, as_length, as_number, quoted
from planner.survey.table_guess import TableGuess, TableKind
from planner.survey.table_headings import Role, TableLight, is_missing, is_summary, light_unit_in
from planner.units import PPFD_UNIT, listed

SAME_PLACE_M: Final = 0.0005
WALL_M: Final = 0.001
_FEW_ROWS: Final = 4


@dataclass(frozen=True)
class TableReadings:
    """What a table says, in µmol m⁻² s⁻¹ and metres; exactly one of the parts is filled.

    ``placed``: x, y in metres and value. ``numbered``: hole from 1 and value. ``picture``:
    rows of values with the near side (smallest y) first, None where there is none.
    ``times`` are seconds since the first of ``placed`` or ``numbered``, one for each, or none at
    all. ``left_out`` names rows that were passed over, in sentences.
    """

    placed: tuple[tuple[float, float, float], ...] = ()
    numbered: tuple[tuple[int, float], ...] = ()
    picture: tuple[tuple[float | None, ...], ...] = ()
    left_out: tuple[str, ...] = ()
    times: tuple[float, ...] = ()

    @property
    def moments(self) -> tuple[float | None, ...]:
        """When each of ``placed`` or ``numbered`` was read, None where nobody noted it."""
        return self.times or (None,) * self.count

    @property
    def count(self) -> int:
        """Number of readings."""
        filled = sum(value is not None for row in self.picture for value in row)
        return len(self.placed) + len(self.numbered) + filled


def read_table(
    cells: Cells, guess: TableGuess, *, lux_per_umol: float | None = None
) -> TableReadings:
    """Read a table as a guess says, lux divided by ``lux_per_umol``.

    Raises
    ------
    TableError
        If a cell does not fit; the sentence names row and column as a spreadsheet does.
    """
    if not guess.values:
        raise TableError(
            "no column is taken for readings; name the one that holds them, or change what parts "
            "the cells."
        )
    if (Role.X in guess.roles) is not (Role.Y in guess.roles):
        there, lacking = (Role.X, Role.Y) if Role.X in guess.roles else (Role.Y, Role.X)
        raise TableError(
            f"column {guess.number_of(guess.roles.index(there))} is {word(there)}, but no column "
            f"is {word(lacking)}; name both, or neither."
        )
    for unit in (guess.light(k) for k in guess.values):
        if unit is TableLight.WATT:
            raise TableError(
                "the values are in W/m², which says nothing about photons; read PPFD or lux "
                "instead, or choose another unit if that is what they are."
            )
        if unit.lux is not None and not lux_per_umol:
            raise TableError(
                f"the values are in {unit.value}; choose the lamp's spectrum, by which they "
                f"become {PPFD_UNIT}."
            )
    reader = _Reader(cells, guess, lux_per_umol or 1.0)
    found = reader.picture() if guess.kind is TableKind.MATRIX else reader.rows()
    if found.count == 0:
        raise TableError("the table holds no readings; every value in it is empty.")
    if found.count > MAX_READINGS:
        raise TableError(f"a survey holds at most {MAX_READINGS} readings, not {found.count}.")
    return found


@dataclass(frozen=True)
class _Reader:
    cells: Cells
    guess: TableGuess
    lux_per_umol: float

    def rows(self) -> TableReadings:
        roles = self.guess.roles
        places = {role: roles.index(role) for role in (Role.X, Role.Y, Role.HOLE) if role in roles}
        columns = self.guess.values
        placed: list[tuple[float, float, float]] = []
        numbered: list[tuple[int, float]] = []
        left_out: list[str] = []
        clock: list[float | None] = []
        read: list[list[float | None]] = []
        silent: list[int] = []
        order = 0
        for row in range(self.guess.heading_rows, len(self.cells.rows)):
            first = next((cell for cell in self.cells.rows[row] if cell), "")
            if is_summary(first):
                left_out.append(f"Row {self.cells.numbers[row]} ({first}) is left out.")
                continue
            order += 1
            read.append([self.value(row, k) for k in columns])
            values = [value for value in read[-1] if value is not None]
            if not values:
                silent.append(row)
                continue
            if Role.TIME in roles:
                clock += [seconds_of(self.cells.at(row, roles.index(Role.TIME)))] * len(values)
            if self.guess.kind is TableKind.PLACES:
                x = self.length(row, places[Role.X], "x")
                y = self.length(row, places[Role.Y], "y")
                placed += [(x, y, value) for value in values]
            elif self.guess.kind is TableKind.NUMBERED:
                hole = self.hole(row, places[Role.HOLE])
                numbered += [(hole, value) for value in values]
            else:
                numbered += [(order, value) for value in values]
        left_out[:0] = [*self.apart(read), *self.without_number(silent)]
        times = tuple(moment for moment in clock if moment is not None)
        if len(times) < len(clock):
            left_out.append("The times are passed over: not every reading has one.")
            times = ()
        return TableReadings(
            tuple(placed), tuple(numbered), (), tuple(left_out), _since_the_first(times)
        )

    def without_number(self, rows: Sequence[int]) -> list[str]:
        """A word about rows that say they have no value ('n/a'); not of those just left empty."""
        roles = self.guess.roles
        by = roles.index(Role.HOLE) if Role.HOLE in roles else None
        cells = ((row, self.cells.at(row, k)) for row in rows for k in self.guess.values)
        said = {row: text for row, text in cells if text}
        if not said:
            return []
        names = [str(self.cells.numbers[row] if by is None else self.cells.at(row, by) or "?")
                 for row in said]  # fmt: skip
        what = "Row" if by is None else "Hole"
        several = len(names) > 1
        return [
            f"{what}{'s' * several} {listed(names)} {'have' if several else 'has'} no number "
            f"({', '.join(dict.fromkeys(said.values()))})."
        ]

    def apart(self, read: list[list[float | None]]) -> list[str]:
        """A word about columns that are two surveys rather than one read again.

        Two that differ by more than 4 % on the mean, and by five times what their scatter allows.
        """
        columns = self.guess.values
        for number in range(1, len(columns)):
            pairs = ((line[0], line[number]) for line in read)
            logs = [math.log(b / a) for a, b in pairs if a and b]
            mean = statistics.fmean(logs) if len(logs) >= _FEW_ROWS else 0.0
            if abs(mean) > 0.04 and abs(mean) > 5 * statistics.stdev(logs) / math.sqrt(len(logs)):
                first, other = (self.guess.number_of(columns[k]) for k in (0, number))
                return [
                    f"Column {other} reads {100 * math.expm1(mean):+.0f} % against column {first} "
                    "throughout: if these are two surveys, take one column at a time."
                ]
        return []

    def picture(self) -> TableReadings:
        guess, cells = self.guess, self.cells
        first = guess.heading_rows + (guess.axes or guess.label_row)
        start = 1 if guess.axes or guess.label_column else 0
        head = [cells.at(guess.heading_rows, k) for k in range(cells.width)]
        labelled = guess.axes or guess.label_row
        columns = [
            k
            for k in range(start, cells.width)
            if guess.roles[k : k + 1] == (Role.VALUE,) and not (labelled and is_summary(head[k]))
        ]
        rows, left_out = [], []
        for row in range(first, len(cells.rows)):
            if start and is_summary(cells.at(row, 0)):
                left_out.append(f"Row {cells.numbers[row]} ({cells.at(row, 0)}) is left out.")
                continue
            rows.append(row)
        values = [[self.value(row, k) for k in columns] for row in rows]
        _refuse_means(values)
        if guess.axes:
            xs = [self.length(guess.heading_rows, k, "x") for k in columns]
            ys = [self.length(row, 0, "y") for row in rows]
            placed = tuple(
                (x, y, value)
                for y, line in zip(ys, values, strict=True)
                for x, value in zip(xs, line, strict=True)
                if value is not None
            )
            return TableReadings(placed=placed, left_out=tuple(left_out))
        if guess.first_row_is_top:
            values.reverse()
        return TableReadings(
            picture=tuple(tuple(line) for line in values), left_out=tuple(left_out)
        )

    def value(self, row: int, column: int) -> float | None:
        text = self.cells.at(row, column)
        if is_missing(text):
            return None
        number = as_number(text, self.guess.decimal)
        if number is None:
            self.refuse(row, column, f"{quoted(text)} is not a reading; write a number, or nothing")
        unit = self.guess.light(column)
        if light_unit_in(text) not in {None, unit}:
            self.refuse(row, column, f"{quoted(text)} is not in {unit.value} as the rest")
        if number < 0:
            self.refuse(row, column, f"{quoted(text)} is below zero, which no light is")
        value = number if unit.lux is None else number * unit.lux / self.lux_per_umol
        if value > LARGEST_PPFD:
            self.refuse(
                row,
                column,
                f"{beyond_sun(quoted(text), value)}; check the unit (lux?) and the decimal mark",
            )
        return value

    def length(self, row: int, column: int, name: str) -> float:
        text = self.cells.at(row, column)
        metres = as_length(text, self.guess.length.metres, self.guess.decimal)
        if metres is None:
            what = f"{quoted(text)} is not a length" if text else f"{name} is missing"
            self.refuse(row, column, f"{what}; write for example 12.5 or 4 7/8 in")
        return metres

    def hole(self, row: int, column: int) -> int:
        text = self.cells.at(row, column)
        number = as_number(text, self.guess.decimal)
        if number is None or number != round(number) or not 1 <= number <= MAX_POINTS:
            what = f"{quoted(text)} is not a hole number" if text else "the hole number is missing"
            self.refuse(row, column, f"{what}; holes count 1, 2, 3 and so on")
        return int(number)

    def refuse(self, row: int, column: int, what: str) -> NoReturn:
        place = f"row {self.cells.numbers[row]}, column {self.cells.number_of(column)}"
        raise TableError(f"{place}: {what}.")


_CLOCK: Final = re.compile(
    r"(?:\d{4}-\d\d-\d\d[T ])?(\d{1,2}):(\d\d)(?::(\d\d)(?:\.\d+)?)?\s*([ap])?(?:\.?m\.?)?",
    re.IGNORECASE,
)
_DAY: Final = 86_400.0


def seconds_of(text: str) -> float | None:
    """Seconds since midnight of a time of day such as 18:05, 18:05:30 or 6:05 pm."""
    match = _CLOCK.fullmatch(text.strip())
    if not match:
        return None
    hour, minute, second = (int(part or 0) for part in match.groups()[:3])
    if match[4]:
        hour = hour % 12 + 12 * (match[4].lower() == "p")
    return hour * 3600.0 + minute * 60.0 + second if hour < 24 and minute < 60 else None


def _since_the_first(times: tuple[float, ...]) -> tuple[float, ...]:
    """Times of day as seconds since the earliest; an evening may go past midnight."""
    days, told, before = 0, [], -math.inf
    for moment in times:
        days += moment < before - _DAY / 2
        before = moment
        told.append(days * _DAY + moment)
    return tuple(moment - min(told) for moment in told)


def _refuse_means(values: list[list[float | None]]) -> None:
    """Refuse a last row or column that is the mean or sum of the others and says so nowhere."""
    for lines, what in ((values, "row"), (list(map(list, zip(*values, strict=False))), "column")):
        if len(lines) < 3 or len(lines[0]) < 2:
            continue
        pairs = [
            (end, [v for v in before if v is not None])
            for *before, end in zip(*lines, strict=False)
            if end is not None
        ]
        if len(pairs) < 2 or not all(len(before) > 1 for _, before in pairs):
            continue
        uneven = any(max(before) - min(before) > 2 for _, before in pairs)
        for name, made in (("mean", statistics.fmean), ("sum", math.fsum)):
            if uneven and all(abs(end - made(before)) <= 0.5 for end, before in pairs):
                raise TableError(
                    f"the last {word(what)} is the {name} of the others; leave it out, or name it "
                    f"'{name}' in the first {'column' if what == 'row' else 'row'}."
                )


# -- onto a survey ----------------------------------------------------------------------


def onto_holes(
    table: TableReadings, points: Sequence[Point], *, grid: SurveyGrid | None, tolerance: float
) -> tuple[Reading, ...]:
    """Give readings to the holes of a survey that is laid out already.

    Places go to the nearest hole within ``tolerance`` metres; a picture must have the rows
    and columns of the survey's ``grid``.

    Raises
    ------
    TableError
        If a reading belongs to no hole.
    """
    if table.numbered:
        highest = max(hole for hole, _ in table.numbered)
        if highest > len(points):
            raise TableError(
                f"the table holds a reading of hole {highest}, but the survey has only "
                f"{len(points)} holes."
            )
        return tuple(
            Reading(hole=hole, value=value, at=at)
            for (hole, value), at in zip(table.numbered, table.moments, strict=True)
        )
    if table.placed:
        return tuple(
            Reading(hole=_nearest(points, x, y, tolerance), value=value, at=at)
            for (x, y, value), at in zip(table.placed, table.moments, strict=True)
        )
    return _picture_onto(table, points, grid)


def _nearest(points: Sequence[Point], x: float, y: float, tolerance: float) -> int:
    distance, hole = min(
        ((u - x) ** 2 + (v - y) ** 2, k) for k, (u, v) in enumerate(points, start=1)
    )
    if distance > tolerance**2:
        raise TableError(
            f"no hole lies within {tolerance * 100:g} cm of x = {x * 100:g} cm, "
            f"y = {y * 100:g} cm; "
            "check the unit of length and the corner the table counts from."
        )
    return hole


def _picture_onto(
    table: TableReadings, points: Sequence[Point], grid: SurveyGrid | None
) -> tuple[Reading, ...]:
    rows, columns = len(table.picture), len(table.picture[0])
    if grid is None or (grid.rows, grid.columns) != (rows, columns):
        has = "was not laid out as a grid" if grid is None else (
            f"has {grid.rows} rows and {grid.columns} columns"
        )  # fmt: skip
        raise TableError(
            f"the table has {rows} rows and {columns} columns of values, but the survey {has}."
        )
    # Columns and rows of the grid are found by the coordinates that holes share.
    xs, ys = sorted({round(x, 6) for x, _ in points}), sorted({round(y, 6) for _, y in points})
    if len(xs) > columns or len(ys) > rows or (len(xs), len(ys)) != (columns, rows):
        raise TableError(
            "the survey's grid has whole rows or columns without holes; give hole numbers instead "
            "of a picture of the board."
        )
    number = {(round(x, 6), round(y, 6)): k for k, (x, y) in enumerate(points, start=1)}
    readings: list[Reading] = []
    for y, line in zip(ys, table.picture, strict=True):
        for x, value in zip(xs, line, strict=True):
            if value is None:
                continue
            if (x, y) not in number:
                raise TableError(
                    f"the table holds {value:g} at x = {x * 100:g} cm, y = {y * 100:g} cm, where "
                    "the survey has no hole."
                )
            readings.append(Reading(hole=number[x, y], value=value))
    return tuple(sorted(readings, key=lambda reading: reading.hole))


def laid_out(
    table: TableReadings,
    footprint: tuple[Point, ...],
    *,
    origin: Point = (0.0, 0.0),
    outside: str = "outside the space",
) -> tuple[tuple[Point, ...], tuple[Reading, ...], SurveyGrid | None]:
    """Holes, readings and grid of a new survey made from a table.

    Places become holes in their order, counted from ``origin``; readings at one place
    belong to one hole. A picture becomes a grid of cell centres over the footprint, or
    over what else is given for it. ``outside`` says of a refused place where it lies.

    Raises
    ------
    TableError
        If the table names hole numbers only, which need a survey laid out before.
    """
    if table.numbered:
        raise TableError(
            "the table names holes by number only; lay out the survey first, then put the table "
            "onto it."
        )
    if table.picture:
        return _picture_laid_out(table, footprint, outside)
    points: list[Point] = []
    found: dict[tuple[int, int], int] = {}
    readings: list[Reading] = []
    for (x, y, value), at in zip(table.placed, table.moments, strict=True):
        key = (round(x / SAME_PLACE_M), round(y / SAME_PLACE_M))
        if key not in found:
            if not _inside(x + origin[0], y + origin[1], footprint):
                raise TableError(
                    f"the place x = {x * 100:g} cm, y = {y * 100:g} cm lies {outside}; "
                    "check the unit of length (mm?) and the corner the table counts from."
                )
            points.append((x + origin[0], y + origin[1]))
            found[key] = len(points)
        readings.append(Reading(hole=min(found[key], MAX_POINTS), value=value, at=at))
    if len(points) > MAX_POINTS:
        raise TableError(f"a survey has at most {MAX_POINTS} holes, not {len(points)}.")
    return tuple(points), tuple(readings), None


def _inside(x: float, y: float, footprint: tuple[Point, ...]) -> bool:
    """Whether a place lies in the space, its walls included to a millimetre."""
    around = itertools.product((-WALL_M, 0.0, WALL_M), repeat=2)
    return any(contains(footprint, x + dx, y + dy) for dx, dy in around)


def _picture_laid_out(
    table: TableReadings, footprint: tuple[Point, ...], outside: str
) -> tuple[tuple[Point, ...], tuple[Reading, ...], SurveyGrid]:
    rows, columns = len(table.picture), max(map(len, table.picture))
    if max(rows, columns) > MAX_GRID:
        raise TableError(
            f"the table has {rows} rows and {columns} columns of values; a grid has at most "
            f"{MAX_GRID} of each."
        )
    grid = SurveyGrid(rows=rows, columns=columns, spacing=Spacing.CELLS)
    places = grid_places(grid, footprint)
    order = {point: k for k, point in enumerate(_order(grid, footprint), start=1)}
    readings: list[Reading] = []
    for row, line in enumerate(table.picture):
        for column, value in enumerate(line):
            point = places[row * columns + column]
            if value is None:
                continue
            if point not in order:
                raise TableError(
                    f"the table holds {value:g} at row {row + 1} from the near side, column "
                    f"{column + 1}, which lies {outside}."
                )
            readings.append(Reading(hole=order[point], value=value))
    return tuple(order), tuple(sorted(readings, key=lambda r: r.hole)), grid


def _order(grid: SurveyGrid, footprint: tuple[Point, ...]) -> tuple[Point, ...]:
    try:
        return holes(grid, footprint)
    except ValueError as error:
        raise TableError(str(error)) from error
