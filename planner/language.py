"""The language of the words people read.

The sources are written in English. Where another language is spoken, modules are compiled with
their words exchanged (``planner/exchange.py``); in English nothing happens at all. A catalogue in
Qt's own format (``resources/translations/planner_de.ts``, for Qt Linguist; one context for each
module, one for data files, one for keys) holds the words. What it does not hold stays English; what
it marks as not read by people (keys, colours, names of fields) is left alone. What Qt says itself
is Qt's translator's (``app/run.py``).
"""

from __future__ import annotations

import json
import locale
import os
import re
from collections.abc import Iterator, Mapping
from functools import cache
from numbers import Real
from pathlib import Path
from typing import Final

from planner.folders import SETTINGS_FILE, resource_path, settings_folder

VARIABLE: Final = "PLANNER_LANGUAGE"
"""Overrides the settings and the system: ``de``, or ``en`` for the words as they are written."""

LANGUAGES: Final = {"en": "English", "de": "Deutsch"}
"""What can be spoken, each by its own name."""

DATA: Final = "data"
"""The context of data files; in them people read what stands under the names that follow."""

WORDY_DATA: Final = (
    *(f"catalogue/{name}.json" for name in ("cautions", "crops", "lamps", "linings")),
    "catalogue/spectra/index.json",
    "demo/*.plan.json",
)
WORDS_OF_DATA: Final = (
    "about", "crop", "label", "name", "note", "page", "sentence", "source", "text", "title",
)  # fmt: skip

PSEUDO: Final = "xx"
RIGHT_TO_LEFT: Final = "xr"
"""Two languages of the tests: longer words, and words in letters that run from the right."""

NOT_READ: Final = "not read by people"
KEYS: Final = "keys"
"""The context of the members of enumerations and of named literal types."""


_MOST_SETTINGS_BYTES: Final = 1_000_000
_spoken = "en"
_catalogue: Path | None = None
_SPELT: Final = {PSEUDO: "de", RIGHT_TO_LEFT: "de"}
"""A language of the tests has its words where this one has them."""


def spoken() -> str:
    """The language the program speaks, by its two letters."""
    return _spoken


def wanted() -> str:
    """The language asked for: by the variable, the settings, else by the system."""
    for code in (os.environ.get(VARIABLE), _kept()):
        if code in (*LANGUAGES, *_SPELT):
            return str(code)
    names = [os.environ.get(name) for name in ("LC_ALL", "LC_MESSAGES", "LANG")]
    told = next((name for name in names if name), None) or locale.getlocale()[0] or ""
    return "de" if re.match(r"(de([_.@-]|$)|german)", told, re.IGNORECASE) else "en"


def _kept() -> str | None:
    # By hand: nothing of the program may be imported before its language is known.
    try:
        file = settings_folder() / SETTINGS_FILE
        if file.stat().st_size > _MOST_SETTINGS_BYTES:
            return None
        values = json.loads(file.read_bytes())
    except (OSError, ValueError, RecursionError):
        return None
    code = values.get("language") if isinstance(values, dict) else None
    return code if isinstance(code, str) else None


def begin(code: str) -> Path | None:
    """Speak a language from now on; its catalogue, or None where English is to stay."""
    global _catalogue, _spoken
    if code == "en":
        return None
    try:
        found = resource_path(f"translations/planner_{_SPELT.get(code, code)}.ts")
    except FileNotFoundError:
        return None
    _spoken, _catalogue = code, found
    return found


def words_in(catalogue: Path, context: str) -> Mapping[str, str]:
    """The translations of a context (a module, the data, the keys) by their templates."""
    try:
        return read_catalogue(catalogue).get(context, {})
    except (OSError, SyntaxError):  # of XML, too: a damaged catalogue is none
        return {}


@cache
def read_catalogue(file: Path) -> dict[str, dict[str, str]]:
    """The words of a catalogue: by context, from a template to its translation."""
    found: dict[str, dict[str, str]] = {}
    for context, source, translation in messages(file):
        if translation:
            exchanged = pseudo(source) if spoken() in _SPELT else translation
            found.setdefault(context, {})[source] = exchanged
    return found


