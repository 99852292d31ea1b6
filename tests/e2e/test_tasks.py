"""Whole tasks by real events from the first start to the answer, and how many actions they take.

An action is a field typed into, a click, or a key pressed. The limits are what was asked of the
program: a tent with one lamp in at most 8, a closet with everything in it in at most 15.
"""

from __future__ import annotations

from typing import Any

import pytest
from PySide6.QtCore import QEvent, QPoint, QPointF, Qt
from PySide6.QtGui import QContextMenuEvent, QGuiApplication
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QMenu, QWidget
from pytestqt.qtbot import QtBot

from planner.app.main_window import MainWindow
from planner.app.run import open_window
from planner.app.settings import Settings
from planner.plan.checks import findings

pytestmark = pytest.mark.gui

LEFT = Qt.MouseButton.LeftButton
TENT_ACTIONS = 8
CLOSET_ACTIONS = 15


class Person:
    """Somebody at a window; every action counts."""

    def __init__(self, qtbot: QtBot) -> None:
        self.window: MainWindow = open_window(Settings.in_memory())
        qtbot.addWidget(
            self.window, before_close_func=lambda one: one.document.replace(one.document.plan, None)
        )
        self.window.resize(1280, 800)
        self.window.show()
        self.window.activateWindow()
        QApplication.processEvents()
        self.actions = 0

    @property
    def plan(self) -> Any:
        return self.window.document.plan

    def _did(self) -> None:
        self.actions += 1
        QApplication.processEvents()

    def types(self, box: QWidget, text: str) -> None:
        box.setFocus()
        QTest.keyClick(box, Qt.Key.Key_A, Qt.KeyboardModifier.ControlModifier)
        QTest.keyClicks(box, text)
        QTest.keyClick(box, Qt.Key.Key_Tab)
        self._did()

    def clicks(self, widget: QWidget, at: QPoint | None = None) -> None:
        assert widget.isVisible()
        QTest.mouseClick(widget, LEFT, Qt.KeyboardModifier.NoModifier, at or widget.rect().center())
        self._did()

    def presses(self, key: Qt.Key, keys: Qt.KeyboardModifier, to: QWidget | None = None) -> None:
        # Without a window manager nobody gives the window back its place after a menu.
        self.window.activateWindow()
        QApplication.processEvents()
        QTest.keyClick(to or self.window.page.plan_view, key, keys)
        self._did()

    def points_at(self, x: float, y: float) -> None:
        """The pointer goes there: no action of its own."""
        view = self.window.page.plan_view
        QTest.mouseMove(view, view.viewport.to_pixel(x, y).toPoint())
        QApplication.processEvents()

    def opens_menu(self, x: float, y: float) -> QMenu:
        view = self.window.page.plan_view
        pixel = QPointF(view.viewport.to_pixel(x, y)).toPoint()
        reason = QContextMenuEvent.Reason.Mouse
        event = QContextMenuEvent(reason, pixel, view.mapToGlobal(pixel))
        QApplication.sendEvent(view, event)
        self._did()
        return next(menu for menu in view.findChildren(QMenu) if menu.isVisible())

    def chooses(self, menu: QMenu, text: str) -> None:
        action = next(one for one in menu.actions() if one.text().replace("&", "") == text)
        assert action.isEnabled()
        QTest.mouseClick(menu, LEFT, pos=menu.actionGeometry(action).center())
        self._did()
        # What the event loop of the program does on its own, and that of a test does not.
        QApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)

    def begins(self, width: str, depth: str, height: str) -> None:
        welcome = self.window.page.welcome
        for name, text in (("Width", width), ("Depth", depth), ("Height", height)):
            self.types(welcome.boxes[name].lineEdit(), text)
        self.clicks(welcome.own_button)

    def answer(self, qtbot: QtBot) -> float:
        """The mean that stands on the page, once the light is final."""
        window = self.window
        qtbot.waitUntil(
            lambda: window.estimate is not None and window.estimate.plan == self.plan, timeout=30000
        )
        assert window.estimate is not None
        return window.estimate.figures.mean


def test_from_start_to_the_light_of_a_tent(qtbot: QtBot) -> None:
    person = Person(qtbot)
    person.begins("60", "60", "160")
    QGuiApplication.clipboard().setText("240 W 600 µmol/s 30x30 cm")
    person.points_at(0.3, 0.3)
    person.presses(Qt.Key.Key_V, Qt.KeyboardModifier.ControlModifier)
    x0, y0, x1, y1 = person.plan.space.bounds
    assert (x1 - x0, y1 - y0, person.plan.space.height) == pytest.approx((0.6, 0.6, 1.6))
    (lamp,) = person.plan.lamps
    assert (lamp.model.watts, lamp.model.ppf) == (240.0, 600.0)
    # 600 µmol/s over 0.36 m² cannot be more than 1667
    assert 200 < person.answer(qtbot) < 600 / 0.36
    assert person.actions <= TENT_ACTIONS
    print(f"\ntent: {person.actions} actions")


def test_a_closet_with_everything_in_it(qtbot: QtBot) -> None:
    """An L of 1.2 m x 1 m, one corner cut off, a door, a shelf and two bars."""
    person = Person(qtbot)
    person.begins("120", "100", "200")
    page = person.window.page
    shape = next(one for one in page.column.space_fields.shape_buttons if "L" in one.text())
    person.clicks(shape)
    assert person.plan.space.wall_count == 6
    page.fit()
    corner = person.plan.space.footprint[0]
    person.chooses(person.opens_menu(*corner), "Cut off this corner")
    assert person.plan.space.wall_count == 7
    (ax, ay), (bx, by) = person.plan.space.wall(2)
    menu = person.opens_menu(ax + 0.4 * (bx - ax), ay + 0.4 * (by - ay))
    person.chooses(menu, "Make this wall the door")
    assert person.plan.space.door == 2
    x, y = person.plan.space.footprint[1]
    menu = person.opens_menu(x + 0.15, y + 0.3)
    person.chooses(menu, "Put a shelf here")
    person.clicks(person.window.menuBar(), _place_of(person.window, "Edit"))
    menus = person.window.actions_.menus
    person.chooses(menus["edit"], "Add lamp from catalogue")
    bars = menus["add_lamp_kind"]
    qtbot.waitUntil(bars.isVisible)
    bar = next(one.text() for one in bars.actions() if "bar 60" in one.text())
    person.chooses(bars, bar)
    person.presses(Qt.Key.Key_D, Qt.KeyboardModifier.ControlModifier)
    assert len(person.plan.obstacles) == 1
    assert [lamp.model.key for lamp in person.plan.lamps] == ["led-bar-60-20w"] * 2
    said = {finding.key for finding in findings(person.plan)}
    assert not said & {"lamp-through-wall", "lamps-overlap", "lamp-inside-obstacle"}
    assert person.answer(qtbot) > 0
    assert person.actions <= CLOSET_ACTIONS
    print(f"\ncloset: {person.actions} actions")


def _place_of(window: MainWindow, menu: str) -> QPoint:
    """Where a menu's name stands in the bar."""
    bar = window.menuBar()
    action = next(one for one in bar.actions() if one.text().replace("&", "") == menu)
    return bar.actionGeometry(action).center()
