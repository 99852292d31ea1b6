"""The glossary for developers names every field of the plan, and no field that is gone."""

from __future__ import annotations

import re
import typing
from pathlib import Path

import pydantic

from planner.plan.plan import Plan

DEVELOPERS = Path(__file__).parents[2] / "DEVELOPERS.md"


def fields_of(kind: object, seen: set[type]) -> set[str]:
    """Names of all fields reachable from a model or an annotation."""
    names: set[str] = set()
    for part in typing.get_args(kind):
        names |= fields_of(part, seen)
    if isinstance(kind, type) and issubclass(kind, pydantic.BaseModel) and kind not in seen:
        seen.add(kind)
        for name, field in kind.model_fields.items():
            names |= {name} | fields_of(field.annotation, seen)
    return names


def glossary_fields() -> set[str]:
    text = DEVELOPERS.read_text("utf-8").split("## Glossary")[1].split("\n## ")[0]
    rows = [line.split("|") for line in text.splitlines() if line.startswith("|")]
    return {name for row in rows[2:] for name in re.findall(r"`(\w+)`", row[2])}


def test_the_glossary_and_the_models_name_the_same_fields() -> None:
    assert glossary_fields() == fields_of(Plan, set())
