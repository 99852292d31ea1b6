"""The growth schedule over the weeks: canopy, lamp and ceiling as they stand, with the light."""

from __future__ import annotations

from typing import Any, Final

from PySide6.QtCore import Qt
from PySide6.QtGui import QColor

from planner.app.canvas.ink import faded

# PySide6 comes first: pyqtgraph takes the Qt binding it finds loaded.
import pyqtgraph as pg  # isort: skip

from planner.app.canvas.ink import Ink, mixed, pen
from planner.app.display import Display
from planner.app.plots.chart import Chart, line
from planner.app.plots.exported import Table
from planner.estimate.stages import Schedule, StagePlan, stage_columns
from planner.metrics.figures import ppfd
from planner.units import PPFD_UNIT

_COLUMNS: Final = stage_columns("stage", "from", "to", "canopy", "height", "output", "mean")
(_OUTPUT,) = stage_columns("output")


class ScheduleChart(Chart):
    """An elevation drawn over time: the canopy grows, the lamp rises with it."""

    empty = "Add stages and press 'Find for each stage' to see them over the weeks."
    usual, least = (320, 170), (200, 96)
    grows = True

    def __init__(self, display: Display) -> None:
        super().__init__("Schedule over the weeks")
        self._display = display
        self._schedule: Schedule | None = None
        self._ceiling = 1.0
        self._plot = self.add_chart()
        self.redraw()
        display.changed.connect(lambda _state: self.redraw())

    def show_schedule(self, schedule: Schedule | None, ceiling: float) -> None:
        """Show a schedule under a ceiling (metres)."""
        self._schedule, self._ceiling = schedule, ceiling
        words = "Nothing has been found yet."
        if schedule is not None:
            words = " ".join(stage.words for stage in schedule.stages)
        self.setAccessibleDescription(words)
        self.redraw()

    def table(self) -> Table:
        unit = self._display.unit
        stages = () if self._schedule is None else self._schedule.stages
        heads = [column.heading(unit) for column in _COLUMNS]
        return heads, [[column.shown(one, unit) for column in _COLUMNS] for one in stages]

    def draw(self, ink: Ink) -> None:
        plot, schedule, unit = self._plot, self._schedule, self._display.unit
        if schedule is None or schedule.weeks <= 0:
            self.say_empty(plot, ink)
            return
        self.titles(plot, left=f"Height ({unit.value})", bottom="Time (weeks)")
        ceiling = self._ceiling / unit.metres
        self.frame(plot, (0.0, schedule.weeks), (0.0, ceiling * 1.14))
        self.curve(plot, (0, schedule.weeks), (ceiling, ceiling), line(pen(ink.ink, 1.4)))
        for stage in schedule.stages:
            self._draw_stage(stage, ceiling, ink)
        middles = [(one.first_week + one.last_week) / 2 for one in schedule.stages]
        heights = [one.stage.canopy_height / unit.metres for one in schedule.stages]
        self.spots(plot, middles, heights, lambda k: self._words(schedule.stages[k]), by_x=True)

    @staticmethod
    def _words(one: StagePlan) -> str:
        if one.estimate is None:
            return f"{one.stage.name}: {one.outcome}"
        return f"{one.stage.name}: {ppfd(one.estimate.figures.mean)} {PPFD_UNIT}"

    def _draw_stage(self, stage: StagePlan, ceiling: float, ink: Ink) -> None:
        plot, metrics, unit = self._plot, self.metrics(), self._display.unit.metres
        x0, x1 = stage.first_week, stage.last_week
        top = stage.stage.canopy_height / unit
        self._block(plot, (x0, x1), (0.0, top), mixed(ink.paper, QColor(78, 140, 60), 0.45))
        self.upright(plot, x1, line(pen(ink.faint, 1.0)))
        weeks = self._schedule.weeks if self._schedule is not None else 1.0
        room = (x1 - x0) / weeks * max(self.width() - 70, 1) - 8

        def write(y: float, text: str, colour: QColor, anchor: tuple[float, float]) -> None:
            text = metrics.elidedText(text, Qt.TextElideMode.ElideRight, room)
            self.label(plot, (x0, y), f" {text}", colour, anchor)

        write(ceiling * 1.14, stage.stage.name, ink.quiet, (0, 0))
        if stage.hanging_height is None or stage.estimate is None:
            write(ceiling, f"▲ {stage.outcome}", ink.alarm, (0, 0))
            return
        lamp = (stage.stage.canopy_height + stage.hanging_height) / unit
        shade = faded(ink.accent, 0.10)
        self._block(plot, (x0, x1), (top, lamp), shade)
        self.curve(plot, (x0, x1), (lamp, lamp), line(pen(ink.accent, 3.0)))
        mark, output = "" if stage.met else "▲ ", _OUTPUT.text(stage, self._display.unit)
        text = f"{mark}{ppfd(stage.estimate.figures.mean)} µmol, {output}"
        write((lamp + top) / 2, text, ink.ink if stage.met else ink.alarm, (0, 0.5))

    @staticmethod
    def _block(plot: Any, x: tuple[float, float], y: tuple[float, float], colour: QColor) -> None:
        plot.addItem(
            pg.BarGraphItem(x0=[x[0]], x1=[x[1]], y0=[y[0]], y1=[y[1]], brush=colour, pen=None)
        )
