"""Changes say what differs between two setups and make one out of the other."""

from __future__ import annotations

from functools import reduce
from typing import Any

import pytest

from planner.catalogue.library import demo_plan
from planner.plan import edits
from planner.plan.changes import (
    Change,
    Hung,
    Lined,
    Rebuilt,
    Turned,
    apply,
    differences,
    moved_besides,
    said,
    words,
)
from planner.plan.dials import dial
from planner.plan.lining import OPENING, Band, Lining, WallCover
from planner.plan.place import Place, PlaceKind
from planner.plan.plan import Plan
from planner.plan.space import Obstacle
from planner.plan.wavebands import LEAVES
from planner.units import LengthUnit
from tests.unit.reports.sample_estimate import sample_plan

FOIL = Lining(key="foil", name="Invented foil", reflectance=0.86, low=0.8, high=0.9)
LAMP = Place(PlaceKind.LAMP, 0)
SPACE, CANOPY = Place(), Place(PlaceKind.CANOPY)


def wall(index: int, band: int | None = None) -> Place:
    return Place(PlaceKind.WALL, index, band)


@pytest.mark.parametrize(
    ("change", "text"),
    [
        (Lined(wall(1), FOIL), "wall 2: Invented foil"),
        (Lined(wall(1, 0), OPENING), "wall 2: Open (no surface)"),
        (Lined(Place(PlaceKind.CEILING), FOIL), "ceiling: Invented foil"),
        (Lined(Place(PlaceKind.FLOOR), FOIL), "floor: Invented foil"),
        (Turned("height", LAMP, 0.35), "lamp 1: hanging height 35 cm"),
        (Turned("output", LAMP, 50.0), "lamp 1: output 50 %"),
        (Turned("lamp-x", LAMP, 0.2), "lamp 1: x 20 cm"),
        (Turned("lamp-rotation", LAMP, 45.0), "lamp 1: rotation 45°"),
        (Turned("width", SPACE, 1.2), "footprint width 120 cm"),
        (Turned("depth", SPACE, 0.7), "footprint depth 70 cm"),
        (Turned("space-height", SPACE, 1.5), "inside height 150 cm"),
        (Turned("photoperiod", SPACE, 12.0), "photoperiod 12 h"),
        (Turned("canopy", SPACE, 0.3), "canopy height 30 cm"),
        (Turned("canopy-reflectance", SPACE, 0.1), "canopy reflectance 10 %"),
    ],
)
def test_each_change_is_made_found_and_said(change: Change, text: str) -> None:
    plan = sample_plan(photoperiod_hours=16)
    made = apply(plan, change)
    assert said(plan, made) == (text,)
    assert words(plan, change) == text
    # Made twice it changes nothing more.
    assert apply(made, change) == made
    assert differences(made, made) == ()


def test_lamps_come_go_and_are_replaced() -> None:
    plan = sample_plan()
    lamp = plan.lamps[0].model_copy(update={"x": 0.4, "label": "Second"})
    two = apply(plan, Hung(None, lamp))
    assert said(plan, two) == ("one more lamp: Second",)
    assert differences(two, plan) == (Hung(1, None),)
    assert said(two, plan) == ("without lamp 2",)
    other = plan.lamps[0].model.model_copy(update={"key": "other", "name": "Other", "ppf": 90.0})
    new = lamp.model_copy(update={"model": other, "label": ""})
    assert said(two, apply(two, Hung(1, new))) == ("lamp 2: Other",)


def test_a_lamp_is_known_by_its_place_when_another_goes() -> None:
    plan = sample_plan()
    for x in (0.35, 0.4):
        plan = edits.add_lamp(plan, plan.lamps[0].model_copy(update={"x": x}))
    rest = edits.change_lamp(edits.remove_lamp(plan, 0), 1, output_percent=40.0)
    assert said(plan, rest) == ("lamp 3: output 40 %", "without lamp 1")


def test_what_is_common_is_said_once() -> None:
    plan = edits.add_lamp(sample_plan(), sample_plan().lamps[0].model_copy(update={"x": 0.4}))
    other = edits.each_lamp(plan, lambda lamp: lamp.model_copy(update={"output_percent": 50.0}))
    assert said(plan, edits.line_all_walls(other, FOIL)) == (
        "all walls: Invented foil", "all lamps: output 50 %",
    )  # fmt: skip
    # A wall whose two bands became one is one of them, and the ceiling has the same lining.
    bands = (Band(lining="white-board", top=0.5), Band(lining="white-board"))
    banded = edits.set_wall_cover(plan, 1, WallCover(bands=bands))
    foil = edits.line_ceiling(edits.line_all_walls(banded, FOIL), FOIL)
    assert said(banded, foil) == ("all walls, ceiling: Invented foil",)
    one = edits.line_wall(edits.line_wall(plan, 0, 0, FOIL), 2, 0, FOIL)
    assert said(plan, one) == ("wall 1, wall 3: Invented foil",)
    inch = said(plan, apply(plan, Turned("height", LAMP, 0.4 + 0.0254)), LengthUnit.INCH)
    assert inch[0].endswith(" in")


