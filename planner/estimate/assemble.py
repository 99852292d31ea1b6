"""From the pieces of an estimate to the estimate: balance, map and figures."""

from __future__ import annotations

import math
import time
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import partial

import numpy as np

from planner.estimate.lamp_light import Geometry, LampLight
from planner.estimate.result import (
    CanopyLight,
    Estimate,
    EstimateOptions,
    Quality,
    figures_of,
    shares_of,
    top_of,
)
from planner.estimate.scene import LampOptics, Scene
from planner.light.boxes import FACES, TOP_FACE
from planner.light.bright import light_of_spots
from planner.light.division import Coarser, in_doubt
from planner.light.exchange import Exchange, Gather
from planner.light.field import CellGrid
from planner.light.lobes import SMOOTH
from planner.light.on_walls import LEVELS, PARTS
from planner.light.prism import FloatArray, totals
from planner.light.surfaces import Surfaces
from planner.metrics.colours import Bands, combined, part_of
from planner.plan.plan import Plan


@dataclass(frozen=True)
class Paths:
    """What depends on the room and its mirrors, not on lamps."""

    exchange: Exchange
    gather: Gather
    tops: tuple[Gather, ...] = ()


@dataclass(frozen=True)
class TopResponse:
    """All light of one lamp at unit flux on the canopy on a top; see ``LampResponse``."""

    cells: FloatArray
    spread: FloatArray
    variance: float
    doubt: FloatArray
    reflected: float


@dataclass(frozen=True)
class LampResponse:
    """All light of one lamp at unit flux: what output and other lamps only scale and add.

    Flux density on the cells (C,); how far chance moves what is gathered, on the cells of the
    gather grid (C',); the variance, mean over cells, that chance leaves in what comes by way
    of mirrors or past edges; by how much division and exchange may be off on the cells of the
    gather grid (C',); what of the light has been reflected (mean over cells); flux absorbed by each
    facet (F,); flux density on walls (W, LEVELS, PARTS); by how much two reckonings of the
    diffuse light on the canopy differ, in flux, before they were reconciled (0 for an open canopy),
    and the factor that did it.
    """

    cells: FloatArray
    spread: FloatArray
    variance: float
    doubt: FloatArray
    reflected: float
    absorbed: FloatArray
    walls: FloatArray
    mismatch: float
    scale: float = 1.0
    tops: tuple[TopResponse, ...] = ()


_LEAST_PATCH = 1e-9
"""Square metres."""

LampAt = tuple[LampOptics, float, LampResponse]
"""A lamp, its photon flux in µmol s⁻¹ and its light at unit flux."""

ByBand = Mapping[str, Sequence[LampAt]]
"""The lamps of each waveband, with their flux in it."""


def leaving(
    scene: Scene, surfaces: Surfaces, balance: FloatArray, light: LampLight
) -> tuple[FloatArray, FloatArray, FloatArray, FloatArray]:
    """What comes to texels and leaves them diffusely, what of it in spots, and flux on patches.

    Flux density (T,), exitance (T,), its bright part (T,), total flux (P,); for unit flux of the
    lamp.
    """
    reflected = np.array(scene.optics.diffuse)[surfaces.texel_facet]
    patch_flux = balance @ light.patch_flux
    # Steep direct light stays on texels; the smooth rest is known per patch.
    smooth = surfaces.smoothed(_density(surfaces, patch_flux - light.direct_flux))
    bright = np.zeros(surfaces.texel_count)
    bright[light.spots] = (reflected * light.texel_density)[light.spots]
    arriving = light.texel_density + smooth
    return arriving, reflected * arriving, bright, patch_flux


def _density(surfaces: Surfaces, flux: FloatArray) -> FloatArray:
    """Flux density of patches (P,); 0 under boxes, where the few rays that end light nothing."""
    density, there = np.zeros(surfaces.patch_count), surfaces.patch_area > _LEAST_PATCH
    density[there] = flux[there] / surfaces.patch_area[there]
    return density


