"""The light on walls, against the inverse-square law and against what they absorb."""

from __future__ import annotations

import math

import numpy as np
import pytest

from planner.estimate.evaluate import evaluate
from planner.estimate.result import EstimateOptions, Quality
from planner.light.on_walls import LEVELS, PARTS
from planner.plan.place import PlaceKind
from planner.plan.space import Obstacle
from tests.physics.rooms import box, lamp, plan
from tests.physics.test_tops import on

NODES, WEIGHTS = np.polynomial.legendre.leggauss(24)


@pytest.mark.parametrize(
    ("wall", "distance", "middle", "length"),
    [(0, 0.3, 0.2, 0.6), (1, 0.4, 0.3, 0.5), (2, 0.2, 0.4, 0.6), (3, 0.2, 0.2, 0.5)],
)
def test_on_a_black_wall_it_is_the_inverse_square_law(
    wall: int, distance: float, middle: float, length: float
) -> None:
    """A point that sends by the cosine law, 0.5 m over the canopy of a box of 0.6 x 0.5 x 0.9 m.

    E = I cos θ / r² with I = Φ / π · h / r (CIE S 017, 17-21-056 and the cosine law; from
    memory), its mean over each part of the wall by quadrature (Gauss and Legendre).
    """
    what = plan(box(0.6, 0.5), 0.9, [lamp((0.2, 0.3), 0.5)])
    walls = evaluate(what, EstimateOptions(quality=Quality.DEFAULT)).walls
    assert walls is not None
    assert walls.shape == (4, LEVELS, PARTS)
    expected = np.zeros((LEVELS, PARTS))
    for k in range(LEVELS):
        for part in range(PARTS):
            up = (k + (NODES + 1) / 2) * 0.9 / LEVELS
            along = (part + (NODES + 1) / 2) * length / PARTS - middle
            below = np.clip(0.5 - up, 0.0, None)[:, None]
            light = below * distance / (below**2 + along**2 + distance**2) ** 2
            expected[k, part] = 100 / math.pi * (WEIGHTS @ light @ WEIGHTS) / 4
    assert walls[wall] == pytest.approx(expected, abs=0.03 * expected.max())
    assert walls[wall].mean() == pytest.approx(expected.mean(), rel=0.005)


def test_what_a_wall_gets_is_what_it_absorbs_over_one_less_its_reflectance() -> None:
    """In a room of an L with walls of mirror and matt, and a box in the light."""
    corner = ((0.0, 0.0), (0.8, 0.0), (0.8, 0.4), (0.4, 0.4), (0.4, 0.8), (0.0, 0.8))
    rho = (0.7, 0.1)
    what = plan(
        corner, 1.0, [lamp((0.25, 0.3), 0.6)],
        walls=[rho, rho, (0.2, 0.6), rho, (0.5, 0.0), rho], ceiling=(0.8, 0.0), canopy=0.05,
    )  # fmt: skip
    stands = Obstacle(x=0.6, y=0.2, underside=0.0, length=0.2, width=0.2, thickness=0.3,
                      lining=what.linings[0].key)  # fmt: skip
    found = evaluate(on(what, stands), EstimateOptions())
    assert found.walls is not None
    shares = {one.place.index: one.photon_flux for one in found.shares
              if one.place.kind is PlaceKind.WALL}  # fmt: skip
    for wall, returned in enumerate((0.8, 0.8, 0.8, 0.8, 0.5, 0.8)):
        (x0, y0), (x1, y1) = what.space.wall(wall)
        absorbed = found.walls[wall].mean() * math.hypot(x1 - x0, y1 - y0) * (1 - returned)
        # What is smoothed from patches to texels is off by 0.4 %.
        assert absorbed == pytest.approx(shares[wall], rel=5e-3)


def test_a_part_hidden_by_a_box_has_no_light() -> None:
    what = plan(box(0.6, 0.6), 0.8, [lamp((0.3, 0.3), 0.5)], walls=(0.6, 0.0))
    flush = Obstacle(x=0.1, y=0.05, underside=0.0, length=0.2, width=0.1, thickness=0.8,
                     lining=what.linings[0].key)  # fmt: skip
    walls = evaluate(on(what, flush), EstimateOptions(quality=Quality.PREVIEW)).walls
    assert walls is not None
    hidden = round(PARTS * 0.2 / 0.6)
    assert (walls[0][:, : hidden - 2] == 0.0).all()
    assert (walls[0][:, hidden + 1 :] > 0.0).all()
