"""What an estimate holds: a frozen answer to one plan, its figures, and what work it took."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, fields, replace
from enum import StrEnum
from functools import cached_property
from typing import Any, Final

import numpy as np
import numpy.typing as npt

from planner.estimate.canopies import lit_together
from planner.light.cellmap import CellMap
from planner.light.polygon import inside_polygon
from planner.metrics.colours import Bands, colour_figures, coloured, combined, part_of
from planner.metrics.figures import (
    COLOURS,
    FIGURE,
    band_shares,
    daily_light_integral,
    efficacy,
    evenness,
    kilowatt_hours_per_day,
    percent,
    utilisation,
)
from planner.plan.lit import counted
from planner.plan.place import OWN, Place, PlaceKind, band_at, judged, target_at
from planner.plan.plan import Plan
from planner.plan.space import contains
from planner.plan.target import Target
from planner.plan.tiers import from_above
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


QUICK: Final = EstimateOptions((12, 12), Quality.PREVIEW)
"""Enough for derivatives and differences, which share their paths of light."""


@dataclass(frozen=True)
class Figures:
    """The figures of a map, area-weighted over the cells inside the footprint.

    PPFD in µmol m⁻² s⁻¹, DLI in mol m⁻² d⁻¹, ratios and shares as fractions of 1; the
    shares of a band are None without a target, those of colours where the colour of a lamp is not
    known. ``efficacy`` is ΣΦ per watt (µmol J⁻¹), ``utilisation`` the mean PPFD times the area over
    ΣΦ, both None without light; of several canopies that and ``watts_per_m2`` are of all together.
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


@dataclass(frozen=True, kw_only=True)
class CanopyLight:
    """The light on one canopy of a plan: its own, or one that an obstacle carries.

    Attributes
    ----------
    place
        Which canopy: the plan's own, or that on the top of an obstacle.
    ppfd
        Map of cell means, shape (ny, nx), rows by rising y, NaN outside the canopy and, of the
        plan's own, inside obstacles. Over the bounding rectangle of the footprint or obstacle.
    x, y
        Cell centres in metres, shapes (nx,) and (ny,).
    cell_area
        Area of each cell inside the canopy in m², shape (ny, nx).
    figures
        By the target of that canopy.
    numeric_error
        Relative rms error of a cell to expect from the computation itself (not from wrong
        inputs): what chance leaves (at fine quality as independent runs differ), the cross-check,
        ``divided``, shares that stand for the rest (how often it covers what is found stands in
        resources/docs/validation.md), and the ``recount``'s difference beyond chance.
    reflected
        Share of the mean that was reflected before it came to the map.
    divided
        The same of division into patches and rays between them alone; see ``light.division``.
    entered
        What of the mean came in at the open door, in µmol m⁻² s⁻¹.
    bands
        Maps as ``ppfd`` of each waveband of ``plan.wavebands``, far-red too, in µmol m⁻² s⁻¹;
        None where the colour of some lamp is not known.
    """

    plan: Plan
    place: Place = OWN
    ppfd: FloatArray
    x: FloatArray
    y: FloatArray
    cell_area: FloatArray
    figures: Figures
    numeric_error: float | None = None
    reflected: float = 0.0
    divided: float = 0.0
    entered: float = 0.0
    bands: Bands | None = None

    @property
    def inside(self) -> npt.NDArray[np.bool_]:
        """Which cells are part of the canopy, (ny, nx)."""
        return ~np.isnan(self.ppfd)

    @property
    def map(self) -> CellMap:
        """The map of PPFD for reading between its cells."""
        return self.maps["mean"]

    @cached_property
    def maps(self) -> Mapping[str, CellMap]:
        """Such maps by the keys of their figures, in their units: PPFD, and colours where known."""
        ends = self.plan.space.bounds
        if self.place != OWN:
            half = (self.x[1] - self.x[0]) / 2, (self.y[1] - self.y[0]) / 2
            ends = (
                *(self.x[0] - half[0], self.y[0] - half[1]),
                *(self.x[-1] + half[0], self.y[-1] + half[1]),
            )
        return {
            key: CellMap.about(FIGURE[key].scale * values, self.x, self.y, ends)
            for key, values in coloured(self.ppfd, self.bands).items()
        }

    @property
    def target(self) -> Target | None:
        """What is wanted on it."""
        return target_at(self.plan, self.place)

    @property
    def band(self) -> tuple[float, float] | None:
        """The band wanted on it in µmol m⁻² s⁻¹; None where none can be told."""
        return band_at(self.plan, self.place, self.entered)

    @property
    def outline(self) -> tuple[tuple[float, float], ...]:
        """Its corners on the plan, in metres."""
        if self.place == OWN:
            return self.plan.space.footprint
        return self.plan.obstacles[self.place.index].outline()

    def shows(self, x: FloatArray, y: FloatArray) -> npt.NDArray[np.bool_]:
        """Whether there is light to show at points of any shape: on it, in no obstacle."""
        inside = inside_polygon(np.array(self.outline), x, y)
        for obstacle in self.plan.in_canopy if self.place == OWN else ():
            inside &= ~inside_polygon(np.array(obstacle.outline()), x, y)
        return inside

    def at(self, x: FloatArray, y: FloatArray, key: str = "mean") -> FloatArray:
        """PPFD, or another of ``maps``, at points (n,) in metres; NaN where nothing is to show."""
        points, read = np.column_stack([x, y]), self.maps[key]
        known = self.shows(x, y) & read.covers(points)
        return np.where(known, read.at(points), np.nan)

    def value(self, x: float, y: float) -> float | None:
        """PPFD at one point in metres; None where there is no light to show."""
        found = float(self.at(np.array([x]), np.array([y]))[0])
        return found if math.isfinite(found) else None


