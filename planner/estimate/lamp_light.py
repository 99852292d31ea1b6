"""The light of one lamp before any diffuse reflection: direct, and by way of mirrors."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from planner.estimate.effort import Effort
from planner.estimate.scene import LampOptics
from planner.light.bright import bright_texels
from planner.light.close_up import direct_on_cells, direct_on_texels
from planner.light.emission import Source
from planner.light.field import CellGrid
from planner.light.images import light_of_images
from planner.light.on_walls import OnWalls, on_walls
from planner.light.paths import Mirrors
from planner.light.photons import MirrorLight, follow_photons
from planner.light.prism import FloatArray, IntArray, totals
from planner.light.surfaces import Surfaces


@dataclass(frozen=True)
class Geometry:
    """What depends on the room alone: its division, the map, and coarser grids.

    On ``gather_grid`` smooth light is gathered; ``coarse_grid`` is for a first look. ``tops`` are
    the same surfaces seen from each canopy on a ``box``.
    """

    surfaces: Surfaces
    grid: CellGrid
    gather_grid: CellGrid
    coarse_grid: CellGrid
    tops: tuple[Geometry, ...] = ()
    box: int = -1

    @cached_property
    def on_walls(self) -> OnWalls:
        """See ``planner.light.on_walls``; made once for all lamps and all of a drag."""
        return on_walls(self.surfaces)


@dataclass(frozen=True)
class TopLight:
    """Light of one lamp at unit flux on the canopy on a top, before any diffuse reflection.

    Flux density on its cells (C,), what of it came by way of mirrors and the variance that chance
    leaves in it, both as means over the cells.
    """

    cells: FloatArray
    mirrored: float
    variance: float


@dataclass(frozen=True)
class LampLight:
    """Light of one lamp at unit flux before any diffuse reflection.

    Direct flux density on texels (T,) and the flux it is on patches (P,), all flux on patches (P,),
    flux density on cells (C,), the variance that chance leaves in it (mean over the cells), what of
    it came by way of mirrors
    (mean over the cells), the texels it lights up as spots, and the factor by which what only
    photons know of mirrored light was made to balance.
    """

    texel_density: FloatArray
    direct_flux: FloatArray
    patch_flux: FloatArray
    cell_density: FloatArray
    variance: float
    mirrored: float
    spots: IntArray
    scale: float = 1.0
    tops: tuple[TopLight, ...] = ()


def lamp_light(
    geometry: Geometry,
    lamp: LampOptics,
    mirrors: Mirrors,
    seed: int,
    effort: Effort,
    step: Callable[[], None],
) -> LampLight:
    """Compute the light of one lamp; ``step`` is called between stages and may raise."""
    surfaces, grid = geometry.surfaces, geometry.grid
    prism = surfaces.prism
    source = lamp.source()
    cell_area = grid.inside_area
    closed = grid.on_bottom_of(prism)
    cells, by_edges = direct_on_cells(grid, prism, source, effort.shade, step, effort.shadows)
    step()
    bottom_flux = float(cells @ cell_area) if closed else -1.0
    texels = direct_on_texels(surfaces, source, bottom_flux, effort.shade, step)
    straight = float(cells.mean())
    patches = totals(surfaces.texel_patch, texels * surfaces.texel_area, surfaces.patch_count)
    step()
    gather_grid = geometry.gather_grid
    mirrored, images, faint, variance = by_mirrors(
        geometry, source, mirrors, seed, effort, straight, step
    )
    step()
    given = float(patches @ mirrors.specular[surfaces.patch_facet])
    image_flux = float(images @ cell_area) if closed else None
    faint_flux = float(faint @ cell_area)
    flux, scale = _reconciled(surfaces, mirrored, given, mirrors, image_flux, faint_flux)
    cells += images + scale * faint
    if image_flux is None and mirrored.images.total > 0:
        # Chains cut short would have gone on to cross the map as those before them did.
        faint *= 1 + (scale - 1) / scale * mirrored.images.total / max(faint_flux, 1e-300)
    by_glints = mirrored.glint_variance * (scale / gather_grid.inside_area) ** 2
    variance += by_edges + float(by_glints.mean())
    # What is taken as even varies at most as the images that were computed do.
    uneven = float(images.std()) / max(float(images.mean()), 1e-300)
    variance += (scale * float(faint.mean()) * uneven) ** 2
    if mirrors.any_wrinkled:
        spread = mirrored.glints / gather_grid.inside_area
        if gather_grid is not grid:
            spread = grid.resampled(gather_grid, spread)
            found = float(spread @ cell_area)
            spread *= float(mirrored.glints.sum()) / found if found > 0 else 0.0
        cells += scale * spread
    spots = bright_texels(surfaces, texels, effort.spots)
    mirrored_density = float(cells.mean()) - straight
    tops = tuple(_on_top(top, source, mirrors, seed, effort, scale, step) for top in geometry.tops)
    return LampLight(
        texels, patches, patches + flux, cells, variance, mirrored_density, spots, scale, tops
    )


def _on_top(
    top: Geometry,
    source: Source,
    mirrors: Mirrors,
    seed: int,
    effort: Effort,
    scale: float,
    step: Callable[[], None],
) -> TopLight:
    """As ``lamp_light`` on the canopy on a top; ``scale`` is what the map's balance found."""
    grid = top.grid
    cells, by_edges = direct_on_cells(
        grid, top.surfaces.prism, source, effort.shade, step, effort.shadows
    )
    straight = float(cells.mean())
    mirrored, images, faint, variance = by_mirrors(
        top, source, mirrors, seed, effort, straight, step
    )
    cells += images + scale * faint
    spread = scale * mirrored.glints / top.gather_grid.inside_area
    by_glints = mirrored.glint_variance * (scale / top.gather_grid.inside_area) ** 2
    variance += by_edges + float(by_glints.mean())
    cells += spread if top.gather_grid is grid else grid.resampled(top.gather_grid, spread)
    return TopLight(cells, float(cells.mean()) - straight, variance)


