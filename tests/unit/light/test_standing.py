"""Where a box stands on the bottom there is no bottom."""

from __future__ import annotations

import numpy as np
import pytest

from planner.light.boxes import Box
from planner.light.prism import Prism
from planner.light.surfaces import Surfaces
from planner.plan import edits
from planner.plan.space import Obstacle
from tests.physics.rooms import box, lamp, light, panel, plan

POT = Box(0.22, 0.3, 0.0, 0.25, 0.23, 0.17, 0.4)


def test_area_under_a_box_is_not_counted() -> None:
    prism = Prism(np.array(box(0.6, 0.5)), 0.0, 0.8, (POT,))
    surfaces = Surfaces(prism, ((),) * 4, 0.06, 4)
    bottom = list(surfaces.facet_plane).index(prism.bottom)
    assert surfaces.facet_area[bottom] == pytest.approx(0.6 * 0.5 - 0.23 * 0.17, rel=0.004)
    u, v = np.random.default_rng(1).random((2, surfaces.patch_count, 16))
    points, plane = surfaces.patch_samples(u, v)
    lit = (plane == prism.bottom) & (surfaces.patch_area > 0)
    assert not POT.covers(points[0, lit], points[1, lit]).any()


def test_balance_and_gather_agree_about_a_box_that_stands_in_the_canopy() -> None:
    # Two reckonings of the light on the canopy: they differed by up to 1.4 % where the balance
    # counted the canopy under the box as lit.
    made = plan(
        box(0.6, 0.5),
        0.9,
        [lamp((0.3, 0.25), 0.4, body=panel(0.2, 0.1))],
        walls=(0.7, 0.0),
        ceiling=(0.7, 0.0),
        canopy=0.1,
        canopy_height=0.2,
    )
    key = made.linings[0].key
    pot = Obstacle(
        name="Pot",
        x=0.22,
        y=0.3,
        length=0.23,
        width=0.17,
        underside=0.0,
        thickness=0.3,
        rotation_deg=20.0,
        lining=key,
    )
    found = light(edits.changed(made, obstacles=(pot,)), (24, 24))
    assert found.cross_check is not None
    assert abs(found.cross_check) < 0.003
