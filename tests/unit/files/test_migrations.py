"""Old formats are brought up to date step by step; unknown ones are refused."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from planner.files.disk import PlanFileError
from planner.files.migrations import STEPS, FormatError, migrated
from planner.files.store import open_plan, plan_to_bytes
from planner.plan.plan import PLAN_FORMAT, Setup


def to_two(raw: dict[str, Any]) -> dict[str, Any]:
    """A made-up step: the name was called title."""
    return {"name": raw["title"], **{k: v for k, v in raw.items() if k != "title"}}


def to_three(raw: dict[str, Any]) -> dict[str, Any]:
    """A made-up step: heights were in centimetres."""
    return {**raw, "height": raw["height"] / 100}


FAKE_STEPS = {1: to_two, 2: to_three}


def test_steps_run_in_order_up_to_the_present_format() -> None:
    old = {"format": 1, "title": "Shelf", "height": 140}
    new = migrated(old, steps=FAKE_STEPS, to=3)
    assert new == {"format": 3, "name": "Shelf", "height": 1.4}
    assert old == {"format": 1, "title": "Shelf", "height": 140}


def test_only_the_missing_steps_run() -> None:
    assert migrated({"format": 2, "name": "Shelf", "height": 140}, steps=FAKE_STEPS, to=3) == {
        "format": 3,
        "name": "Shelf",
        "height": 1.4,
    }


def test_the_present_format_passes_unchanged() -> None:
    assert migrated({"format": 3, "anything": 1}, steps=FAKE_STEPS, to=3) == {
        "format": 3,
        "anything": 1,
    }


@pytest.mark.parametrize("damaged", [{"format": 1}, {"format": 1, "title": "a", "height": "tall"}])
def test_contents_that_do_not_fit_their_format(damaged: dict[str, Any]) -> None:
    with pytest.raises(FormatError, match="do not fit that format"):
        migrated(damaged, steps=FAKE_STEPS, to=3)


def test_a_newer_format_asks_for_a_newer_program() -> None:
    with pytest.raises(FormatError, match=r"newer version .*format 4; .*up to format 3\); update"):
        migrated({"format": 4}, steps=FAKE_STEPS, to=3)


def test_a_format_whose_step_is_gone() -> None:
    with pytest.raises(FormatError, match="format 1 is too old"):
        migrated({"format": 1}, steps={2: to_three}, to=3)


def test_there_is_a_step_for_every_older_format() -> None:
    assert sorted(STEPS) == list(range(1, PLAN_FORMAT))


SAMPLES = Path(__file__).parents[2] / "data" / "plans"


@pytest.mark.parametrize("name", ["format-1", "format-1-least"])
def test_variants_of_format_1_become_what_they_were_then(name: str) -> None:
    """Against what the program of format 1 itself made of the variants of these files.

    ``*.resolved.json`` was written by that program: the setup of each variant, by name. The
    plans hold all fourteen kinds of change, alone and one after another, and changes that do
    not fit.
    """
    opened = open_plan(SAMPLES / f"{name}.plan.json")
    assert opened.written_in == 1
    then = json.loads((SAMPLES / f"{name}.resolved.json").read_text("utf-8"))
    assert [variant.name for variant in opened.plan.variants] == list(then)
    for variant in opened.plan.variants:
        assert variant.setup == Setup.model_validate(then[variant.name]), variant.name
    kinds = {
        change["kind"]
        for variant in json.loads((SAMPLES / "format-1.plan.json").read_text("utf-8"))["variants"]
        for change in variant["changes"]
    }
    assert len(kinds) == 14


def test_beams_of_format_2_get_the_doubt_of_their_kind() -> None:
    """On a plan the program of format 2 wrote, by hand what each of its lamps must get.

    In its file: a lamp of the catalogue written before ``dimmable`` was, one whose beam was typed
    over, a spot, a table, two pasted sheets (without and with a beam angle), a calibrated lamp and
    one from a photometric file.
    """
    opened = open_plan(SAMPLES / "format-2.plan.json")
    assert opened.written_in == 2
    doubts = [20.0, 10.0, 8.0, 0.0, 30.0, 10.0, 0.0, 0.0]
    for setup in (opened.plan, opened.plan.variants[0].setup):
        models = [lamp.model for lamp in setup.lamps]
        assert [model.beam_uncertainty_deg for model in models] == doubts
        assert [model.dimmable for model in models] == [True] * 7 + [False]
    raw = json.loads((SAMPLES / "format-2.plan.json").read_text("utf-8"))
    assert "dimmable" not in raw["lamps"][0]["model"]
    # All else stays as it was written.
    was, now = raw["lamps"], json.loads(opened.plan.model_dump_json())["lamps"]
    for old, new in zip(was, now, strict=True):
        for added in ("dimmable", "beam_uncertainty_deg"):
            old["model"].pop(added, None), new["model"].pop(added)
        assert_holds(new, old)


def test_surveys_and_options_of_format_1_pass_through_both_steps() -> None:
    raw = json.loads((SAMPLES / "format-1.plan.json").read_text("utf-8"))
    text = json.dumps(migrated(raw))
    assert text.count('"beam_uncertainty_deg"') == text.count('"watts"') > 1


def test_a_plan_of_format_3_opens_as_it_was_written() -> None:
    """Format 4 only adds what may be left out: all that format 3 wrote says the same."""
    opened = open_plan(SAMPLES / "format-3.plan.json")
    assert opened.written_in == 3
    was = json.loads((SAMPLES / "format-3.plan.json").read_text("utf-8"))
    now = json.loads(plan_to_bytes(opened.plan))
    assert (was.pop("format"), now.pop("format")) == (3, 4)
    assert_holds(now, was)


def assert_holds(now: Any, was: Any) -> None:
    """Everything that was written is there still; more may be."""
    if isinstance(was, dict):
        for name, value in was.items():
            assert_holds(now[name], value)
    elif isinstance(was, list):
        assert len(now) == len(was)
        for one, other in zip(now, was, strict=True):
            assert_holds(one, other)
    else:
        assert now == was


@pytest.mark.parametrize("far", ["1e300", "1e16", "-1e308"])
def test_a_corner_beyond_all_numbers_is_refused_in_words(tmp_path: Path, far: str) -> None:
    """Squaring it overflows where variants of format 1 are looked at (found by tests' fuzz)."""
    raw = json.loads((SAMPLES / "format-1.plan.json").read_text("utf-8"))
    raw["space"]["footprint"][1][0] = float(far)
    path = tmp_path / "far.plan.json"
    path.write_text(json.dumps(raw), "utf-8")
    with pytest.raises(PlanFileError):
        open_plan(path)


def test_what_is_not_a_change_of_format_1_is_refused(tmp_path: Path) -> None:
    raw = json.loads((SAMPLES / "format-1-least.plan.json").read_text("utf-8"))
    raw["variants"][0]["changes"][0]["kind"] = "paint-it"
    path = tmp_path / "odd.plan.json"
    path.write_text(json.dumps(raw), "utf-8")
    with pytest.raises(PlanFileError, match="do not fit that format"):
        open_plan(path)
