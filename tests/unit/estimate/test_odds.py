"""Odds and intervals between options, held against draws from the stated ranges themselves.

The draws go through a surrogate of their own: the core on a full grid of wall reflectance and
hanging height, joined by cubic interpolation, and shown to follow the core between its nodes.
"""

from __future__ import annotations

import math
from dataclasses import replace
from functools import cache
from itertools import combinations

import numpy as np
import pytest
from scipy.interpolate import RegularGridInterpolator

from planner.catalogue.library import load_catalogue
from planner.estimate.evaluate import Cache, evaluate
from planner.estimate.odds import (
    By,
    Curve,
    Odds,
    Sway,
    Telling,
    chance_words,
    deciding,
    deciding_words,
    saving_verdict,
    sway,
    verdict,
)
from planner.estimate.outlook import HEIGHT_HALF_WIDTH_M, Input
from planner.estimate.result import QUICK, Estimate, EstimateOptions, Quality
from planner.plan import edits
from planner.plan.lamp import Lamp, LampModel, PanelBody
from planner.plan.lining import Lining, WallCover
from planner.plan.plan import Plan
from planner.plan.space import Canopy, Space
from tests.physics.rooms import box, lamp, plan
from tests.unit.reports.sample_estimate import sample_estimate

KEYS = (
    "white-board", "matt-white-paint", "white-film-thin", "foil-shiny", "foil-matt", "plywood",
)  # fmt: skip
SIDE = 0.6
SQUARE = ((0.0, 0.0), (SIDE, 0.0), (SIDE, SIDE), (0.0, SIDE))
SURE = Lining(key="sure", name="Sure", reflectance=0.5, low=0.5, high=0.5)
PANEL = LampModel(
    key="panel", name="Panel", body=PanelBody(length=0.3, width=0.3), ppf=200.0, watts=80.0,
    ppf_uncertainty=0.1,
)  # fmt: skip
OPTIONS = EstimateOptions(cells=(12, 12), quality=Quality.DEFAULT)
HEIGHT = 0.6
DRAWS = 20_000


def cabinet(key: str) -> Plan:
    """A 0.6 m cabinet of sure ceiling and canopy, its walls lined with a catalogue lining."""
    plan = Plan(
        space=Space(footprint=SQUARE, height=1.2),
        lamps=(Lamp(model=PANEL, x=0.3, y=0.3, hanging_height=HEIGHT),),
        linings=(SURE,),
        walls=(WallCover.plain("sure"),) * 4,
        ceiling="sure",
        floor="sure",
        canopy=Canopy(height=0.2, closed=True, reflectance=0.1),
    )
    return edits.line_all_walls(plan, load_catalogue().lining(key))


def at(key: str, reflectance: float, height: float, held: Cache) -> np.ndarray:
    """Mean and lowest PPFD by the core."""
    plan = cabinet(key)
    lining = plan.lining(key).model_copy(
        update={"reflectance": reflectance, "low": 0.0, "high": 1.0}
    )
    plan = edits.change_lamp(edits.change_lining(plan, lining), 0, hanging_height=height)
    figures = evaluate(plan, OPTIONS, cache=held).figures
    return np.array([figures.mean, figures.minimum])


@cache
def surrogate(key: str) -> RegularGridInterpolator:
    lining, held = load_catalogue().lining(key), Cache()
    rho = np.linspace(lining.low, lining.high, 7)
    heights = HEIGHT + HEIGHT_HALF_WIDTH_M * np.linspace(-1, 1, 4)
    table = np.array([[at(key, r, h, held) for h in heights] for r in rho])
    return RegularGridInterpolator((rho, heights), np.log(table), method="cubic")


@cache
def drawn(key: str) -> np.ndarray:
    """Logarithms of mean and lowest, (draws, 2): own reflectance, the height all have alike."""
    lining = load_catalogue().lining(key)
    height = HEIGHT + HEIGHT_HALF_WIDTH_M * np.random.default_rng(99).uniform(-1, 1, DRAWS)
    rng = np.random.default_rng(KEYS.index(key))
    rho = rng.uniform(lining.low, lining.high, DRAWS)
    logs: np.ndarray = surrogate(key)(np.column_stack([rho, height]))
    return logs


@cache
def option(key: str) -> tuple[Estimate, Sway]:
    plan = cabinet(key)
    estimate = evaluate(plan, OPTIONS)
    found = sway(plan, estimate)
    assert found is not None
    # What the computation's own chance does is not in the draws it is held against.
    return estimate, Sway(found.curves)


@pytest.mark.slow
@pytest.mark.parametrize("key", KEYS)
def test_the_surrogate_follows_the_core(key: str) -> None:
    lining, held, rng = load_catalogue().lining(key), Cache(), np.random.default_rng(5)
    for _ in range(6):
        rho = rng.uniform(lining.low, lining.high)
        height = HEIGHT + HEIGHT_HALF_WIDTH_M * rng.uniform(-1, 1)
        error = surrogate(key)([[rho, height]])[0] - np.log(at(key, rho, height, held))
        assert abs(error[0]) < 0.0005
        assert abs(error[1]) < 0.002


