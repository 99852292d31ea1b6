"""Variants: each is a whole setup that stays what it was when it was kept."""

from __future__ import annotations

import pytest
from pydantic import ValidationError

from planner.plan import edits
from planner.plan.costs import Costs, Form, Goods
from planner.plan.lining import Lining
from planner.plan.place import Place, PlaceKind
from planner.plan.plan import Plan
from planner.plan.variant_edits import (
    add_variants,
    adopt_variant,
    change_variant,
    free_name,
    heights_between,
    move_variant,
    name_of,
    remove_variant,
    try_all,
)
from tests.unit.reports.sample_estimate import L_SHAPE, sample_plan

FOIL = Lining(key="foil", name="Invented foil", reflectance=0.86, low=0.8, high=0.9)


def names(plan: Plan) -> list[str]:
    return [variant.name for variant in plan.variants]


def test_a_kept_option_never_changes_with_the_sketch() -> None:
    plan = try_all(sample_plan(), linings=[FOIL])
    kept = plan.variants[0].setup
    assert [cover.bands[0].lining for cover in kept.walls] == ["foil"] * 4
    edited = edits.add_lamp(plan, plan.lamps[0])
    edited = edits.change_lamp(edited, 0, hanging_height=0.55)
    edited = edits.change_lining(edited, edited.linings[0].model_copy(update={"low": 0.7}))
    edited = edits.remove_corner(edited, 3)
    assert edited.variants[0].setup == kept == plan.variants[0].setup


def test_a_kept_option_holds_the_values_of_its_linings() -> None:
    mine = FOIL.model_copy(update={"reflectance": 0.82})
    plan = edits.line_all_walls(sample_plan(), FOIL)
    plan = add_variants(plan, ("Before", plan))
    measured = edits.change_lining(plan, mine)
    assert measured.lining("foil").reflectance == 0.82
    assert measured.variants[0].setup.lining("foil").reflectance == 0.86


def test_variants_travel_in_the_plan() -> None:
    plan = edits.changed(try_all(sample_plan(), linings=[FOIL]), baseline="variant-1")
    read = Plan.model_validate_json(plan.model_dump_json())
    assert read == plan
    assert read.variant("variant-1").name == "Invented foil"
    with pytest.raises(KeyError, match="no option of the key"):
        plan.variant("variant-9")


def test_names_and_keys_stay_apart() -> None:
    plan = try_all(try_all(sample_plan(), linings=[FOIL]), linings=[FOIL])
    assert names(plan) == ["Invented foil", "Invented foil (2)"]
    assert [v.key for v in plan.variants] == ["variant-1", "variant-2"]
    with pytest.raises(ValidationError, match="two options are called"):
        change_variant(plan, "variant-2", name="Invented foil")
    with pytest.raises(ValidationError, match="two options carry the key"):
        change_variant(plan, "variant-2", key="variant-1")
    shorter = remove_variant(plan, "variant-1")
    more = try_all(shorter, linings=[FOIL])
    assert len({v.key for v in more.variants}) == 2
    assert len(free_name(["x" * 120], "x" * 120)) == 120


def test_the_baseline_is_a_key_and_goes_with_its_variant() -> None:
    plan = try_all(sample_plan(), heights=heights_between(0.2, 0.4, 3))
    with pytest.raises(ValidationError, match="no option has that key"):
        edits.changed(plan, baseline="variant-9")
    plan = edits.changed(plan, baseline="variant-2")
    assert remove_variant(plan, "variant-1").baseline == "variant-2"
    assert remove_variant(plan, "variant-2").baseline is None
    assert move_variant(plan, "variant-2", 0).baseline == "variant-2"


