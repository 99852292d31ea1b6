"""Fields while several lamps or obstacles are selected: set for all of them, in one step."""

from __future__ import annotations

from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from planner.app.fields.lamp_fields import LampFields
from planner.app.fields.panel import QuantityField
from planner.app.fields.space_fields import ObstacleFields
from planner.app.pages.sketch.page import SketchPage
from planner.catalogue.library import demo_plan
from planner.plan import edits
from planner.plan.place import Place, PlaceKind
from planner.plan.turning import with_model
from planner.units import LengthUnit
from tests.e2e.shell import make_window, trigger
from tests.e2e.sketching import enter, make_page

LAMPS = tuple(Place(PlaceKind.LAMP, k) for k in range(6))
SHELVES = tuple(Place(PlaceKind.OBSTACLE, k) for k in range(2))


@pytest.fixture
def page(qtbot: QtBot, tmp_path: Path) -> SketchPage:
    """The rack of three tiers: its bars hang 36, 36 and 30 cm over the canopy beneath them."""
    return make_page(qtbot, demo_plan("rack"), tmp_path)


def lamp_fields(page: SketchPage, *chosen: Place) -> LampFields:
    page.workplace.selection.select_all(chosen)
    panel = page.column.panel
    assert isinstance(panel, LampFields)
    return panel


def steps(page: SketchPage) -> list[str]:
    stack = page.workplace.document.undo_stack
    return [stack.text(index) for index in range(stack.count())]


def text(field: QuantityField) -> str:
    return field.box.lineEdit().text()


def test_a_number_typed_for_several_lamps_is_set_for_all_in_one_step(
    qtbot: QtBot, page: SketchPage
) -> None:
    panel = lamp_fields(page, LAMPS[0], LAMPS[2], LAMPS[5])
    assert "3 lamps" in panel.several_note.text()
    enter(qtbot, panel.tilt_field.box, "15")
    enter(qtbot, panel.output_field.box, "80")
    enter(qtbot, panel.kind_fields.watts_field.box, "35")
    plan = page.workplace.document.plan
    assert [lamp.tilt_deg for lamp in plan.lamps] == [15, 0, 15, 0, 0, 15]
    assert [lamp.output_percent for lamp in plan.lamps] == [80, 100, 80, 100, 100, 80]
    assert [lamp.model.watts for lamp in plan.lamps] == [35, 30, 35, 30, 30, 35]
    assert steps(page) == ["3 lamps: tilt", "3 lamps: output", "3 lamps: watts"]


def test_a_height_counts_from_the_canopy_beneath_each(qtbot: QtBot, page: SketchPage) -> None:
    """Canopies at 12, 62 and 112 cm; shelves from 50 and 100 cm up."""
    panel = lamp_fields(page, *LAMPS)
    assert text(panel.height_field) == "30 to 36 cm"
    enter(qtbot, panel.height_field.box, "34")
    plan = page.workplace.document.plan
    faces = [plan.lamp_height(lamp) for lamp in plan.lamps]
    assert faces == pytest.approx([0.46, 0.46, 0.96, 0.96, 1.46, 1.46])
    assert steps(page) == ["6 lamps: hanging height"]
    assert text(panel.height_field) == "34 cm"
    enter(qtbot, panel.height_field.box, "45")
    assert "lamp 1 meets 'Middle tier'" in panel.height_field.row.error
    assert page.workplace.document.plan == plan


def test_where_numbers_differ_both_ends_are_shown_and_no_arrow_key_steps(
    qtbot: QtBot, page: SketchPage
) -> None:
    document = page.workplace.document
    document.apply(edits.change_lamp(document.plan, 1, output_percent=40.0), "Set lamp output")
    before = document.plan
    panel = lamp_fields(page, *LAMPS)
    box = panel.output_field.box
    assert text(panel.output_field) == "40 to 100 %"
    box.setFocus()
    qtbot.keyClick(box, Qt.Key.Key_Up)
    qtbot.keyClick(box, Qt.Key.Key_Return)
    assert document.plan == before
    enter(qtbot, box, "100")
    assert {lamp.output_percent for lamp in document.plan.lamps} == {100}
    qtbot.keyClick(box, Qt.Key.Key_Down)
    assert {lamp.output_percent for lamp in document.plan.lamps} == {95}


def test_places_and_names_are_those_of_one_alone(page: SketchPage) -> None:
    panel = lamp_fields(page, *LAMPS[:2])
    assert not panel.x_field.box.isVisible()
    assert not panel.y_field.box.isVisible()
    assert not panel.label_line.isVisible()
    page.workplace.selection.select(LAMPS[1])
    assert panel.x_field.box.isVisible()
    assert panel.label_line.isVisible()
    assert not panel.several_note.isVisible()