@dataclass(frozen=True, kw_only=True)
class Estimate(CanopyLight):
    """The light a plan gives: on the canopy it is judged by, and on every other.

    Attributes
    ----------
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
    cell_error
        At fine quality the standard error of each cell in µmol m⁻² s⁻¹, shape (ny, nx), by
        independent runs: chance alone. What the runs share, such as the division of walls
        into patches, stands in ``numeric_error`` only.
    recount
        The light on the canopy counted by independent means, where that was asked for.
    walls
        PPFD on parts of each wall (walls, up, along): see ``planner.light.on_walls``.
    tops
        The light on each canopy that an obstacle carries, from the lowest to the highest.
    beneath
        The estimate as judged by the plan's own canopy where that is another; see ``own``.
    seconds
        Wall-clock time of the computation.
    """

    options: EstimateOptions
    shares: tuple[Share, ...]
    closure: float
    seconds: float
    cross_check: float | None = None
    cell_error: FloatArray | None = None
    recount: Recount | None = None
    walls: FloatArray | None = None
    tops: tuple[CanopyLight, ...] = ()
    beneath: Estimate | None = None

    @property
    def own(self) -> Estimate:
        """The estimate as judged by the plan's own canopy."""
        return self.beneath or self

    @property
    def canopies(self) -> tuple[CanopyLight, ...]:
        """The light on every canopy: the plan's own, then those on tops from the lowest up."""
        return (self.own, *self.tops)

    def on(self, place: Place) -> Estimate:
        """The same light as judged by another canopy; by the plan's own where none is lit there.

        What is known of the plan's own canopy only (its count, cross-check, chance) is left out.
        """
        own = self.own
        top = next((top for top in self.tops if top.place == place), None)
        if top is None or place == self.place:
            return self if place == self.place else own
        parts: dict[str, Any] = {each.name: getattr(top, each.name) for each in fields(CanopyLight)}
        return replace(own, **parts, cross_check=None, cell_error=None, recount=None, beneath=own)

    @cached_property
    def overall(self) -> Figures:
        """The figures of all canopies together, weighted by area; of one alone, its own.

        What lies in a band lies in that of its own canopy; None where one has no target.
        """
        if not self.tops:
            return self.figures
        areas = np.concatenate([one.cell_area[one.inside] for one in self.canopies])
        each = [one.figures for one in self.canopies]
        sizes = [figures.canopy_area for figures in each]
        entered = np.average([one.entered for one in self.canopies], weights=sizes)
        bands = combined([part_of(one.bands, one.inside) for one in self.canopies], np.concatenate)
        found = figures_of(self.plan, self.every_ppfd, areas, bands, float(entered))
        shares: dict[str, Any] = {}
        for key in ("share_under", "share_inside", "share_over"):
            parts = [getattr(figures, key) for figures in each]
            shares[key] = None if None in parts else float(np.average(parts, weights=sizes))
        return replace(found, **shares)

    @property
    def every_ppfd(self) -> FloatArray:
        """PPFD of all cells of all canopies (n,)."""
        return self.every("mean")

    def every(self, key: str) -> FloatArray:
        """All cells of one of the ``maps`` of all canopies (n,)."""
        return np.concatenate([one.maps[key].values[one.inside] for one in self.canopies])

    @property
    def layers(self) -> tuple[CanopyLight, ...]:
        """The canopies seen from above that of ``place``, the higher over the lower.

        What hangs over it is out of the way, as the figures tell of the light beneath.
        """
        seen, _ = from_above(self.plan, self.place)
        return (self.own, *(top for top in self.tops if top.place.index in seen))

    def top_at(self, x: float, y: float) -> CanopyLight:
        """Which of the ``layers`` is seen at a point in metres."""
        over = [one for one in self.layers[1:] if contains(one.outline, x, y)]
        return over[-1] if over else self.own

    def seen_at(self, x: FloatArray, y: FloatArray, key: str = "mean") -> FloatArray:
        """As ``at``, on which of the ``layers`` is seen at each point (n,)."""
        found = self.own.at(x, y, key)
        for top in self.layers[1:]:
            over = inside_polygon(np.array(top.outline), x, y)
            read = top.maps[key]  # where it is dark no colour has a share
            there = read.at(np.column_stack([x, y])[over])
            found[over] = there if read.valid.any() else np.nan
        return found

    def with_recount(self, count: Recount | None) -> Estimate:
        """The estimate with a count beside it, where it is judged by the plan's own canopy.

        Where the two means differ beyond chance, the difference is numerical error too.
        """
        if count is None or self.place != OWN:
            return self
        error = self.numeric_error
        if error is not None:
            error = math.hypot(error, count.beyond_chance(self.figures))
        return replace(self, recount=count, numeric_error=error)


