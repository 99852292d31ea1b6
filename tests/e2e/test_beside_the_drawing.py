"""What the page tells while one works: the ladder of heights, the light by way of a wall."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Any, cast

import numpy as np
import pytest
from PySide6.QtCore import QPoint, QRectF, Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from planner.app.canvas import ladder_scale
from planner.app.canvas.ink import Ink
from planner.app.canvas.side_light import light_in_words
from planner.app.pages.sketch.growing import QUICK
from planner.app.pages.sketch.page import SketchPage
from planner.catalogue.library import demo_plan
from planner.estimate.evaluate import evaluate
from planner.estimate.outlook import Outlook, Part, Uncertainty
from planner.estimate.result import EstimateOptions, Quality
from planner.estimate.upright import light_in_slice
from planner.estimate.ways import offered
from planner.plan import edits
from planner.plan.edits import change_lamp
from planner.plan.lining import OPENING
from planner.plan.place import Place, PlaceKind
from planner.plan.target import DliTarget, GrowthStage
from planner.units import LengthUnit
from tests.e2e.sketching import enter, make_page

if TYPE_CHECKING:
    from planner.app.fields.surface_fields import WallFields

pytestmark = pytest.mark.gui


@pytest.fixture(autouse=True)
def at_once(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("PLANNER_SYNCHRONOUS", "1")


@pytest.fixture
def page(qtbot: QtBot, tmp_path: Path) -> SketchPage:
    page = make_page(qtbot, demo_plan(), tmp_path)
    page.workplace.display.update(cells=12)
    return page


def lamp_pixel(page: SketchPage) -> QPoint:
    view = page.elevation
    elevation = view._elevation(Ink.of(view.palette()))
    return elevation.body(page.workplace.document.plan.lamps[0]).center().toPoint()


def test_raising_a_lamp_shows_its_ladder_and_letting_go_puts_it_away(page: SketchPage) -> None:
    view, start = page.elevation, lamp_pixel(page)
    assert "Ladder" not in view.words()
    QTest.mousePress(view, Qt.MouseButton.LeftButton, pos=start)
    for step in range(1, 5):
        QTest.mouseMove(view, start - QPoint(0, 6 * step))
    assert "Ladder of heights: here the mean is " in view.words()
    QTest.mouseRelease(view, Qt.MouseButton.LeftButton, pos=start - QPoint(0, 24))
    assert "Ladder" not in view.words()


def test_keys_that_raise_a_lamp_show_it_until_they_rest(page: SketchPage) -> None:
    view, document = page.elevation, page.workplace.document
    page.workplace.selection.select(Place(PlaceKind.LAMP))
    view.setFocus()
    QTest.keyClick(view, Qt.Key.Key_Up)
    assert "Ladder of heights" in view.words()
    QTest.keyClick(view, Qt.Key.Key_Up)
    assert "Ladder of heights" in view.words()
    document.end_gesture()
    assert "Ladder" not in view.words()
    QTest.keyClick(view, Qt.Key.Key_Left)
    assert "Ladder" not in view.words(), "sideways it is not raised"


def test_what_the_ladder_says_is_what_the_estimate_of_that_height_says(page: SketchPage) -> None:
    plan = page.workplace.document.plan
    page.elevation.turn()  # along x the two bars are seen apart
    page.workplace.selection.select(Place(PlaceKind.LAMP))
    page.workplace.display.update(ladder=True)
    higher = change_lamp(plan, 0, hanging_height=0.5)  # a rung: every ten centimetres
    page.workplace.document.apply(higher, "Raise lamp")
    options = EstimateOptions(cells=(12, 12), quality=Quality.PREVIEW)
    mean = evaluate(higher, options).figures.mean
    assert f"here the mean is {mean:.0f}," in page.elevation.words()


def test_where_the_lamp_hangs_the_ladder_says_what_the_strip_says(page: SketchPage) -> None:
    page.elevation.turn()
    plan = page.workplace.document.plan
    page.workplace.selection.select(Place(PlaceKind.LAMP))
    page.workplace.display.update(ladder=True)
    careful = evaluate(plan, EstimateOptions(cells=(12, 12), quality=Quality.FINE))
    # As far off as no rung is: it is the strip's figure that counts.
    brighter = replace(careful, figures=replace(careful.figures, mean=careful.figures.mean + 7))
    page.show_estimate(brighter)
    assert f"here the mean is {brighter.figures.mean:.0f}," in page.elevation.words()
    page.workplace.document.apply(change_lamp(plan, 0, hanging_height=0.42), "Raise lamp")
    assert f"here the mean is {brighter.figures.mean:.0f}," not in page.elevation.words()


def test_the_ladder_goes_with_what_is_selected_and_asked(page: SketchPage) -> None:
    page.workplace.selection.select(Place(PlaceKind.LAMP))
    assert "Ladder" not in page.elevation.words()
    page.workplace.display.update(ladder=True)
    assert "Ladder" in page.elevation.words()
    page.workplace.selection.select(Place(PlaceKind.CANOPY))
    assert "Ladder" not in page.elevation.words()


# -- what one wall does ------------------------------------------------------------------


def over_wall(page: SketchPage, wall: int) -> None:
    (ax, ay), (bx, by) = page.workplace.document.plan.space.wall(wall)
    view = page.plan_view
    # A little off its middle, where the section line may end.
    at = view.viewport.to_pixel(ax + 0.3 * (bx - ax), ay + 0.3 * (by - ay))
    QTest.mouseMove(view, at.toPoint())


def shows_shares(page: SketchPage) -> bool:
    return page.plan_view.light_style().unit[0] == "% of the"


def test_resting_on_a_wall_shows_its_light_and_leaving_shows_all_of_it(
    qtbot: QtBot, page: SketchPage
) -> None:
    view = page.plan_view
    over_wall(page, 4)
    assert not shows_shares(page), "a pointer on its way across asks nothing"
    qtbot.waitUntil(lambda: shows_shares(page), timeout=20_000)
    assert view.status().startswith("Wall 5: ")
    assert "of the canopy's light met it on the way; ten points more" in view.status()
    assert "% of the light" in page.colour_bar.accessibleDescription()
    QTest.mouseMove(view, view.viewport.to_pixel(0.4, 0.25).toPoint())
    assert not shows_shares(page)


def test_while_the_light_of_a_wall_is_looked_for_it_is_said(
    qtbot: QtBot, page: SketchPage, monkeypatch: pytest.MonkeyPatch
) -> None:
    view = page.plan_view
    monkeypatch.setattr(page.asked, "wall", lambda *_asked: None)
    over_wall(page, 4)
    qtbot.waitUntil(lambda: view.status() == "Finding the light that came by wall 5 …")
    QTest.mouseMove(view, view.viewport.to_pixel(0.4, 0.25).toPoint())
    assert "Finding" not in view.status()


def test_no_figure_of_the_ladder_is_wiped_away_that_nothing_covers(
    qtbot: QtBot, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A plate without words is put over a rung only where a lamp or the figures of now cut it."""
    page = make_page(qtbot, demo_plan("closet"), tmp_path, (1280, 776))
    view = page.elevation
    wiped: list[tuple[QRectF, Any]] = []
    now: list[QRectF] = []

    def note(*given: Any) -> None:
        _painter, whole, rung, y, colour, font, elevation = given
        place = ladder_scale._place_of(whole, rung, y, font)
        if colour == elevation.ink.paper:
            wiped.append((place, elevation))
        elif colour == elevation.ink.accent:
            now.append(place)

    start = lamp_pixel(page)
    QTest.mousePress(view, Qt.MouseButton.LeftButton, pos=start)
    for up in range(2, 60, 3):
        QTest.mouseMove(view, start - QPoint(0, up))
        with monkeypatch.context() as noting:
            noting.setattr(ladder_scale, "_write", note)
            now.clear()
            wiped.clear()
            view.grab()
        for place, elevation in wiped:
            lamps = [elevation.body(lamp).adjusted(-2, -2, 2, 2) for lamp in elevation.plan.lamps]
            assert any(cut.intersects(place) for cut in [*lamps, *now])
    assert now
    QTest.mouseRelease(view, Qt.MouseButton.LeftButton, pos=start - QPoint(0, 60))


