"""What is wanted of a day where light comes in at the door, which has hours of its own.

A DLI of 10 in 16 h of lamps is 10 / 0.0576 = 173.6 µmol m⁻² s⁻¹. Where E of the light comes from
the room and lasts 4 h, the sum while both shine must be E (1 - 4/16) more for the same DLI:
(M - E) 16 · 0.0036 + E 4 · 0.0036 = 10. A band of PPFD is what it is; as a DLI it is that of the
lamps in 16 h and of the room in 4.
"""

from __future__ import annotations

import pytest

from planner.estimate.compare import Wishes
from planner.estimate.evaluate import evaluate
from planner.estimate.find import find
from planner.estimate.find_question import Aim, Question, Turn, wished_band
from planner.estimate.ladder import ladder
from planner.estimate.result import EstimateOptions, Quality
from planner.estimate.schedule import schedule
from planner.estimate.sweep import Over, sweep
from planner.plan.edits import change_lamp, changed, with_space
from planner.plan.plan import Plan
from planner.plan.target import DliTarget, GrowthStage, PpfdTarget
from tests.physics.rooms import box, lamp, plan

QUICK = EstimateOptions(cells=(10, 10), quality=Quality.PREVIEW)
HOURS, ROOM_HOURS = 16.0, 4.0
HOUR = 3600 / 1e6
WANTED = DliTarget(low=10.0, high=14.0)


def opened(target: DliTarget | PpfdTarget = WANTED) -> Plan:
    made = plan(box(0.8, 0.5), 1.0, [lamp((0.4, 0.25), 0.5, ppf=150.0)], canopy_height=0.2)
    made = with_space(made, door=0, door_open=True, room_light=150.0, room_hours=ROOM_HOURS)
    return changed(made, target=target, photoperiod_hours=HOURS)


def of_a_day(light: float, entered: float) -> float:
    return ((light - entered) * HOURS + entered * ROOM_HOURS) * HOUR


def test_the_ladder_holds_heights_against_the_band_of_lamps_and_room() -> None:
    found = ladder(opened(), (0,), (0.3, 0.5))
    entered = evaluate(opened(), QUICK).entered
    assert entered > 20.0
    wanted = found.wanted(opened())
    assert wanted is not None
    assert wanted[0] == pytest.approx(10 / (16 * HOUR) + entered * (1 - 4 / 16), rel=5e-3)


def test_a_band_of_ppfd_as_a_dli_counts_the_room_for_its_hours() -> None:
    made = opened(PpfdTarget(low=200.0, high=300.0))
    band = wished_band(made, 40.0)
    assert band == pytest.approx((of_a_day(200.0, 40.0), of_a_day(300.0, 40.0)))
    assert wished_band(opened(), 40.0) == pytest.approx((10.0, 14.0))


def test_just_enough_light_is_so_with_the_light_of_the_room() -> None:
    wishes = Wishes(dli_low=6.0)
    found = find(opened(), Question(Aim.ENERGY, frozenset({Turn.OUTPUT}), wishes), QUICK)
    output = found.best.plan.lamps[0].output_percent
    assert 5 < output < 95

    def dli(percent: float) -> float:
        one = evaluate(change_lamp(opened(), 0, output_percent=percent), QUICK)
        return of_a_day(one.figures.mean, one.entered)

    assert dli(output) >= 6.0 > dli(output - 1)


def test_points_of_a_sweep_have_the_band_of_their_hours_and_room() -> None:
    swept = sweep(opened(), [Over("photoperiod", (12.0, 16.0))], QUICK, workers=0)
    entered = evaluate(opened(), QUICK).entered
    for number, hours in enumerate((12.0, 16.0)):
        band = swept.points[number].band
        assert band is not None
        assert band[0] == pytest.approx(10 / (hours * HOUR) + entered * (1 - 4 / hours))


def test_a_stage_reaches_its_band_with_the_light_of_the_room() -> None:
    stage = GrowthStage(
        name="Grown", canopy_height=0.2, target=PpfdTarget(low=150.0, high=250.0),
        photoperiod_hours=HOURS,
    )  # fmt: skip
    (one,) = schedule(opened(), (stage,), QUICK, aim=Aim.ENERGY).stages
    assert one.estimate is not None
    assert one.met
    assert one.estimate.figures.mean == pytest.approx(150.0, rel=0.02)
