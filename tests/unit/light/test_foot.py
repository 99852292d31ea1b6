"""Light sent on purpose to the foot of wrinkled walls."""

from __future__ import annotations

import math

import numpy as np
import pytest

from planner.estimate.evaluate import evaluate
from planner.estimate.result import EstimateOptions
from planner.light.emission import CosinePower, Source
from planner.light.field import CellGrid
from planner.light.foot import Foot
from planner.light.paths import Mirrors
from planner.light.prism import Prism
from planner.light.surfaces import Surfaces
from planner.plan import edits
from tests.physics.rooms import box, lamp, lining, panel, plan

REACH = 0.2


def foot_of(rough: tuple[int, ...], tops: tuple[float, ...] = ()) -> Foot:
    """Of a box 1 m x 0.8 m x 1 m; ``tops`` divide the first wall."""
    prism = Prism(np.array(box(1.0, 0.8)), 0.0, 1.0)
    surfaces = Surfaces(prism, (tops, (), (), ()), 0.2, 2)
    width = np.zeros(len(surfaces.facets))
    width[list(rough)] = 0.3
    grid = CellGrid.over(prism, 8, 8, 0.0)
    return Foot(surfaces, grid, Mirrors(np.full(len(width), 0.5), width), REACH)


def test_flux_of_a_point_on_a_strip_of_wall() -> None:
    """E = I cos α / d² summed over the strip, I = cos θ / π of a Lambertian point."""
    lit = foot_of((3,)).lit_by(
        Source((0.3, 0.4, 0.6), 0.0, np.zeros((1, 4)), CosinePower(1.0)),
        40_000,
        np.random.default_rng(1),
    )
    y, z = np.meshgrid((np.arange(400) + 0.5) / 500, (np.arange(400) + 0.5) / 400 * REACH)
    squared = 0.3**2 + (y - 0.4) ** 2 + (z - 0.6) ** 2
    expected = 0.8 * REACH * float(((0.6 - z) / math.pi * 0.3 / squared**2).mean())
    assert lit.flux.sum() == pytest.approx(expected, rel=2e-3)
    assert np.abs(lit.point[0]).max() < 1e-9
    assert lit.point[2].max() <= REACH


def test_points_lie_as_densely_as_is_said() -> None:
    """1/density adds up to the area: 1 m of one wall and the part of a band 5 cm high."""
    foot = foot_of((1, 3), (0.05, 0.5))
    u, v = np.random.default_rng(2).random((2, 100_000))
    point, facet = foot.points(u, v)
    area = (1 / foot.density(point[2])).mean()
    assert set(facet.tolist()) == {1, 3}
    band = facet == 1
    assert point[2][band].min() >= 0.05
    # The band from 5 cm to the reach along 1 m, and all of the second wall along 0.8 m.
    assert area == pytest.approx(1.0 * 0.15 + 0.8 * REACH, rel=0.01)
    assert (1 / foot.density(point[2]))[band].sum() / 100_000 == pytest.approx(0.15, rel=0.02)


@pytest.mark.parametrize("width", [0.1, 0.4])
def test_little_is_left_to_chance_beside_a_wrinkled_wall(width: float) -> None:
    # Where photons alone came to its foot, two seeds differed there by 1.1 to 2.1 % of the mean.
    made = plan(
        box(0.6, 0.6),
        0.8,
        [lamp((0.25, 0.3), 0.5, body=panel(0.1, 0.1))],
        walls=((0.11, 0.69), *((0.0, 0.0),) * 3),
        canopy=0.0,
    )
    key = lining((0.11, 0.69)).key
    creased = tuple(
        one.model_copy(update={"wrinkle": width}) if one.key == key else one for one in made.linings
    )
    made = edits.changed(made, linings=creased)
    first, second = (evaluate(made, EstimateOptions(seed=seed)).ppfd for seed in (1, 2))
    beside = first[0] - second[0]
    assert np.sqrt((beside**2).mean()) < 0.009 * first.mean()
