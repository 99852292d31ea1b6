"""What is painted while a lamp is dragged: counted, not timed."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest
from PySide6.QtWidgets import QApplication

from planner.app.canvas import plan_layers
from planner.app.canvas.elevation_layer import Elevation
from planner.app.canvas.items import Item, Part
from planner.plan import edits
from tests.unit.app.canvas.scenes import light_of

MakeDesk = Callable[..., Any]


class Calls:
    """Counts the calls of a function and hands them on."""

    def __init__(self, monkeypatch: pytest.MonkeyPatch, owner: object, name: str) -> None:
        self.count = 0
        own = getattr(owner, name)

        def counted(*args: object, **named: object) -> object:
            self.count += 1
            return own(*args, **named)

        monkeypatch.setattr(owner, name, counted)


def test_walls_are_painted_once_while_a_lamp_is_dragged(
    plan_desk: MakeDesk, monkeypatch: pytest.MonkeyPatch
) -> None:
    desk = plan_desk()
    view, lamp = desk.view, desk.plan.lamps[0]
    desk.hand.press(lamp.x, lamp.y)
    view.grab()
    walls = Calls(monkeypatch, plan_layers, "paint_outline")
    sizes = Calls(monkeypatch, plan_layers, "paint_wall_lengths")
    for step in range(1, 11):
        desk.hand.move(lamp.x + 0.01 * step, lamp.y)
        view.set_estimate(light_of(desk.plan))
        view.grab()
    assert desk.plan.lamps[0].x > lamp.x
    assert (walls.count, sizes.count) == (0, 0)
    desk.hand.release(lamp.x + 0.1, lamp.y)


def test_walls_are_painted_anew_when_they_change(
    plan_desk: MakeDesk, monkeypatch: pytest.MonkeyPatch
) -> None:
    desk = plan_desk()
    desk.view.grab()
    walls = Calls(monkeypatch, plan_layers, "paint_outline")
    desk.view.choose(Item(Part.WALL, 1))
    desk.view.grab()
    assert walls.count == 1
    desk.view.try_edit(desk.view.nudged(Item(Part.CORNER, 2), (0.1, 0.0)))
    desk.view.grab()
    assert walls.count == 2


def test_the_side_view_keeps_the_room_while_a_lamp_moves(
    side_desk: MakeDesk, monkeypatch: pytest.MonkeyPatch
) -> None:
    desk = side_desk()
    desk.view.grab()
    sheets = Calls(monkeypatch, Elevation, "paint_sheet")
    rooms = Calls(monkeypatch, Elevation, "paint_enclosure")
    lamps = Calls(monkeypatch, Elevation, "paint_lamps")
    for _ in range(5):
        desk.view.try_edit(desk.view.nudged(Item(Part.LAMP), (0.01, 0.0)), "drag")
        desk.view.grab()
    assert (sheets.count, rooms.count) == (0, 0)
    assert lamps.count == 5


def test_a_drawing_in_hand_is_painted_once_for_plan_and_light(plan_desk: MakeDesk) -> None:
    desk = plan_desk()
    view, lamp = desk.view, desk.plan.lamps[0]
    desk.hand.press(lamp.x, lamp.y)
    desk.hand.move(lamp.x + 0.02, lamp.y)
    view.set_estimate(light_of(desk.plan))
    QApplication.processEvents()
    paints = 0
    own = view.paint_drawing

    def counted(*args: object) -> None:
        nonlocal paints
        paints += 1
        own(*args)

    view.paint_drawing = counted
    desk.hand.move(lamp.x + 0.04, lamp.y)
    view.set_estimate(light_of(desk.plan))
    QApplication.processEvents()
    assert paints == 1
    desk.hand.release(lamp.x + 0.04, lamp.y)


@pytest.mark.parametrize(("make", "waits"), [("plan_desk", False), ("side_desk", True)])
def test_while_a_field_edits_the_plan_shows_its_light_at_once(
    make: str, waits: bool, request: pytest.FixtureRequest
) -> None:
    """The side view follows with its next frame, four of a screen later."""
    desk = request.getfixturevalue(make)()
    desk.view.grab()
    dimmed = edits.change_lamp(desk.plan, 0, output_percent=60)
    desk.document.apply(dimmed, "Set lamp output", "output")
    desk.view.set_estimate(light_of(desk.plan))
    assert desk.view._frame.isActive() is waits
    desk.document.end_gesture()
    assert not desk.view._unsaid
