"""A table before it is understood: its cells, and its text where it has one."""

from __future__ import annotations

from dataclasses import dataclass, replace
from pathlib import Path
from typing import Final

from planner.app.jobs import Cancelled, Job, Progress
from planner.files.disk import reason_of
from planner.plan.plan import Plan
from planner.plan.survey import Reading, Survey
from planner.plan.survey_edits import free_key, with_parts
from planner.survey.layout import closest_pair, copied
from planner.survey.table_cells import (
    MAX_BYTES,
    Cells,
    TableError,
    cells_of_text,
    text_of_bytes,
)
from planner.survey.table_guess import TableGuess, TableKind, guess_table
from planner.survey.table_headings import Role
from planner.survey.table_reading import TableReadings, laid_out, onto_holes
from planner.survey.table_workbook import is_workbook, sheets_of_bytes

SEPARATORS: Final = (
    ("\t", "Tabs"), (";", "Semicolons"), (",", "Commas"), (" ", "Spaces"), ("|", "Bars"),
)  # fmt: skip
_NEAREST_M: Final = 0.02


@dataclass(frozen=True)
class TableSource:
    """Where a table came from; ``text`` is None for a workbook with its filled ``sheets``."""

    name: str
    cells: Cells
    text: str | None
    sheets: tuple[Cells, ...] = ()

    def on_sheet(self, name: str) -> TableSource:
        """The same workbook with another of its sheets in sight."""
        return replace(self, cells=next(one for one in self.sheets if one.sheet == name))

    def parted_by(self, separator: str) -> TableSource:
        """The same text read with another sign between the cells; raises ``TableError``."""
        if self.text is None:
            return self
        return replace(self, cells=cells_of_text(self.text, separator))


def source_of_text(text: str, name: str = "Pasted readings") -> TableSource:
    """A table from the clipboard; raises ``TableError``."""
    if not text.strip():
        raise TableError(
            "the clipboard holds no text; select the readings in the spreadsheet, copy them, and "
            "paste again."
        )
    return TableSource(name, cells_of_text(text), text)


def source_of_file(path: Path) -> TableSource:
    """A table from a CSV, TSV, text or XLSX file; raises ``TableError``."""
    try:
        if path.stat().st_size > MAX_BYTES:
            raise TableError(f"'{path.name}' is too large for a table of readings.")
        data = path.read_bytes()
    except OSError as error:
        raise TableError(f"'{path.name}' cannot be read: {reason_of(error)}.") from error
    text = None if is_workbook(data) else text_of_bytes(data)
    if text is not None:
        return TableSource(path.stem, cells_of_text(text), text)
    sheets = sheets_of_bytes(data)
    return TableSource(path.stem, sheets[0], None, sheets)


def reading_job(path: Path | None, text: str) -> Job:
    """The work of reading a file, or pasted text without one, and of guessing what it means."""

    def work(_progress: Progress, _cancelled: Cancelled) -> tuple[TableSource, TableGuess]:
        source = source_of_text(text) if path is None else source_of_file(path)
        return source, guessed(source.cells)

    return work


@dataclass(frozen=True)
class Imported:
    """What becomes of a table: a new survey, or readings added to one of the plan."""

    survey: Survey | None = None
    onto: str = ""
    readings: tuple[Reading, ...] = ()

    @property
    def count(self) -> int:
        """Number of readings."""
        return len(self.survey.readings if self.survey is not None else self.readings)


