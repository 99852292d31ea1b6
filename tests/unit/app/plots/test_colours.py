"""Levels of the colours of light."""

from __future__ import annotations

import math

import numpy as np
import pytest

from planner.app.plots.colours import INSIDE_RGB, UNDER_RGB, table, washed_table
from planner.light.cellmap import levels_of


def test_colours_may_run_over_the_light_present() -> None:
    field = np.array([[152.0, np.nan], [198.0, 170.0]])
    assert levels_of(field) == (0.0, 200.0)
    # Steps of 10 cut the 46 between lowest and highest in about eight: 150 to 200.
    assert levels_of(field, stretched=True) == (150.0, 200.0)
    even = np.full((2, 2), 100.0)
    low, high = levels_of(even, stretched=True)
    assert low <= 90 < 100 <= high


def hue_at(value: float, doubt: float) -> np.ndarray:
    """The tint at a value of 0 to 400 for a band of 100 to 300, its grey taken off."""
    washed = washed_table("cividis", (0.0, 400.0), (100.0, 300.0), 401, doubt=doubt)
    grey = table("cividis", 401)[:, :3].astype(float) @ np.array([0.2126, 0.7152, 0.0722])
    k = round(value)
    return np.asarray((washed[k, :3] - 0.5 * grey[k]) / 0.5)


def test_without_doubt_the_band_has_an_edge() -> None:
    assert hue_at(99, 0.0) == pytest.approx(UNDER_RGB, abs=4)
    assert hue_at(101, 0.0) == pytest.approx(INSIDE_RGB, abs=4)


def test_with_doubt_hues_mix_as_the_odds_do() -> None:
    # At 80 with 12.5 % the edge of 100 is two standard uncertainties away: Φ(2) = 0.977.
    for value, z in ((80.0, 2.0), (100.0, 0.0), (100 / 1.125, 1.0)):
        under = 0.5 * (1 + math.erf(z / math.sqrt(2)))
        expected = under * np.array(UNDER_RGB) + (1 - under) * np.array(INSIDE_RGB)
        assert hue_at(value, 0.125) == pytest.approx(expected, abs=6)


def test_on_a_dark_ground_the_map_is_darker_and_keeps_its_order() -> None:
    bright, dim = table("cividis").astype(float), table("cividis", dimmed=True).astype(float)
    assert (dim[:, :3] <= bright[:, :3]).all()
    # The brightest colour, 255 of 255 in red as it is shipped, no longer reaches nine tenths.
    assert bright[-1, :3].max() >= 250
    assert dim[-1, :3].max() < 0.9 * 255
    weights = np.array([0.2126, 0.7152, 0.0722])
    assert (np.diff(dim[:, :3] @ weights) > -1.0).all(), "brighter still means more"
