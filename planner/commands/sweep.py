"""``python -m planner sweep PLAN --over height=0.2:0.6:9 --csv OUT``: curves without a screen."""

# ruff: noqa: PLC0415 - importing late is what keeps the start quick

from __future__ import annotations

import argparse
import sys
from pathlib import Path
from typing import TYPE_CHECKING, TextIO

from planner.reports.outputs import STANDARD_OUTPUT, need_folder_of, need_names_apart, write_output

if TYPE_CHECKING:
    from planner.plan.plan import Plan


class SweepCommandError(Exception):
    """What was asked of a sweep cannot be done; the message is the sentence to print."""


def add_sweep_command(parser: argparse.ArgumentParser) -> None:
    """Describe the command's arguments."""
    parser.add_argument("plan", metavar="PLAN")
    parser.add_argument(
        "--over",
        action="append",
        required=True,
        metavar="NAME=FROM:TO:COUNT",
        help="NAME is height, output, reflectance, width, depth, size, spacing, canopy, "
        "space-height or photoperiod; NAME=A,B,C works too; lengths in m or with a unit; more "
        "than one --over makes a grid",
    )
    parser.add_argument("--csv", required=True, metavar="OUT", help="one line a point; - for here")
    parser.add_argument("--quality", choices=("preview", "default", "fine"), default="default")
    parser.add_argument("--seed", type=int, default=1, metavar="N", help="of the random part")
    parser.add_argument(
        "--workers", type=int, metavar="N", help="processes; without it one per core"
    )
    parser.add_argument(
        "--scheduler", metavar="ADDRESS", help="of a Dask scheduler (needs the extra 'cluster')"
    )


def run_sweep_command(plan: Plan, asked: argparse.Namespace) -> int:
    """Run the sweep and write its points; returns 0, or 130 when it was interrupted.

    Finished points are kept beside the CSV, in ``OUT.points``, until the sweep is whole: the
    same command goes on from there.

    Raises
    ------
    SweepCommandError
        With one sentence, for anything that cannot be done.
    planner.reports.outputs.OutputError
        If the CSV cannot be written.
    """
    need_folder_of(asked.csv)
    need_names_apart(asked.plan, asked.csv)
    if asked.workers is not None and not 0 <= asked.workers <= 64:
        raise SweepCommandError(f"--workers {asked.workers} makes no sense; write 0 to 64.")
    if asked.seed < 0:
        raise SweepCommandError(f"'{asked.seed}' is not a seed; write a whole number from 0 up.")
    from planner.estimate.result import EstimateOptions, Quality
    from planner.estimate.sweep import sweep
    from planner.estimate.sweep_over import SweepError, parse_over
    from planner.reports.sweep_csv import sweep_to_csv

    journal = None if asked.csv == STANDARD_OUTPUT else Path(f"{asked.csv}.points")
    bar = _Progress(sys.stderr)
    try:
        over = [parse_over(text) for text in asked.over]
        options = EstimateOptions(quality=Quality(asked.quality), seed=asked.seed)
        found = sweep(
            plan,
            over,
            options,
            workers=asked.workers,
            scheduler=asked.scheduler,
            journal=journal,
            progress=bar.show,
        )
    except SweepError as error:
        raise SweepCommandError(str(error)) from error
    except KeyboardInterrupt:
        bar.end()
        if journal is not None:
            print(
                f"Stopped; what was finished is in '{journal}', and the same command goes on "
                "from there.",
                file=sys.stderr,
            )
        return 130
    bar.end()
    write_output(asked.csv, sweep_to_csv(found).encode())
    if journal is not None:
        journal.unlink(missing_ok=True)
        print(f"Wrote {Path(asked.csv).resolve()} ({found.size} points)")
    return 0


class _Progress:
    """A line of percent at a terminal, and nothing in a pipe."""

    def __init__(self, stream: TextIO | None) -> None:
        self._stream = stream if stream is not None and stream.isatty() else None

    def show(self, fraction: float) -> None:
        if self._stream is not None:
            print(f"\r{100 * fraction:3.0f} %", end="", file=self._stream, flush=True)

    def end(self) -> None:
        if self._stream is not None:
            print("\r     \r", end="", file=self._stream, flush=True)
