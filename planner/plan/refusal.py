"""Refusals: any complaint about a plan as a sentence a grower understands.

``refusal`` is the one way from an error to what is read beside a field, on a drawing or in a
terminal. Whether a field, an edit or a file is at fault, a number out of its bounds is
refused in the same words (``Quantity.checked``), with the unit of its field.
"""

from __future__ import annotations

import types
from collections.abc import Callable, Mapping, Sequence
from typing import Any, Final, Union, get_args, get_origin

from pydantic import BaseModel, ValidationError
from pydantic.fields import FieldInfo
from pydantic_core import ErrorDetails

from planner.language import word
from planner.plan.quantity import Quantity, Value, quantity
from planner.units import PPFD_UNIT, LengthUnit, capital, in_unit

Location = Sequence[int | str]

_BOUNDS: Final = {"greater_than_equal", "greater_than", "less_than_equal", "less_than"}

_WANTED: Final = {
    "float_type": "a number",
    "float_parsing": "a number",
    "int_type": "a whole number",
    "int_parsing": "a whole number",
    "int_from_float": "a whole number",
    "int_parsing_size": "a whole number of ordinary size",
    "string_type": "a text in double quotes",
    "bool_type": "true or false",
    "bool_parsing": "true or false",
    "tuple_type": "a list",
    "list_type": "a list",
    "dict_type": "an object with named fields",
    "model_type": "an object with named fields",
    "model_attributes_type": "an object with named fields",
    "finite_number": "an ordinary number",
    "string_unicode": "plain text",
}

_SHOWN_TEXT: Final = 40

MOST_PROBLEMS: Final = 5000
"""More problems than these are not put into words one by one."""


def refusal(error: ValueError, unit: LengthUnit | None = None) -> str:
    """The first complaint of an error as one sentence, its lengths in the unit asked.

    Without a unit the lengths stay so that they can be put into any (``units.in_unit``).
    """
    text = refusals(error, unit)[0] if isinstance(error, ValidationError) else str(error)
    text = text.strip() or "this value cannot be used"
    text = capital(text) + ("" if text.endswith((".", "!", "?")) else ".")
    return text if unit is None else in_unit(text, unit)


def refusals(error: ValidationError, unit: LengthUnit | None = LengthUnit.CM) -> list[str]:
    """One sentence for each problem, led by its place in words.

    For example ``lamp 2, hanging height: must be at least 1 cm, not 0 cm.``
    """
    if error.error_count() > MOST_PROBLEMS:
        return [f"{error.error_count()} things in it fit no plan; it is probably not a plan file."]
    details = error.errors(include_url=False)
    # A dictionary keeps the order and each sentence once, however many there are.
    found = dict.fromkeys(_sentence(detail, error.title) for detail in details)
    return [text if unit is None else in_unit(text, unit) for text in found]


def _sentence(detail: ErrorDetails, title: str) -> str:
    location = detail["loc"]
    if detail["type"] == "extra_forbidden":
        field, location = location[-1], location[:-1]
        problem = f"unknown field '{_cut(str(field))}'; check its spelling or remove it"
    else:
        problem = _problem(detail, title)
    if detail["type"] == "value_error" and location == ("space",):
        location = ()  # the sentences about the outline name their own place
    place = place_in_words(location)
    stop = "" if problem.endswith((".", "!", "?")) else "."
    return f"{place}: {problem}{stop}" if place else f"{problem}{stop}"


def _problem(detail: ErrorDetails, title: str) -> str:
    kind = detail["type"]
    if kind in _BOUNDS:
        return _out_of_bounds(detail, title)
    if kind in _WANTED:
        return f"must be {_WANTED[kind]}, not {_shown(detail['input'])}"
    special = _SPECIAL.get(kind)
    if special is not None:
        return special(detail["input"], detail.get("ctx", {}))
    message = detail["msg"].removeprefix("Value error, ").removeprefix("Input ")
    return message[:1].lower() + message[1:] if message.startswith("Should") else message


def _out_of_bounds(detail: ErrorDetails, title: str) -> str:
    try:
        quantity_at(title, detail["loc"]).checked(float(detail["input"]))
    except ValueError as refused:
        return str(refused)
    # Numbers nobody can tell from the bound in the unit shown.
    return detail["msg"].removeprefix("Input should ").replace("be ", "must be ", 1)


def quantity_at(title: str, location: Location) -> Quantity:
    """The quantity of the field at a place of one of the plan's models."""
    kind: Any = next(model for model in _models(Value) if model.__name__ == title)
    for step in location:
        kind = _inside(kind, step)
    return quantity(kind)


def _models(model: type[BaseModel]) -> list[type[BaseModel]]:
    return [model, *(one for sub in model.__subclasses__() for one in _models(sub))]


