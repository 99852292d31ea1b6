"""Variants: named sets of differences from the plan they stand in.

A variant holds only what differs; everything else follows the plan when that is edited.
Changes are values: ``variant_edits`` applies them and says them in words. The linings and
lamps a change brings along are held in it whole, so that a plan with its variants means
the same on another machine. Where the plan itself holds a lining of the same key, the
plan's own copy counts: it may carry a value the user has measured.
"""

from __future__ import annotations

from typing import Annotated, Final, Literal

from pydantic import Field

from planner.plan.fields import (
    Coordinate,
    Fraction,
    HangingHeight,
    Height,
    Hours,
    Name,
    Percent,
    SpaceHeight,
    Text,
    Value,
)
from planner.plan.lamp import LampModel
from planner.plan.lining import Lining

MAX_VARIANTS: Final = 60
MAX_CHANGES: Final = 60

Number = Annotated[int, Field(ge=0, description="Counted from 0.")]
OneLamp = Annotated[int | None, Field(ge=0, description="Which lamp, or null for all of them.")]


class LineAllWalls(Value):
    """Another lining on every wall, over its whole height."""

    kind: Literal["line-all-walls"] = "line-all-walls"
    lining: Lining


class LineWall(Value):
    """Another lining on one wall, or on one band of it."""

    kind: Literal["line-wall"] = "line-wall"
    wall: Number
    band: Annotated[int | None, Field(ge=0, description="From the floor up; null: all.")] = None
    lining: Lining


class LineCeiling(Value):
    """Another lining on the ceiling."""

    kind: Literal["line-ceiling"] = "line-ceiling"
    lining: Lining


class LineFloor(Value):
    """Another lining on the floor."""

    kind: Literal["line-floor"] = "line-floor"
    lining: Lining


class SetLampModel(Value):
    """Another kind of lamp."""

    kind: Literal["lamp-model"] = "lamp-model"
    lamp: OneLamp = None
    model: LampModel


class SetHangingHeight(Value):
    """Another hanging height."""

    kind: Literal["hanging-height"] = "hanging-height"
    lamp: OneLamp = None
    hanging_height: HangingHeight


class SetOutput(Value):
    """Another output."""

    kind: Literal["output"] = "output"
    lamp: OneLamp = None
    output_percent: Percent


class SetLampPlace(Value):
    """Another place of one lamp on the plan view."""

    kind: Literal["lamp-place"] = "lamp-place"
    lamp: Number
    x: Coordinate
    y: Coordinate


class SetSize(Value):
    """Another size of the footprint, stretched from its lower left corner."""

    kind: Literal["size"] = "size"
    width: Annotated[float, Field(ge=0.05, le=20.0, json_schema_extra={"unit": "m"})]
    depth: Annotated[float, Field(ge=0.05, le=20.0, json_schema_extra={"unit": "m"})]


class SetSpaceHeight(Value):
    """Another inside height."""

    kind: Literal["space-height"] = "space-height"
    height: SpaceHeight


class SetCanopyHeight(Value):
    """Another height of the canopy; the lamps stay where they hang."""

    kind: Literal["canopy-height"] = "canopy-height"
    height: Height


class SetCanopyReflectance(Value):
    """Another reflectance of a closed canopy."""

    kind: Literal["canopy-reflectance"] = "canopy-reflectance"
    reflectance: Fraction


class SetPhotoperiod(Value):
    """Another number of lit hours a day."""

    kind: Literal["photoperiod"] = "photoperiod"
    photoperiod_hours: Hours


class SetDoor(Value):
    """The door open or shut."""

    kind: Literal["door"] = "door"
    door_open: bool


Change = Annotated[
    LineAllWalls
    | LineWall
    | LineCeiling
    | LineFloor
    | SetLampModel
    | SetHangingHeight
    | SetOutput
    | SetLampPlace
    | SetSize
    | SetSpaceHeight
    | SetCanopyHeight
    | SetCanopyReflectance
    | SetPhotoperiod
    | SetDoor,
    Field(discriminator="kind"),
]


class Variant(Value):
    """A named set of differences from the plan, applied in order."""

    name: Name
    note: Text = ""
    changes: Annotated[tuple[Change, ...], Field(max_length=MAX_CHANGES)] = ()


def variants_problem(variants: tuple[Variant, ...]) -> str | None:
    """Say in words why these variants cannot stand together, or None when they can."""
    names = [variant.name for variant in variants]
    for name in names:
        if names.count(name) > 1:
            return f"two variants are called '{name}'; give each its own name."
    return None
