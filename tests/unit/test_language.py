"""Words are exchanged as a module is compiled, and nothing else is."""

from __future__ import annotations

import ast
import json
import shutil
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

from planner import exchange, language
from planner.exchange import exchanged, template, texts
from planner.folders import resource_path
from planner.language import read_catalogue, wanted

ROOT = Path(__file__).resolve().parents[2]

SOURCE = '''"""Not for people."""

from __future__ import annotations

WORDS = {"lamp": "a lamp"}


def said(count: int, kind: str, height: float) -> str:
    """Not for people."""
    if kind == "a lamp":
        return f"{count} of {WORDS[kind[2:]]} at {height:.1f} cm, {height:.0f} or {'so many'}"
    return "a lamp"
'''

GERMAN = {
    "{count} of {WORDS} at {height} cm, {height2} or {value}": (
        "Auf {height} cm, {height2} oder {value}: {count} x {WORDS}"
    ),
    "a lamp": "eine Lampe",
    "so many": "viele",
    "lamp": "Lampe",
    "Not for people.": "Nicht für Leute.",
}


@pytest.fixture
def german(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(language, "_spoken", "de")


def _module(words: dict[str, str]) -> dict[str, Any]:
    found: dict[str, Any] = {}
    exec(compile(exchanged(ast.parse(SOURCE), words), "said", "exec"), found)
    return found


@pytest.mark.usefixtures("german")
def test_words_are_exchanged_in_another_order_and_numbers_get_their_comma() -> None:
    # German sets a comma between whole and decimals (DIN 5008, from memory).
    words = {text: german for text, german in GERMAN.items() if text != "lamp"}
    found = _module(words)
    assert found["said"](3, "a lamp", 40.25) == "Auf 40,2 cm, 40 oder viele: 3 x eine Lampe"
    assert found["said"](3, "a pot", 40.25) == "eine Lampe"
    assert found["__doc__"] == "Not for people."


@pytest.mark.usefixtures("german")
def test_what_is_compared_or_looked_up_by_its_text_in_place_stays() -> None:
    tree = ast.parse(
        'def f(a, b):\n    return (a == "red", b["blue"], getattr(a, "green", "no one"))'
    )
    assert [template(text)[0] for text in texts(tree)] == []


def test_without_words_a_module_is_as_it_was() -> None:
    before = ast.dump(ast.parse(SOURCE))
    assert ast.dump(exchanged(ast.parse(SOURCE), {})) == before


def test_values_are_named_by_their_last_name_and_told_apart() -> None:
    tree = ast.parse('f"{a.name} {b.name} {a.name} {len(c)} {c[0]:.1f} {1 + 2}"', mode="eval")
    assert isinstance(tree.body, ast.JoinedStr)
    named, values = template(tree.body)
    assert named == "{name} {name2} {name} {len} {c} {value}"
    assert list(values) == ["name", "name2", "len", "c", "value"]


def test_the_variable_goes_before_the_settings_and_these_before_the_system(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    for name in ("LC_ALL", "LC_MESSAGES", language.VARIABLE):
        monkeypatch.delenv(name, raising=False)
    monkeypatch.setenv("PLANNER_SETTINGS_DIR", str(tmp_path))
    monkeypatch.setenv("LANG", "de_AT.UTF-8")
    assert wanted() == "de"
    monkeypatch.setenv("LC_ALL", "C.UTF-8")
    assert wanted() == "en"
    settings = tmp_path / "settings.json"
    settings.write_text(json.dumps({"language": "de"}))
    assert wanted() == "de"
    monkeypatch.setenv(language.VARIABLE, "en")
    assert wanted() == "en"
    monkeypatch.setenv(language.VARIABLE, "tlh")
    assert wanted() == "de"


@pytest.mark.parametrize("spoilt", [b"", b"[1]", b'{"language": 3}', b"\xff", b"[" * 100_000])
def test_a_damaged_settings_file_leaves_the_language_of_the_system(
    spoilt: bytes, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    monkeypatch.delenv(language.VARIABLE, raising=False)
    monkeypatch.setenv("PLANNER_SETTINGS_DIR", str(tmp_path))
    monkeypatch.setenv("LC_ALL", "C")
    (tmp_path / "settings.json").write_bytes(spoilt)
    assert wanted() == "en"


def test_a_damaged_catalogue_is_none(tmp_path: Path) -> None:
    spoilt = tmp_path / "planner_de.ts"
    spoilt.write_text("<TS><context><name>planner.units</name>")
    assert language.words_in(spoilt, "planner.units") == {}


def test_german_is_whole_and_in_step_with_the_sources() -> None:
    told = subprocess.run(
        [sys.executable, ROOT / "packaging" / "translations.py", "--check"],
        capture_output=True, text=True, check=False,
    )  # fmt: skip
    assert told.returncode == 0, told.stdout


TWO_THINGS = {"Find", "Hole", "Light", "Lower", "Spread", "Sweep"}
"""Words that are a verb here and a noun there, or mean two things."""


def test_what_is_compiled_ahead_is_taken_for_the_very_same_source(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    place, data = next(one for one in exchange.ahead("de") if one[0].stem.startswith("ink."))
    assert place.parts[:-1] == ("planner", "app", "canvas", "__pycache__")
    module = tmp_path / "ink.py"
    shutil.copy(ROOT / "planner" / "app" / "canvas" / "ink.py", module)
    monkeypatch.setattr(language, "_spoken", "de")
    monkeypatch.setattr(sys, "dont_write_bytecode", True)
    loader = exchange._Loader(
        "planner.app.canvas.ink", str(module), resource_path("translations/planner_de.ts")
    )
    fresh = loader.get_code("planner.app.canvas.ink")
    assert fresh.co_filename == str(module)
    (tmp_path / "__pycache__").mkdir()
    (tmp_path / "__pycache__" / place.name).write_bytes(data)
    # A path of no machine: it is what was compiled ahead.
    taken = loader.get_code("planner.app.canvas.ink")
    assert taken.co_filename == str(Path("planner", "app", "canvas", "ink.py"))
    assert "Größer".encode() in data
    module.write_text(module.read_text("utf-8") + "\n", "utf-8")
    assert loader.get_code("planner.app.canvas.ink").co_filename == str(module)


def test_a_text_says_the_same_wherever_it_stands_in_german() -> None:
    # A word for each thing: what is called so on one page is called so on the next.
    said: dict[str, set[str]] = {}
    for words in read_catalogue(resource_path("translations/planner_de.ts")).values():
        for text, german in words.items():
            if len(text) > 3 and text[:1].isupper() and "{" not in text:
                said.setdefault(text, set()).add(german)
    apart = {text for text, german in said.items() if len(german) > 1}
    assert apart <= TWO_THINGS
