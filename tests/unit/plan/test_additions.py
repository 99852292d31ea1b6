"""What is added lands where it fits, whatever the space and whatever stands there already."""

from __future__ import annotations

import math

import pytest

from planner.plan import edits
from planner.plan.additions import SHAPES, duplicate_lamp, new_lamp, new_obstacle
from planner.plan.lamp import BarsBody, LampModel, PanelBody
from planner.plan.lining import WallCover
from planner.plan.plan import Plan
from planner.plan.space import Canopy, Point, Space, outlines_overlap, sticks_out

L_SHAPE = ((0.0, 0.0), (0.9, 0.0), (0.9, 0.3), (0.35, 0.3), (0.35, 0.8), (0.0, 0.8))
NARROW = ((0.0, 0.0), (0.3, 0.0), (0.3, 1.2), (0.0, 1.2))
SQUARE = ((0.0, 0.0), (0.6, 0.0), (0.6, 0.6), (0.0, 0.6))
BAR = LampModel(
    key="bar", name="Bar", body=BarsBody(length=0.55, width=0.04, count=1, bar_width=0.04),
    ppf=50.0, watts=20.0,
)  # fmt: skip
PANEL = LampModel(
    key="panel", name="Panel", body=PanelBody(length=0.24, width=0.24), ppf=250.0, watts=100.0
)
SMALL = LampModel(
    key="small", name="Small", body=PanelBody(length=0.15, width=0.15), ppf=100.0, watts=40.0
)


def bare(footprint: tuple[Point, ...]) -> Plan:
    return Plan(
        space=Space(footprint=footprint, height=1.4),
        walls=(WallCover.plain("open"),) * len(footprint),
        canopy=Canopy(height=0.2, closed=True, reflectance=0.1),
    )


def apart(plan: Plan) -> bool:
    bodies = [lamp.outline() for lamp in plan.lamps]
    clear = all(not outlines_overlap(a, b) for k, a in enumerate(bodies) for b in bodies[k + 1 :])
    return clear and not any(sticks_out(body, plan.space.footprint) for body in bodies)


@pytest.mark.parametrize("footprint", [L_SHAPE, NARROW, SQUARE])
@pytest.mark.parametrize("model", [BAR, SMALL])
def test_lamps_added_one_after_another_lie_inside_and_clear(
    footprint: tuple[Point, ...], model: LampModel
) -> None:
    plan = bare(footprint)
    for _ in range(3):
        plan = edits.add_lamp(plan, new_lamp(plan, model))
    assert apart(plan)


@pytest.mark.parametrize("shape", SHAPES)
@pytest.mark.parametrize("footprint", [L_SHAPE, NARROW, SQUARE])
def test_obstacles_added_twice_lie_inside_and_clear(
    footprint: tuple[Point, ...], shape: object
) -> None:
    plan = bare(footprint)
    for _ in range(2):
        plan = edits.add_obstacle(plan, new_obstacle(plan, shape))  # type: ignore[arg-type]
    first, second = (one.outline() for one in plan.obstacles)
    assert not sticks_out(first, footprint)
    assert not sticks_out(second, footprint)
    assert not outlines_overlap(first, second)


def test_a_duplicate_hangs_beside_across_the_bar() -> None:
    plan = bare(SQUARE)
    plan = edits.add_lamp(plan, new_lamp(plan, BAR))
    twice = duplicate_lamp(plan, 0)
    first, second = twice.lamps
    assert apart(twice)
    assert second.x == pytest.approx(first.x)
    assert abs(second.y - first.y) == pytest.approx(0.07, abs=0.03)


def test_where_there_is_no_room_the_second_lamp_is_not_on_the_first() -> None:
    """0.6 m less a panel of 0.24 m in the middle leaves 0.18 m: no second one beside it."""
    plan = bare(SQUARE)
    for _ in range(2):
        plan = edits.add_lamp(plan, new_lamp(plan, PANEL))
    first, second = plan.lamps
    assert math.dist((first.x, first.y), (second.x, second.y)) > 0.2
    assert not sticks_out(second.outline(), SQUARE)
    doubled = duplicate_lamp(edits.remove_lamp(plan, 1), 0)
    assert math.dist((doubled.lamps[0].x, doubled.lamps[0].y), (
        doubled.lamps[1].x, doubled.lamps[1].y,
    )) > 0.2  # fmt: skip


def test_the_door_stays_on_the_longer_part_of_a_split_wall() -> None:
    plan = edits.with_space(bare(SQUARE), door=0)
    near_start = edits.add_corner(plan, 0, (0.2, 0.0))
    near_end = edits.add_corner(plan, 0, (0.45, 0.0))
    for made in (near_start, near_end):
        assert made.space.door is not None
        assert made.space.wall_length(made.space.door) == max(
            made.space.wall_length(k) for k in (0, 1)
        )


@pytest.mark.parametrize("index", range(4))
def test_a_corner_is_cut_off_both_walls_alike(index: int) -> None:
    """A right-angled triangle of 0.2 m legs leaves, its hypotenuse 0.2·√2 is the new wall."""
    plan = edits.with_space(bare(SQUARE), door=2)
    made = edits.cut_corner(plan, index)
    assert made.space.area == pytest.approx(0.36 - 0.02)
    assert made.space.wall_length(index) == pytest.approx(0.2 * math.sqrt(2))
    start, end = made.space.wall(made.space.door or 0)
    # the door is the wall along y = 0.6 still
    assert start[1] == end[1] == pytest.approx(0.6)
    with pytest.raises(ValueError, match="cannot be cut off"):
        edits.cut_corner(plan, index, 0.6)
