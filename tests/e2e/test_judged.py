"""A plan judged by the canopy on a tray: by switch and menu, and what all pages then say."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from PySide6.QtCore import QPointF
from PySide6.QtWidgets import QMenu
from pytestqt.qtbot import QtBot

from planner.app.canvas.items import Item, Part
from planner.app.estimator import Estimator
from planner.app.main_window import MainWindow
from planner.app.pages.side.page import SideBySidePage
from planner.app.settings import Settings
from planner.catalogue.library import demo_plan, load_catalogue
from planner.estimate.calibrate_model import expected_readings
from planner.estimate.evaluate import evaluate
from planner.estimate.find_question import FindError, check_lamps
from planner.estimate.outlook import outlook
from planner.estimate.result import EstimateOptions, Quality
from planner.estimate.sensitivity import Reckoner, light_of_wall
from planner.estimate.sweep import sweep
from planner.estimate.sweep_points import Over
from planner.metrics.figures import ppfd
from planner.plan import edits
from planner.plan.edits import judge_by
from planner.plan.place import OWN, Place, PlaceKind
from planner.plan.plan import Plan
from planner.plan.space import CarriedCanopy
from planner.plan.target import PpfdTarget
from planner.plan.tiers import canopy_under
from planner.plan.variant_edits import add_variants
from planner.reports.advice import wall_sentence
from planner.reports.chapters import report
from planner.reports.page import report_html
from planner.reports.report import gather
from planner.survey.layout import new_survey
from tests.e2e.shell import ReadyAnswers, small_plan, trigger
from tests.physics.test_tops import on, tray

TOP = Place(PlaceKind.TOP, 0)
TRAY = Place(PlaceKind.OBSTACLE, 0)
BY_TRAY = "Figures are those of the canopy on obstacle 1 ('Tray'), by which the plan is judged."


def tray_plan() -> Plan:
    """A tray of 15 cm in the middle of a small plan, 10 cm above its canopy."""
    plan = edits.changed(small_plan(), target=PpfdTarget(low=40.0, high=80.0))
    x0, y0, x1, y1 = plan.space.bounds
    level = plan.canopy.height
    carried = tray(((x0 + x1) / 2, (y0 + y1) / 2), (0.15, 0.15), (level, level + 0.1))
    return on(plan, carried)


def make_window(qtbot: QtBot, plan: Plan, told: list[Any] | None = None) -> MainWindow:
    """A window with the light of the core: what is made up knows no trays."""
    estimator = Estimator(evaluate if told is None else None, synchronous=True)
    if told is not None:
        estimator.outlook_ready.connect(told.append)
    window = MainWindow(
        plan,
        settings=Settings.of_user(),
        estimator=estimator,
        questions=ReadyAnswers(),
    )
    qtbot.addWidget(window)
    window.show()
    window.display.update(cells=12)
    return window


def mean_of(window: MainWindow) -> str:
    return window.page.strip.figures[0].figure.value  # type: ignore[union-attr]


def lit(qtbot: QtBot, window: MainWindow) -> None:
    """Wait until the light shown is of the plan."""

    def shown() -> bool:
        found = window.page.estimate
        return found is not None and found.plan == window.document.plan

    qtbot.waitUntil(shown, timeout=20_000)


def test_the_switch_lets_the_strip_tell_of_the_tray_and_back(qtbot: QtBot) -> None:
    window = make_window(qtbot, tray_plan())
    lit(qtbot, window)
    found = window.page.estimate
    assert found is not None
    own, top = ppfd(found.figures.mean), ppfd(found.tops[0].figures.mean)
    assert own != top
    assert mean_of(window) == own
    window.selection.select(TRAY)
    panel: Any = window.page.column.panel
    panel.judged_switch.click()
    lit(qtbot, window)
    assert window.document.undo_stack.undoText() == "Judge the plan by this canopy"
    assert mean_of(window) == top
    assert window.page.strip.sentence.text().startswith(
        f"The canopy on obstacle 1 ('Tray'): mean {top},"
    )
    window.selection.select(OWN)
    canopy: Any = window.page.column.panel
    assert "the canopy on obstacle 1 ('Tray')" in canopy.judged_note.text()
    canopy.judge_button.click()
    lit(qtbot, window)
    assert mean_of(window) == own
    assert canopy.judge_button.isHidden()
    window.document.undo_stack.undo()
    window.document.undo_stack.undo()
    assert window.document.plan == tray_plan()


def test_without_a_canopy_on_it_an_obstacle_has_no_such_switch(qtbot: QtBot) -> None:
    window = make_window(qtbot, small_plan())
    trigger(window, "add_box")
    panel: Any = window.page.column.panel
    assert not panel.judged_switch.isVisible()
    panel.canopy_switch.click()
    assert panel.judged_switch.isVisible()


def entries(menu: QMenu) -> dict[str, Any]:
    return {action.text(): action for action in menu.actions()}


def test_menus_of_tray_and_canopy_go_both_ways(qtbot: QtBot) -> None:
    window = make_window(qtbot, tray_plan())
    view, side = window.page.plan_view, window.page.elevation
    tray_item = Item(Part.OBSTACLE, 0)
    at = window.document.plan.obstacles[0]
    by_canopy, by_own = "Judge the plan by this canopy", "Judge the plan by its own canopy"
    assert by_own not in entries(side.menu_for(Item(Part.CANOPY), (0.1, 0.1)))
    entries(view.menu_for(tray_item, (at.x, at.y)))[by_canopy].trigger()
    assert window.document.plan.judged_top == 0
    assert by_canopy not in entries(view.menu_for(tray_item, (at.x, at.y)))
    entries(side.menu_for(Item(Part.CANOPY), (0.1, 0.1)))[by_own].trigger()
    assert window.document.plan.judged_top is None


def test_duplicate_and_paste_leave_the_judging_where_it_was(qtbot: QtBot) -> None:
    window = make_window(qtbot, judge_by(tray_plan(), 0))
    window.selection.select(TRAY)
    trigger(window, "duplicate")
    window.selection.select(TRAY)
    trigger(window, "copy")
    trigger(window, "paste")
    carried = [one.canopy for one in window.document.plan.obstacles]
    assert [one is not None and one.judged for one in carried] == [True, False, False]


def test_side_by_side_says_whose_figures_stand_and_shows_them(qtbot: QtBot) -> None:
    plan = judge_by(tray_plan(), 0)
    window = make_window(qtbot, add_variants(plan, ("Kept", plan.setup)))
    trigger(window, "page_side")
    page = window.pages.made("side")
    assert isinstance(page, SideBySidePage)
    qtbot.waitUntil(lambda: page.comparer.current, timeout=20_000)
    assert page.judged.text() == BY_TRAY
    side = page.comparer.sides[0]
    assert side.estimate is not None
    assert side.estimate.place == TOP
    card = page.sheet.cards[0]
    assert card.figure_lines()[0].startswith(f"mean {ppfd(side.estimate.tops[0].figures.mean)} ")
    middle = (plan.obstacles[0].x, plan.obstacles[0].y)
    assert side.estimate.value(*middle) == pytest.approx(side.estimate.tops[0].value(*middle))
    x0, y0, _, _ = plan.space.bounds
    assert side.estimate.value(x0 + 0.01, y0 + 0.01) is None, "beside the tray"
    # The card shows the light on all canopies that are seen from there, as the sketch does.
    image, viewport = card.grab().toImage(), card.viewport()
    # Contours run close to one another on a small tray: one of the dots about a place is bare.
    off = [QPointF(x, y) for x in range(-7, 8) for y in range(-7, 8)]
    table = card.light_style.table
    for place, canopy in ((middle, TOP), ((x0 + 0.03, y0 + 0.03), OWN)):
        there = side.estimate.on(canopy).value(*place)
        page.linked.point_at(place)
        assert card.value_at_pointer() == pytest.approx(there)
        low, high = card.light_style.levels
        share = min(((there or 0.0) - low) / (high - low), 1.0)
        expected = table[round(share * (len(table) - 1))]
        dots = [image.pixelColor((viewport.to_pixel(*place) + one).toPoint()) for one in off]
        shown = [(one.red(), one.green(), one.blue()) for one in dots]
        wanted = tuple(map(int, expected[:3]))
        assert any(one == pytest.approx(wanted, abs=25) for one in shown)
    window.document.apply(judge_by(window.document.plan, None), "Judge by own")
    qtbot.waitUntil(lambda: "different canopies" in page.judged.text(), timeout=20_000)


def test_a_report_names_the_canopy_under_its_title(tmp_path: Path) -> None:
    quick = EstimateOptions(cells=(12, 12), quality=Quality.PREVIEW)
    for plan, named in ((tray_plan(), False), (judge_by(tray_plan(), 0), True)):
        known = gather(plan, quick, sections=("decision", "light", "figures"))
        made = report(known, sections=("decision", "light", "figures"))
        text = report_html(made)
        assert (BY_TRAY in made.about) is named
        assert ("by which the plan is judged" in text) is named
        assert f"mean {ppfd(known.estimate.figures.mean)}" in text.lower()


def test_doubt_and_gains_are_reckoned_anew_for_another_canopy(qtbot: QtBot) -> None:
    """Light and doubts stay the same, and what was reckoned for one canopy is not for the other."""
    told: list[Any] = []
    window = make_window(qtbot, tray_plan(), told)
    qtbot.waitUntil(lambda: bool(told), timeout=30_000)
    own = told[-1]
    window.document.apply(judge_by(window.document.plan, 0), "Judge")
    qtbot.waitUntil(lambda: told[-1].plan == window.document.plan, timeout=30_000)
    expected = outlook(window.document.plan)
    found = told[-1]
    assert found.uncertainty is not None
    assert expected.uncertainty is not None
    assert own.uncertainty is not None
    assert found.uncertainty.mean == pytest.approx(expected.uncertainty.mean)
    assert found.uncertainty.mean != pytest.approx(own.uncertainty.mean, rel=0.01)
    assert found.gains == expected.gains


def test_what_a_wall_does_is_shown_on_the_tray_that_is_judged(qtbot: QtBot) -> None:
    plan = edits.line_all_walls(tray_plan(), load_catalogue().lining("white-board"))
    wall = Place(PlaceKind.WALL, 1)
    colours = []
    for what in (plan, judge_by(plan, 0)):
        window = make_window(qtbot, what)
        view = window.page.plan_view
        reckoner = Reckoner(what, EstimateOptions(cells=(12, 12), quality=Quality.PREVIEW))
        found = light_of_wall(reckoner, wall.index)
        view.set_wall_light(found)
        image, viewport = view.grab().toImage(), view.viewport
        beside = viewport.to_pixel(0.2, 0.25).toPoint()
        middle = (
            viewport.to_pixel(what.obstacles[0].x, what.obstacles[0].y) + QPointF(9, 9)
        ).toPoint()
        colours.append((image.pixelColor(beside), image.pixelColor(middle)))
        words = wall_sentence(found)
        on_tray = "of the light on the canopy on obstacle 1 ('Tray') met it" in words
        assert on_tray is (what.judged_top == 0)
        window.close()
    # Light where the canopy that is judged lies, and nothing on the other one.
    (before, under), (after, over) = colours
    assert before != after
    assert under != over
    assert found.canopy.place == TOP
    assert found.share == pytest.approx(found.mean(found.came) / found.canopy.figures.mean)


def test_a_search_for_a_canopy_without_light_is_refused_with_the_reason() -> None:
    plan = tray_plan()
    lid = plan.obstacles[0].model_copy(
        update={"name": "Lid", "underside": plan.obstacles[0].top, "canopy": None}
    )
    covered = judge_by(on(plan, plan.obstacles[0], lid), 0)
    with pytest.raises(FindError, match=r"no light can fall there: obstacle 2 \('Lid'\) stands"):
        check_lamps(covered)
    check_lamps(judge_by(covered, None))


def test_the_band_beside_the_ranking_is_that_of_the_tray(qtbot: QtBot) -> None:
    plan = tray_plan()
    carried = CarriedCanopy(target=PpfdTarget(low=11.0, high=12.0))
    plan = judge_by(edits.change_obstacle(plan, 0, canopy=carried), 0)
    window = make_window(qtbot, add_variants(plan, ("Kept", plan.setup)))
    trigger(window, "page_side")
    page = window.pages.made("side")
    assert isinstance(page, SideBySidePage)
    qtbot.waitUntil(lambda: page.comparer.comparison is not None, timeout=20_000)
    qtbot.waitUntil(lambda: page.compare.ranking._band == (11.0, 12.0), timeout=20_000)
    assert page.sheet.cards[0].light_style.band == (11.0, 12.0)


def test_a_sweep_kept_of_one_canopy_is_none_of_another() -> None:
    quick = EstimateOptions(cells=(6, 6), quality=Quality.PREVIEW)
    over = [Over("height", values=(0.4, 0.6))]
    own, led = tray_plan(), judge_by(tray_plan(), 0)
    known = sweep(own, over, quick, workers=0)
    again = sweep(led, over, quick, workers=0, known=known)
    means = [one.figures.mean for one in again.in_order() if one.figures is not None]
    # Swept over the tray, where the plan is judged by it.
    up = led.obstacles[0].top - led.canopy.height
    hung = [edits.change_lamp(led, 0, hanging_height=h + up) for h in (0.4, 0.6)]
    assert means == [pytest.approx(evaluate(one, quick).figures.mean) for one in hung]


def test_what_a_survey_should_read_is_of_the_plans_own_canopy_all_the_same() -> None:
    plan = tray_plan()
    survey = new_survey(plan)
    own, led = (
        expected_readings(one, survey, EstimateOptions(cells=(12, 12)))
        for one in (plan, judge_by(plan, 0))
    )
    assert led == pytest.approx(own)


def test_a_report_of_options_judged_differently_says_so() -> None:
    plan = add_variants(tray_plan(), ("By tray", judge_by(tray_plan(), 0).setup))
    quick = EstimateOptions(cells=(12, 12), quality=Quality.PREVIEW)
    alike = add_variants(tray_plan(), ("Same", tray_plan().setup))
    for what, named in ((plan, True), (alike, False)):
        known = gather(what, quick, sections=("options",))
        text = report_html(report(known, sections=("options",)))
        assert ("The options are judged by different canopies" in text) is named
        assert ("judged by the canopy on obstacle 1" in text) is named


def pressed(window: MainWindow) -> list[str]:
    """What the line of canopies says of the one looked at."""
    return [one.text() for one in window.page.canopies.buttons if one.isChecked()]


def test_all_canopies_are_seen_at_a_look_and_each_without_an_edit(qtbot: QtBot) -> None:
    """A button for each, the tray chosen, its light on the map, and the judged one again."""
    plan = tray_plan()
    window = make_window(qtbot, plan)
    lit(qtbot, window)
    page, found = window.page, window.page.estimate
    assert found is not None
    own, top = ppfd(found.figures.mean), ppfd(found.tops[0].figures.mean)
    assert [one.text().split(",")[0] for one in page.canopies.buttons] == [
        f"Own canopy: {own}",
        f"Tray: {top}",
    ]
    assert not page.canopies.isHidden()
    assert pressed(window)[0].startswith("Own canopy")
    page.canopies.buttons[1].click()
    assert mean_of(window) == top
    assert page.plan_view.looked == TOP
    assert page.strip.sentence.text().startswith("The canopy on obstacle 1 ('Tray'): mean")
    # What the light depends on changes; the look stays, as long as there is that canopy.
    window.document.apply(edits.change_lamp(plan, 0, output_percent=40.0), "Dim")
    lit(qtbot, window)
    assert pressed(window)[0].startswith("Tray")
    window.selection.select(Place(PlaceKind.LAMP, 0))
    assert pressed(window)[0].startswith("Tray")
    window.selection.select(Place())
    assert pressed(window)[0].startswith("Own canopy")
    window.selection.select(TRAY)
    assert pressed(window)[0].startswith("Tray")
    window.document.apply(edits.remove_obstacle(window.document.plan, 0), "Remove")
    lit(qtbot, window)
    assert page.canopies.isHidden()
    assert page.plan_view.looked == OWN
    assert page.strip.sentence.text().startswith("Mean ")


def test_figures_of_a_canopy_that_is_only_looked_at_borrow_no_doubt(qtbot: QtBot) -> None:
    """How sure the figures are is reckoned of the canopy judged, and shown beside that alone."""
    told: list[Any] = []
    window = make_window(qtbot, tray_plan(), told)
    lit(qtbot, window)
    qtbot.waitUntil(lambda: bool(told), timeout=60_000)
    mean = window.page.strip.figures[0]
    assert mean.figure is not None
    assert mean.figure.spread
    window.selection.select(TRAY)
    assert mean.figure.value
    assert not mean.figure.spread
    window.selection.select(Place())
    assert mean.figure.spread


def test_a_line_too_short_for_all_canopies_keeps_the_rest_in_a_menu(qtbot: QtBot) -> None:
    plan = tray_plan()
    carried = plan.obstacles[0]
    many = [
        carried.model_copy(
            update={
                "name": f"Tray of seedlings number {k}",
                "x": carried.x + (k % 3 - 1) * 0.1,
                "y": carried.y + (k // 3 - 1) * 0.1,
                "length": 0.08,
                "width": 0.08,
            }
        )
        for k in range(9)
    ]
    window = make_window(qtbot, on(plan, *many))
    window.resize(1000, 700)
    lit(qtbot, window)
    line = window.page.canopies
    shown = [one for one in line.buttons if not one.isHidden()]
    assert 0 < len(shown) < 10
    assert line.more.text() == f"{10 - len(shown)} more"
    last = line.more.menu().actions()[-1]
    assert "number 8" in last.text()
    last.trigger()
    assert window.page.plan_view.looked == Place(PlaceKind.TOP, 8)
    assert not line.buttons[9].isHidden()
    right = max(one.geometry().right() for one in line.buttons if not one.isHidden())
    assert right <= line.together.geometry().left()


def test_a_lamp_of_a_rack_brings_the_tier_it_is_of(qtbot: QtBot) -> None:
    plan = demo_plan("rack")
    window = make_window(qtbot, plan)
    lit(qtbot, window)
    for index in (5, 0, 3):
        window.selection.select(Place(PlaceKind.LAMP, index))
        assert window.page.plan_view.looked == canopy_under(plan, plan.lamps[index])
    tiers = {canopy_under(plan, lamp) for lamp in plan.lamps}
    assert len(tiers) == 3
