"""Names, places and quantities of a plan in words, for messages about it."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from planner.units import LengthUnit, format_length

Location = Sequence[int | str]

_NAMES: Final = {
    "angles_deg": "angles",
    "azimuths_deg": "azimuths",
    "bar_width": "bar width",
    "door_open": "door open",
    "format": "format number",
    "hanging_height": "hanging height",
    "high": "upper end",
    "length": "body length",
    "low": "lower end",
    "output_percent": "output",
    "photoperiod_hours": "photoperiod",
    "ppf": "photon flux",
    "ppf_uncertainty": "uncertainty of the photon flux",
    "relative": "intensities",
    "rotation_deg": "rotation",
    "specular_share": "specular share",
    "top": "upper edge",
    "width": "body width",
}
"""Where the name of a field, with spaces for underscores, is not the word for it."""

_ONE_OF: Final = {
    "angles_deg": "angle",
    "azimuths_deg": "azimuth",
    "bands": "band",
    "cautions": "caution",
    "footprint": "corner",
    "lamps": "lamp",
    "linings": "lining",
    "relative": "intensity",
    "walls": "wall",
}

_UNIONS: Final = frozenset({"body", "profile", "target"})
"""Fields after which a location names the kind that was chosen."""

_PASSED_OVER: Final = frozenset({"model", "body"})
"""Fields that would only lengthen the way to what lies inside them."""

_LENGTHS: Final = frozenset(
    {"x", "y", "height", "hanging_height", "length", "width", "bar_width", "top"}
)
_UNITS: Final = {
    "rotation_deg": "°",
    "angles_deg": "°",
    "azimuths_deg": "°",
    "output_percent": " %",
    "ppf": " µmol/s",
    "watts": " W",
    "photoperiod_hours": " h",
}
_BAND_UNITS: Final = {
    "ppfd": " µmol/m²/s",
    "PpfdTarget": " µmol/m²/s",
    "dli": " mol/m²/d",
    "DliTarget": " mol/m²/d",
}


def known_as(field: str) -> str:
    """The word for a field of the plan."""
    return _NAMES.get(field, field.replace("_", " "))


def place_in_words(location: Location) -> str:
    """A pydantic location as a person would say it: 'lamp 2, hanging height'.

    Walls, lamps, bands and corners count from 1, as on the screen. The plan as a whole is
    the empty text.
    """
    parts: list[str] = []
    if list(location[:2]) == ["space", "footprint"]:
        location = location[1:]
    for index, step in enumerate(location):
        before = location[index - 1] if index else ""
        last = index == len(location) - 1
        if isinstance(step, int):
            _count(parts, location, index, step)
        elif before not in _UNIONS and (last or step not in _PASSED_OVER):
            parts.append(known_as(step))
    return ", ".join(parts)


def _count(parts: list[str], location: Location, index: int, step: int) -> None:
    """Turn 'lamps' and 1 into 'lamp 2', and the second number of a corner into x or y."""
    before, after = location[index - 1 : index], location[index + 1 : index + 2]
    field = str(before[0]) if before else ""
    if before and isinstance(before[0], int):
        in_corner = "corner" in parts[-1] and step < 2
        parts.append("xy"[step] if in_corner else f"entry {step + 1}")
        return
    word = _ONE_OF.get(field, f"{known_as(field)}, entry")
    if field == "relative" and after and isinstance(after[0], int):
        word = "plane"  # here the intensities are a list of lists, one for each plane
    parts[-1:] = [f"{word} {step + 1}"]


def quantity_in_words(value: float, location: Location, unit: LengthUnit) -> str:
    """A number with the unit of the field it stands in; lengths in the unit asked."""
    names = [step for step in location if isinstance(step, str)]
    field = names[-1] if names else ""
    if field in _LENGTHS or field == "footprint":
        return format_length(value, unit)
    if field in {"low", "high"}:
        return f"{value:g}" + next((_BAND_UNITS[n] for n in names if n in _BAND_UNITS), "")
    return f"{value:g}{_UNITS.get(field, '')}"
