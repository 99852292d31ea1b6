"""Statistics of surveys, comparisons, and what the trade knows of them."""

from __future__ import annotations

import numpy as np
import pytest

from planner.plan.lining import Lining
from planner.plan.survey import SHUT_DOOR, Doubts, Meter, Reading, Survey, SurveyGrid
from planner.survey.comparison import compare, ranking, ratios_by_hole, set_up_scatter
from planner.survey.layout import holes
from planner.survey.outliers import far_off_neighbours
from planner.survey.statistics import reading_noise, summarise
from planner.units import LengthUnit, parse_length

SQUARE = ((0.0, 0.0), (0.6, 0.0), (0.6, 0.6), (0.0, 0.6))
POINTS = holes(SurveyGrid(rows=5, columns=5), SQUARE)


def survey(
    values: np.ndarray | list[float], key: str = "one", meter: Meter | None = None
) -> Survey:
    readings = tuple(Reading(hole=k, value=float(v)) for k, v in enumerate(values, start=1))
    return Survey(
        key=key, name=key, meter=meter or Meter(), points=POINTS[: len(values)], readings=readings
    )


def shape() -> np.ndarray:
    """A lamp's smooth light over the board."""
    x, y = np.array(POINTS).T
    light: np.ndarray = 200 / (1 + 3 * ((x - 0.3) ** 2 + (y - 0.3) ** 2))
    return light


def test_repeats_are_kept_with_their_spread_and_holes_weigh_alike() -> None:
    what = Survey(
        key="s",
        points=POINTS[:2],
        readings=tuple(
            Reading(hole=h, value=v) for h, v in ((1, 100.0), (1, 104.0), (1, 102.0), (2, 200.0))
        ),
    )
    found = summarise(what)
    assert found is not None
    first, second = found.holes
    assert (first.mean, first.count, first.spread) == (102.0, 3, 2.0)
    assert (second.count, second.spread) == (1, None)
    assert found.mean == 151.0
    assert summarise(Survey(key="s", points=POINTS)) is None


def test_uncertainty_of_the_mean_in_two_parts() -> None:
    """25 even readings of 2 % noise: 0.4 % by noise; a gain of ± 5 % stays 2.9 %."""
    found = summarise(survey([200.0] * 25))
    assert found is not None
    assert found.mean_noise == pytest.approx(200 * 0.02 / 5)
    assert found.mean_gain == pytest.approx(200 * 0.05 / np.sqrt(3))
    assert found.mean_uncertainty == pytest.approx(np.hypot(0.8, 5.7735), rel=1e-4)


def test_noise_is_taken_from_repeats_where_they_show_more() -> None:
    rng = np.random.default_rng(1)
    readings = tuple(
        Reading(hole=h, value=float(200 * (1 + 0.06 * rng.standard_normal())))
        for h in range(1, 26)
        for _ in range(4)
    )
    noise = reading_noise(Survey(key="s", points=POINTS, readings=readings))
    assert noise == pytest.approx(0.06, rel=0.2)
    assert reading_noise(survey(shape())) == 0.02


def test_a_reading_far_off_its_neighbours_is_flagged_and_kept() -> None:
    values = shape() * (1 + 0.01 * np.random.default_rng(2).standard_normal(25))
    for hole in (1, 13, 25, 3):
        spoilt = values.copy()
        spoilt[hole - 1] *= 0.6
        found = summarise(survey(spoilt))
        assert found is not None
        assert [h.hole for h in found.suspects] == [hole]
        assert len(found.holes) == 25
        expected = found.suspects[0].expected
        assert expected == pytest.approx(values[hole - 1], rel=0.15)


def test_a_steep_but_smooth_survey_has_no_suspects() -> None:
    x, y = np.array(POINTS).T
    steep = 400 / (1 + 12 * ((x - 0.2) ** 2 + (y - 0.15) ** 2)) ** 2
    found = summarise(survey(steep))
    assert found is not None
    assert found.suspects == ()


