"""A lamp's image that the edge of a mirror cuts off: brute force over fine points."""

from __future__ import annotations

import numpy as np
import pytest

from planner.estimate.result import FloatArray
from planner.plan.lamp import PanelBody
from tests.physics.rooms import BLACK, box, lamp, light, panel, plan, rms_and_mean

CELLS = (10, 8)
SIZE, FACE, EDGE, RHO = (1.0, 0.8), 0.7, 0.45, 0.9
AT = (0.6, 0.4)


def brute_force(points_on_lamp: FloatArray, per_cell: int) -> FloatArray:
    """Lambertian points straight and by the mirror on x = 1 above ``EDGE``, cell means."""
    x = (np.arange(CELLS[0] * per_cell) + 0.5) * SIZE[0] / (CELLS[0] * per_cell)
    y = (np.arange(CELLS[1] * per_cell) + 0.5) * SIZE[1] / (CELLS[1] * per_cell)
    u, v = np.meshgrid(x, y)
    total = np.zeros_like(u)
    for px, py in points_on_lamp:
        straight = (u - px) ** 2 + (v - py) ** 2 + FACE**2
        image = (u - (2 * SIZE[0] - px)) ** 2 + (v - py) ** 2 + FACE**2
        height = FACE * (SIZE[0] - u) / (2 * SIZE[0] - px - u)
        total += FACE**2 / straight**2 + RHO * (height > EDGE) * FACE**2 / image**2
    total *= 100 / np.pi / len(points_on_lamp)
    means: FloatArray = total.reshape(CELLS[1], per_cell, CELLS[0], per_cell).mean(axis=(1, 3))
    return means


@pytest.mark.parametrize("size", [0.0, 0.1])
def test_edge_of_a_mirror_inside_a_cell(size: float) -> None:
    body: PanelBody | None = panel(size, size) if size else None
    banded = ((EDGE, BLACK), (None, (0.0, RHO)))
    what = plan(box(*SIZE), 1.0, [lamp(AT, FACE, body=body)], walls=[BLACK, banded, BLACK, BLACK])
    offsets = (np.arange(8) + 0.5) / 8 - 0.5
    points = np.array([(AT[0] + size * a, AT[1] + size * b) for a in offsets for b in offsets])
    expected = brute_force(points, 20)
    found = light(what, CELLS)
    rms, mean = rms_and_mean(found.ppfd, expected)
    assert rms < 0.004
    assert abs(mean) < 0.001
    assert np.abs(found.ppfd / expected - 1).max() < 0.02
