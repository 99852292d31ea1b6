"""Searches, sweeps, odds and schedules of a plan judged by the canopy on a tray.

A point lamp in a black room: E = I0 cos² θ / d² with I0 = Φ/π for a cosine beam (photometric
distance law, CIE S 017 term 17-25-104), so a lamp h over a level gives Φ/π h² / d⁴ there. Means
over the tray are sums over 200 x 200 points of their own.
"""

from __future__ import annotations

import math

import numpy as np
import pytest

from planner.estimate.compare import Wishes
from planner.estimate.evaluate import evaluate
from planner.estimate.find import Limit, find
from planner.estimate.find_question import Aim, FindError, Question, Turn, height_range
from planner.estimate.ladder import ladder, rungs_between
from planner.estimate.odds import Odds, sway
from planner.estimate.result import EstimateOptions, Quality
from planner.estimate.schedule import at_stage, schedule
from planner.estimate.stages import Schedule
from planner.estimate.sweep import sweep
from planner.estimate.sweep_points import Over
from planner.estimate.ways import ways
from planner.metrics.figures import ppfd
from planner.plan.dials import dial
from planner.plan.edits import change_lamp, judge_by
from planner.plan.groups import raised
from planner.plan.lit import depends, ungrown
from planner.plan.place import Place, PlaceKind
from planner.plan.plan import Plan
from planner.plan.space import CarriedCanopy
from planner.plan.target import GrowthStage, PpfdTarget
from planner.plan.tiers import hangs
from planner.units import LengthUnit
from tests.physics.rooms import box, lamp, plan
from tests.physics.test_tops import on, tray

QUICK = EstimateOptions(cells=(20, 20), quality=Quality.PREVIEW)
LEVEL, TOP, SIDE = 0.2, 0.5, 0.2
AT = (0.5, 0.5)


def room(*, hung: float = 0.9, flux: float = 100.0, at: tuple[float, float] = AT) -> Plan:
    """A black room of 1 m, its canopy at 20 cm, a tray of 20 cm at 50 cm, judged by the tray."""
    source = lamp(at, hung, ppf=flux)
    what = plan(box(1.0, 1.0), 2.0, [source], canopy_height=LEVEL)
    what = what.model_copy(update={"target": PpfdTarget(low=20.0, high=60.0)})
    carried = CarriedCanopy(reflectance=0.0, target=PpfdTarget(low=50.0, high=90.0))
    return judge_by(on(what, tray(AT, (SIDE, SIDE), (0.3, TOP), canopy=carried)), 0)


def reckoned(
    over: float, flux: float = 100.0, at: tuple[float, float] = AT, side: float = SIDE
) -> float:
    """Mean PPFD on the tray under a point lamp so far over its top."""
    ends = (np.arange(200) + 0.5) / 200 - 0.5
    x, y = np.meshgrid(AT[0] + side * ends, AT[1] + side * ends)
    squared = (x - at[0]) ** 2 + (y - at[1]) ** 2 + over**2
    return float((flux / math.pi * over**2 / squared**2).mean())


def dli(light: float, hours: float) -> float:
    return light * hours * 3600 / 1e6


def test_the_least_output_is_the_one_that_lights_the_tray() -> None:
    what = room()
    full = reckoned(LEVEL + 0.9 - TOP)
    wish = dli(40.0, what.photoperiod_hours)
    asked = Question(Aim.ENERGY, frozenset({Turn.OUTPUT}), Wishes(dli_low=wish))
    found = find(what, asked, QUICK)
    # Whole per cents, upwards.
    assert found.best.plan.lamps[0].output_percent == math.ceil(100 * 40.0 / full)
    assert found.best.estimate.place == Place(PlaceKind.TOP, 0)
    assert found.met


