"""The board on paper: asks where to, and writes the PDF."""

from __future__ import annotations

from pathlib import Path
from typing import Final

from planner.app.questions import Questions
from planner.files.atomic import write_atomically
from planner.files.errors import PlanFileError, system_problem
from planner.plan.plan import Plan
from planner.plan.survey import Survey
from planner.units import LengthUnit

PDF_FILTER: Final = "PDF (*.pdf);;All files (*)"


def print_board(
    plan: Plan, survey: Survey, paper: str, unit: LengthUnit, questions: Questions, folder: Path
) -> Path | None:
    """Write board and recording sheet where the user wants; None where nothing was written."""
    from planner.reports.board import BoardError, Paper, board_pdf  # noqa: PLC0415 - seldom

    kept = "".join("-" if mark in '<>:"/\\|?*' or ord(mark) < 32 else mark for mark in survey.name)
    proposal = folder / f"{kept.strip(' .')[:80] or 'survey'} board.pdf"
    path = questions.save_path("Board and recording sheet", proposal, PDF_FILTER)
    if path is None:
        return None
    path = path if path.suffix else path.with_name(f"{path.name}.pdf")
    title = f"{plan.name}, {survey.name}"
    try:
        data = board_pdf(plan.space.footprint, survey, paper=Paper(paper), unit=unit, title=title)
        write_atomically(path, data)
    except OSError as error:
        problem = system_problem(path, error, act="saved")
        questions.tell_failure("The board was not written", str(problem))
    except BoardError as error:
        text = str(error)
        questions.tell_failure("The board was not written", text[:1].upper() + text[1:])
    except ValueError:
        problem = PlanFileError(path, "no file can have such a name", act="saved")
        questions.tell_failure("The board was not written", str(problem))
    else:
        return path
    return None
