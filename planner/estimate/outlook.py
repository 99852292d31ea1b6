"""What follows an estimate when there is time: how sure it is, and what would help most.

How well the figures of a plan can be known, given how well its inputs are:

Every input is moved through its range, the figures follow, and the squares add up (JCGM
100:2008, the GUM, clause 5). Inputs given as a range are taken as evenly likely inside it, so
that their standard uncertainty is half the difference of the ends over √3 (GUM 4.3.7):

- each lining's reflectance, from its range, on all surfaces that carry it at once;
- each kind of lamp's photon flux, from its relative uncertainty;
- each kind of lamp's beam angle, where its beam is a cosine law and its width is in doubt;
- each lamp's hanging height, within a centimetre either way (tape and knots).

What the plan leaves out (dirt, leaves that do not fill the canopy, a lamp that ages or whose
beam has another shape than the profile) is not in these numbers.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, field, replace

import numpy as np

from planner.estimate.evaluate import Cache, evaluate, recount
from planner.estimate.result import (
    QUICK,
    Estimate,
    EstimateOptions,
    FloatArray,
    Recount,
    input_words,
)
from planner.estimate.sensitivity import HELD, LINED, Reckoner, SurfaceGain, gains_from
from planner.metrics.figures import daily_light_integral
from planner.plan.edits import change_lamp, changed, with_space
from planner.plan.lamp import CosineProfile, Lamp, LampModel
from planner.plan.lining import Lining
from planner.plan.place import Place, PlaceKind, carries
from planner.plan.plan import Plan
from planner.units import COVERAGE, OF_EVEN

HEIGHT_HALF_WIDTH_M = 0.01


@dataclass(frozen=True)
class Input:
    """One uncertain input; equal in two plans where it is the same unknown thing in both.

    ``of`` is the key of a lining (its reflectance) or of a kind of lamp (its photon flux, its
    beam), or the place of a lamp (its hanging height). ``at`` tells its range: the ends of a
    reflectance or of a beam angle, the relative half-width of a flux, for a hanging height the
    heights of the lamp's face and of the canopy in metres. ``words`` are for people.
    """

    quantity: str
    of: str | Place
    words: str = field(compare=False)
    at: tuple[float, ...] = ()


@dataclass(frozen=True)
class Part:
    """One input's share of the uncertainty: standard uncertainties in µmol m⁻² s⁻¹.

    ``quantity`` and ``of`` are those of its ``Input``.
    """

    label: str
    mean: float
    minimum: float
    quantity: str = ""
    of: str | Place = ""


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

    ``QUICK`` is enough and the default, so that all who ask without options are told the same.

    Raises
    ------
    planner.estimate.evaluate.Cancelled
        If ``cancelled`` said so.
    """
    return uncertainty_from(Reckoner(plan, options or QUICK, cancelled), progress)


def uncertainty_from(
    reckoner: Reckoner, progress: Callable[[float], None] | None = None
) -> Uncertainty | None:
    """As ``uncertainty``, from a reckoner that may have done part of the work already."""
    if reckoner.base.figures.mean <= 0:
        return None
    moved = [
        (one, np.asarray(OF_EVEN * (high - low) / 2))
        for one, (low, _, high) in through_ranges(reckoner, progress)
    ]
    return _combined(reckoner.base, moved)


def through_ranges(
    reckoner: Reckoner, progress: Callable[[float], None] | None = None
) -> tuple[tuple[Input, Ends], ...]:
    """Each input, and the map at the low end of its range, in the middle and at the high end.

    The maps are of PPFD, shape (ny, nx), in µmol m⁻² s⁻¹; all else stays as the plan has it.
    """
    # What moves only lamps shares the room's pieces, the exchange of light above all.
    cache = Cache(limit=HELD)
    lamps = (_fluxes, _beams, _heights)
    jobs = [*_linings(reckoner), *(job for of in lamps for job in of(reckoner, cache))]
    found: list[tuple[Input, Ends]] = []
    for done, (one, at) in enumerate(jobs):
        found.append((one, (at(-1.0), at(0.0), at(1.0))))
        if progress is not None:
            progress((done + 1) / len(jobs))
    return tuple(found)


Ends = tuple[FloatArray, FloatArray, FloatArray]
At = Callable[[float], FloatArray]
"""The map with an input moved to a place in its range: -1 the low end, 1 the high one."""


def _linings(reckoner: Reckoner) -> Iterator[tuple[Input, At]]:
    """Each lining with a range; the surfaces that carry it move together."""
    plan = reckoner.plan
    for lining in plan.linings:
        every = dict.fromkeys(reckoner.scene.places)
        places = [place for place in every if carries(plan, place, lining.key)]
        if lining.high <= lining.low or not places:
            continue

        def at(where: float, lining: Lining = lining, places: list[Place] = places) -> FloatArray:
            middle, half = (lining.high + lining.low) / 2, (lining.high - lining.low) / 2
            return reckoner.lined_at(places, middle + where * half)

        bounds = (lining.low, lining.high)
        yield Input("reflectance", lining.key, input_words("reflectance", lining.name), bounds), at


