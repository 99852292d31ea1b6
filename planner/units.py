"""Units: what the program computes in, and how lengths are read and written.

Everything inside is SI with the photon in micromoles: lengths in metres, PPFD in
µmol m⁻² s⁻¹, photon flux in µmol s⁻¹, angles in radians unless a name ends in ``_deg``.
Centimetres and inches exist only at the edge: in text a person types or reads.
"""

from __future__ import annotations

import math
import re
from collections.abc import Sequence
from enum import StrEnum
from typing import Final

from planner.language import decimal, trimmed

METRES_PER_INCH: Final = 0.0254
"""Exact by definition (international yard and pound agreement, 1959)."""

METRES_PER_FOOT: Final = 12 * METRES_PER_INCH

SECONDS_PER_HOUR: Final = 3600.0

MICROMOLES_PER_MOLE: Final = 1.0e6

PPFD_UNIT: Final = "µmol m⁻² s⁻¹"
DLI_UNIT: Final = "mol m⁻² d⁻¹"
FLUX_UNIT: Final = "µmol s⁻¹"
EFFICACY_UNIT: Final = "µmol J⁻¹"

COVERAGE: Final = 1.96
"""Standard uncertainties in half a 95 % interval (JCGM 100:2008, table G.1: normal quantity)."""


OF_EVEN: Final = 1 / math.sqrt(3)
"""Standard uncertainty in the half-width of a range told evenly (JCGM 100:2008, 4.3.7)."""


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

VULGAR: Final = {
    "½": "1/2", "⅓": "1/3", "⅔": "2/3", "¼": "1/4", "¾": "3/4",
    "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8",
}  # fmt: skip
"""Fractions that are one sign."""

_NUMBER = r"\d+/\d+|\d+(?:(?:\s+|-)\d+/\d+)|\d+(?:[.,]\d*)?|[.,]\d+"
_TERM = re.compile(rf"\s*(?P<number>{_NUMBER})\s*(?P<unit>mm|cm|m|ft|in|\"|″|'|′)?", re.IGNORECASE)
_PLAIN = re.compile(r"[+\-−]?(\d+([.,]\d*)?|[.,]\d+)")
_TWO_READINGS = re.compile(r"([1-9]\d{0,2})[.,](\d{3})")


MARKS: Final = dict.fromkeys((0x200E, 0x200F, *range(0x2066, 0x206A)))
"""Marks of direction, for ``str.translate``: a text may hold them where the language runs from the
right."""


class LengthSyntaxError(ValueError):
    """A text that is not a length; the message says what would be one."""


class AmbiguousNumberError(ValueError):
    """A number with two readings: one thousand, or one with three decimals."""

    def __init__(self, text: str, readings: tuple[str, str]) -> None:
        super().__init__(
            f"'{text}' can be read as {readings[0]} or as {readings[1]}; write which of the two."
        )
        self.readings = readings


def parse_number(text: str) -> float:
    """Read a number a person typed, with a decimal point or comma.

    Raises
    ------
    AmbiguousNumberError
        If exactly three digits stand behind the one separator, which some write between
        thousands; a leading zero makes it a decimal one.
    ValueError
        If it is no number.
    """
    plain = text.translate(MARKS).strip()
    if not _PLAIN.fullmatch(plain):
        raise ValueError(f"'{text}' is not a number.")
    _refuse_two_readings(plain.lstrip("+-−"))
    return float(plain.replace(",", ".").replace("−", "-"))


def _refuse_two_readings(number: str) -> None:
    match = _TWO_READINGS.fullmatch(number)
    if match is not None:
        whole, three = match.groups()
        small = f"{whole}.{three.rstrip('0')}".rstrip(".")
        small += "0" if three[-1] != "0" else ""
        raise AmbiguousNumberError(number, (small, whole + three))


def unmistakable(number: str) -> str:
    """A decimal number as text that cannot be taken for thousands: ``6.9320`` for ``6.932``."""
    return f"{number}0" if _TWO_READINGS.fullmatch(number.lstrip("+-−")) else number


def _to_number(text: str) -> float:
    # Any kind of space may part whole and fraction; floats, because they overflow to
    # infinity (out of every bound) where whole numbers of many digits raise.
    *whole, last = text.replace("-", " ").split()
    if "/" not in last:
        return float(last.replace(",", "."))
    numerator, denominator = (float(part) for part in last.split("/"))
    if denominator == 0:
        raise LengthSyntaxError(f"'{text}' divides by zero.")
    value = numerator / denominator + sum(float(part) for part in whole)
    if not math.isfinite(value):
        raise LengthSyntaxError(f"'{text}' is no length anybody can measure.")
    return value


_LETTERS: Final = str.maketrans("µμ²³⁻¹−", "uu23-1-")


def same_unit(typed: str, unit: str) -> bool:
    """Whether what stands behind a number names a unit, in whatever letters it is typed.

    'umol/m2/s' is 'µmol m⁻² s⁻¹', and nothing at all is any unit.
    """
    return not typed.strip() or _plain_unit(typed) == _plain_unit(unit)


