"""A small part of tests/reference/fuzz.py for the ordinary run."""

from __future__ import annotations

import pytest

from tests.reference.fuzz import readers, run


@pytest.mark.parametrize("name", sorted(readers()))
def test_spoilt_files_are_read_or_refused(name: str) -> None:
    found = run(name, 250, seed=7)
    assert found.read > 5
    assert found.count - found.read > 50
