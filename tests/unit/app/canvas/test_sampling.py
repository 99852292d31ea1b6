from __future__ import annotations

import math

import numpy as np
import pytest

from planner.app.canvas.items import (
    default_section,
    profile_along,
    value_at,
)
from planner.plan.space import contains
from tests.unit.app.canvas.scenes import L_SHAPE, light_of, plan_of


def test_value_between_cell_centres_follows_the_plane() -> None:
    estimate = light_of(plan_of())
    assert value_at(estimate, 0.31, 0.77) == pytest.approx(100 + 31 + 38.5)


def test_no_value_outside_the_footprint() -> None:
    estimate = light_of(plan_of(L_SHAPE))
    assert value_at(estimate, 0.9, 0.8) is None
    assert value_at(estimate, -0.1, 0.2) is None
    assert value_at(estimate, 0.3, 0.8) == pytest.approx(100 + 30 + 40, abs=2)


def test_profile_measures_from_a_and_breaks_where_there_is_no_floor() -> None:
    estimate = light_of(plan_of(L_SHAPE))
    distance, ppfd = profile_along(estimate, ((0.0, 0.7), (1.2, 0.7)), 13)
    assert distance[0] == pytest.approx(0, abs=1e-5)
    assert distance[-1] == pytest.approx(1.2, abs=1e-5)
    assert np.isfinite(ppfd[:6]).all()
    assert np.isnan(ppfd[7:]).all()
    assert ppfd[3] == pytest.approx(100 + 30 + 35, abs=1)


def test_default_section_runs_level_through_the_middle() -> None:
    (xa, ya), (xb, yb) = default_section((0.2, 0.0, 1.0, 0.6))
    assert (xa, xb) == (0.2, 1.0)
    assert math.isclose(ya, 0.3)
    assert ya == yb


def test_inside_is_what_the_plan_calls_inside() -> None:
    """All points at once as one by one, on edges and corners of an L too."""
    plan = plan_of(L_SHAPE)
    estimate = light_of(plan)
    across, deep = np.linspace(-0.1, 1.3, 29), np.linspace(-0.1, 1, 23)
    xs, ys = (part.ravel() for part in np.meshgrid(across, deep))
    points = zip(xs.tolist(), ys.tolist(), strict=True)
    expected = [contains(plan.space.footprint, x, y) for x, y in points]
    known = np.isfinite(estimate.at(xs, ys))
    assert not (known & ~np.array(expected)).any()
    inner = np.array(expected) & estimate.map.covers(np.column_stack([xs, ys]))
    assert (known == inner).all()
