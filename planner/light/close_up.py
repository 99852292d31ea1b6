"""Direct light on cells and texels, also where a lamp is so close that they are wide beside it."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import replace
from functools import partial
from typing import Any

import numpy as np
import numpy.typing as npt

from planner.light.boxes import Crowd
from planner.light.direct import Step, between, direct_on, from_lambert_panel, irradiance
from planner.light.emission import Profile, Source, TabulatedProfile
from planner.light.field import CellGrid
from planner.light.prism import FloatArray, IntArray, Prism, totals
from planner.light.sequences import shifted_points
from planner.light.surfaces import Surfaces

ComplexArray = npt.NDArray[np.complexfloating[Any, Any]]

NEAREST = 0.005
"""Metres; lamps hang at least twice as high."""

_TOLERANCE = 2e-6
_PHOTONS = 1 << 14
_AT_ONCE = 1e-7
"""Metres within which light ends in the box that begins where the lamp's face is."""

_HAIR = 1e-9

_HARDLY = 1e-3
"""Of so small a part of what is known to arrive the rest is not made by a factor: photons tell."""

_MOST = 32
"""Most points along each edge of a cell."""


_WHERE_CUT = 8
"""Points along each edge of a cell that the plane of a tilted lamp's face cuts."""


def direct_on_cells(
    grid: CellGrid, prism: Prism, source: Source, shade: int, step: Step, most: int = 1
) -> tuple[FloatArray, float]:
    """Direct flux density of a unit lamp on the cells of a map, shape (C,), as cell means.

    And the variance, mean over the cells, that chance leaves in it.
    Closed form, times the share that gets past what stands between. Where shadows end it is told
    by 20 ``shade²`` lines of sight, and by up to ``most`` times as many where light is in doubt.
    ``step`` is called often, here and below, and may raise to stop.
    """
    face = source.outline[2]
    if face.max() <= grid.z:
        return np.zeros(len(grid.inside)), 0.0
    near = max(float(face.min()) - grid.z, NEAREST)

    def unhidden(points: FloatArray) -> FloatArray:
        if source.tilt and source.is_lambert_panel:
            return from_lambert_panel(points, source)
        nodes, weights = source.nodes(near)
        return irradiance(
            points, None, nodes, weights, source.profile,
            axes=source.axes(), looks=source.looks(),
            closest=near if source.tilt else 1e-6, step=step,
        )  # fmt: skip

    beside = _beside_lamp(source, grid.receivers(averaged=False)[0][:2])
    cells = averaged(grid, source, unhidden, beside + 1j * near, _where_cut(grid, source))
    points, _, _ = grid.receivers(averaged=True)
    crowd = between(prism, points, source.outline)
    if crowd is None:
        return cells, 0.0
    seen, doubt = _share_seen(grid, prism, crowd, source, cells, 20 * shade**2, most, step)
    return cells * seen, float(((cells * doubt) ** 2).mean())


def averaged(
    grid: CellGrid,
    source: Source,
    light: Callable[[FloatArray], FloatArray],
    place: ComplexArray,
    least: npt.ArrayLike = 2,
    most: int = _MOST,
) -> FloatArray:
    """Means over the cells (C,) of a lamp's light, given at points (3, n).

    The lamp is at ``place`` (C,) from each, r + i h, and ``least`` to ``most`` points stand along
    an edge. Of a table of intensities, where no rule knows the kinks beforehand, cells are taken
    with twice as many until these tell nothing new; a lamp broad beside them smooths the kinks.
    """
    profile, edge = source.profile, max(grid.step)
    wanted = np.minimum(np.maximum(_points_needed(profile, place, edge), least), most)
    small = source.strips[:, 2:].max() < _SMOOTHS * edge
    table = profile if small and isinstance(profile, TabulatedProfile) else None
    if table is not None:
        many = _A_SEGMENT * edge / np.abs(place) / np.diff(table.theta).min()
        wanted = np.maximum(wanted, np.clip(np.ceil(many), 2, _FOR_A_BEAM).astype(np.intp))
    cells, which = np.zeros(len(grid.inside)), np.arange(len(grid.inside))
    while which.size:
        before = cells[which]
        cells[which] = 0.0
        for count in np.unique(wanted[which]):
            some = which[wanted[which] == count]
            all_alike = count == 2 and some.size == len(cells)
            points, cell, share = (
                grid.receivers(averaged=True) if all_alike else grid.gauss_points(some, int(count))
            )
            cells += totals(cell, share * light(points), len(cells))
        if table is None:
            break
        mean = float(np.average(cells, weights=grid.inside_area))
        news = np.abs(cells[which] - before) > _NEWS * mean
        which = which[news & (wanted[which] < most)]
        wanted = np.minimum(2 * wanted, most)
    return cells


