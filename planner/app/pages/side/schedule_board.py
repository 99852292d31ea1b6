"""The growth schedule: a table of stages, from the crop library or one's own, and their needs."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, Final

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QPersistentModelIndex, Qt, Signal
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import (
    QAbstractItemView,
    QHBoxLayout,
    QSplitter,
    QTableView,
    QVBoxLayout,
    QWidget,
)

from planner.app import theme
from planner.app.display import Display
from planner.app.document import Document
from planner.app.fields.choosers import Shelf
from planner.app.fields.form import AlertLabel, Form, StillCombo, button, link_button
from planner.app.fields.panel import FieldForm
from planner.app.jobs import Cancelled, Lane, Progress
from planner.app.pages.side.linked import Asker, AskLine
from planner.app.plain import PlainLabel, tooltip
from planner.app.plots.schedule_chart import ScheduleChart
from planner.estimate.result import EstimateOptions
from planner.metrics.figures import FIGURE, percent, ppfd
from planner.plan.edits import changed
from planner.plan.lit import same_figures
from planner.plan.plan import Plan
from planner.plan.quantity import DLI, HEIGHT, HOURS, PPFD, quantity_of
from planner.plan.refusal import refusal
from planner.plan.target import DliTarget, GrowthStage, PpfdTarget
from planner.units import LengthUnit, format_length, format_number

if TYPE_CHECKING:
    from planner.estimate.schedule import Schedule, StagePlan


_Role = Qt.ItemDataRole
Index = QModelIndex | QPersistentModelIndex
_WEEKS: Final = quantity_of(GrowthStage, "weeks")
WANTED: Final = ("Stage", "Canopy", "From", "To", "Hours", "Weeks")
FOUND: Final = ("Hang at", "Output", "Mean", "Min / mean", "DLI", "kWh", "Cost", "Heed")


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
            return (*WANTED, *FOUND)[section]
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
            return self._answered(row, column - len(WANTED))
        if role == _Role.TextAlignmentRole and 0 < column < self.columnCount() - 1:
            return Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
        found = self.answer(row)
        if role == _Role.ToolTipRole and found is not None:
            return tooltip(found.words, *found.warnings)
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

    def _answered(self, row: int, column: int) -> str:
        found = self.answer(row)
        if found is None:
            return ""
        if found.estimate is None or found.hanging_height is None or found.output_percent is None:
            return "cannot be set up" if column == len(FOUND) - 1 else "–"
        figures = found.estimate.figures
        return (
            format_length(found.hanging_height, self._unit()),
            f"{found.output_percent:.0f} %",
            ppfd(figures.mean),
            percent(figures.min_over_mean),
            FIGURE["dli"].number(figures.dli),
            f"{found.kwh:.1f}",
            "–" if found.cost is None else f"{found.cost:.2f}",
            "; ".join(_short(text, found.stage.name) for text in found.warnings) or "target met",
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
        parts: dict[str, Any] = {name: getattr(stage, name) for name in GrowthStage.model_fields}
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
        return GrowthStage.model_validate(parts)


def _short(warning: str, name: str) -> str:
    return warning.removeprefix(f"{name}: ")


class StageTable(QTableView):
    """The table; Delete takes the chosen stage out."""

    def __init__(self, model: StageModel, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setModel(model)
        self.setAccessibleName("Growth schedule")
        self.setFont(theme.tabular(self.font()))
        self.setFrameShape(QTableView.Shape.NoFrame)
        self.setShowGrid(False)
        self.setAlternatingRowColors(True)
        self.setTabKeyNavigation(False)
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectItems)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setHorizontalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.verticalHeader().hide()
        self.verticalHeader().setDefaultSectionSize(round(1.7 * self.fontMetrics().height()))
        self.horizontalHeader().setHighlightSections(False)
        model.modelReset.connect(self._size)

    def _size(self) -> None:
        self.resizeColumnsToContents()
        self.setColumnWidth(0, min(max(self.columnWidth(0), 120), 200))
        self.setColumnWidth(len(WANTED) + len(FOUND) - 1, 320)


_OWN = "Own stage"


@dataclass(frozen=True, eq=False)
class _Asked:
    plan: Plan


class ScheduleBoard(QWidget):
    """Table, chart, and the question that fills both."""

    def __init__(
        self,
        document: Document,
        display: Display,
        shelf: Shelf,
        lane: Lane,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self._document, self._display, self._shelf = document, display, shelf
        self.found: Schedule | None = None
        self._of: Plan | None = None
        self.model = StageModel(document, lambda: display.unit, self)
        self.table = StageTable(self.model)
        self.chart = ScheduleChart(display)
        self.crops = StillCombo()
        self.crops.setAccessibleName("Stage to add")
        self.add_button = button("Add stage")
        self.remove_button = link_button("Remove stage")
        self.sums = PlainLabel()
        self.sums.setAccessibleName("Sum of the schedule")
        self.alert = AlertLabel()
        form = FieldForm(document, display)
        self.line = AskLine(
            form, "Find for each stage", "Hanging height, output and energy of every stage"
        )
        self.asker = Asker(lane, self.line, self)
        self._arrange(form)
        self.add_button.clicked.connect(self.add_stage)
        self.remove_button.clicked.connect(self.remove_stage)
        self.line.ask.clicked.connect(self.ask)
        self.asker.answered.connect(self._on_answer)
        self.model.refused.connect(self.alert.say)
        document.changed.connect(lambda _old, _new: self._on_plan())
        display.changed.connect(lambda _state: self.model.refresh(self.found))
        shelf.changed.connect(self._fill)
        self._fill()
        self._on_plan()

    def _arrange(self, form: Form) -> None:
        heading = PlainLabel("Growth schedule")
        font = heading.font()
        font.setBold(True)
        heading.setFont(font)
        line = QHBoxLayout()
        line.setContentsMargins(0, 0, 0, 0)
        line.addWidget(heading)
        line.addWidget(self.crops, 1)
        line.addWidget(self.add_button)
        line.addWidget(self.remove_button)
        line.addStretch(1)
        # Table over chart: its last columns, energy and money, are what one came for.
        self.splitter = QSplitter(Qt.Orientation.Vertical)
        self.splitter.setChildrenCollapsible(False)
        self.splitter.addWidget(self.table)
        self.splitter.addWidget(self.chart)
        self.splitter.setStretchFactor(0, 0)
        self.splitter.setStretchFactor(1, 1)
        below = QHBoxLayout()
        below.setContentsMargins(0, 0, 0, 0)
        below.addWidget(form, 1)
        below.addWidget(self.sums, 1)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(theme.HALF)
        layout.addLayout(line)
        layout.addWidget(self.alert)
        layout.addWidget(self.splitter, 1)
        layout.addLayout(below)
        delete = QShortcut(QKeySequence("Delete"), self.table)
        delete.activated.connect(self.remove_stage)

    def _fill(self) -> None:
        self.crops.clear()
        self.crops.addItem(_OWN)
        for crop in self._shelf.crops:
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
            from planner.estimate.schedule import stage_of_crop  # noqa: PLC0415 - heavy

            crop = next(one for one in self._shelf.crops if one.key == data[0])
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
        """Find height, output and energy of every stage."""
        plan = self._document.plan
        cells = self._display.state.cells
        options = EstimateOptions(cells=(cells, cells))

        def job(progress: Progress, cancelled: Cancelled) -> object:
            from planner.estimate.schedule import schedule  # noqa: PLC0415 - heavy

            return schedule(plan, None, options, progress=progress, cancelled=cancelled)

        self.asker.ask(_Asked(plan), job)

    def _on_answer(self, asked: _Asked, found: Any) -> None:
        if not self._is_of(asked.plan):
            self.line.say("", "The plan was changed meanwhile; ask again.")
            return
        self.found, self._of = found, asked.plan
        self._show()
        met = sum(stage.met for stage in found.stages)
        self.line.say(f"{met} of {len(found.stages)} stages reach their target.")

    def _is_of(self, plan: Plan) -> bool:
        now = self._document.plan
        return plan.schedule == now.schedule and plan.costs == now.costs and same_figures(plan, now)

    def _on_plan(self) -> None:
        if self._of is not None and not self._is_of(self._of):
            self.found = self._of = None
            self.line.say("")
        self._show()

    def _show(self) -> None:
        stages = self._document.plan.schedule
        self.model.refresh(self.found)
        self.chart.show_schedule(self.found, self._document.plan.space.height)
        self.remove_button.setVisible(bool(stages))
        self.line.ask.setEnabled(bool(stages) and not self.asker.busy)
        text = ""
        if self.found is not None:
            text = f"{self.found.weeks:g} weeks, {self.found.kwh:.1f} kWh"
            if self.found.cost is not None:
                currency = self._document.plan.costs.currency
                text += f", {self.found.cost:.2f} {currency}".rstrip()
        self.sums.setText(text)
