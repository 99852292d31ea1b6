"""Hands that do anything to a window: mouse, wheel, keys, menus and pages, event by event.

No event may raise, leave a selection that points at nothing, or keep the hand waiting. The
ordinary run is short and lit by a made-up light; ``pytest -m harness`` sends ten thousand events
for each of five seeds with the program's own light, prints what it measured and holds it
against the limits. Run on a quiet machine: a freeze is counted in time of the processor, so
that others on the machine do not count.
"""

from __future__ import annotations

import gc
import random
import time
from collections.abc import Callable
from pathlib import Path

import pytest
from PySide6.QtCore import QEvent, QPoint, QPointF, Qt
from PySide6.QtGui import QMouseEvent, QWheelEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QMenu, QWidget
from pytestqt.qtbot import QtBot

from planner.app.ahead import Ahead
from planner.app.canvas.drawing import Drawing
from planner.app.estimator import Estimator, keep_one_heap
from planner.app.main_window import MainWindow
from planner.app.settings import Settings
from planner.catalogue.library import demo_plan
from planner.files.store import plan_to_bytes
from planner.plan.plan import Plan
from planner.plan.space import contains
from tests.e2e.shell import ReadyAnswers, make_window

pytestmark = pytest.mark.gui

FREEZE_S = 0.100
WARM_UP = 3000
GROWTH_MB = 60.0
LEFT, MIDDLE = Qt.MouseButton.LeftButton, Qt.MouseButton.MiddleButton
NONE, SHIFT = Qt.KeyboardModifier.NoModifier, Qt.KeyboardModifier.ShiftModifier
CTRL, ALT = Qt.KeyboardModifier.ControlModifier, Qt.KeyboardModifier.AltModifier
ACTIONS = (
    "undo", "undo", "redo", "add_lamp", "duplicate", "copy", "cut", "paste", "remove",
    "select_lamps", "level_lamps", "align_left", "align_centre", "align_right", "align_front",
    "align_middle", "align_back", "gaps_across", "gaps_deep", "shares_across", "shares_deep",
    "add_shelf", "add_tray", "add_pot", "add_box", "unit_cm", "unit_in", "contours", "band_wash",
    "gains",
    "fit", "zoom_in", "zoom_out", "measure", "large_side", "keep_variant",
)  # fmt: skip
KEYS = (
    "Left", "Right", "Up", "Down", "Left", "Up", "Tab", "Backtab", "Return", "Escape", "Delete",
    "Backspace", "Insert", "Home", "R", "M", "L", "Space", "Plus", "Minus", "0", "1", "2", "5",
    "Period", "Comma",
)  # fmt: skip


