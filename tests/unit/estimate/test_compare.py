"""Side by side: figures, ratios and maps; the options' table, wishes, what nothing else beats."""

from __future__ import annotations

import dataclasses
import math
import random
from typing import Any

import numpy as np
import pytest

from planner.estimate.compare import (
    COLUMN,
    COLUMNS,
    OPEN_AIR_NAME,
    WISHES,
    Option,
    Origin,
    Side,
    Wishes,
    against,
    compare,
    option,
    trade_off,
    unbeaten,
)
from planner.estimate.evaluate import Cancelled
from planner.estimate.odds import Odds, sway
from planner.estimate.outlook import Input
from planner.estimate.result import EstimateOptions, Quality
from planner.estimate.worth import bill
from planner.metrics.figures import FIGURE
from planner.plan import edits
from planner.plan.costs import Costs, LampPrice
from planner.plan.lining import Lining
from planner.plan.plan import Plan
from planner.plan.variant_edits import add_variants, change_variant, try_all
from planner.reports.exports import options_to_csv
from tests.unit.reports.sample_estimate import L_SHAPE, sample_estimate, sample_plan

OPTIONS = EstimateOptions(cells=(8, 8), quality=Quality.PREVIEW)


def film(name: str, rho: float, half: float = 0.0) -> Lining:
    return Lining(
        key=name.lower(), name=name, reflectance=rho, low=rho - half, high=rho + half
    )  # fmt: skip


def half_output(plan: Plan) -> Plan:
    return add_variants(plan, ("Half", edits.change_lamp(plan, 0, output_percent=50)))


def test_half_the_output_is_half_the_light() -> None:
    plan = half_output(try_all(sample_plan(), linings=[film("Black", 0.05)]))
    found = compare(plan, OPTIONS, with_open_air=True)
    names = [side.name for side in found.sides]
    assert names == [plan.name, "Black", "Half", OPEN_AIR_NAME]
    figures = [side.estimate.figures for side in found.sides if side.estimate is not None]
    whole, black, half, _ = figures
    for name, share in (("mean", 0.5), ("minimum", 0.5), ("dli", 0.5), ("watts", 0.5), ("cv", 1.0)):
        assert getattr(half, name) == pytest.approx(share * getattr(whole, name)), name
    assert found.sides[2].said == ("lamp 1: output 50 %",)
    # Black walls are nearly no walls; both are darker than white ones.
    assert black.mean < 0.9 * whole.mean
    assert found.brightest == max(one.maximum for one in figures)


def test_open_air_has_no_walls() -> None:
    plan = edits.without_walls(half_output(sample_plan()))
    assert {band.lining for cover in plan.walls for band in cover.bands} == {"open"}
    assert plan.ceiling == "open"


def test_one_that_cannot_be_estimated_says_so_and_the_others_go_on() -> None:
    mirror = film("Perfect", 1.0)
    plan = sample_plan(canopy=sample_plan().canopy.model_copy(update={"reflectance": 1.0}))
    plan = try_all(plan, linings=[mirror])
    both = edits.line_ceiling(plan.variants[0].setup, mirror)
    found = compare(change_variant(plan, "variant-1", setup=both), OPTIONS)
    assert found.sides[0].estimate is not None
    assert found.sides[1].estimate is None
    assert "cannot be estimated" in found.sides[1].problems[0]


def test_cancel_and_progress() -> None:
    plan = half_output(sample_plan())
    seen: list[float] = []
    there: list[int] = []
    compare(
        plan,
        OPTIONS,
        progress=seen.append,
        so_far=lambda part: there.append(sum(side.estimate is not None for side in part.sides)),
    )
    assert seen[-1] == 1.0
    assert there == [1, 2]
    with pytest.raises(Cancelled):
        compare(plan, OPTIONS, cancelled=lambda: True)


def test_maps_against_a_baseline() -> None:
    base = sample_estimate()
    twice = sample_estimate()
    object.__setattr__(twice, "ppfd", 2 * base.ppfd)
    found = against(twice, base)
    assert np.nanmax(np.abs(found.ratio - 2)) < 1e-12
    assert np.nanmax(np.abs(found.difference - base.ppfd)) < 1e-12
    assert found.reach == pytest.approx(float(np.nanmax(base.ppfd)))


def test_maps_on_different_grids_are_read_off_linearly() -> None:
    """A plane a + b x + c y is kept by linear reading, whatever the grids."""
    fine, coarse = sample_estimate(cells=(12, 10)), sample_estimate(cells=(6, 5))
    for estimate in (fine, coarse):
        x, y = np.meshgrid(estimate.x, estimate.y)
        object.__setattr__(estimate, "ppfd", 100 + 50 * x + 20 * y)
    inner = against(fine, coarse).difference[1:-1, 1:-1]
    assert np.abs(inner).max() < 1e-9


