"""What things line up with: places reckoned by hand in a room of 2 m x 1 m."""

from __future__ import annotations

import pytest

from planner.plan.alignment import caught, holding, lined_up
from planner.plan.place import Place, PlaceKind
from planner.plan.space import Point
from tests.unit.plan.test_groups import L_SHAPE, lamps, plan_of

CM_2 = 0.02


def test_the_middle_between_the_walls_draws() -> None:
    at, guides = lined_up(plan_of((0.3, 0.2)), lamps(0), (0.99, 0.3), CM_2)
    assert at == (1.0, 0.3)
    (gaps,) = guides
    assert gaps.equal_gaps
    # a panel 20 cm wide in the middle of 2 m leaves 90 cm at either side
    left, right = gaps.spans
    assert [x for x, _ in (*left, *right)] == pytest.approx([0.0, 0.9, 1.1, 2.0])
    assert {y for _, y in (*left, *right)} == {0.3}


def test_the_middle_is_that_of_the_part_of_an_l_one_is_in() -> None:
    plan = plan_of((0.3, 0.2), footprint=L_SHAPE)
    assert lined_up(plan, lamps(0), (0.49, 0.7), CM_2)[0] == (0.5, 0.7)
    assert lined_up(plan, lamps(0), (0.99, 0.3), CM_2)[0][0] == 1.0


def test_a_line_through_another_middle_draws() -> None:
    at, guides = lined_up(plan_of((0.3, 0.2), (1.3, 0.33)), lamps(0), (0.43, 0.34), CM_2)
    assert at == (0.43, 0.33)
    assert [guide.spans for guide in guides] == [(((0.43, 0.33), (1.3, 0.33)),)]
    assert not guides[0].equal_gaps


def test_a_row_goes_on_with_its_gap() -> None:
    """Panels of 20 cm at 0.3 and 0.7 leave 20 cm; the next one of the row is at 1.1."""
    plan = plan_of((1.5, 0.5), (0.3, 0.5), (0.7, 0.5))
    at, guides = lined_up(plan, lamps(0), (1.09, 0.5), 0.015)
    assert at == pytest.approx((1.1, 0.5))
    gaps = [guide for guide in guides if guide.equal_gaps]
    lengths = [abs(b[0] - a[0]) for guide in gaps for a, b in guide.spans if a[1] == b[1]]
    assert lengths == pytest.approx([0.2, 0.2])


def test_the_gap_to_the_wall_is_met_on_the_other_side_of_a_lamp() -> None:
    """30 cm from the wall to the panel at 0.4: the next one is 30 cm off, its middle at 0.9."""
    at, _ = lined_up(plan_of((1.7, 0.5), (0.4, 0.5)), lamps(0), (0.89, 0.5), 0.015)
    assert at == pytest.approx((0.9, 0.5))


def test_what_moves_together_does_not_line_up_with_itself() -> None:
    plan = plan_of((0.3, 0.2), (0.6, 0.33))
    assert lined_up(plan, lamps(0, 1), (0.4, 0.34), CM_2)[0] == (0.4, 0.34)


def test_nothing_holds_where_nothing_lines_up() -> None:
    plan = plan_of((0.3, 0.2), (1.3, 0.33))
    assert tuple(holding(plan, lamps(0), (0.5, 0.61))) == ()
    assert lined_up(plan, lamps(0), (0.5, 0.61), 0.0)[0] == (0.5, 0.61)


def test_a_pot_lines_up_with_a_lamp() -> None:
    plan = plan_of((0.52, 0.4))
    at, guides = lined_up(plan, (Place(PlaceKind.OBSTACLE, 0),), (0.53, 0.81), CM_2)
    assert at == (0.52, 0.81)
    assert guides[0].spans == (((0.52, 0.4), (0.52, 0.81)),)


@pytest.mark.parametrize(
    ("near", "met"),
    [
        ((1.99, 0.98), (2.0, 1.0)),  # a corner
        ((1.2, 0.01), (1.2, 0.0)),  # a wall
        ((0.49, 0.51), (0.5, 0.5)),  # the middle of the lamp
        ((0.61, 0.56), (0.6, 0.55)),  # a corner of it: 10 and 5 cm off its middle
        ((1.2, 0.5), (1.2, 0.5)),  # nothing
    ],
)
def test_a_measuring_line_is_caught(near: Point, met: Point) -> None:
    assert caught(plan_of((0.5, 0.5)), near, 0.03) == pytest.approx(met)
