"""What an estimate says of its own error is measured where it arises; bars close over leaves."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest

from planner.estimate import effort
from planner.estimate.evaluate import _geometry, _paths
from planner.estimate.result import Estimate, EstimateOptions, Quality
from planner.estimate.scene import build_scene
from planner.light.division import Coarser, in_doubt
from planner.light.exchange import response
from planner.light.paths import Mirrors
from planner.light.prism import FloatArray
from planner.plan.lamp import BarsBody
from planner.plan.plan import Plan
from tests.physics.rooms import box, lamp, light, plan, rms_and_mean

WHITE = (0.95, 0.0)
LOW_ROOM = plan(
    box(3.0, 2.0), 0.25, [lamp((0.8, 0.7), 0.15, ppf=300.0)],
    walls=WHITE, ceiling=WHITE, canopy=0.5, canopy_height=0.05,
)  # fmt: skip
AT_A_WALL = plan(
    box(2.0, 2.0), 2.0, [lamp((1.0, 0.02), 1.0, ppf=300.0)], walls=WHITE, ceiling=WHITE,
    canopy=0.3, canopy_height=0.2,
)  # fmt: skip
TENT = plan(
    box(0.8, 0.8), 1.2, [lamp((0.4, 0.4), 0.5, ppf=300.0)], walls=WHITE, ceiling=WHITE, canopy=0.1,
)  # fmt: skip


@pytest.mark.parametrize("what", [LOW_ROOM, AT_A_WALL, TENT], ids=["low", "at a wall", "tent"])
def test_the_division_states_what_a_finer_one_finds(
    what: Plan, monkeypatch: pytest.MonkeyPatch
) -> None:
    found = light(what, (16, 16))
    # Four times as many patches and rays tell nearly without such error.
    usual = effort._EFFORTS[Quality.DEFAULT]
    finer = replace(usual, patches=1600, exchange_rays=640, gather_rays=1024)
    monkeypatch.setitem(effort._EFFORTS, Quality.DEFAULT, finer)
    off, _ = rms_and_mean(found.ppfd, light(what, (16, 16)).ppfd)
    stated = found.numeric_error
    assert stated is not None
    # With a share of the reflected light alone it said a third of it in the low room.
    assert 0.75 * off < stated < 4 * off + 0.005


def test_chance_of_the_exchange_is_what_seeds_differ_by() -> None:
    scene = build_scene(LOW_ROOM)
    of_facet = np.array(scene.optics.diffuse)
    few = replace(effort.effort_for(Quality.DEFAULT, open_to_sight=True), exchange_rays=24)
    totals: list[FloatArray] = []
    doubts: list[float] = []
    for seed in range(6):
        options = EstimateOptions(cells=(4, 4), seed=seed)
        geometry = _geometry(scene.room, options, few, lambda: None)
        surfaces = geometry.surfaces
        mirrors = Mirrors(np.zeros(of_facet.size), np.zeros(of_facet.size))
        exchange = _paths(geometry, mirrors, options, few, lambda: None).exchange
        diffuse = of_facet[surfaces.patch_facet]
        balance = response(exchange.factors, diffuse)
        # Divided no further, what is left in doubt is chance.
        same = Coarser(balance)
        surfaces.__dict__["wider"] = np.arange(surfaces.patch_count)
        given = np.zeros(surfaces.patch_count)
        given[:40] = 1 / 40
        doubt = in_doubt(surfaces, exchange, balance, same, diffuse, given, given, balance @ given)
        totals.append(balance @ given)
        doubts.append(float(np.sqrt((doubt**2).mean())))
    scatter = float(np.sqrt(np.var(totals, axis=0, ddof=1).mean()))
    assert 0.6 * scatter < math.sqrt(np.mean(np.square(doubts))) < 2.0 * scatter


def housed(bars: int, at: tuple[tuple[float, float], ...], width: float, above: float) -> Estimate:
    body = BarsBody(length=0.7, width=width, count=bars, bar_width=0.03)
    one = lamp(at[0], above, body=body, ppf=300.0 / len(at))
    model = one.model.model_copy(update={"housing_height": 0.04, "housing_reflectance": 0.9})
    lamps = [one.model_copy(update={"model": model, "x": x, "y": y}) for x, y in at]
    return light(
        plan(box(1.0, 0.8), 0.8, lamps, walls=WHITE, ceiling=WHITE, canopy=0.5, canopy_height=0.2),
        (16, 16),
    )


def test_bars_close_over_leaves_are_what_as_many_lamps_of_one_bar_are() -> None:
    row = housed(6, ((0.5, 0.4),), 0.6, 0.02)
    pitch = (0.6 - 0.03) / 5
    single = housed(1, tuple((0.5, 0.115 + k * pitch) for k in range(6)), 0.03, 0.02)
    # As a row that shares its faces each bar's part of the light was that of all: 13 % of a cell.
    error = np.abs(row.ppfd - single.ppfd) / np.nanmean(single.ppfd)
    assert float(np.nanmax(error)) < 0.03
