"""Answers against brute force on the same core, and against sums done by hand."""

from __future__ import annotations

import itertools
import math
from typing import Any

import pytest

from planner.estimate.compare import Wishes
from planner.estimate.evaluate import Cache, Cancelled, evaluate
from planner.estimate.find import Answers, Limit, find
from planner.estimate.find_question import (
    Aim,
    FindError,
    Held,
    Question,
    Turn,
    height_range,
    wished_band,
)
from planner.estimate.result import EstimateOptions, Figures, Quality
from planner.plan import edits
from planner.plan.checks import clashes
from planner.plan.costs import Costs, Goods, LampPrice
from planner.plan.lining import Lining
from planner.plan.plan import Plan
from planner.plan.space import Obstacle
from planner.plan.target import DliTarget, PpfdTarget
from planner.units import LengthUnit, in_unit
from tests.physics.rooms import box, lamp, panel, plan
from tests.unit.reports.sample_estimate import L_SHAPE, sample_plan

OPTIONS = EstimateOptions(cells=(12, 12), quality=Quality.PREVIEW)
CAREFUL = EstimateOptions(cells=(12, 12), quality=Quality.DEFAULT)
FOIL = Lining(
    key="foil", name="Invented foil", reflectance=0.88, low=0.84, high=0.92, specular_share=0.6
)
DARK = Lining(key="dark", name="Invented board", reflectance=0.2, low=0.1, high=0.3)
MONTH = 365.25 / 12
ONLY_HEIGHT = frozenset({Turn.HEIGHT, Turn.OUTPUT})


def by_hand(what: Plan, low: float, cache: Cache) -> tuple[Figures, float, float] | None:
    """Figures at full output, and share and kWh a month of just so much DLI in the plan's hours.

    DLI = mean · h · 0.0036; kWh = W · share · h / 1000 · 30.4375, the share in whole per cents.
    None where it is out of reach.
    """
    figures = evaluate(what, CAREFUL, cache=cache).figures
    hours = what.photoperiod_hours
    share = math.ceil(100 * low / (figures.mean * hours * 0.0036) - 1e-6) / 100
    watts = sum(one.model.watts for one in what.lamps)
    return None if share > 1 else (figures, share, watts * share * hours / 1000 * MONTH)


@pytest.mark.parametrize(
    ("aim", "low", "least_even"),
    [
        (Aim.EVEN, 8.0, None),
        (Aim.EVEN, 3.0, None),
        (Aim.ENERGY, 5.0, None),
        (Aim.ENERGY, 5.0, 0.7),
        (Aim.CHEAP, 4.0, 0.6),
    ],
)
def test_no_height_and_no_lining_of_a_grid_is_better(
    aim: Aim, low: float, least_even: float | None
) -> None:
    """Every second centimetre under every lining, each at the output that just gives the DLI.

    A roll of foil costs 6.00: over 12 months at 0.30 a kWh it must save more than that.
    """
    costs = Costs(
        price_per_kwh=0.30,
        goods=(
            Goods(lining="foil", width=1.3, length=5.0, price=6.0),
            Goods(lining="dark", width=1.3, length=5.0, price=1.0),
        ),
    )
    what = edits.changed(sample_plan(), costs=costs)
    turn = frozenset({Turn.HEIGHT, Turn.OUTPUT, Turn.LINING})
    wishes = Wishes(dli_low=low, min_over_mean=least_even)
    found = find(what, Question(aim, turn, wishes, linings=(FOIL, DARK)), CAREFUL)
    cache, best = Cache(), float("inf")
    for lining, price in ((None, 0.0), (FOIL, 6.0), (DARK, 1.0)):
        lined = what if lining is None else edits.line_all_walls(what, lining)
        for centimetres in range(6, 101, 2):
            one = by_hand(edits.change_lamp(lined, 0, hanging_height=centimetres / 100), low, cache)
            even = 0.0 if one is None else one[0].min_over_mean or 0.0
            if one is None or even < (least_even or 0.0):
                continue
            total = price + 12 * 0.30 * one[2]
            best = min(best, {Aim.EVEN: -even, Aim.ENERGY: one[2], Aim.CHEAP: total}[aim])
    row = found.best.option.values
    assert found.met
    mine = {Aim.EVEN: "min_over_mean", Aim.ENERGY: "kwh", Aim.CHEAP: "total"}[aim]
    value = row[mine]
    assert value is not None
    # The lowest of 144 cells is known to a per cent or so.
    least, slack = (-value, 0.01) if aim is Aim.EVEN else (value, 0.01 * best)
    assert least <= best + slack
    assert row["dli"] is not None
    assert row["dli"] >= low - 1e-9
    if least_even is not None:
        assert (row["min_over_mean"] or 0.0) >= least_even - 1e-9


