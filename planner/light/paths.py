"""Mirror chains: rays followed from surface to surface as long as mirrors carry them.

A ray that meets a surface arrives there with its full weight; the share ρ_s goes on as
from a mirror. What is reflected diffusely is not followed: the exchange accounts for it.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from planner.light.prism import FloatArray, IntArray
from planner.light.surfaces import Surfaces

MAX_MIRRORS = 400
"""Longest chain; only near-perfect mirrors facing each other ever come near it."""


@dataclass(frozen=True)
class Arrival:
    """One stage of all chains: what arrived where.

    ``ray`` indexes the rays as started; ``origin``, ``direction`` (3, n) and ``distance``
    (n,) describe the leg that ended at ``plane`` on ``texel`` with ``weight``.
    """

    ray: IntArray
    origin: FloatArray
    direction: FloatArray
    distance: FloatArray
    plane: IntArray
    texel: IntArray
    weight: FloatArray


def mirror_chains(
    surfaces: Surfaces,
    origin: FloatArray,
    direction: FloatArray,
    specular: FloatArray,
    cutoff: float,
) -> Iterator[Arrival]:
    """Follow rays (3, N) until less than ``cutoff`` of their weight would be mirrored on.

    ``specular`` is ρ_s of each facet. Every ray arrives at least once. The caller may not
    keep references into an arrival beyond the next step unless it copies them.
    """
    prism = surfaces.prism
    ray = np.arange(origin.shape[1])
    weight = np.ones(origin.shape[1])
    texel_specular = specular.take(surfaces.texel_facet)
    for _ in range(MAX_MIRRORS):
        distance, plane = prism.first_hit(origin, direction)
        end = origin + distance * direction
        texel = surfaces.texel_of(end, plane)
        yield Arrival(ray, origin, direction, distance, plane, texel, weight)
        onward = weight * texel_specular.take(texel)
        alive = np.flatnonzero(onward > cutoff)
        if alive.size == 0:
            return
        if alive.size < ray.size:
            direction, end = direction.take(alive, axis=1), end.take(alive, axis=1)
            plane, ray, onward = plane.take(alive), ray.take(alive), onward.take(alive)
        direction = prism.reflect(direction, plane)
        origin, weight = end, onward
