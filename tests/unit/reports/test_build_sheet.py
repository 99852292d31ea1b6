"""The build sheet against hand reckoning: hooks, cords, cuts, meter points."""

from __future__ import annotations

import math
from typing import Any

import pytest

from planner.catalogue.library import demo_plan
from planner.files.store import load_plan
from planner.folders import resource_path
from planner.plan import edits
from planner.plan.costs import Costs, Goods
from planner.plan.lamp import BarsBody, Lamp, LampModel, PanelBody, PointBody
from planner.plan.plan import Plan
from planner.reports.build_sheet import build_section, cord, hooks
from planner.reports.report import Pictures, Table, Warned, Words
from planner.reports.stands import base_of
from planner.units import LengthUnit, on_tape
from tests.unit.reports.sample_estimate import L_SHAPE, sample_plan

CM, INCH = LengthUnit.CM, LengthUnit.INCH


def lamp(body: Any, **parts: Any) -> Lamp:
    model = LampModel(key="m", name="Model", body=body, ppf=50, watts=25)
    return Lamp(model=model, **{"x": 0.5, "y": 0.4, "hanging_height": 0.3, **parts})


def tables(plan: Plan, unit: LengthUnit = CM) -> dict[str, Table]:
    found = {}
    for block in build_section(plan, unit).blocks:
        if isinstance(block, Table):
            found[block.title] = block
        if isinstance(block, Pictures) and block.beside is not None:
            found["hooks"] = block.beside
    return found


# -- lengths as a tape shows them -----------------------------------------------------------


@pytest.mark.parametrize(
    ("metres", "unit", "text"),
    [
        (0.55, CM, "55"),
        (0.1375, CM, "13.8"),
        (0.0254, INCH, "1"),
        (0.60, INCH, "23 5/8"),  # 23.622 in; 23 5/8 = 23.625
        (0.10, INCH, "3 15/16"),  # 3.937 in; 3 15/16 = 3.9375
        (0.001, INCH, "1/16"),  # 0.039 in; 1/16 = 0.0625 is nearer than 0
        (0.0, INCH, "0"),
    ],
)
def test_lengths(metres: float, unit: LengthUnit, text: str) -> None:
    assert on_tape(metres, unit) == text


# -- hooks ----------------------------------------------------------------------------------


def close(found: tuple[tuple[float, float], ...], wanted: list[tuple[float, float]]) -> bool:
    return len(found) == len(wanted) and all(
        math.dist(a, b) < 1e-9 for a, b in zip(found, wanted, strict=True)
    )


def test_a_bar_hangs_at_its_quarters() -> None:
    # 60 cm long about x = 50: its ends at 20 and 80, a quarter in from them 35 and 65.
    bar = lamp(PanelBody(length=0.6, width=0.05))
    assert close(hooks(bar), [(0.35, 0.4), (0.65, 0.4)])
    # Turned by 90°, the long side runs along y.
    assert close(hooks(bar.model_copy(update={"rotation_deg": 90.0})), [(0.5, 0.25), (0.5, 0.55)])


def test_a_bar_longer_across_hangs_along_its_long_side() -> None:
    assert close(hooks(lamp(PanelBody(length=0.05, width=0.6))), [(0.5, 0.25), (0.5, 0.55)])


def test_a_broad_panel_hangs_at_four_and_a_point_at_one() -> None:
    # 40 x 40 cm: quarters at 10 cm from the middle either way.
    panel = hooks(lamp(PanelBody(length=0.4, width=0.4)))
    assert close(panel, [(0.4, 0.3), (0.6, 0.3), (0.6, 0.5), (0.4, 0.5)])
    assert hooks(lamp(PointBody())) == ((0.5, 0.4),)
    bars = BarsBody(length=0.6, width=0.3, count=4, bar_width=0.03)
    assert len(hooks(lamp(bars))) == 4


def test_the_cord_ends_on_the_housing() -> None:
    # Ceiling 120, canopy at its default height, face 30 above it, housing 8 cm.
    plan = sample_plan()
    hung = lamp(PanelBody(length=0.3, width=0.2))
    tall = hung.model_copy(update={"model": hung.model.model_copy(update={"housing_height": 0.08})})
    canopy = plan.canopy.height
    assert cord(plan, hung) == pytest.approx(1.20 - canopy - 0.30)
    assert cord(plan, tall) == pytest.approx(1.20 - canopy - 0.30 - 0.08)


