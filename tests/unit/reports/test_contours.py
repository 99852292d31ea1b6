"""Contour lines at round numbers."""

from __future__ import annotations

import math

import numpy as np
import pytest

from planner.reports.contours import contour_lines, extended_map, round_levels


@pytest.mark.parametrize(
    ("low", "high", "levels"),
    [
        (118, 260, [125, 150, 175, 200, 225, 250]),
        (0, 30, [5, 10, 15, 20, 25]),
        (0, 300, [50, 100, 150, 200, 250]),
        (0.11, 0.42, [0.2, 0.3, 0.4]),
        (200, 200, []),
        (200, 200.0001, []),
        (0, 0, []),
        (math.nan, math.nan, []),
        (1000, 1012, [1002, 1004, 1006, 1008, 1010]),
    ],
)
def test_round_levels(low: float, high: float, levels: list[float]) -> None:
    assert round_levels(low, high) == pytest.approx(levels)


def test_a_slope_is_continued_to_the_walls() -> None:
    x, y = np.array([0.5, 1.5, 2.5]), np.array([0.5, 1.5])
    edges_x, edges_y, values = extended_map(x, y, np.array([[10.0, 20, 30], [10, 20, 30]]))
    assert edges_x.tolist() == [0, 0.5, 1.5, 2.5, 3]
    assert edges_y.tolist() == [0, 0.5, 1.5, 2]
    assert values.tolist() == [[5, 10, 20, 30, 35]] * 4


def test_light_is_never_continued_below_darkness() -> None:
    x = np.array([0.5, 1.5])
    assert extended_map(x, x, np.array([[1.0, 9.0], [1.0, 9.0]]))[2].min() == 0


def test_cells_outside_take_the_nearest_light() -> None:
    x, y = np.array([0.5, 1.5, 2.5]), np.array([0.5, 1.5])
    _, _, values = extended_map(x, y, np.array([[7.0, np.nan, np.nan], [7.0, np.nan, np.nan]]))
    assert np.isfinite(values).all()
    assert values == pytest.approx(7.0)


def test_a_slope_goes_on_into_the_cells_outside() -> None:
    x = np.array([0.5, 1.5, 2.5])
    _, _, values = extended_map(x, x, np.array([[9.0, 6, 3], [9, 6, np.nan], [9, 6, np.nan]]))
    assert values[1:-1, 1:-1].tolist() == [[9, 6, 3]] * 3


def test_a_map_without_light_is_dark() -> None:
    x = np.array([0.5, 1.5])
    assert extended_map(x, x, np.full((2, 2), np.nan))[2].max() == 0


def test_a_single_cell_is_no_problem() -> None:
    one = np.array([0.5])
    assert extended_map(one, one, np.array([[3.0]]))[2].tolist() == [[3.0] * 3] * 3


def test_a_round_hill_has_round_contours() -> None:
    x = np.linspace(-1, 1, 41)
    grid_x, grid_y = np.meshgrid(x, x)
    (line,) = contour_lines(x, x, 1 - np.hypot(grid_x, grid_y), 0.5)
    assert [math.hypot(a, b) for a, b in line] == pytest.approx([0.5] * len(line), abs=0.01)
    assert line[0] == pytest.approx(line[-1])
