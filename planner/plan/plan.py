"""The plan: everything the user decided, in one immutable value."""

from __future__ import annotations

from typing import Annotated, Final, Literal, Self

from pydantic import Field, model_validator

from planner.plan.costs import Costs
from planner.plan.fields import Key, Name, Text
from planner.plan.setup import Setup
from planner.plan.stage import MAX_STAGES, GrowthStage
from planner.plan.survey import MAX_SURVEYS, Survey, survey_problem
from planner.plan.target import Target
from planner.plan.variant import MAX_VARIANTS, Variant, variants_problem

PLAN_FORMAT: Final = 2


class Plan(Setup):
    """A setup with all that is said, wanted and measured around it: one file."""

    format: Literal[2] = Field(default=PLAN_FORMAT, description="Version of this file format.")
    name: Name = "Untitled plan"
    note: Text = ""
    target: Target | None = None
    surveys: Annotated[tuple[Survey, ...], Field(max_length=MAX_SURVEYS)] = ()
    variants: Annotated[tuple[Variant, ...], Field(max_length=MAX_VARIANTS)] = ()
    baseline: Key | None = Field(
        default=None,
        description="Key of the variant the others are measured against; null: the plan itself.",
    )
    schedule: Annotated[tuple[GrowthStage, ...], Field(max_length=MAX_STAGES)] = ()
    costs: Costs = Costs()

    @model_validator(mode="after")
    def _check(self) -> Self:
        problem = survey_problem(self.surveys) or variants_problem(self.variants)
        if problem is None and self.baseline not in {None, *(v.key for v in self.variants)}:
            problem = f"the baseline is '{self.baseline}', but no variant has that key."
        if problem:
            raise ValueError(problem)
        return self

    def variant(self, key: str) -> Variant:
        """The variant of a key; raises ``KeyError`` when there is none."""
        for variant in self.variants:
            if variant.key == key:
                return variant
        raise KeyError(f"the plan has no variant of the key '{key}'.")

    def with_setup(self, setup: Setup) -> Plan:
        """The plan with all that is built and decided by the light as in a setup."""
        # Both were checked when they were made, and no check spans the two.
        return self.model_copy(update={name: getattr(setup, name) for name in Setup.model_fields})