def messages(file: Path) -> Iterator[tuple[str, str, str | None]]:
    """Context, template and translation of each message of a catalogue.

    The translation is empty where nobody reads the text, None while it is unfinished.
    """
    from xml.etree import ElementTree as ET  # noqa: PLC0415 - English needs none

    for context in ET.parse(file).getroot().iter("context"):
        name = context.findtext("name", "")
        for message in context.iter("message"):
            node = message.find("translation")
            unfinished = node is None or node.get("type") == "unfinished"
            translation = None if unfinished or node is None else node.text or ""
            yield name, message.findtext("source", ""), translation


def data(name: str) -> bytes:
    """A data file as it is shipped, with the words people read exchanged."""
    shipped = resource_path(name).read_bytes()
    words = None if _catalogue is None else words_in(_catalogue, DATA)
    return json.dumps(_exchanged_data(json.loads(shipped), words)).encode() if words else shipped


def _exchanged_data(value: object, words: Mapping[str, str], key: str = "") -> object:
    if isinstance(value, dict):
        return {name: _exchanged_data(one, words, name) for name, one in value.items()}
    if isinstance(value, list):
        return [_exchanged_data(one, words, key) for one in value]
    if isinstance(value, str) and key in WORDS_OF_DATA and not (key == "page" and _no_pages()):
        return words.get(value, value)
    return value


def _no_pages() -> bool:
    # The languages of the tests have no pages of help: what names one names the English one.
    return spoken() in _SPELT


def word(key: str) -> str:
    """The word people read for a key: a member of an enumeration, whose value is its English."""
    return key if _catalogue is None else words_in(_catalogue, KEYS).get(key, str(key))


def inside(name: str) -> str:
    """A name as it stands within a sentence: small in English, but for LED, PPFD and the like."""
    if spoken() == "de" or name[1:2].isupper():
        return name
    return name[:1].lower() + name[1:]


def page(name: str) -> Path:
    """A page of help in the language spoken, or in English where it was not written in it."""
    try:
        return resource_path(f"help/{spoken()}/{name}")
    except FileNotFoundError:
        return resource_path(f"help/{name}")


def written(value: object, form: str) -> str:
    """A value in a format, its decimal point as the language has it."""
    text = format(value, form)
    return decimal(text) if isinstance(value, Real) else text


def trimmed(number: str) -> str:
    """A number for people without the zeros at the end of its decimals."""
    # Said a hundred times for each light: a pattern would take longer than all the rest.
    cut = max(number.rfind("."), number.rfind(","))
    if cut >= 0 and number[cut + 1 :].isdecimal():
        number = number.rstrip("0")
    return number.rstrip(".,")


def decimal(number: str) -> str:
    """A number written with a decimal point as the language spoken writes it."""
    return number.translate(_DECIMAL_COMMA) if spoken() == "de" else number


_DECIMAL_COMMA: Final = str.maketrans(".,", ",.")


def pseudo(text: str) -> str:
    """A text in a language of the tests: words marked and longer, or running from the right.

    In it one sees which words were not exchanged, whether longer ones have room, and whether
    numbers stay with their units in a script that runs the other way.
    """
    if spoken() == RIGHT_TO_LEFT:
        if not _WORD.search(text) and "{" in text:
            # A number and its unit keep their order within a line that runs the other way.
            return f"\u2066{text}\u2069"
        return _WORD.sub(lambda found: found[0].lower().translate(_HEBREW), text)
    return f"‹{_WORD.sub(lambda found: found[0] + '~' * (len(found[0]) // 3), text)}›"


_WORD: Final = re.compile(r"(?<![{\w<&])(?<!%\()[A-Za-z]{3,}(?![\w}>;])")
_HEBREW: Final = {code: 0x5D0 + (code - 97) % 27 for code in range(97, 123)}