def test_a_selected_wall_shows_its_light_as_long_as_asked(page: SketchPage) -> None:
    fields = cast("WallFields", page.column.panels[PlaceKind.WALL])
    page.workplace.selection.select(Place(PlaceKind.WALL, 1))
    fields.light_button.click()
    assert shows_shares(page)
    assert page.plan_view.status().startswith("Wall 2: ")
    page.workplace.selection.select(Place(PlaceKind.WALL, 2))
    assert page.plan_view.status().startswith("Wall 3: ")
    page.workplace.selection.select(Place())
    assert not shows_shares(page)


def test_a_considered_lining_shows_what_it_would_bring(page: SketchPage) -> None:
    fields = cast("WallFields", page.column.panels[PlaceKind.WALL])
    page.workplace.selection.select(Place(PlaceKind.WALL, 0))
    chooser = fields.lines[0].chooser
    black = next(one for one in page.shelf.catalogue.linings if one.reflectance < 0.1)
    chooser.considered.emit(black)
    low, high = page.plan_view.light_style().levels
    assert page.plan_view.light_style().unit == ("change,", "µmol")
    assert low < 0, "a black wall takes light away"
    assert high == 0
    assert f"{black.name} on wall 1: −" in page.plan_view.status()
    chooser.considered.emit(None)
    assert page.plan_view.light_style().unit[0] == "µmol"


