"""Growth stages: what the same space must give as the plants grow."""

from __future__ import annotations

from typing import Annotated, Final

from pydantic import Field

from planner.plan.fields import Height, Hours, Name, Value
from planner.plan.target import Target

MAX_STAGES: Final = 20


class GrowthStage(Value):
    """One stage of a growth schedule: how tall, how much light, for how long."""

    name: Name
    canopy_height: Height = Field(description="Height of the canopy above the floor.")
    target: Target
    photoperiod_hours: Hours = 16.0
    weeks: Annotated[float, Field(gt=0.0, le=104.0, json_schema_extra={"unit": "weeks"})] = 2.0
