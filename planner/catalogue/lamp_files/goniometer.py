"""Types A and B of LM-63 to the vertical half-planes of type C, by resampling.

Axes: z up, x along photometric horizontal of type C (azimuth 0), y to its left seen from
above. With the definitions of ANSI/IESNA LM-63-02, section 3 (nadir is H 0 V 0 for types B
and C and V -90 for type A; photometric horizontal is V 90 for B and C and H 0 V 0 for A;
horizontal angles run clockwise for A and B) a direction is

- type C: (sinθ cosφ, sinθ sinφ, -cosθ);
- type B: (cosH sinV, -sinH, -cosH cosV). This is the pair of equations of CIE 121,
  tan B = tanγ cosC and sin β = sinγ sinC, with B = V and β = -H;
- type A: (cosV cosH, -cosV sinH, sinV).

The clockwise sense of H cannot be told from a file; it matters only where left and right
differ, and the reader then says so.
"""

from __future__ import annotations

import dataclasses
from typing import Final, Literal

import numpy as np

from planner.catalogue.lamp_files.photometry import FloatArray, Photometry
from planner.catalogue.lamp_files.symmetry import closed

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
