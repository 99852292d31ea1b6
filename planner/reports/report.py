"""A report as data: sections of words, tables and drawings; and all that is known for one.

``gather`` reckons what takes time, ``chapters.report`` makes the report of it, without Qt and
without a clock of its own. ``page`` writes it as HTML, ``leaves`` paints it on paper.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Final

from planner.estimate.calibrate_model import expected_readings
from planner.estimate.calibrate_result import Calibration
from planner.estimate.compare import Comparison, Identity, Side, compare
from planner.estimate.evaluate import Cache, Cancelled, evaluate, recounted
from planner.estimate.odds import Odds, Telling, sway, verdict
from planner.estimate.outlook import Uncertainty, uncertainty
from planner.estimate.result import Estimate, EstimateOptions, FloatArray
from planner.estimate.schedule import schedule
from planner.estimate.stages import Schedule
from planner.estimate.worth import Bill, bill
from planner.metrics.figures import FIGURE, ppfd
from planner.plan.lamp import Lamp
from planner.plan.lit import lit
from planner.plan.plan import Plan
from planner.plan.tiers import above, hangs
from planner.reports.content import plan_is_dark
from planner.reports.drawings import Picture
from planner.units import (
    COVERAGE,
    PPFD_UNIT,
    LengthUnit,
    by_tape,
    capital,
    format_number,
    listed,
)

Progress = Callable[[float], None]
Asked = Callable[[], bool]


# -- what a report is made of ---------------------------------------------------------------


@dataclass(frozen=True)
class Words:
    """A paragraph; ``large`` leads its section, ``quiet`` is small print."""

    text: str
    large: bool = False
    quiet: bool = False


@dataclass(frozen=True)
class Points:
    """Short sentences, one under the other."""

    lines: tuple[str, ...]


@dataclass(frozen=True)
class Table:
    """Headings and rows of texts; columns named in ``numbers`` (from 0) stand to the right."""

    heads: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    numbers: tuple[int, ...] = ()
    title: str = ""


@dataclass(frozen=True)
class Pictures:
    """Drawings side by side as long as there is room, and a table ``beside`` the last."""

    every: tuple[Picture, ...]
    beside: Table | None = None


@dataclass(frozen=True)
class Warned:
    """A caution: what it is about, one sentence for this plan, and the rest of it."""

    title: str
    sentence: str
    rest: tuple[str, ...] = ()


Block = Words | Points | Table | Pictures | Warned


@dataclass(frozen=True)
class Section:
    """One chapter; ``alone`` ones take a page of paper for themselves."""

    key: str
    title: str
    blocks: tuple[Block, ...]
    alone: bool = False


@dataclass(frozen=True)
class Report:
    """The whole: its title, what stands under it, and its sections in their order."""

    title: str
    about: str
    sections: tuple[Section, ...]


SECTIONS: Final[Mapping[str, str]] = {
    "decision": "Decision",
    "plan": "The plan",
    "light": "The light",
    "colours": "Colours of the light",
    "figures": "Figures",
    "options": "Options",
    "survey": "Survey",
    "budget": "Where the doubt comes from",
    "schedule": "Schedule",
    "build": "Build sheet",
    "assumptions": "Assumptions",
    "cautions": "Cautions",
}
"""Every section by its key, in the order they always stand in."""


class SectionError(ValueError):
    """A section that does not exist; the message names those that do."""


def chosen_sections(names: Sequence[str] | None) -> tuple[str, ...]:
    """The keys of the sections asked for, each once and in the report's order; None: all.

    Raises
    ------
    SectionError
        If there is no section of a name, or none is left.
    """
    if names is None:
        return tuple(SECTIONS)
    wanted = [name.strip().lower() for name in names if name.strip()]
    for name in wanted:
        if name not in SECTIONS:
            raise SectionError(f"There is no section '{name}'; a report has {', '.join(SECTIONS)}.")
    if not wanted:
        raise SectionError(f"Name at least one section of {', '.join(SECTIONS)}.")
    return tuple(key for key in SECTIONS if key in wanted)


# -- what is known ------------------------------------------------------------------------


@dataclass(frozen=True, eq=False)
class Known:
    """All that a report tells of a plan; what is None or missing is left out or said so.

    ``tellings`` hold the plan's mean over that of each other option, by the option;
    ``bills`` what has to be bought for each side beyond what the baseline has; ``expected``
    what the meter of each survey (by key) should read at its holes, (points,).
    """

    estimate: Estimate
    uncertainty: Uncertainty | None = None
    comparison: Comparison | None = None
    tellings: Mapping[Identity, Telling] = field(default_factory=dict)
    bills: Mapping[Identity, Bill] = field(default_factory=dict)
    expected: Mapping[str, FloatArray] = field(default_factory=dict)
    schedule: Schedule | None = None
    calibration: Calibration | None = None

    @property
    def plan(self) -> Plan:
        """The plan the report is about."""
        return self.estimate.plan

    @property
    def others(self) -> tuple[Side, ...]:
        """The other options, in their order."""
        return () if self.comparison is None else self.comparison.sides[1:]


MOST_OPTIONS: Final = 12
"""Of so many options at most it is reckoned how sure their difference to the plan is."""
_MOST_NAMED: Final = 3


def baseline_of(comparison: Comparison) -> Side:
    """The side that a plan names as its baseline; the plan itself where it names none."""
    plan = comparison.sides[0].plan
    return next(
        (s for s in comparison.sides if s.key is not None and s.key == plan.baseline),
        comparison.sides[0],
    )


def gather(
    plan: Plan,
    options: EstimateOptions | None = None,
    *,
    sections: Collection[str] = tuple(SECTIONS),
    unit: LengthUnit = LengthUnit.CM,
    calibration: Calibration | None = None,
    estimate: Estimate | None = None,
    progress: Progress | None = None,
    cancelled: Asked | None = None,
) -> Known:
    """Reckon what the sections asked for tell of a plan.

    ``estimate`` is used where it is of this plan and not a preview.

    Raises
    ------
    planner.estimate.evaluate.Cancelled
        If ``cancelled`` said so.
    ValueError
        If the plan itself cannot be estimated; the message is the sentence.
    """
    options = options or EstimateOptions()
    steps = _Steps(progress, cancelled)
    cache = Cache()
    if estimate is None:
        estimate = recounted(evaluate(plan, options, cache=cache, cancelled=cancelled))
    steps.done(0.15)
    doubt = comparison = stages = None
    tellings: Mapping[Identity, Telling] = {}
    bills: Mapping[Identity, Bill] = {}
    if {"decision", "figures", "budget"} & set(sections):
        doubt = uncertainty(plan, progress=steps.part(0.3), cancelled=cancelled)
    steps.done(0.3)
    if plan.variants and {"decision", "light", "options"} & set(sections):
        part = steps.part(0.5)
        comparison = compare(
            plan, options, unit=unit, cache=cache, progress=part, cancelled=cancelled
        )
        tellings = _tellings(comparison, steps.part(0.75), cancelled)
        bills = _bills(comparison, cancelled) if "options" in sections else {}
    steps.done(0.75)
    expected = _expected(plan, options, cache, cancelled) if "survey" in sections else {}
    steps.done(0.85)
    if plan.schedule and "schedule" in sections:
        stages = schedule(plan, progress=steps.part(1.0), cancelled=cancelled)
    steps.done(1.0)
    return Known(estimate, doubt, comparison, tellings, bills, expected, stages, calibration)


class _Steps:
    """Progress of several parts after one another, and a stop between them."""

    def __init__(self, progress: Progress | None, cancelled: Asked | None) -> None:
        self._progress, self._cancelled, self._at = progress, cancelled, 0.0

    def done(self, fraction: float) -> None:
        """So much is done now."""
        if self._cancelled is not None and self._cancelled():
            raise Cancelled
        self._at = fraction
        if self._progress is not None:
            self._progress(fraction)

    def part(self, end: float) -> Progress:
        """Progress of the part that ends there."""
        start = self._at

        def tell(fraction: float) -> None:
            self.done(start + fraction * (end - start))

        return tell


def _tellings(
    comparison: Comparison, progress: Progress, cancelled: Asked | None
) -> dict[Identity, Telling]:
    """The plan's mean over each option's, by draws of all that is not known of both."""
    plan, *others = comparison.sides
    others = others[:MOST_OPTIONS]
    known = []
    for done, side in enumerate((plan, *others)):
        if side.estimate is not None and side.estimate.figures.minimum > 0:
            found = sway(side.plan, side.estimate, cancelled=cancelled)
            if found is not None:
                known.append((side, side.estimate, found))
        progress((done + 1) / (1 + len(others)))
    if not known or known[0][0] is not plan:
        return {}
    odds = Odds.of([(estimate, found) for _, estimate, found in known])
    return {known[k][0].identity: odds.telling(0, k) for k in range(1, len(known))}


def _bills(comparison: Comparison, cancelled: Asked | None) -> dict[Identity, Bill]:
    base = baseline_of(comparison)
    found = {}
    for side in comparison.sides:
        if cancelled is not None and cancelled():
            raise Cancelled
        found[side.identity] = bill(side.plan, base.plan, comparison.sides[0].plan.costs)
    return found


def _expected(
    plan: Plan, options: EstimateOptions, cache: Cache, cancelled: Asked | None
) -> dict[str, FloatArray]:
    """What the meter of each survey with readings should read; those that cannot be left out."""
    found = {}
    for survey in plan.surveys:
        if not survey.counted:
            continue
        try:
            found[survey.key] = expected_readings(
                plan, survey, options, cache=cache, cancelled=cancelled
            )
        except ValueError:
            continue  # its conditions cannot be built any more; the readings stand alone
    return found


# -- what was decided -----------------------------------------------------------------------


def decision(known: Known, unit: LengthUnit) -> tuple[str, str, str]:
    """Three sentences: what was chosen, against what, and how sure that is."""
    return _chosen(known.plan, unit), _against(known), _how_sure(known)


def _chosen(plan: Plan, unit: LengthUnit) -> str:
    walls = [plan.lining(b.lining) for cover in plan.walls for b in cover.bands]
    names = dict.fromkeys(one.name for one in walls if not one.is_opening)
    lined = f"walls of {listed(list(names))}" if names else "no walls"
    lengths = sorted(hangs(plan, lamp) for lamp in plan.lamps)
    heights = list(dict.fromkeys(by_tape(length, unit) for length in lengths))
    if len(heights) > _MOST_NAMED:
        heights = [f"{heights[0]} to {heights[-1]}"]
    hung = f", hung {listed(heights)} {above(plan, plan.lamps)}" if heights else ""
    hours = format_number(plan.photoperiod_hours, 2)
    return f"Chosen: {_lamps_in_words(plan.lamps)}{hung}; {lined}; {hours} h of light a day."


def _lamps_in_words(lamps: Sequence[Lamp]) -> str:
    if not lamps:
        return "no lamp"
    names = [lamp.model.name for lamp in lamps]
    return listed([f"{names.count(name)} × {name}" for name in dict.fromkeys(names)])


def _against(known: Known) -> str:
    kept = [variant.name for variant in known.plan.variants]
    every = [side.name for side in known.others] or kept
    if not every:
        return "It stands alone: no other option was kept beside it."
    names = [f"'{name}'" for name in every[:_MOST_NAMED]]
    if len(every) > _MOST_NAMED:
        names.append(f"{len(every) - _MOST_NAMED} more")
    plural = "s" if len(every) > 1 else ""
    options = f"{len(every)} other option{plural}"
    if known.comparison is None:
        return f"{capital(options)} kept beside it, not weighed here: {listed(names)}."
    return f"It was weighed against {options}: {listed(names)}."


def rival(known: Known) -> Side | None:
    """The option a decision is told against.

    The baseline where the plan names one, else the one with most of the canopy in the band,
    or, without a target, with the most light. What has the plan's own light is passed over
    while another is there.
    """
    others = [side for side in known.others if side.estimate is not None]
    if not others or known.comparison is None:
        return None
    base = baseline_of(known.comparison)
    if base in others:
        return base
    own = lit(known.plan)
    others = [side for side in others if lit(side.plan) != own] or others

    def light(side: Side) -> tuple[float, float]:
        figures = side.estimate.figures  # type: ignore[union-attr]
        return figures.share_inside or 0.0, figures.mean

    return max(others, key=light)


def _how_sure(known: Known) -> str:
    other = rival(known)
    found = None if other is None else known.tellings.get(other.identity)
    if other is not None and found is not None:
        return verdict("This plan", found, f"'{other.name}'")
    if plan_is_dark(known.estimate):
        return "It is dark, so nothing can be said of its light."
    mean = known.estimate.figures.mean
    if known.uncertainty is None or known.uncertainty.mean <= 0:
        return f"How sure its mean of {ppfd(mean, unit=True)} is, was not reckoned."
    value, half = FIGURE["mean"].banded(mean, known.uncertainty.mean, COVERAGE)
    return (
        f"Its mean is {value} ± {half} {PPFD_UNIT} with 95 % probability, by what its inputs "
        "leave open; a survey would narrow that."
    )
