"""Work beside the window's thread: one kind of lane for whatever takes time.

A job is a function of two callables, ``job(progress, cancelled) -> result``: it may tell the
fraction that is done, and asks now and then whether to give up. A lane runs jobs in one thread
of its own, one after another. Of one topic only the newest question counts: it stops the older
one and takes its place, and what comes late is dropped. A job that was asked to stop may hand on
what it has so far. All signals come in the window's thread.
"""

from __future__ import annotations

import gc
import logging
import os
import threading
from collections.abc import Callable, Hashable, Iterable
from dataclasses import dataclass, field
from queue import SimpleQueue
from time import monotonic
from typing import Final

from PySide6.QtCore import QCoreApplication, QObject, Qt, QTimer, Signal, Slot

from planner.plan.refusal import refusal

Progress = Callable[[float], None]
Cancelled = Callable[[], bool]
Job = Callable[[Progress, Cancelled], object]

THREAD_PREFIX: Final = "lane-"
PROGRESS_MS: Final = 50
"""How often progress is told at most: more often than a bar is painted helps nobody."""
COLLECT_MS: Final = 250
"""How often it is looked whether there is garbage enough to be collected."""
PATIENCE_S: Final = 0.9
"""How long closing waits for jobs to give up. One that does not ask is left to the end of the
process rather than holding the window."""

_log = logging.getLogger(__name__)


@dataclass(eq=False)
class _Task:
    """A question on its way; its identity tells it from older ones about the same thing."""

    about: object
    job: Job
    topic: Hashable
    what: str
    wanted: bool = True
    fraction: float | None = None
    begun: float = 0.0
    halt: threading.Event = field(default_factory=threading.Event)

    def report(self, fraction: float) -> None:
        self.fraction = fraction

    def give_up(self) -> None:
        self.wanted = False
        self.halt.set()

    def outcome(self) -> tuple[object, Exception | None]:
        """Run the job; in the worker thread unless synchronous."""
        if not self.wanted:
            return None, None
        try:
            return self.job(self.report, self.halt.is_set), None
        except Exception as error:  # noqa: BLE001 - whatever it raises becomes a sentence
            return None, error


class Lane(QObject):
    """Runs jobs one at a time in a thread of its own, which starts with the first job.

    Signals: ``done(about, result)``; ``failed(about, sentence)``, also where a job that was
    asked to stop had nothing to hand on; ``progressed(about, float)``; ``busy_changed(bool)``;
    ``turned`` when other questions are awaited than before; ``lasted(what, seconds, well)`` when
    one was answered or failed, unless it was asked to stop. ``synchronous`` computes inside
    ``ask``, for tests; also chosen by ``PLANNER_SYNCHRONOUS=1``.
    """

    done = Signal(object, object)
    failed = Signal(object, str)
    progressed = Signal(object, float)
    busy_changed = Signal(bool)
    turned = Signal()
    lasted = Signal(str, float, bool)
    _ended = Signal(object, object, object)

    def __init__(
        self, name: str, *, synchronous: bool | None = None, parent: QObject | None = None
    ) -> None:
        super().__init__(parent)
        if synchronous is None:
            synchronous = os.environ.get("PLANNER_SYNCHRONOUS") == "1"
        self.synchronous = synchronous
        self._name = THREAD_PREFIX + name
        self._thread: threading.Thread | None = None
        self._given: SimpleQueue[_Task | None] = SimpleQueue()
        self._running: _Task | None = None
        self._line: list[_Task] = []
        self._closed = self._busy = False
        self._told: float | None = None
        self._ended.connect(self._on_ended, Qt.ConnectionType.QueuedConnection)
        self._pulse = QTimer(self, interval=PROGRESS_MS)
        self._pulse.timeout.connect(self._tell_progress)

    @property
    def busy(self) -> bool:
        """Whether an answer is awaited."""
        return self._busy

    @property
    def running(self) -> object:
        """What the job that runs is about; None when none runs, or nobody waits for it."""
        task = self._running
        return task.about if task is not None and task.wanted else None

    def awaits(self, topic: Hashable) -> bool:
        """Whether an answer of a topic is awaited."""
        return any(task.topic == topic for task in self._awaited())

    def awaits_about(self, about: object) -> bool:
        """Whether an answer about this very object is awaited."""
        return any(task.about is about for task in self._awaited())

    def ask(
        self,
        about: object,
        job: Job,
        *,
        topic: Hashable = None,
        what: str = "This",
        let_end: bool = False,
    ) -> None:
        """Compute a job in the place of whatever runs or waits of its topic.

        ``about`` comes back with the answer, unchanged. ``what`` is named should the job fail.
        ``let_end`` lets a job of the topic that runs already come to its end and be told.
        """
        if self._closed:
            return
        self._line = [task for task in self._line if task.topic != topic]
        running = self._running
        if running is not None and running.topic == topic and not let_end:
            running.give_up()
        self._line.append(_Task(about, job, topic, what))
        if running is None:
            self._start_next()
        else:
            self._turn()

    def stop(self) -> None:
        """Ask the job that runs to stop, and forget those that wait; a part may be handed on."""
        self._line.clear()
        if self._running is not None:
            self._running.halt.set()
        self._turn()

    def drop(self, topic: Hashable = None) -> None:
        """Give up what runs and waits of a topic; no answer comes."""
        self._line = [task for task in self._line if task.topic != topic]
        if self._running is not None and self._running.topic == topic:
            self._running.give_up()
        self._turn()

    def close(self) -> None:
        """Give up everything for good; nothing is told any more."""
        if self._closed:
            return
        self._closed = True
        self._line.clear()
        self._pulse.stop()
        if self._running is not None:
            self._running.give_up()
        self._given.put(None)

    def shutdown(self) -> None:
        """Close, and join the thread; to be called before Qt objects go."""
        shut_down([self])

    def join(self, seconds: float) -> None:
        """Wait for the thread of a closed lane."""
        thread, self._thread = self._thread, None
        if thread is not None:
            thread.join(max(seconds, 0.0))
            if thread.is_alive():
                _log.warning("A job of '%s' did not stop when it was asked to", self._name)

    # -- one job at a time ----------------------------------------------------------------

    def _awaited(self) -> Iterable[_Task]:
        if self._running is not None and self._running.wanted:
            yield self._running
        yield from self._line

    def _start_next(self) -> None:
        if not self._line:
            self._turn()
            return
        task = self._running = self._line.pop(0)
        task.begun = monotonic()
        self._told = None
        self._turn()
        if self.synchronous:
            self._on_ended(task, *task.outcome())
            return
        if self._thread is None:
            # A daemon: one job that never asks must not keep the process from ending.
            self._thread = threading.Thread(target=self._work, name=self._name, daemon=True)
            collect_here()
            self._thread.start()
        self._pulse.start()
        self._given.put(task)

    def _work(self) -> None:
        """The life of the thread; of this object it touches the queue and one signal."""
        while (task := self._given.get()) is not None:
            result, error = task.outcome()
            if self._closed:
                return
            try:
                self._ended.emit(task, result, error)
            except RuntimeError:
                return  # Qt has taken the lane away in this very moment
            del task, result, error  # nothing big is kept while the thread waits

    @Slot(object, object, object)
    def _on_ended(self, task: _Task, result: object, error: Exception | None) -> None:
        if self._closed:
            return
        if task.wanted:
            self._tell_progress()
        self._pulse.stop()
        self._running = None
        self._start_next()
        if not task.wanted or self._closed:
            return
        if error is None:
            self.done.emit(task.about, result)
        elif task.halt.is_set():
            self.failed.emit(task.about, "Stopped.")
        else:
            self.failed.emit(task.about, sentence(error, task.what))
        if not task.halt.is_set():
            self.lasted.emit(task.what, monotonic() - task.begun, error is None)

    @Slot()
    def _tell_progress(self) -> None:
        task = self._running
        if task is not None and task.wanted and task.fraction not in {None, self._told}:
            self._told = task.fraction
            self.progressed.emit(task.about, task.fraction)

    def _turn(self) -> None:
        busy = any(True for _ in self._awaited())
        if busy != self._busy:
            self._busy = busy
            self.busy_changed.emit(busy)
        self.turned.emit()


