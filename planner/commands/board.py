"""The command that prints a survey board: its options and its work."""

# ruff: noqa: PLC0415 - importing late is what keeps the start quick

from __future__ import annotations

import argparse
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from planner.plan.plan import Plan
    from planner.plan.survey import Survey


def add_board_options(parser: argparse.ArgumentParser) -> None:
    """The options of ``board``."""
    parser.add_argument("plan", metavar="PLAN")
    parser.add_argument("--out", required=True, metavar="FILE.pdf", help="write the board here")
    parser.add_argument("--paper", choices=("a4", "letter"), default="a4")
    parser.add_argument(
        "--survey", type=int, metavar="N", help="number of the plan's survey, counted from 1"
    )
    parser.add_argument("--unit", choices=("cm", "in"), default="cm", help="of the lengths written")


def board_file(plan: Plan, asked: argparse.Namespace) -> str:
    """Write the PDF and say what was written.

    Takes the holes of the survey asked for, of the plan's first, or, where it has none, the
    grid EN 12464-1 asks for.

    Raises
    ------
    ValueError
        If there is no such survey or the board is too large; the message is a sentence.
    OSError
        If the file cannot be written.
    """
    survey, holes = _survey(plan, asked.survey)
    from planner.reports.board import Paper, write_board
    from planner.units import LengthUnit

    path = Path(asked.out)
    write_board(
        path,
        plan.space.footprint,
        survey,
        paper=Paper(asked.paper),
        unit=LengthUnit(asked.unit),
        title=f"{plan.name}, {survey.name}",
    )
    return f"Wrote {path.resolve()} ({holes}; print at 100 %, without fitting)"


def _survey(plan: Plan, number: int | None) -> tuple[Survey, str]:
    if number is not None and not 1 <= number <= len(plan.surveys):
        count = len(plan.surveys)
        has = f"{count} survey{'' if count == 1 else 's'}" if count else "no survey"
        raise ValueError(f"There is no survey {number}: this plan has {has}.")
    if plan.surveys:
        found = plan.surveys[(number or 1) - 1]
        return found, f"{len(found.points)} holes of '{found.name}'"
    from planner.plan.survey import Survey
    from planner.survey.layout import holes, standard_grid

    grid = standard_grid(plan.space.footprint)
    points = holes(grid, plan.space.footprint)
    survey = Survey(key="board", name="New survey", grid=grid, points=points)
    return survey, f"{len(points)} holes by the rule of EN 12464-1"
