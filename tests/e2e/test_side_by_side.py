"""What a grower does on the side by side page."""

from __future__ import annotations

import math
import subprocess
import sys
import threading
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QGuiApplication, QPalette, QPixmap
from pytestqt.qtbot import QtBot

from planner.app.main_window import MainWindow
from planner.app.pages.side.find_form import Found
from planner.app.pages.side.linked import Shows
from planner.app.pages.side.map_card import MapCard
from planner.app.pages.side.page import SideBySidePage
from planner.app.pages.sketch.growing import QUICK
from planner.app.plots.chart import Chart
from planner.app.theme import palette
from planner.catalogue.library import load_catalogue
from planner.estimate.compare import Side
from planner.estimate.find import find as seek
from planner.estimate.find_question import Aim, Turn, check
from planner.estimate.odds import Curve, Sway, Telling
from planner.estimate.outlook import Input
from planner.estimate.worth import Bill
from planner.plan import edits
from planner.plan.costs import Costs, Goods
from planner.plan.place import Place, PlaceKind
from planner.plan.plan import Plan
from planner.plan.survey import Reading, Survey
from planner.plan.target import PpfdTarget
from planner.plan.variant_edits import add_variants, try_all
from planner.units import LengthUnit, in_unit, said_length
from tests.e2e.shell import ReadyAnswers, make_window, small_plan, trigger
from tests.e2e.sketching import enter

CATALOGUE = load_catalogue()
WHITE, DARK = CATALOGUE.lining("white-board"), CATALOGUE.lining("plywood")


@pytest.fixture(autouse=True)
def made_up_sways(monkeypatch: pytest.MonkeyPatch) -> None:
    """One uncertain input of 10 %, one only this plan has: quick, and known by hand."""

    def sway(plan: Plan, estimate: Any, **_: Any) -> Sway:
        shade = 0.02 if plan.walls[0].bands[0].lining != "open" else 0.0
        moved = {Input("photon flux", "panel", ""): 0.1, Input("reflectance", plan.name, ""): shade}
        ends = {key: (-size, 0.0, size) for key, size in moved.items()}
        return Sway({key: Curve(end, end) for key, end in ends.items()})

    monkeypatch.setattr("planner.app.pages.side.comparer._own_sway", sway)


def lit_plan() -> Plan:
    plan = edits.changed(small_plan(), target=PpfdTarget(low=40.0, high=80.0))
    return edits.line_ceiling(plan, WHITE)


@pytest.fixture
def shell(qtbot: QtBot) -> Iterator[tuple[MainWindow, ReadyAnswers]]:
    window, answers = make_window(qtbot, lit_plan())
    window.display.update(cells=12)
    window.resize(1280, 800)
    yield window, answers
    window.close()


@pytest.fixture
def window(shell: tuple[MainWindow, ReadyAnswers]) -> MainWindow:
    return shell[0]


def settle(qtbot: QtBot, page: SideBySidePage) -> None:
    """Wait until light and uncertainty of everything on the page are there."""

    def there() -> bool:
        compared = page.comparer
        variants = page.document.plan.variants
        extra = 1 + page.linked.state.open_air
        return (
            compared.current
            and compared.all_told
            and not compared.lane.busy
            and not compared.bills.busy
            and not compared._settle.isActive()
            and len(compared.sides) == len(variants) + extra
        )

    qtbot.waitUntil(there, timeout=20_000)


def choose(page: SideBySidePage, place: int) -> None:
    page.linked.update(chosen=page.comparer.sides[place].identity)


def chosen(page: SideBySidePage) -> int:
    return [side.identity for side in page.comparer.sides].index(page.linked.state.chosen)


def side_page(qtbot: QtBot, window: MainWindow) -> SideBySidePage:
    trigger(window, "page_side")
    page = window.pages.made("side")
    assert isinstance(page, SideBySidePage)
    settle(qtbot, page)
    return page


def variant_names(window: MainWindow) -> list[str]:
    return [variant.name for variant in window.document.plan.variants]


def with_linings(window: MainWindow) -> None:
    window.document.apply(try_all(window.document.plan, linings=[WHITE, DARK]), "Try")


def test_the_page_is_loaded_when_it_is_first_asked_for() -> None:
    program = (
        "import sys, planner.app.main_window\n"
        "print([n for n in sys.modules if n.startswith('planner.app.pages.side.map')"
        " or n == 'planner.app.pages.side.page'])"
    )
    done = subprocess.run(
        [sys.executable, "-c", program], capture_output=True, text=True, timeout=60, check=True
    )
    assert done.stdout.strip() == "[]"


def test_switching_keeps_selection_scale_and_section(qtbot: QtBot, window: MainWindow) -> None:
    window.selection.select(Place(PlaceKind.LAMP, 0))
    view = window.page.plan_view
    view.set_section(((0.1, 0.2), (0.9, 0.8)))
    scale = view.viewport.scale
    page = side_page(qtbot, window)
    assert page.isVisible()
    assert not window.page.isVisible()
    assert page.linked.section == ((0.1, 0.2), (0.9, 0.8))
    page.linked.cut_along(((0.2, 0.2), (0.9, 0.8)))
    # Delete belongs to the maps now, not to the lamp that is selected on the sketch.
    assert not window.actions_["remove"].isEnabled()
    trigger(window, "page_sketch")
    assert window.selection.current == Place(PlaceKind.LAMP, 0)
    assert view.viewport.scale == scale
    assert view.section == ((0.2, 0.2), (0.9, 0.8))
    assert window.actions_["remove"].isEnabled()
    assert not page.comparer.lane.busy


def test_an_empty_page_says_what_to_do_first(qtbot: QtBot, window: MainWindow) -> None:
    page = side_page(qtbot, window)
    assert page.empty.isVisible()
    qtbot.mouseClick(page.keep_button, Qt.MouseButton.LeftButton)
    settle(qtbot, page)
    assert not page.empty.isVisible()
    assert len(page.sheet.cards) == 2
    assert page.sheet.cards[1].said == "just as the plan"
    assert window.document.undo_stack.undoText() == "Keep option Shelf, kept"
    assert "Kept as option" in window.statusBar().currentMessage()


def test_where_no_lamp_hangs_the_page_leads_back_to_the_sketch(
    qtbot: QtBot, window: MainWindow
) -> None:
    page = side_page(qtbot, window)
    assert not page.sketch_button.isVisible()
    window.document.apply(edits.remove_lamp(window.document.plan, 0), "Remove lamp")
    assert "so it is dark" in page.empty_words.text()
    assert not page.keep_button.isVisible()
    qtbot.mouseClick(page.sketch_button, Qt.MouseButton.LeftButton)
    assert window.page.isVisible()


def test_a_sketch_is_kept_as_a_variant(qtbot: QtBot, window: MainWindow) -> None:
    raised = edits.change_lamp(window.document.plan, 0, hanging_height=0.9)
    window.document.apply(raised, "Raise lamp")
    trigger(window, "keep_variant")
    assert window.document.plan.lamps[0].hanging_height == 0.5
    page = side_page(qtbot, window)
    card = page.sheet.cards[1]
    assert card.said == "lamp 1: hanging height 90 cm"
    # Higher is dimmer; without walls by a good deal.
    base, kept = (side.estimate for side in page.comparer.sides)
    assert base is not None
    assert kept is not None
    assert kept.figures.mean < 0.8 * base.figures.mean


