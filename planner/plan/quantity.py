"""Kinds of number: how each is read, shown, stepped and bounded.

Bounds and units are those of the plan's own field types, so that they stand in one place.
Lengths follow the unit chosen for display; a refusal carries them so that they can be
shown in any (``units.said_length``).
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Any, Final, Self, get_args

from pydantic import BaseModel

from planner.plan import fields
from planner.units import (
    LengthUnit,
    format_length,
    format_number,
    in_unit,
    parse_length,
    parse_number,
    said_length,
)


@dataclass(frozen=True)
class Quantity:
    """A kind of number: how it is shown, its step and its bounds.

    The value is what the plan holds; the number shown is ``value / factor`` with
    ``suffix``. Lengths (metres) ignore both and follow the unit chosen for display.
    ``above`` says that the lower bound itself is too low. What sets a bound, where that is
    not plain, stands behind it in words.
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

    def text(self, value: float, unit: LengthUnit | None, *, fractions: bool = False) -> str:
        """The value with its unit; a length without one is said so that any can be put in."""
        if self.is_length:
            if unit is None:
                return said_length(value)
            return format_length(value, unit, fractions=fractions)
        number = format_number(value / self.factor, self.decimals)
        gap = "" if self.suffix == "°" else " "
        return f"{number}{gap}{self.suffix}" if self.suffix else number

    def read(self, text: str, unit: LengthUnit) -> float:
        """Read what was typed, whatever the bounds; raises ``ValueError`` where it is no number."""
        if self.is_length:
            return parse_length(text, unit)
        number = text.strip().removesuffix(self.suffix).strip()
        try:
            return parse_number(number) * self.factor
        except ValueError as error:
            if getattr(error, "readings", ()):
                raise
            example = self.text(max(self.step, 0.0 if math.isinf(self.minimum) else 1.0), unit)
            raise ValueError(
                f"'{text.strip()}' is not a number; write for example {example}."
            ) from None

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
    "µmol/s": Quantity("µmol/s", step=5.0),
    "W": Quantity("W"),
    "h": Quantity("h", decimals=2, step=0.5),
    "min": Quantity("min", decimals=0, step=5.0),
    "weeks": Quantity("weeks", step=0.5),
    "µmol/m²/s": Quantity("µmol/m²/s", decimals=0, step=10.0),
    "mol/m²/d": Quantity("mol/m²/d", step=0.5),
    "currency": Quantity("", decimals=2, step=0.01),
    "months": Quantity("months", decimals=0, step=1),
    "": Quantity("", decimals=0),
}
"""How numbers of a unit of the plan are shown and stepped."""


def quantity(kind: Any, **shown: Any) -> Quantity:
    """The quantity of a field type of the plan (``fields.Height``), its bounds included.

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


POSITION: Final = quantity(fields.Coordinate)
EXTENT: Final = quantity(fields.Extent)
SPACE_HEIGHT: Final = quantity(fields.SpaceHeight)
HEIGHT: Final = quantity(fields.Height)
HANGING_HEIGHT: Final = quantity(fields.HangingHeight)
BODY_LENGTH: Final = quantity(fields.BodyLength)
ANGLE: Final = quantity(fields.AngleDeg)
PERCENT: Final = quantity(fields.Percent)
SHARE: Final = quantity(fields.Fraction)
PHOTON_FLUX: Final = quantity(fields.PhotonFlux)
WATTS: Final = quantity(fields.Watts)
HOURS: Final = quantity(fields.Hours)
PPFD: Final = quantity(fields.Ppfd)
DLI: Final = quantity(fields.Dli)
BEAM_ANGLE: Final = quantity(fields.BeamAngle)
WRINKLE: Final = quantity(fields.Fraction, suffix="", decimals=2, step=0.05, factor=1.0)
COUNT: Final = quantity(int).within(1.0, 24.0)
