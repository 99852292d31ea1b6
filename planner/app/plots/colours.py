"""Colour for light: perceptually uniform maps, round numbers, and the wash of a target band."""

from __future__ import annotations

import math
from functools import cache
from typing import Final

import numpy as np
import numpy.typing as npt

from planner.app.display import COLOUR_MAPS

Rgba = npt.NDArray[np.uint8]
Levels = tuple[float, float]

UNDER_RGB: Final = (62, 124, 208)
INSIDE_RGB: Final = (52, 176, 136)
OVER_RGB: Final = (236, 132, 36)
"""Hues of the wash: apart for every common kind of colour vision, and hatched besides."""

_WASH_STRENGTH = 0.5
DIMMED: Final = 0.84
"""On a dark ground the brightest colour of a map glares: all of it is that much darker there."""


@cache
def table(name: str, entries: int = 512, *, dimmed: bool = False) -> Rgba:
    """Colour table of a map, shape (entries, 4), opaque; ``dimmed`` for a dark ground.

    Raises
    ------
    ValueError
        If the name is not one of ``COLOUR_MAPS``.
    """
    if name not in COLOUR_MAPS:
        raise ValueError(f"'{name}' is not a colour map; choose one of {', '.join(COLOUR_MAPS)}.")
    from pyqtgraph import colormap  # noqa: PLC0415 - slow to import, and only windows need it

    colours = colormap.get(name).getLookupTable(nPts=entries, alpha=True)
    if dimmed:
        colours = colours * np.array([DIMMED, DIMMED, DIMMED, 1.0])
    result = np.ascontiguousarray(colours, dtype=np.uint8)
    result.setflags(write=False)
    return result


def washed_table(
    name: str,
    levels: Levels,
    band: Levels,
    entries: int = 512,
    *,
    doubt: float = 0.0,
    dimmed: bool = False,
) -> Rgba:
    """The map as greys of equal lightness, tinted under, inside and over a band of PPFD.

    With a relative standard uncertainty of the light the hues run into each other as the odds of
    being under, inside and over do (normal).
    """
    colours = table(name, entries)[:, :3].astype(float)
    grey = (colours @ np.array([0.2126, 0.7152, 0.0722]))[:, None]
    values = np.linspace(*levels, entries)
    spread = np.maximum(doubt * values, 1e-9)
    under = _normal((band[0] - values) / spread)[:, None]
    over = _normal((values - band[1]) / spread)[:, None]
    inside = np.clip(1 - under - over, 0.0, 1.0)
    hue = (
        under * np.array(UNDER_RGB, float)
        + inside * np.array(INSIDE_RGB, float)
        + over * np.array(OVER_RGB, float)
    ) / (under + inside + over)
    mixed = (1 - _WASH_STRENGTH) * grey + _WASH_STRENGTH * hue
    mixed *= DIMMED if dimmed else 1.0
    opaque = np.full((entries, 1), 255.0)
    return np.ascontiguousarray(np.hstack([mixed, opaque]), dtype=np.uint8)


def _normal(z: npt.NDArray[np.float64]) -> npt.NDArray[np.float64]:
    """The normal distribution, to a hundredth of what a colour can show (E. Page 1977)."""
    z = np.clip(z, -8.0, 8.0)
    made: npt.NDArray[np.float64] = 0.5 + 0.5 * np.tanh(
        math.sqrt(2 / math.pi) * (z + 0.044715 * z**3)
    )
    return made


def to_rgba(field: npt.NDArray[np.float64], levels: Levels, colours: Rgba) -> Rgba:
    """Colour a field of values, shape (..., 4); NaN is fully transparent.

    Values beyond the levels take the end colours.
    """
    low, high = levels
    span = high - low if high > low else 1.0
    known = np.isfinite(field)
    place = np.clip((np.where(known, field, low) - low) / span, 0.0, 1.0)
    rgba = colours[np.rint(place * (len(colours) - 1)).astype(np.intp)]
    rgba[~known] = 0
    return rgba