def _inside(kind: Any, step: int | str) -> Any:
    """What stands at a step of a location inside a type: field, entry, or kind of a union."""
    if isinstance(kind, FieldInfo):
        kind = kind.annotation
    if isinstance(kind, type) and issubclass(kind, BaseModel):
        return kind.model_fields[str(step)]
    parts = [part for part in get_args(kind) if part not in {type(None), Ellipsis}]
    if get_origin(kind) in {Union, types.UnionType}:
        if len(parts) == 1:
            return _inside(parts[0], step)
        return next(part for part in parts if part.model_fields["kind"].default == step)
    if get_origin(kind) is tuple:
        return parts[min(int(step), len(parts) - 1)]
    return _inside(parts[0], step)


def _shown(given: Any) -> str:
    """What was found in place of the right thing, briefly."""
    if given is None:
        return "empty (null)"
    if isinstance(given, bool):
        return "true" if given else "false"
    if isinstance(given, int | float):
        return f"{given:g}"
    if isinstance(given, str):
        return f"the text '{_cut(given)}'"
    return "a list" if isinstance(given, list | tuple) else "an object with named fields"


def _cut(text: str) -> str:
    plain = in_print(text)
    return plain if len(plain) <= _SHOWN_TEXT else plain[: _SHOWN_TEXT - 1] + "…"


def _too_few(_given: Any, context: Mapping[str, Any]) -> str:
    least = context["min_length"]
    entries = "entry" if least == 1 else "entries"
    return f"needs at least {least} {entries}, not {context['actual_length']}"


def _wrong_word(given: Any, context: Mapping[str, Any]) -> str:
    return f"must be {context.get('expected', 'one of the known words')}, not {_shown(given)}"


_SPECIAL: Final[dict[str, Callable[[Any, Mapping[str, Any]], str]]] = {
    "value_error": lambda _given, context: str(context.get("error", "is not valid")),
    "missing": lambda _given, _context: "is missing",
    "literal_error": _wrong_word,
    "enum": _wrong_word,
    "union_tag_invalid": lambda _given, context: (
        f"unknown kind '{_cut(str(context['tag']))}'; known kinds are {context['expected_tags']}"
    ),
    "union_tag_not_found": lambda _given, _context: (
        "does not say its kind (the field 'kind' is missing)"
    ),
    "too_short": _too_few,
    # The reader stops counting just past the limit, so the true number may be larger.
    "too_long": lambda _given, context: (
        f"there may be at most {context['max_length']}, and there are more"
    ),
    "string_too_short": lambda _given, _context: "must not be empty",
    "string_too_long": lambda given, context: (
        f"may be at most {context['max_length']} characters long, not {len(given)}"
    ),
    "string_pattern_mismatch": lambda given, _context: (
        "must be made of small letters, digits, '-' and '_' and start with a letter or digit, "
        f"not {_shown(given)}"
    ),
}


# -- places and fields in words ---------------------------------------------------------

_NAMES: Final = {
    "angles_deg": "angles",
    "azimuths_deg": "azimuths",
    "at": "time of the reading",
    "aside": "set aside",
    "bar_width": "bar width",
    "beam_uncertainty_deg": "doubt of the beam angle",
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
    "room_hours": "hours of room light",
    "room_light": "room light",
    "response_angles_deg": "angles of the response",
    "response_relative": "response",
    "rotation_deg": "rotation",
    "specular_share": "specular share",
    "tilt_deg": "tilt",
    "lux_per_umol": f"lux per {PPFD_UNIT}",
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
    "footprint": "corner",
    "goods": word("goods"),
    "lamps": "lamp",
    "linings": "lining",
    "points": "hole",
    "readings": "reading",
    "relative": "intensity",
    "response_angles_deg": "angle of the response",
    "response_relative": "response",
    "schedule": "stage",
    "surveys": "survey",
    "variants": "option",
    "walls": "wall",
}

_UNIONS: Final = frozenset({"body", "profile", "target"})
"""Fields after which a location names the kind that was chosen."""

_WITHOUT_BODY: Final = frozenset({"variants", "costs"})
"""Parts of the plan in which a length or width is not that of a lamp or box."""

_PASSED_OVER: Final = frozenset({"model", "body"})
"""Fields that would only lengthen the way to what lies inside them."""


def in_print(text: str) -> str:
    """A text on one line, with a stand-in for every sign that cannot be printed.

    Names of files may hold line breaks and bytes that are no letters.
    """
    return "".join(sign if sign.isprintable() else "\N{REPLACEMENT CHARACTER}" for sign in text)


def known_as(field: str) -> str:
    """The word for a field of the plan."""
    return _NAMES.get(field) or word(field.replace("_", " "))


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
