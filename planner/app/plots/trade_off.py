"""Light against cost: every option a dot, and a line through those that nothing else beats."""

from __future__ import annotations

from collections.abc import Hashable
from dataclasses import dataclass

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtWidgets import QSizePolicy, QWidget

from planner.app.canvas.ink import Ink, pen
from planner.app.plots.chart import Chart, line
from planner.app.plots.exported import Table
from planner.estimate.compare import unbeaten


@dataclass(frozen=True)
class Spot:
    """An option in the chart: what it brings and what it takes."""

    name: str
    who: Hashable
    light: float
    cost: float


class TradeOffPlot(Chart):
    """Up is more light, left is cheaper; ``picked(who)`` for a dot clicked or reached by keys."""

    picked = Signal(object)
    empty = "The light of the options is still being computed, or no price is known."

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__("Light against cost", parent)
        self.all: tuple[Spot, ...] = ()
        self._chosen: Hashable = None
        self._light, self._cost = "", ""
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self._plot = self.add_chart()
        self.redraw()

    def show_spots(self, spots: tuple[Spot, ...], light: str, cost: str, chosen: Hashable) -> None:
        """Show these, cheapest first, with the words of both axes."""
        self.all = tuple(sorted(spots, key=lambda one: (one.cost, -one.light, one.name)))
        self._light, self._cost, self._chosen = light, cost, chosen
        names = ", ".join(one.name for one in self.best)
        self.setAccessibleDescription(f"Nothing else beats: {names}." if names else self.empty)
        self.redraw()

    @property
    def best(self) -> tuple[Spot, ...]:
        """The options that no other beats in light and cost at once, cheapest first."""
        return tuple(self.all[k] for k in unbeaten([(one.light, one.cost) for one in self.all]))

    def sizeHint(self) -> QSize:
        return QSize(480, 360)

    def minimumSizeHint(self) -> QSize:
        return QSize(200, 140)

    def table(self) -> Table:
        best = self.best
        rows = [(o.name, o.light, o.cost, "yes" if o in best else "no") for o in self.all]
        return ("Name", self._light, self._cost, "Unbeaten"), rows

    def draw(self, ink: Ink) -> None:
        plot = self._plot
        if not self.all:
            self.say_empty(plot, ink)
            return
        plot.setLabel("left", self._light)
        plot.setLabel("bottom", self._cost)
        costs, lights = [o.cost for o in self.all], [o.light for o in self.all]
        # A name above or below its dot takes a line, however low the chart is.
        line_of = 1.8 * self.metrics().height() / max(self.height() - _AXIS_PX, 1)
        low, high = _room(costs)
        self.frame(plot, (low, high), _room(lights, line_of))
        best = self.best
        path = line(pen(ink.accent, 1.6))
        self.curve(plot, [o.cost for o in best], [o.light for o in best], path)
        for one in self.all:
            chosen, leads = one.who == self._chosen, one in best
            colour = ink.accent if leads else ink.quiet
            rim = line(pen(ink.ink, 2.0)) if chosen else None
            self.dots(plot, [one.cost], [one.light], colour, 13 if chosen else 9, rim)
        for k, one in enumerate(best):
            # Names of the unbeaten stand beside their dots, by turns below and above the line,
            # or where they are not cut off.
            name = _short(one.name)
            room = self.metrics().horizontalAdvance(name) / max(self.width() - _AXIS_PX, 1)
            at = (one.cost - low) / (high - low)
            below = at + room <= 1 if k % 2 == 0 else at < room
            anchor = (0.0, -0.25) if below else (1.0, 1.25)
            self.label(plot, (one.cost, one.light), name, ink.ink, anchor)
        words = [f"{o.name}: {o.light:.3g} for {o.cost:.2f}" for o in self.all]
        self.spots(plot, costs, lights, words.__getitem__)

    def pick(self, key: int, *, twice: bool) -> None:
        del twice  # a click and a double click both choose
        self.picked.emit(self.all[key].who)

    def step(self, key: Qt.Key) -> bool:
        by = {Qt.Key.Key_Left: -1, Qt.Key.Key_Right: 1}.get(key)
        if by is None or not self.all:
            return False
        who = [one.who for one in self.all]
        at = who.index(self._chosen) if self._chosen in who else 0
        self.picked.emit(who[min(max(at + by, 0), len(who) - 1)])
        return True


_AXIS_PX = 60
"""About what an axis and its title take."""


def _room(values: list[float], least: float = 0.0) -> tuple[float, float]:
    """A range with room around the values, so that names beside the dots are read.

    ``least`` is the part of the whole range that is needed at either end.
    """
    low, high = min(values), max(values)
    least = min(least, 0.4)
    margin = max(0.18, least / (1 - 2 * least)) * (high - low) or 0.1 * abs(high) or 1.0
    return low - margin, high + margin


def _short(name: str) -> str:
    return name if len(name) <= 34 else name[:33] + "…"
