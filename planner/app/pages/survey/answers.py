"""What the page knows of its surveys besides the plan, found aside: summaries and estimates.

The estimate below a survey is the light of the plan under the conditions it was read in.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Final

import numpy as np
import numpy.typing as npt
from PySide6.QtCore import QObject, Signal, Slot

from planner.app.jobs import Cancelled, Job, Lane, Progress
from planner.estimate.result import Estimate, EstimateOptions
from planner.plan.lit import Lit, lit
from planner.plan.plan import Plan
from planner.plan.survey import Survey
from planner.plan.survey_edits import as_surveyed, with_parts
from planner.survey.overlay import Residuals, residuals
from planner.survey.statistics import SurveySummary, summarise

if TYPE_CHECKING:
    from planner.estimate.evaluate import Cache


FloatArray = npt.NDArray[np.float64]
Expecting = Callable[..., FloatArray]
Evaluating = Callable[..., Estimate]


@dataclass(frozen=True)
class Question:
    """Whose light is asked for: equal where plans of the same light meet the same conditions."""

    light: Lit
    survey: Survey
    cells: int
    plan: Plan = field(compare=False)

    @classmethod
    def of(cls, plan: Plan, survey: Survey, cells: int) -> Question:
        """The question a survey puts to a plan."""
        bare = with_parts(
            survey, name="Survey", date=None, note="", warm_up_minutes=None, readings=(), grid=None
        )
        return cls(lit(plan), bare, cells, plan)


@dataclass(frozen=True, eq=False)
class Underlay:
    """The answer: the map under the survey's conditions, and what its meter should read.

    ``expected`` (points,) in µmol m⁻² s⁻¹, at every hole.
    """

    question: Question
    estimate: Estimate
    expected: FloatArray

    def residuals(self, survey: Survey) -> Residuals | None:
        """The survey's readings against this estimate; None without readings."""
        return residuals(survey, self.expected)


class UnderlayMaker:
    """Makes underlays, one after another, with one cache; to be run in one thread."""

    def __init__(
        self, evaluating: Evaluating | None = None, expecting: Expecting | None = None
    ) -> None:
        self._evaluating, self._expecting = evaluating, expecting
        self._cache: Cache | None = None

    def job(self, question: Question) -> Job:
        """The work that answers a question."""
        return lambda progress, cancelled: self._answer(question, progress, cancelled)

    def _answer(self, question: Question, progress: Progress, cancelled: Cancelled) -> Underlay:
        from planner.estimate.calibrate_model import expected_readings  # noqa: PLC0415 - heavy
        from planner.estimate.evaluate import Cache, evaluate  # noqa: PLC0415 - heavy

        self._cache = self._cache or Cache()
        options = EstimateOptions(cells=(question.cells, question.cells))
        plan = as_surveyed(question.plan, question.survey)
        estimate = (self._evaluating or evaluate)(
            plan, options, cache=self._cache, progress=progress, cancelled=cancelled
        )
        expected = (self._expecting or expected_readings)(
            question.plan, question.survey, options, cache=self._cache, cancelled=cancelled
        )
        return Underlay(question, estimate, expected)


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
