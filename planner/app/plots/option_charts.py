"""Options as charts: ranked by their light, and light against cost."""

from __future__ import annotations

from collections.abc import Hashable, Sequence
from dataclasses import dataclass
from typing import Any, Final

import numpy as np
from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QPalette

from planner.app.canvas.ink import Ink, pen
from planner.app.plots.chart import Chart, dashed, line
from planner.app.plots.colours import Levels
from planner.app.plots.exported import Table
from planner.estimate.compare import Spot, TradeOff, unbeaten
from planner.metrics.figures import FIGURE, ppfd
from planner.units import PPFD_UNIT

_ROW: Final = 2.3
_APART: Final = (np.nan, np.nan)
SPAN: Final = "The lines run from the darkest to the brightest cell; they are no uncertainty."


@dataclass(frozen=True)
class RankLine:
    """A line of the chart; ``side`` is None for a measured set.

    ``equal`` says that it equals the baseline within the margin the user has set.
    """

    name: str
    lowest: float
    mean: float
    highest: float
    side: Hashable | None = None
    equal: bool = False

    @property
    def measured(self) -> bool:
        """Whether it was read from a meter."""
        return self.side is None

    def words(self) -> str:
        """The line in words."""
        kind = "measured, " if self.measured else ""
        told = ", equal to the baseline for the purpose" if self.equal else ""
        return (
            f"{self.name}: {kind}mean {ppfd(self.mean)}, from {ppfd(self.lowest)} to "
            f"{ppfd(self.highest)}{told}"
        )


class RankingPlot(Chart):
    """Estimated sides are filled dots on a full line, measured sets rings on a dashed one.

    ``picked(side)`` carries a side that is clicked, or reached by the arrow keys, ``taken(side)``
    one that is clicked twice or confirmed by Enter.
    """

    picked = Signal(object)
    taken = Signal(object)

    ground = QPalette.ColorRole.Window
    empty = "What has light is ranked here."

    def __init__(self) -> None:
        super().__init__("Ranking by mean PPFD", scale=0.92)
        self.lines: tuple[RankLine, ...] = ()
        self._band: Levels | None = None
        self._chosen: Hashable = None
        self.setToolTip(SPAN)
        self._plot = self.add_chart()
        self._plot.hideAxis("left")
        self._plot.setLabel("bottom", f"PPFD ({PPFD_UNIT}), darkest to brightest cell")
        self.redraw()

    def show_lines(
        self, lines: tuple[RankLine, ...], band: Levels | None, chosen: Hashable
    ) -> None:
        """Show these, brightest first; ``chosen`` is a side."""
        self.lines = tuple(sorted(lines, key=lambda one: (-one.mean, one.name)))
        self._band, self._chosen = band, chosen
        said = "; ".join(one.words() for one in self.lines)
        self.setAccessibleDescription(f"{PPFD_UNIT}. {said}. {SPAN}")
        self.updateGeometry()
        self.redraw()

    def sizeHint(self) -> QSize:
        row = self.metrics().height()
        return QSize(260, round(len(self.lines) * _ROW * row + 3.4 * row))

    def minimumSizeHint(self) -> QSize:
        return QSize(160, self.sizeHint().height())

    def _top(self) -> float:
        top = max((one.highest for one in self.lines), default=0.0)
        if self._band is not None:
            top = max(top, min(self._band[1], 2 * top))
        return top * 1.04 or 1.0

    def table(self) -> Table:
        heads = [FIGURE[key].heading() for key in ("minimum", "mean", "maximum")]
        return ("Name", *heads), [(o.name, o.lowest, o.mean, o.highest) for o in self.lines]

    def draw(self, ink: Ink) -> None:
        top, count, plot = self._top(), len(self.lines), self._plot
        if not count:
            self.say_empty(plot, ink)
            return
        self.frame(plot, (0.0, top), (0.0, max(count, 1)))
        if self._band is not None:
            self.band(plot, self._band, ink, upright=True)
        metrics, room = self.metrics(), self.width() - 24
        for row, one in enumerate(self.lines):
            y = count - row
            chosen = one.side is not None and one.side == self._chosen
            text = ink.accent if chosen else ink.ink
            value = f"= {ppfd(one.mean)}" if one.equal else ppfd(one.mean)
            self.label(plot, (top, y), value, text, (1, 0))
            name = f"{one.name} (measured)" if one.measured else one.name
            left = room - metrics.horizontalAdvance(value)
            name = metrics.elidedText(name, Qt.TextElideMode.ElideRight, left)
            self.label(plot, (0, y), name, text, (0, 0))
        # One item for all lines of a kind: a redraw costs by its items, not by their points.
        kinds = [(one.side is not None and one.side == self._chosen, one.measured)
                 for one in self.lines]  # fmt: skip
        for kind in sorted(set(kinds)):
            rows = [row for row in range(count) if kinds[row] == kind]
            self._draw_lines(rows, ink, chosen=kind[0], measured=kind[1])
        heights = [count - row - 0.5 for row in range(count)]
        self.spots(plot, [o.mean for o in self.lines], heights, lambda k: self.lines[k].words())

    def _draw_lines(self, rows: list[int], ink: Ink, *, chosen: bool, measured: bool) -> None:
        """Spans, their ends and means of rows that look alike; NaN parts one from the next."""
        colour = ink.accent if chosen else ink.quiet
        at = {row: len(self.lines) - row - 0.74 for row in rows}
        spans, ends = [], []
        for row in rows:
            one = self.lines[row]
            spans += [(one.lowest, at[row]), (one.highest, at[row]), _APART]
            for end in (one.lowest, one.highest):
                ends += [(end, at[row] - 0.08), (end, at[row] + 0.08), _APART]
        full = line(pen(colour, 2.0))
        stroke = dashed(colour, 2.0) if measured else full
        for pieces, how in ((spans, stroke), (ends, full)):
            x, y = np.array(pieces).T
            self.curve(self._plot, x, y, how)
        means = [self.lines[row].mean for row in rows]
        ground = ink.paper if measured else colour
        self.dots(self._plot, means, list(at.values()), ground, 8, full)

    # -- pointer and keys -----------------------------------------------------------------

    def spot_at(self, scene: QPointF) -> tuple[Any, int] | None:
        """The line under the pointer, over its whole width."""
        box = self._plot.getViewBox()
        if not self.lines or not box.sceneBoundingRect().contains(scene):
            return None
        row = int(len(self.lines) - box.mapSceneToView(scene).y())
        return (self._plot, min(max(row, 0), len(self.lines) - 1))

    def pick(self, key: int, *, twice: bool) -> None:
        side = self.lines[key].side
        if side is not None:
            self.picked.emit(side)
            if twice:
                self.taken.emit(side)

    def step(self, key: Qt.Key) -> bool:
        if key in {Qt.Key.Key_Return, Qt.Key.Key_Enter} and self._chosen is not None:
            self.taken.emit(self._chosen)
            return True
        by = {Qt.Key.Key_Up: -1, Qt.Key.Key_Down: 1}.get(key)
        sides = [one.side for one in self.lines if one.side is not None]
        if by is None or not sides:
            return False
        at = sides.index(self._chosen) if self._chosen in sides else 0
        self.picked.emit(sides[min(max(at + by, 0), len(sides) - 1)])
        return True


