"""The whole plan: what its parts ask of each other, in words a person understands."""

from __future__ import annotations

import json
from typing import Any

import pytest
from pydantic import ValidationError

from planner.catalogue.library import demo_plan
from planner.plan.lining import OPENING
from planner.plan.plan import Plan


def _raw() -> dict[str, Any]:
    lining = {"key": "tile", "name": "Tile", "reflectance": 0.7, "low": 0.6, "high": 0.8}
    model = {"key": "a", "name": "Small lamp", "body": {"kind": "point"}, "ppf": 50, "watts": 25}
    return {
        "space": {"footprint": [[0, 0], [1, 0], [1, 1], [0, 1]], "height": 2},
        "linings": [lining],
        "walls": [{"bands": [{"lining": "tile"}]} for _ in range(4)],
        "lamps": [{"model": model, "x": 0.5, "y": 0.5, "hanging_height": 0.5}],
        "canopy": {"height": 0.3},
    }


def _changed(path: str, value: Any) -> dict[str, Any]:
    raw = _raw()
    at: Any = raw
    *parts, last = path.split(".")
    for part in parts:
        at = at[int(part)] if part.isdigit() else at[part]
    at[int(last) if last.isdigit() else last] = value
    return raw


def test_a_sound_plan_is_accepted() -> None:
    plan = Plan.model_validate(_raw())
    assert plan.format == 4
    assert plan.lamp_height(plan.lamps[0]) == pytest.approx(0.8)
    assert plan.lining("tile").reflectance == 0.7
    assert plan.lining("open") is OPENING


@pytest.mark.parametrize(
    ("path", "value", "words"),
    [
        ("walls", [], "the footprint has 4 walls, but 0 wall covers are given"),
        ("ceiling", "gold", "the ceiling is lined with 'gold', but the plan holds no lining"),
        ("floor", "gold", "the floor is lined with 'gold'"),
        ("walls.2.bands.0.lining", "gold", "wall 3 is lined with 'gold'"),
        ("canopy.height", 1.995, "the canopy at 199.5.cm does not fit under the ceiling at 200.cm"),
        ("lamps.0.x", 1.5, r"lamp 1 \('Small lamp'\) hangs outside the space at x = 150.cm"),
        (
            "lamps.0.hanging_height",
            1.8,
            r"lamp 1, hanging height: must be at most 170.cm, not 180.cm \(the ceiling",
        ),
        ("format", 1, "Input should be 4"),
        ("photoperiod_hours", 25, "less than or equal to 24"),
        ("photoperiod_hours", float("nan"), "finite number"),
        ("name", "", "at least 1 character"),
        ("target", {"kind": "lux", "low": 1, "high": 2}, "'ppfd', 'dli'"),
        ("surprise", 1, "Extra inputs are not permitted"),
    ],
)
def test_what_does_not_fit_is_explained(path: str, value: Any, words: str) -> None:
    with pytest.raises(ValidationError, match=words):
        Plan.model_validate(_changed(path, value))


def test_a_lamp_may_hang_right_under_the_ceiling() -> None:
    plan = Plan.model_validate(_changed("lamps.0.hanging_height", 1.7))
    assert plan.lamp_height(plan.lamps[0]) == pytest.approx(plan.space.height)


def test_each_lining_key_is_used_once() -> None:
    raw = _raw()
    raw["linings"] *= 2
    with pytest.raises(ValidationError, match="two linings carry the key 'tile'"):
        Plan.model_validate(raw)


def test_the_key_open_is_taken() -> None:
    raw = _raw()
    raw["linings"].append(raw["linings"][0] | {"key": "open"})
    with pytest.raises(ValidationError, match="'open' stands for an opening"):
        Plan.model_validate(raw)


def test_only_the_open_door_opens() -> None:
    raw = _raw()
    raw["space"] |= {"door": 1}
    assert not Plan.model_validate(raw).wall_opens(1)
    raw["space"] |= {"door_open": True}
    plan = Plan.model_validate(raw)
    assert [plan.wall_opens(wall) for wall in range(4)] == [False, True, False, False]


def test_a_plan_is_the_same_after_a_trip_through_json() -> None:
    plan = demo_plan()
    text = plan.model_dump_json()
    assert Plan.model_validate_json(text) == plan
    assert "NaN" not in text
    assert json.loads(text)["format"] == 4


def test_a_plan_does_not_change() -> None:
    with pytest.raises(ValidationError):
        demo_plan().name = "other"  # type: ignore[misc]
