"""Edits: each gives a new valid plan or refuses, and never touches the old one."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.plan import edits
from planner.plan.lamp import Lamp, LampModel, PointBody
from planner.plan.lining import Band, Lining, WallCover
from planner.plan.plan import Plan
from planner.plan.space import CarriedCanopy, Obstacle, Space, contains
from planner.plan.target import PpfdTarget

L_SHAPE = ((0.0, 0.0), (1.0, 0.0), (1.0, 0.5), (0.5, 0.5), (0.5, 1.0), (0.0, 1.0))
MODEL = LampModel(key="a", name="A", body=PointBody(), ppf=50, watts=25)


def _lining(key: str, reflectance: float = 0.8) -> Lining:
    return Lining(key=key, name=key, reflectance=reflectance, low=0, high=1)


TILE, FOIL, PAINT = _lining("tile"), _lining("foil"), _lining("paint")


def _lamp(x: float = 0.25, y: float = 0.25, hanging_height: float = 0.5) -> Lamp:
    return Lamp(model=MODEL, x=x, y=y, hanging_height=hanging_height)


def _plan(**parts: Any) -> Plan:
    """An L with a wall of its own lining each: w0 ... w5, its door on wall 3."""
    walls = tuple(_lining(f"w{k}") for k in range(6))
    given: dict[str, Any] = {
        "space": Space(footprint=L_SHAPE, height=2.0, door=3),
        "linings": (*walls, TILE),
        "walls": tuple(WallCover.plain(lining.key) for lining in walls),
        "ceiling": "tile",
        "floor": "tile",
        "lamps": (_lamp(),),
    }
    return Plan.model_validate(given | parts)


def _covers(plan: Plan) -> list[str]:
    return [cover.bands[0].lining for cover in plan.walls]


# -- footprint --------------------------------------------------------------------------


def test_moving_a_corner_moves_nothing_else() -> None:
    plan = _plan()
    moved = edits.move_corner(plan, 1, (1.2, -0.1))
    assert moved.space.footprint[1] == (1.2, -0.1)
    assert moved.space.footprint[2:] == L_SHAPE[2:]
    assert plan.space.footprint == L_SHAPE, "the old plan stays as it was"
    assert moved.walls == plan.walls


def test_a_corner_dragged_across_a_wall_is_refused() -> None:
    with pytest.raises(ValueError, match="cross or touch"):
        edits.move_corner(_plan(), 0, (0.8, 0.8))


def test_a_lamp_left_outside_comes_back_in() -> None:
    plan = _plan(lamps=(_lamp(0.9, 0.25),))
    moved = edits.move_wall(plan, 1, -0.2, 0)
    assert moved.space.bounds == pytest.approx((0, 0, 0.8, 1))
    assert contains(moved.space.footprint, moved.lamps[0].x, moved.lamps[0].y)
    assert moved.lamps[0].x == pytest.approx(0.79)
    assert moved.lamps[0].y == pytest.approx(0.25)


def test_moving_a_wall_stretches_its_neighbours() -> None:
    moved = edits.move_wall(_plan(), 3, 0.1, 0)
    assert moved.space.footprint[3] == pytest.approx((0.6, 0.5))
    assert moved.space.footprint[4] == pytest.approx((0.6, 1.0))
    assert moved.space.area == pytest.approx(0.75 + 0.05)


@pytest.mark.parametrize(("wall", "door"), [(0, 4), (2, 4), (3, 3), (5, 3)])
def test_a_new_corner_keeps_linings_and_door(wall: int, door: int) -> None:
    plan = _plan()
    (ax, ay), (bx, by) = plan.space.wall(wall)
    after = edits.add_corner(plan, wall, ((ax + bx) / 2, (ay + by) / 2))
    expected = _covers(plan)
    expected.insert(wall, expected[wall])
    assert _covers(after) == expected
    assert after.space.door == door
    assert after.space.area == pytest.approx(plan.space.area)


@pytest.mark.parametrize("wall", range(6))
def test_taking_a_new_corner_out_again_gives_the_old_plan(wall: int) -> None:
    plan = _plan()
    (ax, ay), (bx, by) = plan.space.wall(wall)
    after = edits.add_corner(plan, wall, ((ax + bx) / 2, (ay + by) / 2))
    assert edits.remove_corner(after, wall + 1) == plan


def test_a_triangle_keeps_its_corners() -> None:
    triangle = Space(footprint=((0, 0), (1, 0), (0, 1)), height=2)
    plan = _plan(space=triangle, walls=tuple(WallCover.plain("tile") for _ in range(3)))
    with pytest.raises(ValueError, match="at least three corners"):
        edits.remove_corner(plan, 0)


def test_a_clockwise_outline_is_turned_round() -> None:
    square = ((0.0, 0.0), (0.0, 1.0), (1.0, 1.0), (1.0, 0.0))
    after = edits.set_footprint(_plan(), square)
    assert after.space.area == pytest.approx(1)
    assert after.space.wall_count == len(after.walls) == 4


def test_an_outline_with_fewer_walls_than_the_door_loses_it() -> None:
    after = edits.set_footprint(_plan(), ((0, 0), (1, 0), (0, 1)))
    assert after.space.door is None


def test_stretching_takes_the_lamps_along() -> None:
    after = edits.set_size(_plan(), 2.0, 0.5)
    assert after.space.bounds == pytest.approx((0, 0, 2, 0.5))
    assert after.space.area == pytest.approx(0.75)  # twice as wide, half as deep
    assert (after.lamps[0].x, after.lamps[0].y) == pytest.approx((0.5, 0.125))


def test_a_longer_wall_keeps_an_l_an_l() -> None:
    after = edits.set_wall_length(_plan(), 0, 1.3)
    assert after.space.wall_length(0) == pytest.approx(1.3)
    assert after.space.footprint[2] == pytest.approx((1.3, 0.5))
    assert after.space.footprint[3:] == L_SHAPE[3:]


@given(x=st.floats(-2, 3), y=st.floats(-2, 3))
def test_the_nearest_point_inside_lies_inside(x: float, y: float) -> None:
    point = edits.nearest_inside(L_SHAPE, (x, y))
    assert contains(L_SHAPE, *point)
    if contains(L_SHAPE, x, y):
        assert point == (x, y)


# -- lamps ------------------------------------------------------------------------------


def test_hanging_and_taking_down() -> None:
    plan = _plan()
    two = edits.add_lamp(plan, _lamp(0.75, 0.25))
    assert [lamp.x for lamp in two.lamps] == [0.25, 0.75]
    assert edits.remove_lamp(two, 1) == plan
    assert [lamp.x for lamp in edits.remove_lamp(two, 0).lamps] == [0.75]


def test_changing_one_lamp_leaves_the_others() -> None:
    two = edits.add_lamp(_plan(), _lamp(0.75, 0.25))
    after = edits.change_lamp(two, 1, output_percent=30.0, rotation_deg=90.0)
    assert after.lamps[0] == two.lamps[0]
    assert (after.lamps[1].output_percent, after.lamps[1].rotation_deg) == (30, 90)


def test_a_lamp_is_not_moved_outside() -> None:
    with pytest.raises(ValueError, match="hangs outside the space"):
        edits.change_lamp(_plan(), 0, x=0.75, y=0.75)


def test_a_change_for_every_lamp() -> None:
    two = edits.add_lamp(_plan(), _lamp(0.75, 0.25))
    after = edits.each_lamp(two, lambda lamp: lamp.model_copy(update={"output_percent": 50.0}))
    assert [lamp.output_percent for lamp in after.lamps] == [50, 50]


# -- surfaces ---------------------------------------------------------------------------


def test_lining_a_wall_brings_the_lining_and_drops_the_unused() -> None:
    after = edits.line_wall(_plan(), 2, 0, FOIL)
    assert _covers(after) == ["w0", "w1", "foil", "w3", "w4", "w5"]
    keys = {lining.key for lining in after.linings}
    assert "foil" in keys
    assert "w2" not in keys


def test_lining_all_walls_floor_and_ceiling() -> None:
    after = edits.line_all_walls(_plan(), FOIL)
    after = edits.line_floor(edits.line_ceiling(after, PAINT), PAINT)
    assert _covers(after) == ["foil"] * 6
    assert (after.ceiling, after.floor) == ("paint", "paint")
    assert {lining.key for lining in after.linings} == {"foil", "paint"}


def test_bands_split_move_and_merge() -> None:
    plan = _plan()
    split = edits.split_band(plan, 0, 0, 0.8)
    assert split.walls[0].bands == (Band(lining="w0", top=0.8), Band(lining="w0"))
    lined = edits.line_wall(split, 0, 1, FOIL)
    moved = edits.change_band(lined, 0, 0, top=0.9)
    assert moved.walls[0].bands == (Band(lining="w0", top=0.9), Band(lining="foil"))
    assert edits.merge_band(moved, 0, 0) == plan


def test_the_top_band_has_no_edge_to_take_away() -> None:
    with pytest.raises(ValueError, match="uppermost band"):
        edits.merge_band(_plan(), 0, 0)


def test_band_edges_do_not_pass_each_other() -> None:
    plan = edits.split_band(edits.split_band(_plan(), 0, 0, 0.8), 0, 1, 1.2)
    with pytest.raises(ValueError, match="from the floor up"):
        edits.change_band(plan, 0, 0, top=1.3)


def test_changing_a_lining_changes_it_wherever_it_hangs() -> None:
    after = edits.change_lining(_plan(), _lining("tile", 0.5))
    assert after.lining("tile").reflectance == 0.5
    assert after.lining("w0").reflectance == 0.8


# -- heights ----------------------------------------------------------------------------


def test_the_lamps_stay_where_they_hang_when_the_canopy_grows() -> None:
    plan = _plan()
    after = edits.set_canopy_height(plan, 0.45)
    assert after.canopy.height == 0.45
    assert after.lamps[0].hanging_height == pytest.approx(0.25)
    assert after.lamp_height(after.lamps[0]) == pytest.approx(plan.lamp_height(plan.lamps[0]))


def test_the_canopy_does_not_grow_past_the_lamp() -> None:
    with pytest.raises(ValueError, match=r"must be at most 69.cm, not 75.cm .lamp 1 hangs at 70"):
        edits.set_canopy_height(_plan(), 0.75)


def test_other_canopy_parts() -> None:
    after = edits.set_canopy(_plan(), closed=False, reflectance=0.1)
    assert (after.canopy.closed, after.canopy.reflectance) == (False, 0.1)
    assert after.canopy.height == 0.2


def test_a_lower_ceiling_brings_lamps_and_bands_down() -> None:
    plan = edits.line_wall(edits.split_band(_plan(), 0, 0, 0.8), 0, 1, FOIL)
    plan = edits.change_lamp(plan, 0, hanging_height=1.5)
    after = edits.set_height(plan, 0.7)
    assert after.space.height == 0.7
    assert after.lamps[0].hanging_height == pytest.approx(0.5)
    assert after.walls[0].bands == (Band(lining="w0"),)
    assert "foil" not in {lining.key for lining in after.linings}
    assert edits.set_height(plan, 0.9).walls[0] == plan.walls[0]


def test_the_door_can_be_named_opened_and_taken_away() -> None:
    after = edits.with_space(_plan(), door=1, door_open=True)
    assert after.wall_opens(1)
    assert edits.with_space(after, door=None, door_open=False).space.door is None


# -- the canopy that is judged ------------------------------------------------------------


def _tray(*, judged: bool, target: PpfdTarget | None = None) -> Obstacle:
    return Obstacle(
        name="Tray", x=0.25, y=0.25, underside=0.0, length=0.1, width=0.1, thickness=0.3,
        lining="tile", canopy=CarriedCanopy(judged=judged, target=target),
    )  # fmt: skip


def test_of_two_canopies_marked_in_a_file_the_first_counts_and_one_edit_mends_it() -> None:
    plan = _plan(obstacles=(_tray(judged=False), _tray(judged=True), _tray(judged=True)))
    assert plan.judged_top == 1
    for lead in (0, 2, None):
        led = edits.judge_by(plan, lead)
        marked = [k for k, one in enumerate(led.obstacles) if one.canopy and one.canopy.judged]
        assert led.judged_top == lead
        assert marked == ([] if lead is None else [lead])


def test_without_its_canopy_an_obstacle_is_judged_by_no_more() -> None:
    plan = _plan(obstacles=(_tray(judged=True),))
    bare = edits.change_obstacle(plan, 0, canopy=None)
    assert bare.judged_top is None
    assert edits.change_carried(bare, 0).judged_top is None
    assert edits.remove_obstacle(plan, 0).judged_top is None


def test_a_target_of_its_own_begins_with_the_plans_and_not_with_the_judged_ones() -> None:
    own = PpfdTarget(low=600.0, high=700.0)
    plan = _plan(
        obstacles=(_tray(judged=True, target=own), _tray(judged=False)),
        target=PpfdTarget(low=100.0, high=200.0),
    )
    assert plan.ppfd_band == (600.0, 700.0)
    made = edits.set_own_target(plan, 1, own=True).obstacles[1].canopy
    assert made is not None
    assert made.target == PpfdTarget(low=100.0, high=200.0)
