"""Growth schedule: stage by stage, how high the lamps hang, how bright, and what it costs.

Each stage is a question to ``find``: height and output are turned, hours and canopy are the
stage's, and its target is the wish. Options are scheduled one after another over the same stages;
weeks are told one by one for whoever has to go and turn the lamp.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import Final

from planner.catalogue.library import Crop
from planner.estimate.compare import PLAN_SIDE, Identity, Wishes, sides_of
from planner.estimate.evaluate import Cancelled
from planner.estimate.find import Limit, find
from planner.estimate.find_question import (
    Aim,
    FindError,
    Held,
    Question,
    check_lamps,
    height_range,
    output_of,
    wished_band,
)
from planner.estimate.result import Estimate, EstimateOptions
from planner.metrics.figures import kilowatt_hours_per_day, percent
from planner.plan.dials import dial
from planner.plan.edits import changed, each_lamp
from planner.plan.lamp import Lamp
from planner.plan.plan import Plan
from planner.plan.refusal import refusal
from planner.plan.target import GrowthStage
from planner.units import LengthUnit, said_length

DAYS_PER_WEEK: Final = 7.0
_TINY: Final = 1e-9
_NEAR: Final = 1e-3
_EVEN: Final = 0.5
"""A canopy with less than this share inside the band is worth a caution; no source."""


@dataclass(frozen=True)
class StagePlan:
    """One stage of a schedule, answered.

    Weeks count from 0 at the start of the schedule. ``plan`` is the space at that stage,
    None together with ``estimate`` where the stage cannot be set up at all; ``kwh`` is the
    energy of the whole stage and ``cost`` its price, None without a tariff. ``met`` says
    whether mean or lowest, as asked, reaches the target, which much of the canopy may miss all
    the same; ``words`` what was found, ``warnings`` what to heed.
    """

    stage: GrowthStage
    first_week: float
    last_week: float
    plan: Plan | None
    estimate: Estimate | None
    hanging_height: float | None
    output_percent: float | None
    kwh: float
    cost: float | None
    met: bool
    words: str
    warnings: tuple[str, ...]

    @property
    def outcome(self) -> str:
        """Where the mean lies and how much of the canopy with it, in words."""
        return "cannot be set up" if self.estimate is None else _outcome(self.estimate)


def _outcome(estimate: Estimate) -> str:
    mean, band = estimate.figures.mean, estimate.plan.ppfd_band or (0.0, math.inf)
    under, over = mean < band[0] * (1 - _NEAR), mean > band[1] * (1 + _NEAR)
    place = "under" if under else "over" if over else "in"
    share = percent(estimate.figures.share_inside)
    return f"mean {place} the band, {share} of the canopy inside"


@dataclass(frozen=True)
class Week:
    """What is set in one week, or the part of one that a stage has.

    ``start`` and ``weeks`` in weeks from the start of the schedule; ``hanging_height`` above the
    canopy and ``face`` above the floor in metres, None where the stage cannot be set up.
    ``turned`` says that something is set anew.
    """

    start: float
    weeks: float
    stage: GrowthStage
    hanging_height: float | None
    face: float | None
    output_percent: float | None
    kwh: float
    turned: bool

    @property
    def words(self) -> str:
        """Such as 'Week 3', or 'Week 3, day 4' where a stage begins within a week."""
        return when(self.start)


def when(start: float) -> str:
    """A time in weeks from the start of a schedule for people, such as 'Week 3, day 4'."""
    week = math.floor(start + _TINY)
    day = math.floor((start - week) * DAYS_PER_WEEK + _TINY) + 1
    return f"Week {week + 1}" + (f", day {day}" if day > 1 else "")


@dataclass(frozen=True)
class Schedule:
    """All stages in order, with their sums, for the plan or one of its variants."""

    stages: tuple[StagePlan, ...]
    name: str = ""
    identity: Identity = PLAN_SIDE

    @property
    def weeks(self) -> float:
        """Length of the whole schedule in weeks."""
        return self.stages[-1].last_week if self.stages else 0.0

    @property
    def kwh(self) -> float:
        """Energy of the whole schedule in kWh."""
        return sum(stage.kwh for stage in self.stages)

    @property
    def cost(self) -> float | None:
        """Cost of the whole schedule; None without a tariff."""
        known = [stage.cost for stage in self.stages if stage.cost is not None]
        return sum(known) if len(known) == len(self.stages) and known else None

    def sums(self, currency: str) -> str:
        """Its sums in words: '3 weeks, 12.5 kWh, 3.75 €'; no money without a tariff."""
        text = f"{self.weeks:g} weeks, {self.kwh:.1f} kWh"
        return text if self.cost is None else f"{text}, {self.cost:.2f} {currency}".rstrip()

    @property
    def met(self) -> int:
        """How many stages reach their target, with the mean or the lowest as was asked."""
        return sum(stage.met for stage in self.stages)

    def at(self, week: float) -> Plan | None:
        """The space as it stands in a week, growing evenly from stage to stage.

        Canopy, hanging heights and outputs are those of a stage in its middle and run straight
        from one middle to the next; hours and target are of the stage that holds the week. None
        where that stage cannot be set up.
        """
        there = [one for one in self.stages if one.first_week <= week + _TINY]
        now = there[-1] if there else None
        if now is None or now.plan is None:
            return None
        known = [one for one in self.stages if one.plan is not None]
        middles = [(one.first_week + one.last_week) / 2 for one in known]
        after = next((k for k, middle in enumerate(middles) if middle > week), len(known) - 1)
        before = max(after - 1, 0) if middles[after] > week else after
        early, late = known[before].plan, known[after].plan
        span = middles[after] - middles[before]
        share = min(max((week - middles[before]) / span, 0.0), 1.0) if span > 0 else 0.0
        return None if early is None or late is None else _between(now.plan, early, late, share)

    def by_week(self) -> tuple[Week, ...]:
        """What is set week by week; a stage that begins within a week begins a line there."""
        found: list[Week] = []
        for answer in self.stages:
            inside = range(math.floor(answer.first_week) + 1, math.ceil(answer.last_week))
            starts = [answer.first_week, *map(float, inside), answer.last_week]
            for start, end in pairwise(starts):
                hung = answer.hanging_height
                face = None if hung is None else answer.stage.canopy_height + hung
                part = (end - start) / answer.stage.weeks
                week = Week(
                    start, end - start, answer.stage, hung, face, answer.output_percent,
                    answer.kwh * part, turned=start == answer.first_week,
                )  # fmt: skip
                found.append(week)
        return tuple(found)


def _between(now: Plan, early: Plan, late: Plan, share: float) -> Plan:
    """A plan with canopy, heights and outputs so far on the way from one plan to another."""

    def part(one: float, other: float, digits: int) -> float:
        return one if one == other else round(one + (other - one) * share, digits)

    height = part(early.canopy.height, late.canopy.height, 3)
    room = now.space.height - height
    # All follow the brightest, so that what they are to each other stays what it is.
    turned = part(output_of(early), output_of(late), 1) / (output_of(now) or 1.0)
    lamps = tuple(
        lamp.model_copy(
            update={
                "hanging_height": min(part(one.hanging_height, other.hanging_height, 3), room),
                "output_percent": round(min(lamp.output_percent * turned, 100.0), 9),
            }
        )
        for lamp, one, other in zip(now.lamps, early.lamps, late.lamps, strict=True)
    )
    return changed(now, canopy=now.canopy.model_copy(update={"height": height}), lamps=lamps)


def stage_of_crop(crop: Crop, key: str, canopy_height: float, weeks: float) -> GrowthStage:
    """A stage of the crop library at a canopy height (metres) for so many weeks.

    Raises
    ------
    KeyError
        If the crop has no stage of that key.
    """
    stage = crop.stage(key)
    return GrowthStage(
        name=f"{crop.name}, {stage.name}"[:120],
        canopy_height=canopy_height,
        target=crop.target(key),
        photoperiod_hours=stage.hours_usual,
        weeks=weeks,
    )


def schedules(
    plan: Plan,
    options: EstimateOptions | None = None,
    *,
    aim: Aim = Aim.EVEN,
    held: Held = Held.MEAN,
    unit: LengthUnit = LengthUnit.CM,
    progress: Callable[[float], None] | None = None,
    cancelled: Callable[[], bool] | None = None,
) -> tuple[Schedule, ...]:
    """The plan's schedule for the plan itself and for each of its variants.

    Once ``cancelled`` says so, those that are done are handed on.

    Raises
    ------
    planner.estimate.evaluate.Cancelled
        If ``cancelled`` said so before the first was done.
    """
    sides = sides_of(plan, unit=unit)
    found: list[Schedule] = []
    for number, side in enumerate(sides):

        def part(fraction: float, number: int = number) -> None:
            if progress is not None:
                progress((number + fraction) / len(sides))

        option = plan.with_setup(side.plan)
        try:
            one = schedule(
                option, None, options, aim=aim, held=held, unit=unit,
                progress=part, cancelled=cancelled,
            )  # fmt: skip
        except Cancelled:
            if not found:
                raise
            break
        found.append(replace(one, name=side.name, identity=side.identity))
    return tuple(found)


def schedule(
    plan: Plan,
    stages: Sequence[GrowthStage] | None = None,
    options: EstimateOptions | None = None,
    *,
    aim: Aim = Aim.EVEN,
    held: Held = Held.MEAN,
    unit: LengthUnit = LengthUnit.CM,
    progress: Callable[[float], None] | None = None,
    cancelled: Callable[[], bool] | None = None,
) -> Schedule:
    """Find hanging height and output for each stage (first: the plan's own schedule).

    With the aim 'most even', which does not depend on it, the light is the middle of the
    target as far as the lamps reach; else it is just enough. Heights are whole centimetres or
    half inches, as ``unit`` is.

    Raises
    ------
    planner.estimate.evaluate.Cancelled
        If ``cancelled`` said so.
    """
    wanted = plan.schedule if stages is None else tuple(stages)
    question = Question(aim, held=held, at=0.5 if aim is Aim.EVEN else 0.0, grain=unit.snap)
    found: list[StagePlan] = []
    week = 0.0
    for number, stage in enumerate(wanted):

        def part(fraction: float, number: int = number) -> None:
            if progress is not None:
                progress((number + fraction) / len(wanted))

        found.append(_answered(plan, stage, week, question, options, part, cancelled))
        if cancelled is not None and cancelled():
            raise Cancelled
        week = round(week + stage.weeks, 6)
    return Schedule(tuple(found), plan.name)


def _answered(
    plan: Plan,
    stage: GrowthStage,
    week: float,
    question: Question,
    options: EstimateOptions | None,
    progress: Callable[[float], None],
    cancelled: Callable[[], bool] | None,
) -> StagePlan:
    warnings = _about_hours(plan, stage)
    try:
        there = at_stage(plan, stage)
        band = wished_band(there)
        if band is None:
            raise FindError("A DLI needs hours of light: set the hours above 0 h.")
        asked = replace(question, wishes=Wishes(dli_low=band[0], dli_high=band[1]))
        answers = find(there, asked, options, progress=progress, cancelled=cancelled)
    except ValueError as error:
        sentence = f"{stage.name}: {refusal(error)}"
        end = round(week + stage.weeks, 6)
        return StagePlan(
            stage, week, end, None, None, None, None, 0.0, None, False, sentence,
            (*warnings, sentence),
        )  # fmt: skip
    best = answers.best
    if answers.limit is Limit.CEILING and question.aim is Aim.EVEN:
        _, most = height_range(there)
        warnings += (
            f"{stage.name}: the lamp cannot rise far enough. The ceiling leaves "
            f"{said_length(round(most, 3))} above a canopy at {said_length(stage.canopy_height)}, "
            "and higher would be more even.",
        )
    if not answers.met:
        warnings += (f"{stage.name}: {'; '.join(best.missed)}.",)
    elif (best.estimate.figures.share_inside or 0.0) < _EVEN:
        warnings += (
            f"{stage.name}: {_outcome(best.estimate)}. At "
            f"{said_length(best.plan.lamps[0].hanging_height)} above the canopy the light is very "
            "uneven.",
        )
    watts = best.plan.watts
    kwh = kilowatt_hours_per_day(watts, stage.photoperiod_hours) * stage.weeks * DAYS_PER_WEEK
    price = plan.costs.price_per_kwh
    return StagePlan(
        stage=stage,
        first_week=week,
        last_week=round(week + stage.weeks, 6),
        plan=best.plan,
        estimate=best.estimate,
        hanging_height=best.plan.lamps[0].hanging_height,
        output_percent=output_of(best.plan),
        kwh=kwh,
        cost=None if price is None else kwh * price,
        met=answers.met,
        words=answers.words,
        warnings=warnings,
    )


def at_stage(plan: Plan, stage: GrowthStage) -> Plan:
    """The plan with the canopy, hours and target of a stage, its lamps brought in between.

    Raises
    ------
    planner.estimate.find_question.FindError
        If no lamp fits between that canopy and the ceiling, or none hangs.
    ValueError
        If the canopy does not fit under the ceiling.
    """
    check_lamps(plan)
    room = plan.space.height - stage.canopy_height

    def under_ceiling(lamp: Lamp) -> Lamp:
        return lamp.model_copy(update={"hanging_height": min(lamp.hanging_height, room)})

    there = changed(
        each_lamp(plan, under_ceiling),
        canopy=plan.canopy.model_copy(update={"height": stage.canopy_height}),
        photoperiod_hours=stage.photoperiod_hours,
        target=stage.target,
    )
    height_range(there)
    return there


def _about_hours(plan: Plan, stage: GrowthStage) -> tuple[str, ...]:
    most = dial("photoperiod").sound_in(plan).maximum
    dark = 24.0 - stage.photoperiod_hours
    if stage.photoperiod_hours <= most:
        return ()
    night = "no dark hours" if dark <= 0 else f"only {dark:.3g} dark hours"
    return (
        f"{stage.name}: {stage.photoperiod_hours:.3g} h of light leave {night} a day; most crops "
        f"need a dark period, so keep at least {24.0 - most:g} h unless this one is known to bear "
        "it.",
    )
