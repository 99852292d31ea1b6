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
    for side in ((-1.0, 0.0, -x0), (1.0, 0.0, x1), (0.0, -1.0, -y0), (0.0, 1.0, y1)):
        points = _clip_half_plane(points, *side)
        if not points:
            break
    return np.array(points).reshape(-1, 2)


def clip_to_rectangles(corners: FloatArray, low: FloatArray, high: FloatArray) -> FloatArray:
    """As ``clip_to_rectangle`` for many rectangles at once: from ``low`` to ``high``, both (n, 2).

    Shape (n, most, 2); what has fewer corners repeats its first.
    """
    points = np.repeat(np.asarray(corners)[None], len(low), axis=0)
    for axis, sign, bound in ((0, -1.0, low), (0, 1.0, high), (1, -1.0, low), (1, 1.0, high)):
        room = sign * (bound[:, axis, None] - points[:, :, axis])
        after, room_after = np.roll(points, -1, axis=1), np.roll(room, -1, axis=1)
        inside = room >= 0
        crossing = inside != (room_after >= 0)
        way = np.divide(room, room - room_after, out=np.zeros_like(room), where=crossing)
        both = np.stack([points, points + way[:, :, None] * (after - points)], axis=2)
        kept = np.stack([inside, crossing], axis=2).reshape(len(low), 2 * points.shape[1])
        count = kept.sum(axis=1)
        order = np.argsort(~kept, axis=1, kind="stable")[:, : max(int(count.max(initial=0)), 1)]
        order = np.where(np.arange(order.shape[1]) < count[:, None], order, order[:, :1])
        points = np.take_along_axis(
            both.reshape(len(low), 2 * points.shape[1], 2), order[:, :, None], axis=1
        )
        # Nothing left is one point, which has no area and stays where it is.
        points[count == 0] = low[count == 0, None]
    return points


def cut_away(corners: FloatArray, convex: FloatArray) -> list[FloatArray]:
    """What a convex polygon (corners counter-clockwise) leaves of another, in pieces."""
    pieces = []
    rest = [(float(x), float(y)) for x, y in corners]
    for (ax, ay), (bx, by) in zip(convex, np.roll(convex, -1, axis=0), strict=True):
        nx, ny = float(by - ay), float(ax - bx)
        offset = nx * float(ax) + ny * float(ay)
        outside = _clip_half_plane(rest, -nx, -ny, -offset)
        if len(outside) > 2:
            pieces.append(np.array(outside))
        rest = _clip_half_plane(rest, nx, ny, offset)
        if len(rest) < 3:
            break
    return pieces


def kept_by(corners: FloatArray, nx: float, ny: float, offset: float) -> FloatArray:
    """The part of a polygon where nx x + ny y is at most ``offset``; (n, 2)."""
    points = [(float(x), float(y)) for x, y in corners]
    return np.array(_clip_half_plane(points, nx, ny, offset)).reshape(-1, 2)


def _clip_half_plane(
    points: list[tuple[float, float]], nx: float, ny: float, offset: float
) -> list[tuple[float, float]]:
    """The part of a polygon where nx x + ny y is at most ``offset``."""
    kept: list[tuple[float, float]] = []
    for start, end in zip(points, points[1:] + points[:1], strict=True):
        a, b = (offset - nx * x - ny * y for x, y in (start, end))
        if a >= 0:
            kept.append(start)
        if (a >= 0) != (b >= 0):
            t = a / (a - b)
            kept.append((start[0] + t * (end[0] - start[0]), start[1] + t * (end[1] - start[1])))
    return kept


