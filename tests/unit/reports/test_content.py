"""The sentence over the figures, and the figures as text."""

from __future__ import annotations

import dataclasses
import math
from typing import Any

import numpy as np
import pytest

from planner.estimate.outlook import Part, Uncertainty
from planner.estimate.result import Estimate, Figures
from planner.metrics.figures import COLOURS, percent, ppfd, significant
from planner.plan.target import DliTarget, PpfdTarget
from planner.reports.content import (
    band_in_words,
    closure_sentence,
    headline_figures,
    numeric_sentence,
    sentence,
)
from tests.unit.reports.sample_estimate import sample_estimate, sample_plan

HERBS = PpfdTarget(low=150, high=250, crop="herbs")


def with_shares(under: float, inside: float, over: float, **plan_parts: Any) -> Estimate:
    plan = sample_plan(**{"target": HERBS, **plan_parts})
    return sample_estimate(plan, share_under=under, share_inside=inside, share_over=over)


def test_the_whole_sentence() -> None:
    assert sentence(sample_estimate()) == (
        "Mean 212, lowest corner 61 % of it; 14 h give 10.7 mol a day; "
        "83 % of the canopy lies inside the band for lettuce seedlings, "
        "12 % under it and 5 % over it."
    )


def test_without_a_lamp_it_is_said_to_be_dark() -> None:
    dark = sentence(sample_estimate(sample_plan(lamps=())))
    assert dark == "No lamp hangs in this space yet, so it is dark."


def test_lamps_turned_down() -> None:
    lamp = sample_plan().lamps[0].model_copy(update={"output_percent": 0.0})
    dark = sample_estimate(
        sample_plan(lamps=(lamp,)), mean=0.0, minimum=0.0, maximum=0.0, min_over_mean=None,
        photon_flux=0.0, dli=0.0,
    )  # fmt: skip
    assert sentence(dark) == "All lamps are turned down to nothing, so the space is dark."


def test_without_a_target_nothing_is_said_of_a_band() -> None:
    estimate = sample_estimate(
        sample_plan(target=None), share_under=None, share_inside=None, share_over=None
    )
    assert sentence(estimate) == "Mean 212, lowest corner 61 % of it; 14 h give 10.7 mol a day."


def test_without_a_photoperiod_no_light_in_a_day() -> None:
    estimate = sample_estimate(sample_plan(photoperiod_hours=0.0, target=None), dli=0.0)
    assert "with a photoperiod of 0 h no light reaches the canopy in a day" in sentence(estimate)


@pytest.mark.parametrize(
    ("shares", "ending"),
    [
        ((0.0, 1.0, 0.0), "all of the canopy lies inside the band for herbs."),
        ((1.0, 0.0, 0.0), "all of the canopy lies under the band for herbs."),
        ((0.0, 0.0, 1.0), "all of the canopy lies over the band for herbs."),
        ((0.3, 0.7, 0.0), "70 % of the canopy lies inside the band for herbs, the rest under it."),
        ((0.0, 0.7, 0.3), "70 % of the canopy lies inside the band for herbs, the rest over it."),
        ((0.4, 0.0, 0.6), "0 % of the canopy lies inside the band for herbs, 40 % under it and "
                          "60 % over it."),
    ],
)  # fmt: skip
def test_how_it_fits_the_band(shares: tuple[float, float, float], ending: str) -> None:
    assert sentence(with_shares(*shares)).endswith(ending)


@pytest.mark.parametrize(
    ("crop", "words"),
    [
        ("Lettuce, seedlings", "for lettuce (seedlings)"),
        ("Basil", "for basil"),
        ("LED trial", "for LED trial"),
        ("", "band that is wanted"),
    ],
)
def test_the_crop_in_the_sentence(crop: str, words: str) -> None:
    target = PpfdTarget(low=150, high=250, crop=crop)
    assert words in sentence(with_shares(0, 1, 0, target=target))


def test_a_dark_middle_is_a_spot_and_no_corner() -> None:
    estimate = sample_estimate()
    hollow = np.array(estimate.ppfd)
    hollow[5, 6] = 1.0
    assert "lowest spot 61 % of it" in sentence(dataclasses.replace(estimate, ppfd=hollow))


def test_every_figure_of_an_estimate_is_shown_once() -> None:
    keys = [figure.key for figure in headline_figures(sample_estimate())]
    assert len(keys) == len(set(keys))
    shown_elsewhere = {"canopy_area"}
    every = {f.name for f in dataclasses.fields(Figures)} - shown_elsewhere
    assert set(keys) == every - set(COLOURS)
    known = sample_estimate()
    figures = dataclasses.replace(
        known.figures, eppfd=220.0, blue_share=0.2, red_share=0.5, far_red_share=0.04
    )
    coloured = headline_figures(dataclasses.replace(known, figures=figures))
    assert {figure.key for figure in coloured} == every
    assert keys[:4] == ["mean", "min_over_mean", "dli", "share_inside"]


def test_figures_have_units_and_plain_meanings() -> None:
    by_key = {figure.key: figure for figure in headline_figures(sample_estimate())}
    assert by_key["mean"].text == "212 µmol m⁻² s⁻¹"
    assert by_key["dli"].text == "10.7 mol m⁻² d⁻¹"
    assert by_key["min_over_mean"].text == "61 %"
    assert by_key["watts_per_m2"].text == "133 W m⁻²"
    assert by_key["kwh_per_day"].text == "0.56 kWh"
    assert by_key["efficacy"].text == "2.5 µmol J⁻¹"
    assert "150 to 250 µmol m⁻² s⁻¹" in by_key["share_inside"].meaning
    assert "14 h" in by_key["dli"].meaning
    assert all(figure.meaning.endswith(".") for figure in by_key.values())


