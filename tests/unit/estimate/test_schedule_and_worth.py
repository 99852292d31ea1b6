"""Growth schedule and worth of a lining, with the sums written out."""

from __future__ import annotations

import dataclasses
from typing import Any

import pytest

from planner.catalogue.library import load_crops
from planner.estimate.evaluate import Cancelled
from planner.estimate.result import Estimate, EstimateOptions, Quality
from planner.estimate.schedule import schedule, stage_of_crop
from planner.estimate.worth import WorthError, worth
from planner.plan import edits
from planner.plan.costs import Costs, Goods
from planner.plan.lining import Lining
from planner.plan.plan import Plan
from planner.plan.target import GrowthStage, PpfdTarget
from tests.unit.reports.sample_estimate import sample_estimate, sample_plan

OPTIONS = EstimateOptions(cells=(8, 8), quality=Quality.PREVIEW)
FOIL = Lining(key="foil", name="Invented foil", reflectance=0.86, low=0.8, high=0.9)


def stage(name: str, canopy: float, hours: float = 16.0, weeks: float = 2.0) -> GrowthStage:
    return GrowthStage(
        name=name, canopy_height=canopy, target=PpfdTarget(low=60, high=80),
        photoperiod_hours=hours, weeks=weeks,
    )  # fmt: skip


def test_stages_one_after_another_with_their_sums() -> None:
    plan = sample_plan(
        schedule=(stage("Small", 0.1), stage("Tall", 0.5, hours=12, weeks=3)),
        costs=Costs(price_per_kwh=0.30),
    )
    found = schedule(plan, options=OPTIONS)
    small, tall = found.stages
    assert (small.first_week, small.last_week, tall.first_week, tall.last_week) == (0, 2, 2, 5)
    for answer, hours, weeks in ((small, 16, 2), (tall, 12, 3)):
        assert answer.met
        assert answer.estimate is not None
        assert answer.estimate.figures.mean == pytest.approx(70, rel=1e-3)
        # 40 W at full output; kWh = 40 W · output · hours · 7 days · weeks / 1000.
        assert answer.output_percent is not None
        kwh = 40 * answer.output_percent / 100 * hours * 7 * weeks / 1000
        assert answer.kwh == pytest.approx(kwh)
        assert answer.cost == pytest.approx(0.30 * kwh)
    assert found.weeks == 5
    assert found.kwh == pytest.approx(small.kwh + tall.kwh)
    assert found.cost == pytest.approx(0.30 * found.kwh)
    assert schedule(sample_plan(), [stage("Small", 0.1)], OPTIONS).cost is None


def test_warnings_where_the_lamp_cannot_rise_and_where_no_night_is_left() -> None:
    found = schedule(sample_plan(), [stage("Tall", 1.17, hours=22), stage("Long", 0.8)], OPTIONS)
    tall, long = found.stages
    assert tall.plan is None
    assert not tall.met
    assert any("only 2 dark hours" in warning for warning in tall.warnings)
    assert any("cannot rise far enough" in warning for warning in tall.warnings)
    assert "120 cm there are 3 cm" in tall.words
    # Under the ceiling at 1.2 m the lamp is 40 cm above this canopy at most.
    assert long.hanging_height == pytest.approx(0.4, abs=0.01)
    assert any("The ceiling leaves 40 cm" in warning for warning in long.warnings)
    assert not any("dark" in warning for warning in long.warnings)


def test_a_stage_of_the_crop_library() -> None:
    crop = next(crop for crop in load_crops().crops if crop.key == "lettuce")
    made = stage_of_crop(crop, crop.stages[0].key, 0.1, 3)
    assert made.name == f"Lettuce, {crop.stages[0].name}"
    assert made.target.low == crop.stages[0].target.low
    assert made.photoperiod_hours == crop.stages[0].hours_usual
    with pytest.raises(KeyError):
        stage_of_crop(crop, "nothing", 0.1, 3)


def test_cancelled_and_empty() -> None:
    assert schedule(sample_plan()).stages == ()
    with pytest.raises(Cancelled):
        schedule(sample_plan(), [stage("Small", 0.1)], cancelled=lambda: True)
    dark = schedule(sample_plan(lamps=()), [stage("Small", 0.1)], OPTIONS)
    assert "hang one first" in dark.stages[0].words


# -- worth ------------------------------------------------------------------------------


def estimate(plan: Plan, **figures: Any) -> Estimate:
    made = sample_estimate(plan, **figures)
    return dataclasses.replace(made, plan=plan)


def test_a_quarter_more_light() -> None:
    """Mean 250 against 200 at 40 W, 14 h a day, 0.30 per kWh, foil rolls of 6.00.

    The same light at 200/250 = 80 % output: 8 W less, 8·14/1000·30.4375 = 3.409 kWh and
    1.0227 a month. The stronger lamp would need 50 W: 10·14/1000·30.4375 = 4.261 kWh more.
    Walls 0.64 x 1.24 and 0.54 x 1.24 twice each on a roll 1.3 m wide: laid across, 2·0.64 + 2·0.54
    = 2.36 m of roll, and with the wide ones along it, 1.24 + 2·0.54 = 2.32; one roll of 5 m: 6.00,
    paid back in 6.00/1.0227 = 5.87 months.
    """
    base = sample_plan()
    lined = edits.line_all_walls(base, FOIL)
    costs = Costs(
        price_per_kwh=0.30, goods=(Goods(lining="foil", width=1.3, length=5.0, price=6.0),)
    )
    found = worth(
        estimate(lined, mean=250.0, watts=40.0), estimate(base, mean=200.0, watts=40.0), costs
    )
    assert found.more_light == pytest.approx(1.25)
    assert found.output_share == pytest.approx(0.8)
    assert found.kwh_saved == pytest.approx(3.409)
    assert found.money_saved == pytest.approx(1.0227)
    assert found.stronger_watts == pytest.approx(50)
    assert found.stronger_kwh == pytest.approx(4.26125)
    assert found.stronger_money == pytest.approx(1.278375)
    assert len(found.purchases) == 1
    bought = found.purchases[0]
    assert bought.cover.area == pytest.approx(2 * 0.6 * 1.2 + 2 * 0.5 * 1.2)
    # Laid along, two and two side by side (0.64 + 0.64 = 1.28 fits into 1.3), all of them take
    # 1.24 + 1.24 = 2.48 m; the narrow ones across are shorter.
    assert bought.cutting.used_length == pytest.approx(2.32)
    assert found.cost == 6.0
    assert found.payback == pytest.approx(5.867, abs=0.001)


def test_what_is_not_known_is_not_made_up() -> None:
    base = sample_plan()
    lined = edits.line_all_walls(base, FOIL)
    found = worth(estimate(lined, mean=250.0), estimate(base, mean=200.0), Costs())
    assert found.cost is None
    assert found.payback is None
    assert found.money_saved is None
    assert [cover.lining for cover in found.unknown] == ["foil"]
    # The floor's board is there already and is not bought again.
    assert all(cover.lining != "white-board" for cover in found.unknown)


def test_less_light_never_pays_back() -> None:
    base = sample_plan()
    goods = (Goods(lining="foil", width=1.3, length=5.0, price=6.0),)
    lined = estimate(edits.line_all_walls(base, FOIL), mean=150.0)
    found = worth(lined, estimate(base, mean=200.0), Costs(price_per_kwh=0.3, goods=goods))
    assert found.kwh_saved < 0
    assert found.payback is None
    with pytest.raises(WorthError, match="dark plan"):
        worth(estimate(base, mean=0.0), estimate(base, mean=200.0), Costs())
