"""The section: PPFD along the line drawn across the map, over the target band."""

from __future__ import annotations

from typing import Any

import numpy as np
from PySide6.QtCore import QEvent
from PySide6.QtGui import QColor
from PySide6.QtWidgets import QWidget

# PySide6 comes first: pyqtgraph takes the Qt binding it finds loaded.
import pyqtgraph as pg  # isort: skip

from planner.app.canvas.ink import Ink, figure_font
from planner.app.canvas.sampling import Section, profile_along
from planner.app.display import Display
from planner.estimate.result import Estimate
from planner.plan.plan import Plan
from planner.units import format_length

UNIT = "µmol m⁻² s⁻¹"
DARK_TOP = 100.0
"""Upper end of the scale where there is no light to set it."""


class SectionPlot(pg.PlotWidget):  # type: ignore[misc]
    """Profile of the light from A to B; reads only, no zoom and no menu."""

    def __init__(self, display: Display, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._display = display
        self._estimate: Estimate | None = None
        self._section: Section | None = None
        item = self.getPlotItem()
        item.setMenuEnabled(False)
        item.hideButtons()
        self.setMouseEnabled(x=False, y=False)
        self._band = pg.LinearRegionItem(orientation="horizontal", movable=False)
        self._band.setZValue(-10)
        self._curve = pg.PlotCurveItem(connect="finite")
        self.addItem(self._band)
        self.addItem(self._curve)
        self._band.hide()
        self.setAccessibleName("Section")
        self.setMinimumHeight(110)
        self._ink()
        self._show()
        display.changed.connect(self._on_display)

    def show_profile(self, estimate: Estimate | None, section: Section) -> None:
        """Show the light along a section; without an estimate the plot is empty."""
        self._estimate, self._section = estimate, section
        self._show()

    def profile(self) -> tuple[Any, Any]:
        """What is drawn: distance from A in the chosen unit, PPFD."""
        distance, ppfd = self._curve.getData()
        return distance, ppfd

    def _on_display(self, _state: object) -> None:
        self._show()

    def _show(self) -> None:
        unit = self._display.unit
        self.setLabel("bottom", f"from A to B ({unit.value})")
        self.setLabel("left", f"PPFD<br>{UNIT}")
        if self._estimate is None or self._section is None:
            self._curve.setData([], [])
            self._band.hide()
            self.setYRange(0, DARK_TOP * 1.08, padding=0)
            self.setAccessibleDescription("No light to show yet.")
            return
        distance, ppfd = profile_along(self._estimate, self._section)
        known = ppfd[np.isfinite(ppfd)]
        top = float(known.max()) if known.size else 0.0
        dark = top <= 0
        self._curve.setData(*([], []) if dark else (distance / unit.metres, ppfd))
        band = self._show_band(self._estimate.plan)
        if dark:
            top = DARK_TOP
        elif band is not None:
            top = max(top, min(band[1], 2 * top))
        self.setXRange(0, float(distance[-1]) / unit.metres, padding=0.01)
        self.setYRange(0, top * 1.08, padding=0)
        self._say(known, float(distance[-1]))

    def _show_band(self, plan: Plan) -> tuple[float, float] | None:
        band = plan.target.ppfd_band(plan.photoperiod_hours) if plan.target is not None else None
        self._band.setVisible(band is not None)
        if band is not None:
            self._band.setRegion(band)
        return band

    def _say(self, known: Any, length: float) -> None:
        words = f"PPFD along a line {format_length(length, self._display.unit)} long"
        if known.size:
            words += f", from {known.min():.0f} to {known.max():.0f} {UNIT}"
        self.setAccessibleDescription(f"{words}.")

    def _ink(self) -> None:
        ink = Ink.of(self.palette())
        self.setBackground(ink.paper)
        self._curve.setPen(pg.mkPen(ink.accent, width=2))
        shade = QColor(ink.accent)
        shade.setAlphaF(0.13)
        self._band.setBrush(shade)
        for line in self._band.lines:
            edge = QColor(ink.accent)
            edge.setAlphaF(0.4)
            line.setPen(pg.mkPen(edge, width=1))
        font = figure_font(self.font(), 0.92)
        for side in ("left", "bottom"):
            axis = self.getAxis(side)
            axis.setPen(pg.mkPen(ink.faint, width=1))
            axis.setTextPen(ink.quiet)
            axis.setTickFont(font)
            axis.label.setFont(font)
            axis.enableAutoSIPrefix(False)

    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() in {QEvent.Type.PaletteChange, QEvent.Type.FontChange} and hasattr(
            self, "_curve"
        ):
            self._ink()
