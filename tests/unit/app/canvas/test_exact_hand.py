"""Exactness under the hand: numbers typed while dragging, guides, the measuring line, zoom."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtTest import QTest

from planner.app.canvas.items import Item, Part
from planner.plan.lamp import Lamp
from planner.units import LengthUnit
from tests.unit.app.canvas.scenes import L_SHAPE, PANEL, light_of, plan_of

MakeDesk = Callable[..., Any]
Key = Qt.Key


def type_(desk: Any, text: str) -> None:
    QTest.keyClicks(desk.view, text)


def begin(desk: Any, start: tuple[float, float], end: tuple[float, float]) -> None:
    desk.hand.press(*start)
    desk.hand.move(*end)


def test_both_places_of_a_lamp_are_typed(plan_desk: MakeDesk) -> None:
    desk = plan_desk()
    begin(desk, (0.5, 0.3), (0.6, 0.4))
    type_(desk, "33,5")
    QTest.keyClick(desk.view, Key.Key_Tab)
    type_(desk, "60")
    desk.view.grab()
    QTest.keyClick(desk.view, Key.Key_Return)
    assert (desk.plan.lamps[0].x, desk.plan.lamps[0].y) == (0.335, 0.6)
    assert not desk.view.dragging
    assert desk.steps == ["Move lamp"]
    desk.hand.move(0.8, 0.8)
    desk.hand.release(0.8, 0.8)
    assert desk.plan.lamps[0].x == 0.335  # the drag has ended


def test_what_is_not_typed_follows_the_hand(plan_desk: MakeDesk) -> None:
    desk = plan_desk()
    begin(desk, (0.5, 0.3), (0.6, 0.4))
    type_(desk, "20")
    desk.hand.move(0.9, 0.7)
    desk.hand.release(0.9, 0.7)
    assert desk.plan.lamps[0].x == 0.2
    assert desk.plan.lamps[0].y == pytest.approx(0.7, abs=0.005)


def test_inches_and_units_are_read_as_in_a_field(plan_desk: MakeDesk) -> None:
    desk = plan_desk()
    desk.display.update(unit=LengthUnit.INCH)
    begin(desk, (0.5, 0.3), (0.6, 0.4))
    type_(desk, "10")
    QTest.keyClick(desk.view, Key.Key_Return)
    assert desk.plan.lamps[0].x == pytest.approx(0.254)
    begin(desk, (0.254, 0.4), (0.3, 0.4))
    type_(desk, "400 mm")
    QTest.keyClick(desk.view, Key.Key_Return)
    assert desk.plan.lamps[0].x == pytest.approx(0.4)


def test_a_length_is_typed_while_a_wall_is_dragged(plan_desk: MakeDesk) -> None:
    desk = plan_desk()
    begin(desk, (1.0, 0.3), (1.1, 0.3))
    type_(desk, "120.5")
    QTest.keyClick(desk.view, Key.Key_Return)
    assert desk.plan.space.footprint == ((0, 0), (1.205, 0), (1.205, 1), (0, 1))
    begin(desk, (0.0, 0.3), (0.1, 0.3))
    type_(desk, "100")
    QTest.keyClick(desk.view, Key.Key_Return)
    assert desk.plan.space.footprint == ((0.205, 0), (1.205, 0), (1.205, 1), (0.205, 1))


def test_a_corner_and_a_direction_are_typed(plan_desk: MakeDesk) -> None:
    desk = plan_desk()
    begin(desk, (1.0, 1.0), (1.1, 1.1))
    type_(desk, "90")
    QTest.keyClick(desk.view, Key.Key_Tab)
    type_(desk, "110")
    QTest.keyClick(desk.view, Key.Key_Return)
    assert desk.plan.space.footprint[2] == (0.9, 1.1)
    desk.hand.click(0.5, 0.3)
    handle = desk.view.viewport.to_world(_handle(desk))
    begin(desk, handle, (0.5, 0.7))
    type_(desk, "37")
    QTest.keyClick(desk.view, Key.Key_Return)
    assert desk.plan.lamps[0].rotation_deg == 37


def test_while_a_hand_drags_the_foot_tells_that_numbers_can_be_typed(
    plan_desk: MakeDesk, side_desk: MakeDesk
) -> None:
    desk = plan_desk()
    begin(desk, (1.0, 1.0), (1.1, 1.1))
    assert desk.view.foot_words().endswith("; type a number, Tab for the next")
    QTest.keyClick(desk.view, Key.Key_Escape)
    assert "type" not in desk.view.foot_words()
    side = side_desk()
    begin(side, (0.5, 0.655), (0.5, 0.8))
    assert side.view.foot_words().endswith("type a number")


def _handle(desk: Any) -> QPointF:
    from planner.app.canvas.items import turn_handle

    return turn_handle(desk.plan.lamps[0], desk.view.viewport)


def test_a_height_is_typed_from_the_side(side_desk: MakeDesk) -> None:
    desk = side_desk()
    begin(desk, (0.5, 0.655), (0.5, 0.8))
    type_(desk, "72")
    desk.view.grab()
    QTest.keyClick(desk.view, Key.Key_Return)
    assert desk.plan.lamps[0].hanging_height == pytest.approx(0.72)
    assert desk.steps == ["Raise lamp"]


def test_what_is_out_of_bounds_is_refused_and_the_drag_goes_on(side_desk: MakeDesk) -> None:
    desk = side_desk()
    begin(desk, (0.5, 0.655), (0.5, 0.8))
    type_(desk, "300")
    QTest.keyClick(desk.view, Key.Key_Return)
    assert desk.view.dragging
    assert "at most 180 cm" in desk.view.notice  # the ceiling at 2 m less the canopy at 20 cm
    QTest.keyClick(desk.view, Key.Key_Backspace)
    assert desk.plan.lamps[0].hanging_height == pytest.approx(0.3)
    QTest.keyClick(desk.view, Key.Key_Escape)
    assert desk.plan.lamps[0].hanging_height == 0.45
    assert desk.steps == []


def test_letters_without_a_number_do_nothing_while_dragging(plan_desk: MakeDesk) -> None:
    desk = plan_desk()
    begin(desk, (0.5, 0.3), (0.6, 0.4))
    before = desk.plan
    type_(desk, "rm")
    assert desk.plan == before
    assert desk.view.dragging
    desk.hand.release(0.6, 0.4)


# -- guides ----------------------------------------------------------------------------


def test_a_lamp_is_drawn_to_the_middle_and_the_guide_goes_with_it(plan_desk: MakeDesk) -> None:
    """6 px are 12 mm: 8 mm beside the middle is near enough; a grid of 1 cm alone gives 0.51."""
    desk = plan_desk()
    begin(desk, (0.5, 0.3), (0.2, 0.3))
    desk.hand.move(0.508, 0.66)
    assert desk.plan.lamps[0].x == 0.5
    assert desk.view._guides
    desk.view.grab()
    desk.hand.move(0.63, 0.66)
    assert desk.plan.lamps[0].x == 0.63
    assert not desk.view._guides
    desk.hand.release(0.63, 0.66)
    assert not desk.view._guides


def test_the_free_hand_is_drawn_to_nothing(plan_desk: MakeDesk) -> None:
    desk = plan_desk()
    desk.hand.drag((0.2 + 0.3, 0.3), (0.507, 0.66), Qt.KeyboardModifier.ControlModifier)
    assert desk.plan.lamps[0].x != 0.5


def test_a_second_lamp_lines_up_with_the_first(plan_desk: MakeDesk) -> None:
    lamps = (*plan_of().lamps, Lamp(model=PANEL, x=0.2, y=0.8, hanging_height=0.4))
    desk = plan_desk(plan_of(lamps=lamps))
    begin(desk, (0.2, 0.8), (0.3, 0.8))
    desk.hand.move(0.49, 0.79)
    assert desk.plan.lamps[1].x == 0.5
    desk.hand.release(0.49, 0.79)


# -- measuring -------------------------------------------------------------------------


def test_a_length_is_measured_from_corner_to_lamp(plan_desk: MakeDesk) -> None:
    """From the corner at (0, 0) to the middle at (50, 30): 58.3 cm."""
    desk = plan_desk()
    before = desk.plan
    type_(desk, "m")
    assert desk.view.measuring
    desk.hand.drag((0.01, 0.005), (0.497, 0.304))
    assert desk.view.tape == ((0.0, 0.0), (0.5, 0.3))
    assert desk.view.status() == "Measured: 58.3 cm (50 cm by 30 cm)"
    assert "58.3 cm" in desk.view.accessibleDescription()
    desk.display.update(unit=LengthUnit.INCH)
    assert desk.view.status() == "Measured: 22.96 in (19.69 in by 11.81 in)"
    desk.view.grab()
    assert desk.plan == before
    assert desk.steps == []
    QTest.keyClick(desk.view, Key.Key_Escape)
    assert not desk.view.measuring
    assert desk.view.tape is None


def test_the_side_view_measures_heights(side_desk: MakeDesk) -> None:
    """From the canopy at 20 cm up to the ceiling at 200 cm."""
    desk = side_desk()
    desk.view.measure(True)
    desk.hand.drag((0.3, 0.21), (0.3, 1.99))
    assert desk.view.measure_words() == "Measured: 180 cm"
    desk.view.grab()


# -- zoom ------------------------------------------------------------------------------


@pytest.mark.parametrize("make", ["plan_desk", "side_desk"])
def test_keys_zoom_within_limits(make: str, request: pytest.FixtureRequest) -> None:
    desk = request.getfixturevalue(make)()
    assert desk.view.zoom_percent == 100
    type_(desk, "+")
    assert desk.view.zoom_percent == 125
    type_(desk, "+" * 40)
    assert desk.view.zoom_percent == 1600
    type_(desk, "-" * 60)
    assert desk.view.zoom_percent == 25
    type_(desk, "0")
    assert desk.view.zoom_percent == 100


def test_the_space_never_leaves_the_sight(plan_desk: MakeDesk) -> None:
    desk = plan_desk()
    desk.view.pan(QPointF(9000, -9000))
    drawn = desk.view.viewport.to_rect(desk.view.bounds())
    assert drawn.left() < desk.view.width()
    assert drawn.bottom() > 0


def test_the_control_shows_the_zoom_and_fits(plan_desk: MakeDesk) -> None:
    desk = plan_desk()
    control = desk.view.zoom_control
    control.in_button.click()
    assert control.fit_button.text() == "125 %"
    control.fit_button.click()
    assert control.fit_button.text() == "100 %"
    control.out_button.click()
    assert control.fit_button.text() == "80 %"


# -- menus -----------------------------------------------------------------------------


@pytest.mark.parametrize("part", list(Part))
@pytest.mark.parametrize("make", ["plan_desk", "side_desk"])
def test_everything_has_a_menu_and_its_steps_make_whole_plans(
    make: str, part: Part, request: pytest.FixtureRequest
) -> None:
    """Each edit of the menu is made once from the same plan and undone."""
    desk = request.getfixturevalue(make)(plan_of(L_SHAPE))
    item = Item(part, 2) if part in {Part.WALL, Part.CORNER, Part.BAND_EDGE} else Item(part)
    if not item.fits(desk.plan):
        return
    before = desk.plan
    for k, choice in enumerate(desk.view.choices_of(item, (0.9, 0.5))):
        desk.view.make(choice)
        assert desk.plan != before, choice.text
        assert len(desk.steps) == 1, (k, choice.text)
        desk.document.undo_stack.undo()
    menu = desk.view.menu_for(item, (0.9, 0.5))
    assert menu.actions()
    menu.deleteLater()


def test_the_bands_of_a_wall_are_named_on_the_side_view(
    side_desk: MakeDesk, monkeypatch: pytest.MonkeyPatch
) -> None:
    from planner.app.canvas import elevation_layer

    said: list[str] = []
    monkeypatch.setattr(
        elevation_layer, "draw_plate_text", lambda _p, _at, text, *_rest: said.append(text)
    )
    desk = side_desk()
    desk.view.set_estimate(light_of(desk.plan))
    desk.view.grab()
    assert [text for text in said if text.startswith("Band")] == [
        "Band 1: White board", "Band 2: Foil",
    ]  # fmt: skip


@pytest.mark.parametrize("end", [(90_000.0, 5.0), (0.0, 90_000.0), (60_000.0, 50_000.0)])
def test_zoomed_in_only_the_texture_in_sight_is_made(end: tuple[float, float]) -> None:
    """Every 9 px one: a sight of 600 px by 400 holds 100 at most, not ten thousand."""
    from planner.app.canvas.plan_layers import texture

    start, seen = QPointF(0.0, 5.0), QRectF(0, 0, 600, 400)
    dots, dashes = texture(start, QPointF(*end), 0.5, seen)
    assert 0 < len(dots) + len(dashes) <= 100
    every, _ = texture(start, QPointF(*end), 0.5)
    assert {dot.toTuple() for dot in every if seen.contains(dot)} <= {dot.toTuple() for dot in dots}


def test_a_full_space_is_searched_quickly(monkeypatch: pytest.MonkeyPatch) -> None:
    """Outlines are compared closely only where they are near: counted, not timed."""
    from planner.plan import additions
    from planner.plan.space import Obstacle, outlines_overlap

    spots = [(0.1 + 0.16 * (k % 6), 0.1 + 0.25 * (k // 6)) for k in range(23)]
    pots = tuple(
        Obstacle(name="Pot", x=x, y=y, underside=0, length=0.1, width=0.1, thickness=0.3)
        for x, y in spots
    )
    plan = plan_of(obstacles=pots, lamps=())
    looked = 0

    def counted(*both: Any) -> bool:
        nonlocal looked
        looked += 1
        return outlines_overlap(*both)

    monkeypatch.setattr(additions, "outlines_overlap", counted)
    additions.new_obstacle(plan, additions.SHAPES[2])
    # 49 x 49 places, 23 pots and 6 sizes would be 331,000
    assert looked < 20_000
