"""How well the figures of a plan can be known, given how well its inputs are.

First order (JCGM 100:2008, the GUM, clause 5): every input is moved a little, the figures
follow, and the squares add up. Inputs given as a range are taken as evenly likely inside
it, so that their standard uncertainty is the half-width over √3 (GUM 4.3.7):

- each lining's reflectance, from its range, on all surfaces that carry it at once;
- each kind of lamp's photon flux, from its relative uncertainty;
- each lamp's hanging height, within a centimetre either way (tape and knots).

What the plan leaves out (dirt, leaves that do not fill the canopy, a lamp that ages or
does not shine like its profile) is not in these numbers.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass, field

import numpy as np

from planner.estimate.evaluate import Cache, evaluate
from planner.estimate.result import Estimate, EstimateOptions, FloatArray, Quality
from planner.estimate.sensitivity import Reckoner
from planner.plan.edits import change_lamp, changed
from planner.plan.place import Place, PlaceKind, carries
from planner.plan.plan import Plan
from planner.units import COVERAGE

HEIGHT_HALF_WIDTH_M = 0.01

_EVEN = 1 / math.sqrt(3)
_HELD = 16_000_000
"""Bytes of pieces kept from one moved input to the next."""


@dataclass(frozen=True)
class Input:
    """One uncertain input; equal in two plans where it is the same unknown thing in both.

    ``of`` is the key of a lining (its reflectance) or of a kind of lamp (its photon flux),
    or the place of a lamp (its hanging height, with ``at``: the heights of its face and of
    the canopy in metres). ``words`` are for people.
    """

    quantity: str
    of: str | Place
    words: str = field(compare=False)
    at: tuple[float, ...] = ()


@dataclass(frozen=True)
class Part:
    """One input's share of the uncertainty: standard uncertainties in µmol m⁻² s⁻¹."""

    label: str
    mean: float
    minimum: float


@dataclass(frozen=True)
class Uncertainty:
    """Standard uncertainties (one sigma) of the figures of a plan.

    ``mean``, ``minimum`` and ``maximum`` in µmol m⁻² s⁻¹, ``min_over_mean`` as a fraction,
    ``dli`` in mol m⁻² d⁻¹, ``relative_mean`` as a fraction of the mean. ``parts`` lists
    the inputs, the weightiest for the mean first.
    """

    mean: float
    minimum: float
    maximum: float
    min_over_mean: float
    dli: float
    relative_mean: float
    parts: tuple[Part, ...]

    def band(self, value: float, standard: float) -> tuple[float, float]:
        """The 95 % band about a value."""
        return max(value - COVERAGE * standard, 0.0), value + COVERAGE * standard


def uncertainty(
    plan: Plan,
    options: EstimateOptions | None = None,
    *,
    progress: Callable[[float], None] | None = None,
    cancelled: Callable[[], bool] | None = None,
) -> Uncertainty | None:
    """Propagate the ranges of a plan's inputs to its figures; None for a dark plan.

    Preview quality is enough and the default: differences share their paths of light.

    Raises
    ------
    planner.estimate.evaluate.Cancelled
        If ``cancelled`` said so.
    """
    options = options or EstimateOptions(quality=Quality.PREVIEW)
    return uncertainty_from(Reckoner(plan, options, cancelled), progress)


def uncertainty_from(
    reckoner: Reckoner, progress: Callable[[float], None] | None = None
) -> Uncertainty | None:
    """As ``uncertainty``, from a reckoner that may have done part of the work already."""
    if reckoner.base.figures.mean <= 0:
        return None
    return _combined(reckoner.base, list(moved_inputs(reckoner, progress)))


def moved_inputs(
    reckoner: Reckoner, progress: Callable[[float], None] | None = None
) -> tuple[tuple[Input, FloatArray], ...]:
    """Each input, and how one standard uncertainty of it changes the map.

    The changes are of every cell's PPFD, shape (ny, nx), in µmol m⁻² s⁻¹, with their sign.
    """
    plan, options, base = reckoner.plan, reckoner.options, reckoner.base
    cancelled = reckoner.cancelled
    jobs = [*_lining_jobs(reckoner), *_flux_jobs(plan, options), *_height_jobs(plan, options)]
    moved: list[tuple[Input, FloatArray]] = []
    for done, (one, job) in enumerate(jobs):
        moved.append((one, job(base, cancelled)))
        if progress is not None:
            progress((done + 1) / len(jobs))
    return tuple(moved)


Job = Callable[[Estimate, Callable[[], bool] | None], FloatArray]
"""Gives the change of every cell's PPFD for one standard uncertainty of an input."""


