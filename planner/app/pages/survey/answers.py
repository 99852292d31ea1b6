"""What the page knows of its surveys besides the plan: summaries and estimates, found aside."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QObject, Signal, Slot

from planner.app.jobs import Lane
from planner.app.pages.survey.underlay import Question, Underlay, UnderlayMaker
from planner.plan.plan import Plan
from planner.plan.survey import Survey
from planner.survey.statistics import SurveySummary, summarise

AT_ONCE: Final = 200
"""Up to so many holes a summary takes no time worth a thread."""
_KEPT: Final = 6


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
        self._light = Lane("survey-light", parent=self)
        self._light.done.connect(self._on_light)
        self._light.failed.connect(self._on_failed)
        self._light.busy_changed.connect(self.busy_changed)
        self._sums = Lane("survey-summary", parent=self)
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

            self._sums.ask(survey, lambda _progress, _cancelled: summarise(survey))
        older = [s for known, s in reversed(self._summaries) if known.key == survey.key]
        return older[0] if older else None

    def underlay(self, plan: Plan, survey: Survey, cells: int) -> Underlay | None:
        """The estimate below a survey; asked for when it is not known, which takes a while."""
        question = Question.of(plan, survey, cells)
        for one in self._underlays:
            if one.question == question:
                if self._asked is not None:
                    self._asked = None
                    self._light.drop()
                return one
        if question != self._asked and question != self._failed:  # noqa: PLR1714 - not hashable
            self._asked, self._failed = question, None
            self._light.ask(question, self._maker.job(question), what="The light of this survey")
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

    @Slot(object, object)
    def _on_summary(self, survey: Survey, summary: SurveySummary | None) -> None:
        self._summing = None
        self._keep(survey, summary)
        self.ready.emit()

    @Slot(object, object)
    def _on_light(self, _question: Question, underlay: Underlay) -> None:
        self._asked = None
        self._underlays = [underlay, *self._underlays][:_KEPT]
        self.ready.emit()

    @Slot(object, str)
    def _on_failed(self, question: Question, sentence: str) -> None:
        self._failed, self._asked = question, None
        self.failed.emit(sentence)
