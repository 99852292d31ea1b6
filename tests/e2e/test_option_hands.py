"""Handwork on the options, by mouse and keys on the widgets themselves."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from PySide6.QtCore import QMimeData, QPoint, QPointF, Qt
from PySide6.QtGui import (
    QContextMenuEvent,
    QDragEnterEvent,
    QDropEvent,
    QGuiApplication,
)
from PySide6.QtWidgets import QApplication, QMenu, QWidget
from pytestqt.qtbot import QtBot

from planner.app.main_window import MainWindow
from planner.app.pages.side.map_card import CARD_DRAGGED
from planner.app.pages.side.page import SideBySidePage
from planner.plan.variant_edits import add_variants
from tests.e2e.shell import make_window
from tests.e2e.test_side_by_side import (
    DARK,
    WHITE,
    chosen,
    lit_plan,
    made_up_sways,
    settle,
    side_page,
    variant_names,
    with_linings,
)

__all__ = ["made_up_sways"]

_LEFT = Qt.MouseButton.LeftButton
_CONTROL = Qt.KeyboardModifier.ControlModifier


@pytest.fixture
def window(qtbot: QtBot) -> Iterator[MainWindow]:
    window, _answers = make_window(qtbot, lit_plan())
    window.display.update(cells=12)
    window.resize(1280, 800)
    yield window
    window.close()


@pytest.fixture
def page(qtbot: QtBot, window: MainWindow) -> SideBySidePage:
    """The plan, white board and wood, in this order."""
    with_linings(window)
    return side_page(qtbot, window)


def row_place(page: SideBySidePage, row: int, column: int = 0) -> QPoint:
    return page.table.visualRect(page.table.options.index(row, column)).center()


def name_place(page: SideBySidePage, row: int) -> QPoint:
    names = page.table.verticalHeader()
    return QPoint(20, names.sectionViewportPosition(row) + names.sectionSize(row) // 2)


def right_click(widget: QWidget, at: QPoint) -> None:
    event = QContextMenuEvent(QContextMenuEvent.Reason.Mouse, at, widget.mapToGlobal(at))
    QApplication.sendEvent(widget, event)


def open_menu(qtbot: QtBot) -> QMenu:
    qtbot.waitUntil(lambda: isinstance(QApplication.activePopupWidget(), QMenu))
    menu = QApplication.activePopupWidget()
    assert isinstance(menu, QMenu)
    return menu


def test_a_row_is_chosen_opened_renamed_copied_doubled_moved_and_removed_by_keys(
    qtbot: QtBot, page: SideBySidePage, window: MainWindow
) -> None:
    table = page.table
    qtbot.mouseClick(table.viewport(), _LEFT, pos=row_place(page, 1))
    assert chosen(page) == 1
    table.setFocus()
    qtbot.keyClick(table, Qt.Key.Key_Down)
    assert chosen(page) == 2
    qtbot.keyClick(table, Qt.Key.Key_D, _CONTROL)
    settle(qtbot, page)
    assert variant_names(window) == [WHITE.name, DARK.name, f"{DARK.name}, copy"]
    qtbot.keyClick(table, Qt.Key.Key_Up, _CONTROL)
    settle(qtbot, page)
    assert variant_names(window) == [DARK.name, WHITE.name, f"{DARK.name}, copy"]
    qtbot.keyClick(table, Qt.Key.Key_F2)
    line = window.focusWidget()
    assert line is page.sheet.cards[1].name_line
    qtbot.keyClicks(line, "Wooden")
    qtbot.keyClick(line, Qt.Key.Key_Return)
    settle(qtbot, page)
    assert variant_names(window)[0] == "Wooden"
    table.setFocus()
    qtbot.keyClick(table, Qt.Key.Key_C, _CONTROL)
    lines = QGuiApplication.clipboard().text().splitlines()
    assert [text.split("\t")[0] for text in lines[1:3]] == ["Shelf", "Wooden"]
    qtbot.keyClick(table, Qt.Key.Key_Delete)
    settle(qtbot, page)
    assert variant_names(window) == [WHITE.name, f"{DARK.name}, copy"]


def test_a_name_is_dragged_over_another_with_the_mouse(
    qtbot: QtBot, page: SideBySidePage, window: MainWindow
) -> None:
    names = page.table.verticalHeader().viewport()
    start, end = name_place(page, 2), name_place(page, 1) - QPoint(0, 12)
    qtbot.mousePress(names, _LEFT, pos=start)
    for share in (0.2, 0.5, 0.8, 1.0):
        qtbot.mouseMove(names, start + (end - start) * share)
    qtbot.mouseRelease(names, _LEFT, pos=end)
    settle(qtbot, page)
    assert variant_names(window) == [DARK.name, WHITE.name]


def test_a_card_takes_another_that_is_dropped_on_it(
    qtbot: QtBot, page: SideBySidePage, window: MainWindow
) -> None:
    """The drag carries the card's key; what it is dropped on takes it before itself."""
    first, second = page.sheet.cards[1:]
    data = QMimeData()
    data.setData(CARD_DRAGGED, (second.key or "").encode())
    plain, move, at = Qt.KeyboardModifier.NoModifier, Qt.DropAction.MoveAction, QPointF(30, 20)
    enter = QDragEnterEvent(at.toPoint(), move, data, _LEFT, plain)
    QApplication.sendEvent(first, enter)
    assert enter.isAccepted()
    QApplication.sendEvent(first, QDropEvent(at, move, data, _LEFT, plain))
    settle(qtbot, page)
    assert variant_names(window) == [DARK.name, WHITE.name]
    # What a card does not know is not taken.
    foreign = QMimeData()
    foreign.setText("something else")
    refused = QDragEnterEvent(
        QPoint(30, 20), Qt.DropAction.CopyAction, foreign, _LEFT, Qt.KeyboardModifier.NoModifier
    )
    QApplication.sendEvent(first, refused)
    assert not refused.isAccepted()


