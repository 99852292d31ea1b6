"""Sweeps: the figures of a plan over one or several numbers, linings or kinds of lamp.

Points are computed in processes of their own, one per core, or on a Dask scheduler named
by its address. Whoever computes a point, the result is the same: an estimate depends on
plan and options only. Finished points are kept in the ``Sweep`` and, where a journal is
named, in a file, line by line, so that neither cancelling nor a power cut loses them.
"""

from __future__ import annotations

import hashlib
import itertools
import json
import math
import multiprocessing
import os
import threading
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import FIRST_COMPLETED, ProcessPoolExecutor, wait
from concurrent.futures.process import BrokenProcessPool
from dataclasses import asdict, dataclass, field, replace
from functools import cached_property
from pathlib import Path
from time import monotonic
from typing import Any, Final

from pydantic import TypeAdapter, ValidationError

import planner
from planner.estimate.canopies import MOVED, Standing, out_of_band
from planner.estimate.evaluate import Cache
from planner.estimate.result import EstimateOptions, Figures, Quality
from planner.estimate.sweep_points import (
    MAX_POINTS,
    Done,
    Job,
    Numbered,
    Over,
    Step,
    SweepError,
    run,
    run_here,
    set_up,
)
from planner.plan.lit import counted, lit
from planner.plan.place import Place, judged
from planner.plan.plan import Plan

__all__ = ["Over", "Point", "Sweep", "SweepError", "sweep"]

_POLL_S: Final = 0.1
_PATIENCE_S: Final = 0.3
"""How long a stopped sweep waits for points that are nearly there."""
_CHUNKS_PER_WORKER: Final = 8
_LARGEST_CHUNK: Final = 10
_LEAST_CHUNKS_PER_WORKER: Final = 4
_LARGEST_GROUP: Final = 25
_COSTLY: Final = 2
"""From this cost of an axis on, its points begin with work that those after it share."""
_JOURNAL_FORMAT: Final = 2
_DONE: Final = TypeAdapter(Done)
_FIGURES: Final = TypeAdapter(Figures)

Progress = Callable[[float], None]
Asked = Callable[[], bool]


@dataclass(frozen=True)
class Point:
    """One point: a value per axis, and the figures or the reason why there are none.

    ``band``, ``overall`` and ``beside`` are as of ``Done``.
    """

    values: tuple[Step, ...]
    figures: Figures | None
    problem: str = ""
    band: tuple[float, float] | None = None
    overall: Figures | None = None
    beside: tuple[Standing, ...] = ()


@dataclass(frozen=True)
class Sweep:
    """What was asked and the points found so far, by their number in the grid.

    The grid runs through the axes in their order, the last one fastest.
    """

    plan: Plan
    over: tuple[Over, ...]
    options: EstimateOptions
    points: dict[int, Point] = field(default_factory=dict)

    @property
    def size(self) -> int:
        """Number of points of the whole grid."""
        return math.prod(len(one.values) for one in self.over)

    @property
    def complete(self) -> bool:
        """Whether every point is there."""
        return len(self.points) == self.size

    def in_order(self) -> Iterator[Point]:
        """The points there are, in the order of the grid."""
        return (self.points[number] for number in sorted(self.points))

    def beyond(self, number: int) -> str:
        """Which canopies but the one judged lie out of their bands at a point, in one clause.

        Tiers with lamps of their own are left out whose light no point changes.
        """
        found = self.points[number].beside
        told = [one for one in found if one.shared or one.place in self._moving]
        return out_of_band(self.plan, told)

    @cached_property
    def _moving(self) -> frozenset[Place]:
        """The canopies whose light is not the same at all points."""
        means: dict[Place, list[float]] = {}
        for point in self.points.values():
            for one in point.beside:
                means.setdefault(one.place, []).append(one.mean)
        return frozenset(
            place for place, all_of in means.items() if min(all_of) < max(all_of) * (1 - MOVED)
        )

    def plan_at(self, number: int) -> Plan:
        """The plan with the values of a point; raises ``ValueError`` where it cannot be."""
        plan = self.plan
        for one, value in zip(self.over, self.points[number].values, strict=True):
            plan = one.put(plan, value)
        return plan