# -- figures of a map and where its photons went ---------------------------------------


def figures_of(
    plan: Plan,
    cells: FloatArray,
    areas: FloatArray,
    bands: Bands | None = None,
    entered: float = 0.0,
    place: Place = OWN,
) -> Figures:
    """Figures from PPFD of the cells (C,) and their areas (C,), which make up a canopy.

    ``bands`` holds the PPFD of each waveband (C,), where known; ``entered`` is as of
    ``CanopyLight``, and ``place`` tells by whose target it is judged.
    """
    stats, hours = evenness(cells, areas), plan.photoperiod_hours
    band = band_at(plan, place, entered)
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
        **colour_figures(stats.mean, areas, bands),
    )


def top_of(plan: Plan, top: CanopyLight) -> CanopyLight:
    """The canopy on a top as of a plan: its figures anew."""
    cells, areas = top.ppfd[top.inside], top.cell_area[top.inside]
    bands = part_of(top.bands, top.inside)
    figures = figures_of(plan, cells, areas, bands, top.entered, top.place)
    return replace(top, plan=plan, figures=figures)


def of_plan(estimate: Estimate, plan: Plan) -> Estimate:
    """An estimate as that of a plan of the same light: its figures anew, its map as it is.

    Hours, target and watts change figures only (see ``plan.lit``).
    """
    own = estimate.own
    if counted(plan) == counted(own.plan):
        tops = tuple(replace(top, plan=plan) for top in own.tops)
        return replace(own, plan=plan, tops=tops).on(judged(plan))
    bands, areas = part_of(own.bands, own.inside), own.cell_area[own.inside]
    tops = tuple(top_of(plan, top) for top in own.tops)
    figures = figures_of(plan, own.ppfd[own.inside], areas, bands, own.entered)
    return lit_together(replace(own, plan=plan, figures=figures, tops=tops)).on(judged(plan))


_OF_CANOPY: Final = ("mean", "minimum", "min_over_mean", "dli", "canopy_area", *COLOURS)


def of_canopy(name: str, figures: Figures, keys: Sequence[str] = _OF_CANOPY) -> str:
    """What a canopy of a name gets, as a sentence of those of its figures that are known."""
    said = [
        f"{FIGURE[key].name} {FIGURE[key].text(value)}"
        for key in keys
        if (value := getattr(figures, key)) is not None or key not in COLOURS
    ]
    if figures.share_inside is not None:
        said.append(f"{percent(figures.share_inside)} of it inside its band")
    return f"{name}: {', '.join(said)}."


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
