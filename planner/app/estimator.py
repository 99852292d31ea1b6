"""The estimator: computes the light off the window's thread; the newest request wins.

While a hand drags, a running preview may end and is shown although the plan has moved on a
little (stopping it at every move would never show anything); the newest plan waits and follows
at once. When the light of a plan at rest is there, the same lane looks further: how sure the
figures are and which surface is worth most (``outlook_ready``), and what a lining that is being
considered would bring (``weighed``). That is done only while nobody waits for light, and any
edit that changes the light drops it.

An edit that leaves the light alone (a note, a name, a price) computes nothing: what is known or
on its way is handed out as that of the new plan, its figures made anew (``plan.lit``).
"""

from __future__ import annotations

import ctypes
import sys
from collections.abc import Callable
from dataclasses import dataclass
from enum import StrEnum
from typing import Any, Final

from PySide6.QtCore import QObject, QTimer, Signal, Slot

from planner.app.document import Document
from planner.app.jobs import Cancelled, Job, Lane, Progress
from planner.estimate.result import QUICK, Estimate, EstimateOptions, Quality, of_plan
from planner.plan.lining import Lining
from planner.plan.lit import doubted, same_judged, same_light
from planner.plan.place import Place
from planner.plan.plan import Plan

SETTLE_MS: Final = 150
"""How long the hand must rest before the default quality is computed."""

Evaluate = Callable[..., Estimate]
Outlooking = Callable[..., Any]
Weighing = Callable[..., Any]


class _Topic(StrEnum):
    LIGHT = "light"
    OUTLOOK = "outlook"
    LINING = "lining"


_BESIDE: Final = (_Topic.OUTLOOK, _Topic.LINING)


