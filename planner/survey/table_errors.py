"""What is said when a table of readings cannot be read."""

from __future__ import annotations


class TableError(ValueError):
    """A table that cannot be read; the message is one sentence with row and column."""


def quoted(text: str) -> str:
    """A cell's text for a message: short, on one line."""
    shown = " ".join(text.split())
    if len(shown) > 30:
        shown = shown[:29] + "…"
    return f"'{shown}'"
