"""What an estimate holds: a frozen answer to one plan, its figures, and what work it took."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, replace
from enum import StrEnum
from functools import cached_property
from typing import Any, Final

import numpy as np
import numpy.typing as npt

from planner.light.cellmap import CellMap
from planner.light.polygon import inside_polygon
from planner.metrics.figures import (
    band_shares,
    daily_light_integral,
    efficacy,
    evenness,
    kilowatt_hours_per_day,
    utilisation,
)
from planner.plan.lit import counted
from planner.plan.place import Place, PlaceKind
from planner.plan.plan import Plan
from planner.plan.wavebands import FAR_RED
from planner.units import listed

FloatArray = npt.NDArray[np.float64]


class Quality(StrEnum):
    """How much work goes into an estimate."""

    PREVIEW = "preview"
    DEFAULT = "default"
    FINE = "fine"


@dataclass(frozen=True)
class EstimateOptions:
    """What is asked of an estimate: map size (columns, rows), quality and seed."""

    cells: tuple[int, int] = (24, 24)
    quality: Quality = Quality.DEFAULT
    seed: int = 1


@dataclass(frozen=True)
class Figures:
    """The figures of a map, area-weighted over the cells inside the footprint.

    PPFD in µmol m⁻² s⁻¹, DLI in mol m⁻² d⁻¹, ratios and shares as fractions of 1; the
    shares of a band are None without a target, those of colours where the colour of a lamp is not
    known. ``efficacy`` is ΣΦ per electrical watt
    (µmol J⁻¹), ``utilisation`` the canopy's mean PPFD times its area over ΣΦ. Both are
    None where no lamp gives light.
    """

    mean: float
    minimum: float
    maximum: float
    min_over_mean: float | None
    min_over_max: float | None
    cv: float | None
    share_under: float | None
    share_inside: float | None
    share_over: float | None
    dli: float
    utilisation: float | None
    efficacy: float | None
    photon_flux: float
    watts: float
    watts_per_m2: float
    kwh_per_day: float
    canopy_area: float
    eppfd: float | None = None
    blue_share: float | None = None
    red_share: float | None = None
    far_red_share: float | None = None


@dataclass(frozen=True)
class Share:
    """Where part of the photons ended, and the absorbed flux in µmol s⁻¹."""

    place: Place
    photon_flux: float
    share: float


@dataclass(frozen=True)
class Recount:
    """Flux on the canopy counted photon by photon, in µmol s⁻¹, and its standard error.

    Shares neither images nor exchange nor gather with the estimate.
    """

    flux: float
    standard_error: float
    photons: int

    def difference(self, figures: Figures) -> float:
        """(estimate - count) / count of the mean PPFD."""
        return figures.mean * figures.canopy_area / self.flux - 1 if self.flux > 0 else 0.0

    def beyond_chance(self, figures: Figures) -> float:
        """What of the difference three standard errors of the count cannot explain."""
        if self.flux <= 0:
            return 0.0
        return max(abs(self.difference(figures)) - 3 * self.standard_error / self.flux, 0.0)


@dataclass(frozen=True)
class Top:
    """The light on the canopy that an obstacle carries on its top.

    ``place`` is that canopy; ``ppfd``, ``x``, ``y`` and ``cell_area`` are as those of an
    ``Estimate``, over the bounding rectangle of the obstacle. ``numeric_error`` is the relative
    rms error of a cell to expect from the computation.
    """

    place: Place
    ppfd: FloatArray
    x: FloatArray
    y: FloatArray
    cell_area: FloatArray
    figures: Figures
    numeric_error: float | None = None
    reflected: float = 0.0
    entered: float = 0.0

    @property
    def inside(self) -> npt.NDArray[np.bool_]:
        """Which cells are part of the canopy, (ny, nx)."""
        return ~np.isnan(self.ppfd)

    @cached_property
    def map(self) -> CellMap:
        """The map for reading between its cells."""
        half = (self.x[1] - self.x[0]) / 2, (self.y[1] - self.y[0]) / 2
        ends = self.x[0] - half[0], self.y[0] - half[1], self.x[-1] + half[0], self.y[-1] + half[1]
        return CellMap.about(self.ppfd, self.x, self.y, ends)

    def outline(self, plan: Plan) -> tuple[tuple[float, float], ...]:
        """Its corners on the plan, in metres."""
        return plan.obstacles[self.place.index].outline()


@dataclass(frozen=True)
class Estimate:
    """The light a plan gives.

    Attributes
    ----------
    ppfd
        Map of cell means, shape (ny, nx), rows by rising y, NaN outside the footprint
        and inside obstacles.
    x, y
        Cell centres in metres, shapes (nx,) and (ny,).
    cell_area
        Area of each cell inside the footprint in m², shape (ny, nx).
    shares
        Absorbed photon flux by surface; adds up to ΣΦ but for ``closure``.
    closure
        (absorbed - emitted) / emitted; 0 in a perfect balance. The method conserves energy
        by construction, so this guards against mistakes rather than measuring accuracy.
    cross_check
        Relative difference between two independent reckonings of the diffuse light on a
        closed canopy (from the map's side and from the walls' side) before they are
        reconciled, as a share of the mean; a first idea of the numerical error. None for
        an open canopy or without diffuse light.
    numeric_error
        Relative rms error of a cell to expect from the computation itself (not from wrong
        inputs): what chance leaves in gathered light, in wrinkled mirrors and in images seen
        in part (at fine quality as independent runs differ), with the cross-check, times a
        factor, a share of the reflected light and, where something stands in the light, a
        share of the mean, all set by random rooms; how often it covers what is found stands
        in resources/docs/validation.md. A difference beyond
        chance of ``recount``, once counted, is added.
    reflected
        Share of the mean that was reflected before it came to the map.
    cell_error
        At fine quality the standard error of each cell in µmol m⁻² s⁻¹, shape (ny, nx), by
        independent runs: chance alone. What the runs share, such as the division of walls
        into patches, stands in ``numeric_error`` only.
    bands
        Maps as ``ppfd`` of each waveband of ``plan.wavebands``, far-red too, in µmol m⁻² s⁻¹;
        None where the colour of some lamp is not known.
    recount
        The light on the canopy counted by independent means, where that was asked for.
    entered
        What of the mean came in at the open door, in µmol m⁻² s⁻¹.
    tops
        The light on each canopy that an obstacle carries, from the lowest to the highest; all
        else here is about the plan's own canopy.
    seconds
        Wall-clock time of the computation.
    """

    plan: Plan
    options: EstimateOptions
    ppfd: FloatArray
    x: FloatArray
    y: FloatArray
    cell_area: FloatArray
    figures: Figures
    shares: tuple[Share, ...]
    closure: float
    seconds: float
    cross_check: float | None = None
    numeric_error: float | None = None
    reflected: float = 0.0
    cell_error: FloatArray | None = None
    recount: Recount | None = None
    bands: Mapping[str, FloatArray] | None = None
    tops: tuple[Top, ...] = ()
    entered: float = 0.0

    @cached_property
    def overall(self) -> Figures:
        """The figures of all canopies together, weighted by area; of one alone, its own.

        What lies in a band lies in that of its own canopy; None where one has no target.
        """
        if not self.tops:
            return self.figures
        one, cells = ~np.isnan(self.ppfd), self.every_ppfd
        areas = np.concatenate(
            [self.cell_area[one], *(top.cell_area[top.inside] for top in self.tops)]
        )
        both: tuple[Estimate | Top, ...] = (self, *self.tops)
        each = [one.figures for one in both]
        sizes = [figures.canopy_area for figures in each]
        entered = np.average([one.entered for one in both], weights=sizes)
        found = figures_of(self.plan, cells, areas, entered=float(entered))
        shares: dict[str, Any] = {}
        for key in ("share_under", "share_inside", "share_over"):
            parts = [getattr(figures, key) for figures in each]
            shares[key] = None if None in parts else float(np.average(parts, weights=sizes))
        return replace(found, **shares)

    @property
    def every_ppfd(self) -> FloatArray:
        """PPFD of all cells of all canopies (n,)."""
        maps = (self.ppfd, *(top.ppfd for top in self.tops))
        return np.concatenate([one[~np.isnan(one)] for one in maps])

    def seen_at(self, x: FloatArray, y: FloatArray) -> FloatArray:
        """As ``at``, but on the highest canopy at each point, as one looks from above."""
        found = self.at(x, y)
        for top in self.tops:
            over = inside_polygon(np.array(top.outline(self.plan)), x, y)
            found[over] = top.map.at(np.column_stack([x, y])[over])
        return found

    @cached_property
    def map(self) -> CellMap:
        """The map for reading between its cells."""
        return CellMap.about(self.ppfd, self.x, self.y, self.plan.space.bounds)

    def shows(self, x: FloatArray, y: FloatArray) -> npt.NDArray[np.bool_]:
        """Whether there is light to show at points of any shape: in the space, in no obstacle."""
        inside = inside_polygon(np.array(self.plan.space.footprint), x, y)
        for obstacle in self.plan.in_canopy:
            inside &= ~inside_polygon(np.array(obstacle.outline()), x, y)
        return inside

    def at(self, x: FloatArray, y: FloatArray) -> FloatArray:
        """PPFD at points (n,) in metres, shape (n,); NaN where there is no light to show."""
        points = np.column_stack([x, y])
        known = self.shows(x, y) & self.map.covers(points)
        return np.where(known, self.map.at(points), np.nan)

    def with_recount(self, count: Recount | None) -> Estimate:
        """The estimate with a count beside it.

        Where the two means differ beyond chance, the difference is numerical error too.
        """
        if count is None:
            return self
        error = self.numeric_error
        if error is not None:
            error = math.hypot(error, count.beyond_chance(self.figures))
        return replace(self, recount=count, numeric_error=error)


# -- work of each quality, measured in tests/bench and tests/reference -------------------


@dataclass(frozen=True)
class Effort:
    """Numbers of patches (wanted), texels per patch edge, rays and photons.

    ``cutoff`` is the weight below which a chain of mirrors is no longer followed,
    ``quadrature`` the relative error allowed to the sum over a mirrored lamp, ``edges`` the
    points along a side of one that mirrors show in part, ``shade`` the fewest points along a
    side of a lamp, or of a cell, before which something may stand, ``passed`` the most mirrors
    that its images pass in all where they must be followed line by line, ``spots`` the most
    texels that a lamp lights up as spots. Where mirrors are wrinkled, ``spread_photons`` tell
    what they send to the map, ``lobe_photons`` of them by their lobes.
    """

    patches: int
    fine: int
    exchange_rays: int
    gather_rays: int
    photons: int
    cutoff: float
    quadrature: float
    edges: int
    spread_photons: int
    lobe_photons: int
    shade: int = 7
    passed: int = 8000
    spots: int = 160

    def shared_among(self, lamps: int) -> Effort:
        """What each of so many lamps is given.

        Beyond a few, what is left to chance in the light of one matters less, and what is not
        even in it the others even out: the same accuracy of the whole needs less for each.
        Wrinkled mirrors leave nothing but chance, and chances of lamps are unrelated: there the
        work of one lamp is divided among all. So are the images that are followed and the spots,
        each of which is a smaller part of the whole: 24 lamps over 24 pots differ by 0.05 %.
        """
        part = min(1.0, _FEW_LAMPS / max(lamps, 1))
        share = math.sqrt(part)
        return replace(
            self,
            photons=round(self.photons * share),
            spread_photons=max(self.spread_photons // max(lamps, 1), _FEWEST_SPREAD),
            lobe_photons=max(self.lobe_photons // max(lamps, 1), _FEWEST_LOBES),
            edges=max(1, round(self.edges * share)),
            shade=max(3, round(self.shade * share)),
            passed=round(self.passed * part),
            spots=round(self.spots * part),
        )


_FEW_LAMPS = 4
_FEWEST_SPREAD, _FEWEST_LOBES = 1 << 14, 1 << 10


def rays_for(rays: int, mean_specular: float) -> int:
    """Rays to cast for about the same work.

    Without mirrors every ray ends at once; diffuse enclosures also need rays most, since
    light comes from all of the walls. Where mirrors are near perfect each ray meets many
    surfaces on its way and fewer rays see as much.
    """
    more = 1 + 2 * max(0.0, 1 - mean_specular / 0.3)
    fewer = min(1.0, max(0.25, (1 - mean_specular) / 0.3))
    return max(round(rays * more * fewer), 16)


EFFORTS = {
    Quality.PREVIEW: Effort(120, 2, 56, 32, 4096, 1e-2, 2e-2, 2, 65536, 4096),
    Quality.DEFAULT: Effort(400, 4, 160, 256, 16384, 2e-3, 1e-3, 6, 163840, 20480),
    Quality.FINE: Effort(900, 4, 512, 2048, 131072, 2e-4, 2e-4, 8, 524288, 65536),
}


# -- figures of a map and where its photons went ---------------------------------------


def figures_of(
    plan: Plan,
    cells: FloatArray,
    areas: FloatArray,
    bands: Mapping[str, FloatArray] | None = None,
    entered: float = 0.0,
) -> Figures:
    """Figures from PPFD of the cells (C,) and their areas (C,), which make up the canopy.

    ``bands`` holds the PPFD of each waveband (C,), where known; ``entered`` is as of ``Estimate``.
    """
    stats, hours, band = evenness(cells, areas), plan.photoperiod_hours, plan.ppfd_band
    shares = band_shares(cells, areas, *band) if band is not None else (None, None, None)
    flux, watts = plan.ppf, plan.watts
    area = float(areas.sum())
    return Figures(
        mean=stats.mean,
        minimum=stats.minimum,
        maximum=stats.maximum,
        min_over_mean=stats.min_over_mean,
        min_over_max=stats.min_over_max,
        cv=stats.cv,
        share_under=shares[0],
        share_inside=shares[1],
        share_over=shares[2],
        dli=daily_light_integral(stats.mean, hours, entered, plan.space.room_hours),
        utilisation=utilisation(stats.mean - entered, area, flux),
        efficacy=efficacy(flux, watts) if flux > 0 else None,
        photon_flux=flux,
        watts=watts,
        watts_per_m2=watts / area,
        kwh_per_day=kilowatt_hours_per_day(watts, hours),
        canopy_area=area,
        **_colours(stats.mean, areas, bands),
    )


def top_of(plan: Plan, top: Top) -> Top:
    """The canopy on a top with its figures anew: those of its own target, or of the plan's."""
    carried = plan.obstacles[top.place.index].canopy
    if carried is not None and carried.target is not None:
        plan = plan.model_copy(update={"target": carried.target})
    inside = top.inside
    cells, areas = top.ppfd[inside], top.cell_area[inside]
    return replace(top, figures=figures_of(plan, cells, areas, entered=top.entered))


