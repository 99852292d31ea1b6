"""The map: a grid of cells over the footprint, on a horizontal plane."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from planner.light.prism import FloatArray, IntArray, Prism
from planner.light.surfaces import clip_cells


@dataclass(frozen=True)
class CellGrid:
    """Cells over the bounding rectangle of a footprint; rows by rising y.

    Attributes
    ----------
    x, y
        Cell centres in metres, shapes (nx,) and (ny,).
    area
        Area inside the footprint in m², shape (ny, nx).
    centre
        Centre of that area, shape (2, ny, nx).
    inside
        Flat indices of cells with any area, shape (C,).
    z
        Height of the plane in metres.
    """

    x: FloatArray
    y: FloatArray
    area: FloatArray
    centre: FloatArray
    inside: IntArray
    z: float
    step: tuple[float, float]

    @classmethod
    def over(cls, prism: Prism, columns: int, rows: int, z: float) -> CellGrid:
        """Divide the footprint's bounding rectangle into columns x rows cells."""
        low, high = prism.corners.min(axis=0), prism.corners.max(axis=0)
        dx, dy = (high - low) / (columns, rows)
        x = low[0] + (np.arange(columns) + 0.5) * dx
        y = low[1] + (np.arange(rows) + 0.5) * dy
        u, v = np.meshgrid(x, y)
        cu, cv, area = clip_cells(prism.corners, u, v, float(dx), float(dy))
        # Slivers below a thousandth of a cell carry no weight and only noise.
        inside = np.flatnonzero(area.ravel() > 1e-3 * dx * dy)
        return cls(x, y, area, np.stack([cu, cv]), inside, z, (float(dx), float(dy)))

    @property
    def inside_area(self) -> FloatArray:
        """Area of the cells inside, shape (C,)."""
        return self.area.ravel()[self.inside]

    def on_map(self, values: FloatArray) -> FloatArray:
        """Spread values (C,) over the map (ny, nx) with NaN outside."""
        flat = np.full(self.area.size, np.nan)
        flat[self.inside] = values
        return flat.reshape(self.area.shape)

    def receivers(self, *, averaged: bool) -> tuple[FloatArray, IntArray, FloatArray]:
        """Points (3, M) that stand for the cells, their cell (0…C-1) and weight.

        ``averaged`` takes the two-point Gauss rule along each edge of a whole cell, which
        integrates cubics exactly; cut cells and the quick way take the centre of area.
        """
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

    def samples(self, prism: Prism, u: FloatArray, v: FloatArray) -> FloatArray:
        """Points spread over each cell, shape (3, C, R), from uniform numbers (C, R)."""
        rows, columns = np.divmod(self.inside, self.area.shape[1])
        x = self.x[columns][:, None] + (u - 0.5) * self.step[0]
        y = self.y[rows][:, None] + (v - 0.5) * self.step[1]
        cut = self.inside_area < (1 - 1e-9) * self.step[0] * self.step[1]
        if cut.any():
            outside = ~prism.contains(x[cut], y[cut])
            centre = self.centre.reshape(2, -1)[:, self.inside][:, cut, None]
            x[cut] = np.where(outside, centre[0], x[cut])
            y[cut] = np.where(outside, centre[1], y[cut])
        return np.stack([x, y, np.full_like(x, self.z)])
