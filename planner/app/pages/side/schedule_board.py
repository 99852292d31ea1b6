"""The growth schedule: a table of stages, from the crop library or one's own, and their needs."""

from __future__ import annotations

import textwrap
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Final

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QPersistentModelIndex, Qt, Signal
from PySide6.QtGui import QKeySequence, QResizeEvent, QShortcut
from PySide6.QtWidgets import (
    QHeaderView,
    QSplitter,
    QTableView,
    QWidget,
)

from planner.app import theme
from planner.app.display import Display
from planner.app.document import Document
from planner.app.fields.choosers import Shelf
from planner.app.fields.form import AlertLabel, StillCombo, button, link_button
from planner.app.fields.panel import FieldForm
from planner.app.jobs import Cancelled, Lane, Progress
from planner.app.pages.side.linked import Asker, AskLine
from planner.app.pages.side.options_table import ReadTable
from planner.app.pages.side.weighing import AIMS, HELD
from planner.app.plain import TIPS, PlainLabel
from planner.app.plots.schedule_chart import ScheduleChart
from planner.app.questions import FILTERS, Questions, in_file_name, write_bytes
from planner.estimate.find_question import Aim, Held
from planner.estimate.result import EstimateOptions
from planner.estimate.schedule import schedules, stage_of_crop
from planner.estimate.stages import Schedule, StagePlan, stage_columns
from planner.metrics.figures import LOWEST, energy, money
from planner.plan.edits import changed
from planner.plan.lit import depends, ungrown
from planner.plan.plan import Plan
from planner.plan.quantity import DLI, HEIGHT, HOURS, PPFD, quantity_of
from planner.plan.refusal import refusal
from planner.plan.target import DliTarget, GrowthStage, PpfdTarget
from planner.units import LengthUnit, format_length, format_number, in_unit

_Role = Qt.ItemDataRole
Index = QModelIndex | QPersistentModelIndex
_WEEKS: Final = quantity_of(GrowthStage, "weeks")
WANTED: Final = ("Stage", "Canopy", "From", "To", "Hours", "Weeks")
FOUND: Final = stage_columns(
    "height", "output", "mean", "min_over_mean", "dli", "kwh", "cost", "heed"
)