_NEWS = 1e-3
"""What twice the points must change of a cell, as a share of the mean, for still more of them."""

_A_SEGMENT, _FOR_A_BEAM = 2.0, 6
"""Points along an edge to begin with for each segment of the table in sight, and at most."""

_SMOOTHS = 2.0
"""Edges of a cell that a lamp is long so that its kinks do not show."""


_FIRST_LOOK = 32
"""Lines of sight from each cell that tell where shadows end."""

_DOUBT = 0.01
"""What chance may leave in a cell, as a share of the mean, were its lines independent."""


def _share_seen(
    grid: CellGrid,
    prism: Prism,
    crowd: Crowd,
    source: Source,
    cells: FloatArray,
    lines: int,
    most: int,
    step: Step,
) -> tuple[FloatArray, FloatArray]:
    """Share of a lamp's direct light on each cell (C,) that nothing keeps away.

    And its standard error by two halves of the lines (C,). Lines run from points of the cell to
    points of the lamp, both spread evenly; many where a shadow ends in the cell or beside it, the
    more the more light there is (``cells``, as it were without shadows).
    """
    random = np.random.default_rng(3)
    look = partial(_seen_from, grid, prism, crowd, source, random=random, step=step)
    seen, doubt = look(np.arange(len(grid.inside)), _FIRST_LOOK)
    mixed = grid.unlike_neighbours(seen)
    seen[mixed], doubt[mixed] = look(mixed, lines)
    mean = float(np.average(cells, weights=grid.inside_area))
    chance = np.sqrt(seen * (1 - seen) / lines) * cells
    wanted = (chance[mixed] / max(_DOUBT * mean, 1e-300)) ** 2
    times = 2 ** np.ceil(np.log2(np.clip(wanted, 1, most))).astype(np.intp)
    for many in np.unique(times[times > 1]):
        which = mixed[times == many]
        seen[which], doubt[which] = look(which, lines * int(many))
    return seen, doubt