def test_too_few_holes_tell_nothing_of_neighbours() -> None:
    expected, suspect = far_off_neighbours(np.array(POINTS[:4]), np.array([1.0, 2.0, 3.0, 400.0]))
    assert np.isnan(expected).all()
    assert not suspect.any()


# -- comparison -------------------------------------------------------------------------


def test_gain_cancels_in_the_ratio_of_two_surveys_of_one_meter() -> None:
    rng = np.random.default_rng(3)

    def draw(level: float, gain: float, key: str) -> Survey:
        return survey(shape() * level * gain * (1 + 0.02 * rng.standard_normal(25)), key)

    ratios = []
    covered = 0
    for _ in range(300):
        gain = float(rng.uniform(0.9, 1.1))
        pair = compare(draw(1.05, gain, "a"), draw(1.0, gain, "b"))
        assert pair is not None
        ratios.append(pair.ratio)
        covered += abs(pair.ratio - 1.05) <= 1.96 * pair.uncertainty
        assert pair.uncertainty < 0.012
    assert np.mean(ratios) == pytest.approx(1.05, abs=0.001)
    assert np.std(ratios) < 0.008
    assert 0.90 <= covered / 300 <= 0.99


def test_the_verdict_says_whether_the_readings_tell_two_surveys_apart() -> None:
    rng = np.random.default_rng(4)
    noisy = [shape() * (1 + 0.02 * rng.standard_normal(25)) for _ in range(2)]
    apart = compare(survey(noisy[0] * 1.1, "foil"), survey(noisy[1], "paint"))
    alike = compare(survey(noisy[0] * 1.003, "foil"), survey(noisy[1], "paint"))
    assert apart is not None
    assert alike is not None
    assert apart.difference_is_certain
    assert "larger than what the readings can resolve" in apart.words()
    assert not alike.difference_is_certain
    assert "cannot tell the two apart" in alike.words()
    assert "gain drops out" in alike.words()


def test_the_verdict_on_two_never_contradicts_the_ranking_of_all() -> None:
    rng = np.random.default_rng(12)
    certain = 0
    for _ in range(60):
        surveys = evening(rng, [1.0, 1.0, 1.03, 1.05, 1.1], 0.01)
        found = ranking(surveys)
        rows = [row.key for row in found.rows]
        for k, first in enumerate(surveys):
            for second in surveys[:k]:
                pair = compare(first, second, surveys)
                assert pair is not None
                ends = sorted((rows.index(first.key), rows.index(second.key)))
                alike = any(a <= ends[0] and ends[1] <= b for a, b in found.alike)
                assert not (pair.difference_is_certain and alike)
                certain += pair.difference_is_certain
                # Of two alone 1.96 standard uncertainties would do; of five 3.86 / √2 = 2.73.
                assert pair.reach == pytest.approx(2.73, abs=0.005)
    assert certain > 60


def test_another_shape_of_light_is_no_scatter() -> None:
    """Light that falls off to one side by 20 %: the ratio of the means is as certain as noise."""
    rng = np.random.default_rng(13)
    tilt = np.exp(0.2 * (np.array(POINTS)[:, 0] - 0.3) / 0.6)
    one, other = (shape() * (1 + 0.02 * rng.standard_normal(25)) for _ in range(2))
    pair = compare(survey(one * tilt, "a"), survey(other, "b"))
    assert pair is not None
    # √2 · 2 % / √25 by noise alone; the tilt has a standard deviation of 6 %.
    assert pair.uncertainty == pytest.approx(0.0057, abs=0.002)


def test_two_meters_keep_their_gains_in_the_ratio() -> None:
    other = Meter(name="another", gain_uncertainty=0.05)
    pair = compare(survey(shape(), "a"), survey(shape(), "b", other))
    assert pair is not None
    assert not pair.one_meter
    assert pair.uncertainty > 0.05 / np.sqrt(3)
    assert "do not drop out" in pair.words()