def test_what_has_no_meaning_is_a_dash_without_unit() -> None:
    estimate = sample_estimate(
        sample_plan(lamps=(), target=None), efficacy=None, utilisation=None, min_over_mean=None,
        share_inside=None,
    )  # fmt: skip
    by_key = {figure.key: figure for figure in headline_figures(estimate)}
    for key in ("efficacy", "utilisation", "min_over_mean", "share_inside"):
        assert by_key[key].text == "–"
    assert "this plan has no target" in by_key["share_inside"].meaning


def test_the_band_in_words() -> None:
    assert band_in_words(sample_estimate()) == "150 to 250 µmol m⁻² s⁻¹"
    by_day = sample_plan(target=DliTarget(low=8.5, high=12))
    assert band_in_words(sample_estimate(by_day)) == "8.5 to 12 mol m⁻² d⁻¹"
    assert band_in_words(sample_estimate(sample_plan(target=None))) == ""


def test_the_balance_is_told_with_its_sign() -> None:
    assert "by −0.012 %" in closure_sentence(sample_estimate())
    surplus = dataclasses.replace(sample_estimate(), closure=0.004)
    assert "by +0.400 %" in closure_sentence(surplus)
    closed = dataclasses.replace(sample_estimate(), closure=-2e-9)
    assert "by less than 0.001 %." in closure_sentence(closed)


@pytest.mark.parametrize(
    ("fraction", "text"),
    [(0.614, "61 %"), (0, "0 %"), (1, "100 %"), (0.9994, "99.9 %"), (0.996, "99.6 %"),
     (0.053, "5.3 %"), (0.05, "5 %"), (0.0996, "10 %"), (0.0001, "under 0.1 %"),
     (1.27, "127 %"), (None, "–"), (math.nan, "–")],
)  # fmt: skip
def test_percent(fraction: float | None, text: str) -> None:
    assert percent(fraction) == text


@pytest.mark.parametrize(
    ("value", "text"),
    [(0.0, "0"), (10.704, "10.7"), (9.95, "9.95"), (212.4, "212"), (1520.4, "1520"),
     (0.01234, "0.0123"), (2.5, "2.5"), (-0.5, "−0.5"), (None, "–"), (math.inf, "–"),
     (100.0, "100"), (1e-9, "0")],
)  # fmt: skip
def test_significant(value: float | None, text: str) -> None:
    assert significant(value) == text


@pytest.mark.parametrize(
    ("value", "text"),
    [
        (212.4, "212"),
        (9.94, "9.9"),
        (9.97, "10"),
        (0, "0"),
        (math.nan, "–"),
        (1416, "1420"),
        (999.6, "1000"),
        (10.4, "10"),
    ],
)
def test_ppfd(value: float, text: str) -> None:
    assert ppfd(value) == text


def test_the_error_of_the_sums_is_told_where_it_is_known() -> None:
    estimate = sample_estimate(sample_plan())
    known = dataclasses.replace(estimate, numeric_error=0.013)
    assert "good to about 1.3 %" in numeric_sentence(known)
    assert numeric_sentence(dataclasses.replace(estimate, numeric_error=None)) == ""


def test_figures_carry_their_band_and_its_causes() -> None:
    known = Uncertainty(
        mean=15.3, minimum=9.3, maximum=20.4, min_over_mean=0.011, dli=0.88, relative_mean=0.09,
        parts=(Part("photon flux of Panel", 14.9, 8.6), Part("reflectance of Board", 2.4, 9.0)),
    )  # fmt: skip
    by_key = {figure.key: figure for figure in headline_figures(sample_estimate(), known)}
    # 1.96 x 15.3 = 30, 1.96 x 0.88 = 1.7, 1.96 x 1.1 % = 2 %
    assert by_key["mean"].text == "212 ± 30 µmol m⁻² s⁻¹"
    assert by_key["dli"].text == "10.7 ± 1.7 mol m⁻² d⁻¹"
    assert by_key["min_over_mean"].text == "61 ± 2 %"
    assert by_key["share_inside"].spread == ""
    mean, lowest = by_key["mean"].meaning, by_key["minimum"].meaning
    assert "photon flux of Panel (± 29)" in mean
    assert mean.index("photon flux") < mean.index("reflectance")
    assert lowest.index("reflectance") < lowest.index("photon flux")


def test_without_an_uncertainty_no_figure_has_a_band() -> None:
    assert not any(figure.spread for figure in headline_figures(sample_estimate()))


def test_sentence_and_figures_say_the_same_digits() -> None:
    known = Uncertainty(
        mean=137.0, minimum=90.0, maximum=190.0, min_over_mean=0.011, dli=7.0, relative_mean=0.1,
        parts=(Part("photon flux of Panel", 137.0, 90.0),),
    )  # fmt: skip
    bright = sample_estimate(mean=1416.2, dli=71.4, min_over_mean=0.614)
    for doubt in (None, known):
        by_key = {figure.key: figure.value for figure in headline_figures(bright, doubt)}
        assert by_key["mean"] == "1420"
        assert f"Mean {by_key['mean']}," in sentence(bright, doubt)
        assert f"give {by_key['dli']} mol" in sentence(bright, doubt)
