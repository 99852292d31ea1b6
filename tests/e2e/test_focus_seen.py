"""Whoever works with the keyboard sees where it is: on every control, in both themes."""

from __future__ import annotations

from pathlib import Path

import pytest
from PySide6.QtCore import QPoint, QRect, Qt
from PySide6.QtWidgets import QApplication, QWidget
from pytestqt.qtbot import QtBot

from planner.app import theme
from planner.app.theme import Theme
from planner.catalogue.library import demo_plan
from planner.plan import edits
from planner.plan.place import Place, PlaceKind
from planner.plan.space import Obstacle
from tests.e2e.sketching import make_page, written_estimate

BOX = Obstacle(x=0.2, y=0.2, underside=0.3, length=0.1, width=0.1, thickness=0.1)


def stops_of(page: QWidget) -> list[QWidget]:
    """What the Tab key comes by."""
    return [
        widget
        for widget in page.findChildren(QWidget)
        if widget.focusPolicy() & Qt.FocusPolicy.TabFocus
        and widget.isVisible()
        and widget.isEnabled()
        and widget.focusProxy() is None
        and not widget.objectName().startswith("qt_")
        and not isinstance(widget.parent(), QApplication)
    ]


def seen(page: QWidget, widget: QWidget) -> object:
    """The pixels of a widget with a little around it."""
    area = QRect(widget.mapTo(page, QPoint(0, 0)), widget.size()).adjusted(-3, -3, 3, 3)
    return page.grab(area).toImage()


@pytest.mark.parametrize("look", [Theme.LIGHT, Theme.DARK])
@pytest.mark.parametrize("kind", PlaceKind)
def test_the_keyboard_is_seen_wherever_it_is(
    qtbot: QtBot, tmp_path: Path, kind: PlaceKind, look: Theme
) -> None:
    theme.apply(look)
    plan = edits.add_obstacle(demo_plan(), BOX)
    page = make_page(qtbot, plan, tmp_path, size=(1900, 1800))
    page.show_estimate(written_estimate(plan))
    page.workplace.selection.select(Place(kind))
    qtbot.wait(1)
    stops = stops_of(page)
    assert len(stops) > 10
    unseen = []
    for widget in stops:
        # The drawings select their first item when the Tab key comes by.
        page.workplace.selection.select(Place(kind))
        page.setFocus()
        before = seen(page, widget)
        widget.setFocus(Qt.FocusReason.TabFocusReason)
        QApplication.processEvents()
        if widget.hasFocus() and seen(page, widget) == before:
            unseen.append(f"{type(widget).__name__} '{widget.accessibleName()}'")
    assert unseen == []
