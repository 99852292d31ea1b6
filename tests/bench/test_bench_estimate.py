"""Time of an estimate: 1 m x 1 m x 2 m, walls 0.45 diffuse + 0.45 mirror, 24 x 24 map.

Run with ``-m bench``. Targets on two cores, from edit to painted map, stand beside each
case; nothing is asserted, since machines differ.
"""

from __future__ import annotations

from collections.abc import Callable
from itertools import cycle
from typing import Any

import pytest

from planner.estimate.evaluate import Cache, evaluate
from planner.estimate.result import EstimateOptions, Quality
from planner.plan import edits
from planner.plan.plan import Plan
from tests.physics.rooms import Rho, box, lamp, lining, panel, plan

pytestmark = pytest.mark.bench


def tent(walls: Rho = (0.45, 0.45)) -> Plan:
    return plan(
        box(1.0, 1.0),
        2.0,
        [lamp((0.5, 0.5), 1.5, body=panel(0.4, 0.4), ppf=500)],
        walls=walls,
        ceiling=(0.45, 0.45),
        canopy=0.06,
        canopy_height=0.3,
    )


def lamp_moves(step: int) -> Plan:
    return edits.change_lamp(tent(), 0, x=0.4 + 0.002 * (step % 97))


def diffuse_part(step: int) -> Plan:
    return edits.line_wall(tent(), 0, 0, lining((0.30 + 0.001 * (step % 97), 0.45)))


def specular_part(step: int) -> Plan:
    return edits.line_wall(tent(), 0, 0, lining((0.45, 0.30 + 0.001 * (step % 97))))


def footprint(step: int) -> Plan:
    return edits.move_corner(tent(), 1, (1.0 + 0.001 * (1 + step % 97), 0.0))


EDITS: dict[str, Callable[[int], Plan]] = {
    "lamp": lamp_moves,  # preview 50 ms (aim 16), default 150 ms
    "diffuse": diffuse_part,  # preview 50 ms (aim 16), default 150 ms
    "specular": specular_part,  # preview 50 ms (aim 16), default 150 ms
    "footprint": footprint,  # preview 150 ms, default as cold
}


@pytest.mark.parametrize("quality", list(Quality))
def test_cold(benchmark: Any, quality: Quality) -> None:
    # default 500 ms (aim 150)
    what = tent()
    benchmark(evaluate, what, EstimateOptions(quality=quality))


@pytest.mark.parametrize("quality", [Quality.PREVIEW, Quality.DEFAULT])
@pytest.mark.parametrize("kind", list(EDITS))
def test_after_an_edit(benchmark: Any, kind: str, quality: Quality) -> None:
    cache = Cache()
    options = EstimateOptions(quality=quality)
    evaluate(tent(), options, cache=cache)
    # Each round sees a plan the cache has not met.
    plans = cycle([EDITS[kind](step) for step in range(97)])
    benchmark(lambda: evaluate(next(plans), options, cache=cache))
