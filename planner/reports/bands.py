"""Where the 95 % band of a figure comes from, in words."""

from __future__ import annotations

from typing import Final

from planner.estimate.uncertainty import Part, Uncertainty
from planner.metrics.figures import banded
from planner.units import COVERAGE

NAMED: Final = 4
"""How many causes are told by name; the rest are counted."""

LEFT_OUT: Final = "Dirt, leaves that leave gaps and lamps that age are not in it."


def causes(uncertainty: Uncertainty, figure: str, scale: float = 1.0) -> str:
    """Where the band of ``mean`` or ``minimum`` comes from, the weightiest cause first.

    ``scale`` turns µmol m⁻² s⁻¹ into the unit of the figure. Empty without any cause.
    """
    weights = [(_weight(part, figure) * scale, part.label) for part in uncertainty.parts]
    weights = sorted((w for w in weights if w[0] > 0), key=lambda weight: -weight[0])
    if not weights:
        return ""
    told = [f"{label} (± {_two_digits(COVERAGE * weight)})" for weight, label in weights[:NAMED]]
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
