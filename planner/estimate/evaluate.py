"""The one door: from a plan to its estimate.

The work is cut where edits leave it whole. Geometry decides the surfaces; with ρ_s it
decides the paths of light (exchange, gather); with ρ_d the balance; a lamp only its own
light; output only a factor. Each piece is kept in a ``Cache`` under a key made of exactly
the values it depends on, so an edit redoes what it changed and nothing else.
"""

from __future__ import annotations

import math
import time
from collections import OrderedDict
from collections.abc import Callable, Hashable
from dataclasses import dataclass, field, replace
from functools import cache as once
from functools import partial
from threading import Lock
from typing import Any, TypeVar

import numpy as np

from planner.estimate.assemble import (
    ByBand,
    LampAt,
    LampResponse,
    Paths,
    assemble,
    averaged,
    respond,
)
from planner.estimate.canopies import lit_together
from planner.estimate.effort import Effort, effort_for, rays_for
from planner.estimate.lamp_light import Geometry, LampLight, lamp_light
from planner.estimate.result import (
    Estimate,
    EstimateOptions,
    Quality,
    Recount,
)
from planner.estimate.scene import LampOptics, Room, Scene, build_scene
from planner.light.division import Coarser
from planner.light.exchange import check_something_absorbs, exchange_factors, gather_paths, response
from planner.light.field import CellGrid
from planner.light.paths import Mirrors
from planner.light.prism import FloatArray, Prism
from planner.light.surfaces import Surfaces
from planner.light.walk import Linings, landings
from planner.plan.place import OWN, judged
from planner.plan.plan import Plan
from planner.plan.wavebands import BAND_WORDS, FAR_RED

_Piece = TypeVar("_Piece")

REPLICATES = 4
"""Independent runs that make up a fine estimate and tell its error."""

_SEED_STRIDE = 7919
_MOST_GATHERED = 32
"""Most cells along a side of the grid on which diffuse light is gathered."""

FIRST_LOOK = (6, 6)
"""Cells on which it is decided which images of a lamp are worth computing."""


class Cancelled(Exception):  # noqa: N818 - a request to stop, not an error
    """The caller asked to stop; nothing was computed."""


@dataclass
class Cache:
    """Pieces of former estimates, the most recently used last; any thread may ask.

    Holds at most ``limit`` bytes, and always the newest piece.
    """

    limit: int = 64_000_000
    _pieces: OrderedDict[Hashable, tuple[Any, int]] = field(default_factory=OrderedDict)
    _held: int = 0
    _lock: Lock = field(default_factory=Lock, repr=False, compare=False)

    @property
    def held(self) -> int:
        """Bytes of what is kept, about."""
        return self._held

    def get(self, key: Hashable, make: Callable[[], _Piece]) -> _Piece:
        """The piece of that key, made when it is not there."""
        with self._lock:
            if key in self._pieces:
                self._pieces.move_to_end(key)
                piece: _Piece = self._pieces[key][0]
                return piece
        # Nobody waits for what another makes: of two that make the same, one is kept.
        piece = make()
        size = _size(piece)
        with self._lock:
            self._held += size - self._pieces.pop(key, (None, 0))[1]
            self._pieces[key] = (piece, size)
            while self._held > self.limit and len(self._pieces) > 1:
                _, (_, dropped) = self._pieces.popitem(last=False)
                self._held -= dropped
        return piece


HELD_BYTES = 52_000_000
"""What a window program keeps of former estimates: a rack of three tiers, or a closet."""


@once
def shared_cache() -> Cache:
    """The one cache of all lanes of a program, so that it holds no more than one of them would.

    Lanes ask about the same rooms: what the drawing has found, a comparison need not find again.
    """
    return Cache(limit=HELD_BYTES)


_OBJECT = 128
"""Bytes an object takes beside what it holds, about; rooms of many boxes hold thousands."""