def test_an_edit_that_moves_the_light_asks_anew(page: SketchPage) -> None:
    fields = cast("WallFields", page.column.panels[PlaceKind.WALL])
    page.workplace.selection.select(Place(PlaceKind.WALL, 4))
    fields.light_button.click()
    before = page.plan_view.status()
    plan = page.workplace.document.plan
    page.workplace.document.apply(edits.line_wall(plan, 4, 0, OPENING), "Open wall")
    assert shows_shares(page)
    assert page.plan_view.status() != before
    assert "Wall 5: 0 % of the canopy's light" in page.plan_view.status()


# -- how sure the light at a place is ------------------------------------------------------


def test_a_click_on_the_marked_band_says_what_narrows_the_doubt_most(
    page: SketchPage,
) -> None:
    plan = page.workplace.document.plan
    page.show_estimate(evaluate(plan, EstimateOptions(cells=(12, 12), quality=Quality.PREVIEW)))
    parts = (Part("photon flux of Lamp", 14.0, 7.0, "photon flux"), Part("x", 2.0, 1.0))
    known = Uncertainty(14.2, 7, 20, 0.01, 0.8, 0.083, parts)
    page.show_outlook(Outlook(plan, known, ()))
    view = page.plan_view
    spot = view.viewport.to_pixel(0.7, 0.1).toPoint()
    QTest.mouseClick(view, Qt.MouseButton.LeftButton, pos=spot)
    assert view.notice == "", "only where the band is marked"
    page.workplace.display.update(band_wash=True)
    assert view.light_style().doubt == 0.083
    QTest.mouseClick(view, Qt.MouseButton.LeftButton, pos=spot)
    assert view.notice.startswith("Here ")
    assert "A survey of Lamp in open air narrows it most" in view.notice


# -- a wish --------------------------------------------------------------------------------


def lit_page(page: SketchPage) -> SketchPage:
    plan = page.workplace.document.plan
    page.show_estimate(evaluate(plan, EstimateOptions(cells=(12, 12), quality=Quality.PREVIEW)))
    return page


def test_a_level_typed_under_the_mean_is_found_three_ways(qtbot: QtBot, page: SketchPage) -> None:
    wish = lit_page(page).strip.wish
    assert wish.isHidden()
    page.strip.figures[0].click()
    assert wish.isVisible()
    enter(qtbot, wish.box, "140")
    ways = [words.text() for words in wish.words]
    assert ways[0].startswith("Dim to ")
    assert ways[1].startswith("Raise to ")
    assert all("W" in text and "min / mean" in text for text in ways)
    assert " cm: mean" in ways[1]
    page.workplace.display.update(unit=LengthUnit.INCH)
    assert " in: mean" in wish.words[1].text()
    assert wish.buttons[1].accessibleName().endswith(" in")
    document = page.workplace.document
    before = document.plan
    qtbot.mouseClick(wish.buttons[0], Qt.MouseButton.LeftButton)
    assert document.undo_stack.count() == 1
    assert document.undo_stack.undoText().startswith("Dim to ")
    assert document.plan.lamps[0].output_percent < before.lamps[0].output_percent
    assert not any(words.isVisible() for words in wish.words), "they told of the plan before"
    options = EstimateOptions(cells=(12, 12), quality=Quality.PREVIEW)
    assert evaluate(document.plan, options).figures.mean == pytest.approx(140, rel=0.02)


