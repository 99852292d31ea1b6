"""Reading JSON as the standard has it, with a line number for everything that is wrong.

The reader that comes with Python lets NaN, Infinity, numbers beyond all bounds and
repeated names pass; a plan file must not. Python's own reader does the work and only
when it stumbles is the text walked through again, to say where: by patterns that pass
over what is right in one go, so that the place costs no more than the reading did.
"""

from __future__ import annotations

import json
import math
import re
from typing import Any, Final

MAX_DEPTH: Final = 60
"""Deepest nesting accepted; a plan nests eight levels deep."""

MAX_CONTAINERS: Final = 300_000
MAX_NAMES: Final = 700_000
MAX_VALUES: Final = 2_200_000
"""Most lists and objects, most named fields, and most values of one text.

Counted as brackets, colons and commas before anything is read, so that no small file can ask for
hundreds of megabytes. A plan file of ten megabytes, as this program writes it, holds less:
a hole takes twenty bytes and there are at most 150,000, a reading with its two names
seventy, a number of a list five and more.
"""

_LONGEST_INT: Final = 300
_TEXT: Final = r'"(?:[^"\\]++|\\.)*+"'
_CONSTANT: Final = re.compile(rf"(?:[^\"NI-]++|{_TEXT}|-(?!I))*+", re.DOTALL)
_BRACES: Final = re.compile(rf"(?:[^\"{{}}]++|{_TEXT})*+([{{}}])", re.DOTALL)
_NAMES: Final = re.compile(rf"[^\"{{}}]*+(?:({_TEXT})(\s*+:)?|([{{}}]))", re.DOTALL)

_SYNTAX: Final = (
    ("Expecting value", "a value is expected there (a number, a text in double quotes, true, "
     "false, null, a list or an object)"),
    ("Expecting property name", "a name in double quotes is expected there"),
    ("Expecting ',' delimiter", "a comma or a closing bracket is missing there"),
    ("Expecting ':' delimiter", "a colon is missing there after the name"),
    ("Unterminated string", "the text that starts there has no closing quote"),
    ("Invalid control character", "a line break or control character stands inside a text there"),
    ("Invalid \\", "an unknown backslash sequence stands inside a text there"),
    ("Extra data", "there is more text after the end of the plan"),
    ("Illegal trailing comma", "the comma there has nothing after it"),
)  # fmt: skip


class JsonTextError(ValueError):
    """The bytes are not one plain JSON text; the message is half a sentence with the place."""


def parse_json(data: bytes) -> Any:
    """Turn the bytes of a file into Python values.

    A byte order mark is accepted. Raises ``JsonTextError`` for an empty or binary file,
    a syntax error, NaN or an infinite number, a name given twice in one object, and
    nesting deeper than ``MAX_DEPTH``.
    """
    text = _decode(data)
    brackets = text.count("{") + text.count("[")
    names, values = text.count(":"), text.count(",")
    for many, most, words in (
        (brackets, MAX_CONTAINERS, f"{brackets} lists and objects"),
        (names, MAX_NAMES, f"{names} fields"),
        (values, MAX_VALUES, f"{values} values"),
    ):
        if many > most:
            raise JsonTextError(
                f"it holds {words}, far more than any plan; it is probably not a plan file"
            )
    pairs = _Pairs()
    try:
        value = json.loads(
            text,
            parse_constant=_refuse_constant,
            parse_float=_finite,
            parse_int=_sane_int,
            object_pairs_hook=pairs.unique,
        )
    except json.JSONDecodeError as error:
        raise JsonTextError(
            f"it is not valid JSON at line {error.lineno}, column {error.colno}: "
            f"{_syntax_in_words(error.msg)}"
        ) from None
    except _ConstantError as error:
        line = _line(text, _end(_CONSTANT, text))
        raise JsonTextError(
            f"line {line}: {error} is not a number a plan can hold; write an ordinary number"
        ) from None
    except _BoundsError as error:
        line = _line(text, _end(_up_to_number(str(error)), text))
        raise JsonTextError(
            f"line {line}: {str(error)[:20]} is beyond all bounds; write an ordinary number"
        ) from None
    except _TwiceError as error:
        line = _line(text, _second_mention(text, str(error), pairs.closed))
        raise JsonTextError(
            f"the name '{str(error)[:60]}' is given twice in one object (line {line}); keep one"
        ) from None
    except RecursionError:
        raise JsonTextError("its lists or objects are nested far too deep for a plan") from None
    if _depth(value) > MAX_DEPTH:
        raise JsonTextError("its lists or objects are nested far too deep for a plan")
    return value