def test_each_answer_by_hand_and_none_beaten_by_another() -> None:
    """DLI = mean · h · 0.0036; kWh = W · h / 1000 · 30.4375; total = span · kWh · price."""
    costs = Costs(price_per_kwh=0.30, span_months=24)
    what = edits.changed(sample_plan(), costs=costs)
    found = find(what, Question(wishes=Wishes(dli_low=5.0, dli_high=7.0)), CAREFUL)
    assert len(found.all) > 2
    for answer in found.all:
        row, output = answer.option.values, answer.plan.lamps[0].output_percent
        mean = row["mean"]
        assert mean is not None
        assert evaluate(answer.plan, CAREFUL).figures.mean == pytest.approx(mean)
        assert row["dli"] == pytest.approx(mean * 14 * 0.0036)
        assert 5.0 - 1e-9 <= mean * 14 * 0.0036 <= 7.0
        assert output == pytest.approx(round(output))
        assert row["watts"] == pytest.approx(40 * output / 100)
        kwh = 40 * output / 100 * 14 / 1000 * MONTH
        assert row["kwh"] == pytest.approx(kwh)
        assert row["total"] == pytest.approx(24 * 0.30 * kwh)
        centimetres = 100 * answer.plan.lamps[0].hanging_height
        assert centimetres == pytest.approx(round(centimetres))
        assert not answer.missed
        # Just enough light: one per cent of output less would miss it.
        assert mean * 14 * 0.0036 * (output - 1) / output < 5.0
    points = [
        (one.option.values["min_over_mean"] or 0.0, one.option.values["kwh"] or 0.0)
        for one in found.all
    ]
    for (even, kwh), (other_even, other_kwh) in itertools.permutations(points, 2):
        assert not (other_even >= even and other_kwh <= kwh)
    assert points[0][0] == max(even for even, _ in points)
    names = [one.option.side.name for one in found.all]
    assert len(set(names)) == len(names)
    height = found.best.plan.lamps[0].hanging_height
    assert names[0] == f"{height * 100:g} cm, {found.best.plan.lamps[0].output_percent:.0f} %"


def test_no_height_of_a_grid_beats_an_answer() -> None:
    """In evenness and energy at once, by more than the computation and whole per cents allow."""
    what, low, cache = sample_plan(), 4.0, Cache()
    found = find(what, Question(Aim.ENERGY, wishes=Wishes(dli_low=low)), CAREFUL)
    grid = []
    for centimetres in range(6, 101, 2):
        one = by_hand(edits.change_lamp(what, 0, hanging_height=centimetres / 100), low, cache)
        if one is not None:
            grid.append((one[0].min_over_mean or 0.0, one[2]))
    assert len(grid) > 20
    for answer in found.all:
        even = answer.option.values["min_over_mean"] or 0.0
        kwh = answer.option.values["kwh"] or 0.0
        assert not [one for one in grid if one[0] > even + 0.01 and one[1] < 0.98 * kwh]
    # The whole of the trade-off is there: its ends, and nothing of it far from an answer.
    evens = sorted(answer.option.values["min_over_mean"] or 0.0 for answer in found.all)
    best = max(even for even, _ in grid)
    assert evens[-1] >= best - 0.03
    assert max(b - a for a, b in itertools.pairwise(evens)) < 0.3 * best


def test_where_in_the_band_the_light_shall_be() -> None:
    """DLI 3 to 4 in 14 h: 59.5 to 79.4 µmol/m²/s; the middle is 69.4, within 1 % of output."""
    what = sample_plan(target=DliTarget(low=3, high=4))
    assert wished_band(what) == pytest.approx((3, 4))
    assert wished_band(sample_plan()) == pytest.approx((150 * 14 * 0.0036, 250 * 14 * 0.0036))
    wishes = Wishes(dli_low=3.0, dli_high=4.0)
    middle = find(what, Question(wishes=wishes, at=0.5), OPTIONS)
    assert middle.best.estimate.figures.mean == pytest.approx(69.44, rel=0.03)
    least = find(what, Question(wishes=wishes), OPTIONS)
    assert 59.5 <= least.best.estimate.figures.mean <= 62


