"""What a screen reader finds: the drawings as lists of their parts, told through Qt's own door."""

from __future__ import annotations

import gc
from collections.abc import Iterator
from dataclasses import replace
from typing import Any

import pytest
from PySide6.QtCore import QEvent, QPoint, Qt
from PySide6.QtGui import QAccessible, QAccessibleEvent, QAccessibleInterface
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QWidget
from pytestqt.qtbot import QtBot

from planner.app import spoken
from planner.app.canvas.drawing import Drawing
from planner.app.main_window import MainWindow
from planner.app.pages.survey.drawing import HolePicture, Mark, SurveyDrawing
from planner.catalogue.library import demo_plan
from planner.plan import edits
from planner.plan.place import Place, PlaceKind
from planner.plan.survey import Reading, Survey
from planner.plan.variant_edits import add_variants
from planner.units import LengthUnit
from tests.e2e.shell import make_window

pytestmark = pytest.mark.gui
Text, Role = QAccessible.Text, QAccessible.Role


@pytest.fixture
def reader(monkeypatch: pytest.MonkeyPatch) -> Iterator[list[tuple[str, str]]]:
    """Somebody listens: notes the name and event of everything the program announces itself."""
    heard: list[tuple[str, str]] = []

    def hear(event: QAccessibleEvent) -> None:
        told = event.accessibleInterface()
        heard.append((event.type().name, told.text(Text.Name)))

    monkeypatch.setattr(spoken, "announce", hear)
    was = QAccessible.isActive()
    QAccessible.setActive(True)
    yield heard
    QAccessible.setActive(was)


def read(widget: QWidget) -> QAccessibleInterface:
    found = QAccessible.queryAccessibleInterface(widget)
    assert found is not None
    return found


def names(widget: QWidget) -> list[str]:
    shown = read(widget)
    return [shown.child(k).text(Text.Name) for k in range(shown.childCount())]


@pytest.fixture
def window(qtbot: QtBot, reader: list[tuple[str, str]]) -> MainWindow:
    made, _ = make_window(qtbot, demo_plan())
    made.resize(1280, 800)
    made.show()
    made.activateWindow()
    return made


def test_the_plan_view_is_a_list_of_what_the_keys_go_through(window: MainWindow) -> None:
    view, plan = window.page.plan_view, window.document.plan
    told = names(view)
    assert read(view).role() == Role.List
    assert len(told) >= len(view.items())
    assert told[0].startswith(f"{Place(PlaceKind.LAMP, 0).title(plan)}, x ")
    assert (
        "Wall 4: Aluminium foil, flat, shiny side out and White board (melamine or laminate), "
        in (" ".join(told))
    )
    walls = [name for name in told if name.startswith("Wall ")]
    assert len(walls) == plan.space.wall_count
    assert sum(name.startswith("Corner ") for name in told) == plan.space.wall_count
    assert "Section line, from x" in " ".join(told)
    assert sum("the door" in name or "open door" in name for name in told) == 1
    parts = [read(view).child(k) for k in range(len(view.items()))]
    assert {part.role() for part in parts} == {Role.ListItem}
    assert all(part.text(Text.Value) in part.text(Text.Name) for part in parts)
    assert [read(view).indexOfChild(part) for part in parts] == list(range(len(parts)))
    assert all(part.parent().object() is view for part in parts)


@pytest.mark.parametrize("side", [False, True])
def test_tab_goes_through_the_children_and_says_each(
    window: MainWindow, reader: list[tuple[str, str]], side: bool
) -> None:
    view: Drawing = window.page.elevation if side else window.page.plan_view
    window.page.plan_view.choose(None)
    view.clearFocus()
    view.setFocus(Qt.FocusReason.TabFocusReason)
    QApplication.processEvents()
    while view.focused != view.items()[-1]:
        QTest.keyClick(view, Qt.Key.Key_Tab)
        QApplication.processEvents()
        assert read(view).focusChild().text(Text.Name) == reader[-1][1]
    said = [name for _kind, name in reader]
    assert {kind for kind, _name in reader} == {"Focus"}
    assert said == names(view)[: len(view.items())]


def test_who_has_the_keys_and_what_is_chosen_is_a_state(window: MainWindow) -> None:
    view = window.page.plan_view
    view.setFocus()
    assert view.hasFocus()
    window.selection.select(Place(PlaceKind.WALL, 1))
    index = view.items().index(view.focused or view.items()[0])
    states = [read(view).child(k).state() for k in range(len(view.items()))]
    assert [k for k, state in enumerate(states) if state.focused] == [index]
    assert [k for k, state in enumerate(states) if state.selected] == [index]
    assert all(state.focusable for state in states)


def test_the_children_follow_the_plan(window: MainWindow) -> None:
    view = window.page.plan_view
    last = read(view).child(len(view.items()) - 1)
    lamps = len(window.document.plan.lamps)
    gone = read(view).child(lamps - 1)
    window.document.apply(edits.remove_lamp(window.document.plan, lamps - 1), "Remove lamp")
    told = names(view)
    assert sum(name.startswith("Lamp ") for name in told) == lamps - 1
    assert not gone.isValid()
    assert gone.text(Text.Name) == ""
    assert gone.state().invalid
    assert last.isValid()
    window.document.undo_stack.undo()
    assert gone.isValid()


