"""Ranges of angles in LM-63, and the symmetry that the horizontal range of type C stands for."""

from __future__ import annotations

from typing import Final

import numpy as np

from planner.catalogue.lamp_files.photometry import FloatArray, LampFileError, PhotometricType
from planner.catalogue.lamp_files.symmetry import WORDS, Symmetry, full_circle

POLAR: Final[dict[PhotometricType, tuple[float, float]]] = {
    "C": (0.0, 180.0),
    "B": (-180.0, 180.0),
    "A": (-90.0, 90.0),
}
HORIZONTAL: Final[dict[PhotometricType, tuple[float, float]]] = {
    "C": (-180.0, 360.0),
    "B": (-90.0, 90.0),
    "A": (-180.0, 180.0),
}
_NEAR: Final = 1e-3


def check_vertical(
    vertical: FloatArray, kind: PhotometricType, line: int, warnings: list[str]
) -> None:
    """Warn where the vertical angles are none of the usual ranges."""
    first, last = float(vertical[0]), float(vertical[-1])
    usual = {(0, 90), (90, 180), (0, 180)} if kind == "C" else {(-90, 90), (-180, 180)}
    if not any(abs(first - a) < _NEAR and abs(last - b) < _NEAR for a, b in usual):
        warnings.append(
            f"The vertical angles up to line {line} run from {first:g}° to {last:g}°; outside of "
            "them the lamp is taken as dark."
        )
    if kind == "C" and first >= 90:
        warnings.append("All light of this lamp goes up.")


def spread_type_c(
    horizontal: FloatArray, table: FloatArray, line: int, warnings: list[str]
) -> tuple[str, FloatArray, FloatArray]:
    """Symmetry in words, azimuths and rows of the full circle."""
    quarter = np.round(horizontal / 90.0) * 90.0
    horizontal = np.where(np.abs(horizontal - quarter) < _NEAR, quarter, horizontal)
    symmetry = _symmetry(horizontal, line, warnings)
    if symmetry == "none":
        horizontal, table = _without_seam(horizontal, table, warnings)
    azimuths, rows = full_circle(horizontal, table, symmetry)
    return WORDS[symmetry], azimuths, rows


def _symmetry(horizontal: FloatArray, line: int, warnings: list[str]) -> Symmetry:
    first, last = float(horizontal[0]), float(horizontal[-1])
    if len(horizontal) == 1:
        if abs(first) > _NEAR:
            warnings.append(
                f"The only horizontal angle is {first:g}°, not 0°; the lamp is taken as the same "
                "all around."
            )
        return "axial"
    ranges: tuple[tuple[float, float, Symmetry], ...] = (
        (0, 90, "quadrant"),
        (0, 180, "about 0-180"),
        (90, 270, "about 90-270"),
    )
    for low, high, symmetry in ranges:
        if abs(first - low) < _NEAR and abs(last - high) < _NEAR:
            return symmetry
    if abs(first + 90) < _NEAR and abs(last - 90) < _NEAR:
        warnings.append(
            "The horizontal angles run from -90° to 90°; the lamp is taken as mirrored about the "
            "90-270 plane."
        )
        return "about 90-270"
    if abs(first + 180) < _NEAR and abs(last - 180) < _NEAR:
        warnings.append("The horizontal angles run from -180° to 180°; they are taken as 0 to 360.")
        return "none"
    if abs(first) < _NEAR and last > 180:
        return "none"
    raise LampFileError(
        f"the horizontal angles run from {first:g}° to {last:g}°; they must be 0° alone, or run "
        "from 0° to 90°, 180° or 360°, or from 90° to 270°",
        line,
    )


def _without_seam(
    horizontal: FloatArray, table: FloatArray, warnings: list[str]
) -> tuple[FloatArray, FloatArray]:
    """Drop the plane that repeats the first one; warn where the two differ or one is missing."""
    turn = float(horizontal[-1] - horizontal[0])
    if abs(turn - 360) < _NEAR:
        if not np.allclose(table[0], table[-1], atol=0.02 * table.max()):
            warnings.append(
                f"The planes at {horizontal[0]:g}° and {horizontal[-1]:g}° are the same direction "
                "but differ; the first is used."
            )
        return horizontal[:-1], table[:-1]
    if 360 - turn > 2 * float(np.diff(horizontal).max()) + _NEAR:
        warnings.append(
            f"The horizontal angles stop at {horizontal[-1]:g}°; the gap to 360° is bridged in a "
            "straight line."
        )
    return horizontal, table