def test_a_level_pressed_on_the_colour_bar_is_asked_for(qtbot: QtBot, page: SketchPage) -> None:
    bar = lit_page(page).colour_bar
    start, end = (QPoint(8, round(bar.place(level))) for level in (50, 120))
    QTest.mousePress(bar, Qt.MouseButton.LeftButton, pos=start)
    QTest.mouseMove(bar, end)
    QTest.mouseRelease(bar, Qt.MouseButton.LeftButton, pos=end)
    assert page.strip.wish.isVisible()
    assert page.strip.wish.box.value == pytest.approx(120, abs=2)
    assert page.strip.wish.words[0].text().startswith("Dim to ")


def test_lamps_that_cannot_be_dimmed_are_not_told_to(page: SketchPage) -> None:
    plan = page.workplace.document.plan
    for k, lamp in enumerate(plan.lamps):
        plan = change_lamp(plan, k, model=edits.changed(lamp.model, dimmable=False))
    page.workplace.document.apply(plan, "Set lamp as not dimmable")
    lit_page(page).strip.ask_for(140)
    wish = page.strip.wish
    assert wish.words[0].text() == "The lamps cannot be dimmed."
    assert wish.buttons[0].isHidden()


def test_without_a_lamp_a_wish_is_answered_with_a_sentence(page: SketchPage) -> None:
    page.workplace.document.apply(edits.changed(page.workplace.document.plan, lamps=()), "None")
    lit_page(page).strip.ask_for(140)
    assert page.strip.wish.alert.text() == "▲ Hang one lamp first."


def test_a_lining_measured_dimmer_than_its_entry_takes_no_place_of_the_brightest(
    page: SketchPage,
) -> None:
    """The plan's own stands for an entry of its key, here as in every list of linings."""
    catalogue, plan = page.shelf.catalogue, page.workplace.document.plan
    best, *rest = sorted(catalogue.linings, key=lambda lining: -lining.reflectance)
    worn = edits.changed(best, reflectance=0.3, low=0.2, high=0.4)
    found = offered(edits.changed(plan, linings=(*plan.linings, worn)), catalogue)
    assert worn in found
    assert best not in found
    there = {lining.key for lining in plan.linings}
    assert [one for one in rest if one.key not in there][:4] == list(found[:4])


# -- growing time --------------------------------------------------------------------------


def stages() -> tuple[GrowthStage, ...]:
    return (
        GrowthStage(
            name="Seedlings", canopy_height=0.05, target=DliTarget(low=6, high=10), weeks=2
        ),
        GrowthStage(
            name="Leaves", canopy_height=0.25, target=DliTarget(low=8, high=12),
            photoperiod_hours=14, weeks=2,
        ),
    )  # fmt: skip


def growing_page(page: SketchPage) -> SketchPage:
    document = page.workplace.document
    assert page.growing.isHidden(), "a plan without a schedule has no time to grow"
    document.apply(edits.changed(document.plan, schedule=stages()), "Add stages")
    page.growing.button.click()
    page.growing._end()
    return page


def test_the_slider_moves_canopy_lamps_and_day_along_the_schedule(page: SketchPage) -> None:
    document, line = page.workplace.document, growing_page(page).growing
    steps = document.undo_stack.count()
    line.slider.setValue(7)  # the middle of the first stage, but for half a day
    assert document.plan.canopy.height == pytest.approx(0.05, abs=0.01)
    assert document.plan.photoperiod_hours == 16
    line.slider.setValue(13)
    # From 5 cm in the middle of week 2 to 25 cm in the middle of week 4: half way is 15 cm.
    assert document.plan.canopy.height == pytest.approx(0.15, abs=0.01)
    line.slider.setValue(27)
    assert document.plan.canopy.height == pytest.approx(0.25)
    assert document.plan.photoperiod_hours == 14
    assert document.plan.target == DliTarget(low=8, high=12)
    assert line.words.text().startswith("Week 4, day 7: Leaves. Canopy 25 cm, lamps ")
    assert line.slider.accessibleDescription().endswith(QUICK), "a quick answer says that it is one"
    line._end()
    assert document.undo_stack.count() == steps + 1
    assert document.undo_stack.undoText() == "Set to a week of the schedule"


