"""Distances and overlaps of outlines, against geometry done by hand."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.plan.space import outlines_overlap, segment_distance, sticks_out

UNIT = ((0.0, 0.0), (1.0, 0.0), (1.0, 1.0), (0.0, 1.0))


def _box(x: float, y: float, length: float, width: float) -> tuple[tuple[float, float], ...]:
    return ((x, y), (x + length, y), (x + length, y + width), (x, y + width))


@pytest.mark.parametrize(
    ("a", "b", "expected"),
    [
        ((2.0, 0.0), (2.0, 1.0), 1.0),
        ((2.0, 2.0), (3.0, 3.0), math.sqrt(2)),
        ((2.0, -1.0), (2.0, 9.0), 1.0),
        ((1.5, 0.0), (0.0, 1.5), 0.0),  # cuts the corner
        ((2.0, 1.0), (1.0, 2.0), math.sqrt(0.5)),  # passes it at half a diagonal
        ((0.4, 0.5), (0.6, 0.5), 0.0),  # lies inside
    ],
)
def test_distance_to_a_wall(
    a: tuple[float, float], b: tuple[float, float], expected: float
) -> None:
    assert segment_distance(UNIT, a, b) == pytest.approx(expected)
    assert segment_distance(UNIT, b, a) == pytest.approx(expected)


def test_distance_from_a_point_lamp() -> None:
    assert segment_distance(((0.5, 0.5),) * 4, *UNIT[:2]) == pytest.approx(0.5)


@pytest.mark.parametrize(
    ("other", "overlap"),
    [
        (_box(1.1, 0, 1, 1), False),
        (_box(1.0, 0, 1, 1), False),  # touches
        (_box(0.9, 0, 1, 1), True),
        (_box(0.4, 0.4, 0.2, 0.2), True),  # inside
        (_box(-1, 0.4, 3, 0.2), True),  # across
        (_box(0, 0, 1, 1), True),  # the same
    ],
)
def test_overlap(other: tuple[tuple[float, float], ...], overlap: bool) -> None:
    assert outlines_overlap(UNIT, other) is overlap
    assert outlines_overlap(other, UNIT) is overlap


@given(
    x=st.floats(-0.5, 1.5),
    y=st.floats(-0.5, 1.5),
    length=st.floats(0.05, 1),
    width=st.floats(0.05, 1),
)
def test_a_box_sticks_out_of_a_box_as_intervals_say(
    x: float, y: float, length: float, width: float
) -> None:
    over = max(-x, -y, x + length - 1, y + width - 1)
    if over > 0.003:
        assert sticks_out(_box(x, y, length, width), UNIT)
    elif over < -1e-9:
        assert not sticks_out(_box(x, y, length, width), UNIT)