def _fluxes(reckoner: Reckoner, cache: Cache) -> Iterator[tuple[Input, At]]:
    """Each kind of lamp: its lamps are bright or dim together, and light is proportional."""
    plan = reckoner.plan
    for key in dict.fromkeys(lamp.model.key for lamp in plan.lamps):
        members = [lamp for lamp in plan.lamps if lamp.model.key == key]
        half = members[0].model.ppf_uncertainty
        if half <= 0:
            continue
        others = tuple(
            lamp if lamp.model.key == key else lamp.model_copy(update={"output_percent": 0.0})
            for lamp in plan.lamps
        )
        # The light of the room is not theirs.
        only = with_space(changed(plan, lamps=others), room_light=0.0)
        own: list[FloatArray] = []

        def at(
            where: float,
            only: Plan = only,
            half: float = half,
            own: list[FloatArray] = own,
        ) -> FloatArray:
            if not own:
                found = evaluate(only, reckoner.options, cache=cache, cancelled=reckoner.cancelled)
                own.append(found.ppfd)
            return np.asarray(reckoner.base.ppfd + where * half * own[0])

        words = input_words("photon flux", members[0].model.name)
        yield Input("photon flux", key, words, (half,)), at


def _beams(reckoner: Reckoner, cache: Cache) -> Iterator[tuple[Input, At]]:
    """Each kind of lamp whose beam angle is in doubt; its lamps are wide or narrow together.

    The flux stays: what a wider beam sends to the side it does not send down. Paths and seed are
    those of the plan, so that two ends differ by the beam alone.
    """
    plan = reckoner.plan
    kinds: dict[str, tuple[str, tuple[float, float]]] = {}
    for lamp in plan.lamps:
        ends = lamp.model.beam_range_deg
        if lamp.ppf > 0 and ends is not None:
            kinds.setdefault(lamp.model.key, (lamp.model.name, ends))
    for kind, (name, (low, high)) in kinds.items():

        def at(where: float, key: str = kind) -> FloatArray:
            if where == 0:
                return reckoner.base.ppfd
            lamps = tuple(
                changed(lamp, model=_of_beam(lamp.model, where)) if lamp.model.key == key else lamp
                for lamp in plan.lamps
            )
            moved = changed(plan, lamps=lamps)
            found = evaluate(moved, reckoner.options, cache=cache, cancelled=reckoner.cancelled)
            return found.ppfd

        bounds = (round(low, 3), round(high, 3))
        yield Input("beam", kind, input_words("beam", name), bounds), at


def _of_beam(model: LampModel, where: float) -> LampModel:
    """The kind of lamp with its beam angle at a place in its range."""
    ends = model.beam_range_deg
    if ends is None:
        return model
    angle = (ends[0] + ends[1] + where * (ends[1] - ends[0])) / 2
    return changed(model, profile=CosineProfile.from_beam_angle(angle))


def _heights(reckoner: Reckoner, cache: Cache) -> Iterator[tuple[Input, At]]:
    """Each lamp's hanging height, as far as there is room below the ceiling."""
    plan = reckoner.plan
    for index, lamp in enumerate(plan.lamps):
        if lamp.ppf <= 0:
            continue

        def at(where: float, index: int = index, lamp: Lamp = lamp) -> FloatArray:
            least, most = plan.hanging_room(lamp)
            moved = min(max(lamp.hanging_height + where * HEIGHT_HALF_WIDTH_M, least), most)
            hung = change_lamp(plan, index, hanging_height=moved)
            found = evaluate(hung, reckoner.options, cache=cache, cancelled=reckoner.cancelled)
            return found.ppfd

        words = input_words("hanging height", f"lamp {index + 1}")
        where = (round(plan.lamp_height(lamp), 4), plan.canopy.height)
        yield Input("hanging height", Place(PlaceKind.LAMP, index), words, where), at


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
        parts.append(Part(one.words, abs(mean), abs(minimum), one.quantity, one.of))
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


# -- with what would help most -----------------------------------------------------------


@dataclass(frozen=True)
class Outlook:
    """Uncertainty of the figures of a plan and the worth of each surface's reflectance.

    ``gains`` is sorted by what they bring to the mean; the canopy, which nobody lines, is
    left out. ``recount`` is the light on the canopy once more, by independent means. Both
    it and ``uncertainty`` are None for a dark plan.
    """

    plan: Plan
    uncertainty: Uncertainty | None
    gains: tuple[SurfaceGain, ...]
    recount: Recount | None = None


def outlook_of_plan(found: Outlook, plan: Plan) -> Outlook:
    """An outlook as that of a plan of the same light and doubts; only the DLI's may differ."""
    known = found.uncertainty
    if known is not None:
        dli = daily_light_integral(known.mean, plan.photoperiod_hours)
        known = replace(known, dli=dli)
    return replace(found, plan=plan, uncertainty=known)


def outlook(
    plan: Plan,
    *,
    progress: Callable[[float], None] | None = None,
    cancelled: Callable[[], bool] | None = None,
) -> Outlook:
    """Reckon the outlook of a plan at preview quality on a small map.

    Raises
    ------
    planner.estimate.evaluate.Cancelled
        If ``cancelled`` said so.
    """

    def first_half(fraction: float) -> None:
        if progress is not None:
            progress(fraction / 2)

    def second_half(fraction: float) -> None:
        if progress is not None:
            progress(0.5 + fraction / 2)

    reckoner = Reckoner(plan, QUICK, cancelled)
    band = uncertainty_from(reckoner, first_half)
    if band is None:
        return Outlook(plan, None, ())
    gains = gains_from(reckoner, second_half, LINED)
    return Outlook(plan, band, gains, recount(plan, cancelled=cancelled))