def test_the_lowest_height_ends_over_the_tray_and_says_why() -> None:
    what = room()
    wish = dli(100.0, what.photoperiod_hours)
    asked = Question(Aim.ENERGY, frozenset({Turn.HEIGHT, Turn.OUTPUT}), Wishes(dli_low=wish))
    found = find(what, asked, QUICK)
    # 5 cm over the top of the tray, which lies 30 cm over the plan's own canopy.
    assert found.best.plan.lamps[0].hanging_height == pytest.approx(0.35)
    output = 100 * 100.0 / reckoned(0.05)
    assert found.best.plan.lamps[0].output_percent == pytest.approx(math.ceil(output), abs=1)
    assert found.limit is Limit.CANOPY
    assert "Hang the lamp 5\xa0cm above the canopy on obstacle 1 ('Tray') at" in found.best.words


def test_lamps_keep_to_their_side_of_a_canopy_on_an_obstacle() -> None:
    over = dial("height").sound_in(room())
    assert over.minimum == pytest.approx(0.05)
    assert over.maximum == pytest.approx(2.0 - TOP)
    under = room(hung=0.05)  # at 25 cm, the tray begins at 30
    assert dial("height").sound_in(under).maximum == pytest.approx(0.1)
    beside = room(at=(0.1, 0.1))
    assert dial("height").sound_in(beside).minimum == pytest.approx(0.05)
    heights = rungs_between(room(), (0,), LengthUnit.CM)
    assert min(heights) == pytest.approx(0.05)


def rack(*, over: float = 100.0, under: float = 100.0) -> Plan:
    """A lamp over the tray and one under it, beside its middle: the tray is a tier then."""
    what = room()
    lower = room(hung=0.05).lamps[0].model_copy(update={"output_percent": under})
    upper = what.lamps[0].model_copy(update={"output_percent": over})
    return what.model_copy(update={"lamps": (lower, upper)})


def test_of_a_rack_the_lamps_of_the_tier_judged_are_set() -> None:
    both = rack()
    assert [hangs(both, one) for one in both.lamps] == pytest.approx([0.05, LEVEL + 0.9 - TOP])
    assert height_range(both) == pytest.approx((0.05, 2.0 - TOP))
    assert height_range(judge_by(both, None)) == pytest.approx((0.05, 0.1))
    for wanted in (40.0, 80.0):
        dim, height, _ = ways(both, wanted, options=QUICK)
        assert dim.plan is not None
        assert height.plan is not None
        for made in (dim.plan, height.plan):
            assert made.lamps[0] == both.lamps[0], "the lamp under the tier stays"
        # Nothing else brings light up there: the room is black.
        share = dim.plan.lamps[1].output_percent / 100
        assert share * reckoned(LEVEL + 0.9 - TOP) == pytest.approx(wanted, rel=0.02)
        assert reckoned(hangs(height.plan, height.plan.lamps[1])) == pytest.approx(wanted, rel=0.03)
        assert height.reached


def test_a_search_of_a_tier_leaves_the_other_its_light() -> None:
    both = rack(under=40.0)
    wish = dli(100.0, both.photoperiod_hours)
    asked = Question(Aim.ENERGY, frozenset({Turn.HEIGHT, Turn.OUTPUT}), Wishes(dli_low=wish))
    best = find(both, asked, QUICK).best
    assert best.plan.lamps[0] == both.lamps[0]
    up = best.plan.lamps[1]
    assert hangs(best.plan, up) == pytest.approx(0.05)
    assert up.output_percent == pytest.approx(100 * 100.0 / reckoned(0.05), abs=1)
    assert "5\xa0cm above the canopy on obstacle 1 ('Tray')" in best.words
    assert "all other lamps as they are" in best.words


def test_a_tier_with_no_lamp_over_it_is_refused() -> None:
    under = room(hung=0.05)
    with pytest.raises(FindError, match="No lamp that is lit hangs over the canopy on obstacle 1"):
        ways(under, 40.0, options=QUICK)


def test_the_ladder_of_a_lamp_tells_of_the_canopy_it_lights() -> None:
    both = judge_by(rack(), None)
    found = ladder(both, (1,), (0.3, 0.6), QUICK)
    assert found.canopy == Place(PlaceKind.TOP, 0)
    for rung in found.rungs:
        assert rung.mean == pytest.approx(reckoned(rung.height), rel=0.01)
    assert found.wanted(both) == (50.0, 90.0)


