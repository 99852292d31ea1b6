"""The section: PPFD along the line drawn across the map, of one light or of several."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

import numpy as np
from PySide6.QtGui import QPalette, QPen

from planner.app.canvas.ink import Ink, pen
from planner.app.canvas.items import Section, profile_along
from planner.app.display import Display, shown_figure
from planner.app.plots.chart import Chart, FloatArray, Range, dashed, line
from planner.app.plots.exported import Table
from planner.estimate.result import Estimate
from planner.light.cellmap import levels_of
from planner.metrics.figures import FIGURE, Digits, ppfd
from planner.units import PPFD_UNIT, format_length, format_number

if TYPE_CHECKING:
    from planner.estimate.upright import Slice  # the whole core: not at the start

DARK_TOP = 100.0
"""Upper end of the scale where there is no light to set it."""
_POINTS = 81
_TIMES = 4.0
"""Over the height light is shown up to so many times that at the lowest one."""


class SectionPlot(Chart):
    """Profile of the light from A to B, over the target band."""

    empty = "With a lit lamp in the space, the light from A to B is drawn here."

    def __init__(self, display: Display) -> None:
        super().__init__("Section", scale=0.92)
        self._display = display
        self._estimate: Estimate | None = None
        self._section: Section | None = None
        self._column: tuple[Slice, float] | None = None
        self._band: Range | None = None
        self._figure = FIGURE["mean"]
        self._along: tuple[FloatArray, FloatArray] = (np.zeros(0), np.zeros(0))
        self._plot = self.add_chart()
        self.setMinimumHeight(110)
        self.redraw()
        display.changed.connect(lambda _state: self.redraw())

    def show_profile(self, estimate: Estimate | None, section: Section) -> None:
        """Show the light along a section; without an estimate the plot is empty."""
        self._estimate, self._section, self._column = estimate, section, None
        self.redraw()

    def show_upright(self, found: Slice, along: float, band: Range | None) -> None:
        """Show the light over a place along an upright slice, from the canopy up, and a band."""
        self._column, self._band = (found, along), band
        self.redraw()

    def profile(self) -> tuple[FloatArray, FloatArray]:
        """What is drawn: distance from A, or height above the canopy, in the chosen unit; PPFD."""
        return self._along

    def view(self) -> tuple[tuple[float, float], tuple[float, float]]:
        """The range shown along and up."""
        (x0, x1), (y0, y1) = self._plot.getViewBox().viewRange()
        return (x0, x1), (y0, y1)

    def table(self) -> Table:
        light = f"{self._figure.map_name} ({self._figure.map_unit})"
        rows = zip(*(column.tolist() for column in self._along), strict=True)
        unit = self._display.unit.value
        at = f"Distance from A ({unit})" if self._column is None else f"Above the canopy ({unit})"
        return (at, light), list(rows)

    def _words_at(self, number: int) -> str:
        at, light = (float(column[number]) for column in self._along)
        if not np.isfinite(light):
            return ""
        return f"{self._figure.on_map(light)} at {format_number(at, 1)} {self._display.unit.value}"

    def draw(self, ink: Ink) -> None:
        plot, unit, shown = self._plot, self._display.unit, FIGURE["mean"]
        if self._column is None:
            shown = shown_figure(self._estimate, self._display.state)
        self._figure, self._along = shown, (np.zeros(0), np.zeros(0))
        self.titles(plot, left=f"{shown.map_name}<br>{shown.map_unit}", bottom=self._bottom())
        read = self._read(shown.key)
        if read is None:
            self.say_empty(plot, ink)
            self.setAccessibleDescription(self.empty)
            return
        distance, light, band = read
        known = light[np.isfinite(light)]
        top = float(known.max()) if known.size else 0.0
        if band is not None:
            self.band(plot, band, ink)
        first, last = float(distance[0]) / unit.metres, float(distance[-1]) / unit.metres
        if top > 0:
            self._along = (distance / unit.metres, light)
            self.curve(plot, *self._along, line(pen(ink.accent, 2.0)))
            self.spots(plot, *self._along, self._words_at, by_x=True)
            if self._column is not None:  # close under a lamp it climbs out of all proportion
                top = min(top, _TIMES * float(known[0]) or top)
            top = top if band is None else max(top, min(band[1], 2 * top))
        ends = (0.0, (top or DARK_TOP) * 1.08)
        if shown.digits is Digits.SHARE and top > 0:
            ends = levels_of(known, stretched=True)
        self.frame(plot, (first, last), ends)
        if not top > 0:
            self.say(plot, ((first + last) / 2, DARK_TOP / 2), self.empty, ink)
        length = format_length(float(distance[-1] - distance[0]), unit)
        said = f"{shown.map_name} along a line {length} long"
        if self._column is not None:
            said = f"{shown.map_name}, {self._bottom()}"
        if known.size:
            low, high = (shown.written(float(end)) for end in (known.min(), known.max()))
            said += f", from {low} to {high} {shown.map_unit}"
        self.setAccessibleDescription(f"{said}.")

    def _bottom(self) -> str:
        unit = self._display.unit
        if self._column is None:
            return f"from A to B ({unit.value})"
        found, along = self._column
        place = f"{'x' if found.axis == 'y' else 'y'} {format_length(along, unit)}"
        return f"height above the canopy ({unit.value}), at {place}"

    def _read(self, key: str) -> tuple[FloatArray, FloatArray, Range | None] | None:
        """Where along, in metres, what light, and the band wanted; None without light to read."""
        if self._column is not None:
            found, along = self._column
            heights, light = found.over(along)
            return heights - found.plan.canopy.height, light, self._band
        if self._estimate is None or self._section is None:
            return None
        distance, light = profile_along(self._estimate, self._section, key=key)
        return distance, light, self._estimate.band if key == "mean" else None


@dataclass(frozen=True)
class Along:
    """A light to be shown along the line: its name, its light, and its part in the comparison."""

    name: str
    estimate: Estimate
    chosen: bool = False
    baseline: bool = False


class SectionCurves(Chart):
    """The chosen light in the accent, the baseline dark and dashed, the others quiet."""

    empty = "No light along the line."
    usual = (260, 150)

    ground = QPalette.ColorRole.Window

    def __init__(self, display: Display) -> None:
        super().__init__("Light along the section line", scale=0.85)
        self._display = display
        self._curves: list[tuple[Along, FloatArray, FloatArray]] = []
        self._plot = self.add_chart()
        self.redraw()
        display.changed.connect(lambda _state: self.redraw())

    def show_lights(self, lights: tuple[Along, ...], section: Section | None) -> None:
        """Show these along a section."""
        self._curves = [] if section is None else [
            (one, *profile_along(one.estimate, section, _POINTS)) for one in lights
        ]  # fmt: skip
        self.setAccessibleDescription(self.words())
        self.redraw()

    def words(self) -> str:
        """What the chosen curve shows."""
        for one, _, light in self._curves:
            known = light[np.isfinite(light)]
            if one.chosen and known.size:
                return f"{one.name}: from {ppfd(known.min())} to {ppfd(known.max())} {PPFD_UNIT}."
        return self.empty

    def table(self) -> Table:
        if not self._curves:
            return (), ()
        unit = self._display.unit
        heads = [f"{one.name} ({PPFD_UNIT})" for one, _, _ in self._curves]
        columns = [self._curves[0][1] / unit.metres, *(light for _, _, light in self._curves)]
        return (f"Distance from A ({unit.value})", *heads), np.column_stack(columns).tolist()

    def draw(self, ink: Ink) -> None:
        plot, unit = self._plot, self._display.unit
        if not self._curves:
            self.say_empty(plot, ink)
            return
        self.titles(plot, left=f"PPFD<br>{PPFD_UNIT}", bottom=f"from A to B ({unit.value})")
        known = [light[np.isfinite(light)] for _, _, light in self._curves]
        top = max((float(one.max()) for one in known if one.size), default=0.0) or DARK_TOP
        length = float(self._curves[0][1][-1]) / unit.metres
        self.frame(plot, (0.0, length or 1.0), (0.0, top * 1.05))
        ordered = sorted(self._curves, key=lambda one: (one[0].chosen, one[0].baseline))
        for one, distance, light in ordered:
            self.curve(plot, distance / unit.metres, light, self._stroke(one, ink))
        one, distance, light = ordered[-1]

        def words(number: int) -> str:
            value = float(light[number])
            return f"{one.name}: {ppfd(value)} {PPFD_UNIT}" if np.isfinite(value) else ""

        self.spots(plot, distance / unit.metres, light, words, by_x=True)

    @staticmethod
    def _stroke(one: Along, ink: Ink) -> QPen | Any:
        if one.chosen:
            return line(pen(ink.accent, 2.0))
        return dashed(ink.ink, 1.4) if one.baseline else line(pen(ink.faint, 1.2))
