"""One worker: the newest question counts, stopping keeps what is done, nothing comes late."""

from __future__ import annotations

import gc
import threading
import time
from collections.abc import Iterator

import pytest
from PySide6.QtCore import QObject
from pytestqt.qtbot import QtBot

from planner.app.jobs import (
    PATIENCE_S,
    THREAD_PREFIX,
    Cancelled,
    Job,
    Lane,
    Progress,
    sentence,
    shut_down,
)


@pytest.fixture
def lane(qtbot: QtBot) -> Iterator[Lane]:
    made = Lane("test", synchronous=False)
    yield made
    made.shutdown()


@pytest.fixture
def answers(lane: Lane) -> list[tuple[object, object]]:
    kept: list[tuple[object, object]] = []
    lane.done.connect(lambda about, result: kept.append((about, result)))
    lane.failed.connect(lambda about, said: kept.append((about, said)))
    return kept


class Heeding:
    """A job that works until it is told to stop, and looks only now and then."""

    def __init__(self, every: float = 0.002, error: Exception | None = None) -> None:
        self.every, self.error = every, error
        self.started, self.ended = threading.Event(), threading.Event()

    def __call__(self, _progress: Progress, cancelled: Cancelled) -> object:
        self.started.set()
        while not cancelled():
            time.sleep(self.every)
        self.ended.set()
        if self.error is not None:
            raise self.error
        return "partly"


class Cycle(QObject):
    """Garbage that only the collector finds; tells in which thread it is taken apart."""

    def __init__(self, ended: list[int]) -> None:
        super().__init__()
        self.itself, self.ended = self, ended

    def __del__(self) -> None:
        self.ended.append(threading.get_ident())


def test_qt_objects_in_cycles_end_in_the_windows_thread(qtbot: QtBot, lane: Lane) -> None:
    """In a lane's thread they can lock up the program for good."""
    ended: list[int] = []

    def allocate(_progress: Progress, _cancelled: Cancelled) -> object:
        return len([[] for _ in range(200_000)])

    for k in range(20):
        Cycle(ended)
        with qtbot.waitSignal(lane.done):
            lane.ask(k, allocate)
    # Enough is held here that a collection is due; nobody but the window's thread makes it.
    held = [[] for _ in range(10 * gc.get_threshold()[0])]  # type: ignore[var-annotated]
    qtbot.waitUntil(lambda: len(ended) == 20)
    assert set(ended) == {threading.get_ident()}
    assert held


def answering(result: object) -> Job:
    return lambda _progress, _cancelled: result


def lane_threads() -> list[str]:
    return [t.name for t in threading.enumerate() if t.name.startswith(THREAD_PREFIX)]


# -- which answer counts ------------------------------------------------------------------


def test_an_answer_comes_with_what_it_is_about(qtbot: QtBot, lane: Lane) -> None:
    about = object()
    with qtbot.waitSignal(lane.done, timeout=2000) as got:
        lane.ask(about, answering(42))
        assert lane.busy
        assert lane.awaits_about(about)
    assert got.args is not None
    assert got.args[0] is about
    assert got.args[1] == 42
    assert not lane.busy
    assert not lane.awaits_about(about)


def test_of_fifty_quick_questions_only_the_last_is_answered(
    qtbot: QtBot, lane: Lane, answers: list[tuple[object, object]]
) -> None:
    for number in range(49):
        lane.ask("same", Heeding())
        time.sleep(0.001 * (number % 3))
    lane.ask("same", answering("last"))
    qtbot.waitUntil(lambda: not lane.busy, timeout=2000)
    qtbot.wait(20)
    assert answers == [("same", "last")]


def test_an_older_question_about_the_same_thing_is_told_apart_by_its_task(
    qtbot: QtBot, lane: Lane, answers: list[tuple[object, object]]
) -> None:
    about = object()
    older = Heeding()
    lane.ask(about, older)
    assert older.started.wait(2)
    lane.ask(about, answering("new"))
    qtbot.waitUntil(lambda: not lane.busy, timeout=2000)
    assert older.ended.is_set()
    assert answers == [(about, "new")]


def test_topics_wait_for_one_another_and_do_not_replace_one_another(
    qtbot: QtBot, lane: Lane, answers: list[tuple[object, object]]
) -> None:
    gate = threading.Event()
    lane.ask("a", lambda _progress, _cancelled: gate.wait(5), topic="one")
    lane.ask("b", answering(1), topic="two")
    lane.ask("c", answering(2), topic="two")
    assert lane.awaits("one")
    assert lane.awaits("two")
    gate.set()
    qtbot.waitUntil(lambda: not lane.busy, timeout=2000)
    assert answers == [("a", True), ("c", 2)]


def test_what_may_end_is_told_although_something_newer_waits(
    qtbot: QtBot, lane: Lane, answers: list[tuple[object, object]]
) -> None:
    gate, begun = threading.Event(), threading.Event()

    def first(_progress: Progress, cancelled: Cancelled) -> object:
        begun.set()
        gate.wait(5)
        return cancelled()

    lane.ask("first", first)
    assert begun.wait(2)
    for number in range(5):
        lane.ask(number, answering(number), let_end=True)
    gate.set()
    qtbot.waitUntil(lambda: not lane.busy, timeout=2000)
    assert answers == [("first", False), (4, 4)]


