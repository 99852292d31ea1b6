"""The target: the band of light that is wanted; and growth stages, each with its own."""

from __future__ import annotations

from typing import Annotated, Final, Literal, Self

from pydantic import Field, model_validator

from planner.plan.quantity import Dli, Height, Hours, Name, Ppfd, Text, Value
from planner.units import MICROMOLES_PER_MOLE, SECONDS_PER_HOUR


class _Band(Value):
    """A band of light, from ``low`` to ``high``; each kind names its unit."""

    kind: str
    low: float
    high: float
    crop: Annotated[str, Field(max_length=120)] = ""
    source: Text = ""

    @model_validator(mode="after")
    def _check(self) -> Self:
        if self.high <= self.low:
            raise ValueError(
                f"the target band must rise: its upper end {self.high:g} is not above {self.low:g}."
            )
        return self


class PpfdTarget(_Band):
    """A band of PPFD in µmol m⁻² s⁻¹."""

    kind: Literal["ppfd"] = "ppfd"
    low: Ppfd
    high: Ppfd

    def ppfd_band(self, photoperiod_hours: float) -> tuple[float, float]:  # noqa: ARG002
        """The band as PPFD; the photoperiod does not enter."""
        return self.low, self.high


class DliTarget(_Band):
    """A band of daily light integral in mol m⁻² d⁻¹."""

    kind: Literal["dli"] = "dli"
    low: Dli
    high: Dli

    def ppfd_band(self, photoperiod_hours: float) -> tuple[float, float] | None:
        """The PPFD that gives this DLI in so many hours, or None without any light."""
        if photoperiod_hours <= 0:
            return None
        factor = MICROMOLES_PER_MOLE / (SECONDS_PER_HOUR * photoperiod_hours)
        return self.low * factor, self.high * factor


Target = Annotated[PpfdTarget | DliTarget, Field(discriminator="kind")]


# -- growth stages ---------------------------------------------------------------------

MAX_STAGES: Final = 20


class GrowthStage(Value):
    """One stage of a growth schedule: how tall, how much light, for how long."""

    name: Name
    canopy_height: Height = Field(description="Height of the canopy above the floor.")
    target: Target
    photoperiod_hours: Hours = 16.0
    weeks: Annotated[float, Field(gt=0.0, le=104.0, json_schema_extra={"unit": "weeks"})] = 2.0
