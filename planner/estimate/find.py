"""Find: the hanging height, output, hours or lamp places that meet what is asked.

Every answer is searched with scipy's optimisers on the core itself, at preview quality on
a small map, and confirmed at the quality asked. Light is proportional to output, so for
each place of the lamps one estimate tells all outputs; min/mean does not depend on the
output at all. The lamps of a plan keep their outputs relative to one another.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from enum import StrEnum
from typing import Final

from planner.estimate.evaluate import Cache, Cancelled, evaluate
from planner.estimate.result import Estimate, EstimateOptions, Quality
from planner.metrics.figures import DLI_UNIT, FIGURE, daily_light_integral, percent, ppfd
from planner.plan.checks import CLOSE_TO_CANOPY_M, LEAST_DARK_HOURS
from planner.plan.dials import dial
from planner.plan.edits import changed, each_lamp
from planner.plan.lamp import Lamp
from planner.plan.plan import Plan
from planner.plan.target import DliTarget, Target
from planner.units import said_length

SEARCH: Final = EstimateOptions(cells=(12, 12), quality=Quality.PREVIEW)
SCAN_HEIGHTS: Final = 9
HEIGHT_TOLERANCE_M: Final = 0.002
_CORRECTIONS: Final = 4
_SLACK: Final = 1.001
_NEAR_M: Final = 0.01
"""A bound nearer than this is what limits an answer."""
_ALIKE: Final = 0.01
"""Differences of min/mean that the quick estimate of the search cannot tell."""
MOST_HOURS: Final = 24.0 - LEAST_DARK_HOURS


class Aim(StrEnum):
    """Which figure shall lie in the target band."""

    MEAN = "mean"
    MINIMUM = "minimum"


class Limit(StrEnum):
    """What keeps an answer from being better still."""

    NOTHING = "nothing"
    CEILING = "ceiling"
    CANOPY = "canopy"
    LIGHT = "light"
    DARK_HOURS = "dark hours"
    WALLS = "walls"


@dataclass(frozen=True)
class Found:
    """An answer: the plan found (also the nearest one when the wish cannot be met).

    ``words`` says what was found and what limits it, or why it cannot be met and what
    would; ``estimate`` is the confirmed one of ``plan``.
    """

    met: bool
    plan: Plan
    estimate: Estimate
    limit: Limit
    words: str


@dataclass
class Search:
    """Estimates while searching: counted, reported and stopped in one place."""

    expected: int
    progress: Callable[[float], None] | None = None
    cancelled: Callable[[], bool] | None = None
    cache: Cache = field(default_factory=Cache)
    done: int = 0

    def quick(self, plan: Plan) -> Estimate:
        """An estimate good enough for searching."""
        if self.cancelled is not None and self.cancelled():
            raise Cancelled
        found = evaluate(plan, SEARCH, cache=self.cache, cancelled=self.cancelled)
        self.done += 1
        if self.progress is not None:
            self.progress(min(0.9, 0.9 * self.done / self.expected))
        return found

    def confirm(self, plan: Plan, options: EstimateOptions | None) -> Estimate:
        """The estimate an answer is stated with."""
        found = evaluate(
            plan, options or EstimateOptions(), cache=self.cache, cancelled=self.cancelled
        )
        if self.progress is not None:
            self.progress(1.0)
        return found


class FindError(ValueError):
    """A question that cannot be asked of this plan; the message says what is missing."""


# -- height and output ------------------------------------------------------------------


def find_height_and_output(
    plan: Plan,
    target: Target | None = None,
    aim: Aim = Aim.MEAN,
    options: EstimateOptions | None = None,
    *,
    progress: Callable[[float], None] | None = None,
    cancelled: Callable[[], bool] | None = None,
) -> Found:
    """The one hanging height and output that put mean or minimum into the target band.

    Among all heights at which full output reaches the lower end of the band, the one with
    the best min/mean; the output then puts the figure on the middle of the band, or as
    near below it as the lamps reach.

    Raises
    ------
    FindError
        If there is no lamp, no target, no hours of light for a DLI, or no room to hang in.
    planner.estimate.evaluate.Cancelled
        If ``cancelled`` said so.
    """
    wanted, (low, high) = _band(plan, target)
    full = _at_full_output(plan)
    least, most = height_range(full)
    search = Search(SCAN_HEIGHTS + 24, progress, cancelled)
    seen: dict[float, tuple[float, float]] = {}

    def at(height: float) -> tuple[float, float]:
        """The figure aimed at, at full output, and min/mean."""
        key = round(height, 5)
        if key not in seen:
            figures = search.quick(_at_height(full, key)).figures
            seen[key] = (_figure(figures.mean, figures.minimum, aim), figures.min_over_mean or 0.0)
        return seen[key]

    scan = [least + (most - least) * k / (SCAN_HEIGHTS - 1) for k in range(SCAN_HEIGHTS)]
    brightest = max(scan, key=lambda height: at(height)[0])
    asked = low
    for _ in range(_CORRECTIONS):
        if at(brightest)[0] < asked:
            height = _brightest(at, brightest, scan)
            return _out_of_reach(full, height, wanted, (low, high), aim, search, options)
        height, limit = _most_even(at, scan, asked)
        top = max(h for h in scan if at(h)[0] >= asked)
        if top - height > _NEAR_M and at(top)[1] > at(height)[1] - _ALIKE:
            # Too close for the quick estimate to tell: let the careful one judge.
            evens = [
                search.confirm(_at_height(full, h), options).figures.min_over_mean or 0.0
                for h in (height, top)
            ]
            if evens[1] > evens[0]:
                height = top
                limit = Limit.CEILING if top == scan[-1] else Limit.LIGHT
        made, estimate = _dimmed(_at_height(full, height), (low, high), aim, search, options)
        found = _figure(estimate.figures.mean, estimate.figures.minimum, aim)
        if found >= low:
            break
        # The quick estimate promised a little too much: ask it for as much more.
        asked *= low / found * _SLACK
    figures = estimate.figures
    words = (
        f"Hang the {_lamps(plan)} {said_length(round(height, 3))} above the canopy at "
        f"{_output(made):.0f} % output: {aim.value} {ppfd(found, unit=True)}, "
        f"min / mean {percent(figures.min_over_mean)}. {_HEIGHT_LIMITS[limit]}"
    )
    return Found(found >= low / _SLACK, made, estimate, limit, words)


_HEIGHT_LIMITS: Final = {
    Limit.NOTHING: "Higher or lower, the light would be less even.",
    Limit.CEILING: "The ceiling is the limit: higher would be more even still.",
    Limit.CANOPY: f"The least distance to the canopy, {said_length(CLOSE_TO_CANOPY_M)}, is the "
    "limit.",
    Limit.LIGHT: "The lamps are the limit: higher would be more even, but full output would no "
    "longer reach the target.",
}


def height_range(plan: Plan) -> tuple[float, float]:
    """Lowest and highest hanging height of all lamps at once, in metres.

    Raises
    ------
    FindError
        If there is no room between them.
    """
    room = dial("height").sound_in(plan)
    if room.maximum < room.minimum:
        raise FindError(
            f"Between canopy and ceiling there are {said_length(round(max(room.maximum, 0.0), 3))} "
            f"for the lamp to hang in; it needs {said_length(room.minimum)} above the canopy. "
            "Lower the canopy or raise the ceiling."
        )
    return room.minimum, room.maximum


def _most_even(
    at: Callable[[float], tuple[float, float]], scan: list[float], low: float
) -> tuple[float, Limit]:
    """The height of best min/mean among those bright enough, and what limits it."""
    from scipy.optimize import brentq, minimize_scalar

    enough = [height for height in scan if at(height)[0] >= low]
    best = max(enough, key=lambda height: at(height)[1])
    k = scan.index(best)
    left, right = scan[max(k - 1, 0)], scan[min(k + 1, len(scan) - 1)]

    def edge(bright: float, dim: float) -> float:
        """Where full output just reaches the band, kept on the bright side."""
        if at(dim)[0] >= low:
            return dim
        found = brentq(
            lambda height: at(float(height))[0] - low, bright, dim, xtol=HEIGHT_TOLERANCE_M / 4
        )
        # On the bright side of the crossing, wherever in its tolerance that is.
        inward = HEIGHT_TOLERANCE_M / 2 * (1 if bright > dim else -1)
        return float(found) + inward

    top, bottom = edge(best, right), edge(best, left)
    if top - bottom > HEIGHT_TOLERANCE_M:
        found = minimize_scalar(
            lambda height: -at(float(height))[1],
            bounds=(bottom, top),
            method="bounded",
            options={"xatol": HEIGHT_TOLERANCE_M},
        )
        # The ends themselves are never tried by the bounded search.
        choices = [bottom, best, top, float(found.x)]
        best = max((c for c in choices if at(c)[0] >= low), key=lambda height: at(height)[1])
    near = _NEAR_M
    if scan[-1] - best < near:
        return best, Limit.CEILING
    if best - scan[0] < near:
        return best, Limit.CANOPY
    if top - best < near and at(right)[0] < low:
        return best, Limit.LIGHT
    return best, Limit.NOTHING


def _brightest(
    at: Callable[[float], tuple[float, float]], guess: float, scan: list[float]
) -> float:
    from scipy.optimize import minimize_scalar

    k = scan.index(guess)
    found = minimize_scalar(
        lambda height: -at(float(height))[0],
        bounds=(scan[max(k - 1, 0)], scan[min(k + 1, len(scan) - 1)]),
        method="bounded",
        options={"xatol": HEIGHT_TOLERANCE_M},
    )
    return max((guess, float(found.x)), key=lambda height: at(height)[0])


def _dimmed(
    full: Plan,
    band: tuple[float, float],
    aim: Aim,
    search: Search,
    options: EstimateOptions | None,
) -> tuple[Plan, Estimate]:
    """The plan dimmed so that the confirmed figure is on the band's middle, or below it."""
    figures = search.confirm(full, options).figures
    reach = _figure(figures.mean, figures.minimum, aim)
    share = min(1.0, (band[0] + band[1]) / 2 / reach) if reach > 0 else 1.0
    made = scaled_output(full, share)
    return made, search.confirm(made, options)


