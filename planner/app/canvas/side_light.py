"""The light itself in the side view: where it is painted, and what is said of it."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

import numpy as np
from PySide6.QtCore import QRectF
from PySide6.QtGui import QFont, QImage, QPainter, QPolygonF

from planner.app.canvas.elevation_layer import ACROSS, colour_row
from planner.app.canvas.ink import Viewport, figure_font
from planner.app.canvas.light_layer import LightLayer, LightStyle
from planner.app.display import DisplayState
from planner.app.plots.colours import Levels
from planner.estimate.canopies import called
from planner.light.cellmap import round_values
from planner.metrics.figures import ppfd
from planner.plan.place import OWN
from planner.plan.plan import Plan
from planner.plan.tiers import canopy_below, level_of
from planner.units import LengthUnit, format_length

if TYPE_CHECKING:
    from planner.estimate.upright import Slice  # the whole core: not at the start

_STEPS_TOLD: Final = 4


_LINES: Final = 4
"""About so many contours."""


class SideLight:
    """Paints what was ``found`` in an upright slice; ``doubt`` is that of ``LightStyle``."""

    def __init__(self) -> None:
        self.found: Slice | None = None
        self.doubt = 0.0
        self._layer = LightLayer()

    def show(self, found: Slice | None, levels: Levels) -> None:
        """Take another slice, or other ends of the colour scale."""
        self.found = found
        # Lines at the numbers beside the colours: near a lamp light climbs far beyond them.
        self._layer.set_map(
            None if found is None else found.light, at=round_values(*levels, _LINES)
        )

    def paint(
        self,
        painter: QPainter,
        viewport: Viewport,
        levels: Levels,
        state: DisplayState,
        band: Levels | None,
        font: QFont,
        clear: tuple[QRectF, ...],
    ) -> None:
        """Paint it as the map is; ``clear`` as there."""
        if self.found is not None:
            colour_map, contours, wash = state.colour_map, state.contours, state.band_wash
            style = LightStyle(levels, colour_map, contours, wash, band, self.doubt)
            area = lit_area(self.found, viewport)
            self._layer.paint(painter, viewport, area, style, figure_font(font, 0.85), clear)


def lit_area(found: Slice, viewport: Viewport) -> QPolygonF:
    """Where there is light in an upright slice, in pixels: parts of it joined along the bottom."""
    _, low, _, high = found.light.bounds
    corners = [
        corner
        for start, end in found.spans
        for corner in ((start, low), (end, low), (end, high), (start, high), (start, low))
    ]
    return viewport.to_polygon(corners)


def light_along(found: Slice, height: float, levels: Levels, colour_map: str) -> QImage:
    """Colours of the light in an upright slice at a height, as those of ``light_across``."""
    left, _, right, _ = found.light.bounds
    along = left + (np.arange(ACROSS) + 0.5) / ACROSS * (right - left)
    values = found.light.at(np.column_stack([along, np.full(ACROSS, height)]))
    return colour_row(values, levels, colour_map)


def light_in_words(found: Slice, along: float, height: float, unit: LengthUnit) -> str:
    """The light at a height over the floor (metres), and what it leaves out; '' without light.

    Where it is told from the canopy straight below, that of a tier of a rack.
    """
    light, plan = found.at(along, height), found.plan
    if light is None:
        return ""
    x, y = (along, found.place) if found.axis == "y" else (found.place, along)
    below = canopy_below(plan, x, y, height)
    above = height - level_of(plan, below)
    over, off = (format_length(abs(part), unit) for part in (height, above))
    alone = below == OWN and all(one.canopy is None for one in plan.obstacles)
    canopy = "the canopy" if alone else called(plan, below)
    where = f"{off} {'above' if above >= 0 else 'below'} {canopy}, {over} above the floor"
    leaves = f"leaves higher than {canopy}" if above >= 0 else "the leaves above it"
    return f"{ppfd(light, unit=True)} {where}; {leaves} are left out"


def slice_in_words(plan: Plan, found: Slice, cut: float, unit: LengthUnit) -> str:
    """The light over the middle of an upright slice, in steps up from the canopy."""
    low, high = max(found.spans, key=lambda span: span[1] - span[0])
    told = []
    for step in range(_STEPS_TOLD):
        above = step * 10 * unit.snap
        light = found.at((low + high) / 2, plan.canopy.height + above)
        if light is not None:
            told.append(f"{ppfd(light)} at {format_length(above, unit)}" if step else ppfd(light))
    place = f"{found.axis} {format_length(cut, unit)}"
    return f"Light over its middle at {place}, up from the canopy: {', '.join(told)}."
