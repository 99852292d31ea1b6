"""One reading of a map of cell means: at points, on a finer raster, along lines of one level.

Whoever shows, compares or exports light between cell centres reads it here, so that one place
has one value. Cells hold means. The light in a cell's middle differs from its mean by the
curvature, E = mean - (Δx² ∂²E/∂x² + Δy² ∂²E/∂y²) / 24 (Taylor, to fourth order); these middles
are joined by cubics (E. Catmull, R. Rom 1974) and continued by their slope over half a cell to
the rim and into cells that are missing.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cached_property, lru_cache
from typing import Any, Final

import numpy as np
import numpy.typing as npt

FloatArray = npt.NDArray[np.float64]
Raster = npt.NDArray[np.float32]

_ROWS_AT_ONCE: Final = 16
_RINGS: Final = 3
"""Missing cells this far from known ones are followed by slope; a cubic sees no farther."""
_CONTOUR_NODES: Final = 48
_STEPS: Final = (1.0, 2.0, 2.5, 5.0, 10.0)


@dataclass(frozen=True, eq=False)
class CellMap:
    """A map over a rectangle of equal cells.

    Attributes
    ----------
    values
        Means of the cells, shape (ny, nx), rows by rising y; NaN where there is none.
    x, y
        Edges of the cells in metres, shapes (nx + 1,) and (ny + 1,), evenly spaced.
    least
        Nothing is read below this: light is never negative, a difference may be (-inf).
    """

    values: FloatArray
    x: FloatArray
    y: FloatArray
    least: float = 0.0

    @classmethod
    def about(
        cls,
        values: FloatArray,
        x: FloatArray,
        y: FloatArray,
        bounds: tuple[float, float, float, float],
    ) -> CellMap:
        """From cell centres (nx,) and (ny,); ``bounds`` are the edges where there is one cell."""
        return cls(values, _edges(x, bounds[0], bounds[2]), _edges(y, bounds[1], bounds[3]))

    @property
    def bounds(self) -> tuple[float, float, float, float]:
        """Outer rectangle (x0, y0, x1, y1) in metres."""
        return float(self.x[0]), float(self.y[0]), float(self.x[-1]), float(self.y[-1])

    @cached_property
    def valid(self) -> npt.NDArray[np.bool_]:
        """Which cells there are, shape (ny, nx)."""
        return np.isfinite(self.values)

    @cached_property
    def middles(self) -> FloatArray:
        """Values in the middle of every cell, shape (ny, nx), without NaN."""
        whole = filled(self.values, self.least)
        bend = np.zeros(whole.shape)
        for table, known, onto in ((whole, self.valid, bend), (whole.T, self.valid.T, bend.T)):
            # Only where the neighbours are known: a made-up one would bend the light.
            inner = known[2:] & known[1:-1] & known[:-2]
            curve = table[2:] - 2 * table[1:-1] + table[:-2]
            onto[1:-1] += np.where(inner, curve, 0.0)
        made: FloatArray = np.maximum(whole - bend / 24, self.least)
        return made

    def at(self, points: FloatArray) -> FloatArray:
        """Values at points (n, 2) in metres, shape (n,); beyond the rim by the slope there."""
        u, v = self._places(np.asarray(points, dtype=float))
        rows, columns = self.values.shape
        read = ((_weights(rows, v) @ self.middles) * _weights(columns, u)).sum(axis=1)
        made: FloatArray = np.maximum(read, self.least)
        return made

    def covers(self, points: FloatArray) -> npt.NDArray[np.bool_]:
        """Whether points (n, 2) lie among known cells, (n,): one within a cell's width is."""
        u, v = self._places(np.asarray(points, dtype=float))
        rows, columns = self.values.shape
        within = (np.abs(u - (columns - 1) / 2) <= columns / 2 + 1e-9) & (
            np.abs(v - (rows - 1) / 2) <= rows / 2 + 1e-9
        )
        near = np.zeros(len(u), dtype=np.bool_)
        for dv in (0, 1):
            for du in (0, 1):
                i = np.clip(np.floor(u).astype(np.intp) + du, 0, columns - 1)
                j = np.clip(np.floor(v).astype(np.intp) + dv, 0, rows - 1)
                reaches = (np.abs(u - i) < 1 - 1e-9) & (np.abs(v - j) < 1 - 1e-9)
                near |= self.valid[j, i] & reaches
        inside: npt.NDArray[np.bool_] = within & near
        return inside

    def raster(self, rows: int, columns: int) -> Raster:
        """Values at the centres of rows x columns cells over the same rectangle."""
        v = (np.arange(rows) + 0.5) * (self.values.shape[0] / rows) - 0.5
        u = (np.arange(columns) + 0.5) * (self.values.shape[1] / columns) - 0.5
        return self._on(v, u)

    def on(self, x: FloatArray, y: FloatArray) -> Raster:
        """Values on a raster of places in metres, shape (y, x); beyond the rim by the slope."""
        u, _ = self._places(np.column_stack([x, np.zeros(len(x))]))
        _, v = self._places(np.column_stack([np.zeros(len(y)), y]))
        return self._on(v, u)

    @cached_property
    def contouring(self) -> Any:
        """What draws lines and regions of a level: a ``contourpy`` generator in metres."""
        from contourpy import contour_generator  # noqa: PLC0415 - only where there is light

        rows, columns = self.values.shape
        step = max(rows, columns) / _CONTOUR_NODES
        v = np.linspace(-0.5, rows - 0.5, max(round(rows / step), 2) + 1)
        u = np.linspace(-0.5, columns - 0.5, max(round(columns / step), 2) + 1)
        x0, y0, x1, y1 = self.bounds
        return contour_generator(
            x=np.linspace(x0, x1, len(u)), y=np.linspace(y0, y1, len(v)), z=self._on(v, u)
        )

    def lines(self, level: float) -> tuple[FloatArray, ...]:
        """Lines (n, 2) in metres along which the map takes a value, to the outer rectangle."""
        return tuple(line for line in self.contouring.lines(level) if len(line) > 2)

    def contour_levels(self, wanted: int = 6, beside: float = 0.0) -> tuple[float, ...]:
        """The round numbers lines are drawn at; none where the light is as good as even.

        So is what is even ``beside`` the highest light of another map shown with it.
        """
        known = self.values[self.valid]
        most = max(known.max(initial=0.0), beside, 1e-9)
        if not known.size or known.max() - known.min() <= 0.02 * most:
            return ()
        low, high = float(known.min()), float(known.max())
        return tuple(level for level in round_values(low, high, wanted) if low < level < high)

    def _places(self, points: FloatArray) -> tuple[FloatArray, FloatArray]:
        """Points in cell units, 0 at the first cell's centre."""
        rows, columns = self.values.shape
        x0, y0, x1, y1 = self.bounds
        return (
            (points[:, 0] - x0) * (columns / (x1 - x0)) - 0.5,
            (points[:, 1] - y0) * (rows / (y1 - y0)) - 0.5,
        )

    def _on(self, v: FloatArray, u: FloatArray) -> Raster:
        """Values on a raster of places (rows, columns) in cell units."""
        # Single precision: a picture needs no more, and it is drawn while a hand waits.
        rows, columns = self.values.shape
        along = _kept_weights(rows, v.tobytes()) @ self.middles.astype(np.float32)
        across = _kept_weights(columns, u.tobytes()).T
        fine = np.empty((len(v), len(u)), np.float32)
        # A few rows at a time: one large product would be split over threads, and wait for a
        # processor that is busy with the next estimate.
        for row in range(0, len(v), _ROWS_AT_ONCE):
            part = fine[row : row + _ROWS_AT_ONCE]
            np.matmul(along[row : row + _ROWS_AT_ONCE], across, out=part)
            np.maximum(part, self.least, out=part)
        return fine