def by_mirrors(
    geometry: Geometry,
    source: Source,
    mirrors: Mirrors,
    seed: int,
    effort: Effort,
    straight: float,
    step: Callable[[], None],
) -> tuple[MirrorLight, FloatArray, FloatArray, float]:
    """What mirrors do with the light of a unit lamp, on the cells of ``geometry.grid``.

    ``straight`` is the flux density that has met none, mean over the cells.
    By photons; flux density of the images computed (C,), and of those that are too faint to be
    (C,); and the variance, mean over cells, that chance leaves in images.
    """
    count = effort.spread_photons if mirrors.any_wrinkled else effort.photons
    rows, columns = geometry.grid.area.shape
    mirrored = follow_photons(
        geometry.surfaces,
        geometry.gather_grid,
        source,
        mirrors,
        count,
        effort.lobe_photons,
        np.random.default_rng([seed, 2]),
        effort.cutoff,
        step,
    )
    images, faint, variance, computed = light_of_images(
        geometry.surfaces,
        geometry.grid,
        geometry.coarse_grid,
        source,
        mirrored.images,
        mirrors.flat_specular,
        count,
        effort.quadrature,
        # What cells hide by their size, points on the lamp need not show.
        min(max(effort.edges * 24 // max(rows, columns), effort.edges), 2 * effort.edges),
        effort.passed,
        straight,
        step,
    )
    return mirrored, images, _of_faint(geometry, mirrored, faint, computed), variance


_EVEN = 0.01
"""Share of the images' light up to which what the faint bring is taken as spread evenly."""

_LITTLE = 0.001
"""The same as a share of the lamp's light: in a tenth of the map it is 0.3 % of the mean (rms)."""


def _of_faint(
    geometry: Geometry, mirrored: MirrorLight, faint: float, computed: IntArray | None
) -> FloatArray:
    """Flux density on the cells (C,) from images that are not computed, ``faint`` in all.

    Where obstacles or bands show them in part they lie as their photons fell, without most of
    the chance in that; elsewhere, and where they are few, evenly.
    """
    grid, coarse = geometry.grid, geometry.gather_grid
    if grid.is_part:
        # They were counted over all of the plane in which it lies.
        return np.full(len(grid.inside), faint / float(geometry.coarse_grid.inside_area.sum()))
    if computed is None or faint <= max(_EVEN * mirrored.images.total, _LITTLE):
        return np.full(len(grid.inside), faint / float(grid.inside_area.sum()))
    landings = mirrored.landings
    rest = np.flatnonzero(~np.isin(landings.image, computed))
    size = len(coarse.inside)
    part = rest % _PARTS * size + landings.cell[rest]
    found = totals(part, landings.flux[rest], _PARTS * size).reshape(_PARTS, size)
    density, _ = coarse.smoothed(found / coarse.inside_area)
    if coarse is not grid:
        density = grid.resampled(coarse, density)
    brought = float(density @ grid.inside_area)
    return density * (faint / brought if brought > 0 else 0.0)


_PARTS = 6
"""Parts of the photons whose differences tell how far chance goes."""


def _reconciled(
    surfaces: Surfaces,
    mirrored: MirrorLight,
    given: float,
    mirrors: Mirrors,
    image_flux: float | None,
    faint: float,
) -> tuple[FloatArray, float]:
    """Mirrored flux on patches made to balance, and the factor that did it.

    ``given`` is the flux mirrors took over from direct light. It must end on surfaces:
    exactly known on a closed canopy for the images computed
    (``image_flux``), known by photons elsewhere. What is missing or too much is shared
    among the parts known by photons only, by one factor.
    """
    flux = mirrored.patch_flux.copy()
    kept = 1 - mirrors.specular[surfaces.patch_facet]
    if given > 0 and not flux.any():
        # Mirrors too faint to be followed: what little they carry is spread evenly.
        return surfaces.patch_area * (given / float(surfaces.patch_area @ kept)), 1.0
    if image_flux is None:
        total = float(flux @ kept)
        scale = given / total if total > 0 else 1.0
        return flux * scale, scale
    bottom = surfaces.patches_on_bottom()
    chance = faint + float(mirrored.glints.sum())
    uncertain = chance + float(flux[~bottom] @ kept[~bottom])
    scale = max(given - image_flux, 0.0) / uncertain if uncertain > 0 else 0.0
    flux[~bottom] *= scale
    on_bottom = float(flux[bottom].sum())
    flux[bottom] *= (image_flux + scale * chance) / on_bottom if on_bottom > 0 else 0.0
    return flux, scale
