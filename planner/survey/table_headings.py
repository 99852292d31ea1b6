"""Headings of a table of readings: what each column is, and the units they name."""

from __future__ import annotations

import re
from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from planner.language import word
from planner.survey.table_cells import (
    Cells,
    TableError,
    quoted,
)
from planner.units import METRES_PER_FOOT, METRES_PER_INCH, PPFD_UNIT


class Role(StrEnum):
    """What a column of a table holds."""

    X = "x"
    Y = "y"
    HOLE = "hole"
    TIME = "time"
    VALUE = "value"
    PASSED = "passed over"


class TableLength(StrEnum):
    """Units of length in tables."""

    MM = "mm"
    CM = "cm"
    M = "m"
    INCH = "in"
    FOOT = "ft"

    @property
    def metres(self) -> float:
        """Length of one unit in metres."""
        return {"mm": 0.001, "cm": 0.01, "m": 1.0, "in": METRES_PER_INCH, "ft": METRES_PER_FOOT}[
            self.value
        ]


class TableLight(StrEnum):
    """Units of light in tables."""

    PPFD = PPFD_UNIT
    LUX = "lux"
    KILOLUX = "klx"
    FOOT_CANDLE = "fc"
    WATT = "W/m²"

    @property
    def lux(self) -> float | None:
        """Lux of one unit; None for what is no illuminance."""
        return {"lux": 1.0, "klx": 1000.0, "fc": 1.0 / METRES_PER_FOOT**2}.get(self.value)


@dataclass(frozen=True)
class Heading:
    """Heading rows of a table: how many rows in all, a role and a name for each column."""

    rows: int
    roles: tuple[Role, ...]
    names: tuple[str, ...]
    text: str


_MISSING: Final = {"", "-", "–", "—", "--", "n/a", "na", "nan", "n.a.", "null", "none", "."}
_SUMMARY: Final = re.compile(
    r"(?:the )?(mean|average|avg|sum|total|min|max|minimum|maximum|std|sd|stdev|median|mittel"
    r"|mittelwert|summe)\b",
    re.IGNORECASE,
)
_LIGHT: Final = {
    TableLight.WATT: re.compile(
        r"\b[mµμu]?W\s*(?:/|·|\*|\s)\s*c?m\b|\b[mµμu]?W\s*(?:/|·|\*|\s)\s*c?m(?:²|\^?-?2|⁻²)"
        r"|\birradiance\b",
        re.IGNORECASE,
    ),
    TableLight.KILOLUX: re.compile(r"\b(?:k|kilo)[ -]?lu?x\b", re.IGNORECASE),
    TableLight.FOOT_CANDLE: re.compile(
        r"\bf(?:oo)?t?[ .-]?c(?:andles?)?\b|\blm\s*/\s*ft", re.IGNORECASE
    ),
    TableLight.LUX: re.compile(r"\b(?:lux|lx)\b|\blm\s*/\s*m", re.IGNORECASE),
    TableLight.PPFD: re.compile(r"(?:µ|μ|u)mol|micromol|\bppfd\b|\bpar\b", re.IGNORECASE),
}
"""Units of light, the more special first: 'klx' must not be read for its lx."""