def test_between_cells_a_ratio_is_the_quotient_of_the_two_lights_shown() -> None:
    base, option = sample_estimate(), sample_estimate()
    x, y = np.meshgrid(base.x, base.y)
    # Steep against gentle light: their quotient is bent, and bent otherwise than read off cells.
    object.__setattr__(option, "ppfd", 20 + 900 * x**2)
    object.__setattr__(base, "ppfd", 15 + 400 * y)
    found = against(option, base)
    for place in ((0.031, 0.012), (0.111, 0.287), (0.52, 0.49)):
        one, other = (float(e.at(*np.array(place)[:, None])[0]) for e in (option, base))
        assert found.at(*place) == pytest.approx((one - other, one / other), rel=1e-12)
    fine, ratio = found.raster(50, 60)
    # The dot of row 3 and column 7: x = 7.5 · 0.01 m, y = 3.5 · 0.01 m.
    assert (fine[3, 7], ratio[3, 7]) == pytest.approx(found.at(0.075, 0.035), rel=1e-5)


def test_against_what_does_not_reach_so_far_nothing_is_told() -> None:
    box = ((0.0, 0.0), (1.2, 0.0), (1.2, 0.9), (0.0, 0.9))
    base, option = sample_estimate(sample_plan(L_SHAPE)), sample_estimate(sample_plan(box))
    found = against(option, base)
    assert math.isnan(found.at(0.9, 0.7)[0])
    assert np.isfinite(found.at(0.3, 0.7)).all()
    assert np.isnan(found.raster(9, 12)[0][7, 9])


# -- telling apart ----------------------------------------------------------------------


def test_a_lamps_flux_does_not_blur_a_comparison_of_linings() -> None:
    """Two linings known exactly under one lamp of ±10 %: only the arithmetic is left."""
    plan = sample_plan(floor="open")
    plan = edits.line_all_walls(plan, film("One", 0.8))
    other = edits.line_all_walls(plan, film("Two", 0.7))
    found = compare(try_all(plan, linings=[film("Two", 0.7)]), OPTIONS)
    first, second = found.sides[0].estimate, found.sides[1].estimate
    assert first is not None
    assert second is not None
    one, two = sway(plan, first), sway(other, second)
    assert one is not None
    assert two is not None
    # 0.1/√3 of the level itself, and the centimetre of height.
    flux = one.curves[Input("photon flux", "panel", "", (0.1,))]
    assert flux.mean == pytest.approx((math.log(0.9), 0.0, math.log(1.1)))
    assert one.relative_mean > 0.055
    telling = Odds.of([(first, one), (second, two)]).telling(0, 1)
    assert telling.clear
    assert telling.high / telling.low < 1.03


def test_a_dark_plan_has_no_sway() -> None:
    assert sway(edits.change_lamp(sample_plan(), 0, output_percent=0)) is None


def test_photoperiod_changes_dli_only() -> None:
    plan = sample_plan()  # 14 h
    short_days = edits.changed(plan, photoperiod_hours=7)
    found = compare(add_variants(plan, ("Short", short_days)), OPTIONS)
    long, short = (s.estimate.figures for s in found.sides if s.estimate is not None)
    assert short.dli == pytest.approx(0.5 * long.dli)
    assert short.mean == pytest.approx(long.mean)


COSTS = Costs(
    price_per_kwh=0.30,
    currency="€",
    lamp_prices=(LampPrice(model="panel", price=120.0),),
    span_months=24,
)


def side(plan: Plan, name: str, **figures: Any) -> Side:
    made = dataclasses.replace(sample_estimate(plan, **figures), plan=plan)
    return Side(name, Origin.VARIANT, plan, ("one more lamp",), estimate=made, key=name)


def two_sides() -> tuple[Side, Side]:
    one = sample_plan()
    two = edits.add_lamp(one, one.lamps[0].model_copy(update={"x": 0.2}))
    return side(one, "one", mean=200.0), side(two, "=two", mean=444.0, dli=22.38)


def row() -> Option:
    one, two = two_sides()
    return option(two, one, bill(two.plan, one.plan, COSTS), COSTS)


def test_a_row_by_hand() -> None:
    """80 W at 14 h: 80·14/1000·30.4375 = 34.09 kWh a month, 10.227; 24 months and a lamp of 120:
    365.448. Payback at the same light 120/(0.30·1.689) = 236.8 months."""
    values = row().values
    assert values["watts"] == 80
    assert values["kwh"] == pytest.approx(34.09)
    assert values["money"] == pytest.approx(10.227)
    assert values["cost"] == 120
    assert values["total"] == pytest.approx(365.448)
    assert values["payback"] == pytest.approx(236.8, abs=0.1)
    assert values["of_base"] == pytest.approx(222)
    assert row().buy == "1 x Invented panel"
    assert COLUMN["total"].heading("€") == "Total (€)"
    assert COLUMN["money"].heading("€") == "Running (€/month)"
    # Power as on the strip of the sketch, and a month's energy told from a day's by its name.
    assert COLUMN["watts"].text(12.5) == FIGURE["watts"].number(12.5) == "12.5"
    # Of 34.09 kWh three figures hold, as of the energy of a day; whole numbers stand in full.
    assert COLUMN["kwh"].text(34.09) == FIGURE["kwh_per_day"].number(34.09) == "34.1"
    assert COLUMN["kwh"].text(1523.4) == "1523"
    assert COLUMN["kwh"].heading() == "Energy a month (kWh)"
    assert FIGURE["kwh_per_day"].heading() == "Energy a day (kWh)"


