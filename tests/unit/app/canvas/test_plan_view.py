from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QColor, QContextMenuEvent, QImage, QPalette, QWheelEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from planner.app.canvas.items import Item, Part, turn_handle
from planner.app.canvas.plan_view import EMPTY_HINT
from planner.plan import edits
from planner.plan.place import Place, PlaceKind
from planner.units import LengthUnit
from tests.unit.app.canvas.scenes import L_SHAPE, PANEL, light_of, plan_of

Key = Qt.Key
CTRL = Qt.KeyboardModifier.ControlModifier
SHIFT = Qt.KeyboardModifier.ShiftModifier
MakeDesk = Callable[..., Any]


def test_clicks_select_what_they_hit(plan_desk: MakeDesk) -> None:
    desk = plan_desk()
    desk.hand.click(1.0, 0.3)
    assert desk.selection.current == Place(PlaceKind.WALL, 1)
    desk.hand.click(0.55, 0.33)
    assert desk.selection.current == Place(PlaceKind.LAMP, 0)
    desk.hand.click(0.2, 0.8)
    assert desk.selection.current == Place(PlaceKind.CANOPY)
    desk.hand.click(-0.09, 0.2)
    assert desk.selection.current == Place()
    assert desk.steps == []


def test_a_click_with_a_trembling_hand_moves_nothing(plan_desk: MakeDesk) -> None:
    desk = plan_desk()
    before = desk.plan
    desk.hand.press(0.5, 0.3)
    desk.hand.move_to(QPointF(desk.hand.pixel(0.5, 0.3)) + QPointF(1, 1))
    desk.hand.release(0.5, 0.3)
    assert desk.plan is before


def test_a_band_stays_selected_when_its_wall_is_clicked_again(plan_desk: MakeDesk) -> None:
    desk = plan_desk()
    desk.selection.select(Place(PlaceKind.WALL, 2, 1))
    desk.hand.click(0.3, 1.0)
    assert desk.selection.current == Place(PlaceKind.WALL, 2, 1)


def test_dragging_tells_when_it_begins_and_ends(plan_desk: MakeDesk) -> None:
    desk = plan_desk()
    said: list[bool] = []
    desk.view.dragging_changed.connect(said.append)
    desk.hand.drag((0.5, 0.3), (0.6, 0.4))
    assert said == [True, False]


def test_a_drag_that_would_fold_the_outline_stops_and_says_why(plan_desk: MakeDesk) -> None:
    desk = plan_desk()
    desk.hand.press(0.0, 0.0)
    desk.hand.move(0.1, 0.1)
    desk.hand.move(1.3, 0.5)
    assert desk.plan.space.footprint[0] == (0.1, 0.1)
    assert desk.view.notice == (
        "Walls 2 and 4 of the footprint cross or touch; the outline must not cut itself."
    )
    desk.hand.move(0.2, 0.1)
    assert desk.view.notice == ""
    desk.hand.release(0.2, 0.1)
    assert desk.plan.space.footprint[0] == (0.2, 0.1)


def test_undo_under_the_hand_ends_the_drag(plan_desk: MakeDesk) -> None:
    desk = plan_desk()
    before = desk.plan
    desk.hand.press(0.5, 0.3)
    desk.hand.move(0.6, 0.4)
    desk.document.undo_stack.undo()
    assert not desk.view.dragging
    desk.hand.move(0.7, 0.4)
    assert desk.plan == before


def test_free_hand_with_ctrl(plan_desk: MakeDesk) -> None:
    desk = plan_desk()
    step = 1 / desk.view.viewport.scale
    desk.hand.drag((0.5, 0.3), (0.6 + 2.4 * step, 0.4), CTRL)
    lamp = desk.plan.lamps[0]
    assert lamp.x == pytest.approx(0.6 + 2.4 * step, abs=step)
    assert lamp.x != round(lamp.x, 2)


