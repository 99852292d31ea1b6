"""Crops and their growth stages: a band of light to begin with, never a pass or a fail."""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated, Literal, Self

from pydantic import Field, model_validator

from planner.catalogue.resources import resource_path
from planner.plan.fields import Hours, Key, Name, Text, Value
from planner.plan.target import Target


class Basis(StrEnum):
    """How well a band is founded."""

    PUBLISHED = "published"
    QUOTED = "quoted"
    MEMORY = "memory"


class Stage(Value):
    """A growth stage: the wanted band and the hours of light it is usually given."""

    key: Key
    name: Name
    target: Target
    basis: Basis = Field(description="Published, quoted second-hand, or typical from memory.")
    hours_low: Hours
    hours_high: Hours
    hours_usual: Hours = Field(description="The photoperiod to begin with.")
    note: Text = ""

    @model_validator(mode="after")
    def _check(self) -> Self:
        if not self.hours_low <= self.hours_usual <= self.hours_high:
            raise ValueError(
                f"the usual photoperiod of '{self.name}' ({self.hours_usual:g} h) must lie between "
                f"{self.hours_low:g} h and {self.hours_high:g} h."
            )
        return self


class Crop(Value):
    """A crop, with its stages in the order they are lived through."""

    key: Key
    name: Name
    stages: Annotated[tuple[Stage, ...], Field(min_length=1)]
    note: Text = ""

    @model_validator(mode="after")
    def _check(self) -> Self:
        keys = [stage.key for stage in self.stages]
        if len(set(keys)) != len(keys):
            raise ValueError(f"two stages of '{self.name}' carry the same key.")
        return self

    def stage(self, key: str) -> Stage:
        """A stage by its key; raises ``KeyError`` when the crop has none of that key."""
        for stage in self.stages:
            if stage.key == key:
                return stage
        raise KeyError(f"'{self.name}' has no stage '{key}'.")

    def target(self, stage_key: str) -> Target:
        """The target a plan takes over: the stage's band, labelled with crop and stage."""
        stage = self.stage(stage_key)
        return stage.target.model_copy(update={"crop": f"{self.name}, {stage.name}"[:120]})


class CropBook(Value):
    """All crops, and what their bands are and are not."""

    format: Literal[1]
    about: Text
    crops: tuple[Crop, ...]


def load_crops() -> CropBook:
    """Read the crops that ship with the program."""
    return CropBook.model_validate_json(resource_path("catalogue/crops.json").read_bytes())
