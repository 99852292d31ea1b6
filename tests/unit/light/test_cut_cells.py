"""A cell's value is the mean over its part of the canopy, at every grid and outline."""

from __future__ import annotations

import math

import numpy as np
import pytest

from planner.light.field import CellGrid
from planner.light.prism import Prism, totals
from tests.physics.rooms import lamp, light, plan

DART = ((0.0, 0.0), (1.0, 0.0), (0.45, 0.4), (0.1, 1.0))
"""Concave, and all of it in sight of the lamp below."""

AT, ABOVE = (0.25, 0.25), 0.25


def inside(x: np.ndarray, y: np.ndarray) -> np.ndarray:
    """The dart as two triangles, each by the signs of its edges."""
    result = np.zeros(x.shape, dtype=bool)
    for triangle in ((0, 1, 2), (0, 2, 3)):
        sides = np.ones(x.shape, dtype=bool)
        for a, b in zip(triangle, triangle[1:] + triangle[:1], strict=True):
            (ax, ay), (bx, by) = DART[a], DART[b]
            sides &= (bx - ax) * (y - ay) - (by - ay) * (x - ax) >= 0
        result |= sides
    return result


@pytest.mark.parametrize("count", [4, 8, 24])
def test_cells_of_a_concave_outline_are_means_of_their_part(count: int) -> None:
    found = light(plan(DART, 0.6, [lamp(AT, ABOVE)]), (count, count)).ppfd
    # I cosα / d² of a Lambertian point, counted over a fine lattice.
    fine = 2400 // count
    axis = (np.arange(count * fine) + 0.5) / (count * fine)
    x, y = np.meshgrid(axis, axis)
    lit = inside(x, y)
    value = 100 / math.pi * ABOVE**2 / ((x - AT[0]) ** 2 + (y - AT[1]) ** 2 + ABOVE**2) ** 2

    def summed(values: np.ndarray) -> np.ndarray:
        table: np.ndarray = values.reshape(count, fine, count, fine).sum(axis=(1, 3))
        return table

    area = summed(lit.astype(float))
    cells = area > 0.01 * fine**2
    expected = summed(value * lit)[cells] / area[cells]
    np.testing.assert_allclose(found[cells], expected, rtol=0.02, atol=0.01 * expected.mean())


def test_points_of_cut_cells_lie_inside() -> None:
    prism = Prism(np.array(DART), 0.0, 1.0)
    grid = CellGrid.over(prism, 6, 6, 0.0)
    points, cell, weight = grid.receivers(averaged=True)
    # But for the last bit about a concave corner, a 4000th of a cell.
    astray = ~inside(points[0], points[1])
    assert np.bincount(cell, weights=weight * astray).max() < 1 / 4000
    np.testing.assert_allclose(np.bincount(cell, weights=weight), 1.0)
    samples = grid.samples(*np.random.default_rng(1).random((2, len(grid.inside), 4000)))
    assert inside(samples[0], samples[1]).mean() > 0.9999
    # Evenly spread: their mean is the centre of area.
    centre = grid.centre.reshape(2, -1)[:, grid.inside]
    np.testing.assert_allclose(samples[:2].mean(axis=2), centre, atol=0.02 * max(grid.step))


TURNED = ((0.0, 0.0), (1.732, 1.0), (1.032, 2.212), (-0.7, 1.212))


@pytest.mark.parametrize("along", [0.3, 0.54, 0.7])
def test_cells_cut_beside_a_lamp_that_hangs_low(along: float) -> None:
    # A lamp 10 cm up and 5 cm from a wall that cuts the cells: long triangles lie under it.
    # With as few points in them as their area asked for, cells of half the light were 1 % off.
    wall = np.array(TURNED[1]) - TURNED[0]
    inward = np.array([-wall[1], wall[0]]) / np.hypot(*wall)
    at = along * wall + 0.05 * inward
    found = light(plan(TURNED, 1.0, [lamp((float(at[0]), float(at[1])), 0.1)]), (16, 16))
    grid = CellGrid.over(Prism(np.array(TURNED), 0.0, 1.0), 16, 16, 0.0)
    points, cell, share = grid.gauss_points(np.arange(len(grid.inside)), 60)
    square = ((points[:2] - at[:, None]) ** 2).sum(axis=0) + 0.1**2
    value = 100 / math.pi * 0.1**2 / square**2
    expected = grid.on_map(totals(cell, share * value, len(grid.inside)))
    lit = expected > np.nanmean(expected)
    assert np.abs(found.ppfd[lit] / expected[lit] - 1).max() < 0.003