# -- garbage is collected in the window's thread ---------------------------------------
# Python looks for unreachable cycles in whichever thread happens to allocate. In a lane's it
# would take apart what holds Qt objects: there a lock of Qt's waits for the interpreter, which
# the window's thread holds while it waits for that lock, and neither ever goes on (seen with
# PySide 6.11.3, once in five runs of a file of tests). Nor is it safe within a call into Qt in the
# window's own thread: PySide keeps all connections to Python in one table (its dynamicslot.cpp),
# and whoever dies while another is disconnected changes that table under its hands: then the
# table is walked without end (seen once in fifteen runs of some files of tests).


def collect_here() -> None:
    """Have garbage collected by the window's thread alone, from now on; call it in that thread."""
    gc.disable()
    app = QCoreApplication.instance()
    if app is not None and app.findChild(_Collector) is None:
        _Collector(app)


class _Collector(QTimer):
    """Collects the generations that are due, as Python itself would."""

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent, interval=COLLECT_MS)
        self._old = 0
        self.timeout.connect(self._collect)
        self.start()

    @Slot()
    def _collect(self) -> None:
        counts, limits = gc.get_count(), gc.get_threshold()
        due = max((k for k in range(3) if counts[k] > limits[k]), default=-1)
        # All of them take a tenth of a second: only once there are a quarter more.
        if due == 2 and len(gc.get_objects(2)) < 1.25 * self._old:
            due = 1
        if due >= 0:
            gc.collect(due)
        if due == 2:
            self._old = len(gc.get_objects(2))


def shut_down(lanes: Iterable[Lane]) -> None:
    """Close lanes, all first, then join their threads within ``PATIENCE_S`` together."""
    lanes = list(lanes)
    for lane in lanes:
        lane.close()
    end = monotonic() + PATIENCE_S
    for lane in lanes:
        lane.join(end - monotonic())


def sentence(error: Exception, what: str) -> str:
    """What a failure says to the user; a fault of the program goes to the log with all of it."""
    if isinstance(error, ValueError):
        return refusal(error)
    _log.error("%s failed", what, exc_info=error)
    said = str(error).strip().partition("\n")[0].removesuffix(".")
    fault = f"{type(error).__name__}: {said}" if said else type(error).__name__
    return f"{what} could not be computed because of a fault in the program ({fault})."
