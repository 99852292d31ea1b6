"""Where the holes of a survey board lie, in which order, and edits that keep readings there.

Plain arithmetic on plain values; lengths in metres.
"""

from __future__ import annotations

import math
from typing import Final

from planner.plan.edits import changed
from planner.plan.plan import Plan
from planner.plan.space import Point, contains
from planner.plan.survey import MAX_GRID, MAX_POINTS, Spacing, Survey, SurveyGrid
from planner.plan.survey_edits import free_key

LARGEST_SPACING_M: Final = 10.0
SAME_PLACE_M: Final = 0.005
_ON_THE_LINE_M: Final = 1e-9


def grid_places(grid: SurveyGrid, footprint: tuple[Point, ...]) -> tuple[Point, ...]:
    """Every place of the grid over the footprint's bounding rectangle, row by row from below.

    Raises
    ------
    ValueError
        If the margin leaves nothing; the message says what would fit.
    """
    xs, ys = zip(*footprint, strict=True)
    columns = _along(min(xs), max(xs), grid.columns, grid)
    rows = _along(min(ys), max(ys), grid.rows, grid)
    return tuple((x, y) for y in rows for x in columns)


def _along(low: float, high: float, count: int, grid: SurveyGrid) -> list[float]:
    start, length = low + grid.margin, high - low - 2 * grid.margin
    if length < 0:
        raise ValueError(
            f"a margin of {grid.margin * 100:g} cm on both sides leaves nothing of "
            f"{(high - low) * 100:g} cm; choose one below {(high - low) * 50:g} cm."
        )
    if grid.spacing is Spacing.CELLS or count == 1:
        return [start + (k + 0.5) * length / count for k in range(count)]
    return [start + k * length / (count - 1) for k in range(count)]


def holes(grid: SurveyGrid, footprint: tuple[Point, ...]) -> tuple[Point, ...]:
    """The holes in the order they are visited: hole 1 is the first.

    Places that are excluded or lie outside the footprint are left out; a place on the
    outline counts as inside. Rows are walked to and fro from the lowest (serpentine), so
    that the hand never travels back across the board.

    Raises
    ------
    ValueError
        If no hole is left.
    """
    places = grid_places(grid, footprint)
    excluded = set(grid.excluded)
    found: list[Point] = []
    for row in range(grid.rows):
        inside = [
            places[k]
            for k in range(row * grid.columns, (row + 1) * grid.columns)
            if k + 1 not in excluded and _within(footprint, places[k])
        ]
        found += inside if row % 2 == 0 else reversed(inside)
    if not found:
        raise ValueError("no hole of this grid lies inside the space; use more rows and columns.")
    return tuple(found)


def _within(footprint: tuple[Point, ...], point: Point) -> bool:
    if contains(footprint, *point):
        return True
    ends = zip(footprint, footprint[1:] + footprint[:1], strict=True)
    return any(_on_segment(point, a, b) for a, b in ends)


def _on_segment(p: Point, a: Point, b: Point) -> bool:
    return math.dist(a, p) + math.dist(p, b) - math.dist(a, b) < _ON_THE_LINE_M


# -- the rule of the lighting standard --------------------------------------------------


def largest_spacing(length: float) -> float:
    """Largest spacing of measuring points p = 0.2 · 5^(log₁₀ d) in metres, at most 10 m.

    EN 12464-1, the grid for calculating and measuring illuminance; d in metres is the
    longer side of the area where the sides differ by less than a factor of two, else the
    shorter.
    """
    return min(0.2 * 5 ** math.log10(length), LARGEST_SPACING_M)


def points_along(length: float, spacing: float) -> int:
    """Number of points for a length: the whole number not below length / spacing.

    Rounded up as in the standard's former editions: in a small space the lowest of few
    readings says little. A quotient that is whole but for rounding stays.
    """
    return max(1, math.ceil(length / spacing - 1e-9))


def standard_counts(width: float, depth: float) -> tuple[int, int]:
    """Columns and rows by EN 12464-1 for an area of this size in metres, cell-centred."""
    longer, shorter = max(width, depth), min(width, depth)
    spacing = largest_spacing(longer if longer < 2 * shorter else shorter)
    return points_along(width, spacing), points_along(depth, spacing)


def standard_grid(
    footprint: tuple[Point, ...], *, margin: float = 0.0, hole_diameter: float = 0.024
) -> SurveyGrid:
    """The grid EN 12464-1 asks for inside the margin of a footprint's bounding rectangle."""
    xs, ys = zip(*footprint, strict=True)
    width, depth = (max(v) - min(v) - 2 * margin for v in (xs, ys))
    if min(width, depth) <= 0:
        raise ValueError("the margin leaves nothing of the space; choose a smaller one.")
    columns, rows = standard_counts(width, depth)
    return SurveyGrid(
        rows=min(rows, MAX_GRID),
        columns=min(columns, MAX_GRID),
        margin=margin,
        spacing=Spacing.CELLS,
        hole_diameter=hole_diameter,
    )


def closest_pair(points: tuple[Point, ...]) -> float:
    """Smallest distance between two holes in metres; infinite for a single one."""
    ordered = sorted(points[:MAX_POINTS])
    best = math.inf
    for k, (x, y) in enumerate(ordered):
        for u, v in ordered[k + 1 :]:
            if u - x >= best:
                break
            best = min(best, math.hypot(u - x, v - y))
    return best


# -- edits of a board -------------------------------------------------------------------------


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
    return changed(survey, key=free_key(plan), name=f"{stem}, again", readings=(), date=None)


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
        reading.model_copy(update={"hole": moved[reading.hole] or 1}) for reading in survey.readings
    )
    return changed(survey, grid=grid, points=points, readings=readings)


def exclusions_moved(
    old: SurveyGrid, new: SurveyGrid, footprint: tuple[Point, ...]
) -> tuple[int, ...]:
    """Places of another grid to leave out, for those the old one left out.

    What was left out is a spot of the space, not a number: a new place is left out where the
    nearest place of the old grid was.

    Raises
    ------
    ValueError
        If a margin leaves nothing.
    """
    if not old.excluded:
        return ()
    places, there = grid_places(old, footprint), grid_places(new, footprint)
    if places == there:
        return old.excluded
    excluded = set(old.excluded)
    nearest = (min(range(len(places)), key=lambda k: math.dist(places[k], p)) + 1 for p in there)
    return tuple(number for number, place in enumerate(nearest, start=1) if place in excluded)


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


def _hole_at(points: tuple[Point, ...], place: Point) -> int | None:
    near = min(range(len(points)), key=lambda k: math.dist(points[k], place))
    return near + 1 if math.dist(points[near], place) <= SAME_PLACE_M else None
