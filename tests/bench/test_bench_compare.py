"""Time of side by side and of sweeps, on two cores that do nothing else.

Budgets: 20 variants at preview quality in at most 1 s; 200 points at default quality in at
most 30 s; two processes at least 1.7 times as fast as one.
"""

from __future__ import annotations

import time

import pytest

from planner.catalogue.library import demo_plan, load_catalogue
from planner.estimate.compare import compare
from planner.estimate.evaluate import evaluate
from planner.estimate.result import EstimateOptions, Quality
from planner.estimate.sweep import Over, sweep
from planner.estimate.sweep_points import over_range
from planner.plan.edits import each_lamp, line_all_walls
from planner.plan.plan import Plan
from planner.plan.variant_edits import add_variants

pytestmark = pytest.mark.bench


def _hung(height: float) -> Plan:
    return each_lamp(demo_plan(), lambda lamp: lamp.model_copy(update={"hanging_height": height}))


def five_linings_at_four_heights() -> Plan:
    linings = load_catalogue().linings[:5]
    return add_variants(
        demo_plan(),
        *(
            (f"{lining.name} {height}", line_all_walls(_hung(height), lining))
            for lining in linings
            for height in (0.2, 0.3, 0.4, 0.5)
        ),
    )


def test_twenty_variants_at_preview() -> None:
    plan = five_linings_at_four_heights()
    options = EstimateOptions(quality=Quality.PREVIEW)
    evaluate(plan, options)  # what is loaded once per run is not counted
    started = time.perf_counter()
    found = compare(plan, options)
    seconds = time.perf_counter() - started
    print(f"\n{len(found.sides) - 1} variants at preview: {seconds:.2f} s")
    assert len(found.sides) == 21
    assert seconds <= 1.0


def heights_and_reflectances() -> list[Over]:
    return [over_range("height", 0.15, 0.55, 20), over_range("reflectance", 0.5, 0.9, 10)]


def test_two_hundred_points_at_default_and_how_two_processes_help() -> None:
    seconds = {}
    tables = {}
    for workers in (1, 2):
        started = time.perf_counter()
        found = sweep(demo_plan(), heights_and_reflectances(), workers=workers)
        seconds[workers] = time.perf_counter() - started
        tables[workers] = found.points
    gain = seconds[1] / seconds[2]
    print(
        f"\n200 points: 1 process {seconds[1]:.1f} s, 2 processes {seconds[2]:.1f} s, x{gain:.2f}"
    )
    assert tables[1] == tables[2]
    assert seconds[2] <= 30
    assert gain >= 1.7