def test_a_switch_that_is_half_on_switches_all_on(page: SketchPage) -> None:
    panel = lamp_fields(page, LAMPS[0])
    switch = panel.kind_fields.dim_switch
    switch.click()
    lamp_fields(page, *LAMPS)
    assert switch.checkState() is Qt.CheckState.PartiallyChecked
    switch.click()
    assert all(lamp.model.dimmable for lamp in page.workplace.document.plan.lamps)
    switch.click()
    assert not any(lamp.model.dimmable for lamp in page.workplace.document.plan.lamps)


def test_buttons_and_kind_of_lamp_are_for_all(page: SketchPage) -> None:
    panel = lamp_fields(page, *LAMPS[:3])
    other = next(m for m in page.shelf.catalogue.lamps if m.key != "led-bar-90-30w")
    panel.chooser.chosen.emit(other)
    plan = page.workplace.document.plan
    assert [lamp.model.key == other.key for lamp in plan.lamps] == [True] * 3 + [False] * 3
    panel.remove_button.click()
    assert page.workplace.document.plan.lamps == plan.lamps[3:]


def test_fields_of_several_obstacles(qtbot: QtBot, page: SketchPage) -> None:
    page.workplace.selection.select_all((*SHELVES, LAMPS[0]))
    panel = page.column.panel
    assert isinstance(panel, ObstacleFields)
    assert "2 obstacles" in panel.several_note.text()
    assert text(panel.underside_field) == "50 to 100 cm"
    enter(qtbot, panel.width_field.box, "30")
    panel.target_switch.click()
    plan = page.workplace.document.plan
    assert [one.width for one in plan.obstacles] == [0.3, 0.3]
    assert all(one.canopy is not None and one.canopy.target for one in plan.obstacles)
    assert steps(page) == ["2 obstacles: width", "Give canopy its own target"]
    panel.canopy_switch.click()
    assert all(one.canopy is None for one in page.workplace.document.plan.obstacles)


def test_what_goes_with_a_shelf_is_told(qtbot: QtBot, page: SketchPage) -> None:
    document = page.workplace.document
    page.workplace.selection.select(SHELVES[1])
    panel = page.column.panel
    assert isinstance(panel, ObstacleFields)
    with qtbot.waitSignal(document.told) as told:
        enter(qtbot, panel.underside_field.box, "110")
    assert told.args == ["Lamps 3 and 4 went with it. Lamps 5 and 6 over its canopy did not move."]
    assert document.undo_stack.count() == 1
    assert document.plan.lamp_height(document.plan.lamps[2]) == pytest.approx(1.08)
    page.workplace.selection.select(Place())
    with qtbot.waitSignal(document.told) as told:
        enter(qtbot, page.column.space_fields.height_field.box, "125")
    assert told.args is not None
    assert "Lamps 5 and 6 came down too, to stay under the ceiling." in told.args[0]


def test_a_menu_step_says_how_many_lamps_it_set(qtbot: QtBot) -> None:
    """45 cm over the upper tier is under the ceiling; over the lower two a shelf is in the way."""
    window, _ = make_window(qtbot, demo_plan("rack"))
    document, told = window.document, window.statusBar().currentMessage
    window.selection.select(LAMPS[0])
    trigger(window, "level_lamps")
    assert told() == "All 6 lamps hang 36 cm over the canopy beneath."
    document.apply(edits.change_lamp(document.plan, 4, hanging_height=1.45), "Raise lamp")
    window.selection.select(LAMPS[4])
    window.display.update(unit=LengthUnit.INCH)
    before = document.undo_stack.count()
    trigger(window, "level_lamps")
    assert told() == (
        "2 of 6 lamps hang 17.72 in over the canopy beneath. No room so high: lamps 1, 2, 3 and 4."
    )
    assert document.undo_stack.count() == before + 1


def test_ends_too_long_for_their_field_lose_their_unit(page: SketchPage) -> None:
    document = page.workplace.document
    document.apply(with_model(document.plan, 0, ppf=180.5, watts=240.0), "Set lamp PPF")
    panel = lamp_fields(page, *LAMPS[:2])
    field = panel.kind_fields.ppf_field
    assert field.box.fontMetrics().horizontalAdvance(text(field)) < field.box.lineEdit().width()
    assert text(field).startswith("66 to 180.5")
