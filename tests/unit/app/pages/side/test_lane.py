"""A lane: the newest question counts, stopping keeps what is done, nothing comes late."""

from __future__ import annotations

import threading
from collections.abc import Iterator

import pytest
from pytestqt.qtbot import QtBot

from planner.app.pages.side.lane import Lane, Task


@pytest.fixture
def lane(qtbot: QtBot) -> Iterator[Lane]:
    made = Lane("test")
    yield made
    made.shutdown()


def heeding(started: threading.Event) -> object:
    """A job that works until it is told to stop."""

    def job(task: Task) -> object:
        started.set()
        task.halt.wait(5)
        return "partly"

    return job


def test_an_answer_comes_with_what_it_is_about(qtbot: QtBot, lane: Lane) -> None:
    about = object()
    with qtbot.waitSignal(lane.done) as got:
        lane.ask(about, lambda task: 42)
    assert got.args is not None
    assert got.args[0] is about
    assert got.args[1] == 42
    assert not lane.busy
    assert lane.about is None


def test_the_newest_question_takes_the_place_of_the_older(qtbot: QtBot, lane: Lane) -> None:
    answers: list[tuple[object, object]] = []
    lane.done.connect(lambda about, result: answers.append((about, result)))
    started = threading.Event()
    lane.ask("old", heeding(started))  # type: ignore[arg-type]
    assert started.wait(5)
    lane.ask("newer", lambda task: 1)
    lane.ask("newest", lambda task: 2)
    assert lane.about == "newest"
    qtbot.waitUntil(lambda: not lane.busy)
    assert answers == [("newest", 2)]


def test_stopping_hands_on_what_is_done(qtbot: QtBot, lane: Lane) -> None:
    started = threading.Event()
    with qtbot.waitSignal(lane.done) as got:
        lane.ask("sweep", heeding(started))  # type: ignore[arg-type]
        assert started.wait(5)
        lane.stop()
    assert got.args == ["sweep", "partly"]


def test_dropping_hands_on_nothing(qtbot: QtBot, lane: Lane) -> None:
    started = threading.Event()
    lane.ask("sweep", heeding(started))  # type: ignore[arg-type]
    assert started.wait(5)
    with qtbot.assertNotEmitted(lane.done, wait=60):
        lane.drop()
    assert not lane.busy


def test_a_refusal_is_handed_on_as_it_is_said(qtbot: QtBot, lane: Lane) -> None:
    def job(task: Task) -> object:
        raise ValueError("Hang a lamp first.")

    with qtbot.waitSignal(lane.failed) as got:
        lane.ask("q", job)
    assert got.args == ["q", "Hang a lamp first."]


def test_a_fault_is_a_sentence_and_goes_to_the_log(
    qtbot: QtBot, lane: Lane, caplog: pytest.LogCaptureFixture
) -> None:
    def job(task: Task) -> object:
        raise RuntimeError("first line\nsecond line")

    with qtbot.waitSignal(lane.failed) as got:
        lane.ask("q", job)
    assert got.args is not None
    assert "RuntimeError: first line)" in got.args[1]
    assert "second line" in caplog.text


def test_a_job_that_gives_up_says_that_it_was_stopped(qtbot: QtBot, lane: Lane) -> None:
    started = threading.Event()

    def job(task: Task) -> object:
        started.set()
        task.halt.wait(5)
        raise RuntimeError("cancelled")

    with qtbot.waitSignal(lane.failed) as got:
        lane.ask("q", job)
        assert started.wait(5)
        lane.stop()
    assert got.args == ["q", "Stopped."]


def test_progress_is_told_and_a_closed_lane_asks_nothing(qtbot: QtBot, lane: Lane) -> None:
    with qtbot.waitSignals([lane.progressed, lane.done]):
        lane.ask("q", lambda task: task.progress(0.5))
    lane.shutdown()
    lane.ask("late", lambda task: 1)
    assert not lane.busy


def test_a_synchronous_lane_answers_inside_ask(qtbot: QtBot) -> None:
    lane = Lane("test", synchronous=True)
    answers: list[object] = []
    lane.done.connect(lambda _about, result: answers.append(result))
    lane.ask("q", lambda task: 7)
    assert answers == [7]
    lane.shutdown()
