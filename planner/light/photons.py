"""Photons sent from a lamp: what mirrors do with its light.

They give the flux that arrives on each patch after at least one mirror, and tell which
images of the lamp the map sees (see ``images``). Light that has met no mirror yet is not
counted here: ``direct`` has its closed form.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from planner.light.chains import NO_IMAGES, NO_LANDINGS, Images, Landings, distinct_images
from planner.light.emission import Source
from planner.light.field import CellGrid
from planner.light.glints import Glints
from planner.light.paths import Arrival, Mirrors, mirror_chains
from planner.light.prism import FloatArray, IntArray, totals
from planner.light.surfaces import Surfaces

_MARKER = np.array([[0.0141421356], [0.0087355123], [0.0036127491]])
"""Offset of the marked point from the lamp's centre; odd, so that no two images share it."""


@dataclass(frozen=True)
class MirrorLight:
    """Mirrored light of a unit lamp.

    Flux on patches (P,); the images the map sees and where their photons landed; and flux on the
    cells (C,) by way of wrinkled mirrors, with the variance that chance leaves in it (C,).
    """

    patch_flux: FloatArray
    images: Images
    landings: Landings
    glints: FloatArray
    glint_variance: FloatArray


def follow_photons(
    surfaces: Surfaces,
    grid: CellGrid,
    source: Source,
    mirrors: Mirrors,
    count: int,
    evaluated: int,
    random: np.random.Generator,
    cutoff: float,
    step: Callable[[], None],
) -> MirrorLight:
    """Send ``count`` photons of equal flux and follow them through mirrors.

    ``evaluated`` is how many have their lobes evaluated (see ``glints``).
    """
    patch_flux, nothing = np.zeros(surfaces.patch_count), np.zeros(len(grid.inside))
    if not (mirrors.followed > cutoff).any():
        return MirrorLight(patch_flux, NO_IMAGES, NO_LANDINGS, nothing, nothing)
    wrinkled = mirrors.any_wrinkled
    glints = Glints(surfaces, grid, mirrors, count, evaluated, random) if wrinkled else None
    if glints is not None:
        glints.light_foot(source, count // 2)
    origin, direction = source.photons(count, random)
    place = np.repeat(np.array(source.centre)[:, None] + _MARKER, count, axis=1)
    chain: list[np.ndarray[tuple[int], np.dtype[np.int16]]] = []
    seen, weights, rays, lengths, cells = [], [], [], [], []
    plane_is_bottom = grid.on_bottom_of(surfaces.prism)
    for arrival in mirror_chains(surfaces, origin, direction, mirrors, cutoff, random):
        step()
        met = len(chain)
        if glints is not None:
            lands = _lands(arrival, grid.z, surfaces.prism.bottom if plane_is_bottom else None)
            glints.add(arrival, lands)
        if met:
            patch_flux += totals(
                surfaces.texel_patch[arrival.texel], arrival.weight, surfaces.patch_count
            )
            lands = _lands(arrival, grid.z, surfaces.prism.bottom if plane_is_bottom else None)
            if glints is not None and arrival.wrinkled is not None:
                lands = lands[~arrival.wrinkled[lands]]
            landed = arrival.ray.take(lands)
            seen.append(place.take(landed, axis=1))
            weights.append(arrival.weight.take(lands))
            rays.append(landed)
            way = (grid.z - arrival.origin[2, lands]) / arrival.direction[2, lands]
            end = arrival.origin[:2, lands] + way * arrival.direction[:2, lands]
            cells.append(grid.slot_of(*end))
            lengths.append(np.full(len(lands), met, dtype=np.int16))
        if met == 0:
            place = surfaces.prism.reflect_points(place, arrival.plane)
        else:
            still = place.take(arrival.ray, axis=1)
            place[:, arrival.ray] = surfaces.prism.reflect_points(still, arrival.plane)
        planes = np.full(count, -1, dtype=np.int16)
        planes[arrival.ray] = arrival.plane
        chain.append(planes)
    images, landings = NO_IMAGES, NO_LANDINGS
    if seen:
        flux = np.concatenate(weights) / count
        images, whose = distinct_images(
            surfaces,
            np.concatenate(seen, axis=1),
            flux,
            np.concatenate(cells),
            len(grid.inside),
            np.stack(chain, axis=1),
            np.concatenate(rays),
            np.concatenate(lengths),
        )
        landings = Landings(whose, np.concatenate(cells), flux)
    spread = (nothing, nothing) if glints is None else glints.flux()
    return MirrorLight(patch_flux / count, images, landings, *spread)


def _lands(arrival: Arrival, z: float, bottom: int | None) -> IntArray:
    """Which arrivals reach the map's plane from above on their last leg."""
    if bottom is not None:
        return np.flatnonzero(arrival.plane == bottom)
    end = arrival.origin[2] + arrival.distance * arrival.direction[2]
    return np.flatnonzero((arrival.origin[2] > z) & (end <= z))
