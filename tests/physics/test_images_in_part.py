"""A lamp's image that the edge of a mirror cuts off: brute force over fine points."""

from __future__ import annotations

import numpy as np
import pytest
from numpy.typing import NDArray

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


@pytest.mark.parametrize("depth", [0.0, 0.2])
def test_two_mirrors_in_one_plane_show_one_image(depth: float) -> None:
    # Of a lamp at y the mirrors on y = 0, of unlike ρ on both sides of a dark part or a niche,
    # show one image at -y: of each line to it the one that it meets tells what is left of it.
    rho, edges = (0.9, 0.0, 0.5), (0.3, 0.7)
    niche = ((edges[0], -depth), (edges[1], -depth)) if depth else ()
    corners = ((0.0, 0.0), (edges[0], 0.0), *niche, (edges[1], 0.0), (1.0, 0.0), (1.0, 0.8))
    dark = [BLACK] * (3 if depth else 1)
    walls = [(0.0, rho[0]), *dark, (0.0, rho[2]), BLACK, BLACK, BLACK]
    at = (0.4, 0.15)
    what = plan((*corners, (0.0, 0.8)), 1.0, [lamp(at, FACE)], walls=walls)
    found = light(what, (10, 10 if depth else 8)).ppfd[2 if depth else 0 :]
    fine = (np.arange(200) + 0.5) / 200
    u, v = np.meshgrid(fine, 0.8 * fine)
    met = at[0] + (u - at[0]) * at[1] / (at[1] + v)
    left = np.array(rho)[np.digitize(met, edges)]
    straight, image = (
        FACE**2 / ((u - at[0]) ** 2 + (v - y) ** 2 + FACE**2) ** 2 for y in (at[1], -at[1])
    )
    total = straight + left * image
    expected = 100 / np.pi * total.reshape(8, 25, 10, 20).mean(axis=(1, 3))
    rms, mean = rms_and_mean(found, expected)
    assert rms < 0.004
    assert abs(mean) < 0.001


def crossed(u: FloatArray, v: FloatArray, end: tuple[float, float]) -> NDArray[np.bool_]:
    """Whether straight lines from (u, v) to ``end`` cross the walls that jut into ``SLIVER``."""
    hidden = np.zeros(u.shape, dtype=bool)
    for start, stop in ((INNER, (0.6, INNER[1])), (INNER, (INNER[0], 0.6))):
        along, gap = np.subtract(stop, start), (end[0] - u, end[1] - v)
        area = gap[0] * along[1] - gap[1] * along[0]
        beside = start[0] - u, start[1] - v
        with np.errstate(all="ignore"):
            on_line = (beside[0] * along[1] - beside[1] * along[0]) / area
            on_wall = (beside[0] * gap[1] - beside[1] * gap[0]) / area
        hidden |= (on_line > 0) & (on_line < 1) & (on_wall > 0) & (on_wall < 1)
    return hidden


INNER = (0.25, 0.15)
SLIVER = ((0.0, 0.0), (0.6, 0.0), (0.6, INNER[1]), INNER, (INNER[0], 0.6), (0.0, 0.6))


def test_a_sliver_of_light_round_a_corner() -> None:
    # A bulb in one arm of an L, the end of the other arm a mirror: its image lights a strip
    # beside the outer wall, narrower than a cell, with less than 0.2 % of the bulb's flux.
    at, high = (0.282, 0.06), 0.6
    walls = [BLACK] * 4 + [(0.0, RHO), BLACK]
    what = plan(SLIVER, 0.8, [lamp(at, high)], walls=walls)
    found = light(what, (12, 12)).ppfd
    fine = 0.6 * (np.arange(12 * 40) + 0.5) / (12 * 40)
    u, v = np.meshgrid(fine, fine)
    image = at[0], 1.2 - at[1]
    mirror = at[0] + (u - at[0]) * (0.6 - image[1]) / (v - image[1])
    seen = (mirror > 0) & (mirror < INNER[0]) & ~crossed(mirror, np.full_like(u, 0.6), at)
    total = np.zeros_like(u)
    for y, free, share in ((at[1], ~crossed(u, v, at), 1.0), (image[1], seen, RHO)):
        total += share * free * high**2 / ((u - at[0]) ** 2 + (v - y) ** 2 + high**2) ** 2
    inside = (u < INNER[0]) | (v < INNER[1])
    total *= 100 / np.pi * inside
    strip = (
        RHO
        * high**2
        / np.pi
        * (seen & inside)
        / ((u - at[0]) ** 2 + (v - image[1]) ** 2 + high**2) ** 2
    )
    assert 2e-4 < strip.sum() * (fine[1] - fine[0]) ** 2 < 2e-3
    area = inside.reshape(12, 40, 12, 40).sum(axis=(1, 3))
    with np.errstate(all="ignore"):
        expected = total.reshape(12, 40, 12, 40).sum(axis=(1, 3)) / area
    assert (np.isnan(found) == np.isnan(expected)).all()
    arm = np.abs(found - expected)[4:, :6][~np.isnan(expected[4:, :6])]
    assert arm.max() < 0.02 * expected[4:, 0].mean()
