"""Wrinkled mirrors: a reflection spread about the mirror direction.

The surface is taken as many small mirrors, tilted by the GGX distribution of width α
(Walter et al., 2007, Microfacet Models for Refraction through Rough Surfaces, EGSR), in
Smith's arrangement: heights and tilts unrelated. Each small mirror reflects all light, and
light is followed from one to the next until it gets away (Heitz, Hanika, d'Eon and
Dachsbacher, 2016, Multiple-Scattering Microfacet BSDFs with the Smith Model, ACM Trans.
Graph. 35(4) 58). So nothing is lost at any width or angle, and the lobe is reciprocal.

Directions are unit vectors in the frame of the surface, z its normal on the lit side. A
height inside the wrinkles is told by its ``depth``: the share C of the surface that lies
lower, 1 above all of it. A ray up from there gets away with probability C^Λ.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

import numpy as np
import numpy.typing as npt

from planner.light.prism import FloatArray, IntArray
from planner.light.sequences import shifted_by

AnyFloats = npt.NDArray[np.floating[Any]]

SMOOTH = 0.01
"""Below this width a surface is a plain mirror: its lobe is narrower than any lamp."""

_MOST_BOUNCES = 60
"""Bounces after which light is let out; less than a millionth of it is left by then."""


@dataclass(frozen=True)
class Bounce:
    """One bounce of some rays inside the wrinkles.

    ``ray`` (n,) numbers the rays; ``view`` (3, n) points to where each comes from, ``depth``
    (n,) is where it meets a facet, ``after`` (3, n) where it goes from there, and ``leaves``
    (n,) whether that takes it away from the surface. The depth of a first bounce is None
    where only its mean matters.
    """

    ray: IntArray
    view: FloatArray
    depth: FloatArray | None
    width: FloatArray
    after: FloatArray
    leaves: npt.NDArray[np.bool_]

    def take(self, which: IntArray) -> Bounce:
        """Some of the rays of a bounce."""
        return Bounce(
            self.ray.take(which),
            self.view.take(which, axis=1),
            None if self.depth is None else self.depth.take(which),
            self.width.take(which),
            self.after.take(which, axis=1),
            self.leaves.take(which),
        )


def bounces(view: FloatArray, width: FloatArray, random: np.random.Generator) -> Iterator[Bounce]:
    """Follow rays that come from ``view`` (3, n) through wrinkles of ``width`` (n,)."""
    ray = np.arange(width.size)
    depth = random.random(width.size) ** (1.0 / (1.0 + shading(view[2], width)))
    for count in range(_MOST_BOUNCES):
        facet = visible_facet(view, width, random.random((2, ray.size)))
        after = 2.0 * (view * facet).sum(axis=0) * facet - view
        up = after[2] > 0
        shade = shading(np.abs(after[2]), width)
        fate = random.random(ray.size)
        leaves = up & (fate < depth**shade)
        if count == _MOST_BOUNCES - 1:
            after[2], leaves = np.abs(after[2]), np.ones_like(leaves)
        yield Bounce(ray, view, depth if count else None, width, after, leaves)
        stays = np.flatnonzero(~leaves)
        if stays.size == 0:
            return
        # Where the way to the next facet ends: up with density C^Λ falling, down likewise.
        power = np.where(up, -1.0 / np.maximum(shade, 1e-12), 1.0 / (1.0 + shade)).take(stays)
        depth = np.minimum(depth.take(stays) * fate.take(stays) ** power, 1.0)
        ray, width, view = ray.take(stays), width.take(stays), -after.take(stays, axis=1)


def shading(cosine: FloatArray, width: FloatArray) -> FloatArray:
    """Smith's Λ for GGX: 1 / (1 + Λ) of the surface shows under this cosine (positive)."""
    squared = np.maximum(cosine * cosine, 1e-18)
    lengthened: FloatArray = 0.5 * (np.sqrt(1.0 + width**2 * (1.0 / squared - 1.0)) - 1.0)
    return np.maximum(lengthened, 0.0)


def sent(bounce: Bounce, cosine: FloatArray, across: FloatArray) -> tuple[FloatArray, FloatArray]:
    """What a bounce sends in some direction per steradian, and the share that gets away, (n, m).

    ``cosine`` (n, m) is that of the direction to the normal and ``across`` (n, m) to the
    bounce's ``view``. With D the density of facets, h the half vector and σ the area of
    facets seen from the view, D(h) / 4σ goes there (see ``towards``), of which C^Λ gets away;
    at the first bounce its mean over all depths, (1 + Λ_in) / (1 + Λ_in + Λ_out).
    """
    kind = cosine.dtype
    width, z = bounce.width[:, None].astype(kind), bounce.view[2][:, None].astype(kind)
    squared = width * width
    # Half vector (view + out) / |view + out|: only its height is needed.
    height = z + cosine
    tilt = 1.0 - height * height / np.maximum(2.0 + 2.0 * across, 1e-12) * (1.0 - squared)
    seen = 2.0 * (z + np.sqrt(z * z + squared * (1.0 - z * z)))
    out = np.maximum(cosine, 1e-9)
    shade = shading(out, width)
    if bounce.depth is None:
        into = 1.0 + shading(z, width)
        away = into / (into + shade)
    else:
        away = np.exp(shade * np.log(np.maximum(bounce.depth, 1e-300))[:, None].astype(kind))
    share: FloatArray = squared / (np.pi * tilt * tilt * seen)
    share *= (cosine > 0) & (height > 0)
    return share, away