def test_the_light_of_the_darkest_place() -> None:
    what = sample_plan()
    question = Question(Aim.ENERGY, wishes=Wishes(dli_low=3.0), held=Held.LOWEST)
    found = find(what, question, CAREFUL)
    lowest = found.best.estimate.figures.minimum
    assert found.met
    # 3 mol in 14 h are 3 / (14 · 0.0036) = 59.5 µmol/m²/s.
    assert 59.5 <= lowest <= 59.53 * 1.05
    cache, best = Cache(), float("inf")
    for centimetres in range(6, 101, 2):
        lifted = edits.change_lamp(what, 0, hanging_height=centimetres / 100)
        share = 59.524 / evaluate(lifted, CAREFUL, cache=cache).figures.minimum
        if share <= 1:
            best = min(best, 40 * share * 14 / 1000 * MONTH)
    assert (found.best.option.values["kwh"] or 0.0) <= 1.03 * best


def test_the_limit_is_told() -> None:
    dim = find(sample_plan(), Question(wishes=Wishes(dli_low=2.0)), CAREFUL)
    assert dim.limit is Limit.CEILING
    assert "The ceiling is the limit" in dim.words
    bright = find(sample_plan(), Question(wishes=Wishes(dli_low=8.0)), OPTIONS)
    assert bright.limit is Limit.WISHES
    assert "Higher would be more even, but the light wished would be missed." in bright.words
    # What 98 % of the output give at 5 cm asks for more of it at every other height.
    lowest = edits.change_lamp(sample_plan(), 0, hanging_height=0.05)
    wished = 0.98 * evaluate(lowest, OPTIONS).figures.dli
    near = find(sample_plan(), Question(Aim.ENERGY, wishes=Wishes(dli_low=wished)), OPTIONS)
    assert near.limit is Limit.CANOPY
    assert "least distance, 5 cm" in in_unit(near.words, LengthUnit.CM)
    height = bright.best.plan.lamps[0].hanging_height
    assert f"{height * 100:g} cm above the canopy" in in_unit(bright.words, LengthUnit.CM)
    assert " in above the canopy" in in_unit(bright.words, LengthUnit.INCH)


def test_power_and_money_are_kept_to() -> None:
    """At most 20 W of 40: the light is made up for by hours, in quarters of them."""
    what = edits.changed(sample_plan(), costs=Costs(price_per_kwh=0.30))
    turn = frozenset({Turn.HEIGHT, Turn.OUTPUT, Turn.HOURS})
    wishes = Wishes(dli_low=5.0, watts=20.0, total=60.0)
    found = find(what, Question(Aim.EVEN, turn, wishes), OPTIONS)
    row = found.best.option.values
    hours = found.best.plan.photoperiod_hours
    assert found.met
    assert (row["watts"] or 99) <= 20
    assert (row["total"] or 99) <= 60
    assert (row["dli"] or 0) >= 5
    assert 14 < hours <= 20
    assert 4 * hours == pytest.approx(round(4 * hours))
    # 60.00 are 60 / (12 · 0.30 · 30.4375) = 0.5476 kWh a day.
    assert (row["watts"] or 0) * hours / 1000 <= 0.5476


def test_what_cannot_be_met_says_what_would() -> None:
    """Black walls: no more than 100 µmol/s on 0.3 m², 333 µmol/m²/s, whatever the height."""
    black = edits.line_all_walls(sample_plan(floor="open"), sample_plan().linings[0])
    found = find(black, Question(wishes=Wishes(dli_low=50.0)), OPTIONS)
    assert not found.met
    assert found.limit is Limit.WISHES
    assert found.best.plan.lamps[0].output_percent == 100
    dli = found.best.estimate.figures.dli
    assert found.best.missed == (f"DLI {dli:.1f} is under 50",)
    # 50 mol are so many times this DLI, and so much flux it takes.
    assert f"{100 * 50 / dli:.0f} µmol s⁻¹ of photon flux instead of 100" in found.words
    assert "h of light a day" not in found.words
    less = find(black, Question(wishes=Wishes(dli_low=1.2 * dli)), OPTIONS)
    assert f"{14 * 1.2:.1f} h of light a day instead of 14" in less.words


