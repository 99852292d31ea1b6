"""Edits of surveys: pure functions from one plan to the next, each one undo step."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any, Final

from planner.plan.edits import (
    change_carried,
    change_kind,
    change_lamp,
    change_lining,
    change_obstacle,
    changed,
    judge_by,
    line_all_walls,
    set_canopy,
    set_canopy_height,
    without_walls,
)
from planner.plan.lamp import CosineProfile
from planner.plan.plan import Plan
from planner.plan.quantity import Value
from planner.plan.space import Obstacle
from planner.plan.survey import BOARD_REFLECTANCE, SAME_TOP, Board, Reading, Survey
from planner.plan.tiers import lighting


def add_survey(plan: Plan, survey: Survey) -> Plan:
    """Put one more survey into the plan."""
    return changed(plan, surveys=(*plan.surveys, survey))


def remove_survey(plan: Plan, index: int) -> Plan:
    """Take a survey out."""
    return changed(plan, surveys=plan.surveys[:index] + plan.surveys[index + 1 :])


def change_survey(plan: Plan, index: int, **parts: Any) -> Plan:
    """Replace parts of one survey (name, date, meter, lining, readings, ...)."""
    surveys = list(plan.surveys)
    surveys[index] = changed(surveys[index], **parts)
    return changed(plan, surveys=tuple(surveys))


def add_readings(plan: Plan, index: int, readings: Sequence[Reading]) -> Plan:
    """Add readings; those already there are kept, also at the same holes."""
    return change_survey(plan, index, readings=(*plan.surveys[index].readings, *readings))


def replace_readings(plan: Plan, index: int, hole: int, values: Sequence[float]) -> Plan:
    """Give a hole exactly these readings, beside those set aside.

    They take the places of the old ones in time, one by one; more stand behind the last.
    """
    old = plan.surveys[index].readings
    mine = [k for k, reading in enumerate(old) if reading.hole == hole and not reading.aside]
    found: list[Reading] = []
    rest = list(values)
    for k, reading in enumerate(old):
        if k not in mine:
            found.append(reading)
        elif rest:
            found.append(reading.model_copy(update={"value": rest.pop(0)}))
        if mine and k == mine[-1]:
            found += [Reading(hole=hole, value=value) for value in rest]
            rest = []
    found += [Reading(hole=hole, value=value) for value in rest]
    return change_survey(plan, index, readings=tuple(found))


def set_aside(plan: Plan, index: int, hole: int, *, aside: bool) -> Plan:
    """Let the readings of a hole count no longer, or again; they are kept either way."""
    readings = tuple(
        reading.model_copy(update={"aside": aside}) if reading.hole == hole else reading
        for reading in plan.surveys[index].readings
    )
    return change_survey(plan, index, readings=readings)


def lay_board(plan: Plan, index: int, board: Board | None) -> Plan:
    """Say what the board of a survey is made of; its reflectance follows, and how sure it is."""
    doubts = plan.surveys[index].doubts
    reflectance = None
    if board in BOARD_REFLECTANCE:
        reflectance, half = BOARD_REFLECTANCE[board]
        doubts = doubts.model_copy(update={"board_reflectance": half})
    elif board is Board.OWN:
        reflectance = plan.surveys[index].board_reflectance
        if reflectance is None:
            reflectance = plan.leaves_on(top_read(plan, plan.surveys[index])).reflectance
    return change_survey(plan, index, board=board, board_reflectance=reflectance, doubts=doubts)


def own_board(plan: Plan, index: int, reflectance: float | None) -> Plan:
    """Give the board of a survey a reflectance of one's own; None: nobody said."""
    board = None if reflectance is None else Board.OWN
    return change_survey(plan, index, board=board, board_reflectance=reflectance)


def free_key(plan: Plan, wanted: str = "survey") -> str:
    """A key no survey of the plan has yet: ``wanted-1``, ``wanted-2``, ..."""
    keys = {survey.key for survey in plan.surveys}
    number = 1
    while f"{wanted}-{number}" in keys:
        number += 1
    return f"{wanted}-{number}"


def as_surveyed(plan: Plan, survey: Survey) -> Plan:
    """The plan under the conditions of a survey, to estimate what its meter should read.

    Lamps get the survey's output, those over the canopy read its hanging height (those of other
    tiers of a rack hang as they are), walls its lining (open air: no walls and no ceiling), the
    plane a board where one was laid. A sensor that stands above the plane lifts it by its
    height, while the lamps stay where they hang. It is judged by the canopy that was read, the
    plan's own or a carried one: a board then lies on that top alone.

    Raises
    ------
    ValueError
        If that cannot be built, for example lamps that would hang above the ceiling.
    """
    top = top_read(plan, survey)
    plan = judge_by(plan, top)
    for index in range(len(plan.lamps)):
        if survey.output_percent is not None:
            plan = change_lamp(plan, index, output_percent=survey.output_percent)
    if survey.hanging_height is not None:
        for place in lighting(plan):
            plan = change_lamp(plan, place.index, hanging_height=survey.hanging_height)
    if survey.lining is not None:
        plan = _lined(plan, survey)
    if survey.board_reflectance is not None:
        # A board is no leaves: it returns all colours alike.
        grey = {"reflectance": survey.board_reflectance, "wavebands": None}
        if top is None:
            plan = set_canopy(plan, closed=True, **grey)
        else:
            plan = change_carried(plan, top, **grey)
    raised = survey.meter.sensor_height
    if raised > 0 and top is None:
        plan = set_canopy_height(plan, plan.canopy.height + raised)
    elif raised > 0 and top is not None:
        plan = change_obstacle(plan, top, thickness=plan.obstacles[top].thickness + raised)
    return plan


