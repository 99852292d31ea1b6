"""Searches, sweeps and options know the canopies beside the one judged.

By the demo plans: trays of two heights under one lamp, 5 and 12 cm over the plan's own canopy, all
with the band of 12 to 17 mol m⁻² d⁻¹; and a rack whose tiers have lamps of their own.
"""

from __future__ import annotations

import csv
import io
from functools import cache

import pytest

from planner.estimate.canopies import beside, missed_by, out_of_band, standings
from planner.estimate.compare import Origin, Side, Wishes, columns_of, option
from planner.estimate.evaluate import evaluate
from planner.estimate.find import Answers, find
from planner.estimate.find_question import Aim, Question, wished_band
from planner.estimate.result import Estimate, EstimateOptions, Quality
from planner.estimate.sweep import Over, sweep
from planner.estimate.ways import WayKind, ways
from planner.estimate.worth import Bill
from planner.files.store import load_plan
from planner.folders import resource_path
from planner.plan.edits import change_carried, change_lamp, changed, judge_by
from planner.plan.place import OWN, Place, PlaceKind
from planner.plan.plan import Plan
from planner.plan.space import CarriedCanopy
from planner.plan.target import PpfdTarget
from planner.plan.tiers import sharing
from planner.reports.exports import options_to_csv, sweep_to_csv

QUICK = EstimateOptions(cells=(12, 12), quality=Quality.PREVIEW)
LOW_TRAY, HIGH_TRAY = Place(PlaceKind.TOP, 0), Place(PlaceKind.TOP, 1)
OVER = "Tray, 12 cm up over its band"


def demo(name: str) -> Plan:
    return load_plan(resource_path(f"demo/{name}.plan.json"))


def lower(plan: Plan, height: float) -> Plan:
    return changed(plan, space=plan.space.model_copy(update={"height": height}))


def asked(plan: Plan, aim: Aim = Aim.EVEN) -> Answers:
    band = wished_band(plan)
    assert band is not None
    wishes = Wishes(dli_low=band[0], dli_high=band[1])
    return find(plan, Question(aim, wishes=wishes), QUICK)


@cache
def found(height: float) -> Answers:
    return asked(lower(demo("trays"), height))


def dlis(estimate: Estimate) -> list[float]:
    """Of each canopy, from its cells and areas."""
    means = [
        float((one.ppfd * one.cell_area)[one.inside].sum() / one.cell_area[one.inside].sum())
        for one in estimate.canopies
    ]
    return [mean * estimate.plan.photoperiod_hours * 3600 / 1e6 for mean in means]


def test_canopies_of_one_light_are_those_of_one_storey() -> None:
    trays, rack = demo("trays"), demo("rack")
    assert sharing(trays) == (OWN, LOW_TRAY, HIGH_TRAY)
    assert sharing(judge_by(trays, 1)) == (OWN, LOW_TRAY, HIGH_TRAY)
    assert sharing(rack) == (OWN,)
    assert sharing(judge_by(rack, 1)) == (Place(PlaceKind.TOP, 1),)


def test_how_far_a_band_is_missed() -> None:
    assert missed_by(75.0, (100.0, 200.0)) == pytest.approx(0.25)
    assert missed_by(250.0, (100.0, 200.0)) == pytest.approx(0.25)
    assert [missed_by(one, (100.0, 200.0)) for one in (100.0, 150.0, 200.0)] == [0.0, 0.0, 0.0]


def test_an_answer_suits_every_canopy_where_one_can() -> None:
    for one in found(1.6).all:
        assert all(12 * 0.999 <= dli <= 17 * 1.001 for dli in dlis(one.estimate))
        assert one.missed == ()
        assert "band" not in one.words


def test_where_none_can_the_canopy_that_is_missed_is_named() -> None:
    answers = found(0.9)
    best = answers.best
    gap, *trays = dlis(best.estimate)
    assert gap == pytest.approx(12.0, rel=0.01)  # what is wished of the canopy judged is kept
    assert trays[1] > 17.1
    named = ("Tray, 5 cm up over its band", OVER)
    out = "; ".join(name for name, dli in zip(named, trays, strict=True) if dli > 17.017)
    assert answers.met
    assert best.missed == (out,)
    assert f"But {out}: nothing tried" in answers.words
    assert best.words.endswith(f" {out}.")
    assert best.option.beyond == out


def test_judged_by_a_tray_what_lies_between_asks_for_no_more_light() -> None:
    answers = asked(judge_by(demo("trays"), 1), Aim.ENERGY)
    gap, low, high = dlis(answers.best.estimate)
    assert low == pytest.approx(12.0, rel=0.03)
    assert low < high < 17.0
    assert gap < 11.0
    assert answers.best.option.beyond == "the plan's own canopy under its band"


def test_a_way_to_a_level_says_which_canopies_it_takes_out_of_their_bands() -> None:
    dim = ways(demo("trays"), 208.0, (), QUICK)[0]
    assert dim.kind is WayKind.OUTPUT
    assert dim.words.endswith(f" Tray, 5 cm up over its band; {OVER}.")