def test_linings_are_tried_by_ticking_them(qtbot: QtBot, window: MainWindow) -> None:
    page = side_page(qtbot, window)
    qtbot.mouseClick(page.try_button, Qt.MouseButton.LeftButton)
    assert page.make.linings.isVisible()
    assert window.focusWidget() is page.make.linings
    assert not page.make.try_button.isEnabled()
    page.make.linings.tick(WHITE.key, DARK.key)
    assert page.make.try_button.text() == "Try these 2"
    page.make.try_button.click()
    # The answer is shown at once: the options with their maps.
    assert page.asked.current == "options"
    settle(qtbot, page)
    names = [side.name for side in page.comparer.sides]
    assert names == ["Shelf", WHITE.name, DARK.name]
    assert window.document.undo_stack.undoText() == "Try 2 options"
    assert page.make.linings.ticked() == []
    # White returns more light than wood, wood more than nothing at all.
    assert [line.name for line in page.compare.ranking.lines] == [WHITE.name, DARK.name, "Shelf"]
    assert page.table.options.rowCount() == 3


def test_linings_with_lamps_at_heights_in_one_step(qtbot: QtBot, window: MainWindow) -> None:
    page = side_page(qtbot, window)
    page.open_question("try")
    page.make.linings.tick(WHITE.key, DARK.key)
    page.make.lamps.tick(window.document.plan.lamps[0].model.key)
    enter(qtbot, page.make.most, "2")
    page.make.heights.click()
    enter(qtbot, page.make.low, "30 cm")
    enter(qtbot, page.make.high, "60 cm")
    enter(qtbot, page.make.count, "3")
    # 2 linings, 1 and 2 lamps, 3 heights.
    assert page.make.try_button.text() == "Try these 12"
    page.make.try_button.click()
    settle(qtbot, page)
    variants = window.document.plan.variants
    found = {
        (
            one.setup.walls[0].bands[0].lining,
            len(one.setup.lamps),
            one.setup.lamps[0].hanging_height,
        )
        for one in variants
    }
    assert found == {
        (lining, lamps, height)
        for lining in (WHITE.key, DARK.key)
        for lamps in (1, 2)
        for height in (0.3, 0.45, 0.6)
    }
    assert len(variants) == 12
    window.document.undo_stack.undo()
    assert window.document.plan.variants == ()


def test_no_more_variants_than_a_plan_can_hold(qtbot: QtBot, window: MainWindow) -> None:
    plan = window.document.plan
    full = add_variants(plan, *((f"Variant {k}", plan) for k in range(60)))
    window.document.apply(full, "Fill")
    trigger(window, "keep_variant")
    assert len(window.document.plan.variants) == 60
    assert "60" in window.statusBar().currentMessage()


def test_a_range_of_heights_is_tried_and_a_bad_range_is_refused(
    qtbot: QtBot, window: MainWindow
) -> None:
    page = side_page(qtbot, window)
    page.open_question("try")
    page.make.heights.click()
    enter(qtbot, page.make.low, "90 cm")
    page.make.try_button.click()
    assert "lower end" in page.make.alert.text()
    assert window.document.plan.variants == ()
    enter(qtbot, page.make.low, "30 cm")
    enter(qtbot, page.make.high, "60")
    enter(qtbot, page.make.count, "2")
    page.make.try_button.click()
    settle(qtbot, page)
    assert variant_names(window) == [
        "Hanging height 30 cm",
        "Hanging height 60 cm",
    ]


def test_maps_share_scale_pointer_and_section(qtbot: QtBot, window: MainWindow) -> None:
    with_linings(window)
    page = side_page(qtbot, window)
    cards = page.sheet.cards
    assert len({card.light_style.levels for card in cards}) == 1
    page.compare.own_scale.setChecked(True)
    assert len({card.light_style.levels for card in cards}) > 1
    at = cards[1].viewport().to_pixel(0.5, 0.5).toPoint()
    qtbot.mouseMove(cards[1], at + QPoint(1, 0))
    qtbot.mouseMove(cards[1], at)
    values = [card.value_at_pointer() for card in cards]
    assert all(value is not None and value > 0 for value in values)
    assert [card.pointer_text() for card in cards] == [f"{value:.0f}" for value in values]
    start = cards[0].viewport().to_pixel(0.0, 0.5).toPoint()
    qtbot.mousePress(cards[0], Qt.MouseButton.LeftButton, pos=start)
    qtbot.mouseMove(cards[0], cards[0].viewport().to_pixel(0.25, 0.75).toPoint())
    qtbot.mouseRelease(cards[0], Qt.MouseButton.LeftButton)
    assert page.linked.section is not None
    (x, y), end = page.linked.section
    assert x == pytest.approx(0.25, abs=0.01)
    assert y == pytest.approx(0.75, abs=0.01)
    assert end == (1.0, 0.5)
    assert window.page.plan_view.section == page.linked.section
    assert "from" in page.compare.curves.accessibleDescription()


def test_difference_and_ratio_against_any_baseline(qtbot: QtBot, window: MainWindow) -> None:
    with_linings(window)
    page = side_page(qtbot, window)
    page.compare.open_air.setChecked(True)
    settle(qtbot, page)
    assert page.comparer.sides[-1].name.startswith("Open air")
    combo = page.compare.baseline
    combo.setCurrentIndex(3)
    combo.activated.emit(3)
    assert page.comparer.baseline is page.comparer.sides[3]
    shows = page.compare.shows
    shows.setCurrentIndex(2)
    shows.activated.emit(2)
    assert page.linked.state.shows is Shows.RATIO
    found = page.comparer.against(page.comparer.sides[1])
    assert found is not None
    assert (found.ratio[found.ratio == found.ratio] > 1).all()
    assert page.sheet.difference_bar.isVisible()
    assert page.sheet.difference_bar.legend.unit == ("% more", "or less")
    # The baseline against itself is nothing everywhere.
    base = page.comparer.against(page.comparer.sides[3])
    assert base is not None
    assert base.reach == 0
    assert page.grab().width() > 0
    page.linked.update(shows=Shows.DIFFERENCE)
    assert page.grab().width() > 0
    assert page.table.options.rows[3].values["of_base"] == 100


def test_what_cannot_be_told_is_marked_in_maps_ranking_and_words(
    qtbot: QtBot, window: MainWindow
) -> None:
    near = WHITE.model_copy(update={"key": "near", "name": "Nearly white", "reflectance": 0.83})
    plan = edits.line_all_walls(window.document.plan, WHITE)
    window.document.apply(plan, "Line")
    window.document.apply(try_all(window.document.plan, linings=[near, DARK]), "Try")
    page = side_page(qtbot, window)
    # One input moves each by ±2 % by itself: 0.83 against 0.84 stays open, plywood does not. Both
    # within 5 % are equal for the usual purpose; here half a per cent matters.
    assert page.sheet.cards[1].telling_mark == "= equal"
    enter(qtbot, page.margin.margin, "0.5")
    assert page.sheet.cards[1].telling_mark.endswith("?")
    page.open_question("odds")
    choose(page, 1)
    assert page.odds.isVisible()
    assert "Not clear which is the brighter one" in page.odds.words.text()
    assert "equal for your purpose" not in page.odds.words.text()
    assert "Of all options Nearly white has the most light with" in page.odds.words.text()
    open_cell = page.odds.table.item(1, 1)
    assert open_cell is not None
    assert open_cell.text().endswith("\nnot clear")
    choose(page, 2)
    assert f"{DARK.name} is behind Shelf with more than 99 % probability" in page.odds.words.text()
    cell = page.odds.table.item(2, 1)
    assert cell is not None
    assert cell.text().startswith("−")
    choose(page, 0)
    assert page.odds.words.text().startswith("Of all options Shelf has the most light with")
    # Equal they are only once the user says how much does not matter.
    lines = page.compare.ranking
    qtbot.waitUntil(lambda: [line.equal for line in lines.lines] == [False] * 3)
    enter(qtbot, page.margin.margin, "10")
    assert page.linked.state.margin == pytest.approx(0.1)
    choose(page, 1)
    assert "are equal for your purpose" in page.odds.words.text()
    assert page.sheet.cards[1].telling_mark == "= equal"
    qtbot.waitUntil(lambda: [line.equal for line in lines.lines].count(True) == 1)
    # What decides is the input the two do not share, and a survey would settle it.
    assert "What decides is" in page.odds.words.text()
    qtbot.mouseClick(page.margin.survey, Qt.MouseButton.LeftButton)
    assert window.pages.current == "survey"


