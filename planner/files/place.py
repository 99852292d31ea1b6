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
    "board_reflectance": "reflectance of the board",
    "door_open": "door open",
    "format": "format number",
    "gain_uncertainty": "uncertainty of the gain",
    "hanging_height": "hanging height",
    "high": "upper end",
    "length": "body length",
    "low": "lower end",
    "output_percent": "output",
    "photoperiod_hours": "photoperiod",
    "price_per_kwh": "price of a kWh",
    "ppf": "photon flux",
    "ppf_uncertainty": "uncertainty of the photon flux",
    "relative": "intensities",
    "response_angles_deg": "angles of the response",
    "response_relative": "response",
    "rotation_deg": "rotation",
    "specular_share": "specular share",
    "lux_per_umol": "lux per µmol/m²/s",
    "top": "upper edge",
    "warm_up_minutes": "warm-up",
    "width": "body width",
}
"""Where the name of a field, with spaces for underscores, is not the word for it."""

_ONE_OF: Final = {
    "angles_deg": "angle",
    "azimuths_deg": "azimuth",
    "bands": "band",
    "cautions": "caution",
    "changes": "change",
    "footprint": "corner",
    "goods": "goods",
    "lamps": "lamp",
    "linings": "lining",
    "points": "hole",
    "readings": "reading",
    "relative": "intensity",
    "response_angles_deg": "angle of the response",
    "response_relative": "response",
    "schedule": "stage",
    "surveys": "survey",
    "variants": "variant",
    "walls": "wall",
}

_UNIONS: Final = frozenset({"body", "profile", "target"})
"""Fields after which a location names the kind that was chosen."""

_WITHOUT_BODY: Final = frozenset({"variants", "costs"})
"""Parts of the plan in which a length or width is not that of a lamp or box."""

_PASSED_OVER: Final = frozenset({"model", "body"})
"""Fields that would only lengthen the way to what lies inside them."""

_LENGTHS: Final = frozenset(
    {
        *("x", "y", "height", "hanging_height", "length", "width", "bar_width", "top"),
        *("margin", "hole_diameter", "sensor_height"),
        *("canopy_height", "depth", "overlap"),
    }
)
_UNITS: Final = {
    "rotation_deg": "°",
    "response_angles_deg": "°",
    "warm_up_minutes": " min",
    "value": " µmol/m²/s",
    "angles_deg": "°",
    "azimuths_deg": "°",
    "output_percent": " %",
    "ppf": " µmol/s",
    "watts": " W",
    "photoperiod_hours": " h",
    "weeks": " weeks",
}
_BAND_UNITS: Final = {
    "ppfd": " µmol/m²/s",
    "PpfdTarget": " µmol/m²/s",
    "dli": " mol/m²/d",
    "DliTarget": " mol/m²/d",
}


def in_print(text: str) -> str:
    """A text on one line, with a stand-in for every sign that cannot be printed.

    Names of files may hold line breaks and bytes that are no letters.
    """
    return "".join(sign if sign.isprintable() else "\N{REPLACEMENT CHARACTER}" for sign in text)


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
        last = index == len(location) - 1
        if isinstance(step, int):
            _count(parts, location, index, step)
        elif _names_a_kind(location, index):
            continue
        elif last or step not in _PASSED_OVER:
            plain = location[0] in _WITHOUT_BODY and "body" not in location
            parts.append(step if plain and step in {"length", "width"} else known_as(step))
    return ", ".join(parts)


def _names_a_kind(location: Location, index: int) -> bool:
    """Whether a step is no field, but says which kind of a union was chosen."""
    if index >= 2 and location[index - 2] == "changes":
        return True
    return index >= 1 and location[index - 1] in _UNIONS


def _count(parts: list[str], location: Location, index: int, step: int) -> None:
    """Turn 'lamps' and 1 into 'lamp 2', and the second number of a corner into x or y."""
    before, after = location[index - 1 : index], location[index + 1 : index + 2]
    field = str(before[0]) if before else ""
    if before and isinstance(before[0], int):
        in_corner = parts[-1].startswith(("corner", "hole")) and step < 2
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
    if field in _LENGTHS or field in {"footprint", "points"}:
        return format_length(value, unit)
    if field in {"low", "high"}:
        return f"{value:g}" + next((_BAND_UNITS[n] for n in names if n in _BAND_UNITS), "")
    return f"{value:g}{_UNITS.get(field, '')}"
