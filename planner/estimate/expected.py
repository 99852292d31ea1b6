"""What the meter of a survey should read by the plan: for laying readings over an estimate."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np

from planner.estimate.calibrate_model import Run, SurveyModel
from planner.estimate.evaluate import Cache
from planner.estimate.result import EstimateOptions, FloatArray
from planner.plan.plan import Plan
from planner.plan.survey import Reading, Survey
from planner.plan.survey_edits import with_parts


def expected_readings(
    plan: Plan,
    survey: Survey,
    options: EstimateOptions | None = None,
    *,
    cache: Cache | None = None,
    cancelled: Callable[[], bool] | None = None,
) -> FloatArray:
    """PPFD a meter of unit gain should read at every point of a survey, (points,).

    Under the survey's conditions, with the meter's directional response. For an ideal
    meter this is the estimate of ``as_surveyed(plan, survey)`` at the holes.

    Raises
    ------
    ValueError
        If the survey's conditions do not fit the plan.
    planner.estimate.evaluate.Cancelled
        If ``cancelled`` said so.
    """
    options = options or EstimateOptions()
    every = tuple(Reading(hole=k, value=1.0) for k in range(1, len(survey.points) + 1))
    model = SurveyModel(with_parts(survey, readings=every), plan, options, cache or Cache())
    run = Run(options.quality, None, cancelled)
    total = np.zeros(len(survey.points))
    for group in model.groups():
        total += model.light(group, {}, run)
    return total
