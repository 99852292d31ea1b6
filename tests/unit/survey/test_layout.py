"""Survey boards: places, order, the rule of the lighting standard."""

from __future__ import annotations

import itertools
import math

import pytest

from planner.plan.survey import Spacing, SurveyGrid
from planner.survey.layout import (
    closest_pair,
    holes,
    largest_spacing,
    points_along,
    standard_counts,
    standard_grid,
)

SQUARE = ((0.0, 0.0), (0.6, 0.0), (0.6, 0.6), (0.0, 0.6))
ELL = ((0.0, 0.0), (1.0, 0.0), (1.0, 0.5), (0.5, 0.5), (0.5, 1.0), (0.0, 1.0))


def test_cell_centres_walked_to_and_fro() -> None:
    found = holes(SurveyGrid(rows=2, columns=3), SQUARE)
    expected = [(0.1, 0.15), (0.3, 0.15), (0.5, 0.15), (0.5, 0.45), (0.3, 0.45), (0.1, 0.45)]
    assert len(found) == 6
    for point, other in zip(found, expected, strict=True):
        assert point == pytest.approx(other)


def test_edge_to_edge_starts_on_the_margin() -> None:
    grid = SurveyGrid(rows=3, columns=3, margin=0.05, spacing=Spacing.EDGES)
    found = holes(grid, SQUARE)
    assert found[0] == pytest.approx((0.05, 0.05))
    assert found[1] == pytest.approx((0.3, 0.05))
    assert found[-1] == pytest.approx((0.55, 0.55))
    # without a margin the outer holes lie on the walls and still count
    assert len(holes(SurveyGrid(rows=3, columns=3, spacing=Spacing.EDGES), SQUARE)) == 9


def test_a_single_row_lies_in_the_middle() -> None:
    grid = SurveyGrid(rows=1, columns=2, margin=0.1, spacing=Spacing.EDGES)
    points = holes(grid, SQUARE)
    assert points[0] == pytest.approx((0.1, 0.3))
    assert points[1] == pytest.approx((0.5, 0.3))


def test_excluded_places_are_left_out_and_the_rest_numbered_on() -> None:
    grid = SurveyGrid(rows=2, columns=2, excluded=(2,))
    found = holes(grid, SQUARE)
    assert len(found) == 3
    assert found[0] == pytest.approx((0.15, 0.15))
    assert found[1] == pytest.approx((0.45, 0.45))
    assert found[2] == pytest.approx((0.15, 0.45))


def test_an_l_shaped_space_has_holes_only_inside() -> None:
    found = holes(SurveyGrid(rows=4, columns=4), ELL)
    assert len(found) == 12
    assert all(x < 0.5 or y < 0.5 for x, y in found)


def test_each_step_of_the_walk_is_short() -> None:
    found = holes(SurveyGrid(rows=6, columns=6), SQUARE)
    steps = [math.dist(a, b) for a, b in itertools.pairwise(found)]
    assert max(steps) == pytest.approx(0.1)


def test_a_margin_too_wide_and_a_grid_without_holes_are_refused() -> None:
    with pytest.raises(ValueError, match="leaves nothing"):
        holes(SurveyGrid(margin=0.4), SQUARE)
    with pytest.raises(ValueError, match="no hole"):
        holes(SurveyGrid(rows=1, columns=1, excluded=(1,)), SQUARE)


@pytest.mark.parametrize(
    ("length", "spacing"), [(1.0, 0.2), (10.0, 1.0), (100.0, 5.0), (0.6, 0.1399), (2.4, 0.3688)]
)
def test_spacing_of_the_standard(length: float, spacing: float) -> None:
    """EN 12464-1: p = 0.2 · 5^(log₁₀ d)."""
    assert largest_spacing(length) == pytest.approx(spacing, rel=4e-4)


def test_spacing_never_exceeds_ten_metres() -> None:
    assert largest_spacing(10_000.0) == 10.0


@pytest.mark.parametrize(
    ("length", "count"),
    [(0.3, 4), (0.4, 4), (0.6, 5), (0.8, 5), (1.0, 5), (1.2, 6), (1.5, 6), (2.0, 7), (10.0, 10)],
)
def test_counts_of_the_standard_rounded_up(length: float, count: int) -> None:
    assert points_along(length, largest_spacing(length)) == count


def test_the_longer_side_counts_unless_it_is_twice_the_shorter() -> None:
    # 1.2 m by 0.8 m: d = 1.2, p = 0.2272: 6 by 4; 1.2 m by 0.4 m: d = 0.4, p = 0.1054: 12 by 4
    assert standard_counts(1.2, 0.8) == (6, 4)
    assert standard_counts(1.2, 0.4) == (12, 4)


def test_the_standard_grid_keeps_its_margin() -> None:
    grid = standard_grid(((0.0, 0.0), (1.2, 0.0), (1.2, 1.2), (0.0, 1.2)), margin=0.1)
    assert (grid.rows, grid.columns, grid.margin) == (5, 5, 0.1)
    with pytest.raises(ValueError, match="margin"):
        standard_grid(SQUARE, margin=0.3)


def test_closest_pair() -> None:
    assert closest_pair(((0.0, 0.0), (0.3, 0.0), (0.3, 0.04), (0.9, 0.9))) == pytest.approx(0.04)
    assert closest_pair(((0.0, 0.0),)) == math.inf
