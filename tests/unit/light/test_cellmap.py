"""One reading of a map: against analytic fields whose cell means are known in closed form."""

from __future__ import annotations

import math

import numpy as np
import pytest

from planner.light.cellmap import CellMap, filled, round_values


def edges(count: int, length: float) -> np.ndarray:
    return np.linspace(0.0, length, count + 1)


def wave_means(x: np.ndarray, y: np.ndarray) -> np.ndarray:
    """Cell means of 300 + 120 cos(2x) cos(3y), by integrating over each cell in closed form."""
    across = np.diff(np.sin(2 * x)) / (2 * np.diff(x))
    up = np.diff(np.sin(3 * y)) / (3 * np.diff(y))
    made: np.ndarray = 300 + 120 * up[:, None] * across[None, :]
    return made


def wave(points: np.ndarray) -> np.ndarray:
    made: np.ndarray = 300 + 120 * np.cos(2 * points[:, 0]) * np.cos(3 * points[:, 1])
    return made


def test_a_smooth_field_is_read_from_its_cell_means() -> None:
    x, y = edges(16, 1.2), edges(12, 0.9)
    read = CellMap(wave_means(x, y), x, y)
    points = np.random.default_rng(3).uniform((0.1, 0.1), (1.1, 0.8), (500, 2))
    # Catmull-Rom is of third order; the rest of a step of 0.075 m is below a thousandth.
    np.testing.assert_allclose(read.at(points), wave(points), rtol=1e-3)


def test_reading_more_finely_comes_nearer_by_the_third_order() -> None:
    points = np.random.default_rng(4).uniform(0.25, 0.65, (400, 2))
    errors = []
    for cells in (8, 16, 32):
        x = edges(cells, 0.9)
        read = CellMap(wave_means(x, x), x, x)
        errors.append(float(np.abs(read.at(points) - wave(points)).max()))
    assert errors[0] > 6 * errors[1] > 36 * errors[2]


def test_points_raster_and_middles_are_one_reading() -> None:
    x, y = edges(7, 0.7), edges(5, 0.6)
    values = wave_means(x, y)
    values[3:, 5:] = np.nan
    read = CellMap(values, x, y)
    rows, columns = 25, 35
    u = (np.arange(columns) + 0.5) / columns * 0.7
    v = (np.arange(rows) + 0.5) / rows * 0.6
    points = np.stack(np.meshgrid(u, v), axis=-1).reshape(-1, 2)
    fine = read.raster(rows, columns)
    np.testing.assert_allclose(fine.ravel(), read.at(points), rtol=1e-5)
    np.testing.assert_allclose(fine[2::5, 2::5], read.middles, rtol=1e-5)


def test_a_plane_is_read_exactly_up_to_the_rim_and_around_what_is_missing() -> None:
    x, y = edges(8, 0.8), edges(6, 0.6)
    u, v = (x[1:] + x[:-1]) / 2, (y[1:] + y[:-1]) / 2
    values = 200 + 80 * u[None, :] - 60 * v[:, None]
    values[:2, :3] = np.nan
    values[3, 4] = np.nan
    read = CellMap(values, x, y)
    points = np.array([(0.0, 0.6), (0.8, 0.6), (0.45, 0.35), (0.31, 0.1), (0.28, 0.18)])
    expected = 200 + 80 * points[:, 0] - 60 * points[:, 1]
    np.testing.assert_allclose(read.at(points), expected, rtol=1e-12)


def test_a_mean_lies_above_the_middle_of_a_bowl() -> None:
    """Means over cells of x² lie Δx²/12 above the value in the middle."""
    x = edges(12, 0.6)
    middle = (x[1:] + x[:-1]) / 2
    read = CellMap(np.tile(500 * (middle**2 + 0.05**2 / 12), (6, 1)), x, edges(6, 0.6))
    points = np.column_stack([middle[3:9], np.full(6, 0.3)])
    np.testing.assert_allclose(read.at(points), 500 * middle[3:9] ** 2, atol=1e-9)


def test_known_points_lie_among_known_cells() -> None:
    values = np.ones((4, 4))
    values[:, 2:] = np.nan
    read = CellMap(values, edges(4, 0.4), edges(4, 0.4))
    points = np.array([(0.05, 0.2), (0.0, 0.0), (0.24, 0.2), (0.36, 0.2), (-0.01, 0.2)])
    assert read.covers(points).tolist() == [True, True, True, False, False]


def test_light_is_never_below_darkness_and_a_difference_may_be() -> None:
    values = np.array([[1.0, 9.0], [1.0, 9.0]])
    corner = np.array([(0.0, 0.0)])
    assert CellMap(values, edges(2, 1.0), edges(2, 1.0)).at(corner)[0] == 0
    assert CellMap(values, edges(2, 1.0), edges(2, 1.0), -math.inf).at(corner)[0] < 0


def test_filling_keeps_what_is_known_and_ends() -> None:
    field = np.array([[9.0, 6, 3], [9, 6, np.nan], [9, 6, np.nan]])
    assert filled(field).tolist() == [[9, 6, 3]] * 3
    assert (filled(np.full((2, 2), np.nan)) == 0).all()
    lone = np.full((40, 40), np.nan)
    lone[0, 0] = 7.0
    assert (filled(lone) == 7.0).all()
    single = CellMap(np.array([[3.0]]), np.array([0.0, 1.0]), np.array([0.0, 2.0]))
    assert single.at(np.array([(0.9, 0.1)])) == pytest.approx(3.0)


def test_a_round_hill_has_round_contours() -> None:
    at = edges(60, 2.0)
    middle = (at[1:] + at[:-1]) / 2 - 1
    x, y = np.meshgrid(middle, middle)
    hill = CellMap(2 - np.hypot(x, y) ** 2, at, at)
    (line,) = hill.lines(1.75)
    radius = np.hypot(*(line - 1).T)
    np.testing.assert_allclose(radius, 0.5, atol=0.004)
    assert line[0] == pytest.approx(line[-1])


@pytest.mark.parametrize(
    ("low", "high", "levels"),
    [
        (118, 260, (125, 150, 175, 200, 225, 250)),
        (0, 300, (0, 50, 100, 150, 200, 250, 300)),
        (0.11, 0.42, (0.2, 0.3, 0.4)),
        (1000, 1012, (1000, 1002, 1004, 1006, 1008, 1010, 1012)),
    ],
)
def test_round_values(low: float, high: float, levels: tuple[float, ...]) -> None:
    assert round_values(low, high) == pytest.approx(levels)


def test_lines_stand_at_round_numbers_inside_and_not_where_light_is_even() -> None:
    x = edges(2, 1.0)
    assert CellMap(np.array([[50.0, 260.0], [50, 260]]), x, x).contour_levels() == (
        100,
        150,
        200,
        250,
    )
    assert CellMap(np.array([[200.0, 201.0], [200, 201]]), x, x).contour_levels() == ()
    assert CellMap(np.full((2, 2), np.nan), x, x).contour_levels() == ()
