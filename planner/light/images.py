"""Lamps seen in mirrors.

Photons show which chains of mirrors carry lamp light to the map. Each chain is one image
of the lamp: reflected in the planes of the chain, it gives the exact closed form of the
direct light once more, weighted by the specular reflectances met on the way. In a box of
undivided walls that weight belongs to the image; elsewhere the line from map to image is
followed back through the mirrors, which tells both whether the image is seen from there
and what the mirrors leave of it.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from planner.light.direct import irradiance
from planner.light.emission import Source
from planner.light.field import CellGrid
from planner.light.prism import FloatArray, IntArray
from planner.light.surfaces import Surfaces
from planner.light.totals import totals

_FEWEST_PHOTONS = 4.0
"""An image is computed when it is due at least so many photons; fainter ones light the map
almost evenly, and the photons themselves tell how much they bring in all."""

_MOST_IMAGES = 1500

_BROAD, _BRIGHT = 2e-3, 2e-4
"""Shares of the lamp's flux from which an image that mirrors show in part only is taken with
more points along each side: the edge of what is seen blurs over its breadth."""

_MOST_BROAD = 30
"""Most images, strongest first, that get the full number of points."""

_PAIRS = 1 << 18
"""Pairs of receiver and image point taken at a time, which bounds the memory."""

_MOST_MIRRORS = 8000
"""Mirrors passed in all by images that must be followed line by line: near-perfect mirrors
face to face have tens of thousands of images, each of them faint and even."""

_MIX = np.array([0x9E3779B97F4A7C15 - (1 << 64), 0x632BE59BD9B4E019, 0x1B873593CC9E2D51])


@dataclass(frozen=True)
class Image:
    """One mirrored lamp: x -> A x + b, its planes in order, and the flux photons gave it."""

    linear: FloatArray
    shift: FloatArray
    planes: tuple[int, ...]
    flux: float


def distinct_images(
    surfaces: Surfaces,
    seen: FloatArray,
    weight: FloatArray,
    chains: npt.NDArray[np.int16],
    ray: IntArray,
    length: npt.NDArray[np.int16],
) -> list[Image]:
    """Distinct images among photon arrivals on the map, strongest first.

    ``seen`` (3, n) is where each arrival sees the lamp's marked point, which tells images
    apart; ``weight`` (n,) its flux; ``chains`` (N, longest) the planes every photon met,
    ``ray`` (n,) the photon and ``length`` (n,) how many of its planes came before.
    """
    if weight.size == 0:
        return []
    # Three rounded coordinates mixed into one number (odd multipliers, wrapping): sorting
    # one column is several times faster than sorting three.
    rounded = np.rint(seen * 1e5).astype(np.int64)
    mixed = (rounded * _MIX[:, None]).sum(axis=0)
    _, first, which = np.unique(mixed, return_index=True, return_inverse=True)
    flux = totals(which.ravel(), weight, len(first))
    order = np.argsort(-flux)
    met, depth = chains[ray[first[order]]], length[first[order]]
    mirrors = [surfaces.prism.plane_mirror(k) for k in range(surfaces.prism.plane_count)]
    mirror_linear, mirror_shift = (np.stack(parts) for parts in zip(*mirrors, strict=True))
    linear = np.repeat(np.eye(3)[None], len(order), axis=0)
    shift = np.zeros((len(order), 3))
    for stage in range(int(depth.max())):
        deep = np.flatnonzero(depth > stage)
        plane = met[deep, stage]
        linear[deep] = mirror_linear[plane] @ linear[deep]
        turned = np.einsum("kij,kj->ki", mirror_linear[plane], shift[deep])
        shift[deep] = turned + mirror_shift[plane]
    return [
        Image(linear[k], shift[k], tuple(met[k, : depth[k]].tolist()), float(flux[order[k]]))
        for k in range(len(order))
    ]


def light_of_images(
    surfaces: Surfaces,
    grid: CellGrid,
    source: Source,
    images: list[Image],
    specular: FloatArray,
    photons: int,
    tolerance: float,
    edges: int,
    step: Callable[[], None],
) -> tuple[FloatArray, float]:
    """Flux density on the cells (C,) from the images of a unit lamp, and the faint rest.

    ``photons`` is how many found the images. Images due too few of them (judged by their
    exact light on a coarse grid, so that the choice does not depend on chance) are not
    computed; the second value is their flux as the photons found it. ``tolerance`` is the
    relative error allowed to the quadrature over each image, ``edges`` the fewest points
    along a side of a bright image that mirrors show in part only. ``step`` is called often
    and may raise to stop.
    """
    if not images:
        return np.zeros(len(grid.inside)), 0.0
    coarse = CellGrid.over(surfaces.prism, 6, 6, grid.z)
    total = sum(image.flux for image in images)
    if not _steady(surfaces, images):
        passed = np.cumsum([len(image.planes) for image in images])
        images = images[: max(int(np.searchsorted(passed, _MOST_MIRRORS)), 1)]
    each = _light_of_each(
        surfaces,
        coarse,
        source,
        images,
        specular,
        tolerance=0.05,
        edges=1,
        together=False,
        step=step,
    )
    due = coarse.inside_area @ each
    if not _steady(surfaces, images):
        # Seen in part, an image may light a strip that the coarse grid misses.
        due = np.maximum(due, np.array([image.flux for image in images]))
    strong = np.flatnonzero(due * photons >= _FEWEST_PHOTONS)
    strong = strong[np.argsort(-due[strong])][:_MOST_IMAGES]
    chosen = [images[k] for k in strong]
    faint = total - sum(image.flux for image in chosen)
    cells = _light_of_each(
        surfaces,
        grid,
        source,
        chosen,
        specular,
        tolerance=tolerance,
        edges=edges,
        together=True,
        step=step,
    )
    return cells[:, 0], max(faint, 0.0)


def _light_of_each(
    surfaces: Surfaces,
    grid: CellGrid,
    source: Source,
    images: list[Image],
    specular: FloatArray,
    *,
    tolerance: float,
    edges: int,
    together: bool,
    step: Callable[[], None],
) -> FloatArray:
    """Flux density on the cells from each image, shape (C, n); summed to (C, 1) if together."""
    result = np.zeros((len(grid.inside), 1 if together else len(images)))
    if not images:
        return result
    steady = _steady(surfaces, images)
    kept = _kept_by_mirrors(surfaces, images, specular)
    groups = _by_distance(surfaces, grid, source, images, 1 if steady else edges)
    for (near, averaged, least), members in groups.items():
        receivers, cell, share = grid.receivers(averaged=averaged and together)
        local, flux = source.nodes(near, tolerance=tolerance, least=least)
        batch = max(1, _PAIRS // (len(flux) * receivers.shape[1]))
        for start in range(0, len(members), batch):
            step()
            part = members[start : start + batch]
            chosen = [images[k] for k in part]
            nodes = np.concatenate([m.linear @ local + m.shift[:, None] for m in chosen], axis=1)
            weights = np.tile(flux, len(chosen))
            if steady:
                weights = weights * np.repeat(kept[part], len(flux))
            else:
                bases = np.tile(local, len(chosen))
                met = np.repeat(_planes_met(surfaces, chosen), len(flux), axis=0)
                seen = _connected(surfaces, receivers, nodes, bases, met, specular, step)
                weights = weights * seen
            values = irradiance(
                receivers,
                None,
                nodes,
                weights,
                source.profile,
                np.repeat([m.linear[2, 2] for m in chosen], len(flux)),
                axes=_axes(source, chosen, len(flux)),
                group=nodes.shape[1] if together else len(flux),
            )
            columns = [0] if together else part
            for column, value in zip(columns, values.T, strict=True):
                result[:, column] += totals(cell, share * value, len(result))
    return result


def _axes(source: Source, images: list[Image], nodes: int) -> FloatArray | None:
    """The lamp's own axes as each image point turns them, where the profile needs them."""
    if not source.profile.turns_with_azimuth:
        return None
    # A mirror is its own inverse turned round: back through it to the lamp's axes.
    back = [source.axes() @ image.linear[:2, :2].T for image in images]
    return np.repeat(np.stack(back, axis=2), nodes, axis=2)


