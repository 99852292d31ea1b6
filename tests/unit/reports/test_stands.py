"""What stands in the space, in report and build sheet, against reckoning by hand."""

from __future__ import annotations

import re

import pytest

from planner.catalogue.library import demo_plan
from planner.estimate.evaluate import evaluate
from planner.estimate.outlook import Part, Uncertainty, outlook
from planner.estimate.result import QUICK, Estimate
from planner.estimate.worth import covers
from planner.files.store import load_plan
from planner.folders import resource_path
from planner.plan.costs import Costs, Goods
from planner.plan.edits import changed
from planner.plan.plan import Plan
from planner.reports import content
from planner.reports.build_sheet import build_section
from planner.reports.chapters import report
from planner.reports.drawings import elevation_drawing, plan_drawing
from planner.reports.report import Block, Known, Pictures, Points, Table, Words, gather
from planner.reports.stands import STANDS, base_of, stands_at
from planner.units import LengthUnit
from tests.unit.reports.sample_estimate import sample_plan

CM = LengthUnit.CM
DOUBT = Uncertainty(
    mean=17.4, minimum=8.6, maximum=24.0, min_over_mean=0.01, dli=1.0, relative_mean=0.11,
    parts=(Part("photon flux of the bar", 17.0, 8.0), Part("height of lamp 5", 3.7e-5, 1e-5)),
)  # fmt: skip


def shipped(name: str) -> Plan:
    return load_plan(resource_path(f"demo/{name}.plan.json"))


@pytest.fixture(scope="module")
def rack() -> Estimate:
    return evaluate(shipped("rack"), QUICK)


def blocks(estimate: Estimate, key: str, doubt: Uncertainty | None = None) -> tuple[Block, ...]:
    made = report(Known(estimate, doubt), sections=(key,))
    return made.sections[0].blocks


def titled(parts: tuple[Block, ...], begins: str) -> Table:
    return next(one for one in parts if isinstance(one, Table) and one.title.startswith(begins))


def test_the_plan_chapter_tells_every_shelf(rack: Estimate) -> None:
    """84 x 36 about (45, 20) in 90 x 40: 3 from the sides, 2 from front and back."""
    shelves = titled(blocks(rack, "plan"), STANDS)
    assert shelves.heads[:4] == ("No.", "Name", "From wall 2", "From wall 3")
    assert [row[:7] for row in shelves.rows] == [
        ("1", "Middle tier", "3", "2", "84 × 36 × 12", "50", "62"),
        ("2", "Upper tier", "3", "2", "84 × 36 × 12", "100", "112"),
    ]
    assert [row[7] for row in shelves.rows] == ["Matt white wall paint"] * 2
    # The lower one has the plan's target, the upper its own.
    wanted = [re.search(r"reflects 6 %; wanted: (\d+ to \d+) ", row[8]) for row in shelves.rows]
    assert [one and one[1] for one in wanted] == ["150 to 300", "150 to 250"]


def test_the_build_sheet_says_where_and_how_high_to_build_it() -> None:
    built = titled(build_section(shipped("trays"), CM).blocks, STANDS)
    # 24 x 50 about (16, 30) and 24 x 40 about (45, 30), in 60 x 60; walls 2 (right), 3 (far).
    assert [row[1:] for row in built.rows] == [
        ("Tray, 5 cm up", "32", "5", "24 × 50 × 5", "25", "30"),
        ("Tray, 12 cm up", "3", "10", "24 × 40 × 12", "25", "37"),
    ]
    assert not [
        one
        for one in build_section(demo_plan(), CM).blocks
        if isinstance(one, Table) and one.title.startswith(STANDS)
    ]


def test_nothing_is_measured_from_a_wall_that_is_not_there() -> None:
    """The rack stands before one wall, the far one; front and sides are open."""
    assert 2 in base_of(shipped("rack"), [(0.45, 0.2)]).walls


def test_drawings_name_shelves_and_their_heights() -> None:
    for drawn in (plan_drawing(shipped("rack"), CM), elevation_drawing(shipped("rack"), CM)):
        for words in ("Middle tier", "Upper tier", "62 cm", "112 cm"):
            assert words in drawn.svg


def test_paint_is_not_cut() -> None:
    cuts = titled(build_section(shipped("rack"), CM).blocks, "Cuts")
    by_piece = {row[0]: row[2] for row in cuts.rows}
    assert by_piece["Wall 3"] == "paint 1.44 m²"  # 90 x 160
    assert by_piece["Ceiling"] == "90 × 40", "a board has the size of its ceiling"