def test_the_aim_without_a_wish_leaves_output_and_hours() -> None:
    """The most even height at the output as it is: nothing asks for another one."""
    what = edits.change_lamp(sample_plan(), 0, output_percent=60)
    found = find(what, Question(Aim.EVEN), OPTIONS)
    assert found.best.plan.lamps[0].output_percent == pytest.approx(60)
    assert found.best.plan.photoperiod_hours == 14


@pytest.mark.parametrize(
    ("parts", "question", "said"),
    [
        ({"lamps": ()}, Question(), "Hang one lamp first"),
        ({}, Question(turn=frozenset()), "may be turned"),
        ({}, Question(Aim.ENERGY), "how much light"),
        ({}, Question(wishes=Wishes(dli_low=5, dli_high=4)), "must rise"),
        ({"photoperiod_hours": 0}, Question(wishes=Wishes(dli_low=5)), "above 0 h"),
        ({}, Question(Aim.CHEAP, wishes=Wishes(dli_low=5)), "price of 1 kWh"),
        ({}, Question(wishes=Wishes(total=5)), "price of 1 kWh"),
        ({}, Question(turn=frozenset({Turn.LAMPS})), "how many lamps"),
        ({}, Question(turn=frozenset({Turn.LAMPS}), counts=(7,)), "1 to 6 lamps"),
        ({}, Question(turn=frozenset({Turn.LINING})), "Tick the linings"),
        ({"lamps": 7 * sample_plan().lamps}, Question(turn=frozenset({Turn.PLACES})), "1 to 6"),
        # Six of 0.3 x 0.2 m are 0.36 m², and the footprint has 0.30.
        ({}, Question(turn=frozenset({Turn.LAMPS, Turn.PLACES}), counts=(6,)), "do not fit"),
    ],
)
def test_what_cannot_be_asked(parts: dict[str, Any], question: Question, said: str) -> None:
    with pytest.raises(FindError, match=said):
        find(sample_plan(**parts), question, OPTIONS)


def test_no_room_to_hang_in() -> None:
    low = edits.change_lamp(sample_plan(), 0, hanging_height=0.01)
    with pytest.raises(FindError, match=r"3.cm for the lamp"):
        height_range(edits.set_height(low, 0.23))


def test_cancel_progress_and_a_part() -> None:
    question = Question(wishes=Wishes(dli_low=5.0))
    with pytest.raises(Cancelled):
        find(sample_plan(), question, cancelled=lambda: True)
    seen: list[float] = []
    whole = find(sample_plan(), question, OPTIONS, progress=seen.append)
    assert seen[-1] == 1.0
    assert all(0 <= fraction <= 1 for fraction in seen)
    assert not whole.stopped
    # Stopped half way, the best so far is handed on and said to be that.
    halves: list[float] = []
    part = find(
        sample_plan(), question, OPTIONS,
        progress=halves.append, cancelled=lambda: len(halves) >= 4,
    )  # fmt: skip
    assert part.stopped
    assert part.tried < whole.tried
    assert "so far" in part.words
    # Also while many arrangements are still being looked at coarsely.
    turn = frozenset({Turn.HEIGHT, Turn.OUTPUT, Turn.PLACES})
    told: list[float] = []
    part = find(
        sample_plan(), Question(turn=turn, wishes=Wishes(dli_low=5.0)), OPTIONS,
        progress=told.append, cancelled=lambda: len(told) >= 8,
    )  # fmt: skip
    assert part.stopped
    assert len(part.all) == 1
    assert "so far" in part.words


# -- hours ------------------------------------------------------------------------------


def test_lamps_without_a_dimmer_burn_full_or_hang_higher() -> None:
    """Half the light asked of a lamp at full output: dimming would do it, but nothing dims it."""
    bare = sample_plan()
    model = edits.changed(bare.lamps[0].model, dimmable=False)
    fixed = edits.change_lamp(bare, 0, model=model)
    dli = evaluate(bare, OPTIONS).figures.mean * 14 * 3600 / 1e6
    wishes = Wishes(dli_low=dli / 2)
    question = Question(Aim.ENERGY, turn=ONLY_HEIGHT, wishes=wishes)
    dimmed, full = (find(one, question, OPTIONS).best for one in (bare, fixed))
    assert dimmed.plan.lamps[0].output_percent < 60
    assert full.plan.lamps[0].output_percent == 100
    # Whoever wishes for fewer watts than it takes is told that this cannot be kept.
    few = Question(Aim.ENERGY, turn=ONLY_HEIGHT, wishes=Wishes(dli_low=dli / 2, watts=20.0))
    found = find(fixed, few, OPTIONS)
    assert not found.met
    assert found.best.plan.lamps[0].output_percent == 100
    assert "Power 40 is over 20" in found.words