def test_a_sweep_of_all_lamps_hangs_each_over_its_own_canopy() -> None:
    (point,) = sweep(rack(), [Over("height", values=(0.07,))], QUICK, workers=0).in_order()
    assert point.figures is not None
    assert point.figures.mean == pytest.approx(reckoned(0.07), rel=0.01)


def test_a_hand_carries_a_lamp_past_a_tier() -> None:
    both = rack()
    after, stopped = raised(both, (Place(PlaceKind.LAMP, 1),), -0.8)
    assert not stopped
    assert after.lamps[1].hanging_height == pytest.approx(0.1)
    assert hangs(after, after.lamps[1]) == pytest.approx(0.1)


def test_when_the_lowest_canopy_of_a_rack_grows_the_tier_above_stays() -> None:
    both = judge_by(rack(), None)
    low, high = (stage("Low", 0.1), stage("High", 0.24))
    for one, level in ((low, 0.1), (high, 0.24)):
        there = at_stage(both, one)
        assert there.lamp_height(there.lamps[1]) == pytest.approx(LEVEL + 0.9)
        assert level < there.lamp_height(there.lamps[0]) <= 0.3
    assert depends(at_stage(both, low), ungrown) == depends(both, ungrown)


def test_the_ladder_and_a_sweep_of_height_tell_of_the_tray() -> None:
    what, heights = room(), (0.5, 0.8, 1.2)
    rungs = ladder(what, (0,), heights, QUICK).rungs
    points = sweep(what, [Over("height", values=heights)], QUICK, workers=0)
    for rung, point, height in zip(rungs, points.in_order(), heights, strict=True):
        expected = reckoned(height)
        assert rung.mean == pytest.approx(expected, rel=0.01)
        assert point.figures is not None
        assert point.figures.mean == pytest.approx(expected, rel=0.01)


def test_raising_the_plans_own_canopy_leaves_the_tray_its_light() -> None:
    # Lamps stay where they hang, and in a black room nothing else brings light to the tray.
    points = sweep(room(), [Over("canopy", values=(0.0, 0.1, 0.25))], QUICK, workers=0)
    for point in points.in_order():
        assert point.figures is not None
        assert point.figures.mean == pytest.approx(reckoned(LEVEL + 0.9 - TOP), rel=0.01)


def test_ways_to_a_level_are_ways_to_it_on_the_tray() -> None:
    full = reckoned(LEVEL + 0.9 - TOP)
    dim, height, _ = ways(room(), full / 2, options=QUICK)
    assert dim.plan is not None
    assert dim.plan.lamps[0].output_percent == pytest.approx(50, abs=1)
    assert height.plan is not None
    over = LEVEL + height.plan.lamps[0].hanging_height - TOP
    assert reckoned(over) == pytest.approx(full / 2, rel=0.02)


def uncertain(flux: float, at: tuple[float, float], spread: float) -> Plan:
    what = room(flux=flux, at=at)
    model = what.lamps[0].model.model_copy(
        update={"key": f"of-{flux:g}", "ppf_uncertainty": spread}
    )
    return change_lamp(what, 0, model=model)


def test_the_odds_are_those_of_light_on_the_tray() -> None:
    """The lamp over the tray against one aside that gives more on the whole but less there."""
    aside = (0.25, 0.5)
    here, there = uncertain(100.0, AT, 0.2), uncertain(150.0, aside, 0.1)
    known = []
    for one in (here, there):
        estimate = evaluate(one, QUICK)
        swayed = sway(one, estimate)
        assert swayed is not None
        known.append((estimate, swayed))
    own = [one.own.figures.mean for one, _ in known]
    assert own[1] > own[0], "by the plan's own canopy the other one would win"
    found = Odds.of(known).telling(0, 1)
    # Half-widths, evenly likely inside: flux as stated, hanging heights 1 cm.
    rng = np.random.default_rng(7)
    drawn = []
    for flux, at, spread in ((100.0, AT, 0.2), (150.0, aside, 0.1)):
        heights = np.linspace(-0.01, 0.01, 9)
        means = [reckoned(LEVEL + 0.9 - TOP + by, flux, at) for by in heights]
        by = rng.uniform(-0.01, 0.01, 100_000)
        drawn.append(np.interp(by, heights, means) * (1 + spread * rng.uniform(-1, 1, 100_000)))
    ratio = drawn[0] / drawn[1]
    assert found.ratio == pytest.approx(np.median(ratio), rel=0.01)
    assert found.low == pytest.approx(np.percentile(ratio, 2.5), rel=0.02)
    assert found.high == pytest.approx(np.percentile(ratio, 97.5), rel=0.02)
    assert found.chance == pytest.approx((ratio > 1).mean(), abs=0.02)