def test_the_questions_are_whole_where_the_font_is_large(qtbot: QtBot, window: MainWindow) -> None:
    page = side_page(qtbot, window)
    assert page.state.y() < page.question_bar.height()
    for made in page.question_bar.buttons.values():  # as wide as in a longer language
        made.setMinimumWidth(round(1.02 * page.width() / len(page.question_bar.buttons) - 24))
    page.resize(page.width() - 1, page.height())
    page.state.setText("finding how sure it is…")
    qtbot.waitUntil(lambda: page.state.y() >= page.question_bar.height(), timeout=1000)
    for made in page.question_bar.buttons.values():
        assert made.width() >= made.minimumWidth()


def test_what_comes_in_one_turn_is_drawn_once(
    qtbot: QtBot, window: MainWindow, monkeypatch: pytest.MonkeyPatch
) -> None:
    with_linings(window)
    page = side_page(qtbot, window)
    drawn: list[object] = []
    monkeypatch.setattr(page.compare.ranking, "show_lines", lambda *told: drawn.append(told[-1]))
    # A baseline is written into the plan, which is compared anew, and is a choice of its own;
    # with that come two sides of which it is known how sure they are.
    page.linked.update(baseline=page.comparer.sides[1].identity)
    page.linked.update(chosen=page.comparer.sides[2].identity)
    page.comparer.told.emit()
    page.comparer.told.emit()
    qtbot.waitUntil(lambda: bool(drawn))
    assert drawn == [page.comparer.sides[2].identity]


def test_a_measured_set_stands_in_the_same_ranking(qtbot: QtBot, window: MainWindow) -> None:
    survey = Survey(
        key="s",
        name="First reading",
        points=((0.2, 0.5), (0.8, 0.5)),
        readings=(Reading(hole=1, value=30.0), Reading(hole=2, value=50.0)),
    )
    window.document.apply(edits.changed(window.document.plan, surveys=(survey,)), "Survey")
    page = side_page(qtbot, window)
    line = next(one for one in page.compare.ranking.lines if one.measured)
    assert (line.name, line.lowest, line.mean, line.highest) == ("First reading", 30, 40, 50)
    assert "First reading: measured" in page.compare.ranking.accessibleDescription()


def test_costs_and_stages_compute_no_light_anew(qtbot: QtBot, window: MainWindow) -> None:
    page = side_page(qtbot, window)
    before = [side.estimate for side in page.comparer.sides]
    costs = Costs(price_per_kwh=0.3)
    window.document.apply(edits.changed(window.document.plan, costs=costs), "Set tariff")
    assert not page.comparer.lane.busy
    assert not page.comparer._settle.isActive()
    after = [side.estimate for side in page.comparer.sides]
    for one, other in zip(before, after, strict=True):
        assert one is not None
        assert other is not None
        assert one.ppfd is other.ppfd


def test_an_edit_while_computing_drops_what_is_stale(qtbot: QtBot, window: MainWindow) -> None:
    page = side_page(qtbot, window)
    seen: list[float] = []
    page.comparer.compared.connect(
        lambda: seen.append(page.comparer.sides[0].plan.lamps[0].output_percent)
    )
    for output in (10.0, 20.0, 30.0):
        dimmed = edits.change_lamp(window.document.plan, 0, output_percent=output)
        window.document.apply(dimmed, "Dim")
    settle(qtbot, page)
    assert seen
    assert set(seen) == {30.0}


def test_what_cannot_be_computed_is_said(
    qtbot: QtBot, window: MainWindow, monkeypatch: pytest.MonkeyPatch
) -> None:
    page = side_page(qtbot, window)

    def refuse(*_: Any, **__: Any) -> Any:
        raise ValueError("Something does not fit.")

    monkeypatch.setattr("planner.app.pages.side.comparer.compare", refuse)
    window.document.apply(edits.change_lamp(window.document.plan, 0, output_percent=9.0), "Dim")
    qtbot.waitUntil(lambda: "Something does not fit" in page.alert.text())
    assert page.sheet.cards[0].side is not None


def test_light_and_dark_are_equals(qtbot: QtBot, window: MainWindow) -> None:
    with_linings(window)
    page = side_page(qtbot, window)
    page.linked.update(shows=Shows.DIFFERENCE)
    card = page.sheet.cards[0]
    middle = card.viewport().to_pixel(0.5, 0.4).toPoint()
    for dark in (False, True):
        page.setPalette(palette(dark=dark))
        ground = palette(dark=dark).color(QPalette.ColorRole.Base)
        # The baseline against itself is nothing: the ground of the theme.
        assert card.grab().toImage().pixelColor(middle).rgb() == ground.rgb()


def test_a_variant_is_renamed_moved_removed_and_adopted_by_keys(
    qtbot: QtBot, window: MainWindow
) -> None:
    with_linings(window)
    page = side_page(qtbot, window)
    card = page.sheet.cards[1]
    card.setFocus()
    qtbot.mouseClick(card, Qt.MouseButton.LeftButton, pos=QPoint(30, 10))
    assert chosen(page) == 1
    qtbot.keyClick(card, Qt.Key.Key_F2)
    qtbot.keyClicks(card.name_line, "Dim")
    qtbot.keyClick(card.name_line, Qt.Key.Key_Escape)
    assert (chosen(page), window.focusWidget()) == (1, card)
    qtbot.keyClick(card, Qt.Key.Key_F2)
    assert window.focusWidget() is card.name_line
    qtbot.keyClicks(card.name_line, "Bright")
    qtbot.keyClick(card.name_line, Qt.Key.Key_Return)
    assert not card.name_line.isVisible()
    settle(qtbot, page)
    undo = window.document.undo_stack
    assert variant_names(window) == ["Bright", DARK.name]
    assert undo.undoText() == "Rename option Bright"
    qtbot.keyClick(card, Qt.Key.Key_Right, Qt.KeyboardModifier.ControlModifier)
    settle(qtbot, page)
    assert variant_names(window) == [DARK.name, "Bright"]
    assert chosen(page) == 2
    page.sheet.cards[2].setFocus()
    qtbot.keyClick(page.sheet.cards[2], Qt.Key.Key_Left)
    assert chosen(page) == 1
    qtbot.keyClick(page.sheet.cards[1], Qt.Key.Key_Delete)
    settle(qtbot, page)
    assert variant_names(window) == ["Bright"]
    before = undo.count()
    page.sheet.cards[1].setFocus()
    qtbot.keyClick(page.sheet.cards[1], Qt.Key.Key_Return)
    settle(qtbot, page)
    assert undo.count() == before + 1
    assert undo.undoText() == "Adopt option Bright"
    assert window.document.plan.walls[0].bands[0].lining == WHITE.key
    assert window.document.plan.variants == ()
    undo.undo()
    settle(qtbot, page)
    assert variant_names(window) == ["Bright"]