def test_only_holes_of_both_are_compared() -> None:
    partly = survey(shape()[:10], "a")
    pair = compare(partly, survey(shape(), "b"))
    assert pair is not None
    assert pair.holes == 10
    assert pair.ratio == pytest.approx(1.0)
    assert len(ratios_by_hole(partly, survey(shape(), "b"))) == 10
    apart = Survey(key="c", points=((0.01, 0.01),), readings=(Reading(hole=1, value=5),))
    assert compare(apart, partly) is None


@pytest.mark.parametrize("by", ["mean", "min", "max"])
def test_ranking_is_consistent_under_change_of_base(by: str) -> None:
    surveys = [survey(shape() * level, key) for level, key in ((1, "a"), (0.75, "b"), (0.9, "c"))]
    to_best = ranking(surveys, by).rows
    assert [row.key for row in to_best] == ["a", "c", "b"]
    assert to_best[0].ratio == 1.0
    for base in ("b", "c"):
        own = next(row.ratio for row in to_best if row.key == base)
        for row, other in zip(ranking(surveys, by, base).rows, to_best, strict=True):
            assert row.ratio == pytest.approx(other.ratio / own)
    with pytest.raises(ValueError, match="mean, min or max"):
        ranking(surveys, "median")
    with pytest.raises(ValueError, match="base"):
        ranking(surveys, by, "none")


CARD = Lining(key="card", name="Card", reflectance=0.5, low=0.4, high=0.6)


def evening(
    rng: np.random.Generator, levels: list[float], scatter: float, lining: Lining | None = None
) -> list[Survey]:
    """One evening: each lining set up anew, with a scatter of its own."""
    made = [
        survey(
            shape() * level * (1 + scatter * rng.standard_normal())
            * (1 + 0.02 * rng.standard_normal(25)),
            f"{k}",
        )
        for k, level in enumerate(levels)
    ]  # fmt: skip
    return [one.model_copy(update={"lining": lining}) for one in made]


@pytest.mark.parametrize("scatter", [0.0, 0.01])
def test_equal_linings_are_seldom_called_different(scatter: float) -> None:
    """Five equal linings, 400 evenings; stated is 5 % at most, three deviations are 3.3 % more."""
    rng = np.random.default_rng(8)
    wrong = sum(ranking(evening(rng, [1.0] * 5, scatter)).alike != ((0, 4),) for _ in range(400))
    assert wrong / 400 <= 0.05 + 3 * np.sqrt(0.05 * 0.95 / 400)


def test_clear_differences_are_still_seen() -> None:
    rng = np.random.default_rng(9)
    alike = 0
    for _ in range(50):
        found = ranking(evening(rng, [1.0, 1.0, 0.85], 0.01))
        first, second, third = found.rows
        assert third.key == "2"
        assert third.high < second.low
        # Intervals overlap just where the readings cannot tell.
        assert (second.high > first.low) == (found.alike == ((0, 1),))
        alike += found.alike == ((0, 1),)
    # One evening in twenty may tell two equal ones apart.
    assert alike >= 50 - 7


def test_repeats_tell_how_much_setting_up_scatters() -> None:
    """Four surveys of one lining that scatter by 5 %: stated were 2 %/√3 and count for three."""
    rng = np.random.default_rng(10)
    squares = [
        set_up_scatter(evening(rng, [1.0] * 4, 0.05, CARD)).standard ** 2 for _ in range(400)
    ]
    expected = (3 * (0.02**2 / 3) + 3 * 0.05**2) / 6
    assert np.mean(squares) == pytest.approx(expected, rel=0.1)


def test_only_holes_that_all_share_are_ranked() -> None:
    """The half-read survey has only the bright holes; over its own it would win."""
    order = np.argsort(-shape())[:10]
    bright = Survey(
        key="half",
        name="half",
        points=POINTS,
        readings=tuple(Reading(hole=int(k) + 1, value=float(0.9 * shape()[k])) for k in order),
    )
    found = ranking([survey(shape(), "whole"), bright])
    assert [row.key for row in found.rows] == ["whole", "half"]
    assert found.holes == 10
    assert found.rows[1].ratio == pytest.approx(0.9)


