"""What a sweep runs over: dials of the plan by key, with the values asked of each."""

from __future__ import annotations

import math
import re
from dataclasses import dataclass
from typing import Final

from planner.plan.dials import Dial, dial
from planner.units import LengthUnit, parse_length

MAX_POINTS: Final = 20_000


class SweepError(ValueError):
    """A sweep that cannot be run; the message is the sentence to show."""


@dataclass(frozen=True)
class Over:
    """A dial by key and the values asked of it, in SI (output in percent)."""

    axis: str
    values: tuple[float, ...]


def swept(name: str) -> Dial:
    """The dial of a name.

    Raises
    ------
    SweepError
        If there is none; the message lists those there are.
    """
    try:
        return dial(name)
    except ValueError as error:
        raise SweepError(str(error)) from error


# -- reading what was asked -------------------------------------------------------------

_EXAMPLE: Final = "write for example height=0.2:0.6:9 or output=50,75,100"


def parse_over(text: str) -> Over:
    """Read ``height=0.2:0.6:9`` (from, to, how many) or ``output=50,75,100``.

    Lengths are in metres unless they carry a unit (``20cm:60cm:9``).

    Raises
    ------
    SweepError
        If the text says no such thing.
    """
    name, equals, rest = text.partition("=")
    found = swept(name.strip())
    if not equals or not rest.strip():
        raise SweepError(f"'{text}' names no values; {_EXAMPLE}.")
    parts = rest.split(":")
    if len(parts) == 1:
        return Over(found.key, tuple(_number(word, found, text) for word in rest.split(",")))
    if len(parts) != 3 or not re.fullmatch(r"\s*\d{1,5}\s*", parts[2]):
        raise SweepError(f"'{text}' is no range; {_EXAMPLE}.")
    return over_range(
        found.key,
        _number(parts[0], found, text),
        _number(parts[1], found, text),
        int(parts[2]),
    )


def over_range(name: str, low: float, high: float, count: int) -> Over:
    """``count`` values evenly from ``low`` to ``high``, both included."""
    if count < 1 or (count == 1 and low != high):
        raise SweepError(f"A range of '{name}' from {low:g} to {high:g} needs at least two values.")
    if count == 1:
        return Over(name, (low,))
    step = (high - low) / (count - 1)
    return Over(name, tuple(float(f"{low + k * step:.10g}") for k in range(count)))


def _number(word: str, found: Dial, text: str) -> float:
    word = word.strip()
    try:
        if found.quantity.is_length and re.match(r"[\d.,]+\s*[a-df-zA-Z\"'″′]", word):
            return parse_length(word, LengthUnit.CM, strict=False)
        value = float(word)
    except ValueError as error:
        raise SweepError(f"'{word}' in '{text}' is not a number; {_EXAMPLE}.") from error
    if not math.isfinite(value):
        raise SweepError(f"'{word}' in '{text}' is not a finite number; {_EXAMPLE}.")
    return value
