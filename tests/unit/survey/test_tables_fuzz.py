"""A small part of tests/reference/fuzz_tables.py for the ordinary run."""

from __future__ import annotations

from tests.reference.fuzz_tables import run


def test_spoilt_tables_are_read_or_refused() -> None:
    read, refused = run(2000, seed=7)
    assert read > 100
    assert refused > 100