def sweep(
    plan: Plan,
    over: Sequence[Over],
    options: EstimateOptions | None = None,
    *,
    workers: int | None = None,
    scheduler: str | None = None,
    known: Sweep | None = None,
    journal: Path | None = None,
    progress: Progress | None = None,
    cancelled: Asked | None = None,
    so_far: Callable[[Sweep], None] | None = None,
) -> Sweep:
    """Estimate a plan over a grid of values.

    Parameters
    ----------
    over
        The axes with their values; every combination is computed.
    options
        Map size, quality and seed of each estimate.
    workers
        Processes; None for one per core (none for a handful of points), 0 for this process.
    scheduler
        Address of a Dask scheduler that computes instead (``tcp://host:8786``).
    known
        A sweep of the same plan, axes and options that was stopped; it is carried on.
    journal
        File that receives every finished point; one left by the same sweep is carried on.
    progress
        Called with fractions from 0 to 1.
    cancelled
        Asked several times a second; when it answers True, what is done so far is returned
        within half a second.
    so_far
        Called with what is there whenever points have come in.

    Raises
    ------
    SweepError
        If the sweep cannot be run: unknown axis, nothing or too much asked, a journal of
        another sweep, a scheduler that cannot be reached, a worker that was killed.
    """
    options = options or EstimateOptions()
    asked = Sweep(plan, tuple(over), options)
    _check(asked)
    points = dict(known.points) if known is not None and _same(known, asked) else {}
    book = None if journal is None else _Journal(journal, asked)
    if book is not None:
        points.update(book.read())
    found = Sweep(plan, asked.over, options, points)
    job = Job(
        Plan(**dict(plan.setup), target=plan.target),
        tuple(replace(one, values=()) for one in over),
        options.cells,
        options.quality.value,
        options.seed,
    )
    wanted = [entry for entry in _in_working_order(asked) if entry[0] not in points]

    def receive(done: Sequence[Done], grid: dict[int, tuple[Step, ...]]) -> None:
        for one in done:
            points[one.number] = _point(one, grid[one.number])
        if book is not None:
            book.write(done)
        if progress is not None:
            progress(len(points) / asked.size)
        if so_far is not None and done:
            so_far(Sweep(plan, asked.over, options, dict(points)))

    grid = dict(wanted)
    for done in _computed(job, asked, wanted, workers, scheduler, cancelled or _never):
        receive(done, grid)
    return found


def _point(done: Done, values: tuple[Step, ...]) -> Point:
    figures, overall = (
        None if found is None else _FIGURES.validate_python(found)
        for found in (done.figures, done.overall)
    )
    return Point(values, figures, done.problem, done.band, overall, done.beside)


def _computed(
    job: Job,
    asked: Sweep,
    wanted: Sequence[Numbered],
    workers: int | None,
    scheduler: str | None,
    stop: Asked,
) -> Iterator[list[Done]]:
    """Points as they come, from wherever they are computed."""
    count = _workers(workers, len(wanted))
    if scheduler is not None:
        from planner.estimate.cluster import run_on_scheduler  # noqa: PLC0415 - optional extra

        yield from run_on_scheduler(scheduler, job, lambda n: _chunks(asked, wanted, n), stop)
    elif count == 0:
        cache = Cache()
        for entry in wanted:
            done = run(job, [entry], cache, stop)
            yield done
            if not done:
                return
    else:
        yield from _in_processes(job, _chunks(asked, wanted, count), count, stop)


def _never() -> bool:
    return False


def _check(asked: Sweep) -> None:
    if not asked.over:
        raise SweepError("A sweep needs something to run over, for example height=0.2:0.6:9.")
    axes = [(one.axis, one.place) for one in asked.over]
    for one in asked.over:
        one.need(asked.plan)
        if not one.values:
            raise SweepError(f"The sweep over '{one.axis}' names no values.")
        if axes.count((one.axis, one.place)) > 1:
            raise SweepError(f"'{one.axis}' is named twice; give all its values at once.")
    if asked.size > MAX_POINTS:
        raise SweepError(
            f"That would be {asked.size} points; ask for at most {MAX_POINTS} at a time."
        )


def _same(known: Sweep, asked: Sweep) -> bool:
    return fingerprint(known) == fingerprint(asked)


def fingerprint(asked: Sweep) -> str:
    """What tells one sweep from another: program, plan, axes with values, options."""
    parts = [
        f"{planner.__version__} {_JOURNAL_FORMAT}",
        repr((lit(asked.plan), counted(asked.plan), judged(asked.plan))),
        repr([(one.axis, one.place, [_bare(step) for step in one.values]) for one in asked.over]),
        json.dumps([asked.options.cells, asked.options.quality, asked.options.seed]),
    ]
    return hashlib.sha256("\n".join(parts).encode()).hexdigest()


def _bare(step: Step) -> object:
    # Names and notes are in the words of the language spoken, and none of them is computed with.
    return step if isinstance(step, float | int) else step.model_dump(exclude=_IN_WORDS)


_IN_WORDS: Final = {"name", "source", "note"}


def _in_working_order(asked: Sweep) -> list[Numbered]:
    """The grid's points, numbered in the order asked, sorted so that neighbours share work."""
    order = sorted(range(len(asked.over)), key=lambda k: -asked.over[k].redo)
    steps = [range(len(one.values)) for one in asked.over]
    places = sorted(enumerate(itertools.product(*steps)), key=lambda at: [at[1][k] for k in order])
    return [
        (number, tuple(one.values[k] for one, k in zip(asked.over, at, strict=True)))
        for number, at in places
    ]


