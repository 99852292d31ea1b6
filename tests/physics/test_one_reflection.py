"""One diffuse reflection against the integral it is, free and past an obstacle.

After test cases 5.6 (reflection over diffuse surfaces) and 5.7 (diffuse reflection with an
internal obstruction) of CIE 171:2006, known from memory: one surface reflects, all else is black,
and what arrives follows from configuration factors. There sunlight lights that surface evenly;
here a lamp does, unevenly, so the factor stands under an integral, taken by Gauss-Legendre:

    E(p) = ∫ ρ/π · I cosα/d² · cosβ cosγ/r² dA

(photometric distance law, CIE S 017 term 17-25-104, and Lambert's law). Cases 5.2 and 5.3, point
and area lamps, are those of ``test_closed_forms``, 5.8 that of ``test_enclosures``; 5.5 and 5.9 to
5.14 are about glass and daylight, of which there is none here. At fine quality: where all light
has been reflected once, a default map has a chance of 1 to 2 % in each cell, and says so.
"""

from __future__ import annotations

import math
from collections.abc import Callable

import numpy as np
import pytest

from planner.estimate.result import FloatArray, Quality
from planner.plan import edits
from planner.plan.plan import Plan
from planner.plan.space import Obstacle
from tests.physics.rooms import BLACK, box, lamp, light, plan

WIDTH, DEPTH, HEIGHT, RHO = 1.2, 1.0, 1.4, 0.8
AT = (0.5, 0.4)
UP = (
    (0.0, *(float(angle) for angle in range(90, 181))),
    (0.0, *(max(-math.cos(math.radians(angle)), 0.0) for angle in range(90, 181))),
)
"""Lambertian, straight up; linear between steps of 1° it is off by 4e-5 of its peak."""

Visible = Callable[[FloatArray, FloatArray], FloatArray]


def gauss(low: float, high: float, count: int) -> tuple[FloatArray, FloatArray]:
    x, w = np.polynomial.legendre.leggauss(count)
    return low + (x + 1) / 2 * (high - low), w * (high - low) / 2


def cell_means(value: Callable[[FloatArray], FloatArray], columns: int, rows: int) -> FloatArray:
    """Means over the cells of the floor by 3 x 3 points each; ``value`` of points (3, n)."""
    x = np.concatenate([gauss(k / columns, (k + 1) / columns, 3)[0] for k in range(columns)])
    y = np.concatenate([gauss(k / rows, (k + 1) / rows, 3)[0] for k in range(rows)])
    px, py = np.meshgrid(x * WIDTH, y * DEPTH)
    found = value(np.stack([px.ravel(), py.ravel(), np.zeros(px.size)]))
    w = np.array([5.0, 8.0, 5.0]) / 18
    means: FloatArray = np.einsum("riCj,i,j->rC", found.reshape(rows, 3, columns, 3), w, w)
    return means


def from_ceiling(
    below: float, seen: Visible | None = None, count: int = 48
) -> Callable[[FloatArray], FloatArray]:
    """PPFD on the floor by way of the ceiling, from a lamp of 100 µmol/s ``below`` it."""
    (x, wx), (y, wy) = gauss(0.0, WIDTH, count), gauss(0.0, DEPTH, count)
    cx, cy = (axis.ravel() for axis in np.meshgrid(x, y))
    weight = np.outer(wy, wx).ravel()
    lit = 100 / math.pi * below**2 / (below**2 + (cx - AT[0]) ** 2 + (cy - AT[1]) ** 2) ** 2
    place = np.stack([cx, cy, np.full(cx.size, HEIGHT)])

    def value(points: FloatArray) -> FloatArray:
        squared = ((place[:, None] - points[:, :, None]) ** 2).sum(axis=0)
        kernel = HEIGHT**2 / squared**2 * RHO / math.pi
        if seen is not None:
            kernel *= seen(points, place)
        density: FloatArray = kernel @ (lit * weight)
        return density

    return value


def under_a_bright_ceiling(below: float) -> Plan:
    hung = lamp(AT, HEIGHT - below, table=UP)
    return plan(box(WIDTH, DEPTH), HEIGHT, [hung], ceiling=(RHO, 0.0))