# -- light against cost ------------------------------------------------------------------


ALONE = "With an option kept beside the plan, or one tried, light is set against cost here."


class TradeOffPlot(Chart):
    """Up is more light, left is cheaper; ``picked(who)`` for a dot clicked or reached by keys."""

    picked = Signal(object)
    empty = "The light of the options is still being computed, or no price is known."
    usual, least = (480, 360), (200, 140)
    grows = True

    def __init__(self) -> None:
        super().__init__("Light against cost")
        self.all: tuple[Spot, ...] = ()
        self._chosen: Hashable = None
        self._light, self._cost = "", ""
        self._plot = self.add_chart()
        self.redraw()

    def show_trade_off(self, shown: TradeOff, chosen: Hashable) -> None:
        """Show its options, cheapest first, with the words of both axes."""
        self.all = tuple(sorted(shown.spots, key=lambda one: (one.cost, -one.light, one.name)))
        self._light, self._cost, self._chosen = shown.light, shown.cost, chosen
        names = ", ".join(one.name for one in self.best)
        self.setAccessibleDescription(f"Nothing else beats: {names}." if names else self.empty)
        self.redraw()

    @property
    def best(self) -> tuple[Spot, ...]:
        """The options that no other beats in light and cost at once, cheapest first."""
        return tuple(self.all[k] for k in unbeaten([(one.light, one.cost) for one in self.all]))

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
        for leads, colour in ((False, ink.quiet), (True, ink.accent)):
            dots = [one for one in self.all if (one in best) == leads]
            self.dots(plot, [o.cost for o in dots], [o.light for o in dots], colour, 9)
            for one in dots:
                if one.who == self._chosen:
                    rim = line(pen(ink.ink, 2.0))
                    self.dots(plot, [one.cost], [one.light], colour, 13, rim)
        self._name_dots(plot, best, ink)
        if len(self.all) == 1:
            height = _room(lights, line_of)
            self.say(plot, ((low + high) / 2, 0.8 * height[0] + 0.2 * height[1]), ALONE, ink)
        words = [f"{o.name}: {o.light:.3g} for {o.cost:.2f}" for o in self.all]
        self.spots(plot, costs, lights, words.__getitem__)

    def _name_dots(self, plot: Any, best: Sequence[Spot], ink: Ink) -> None:
        """A name at every dot, the unbeaten first, where it covers no other; equals share one."""
        (low, high), (least, most) = plot.getViewBox().viewRange()
        across = (high - low) / max(self.width() - _AXIS_PX, 1)
        up = (most - least) / max(self.height() - _AXIS_PX, 1)
        tall, reach = self.metrics().height() * up, 6 * up
        whole = QRectF(low, least, high - low, most - least)
        named: dict[tuple[float, float], list[Spot]] = {}
        for one in (*best, *self.all):
            there = named.setdefault((one.cost, one.light), [])
            there += [] if one in there else [one]
        taken = [QRectF(x - 6 * across, y - reach, 12 * across, 2 * reach) for x, y in named]
        for (x, y), spots in named.items():
            name = _short(" = ".join(one.name for one in spots))
            wide = (self.metrics().horizontalAdvance(name) + 4) * across
            places = [
                (QRectF(x - wide * left, bottom, wide, tall), left)
                for bottom in (y - reach - tall, y + reach)
                for left in (0.0, 1.0, 0.5)
            ]
            inside = [p for p in places if whole.contains(p[0])] or places
            free = [p for p in inside if not any(p[0].intersects(other) for other in taken)]
            box, left = (free or inside)[0]
            taken.append(box)
            colour = ink.ink if spots[0] in best else ink.quiet
            # Values rise upwards, so the bottom of the box is the top of the text.
            self.label(plot, (x, box.bottom()), name, colour, (left, 0.0))

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
    if low == high == 0:
        return -0.09, 1.0  # nothing is known to be negative, and no number below 0 is written
    least = min(least, 0.4)
    margin = max(0.18, least / (1 - 2 * least)) * (high - low) or 0.1 * abs(high)
    return low - margin, high + margin


def _short(name: str) -> str:
    return name if len(name) <= 34 else name[:33] + "…"
