"""The wording of cautions and of general safety, read from the catalogue's data."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from planner.catalogue.resources import resource_path
from planner.plan.fields import Key, Name, Text, Value
from planner.plan.lining import Caution


class CautionText(Value):
    """What a caution is called and what it asks of the reader."""

    title: Name
    text: Text


class SafetyNote(Value):
    """A general word on safety that holds whatever the plan."""

    key: Key
    title: Name
    text: Text


class CautionBook(Value):
    """All wording: one text for each caution a lining may carry, and the general notes."""

    format: Literal[1]
    about: Text
    cautions: dict[Caution, CautionText]
    safety: tuple[SafetyNote, ...] = Field(min_length=1)

    def text(self, caution: Caution) -> CautionText:
        """The wording of one caution."""
        return self.cautions[caution]


def load_cautions() -> CautionBook:
    """Read the wording that ships with the program."""
    path = resource_path("catalogue/cautions.json")
    return CautionBook.model_validate_json(path.read_bytes())
