"""Lamps seen in mirrors.

Photons show which chains of mirrors carry lamp light to the map. Each chain is one image
of the lamp: reflected in the planes of the chain, it gives the exact closed form of the
direct light once more, weighted by the specular reflectances met on the way. In a box of
undivided walls that weight belongs to the image; elsewhere the line from map to image is
followed back through the mirrors, which tells both whether the image is seen from there
and what the mirrors leave of it.
"""

from __future__ import annotations

import math
from collections.abc import Callable

import numpy as np

from planner.light.chains import Images
from planner.light.close_up import NEAREST, ComplexArray, averaged
from planner.light.direct import irradiance
from planner.light.emission import Source
from planner.light.field import CellGrid
from planner.light.partly import connected, share_kept
from planner.light.prism import FloatArray, IntArray, totals
from planner.light.sequences import shifted_points
from planner.light.surfaces import Surfaces

_MOST_IMAGES, _FEWEST_PHOTONS = 1500, 4.0
"""An image is computed when it is due at least so many photons; fainter ones light the map
almost evenly, and the photons themselves tell how much they bring in all."""

_BRIGHT, _MOST_BRIGHT = 3e-4, 30
"""Share of the lamp's flux, were the whole map as bright as the cells it lights, from which an
image that mirrors show in part only is told by lines of its own; and most of these in a preview,
the brightest first."""

_BROAD, _MOST_BROAD = 2e-4, 120
"""The same of others: more points along each side, as what is seen ends over an image's breadth."""

_MOST_POINTS = 32
"""Points along an edge of a cell for an image of one point; of more of them that many fewer."""

_CHANCE = 0.018
"""Times 1 / ``edges``: share of the lamp's light on a cell that those lines may leave in doubt."""

_PAIRS = 1 << 18
"""Pairs of receiver and image point taken at a time, which bounds the memory."""


def light_of_images(
    surfaces: Surfaces,
    grid: CellGrid,
    coarse: CellGrid,
    source: Source,
    images: Images,
    specular: FloatArray,
    photons: int,
    tolerance: float,
    edges: int,
    most_passed: int,
    straight: float,
    step: Callable[[], None],
) -> tuple[FloatArray, float, float, IntArray | None]:
    """Flux density on the cells (C,) from the images of a unit lamp, and the faint rest.

    And the variance, mean over the cells, that chance leaves in images seen in part; and the
    images that were computed, None where all are seen whole from everywhere.

    ``photons`` is how many found the images. Those due too few of them (by their exact light on
    the ``coarse`` grid, which does not depend on chance) are not computed; the second value is
    their flux as the photons found it. ``tolerance`` is the
    relative error allowed to the quadrature over each image, ``edges`` twice the fewest points
    along a side of an image that mirrors show in part only; of the brightest lines of sight in
    proportion to its square tell. ``most_passed`` bounds the
    mirrors passed in all by images that must be followed line by line: near-perfect mirrors
    face to face have tens of thousands of images, each of them faint. ``straight`` is the flux
    density that has met no mirror, mean over the cells. ``step`` is
    called often and may raise to stop.
    """
    if not len(images):
        return np.zeros(len(grid.inside)), 0.0, 0.0, None
    steady, least = _steady(surfaces, images), 0.0
    if not steady:
        passed = np.cumsum((images.planes >= 0).sum(axis=1))
        tried = max(int(np.searchsorted(passed, most_passed)), 1)
        least = float(images.flux[tried]) if tried < len(images) else 0.0
        images = images.some(slice(tried))
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
    by_one = np.zeros(len(images), dtype=bool)
    if not steady:
        # Chosen for their photons are rather those that got many. The mean of what is not
        # chosen is that of the photons whose image the others would not have had chosen
        # (Robbins, 1956, Proc. 3rd Berkeley Symp. 1, 157).
        without = images.flux - images.single
        by_one = np.maximum(due, without) * photons < _FEWEST_PHOTONS
        by_one |= without < least
    # Seen in part, or of a narrow beam, an image may light a place that the coarse grid misses;
    # where all are seen whole, only what so many photons found cannot be there by chance.
    missed = images.flux * photons >= (16 if steady else 1) * _FEWEST_PHOTONS
    due[missed] = np.maximum(due, images.flux)[missed]
    strong = np.flatnonzero(due * photons >= _FEWEST_PHOTONS)
    strong = strong[np.argsort(-due[strong])][:_MOST_IMAGES]
    chosen = images.some(strong)
    faint = images.total - float(chosen.flux[~by_one[strong]].sum())
    peak = chosen.flux * np.maximum(chosen.gathered, 1.0)
    first = np.argsort(-peak)[: max(2 * edges**2, _MOST_BRIGHT)]
    is_bright = np.zeros(len(chosen), dtype=bool)
    is_bright[first[peak[first] > _BRIGHT]] = True
    is_bright &= not steady
    cells = _light_of_each(
        surfaces,
        grid,
        source,
        chosen.some(np.flatnonzero(~is_bright)),
        specular,
        tolerance=tolerance,
        edges=edges,
        together=True,
        step=step,
    )[:, 0]
    bright = chosen.some(np.flatnonzero(is_bright))
    whole = _light_of_each(
        surfaces,
        grid,
        source,
        bright,
        specular,
        tolerance=tolerance,
        edges=1,
        together=False,
        step=step,
        unhidden=True,
    )
    level = straight + images.total / float(coarse.inside_area.sum())
    share, doubt = share_kept(
        surfaces,
        grid,
        source,
        bright,
        specular,
        whole,
        lines=8 * edges**2,
        chance=_CHANCE / edges * level,
        step=step,
    )
    cells += (whole * share).sum(axis=1)
    variance = float(((whole * doubt) ** 2).sum(axis=1).mean())
    return cells, max(faint, 0.0), variance, None if steady else strong


