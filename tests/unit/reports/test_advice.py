"""The output that would bring most of the canopy into its band."""

from __future__ import annotations

import dataclasses

import numpy as np
import pytest

from planner.estimate.odds import deciding_words
from planner.estimate.outlook import Input, Part, Uncertainty
from planner.estimate.result import Estimate, figures_of
from planner.plan.target import DliTarget, PpfdTarget
from planner.reports.advice import advice, best_dimming, doubt_sentence, shortage, turned
from tests.unit.reports.sample_estimate import sample_estimate, sample_plan


def flat(ppfd: float, *outputs: float, target: PpfdTarget | DliTarget | None = None) -> Estimate:
    """Even light under lamps of these outputs; the band is 150 to 250 unless told."""
    (lamp,) = sample_plan().lamps
    lamps = tuple(lamp.model_copy(update={"output_percent": output}) for output in outputs)
    plan = sample_plan(lamps=lamps, target=target or PpfdTarget(low=150, high=250))
    estimate = sample_estimate(plan)
    return dataclasses.replace(estimate, ppfd=np.full_like(estimate.ppfd, ppfd))


def test_too_bright_is_dimmed_to_the_middle_of_what_fits() -> None:
    # 400 at full output: 150 to 250 needs 37.5 to 62.5 %, in whole steps 38 to 62.
    found = best_dimming(flat(400, 100))
    assert found is not None
    assert found.share_inside == 1
    assert 0.49 <= found.factor <= 0.51
    assert advice(flat(400, 100)) == (
        "With the lamp at 50 % output, 100 % of the canopy would lie inside the band."
    )


def test_light_of_the_room_counts_for_its_own_hours_and_is_not_dimmed() -> None:
    # 100 of the light comes in for 1 h, the lamps shine for 16. Per day 8 to 14 mol, by hand:
    # (f 400 * 16 + 100 * 1) * 0.0036 lies between them from f = 0.332 to 0.592.
    found = flat(500, 100, target=DliTarget(low=8, high=14))
    space = found.plan.space.model_copy(update={"room_light": 200.0, "room_hours": 1.0})
    plan = found.plan.model_copy(update={"space": space, "photoperiod_hours": 16.0})
    dimmed = best_dimming(dataclasses.replace(found, plan=plan, entered=100.0))
    assert dimmed is not None
    assert dimmed.factor == pytest.approx(0.46, abs=0.01)
    # Of cells with 6.1 and 11.9 mol a day one is inside; by 139 to 243 the other would be.
    cells, areas = np.array([200.0, 300.0]), np.ones(2)
    figures = figures_of(plan, cells, areas, entered=100.0)
    assert (figures.share_under, figures.share_inside, figures.share_over) == (0.5, 0.5, 0.0)
    assert figures.dli == pytest.approx((150 * 16 + 100) * 0.0036)


def test_too_dark_is_turned_up_no_further_than_full() -> None:
    # 100 at half output is 200 at full.
    found = best_dimming(flat(100, 50))
    assert found is not None
    assert 1.5 <= found.factor <= 2.0


def test_what_no_output_can_reach_is_told_as_a_shortage() -> None:
    # 60 at half output is 120 at full: still under the band, whose middle is 200.
    assert best_dimming(flat(60, 50)) is None
    assert shortage(flat(60, 50)) == pytest.approx(200 / 120)
    assert "about 1.7 times this light" in advice(flat(60, 50))
    assert "about 100 times" in advice(flat(2, 100))
    assert shortage(flat(160, 100)) is None
    assert shortage(flat(75, 50)) is None  # 150 at full output is just inside


def test_what_is_advised_is_a_plan_with_whole_per_cents() -> None:
    plan = flat(400, 100, 60).plan
    assert [lamp.output_percent for lamp in turned(plan, 0.505).lamps] == [50.0, 30.0]
    assert [lamp.output_percent for lamp in turned(plan, 1.3).lamps] == [100.0, 78.0]


def test_lamps_of_different_output_keep_their_proportion() -> None:
    assert "all lamps at 50 % of their present output" in advice(flat(400, 100, 60))


def test_several_equal_lamps() -> None:
    assert "With all lamps at 50 % output" in advice(flat(400, 100, 100))


