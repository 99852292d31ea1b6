"""What is known of surveys: at once where it is little, aside where it is much, never stale."""

from __future__ import annotations

import threading
from collections.abc import Iterator
from typing import Any

import pytest
from pytestqt.qtbot import QtBot

from planner.app.pages.survey.pictures import Answers, Question, UnderlayMaker
from planner.plan.edits import changed
from planner.plan.plan import Plan
from planner.plan.survey import Reading, Survey, SurveyGrid
from planner.survey.layout import holes
from tests.e2e.shell import made_up_light, small_plan
from tests.unit.app.pages.survey.surveying import expecting, invented


@pytest.fixture
def threads(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("PLANNER_SYNCHRONOUS", "0")


@pytest.fixture
def answers(threads: None, qapp: object) -> Iterator[Answers]:
    made = Answers(UnderlayMaker(made_up_light, expecting))
    yield made
    made.shutdown()


def large() -> Survey:
    grid = SurveyGrid(rows=20, columns=20)
    points = holes(grid, small_plan().space.footprint)
    readings = tuple(Reading(hole=k, value=100.0) for k in range(1, 401))
    return Survey(key="large", grid=grid, points=points, readings=readings)


def test_a_small_survey_is_summed_up_at_once(answers: Answers) -> None:
    summary = answers.summary(invented(small_plan()))
    assert summary is not None
    # Columns at 1/8, 3/8, 5/8, 7/8 of 100 + 100 x.
    assert summary.mean == pytest.approx(150)


def test_a_large_one_is_summed_up_aside(qtbot: QtBot, answers: Answers) -> None:
    survey = large()
    with qtbot.waitSignal(answers.ready, timeout=5000):
        assert answers.summary(survey) is None
    summary = answers.summary(survey)
    assert summary is not None
    assert summary.mean == pytest.approx(100)
    newer = changed(survey, readings=survey.readings[:-1])
    assert answers.summary(newer) is summary, "the last known one until the new one comes"


def test_readings_and_names_ask_for_no_new_light() -> None:
    plan, survey = small_plan(), invented(small_plan())
    other = changed(survey, readings=(), name="Other", note="n", warm_up_minutes=20.0)
    assert Question.of(plan, survey, 24) == Question.of(plan, other, 24)
    dim = changed(survey, output_percent=50.0)
    assert Question.of(plan, survey, 24) != Question.of(plan, dim, 24)
    assert Question.of(plan, survey, 24) != Question.of(plan, survey, 48)


def test_an_answer_to_an_older_question_is_dropped(
    qtbot: QtBot, threads: None, qapp: object
) -> None:
    gate = threading.Event()

    def slow(plan: Plan, options: Any, **named: Any) -> Any:
        if plan.lamps[0].output_percent == 100:
            gate.wait(5)
        return made_up_light(plan, options)

    answers = Answers(UnderlayMaker(slow, expecting))
    plan, survey = small_plan(), invented(small_plan())
    assert answers.underlay(plan, survey, 8) is None
    dim = changed(survey, output_percent=50.0)
    with qtbot.waitSignal(answers.ready, timeout=5000):
        assert answers.underlay(plan, dim, 8) is None
        gate.set()
    assert answers.underlay(plan, dim, 8) is not None
    assert not answers.busy
    answers.shutdown()
