"""What pydantic found wrong with a plan, in sentences a grower understands."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any, Final

from pydantic import ValidationError
from pydantic_core import ErrorDetails

from planner.files.place import in_print, place_in_words, quantity_in_words
from planner.units import LengthUnit

_BOUND_WORDS: Final = {
    "greater_than_equal": ("ge", "at least"),
    "greater_than": ("gt", "above"),
    "less_than_equal": ("le", "at most"),
    "less_than": ("lt", "below"),
}

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


def explain_validation(error: ValidationError, unit: LengthUnit = LengthUnit.CM) -> list[str]:
    """One sentence for each problem, led by its place in words.

    For example ``lamp 2, hanging height: must be at least 1 cm, not 0 cm: the canopy
    would stand at or above the lamp.`` Lengths are given in ``unit``.
    """
    if error.error_count() > MOST_PROBLEMS:
        return [f"{error.error_count()} things in it fit no plan; it is probably not a plan file."]
    details = error.errors(include_url=False)
    # A dictionary keeps the order and each sentence once, however many there are.
    return list(dict.fromkeys(_sentence(detail, error.title, unit) for detail in details))


def _sentence(detail: ErrorDetails, title: str, unit: LengthUnit) -> str:
    location = detail["loc"]
    if detail["type"] == "extra_forbidden":
        field, location = location[-1], location[:-1]
        problem = f"unknown field '{_cut(str(field))}'; check its spelling or remove it"
    else:
        problem = _problem(detail, title, unit)
    if detail["type"] == "value_error" and location == ("space",):
        location = ()  # the sentences about the outline name their own place
    place = place_in_words(location)
    stop = "" if problem.endswith((".", "!", "?")) else "."
    return f"{place}: {problem}{stop}" if place else f"{problem}{stop}"


def _problem(detail: ErrorDetails, title: str, unit: LengthUnit) -> str:
    kind = detail["type"]
    if kind in _BOUND_WORDS:
        return _out_of_bounds(detail, title, unit)
    if kind in _WANTED:
        return f"must be {_WANTED[kind]}, not {_shown(detail['input'])}"
    special = _SPECIAL.get(kind)
    if special is not None:
        return special(detail["input"], detail.get("ctx", {}))
    message = detail["msg"].removeprefix("Value error, ").removeprefix("Input ")
    return message[:1].lower() + message[1:] if message.startswith("Should") else message


def _out_of_bounds(detail: ErrorDetails, title: str, unit: LengthUnit) -> str:
    key, words = _BOUND_WORDS[detail["type"]]
    location, given = (title, *detail["loc"]), detail["input"]
    bound = quantity_in_words(detail.get("ctx", {})[key], location, unit)
    text = f"must be {words} {bound}"
    if isinstance(given, int | float) and not isinstance(given, bool):
        shown = quantity_in_words(given, location, unit)
        text += f", not {shown}" if shown != bound else ""
        if location[-1] == "hanging_height" and given <= 0:
            text += ": the canopy would stand at or above the lamp"
    return text


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


def _value_error(_given: Any, context: Mapping[str, Any]) -> str:
    return str(context.get("error", "is not valid"))


def _missing(_given: Any, _context: Mapping[str, Any]) -> str:
    return "is missing"


def _wrong_word(given: Any, context: Mapping[str, Any]) -> str:
    return f"must be {context.get('expected', 'one of the known words')}, not {_shown(given)}"


def _wrong_kind(_given: Any, context: Mapping[str, Any]) -> str:
    return f"unknown kind '{_cut(str(context['tag']))}'; known kinds are {context['expected_tags']}"


def _no_kind(_given: Any, _context: Mapping[str, Any]) -> str:
    return "does not say its kind (the field 'kind' is missing)"


def _too_few(_given: Any, context: Mapping[str, Any]) -> str:
    least = context["min_length"]
    entries = "entry" if least == 1 else "entries"
    return f"needs at least {least} {entries}, not {context['actual_length']}"


def _too_many(_given: Any, context: Mapping[str, Any]) -> str:
    # The reader stops counting just past the limit, so the true number may be larger.
    return f"may have at most {context['max_length']} entries, and has more"


def _empty_text(_given: Any, _context: Mapping[str, Any]) -> str:
    return "must not be empty"


def _long_text(given: Any, context: Mapping[str, Any]) -> str:
    return f"may be at most {context['max_length']} characters long, not {len(given)}"


def _bad_key(given: Any, _context: Mapping[str, Any]) -> str:
    return (
        "must be made of small letters, digits, '-' and '_' and start with a letter or digit, "
        f"not {_shown(given)}"
    )


_SPECIAL: Final[dict[str, Callable[[Any, Mapping[str, Any]], str]]] = {
    "value_error": _value_error,
    "missing": _missing,
    "literal_error": _wrong_word,
    "enum": _wrong_word,
    "union_tag_invalid": _wrong_kind,
    "union_tag_not_found": _no_kind,
    "too_short": _too_few,
    "too_long": _too_many,
    "string_too_short": _empty_text,
    "string_too_long": _long_text,
    "string_pattern_mismatch": _bad_key,
}