# -- stopping and dropping ----------------------------------------------------------------


def test_stopping_hands_on_what_is_done(qtbot: QtBot, lane: Lane) -> None:
    job = Heeding()
    with qtbot.waitSignal(lane.done, timeout=2000) as got:
        lane.ask("sweep", job)
        assert job.started.wait(2)
        lane.ask("waiting", answering(1), topic="another")
        lane.stop()
        assert not lane.awaits("another")
    assert got.args == ["sweep", "partly"]


def test_a_job_that_is_stopped_before_it_begins_still_hands_on_what_it_has(
    qtbot: QtBot, lane: Lane
) -> None:
    for _ in range(20):
        with qtbot.waitSignal(lane.done, timeout=2000) as got:
            lane.ask("sweep", Heeding())
            lane.stop()
        assert got.args == ["sweep", "partly"]


def test_a_job_that_gives_up_says_that_it_was_stopped(
    qtbot: QtBot, lane: Lane, caplog: pytest.LogCaptureFixture
) -> None:
    job = Heeding(error=RuntimeError("cancelled"))
    with qtbot.waitSignal(lane.failed, timeout=2000) as got:
        lane.ask("q", job)
        assert job.started.wait(2)
        lane.stop()
    assert got.args == ["q", "Stopped."]
    assert caplog.text == ""


def test_dropping_is_over_at_once_and_tells_nothing(
    qtbot: QtBot, lane: Lane, answers: list[tuple[object, object]]
) -> None:
    job = Heeding(every=0.05)
    lane.ask("sweep", job, topic="one")
    assert job.started.wait(2)
    lane.ask("other", answering(3), topic="two")
    lane.drop("one")
    assert not lane.awaits("one")
    qtbot.waitUntil(lambda: not lane.busy, timeout=2000)
    assert answers == [("other", 3)]


def test_busy_and_turned_follow_what_is_awaited(qtbot: QtBot, lane: Lane) -> None:
    busy: list[bool] = []
    turned: list[bool] = []
    first, second = object(), object()
    lane.busy_changed.connect(busy.append)
    lane.turned.connect(lambda: turned.append(lane.awaits_about(first)))
    lane.ask(first, Heeding())
    lane.ask(second, answering(1))
    qtbot.waitUntil(lambda: not lane.busy, timeout=2000)
    assert busy == [True, False]
    assert turned[0]
    assert not turned[-1]


# -- failures -----------------------------------------------------------------------------


def test_a_refusal_is_handed_on_as_it_is_said(
    qtbot: QtBot, lane: Lane, caplog: pytest.LogCaptureFixture
) -> None:
    def refusing(_progress: Progress, _cancelled: Cancelled) -> object:
        raise ValueError("hang a lamp first")

    with qtbot.waitSignal(lane.failed, timeout=2000) as got:
        lane.ask("q", refusing)
    assert got.args == ["q", "Hang a lamp first."]
    assert caplog.text == ""


def test_a_fault_is_a_sentence_and_goes_to_the_log(
    qtbot: QtBot, lane: Lane, caplog: pytest.LogCaptureFixture
) -> None:
    def faulty(_progress: Progress, _cancelled: Cancelled) -> object:
        raise RuntimeError("first line\nsecond line")

    with qtbot.waitSignal(lane.failed, timeout=2000) as got:
        lane.ask("q", faulty, what="The sweep")
    assert got.args == [
        "q",
        "The sweep could not be computed because of a fault in the program "
        "(RuntimeError: first line).",
    ]
    assert "The sweep failed" in caplog.text
    assert "second line" in caplog.text
    assert "Traceback" in caplog.text
    with qtbot.waitSignal(lane.done, timeout=2000):
        lane.ask("q", answering("the lane goes on"))


def test_a_fault_without_words_is_named_by_its_kind() -> None:
    assert sentence(ZeroDivisionError(), "The light").endswith("(ZeroDivisionError).")


# -- progress -----------------------------------------------------------------------------


def test_progress_comes_in_the_windows_thread_and_not_more_often_than_it_is_painted(
    qtbot: QtBot, lane: Lane
) -> None:
    told: list[tuple[int, float]] = []
    lane.progressed.connect(lambda _about, f: told.append((threading.get_ident(), f)))
    count = 20_000
    began = time.monotonic()

    def job(progress: Progress, _cancelled: Cancelled) -> object:
        for number in range(count):
            progress((number + 1) / count)
            if number % 100 == 0:
                time.sleep(0.001)
        return None

    with qtbot.waitSignal(lane.done, timeout=10_000):
        lane.ask("q", job)
    took = time.monotonic() - began
    assert {thread for thread, _ in told} == {threading.get_ident()}
    assert len(told) <= took / 0.04 + 2
    fractions = [fraction for _, fraction in told]
    assert fractions == sorted(fractions)
    assert fractions[-1] == 1.0