def respond(
    scene: Scene,
    geometry: Geometry,
    paths: Paths,
    balance: FloatArray,
    coarser: Coarser,
    light: LampLight,
    shade: int,
    step: Callable[[], None],
) -> LampResponse:
    """Follow one lamp's light through the balance and gather it on the map.

    ``shade`` is that of ``Effort``.
    """
    surfaces, grid = geometry.surfaces, geometry.grid
    diffuse, specular = np.array(scene.optics.diffuse), np.array(scene.optics.specular)
    arriving, exitance, bright, patch_flux = leaving(scene, surfaces, balance, light)
    wrinkled = bool((np.array(scene.optics.width) > SMOOTH).any())

    def gather(paths: Gather, there: Geometry) -> tuple[FloatArray, FloatArray, FloatArray | None]:
        """Reflected light on cells, its chance, and what of it comes straight from spots."""
        halves = paths.apply(exitance, bright if light.spots.size else None)
        gathered, spread = halves.sum(axis=0), np.abs(halves[0] - halves[1])
        if wrinkled:
            # Rays that wrinkles scatter are left to chance. Where none are, more light anywhere
            # brings no cell less, which smoothing by the data would not keep.
            gathered, variance = there.gather_grid.smoothed(halves)
            spread = np.sqrt(variance)
        if there.gather_grid is not there.grid:
            gathered = there.grid.resampled(there.gather_grid, gathered)
        if not light.spots.size:
            return gathered, spread, None
        from_spots = light_of_spots(surfaces, there.grid, light.spots, bright, shade, step)
        return gathered + from_spots, spread, from_spots

    gathered, spread, from_spots = gather(paths.gather, geometry)
    misplaced = 0.0
    if from_spots is not None:
        # The balance spreads a spot over its patch; here it lies where it lies.
        given = totals(surfaces.texel_patch, bright * surfaces.texel_area, surfaces.patch_count)
        misplaced = float(from_spots @ grid.inside_area - given @ paths.exchange.straight)
    mismatch, scale = 0.0, 1.0
    if grid.on_bottom_of(surfaces.prism):
        on_canopy = surfaces.patches_on_bottom()
        due = float(patch_flux[on_canopy].sum() - light.cell_density @ grid.inside_area)
        due += misplaced
        found = float(gathered @ grid.inside_area)
        mismatch = found - due
        # The balance knows better how much arrives, the gather where.
        if found > 0 and due > 0:
            scale = due / found
            gathered *= scale
    absorbed = totals(
        surfaces.patch_facet,
        patch_flux * (1 - diffuse - specular)[surfaces.patch_facet],
        len(scene.places),
    )
    doubt = in_doubt(
        surfaces,
        paths.exchange,
        balance,
        coarser,
        diffuse[surfaces.patch_facet],
        light.patch_flux,
        light.direct_flux,
        patch_flux,
    )
    leaves = diffuse[surfaces.texel_facet] * surfaces.blended(_density(surfaces, doubt))
    on_map: FloatArray = paths.gather.apply(leaves).sum(axis=0)
    if grid.on_bottom_of(surfaces.prism):
        area = geometry.gather_grid.inside_area
        on_canopy = surfaces.patches_on_bottom()
        on_map += (float(doubt[on_canopy].sum()) - float(on_map @ area)) / float(area.sum())
    tops = []
    for there, its_paths, lit in zip(geometry.tops, paths.tops, light.tops, strict=True):
        on_top, by_chance, _ = gather(its_paths, there)
        # What the balance knows better of the canopy is as true of those above it.
        on_top *= scale
        share = lit.mirrored + float(on_top.mean())
        may_err = its_paths.apply(leaves).sum(axis=0)
        tops.append(TopResponse(lit.cells + on_top, by_chance, lit.variance, may_err, share))
    reflected_density = light.mirrored + float(gathered.mean())
    return LampResponse(
        light.cell_density + gathered,
        spread,
        light.variance,
        on_map,
        reflected_density,
        absorbed,
        geometry.on_walls.of(arriving),
        mismatch,
        scale,
        tuple(tops),
    )


