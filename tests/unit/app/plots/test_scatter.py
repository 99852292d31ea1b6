"""Measured against estimated: dots where they belong, agreement on the line."""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest
from PySide6.QtGui import QColor
from pytestqt.qtbot import QtBot

from planner.app.plots.survey_charts import ScatterPlot
from planner.plan.survey import Reading, Survey
from planner.survey.statistics import Residuals, residuals


def found(values: list[float], expected: list[float]) -> Residuals:
    points = tuple((0.1 * k, 0.1) for k in range(len(values)))
    readings = tuple(Reading(hole=k, value=v) for k, v in enumerate(values, start=1))
    survey = Survey(key="s", points=points, readings=readings)
    made = residuals(survey, np.array(expected))
    assert made is not None
    return made


@pytest.fixture
def plot(qtbot: QtBot) -> ScatterPlot:
    made = ScatterPlot()
    qtbot.addWidget(made)
    made.resize(300, 250)
    return made


def test_both_axes_run_between_the_same_round_numbers(plot: ScatterPlot) -> None:
    plot.show_residuals(found([20.0, 187.0], [30.0, 150.0]))
    assert plot.ends() == (0.0, 200.0)


def test_even_light_is_not_squeezed_into_a_corner(plot: ScatterPlot) -> None:
    plot.show_residuals(found([95.0, 105.0], [96.0, 104.0]))
    low, high = plot.ends()
    assert 0 < low <= 95
    assert 105 <= high < 120


def test_it_says_in_words_what_is_plotted(plot: ScatterPlot) -> None:
    plot.show_residuals(found([20.0, 187.0], [30.0, 150.0]))
    assert plot.accessibleDescription().startswith("2 dots; readings from 20 to 187")
    plot.show_residuals(None)
    assert plot.accessibleDescription() == ""


def colours_in(plot: ScatterPlot) -> set[Any]:
    image = plot.grab().toImage()
    return {
        QColor(image.pixel(x, y)).name()
        for x in range(image.width())
        for y in range(image.height())
    }


def test_a_suspect_dot_has_the_colour_of_alarm(plot: ScatterPlot) -> None:
    from planner.app.canvas.ink import Ink

    alarm = Ink.of(plot.palette()).alarm.name()
    shown = found([20.0, 187.0], [30.0, 150.0])
    plot.show_residuals(shown)
    assert alarm not in colours_in(plot)
    plot.show_residuals(shown, frozenset({2}))
    assert alarm in colours_in(plot)


def test_a_mistyped_reading_does_not_rule_the_scale(plot: ScatterPlot) -> None:
    told = [20.0, 22.0, 25.0, 24.0, 23.0, 21.0, 20.0]
    plot.show_residuals(found([*told[:3], 999.0, *told[4:]], told))
    assert plot.ends()[1] <= 30
    plot.grab()
