"""Photosynthetic quantities (terms of ANSI/ASABE S640)."""

from __future__ import annotations

from planner.units import MICROMOLES_PER_MOLE, SECONDS_PER_HOUR


def daily_light_integral(ppfd: float, hours: float) -> float:
    """DLI in mol m⁻² d⁻¹ of a constant PPFD (µmol m⁻² s⁻¹) over a photoperiod in hours."""
    return ppfd * hours * SECONDS_PER_HOUR / MICROMOLES_PER_MOLE
