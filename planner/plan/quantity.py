"""The kinds of number a plan holds, each with its unit and bounds.

The unit goes into the published JSON Schema; the bounds are what a small grow space can
be, with room to spare, so that a slip of the hand (60 m for 60 cm) is caught.
"""

from __future__ import annotations

import math
import re
from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Annotated, Any, Final, Self, get_args

from pydantic import BaseModel, ConfigDict, Field

from planner.language import word
from planner.units import (
    DLI_UNIT,
    FLUX_UNIT,
    MARKS,
    PPFD_UNIT,
    LengthUnit,
    format_length,
    format_number,
    in_unit,
    parse_length,
    parse_number,
    said_length,
    same_unit,
    unmistakable,
)

_NUMBER: Final = re.compile(r"\s*[+\-−]?[\d.,]+")


class Value(BaseModel):
    """An immutable part of a plan: unknown fields, NaN and infinity are refused."""

    model_config = ConfigDict(frozen=True, extra="forbid", allow_inf_nan=False)


MAX_EXTENT_M = 10.0
MAX_CORNERS = 40
MAX_LININGS = 500
MAX_LAMPS = 24
MAX_OBSTACLES = 24
MAX_BANDS = 6

Coordinate = Annotated[
    float, Field(ge=-MAX_EXTENT_M, le=MAX_EXTENT_M, json_schema_extra={"unit": "m"})
]
Extent = Annotated[float, Field(ge=0.01, le=2 * MAX_EXTENT_M, json_schema_extra={"unit": "m"})]
SpaceHeight = Annotated[float, Field(ge=0.1, le=5.0, json_schema_extra={"unit": "m"})]
Height = Annotated[float, Field(ge=0.0, le=5.0, json_schema_extra={"unit": "m"})]
HangingHeight = Annotated[float, Field(ge=0.01, le=5.0, json_schema_extra={"unit": "m"})]
BodyLength = Annotated[float, Field(ge=0.005, le=3.0, json_schema_extra={"unit": "m"})]
AngleDeg = Annotated[float, Field(ge=-360.0, le=360.0, json_schema_extra={"unit": "deg"})]
TiltDeg = Annotated[float, Field(ge=-45.0, le=45.0, json_schema_extra={"unit": "deg"})]
BeamAngle = Annotated[float, Field(ge=10.0, le=179.0, json_schema_extra={"unit": "deg"})]
BeamDoubt = Annotated[float, Field(ge=0.0, le=60.0, json_schema_extra={"unit": "deg"})]
Percent = Annotated[float, Field(ge=0.0, le=100.0, json_schema_extra={"unit": "%"})]
PhotonFlux = Annotated[float, Field(gt=0.0, le=20000.0, json_schema_extra={"unit": FLUX_UNIT})]
Watts = Annotated[float, Field(gt=0.0, le=10000.0, json_schema_extra={"unit": "W"})]
Fraction = Annotated[float, Field(ge=0.0, le=1.0, json_schema_extra={"unit": "1"})]
MOST_LAMP_HOURS: Final = 500_000.0
LampHours = Annotated[
    float, Field(ge=0.0, le=MOST_LAMP_HOURS, json_schema_extra={"unit": "lamp hours"})
]
Hours = Annotated[float, Field(ge=0.0, le=24.0, json_schema_extra={"unit": "h"})]
LARGEST_PPFD: Final = 5000.0
"""More than twice full sun (about 2000)."""
Ppfd = Annotated[float, Field(ge=0.0, le=LARGEST_PPFD, json_schema_extra={"unit": PPFD_UNIT})]
Dli = Annotated[float, Field(ge=0.0, le=100.0, json_schema_extra={"unit": DLI_UNIT})]
Name = Annotated[str, Field(min_length=1, max_length=120)]
Key = Annotated[str, Field(min_length=1, max_length=64, pattern=r"^[a-z0-9][a-z0-9_-]*$")]
Text = Annotated[str, Field(max_length=4000)]


# -- how each is read, shown, stepped and bounded --------------------------------------
# Bounds and units are those of the plan's own field types, so that they stand in one place.
# Lengths follow the unit chosen for display; a refusal carries them so that they can be
# shown in any (``units.said_length``).