class StageModel(QAbstractTableModel):
    """The first columns are edited in place; each edit is one undo step.

    ``refused(str)`` says why an edit was not taken.
    """

    refused = Signal(str)

    def __init__(self, document: Document, unit: Callable[[], LengthUnit], parent: QWidget) -> None:
        super().__init__(parent)
        self._document, self._unit = document, unit
        self._found: Schedule | None = None

    @property
    def stages(self) -> tuple[GrowthStage, ...]:
        """The stages of the plan."""
        return self._document.plan.schedule

    def refresh(self, found: Schedule | None) -> None:
        """Show the plan's stages and what was found for them (None: nothing yet)."""
        self.beginResetModel()
        self._found = found
        self.endResetModel()

    def rowCount(self, parent: Index | None = None) -> int:
        return 0 if parent is not None and parent.isValid() else len(self.stages)

    def columnCount(self, parent: Index | None = None) -> int:
        return 0 if parent is not None and parent.isValid() else len(WANTED) + len(FOUND)

    def headerData(
        self, section: int, orientation: Qt.Orientation, role: int = _Role.DisplayRole
    ) -> Any:
        if role == _Role.TextAlignmentRole and section in {0, len(WANTED) + len(FOUND) - 1}:
            return Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
        if orientation is Qt.Orientation.Horizontal and role == _Role.DisplayRole:
            return (*WANTED, *(column.name for column in FOUND))[section]
        return None

    def flags(self, index: Index) -> Qt.ItemFlag:
        flags = Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsSelectable
        return flags | Qt.ItemFlag.ItemIsEditable if index.column() < len(WANTED) else flags

    def answer(self, row: int) -> StagePlan | None:
        """What was found for a stage."""
        if self._found is None or row >= len(self._found.stages):
            return None
        return self._found.stages[row]

    def data(self, index: Index, role: int = _Role.DisplayRole) -> Any:
        if not index.isValid() or index.row() >= len(self.stages):
            return None
        row, column = index.row(), index.column()
        if role in {_Role.DisplayRole, _Role.EditRole}:
            if column < len(WANTED):
                return self._wanted(self.stages[row], column)
            found = self.answer(row)
            return "" if found is None else FOUND[column - len(WANTED)].text(found, self._unit())
        if role == _Role.TextAlignmentRole and 0 < column < self.columnCount() - 1:
            return Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
        found = self.answer(row)
        if role in TIPS and found is not None:
            said = (in_unit(text, self._unit()) for text in (found.words, *found.warnings))
            return TIPS[role](*said)
        return None

    def _wanted(self, stage: GrowthStage, column: int) -> str:
        target = stage.target
        quantity = DLI if isinstance(target, DliTarget) else PPFD
        unit = self._unit()
        return (
            stage.name,
            format_length(stage.canopy_height, unit),
            format_number(target.low, 1),
            quantity.text(target.high, unit),
            HOURS.text(stage.photoperiod_hours, unit),
            format_number(stage.weeks, 1),
        )[column]

    def setData(self, index: Index, value: Any, role: int = _Role.EditRole) -> bool:
        if role != _Role.EditRole or not index.isValid():
            return False
        stage, text = self.stages[index.row()], str(value).strip()
        if text == self._wanted(stage, index.column()):
            return False
        try:
            made = self._edited(stage, index.column(), text)
            stages = list(self.stages)
            stages[index.row()] = made
            plan = changed(self._document.plan, schedule=tuple(stages))
        except ValueError as error:
            self.refused.emit(f"{WANTED[index.column()]}: {refusal(error, self._unit())}")
            return False
        self.refused.emit("")
        self._document.apply(plan, f"Change stage {made.name}")
        return True

    def _edited(self, stage: GrowthStage, column: int, text: str) -> GrowthStage:
        unit = self._unit()
        parts: dict[str, Any] = {}
        if column == 0:
            parts["name"] = text
        elif column == 1:
            parts["canopy_height"] = HEIGHT.parse(text, unit)
        elif column in {2, 3}:
            quantity = DLI if isinstance(stage.target, DliTarget) else PPFD
            ends = {"low": stage.target.low, "high": stage.target.high}
            ends["low" if column == 2 else "high"] = quantity.parse(text, unit)
            parts["target"] = type(stage.target)(low=ends["low"], high=ends["high"])
        elif column == 4:
            parts["photoperiod_hours"] = HOURS.parse(text, unit)
        else:
            parts["weeks"] = _WEEKS.parse(text, unit)
        return changed(stage, **parts)


HEED_LETTERS: Final = 36
"""The least width of the column of what is to be heeded."""


class StageTable(QTableView):
    """The table; Delete takes the chosen stage out."""

    def __init__(self, model: StageModel) -> None:
        super().__init__()
        self.setModel(model)
        theme.settle(self, "Growth schedule")
        self.setSelectionBehavior(QTableView.SelectionBehavior.SelectItems)
        self.verticalHeader().hide()
        self.verticalHeader().setMinimumSectionSize(round(1.7 * self.fontMetrics().height()))
        model.modelReset.connect(self._size)

    def _size(self) -> None:
        self.resizeColumnsToContents()
        self.setColumnWidth(0, min(max(self.columnWidth(0), 120), 200))
        self._fit_last()

    def _fit_last(self) -> None:
        # What is to be heeded is read whole: its lines wrap, and the row is as tall as they are.
        # A table too narrow for some words in a line scrolls sideways instead.
        model = self.model()
        last = model.columnCount() - 1
        left = self.viewport().width() - self.horizontalHeader().sectionPosition(last)
        heeded = any(model.index(row, last).data() for row in range(model.rowCount()))
        least = HEED_LETTERS * self.fontMetrics().averageCharWidth() if heeded else 0
        self.setColumnWidth(last, max(left, least))
        self.resizeRowsToContents()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._fit_last()


_OWN: Final = "Own stage"
TOTALS: Final = ("Option", "kWh", "Cost", "Met")


@dataclass(frozen=True, eq=False)
class _Asked:
    plan: Plan
    held: Held