_BESIDE: Final = re.compile(
    r"\b(?:errors?|uncertainty|deviation|std|sd|temp(?:erature)?|battery|time|date|humidity|rh"
    r"|co2|area)\b|±",
    re.IGNORECASE,
)
_TIME: Final = re.compile(r"^(?:time|clock|uhrzeit|zeit|heure|hora)$|\btime$", re.IGNORECASE)
NEAR: Final = re.compile(r"\b(?:near|front|bottom)\b", re.IGNORECASE)
FAR: Final = re.compile(r"\b(?:far|back|rear|top)\b", re.IGNORECASE)
RIGHT: Final = re.compile(r"\bright\b", re.IGNORECASE)
LEFT: Final = re.compile(r"\bleft\b", re.IGNORECASE)
_LENGTH: Final = {
    TableLength.MM: re.compile(r"(?:[\[(/,]|\bin)\s*mm\b|\bmm\b|millimet", re.IGNORECASE),
    TableLength.CM: re.compile(r"\bcm\b|centimet", re.IGNORECASE),
    TableLength.INCH: re.compile(
        r"[\[(/,]\s*in\b|\binch(?:es)?\b|\bin\.|[\[(/]\s*[\"″]|\b[xy] in\b|\bin$"
    ),
    TableLength.FOOT: re.compile(r"[\[(/,]\s*ft\b|\bf(?:ee|oo)t\b|\b[xy] ft\b", re.IGNORECASE),
    TableLength.M: re.compile(r"[\[(/,]\s*m\s*(?:[\])]|$|\s)|\bmet(?:er|re)s?\b|\b[xy] m\b"),
}
_VALUE_WORDS: Final = re.compile(
    r"\b(?:ppfd|par|lux|lx|readings?|values?|light|wert|werte|messwert|messung|measured"
    r"|measurements?|intensity|meter|again|repeat(?:ed)?|lecture|valeur|lectura|valor)\b|(?:µ|μ|u)mol|micromol",
    re.IGNORECASE,
)
_HOLE_WORDS: Final = re.compile(
    r"^(?:#|n°|№)$|\b(?:hole|holes|no|nr|number|point|points|pt|position|pos|index|id|loch"
    r"|punkt|messpunkt|spot)\b",
    re.IGNORECASE,
)
_X_WORDS: Final = re.compile(r"(?:^|[^a-z])x(?:$|[^a-z])|^x[_ ]|\bacross\b", re.IGNORECASE)
_Y_WORDS: Final = re.compile(r"(?:^|[^a-z])y(?:$|[^a-z])|^y[_ ]", re.IGNORECASE)
_MOST_ROWS: Final = 30
_LONGEST_NAME: Final = 60
_PLACES_AND_VALUES: Final = {Role.X, Role.Y, Role.HOLE, Role.VALUE}


def is_missing(text: str) -> bool:
    """Whether a cell says that there is no value."""
    return text.strip().lower() in _MISSING


def is_summary(text: str) -> bool:
    """Whether a cell names a row or column of means, sums or extremes."""
    return _SUMMARY.match(text.strip()) is not None


def light_unit_in(text: str) -> TableLight | None:
    """The unit of light a text names."""
    spelt = text.replace("_", " ")
    return next((unit for unit, pattern in _LIGHT.items() if pattern.search(spelt)), None)


def length_unit_in(text: str) -> TableLength | None:
    """The unit of length a text names, not mistaking the m² of PPFD for metres."""
    text = text.replace("_", " ")
    without = re.sub(r"(?:/|·|\s|\*)\s*\(?m\s*(?:²|\^?-?2|⁻²)[^ ;,\]]*", " ", text)
    without = re.sub(r"mol\S*(?:\s+m\S*)?(?:\s+s\S*)?", " ", without)
    # The smaller units first: 'cm' must not be read for its m.
    return next((unit for unit, pattern in _LENGTH.items() if pattern.search(without)), None)


def _role(name: str) -> Role:
    bare = re.sub(r"[\[(].*?[\])]", " ", name).replace("_", " ").strip() or name
    if is_summary(bare):
        return Role.PASSED
    if _X_WORDS.search(bare):
        return Role.X
    if _Y_WORDS.search(bare):
        return Role.Y
    if _TIME.search(bare):
        return Role.TIME
    if _BESIDE.search(bare):
        return Role.PASSED
    if _VALUE_WORDS.search(name.replace("_", " ")) or light_unit_in(name):
        return Role.VALUE
    return Role.HOLE if _HOLE_WORDS.search(bare) else Role.PASSED


