"""The map: a grid of cells over the footprint, on a horizontal plane."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

import numpy as np
import numpy.typing as npt

from planner.light.boxes import Box
from planner.light.cellmap import filled
from planner.light.polygon import (
    clip_cells,
    clip_to_rectangle,
    clip_to_rectangles,
    convex_pieces,
    crossed_cells,
    cut_away,
    fan,
    inside_polygon,
    is_convex,
    kept_by,
    moments,
    moments_of_each,
)
from planner.light.prism import FloatArray, IntArray, Prism
from planner.light.smoothing import smoothed


class CoveredError(ValueError):
    """Nothing of the map's plane is free of obstacles."""


@dataclass(frozen=True)
class CellGrid:
    """Cells over the bounding rectangle of a footprint; rows by rising y.

    What lies inside a box that stands in the map's plane is no part of the map.

    Attributes
    ----------
    x, y
        Cell centres in metres, shapes (nx,) and (ny,).
    area
        Area inside the footprint and outside of boxes in m², shape (ny, nx).
    centre
        Centre of that area, or a point of it near by; shape (2, ny, nx).
    inside
        Flat indices of cells with any area, shape (C,).
    z
        Height of the plane in metres.
    step
        Edges of a cell along x and y in metres.
    corners
        The footprint, shape (W, 2).
    standing
        The boxes that stand in the plane.
    is_part
        Whether the cells lie over part of the footprint only.
    """

    x: FloatArray
    y: FloatArray
    area: FloatArray
    centre: FloatArray
    inside: IntArray
    z: float
    step: tuple[float, float]
    corners: FloatArray
    standing: tuple[Box, ...] = ()
    is_part: bool = False

    @classmethod
    def over(
        cls,
        prism: Prism,
        columns: int,
        rows: int,
        z: float,
        part: tuple[tuple[float, float], tuple[float, float]] | None = None,
        outline: FloatArray | None = None,
    ) -> CellGrid:
        """Divide the footprint's bounding rectangle into columns x rows cells.

        Or a ``part`` of it, from its lowest to its highest corner; or that of an ``outline``
        (n, 2) in it, which then bounds the map.

        Raises
        ------
        CoveredError
            If boxes leave nothing of the plane.
        """
        corners = prism.corners if outline is None else outline
        low, high = corners.min(axis=0), corners.max(axis=0)
        if part is not None:
            low, high = np.array(part[0]), np.array(part[1])
        dx, dy = (high - low) / (columns, rows)
        x = low[0] + (np.arange(columns) + 0.5) * dx
        y = low[1] + (np.arange(rows) + 0.5) * dy
        u, v = np.meshgrid(x, y)
        cu, cv, area = clip_cells(corners, u, v, float(dx), float(dy))
        step = (float(dx), float(dy))
        centre = np.stack([cu, cv])
        standing = tuple(b.at(z) for b in prism.boxes if b.stands(z, _HAIR))
        if standing:
            _leave_out(corners, standing, (u, v), step, area, centre)
        # Slivers below a thousandth of a cell carry no weight and only noise.
        least = min(1e-3 * dx * dy, 0.5 * float(area.max()))
        inside = np.flatnonzero(area.ravel() > least)
        if inside.size == 0:
            raise CoveredError(
                f"Obstacles cover everything at the height of the canopy, {z * 100:.1f} cm; "
                "lower the canopy or take an obstacle away."
            )
        is_part = part is not None or outline is not None
        return cls(x, y, area, centre, inside, z, step, corners, standing, is_part)

    @classmethod
    def on_top(
        cls, prism: Prism, box: Box, most: tuple[float, float], most_cells: int
    ) -> CellGrid | None:
        """Cells on the top of a box; None where nothing of it is free.

        They are no longer and no wider than ``most`` as far as their number allows, and lie a
        hair above it, where light comes past that does not end on what is below.
        """
        outline = box.outline()
        if prism.convex:
            for (nx, ny), offset in zip(prism.normals, prism.offsets, strict=True):
                outline = kept_by(outline, float(nx), float(ny), float(offset))
                if len(outline) < _TRIANGLE:
                    return None
        wanted = np.ceil(np.ptp(outline, axis=0) / most - _HAIR).astype(int)
        columns, rows = np.clip(wanted, _FEWEST_ON_TOP, most_cells).tolist()
        try:
            return cls.over(prism, columns, rows, box.z1 + _OVER_TOP, outline=outline)
        except CoveredError:
            return None

    def on_bottom_of(self, prism: Prism) -> bool:
        """Whether the map lies on the room's bottom: on a closed canopy, or on the floor."""
        return abs(self.z - prism.z0) < 1e-9

    @cached_property
    def inside_area(self) -> FloatArray:
        """Area of the cells inside, shape (C,)."""
        return self.area.ravel()[self.inside]

    def cell_of(self, x: FloatArray, y: FloatArray) -> IntArray:
        """Cell of the whole table (0…ny·nx-1) that holds each point (n,)."""
        rows, columns = self.area.shape
        column = np.clip((x - self.x[0]) / self.step[0] + 0.5, 0, columns - 1).astype(np.intp)
        row = np.clip((y - self.y[0]) / self.step[1] + 0.5, 0, rows - 1).astype(np.intp)
        cell: IntArray = row * columns + column
        return cell

    def slot_of(self, x: FloatArray, y: FloatArray) -> IntArray:
        """Place (0…C-1) of the cell that holds each point (n,) inside the footprint.

        A point in a sliver that is no cell goes to the cell whose centre is nearest.
        """
        slots = np.full(self.area.size, -1, dtype=np.intp)
        slots[self.inside] = np.arange(len(self.inside))
        slot: IntArray = slots[self.cell_of(x, y)]
        stray = np.flatnonzero(slot < 0)
        if stray.size:
            centre = self.centre.reshape(2, -1)[:, self.inside]
            gap = np.hypot(centre[0] - x[stray, None], centre[1] - y[stray, None])
            slot[stray] = gap.argmin(axis=1)
        return slot

    def holds(self, x: FloatArray, y: FloatArray) -> npt.NDArray[np.bool_]:
        """Whether points (n,) lie on the map: inside the footprint and outside of boxes."""
        cut = np.ones(self.area.size, dtype=bool)
        cut[self.inside[self._is_whole]] = False
        low = np.array([self.x[0], self.y[0]]) - np.array(self.step) / 2
        high = low + np.array(self.step) * (len(self.x), len(self.y))
        held: npt.NDArray[np.bool_] = (x >= low[0]) & (x <= high[0])
        held &= (y >= low[1]) & (y <= high[1])
        doubtful = np.flatnonzero(held & cut[self.cell_of(x, y)])
        if doubtful.size:
            some = x.take(doubtful), y.take(doubtful)
            free = inside_polygon(self.corners, *some)
            for box in self.standing:
                free &= ~box.covers(*some)
            held[doubtful] = free
        return held

    def on_map(self, values: FloatArray) -> FloatArray:
        """Spread values (C,) over the map (ny, nx) with NaN outside."""
        flat = np.full(self.area.size, np.nan)
        flat[self.inside] = values
        return flat.reshape(self.area.shape)

    def receivers(self, *, averaged: bool) -> tuple[FloatArray, IntArray, FloatArray]:
        """Points (3, M) that stand for the cells, their cell (0…C-1) and weight.

        ``averaged`` takes Gauss points; the quick way takes the centre of area. The arrays
        are kept and are not to be changed.
        """
        if averaged not in self._kept_receivers:
            every = np.arange(len(self.inside))
            centre = self.centre.reshape(2, -1)[:, self.inside]
            points = np.concatenate([centre, np.full((1, len(every)), self.z)])
            quick = (points, every, np.ones(len(every)))
            found = self.gauss_points(every, 2) if averaged else quick
            self._kept_receivers[averaged] = found
        return self._kept_receivers[averaged]

    @cached_property
    def _kept_receivers(self) -> dict[bool, tuple[FloatArray, IntArray, FloatArray]]:
        return {}

    def gauss_points(self, which: IntArray, count: int) -> tuple[FloatArray, IntArray, FloatArray]:
        """Points (3, M) in some cells, their cell (0…C-1), and weights that add up to 1 in each.

        Gauss-Legendre with ``count`` points along each edge of a whole cell, exact for
        polynomials up to degree 2 ``count`` - 1; in a cut cell along two edges of each of the
        triangles its part inside is made of, fewer in small ones.
        """
        chosen = np.zeros(len(self.inside), dtype=bool)
        chosen[which] = True
        whole = np.flatnonzero(chosen & self._is_whole)
        u, v, weight = _unit_square(count)
        places = [np.stack(self._within(whole, u, v)).reshape(2, -1)]
        cells, weights = [np.repeat(whole, u.size)], [np.tile(weight, whole.size)]
        parts, of_cell, share = self._cut_triangles
        # About as close together in small triangles as in large: there may be hundreds.
        sides = np.sqrt(((parts - np.roll(parts, 1, axis=1)) ** 2).sum(axis=2)).max(axis=1)
        wanted = np.ceil(count * sides / max(self.step))
        wanted = np.clip(wanted, min(count, 2), count).astype(np.intp)
        for fewer in range(min(count, 2), count + 1):
            among = np.flatnonzero(chosen.take(of_cell) & (wanted == fewer))
            u, v, weight = _unit_square(fewer)
            first, second, third = (
                corner[:, :, None] for corner in np.moveaxis(parts[among], 1, 0)
            )
            # A square folded to a triangle: one edge shrinks to a corner.
            in_part = (1 - u) * first + u * ((1 - v) * second + v * third)
            places.append(np.moveaxis(in_part, 1, 0).reshape(2, -1))
            cells.append(np.repeat(of_cell[among], u.size))
            weights.append((share[among, None] * (2 * u * weight)).ravel())
        xy, cell = np.concatenate(places, axis=1), np.concatenate(cells)
        points = np.concatenate([xy, np.full((1, cell.size), self.z)])
        return points, cell, np.concatenate(weights)

    @cached_property
    def _is_whole(self) -> npt.NDArray[np.bool_]:
        """Which cells inside lie whole in the footprint, (C,)."""
        is_whole: npt.NDArray[np.bool_] = self.inside_area > (1 - 1e-9) * np.prod(self.step)
        return is_whole

    @cached_property
    def _cut_triangles(self) -> tuple[FloatArray, IntArray, FloatArray]:
        """Triangles (n, 3, 2) of the cut cells, their cell (n,), rising, and share of it (n,)."""
        cut = np.flatnonzero(~self._is_whole)
        row, column = np.divmod(self.inside[cut], self.area.shape[1])
        middle, half = np.stack([self.x[column], self.y[row]], axis=1), np.array(self.step) / 2
        low, high = middle - half, middle + half
        if is_convex(self.corners) and not self.standing:
            # What is left of each is convex: a fan of triangles from its first corner.
            piece = clip_to_rectangles(self.corners, low, high)
            fans = piece[:, 1:-1], piece[:, 2:]
            first = np.broadcast_to(piece[:, :1], fans[0].shape)
            parts = np.stack([first, *fans], axis=2).reshape(-1, 3, 2)
            of_cell = np.repeat(cut, piece.shape[1] - 2)
        else:
            found = [
                (part, cell)
                for cell, *around in zip(cut.tolist(), *low.T, *high.T, strict=True)
                for piece in self._pieces((around[0], around[1], around[2], around[3]))
                for part in fan(piece)
            ]
            parts = np.array([part for part, _ in found]).reshape(-1, 3, 2)
            of_cell = np.array([cell for _, cell in found], dtype=np.intp)
        size, _ = moments_of_each(parts)
        parts, of_cell, size = parts[size > 0], of_cell[size > 0], size[size > 0]
        whole = np.bincount(of_cell, weights=size, minlength=len(self.inside))
        return parts, of_cell, size / whole[of_cell]

    def _pieces(self, rectangle: tuple[float, float, float, float]) -> list[FloatArray]:
        """Convex pieces of the map in a rectangle."""
        pieces = convex_pieces(self.corners, rectangle)
        for box in self.standing:
            outline = box.outline()
            if (outline.max(axis=0) > rectangle[:2]).all() and (
                outline.min(axis=0) < rectangle[2:]
            ).all():
                pieces = [part for piece in pieces for part in cut_away(piece, outline)]
        return pieces

    def _within(
        self, which: IntArray, u: FloatArray, v: FloatArray
    ) -> tuple[FloatArray, FloatArray]:
        """Points (n, R) in some whole cells from places in a unit cell, (R,) or (n, R)."""
        rows, columns = np.divmod(self.inside[which], self.area.shape[1])
        x = self.x[columns][:, None] + (u - 0.5) * self.step[0]
        y = self.y[rows][:, None] + (v - 0.5) * self.step[1]
        return x, y

    def samples(
        self, u: FloatArray, v: FloatArray, which: slice | IntArray = slice(None)
    ) -> FloatArray:
        """Points spread over the parts inside of cells, (3, n, R), from uniform numbers (n, R).

        ``which`` picks some of the cells.
        """
        which = np.arange(len(self.inside))[which]
        x, y = self._within(which, u, v)
        is_cut = ~self._is_whole
        cut = np.flatnonzero(is_cut[which])
        if cut.size:
            parts, of_cell, share = self._cut_triangles
            # Shares of all cut cells stand one after the other on one rising axis.
            up_to = np.cumsum(share)
            number = np.cumsum(is_cut) - 1
            rank = number[which[cut]][:, None]
            place = u[cut] + rank
            part = np.minimum(np.searchsorted(up_to, place), len(share) - 1)
            # Rounding may point to a neighbour's.
            owner = number[of_cell[part]]
            part += (owner < rank).astype(np.intp) - (owner > rank)
            along = np.sqrt(np.clip((place - up_to[part]) / share[part] + 1, 0.0, 1.0))
            weights = np.stack([1 - along, along * (1 - v[cut]), along * v[cut]])
            x[cut], y[cut] = np.einsum("knr,nrki->inr", weights, parts[part])
        return np.stack([x, y, np.full_like(x, self.z)])

    def unlike_neighbours(self, values: FloatArray) -> IntArray:
        """Cells (n,) among (C,) about which values are not all the same."""
        return np.flatnonzero(self.range_about(values) > 0)

    def range_about(self, values: FloatArray) -> FloatArray:
        """By how much values (C,) differ in each cell and those around it, (C,)."""
        table = np.pad(self.on_map(values), 1, constant_values=np.nan)
        windows = np.lib.stride_tricks.sliding_window_view(table, (3, 3))
        about = windows.reshape(self.area.size, 9)[self.inside]
        return np.asarray(np.nanmax(about, axis=1) - np.nanmin(about, axis=1))

    def resampled(self, coarse: CellGrid, values: FloatArray) -> FloatArray:
        """Values (C,) of this grid's cells from those (C',) of a coarser grid over the same room.

        Bilinear between cell centres and linear beyond the outermost; for smooth fields
        only. Coarse cells outside the footprint first take the mean of their neighbours.
        """
        table = filled(coarse.on_map(values))
        centre = self.centre.reshape(2, -1)[:, self.inside]
        column, across = _between(centre[0], coarse.x)
        row, up = _between(centre[1], coarse.y)
        next_column = np.minimum(column + 1, len(coarse.x) - 1)
        next_row = np.minimum(row + 1, len(coarse.y) - 1)
        low = (1 - across) * table[row, column] + across * table[row, next_column]
        high = (1 - across) * table[next_row, column] + across * table[next_row, next_column]
        result: FloatArray = np.maximum((1 - up) * low + up * high, 0.0)
        return result

    def smoothed(self, parts: FloatArray) -> tuple[FloatArray, FloatArray]:
        """The sum (C,) of independent parts of a density (n, C) without most of its chance.

        And the mean square error left in it (C,); see ``light.smoothing``.
        """
        return smoothed(parts, self.area.shape, self.inside, self.inside_area)