# -- the schedule ------------------------------------------------------------------------


def stage(name: str, height: float) -> GrowthStage:
    target = PpfdTarget(low=30.0, high=50.0)
    return GrowthStage(name=name, canopy_height=height, target=target, weeks=2.0)


def scheduled(*heights: float) -> Schedule:
    stages = tuple(stage(f"Stage {k}", one) for k, one in enumerate(heights))
    return schedule(room(), stages, QUICK)


def test_the_tray_grows_and_the_plans_own_canopy_stays() -> None:
    found = scheduled(0.4, 0.8)
    for one, height in zip(found.stages, (0.4, 0.8), strict=True):
        assert one.plan is not None
        assert one.estimate is not None
        assert one.hanging_height is not None
        assert one.output_percent is not None
        assert one.plan.canopy.height == LEVEL
        assert one.plan.obstacles[0].top == pytest.approx(height)
        assert one.plan.obstacles[0].underside == pytest.approx(0.3)
        assert one.plan.target == room().target
        # Told over what grows, and the light there is that of the closed form.
        face = LEVEL + one.plan.lamps[0].hanging_height
        assert one.hanging_height == pytest.approx(face - height)
        expected = reckoned(face - height) * one.output_percent / 100
        assert one.estimate.figures.mean == pytest.approx(expected, rel=0.01)
        assert 30 <= expected <= 50
        assert one.met
        own = one.estimate.own.figures
        assert f"Canopy: Mean {ppfd(own.mean)} " in one.words
        assert "All canopies together: Mean " in one.words
    early, late = (one.hanging_height for one in found.by_week() if one.turned)
    assert (early, late) == tuple(one.hanging_height for one in found.stages)
    assert [week.face for week in found.by_week() if week.turned] == pytest.approx(
        [LEVEL + one.plan.lamps[0].hanging_height for one in found.stages if one.plan]
    )
    halfway = found.at(2.0)
    assert halfway is not None
    assert halfway.obstacles[0].top == pytest.approx(0.6)
    assert halfway.judged_top == 0


def test_a_tray_that_cannot_stand_so_low_or_so_high_is_refused() -> None:
    low, high = scheduled(0.2, 2.4).stages
    assert low.plan is None
    assert "The canopy on obstacle 1 ('Tray') cannot stand at " in low.warnings[-1]
    assert high.plan is None
    assert "reaches up to" in high.warnings[-1]


def test_what_a_stage_sets_anew_leaves_a_schedule_its_answers() -> None:
    what, found = room(), scheduled(0.4, 0.8)
    grown = found.at(3.0)
    assert grown is not None
    moved = what.with_setup(grown)
    assert depends(moved, ungrown) == depends(what, ungrown)
    other = judge_by(moved, None)
    assert depends(other, ungrown) != depends(what, ungrown)


def test_the_schedule_of_a_report_tells_every_canopy_of_every_stage() -> None:
    from planner.reports.chapters import report
    from planner.reports.page import report_html
    from planner.reports.report import gather

    what = room().model_copy(update={"schedule": (stage("Small", 0.4),)})
    known = gather(what, QUICK, sections=("schedule",))
    assert known.schedule is not None
    (one,) = known.schedule.stages
    assert one.estimate is not None
    text = report_html(report(known, sections=("schedule",)))
    assert "Every canopy, by its own target" in text
    for canopy in one.estimate.canopies:
        assert f">{ppfd(canopy.figures.mean)}<" in text
    assert f">{ppfd(one.estimate.overall.mean)}<" in text