def test_turning_by_the_handle(plan_desk: MakeDesk) -> None:
    desk = plan_desk()
    desk.hand.click(0.5, 0.3)
    at = desk.view.viewport.to_world(turn_handle(desk.plan.lamps[0], desk.view.viewport))
    desk.hand.drag(at, (0.5, 0.7))
    assert desk.plan.lamps[0].rotation_deg == 90.0
    assert desk.steps == ["Rotate lamp"]
    at = desk.view.viewport.to_world(turn_handle(desk.plan.lamps[0], desk.view.viewport))
    desk.hand.drag(at, (0.9, 0.42), SHIFT)
    assert desk.plan.lamps[0].rotation_deg == 17.0


def test_arrows_in_one_burst_make_one_step(plan_desk: MakeDesk, qtbot: QtBot) -> None:
    desk = plan_desk()
    desk.hand.click(0.5, 0.3)
    for _ in range(3):
        QTest.keyClick(desk.view, Key.Key_Right)
    QTest.keyClick(desk.view, Key.Key_Up, SHIFT)
    lamp = desk.plan.lamps[0]
    assert (lamp.x, lamp.y) == (pytest.approx(0.53), pytest.approx(0.40))
    assert desk.steps == ["Move lamp"]
    desk.view._burst.setInterval(1)
    QTest.keyClick(desk.view, Key.Key_Left)
    qtbot.waitUntil(lambda: not desk.view._burst.isActive(), timeout=1000)
    QTest.keyClick(desk.view, Key.Key_Left)
    assert desk.steps == ["Move lamp", "Move lamp"]


def test_a_burst_ends_when_another_item_is_taken(plan_desk: MakeDesk) -> None:
    desk = plan_desk()
    desk.hand.click(0.5, 0.3)
    QTest.keyClick(desk.view, Key.Key_Right)
    desk.hand.click(1.0, 0.2)
    QTest.keyClick(desk.view, Key.Key_Right)
    desk.hand.click(0.51, 0.3)
    QTest.keyClick(desk.view, Key.Key_Right)
    assert desk.steps == ["Move lamp", "Move wall", "Move lamp"]


def test_arrows_step_half_an_inch(plan_desk: MakeDesk) -> None:
    desk = plan_desk()
    desk.display.update(unit=LengthUnit.INCH)
    desk.hand.click(0.5, 0.3)
    QTest.keyClick(desk.view, Key.Key_Left)
    assert desk.plan.lamps[0].x == pytest.approx(0.5 - 0.0127)


def test_tab_goes_through_everything_and_back(plan_desk: MakeDesk) -> None:
    desk = plan_desk()
    seen = []
    for _ in range(10):
        QTest.keyClick(desk.view, Key.Key_Tab)
        seen.append(desk.view.focused)
    assert [item.part for item in seen] == (
        [Part.LAMP] + [Part.WALL] * 4 + [Part.CORNER] * 4 + [Part.SECTION]
    )
    QTest.keyClick(desk.view, Key.Key_Backtab)
    assert desk.view.focused == Item(Part.CORNER, 3)


def test_selection_from_elsewhere_moves_the_keys_too(plan_desk: MakeDesk) -> None:
    desk = plan_desk()
    desk.selection.select(Place(PlaceKind.WALL, 3))
    assert desk.view.focused == Item(Part.WALL, 3)
    desk.selection.select(Place(PlaceKind.CEILING))
    assert desk.view.focused is None


def test_keys_on_a_lamp(plan_desk: MakeDesk, qtbot: QtBot) -> None:
    desk = plan_desk()
    desk.hand.click(0.5, 0.3)
    QTest.keyClick(desk.view, Key.Key_R)
    QTest.keyClick(desk.view, Key.Key_R)
    assert desk.plan.lamps[0].rotation_deg == 30
    with qtbot.waitSignal(desk.view.fields_requested, timeout=500):
        QTest.keyClick(desk.view, Key.Key_Return)
    QTest.keyClick(desk.view, Key.Key_Delete)
    assert desk.plan.lamps == ()
    assert desk.steps == ["Rotate lamp", "Remove lamp"]
    assert desk.view.focused is None


