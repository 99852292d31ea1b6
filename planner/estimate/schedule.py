"""Growth schedule: stage by stage, how high the lamps hang, how bright, and what it costs.

Each stage is a question to ``find``: height and output are turned, hours and canopy are the
stage's, and its target is the wish. Where the plan is judged by the canopy on an obstacle that
one grows, and the others are told by their own targets. Options are scheduled one after another
over the same stages; weeks are told one by one for whoever has to go and turn the lamp.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from typing import Final

from planner.catalogue.library import Crop
from planner.estimate.compare import Wishes, sides_of
from planner.estimate.evaluate import Cancelled, evaluate
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
from planner.estimate.result import EstimateOptions
from planner.estimate.stages import DAYS_PER_WEEK, Schedule, StagePlan, beside, outcome_of
from planner.metrics.figures import kilowatt_hours_per_day
from planner.plan.checks import CLOSE_TO_CANOPY_M
from planner.plan.dials import dial
from planner.plan.edits import (
    change_carried,
    change_lamp,
    change_obstacle,
    changed,
    each_lamp,
    under_ceiling,
)
from planner.plan.lamp import Lamp
from planner.plan.place import OWN, Place, PlaceKind
from planner.plan.plan import Plan
from planner.plan.refusal import refusal
from planner.plan.target import GrowthStage
from planner.plan.tiers import canopy_under, hangs, hung_over, lamps_at, lighting
from planner.units import LengthUnit, capital, said_length

_EVEN: Final = 0.5
"""A canopy with less than this share inside the band is worth a caution; no source."""


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
        part = _part(progress, number, len(sides))
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
        part = _part(progress, number, len(wanted))
        found.append(_answered(plan, stage, week, question, options, part, cancelled))
        if cancelled is not None and cancelled():
            raise Cancelled
        week = round(week + stage.weeks, 6)
    return Schedule(tuple(found), plan.name)


def _part(
    progress: Callable[[float], None] | None, number: int, count: int
) -> Callable[[float], None]:
    """Progress of one of so many parts."""

    def tell(fraction: float) -> None:
        if progress is not None:
            progress((number + fraction) / count)

    return tell


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
        entered = 0.0
        if there.space.door_open and there.space.room_light:
            entered = evaluate(there, options, cancelled=cancelled).entered
        band = wished_band(there, entered)
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
    if answers.met and best.option.beyond:
        warnings += (f"{stage.name}: {best.option.beyond}.",)
    hung = hangs(best.plan, lamps_at(best.plan, lighting(best.plan))[0])
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
            f"{stage.name}: {outcome_of(best.estimate)}. At "
            f"{said_length(hung)} above the canopy the light is very uneven.",
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
        hanging_height=hung,
        output_percent=output_of(best.plan),
        kwh=kwh,
        cost=None if price is None else kwh * price,
        met=answers.met,
        words=" ".join((answers.words, *beside(best.estimate))),
        warnings=warnings,
    )


def at_stage(plan: Plan, stage: GrowthStage) -> Plan:
    """The plan with the canopy, hours and target of a stage, its lamps brought in between.

    Of a plan judged by the canopy on an obstacle the top of that obstacle is set to the height,
    its canopy gets the target, and the lamps over it make room.

    Raises
    ------
    planner.estimate.find_question.FindError
        If no lamp fits between that canopy and the ceiling, or none hangs.
    ValueError
        If the canopy does not fit under the ceiling.
    """
    check_lamps(plan)
    if plan.judged_top is not None:
        there = _top_at_stage(plan, plan.judged_top, stage)
        height_range(there)
        return there
    room = plan.space.height - stage.canopy_height

    def brought(lamp: Lamp) -> Lamp:
        # What hangs over a tier stays there, and what hangs under one stays under it.
        if canopy_under(plan, lamp) != OWN:
            height = plan.lamp_height(lamp) - stage.canopy_height
            return lamp.model_copy(update={"hanging_height": round(height, 9)})
        lamp, shelves = under_ceiling(lamp, room), hung_over(plan, lamp, under=True)
        most = min((one.underside for one in shelves), default=plan.space.height)
        most -= stage.canopy_height + lamp.rise[1]
        height = round(min(lamp.hanging_height, most), 9)
        return lamp if not shelves else lamp.model_copy(update={"hanging_height": height})

    there = changed(
        each_lamp(plan, brought),
        canopy=plan.canopy.model_copy(update={"height": stage.canopy_height}),
        photoperiod_hours=stage.photoperiod_hours,
        target=stage.target,
    )
    height_range(there)
    return there


def _top_at_stage(plan: Plan, index: int, stage: GrowthStage) -> Plan:
    obstacle = plan.obstacles[index]
    where = Place(PlaceKind.TOP, index).inside(plan)
    thickness = round(stage.canopy_height - obstacle.underside, 6)
    if thickness < dial("thickness").quantity.minimum:
        raise FindError(
            f"{capital(where)} cannot stand at {said_length(stage.canopy_height)}: what carries it "
            f"begins at {said_length(obstacle.underside)}."
        )
    grown = change_carried(
        changed(plan, photoperiod_hours=stage.photoperiod_hours), index, target=stage.target
    )
    # Lamps first: the plan is checked as a whole.
    led = lighting(plan)
    over = [
        k
        for k, lamp in enumerate(plan.lamps)
        if obstacle in hung_over(plan, lamp) or Place(PlaceKind.LAMP, k) in led
    ]
    for k in over:
        lamp = plan.lamps[k]
        clear = stage.canopy_height - plan.canopy.height - lamp.rise[0] + CLOSE_TO_CANOPY_M
        most = plan.hanging_room(lamp)[1]
        for shelf in hung_over(plan, lamp, under=True):
            most = min(most, shelf.underside - plan.canopy.height - lamp.rise[1])
        height = min(max(lamp.hanging_height, clear), most)
        grown = change_lamp(grown, k, hanging_height=round(height, 6))
    grown = change_obstacle(grown, index, thickness=thickness)
    check_lamps(grown)
    return grown


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
