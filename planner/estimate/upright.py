"""The light in an upright slice of the space: what a level sensor would read at every height.

The slice stands across one axis, through one place on it, and is as thick as a row of the map.
Its light comes from the balance that the map is read from: direct light in closed form on many
levels; what is reflected, which changes slowly with height, gathered from the same surfaces on
fewer levels and joined by monotone cubics (Fritsch and Butland, 1984, SIAM J. Sci. Stat.
Comput. 5, 300). Light is counted as in a space without leaves above the canopy, and under an
open one without leaves at all; under a closed canopy there is nothing to read.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from functools import cached_property
from typing import Final, Literal

import numpy as np
import numpy.typing as npt

from planner.estimate.assemble import leaving
from planner.estimate.evaluate import (
    FIRST_LOOK,
    Cache,
    Solved,
    checking,
    estimate_scene,
    gather_rays,
    solved_parts,
    untold,
)
from planner.estimate.lamp_light import Geometry, by_mirrors
from planner.estimate.result import EstimateOptions
from planner.estimate.scene import Scene, build_scene
from planner.light.bright import light_of_spots
from planner.light.cellmap import CellMap
from planner.light.close_up import direct_on_cells
from planner.light.exchange import gather_paths
from planner.light.field import CellGrid, CoveredError
from planner.light.polygon import inside_polygon
from planner.light.prism import FloatArray, IntArray, Prism
from planner.plan.lit import Depends, depends
from planner.plan.plan import Plan

Axis = Literal["x", "y"]
"""The axis looked along; the other one runs along the slice."""

_LEVELS: Final = (24, 96)
_APART: Final = 0.02
"""Metres between levels of direct light, as far as their least and largest number allow."""

_GATHERED: Final = 14
"""Levels on which reflected light is gathered, beside those at jumps."""

_BESIDE: Final = 1e-3
_MOST_JUMPS: Final = 6
"""Light may jump at the face of a lamp, and under and over an obstacle: metres to both sides at
which there are two more levels, and at how many such heights."""

_NEAREST: Final = 0.02
"""Metres; nearer below the face of a lamp the light is told that is there. Closer by, a cell is
wide beside its distance from the lamp."""

_LESS: Final = 16
"""By so much the photons of wrinkled mirrors are fewer on each level than on the map, whose work
would otherwise come with each of them."""


@dataclass(frozen=True, eq=False)
class Slice:
    """Light on a level sensor over an upright slice of a plan's space.

    ``light`` has the place along the slice as its x and the height over the floor as its y, both
    in metres, with values in µmol m⁻² s⁻¹; NaN outside the footprint and in obstacles and lamp
    housings. ``spans`` are where the slice lies in the footprint, ``error`` is the relative rms
    error to expect from the computation, None in the dark.
    """

    plan: Plan
    axis: Axis
    place: float
    light: CellMap
    spans: tuple[tuple[float, float], ...]
    error: float | None

    def fits(self, plan: Plan, axis: Axis, place: float) -> bool:
        """Whether it tells of this slice of a plan."""
        same = self.axis == axis and abs(self.place - place) < 1e-6
        return same and self._depends == depends(plan, figures=False)

    @cached_property
    def _depends(self) -> Depends:
        return depends(self.plan, figures=False)

    def at(self, along: float, height: float) -> float | None:
        """PPFD at a place along the slice and a height; None where there is nothing to read."""
        found = float(self._over(along, np.array([height]))[0])
        return found if math.isfinite(found) else None

    def over(self, along: float) -> tuple[FloatArray, FloatArray]:
        """Heights over the floor in metres, rising, and PPFD there, NaN where there is none."""
        heights = (self.light.y[1:] + self.light.y[:-1]) / 2
        return heights, self._over(along, heights)

    def _over(self, along: float, heights: FloatArray) -> FloatArray:
        points = np.column_stack([np.full(len(heights), along), heights])
        known = self.light.covers(points)
        known &= any(low <= along <= high for low, high in self.spans)
        x, y = (along, self.place) if self.axis == "y" else (self.place, along)
        for one in self.plan.obstacles:
            if inside_polygon(np.array(one.outline()), np.array(x), np.array(y)).item():
                known &= (heights < one.underside) | (heights > one.top)
        return np.where(known, self.light.at(points), np.nan)


def light_in_slice(
    plan: Plan,
    axis: Axis,
    place: float,
    options: EstimateOptions | None = None,
    *,
    cache: Cache | None = None,
    progress: Callable[[float], None] | None = None,
    cancelled: Callable[[], bool] | None = None,
) -> Slice:
    """The light in the slice that one looking along ``axis`` sees at ``place`` on it (metres).

    At canopy height it is that of the map of the same ``options``, but for what their cells
    differ in. Close to walls the slice is moved in until all of its thickness lies in the
    space's bounding rectangle.

    Raises
    ------
    planner.estimate.evaluate.Cancelled
        If ``cancelled`` said so.
    planner.light.exchange.NothingAbsorbsError
        If no surface or opening takes up light.
    """
    options = options or EstimateOptions()
    step = checking(cancelled)
    scene = build_scene(plan)
    room, report = scene.room, progress or untold
    cache = cache or Cache()
    parts = solved_parts(scene, options, cache, lambda part: report(0.3 * part), cancelled)
    prism = parts[0].geometry.surfaces.prism
    strip = _Strip(prism, axis, place, options.cells)
    low = max(room.z0, 0.0 if plan.canopy.closed else 1e-3)
    count = round(min(max((room.z1 - low) / _APART, _LEVELS[0]), _LEVELS[1]))
    edges = np.linspace(low, room.z1, count + 1)
    heights = (edges[1:] + edges[:-1]) / 2
    direct = np.full((count, strip.cells), np.nan)
    for k, height in enumerate(heights):
        direct[k] = _direct(scene, parts[0], strip, float(height), step)
        report(0.3 + 0.3 * (k + 1) / count)
    levels = _gathered_on(scene, low, room.z1)
    gathered, chance = np.zeros((2, len(levels), strip.cells))
    for number, found in enumerate(parts):
        leaves = _leaving(found)
        for k, level in enumerate(levels):
            reflected, by_chance = _reflected(found, strip, float(level), leaves, step)
            gathered[k] += reflected
            chance[k] += by_chance
            report(0.6 + 0.4 * (number + (k + 1) / len(levels)) / len(parts))
    values = direct + _joined(levels, gathered, heights)
    estimate = estimate_scene(plan, scene, options, cache, untold, cancelled)
    error, mean = estimate.numeric_error, float(np.nanmean(gathered))
    if error is not None and mean > 0:
        share = math.sqrt(float(np.nanmean(chance**2))) / mean
        error = math.hypot(error, share * estimate.reflected)
    light = CellMap(_as_means(values), strip.edges, edges)
    return Slice(plan, axis, place, light, strip.spans, error)


class _Strip:
    """Cells in a row along the slice, as wide and as thick as those of the map."""

    def __init__(self, prism: Prism, axis: Axis, place: float, cells: tuple[int, int]) -> None:
        self._prism, self._along = prism, 0 if axis == "y" else 1
        low, high = prism.corners.min(axis=0), prism.corners.max(axis=0)
        aside = 1 - self._along
        half = (high[aside] - low[aside]) / cells[aside] / 2
        middle = float(np.clip(place, low[aside] + half, high[aside] - half))
        low[aside], high[aside] = middle - half, middle + half
        self._part = (tuple(low.tolist()), tuple(high.tolist()))
        self.cells = cells[self._along]
        self.edges = np.linspace(low[self._along], high[self._along], self.cells + 1)
        self.spans = tuple(_chords(prism.corners, self._along, middle))

    def at(self, height: float) -> CellGrid | None:
        """The cells at a height; None where obstacles cover all of them."""
        shape = (self.cells, 1) if self._along == 0 else (1, self.cells)
        try:
            return CellGrid.over(self._prism, *shape, height, self._part)
        except CoveredError:
            return None

    def row(self, grid: CellGrid, values: FloatArray) -> FloatArray:
        """Values (C,) of a grid in a row, (cells,), with NaN where there is none."""
        return grid.on_map(values).ravel()


def _chords(corners: FloatArray, along: int, aside: float) -> Iterator[tuple[float, float]]:
    """From where to where a line across one axis lies inside a polygon."""
    met = []
    for start, end in zip(corners, np.roll(corners, -1, axis=0), strict=True):
        a, b = start[1 - along], end[1 - along]
        if (a > aside) != (b > aside):
            met.append(float(start[along] + (aside - a) / (b - a) * (end[along] - start[along])))
    met.sort()
    yield from zip(met[::2], met[1::2], strict=True)


def _direct(
    scene: Scene, found: Solved, strip: _Strip, height: float, step: Callable[[], None]
) -> FloatArray:
    """Direct light of all lamps of a scene on one level, (cells,)."""
    grid = strip.at(height)
    if grid is None:
        return np.full(strip.cells, np.nan)
    total = strip.row(grid, np.zeros(len(grid.inside)))
    prism, shade = found.geometry.surfaces.prism, found.share.shade
    for lamp, flux in zip(scene.lamps, scene.fluxes, strict=True):
        step()
        # The light of a tilted lamp that is nearer is evened out where it is reckoned.
        near = lamp.centre[2] - (0.0 if lamp.tilt else _NEAREST)
        there = strip.at(near) if near < height < lamp.centre[2] else grid
        if there is not None:
            found_there, _ = direct_on_cells(there, prism, lamp.source(), shade, step)
            total += flux * np.nan_to_num(strip.row(there, found_there))
    return total


def _gathered_on(scene: Scene, low: float, high: float) -> FloatArray:
    """Levels on which reflected light is gathered: evenly, and on both sides of jumps."""
    levels = set(np.linspace(low, high - _BESIDE, _GATHERED).tolist())
    ends = (lamp.source().outline[2] for lamp in scene.lamps)
    faces = {round(float(end), 3) for face in ends for end in (face.min(), face.max())}
    edges = {round(edge, 3) for box in scene.room.boxes for edge in box.lies}
    for jump in [*sorted(faces), *sorted(edges - faces)][:_MOST_JUMPS]:
        levels |= {jump - _BESIDE, jump + _BESIDE}
    return np.array(sorted(level for level in levels if low <= level <= high - _BESIDE))


def _leaving(found: Solved) -> tuple[FloatArray, FloatArray]:
    """What leaves the texels diffusely for all lamps, and what of it in spots; (T,) each."""
    scene, surfaces = found.scene, found.geometry.surfaces
    exitance, bright = np.zeros((2, surfaces.texel_count))
    for lamp, flux, one in found.lights:
        _, leaves, lit, _ = leaving(scene, surfaces, found.balance, found.light_of(lamp))
        # What the balance knows better of the canopy is as true of the levels above it.
        exitance += flux * one.scale * leaves
        bright += flux * one.scale * lit
    return exitance, bright


def _reflected(
    found: Solved,
    strip: _Strip,
    height: float,
    leaves: tuple[FloatArray, FloatArray],
    step: Callable[[], None],
) -> tuple[FloatArray, FloatArray]:
    """Light on one level that has been reflected, and what chance leaves in it; (cells,) each."""
    grid = strip.at(height)
    if grid is None:
        return np.full(strip.cells, np.nan), np.full(strip.cells, np.nan)
    options, surfaces = found.options, found.geometry.surfaces
    mirrors, effort = found.mirrors, found.share
    rays = gather_rays(found.geometry, mirrors, effort)
    exitance, bright = leaves
    random = np.random.default_rng([options.seed, 4])
    gather = gather_paths(surfaces, grid, mirrors, rays, random, effort.cutoff, step)
    spots = np.flatnonzero(bright)
    halves = gather.apply(exitance, bright if spots.size else None)
    total, chance = halves.sum(axis=0), np.abs(halves[0] - halves[1])
    if spots.size:
        total += light_of_spots(surfaces, grid, spots, bright, found.share.shade, step)
    mirrored, variance = _mirrored(found, grid, step)
    return (
        strip.row(grid, total + mirrored),
        strip.row(grid, np.sqrt(chance**2 + variance)),
    )


def _mirrored(
    found: Solved, grid: CellGrid, step: Callable[[], None]
) -> tuple[FloatArray, FloatArray]:
    """Light on the cells (C,) that came from lamps by way of mirrors only, and its variance."""
    total, variance = np.zeros((2, len(grid.inside)))
    mirrors, surfaces = found.mirrors, found.geometry.surfaces
    if not (mirrors.followed > found.share.cutoff).any():
        return total, variance
    coarse = CellGrid.over(surfaces.prism, *FIRST_LOOK, grid.z)
    geometry = Geometry(surfaces, grid, grid, coarse)
    share = replace(
        found.share,
        spread_photons=found.share.spread_photons // _LESS,
        lobe_photons=found.share.lobe_photons // _LESS,
    )
    for lamp, flux in zip(found.scene.lamps, found.scene.fluxes, strict=True):
        step()
        mirrored, images, faint, _ = by_mirrors(
            geometry, lamp.source(), mirrors, found.options.seed, share, 0.0, step
        )
        scale = found.light_of(lamp).scale
        total += flux * (images + scale * faint)
        total += flux * scale * mirrored.glints / grid.inside_area
        variance += (flux * scale / grid.inside_area) ** 2 * mirrored.glint_variance
    return total, variance


def _as_means(values: FloatArray) -> FloatArray:
    """Means of cells (levels, cells) whose middles are read as these values over their height.

    Undoes what ``CellMap`` does to means along a column, wherever three known cells are in a row.
    """
    means = np.full(values.shape, np.nan)
    for known, alike in _alike(np.isfinite(values)):
        inner = np.flatnonzero(known[2:] & known[1:-1] & known[:-2]) + 1
        matrix = np.eye(len(values))
        for off, weight in ((-1, -1.0), (0, 2.0), (1, -1.0)):
            matrix[inner, inner + off] += weight / 24
        if known.any():
            means[np.ix_(known, alike)] = np.linalg.solve(
                matrix[np.ix_(known, known)], values[np.ix_(known, alike)]
            )
    return means


def _alike(known: npt.NDArray[np.bool_]) -> Iterator[tuple[npt.NDArray[np.bool_], IntArray]]:
    """Cells (n,) that obstacles and housings leave out on the same levels, and those they keep."""
    for kind in np.unique(known, axis=1).T:
        yield kind, np.flatnonzero((known == kind[:, None]).all(axis=0))


def _joined(levels: FloatArray, values: FloatArray, heights: FloatArray) -> FloatArray:
    """Values (levels, cells) read at other heights between them, (heights, cells)."""
    joined = np.zeros((len(heights), values.shape[1]))
    for known, alike in _alike(np.isfinite(values)):
        if known.sum() > 1:
            joined[:, alike] = _monotone(levels[known], values[known][:, alike], heights)
    return np.maximum(joined, 0.0)


def _monotone(x: FloatArray, y: FloatArray, at: FloatArray) -> FloatArray:
    """Monotone cubics through y (n, m) at x (n,), read at ``at`` (k,); level beyond the ends.

    By hand: scipy's would take 28 MB and a third of a second of every start that shows a side
    view, and round the ends off otherwise.
    """
    width = np.diff(x)[:, None]
    slope = np.diff(y, axis=0) / width
    # The slope at a place is a harmonic mean of those about it, none at a peak or a foot.
    first, second = 2 * width[1:] + width[:-1], width[1:] + 2 * width[:-1]
    with np.errstate(divide="ignore", invalid="ignore"):
        mean = (first + second) / (first / slope[:-1] + second / slope[1:])
    inner = np.where(slope[:-1] * slope[1:] > 0, mean, 0.0)
    bend = np.concatenate([slope[:1], inner, slope[-1:]])
    at = np.clip(at, x[0], x[-1])
    k = np.clip(np.searchsorted(x, at, side="right") - 1, 0, len(x) - 2)
    t = ((at - x[k]) / width[k, 0])[:, None]
    blend, bow = t * t * (3 - 2 * t), t * (1 - t) * width[k]
    made: FloatArray = (1 - blend) * y[k] + blend * y[k + 1]
    made += bow * ((1 - t) * bend[k] - t * bend[k + 1])
    return made