_HAIR = 1e-9

_OVER_TOP = 1e-6
"""Metres."""

_FEWEST_ON_TOP, _TRIANGLE = 4, 3
"""Fewest cells along a side of the map of a top, however small; corners of any area."""


def _unit_square(count: int) -> tuple[FloatArray, FloatArray, FloatArray]:
    """Gauss-Legendre points (count²,) of a unit square and their weights."""
    x, w = np.polynomial.legendre.leggauss(count)
    u, v = (axis.ravel() for axis in np.meshgrid((x + 1) / 2, (x + 1) / 2))
    return u, v, np.outer(w, w).ravel() / 4


def _free(
    corners: FloatArray, standing: tuple[Box, ...], x: FloatArray, y: FloatArray
) -> npt.NDArray[np.bool_]:
    free = inside_polygon(corners, x, y)
    for box in standing:
        free &= ~box.covers(x, y)
    return free


def _leave_out(
    corners: FloatArray,
    standing: tuple[Box, ...],
    place: tuple[FloatArray, FloatArray],
    step: tuple[float, float],
    area: FloatArray,
    centre: FloatArray,
) -> None:
    """Take what lies in boxes out of the areas and centres of cells, in place.

    ``place`` are the middles of the cells before they were cut to the footprint.
    """
    outlines = [box.outline() for box in standing]
    crossed = np.zeros(area.shape, dtype=bool)
    for box, outline in zip(standing, outlines, strict=True):
        edges = crossed_cells(outline, *place, *step)
        crossed |= edges
        area[~edges & box.covers(*place)] = 0.0
    half = np.array(step) / 2
    for row, column in np.argwhere(crossed & (area > 0)):
        where = (row, column)
        low = np.array([place[0][where], place[1][where]]) - half
        high = low + 2 * half
        pieces = [clip_to_rectangle(corners, (low[0], low[1], high[0], high[1]))]
        for outline in outlines:
            if (outline.max(axis=0) > low).all() and (outline.min(axis=0) < high).all():
                pieces = [part for piece in pieces for part in cut_away(piece, outline)]
        parts = np.array([moments(piece) for piece in pieces]).reshape(-1, 3)
        left = float(parts[:, 0].sum())
        area[where] = left
        if left <= 0:
            continue
        middle = parts[:, 0] @ parts[:, 1:] / left
        # Around a box the centre may lie in it: then that of the largest piece stands for it.
        if not _free(corners, standing, middle[0], middle[1]):
            middle = parts[parts[:, 0].argmax(), 1:]
        centre[:, row, column] = middle


def _between(value: FloatArray, centres: FloatArray) -> tuple[IntArray, FloatArray]:
    """Index of the centre at or before each value, and how far on to the next (in steps)."""
    if len(centres) < 2:
        return np.zeros(value.shape, dtype=np.intp), np.zeros(value.shape)
    place = (value - centres[0]) / (centres[1] - centres[0])
    index = np.clip(np.floor(place), 0, len(centres) - 2).astype(np.intp)
    return index, np.clip(place - index, -0.5, 1.5)
