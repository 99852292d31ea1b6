"""How a figure is written with its 95 % band, so that nobody reads digits that are not there.

The half-width keeps two significant digits and the value is rounded to the same place
(JCGM 100:2008, 7.2.6): 173 ± 30, 1520 ± 100, 10.0 ± 1.7.
"""

from __future__ import annotations

import math
from typing import Final

from planner.estimate.uncertainty import COVERAGE, Part, Uncertainty
from planner.units import format_number

NAMED: Final = 4
"""How many causes are told by name; the rest are counted."""

LEFT_OUT: Final = "Dirt, leaves that leave gaps and lamps that age are not in it."


def banded(value: float, half: float, most_decimals: int = 6) -> tuple[str, str]:
    """A value and its half-width as texts, both rounded to the same place.

    ``most_decimals`` is what the value would show without a band; the half-width is then
    at least one unit of the last place.
    """
    if not (half > 0 and math.isfinite(half) and math.isfinite(value)):
        return format_number(value, max(most_decimals, 0)), ""
    decimals = 1 - math.floor(math.log10(half))
    # 9.96 is 10 with two digits, not 10.0.
    decimals = min(1 - math.floor(math.log10(round(half, decimals))), most_decimals)
    width = max(round(half, decimals), 10.0**-decimals)
    return _fixed(value, decimals), _fixed(width, decimals)


def _fixed(value: float, decimals: int) -> str:
    """A number with exactly so many decimals, or rounded to tens and hundreds."""
    return f"{round(value, decimals):.{max(decimals, 0)}f}"


def half_width(standard: float) -> float:
    """Half of the 95 % band that belongs to one standard uncertainty."""
    return COVERAGE * standard


def causes(uncertainty: Uncertainty, figure: str, scale: float = 1.0) -> str:
    """Where the band of ``mean`` or ``minimum`` comes from, the weightiest cause first.

    ``scale`` turns µmol m⁻² s⁻¹ into the unit of the figure. Empty without any cause.
    """
    weights = [(_weight(part, figure) * scale, part.label) for part in uncertainty.parts]
    weights = sorted((w for w in weights if w[0] > 0), key=lambda weight: -weight[0])
    if not weights:
        return ""
    told = [f"{label} (± {_two_digits(half_width(weight))})" for weight, label in weights[:NAMED]]
    more = len(weights) - NAMED
    if more > 0:
        told.append(f"{more} smaller one{'' if more == 1 else 's'}")
    return (
        f" The ± covers 95 % of what the inputs leave open: {', '.join(told)}; "
        f"their squares add up. {LEFT_OUT}"
    )


def _weight(part: Part, figure: str) -> float:
    return part.minimum if figure == "minimum" else part.mean


def _two_digits(value: float) -> str:
    return banded(0.0, value)[1].rstrip("0").rstrip(".") if value < 1 else banded(0.0, value)[1]
