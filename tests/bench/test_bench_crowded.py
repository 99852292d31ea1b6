"""Time of plans full of things in the way, and the longest wait until a stop is heard.

Run with ``-m bench``. Aim: nothing valid over 5 s at default, no wait over 0.3 s, on a quiet
machine; nothing is asserted, since machines differ. Processor time is printed too: on a busy
machine it tells more.
"""

from __future__ import annotations

import time
from collections.abc import Callable
from itertools import cycle
from typing import Any

import pytest

from planner.estimate.evaluate import Cache, evaluate
from planner.estimate.result import EstimateOptions, Quality
from planner.plan import edits
from planner.plan.plan import Plan
from tests.bench.test_bench_estimate import tent
from tests.physics.crowded import PLANS

pytestmark = pytest.mark.bench


@pytest.mark.parametrize("quality", list(Quality))
@pytest.mark.parametrize("name", list(PLANS))
def test_crowded(name: str, quality: Quality, capsys: pytest.CaptureFixture[str]) -> None:
    gaps: list[float] = []
    last = time.perf_counter()

    def cancelled() -> bool:
        nonlocal last
        now = time.perf_counter()
        gaps.append(now - last)
        last = now
        return False

    wall, processor = time.perf_counter(), time.process_time()
    evaluate(PLANS[name], EstimateOptions(quality=quality), cancelled=cancelled)
    wall, processor = time.perf_counter() - wall, time.process_time() - processor
    with capsys.disabled():
        print(
            f"\n{name:55s} {quality:8s} {wall:7.2f} s, processor {processor:7.2f} s, "
            f"longest wait {max(gaps):.3f} s"
        )


def moved(step: int) -> Plan:
    return edits.change_lamp(tent(), 0, x=0.4 + 0.002 * (step % 97))


def raised(step: int) -> Plan:
    return edits.change_lamp(tent(), 0, hanging_height=1.0 + 0.002 * (step % 97))


def dimmed(step: int) -> Plan:
    return edits.change_lamp(tent(), 0, output_percent=30 + 0.5 * (step % 97))


@pytest.mark.parametrize("quality", [Quality.PREVIEW, Quality.DEFAULT])
@pytest.mark.parametrize("edit", [moved, raised, dimmed])
def test_a_lamp_in_hand(benchmark: Any, edit: Callable[[int], Plan], quality: Quality) -> None:
    # preview: moved 6 ms, raised 8 ms, dimmed 1.5 ms; default: moved 20 ms
    cache = Cache()
    options = EstimateOptions(quality=quality)
    evaluate(tent(), options, cache=cache)
    plans = cycle([edit(step) for step in range(97)])
    benchmark(lambda: evaluate(next(plans), options, cache=cache))
