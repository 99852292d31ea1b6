"""Photosynthetic quantities and figures of evenness against published numbers."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.metrics.figures import (
    band_shares,
    daily_light_integral,
    efficacy,
    evenness,
    kilowatt_hours_per_day,
    utilisation,
)


@pytest.mark.parametrize(
    ("ppfd", "hours", "dli"),
    # DLI = PPFD · h · 3600 / 10⁶ (ANSI/ASABE S640, from memory).
    [
        (38.1, 12, 1.646),  # J. Faust, Light Management I, as quoted by a sensor maker
        (215, 16, 12.384),  # setting of Pennisi et al. (2019), Sci. Rep. 9:14127
        (155, 20, 11.16),  # setting of Rahman et al. (2021), Plants 10, 344
        (100, 16, 5.76),
        (250, 16, 14.40),
        (600, 18, 38.88),
        (1, 1, 0.0036),
        (1, 24, 0.0864),
    ],
)
def test_daily_light_integral(ppfd: float, hours: float, dli: float) -> None:
    assert daily_light_integral(ppfd, hours) == pytest.approx(dli, rel=2e-4)


def test_no_light_at_all_in_no_time() -> None:
    assert daily_light_integral(500, 0) == 0


# Catch cans of the manual of an open sprinkler evaluation package.
CANS = np.array([47, 42, 45, 24, 13, 26, 33, 34, 27, 30, 40, 44, 32, 12, 12], dtype=float)
TOY = np.array([300, 400, 300, 400, 600, 400, 300, 400, 300], dtype=float)


@pytest.mark.parametrize(
    ("values", "mean", "low_mean", "low_high", "cv"),
    # EN 12464-1: U0 = min/mean; diversity min/max; CV with the population's deviation.
    [
        (CANS, 30.7333, 0.390456, 0.255319, 0.373165),
        (TOY, 377.778, 0.794118, 0.5, 0.242536),
    ],
)
def test_evenness(
    values: np.ndarray, mean: float, low_mean: float, low_high: float, cv: float
) -> None:
    found = evenness(values, np.ones(values.size))
    assert found.mean == pytest.approx(mean, rel=2e-6)
    assert found.min_over_mean == pytest.approx(low_mean, abs=1e-6)
    assert found.min_over_max == pytest.approx(low_high, abs=1e-6)
    assert found.cv == pytest.approx(cv, abs=1e-6)


def test_evenness_weighs_by_area() -> None:
    # A cell twice as large counts as two.
    weighted = evenness(np.array([100.0, 400.0]), np.array([2.0, 1.0]))
    counted = evenness(np.array([100.0, 100.0, 400.0]), np.ones(3))
    assert weighted.mean == pytest.approx(200.0)
    assert weighted.cv == pytest.approx(counted.cv)


def test_evenness_of_the_dark_has_no_ratios() -> None:
    found = evenness(np.zeros(4), np.ones(4))
    assert (found.mean, found.min_over_mean, found.min_over_max, found.cv) == (0, None, None, None)
    assert evenness(np.zeros(0), np.zeros(0)).mean == 0


def test_share_inside_a_band() -> None:
    values, areas = np.array([99.0, 100.0, 150.0, 200.0, 201.0]), np.array([1.0, 2, 3, 2, 2])
    assert band_shares(values, areas, 100, 200) == pytest.approx((0.1, 0.7, 0.2))


@given(st.lists(st.floats(0, 1000), min_size=1, max_size=20), st.floats(0, 500), st.floats(0, 500))
def test_shares_of_a_band_add_up(values: list[float], low: float, more: float) -> None:
    shares = band_shares(np.array(values), np.ones(len(values)), low, low + more)
    assert sum(shares) == pytest.approx(1.0)
    assert min(shares) >= -1e-12


def test_energy() -> None:
    assert kilowatt_hours_per_day(100, 16) == pytest.approx(1.6)
    assert efficacy(250, 100) == pytest.approx(2.5)
    assert efficacy(250, 0) is None
    # P/A = E/(u · efficacy): 200 µmol m⁻² s⁻¹ at 2.5 µmol/J and u = 0.8 take 100 W/m².
    assert utilisation(200, 1.0, 100 * 2.5) == pytest.approx(0.8)
    assert utilisation(200, 1.0, 0) is None