def test_insert_and_delete_corners_by_key(plan_desk: MakeDesk) -> None:
    desk = plan_desk()
    desk.hand.click(1.0, 0.3)
    QTest.keyClick(desk.view, Key.Key_Insert)
    assert desk.plan.space.footprint[2] == (1.0, 0.5)
    assert desk.view.focused == Item(Part.CORNER, 2)
    QTest.keyClick(desk.view, Key.Key_Delete)
    assert len(desk.plan.space.footprint) == 4
    assert desk.steps == ["Add corner", "Remove corner"]


def test_a_triangle_keeps_its_corners(plan_desk: MakeDesk) -> None:
    whole = plan_of()
    triangle = edits.remove_corner(whole, 3)
    desk = plan_desk(triangle)
    desk.view.choose(Item(Part.CORNER, 0))
    QTest.keyClick(desk.view, Key.Key_Delete)
    assert desk.plan == triangle
    assert desk.view.notice == "A footprint needs at least three corners."


def test_the_section_is_dragged_but_never_undone(plan_desk: MakeDesk) -> None:
    desk = plan_desk()
    told: list[Any] = []
    desk.view.section_changed.connect(told.append)
    assert desk.view.section == ((0.0, 0.5), (1.0, 0.5))
    desk.hand.drag((0.9, 0.5), (0.9, 0.7))
    assert desk.view.section == ((0.0, 0.7), (1.0, 0.7))
    desk.hand.drag((1.0, 0.7), (0.8, 0.9))
    assert desk.view.section == ((0.0, 0.7), (0.8, 0.9))
    assert told[-1] == desk.view.section
    assert desk.steps == []


def test_escape_puts_the_section_back(plan_desk: MakeDesk) -> None:
    desk = plan_desk()
    desk.hand.press(0.9, 0.5)
    desk.hand.move(0.9, 0.7)
    QTest.keyClick(desk.view, Key.Key_Escape)
    assert desk.view.section == ((0.0, 0.5), (1.0, 0.5))


def test_section_follows_arrow_keys(plan_desk: MakeDesk) -> None:
    desk = plan_desk()
    desk.view.choose(Item(Part.SECTION))
    QTest.keyClick(desk.view, Key.Key_Up, SHIFT)
    (_, ya), (_, yb) = desk.view.section
    assert (ya, yb) == (pytest.approx(0.6), pytest.approx(0.6))


def test_reading_under_the_pointer(plan_desk: MakeDesk) -> None:
    desk = plan_desk()
    told: list[Any] = []
    desk.view.hovered.connect(told.append)
    desk.view.set_estimate(light_of(desk.plan))
    at = desk.view.viewport.to_pixel(0.2, 0.8)
    desk.hand.move_to(at, buttons=Qt.MouseButton.NoButton)
    x, y, ppfd = told[-1]
    assert (x, y) == (pytest.approx(0.2), pytest.approx(0.8))
    assert ppfd == pytest.approx(160, abs=0.5)
    assert desk.view.readout() == "160 µmol m⁻² s⁻¹ at x 20, y 80 cm"
    desk.display.update(unit=LengthUnit.INCH)
    assert desk.view.readout() == "160 µmol m⁻² s⁻¹ at x 7.87, y 31.5 in"
    desk.hand.move_to(desk.view.viewport.to_pixel(1.1, 0.8), buttons=Qt.MouseButton.NoButton)
    assert told[-1][2] is None
    assert desk.view.readout() == "x 43.31, y 31.5 in"


def test_the_line_below_tells_where_the_lamp_in_hand_is(plan_desk: MakeDesk) -> None:
    desk = plan_desk()
    desk.hand.press(0.5, 0.3)
    desk.hand.move(0.7, 0.4)
    assert desk.view.status() == "Lamp 1 at x 70 cm, y 40 cm, turned by 0°"
    desk.hand.release(0.7, 0.4)
    assert desk.view.status() == "x 70, y 40 cm"


