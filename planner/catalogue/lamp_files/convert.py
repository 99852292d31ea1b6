"""From a lamp file to a lamp of the catalogue.

A file of candela tells how the light is spread, not how many photons there are: the photon
flux (PPF) is given by hand, or computed from the lumens with the lumens per µmol/s of a
spectrum (numerically the same as lux per µmol/m²/s).
"""

from __future__ import annotations

import math
from typing import Final

import numpy as np

from planner.catalogue.lamp_files.goniometer import aimed_down, turned
from planner.catalogue.lamp_files.integrate import total_lumens
from planner.catalogue.lamp_files.photometry import (
    FloatArray,
    LampFileError,
    Opening,
    Photometry,
)
from planner.catalogue.lamp_files.symmetry import at_azimuths
from planner.plan.lamp import (
    LampModel,
    PanelBody,
    PlanesProfile,
    PointBody,
    Profile,
    TableProfile,
)

SHORTEST_SIDE: Final = 0.005
LONGEST_SIDE: Final = 3.0
GREATEST_PPF: Final = 20_000.0
GREATEST_WATTS: Final = 10_000.0
GREATEST_EFFICACY: Final = 5.85
MOST_POLAR: Final = 181
MOST_AZIMUTHS: Final = 144
# The smallest step that a relative intensity is kept in.
_DIGITS: Final = 6
_ROUND: Final = {
    "circle",
    "ellipse",
    "vertical cylinder",
    "vertical elliptical cylinder",
    "sphere",
    "ellipsoid",
}


def to_lamp_model(
    photometry: Photometry,
    *,
    key: str,
    name: str = "",
    ppf: float | None = None,
    lumens_per_umol: float | None = None,
    watts: float | None = None,
    quarter_turns: int = 0,
    aim_down: bool = False,
    ppf_uncertainty: float = 0.1,
    source: str = "",
) -> LampModel:
    """A lamp of the catalogue with the shape of the file.

    Parameters
    ----------
    key, name
        Of the new lamp; without a name the file's own is taken.
    ppf
        Photon flux 400-700 nm [µmol/s].
    lumens_per_umol
        Instead of ``ppf``: lumens per µmol/s of the lamp's spectrum; the photon flux is
        then the file's total lumens divided by it.
    watts
        Input power [W]; without it the file's own is taken.
    quarter_turns
        Turns of the light against the body, for files whose planes lie across.
    aim_down
        For files of type A: turn what the lamp sends along azimuth 0 straight down.
    source
        Where the file is from, such as its name.

    Raises
    ------
    LampFileError
        If something is missing or impossible; the message says what would be right.
    """
    notes = []
    flux, told = _photon_flux(photometry, ppf, lumens_per_umol)
    notes.append(told)
    power = photometry.watts if watts is None else watts
    if power is None:
        raise LampFileError("the file gives no input watts; type the watts of the lamp")
    _check_power(flux, power)
    shape = turned(photometry, quarter_turns)
    if aim_down:
        shape = aimed_down(shape)
        if shape.candela.max() <= 0:
            raise LampFileError("the beam of this file is too narrow to be aimed down")
        notes.append("What the file sends along the lamp's length was aimed straight down.")
    profile, told = _profile(shape)
    notes.append(told)
    body, told = _body(photometry.opening)
    notes.append(told)
    # What the file's warnings advise of aiming is done.
    notes += [told for told in photometry.warnings if not (aim_down and "aim it down" in told)]
    return LampModel(
        key=key,
        name=(name or photometry.name or "Lamp from a file")[:120],
        body=body,
        profile=profile,
        ppf=flux,
        watts=power,
        ppf_uncertainty=ppf_uncertainty,
        source=(source or photometry.source_format)[:4000],
        note=" ".join(note for note in notes if note)[:4000],
    )


def _photon_flux(
    photometry: Photometry, ppf: float | None, lumens_per_umol: float | None
) -> tuple[float, str]:
    if ppf is not None and lumens_per_umol is not None:
        raise LampFileError("give either the photon flux or the lumens per µmol/s, not both")
    if ppf is not None:
        return ppf, (
            "The file gives the shape of the light only; the photon flux was given by hand."
        )
    if lumens_per_umol is None:
        raise LampFileError(
            "a lamp file gives candela, not photons; give the photon flux (PPF) of the lamp in "
            "µmol/s, or choose a spectrum to compute it from the lumens"
        )
    if not (math.isfinite(lumens_per_umol) and lumens_per_umol > 0):
        raise LampFileError(
            f"{lumens_per_umol:g} lumens per µmol/s is impossible; a number above 0 is expected"
        )
    lumens = total_lumens(photometry)
    return lumens / lumens_per_umol, (
        f"The file gives candela only; the photon flux was computed from its {lumens:.0f} lm with "
        f"{lumens_per_umol:.4g} lm per µmol/s of the chosen spectrum."
    )


