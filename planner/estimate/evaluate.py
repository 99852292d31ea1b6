"""The one door: from a plan to its estimate.

The work is cut where edits leave it whole. Geometry decides the surfaces; with ρ_s it
decides the paths of light (exchange, gather); with ρ_d the balance; a lamp only its own
light; output only a factor. Each piece is kept in a ``Cache`` under a key made of exactly
the values it depends on, so an edit redoes what it changed and nothing else.
"""

from __future__ import annotations

import time
from collections import OrderedDict
from collections.abc import Callable, Hashable
from dataclasses import dataclass, field
from functools import partial
from typing import Any, TypeVar

import numpy as np

from planner.estimate.effort import EFFORTS, Effort, more_where_chains_are_short
from planner.estimate.figures import figures_of, shares_of
from planner.estimate.lamp_light import Geometry, LampLight, lamp_light
from planner.estimate.result import Estimate, EstimateOptions
from planner.estimate.scene import LampOptics, Room, Scene, build_scene
from planner.light.exchange import Exchange, Gather, exchange_factors, gather_paths
from planner.light.field import CellGrid
from planner.light.paths import Mirrors
from planner.light.prism import FloatArray, Prism
from planner.light.solve import response
from planner.light.surfaces import Surfaces
from planner.light.totals import totals
from planner.plan.plan import Plan

_Piece = TypeVar("_Piece")

_MOST_GATHERED = 32
"""Most cells along a side of the grid on which diffuse light is gathered."""


class Cancelled(Exception):  # noqa: N818 - a request to stop, not an error
    """The caller asked to stop; nothing was computed."""


@dataclass
class Cache:
    """Pieces of former estimates, the most recently used last. One per thread."""

    limit: int = 48
    _pieces: OrderedDict[Hashable, Any] = field(default_factory=OrderedDict)

    def get(self, key: Hashable, make: Callable[[], _Piece]) -> _Piece:
        """The piece of that key, made when it is not there."""
        if key in self._pieces:
            self._pieces.move_to_end(key)
            piece: _Piece = self._pieces[key]
            return piece
        piece = make()
        self._pieces[key] = piece
        while len(self._pieces) > self.limit:
            self._pieces.popitem(last=False)
        return piece


@dataclass(frozen=True)
class _Paths:
    exchange: Exchange
    gather: Gather


def evaluate(
    plan: Plan,
    options: EstimateOptions | None = None,
    *,
    cache: Cache | None = None,
    progress: Callable[[float], None] | None = None,
    cancelled: Callable[[], bool] | None = None,
) -> Estimate:
    """Estimate the light on the canopy of a plan.

    Parameters
    ----------
    plan
        Any valid plan.
    options
        Map size, quality and seed; the same plan and options give identical results.
    cache
        Pieces of former estimates, for speed only.
    progress
        Called with fractions from 0 to 1.
    cancelled
        Asked often; when it answers True the work stops.

    Raises
    ------
    Cancelled
        If ``cancelled`` said so.
    planner.light.solve.NothingAbsorbsError
        If no surface or opening takes up light.
    """
    started = time.perf_counter()
    options = options or EstimateOptions()
    cache = cache or Cache()
    effort = EFFORTS[options.quality]

    def step() -> None:
        if cancelled is not None and cancelled():
            raise Cancelled

    def report(fraction: float) -> None:
        step()
        if progress is not None:
            progress(fraction)

    scene = build_scene(plan)
    room_key = (scene.room, options)
    geometry = cache.get(("geometry", room_key), lambda: _geometry(scene.room, options, effort))
    report(0.05)
    mirrors = Mirrors(np.array(scene.optics.specular), np.array(scene.optics.width))
    paths_key = ("paths", room_key, scene.optics.specular, scene.optics.width)
    paths = cache.get(paths_key, lambda: _paths(geometry, mirrors, options, effort, step))
    report(0.7)
    solve_key = ("balance", *paths_key, scene.optics.diffuse)
    diffuse = np.array(scene.optics.diffuse)
    of_patch = diffuse[geometry.surfaces.patch_facet]
    balance = cache.get(solve_key, lambda: response(paths.exchange.factors, of_patch))
    report(0.8)

    def light_of(lamp: LampOptics) -> LampLight:
        make = partial(lamp_light, geometry, lamp, mirrors, options.seed, effort, step)
        return cache.get(("lamp", *paths_key, lamp), make)

    lights = [light_of(lamp) for lamp in scene.lamps]
    report(0.95)
    return _assemble(plan, options, scene, geometry, paths, balance, lights, started)


