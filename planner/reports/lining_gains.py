"""Which surface to line first, in words: what ten points more of reflectance would bring."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from planner.metrics.figures import banded

if TYPE_CHECKING:
    from planner.estimate.sensitivity import SurfaceGain
    from planner.plan.place import Place
    from planner.plan.plan import Plan

POINTS: Final = 0.1
"""The step of reflectance that is told: ten points."""

LEAST: Final = 0.05
"""Gains of the mean below this (µmol m⁻² s⁻¹) are not worth a line."""


@dataclass(frozen=True)
class LiningGain:
    """What more reflectance of one surface would bring.

    ``name`` says the place ('Wall 2', 'Wall 4, band 1'); ``points`` the reflectance it can gain, at
    most ten points (0.1); ``mean`` and ``minimum`` what that brings in µmol m⁻² s⁻¹.
    """

    name: str
    place: Place
    points: float
    mean: float
    minimum: float

    @property
    def sentence(self) -> str:
        """Such as 'Wall 2: +10 points of reflectance bring +12 µmol to the mean, ...'."""
        return (
            f"{self.name}: +{self.points * 100:.0f} points of reflectance bring "
            f"{signed(self.mean)} µmol to the mean, {signed(self.minimum)} to the minimum."
        )


def lining_gains(plan: Plan, gains: Sequence[SurfaceGain]) -> tuple[LiningGain, ...]:
    """The surfaces worth a line, the best for the mean first."""
    found = [_told(plan, gain) for gain in gains]
    kept = [gain for gain in found if gain.points >= 0.005 and gain.mean >= LEAST]
    return tuple(sorted(kept, key=lambda gain: -gain.mean))


def _told(plan: Plan, gain: SurfaceGain) -> LiningGain:
    points = min(POINTS, max(1 - gain.reflectance, 0.0))
    return LiningGain(
        name=gain.place.words(plan),
        place=gain.place,
        points=points,
        mean=gain.mean_per_unit * points,
        minimum=gain.minimum_per_unit * points,
    )


def signed(value: float) -> str:
    """A change with its sign, to two figures and at most a tenth: '+12', '−0.4', '+0'."""
    text = banded(0.0, abs(value), 1)[1] if abs(value) >= LEAST else "0"
    if "." in text:
        text = text.rstrip("0").rstrip(".")
    return f"{'−' if value < 0 else '+'}{text}"


def brought_sentence(name: str, mean: float, minimum: float) -> str:
    """What a lining on a surface would bring: 'Foil: +12 µmol to the mean, +8 to the minimum'."""
    return f"{name}: {signed(mean)} µmol to the mean, {signed(minimum)} to the minimum"
