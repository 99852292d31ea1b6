"""One drag by real events in a program of its own: ``python -m tests.bench.drag KIND``.

Prints, for each of a hundred moves, milliseconds from the event to the first painted picture of
its own light, of processor time on the window's thread and on all others, and the longest turn
of the event loop. Run with another checkout as working directory it measures that one.
"""

from __future__ import annotations

import json
import math
import os
import sys
import time
from collections.abc import Callable

os.environ["QT_QPA_PLATFORM"] = "offscreen"
# As ``planner.__main__`` has it, which is not run here.
os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")

from PySide6.QtCore import QEvent, QEventLoop, QObject, QPointF, Qt
from PySide6.QtGui import QMouseEvent
from PySide6.QtWidgets import QApplication

from planner.app import theme
from planner.app.main_window import MainWindow
from planner.app.run import make_application
from planner.app.settings import Settings
from planner.app.theme import Theme
from planner.plan import edits
from planner.plan.plan import Plan
from tests.bench.test_bench_window import bench_plan, mixed

MOVES = 130
FIRST = 30
NONE, LEFT = Qt.MouseButton.NoButton, Qt.MouseButton.LeftButton


class FirstPaint(QObject):
    """Notes the light a drawing was painted with last."""

    def __init__(self, window: MainWindow) -> None:
        super().__init__()
        self._window = window
        self.plan: Plan | None = None

    def eventFilter(self, _watched: QObject, event: QEvent) -> bool:
        if event.type() == QEvent.Type.Paint and self._window.estimate is not None:
            self.plan = self._window.estimate.plan
        return False


def turn() -> float:
    """One turn of the event loop; seconds of the processor it took on this thread."""
    begun = time.thread_time()
    QApplication.processEvents(QEventLoop.ProcessEventsFlag.WaitForMoreEvents)
    return time.thread_time() - begun


def moves(window: MainWindow, kind: str) -> Callable[[int], None]:
    """What each move of a kind does."""
    page, document = window.page, window.document
    plan = document.plan
    lamp = plan.lamps[0]
    if kind in {"output", "lining"}:
        page.dragging_changed.emit(True)

        def edit(number: int) -> None:
            share = 0.9 - 0.003 * (number % 60)
            if kind == "output":
                after = edits.change_lamp(document.plan, 0, output_percent=100 * share)
            else:
                # the diffuse part alone: what mirrors send stays as it is
                lining = mixed(0.9).model_copy(
                    update={"reflectance": share, "specular_share": 0.45 / share, "low": 0.0}
                )
                after = edits.change_lining(document.plan, lining)
            document.apply(after, "Bench", "bench")

        return edit
    view = page.elevation if kind == "height" else page.plan_view
    start = {
        "lamp": (lamp.x + 0.02, lamp.y + 0.02),
        "height": (lamp.x, plan.lamp_height(lamp) + 0.01),
        "corner": plan.space.footprint[2],
    }[kind]
    at, reach = QPointF(view.viewport.to_pixel(*start)), 12 if kind == "corner" else 40

    def send(what: QEvent.Type, where: QPointF, own: Qt.MouseButton) -> None:
        spot, keys = QPointF(view.mapToGlobal(where)), Qt.KeyboardModifier.AltModifier
        QApplication.sendEvent(view, QMouseEvent(what, where, spot, own, LEFT, keys))

    send(QEvent.Type.MouseButtonPress, at, LEFT)

    def move(number: int) -> None:
        across = reach * (math.cos(number / 7) - 1)
        up = -reach * math.sin(number / 7) - 3
        by = QPointF(0, up) if kind == "height" else QPointF(across, up)
        send(QEvent.Type.MouseMove, at + by, NONE)

    return move


def measured(kind: str) -> list[tuple[float, float, float, float]]:
    """Wall, window's thread, other threads and longest turn of each move, in milliseconds."""
    app = make_application()
    theme.apply(Theme.LIGHT)
    window = MainWindow(bench_plan(), settings=Settings.in_memory())
    window.resize(1280, 800)
    window.show()
    end = time.perf_counter() + 20
    while window.estimate is None or window.estimator.busy:
        turn()
        assert time.perf_counter() < end
    for _ in range(50):
        app.processEvents()
        time.sleep(0.01)
    watch = FirstPaint(window)
    drawing = window.page.elevation if kind == "height" else window.page.plan_view
    drawing.installEventFilter(watch)
    move, found = moves(window, kind), []
    for number in range(MOVES):
        begun, own, whole = time.perf_counter(), time.thread_time(), time.process_time()
        move(number)
        turns, asked = [time.thread_time() - own], window.document.plan
        while watch.plan is not asked and time.perf_counter() < begun + 5:
            turns.append(turn())
        here = time.thread_time() - own
        wall, beside = time.perf_counter() - begun, time.process_time() - whole - here
        found.append((1e3 * wall, 1e3 * here, 1e3 * beside, 1e3 * max(turns)))
    return found[FIRST:]


if __name__ == "__main__":
    print(json.dumps(measured(sys.argv[1])), flush=True)
    os._exit(0)