def test_a_kept_option_keeps_its_lamp_when_the_sketch_loses_it(
    qtbot: QtBot, window: MainWindow
) -> None:
    lower = edits.change_lamp(window.document.plan, 0, output_percent=50.0)
    window.document.apply(lower, "Dim")
    trigger(window, "keep_variant")
    window.document.apply(edits.remove_lamp(window.document.plan, 0), "Remove lamp")
    page = side_page(qtbot, window)
    kept = page.sheet.cards[1].side
    assert kept is not None
    assert kept.problems == ()
    assert kept.said == ("one more lamp: Panel",)
    assert [len(side.plan.lamps) for side in page.comparer.sides] == [0, 1]
    assert kept.estimate is not None
    assert kept.estimate.figures.mean > 0
    assert "one more lamp: Panel" in page.sheet.cards[1].accessibleDescription()


def test_the_table_is_sorted_copied_and_exported(
    qtbot: QtBot, shell: tuple[MainWindow, ReadyAnswers], tmp_path: Path
) -> None:
    window, answers = shell
    with_linings(window)
    page = side_page(qtbot, window)
    page.table.sortByColumn(0, Qt.SortOrder.DescendingOrder)
    names = [row.side.name for row in page.table.options.rows]
    assert names == [WHITE.name, DARK.name, "Shelf"]
    page.copy_button.click()
    lines = QGuiApplication.clipboard().text().splitlines()
    assert [line.split("\t")[0] for line in lines] == ["Name", *names]
    assert "Mean (µmol m⁻² s⁻¹)" in lines[0]
    answers.to_save = tmp_path / "table"
    page.export_button.click()
    text = (tmp_path / "table.csv").read_text("utf-8")
    assert text.splitlines()[0].startswith("Name,Differs in,")
    answers.to_save = tmp_path / "missing" / "table.csv"
    assert not page.export_table()
    assert answers.told
    page.table.setCurrentIndex(page.table.options.index(0, 0))
    assert chosen(page) == 1
    # A wish leaves out what misses it; here only what is brighter than plywood.
    dli = [row.values["dli"] or 0.0 for row in page.table.options.rows]
    enter(qtbot, page.compare.wishes["dli_low"], f"{(dli[0] + dli[1]) / 2:.2f}")
    assert [row.side.name for row in page.table.options.rows] == [WHITE.name]
    assert page.left_out.text() == "2 of 3 miss a wish"
    enter(qtbot, page.compare.wishes["dli_low"], "")
    assert page.table.options.rowCount() == 3


def turn(page: SideBySidePage, *turns: Turn) -> None:
    """Tick by mouse what may be turned, and nothing else."""
    for key, box in page.finding.turns.items():
        if box.isChecked() != (key in turns):
            box.click()


def find(qtbot: QtBot, page: SideBySidePage) -> Found:
    before = page.find_board.found
    page.finding.line.ask.click()
    qtbot.waitUntil(lambda: page.find_board.found is not before, timeout=60_000)
    found = page.find_board.found
    assert found is not None
    return found


def test_the_hours_are_found_and_used(qtbot: QtBot, window: MainWindow) -> None:
    """DLI 2 at the mean as it is: the quarter of an hour above 2e6 / 3600 / mean."""
    page = side_page(qtbot, window)
    page.question_bar.buttons["find"].click()
    mean = page.comparer.sides[0].estimate
    assert mean is not None
    turn(page, Turn.HOURS)
    enter(qtbot, page.finding.wishes["dli_low"], "2")
    enter(qtbot, page.finding.wishes["dli_high"], "")
    assert page.finding.wished.dli_high is None
    choose_aim(page, Aim.ENERGY)
    found = find(qtbot, page)
    hours = 2e6 / 3600 / mean.figures.mean
    quarters = math.ceil(4 * hours) / 4
    assert f"{quarters:.4g} h a day" in found.words
    assert page.find_board.told.text().endswith(f"{quarters:.4g} h a day.")
    page.find_board.use_button.click()
    assert window.document.plan.photoperiod_hours == pytest.approx(quarters)
    assert window.document.undo_stack.undoText() == f"Use {quarters:.4g} h"
    # The answers stay to be looked at and say of which plan they are.
    assert page.find_board.found is found
    assert "before it was changed" in page.find_board.stale.text()
    assert page.find_board.stale.isVisible()
    window.document.undo_stack.undo()
    assert not page.find_board.stale.isVisible()


def choose_aim(page: SideBySidePage, aim: Aim) -> None:
    combo = page.finding.aim
    combo.setCurrentIndex(combo.findData(aim))
    combo.activated.emit(combo.currentIndex())


def test_the_answers_nothing_beats_stand_side_by_side(qtbot: QtBot, window: MainWindow) -> None:
    page = side_page(qtbot, window)
    page.open_question("find")
    # What is wished is the plan's target: 40 to 80 µmol/m²/s in 16 h, 2.304 to 4.608 mol.
    assert page.finding.wished.dli_low == pytest.approx(2.30, abs=0.005)
    assert page.finding.wished.dli_high == pytest.approx(4.61, abs=0.005)
    assert not page.find_board.use_button.isVisible()
    found = find(qtbot, page)
    board = page.find_board
    rows = board.table.options.rows
    assert len(rows) == len(found.rows) > 2
    assert rows[0].side.name == window.document.plan.name
    assert board.chosen is not None
    assert board.chosen.name == rows[1].side.name
    assert f"{len(rows) - 1} answers that none of" in page.finding.line.words.text()
    assert {spot.name for spot in board.chart.best} >= {rows[1].side.name, rows[-1].side.name}
    # A click on a row chooses it; it is kept as an option, and then used, each one step.
    board.table.selectRow(2)
    assert board.chosen is not None
    name = board.chosen.name
    assert board.told.text() == in_unit(found.told[board.chosen.identity], LengthUnit.CM)
    board.keep_button.click()
    assert [variant.name for variant in window.document.plan.variants] == [name]
    assert window.document.undo_stack.undoText() == f"Keep option {name}"
    assert window.document.plan.lamps != board.chosen.plan.lamps
    board.use_button.click()
    assert window.document.undo_stack.undoText() == f"Use {name}"
    assert window.document.plan.lamps == board.chosen.plan.lamps
    assert [variant.name for variant in window.document.plan.variants] == [name]
    settle(qtbot, page)
    used = page.comparer.sides[0].estimate
    assert used is not None
    assert 40 <= used.figures.mean <= 80
    # The plan as it was is no answer.
    board.table.selectRow(0)
    assert not board.use_button.isEnabled()
    assert board.told.text() == "The plan as it was."


def test_wishes_that_cannot_be_kept_are_said_and_the_nearest_is_shown(
    qtbot: QtBot, window: MainWindow
) -> None:
    page = side_page(qtbot, window)
    page.open_question("find")
    enter(qtbot, page.finding.wishes["min_over_mean"], "99")
    found = find(qtbot, page)
    assert found.words.startswith("The wishes cannot be kept: Min / mean ")
    assert "is under 99. The nearest:" in found.words
    assert "the nearest is shown" in page.finding.line.words.text()
    assert len(found.rows) == 2