def assemble(
    plan: Plan,
    options: EstimateOptions,
    scene: Scene,
    geometry: Geometry,
    lights: Sequence[LampAt],
    by_band: ByBand | None,
    started: float,
) -> Estimate:
    """Add up the lamps at their outputs and take the figures.

    ``lights`` holds a lamp once, or once for each waveband of a scene that is tinted; ``by_band``
    those of each waveband, where the colours of all are known.
    """
    grid = geometry.grid
    cells, absorbed = np.zeros(len(grid.inside)), np.zeros(len(scene.places))
    spread, doubt = np.zeros((2, len(geometry.gather_grid.inside)))
    walls = np.zeros((geometry.surfaces.prism.wall_count, LEVELS, PARTS))
    mismatch = reflected = entered = 0.0
    # Chance is the same in all wavebands of a lamp, and unrelated from one to the next.
    chances: dict[LampOptics, float] = {}
    for lamp, flux, one in lights:
        cells += flux * one.cells
        if lamp.outside:
            entered += flux * float(np.average(one.cells, weights=grid.inside_area))
        absorbed += flux * one.absorbed
        walls += flux * one.walls
        spread += flux * one.spread
        doubt += flux * one.doubt
        chances[lamp] = chances.get(lamp, 0.0) + flux * math.sqrt(one.variance)
        reflected += flux * one.reflected
        mismatch += flux * one.mismatch
    emitted = scene.emitted
    landed = float(cells @ grid.inside_area)
    known = plan.canopy.closed and landed > 0 and any(one.mismatch for _, _, one in lights)
    cross_check = mismatch / landed if known else None
    mean = float(cells.mean()) if cells.size else 0.0
    variance = sum(chance**2 for chance in chances.values())
    by_chance = math.sqrt(float((spread**2).mean()) + variance) / mean if mean > 0 else 0.0
    share = reflected / mean if mean > 0 else 0.0
    divided = math.sqrt(float((doubt**2).mean())) / mean if mean > 0 else 0.0
    shaded = not geometry.surfaces.prism.open_to_sight
    bands = _banded(by_band, grid, lambda one: one.cells)
    ppfd = grid.on_map(cells)
    own = part_of(bands, ~np.isnan(ppfd))
    return Estimate(
        plan=plan,
        options=options,
        ppfd=ppfd,
        x=grid.x,
        y=grid.y,
        cell_area=grid.area,
        figures=figures_of(plan, cells, grid.inside_area, own, entered),
        shares=shares_of(scene.places, absorbed, emitted),
        closure=(float(absorbed.sum()) - emitted) / emitted if emitted > 0 else 0.0,
        seconds=time.perf_counter() - started,
        cross_check=cross_check,
        numeric_error=_numeric_error(
            by_chance, cross_check, share, divided, cells, shaded, options.quality
        ),
        reflected=share,
        divided=divided,
        entered=entered,
        bands=bands,
        walls=walls,
        tops=_tops(plan, options, scene, geometry, lights, by_band),
    )


def _tops(
    plan: Plan,
    options: EstimateOptions,
    scene: Scene,
    geometry: Geometry,
    lights: Sequence[LampAt],
    by_band: ByBand | None,
) -> tuple[CanopyLight, ...]:
    """The light on each canopy that is carried, the lowest first."""
    found = []
    shaded = not geometry.surfaces.prism.open_to_sight
    for number, there in enumerate(geometry.tops):
        grid = there.grid
        cells = np.zeros(len(grid.inside))
        spread, doubt = np.zeros((2, len(there.gather_grid.inside)))
        reflected, entered, chances = 0.0, 0.0, dict.fromkeys(scene.lamps, 0.0)
        for lamp, flux, light in lights:
            one = light.tops[number]
            cells += flux * one.cells
            if lamp.outside:
                entered += flux * float(np.average(one.cells, weights=grid.inside_area))
            spread += flux * one.spread
            doubt += flux * one.doubt
            reflected += flux * one.reflected
            chances[lamp] += flux * math.sqrt(one.variance)
        mean, error, share, divided = float(cells.mean()), None, 0.0, 0.0
        if mean > 0:
            variance = sum(chance**2 for chance in chances.values())
            by_chance = math.sqrt(float((spread**2).mean()) + variance) / mean
            share, divided = reflected / mean, math.sqrt(float((doubt**2).mean())) / mean
            error = _numeric_error(by_chance, None, share, divided, cells, shaded, options.quality)
        place = scene.places[_first_face(scene, there.box) + TOP_FACE]
        top = CanopyLight(
            plan=plan,
            place=place,
            ppfd=grid.on_map(cells),
            x=grid.x,
            y=grid.y,
            cell_area=grid.area,
            figures=figures_of(plan, cells, grid.inside_area),
            numeric_error=error,
            reflected=share,
            divided=divided,
            entered=entered,
            bands=_banded(by_band, grid, partial(_on_top, number)),
        )
        found.append((grid.z, top_of(plan, top)))
    return tuple(top for _, top in sorted(found, key=lambda one: one[0]))


def _banded(
    by_band: ByBand | None, grid: CellGrid, cells_of: Callable[[LampResponse], FloatArray]
) -> Bands | None:
    """Maps of each waveband from the light of lamps at unit flux on the cells (C,)."""
    if by_band is None:
        return None
    none = np.zeros(len(grid.inside))
    return {
        band: grid.on_map(sum((flux * cells_of(one) for _, flux, one in lights), none))
        for band, lights in by_band.items()
    }


def _on_top(number: int, one: LampResponse) -> FloatArray:
    return one.tops[number].cells


def _mean(maps: list[FloatArray]) -> FloatArray:
    made: FloatArray = np.stack(maps).mean(axis=0)
    return made