def _check_power(ppf: float, watts: float) -> None:
    for value, what, greatest in (
        (ppf, "a photon flux in µmol/s", GREATEST_PPF),
        (watts, "input watts", GREATEST_WATTS),
    ):
        if not (math.isfinite(value) and 0 < value <= greatest):
            raise LampFileError(
                f"{value:g} is not possible for {what}; a number above 0 and up to {greatest:g} is "
                "expected"
            )
    if ppf / watts > GREATEST_EFFICACY:
        raise LampFileError(
            f"{ppf:.4g} µmol/s from {watts:g} W would be {ppf / watts:.1f} µmol/J, but no lamp can "
            f"exceed {GREATEST_EFFICACY}; check the photon flux and the watts"
        )


def _profile(photometry: Photometry) -> tuple[Profile, str]:
    """The distribution relative to its peak; thinned out where it is finer than a plan needs."""
    polar, azimuths = photometry.polar_deg, photometry.azimuths_deg
    table = photometry.candela / photometry.candela.max()
    told = ""
    if len(azimuths) > MOST_AZIMUTHS:
        azimuths = np.arange(MOST_AZIMUTHS, dtype=np.float64) * (360.0 / MOST_AZIMUTHS)
        table = at_azimuths(photometry.azimuths_deg, table, azimuths)
        told = "The table of the file was thinned out."
    if len(polar) > MOST_POLAR:
        polar = _thinned(polar, table)
        table = np.stack([np.interp(polar, photometry.polar_deg, row) for row in table])
        told = "The table of the file was thinned out."
    rows = tuple(
        tuple(round(float(value), _DIGITS) for value in row) for row in table / table.max()
    )
    angles = tuple(float(angle) for angle in polar)
    if len(azimuths) == 1:
        return TableProfile(angles_deg=angles, relative=rows[0]), told
    return (
        PlanesProfile(
            angles_deg=angles,
            azimuths_deg=tuple(float(azimuth) for azimuth in azimuths),
            relative=rows,
        ),
        told,
    )


def _thinned(polar: FloatArray, table: FloatArray) -> FloatArray:
    """Half of the angles allowed spread evenly, the other half close about the peak."""
    half = MOST_POLAR // 2
    peak = int(table.max(axis=0).argmax())
    start = min(max(peak - half // 2, 0), len(polar) - half)
    even: FloatArray = np.linspace(polar[0], polar[-1], half)
    chosen: FloatArray = np.round(np.concatenate([even, polar[start : start + half]]), 6)
    return np.clip(np.unique(chosen), polar[0], polar[-1])


def _body(opening: Opening) -> tuple[PointBody | PanelBody, str]:
    """The opening seen from below, as a rectangle of the same area along the same axes."""
    length, width = opening.length, opening.width
    told = ""
    if opening.shape in _ROUND:
        # A rectangle round the ellipse shrunk by √(π/4) has the ellipse's area.
        length, width = (side * math.sqrt(math.pi) / 2 for side in (length, width))
        told = (
            f"The {opening.shape} of the file is drawn as a rectangle of the same area, "
            f"{100 * length:.1f} × {100 * width:.1f} cm."
        )
    elif opening.shape not in {"point", "rectangle"}:
        told = f"The {opening.shape} of the file is drawn as the flat rectangle seen from below."
    if max(length, width) < SHORTEST_SIDE:
        return PointBody(), "The lamp is taken as a point; the file gives no size."
    if max(length, width) > LONGEST_SIDE:
        told += (
            f" The file gives {length:.2f} × {width:.2f} m, longer than a lamp here can be "
            f"({LONGEST_SIDE:g} m); it was cut. Are its sizes in feet, not in metres?"
        )
    length, width = (min(max(side, SHORTEST_SIDE), LONGEST_SIDE) for side in (length, width))
    return PanelBody(length=length, width=width), told.strip()
