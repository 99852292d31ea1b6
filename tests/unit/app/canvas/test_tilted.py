"""Tilted lamps on both drawings: as wide as they look, turned as they hang, and said in words."""

from __future__ import annotations

import math
from collections.abc import Callable
from typing import Any

import pytest
from PySide6.QtGui import QImage, QPainter, QPalette

from planner.app.canvas.elevation_layer import BODY_PX, Elevation
from planner.app.canvas.ink import Ink
from planner.app.canvas.items import Item, Part
from planner.app.canvas.plan_lamps import paint_lamps
from planner.plan import edits
from planner.plan.place import OWN
from tests.unit.app.canvas.scenes import plan_of

MakeDesk = Callable[..., Any]
# The plan's lamp: x 0.35 to 0.65, y 0.2 to 0.4, face 0.65 m above the floor; no housing.


def elevation_of(desk: Any, axis: Any) -> Elevation:
    ink = Ink.of(QPalette())
    return Elevation(desk.plan, axis, desk.view.viewport, ink, desk.display.unit)


@pytest.mark.parametrize("tilt", [20.0, -35.0])
def test_across_its_length_it_is_seen_slanted(side_desk: MakeDesk, tilt: float) -> None:
    """Looking along x, y runs to the right: the side that rises is the right one above 0."""
    desk = side_desk(edits.change_lamp(plan_of(), 0, tilt_deg=tilt))
    elevation = elevation_of(desk, "x")
    shape = elevation.shape(desk.plan.lamps[0])
    scale, t = desk.view.viewport.scale, math.radians(tilt)
    box = shape.boundingRect()
    assert box.width() == pytest.approx(
        scale * 0.2 * math.cos(t) + BODY_PX * abs(math.sin(t)), abs=0.01
    )
    assert box.height() == pytest.approx(
        scale * 0.2 * abs(math.sin(t)) + BODY_PX * math.cos(t), abs=0.01
    )
    right = max((shape.at(k) for k in range(shape.count())), key=lambda p: p.x())
    middle = elevation.at(0.3, 0.65)
    assert (right.y() < middle.y()) == (tilt > 0)


def test_along_its_length_it_is_as_long_as_ever_and_higher(side_desk: MakeDesk) -> None:
    desk = side_desk(edits.change_lamp(plan_of(), 0, tilt_deg=30.0))
    box = elevation_of(desk, "y").body(desk.plan.lamps[0])
    scale = desk.view.viewport.scale
    assert box.width() == pytest.approx(0.3 * scale, abs=0.01)
    assert box.height() == pytest.approx(
        0.2 * 0.5 * scale + BODY_PX * math.cos(math.pi / 6), abs=0.01
    )


def test_it_is_taken_and_raised_by_hand(side_desk: MakeDesk) -> None:
    desk = side_desk(edits.change_lamp(plan_of(), 0, tilt_deg=20.0))
    desk.hand.drag((0.5, 0.65), (0.5, 0.85))
    assert desk.plan.lamps[0].hanging_height == pytest.approx(0.65, abs=0.011)
    assert desk.plan.lamps[0].tilt_deg == 20.0


def test_words_say_how_it_is_tilted(side_desk: MakeDesk, plan_desk: MakeDesk) -> None:
    plan = edits.change_lamp(plan_of(), 0, tilt_deg=-12.5)
    for desk in (side_desk(plan), plan_desk(plan)):
        assert "tilted by 12.5° towards the front" in desk.view.figures_of(Item(Part.LAMP, 0))
    assert "tilted by 12.5°" in side_desk(plan).view.words()
    level = side_desk(plan_of()).view
    assert "tilted" not in level.words()


def drawn_across(desk: Any, plan: Any) -> int:
    """Rows of pixels that the plan's lamp covers near its left end, painted alone."""
    image = QImage(desk.view.size(), QImage.Format.Format_ARGB32)
    image.fill(0)
    painter = QPainter(image)
    paint_lamps(painter, plan, desk.view.viewport, Ink.of(QPalette()), (), OWN)
    painter.end()
    x = round(desk.view.viewport.to_pixel(0.37, 0.3).x())
    rows = [y for y in range(image.height()) if image.pixelColor(x, y).alpha() > 0]
    return max(rows) - min(rows)


def test_from_above_it_is_foreshortened(plan_desk: MakeDesk) -> None:
    """0.2 m wide and without a housing: 0.2 cos 45° across."""
    desk = plan_desk()
    level, leaning = (
        drawn_across(desk, edits.change_lamp(plan_of(), 0, tilt_deg=tilt)) for tilt in (0.0, 45.0)
    )
    scale = desk.view.viewport.scale
    assert level - leaning == pytest.approx(0.2 * (1 - math.cos(math.pi / 4)) * scale, abs=2)
