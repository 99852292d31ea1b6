"""What the page knows of its surveys besides the plan: summaries and estimates, found aside."""

from __future__ import annotations

import logging
from typing import Final

from PySide6.QtCore import QObject, Signal, Slot

from planner.app.fields.wording import explain
from planner.app.pages.survey.underlay import Question, Underlay, UnderlayMaker
from planner.app.pages.survey.work import Cancelled, Progress, Work
from planner.plan.plan import Plan
from planner.plan.survey import Survey
from planner.survey.statistics import SurveySummary, summarise

AT_ONCE: Final = 200
"""Up to so many holes a summary takes no time worth a thread."""
_KEPT: Final = 6
_log = logging.getLogger(__name__)


class Answers(QObject):
    """Signals: ``ready`` when something asked for has come, ``failed(str)`` with a sentence,
    ``busy_changed(bool)`` while an estimate is made.
    """  # noqa: D205

    ready = Signal()
    failed = Signal(str)
    busy_changed = Signal(bool)

    def __init__(self, maker: UnderlayMaker | None = None, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._maker = maker or UnderlayMaker()
        self._light = Work("survey-light", self)
        self._light.done.connect(self._on_light)
        self._light.failed.connect(self._on_failed)
        self._light.busy_changed.connect(self.busy_changed)
        self._sums = Work("survey-summary", self)
        self._sums.done.connect(self._on_summary)
        self._asked: Question | None = None
        self._failed: Question | None = None
        self._underlays: list[Underlay] = []
        self._summaries: list[tuple[Survey, SurveySummary | None]] = []
        self._summing: Survey | None = None

    @property
    def busy(self) -> bool:
        """Whether an estimate is being made."""
        return self._light.busy

    def summary(self, survey: Survey) -> SurveySummary | None:
        """What a survey says; of a large one the last that is known until the new one comes."""
        for known, summary in self._summaries:
            if known is survey or known == survey:
                return summary
        if len(survey.points) <= AT_ONCE:
            return self._keep(survey, summarise(survey))
        if self._summing is not survey:
            self._summing = survey

            def work(_cancelled: Cancelled, _progress: Progress) -> object:
                return survey, summarise(survey)

            self._sums.start(work)
        older = [s for known, s in reversed(self._summaries) if known.key == survey.key]
        return older[0] if older else None

    def underlay(self, plan: Plan, survey: Survey, cells: int) -> Underlay | None:
        """The estimate below a survey; asked for when it is not known, which takes a while."""
        question = Question.of(plan, survey, cells)
        for one in self._underlays:
            if one.question == question:
                if self._asked is not None:
                    self._asked = None
                    self._light.cancel()
                return one
        if question != self._asked and question != self._failed:  # noqa: PLR1714 - not hashable
            self._asked, self._failed = question, None
            self._light.start(self._maker.job(question))
            # Without threads the answer is there already.
            return next((one for one in self._underlays if one.question == question), None)
        return None

    def last_underlay(self, survey: Survey) -> Underlay | None:
        """The newest estimate below a survey of this key, though the plan has moved on."""
        return next((u for u in self._underlays if u.question.survey.key == survey.key), None)

    def shutdown(self) -> None:
        """Stop all work; to be called before Qt objects go."""
        self._light.shutdown()
        self._sums.shutdown()

    def _keep(self, survey: Survey, summary: SurveySummary | None) -> SurveySummary | None:
        self._summaries = [*self._summaries, (survey, summary)][-_KEPT:]
        return summary

    @Slot(object)
    def _on_summary(self, found: tuple[Survey, SurveySummary | None]) -> None:
        self._summing = None
        self._keep(*found)
        self.ready.emit()

    @Slot(object)
    def _on_light(self, underlay: Underlay) -> None:
        self._asked = None
        self._underlays = [underlay, *self._underlays][:_KEPT]
        self.ready.emit()

    @Slot(object)
    def _on_failed(self, error: Exception) -> None:
        self._failed, self._asked = self._asked, None
        self.failed.emit(failure_sentence(error, "The light of this survey"))


def failure_sentence(error: Exception, what: str) -> str:
    """What a failure of the core says to the user."""
    if isinstance(error, ValueError):
        return explain(error)
    _log.error("%s failed", what, exc_info=error)
    return (
        f"{what} could not be computed because of a fault in the program "
        f"({type(error).__name__}: {error})."
    )
