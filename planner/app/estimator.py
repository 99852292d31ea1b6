"""The estimator: computes the light off the GUI thread; the newest request wins.

One worker thread holds one cache. A request carries a generation number and a stop
event; an answer of an older generation is dropped. While a hand drags, a running
preview may end and is shown although the plan has moved on a little (stopping it at
every move would never show anything); the newest plan waits and follows at once.

When the light of a plan at rest is there, the same worker looks further: how sure the
figures are and which surface is worth most (``outlook_ready``), and what a lining that is
being considered would bring (``weighed``). Any edit drops that.
"""

from __future__ import annotations

import logging
import os
import threading
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass, field
from typing import Any, Final

from PySide6.QtCore import QObject, Qt, QTimer, Signal, Slot

from planner.app.side_work import SideKind, SideWork
from planner.estimate.result import Estimate, EstimateOptions, Quality
from planner.plan.lining import Lining
from planner.plan.plan import Plan

SETTLE_MS: Final = 150
"""How long the hand must rest before the default quality is computed."""

Evaluate = Callable[..., Estimate]
Outlooking = Callable[..., Any]
Weighing = Callable[..., Any]

_SIDE_OPTIONS: Final = EstimateOptions(cells=(12, 12), quality=Quality.PREVIEW)
"""Enough for differences, which share their paths of light."""

_log = logging.getLogger(__name__)


@dataclass(frozen=True)
class _Request:
    generation: int
    plan: Plan
    options: EstimateOptions
    stop: threading.Event = field(default_factory=threading.Event)


@dataclass(frozen=True)
class _Answer:
    request: _Request
    estimate: Estimate | None
    error: Exception | None


@dataclass(frozen=True)
class Weighed:
    """What a lining would bring: rows of (surface, change of mean, change of lowest PPFD)."""

    plan: Plan
    lining: Lining
    rows: tuple[tuple[Any, float, float], ...]