class ScheduleForm(FieldForm):
    """What is wanted of every stage, the totals of all options, and the sheet to print."""

    def __init__(self, document: Document, display: Display) -> None:
        super().__init__(document, display)
        _, self.aim = self.add_choice("Wanted most", AIMS[:2])
        _, self.held = self.add_choice("In the target", HELD)
        self.tariff = self.add_dial("tariff")
        self.line = AskLine(
            self, "Find for each stage", "Height, output and energy of every stage and option"
        )
        self.heading = self.add_heading("Over the whole growth")
        self.totals = ReadTable("Totals of the options", TOTALS)
        header = self.totals.horizontalHeader()
        header.setSectionResizeMode(0, QHeaderView.ResizeMode.Stretch)
        self.add_wide(self.totals)
        self.print_button = button(
            "Save the weekly sheet…", "A PDF that says week by week what to raise, dim and time"
        )
        self.print_row = self.add_buttons(self.print_button)
        self.end()
        document.changed.connect(lambda _old, new: self.refresh(new))
        self.refresh(document.plan)

    def show_totals(self, found: Sequence[Schedule], row: int) -> None:
        """Show the sums of the options, one of them chosen."""
        for part in (self.heading, self.totals, self.print_row):
            part.setVisible(bool(found))
        self.totals.fill(
            [
                (
                    "\n".join(textwrap.wrap(one.name, 22)),
                    energy(one.kwh),
                    money(one.cost),
                    f"{one.met} of {len(one.stages)}",
                )
                for one in found
            ],
            row,
        )
        self.totals.setMinimumHeight(self.totals.maximumHeight() if found else 0)