def test_a_daily_band_is_turned_into_ppfd() -> None:
    # 14 h of 400 are 20.16 mol; half of it is 10.08, the middle of 9.08 to 11.08.
    found = best_dimming(flat(400, 100, target=DliTarget(low=9.08, high=11.08)))
    assert found is not None
    assert found.factor == pytest.approx(0.5, abs=0.01)


@pytest.mark.parametrize(
    "estimate",
    [
        flat(200, 100),
        flat(0, 0),
        sample_estimate(sample_plan(target=None)),
        sample_estimate(sample_plan(lamps=())),
    ],
)
def test_nothing_is_said_where_nothing_helps(estimate: Estimate) -> None:
    assert best_dimming(estimate) is None
    assert advice(estimate) == ""


# -- how sure it is at a place ------------------------------------------------------------


def known(relative: float, *parts: Part) -> Uncertainty:
    """Of a mean of 200."""
    mean = 200 * relative
    return Uncertainty(mean, mean / 2, mean, 0.01, 0.5, relative, parts)


def test_at_a_place_the_odds_and_what_narrows_them_are_told() -> None:
    # 10 % of 150 are 15, 1.96 of them 29; inside 139 and 243 with 1 - Φ(-11/15) = 0.77.
    parts = (
        Part("photon flux of LED bar", 16.0, 8.0, "photon flux"),
        Part("reflectance of board", 12.0, 6.0, "reflectance"),
    )
    said = doubt_sentence(known(0.1, *parts), 150.0, (139.0, 243.0))
    # Without the first 12 of 20 are left: 1.96 · 9 = 18.
    assert said == (
        "Here 150 ± 29, inside the band with 8 in 10. A survey of LED bar in open air narrows it "
        "most, at best to ± 18."
    )
    height = Part("hanging height of lamp 1", 20.0, 8.0, "hanging height")
    assert "Measuring the hanging height of lamp 1 narrows" in doubt_sentence(
        known(0.1, height), 150.0, None
    )


def test_far_from_the_edge_it_is_sure() -> None:
    assert "surely under the band" in doubt_sentence(known(0.1), 80.0, (139.0, 243.0))
    assert "surely over the band" in doubt_sentence(known(0.05), 300.0, (139.0, 243.0))


def test_without_doubt_it_says_so() -> None:
    assert doubt_sentence(known(0.0), 80.0, None) == (
        "Here 80 µmol m⁻² s⁻¹, and nothing about it is in doubt."
    )


# -- lamps that cannot be dimmed ----------------------------------------------------------


def test_one_lamp_is_measured_alike_wherever_it_is_advised() -> None:
    """The map's note and the verdict's sentence once told of two different surveys."""
    flux = Input("photon flux", "panel", "photon flux of Panel", (0.1,))
    assert "a survey of Panel in open air" in deciding_words(((flux, 1.0),))
    part = Part(flux.words, 10.0, 5.0, flux.quantity)
    known = Uncertainty(10.0, 5.0, 10.0, 0.01, 0.5, 0.05, (part,))
    assert "A survey of Panel in open air" in doubt_sentence(known, 200.0, None)


def undimmable(estimate: Estimate) -> Estimate:
    lamps = tuple(
        lamp.model_copy(update={"model": lamp.model.model_copy(update={"dimmable": False})})
        for lamp in estimate.plan.lamps
    )
    plan = estimate.plan.model_copy(update={"lamps": lamps})
    figures = dataclasses.replace(estimate.figures, share_over=1.0)
    return dataclasses.replace(estimate, plan=plan, figures=figures)


def test_lamps_that_cannot_be_dimmed_are_never_told_to() -> None:
    estimate = flat(400, 100)
    assert best_dimming(estimate) is not None
    assert best_dimming(undimmable(estimate)) is None
    said = advice(undimmable(estimate))
    assert said.startswith("100 % of the canopy lies over the band, and the lamp cannot be dimmed")
    assert "hang the lamp higher" in said


def test_where_all_is_well_nothing_is_said_of_dimmers() -> None:
    inside = undimmable(flat(200, 100))
    figures = dataclasses.replace(inside.figures, share_over=0.0)
    assert advice(dataclasses.replace(inside, figures=figures)) == ""
