"""From a lamp file to a lamp of the catalogue.

A file of candela tells how the light is spread, not how many photons there are: the photon
flux (PPF) is given by hand, or computed from the lumens with the lumens per µmol/s of a
spectrum (numerically the same as lux per µmol m⁻² s⁻¹).
"""

from __future__ import annotations

import dataclasses
import math
from dataclasses import replace
from typing import Final, Literal

import numpy as np

from planner.catalogue.lamp_files.photometry import (
    SIDEWAYS,
    FloatArray,
    LampFileError,
    Opening,
    Photometry,
    at_azimuths,
    beam_angle,
    closed,
    downward_share,
    efficacy,
    total_lumens,
)
from planner.language import word
from planner.plan.lamp import (
    CosineProfile,
    LampModel,
    PanelBody,
    PlanesProfile,
    PointBody,
    Profile,
    TableProfile,
    too_efficient,
)
from planner.plan.quantity import PHOTON_FLUX, WATTS, BodyLength, quantity
from planner.units import FLUX_UNIT

_SIDE: Final = quantity(BodyLength)
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
    notes += [told for told in photometry.warnings if not (aim_down and told == SIDEWAYS)]
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
        raise LampFileError(f"give either the photon flux or the lumens per {FLUX_UNIT}, not both")
    if ppf is not None:
        return ppf, (
            "The file gives the shape of the light only; the photon flux was given by hand."
        )
    if lumens_per_umol is None:
        raise LampFileError(
            "a lamp file gives candela, not photons; give the photon flux (PPF) of the lamp in "
            f"{FLUX_UNIT}, or choose a spectrum to compute it from the lumens"
        )
    if not (math.isfinite(lumens_per_umol) and lumens_per_umol > 0):
        raise LampFileError(
            f"{lumens_per_umol:g} lumens per {FLUX_UNIT} is impossible; "
            "a number above 0 is expected"
        )
    lumens = total_lumens(photometry)
    return lumens / lumens_per_umol, (
        f"The file gives candela only; the photon flux was computed from its {lumens:.0f} lm with "
        f"{lumens_per_umol:.4g} lm per {FLUX_UNIT} of the chosen spectrum."
    )


def _check_power(ppf: float, watts: float) -> None:
    for value, what, greatest in (
        (ppf, f"a photon flux in {FLUX_UNIT}", PHOTON_FLUX.maximum),
        (watts, "input watts", WATTS.maximum),
    ):
        if not (math.isfinite(value) and 0 < value <= greatest):
            raise LampFileError(
                f"{value:g} is not possible for {what}; a number above 0 and up to {greatest:g} is "
                "expected"
            )
    if why := too_efficient(ppf, watts):
        raise LampFileError(f"{why}; check the photon flux and the watts")


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
            f"The {word(opening.shape)} of the file is drawn as a rectangle of the same area, "
            f"{100 * length:.1f} × {100 * width:.1f} cm."
        )
    elif opening.shape not in {"point", "rectangle"}:
        told = (
            f"The {word(opening.shape)} of the file is drawn as the flat rectangle seen from below."
        )
    if max(length, width) < _SIDE.minimum:
        return PointBody(), "The lamp is taken as a point; the file gives no size."
    if max(length, width) > _SIDE.maximum:
        told += (
            f" The file gives {length:.2f} × {width:.2f} m, longer than a lamp here can be "
            f"({_SIDE.maximum:g} m); it was cut. Are its sizes in feet, not in metres?"
        )
    length, width = (min(max(side, _SIDE.minimum), _SIDE.maximum) for side in (length, width))
    return PanelBody(length=length, width=width), told.strip()


# -- From a lamp of the catalogue back to photometry, for writing it as a file ---------
# Photons have no candela of their own. With the lumens per µmol/s of a spectrum the candela
# are absolute; without one they are scaled so that the whole lamp gives 1000 lm, and a
# keyword of the file says so.