def _size(piece: object) -> int:
    """Bytes a piece holds, about: arrays, and what holds them."""
    if isinstance(piece, np.ndarray):
        return int(piece.nbytes) + _OBJECT
    if isinstance(piece, tuple | list):
        return _OBJECT + sum(_size(part) for part in piece)
    if hasattr(piece, "__dict__"):
        return _OBJECT + sum(_size(part) for part in vars(piece).values())
    return 0


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
    planner.light.exchange.NothingAbsorbsError
        If no surface or opening takes up light.
    """
    options = options or EstimateOptions()
    cache = cache or Cache()
    scene = build_scene(plan)
    report = progress or untold
    if options.quality is not Quality.FINE:
        return estimate_scene(plan, scene, options, cache, report, cancelled)
    runs = []
    for k in range(REPLICATES):
        seed = replace(options, seed=options.seed + k * _SEED_STRIDE)
        part = partial(_part_of, report, k, REPLICATES)
        # Replicates share nothing; keeping their pieces would only fill the cache.
        runs.append(estimate_scene(plan, scene, seed, Cache(), part, cancelled).own)
    shaded = not _prism(scene.room).open_to_sight
    made = averaged(runs, options, scene.emitted, shaded)
    return lit_together(made).on(judged(plan))


def _prism(room: Room) -> Prism:
    return Prism(np.array(room.corners), room.z0, room.z1, room.boxes)


def _part_of(report: Callable[[float], None], part: int, count: int, fraction: float) -> None:
    report((part + fraction) / count)


def untold(fraction: float) -> None:
    """Progress that nobody follows."""
    del fraction


def checking(cancelled: Callable[[], bool] | None) -> Callable[[], None]:
    """A step of work that raises ``Cancelled`` once ``cancelled`` says so."""

    def step() -> None:
        if cancelled is not None and cancelled():
            raise Cancelled

    return step


@dataclass(frozen=True)
class Solved:
    """A scene whose light is known on every surface: its pieces, and the light of each lamp.

    ``share`` is the effort that each of its lamps is given; ``light_of`` finds the light of one
    before any diffuse reflection, kept as all pieces are.
    """

    scene: Scene
    options: EstimateOptions
    geometry: Geometry
    mirrors: Mirrors
    paths: Paths
    balance: FloatArray
    share: Effort
    light_of: Callable[[LampOptics], LampLight]
    responses: tuple[LampResponse, ...]

    @property
    def lights(self) -> tuple[LampAt, ...]:
        """Each lamp with its flux and its light at unit flux."""
        return tuple(zip(self.scene.lamps, self.scene.fluxes, self.responses, strict=True))


def solved(
    scene: Scene,
    options: EstimateOptions,
    cache: Cache,
    progress: Callable[[float], None],
    cancelled: Callable[[], bool] | None,
    guide: tuple[float, ...] | None = None,
) -> Solved:
    """Solve a scene made from a plan, or made to differ from it in its reflectances.

    ``guide``, ρ_s of each facet, fixes how far mirror chains are followed, so that scenes
    with other reflectances can be compared free of chance (see ``light.paths.Mirrors``).
    """
    room = scene.room
    open_to_sight = cache.get(("open_to_sight", room), lambda: _prism(room).open_to_sight)
    effort = effort_for(options.quality, open_to_sight=open_to_sight, tops=len(room.tops))

    step = checking(cancelled)

    def report(fraction: float) -> None:
        step()
        progress(fraction)

    check_something_absorbs(np.array(scene.optics.diffuse) + np.array(scene.optics.specular))
    room_key = (scene.room, options)
    geometry = cache.get(
        ("geometry", room_key), lambda: _geometry(scene.room, options, effort, step)
    )
    report(0.05)
    mirrors = Mirrors(
        np.array(scene.optics.specular),
        np.array(scene.optics.width),
        None if guide is None else np.array(guide),
    )
    paths_key = ("paths", room_key, scene.optics.specular, scene.optics.width, guide)
    paths = cache.get(paths_key, lambda: _paths(geometry, mirrors, options, effort, step))
    report(0.4)
    solve_key = ("balance", *paths_key, scene.optics.diffuse)
    of_patch = np.array(scene.optics.diffuse)[geometry.surfaces.patch_facet]
    factors = paths.exchange.factors
    balance = cache.get(solve_key, lambda: response(factors, of_patch))
    coarser = cache.get(
        ("coarser", *solve_key), lambda: Coarser.of(geometry.surfaces, factors, of_patch)
    )
    report(0.45)

    share = effort.shared_among(len(scene.lamps))

    def light_of(lamp: LampOptics) -> LampLight:
        make = partial(lamp_light, geometry, lamp, mirrors, options.seed, share, step)
        return cache.get(("lamp", *paths_key, share, lamp), make)

    def response_of(lamp: LampOptics) -> LampResponse:
        def make() -> LampResponse:
            step()
            light = light_of(lamp)
            return respond(scene, geometry, paths, balance, coarser, light, share.shade, step)

        return cache.get(("response", *solve_key, share, lamp), make)

    responses = []
    for lamp in scene.lamps:
        responses.append(response_of(lamp))
        # Many lamps take most of the time: how far it is shows while they are reckoned.
        report(0.45 + 0.5 * len(responses) / len(scene.lamps))
    return Solved(
        scene, options, geometry, mirrors, paths, balance, share, light_of, tuple(responses)
    )


def estimate_scene(
    plan: Plan,
    scene: Scene,
    options: EstimateOptions,
    cache: Cache,
    progress: Callable[[float], None],
    cancelled: Callable[[], bool] | None,
    guide: tuple[float, ...] | None = None,
) -> Estimate:
    """Estimate a scene of a plan; see ``solved``."""
    started = time.perf_counter()
    found = solved_parts(scene, options, cache, progress, cancelled, guide)
    lights = [light for part in found for light in part.lights]
    solve = partial(
        solved, options=options, cache=cache, progress=untold, cancelled=cancelled, guide=None
    )
    by_band = _by_band(scene, found, solve)
    made = assemble(plan, options, scene, found[0].geometry, lights, by_band, started)
    return lit_together(made).on(judged(plan))


def solved_parts(
    scene: Scene,
    options: EstimateOptions,
    cache: Cache,
    progress: Callable[[float], None],
    cancelled: Callable[[], bool] | None,
    guide: tuple[float, ...] | None = None,
) -> tuple[Solved, ...]:
    """Solve all parts of a scene: one, or one for each waveband where something is tinted."""
    found, parts = [], scene.parts()
    for k, (band, part) in enumerate(parts):
        its_guide = guide if guide is None else scene.guide_in(band, guide)
        report = partial(_part_of, progress, k, len(parts))
        found.append(solved(part, options, cache, report, cancelled, its_guide))
    return tuple(found)


def _by_band(
    scene: Scene, found: tuple[Solved, ...], solve: Callable[[Scene], Solved]
) -> ByBand | None:
    """The light of each waveband; None where a lamp's colour is not known."""
    colours = [colour for colour in scene.colours if colour is not None]
    if not colours or len(colours) < len(scene.lamps):
        return None
    if not scene.tinted:
        coloured = tuple(zip(found[0].lights, colours, strict=True))
        return {
            band: [(lamp, flux * colour.share(band), one) for (lamp, flux, one), colour in coloured]
            for band in BAND_WORDS
        }
    far_red = scene.in_band(FAR_RED)
    beyond = solve(far_red).lights if far_red.lamps else ()
    known = {band: one.lights for (band, _), one in zip(scene.parts(), found, strict=True)}
    return {band: known.get(band, ()) for band in BAND_WORDS} | {FAR_RED: beyond}


