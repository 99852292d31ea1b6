"""Obstacles are seen on both drawings and told in words."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest
from PySide6.QtGui import QImage

from planner.plan import edits
from planner.plan.space import Obstacle
from tests.unit.app.canvas.scenes import plan_of

MakeDesk = Callable[..., Any]
SHELF = Obstacle(name="Tray", x=0.3, y=0.3, underside=0.3, length=0.2, width=0.1, thickness=0.05)


def test_corners_turn_with_the_obstacle() -> None:
    turned = SHELF.model_copy(update={"rotation_deg": 90.0})
    xs, ys = zip(*turned.outline(), strict=True)
    assert (min(xs), max(xs)) == pytest.approx((0.25, 0.35))
    assert (min(ys), max(ys)) == pytest.approx((0.2, 0.4))


@pytest.mark.parametrize("which", ["plan_desk", "side_desk"])
def test_an_obstacle_shows_on_the_drawing(which: str, request: pytest.FixtureRequest) -> None:
    make: MakeDesk = request.getfixturevalue(which)
    bare, with_tray = make(plan_of()), make(edits.add_obstacle(plan_of(), SHELF))

    def spot(desk: Any) -> Any:
        image: QImage = desk.view.grab().toImage()
        # From above it hangs over the canopy: an outline, so that the light is seen.
        spot = (SHELF.x, SHELF.y + SHELF.width / 2) if which == "plan_desk" else (0.22, 0.325)
        at = desk.view.viewport.to_pixel(*spot).toPoint()
        return image.copy(at.x() - 8, at.y() - 2, 16, 4)

    assert spot(with_tray) != spot(bare)


def test_an_obstacle_is_told_in_words(plan_desk: MakeDesk) -> None:
    desk = plan_desk(edits.add_obstacle(plan_of(), SHELF))
    assert "Tray stands at x 30 cm, y 30 cm, 30 cm to 35 cm above" in desk.view.words()
