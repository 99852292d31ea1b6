"""Outlook and weighing: behind the light, dropped by an edit."""

from __future__ import annotations

import threading
import time
from collections.abc import Callable, Iterator
from typing import Any

import pytest
from pytestqt.qtbot import QtBot

from planner.app.estimator import Estimator, Weighed
from planner.estimate.result import EstimateOptions, Quality
from planner.plan.lining import Lining
from planner.plan.plan import Plan
from tests.unit.app.test_estimator import FakeCore, idle, plan_named

BOARD = Lining(key="board", name="Board", reflectance=0.8, low=0.7, high=0.9)


class FakeOutlook:
    """Looks for as long as it is held and heeds the cancel check."""

    def __init__(self) -> None:
        self.hold: threading.Event | None = None
        self.started = threading.Event()
        self.looked: list[str] = []
        self.dropped: list[str] = []

    def __call__(self, plan: Plan, *, cancelled: Callable[[], bool]) -> str:
        self.started.set()
        while self.hold is not None and not self.hold.is_set():
            if cancelled():
                self.dropped.append(plan.name)
                raise RuntimeError("given up")
            time.sleep(0.001)
        self.looked.append(plan.name)
        return plan.name


def fake_brought_by(plan: Plan, lining: Lining, options: Any, *, cancelled: Any) -> Any:
    return ((plan.name, 12.0, 8.0),)


@pytest.fixture
def look() -> FakeOutlook:
    return FakeOutlook()


@pytest.fixture
def estimator(look: FakeOutlook, qtbot: QtBot) -> Iterator[Estimator]:
    made = Estimator(FakeCore(), outlook=look, brought_by=fake_brought_by, synchronous=False)
    yield made
    made.shutdown()


def test_the_outlook_follows_the_light_of_a_plan_at_rest(
    estimator: Estimator, look: FakeOutlook, qtbot: QtBot
) -> None:
    order: list[str] = []
    estimator.estimated.connect(lambda e: order.append(str(e.options.quality)))
    estimator.outlook_ready.connect(order.append)
    with qtbot.waitSignal(estimator.outlook_ready, timeout=2000):
        estimator.edit(plan_named("a"))
    assert order == ["preview", "default", "a"]
    assert not estimator.busy, "nobody waits for an outlook"


def test_an_edit_drops_the_outlook_and_its_light_comes_first(
    estimator: Estimator, look: FakeOutlook, qtbot: QtBot
) -> None:
    look.hold = threading.Event()
    estimator.request(plan_named("old"), EstimateOptions())
    qtbot.waitUntil(look.started.is_set, timeout=2000)
    with qtbot.waitSignal(estimator.estimated, timeout=500) as caught:
        estimator.edit(plan_named("new"), dragging=True)
    assert caught.args is not None
    assert caught.args[0].plan.name == "new"
    assert look.dropped == ["old"]
    look.hold.set()
    qtbot.waitUntil(lambda: look.looked == ["new"], timeout=2000)


def test_there_is_no_outlook_while_a_hand_drags(
    estimator: Estimator, look: FakeOutlook, qtbot: QtBot
) -> None:
    with qtbot.waitSignal(estimator.estimated, timeout=1000):
        estimator.request(plan_named("a"), EstimateOptions(quality=Quality.PREVIEW))
    qtbot.wait(30)
    assert look.looked == []


def test_weighing_waits_for_the_light_and_tells_what_was_asked(
    estimator: Estimator, qtbot: QtBot
) -> None:
    plan = plan_named("a")
    order: list[str] = []
    estimator.estimated.connect(lambda _e: order.append("light"))
    with qtbot.waitSignal(estimator.weighed, timeout=2000) as caught:
        estimator.request(plan, EstimateOptions())
        estimator.weigh(plan, BOARD)
    assert caught.args == [Weighed(plan, BOARD, (("a", 12.0, 8.0),))]
    assert order == ["light"]


def test_a_failing_outlook_leaves_the_light_alone(qtbot: QtBot) -> None:
    def failing(plan: Plan, *, cancelled: Any) -> Any:
        raise ZeroDivisionError

    estimator = Estimator(FakeCore(), outlook=failing, synchronous=False)
    told: list[object] = []
    estimator.failed.connect(told.append)
    try:
        for name in ("a", "b"):
            with qtbot.waitSignal(estimator.estimated, timeout=1000):
                estimator.request(plan_named(name), EstimateOptions())
        qtbot.waitUntil(idle(estimator), timeout=500)
        assert told == []
    finally:
        estimator.shutdown()


def test_shutdown_in_the_middle_of_an_outlook_stops_and_joins(
    look: FakeOutlook, qtbot: QtBot
) -> None:
    look.hold = threading.Event()
    estimator = Estimator(FakeCore(), outlook=look, synchronous=False)
    estimator.request(plan_named("a"), EstimateOptions())
    qtbot.waitUntil(look.started.is_set, timeout=2000)
    began = time.monotonic()
    estimator.shutdown()
    assert time.monotonic() - began < 1
    assert look.looked == []
