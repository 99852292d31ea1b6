"""The scale beside a raised lamp: where it turns, what it says."""

from __future__ import annotations

import pytest

from planner.app.canvas.ladder_scale import in_words, rung_text, stretches
from planner.catalogue.library import demo_plan
from planner.estimate.ladder import Ladder, Rung


def straight() -> Ladder:
    """300 at 10 cm falling evenly to 100 at 50 cm: 5 µmol for each centimetre."""
    rungs = tuple(Rung(0.1 + 0.1 * k, 300.0 - 50 * k, 150.0) for k in range(5))
    return Ladder(demo_plan(), (0,), rungs)


def test_it_turns_where_the_mean_meets_the_ends_of_the_band() -> None:
    found = stretches(straight(), (150.0, 250.0))
    assert [place for _, _, place in found] == [1, 0, -1]
    # 250 at 20 cm, 150 at 40 cm; told to a hundred-and-sixtieth of the 40 cm.
    assert found[0][1] == pytest.approx(0.2, abs=0.0026)
    assert found[1][1] == pytest.approx(0.4, abs=0.0026)
    assert (found[0][0], found[-1][1]) == (0.1, 0.5)


def test_without_a_band_it_has_no_parts() -> None:
    assert [place for _, _, place in stretches(straight(), None)] == [None]


def test_it_is_told_in_words_and_figures() -> None:
    assert rung_text(Rung(0.3, 200.0, 122.0)) == "200 · 61 %"
    assert rung_text(Rung(0.3, 0.0, 0.0)) == "0 · –"
    said = in_words((150.0, 250.0), straight().at(0.45))
    assert said == (
        "Ladder of heights: here the mean is 125, the lowest spot 120 % of it, under the band."
    )
    assert in_words(None, straight().at(0.9)) == ""
