"""Levels of the colours of light."""

from __future__ import annotations

import numpy as np

from planner.app.plots.colours import levels_of


def test_colours_may_run_over_the_light_present() -> None:
    field = np.array([[152.0, np.nan], [198.0, 170.0]])
    assert levels_of(field) == (0.0, 200.0)
    # Steps of 10 cut the 46 between lowest and highest in about eight: 150 to 200.
    assert levels_of(field, stretched=True) == (150.0, 200.0)
    even = np.full((2, 2), 100.0)
    low, high = levels_of(even, stretched=True)
    assert low <= 90 < 100 <= high
