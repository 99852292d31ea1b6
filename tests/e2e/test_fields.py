"""What a user does in the column of fields, by keyboard and by mouse."""

from __future__ import annotations

from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtWidgets import QAbstractButton, QApplication, QComboBox, QLineEdit, QWidget
from pytestqt.qtbot import QtBot

from planner.app.fields.lamp_fields import LampFields
from planner.app.fields.space_fields import SpaceFields
from planner.app.pages.sketch.page import SketchPage
from planner.app.quantity_box import QuantityBox
from planner.plan import edits
from planner.plan.place import Place, PlaceKind
from planner.units import LengthUnit
from tests.e2e.shell import make_window, small_plan
from tests.e2e.sketching import enter, make_page

pytestmark = pytest.mark.gui

EVERYTHING = [
    Place(),
    Place(PlaceKind.LAMP, 0),
    Place(PlaceKind.WALL, 2),
    Place(PlaceKind.CANOPY),
    Place(PlaceKind.CEILING),
    Place(PlaceKind.FLOOR),
]


@pytest.fixture
def page(qtbot: QtBot, tmp_path: Path) -> SketchPage:
    return make_page(qtbot, small_plan(), tmp_path)


def lamp_panel(page: SketchPage) -> LampFields:
    panel = page.column.panels[PlaceKind.LAMP]
    assert isinstance(panel, LampFields)
    return panel


def visible(page: SketchPage, kinds: tuple[type[QWidget], ...]) -> list[QWidget]:
    return [w for w in page.column.findChildren(QWidget) if isinstance(w, kinds) and w.isVisible()]


def test_what_is_selected_shows_its_fields(page: SketchPage) -> None:
    for selection in EVERYTHING:
        page.workplace.selection.select(selection)
        shown = [kind for kind, panel in page.column.panels.items() if panel.isVisible()]
        assert shown == [selection.kind]


def test_everything_can_be_selected_from_the_list(page: SketchPage) -> None:
    chooser = page.column.chooser
    titles = [chooser.itemText(row) for row in range(chooser.count())]
    assert titles == [
        "Space",
        "Lamp 1: Panel",
        "Wall 1",
        "Wall 2",
        "Wall 3",
        "Wall 4",
        "Canopy, day and target",
        "Ceiling",
        "Floor",
    ]
    for row in range(chooser.count()):
        chooser.setCurrentIndex(row)
        chooser.activated.emit(row)
        assert chooser.currentIndex() == row
    assert page.workplace.selection.current.kind is PlaceKind.FLOOR


def test_a_typed_height_is_one_named_step_and_can_be_undone(qtbot: QtBot, page: SketchPage) -> None:
    document = page.workplace.document
    page.workplace.selection.select(Place(PlaceKind.LAMP, 0))
    enter(qtbot, lamp_panel(page).height_field.box, "18 in")
    assert document.undo_stack.undoText() == "Set lamp height"
    assert document.plan.lamps[0].hanging_height == pytest.approx(0.4572)
    document.undo_stack.undo()
    assert document.plan.lamps[0].hanging_height == 0.5
    assert lamp_panel(page).height_field.box.lineEdit().text() == "50 cm"


def test_fields_follow_what_the_hand_does_in_the_drawing(qtbot: QtBot, page: SketchPage) -> None:
    document = page.workplace.document
    page.workplace.selection.select(Place(PlaceKind.LAMP, 0))
    document.apply(edits.change_lamp(document.plan, 0, x=0.25), "Move lamp", "drag")
    # With the next frame, and at the latest when the hand lets go.
    line = lamp_panel(page).x_field.box.lineEdit()
    qtbot.waitUntil(lambda: line.text() == "25 cm", timeout=2000)
    document.apply(edits.change_lamp(document.plan, 0, x=0.3), "Move lamp", "drag")
    document.end_gesture()
    assert line.text() == "30 cm"


def test_undoing_a_corner_whose_wall_is_selected_shows_the_space(page: SketchPage) -> None:
    work = page.workplace
    column = page.column.space_fields
    work.document.apply(edits.add_corner(work.document.plan, 3, (0.0, 0.5)), "Add corner")
    assert [box.accessibleName() for box in column.outline.findChildren(QuantityBox)][-1] == (
        "Length of wall 5"
    )
    work.selection.select(Place(PlaceKind.WALL, 4))
    work.document.undo_stack.undo()
    assert work.selection.current == Place()
    work.document.undo_stack.redo()
    work.selection.select(Place(PlaceKind.WALL, 4))
    work.selection.select(Place())
    assert "Length of wall 5" in [
        box.accessibleName() for box in column.outline.findChildren(QuantityBox)
    ]


def test_a_removed_lamp_gives_way_to_the_space(page: SketchPage) -> None:
    document = page.workplace.document
    page.workplace.selection.select(Place(PlaceKind.LAMP, 0))
    document.apply(edits.remove_lamp(document.plan, 0), "Remove lamp")
    assert page.workplace.selection.current == Place()
    assert page.column.panels[PlaceKind.SPACE].isVisible()


