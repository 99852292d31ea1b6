"""Growth schedule and worth of a lining, with the sums written out."""

from __future__ import annotations

import dataclasses
from typing import Any

import pytest

from planner.catalogue.library import load_crops
from planner.estimate.compare import PLAN_SIDE, Origin
from planner.estimate.evaluate import Cancelled
from planner.estimate.find_question import Aim
from planner.estimate.result import Estimate, EstimateOptions, Quality
from planner.estimate.schedule import schedule, schedules, stage_of_crop
from planner.estimate.stages import Schedule, StagePlan
from planner.estimate.worth import Bill, WorthError, bill, in_words, worth
from planner.plan import edits
from planner.plan.costs import Costs, Goods, LampPrice
from planner.plan.lining import Band, Lining, WallCover
from planner.plan.plan import Plan
from planner.plan.target import GrowthStage, PpfdTarget
from planner.plan.variant_edits import add_variants
from planner.units import LengthUnit, in_unit
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
        # Whole per cents of output, upwards: within 1 % of some 20 to 40 %.
        assert 70 <= answer.estimate.figures.mean <= 70 * 1.05
        # 40 W at full output; kWh = 40 W · output · hours · 7 days · weeks / 1000.
        assert answer.output_percent is not None
        kwh = 40 * answer.output_percent / 100 * hours * 7 * weeks / 1000
        assert answer.kwh == pytest.approx(kwh)
        assert answer.cost == pytest.approx(0.30 * kwh)
    assert found.weeks == 5
    assert found.kwh == pytest.approx(small.kwh + tall.kwh)
    assert found.cost == pytest.approx(0.30 * found.kwh)
    assert schedule(sample_plan(), [stage("Small", 0.1)], OPTIONS).cost is None


def test_the_aim_of_a_schedule() -> None:
    """Least energy hangs lower and gives just enough: 60 µmol/m²/s and not 70, fewer kWh."""
    even = schedule(sample_plan(), [stage("Small", 0.1)], OPTIONS)
    least = schedule(sample_plan(), [stage("Small", 0.1)], OPTIONS, aim=Aim.ENERGY)
    high, low = even.stages[0].estimate, least.stages[0].estimate
    assert high is not None
    assert low is not None
    assert high.figures.mean == pytest.approx(70, rel=0.03)
    assert 60 <= low.figures.mean <= 62
    assert least.kwh < 60 / 70 * even.kwh
    assert (high.figures.min_over_mean or 0) > (low.figures.min_over_mean or 0)


def test_every_option_over_the_same_stages() -> None:
    """Foil needs fewer kWh than white board for the same light; totals are sums of the stages."""
    plan = sample_plan(
        schedule=(stage("Small", 0.1), stage("Tall", 0.4)), costs=Costs(price_per_kwh=0.30)
    )
    plan = add_variants(plan, ("Foil", edits.line_all_walls(plan, FOIL)))
    own, foil = schedules(plan, OPTIONS, aim=Aim.ENERGY)
    assert (own.name, foil.name) == (plan.name, "Foil")
    assert own.identity == PLAN_SIDE
    assert foil.identity == (Origin.VARIANT, plan.variants[0].key)
    assert foil.kwh < own.kwh
    assert foil.cost == pytest.approx(0.30 * sum(one.kwh for one in foil.stages))
    assert own.met == 2
    # Stopped after the first, that one is handed on; before it, nothing is.
    told: list[float] = []
    part = schedules(
        plan, OPTIONS, aim=Aim.ENERGY, progress=told.append,
        cancelled=lambda: bool(told) and told[-1] > 0.6,
    )  # fmt: skip
    assert [one.name for one in part] == [plan.name]
    with pytest.raises(Cancelled):
        schedules(plan, OPTIONS, cancelled=lambda: True)


