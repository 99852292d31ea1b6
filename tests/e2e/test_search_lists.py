"""Choosing among thirty linings and the lamps: search, pictures, the last used first."""

from __future__ import annotations

from pathlib import Path
from typing import cast

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from planner.app.fields.lamp_fields import LampFields
from planner.app.fields.search_list import SearchList, recent_first
from planner.app.fields.surface_fields import WallFields
from planner.app.pages.sketch.page import SketchPage
from planner.app.settings import Settings
from planner.catalogue.library import demo_plan
from planner.plan.costs import Costs, Goods, LampPrice
from planner.plan.edits import changed
from planner.plan.place import Place, PlaceKind
from tests.e2e.sketching import make_page

pytestmark = pytest.mark.gui


@pytest.fixture
def page(qtbot: QtBot, tmp_path: Path) -> SketchPage:
    page = make_page(qtbot, demo_plan(), tmp_path)
    page.workplace.selection.select(Place(PlaceKind.WALL, 0))
    return page


def wall_fields(page: SketchPage) -> WallFields:
    return cast("WallFields", page.column.panels[PlaceKind.WALL])


def opened(page: SketchPage) -> SearchList:
    chooser = wall_fields(page).lines[0].chooser
    chooser.showPopup()
    return chooser.popup


def titles(popup: SearchList) -> list[str]:
    model = popup.list.model()
    return [str(model.index(row, 0).data()) for row in range(model.rowCount())]


def test_typing_narrows_the_list_and_enter_takes_what_is_left(page: SketchPage) -> None:
    popup = opened(page)
    every = len(titles(popup))
    assert every >= 29
    QTest.keyClicks(popup.line, "foil")
    found = titles(popup)
    assert 0 < len(found) < every
    assert all("foil" in title.lower() or "film" in title.lower() for title in found)
    QTest.keyClick(popup.line, Qt.Key.Key_Return)
    assert not popup.isVisible()
    document = page.workplace.document
    key = document.plan.walls[0].bands[0].lining
    assert found[0].startswith(f"{document.plan.lining(key).reflectance * 100:.0f} %")
    assert document.undo_stack.count() == 1


def test_finish_and_cautions_are_found_too(page: SketchPage) -> None:
    popup = opened(page)
    popup.line.setText("wrinkled mirror")
    assert titles(popup)
    popup.line.setText("burn")
    assert titles(popup)
    popup.line.setText("no such thing")
    assert titles(popup) == []
    assert popup.none.isVisible()


def test_arrows_walk_through_the_list_while_one_types(page: SketchPage) -> None:
    popup = opened(page)
    rests: list[int] = []
    popup.rested.connect(rests.append)
    before = popup.list.currentIndex().row()
    QTest.keyClick(popup.line, Qt.Key.Key_Down)
    assert popup.list.currentIndex().row() == before + 1
    assert len(rests) == 1
    QTest.keyClick(popup.line, Qt.Key.Key_Escape)
    assert not popup.isVisible()
    assert page.workplace.document.undo_stack.count() == 0


def test_what_was_used_last_stands_first_also_next_time(page: SketchPage) -> None:
    settings = Settings.in_memory()
    page.shelf.remember_in(settings)
    popup = opened(page)
    popup.line.setText("ptfe")
    chosen = titles(popup)[0]
    QTest.keyClick(popup.line, Qt.Key.Key_Return)
    page.workplace.selection.select(Place(PlaceKind.WALL, 1))
    assert titles(opened(page))[0] == chosen
    assert len(settings.values.used_last) == 1
    assert recent_first(["a", "b", "c"], ["c", "gone"]) == [2, 0, 1]


def test_a_lining_may_go_on_all_walls_in_one_step(page: SketchPage) -> None:
    popup = opened(page)
    popup.switch.setChecked(True)
    popup.line.setText("ptfe")
    QTest.keyClick(popup.line, Qt.Key.Key_Return)
    plan = page.workplace.document.plan
    keys = {band.lining for wall in plan.walls for band in wall.bands}
    assert len(keys) == 1
    assert page.workplace.document.undo_stack.count() == 1
    assert page.workplace.document.undo_stack.undoText().startswith("Line all walls with ")


def test_what_a_square_metre_costs_is_told_where_it_is_known(page: SketchPage) -> None:
    document = page.workplace.document
    lining = document.plan.linings[0]
    # 30 for a roll of 1.2 by 10 m are 2.50 a square metre.
    goods = Goods(lining=lining.key, width=1.2, length=10.0, price=30.0)
    document.apply(changed(document.plan, costs=Costs(currency="€", goods=(goods,))), "Price")
    assert any("2.5 € per m²" in title for title in titles(opened(page)))


def test_lamps_are_found_by_watts_and_told_with_their_price(page: SketchPage) -> None:
    document = page.workplace.document
    model = document.plan.lamps[0].model
    prices = Costs(currency="€", lamp_prices=(LampPrice(model=model.key, price=25.0),))
    document.apply(changed(document.plan, costs=prices), "Price")
    page.workplace.selection.select(Place(PlaceKind.LAMP))
    chooser = cast("LampFields", page.column.panels[PlaceKind.LAMP]).chooser
    chooser.showPopup()
    assert any("25 €" in title for title in titles(chooser.popup))
    chooser.popup.line.setText("240 w")
    found = titles(chooser.popup)
    assert found
    assert all("240 W" in title for title in found)
    chooser.hidePopup()