def test_a_part_lies_where_it_is_drawn(window: MainWindow) -> None:
    view = window.page.plan_view
    lamp = read(view).child(0)
    at = view.viewport.to_pixel(*view.spot_of(view.items()[0])).toPoint()
    middle = view.mapToGlobal(at)
    assert lamp.rect().contains(middle)
    found = read(view).childAt(middle.x(), middle.y())
    assert found.text(Text.Name) == lamp.text(Text.Name)
    corner = view.mapToGlobal(QPoint(view.width() - 2, view.height() - 2))
    assert read(view).childAt(corner.x(), corner.y()) is None


def test_the_buttons_on_a_drawing_are_still_there(window: MainWindow) -> None:
    view = window.page.elevation
    told, shown = names(view), read(view)
    assert "Look along x" in told
    where = told.index("Look along x")
    assert shown.indexOfChild(shown.child(where)) == where


def test_the_side_view_tells_heights(window: MainWindow) -> None:
    told = names(window.page.elevation)
    plan = window.document.plan
    assert f", {plan.lamps[0].hanging_height * 100:g} cm above the canopy" in told[0]
    assert plan.canopy.height == 0.25
    assert "Canopy, at 25 cm above the floor" in told
    window.display.update(unit=LengthUnit.INCH)
    assert "Canopy, at 9.84 in above" in " ".join(names(window.page.elevation))


def board() -> HolePicture:
    marks = (
        Mark(1, (0.2, 0.2), "187"),
        Mark(2, (0.4, 0.2), "20", suspect=True),
        Mark(4, (0.3, 0.25)),
    )
    return HolePicture(demo_plan(), marks=marks, next_hole=4)


def test_the_board_is_a_list_of_its_holes(qtbot: QtBot, reader: list[tuple[str, str]]) -> None:
    drawing = SurveyDrawing("Survey drawing")
    qtbot.addWidget(drawing)
    drawing.resize(500, 500)
    drawing.show_picture(board())
    drawing.show()
    drawing.activateWindow()
    assert names(drawing) == ["Hole 1, 187", "Hole 2, 20", "Hole 4"]
    told = read(drawing).child(1)
    assert told.text(Text.Value) == "20"
    assert told.text(Text.Description) == "at x 40 cm, y 20 cm, far off its neighbours"
    drawing.setFocus()
    qtbot.waitUntil(lambda: bool(reader), timeout=2000)
    assert reader[-1] == ("Focus", "Hole 4")
    chosen: list[int] = []
    drawing.hole_chosen.connect(chosen.append)
    QTest.keyClick(drawing, Qt.Key.Key_Left)
    drawing.show_picture(replace(board(), next_hole=chosen[-1]))
    QApplication.processEvents()
    assert reader[-1] == ("Focus", "Hole 1, 187")


def test_cards_are_entries_of_a_list(qtbot: QtBot) -> None:
    plan = demo_plan()
    window, _ = make_window(qtbot, add_variants(plan, ("Bare", plan.setup)))
    window.pages.go("side")
    page: Any = window.pages.made("side")
    qtbot.waitUntil(lambda: len(page.sheet.cards) > 1, timeout=5000)
    cards = page.sheet.cards
    holder = read(cards[0].parentWidget())
    assert holder.role() == Role.List
    entries = [read(card) for card in cards]
    assert {entry.role() for entry in entries} == {Role.ListItem}
    assert all(entry.text(Text.Name) for entry in entries)
    assert entries[0].text(Text.Value) == cards[0].figure_lines()[0]
    assert [entry.state().selected for entry in entries] == [card.chosen for card in cards]


def test_drawings_come_and_go_while_somebody_reads(
    qtbot: QtBot, reader: list[tuple[str, str]]
) -> None:
    holder = QWidget()
    qtbot.addWidget(holder)
    holder.show()
    for turn in range(60):
        drawing = SurveyDrawing("Survey drawing", holder)
        drawing.show_picture(board())
        drawing.show()
        drawing.setFocus()
        QApplication.processEvents()
        assert len(names(drawing)) == 3
        drawing.deleteLater() if turn % 2 else drawing.setParent(None)
        del drawing
        QApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
        gc.collect()
    assert len(reader) > 50
    assert set(reader) == {("Focus", "Hole 4")}


@pytest.mark.parametrize("page", ["sketch", "side", "survey"])
def test_no_markup_is_read_out_on_any_page(qtbot: QtBot, page: str) -> None:
    plan = demo_plan()
    survey = Survey(
        key="one", name="One", points=((0.2, 0.2), (0.4, 0.2), (0.3, 0.4)),
        readings=tuple(Reading(hole=k, value=100.0 + k) for k in (1, 2, 3)),
    )  # fmt: skip
    plan = add_variants(plan.model_copy(update={"surveys": (survey,)}), ("Bare", plan.setup))
    window, _ = make_window(qtbot, plan)
    window.show()
    window.pages.go(page)
    qtbot.wait(50)
    told = []
    for widget in [window, *window.findChildren(QWidget)]:
        shown = QAccessible.queryAccessibleInterface(widget)
        if shown is None:
            continue
        for one in [shown, *(shown.child(k) for k in range(min(shown.childCount(), 60)))]:
            if one is not None:
                told += [one.text(kind) for kind in (Text.Name, Text.Description, Text.Value)]
    assert sum(bool(text) for text in told) > 60
    assert [text for text in told if "<p>" in text or "<b>" in text or "<a " in text] == []
