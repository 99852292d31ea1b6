"""Work that is done only while nobody waits for light: how sure it is, and what would help.

It shares the estimator's one worker thread. Jobs wait in a line until the light is there,
and all of them are dropped at the next edit.
"""

from __future__ import annotations

import logging
import threading
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass, field
from enum import StrEnum

from PySide6.QtCore import QObject, Qt, Signal, Slot

Job = Callable[[Callable[[], bool]], object]
"""Does the work; gets a check that says when to give up, and raises then."""

_log = logging.getLogger(__name__)


class SideKind(StrEnum):
    """What a job finds out; a new one of a kind replaces an older one."""

    OUTLOOK = "outlook"
    LINING = "lining"


@dataclass(frozen=True, eq=False)
class _Task:
    kind: SideKind
    job: Job
    stop: threading.Event = field(default_factory=threading.Event)


class SideWork(QObject):
    """A line of jobs behind the light; ``done(SideKind, result)`` for each that ended well.

    ``may_start`` says whether the worker is free of light.
    """

    done = Signal(object, object)
    _ended = Signal(object, object)

    def __init__(
        self,
        executor: ThreadPoolExecutor,
        may_start: Callable[[], bool],
        *,
        synchronous: bool,
        parent: QObject | None = None,
    ) -> None:
        super().__init__(parent)
        self._executor, self._may_start = executor, may_start
        self._synchronous = synchronous
        self._closed = False
        self._line: list[_Task] = []
        self._running: _Task | None = None
        self._ended.connect(self._on_ended, Qt.ConnectionType.QueuedConnection)

    @property
    def active(self) -> bool:
        """Whether a job runs or waits."""
        return self._running is not None or bool(self._line)

    def ask(self, kind: SideKind, job: Job) -> None:
        """Put a job into the line, in the place of an older one of its kind."""
        self._line = [task for task in self._line if task.kind is not kind]
        if self._running is not None and self._running.kind is kind:
            self._running.stop.set()
        self._line.append(_Task(kind, job))
        self.go_on()

    def drop(self) -> None:
        """Give up everything."""
        self._line.clear()
        if self._running is not None:
            self._running.stop.set()

    def close(self) -> None:
        """Give up everything for good: nothing is told any more."""
        self._closed = True
        self.drop()

    def go_on(self) -> None:
        """Start the next job if the worker is free."""
        if self._closed or self._running is not None or not self._line or not self._may_start():
            return
        task = self._running = self._line.pop(0)
        if self._synchronous:
            self._on_ended(task, self._result(task))
        else:
            self._executor.submit(self._work, task)

    def _work(self, task: _Task) -> None:
        result = self._result(task)
        if not self._closed:
            self._ended.emit(task, result)

    def _result(self, task: _Task) -> object:
        """Run a job; None where it was given up or failed (the light is not affected)."""
        if task.stop.is_set():
            return None
        try:
            return task.job(task.stop.is_set)
        except Exception:  # noqa: BLE001 - whatever it raises, the light goes on
            if not task.stop.is_set():
                _log.exception("A job beside the light failed")
            return None

    @Slot(object, object)
    def _on_ended(self, task: _Task, result: object) -> None:
        self._running = None
        if result is not None and not task.stop.is_set():
            self.done.emit(task.kind, result)
        self.go_on()