def test_the_key_l_hangs_a_lamp_and_text_fields_keep_their_l(
    qtbot: QtBot, page: SketchPage
) -> None:
    page.plan_view.setFocus()
    qtbot.keyClick(page.plan_view, Qt.Key.Key_L)
    assert len(page.workplace.document.plan.lamps) == 2
    assert page.workplace.selection.current == Place(PlaceKind.LAMP, 1)
    page.workplace.selection.select(Place())
    space = page.column.panels[PlaceKind.SPACE]
    assert isinstance(space, SpaceFields)
    space.name_line.setFocus()
    qtbot.keyClicks(space.name_line, "l")
    assert len(page.workplace.document.plan.lamps) == 2


@pytest.mark.parametrize("selection", EVERYTHING, ids=lambda s: s.kind.value)
def test_every_field_has_a_name_for_screen_readers(page: SketchPage, selection: Place) -> None:
    page.workplace.selection.select(selection)
    kinds = (QuantityBox, QComboBox, QAbstractButton, QLineEdit)
    nameless = [
        widget
        for widget in visible(page, kinds)
        if not widget.accessibleName()
        and not isinstance(widget.parent(), QuantityBox | QComboBox)
        and not (isinstance(widget, QAbstractButton) and widget.text())
    ]
    assert nameless == []


