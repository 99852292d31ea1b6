"""Work beside the window: the newest job wins, and what was given up says nothing."""

from __future__ import annotations

import threading
from collections.abc import Callable, Iterator

import pytest
from pytestqt.qtbot import QtBot

from planner.app.pages.survey.work import Work


@pytest.fixture
def work(qapp: object) -> Iterator[Work]:
    made = Work("test", synchronous=False)
    yield made
    made.shutdown()


def test_a_result_comes_back(qtbot: QtBot, work: Work) -> None:
    with qtbot.waitSignal(work.done, timeout=2000) as done:
        work.start(lambda _cancelled, _progress: 42)
    assert done.args == [42]
    assert not work.busy


def test_a_newer_job_replaces_an_older_one(qtbot: QtBot, work: Work) -> None:
    told: list[object] = []
    work.done.connect(told.append)
    begun = threading.Event()

    def endless(cancelled: Callable[[], bool], _progress: Callable[[float], None]) -> object:
        begun.set()
        while not cancelled():
            begun.wait(0.001)
        return "old"

    work.start(endless)
    assert begun.wait(2)
    with qtbot.waitSignal(work.done, timeout=2000):
        work.start(lambda _cancelled, _progress: "new")
    assert told == ["new"]


def test_cancel_ends_the_job_and_tells_no_result(qtbot: QtBot, work: Work) -> None:
    told: list[object] = []
    work.done.connect(told.append)
    ended = threading.Event()

    def endless(cancelled: Callable[[], bool], progress: Callable[[float], None]) -> object:
        progress(0.5)
        while not cancelled():
            ended.wait(0.001)
        ended.set()
        return "late"

    with qtbot.waitSignal(work.progressed, timeout=2000):
        work.start(endless)
    with qtbot.waitSignal(work.busy_changed, timeout=2000) as busy:
        work.cancel()
    assert busy.args == [False]
    assert ended.wait(2)
    qtbot.wait(20)
    assert told == []


def test_a_failure_is_told(qtbot: QtBot, work: Work) -> None:
    def failing(_cancelled: Callable[[], bool], _progress: Callable[[float], None]) -> object:
        raise ValueError("no lamp")

    with qtbot.waitSignal(work.failed, timeout=2000) as failed:
        work.start(failing)
    assert str(failed.args[0]) == "no lamp"
