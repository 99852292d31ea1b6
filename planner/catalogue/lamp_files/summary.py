"""What a lamp file says in a few lines, for the command line and beside the polar plot."""

from __future__ import annotations

from planner.catalogue.lamp_files.integrate import (
    beam_angle,
    downward_share,
    efficacy,
    total_lumens,
)
from planner.catalogue.lamp_files.photometry import Opening, Photometry


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
    text = f"{opening.shape}, {100 * opening.length:.1f} × {100 * opening.width:.1f} cm"
    return text + (f", {100 * opening.height:.1f} cm high" if opening.height > 0 else "")
