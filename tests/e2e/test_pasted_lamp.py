"""A line of a data sheet is pasted or dropped, and the lamp hangs there."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from PySide6.QtCore import QMimeData, QPointF, Qt
from PySide6.QtGui import QDragEnterEvent, QDropEvent, QGuiApplication
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from planner.app.main_window import MainWindow
from tests.e2e.shell import make_window, small_plan, trigger

pytestmark = pytest.mark.gui

LINE = "240 W 600 umol 30x30 cm"


@pytest.fixture(autouse=True)
def clean_clipboard() -> Iterator[None]:
    yield
    QGuiApplication.clipboard().setText("")


def empty(qtbot: QtBot) -> MainWindow:
    window, _ = make_window(qtbot, small_plan(lamps=0))
    return window


def point_at(window: MainWindow, x: float, y: float) -> None:
    view = window.page.plan_view
    QTest.qWait(20)  # until the page has its final layout
    QTest.mouseMove(view, view.viewport.to_pixel(x, y).toPoint())


def test_a_pasted_line_hangs_at_the_pointer_as_one_step(qtbot: QtBot) -> None:
    window = empty(qtbot)
    QGuiApplication.clipboard().setText(LINE)
    point_at(window, 0.3, 0.7)
    trigger(window, "paste")
    (lamp,) = window.document.plan.lamps
    assert (lamp.x, lamp.y) == pytest.approx((0.3, 0.7), abs=0.01)
    assert (lamp.model.watts, lamp.model.ppf) == (240, 600)
    assert window.statusBar().currentMessage().startswith("Hung as read: 240 W, 600 µmol s⁻¹")
    assert window.document.undo_stack.count() == 1
    window.document.undo_stack.undo()
    assert window.document.plan.lamps == ()


def test_pointing_nowhere_it_hangs_in_a_free_place(qtbot: QtBot) -> None:
    window, _ = make_window(qtbot, small_plan(lamps=1))
    QGuiApplication.clipboard().setText(LINE)
    trigger(window, "paste")
    old, new = window.document.plan.lamps
    apart = max(abs(old.x - new.x) - 0.3, abs(old.y - new.y) - 0.25)
    assert apart >= -1e-6, "it hangs beside the first, not in it"


def test_a_line_pasted_while_a_number_has_the_keyboard_is_a_lamp_too(qtbot: QtBot) -> None:
    window = empty(qtbot)
    QGuiApplication.clipboard().setText(LINE)
    box = window.page.column.space_fields.quantities[0].box
    before = box.text()
    with qtbot.waitActive(window):
        window.activateWindow()
    box.setFocus()
    QTest.keyClick(box, Qt.Key.Key_V, Qt.KeyboardModifier.ControlModifier)
    assert len(window.document.plan.lamps) == 1
    assert box.text() == before


def test_a_number_is_still_pasted_into_its_field(qtbot: QtBot) -> None:
    window = empty(qtbot)
    QGuiApplication.clipboard().setText("85 cm")
    box = window.page.column.space_fields.quantities[0].box
    window.activateWindow()
    box.setFocus()
    box.selectAll()
    QTest.keyClick(box, Qt.Key.Key_V, Qt.KeyboardModifier.ControlModifier)
    assert box.text() == "85 cm"
    assert window.document.plan.lamps == ()


def test_what_is_wrong_with_a_line_is_said(qtbot: QtBot) -> None:
    window = empty(qtbot)
    QGuiApplication.clipboard().setText("240 W 30x30 cm")
    trigger(window, "paste")
    assert "nothing of the lamp's photon flux" in window.statusBar().currentMessage()
    assert window.document.undo_stack.count() == 0


def test_a_line_dropped_on_the_drawing_hangs_there(qtbot: QtBot) -> None:
    window = empty(qtbot)
    view = window.page.plan_view
    mime = QMimeData()
    mime.setText(LINE)
    at = QPointF(view.mapTo(window, view.viewport.to_pixel(0.6, 0.4).toPoint()))
    buttons, keys = Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier
    enter = QDragEnterEvent(at.toPoint(), Qt.DropAction.CopyAction, mime, buttons, keys)
    enter.ignore()
    QApplication.sendEvent(window, enter)
    assert enter.isAccepted()
    QApplication.sendEvent(window, QDropEvent(at, Qt.DropAction.CopyAction, mime, buttons, keys))
    (lamp,) = window.document.plan.lamps
    assert (lamp.x, lamp.y) == pytest.approx((0.6, 0.4), abs=0.01)
