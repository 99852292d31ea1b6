"""Sweeps on a real scheduler with real workers, some of which are lost on the way."""

from __future__ import annotations

import signal
from collections.abc import Callable
from subprocess import Popen
from typing import Any

import pytest

from planner.estimate.result import EstimateOptions, Quality
from planner.estimate.sweep import Over, Sweep, SweepError, sweep
from planner.estimate.sweep_points import over_range
from tests.reference.cluster import Cluster, cluster
from tests.unit.reports.sample_estimate import sample_plan

pytestmark = [pytest.mark.reference, pytest.mark.timeout(300)]

POINTS = {Quality.PREVIEW: 60, Quality.DEFAULT: 30, Quality.FINE: 4}


@pytest.fixture(autouse=True, scope="module")
def _extra() -> None:
    pytest.importorskip("distributed", reason="the 'cluster' extra is not installed")


def sizes(count: int) -> Over:
    """Points that share no surfaces: each is computed from its beginning."""
    return over_range("size", 0.8, 1.2, count)


def swept(made: Cluster, quality: Quality, **named: Any) -> Sweep:
    options = EstimateOptions(cells=(8, 8), quality=quality)
    return sweep(
        sample_plan(), [sizes(POINTS[quality])], options, scheduler=made.address, **named
    )  # fmt: skip


def after_first(act: Callable[[], object]) -> Callable[[float], None]:
    """A ``progress`` that acts once, when the first answer has come."""
    told: list[float] = []

    def progress(fraction: float) -> None:
        if not told:
            act()
        told.append(fraction)

    return progress


def test_a_cluster_gives_what_one_process_gives() -> None:
    with cluster(2) as made:
        far = swept(made, Quality.PREVIEW)
    options = EstimateOptions(cells=(8, 8), quality=Quality.PREVIEW)
    assert far.points == sweep(sample_plan(), far.over, options, workers=0).points


@pytest.mark.parametrize("quality", list(POINTS))
def test_a_worker_that_is_killed_is_replaced_by_the_other(quality: Quality) -> None:
    with cluster(2) as made:
        found = swept(made, quality, progress=after_first(made.workers[1].kill))
    assert found.complete
    assert all(point.figures is not None for point in found.in_order())


@pytest.mark.parametrize("quality", [Quality.DEFAULT, Quality.FINE])
def test_what_a_silent_worker_keeps_is_given_to_an_idle_one(
    quality: Quality, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Frozen, it keeps its connection; the scheduler would wait for it for five minutes."""
    monkeypatch.setattr("planner.estimate.cluster._LATE_S", 1.0)
    with cluster(2) as made:
        frozen = made.workers[1]
        found = swept(
            made, quality, progress=after_first(lambda: frozen.send_signal(signal.SIGSTOP))
        )
    assert found.complete


def test_without_a_worker_and_without_all_it_is_said(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("planner.estimate.cluster._NO_WORKER_S", 1.0)
    with cluster(0) as made:
        with pytest.raises(SweepError, match="No worker is at the scheduler"):
            swept(made, Quality.DEFAULT)
        both = made.add(), made.add()
        told: list[int] = []
        with pytest.raises(SweepError, match="No worker is at the scheduler"):
            swept(
                made, Quality.DEFAULT,
                progress=after_first(lambda: list(map(Popen.kill, both))),
                so_far=lambda part: told.append(len(part.points)),
            )  # fmt: skip
        assert told  # what was finished was handed on


def test_workers_short_of_memory_are_said_and_not_waited_for(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """A worker beyond four fifths of its memory is paused by Dask and computes nothing more."""
    monkeypatch.setattr("planner.estimate.cluster._LATE_S", 1.0)
    monkeypatch.setattr("planner.estimate.cluster._NO_WORKER_S", 2.0)
    with cluster(0) as made:
        made.add(1, "--memory-limit", "60MB")
        with pytest.raises(SweepError, match="All workers are paused, short of memory"):
            swept(made, Quality.DEFAULT)
        made.add()
        assert swept(made, Quality.DEFAULT).complete


def test_a_scheduler_that_goes_is_said() -> None:
    with cluster(2) as made, pytest.raises(SweepError, match="is gone"):
        swept(made, Quality.DEFAULT, progress=after_first(made.scheduler.kill))


def test_stopped_it_comes_back_at_once_with_what_is_there() -> None:
    with cluster(2) as made:
        done: list[float] = []
        found = swept(made, Quality.DEFAULT, progress=done.append, cancelled=lambda: len(done) > 2)
    assert 2 < len(found.points) < POINTS[Quality.DEFAULT]
