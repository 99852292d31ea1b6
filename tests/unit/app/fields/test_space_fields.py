"""Fields of the space: each edit is one named step, and errors stand beside their field."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QToolButton
from pytestqt.qtbot import QtBot

from planner.app.fields.panel import Workplace
from planner.app.fields.space_fields import SpaceFields, l_shape, rectangle
from planner.app.quantity_box import QuantityBox
from planner.plan import edits
from planner.plan.place import Place
from planner.plan.space import contains, footprint_problem, signed_area
from planner.units import LengthUnit


def shown_panel(qtbot: QtBot, workplace: Workplace) -> SpaceFields:
    panel = SpaceFields(workplace)
    qtbot.addWidget(panel)
    panel.show_selection(Place())
    workplace.document.changed.connect(lambda _old, new: panel.refresh(new))
    panel.show()
    return panel


def enter(qtbot: QtBot, box: QuantityBox, text: str) -> None:
    box.selectAll()
    qtbot.keyClicks(box, text)
    qtbot.keyClick(box, Qt.Key.Key_Return)


def named(panel: SpaceFields, name: str) -> QToolButton:
    return next(b for b in panel.findChildren(QToolButton) if b.accessibleName() == name)


def box_named(panel: SpaceFields, name: str) -> QuantityBox:
    return next(b for b in panel.findChildren(QuantityBox) if b.accessibleName() == name)


def steps(workplace: Workplace) -> list[str]:
    stack = workplace.document.undo_stack
    return [stack.text(index) for index in range(stack.count())]


def test_width_depth_and_height_are_typed(qtbot: QtBot, workplace: Workplace) -> None:
    panel = shown_panel(qtbot, workplace)
    enter(qtbot, panel.width_field.box, "1 m")
    enter(qtbot, panel.depth_field.box, "50")
    enter(qtbot, panel.height_field.box, "72 in")
    space = workplace.document.plan.space
    assert space.bounds == pytest.approx((0, 0, 1.0, 0.5))
    assert space.height == pytest.approx(72 * 0.0254)
    assert steps(workplace) == ["Set width", "Set depth", "Set height of the space"]
    for _ in range(3):
        workplace.document.undo_stack.undo()
    assert workplace.document.plan.space.bounds == pytest.approx((0, 0, 0.8, 0.6))
    assert panel.width_field.box.lineEdit().text() == "80 cm"


def test_an_impossible_height_is_explained_beside_the_field(
    qtbot: QtBot, workplace: Workplace
) -> None:
    panel = shown_panel(qtbot, workplace)
    before = workplace.document.plan
    enter(qtbot, panel.height_field.box, "20")
    assert workplace.document.plan is before
    assert steps(workplace) == []
    assert panel.height_field.row.error != ""
    assert panel.height_field.box.lineEdit().text() == "20"
    qtbot.keyClick(panel.height_field.box, Qt.Key.Key_Escape)
    assert panel.height_field.row.error == ""
    assert panel.height_field.box.lineEdit().text() == "160 cm"


def test_a_burst_of_arrow_keys_is_one_step(qtbot: QtBot, workplace: Workplace) -> None:
    panel = shown_panel(qtbot, workplace)
    dragging: list[bool] = []
    panel.dragging_changed.connect(dragging.append)
    for _ in range(3):
        qtbot.keyClick(panel.width_field.box, Qt.Key.Key_Up)
    assert workplace.document.plan.space.bounds[2] == pytest.approx(0.83)
    assert steps(workplace) == ["Set width"]
    panel.end_burst()
    assert dragging == [True, False]
    qtbot.keyClick(panel.width_field.box, Qt.Key.Key_Up)
    assert steps(workplace) == ["Set width", "Set width"]
    panel.end_burst()


def test_the_name_is_one_step_and_may_not_be_empty(qtbot: QtBot, workplace: Workplace) -> None:
    panel = shown_panel(qtbot, workplace)
    panel.name_line.selectAll()
    qtbot.keyClicks(panel.name_line, "Hallway")
    qtbot.keyClick(panel.name_line, Qt.Key.Key_Return)
    assert workplace.document.plan.name == "Hallway"
    assert steps(workplace) == ["Rename plan"]
    panel.name_line.selectAll()
    qtbot.keyClick(panel.name_line, Qt.Key.Key_Delete)
    qtbot.keyClick(panel.name_line, Qt.Key.Key_Return)
    assert workplace.document.plan.name == "Hallway"
    assert "empty" in panel.name_row.error
    qtbot.keyClick(panel.name_line, Qt.Key.Key_Escape)
    assert panel.name_line.text() == "Hallway"
    assert panel.name_row.error == ""
    assert steps(workplace) == ["Rename plan"]


def test_the_unit_switches_without_touching_the_plan(qtbot: QtBot, workplace: Workplace) -> None:
    panel = shown_panel(qtbot, workplace)
    before = workplace.document.plan
    workplace.display.update(unit=LengthUnit.INCH)
    assert panel.width_field.box.lineEdit().text() == "31.5 in"
    assert box_named(panel, "Corner 2, x").lineEdit().text() == "31.5 in"
    workplace.display.update(unit=LengthUnit.CM)
    assert workplace.document.plan is before
    assert steps(workplace) == []


@pytest.mark.parametrize(
    ("shape", "corners", "area"),
    [(rectangle, 4, 2.0), (l_shape, 6, 1.5)],
)
def test_shapes_fill_the_size_they_are_given(shape: object, corners: int, area: float) -> None:
    outline = shape(0.0, 0.0, 2.0, 1.0)  # type: ignore[operator]
    assert len(outline) == corners
    assert footprint_problem(outline) is None
    assert signed_area(outline) == pytest.approx(area)


def test_a_shape_button_keeps_the_size(qtbot: QtBot, workplace: Workplace) -> None:
    panel = shown_panel(qtbot, workplace)
    panel.shape_buttons[1].click()
    plan = workplace.document.plan
    assert len(plan.space.footprint) == len(plan.walls) == 6
    assert plan.space.bounds == pytest.approx((0, 0, 0.8, 0.6))
    assert steps(workplace) == ["Shape footprint: L-shape"]
    assert all(contains(plan.space.footprint, lamp.x, lamp.y) for lamp in plan.lamps)
    assert len(panel.outline.findChildren(QuantityBox)) >= 18


def test_cutting_a_corner_keeps_the_rest_of_the_outline(qtbot: QtBot, workplace: Workplace) -> None:
    """An L stays an L: 0.8 x 0.6 m less a quarter, and a triangle of 0.1 x 0.1 m / 2 less.

    The upper right of it is the corner at (0.8, 0.3), whose walls are 0.3 and 0.4 m long.
    """
    panel = shown_panel(qtbot, workplace)
    panel.shape_buttons[1].click()
    panel.shape_buttons[2].click()
    plan = workplace.document.plan
    assert len(plan.space.footprint) == len(plan.walls) == 7
    assert plan.space.area == pytest.approx(0.75 * 0.48 - 0.005)
    assert steps(workplace) == ["Shape footprint: L-shape", "Shape footprint: Cut corner"]


def test_the_door_is_chosen_opened_and_taken_away(qtbot: QtBot, workplace: Workplace) -> None:
    panel = shown_panel(qtbot, workplace)
    assert not panel.open_switch.isEnabled()
    panel.door_combo.setCurrentIndex(2)
    panel.door_combo.activated.emit(2)
    assert workplace.document.plan.space.door == 1
    panel.open_switch.click()
    assert workplace.document.plan.space.door_open
    panel.door_combo.setCurrentIndex(0)
    panel.door_combo.activated.emit(0)
    assert workplace.document.plan.space.door is None
    assert not workplace.document.plan.space.door_open
    assert steps(workplace) == ["Put door on wall 2", "Open door", "Remove door"]


def test_corners_are_typed_added_and_removed(qtbot: QtBot, workplace: Workplace) -> None:
    panel = shown_panel(qtbot, workplace)
    panel.outline_toggle.click()
    enter(qtbot, box_named(panel, "Corner 3, x"), "70")
    assert workplace.document.plan.space.footprint[2] == pytest.approx((0.7, 0.6))
    named(panel, "Add a corner on the wall after corner 1").click()
    assert workplace.document.plan.space.footprint[1] == pytest.approx((0.4, 0.0))
    named(panel, "Remove corner 2").click()
    assert len(workplace.document.plan.space.footprint) == 4
    assert steps(workplace) == ["Move corner 3", "Add corner", "Remove corner"]


def test_a_crossing_corner_is_refused_in_its_row(qtbot: QtBot, workplace: Workplace) -> None:
    panel = shown_panel(qtbot, workplace)
    panel.outline_toggle.click()
    before = workplace.document.plan
    enter(qtbot, box_named(panel, "Corner 3, y"), "-20")
    assert workplace.document.plan is before
    field = next(f for f in panel.quantities if f.box.accessibleName() == "Corner 3, y")
    assert "cross" in field.row.error


def test_too_few_corners_are_refused(qtbot: QtBot, workplace: Workplace) -> None:
    panel = shown_panel(qtbot, workplace)
    panel.outline_toggle.click()
    named(panel, "Remove corner 4").click()
    before = workplace.document.plan
    named(panel, "Remove corner 1").click()
    assert workplace.document.plan is before
    field = next(f for f in panel.quantities if f.box.accessibleName() == "Corner 1, x")
    assert "three corners" in field.row.error


def test_a_wall_length_is_typed(qtbot: QtBot, workplace: Workplace) -> None:
    panel = shown_panel(qtbot, workplace)
    panel.outline_toggle.click()
    enter(qtbot, box_named(panel, "Length of wall 1"), "90")
    assert workplace.document.plan.space.bounds == pytest.approx((0, 0, 0.9, 0.6))
    assert steps(workplace) == ["Set length of wall 1"]


def test_light_of_the_room_is_asked_for_while_the_door_stands_open(
    qtbot: QtBot, workplace: Workplace
) -> None:
    panel = shown_panel(qtbot, workplace)
    panel.door_combo.setCurrentIndex(2)
    panel.door_combo.activated.emit(2)
    light, hours = panel.room_fields
    assert not light.box.isVisible()
    panel.open_switch.click()
    assert light.box.isVisible()
    assert not hours.box.isVisible()
    enter(qtbot, light.box, "12")
    enter(qtbot, hours.box, "10")
    space = workplace.document.plan.space
    assert (space.room_light, space.room_hours) == (12.0, 10.0)
    assert steps(workplace)[-2:] == ["Set light of the room", "Set hours of room light"]
    panel.open_switch.click()
    assert not light.box.isVisible()
    # What was entered is there when the door opens again.
    assert workplace.document.plan.room_light == 0
    panel.open_switch.click()
    assert workplace.document.plan.room_light == 12


def test_room_light_in_lux_is_taken_as_daylight_and_said(
    qtbot: QtBot, workplace: Workplace
) -> None:
    """55.5 lx of CIE D65 are 1 umol (its table and V by hand: ``test_spectra``)."""
    document = workplace.document
    plan = edits.with_space(document.plan, door=1, door_open=True)
    document.apply(plan, "Open door")
    panel = shown_panel(qtbot, workplace)
    light, _hours = panel.room_fields
    with qtbot.waitSignal(document.told) as told:
        enter(qtbot, light.box, "1110 lx")
    assert document.plan.space.room_light == pytest.approx(20.0)
    assert told.args is not None
    assert told.args[0].startswith("1110 lx were read as 20 µmol m⁻² s⁻¹: daylight (CIE")
    enter(qtbot, light.box, "555 LUX")
    assert document.plan.space.room_light == pytest.approx(10.0)
    enter(qtbot, light.box, "12")
    assert document.plan.space.room_light == 12.0
    # Where a number means other light it is refused as before.
    enter(qtbot, panel.room_fields[1].box, "10 lx")
    assert "is not a number" in panel.room_fields[1].row.error


def test_no_row_is_wider_than_the_column(qtbot: QtBot, workplace: Workplace) -> None:
    """280 pixels is what the column shows at 1280 x 800, 8 of them its margin."""
    panel = shown_panel(qtbot, workplace)
    panel.door_combo.activated.emit(2)
    assert panel.minimumSizeHint().width() <= 272
