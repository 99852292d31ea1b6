"""Plane polygons: cut to a rectangle, area and centre of area."""

from __future__ import annotations

import numpy as np
import numpy.typing as npt

FloatArray = npt.NDArray[np.float64]


def clip_to_rectangle(
    corners: FloatArray, rectangle: tuple[float, float, float, float]
) -> FloatArray:
    """The part of a simple polygon inside (x0, y0, x1, y1); shape (n, 2), n may be 0.

    Sutherland and Hodgman (1974), Comm. ACM 17, 32. A concave polygon may come back with
    pieces joined by doubled edges; these change neither area nor centre.
    """
    x0, y0, x1, y1 = rectangle
    points = [(float(x), float(y)) for x, y in corners]
    for axis, bound, keep_above in ((0, x0, True), (0, x1, False), (1, y0, True), (1, y1, False)):
        points = _clip_half_plane(points, axis, bound, keep_above)
        if not points:
            break
    return np.array(points).reshape(-1, 2)


def _clip_half_plane(
    points: list[tuple[float, float]], axis: int, bound: float, keep_above: bool
) -> list[tuple[float, float]]:
    kept: list[tuple[float, float]] = []
    sign = 1.0 if keep_above else -1.0
    for start, end in zip(points, points[1:] + points[:1], strict=True):
        a, b = sign * (start[axis] - bound), sign * (end[axis] - bound)
        if a >= 0:
            kept.append(start)
        if (a >= 0) != (b >= 0):
            t = a / (a - b)
            kept.append(
                (start[0] + t * (end[0] - start[0]), start[1] + t * (end[1] - start[1]))
            )
    return kept


def moments(corners: FloatArray) -> tuple[float, float, float]:
    """Area (m², positive counter-clockwise) and centre of area (x, y) of a polygon."""
    if len(corners) < 3:
        return 0.0, 0.0, 0.0
    origin = corners[0]
    x, y = (corners - origin).T
    cross = x * np.roll(y, -1) - np.roll(x, -1) * y
    area = float(cross.sum()) / 2
    if abs(area) < 1e-15:
        return 0.0, float(origin[0]), float(origin[1])
    cx = float(((x + np.roll(x, -1)) * cross).sum()) / (6 * area) + float(origin[0])
    cy = float(((y + np.roll(y, -1)) * cross).sum()) / (6 * area) + float(origin[1])
    return area, cx, cy