def _edges(centres: FloatArray, low: float, high: float) -> FloatArray:
    if len(centres) == 1:
        return np.array([low, high], dtype=float)
    half = (centres[1] - centres[0]) / 2
    made: FloatArray = np.append(centres - half, centres[-1] + half)
    return made


def filled(values: FloatArray, least: float = 0.0) -> FloatArray:
    """A map (ny, nx) with its NaN cells carried on from their neighbours by slope.

    Ring by ring; where no slope is known by their mean. Never below ``least`` nor above what
    occurs. An all-NaN map becomes zero; cells far from all others take the mean of the map.
    """
    values = np.asarray(values, dtype=float)
    known = np.isfinite(values)
    if known.all():
        return values
    if not known.any():
        return np.zeros_like(values)
    low = least if math.isfinite(least) else float(values[known].min())
    high = float(values[known].max())
    made = values.copy()
    for _ in range(_RINGS):
        made = _grown(made, low, high)
        if np.isfinite(made).all():
            return made
    return np.where(np.isfinite(made), made, values[known].mean())


def _grown(values: FloatArray, low: float, high: float) -> FloatArray:
    """Give each NaN cell beside known ones what their slope, or else their mean, leads to."""
    padded = np.pad(values, 2, constant_values=np.nan)
    rows, columns = values.shape

    def shifted(dy: int, dx: int) -> FloatArray:
        return padded[2 + dy : 2 + dy + rows, 2 + dx : 2 + dx + columns]

    way = [(dy, dx) for dy in (-1, 0, 1) for dx in (-1, 0, 1) if (dy, dx) != (0, 0)]
    near = np.stack([shifted(dy, dx) for dy, dx in way])
    by_slope = _mean_of_known(2 * near - np.stack([shifted(2 * dy, 2 * dx) for dy, dx in way]))
    spread = np.where(np.isfinite(by_slope), by_slope, _mean_of_known(near))
    # A slope followed for many cells would leave every light that occurs in the space.
    return np.where(np.isfinite(values), values, np.clip(spread, low, high))


