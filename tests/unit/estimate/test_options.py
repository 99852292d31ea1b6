"""The options table: sums by hand, wishes in words, and the options nothing else beats."""

from __future__ import annotations

import dataclasses
import random
from typing import Any

import pytest

from planner.estimate.compare import Origin, Side
from planner.estimate.options import COLUMN, COLUMNS, Option, Wishes, option, unbeaten
from planner.estimate.worth import bill
from planner.plan import edits
from planner.plan.costs import Costs, LampPrice
from planner.plan.plan import Plan
from planner.reports.exports import options_to_csv
from tests.unit.reports.sample_estimate import sample_estimate, sample_plan

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
    assert not Wishes().any
    assert Wishes(watts=1).any


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
    assert len([one for one in COLUMNS if one.heading("€") in head]) == len(COLUMNS)
    assert options_to_csv([row()], COSTS, "\t").splitlines()[1].startswith("'=two\tone more lamp\t")
