"""Sweeps on the side by side page: over numbers, linings and lamps, one axis or two."""

from __future__ import annotations

import threading
from collections.abc import Iterator
from typing import Any

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from pytestqt.qtbot import QtBot

from planner.app.main_window import MainWindow
from planner.app.pages.side.page import SideBySidePage
from planner.app.pages.side.sweep_form import AxisFields
from planner.catalogue.library import load_catalogue
from planner.estimate.compare import Wishes
from planner.plan import edits
from planner.plan.plan import Plan
from tests.e2e.shell import make_window, trigger
from tests.e2e.sketching import enter
from tests.e2e.test_side_by_side import DARK, WHITE, lit_plan
from tests.unit.app.pages.side.test_plots import click

CATALOGUE = load_catalogue()


@pytest.fixture
def window(qtbot: QtBot) -> Iterator[MainWindow]:
    window, _answers = make_window(qtbot, lit_plan())
    window.display.update(cells=12)
    window.resize(1280, 800)
    yield window
    window.close()


def sweep_page(window: MainWindow) -> SideBySidePage:
    trigger(window, "page_side")
    page = window.pages.made("side")
    assert isinstance(page, SideBySidePage)
    page.comparer.follow(False)  # what is compared is no matter here
    page.open_question("sweep")
    return page


def go_over(axis: AxisFields, key: str, *ticks: str) -> None:
    axis.over.setCurrentIndex(axis.over.findData(key))
    axis.over.activated.emit(axis.over.currentIndex())
    axis.ticks.tick()
    if ticks:
        axis.ticks.tick(*ticks)


def swept(qtbot: QtBot, page: SideBySidePage) -> None:
    page.sweep.line.ask.click()
    assert not page.sweep.line.alert.isVisible()
    qtbot.waitUntil(lambda: not page.sweep.asker.busy, timeout=30_000)


def test_a_sweep_is_drawn_and_a_point_adopted(qtbot: QtBot, window: MainWindow) -> None:
    page = sweep_page(window)
    form, board = page.sweep, page.sweep_board
    form.first.over.setCurrentIndex(1)
    form.first.over.activated.emit(1)
    enter(qtbot, form.first.low, "25")
    enter(qtbot, form.first.high, "100")
    enter(qtbot, form.first.steps, "4")
    form.line.ask.click()
    qtbot.waitUntil(lambda: not form.asker.busy, timeout=30_000)
    assert board.plot.curves is not None
    assert board.plot.curves.xs == (25.0, 50.0, 75.0, 100.0)
    assert board.plot.curves.now == 100.0
    means = board.plot.curves.figures["mean"]
    # Light is proportional to output.
    assert means[0] == pytest.approx(0.25 * (means[3] or 0), rel=1e-6)
    click(board.plot, board.plot.plots[0], 50.0, 5.0, qtbot)
    assert board.words.text().startswith("output 50 %, mean")
    board.adopt_button.click()
    assert window.document.plan.lamps[0].output_percent == 50.0
    assert window.document.undo_stack.undoText() == "Adopt output"
    # The mark of the plan moves along: the curves hold for it still.
    assert board.plot.curves.now == 50.0
    board.copy()
    assert QGuiApplication.clipboard().text().startswith("output_percent\t")
    window.document.apply(edits.line_all_walls(window.document.plan, DARK), "Line")
    assert not board.current
    assert "before it was changed" in board.words.text()
    assert not board.adopt_button.isEnabled()


def test_a_sweep_can_be_stopped_and_gone_on_with(
    qtbot: QtBot, window: MainWindow, monkeypatch: pytest.MonkeyPatch
) -> None:
    from planner.estimate.sweep import sweep

    page = sweep_page(window)
    halted: list[bool] = []

    def slow(
        plan: Plan, over: Any, options: Any, *, progress: Any, cancelled: Any, so_far: Any
    ) -> Any:
        """One point, then it waits to be stopped."""
        done = sweep(plan, over, options, workers=0, cancelled=lambda: len(halted) > 0)
        first = dict(list(done.points.items())[:1])
        so_far(type(done)(plan, tuple(over), options, first))
        progress(0.2)
        patience = threading.Event()
        for _ in range(500):
            if cancelled():
                break
            patience.wait(0.01)
        halted.append(cancelled())
        return type(done)(plan, tuple(over), options, first)

    monkeypatch.setattr("planner.app.pages.side.sweep_form._sweep", slow)
    enter(qtbot, page.sweep.first.steps, "3")
    page.sweep.line.ask.click()
    assert page.sweep.line.stop.isVisible()
    assert not page.sweep.line.ask.isEnabled()
    # The first point is drawn while the others are awaited ...
    qtbot.waitUntil(lambda: page.sweep_board.plot.curves is not None)
    curves = page.sweep_board.plot.curves
    assert curves is not None
    assert len(curves.xs) == 1
    # ... and an edit meanwhile throws nothing away.
    window.document.apply(edits.line_all_walls(window.document.plan, DARK), "Line")
    page.sweep.line.stop.click()
    qtbot.waitUntil(lambda: halted == [True])
    qtbot.waitUntil(lambda: bool(page.sweep.line.words.text()))
    assert "of 'Shelf' before it was changed" in page.sweep_board.words.text()
    assert halted == [True]
    assert page.sweep.line.words.text().startswith("1 of 3 points. Stopped")
    assert page.sweep.line.ask.isEnabled()
    enter(qtbot, page.sweep.first.low, "1.9 m")
    page.sweep.line.ask.click()
    assert "must rise" in page.sweep.line.alert.text()


