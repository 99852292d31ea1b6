"""Growth schedule: stage by stage, how high the lamps hang, how bright, and what it costs."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Final

from planner.catalogue.library import Crop
from planner.estimate.evaluate import Cancelled
from planner.estimate.find import (
    MOST_HOURS,
    Aim,
    FindError,
    Limit,
    find_height_and_output,
    height_range,
)
from planner.estimate.result import Estimate, EstimateOptions
from planner.metrics.figures import kilowatt_hours_per_day
from planner.plan.checks import CLOSE_TO_CANOPY_M
from planner.plan.edits import changed, each_lamp
from planner.plan.lamp import Lamp
from planner.plan.plan import Plan
from planner.plan.refusal import refusal
from planner.plan.target import GrowthStage

DAYS_PER_WEEK: Final = 7.0


@dataclass(frozen=True)
class StagePlan:
    """One stage of a schedule, answered.

    Weeks count from 0 at the start of the schedule. ``plan`` is the space at that stage,
    None together with ``estimate`` where the stage cannot be set up at all; ``kwh`` is the
    energy of the whole stage and ``cost`` its price, None without a tariff. ``met`` says
    whether the target is reached; ``words`` what was found, ``warnings`` what to heed.
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


@dataclass(frozen=True)
class Schedule:
    """All stages in order, with their sums."""

    stages: tuple[StagePlan, ...]

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


def schedule(
    plan: Plan,
    stages: Sequence[GrowthStage] | None = None,
    options: EstimateOptions | None = None,
    *,
    aim: Aim = Aim.MEAN,
    progress: Callable[[float], None] | None = None,
    cancelled: Callable[[], bool] | None = None,
) -> Schedule:
    """Find hanging height and output for each stage (first: the plan's own schedule).

    Raises
    ------
    planner.estimate.evaluate.Cancelled
        If ``cancelled`` said so.
    """
    wanted = plan.schedule if stages is None else tuple(stages)
    found: list[StagePlan] = []
    week = 0.0
    for number, stage in enumerate(wanted):
        if cancelled is not None and cancelled():
            raise Cancelled

        def part(fraction: float, number: int = number) -> None:
            if progress is not None:
                progress((number + fraction) / len(wanted))

        found.append(_answered(plan, stage, week, options, aim, part, cancelled))
        week += stage.weeks
    return Schedule(tuple(found))


def _answered(
    plan: Plan,
    stage: GrowthStage,
    week: float,
    options: EstimateOptions | None,
    aim: Aim,
    progress: Callable[[float], None],
    cancelled: Callable[[], bool] | None,
) -> StagePlan:
    warnings = _about_hours(stage)
    try:
        there = at_stage(plan, stage)
        answer = find_height_and_output(
            there, None, aim, options, progress=progress, cancelled=cancelled
        )
    except ValueError as error:
        sentence = f"{stage.name}: {refusal(error)}"
        end = week + stage.weeks
        return StagePlan(
            stage, week, end, None, None, None, None, 0.0, None, False, sentence,
            (*warnings, sentence),
        )  # fmt: skip
    height = answer.plan.lamps[0].hanging_height
    if answer.limit is Limit.CEILING:
        _, most = height_range(there)
        warnings += (
            f"{stage.name}: the lamp cannot rise far enough. The ceiling leaves "
            f"{most * 100:.0f} cm above a canopy at {stage.canopy_height * 100:.0f} cm, and "
            "higher would be more even.",
        )
    if not answer.met:
        warnings += (f"{stage.name}: {answer.words}",)
    watts = sum(lamp.watts for lamp in answer.plan.lamps)
    days = stage.weeks * DAYS_PER_WEEK
    kwh = kilowatt_hours_per_day(watts, stage.photoperiod_hours) * days
    price = plan.costs.price_per_kwh
    return StagePlan(
        stage=stage,
        first_week=week,
        last_week=week + stage.weeks,
        plan=answer.plan,
        estimate=answer.estimate,
        hanging_height=height,
        output_percent=max(lamp.output_percent for lamp in answer.plan.lamps),
        kwh=kwh,
        cost=None if price is None else kwh * price,
        met=answer.met,
        words=answer.words,
        warnings=warnings,
    )


def at_stage(plan: Plan, stage: GrowthStage) -> Plan:
    """The plan with the canopy, hours and target of a stage, its lamps brought in between.

    Raises
    ------
    FindError
        If no lamp fits between that canopy and the ceiling, or none hangs.
    """
    if not plan.lamps:
        raise FindError("No lamp is lit in the space; hang one first, or raise its output.")
    room = plan.space.height - stage.canopy_height
    housing = max(lamp.model.housing_height for lamp in plan.lamps)
    if room - housing < CLOSE_TO_CANOPY_M:
        raise FindError(
            f"the lamp cannot rise far enough: between a canopy at {stage.canopy_height * 100:g} "
            f"cm and the ceiling at {plan.space.height * 100:g} cm there are "
            f"{max(room, 0.0) * 100:.0f} cm."
        )

    def under_ceiling(lamp: Lamp) -> Lamp:
        height = min(lamp.hanging_height, room - housing)
        return lamp.model_copy(update={"hanging_height": height})

    lower = each_lamp(plan, under_ceiling)
    return changed(
        lower,
        canopy=plan.canopy.model_copy(update={"height": stage.canopy_height}),
        photoperiod_hours=stage.photoperiod_hours,
        target=stage.target,
    )


def _about_hours(stage: GrowthStage) -> tuple[str, ...]:
    dark = 24.0 - stage.photoperiod_hours
    if stage.photoperiod_hours <= MOST_HOURS:
        return ()
    night = "no dark hours" if dark <= 0 else f"only {dark:.3g} dark hours"
    return (
        f"{stage.name}: {stage.photoperiod_hours:.3g} h of light leave {night} a day; most crops "
        f"need a dark period, so keep at least {24.0 - MOST_HOURS:g} h unless this one is known "
        "to bear it.",
    )
