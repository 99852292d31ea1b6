"""What is asked beside the drawing while it is worked on, and kept while it tells of the plan.

One lane answers all of it: what each height would give, what comes by way of a wall, how a
wanted level is reached. It shares nothing with the estimator, whose light is never kept waiting.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING, Any

from PySide6.QtCore import QObject, Signal

from planner.app.display import DisplayState
from planner.app.jobs import Cancelled, Lane, Progress
from planner.estimate.result import EstimateOptions, Quality
from planner.plan.plan import Plan

if TYPE_CHECKING:
    from planner.estimate.evaluate import Cache
    from planner.estimate.ladder import Ladder

CACHE_BYTES = 24_000_000


class Asked(QObject):
    """Signals: ``climbed(Ladder)`` when a ladder asked for is there."""

    climbed = Signal(object)

    def __init__(self, parent: QObject | None = None, *, synchronous: bool | None = None) -> None:
        super().__init__(parent)
        self.lane = Lane("beside the drawing", synchronous=synchronous, parent=self)
        self.lane.done.connect(self._on_done)
        self._cache: Cache | None = None
        self._ladder: Ladder | None = None
        self._climbed: object = None

    def _kept(self) -> Cache:
        """Pieces of former answers; only ever touched on the lane."""
        if self._cache is None:
            from planner.estimate.evaluate import Cache  # noqa: PLC0415 - heavy

            self._cache = Cache(limit=CACHE_BYTES)
        return self._cache

    def _ask(self, topic: str, job: Callable[[Progress, Cancelled], Any]) -> None:
        self.lane.ask(topic, job, topic=topic, what=f"What was asked beside the drawing ({topic})")

    def _on_done(self, topic: object, answer: Any) -> None:
        if topic == "ladder":
            self._ladder = answer
            self.climbed.emit(answer)

    # -- the ladder of heights ----------------------------------------------------------

    def climb(self, plan: Plan, lamps: Sequence[int], display: DisplayState) -> None:
        """Tell what each height of these lamps would give; ``climbed`` carries the answer.

        On the cells of the map shown, so that its figures are those of the strip.
        """
        known, raised, cells = self._ladder, tuple(lamps), (display.cells, display.cells)
        if self._climbed == (raised, display.unit, cells) and known and known.fits(plan):
            self.climbed.emit(known)
            return

        def job(progress: Progress, cancelled: Cancelled) -> Ladder:
            from planner.estimate.ladder import heights_between, ladder  # noqa: PLC0415 - heavy

            return ladder(
                plan,
                raised,
                heights_between(plan, raised, display.unit),
                EstimateOptions(cells=cells, quality=Quality.PREVIEW),
                cache=self._kept(),
                progress=progress,
                cancelled=cancelled,
            )

        self._climbed = (raised, display.unit, cells)
        self._ask("ladder", job)
