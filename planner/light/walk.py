"""A second reckoning of the light: photons walked one surface at a time.

Every photon carries the same flux; chance decides at each surface whether it is absorbed,
leaves by Lambert's law or is mirrored. Nothing is taken from images, exchange or gather: of
the core only rays, lobes and lamps are used. Too noisy for a map, and good for its mean,
whose standard error is known.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

import numpy as np

from planner.light.emission import Source
from planner.light.lobes import SMOOTH, scatter
from planner.light.prism import FloatArray, IntArray, Prism
from planner.light.sequences import cosine_directions

_AT_A_TIME = 1 << 15
"""Photons walked together; their arrays fit into the cache of a processor."""


@dataclass(frozen=True)
class Linings:
    """ρ_d, ρ_s and lobe width of each facet (F,): wall bands, ceiling, bottom, box faces.

    ``tops`` lists the heights at which the bands of each wall part, in metres.
    """

    diffuse: FloatArray
    specular: FloatArray
    width: FloatArray
    tops: Sequence[Sequence[float]]

    def facets(self, plane: IntArray, z: FloatArray) -> IntArray:
        """Facets (N,) of points at heights z (N,) on planes (N,) of the room."""
        first = np.cumsum([0, *(len(tops) + 1 for tops in self.tops)])
        walls = len(self.tops)
        facet = first[np.minimum(plane, walls)] + np.maximum(plane - walls, 0)
        for wall, tops in enumerate(self.tops):
            if tops:
                here = np.flatnonzero(plane == wall)
                facet[here] += np.searchsorted(tops, z[here])
        return facet


def landings(
    prism: Prism,
    linings: Linings,
    source: Source,
    z: float,
    count: int,
    random: np.random.Generator,
    step: Callable[[], None],
) -> IntArray:
    """How often each of ``count`` photons of a lamp passes the level z downward, shape (count,).

    Where z is the room's bottom its landings there are counted. ``step`` is called often, and
    may raise to stop the work. Something in the room must absorb.
    """
    times = np.zeros(count, dtype=np.intp)
    for first in range(0, count, _AT_A_TIME):
        here = times[first : first + _AT_A_TIME]
        origin, direction = source.photons(len(here), random)
        ray = np.arange(len(here))
        while ray.size:
            step()
            distance, plane = prism.first_hit(origin, direction)
            end = origin + distance * direction
            end[2, plane == prism.bottom] = prism.z0
            here[ray[(origin[2] > z) & (end[2] <= z)]] += 1
            facet = linings.facets(plane, end[2])
            fate = random.random(ray.size)
            diffuse, specular = linings.diffuse[facet], linings.specular[facet]
            alive = np.flatnonzero(fate < diffuse + specular)
            origin, ray = end[:, alive], ray[alive]
            direction = _turned(
                prism,
                direction[:, alive],
                plane[alive],
                np.where(fate < diffuse, -1.0, linings.width[facet])[alive],
                random,
            )
    return times


def _turned(
    prism: Prism,
    direction: FloatArray,
    plane: IntArray,
    width: FloatArray,
    random: np.random.Generator,
) -> FloatArray:
    """Directions (3, N) after a surface.

    A negative lobe width stands for a matt surface.
    """
    after = prism.reflect(direction, plane)
    inward = -prism.plane_normals()
    matt = np.flatnonzero(width < 0)
    normal = inward[:, plane[matt]]
    one = prism.plane_tangents[:, plane[matt]]
    other = np.cross(normal, one, axis=0)
    x, y, up = cosine_directions(*random.random((2, matt.size)))
    after[:, matt] = x * one + y * other + up * normal
    rough = np.flatnonzero(width >= SMOOTH)
    if rough.size:
        scattered = scatter(direction[:, rough], inward[:, plane[rough]], width[rough], random)
        after[:, rough] = scattered.after
    return after
