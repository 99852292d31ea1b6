"""Numbers and lengths as they stand in tables."""

from __future__ import annotations

import math
import re
from typing import Final

from planner.units import VULGAR, LengthSyntaxError, LengthUnit, parse_length

LARGEST: Final = 1.0e7
LONGEST_CELL: Final = 40
_SPACES: Final = str.maketrans("", "", " \u00a0\u2009\u202f'’")
_POINT: Final = re.compile(r"[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d{1,2})?")
_COMMA: Final = re.compile(r"[+-]?(?:\d+,?\d*|,\d+)(?:[eE][+-]?\d{1,2})?")
_GROUPED_BY_COMMA: Final = re.compile(r"[+-]?\d{1,3}(?:,\d{3})+(?:\.\d+)?")
_GROUPED_BY_POINT: Final = re.compile(r"[+-]?\d{1,3}(?:\.\d{3})+(?:,\d+)?")
_GROUPED_BY_SPACE: Final = re.compile(r"[+-]?\d{1,3}(?:[ \u00a0\u2009\u202f'’]\d{3})+(?:[.,]\d+)?")
_FRACTION: Final = re.compile(r"[+-]?(?:\d+[\s-]+)?\d+\s*[/⁄]\s*\d+")
_UNIT_AFTER: Final = re.compile(
    r"\s*(µmol|μmol|umol|ppfd|lux|lx)\s*(?:/?\s*\(?m.{0,12})?$", re.IGNORECASE
)


def decimal_mark(texts: list[str]) -> str:
    """The decimal mark of a table: the point unless commas can only be decimal marks.

    A comma followed by other than three digits, or by three after a leading zero, decides;
    so does a point used as in 1.234,5. Where both marks stand in one number the last is
    the decimal mark.
    """
    commas = points = 0
    for text in texts:
        bare = text.translate(_SPACES)
        if "," in bare and "." in bare:
            if bare.rfind(",") > bare.rfind("."):
                commas += 1
            else:
                points += 1
        elif bare.count(",") == 1 and _COMMA.fullmatch(bare):
            before, after = bare.lstrip("+-").split(",")
            commas += len(after) != 3 or before in {"", "0"}
        elif bare.count(".") == 1 and _POINT.fullmatch(bare):
            before, after = bare.lstrip("+-").split(".")
            points += len(after) != 3 or before in {"", "0"}
    return "," if commas > points else "."


def as_number(text: str, mark: str) -> float | None:
    """The number a cell holds, with this decimal mark, or None when it is no number.

    Thousands may be grouped by spaces, apostrophes or the other mark; a unit of light may
    follow. What is not finite or beyond ten million is no number.
    """
    if len(text) > LONGEST_CELL:
        return None
    stripped = _UNIT_AFTER.sub("", text.strip().replace("−", "-")).strip()
    grouped = _GROUPED_BY_COMMA if mark == "." else _GROUPED_BY_POINT
    if grouped.fullmatch(stripped):
        stripped = stripped.replace("," if mark == "." else ".", "")
    elif _GROUPED_BY_SPACE.fullmatch(stripped):
        stripped = stripped.translate(_SPACES)
    pattern = _POINT if mark == "." else _COMMA
    if not stripped.isascii() or not pattern.fullmatch(stripped):
        return None
    value = float(stripped.replace(",", "."))
    return value if math.isfinite(value) and abs(value) <= LARGEST else None


def as_length(text: str, metres_per_unit: float, mark: str) -> float | None:
    """Metres a cell holds, bare numbers in units of ``metres_per_unit``; None for no length.

    Inches may be written with fractions: 23 5/8, 23-5/8, 5/8, 23⅝, with or without a sign
    for the unit. Another unit may stand behind the number.
    """
    spelt = text.strip().replace("−", "-").replace("⁄", "/")
    if len(spelt) > LONGEST_CELL or not any(sign.isdecimal() or sign in VULGAR for sign in spelt):
        return None
    for sign, fraction in VULGAR.items():
        spelt = spelt.replace(sign, f" {fraction}")
    number = as_number(spelt.strip(), mark)
    if number is not None:
        return number * metres_per_unit
    spelt = re.sub(r"\s*/\s*", "/", spelt.strip())
    spelt = re.sub(r"\binch(?:es)?\b", "in", spelt, flags=re.IGNORECASE)
    if not spelt.replace("″", '"').replace("′", "'").isascii():
        return None
    try:
        metres = parse_length(spelt, LengthUnit.INCH, strict=False)
    except (LengthSyntaxError, OverflowError):
        return None
    return metres if math.isfinite(metres) and abs(metres) <= LARGEST else None


def looks_like_fraction(text: str) -> bool:
    """Whether a cell is written as inches are: with a fraction or an inch sign."""
    stripped = text.strip()
    return (
        bool(_FRACTION.fullmatch(stripped.rstrip('"″').strip()))
        or any(sign in stripped for sign in VULGAR)
        or stripped.endswith(('"', "″"))
    )
