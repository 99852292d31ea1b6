"""Shelves, pots and boxes: added by menu and button, changed in the fields."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from planner.plan import edits
from planner.plan.additions import SHAPES, new_obstacle
from planner.plan.place import Place, PlaceKind
from planner.plan.space import CarriedCanopy, Space
from tests.e2e.shell import make_window, small_plan, trigger
from tests.e2e.sketching import make_page


@pytest.mark.parametrize("key", ["add_shelf", "add_tray", "add_pot", "add_box"])
def test_the_menu_adds_one_in_one_step_and_shows_its_fields(qtbot: QtBot, key: str) -> None:
    window, _ = make_window(qtbot)
    trigger(window, key)
    assert len(window.document.plan.obstacles) == 1
    assert window.selection.current == Place(PlaceKind.OBSTACLE, 0)
    assert window.page.column.chooser.currentText().startswith("Obstacle 1: ")
    assert window.actions_["remove"].isEnabled()
    assert not window.actions_["export_lamp"].isEnabled()
    window.document.undo_stack.undo()
    assert not window.document.plan.obstacles
    assert window.selection.current == Place()


def test_the_menu_removes_the_selected_one(qtbot: QtBot) -> None:
    window, _ = make_window(qtbot)
    trigger(window, "add_box")
    trigger(window, "remove")
    assert window.document.plan.obstacles == ()
    assert window.document.undo_stack.undoText() == "Remove obstacle"


def test_every_field_of_an_obstacle_changes_the_plan(qtbot: QtBot, tmp_path: Path) -> None:
    page = make_page(qtbot, small_plan(), tmp_path)
    page.column.space_fields.obstacle_buttons[0].click()
    panel: Any = page.column.panel

    def type_into(field: Any, text: str) -> None:
        field.box.setFocus()
        field.box.selectAll()
        qtbot.keyClicks(field.box, text)
        qtbot.keyClick(field.box, Qt.Key.Key_Return)

    for field, text in (
        (panel.x_field, "40"), (panel.y_field, "60"), (panel.underside_field, "50"),
        (panel.rotation_field, "30"), (panel.length_field, "25"), (panel.width_field, "12"),
        (panel.thickness_field, "3"),
    ):  # fmt: skip
        type_into(field, text)
    panel.name_line.setText("Upper shelf")
    panel.name_line.commit()
    lining = page.shelf.catalogue.linings[0]
    panel.chooser.chosen.emit(lining)
    (shelf,) = page.workplace.document.plan.obstacles
    assert (shelf.x, shelf.y, shelf.underside) == pytest.approx((0.4, 0.6, 0.5))
    assert (shelf.length, shelf.width, shelf.thickness) == pytest.approx((0.25, 0.12, 0.03))
    assert (shelf.name, shelf.rotation_deg, shelf.lining) == ("Upper shelf", 30.0, lining.key)
    assert page.column.chooser.currentText() == "Obstacle 1: Upper shelf"
    type_into(panel.underside_field, "199")
    assert "at most 197 cm, not 199 cm" in panel.underside_field.row.error
    panel.remove_button.click()
    assert page.workplace.document.plan.obstacles == ()


def test_what_grows_on_it_is_ticked_and_has_its_own_numbers(qtbot: QtBot, tmp_path: Path) -> None:
    page = make_page(qtbot, small_plan(), tmp_path)
    page.column.space_fields.obstacle_buttons[0].click()
    panel: Any = page.column.panel
    document = page.workplace.document
    assert not panel.leaves_field.box.isVisibleTo(panel)
    panel.canopy_switch.click()
    assert document.plan.obstacles[0].canopy == CarriedCanopy()
    assert document.undo_stack.undoText() == "Put canopy on it"
    panel.leaves_field.box.committed.emit(0.1)
    assert document.plan.obstacles[0].canopy == CarriedCanopy(reflectance=0.1)
    panel.target_switch.click()
    panel.high_field.box.committed.emit(400.0)
    carried: Any = document.plan.obstacles[0].canopy
    target = carried.target
    assert target.high == 400.0
    panel.low_field.box.committed.emit(500.0)
    assert "the band ends at" in panel.low_field.row.error
    panel.target_switch.click()
    assert document.plan.obstacles[0].canopy == CarriedCanopy(reflectance=0.1)
    panel.canopy_switch.click()
    assert document.plan.obstacles[0].canopy is None
    document.undo_stack.undo()
    assert document.plan.obstacles[0].canopy is not None


def test_one_below_a_closed_canopy_is_said_to_have_no_effect(qtbot: QtBot, tmp_path: Path) -> None:
    low = new_obstacle(small_plan(), SHAPES[0]).model_copy(update={"underside": 0.05})
    page = make_page(qtbot, edits.add_obstacle(small_plan(), low), tmp_path)
    page.workplace.selection.select(Place(PlaceKind.OBSTACLE, 0))
    panel: Any = page.column.panel
    assert panel.below_note.isVisible()
    plan = page.workplace.document.plan
    page.workplace.document.apply(edits.set_canopy(plan, closed=False), "Open canopy")
    assert panel.below_note.isHidden()


@pytest.mark.parametrize("shape", SHAPES)
def test_what_is_added_fits_into_the_smallest_space(shape: Any) -> None:
    tiny = Space(footprint=((0, 0), (0.1, 0), (0.1, 0.1), (0, 0.1)), height=0.1)
    plan = edits.changed(
        small_plan(lamps=0), space=tiny,
        canopy=small_plan().canopy.model_copy(update={"height": 0.05}),
    )  # fmt: skip
    assert edits.add_obstacle(plan, new_obstacle(plan, shape)).obstacles
