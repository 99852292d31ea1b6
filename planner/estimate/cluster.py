"""The same sweep on other machines: a Dask scheduler given by its address.

Needs the optional extra ``cluster``; every worker of the scheduler needs this program
installed in the same version. Points are computed as on the local cores.
"""

# ruff: noqa: PLC0415 - the extra is imported only when it is asked for

from __future__ import annotations

import time
from collections.abc import Callable, Iterator, Sequence
from typing import Any, Final

from planner.estimate.sweep_over import SweepError
from planner.estimate.sweep_worker import Done, Job, Numbered, run_here

_REACH_S: Final = 10
_POLL_S: Final = 0.1


def run_on_scheduler(
    address: str,
    job: Job,
    chunks: Sequence[list[Numbered]],
    cancelled: Callable[[], bool],
) -> Iterator[list[Done]]:
    """Compute chunks of points on a scheduler; what is not begun is dropped when cancelled.

    Raises
    ------
    SweepError
        If the extra is not installed, the scheduler cannot be reached, or a worker fails.
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
        pending = {client.submit(run_here, job, chunk, pure=False) for chunk in chunks}
        while pending:
            if cancelled():
                client.cancel(list(pending))
                return
            done = {future for future in pending if future.done()}
            pending -= done
            if not done:
                time.sleep(_POLL_S)
            for future in done:
                yield _result(future)
    finally:
        client.close()


def _result(future: Any) -> list[Done]:
    try:
        found: list[Done] = future.result()
    except Exception as error:
        raise SweepError(
            f"A worker of the scheduler failed ({type(error).__name__}: {error}); this program "
            "must be installed there in the same version."
        ) from error
    return found


def _distributed() -> Any:
    try:
        import distributed
    except ImportError as error:
        raise SweepError(
            "Computing on a Dask scheduler needs the optional extra 'cluster': install it with "
            "pip install 'grow-space-light-planner[cluster]', or leave --scheduler out."
        ) from error
    return distributed
