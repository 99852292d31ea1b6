"""Residuals in colour: grey where nothing can be told, the nearest hole everywhere else."""

from __future__ import annotations

import numpy as np
import pytest
from PySide6.QtGui import QPalette
from pytestqt.qtbot import QtBot

from planner.app import theme
from planner.app.canvas.ink import Ink
from planner.app.plots.colour_bar import ColourBar
from planner.app.plots.difference import unresolved_colour
from planner.app.plots.survey_charts import ResidualMap, nearest, residual_colours


@pytest.fixture(params=[False, True], ids=["light", "dark"])
def ink(request: pytest.FixtureRequest, qapp: object) -> Ink:
    palette: QPalette = theme.palette(dark=request.param)
    return Ink.of(palette)


def test_inside_the_dead_band_is_grey_and_beyond_it_has_a_hue(ink: Ink) -> None:
    rgba = residual_colours(np.array([-20.0, -4.0, 0.0, 4.0, 20.0]), 20.0, 5.0, ink)
    grey = unresolved_colour(ink)
    for inner in rgba[1:4]:
        assert tuple(inner) == (grey.red(), grey.green(), grey.blue(), 255)
    assert rgba[0][2] > rgba[0][0], "below is blue"
    assert rgba[4][0] > rgba[4][2], "above is orange"


def test_what_is_unknown_is_transparent(ink: Ink) -> None:
    assert residual_colours(np.array([np.nan]), 1.0, 0.1, ink)[0, 3] == 0


def test_every_place_belongs_to_its_nearest_hole() -> None:
    points = np.array([[0.0, 0.0], [1.0, 0.0], [0.0, 1.0]])
    x, y = np.array([0.1, 0.9]), np.array([0.1, 0.8])
    assert nearest(x, y, points).tolist() == [[0, 1], [2, 1]]


def test_one_wild_reading_does_not_set_the_scale() -> None:
    values = np.full(30, 8.0)
    values[3] = -400.0
    shown = ResidualMap(np.zeros((30, 2)), values, np.full(30, 1.0))
    assert shown.limit == 8.0


def test_ratios_never_run_below_nothing() -> None:
    shown = ResidualMap(np.zeros((3, 2)), np.array([4.0, 5.0, 6.0]), np.full(3, 0.1), 1.0)
    assert shown.limit == 1.0


def test_values_are_written_with_their_sign() -> None:
    shown = ResidualMap(np.zeros((2, 2)), np.array([-12.0, 30.0]), np.ones(2))
    assert [shown.text(v) for v in (-12.0, 30.0, 0.2, float("nan"))] == ["−12", "+30", "0", "–"]
    ratio = ResidualMap(np.zeros((1, 2)), np.ones(1), np.ones(1), 1.0)
    assert ratio.text(0.957) == "0.96"


def test_the_bar_says_what_it_shows(qtbot: QtBot) -> None:
    bar = ColourBar()
    qtbot.addWidget(bar)
    residuals = ResidualMap(np.zeros((1, 2)), np.array([30.0]), np.ones(1), 0.0, "µmol m⁻² s⁻¹")
    bar.show_legend(residuals.legend)
    assert "-30" in bar.accessibleDescription()
    assert "grey" in bar.accessibleDescription()
    # Round numbers with their signs, as on every bar; the middle is nothing.
    bar.resize(bar.sizeHint().width(), 400)
    assert [bar.legend.text(value) for value in bar.ticks()] == [
        "−30", "−20", "−10", "0", "+10", "+20", "+30",
    ]  # fmt: skip
    assert not bar.grab().isNull()