def test_a_tray_of_a_material_that_is_sold_is_cut_for() -> None:
    """A tray of 24 x 50 x 5 with leaves on it: four sides and the underside, of board as large."""
    goods = Goods(lining="white-board", width=1.2, length=2.4)
    trays = shipped("trays")
    sold = changed(trays, costs=Costs(goods=(goods,)))
    assert not any("Obstacle" in one.label for cover in covers(trays) for one in cover.pieces)
    (board,) = [cover for cover in covers(sold) if cover.lining == "white-board"]
    mine = [one for one in board.pieces if one.label.startswith("Obstacle 1")]
    sides = sorted((round(one.length, 3), round(one.width, 3)) for one in mine)
    assert sides == [(0.24, 0.05)] * 2 + [(0.24, 0.5)] + [(0.5, 0.05)] * 2


def test_no_meter_stands_where_a_tray_does() -> None:
    plan = shipped("trays")
    sheet = build_section(plan, CM).blocks
    meter = titled(sheet, "Where the meter stands")
    assert "(9 of 25 holes" in meter.title
    # By hand: holes lie 12 cm apart from 6 on; trays reach from 4 to 28 and 33 to 57 across, from
    # 5 to 55 and 10 to 50 up.
    for hole, right, far in [row[k : k + 3] for row in meter.rows for k in (0, 3, 6)]:
        if hole:
            x, y = 60 - float(right), 60 - float(far)
            assert not (4 <= x <= 28 and 5 <= y <= 55), hole
            assert not (33 <= x <= 57 and 10 <= y <= 50), hole
    said = [one.text for one in sheet if isinstance(one, Words)]
    assert any(
        "where 'Tray, 5 cm up' stands (its top is at 30 cm)" in text and text.startswith("Left out")
        for text in said
    )
    assert stands_at(plan, (0.16, 0.30)) == 0
    assert stands_at(shipped("rack"), (0.45, 0.20)) is None  # the meter stands under the shelf


def test_every_canopy_stands_in_one_table_with_the_digits_of_the_decision(rack: Estimate) -> None:
    figures = blocks(rack, "figures", DOUBT)
    table = titled(figures, "Every canopy")
    assert [row[0].split(" (")[0] for row in table.rows] == [
        "Canopy",
        "Canopy on obstacle 1: Middle tier",
        "Canopy on obstacle 2: Upper tier",
        "All canopies together",
    ]
    own = dict(zip(table.heads, table.rows[0], strict=True))
    shown = {one.label: one for one in content.headline_figures(rack, DOUBT)}
    for name in ("Mean", "Minimum", "Maximum", "Min / mean", "DLI", "Inside band"):
        told = f"{shown[name].value} {shown[name].spread}".strip()
        assert own[name] == told
    # The doubt of the others is not known: none is shown, and no digit that it would not leave.
    other = dict(zip(table.heads, table.rows[2], strict=True))
    assert re.fullmatch(r"\d+", other["Mean"])
    assert re.fullmatch(r"\d+\.\d", other["DLI"])
    assert not [
        line
        for one in blocks(rack, "assumptions", DOUBT)
        if isinstance(one, Points)
        for line in one.lines
        if "Middle tier" in line
    ]


def test_a_bar_of_nothing_is_not_drawn(rack: Estimate) -> None:
    budget = blocks(rack, "budget", DOUBT)
    charts = [one for block in budget if isinstance(block, Pictures) for one in block.every]
    assert "photon flux of the bar" in charts[0].svg
    assert "height of lamp 5" not in charts[0].svg
    assert any(isinstance(b, Words) and b.text.startswith("1 more would give") for b in budget)
    assert "height of lamp 5" not in content.causes(DOUBT, "mean")


def test_every_tier_has_a_map_whose_title_is_of_what_it_shows(rack: Estimate) -> None:
    own, _, above = [one.every for one in blocks(rack, "light") if isinstance(one, Pictures)]
    for drawn, one in zip((*own, *above), rack.canopies, strict=True):
        low, high = re.findall(r"light from (\d+) to (\d+) ", drawn.words)[0]
        assert (int(low), int(high)) == (round(one.figures.minimum), round(one.figures.maximum))
    trays = evaluate(shipped("trays"), QUICK)
    (whole, _) = [one for one in blocks(trays, "light") if isinstance(one, Pictures)]
    assert whole.every[0].words.endswith("over 3 canopies")


def test_report_and_window_reckon_one_doubt() -> None:
    plan = sample_plan()
    known = gather(plan, QUICK, sections=("decision",)).uncertainty
    assert known is not None
    assert known == outlook(plan).uncertainty
