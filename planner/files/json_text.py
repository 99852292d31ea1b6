"""Reading JSON as the standard has it, with a line number for everything that is wrong.

The reader that comes with Python lets NaN, Infinity, numbers beyond all bounds and
repeated names pass; a plan file must not. Python's own reader does the work and only
when it stumbles is the text walked through again, to say where.
"""

from __future__ import annotations

import json
import math
import re
from typing import Any, Final

MAX_DEPTH: Final = 60
"""Deepest nesting accepted; a plan nests eight levels deep."""

_TOKEN: Final = re.compile(r'"(?:\\.|[^"\\])*"|-?\d[\d.eE+-]*|-?Infinity|NaN|[{}\[\]:]', re.DOTALL)

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
    try:
        value = json.loads(
            text,
            parse_constant=_refuse_constant,
            parse_float=_finite,
            parse_int=_sane_int,
            object_pairs_hook=_unique_names,
        )
    except json.JSONDecodeError as error:
        raise JsonTextError(
            f"it is not valid JSON at line {error.lineno}, column {error.colno}: "
            f"{_syntax_in_words(error.msg)}"
        ) from None
    except _RefusedError:
        raise JsonTextError(_locate(text)) from None
    except RecursionError:
        raise JsonTextError("its lists or objects are nested far too deep for a plan") from None
    if _depth(value) > MAX_DEPTH:
        raise JsonTextError("its lists or objects are nested far too deep for a plan")
    return value


class _RefusedError(Exception):
    """Something Python's reader would accept and a plan must not hold."""


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
    raise _RefusedError(token)


def _finite(token: str) -> float:
    value = float(token)
    if not math.isfinite(value):
        raise _RefusedError(token)
    return value


def _sane_int(token: str) -> int:
    if len(token) > 300:
        raise _RefusedError(token)
    return int(token)


def _unique_names(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    found = dict(pairs)
    if len(found) != len(pairs):
        raise _RefusedError
    return found


def _locate(text: str) -> str:
    """The first thing in the text that is refused although Python would accept it."""
    names: list[set[str]] = []
    candidate: tuple[str, int] | None = None
    for match in _TOKEN.finditer(text):
        token, line = match[0], text.count("\n", 0, match.start()) + 1
        if token == "{":
            names.append(set())
        elif token == "[":
            # A list holds no names; the empty set keeps the brackets in step.
            names.append(set())
        elif token in "}]":
            names.pop()
        elif token == ":" and candidate is not None:
            name, at = candidate
            if name in names[-1]:
                return f"the name '{name}' is given twice in one object (line {at}); keep one"
            names[-1].add(name)
        problem = _refused_number(token)
        if problem:
            return f"line {line}: {problem}"
        candidate = (json.loads(token, strict=False), line) if token[0] == '"' else None
    raise AssertionError("nothing refused in a text that was refused")  # pragma: no cover


def _refused_number(token: str) -> str | None:
    if token.lstrip("-") in {"NaN", "Infinity"}:
        return f"{token} is not a number a plan can hold; write an ordinary number"
    if token[0] not in "-0123456789":
        return None
    if not any(mark in token for mark in ".eE"):
        too_long = len(token) > 300
    else:
        too_long = not math.isfinite(float(token))
    if too_long:
        return f"{token[:20]} is beyond all bounds; write an ordinary number"
    return None


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