def _colours(
    mean: float, areas: FloatArray, bands: Mapping[str, FloatArray] | None
) -> dict[str, float]:
    if bands is None or mean <= 0:
        return {}
    means = {band: float(np.average(cells, weights=areas)) for band, cells in bands.items()}
    extended = mean + means[FAR_RED]
    return {
        "eppfd": extended,
        "blue_share": means["blue"] / mean,
        "red_share": means["red"] / mean,
        "far_red_share": means[FAR_RED] / extended,
    }


def of_plan(estimate: Estimate, plan: Plan) -> Estimate:
    """An estimate as that of a plan of the same light: its figures anew, its map as it is.

    Hours, target and watts change figures only (see ``plan.lit``).
    """
    if counted(plan) == counted(estimate.plan):
        return replace(estimate, plan=plan)
    inside = ~np.isnan(estimate.ppfd)
    bands = estimate.bands and {band: cells[inside] for band, cells in estimate.bands.items()}
    areas, tops = estimate.cell_area[inside], tuple(top_of(plan, top) for top in estimate.tops)
    figures = figures_of(plan, estimate.ppfd[inside], areas, bands, estimate.entered)
    return replace(estimate, plan=plan, figures=figures, tops=tops)


def shares_of(places: tuple[Place, ...], absorbed: FloatArray, emitted: float) -> tuple[Share, ...]:
    """Where the photons ended: canopies or floor first, then in the order of the facets.

    Facets of one place (the faces of a box) are added up.
    """
    flux: dict[Place, float] = {}
    for place, part in zip(places, absorbed, strict=True):
        flux[place] = flux.get(place, 0.0) + float(part)
    rows = [
        Share(place, amount, amount / emitted if emitted > 0 else 0.0)
        for place, amount in flux.items()
    ]
    return tuple(sorted(rows, key=lambda row: _RANK.get(row.place.kind, len(_RANK))))


