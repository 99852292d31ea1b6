"""Answers against brute force on the same core, and against sums done by hand."""

from __future__ import annotations

import itertools
from typing import Any

import numpy as np
import pytest

from planner.estimate.evaluate import Cache, Cancelled, evaluate
from planner.estimate.find import (
    SEARCH,
    Aim,
    FindError,
    Found,
    Limit,
    find_height_and_output,
    find_photoperiod,
)
from planner.estimate.find_places import find_places
from planner.estimate.result import EstimateOptions, Figures, Quality
from planner.plan import edits
from planner.plan.plan import Plan
from planner.plan.target import DliTarget, PpfdTarget
from planner.units import LengthUnit, in_unit
from tests.physics.rooms import box, lamp, panel, plan
from tests.unit.reports.sample_estimate import sample_plan

OPTIONS = EstimateOptions(cells=(12, 12), quality=Quality.PREVIEW)
CAREFUL = EstimateOptions(cells=SEARCH.cells, quality=Quality.DEFAULT)
"""Near an end the quick estimate cannot tell which height is more even; default can."""


def brute_force(what: Plan, low: float, aim: Aim) -> tuple[float, float]:
    """Best min/mean among 41 heights at which full output reaches ``low``, and where."""
    cache, best = Cache(), (0.0, 0.0)
    for height in np.linspace(0.05, what.space.height - what.canopy.height, 41):
        figures = evaluate(
            edits.change_lamp(what, 0, hanging_height=float(height)), CAREFUL, cache=cache
        ).figures
        reach = figures.mean if aim is Aim.MEAN else figures.minimum
        if reach >= low and figures.min_over_mean is not None:
            best = max(best, (figures.min_over_mean, float(height)))
    return best


def light(what: Plan, cache: Cache | None = None) -> Figures:
    return evaluate(what, SEARCH, cache=cache).figures


@pytest.mark.parametrize(
    ("low", "high", "aim", "limit"),
    [
        (150, 200, Aim.MEAN, Limit.LIGHT),
        (60, 80, Aim.MEAN, Limit.CEILING),
        (90, 120, Aim.MINIMUM, Limit.LIGHT),
    ],
)
def test_no_height_that_is_bright_enough_is_more_even(
    low: float, high: float, aim: Aim, limit: Limit
) -> None:
    what = sample_plan()
    found = find_height_and_output(what, PpfdTarget(low=low, high=high), aim, CAREFUL)
    figures = found.estimate.figures
    reach = figures.mean if aim is Aim.MEAN else figures.minimum
    best, where = brute_force(what, low, aim)
    assert found.met
    assert low * 0.998 <= reach <= high
    assert figures.min_over_mean == pytest.approx(best, abs=0.012)
    assert found.plan.lamps[0].hanging_height == pytest.approx(where, abs=0.03)
    assert found.limit is limit
    assert figures.mean == pytest.approx(evaluate(found.plan, CAREFUL).figures.mean)
    height = found.plan.lamps[0].hanging_height
    assert f"{height * 100:.1f}".removesuffix(".0") + " cm" in in_unit(found.words, LengthUnit.CM)
    assert " in above the canopy" in in_unit(found.words, LengthUnit.INCH)


def test_output_puts_the_mean_on_the_middle_of_the_band() -> None:
    found = find_height_and_output(sample_plan(), PpfdTarget(low=60, high=80), options=OPTIONS)
    assert found.estimate.figures.mean == pytest.approx(70, rel=1e-6)
    assert 0 < found.plan.lamps[0].output_percent < 100


def test_the_band_of_a_dli() -> None:
    """DLI 3 to 4 in 14 h is 3/(14·0.0036) = 59.5 to 79.4 µmol/m²/s; its middle is 69.4."""
    found = find_height_and_output(sample_plan(), DliTarget(low=3, high=4), options=OPTIONS)
    assert found.estimate.figures.mean == pytest.approx(69.44, abs=0.05)
    assert found.estimate.figures.dli == pytest.approx(3.5, rel=1e-3)


def test_what_cannot_be_met_says_what_would() -> None:
    """Black walls: no more than 100 µmol/s on 0.3 m², 333 µmol/m²/s, whatever the height."""
    what = edits.line_all_walls(sample_plan(floor="open"), sample_plan().linings[0])
    found = find_height_and_output(what, PpfdTarget(low=1000, high=1200), options=OPTIONS)
    assert not found.met
    assert found.limit is Limit.LIGHT
    assert found.plan.lamps[0].output_percent == 100
    reach = found.estimate.figures.mean
    flux = 100 * 1000 / reach
    assert f"{flux:.0f} µmol/s of photon flux instead of 100" in found.words
    dli = find_height_and_output(what, DliTarget(low=20, high=24), options=OPTIONS)
    # 20 mol in 14 h is 397; in more hours less is needed: 14·397/reach.
    hours = 14 * 20 / (14 * 0.0036) / dli.estimate.figures.mean
    assert f"{hours:.1f} h of light a day instead of 14" in dli.words


