"""Units: what the program computes in, and how lengths are read and written.

Everything inside is SI with the photon in micromoles: lengths in metres, PPFD in
µmol m⁻² s⁻¹, photon flux in µmol s⁻¹, angles in radians unless a name ends in ``_deg``.
Centimetres and inches exist only at the edge: in text a person types or reads.
"""

from __future__ import annotations

import math
import re
from enum import StrEnum
from typing import Final

METRES_PER_INCH: Final = 0.0254
"""Exact by definition (international yard and pound agreement, 1959)."""

METRES_PER_FOOT: Final = 12 * METRES_PER_INCH

SECONDS_PER_HOUR: Final = 3600.0

MICROMOLES_PER_MOLE: Final = 1.0e6


class LengthUnit(StrEnum):
    """The two units lengths are shown in; a plan never knows which is chosen."""

    CM = "cm"
    INCH = "in"

    @property
    def metres(self) -> float:
        """Length of one unit in metres."""
        return 0.01 if self is LengthUnit.CM else METRES_PER_INCH

    @property
    def decimals(self) -> int:
        """Digits after the point that a tape can resolve (1 mm, 0.01 in)."""
        return 1 if self is LengthUnit.CM else 2

    @property
    def snap(self) -> float:
        """Step of dragging and of arrow keys, in metres: 1 cm or half an inch."""
        return 0.01 if self is LengthUnit.CM else METRES_PER_INCH / 2


_METRES_PER: Final = {
    "m": 1.0,
    "cm": 0.01,
    "mm": 0.001,
    "in": METRES_PER_INCH,
    '"': METRES_PER_INCH,
    "″": METRES_PER_INCH,
    "ft": METRES_PER_FOOT,
    "'": METRES_PER_FOOT,
    "′": METRES_PER_FOOT,
}

_NUMBER = r"\d+/\d+|\d+(?:\s+\d+/\d+)|\d+(?:[.,]\d+)?|[.,]\d+"
_TERM = re.compile(rf"\s*(?P<number>{_NUMBER})\s*(?P<unit>mm|cm|m|ft|in|\"|″|'|′)?", re.IGNORECASE)


class LengthSyntaxError(ValueError):
    """A text that is not a length; the message says what would be one."""


def _to_number(text: str) -> float:
    # Any kind of space may part whole and fraction; floats, because they overflow to
    # infinity (out of every bound) where whole numbers of many digits raise.
    *whole, last = text.split()
    if "/" not in last:
        return float(last.replace(",", "."))
    numerator, denominator = (float(part) for part in last.split("/"))
    if denominator == 0:
        raise LengthSyntaxError(f"'{text}' divides by zero.")
    value = numerator / denominator + sum(float(part) for part in whole)
    if not math.isfinite(value):
        raise LengthSyntaxError(f"'{text}' is no length anybody can measure.")
    return value


def parse_length(text: str, unit: LengthUnit) -> float:
    """Read a length a person typed and return metres.

    Accepts a decimal point or comma, fractions of an inch (``23 5/8``), a unit (m, cm,
    mm, in, ft, ' and ") and feet with inches (``4' 2"``). A bare number is in ``unit``.

    Raises
    ------
    LengthSyntaxError
        If the text is not a length; the message gives examples of what is.
    """
    stripped = text.strip()
    sign = -1.0 if stripped.startswith(("-", "−")) else 1.0
    rest = stripped.lstrip("+-−").strip()
    total, position, bare = 0.0, 0, 0
    while position < len(rest):
        match = _TERM.match(rest, position)
        if match is None:
            break
        unit_text = match["unit"]
        bare += unit_text is None
        factor = unit.metres if unit_text is None else _METRES_PER[unit_text.lower()]
        total += _to_number(match["number"]) * factor
        position = match.end()
        while position < len(rest) and rest[position].isspace():
            position += 1
    terms_left = position < len(rest)
    if not rest or terms_left or (bare and not re.fullmatch(_NUMBER, rest)):
        raise LengthSyntaxError(
            f"'{text}' is not a length; write for example 59,5 cm, 0.6 m or 23 5/8 in."
        )
    return sign * total


def format_number(value: float, decimals: int) -> str:
    """Fixed-point text without trailing zeros and never ``-0``."""
    text = f"{value:.{decimals}f}"
    if "." in text:
        text = text.rstrip("0").rstrip(".")
    return "0" if text in {"-0", ""} else text


def format_length(metres: float, unit: LengthUnit, *, with_unit: bool = True) -> str:
    """Length in the unit asked, to what a tape resolves: ``59.5 cm``, ``23.62 in``."""
    text = format_number(metres / unit.metres, unit.decimals)
    return f"{text} {unit.value}" if with_unit else text
