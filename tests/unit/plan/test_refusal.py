"""What is wrong with a plan, said with its place, unit and reason."""

from __future__ import annotations

from typing import Any

import pytest
from pydantic import ValidationError

from planner.plan.edits import change_lamp, with_space
from planner.plan.plan import Plan
from planner.plan.refusal import known_as, place_in_words, refusals
from planner.units import LengthUnit
from tests.unit.files.valid_text import VALID


@pytest.fixture
def plan() -> Plan:
    return Plan.model_validate(VALID)


def said(error: ValidationError, unit: LengthUnit = LengthUnit.CM) -> list[str]:
    return refusals(error, unit)


def test_an_edit_of_one_lamp_is_explained_without_its_number(plan: Plan) -> None:
    with pytest.raises(ValidationError) as caught:
        change_lamp(plan, 1, hanging_height=0.0)
    assert said(caught.value) == [
        "hanging height: must be at least 1 cm, not 0 cm.",
    ]


def test_lengths_come_in_the_unit_asked(plan: Plan) -> None:
    with pytest.raises(ValidationError) as caught:
        with_space(plan, height=5.08)
    assert said(caught.value) == ["height: must be at most 500 cm, not 508 cm."]
    assert said(caught.value, LengthUnit.INCH) == ["height: must be at most 196.85 in, not 200 in."]


def test_a_sentence_of_the_model_stands_as_it_is(plan: Plan) -> None:
    with pytest.raises(ValidationError) as caught:
        change_lamp(plan, 0, x=2.0)
    assert said(caught.value) == [
        "lamp 1 ('Invented bar') hangs outside the space at x = 200 cm, y = 20 cm; "
        "move it inside the footprint."
    ]


def test_several_problems_are_several_sentences(plan: Plan) -> None:
    with pytest.raises(ValidationError) as caught:
        change_lamp(plan, 0, output_percent=101, rotation_deg=400)
    assert said(caught.value) == [
        "rotation: must be at most 360°, not 400°.",
        "output: must be at most 100 %, not 101 %.",
    ]


@pytest.mark.parametrize("number", [float("nan"), float("inf")])
def test_nan_is_no_number(plan: Plan, number: float) -> None:
    with pytest.raises(ValidationError) as caught:
        change_lamp(plan, 0, y=number)
    (sentence,) = said(caught.value)
    assert sentence.startswith("y: must be")
    assert "ordinary number" in sentence or "at most" in sentence


@pytest.mark.parametrize(
    ("location", "words"),
    [
        ((), ""),
        (("name",), "name"),
        (("lamps", 1, "hanging_height"), "lamp 2, hanging height"),
        (("lamps", 0, "model", "body", "bars", "bar_width"), "lamp 1, bar width"),
        (("lamps", 0, "model", "profile", "cosine", "exponent"), "lamp 1, profile, exponent"),
        (("lamps", 0, "model", "profile", "table", "relative", 4), "lamp 1, profile, intensity 5"),
        (
            ("lamps", 0, "model", "profile", "planes", "relative", 1, 6),
            "lamp 1, profile, plane 2, entry 7",
        ),
        (("walls", 2, "bands", 0, "lining"), "wall 3, band 1, lining"),
        (("space", "footprint", 3, 1), "corner 4, y"),
        (("space", "height"), "space, height"),
        (("canopy", "height"), "canopy, height"),
        (("linings", 4, "specular_share"), "lining 5, specular share"),
        (("target", "dli", "low"), "target, lower end"),
    ],
)
def test_places(location: tuple[int | str, ...], words: str) -> None:
    assert place_in_words(location) == words


def field_names(schema: dict[str, Any]) -> set[str]:
    names = set(schema.get("properties", {}))
    for part in schema.get("$defs", {}).values():
        names |= set(part.get("properties", {}))
    return names


def test_every_field_of_a_plan_has_words_without_code() -> None:
    for name in field_names(Plan.model_json_schema()):
        words = known_as(name)
        assert words
        assert "_" not in words
        assert "deg" not in words.split()
