"""Boxes flush with walls part a room: behind them it is dark, before them as if it ended there."""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest

from planner.estimate.result import Quality
from planner.plan.plan import Plan
from planner.plan.space import Obstacle
from tests.physics.rooms import box, lamp, light, lining, panel, plan

WHITE = (0.9, 0.0)
DEEP, HIGH = 0.8, 1.2
THICK = 0.04


def room(width: float, *obstacles: Obstacle) -> Plan:
    one = lamp((0.3, 0.4), 0.7, body=panel(0.3, 0.3))
    bare = plan(
        box(width, DEEP), HIGH, [one], walls=WHITE, ceiling=WHITE, canopy=0.06, canopy_height=0.2
    )
    return Plan.model_validate({**dict(bare), "obstacles": obstacles})


def obstacle(x: float, length: float, **more: Any) -> Obstacle:
    return Obstacle(
        name="Board", x=x, y=DEEP / 2, length=length, width=DEEP, lining=lining(WHITE).key, **more
    )


@pytest.mark.parametrize(("quality", "off"), [(Quality.PREVIEW, 0.01), (Quality.DEFAULT, 0.005)])
def test_a_partition_ends_the_room(quality: Quality, off: float) -> None:
    """From wall to wall and from floor to ceiling; 3 % of the mean got through before."""
    board = obstacle(0.6 + THICK / 2, THICK, underside=0.0, thickness=HIGH)
    # Cells 5 cm wide: the board begins where one does.
    parted = light(room(1.0, board), (20, 16), quality).ppfd.reshape(16, 20)
    alone = light(room(0.6), (12, 16), quality).ppfd.reshape(16, 12)
    assert parted[:, 13:].max() < 1e-3 * alone.mean()
    assert parted[:, :12].mean() == pytest.approx(alone.mean(), rel=off)
    np.testing.assert_allclose(parted[:, :12], alone, rtol=0.04)


def test_a_shelf_from_wall_to_wall_on_all_sides_keeps_all_light() -> None:
    shelf = obstacle(0.5, 1.0, underside=0.5, thickness=THICK)
    assert light(room(1.0, shelf), (8, 8)).figures.mean < 0.05
