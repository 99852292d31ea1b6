"""The independent count: closed forms, maps of others, and what it says of a wrong map."""

from __future__ import annotations

import json
import math
import re
from dataclasses import replace

import numpy as np
import pytest

from planner.estimate.evaluate import Cancelled, recount
from planner.plan import edits
from planner.reports.content import recount_sentence
from tests.physics.rooms import box, corner_factor, lamp, light, panel, plan
from tests.physics.test_reference_maps import FOLDER, plan_of


def agrees(found: float, expected: float, error: float) -> bool:
    return abs(found - expected) < 4 * error + 1e-9


def test_black_walls() -> None:
    """A Lambertian point straight over a corner of the floor gives it its view factor.

    A point with I = Φ cos θ / π sends the configuration factor of the floor as seen from an
    element that faces it.
    """
    found = recount(plan(box(0.8, 0.5), 0.6, [lamp((0.3, 0.2), 0.45)]))
    assert found is not None
    factor = sum(corner_factor(a, b, 0.45) for a in (0.3, 0.5) for b in (0.2, 0.3))
    assert agrees(found.flux, 100 * factor, found.standard_error)
    assert found.standard_error < 0.003 * found.flux


@pytest.mark.parametrize(
    "name", ["s01_cabinet_white", "s02_tent60_film", "s08_all_walls_different"]
)
def test_maps_of_other_codes(name: str) -> None:
    case = json.loads((FOLDER / f"{name}.json").read_text(encoding="utf-8"))
    what = plan_of(case["scene"])
    found = recount(what)
    assert found is not None
    expected = float(np.mean(case["map"])) * what.space.area
    theirs = 0.0005 * expected
    assert agrees(found.flux, expected, math.hypot(found.standard_error, theirs))


def test_mirrors_that_keep_all() -> None:
    """Under flat mirrors of 1 a black canopy gets every photon."""
    found = recount(plan(box(0.4, 0.6), 0.8, [lamp((0.1, 0.2), 0.5)], walls=(0.0, 1.0)))
    assert found is not None
    assert found.flux == pytest.approx(100, rel=1e-12)


def test_bands_and_concave_corners_agree_with_the_map() -> None:
    ell = ((0.0, 0.0), (1.0, 0.0), (1.0, 0.5), (0.5, 0.5), (0.5, 1.0), (0.0, 1.0))
    banded = ((0.4, (0.1, 0.0)), (None, (0.4, 0.5)))
    what = plan(
        ell,
        1.0,
        [lamp((0.3, 0.3), 0.7, body=panel(0.3, 0.2))],
        walls=[(0.8, 0.0), banded, (0.0, 0.9), (0.8, 0.0), banded, (0.3, 0.3)],
        ceiling=(0.8, 0.0),
        canopy=0.3,
        canopy_height=0.1,
    )
    counted = light(what).with_recount(recount(what))
    assert counted.recount is not None
    assert counted.recount.beyond_chance(counted.figures) < 0.002
    assert "agree" in recount_sentence(counted)


def test_a_wrong_map_is_told() -> None:
    what = plan(box(0.6, 0.6), 0.8, [lamp((0.3, 0.3), 0.6)], walls=(0.5, 0.3))
    right = light(what)
    wrong = replace(right, figures=replace(right.figures, mean=1.05 * right.figures.mean))
    count = recount(what)
    assert count is not None
    told = wrong.with_recount(count)
    assert told.numeric_error is not None
    assert 0.04 < told.numeric_error < 0.06
    assert re.search(r"disagree: the map holds (4\.[7-9]|5\.[0-3]) % more", recount_sentence(told))
    assert right.with_recount(count).numeric_error == right.numeric_error


def test_same_plan_same_count_and_a_dark_plan_none() -> None:
    what = plan(box(0.6, 0.6), 0.8, [lamp((0.3, 0.3), 0.6)], walls=(0.5, 0.3))
    assert recount(what, photons=1000) == recount(what, photons=1000)
    assert recount(what, photons=1000) != recount(what, photons=1000, seed=2)
    assert recount(edits.changed(what, lamps=())) is None


def test_it_can_be_stopped() -> None:
    what = plan(box(0.6, 0.6), 0.8, [lamp((0.3, 0.3), 0.6)], walls=(0.5, 0.3))
    with pytest.raises(Cancelled):
        recount(what, cancelled=lambda: True)