@dataclass(frozen=True)
class Quantity:
    """A kind of number: how it is shown, its step and its bounds.

    The value is what the plan holds; the number shown is ``value / factor`` with
    ``suffix``. Lengths (metres) ignore both and follow the unit chosen for display.
    ``above`` says that the lower bound itself is too low. What sets a bound, where that is
    not plain, stands behind it in words. A number in lx of daylight is read too where ``lux``
    says how many of them are one.
    """

    suffix: str = ""
    decimals: int = 1
    step: float = 1.0
    factor: float = 1.0
    minimum: float = -math.inf
    maximum: float = math.inf
    is_length: bool = False
    above: bool = False
    why_least: str = ""
    why_most: str = ""
    lux: float = 0.0

    @property
    def is_count(self) -> bool:
        """Whether it counts things: whole numbers without a unit."""
        return self.decimals == 0 and not (self.suffix or self.is_length)

    def within(self, minimum: float, maximum: float) -> Quantity:
        """The same quantity with other bounds."""
        return replace(self, minimum=minimum, maximum=maximum, above=False)

    def at_least(self, minimum: float, why: str = "") -> Self:
        """With a lower bound, where that is higher than the one there is."""
        if minimum <= self.minimum:
            return self
        return replace(self, minimum=minimum, above=False, why_least=why)

    def at_most(self, maximum: float, why: str = "") -> Self:
        """With an upper bound, where that is lower than the one there is."""
        return self if maximum >= self.maximum else replace(self, maximum=maximum, why_most=why)

    def step_in(self, unit: LengthUnit) -> float:
        """What one press of an arrow key adds."""
        return unit.snap if self.is_length else self.step

    def unit_in(self, unit: LengthUnit) -> str:
        """The unit people read behind the number, or in the heading over it."""
        return unit.value if self.is_length else self.suffix

    def shown(self, value: float, unit: LengthUnit) -> float:
        """The number people read of a value of the plan."""
        return value / (unit.metres if self.is_length else self.factor)

    def text(self, value: float, unit: LengthUnit | None, *, fractions: bool = False) -> str:
        """The value with its unit; a length without one is said so that any can be put in."""
        if self.is_length:
            if unit is None:
                return said_length(value)
            return format_length(value, unit, fractions=fractions)
        number = unmistakable(format_number(value / self.factor, self.decimals))
        gap = "" if self.suffix == "°" else " "
        return f"{number}{gap}{self.suffix}" if self.suffix else number

    def span_text(self, low: float, high: float, unit: LengthUnit) -> str:
        """Two values with their unit once: '36 to 130 cm'; one where they read alike."""
        first, last = self.text(low, unit), self.text(high, unit)
        if first == last:
            return first
        return f"{first.removesuffix(self.unit_in(unit)).strip()} to {last}"

    def read(self, text: str, unit: LengthUnit) -> float:
        """Read what was typed, whatever the bounds; raises ``ValueError`` where it is no number."""
        if self.is_length:
            return parse_length(text, unit)
        text = text.translate(MARKS)
        if (lux := self._lux(text)) is not None:
            return lux / self.lux
        number = _NUMBER.match(text)
        named = number is not None and same_unit(text[number.end() :], self.suffix)
        try:
            return parse_number(number[0] if number and named else text) * self.factor
        except ValueError as error:
            if getattr(error, "readings", ()):
                raise
            example = self.text(max(self.step, 0.0 if math.isinf(self.minimum) else 1.0), unit)
            raise ValueError(
                f"'{text.strip()}' is not a number; write for example {example}."
            ) from None

    def _lux(self, text: str) -> float | None:
        number = _NUMBER.match(text)
        typed = self.lux and number and text[number.end() :].strip().lower() in {"lx", "lux"}
        return parse_number(number[0]) if number and typed else None

    def read_as(self, text: str) -> str:
        """How a number typed in another unit was read, in a sentence; '' where it was not."""
        lux = self._lux(text.translate(MARKS))
        if lux is None:
            return ""
        return (
            f"{lux:g} lx were read as {lux / self.lux:.3g} {PPFD_UNIT}: daylight (CIE D65) has "
            f"{self.lux:g} lx for 1, white LED lamps 53 to 73."
        )

    def parse(self, text: str, unit: LengthUnit, words: str = "") -> float:
        """Read what was typed.

        Raises
        ------
        ValueError
            If it is not a number of this kind, or lies outside the bounds.
        """
        return self.checked(self.read(text, unit), words)

    def checked(self, value: float, words: str = "") -> float:
        """The value itself; refused outside the bounds.

        What cannot be told from a bound as it is shown is taken as the bound: 23.23 in
        is what 59 cm look like.
        """
        near = 0.5 * (0.001 if self.is_length else self.factor * 10.0**-self.decimals)
        low, high = value < self.minimum - near, value > self.maximum + near
        if self.above and value <= self.minimum:
            low = True
        if not (low or high):
            return min(max(value, self.minimum), self.maximum)
        given = self.text(value, None)
        given = "" if given == self.text(self.minimum if low else self.maximum, None) else given
        lead = f"{words}: must be" if words else "must be"
        not_this = f", not {given}" if given else ""
        raise ValueError(f"{lead} {self.limit_text(least=low, but=not_this)}.")

    def limit_text(self, *, least: bool, but: str = "") -> str:
        """One of the bounds with what sets it, in words."""
        why = self.why_least if least else self.why_most
        return f"{self.bound_text(least=least)}{but}" + (f" ({why})" if why else "")

    def bound_text(self, *, least: bool) -> str:
        """One of the bounds in words, its length in any unit."""
        if least:
            return f"{'above' if self.above else 'at least'} {self.text(self.minimum, None)}"
        return f"at most {self.text(self.maximum, None)}"

    def range_text(self, unit: LengthUnit) -> str:
        """What would be right, in a sentence."""
        low, high = not math.isinf(self.minimum), not math.isinf(self.maximum)
        if low and high and not self.above:
            words = f"from {self.text(self.minimum, None)} to {self.text(self.maximum, None)}"
        else:
            ends = [
                self.bound_text(least=least)
                for least, is_there in ((True, low), (False, high))
                if is_there
            ]
            words = " and ".join(ends)
        return in_unit(f"Write a value {words}." if words else "Write a number.", unit)


