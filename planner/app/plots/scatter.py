"""Measured against estimated: one dot a hole, the line of agreement and the meter's doubt."""

from __future__ import annotations

import math

import numpy as np
from PySide6.QtCore import QSize
from PySide6.QtGui import QColor, QPalette
from PySide6.QtWidgets import QWidget

# PySide6 comes first: pyqtgraph takes the Qt binding it finds loaded.
import pyqtgraph as pg  # isort: skip

from planner.app.canvas.ink import Ink, pen
from planner.app.plots.chart import Chart, Table, line
from planner.light.cellmap import round_step
from planner.metrics.figures import PPFD_UNIT, ppfd
from planner.survey.overlay import Residuals

_DOT_PX = 7


class ScatterPlot(Chart):
    """Equal scales on both axes; the wedge is what the meter's uncertainty explains."""

    ground = QPalette.ColorRole.Window

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__("Measured against estimated", parent)
        self._shown: Residuals | None = None
        self._suspects: frozenset[int] = frozenset()
        self._hole: int | None = None
        self._plot = self.add_chart()
        self._plot.showGrid(x=True, y=True, alpha=0.12)
        self._plot.setLabel("left", f"Measured ({PPFD_UNIT})")
        self._plot.setLabel("bottom", f"Estimated ({PPFD_UNIT})")
        self.redraw()

    @property
    def shown(self) -> Residuals | None:
        """What is plotted."""
        return self._shown

    def show_residuals(
        self, shown: Residuals | None, suspects: frozenset[int] = frozenset()
    ) -> None:
        """Plot a survey; None empties the plot. ``suspects`` are holes far off their neighbours."""
        self._shown, self._suspects = shown, suspects
        words = ""
        if shown is not None:
            words = (
                f"{len(shown.holes)} dots; readings from {ppfd(shown.measured.min())} to "
                f"{ppfd(shown.measured.max())}, estimated {ppfd(shown.estimated.min())} to "
                f"{ppfd(shown.estimated.max())} {PPFD_UNIT}."
            )
        self.setAccessibleDescription(words)
        self.redraw()

    def mark(self, hole: int | None) -> None:
        """Ring the dot of one hole."""
        if hole != self._hole:
            self._hole = hole
            self.redraw()

    def ends(self) -> tuple[float, float]:
        """Both axes run between these, round numbers."""
        shown = self._shown
        if shown is None:
            return 0.0, 1.0
        values = np.concatenate([shown.measured, shown.estimated])
        low, high = float(values.min()), float(values.max())
        if low > 0.6 * high and high > low:
            step = round_step(high - low, 4)
            return max(math.floor(low / step) * step, 0.0), math.ceil(high / step) * step
        step = round_step(max(high, 1e-9), 5)
        return 0.0, math.ceil(high / step - 1e-9) * step or 1.0

    def sizeHint(self) -> QSize:
        return QSize(300, 290)

    def table(self) -> Table:
        shown = self._shown
        if shown is None:
            return (), ()
        heads = ("Hole", f"Estimated ({PPFD_UNIT})", f"Measured ({PPFD_UNIT})")
        return heads, list(
            zip(
                shown.holes.tolist(), shown.estimated.tolist(), shown.measured.tolist(), strict=True
            )
        )

    def draw(self, ink: Ink) -> None:
        shown, plot = self._shown, self._plot
        for side in ("left", "bottom"):
            plot.showAxis(side, shown is not None)
        if shown is None:
            return
        low, high = self.ends()
        self.frame(plot, (low, high), (low, high))
        level = np.maximum(np.maximum(shown.measured, shown.estimated), 1e-12)
        doubt = float(np.median(shown.dead_band / level))
        along = np.array([low, high])
        shade = QColor(ink.quiet)
        shade.setAlphaF(0.16)
        edges = [pg.PlotCurveItem(along, along * (1 + by), pen=None) for by in (doubt, -doubt)]
        plot.addItem(pg.FillBetweenItem(*edges, brush=shade), ignoreBounds=True)
        self.curve(plot, along, along, line(pen(ink.quiet, 1.2)))
        rim = line(pen(ink.paper, 0.8))
        suspect = np.isin(shown.holes, list(self._suspects))
        for which, colour in ((~suspect, ink.accent), (suspect, ink.alarm)):
            self.dots(plot, shown.estimated[which], shown.measured[which], colour, _DOT_PX, rim)
        here = shown.holes == self._hole
        ring = line(pen(ink.ink, 1.6))
        nothing = QColor(0, 0, 0, 0)
        self.dots(plot, shown.estimated[here], shown.measured[here], nothing, _DOT_PX + 6, ring)

        def words(number: int) -> str:
            read, told = shown.measured[number], shown.estimated[number]
            return f"hole {shown.holes[number]}: {ppfd(read)} read, {ppfd(told)} estimated"

        self.spots(plot, shown.estimated, shown.measured, words)
