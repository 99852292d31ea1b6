"""Asking for a sweep: over one or two of the plan's numbers, linings of a place, kinds of lamp."""

from __future__ import annotations

import math
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any, Final

from planner.app.display import Display
from planner.app.document import Document
from planner.app.fields.choosers import Shelf, lining_places
from planner.app.fields.form import TickList
from planner.app.fields.panel import FieldForm
from planner.app.jobs import Cancelled, Lane, Progress
from planner.app.pages.side.linked import Asker, AskLine
from planner.app.pages.side.sweep_board import SweepBoard
from planner.app.pages.side.variants import offer_things
from planner.estimate.result import EstimateOptions
from planner.estimate.sweep_points import LAMP, LINING, Over, over_range
from planner.folders import state_folder
from planner.plan.dials import DIALS, Dial
from planner.plan.lamp import LampModel
from planner.plan.lining import Lining
from planner.plan.place import Place, PlaceKind
from planner.plan.plan import Plan
from planner.plan.quantity import COUNT, HANGING_HEIGHT
from planner.units import in_unit

_ALL_OF: Final = {
    PlaceKind.LAMP: "All lamps",
    PlaceKind.WALL: "All walls",
    PlaceKind.OBSTACLE: "All obstacles",
}
_MOST_STEPS: Final = 200.0
_KEPT_SWEEPS: Final = 24
_STEPS: Final = (13.0, 7.0)
"""Points proposed along the one axis there is, and along each of two."""
_FIRST: Final = (
    "height", "output", LINING, LAMP, "reflectance", "size", "spacing", "canopy", "photoperiod",
)  # fmt: skip
"""What one mostly goes over; the other numbers of the plan follow."""
_NO_LIGHT: Final = {"tariff", "overlap", "span"}
"""Numbers that change no figure of the light."""
_TICKS_SHOWN: Final = 7


@dataclass(frozen=True)
class SweepAsked:
    """A sweep on its way: its plan, the axes with their values and the options."""

    plan: Plan
    over: tuple[Over, ...]
    there: list[Any] = field(default_factory=list, compare=False)
    """The sweep with the points that have come in, last of all the newest."""


class AxisFields:
    """The rows of a form that say what is gone over, where, and by which values."""

    def __init__(self, form: FieldForm, shelf: Shelf, label: str, *, needed: bool) -> None:
        self._form, self._shelf, self._needed = form, shelf, needed
        _, self.over = form.add_choice(label, [])
        self.where_row, self.where = form.add_choice("Where", [])
        self.low_row, self.low = form.add_number("From", HANGING_HEIGHT, 0.2)
        self.high_row, self.high = form.add_number("To", HANGING_HEIGHT, 0.6)
        steps = COUNT.within(2.0, _MOST_STEPS)
        self.steps_row, self.steps = form.add_number("Points", steps, _STEPS[0])
        self.ticks = TickList("What is gone over")
        rows = _TICKS_SHOWN * (self.ticks.fontMetrics().height() + 4)
        self.ticks.setFixedHeight(rows)
        form.add_wide(self.ticks)
        self.over.activated.connect(lambda _line: self.propose())
        self.where.activated.connect(lambda _line: self.propose())
        self.follow(form.plan)
        self.propose()

    @property
    def key(self) -> str:
        """What is gone over; empty where nothing is."""
        return str(self.over.currentData() or "")

    @property
    def dial(self) -> Dial | None:
        """The dial that is turned, where it is one."""
        return DIALS.get(self.key)

    @property
    def things(self) -> dict[str, Lining] | dict[str, LampModel]:
        """The linings or kinds of lamp there are, by key."""
        plan, catalogue = self._form.plan, self._shelf.catalogue
        return catalogue.linings_for(plan) if self.key == LINING else catalogue.lamps_for(plan)

    def follow(self, plan: Plan) -> None:
        """Offer what there is in the plan as it stands."""
        keys = (*_FIRST, *(key for key in DIALS if key not in _FIRST and key not in _NO_LIGHT))
        names = {LINING: "Lining", LAMP: "Kind of lamp"}
        there = {LINING: True, LAMP: bool(plan.lamps)}
        offered = [
            (names[key] if key in names else DIALS[key].label, key)
            for key in keys
            if there.get(key, key in DIALS and bool(DIALS[key].places(plan)))
        ]
        self.over.offer(offered if self._needed else [("Nothing else", ""), *offered])
        self._show_rows()

    def _places(self, plan: Plan) -> list[tuple[str, Place | None]]:
        if self.key == LINING:
            return lining_places(plan)
        found = self.dial
        at = PlaceKind.LAMP if self.key == LAMP else PlaceKind.SPACE if found is None else found.at
        if at is PlaceKind.SPACE:
            return []
        hung = [Place(PlaceKind.LAMP, k) for k in range(len(plan.lamps))]
        places = list(hung) if found is None else list(found.places(plan))
        named: list[tuple[str, Place | None]] = [(one.words(plan), one) for one in places]
        # No two corners lie at one place, nor can all walls be of one length.
        alone = at is PlaceKind.CORNER or self.key == "wall-length"
        return named if alone else [(_ALL_OF[at], None), *named]

    def _show_rows(self) -> None:
        plan, named = self._form.plan, self.key in {LINING, LAMP}
        self.where.offer(self._places(plan))
        self.where_row.set_visible(self.where.count() > 1 and (self.where.count() != 2))
        for row in (self.low_row, self.high_row, self.steps_row):
            row.set_visible(self.dial is not None)
        self.ticks.setVisible(named)
        if named:
            offer_things(self.ticks, self.things)

    def propose(self) -> None:
        """A range to begin with, around where the plan stands."""
        self._show_rows()
        dial = self.dial
        if dial is None:
            return
        low, high = _range(dial, self._form.plan, self.where.currentData())
        for row, box, value in ((self.low_row, self.low, low), (self.high_row, self.high, high)):
            box.set_quantity(dial.quantity)
            box.reset(value)
            row.clear_error()

    def asked(self) -> Over | None:
        """The axis as it stands in the fields; None where nothing is gone over.

        Raises
        ------
        ValueError
            If the range does not rise, or nothing is ticked.
        """
        dial, place = self.dial, self.where.currentData()
        if not self.key:
            return None
        if dial is None:
            ticked = self.ticks.ticked()
            if not ticked:
                noun = "linings" if self.key == LINING else "lamps"
                raise ValueError(f"Tick the {noun} to go over.")
            things = self.things
            return Over(self.key, tuple(things[key] for key in ticked), place)
        if self.high.value <= self.low.value:
            raise ValueError("The range must rise: write a 'To' above 'From'.")
        low, high = self.low.value, self.high.value
        return over_range(dial.key, low, high, round(self.steps.value), place)


