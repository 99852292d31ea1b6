"""A growth schedule as answered: its stages and weeks, their sums, and the one table of them."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass
from itertools import pairwise
from typing import Any, Final

from planner.estimate.compare import PLAN_SIDE, Identity
from planner.estimate.find_question import output_of
from planner.estimate.result import Estimate, of_canopy
from planner.metrics.figures import (
    FIGURE,
    NO_VALUE,
    Digits,
    Figure,
    energy,
    money,
    percent,
)
from planner.plan.dials import dial
from planner.plan.edits import changed, under_ceiling
from planner.plan.plan import Plan
from planner.plan.quantity import Quantity
from planner.plan.target import GrowthStage
from planner.plan.tiers import lighting
from planner.units import LengthUnit, format_number, in_unit, on_tape

DAYS_PER_WEEK: Final = 7.0
_TINY: Final = 1e-9
_NEAR: Final = 1e-3


@dataclass(frozen=True)
class StagePlan:
    """One stage of a schedule, answered.

    Weeks count from 0 at the start of the schedule. ``plan`` is the space at that stage,
    None together with ``estimate`` where the stage cannot be set up at all; ``hanging_height``
    is that above the canopy that grows, in metres, ``kwh`` the energy of the whole stage and
    ``cost`` its price, None without a tariff. ``met`` says whether mean or lowest, as asked,
    reaches the target, which much of the canopy may miss all the same; ``words`` what was found
    and what other canopies get, ``warnings`` what to heed.
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
        return "cannot be set up" if self.estimate is None else outcome_of(self.estimate)


def outcome_of(estimate: Estimate) -> str:
    """Where the mean of an estimate lies and how much of the canopy with it, in words."""
    mean, band = estimate.figures.mean, estimate.band or (0.0, math.inf)
    under, over = mean < band[0] * (1 - _NEAR), mean > band[1] * (1 + _NEAR)
    place = "under" if under else "over" if over else "in"
    share = percent(estimate.figures.share_inside)
    return f"mean {place} the band, {share} of the canopy inside"


def beside(estimate: Estimate) -> tuple[str, ...]:
    """What the canopies get by which a plan is not judged, by their own targets, and all together.

    () where there is only one.
    """
    others = [one for one in estimate.canopies if one.place != estimate.place]
    named = [(one.place.title(estimate.plan), one.figures) for one in others]
    named += [("All canopies together", estimate.overall)] if others else []
    return tuple(of_canopy(name, figures, ("mean", "dli")) for name, figures in named)


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
        text = f"{self.weeks:g} weeks, {energy(self.kwh, unit=True)}"
        return text if self.cost is None else f"{text}, {money(self.cost, currency)}"

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
    tops = tuple(
        one.model_copy(update={"thickness": part(a.thickness, b.thickness, 3)})
        for one, a, b in zip(now.obstacles, early.obstacles, late.obstacles, strict=True)
    )
    room = now.space.height - height
    # All follow the brightest, so that what they are to each other stays what it is.
    turned = part(output_of(early), output_of(late), 1) / (output_of(now) or 1.0)
    led = {place.index for place in lighting(now)}
    lamps = tuple(
        lamp.model_copy(
            update={
                "hanging_height": part(one.hanging_height, other.hanging_height, 3),
                "output_percent": round(
                    min(lamp.output_percent * (turned if k in led else 1.0), 100.0), 9
                ),
            }
        )
        for k, (lamp, one, other) in enumerate(zip(now.lamps, early.lamps, late.lamps, strict=True))
    )
    lamps = tuple(under_ceiling(lamp, room) for lamp in lamps)
    canopy = now.canopy.model_copy(update={"height": height})
    return changed(now, canopy=canopy, lamps=lamps, obstacles=tops)


# -- the table ----------------------------------------------------------------------------


