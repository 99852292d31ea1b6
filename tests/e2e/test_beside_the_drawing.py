"""What the page tells while one works: the ladder of heights, the light by way of a wall."""

from __future__ import annotations

from pathlib import Path

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from planner.app.canvas.ink import Ink
from planner.app.pages.sketch.page import SketchPage
from planner.catalogue.library import demo_plan
from planner.estimate.evaluate import evaluate
from planner.estimate.result import EstimateOptions, Quality
from planner.plan.edits import change_lamp
from planner.plan.place import Place, PlaceKind
from tests.e2e.sketching import make_page

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


def test_the_ladder_goes_with_what_is_selected_and_asked(page: SketchPage) -> None:
    page.workplace.selection.select(Place(PlaceKind.LAMP))
    assert "Ladder" not in page.elevation.words()
    page.workplace.display.update(ladder=True)
    assert "Ladder" in page.elevation.words()
    page.workplace.selection.select(Place(PlaceKind.CANOPY))
    assert "Ladder" not in page.elevation.words()