def test_progress_of_a_question_that_was_replaced_is_not_told(qtbot: QtBot, lane: Lane) -> None:
    told: list[object] = []
    lane.progressed.connect(lambda about, _fraction: told.append(about))
    begun = threading.Event()

    def stubborn(progress: Progress, cancelled: Cancelled) -> object:
        begun.set()
        while not cancelled():
            time.sleep(0.001)
        progress(0.9)
        time.sleep(0.12)  # longer than two pulses
        return None

    lane.ask("old", stubborn)
    assert begun.wait(2)
    lane.ask("new", lambda progress, _cancelled: progress(0.5))
    qtbot.waitUntil(lambda: not lane.busy, timeout=2000)
    assert told == ["new"]


# -- the end ------------------------------------------------------------------------------


def test_closing_joins_within_a_second_when_jobs_ask_every_fifth_of_one(qtbot: QtBot) -> None:
    lanes = [Lane(f"test {k}", synchronous=False) for k in range(3)]
    jobs = [Heeding(every=0.2) for _ in lanes]
    told: list[object] = []
    for lane, job in zip(lanes, jobs, strict=True):
        lane.done.connect(lambda about, _result: told.append(about))
        lane.ask("q", job)
        assert job.started.wait(2)
    before = set(lane_threads())
    shut_down(lanes)  # waits for PATIENCE_S in all, whatever they do
    assert PATIENCE_S < 1
    assert before.isdisjoint(lane_threads())
    assert all(job.ended.is_set() for job in jobs)
    qtbot.wait(20)
    assert told == []


def test_a_job_that_does_not_ask_cannot_hold_the_window(
    qtbot: QtBot, caplog: pytest.LogCaptureFixture
) -> None:
    lane = Lane("deaf", synchronous=False)
    begun, gate = threading.Event(), threading.Event()

    def deaf(_progress: Progress, _cancelled: Cancelled) -> object:
        begun.set()
        gate.wait(20)
        return None

    lane.ask("q", deaf)
    assert begun.wait(2)
    lane.shutdown()
    lane.shutdown()
    assert f"{THREAD_PREFIX}deaf" in lane_threads(), "it was waited for"
    assert "did not stop" in caplog.text
    gate.set()
    qtbot.waitUntil(lambda: f"{THREAD_PREFIX}deaf" not in lane_threads(), timeout=2000)


def test_an_answer_to_a_lane_that_qt_took_away_ends_its_thread(qtbot: QtBot) -> None:
    owner = QObject()
    lane = Lane("orphan", synchronous=False, parent=owner)
    job = Heeding()
    lane.ask("q", job)
    assert job.started.wait(2)
    owner.deleteLater()
    with qtbot.waitSignal(owner.destroyed, timeout=2000):
        pass
    running = lane._running
    assert running is not None
    running.give_up()
    qtbot.waitUntil(lambda: f"{THREAD_PREFIX}orphan" not in lane_threads(), timeout=2000)


def test_a_closed_lane_asks_nothing_and_a_lane_without_questions_has_no_thread(
    qtbot: QtBot,
) -> None:
    lane = Lane("idle", synchronous=False)
    assert f"{THREAD_PREFIX}idle" not in lane_threads()
    lane.shutdown()
    lane.ask("late", answering(1))
    assert not lane.busy
    assert f"{THREAD_PREFIX}idle" not in lane_threads()


def test_all_questions_of_a_lane_share_one_thread_that_is_not_the_windows(
    qtbot: QtBot, lane: Lane, answers: list[tuple[object, object]]
) -> None:
    for topic in ("a", "b", "a"):
        with qtbot.waitSignal(lane.done, timeout=2000):
            lane.ask("q", lambda _progress, _cancelled: threading.get_ident(), topic=topic)
    threads = {thread for _, thread in answers}
    assert len(threads) == 1
    assert threading.get_ident() not in threads


# -- without a thread ---------------------------------------------------------------------


def test_a_synchronous_lane_answers_inside_ask(
    qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("PLANNER_SYNCHRONOUS", "1")
    lane = Lane("test")
    assert lane.synchronous
    told: list[object] = []
    lane.progressed.connect(lambda _about, fraction: told.append(fraction))
    lane.done.connect(lambda _about, result: told.append(result))
    lane.failed.connect(lambda _about, said: told.append(said))

    def job(progress: Progress, _cancelled: Cancelled) -> object:
        progress(0.5)
        return 7

    def refusing(_progress: Progress, _cancelled: Cancelled) -> object:
        raise ValueError("no lamp")

    lane.ask("q", job)
    lane.ask("q", refusing)
    assert told == [0.5, 7, "No lamp."]
    assert not lane.busy
    lane.shutdown()


def test_a_question_put_by_an_answer_is_answered_too(qtbot: QtBot) -> None:
    lane = Lane("test", synchronous=True)
    told: list[object] = []

    def go_on(about: object, result: object) -> None:
        told.append(result)
        if about == "first":
            lane.ask("second", answering(2))

    lane.done.connect(go_on)
    lane.ask("first", answering(1))
    assert told == [1, 2]
    assert not lane.busy
    lane.shutdown()
