"""The program in German, in longer words, and in a script that runs from the right."""

from __future__ import annotations

import json
import os
import re
import subprocess
import sys
from functools import cache
from typing import Any

import pytest

from planner.catalogue.library import demo_plan, load_catalogue
from planner.plan.plan import Plan

_LATIN_WORD = re.compile(r"(?<![\w&])[A-Za-z]{4,}")


def _run(language: str, *arguments: str) -> str:
    told = subprocess.run(
        [sys.executable, "-m", *arguments],
        env={**os.environ, "PLANNER_LANGUAGE": language, "PYTHONIOENCODING": "utf-8"},
        capture_output=True, encoding="utf-8", check=False,
    )  # fmt: skip
    assert told.returncode == 0, told.stderr
    return told.stdout


@cache
def _window(language: str) -> dict[str, Any]:
    found: dict[str, Any] = json.loads(_run(language, "tests.e2e.spoken_window"))
    return found


def _of_the_plan() -> set[str]:
    """What the grower wrote, which nobody translates."""

    def words(value: object) -> set[str]:
        if isinstance(value, str):
            return {value}
        if isinstance(value, dict):
            return set().union(*map(words, value.values()))
        return set().union(*map(words, value)) if isinstance(value, list | tuple) else set()

    plan: Plan = demo_plan("hallway-cabinet-measured")
    catalogue = load_catalogue()
    return words(plan.model_dump()) | {one.name for one in catalogue.linings + catalogue.lamps}


@pytest.mark.parametrize("page", ["sketch", "side", "survey"])
def test_every_sentence_of_the_window_is_exchanged(page: str) -> None:
    # The language of longer words marks what went through the catalogue.
    plain = {
        text
        for text in _window("xx")["said"][page]
        if " " in text.strip() and _LATIN_WORD.search(text) and "‹" not in text
    }
    # Qt's own words for the two buttons of a tab bar.
    assert plain - _of_the_plan() - {"Scroll Left", "Scroll Right"} == set()


def test_from_the_right_everything_is_mirrored_and_numbers_stay_with_their_units() -> None:
    found = _window("xr")
    assert found["direction"] == "RightToLeft"
    # Unicode Standard Annex 9: what stands in an isolate keeps its own direction, so that
    # '110 cm' is not read as 'cm 110'.
    lengths = [text for text in found["said"]["sketch"] if re.fullmatch(r"\W*\d[\d.]* cm\W*", text)]
    assert lengths
    assert all(text.startswith("\u2066") and text.endswith("\u2069") for text in lengths)


def test_answers_in_german_have_the_numbers_of_those_in_english() -> None:
    asked = ("planner", "estimate", "demo", "--quality", "preview", "--cells", "8x8")
    german, english = _run("de", *asked), _run("en", *asked)
    assert "Mittel" in german
    assert "Mean" not in german
    figures = re.compile(r"\d+(?:[.,]\d+)?")
    # The last line holds the seconds it took.
    in_german = [text.replace(",", ".") for text in figures.findall(german)[:40]]
    assert sorted(in_german) == sorted(figures.findall(english)[:40])
    assert re.search(r"\d,\d", german)
    assert not re.search(r"\d\.\d", german)


def test_what_machines_read_is_the_same_in_every_language() -> None:
    asked = ("planner", "estimate", "demo", "--quality", "preview", "--cells", "8x8", "--json", "-")
    german, english = json.loads(_run("de", *asked)), json.loads(_run("en", *asked))

    def bare(value: Any) -> Any:
        # Sentences may differ, names and numbers may not.
        if isinstance(value, dict):
            return {key: bare(one) for key, one in value.items() if "second" not in key}
        if isinstance(value, list):
            return [bare(one) for one in value]
        return "" if isinstance(value, str) else value

    assert bare(german) == bare(english)
