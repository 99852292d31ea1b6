"""Several things at once: expected places are reckoned by hand."""

from __future__ import annotations

import pytest

from planner.catalogue.library import demo_plan
from planner.plan import edits, groups
from planner.plan.checks import clashes
from planner.plan.dials import dial
from planner.plan.groups import Edge
from planner.plan.lamp import Lamp, LampModel, PanelBody
from planner.plan.lining import WallCover
from planner.plan.place import Place, PlaceKind
from planner.plan.plan import Plan
from planner.plan.space import Canopy, Obstacle, Point, Space

PANEL = LampModel(
    key="panel", name="Panel", body=PanelBody(length=0.2, width=0.1), ppf=250.0, watts=100.0
)
WIDE = LampModel(
    key="wide", name="Wide", body=PanelBody(length=0.4, width=0.1), ppf=250.0, watts=100.0
)
ROOM = ((0.0, 0.0), (2.0, 0.0), (2.0, 1.0), (0.0, 1.0))
L_SHAPE = ((0.0, 0.0), (2.0, 0.0), (2.0, 0.4), (1.0, 0.4), (1.0, 1.0), (0.0, 1.0))


def lamps(*places: int) -> tuple[Place, ...]:
    return tuple(Place(PlaceKind.LAMP, place) for place in places)


BOX = Place(PlaceKind.OBSTACLE, 0)


def plan_of(*spots: Point, footprint: tuple[Point, ...] = ROOM) -> Plan:
    """Panels of 20 x 10 cm at these places, and a box of 10 cm in a corner."""
    hung = [Lamp(model=PANEL, x=x, y=y, hanging_height=0.5) for x, y in spots]
    box = Obstacle(name="Box", x=0.1, y=0.9, underside=0, length=0.1, width=0.1, thickness=0.3)
    return Plan(
        space=Space(footprint=footprint, height=1.4),
        walls=(WallCover.plain("open"),) * len(footprint),
        canopy=Canopy(height=0.2),
        lamps=tuple(hung),
        obstacles=(box,),
    )


def spots(plan: Plan) -> list[Point]:
    return [(lamp.x, lamp.y) for lamp in plan.lamps]


def test_steps_are_named_by_what_they_take() -> None:
    assert groups.named("Move", lamps(0)) == "Move lamp"
    assert groups.named("Move", lamps(0, 1, 2)) == "Move 3 lamps"
    assert groups.named("Remove", (BOX,)) == "Remove obstacle"
    assert groups.named("Remove", (BOX, *lamps(0))) == "Remove 2 things"


def test_several_move_together_and_stop_together_at_the_wall() -> None:
    """The right one may go 0.29 m, a centimetre off the wall; so may both."""
    plan = plan_of((0.7, 0.5), (1.7, 0.5))
    near = groups.moved(plan, lamps(0, 1), (0.1, 0.2))
    assert spots(near) == [(0.8, 0.7), (1.8, 0.7)]
    far = groups.moved(plan, lamps(0, 1), (0.9, 0.2))
    assert spots(far) == [pytest.approx((0.99, 0.7)), pytest.approx((1.99, 0.7))]


def test_a_group_that_would_straddle_a_corner_keeps_its_shape() -> None:
    plan = plan_of((0.5, 0.2), (1.5, 0.2), footprint=L_SHAPE)
    after = groups.moved(plan, lamps(0, 1), (0.0, 0.6))
    (ax, ay), (bx, by) = spots(after)
    assert (bx - ax, by - ay) == pytest.approx((1.0, 0.0))
    assert ay == pytest.approx(0.39)  # 40 cm less the centimetre kept off a wall


def test_moving_by_nothing_is_the_same_plan() -> None:
    plan = plan_of((1 / 3, 0.5))
    assert groups.moved(plan, lamps(0), (0.0, 0.0)) is plan


def test_lamp_and_box_move_in_one() -> None:
    after = groups.moved(plan_of((0.7, 0.5)), (*lamps(0), BOX), (0.1, -0.1))
    assert spots(after) == [(0.8, 0.4)]
    assert (after.obstacles[0].x, after.obstacles[0].y) == (0.2, 0.8)


