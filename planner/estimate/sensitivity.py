"""Which wall to line first: what a little more reflectance of each surface would bring.

What is told is the difference that ten points of reflectance make, between two estimates that
follow the very same paths of light (one seed, one ``guide``), so that most chance cancels. A
step much smaller tells chance instead where boxes stand in the light: which images are followed
line by line changes with the least of a change (trays: wall 1 from 8.7 to 12.2 by the seed for
steps of half a point, where lining it brings 9.5). What chance is left is known from a second
seed, and surfaces that it does not tell apart are told as equal. Where a surface could also be
lined with something else altogether, ``brought_by`` gives the whole difference.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Collection, Sequence
from dataclasses import dataclass, replace
from typing import Final

import numpy as np

from planner.estimate.evaluate import Cache, estimate_scene, untold
from planner.estimate.result import CanopyLight, Estimate, EstimateOptions, FloatArray, Quality
from planner.estimate.scene import Optics, build_scene
from planner.plan.lining import Lining
from planner.plan.place import Place, PlaceKind
from planner.plan.plan import Plan

HELD = 16_000_000
"""Bytes of pieces kept between differences; each has paths of its own, so few are met again."""

TEN_POINTS: Final = 0.1
_LEAST_STEP: Final = 0.005
"""What is left of reflectance up to 1 is told downwards where it is less."""
_ALIKE: Final = 0.01
"""Gains of the mean that differ by less, relative to the larger, are equal for any purpose."""
_ALIKE_LOWEST: Final = 0.2
"""The same of the lowest spot, one cell: walls that are equal by symmetry (of a square cabinet and
the tent among the examples) were up to 14 % apart whatever two seeds said."""

LINED: Final = (PlaceKind.WALL, PlaceKind.CEILING, PlaceKind.FLOOR)
"""What can be given another lining to gain light."""


@dataclass(frozen=True)
class SurfaceGain:
    """What the reflectance of one surface is worth.

    ``mean_per_unit`` is what the next ten points of reflectance (or what is left of them up to
    100 %) at the present specular share bring to the mean PPFD, in µmol m⁻² s⁻¹ for a change of ρ
    by 1; multiply by 0.1 for ten points. ``minimum`` is what they bring to the lowest PPFD,
    wherever that lies then: of four dark corners one wall lifts two, and the other two stay the
    lowest. Surfaces that chance does not tell apart have the same figures.
    """

    place: Place
    reflectance: float
    mean_per_unit: float
    minimum: float


@dataclass
class Reckoner:
    """Estimates of one plan with other reflectances, free of chance against each other."""

    plan: Plan
    options: EstimateOptions
    cancelled: Callable[[], bool] | None = None

    def __post_init__(self) -> None:
        self.scene = build_scene(self.plan)
        self._cache = Cache(limit=HELD)
        self._lifted: dict[Place, tuple[float, FloatArray]] = {}
        self.base = self.with_optics(self.scene.optics)

    def with_optics(self, optics: Optics, guide: tuple[float, ...] | None = None) -> Estimate:
        """The estimate with these reflectances instead of the plan's.

        Chains of mirrors are followed as far as ``guide`` (the plan's own ρ_s) says.
        """
        scene = replace(self.scene, optics=optics)
        guide = guide or self.scene.optics.specular
        return estimate_scene(
            self.plan, scene, self.options, self._cache, untold, self.cancelled, guide
        )

    def lined_at(self, places: Sequence[Place], total: float) -> FloatArray:
        """PPFD of every cell (ny, nx) with another total reflectance of some surfaces."""
        facets = [k for k, other in enumerate(self.scene.places) if other in places]
        return self.with_optics(_changed(self.scene.optics, facets, total)).ppfd

    def lifted(self, place: Place) -> tuple[float, FloatArray]:
        """The points that one surface is given, and what they bring to every cell (ny, nx).

        Ten, or what is left up to 100 %; a trace downwards where next to nothing is.
        """
        if place not in self._lifted:
            total = _total(self.scene.optics, self.scene.places.index(place))
            left = min(TEN_POINTS, 1.0 - total)
            step = left if left >= _LEAST_STEP else -_LEAST_STEP
            self._lifted[place] = step, self.lined_at([place], total + step) - self.base.ppfd
        return self._lifted[place]


def gains_from(
    reckoner: Reckoner,
    progress: Callable[[float], None] | None = None,
    kinds: Collection[PlaceKind] = tuple(PlaceKind),
) -> tuple[SurfaceGain, ...]:
    """What the reflectance of each surface of some kinds is worth, the most for the mean first.

    Preview quality is enough for the reckoner, which may have done part of the work already:
    paths are shared, so only its small bias remains, and a little chance, of which another seed
    tells. An opening counts as a black surface that could be given a lining.

    Raises
    ------
    planner.estimate.evaluate.Cancelled
        If the reckoner was told so.
    """
    places = [place for place in dict.fromkeys(reckoner.scene.places) if place.kind in kinds]
    other = replace(reckoner.options, seed=reckoner.options.seed + 1)
    both = reckoner, Reckoner(reckoner.plan, other, reckoner.cancelled)
    pairs = []
    for done, place in enumerate(places):
        pairs.append([_gain(one, place) for one in both])
        if progress is not None:
            progress((done + 1) / len(places))
    means = _told_apart([(one.mean_per_unit, two.mean_per_unit) for one, two in pairs], _ALIKE)
    lowest = _told_apart([(one.minimum, two.minimum) for one, two in pairs], _ALIKE_LOWEST)
    gains = [
        replace(one, mean_per_unit=mean, minimum=minimum)
        for (one, _), mean, minimum in zip(pairs, means, lowest, strict=True)
    ]
    return tuple(sorted(gains, key=lambda gain: (-gain.mean_per_unit, -gain.minimum)))


def _told_apart(pairs: Sequence[tuple[float, float]], least: float) -> list[float]:
    """The mean of each pair of two seeds; those that chance does not tell apart have one mean.

    ``least`` is the relative difference that tells nothing whatever the seeds say.
    Halves of the differences of all pairs together are the standard error of a mean; two means
    differ by chance by up to twice the root of two of it, with 95 % confidence.
    """
    means = np.array([sum(pair) / 2 for pair in pairs])
    error = float(np.sqrt(np.mean([((a - b) / 2) ** 2 for a, b in pairs]))) if pairs else 0.0
    order = [int(k) for k in np.argsort(-means, kind="stable")]
    while order:
        first = means[order[0]]
        near = max(2 * math.sqrt(2) * error, least * abs(first))
        alike = [k for k in order if first - means[k] <= near]
        order = order[len(alike) :]
        means[alike] = means[alike].mean()
    return [float(mean) for mean in means]


def brought_by(
    plan: Plan,
    lining: Lining,
    options: EstimateOptions | None = None,
    *,
    cancelled: Callable[[], bool] | None = None,
) -> tuple[tuple[SurfaceGain, float, float], ...]:
    """What each wall, the ceiling or the floor would bring if it were lined with this.

    For each such surface: its gain record, and the changes of mean and lowest PPFD in
    µmol m⁻² s⁻¹. Unlike the derivative this is the whole difference, so it holds for large
    steps and other specular shares as well.
    """
    options = options or EstimateOptions(quality=Quality.PREVIEW)
    reckoner = Reckoner(plan, options, cancelled)
    rows = []
    for place in dict.fromkeys(reckoner.scene.places):
        if place.kind not in LINED:
            continue
        base, lined = (found.figures for found in _with_lining(reckoner, (place,), lining))
        rows.append(
            (
                _gain(reckoner, place),
                lined.mean - base.mean,
                lined.minimum - base.minimum,
            )
        )
    return tuple(sorted(rows, key=lambda row: -row[1]))


def _with_lining(
    reckoner: Reckoner, places: Sequence[Place], lining: Lining
) -> tuple[Estimate, Estimate]:
    """The estimate as it is and with some surfaces lined anew, free of chance."""
    present = optics = reckoner.scene.optics
    for facet, other in enumerate(reckoner.scene.places):
        if other in places:
            optics = _lined(optics, facet, lining)
    # Both follow mirrors as far as the shinier of the two asks for.
    guide = tuple(map(max, present.specular, optics.specular))
    return reckoner.with_optics(present, guide), reckoner.with_optics(optics, guide)


# -- the light that comes by way of one wall ---------------------------------------------


@dataclass(frozen=True)
class WallLight:
    """What one wall, all its bands together, does for the map of a plan.

    ``canopy`` is the one that is judged, ``base`` its PPFD of every cell (ny, nx) in
    µmol m⁻² s⁻¹, ``came`` what of it met this wall on its way, once or more often: the difference
    to the same wall in black. ``points`` is what ten points more of reflectance on all of it would
    bring to each cell, or as much as is left up to 100 %. ``brought`` is the same for ``lining``
    where one is considered.
    """

    canopy: CanopyLight
    wall: int
    base: FloatArray
    came: FloatArray
    points: FloatArray
    lining: Lining | None = None
    brought: FloatArray | None = None

    @property
    def plan(self) -> Plan:
        """The plan whose wall it is."""
        return self.canopy.plan

    def mean(self, field: FloatArray) -> float:
        """The mean of a map of these cells over the canopy."""
        area = self.canopy.cell_area
        known = np.isfinite(field) & (area > 0)
        return float(np.average(field[known], weights=area[known])) if known.any() else 0.0

    @property
    def share(self) -> float:
        """What part of the canopy's light met the wall."""
        mean = self.mean(self.base)
        return self.mean(self.came) / mean if mean > 0 else 0.0


def light_of_wall(
    reckoner: Reckoner, wall: int, lining: Lining | None = None, band: int | None = None
) -> WallLight:
    """What a wall does for the light, and what a lining on it (or one band of it) would do.

    Raises
    ------
    planner.estimate.evaluate.Cancelled
        If the reckoner was told so.
    """
    scene, base = reckoner.scene, reckoner.base
    here = [
        place
        for place in dict.fromkeys(scene.places)
        if place.kind is PlaceKind.WALL and place.index == wall
    ]
    black = reckoner.lined_at(here, 0.0)
    points = np.zeros_like(base.ppfd)
    for place in here:
        step, brought = reckoner.lifted(place)
        points = points + (brought if step > 0 else 0.0)
    newly = None
    if lining is not None:
        lined = [place for place in here if band is None or place.band == band]
        before, after = _with_lining(reckoner, lined, lining)
        newly = after.ppfd - before.ppfd
    return WallLight(
        base,
        wall,
        base.ppfd,
        base.ppfd - black,
        points,
        lining,
        newly,
    )


def _gain(reckoner: Reckoner, place: Place) -> SurfaceGain:
    facet = reckoner.scene.places.index(place)
    (step, brought), base = reckoner.lifted(place), reckoner.base
    inside = base.cell_area > 0
    weights = np.where(inside & ~np.isnan(brought), base.cell_area, 0.0)
    # More reflectance takes light from nowhere: a cell that loses by it does so by chance.
    lifted = base.ppfd + (np.maximum(brought, 0.0) if step > 0 else 0.0)
    known = np.isfinite(lifted).any()
    return SurfaceGain(
        place=place,
        reflectance=_total(reckoner.scene.optics, facet),
        mean_per_unit=float(np.nansum(brought * weights) / weights.sum()) / step,
        minimum=float(np.nanmin(lifted) - np.nanmin(base.ppfd)) if known else 0.0,
    )


def _total(optics: Optics, facet: int) -> float:
    return optics.diffuse[facet] + optics.specular[facet]


def _changed(optics: Optics, facets: list[int], total: float) -> Optics:
    """The optics with another total reflectance of some facets at their specular share."""
    diffuse, specular = list(optics.diffuse), list(optics.specular)
    for facet in facets:
        old = _total(optics, facet)
        share = optics.specular[facet] / old if old > 0 else 0.0
        diffuse[facet], specular[facet] = total * (1 - share), total * share
    return replace(optics, diffuse=tuple(diffuse), specular=tuple(specular))


def _lined(optics: Optics, facet: int, lining: Lining) -> Optics:
    def put(values: tuple[float, ...], value: float) -> tuple[float, ...]:
        return (*values[:facet], value, *values[facet + 1 :])

    return Optics(
        put(optics.diffuse, lining.diffuse),
        put(optics.specular, lining.specular),
        put(optics.width, lining.wrinkle),
    )
