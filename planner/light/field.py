"""The map: a grid of cells over the footprint, on a horizontal plane."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

import numpy as np
import numpy.typing as npt

from planner.light.boxes import Box
from planner.light.cellmap import filled
from planner.light.polygon import (
    brought_inside,
    clip_to_rectangle,
    crossed_cells,
    cut_away,
    moments,
)
from planner.light.prism import FloatArray, IntArray, Prism
from planner.light.surfaces import clip_cells


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
    standing
        The boxes that stand in the plane.
    """

    x: FloatArray
    y: FloatArray
    area: FloatArray
    centre: FloatArray
    inside: IntArray
    z: float
    step: tuple[float, float]
    standing: tuple[Box, ...] = ()

    @classmethod
    def over(cls, prism: Prism, columns: int, rows: int, z: float) -> CellGrid:
        """Divide the footprint's bounding rectangle into columns x rows cells.

        Raises
        ------
        CoveredError
            If boxes leave nothing of the plane.
        """
        low, high = prism.corners.min(axis=0), prism.corners.max(axis=0)
        dx, dy = (high - low) / (columns, rows)
        x = low[0] + (np.arange(columns) + 0.5) * dx
        y = low[1] + (np.arange(rows) + 0.5) * dy
        u, v = np.meshgrid(x, y)
        cu, cv, area = clip_cells(prism.corners, u, v, float(dx), float(dy))
        step = (float(dx), float(dy))
        centre = np.stack([cu, cv])
        standing = tuple(b for b in prism.boxes if b.z0 < z + _HAIR and b.z1 > z + _HAIR)
        if standing:
            _leave_out(prism, standing, (u, v), step, area, centre)
        # Slivers below a thousandth of a cell carry no weight and only noise.
        least = min(1e-3 * dx * dy, 0.5 * float(area.max()))
        inside = np.flatnonzero(area.ravel() > least)
        if inside.size == 0:
            raise CoveredError(
                f"Obstacles cover everything at the height of the canopy, {z * 100:.1f} cm; "
                "lower the canopy or take an obstacle away."
            )
        return cls(x, y, area, centre, inside, z, step, standing)

    def holds(self, prism: Prism, x: FloatArray, y: FloatArray) -> npt.NDArray[np.bool_]:
        """Whether points of the plane lie on the map, any shape."""
        return _free(prism, self.standing, x, y)

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

    def on_map(self, values: FloatArray) -> FloatArray:
        """Spread values (C,) over the map (ny, nx) with NaN outside."""
        flat = np.full(self.area.size, np.nan)
        flat[self.inside] = values
        return flat.reshape(self.area.shape)

    def receivers(self, *, averaged: bool) -> tuple[FloatArray, IntArray, FloatArray]:
        """Points (3, M) that stand for the cells, their cell (0…C-1) and weight.

        ``averaged`` takes the two-point Gauss rule along each edge of a whole cell, which
        integrates cubics exactly; cut cells and the quick way take the centre of area. The
        arrays are kept and are not to be changed.
        """
        if averaged not in self._kept_receivers:
            self._kept_receivers[averaged] = self._find_receivers(averaged)
        return self._kept_receivers[averaged]

    @cached_property
    def _kept_receivers(self) -> dict[bool, tuple[FloatArray, IntArray, FloatArray]]:
        return {}

    def _find_receivers(self, averaged: bool) -> tuple[FloatArray, IntArray, FloatArray]:
        count = len(self.inside)
        centre = self.centre.reshape(2, -1)[:, self.inside]
        if not averaged:
            points = np.concatenate([centre, np.full((1, count), self.z)])
            return points, np.arange(count), np.ones(count)
        whole = self.inside_area > (1 - 1e-9) * self.step[0] * self.step[1]
        reach = 0.5 / np.sqrt(3.0)
        corners = [(-reach, -reach), (reach, -reach), (-reach, reach), (reach, reach)]
        shift = np.array(corners).T * np.array(self.step)[:, None]
        spread = centre[:, whole, None] + shift[:, None, :]
        xy = np.concatenate([spread.reshape(2, -1), centre[:, ~whole]], axis=1)
        cell = np.concatenate([np.repeat(np.flatnonzero(whole), 4), np.flatnonzero(~whole)])
        weight = np.where(whole[cell], 0.25, 1.0)
        points = np.concatenate([xy, np.full((1, xy.shape[1]), self.z)])
        return points, cell, weight

    def samples(
        self, prism: Prism, u: FloatArray, v: FloatArray, which: slice = slice(None)
    ) -> FloatArray:
        """Points spread over each cell, shape (3, C, R), from uniform numbers (C, R).

        ``which`` picks some of the cells.
        """
        chosen = self.inside[which]
        rows, columns = np.divmod(chosen, self.area.shape[1])
        x = self.x[columns][:, None] + (u - 0.5) * self.step[0]
        y = self.y[rows][:, None] + (v - 0.5) * self.step[1]
        cut = self.inside_area[which] < (1 - 1e-9) * self.step[0] * self.step[1]
        if cut.any():
            centre = self.centre.reshape(2, -1)[:, chosen[cut]]
            inside = self.holds(prism, x[cut], y[cut])
            x[cut], y[cut] = brought_inside(inside, x[cut], y[cut], centre)
        return np.stack([x, y, np.full_like(x, self.z)])

    def softened(self, values: FloatArray) -> FloatArray:
        """Values (C,) averaged with their neighbours, weights 1-2-1 along rows and columns.

        Takes about two thirds of the chance out of counts; linear fields pass unchanged.
        """
        table = filled(self.on_map(values))
        for axis in (0, 1):
            if table.shape[axis] < 3:
                continue
            table = np.moveaxis(table, axis, 0)
            ends = np.stack([2 * table[0] - table[1], 2 * table[-1] - table[-2]])
            padded = np.concatenate([ends[:1], table, ends[1:]])
            table = (padded[:-2] + 2 * padded[1:-1] + padded[2:]) / 4
            table = np.moveaxis(table, 0, axis)
        return np.maximum(table.ravel()[self.inside], 0.0)

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


_HAIR = 1e-9


def _free(
    prism: Prism, standing: tuple[Box, ...], x: FloatArray, y: FloatArray
) -> npt.NDArray[np.bool_]:
    free = prism.contains(x, y)
    for box in standing:
        free &= ~box.covers(x, y)
    return free


def _leave_out(
    prism: Prism,
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
        pieces = [clip_to_rectangle(prism.corners, (low[0], low[1], high[0], high[1]))]
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
        if not _free(prism, standing, middle[0], middle[1]):
            middle = parts[parts[:, 0].argmax(), 1:]
        centre[:, row, column] = middle


def _between(value: FloatArray, centres: FloatArray) -> tuple[IntArray, FloatArray]:
    """Index of the centre at or before each value, and how far on to the next (in steps)."""
    if len(centres) < 2:
        return np.zeros(value.shape, dtype=np.intp), np.zeros(value.shape)
    place = (value - centres[0]) / (centres[1] - centres[0])
    index = np.clip(np.floor(place), 0, len(centres) - 2).astype(np.intp)
    return index, np.clip(place - index, -0.5, 1.5)
