"""The light that arrives on walls: its mean over equal parts of their length and height."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np

from planner.light.prism import FloatArray, IntArray, totals
from planner.light.surfaces import Surfaces

PARTS: Final = 24
"""Equal parts of each wall from its first corner to its second."""

LEVELS: Final = 12
"""Equal parts of its height, from the bottom of the room up, which a closed canopy is."""


@dataclass(frozen=True, eq=False)
class OnWalls:
    """How much each of some texels (n,) counts in the mean of a part of a wall (n,)."""

    walls: int
    part: IntArray
    texel: IntArray
    weight: FloatArray

    def of(self, density: FloatArray) -> FloatArray:
        """Flux density on all texels (T,) as its mean on parts, (walls, LEVELS, PARTS)."""
        count = self.walls * LEVELS * PARTS
        found = totals(self.part, self.weight * density[self.texel], count)
        return found.reshape(self.walls, LEVELS, PARTS)


def on_walls(surfaces: Surfaces) -> OnWalls:
    """The means over parts of the walls of a room.

    A texel that reaches over several parts counts in each by how much of it lies there. A part
    that boxes hide has no light.
    """
    prism = surfaces.prism
    texels = np.flatnonzero(surfaces.facet_plane[surfaces.texel_facet] < prism.wall_count)
    wall = surfaces.facet_plane[surfaces.texel_facet[texels]]
    start, end = prism.corners, np.roll(prism.corners, -1, axis=0)
    length = np.hypot(*(end - start).T)
    direction = ((end - start) / length[:, None])[wall]
    along = ((surfaces.texel_centre[:2, texels].T - start[wall]) * direction).sum(axis=1)
    up = surfaces.texel_centre[2, texels] - prism.z0
    half, part = surfaces.texel_along[texels] / 2, length[wall] / PARTS
    rise, level = surfaces.texel_rise[texels], (prism.z1 - prism.z0) / LEVELS
    sideways = _shared((along - half) / part, (along + half) / part, PARTS)
    upright = _shared((up - rise) / level, (up + rise) / level, LEVELS)
    which, at = np.nonzero(sideways)
    pair, height = np.nonzero(upright[which])
    which, at = which[pair], at[pair]
    weights = sideways[which, at] * upright[which, height] * surfaces.texel_area[texels[which]]
    parts = (wall[which] * LEVELS + height) * PARTS + at
    sums = totals(parts, weights, prism.wall_count * LEVELS * PARTS)[parts]
    means = np.divide(weights, sums, out=np.zeros_like(weights), where=sums > 0)
    return OnWalls(prism.wall_count, parts, texels[which], means)


def _shared(low: FloatArray, high: FloatArray, count: int) -> FloatArray:
    """What share of each span (n,) lies in each of the unit steps from 0 on, (n, count)."""
    edges = np.arange(count)
    over = np.minimum(high[:, None], edges + 1) - np.maximum(low[:, None], edges)
    shared: FloatArray = np.clip(over, 0.0, None) / (high - low)[:, None]
    return shared