class SweepForm(FieldForm):
    """Asks for a sweep on the page's lane; the board shows it."""

    def __init__(
        self,
        document: Document,
        display: Display,
        shelf: Shelf,
        lane: Lane,
        board: SweepBoard,
    ) -> None:
        super().__init__(document, display)
        self._document, self._board = document, board
        self.first = AxisFields(self, shelf, "Over", needed=True)
        self.second = AxisFields(self, shelf, "And over", needed=False)
        self.second.over.activated.connect(lambda _line: self._share_points())
        self.line = AskLine(self, "Sweep", "Compute the light at each of these points")
        self.line.ask.clicked.connect(self.ask)
        self.asker = Asker(lane, self.line, self)
        self.asker.answered.connect(self._on_done)
        self._asked: SweepAsked | None = None
        lane.progressed.connect(self._on_progress)
        self.end()
        document.changed.connect(lambda _old, _new: self._follow())
        shelf.changed.connect(self._follow)

    def _share_points(self) -> None:
        """Two axes take fewer points each, unless a number was written."""
        before, now = _STEPS if self.second.key else _STEPS[::-1]
        for axis in (self.first, self.second):
            if axis.steps.value == before or axis is self.second:
                axis.steps.reset(now)

    def ask(self) -> None:
        """Begin the sweep."""
        self.take_typed()
        try:
            axes = [self.first.asked(), self.second.asked()]
            over = tuple(one for one in axes if one is not None)
            if len({(one.axis, one.place) for one in over}) < len(over):
                raise ValueError("Both axes are the same; choose another one, or nothing else.")
        except ValueError as error:
            self.line.say("", str(error))
            return
        plan = self._document.plan
        cells = self._display.state.cells
        options = EstimateOptions(cells=(cells, cells))
        asked = SweepAsked(plan, over)

        def job(progress: Progress, cancelled: Cancelled) -> object:
            return _sweep(
                plan, over, options,
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

    def _follow(self) -> None:
        for axis in (self.first, self.second):
            axis.follow(self._document.plan)


def _range(dial: Dial, plan: Plan, place: Place | None) -> tuple[float, float]:
    """A range to begin with."""
    shares = {"output": (20.0, 100.0), "reflectance": (0.1, 0.95)}
    if dial.key in shares:
        return shares[dial.key]
    room, present = dial.sound_in(plan, place), dial.get(plan, place)
    low, high = room.minimum, room.maximum
    if not math.isfinite(low + high):
        low, high = 0.0, 1.0
    if dial.key == "height":
        low, high = min(max(low, 0.1), 0.5 * high), high - 0.004
    elif dial.key.endswith(("-x", "-y")):
        low, high = 0.95 * low + 0.05 * high, 0.05 * low + 0.95 * high  # not in the walls
    elif present and present > 0:
        low, high = max(0.5 * present, low), min(1.4 * present, high)
    grain = 100 / dial.quantity.factor
    low, high = math.ceil(low * grain - 1e-6) / grain, math.floor(high * grain + 1e-6) / grain
    return (low, high) if high > low else (0.1, 0.4)


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