@dataclass(frozen=True)
class StageColumn:
    """One column of whatever table of a schedule: on a screen, in a report, for a spreadsheet.

    ``of`` reads it of a stage or a week, as the plan holds it; None where it is not known.
    ``kind`` says how numbers are written; without one it is text, or money.
    """

    key: str
    name: str
    of: Callable[[Any], float | str | None]
    kind: Quantity | Figure | None = None

    def heading(self, unit: LengthUnit) -> str:
        """Name and unit, for cells without."""
        if isinstance(self.kind, Figure):
            return self.name if self.name == self.kind.unit else self.kind.heading()
        behind = "" if self.kind is None else self.kind.unit_in(unit)
        return f"{self.name} ({behind})" if behind else self.name

    def shown(self, one: StagePlan | Week, unit: LengthUnit) -> float | str | None:
        """A cell for a spreadsheet: numbers in full, in the unit of the heading."""
        value = self.of(one)
        if self.kind is None or value is None or isinstance(value, str):
            return value
        if isinstance(self.kind, Figure):
            return self.kind.shown(value)
        return self.kind.shown(value, unit)

    def number(self, one: StagePlan | Week, unit: LengthUnit) -> str:
        """A cell under a heading with the unit; lengths as a tape has them."""
        value = self.of(one)
        if value is None:
            return NO_VALUE
        if isinstance(value, str):
            return in_unit(value, unit)
        if self.kind is None:
            return money(value)
        if isinstance(self.kind, Figure):
            return self.kind.number(value)
        if self.kind.is_length:
            return on_tape(value, unit)
        return format_number(self.kind.shown(value, unit), self.kind.decimals)

    def text(self, one: StagePlan | Week, unit: LengthUnit, *, tape: bool = False) -> str:
        """A cell with the unit of what is set and of shares; lengths as on a ``tape`` if asked."""
        value = self.of(one)
        if isinstance(self.kind, Figure) and self.kind.digits is Digits.SHARE:
            return self.kind.text(None if isinstance(value, str) else value)
        if not isinstance(self.kind, Quantity) or value is None or isinstance(value, str):
            return self.number(one, unit)
        if tape:
            return f"{self.number(one, unit)} {self.kind.unit_in(unit)}".rstrip()
        return self.kind.text(value, unit)


def _heed(one: StagePlan) -> str:
    if one.estimate is None:
        return one.outcome
    lead = f"{one.stage.name}: "
    return "; ".join(text.removeprefix(lead) for text in one.warnings) or one.outcome


def _set(key: str, name: str, of: Callable[[Any], float | None]) -> StageColumn:
    return StageColumn(key, name or dial(key).label, of, dial(key).quantity)


def _light(key: str) -> StageColumn:
    def of(one: StagePlan) -> float | None:
        return None if one.estimate is None else FIGURE[key].of(one.estimate.figures)

    return StageColumn(key, FIGURE[key].name, of, FIGURE[key])


def _weeks(key: str, name: str, of: Callable[[StagePlan], float]) -> StageColumn:
    return StageColumn(key, name, of, Quantity(decimals=2))


STAGE_COLUMNS: Final = (
    StageColumn("week", "Week", lambda one: one.words),
    StageColumn("stage", "Stage", lambda one: one.stage.name),
    StageColumn("span", "Weeks", lambda one: f"{one.first_week:g} – {one.last_week:g}"),
    _weeks("from", "From week", lambda one: one.first_week),
    _weeks("to", "To week", lambda one: one.last_week),
    _set("canopy", "Canopy", lambda one: one.stage.canopy_height),
    _set("height", "", lambda one: one.hanging_height),
    StageColumn("face", "From floor", lambda one: one.face, dial("height").quantity),
    _set("output", "", lambda one: one.output_percent),
    _set("photoperiod", "Hours", lambda one: one.stage.photoperiod_hours),
    *(_light(key) for key in ("mean", "min_over_mean", "dli")),
    StageColumn(
        "kwh", "kWh", lambda one: None if one.hanging_height is None else one.kwh,
        FIGURE["kwh_per_day"],
    ),
    StageColumn("cost", "Cost", lambda one: one.cost),
    StageColumn("heed", "Heed", _heed),
)  # fmt: skip
"""Of stages, and but for their light, times and money of weeks."""


def stage_columns(*keys: str) -> tuple[StageColumn, ...]:
    """Some of the columns, in the order asked."""
    known = {column.key: column for column in STAGE_COLUMNS}
    return tuple(known[key] for key in keys)
