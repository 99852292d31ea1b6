"""Sweeps beyond one machine: chunks of points on a Dask scheduler (the extra ``cluster``).

Workers need this program in the same version. They come and go while a sweep runs: a worker
may be killed, frozen, cut off or paused for want of memory, with work or with results that
were not fetched yet. None of that may stall a sweep without a word.
"""

from __future__ import annotations

import time
from collections.abc import Callable, Iterator, Sequence
from typing import Any, Final

from planner.estimate.sweep_points import Done, Job, Numbered, SweepError, run_here

_REACH_S: Final = 10
_NO_WORKER_S: Final = 15.0
"""How long a scheduler may be without any worker before the sweep says so."""
_LATE_S: Final = 10.0
"""How long nothing may come before idle workers are given what others keep: it costs nothing."""
_SILENT_S: Final = 5.0
"""A worker behind the newest word of the others by so much is taken for frozen or cut off."""
_MOST_COPIES: Final = 3
_FETCH_S: Final = 0.3
_POLL_S: Final = 0.1


def run_on_scheduler(
    address: str,
    job: Job,
    chunks: Callable[[int], Sequence[list[Numbered]]],
    cancelled: Callable[[], bool],
) -> Iterator[list[Done]]:
    """Compute chunks of points on a scheduler; what is not begun is dropped when cancelled.

    ``chunks`` cuts the points for so many workers. A worker that is lost is replaced by the
    others; what one keeps that fell silent (frozen, cut off, paused for want of memory) is
    given to an idle one as well. Only when nobody has been there to work for a while is the
    sweep given up.

    Raises
    ------
    SweepError
        If the extra is not installed, the scheduler cannot be reached or is lost, no worker is
        there or all are paused, or one fails.
    """
    distributed = _distributed()
    try:
        client = distributed.Client(address, timeout=_REACH_S, set_as_default=False)
    except (OSError, ValueError, TimeoutError) as error:
        raise SweepError(
            f"No Dask scheduler answers at '{address}'; start one with 'dask scheduler' and name "
            "its address, for example tcp://192.0.2.7:8786."
        ) from error
    try:
        watch = _Watch(client, address, cancelled)
        cut = chunks(watch.first())
        asked = {client.submit(run_here, job, c, pure=False): k for k, c in enumerate(cut)}
        held: list[Any] = []
        while asked:
            if cancelled():
                client.cancel(list(asked))
                return
            # A result stays with its worker until it is fetched; of those that were not to be
            # had one is tried again each time, so that a stop is never waited for.
            done = [future for future in asked if future.done() and future not in held] + held[:1]
            came = False
            for future in done:
                held = [one for one in held if one is not future]
                if future not in asked:
                    continue  # another copy of it came first
                try:
                    found, k = _result(future, address), asked[future]
                except TimeoutError:
                    held.append(future)
                    continue
                came = True
                copies = [other for other, number in asked.items() if number == k]
                for other in copies:
                    del asked[other]
                if len(copies) > 1:
                    client.cancel(copies)
                yield found
            if came:
                watch.answered()
                continue
            for late in watch.look(list(asked), held):
                # The first answer counts: whoever computes a point, the result is the same.
                k = asked[late]
                if list(asked.values()).count(k) < _MOST_COPIES:
                    more = client.submit(run_here, job, cut[k], pure=False, workers=watch.idle)
                    asked[more] = k
            time.sleep(_POLL_S)
    finally:
        client.close()


class _Watch:
    """Whether anybody is at the scheduler to do the work, and who keeps what is awaited."""

    def __init__(self, client: Any, address: str, cancelled: Callable[[], bool]) -> None:
        self._client, self._address, self._cancelled = client, address, cancelled
        self._next = self._seen = self._last = time.monotonic()
        self.idle: list[str] = []

    def first(self) -> int:
        """Threads of all workers, as soon as there is one; 1 when cancelled before."""
        while not (threads := sum(self._threads().values())) and not self._cancelled():
            self._judge("No worker is at", "start one with 'dask worker {address}'")
            time.sleep(_POLL_S)
        self._last = time.monotonic()
        return max(threads, 1)

    def answered(self) -> None:
        """An answer has come."""
        self._last = time.monotonic()

    def look(self, awaited: Sequence[Any], held: Sequence[Any]) -> list[Any]:
        """Once a second: is anybody there; of what is awaited, what idle workers should get.

        ``held`` are those that are done, but whose result was not to be had.
        """
        now = time.monotonic()
        if now < self._next:
            return []
        self._next = now + 1.0
        threads = self._threads()
        if not threads:
            self._judge("No worker is at", "start one with 'dask worker {address}'")
            return []
        if now - self._last < _LATE_S:
            self._seen = now
            return []
        known = self._client.scheduler_info()["workers"]
        newest = max((one["last_seen"] for one in known.values()), default=0.0)
        at_work = [
            worker
            for worker in threads
            if worker in known
            and known[worker]["status"] != "paused"
            and newest - known[worker]["last_seen"] < _SILENT_S
        ]
        if not at_work:
            more = "start workers with more (--memory-limit) or ask for a lower quality"
            self._judge("All workers are paused, short of memory, at", more)
            return []
        self._seen = now
        busy = {worker: set(keys) for worker, keys in self._client.processing().items()}
        self.idle = [w for w in at_work if len(busy.get(w, ())) < threads[w]]
        if not self.idle:
            return []
        self._last = now
        kept = set().union(*(keys for worker, keys in busy.items() if worker not in self.idle))
        return [one for one in awaited if one.key in kept or one in held]

    def _threads(self) -> dict[str, int]:
        try:
            threads: dict[str, int] = self._client.nthreads()
        except (OSError, TimeoutError):
            return {}  # the scheduler itself is gone: nobody is there either
        return threads

    def _judge(self, what: str, remedy: str) -> None:
        if time.monotonic() - self._seen > _NO_WORKER_S:
            remedy = remedy.format(address=self._address)
            raise SweepError(f"{what} the scheduler '{self._address}'; {remedy}. {_GO_ON}")


_GO_ON: Final = "What was finished is kept; ask for the same sweep to go on."


def _result(future: Any, address: str) -> list[Done]:
    if future.cancelled():
        raise SweepError(
            f"The scheduler '{address}' is gone, or somebody took the points from it. {_GO_ON}"
        )
    try:
        found: list[Done] = future.result(timeout=_FETCH_S)
    except TimeoutError:
        raise
    except Exception as error:
        if type(error).__name__ == "KilledWorker":
            raise SweepError(
                "The same points were lost with several workers one after another, probably "
                f"for want of memory; start them with more or ask for a lower quality. {_GO_ON}"
            ) from error
        raise SweepError(
            f"A worker of the scheduler failed ({type(error).__name__}: {error}); this program "
            "must be installed there in the same version."
        ) from error
    return found


def _distributed() -> Any:
    try:
        import distributed  # noqa: PLC0415 - an optional extra
    except ImportError as error:
        raise SweepError(
            "Computing on a Dask scheduler needs the optional extra 'cluster': install it with "
            "pip install 'grow-space-light-planner[cluster]', or leave --scheduler out."
        ) from error
    return distributed
