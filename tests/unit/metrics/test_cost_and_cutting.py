"""Areas, cutting lists, money and air, worked by hand."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planner.estimate.worth import (
    Cover,
    Part,
    air_flow,
    covers,
    drawing,
    payback_months,
    purchase,
)
from planner.metrics.cutting import CuttingList, Piece, cutting_list, fewest_rolls
from planner.plan.costs import Costs, Goods
from planner.plan.lining import Band, Lining, WallCover
from planner.plan.place import Place, PlaceKind
from planner.plan.space import Space
from tests.unit.reports.sample_estimate import SQUARE, sample_plan

FOIL = Lining(key="foil", name="Invented foil", reflectance=0.86, low=0.8, high=0.9)


def pieces_of(*sizes: tuple[float, float]) -> list[Piece]:
    return [Piece(f"P{k}", *size) for k, size in enumerate(sizes)]


def test_areas_and_pieces_of_a_cabinet() -> None:
    """0.6 x 0.5 x 1.2 m; wall 1 is the door, wall 2 has foil up to 0.7 m."""
    plan = sample_plan(
        space=Space(footprint=SQUARE, height=1.2, door=0),
        linings=(*sample_plan().linings, FOIL),
        walls=(
            WallCover.plain("white-board"),
            WallCover(bands=(Band(lining="foil", top=0.7), Band(lining="white-board"))),
            WallCover.plain("white-board"),
            WallCover.plain("white-board"),
        ),
    )
    board, foil = covers(plan, overlap=0.02)
    # Board: 0.6·1.2 (door) + 0.5·0.5 + 0.6·1.2 + 0.5·1.2 walls, 0.6·0.5 floor; the ceiling is open.
    assert board.lining == "white-board"
    assert board.area == pytest.approx(0.72 + 0.25 + 0.72 + 0.60 + 0.30)
    assert foil.area == pytest.approx(0.5 * 0.7)
    # Overlap of the foil on either side; a board goes round no corner.
    sizes = {piece.label: (piece.length, piece.width) for piece in board.pieces}
    assert sizes["Wall 1 (door)"] == pytest.approx((0.60, 1.20))
    assert sizes["Wall 2, band 2"] == pytest.approx((0.50, 0.50))
    assert sizes["Wall 3"] == pytest.approx((0.60, 1.20))
    assert sizes["Floor"] == pytest.approx((0.60, 0.50))
    assert [piece.label for piece in foil.pieces] == ["Wall 2, band 1"]
    assert (foil.pieces[0].length, foil.pieces[0].width) == pytest.approx((0.54, 0.74))


def test_two_beside_each_other_on_one_roll() -> None:
    """1.0 x 0.4 twice on a roll 0.8 wide: side by side, 1.0 m of roll, nothing wasted there."""
    found = cutting_list(pieces_of((1.0, 0.4), (1.0, 0.4)), width=0.8, length=1.0)
    assert found.rolls == 1
    assert found.used_length == pytest.approx(1.0)
    assert [(p.across, p.along) for p in found.placed] == [(0.0, 0.0), (0.4, 0.0)]
    assert found.waste == pytest.approx(0.0)


def test_turning_saves_length() -> None:
    """0.9 x 0.3 three times on a roll 1 m wide: across 3·0.3 = 0.9 m; along side by side 0.9 m too;
    four of them: across 1.2 m, along 0.9 + 0.9 = 1.8 m."""
    assert cutting_list(pieces_of(*[(0.9, 0.3)] * 3), 1.0, 10.0).used_length == pytest.approx(0.9)
    assert cutting_list(pieces_of(*[(0.9, 0.3)] * 4), 1.0, 10.0).used_length == pytest.approx(1.2)


def test_a_second_roll_when_the_first_is_full() -> None:
    """Two of 0.5 x 0.8 across a 0.8 m roll of 0.9 m: 0.5 + 0.5 > 0.9, so one roll each."""
    found = cutting_list(pieces_of((0.8, 0.5), (0.8, 0.5)), width=0.8, length=0.9)
    assert found.rolls == 2
    assert {p.roll for p in found.placed} == {0, 1}
    # Bought 2·0.8·0.9 = 1.44, used 2·0.4 = 0.8 m².
    assert found.waste == pytest.approx(1 - 0.8 / 1.44)


def test_too_wide_for_the_roll_is_divided_with_a_seam() -> None:
    """1.1 x 1.2 on a 0.5 m roll, seam 0.02: n strips cover 0.5 n - 0.02 (n - 1).

    Three cover 1.46 but two only 0.98, so it takes three either way; strips along the
    shorter side use 3·1.1 = 3.3 m of the roll, along the longer one 3·1.2 = 3.6 m.
    """
    found = cutting_list(pieces_of((1.2, 1.1)), width=0.5, length=10.0, seam=0.02)
    assert len(found.placed) == 3
    assert sum(p.size_across for p in found.placed) == pytest.approx(1.2 + 2 * 0.02)
    assert {round(p.size_along, 9) for p in found.placed} == {1.1}
    assert found.used_length == pytest.approx(3.3)


@pytest.mark.parametrize(
    ("sizes", "width", "length", "seams", "least"),
    [
        # By area: 2 · 1.0 · 0.4 / 0.8 = 1.0 m, and so much is cut.
        (((1.0, 0.4), (1.0, 0.4)), 0.8, 5.0, False, 1.0),
        # By the longest strip: 2.0 m does not lie across 0.5 m, so it lies along.
        (((2.0, 0.1),), 0.5, 5.0, False, 2.0),
        # Where seams are welcome its strips of 0.1 m could lie across: the area, 0.4 m, is left.
        (((2.0, 0.1),), 0.5, 5.0, True, 0.4),
        # Neither side fits whole: strips along the shorter, 1.1 m; the area is 1.32 / 0.5 = 2.64.
        (((1.2, 1.1),), 0.5, 10.0, False, 2.64),
    ],
)
def test_no_layout_does_with_less(
    sizes: tuple[tuple[float, float], ...], width: float, length: float, seams: bool, least: float
) -> None:
    found = cutting_list(pieces_of(*sizes), width, length, seams_welcome=seams)
    assert found.least_length == pytest.approx(least)
    assert found.used_length >= least - 1e-6


CABINET = ((1.64, 0.59),) * 2 + ((1.64, 0.64),) * 2
"""Walls 55 and 60 cm wide, 160 cm high, with 2 cm of overlap on every side."""


@pytest.mark.parametrize(
    ("width", "most"),
    [
        # Two strips of each wall side by side would be 8 · 1.64 = 13.1 m. By hand: four strips
        # 45 cm wide, and the rests (16, 16, 21 and 21 cm) in two pairs: 6 · 1.64 = 9.84 m.
        (0.45, 9.84),
        # By hand, strips lying across the walls: three rows of 60, 60 and 48 cm cover 1.64 m
        # with two seams: 3 · (2 · 0.59 + 2 · 0.64) = 7.38 m.
        (0.60, 7.38),
    ],
)
def test_strips_of_unequal_width_need_less_of_the_roll(width: float, most: float) -> None:
    found = cutting_list(pieces_of(*CABINET), width, 10.0, seams_welcome=True)
    assert found.rolls == 1
    assert found.used_length <= most + 1e-6
    # Nothing can do with less than the area of the walls.
    assert found.used_length >= sum(a * b for a, b in CABINET) / width
    assert not any_overlap(found)


def test_a_seam_saves_the_second_roll() -> None:
    """Three of 1.0 x 0.4 on rolls 0.62 by 2.0 m.

    Whole, each needs 1.0 m for itself, so two rolls. One of them divided into 0.21 + 0.21 - 0.02
    fits beside the others: 0.4 + 0.21 = 0.61.
    """
    pieces = pieces_of(*[(1.0, 0.4)] * 3)
    found = cutting_list(pieces, width=0.62, length=2.0, seams_welcome=True)
    assert (found.rolls, len(found.placed)) == (1, 4)
    assert found.used_length == pytest.approx(2.0)
    whole = cutting_list(pieces, width=0.62, length=2.0)
    assert (whole.rolls, len(whole.placed)) == (2, 3)


def test_sheets_are_filled_before_another_is_bought() -> None:
    """Six of 1.0 x 0.6 on sheets 1.2 x 2.0: four fill a sheet, so two sheets; area says 1.5."""
    found = cutting_list(pieces_of(*[(1.0, 0.6)] * 6), 1.2, 2.0)
    assert (found.rolls, fewest_rolls(pieces_of(*[(1.0, 0.6)] * 6), 1.2, 2.0)) == (2, 2)


def test_very_many_pieces_are_laid_out_too() -> None:
    """Too many for the program: shelves filled one after another, within the stated 1.7."""
    sizes = [(0.3 + 0.01 * k, 0.2 + 0.007 * k) for k in range(60)]
    found = cutting_list(pieces_of(*sizes), 1.0, 50.0)
    bound = sum(a * b for a, b in sizes) / 1.0
    assert bound <= found.used_length <= 1.7 * bound + 0.9
    assert not any_overlap(found)


def test_sizes_that_cannot_be() -> None:
    with pytest.raises(ValueError, match="above 0"):
        cutting_list([], 0.0, 1.0)
    with pytest.raises(ValueError, match="overlap at a seam"):
        cutting_list([], 0.05, 1.0, seam=0.05)
    assert cutting_list([], 0.5, 1.0).rolls == 0


sides = st.floats(0.05, 3.0)


@settings(max_examples=15, deadline=None)
@given(st.lists(st.tuples(sides, sides), max_size=4), st.floats(0.3, 1.5), st.floats(1.0, 5.0))
def test_nothing_overlaps_nothing_is_lost(
    sizes: list[tuple[float, float]], width: float, length: float
) -> None:
    found = cutting_list(pieces_of(*sizes), width, length, seam=0.0, seams_welcome=True)
    for one in found.placed:
        assert one.across + one.size_across <= width + 1e-6
        assert one.along + one.size_along <= length + 1e-6
        assert one.roll < found.rolls
    assert sum(p.size_across * p.size_along for p in found.placed) == pytest.approx(
        sum(a * b for a, b in sizes)
    )
    assert not any_overlap(found)
    assert found.used_length >= found.least_length - 1e-6


def any_overlap(found: CuttingList) -> bool:
    for k, a in enumerate(found.placed):
        for b in found.placed[:k]:
            apart = (
                a.roll != b.roll
                or a.across + a.size_across <= b.across + 1e-9
                or b.across + b.size_across <= a.across + 1e-9
                or a.along + a.size_along <= b.along + 1e-9
                or b.along + b.size_along <= a.along + 1e-9
            )
            if not apart:
                return True
    return False


def test_what_a_purchase_costs() -> None:
    places = Place(PlaceKind.WALL, 0, 0), Place(PlaceKind.WALL, 1, 0)
    pieces = pieces_of((0.8, 0.5), (0.8, 0.5))
    cover = Cover("foil", tuple(map(Part, places, pieces, (0.4, 0.4))))
    goods = Goods(lining="foil", width=0.8, length=0.9, price=4.5)
    assert purchase(cover, goods).cost == pytest.approx(9.0)  # two rolls
    unpriced = goods.model_copy(update={"price": None})
    assert purchase(cover, unpriced).cost is None


def test_energy_and_payback() -> None:
    # 40 W · 16 h = 0.64 kWh a day; times 30.4375 days = 19.48 kWh.
    assert drawing(40, 16, Costs()).kwh == pytest.approx(19.48)
    assert payback_months(12.0, 1.5) == pytest.approx(8.0)
    assert payback_months(12.0, 0.0) is None
    assert payback_months(12.0, -1.0) is None
    assert payback_months(0.0, 1.0) == 0.0


def test_air_for_a_hundred_watts_and_five_kelvin() -> None:
    """100 W / (1.2 · 1005 · 5) = 0.016584 m³/s = 59.70 m³/h; the rule of thumb is 3 P/ΔT = 60."""
    assert air_flow(100, 5) == pytest.approx(59.70, abs=0.01)
    assert air_flow(100, 5) == pytest.approx(60, rel=0.01)
    assert math.isclose(air_flow(0, 5), 0)
    with pytest.raises(ValueError, match="above 0 K"):
        air_flow(100, 0)