def read_headings(cells: Cells) -> Heading | None:
    """The headings of a table, or None where no row of headings names columns.

    Headings may take two rows of which the upper is merged over several columns.

    Raises
    ------
    TableError
        If headings name places but no readings, or one of x and y only.
    """
    best: tuple[int, list[str]] | None = None
    for row in range(min(len(cells.rows), _MOST_ROWS)):
        names = [cells.at(row, k) for k in range(cells.width)]
        told = {_role(name) for name in names if name}
        wanted = {Role.VALUE} if cells.width == 1 else _PLACES_AND_VALUES
        filled = [name for name in names if name]
        if len(filled) >= min(2, cells.width) and told & wanted and _mostly_words(filled):
            best = row, names
            if len(told - {Role.PASSED}) >= 2 or cells.width == 1:
                break
    if best is None:
        return None
    row, names = best
    names, row = _with_second_row(cells, row, names)
    roles = [_role(name) if name else Role.PASSED for name in names]
    told = set(roles)
    if told & {Role.X, Role.Y} == {Role.X, Role.Y} and Role.VALUE not in told:
        rest = [k for k, role in enumerate(roles) if role is Role.PASSED and names[k]]
        rest = [k for k in rest if not is_summary(names[k])]
        if len(rest) == 1:
            roles[rest[0]] = Role.VALUE
    return _checked(cells, row, roles, names)


def _mostly_words(filled: list[str]) -> bool:
    words = [name for name in filled if re.search(r"[^\W\d_]|[#№]", name)]
    return len(words) * 2 > len(filled) and max(map(len, filled)) <= _LONGEST_NAME


def _with_second_row(cells: Cells, row: int, names: list[str]) -> tuple[list[str], int]:
    """Join a heading with the heading row below it, the upper one spread over merged cells."""
    if row + 1 >= len(cells.rows):
        return names, row
    below = [cells.at(row + 1, k) for k in range(cells.width)]
    if not _names_columns(below):
        return names, row
    spread: list[str] = []
    for name in names:
        spread.append(name or (spread[-1] if spread else ""))
    # What the lower row says of itself wins; '2' under a merged 'PPFD' is the second PPFD.
    joined = [
        f"{upper} {lower}".strip() if _role(lower) is Role.PASSED else lower
        for upper, lower in zip(spread, below, strict=True)
    ]
    return joined, row + 1


def _names_columns(names: list[str]) -> bool:
    """Whether a row under a heading is heading too: it says what a column is, or its unit."""
    words = [name for name in names if name and not re.match(r"[\d.,+-]*\d", name)]
    return any(_role(word) is not Role.PASSED for word in words)


def _checked(cells: Cells, row: int, roles: list[Role], names: list[str]) -> Heading:
    told = set(roles)
    place = f"row {cells.numbers[row]}"
    if (Role.X in told) != (Role.Y in told):
        found, lacking = ("x", "y") if Role.X in told else ("y", "x")
        raise TableError(f"the headings in {place} name {found} but no {lacking}; give both.")
    for role in (Role.X, Role.Y, Role.HOLE):
        if roles.count(role) > 1:
            where = [quoted(n) for n, r in zip(names, roles, strict=True) if r is role]
            raise TableError(
                f"the headings in {place} name {word(role)} more than once ({', '.join(where)}); "
                "keep one of them."
            )
    if Role.VALUE not in told:
        raise TableError(
            f"the headings in {place} name no readings; call their column PPFD, lux or reading."
        )
    if roles.count(Role.TIME) > 1:
        first = roles.index(Role.TIME)
        roles = [
            r if r is not Role.TIME or k == first else Role.PASSED for k, r in enumerate(roles)
        ]
    if Role.X in told:
        roles = [Role.PASSED if role is Role.HOLE else role for role in roles]
    heading = " ".join(cell for k in range(row + 1) for cell in cells.rows[k])
    return Heading(row + 1, tuple(roles), tuple(names), heading)
