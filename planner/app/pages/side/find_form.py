"""Finding: three questions to the core, each answered in words with a plan to adopt."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, Final

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QPushButton, QWidget

from planner.app.display import Display
from planner.app.document import Document
from planner.app.fields.form import NoteLabel, button
from planner.app.fields.panel import FieldForm
from planner.app.jobs import Cancelled, Lane, Progress
from planner.app.pages.side.linked import Asker, AskLine
from planner.app.pages.side.variants import VariantSteps
from planner.estimate.result import EstimateOptions
from planner.plan.lit import same_figures
from planner.plan.plan import Plan
from planner.plan.quantity import COUNT, DLI, PPFD
from planner.plan.target import DliTarget

if TYPE_CHECKING:
    from planner.estimate.find import Found

_MOST_LAMPS: Final = 6.0
Finding = Callable[..., Any]


@dataclass(frozen=True, eq=False)
class _Asked:
    plan: Plan


class Question(QObject):
    """One question: a button, its progress, the answer, and a button that adopts it."""

    def __init__(
        self, form: FindForm, ask: str, tip: str, label: str, finding: Callable[[], Finding]
    ) -> None:
        super().__init__(form)
        self._form, self._label, self._finding = form, label, finding
        self.line = AskLine(form, ask, tip)
        self.asker = Asker(form.lane, self.line, self)
        self.adopt_button: QPushButton = button("Adopt", "Make this the plan, as one undo step")
        form.add_buttons(self.adopt_button)
        self.found: Found | None = None
        self._of: Plan | None = None
        self.line.ask.clicked.connect(self.ask)
        self.asker.answered.connect(self._on_answer)
        self.adopt_button.clicked.connect(self.adopt)
        self.adopt_button.hide()

    def ask(self) -> None:
        """Put the question about the plan as it stands."""
        self._form.take_typed()
        self.forget()
        finding, plan, options = self._finding(), self._form.document.plan, self._form.options()

        def job(progress: Progress, cancelled: Cancelled) -> object:
            return finding(plan, options, progress=progress, cancelled=cancelled)

        self.asker.ask(_Asked(plan), job)

    def _on_answer(self, asked: _Asked, found: Any) -> None:
        if not same_figures(asked.plan, self._form.document.plan):
            self.line.say("", "The plan was changed meanwhile; ask again.")
            return
        self.found, self._of = found, asked.plan
        self.line.say(found.words)
        self.adopt_button.setText("Adopt" if found.met else "Adopt the nearest")
        self.adopt_button.setAccessibleName(f"{self.adopt_button.text()}: {self._label}")
        self.adopt_button.show()

    def forget(self) -> None:
        """Take the answer away."""
        self.found = self._of = None
        self.adopt_button.hide()
        if not self.asker.busy:
            self.line.say("")

    def follow_plan(self) -> None:
        """An answer about another plan is no answer any more."""
        if self._of is not None and not same_figures(self._of, self._form.document.plan):
            self.forget()

    def adopt(self) -> None:
        """Make the plan found the open one."""
        if self.found is not None:
            made = self._form.document.plan.with_setup(self.found.plan)
            self._form.steps.adopt_plan(made, self._label, "Adopted what was found.")


class FindForm(FieldForm):
    """Height and output for the target; hours for a DLI; places of so many lamps."""

    def __init__(
        self,
        document: Document,
        display: Display,
        lane: Lane,
        steps: VariantSteps,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(document, display, parent)
        self.document, self.lane, self.steps = document, lane, steps
        self.add_heading("Hanging height and output").setContentsMargins(0, 0, 0, 0)
        self.target = NoteLabel()
        self.add_wide(self.target)
        _, self.aim = self.add_choice(
            "In the target", [("The mean", "mean"), ("The minimum", "minimum")]
        )
        self.hanging = Question(
            self,
            "Find height and output",
            "The most even height at which the light reaches the target",
            "Adopt height and output",
            self._height,
        )
        self.add_heading("Hours of light")
        _, self.dli = self.add_number("DLI wanted", DLI.within(0.1, 100.0), 12.0)
        self.hours = Question(
            self,
            "Find the hours",
            "The hours a day that add up to this DLI at the light as it hangs",
            "Adopt hours of light",
            self._hours,
        )
        self.add_heading("Places of the lamps")
        _, self.count = self.add_number("Lamps", COUNT.within(1.0, _MOST_LAMPS), 2)
        _, self.mean = self.add_number("Mean wanted", PPFD.within(1.0, 5000.0), 200.0)
        self.places = Question(
            self,
            "Find the places",
            "Where so many lamps like the first one give the most even light",
            "Adopt places of lamps",
            self._places,
        )
        self.end()
        document.changed.connect(lambda _old, _new: self._on_plan())
        self._propose()
        self._on_plan()

    @property
    def questions(self) -> tuple[Question, ...]:
        """The three of them."""
        return self.hanging, self.hours, self.places

    def options(self) -> EstimateOptions:
        """What answers are confirmed with."""
        cells = self._display.state.cells
        return EstimateOptions(cells=(cells, cells))

    def _propose(self) -> None:
        """Begin with what the plan wants."""
        plan = self.document.plan
        self.count.reset(float(min(max(len(plan.lamps), 1), int(_MOST_LAMPS))))
        if isinstance(plan.target, DliTarget):
            self.dli.reset(round((plan.target.low + plan.target.high) / 2, 1))
        band = None if plan.target is None else plan.target.ppfd_band(plan.photoperiod_hours)
        if band is not None:
            self.mean.reset(float(round((band[0] + band[1]) / 2)))

    def _on_plan(self) -> None:
        plan = self.document.plan
        target = plan.target
        band = None if target is None else target.ppfd_band(plan.photoperiod_hours)
        if target is None or band is None:
            self.target.setText("The plan has no target yet; choose one with the canopy.")
        else:
            crop = f" for {target.crop}" if target.crop else ""
            self.target.setText(f"The target is {band[0]:.0f} to {band[1]:.0f} µmol m⁻² s⁻¹{crop}.")
        for question in self.questions:
            question.follow_plan()

    def _height(self) -> Finding:
        from planner.estimate.find import Aim, find_height_and_output  # noqa: PLC0415 - heavy

        aim = Aim(self.aim.currentData())
        return lambda plan, options, **named: find_height_and_output(
            plan, None, aim, options, **named
        )

    def _hours(self) -> Finding:
        from planner.estimate.find import find_photoperiod  # noqa: PLC0415 - heavy

        dli = self.dli.value
        return lambda plan, options, **named: find_photoperiod(plan, dli, options, **named)

    def _places(self) -> Finding:
        from planner.estimate.find_places import find_places  # noqa: PLC0415 - heavy

        count, mean = round(self.count.value), self.mean.value
        return lambda plan, options, **named: find_places(plan, count, mean, options, **named)
