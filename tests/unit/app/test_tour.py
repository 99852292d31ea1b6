"""The tour: six steps in place, left at any time, offered once, and nothing of the plan changed."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QPoint, QRect, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QWidget
from pytestqt.qtbot import QtBot

from planner.app.main_window import MainWindow
from planner.app.run import open_window
from planner.app.settings import Settings
from planner.app.tour import STEPS
from planner.catalogue.library import demo_plan
from planner.plan.place import PlaceKind
from tests.e2e.shell import make_window, small_plan, trigger

pytestmark = pytest.mark.gui


@pytest.fixture
def window(qtbot: QtBot) -> MainWindow:
    made, _ = make_window(qtbot, demo_plan())
    made.resize(1280, 800)
    made.show()
    made.activateWindow()
    qtbot.waitUntil(made.isActiveWindow, timeout=2000)
    return made


def area(window: MainWindow, part: QWidget) -> QRect:
    return QRect(part.mapTo(window, QPoint(0, 0)), part.size())


@pytest.mark.parametrize("size", [(1280, 800), (1920, 1080)])
def test_each_step_frames_a_part_in_sight_and_hides_none_of_it(
    window: MainWindow, size: tuple[int, int]
) -> None:
    window.resize(*size)
    trigger(window, "tour")
    for at, step in enumerate(STEPS):
        QApplication.processEvents()
        tour, shown = window.tour, step.shown(window)
        assert tour.at == at
        assert tour.isVisible()
        assert shown.isVisible()
        assert (
            tour._frame.geometry()
            .intersected(window.rect())
            .contains(area(window, shown).adjusted(2, 2, -2, -2))
        )
        assert window.rect().contains(tour.geometry())
        assert not tour.geometry().intersects(area(window, shown))
        assert tour.sentence.text() == step.sentence
        assert tour.sentence.height() >= tour.sentence.heightForWidth(tour.sentence.width())
        tour.next_button.click()
    assert not window.tour.isVisible()
    assert not window.tour._frame.isVisible()


def test_what_a_step_is_about_is_selected(window: MainWindow) -> None:
    trigger(window, "tour")
    kinds = []
    for _ in STEPS:
        kinds.append(window.selection.current.kind)
        window.tour.next_button.click()
    assert kinds[:3] == [PlaceKind.SPACE, PlaceKind.LAMP, PlaceKind.WALL]
    assert not window.document.dirty
    assert window.document.undo_stack.count() == 0


@pytest.mark.parametrize("where", ["next", "drawing", "field"])
def test_escape_leaves_it_wherever_the_keyboard_is(window: MainWindow, where: str) -> None:
    trigger(window, "tour")
    window.tour.next_button.click()
    held = {
        "next": window.tour.next_button,
        "drawing": window.page.plan_view,
        "field": window.page.column.chooser,
    }[where]
    held.setFocus()
    QTest.keyClick(held, Qt.Key.Key_Escape)
    assert not window.tour.isVisible()
    if where == "next":
        assert window.page.plan_view.hasFocus()
    QTest.keyClick(window.page.plan_view, Qt.Key.Key_Escape)
    assert window.page.plan_view.focused is None, "the key is the drawing's again"


def test_the_keyboard_and_a_screen_reader_follow(window: MainWindow) -> None:
    trigger(window, "tour")
    for at, step in enumerate(STEPS, start=1):
        button = window.tour.next_button
        assert button.hasFocus()
        assert button.accessibleDescription() == step.sentence
        assert f"{at} of {len(STEPS)}: {step.title}" in button.accessibleName()
        QTest.keyClick(button, Qt.Key.Key_Space)
    assert not window.tour.isVisible()


def test_it_follows_the_window(window: MainWindow, qtbot: QtBot) -> None:
    trigger(window, "tour")
    assert not window.tour.back_button.isEnabled()
    window.tour.next_button.click()
    window.tour.back_button.click()
    assert window.tour.at == 0
    shown, frame = STEPS[0].shown(window), window.tour._frame
    window.resize(1600, 900)  # wide enough for another order of the columns
    qtbot.wait(400)
    assert frame.geometry().contains(area(window, shown).adjusted(2, 2, -2, -2))
    window.pages.go("survey")
    qtbot.waitUntil(lambda: not frame.isVisible(), timeout=2000)
    window.tour.next_button.click()
    assert window.pages.current == "sketch"
    assert frame.isVisible()


def test_it_is_offered_at_the_first_start_and_remembered(qtbot: QtBot) -> None:
    first = open_window(Settings.of_user())
    qtbot.addWidget(first)
    first.show()
    assert first.page.welcome.tour_button.isVisible()
    assert not first.tour.isVisible(), "offered, not forced"
    first.page.welcome.tour_button.click()
    assert first.tour.isVisible()
    assert not first.page.welcome.isVisible()
    first.close()
    later = open_window(Settings.of_user(), demo=True)
    qtbot.addWidget(later)
    later.show()
    assert later.page.welcome.isVisible()
    assert not later.page.welcome.tour_button.isVisible()
    later.close()


def test_a_plan_without_lamps_is_shown_round_too(qtbot: QtBot) -> None:
    window, _ = make_window(qtbot, small_plan(lamps=0))
    window.show()
    window.pages.go("survey")
    trigger(window, "tour")
    assert window.pages.current == "sketch"
    for _ in STEPS:
        window.tour.next_button.click()
    assert not window.tour.isVisible()
