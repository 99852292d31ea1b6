"""Pointer, survey, picture and export tell one value at one place of one map."""

from __future__ import annotations

import csv
import io
from dataclasses import replace

import numpy as np
import pytest

from planner.app.canvas.items import value_at
from planner.reports.exports import estimate_to_csv
from tests.unit.app.canvas.scenes import light_of, plan_of
from tests.unit.light.test_cellmap import edges, wave, wave_means


def test_hover_survey_screen_and_csv_read_the_same_light() -> None:
    """Outside truth: 300 + 120 cos(2x) cos(3y), whose cell means are known in closed form."""
    estimate = light_of(plan_of(), cells=8)
    assert estimate.map.bounds == pytest.approx((0, 0, 1, 1))
    at = edges(8, 1.0)
    estimate = replace(estimate, ppfd=wave_means(at, at))
    lines = list(csv.DictReader(io.StringIO(estimate_to_csv(estimate))))
    inner = [
        line for line in lines if 0.2 < float(line["x_m"]) < 0.8 and 0.2 < float(line["y_m"]) < 0.8
    ]
    assert len(inner) == 16
    points = np.array([(float(line["x_m"]), float(line["y_m"])) for line in inner])
    exported = np.array([float(line["at_centre"]) for line in inner])
    hover = np.array([value_at(estimate, x, y) for x, y in points])
    screen = estimate.map.raster(24, 24)
    shown = np.array([screen[int(y * 24), int(x * 24)] for x, y in points])
    under_survey = estimate.map.at(points)
    truth = wave(points)
    for read in (exported, hover, shown, under_survey):
        np.testing.assert_allclose(read, truth, rtol=1e-3)
        np.testing.assert_allclose(read, hover, rtol=1e-6)
