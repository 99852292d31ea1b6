"""Curves of a sweep: PPFD above, evenness and share in the band below, over one number."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, Final

import numpy as np
from PySide6.QtCore import Qt

from planner.app.canvas.ink import Ink, faded, mixed, pen
from planner.app.plots.chart import FloatArray, PointChart, dashed, line
from planner.app.plots.colours import Levels
from planner.app.plots.exported import Table
from planner.language import inside
from planner.light.cellmap import round_values
from planner.metrics.figures import FIGURE
from planner.units import PPFD_UNIT, format_number

UPPER: Final = ("maximum", "mean", "minimum")
LOWER: Final = ("min_over_mean", "share_inside")
SAID: Final = ("mean", "minimum", *LOWER)
_SAME_BAND: Final = 0.5
"""Bands that differ by less, in µmol m⁻² s⁻¹, are drawn as one."""


@dataclass(frozen=True)
class SweepCurves:
    """What is drawn.

    ``xs`` as shown (in ``unit``), rising; ``figures`` holds a list of values for each figure
    by name, None where a point has none, fractions for ratios; ``now`` is where the plan
    stands, None where it has no single place. ``bands`` are those wanted at each point, which vary
    with the hours and the light of the room. ``beside`` are the means of another sweep over
    the same number: its name, places and values.
    """

    label: str
    unit: str
    xs: tuple[float, ...]
    figures: dict[str, tuple[float | None, ...]]
    now: float | None = None
    bands: tuple[Levels | None, ...] = ()
    decimals: int = 1
    beside: tuple[str, tuple[float, ...], tuple[float | None, ...]] | None = None


class SweepPlot(PointChart):
    """Two stacked charts over one axis; points are numbered as in ``xs``."""

    usual = (520, 260)
    empty = "Choose over what, from where to where, and press 'Sweep'."

    def __init__(self) -> None:
        super().__init__("Curves of the sweep")
        self.curves: SweepCurves | None = None
        self._upper, self._lower = self.add_chart(0), self.add_chart(1)
        self.ci.layout.setRowStretchFactor(0, 62)
        self.ci.layout.setRowStretchFactor(1, 38)
        self._upper.getAxis("bottom").setStyle(showValues=False)
        self._lower.setXLink(self._upper)
        self.redraw()

    def show_curves(self, curves: SweepCurves | None, point: int | None = None) -> None:
        """Show other curves with a point of them marked."""
        self.curves, self.point = curves, point
        self._describe()
        self.redraw()

    def show_point(self, point: int | None) -> None:
        self.show_curves(self.curves, point)

    def words_at(self, point: int) -> str:
        """A point in words."""
        curves = self.curves
        if curves is None:
            return ""
        value = format_number(curves.xs[point], curves.decimals)
        figures = {key: values[point] for key, values in curves.figures.items() if key in SAID}
        return f"{curves.label} {value} {curves.unit}".rstrip() + f", {said(figures)}"

    def _describe(self) -> None:
        if self.curves is None or not self.curves.xs:
            self.setAccessibleDescription("Nothing has been swept yet.")
            return
        first = f"{len(self.curves.xs)} points over {self.curves.label}."
        at = "" if self.point is None else f" {self.words_at(self.point)}"
        self.setAccessibleDescription(first + at)

    def _values(self, key: str) -> FloatArray:
        """A figure at every point in the unit shown, NaN where there is none."""
        found = () if self.curves is None else self.curves.figures.get(key, ())
        shown = [FIGURE[key].shown(value) for value in found]
        return np.array([np.nan if value is None else value for value in shown])

    def table(self) -> Table:
        curves = self.curves
        if curves is None:
            return (), ()
        keys = (*UPPER, *LOWER)
        axis = f"{curves.label} ({curves.unit})" if curves.unit else curves.label
        columns = [curves.xs, *(self._values(key).tolist() for key in keys)]
        rows = list(zip(*(column for column in columns if len(column)), strict=True))
        return (axis, *(FIGURE[key].heading() for key in keys)), rows

    def draw(self, ink: Ink) -> None:
        curves = self.curves
        filled = curves is not None and bool(curves.xs)
        self._lower.setVisible(filled)
        if curves is None or not filled:
            self.say_empty(self._upper, ink)
            return
        low, high = min(curves.xs), max(curves.xs)
        other = _numbers(curves.beside[2]) if curves.beside is not None else np.array([np.nan])
        span = (low - 1, high + 1) if low == high else (low, high)
        bright = self._values("maximum")
        highest = np.concatenate([bright[np.isfinite(bright)], other[np.isfinite(other)]])
        top = float(highest.max()) * 1.08 if highest.size else 100.0
        room = self.metrics().horizontalAdvance("Min / mean") + 10
        wide = max(self.width() - room - 80, 60)
        # Room for the curves' names at their right ends.
        framed = (span[0], span[1] + (span[1] - span[0]) * room / wide)
        self.frame(self._upper, framed, (0.0, top or 100.0))
        self.frame(self._lower, framed, (-9.0, 109.0))
        axis = round(self.metrics().horizontalAdvance("00000") + self.metrics().height()) + 24
        for plot, text in ((self._upper, f"PPFD<br>{PPFD_UNIT}"), (self._lower, "Share (%)")):
            self.titles(plot, left=text)
            plot.getAxis("left").setWidth(axis)
        unit = f" ({curves.unit})" if curves.unit else ""
        self.titles(self._lower, bottom=f"{curves.label}{unit}")
        wanted = max(2, int(wide / (1.6 * self.metrics().horizontalAdvance("000000"))))
        digits = max(curves.decimals, 1)
        ticks = [(value, format_number(value, digits)) for value in round_values(*span, wanted)]
        for plot in self.plots:
            plot.getAxis("bottom").setTicks([ticks])
        self._draw_bands(curves, ink)
        strokes = {
            "maximum": dashed(ink.quiet, 1.2),
            "mean": line(pen(ink.accent, 2.2)),
            "minimum": line(pen(ink.quiet, 1.2)),
            "min_over_mean": line(pen(ink.ink, 1.8)),
            "share_inside": line(pen(mixed(ink.accent, ink.ink, 0.3), 1.4, Qt.PenStyle.DotLine)),
        }
        xs = np.array(curves.xs)
        if curves.beside is not None:
            self._draw_beside(curves, ink, span[1])
        for plot, keys, lead in ((self._upper, UPPER, "mean"), (self._lower, LOWER, LOWER[0])):
            self._mark(plot, curves, ink)
            taken: list[float] = []
            for key in keys:
                values = self._values(key)
                if not np.isfinite(values).any():
                    continue
                self.curve(plot, xs, values, strokes[key])
                self.dots(plot, xs, values, strokes[key].color(), 4)
                last = int(np.flatnonzero(np.isfinite(values))[-1])
                apart = self.metrics().height() * 0.9 * self._pixel(plot)
                y = free_height(float(values[last]), taken, apart)
                colour = strokes[key].color()
                self.label(plot, (span[1], y), f" {FIGURE[key].name}", colour, (0, 0.5))
            self.spots(plot, xs, self._values(lead), self.words_at, by_x=True)

    def _draw_bands(self, curves: SweepCurves, ink: Ink) -> None:
        """The band wanted: one level, or its ends from point to point where they vary."""
        known = [one for one in curves.bands if one is not None]
        if not known:
            return
        ends = np.array([one or (np.nan, np.nan) for one in curves.bands])
        if np.ptp(np.array(known), axis=0).max() < _SAME_BAND:
            self.band(self._upper, known[0], ink)
            return
        for end in ends.T:
            self.curve(self._upper, np.array(curves.xs), end, dashed(faded(ink.accent, 0.6), 1.2))

    def _draw_beside(self, curves: SweepCurves, ink: Ink, end: float) -> None:
        """The mean of the other sweep, and in the corner of which it is."""
        if curves.beside is None:
            return
        name, xs, means = curves.beside
        values, colour = _numbers(means), mixed(ink.accent, ink.paper, 0.35)
        self.curve(self._upper, xs, values, dashed(colour, 1.8))
        # Where light falls with height and distance the upper right corner is free.
        top = self._upper.getViewBox().viewRange()[1][1]
        self.label(self._upper, (end, top), f"– – mean, {name}", colour, (1, 0))

    @staticmethod
    def _pixel(plot: Any) -> float:
        box = plot.getViewBox()
        return float(box.viewRect().height() / max(box.height(), 1.0))

    def _mark(self, plot: Any, curves: SweepCurves, ink: Ink) -> None:
        """Where the plan stands, and the point in hand."""
        if curves.now is not None and min(curves.xs) <= curves.now <= max(curves.xs):
            self.upright(plot, curves.now, dashed(ink.quiet, 1.0))
            if plot is self._upper:
                top = self._upper.getViewBox().viewRange()[1][1]
                half = (max(curves.xs) + min(curves.xs)) / 2
                anchor = (0, 0) if curves.now < half else (1, 0)
                self.label(plot, (curves.now, top), " the plan now ", ink.quiet, anchor)
        if self.point is not None and self.point < len(curves.xs):
            self.upright(plot, curves.xs[self.point], line(pen(ink.accent, 1.4)))

    # -- pointer and keys -----------------------------------------------------------------

    def step(self, key: Qt.Key) -> bool:
        by = {Qt.Key.Key_Left: -1, Qt.Key.Key_Right: 1}.get(key)
        count = 0 if self.curves is None else len(self.curves.xs)
        if by is not None and count:
            at = 0 if self.point is None else self.point + by
            self.choose(min(max(at, 0), count - 1))
            return True
        return super().step(key)


def _numbers(values: tuple[float | None, ...]) -> FloatArray:
    return np.array([np.nan if value is None else value for value in values], dtype=float)


def said(figures: Mapping[str, float | None]) -> str:
    """Figures of a point in words: 'mean 60, minimum 30, min / mean 50 %'."""
    parts = []
    for key, value in figures.items():
        if value is not None:
            figure = FIGURE[key]
            unit = " %" if figure.unit == "%" else ""
            parts.append(f"{inside(figure.name)} {figure.number(value)}{unit}")
    return ", ".join(parts)


def free_height(y: float, taken: list[float], apart: float) -> float:
    """A height for a label at least so far below those taken."""
    for other in sorted(taken, reverse=True):
        if abs(y - other) < apart:
            y = other - apart
    taken.append(y)
    return y