class _ConstantError(Exception):
    """NaN or an infinity, which Python's reader would accept and a plan must not hold."""


class _BoundsError(Exception):
    """A number that is beyond all bounds."""


class _TwiceError(Exception):
    """A name given twice in one object."""


def _decode(data: bytes) -> str:
    if not data.strip():
        raise JsonTextError("the file is empty")
    if data.startswith((b"\xff\xfe", b"\xfe\xff")):
        raise JsonTextError("its text is stored as UTF-16; store it as UTF-8")
    if b"\x00" in data:
        raise JsonTextError("it is a binary file, not a text")
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = data.count(b"\n", 0, error.start) + 1
        raise JsonTextError(
            f"it is a binary file, or a text that is not stored as UTF-8 (line {line})"
        ) from None
    if not text.strip():
        raise JsonTextError("the file is empty")
    return text


def _refuse_constant(token: str) -> Any:
    raise _ConstantError(token)


def _finite(token: str) -> float:
    value = float(token)
    if not math.isfinite(value):
        raise _BoundsError(token)
    return value


def _sane_int(token: str) -> int:
    if len(token) > _LONGEST_INT:
        raise _BoundsError(token)
    return int(token)


class _Pairs:
    """Makes objects of pairs, counting those that are done, and refuses a name given twice."""

    def __init__(self) -> None:
        self.closed = 0

    def unique(self, pairs: list[tuple[str, Any]]) -> dict[str, Any]:
        found = dict(pairs)
        if len(found) != len(pairs):
            seen: set[str] = set()
            for name, _ in pairs:
                if name in seen:
                    raise _TwiceError(name)
                seen.add(name)
        self.closed += 1
        return found


def _line(text: str, at: int) -> int:
    return text.count("\n", 0, at) + 1


def _end(pattern: re.Pattern[str], text: str) -> int:
    """Where a pattern that passes over everything right ends."""
    match = pattern.match(text)
    return match.end() if match else 0


def _up_to_number(token: str) -> re.Pattern[str]:
    """A pattern that passes over everything before a number outside texts."""
    wanted = re.escape(token[: _LONGEST_INT + 1])
    return re.compile(rf"(?:[^\"0-9-]++|{_TEXT}|(?!{wanted})[0-9-][0-9.eE+-]*+)*+", re.DOTALL)


def _second_mention(text: str, name: str, closed: int) -> int:
    """Where a name stands for the second time in the object that is closed after others."""
    begun: list[int] = []
    start = 0
    for match in _BRACES.finditer(text):
        if match[1] == "{":
            begun.append(match.end())
            continue
        start = begun.pop()
        if closed == 0:
            break
        closed -= 1
    depth, mentions = 0, 0
    for match in _NAMES.finditer(text, start):
        if match[3]:
            depth += 1 if match[3] == "{" else -1
        elif depth == 0 and match[2] and _same_name(match[1], name):
            mentions += 1
            if mentions == 2:
                return match.start(1)
    return start  # pragma: no cover - the object holds the name twice


def _same_name(token: str, name: str) -> bool:
    return (json.loads(token, strict=False) if "\\" in token else token[1:-1]) == name


def _depth(value: Any) -> int:
    """Levels of lists and objects, counted without recursion; stops just past the limit."""
    level, depth = [value], 0
    while level and depth <= MAX_DEPTH:
        depth += 1
        below: list[Any] = []
        for item in level:
            if isinstance(item, dict):
                below.extend(item.values())
            elif isinstance(item, list):
                below.extend(item)
        level = below
    return depth


def _syntax_in_words(message: str) -> str:
    for start, words in _SYNTAX:
        if message.startswith(start):
            return words
    return message[:1].lower() + message[1:]