def test_wheel_zooms_about_the_pointer_and_fit_comes_back(plan_desk: MakeDesk) -> None:
    desk = plan_desk()
    fitted = desk.view.viewport
    at = QPointF(200, 200)
    world = fitted.to_world(at)
    event = QWheelEvent(
        at,
        QPointF(desk.view.mapToGlobal(at)),
        QPoint(),
        QPoint(0, 240),
        Qt.MouseButton.NoButton,
        Qt.KeyboardModifier.NoModifier,
        Qt.ScrollPhase.NoScrollPhase,
        False,
    )
    QApplication.sendEvent(desk.view, event)
    assert desk.view.viewport.scale > fitted.scale * 1.2
    assert desk.view.viewport.to_world(at) == pytest.approx(world)
    QTest.keyClick(desk.view, Key.Key_Home)
    assert desk.view.viewport == fitted


def test_middle_button_and_space_pan(plan_desk: MakeDesk) -> None:
    desk = plan_desk()
    left = desk.view.viewport.left
    QTest.mousePress(desk.view, Qt.MouseButton.MiddleButton, pos=QPoint(300, 300))
    desk.hand.move_to(QPointF(340, 300), buttons=Qt.MouseButton.MiddleButton)
    QTest.mouseRelease(desk.view, Qt.MouseButton.MiddleButton, pos=QPoint(340, 300))
    assert desk.view.viewport.left == pytest.approx(left + 40)
    QTest.keyPress(desk.view, Key.Key_Space)
    QTest.mousePress(desk.view, Qt.MouseButton.LeftButton, pos=QPoint(300, 300))
    desk.hand.move_to(QPointF(290, 300))
    QTest.mouseRelease(desk.view, Qt.MouseButton.LeftButton, pos=QPoint(290, 300))
    QTest.keyRelease(desk.view, Key.Key_Space)
    assert desk.view.viewport.left == pytest.approx(left + 30)
    assert desk.steps == []


def test_a_space_that_outgrows_the_drawing_is_fitted_again(plan_desk: MakeDesk) -> None:
    desk = plan_desk()
    scale = desk.view.viewport.scale
    desk.document.apply(edits.set_size(desk.plan, 2.0, 2.0), "Resize")
    assert desk.view.viewport.scale == pytest.approx(scale / 2)


def test_levels_follow_the_map(plan_desk: MakeDesk) -> None:
    desk = plan_desk()
    told: list[Any] = []
    desk.view.levels_changed.connect(told.append)
    desk.view.set_estimate(light_of(desk.plan))  # up to 246
    assert desk.view.levels == (0.0, 250.0)
    assert told == [(0.0, 250.0)]
    assert desk.view.light_style().band == (100, 200)


def test_the_menu_offers_what_the_item_allows(plan_desk: MakeDesk) -> None:
    desk = plan_desk()
    menu = desk.view.menu_for(Item(Part.WALL, 0), (0.4, 0.0))
    texts = [action.text() for action in menu.actions() if not action.isSeparator()]
    assert texts == ["Add corner here", "Make this wall the door", "Measure", "Fit drawing"]
    menu.actions()[0].trigger()
    assert desk.plan.space.footprint[1] == (0.4, 0.0)
    menu.deleteLater()


def test_the_menu_key_opens_the_menu_of_the_item_in_hand(
    plan_desk: MakeDesk, monkeypatch: pytest.MonkeyPatch
) -> None:
    desk = plan_desk()
    desk.view.choose(Item(Part.LAMP, 0))
    asked: list[Item] = []
    whole = desk.view.menu_for

    def noted(item: Item, at: tuple[float, float]) -> Any:
        asked.append(item)
        return whole(item, at)

    monkeypatch.setattr(desk.view, "menu_for", noted)
    event = QContextMenuEvent(QContextMenuEvent.Reason.Keyboard, QPoint(1, 1), QPoint(1, 1))
    QApplication.sendEvent(desk.view, event)
    assert asked == [Item(Part.LAMP, 0)]
    popup = QApplication.activePopupWidget()
    assert popup is not None
    popup.close()