def _geometry(room: Room, options: EstimateOptions, effort: Effort) -> Geometry:
    prism = Prism(np.array(room.corners), room.z0, room.z1, room.boxes)
    columns, rows = options.cells
    grid = CellGrid.over(prism, columns, rows, room.z_map)
    # Diffuse light is smooth: beyond this many cells it is gathered coarser and resampled.
    smooth = (min(columns, _MOST_GATHERED), min(rows, _MOST_GATHERED))
    gather_grid = grid if smooth == options.cells else CellGrid.over(prism, *smooth, room.z_map)
    perimeter = float(prism.lengths.sum())
    area = perimeter * (room.z1 - room.z0) + 2 * float(grid.area.sum())
    surfaces = Surfaces(prism, room.band_tops, (area / effort.patches) ** 0.5, effort.fine)
    return Geometry(surfaces, grid, gather_grid)


def _paths(
    geometry: Geometry,
    mirrors: Mirrors,
    options: EstimateOptions,
    effort: Effort,
    step: Callable[[], None],
) -> _Paths:
    random = np.random.default_rng([options.seed, 1])
    mean_specular = float(np.average(mirrors.specular, weights=geometry.surfaces.facet_area))
    exchange_rays = more_where_chains_are_short(effort.exchange_rays, mean_specular)
    gather_rays = more_where_chains_are_short(effort.gather_rays, mean_specular)
    if mirrors.any_wrinkled:
        # Chance enters at each reflection, so more rays are needed for the same accuracy.
        exchange_rays *= 2
    exchange = exchange_factors(
        geometry.surfaces, mirrors, exchange_rays, random, effort.cutoff, step
    )
    gather = gather_paths(
        geometry.surfaces,
        geometry.gather_grid,
        mirrors,
        gather_rays,
        random,
        effort.cutoff,
        step,
    )
    return _Paths(exchange, gather)


def _assemble(
    plan: Plan,
    options: EstimateOptions,
    scene: Scene,
    geometry: Geometry,
    paths: _Paths,
    balance: FloatArray,
    lights: list[LampLight],
    started: float,
) -> Estimate:
    surfaces, grid = geometry.surfaces, geometry.grid
    diffuse, specular = np.array(scene.optics.diffuse), np.array(scene.optics.specular)
    texel_direct = np.zeros(surfaces.texel_count)
    patch_lamp = np.zeros(surfaces.patch_count)
    lost = np.zeros(len(scene.roles))
    cells = np.zeros(len(grid.inside))
    for light, flux in zip(lights, scene.fluxes, strict=True):
        texel_direct += flux * light.texel_density
        patch_lamp += flux * light.patch_flux
        cells += flux * light.cell_density
        lost += flux * light.lost
    patch_flux = balance @ patch_lamp
    direct_patch = totals(
        surfaces.texel_patch, texel_direct * surfaces.texel_area, surfaces.patch_count
    )
    # Steep direct light stays on texels; the smooth rest is known per patch.
    smooth = (patch_flux - direct_patch) / np.maximum(surfaces.patch_area, 1e-12)
    exitance = diffuse[surfaces.texel_facet] * (texel_direct + surfaces.smoothed(smooth))
    gathered = paths.gather.apply(exitance)
    if geometry.gather_grid is not grid:
        gathered = grid.resampled(geometry.gather_grid, gathered)
    cross_check: float | None = None
    if plan.canopy.closed:
        # The balance knows better how much arrives; the gather knows better where.
        on_canopy = surfaces.facet_plane[surfaces.patch_facet] == surfaces.prism.bottom
        due = float(patch_flux[on_canopy].sum()) - float(cells @ grid.inside_area)
        found = float(gathered @ grid.inside_area)
        if found > 0 and due > 0:
            gathered *= due / found
            cross_check = (found - due) / float(patch_flux[on_canopy].sum())
    cells = cells + gathered
    ppfd = grid.on_map(cells)
    absorbed = totals(
        surfaces.patch_facet,
        patch_flux * (1 - diffuse - specular)[surfaces.patch_facet],
        len(scene.roles),
    )
    # Wrinkled mirrors swallow a little more than their reflectance leaves.
    leaving = patch_flux * diffuse[surfaces.patch_facet]
    absorbed += lost + leaving @ paths.exchange.losses
    emitted = float(sum(scene.fluxes))
    closure = (float(absorbed.sum()) - emitted) / emitted if emitted > 0 else 0.0
    return Estimate(
        plan=plan,
        options=options,
        ppfd=ppfd,
        x=grid.x,
        y=grid.y,
        cell_area=grid.area,
        figures=figures_of(plan, cells, grid.inside_area),
        shares=shares_of(scene.roles, absorbed, emitted),
        closure=closure,
        seconds=time.perf_counter() - started,
        cross_check=cross_check,
    )