def _by_distance(
    surfaces: Surfaces, grid: CellGrid, source: Source, images: list[Image], edges: int
) -> dict[tuple[float, bool, int], list[int]]:
    """Images of like distance from the map share their quadrature; those near are averaged.

    Keys: distance rounded down, whether averaged over cells, and the fewest points along a
    side: ``edges`` for the brightest, half of it for bright ones.
    """
    low, high = surfaces.prism.corners.min(axis=0), surfaces.prism.corners.max(axis=0)
    groups: dict[tuple[float, bool, int], list[int]] = {}
    for index, image in enumerate(images):
        place = image.linear @ np.array(source.centre) + image.shift
        aside = np.maximum(np.maximum(low - place[:2], place[:2] - high), 0.0)
        distance = float(np.hypot(np.hypot(*aside), place[2] - grid.z))
        # Rounded down in steps of half as much again.
        near = 0.05 * 1.5 ** np.floor(np.log(max(distance, 0.05) / 0.05) / np.log(1.5))
        least = 1
        if image.flux > _BROAD and index < _MOST_BROAD:
            least = edges
        elif image.flux > _BRIGHT and index < 4 * _MOST_BROAD:
            least = (edges + 1) // 2
        averaged = bool(near < 10 * max(grid.step)) or least > 1
        groups.setdefault((float(near), averaged, least), []).append(index)
    return groups