def _workers(asked: int | None, points: int) -> int:
    if asked is not None:
        return min(max(asked, 0), points)
    # Starting a process costs about as much as a few estimates.
    return min(os.cpu_count() or 1, points) if points > 8 else 0


def _chunks(asked: Sweep, wanted: Sequence[Numbered], workers: int) -> list[list[Numbered]]:
    """Points to hand out at once: those that share the costly work stay together."""
    costly = [k for k, one in enumerate(asked.over) if one.redo >= _COSTLY]

    def shared(entry: Numbered) -> list[Step]:
        return [entry[1][k] for k in costly]

    groups = [list(group) for _, group in itertools.groupby(wanted, shared)]
    if asked.options.quality is Quality.FINE:  # one takes seconds: none waits for another
        size = 1
    elif len(groups) < _LEAST_CHUNKS_PER_WORKER * workers:
        groups = [list(wanted)]
        size = math.ceil(len(wanted) / (workers * _CHUNKS_PER_WORKER))
        size = min(max(size, 1), _LARGEST_CHUNK)
    else:
        size = _LARGEST_GROUP
    return [group[k : k + size] for group in groups for k in range(0, len(group), size)]


def _in_processes(
    job: Job, chunks: Sequence[list[Numbered]], workers: int, cancelled: Asked
) -> Iterator[list[Done]]:
    # Spawned, not forked: the caller may have threads and a window.
    context = multiprocessing.get_context("spawn")
    stop = context.Event()
    pool = ProcessPoolExecutor(workers, context, initializer=set_up, initargs=(stop,))
    patience = math.inf
    try:
        pending = {pool.submit(run_here, job, chunk) for chunk in chunks}
        while pending and monotonic() < patience:
            done, pending = wait(pending, _POLL_S, FIRST_COMPLETED)
            for future in done:
                yield future.result()
            if cancelled() and not stop.is_set():
                # Running chunks come back with what they have, the others with nothing. One that
                # is still starting, or deep in a point, is not waited for.
                stop.set()
                patience = monotonic() + _PATIENCE_S
    except BrokenProcessPool as error:
        raise SweepError(
            "A process of the sweep ended before its time (out of memory, or killed). What was "
            "finished is kept; ask for the same sweep again to go on."
        ) from error
    finally:
        stop.set()
        if math.isinf(patience):
            pool.shutdown(wait=True, cancel_futures=True)
        else:
            # Whoever stopped it does not wait for processes to end, but they still need ``stop``.
            threading.Thread(target=_wind_up, args=(pool, stop), daemon=True).start()


def _wind_up(pool: ProcessPoolExecutor, _stop: object) -> None:
    pool.shutdown(wait=True, cancel_futures=True)


class _Journal:
    """A file of finished points, one JSON line each, behind one that says of which sweep."""

    def __init__(self, path: Path, asked: Sweep) -> None:
        self._path = path
        self._asked = asked
        self._head = {"sweep": fingerprint(asked), "format": _JOURNAL_FORMAT}

    def read(self) -> dict[int, Point]:
        """The points of an earlier run of the same sweep; begins the file where it is not.

        A line that was cut off or spoilt is as good as none: its point is computed again.
        """
        head = json.dumps(self._head)
        try:
            text = self._path.read_bytes().decode("utf-8", "replace")
        except FileNotFoundError:
            text = ""
        first, _, rest = text.partition("\n")
        if head.startswith(first) and not rest:
            # Nothing yet, or killed while it began.
            self._path.write_text(head + "\n", "utf-8")
            return {}
        if _read_line(first) != self._head:
            raise SweepError(
                f"'{self._path}' holds points of another sweep or another plan, or something else; "
                "delete it, or write to another file."
            )
        grid = dict(_in_working_order(self._asked))
        found = dict(filter(None, (_read_point(line, grid) for line in rest.split("\n"))))
        if not text.endswith("\n"):
            # The last line was cut off in the middle; end it, so that the next one stands alone.
            with self._path.open("a", encoding="utf-8") as file:
                file.write("\n")
        return found

    def write(self, done: Sequence[Done]) -> None:
        with self._path.open("a", encoding="utf-8") as file:
            for one in done:
                file.write(json.dumps(asdict(one)) + "\n")


def _read_point(line: str, grid: dict[int, tuple[Step, ...]]) -> tuple[int, Point] | None:
    try:
        done = _DONE.validate_json(line)
        return done.number, _point(done, grid[done.number])
    except (ValidationError, KeyError):
        return None


def _read_line(line: str) -> dict[str, Any] | None:
    try:
        entry = json.loads(line)
    except (ValueError, RecursionError):
        return None
    return entry if isinstance(entry, dict) else None
