"""How long a repaint takes at 900 x 700 with a 24 x 24 map; run with -m bench."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest
from PySide6.QtGui import QImage

from tests.unit.app.canvas.scenes import L_SHAPE, light_of, plan_of

pytestmark = pytest.mark.bench


def test_repaint_of_known_light(plan_desk: Callable[..., Any], benchmark: Any) -> None:
    desk = plan_desk(plan_of(L_SHAPE), (900, 700))
    desk.view.set_estimate(light_of(desk.plan))
    image = QImage(900, 700, QImage.Format.Format_RGB32)
    benchmark.pedantic(lambda: desk.view.render(image), rounds=20, warmup_rounds=3)
    assert benchmark.stats.stats.min < 0.008


def test_first_paint_of_new_light(plan_desk: Callable[..., Any], benchmark: Any) -> None:
    desk = plan_desk(plan_of(L_SHAPE), (900, 700))
    image = QImage(900, 700, QImage.Format.Format_RGB32)

    def show() -> None:
        desk.view.render(image)

    benchmark.pedantic(
        show,
        setup=lambda: desk.view.set_estimate(light_of(desk.plan)),
        rounds=20,
        warmup_rounds=3,
    )
    assert benchmark.stats.stats.min < 0.016
