"""The canopy: the plane the light is wanted on."""

from __future__ import annotations

from pydantic import Field

from planner.plan.fields import Fraction, Height, Value


class Canopy(Value):
    """A horizontal plane over the whole footprint.

    Closed: leaves (or a survey board) fill the plane; it is opaque, reflects diffusely
    and nothing below it matters. Open: the plane is only where the sensor is held, and
    light passes through it to the floor.
    """

    height: Height = Field(default=0.2, description="Height of the plane above the floor.")
    closed: bool = True
    reflectance: Fraction = Field(
        default=0.06, description="Diffuse reflectance of a closed canopy, 400-700 nm."
    )