def test_another_value_of_a_lining_is_a_difference() -> None:
    plan = sample_plan()
    duller = plan.linings[0].model_copy(update={"reflectance": 0.76})
    made = edits.change_lining(plan, duller)
    assert said(plan, made)[0] == "all walls, floor: White board of reflectance 0.76"


def test_a_raised_canopy_leaves_the_lamp_where_it_hangs() -> None:
    made = apply(sample_plan(), Turned("canopy", SPACE, 0.3))
    # The face hung at 0.2 + 0.4 = 0.6 m; 0.6 - 0.3 = 0.3 m above the new canopy.
    assert made.lamps[0].hanging_height == pytest.approx(0.3)


@pytest.mark.parametrize(
    ("change", "match"),
    [
        (Lined(wall(4), FOIL), "no wall 5"),
        (Lined(wall(0, 2), FOIL), "no wall 1, band 3"),
        (Lined(CANOPY, FOIL), "a canopy has no lining"),
        (Turned("output", Place(PlaceKind.LAMP, 3), 10.0), "no lamp 4"),
        (Turned("height", LAMP, 3.0), "the ceiling is there"),
        (Turned("canopy", SPACE, 1.1), "lamp 1 hangs at"),
        (Hung(5, None), "no lamp 6"),
        (Rebuilt("another outline"), "another outline"),
    ],
)
def test_a_change_that_does_not_fit_is_refused(change: Change, match: str) -> None:
    with pytest.raises(ValueError, match=match):
        apply(sample_plan(), change)


def rebuilt(plan: Plan, what: str) -> Plan:
    pot = Obstacle(
        name="Pot", x=0.3, y=0.3, underside=0.3, length=0.1, width=0.1, thickness=0.1
    )  # fmt: skip
    bands = (Band(lining="white-board", top=0.5), Band(lining="white-board"))
    made: dict[str, Any] = {
        "another outline": lambda: edits.add_corner(plan, 0, (0.3, 0.0)),
        "wall 2: other bands": lambda: edits.set_wall_cover(plan, 1, WallCover(bands=bands)),
        "1 obstacle": lambda: edits.add_obstacle(plan, pot),
        "door on wall 1": lambda: edits.with_space(plan, door=0),
    }
    result: Plan = made[what]()
    return result


@pytest.mark.parametrize(
    "what", ["another outline", "wall 2: other bands", "1 obstacle", "door on wall 1"]
)
def test_what_no_change_can_say_is_said_to_be_built_anew(what: str) -> None:
    plan = sample_plan()
    assert said(plan, rebuilt(plan, what))[0] == what


def test_differences_lead_from_one_to_the_other() -> None:
    plan = sample_plan()
    other = edits.set_size(plan, 0.8, 0.6)
    other = edits.line_wall(other, 2, 0, FOIL)
    other = edits.line_ceiling(other, FOIL)
    other = edits.change_lamp(other, 0, output_percent=70, x=0.5, y=0.3)
    made = reduce(apply, differences(plan, other), plan)
    assert made.space == other.space
    assert made.walls == other.walls
    assert made.ceiling == other.ceiling
    assert made.lamps == other.lamps


def test_leaves_with_colours_are_told() -> None:
    plan = sample_plan()
    leafy = edits.set_canopy(plan, wavebands=LEAVES)
    assert said(plan, leafy) == ("canopy with colours",)
    assert said(leafy, plan) == ("grey canopy",)


def test_what_an_edit_moves_besides_is_said() -> None:
    """Of the rack: bars 3 and 4 hang under the upper shelf, 5 and 6 over it under the ceiling."""
    rack, shelf = demo_plan("rack"), Place(PlaceKind.OBSTACLE, 1)
    up = dial("underside").put(rack, shelf, 1.1)
    said_up = "Lamps 3 and 4 went with it. Lamps 5 and 6 over its canopy did not move."
    assert moved_besides(rack, up, (shelf,)) == ("lamps 3 and 4", said_up)
    bars = [Place(PlaceKind.LAMP, k) for k in (2, 3)]
    assert moved_besides(rack, up, (shelf, *bars)) == ("", said_up.partition(". ")[2])
    # 120 cm hold a lamp 108 cm over the canopy at 12 cm.
    low = edits.set_height(rack, 1.2)
    under = "Lamps 5 and 6 came down too, to stay under the ceiling."
    assert moved_besides(rack, low) == ("lamps 5 and 6", under)
    wide = edits.set_size(rack, 1.8, 0.4)
    assert moved_besides(rack, wide)[1].endswith("Upper tier moved too, in proportion.")
    assert moved_besides(rack, edits.set_canopy_height(rack, 0.2)) == ("", "")
    assert moved_besides(rack, edits.remove_lamp(rack, 0)) == ("", "")