@pytest.mark.slow
def test_numbers_and_places_of_lamps_and_linings_are_sought(
    qtbot: QtBot, window: MainWindow
) -> None:
    page = side_page(qtbot, window)
    page.open_question("find")
    form = page.finding
    assert not form.linings.isVisible()
    turn(page, Turn.OUTPUT, Turn.PLACES, Turn.LAMPS, Turn.LINING)
    assert form.linings.isVisible()
    (_, low), (_, high) = form._counts
    enter(qtbot, low, "2")
    enter(qtbot, high, "2")
    form.linings.tick(WHITE.key)
    found = find(qtbot, page)
    page.find_board.use_button.click()
    plan = window.document.plan
    assert len(plan.lamps) == 2
    assert {lamp.output_percent for lamp in plan.lamps} == {plan.lamps[0].output_percent}
    settle(qtbot, page)
    used = page.comparer.sides[0].estimate
    assert used is not None
    # Just enough light: 40 µmol/m²/s, in whole per cents of output.
    assert 40 <= used.figures.mean <= 42
    assert " lamps" in found.rows[1].side.name
    window.document.undo_stack.undo()
    assert len(window.document.plan.lamps) == 1


def test_the_plans_own_number_of_lamps_is_always_among_those_tried(
    qtbot: QtBot, window: MainWindow
) -> None:
    page = side_page(qtbot, window)
    page.open_question("find")
    form = page.finding
    turn(page, Turn.LAMPS)
    assert form.question().counts == (1, 2, 3, 4)
    assert not form.own_count.isVisible()
    one = window.document.plan.lamps[0]
    for many, counts in ((5, (1, 2, 3, 4, 5)), (24, (1, 2, 3, 4, 5, 6, 24))):
        plan = edits.changed(window.document.plan, lamps=(one,) * many)
        window.document.apply(plan, "Hang lamps")
        assert form.question().counts == counts
        check(plan, form.question())
    assert form.own_count.isVisible()
    assert form.own_count.text() == "The 24 lamps of the plan are tried as well."
    # Places of so many are not sought.
    turn(page, Turn.LAMPS, Turn.PLACES)
    assert form.question().counts == (1, 2, 3, 4, 5, 6)
    assert not form.own_count.isVisible()