class ScheduleBoard(QWidget):
    """Stages over the chart of the option chosen, and the question that fills both.

    ``answered(schedule, plan)`` carries the plan's own schedule and the plan it was found for,
    ``told`` a sentence for the status bar.
    """

    answered = Signal(object, object)
    told = Signal(str)

    def __init__(
        self, document: Document, display: Display, shelf: Shelf, lane: Lane, questions: Questions
    ) -> None:
        super().__init__()
        self._document, self._display, self._shelf = document, display, shelf
        self._questions = questions
        self.all: tuple[Schedule, ...] = ()
        self._row = 0
        self._of: Plan | None = None
        self.model = StageModel(document, lambda: display.unit, self)
        self.table = StageTable(self.model)
        self.chart = ScheduleChart(display)
        self.crops = StillCombo(name="Stage to add")
        self.add_button = button("Add stage", act=self.add_stage)
        self.remove_button = link_button("Remove stage", act=self.remove_stage)
        self.sums = PlainLabel(name="Sum of the schedule")
        self.alert = AlertLabel()
        self.form = ScheduleForm(document, display)
        self.line = self.form.line
        self.asker = Asker(lane, self.line, self)
        self._arrange()
        self.line.ask.clicked.connect(self.ask)
        self.asker.answered.connect(self._on_answer)
        self.form.totals.currentCellChanged.connect(lambda row, *_: self.choose(row))
        self.form.print_button.clicked.connect(self.save_sheet)
        self.model.refused.connect(self.alert.say)
        document.changed.connect(lambda _old, _new: self._on_plan())
        display.changed.connect(lambda _state: self.model.refresh(self.found))
        shelf.changed.connect(self._fill)
        self._fill()
        self._on_plan()

    @property
    def found(self) -> Schedule | None:
        """The schedule of the option chosen."""
        return self.all[self._row] if self._row < len(self.all) else None

    def _arrange(self) -> None:
        heading = PlainLabel("Growth schedule", bold=True)
        line = theme.row(
            heading, (self.crops, 1), self.add_button, self.remove_button, theme.REST, self.sums
        )
        # Table over chart: its last columns, energy and money, are what one came for.
        self.splitter = QSplitter(Qt.Orientation.Vertical)
        self.splitter.setChildrenCollapsible(False)
        self.splitter.addWidget(self.table)
        self.splitter.addWidget(self.chart)
        self.splitter.setStretchFactor(0, 0)
        self.splitter.setStretchFactor(1, 1)
        theme.column(line, self.alert, (self.splitter, 1), on=self, gap=theme.HALF)
        delete = QShortcut(QKeySequence("Delete"), self.table)
        delete.activated.connect(self.remove_stage)

    def _fill(self) -> None:
        self.crops.clear()
        self.crops.addItem(_OWN)
        for crop in self._shelf.catalogue.crops:
            for stage in crop.stages:
                self.crops.addItem(f"{crop.name}, {stage.name}", (crop.key, stage.key))
        self.crops.widen_list()

    # -- stages -------------------------------------------------------------------------

    def add_stage(self) -> None:
        """Add the stage chosen in the list; it begins with the plan's canopy."""
        plan = self._document.plan
        data = self.crops.currentData()
        height = plan.schedule[-1].canopy_height if plan.schedule else plan.canopy.height
        if data is None:
            target = plan.target or PpfdTarget(low=150.0, high=250.0)
            hours = plan.photoperiod_hours
            stage = GrowthStage(
                name=f"Stage {len(plan.schedule) + 1}", canopy_height=height, target=target,
                photoperiod_hours=hours,
            )  # fmt: skip
        else:
            crop = next(one for one in self._shelf.catalogue.crops if one.key == data[0])
            stage = stage_of_crop(crop, data[1], height, 2.0)
        self._put((*plan.schedule, stage), f"Add stage {stage.name}")

    def remove_stage(self) -> None:
        """Take the chosen stage out."""
        row, stages = self.table.currentIndex().row(), self._document.plan.schedule
        if 0 <= row < len(stages):
            self._put(stages[:row] + stages[row + 1 :], f"Remove stage {stages[row].name}")

    def _put(self, stages: tuple[GrowthStage, ...], label: str) -> None:
        try:
            made = changed(self._document.plan, schedule=stages)
        except ValueError as error:
            self.alert.say(refusal(error, self._display.unit))
            return
        self.alert.say("")
        self._document.apply(made, label)

    # -- answers ------------------------------------------------------------------------

    def ask(self) -> None:
        """Find height, output and energy of every stage, for the plan and its variants."""
        self.form.take_typed()
        plan, unit, cells = self._document.plan, self._display.unit, self._display.state.cells
        options = EstimateOptions(cells=(cells, cells))
        aim, held = Aim(self.form.aim.currentData()), Held(self.form.held.currentData())

        def job(progress: Progress, cancelled: Cancelled) -> object:
            return schedules(
                plan, options, aim=aim, held=held, unit=unit,
                progress=progress, cancelled=cancelled,
            )  # fmt: skip

        self.asker.ask(_Asked(plan, held), job)

    def _on_answer(self, asked: _Asked, found: tuple[Schedule, ...]) -> None:
        if not self._is_of(asked.plan):
            self.line.say("", "The plan was changed meanwhile; ask again.")
            return
        self.all, self._of, self._row = found, asked.plan, 0
        self._show()
        self.answered.emit(found[0], asked.plan)
        whole = sum(one.met == len(one.stages) for one in found)
        asked_of = 1 + len(asked.plan.variants)
        of = "with the mean" if asked.held is Held.MEAN else f"at the {LOWEST}"
        words = f"{found[0].met} of {len(found[0].stages)} stages reach their target {of}."
        if asked_of > 1:
            words = f"{whole} of {len(found)} options reach the target of every stage {of}."
        if len(found) < asked_of:
            words += f" Stopped: {asked_of - len(found)} options were not reckoned."
        self.line.say(words)

    def choose(self, row: int) -> None:
        """Show the schedule of one of the options."""
        if 0 <= row < len(self.all) and row != self._row:
            self._row = row
            self._show()

    def save_sheet(self) -> None:
        """Write the weekly instruction of the option chosen where the user wants it."""
        from planner.reports.sheet import weekly_pdf  # noqa: PLC0415 - only when asked

        found, plan = self.found, self._document.plan
        if found is None:
            return
        proposal = Path.home() / f"{in_file_name(found.name)} week by week.pdf"

        def write(path: Path) -> None:
            write_bytes(
                path, weekly_pdf(found, unit=self._display.unit, currency=plan.costs.currency)
            )

        out = "Weekly sheet", proposal, FILTERS[".pdf"], "sheet", write
        self._questions.save_into(*out, self.told.emit)

    def _is_of(self, plan: Plan) -> bool:
        then, now = (
            (depends(one, ungrown, costs=True, stages=True), one.variants)
            for one in (plan, self._document.plan)
        )
        return then == now

    def _on_plan(self) -> None:
        if self._of is not None and not self._is_of(self._of):
            self.all, self._of, self._row = (), None, 0
            self.line.say("")
        self._show()

    def _show(self) -> None:
        stages, found = self._document.plan.schedule, self.found
        self.model.refresh(found)
        self.chart.show_schedule(found, self._document.plan.space.height)
        self.form.show_totals(self.all, self._row)
        self.remove_button.setVisible(bool(stages))
        self.line.ask.setEnabled(bool(stages) and not self.asker.busy)
        currency = self._document.plan.costs.currency
        self.sums.setText("" if found is None else found.sums(currency))