def test_hours_for_a_dli() -> None:
    """The quarter of an hour above 6e6 / 3600 / mean."""
    what = sample_plan()
    mean = evaluate(what, OPTIONS).figures.mean
    question = Question(Aim.ENERGY, frozenset({Turn.HOURS}), Wishes(dli_low=6.0))
    found = find(what, question, OPTIONS)
    exact = 6e6 / 3600 / mean
    assert found.met
    assert exact <= found.best.plan.photoperiod_hours <= exact + 0.25
    assert found.best.estimate.figures.dli >= 6
    assert found.best.plan.lamps == what.lamps
    # A band of a hundredth of a mol leaves no room for that: then it is exact.
    narrow = Wishes(dli_low=6.0, dli_high=6.001)
    found = find(what, Question(Aim.ENERGY, frozenset({Turn.HOURS}), narrow), OPTIONS)
    assert found.best.plan.photoperiod_hours == pytest.approx(exact)


def test_more_hours_than_a_day_leaves() -> None:
    what = edits.change_lamp(sample_plan(), 0, output_percent=20)
    question = Question(Aim.ENERGY, frozenset({Turn.HOURS}), Wishes(dli_low=12.0))
    found = find(what, question, OPTIONS)
    assert not found.met
    assert found.best.plan.photoperiod_hours == 20
    mean = found.best.estimate.figures.mean
    # 20 µmol/s give mean · 20 h · 0.0036; for 12 mol it takes so many times more.
    assert (
        f"{20 * 12 / (mean * 20 * 0.0036):.1f} µmol s⁻¹ of photon flux instead of 20" in found.words
    )


# -- places and numbers of lamps --------------------------------------------------------


def places(found: Answers) -> list[tuple[float, float]]:
    return sorted((one.x, one.y) for one in found.best.plan.lamps)


def test_one_lamp_goes_to_the_middle_of_a_square() -> None:
    what = plan(box(0.8, 0.8), 1.2, [lamp((0.2, 0.3), 0.4, body=panel(0.1, 0.1))], walls=(0.5, 0))
    question = Question(turn=frozenset({Turn.PLACES, Turn.OUTPUT}), wishes=Wishes(dli_low=3.0))
    found = find(what, question, OPTIONS)
    assert found.met
    assert places(found)[0] == pytest.approx((0.4, 0.4), abs=0.03)
    for x, y in places(found):
        assert (100 * x, 100 * y) == pytest.approx((round(100 * x), round(100 * y)))


def test_two_lamps_are_at_least_as_even_as_any_pair_on_a_grid() -> None:
    one = lamp((0.2, 0.3), 0.3, body=panel(0.1, 0.1))
    what = plan(box(1.0, 0.6), 1.0, [one], walls=(0.3, 0))
    turn = frozenset({Turn.PLACES, Turn.LAMPS, Turn.OUTPUT})
    found = find(what, Question(turn=turn, counts=(2,), wishes=Wishes(dli_low=2.0)), OPTIONS)
    cache, best = Cache(), 0.0
    for x1, x2, y in itertools.product((0.15, 0.2, 0.25, 0.3), (0.7, 0.75, 0.8, 0.85), (0.3,)):
        pair = tuple(
            one.model_copy(update={"x": x, "y": y, "output_percent": 50}) for x in (x1, x2)
        )
        figures = evaluate(edits.changed(what, lamps=pair), OPTIONS, cache=cache).figures
        best = max(best, figures.min_over_mean or 0.0)
    # The lowest of 144 cells is known to a percent or so at preview quality.
    assert len(found.best.plan.lamps) == 2
    assert (found.best.estimate.figures.min_over_mean or 0.0) >= best - 0.015


