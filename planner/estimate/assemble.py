"""From the pieces of an estimate to the estimate: balance, map and figures."""

from __future__ import annotations

import time
from dataclasses import dataclass, replace

import numpy as np

from planner.estimate.figures import figures_of, shares_of
from planner.estimate.lamp_light import Geometry, LampLight
from planner.estimate.result import Estimate, EstimateOptions
from planner.estimate.scene import Scene
from planner.light.exchange import Exchange, Gather
from planner.light.prism import FloatArray
from planner.light.totals import totals
from planner.plan.plan import Plan


@dataclass(frozen=True)
class Paths:
    """What depends on the room and its mirrors, not on lamps."""

    exchange: Exchange
    gather: Gather


def assemble(
    plan: Plan,
    options: EstimateOptions,
    scene: Scene,
    geometry: Geometry,
    paths: Paths,
    balance: FloatArray,
    lights: list[LampLight],
    started: float,
) -> Estimate:
    """Put the pieces together: solve the balance, gather it on the map, take the figures."""
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
    gathered, spread = paths.gather.apply(exitance)
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
        numeric_error=_numeric_error(spread, cross_check, cells),
    )


def _numeric_error(
    spread: FloatArray, cross_check: float | None, cells: FloatArray
) -> float | None:
    """Relative rms error to expect of a cell, from the two halves and the cross-check."""
    mean = float(cells.mean()) if cells.size else 0.0
    if mean <= 0:
        return None
    by_chance = float(np.sqrt((spread**2).mean())) / mean
    return float(np.hypot(by_chance, cross_check or 0.0))


def averaged(runs: list[Estimate], options: EstimateOptions) -> Estimate:
    """Mean of independent runs, with the standard error of each cell of the mean."""
    maps = np.stack([run.ppfd for run in runs])
    ppfd: FloatArray = maps.mean(axis=0)
    error: FloatArray = maps.std(axis=0, ddof=1) / np.sqrt(len(runs))
    first = runs[0]
    inside = ~np.isnan(ppfd)
    cells, areas = ppfd[inside], first.cell_area[inside]
    absorbed = np.array([[share.photon_flux for share in run.shares] for run in runs]).mean(axis=0)
    emitted = first.figures.photon_flux
    shares = tuple(
        replace(share, photon_flux=float(flux), share=float(flux) / emitted if emitted else 0.0)
        for share, flux in zip(first.shares, absorbed, strict=True)
    )
    checks = [run.cross_check for run in runs if run.cross_check is not None]
    mean = float(cells.mean()) if cells.size else 0.0
    return replace(
        first,
        options=options,
        ppfd=ppfd,
        figures=figures_of(first.plan, cells, areas),
        shares=shares,
        closure=float(np.mean([run.closure for run in runs])),
        seconds=sum(run.seconds for run in runs),
        cross_check=float(np.mean(checks)) if checks else None,
        numeric_error=float(np.sqrt((error[inside] ** 2).mean())) / mean if mean > 0 else None,
        cell_error=error,
    )