def test_week_by_week() -> None:
    """2.5 weeks and 2 weeks: lines at 0, 1, 2 and at 2.5, 3, 4; the stage begins on day 4.

    2.5 weeks end after day 3.5 of the third week: the second stage begins on its fourth day.
    """
    stages = [stage("Small", 0.1, weeks=2.5), stage("Tall", 0.4)]
    found = schedule(sample_plan(), stages, OPTIONS)
    weeks = found.by_week()
    assert [one.words for one in weeks] == [
        "Week 1", "Week 2", "Week 3", "Week 3, day 4", "Week 4", "Week 5",
    ]  # fmt: skip
    assert [one.weeks for one in weeks] == [1, 1, 0.5, 0.5, 1, 0.5]
    assert [one.turned for one in weeks] == [True, False, False, True, False, False]
    assert sum(one.kwh for one in weeks) == pytest.approx(found.kwh)
    assert weeks[2].kwh == pytest.approx(found.stages[0].kwh / 5)
    hung = found.stages[1].hanging_height
    assert hung is not None
    assert weeks[3].face == pytest.approx(0.4 + hung)


def test_warnings_where_the_lamp_cannot_rise_and_where_no_night_is_left() -> None:
    found = schedule(sample_plan(), [stage("Tall", 1.17, hours=22), stage("Long", 0.8)], OPTIONS)
    tall, long = found.stages
    assert tall.plan is None
    assert not tall.met
    assert any("only 2 dark hours" in warning for warning in tall.warnings)
    assert any("for the lamp to hang in" in warning for warning in tall.warnings)
    assert "there are 3 cm" in in_unit(tall.words, LengthUnit.CM)
    # Under the ceiling at 1.2 m the lamp is 40 cm above this canopy at most.
    assert long.hanging_height == pytest.approx(0.4, abs=0.01)
    said = [in_unit(warning, LengthUnit.CM) for warning in long.warnings]
    assert any("The ceiling leaves 40 cm above a canopy at 80 cm" in text for text in said)
    assert not any("dark" in warning for warning in long.warnings)


def test_a_mean_in_the_band_is_not_called_a_target_met_everywhere() -> None:
    """A band of 74 to 76 holds a mean of 75, and hardly any cell of an uneven light."""
    narrow = GrowthStage(
        name="Leaf", canopy_height=0.8, target=PpfdTarget(low=74, high=76),
        photoperiod_hours=14.0, weeks=1.0,
    )  # fmt: skip
    (leaf,) = schedule(sample_plan(), [narrow], OPTIONS).stages
    assert leaf.met
    assert leaf.estimate is not None
    ppfd, area = leaf.estimate.ppfd, leaf.estimate.cell_area
    share = float(area[(ppfd >= 74) & (ppfd <= 76)].sum() / area[ppfd > 0].sum())
    assert share < 0.5
    assert leaf.outcome == f"mean in the band, {100 * share:.1f} % of the canopy inside"
    hung = f"{100 * (leaf.hanging_height or 0):g} cm"
    said = [in_unit(text, LengthUnit.CM) for text in leaf.warnings]
    assert f"Leaf: {leaf.outcome}. At {hung} above the canopy the light is very uneven." in said
    # From 30 to 300 all of it lies inside: nothing to heed.
    wide = edits.changed(narrow, target=PpfdTarget(low=30, high=300), canopy_height=0.1)
    (small,) = schedule(sample_plan(), [wide], OPTIONS).stages
    assert not any("inside" in text for text in small.warnings)
    assert small.outcome == "mean in the band, 100 % of the canopy inside"


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
    night = schedule(sample_plan(), [stage("Night", 0.1, hours=0)], OPTIONS)
    assert "needs hours of light" in night.stages[0].words
    dark = schedule(sample_plan(lamps=()), [stage("Small", 0.1)], OPTIONS)
    assert "Hang one lamp first" in dark.stages[0].words


# -- worth ------------------------------------------------------------------------------

FOIL_ROLL = Goods(lining="foil", width=1.3, length=5.0, price=6.0)


