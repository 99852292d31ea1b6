"""Obstacles are moved, lifted, turned and taken away by hand and by keys."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from planner.app.canvas.items import Item, Part
from planner.plan import edits
from planner.plan.place import Place, PlaceKind
from planner.plan.plan import Plan
from planner.plan.space import Obstacle
from tests.unit.app.canvas.scenes import plan_of

MakeDesk = Callable[..., Any]
TRAY = Obstacle(name="Tray", x=0.3, y=0.7, underside=0.5, length=0.2, width=0.1, thickness=0.1)


def with_tray() -> Plan:
    return edits.add_obstacle(plan_of(), TRAY)


def test_a_drag_on_the_plan_moves_it_on_the_grid_in_one_step(plan_desk: MakeDesk) -> None:
    desk = plan_desk(with_tray())
    desk.hand.drag((0.3, 0.7), (0.353, 0.652))
    tray = desk.plan.obstacles[0]
    assert (tray.x, tray.y) == pytest.approx((0.35, 0.65))
    assert desk.steps == ["Move obstacle"]
    assert desk.selection.current == Place(PlaceKind.OBSTACLE, 0)


def test_its_middle_stays_inside_and_the_drawing_says_so(plan_desk: MakeDesk) -> None:
    desk = plan_desk(with_tray())
    desk.hand.press(0.3, 0.7)
    desk.hand.move(-0.05, 0.7)
    desk.hand.move(-0.1, 0.7)
    assert desk.view.notice == "The middle of an obstacle stays inside the walls."
    assert 0 < desk.plan.obstacles[0].x < 0.05


def test_its_handle_turns_it(plan_desk: MakeDesk) -> None:
    desk = plan_desk(with_tray())
    desk.hand.click(0.3, 0.7)
    from_end = desk.view.viewport.to_world(desk.view.viewport.to_pixel(0.4, 0.7))
    reach = from_end[0] - 0.3 + 20 / desk.view.viewport.scale
    desk.hand.drag((0.3 + reach, 0.7), (0.3, 0.7 + reach))
    assert desk.plan.obstacles[0].rotation_deg == pytest.approx(90.0)
    assert desk.steps == ["Rotate obstacle"]


def test_keys_nudge_turn_and_remove_it(plan_desk: MakeDesk) -> None:
    desk = plan_desk(with_tray())
    desk.hand.click(0.3, 0.7)
    QTest.keyClick(desk.view, Qt.Key.Key_Right)
    QTest.keyClick(desk.view, Qt.Key.Key_R)
    tray = desk.plan.obstacles[0]
    assert tray.x > 0.3
    assert tray.rotation_deg == 15.0
    QTest.keyClick(desk.view, Qt.Key.Key_Delete)
    assert desk.plan.obstacles == ()
    assert desk.steps[-1] == "Remove obstacle"
    assert desk.selection.current == Place()


def test_tab_reaches_it_and_words_tell_it(plan_desk: MakeDesk) -> None:
    desk = plan_desk(with_tray())
    assert Item(Part.OBSTACLE, 0) in desk.view.items()
    desk.view.choose(Item(Part.OBSTACLE, 0))
    assert "In hand: Tray at x 30 cm, y 70 cm." in desk.view.words()


def test_the_menu_offers_turning_and_removing(plan_desk: MakeDesk) -> None:
    desk = plan_desk(with_tray())
    menu = desk.view.menu_for(Item(Part.OBSTACLE, 0), (0.3, 0.7))
    actions = {action.text(): action for action in menu.actions()}
    actions["Rotate by 90°"].trigger()
    assert desk.plan.obstacles[0].rotation_deg == 90.0
    actions["Remove obstacle"].trigger()
    assert desk.plan.obstacles == ()


def test_a_drag_from_the_side_lifts_it_until_the_ceiling(side_desk: MakeDesk) -> None:
    desk = side_desk(with_tray())
    desk.hand.drag((0.3, 0.55), (0.3, 0.852))
    assert desk.plan.obstacles[0].underside == pytest.approx(0.8)
    assert desk.steps == ["Raise obstacle"]
    desk.hand.press(0.3, 0.85)
    desk.hand.move(0.3, 1.9)
    desk.hand.move(0.3, 2.1)
    assert desk.view.notice == "Underside: at most 190 cm (the ceiling is there)."
    assert desk.plan.obstacles[0].top == pytest.approx(2.0)


def test_arrow_keys_from_the_side_move_it_along_and_up(side_desk: MakeDesk) -> None:
    desk = side_desk(with_tray())
    desk.hand.click(0.3, 0.55)
    QTest.keyClick(desk.view, Qt.Key.Key_Down)
    QTest.keyClick(desk.view, Qt.Key.Key_Left)
    tray = desk.plan.obstacles[0]
    assert tray.underside < 0.5
    assert tray.x < 0.3
    assert tray.y == 0.7


@pytest.mark.parametrize("make", ["plan_desk", "side_desk"])
def test_a_plan_opened_under_the_hand_takes_what_was_in_it(
    make: str, request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Whoever hears that the drag has ended may ask for the words of the new plan.

    In the window the drawings are told of a plan before the selection is.
    """
    desk = request.getfixturevalue(make)(with_tray())
    monkeypatch.setattr(desk.selection, "follow", lambda _plan: None)
    desk.view.dragging_changed.connect(lambda _on: desk.view.tell())
    height = 0.55 if make == "side_desk" else 0.7
    desk.hand.press(0.3, height)
    desk.hand.move(0.4, height + 0.05)
    desk.document.replace(plan_of(), None)
    assert not desk.view.dragging
    assert "In hand" not in desk.view.accessibleDescription()
    desk.hand.release(0.4, height)
