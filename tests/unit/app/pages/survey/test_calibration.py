"""When what was calibrated still holds for the plan as it stands."""

from __future__ import annotations

import dataclasses
import math
from typing import Any, cast

import pytest

from planner.app.pages.survey.calibration import Answer, Wish, fit_job, value_text
from planner.estimate.calibrate_model import Quantity
from planner.estimate.calibrate_result import Fitted
from planner.estimate.evaluate import Cache
from planner.plan import edits
from planner.plan.costs import Costs
from planner.plan.lining import Lining
from planner.plan.target import PpfdTarget
from tests.e2e.shell import small_plan
from tests.unit.app.pages.survey.surveying import invented

BOARD = Lining(key="board", name="Board", reflectance=0.8, low=0.7, high=0.9)


def test_pieces_of_a_fit_are_kept_for_the_next(monkeypatch: pytest.MonkeyPatch) -> None:
    """A cache too small for them had every run of every fit made anew."""
    plan = edits.line_all_walls(small_plan(), BOARD)
    wish = Wish((invented(plan),), flux=False, profile="as it is", reflectance=("board",))
    made: list[object] = []
    get = Cache.get

    def counted(self: Cache, key: Any, make: Any) -> Any:
        def noted() -> Any:
            made.append(key)
            return make()

        return get(self, key, noted)

    monkeypatch.setattr(Cache, "get", counted)
    kept: dict[str, Cache] = {}
    counts = []
    for _ in range(2):
        made.clear()
        fit_job(plan, wish, kept)(lambda _fraction: None, lambda: False)
        counts.append(len(made))
    assert counts[0] > 10
    assert counts[1] == 0


def test_a_beam_is_told_by_its_angle() -> None:
    """Half the peak at 60° for cos θ, so 120°; at 45° for cos² θ, so 90°; even light: 180°."""
    one = Fitted("Beam of 'X'", Quantity.EXPONENT, "x", 1.0, 0.05, 1.0, "", False, True, "")
    low = 2 * math.degrees(math.acos(0.5 ** (1 / (1 + 1.96 * 0.05))))
    high = 2 * math.degrees(math.acos(0.5 ** (1 / (1 - 1.96 * 0.05))))
    assert value_text(one) == f"120.0°, {low:.1f} to {high:.1f}"
    at_most = dataclasses.replace(one, value=0.0, standard_error=1.0, at_bound=True, start=1.0)
    # Its exponent is at most 1.645: the beam at least 2 acos(½^(1/1.645)) = 98°.
    assert value_text(at_most) == "at least 98°, at its bound"


def answer() -> Answer:
    plan = edits.changed(
        edits.line_all_walls(small_plan(), BOARD), target=PpfdTarget(low=100, high=200)
    )
    return Answer(plan, Wish(()), cast("Any", None))


@pytest.mark.parametrize(
    "parts",
    [{"costs": Costs(price_per_kwh=0.3)}, {"target": None}, {"note": "x"},
     {"photoperiod_hours": 10.0}],
    ids=lambda parts: next(iter(parts)),
)  # fmt: skip
def test_what_leaves_the_light_alone_leaves_a_calibration_good(parts: dict[str, Any]) -> None:
    made = answer()
    assert made.fits(edits.changed(made.plan, **parts))


def test_other_light_and_other_doubts_make_it_stale() -> None:
    made = answer()
    assert not made.fits(edits.change_lamp(made.plan, 0, hanging_height=0.33))
    assert not made.fits(edits.change_lining(made.plan, BOARD.model_copy(update={"low": 0.6})))
