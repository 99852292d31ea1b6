"""The charts of surveys: residuals in colour, measured against estimated, surveys side by side."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Final

import numpy as np
import numpy.typing as npt
from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QColor, QImage, QPainter, QPalette, QPolygonF

from planner.app.canvas.ink import faded
from planner.app.plots.difference import diverged, rounded_reach

# PySide6 comes first: pyqtgraph takes the Qt binding it finds loaded.
import pyqtgraph as pg  # isort: skip

from planner.app.canvas.ink import Ink, Viewport, pen
from planner.app.plots.chart import Chart, line
from planner.app.plots.colour_bar import Legend
from planner.app.plots.colours import Rgba
from planner.app.plots.exported import Table
from planner.light.cellmap import round_step, rounded_up
from planner.metrics.figures import ppfd
from planner.survey.comparison import Ranking
from planner.survey.statistics import Residuals
from planner.units import PPFD_UNIT, format_number

# -- Residuals in colour: the ground at nothing, grey where the meter cannot tell ------
# Each hole colours what lies nearer to it than to any other hole: between holes nothing was
# measured, and a smooth picture would claim it was.

FloatArray = npt.NDArray[np.float64]

_LEAST_LIMIT: Final = 1e-9
_USUAL: Final = 0.96
"""Single wild readings take the end colours, and leave the rest its own."""
_ENTRIES: Final = 257
_RASTER_PX: Final = 2.0
_MOST_SIDE: Final = 480


@dataclass(frozen=True, eq=False)
class ResidualMap:
    """Values at holes about a neutral one, and how far from it nothing can be told.

    ``points`` (n, 2) in metres; ``values`` (n,), NaN where there is none; ``dead_band``
    (n,) half-widths. ``centre`` is what no difference is: 0, or 1 for ratios.
    """

    points: FloatArray
    values: FloatArray
    dead_band: FloatArray
    centre: float = 0.0
    unit: str = ""
    label: str = ""
    fixed_limit: float | None = None

    @property
    def limit(self) -> float:
        """Largest difference the colours tell apart: a round number beyond nearly all values.

        ``fixed_limit`` takes its place where several maps share one scale.
        """
        if self.fixed_limit is not None:
            return self.fixed_limit
        known = np.abs(self.values[np.isfinite(self.values)] - self.centre)
        usual = float(np.quantile(known, _USUAL, method="lower")) if len(known) else 0.0
        most = max(usual, 1.25 * self.typical_band, _LEAST_LIMIT)
        limit = rounded_reach(most)
        return min(limit, self.centre) if self.centre else limit

    @property
    def typical_band(self) -> float:
        """The middle of the dead bands, for the colour bar."""
        known = self.dead_band[np.isfinite(self.dead_band)]
        return float(np.median(known)) if len(known) else 0.0

    def colours(self, ink: Ink) -> Rgba:
        """Colour of each hole, (n, 4)."""
        return residual_colours(self.values - self.centre, self.limit, self.dead_band, ink)

    @property
    def legend(self) -> Legend:
        """What the bar beside the map says: its ends, its neutral value, its grey part."""
        low, high = self.centre - self.limit, self.centre + self.limit
        words = (
            f"Colours run from {format_number(low, 2)} (blue) to {format_number(high, 2)} "
            f"(orange) {self.unit}; grey is what the meter cannot tell."
        )
        values = np.linspace(-self.limit, self.limit, _ENTRIES)
        unit = tuple(self.unit.split(" ", 1)) if self.unit else ("ratio",)
        return Legend(
            (low, high), unit, words,
            lambda ink: residual_colours(values, self.limit, self.typical_band, ink),
            signed=not self.centre,
        )  # fmt: skip

    def text(self, value: float) -> str:
        """A value as it is written at its hole."""
        if not math.isfinite(value):
            return "–"
        if self.centre:
            return f"{value:.2f}"
        number = format_number(value, 0 if self.limit >= 10 else 1)
        return f"+{number}" if value > 0 and number != "0" else number.replace("-", "−")


def residual_colours(
    difference: FloatArray, limit: float, dead_band: FloatArray | float, ink: Ink
) -> Rgba:
    """Colours of differences (n,): grey inside the dead band, transparent where NaN."""
    small = np.abs(difference) <= dead_band
    return diverged(difference, max(limit, _LEAST_LIMIT), small, ink)


def paint_cells(
    painter: QPainter, viewport: Viewport, footprint: QPolygonF, shown: ResidualMap, ink: Ink
) -> None:
    """Colour the footprint (given in pixels) by the nearest hole."""
    if not len(shown.points):
        return
    box = footprint.boundingRect()
    columns = int(min(max(box.width() / _RASTER_PX, 1), _MOST_SIDE))
    rows = int(min(max(box.height() / _RASTER_PX, 1), _MOST_SIDE))
    u = box.left() + (np.arange(columns) + 0.5) / columns * box.width()
    v = box.top() + (np.arange(rows) + 0.5) / rows * box.height()
    x, y = (u - viewport.left) / viewport.scale, (viewport.bottom - v) / viewport.scale
    pixels = np.ascontiguousarray(shown.colours(ink)[nearest(x, y, shown.points)])
    image = QImage(pixels.data, columns, rows, 4 * columns, QImage.Format.Format_RGBA8888)
    painter.drawImage(box, image)


def nearest(x: FloatArray, y: FloatArray, points: FloatArray) -> npt.NDArray[np.intp]:
    """Index of the nearest point for a raster of places, (len(y), len(x))."""
    result = np.empty((len(y), len(x)), np.intp)
    across = (x[:, None] - points[None, :, 0]) ** 2
    for row, at in enumerate(y):
        result[row] = np.argmin(across + (at - points[:, 1])[None, :] ** 2, axis=1)
    return result


# -- One dot a hole, the line of agreement and the meter's doubt -----------------------

_DOT_PX = 7


class ScatterPlot(Chart):
    """Equal scales on both axes; the wedge is what the meter's uncertainty explains."""

    ground = QPalette.ColorRole.Window
    empty = "Readings are set against the estimate here."
    usual = (300, 290)

    def __init__(self) -> None:
        super().__init__("Measured against estimated")
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
        """Both axes run between these, round numbers; what cannot be does not rule them."""
        shown = self._shown
        if shown is None:
            return 0.0, 1.0
        values = np.concatenate([shown.measured[~shown.outlier], shown.estimated])
        low, high = float(values.min()), float(values.max())
        if low > 0.6 * high and high > low:
            step = round_step(high - low, 4)
            return max(math.floor(low / step) * step, 0.0), math.ceil(high / step) * step
        return 0.0, rounded_up(high, 5)

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
        if shown is None:
            self.say_empty(plot, ink)
            return
        low, high = self.ends()
        self.frame(plot, (low, high), (low, high))
        level = np.maximum(np.maximum(shown.measured, shown.estimated), 1e-12)
        doubt = float(np.median(shown.dead_band / level))
        along = np.array([low, high])
        shade = faded(ink.quiet, 0.16)
        edges = [pg.PlotCurveItem(along, along * (1 + by), pen=None) for by in (doubt, -doubt)]
        plot.addItem(pg.FillBetweenItem(*edges, brush=shade), ignoreBounds=True)
        self.curve(plot, along, along, line(pen(ink.quiet, 1.2)))
        rim = line(pen(ink.paper, 0.8))
        suspect = np.isin(shown.holes, list(self._suspects)) | shown.outlier
        # What lies beyond the axes stands at their edge, with its value beside it.
        inset = 0.03 * (high - low)
        at = np.clip(shown.measured, low + inset * shown.outlier, high - inset * shown.outlier)
        for which, colour in ((~suspect, ink.accent), (suspect, ink.alarm)):
            self.dots(plot, shown.estimated[which], at[which], colour, _DOT_PX, rim)
        for k in np.flatnonzero(shown.measured > high).tolist():
            left = shown.estimated[k] < (low + high) / 2
            value, side = ppfd(shown.measured[k]), (-0.15 if left else 1.15, 0.5)
            self.label(plot, (float(shown.estimated[k]), float(at[k])), value, ink.alarm, side)
        here = shown.holes == self._hole
        ring = line(pen(ink.ink, 1.6))
        nothing = QColor(0, 0, 0, 0)
        self.dots(plot, shown.estimated[here], at[here], nothing, _DOT_PX + 6, ring)

        def words(number: int) -> str:
            read, told = shown.measured[number], shown.estimated[number]
            return f"hole {shown.holes[number]}: {ppfd(read)} read, {ppfd(told)} estimated"

        self.spots(plot, shown.estimated, at, words)


