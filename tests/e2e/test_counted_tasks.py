"""Whole tasks by real events, each press and each typed line counted as one action."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QWidget
from pytestqt.qtbot import QtBot

from planner.app.canvas.items import Item, Part
from planner.app.estimator import Estimator
from planner.app.main_window import MainWindow
from planner.app.settings import Settings
from planner.catalogue.library import demo_plan
from tests.e2e.shell import ReadyAnswers, trigger

pytestmark = pytest.mark.gui

CONTROL = Qt.KeyboardModifier.ControlModifier


class Hand:
    """Presses and types, and counts."""

    def __init__(self, window: MainWindow) -> None:
        self.window, self.actions = window, 0

    def click(self, widget: QWidget) -> None:
        assert widget.isVisible()
        self.actions += 1
        QTest.mouseClick(widget, Qt.MouseButton.LeftButton)
        QTest.qWait(1)

    def key(self, key: Qt.Key, held: Qt.KeyboardModifier = Qt.KeyboardModifier.NoModifier) -> None:
        self.actions += 1
        target = QGuiApplication.focusObject()
        assert isinstance(target, QWidget)
        QTest.keyClick(target, key, held)
        QTest.qWait(1)

    def paste(self, text: str) -> None:
        """What was copied from a data sheet before."""
        QGuiApplication.clipboard().setText(text)
        self.window.page.plan_view.setFocus()
        self.key(Qt.Key.Key_V, CONTROL)

    def menu(self, key: str, presses: int) -> None:
        """An entry of the menus, so many presses deep."""
        self.actions += presses
        trigger(self.window, key)

    def choose(self, menu_text: str, corner: int) -> None:
        """An entry of the menu of a corner: one press opens it, one takes it."""
        self.actions += 2
        view = self.window.page.plan_view
        at = view.plan.space.footprint[corner]
        menu = view.menu_for(Item(Part.CORNER, corner), at)
        next(entry for entry in menu.actions() if menu_text in entry.text()).trigger()
        menu.close()


@pytest.fixture
def hand(qtbot: QtBot) -> Iterator[Hand]:
    window = MainWindow(
        demo_plan(),
        settings=Settings.in_memory(),
        estimator=Estimator(synchronous=True),
        questions=ReadyAnswers(),
    )
    window.display.update(cells=12)
    qtbot.addWidget(window)
    window.page.welcome.show()
    window.resize(1280, 800)
    with qtbot.waitActive(window):
        window.show()
        window.activateWindow()
    yield Hand(window)
    QGuiApplication.clipboard().setText("")


def test_a_tent_with_a_panel_has_its_answer_in_eight_actions(hand: Hand) -> None:
    page = hand.window.page
    hand.click(page.welcome.own_button)  # 60 x 60 x 160 cm stand there
    hand.paste("240 W 600 umol 30x30 cm")
    plan = hand.window.document.plan
    assert (plan.space.bounds, plan.space.height) == ((0, 0, 0.6, 0.6), 1.6)
    assert [lamp.model.watts for lamp in plan.lamps] == [240]
    hand.click(page.strip.advice.target_button)
    for _ in range(3):  # past the bands of one's own to the first crop
        hand.key(Qt.Key.Key_Down)
    assert hand.window.document.plan.target is not None
    assert page.strip.sentence.text().startswith("Mean ")
    assert "band for" in page.strip.sentence.text()
    assert hand.actions <= 8


def test_a_closet_with_all_that_is_in_it_takes_fifteen_actions(hand: Hand) -> None:
    page = hand.window.page
    page.welcome.shape.setFocus()
    hand.key(Qt.Key.Key_Down)  # L-shape
    hand.click(page.welcome.own_button)
    hand.choose("Cut off this corner", 4)
    hand.menu("add_shelf", 3)  # Edit, Add obstacle, Shelf
    hand.paste("LED bar 30 cm 12 W 28 umol/s")
    hand.key(Qt.Key.Key_D, CONTROL)
    hand.click(page.strip.advice.target_button)
    for _ in range(3):
        hand.key(Qt.Key.Key_Down)
    plan = hand.window.document.plan
    assert plan.space.wall_count == 7
    assert plan.space.door is not None
    assert [obstacle.name for obstacle in plan.obstacles] == ["Shelf"]
    assert [lamp.model.watts for lamp in plan.lamps] == [12, 12]
    assert page.strip.sentence.text().startswith("Mean ")
    assert hand.actions <= 15
