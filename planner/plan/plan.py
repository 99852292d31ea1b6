"""The plan: everything the user decided, in one immutable value."""

from __future__ import annotations

from typing import Annotated, Final, Literal, Self

from pydantic import Field, model_validator

from planner.plan.costs import Costs
from planner.plan.fields import Name, Text
from planner.plan.setup import Setup
from planner.plan.stage import MAX_STAGES, GrowthStage
from planner.plan.survey import MAX_SURVEYS, Survey, survey_problem
from planner.plan.target import Target
from planner.plan.variant import MAX_VARIANTS, Variant, variants_problem

PLAN_FORMAT: Final = 1


class Plan(Setup):
    """A setup with all that is said, wanted and measured around it: one file."""

    format: Literal[1] = Field(default=PLAN_FORMAT, description="Version of this file format.")
    name: Name = "Untitled plan"
    note: Text = ""
    target: Target | None = None
    surveys: Annotated[tuple[Survey, ...], Field(max_length=MAX_SURVEYS)] = ()
    variants: Annotated[tuple[Variant, ...], Field(max_length=MAX_VARIANTS)] = ()
    schedule: Annotated[tuple[GrowthStage, ...], Field(max_length=MAX_STAGES)] = ()
    costs: Costs = Costs()

    @model_validator(mode="after")
    def _check(self) -> Self:
        problem = survey_problem(self.surveys) or variants_problem(self.variants)
        if problem:
            raise ValueError(problem)
        return self
