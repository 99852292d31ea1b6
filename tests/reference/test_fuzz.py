"""A hundred thousand broken files for every reader; takes some minutes each."""

from __future__ import annotations

import pytest

from tests.reference.fuzz import readers, run

COUNT = 100_000


@pytest.mark.harness
@pytest.mark.timeout(7200)
@pytest.mark.parametrize("name", sorted(readers()))
def test_a_hundred_thousand_broken_files_end_in_a_sentence(name: str) -> None:
    found = run(name, COUNT)
    assert found.count == COUNT
    # Enough must get through to the end, or the mutations test the front door only.
    assert found.read > COUNT / 100
