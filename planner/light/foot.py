"""The foot of wrinkled walls, from which much of their light reaches a few cells.

What meets such a wall within some cells' edges of the map goes on to the cells beside it:
one or two per cent of all light and yet, since few photons come there, most of what chance
does to the map. So points are placed there on purpose, denser towards the map, and light is
sent to them from lamps and from other wrinkled mirrors (next-event estimation: Veach, 1997,
Robust Monte Carlo Methods for Light Transport Simulation, ch. 8).
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from planner.light.emission import Source
from planner.light.field import CellGrid
from planner.light.lobes import SMOOTH, Bounce, sent_towards
from planner.light.paths import Mirrors
from planner.light.prism import FloatArray, IntArray
from planner.light.sequences import shifted_points
from planner.light.surfaces import Surfaces


@dataclass(frozen=True)
class Lit:
    """Light that arrives at points of a foot.

    Points (3, n), directions (3, n) in which it comes, the planes (n,) and facets (n,) they
    lie on, and the flux each stands for (n,).
    """

    point: FloatArray
    direction: FloatArray
    plane: IntArray
    facet: IntArray
    flux: FloatArray

    def take(self, which: IntArray) -> Lit:
        """Some of it."""
        return Lit(
            self.point.take(which, axis=1),
            self.direction.take(which, axis=1),
            self.plane.take(which),
            self.facet.take(which),
            self.flux.take(which),
        )


class Foot:
    """Upright wrinkled faces up to ``reach`` metres above the map, in strips.

    Points are placed along them evenly and over their height with density 1 / (2 √(reach h)).
    """

    def __init__(self, surfaces: Surfaces, grid: CellGrid, mirrors: Mirrors, reach: float) -> None:
        self._surfaces, self._z, self._reach = surfaces, grid.z, reach
        prism = surfaces.prism
        starts, axes, lengths, facets, lows, highs = [], [], [], [], [], []
        rough = (mirrors.width > SMOOTH) & (mirrors.followed > 0)
        for index in np.flatnonzero(rough):
            plane = int(surfaces.facet_plane[index])
            if plane < prism.wall_count:
                facet = surfaces.facets[index]
                start, axis = prism.corners[plane], prism.tangents[plane]
                length, low, high = float(prism.lengths[plane]), facet.z0, facet.z1
            elif plane < prism.wall_count + 2:
                continue
            else:
                origin, u, v, length, rise, _ = prism.box_faces[plane - prism.wall_count - 2]
                if v[2] < 0.5:
                    continue
                start, axis, low, high = (
                    origin[:2],
                    u[:2],
                    float(origin[2]),
                    float(origin[2]) + rise,
                )
            part = np.sqrt(np.clip(np.array([low, high]) - self._z, 0.0, reach) / reach)
            if part[1] > part[0]:
                starts.append(start)
                axes.append(axis)
                lengths.append(length)
                facets.append(index)
                lows.append(part[0])
                highs.append(part[1])
        self._start, self._axis = np.array(starts).reshape(-1, 2), np.array(axes).reshape(-1, 2)
        self._length = np.array(lengths)
        self._facet = np.array(facets, dtype=np.intp)
        self._low, self._high = np.array(lows), np.array(highs)
        size = self._length * (self._high - self._low)
        self._size = float(size.sum())
        self._up_to = np.cumsum(size) / self._size if self._size > 0 else size
        self._belongs = np.zeros(len(rough), dtype=bool)
        self._belongs[self._facet] = True

    def __bool__(self) -> bool:
        return self._size > 0

    def holds(self, facet: IntArray, z: FloatArray) -> npt.NDArray[np.bool_]:
        """Which points at heights z (n,) of facets (n,) belong to it."""
        above = z - self._z
        held: npt.NDArray[np.bool_] = self._belongs.take(facet)
        return held & (above > 0) & (above < self._reach)

    def density(self, z: FloatArray) -> FloatArray:
        """Points placed per square metre at heights z (n,) of it, of one point in all."""
        return 0.5 / (self._size * np.sqrt(np.maximum(z - self._z, 1e-12) * self._reach))

    def points(self, u: FloatArray, v: FloatArray) -> tuple[FloatArray, IntArray]:
        """Points (3, n) and their facets (n,) from uniform numbers (n,)."""
        strip = np.minimum(np.searchsorted(self._up_to, u, side="right"), len(self._up_to) - 1)
        before = np.concatenate([[0.0], self._up_to[:-1]]).take(strip)
        along = (u - before) / (self._up_to.take(strip) - before) * self._length.take(strip)
        place = self._start.take(strip, axis=0).T + self._axis.take(strip, axis=0).T * along
        low, high = self._low.take(strip), self._high.take(strip)
        z = self._z + self._reach * (low + v * (high - low)) ** 2
        return np.concatenate([place, z[None]]), self._facet.take(strip)

    def lit_by(self, source: Source, count: int, random: np.random.Generator) -> Lit:
        """Light straight from a unit lamp to so many points."""
        u = shifted_points(1, count, 5, random)[:, 0]
        point, facet = self.points(u[2], u[3])
        start = source.points(u[0], u[1], u[4])
        direction, distance, plane, kept = self._lines(start, point, facet)
        flux = source.profile.intensity(*source.towards(direction)) * kept
        flux /= distance**2 * self.density(point[2]) * count
        return Lit(point, direction, plane, facet, flux)

    def _lines(
        self, start: FloatArray, point: FloatArray, facet: IntArray
    ) -> tuple[FloatArray, FloatArray, IntArray, FloatArray]:
        """Directions, lengths, planes and cosines at points (0 where hidden) of lines to them."""
        direction = point - start
        distance = np.maximum(np.sqrt((direction**2).sum(axis=0)), 1e-9)
        direction /= distance
        prism = self._surfaces.prism
        plane = self._surfaces.facet_plane.take(facet)
        cosine = (prism.plane_normals().take(plane, axis=1) * direction).sum(axis=0)
        np.maximum(cosine, 0.0, out=cosine)
        if not prism.open_to_sight:
            sighted = np.flatnonzero(cosine)
            hidden = prism.blocked(
                prism.crowd,
                start.take(sighted, axis=1),
                direction.take(sighted, axis=1),
                distance.take(sighted) * (1 - 1e-7),
            )
            cosine[sighted[hidden]] = 0.0
        return direction, distance, plane, cosine

    def lit_from(
        self,
        start: FloatArray,
        frame: FloatArray,
        bounce: Bounce,
        random: np.random.Generator,
    ) -> Lit:
        """What bounces (n) send to one point each: density per square metre, in place of flux.

        Starts (3, n) in the room and frames (3, 3, n) of their surfaces.
        """
        u, v = random.random((2, bounce.ray.size))
        point, facet = self.points(u, v)
        direction, distance, plane, cosine = self._lines(start, point, facet)
        return Lit(
            point,
            direction,
            plane,
            facet,
            sent_towards(bounce, frame, direction) * cosine / distance**2,
        )