def test_points_of_a_sweep_tell_of_all_canopies() -> None:
    plan = demo("trays")
    swept = sweep(plan, [Over("output", (40.0, 50.0))], QUICK, workers=0)
    light = [evaluate(dimmed(plan, output), QUICK) for output in (40.0, 50.0)]
    for number, one in enumerate(light):
        over_all = sum(
            float(((lit.ppfd >= 12 / 0.0576) & (lit.ppfd <= 17 / 0.0576)).astype(float)[lit.inside]
                  @ lit.cell_area[lit.inside])
            for lit in one.canopies
        ) / sum(float(lit.cell_area[lit.inside].sum()) for lit in one.canopies)  # fmt: skip
        together = swept.points[number].overall
        assert together is not None
        assert together.share_inside == pytest.approx(over_all)
    assert swept.beyond(0) == ""
    assert swept.beyond(1) == f"Tray, 5 cm up over its band; {OVER}"
    first, second = csv.DictReader(io.StringIO(sweep_to_csv(swept)))
    assert first["out_of_band"] == ""
    assert second["out_of_band"] == swept.beyond(1)
    together = swept.points[1].overall
    assert together is not None
    assert float(second["all_share_inside"]) == pytest.approx(together.share_inside)
    assert "all_share_inside" not in sweep_to_csv(sweep(demo("shelf"), [Over("output", (50.0,))]))


def dimmed(plan: Plan, output: float, *lamps: int) -> Plan:
    for k in lamps or range(len(plan.lamps)):
        plan = change_lamp(plan, k, output_percent=output)
    return plan


def strict_rack() -> Plan:
    """The rack with a band on its upper tier that its lamps do not reach."""
    return change_carried(demo("rack"), 1, target=PpfdTarget(low=400.0, high=500.0))


def test_a_tier_that_is_left_alone_is_not_told_of() -> None:
    rack = strict_rack()
    base, own = evaluate(rack, QUICK), evaluate(dimmed(rack, 80.0, 0, 1), QUICK)
    upper = evaluate(dimmed(rack, 80.0, 4, 5), QUICK)
    out = "Upper tier under its band"
    assert out_of_band(rack, standings(base)) == out
    assert beside(own, base, rack) == ""
    assert beside(upper, base, rack) == out
    lamp = Place(PlaceKind.LAMP, 0)
    alone = sweep(rack, [Over("output", (60.0, 90.0), lamp)], QUICK, workers=0)
    assert alone.beyond(0) == alone.beyond(1) == ""
    every = sweep(rack, [Over("output", (90.0, 100.0))], QUICK, workers=0)
    assert out in every.beyond(0)


def test_a_row_of_options_says_who_is_out_and_how_much_is_inside_in_all() -> None:
    plan = demo("trays")
    base = Side(plan.name, Origin.PLAN, plan, estimate=evaluate(plan, QUICK))
    bright = dimmed(plan, 60.0)
    side = Side("Bright", Origin.VARIANT, bright, estimate=evaluate(bright, QUICK), key="a")
    one = option(side, base, Bill(), plan.costs)
    assert one.beyond == f"Tray, 5 cm up over its band; {OVER}"
    assert side.estimate is not None
    assert one.values["inside_all"] == side.estimate.overall.share_inside
    (told,) = csv.DictReader(io.StringIO(options_to_csv([one], plan.costs)))
    assert told["Out of their bands"] == one.beyond
    share = side.estimate.overall.share_inside
    assert share is not None
    assert float(told["All canopies inside (%)"]) == pytest.approx(100 * share, rel=1e-6)
    assert "inside_all" in {column.key for column in columns_of([one])}


def test_a_plan_of_one_canopy_is_told_nothing_of_others() -> None:
    plan = demo("shelf")
    side = Side(plan.name, Origin.PLAN, plan, estimate=evaluate(plan, QUICK))
    one = option(side, side, Bill(), plan.costs)
    assert one.beyond == ""
    assert "inside_all" not in {column.key for column in columns_of([one])}


def test_two_trays_of_one_name_are_told_apart() -> None:
    plan = demo("trays")
    first, second = plan.obstacles
    alike = changed(plan, obstacles=(first, second.model_copy(update={"name": first.name})))
    told = out_of_band(alike, standings(evaluate(dimmed(alike, 90.0), QUICK)))
    assert "Tray, 5 cm up (obstacle 1) over its band" in told
    assert "Tray, 5 cm up (obstacle 2) over its band" in told


def test_a_carried_canopy_without_a_band_is_no_matter() -> None:
    plan = changed(demo("trays"), target=None)
    assert standings(evaluate(plan, QUICK)) == ()
    assert all(isinstance(one.canopy, CarriedCanopy) for one in plan.obstacles)


def test_what_lamps_take_is_told_of_all_canopies_they_light() -> None:
    """Six lamps of 30 W over 0.36 and twice 0.3024 m²: by one canopy it was 500 W m⁻²."""
    rack = demo("rack")
    for by in (None, 1):
        found = evaluate(judge_by(rack, by), QUICK)
        area = 0.36 + 2 * 0.3024
        assert found.figures.watts_per_m2 == pytest.approx(rack.watts / area)
        arriving = sum(one.figures.mean * one.figures.canopy_area for one in found.canopies)
        for one in (*found.canopies, found):
            assert one.figures.utilisation == pytest.approx(arriving / rack.ppf)
            assert one.figures.watts_per_m2 == found.figures.watts_per_m2
