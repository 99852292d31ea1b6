"""Edits on every page leave nothing behind: live objects are counted, not megabytes."""

from __future__ import annotations

import gc
from collections import Counter

import pytest
from PySide6.QtCore import QEvent
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from planner.app.estimator import Estimator
from planner.app.main_window import MainWindow
from planner.app.settings import Settings
from planner.catalogue.library import demo_plan
from planner.estimate.evaluate import Cache, shared_cache
from planner.plan import edits
from planner.plan.place import Place, PlaceKind
from planner.plan.plan import Plan
from tests.e2e.shell import ReadyAnswers, make_window

pytestmark = pytest.mark.gui

ROUND = 12
KEPT_BYTES = 60_000_000


def walk(window: MainWindow) -> None:
    """One round of edits, the same every time, with a look at every page."""
    document = window.document
    for step in range(ROUND):
        for page in ("sketch", "side", "survey"):
            window.pages.go(page)
            moved = edits.change_lamp(document.plan, 0, x=0.3 + 0.02 * step)
            document.apply(moved, "Move lamp")
            corner = edits.move_corner(document.plan, 2, (1.0 + 0.01 * step, 1.0))
            document.apply(corner, "Move corner", "drag")
            document.end_gesture()
            kind = (PlaceKind.LAMP, PlaceKind.WALL, PlaceKind.CANOPY, PlaceKind.SPACE)[step % 4]
            window.selection.select(Place(kind))
            QApplication.processEvents()
            # What an event loop does on its own; a loop of a test does not.
            QApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    document.undo_stack.clear()


def live() -> Counter[str]:
    """Live objects of the program and of Qt, by type."""
    gc.collect()
    return Counter(
        type(one).__qualname__
        for one in gc.get_objects()
        if str(type(one).__module__).startswith(("planner", "PySide6", "pyqtgraph"))
    )


def test_edits_on_every_page_leave_no_objects_behind(qtbot: QtBot) -> None:
    window, _ = make_window(qtbot)
    walk(window)
    walk(window)
    before = live()
    for _ in range(3):
        walk(window)
    after = live()
    # Two hundred edits: one thing kept of every edit would show as two hundred. Pieces of light
    # are kept on purpose, up to so many bytes, and come more slowly than that.
    grown = {kind: count - before[kind] for kind, count in after.items()}
    assert {kind: more for kind, more in grown.items() if more > 5 * ROUND} == {}


def plans() -> int:
    gc.collect()
    return sum(type(one) is Plan for one in gc.get_objects())


def test_a_drag_leaves_none_of_its_plans_behind(qtbot: QtBot) -> None:
    window, _ = make_window(qtbot)
    document = window.document
    before = plans()
    for step in range(60):
        moved = edits.change_lamp(document.plan, 0, x=0.4 + 0.001 * step)
        document.apply(moved, "Move lamp", "drag")
        del moved
    document.end_gesture()
    QApplication.processEvents()
    # The plan as it is and as it was; what is shown beside it may hold one or two more.
    assert plans() - before < 12
    for step in range(40):
        document.undo_stack.undo()
        document.apply(edits.change_lamp(document.plan, 0, y=0.4 + 0.001 * step), "Move lamp")
    QApplication.processEvents()
    assert plans() - before < 12
    assert document.undo_stack.count() == 1
    document.undo_stack.undo()
    document.undo_stack.redo()
    document.undo_stack.undo()
    assert document.plan.lamps[0].x == 0.5


def caches() -> list[Cache]:
    gc.collect()
    return [one for one in gc.get_objects() if type(one) is Cache]


def test_all_pages_together_keep_no_more_pieces_of_light_than_one(qtbot: QtBot) -> None:
    others = caches()
    window = MainWindow(
        demo_plan(), settings=Settings.in_memory(), questions=ReadyAnswers(), estimator=Estimator()
    )
    qtbot.addWidget(
        window, before_close_func=lambda shown: shown.document.replace(shown.document.plan, None)
    )
    window.show()
    for page in ("sketch", "side", "survey", "sketch"):
        window.pages.go(page)
        qtbot.waitUntil(
            lambda: not (window.estimator.busy or window.estimator.lane.busy), timeout=60_000
        )
        QApplication.processEvents()
    shared = shared_cache()
    assert shared.held > 0
    own = [one for one in caches() if one is not shared and not any(one is two for two in others)]
    assert shared.limit + sum(cache.limit for cache in own) <= KEPT_BYTES
