"""Side by side with a general-purpose renderer, in one run on one machine.

Asked: a 24 x 24 map of 1 % rms at least 20 times sooner than by the fastest variant. Run
with ``-m bench -s`` to see the table; on a busy machine all times grow, the ratio less.
"""

from __future__ import annotations

import pytest

pytestmark = [pytest.mark.bench, pytest.mark.reference]

ASKED = 20


@pytest.mark.timeout(1200)
def test_time_to_one_percent() -> None:
    for package in ("mitsuba", "embreex"):
        pytest.importorskip(package, reason="the 'reference' extra is not installed")
    from tests.reference.race import race, ratio, table

    finishes = race()
    print("\n" + "\n".join(table(finishes)))
    print(f"ratio to the fastest variant: {ratio(finishes):.0f} (asked: {ASKED})")
    assert ratio(finishes) >= ASKED
