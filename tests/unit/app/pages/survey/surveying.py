"""A survey page for tests, with light that is made up and an invented survey."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import numpy as np
from pytestqt.qtbot import QtBot

from planner.app.display import Display, SelectionModel
from planner.app.document import Document
from planner.app.fields.choosers import Shelf
from planner.app.fields.panel import Workplace
from planner.app.pages.survey.page import SurveyPage
from planner.app.pages.survey.pictures import UnderlayMaker
from planner.app.settings import Settings
from planner.catalogue.library import load_catalogue
from planner.plan.plan import Plan
from planner.plan.survey import Reading, Survey, SurveyGrid
from planner.plan.survey_edits import add_survey
from planner.survey.layout import holes
from tests.e2e.shell import ReadyAnswers, made_up_light, small_plan

GRID = SurveyGrid(rows=3, columns=4)


def invented(
    plan: Plan, key: str = "survey-1", factor: float = 1.0, name: str = "", **parts: Any
) -> Survey:
    """Readings of a made-up light: (100 + 100 x) times a factor at the holes of ``GRID``."""
    points = holes(GRID, plan.space.footprint)
    readings = tuple(
        Reading(hole=k, value=factor * (100 + 100 * x)) for k, (x, _) in enumerate(points, start=1)
    )
    whole: dict[str, Any] = {
        "key": key, "name": name or f"Invented {key}", "grid": GRID, "points": points,
        "readings": readings,
    }  # fmt: skip
    return Survey(**{**whole, **parts})


def expecting(_plan: Plan, survey: Survey, *_: Any, **__: Any) -> Any:
    """What a perfect meter reads in the made-up light."""
    return np.array([100 + 100 * x for x, _ in survey.points])


def workplace(folder: Path, plan: Plan | None = None) -> Workplace:
    """What the page works on; own entries go to a folder of the test."""
    shelf = Shelf(load_catalogue(folder), folder=folder)
    return Workplace(Document(plan or small_plan()), SelectionModel(), Display(), shelf)


def make_page(
    qtbot: QtBot, folder: Path, plan: Plan | None = None, *surveys: Survey
) -> tuple[SurveyPage, ReadyAnswers]:
    """A shown page over a plan with these surveys, and who answers its questions."""
    plan = plan or small_plan()
    for survey in surveys:
        plan = add_survey(plan, survey)
    place, answers = workplace(folder, plan), ReadyAnswers()
    maker = UnderlayMaker(made_up_light, expecting)
    page = SurveyPage(place, answers, Settings.of_user(), maker=maker)
    for owned in (place.document, place.selection, place.display, place.shelf):
        owned.setParent(page)
    qtbot.addWidget(page, before_close_func=lambda made: made.shutdown())
    page.resize(1280, 720)
    with qtbot.waitActive(page):
        page.show()
        page.activateWindow()
    return page, answers
