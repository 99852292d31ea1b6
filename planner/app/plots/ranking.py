"""The ranked chart: lowest, mean and highest PPFD of each side, brightest first."""

from __future__ import annotations

from collections.abc import Hashable
from dataclasses import dataclass
from typing import Any, Final

from PySide6.QtCore import QPointF, QSize, Qt, Signal
from PySide6.QtGui import QPalette
from PySide6.QtWidgets import QWidget

from planner.app.canvas.ink import Ink, pen
from planner.app.plots.chart import Chart, dashed, line
from planner.app.plots.colours import Levels
from planner.app.plots.exported import Table
from planner.metrics.figures import FIGURE, PPFD_UNIT, ppfd

_ROW: Final = 2.3
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

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__("Ranking by mean PPFD", parent, scale=0.92)
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
        self.frame(plot, (0.0, top), (0.0, max(count, 1)))
        if self._band is not None:
            self.band(plot, self._band, ink, upright=True)
        metrics, room = self.metrics(), self.width() - 24
        for row, one in enumerate(self.lines):
            y = count - row
            chosen = one.side is not None and one.side == self._chosen
            colour = ink.accent if chosen else ink.quiet
            text = ink.accent if chosen else ink.ink
            value = f"= {ppfd(one.mean)}" if one.equal else ppfd(one.mean)
            self.label(plot, (top, y), value, text, (1, 0))
            name = f"{one.name} (measured)" if one.measured else one.name
            left = room - metrics.horizontalAdvance(value)
            name = metrics.elidedText(name, Qt.TextElideMode.ElideRight, left)
            self.label(plot, (0, y), name, text, (0, 0))
            at = y - 0.74
            stroke = dashed(colour, 2.0) if one.measured else line(pen(colour, 2.0))
            self.curve(plot, (one.lowest, one.highest), (at, at), stroke)
            for end in (one.lowest, one.highest):
                self.curve(plot, (end, end), (at - 0.08, at + 0.08), line(pen(colour, 2.0)))
            ground = ink.paper if one.measured else colour
            self.dots(plot, [one.mean], [at], ground, 8, line(pen(colour, 2.0)))
        heights = [count - row - 0.5 for row in range(count)]
        self.spots(plot, [o.mean for o in self.lines], heights, lambda k: self.lines[k].words())

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
