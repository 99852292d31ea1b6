"""What is said when a table of readings cannot be read."""

from __future__ import annotations


class TableError(ValueError):
    """A table that cannot be read; the message is one sentence with row and column."""


def cell_name(row: int, column: int) -> str:
    """A place counted from 0 as people count: 'row 3, column 2'."""
    return f"row {row + 1}, column {column + 1}"


def quoted(text: str) -> str:
    """A cell's text for a message: short, on one line."""
    shown = " ".join(text.split())
    if len(shown) > 30:
        shown = shown[:29] + "…"
    return f"'{shown}'"
