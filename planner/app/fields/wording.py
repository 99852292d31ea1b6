"""What went wrong with an edit, in one short sentence."""

from __future__ import annotations

from pydantic import ValidationError

from planner.files.explain import explain_validation
from planner.units import LengthUnit


def explain(error: ValueError, unit: LengthUnit = LengthUnit.CM) -> str:
    """The first complaint of an error as a sentence that stands beside a field."""
    text = explain_validation(error, unit)[0] if isinstance(error, ValidationError) else str(error)
    text = text.strip() or "this value cannot be used"
    return text[0].upper() + text[1:] + ("" if text.endswith((".", "!", "?")) else ".")