def _lining_jobs(reckoner: Reckoner) -> list[tuple[Input, Job]]:
    """One job for each lining with a range; the surfaces that carry it move together."""
    plan = reckoner.plan
    jobs: list[tuple[Input, Job]] = []
    for lining in plan.linings:
        every = dict.fromkeys(reckoner.scene.places)
        places = [place for place in every if carries(plan, place, lining.key)]
        standard = (lining.high - lining.low) / 2 * _EVEN
        if standard <= 0 or not places:
            continue

        def job(
            base: Estimate,
            cancelled: Callable[[], bool] | None,
            places: list[Place] = places,
            standard: float = standard,
        ) -> FloatArray:
            del base, cancelled
            slopes = [reckoner.derivative(place) for place in places]
            return np.asarray(standard * np.sum(slopes, axis=0))

        words = f"reflectance of {lining.name}"
        jobs.append((Input("reflectance", lining.key, words), job))
    return jobs


def _flux_jobs(plan: Plan, options: EstimateOptions) -> list[tuple[Input, Job]]:
    """One job for each kind of lamp: its lamps are bright or dim together."""
    jobs: list[tuple[Input, Job]] = []
    cache = Cache(limit=_HELD)
    for key in dict.fromkeys(lamp.model.key for lamp in plan.lamps):
        members = [lamp for lamp in plan.lamps if lamp.model.key == key]
        standard = members[0].model.ppf_uncertainty * _EVEN
        if standard <= 0:
            continue
        only = changed(
            plan,
            lamps=tuple(
                lamp if lamp.model.key == key else lamp.model_copy(update={"output_percent": 0.0})
                for lamp in plan.lamps
            ),
        )

        def job(
            base: Estimate,
            cancelled: Callable[[], bool] | None,
            only: Plan = only,
            standard: float = standard,
        ) -> FloatArray:
            del base
            # Light is proportional to flux, so the lamps' own light is the derivative.
            return standard * evaluate(only, options, cache=cache, cancelled=cancelled).ppfd

        words = f"photon flux of {members[0].model.name}"
        jobs.append((Input("photon flux", key, words), job))
    return jobs


def _height_jobs(plan: Plan, options: EstimateOptions) -> list[tuple[Input, Job]]:
    jobs: list[tuple[Input, Job]] = []
    cache = Cache(limit=_HELD)
    standard = HEIGHT_HALF_WIDTH_M * _EVEN
    for index, lamp in enumerate(plan.lamps):
        if lamp.ppf <= 0:
            continue
        room = plan.space.height - plan.canopy.height
        high = min(lamp.hanging_height + HEIGHT_HALF_WIDTH_M, room)
        low = max(high - 2 * HEIGHT_HALF_WIDTH_M, 0.01)

        def job(
            base: Estimate,
            cancelled: Callable[[], bool] | None,
            index: int = index,
            high: float = high,
            low: float = low,
        ) -> FloatArray:
            del base
            ends = [
                evaluate(
                    change_lamp(plan, index, hanging_height=height),
                    options,
                    cache=cache,
                    cancelled=cancelled,
                ).ppfd
                for height in (high, low)
            ]
            return np.asarray(standard * (ends[0] - ends[1]) / (high - low))

        words = f"hanging height of lamp {index + 1}"
        at = (round(plan.lamp_height(lamp), 4), plan.canopy.height)
        place = Place(PlaceKind.LAMP, index)
        jobs.append((Input("hanging height", place, words, at), job))
    return jobs


def _combined(base: Estimate, moved: list[tuple[Input, FloatArray]]) -> Uncertainty:
    inside = ~np.isnan(base.ppfd)
    cells, areas = base.ppfd[inside], base.cell_area[inside]
    lowest, highest = int(cells.argmin()), int(cells.argmax())
    figures = base.figures
    parts, squares = [], np.zeros(4)
    for one, change in moved:
        at = change[inside]
        mean = float(np.average(at, weights=areas))
        minimum, maximum = float(at[lowest]), float(at[highest])
        ratio = minimum / figures.mean - figures.minimum * mean / figures.mean**2
        squares += np.array([mean, minimum, maximum, ratio]) ** 2
        parts.append(Part(one.words, abs(mean), abs(minimum)))
    mean, minimum, maximum, ratio = (float(value) for value in np.sqrt(squares))
    return Uncertainty(
        mean=mean,
        minimum=minimum,
        maximum=maximum,
        min_over_mean=ratio,
        dli=figures.dli * mean / figures.mean,
        relative_mean=mean / figures.mean,
        parts=tuple(sorted(parts, key=lambda part: -part.mean)),
    )