PLAIN_LUMENS: Final = 1000.0
_FORMAT: Final = "IES:LM-63-2019"


def to_photometry(model: LampModel, lumens_per_umol: float | None = None) -> Photometry:
    """The light of a lamp as candela; see the module for their scale."""
    polar, azimuths, table = _distribution(model)
    shape = Photometry(
        polar_deg=polar,
        azimuths_deg=azimuths,
        candela=table,
        source_format=_FORMAT,
        watts=model.watts,
        opening=_opening(model),
    )
    if lumens_per_umol is None:
        lumens = PLAIN_LUMENS
        told = f"Candela are scaled to {lumens:g} lm; photon flux {model.ppf:g} umol/s"
    else:
        lumens = model.ppf * lumens_per_umol
        told = (
            f"Photon flux {model.ppf:g} umol/s, lumens by a spectrum of "
            f"{lumens_per_umol:.4g} lm per umol/s"
        )
    keywords = (("LUMINAIRE", model.name), ("OTHER", told))
    candela = table * (lumens / total_lumens(shape))
    return replace(shape, candela=candela, keywords=keywords)


def _distribution(model: LampModel) -> tuple[FloatArray, FloatArray, FloatArray]:
    """Polar angles, azimuths and relative intensities, the polar angles ending at 90 or 180."""
    profile = model.profile
    round_ = np.zeros(1)
    if isinstance(profile, CosineProfile):
        polar = np.arange(0.0, 90.5, 1.0)
        cosine = np.clip(np.cos(np.radians(polar)), 0.0, 1.0)
        # cos⁰ is 1 up to the horizon; rounding must not turn the last 0 into 1e-17.
        cosine[-1] = 0.0
        table = cosine**profile.exponent
        return polar, round_, table[None, :]
    if isinstance(profile, TableProfile):
        azimuths, rows = round_, np.array([profile.relative])
    else:
        azimuths, rows = np.array(profile.azimuths_deg), np.array(profile.relative)
    return (*_to_the_end(np.array(profile.angles_deg), rows, azimuths),)


def _to_the_end(
    polar: FloatArray, rows: FloatArray, azimuths: FloatArray
) -> tuple[FloatArray, FloatArray, FloatArray]:
    """The table from 0 to 90 or 180 as LM-63 wants it, dark where the profile says nothing."""
    end = 90.0 if polar[-1] <= 90 else 180.0
    small = 1.0e-3
    if polar[0] > 0:
        # Dark up to just before the first angle; a linear rise from 0 would add light.
        lead = [0.0, polar[0] - small] if polar[0] > small else [0.0]
        polar = np.concatenate([lead, polar])
        rows = np.hstack([np.zeros((len(rows), len(lead))), rows])
    if polar[-1] < end:
        tail = [polar[-1] + small, end] if end - polar[-1] > small else [end]
        polar = np.concatenate([polar, tail])
        rows = np.hstack([rows, np.zeros((len(rows), len(tail)))])
    return polar, azimuths, rows


def _opening(model: LampModel) -> Opening:
    if isinstance(model.body, PointBody):
        return Opening()
    length, width = model.size
    return Opening("rectangle", length, width)


# -- What a lamp file says in a few lines, for the command line and beside the polar plot ---


