"""Keeping a sketch as a variant, and what really differs."""

from __future__ import annotations

from pathlib import Path

import pytest
from pytestqt.qtbot import QtBot

from planner.app.document import Document
from planner.app.pages.side.variants import VariantSteps
from planner.plan import edits
from planner.plan.changes import said
from planner.plan.lining import Lining
from tests.e2e.shell import small_plan
from tests.unit.reports.sample_estimate import L_SHAPE, sample_plan

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
    sketch = document.plan.setup
    steps.keep()
    plan = document.plan
    assert plan.setup == before.setup
    assert [(v.name, v.setup) for v in plan.variants] == [("White board", sketch)]
    assert document.undo_stack.undoText() == "Keep option White board"
    document.undo_stack.undo()
    assert document.plan.walls[0].bands[0].lining == "white"


def test_all_that_was_changed_is_kept(document: Document, steps: VariantSteps) -> None:
    """A lining's value edited and a lamp lowered: the variant holds both."""
    document.apply(edits.line_all_walls(document.plan, WHITE), "line")
    document.mark_saved(document.plan, Path("a.plan.json"))
    duller = WHITE.model_copy(update={"reflectance": 0.5, "low": 0.4})
    document.apply(edits.change_lining(document.plan, duller), "edit")
    document.apply(edits.change_lamp(document.plan, 0, hanging_height=0.3), "lower")
    steps.keep()
    kept = document.plan.variants[0]
    assert kept.setup.lining("white").reflectance == 0.5
    assert kept.setup.lamps[0].hanging_height == 0.3
    assert kept.name == "All walls: White board of reflectance 0.50 and 1 more"
    assert steps.adopt(kept.key)
    assert document.plan.setup == kept.setup


def test_a_sketch_that_has_not_changed_is_kept_as_it_is(
    document: Document, steps: VariantSteps
) -> None:
    steps.keep()
    kept = document.plan.variants[0]
    assert said(document.plan, kept.setup) == ()
    # The sketch moves on; what was kept stays.
    document.apply(edits.change_lamp(document.plan, 0, hanging_height=0.8), "raise")
    assert said(document.plan, kept.setup) == ("lamp 1: hanging height 50 cm",)
    assert document.plan.variants[0] == kept


def test_the_first_sketch_of_a_new_plan_stays(document: Document, steps: VariantSteps) -> None:
    """A new plan is an empty space: keeping what was made of it empties nothing."""
    sketch = edits.line_all_walls(document.plan, WHITE)
    document.replace(sketch.with_setup(sketch.model_copy(update={"lamps": ()})), None)
    document.apply(sketch, "hang a lamp and line the walls")
    steps.keep()
    assert document.plan.setup == sketch.setup
    assert [(v.name, v.setup) for v in document.plan.variants] == [("Shelf, kept", sketch.setup)]
    # From here on there is something to go back to.
    document.apply(edits.change_lamp(document.plan, 0, hanging_height=0.8), "raise")
    steps.keep()
    assert document.plan.setup == sketch.setup
    assert document.plan.variants[1].setup.lamps[0].hanging_height == 0.8


def test_a_second_lamp_is_kept_too(document: Document, steps: VariantSteps) -> None:
    one = document.plan
    document.apply(edits.add_lamp(one, one.lamps[0].model_copy(update={"label": "New"})), "add")
    steps.keep()
    plan = document.plan
    assert [len(plan.lamps), len(plan.variants[0].setup.lamps)] == [1, 2]
    assert plan.variants[0].name == "One more lamp: New"
    assert steps.adopt(plan.variants[0].key)
    assert len(document.plan.lamps) == 2


def test_saving_is_where_the_next_sketch_begins(
    document: Document, steps: VariantSteps, tmp_path: Path
) -> None:
    document.apply(edits.change_lamp(document.plan, 0, hanging_height=0.7), "raise")
    document.mark_saved(document.plan, tmp_path / "a.plan.json")
    document.apply(edits.change_lamp(document.plan, 0, output_percent=50.0), "dim")
    steps.keep()
    assert document.plan.lamps[0].hanging_height == 0.7
    assert document.plan.variants[0].name == "Lamp 1: output 50 %"


def test_refusals_are_said(document: Document, steps: VariantSteps, qtbot: QtBot) -> None:
    with qtbot.waitSignal(steps.refused) as got:
        assert not steps.try_all(heights=(0.5, 0.2, 3))
    assert got.args == ["A range of heights needs a lower end, a higher one and at least two."]
    steps.try_all([WHITE])
    with qtbot.waitSignal(steps.refused) as got:
        assert not steps.rename("variant-1", "  ")
    assert got.args == ["An option needs a name."]
    steps.try_all([WHITE.model_copy(update={"name": "Other"})])
    with qtbot.waitSignal(steps.refused) as got:
        assert not steps.rename("variant-1", "Other")
    assert got.args is not None
    assert "Other" in got.args[0]
    assert not steps.move("variant-1", 5)
    assert steps.move("variant-1", 1)
    assert steps.remove("variant-1")
    assert [variant.key for variant in document.plan.variants] == ["variant-2"]


def test_what_cannot_be_is_told_and_the_rest_is_tried(qtbot: QtBot) -> None:
    """Four lamps over an L: the one in the notch cannot hang, one in the middle can."""
    document = Document(sample_plan(L_SHAPE))
    steps = VariantSteps(document, document)
    model = document.plan.lamps[0].model
    with qtbot.waitSignal(steps.told) as got:
        assert steps.try_all(lamps=[(model, 1), (model, 4)])
    assert got.args is not None
    assert got.args[0].startswith("1 tried. '4 x Invented panel' cannot be: Lamp 4")
    assert "hangs outside the space" in got.args[0]
    assert [one.name for one in document.plan.variants] == ["1 x Invented panel"]


def test_a_setup_that_was_found_is_kept_beside_the_sketch(
    document: Document, steps: VariantSteps
) -> None:
    before = document.plan.setup
    found = edits.change_lamp(document.plan, 0, output_percent=40.0)
    assert steps.keep_as("Output 40 %", found)
    assert steps.keep_as("Output 40 %", found)
    assert document.plan.setup == before
    assert [(v.name, v.setup) for v in document.plan.variants] == [
        ("Output 40 %", found.setup),
        ("Output 40 % (2)", found.setup),
    ]