def test_a_lamp_under_a_shelf_hangs_from_the_shelf() -> None:
    """The rack's lower bars face 48 and 98 cm up; tiers begin at 50 and 100, the ceiling at 160."""
    plan = load_plan(resource_path("demo/rack.plan.json"))
    tiers = sorted(one.underside for one in plan.obstacles)
    rows = tables(plan)["hooks"].rows
    faces = [plan.canopy.height + one.hanging_height for one in plan.lamps]
    above = [*tiers, plan.space.height]
    by_hand = [min(one for one in above if one >= face) - face for face in faces]
    assert [row[3] for row in rows[::2]] == [on_tape(length, CM) for length in by_hand]
    assert {row[3] for row in rows} == {"2", "18"}
    assert [row[5] for row in rows[::4]] == ["1: Middle tier", "2: Upper tier", "ceiling"]
    assert len(tables(demo_plan())["hooks"].heads) == 5


# -- the two walls ----------------------------------------------------------------------------


def test_the_demo_is_measured_from_its_back_and_left_walls() -> None:
    """Walls 2 and 3 are short or aslant, wall 1 is the door: the tape goes to walls 4 and 5."""
    plan = demo_plan()
    base = base_of(plan, [point for one in plan.lamps for point in hooks(one)])
    assert base.names == ("Wall 4 (far side)", "Wall 5 (left side)")
    # Wall 4 is y = 50, wall 5 is x = 0.
    assert base.distances((0.2425, 0.16)) == pytest.approx((0.34, 0.2425))


def test_in_an_l_the_tape_meets_its_walls() -> None:
    """From (0.9, 0.25) the wall x = 0.6 above the corner is out of reach of a square tape."""
    base = base_of(sample_plan(L_SHAPE), [(0.9, 0.25)])
    for index in base.walls:
        (ax, ay), (bx, by) = sample_plan(L_SHAPE).space.wall(index)
        level = ay == by
        assert (
            (min(ax, bx) <= 0.9 <= max(ax, bx)) if level else (min(ay, by) <= 0.25 <= max(ay, by))
        )


def test_a_slanted_wall_is_measured_square_to_it() -> None:
    # Wall 3 of the demo runs from (0.8, 0.36) to (0.66, 0.5): the line x + y = 1.16.
    base = base_of(demo_plan(), [(0.4, 0.4)])
    slanted = type(base)(demo_plan(), (2, 4))
    assert slanted.distances((0.4, 0.4))[0] == pytest.approx(0.36 / math.sqrt(2))


# -- the whole sheet --------------------------------------------------------------------------


def test_the_demos_hooks_by_hand() -> None:
    # Bars of 55 cm about x = 38: quarters at 24.25 and 51.75; y = 16 and 34 of 50. The ceiling
    # is at 110, the canopy at 25, the lamps 30 above: 55 cm of cord.
    rows = tables(demo_plan())["hooks"].rows
    assert [row[0] for row in rows] == ["1a", "1b", "2a", "2b"]
    assert [row[1] for row in rows] == ["34", "34", "16", "16"]
    assert [row[2] for row in rows] == ["24.2", "51.8", "24.2", "51.8"]
    assert {row[3] for row in rows} == {"55"}
    assert [row[4] for row in rows] == ["Front bar", "Front bar", "Back bar", "Back bar"]


def test_the_demos_cuts_by_hand() -> None:
    # Foil has 2 cm more on each side, board the size of its wall; the door keeps its own 80 x 110;
    # the ceiling is cut from 80 x 50. Wall 4 of 66 has foil up to 70 and board on the 40 above.
    (title,) = [title for title in tables(demo_plan()) if title.startswith("Cuts")]
    cut = {(row[0], row[2]) for row in tables(demo_plan())[title].rows}
    assert (
        title == "Cuts; 2 cm over on every side but of boards and at the door; "
        "what is there already needs none"
    )
    # The door is painted: 80 x 110 are 0.88 m², and nothing is cut.
    assert ("Wall 1 (door)", "paint 0.88 m²") in cut
    assert ("Wall 2", "36 × 110") in cut
    assert ("Wall 4, band 1", "70 × 74") in cut
    assert ("Wall 4, band 2", "66 × 40") in cut
    assert ("Ceiling", "80 × 50") in cut


