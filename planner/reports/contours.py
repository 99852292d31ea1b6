"""Contour lines of a map at round numbers, up to the walls. Plain numbers, no drawing."""

from __future__ import annotations

import math

import numpy as np

from planner.estimate.result import FloatArray


def round_levels(low: float, high: float, count: int = 6) -> list[float]:
    """Round numbers (1, 2, 2.5 or 5 times a power of ten apart) strictly between two values.

    About ``count`` of them; none where the two are as good as equal.
    """
    span = high - low
    if not math.isfinite(span) or span <= 1e-6 * max(abs(high), 1.0):
        return []
    rough = span / count
    power = 10.0 ** math.floor(math.log10(rough))
    step = next(power * m for m in (1, 2, 2.5, 5, 10) if power * m >= rough * 0.999)
    first, last = math.floor(low / step) + 1, math.ceil(high / step) - 1
    levels = (round(k * step, 12) for k in range(first, last + 1))
    return [level for level in levels if low < level < high]


def extended_map(
    x: FloatArray, y: FloatArray, values: FloatArray
) -> tuple[FloatArray, FloatArray, FloatArray]:
    """The map carried on to the outer edges of its cells and over the cells outside.

    ``x`` (nx,), ``y`` (ny,) are cell centres, ``values`` (ny, nx) with NaN outside. The
    result has two more rows and columns, at the cells' outer edges, and no NaN: what lies
    outside takes the value of the nearest cells, so that lines run out to slanting walls.
    It is meant to be cut off at the footprint.
    """
    filled = np.array(values, dtype=float)
    if not np.isfinite(filled).any():
        filled[:] = 0.0
    while not np.isfinite(filled).all():
        filled = _grown(filled)
    across = _continued(filled)
    return _with_edges(x), _with_edges(y), np.maximum(_continued(across.T).T, 0.0)


def contour_lines(
    x: FloatArray, y: FloatArray, values: FloatArray, level: float
) -> list[list[tuple[float, float]]]:
    """Lines along which a map without NaN takes a value, as lists of points."""
    import contourpy  # noqa: PLC0415 - only where contours are drawn

    generator = contourpy.contour_generator(x, y, values)
    lines = (np.asarray(line) for line in generator.lines(level))
    smooth = [_rounded(_rounded(line)) for line in lines if len(line) > 1]
    return [[(float(a), float(b)) for a, b in line] for line in smooth]


def _with_edges(centres: FloatArray) -> FloatArray:
    if len(centres) == 1:
        return np.array([centres[0] - 0.5, centres[0], centres[0] + 0.5])
    first, last = centres[1] - centres[0], centres[-1] - centres[-2]
    return np.concatenate(([centres[0] - first / 2], centres, [centres[-1] + last / 2]))


def _continued(values: FloatArray) -> FloatArray:
    """One more column on either side, half a cell on, by the slope found there."""
    if values.shape[1] == 1:
        return np.repeat(values, 3, axis=1)
    first = values[:, :1] - (values[:, 1:2] - values[:, :1]) / 2
    last = values[:, -1:] + (values[:, -1:] - values[:, -2:-1]) / 2
    return np.concatenate((first, values, last), axis=1)


def _rounded(line: FloatArray) -> FloatArray:
    """Corners cut off a line of points (n, 2), its ends kept: the light has no corners."""
    closed = len(line) > 3 and np.allclose(line[0], line[-1])
    near, far = 0.75 * line[:-1] + 0.25 * line[1:], 0.25 * line[:-1] + 0.75 * line[1:]
    cut = np.stack((near, far), axis=1).reshape(-1, 2)
    if closed:
        return np.concatenate((cut, cut[:1]))
    return np.concatenate((line[:1], cut, line[-1:]))


def _grown(values: FloatArray) -> FloatArray:
    """Give each NaN cell beside known ones what their slope, or else their mean, leads to."""
    padded = np.pad(values, 2, constant_values=np.nan)
    by_slope, by_mean = [], []
    for dy in (-1, 0, 1):
        for dx in (-1, 0, 1):
            near, far = _shifted(padded, dy, dx), _shifted(padded, 2 * dy, 2 * dx)
            by_mean.append(near)
            by_slope.append(2 * near - far)
    spread = _mean_of_known(by_slope)
    spread = np.where(np.isfinite(spread), spread, _mean_of_known(by_mean))
    # A slope followed for many cells would leave every light that occurs in the space.
    spread = np.clip(spread, 0.0, np.nanmax(values))
    return np.where(np.isfinite(values), values, spread)


def _shifted(padded: FloatArray, dy: int, dx: int) -> FloatArray:
    rows, columns = padded.shape[0] - 4, padded.shape[1] - 4
    return padded[2 + dy : 2 + dy + rows, 2 + dx : 2 + dx + columns]


def _mean_of_known(layers: list[FloatArray]) -> FloatArray:
    stack = np.stack(layers)
    finite = np.isfinite(stack)
    total, known = np.where(finite, stack, 0.0).sum(axis=0), finite.sum(axis=0)
    mean: FloatArray = np.full(total.shape, np.nan)
    np.divide(total, known, out=mean, where=known > 0)
    return mean