def summary(photometry: Photometry) -> tuple[tuple[str, str], ...]:
    """Pairs of what and how much, in reading order; the warnings are not among them."""
    total, stated = total_lumens(photometry), photometry.lumens_stated
    lines = [
        ("Lamp", photometry.name or "no name in the file"),
        ("Format", f"{photometry.source_format}, photometric type {photometry.photometric_type}"),
        ("Symmetry", photometry.symmetry),
        ("Light in all directions", f"{total:.0f} lm"),
        (
            "Lamps as stated",
            "absolute photometry, no lumens stated"
            if stated is None
            else f"{stated:.0f} lm; {100 * total / stated:.1f} % leave the lamp body",
        ),
        ("Light that goes down", f"{100 * downward_share(photometry):.1f} %"),
        ("Peak", f"{photometry.candela.max():.0f} cd"),
    ]
    for azimuth, where in ((0.0, "along the length"), (90.0, "across the length")):
        angle = beam_angle(photometry, azimuth)
        if angle is not None:
            lines.append((f"Beam angle {where}", f"{angle:.0f}°"))
    lines.append(("Luminous opening", _size(photometry.opening)))
    per_watt = efficacy(photometry)
    if photometry.watts is not None and per_watt is not None:
        lines.append(("Input power", f"{photometry.watts:g} W, {per_watt:.0f} lm/W"))
    return tuple(lines)


def _size(opening: Opening) -> str:
    if opening.shape == "point":
        return "point"
    text = f"{word(opening.shape)}, {100 * opening.length:.1f} × {100 * opening.width:.1f} cm"
    return text + (f", {100 * opening.height:.1f} cm high" if opening.height > 0 else "")


# -- Types A and B of LM-63 to the vertical half-planes of type C, by resampling -------
# Axes: z up, x along photometric horizontal of type C (azimuth 0), y to its left seen from
# above. With the definitions of ANSI/IESNA LM-63-02, section 3 (nadir is H 0 V 0 for types B
# and C and V -90 for type A; photometric horizontal is V 90 for B and C and H 0 V 0 for A;
# horizontal angles run clockwise for A and B) a direction is
#
# - type C: (sinθ cosφ, sinθ sinφ, -cosθ);
# - type B: (cosH sinV, -sinH, -cosH cosV). This is the pair of equations of CIE 121,
#   tan B = tanγ cosC and sin β = sinγ sinC, with B = V and β = -H;
# - type A: (cosV cosH, -cosV sinH, sinV).
#
# The clockwise sense of H cannot be told from a file; it matters only where left and right
# differ, and the reader then says so.

FINEST_POLAR_DEG: Final = 0.25
FINEST_AZIMUTH_DEG: Final = 1.0
COARSEST_DEG: Final = 5.0


def to_type_c(
    kind: Literal["A", "B"], vertical_deg: FloatArray, horizontal_deg: FloatArray, table: FloatArray
) -> tuple[FloatArray, FloatArray, FloatArray]:
    """Polar angles, azimuths and table in type C.

    ``table`` has the shape (horizontal, vertical) and is linear in both angles in between;
    outside its range the lamp is dark. The new grid is as fine as the old one, within
    0.25° and 5° for polar angles and 1° and 5° for azimuths.
    """
    finest = min(_finest(vertical_deg), _finest(horizontal_deg))
    polar, azimuth = _grid(finest)
    x, y, z = _directions(polar, azimuth)
    if kind == "B":
        horizontal = np.arcsin(np.clip(-y, -1.0, 1.0))
        vertical = np.arctan2(x, -z)
    else:
        horizontal = np.arctan2(-y, x)
        vertical = np.arcsin(np.clip(z, -1.0, 1.0))
    values = _bilinear(
        horizontal_deg, vertical_deg, table, np.degrees(horizontal), np.degrees(vertical)
    )
    return polar, azimuth, values


def aimed_down(photometry: Photometry) -> Photometry:
    """The lamp turned about its y axis so that what it sent along azimuth 0 goes down.

    For files of type A, whose lamp looks sideways when measured: H 0 V 0 becomes straight
    down. Resampled on a grid as fine as the table.
    """
    finest = _finest(photometry.polar_deg)
    if len(photometry.azimuths_deg) > 1:
        finest = min(finest, _finest(photometry.azimuths_deg))
    polar, azimuth = _grid(finest)
    x, y, z = _directions(polar, azimuth)
    # What goes down now (0, 0, -1) went along x (1, 0, 0), and what goes along x went up.
    old_x, old_z = -z, x
    old_polar = np.degrees(np.arccos(np.clip(-old_z, -1.0, 1.0)))
    old_azimuth = np.mod(np.degrees(np.arctan2(y, old_x)), 360.0)
    around = np.concatenate([photometry.azimuths_deg, [360.0]])
    rows = np.concatenate([photometry.candela, photometry.candela[:1]])
    values = _bilinear(around, photometry.polar_deg, rows, old_azimuth, old_polar)
    return dataclasses.replace(
        photometry, polar_deg=polar, azimuths_deg=azimuth, candela=values, symmetry="no symmetry"
    )


