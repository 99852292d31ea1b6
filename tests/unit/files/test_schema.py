"""The published JSON Schema says what the program reads."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import jsonschema
import pytest

from planner.command_line import schema_text
from planner.files.store import plan_to_bytes
from planner.plan.plan import PLAN_FORMAT, Plan
from tests.unit.files.valid_text import GONE, VALID, spoilt

PUBLISHED = Path(__file__).parents[3] / f"resources/schema/plan-{PLAN_FORMAT}.schema.json"


@pytest.fixture(scope="module")
def schema() -> dict[str, Any]:
    loaded: dict[str, Any] = json.loads(PUBLISHED.read_text(encoding="utf-8"))
    return loaded


def test_the_published_schema_is_up_to_date() -> None:
    assert PUBLISHED.read_text(encoding="utf-8") == schema_text(), (
        f"write it anew: python -m planner schema --out {PUBLISHED}"
    )


def test_it_is_a_schema(schema: dict[str, Any]) -> None:
    jsonschema.Draft202012Validator.check_schema(schema)
    assert schema["$schema"].endswith("2020-12/schema")


def test_it_accepts_what_is_saved(schema: dict[str, Any]) -> None:
    jsonschema.validate(VALID, schema)
    jsonschema.validate(json.loads(plan_to_bytes(Plan.model_validate(VALID))), schema)


@pytest.mark.parametrize(
    "change",
    [
        ("format", GONE), ("format", 1), ("space.height", 0), ("colour", "red"),
        ("lamps.0.hanging_height", 0), ("lamps.0.model.body.kind", "disc"), ("floor", "A b"),
        ("space.footprint.0", [1]), ("target.kind", "lux"), ("name", ""),
    ],
)  # fmt: skip
def test_it_refuses_what_the_program_refuses(schema: dict[str, Any], change: Any) -> None:
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate(json.loads(spoilt(change)), schema)


def test_numbers_carry_their_unit(schema: dict[str, Any]) -> None:
    assert schema["$defs"]["Lamp"]["properties"]["hanging_height"]["unit"] == "m"
    assert schema["$defs"]["LampModel"]["properties"]["ppf"]["unit"] == "µmol s⁻¹"