def test_an_edit_of_something_else_asks_for_the_stages_anew(page: SketchPage) -> None:
    document, line = page.workplace.document, growing_page(page).growing
    assert line.slider.isVisible()
    document.apply(edits.set_height(document.plan, 1.3), "Set height")
    assert line.slider.isHidden()
    assert line.button.isVisible()


def test_a_drag_shows_the_light_itself_and_the_wall_again_afterwards(page: SketchPage) -> None:
    fields = cast("WallFields", page.column.panels[PlaceKind.WALL])
    document = page.workplace.document
    page.workplace.selection.select(Place(PlaceKind.WALL, 4))
    fields.light_button.click()
    assert shows_shares(page)
    document.apply(change_lamp(document.plan, 0, x=0.35), "Move lamp", "drag")
    assert not shows_shares(page), "what is dragged moves the light: that is what is shown"
    document.end_gesture()
    assert shows_shares(page)


def test_no_ladder_is_looked_for_in_the_course_of_another_drag(
    page: SketchPage, monkeypatch: pytest.MonkeyPatch
) -> None:
    document = page.workplace.document
    page.workplace.selection.select(Place(PlaceKind.LAMP))
    page.workplace.display.update(ladder=True)
    asked: list[object] = []
    monkeypatch.setattr(page.asked, "climb", lambda *given: asked.append(given))
    for step in range(5):
        document.apply(change_lamp(document.plan, 0, x=0.3 + 0.01 * step), "Move lamp", "drag")
    assert asked == []
    document.end_gesture()
    assert len(asked) == 1


def test_in_a_low_page_the_section_gives_a_wish_its_room(qtbot: QtBot, page: SketchPage) -> None:
    page.resize(1100, 660)
    lit_page(page)
    assert page.section.isVisible()
    page.strip.ask_for(140)
    assert page.section.isHidden()
    qtbot.wait(20)
    for words in page.strip.wish.words:
        assert words.height() >= words.heightForWidth(words.width()), "no line is cut"
    page.strip.figures[0].click()
    assert page.section.isVisible()


# -- the light itself in the side view ---------------------------------------------------


def shows_light(page: SketchPage) -> bool:
    return "Light over its middle" in page.elevation.words()


def lit(page: SketchPage, qtbot: QtBot) -> None:
    """The map is there, and the hand rests."""
    plan = page.workplace.document.plan
    page.show_estimate(evaluate(plan, EstimateOptions(cells=(12, 12))))
    qtbot.waitUntil(lambda: shows_light(page), timeout=5000)


def test_the_side_view_shows_the_light_when_the_hand_rests(page: SketchPage, qtbot: QtBot) -> None:
    plan, view = page.workplace.document.plan, page.elevation
    page.show_estimate(evaluate(plan, EstimateOptions(cells=(12, 12), quality=Quality.PREVIEW)))
    qtbot.wait(600)
    assert not shows_light(page), "a preview is not waited for"
    lit(page, qtbot)
    x0, y0, x1, y1 = plan.space.bounds
    words = view.words().partition("up from the canopy: ")[2]
    assert page.estimate is not None
    there = page.estimate.at(np.array([(x0 + x1) / 2]), np.array([(y0 + y1) / 2]))[0]
    assert float(words.split(",")[0]) == pytest.approx(there, rel=0.02)
    assert words.count(" at ") == 3


def test_light_of_another_plan_goes_at_once(page: SketchPage, qtbot: QtBot) -> None:
    lit(page, qtbot)
    document = page.workplace.document
    before = document.plan
    document.apply(edits.change_lamp(before, 0, hanging_height=0.5), "Raise lamp")
    assert not shows_light(page)
    document.apply(before, "Lower lamp")
    assert shows_light(page), "an answer is kept as long as it tells of the plan"