def moments(corners: FloatArray) -> tuple[float, float, float]:
    """Area (m², positive counter-clockwise) and centre of area (x, y) of a polygon."""
    if len(corners) < 3:
        return 0.0, 0.0, 0.0
    # Plain floats: these polygons have a handful of corners and there are many of them.
    points = [(float(x), float(y)) for x, y in corners]
    ox, oy = points[0]
    twice = mx = my = 0.0
    for (x0, y0), (x1, y1) in zip(points, points[1:] + points[:1], strict=True):
        ax, ay, bx, by = x0 - ox, y0 - oy, x1 - ox, y1 - oy
        cross = ax * by - bx * ay
        twice += cross
        mx += (ax + bx) * cross
        my += (ay + by) * cross
    if abs(twice) < 2e-15:
        return 0.0, ox, oy
    return twice / 2, ox + mx / (3 * twice), oy + my / (3 * twice)


def moments_of_each(polygons: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Areas (n,) and centres of area (2, n) of polygons (n, corners, 2), as ``moments``."""
    first = polygons[:, 0].T
    here = np.moveaxis(polygons, 2, 0) - first[:, :, None]
    after = np.roll(here, -1, axis=2)
    cross = here[0] * after[1] - here[1] * after[0]
    twice = cross.sum(axis=1)
    flat = np.abs(twice) < 2e-15
    twice[flat] = 0.0
    moment = ((here + after) * cross).sum(axis=2)
    centre = first + np.divide(moment, 3 * twice, out=np.zeros_like(moment), where=~flat)
    return twice / 2, centre


def convex_pieces(
    corners: FloatArray, rectangle: tuple[float, float, float, float], depth: int = 6
) -> list[FloatArray]:
    """The part of a polygon in a rectangle as convex polygons.

    Where a concave corner is in the way the rectangle is quartered; after ``depth`` times
    what is left, a 4000th of it, is taken as it is.
    """
    piece = _without_spurs(clip_to_rectangle(corners, rectangle))
    x0, y0, x1, y1 = rectangle
    whole, area = (x1 - x0) * (y1 - y0), moments(piece)[0]
    # Doubled edges, which clipping may leave, are no corners in the way.
    if area < 1e-9 * whole:
        return []
    if area > (1 - 1e-9) * whole:
        return [np.array([[x0, y0], [x1, y0], [x1, y1], [x0, y1]])]
    if depth == 0 or is_convex(piece):
        return [piece]
    x, y = (x0 + x1) / 2, (y0 + y1) / 2
    quarters = ((x0, y0, x, y), (x, y0, x1, y), (x0, y, x, y1), (x, y, x1, y1))
    return [part for one in quarters for part in convex_pieces(piece, one, depth - 1)]


def fan(piece: FloatArray) -> list[FloatArray]:
    """A convex polygon as triangles, each (3, 2)."""
    parts = [np.stack([piece[0], piece[k], piece[k + 1]]) for k in range(1, len(piece) - 1)]
    return [part for part in parts if moments(part)[0] > 0]


def _without_spurs(piece: FloatArray) -> FloatArray:
    """A polygon without the corners at which it turns back on itself."""
    while len(piece) > 2:
        before, after = piece - np.roll(piece, 1, axis=0), np.roll(piece, -1, axis=0) - piece
        turn = before[:, 0] * after[:, 1] - before[:, 1] * after[:, 0]
        spur = (np.abs(turn) < 1e-14) & ((before * after).sum(axis=1) <= 0)
        if not spur.any():
            break
        # One at a time: the next corner may be none once this one is gone.
        piece = np.delete(piece, int(spur.argmax()), axis=0)
    return piece


def is_convex(piece: FloatArray) -> bool:
    """Whether a polygon turns left at every corner and nowhere back on itself."""
    edges = np.roll(piece, -1, axis=0) - piece
    edges = edges[np.hypot(edges[:, 0], edges[:, 1]) > 1e-12]
    onward = np.roll(edges, -1, axis=0)
    turn = edges[:, 0] * onward[:, 1] - edges[:, 1] * onward[:, 0]
    ahead = (edges * onward).sum(axis=1)
    return bool(((turn > 1e-14) | ((turn > -1e-14) & (ahead > 0))).all())


def crossed_cells(
    corners: FloatArray, u: FloatArray, v: FloatArray, du: float, dv: float
) -> npt.NDArray[np.bool_]:
    """Which rectangular cells (centres u, v; size du x dv) an edge of the polygon passes.

    Separating axes: an edge meets a rectangle unless they are apart along x, y or the
    edge's normal. Touching counts as passing.
    """
    crossed = np.zeros(u.shape, dtype=bool)
    for (x0, y0), (x1, y1) in zip(corners, np.roll(corners, -1, axis=0), strict=True):
        nx, ny = y1 - y0, x0 - x1
        apart = np.abs(nx * (u - x0) + ny * (v - y0)) > (abs(nx) * du + abs(ny) * dv) / 2
        apart |= (u + du / 2 < min(x0, x1)) | (u - du / 2 > max(x0, x1))
        apart |= (v + dv / 2 < min(y0, y1)) | (v - dv / 2 > max(y0, y1))
        crossed |= ~apart
    return crossed


def inside_polygon(corners: FloatArray, x: FloatArray, y: FloatArray) -> npt.NDArray[np.bool_]:
    """Whether points lie inside a polygon (even-odd rule), any shape."""
    inside = np.zeros(np.broadcast(x, y).shape, dtype=bool)
    for (x0, y0), (x1, y1) in zip(corners, np.roll(corners, -1, axis=0), strict=True):
        if y0 == y1:
            continue
        inside ^= ((y0 > y) != (y1 > y)) & (x < x0 + (y - y0) * (x1 - x0) / (y1 - y0))
    return inside


def brought_inside(
    inside: npt.NDArray[np.bool_], x: FloatArray, y: FloatArray, centre: FloatArray
) -> tuple[FloatArray, FloatArray]:
    """Points (n, R) of n pieces of a plane, those not ``inside`` (n, R) replaced.

    They take the places of the points of their own piece that lie inside, in turn, so that
    these stay evenly used; a piece without any uses its ``centre`` (2, n).
    """
    count = inside.sum(axis=1)
    order = np.argsort(~inside, axis=1, kind="stable")
    turn = np.arange(x.shape[1]) % np.maximum(count, 1)[:, None]
    chosen = np.take_along_axis(order, turn, axis=1)
    result = []
    for axis, middle in zip((x, y), centre, strict=True):
        moved = np.where(inside, axis, np.take_along_axis(axis, chosen, axis=1))
        result.append(np.where(count[:, None] > 0, moved, middle[:, None]))
    return result[0], result[1]


def clip_cells(
    corners: FloatArray, u: FloatArray, v: FloatArray, du: float, dv: float
) -> tuple[FloatArray, FloatArray, FloatArray]:
    """Cut rectangular cells (centres u, v; size du x dv) to a polygon.

    Returns the centres of area (u, v) and areas of what is left; a cell that lies outside
    keeps its centre and has area 0. All of the shape of ``u``.
    """
    u, v = u.copy(), v.copy()
    area = np.full(u.shape, du * dv)
    if is_rectangle(corners):
        return u, v, area
    crossed = crossed_cells(corners, u, v, du, dv)
    area[~crossed & ~inside_polygon(corners, u, v)] = 0.0
    middle, half = np.stack([u[crossed], v[crossed]], axis=1), np.array([du, dv]) / 2
    size, centre = moments_of_each(clip_to_rectangles(corners, middle - half, middle + half))
    left = size > 1e-12
    area[crossed] = np.where(left, size, 0.0)
    u[crossed], v[crossed] = np.where(left, centre, middle.T)
    return u, v, area


def is_rectangle(corners: FloatArray) -> bool:
    """Whether a polygon fills its bounding rectangle (axis-parallel box)."""
    low, high = corners.min(axis=0), corners.max(axis=0)
    on_side = np.isclose(corners, low) | np.isclose(corners, high)
    area = moments(corners)[0]
    return bool(on_side.all() and np.isclose(area, np.prod(high - low)))
