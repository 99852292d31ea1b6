from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from planner.app.canvas.items import Item, Part
from planner.plan.place import Place, PlaceKind
from planner.units import LengthUnit
from tests.unit.app.canvas.scenes import L_SHAPE, light_of, plan_of

Key = Qt.Key
MakeDesk = Callable[..., Any]
# The plan's lamp: x 0.35 to 0.65, y 0.2 to 0.4, face 0.65 m above the floor; canopy at 0.2.
LAMP = LAMP_OVER_CANOPY = (0.5, 0.655)


def test_the_lamp_is_raised_by_hand(side_desk: MakeDesk) -> None:
    desk = side_desk()
    desk.hand.drag(LAMP, (0.5, 1.055))
    assert desk.plan.lamps[0].hanging_height == pytest.approx(0.85, abs=0.011)
    assert desk.plan.lamps[0].hanging_height == round(desk.plan.lamps[0].hanging_height, 2)
    assert desk.steps == ["Raise lamp"]
    assert desk.selection.current == Place(PlaceKind.LAMP, 0)
    desk.document.undo_stack.undo()
    assert desk.plan.lamps[0].hanging_height == 0.45


def test_a_drag_is_named_for_where_it_ends(side_desk: MakeDesk) -> None:
    desk = side_desk()
    desk.hand.press(*LAMP)
    desk.hand.move(0.5, 0.9)
    desk.hand.move(0.5, 0.5)
    desk.hand.release(0.5, 0.5)
    assert desk.steps == ["Lower lamp"]


def test_escape_leaves_no_step(side_desk: MakeDesk) -> None:
    desk = side_desk()
    before = desk.plan
    desk.hand.press(*LAMP)
    desk.hand.move(0.5, 0.9)
    assert desk.plan != before
    QTest.keyClick(desk.view, Key.Key_Escape)
    assert desk.plan == before
    assert desk.steps == []
    assert not desk.view.dragging


def test_the_canopy_is_raised_and_lamps_stay(side_desk: MakeDesk) -> None:
    desk = side_desk()
    desk.hand.drag((0.2, 0.2), (0.2, 0.4))
    assert desk.plan.canopy.height == pytest.approx(0.4, abs=0.011)
    assert desk.plan.lamp_height(desk.plan.lamps[0]) == pytest.approx(0.65)
    assert desk.steps == ["Raise canopy"]
    assert desk.selection.current == Place(PlaceKind.CANOPY)


def test_the_ceiling_is_lowered(side_desk: MakeDesk) -> None:
    desk = side_desk()
    desk.hand.drag((0.2, 2.0), (0.2, 1.5))
    assert desk.plan.space.height == pytest.approx(1.5, abs=0.011)
    assert desk.steps == ["Lower ceiling"]
    assert desk.selection.current == Place(PlaceKind.CEILING)


def test_a_band_edge_of_the_wall_seen_is_moved(side_desk: MakeDesk) -> None:
    desk = side_desk()
    assert desk.view.shown_wall() == 2
    desk.hand.drag((0.15, 0.6), (0.15, 0.9))
    assert desk.plan.walls[2].bands[0].top == pytest.approx(0.9, abs=0.011)
    assert desk.steps == ["Move band edge"]
    assert desk.selection.current == Place(PlaceKind.WALL, 2, 0)


def test_a_band_edge_of_a_wall_cut_at_the_side_is_moved(side_desk: MakeDesk) -> None:
    desk = side_desk()
    desk.view.turn()  # the back wall, y = 1, is now cut at the right
    desk.hand.drag((1.01, 0.6), (1.01, 0.9))
    assert desk.plan.walls[2].bands[0].top == pytest.approx(0.9, abs=0.011)


def test_bands_and_surfaces_are_selected_by_a_click(side_desk: MakeDesk) -> None:
    desk = side_desk()
    desk.hand.click(0.2, 1.5)
    assert desk.selection.current == Place(PlaceKind.WALL, 2, 1)
    desk.hand.click(0.2, 0.45)
    assert desk.selection.current == Place(PlaceKind.WALL, 2, 0)
    desk.hand.click(1.01, 1.5)
    assert desk.selection.current == Place(PlaceKind.WALL, 1, 0)
    desk.hand.click(0.2, 0.1)
    assert desk.selection.current == Place(PlaceKind.CANOPY)
    desk.hand.click(0.2, -0.01)
    assert desk.selection.current == Place(PlaceKind.FLOOR)
    desk.hand.click(-0.2, 1.0)
    assert desk.selection.current == Place()