def turned(photometry: Photometry, quarter_turns: int = 1) -> Photometry:
    """The distribution turned against the body by quarter turns, counter-clockwise from above.

    The correction for files whose 0° plane lies across the lamp where it should lie along
    it: converters between LM-63 and EULUMDAT sometimes forget to turn the planes.
    """
    azimuths, table = photometry.azimuths_deg, photometry.candela
    if len(azimuths) > 1 and quarter_turns % 4:
        azimuths, table = closed(azimuths + 90.0 * (quarter_turns % 4), table)
    return dataclasses.replace(photometry, azimuths_deg=azimuths, candela=table)


def _finest(angles: FloatArray) -> float:
    return float(np.diff(angles).min()) if len(angles) > 1 else COARSEST_DEG


def _grid(finest: float) -> tuple[FloatArray, FloatArray]:
    polar_step = min(max(finest, FINEST_POLAR_DEG), COARSEST_DEG)
    azimuth_step = min(max(finest, FINEST_AZIMUTH_DEG), COARSEST_DEG)
    polar: FloatArray = np.linspace(0.0, 180.0, 2 * int(np.ceil(90.0 / polar_step)) + 1)
    count = 4 * int(np.ceil(90.0 / azimuth_step))
    azimuth: FloatArray = np.arange(count, dtype=np.float64) * (360.0 / count)
    return polar, azimuth


def _directions(
    polar: FloatArray, azimuth: FloatArray
) -> tuple[FloatArray, FloatArray, FloatArray]:
    """Unit vectors of a type C grid, each of shape (azimuths, polar angles)."""
    theta, phi = np.radians(polar)[None, :], np.radians(azimuth)[:, None]
    x, y = np.sin(theta) * np.cos(phi), np.sin(theta) * np.sin(phi)
    return x, y, np.broadcast_to(-np.cos(theta), x.shape)


def _bilinear(
    rows: FloatArray, columns: FloatArray, table: FloatArray, row: FloatArray, column: FloatArray
) -> FloatArray:
    """The table at other places, 0 outside it; edges are widened by a hair against rounding."""
    hair = 1e-7
    inside = (row >= rows[0] - hair) & (row <= rows[-1] + hair)
    inside &= (column >= columns[0] - hair) & (column <= columns[-1] + hair)
    row, column = np.clip(row, rows[0], rows[-1]), np.clip(column, columns[0], columns[-1])
    j = np.clip(np.searchsorted(rows, row, side="right") - 1, 0, max(len(rows) - 2, 0))
    i = np.clip(np.searchsorted(columns, column, side="right") - 1, 0, max(len(columns) - 2, 0))
    next_j, next_i = np.minimum(j + 1, len(rows) - 1), np.minimum(i + 1, len(columns) - 1)
    wide_j, wide_i = rows[next_j] - rows[j], columns[next_i] - columns[i]
    u = (row - rows[j]) / np.where(wide_j > 0, wide_j, 1.0)
    v = (column - columns[i]) / np.where(wide_i > 0, wide_i, 1.0)
    near = table[j, i] * (1 - v) + table[j, next_i] * v
    far = table[next_j, i] * (1 - v) + table[next_j, next_i] * v
    result: FloatArray = np.where(inside, near * (1 - u) + far * u, 0.0)
    return result
