"""From the part of the circle a file stores to the whole circle, and back.

All tables here are (azimuths, polar angles); azimuths in degrees.
"""

from __future__ import annotations

from typing import Final, Literal

import numpy as np

from planner.catalogue.lamp_files.photometry import FloatArray

Symmetry = Literal["axial", "quadrant", "about 0-180", "about 90-270", "none"]

WORDS: Final[dict[Symmetry, str]] = {
    "axial": "the same all around the vertical axis",
    "quadrant": "the same in each quarter",
    "about 0-180": "mirrored about the 0-180 plane",
    "about 90-270": "mirrored about the 90-270 plane",
    "none": "no symmetry",
}

_DIGITS: Final = 6


def full_circle(
    azimuths: FloatArray, table: FloatArray, symmetry: Symmetry
) -> tuple[FloatArray, FloatArray]:
    """Expand a stored part by its symmetry; returns azimuths in [0, 360) from 0 and rows.

    A plane that several copies fall on is taken from the first; a plane at 0 that is not
    there is interpolated, which changes nothing as intensity is linear between planes.
    """
    if symmetry == "axial":
        return np.zeros(1), table[:1].copy()
    copies = [azimuths]
    if symmetry in {"quadrant", "about 0-180"}:
        copies.append(-azimuths)
    if symmetry in {"quadrant", "about 90-270"}:
        copies.append(180.0 - azimuths)
    if symmetry == "quadrant":
        copies.append(180.0 + azimuths)
    angles = np.concatenate(copies)
    rows = np.concatenate([table] * len(copies))
    return closed(angles, rows)


def closed(angles: FloatArray, rows: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Planes at any azimuths, sorted into [0, 360), once each, with a plane at 0."""
    wrapped = np.round(np.mod(angles, 360.0), _DIGITS) % 360.0
    unique, first = np.unique(wrapped, return_index=True)
    table = rows[first]
    if unique[0] != 0.0:
        gap = unique[0] + 360.0 - unique[-1]
        share = (360.0 - unique[-1]) / gap
        at_zero = table[-1] * (1.0 - share) + table[0] * share
        unique = np.concatenate([[0.0], unique])
        table = np.concatenate([at_zero[None, :], table])
    return unique, np.ascontiguousarray(table)


def rotated(
    azimuths: FloatArray, table: FloatArray, angle_deg: float
) -> tuple[FloatArray, FloatArray]:
    """The distribution turned counter-clockwise (seen from above) about the vertical."""
    if len(azimuths) == 1:
        return azimuths.copy(), table.copy()
    return closed(azimuths + angle_deg, table)


def at_azimuths(azimuths: FloatArray, table: FloatArray, wanted: FloatArray) -> FloatArray:
    """Rows at other azimuths, linear between the planes around the circle."""
    if len(azimuths) == 1:
        return np.repeat(table, len(wanted), axis=0)
    around = np.concatenate([azimuths, [360.0]])
    rows = np.concatenate([table, table[:1]])
    place = np.mod(wanted, 360.0)
    index = np.clip(np.searchsorted(around, place, side="right") - 1, 0, len(azimuths) - 1)
    share = ((place - around[index]) / (around[index + 1] - around[index]))[:, None]
    result: FloatArray = rows[index] * (1.0 - share) + rows[index + 1] * share
    return result


def found_symmetry(azimuths: FloatArray, table: FloatArray) -> Symmetry:
    """The greatest symmetry the table really has, to about nine digits."""
    tolerance = 1e-9 * float(table.max())

    def same(wanted: FloatArray) -> bool:
        # Every plane must have its mirror image among the planes, or lie on the line there.
        other = at_azimuths(azimuths, table, wanted)
        return bool(np.abs(other - table).max() <= tolerance)

    if len(azimuths) == 1 or np.ptp(table, axis=0).max() <= tolerance:
        return "axial"
    # Both ways, so that kinks of one side without a plane on the other are noticed.
    first, second = same(-azimuths), same(180.0 - azimuths)
    if first and second:
        return "quadrant"
    if first:
        return "about 0-180"
    return "about 90-270" if second else "none"


def smallest_part(azimuths: FloatArray, table: FloatArray) -> tuple[FloatArray, FloatArray]:
    """The smallest part of the circle that LM-63 can store without loss, and its rows."""
    symmetry = found_symmetry(azimuths, table)
    ends: dict[Symmetry, tuple[float, float]] = {
        "axial": (0.0, 0.0),
        "quadrant": (0.0, 90.0),
        "about 0-180": (0.0, 180.0),
        "about 90-270": (90.0, 270.0),
        "none": (0.0, 360.0),
    }
    low, high = ends[symmetry]
    inside = azimuths[(azimuths > low) & (azimuths < high)]
    wanted = np.unique(np.concatenate([[low], inside, [high]]))
    return wanted, at_azimuths(azimuths, table, wanted)
