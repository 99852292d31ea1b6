"""The growth schedule: stages from the crop library or one's own, and what each needs."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QHBoxLayout, QLabel, QSplitter, QVBoxLayout, QWidget

from planner.app import theme
from planner.app.display import Display
from planner.app.document import Document
from planner.app.fields.form import AlertLabel, Form, button, link_button
from planner.app.fields.shelf import Shelf
from planner.app.fields.still_combo import StillCombo
from planner.app.jobs import Cancelled, Lane, Progress
from planner.app.pages.side.question_form import Asker, AskLine, QuestionForm
from planner.app.pages.side.schedule_chart import ScheduleChart
from planner.app.pages.side.schedule_table import StageModel, StageTable
from planner.estimate.result import EstimateOptions
from planner.plan.edits import changed
from planner.plan.lit import same_figures
from planner.plan.plan import Plan
from planner.plan.refusal import refusal
from planner.plan.stage import GrowthStage
from planner.plan.target import PpfdTarget

if TYPE_CHECKING:
    from planner.estimate.schedule import Schedule

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
        self.sums = QLabel()
        self.sums.setAccessibleName("Sum of the schedule")
        self.alert = AlertLabel()
        form = QuestionForm(display)
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
        heading = QLabel("Growth schedule")
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
        self.splitter = QSplitter()
        self.splitter.setChildrenCollapsible(False)
        self.splitter.addWidget(self.table)
        self.splitter.addWidget(self.chart)
        self.splitter.setStretchFactor(0, 2)
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
