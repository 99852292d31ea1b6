"""The polar plot: how a lamp spreads its light, along and across it, 0° straight down."""

from __future__ import annotations

import numpy as np
from PySide6.QtCore import QSize
from PySide6.QtGui import QColor, QPalette
from PySide6.QtWidgets import QWidget

from planner.app.canvas.ink import Ink, pen
from planner.app.plots.chart import Chart, Table, dashed, line
from planner.app.plots.polar_curves import FloatArray, PolarCurves
from planner.units import format_number

RINGS = (0.25, 0.5, 0.75, 1.0)
_RAY_STEP = 30


class PolarPlot(Chart):
    """Two curves over rings at quarters of the peak; the upper half only where light goes up."""

    ground = QPalette.ColorRole.Window

    def __init__(self, parent: QWidget | None = None, *, height: int = 142) -> None:
        super().__init__("Polar plot", parent, scale=0.85)
        self._curves: PolarCurves | None = None
        self._height = height
        self._plot = self.add_chart()
        self._plot.getViewBox().setAspectLocked(True)
        for side in ("left", "bottom"):
            self._plot.hideAxis(side)
        self.redraw()

    @property
    def curves(self) -> PolarCurves | None:
        """What is shown."""
        return self._curves

    def show_curves(self, curves: PolarCurves | None) -> None:
        """Show the curves of a lamp; None empties the plot."""
        self._curves = curves
        self.setAccessibleDescription("" if curves is None else _in_words(curves))
        self.updateGeometry()
        self.redraw()

    def sizeHint(self) -> QSize:
        upward = self._curves is not None and self._curves.upward
        return QSize(240, round(self._height * 1.6) if upward else self._height)

    def table(self) -> Table:
        curves = self._curves
        if curves is None:
            return (), ()
        columns = [curves.along] if curves.across is None else [curves.along, curves.across]
        heads = ("Angle from straight down (°)", "Along (share of the peak)", "Across")
        rows = zip(curves.angles_deg.tolist(), *(c.tolist() for c in columns), strict=True)
        return heads[: len(columns) + 1], list(rows)

    def draw(self, ink: Ink) -> None:
        curves, plot = self._curves, self._plot
        if curves is None:
            return
        self._draw_grid(ink, upward=curves.upward)
        shade = QColor(ink.accent)
        shade.setAlphaF(0.14)
        x, y = _outline(curves.angles_deg, curves.along)
        self.curve(plot, x, y, line(pen(ink.accent, 2.0)), fillLevel="enclosed", brush=shade)
        if curves.across is not None:
            self.curve(plot, *_outline(curves.angles_deg, curves.across), dashed(ink.ink, 1.6))

        def words(number: int) -> str:
            angle, share = abs(curves.angles_deg[number]), 100 * float(curves.along[number])
            return f"{angle:.0f}°: {format_number(share, 0)} % of the peak"

        turn = np.radians(curves.angles_deg)
        self.spots(plot, curves.along * np.sin(turn), -curves.along * np.cos(turn), words)
        names = ["along the lamp", "across it"] if curves.across is not None else [
            "the same all around"
        ]  # fmt: skip
        foot, step = -1.22, 1.45
        for number, name in enumerate(names):
            left = (number - len(names) / 2) * step + 0.12
            stroke = dashed(ink.ink, 1.6) if number else line(pen(ink.accent, 2.0))
            self.curve(plot, (left, left + 0.2), (foot - 0.16, foot - 0.16), stroke)
            self.label(plot, (left + 0.24, foot - 0.16), name, ink.quiet, (0, 0.5))

    def _draw_grid(self, ink: Ink, *, upward: bool) -> None:
        plot, last = self._plot, 180 if upward else 90
        box = plot.getViewBox()
        box.setMouseEnabled(x=False, y=False)
        box.setRange(xRange=(-1.5, 1.5), yRange=(-1.5, 1.22 if upward else 0.08), padding=0)
        turn = np.radians(np.linspace(-last, last, 181))
        for ring in RINGS:
            self.curve(plot, ring * np.sin(turn), -ring * np.cos(turn), line(pen(ink.faint, 1.0)))
        for angle in range(-last, last + 1, _RAY_STEP):
            if upward and angle == -180:
                continue
            across, down = float(np.sin(np.radians(angle))), float(-np.cos(np.radians(angle)))
            self.curve(plot, (0, across), (0, down), line(pen(ink.faint, 1.0)))
            anchor = (0.5 - 0.5 * across, 0.5 + 0.5 * down)
            self.label(plot, (1.03 * across, 1.03 * down), f"{abs(angle)}°", ink.quiet, anchor)


def _outline(angles: FloatArray, shares: FloatArray) -> tuple[FloatArray, FloatArray]:
    fine = np.linspace(angles[0], angles[-1], 361)
    reach, turn = np.interp(fine, angles, shares), np.radians(fine)
    return reach * np.sin(turn), -reach * np.cos(turn)


def _in_words(curves: PolarCurves) -> str:
    planes = "the same all around" if curves.across is None else "one curve along, one across"
    peak = abs(float(curves.angles_deg[int(curves.along.argmax())]))
    up = " Some of the light goes up." if curves.upward else ""
    return (
        f"Intensity by angle from straight down, {planes}; the peak along lies at {peak:.0f}°.{up}"
    )
