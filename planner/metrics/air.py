"""Lamp heat and the air that carries it away."""

from __future__ import annotations

from typing import Final

from planner.units import SECONDS_PER_HOUR

AIR_DENSITY_KG_M3: Final = 1.20
"""ρ of room air at 20 °C and 1013 hPa, half moist; 3 % less for each 10 K more."""

AIR_HEAT_J_KG_K: Final = 1005.0
"""c_p of dry air at constant pressure near 20 °C."""

ASSUMPTIONS: Final = (
    "All electrical power of the lamps ends as heat in the space, at once and evenly. The air "
    "that comes in has room temperature (1.2 kg/m³, 1005 J/(kg K)) and mixes fully. Heat through "
    "the walls and water that leaves the plants are not counted: both make it a little cooler. "
    "Fans give less than their label once ducts, filters and small openings are in the way."
)

CAUTION: Final = (
    "Air flow is no licence to crowd a lamp: keep the clearances its maker states, keep drivers "
    "and plugs out of warm corners, and measure the temperature at the canopy and at the lamp "
    "after the first hour of light."
)


def air_flow(watts: float, rise_k: float) -> float:
    """Air flow in m³/h that carries ``watts`` away at a temperature rise of ``rise_k`` kelvin.

    From P = ρ c_p V̇ ΔT.

    Raises
    ------
    ValueError
        If the rise is not above 0 K.
    """
    if rise_k <= 0:
        raise ValueError("the temperature rise must be above 0 K; without one no heat is carried.")
    return watts / (AIR_DENSITY_KG_M3 * AIR_HEAT_J_KG_K * rise_k) * SECONDS_PER_HOUR


def temperature_rise(watts: float, flow_m3_h: float) -> float:
    """Temperature rise in kelvin of a flow in m³/h that carries ``watts`` away.

    Raises
    ------
    ValueError
        If nothing flows.
    """
    if flow_m3_h <= 0:
        raise ValueError("without any air flow the temperature rise has no bound here.")
    return watts / (AIR_DENSITY_KG_M3 * AIR_HEAT_J_KG_K * flow_m3_h / SECONDS_PER_HOUR)
