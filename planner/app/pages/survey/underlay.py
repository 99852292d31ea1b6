"""The estimate below a survey: the light of the plan under the conditions it was read in."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np
import numpy.typing as npt

from planner.app.jobs import Cancelled, Job, Progress
from planner.app.pages.survey.board_edits import light_only
from planner.estimate.result import Estimate, EstimateOptions
from planner.plan.plan import Plan
from planner.plan.survey import Survey
from planner.plan.survey_edits import as_surveyed, with_parts
from planner.survey.overlay import Residuals, residuals

if TYPE_CHECKING:
    from planner.estimate.evaluate import Cache

FloatArray = npt.NDArray[np.float64]
Expecting = Callable[..., FloatArray]
Evaluating = Callable[..., Estimate]


@dataclass(frozen=True)
class Question:
    """Whose light is asked for: a plan and a survey without what light does not depend on."""

    plan: Plan
    survey: Survey
    cells: int

    @classmethod
    def of(cls, plan: Plan, survey: Survey, cells: int) -> Question:
        """The question a survey puts to a plan."""
        bare = with_parts(
            survey, name="Survey", date=None, note="", warm_up_minutes=None, readings=(), grid=None
        )
        return cls(light_only(plan), bare, cells)


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
        from planner.estimate.evaluate import Cache, evaluate  # noqa: PLC0415 - heavy
        from planner.estimate.expected import expected_readings  # noqa: PLC0415 - heavy

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