def test_looking_along_x_shows_depth(side_desk: MakeDesk) -> None:
    desk = side_desk(plan_of(L_SHAPE))
    assert desk.view.bounds() == (0.0, 0.0, 1.2, 2.0)
    assert desk.view.turn_button.text() == "Look along x"
    desk.view.turn_button.click()
    assert desk.view.axis == "x"
    assert desk.view.bounds() == (0.0, 0.0, 0.9, 2.0)
    assert desk.view.turn_button.text() == "Look along y"
    desk.view.setFixedWidth(desk.view.turn_button.width() + 2)
    desk.view.resize(desk.view.minimumWidth(), 200)
    assert desk.view.turn_button.text() == "y"
    assert desk.view.rect().contains(desk.view.turn_button.geometry())


def test_keys_step_and_merge(side_desk: MakeDesk, qtbot: QtBot) -> None:
    desk = side_desk()
    QTest.keyClick(desk.view, Key.Key_Tab)
    assert desk.view.focused == Item(Part.LAMP, 0)
    for _ in range(3):
        QTest.keyClick(desk.view, Key.Key_Up)
    QTest.keyClick(desk.view, Key.Key_Right, Qt.KeyboardModifier.ShiftModifier)
    assert desk.plan.lamps[0].hanging_height == pytest.approx(0.48)
    assert desk.plan.lamps[0].x == pytest.approx(0.6)
    with qtbot.waitSignal(desk.view.fields_requested, timeout=500):
        QTest.keyClick(desk.view, Key.Key_Return)
    seen = []
    for _ in range(3):
        QTest.keyClick(desk.view, Key.Key_Tab)
        seen.append(desk.view.focused)
    assert seen == [Item(Part.CANOPY), Item(Part.CEILING), Item(Part.BAND_EDGE, 2, 0)]
    desk.display.update(unit=LengthUnit.INCH)
    QTest.keyClick(desk.view, Key.Key_Up)
    assert desk.plan.walls[2].bands[0].top == pytest.approx(0.6127)


def test_the_side_view_is_told_in_words(side_desk: MakeDesk) -> None:
    desk = side_desk()
    words = desk.view.accessibleDescription()
    assert "ceiling at 200 cm, canopy at 20 cm" in words
    assert "Lamp 1 hangs 45 cm above the canopy." in words
    assert "Wall 3 changes its lining at 60 cm" in words


def test_the_canopy_carries_the_light(side_desk: MakeDesk) -> None:
    desk = side_desk(plan_of(lamps=()))
    desk.view.set_levels((0.0, 250.0))
    desk.view.set_estimate(light_of(desk.plan))
    image = desk.view.grab().toImage()

    def under_canopy(u: float) -> int:
        at = desk.view.viewport.to_pixel(u, 0.2).toPoint()
        return int(image.pixelColor(at.x(), at.y() + 4).lightness())

    assert under_canopy(0.9) > under_canopy(0.15) + 10


def test_a_hand_that_is_stopped_is_told_why(side_desk: MakeDesk) -> None:
    desk = side_desk()
    desk.hand.press(0.2, 0.2)
    desk.hand.move(0.2, 0.9)
    assert desk.plan.canopy.height == pytest.approx(0.64)  # 1 cm under the lamp's face
    assert "lamp 1 hangs at 65 cm" in desk.view.notice
    desk.hand.move(0.2, 0.4)
    assert desk.view.notice == ""
    desk.hand.release(0.2, 0.4)
    desk.hand.press(*LAMP_OVER_CANOPY)
    desk.hand.move(0.5, 9.0)
    assert desk.view.notice == "Hanging height: at most 160 cm (the ceiling is there)."
    desk.hand.release(0.5, 9.0)
    assert desk.view.notice == ""


def test_an_arrow_key_that_is_stopped_is_told_why(side_desk: MakeDesk) -> None:
    desk = side_desk()
    desk.view.choose(Item(Part.CANOPY))
    for _ in range(3):
        QTest.keyClick(desk.view, Key.Key_Down, Qt.KeyboardModifier.ShiftModifier)
    assert desk.plan.canopy.height == 0
    assert desk.view.notice == "Canopy height: at least 0 cm."
