"""The space: footprints that can be built, and words for those that cannot."""

from __future__ import annotations

import math
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pydantic import ValidationError

from planner.plan.space import Space, contains, footprint_problem, signed_area

SQUARE = ((0.0, 0.0), (1.0, 0.0), (1.0, 1.0), (0.0, 1.0))
L_SHAPE = ((0.0, 0.0), (1.0, 0.0), (1.0, 0.5), (0.5, 0.5), (0.5, 1.0), (0.0, 1.0))


def test_measures_of_a_space() -> None:
    space = Space(footprint=L_SHAPE, height=2)
    assert space.area == pytest.approx(0.75)
    assert space.bounds == (0, 0, 1, 1)
    assert space.wall_count == 6
    assert space.wall(5) == ((0.0, 1.0), (0.0, 0.0))
    assert space.wall_length(2) == pytest.approx(0.5)


def test_what_lies_inside_an_l() -> None:
    assert contains(L_SHAPE, 0.25, 0.75)
    assert contains(L_SHAPE, 0.75, 0.25)
    assert not contains(L_SHAPE, 0.75, 0.75)
    assert not contains(L_SHAPE, -0.1, 0.5)


@given(count=st.integers(3, 20), radius=st.floats(0.1, 5), turn=st.floats(0, 6))
def test_the_area_of_a_regular_polygon(count: int, radius: float, turn: float) -> None:
    corners = tuple(
        (
            radius * math.cos(turn + 2 * math.pi * k / count),
            radius * math.sin(turn + 2 * math.pi * k / count),
        )
        for k in range(count)
    )
    exact = count / 2 * radius**2 * math.sin(2 * math.pi / count)
    assert signed_area(corners) == pytest.approx(exact)
    assert signed_area(tuple(reversed(corners))) == pytest.approx(-exact)
    assert footprint_problem(corners) is None
    assert contains(corners, 0, 0)
    assert not contains(corners, radius * 1.01, 0)


@pytest.mark.parametrize(
    ("footprint", "words"),
    [
        (tuple(reversed(SQUARE)), "counter-clockwise"),
        (((0, 0), (1, 1), (1, 0), (0, 1)), "walls 1 and 3"),  # a bow tie
        (((0, 0), (1, 0), (1, 0.005), (0, 1)), "wall 2 of the footprint is shorter than 1\u00a0cm"),
        (((0, 0), (1, 0), (0.5, 0), (0.5, 1)), "cross or touch"),  # folds back on itself
        (((0, 0), (1, 0), (1, 1), (0.5, 0), (0, 1)), "cross or touch"),  # a corner on a wall
        (((0, 0), (0.05, 0), (0.05, 0.05), (0, 0.05)), "less than 50 cm²"),
    ],
)
def test_a_footprint_that_cannot_be_built_is_explained(footprint: Any, words: str) -> None:
    problem = footprint_problem(tuple((float(x), float(y)) for x, y in footprint))
    assert problem is not None
    assert words in problem
    with pytest.raises(ValidationError, match=r"footprint|corners"):
        Space(footprint=footprint, height=1)


def test_a_straight_run_of_two_walls_is_fine() -> None:
    assert footprint_problem(((0, 0), (0.5, 0), (1, 0), (1, 1), (0, 1))) is None


@pytest.mark.parametrize(
    "parts",
    [
        {"height": 0.05},
        {"height": 5.1},
        {"height": math.nan},
        {"height": math.inf},
        {"footprint": ((0, 0), (60, 0), (60, 60), (0, 60))},  # centimetres taken for metres
        {"footprint": ((0, 0), (1, 0))},
        {"footprint": tuple((math.cos(k / 7), math.sin(k / 7)) for k in range(41))},
        {"door": -1},
        {"colour": "red"},
    ],
)
def test_values_out_of_bounds_are_refused(parts: dict[str, Any]) -> None:
    with pytest.raises(ValidationError):
        Space.model_validate({"footprint": SQUARE, "height": 2} | parts)


def test_a_door_must_be_a_wall() -> None:
    with pytest.raises(ValidationError, match="door is on wall 5, but the footprint has 4 walls"):
        Space(footprint=SQUARE, height=2, door=4)
    with pytest.raises(ValidationError, match="no wall is named as the door"):
        Space(footprint=SQUARE, height=2, door_open=True)


def test_a_space_does_not_change() -> None:
    space = Space(footprint=SQUARE, height=2)
    with pytest.raises(ValidationError):
        space.height = 3  # type: ignore[misc]
