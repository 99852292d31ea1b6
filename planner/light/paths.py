"""Mirror chains: rays followed from surface to surface as long as mirrors carry them.

A ray that meets a surface arrives there with its full weight; the share ρ_s goes on as
from a mirror. What is reflected diffusely is not followed: the exchange accounts for it.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from planner.light.lobes import SMOOTH, Scattered, scatter
from planner.light.prism import FloatArray, IntArray
from planner.light.surfaces import Surfaces

MAX_MIRRORS = 400
"""Longest chain; only near-perfect mirrors facing each other ever come near it."""


@dataclass(frozen=True)
class Mirrors:
    """What facets do to mirrored light: ρ_s and the width of its lobe, both (F,).

    ``guide``, if given, is the ρ_s that decides how far chains are followed. Two runs with
    one guide and one seed follow the very same chains, so that their difference shows what
    ``specular`` changed and no chance.
    """

    specular: FloatArray
    width: FloatArray
    guide: FloatArray | None = None

    @property
    def followed(self) -> FloatArray:
        """ρ_s by which chains are followed, (F,)."""
        return self.specular if self.guide is None else self.guide

    @property
    def flat_specular(self) -> FloatArray:
        """ρ_s of the flat mirrors alone, (F,): only these show images."""
        return np.where(self.width > SMOOTH, 0.0, self.specular)

    @property
    def any_wrinkled(self) -> bool:
        """Whether any facet spreads its mirrored light."""
        return bool(((self.width > SMOOTH) & (self.followed > 0)).any())


@dataclass(frozen=True)
class Arrival:
    """One stage of all chains: what arrived where.

    ``ray`` indexes the rays as started; ``origin``, ``direction`` (3, n) and ``distance``
    (n,) describe the leg that ended at ``plane`` on ``texel`` with ``weight``; ``guide`` is
    what the weight would be by ``Mirrors.guide``. ``wrinkled``
    (n,) tells whether the ray has met a wrinkled mirror before it arrived. Where the leg
    began on one, ``rough`` numbers those among the n and ``scattered`` tells how they left.
    """

    ray: IntArray
    origin: FloatArray
    direction: FloatArray
    distance: FloatArray
    plane: IntArray
    texel: IntArray
    weight: FloatArray
    guide: FloatArray
    wrinkled: npt.NDArray[np.bool_] | None
    rough: IntArray
    scattered: Scattered | None


def mirror_chains(
    surfaces: Surfaces,
    origin: FloatArray,
    direction: FloatArray,
    mirrors: Mirrors,
    cutoff: float,
    random: np.random.Generator,
) -> Iterator[Arrival]:
    """Follow rays (3, N) until less than ``cutoff`` of their weight would be mirrored on.

    Every ray arrives at least once. Chance enters only where mirrors are wrinkled.
    """
    prism = surfaces.prism
    ray = np.arange(origin.shape[1])
    weight = np.ones(origin.shape[1])
    texel_specular = mirrors.specular.take(surfaces.texel_facet)
    wrinkled = np.zeros(origin.shape[1], dtype=bool) if mirrors.any_wrinkled else None
    guided = mirrors.guide is not None
    texel_guide = mirrors.followed.take(surfaces.texel_facet) if guided else texel_specular
    guide = weight
    rough, scattered = np.empty(0, dtype=np.intp), None
    for met in range(MAX_MIRRORS):
        distance, plane = prism.first_hit(origin, direction)
        end = origin + distance * direction
        texel = surfaces.texel_of(end, plane)
        yield Arrival(
            ray,
            origin,
            direction,
            distance,
            plane,
            texel,
            weight,
            guide,
            wrinkled,
            rough,
            scattered,
        )
        onward = weight * texel_specular.take(texel)
        guide = guide * texel_guide.take(texel) if guided else onward
        # The longer a chain, the more evenly its light is spread and the less it matters.
        alive = np.flatnonzero(guide > cutoff * (1 + met / 30) ** 2)
        if alive.size == 0:
            return
        if alive.size < ray.size:
            direction, end = direction.take(alive, axis=1), end.take(alive, axis=1)
            plane, ray, onward = plane.take(alive), ray.take(alive), onward.take(alive)
            guide, texel = guide.take(alive), texel.take(alive)
        after = prism.reflect(direction, plane)
        if wrinkled is not None:
            width = mirrors.width.take(surfaces.texel_facet.take(texel))
            rough, scattered = np.flatnonzero(width > SMOOTH), None
            wrinkled = wrinkled.take(alive)
            if rough.size:
                normal = -prism.plane_normals().take(plane.take(rough), axis=1)
                scattered = scatter(
                    direction.take(rough, axis=1), normal, width.take(rough), random
                )
                after[:, rough] = scattered.after
                wrinkled[rough] = True
        direction, origin, weight = after, end, onward
