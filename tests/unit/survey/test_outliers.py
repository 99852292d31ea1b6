"""Readings that cannot be: said first, out of all figures, and hardly ever called so in vain."""

from __future__ import annotations

import numpy as np
import pytest

from planner.plan.survey import Reading, Survey, SurveyGrid
from planner.survey.layout import holes
from planner.survey.outliers import outliers
from planner.survey.statistics import residuals, summarise, without

SQUARE = ((0.0, 0.0), (0.6, 0.0), (0.6, 0.6), (0.0, 0.6))
DRAWS = 1500


def board(rows: int, columns: int) -> np.ndarray:
    return np.array(holes(SurveyGrid(rows=rows, columns=columns), SQUARE))


def light(points: np.ndarray, middle: tuple[float, float], steep: float) -> np.ndarray:
    return np.array(300 / (1 + steep * ((points - middle) ** 2).sum(axis=1)))


def read(points: np.ndarray, values: np.ndarray) -> Survey:
    readings = tuple(Reading(hole=k, value=float(v)) for k, v in enumerate(values, start=1))
    return Survey(key="s", points=tuple(map(tuple, points.tolist())), readings=readings)


@pytest.mark.parametrize("size", [(2, 3), (3, 3), (3, 5), (5, 5)])
@pytest.mark.parametrize("noise", [0.02, 0.05])
def test_in_a_clean_survey_hardly_ever_is_a_reading_called_so(
    size: tuple[int, int], noise: float
) -> None:
    """Less than one clean survey of a hundred, and each mistyped tenfold is found.

    The estimate is off by a factor and, on the whole width, by a fifth more.
    """
    points, random = board(*size), np.random.default_rng(7)
    wrong = found = 0
    for _ in range(DRAWS):
        told = light(points, tuple(random.uniform(0.1, 0.5, 2)), random.uniform(1, 14))
        gain = random.uniform(0.8, 1.2) * (1 + 0.33 * (points[:, 0] - 0.3))
        values = told * gain * np.exp(noise * random.standard_normal(len(points)))
        wrong += bool(outliers(points, values, told, 0.02).any())
        hole = random.integers(len(points))
        values[hole] *= random.choice([10.0, 0.1])
        found += bool(outliers(points, values, told, 0.02)[hole])
    assert wrong < 0.01 * DRAWS
    assert found > 0.95 * DRAWS


@pytest.mark.parametrize("times", [4.0, 0.25])
@pytest.mark.parametrize("hole", [0, 7, 12])
def test_a_bright_spot_or_shadow_that_is_expected_is_none(times: float, hole: int) -> None:
    points, random = board(5, 5), np.random.default_rng(3)
    told = light(points, (0.3, 0.3), 3.0)
    told[hole] *= times
    for _ in range(200):
        values = 1.1 * told * np.exp(0.03 * random.standard_normal(25))
        assert not outliers(points, values, told, 0.02).any()


def test_a_side_that_is_darker_than_estimated_is_no_slip() -> None:
    """A wall that returns half: the estimate is wrong there, all its readings agree."""
    points = board(5, 5)
    told = light(points, (0.3, 0.3), 3.0)
    values = np.where(points[:, 0] < 0.15, 0.5, 1.0) * told
    assert not outliers(points, values, told, 0.02).any()


def test_a_spot_that_the_estimate_alone_has_is_no_slip_of_the_reading() -> None:
    """The reading agrees with those beside it: it is the estimate that is odd."""
    points = board(5, 5)
    values = light(points, (0.3, 0.3), 3.0)
    told = values.copy()
    told[12] *= 5.0
    assert not outliers(points, values, told, 0.02).any()


def test_one_mistyped_reading_is_said_first_and_rules_no_figure() -> None:
    points = board(3, 5)
    told = light(points, (0.3, 0.3), 12.0) / 10
    clean = read(points, 1.02 * told)
    values = 1.02 * told
    values[7] = 999.0
    spoilt = read(points, values)
    found, wanted = residuals(spoilt, told), residuals(without(clean, {8}), told)
    assert found is not None
    assert wanted is not None
    assert found.odd == {8}
    words = found.words()
    assert words[0].startswith("The reading at hole 8, 999 (30 estimated), is far from its")
    assert words[0].endswith("read it again. The rest is told without it.")
    assert words[1:] == wanted.words()
    for name in ("bias", "rms", "mean_error", "relative_bias", "scatter", "r2"):
        assert getattr(found, name) == pytest.approx(getattr(wanted, name)), name
    assert not found.poor
    summary = summarise(without(spoilt, found.odd))
    assert summary is not None
    assert summary.maximum < 40


def test_a_zero_where_there_is_light_is_a_slip_too() -> None:
    points = board(3, 5)
    told = light(points, (0.3, 0.3), 3.0)
    values = told.copy()
    values[4] = 0.0
    assert np.flatnonzero(outliers(points, values, told, 0.02)).tolist() == [4]
