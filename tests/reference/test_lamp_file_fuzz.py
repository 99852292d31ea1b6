"""A hundred thousand broken lamp files; takes some minutes."""

from __future__ import annotations

import pytest

from tests.reference.fuzz_lamp_files import run


@pytest.mark.reference
@pytest.mark.slow
@pytest.mark.timeout(3600)
def test_a_hundred_thousand_broken_files_end_in_a_sentence() -> None:
    report = run(100_000)
    assert report.count == 100_000
    # Enough must get through to the end, or the mutations test the front door only.
    assert report.read > 10_000
    assert len(report.outcomes) > 100
