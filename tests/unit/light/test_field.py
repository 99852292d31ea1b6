"""The map where obstacles stand in its plane."""

from __future__ import annotations

import numpy as np
import pytest

from planner.light.boxes import Box
from planner.light.field import CellGrid, CoveredError
from planner.light.prism import Prism

L_SHAPE = np.array([[0.0, 0.0], [1.0, 0.0], [1.0, 0.5], [0.5, 0.5], [0.5, 1.0], [0.0, 1.0]])

POTS = (
    Box(0.3, 0.3, 0.1, 0.5, 0.31, 0.22, 0.6),
    # Over the first one in part, and over the edge of the footprint.
    Box(0.42, 0.36, 0.2, 0.5, 0.2, 0.3, 0.1),
    Box(0.85, 0.45, 0.0, 0.9, 0.2, 0.2, 0.0),
)


def free_by_count(x: np.ndarray, y: np.ndarray) -> np.ndarray:
    """Which points are free, by the definition: inside the L, inside no turned rectangle."""
    free = (x > 0) & (y > 0) & (x < 1) & (y < 1) & ~((x > 0.5) & (y > 0.5))
    for pot in POTS:
        turned = np.exp(-1j * pot.rotation) * (x - pot.x + 1j * (y - pot.y))
        free &= (abs(turned.real) > pot.length / 2) | (abs(turned.imag) > pot.width / 2)
    return free


@pytest.mark.parametrize("cells", [4, 9, 24])
def test_cells_keep_the_area_that_obstacles_leave(cells: int) -> None:
    grid = CellGrid.over(Prism(L_SHAPE, 0.0, 1.0, POTS), cells, cells, 0.3)
    fine = 2520
    at = (np.arange(fine) + 0.5) / fine
    x, y = np.meshgrid(at, at)
    counted = free_by_count(x, y).reshape(cells, fine // cells, cells, -1).mean(axis=(1, 3))
    cell = 1 / cells**2
    # A count along an edge is right to about a row of its points.
    np.testing.assert_allclose(grid.area / cell, counted, atol=4 * cells / fine)
    middle = grid.centre.reshape(2, -1)[:, grid.inside]
    assert free_by_count(*middle).all()


def test_samples_lie_where_the_map_is() -> None:
    prism = Prism(L_SHAPE, 0.0, 1.0, POTS)
    grid = CellGrid.over(prism, 9, 9, 0.3)
    u, v = np.random.default_rng(1).uniform(0, 1, (2, len(grid.inside), 64))
    points = grid.samples(u, v)
    assert free_by_count(points[0], points[1]).all()


@pytest.mark.parametrize(("underside", "top"), [(0.3 + 1e-6, 0.6), (0.0, 0.3)])
def test_what_ends_at_the_plane_takes_nothing_of_it(underside: float, top: float) -> None:
    shelf = Box(0.25, 0.25, underside, top, 0.3, 0.3)
    grid = CellGrid.over(Prism(L_SHAPE, 0.0, 1.0, (shelf,)), 8, 8, 0.3)
    assert grid.area.sum() == pytest.approx(0.75)


def test_a_plane_all_in_obstacles_is_refused_in_words() -> None:
    slab = Box(0.5, 0.5, 0.2, 0.4, 3.0, 3.0)
    with pytest.raises(CoveredError, match="at the height of the canopy"):
        CellGrid.over(Prism(L_SHAPE, 0.0, 1.0, (slab,)), 8, 8, 0.3)


def noisy(truth: np.ndarray, noise: float, seed: int) -> np.ndarray:
    """Two alike halves (2, C) of a map with so much chance in each of its cells."""
    draw = np.random.default_rng(seed).normal(0.0, noise / np.sqrt(2), (2, truth.size))
    return truth / 2 + draw


def test_chance_is_taken_out_of_what_is_smooth() -> None:
    """And what is left of it is told: root mean squares over 20 draws of a chance of 1 %."""
    grid = CellGrid.over(Prism(L_SHAPE, 0.0, 1.0), 24, 24, 0.0)
    x, y = grid.centre.reshape(2, -1)[:, grid.inside]
    truth = 1.0 + 0.3 * np.cos(2 * x) * np.cos(1.5 * y)
    left, told = [], []
    for seed in range(20):
        parts = noisy(truth, 0.01, seed)
        found, variance = grid.smoothed(parts)
        left.append(((found - truth) ** 2).mean())
        told.append(variance.mean())
        assert found @ grid.inside_area == pytest.approx(parts.sum(axis=0) @ grid.inside_area)
    assert np.sqrt(np.mean(left)) < 0.005
    assert np.sqrt(np.mean(told)) == pytest.approx(np.sqrt(np.mean(left)), rel=0.3)


def test_an_edge_that_stands_out_of_the_chance_stays() -> None:
    """A shadow's edge of 30 % in a chance of 1 %: no cell beside it is off by more than six."""
    grid = CellGrid.over(Prism(L_SHAPE, 0.0, 1.0), 24, 24, 0.0)
    truth = np.where(grid.centre.reshape(2, -1)[0, grid.inside] < 0.26, 0.7, 1.0)
    found, _ = grid.smoothed(noisy(truth, 0.01, 3))
    assert np.abs(found - truth).max() < 0.06


def test_grids_of_many_rooms_keep_little_once_smoothed() -> None:
    """A corner dragged about: nothing that grows with the square of the cells stays behind."""
    grids = []
    for step in range(3):
        corners = np.array([[0.0, 0.0], [1.0, 0.0], [1.0 - 0.01 * step, 1.0], [0.0, 1.0]])
        grid = CellGrid.over(Prism(corners, 0.0, 1.0), 16, 16, 0.0)
        grid.smoothed(noisy(np.ones(len(grid.inside)), 0.01, step))
        grids.append(grid)
    held = [part for grid in grids for part in vars(grid).values()]
    held += [part for several in held if isinstance(several, tuple) for part in several]
    assert max(part.nbytes for part in held if isinstance(part, np.ndarray)) < 16**4