def test_what_is_still_reckoned_or_unknown_stays_open() -> None:
    one, two = two_sides()
    assert option(two, one, None, COSTS).values["total"] is None
    assert option(two, one, bill(two.plan, one.plan, Costs()), Costs()).values["cost"] is None
    assert option(one, one, bill(one.plan, one.plan, COSTS), COSTS).buy == "nothing"


def test_wishes_say_what_is_missed() -> None:
    assert (
        Wishes(dli_low=12, dli_high=30, min_over_mean=0.6, watts=80, total=400).missed(row()) == ()
    )
    missed = Wishes(dli_high=17.0, min_over_mean=0.7, watts=60.0, total=300.0).missed(row())
    assert missed == (
        "DLI 22.4 is over 17",
        "Min / mean 61 is under 70",
        "Power 80 is over 60",
        "Total 365.45 is over 300.00",
    )
    one, two = two_sides()
    unknown = option(two, one, None, COSTS)
    assert Wishes(total=1e6).missed(unknown) == ("Total is not known",)
    assert {wish.key for wish in WISHES} == {field.name for field in dataclasses.fields(Wishes)}
    assert not Wishes().any
    assert Wishes(watts=1).any


def test_light_against_cost_says_its_span_and_what_is_not_known() -> None:
    """A total is one of so many months; energy stands for it where fewer than two have one."""
    one, two = two_sides()
    own = option(one, one, bill(one.plan, one.plan, COSTS), COSTS)
    made = trade_off((own, row()), "min_over_mean", "total", COSTS)
    assert (made.light, made.cost, made.note) == ("Min / mean (%)", "Total (€), 24 months", "")
    # 40 W at 14 h: 17.045 kWh a month, 24 months at 0.30 a kWh: 122.724.
    assert [spot.cost for spot in made.spots] == [pytest.approx(122.724), pytest.approx(365.448)]
    unknown = option(two, one, None, COSTS)
    made = trade_off((own, unknown), "mean", "total", COSTS)
    assert made.cost == "Energy a month (kWh)"
    assert made.note == "Total is known of one option only; energy stands for it."
    assert len(made.spots) == 2
    made = trade_off((own, row(), unknown), "mean", "total", COSTS)
    assert made.note == "1 of 3 cannot be shown: a price is missing."
    assert len(made.spots) == 2
    free = Costs()
    dark = [option(s, one, bill(s.plan, one.plan, free), free) for s in (one, two)]
    made = trade_off(dark, "mean", "total", free)
    assert made.note == "Total is not known of any option; energy stands for it."


def test_the_unbeaten_by_trying_all_pairs() -> None:
    """Pareto's order by definition: none is at least as good in both and better in one."""
    rng = random.Random(4)
    for _ in range(50):
        points = [(rng.randint(0, 6), rng.randint(0, 6)) for _ in range(12)]
        brute = {
            k
            for k, (light, cost) in enumerate(points)
            if not any((a >= light and b <= cost) and (a > light or b < cost) for a, b in points)
        }
        assert set(unbeaten(points)) == brute
    assert unbeaten([]) == ()


def test_the_table_as_csv() -> None:
    text = options_to_csv([row()], COSTS)
    head, line = text.splitlines()
    assert head.startswith("Name,Differs in,Mean (µmol m⁻² s⁻¹),Of baseline (%)")
    assert head.count(",") == line.count(",")
    # A name a spreadsheet would take for a formula is made harmless.
    assert line.startswith("'=two,one more lamp,444,222,")
    # That of all canopies together stands only where there are several.
    assert [one.key for one in COLUMNS if one.heading("€") not in head] == ["inside_all"]
    assert options_to_csv([row()], COSTS, "\t").splitlines()[1].startswith("'=two\tone more lamp\t")


def test_a_lamp_that_is_newer_is_bought_and_one_that_is_older_is_there() -> None:
    """By hand: of three used lamps of one kind two are old enough to be the option's, one new."""
    plan = sample_plan()

    def run_for(*hours: float) -> Plan:
        lamps = tuple(
            plan.lamps[0].model_copy(update={"x": 0.1 * (k + 1), "hours_run": each})
            for k, each in enumerate(hours)
        )
        return plan.model_copy(update={"lamps": lamps})

    there = run_for(1000.0, 5000.0, 2000.0)
    assert bill(run_for(3000.0, 0.0, 6000.0), there, COSTS).lamps[0].count == 1
    assert not bill(run_for(6000.0, 5000.0, 2000.0), there, COSTS).lamps
    assert bill(run_for(0.0, 0.0, 0.0), there, COSTS).lamps[0].count == 3
    assert bill(run_for(4000.0), None, COSTS).lamps[0].count == 1
