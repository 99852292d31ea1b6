from __future__ import annotations

import math

import pytest

from planner.app.canvas.elevation_drags import (
    HeightDrag,
    band_at,
    faces_viewer,
    lifted,
    nudged_across,
    seen_wall,
    side_wall,
)
from planner.app.canvas.items import Item, Part
from planner.app.canvas.plan_drags import (
    Hold,
    PlanDrag,
    choices,
    moved_to,
    nudged,
    point_on_wall,
    shifted_wall,
    snapped,
)
from planner.app.canvas.tools import dragged_section
from planner.plan.groups import whole_turn
from planner.plan.place import Place, PlaceKind
from planner.plan.space import Space
from tests.unit.app.canvas.scenes import L_SHAPE, SQUARE, plan_of

CM = Hold(0.01)
HALF_INCH = Hold(0.0127)
FREE = Hold(None)
LAMP = Place(PlaceKind.LAMP)
BOUNDS = (0.0, 0.0, 1.0, 1.0)


def test_snapping_is_to_an_absolute_grid() -> None:
    assert snapped(0.3049, 0.01) == 0.3
    assert snapped(0.3049, 0.0127) == 0.3048  # 12 in
    assert snapped(0.3049, None) == 0.3049


def test_a_corner_lands_on_the_grid_even_if_it_began_beside_it() -> None:
    footprint = (*SQUARE[:2], (1.003, 1.004), SQUARE[3])
    plan = plan_of(space=Space(footprint=footprint, height=2))
    moved = PlanDrag(plan, Item(Part.CORNER, 2), (1.0, 1.0)).to((1.1, 1.2), CM)
    assert moved.plan.space.footprint[2] == (1.1, 1.2)
    assert moved.label == "Move corner"


def test_a_wall_moves_along_its_normal_only() -> None:
    edit = PlanDrag(plan_of(), Item(Part.WALL, 1), (1.0, 0.5)).to((1.114, 0.9), CM)
    assert edit.plan.space.footprint == ((0, 0), (1.11, 0), (1.11, 1), (0, 1))


def test_a_slanted_wall_keeps_its_direction() -> None:
    footprint = ((0.0, 0.0), (1.0, 0.0), (1.0, 0.5), (0.5, 1.0), (0.0, 1.0))
    plan = plan_of(
        space=Space(footprint=footprint, height=2), walls=(*plan_of().walls, plan_of().walls[0])
    )
    before = plan.space.wall(2)
    after = shifted_wall(plan, 2, (0.1, 0.1), None).space.wall(2)
    for old, new in zip(before, after, strict=True):
        assert new[0] - old[0] == pytest.approx(0.1, abs=1e-6)
        assert new[1] - old[1] == pytest.approx(0.1, abs=1e-6)
    sideways = shifted_wall(plan, 2, (0.1, -0.1), None)
    for old, new in zip(plan.space.footprint, sideways.space.footprint, strict=True):
        assert new == pytest.approx(old)


def test_a_lamp_snaps_its_place_and_stops_at_the_wall() -> None:
    drag = PlanDrag(plan_of(), Item(Part.LAMP, 0), (0.55, 0.35))
    lamp = drag.to((0.753, 0.449), CM).plan.lamps[0]
    assert (lamp.x, lamp.y) == (0.7, 0.4)
    lamp = drag.to((0.753, 0.449), HALF_INCH).plan.lamps[0]
    assert (lamp.x, lamp.y) == (0.6985, 0.3937)  # 27.5 in, 15.5 in
    lamp = drag.to((0.7531, 0.4492), FREE).plan.lamps[0]
    assert (lamp.x, lamp.y) == pytest.approx((0.7031, 0.3992))
    lamp = drag.to((3.0, 0.35), CM).plan.lamps[0]
    assert lamp.x == pytest.approx(0.99)


@pytest.mark.parametrize(
    ("place", "fine", "angle"),
    [
        ((0.5, 0.9), False, 90.0),
        ((0.9, 0.42), False, 15.0),
        ((0.9, 0.42), True, 17.0),  # atan(0.12 / 0.4) = 16.7
        ((0.1, 0.3), False, 180.0),
        ((0.5, -0.2), False, -90.0),
    ],
)
def test_turning_snaps_to_15_degrees_or_1(
    place: tuple[float, float], fine: bool, angle: float
) -> None:
    edit = PlanDrag(plan_of(), Item(Part.TURN, 0), (0.7, 0.3)).to(place, Hold(0.01, fine))
    assert edit.plan.lamps[0].rotation_deg == angle
    assert edit.label == "Rotate lamp"


def test_whole_turns_fold() -> None:
    assert [whole_turn(a) for a in (0, 180, -180, 190, 375, -375)] == [0, 180, 180, -170, 15, -15]


def test_a_folded_outline_is_refused() -> None:
    with pytest.raises(ValueError, match="cross or touch"):
        PlanDrag(plan_of(), Item(Part.CORNER, 0), (0, 0)).to((1.5, 0.5), CM)


def test_arrow_keys_move_relative_to_where_it_is() -> None:
    edit = nudged(plan_of(), Item(Part.CORNER, 2), (0.0127, 0.0))
    assert edit.plan.space.footprint[2] == (1.0127, 1.0)
    with pytest.raises(ValueError, match="section"):
        nudged(plan_of(), Item(Part.SECTION), (0.01, 0))


def test_new_corners_fall_on_the_wall() -> None:
    assert point_on_wall(plan_of(), 0, (0.334, 0.02), 0.01) == (0.33, 0.0)
    assert point_on_wall(plan_of(), 1, (0.98, 0.666), 0.01) == (1.0, 0.67)
    assert point_on_wall(plan_of(), 1, (0.98, 0.666), None) == (1.0, 0.666)


