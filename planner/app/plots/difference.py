"""Maps of difference and ratio: colours that diverge from nothing, and what their bar says."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, Final

import numpy as np
import numpy.typing as npt
from PySide6.QtCore import QSize
from PySide6.QtGui import QColor, QImage

from planner.app.canvas.ink import Ink, mixed
from planner.app.plots.colour_bar import Legend
from planner.app.plots.colours import Rgba
from planner.light.cellmap import rounded_up
from planner.units import format_number

Field = npt.NDArray[np.float64]

LESS_RGB: Final = (38, 92, 172)
MORE_RGB: Final = (186, 84, 16)
LESS_RGB_DARK: Final = (104, 160, 240)
MORE_RGB_DARK: Final = (244, 150, 74)
"""Ends of the map: apart for every common kind of colour vision, and equal in lightness."""

_ENTRIES: Final = 257
_MOST_PIXELS: Final = 600


@dataclass(frozen=True)
class DifferenceStyle:
    """How far the colours reach either way of nothing, and in which unit.

    ``unit`` is written above the bar.
    """

    reach: float
    unit: tuple[str, ...]

    @property
    def legend(self) -> Legend:
        """What the bar beside the maps says; grey is explained below it."""
        reach = format_number(self.reach, 1)
        words = (
            f"Colours run from {reach} less to {reach} more, {' '.join(self.unit)}. "
            "Grey is too small to be told apart."
        )
        ends = (-self.reach, self.reach)
        return Legend(ends, self.unit, words, diverging, signed=True, small=unresolved_colour)


def rounded_reach(largest: float) -> float:
    """The round number at or above the largest difference; never 0."""
    return rounded_up(largest, 4)


def diverging(ink: Ink) -> Rgba:
    """The colour table: less, the ground of the theme at nothing, more."""
    dark = ink.paper.lightnessF() < 0.5
    less, more = (LESS_RGB_DARK, MORE_RGB_DARK) if dark else (LESS_RGB, MORE_RGB)
    paper = np.array([ink.paper.red(), ink.paper.green(), ink.paper.blue()], dtype=float)
    share = np.linspace(-1.0, 1.0, _ENTRIES)[:, None]
    ends = np.where(share < 0, np.array(less, float), np.array(more, float))
    mix = paper + (ends - paper) * np.abs(share) ** 0.85
    opaque = np.full((_ENTRIES, 1), 255.0)
    return np.ascontiguousarray(np.hstack([mix, opaque]), dtype=np.uint8)


def diverged(values: Field, reach: float, small: Any, ink: Ink) -> Rgba:
    """Colours of differences (..., 4): grey where too ``small``, transparent where NaN."""
    known = np.isfinite(values)
    place = np.clip((np.where(known, values, 0.0) / reach + 1) / 2, 0.0, 1.0)
    rgba = diverging(ink)[np.rint(place * (_ENTRIES - 1)).astype(np.intp)]
    grey = unresolved_colour(ink)
    rgba[small] = (grey.red(), grey.green(), grey.blue(), 255)
    rgba[~known] = 0
    return np.ascontiguousarray(rgba)


def unresolved_colour(ink: Ink) -> QColor:
    """The grey of what is too small to be told."""
    return mixed(ink.paper, ink.ink, 0.24)


def dots(size: QSize) -> tuple[int, int]:
    """Rows and columns of a picture for a rectangle of pixels."""
    return min(max(size.height(), 1), _MOST_PIXELS), min(max(size.width(), 1), _MOST_PIXELS)


def picture(
    values: Field, ratio: Field, style: DifferenceStyle, unresolved: float, ink: Ink
) -> QImage:
    """The picture of a raster of differences (rows, columns), y upward, dot by dot.

    Where the logarithm of the ratio is smaller than ``unresolved`` it is grey; where either is
    not a number nothing is painted.
    """
    rows, columns = values.shape
    small = np.abs(np.log(np.maximum(ratio[::-1], 1e-9))) < unresolved
    rgba = diverged(values[::-1], style.reach, small, ink)
    image = QImage(rgba.data, columns, rows, 4 * columns, QImage.Format.Format_RGBA8888)
    return image.copy()