def _planes_met(surfaces: Surfaces, images: list[Image]) -> npt.NDArray[np.bool_]:
    """Which planes each image's chain meets, shape (n, planes)."""
    met = np.zeros((len(images), surfaces.prism.plane_count), dtype=bool)
    for row, image in zip(met, images, strict=True):
        row[list(image.planes)] = True
    return met


def _steady(surfaces: Surfaces, images: list[Image]) -> bool:
    """Whether each image is seen whole, with one weight, from every cell.

    So it is in a box whose mirrors are undivided vertical walls.
    """
    prism = surfaces.prism
    square = prism.wall_count == 4 and prism.convex
    square = square and abs(float(prism.tangents[0] @ prism.tangents[1])) < 1e-9
    square = square and abs(float(prism.tangents[1] @ prism.tangents[2])) < 1e-9
    planes = {plane for image in images for plane in image.planes}
    undivided = len(surfaces.facets) == prism.wall_count + 2
    return bool(square and undivided and max(planes) < prism.wall_count)


def _kept_by_mirrors(surfaces: Surfaces, images: list[Image], specular: FloatArray) -> FloatArray:
    """Product of ρ_s along the chain of each image (for undivided walls), shape (n,)."""
    of_plane = np.ones(surfaces.prism.plane_count)
    of_plane[surfaces.facet_plane] = specular
    return np.array([of_plane[list(image.planes)].prod() for image in images])


def _connected(
    surfaces: Surfaces,
    receivers: FloatArray,
    nodes: FloatArray,
    bases: FloatArray,
    met: npt.NDArray[np.bool_],
    specular: FloatArray,
    step: Callable[[], None],
) -> FloatArray:
    """What mirrors leave of each image point at each receiver, 0 where unseen; (M, K).

    Follows the line from the receiver towards the image for its whole length through the
    mirrors; it must end on the lamp point itself. ``met`` (K, planes) tells which planes
    belong to the chain: a line that meets another is given up at once.
    """
    count, node_count = receivers.shape[1], nodes.shape[1]
    result = np.zeros((count, node_count))
    block = max(1, (1 << 15) // node_count)
    for start in range(0, count, block):
        part = receivers[:, start : start + block]
        delta = nodes[:, None, :] - part[:, :, None]
        shape = delta.shape[1:]
        left = np.sqrt((delta**2).sum(axis=0)).ravel()
        direction = delta.reshape(3, -1) / left
        origin = np.broadcast_to(part[:, :, None], delta.shape).reshape(3, -1)
        target = np.broadcast_to(bases[:, None, :], delta.shape).reshape(3, -1)
        # Only what comes from above is received.
        pair = np.flatnonzero(direction[2] > 1e-9)
        origin, direction, left = origin[:, pair], direction[:, pair], left[pair]
        found = np.zeros(delta[0].size)
        weight = np.ones(pair.size)
        node = pair % node_count
        while pair.size:
            step()
            distance, plane = surfaces.prism.first_hit(origin, direction)
            done = distance >= left - 1e-9
            end = origin + np.minimum(distance, left) * direction
            miss = np.abs(end[:, done] - target[:, pair[done]]).max(axis=0, initial=0.0)
            found[pair[done]] = np.where(miss < 1e-6, weight[done], 0.0)
            go = np.flatnonzero(~done & met[node, plane])
            texel = surfaces.texel_of(end[:, go], plane[go])
            onward = weight[go] * specular[surfaces.texel_facet[texel]]
            alive = onward > 1e-5
            go = go[alive]
            weight, pair, node = onward[alive], pair[go], node[go]
            left = left[go] - distance[go]
            direction = surfaces.prism.reflect(direction[:, go], plane[go])
            origin = end[:, go]
        result[start : start + block] = found.reshape(shape)
    return result
