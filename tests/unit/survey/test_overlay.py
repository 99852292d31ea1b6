"""Readings over an estimate: interpolation, residuals and their words, meter response."""

from __future__ import annotations

import numpy as np
import pytest

from planner.estimate.calibrate_model import even_light_factor, reading_factor
from planner.plan.survey import Meter, Reading, Survey, SurveyGrid
from planner.survey.layout import holes
from planner.survey.statistics import (
    NO_LIGHT,
    dead_band,
    interpolated_map,
    residuals,
)

SQUARE = ((0.0, 0.0), (0.6, 0.0), (0.6, 0.6), (0.0, 0.6))
POINTS = holes(SurveyGrid(rows=5, columns=5), SQUARE)


def centres(count: int, length: float = 0.6) -> np.ndarray:
    return (np.arange(count) + 0.5) * length / count


def survey(values: np.ndarray, meter: Meter | None = None) -> Survey:
    readings = tuple(Reading(hole=k, value=float(v)) for k, v in enumerate(values, start=1))
    return Survey(key="s", meter=meter or Meter(), points=POINTS, readings=readings)


@pytest.mark.parametrize("light", [0.0, 1e-9])
def test_nothing_is_said_of_agreement_with_a_dark_estimate(light: float) -> None:
    found = residuals(survey(np.full(25, 100.0)), np.full(25, light))
    assert found is not None
    assert found.words() == (NO_LIGHT,)
    assert not found.poor, "no usual mistake explains that there is no lamp"


def test_residuals_of_a_meter_that_reads_eight_per_cent_high() -> None:
    x, y = np.array(POINTS).T
    estimated = 200 + 100 * x - 60 * y
    found = residuals(survey(1.08 * estimated), estimated)
    assert found is not None
    np.testing.assert_allclose(found.ratio, 1.08)
    assert found.relative_bias == pytest.approx(0.08)
    assert found.scatter == pytest.approx(0.0, abs=1e-12)
    assert found.r2 == pytest.approx(1.0)
    assert found.rms == pytest.approx(np.sqrt(((0.08 * estimated) ** 2).mean()))
    words = found.words()
    assert "8.0 % above the estimate" in words[0]
    assert "the shape of the light is right" in words[1]
    # ± 5 % even and 2 % noise: 1.96 · √(0.0289² + 0.02²) = 6.9 %
    assert dead_band(Meter()) == pytest.approx(0.0688, abs=5e-4)
    assert found.outside.all()
    tolerant = residuals(survey(1.04 * estimated), estimated)
    assert tolerant is not None
    assert not tolerant.outside.any()
    assert "calibration alone could explain" in tolerant.words()[0]


def test_residuals_name_a_wrong_shape_and_a_wrong_level() -> None:
    x, _ = np.array(POINTS).T
    found = residuals(survey(300 + 400 * (x - 0.3)), np.full(25, 200.0))
    assert found is not None
    assert "photon flux" in found.words()[0]
    assert "profile and place" in found.words()[1]
    assert found.r2 is None
    assert "correlation says nothing" in found.words()[2]
    assert residuals(Survey(key="s", points=POINTS), np.full(25, 1.0)) is None


def test_the_map_of_readings_alone_takes_every_value_and_keeps_planes() -> None:
    x, y = np.array(POINTS).T
    cells = centres(24)
    inside = np.ones((24, 24), dtype=np.bool_)
    inside[20:, 20:] = False
    table = interpolated_map(cells, cells, inside, survey(200 + 100 * x - 60 * y))
    assert table is not None
    expected = 200 + 100 * cells[None, :] - 60 * cells[:, None]
    np.testing.assert_allclose(table[inside], expected[inside])
    assert np.isnan(table[~inside]).all()
    bumpy = np.random.default_rng(1).uniform(100, 200, 25)
    at = centres(5)
    through = interpolated_map(at, at, np.ones((5, 5), dtype=np.bool_), survey(bumpy))
    assert through is not None
    for value, (u, v) in zip(bumpy, POINTS, strict=True):
        assert through[np.argmin(abs(at - v)), np.argmin(abs(at - u))] == pytest.approx(value)


def test_readings_on_one_line_make_no_map() -> None:
    line = Survey(
        key="s",
        points=((0.1, 0.1), (0.2, 0.2), (0.3, 0.3), (0.4, 0.4)),
        readings=tuple(Reading(hole=k, value=100.0) for k in range(1, 5)),
    )
    assert interpolated_map(centres(4), centres(4), np.ones((4, 4), dtype=np.bool_), line) is None


def test_response_in_even_light() -> None:
    """c = cos θ: ∫ cosθ · 2 sinθ cosθ dθ = 2/3."""
    angles = tuple(float(a) for a in range(0, 91, 2))
    meter = Meter(
        response_angles_deg=angles,
        response_relative=tuple(float(np.cos(np.radians(a))) for a in angles),
    )
    assert even_light_factor(meter) == pytest.approx(2 / 3, abs=5e-4)
    assert even_light_factor(Meter()) == 1.0
    factor = reading_factor(meter, np.array([1.0, 0.0]), np.array([0.9, 0.9]))
    assert factor == pytest.approx([0.9, 2 / 3], abs=5e-4)