def _geometry(
    room: Room, options: EstimateOptions, effort: Effort, step: Callable[[], None]
) -> Geometry:
    prism = _prism(room)
    columns, rows = options.cells
    grid = CellGrid.over(prism, columns, rows, room.z_map)
    # Diffuse light is smooth: beyond this many cells it is gathered coarser and resampled.
    smooth = (min(columns, _MOST_GATHERED), min(rows, _MOST_GATHERED))
    gather_grid = grid if smooth == options.cells else CellGrid.over(prism, *smooth, room.z_map)
    step()
    perimeter = float(prism.lengths.sum())
    area = perimeter * (room.z1 - room.z0) + 2 * float(grid.area.sum())
    size = (area / effort.patches) ** 0.5
    surfaces = Surfaces(prism, room.band_tops, size, effort.fine, room.z_map)
    step()
    coarse_grid = CellGrid.over(prism, *FIRST_LOOK, room.z_map)
    tops = tuple(top for box in room.tops if (top := _top(surfaces, box, grid)) is not None)
    return Geometry(surfaces, grid, gather_grid, coarse_grid, tops)


def _top(surfaces: Surfaces, number: int, over: CellGrid) -> Geometry | None:
    """The surfaces as seen from the canopy on a box, in cells as large as those of the map."""
    prism, rows_columns = surfaces.prism, over.area.shape
    box = prism.boxes[number]
    grid = CellGrid.on_top(prism, box, over.step, max(rows_columns))
    if grid is None:
        return None
    gathered = grid
    if max(grid.area.shape) > _MOST_GATHERED:
        gathered = CellGrid.on_top(prism, box, over.step, _MOST_GATHERED) or grid
    coarse = CellGrid.over(prism, *FIRST_LOOK, grid.z)
    return Geometry(surfaces, grid, gathered, coarse, box=number)