class Estimator(QObject):
    """Asks the core for estimates and hands them out as signals.

    Signals: ``estimated(Estimate)``, ``failed(str)`` with one clear sentence,
    ``busy_changed(bool)`` (busy lasts until the last asked quality is there) and
    ``progressed(float)`` with the fraction done; ``outlook_ready(Outlook)`` some time
    after the estimate of a plan at rest, and ``weighed(Weighed)`` after ``weigh``.

    Parameters
    ----------
    evaluate
        ``evaluate(plan, options, *, cache, progress, cancelled) -> Estimate``; the
        program's own when left out (imported in the worker, for a quick start).
    outlook, brought_by
        The functions of ``estimate.outlook`` and ``estimate.sensitivity``; the program's
        own when left out together with ``evaluate``, none when only they are left out.
    synchronous
        Compute inside ``request``, for tests; also chosen by ``PLANNER_SYNCHRONOUS=1``.
    """

    estimated = Signal(object)
    failed = Signal(str)
    busy_changed = Signal(bool)
    progressed = Signal(float)
    outlook_ready = Signal(object)
    weighed = Signal(object)
    _answered = Signal(object)

    def __init__(
        self,
        evaluate: Evaluate | None = None,
        *,
        outlook: Outlooking | None = None,
        brought_by: Weighing | None = None,
        synchronous: bool | None = None,
        parent: QObject | None = None,
    ) -> None:
        super().__init__(parent)
        if synchronous is None:
            synchronous = os.environ.get("PLANNER_SYNCHRONOUS") == "1"
        self.cells = (24, 24)
        self._evaluate = evaluate
        own = evaluate is None
        self._outlook = outlook or (_own_outlook if own else None)
        self._brought_by = brought_by or (_own_brought_by if own else None)
        self._cache: Any = None
        self._synchronous = synchronous
        self._executor = ThreadPoolExecutor(1, thread_name_prefix="estimator")
        self._generation = 0
        self._running: _Request | None = None
        self._waiting: _Request | None = None
        self._lenient = False
        self._closed = False
        self._busy = False
        self._edited: Plan | None = None
        self._settle = QTimer(self, singleShot=True, interval=SETTLE_MS)
        self._settle.timeout.connect(self.settle)
        self._answered.connect(self._on_answered, Qt.ConnectionType.QueuedConnection)
        self._side = SideWork(
            self._executor, self._is_free, synchronous=self._synchronous, parent=self
        )
        self._side.done.connect(self._on_side_done)

    @property
    def busy(self) -> bool:
        """Whether an estimate is being computed or will be in a moment."""
        return self._busy

    def edit(self, plan: Plan, dragging: bool = False) -> None:
        """Follow an edit: a preview at once, the default quality when the hand stops."""
        self._edited = plan
        if self._synchronous and not dragging:
            self.settle()
            return
        self._settle.start()
        options = EstimateOptions(cells=self.cells, quality=Quality.PREVIEW)
        self._submit(plan, options, lenient=dragging)

    @Slot()
    def settle(self) -> None:
        """The hand has stopped: compute the default quality of the last edit now."""
        self._settle.stop()
        plan, self._edited = self._edited, None
        if plan is not None:
            options = EstimateOptions(cells=self.cells, quality=Quality.DEFAULT)
            # The preview of the same plan is nearly there: let it be shown before.
            self._submit(plan, options, lenient=True)

    def request(self, plan: Plan, options: EstimateOptions) -> None:
        """Compute this and nothing else; whatever runs or waits is dropped."""
        self._settle.stop()
        self._edited = None
        self._submit(plan, options, lenient=False)

    def weigh(self, plan: Plan, lining: Lining) -> None:
        """Find out what a lining would bring on each surface; the newest question counts."""
        weighing = self._brought_by
        if weighing is not None and not self._closed:
            self._side.ask(
                SideKind.LINING,
                lambda cancelled: Weighed(
                    plan, lining, weighing(plan, lining, _SIDE_OPTIONS, cancelled=cancelled)
                ),
            )

    def cancel(self) -> None:
        """Drop all work; the last answer stays."""
        self._side.drop()
        self._settle.stop()
        self._edited = self._waiting = None
        self._generation += 1
        if self._running is not None:
            self._running.stop.set()
        self._update_busy()

    def shutdown(self) -> None:
        """Stop the work and join the thread; to be called before Qt objects go."""
        self._closed = True
        self._side.close()
        self.cancel()
        self._executor.shutdown(wait=True, cancel_futures=True)

    # -- one request at a time ------------------------------------------------------------

    def _submit(self, plan: Plan, options: EstimateOptions, *, lenient: bool) -> None:
        if self._closed:
            return
        self._side.drop()
        self._generation += 1
        self._lenient = lenient
        request = _Request(self._generation, plan, options)
        running = self._running
        if running is None:
            self._start(request)
        else:
            self._waiting = request
            if not (lenient and running.options.quality is Quality.PREVIEW):
                running.stop.set()
        self._update_busy()

    def _start(self, request: _Request) -> None:
        self._running, self._waiting = request, None
        if self._synchronous:
            self._on_answered(self._compute(request))
        else:
            self._executor.submit(self._work, request)

    def _work(self, request: _Request) -> None:
        answer = self._compute(request)
        if not self._closed:
            self._answered.emit(answer)

    def _compute(self, request: _Request) -> _Answer:
        """Run the core; in the worker thread unless synchronous."""
        try:
            if request.stop.is_set():
                return _Answer(request, None, None)
            evaluate = self._evaluate or self._load()
            estimate = evaluate(
                request.plan,
                request.options,
                cache=self._cache,
                progress=self._report_progress,
                cancelled=request.stop.is_set,
            )
        except Exception as error:  # noqa: BLE001  # whatever the core raises becomes a signal
            return _Answer(request, None, error)
        return _Answer(request, estimate, None)

    def _load(self) -> Evaluate:
        from planner.estimate.evaluate import Cache, evaluate  # noqa: PLC0415 - heavy

        self._cache = Cache()
        self._evaluate = evaluate
        return evaluate

    def _report_progress(self, fraction: float) -> None:
        if not self._closed:
            self.progressed.emit(fraction)

    @Slot(object)
    def _on_answered(self, answer: _Answer) -> None:
        self._running = None
        request = answer.request
        newest = request.generation == self._generation
        stopped = request.stop.is_set()
        if self._waiting is not None and not self._closed:
            self._start(self._waiting)
        self._update_busy()
        if self._closed or stopped or not (newest or self._lenient):
            self._side.go_on()
            return
        if answer.estimate is not None:
            self.estimated.emit(answer.estimate)
            if newest and request.options.quality is not Quality.PREVIEW:
                self._look_out(request.plan)
        elif newest and answer.error is not None:
            self.failed.emit(_sentence(answer.error))
        self._side.go_on()

    # -- beside the light -----------------------------------------------------------------

    def _is_free(self) -> bool:
        return self._running is None and self._waiting is None and not self._settle.isActive()

    def _look_out(self, plan: Plan) -> None:
        looking = self._outlook
        if looking is not None:
            self._side.ask(SideKind.OUTLOOK, lambda cancelled: looking(plan, cancelled=cancelled))

    @Slot(object, object)
    def _on_side_done(self, kind: SideKind, result: object) -> None:
        if not self._closed:
            (self.outlook_ready if kind is SideKind.OUTLOOK else self.weighed).emit(result)

    def _update_busy(self) -> None:
        running = self._running is not None and not self._running.stop.is_set()
        busy = running or self._waiting is not None or self._settle.isActive()
        if busy != self._busy:
            self._busy = busy
            self.busy_changed.emit(busy)


def _own_outlook(plan: Plan, **named: Any) -> Any:
    from planner.estimate.outlook import outlook  # noqa: PLC0415 - heavy

    return outlook(plan, **named)


def _own_brought_by(plan: Plan, lining: Lining, options: EstimateOptions, **named: Any) -> Any:
    from planner.estimate.sensitivity import brought_by  # noqa: PLC0415 - heavy

    return brought_by(plan, lining, options, **named)


def _sentence(error: Exception) -> str:
    """What a failure says to the user; the details go to the log."""
    if isinstance(error, ValueError):
        return f"The light cannot be computed: {error}"
    _log.error("The estimate failed", exc_info=error)
    return (
        f"The light could not be computed because of a fault in the program "
        f"({type(error).__name__}: {error}). The map shows the last good estimate."
    )
