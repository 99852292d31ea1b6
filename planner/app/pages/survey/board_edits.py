"""Edits of a board that keep readings where they were taken: pure functions."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import Final

from planner.plan.edits import changed
from planner.plan.plan import Plan
from planner.plan.space import Point
from planner.plan.survey import Reading, Survey, SurveyGrid
from planner.plan.survey_edits import add_survey, free_key, with_parts
from planner.survey.layout import grid_places, holes, standard_grid

SAME_PLACE_M: Final = 0.005


def new_survey(plan: Plan) -> Survey:
    """A survey without readings on the grid EN 12464-1 asks for.

    Raises
    ------
    ValueError
        If no hole of such a grid lies inside the space.
    """
    footprint = plan.space.footprint
    grid = standard_grid(footprint)
    key = free_key(plan)
    name = f"Survey {len(plan.surveys) + 1}"
    return Survey(key=key, name=name, grid=grid, points=holes(grid, footprint))


def copied(plan: Plan, survey: Survey) -> Survey:
    """A survey on the same board under the same conditions, still without readings."""
    stem = survey.name[:100]
    return with_parts(survey, key=free_key(plan), name=f"{stem}, again", readings=(), date=None)


def with_survey(plan: Plan, survey: Survey) -> Plan:
    """The plan with one survey more."""
    return add_survey(plan, survey)


def regridded(survey: Survey, grid: SurveyGrid, footprint: tuple[Point, ...]) -> Survey:
    """The survey on another grid; readings stay at the places where they were taken.

    Raises
    ------
    ValueError
        If a reading would lose its hole, or no hole is left.
    """
    points = holes(grid, footprint)
    moved = {
        hole: _hole_at(points, survey.points[hole - 1])
        for hole in {reading.hole for reading in survey.readings}
    }
    lost = sorted(hole for hole, there in moved.items() if there is None)
    if lost:
        which = f"hole {lost[0]} has" if len(lost) == 1 else f"{len(lost)} holes have"
        raise ValueError(
            f"{which} readings and would be gone from this grid; copy the survey to another "
            "board, or take the readings out first."
        )
    readings = tuple(
        Reading(hole=moved[reading.hole] or 1, value=reading.value) for reading in survey.readings
    )
    return with_parts(survey, grid=grid, points=points, readings=readings)


def excluded_toggled(survey: Survey, place: int, footprint: tuple[Point, ...]) -> Survey:
    """The survey with a place of its grid (counted from 1) left out, or taken in again."""
    grid = survey.grid
    if grid is None:
        raise ValueError("this survey was not laid out as a grid; its holes came with a table.")
    excluded = set(grid.excluded) ^ {place}
    return regridded(
        survey, grid.model_copy(update={"excluded": tuple(sorted(excluded))}), footprint
    )


def places_left_out(survey: Survey, footprint: tuple[Point, ...]) -> tuple[tuple[int, Point], ...]:
    """Places of the grid, counted from 1, that are excluded by hand."""
    if survey.grid is None:
        return ()
    try:
        places = grid_places(survey.grid, footprint)
    except ValueError:
        return ()
    return tuple((k, places[k - 1]) for k in survey.grid.excluded if k <= len(places))


def place_number(survey: Survey, at: Point, footprint: tuple[Point, ...]) -> int | None:
    """Which place of the grid, counted from 1, lies nearest to a point; None without a grid."""
    if survey.grid is None:
        return None
    try:
        places = grid_places(survey.grid, footprint)
    except ValueError:
        return None
    return min(range(len(places)), key=lambda k: math.dist(places[k], at)) + 1


def row_and_column(survey: Survey, hole: int) -> tuple[int, int] | None:
    """Row from the near side and column from the left of a hole, from 1; None without a grid."""
    if survey.grid is None:
        return None
    xs = sorted({round(x, 4) for x, _ in survey.points})
    ys = sorted({round(y, 4) for _, y in survey.points})
    x, y = survey.points[hole - 1]
    return ys.index(round(y, 4)) + 1, xs.index(round(x, 4)) + 1


def used_in_plan(plan: Plan, calibrated: Plan, covers: Sequence[tuple[str, object]]) -> Plan:
    """The plan with calibrated lamps and linings, in the surveys' own copies too.

    ``covers`` are the calibrated linings by the key the plan knows them by.
    """
    by_key = dict(covers)
    surveys = tuple(
        with_parts(survey, lining=by_key[survey.lining.key])
        if survey.lining is not None and survey.lining.key in by_key
        else survey
        for survey in plan.surveys
    )
    return changed(plan, lamps=calibrated.lamps, linings=calibrated.linings, surveys=surveys)


def light_only(plan: Plan) -> Plan:
    """The plan without what its light does not depend on, to tell whether that changed."""
    return plan.model_copy(
        update={"surveys": (), "variants": (), "schedule": (), "name": "Plan", "note": ""}
    )


def _hole_at(points: tuple[Point, ...], place: Point) -> int | None:
    near = min(range(len(points)), key=lambda k: math.dist(points[k], place))
    return near + 1 if math.dist(points[near], place) <= SAME_PLACE_M else None