# -- Surveys from bright to dim: a dot with its interval each, equal ones bracketed ----

_ROW: Final = 2.3
_MEAN_DOT_PX: Final = 9
MEANING: Final = (
    "Two whose intervals do not overlap can be told apart, at 95 % for all of them together; a "
    "bracket joins those that cannot."
)


class IntervalChart(Chart):
    """Ratios to the base of a ranking."""

    ground = QPalette.ColorRole.Window
    empty = "Read two surveys, and they are ranked here."

    def __init__(self) -> None:
        super().__init__("Ranking of the surveys", scale=0.92)
        self.ranking = Ranking()
        self._base = ""
        self.setToolTip(MEANING)
        self._plot = self.add_chart()
        self._plot.hideAxis("left")
        self._plot.setLabel("bottom", "Over the base")
        self.redraw()

    def show_ranking(self, found: Ranking, base: str) -> None:
        """Show a ranking; ``base`` is the key of the survey that counts as 1."""
        self.ranking, self._base = found, base
        said = [
            f"{row.name}: {row.ratio:.3f}, {row.low:.3f} to {row.high:.3f}" for row in found.rows
        ]
        self.setAccessibleDescription("; ".join([*said, MEANING]))
        self.setFixedHeight(self.sizeHint().height())
        self.redraw()

    def sizeHint(self) -> QSize:
        row = self.metrics().height()
        return QSize(260, round(max(len(self.ranking.rows), 2) * _ROW * row + 3.6 * row))

    def minimumSizeHint(self) -> QSize:
        return QSize(160, self.sizeHint().height())

    def table(self) -> Table:
        heads = ("Survey", f"PPFD ({PPFD_UNIT})", "Ratio", "Low", "High")
        rows = self.ranking.rows
        return heads, [(r.name, r.value, r.ratio, r.low, r.high) for r in rows]

    def draw(self, ink: Ink) -> None:
        rows, plot = self.ranking.rows, self._plot
        plot.getAxis("bottom").setVisible(len(rows) > 1)
        if len(rows) < 2:
            self.say_empty(plot, ink)
            return
        low, high = min(row.low for row in rows), max(row.high for row in rows)
        reach = max(high - low, 0.02)
        # Room on the right for the brackets.
        step = 0.05 * reach
        ends = (low - step, high + step * (1 + 1.2 * len(self.ranking.alike)))
        self.frame(plot, ends, (0.0, float(len(rows))), zoom=False)
        self.upright(plot, 1.0, line(pen(ink.faint, 1.0)))
        room, ground = self.width() - 24, self.palette().color(self.ground)
        for k, row in enumerate(rows):
            y = len(rows) - k
            is_base = row.key == self._base
            colour = ink.accent if is_base else ink.ink
            value = f"{row.ratio:.3f}  "
            left = room - self.metrics().horizontalAdvance(value)
            name = self.metrics().elidedText(row.name, Qt.TextElideMode.ElideMiddle, left)
            self.label(plot, (ends[0], y), f"{value}{name}", colour, (0, 0), ground)
            self.curve(plot, (row.low, row.high), (y - 0.7, y - 0.7), line(pen(ink.quiet, 2.0)))
            self.dots(plot, (row.ratio,), (y - 0.7,), colour, _MEAN_DOT_PX)
        for number, (first, last) in enumerate(self.ranking.alike):
            x = high + step * (1 + 1.2 * number)
            top, foot = len(rows) - first - 0.6, len(rows) - last - 0.8
            tip = x - 0.4 * step
            self.curve(plot, (tip, x, x, tip), (top, top, foot, foot), line(pen(ink.accent, 2.0)))
        self.spots(
            plot,
            [row.ratio for row in rows],
            [len(rows) - k - 0.7 for k in range(len(rows))],
            lambda k: (
                f"{rows[k].value:.1f} {PPFD_UNIT}; {rows[k].low:.3f} to {rows[k].high:.3f} of base"
            ),
        )
