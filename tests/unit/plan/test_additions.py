"""What is added lands where it fits, whatever the space and whatever stands there already."""

from __future__ import annotations

import math

import pytest

from planner.catalogue.library import demo_plan
from planner.plan import edits
from planner.plan.additions import (
    SHAPES,
    Clip,
    duplicated,
    free_shift,
    new_lamp,
    new_obstacle,
    pasted,
)
from planner.plan.checks import findings
from planner.plan.lamp import BarsBody, Lamp, LampModel, PanelBody
from planner.plan.lining import Lining, WallCover
from planner.plan.place import Place, PlaceKind
from planner.plan.plan import Plan
from planner.plan.space import (
    Canopy,
    CarriedCanopy,
    Obstacle,
    Point,
    Space,
    outlines_overlap,
    sticks_out,
)

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


LAMP = Place(PlaceKind.LAMP, 0)


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
    twice, made = duplicated(plan, (LAMP,))
    assert made == (Place(PlaceKind.LAMP, 1),)
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
    doubled, _ = duplicated(edits.remove_lamp(plan, 1), (LAMP,))
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


def two_bars_and_a_box() -> Plan:
    plan = bare(((0.0, 0.0), (2.0, 0.0), (2.0, 1.0), (0.0, 1.0)))
    for y in (0.2, 0.3):
        plan = edits.add_lamp(plan, Lamp(model=BAR, x=0.4, y=y, hanging_height=0.5))
    grey = Lining(key="grey", name="Grey", reflectance=0.4, low=0.3, high=0.5)
    box = Obstacle(name="Box", x=0.4, y=0.7, underside=0, length=0.2, width=0.2, thickness=0.3,
                   lining="grey")  # fmt: skip
    return edits.add_obstacle(plan, box, grey)


ALL = (LAMP, Place(PlaceKind.LAMP, 1), Place(PlaceKind.OBSTACLE, 0))


def test_several_are_duplicated_side_by_side_as_they_stand() -> None:
    """Turned by a quarter, the bars' long sides face along x: the copy goes that way."""
    plan = two_bars_and_a_box()
    for k, x in enumerate((0.3, 0.4)):
        plan = edits.change_lamp(plan, k, x=x, y=0.5, rotation_deg=-90)
    plan = edits.change_obstacle(plan, 0, x=0.5)
    twice, made = duplicated(plan, ALL)
    shift = twice.lamps[2].x - twice.lamps[0].x
    assert abs(shift) >= 0.2
    for old, new in ((0, 2), (1, 3)):
        assert twice.lamps[new].x - twice.lamps[old].x == pytest.approx(shift, abs=1e-4)
        assert twice.lamps[new].y - twice.lamps[old].y == pytest.approx(0, abs=1e-4)
    assert twice.obstacles[1].x - twice.obstacles[0].x == pytest.approx(shift, abs=1e-4)
    assert len(made) == 3
    assert all(place.fits(twice) for place in made)


def test_what_is_copied_is_text_and_goes_into_another_plan() -> None:
    plan = two_bars_and_a_box()
    text = Clip.of(plan, ALL).model_dump_json()
    low = edits.set_height(bare(SQUARE), 0.6)
    other, made = pasted(low, Clip.read(text))
    assert [lamp.model for lamp in other.lamps] == [BAR, BAR]
    # 60 cm of height over a canopy at 20 cm leave 40 cm for a lamp that hung at 50 cm
    assert [lamp.hanging_height for lamp in other.lamps] == pytest.approx([0.4, 0.4])
    assert other.lining(other.obstacles[0].lining).name == "Grey"
    assert set(made) == set(ALL)
    assert apart(other)


def test_a_whole_plan_and_a_lone_lamp_can_be_pasted_too() -> None:
    plan = two_bars_and_a_box()
    assert Clip.read(plan.model_dump_json()).things == (*plan.lamps, *plan.obstacles)
    assert Clip.read(plan.lamps[0].model_dump_json()).lamps == (plan.lamps[0],)


@pytest.mark.parametrize(
    "text", ["", "lamp", "[]", "{}", '{"lamps": []}', '{"lamps": 3}', "[" * 9999]
)
def test_what_holds_nothing_says_what_to_do(text: str) -> None:
    with pytest.raises(ValueError, match="nothing to paste"):
        Clip.read(text)


def test_pasting_at_a_point_puts_their_middle_there() -> None:
    """Middles at y = 0.2, 0.3, 0.7: their mean is 0.4."""
    plan = two_bars_and_a_box()
    after, made = pasted(plan, Clip.of(plan, ALL), (1.4, 0.5))
    assert after.lamps[2].y == pytest.approx(0.3)
    assert after.lamps[2].x == pytest.approx(1.4)
    assert made[0] == Place(PlaceKind.LAMP, 2)


def test_the_nearest_free_shift_is_found() -> None:
    """A body of 0.2 m on one of 0.2 m: to be clear it has to go 0.2 m at least."""
    plan = bare(SQUARE)
    body = ((0.2, 0.2), (0.4, 0.2), (0.4, 0.4), (0.2, 0.4))
    found = free_shift(plan, [(body, [body])])
    assert found is not None
    (dx, dy), free = found
    assert free
    assert max(abs(dx), abs(dy)) == pytest.approx(0.2, abs=0.6 / 24)


# -- a tier of a rack -------------------------------------------------------------------


