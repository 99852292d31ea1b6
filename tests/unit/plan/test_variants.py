"""Variants: what differs is held, the rest follows the plan."""

from __future__ import annotations

import pytest
from pydantic import ValidationError

from planner.plan import edits
from planner.plan.costs import Costs, Form, Goods
from planner.plan.lining import OPENING, Lining
from planner.plan.plan import Plan
from planner.plan.variant import (
    LineAllWalls,
    LineCeiling,
    LineFloor,
    LineWall,
    SetCanopyHeight,
    SetCanopyReflectance,
    SetDoor,
    SetHangingHeight,
    SetLampModel,
    SetLampPlace,
    SetOutput,
    SetPhotoperiod,
    SetSize,
    SetSpaceHeight,
    Variant,
)
from planner.plan.variant_edits import (
    add_variants,
    adopt_variant,
    apply,
    change_variant,
    differences,
    free_name,
    move_variant,
    remove_variant,
    resolve,
    say,
    try_heights,
    try_lamps,
    try_linings,
)
from planner.units import LengthUnit
from tests.unit.reports.sample_estimate import sample_plan

FOIL = Lining(key="foil", name="Invented foil", reflectance=0.86, low=0.8, high=0.9)


def test_a_variant_follows_the_plan_when_it_is_edited() -> None:
    plan = try_linings(sample_plan(), [FOIL])
    edited = edits.change_lamp(plan, 0, hanging_height=0.55)
    found = resolve(edited, edited.variants[0]).plan
    assert [cover.bands[0].lining for cover in found.walls] == ["foil"] * 4
    assert found.lamps[0].hanging_height == 0.55
    assert found.floor == "white-board"
    assert found.name == "Invented foil"
    assert found.variants == ()


@pytest.mark.parametrize(
    ("change", "words"),
    [
        (LineAllWalls(lining=FOIL), "all walls: Invented foil"),
        (LineWall(wall=1, lining=FOIL), "wall 2: Invented foil"),
        (LineWall(wall=1, band=0, lining=OPENING), "wall 2, band 1: Open (no surface)"),
        (LineCeiling(lining=FOIL), "ceiling: Invented foil"),
        (LineFloor(lining=FOIL), "floor: Invented foil"),
        (SetHangingHeight(hanging_height=0.35), "lamp: hanging height 35 cm"),
        (SetOutput(lamp=0, output_percent=50), "lamp 1: output 50 %"),
        (SetLampPlace(lamp=0, x=0.2, y=0.25), "lamp 1: at x 20 cm, y 25 cm"),
        (SetSize(width=1.2, depth=0.5), "footprint 120 cm x 50 cm"),
        (SetSpaceHeight(height=1.5), "inside height 150 cm"),
        (SetCanopyHeight(height=0.3), "canopy at 30 cm"),
        (SetCanopyReflectance(reflectance=0.1), "canopy reflectance 0.10"),
        (SetPhotoperiod(photoperiod_hours=16), "photoperiod 16 h"),
    ],
)
def test_each_change_differs_and_says_so(change: object, words: str) -> None:
    plan = sample_plan()
    assert say(plan, change) == words  # type: ignore[arg-type]
    made = apply(plan, change)  # type: ignore[arg-type]
    assert made != plan
    # What it does can be undone into nothing: applied twice it changes nothing more.
    assert apply(made, change) == made  # type: ignore[arg-type]


def test_other_changes_than_of_the_sample() -> None:
    plan = sample_plan(space=sample_plan().space.model_copy(update={"door": 0}))
    assert apply(plan, SetDoor(door_open=True)).space.door_open
    model = plan.lamps[0].model.model_copy(update={"key": "other", "name": "Other"})
    assert apply(plan, SetLampModel(model=model)).lamps[0].model.name == "Other"
    assert say(plan, SetDoor(door_open=False)) == "door shut"
    assert "15.75 in" in say(plan, SetHangingHeight(hanging_height=0.4), LengthUnit.INCH)


def test_canopy_raised_leaves_the_lamp_where_it_hangs() -> None:
    made = apply(sample_plan(), SetCanopyHeight(height=0.3))
    # The face hung at 0.2 + 0.4 = 0.6 m; 0.6 - 0.3 = 0.3 m above the new canopy.
    assert made.lamps[0].hanging_height == pytest.approx(0.3)