@pytest.mark.slow
@pytest.mark.parametrize(("first", "second"), list(combinations(KEYS, 2)))
def test_intervals_of_catalogue_linings_cover_what_their_ranges_give(
    first: str, second: str
) -> None:
    odds = Odds.of([option(first), option(second)])
    for by, weights in ((By.MEAN, (1, 0)), (By.LOWEST, (0, 1)), (By.EVENNESS, (-1, 1))):
        told = odds.telling(0, 1, by)
        ratios = np.exp((drawn(first) - drawn(second)) @ weights)
        inside = np.mean((told.low <= ratios) & (ratios <= told.high))
        # Evenness moves so little that what a preview loses of it widens its interval.
        most, near = (1.0, 0.04) if by is By.EVENNESS else (0.97, 0.02)
        assert 0.93 <= inside <= most, by
        assert told.chance == pytest.approx(np.mean(ratios > 1), abs=near)
        assert told.ratio == pytest.approx(np.median(ratios), rel=0.01)


@pytest.mark.slow
def test_the_chance_to_be_best_of_all_is_what_the_draws_say() -> None:
    odds = Odds.of([option(key) for key in KEYS])
    logs = np.stack([drawn(key)[:, 0] for key in KEYS])
    won = np.bincount(logs.argmax(axis=0), minlength=len(KEYS)) / DRAWS
    assert odds.best() == pytest.approx(won, abs=0.02)
    assert sum(odds.best()) == pytest.approx(1)


def flat(slope: float) -> Curve:
    return Curve((-slope, 0.0, slope), (-slope, 0.0, slope))


def test_what_two_options_share_drops_out() -> None:
    """Flux moves both alike; walls move the first by ±5 % and the second by ±1 %, shared.

    The ratio's logarithm is then even within ±4 %, so 95 % of it within ±3.8 %.
    """
    flux, walls = Input("photon flux", "panel", ""), Input("reflectance", "walls", "", (0.5, 0.7))
    one = Sway({flux: flat(0.1), walls: flat(0.05)})
    two = Sway({flux: flat(0.1), walls: flat(0.01)})
    estimates = sample_estimate(mean=112.0), sample_estimate(mean=100.0)
    told = Odds.of([(estimates[0], one), (estimates[1], two)]).telling(0, 1)
    assert told.ratio == pytest.approx(1.12, rel=0.002)
    assert np.log([told.low / 1.12, told.high / 1.12]) == pytest.approx([-0.038, 0.038], abs=0.001)
    # The same walls with another range are another thing: then both count.
    other = Input("reflectance", "walls", "", (0.4, 0.7))
    three = Sway({flux: flat(0.1), other: flat(0.01)})
    apart = Odds.of([(estimates[0], one), (estimates[1], three)]).telling(0, 1)
    assert apart.high > told.high


def test_the_very_same_light_is_not_told_apart() -> None:
    """Two names of one thing: no chance lies between them, and what one wins both win."""
    walls = Input("reflectance", "walls", "", (0.5, 0.7))
    sway_ = Sway({walls: flat(0.1)}, numeric=0.01)
    one, darker = sample_estimate(mean=125.0), sample_estimate(mean=60.0)
    odds = Odds.of([(one, sway_), (one, sway_), (darker, sway_)])
    told = odds.telling(0, 1)
    assert (told.low, told.ratio, told.high, told.chance) == (1, 1, 1, 0.5)
    assert verdict("Board", told, "the plan") == "Board and the plan have the very same light."
    assert odds.best() == (0.5, 0.5, 0)
    saving = odds.saving(0, 1, (0.0, 0.0), (100.0, 100.0))
    assert (saving.low, saving.high, saving.chance) == (0, 0, 0.5)
    assert (
        saving_verdict("Board", saving, "the plan", 12, "€") == "Board and the plan cost the same."
    )
    assert not odds.telling(0, 2).same


def test_verdicts_in_words() -> None:
    more = verdict("White board", Telling(1.12, 1.05, 1.19, 0.98), "foil")
    assert more == ("White board beats foil with 98 % probability: 12 % more light (5 to 19 %).")
    less = verdict("Paint", Telling(0.8, 0.7, 0.91, 0.0), "foil", By.LOWEST)
    assert less == (
        "Paint is behind foil with more than 99 % probability: 20 % less light at its lowest "
        "spot (9 to 30 %)."
    )
    # A difference that is not clear is not called none ...
    open_ = Telling(1.02, 0.95, 1.08, 0.7)
    assert verdict("Paint", open_, "film", By.MEAN, 0.05) == (
        "Not clear which is the brighter one: Paint with 70 % probability; Paint lies "
        "−5 to +8 % from film."
    )
    # ... and equal they are only inside the margin that was set.
    assert verdict("Paint", open_, "film", By.MEAN, 0.1).startswith(
        "Paint and film are equal for your purpose: with 95 % probability within 8 %"
    )
    assert chance_words(0.001) == "less than 1 % probability"