_HAIR: Final = 1e-4
"""Metres by which a hole may lie beyond the edge of a top: what rounding makes of its place."""


def top_read(plan: Plan, survey: Survey) -> int | None:
    """Which obstacle carries the canopy that a survey was read on; None: the plan's own canopy.

    By height and place, not by number: obstacles come and go, and variants have others.

    Raises
    ------
    ValueError
        If no canopy stands there, or none that all holes lie on.
    """
    height = survey.on_top
    if height is None:
        return None
    near, holding = _tops_at(plan, height, survey)
    if holding:
        return holding[0]
    level = f"{100 * height:.0f} cm"
    if near:
        raise ValueError(
            f"some holes of the survey lie beside the canopy {level} above the floor that it was "
            "read on; all of them must lie on that obstacle's top."
        )
    raise ValueError(
        f"no obstacle carries a canopy {level} above the floor, where the survey was read; "
        "the plan needs the obstacle as it stood, with a canopy on its top."
    )


def laid_on(
    plan: Plan, obstacle: int | None
) -> tuple[float | None, tuple[tuple[float, float], ...]]:
    """``on_top`` of a survey, and the corners in metres that its holes are laid over.

    It is read on the canopy of an obstacle; None: on the plan's own.
    """
    if obstacle is None:
        return None, plan.space.footprint
    there = plan.obstacles[obstacle]
    return round(there.top, 6), there.outline()


def outline_read(plan: Plan, survey: Survey) -> tuple[tuple[float, float], ...]:
    """Corners of what the holes of a survey are laid over, metres: the footprint, or a top."""
    height = survey.on_top
    near, holding = ([], []) if height is None else _tops_at(plan, height, survey)
    found = holding or near
    return plan.obstacles[found[0]].outline() if found else plan.space.footprint


def _tops_at(plan: Plan, height: float, survey: Survey) -> tuple[list[int], list[int]]:
    """The obstacles with a canopy at about that height, and those of them that hold all holes.

    Those nearest to the height first.
    """

    def off(k: int) -> float:
        return abs(plan.obstacles[k].top - height)

    carrying = [k for k, one in enumerate(plan.obstacles) if one.canopy is not None]
    near = sorted((k for k in carrying if off(k) <= SAME_TOP + 1e-9), key=off)
    return near, [k for k in near if _holds(plan.obstacles[k], survey.points)]


def _holds(obstacle: Obstacle, points: Sequence[tuple[float, float]]) -> bool:
    for along, across in (obstacle.off_middle(x, y) for x, y in points):
        if along > obstacle.length / 2 + _HAIR or across > obstacle.width / 2 + _HAIR:
            return False
    return True


def _lined(plan: Plan, survey: Survey) -> Plan:
    lining = survey.lining
    if lining is None:
        return plan
    if lining.is_opening:
        return without_walls(plan)
    # The survey's own copy of the lining holds, not the plan's of the same key.
    return line_all_walls(change_lining(plan, lining), lining)


def beam_in_plan(
    plan: Plan, key: str, profile: CosineProfile, doubt_deg: float | None = None
) -> Plan:
    """The plan with this beam for all its lamps of one kind; None leaves its doubt as it is."""
    parts: dict[str, object] = {"profile": profile}
    if doubt_deg is not None:
        parts["beam_uncertainty_deg"] = doubt_deg
    return change_kind(plan, key, **parts)


def used_in_plan(
    plan: Plan, before: Plan, calibrated: Plan, covers: Sequence[tuple[str, object]]
) -> Plan:
    """The plan with what a calibration changed in lamps and linings, in the surveys' copies too.

    ``before`` is the plan that was calibrated. Only what differs between it and the
    ``calibrated`` one is taken over; what was entered meanwhile (a label, a price) stays.
    ``covers`` are the calibrated linings by the key the plan knows them by.
    """
    by_key = dict(covers)
    surveys = tuple(
        changed(survey, lining=by_key[survey.lining.key])
        if survey.lining is not None and survey.lining.key in by_key
        else survey
        for survey in plan.surveys
    )
    models = {
        old.model.key: _differing(old.model, new.model)
        for old, new in zip(before.lamps, calibrated.lamps, strict=True)
    }
    shifts = {
        (old.x, old.y): {"x": new.x, "y": new.y}
        for old, new in zip(before.lamps, calibrated.lamps, strict=True)
    }
    lamps = tuple(
        changed(
            lamp,
            model=changed(lamp.model, **models.get(lamp.model.key, {})),
            **shifts.get((lamp.x, lamp.y), {}),
        )
        for lamp in plan.lamps
    )
    found = {
        old.key: _differing(old, new)
        for old, new in zip(before.linings, calibrated.linings, strict=True)
    }
    linings = tuple(changed(lining, **found.get(lining.key, {})) for lining in plan.linings)
    return changed(plan, lamps=lamps, linings=linings, surveys=surveys)


def _differing(old: Value, new: Value) -> dict[str, Any]:
    return {
        name: getattr(new, name)
        for name in type(new).model_fields
        if getattr(new, name) != getattr(old, name)
    }
