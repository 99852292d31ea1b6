"""Wrinkled mirrors: a reflection spread about the mirror direction.

The surface is taken as many small mirrors, tilted by the GGX distribution of width α
(Walter et al., 2007, Microfacet Models for Refraction through Rough Surfaces, EGSR), each
reflecting all light, with separable Smith shadowing and one reflection only. Light that
would need a second one is lost, as it mostly is in the creases of a film: the wider the
lobe, the less than ρ_s comes back.
"""

from __future__ import annotations

import numpy as np

from planner.light.prism import FloatArray

SMOOTH = 0.01
"""Below this width a surface is a plain mirror: its lobe is narrower than any lamp."""


def scatter(
    direction: FloatArray,
    normal: FloatArray,
    width: FloatArray,
    random: np.random.Generator,
) -> tuple[FloatArray, FloatArray]:
    """Reflect rays from wrinkled mirrors.

    Parameters
    ----------
    direction
        Unit directions before reflection, shape (3, n).
    normal
        Unit normals on the lit side, shape (3, n).
    width
        GGX width α of each surface, shape (n,).

    Returns
    -------
    Directions after reflection (3, n) and the share of light that goes that way (n,); 0
    where it would go into the surface. Facets are drawn among those visible to the ray
    (Heitz, 2018, Sampling the GGX Distribution of Visible Normals, JCGT 7(4)), so that the
    share is the shadowing of the outgoing ray alone.
    """
    x_axis, y_axis = _tangents(normal)
    view = -direction
    local = np.stack([(view * axis).sum(axis=0) for axis in (x_axis, y_axis, normal)])
    facet = _visible_facet(local, width, random)
    world = facet[0] * x_axis + facet[1] * y_axis + facet[2] * normal
    after = direction - 2.0 * (direction * world).sum(axis=0) * world
    cosine = (after * normal).sum(axis=0)
    safe = np.maximum(cosine, 1e-9)
    tangent_squared = np.maximum(1.0 - safe**2, 0.0) / safe**2
    share = np.where(cosine > 1e-9, 2.0 / (1.0 + np.sqrt(1.0 + width**2 * tangent_squared)), 0.0)
    return after, share


def _visible_facet(view: FloatArray, width: FloatArray, random: np.random.Generator) -> FloatArray:
    """Normals of facets drawn as seen from ``view``, both (3, n) in the surface's frame."""
    stretched = np.stack([width * view[0], width * view[1], view[2]])
    stretched /= np.sqrt((stretched**2).sum(axis=0))
    length = np.hypot(stretched[0], stretched[1])
    upright = length < 1e-7
    safe = np.where(upright, 1.0, length)
    first = np.stack(
        [
            np.where(upright, 1.0, -stretched[1] / safe),
            np.where(upright, 0.0, stretched[0] / safe),
            np.zeros_like(length),
        ]
    )
    second = np.cross(stretched.T, first.T).T
    u, v = random.random((2, view.shape[1]))
    radius, angle = np.sqrt(u), 2 * np.pi * v
    a, b = radius * np.cos(angle), radius * np.sin(angle)
    lean = 0.5 * (1.0 + stretched[2])
    b = (1.0 - lean) * np.sqrt(np.maximum(1.0 - a**2, 0.0)) + lean * b
    c = np.sqrt(np.maximum(1.0 - a**2 - b**2, 0.0))
    facet = a * first + b * second + c * stretched
    facet = np.stack([width * facet[0], width * facet[1], np.maximum(facet[2], 1e-9)])
    unit: FloatArray = facet / np.sqrt((facet**2).sum(axis=0))
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