def estimate(plan: Plan, **figures: Any) -> Estimate:
    made = sample_estimate(plan, **figures)
    return dataclasses.replace(made, plan=plan)


def test_a_quarter_more_light_of_the_same_lamp() -> None:
    """Mean 250 against 200 at 40 W, 14 h a day, 0.30 per kWh, foil rolls of 6.00.

    A month has 365.25/12 = 30.4375 days: 40 W take 40·14/1000·30.4375 = 17.045 kWh, 5.1135. The
    same light at 200/250 = 80 % output: 32 W, 8·14/1000·30.4375 = 3.409 kWh less, 1.0227 a month.
    Walls 0.64 x 1.24 and 0.54 x 1.24 twice each on a roll 1.3 m wide: one roll of 5 m, 6.00, paid
    back in 6.00/1.0227 = 5.87 months. A year as it stands: 6 + 12·5.1135 = 67.362.
    """
    base = sample_plan()
    lined = edits.line_all_walls(base, FOIL)
    costs = Costs(price_per_kwh=0.30, goods=(FOIL_ROLL,))
    bought = bill(lined, base, costs)
    found = worth(estimate(lined, mean=250.0), estimate(base, mean=200.0), bought, costs)
    assert found.more_light == pytest.approx(1.25)
    assert found.per_watt == pytest.approx(1.25)
    assert found.level.watts == pytest.approx(32)
    assert found.drawn.kwh == pytest.approx(17.045)
    assert found.kwh_saved == pytest.approx(3.409)
    assert found.money_saved == pytest.approx(1.0227)
    assert [one.cover.area for one in bought.purchases] == [
        pytest.approx(2 * 0.6 * 1.2 + 2 * 0.5 * 1.2)
    ]
    assert bought.purchases[0].cutting.rolls == 1
    assert bought.cost == 6.0
    assert found.payback == pytest.approx(5.867, abs=0.001)
    assert found.total == pytest.approx(67.362)
    assert found.base_total == pytest.approx(61.362)
    words = in_words("Foil", "White", found, costs)
    assert words.startswith("Foil gives 25 % more light a day than White and draws 40 W as well.")
    assert "Dimmed to 80 % for the same light it draws 32 W: 3.41 kWh a month less" in words


def test_a_second_lamp_is_bought_and_draws_twice_the_power() -> None:
    """Two lamps of 40 W give 2.22 times the light of one, 14 h a day, 0.30 per kWh, lamp 120.00.

    80 W draw 34.09 kWh a month, one lamp 17.045. For the same light the two run at 1/2.22 =
    45.05 %: 36.036 W, 1.689 kWh less than the one, 0.5067 a month; 120.00/0.5067 = 236.8
    months. For the same energy they give 2.22/2 = 1.11 times the light.
    """
    one = sample_plan()
    two = edits.add_lamp(one, one.lamps[0].model_copy(update={"x": 0.2}))
    costs = Costs(price_per_kwh=0.30, lamp_prices=(LampPrice(model="panel", price=120.0),))
    bought = bill(two, one, costs)
    assert [(lamp.name, lamp.count, lamp.price) for lamp in bought.lamps] == [
        ("Invented panel", 1, 120.0)
    ]
    assert bought.cost == 120.0
    found = worth(estimate(two, mean=444.0), estimate(one, mean=200.0), bought, costs)
    assert found.drawn.watts == 80
    assert found.drawn.kwh == pytest.approx(34.09)
    assert found.per_watt == pytest.approx(1.11)
    assert found.kwh_saved == pytest.approx(1.689, abs=0.001)
    assert found.payback == pytest.approx(236.8, abs=0.1)
    assert found.total == pytest.approx(120 + 12 * 34.09 * 0.30)
    words = in_words("Two", "One", found, costs)
    assert "draws 80 W instead of 40 W: 11 % more light for the same energy" in words
    assert "1.69 kWh a month less" in words
    assert "Nothing" not in words
    # A lamp that hangs there already, wherever, is not bought again; all of it is two.
    assert bill(one, two, costs).empty
    assert [lamp.count for lamp in bill(two, None, costs).lamps] == [2]