def _out_of_reach(
    full: Plan,
    height: float,
    target: Target,
    band: tuple[float, float],
    aim: Aim,
    search: Search,
    options: EstimateOptions | None,
) -> Found:
    made = _at_height(full, height)
    estimate = search.confirm(made, options)
    reach = _figure(estimate.figures.mean, estimate.figures.minimum, aim)
    words = (
        f"The target cannot be met: at full output the {aim.value} is at most "
        f"{ppfd(reach, unit=True)}, {said_length(round(height, 3))} above the canopy, and the "
        f"target begins at {band[0]:.0f}. {_what_would(made, target, band[0], reach)}"
    )
    return Found(False, made, estimate, Limit.LIGHT, words)


def _what_would(plan: Plan, target: Target, wanted: float, reach: float) -> str:
    if reach <= 0:
        return "The canopy is dark; move the lamps."
    flux = sum(lamp.ppf for lamp in plan.lamps) * wanted / reach
    text = (
        f"It would take {flux:.0f} µmol/s of photon flux instead of "
        f"{sum(lamp.ppf for lamp in plan.lamps):.0f}"
    )
    hours = plan.photoperiod_hours * wanted / reach
    if isinstance(target, DliTarget) and hours <= MOST_HOURS:
        text += f", or {hours:.1f} h of light a day instead of {plan.photoperiod_hours:g}"
    return f"{text}; brighter linings may bring part of it."