def test_a_right_click_on_card_row_and_name_opens_the_menu_of_that_option(
    qtbot: QtBot, page: SideBySidePage, window: MainWindow
) -> None:
    for widget, at, which in (
        (page.sheet.cards[2], QPoint(40, 60), 2),
        (page.table.viewport(), row_place(page, 1), 1),
        (page.table.verticalHeader().viewport(), name_place(page, 2), 2),
    ):
        right_click(widget, at)
        menu = open_menu(qtbot)
        assert chosen(page) == which
        assert {"Open on the sketch", "Duplicate", "Rename", "Remove"} <= {
            action.text() for action in menu.actions()
        }
        menu.close()
    right_click(page.table.verticalHeader().viewport(), name_place(page, 2))
    menu = open_menu(qtbot)
    duplicate = next(action for action in menu.actions() if action.text() == "Duplicate")
    qtbot.mouseClick(menu, _LEFT, pos=menu.actionGeometry(duplicate).center())
    settle(qtbot, page)
    assert variant_names(window) == [WHITE.name, DARK.name, f"{DARK.name}, copy"]


@pytest.mark.parametrize("on_the_name", [False, True])
def test_a_double_click_opens_the_option_on_the_sketch(
    qtbot: QtBot, page: SideBySidePage, window: MainWindow, on_the_name: bool
) -> None:
    names = page.table.verticalHeader().viewport()
    widget = names if on_the_name else page.table.viewport()
    at = name_place(page, 2) if on_the_name else row_place(page, 2)
    qtbot.mouseClick(widget, _LEFT, pos=at)
    qtbot.mouseDClick(widget, _LEFT, pos=at)
    assert window.pages.current == "sketch"
    assert window.document.plan.walls[0].bands[0].lining == DARK.key


def test_a_heading_sorts_at_the_first_and_second_click_and_lets_go_at_the_third(
    qtbot: QtBot, page: SideBySidePage
) -> None:
    header = page.table.horizontalHeader()
    at = QPoint(header.sectionViewportPosition(0) + header.sectionSize(0) // 2, 10)

    def names() -> list[str]:
        return [row.side.name for row in page.table.options.rows]

    seen = []
    for _ in range(3):
        qtbot.mouseClick(header.viewport(), _LEFT, pos=at)
        seen.append(names())
    rising = ["Shelf", DARK.name, WHITE.name]
    assert sorted(map(tuple, seen[:2])) == sorted([tuple(rising), tuple(rising[::-1])])
    assert seen[2] == ["Shelf", WHITE.name, DARK.name]
    # Where rows stand by a number, a name is not dragged about.
    qtbot.mouseClick(header.viewport(), _LEFT, pos=at)
    assert not page.table.verticalHeader().sectionsMovable()


def test_names_stay_at_the_left_while_the_numbers_are_scrolled(
    qtbot: QtBot, page: SideBySidePage, window: MainWindow
) -> None:
    window.resize(910, 560)
    QApplication.processEvents()
    bar = page.table.horizontalScrollBar()
    assert bar.maximum() > 0
    names = page.table.verticalHeader()
    before = names.mapTo(page, QPoint(0, 0))
    bar.setValue(bar.maximum())
    assert names.isVisible()
    assert names.mapTo(page, QPoint(0, 0)) == before
    # The last column is in sight whole.
    last = page.table.options.columnCount() - 1
    right = page.table.visualRect(page.table.options.index(0, last)).right()
    assert right <= page.table.viewport().width()


def test_a_card_is_pulled_by_its_head_and_not_by_its_map(
    qtbot: QtBot, page: SideBySidePage, window: MainWindow
) -> None:
    """The head of a card, pulled far enough, starts a drag; the map of it does not."""
    card = page.sheet.cards[2]
    started: list[bool] = []
    card._drag = lambda: started.append(True)  # type: ignore[method-assign]
    for at in (QPoint(40, card.height() // 2), QPoint(40, 8)):
        qtbot.mousePress(card, _LEFT, pos=at)
        for step in range(1, 5):
            qtbot.mouseMove(card, at + QPoint(12 * step, 0))
        qtbot.mouseRelease(card, _LEFT, pos=at + QPoint(48, 0))
    assert started == [True]


def test_what_is_chosen_in_the_table_comes_into_sight_and_is_renamed_in_its_place(
    qtbot: QtBot, page: SideBySidePage, window: MainWindow
) -> None:
    plan = window.document.plan
    many = add_variants(plan, *((f"Kept {k}", plan) for k in range(20)))
    window.document.apply(many, "Keep many")
    settle(qtbot, page)
    last = page.sheet.cards[-1]
    assert last.visibleRegion().isEmpty()
    page.table.setFocus()
    page.table.scrollToBottom()
    row = page.table.options.rowCount() - 1
    qtbot.mouseClick(page.table.viewport(), _LEFT, pos=row_place(page, row))
    assert last.visibleRegion().boundingRect().size() == last.size()
    qtbot.keyClick(page.table, Qt.Key.Key_F2)
    line = window.focusWidget()
    assert line is last.name_line
    qtbot.keyClicks(line, "The last")
    qtbot.keyClick(line, Qt.Key.Key_Return)
    settle(qtbot, page)
    assert variant_names(window)[-1] == "The last"