def test_makers_and_edits_of_the_list() -> None:
    plan = try_all(sample_plan(), heights=heights_between(0.2, 0.5, 4))
    heights = [variant.setup.lamps[0].hanging_height for variant in plan.variants]
    assert heights == pytest.approx([0.2, 0.3, 0.4, 0.5])
    assert plan.variants[1].name == "Hanging height 30 cm"
    with pytest.raises(ValueError, match="range of heights"):
        try_all(plan, heights=heights_between(0.5, 0.2, 4))
    with pytest.raises(ValueError, match="the ceiling is there"):
        try_all(plan, heights=heights_between(0.5, 3.0, 2))
    with pytest.raises(ValueError, match="no lamp hangs"):
        try_all(edits.remove_lamp(plan, 0), heights=heights_between(0.2, 0.4, 2))
    one = try_all(plan, linings=[FOIL], place=Place(PlaceKind.WALL, 2))
    assert one.variants[-1].name == "Wall 3: Invented foil"
    assert [cover.bands[0].lining for cover in one.variants[-1].setup.walls].count("foil") == 1
    assert remove_variant(one, "variant-1").variants == one.variants[1:]
    assert move_variant(one, "variant-5", 0).variants[0].name == "Wall 3: Invented foil"


def test_adopting_makes_it_the_plan() -> None:
    plan = try_all(try_all(sample_plan(), linings=[FOIL]), heights=heights_between(0.2, 0.3, 2))
    adopted = adopt_variant(plan, "variant-1")
    assert adopted.setup == plan.variants[0].setup
    assert (adopted.name, adopted.target, adopted.costs) == (plan.name, plan.target, plan.costs)
    assert names(adopted) == ["Hanging height 20 cm", "Hanging height 30 cm"]


def test_names_of_what_differs_are_short() -> None:
    plan = sample_plan()
    assert name_of(plan, plan) == ""
    assert name_of(plan, edits.line_all_walls(plan, FOIL)) == "Invented foil"
    other = edits.change_lamp(plan, 0, output_percent=70, x=0.25, y=0.2, rotation_deg=45)
    found = name_of(plan, edits.line_all_walls(edits.set_height(other, 1.1), FOIL))
    assert found == "Inside height 110 cm and 5 more"
    assert len(found) <= 60


def test_goods_are_given_once() -> None:
    goods = Goods(lining="foil", form=Form.ROLL, width=0.5, length=10)
    assert Costs(goods=(goods,)).goods_of("foil") == goods
    assert Costs().goods_of("foil") is None
    with pytest.raises(ValidationError, match="given twice"):
        Costs(goods=(goods, goods))


def test_lamps_are_spread_evenly_and_combined_with_the_rest() -> None:
    """Two lamps over 0.6 x 0.5 m: at a quarter and three quarters of the length, by hand."""
    plan = sample_plan()
    model = plan.lamps[0].model
    made = try_all(plan, linings=[FOIL], lamps=[(model, 1), (model, 2)], heights=[0.2, 0.3])
    assert [one.name for one in made.variants] == [
        f"{FOIL.name}, {count} x {model.name}, {height} cm"
        for count in (1, 2)
        for height in (20, 30)
    ]
    two = made.variants[3].setup
    assert [lamp.x for lamp in two.lamps] == pytest.approx([0.15, 0.45])
    assert [lamp.y for lamp in two.lamps] == pytest.approx([0.25, 0.25])
    assert [lamp.hanging_height for lamp in two.lamps] == [0.3, 0.3]
    assert two.walls[0].bands[0].lining == FOIL.key
    with pytest.raises(ValueError, match="64 options are asked for, but a plan keeps 60"):
        try_all(plan, lamps=[(model, 1)] * 8, heights=[0.2 + 0.02 * k for k in range(8)])


def test_a_combination_that_cannot_be_stands_alone() -> None:
    """Four lamps over an L of 1.2 x 0.9 m hang at quarters of both: (0.9, 0.675) is in its notch.

    One hangs in the middle, two at (0.3, 0.45) and (0.9, 0.45), all inside.
    """
    plan = sample_plan(L_SHAPE)
    model, said = plan.lamps[0].model, list[str]()
    made = try_all(plan, lamps=[(model, k) for k in (1, 4, 2)], refused=said.append)
    assert [len(one.setup.lamps) for one in made.variants] == [1, 2]
    assert len(said) == 1
    assert said[0].startswith("'4 x Invented panel' cannot be: Lamp 4 ('Invented panel') hangs out")
    with pytest.raises(ValueError, match="hangs outside"):
        try_all(plan, lamps=[(model, 4)], refused=said.append)
