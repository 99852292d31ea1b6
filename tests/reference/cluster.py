"""A Dask cluster of this machine, and how many points a second it computes.

    python -m tests.reference.cluster

prints points a second for one and two workers, and for 1, 2, 10 and 100 that are simulated:
they wait as long as a point takes instead of computing it, while scheduler, network and this
program do what they do for real. Needs the extra 'cluster'.
"""

from __future__ import annotations

import os
import re
import subprocess
import sys
import tempfile
import threading
import time
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path
from typing import IO

from planner.catalogue.library import demo_plan
from planner.estimate.result import EstimateOptions, Quality
from planner.estimate.sweep import Over, sweep
from planner.estimate.sweep_points import over_range

ROOT = Path(__file__).parents[2]
SIMULATED_S = 0.25
"""How long a simulated point takes: about what one of default quality does."""

MOST_IN_ONE = 25
"""Simulated workers in one process."""

WAITING = f"""
import time
import planner.estimate.sweep_points as points

def waiting(job, numbered, cache, cancelled=None):
    time.sleep({SIMULATED_S} * len(numbered))
    return [points.Done(number, None, "simulated") for number, _ in numbered]

points.run = waiting
"""


def _started(said: str, *arguments: str) -> tuple[subprocess.Popen[str], str]:
    """A process of Dask, as soon as it has said so, and what stood in that line."""
    started = subprocess.Popen(
        [sys.executable, "-m", "dask", *arguments],
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        text=True,
        env={**os.environ, "PYTHONPATH": str(ROOT)},
        cwd=tempfile.gettempdir(),
    )
    assert started.stdout is not None
    for line in started.stdout:
        found = re.search(said, line)
        if found:
            # Nobody reads on: what it says later must not fill the pipe.
            threading.Thread(target=_drained, args=(started.stdout,), daemon=True).start()
            return started, found.group(1)
    raise RuntimeError(f"dask {arguments[0]} did not start")


def _drained(stream: IO[str]) -> None:
    with stream:
        for _ in stream:
            pass


class Cluster:
    """A scheduler and workers, each a process that can be killed or frozen."""

    def __init__(self) -> None:
        told = r"Scheduler at:\s*(\S+)"
        options = ("--host", "127.0.0.1", "--port", "0", "--no-dashboard")
        self.scheduler, self.address = _started(told, "scheduler", *options)
        self.workers: list[subprocess.Popen[str]] = []

    def add(self, threads: int = 1, *more: str) -> subprocess.Popen[str]:
        """One more worker, without a nanny that would start it anew."""
        options = ("--nthreads", str(threads), "--no-nanny", "--no-dashboard", *more)
        worker, _ = _started(r"(Registered) to", "worker", self.address, *options)
        self.workers.append(worker)
        return worker

    def end(self) -> None:
        """End all processes."""
        for process in (*self.workers, self.scheduler):
            process.kill()
            process.wait()


@contextmanager
def cluster(workers: int) -> Iterator[Cluster]:
    """A cluster with so many workers of one thread each."""
    made = Cluster()
    try:
        for _ in range(workers):
            made.add()
        yield made
    finally:
        made.end()


def rate(address: str, over: Sequence[Over], quality: Quality = Quality.DEFAULT) -> float:
    """Points a second of a sweep of the demo plan."""
    began = time.perf_counter()
    found = sweep(demo_plan(), over, EstimateOptions(quality=quality), scheduler=address)
    assert found.complete
    return found.size / (time.perf_counter() - began)


def main() -> None:
    # Sizes: no point shares its surfaces with another.
    sizes = over_range("size", 0.8, 1.2, 48)
    with cluster(0) as made:
        for workers in (1, 2):
            made.add()
            rate(made.address, [over_range("size", 0.7, 0.75, 4 * workers)])  # imports are over
            print(f"{workers} workers: {rate(made.address, [sizes]):.1f} points a second")
    with tempfile.TemporaryDirectory() as folder:
        stub = Path(folder) / "waiting.py"
        stub.write_text(WAITING)
        for threads in (1, 2, 10, 100):
            simulate(threads, stub)


def simulate(threads: int, stub: Path) -> None:
    """So many workers that wait as long as a point takes: what is lost on the way to them."""
    with cluster(0) as made:
        for first in range(0, threads, MOST_IN_ONE):
            made.add(min(MOST_IN_ONE, threads - first), "--preload", str(stub))
        rate(made.address, [over_range("size", 0.7, 0.75, max(2 * threads, 2))])
        sizes = over_range("size", 0.5, 2.0, max(threads, 2))
        found = rate(made.address, [sizes, over_range("height", 0.1, 0.5, 40)])
    most = threads / SIMULATED_S
    print(f"{threads} simulated: {found:.1f} of {most:.0f} points a second", flush=True)


if __name__ == "__main__":
    main()
