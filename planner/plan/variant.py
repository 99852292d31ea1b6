"""Variants: options kept beside the plan, each a whole setup that stays what it was.

What differs between two setups is not stored: ``changes`` derives it for names and texts.
"""

from __future__ import annotations

from typing import Final

from planner.plan.fields import Key, Name, Text, Value
from planner.plan.setup import Setup

MAX_VARIANTS: Final = 60


class Variant(Value):
    """A setup kept under a name; ``key`` tells it from the others whatever it is called."""

    key: Key
    name: Name
    note: Text = ""
    setup: Setup


def variants_problem(variants: tuple[Variant, ...]) -> str | None:
    """Say in words why these variants cannot stand together, or None when they can."""
    for what, texts in (
        ("are called", [variant.name for variant in variants]),
        ("carry the key", [variant.key for variant in variants]),
    ):
        for text in texts:
            if texts.count(text) > 1:
                return f"two variants {what} '{text}'; give each its own."
    return None