def _paths(
    geometry: Geometry,
    mirrors: Mirrors,
    options: EstimateOptions,
    effort: Effort,
    step: Callable[[], None],
) -> Paths:
    random = np.random.default_rng([options.seed, 1])
    exchange_rays = rays_for(effort.exchange_rays, _mean_specular(geometry, mirrors))
    if mirrors.any_wrinkled:
        # Chance enters at each reflection, so more rays are needed for the same accuracy.
        exchange_rays *= effort.wrinkles
    exchange = exchange_factors(
        geometry.surfaces, mirrors, exchange_rays, random, effort.cutoff, step
    )
    gather = gather_paths(
        geometry.surfaces,
        geometry.gather_grid,
        mirrors,
        gather_rays(geometry, mirrors, effort),
        random,
        effort.cutoff,
        step,
    )
    rays = gather_rays(geometry, mirrors, effort)
    tops = tuple(
        gather_paths(geometry.surfaces, top.gather_grid, mirrors, rays, random, effort.cutoff, step)
        for top in geometry.tops
    )
    return Paths(exchange, gather, tops)


def gather_rays(geometry: Geometry, mirrors: Mirrors, effort: Effort) -> int:
    """How many rays gather the diffuse light of a cell."""
    rays = rays_for(effort.gather_rays, _mean_specular(geometry, mirrors))
    # Behind wrinkles and obstacles what a cell sees changes from one direction to the next.
    hidden = mirrors.any_wrinkled or not geometry.surfaces.prism.open_to_sight
    return rays * 3 if hidden else rays


def _mean_specular(geometry: Geometry, mirrors: Mirrors) -> float:
    return float(np.average(mirrors.followed, weights=geometry.surfaces.facet_area))


# -- The light on the canopy once more, by counting photons, and whether the two agree -----
# The estimate's own checks share its paths: its balance closes by construction. This count
# shares neither images nor exchange nor gather with it (see ``light.walk``), and its standard
# error is known, so that a fault of method shows as a difference beyond chance.

PHOTONS = 1 << 18
"""Photons of a count: its standard error is then 0.1 to 0.3 % of the mean."""


def recount(
    plan: Plan,
    *,
    photons: int = PHOTONS,
    seed: int = 1,
    cancelled: Callable[[], bool] | None = None,
) -> Recount | None:
    """Count the photons that reach the canopy of a plan; None where no lamp gives light.

    Takes half a second to two seconds. The same plan, number and seed give the same count.

    Raises
    ------
    Cancelled
        If ``cancelled`` said so.
    """
    scene = build_scene(plan)
    emitted = scene.emitted
    if emitted <= 0:
        return None

    step = checking(cancelled)
    room = scene.room
    prism = _prism(room)
    random = np.random.default_rng([seed, 3])
    flux = variance = 0.0
    for _, part in scene.parts():
        optics = part.optics
        linings = Linings(
            np.array(optics.diffuse),
            np.array(optics.specular),
            np.array(optics.width),
            room.band_tops,
        )
        for lamp, its_flux in zip(part.lamps, part.fluxes, strict=True):
            count = max(round(photons * its_flux / emitted), 2)
            times = landings(prism, linings, lamp.source(), room.z_map, count, random, step)
            flux += its_flux * float(times.mean())
            # Photons start evenly spread, so this is a little more than chance does.
            variance += its_flux**2 * float(times.var(ddof=1)) / count
    return Recount(flux, math.sqrt(variance), photons)


def recounted(estimate: Estimate) -> Estimate:
    """The estimate with a count of its plan beside it; a preview stays as it is."""
    options = estimate.options
    if options.quality is Quality.PREVIEW or estimate.place != OWN:
        return estimate
    return estimate.with_recount(recount(estimate.plan, seed=options.seed))
