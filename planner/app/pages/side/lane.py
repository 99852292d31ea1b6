"""A lane: one worker thread for long questions, where the newest question counts.

The light of the sketch has its own worker (``planner.app.estimator``); a lane is the same
form for whatever else takes time: one question runs, a newer one stops it and takes its
place, and what comes late is dropped.
"""

from __future__ import annotations

import logging
import os
import threading
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass, field

from PySide6.QtCore import QObject, Qt, Signal, Slot

_log = logging.getLogger(__name__)


@dataclass(frozen=True, eq=False)
class Task:
    """A question on its way: ``about`` comes back with the answer, unchanged.

    The job gets the task; it tells its progress through it and asks it whether to stop.
    """

    about: object
    job: Callable[[Task], object]
    progress: Callable[[float], None]
    halt: threading.Event = field(default_factory=threading.Event)

    def cancelled(self) -> bool:
        """Whether nobody waits for the answer any more, or it was asked to stop."""
        return self.halt.is_set()


Job = Callable[[Task], object]


class Lane(QObject):
    """Runs jobs one at a time in a thread of its own.

    Signals: ``done(about, result)``, ``failed(about, sentence)`` (also when it was asked to
    stop), ``progressed(float)`` and ``busy_changed(bool)``. ``synchronous`` computes inside
    ``ask``, for tests; also chosen by ``PLANNER_SYNCHRONOUS=1``.
    """

    done = Signal(object, object)
    failed = Signal(object, str)
    progressed = Signal(float)
    busy_changed = Signal(bool)
    turned = Signal()
    """Another question is the one that is awaited, or none any more."""
    _ended = Signal(object, object, object)

    def __init__(
        self, name: str, *, synchronous: bool | None = None, parent: QObject | None = None
    ) -> None:
        super().__init__(parent)
        if synchronous is None:
            synchronous = os.environ.get("PLANNER_SYNCHRONOUS") == "1"
        self._synchronous = synchronous
        self._executor = ThreadPoolExecutor(1, thread_name_prefix=name)
        self._running: Task | None = None
        self._newest: Task | None = None
        self._waiting: Task | None = None
        self._closed = self._busy = False
        self._ended.connect(self._on_ended, Qt.ConnectionType.QueuedConnection)

    @property
    def busy(self) -> bool:
        """Whether an answer is awaited."""
        return self._busy

    @property
    def about(self) -> object:
        """What the awaited question is about; None when none is."""
        return None if self._newest is None else self._newest.about

    def ask(self, about: object, job: Job) -> None:
        """Compute a job; whatever runs or waits is dropped."""
        if self._closed:
            return
        task = Task(about, job, self._report)
        self._newest = task
        if self._running is None:
            self._start(task)
        else:
            self._running.halt.set()
            self._waiting = task
        self._update_busy()

    def stop(self) -> None:
        """Ask the running job to stop; what it then still answers is handed on."""
        if self._waiting is not None:
            self._waiting = None
            self._newest = None
            self._update_busy()
        if self._running is not None:
            self._running.halt.set()

    def drop(self) -> None:
        """Give up everything; no answer comes."""
        self._newest = self._waiting = None
        if self._running is not None:
            self._running.halt.set()
        self._update_busy()

    def shutdown(self) -> None:
        """Stop the work and join the thread; to be called before Qt objects go."""
        self._closed = True
        self.drop()
        self._executor.shutdown(wait=True, cancel_futures=True)

    def _start(self, task: Task) -> None:
        self._running, self._waiting = task, None
        if self._synchronous:
            self._on_ended(task, *_outcome(task))
        else:
            self._executor.submit(self._work, task)

    def _work(self, task: Task) -> None:
        result, error = _outcome(task)
        if not self._closed:
            self._ended.emit(task, result, error)

    def _report(self, fraction: float) -> None:
        if not self._closed:
            self.progressed.emit(fraction)

    @Slot(object, object, object)
    def _on_ended(self, task: Task, result: object, error: Exception | None) -> None:
        self._running = None
        if self._closed:
            return
        wanted = task is self._newest
        if wanted:
            self._newest = None
        if self._waiting is not None:
            self._start(self._waiting)
        self._update_busy()
        if not wanted:
            return
        if error is None:
            self.done.emit(task.about, result)
        elif task.cancelled():
            self.failed.emit(task.about, "Stopped.")
        else:
            self.failed.emit(task.about, _sentence(error))

    def _update_busy(self) -> None:
        busy = self._newest is not None
        if busy != self._busy:
            self._busy = busy
            self.busy_changed.emit(busy)
        self.turned.emit()


def _outcome(task: Task) -> tuple[object, Exception | None]:
    """Run a job; in the worker thread unless synchronous."""
    try:
        return task.job(task), None
    except Exception as error:  # noqa: BLE001 - whatever the core raises becomes a sentence
        return None, error


def _sentence(error: Exception) -> str:
    if isinstance(error, ValueError):
        return str(error)
    _log.error("A question beside the light failed", exc_info=error)
    said = str(error).strip().partition("\n")[0]
    return f"This could not be computed because of a fault ({type(error).__name__}: {said})."
