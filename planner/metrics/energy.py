"""Electrical power, energy and what it yields in photons."""

from __future__ import annotations


def kilowatt_hours_per_day(watts: float, hours: float) -> float:
    """Energy per day in kWh of a load that runs ``hours`` a day."""
    return watts * hours / 1000.0


def efficacy(photon_flux: float, watts: float) -> float | None:
    """Photosynthetic photon efficacy in µmol J⁻¹; None without power."""
    return photon_flux / watts if watts > 0 else None


def utilisation(mean_ppfd: float, area: float, photon_flux: float) -> float | None:
    """Canopy utilisation: photons that arrive on the canopy per photon emitted.

    Can exceed 1 where the canopy's own reflected light comes back to it.
    """
    return mean_ppfd * area / photon_flux if photon_flux > 0 else None