def test_they_turn_about_the_one_that_leads() -> None:
    after = groups.turned(plan_of((0.8, 0.5), (1.2, 0.5)), lamps(0, 1), 90)
    assert spots(after) == [(0.8, 0.5), (0.8, 0.9)]
    assert [lamp.rotation_deg for lamp in after.lamps] == [90, 90]
    other = groups.turned(plan_of((0.8, 0.5), (1.2, 0.5)), lamps(1, 0), 90)
    assert spots(other) == [(1.2, 0.1), (1.2, 0.5)]


def test_turned_out_of_the_room_all_come_back_together() -> None:
    """A metre apart, upright about y = 0.5 the second would be at 1.5: both come down 0.51."""
    after = groups.turned(plan_of((0.5, 0.55), (1.4, 0.55)), lamps(0, 1), 90)
    assert spots(after) == [pytest.approx((0.5, 0.09)), pytest.approx((0.5, 0.99))]


def test_they_rise_together_as_far_as_the_first_can() -> None:
    """The ceiling is 1.2 m over the canopy: the one at 1.0 m has 0.2 m left."""
    plan = edits.change_lamp(plan_of((0.5, 0.5), (1.2, 0.5)), 1, hanging_height=1.0)
    after, stopped = groups.raised(plan, lamps(0, 1), 0.5)
    assert [lamp.hanging_height for lamp in after.lamps] == pytest.approx([0.7, 1.2])
    assert "at most" in stopped
    assert "ceiling" in stopped
    after, stopped = groups.raised(plan, lamps(0, 1), -0.1)
    assert [lamp.hanging_height for lamp in after.lamps] == pytest.approx([0.4, 0.9])
    assert stopped == ""


def test_all_lamps_take_the_height_of_the_one_that_leads() -> None:
    plan = edits.change_lamp(plan_of((0.5, 0.5), (1.2, 0.5)), 1, hanging_height=1.0)
    after, left = groups.levelled(plan, lamps(1, 0))
    assert [lamp.hanging_height for lamp in after.lamps] == [1.0, 1.0]
    assert left == ()


def test_lamps_of_a_rack_take_a_height_over_the_canopy_beneath_each() -> None:
    """Its bars hang 36 cm over the plan's own canopy, 36 over the middle tier, 30 over the upper.

    The own canopy is at 12 cm; the tiers at 62 and 112 cm, the middle one's shelf from 50 cm on.
    """
    rack = demo_plan("rack")
    after, left = groups.levelled(rack, lamps(0, 1, 2, 3, 4, 5))
    faces = [after.lamp_height(lamp) for lamp in after.lamps]
    assert faces == pytest.approx([0.48, 0.48, 0.98, 0.98, 1.48, 1.48])
    assert left == ()
    assert not clashes(after)
    # 45 cm over the upper tier, at 157 cm, is under the ceiling; the shelves are in the way below.
    high = edits.change_lamp(rack, 4, hanging_height=1.45)
    after, left = groups.levelled(high, lamps(4, 0, 1, 2, 3, 5))
    faces = [after.lamp_height(lamp) for lamp in after.lamps]
    assert faces == pytest.approx([0.48, 0.48, 0.98, 0.98, 1.57, 1.57])
    assert left == lamps(0, 1, 2, 3)