def test_money_saved_at_the_same_light() -> None:
    """Walls even within ±10 % of light (as a logarithm), 100 of energy each, 5 to buy.

    At the middle 1.25 times the light: 100 - 5 - 100/1.25 = 15; the light's 95 % are within
    ±9.5 %: 100 - 5 - 80·e^±0.095 = 7.03 and 22.25.
    """
    walls = Input("reflectance", "walls", "", (0.5, 0.7))
    one, two = Sway({walls: flat(0.1)}), Sway({})
    estimates = sample_estimate(mean=125.0), sample_estimate(mean=100.0)
    odds = Odds.of([(estimates[0], one), (estimates[1], two)])
    found = odds.saving(0, 1, (5.0, 0.0), (100.0, 100.0))
    assert found.middle == pytest.approx(15, abs=0.3)
    assert (found.low, found.high) == pytest.approx((7.03, 22.25), abs=0.3)
    assert found.chance == 1
    words = saving_verdict("Foil", found, "White", 12, "€")
    assert words.startswith("At the same light Foil is the cheaper one over 12 months with more")


def test_which_input_decides() -> None:
    """Even inputs of half-widths 5 % and 1 %: variances as 25 to 1; a shared one drops out."""
    flux = Input("photon flux", "panel", "photon flux of panel")
    walls = Input("reflectance", "walls", "reflectance of paint", (0.5, 0.7))
    other = Input("reflectance", "foil", "reflectance of foil", (0.8, 0.9))
    one, two = (
        Sway({flux: flat(0.2), walls: flat(0.05)}),
        Sway({flux: flat(0.2), other: flat(0.01)}),
    )
    found = deciding(one, two)
    assert [key.of for key, _ in found] == ["walls", "foil"]
    assert [share for _, share in found] == pytest.approx([25 / 26, 1 / 26])
    words = deciding_words(found)
    assert words.startswith("What decides is the reflectance of paint: 96 % of what is not known")
    assert words.endswith("; a survey with paint narrows it most.")
    assert deciding(one, one) == ()
    assert "No uncertain input" in deciding_words(())


def test_equal_for_a_purpose_only_inside_its_margin() -> None:
    told = Telling(1.01, 0.97, 1.04)
    assert told.equal_within(0.05)
    assert not told.equal_within(0.035)


def paint(key: str, low: float, named: float, high: float) -> Lining:
    return Lining(key=key, name=f"The {key}", reflectance=named, low=low, high=high)


def lined_with(lining: Lining) -> tuple[str, Estimate, Sway]:
    """A white room whose light goes as 1 / (1 - ρ), said by hand."""
    made = edits.line_all_walls(plan(box(1.0, 1.0), 1.0, [lamp((0.5, 0.5), 0.5)]), lining)
    figures = evaluate(made, QUICK)
    light = 100.0 / (1 - lining.reflectance)
    known = replace(figures, figures=replace(figures.figures, mean=light, minimum=light))
    through = (lining.low, (lining.low + lining.high) / 2, lining.high)
    low, middle, high = (math.log((1 - lining.reflectance) / (1 - rho)) for rho in through)
    ends = (low, middle, high)
    of = Input("reflectance", lining.key, f"reflectance of {lining.name}", through[::2])
    return lining.name, known, Sway({of: Curve(ends, ends)})


def test_figures_and_draws_may_rank_otherwise_where_a_value_is_not_in_the_middle() -> None:
    """Film named 0.80 of 0.75 to 0.90, foil 0.81 of 0.73 to 0.83: the middles are 0.825, 0.78."""
    film, foil = paint("film", 0.75, 0.80, 0.90), paint("foil", 0.73, 0.81, 0.83)
    options = [lined_with(film), lined_with(foil)]
    assert options[1][1].figures.mean > options[0][1].figures.mean
    odds = Odds.of([(estimate, sway) for _, estimate, sway in options])
    assert odds.telling(1, 0).ratio < 1
    assert odds.contrary(options) == (
        "By the values named 'The foil' has more light than 'The film', by the odds less: these "
        "take the reflectance of The film anywhere in its range (75 % to 90 %), the figures take "
        "80 %."
    )
    even = paint("foil", 0.79, 0.81, 0.83)
    clear = [lined_with(paint("film", 0.75, 0.77, 0.79)), lined_with(even)]
    agreed = Odds.of([(estimate, sway) for _, estimate, sway in clear])
    assert agreed.contrary(clear) == ""