def rack(height: float) -> Plan:
    """A shelf with a canopy 50 cm over the plan's own, and a bar 40 cm above either."""
    shelf = Obstacle(
        name="Tier", x=0.3, y=0.3, underside=0.68, length=0.6, width=0.6, thickness=0.02,
        lining="open", canopy=CarriedCanopy(),
    )  # fmt: skip
    bars = tuple(Lamp(model=BAR, x=0.3, y=0.3, hanging_height=at) for at in (0.4, 0.9))
    plan = bare(SQUARE)
    return edits.changed(
        plan, space=edits.changed(plan.space, height=height), obstacles=(shelf,), lamps=bars
    )


@pytest.mark.parametrize("bar", [0, 1])
def test_a_tier_is_copied_above_with_its_lamp(bar: int) -> None:
    """From the canopy at 0.2 m to the shelf's top at 0.7 m is a storey of 0.5 m."""
    plan = rack(2.2)
    chosen = (Place(PlaceKind.OBSTACLE, 0), Place(PlaceKind.LAMP, bar))
    if bar == 0:
        plan = edits.remove_lamp(plan, 1)
    for after, made in (duplicated(plan, chosen), pasted(plan, Clip.of(plan, chosen))):
        tier, lamp = after.obstacles[1], after.lamps[-1]
        assert tier.underside == pytest.approx(1.18)
        assert (tier.x, tier.y) == (0.3, 0.3)
        assert tier.canopy is not None
        assert lamp.hanging_height == pytest.approx((0.4, 0.9)[bar] + 0.5)
        assert set(made) == {
            Place(PlaceKind.OBSTACLE, 1),
            Place(PlaceKind.LAMP, len(after.lamps) - 1),
        }


def test_a_third_and_a_fourth_tier_stand_a_storey_apart_and_a_low_ceiling_keeps_them_out() -> None:
    plan, chosen = rack(2.4), (Place(PlaceKind.OBSTACLE, 0), Place(PlaceKind.LAMP, 1))
    for _ in range(2):
        plan, _made = duplicated(plan, chosen)
    assert [round(one.top, 4) for one in plan.obstacles] == [0.7, 1.2, 1.7]
    assert [round(plan.lamp_height(lamp), 4) for lamp in plan.lamps] == [0.6, 1.1, 1.6, 2.1]
    # a fifth would hang its bar at 2.6 m
    with pytest.raises(ValueError, match="no room"):
        duplicated(plan, chosen)


def test_a_lamp_of_another_tier_takes_no_room_from_a_new_one() -> None:
    plan = edits.remove_lamp(rack(2.2), 1)
    lamp = new_lamp(edits.changed(plan, lamps=()), BAR)
    over = edits.changed(lamp, hanging_height=0.9)
    both = edits.changed(plan, lamps=(*plan.lamps, over))
    twice, made = duplicated(both, (Place(PlaceKind.LAMP, 1),))
    new = twice.lamps[made[0].index]
    assert (new.x, new.y) != (over.x, over.y)
    assert abs(new.y - over.y) == pytest.approx(0.06, abs=0.03)


def test_a_shelf_chosen_alone_is_a_tier_a_storey_up_or_refused() -> None:
    """The rack's storeys are 50 cm: shelves from 50 and 100 cm up, under a ceiling at 160 cm.

    Of the middle tier the next free storey begins at 150 cm, its bars over it at 198 cm.
    """
    rack, middle = demo_plan("rack"), Place(PlaceKind.OBSTACLE, 0)
    with pytest.raises(ValueError, match="no room for one more, neither beside it nor above"):
        duplicated(rack, (middle,))
    high, made = duplicated(edits.set_height(rack, 2.2), (middle,))
    assert [one.underside for one in high.obstacles] == pytest.approx([0.5, 1.0, 1.5])
    assert [high.lamp_height(lamp) for lamp in high.lamps[6:]] == pytest.approx([1.98, 1.98])
    assert made == (Place(PlaceKind.OBSTACLE, 2), *(Place(PlaceKind.LAMP, k) for k in (6, 7)))
    assert not findings_of(high, "obstacles-overlap", "lamp-inside-obstacle", "lamps-overlap")
    # 2 cm too low for bars at 198 cm: the shelf goes alone.
    low, made = duplicated(edits.set_height(rack, 1.96), (middle,))
    assert made == (Place(PlaceKind.OBSTACLE, 2),)
    assert low.obstacles[2].underside == pytest.approx(1.5)


def test_pots_and_trays_are_not_piled_up() -> None:
    """One of 50 x 50 cm on the canopy of a space of 60 x 60 cm leaves no room beside."""
    tray = Obstacle(
        name="Tray", x=0.3, y=0.3, underside=0.2, length=0.5, width=0.5, thickness=0.1,
        canopy=CarriedCanopy(),
    )  # fmt: skip
    plan = edits.add_obstacle(bare(SQUARE), tray)
    with pytest.raises(ValueError, match="no room for one more"):
        duplicated(plan, (Place(PlaceKind.OBSTACLE, 0),))
    with pytest.raises(ValueError, match="no room for one more"):
        pasted(plan, Clip.of(plan, (Place(PlaceKind.OBSTACLE, 0),)))


def findings_of(plan: Plan, *keys: str) -> list[str]:
    return [one.sentence for one in findings(plan) if one.key in keys]


@pytest.mark.parametrize(("closed", "top"), [(True, 0.25), (False, 0.1)])
def test_a_tray_stands_on_the_floor_and_its_leaves_in_the_light(closed: bool, top: float) -> None:
    """Over the closed canopy at 20 cm it rises 5 cm."""
    plan = edits.set_canopy(bare(SQUARE), closed=closed)
    tray = new_obstacle(plan, next(shape for shape in SHAPES if shape.key == "tray"))
    assert (tray.underside, tray.top) == pytest.approx((0.0, top))
    assert tray.canopy is not None
    assert edits.add_obstacle(plan, tray).target_on(0) == plan.target
