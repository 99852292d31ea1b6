"""What a hand is told of what it did not ask for, and what it takes hold of as one."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from planner.app.canvas.elevation_drags import HeightDrag, seen_as_one
from planner.app.canvas.items import Item, Part, default_section, off_walls
from planner.app.canvas.plan_drags import Hold, PlanDrag, choices, removed
from planner.catalogue.library import demo_plan
from planner.plan.lamp import Lamp
from tests.unit.app.canvas.scenes import L_SHAPE, PANEL, SQUARE, plan_of

MakeDesk = Callable[..., Any]
FREE = Hold(None)


def lamp_at(x: float, y: float, height: float = 0.45) -> Lamp:
    return Lamp(model=PANEL, x=x, y=y, hanging_height=height)


def test_a_corner_that_takes_a_lamp_along_says_so_and_goes_on_saying_so(
    plan_desk: MakeDesk,
) -> None:
    desk = plan_desk(plan_of(lamps=(lamp_at(0.3, 0.3), lamp_at(0.9, 0.9))))
    desk.hand.drag((1.0, 1.0), (0.6, 0.6))
    assert desk.plan.lamps[0] == lamp_at(0.3, 0.3)
    assert (desk.plan.lamps[1].x, desk.plan.lamps[1].y) != (0.9, 0.9)
    assert desk.steps == ["Move corner with lamp 2"]
    assert desk.view.notice == "Lamp 2 moved too, to stay inside the walls."


def test_a_corner_that_takes_nothing_along_says_nothing(plan_desk: MakeDesk) -> None:
    desk = plan_desk(plan_of(lamps=(lamp_at(0.3, 0.3),)))
    desk.hand.drag((1.0, 1.0), (0.9, 0.9))
    assert desk.steps == ["Move corner"]
    assert desk.view.notice == ""


def test_a_wall_and_a_removed_corner_say_what_they_take_along() -> None:
    plan = plan_of(lamps=(lamp_at(0.75, 0.2), lamp_at(0.9, 0.8)))
    moved = PlanDrag(plan, Item(Part.WALL, 1), (1.0, 0.5)).to((0.7, 0.5), FREE)
    assert moved.label == "Move wall with lamps 1 and 2"
    cut = removed(plan, Item(Part.CORNER, 2))
    assert cut is not None
    assert cut.label == "Remove corner with lamp 2"


def test_lamps_behind_one_another_are_raised_together() -> None:
    plan = plan_of(lamps=(lamp_at(0.5, 0.2), lamp_at(0.5, 0.8), lamp_at(0.2, 0.5)))
    assert seen_as_one(plan, 0, "y") == (0, 1)
    assert seen_as_one(plan, 0, "x") == (0,)
    edit = HeightDrag(plan, Item(Part.LAMP, 1), (0.5, 0.65), "y").to((0.5, 0.75), FREE)
    assert [lamp.hanging_height for lamp in edit.plan.lamps] == pytest.approx([0.55, 0.55, 0.45])
    assert edit.label == "Raise lamps 1 and 2"
    assert "1 and 2" in edit.took
    alone = HeightDrag(plan, Item(Part.LAMP, 1), (0.8, 0.65), "x").to((0.8, 0.75), FREE)
    assert [lamp.hanging_height for lamp in alone.plan.lamps] == pytest.approx([0.45, 0.55, 0.45])


def test_the_section_never_runs_along_a_wall() -> None:
    for section in (((0.0, 0.0), (1.0, 0.0)), ((1.0, 0.1), (1.0, 0.9)), ((1.0, 1.0), (0.0, 1.0))):
        for x, y in off_walls(section, SQUARE):
            inside = min(x, 1 - x, y, 1 - y)
            assert inside == pytest.approx(0.01) or inside == 0.0
        assert off_walls(section, SQUARE) != section
    across = ((0.0, 0.5), (1.0, 0.5))
    assert off_walls(across, SQUARE) == across


def test_the_middle_of_an_outline_may_be_a_wall(plan_desk: MakeDesk) -> None:
    # The inner wall of this L lies at half its depth.
    outline = ((0.0, 0.0), (1.2, 0.0), (1.2, 0.5), (0.6, 0.5), (0.6, 1.0), (0.0, 1.0))
    assert default_section((0.0, 0.0, 1.2, 1.0)) == ((0.0, 0.5), (1.2, 0.5))
    desk = plan_desk(plan_of(outline))
    (_, y0), (_, y1) = desk.view.section
    assert (y0, y1) == pytest.approx((0.49, 0.49))
    assert plan_desk(plan_of(L_SHAPE)).view.section[0][1] == pytest.approx(0.45)


def test_all_lamps_come_to_the_height_of_one() -> None:
    plan = plan_of(lamps=(lamp_at(0.5, 0.2, 0.3), lamp_at(0.5, 0.8, 0.5), lamp_at(0.2, 0.5, 0.4)))
    offered = {choice.text: choice for choice in choices(plan, Item(Part.LAMP, 1), (0, 0), 0.01)}
    edit = offered["All lamps to this height"].make()
    assert [lamp.hanging_height for lamp in edit.plan.lamps] == [0.5, 0.5, 0.5]
    texts = [choice.text for choice in choices(edit.plan, Item(Part.LAMP, 1), (0, 0), 0.01)]
    assert "All lamps to this height" not in texts


def test_arrow_keys_go_by_a_centimetre_ten_and_a_millimetre(plan_desk: MakeDesk) -> None:
    desk = plan_desk(plan_of(lamps=(lamp_at(0.3, 0.3),)))
    desk.view.choose(Item(Part.LAMP))
    for keys, x in (
        (Qt.KeyboardModifier.NoModifier, 0.31),
        (Qt.KeyboardModifier.ShiftModifier, 0.41),
        (Qt.KeyboardModifier.ControlModifier, 0.411),
    ):
        QTest.keyClick(desk.view, Qt.Key.Key_Right, keys)
        assert desk.plan.lamps[0].x == pytest.approx(x)


def test_from_the_side_a_shelf_and_a_ceiling_say_what_they_take_along() -> None:
    """The rack: bars 3 and 4 hang under the upper shelf at 100 cm, 5 and 6 over it."""
    rack = demo_plan("rack")
    up = HeightDrag(rack, Item(Part.OBSTACLE, 1), (0.4, 1.0)).to((0.4, 1.1), FREE)
    assert up.label == "Raise obstacle"
    assert up.took == "Lamps 3 and 4 went with it. Lamps 5 and 6 over its canopy did not move."
    assert up.plan.lamp_height(up.plan.lamps[2]) == pytest.approx(1.08)
    typed = HeightDrag(rack, Item(Part.OBSTACLE, 1), (0.4, 1.0)).typed((1.1,), (0.4, 1.0))
    assert typed.plan == up.plan
    low = HeightDrag(rack, Item(Part.CEILING), (0.4, 1.6)).to((0.4, 1.2), FREE)
    assert low.took == "Lamps 5 and 6 came down too, to stay under the ceiling."
    canopy = HeightDrag(rack, Item(Part.CANOPY), (0.4, 0.12)).to((0.4, 0.2), FREE)
    assert canopy.took == ""