@pytest.mark.parametrize("below", [0.3, 0.6])
def test_floor_under_a_ceiling_lit_from_below(below: float) -> None:
    found = light(under_a_bright_ceiling(below), (12, 10), Quality.FINE).ppfd
    expected = cell_means(from_ceiling(below), 12, 10)
    assert found.mean() == pytest.approx(expected.mean(), rel=2e-3)
    assert np.abs(found / expected - 1).max() < 1e-2


@pytest.mark.parametrize("bright", [(0.0, DEPTH), (0.0, 0.3), (0.3, DEPTH)])
def test_floor_before_one_bright_wall(bright: tuple[float, float]) -> None:
    # What the wall, or a part of it between corners in its midst, adds to a room that is black.
    above = 0.7
    inner = [y for y in bright if 0 < y < DEPTH]

    def made(rho: float) -> FloatArray:
        # The wall x = 0 comes last, from its far end to the origin.
        parts = [(0.0, y) for y in inner]
        of_parts = [(rho, 0.0)] if not inner else [(rho, 0.0), BLACK][:: 1 if bright[0] else -1]
        what = plan(
            (*box(WIDTH, DEPTH), *parts), HEIGHT, [lamp(AT, above)],
            walls=[BLACK, BLACK, BLACK, *of_parts],
        )  # fmt: skip
        return light(what, (12, 10), Quality.FINE).ppfd

    # The wall's points, crowded towards the floor.
    (y, wy), (t, wt) = gauss(*bright, 64), gauss(0.0, 1.0, 64)
    wall_y, root = (axis.ravel() for axis in np.meshgrid(y, t))
    z, weight = above * root**2, np.outer(wt, wy).ravel() * 2 * above * root
    squared = AT[0] ** 2 + (wall_y - AT[1]) ** 2 + (above - z) ** 2
    lit = 100 / math.pi * (above - z) * AT[0] / squared**2

    def value(points: FloatArray) -> FloatArray:
        away, along = points[0, :, None], wall_y - points[1, :, None]
        squared = away**2 + along**2 + z**2
        return (RHO / math.pi * away * z / squared**2) @ (lit * weight)

    found, expected = made(RHO) - made(0.0), cell_means(value, 12, 10)
    assert found.mean() == pytest.approx(expected.mean(), rel=2e-3)
    assert np.abs(found - expected).max() < (2.5e-2 if inner else 1.5e-2) * expected.mean()


SHELF = Obstacle(
    name="Shelf", x=0.75, y=0.6, length=0.5, width=0.4, underside=0.5, thickness=0.02, lining="open"
)


def past_the_shelf(points: FloatArray, place: FloatArray) -> FloatArray:
    """1 where the line from a point (3, n) to a place (3, m) above misses the shelf, else 0."""
    enters, leaves = np.zeros((points.shape[1], place.shape[1])), np.ones(place.shape[1])
    spans = (
        (SHELF.x - SHELF.length / 2, SHELF.x + SHELF.length / 2),
        (SHELF.y - SHELF.width / 2, SHELF.y + SHELF.width / 2),
        (SHELF.underside, SHELF.top),
    )
    for axis, (low, high) in enumerate(spans):
        start, way = points[axis][:, None], place[axis] - points[axis][:, None]
        one, other = (low - start) / way, (high - start) / way
        enters = np.maximum(enters, np.minimum(one, other))
        leaves = np.minimum(leaves, np.maximum(one, other))
    return np.where(enters < leaves, 0.0, 1.0)


def test_floor_under_a_ceiling_and_a_black_shelf() -> None:
    below = 0.4
    made = edits.changed(under_a_bright_ceiling(below), obstacles=(SHELF,))
    found = light(made, (12, 10), Quality.FINE).ppfd
    # Edges of shadow make the integrand jump: many points.
    expected = cell_means(from_ceiling(below, past_the_shelf, 160), 12, 10)
    assert found.mean() == pytest.approx(expected.mean(), rel=2e-3)
    assert np.abs(found - expected).max() < 2.5e-2 * expected.mean()
    free = cell_means(from_ceiling(below), 12, 10)
    assert (expected < 0.6 * free).any(), "the shelf takes much of it somewhere"
