"""Between two questions whether to stop there is never much work, whatever the plan."""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest

from planner.estimate.evaluate import Cancelled, evaluate
from planner.estimate.result import EstimateOptions, Quality
from planner.light import bright
from planner.light.emission import CosinePower
from planner.light.prism import Prism
from tests.physics.crowded import PLANS

MOST_AT_ONCE = 4_000_000
"""Pairs of ray and plane, of lamp point and receiver, or of corner of a spot and receiver.
A pair takes 5 to 20 ns (timed with ``-m bench``), so that this is well below 0.3 s."""


class Work:
    """Counts pairs since it was last asked whether to stop."""

    def __init__(self, monkeypatch: pytest.MonkeyPatch) -> None:
        self.now = self.most = self.asked = 0
        first_hit, blocked = Prism.first_hit, Prism.blocked
        factors = bright._wall_factors
        intensity, contains = CosinePower.intensity, Prism.contains

        def counted_hit(prism: Prism, origin: Any, direction: Any) -> Any:
            self.now += origin.shape[1] * (prism.wall_count + 2 + len(prism.boxes))
            return first_hit(prism, origin, direction)

        def counted_blocked(prism: Prism, crowd: Any, origin: Any, *rest: Any) -> Any:
            self.now += origin.shape[1] * (prism.wall_count + len(crowd.boxes))
            return blocked(prism, crowd, origin, *rest)

        def counted_intensity(profile: CosinePower, cosine: Any, *rest: Any) -> Any:
            self.now += np.size(cosine)
            return intensity(profile, cosine, *rest)

        def counted_inside(prism: Prism, x: Any, y: Any) -> Any:
            self.now += np.size(x) * prism.wall_count
            return contains(prism, x, y)

        def counted_factors(surfaces: Any, texels: Any, receivers: Any) -> Any:
            self.now += 4 * len(texels) * receivers.shape[1]
            return factors(surfaces, texels, receivers)

        monkeypatch.setattr(bright, "_wall_factors", counted_factors)
        monkeypatch.setattr(Prism, "first_hit", counted_hit)
        monkeypatch.setattr(Prism, "blocked", counted_blocked)
        monkeypatch.setattr(CosinePower, "intensity", counted_intensity)
        monkeypatch.setattr(Prism, "contains", counted_inside)

    def cancelled(self) -> bool:
        """Never stops."""
        self.most, self.now = max(self.most, self.now), 0
        self.asked += 1
        return False


@pytest.mark.parametrize(
    "name",
    [
        "40-corner star, 24 bars",
        "40-corner star with thin rays",
        "24 bars with housings",
        "24 pots",
        "a bare panel",
    ],
)
def test_no_long_way_between_two_questions(name: str, monkeypatch: pytest.MonkeyPatch) -> None:
    work = Work(monkeypatch)
    evaluate(PLANS[name], EstimateOptions(quality=Quality.DEFAULT), cancelled=work.cancelled)
    work.cancelled()
    assert 100_000 < work.most <= MOST_AT_ONCE
    assert work.asked > 50


@pytest.mark.parametrize("after", [2, 9, 40, 90])
def test_a_star_with_many_bars_stops_where_it_is_told(after: int) -> None:
    asked = 0

    def cancelled() -> bool:
        nonlocal asked
        asked += 1
        return asked > after

    with pytest.raises(Cancelled):
        evaluate(PLANS["40-corner star, 24 bars"], cancelled=cancelled)
    assert asked == after + 1