def imported(
    table: TableReadings,
    plan: Plan,
    name: str,
    *,
    onto: Survey | None,
    like: Survey | None = None,
    lux_per_umol: float | None,
) -> Imported:
    """Readings of a table put onto a survey, or a new survey made of them.

    Hole numbers alone mean the board of the survey ``like``: the new one is laid out as it is,
    under its conditions, but for the lining, which is left as in the plan.

    Raises
    ------
    ValueError
        If they do not fit; the message is a sentence.
    """
    if onto is not None:
        tolerance = min(_NEAREST_M, 0.45 * closest_pair(onto.points))
        readings = onto_holes(table, onto.points, grid=onto.grid, tolerance=tolerance)
        return Imported(onto=onto.key, readings=readings)
    if table.numbered and like is not None:
        return Imported(
            survey=with_parts(
                copied(plan, like),
                name=name[:120].strip() or "Readings",
                lining=None,
                lux_per_umol=lux_per_umol,
                readings=onto_holes(table, like.points, grid=like.grid, tolerance=_NEAREST_M),
            )
        )
    points, readings, grid = laid_out(table, plan.space.footprint)
    survey = Survey(
        key=free_key(plan),
        name=name[:120].strip() or "Readings",
        lux_per_umol=lux_per_umol,
        grid=grid,
        points=points,
        readings=readings,
    )
    return Imported(survey=survey)


def guessed(cells: Cells) -> TableGuess:
    """What cells seem to mean; where nothing can be made of them, no column is a reading.

    The reason is then among the doubts, for whoever corrects it by hand.
    """
    try:
        return guess_table(cells)
    except TableError as error:
        reason = f"{str(error)[:1].upper()}{str(error)[1:]}"
        return TableGuess(
            TableKind.IN_ORDER,
            (Role.PASSED,) * cells.width,
            separated=cells.separated,
            doubts=(reason, *cells.notes),
        )


# -- corrections of a guess -------------------------------------------------------------


def as_kind(guess: TableGuess, kind: TableKind, width: int) -> TableGuess:
    """The guess with another kind of table, and the columns that kind usually has.

    Raises
    ------
    ValueError
        If the table has too few columns for that kind.
    """
    if kind is guess.kind:
        return guess
    first = {
        TableKind.MATRIX: (),
        TableKind.PLACES: (Role.X, Role.Y),
        TableKind.NUMBERED: (Role.HOLE,),
        TableKind.IN_ORDER: (),
    }[kind]
    if width <= len(first):
        raise ValueError(
            f"this takes at least {len(first) + 1} columns, but the table has {width}; check what "
            "parts its cells."
        )
    roles = (*first, *[Role.VALUE] * (width - len(first)))
    return replace(
        guess, kind=kind, roles=roles, axes=False, label_column=False, label_row=False, doubts=()
    )


def with_roles(
    guess: TableGuess, width: int, x: int, y: int, hole: int, values: tuple[int, ...]
) -> TableGuess:
    """The guess with other columns (counted from 0) for places, holes and values.

    Raises
    ------
    ValueError
        If two things are said to stand in one column, or none holds readings.
    """
    roles = [Role.PASSED] * width
    named = {TableKind.PLACES: ((x, Role.X), (y, Role.Y)), TableKind.NUMBERED: ((hole, Role.HOLE),)}
    for column, role in (*named.get(guess.kind, ()), *((k, Role.VALUE) for k in values)):
        if not 0 <= column < width:
            raise ValueError(f"the table has {width} columns, so there is no column {column + 1}.")
        if roles[column] is not Role.PASSED:
            raise ValueError(f"column {column + 1} is named twice; name each column once.")
        roles[column] = role
    if not values:
        raise ValueError("no column holds readings; write for example 3, or 3, 4.")
    return replace(guess, roles=tuple(roles), doubts=())


BESIDE: Final = (
    "Values only", "Names in the first column", "Names in the first row", "Names in both",
    "x along the first row, y down the first column",
)  # fmt: skip


def beside_of(guess: TableGuess) -> int:
    """Which of ``BESIDE`` a guess of a picture says."""
    if guess.axes:
        return 4
    return int(guess.label_column) + 2 * int(guess.label_row)


def with_beside(guess: TableGuess, choice: int, width: int) -> TableGuess:
    """The guess of a picture with another of ``BESIDE``."""
    start = 1 if choice in {1, 3, 4} else 0
    return replace(
        guess,
        axes=choice == 4,
        label_column=choice in {1, 3},
        label_row=choice in {2, 3},
        roles=(*[Role.PASSED] * start, *[Role.VALUE] * (width - start)),
        doubts=(),
    )