def test_an_output_the_lamps_do_not_give_is_not_reckoned_with() -> None:
    """A quarter of the light asks for 4 times the output: beyond 100 %, but not of 20 %.

    Where it can, 4 times 8 W are drawn, 32 W, and the baseline draws 40.
    """
    base, costs = sample_plan(), Costs(price_per_kwh=0.30, goods=(FOIL_ROLL,))
    full = edits.line_all_walls(base, FOIL)
    hungry = edits.changed(base.lamps[0].model, watts=400)
    bright = estimate(edits.change_lamp(base, 0, model=hungry), mean=200.0)
    bought = bill(full, base, costs)
    found = worth(estimate(full, mean=50.0), bright, bought, costs)
    assert not found.in_reach
    # 4 x 40 W are fewer than the 400 W of the baseline, but nobody gets them out of the lamp.
    assert found.money_saved is not None
    assert found.money_saved > 0
    assert found.payback is None
    words = in_words("Foil", "White", found, costs)
    assert "Its lamps do not give the same light, not even at full output." in words
    assert "400 %" not in words
    assert "costs 6.00; without the same light that is never paid back." in words
    dimmed = edits.change_lamp(full, 0, output_percent=20.0)
    found = worth(estimate(dimmed, mean=50.0), estimate(base, mean=200.0), bought, costs)
    assert found.in_reach
    words = in_words("Foil", "White", found, costs)
    assert "For the same light it needs 400 % of its present output, 32 W: " in words


def test_longer_days_are_brought_to_the_same_light_of_a_day() -> None:
    """16 h of 200 against 14 h of 200: 8/7 of the light a day for 8/7 of the energy."""
    base = sample_plan()
    longer = edits.changed(base, photoperiod_hours=16.0)
    costs = Costs(price_per_kwh=0.30)
    found = worth(
        estimate(longer, mean=200.0), estimate(base, mean=200.0), bill(longer, base, costs), costs
    )
    assert found.more_light == pytest.approx(8 / 7)
    assert found.per_watt == pytest.approx(1.0)
    assert found.kwh_saved == pytest.approx(0.0, abs=1e-9)
    assert found.drawn.kwh == pytest.approx(40 * 16 / 1000 * 30.4375)


def test_what_is_not_known_is_not_made_up() -> None:
    base = sample_plan()
    lined = edits.line_all_walls(base, FOIL)
    bought = bill(lined, base, Costs())
    found = worth(estimate(lined, mean=250.0), estimate(base, mean=200.0), bought, Costs())
    assert bought.cost is None
    assert (found.payback, found.money_saved, found.total) == (None, None, None)
    # The floor's board is there already and is not bought again; all of it would have it.
    assert [cover.lining for cover in bought.unknown] == ["foil"]
    assert {cover.lining for cover in bill(lined, None, Costs()).unknown} == {"foil", "white-board"}
    words = in_words("Foil", "White", found, Costs())
    assert "Say how its linings are sold to see what it costs." in words
    hung = bill(base, sample_plan(lamps=()), Costs())
    assert hung.cost is None
    assert "how Invented panel is priced" in in_words(
        "One", "None", worth(estimate(base), estimate(base), hung, Costs()), Costs()
    )


def test_what_hangs_is_not_bought_again_for_another_band_beside_it() -> None:
    """Foil above 0.7 m of wall 2; the board below it is then cut at 0.3 m, so foil is band 3."""
    low, top = Band(lining="white-board", top=0.7), Band(lining="foil")
    base = edits.set_wall_cover(sample_plan(), 1, WallCover(bands=(low, top)), FOIL)
    lowest = Band(lining="white-board", top=0.3)
    three = edits.set_wall_cover(base, 1, WallCover(bands=(lowest, low, top)))
    (board,) = bill(three, base, Costs()).unknown
    assert [piece.label for piece in board.pieces] == ["Wall 2, band 1", "Wall 2, band 2"]
    assert board.area == pytest.approx(0.5 * 0.3 + 0.5 * 0.4)