def test_linings_are_ranked_and_one_is_kept_as_an_option(qtbot: QtBot, window: MainWindow) -> None:
    page = sweep_page(window)
    form, board = page.sweep, page.sweep_board
    go_over(form.first, "lining")
    form.line.ask.click()
    assert "Tick the linings to go over" in form.line.alert.text()
    go_over(form.first, "lining", WHITE.key, DARK.key)
    swept(qtbot, page)
    assert board.ranking.isVisible()
    # White sends back more light than wood (0.84 against 0.45).
    assert [line.name for line in board.ranking.lines] == [WHITE.name, DARK.name]
    qtbot.keyClick(board.ranking, Qt.Key.Key_Down)
    qtbot.keyClick(board.ranking, Qt.Key.Key_Up)
    assert board.words.text().startswith(f"{WHITE.name}, mean ")
    qtbot.keyClick(board.ranking, Qt.Key.Key_Return)
    kept = window.document.plan.variants
    assert [one.name for one in kept] == [WHITE.name]
    assert {cover.bands[0].lining for cover in kept[0].setup.walls} == {WHITE.key}
    assert window.document.plan.walls[0].bands[0].lining == "open"
    assert window.document.undo_stack.undoText() == f"Keep option {WHITE.name}"
    # One surface only, by its place.
    where = form.first.where
    where.setCurrentIndex(where.findText("Ceiling"))
    where.activated.emit(where.currentIndex())
    swept(qtbot, page)
    board.choose(0)
    board.keep_button.click()
    assert window.document.plan.variants[-1].name == f"Lining, ceiling {WHITE.name}"


def test_kinds_of_lamp_are_gone_over(qtbot: QtBot, window: MainWindow) -> None:
    page = sweep_page(window)
    models = CATALOGUE.lamps[:2]
    go_over(page.sweep.first, "lamp", *(model.key for model in models))
    swept(qtbot, page)
    sweep = page.sweep_board.sweep
    assert sweep is not None
    output = window.document.plan.lamps[0].output_percent / 100
    watts = [point.figures.watts for point in sweep.in_order() if point.figures is not None]
    assert watts == pytest.approx([model.watts * output for model in models])


def test_two_axes_are_a_map_with_the_wish_on_it_and_a_cell_is_kept_by_a_double_click(
    qtbot: QtBot, window: MainWindow
) -> None:
    page = sweep_page(window)
    form, board = page.sweep, page.sweep_board
    go_over(form.first, "lining", WHITE.key, DARK.key)
    go_over(form.second, "output")
    assert form.second.steps.value == 7
    enter(qtbot, form.second.low, "25")
    enter(qtbot, form.second.steps, "4")
    swept(qtbot, page)
    cells = board.map.cells
    assert cells is not None
    # The number lies across, names stand one over the other.
    assert cells.across.texts == ("25 %", "50 %", "75 %", "100 %")
    assert cells.up.texts == (DARK.name, WHITE.name)  # from below
    assert cells.across.now == 100
    # Light is proportional to output, along each row.
    assert cells.values[:, 0] * 4 == pytest.approx(cells.values[:, 3], rel=1e-6)
    # Without wishes the target band is what is asked; with them they are.
    mean, plan = cells.values, window.document.plan
    assert plan.target is not None
    low, high = plan.target.low, plan.target.high
    assert cells.kept is not None
    assert (cells.kept == ((mean >= low) & (mean <= high))).all()
    page.linked.update(wishes=Wishes(watts=60.0))
    cells = board.map.cells
    assert cells is not None
    # 100 W at full output: 25 and 50 % keep to at most 60 W.
    assert cells.kept is not None
    assert cells.kept.tolist() == [[True, True, False, False]] * 2
    assert cells.contours[0].words == "Power at most 60 W"
    click(board.map, board.map.plots[0], 50.0, 0.0, qtbot)
    assert board.words.text().startswith(f"{DARK.name}, output 50 %, mean")
    assert board.words.text().endswith("Framed: Power at most 60 W.")
    # A wish that no point can be held against is said, not dropped.
    page.linked.update(wishes=Wishes(watts=60.0, total=200.0))
    assert "'Total at most' is not held against points" in board.words.text()
    board.map.taken.emit(1)
    kept = window.document.plan.variants[0]
    assert kept.name == f"{DARK.name}, output 50 %"
    assert kept.setup.lamps[0].output_percent == 50
    assert kept.setup.walls[0].bands[0].lining == DARK.key


