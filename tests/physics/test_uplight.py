"""Lamps that give light above the horizon, against closed forms and a sum over the ceiling."""

from __future__ import annotations

import math

import numpy as np
import pytest

from planner.estimate.evaluate import recount
from planner.estimate.result import FloatArray, Quality
from planner.plan.plan import Plan
from tests.physics.rooms import BLACK, Rho, box, lamp, light, panel, plan, rms_and_mean

ANGLES = np.linspace(90, 180, 46)
UP = (tuple(ANGLES), tuple(np.sin(np.radians(ANGLES - 90))))
"""A Lambertian lamp turned over: I = Φ cos θ / π about straight up, nothing downward."""

SIZE, HEIGHT, FACE, CANOPY = (0.8, 0.6), 1.0, 0.7, 0.1
AT = (0.3, 0.35)
CELLS = (8, 6)


def room(ceiling: Rho, *, walls: Rho = BLACK, size: tuple[float, float] = (0.0, 0.0)) -> Plan:
    body = panel(*size) if size[0] else None
    hung = lamp(AT, FACE - CANOPY, body=body, table=UP)
    return plan(box(*SIZE), HEIGHT, [hung], walls=walls, ceiling=ceiling, canopy_height=CANOPY)


def fine_points(cells: tuple[int, int], per_cell: int) -> tuple[FloatArray, FloatArray]:
    x = (np.arange(cells[0] * per_cell) + 0.5) * SIZE[0] / (cells[0] * per_cell)
    y = (np.arange(cells[1] * per_cell) + 0.5) * SIZE[1] / (cells[1] * per_cell)
    u, v = np.meshgrid(x, y)
    return u, v


def cell_means(values: FloatArray, per_cell: int) -> FloatArray:
    rows, columns = CELLS[1], CELLS[0]
    means: FloatArray = values.reshape(rows, per_cell, columns, per_cell).mean(axis=(1, 3))
    return means


@pytest.mark.parametrize("quality", [Quality.PREVIEW, Quality.DEFAULT])
def test_mirror_ceiling_shows_the_lamp_once_more(quality: Quality) -> None:
    """The image hangs as far above the ceiling as the lamp below it: E = ρ I cos θ / d²."""
    found = light(room((0.0, 0.9)), CELLS, quality)
    x, y = fine_points(CELLS, 8)
    drop = 2 * HEIGHT - FACE - CANOPY
    square = (x - AT[0]) ** 2 + (y - AT[1]) ** 2 + drop**2
    expected = cell_means(0.9 * 100 / math.pi * drop**2 / square**2, 8)
    rms, mean = rms_and_mean(found.ppfd, expected)
    assert rms < 2e-3
    assert abs(mean) < 1e-3


@pytest.mark.parametrize("seed", [1, 2, 3])
def test_matt_ceiling(seed: int) -> None:
    """Black walls: the canopy sees the ceiling alone, lit by the lamp by the distance law.

    E = ∫ ρ E_c / π · cos θ cos θ' / d² over the ceiling; sum over 240 x 180 points.
    """
    found = light(room((0.8, 0.0)), CELLS, seed=seed)
    u, v = fine_points((40, 30), 6)
    rise, drop = HEIGHT - FACE, HEIGHT - CANOPY
    lit = 100 / math.pi * rise**2 / ((u - AT[0]) ** 2 + (v - AT[1]) ** 2 + rise**2) ** 2
    element = SIZE[0] * SIZE[1] / u.size
    x, y = fine_points(CELLS, 1)
    expected = np.array(
        [
            (0.8 * lit / math.pi * drop**2 / ((u - a) ** 2 + (v - b) ** 2 + drop**2) ** 2).sum()
            * element
            for a, b in zip(x.ravel(), y.ravel(), strict=True)
        ]
    ).reshape(x.shape)
    rms, mean = rms_and_mean(found.ppfd, expected)
    assert abs(mean) < 0.01
    # Black walls leave few of a cell's rays that see anything, and the estimate says so.
    assert found.numeric_error is not None
    assert rms < found.numeric_error < 0.05


@pytest.mark.parametrize(
    ("walls", "ceiling"), [((0.8, 0.0), (0.7, 0.1)), ((0.2, 0.7), (0.2, 0.6)), (BLACK, (0.0, 0.9))]
)
def test_agrees_with_a_count_of_photons(walls: Rho, ceiling: Rho) -> None:
    what = room(ceiling, walls=walls, size=(0.2, 0.1))
    found, count = light(what), recount(what)
    assert count is not None
    assert abs(count.difference(found.figures)) < 3 * count.standard_error / count.flux + 0.003


def test_nothing_reaches_the_canopy_under_a_black_ceiling() -> None:
    assert light(room(BLACK)).figures.mean == 0.0
