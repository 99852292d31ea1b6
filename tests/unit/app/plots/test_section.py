"""The section plot where there is no light."""

from __future__ import annotations

import dataclasses
from pathlib import Path

import numpy as np
import pytest
from pytestqt.qtbot import QtBot

from planner.app.display import Display
from planner.app.plots.section import SectionPlot
from tests.e2e.shell import small_plan
from tests.e2e.sketching import written_estimate

pytestmark = pytest.mark.gui


@pytest.fixture
def plot(qtbot: QtBot, tmp_path: Path) -> SectionPlot:
    display = Display()
    made = SectionPlot(display)
    display.setParent(made)
    qtbot.addWidget(made)
    return made


def test_darkness_has_a_plain_scale_and_no_line(plot: SectionPlot) -> None:
    estimate = written_estimate(small_plan())
    dark = dataclasses.replace(estimate, ppfd=np.zeros_like(estimate.ppfd))
    plot.show_profile(dark, ((0.0, 0.5), (1.0, 0.5)))
    _, (low, high) = plot.view()
    assert low == pytest.approx(0, abs=0.1)
    assert 100 <= high < 120
    distance, _ = plot.profile()
    assert len(distance) == 0


def test_light_brings_the_line_back(plot: SectionPlot) -> None:
    plot.show_profile(None, ((0.0, 0.5), (1.0, 0.5)))
    # Away from the dark corner the map is even.
    plot.show_profile(written_estimate(small_plan()), ((0.0, 0.9), (1.0, 0.9)))
    distance, ppfd = plot.profile()
    assert distance[-1] == pytest.approx(100, rel=1e-3)
    assert max(ppfd) == pytest.approx(212, rel=0.01)