def _first_face(scene: Scene, box: int) -> int:
    """The facet that is the first face of a box."""
    return len(scene.places) - FACES * (len(scene.room.boxes) - box)


_REST = 0.007
_EDGES = {Quality.PREVIEW: 0.010, Quality.DEFAULT: 0.004, Quality.FINE: 0.001}
_SUMS = 0.002
"""Shares that stand for what neither chance, cross-check nor ``light.division`` can see: of the
reflected light for its texels, of the mean where something stands in the light for the points by
which the edges of shadows are found, and of each cell for the sums over points of lamps. Set by
half of 99 random rooms (resources/docs/validation.md).
"""


def _numeric_error(
    by_chance: float,
    cross_check: float | None,
    reflected: float,
    divided: float,
    cells: FloatArray,
    shaded: bool,
    quality: Quality,
) -> float | None:
    """Relative rms error to expect of a cell (C,); None in the dark.

    Chance, reflected light and what division leaves are shares of the mean.
    """
    mean = float(cells.mean()) if cells.size else 0.0
    if mean <= 0:
        return None
    edges = _EDGES[quality] if shaded else 0.0
    sums = _SUMS * math.sqrt(float((cells**2).mean())) / mean
    return math.hypot(by_chance, cross_check or 0.0, divided, _REST * reflected, edges, sums)


def averaged(
    runs: list[Estimate], options: EstimateOptions, emitted: float, shaded: bool
) -> Estimate:
    """Mean of independent runs, with the standard error that chance leaves in each cell of it.

    Averaging does not mend what the runs share, so that has its part in the numerical error;
    ``emitted`` is the photon flux of the scene, ``shaded`` tells whether anything stands in the
    light.
    """
    maps = np.stack([run.ppfd for run in runs])
    ppfd: FloatArray = maps.mean(axis=0)
    error: FloatArray = maps.std(axis=0, ddof=1) / np.sqrt(len(runs))
    first = runs[0]
    inside = ~np.isnan(ppfd)
    cells, areas = ppfd[inside], first.cell_area[inside]
    absorbed = np.array([[share.photon_flux for share in run.shares] for run in runs]).mean(axis=0)
    shares = tuple(
        replace(share, photon_flux=float(flux), share=float(flux) / emitted if emitted else 0.0)
        for share, flux in zip(first.shares, absorbed, strict=True)
    )
    entered = float(np.mean([run.entered for run in runs]))
    checks = [run.cross_check for run in runs if run.cross_check is not None]
    cross_check = float(np.mean(checks)) if checks else None
    mean = float(cells.mean()) if cells.size else 0.0
    divided = float(np.mean([run.divided for run in runs]))
    numeric_error = None
    if mean > 0:
        by_chance = math.sqrt(float(np.average(error[inside] ** 2, weights=areas))) / mean
        numeric_error = _numeric_error(
            by_chance, cross_check, first.reflected, divided, cells, shaded, options.quality
        )
    bands = combined([run.bands for run in runs], _mean)
    return replace(
        first,
        options=options,
        ppfd=ppfd,
        bands=bands,
        figures=figures_of(first.plan, cells, areas, part_of(bands, inside), entered),
        entered=entered,
        shares=shares,
        walls=_mean([run.walls for run in runs if run.walls is not None]),
        closure=float(np.mean([run.closure for run in runs])),
        seconds=sum(run.seconds for run in runs),
        cross_check=cross_check,
        numeric_error=numeric_error,
        divided=divided,
        cell_error=error,
        tops=tuple(
            _averaged_top(first.plan, [run.tops[k] for run in runs], options)
            for k in range(len(first.tops))
        ),
    )


def _averaged_top(plan: Plan, runs: list[CanopyLight], options: EstimateOptions) -> CanopyLight:
    """Mean of independent runs on one canopy that is carried."""
    maps, first = np.stack([run.ppfd for run in runs]), runs[0]
    entered = float(np.mean([run.entered for run in runs]))
    bands = combined([run.bands for run in runs], _mean)
    made = top_of(plan, replace(first, ppfd=maps.mean(axis=0), entered=entered, bands=bands))
    if made.figures.mean <= 0:
        return made
    inside = made.inside
    error = maps.std(axis=0, ddof=1)[inside] / np.sqrt(len(runs))
    by_chance = math.sqrt(float(np.average(error**2, weights=made.cell_area[inside])))
    share = by_chance / made.figures.mean
    divided = float(np.mean([run.divided for run in runs]))
    cells = made.ppfd[inside]
    stated = _numeric_error(share, None, first.reflected, divided, cells, True, options.quality)
    return replace(made, numeric_error=stated, divided=divided)