def test_less_light_never_pays_back() -> None:
    base = sample_plan()
    lined = edits.line_all_walls(base, FOIL)
    costs = Costs(price_per_kwh=0.3, goods=(FOIL_ROLL,))
    dim = estimate(lined, mean=150.0)
    found = worth(dim, estimate(base, mean=200.0), bill(lined, base, costs), costs)
    assert found.kwh_saved < 0
    assert found.payback is None
    assert "never paid back" in in_words("Foil", "White", found, costs)
    # Nothing bought, nothing saved: that is no payback at once.
    assert worth(dim, estimate(base, mean=200.0), Bill(), costs).payback is None
    with pytest.raises(WorthError, match="dark plan"):
        worth(estimate(base, mean=0.0), estimate(base, mean=200.0), Bill(), costs)


def answered(first: float, last: float, canopy: float, height: float, output: float) -> StagePlan:
    """A stage whose plan is written by hand: nothing is computed."""
    plan = edits.set_canopy_height(sample_plan(), canopy)
    (lamp,) = plan.lamps
    hung = lamp.model_copy(update={"hanging_height": height, "output_percent": output})
    made = edits.changed(plan, lamps=(hung,), photoperiod_hours=16 - last)
    return StagePlan(
        stage(f"to {last:g}", canopy, weeks=last - first), first, last, made, None, height, output,
        1.0, None, True, "", (),
    )  # fmt: skip


def test_between_the_middles_of_two_stages_it_grows_evenly() -> None:
    found = Schedule((answered(0, 2, 0.1, 0.3, 40), answered(2, 6, 0.4, 0.2, 80)))
    # Middles at weeks 1 and 4: at week 2 a third of the way, at week 3 two thirds.
    for week, canopy, height, output, hours in (
        (0.0, 0.1, 0.3, 40, 14), (1.0, 0.1, 0.3, 40, 14), (1.9, 0.19, 0.27, 52, 14),
        (2.0, 0.2, 0.267, 53.3, 10), (3.0, 0.3, 0.233, 66.7, 10), (5.0, 0.4, 0.2, 80, 10),
        (7.0, 0.4, 0.2, 80, 10),
    ):  # fmt: skip
        plan = found.at(week)
        assert plan is not None
        (lamp,) = plan.lamps
        assert plan.canopy.height == pytest.approx(canopy, abs=1e-3)
        assert lamp.hanging_height == pytest.approx(height, abs=1e-3)
        assert lamp.output_percent == pytest.approx(output, abs=0.06)
        assert plan.photoperiod_hours == hours


def test_a_stage_that_cannot_be_set_up_has_no_plan_at_its_weeks() -> None:
    none = dataclasses.replace(answered(2, 4, 0.4, 0.2, 80), plan=None)
    found = Schedule((answered(0, 2, 0.1, 0.3, 40), none))
    assert found.at(3.0) is None
    assert found.at(1.5) is not None
    assert Schedule(()).at(0.0) is None


def test_a_stage_under_lamps_without_a_dimmer_burns_them_full() -> None:
    """60 to 80 µmol m⁻² s⁻¹ are far under what 100 µmol/s give on 0.3 m²: only height is left."""
    plan = sample_plan(schedule=(stage("Small", 0.1),))
    (dimmed,) = schedule(plan, options=OPTIONS).stages
    assert dimmed.output_percent is not None
    assert dimmed.output_percent < 100
    model = edits.changed(plan.lamps[0].model, dimmable=False)
    (full,) = schedule(edits.change_lamp(plan, 0, model=model), options=OPTIONS).stages
    assert full.output_percent == 100