def test_what_no_longer_fits_is_left_out_and_said() -> None:
    changes = (
        LineWall(wall=3, lining=FOIL),
        SetHangingHeight(hanging_height=3.0),
        SetOutput(lamp=4, output_percent=10),
        SetPhotoperiod(photoperiod_hours=10),
    )
    plan = add_variants(sample_plan(), Variant(name="Odd", changes=changes))
    triangle = edits.remove_corner(plan, 3)
    found = resolve(triangle, triangle.variants[0])
    assert found.plan.photoperiod_hours == 10
    assert found.said == ("photoperiod 10 h",)
    assert len(found.problems) == 3
    assert "wall 4" in found.problems[0]
    assert "3 walls now" in found.problems[0]
    assert "only 100 cm to the ceiling" in found.problems[1]
    assert "1 lamps now" in found.problems[2]
    assert all(sentence.endswith(".") for sentence in found.problems)


def test_linings_travel_in_the_plan_and_its_own_copy_counts() -> None:
    plan = try_linings(sample_plan(), [FOIL])
    read = Plan.model_validate_json(plan.model_dump_json())
    assert read == plan
    mine = FOIL.model_copy(update={"reflectance": 0.82})
    calibrated = edits.line_ceiling(read, mine)
    found = resolve(calibrated, calibrated.variants[0]).plan
    assert found.lining("foil").reflectance == 0.82


def test_old_plans_have_no_variants() -> None:
    bare = sample_plan().model_dump(exclude={"variants", "schedule", "costs"})
    assert Plan.model_validate(bare).variants == ()


def test_names_stay_apart() -> None:
    plan = try_linings(try_linings(sample_plan(), [FOIL]), [FOIL])
    assert [v.name for v in plan.variants] == ["Invented foil", "Invented foil (2)"]
    with pytest.raises(ValidationError, match="two variants are called"):
        change_variant(plan, 1, name="Invented foil")
    assert len(free_name(["x" * 120], "x" * 120)) == 120


def test_makers_and_edits_of_the_list() -> None:
    plan = try_heights(sample_plan(), 0.2, 0.5, 4)
    heights = [resolve(plan, v).plan.lamps[0].hanging_height for v in plan.variants]
    assert heights == pytest.approx([0.2, 0.3, 0.4, 0.5])
    assert plan.variants[1].name == "Hanging height 30 cm"
    with pytest.raises(ValueError, match="range of heights"):
        try_heights(plan, 0.5, 0.2, 4)
    one = try_linings(plan, [FOIL], wall=2)
    assert one.variants[-1].name == "Wall 3: Invented foil"
    assert remove_variant(one, 0).variants == one.variants[1:]
    assert move_variant(one, 4, 0).variants[0].name == "Wall 3: Invented foil"
    assert try_lamps(plan, [plan.lamps[0].model]).variants[-1].name == "Invented panel"


def test_adopting_makes_it_the_plan() -> None:
    plan = try_heights(try_linings(sample_plan(), [FOIL]), 0.2, 0.3, 2)
    adopted = adopt_variant(plan, 0)
    assert adopted.name == plan.name
    assert {band.lining for cover in adopted.walls for band in cover.bands} == {"foil"}
    assert [v.name for v in adopted.variants] == ["Hanging height 20 cm", "Hanging height 30 cm"]


def test_differences_lead_from_one_plan_to_the_other() -> None:
    plan = sample_plan()
    other = edits.set_size(plan, 0.8, 0.6)
    other = edits.set_canopy_height(other, 0.25)
    other = edits.line_wall(other, 2, 0, FOIL)
    other = edits.line_ceiling(other, FOIL)
    other = edits.change_lamp(other, 0, output_percent=70, x=0.5)
    changes = differences(plan, other)
    kinds = ["size", "canopy-height", "line-wall", "line-ceiling", "output", "lamp-place"]
    assert [change.kind for change in changes] == kinds
    found = resolve(add_variants(plan, Variant(name="Mine", changes=changes)), Variant(
        name="Mine", changes=changes
    )).plan  # fmt: skip
    assert found.space == other.space
    assert found.lamps == other.lamps
    assert found.walls == other.walls
    with pytest.raises(ValueError, match="more than a variant can hold"):
        differences(plan, edits.add_corner(plan, 0, (0.3, 0.0)))


def test_goods_are_given_once() -> None:
    goods = Goods(lining="foil", form=Form.ROLL, width=0.5, length=10)
    assert Costs(goods=(goods,)).goods_of("foil") == goods
    assert Costs().goods_of("foil") is None
    with pytest.raises(ValidationError, match="given twice"):
        Costs(goods=(goods, goods))