_KINDS: Final[Mapping[str, Quantity]] = {
    "m": Quantity(is_length=True),
    "%": Quantity("%", step=5.0),
    "1": Quantity("%", step=0.01, factor=0.01),
    "deg": Quantity("°", step=5.0),
    FLUX_UNIT: Quantity(FLUX_UNIT, step=5.0),
    "W": Quantity("W"),
    "h": Quantity("h", decimals=2, step=0.5),
    "lamp hours": Quantity("h", decimals=0, step=500.0),
    "min": Quantity("min", decimals=0, step=5.0),
    "weeks": Quantity(word("weeks"), step=0.5),
    PPFD_UNIT: Quantity(PPFD_UNIT, decimals=0, step=10.0),
    DLI_UNIT: Quantity(DLI_UNIT, step=0.5),
    "currency": Quantity("", decimals=2, step=0.01),
    "months": Quantity(word("months"), decimals=0, step=1),
    "": Quantity("", decimals=0),
}
"""How numbers of a unit of the plan are shown and stepped."""


def quantity(kind: Any, **shown: Any) -> Quantity:
    """The quantity of a field type of the plan (``Height``), its bounds included.

    ``shown`` replaces what goes without saying for its unit (step, decimals, ...).
    """
    unit, rules = _unit_and_rules(kind)
    found = _KINDS[unit]
    for rule in rules:
        low = getattr(rule, "ge", getattr(rule, "gt", None))
        high = getattr(rule, "le", getattr(rule, "lt", None))
        if low is not None:
            found = replace(found, minimum=float(low), above=hasattr(rule, "gt"))
        if high is not None:
            found = replace(found, maximum=float(high))
    return replace(found, **shown)


def quantity_of(model: type[BaseModel], field: str, **shown: Any) -> Quantity:
    """The quantity of a field of one of the plan's models."""
    return quantity(model.model_fields[field], **shown)


def _unit_and_rules(kind: Any) -> tuple[str, list[Any]]:
    """Unit and bounds of an annotation, also where null is allowed beside the number."""
    extra = getattr(kind, "json_schema_extra", None)
    rules = list(getattr(kind, "metadata", ()))
    unit = extra.get("unit", "") if isinstance(extra, Mapping) else ""
    inner = [getattr(kind, "annotation", None), *get_args(kind)]
    for part in inner:
        if part is None or part in {float, int, type(None)}:
            continue
        more, found = _unit_and_rules(part)
        unit, rules = unit or more, [*rules, *found]
    return unit, rules


POSITION: Final = quantity(Coordinate)
EXTENT: Final = quantity(Extent)
SPACE_HEIGHT: Final = quantity(SpaceHeight)
HEIGHT: Final = quantity(Height)
HANGING_HEIGHT: Final = quantity(HangingHeight)
PERCENT: Final = quantity(Percent)
SHARE: Final = quantity(Fraction)
PHOTON_FLUX: Final = quantity(PhotonFlux)
WATTS: Final = quantity(Watts)
HOURS: Final = quantity(Hours)
PPFD: Final = quantity(Ppfd)
DLI: Final = quantity(Dli)
BEAM_ANGLE: Final = quantity(BeamAngle)
BEAM_DOUBT: Final = quantity(BeamDoubt)
WRINKLE: Final = quantity(Fraction, suffix="", decimals=2, step=0.05, factor=1.0)
COUNT: Final = quantity(int).within(1.0, 24.0)


def beyond_sun(said: str, value: float) -> str:
    """What is wrong with a PPFD above ``LARGEST_PPFD``, as the beginning of a sentence."""
    return f"{said} means {value:.0f} {PPFD_UNIT}, more than twice full sun"