def _mean_of_known(stack: FloatArray) -> FloatArray:
    finite = np.isfinite(stack)
    total, known = np.where(finite, stack, 0.0).sum(axis=0), finite.sum(axis=0)
    mean: FloatArray = np.full(total.shape, np.nan)
    np.divide(total, known, out=mean, where=known > 0)
    return mean


def _weights(cells: int, places: FloatArray) -> FloatArray:
    """Matrix (len(places), cells) that reads places in cell units off the cells' middles.

    Catmull-Rom inside; towards and beyond the outer edge the slope of the two end cells
    runs on.
    """
    places = np.clip(places, -1.0, cells)
    base = np.floor(places).astype(np.intp)
    t = places - base
    cubic = (
        ((-0.5 * t + 1.0) * t - 0.5) * t,
        (1.5 * t - 2.5) * t * t + 1.0,
        ((-1.5 * t + 2.0) * t + 0.5) * t,
        (0.5 * t - 0.5) * t * t,
    )
    matrix = np.zeros((len(places), cells))
    rows = np.arange(len(places))
    for offset, weight in zip((-1, 0, 1, 2), cubic, strict=True):
        index = base + offset
        beyond = np.maximum(np.maximum(-index, index - (cells - 1)), 0)
        end = np.clip(index, 0, cells - 1)
        inner = np.clip(np.where(index < 0, 1, np.minimum(index, cells - 2)), 0, cells - 1)
        np.add.at(matrix, (rows, end), weight * (1 + beyond))
        np.add.at(matrix, (rows, inner), -weight * beyond)
    return matrix


@lru_cache(maxsize=8)
def _kept_weights(cells: int, places: bytes) -> Raster:
    """As ``_weights`` in single precision: while a lamp moves, every picture asks for the same."""
    made = _weights(cells, np.frombuffer(places, dtype=float)).astype(np.float32)
    # Its transpose, by which a picture is multiplied, lies in one piece.
    return np.asfortranarray(made)


# -- round numbers ----------------------------------------------------------------------


def round_step(span: float, wanted: int) -> float:
    """The round step (1, 2, 2.5, 5 times a power of ten) that cuts a span in about so many."""
    if not (span > 0 and math.isfinite(span)):
        return 1.0
    raw = span / max(wanted, 1)
    power: float = 10.0 ** math.floor(math.log10(raw))
    return next(step * power for step in _STEPS if step * power >= raw * 0.999)


def rounded_up(largest: float, steps: int) -> float:
    """The round number at or above a value, in about so many round steps from 0; never 0."""
    if not (largest > 0 and math.isfinite(largest)):
        return 1.0
    step = round_step(largest, steps)
    return math.ceil(largest / step - 1e-9) * step


def round_values(low: float, high: float, wanted: int = 6) -> tuple[float, ...]:
    """Round numbers from ``low`` to ``high`` inclusive, about ``wanted`` of them."""
    step = round_step(high - low, wanted)
    first = math.ceil(low / step - 1e-9)
    last = math.floor(high / step + 1e-9)
    return tuple(round(k * step, 12) for k in range(first, last + 1))


DARK_LEVELS: Final = (0.0, 100.0)
"""Levels where there is no light to set them."""


def levels_of(field: FloatArray, *, stretched: bool = False) -> tuple[float, float]:
    """Round levels about a map of light: from dark (0), or from under its lowest value.

    Even light, which would be stretched to show nothing but its own unevenness, keeps a span of
    a tenth of its highest value.
    """
    known = field[np.isfinite(field)]
    top = float(known.max()) if known.size else 0.0
    if top <= 0:
        return DARK_LEVELS
    least = min(float(known.min()), 0.9 * top) if stretched else 0.0
    step = round_step(top - least, 8)
    return math.floor(least / step + 1e-9) * step, math.ceil(top / step - 1e-9) * step
