"""Values with their 95 % band."""

from __future__ import annotations

import pytest

from planner.estimate.outlook import Part, Uncertainty
from planner.metrics.figures import banded
from planner.reports.content import causes


@pytest.mark.parametrize(
    ("value", "half", "most", "texts"),
    [
        (173.4, 29.99, 0, ("173", "30")),
        (1523.0, 104.7, 0, ("1520", "100")),
        (9.97, 1.73, 2, ("10.0", "1.7")),
        (173.4, 0.31, 0, ("173", "1")),
        (61.2, 9.96, 1, ("61", "10")),
        (0.1234, 0.0123, 6, ("0.123", "0.012")),
    ],
)
def test_value_and_half_width_end_at_the_same_place(
    value: float, half: float, most: int, texts: tuple[str, str]
) -> None:
    assert banded(value, half, most) == texts


def test_without_a_width_there_is_no_band() -> None:
    assert banded(12.0, 0.0, 0) == ("12", "")


def test_causes_beyond_the_fourth_are_counted() -> None:
    parts = tuple(Part(f"input {k}", 10.0 - k, 1.0) for k in range(6))
    known = Uncertainty(1, 1, 1, 0.1, 1, 0.1, parts)
    text = causes(known, "mean")
    assert "input 3" in text
    assert "input 4" not in text
    assert "2 smaller ones" in text
    assert causes(Uncertainty(0, 0, 0, 0, 0, 0, ()), "mean") == ""
