"""Keeping a sketch as a variant, and what really differs."""

from __future__ import annotations

from pathlib import Path

import pytest
from pytestqt.qtbot import QtBot

from planner.app.document import Document
from planner.app.pages.side.variant_steps import VariantSteps, differs, name_of, pinned, same_light
from planner.plan import edits
from planner.plan.costs import Costs
from planner.plan.lining import Lining
from planner.plan.plan import Plan
from planner.plan.variant import LineAllWalls, SetHangingHeight, Variant
from planner.plan.variant_edits import resolve
from planner.units import LengthUnit
from tests.e2e.shell import small_plan

WHITE = Lining(key="white", name="White board", reflectance=0.8, low=0.7, high=0.9)


@pytest.fixture
def document(qtbot: QtBot) -> Document:
    return Document(small_plan())


@pytest.fixture
def steps(document: Document) -> VariantSteps:
    return VariantSteps(document, document)


def test_a_changed_sketch_becomes_the_variant_and_goes_back(
    document: Document, steps: VariantSteps
) -> None:
    before = document.plan
    document.apply(edits.line_all_walls(before, WHITE), "line")
    steps.keep()
    plan = document.plan
    assert same_light(plan, before)
    assert [v.name for v in plan.variants] == ["White board"]
    assert plan.variants[0].changes == (LineAllWalls(lining=WHITE),)
    assert document.undo_stack.undoText() == "Keep as variant White board"
    document.undo_stack.undo()
    assert document.plan.walls[0].bands[0].lining == "white"


def test_a_sketch_that_has_not_changed_is_kept_as_it_is(
    document: Document, steps: VariantSteps
) -> None:
    steps.keep()
    kept = document.plan.variants[0]
    assert differs(document.plan, kept) == ()
    # The base moves on; what was kept stays.
    document.apply(edits.change_lamp(document.plan, 0, hanging_height=0.8), "raise")
    assert differs(document.plan, kept) == ("lamp 1: hanging height 50 cm",)
    assert resolve(document.plan, kept).plan.lamps[0].hanging_height == 0.5


def test_more_than_a_variant_can_hold_is_kept_whole(
    document: Document, steps: VariantSteps
) -> None:
    document.apply(edits.add_lamp(document.plan, document.plan.lamps[0]), "add")
    steps.keep()
    assert len(document.plan.lamps) == 2
    assert len(document.plan.variants) == 1


def test_saving_is_where_the_next_sketch_begins(
    document: Document, steps: VariantSteps, tmp_path: Path
) -> None:
    document.apply(edits.change_lamp(document.plan, 0, hanging_height=0.7), "raise")
    document.mark_saved(document.plan, tmp_path / "a.plan.json")
    document.apply(edits.change_lamp(document.plan, 0, output_percent=50.0), "dim")
    steps.keep()
    assert document.plan.lamps[0].hanging_height == 0.7
    assert document.plan.variants[0].name == "Lamp 1: output 50 %"


def test_only_what_changes_something_is_said() -> None:
    plan = small_plan()
    variant = Variant(
        name="v",
        changes=(SetHangingHeight(hanging_height=0.5), LineAllWalls(lining=WHITE)),
    )
    assert differs(plan, variant) == ("all walls: White board",)


def test_costs_and_lists_are_no_light() -> None:
    plan = small_plan()
    priced = edits.changed(plan, name="Other", costs=Costs(price_per_kwh=0.3))
    assert same_light(plan, priced)
    assert not same_light(plan, edits.change_lamp(plan, 0, output_percent=20.0))


def test_names_are_short(document: Document) -> None:
    plan: Plan = document.plan
    changes = pinned(plan)
    name = name_of(plan, changes, LengthUnit.CM)
    assert len(name) <= 60
    assert name.startswith("All walls: Open")


def test_refusals_are_said(document: Document, steps: VariantSteps, qtbot: QtBot) -> None:
    with qtbot.waitSignal(steps.refused) as got:
        assert not steps.try_heights(0.5, 0.2, 3, LengthUnit.CM)
    assert got.args == ["A range of heights needs a lower end, a higher one and at least two."]
    steps.try_linings([WHITE])
    with qtbot.waitSignal(steps.refused) as got:
        assert not steps.rename(0, "  ")
    assert got.args == ["A variant needs a name."]
    steps.try_linings([WHITE.model_copy(update={"name": "Other"})])
    with qtbot.waitSignal(steps.refused) as got:
        assert not steps.rename(0, "Other")
    assert got.args is not None
    assert "Other" in got.args[0]
    assert not steps.move(0, 5)
    assert steps.remove_all()
    assert document.plan.variants == ()
