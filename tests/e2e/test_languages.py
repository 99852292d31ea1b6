"""The program in German, in longer words, and in a script that runs from the right."""

from __future__ import annotations

import csv
import json
import os
import re
import subprocess
import sys
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from planner.catalogue.library import demo_plan, load_catalogue
from planner.folders import resource_path
from planner.plan.plan import Plan

_LATIN_WORD = re.compile(r"(?<![\w&])[A-Za-z]{4,}")


def _started(language: str, *arguments: str) -> subprocess.CompletedProcess[str]:
    named = {"PYTHONPATH": str(Path(__file__).resolve().parents[2])}
    return subprocess.run(
        [sys.executable, *([] if arguments[0].endswith(".py") else ["-m"]), *arguments],
        env={**os.environ, **named, "PLANNER_LANGUAGE": language, "PYTHONIOENCODING": "utf-8"},
        capture_output=True, encoding="utf-8", check=False,
    )  # fmt: skip


def _run(language: str, *arguments: str) -> str:
    told = _started(language, *arguments)
    assert told.returncode == 0, told.stderr
    return told.stdout


def _script(language: str, *arguments: Path) -> str:
    return _run(language, *map(str, arguments))


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

    plans: list[Plan] = [demo_plan(key) for key in ("hallway-cabinet-measured", "trays")]
    catalogue = load_catalogue()
    return words([plan.model_dump() for plan in plans]) | {
        one.name for one in catalogue.linings + catalogue.lamps
    }


@pytest.mark.parametrize("page", ["sketch", "side", "survey", "report"])
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


def test_the_command_line_asks_and_refuses_in_german() -> None:
    told = _run("de", "planner", "estimate", "--help")
    assert told.startswith("Aufruf: ")
    assert not re.search(r"usage|positional|options:|show this", told)
    for asked, said in (
        (("estimate",), "Es fehlt noch: PLAN"),
        (("estimate", "demo", "--quality", "x"), "'x' steht nicht zur Wahl"),
        (("estimate", "demo", "--bla"), "Unbekannte Angaben: --bla"),
        (("lamp", "no-such-file"), "Datei oder Ordner gibt es nicht"),
        (("sweep", "demo", "--over", "lamp=x", "--csv", "-"), "„x“ gibt es nicht (Lampe)"),
    ):
        refused = _started("de", "planner", *asked)
        assert refused.returncode == 2
        assert said in refused.stderr


def test_files_for_machines_are_the_same_in_every_language(tmp_path: Path) -> None:
    assert _run("de", "planner", "schema") == _run("en", "planner", "schema")
    over = ("--over", "height@lamp-1=0.2:0.3:2", "--over", "lining@wall-4-band-1=foil-matt")
    heads = {}
    for language in ("de", "en"):
        made = tmp_path / f"{language}.csv"
        _run(
            language, "planner", "sweep", "demo", *over, "--csv", str(made),
            "--quality", "preview", "--workers", "0",
        )  # fmt: skip
        heads[language], *lines = csv.reader(made.read_text("utf-8").splitlines())
        # Linings stand there by name, numbers with a point.
        assert [float(cell) for line in lines for cell in (line[0], *line[2:-1]) if cell]
    assert heads["de"] == heads["en"]
    assert heads["de"][:2] == ["height_lamp_1_m", "lining_wall_4_band_1"]


@pytest.mark.parametrize("language", ["en", "de"])
def test_fields_beside_the_sketch_fit_their_column(language: str) -> None:
    assert _window(language)["cut"] == []


SAVE = """
import sys
from pathlib import Path
from planner.exchange import speak
from planner.language import wanted
speak(wanted())
from planner.estimate.result import EstimateOptions, Quality
from planner.estimate.sweep import sweep
from planner.estimate.sweep_points import parse_over
from planner.catalogue.library import load_catalogue
from planner.files.store import load_plan, save_plan
read, written, journal = map(Path, sys.argv[1:])
plan = load_plan(read)
save_plan(plan, written)
book = load_catalogue()
over = parse_over("lining@ceiling=foil-matt,white-board", book.linings_for(plan), ())
before = journal.read_text().count("\\n") if journal.exists() else 0
options = EstimateOptions(cells=(4, 4), quality=Quality.PREVIEW)
sweep(plan, [over], options, workers=0, journal=journal)
print(before, journal.read_text().count("\\n"))
"""


def test_a_plan_and_a_sweep_begun_in_one_language_go_on_in_the_other(tmp_path: Path) -> None:
    first, second, third = (tmp_path / f"{k}.plan.json" for k in range(3))
    first.write_bytes(resource_path("demo/hallway-cabinet-measured.plan.json").read_bytes())
    journal = tmp_path / "journal"
    program = tmp_path / "saving.py"
    program.write_text(SAVE, "utf-8")
    told = _script("de", program, first, second, journal)
    assert told.split() == ["0", "3"]
    # The second adds no line: it goes on from what is there.
    assert _script("en", program, second, third, journal).split() == ["3", "3"]
    assert second.read_bytes() == third.read_bytes()