def test_a_search_that_is_stopped_shows_its_best_so_far(
    qtbot: QtBot, window: MainWindow, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The search waits after some estimates until it is told to stop, as a long one would."""
    page = side_page(qtbot, window)
    page.open_question("find")
    told: list[float] = []

    def held(*given: Any, progress: Any, cancelled: Any, **named: Any) -> object:
        def tell(fraction: float) -> None:
            told.append(fraction)
            progress(fraction)
            patience = threading.Event()
            for _ in range(3000):
                if len(told) != 4 or cancelled():
                    break
                patience.wait(0.01)

        return seek(*given, progress=tell, cancelled=cancelled, **named)

    monkeypatch.setattr("planner.app.pages.side.find_form.find", held)
    page.finding.line.ask.click()
    qtbot.waitUntil(lambda: len(told) == 4, timeout=30_000)
    qtbot.waitUntil(lambda: page.finding.line.bar.value() > 0)
    assert not page.finding.line.ask.isEnabled()
    # The plan may be edited meanwhile: what is found says of which plan it is.
    window.document.apply(edits.line_all_walls(window.document.plan, DARK), "Line")
    qtbot.mouseClick(page.finding.line.stop, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: page.find_board.found is not None, timeout=30_000)
    found = page.find_board.found
    assert found is not None
    assert found.words.startswith("The most even of what was tried so far: Hang the lamp")
    assert page.find_board.stale.text() == "These answers are of 'Shelf' before it was changed."
    assert page.find_board.stale.isVisible()
    assert page.finding.line.ask.isEnabled()


def test_three_ways_to_one_level(qtbot: QtBot, window: MainWindow) -> None:
    page = side_page(qtbot, window)
    page.open_question("find")
    form, board = page.finding, page.find_board
    form.kind.setCurrentIndex(1)
    form.kind.activated.emit(1)
    assert form.line.ask.text() == "Find three ways"
    assert form.level.isVisible()
    assert not form.turns[Turn.HEIGHT].isVisible()
    # The middle of the target, 40 to 80.
    assert form.level.value == 60
    own = page.comparer.sides[0].estimate
    assert own is not None
    wanted = round(0.75 * own.figures.mean)
    enter(qtbot, form.level, str(wanted))
    # Without a tick the plan's own and the brightest of the catalogue are tried.
    brightest = max(CATALOGUE.linings, key=lambda one: one.reflectance)
    assert f"Line with {brightest.name}, dim to " in find(qtbot, page).words
    form.linings.tick(WHITE.key)
    found = find(qtbot, page)
    names = [row.side.name for row in found.rows]
    output = round(100 * wanted / own.figures.mean)
    assert names[1] == f"Dim to {output} %"
    assert names[2].startswith(("Raise to", "Lower to"))
    assert names[3].startswith(f"Line with {WHITE.name}, dim to ")
    assert "3 of 3 ways reach it." in form.line.words.text()
    for unit in (LengthUnit.INCH, LengthUnit.CM):
        window.display.update(unit=unit)
        shown = board.table.model().headerData(2, Qt.Orientation.Vertical).replace("\n", " ")
        hung = found.rows[2].side.plan.lamps[0].hanging_height / unit.metres
        assert f"to {round(hung, unit.decimals):g} {unit.value}" in shown
        assert shown in board.words.text()
    assert board.words.text().count("instead of 100") == 2
    board.table.selectRow(1)
    board.use_button.click()
    assert window.document.undo_stack.undoText() == f"Use Dim to {output} %"
    assert window.document.plan.lamps[0].output_percent == pytest.approx(output)
    window.document.undo_stack.undo()
    plan = window.document.plan
    for k, lamp in enumerate(plan.lamps):
        plan = edits.change_lamp(plan, k, model=edits.changed(lamp.model, dimmable=False))
    window.document.apply(plan, "Set lamp as not dimmable")
    assert "The lamps cannot be dimmed." in find(qtbot, page).words


def test_a_question_that_cannot_be_asked_says_what_is_missing(
    qtbot: QtBot, window: MainWindow
) -> None:
    window.document.apply(edits.remove_lamp(window.document.plan, 0), "Remove lamp")
    page = side_page(qtbot, window)
    page.open_question("find")
    alert = page.finding.line.alert
    page.finding.line.ask.click()
    qtbot.waitUntil(lambda: bool(alert.text()))
    assert alert.text().endswith("Hang one lamp first.")
    window.document.undo_stack.undo()
    choose_aim(page, Aim.CHEAP)
    page.finding.line.ask.click()
    qtbot.waitUntil(lambda: "price" in alert.text())
    assert alert.text().endswith("Write the price of 1 kWh first: without it no total is known.")
    # An answer to the question before stays, marked as such, and cannot be used for this one.
    choose_aim(page, Aim.EVEN)
    board = page.find_board
    find(qtbot, page)
    assert board.use_button.isEnabled()
    choose_aim(page, Aim.CHEAP)
    page.finding.line.ask.click()
    qtbot.waitUntil(lambda: "price" in alert.text())
    assert board.stale.isVisible()
    assert board.stale.text() == "These answers are of the former question."
    assert not board.use_button.isEnabled()
    assert not board.keep_button.isEnabled()
    before = window.document.plan
    board.use()
    assert window.document.plan is before
    # The price stands beside the question, and is the plan's own: one undo step.
    tariff = page.finding._prices[0].box
    assert tariff.isVisible()
    enter(qtbot, tariff, "0.30")
    assert window.document.plan.costs.price_per_kwh == 0.30
    assert window.document.undo_stack.undoText() == "Set tariff"
    found = find(qtbot, page)
    assert found.money
    assert found.words.startswith("The cheapest of what was tried")
    # Its totals were reckoned at that price.
    assert not page.find_board.stale.isVisible()
    enter(qtbot, tariff, "0.60")
    assert page.find_board.stale.isVisible()


def test_a_growth_schedule_is_written_and_answered(
    qtbot: QtBot, shell: tuple[MainWindow, ReadyAnswers], tmp_path: Path
) -> None:
    window, answers = shell
    page = side_page(qtbot, window)
    page.open_question("schedule")
    board = page.schedule
    assert not board.line.ask.isEnabled()
    board.add_button.click()
    board.crops.setCurrentIndex(1)
    board.add_button.click()
    plan = window.document.plan
    assert len(plan.schedule) == 2
    assert window.document.undo_stack.undoText().startswith("Add stage")
    model = board.model
    assert model.setData(model.index(0, 1), "30 cm")
    assert window.document.plan.schedule[0].canopy_height == 0.3
    assert not model.setData(model.index(0, 1), "tall")
    assert "not a length" in board.alert.text()
    assert model.setData(model.index(0, 5), "3")
    assert board.alert.text() == ""
    board.table.setCurrentIndex(model.index(1, 0))
    board.remove_button.click()
    assert len(window.document.plan.schedule) == 1
    lined = edits.line_all_walls(window.document.plan, WHITE)
    window.document.apply(add_variants(window.document.plan, ("White", lined)), "Keep")
    enter(qtbot, board.form.tariff.box, "0.50")
    board.form.aim.setCurrentIndex(board.form.aim.findData(Aim.ENERGY))
    board.line.ask.click()
    qtbot.waitUntil(lambda: board.found is not None, timeout=30_000)
    assert model.data(model.index(0, 6)).endswith("cm")
    assert board.line.words.text().startswith("2 of 2 options reach the target of every stage with")
    heed = model.index(0, model.columnCount() - 1)
    assert "% of the canopy inside" in model.data(heed)
    # It is read whole: the row is as tall as its wrapped lines.
    words = board.table.fontMetrics().boundingRect(
        0, 0, board.table.columnWidth(heed.column()), 1000, Qt.TextFlag.TextWordWrap,
        model.data(heed),
    )  # fmt: skip
    assert board.table.rowHeight(0) >= words.height()
    # And in a narrow window in lines of some words, not one word under another.
    board.table.setMaximumWidth(board.table.horizontalHeader().sectionPosition(heed.column()) + 60)
    settle(qtbot, page)
    assert board.table.rowHeight(0) < 8 * board.table.fontMetrics().height()
    tall = replace(board.found.stages[0], warnings=(f"leaves {said_length(0.4)}",))  # type: ignore[union-attr]
    model.refresh(replace(board.found, stages=(tall,)))  # type: ignore[type-var]
    assert model.data(heed) == "leaves 40 cm"
    window.display.update(unit=LengthUnit.INCH)
    model.refresh(replace(board.found, stages=(tall,)))  # type: ignore[type-var]
    # 40 / 2.54 = 15.75 in
    assert model.data(heed) == "leaves 15.75 in"
    window.display.update(unit=LengthUnit.CM)
    assert board.sums.text().startswith("3 weeks, ")
    # A total for the plan and for its option; white walls need less, at 0.50 a kWh.
    totals = board.form.totals
    assert [totals.item(row, 0).text() for row in range(2)] == ["Shelf", "White"]  # type: ignore[union-attr]
    own, white = board.all
    assert float(totals.item(1, 1).text()) == pytest.approx(white.kwh, rel=0.005)  # type: ignore[union-attr]
    assert totals.item(1, 2).text() == f"{0.50 * white.kwh:.2f}"  # type: ignore[union-attr]
    assert white.kwh < own.kwh
    # The slider of the sketch moves along this very answer, not along one of its own.
    window.page.growing.ask()
    assert window.page.growing._found is own
    assert QUICK not in window.page.growing.slider.accessibleDescription()
    window.document.undo_stack.undo()
    hung = model.data(model.index(0, 6)), model.data(model.index(0, 11))
    totals.setCurrentCell(1, 0)
    assert board.found is white
    assert board.sums.text() == f"3 weeks, {white.kwh:.3g} kWh, {0.50 * white.kwh:.2f}"
    assert (model.data(model.index(0, 6)), model.data(model.index(0, 11))) != hung
    answers.to_save = tmp_path / "sheet"
    board.form.print_button.click()
    assert answers.proposed[-1].name == "White week by week.pdf"
    assert (tmp_path / "sheet.pdf").read_bytes().startswith(b"%PDF")
    assert window.statusBar().currentMessage() == "Wrote sheet.pdf"
    answers.to_save = tmp_path / "nowhere" / "sheet.pdf"
    board.form.print_button.click()
    assert answers.told
    assert board.grab().width() > 0
    # Each stage hangs the lamps anew: a lamp raised by hand takes no answer away.
    window.document.apply(
        edits.change_lamp(window.document.plan, 0, hanging_height=0.2), "Set lamp height"
    )
    assert board.found is white
    window.document.apply(edits.line_all_walls(window.document.plan, DARK), "Line")
    assert board.found is None
    assert not totals.isVisible()


def test_asked_is_how_the_lining_to_buy_is_sold_not_the_one_that_is_there(
    qtbot: QtBot, window: MainWindow
) -> None:
    dark = edits.line_all_walls(window.document.plan, DARK)
    white = edits.line_all_walls(dark, WHITE)
    window.document.apply(add_variants(dark, ("White", white)), "Line")
    page = side_page(qtbot, window)
    page.question_bar.buttons["worth"].click()
    form = page.worth
    assert form.lining.currentData() == DARK.key
    choose(page, 1)
    settle(qtbot, page)
    assert form.lining.currentData() == WHITE.key
    # Whoever then turns to another is not led back.
    form.lining.setCurrentIndex(form.lining.findData(DARK.key))
    form.lining.activated.emit(form.lining.currentIndex())
    enter(qtbot, form.price, "30")
    settle(qtbot, page)
    assert form.lining.currentData() == DARK.key


def test_no_map_lies_out_of_sight_where_the_window_shrank_behind_another_page(
    qtbot: QtBot, window: MainWindow
) -> None:
    with_linings(window)
    page = side_page(qtbot, window)
    for before, after in ((1500, 960), (960, 1500)):
        window.resize(before, 800)
        page.open_question("options")
        qtbot.wait(20)
        page.open_question("schedule")
        window.resize(after, 800)
        qtbot.wait(20)
        page.open_question("options")
        qtbot.wait(20)
        room = page.sheet._area.viewport().width()
        right = max(card.geometry().right() for card in page.sheet.cards)
        assert room - 30 < right + 1 <= room


def test_another_plan_is_not_shown_with_what_the_old_one_had_to_buy(
    qtbot: QtBot, window: MainWindow
) -> None:
    """Its options have the keys of the old ones, and know nothing of their linings."""
    with_linings(window)
    page = side_page(qtbot, window)
    settle(qtbot, page)
    goods = tuple(Goods(lining=one.key, width=1.0, length=10.0, price=5.0) for one in (WHITE, DARK))
    plan = window.document.plan
    window.document.apply(edits.changed(plan, costs=Costs(goods=goods)), "Set prices")
    settle(qtbot, page)
    foil = CATALOGUE.lining("foil-shiny")
    window.document.replace(try_all(small_plan("Other"), linings=[foil, WHITE]), None)
    settle(qtbot, page)
    told = page.comparer.option(page.comparer.sides[1])
    assert "Aluminium foil" in told.buy


def test_what_a_lining_is_worth(qtbot: QtBot, window: MainWindow) -> None:
    with_linings(window)
    page = side_page(qtbot, window)
    page.question_bar.buttons["worth"].click()
    choose(page, 1)
    form = page.worth
    assert "more light a day than Shelf and draws 100 W as well" in page.worth_board.words.text()
    assert "Say how its linings are sold to see what it costs." in page.worth_board.words.text()
    drawing = page.worth_board.drawing
    assert drawing.empty == "Say how the linings are sold, and the pieces are laid out here."
    assert drawing.accessibleDescription() == drawing.empty
    # While it is laid out, and where every lining is there, nobody is asked to say anything.
    page.worth_board.show_bill(window.document.plan, "Shelf", None, ())
    assert drawing.empty == ""
    page.worth_board.show_bill(window.document.plan, "Shelf", Bill(), ())
    assert drawing.empty == "No lining has to be bought, so nothing is cut."
    enter(qtbot, form.tariff, "0,40")
    assert window.document.plan.costs.price_per_kwh == 0.4
    assert window.document.undo_stack.undoText() == "Set tariff"
    line = form.lining.findData(WHITE.key)
    form.lining.setCurrentIndex(line)
    form.lining.activated.emit(line)
    enter(qtbot, form.sold["width"], "125 cm")
    enter(qtbot, form.sold["length"], "20 m")
    enter(qtbot, form.price, "30")
    assert window.document.plan.costs.goods_of(WHITE.key) is not None
    # Four walls of 1 x 2 m with an overlap of 2 cm a side: 1.04 x 2.04 m each, one a shelf.
    settle(qtbot, page)
    cell = page.worth_board.table.item(0, 3)
    assert cell is not None
    assert cell.text() == "1 roll"
    settle(qtbot, page)
    assert "What has to be bought costs 30.00" in page.worth_board.words.text()
    assert "it is paid back after" in page.worth_board.words.text()
    assert len(page.worth_board.drawing.words()) == 4
    # 100 W at 5 K: 100 / (1.2 · 1005 · 5) · 3600 = 59.7 m³/h
    assert "60 m³/h" in form.air.text()
    assert page.worth_board.grab().width() > 0
    enter(qtbot, form.rise, "10")
    assert "30 m³/h" in form.air.text()


@pytest.mark.parametrize("size", [(910, 512), (1280, 800), (1920, 1080)])
def test_the_answer_keeps_the_largest_part(
    qtbot: QtBot, window: MainWindow, size: tuple[int, int]
) -> None:
    """910 x 512 is what a screen of 1366 x 768 holds at 150 %."""
    with_linings(window)
    page = side_page(qtbot, window)
    page.setParent(None)
    page.setFixedSize(size[0], size[1] - 110)  # less menus, names of pages and the state line
    page.show()
    for key, main in (
        ("options", page.sheet), ("odds", page.odds), ("cost", page.trade_off),
        ("sweep", page.sweep_board), ("find", page.find_board), ("schedule", page.schedule),
        ("worth", page.worth_board),
    ):  # fmt: skip
        page.open_question(key)
        qtbot.wait(1)
        assert main.isVisible()
        assert main.width() >= size[0] / 2
        assert main.mapTo(page, main.rect().bottomRight()).y() <= page.height()
    page.open_question("options")
    qtbot.wait(1)
    assert page.sheet.height() >= 0.35 * page.height()
    page.close()
    page.setParent(window)


def test_the_baseline_is_kept_with_the_plan_and_follows_its_variant(
    qtbot: QtBot, window: MainWindow
) -> None:
    with_linings(window)
    page = side_page(qtbot, window)
    choose(page, 2)
    page.bar.do_baseline()
    key = window.document.plan.variants[1].key
    assert window.document.plan.baseline == key
    assert page.comparer.baseline is not None
    assert page.comparer.baseline.key == key
    choose(page, 1)
    page.bar.do_remove()
    settle(qtbot, page)
    # Another option was taken out: what the rest is measured against stays.
    assert page.comparer.baseline.key == key
    choose(page, 1)
    page.bar.do_remove()
    settle(qtbot, page)
    assert window.document.plan.baseline is None
    assert page.comparer.baseline is page.comparer.sides[0]
    window.document.undo_stack.undo()
    settle(qtbot, page)
    assert window.document.plan.baseline == key
    assert page.comparer.baseline.key == key


def test_a_pointer_paints_itself_and_nothing_else(
    qtbot: QtBot, window: MainWindow, monkeypatch: pytest.MonkeyPatch
) -> None:
    with_linings(window)
    page = side_page(qtbot, window)
    page.grab()
    painted: list[MapCard] = []
    paint = MapCard._paint_still

    def counting(card: MapCard, onto: QPixmap) -> None:
        painted.append(card)
        paint(card, onto)

    monkeypatch.setattr(MapCard, "_paint_still", counting)
    card = page.sheet.cards[0]
    at = card.viewport().to_pixel(0.5, 0.5).toPoint()
    for step in range(5):
        page.linked.point_at(card.viewport().to_world((at + QPoint(3 * step, 0)).toPointF()))
        page.grab()
    assert painted == []
    page.linked.cut_along(((0.2, 0.2), (0.8, 0.8)))
    page.grab()
    assert painted == page.sheet.cards


def test_the_pointer_reads_the_unit_of_the_map(qtbot: QtBot, window: MainWindow) -> None:
    """Half the output is half the light everywhere: −50 %, and minus half of what was there."""
    half = edits.change_lamp(window.document.plan, 0, output_percent=50.0)
    window.document.apply(add_variants(window.document.plan, ("Half", half)), "Keep")
    page = side_page(qtbot, window)
    plan_card, card = page.sheet.cards
    page.linked.point_at((0.5, 0.5))
    light = plan_card.value_at_pointer()
    assert light is not None
    page.linked.update(shows=Shows.RATIO)
    assert card.pointer_text() == "−50 %"
    page.linked.update(shows=Shows.DIFFERENCE)
    assert card.value_at_pointer() == pytest.approx(-light / 2, rel=0.01)
    assert card.pointer_text().startswith("−")


def test_the_menu_duplicates_and_a_double_click_opens_on_the_sketch(
    qtbot: QtBot, window: MainWindow
) -> None:
    with_linings(window)
    page = side_page(qtbot, window)
    choose(page, 1)
    menu = page.bar.menu()
    texts = [action.text() for action in menu.actions()]
    assert texts == [
        "Open on the sketch", "Adopt", "As baseline", "Duplicate", "Rename", "Later", "Remove"
    ]  # fmt: skip
    next(action for action in menu.actions() if action.text() == "Duplicate").trigger()
    menu.close()
    settle(qtbot, page)
    assert variant_names(window) == [WHITE.name, f"{WHITE.name}, copy", DARK.name]
    card = page.sheet.cards[3]
    qtbot.mouseDClick(card, Qt.MouseButton.LeftButton, pos=QPoint(30, 60))
    assert window.pages.current == "sketch"
    plan = window.document.plan
    assert plan.walls[0].bands[0].lining == DARK.key
    # It stays in the list, and what was on the sketch is not lost.
    assert variant_names(window)[2] == DARK.name
    assert plan.variants[3].name == "Shelf, before"
    assert plan.variants[3].setup.walls[0].bands[0].lining == "open"
    window.document.undo_stack.undo()
    assert len(window.document.plan.variants) == 3


def test_a_name_dragged_in_the_table_moves_the_option(qtbot: QtBot, window: MainWindow) -> None:
    with_linings(window)
    page = side_page(qtbot, window)
    page.table.verticalHeader().moveSection(2, 1)
    settle(qtbot, page)
    assert variant_names(window) == [DARK.name, WHITE.name]
    assert [row.side.name for row in page.table.options.rows] == ["Shelf", DARK.name, WHITE.name]
    assert window.document.undo_stack.undoText() == f"Move option {DARK.name}"
    # The same on the maps, by the key of what was dragged.
    keys = [variant.key for variant in window.document.plan.variants]
    page.sheet.dropped.emit(keys[1], keys[0])
    settle(qtbot, page)
    assert variant_names(window) == [WHITE.name, DARK.name]


def test_the_baseline_never_changes_without_a_word(qtbot: QtBot, window: MainWindow) -> None:
    with_linings(window)
    page = side_page(qtbot, window)
    choose(page, 2)
    page.bar.do_baseline()
    said: list[str] = []
    page.told.connect(said.append)
    page.bar.do_remove()
    settle(qtbot, page)
    assert any("was the baseline and is gone" in words and "'Shelf'" in words for words in said)


def test_only_questions_that_were_asked_are_made(qtbot: QtBot, window: MainWindow) -> None:
    """A chart takes longer to make than all fields beside it; nobody waits for unseen ones."""
    page = side_page(qtbot, window)
    charts = page.findChildren(Chart)
    assert {chart.accessibleName() for chart in charts} == {
        page.compare.ranking.accessibleName(),
        page.compare.curves.accessibleName(),
    }
    asked = set()
    for key, button in page.question_bar.buttons.items():
        button.click()
        asked.add(key)
        assert set(page.screens) == asked - {"options"}
        new = set(page.findChildren(Chart)) - set(charts)
        assert all(page.asked.page(key).isAncestorOf(chart) for chart in new)
        charts = page.findChildren(Chart)
    assert len(charts) > 5


def test_a_question_made_late_shows_what_is_known_already(qtbot: QtBot, window: MainWindow) -> None:
    plan = window.document.plan
    wood = edits.line_all_walls(plan, DARK)
    window.document.apply(add_variants(plan, ("Wood", wood)), "Keep")
    page = side_page(qtbot, window)
    choose(page, 1)
    page.question_bar.buttons["cost"].click()
    assert len(page.trade_off.all) == 2
    page.question_bar.buttons["odds"].click()
    assert page.odds.table.rowCount() == 2
    assert "Wood" in page.odds.words.text()
    page.question_bar.buttons["worth"].click()
    assert "Wood" in page.worth_board.heading.text()
    # A column made late is as wide as that of the page's first question.
    assert len({area.width() for area in page._columns if area.isVisibleTo(page)}) == 1
    assert {area.maximumWidth() for area in page._columns} == {page._columns[0].width()}


def test_light_against_cost_joins_what_nothing_beats(qtbot: QtBot, window: MainWindow) -> None:
    """Half the output halves light and energy; wood on open walls gives more for the same."""
    plan = window.document.plan
    half = edits.change_lamp(plan, 0, output_percent=50.0)
    wood = edits.line_all_walls(plan, DARK)
    window.document.apply(add_variants(plan, ("Half", half), ("Wood", wood)), "Keep")
    page = side_page(qtbot, window)
    page.question_bar.buttons["cost"].click()
    # Without prices the choice stands on what the chart is drawn by, and says where prices are.
    assert page.axes.cost.currentData() == "kwh"
    assert "Prices are written under 'Worth it'" in page.axes.words.text()
    assert [spot.name for spot in page.trade_off.best] == ["Half", "Wood"]
    assert len(page.trade_off.all) == 3
    choose(page, 0)
    page.trade_off.setFocus()
    # Of equal cost the brighter one stands first: Half, Wood, Shelf.
    qtbot.keyClick(page.trade_off, Qt.Key.Key_Left)
    assert chosen(page) == 2
    costs = Costs(price_per_kwh=0.3)
    window.document.apply(edits.changed(window.document.plan, costs=costs), "Set tariff")
    settle(qtbot, page)
    # 100 W for 16 h a day at 0.30: 14.61 a month, 175.32 a year; the wood has no price.
    costs_shown = {spot.name: spot.cost for spot in page.trade_off.all}
    assert costs_shown["Shelf"] == pytest.approx(
        12 * 0.3 * 0.1 * window.document.plan.photoperiod_hours * 30.4375
    )
    assert "Wood" not in costs_shown
    assert page.axes.cost.currentData() == "total"
    assert [spot.name for spot in page.trade_off.best] == ["Half", "Shelf"]
    assert "1 of 3 cannot be shown" in page.axes.words.text()


def test_a_second_lamp_is_priced_and_weighed(qtbot: QtBot, window: MainWindow) -> None:
    plan = window.document.plan
    two = edits.add_lamp(plan, plan.lamps[0].model_copy(update={"x": 0.3}))
    window.document.apply(add_variants(plan, ("Two", two)), "Keep")
    page = side_page(qtbot, window)
    page.question_bar.buttons["worth"].click()
    choose(page, 1)
    words = page.worth_board.words
    assert "draws 200 W instead of 100 W" in words.text()
    assert "Nothing has to be bought" not in words.text()
    assert "how Panel is priced" in words.text()
    enter(qtbot, page.worth.lamp_price, "120")
    settle(qtbot, page)
    assert window.document.undo_stack.undoText() == "Set price of lamp"
    assert window.document.plan.costs.lamp_price("panel") == 120
    assert "What has to be bought costs 120.00" in words.text()
    row = next(row for row in page.table.options.rows if row.side.name == "Two")
    assert row.values["cost"] == 120
    assert row.buy == "1 x Panel"
    page.worth.seams.click()
    assert window.document.plan.costs.seams


def test_a_card_says_the_change_of_the_table_below_it(
    qtbot: QtBot, window: MainWindow, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Where a range is not even about its value the middle of the draws is another number."""
    with_linings(window)
    page = side_page(qtbot, window)
    told = page.comparer.telling

    def aside(side: Side) -> Telling | None:
        found = told(side)
        return None if found is None else replace(found, ratio=0.5)

    monkeypatch.setattr(page.comparer, "telling", aside)
    page.sheet.refresh()
    plan, *_, dark = (side.estimate for side in page.comparer.sides)
    assert plan is not None
    assert dark is not None
    change = 100 * (dark.figures.mean / plan.figures.mean - 1)
    sign = "+" if change >= 0 else "−"
    assert page.sheet.cards[-1].telling_mark.startswith(f"{sign}{abs(change):.0f} %")