def test_conditions_that_differ_are_listed() -> None:
    one = survey(shape(), "one").model_copy(update={"output_percent": 80.0})
    two = survey(shape(), "two").model_copy(update={"output_percent": 100.0})
    assert ranking([one, two]).conditions == (
        "The output was not the same: 'one' 80 % and 'two' 100 %. That counts too.",
    )


def test_a_door_that_may_have_stood_open_is_listed() -> None:
    one, two = survey(shape(), "one"), survey(shape(), "two")
    shut = one.model_copy(update={"doubts": Doubts(door=SHUT_DOOR)})
    ajar = two.model_copy(update={"doubts": Doubts(door=0.1)})
    assert ranking([one.model_copy(update={"key": "x"}), shut]).conditions == ()
    assert ranking([shut, ajar]).conditions == (
        "The door was not the same: 'one' shut and 'two' perhaps 10 % open. That counts too.",
    )


def test_a_hole_read_again_tells_the_least_that_setting_up_scatters() -> None:
    meter = Meter(noise=0.01)
    plain = survey(shape(), "one", meter)

    def again(factor: float, key: str) -> Survey:
        first = plain.readings[0]
        last = Reading(hole=1, value=first.value * factor)
        return plain.model_copy(update={"key": key, "readings": (*plain.readings, last)})

    # Stated: ± 2 % evenly likely, a standard deviation of 2 %/√3 = 1.15 %.
    assert set_up_scatter([plain]).standard == pytest.approx(0.02 / np.sqrt(3))
    # ln 1.06 = 5.83 %, its noise √2 · 1 %: √((0.0583² - 2 · 0.01²) / 2) = 4.0 %.
    found = set_up_scatter([again(1.06, "a"), again(1.06, "b")])
    assert found.standard == pytest.approx(0.0400, abs=0.0002)
    assert "4.0 % at least: so far off were holes read again" in found.words()
    # A hole that comes back as it was proves nothing about setting up anew.
    still = set_up_scatter([again(1.0, "a"), again(1.0, "b")])
    assert still == set_up_scatter([plain])


# -- facts of the trade: common practice, no source -------------------------------------


def test_18_inches_and_45_centimetres_are_one_distance_to_the_nearest_inch() -> None:
    """Common practice, no source."""
    metres = parse_length("45", LengthUnit.CM)
    assert round(metres / LengthUnit.INCH.metres) == 18
    assert abs(parse_length("18 in", LengthUnit.CM) - metres) < LengthUnit.INCH.metres / 2


def test_averages_over_many_holes_compare_better_than_a_single_spot() -> None:
    """Common practice, no source: 25 holes resolve a fifth of what one spot does."""
    rng = np.random.default_rng(5)
    board, spot = [], []
    for _ in range(400):
        one, other = (shape() * (1 + 0.02 * rng.standard_normal(25)) for _ in range(2))
        pair = compare(survey(one, "a"), survey(other, "b"))
        assert pair is not None
        board.append(pair.ratio)
        spot.append(one[12] / other[12])
    assert np.std(spot) / np.std(board) == pytest.approx(5, rel=0.15)


def test_a_quarter_below_the_best_and_a_twentieth_below_bare() -> None:
    """Common practice, no source: 0.75 of the best and 0.95 of bare put bare at 0.789."""
    level = 0.75 / 0.95
    surveys = [
        survey(shape(), "best"), survey(shape() * level, "bare"), survey(shape() * 0.75, "worse"),
    ]  # fmt: skip
    to_best = {row.key: row.ratio for row in ranking(surveys).rows}
    to_bare = {row.key: row.ratio for row in ranking(surveys, base="bare").rows}
    assert to_best["worse"] == pytest.approx(0.75)
    assert to_bare["worse"] == pytest.approx(0.95)
    assert 1 - to_best["bare"] == pytest.approx(0.21, abs=0.005)
    assert to_bare["best"] == pytest.approx(1 / to_best["bare"])
