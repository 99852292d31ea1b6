"""A sweep over two axes: a cell a point, and on it where what is wished is just met."""

from __future__ import annotations

import math
import textwrap
from dataclasses import dataclass
from functools import cached_property
from typing import Any, Final

import numpy as np
import numpy.typing as npt
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPen

from planner.app.plots.chart import PointChart

# PySide6 comes first: pyqtgraph takes the Qt binding it finds loaded.
import pyqtgraph as pg  # isort: skip

from planner.app.canvas.ink import Ink, pen
from planner.app.plots import colours
from planner.app.plots.chart import FloatArray, dashed, line
from planner.app.plots.exported import Table
from planner.app.plots.sweep_plot import free_height
from planner.light.cellmap import CellMap, filled
from planner.reports.contrast import ink_on

_MOST_NUMBERS: Final = 120
"""Texts drawn at once: a sweep draws itself anew with every few points that come."""


@dataclass(frozen=True)
class MapAxis:
    """An axis of the map: evenly spaced numbers as shown, or names at 0, 1, 2, ...

    ``now`` is where the plan stands on it, as a place; None where it has none.
    """

    label: str
    places: tuple[float, ...]
    texts: tuple[str, ...]
    named: bool = False
    now: float | None = None

    @property
    def edges(self) -> tuple[float, float]:
        """From the first cell's outer edge to the last one's."""
        half = self.step / 2
        return self.places[0] - half, self.places[-1] + half

    @property
    def step(self) -> float:
        """Width of a cell."""
        many = len(self.places) > 1
        return self.places[1] - self.places[0] if many else max(abs(self.places[0]), 1.0)


@dataclass(frozen=True)
class WishLine:
    """A wish on the map: all values of its figure (ny, nx), the bound, and words for the line."""

    values: FloatArray
    level: float
    words: str


@dataclass(frozen=True)
class SweepCells:
    """What is drawn: a figure (shown unit, NaN where there is none) over columns and rows.

    ``values`` has the shape (rows, columns); ``kept`` says which points keep all wishes, None
    where nothing is wished; ``words`` says a point, row by row.
    """

    across: MapAxis
    up: MapAxis
    values: FloatArray
    numbers: tuple[str, ...]
    words: tuple[str, ...]
    contours: tuple[WishLine, ...] = ()
    kept: npt.NDArray[np.bool_] | None = None
    colours: str = "cividis"
    figure: str = ""

    @property
    def framed(self) -> bool:
        """Whether what keeps the wishes is framed: between names no line can be drawn."""
        return self.kept is not None and (self.across.named or self.up.named)


class _Sampled(CellMap):
    """Points are what they are: no means of cells."""

    @cached_property
    def middles(self) -> FloatArray:
        return filled(self.values, self.least)