def _plain_unit(text: str) -> str:
    plain = text.strip().lower().translate(_LETTERS)
    plain = re.sub(r"/\s*([a-z]+)\^?(\d?)", lambda m: f" {m[1]}-{m[2] or 1}", plain)
    return re.sub(r"[\s^·*]+", " ", plain).strip()


def has_fraction(text: str) -> bool:
    """Whether a text is written as tapes in inches are: 23 5/8, 5/8, 23⅝."""
    return "/" in text or "⁄" in text or any(sign in text for sign in VULGAR)


def parse_length(text: str, unit: LengthUnit, *, strict: bool = True) -> float:
    """Read a length a person typed and return metres.

    Accepts a decimal point or comma, fractions of an inch (``23 5/8``, ``23-5/8``,
    ``23⅝``), a unit (m, cm, mm, in, ft, ' and ") and feet with inches (``4' 2"``). A bare
    number is in ``unit``, a bare fraction always in inches. Where it is not ``strict``, as
    in a table, ``1.250`` is no thousand.

    Raises
    ------
    LengthSyntaxError
        If the text is not a length; the message gives examples of what is.
    AmbiguousNumberError
        If a number in it can be read as thousands too.
    """
    stripped = text.translate(MARKS).strip()
    sign = -1.0 if stripped.startswith(("-", "−")) else 1.0
    rest = stripped.lstrip("+-−").strip().replace("⁄", "/")
    for vulgar, fraction in VULGAR.items():
        rest = rest.replace(vulgar, f" {fraction}")
    rest = rest.strip()
    bare_unit = LengthUnit.INCH if "/" in rest else unit
    total, position, bare = 0.0, 0, 0
    while position < len(rest):
        match = _TERM.match(rest, position)
        if match is None:
            break
        if strict:
            _refuse_two_readings(match["number"])
        unit_text = match["unit"]
        bare += unit_text is None
        factor = bare_unit.metres if unit_text is None else _METRES_PER[unit_text.lower()]
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
    """Fixed-point text without trailing zeros and never ``-0``, for people."""
    text = trimmed(decimal(f"{value:.{decimals}f}"))
    return "0" if text in {"-0", ""} else text


def format_length(
    metres: float, unit: LengthUnit, *, with_unit: bool = True, fractions: bool = False
) -> str:
    """Length in the unit asked, to what a tape resolves: ``59.5 cm``, ``23.62 in``.

    With ``fractions`` an inch is divided as on a tape where the length stands on one of
    its lines, down to 1/64: ``23 5/8 in``.
    """
    text = format_number(metres / unit.metres, unit.decimals)
    if fractions and unit is LengthUnit.INCH:
        # What rounds to 0.25 reads as a quarter when it is typed back.
        inches = metres / unit.metres
        text = _on_a_tape(inches) or _on_a_tape(round(inches, unit.decimals)) or text
    return f"{text} {unit.value}" if with_unit else text


def _on_a_tape(inches: float) -> str:
    """The inches as whole and fraction; empty off the lines of a tape."""
    parts = round(abs(inches) * _FINEST)
    if abs(abs(inches) * _FINEST - parts) > 0.02:
        return ""
    whole, rest = divmod(parts, _FINEST)
    shared = math.gcd(rest, _FINEST)
    fraction = f"{rest // shared}/{_FINEST // shared}" if rest else ""
    text = " ".join(part for part in (str(whole) if whole or not rest else "", fraction) if part)
    return f"-{text}" if inches < 0 and parts else text


TAPE_INCH: Final = 16
"""Parts of an inch on the tape."""


def on_tape(metres: float, unit: LengthUnit, *, with_unit: bool = False) -> str:
    """A length as a tape shows it: '24.3', or '9 9/16'."""
    if unit is LengthUnit.INCH:
        part = METRES_PER_INCH / TAPE_INCH
        metres = round(metres / part) * part
    return format_length(metres, unit, with_unit=with_unit, fractions=True)


def by_tape(metres: float, unit: LengthUnit) -> str:
    """A length as a tape shows it, with its unit: '24.3 cm', or '9 9/16 in'."""
    return on_tape(metres, unit, with_unit=True)


_FINEST: Final = 64
_SAID: Final = re.compile(r"(-?\d+(?:[.,]\d+)?)\u00a0cm")


def said_length(metres: float) -> str:
    """A length inside a sentence that may be read in either unit.

    It reads as centimetres as it stands, parted by a no-break space; ``in_unit`` finds it
    by that and puts the reader's own unit in.
    """
    return f"{format_number(metres * 100, 4)}\u00a0cm"


def in_unit(sentence: str, unit: LengthUnit) -> str:
    """A sentence with the lengths ``said_length`` put into it in the unit asked."""
    return _SAID.sub(
        lambda found: format_length(float(found[1].replace(",", ".")) / 100, unit), sentence
    )


def listed(names: Sequence[str]) -> str:
    """Names in a sentence: 'a', 'a and b', 'a, b and c'; at least one."""
    return " and ".join(filter(None, (", ".join(names[:-1]), names[-1])))


def capital(text: str) -> str:
    """A text as a sentence or a title begins."""
    return text[:1].upper() + text[1:]