def sent_towards(bounce: Bounce, frame: FloatArray, direction: FloatArray) -> FloatArray:
    """Share per steradian that each bounce (n) sends in one direction (3, n) of the room.

    ``frame`` (3, 3, n) are the axes of the surfaces (see ``Scattered``).
    """
    cosine = (frame[2] * direction).sum(axis=0)
    view = np.einsum("kin,kn->in", frame, bounce.view)
    across = (view * direction).sum(axis=0)
    share, away = sent(bounce, cosine[:, None], across[:, None])
    share *= away
    return share[:, 0]


def sent_anew(bounce: Bounce, count: int, random: np.random.Generator) -> FloatArray:
    """Directions (3, n, count) a bounce may send light in, well spread over its lobe.

    Some point below the surface. Their density is the first that ``sent`` tells. In half the
    digits: they are many, and each is one of many that would do as well.
    """
    uniform = shifted_by(random.random((2, bounce.ray.size)), count).astype(np.float32)
    view = bounce.view[:, :, None].astype(np.float32)
    width = bounce.width[:, None].astype(np.float32)
    facet = visible_facet(np.broadcast_to(view, (3, *uniform.shape[1:])), width, uniform)
    after: FloatArray = 2.0 * (view * facet).sum(axis=0) * facet - view
    return after


@dataclass(frozen=True)
class Scattered:
    """What wrinkled mirrors did to some rays.

    ``frame`` (3, 3, n) holds the two tangents and the normal of each surface, ``after``
    (3, n) the directions, in the room; ``bounces`` what happened between.
    """

    frame: FloatArray
    after: FloatArray
    bounces: list[Bounce]


def scatter(
    direction: FloatArray, normal: FloatArray, width: FloatArray, random: np.random.Generator
) -> Scattered:
    """Reflect rays (3, n) of the room from wrinkled mirrors of these normals and widths."""
    frame = np.stack([*_tangents(normal), normal])
    view = -np.einsum("kin,in->kn", frame, direction)
    # A ray along the surface has met it all the same.
    view[2] = np.maximum(view[2], 1e-9)
    after = np.empty_like(direction)
    met = []
    for bounce in bounces(view, width, random):
        gone = bounce.ray[bounce.leaves]
        after[:, gone] = bounce.after[:, bounce.leaves]
        met.append(bounce)
    return Scattered(frame, np.einsum("kin,kn->in", frame, after), met)


def visible_facet(view: AnyFloats, width: AnyFloats, uniform: AnyFloats) -> FloatArray:
    """Normals (3, n) of facets drawn as seen from ``view`` (3, n), above or below the surface.

    ``uniform`` (2, n) are the random numbers. Dupuy and Benyoub (2023), Sampling Visible GGX
    Normals with Spherical Caps, Computer Graphics Forum 42(8).
    """
    x, y, z = width * view[0], width * view[1], view[2]
    along = 1.0 / np.sqrt(x * x + y * y + z * z)
    x, y, z = x * along, y * along, z * along
    # Any direction around does as well as any other: half the digits take a tenth of the time.
    angle = (2 * np.pi * uniform[0]).astype(np.float32)
    up = (1.0 - uniform[1]) * (1.0 + z) - z
    radius = np.sqrt(np.clip(1.0 - up * up, 0.0, 1.0))
    x = width * (x + radius * np.cos(angle))
    y = width * (y + radius * np.sin(angle))
    z = np.maximum(z + up, 1e-12)
    unit: FloatArray = np.stack([x, y, z])
    unit /= np.sqrt(x * x + y * y + z * z)
    return unit


def _tangents(normal: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Two unit vectors that complete each normal to a frame."""
    steep = np.abs(normal[2]) > 0.5
    first = np.where(
        steep,
        np.stack([np.ones_like(normal[0]), 0 * normal[0], 0 * normal[0]]),
        np.stack([-normal[1], normal[0], 0 * normal[0]]),
    )
    first = first - (first * normal).sum(axis=0) * normal
    first = first / np.sqrt((first**2).sum(axis=0))
    return first, np.cross(normal.T, first.T).T
