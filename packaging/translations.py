"""Keep the translations in step with the sources: new words in, words that are gone out.

    python packaging/translations.py [--check] [LANGUAGE ...]

The catalogues (``resources/translations``) are in Qt's own format, for Qt Linguist. A word that
is new stands there as unfinished until somebody has translated it or has said in the comment that
it is not read by people. ``--check`` writes nothing, and fails where a catalogue is not complete.
"""

from __future__ import annotations

import argparse
import ast
import json
import sys
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from xml.etree import ElementTree as ET

ROOT = Path(__file__).resolve().parent.parent
sys.path.insert(0, str(ROOT))

from planner.exchange import modules, template, texts  # noqa: E402 - after the path is set
from planner.language import (  # noqa: E402 - after the path is set
    DATA,
    KEYS,
    LANGUAGES,
    NOT_READ,
    WORDS_OF_DATA,
    WORDY_DATA,
    messages,
)

CATALOGUES = ROOT / "resources" / "translations"
SILENT = ("planner.folders", "planner.language", "planner.exchange", "planner.__main__")
"""Modules that are imported before the language is known."""

Words = dict[str, dict[str, str | None]]
"""By context, from a template to its translation; empty: not read by people; None: unfinished."""


def main() -> int:
    parser = argparse.ArgumentParser(description=(__doc__ or "").partition("\n")[0])
    parser.add_argument("languages", nargs="*", metavar="LANGUAGE")
    parser.add_argument("--check", action="store_true", help="write nothing; fail where not whole")
    chosen = parser.parse_args()
    code = 0
    for language in chosen.languages or [one for one in LANGUAGES if one != "en"]:
        file = CATALOGUES / f"planner_{language}.ts"
        had = read(file) if file.exists() else {}
        now = in_step(had)
        complaints = list(wrong(now))
        if chosen.check:
            complaints += [f"{file.name} is behind the sources"] if now != had else []
        else:
            write(file, language, now)
        print(f"{file.name}: {sum(map(len, now.values()))} texts, {len(complaints)} complaints")
        print(*complaints[:20], sep="\n")
        code = code or int(chosen.check and bool(complaints))
    return code


def sources() -> Words:
    """All texts of the program that might be read by people, none of them translated."""
    found: Words = {}
    for module, tree in _trees().items():
        found[module] = {template(text)[0]: None for text in texts(tree)}
    found[KEYS] = dict.fromkeys(_members())
    files = [file for name in WORDY_DATA for file in sorted((ROOT / "resources").glob(name))]
    found[DATA] = {
        text: None for file in files for text in _words_of(json.loads(file.read_bytes()))
    }
    return {context: words for context, words in found.items() if words}


def _members() -> Iterator[str]:
    """The members of enumerations and of named literal types, fields of the plan, lone words."""
    for module, tree in _trees().items():
        for node in ast.walk(tree):
            match node:
                case ast.ClassDef(bases=[ast.Name("StrEnum")]):
                    values = [part.value for part in node.body if isinstance(part, ast.Assign)]
                case ast.Assign(value=ast.Subscript(ast.Name("Literal"), ast.Tuple(values))):
                    pass
                case ast.Call(ast.Name("word"), values):
                    pass
                case ast.ClassDef() if module.startswith("planner.plan."):
                    for part in node.body:
                        if isinstance(part, ast.AnnAssign) and isinstance(part.target, ast.Name):
                            yield part.target.id.replace("_", " ")
                    continue
                case _:
                    continue
            for value in values:
                if isinstance(value, ast.Constant):
                    yield str(value.value)


def _words_of(data: object) -> Iterator[str]:
    if isinstance(data, dict):
        for key, value in data.items():
            if isinstance(value, str):
                if key in WORDS_OF_DATA and value:
                    yield value
            else:
                yield from _words_of(value)
    elif isinstance(data, list):
        for value in data:
            yield from _words_of(value)


def in_step(had: Words) -> Words:
    """The texts of today with the translations there are."""
    return {
        context: {text: had.get(context, {}).get(text) for text in words}
        for context, words in sources().items()
    }


def wrong(words: Words) -> Iterator[str]:
    """A sentence for each text that is not finished, or leaves out what the source puts in."""
    put_in = {
        (module, name): set(values)
        for module, tree in _trees().items()
        for name, values in map(template, texts(tree))
    }
    for context, texts_of in words.items():
        for source, translation in texts_of.items():
            if translation is None:
                yield f"{context}: not translated: {source!r}"
            elif translation:
                names = put_in.get((context, source), set())
                lost = {name for name in names if f"{{{name}}}" not in translation}
                if lost:
                    yield f"{context}: {', '.join(sorted(lost))} is left out: {translation!r}"


@cache
def _trees() -> dict[str, ast.Module]:
    """The modules whose language can be chosen, read and parsed once."""
    every = ((name, file.read_text("utf-8")) for name, file in modules() if name not in SILENT)
    return {name: ast.parse(source) for name, source in every}


def read(file: Path) -> Words:
    """A catalogue as it is on the disk."""
    found: Words = {}
    for context, source, translation in messages(file):
        found.setdefault(context, {})[source] = translation
    return found


def write(file: Path, language: str, words: Words) -> None:
    """Write a catalogue, contexts and messages in the order of the sources."""
    root = ET.Element("TS", version="2.1", sourcelanguage="en", language=language)
    for name, texts_of in words.items():
        context = ET.SubElement(root, "context")
        ET.SubElement(context, "name").text = name
        for source, translation in texts_of.items():
            message = ET.SubElement(context, "message")
            ET.SubElement(message, "source").text = source
            if translation == "":
                ET.SubElement(message, "translatorcomment").text = NOT_READ
            node = ET.SubElement(message, "translation")
            node.text = translation
            if translation is None:
                node.set("type", "unfinished")
    ET.indent(root, "")
    file.parent.mkdir(exist_ok=True)
    text = ET.tostring(root, encoding="unicode")
    file.write_text(f'<?xml version="1.0" encoding="utf-8"?>\n<!DOCTYPE TS>\n{text}\n', "utf-8")


if __name__ == "__main__":
    sys.exit(main())
