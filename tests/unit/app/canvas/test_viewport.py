from __future__ import annotations

import pytest
from PySide6.QtCore import QPointF, QRectF

from planner.app.canvas.ink import Viewport


def test_fit_centres_the_bounds_at_the_largest_scale_that_shows_them() -> None:
    viewport = Viewport.fitted((0, 0, 2, 1), QRectF(100, 50, 400, 300))
    assert viewport.scale == pytest.approx(200)
    assert viewport.to_pixel(1, 0.5) == QPointF(300, 200)
    assert viewport.to_pixel(0, 1) == QPointF(100, 100)


def test_up_in_the_world_is_up_on_the_screen() -> None:
    viewport = Viewport(scale=100, left=10, bottom=500)
    assert viewport.to_pixel(0, 1) == QPointF(10, 400)
    assert viewport.to_world(QPointF(110, 300)) == pytest.approx((1.0, 2.0))


def test_zoom_keeps_the_point_under_the_pointer() -> None:
    viewport = Viewport(scale=100, left=10, bottom=500)
    pointer = QPointF(77, 123)
    zoomed = viewport.zoomed(1.7, pointer)
    assert zoomed.scale == pytest.approx(170)
    assert zoomed.to_world(pointer) == pytest.approx(viewport.to_world(pointer))


def test_pan_shifts_by_pixels() -> None:
    assert Viewport(100, 10, 500).panned(QPointF(5, -7)).to_pixel(0, 0) == QPointF(15, 493)


def test_scale_has_ends() -> None:
    assert Viewport(scale=100).zoomed(1e9, QPointF()).scale == 20000
    assert Viewport(scale=100).zoomed(1e-9, QPointF()).scale == 20