def test_known_sheets_say_where_each_piece_lies() -> None:
    # On a roll 60 cm wide the walls (60 and 50 by 120) and the floor (60 by 50) lie one behind
    # the other, the deepest first: at 0, 120, 240, 360 and 480 cm.
    goods = Goods(lining="white-board", width=0.6, length=20.0)
    plan = sample_plan(costs=Costs(goods=(goods,), overlap=0.0))
    (title,) = [title for title in tables(plan) if title.startswith("Cuts")]
    rows = tables(plan)[title].rows
    assert (
        title == "Cuts; 0 cm over on every side but of boards and at the door; "
        "what is there already needs none"
    )
    assert {row[3] for row in rows} == {
        f"Roll 1: {along} along, 0 across" for along in (0, 120, 240, 360, 480)
    }
    assert rows[-1][:3] == ("Floor", "White board", "50 × 60")


def test_meter_points_by_hand() -> None:
    # EN 12464-1 for 80 x 50: p = 0.2 x 5^(log10 0.8) = 0.171 m, 5 by 3 holes at the middles of
    # their cells: x = 8, 24, 40, 56, 72; y = 8.33, 25, 41.67; none is cut off by the corner.
    (title,) = [title for title in tables(demo_plan()) if title.startswith("Where the meter")]
    assert title == "Where the meter stands (15 holes by the rule of EN 12464-1)"
    rows = tables(demo_plan())[title].rows
    assert len(rows) == 5
    # From wall 4 (y = 50) and wall 5 (x = 0); the second row of holes is walked back.
    assert rows[0] == ("1", "41.7", "8", "6", "25", "72", "11", "8.3", "8")


def test_a_plan_without_lamps_or_linings_has_a_sheet_too() -> None:
    section = build_section(sample_plan(lamps=()), CM)
    assert section.alone
    assert not any(isinstance(b, Pictures) and b.beside for b in section.blocks)


def test_it_tells_to_measure_first_and_heeds_its_materials() -> None:
    section = build_section(demo_plan(), INCH)
    first = section.blocks[0]
    assert isinstance(first, Words)
    assert first.text.startswith("All in inches, measured inside, square from wall 4 (far side)")
    titles = [block.title for block in section.blocks if isinstance(block, Warned)]
    assert titles == [
        "Mains and water",
        "Fire",
        "Hanging loads",
        "Conducts electricity: Aluminium foil, flat, shiny side out",
        "Burns: White board (melamine or laminate); Bare plywood (birch or softwood)",
        "Tears: Aluminium foil, flat, shiny side out",
        "Holds moisture: Bare plywood (birch or softwood)",
    ]


def test_a_tilted_panel_hangs_on_cords_of_two_lengths() -> None:
    """Eyes 10 cm from the middle on top of an 8 cm housing, turned by 30° about the face."""
    plan = sample_plan()
    hung = lamp(PanelBody(length=0.4, width=0.4), hanging_height=0.5)
    model = hung.model.model_copy(update={"housing_height": 0.08})
    hung = hung.model_copy(update={"model": model, "tilt_deg": 30.0})
    sin, cos = 0.5, math.sqrt(0.75)
    front, back = -0.1 * cos - 0.08 * sin, 0.1 * cos - 0.08 * sin
    where = [(0.4, 0.4 + front), (0.6, 0.4 + front), (0.6, 0.4 + back), (0.4, 0.4 + back)]
    assert close(hooks(hung), where)
    face = plan.space.height - plan.canopy.height - 0.5
    for hook, way in enumerate((-1, -1, 1, 1)):
        assert cord(plan, hung, hook) == pytest.approx(face - (way * 0.1 * sin + 0.08 * cos))


def test_the_sheet_says_how_a_lamp_is_tilted() -> None:
    plan = sample_plan()
    leaning = edits.change_lamp(plan, 0, tilt_deg=-15.0)
    names = [row[-1] for row in tables(leaning)["hooks"].rows]
    assert any(name.endswith(", tilted by 15° towards the front") for name in names)
    assert not any("tilted" in row[-1] for row in tables(plan)["hooks"].rows)