# -- hours ------------------------------------------------------------------------------


def find_photoperiod(
    plan: Plan,
    dli: float,
    options: EstimateOptions | None = None,
    *,
    most_hours: float = MOST_HOURS,
    progress: Callable[[float], None] | None = None,
    cancelled: Callable[[], bool] | None = None,
) -> Found:
    """The hours of light a day that give a mean DLI (mol m⁻² d⁻¹) at the light as it hangs.

    At most ``most_hours``; the plan found has them where more would be needed.

    Raises
    ------
    FindError
        If there is no lamp, or the DLI is not above 0.
    planner.estimate.evaluate.Cancelled
        If ``cancelled`` said so.
    """
    _need_lamps(plan)
    if dli <= 0:
        raise FindError("The DLI asked for must be above 0 mol m⁻² d⁻¹.")
    search = Search(1, progress, cancelled)
    mean = search.confirm(plan, options).figures.mean
    if mean <= 0:
        raise FindError("The canopy is dark, and no number of hours gives it a DLI.")
    hours = dli / daily_light_integral(mean, 1.0)
    met = hours <= most_hours
    made = changed(plan, photoperiod_hours=min(hours, most_hours))
    estimate = search.confirm(made, options)
    if met:
        words = (
            f"{hours:.2f} h of light a day give {dli:g} {DLI_UNIT} at a mean of "
            f"{ppfd(mean, unit=True)}. Nothing limits it: {24 - hours:.1f} h stay dark."
        )
        return Found(True, made, estimate, Limit.NOTHING, words)
    wanted = dli / daily_light_integral(1.0, most_hours)
    words = (
        f"The DLI cannot be met: it would take {hours:.1f} h a day, and at most {most_hours:g} "
        f"are lit so that {24 - most_hours:g} stay dark. {most_hours:g} h give "
        f"{FIGURE['dli'].text(estimate.figures.dli)}; for {dli:g} the mean must rise from "
        f"{ppfd(mean)} to {ppfd(wanted, unit=True)}."
    )
    return Found(False, made, estimate, Limit.DARK_HOURS, words)


