"""Work beside the window's thread: the newest job wins, stale answers are dropped."""

from __future__ import annotations

import os
import threading
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass, field

from PySide6.QtCore import QObject, Qt, Signal, Slot

Cancelled = Callable[[], bool]
Progress = Callable[[float], None]
Job = Callable[[Cancelled, Progress], object]


@dataclass(frozen=True, eq=False)
class _Task:
    number: int
    job: Job
    stop: threading.Event = field(default_factory=threading.Event)


class Work(QObject):
    """One thread for one kind of work.

    Signals: ``done(result)`` and ``failed(Exception)`` of the newest job only,
    ``progressed(float)`` with the fraction done, ``busy_changed(bool)``. A job that was
    replaced or cancelled tells nothing. The thread starts with the first job.
    """

    done = Signal(object)
    failed = Signal(object)
    progressed = Signal(float)
    busy_changed = Signal(bool)
    _ended = Signal(object, object, object)
    _went_on = Signal(object, float)

    def __init__(
        self, name: str, parent: QObject | None = None, *, synchronous: bool | None = None
    ) -> None:
        super().__init__(parent)
        if synchronous is None:
            synchronous = os.environ.get("PLANNER_SYNCHRONOUS") == "1"
        self._name, self._synchronous = name, synchronous
        self._executor: ThreadPoolExecutor | None = None
        self._task: _Task | None = None
        self._number = 0
        self._closed = False
        self._ended.connect(self._on_ended, Qt.ConnectionType.QueuedConnection)
        self._went_on.connect(self._on_went_on, Qt.ConnectionType.QueuedConnection)

    @property
    def busy(self) -> bool:
        """Whether an answer is being waited for."""
        return self._task is not None

    def start(self, job: Job) -> None:
        """Begin a job; one that is under way is given up."""
        if self._closed:
            return
        was_busy = self.busy
        self._give_up()
        self._number += 1
        task = self._task = _Task(self._number, job)
        if not was_busy:
            self.busy_changed.emit(True)
        if self._synchronous:
            self._on_ended(task, *self._run(task))
            return
        if self._executor is None:
            self._executor = ThreadPoolExecutor(1, thread_name_prefix=self._name)
        self._executor.submit(self._work, task)

    def cancel(self) -> None:
        """Give up what is under way; nothing is told of it but that it is over."""
        if self._task is not None:
            self._give_up()
            self.busy_changed.emit(False)

    def shutdown(self) -> None:
        """Stop and join the thread; to be called before Qt objects go."""
        self._closed = True
        self._give_up()
        if self._executor is not None:
            self._executor.shutdown(wait=True, cancel_futures=True)

    def _give_up(self) -> None:
        if self._task is not None:
            self._task.stop.set()
        self._task = None

    def _work(self, task: _Task) -> None:
        result, error = self._run(task)
        if not self._closed:
            self._ended.emit(task, result, error)

    def _run(self, task: _Task) -> tuple[object, Exception | None]:
        def progress(fraction: float) -> None:
            if not self._closed:
                self._went_on.emit(task, fraction)

        if task.stop.is_set():
            return None, None
        try:
            return task.job(task.stop.is_set, progress), None
        except Exception as error:  # noqa: BLE001 - whatever it raises is told by a signal
            return None, error

    @Slot(object, object, object)
    def _on_ended(self, task: _Task, result: object, error: Exception | None) -> None:
        if task is not self._task or self._closed:
            return
        self._task = None
        self.busy_changed.emit(False)
        if error is not None:
            self.failed.emit(error)
        else:
            self.done.emit(result)

    @Slot(object, float)
    def _on_went_on(self, task: _Task, fraction: float) -> None:
        if task is self._task:
            self.progressed.emit(fraction)
