"""Several lamps and obstacles under one hand: selected, moved, raised, turned, taken away."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from planner.app.canvas.items import Item, Part, turn_handle
from planner.app.display import SelectionModel
from planner.plan.lamp import Lamp
from planner.plan.place import Place, PlaceKind
from planner.plan.plan import Plan
from planner.plan.space import Obstacle
from tests.unit.app.canvas.scenes import LEFT, PANEL, plan_of

MakeDesk = Callable[..., Any]
SHIFT = Qt.KeyboardModifier.ShiftModifier
LAMPS = tuple(Place(PlaceKind.LAMP, k) for k in range(3))
BOX = Place(PlaceKind.OBSTACLE, 0)


def three_and_a_box() -> Plan:
    """Panels of 30 x 20 cm in a metre, heights 40, 50 and 60 cm, and a box behind the left."""
    lamps = tuple(
        Lamp(model=PANEL, x=x, y=y, hanging_height=height)
        for x, y, height in ((0.2, 0.2, 0.4), (0.7, 0.2, 0.5), (0.7, 0.7, 0.6))
    )
    box = Obstacle(name="Box", x=0.2, y=0.8, underside=0.3, length=0.1, width=0.1, thickness=0.1)
    return plan_of(lamps=lamps, obstacles=(box,))


def shift_click(desk: Any, u: float, v: float) -> None:
    QTest.mouseClick(desk.view, LEFT, SHIFT, desk.hand.pixel(u, v))


def spots(desk: Any) -> list[tuple[float, float]]:
    return [(lamp.x, lamp.y) for lamp in desk.plan.lamps]


def test_shift_click_takes_more_and_lets_go_again(plan_desk: MakeDesk) -> None:
    desk = plan_desk(three_and_a_box())
    desk.hand.click(0.2, 0.2)
    shift_click(desk, 0.7, 0.7)
    assert desk.selection.chosen == (LAMPS[2], LAMPS[0])
    assert desk.selection.current == LAMPS[2]  # the last one taken leads: its fields are shown
    shift_click(desk, 0.2, 0.8)
    assert desk.selection.chosen == (BOX, LAMPS[2], LAMPS[0])
    shift_click(desk, 0.2, 0.2)
    assert desk.selection.chosen == (BOX, LAMPS[2])
    desk.hand.click(0.7, 0.7)
    assert desk.selection.chosen == (LAMPS[2],)
    assert desk.steps == []


def test_a_rubber_band_takes_what_it_touches(plan_desk: MakeDesk) -> None:
    desk = plan_desk(three_and_a_box())
    desk.hand.drag((0.42, 0.42), (0.05, 0.05))
    assert desk.selection.chosen == (LAMPS[0],)
    desk.hand.drag((0.5, 0.05), (0.95, 0.95))
    assert desk.selection.chosen == (LAMPS[1], LAMPS[2])
    assert desk.steps == []
    desk.view.grab()


def test_a_rubber_band_let_go_by_escape_selects_nothing(plan_desk: MakeDesk) -> None:
    desk = plan_desk(three_and_a_box())
    desk.hand.press(0.42, 0.42)
    desk.hand.move(0.05, 0.05)
    desk.view.grab()
    QTest.keyClick(desk.view, Qt.Key.Key_Escape)
    desk.hand.release(0.05, 0.05)
    assert desk.selection.chosen == ()


def test_dragging_one_takes_the_others_along_in_one_step(plan_desk: MakeDesk) -> None:
    desk = plan_desk(three_and_a_box())
    desk.hand.click(0.2, 0.2)
    shift_click(desk, 0.7, 0.2)
    desk.hand.drag((0.2, 0.2), (0.24, 0.31), Qt.KeyboardModifier.AltModifier)
    (ax, ay), (bx, by), other = spots(desk)
    assert bx - ax == pytest.approx(0.5)
    assert by - ay == pytest.approx(0.0)
    assert ax == pytest.approx(0.24, abs=0.005)
    assert other == (0.7, 0.7)
    assert desk.steps == ["Move 2 lamps"]
    assert len(desk.selection.chosen) == 2


def test_arrows_turns_and_delete_act_on_all(plan_desk: MakeDesk) -> None:
    desk = plan_desk(three_and_a_box())
    desk.selection.select_all(LAMPS[:2])
    QTest.keyClick(desk.view, Qt.Key.Key_Up)
    assert spots(desk)[:2] == [(0.2, 0.21), (0.7, 0.21)]
    QTest.keyClick(desk.view, Qt.Key.Key_R)
    assert [lamp.rotation_deg for lamp in desk.plan.lamps] == [15, 15, 0]
    QTest.keyClick(desk.view, Qt.Key.Key_Backspace)
    assert spots(desk) == [(0.7, 0.7)]
    assert desk.steps == ["Move 2 lamps", "Rotate 2 lamps", "Remove 2 lamps"]
    assert desk.selection.current == Place()


def test_the_handle_turns_all_about_the_one_that_leads(plan_desk: MakeDesk) -> None:
    desk = plan_desk(three_and_a_box())
    desk.selection.select_all((LAMPS[2], LAMPS[0]))
    at = desk.view.viewport.to_world(turn_handle(desk.plan.lamps[2], desk.view.viewport))
    desk.hand.drag(at, (0.2, 0.7))
    assert [lamp.rotation_deg for lamp in desk.plan.lamps] == [180, 0, 180]
    assert desk.steps == ["Rotate 2 lamps"]


def test_from_the_side_all_rise_together(side_desk: MakeDesk) -> None:
    desk = side_desk(three_and_a_box())
    desk.selection.select_all((LAMPS[0], LAMPS[1]))
    face = desk.plan.lamp_height(desk.plan.lamps[0]) + 0.005
    desk.hand.drag((0.2, face), (0.2, face + 0.3))
    heights = [lamp.hanging_height for lamp in desk.plan.lamps]
    assert heights[0] == pytest.approx(0.7, abs=0.011)
    assert heights[1] - heights[0] == pytest.approx(0.1)
    assert heights[2] == 0.6
    assert desk.steps == ["Raise 2 lamps"]
    QTest.keyClick(desk.view, Qt.Key.Key_Down)
    assert desk.steps == ["Raise 2 lamps", "Lower 2 lamps"]


def test_a_rubber_band_from_the_side(side_desk: MakeDesk) -> None:
    desk = side_desk(three_and_a_box())
    desk.hand.drag((0.95, 0.72), (0.45, 0.95))
    assert desk.selection.chosen == (LAMPS[1], LAMPS[2])


def test_the_words_tell_what_is_selected_together(plan_desk: MakeDesk) -> None:
    desk = plan_desk(three_and_a_box())
    desk.selection.select_all((LAMPS[1], LAMPS[0], BOX))
    desk.view.tell()
    assert "Selected together: Lamp 2, Lamp 1 and Obstacle 1." in desk.view.accessibleDescription()


def test_the_menu_of_several_speaks_of_all(plan_desk: MakeDesk) -> None:
    desk = plan_desk(three_and_a_box())
    desk.selection.select_all(LAMPS)
    menu = desk.view.menu_for(Item(Part.LAMP, 0), (0.2, 0.2))
    texts = [action.text() for action in menu.actions()]
    assert "All lamps to this height" in texts
    assert "Remove 3 lamps" in texts
    next(action for action in menu.actions() if "this height" in action.text()).trigger()
    assert {lamp.hanging_height for lamp in desk.plan.lamps} == {0.4}
    menu.deleteLater()


def test_a_selection_forgets_what_is_gone(qapp: object) -> None:
    selection, plan = SelectionModel(), three_and_a_box()
    selection.select_all((LAMPS[2], LAMPS[0]))
    selection.follow(plan.model_copy(update={"lamps": plan.lamps[:1]}))
    assert selection.chosen == (LAMPS[0],)
    selection.follow(plan.model_copy(update={"lamps": ()}))
    assert selection.current == Place()


def test_what_cannot_be_one_of_several_is_selected_alone(qapp: object) -> None:
    selection = SelectionModel()
    selection.select_all(LAMPS)
    selection.toggle(Place(PlaceKind.WALL, 1))
    assert selection.chosen == LAMPS
    selection.lead_with(Place(PlaceKind.WALL, 1))
    assert selection.chosen == ()
    assert selection.current == Place(PlaceKind.WALL, 1)