# -- what they share --------------------------------------------------------------------


def _band(plan: Plan, target: Target | None) -> tuple[Target, tuple[float, float]]:
    wanted = target if target is not None else plan.target
    if wanted is None:
        raise FindError("Set a target first: a crop, or a band of PPFD or DLI.")
    band = wanted.ppfd_band(plan.photoperiod_hours)
    if band is None:
        raise FindError("A DLI needs hours of light: set the photoperiod above 0 h.")
    return wanted, band


def _need_lamps(plan: Plan) -> None:
    if not any(lamp.output_percent > 0 for lamp in plan.lamps):
        raise FindError("No lamp is lit in the space; hang one first, or raise its output.")


def _at_full_output(plan: Plan) -> Plan:
    """The plan without its lists, its brightest lamp at 100 % and the others in proportion."""
    _need_lamps(plan)
    highest = max(lamp.output_percent for lamp in plan.lamps)
    return scaled_output(plan, 100.0 / highest)


def scaled_output(plan: Plan, share: float) -> Plan:
    """Every output times a share, at most 100 %."""

    def dimmed(lamp: Lamp) -> Lamp:
        return lamp.model_copy(update={"output_percent": min(lamp.output_percent * share, 100.0)})

    return each_lamp(plan, dimmed)


def _at_height(plan: Plan, height: float) -> Plan:
    return dial("height").put(plan, None, height)


def _figure(mean: float, minimum: float, aim: Aim) -> float:
    return mean if aim is Aim.MEAN else minimum


def _output(plan: Plan) -> float:
    return max(lamp.output_percent for lamp in plan.lamps)


def _lamps(plan: Plan) -> str:
    return "lamp" if len(plan.lamps) == 1 else "lamps"