def test_the_drawing_is_told_in_words(plan_desk: MakeDesk) -> None:
    desk = plan_desk()
    desk.view.set_estimate(light_of(desk.plan))
    desk.view.choose(Item(Part.WALL, 2))
    words = desk.view.accessibleDescription()
    assert "100 cm wide and 100 cm deep" in words
    assert "Lamp 1, Invented panel, hangs at x 50 cm, y 30 cm." in words
    assert "on average 175 micromoles" in words
    assert "wall 3, 100 cm long, lined with White board, Foil" in words
    desk.display.update(unit=LengthUnit.INCH)
    assert "39.37 in wide" in desk.view.accessibleDescription()


def test_an_empty_space_says_what_to_do(
    plan_desk: MakeDesk, monkeypatch: pytest.MonkeyPatch
) -> None:
    said: list[str] = []
    monkeypatch.setattr(
        "planner.app.canvas.marks.paint_invitation",
        lambda _painter, _centre, _width, text, _ink: said.append(text),
    )
    desk = plan_desk(plan_of(lamps=()))
    desk.view.grab()
    assert said[-1] == EMPTY_HINT
    said.clear()
    desk.document.apply(edits.add_lamp(desk.plan, plan_of().lamps[0]), "Hang lamp")
    desk.view.grab()
    assert said == []


@pytest.mark.parametrize("dark", [False, True])
@pytest.mark.parametrize("size", [(480, 420), (900, 700)])
def test_light_shows_in_both_themes_at_both_sizes(
    plan_desk: MakeDesk, dark: bool, size: tuple[int, int]
) -> None:
    desk = plan_desk(plan_of(L_SHAPE), size)
    palette = QPalette()
    if dark:
        palette.setColor(QPalette.ColorRole.Base, QColor("#1e1f22"))
        palette.setColor(QPalette.ColorRole.Text, QColor("#e6e6e6"))
    desk.view.setPalette(palette)
    desk.view.set_estimate(light_of(desk.plan))
    desk.display.update(contours=False)
    image: QImage = desk.view.grab().toImage()
    spot = desk.view.viewport.to_pixel(1.1, 0.3).toPoint()
    light, ground = image.pixelColor(spot), image.pixelColor(3, 3)
    assert (light.red(), light.green()) > (120, 110)  # 225 of 250: near the yellow end
    assert light.blue() < light.red()
    assert (ground.lightness() < 60) is dark


def test_refining_keeps_the_light(plan_desk: MakeDesk) -> None:
    desk = plan_desk()
    desk.view.set_estimate(light_of(desk.plan))
    before = desk.view.grab().toImage()
    desk.view.set_refining(True)
    after = desk.view.grab().toImage()
    assert after != before
    spot = desk.view.viewport.to_pixel(0.1, 0.9).toPoint()
    assert after.pixelColor(spot) == before.pixelColor(spot)


def test_two_lamps_one_above_the_other_take_the_upper(plan_desk: MakeDesk) -> None:
    plan = plan_of()
    second = type(plan.lamps[0])(model=PANEL, x=0.5, y=0.3, hanging_height=0.3)
    desk = plan_desk(edits.add_lamp(plan, second))
    desk.hand.click(0.5, 0.3)
    assert desk.selection.current == Place(PlaceKind.LAMP, 1)


def test_what_is_taken_away_under_a_pressed_button_is_not_dragged(plan_desk: MakeDesk) -> None:
    desk = plan_desk(plan_of(lamps=()))
    desk.document.apply(edits.add_lamp(desk.plan, plan_of().lamps[0]), "Hang lamp")
    desk.hand.press(0.5, 0.3)
    desk.document.undo_stack.undo()
    desk.hand.move(0.7, 0.5)
    assert not desk.view.dragging
    desk.hand.release(0.7, 0.5)


def test_an_end_of_the_section_has_the_menu_of_the_line(plan_desk: MakeDesk) -> None:
    view = plan_desk().view
    for part in (Part.SECTION, Part.SECTION_START, Part.SECTION_END):
        menu = view.menu_for(Item(part), view.section[0])
        assert "Turn section line" in [action.text() for action in menu.actions()]
        menu.close()