def test_the_section_stays_in_the_space() -> None:
    line = ((0.0, 0.5), (1.0, 0.5))
    assert dragged_section(line, Part.SECTION_END, (-0.204, 0.9), 0.01, BOUNDS)[1] == (0.8, 1.0)
    moved = dragged_section(line, Part.SECTION, (0.3, 0.21), 0.01, BOUNDS)
    assert moved == ((0.0, 0.71), (1.0, 0.71))
    assert dragged_section(line, Part.SECTION_START, (1.0, 0.0), 0.01, BOUNDS) == line
    shorter = dragged_section(((0.1, 0.5), (0.6, 0.5)), Part.SECTION, (5, 5), 0.01, BOUNDS)
    assert math.dist(*shorter) == pytest.approx(0.5)
    assert max(shorter[0][0], shorter[1][0]) == pytest.approx(1.0)


def test_the_menu_of_a_wall_makes_and_opens_the_door() -> None:
    plan = plan_of()
    entries = {c.text: c for c in choices(plan, Item(Part.WALL, 1), (1.0, 0.4), 0.01)}
    assert entries["Add corner here"].make().plan.space.footprint[2] == (1.0, 0.4)
    made = entries["Make this wall the door"].make().plan
    assert made.space.door == 1
    entries = {c.text: c for c in choices(made, Item(Part.WALL, 1), (1.0, 0.4), 0.01)}
    assert entries["Open door"].make().plan.space.door_open
    assert entries["Make this a plain wall"].make().plan.space.door is None


# -- heights ----------------------------------------------------------------------------


def test_hanging_height_snaps_and_is_named_for_its_direction() -> None:
    drag = HeightDrag(plan_of(), Item(Part.LAMP, 0), (0.5, 0.65))
    up, down = drag.to((0.5, 0.853), CM), drag.to((0.5, 0.55), CM)
    assert (up.plan.lamps[0].hanging_height, up.label) == (0.65, "Raise lamp")
    assert (down.plan.lamps[0].hanging_height, down.label) == (0.35, "Lower lamp")


def test_a_lamp_stops_at_the_ceiling_and_above_the_canopy() -> None:
    drag = HeightDrag(plan_of(), Item(Part.LAMP, 0), (0.5, 0.65))
    assert drag.to((0.5, 9.0), CM).plan.lamps[0].hanging_height == pytest.approx(1.8)
    assert drag.to((0.5, -1.0), CM).plan.lamps[0].hanging_height == pytest.approx(0.01)


def test_raising_the_canopy_leaves_lamps_where_they_hang() -> None:
    edit = lifted(plan_of(), Item(Part.CANOPY), 0.1, 0.01)
    assert edit.label == "Raise canopy"
    assert edit.plan.canopy.height == pytest.approx(0.3)
    assert edit.plan.lamps[0].hanging_height == pytest.approx(0.35)
    against = lifted(plan_of(), Item(Part.CANOPY), 5.0, 0.01).plan
    assert against.canopy.height == pytest.approx(0.64)


def test_the_ceiling_takes_lamps_down_with_it() -> None:
    edit = lifted(plan_of(), Item(Part.CEILING), -1.5, 0.01)
    assert edit.label == "Lower ceiling"
    assert edit.plan.space.height == pytest.approx(0.5)
    assert edit.plan.lamps[0].hanging_height == pytest.approx(0.3)


def test_a_band_edge_stays_between_its_neighbours() -> None:
    edge = Item(Part.BAND_EDGE, 2, 0)
    assert lifted(plan_of(), edge, 0.204, 0.01).plan.walls[2].bands[0].top == 0.8
    assert lifted(plan_of(), edge, 9, 0.01).plan.walls[2].bands[0].top == pytest.approx(1.995)
    assert lifted(plan_of(), edge, -9, 0.01).plan.walls[2].bands[0].top == pytest.approx(0.005)


def test_arrows_in_the_side_view_move_a_lamp_across_what_is_seen() -> None:
    lamp = Item(Part.LAMP, 0)
    along_y = nudged_across(plan_of(), lamp, (0.01, 0.0), "y")
    along_x = nudged_across(plan_of(), lamp, (0.01, 0.0), "x")
    assert along_y is not None
    assert along_x is not None
    assert (along_y.plan.lamps[0].x, along_y.plan.lamps[0].y) == (0.51, 0.3)
    assert (along_x.plan.lamps[0].x, along_x.plan.lamps[0].y) == (0.5, 0.31)
    assert nudged_across(plan_of(), Item(Part.CANOPY), (0.01, 0.0), "y") is None


def test_which_walls_are_seen() -> None:
    plan = plan_of(L_SHAPE)
    assert [k for k in range(6) if faces_viewer(plan, k, "y")] == [2, 4]
    assert [k for k in range(6) if faces_viewer(plan, k, "x")] == [5]
    assert seen_wall(plan, "y", None) in {2, 4}
    assert seen_wall(plan, "y", 0) == 0
    assert seen_wall(plan, "y", 1) in {2, 4}  # edge on: the back wall is shown instead
    assert side_wall(plan, "y", right=True) == 1
    assert side_wall(plan, "y", right=False) == 5
    assert band_at(plan, 2, 0.59) == 0
    assert band_at(plan, 2, 0.61) == 1


def test_a_lamp_that_would_leave_says_why_it_stays() -> None:
    plan = plan_of()
    assert moved_to(plan, (LAMP,), (0.5, 0.5)).stopped == ""
    kept = moved_to(plan, (LAMP,), (9.0, 0.5))
    assert kept.plan.lamps[0].x <= max(x for x, _ in plan.space.footprint)
    assert "inside the walls" in kept.stopped