def test_the_same_axis_twice_is_refused(qtbot: QtBot, window: MainWindow) -> None:
    page = sweep_page(window)
    go_over(page.sweep.second, "height")
    page.sweep.line.ask.click()
    assert "Both axes are the same" in page.sweep.line.alert.text()


def test_earlier_sweeps_stay_to_compare_and_say_of_which_plan_they_are(
    qtbot: QtBot, window: MainWindow
) -> None:
    page = sweep_page(window)
    form, board = page.sweep, page.sweep_board
    enter(qtbot, form.first.steps, "3")
    swept(qtbot, page)
    assert not board.shown.isVisible()
    first = board.sweep
    window.document.apply(edits.line_all_walls(window.document.plan, DARK), "Line")
    swept(qtbot, page)
    assert board.sweep is not first
    texts = [board.shown.itemText(k) for k in range(board.shown.count())]
    assert len(texts) == 2
    assert texts[0].endswith("Shelf")
    # It was swept before the walls were lined: they were open.
    assert texts[1].endswith("before: Open (no surface)")
    assert board.beside.isVisible()
    board.beside.setCurrentIndex(1)
    board.beside.activated.emit(1)
    curves = board.plot.curves
    assert curves is not None
    assert curves.beside is not None
    # Without walls there is less light at every height.
    pairs = zip(curves.beside[2], curves.figures["mean"], strict=True)
    assert all((open_ or 0) < (lined or 0) for open_, lined in pairs)
    board.shown.setCurrentIndex(1)
    board.shown.activated.emit(1)
    assert board.sweep is first
    assert "before it was changed" in board.words.text()
    # What an earlier plan gave can still be kept: it is a whole snapshot.
    board.choose(0)
    assert board.keep_button.isEnabled()
    assert not board.adopt_button.isEnabled()
    board.keep_button.click()
    kept = window.document.plan.variants[-1].setup
    assert kept.walls[0].bands[0].lining == "open"


def test_any_number_of_the_plan_can_be_gone_over_at_one_lamp(
    qtbot: QtBot, window: MainWindow
) -> None:
    plan = window.document.plan
    two = edits.add_lamp(plan, plan.lamps[0].model_copy(update={"x": 0.3}))
    window.document.apply(two, "Add lamp")
    page = sweep_page(window)
    axis = page.sweep.first
    go_over(axis, "lamp-x")
    axis.where.setCurrentIndex(axis.where.findText("Lamp 2"))
    axis.where.activated.emit(axis.where.currentIndex())
    enter(qtbot, axis.steps, "3")
    swept(qtbot, page)
    sweep = page.sweep_board.sweep
    assert sweep is not None
    # From wall to wall of a metre, the first lamp staying where it is.
    assert [point.values[0] for point in sweep.in_order()] == [0.05, 0.5, 0.95]
    assert sweep.plan_at(2).lamps[0].x == plan.lamps[0].x
    assert sweep.plan_at(2).lamps[1].x == 0.95
    keys = {axis.over.itemData(k) for k in range(axis.over.count())}
    assert {"photoperiod", "beam", "space-height", "lining", "lamp"} <= keys
    assert "obstacle-x" not in keys  # there is no obstacle
    assert "tariff" not in keys  # prices change no light


def test_points_nobody_sees_are_drawn_when_the_page_is_looked_at_again(
    qtbot: QtBot, window: MainWindow, monkeypatch: pytest.MonkeyPatch
) -> None:
    page = sweep_page(window)
    board = page.sweep_board
    enter(qtbot, page.sweep.first.steps, "3")
    swept(qtbot, page)
    drawn: list[object] = []
    show = board.plot.show_curves

    def showing(*curves: Any) -> None:
        drawn.append(curves)
        show(*curves)

    monkeypatch.setattr(board.plot, "show_curves", showing)
    trigger(window, "page_sketch")
    window.document.apply(edits.line_all_walls(window.document.plan, DARK), "Line")
    assert drawn == []
    trigger(window, "page_side")
    assert drawn
    assert "before it was changed" in board.words.text()