def test_a_second_lamp_is_bought_where_the_light_asks_for_it() -> None:
    """One lamp reaches its DLI at full output and not a half more; a lamp costs 120.00.

    Cheapest for a light that one reaches is one: 12 · 0.30 · 17 kWh are 61, less than a lamp.
    """
    what = edits.changed(
        sample_plan(),
        costs=Costs(price_per_kwh=0.30, lamp_prices=(LampPrice(model="panel", price=120.0),)),
    )
    dli = evaluate(what, OPTIONS).figures.dli
    turn = frozenset({Turn.OUTPUT, Turn.LAMPS})
    one = find(what, Question(Aim.CHEAP, turn, Wishes(dli_low=0.9 * dli), counts=(1, 2)), OPTIONS)
    assert len(one.best.plan.lamps) == 1
    two = find(what, Question(Aim.CHEAP, turn, Wishes(dli_low=1.5 * dli), counts=(1, 2)), OPTIONS)
    assert two.met
    assert len(two.best.plan.lamps) == 2
    row = two.best.option.values
    assert row["cost"] == 120
    assert row["total"] == pytest.approx(120 + 12 * 0.30 * (row["kwh"] or 0))
    assert two.best.option.buy == "1 x Invented panel"


def test_lamps_are_not_brought_into_each_other_or_into_a_shelf() -> None:
    """One lamp above the other fits only as it is; a shelf at 60 to 70 cm takes their places.

    Faces inside it are those 40 to 50 cm above the canopy at 20 cm.
    """
    one = sample_plan()
    above = one.lamps[0].model_copy(update={"hanging_height": 0.7})
    both = edits.add_lamp(one, above)
    assert clashes(both) == frozenset()
    with pytest.raises(FindError, match="in the way of each other"):
        find(both, Question(turn=frozenset({Turn.HEIGHT})), OPTIONS)
    shelf = Obstacle(x=0.3, y=0.25, underside=0.6, length=0.3, width=0.3, thickness=0.1)
    low = edits.change_lamp(edits.add_obstacle(one, shelf), 0, hanging_height=0.2)
    found = find(low, Question(wishes=Wishes(dli_low=3.0)), OPTIONS)
    assert found.met
    assert not [a for a in found.all if 0.4 < a.plan.lamps[0].hanging_height < 0.5]


def test_more_lamps_find_room_in_a_footprint_with_a_corner_cut_out() -> None:
    """The middle of an L's rectangle lies outside of it: an even grid does not fit."""
    wide = sample_plan(footprint=L_SHAPE)
    question = Question(turn=frozenset({Turn.LAMPS, Turn.OUTPUT}), counts=(2,))
    found = find(wide, question, OPTIONS)
    assert len(found.best.plan.lamps) == 2
    assert clashes(found.best.plan) == frozenset()


def test_what_is_not_turned_stays_to_the_last_digit() -> None:
    what = edits.change_lamp(sample_plan(), 0, output_percent=94.0)
    question = Question(Aim.ENERGY, frozenset({Turn.HOURS}), Wishes(dli_low=3.0))
    assert find(what, question, OPTIONS).best.plan.lamps == what.lamps


def test_what_has_no_price_is_left_out_of_the_cheapest_and_said() -> None:
    what = edits.changed(sample_plan(), costs=Costs(price_per_kwh=0.30))
    turn = frozenset({Turn.OUTPUT, Turn.LINING})
    found = find(what, Question(Aim.CHEAP, turn, Wishes(dli_low=3.0), linings=(FOIL,)), OPTIONS)
    assert "Without a price and left out: Invented foil." in found.words
    assert all(one.option.values["total"] is not None for one in found.all)
    # Nor does it keep the dearer answers from being seen that are more even.
    turn = frozenset({Turn.HEIGHT, Turn.OUTPUT, Turn.LINING, Turn.LAMPS})
    wishes = Wishes(dli_low=3.0)
    question = Question(Aim.CHEAP, turn, wishes, linings=(FOIL,), counts=(1, 2))
    found = find(what, question, OPTIONS)
    left_out = found.words.partition("left out: ")[2].rstrip(".").split(", ")
    assert set(left_out) == {"Invented foil", "Invented panel"}
    heights = [one.plan.lamps[0].hanging_height for one in found.all]
    assert max(heights) > 0.5
    assert {len(one.plan.lamps) for one in found.all} == {1}


def test_a_target_of_ppfd_is_wished_as_a_dli() -> None:
    assert wished_band(sample_plan(target=None)) is None
    assert wished_band(sample_plan(photoperiod_hours=0, target=DliTarget(low=1, high=2))) is None
    band = wished_band(sample_plan(target=PpfdTarget(low=100, high=200)))
    # 100 µmol over 14 h: 100 · 14 · 3600 / 1e6 = 5.04 mol.
    assert band == pytest.approx((5.04, 10.08))