@pytest.mark.parametrize(
    ("parts", "said"),
    [
        ({"lamps": ()}, "hang one first"),
        ({"target": None}, "Set a target first"),
        ({"target": DliTarget(low=1, high=2), "photoperiod_hours": 0}, "above 0 h"),
    ],
)
def test_what_cannot_be_asked(parts: dict[str, Any], said: str) -> None:
    with pytest.raises(FindError, match=said):
        find_height_and_output(sample_plan(**parts))


def test_no_room_to_hang_in() -> None:
    low = edits.change_lamp(sample_plan(), 0, hanging_height=0.01)
    with pytest.raises(FindError, match=r"3.cm for the lamp"):
        find_height_and_output(edits.set_height(low, 0.23))


def test_cancel_and_progress() -> None:
    with pytest.raises(Cancelled):
        find_height_and_output(sample_plan(), cancelled=lambda: True)
    seen: list[float] = []
    find_height_and_output(sample_plan(), options=OPTIONS, progress=seen.append)
    assert seen[-1] == 1.0
    assert all(0 <= fraction <= 1 for fraction in seen)


# -- hours ------------------------------------------------------------------------------


def test_hours_for_a_dli() -> None:
    what = sample_plan()
    mean = evaluate(what, OPTIONS).figures.mean
    found = find_photoperiod(what, 6, OPTIONS)
    assert found.met
    assert found.plan.photoperiod_hours == pytest.approx(6e6 / 3600 / mean)
    assert found.estimate.figures.dli == pytest.approx(6)


def test_more_hours_than_a_day_leaves() -> None:
    what = edits.change_lamp(sample_plan(), 0, output_percent=20)
    mean = evaluate(what, OPTIONS).figures.mean
    found = find_photoperiod(what, 12, OPTIONS)
    assert not found.met
    assert found.limit is Limit.DARK_HOURS
    assert found.plan.photoperiod_hours == 20
    # 12 mol in 20 h: 12e6 / 72000 = 166.7 µmol/m²/s.
    assert f"from {mean:.0f} to 167 µmol m⁻² s⁻¹" in found.words
    with pytest.raises(FindError, match="above 0 mol"):
        find_photoperiod(what, 0)


# -- places -----------------------------------------------------------------------------


def places(found: Found) -> list[tuple[float, float]]:
    return sorted((one.x, one.y) for one in found.plan.lamps)


def test_one_lamp_goes_to_the_middle_of_a_square() -> None:
    what = plan(box(0.8, 0.8), 1.2, [lamp((0.2, 0.3), 0.4, body=panel(0.1, 0.1))], walls=(0.5, 0))
    found = find_places(what, 1, 60, OPTIONS)
    assert found.met
    assert places(found)[0] == pytest.approx((0.4, 0.4), abs=0.03)
    assert found.estimate.figures.mean == pytest.approx(60, rel=1e-6)


def test_two_lamps_are_at_least_as_even_as_any_pair_on_a_grid() -> None:
    one = lamp((0.2, 0.3), 0.3, body=panel(0.1, 0.1))
    what = plan(box(1.0, 0.6), 1.0, [one], walls=(0.3, 0))
    found = find_places(what, 2, 50, OPTIONS)
    cache, best = Cache(), 0.0
    for x1, x2, y in itertools.product((0.15, 0.2, 0.25, 0.3), (0.7, 0.75, 0.8, 0.85), (0.3,)):
        pair = tuple(
            one.model_copy(update={"x": x, "y": y, "output_percent": 50}) for x in (x1, x2)
        )
        figures = light(edits.changed(what, lamps=pair), cache)
        best = max(best, figures.min_over_mean or 0.0)
    # The lowest of 144 cells is known to a percent or so at preview quality.
    assert (found.estimate.figures.min_over_mean or 0.0) >= best - 0.01


def test_places_that_cannot_be() -> None:
    what = sample_plan()
    with pytest.raises(FindError, match="1 to 6 lamps, not for 7"):
        find_places(what, 7, 100)
    with pytest.raises(FindError, match="above 0"):
        find_places(what, 1, 0)
    with pytest.raises(FindError, match="do not fit"):
        # Six of 0.3 x 0.2 m are 0.36 m², and the footprint has 0.30.
        find_places(what, 6, 100)
    with pytest.raises(FindError, match="Hang one lamp first"):
        find_places(sample_plan(lamps=()), 1, 100)


def test_too_few_lamps_for_the_mean_say_how_much_is_missing() -> None:
    found = find_places(sample_plan(), 1, 1000, OPTIONS)
    assert not found.met
    flux = 100 * 1000 / found.estimate.figures.mean
    assert f"{flux:.0f} µmol/s" in found.words