_RANK = {PlaceKind.CANOPY: 0, PlaceKind.FLOOR: 0, PlaceKind.TOP: 1}


# -- what is not known of an estimate, in words ------------------------------------------

_INPUTS: Final = {
    "reflectance": "reflectance of {}",
    "photon flux": "photon flux of {}",
    "beam": "beam of {}",
    "hanging height": "hanging height of {}",
}
_MEASURED_BY: Final = {
    "reflectance": "a survey with {}",
    "photon flux": "a survey of {} in open air",
    "beam": "the test of two readings under {}",
    "hanging height": "measuring the hanging height of {}",
}


def measured_by(quantity: str, words: str) -> str:
    """Which measurement narrows an uncertain input ('reflectance of Foil'); '' where none does."""
    name = words.removeprefix(input_words(quantity, "")) if quantity in _INPUTS else words
    return _MEASURED_BY.get(quantity, "").format(name)


def input_words(quantity: str, name: str) -> str:
    """What an uncertain input is called: 'reflectance of Foil'."""
    return _INPUTS[quantity].format(name)


_LEFT_OUT: Final = (
    "dirt and age beyond what was entered",
    "a beam of another shape than taken",
    "leaves that do not fill the canopy",
    "specular share and wrinkle of linings",
)


def not_counted(*more: str) -> str:
    """The sentence on what neither a band of uncertainty nor a chance of winning holds."""
    return f"Not counted: {listed((*_LEFT_OUT, *more))}."