class SweepMap(PointChart):
    """A cell a point, counted row by row from below.

    Lines are drawn where two numbers span the map; where names do, cells that keep what is
    wished are framed.
    """

    empty = "The points are being computed."

    def __init__(self) -> None:
        super().__init__("Map of the sweep")
        self.cells: SweepCells | None = None
        self._plot = self.add_chart()
        self.redraw()

    def show_cells(self, cells: SweepCells | None, point: int | None = None) -> None:
        """Show other cells with one of them marked."""
        self.cells, self.point = cells, point
        said = "" if point is None or cells is None else f" {cells.words[point]}"
        about = "" if cells is None else f"{cells.figure} over {cells.across.label} and "
        about += "" if cells is None else f"{cells.up.label}.{said}"
        self.setAccessibleDescription(about or "Nothing has been swept yet.")
        self.redraw()

    def show_point(self, point: int | None) -> None:
        self.show_cells(self.cells, point)

    def table(self) -> Table:
        cells = self.cells
        if cells is None:
            return (), ()
        rows = [
            (up, across, float(cells.values[j, i]))
            for j, up in enumerate(cells.up.texts)
            for i, across in enumerate(cells.across.texts)
        ]
        return (cells.up.label, cells.across.label, cells.figure), rows

    # -- drawing ------------------------------------------------------------------------

    def draw(self, ink: Ink) -> None:
        plot, cells = self._plot, self.cells
        if cells is None:
            self.say_empty(plot, ink)
            return
        (x0, x1), (y0, y1) = cells.across.edges, cells.up.edges
        self.frame(plot, (x0, x1), (y0, y1))
        self.titles(plot, left=cells.up.label, bottom=cells.across.label)
        room = max(self.width() - 120, 60), max(self.height() - 60, 60)
        for side, axis, span in (("bottom", cells.across, room[0]), ("left", cells.up, room[1])):
            plot.getAxis(side).setTicks(
                [_ticks(axis, span, self.metrics(), upright=side == "left")]
            )
        levels = _reach(cells.values)
        image = pg.ImageItem(axisOrder="row-major")
        image.setImage(colours.to_rgba(cells.values, levels, colours.table(cells.colours)))
        image.setRect(QRectF(x0, y0, x1 - x0, y1 - y0))
        plot.addItem(image)
        self._write_numbers(cells, levels, room, ink)
        smooth = not (cells.across.named or cells.up.named)
        if smooth and min(cells.values.shape) > 1:
            self._draw_contours(cells, ink)
        elif cells.framed:
            self._frame_kept(cells)
        for point, line_ in self._marks(cells, ink):
            self._box(cells, point, line_)
        xs, ys = np.meshgrid(cells.across.places, cells.up.places)
        self.spots(plot, xs.ravel(), ys.ravel(), cells.words.__getitem__)

    def _write_numbers(
        self, cells: SweepCells, levels: colours.Levels, room: tuple[float, float], ink: Ink
    ) -> None:
        """The value in each cell, or in every second, third, ... where they have more room."""
        rows, columns = cells.values.shape
        wide = max(map(self.metrics().horizontalAdvance, cells.numbers), default=0.0) + 10
        across = max(math.ceil(wide * columns / room[0]), 1)
        up = max(math.ceil(1.3 * self.metrics().height() * rows / room[1]), 1)
        while math.ceil(columns / across) * math.ceil(rows / up) > _MOST_NUMBERS:
            across, up = across + 1, up + 1
        grounds = colours.to_rgba(cells.values, levels, colours.table(cells.colours))
        for row in range(0, rows, up):
            for column in range(0, columns, across):
                known = np.isfinite(cells.values[row, column])
                ink_there = QColor(*ink_on(grounds[row, column].tolist())) if known else ink.quiet
                at = cells.across.places[column], cells.up.places[row]
                self.label(self._plot, at, cells.numbers[row * columns + column], ink_there)

    def _draw_contours(self, cells: SweepCells, ink: Ink) -> None:
        """Where each wish is just met: a line of its own, with its words."""
        x, y = np.array(cells.across.places), np.array(cells.up.places)
        bounds = (*cells.across.edges, *cells.up.edges)
        taken: list[float] = []
        for contour in cells.contours:
            found = _Sampled.about(contour.values, x, y, (bounds[0], bounds[2], *bounds[1::2]))
            known = _Sampled(found.values, found.x, found.y, -np.inf)
            lines = [one for one in known.lines(contour.level) if known.covers(one).any()]
            for one in lines:
                path = np.where(known.covers(one)[:, None], one, np.nan)
                for shade, width in ((ink.paper, 4.0), (ink.accent, 2.0)):
                    self.curve(self._plot, path[:, 0], path[:, 1], line(pen(shade, width)))
            if lines:
                longest = max(lines, key=len)
                seen = longest[known.covers(longest)]
                at = seen[len(seen) // 6]  # near an end: numbers stand in the middles of cells
                apart = 1.2 * self.metrics().height() * self._plot.getViewBox().viewPixelSize()[1]
                at_y = free_height(float(at[1]), taken, float(apart))
                self.label(
                    self._plot, (float(at[0]), at_y), contour.words, ink.ink, plate=ink.paper
                )

    def _frame_kept(self, cells: SweepCells) -> None:
        """A line around the cells that keep what is wished."""
        if cells.kept is None:
            return
        padded = np.pad(cells.kept, 1)
        xs = [*(p - cells.across.step / 2 for p in cells.across.places), cells.across.edges[1]]
        ys = [*(p - cells.up.step / 2 for p in cells.up.places), cells.up.edges[1]]
        ends: list[tuple[float, float]] = []
        for j, i in np.argwhere(padded[1:-1, :-1] != padded[1:-1, 1:]).tolist():
            ends += [(xs[i], ys[j]), (xs[i], ys[j + 1]), (np.nan, np.nan)]
        for j, i in np.argwhere(padded[:-1, 1:-1] != padded[1:, 1:-1]).tolist():
            ends += [(xs[i], ys[j]), (xs[i + 1], ys[j]), (np.nan, np.nan)]
        if ends:
            x, y = np.array(ends).T
            ink = Ink.of(self.palette())
            for shade, width in ((ink.paper, 5.0), (ink.accent, 2.5)):
                self.curve(self._plot, x, y, line(pen(shade, width)))

    def _marks(self, cells: SweepCells, ink: Ink) -> list[tuple[int, QPen]]:
        """The point in hand, and the one nearest to where the plan stands."""
        found = []
        now = [
            None if axis.now is None else _nearest(axis.places, axis.now)
            for axis in (cells.across, cells.up)
        ]
        if now[0] is not None and now[1] is not None:
            found.append((now[1] * len(cells.across.places) + now[0], dashed(ink.ink, 1.6)))
        if self.point is not None:
            found.append((self.point, line(pen(ink.ink, 2.6))))
        return found

    def _box(self, cells: SweepCells, point: int, stroke: QPen) -> None:
        row, column = divmod(point, len(cells.across.places))
        half_x, half_y = 0.47 * cells.across.step, 0.47 * cells.up.step
        x, y = cells.across.places[column], cells.up.places[row]
        xs = [x - half_x, x + half_x, x + half_x, x - half_x, x - half_x]
        ys = [y - half_y, y - half_y, y + half_y, y + half_y, y - half_y]
        paper = Ink.of(self.palette()).paper
        self.curve(self._plot, xs, ys, line(pen(paper, stroke.widthF() + 2)))
        self.curve(self._plot, xs, ys, stroke)

    # -- pointer and keys -----------------------------------------------------------------

    def spot_at(self, scene: QPointF) -> tuple[Any, int] | None:
        """The cell under the pointer."""
        box = self._plot.getViewBox()
        if self.cells is None or not box.sceneBoundingRect().contains(scene):
            return None
        at = box.mapSceneToView(scene)
        column = _nearest(self.cells.across.places, at.x())
        row = _nearest(self.cells.up.places, at.y())
        return self._plot, row * len(self.cells.across.places) + column

    def step(self, key: Qt.Key) -> bool:
        by = {Qt.Key.Key_Left: (0, -1), Qt.Key.Key_Right: (0, 1),
              Qt.Key.Key_Down: (-1, 0), Qt.Key.Key_Up: (1, 0)}.get(key)  # fmt: skip
        if self.cells is None:
            return False
        rows, columns = self.cells.values.shape
        if by is not None:
            row, column = divmod(self.point or 0, columns)
            if self.point is not None:
                row, column = row + by[0], column + by[1]
            self.choose(min(max(row, 0), rows - 1) * columns + min(max(column, 0), columns - 1))
            return True
        return super().step(key)


def _nearest(places: tuple[float, ...], at: float) -> int:
    return int(np.argmin(np.abs(np.array(places) - at)))


def _reach(values: FloatArray) -> colours.Levels:
    """From the least to the greatest value there is."""
    known = values[np.isfinite(values)]
    return (float(known.min()), float(known.max())) if known.size else (0.0, 1.0)


def _ticks(
    axis: MapAxis, room: float, metrics: QFontMetricsF, *, upright: bool
) -> list[tuple[float, str]]:
    """As many of the places as have room for their texts; names are broken over lines."""
    each = room / len(axis.places)
    if axis.named:
        wide = 24 if upright else max(int(each / metrics.averageCharWidth()) - 1, 6)
        most = max(int(each / metrics.height()), 1) if upright else 3
        texts = ["\n".join(_broken(text, wide, most)) for text in axis.texts]
        return list(zip(axis.places, texts, strict=True))
    needed = max(map(metrics.horizontalAdvance, axis.texts), default=1.0) + 8
    every = math.ceil((1.2 * metrics.height() if upright else needed) / max(each, 0.1))
    return list(zip(axis.places, axis.texts, strict=True))[::every]


def _broken(text: str, wide: int, most: int) -> list[str]:
    return textwrap.wrap(text, wide, max_lines=most, placeholder="…")