class AnyHand:
    """Sends one random event after the other and notes how long each kept the window."""

    def __init__(self, window: MainWindow, seed: int) -> None:
        self.window, self.dice = window, random.Random(seed)
        self.held: tuple[Drawing, Qt.MouseButton, QPointF] | None = None
        self.longest: tuple[float, str] = (0.0, "")
        self.long_ones: list[tuple[float, str]] = []
        self.steps: tuple[tuple[Callable[[], str], int], ...] = (
            (self.press, 12), (self.move, 40), (self.release, 14), (self.wheel, 3),
            (self.key, 16), (self.act, 8), (self.menu, 3), (self.page, 1), (self.resize, 1),
        )  # fmt: skip

    def once(self) -> None:
        """One event, and what the window does about it."""
        makers, weights = zip(*self.steps, strict=True)
        away = self.window.pages.current != "sketch"
        step = self.back if away else self.dice.choices(makers, weights)[0]
        begun = time.thread_time()
        name = step()
        QApplication.processEvents()
        QApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
        spent = time.thread_time() - begun
        self.longest = max(self.longest, (spent, name))
        if spent > FREEZE_S:
            self.long_ones.append((spent, name))
        self.check()

    def check(self) -> None:
        window = self.window
        plan: Plan = window.document.plan
        assert all(place.fits(plan) for place in window.selection.chosen)
        assert window.selection.current.fits(plan)
        outline = plan.space.footprint
        assert all(contains(outline, lamp.x, lamp.y) for lamp in plan.lamps)
        assert all(contains(outline, one.x, one.y) for one in plan.obstacles)

    # -- events -------------------------------------------------------------------------

    def drawing(self) -> Drawing:
        page = self.window.page
        return self.dice.choice((page.plan_view, page.plan_view, page.elevation))

    def spot(self, drawing: Drawing) -> QPointF:
        """A pixel: often on a thing of the plan, where a hand would go."""
        at = QPointF(self.dice.uniform(0, drawing.width()), self.dice.uniform(0, drawing.height()))
        items = drawing.items()
        if items and self.dice.random() < 0.6:
            at = drawing.viewport.to_pixel(*drawing.spot_of(self.dice.choice(items)))
            at += QPointF(self.dice.uniform(-4, 4), self.dice.uniform(-4, 4))
        return at

    def keys(self) -> Qt.KeyboardModifier:
        return self.dice.choice((NONE, NONE, NONE, SHIFT, CTRL, ALT))

    def send(self, kind: QEvent.Type, to: QWidget, at: QPointF, button: Qt.MouseButton) -> None:
        down = button if kind is not QEvent.Type.MouseButtonRelease else Qt.MouseButton.NoButton
        own = Qt.MouseButton.NoButton if kind is QEvent.Type.MouseMove else button
        where = QPointF(to.mapToGlobal(at))
        QApplication.sendEvent(to, QMouseEvent(kind, at, where, own, down, self.keys()))

    def press(self) -> str:
        if self.held is not None:
            return self.release()
        drawing, button = self.drawing(), self.dice.choice((LEFT, LEFT, LEFT, LEFT, MIDDLE))
        at = self.spot(drawing)
        twice = self.dice.random() < 0.1
        kind = QEvent.Type.MouseButtonDblClick if twice else QEvent.Type.MouseButtonPress
        self.send(kind, drawing, at, button)
        self.held = (drawing, button, at)
        return kind.name

    def move(self) -> str:
        if self.held is None:
            drawing = self.drawing()
            self.send(QEvent.Type.MouseMove, drawing, self.spot(drawing), Qt.MouseButton.NoButton)
            return "hover"
        drawing, button, at = self.held
        far = self.dice.choice((3.0, 25.0, 25.0, 400.0))
        at += QPointF(self.dice.uniform(-far, far), self.dice.uniform(-far, far))
        self.held = (drawing, button, at)
        self.send(QEvent.Type.MouseMove, drawing, at, button)
        return "drag"

    def release(self) -> str:
        if self.held is not None:
            drawing, button, at = self.held
            self.held = None
            self.send(QEvent.Type.MouseButtonRelease, drawing, at, button)
        return "release"

    def wheel(self) -> str:
        drawing = self.drawing()
        at, turn = self.spot(drawing), QPoint(0, self.dice.choice((-1200, -120, 120, 120, 1200)))
        where = QPointF(drawing.mapToGlobal(at))
        QApplication.sendEvent(
            drawing,
            QWheelEvent(
                at, where, QPoint(), turn, Qt.MouseButton.NoButton, NONE,
                Qt.ScrollPhase.NoScrollPhase, False,
            ),
        )  # fmt: skip
        return "wheel"

    def key(self) -> str:
        drawing = self.drawing() if self.held is None else self.held[0]
        name = self.dice.choice(KEYS)
        QTest.keyClick(drawing, getattr(Qt.Key, f"Key_{name}"), self.keys())
        return f"key {name}"

    def act(self) -> str:
        name = self.dice.choice(ACTIONS)
        self.window.actions_[name].trigger()
        return name

    def menu(self) -> str:
        drawing = self.drawing()
        if drawing.dragging:
            return "no menu"
        at = self.spot(drawing)
        item = drawing.item_at(at)
        drawing.choose(item)
        menu = drawing.menu_for(item, drawing.viewport.to_world(at))
        entries = [
            one for one in menu.actions() if one.text() and not isinstance(one.menu(), QMenu)
        ]
        entry = self.dice.choice([one for one in entries if one.isEnabled()])
        text = entry.text()
        entry.trigger()
        menu.deleteLater()
        return f"menu {text}"

    def page(self) -> str:
        self.release()
        to = self.dice.choice(("side", "survey"))
        self.window.pages.go(to)
        return f"page {to}"

    def back(self) -> str:
        self.window.pages.go("sketch")
        return "back to the sketch"

    def resize(self) -> str:
        self.window.resize(self.dice.randint(1000, 1500), self.dice.randint(640, 1000))
        return "resize"


def memory_mb() -> float:
    """What the program holds now, of its own."""
    lines = Path("/proc/self/status").read_text(encoding="utf-8").splitlines()
    held = next(line for line in lines if line.startswith("VmRSS"))
    return int(held.split()[1]) / 1024


@pytest.mark.parametrize("seed", range(2))
def test_whatever_a_hand_does_nothing_breaks(qtbot: QtBot, seed: int) -> None:
    window, _ = make_window(qtbot, demo_plan())
    window.resize(1280, 800)
    window.show()
    hand = AnyHand(window, seed)
    for _ in range(400):
        hand.once()
    hand.release()
    for menu in window.findChildren(QMenu):
        menu.close()
    window.document.replace(window.document.plan, None)


@pytest.mark.harness
@pytest.mark.timeout(3000)
@pytest.mark.parametrize("seed", range(5))
def test_ten_thousand_events(qtbot: QtBot, seed: int) -> None:
    keep_one_heap()
    window = MainWindow(
        demo_plan(), settings=Settings.in_memory(), questions=ReadyAnswers(), estimator=Estimator()
    )
    qtbot.addWidget(
        window, before_close_func=lambda shown: shown.document.replace(shown.document.plan, None)
    )
    window.resize(1280, 800)
    window.show()
    # As in the program: whoever looks at the first light has everything brought meanwhile.
    spectra = window.page.spectra
    ahead = Ahead(lambda: not window.estimator.busy, window, (lambda: spectra.spectra,))
    qtbot.waitUntil(lambda: ahead.done, timeout=60_000)
    hand = AnyHand(window, seed)
    held: list[float] = []
    for event in range(10_000):
        hand.once()
        if event % 1000 == 999:
            # What a plan keeps on purpose (variants and their maps, steps of the history) goes
            # with the plan: what is left is what the program holds.
            hand.release()
            window.document.replace(demo_plan(), None)
            qtbot.waitUntil(lambda: not window.estimator.busy, timeout=60_000)
            gc.collect()
            held.append(memory_mb())
            spent, name = hand.longest
            so_far = f"seed {seed}, {event + 1} events: {held[-1]:.0f} MB"
            print(f"{so_far}, longest {1000 * spent:.0f} ms ({name})", flush=True)
    print([(name, round(1000 * spent)) for spent, name in sorted(hand.long_ones)], flush=True)
    hand.release()
    written = plan_to_bytes(window.document.plan)
    assert Plan.model_validate_json(written).lamps == window.document.plan.lamps
    assert not hand.long_ones
    assert held[-1] - held[WARM_UP // 1000 - 1] < GROWTH_MB
