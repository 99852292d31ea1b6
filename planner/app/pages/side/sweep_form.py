"""Sweeping: over what and in how many steps, its curves, and the point that may be adopted."""

from __future__ import annotations

import csv
import io
import math
from dataclasses import dataclass, field
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from planner.app import theme
from planner.app.display import Display
from planner.app.document import Document
from planner.app.fields.form import button, link_button
from planner.app.fields.panel import FieldForm
from planner.app.jobs import Cancelled, Lane, Progress
from planner.app.pages.side.linked import Asker, AskLine
from planner.app.pages.side.variants import VariantSteps
from planner.app.plain import PlainLabel
from planner.app.plots.sweep_plot import LOWER, UPPER, SweepCurves, SweepPlot
from planner.estimate.result import EstimateOptions
from planner.estimate.sweep_points import over_range, swept
from planner.files.recovery import state_folder
from planner.plan.dials import DIALS, Dial
from planner.plan.lit import same_figures
from planner.plan.plan import Plan
from planner.plan.quantity import COUNT, HANGING_HEIGHT
from planner.plan.refusal import refusal
from planner.units import in_unit

if TYPE_CHECKING:
    from planner.estimate.sweep import Sweep


class SweepBoard(QWidget):
    """Shows a sweep; a point chosen in it can be adopted as one undo step."""

    def __init__(
        self,
        document: Document,
        display: Display,
        steps: VariantSteps,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self._document, self._display, self._steps = document, display, steps
        self.sweep: Sweep | None = None
        self._points: list[Any] = []
        self.plot = SweepPlot()
        self.words = PlainLabel()
        self.words.setAccessibleName("The chosen point")
        self.adopt_button = button("Adopt this point", "Give the plan the value of this point")
        self.copy_button = link_button("Copy the points")
        self.copy_button.setToolTip("<p>Tab-separated, with every figure</p>")
        self.copy_button.clicked.connect(self.copy)
        self.adopt_button.clicked.connect(self.adopt)
        self.plot.chosen.connect(lambda _point: self._show_choice())
        self.plot.taken.connect(lambda _point: self.adopt())
        line = QHBoxLayout()
        line.setContentsMargins(0, 0, 0, 0)
        line.addWidget(self.words, 1)
        line.addWidget(self.copy_button)
        line.addWidget(self.adopt_button)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(theme.HALF)
        layout.addWidget(self.plot, 1)
        layout.addLayout(line)
        display.changed.connect(lambda _state: self._draw())
        self._show_choice()

    def show_sweep(self, sweep: Sweep) -> None:
        """Show the points found so far."""
        self.sweep = sweep
        self._draw()

    def follow_plan(self) -> None:
        """The plan has changed: the mark moves, or the curves are of another plan."""
        self._draw()

    @property
    def current(self) -> bool:
        """Whether the curves are of the plan as it stands, but for the number swept."""
        if self.sweep is None:
            return False
        over = self.sweep.over[0]
        one = swept(over.axis)
        try:
            here = one.put(self._document.plan, None, over.values[0])
            there = one.put(self.sweep.plan, None, over.values[0])
        except ValueError:
            return same_figures(self.sweep.plan, self._document.plan)
        return same_figures(here, there)

    def _draw(self) -> None:
        sweep = self.sweep
        if sweep is None:
            self.plot.show_curves(None)
            self._show_choice()
            return
        found, unit = swept(sweep.over[0].axis), self._display.unit
        kind = found.quantity
        factor = unit.metres if kind.is_length else kind.factor
        self._points = sorted(sweep.in_order(), key=lambda point: point.values)
        plan = self._document.plan
        band = None if plan.target is None else plan.target.ppfd_band(plan.photoperiod_hours)
        now = found.get(plan) if self.current else None
        names = (*UPPER, *LOWER)
        figures = {
            name: tuple(
                None if p.figures is None else getattr(p.figures, name) for p in self._points
            )
            for name in names
        }
        curves = SweepCurves(
            label=found.words,
            unit=unit.value if kind.is_length else kind.suffix,
            xs=tuple(point.values[0] / factor for point in self._points),
            figures=figures,
            now=None if now is None else now / factor,
            band=band,
            decimals=unit.decimals if kind.is_length else kind.decimals,
        )
        self.plot.show_curves(curves)
        self._show_choice()

    def _show_choice(self) -> None:
        point = self.plot.point
        self.copy_button.setVisible(self.sweep is not None)
        self.adopt_button.setVisible(self.sweep is not None)
        current = self.current
        self.adopt_button.setEnabled(point is not None and current)
        text = ""
        if self.sweep is not None and not current:
            text = (
                f"These curves are of '{self.sweep.plan.name}' before it was changed; sweep again "
                "to adopt a point."
            )
        elif point is not None:
            text = in_unit(self._points[point].problem, self._display.unit)
            text = text or self.plot.words_at(point)
        elif self.sweep is not None:
            text = "Click a point to see and adopt it."
        self.words.setText(text)

    def adopt(self) -> None:
        """Give the plan the value of the chosen point."""
        point = self.plot.point
        if self.sweep is None or point is None or not self.current:
            return
        one = swept(self.sweep.over[0].axis)
        plan = self._document.plan
        try:
            made = one.put(plan, None, self._points[point].values[0])
        except ValueError as error:
            self.words.setText(refusal(error, self._display.unit))
            return
        words = self.plot.words_at(point)
        self._steps.adopt_plan(made, f"Adopt {one.words}", f"Adopted {words}.")

    def copy(self) -> None:
        """Put all points on the clipboard, tab-separated."""
        if self.sweep is None:
            return
        from PySide6.QtGui import QGuiApplication  # noqa: PLC0415 - only when asked

        from planner.reports.exports import sweep_to_csv  # noqa: PLC0415 - only when asked

        lines = csv.reader(io.StringIO(sweep_to_csv(self.sweep)))
        text = "\n".join("\t".join(line) for line in lines)
        QGuiApplication.clipboard().setText(text + "\n")


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
    there: list[Any] = field(default_factory=list, compare=False)
    """The sweep with the points that have come in, last of all the newest."""


class SweepForm(FieldForm):
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
        super().__init__(document, display, parent)
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
        self._asked: SweepAsked | None = None
        lane.progressed.connect(self._on_progress)
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
            return sweeping(
                plan, (values,), options,
                progress=progress, cancelled=cancelled, so_far=asked.there.append,
            )  # fmt: skip

        self._asked = asked
        self.asker.ask(asked, job)

    def _on_done(self, asked: SweepAsked, found: Any) -> None:
        self._asked = None
        asked.there.clear()
        # One of a plan that was changed meanwhile is shown too; the board says of which it is.
        self._board.show_sweep(found)
        self.line.say(self._words(found))

    def _on_progress(self, about: object, _fraction: float) -> None:
        """Draw the points that are there while the others come."""
        if about is self._asked and self._asked is not None and self._asked.there:
            self._board.show_sweep(self._asked.there[-1])
            del self._asked.there[:-1]

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
        room = dial.sound_in(plan)
        if room.maximum <= room.minimum:
            return 0.1, 0.4
        low, high = room.minimum, room.maximum
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
