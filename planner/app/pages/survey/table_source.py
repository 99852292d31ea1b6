"""Tables before they are in the plan: whence they came, what they are taken for and look like."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Final

from PySide6.QtCore import QMimeData, QSize, Qt, Signal
from PySide6.QtGui import QPalette, QResizeEvent
from PySide6.QtWidgets import (
    QHeaderView,
    QPlainTextEdit,
    QTableWidget,
    QTableWidgetItem,
)

from planner.app.fields.form import StillCombo
from planner.app.jobs import Cancelled, Job, Progress
from planner.app.plain import explain
from planner.files.disk import reason_of
from planner.language import word
from planner.plan.edits import changed
from planner.plan.plan import Plan
from planner.plan.refusal import refusal
from planner.plan.survey import Reading, Survey
from planner.plan.survey_edits import add_survey, free_key, laid_on
from planner.survey.layout import closest_pair, copied
from planner.survey.table_cells import (
    MAX_BYTES,
    Cells,
    TableError,
    cells_of_text,
    text_of_bytes,
)
from planner.survey.table_guess import TableGuess, TableKind, guess_table
from planner.survey.table_headings import Role, TableLight
from planner.survey.table_reading import laid_out, onto_holes, read_table
from planner.survey.table_workbook import is_workbook, sheets_of_bytes
from planner.units import PPFD_UNIT

PASTED: Final = "Pasted readings"
HINT: Final = (
    "Nothing to read yet. Copy a hole number and a reading in each row, or x, y and a reading, or "
    "a picture of the board, out of a spreadsheet, and paste it here."
)
_NEAREST_M: Final = 0.02


@dataclass(frozen=True)
class Choice:
    """One sheet: its cells, what they are taken for, and where they shall go.

    ``onto`` is the key of the survey that takes the readings, '' for a new one of this ``name``;
    ``like`` that of the survey on whose board holes known by their number only lie. ``on`` is the
    obstacle whose canopy a new survey was read on, None: the plan's own. ``wanted`` tells whether
    the sheet is taken at all.
    """

    cells: Cells
    guess: TableGuess
    name: str
    onto: str = ""
    like: str = ""
    on: int | None = None
    wanted: bool = True


@dataclass(frozen=True)
class TableSource:
    """Where tables came from: the filled sheets of a workbook, or one of a ``text``.

    ``problem`` says why there are none.
    """

    name: str
    choices: tuple[Choice, ...] = ()
    text: str | None = None
    problem: str = ""


def reading_job(path: Path | None, text: str) -> Job:
    """The work of reading a file, or pasted text without one, and of guessing what it means."""

    def work(_progress: Progress, _cancelled: Cancelled) -> TableSource:
        return source_of_text(text) if path is None else source_of_file(path)

    return work


def source_of_text(text: str, name: str = PASTED, separator: str | None = None) -> TableSource:
    """A table of pasted text."""
    if not text.strip():
        return TableSource(name, text=text, problem=HINT)
    return _source(name, text, lambda: (cells_of_text(text, separator),))


def source_of_file(path: Path) -> TableSource:
    """The tables of a CSV, TSV, text, XLSX or ODS file."""
    try:
        if path.stat().st_size > MAX_BYTES:
            return TableSource(path.stem, problem=f"'{path.name}' is too large for a table.")
        data = path.read_bytes()
    except OSError as error:
        problem = f"'{path.name}' cannot be read: {reason_of(error)}."
        return TableSource(path.stem, problem=problem)
    if is_workbook(data):
        return _source(path.stem, None, lambda: sheets_of_bytes(data))
    try:
        return source_of_text(text_of_bytes(data), path.stem)
    except TableError as error:
        return TableSource(path.stem, problem=refusal(error))


def _source(name: str, text: str | None, read: Callable[[], Sequence[Cells]]) -> TableSource:
    try:
        sheets = read()
    except TableError as error:
        return TableSource(name, text=text, problem=refusal(error))
    choices = [
        Choice(one, guessed(one), (one.sheet if len(sheets) > 1 else name)[:120].strip() or PASTED)
        for one in sheets
    ]
    return TableSource(name, tuple(choices), text)


def guessed(cells: Cells) -> TableGuess:
    """What cells seem to mean; where nothing can be made of them, no column is a reading.

    The reason is then among the doubts, for whoever corrects it by hand.
    """
    try:
        return guess_table(cells)
    except TableError as error:
        return TableGuess(
            TableKind.IN_ORDER,
            (Role.PASSED,) * cells.width,
            separated=cells.separated,
            numbers=cells.columns,
            doubts=(refusal(error), *cells.notes),
        )


# -- what a table comes to --------------------------------------------------------------


@dataclass(frozen=True)
class Imported:
    """The survey as it will be, new or one of the plan, and the readings that are new in it.

    ``remarks`` say what was passed over and what was taken from where.
    """

    survey: Survey
    readings: tuple[Reading, ...]
    remarks: tuple[str, ...] = ()

    @property
    def sentence(self) -> str:
        """How many readings there are, and between which values they lie."""
        count, holes = len(self.readings), len({reading.hole for reading in self.readings})
        values = [reading.value for reading in self.readings]
        low, high = (f"{end(values):.0f}" for end in (min, max))
        span = f"{low} {PPFD_UNIT}" if low == high else f"from {low} to {high} {PPFD_UNIT}"
        return f"{count} reading{'s' * (count > 1)} at {holes} hole{'s' * (holes > 1)}, {span}."


def needs_board(choice: Choice) -> bool:
    """Whether the table tells holes by their number only and is to become a new survey."""
    return not choice.onto and choice.guess.kind in {TableKind.NUMBERED, TableKind.IN_ORDER}


def needs_canopy(choice: Choice) -> bool:
    """Whether the table tells where its holes are and is to become a new survey."""
    return not choice.onto and not needs_board(choice)


def imported(choice: Choice, plan: Plan, lux_per_umol: float | None) -> Imported:
    """What becomes of a sheet: readings put onto a survey, or a new survey made of them.

    Hole numbers alone mean the board of the survey ``like``: the new one is laid out as it is,
    under its conditions, but for the lining, which is left as in the plan.

    Raises
    ------
    ValueError
        If they do not fit; the message is a sentence.
    """
    lux = lux_per_umol if in_lux(choice.guess) else None
    table = read_table(choice.cells, choice.guess, lux_per_umol=lux)
    known = {survey.key: survey for survey in plan.surveys}
    board = known.get(choice.onto or choice.like)
    if choice.onto and board is not None:
        tolerance = min(_NEAREST_M, 0.45 * closest_pair(board.points))
        new = onto_holes(table, board.points, grid=board.grid, tolerance=tolerance)
        if board.readings:  # whose clock began at another moment
            new = tuple(reading.model_copy(update={"at": None}) for reading in new)
        survey = changed(board, readings=(*board.readings, *new))
        return Imported(survey, new, table.left_out)
    if table.numbered and board is not None:
        new = onto_holes(table, board.points, grid=board.grid, tolerance=_NEAREST_M)
        survey = changed(
            copied(plan, board), name=choice.name, lining=None, lux_per_umol=lux, readings=new
        )
        told = f"Board and conditions are those of '{board.name}', but for what is on the walls."
        return Imported(survey, new, (told, *table.left_out))
    if table.numbered and known:
        raise TableError(
            "the table names holes by number only; choose on whose board they were read."
        )
    on_top, outline = laid_on(plan, choice.on)
    outside = "outside the space" if on_top is None else "beside the canopy it was read on"
    points, new, grid = laid_out(table, outline, outside=outside)
    survey = Survey(
        key=free_key(plan), name=choice.name, lux_per_umol=lux, grid=grid, points=points,
        on_top=on_top, readings=new,
    )  # fmt: skip
    return Imported(survey, new, table.left_out)


def in_lux(guess: TableGuess) -> bool:
    """Whether any column of readings is in a unit of what eyes see."""
    return any(guess.light(k).lux is not None for k in guess.values)


def with_tables(plan: Plan, choices: Sequence[Choice], lux_per_umol: float | None) -> Plan:
    """The plan with what becomes of all wanted sheets; raises as ``imported`` does."""
    for choice in choices:
        if choice.wanted:
            survey = imported(choice, plan, lux_per_umol).survey
            if choice.onto:
                surveys = (survey if old.key == survey.key else old for old in plan.surveys)
                plan = changed(plan, surveys=tuple(surveys))
            else:
                plan = add_survey(plan, survey)
    return plan


# -- corrections of a guess -------------------------------------------------------------


def as_picture(guess: TableGuess, picture: bool) -> TableGuess:
    """The guess as a picture of the board, or as rows; every column then holds readings."""
    if picture is (guess.kind is TableKind.MATRIX):
        return guess
    return replace(
        guess,
        kind=TableKind.MATRIX if picture else TableKind.IN_ORDER,
        roles=(Role.VALUE,) * len(guess.roles),
        axes=False,
        label_column=False,
        label_row=False,
        doubts=(),
    )


def with_column(guess: TableGuess, column: int, role: Role, light: TableLight) -> TableGuess:
    """The guess with another meaning of a column (from 0), and its readings in this unit.

    One column is x, one is y, or one is the hole; the one that was it before is passed over.
    A picture of the board has one unit throughout.
    """
    roles, lights = list(guess.roles), [guess.light(k) for k in range(len(guess.roles))]
    rivals = {
        Role.X: {Role.X, Role.HOLE}, Role.Y: {Role.Y, Role.HOLE},
        Role.HOLE: {Role.X, Role.Y, Role.HOLE}, Role.TIME: {Role.TIME},
    }.get(role, set())  # fmt: skip
    roles = [Role.PASSED if old in rivals else old for old in roles]
    roles[column], lights[column] = role, light
    kind = guess.kind
    if kind is not TableKind.MATRIX:
        kind = (
            TableKind.PLACES if {Role.X, Role.Y} & set(roles)
            else TableKind.NUMBERED if Role.HOLE in roles else TableKind.IN_ORDER
        )  # fmt: skip
    elif role is Role.VALUE:
        lights = [light] * len(roles)
    return replace(guess, kind=kind, roles=tuple(roles), lights=tuple(lights), doubts=())


BESIDE: Final = (
    "Values only", "Names in the first column", "Names in the first row", "Names in both",
    "x along the first row, y down the first column",
)  # fmt: skip


def beside_of(guess: TableGuess) -> int:
    """Which of ``BESIDE`` a guess of a picture says."""
    return 4 if guess.axes else int(guess.label_column) + 2 * int(guess.label_row)


def with_beside(guess: TableGuess, choice: int) -> TableGuess:
    """The guess of a picture with another of ``BESIDE``."""
    start = 1 if choice in {1, 3, 4} else 0
    return replace(
        guess,
        axes=choice == 4,
        label_column=choice in {1, 3},
        label_row=choice in {2, 3},
        roles=(*[Role.PASSED] * start, *[Role.VALUE] * (len(guess.roles) - start)),
        doubts=(),
    )


# -- how a table is shown ----------------------------------------------------------------

_ROLES: Final = (Role.PASSED, Role.X, Role.Y, Role.HOLE, Role.TIME)
_ROWS_SHOWN: Final = 60
_COLUMNS_SHOWN: Final = 40
_HEAD_WIDTH: Final = 116


class ColumnHeads(QHeaderView):
    """Above each column a choice of what it holds: a place, or readings in a unit.

    Signal ``chosen(column, (role, unit))``.
    """

    chosen = Signal(int, object)

    def __init__(self, table: QTableWidget) -> None:
        super().__init__(Qt.Orientation.Horizontal, table)
        self.boxes: list[StillCombo] = []
        self.setHighlightSections(False)
        self.setSectionsClickable(False)
        self.sectionResized.connect(lambda *_: self.place())
        table.horizontalScrollBar().valueChanged.connect(lambda _value: self.place())

    def show_guess(self, guess: TableGuess, columns: int) -> None:
        """Say what each of the columns of the source is taken for; None of it where hidden."""
        for box in self.boxes:
            box.hide()
            box.deleteLater()
        self.boxes = []
        shown = [guess.number_of(k) for k in range(len(guess.roles))]
        for number in range(1, columns + 1):
            box = StillCombo(self.viewport())
            box.setMinimumContentsLength(4)
            box.setAccessibleName(f"What column {number} holds")
            if number in shown:
                self._fill(box, guess, shown.index(number))
            else:
                box.addItem("hidden")
                box.setEnabled(False)
            box.show()
            self.boxes.append(box)
        self.place()

    def _fill(self, box: StillCombo, guess: TableGuess, column: int) -> None:
        places = guess.kind is not TableKind.MATRIX
        roles = _ROLES if places else _ROLES[:1]
        choices = [
            ("–" if role is Role.PASSED else word(role), (role, TableLight.PPFD)) for role in roles
        ]
        choices += [(unit.value, (Role.VALUE, unit)) for unit in TableLight]
        for text, meaning in choices:
            box.addItem(text, meaning)
        role = guess.roles[column]
        light = guess.light(column) if role is Role.VALUE else TableLight.PPFD
        box.setCurrentIndex([meaning for _, meaning in choices].index((role, light)))
        explain(box, "What this column holds: a place, readings in a unit, or nothing.")
        box.widen_list()
        box.activated.connect(lambda k: self.chosen.emit(column, choices[k][1]))

    def sectionSizeFromContents(self, logical: int) -> QSize:
        return QSize(_HEAD_WIDTH, super().sectionSizeFromContents(logical).height())

    def sizeHint(self) -> QSize:
        high = self.boxes[0].sizeHint().height() + 4 if self.boxes else super().sizeHint().height()
        return QSize(super().sizeHint().width(), high)

    def updateGeometries(self) -> None:
        super().updateGeometries()
        self.place()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self.place()

    def place(self) -> None:
        """Put each choice over its column."""
        for k, box in enumerate(self.boxes):
            left, wide = self.sectionViewportPosition(k), self.sectionSize(k)
            box.setGeometry(left + 1, 1, wide - 2, self.height() - 2)


class TablePreview(QTableWidget):
    """The first rows of a sheet under their ``heads``; what is not read is grey."""

    def __init__(self) -> None:
        super().__init__()
        self.setAccessibleName("Preview of the table")
        self.setEditTriggers(QTableWidget.EditTrigger.NoEditTriggers)
        self.setTabKeyNavigation(False)
        self.verticalHeader().setDefaultSectionSize(self.fontMetrics().height() + 8)
        self.heads = ColumnHeads(self)
        self.setHorizontalHeader(self.heads)

    def show_choice(self, choice: Choice) -> None:
        """Show a sheet as its program does, with what is made of it."""
        cells, guess = choice.cells, choice.guess
        whole = cells.whole or tuple(zip(cells.numbers, cells.rows, strict=True))
        whole = whole[:_ROWS_SHOWN]
        columns = min(max((len(row) for _, row in whole), default=0), _COLUMNS_SHOWN)
        self.setRowCount(len(whole))
        self.setColumnCount(columns)
        self.setVerticalHeaderLabels([str(number) for number, _ in whole])
        self.heads.show_guess(guess, columns)
        read = {guess.number_of(k) for k, role in enumerate(guess.roles) if role is not Role.PASSED}
        quiet = self.palette().brush(QPalette.ColorRole.PlaceholderText)
        ground = self.palette().brush(QPalette.ColorRole.AlternateBase)
        heading = set(cells.numbers[: guess.heading_rows])
        for row, (number, texts) in enumerate(whole):
            kept = number in cells.numbers
            for column in range(columns):
                item = QTableWidgetItem(texts[column] if column < len(texts) else "")
                font = item.font()
                font.setBold(number in heading)
                item.setFont(font)
                if not kept or column + 1 not in read or number in heading:
                    item.setForeground(quiet)
                if not kept or (cells.columns and column + 1 not in cells.columns):
                    item.setBackground(ground)
                    explain(item, "Hidden or a remark: not read.")
                self.setItem(row, column, item)
        self.resizeColumnsToContents()
        self.heads.place()


class PasteBox(QPlainTextEdit):
    """A place for text; ``pasted(str)`` with the whole of it when something is pasted."""

    pasted = Signal(str)

    def __init__(self) -> None:
        super().__init__()
        self.setAccessibleName("Text to be read")
        self.setPlaceholderText("Paste the readings here (Ctrl+V), or write them line by line.")
        self.setTabChangesFocus(True)

    def insertFromMimeData(self, source: QMimeData) -> None:
        super().insertFromMimeData(source)
        self.pasted.emit(self.toPlainText())
