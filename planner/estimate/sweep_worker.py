"""A worker's share of a sweep: runs in a process of its own, near or far.

Nothing heavy is imported before the process has been told to compute with one thread: two
processes that each wanted both cores would only get in each other's way.
"""

# ruff: noqa: PLC0415 - importing late is the point of this module

from __future__ import annotations

import dataclasses
import multiprocessing
import multiprocessing.connection
import os
import threading
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, Final

if TYPE_CHECKING:
    from planner.estimate.evaluate import Cache
    from planner.plan.plan import Plan

THREAD_VARIABLES: Final = (
    "OMP_NUM_THREADS",
    "OPENBLAS_NUM_THREADS",
    "MKL_NUM_THREADS",
    "VECLIB_MAXIMUM_THREADS",
)


@dataclass(frozen=True)
class Job:
    """What every worker is told: plan, names of the axes, map size, quality, seed."""

    plan: Plan
    axes: tuple[str, ...]
    cells: tuple[int, int]
    quality: str
    seed: int


@dataclass(frozen=True)
class Done:
    """One finished point: its number and the figures by name, or the reason for none."""

    number: int
    figures: dict[str, float | None] | None
    problem: str = ""


Numbered = tuple[int, tuple[float, ...]]

_process: dict[str, Any] = {}
_of_thread = threading.local()
"""A scheduler's workers may compute in several threads; a cache belongs to one."""


def set_up(stop: Any) -> None:
    """Begin a worker process: one thread, and the event that tells it to stop.

    A parent that is killed cannot tell anything; its end is watched for.
    """
    for variable in THREAD_VARIABLES:
        os.environ[variable] = "1"
    _process["stop"] = stop.is_set
    threading.Thread(target=_end_with_parent, name="parent", daemon=True).start()


def _end_with_parent() -> None:
    """End this process when the one that began it is gone, however it went."""
    parent = multiprocessing.parent_process()
    if parent is not None:
        multiprocessing.connection.wait([parent.sentinel])
        os._exit(1)


def run_here(job: Job, points: Sequence[Numbered]) -> list[Done]:
    """Compute points in a worker process; fewer come back when it was told to stop."""
    from planner.estimate.evaluate import Cache

    # One cache for as long as the worker lives: neighbouring points share most of it.
    if not hasattr(_of_thread, "cache"):
        _of_thread.cache = Cache()
    return run(job, points, _of_thread.cache, _process.get("stop"))


def run(
    job: Job,
    points: Sequence[Numbered],
    cache: Cache,
    cancelled: Callable[[], bool] | None = None,
) -> list[Done]:
    """Compute points one after another; fewer come back when ``cancelled`` said so."""
    from planner.estimate.evaluate import Cancelled, evaluate
    from planner.estimate.result import EstimateOptions, Quality
    from planner.estimate.sweep_over import swept
    from planner.plan.refusal import refusal

    options = EstimateOptions(job.cells, Quality(job.quality), job.seed)
    axes = [swept(name) for name in job.axes]
    done = []
    for number, values in points:
        if cancelled is not None and cancelled():
            break
        try:
            plan = job.plan
            for one, value in zip(axes, values, strict=True):
                plan = one.put(plan, None, value)
            estimate = evaluate(plan, options, cache=cache, cancelled=cancelled)
        except Cancelled:
            break
        except ValueError as error:
            done.append(Done(number, None, refusal(error)))
        else:
            done.append(Done(number, dataclasses.asdict(estimate.figures)))
    return done
