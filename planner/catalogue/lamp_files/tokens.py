"""Reading text and numbers of a lamp file, with the line number kept for every complaint."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Final

import numpy as np

from planner.catalogue.lamp_files.photometry import (
    MAX_FILE_BYTES,
    MAX_NUMBER,
    FloatArray,
    LampFileError,
)

_NUMBER: Final = re.compile(r"[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d{1,4})?", re.ASCII)
_BETWEEN_COMMAS_OR_BLANKS: Final = re.compile(r"[^,\s]+")
_BETWEEN_BLANKS: Final = re.compile(r"\S+")
_LINE_ENDS: Final = re.compile(r"\r\n|\n|\r")
_SHOWN: Final = 30
_LONGEST_NUMBER: Final = 60
_MOST_LINES: Final = 600_000
# Angles nearer to each other than this are a slip, and would spoil the integration.
_LEAST_STEP_DEG: Final = 0.001
_LEAST_PEAK: Final = 1e-9
_GREATEST_PEAK: Final = 1e10


def decode(data: bytes) -> list[str]:
    """The lines of a file as text: UTF-8, else Latin-1; control characters become spaces.

    Raises ``LampFileError`` for files too large, empty, or not text.
    """
    if len(data) > MAX_FILE_BYTES:
        raise LampFileError(
            f"the file is larger than {MAX_FILE_BYTES // 1_000_000} MB, far too large for a "
            "lamp file"
        )
    if b"\0" in data:
        raise LampFileError("the file is not plain text; an LM-63 or EULUMDAT file is expected")
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError:
        text = data.decode("latin-1")
    if text.count("\n") + text.count("\r") > _MOST_LINES:
        raise LampFileError(f"the file has more than {_MOST_LINES} lines, far too many")
    lines = [_printable(line) for line in _LINE_ENDS.split(text)]
    if not any(lines):
        raise LampFileError("the file is empty; an LM-63 or EULUMDAT file is expected")
    return lines


def _printable(line: str) -> str:
    """Tabs, an end-of-file mark of old systems and whatever else cannot be shown are blanks."""
    if not line.isprintable():
        line = "".join(c if c.isprintable() else " " for c in line)
    return line.rstrip()


def shown(text: str) -> str:
    """A piece of the file as it stands in a sentence: quoted, and cut when long."""
    text = text.strip()
    return f"'{text[:_SHOWN]}…'" if len(text) > _SHOWN else f"'{text}'"


def number(token: str, line: int, what: str, *, decimal_comma: bool = False) -> float:
    """A finite number, or ``LampFileError`` that names line, finding and expectation."""
    plain = token.strip()
    if decimal_comma and plain.count(",") == 1 and "." not in plain:
        plain = plain.replace(",", ".")
    if len(plain) > _LONGEST_NUMBER or not _NUMBER.fullmatch(plain):
        found = shown(token) if token.strip() else "nothing"
        raise LampFileError(f"found {found} where {what} is expected, a number", line)
    value = float(plain)
    if abs(value) > MAX_NUMBER:
        raise LampFileError(
            f"found {shown(token)} for {what}, far beyond anything a lamp can have", line
        )
    return value


def whole(value: float, line: int, what: str, lowest: int, highest: int) -> int:
    """A whole number within bounds, or ``LampFileError``."""
    if value != int(value) or not lowest <= value <= highest:
        raise LampFileError(
            f"found {value:g} for {what}; a whole number from {lowest} to {highest} is expected",
            line,
        )
    return int(value)


class NumberStream:
    """The numbers of a file in order, wherever its line breaks are.

    Parameters
    ----------
    lines
        All lines of the file.
    first
        Index of the line to begin at.
    decimal_comma
        Whether a comma is a decimal mark (EULUMDAT) and not a separator (LM-63).
    """

    def __init__(self, lines: list[str], first: int, *, decimal_comma: bool = False) -> None:
        self._lines, self._decimal_comma = lines, decimal_comma
        self._tokens = self._walk(first)
        self.line = min(first + 1, len(lines))

    def _walk(self, first: int) -> Iterator[tuple[int, str]]:
        # Found one by one: a line of millions of numbers must not become a list of them.
        token = _BETWEEN_BLANKS if self._decimal_comma else _BETWEEN_COMMAS_OR_BLANKS
        for index in range(first, len(self._lines)):
            for match in token.finditer(self._lines[index]):
                yield index + 1, match.group()

    def one(self, what: str) -> float:
        """The next number; ``self.line`` is then its line."""
        try:
            self.line, token = next(self._tokens)
        except StopIteration:
            raise LampFileError(f"the file ends where {what} is expected", self.line) from None
        return number(token, self.line, what, decimal_comma=self._decimal_comma)

    def integer(self, what: str, lowest: int, highest: int) -> int:
        """The next number, which must be whole and within bounds."""
        return whole(self.one(what), self.line, what, lowest, highest)

    def many(self, count: int, what: str) -> FloatArray:
        """The next ``count`` numbers; ``what`` names one of them."""
        values = np.empty(count)
        for index in range(count):
            try:
                self.line, token = next(self._tokens)
            except StopIteration:
                raise LampFileError(
                    f"the file ends after {index} of {count} numbers where {what} is expected",
                    self.line,
                ) from None
            values[index] = number(token, self.line, what, decimal_comma=self._decimal_comma)
        return values

    def angles(self, count: int, what: str, lowest: float, highest: float) -> FloatArray:
        """The next ``count`` numbers, which must rise and lie within bounds [deg]."""
        values = np.empty(count)
        for index in range(count):
            value = self.one(what)
            if not lowest <= value <= highest:
                raise LampFileError(
                    f"found {value:g} for {what}; a value from {lowest:g}° to {highest:g}° is "
                    "expected",
                    self.line,
                )
            if index and value < values[index - 1] + _LEAST_STEP_DEG:
                raise LampFileError(
                    f"found {value:g} for {what} after {values[index - 1]:g}; each angle must be "
                    f"greater than the one before by at least {_LEAST_STEP_DEG:g}°",
                    self.line,
                )
            values[index] = value
        return values

    def rest(self) -> int | None:
        """Line of the next number or word that is left over, None at the end."""
        for line, _token in self._tokens:
            return line
        return None


def clean_intensities(table: FloatArray, line: int, warnings: list[str]) -> FloatArray:
    """Refuse what cannot be light; small negative readings become 0 with a warning."""
    if not np.isfinite(table).all() or table.max() > _GREATEST_PEAK:
        raise LampFileError(
            "candela times multipliers is far beyond anything a lamp can have", line
        )
    if table.max() < _LEAST_PEAK:
        raise LampFileError(
            "the lamp gives no light in any direction; candela values above 0 are expected", line
        )
    if table.min() < -0.01 * table.max():
        raise LampFileError(
            f"a candela value is far below 0 (the least is {table.min():g}); 0 or more is expected",
            line,
        )
    if table.min() < 0:
        warnings.append("Some candela values are a little below 0; they are taken as 0.")
    result: FloatArray = np.maximum(table, 0.0)
    return result