def test_a_shelf_takes_along_what_hangs_from_it_and_stands_on_it() -> None:
    """The bars of the middle tier hang under the upper shelf; a pot stands on that."""
    rack = demo_plan("rack")
    pot = Obstacle(name="Pot", x=0.2, y=0.2, underside=1.12, length=0.1, width=0.1, thickness=0.1)
    rack = edits.add_obstacle(rack, pot)
    shelf, faces = Place(PlaceKind.OBSTACLE, 1), [0.48, 0.48, 1.08, 1.08, 1.42, 1.42]
    after, stopped = groups.raised(rack, (shelf,), 0.1)
    typed = dial("underside").put(rack, shelf, 1.1)
    for plan in (after, typed):
        assert [plan.lamp_height(lamp) for lamp in plan.lamps] == pytest.approx(faces)
        assert [one.underside for one in plan.obstacles] == pytest.approx([0.5, 1.1, 1.22])
    assert stopped == ""
    both, _ = groups.raised(rack, (shelf, *lamps(2)), 0.1)
    assert both == after
    # The pot, 10 cm high, meets the ceiling at 160 cm after 38 cm.
    after, stopped = groups.raised(rack, (shelf,), 0.5)
    assert after.obstacles[1].underside == pytest.approx(1.38)
    assert "Pot" in stopped or "ceiling" in stopped
    with pytest.raises(ValueError, match="'Pot' stands on it and is at the ceiling"):
        dial("underside").put(rack, shelf, 1.4)
    # The bars may go down to 1 cm over the canopy at 12 cm, 85 cm lower.
    with pytest.raises(ValueError, match="lamp 3 hangs from it and is at the canopy"):
        dial("underside").put(rack, shelf, 0.1)


def test_several_are_taken_away_at_once() -> None:
    plan = plan_of((0.5, 0.5), (1.0, 0.5), (1.5, 0.5))
    after = groups.removed(plan, (*lamps(2, 0), BOX))
    assert spots(after) == [(1.0, 0.5)]
    assert after.obstacles == ()


@pytest.mark.parametrize(
    ("edge", "expected"),
    [
        (Edge.LEFT, (0.7, 0.7)),  # left sides at 0.5: 0.4 m wide, its middle at 0.7
        (Edge.CENTRE, (0.6, 0.7)),
        (Edge.RIGHT, (0.5, 0.7)),
        (Edge.FRONT, (1.4, 0.3)),
        (Edge.MIDDLE, (1.4, 0.3)),
    ],
)
def test_sides_and_middles_come_into_line(edge: Edge, expected: Point) -> None:
    plan = plan_of((0.6, 0.3), (1.4, 0.7))
    plan = edits.change_lamp(plan, 1, model=WIDE)
    after = groups.aligned(plan, lamps(0, 1), edge)
    assert spots(after)[0] == (0.6, 0.3)
    assert spots(after)[1] == pytest.approx(expected)


def test_gaps_become_equal_and_the_outermost_stay() -> None:
    """20 cm panels from 0.3 to 1.7: 1.6 m less 0.6 m are two gaps of half a metre."""
    plan = plan_of((1.7, 0.5), (0.3, 0.5), (0.6, 0.2))
    after = groups.distributed(plan, lamps(0, 1, 2), 0)
    assert spots(after) == [(1.7, 0.5), (0.3, 0.5), pytest.approx((1.0, 0.2))]
    with pytest.raises(ValueError, match="at least three"):
        groups.distributed(plan, lamps(0, 1), 0)


def test_gaps_are_between_sides_not_middles() -> None:
    """Panels of 20, 40 and 20 cm from 0.2 to 1.8 m: 1.6 less 0.8 are two gaps of 0.4 m."""
    plan = edits.change_lamp(plan_of((0.3, 0.5), (0.6, 0.5), (1.7, 0.5)), 1, model=WIDE)
    after = groups.distributed(plan, lamps(0, 1, 2), 0)
    assert after.lamps[1].x == pytest.approx(1.0)


def test_spread_gives_each_its_share_of_the_space() -> None:
    """Two metres in three shares: middles at a third, one and five thirds."""
    after = groups.spread(plan_of((0.9, 0.5), (1.9, 0.2), (0.2, 0.8)), lamps(0, 1, 2), 0)
    assert [lamp.x for lamp in after.lamps] == pytest.approx([1.0, 5 / 3, 1 / 3])
    assert [lamp.y for lamp in after.lamps] == [0.5, 0.2, 0.8]


def test_a_band_of_rubber_takes_what_it_touches() -> None:
    plan = plan_of((0.5, 0.5), (1.0, 0.5), (1.5, 0.5))
    assert groups.within(plan, (1.05, 0.3), (0.55, 0.7)) == lamps(0, 1)
    assert groups.within(plan, (0.0, 0.0), (2.0, 1.0)) == (*lamps(0, 1, 2), BOX)
    assert groups.within(plan, (0.7, 0.0), (0.8, 1.0)) == ()