@dataclass(frozen=True, eq=False)
class _Request:
    plan: Plan
    options: EstimateOptions


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
        Compute inside ``request``, as ``Lane`` says.
    """

    estimated = Signal(object)
    failed = Signal(str)
    busy_changed = Signal(bool)
    progressed = Signal(float)
    outlook_ready = Signal(object)
    weighed = Signal(object)

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
        self.cells = (24, 24)
        self._evaluate = evaluate
        own = evaluate is None
        self._outlook = outlook or (_own_outlook if own else None)
        self._brought_by = brought_by or (_own_brought_by if own else None)
        self._cache: Any = None
        self._busy = False
        self._edited: Plan | None = None
        self._plan: Plan | None = None
        self._known: Estimate | None = None
        self._known_outlook: Any = None
        self._newest: _Request | None = None
        self._later: dict[_Topic, Job] = {}
        self._settle = QTimer(self, singleShot=True, interval=SETTLE_MS)
        self._settle.timeout.connect(self.settle)
        self.lane = Lane("light", synchronous=synchronous, parent=self)
        self.lane.turned.connect(self._update_busy)
        self.lane.progressed.connect(self._on_progress)
        self.lane.done.connect(self._on_done)
        self.lane.failed.connect(self._on_failed)

    @property
    def busy(self) -> bool:
        """Whether an estimate is being computed or will be in a moment."""
        return self._busy

    def edit(self, plan: Plan, dragging: bool = False) -> None:
        """Follow an edit: a preview at once, the default quality when the hand stops."""
        before, self._plan = self._plan, plan
        if before is not None and same_light(before, plan) and self._go_on_with(before, plan):
            return
        self._drop_beside()
        self._edited = plan
        if self.lane.synchronous and not dragging:
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
        self._plan = plan
        self._drop_beside()
        self._settle.stop()
        self._edited = None
        self._submit(plan, options, lenient=False)

    def weigh(self, plan: Plan, lining: Lining) -> None:
        """Find out what a lining would bring on each surface; the newest question counts."""
        weighing = self._brought_by
        if weighing is not None:

            def job(_progress: Progress, cancelled: Cancelled) -> Weighed:
                rows = weighing(plan, lining, QUICK, cancelled=cancelled)
                return Weighed(plan, lining, rows)

            self._ask_beside(_Topic.LINING, job)

    def cancel(self) -> None:
        """Drop all work; the last answer stays."""
        self._drop_beside()
        self._settle.stop()
        self._edited = self._newest = None
        self.lane.drop(_Topic.LIGHT)

    def shutdown(self) -> None:
        """Stop the work and join the thread; to be called before Qt objects go."""
        self.cancel()
        self.lane.shutdown()

    # -- the same light -------------------------------------------------------------------

    def _go_on_with(self, before: Plan, plan: Plan) -> bool:
        """Serve a plan with the light of the one before; False where there is none."""
        if self._edited is not None:
            self._edited = plan
        if self._busy and self._newest is not None and self._newest.options.cells == self.cells:
            return True
        known = self._known
        if known is None or known.options.cells != self.cells or not same_light(known.plan, plan):
            return False
        self._known = of_plan(known, plan)
        self.estimated.emit(self._known)
        if not _alike(before, plan):
            self.lane.drop(_Topic.OUTLOOK)
            self._look_out(plan)
        elif self._known_outlook is not None:
            self._hand_out(self._known_outlook)
        return True

    def _hand_out(self, found: Any) -> None:
        """An outlook, as that of the plan as it stands where its light and doubts are the same."""
        from planner.estimate.outlook import Outlook, outlook_of_plan  # noqa: PLC0415 - heavy

        now = self._plan
        if isinstance(found, Outlook) and now is not None and _alike(found.plan, now):
            found = outlook_of_plan(found, now)
        self._known_outlook = found
        self.outlook_ready.emit(found)

    # -- the light ------------------------------------------------------------------------

    def _submit(self, plan: Plan, options: EstimateOptions, *, lenient: bool) -> None:
        request = self._newest = _Request(plan, options)
        running = self.lane.running
        preview = isinstance(running, _Request) and running.options.quality is Quality.PREVIEW

        def job(progress: Progress, cancelled: Cancelled) -> Estimate:
            evaluate = self._evaluate or self._load()
            try:
                return evaluate(
                    plan, options, cache=self._cache, progress=progress, cancelled=cancelled
                )
            except ValueError as error:
                raise ValueError(f"The light cannot be computed: {error}") from error

        self.lane.ask(
            request, job, topic=_Topic.LIGHT, what="The light", let_end=lenient and preview
        )

    def _load(self) -> Evaluate:
        from planner.estimate.evaluate import evaluate, shared_cache  # noqa: PLC0415 - heavy

        self._cache = shared_cache()
        self._evaluate = evaluate
        return evaluate

    @Slot(object, float)
    def _on_progress(self, about: object, fraction: float) -> None:
        if isinstance(about, _Request):
            self.progressed.emit(fraction)

    @Slot(object, object)
    def _on_done(self, about: object, result: object) -> None:
        if isinstance(about, _Request) and isinstance(result, Estimate):
            plan = about.plan
            if self._plan is not None and plan != self._plan and same_light(plan, self._plan):
                plan = self._plan
                result = of_plan(result, plan)
            self.estimated.emit(result)
            if about is self._newest and about.options.quality is not Quality.PREVIEW:
                self._known, self._known_outlook = result, None
                self._look_out(plan)
            self._go_on()
        elif about is _Topic.OUTLOOK and result is not None:
            self._hand_out(result)
        elif result is not None:
            self.weighed.emit(result)

    @Slot(object, str)
    def _on_failed(self, about: object, sentence: str) -> None:
        # What fails beside the light, or for a plan that has moved on, is in the log.
        if about is self._newest and about is not None:
            self.failed.emit(sentence)
            self._go_on()

    # -- beside the light -----------------------------------------------------------------

    def _look_out(self, plan: Plan) -> None:
        looking = self._outlook
        if looking is not None:

            def job(_progress: Progress, cancelled: Cancelled) -> Any:
                give_back()
                return looking(plan, cancelled=cancelled)

            self._ask_beside(_Topic.OUTLOOK, job)

    def _ask_beside(self, topic: _Topic, job: Job) -> None:
        """Ask now, or once nobody waits for light any more."""
        if self._busy:
            self._later[topic] = job
        else:
            self.lane.ask(topic, job, topic=topic, what=f"What comes beside the light ({topic})")

    def _go_on(self) -> None:
        if not self._busy:
            later, self._later = self._later, {}
            for topic, job in later.items():
                self._ask_beside(topic, job)

    def _drop_beside(self) -> None:
        self._later.clear()
        for topic in _BESIDE:
            self.lane.drop(topic)

    @Slot()
    def _update_busy(self) -> None:
        busy = self.lane.awaits(_Topic.LIGHT) or self._settle.isActive()
        if busy != self._busy:
            self._busy = busy
            self.busy_changed.emit(busy)


def keep_one_heap() -> None:
    """Let all threads take memory from one heap; to be called before the first lane starts.

    The GNU C library gives each thread a heap of its own, and what one lane has freed no other
    takes again: after some thousand edits that was as much as all that was in use.
    """
    _of_c_library("mallopt", _M_ARENA_MAX, 1)


def give_back() -> None:
    """Give memory that is free, but still held by the C library, back to the system."""
    _of_c_library("malloc_trim", 0)


_M_ARENA_MAX: Final = -8
"""Of malloc.h."""


def _of_c_library(name: str, *values: int) -> None:
    """Call what only the GNU C library has."""
    if sys.platform == "linux":
        try:
            getattr(ctypes.CDLL(None), name)(*values)
        except (OSError, AttributeError):
            return  # another C library


def _alike(one: Plan, other: Plan) -> bool:
    """Whether two plans have the same light on the canopy judged, as much in doubt."""
    return same_judged(one, other) and doubted(one) == doubted(other)


def _own_outlook(plan: Plan, **named: Any) -> Any:
    from planner.estimate.outlook import outlook  # noqa: PLC0415 - heavy

    return outlook(plan, **named)


def _own_brought_by(plan: Plan, lining: Lining, options: EstimateOptions, **named: Any) -> Any:
    from planner.estimate.sensitivity import brought_by  # noqa: PLC0415 - heavy

    return brought_by(plan, lining, options, **named)


# -- what linings are worth, shared by page and fields ---------------------------------

PATIENCE_MS = 120
"""A hand that only passes over a list of linings asks nothing."""


class Worth(QObject):
    """Keeps what was found out about the plan as it stands.

    Signals: ``wanted(plan, lining)`` when something must be computed, ``told`` when an
    answer came.
    """

    wanted = Signal(object, object)
    told = Signal()

    def __init__(self, document: Document, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._document = document
        self._answers: dict[str, Weighed] = {}
        self._asked: Lining | None = None
        self._patience = QTimer(self, singleShot=True, interval=PATIENCE_MS)
        self._patience.timeout.connect(self._ask)
        document.changed.connect(self._on_plan_changed)

    def consider(self, lining: Lining) -> None:
        """Find out what a lining would bring, unless that is known already."""
        self._asked = lining
        if self._known(lining) is None:
            self._patience.start()

    def take(self, answer: Weighed) -> None:
        """Keep an answer, if it is about the plan as it stands."""
        if same_judged(answer.plan, self._document.plan):
            self._answers[answer.lining.key] = answer
            self.told.emit()

    def brings(self, lining: Lining, place: Place) -> tuple[float, float] | None:
        """What a lining would bring on a surface to mean and lowest PPFD, None if unknown."""
        answer = self._known(lining)
        for gain, mean, minimum in answer.rows if answer is not None else ():
            if gain.place == place:
                return mean, minimum
        return None

    def _known(self, lining: Lining) -> Weighed | None:
        answer = self._answers.get(lining.key)
        return answer if answer is not None and answer.lining == lining else None

    def _ask(self) -> None:
        if self._asked is not None:
            self.wanted.emit(self._document.plan, self._asked)

    def _on_plan_changed(self, old: Plan, new: Plan) -> None:
        if not same_judged(old, new):
            self._answers.clear()
            self._patience.stop()