def _light_of_each(
    surfaces: Surfaces,
    grid: CellGrid,
    source: Source,
    images: Images,
    specular: FloatArray,
    *,
    tolerance: float,
    edges: int,
    together: bool,
    step: Callable[[], None],
    unhidden: bool = False,
) -> FloatArray:
    """Flux density on the cells from each image, shape (C, n); summed to (C, 1) if together.

    ``unhidden`` takes mirrors for whole, perfect and unobstructed. If together, each line to
    an image begins at a place of its own in the cell: what hides one image in part of a cell
    hides many, and from its middle all would be seen, or none.
    """
    random = np.random.default_rng(7)
    result = np.zeros((len(grid.inside), 1 if together else len(images)))
    if not len(images):
        return result
    prism = surfaces.prism
    steady = _steady(surfaces, images)
    kept = np.ones(len(images)) if unhidden else _kept_by_mirrors(surfaces, images, specular)
    groups = _by_distance(surfaces, grid, source, images, 1 if steady else edges)
    for near, is_averaged, least, members in groups:
        if is_averaged and (unhidden or (steady and together)):
            ends = source.nodes(near, tolerance=tolerance, least=least)
            for some in [members] if together else members[:, None]:
                step()
                found = _averaged(grid, source, images.some(some), *ends, kept[some], step)
                result[:, 0 if together else some[0]] += found
            continue
        receivers, cell, share = grid.receivers(averaged=is_averaged and together)
        local, flux = source.nodes(near, tolerance=tolerance, least=least)
        if together and not steady:
            # A lamp without breadth has sharper edges, not fewer lines.
            times = -(-(least**2) // len(flux))
            local, flux = np.tile(local, times), np.tile(flux / times, times)
        batch = max(1, _PAIRS // (len(flux) * receivers.shape[1]))
        for start in range(0, len(members), batch):
            step()
            part = members[start : start + batch]
            chosen = images.some(part)
            nodes = chosen.of(local).reshape(3, -1)
            weights = np.tile(flux, len(chosen))
            if unhidden or steady:
                weights = weights * np.repeat(kept[part], len(flux))
            else:
                bases = np.tile(local, len(chosen))
                met = np.repeat(chosen.meets(prism.alike), len(flux), axis=0)
                places = receivers[:, :, None]
                if together:
                    u, v = shifted_points(len(cell), nodes.shape[1], 2, random)
                    places = grid.samples(u, v, cell)
                seen = connected(surfaces, places, nodes, bases, met, specular, step)
                weights = weights * seen
            values = irradiance(
                receivers,
                None,
                nodes,
                weights,
                source.profile,
                np.repeat(chosen.linear[:, 2, 2], len(flux)),
                axes=_axes(source, chosen, len(flux)),
                looks=_looks(source, chosen, len(flux)),
                group=nodes.shape[1] if together else len(flux),
                step=step,
            )
            if together:
                result[:, 0] += totals(cell, share * values[:, 0], len(result))
            elif receivers.shape[1] > len(result):
                for column, value in zip(part, values.T, strict=True):
                    result[:, column] += totals(cell, share * value, len(result))
            else:
                # One point stands for each cell.
                result[:, part] = values
    return result


def _beside_images(grid: CellGrid, source: Source, images: Images) -> ComplexArray:
    """How far the nearest of some images lies aside of each cell and, imaginary, above; (C,)."""
    ends = images.of(source.outline)
    centre, cells = ends.mean(axis=2), grid.receivers(averaged=False)[0][:2]
    reach = np.sqrt(((ends - centre[:, :, None])[:2] ** 2).sum(axis=0)).max(axis=1)
    aside = np.hypot(*(cells[:, :, None] - centre[:2, None])) - reach
    above = np.abs(ends[2] - grid.z).min()
    return np.asarray(np.maximum(aside.min(axis=1), 0.0) + 1j * max(float(above), NEAREST))


def _averaged(
    grid: CellGrid,
    source: Source,
    images: Images,
    local: FloatArray,
    flux: FloatArray,
    kept: FloatArray,
    step: Callable[[], None],
) -> FloatArray:
    """Flux density on the cells (C,) of images together, each seen whole; ``kept`` so far (n,)."""
    nodes, weights = images.of(local).reshape(3, -1), (kept[:, None] * flux).ravel()
    facing = np.repeat(images.linear[:, 2, 2], len(flux))
    axes, looks = (of(source, images, len(flux)) for of in (_axes, _looks))

    def light(points: FloatArray) -> FloatArray:
        return irradiance(
            points, None, nodes, weights, source.profile, facing, axes=axes, looks=looks, step=step
        )

    most = max(2, int(_MOST_POINTS / math.sqrt(nodes.shape[1])))
    return averaged(grid, source, light, _beside_images(grid, source, images), most=most)


def _axes(source: Source, images: Images, nodes: int) -> FloatArray | None:
    """The lamp's own axes as each image point turns them, where the profile needs them."""
    if not source.profile.turns_with_azimuth:
        return None
    # A mirror is its own inverse turned round: back through it to the lamp's axes.
    axes = source.axes()
    size = axes.shape[1]
    back = np.einsum("ij,nkj->ikn", axes, images.linear[:, :size, :size])
    return np.repeat(back, nodes, axis=2)


def _looks(source: Source, images: Images, nodes: int) -> FloatArray | None:
    """Where the axis of a tilted lamp looks as each image point shows it, (3, n nodes)."""
    looks = source.looks()
    return None if looks is None else np.repeat((images.linear @ looks).T, nodes, axis=1)


def _by_distance(
    surfaces: Surfaces, grid: CellGrid, source: Source, images: Images, edges: int
) -> list[tuple[float, bool, int, IntArray]]:
    """Images of like distance from the map share their quadrature; those near are averaged.

    For each group: distance rounded down, whether averaged over cells, the fewest points
    along a side (half of ``edges`` where an image is worth it), and its images.
    """
    low, high = surfaces.prism.corners.min(axis=0), surfaces.prism.corners.max(axis=0)
    place = images.of(np.array(source.centre)[:, None])[:, :, 0]
    aside = np.maximum(np.maximum(low[:, None] - place[:2], place[:2] - high[:, None]), 0.0)
    above = place[2] - grid.z
    if source.tilt:
        above = np.abs(images.of(source.outline)[2] - grid.z).min(axis=1)
    distance = np.hypot(np.hypot(*aside), above)
    # Rounded down in steps of half as much again.
    band = np.floor(np.log(np.maximum(distance, 0.05) / 0.05) / np.log(1.5)).astype(np.intp)
    index = np.arange(len(images))
    is_broad = (images.flux > _BROAD) & (index < _MOST_BROAD)
    least = np.where(is_broad, (edges + 1) // 2, 1)
    groups = []
    for kind in np.unique(band * (edges + 1) + least):
        rounded, points = divmod(int(kind), edges + 1)
        near = 0.05 * 1.5**rounded
        averaged = near < 10 * max(grid.step) or points > 1
        members = np.flatnonzero((band == rounded) & (least == points))
        groups.append((near, averaged, points, members))
    return groups


def _steady(surfaces: Surfaces, images: Images) -> bool:
    """Whether each image is seen whole, with one weight, from every cell.

    So it is in a box whose mirrors are undivided vertical walls.
    """
    prism = surfaces.prism
    square = prism.wall_count == 4 and prism.convex
    square = square and abs(float(prism.tangents[0] @ prism.tangents[1])) < 1e-9
    square = square and abs(float(prism.tangents[1] @ prism.tangents[2])) < 1e-9
    undivided = len(surfaces.facets) == prism.wall_count + 2
    return bool(square and undivided and images.planes.max(initial=-1) < prism.wall_count)


def _kept_by_mirrors(surfaces: Surfaces, images: Images, specular: FloatArray) -> FloatArray:
    """Product of ρ_s along the chain of each image (for undivided walls), shape (n,)."""
    of_plane = np.ones(surfaces.prism.plane_count + 1)
    of_plane[surfaces.facet_plane] = specular
    kept: FloatArray = of_plane[images.planes].prod(axis=1)
    return kept
