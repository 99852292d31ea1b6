"""When what was calibrated still holds for the plan as it stands."""

from __future__ import annotations

from typing import Any, cast

import pytest

from planner.app.pages.survey.calibration import Answer, Wish
from planner.plan import edits
from planner.plan.costs import Costs
from planner.plan.lining import Lining
from planner.plan.target import PpfdTarget
from tests.e2e.shell import small_plan

BOARD = Lining(key="board", name="Board", reflectance=0.8, low=0.7, high=0.9)


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