@pytest.mark.parametrize("selection", EVERYTHING, ids=lambda s: s.kind.value)
def test_tab_goes_down_the_column(page: SketchPage, selection: Place) -> None:
    page.workplace.selection.select(selection)
    space = page.column.panels[PlaceKind.SPACE]
    assert isinstance(space, SpaceFields)
    space.outline_toggle.setChecked(True)
    space.shape_buttons[1].click()
    page.column.chooser.setFocus()
    walked: list[QWidget] = []
    widget = page.column.chooser.nextInFocusChain()
    while widget is not None and widget is not page.column.chooser:
        tab = bool(widget.focusPolicy() & Qt.FocusPolicy.TabFocus)
        if tab and widget.isVisible() and widget.isEnabled() and widget.focusProxy() is None:
            walked.append(widget)
        widget = widget.nextInFocusChain()
    inside = [w for w in walked if page.column.panel.isAncestorOf(w)]
    assert len(inside) >= 2
    first = walked.index(inside[0])
    assert walked[first : first + len(inside)] == inside, "the panel is left and entered again"
    heights = [w.mapTo(page.column.panel, QPoint(0, w.height() // 2)).y() for w in inside]
    jumps = [b - a for a, b in pairwise(heights)]
    assert min(jumps) >= -8, "the focus jumps up"


@pytest.mark.parametrize("size", [(1280, 720), (1920, 980)])
@pytest.mark.parametrize("selection", EVERYTHING, ids=lambda s: s.kind.value)
def test_nothing_is_wider_than_the_column(
    qtbot: QtBot, tmp_path: Path, size: tuple[int, int], selection: Place
) -> None:
    page = make_page(qtbot, small_plan(), tmp_path, size)
    page.workplace.selection.select(selection)
    space = page.column.panels[PlaceKind.SPACE]
    assert isinstance(space, SpaceFields)
    space.outline_toggle.setChecked(True)
    for _ in range(3):
        QApplication.processEvents()
    edge = page.column.width()
    for widget in visible(page, (QWidget,)):
        right = widget.mapTo(page.column, QPoint(widget.width(), 0)).x()
        assert right <= edge, f"{widget} {widget.accessibleName()} ends at {right} of {edge}"


def test_colours_fit_the_column(qtbot: QtBot, tmp_path: Path) -> None:
    page = make_page(qtbot, small_plan(), tmp_path, (1280, 720))
    for selection in (Place(PlaceKind.LAMP, 0), Place(PlaceKind.WALL, 0)):
        page.workplace.selection.select(selection)
        panel: Any = page.column.panel
        if selection.kind is PlaceKind.LAMP:
            shown = panel.kind_fields.light_fields
            page.workplace.spectra.choose(
                small_plan().lamps[0].model.key, shown._spectra.spectra[3]
            )
            shown.colour_switch.click()
        else:
            panel.details.copy_button.click()
            panel.details.bands_button.click()
        for _ in range(3):
            QApplication.processEvents()
        edge = page.column.width()
        for widget in visible(page, (QWidget,)):
            right = widget.mapTo(page.column, QPoint(widget.width(), 0)).x()
            assert right <= edge, f"{widget} {widget.accessibleName()} ends at {right} of {edge}"


def test_the_drawing_keeps_half_the_width(page: SketchPage) -> None:
    assert page.plan_view.width() >= 640
    assert page.plan_view.width() > 2 * page.elevation.width()


def test_another_unit_shows_everywhere_and_changes_nothing(page: SketchPage) -> None:
    before = page.workplace.document.plan
    for selection in EVERYTHING:
        page.workplace.selection.select(selection)
        page.workplace.display.update(unit=LengthUnit.INCH)
        boxes = [w for w in visible(page, (QuantityBox,)) if isinstance(w, QuantityBox)]
        lengths = [box for box in boxes if box.quantity.is_length]
        assert all(box.lineEdit().text().endswith(" in") for box in lengths)
        page.workplace.display.update(unit=LengthUnit.CM)
    assert page.workplace.document.plan is before
    assert page.workplace.document.undo_stack.count() == 0


def test_walking_through_all_fields_changes_nothing(qtbot: QtBot, page: SketchPage) -> None:
    before = page.workplace.document.plan
    for selection in EVERYTHING:
        page.workplace.selection.select(selection)
        for box in visible(page, (QuantityBox, QLineEdit)):
            box.setFocus()
            qtbot.keyClick(box, Qt.Key.Key_Return)
    assert page.workplace.document.plan is before
    assert page.workplace.document.undo_stack.count() == 0


def test_stepping_tells_that_something_is_moving(qtbot: QtBot, page: SketchPage) -> None:
    told: list[bool] = []
    page.dragging_changed.connect(told.append)
    page.workplace.selection.select(Place(PlaceKind.LAMP, 0))
    box = lamp_panel(page).height_field.box
    box.setFocus()
    qtbot.keyClick(box, Qt.Key.Key_Up)
    qtbot.keyClick(box, Qt.Key.Key_Up)
    assert told == [True]
    lamp_panel(page).end_burst()
    assert told == [True, False]
    assert page.workplace.document.undo_stack.count() == 1


def test_undo_by_key_works_while_a_field_has_the_focus(qtbot: QtBot) -> None:
    window, _ = make_window(qtbot)
    with qtbot.waitActive(window):
        window.activateWindow()
    window.selection.select(Place(PlaceKind.LAMP, 0))
    panel = window.page.column.panels[PlaceKind.LAMP]
    assert isinstance(panel, LampFields)
    box = panel.height_field.box
    enter(qtbot, box, "40")
    assert window.document.plan.lamps[0].hanging_height == pytest.approx(0.4)
    qtbot.keyClick(box, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert window.document.plan.lamps[0].hanging_height == 0.5
    assert box.lineEdit().text() == "50 cm"


def test_enter_on_the_drawing_goes_to_the_first_field(qtbot: QtBot, page: SketchPage) -> None:
    page.workplace.selection.select(Place(PlaceKind.LAMP, 0))
    page.plan_view.setFocus()
    page.plan_view.fields_requested.emit()
    assert QApplication.focusWidget() is lamp_panel(page).chooser


def test_fields_below_the_edge_scroll_into_view(qtbot: QtBot, page: SketchPage) -> None:
    page.workplace.selection.select(Place(PlaceKind.LAMP, 0))
    page.resize(1280, 600)
    page.details.photons_fold.setChecked(True)
    QApplication.processEvents()
    box = lamp_panel(page).kind_fields.width_field.box
    assert box.visibleRegion().isEmpty()
    box.setFocus()
    qtbot.waitUntil(lambda: not box.visibleRegion().isEmpty(), timeout=1000)


def test_delete_in_a_field_deletes_text_and_no_lamp(qtbot: QtBot) -> None:
    window, _ = make_window(qtbot)
    with qtbot.waitActive(window):
        window.activateWindow()
    window.selection.select(Place(PlaceKind.LAMP, 0))
    panel = window.page.column.panels[PlaceKind.LAMP]
    assert isinstance(panel, LampFields)
    box = panel.height_field.box
    box.setFocus()
    box.selectAll()
    qtbot.keyClick(box, Qt.Key.Key_Delete)
    assert box.lineEdit().text() == ""
    assert len(window.document.plan.lamps) == 1


def test_one_lamp_too_many_by_key_is_explained(qtbot: QtBot, page: SketchPage) -> None:
    document = page.workplace.document
    document.apply(edits.changed(document.plan, lamps=document.plan.lamps * 24), "Add lamps")
    page.plan_view.setFocus()
    qtbot.keyClick(page.plan_view, Qt.Key.Key_L)
    assert len(document.plan.lamps) == 24
    assert "there may be at most 24" in page.strip.failure.text()


def test_a_lamp_is_tilted_beside_its_rotation(qtbot: QtBot, page: SketchPage) -> None:
    page.workplace.selection.select(Place(PlaceKind.LAMP, 0))
    box = lamp_panel(page).tilt_field.box
    enter(qtbot, box, "20")
    assert page.workplace.document.plan.lamps[0].tilt_deg == 20.0
    assert page.workplace.document.undo_stack.undoText() == "Tilt lamp"
    page.workplace.document.undo_stack.undo()
    assert page.workplace.document.plan.lamps[0].tilt_deg == 0.0