def test_the_light_follows_the_section_line_and_the_way_one_looks(
    page: SketchPage, qtbot: QtBot
) -> None:
    lit(page, qtbot)
    view = page.elevation
    page.plan_view.set_section(((0.0, 0.1), (0.8, 0.1)))
    assert not shows_light(page)
    qtbot.waitUntil(lambda: "Light over its middle at y 10 cm" in view.words(), timeout=5000)
    view.turn()
    qtbot.waitUntil(lambda: "Light over its middle at x 40 cm" in view.words(), timeout=5000)
    view.turn()
    qtbot.waitUntil(lambda: "Light over its middle at y 10 cm" in view.words(), timeout=5000)


def test_the_pointer_reads_the_light_at_its_height(page: SketchPage, qtbot: QtBot) -> None:
    lit(page, qtbot)
    view, plan = page.elevation, page.workplace.document.plan
    level = plan.canopy.height
    QTest.mouseMove(view, view.viewport.to_pixel(0.4, level + 0.1).toPoint())
    said = view.light_at_pointer()
    assert "above the canopy" in said
    assert "above the floor; leaves higher than the canopy are left out" in said
    QTest.mouseMove(view, view.viewport.to_pixel(0.4, level - 0.1).toPoint())
    assert view.light_at_pointer() == "", "nothing is told from under closed leaves"


def test_the_chart_at_the_foot_follows_the_drawing_pointed_in(
    page: SketchPage, qtbot: QtBot
) -> None:
    """In the side view the light over a place, which is that of maps as high; else the section."""
    lit(page, qtbot)
    view, plan, unit = page.elevation, page.workplace.document.plan, LengthUnit.CM
    level, (_, y0, _, y1) = plan.canopy.height, plan.space.bounds
    QTest.mouseMove(view, view.viewport.to_pixel(0.4, level + 0.1).toPoint())
    assert "height above the canopy (cm), at x 40 cm" in page.section.accessibleDescription()
    heights, light = page.section.profile()
    assert 0.0 < heights[0] < 3.0
    assert heights[-1] == pytest.approx((plan.space.height - level) / unit.metres, abs=3.0)
    for up in (0.05, 0.15):
        raised = edits.changed(
            edits.set_canopy(plan, height=level + up, reflectance=0.0),
            lamps=tuple(
                one.model_copy(update={"hanging_height": one.hanging_height - up})
                for one in plan.lamps
            ),
        )
        # The leaves below return a little that a map does not know of.
        there = evaluate(raised, EstimateOptions(cells=(12, 12))).value(0.4, (y0 + y1) / 2)
        assert np.interp(up / unit.metres, heights, light) == pytest.approx(there, rel=0.08)
    at = page.plan_view.viewport.to_pixel(0.4, 0.2).toPoint()
    QTest.mouseMove(page.plan_view, at)
    assert "along a line" in page.section.accessibleDescription()
    QTest.mouseMove(view, view.viewport.to_pixel(0.3, level + 0.1).toPoint())
    assert "at x 30" in page.section.accessibleDescription()
    # Of another plan it is the section, until the light at every height is there again.
    page.workplace.document.apply(edits.change_lamp(plan, 0, hanging_height=0.5), "Raise lamp")
    page.show_estimate(evaluate(page.workplace.document.plan, EstimateOptions(cells=(12, 12))))
    assert "along a line" in page.section.accessibleDescription()
    qtbot.waitUntil(lambda: shows_light(page), timeout=5000)
    assert "at x 30" in page.section.accessibleDescription()


def test_over_a_tier_the_light_is_told_from_its_canopy() -> None:
    """90 cm over the floor of the rack, whose middle tier carries its leaves at 62 cm."""
    found = light_in_slice(demo_plan("rack"), "y", 0.2, EstimateOptions(cells=(8, 8)))
    said = light_in_words(found, 0.45, 0.9, LengthUnit.CM)
    assert "28 cm above Middle tier, 90 cm above the floor; leaves higher than Middle tier" in said
    said = light_in_words(found, 0.45, 0.3, LengthUnit.CM)
    assert "18 cm above the plan's own canopy" in said