def _seen_from(
    grid: CellGrid,
    prism: Prism,
    crowd: Crowd,
    source: Source,
    which: IntArray,
    count: int,
    *,
    random: np.random.Generator,
    step: Step,
) -> tuple[FloatArray, FloatArray]:
    """As ``_share_seen`` for some cells, with ``count`` lines from each."""
    seen, doubt = np.empty((2, which.size))
    size = max(1, _LINES // count)
    for start in range(0, which.size, size):
        step()
        part = which[start : start + size]
        u = shifted_points(part.size, count, 5, random)
        places = grid.samples(u[0], u[1], part).reshape(3, -1)
        gap = source.points(*u[2:].reshape(3, -1)) - places
        length = np.sqrt((gap**2).sum(axis=0))
        gap /= length
        # Of a tilted lamp some may lie below the cells.
        light = source.profile.intensity(*source.towards(-gap)) * np.maximum(gap[2], 0.0)
        light /= length**2
        free = light * ~prism.blocked(crowd, places, gap, length)
        # Neighbours in the sequence go to different halves.
        total, got = (a.reshape(part.size, -1, 2).sum(axis=1) for a in (light, free))
        whole = np.maximum(total.sum(axis=1), 1e-300)
        seen[start : start + size] = got.sum(axis=1) / whole
        first, second = (got / np.maximum(total, 1e-300)).T
        doubt[start : start + size] = np.abs(first - second) / 2
    return seen, doubt


_LINES = 1 << 15
"""Lines of sight followed at a time."""


def _points_needed(profile: Profile, place: ComplexArray, edge: float) -> IntArray:
    """Gauss points along an ``edge`` for the light of a lamp at r + i h from its middle.

    r sideways and h down. As in ``Source.nodes`` the error falls as ρ^(-2n), here with the
    singularity at the complex distance z = (r + i h) / a, a half the edge, and
    ρ = |z + √(z² - 1)| (Trefethen, 2013, ch. 19). A beam narrower than a Lambertian one is as
    steep as a lamp hung nearer.
    """
    z = place / (profile.steepness * edge / 2)
    root = np.sqrt(z**2 - 1)
    ellipse = np.maximum(np.abs(z + root), np.abs(z - root))
    count = np.ceil(math.log(1 / _TOLERANCE) / (2 * np.log(ellipse)))
    points: IntArray = np.clip(count, 2, _MOST).astype(np.intp)
    return points


def _where_cut(grid: CellGrid, source: Source) -> IntArray:
    """Fewest points along an edge of each cell (C,): more where a tilted lamp's face cuts it.

    There the light may end in the midst of a cell.
    """
    points = np.full(len(grid.inside), 2)
    if source.tilt:
        before = source.before(grid.receivers(averaged=False)[0])
        cut = np.abs(before) < abs(math.sin(source.tilt)) * math.hypot(*grid.step) / 2
        points[cut] = _WHERE_CUT
    return points


def direct_on_texels(
    surfaces: Surfaces, source: Source, bottom_flux: float, shade: int, step: Step
) -> FloatArray:
    """Direct flux density on every texel for a unit lamp, shape (T,).

    Values are taken at texel centres, and as means over finer pieces near the lamp.
    ``bottom_flux`` is the flux known to reach the bottom (from the finer map, or negative
    when unknown); the other surfaces are scaled together so that nothing of the lamp's
    flux is lost or invented.
    """
    result = _unscaled(surfaces, source, shade, step)
    flux = result * surfaces.texel_area
    is_bottom = surfaces.facet_plane[surfaces.texel_facet] == surfaces.prism.bottom
    at_once = _met_at_once(surfaces, source)
    rest = max(1.0 - float(at_once.sum()), 0.0)
    is_scaled = np.ones_like(is_bottom)
    if bottom_flux >= 0:
        found = float(flux[is_bottom].sum())
        if found > _HARDLY * bottom_flux:
            result[is_bottom] *= bottom_flux / found
        else:
            result[is_bottom] = 0.0
            result += bottom_flux * _where_photons_end(surfaces, source, is_bottom)
        rest = max(rest - bottom_flux, 0.0)
        is_scaled = ~is_bottom
    total = float(flux[is_scaled].sum())
    if total > _HARDLY * rest:
        result[is_scaled] *= rest / total
    elif rest > 0:
        result[is_scaled] = 0.0
        result += rest * _where_photons_end(surfaces, source, is_scaled)
    return result + at_once / np.maximum(surfaces.texel_area, 1e-12)


def _met_at_once(surfaces: Surfaces, source: Source) -> FloatArray:
    """Flux that a box takes where it leaves a unit lamp, on its texels (T,).

    Light that a lamp sends up into its own housing falls on the face it comes from.
    """
    flux = np.zeros(surfaces.texel_count)
    if not (source.profile.emits_up and surfaces.prism.boxes):
        return flux
    origin, direction = source.photons(_PHOTONS, np.random.default_rng(1))
    distance, plane = surfaces.prism.first_hit(origin, direction)
    met = np.flatnonzero(distance < _AT_ONCE)
    texel = surfaces.texel_of(origin.take(met, axis=1), plane.take(met))
    return totals(texel, np.full(met.size, 1.0 / _PHOTONS), surfaces.texel_count)


def _where_photons_end(
    surfaces: Surfaces, source: Source, counted: npt.NDArray[np.bool_]
) -> FloatArray:
    """Flux density on texels by photons that end on counted ones, for flux 1 in all; (T,).

    For light so grazing, or so hidden, that it misses the centres of all texels it falls on.
    """
    origin, direction = source.photons(_PHOTONS, np.random.default_rng(1))
    distance, plane = surfaces.prism.first_hit(origin, direction)
    texel = surfaces.texel_of(origin + distance * direction, plane)
    count = totals(texel, counted[texel].astype(np.float64), surfaces.texel_count)
    return count / max(float(count.sum()), 1.0) / np.maximum(surfaces.texel_area, 1e-12)


_PIECES = (1, 2, 4, 8, 16)
"""Pieces along an edge that a texel may be taken in."""

_WIDE, _POINT = 2, 6
"""Pieces of a texel in its distance from a lamp: what a beam has of kinks a wide lamp smooths."""


def _unscaled(surfaces: Surfaces, source: Source, shade: int, step: Step) -> FloatArray:
    """Direct flux density on the texels, as computed; (T,)."""
    lit, centre, share = _parts_by_height(surfaces, source, _faces_lamp(surfaces, source))
    gap = _from_lamp(source, centre)
    size = surfaces.texel_size[lit]
    is_point = float(source.strips[:, 2:].max()) < NEAREST
    wanted = (_POINT if is_point else _WIDE) * size / np.maximum(gap, 1e-3)
    most = len(_PIECES) - (1 if is_point else 2)
    level = np.minimum(np.searchsorted(_PIECES, wanted), most)
    if source.tilt:
        cut = np.abs(source.before(centre)) < _depth(surfaces, source, lit)
        level[cut] = most
    # A texel cut by the footprint is taken at the centre of what is left.
    level[~surfaces.texel_whole[lit]] = 0
    near = np.maximum(gap, size / (2 * np.array(_PIECES)[level]))
    # Texels of like distance share their quadrature.
    band = np.floor(2 * np.log2(near)).astype(np.intp)
    kind = level + len(_PIECES) * (band - band.min(initial=0))
    result = np.zeros(surfaces.texel_count)
    for one in np.unique(kind):
        among = np.flatnonzero(kind == one)
        which, pieces = lit[among], _PIECES[one % len(_PIECES)]
        points, normals = centre[:, among], surfaces.texel_normal[:, which]
        if pieces > 1:
            offset = (np.arange(pieces) + 0.5) / pieces - 0.5
            a, b = (grid.ravel() for grid in np.meshgrid(offset, offset))
            u, v = surfaces.texel_edges(which)
            v = v * share[among]
            fine = points[:, :, None] + u[:, :, None] * a + v[:, :, None] * b
            points, normals = fine.reshape(3, -1), np.repeat(normals, pieces**2, axis=1)
        closest = float(near[among].min())
        values = direct_on(surfaces.prism, source, points, normals, closest, shade, step)
        values = values.reshape(len(which), -1).mean(axis=1)
        result += totals(which, share[among] * values, len(result))
    return result


def _parts_by_height(
    surfaces: Surfaces, source: Source, which: IntArray
) -> tuple[IntArray, FloatArray, FloatArray]:
    """Texels (n,) with those that the plane of the lamp's face cuts taken in two parts.

    Intensity may jump there; of a tilted lamp they are taken in many pieces instead. Gives the
    texel of each part (m,), its centre (3, m) and its share of the texel (m,).
    """
    centre, rise = surfaces.texel_centre[:, which], surfaces.texel_rise[which]
    above = source.centre[2] - centre[2]
    cut = np.flatnonzero((np.abs(above) < 0.999 * rise) & (source.tilt == 0))
    share = np.ones(which.size)
    share[cut] = (1 + above[cut] / rise[cut]) / 2
    upper, rest = centre[:, cut], 1 - share[cut]
    upper[2] += share[cut] * rise[cut]
    centre[2, cut] -= rest * rise[cut]
    return (
        np.concatenate([which, which[cut]]),
        np.concatenate([centre, upper], axis=1),
        np.concatenate([share, rest]),
    )


def _faces_lamp(surfaces: Surfaces, source: Source) -> IntArray:
    """Texels that some of the lamp's light may reach straight, shape (n,)."""
    faces = np.zeros(surfaces.texel_count, dtype=bool)
    height = (surfaces.texel_normal * surfaces.texel_centre).sum(axis=0)
    for corner in source.outline.T:
        # By more than rounding: the underside of a tilted housing lies in the lamp's own plane.
        faces |= corner @ surfaces.texel_normal > height + _HAIR
    if not source.profile.emits_up:
        if source.tilt:
            every = np.arange(surfaces.texel_count)
            reach = _depth(surfaces, source, every)
            faces &= source.before(surfaces.texel_centre) + reach > 0
        else:
            faces &= surfaces.texel_centre[2] - surfaces.texel_rise < source.centre[2] - _HAIR
    return np.flatnonzero(faces)


def _depth(surfaces: Surfaces, source: Source, texels: IntArray) -> FloatArray:
    """How far texels (n,) reach from their centres along the axis of a lamp, metres."""
    edges = np.stack(surfaces.texel_edges(texels))
    reach: FloatArray = np.abs(np.einsum("i,kin->kn", source.axis, edges)).sum(axis=0) / 2
    return reach


def _from_lamp(source: Source, points: FloatArray) -> FloatArray:
    """Distance of points (3, n) from the nearest emitting strip, shape (n,)."""
    if source.tilt:
        local = source.axes() @ (points - np.array(source.centre)[:, None])
        beside, above = _beside(local, source.strips), -source.before(points)
    else:
        beside, above = _beside_lamp(source, points[:2]), points[2] - source.centre[2]
    distance: FloatArray = np.hypot(beside, above)
    return distance


def _beside_lamp(source: Source, points: FloatArray) -> FloatArray:
    """Horizontal distance of points (2, n) from the nearest emitting strip, shape (n,)."""
    level, strips = replace(source, tilt=0.0), source.strips
    if source.tilt:
        strips = strips * np.array([1.0, math.cos(source.tilt)] * 2)
    return _beside(level.axes() @ (points - np.array(source.centre[:2])[:, None]), strips)


def _beside(local: FloatArray, strips: FloatArray) -> FloatArray:
    """Distance of points (2, n) in the lamp's axes from the nearest strip, shape (n,)."""
    beside = np.abs(local[:, None, :] - strips[:, :2].T[:, :, None])
    beside = np.maximum(beside - strips[:, 2:].T[:, :, None] / 2, 0.0)
    nearest: FloatArray = np.hypot(*beside).min(axis=0)
    return nearest
