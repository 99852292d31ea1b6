"""What the map shows beside the light: other quantities, and what one wall does."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np
import numpy.typing as npt
from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QLinearGradient, QPainter

from planner.app.canvas.ink import Viewport
from planner.app.canvas.light_layer import LightLayer, LightStyle, TopLayers
from planner.app.canvas.plan_layers import WALL_PX, wall_strip
from planner.app.plots import colours
from planner.light.cellmap import CellMap, levels_of
from planner.metrics.figures import Digits, Figure
from planner.plan.place import OWN, Place, PlaceKind, opens
from planner.plan.plan import Plan

if TYPE_CHECKING:
    from planner.estimate.sensitivity import WallLight  # the whole core: not at the start

_BESIDE_WALL = (WALL_PX + 2.0, WALL_PX + 6.0)
"""Where outside the footprint the light on a wall is drawn, in pixels."""


def show_wall(found: WallLight | None, own: LightLayer, tops: TopLayers) -> None:
    """Show what one wall does where the canopy that is judged lies, or nothing."""
    own.set_map(None, None)
    tops.set_estimate(None)
    if found is not None and found.canopy.place == OWN:
        own.set_map(wall_map(found), found.plan)
    elif found is not None:
        tops.show_alone(found.canopy.place.index, wall_map(found))


def style_of(figure: Figure, levels: colours.Levels, colour_map: str) -> LightStyle:
    """Colours for another quantity than PPFD, of which alone contours and target band are."""
    share = figure.digits is Digits.SHARE
    unit = tuple(figure.map_unit.rsplit(" ", 1)) if share else LightStyle.unit
    return LightStyle(levels, colour_map, contours=False, unit=unit, name=figure.map_name)


def wall_map(found: WallLight) -> CellMap:
    """What part of each place's light met the wall, in per cent; or what a lining would bring."""
    if found.brought is not None:
        values, least = found.brought, -np.inf
    else:
        lit = np.where(found.base > 0, found.base, np.nan)
        values, least = 100 * found.came / lit, 0.0
        values = np.where(np.isnan(values) & np.isfinite(found.base), 0.0, values)
    edges = found.canopy.map
    return CellMap(values, edges.x, edges.y, float(least))


def wall_style(found: WallLight, colour_map: str) -> LightStyle:
    """Colours for it: per cent from none, or the change with what may be lost below none."""
    values = wall_map(found).values
    low, high = levels_of(values)
    if found.brought is None:
        return LightStyle((low, high), colour_map, unit=("% of the", "light"))
    least = float(np.nanmin(values)) if np.isfinite(values).any() else 0.0
    if least < 0:
        low = -levels_of(-values)[1]
        high = 0.0 if float(np.nanmax(values)) <= 0 else high
    return LightStyle((low, high), colour_map, unit=("change,", "µmol"))


def paint_along_walls(
    painter: QPainter,
    plan: Plan,
    viewport: Viewport,
    walls: npt.NDArray[np.float64] | None,
    style: LightStyle,
) -> None:
    """The light on each wall (walls, up, along) as a strip along its outside: the most over it."""
    if walls is None or len(walls) != plan.space.wall_count or not walls.any():
        return
    painter.setPen(Qt.PenStyle.NoPen)
    table = colours.table(style.colour_map, dimmed=style.dimmed)
    stops = (np.arange(walls.shape[2]) + 0.5) / walls.shape[2]
    for wall, light in enumerate(walls.max(axis=1)):
        if opens(plan, Place(PlaceKind.WALL, wall)):
            continue
        start, end = (viewport.to_pixel(*corner) for corner in plan.space.wall(wall))
        gradient = QLinearGradient(start, end)
        for stop, rgba in zip(stops, colours.to_rgba(light, style.levels, table), strict=True):
            gradient.setColorAt(stop, QColor(*rgba.tolist()))
        painter.setBrush(gradient)
        painter.drawPolygon(wall_strip(plan, wall, viewport, *_BESIDE_WALL))
