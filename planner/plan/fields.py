"""The kinds of number a plan holds, each with its unit and bounds.

The unit goes into the published JSON Schema; the bounds are what a small grow space can
be, with room to spare, so that a slip of the hand (60 m for 60 cm) is caught.
"""

from __future__ import annotations

from typing import Annotated

from pydantic import BaseModel, ConfigDict, Field


class Value(BaseModel):
    """An immutable part of a plan: unknown fields, NaN and infinity are refused."""

    model_config = ConfigDict(frozen=True, extra="forbid", allow_inf_nan=False)


MAX_EXTENT_M = 10.0
MAX_CORNERS = 40
MAX_LININGS = 500
MAX_LAMPS = 24
MAX_OBSTACLES = 24
MAX_BANDS = 6

Coordinate = Annotated[
    float, Field(ge=-MAX_EXTENT_M, le=MAX_EXTENT_M, json_schema_extra={"unit": "m"})
]
Extent = Annotated[float, Field(ge=0.01, le=2 * MAX_EXTENT_M, json_schema_extra={"unit": "m"})]
SpaceHeight = Annotated[float, Field(ge=0.1, le=5.0, json_schema_extra={"unit": "m"})]
Height = Annotated[float, Field(ge=0.0, le=5.0, json_schema_extra={"unit": "m"})]
HangingHeight = Annotated[float, Field(ge=0.01, le=5.0, json_schema_extra={"unit": "m"})]
BodyLength = Annotated[float, Field(ge=0.005, le=3.0, json_schema_extra={"unit": "m"})]
AngleDeg = Annotated[float, Field(ge=-360.0, le=360.0, json_schema_extra={"unit": "deg"})]
BeamAngle = Annotated[float, Field(ge=10.0, le=179.0, json_schema_extra={"unit": "deg"})]
Percent = Annotated[float, Field(ge=0.0, le=100.0, json_schema_extra={"unit": "%"})]
PhotonFlux = Annotated[float, Field(gt=0.0, le=20000.0, json_schema_extra={"unit": "µmol/s"})]
Watts = Annotated[float, Field(gt=0.0, le=10000.0, json_schema_extra={"unit": "W"})]
Fraction = Annotated[float, Field(ge=0.0, le=1.0, json_schema_extra={"unit": "1"})]
Hours = Annotated[float, Field(ge=0.0, le=24.0, json_schema_extra={"unit": "h"})]
Ppfd = Annotated[float, Field(ge=0.0, le=5000.0, json_schema_extra={"unit": "µmol/m²/s"})]
Dli = Annotated[float, Field(ge=0.0, le=100.0, json_schema_extra={"unit": "mol/m²/d"})]
Name = Annotated[str, Field(min_length=1, max_length=120)]
Key = Annotated[str, Field(min_length=1, max_length=64, pattern=r"^[a-z0-9][a-z0-9_-]*$")]
Text = Annotated[str, Field(max_length=4000)]
