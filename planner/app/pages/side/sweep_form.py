"""Sweeping: over what, from where to where, in how many steps."""

from __future__ import annotations

import math
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Final

from PySide6.QtWidgets import QWidget

from planner.app.display import Display
from planner.app.document import Document
from planner.app.jobs import Cancelled, Lane, Progress
from planner.app.pages.side.question_form import Asker, AskLine, QuestionForm
from planner.app.pages.side.sweep_board import SweepBoard
from planner.estimate.find import FindError, height_range
from planner.estimate.result import EstimateOptions
from planner.estimate.sweep_over import over_range
from planner.files.recovery import state_folder
from planner.plan.dials import DIALS, Dial
from planner.plan.lit import same_figures
from planner.plan.plan import Plan
from planner.plan.quantity import COUNT, HANGING_HEIGHT
from planner.units import in_unit

_MOST_STEPS: Final = 200.0
_KEPT_SWEEPS: Final = 24


OFFERED: Final = ("height", "output", "reflectance", "size", "spacing", "canopy")
"""Dials one sweeps over; any other can be swept on the command line."""


@dataclass(frozen=True)
class SweepAsked:
    """A sweep on its way: its plan, the axis with its values and the options."""

    plan: Plan
    name: str
    values: tuple[float, ...]


class SweepForm(QuestionForm):
    """Asks for a sweep on the page's lane; the board shows it."""

    def __init__(
        self,
        document: Document,
        display: Display,
        lane: Lane,
        board: SweepBoard,
        parent: QWidget | None = None,
        *,
        sweeping: Any = None,
    ) -> None:
        super().__init__(display, parent)
        self._document, self._board = document, board
        self._sweeping = sweeping
        _, self.over = self.add_choice("Over", [(DIALS[key].label, key) for key in OFFERED])
        self.over.activated.connect(lambda _line: self._propose())
        self.low_row, self.low = self.add_number("From", HANGING_HEIGHT, 0.2)
        self.high_row, self.high = self.add_number("To", HANGING_HEIGHT, 0.6)
        _, self.steps = self.add_number("Points", COUNT.within(2.0, _MOST_STEPS), 13)
        self.line = AskLine(self, "Sweep", "Compute the light at each of these values")
        self.line.ask.clicked.connect(self.ask)
        self.asker = Asker(lane, self.line, self)
        self.asker.answered.connect(self._on_done)
        self.end()
        document.changed.connect(lambda _old, _new: self._on_plan())
        self._propose()

    @property
    def dial(self) -> Dial:
        """What is swept over."""
        return DIALS[OFFERED[max(self.over.currentIndex(), 0)]]

    def _propose(self) -> None:
        """A range to begin with, around where the plan stands."""
        dial, plan = self.dial, self._document.plan
        low, high = _range(dial, plan)
        for box, value in ((self.low, low), (self.high, high)):
            box.set_quantity(dial.quantity)
            box.reset(value)
        self.low_row.clear_error()
        self.high_row.clear_error()
        self.line.say("")

    def ask(self) -> None:
        """Begin the sweep."""
        self.take_typed()
        key = self.dial.key
        if self.high.value <= self.low.value:
            self.line.say("", "The range must rise: write a 'To' above 'From'.")
            return
        values = over_range(key, self.low.value, self.high.value, round(self.steps.value))
        plan = self._document.plan
        cells = self._display.state.cells
        options = EstimateOptions(cells=(cells, cells))
        asked = SweepAsked(plan, key, values.values)
        sweeping = self._sweeping or _sweep

        def job(progress: Progress, cancelled: Cancelled) -> object:
            return sweeping(plan, (values,), options, progress=progress, cancelled=cancelled)

        self.asker.ask(asked, job)

    def _on_done(self, asked: SweepAsked, found: Any) -> None:
        if not same_figures(asked.plan, self._document.plan):
            self.line.say("", "The plan was changed meanwhile; sweep again.")
            return
        self._board.show_sweep(found)
        self.line.say(self._words(found))

    def _words(self, found: Any) -> str:
        bad = [point.problem for point in found.in_order() if point.figures is None]
        words = f"{len(found.points)} of {found.size} points."
        if not found.complete:
            words += " Stopped; what is done is kept, sweep again to go on."
        if bad:
            words += f" {len(bad)} cannot be: {bad[0]}"
        return in_unit(words, self._display.unit)

    def _on_plan(self) -> None:
        self._board.follow_plan()


def _range(dial: Dial, plan: Plan) -> tuple[float, float]:
    """A range to begin with."""
    if dial.key == "height":
        try:
            low, high = height_range(plan)
        except FindError:
            return 0.1, 0.4
        return round(min(max(low, 0.1), 0.5 * high), 2), round(high - 0.004, 2)
    ranges = {"output": (20.0, 100.0), "reflectance": (0.1, 0.95)}
    if dial.key in ranges:
        return ranges[dial.key]
    least, most = dial.bounds(plan)
    present = dial.get(plan) or 0.2
    return max(round(0.5 * present, 2), least), min(
        round(1.4 * present, 2), math.floor(100 * most) / 100
    )


def _sweep(plan: Plan, over: Any, options: EstimateOptions, **named: Any) -> Any:
    """Sweep with a journal in the user's state folder, so that nothing finished is lost."""
    from planner.estimate.sweep import Sweep, fingerprint, sweep  # noqa: PLC0415 - heavy

    folder = state_folder() / "sweeps"
    journal: Path | None = folder / f"{fingerprint(Sweep(plan, over, options))[:32]}.jsonl"
    try:
        folder.mkdir(parents=True, exist_ok=True)
        _forget_old(folder)
    except OSError:
        journal = None
    return sweep(plan, over, options, journal=journal, **named)


def _forget_old(folder: Path) -> None:
    """Keep the newest journals only."""
    files = sorted(folder.glob("*.jsonl"), key=lambda path: path.stat().st_mtime)
    for path in files[:-_KEPT_SWEEPS]:
        path.unlink(missing_ok=True)
