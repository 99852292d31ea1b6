"""Small bright spots on walls and undersides, seen from the map without chance.

A lamp close to a wall lights a spot that few of a cell's rays would find, each of them with
much light; so does one that shines up into its own housing. Such texels are taken out of
what rays see directly and added in closed form: the configuration factor of a rectangle on a
wall, or of one level, for a horizontal element below it.
"""

from __future__ import annotations

import numpy as np

from planner.light.direct import Step, between, visible
from planner.light.field import CellGrid
from planner.light.prism import FloatArray, IntArray, totals
from planner.light.surfaces import Surfaces

_BRIGHT = 10.0
"""Times the mean direct light on all surfaces from which a texel counts as a spot."""


def bright_texels(surfaces: Surfaces, density: FloatArray, most: int) -> IntArray:
    """Texels on walls and undersides of boxes that a lamp lights far more than the rest.

    The strongest come first, ``most`` at most.
    ``density`` (T,) is its direct flux density: chosen by this and not by what is reflected
    of it, spots stay the same whatever the linings.
    """
    mean = float(density @ surfaces.texel_area) / max(float(surfaces.texel_area.sum()), 1e-12)
    walls = surfaces.prism.wall_count
    plane = surfaces.facet_plane[surfaces.texel_facet]
    may_be = (plane < walls) | (plane >= walls + 2) & (surfaces.texel_normal[2] < -0.5)
    may_be &= ~surfaces.prism.leaning[plane]
    bright = np.flatnonzero(may_be & (density > _BRIGHT * mean) & (density > 0))
    strength = density[bright] * surfaces.texel_area[bright]
    return bright[np.argsort(-strength)][:most]


def light_of_spots(
    surfaces: Surfaces,
    grid: CellGrid,
    texels: IntArray,
    exitance: FloatArray,
    shade: int,
    step: Step,
) -> FloatArray:
    """Flux density on the cells (C,) straight from some spots of exitance (T,).

    ``shade`` are the points along an edge of a cell in which something hides a spot in part.
    ``step`` is called often and may raise to stop.
    """
    receivers, cell, share = grid.receivers(averaged=True)
    factor = _factors(surfaces, texels, receivers, step)
    centres = surfaces.texel_centre[:, texels]
    crowd = between(surfaces.prism, receivers, centres)
    if crowd is None:
        return totals(cell, share * (factor @ exitance[texels]), len(grid.inside))
    # A spot is small: mostly what hides it from a cell hides it from all of the cell.
    middle, _, _ = grid.receivers(averaged=False)
    seen = visible(surfaces.prism, crowd, middle, centres, step)
    factor *= seen[cell]
    result = totals(cell, share * (factor @ exitance[texels]), len(grid.inside))
    mixed = grid.unlike_neighbours(seen.mean(axis=1))
    receivers, cell, share = grid.gauss_points(mixed, shade)
    factor = _factors(surfaces, texels, receivers, step)
    factor *= visible(surfaces.prism, crowd, receivers, centres, step)
    result[mixed] = totals(cell, share * (factor @ exitance[texels]), len(result))[mixed]
    return result


def _factors(surfaces: Surfaces, texels: IntArray, receivers: FloatArray, step: Step) -> FloatArray:
    """Configuration factors from upward elements (3, M) to texels, shape (M, n)."""
    factor = np.empty((receivers.shape[1], len(texels)))
    level = surfaces.texel_normal[2, texels] < -0.5
    size = max(1, _PAIRS // max(1, len(texels)))
    for start in range(0, len(factor), size):
        step()
        some, part = receivers[:, start : start + size], factor[start : start + size]
        part[:, ~level] = _wall_factors(surfaces, texels[~level], some)
        part[:, level] = _level_factors(surfaces, texels[level], some)
    return factor


_PAIRS = 1 << 17
"""Pairs of element and texel taken at a time."""


def _wall_factors(surfaces: Surfaces, texels: IntArray, receivers: FloatArray) -> FloatArray:
    """Configuration factors from upward elements (3, M) to wall texels, shape (M, n).

    With the element at the foot of a perpendicular at distance c from the wall, a rectangle
    from the foot, b along the wall and a high, has
    F = [atan(b/c) - c/√(a²+c²) atan(b/√(a²+c²))] / 2π
    (Siegel and Howell, Thermal Radiation Heat Transfer, appendix of configuration factors);
    any other rectangle on the wall is a sum of four of these.
    """
    plane = surfaces.facet_plane[surfaces.texel_facet[texels]]
    tangent = surfaces.prism.tangents[plane]
    normal = surfaces.prism.normals[plane]
    centre = surfaces.texel_centre[:, texels]
    half = np.stack([np.sqrt((e**2).sum(axis=0)) / 2 for e in surfaces.texel_edges(texels)], axis=1)
    dx = centre[0] - receivers[0, :, None]
    dy = centre[1] - receivers[1, :, None]
    along = dx * tangent[:, 0] + dy * tangent[:, 1]
    away = np.maximum(dx * normal[:, 0] + dy * normal[:, 1], 1e-9)
    up = centre[2] - receivers[2, :, None]
    low = np.maximum(up - half[:, 1], 0.0)
    high = np.maximum(up + half[:, 1], 0.0)
    left, right = along - half[:, 0], along + half[:, 0]

    def corner(a: FloatArray, b: FloatArray) -> FloatArray:
        slant = np.hypot(a, away)
        factor: FloatArray = np.arctan(b / away) - away / slant * np.arctan(b / slant)
        return factor

    total = corner(high, right) - corner(high, left) - corner(low, right) + corner(low, left)
    factors: FloatArray = np.maximum(total, 0.0) / (2 * np.pi)
    return factors


def _level_factors(surfaces: Surfaces, texels: IntArray, receivers: FloatArray) -> FloatArray:
    """Configuration factors from upward elements (3, M) to level texels, shape (M, n).

    With the element at distance c under the corner of a rectangle a x b,
    F = [a/√(a²+c²) atan(b/√(a²+c²)) + b/√(b²+c²) atan(a/√(b²+c²))] / 2π
    (source as above); any other place is a sum of four of these.
    """
    u, v = surfaces.texel_edges(texels)
    size = np.array([np.sqrt((edge**2).sum(axis=0)) for edge in (u, v)])
    away = surfaces.texel_centre[:, None, texels] - receivers[:, :, None]
    below = np.maximum(away[2], 1e-9)
    along, across = (
        np.einsum("imn,in->mn", away, edge / one) for edge, one in zip((u, v), size, strict=True)
    )

    def corner(a: FloatArray, b: FloatArray) -> FloatArray:
        p, q = np.hypot(a, below), np.hypot(b, below)
        factor: FloatArray = a / p * np.arctan(b / p) + b / q * np.arctan(a / q)
        return factor

    left, right = along - size[0] / 2, along + size[0] / 2
    front, back = across - size[1] / 2, across + size[1] / 2
    total = corner(right, back) - corner(left, back) - corner(right, front) + corner(left, front)
    # Between the boxes of a row there is nothing.
    share = surfaces.texel_area[texels] / size.prod(axis=0)
    factors: FloatArray = np.where(away[2] > 0, total, 0.0) * share / (2 * np.pi)
    return factors
