"""The plans to begin with."""

from __future__ import annotations

from pathlib import Path

import pytest

from planner.catalogue.library import Catalogue, demo_plan, load_catalogue, new_plan
from planner.plan.checks import Severity, findings
from planner.plan.lining import OPENING_KEY


@pytest.fixture
def catalogue(tmp_path: Path) -> Catalogue:
    return load_catalogue(tmp_path)


def test_a_new_plan_is_an_empty_white_space(catalogue: Catalogue) -> None:
    plan = new_plan(catalogue)
    assert plan.space.bounds == (0, 0, 0.6, 0.6)
    assert plan.space.height == 1.6
    assert plan.lamps == ()
    assert {plan.ceiling, plan.floor, *(w.bands[0].lining for w in plan.walls)} == {"white-board"}
    assert plan.target is None


def test_the_demo_says_that_it_is_invented() -> None:
    assert "invented" in demo_plan().note.lower()


def test_the_demo_is_herbs_and_lettuce_in_a_hallway_cabinet() -> None:
    plan = demo_plan()
    assert plan.name == "Herbs and lettuce seedlings in a hallway cabinet"
    assert plan.space.wall_count == 5, "one corner is cut off"
    assert plan.space.door == 0
    assert any(len(cover.bands) == 2 for cover in plan.walls)
    assert len(plan.lamps) == 2
    assert plan.target is not None
    assert plan.target.crop.startswith("Lettuce")


def test_the_demo_uses_the_catalogue_as_it_stands(catalogue: Catalogue) -> None:
    plan = demo_plan()
    for lining in plan.linings:
        assert lining == catalogue.lining(lining.key)
    for lamp in plan.lamps:
        assert lamp.model == catalogue.lamp(lamp.model.key)
    assert plan.target == catalogue.crop("lettuce").target("seedling")
    assert OPENING_KEY not in {lining.key for lining in plan.linings}


def test_the_demo_can_reach_its_target_but_not_by_far() -> None:
    # All photons on the canopy would be the most; 28-92 % reach it between white walls.
    plan = demo_plan()
    most = sum(lamp.ppf for lamp in plan.lamps) / plan.space.area
    assert plan.target is not None
    band = plan.target.ppfd_band(plan.photoperiod_hours)
    assert band is not None
    assert 0.28 * most < band[0] < 0.92 * most


def test_the_demo_raises_no_warning() -> None:
    assert all(finding.severity is not Severity.WARNING for finding in findings(demo_plan()))
