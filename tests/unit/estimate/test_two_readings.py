"""The beam from two readings, against the law of distance and a sum over many small lamps."""

from __future__ import annotations

import numpy as np
import pytest

from planner.estimate.two_readings import (
    NOISE,
    PLACING_M,
    aside_over_under,
    beam_of_readings,
    beam_words,
)
from planner.plan.lamp import LampModel, PanelBody, PointBody

SMALL = LampModel(key="small", name="Small", body=PointBody(), ppf=10, watts=5)


def exponent(beam: float) -> float:
    return float(np.log(0.5) / np.log(np.cos(np.radians(beam / 2))))


@pytest.mark.parametrize("beam", [40.0, 90.0, 120.0, 150.0])
@pytest.mark.parametrize("height", [0.3, 1.2])
def test_a_small_lamp_follows_the_law_of_distance(beam: float, height: float) -> None:
    """cos^(m + 3) 45° on a level sensor (photometric distance law, CIE S 017, 17-25-104)."""
    law = np.cos(np.radians(45)) ** (exponent(beam) + 3)
    assert aside_over_under(SMALL, beam, height, height) == pytest.approx(law, rel=1e-9)
    found = beam_of_readings(SMALL, 100.0, 100.0 * law, height)
    assert found.angle_deg == pytest.approx(beam, abs=1e-6)


@pytest.mark.parametrize("size", [(0.55, 0.025), (0.1, 0.4), (0.45, 0.45)])
def test_a_body_of_some_size_is_summed_over_its_face(size: tuple[float, float]) -> None:
    """As many small lamps, the sum written here; the reading aside is across the longer side."""
    model = SMALL.model_copy(update={"body": PanelBody(length=size[0], width=size[1])})
    height, m = 0.4, exponent(100.0)
    x, y = np.meshgrid(*((np.arange(400) + 0.5) / 400 * side - side / 2 for side in size))

    def light(px: float, py: float) -> float:
        square = (x - px) ** 2 + (y - py) ** 2 + height**2
        return float(((height / np.sqrt(square)) ** (m + 1) / square).sum())

    aside = light(0.0, height) if size[0] >= size[1] else light(height, 0.0)
    ratio = aside / light(0.0, 0.0)
    assert aside_over_under(model, 100.0, height, height) == pytest.approx(ratio, rel=1e-3)
    found = beam_of_readings(model, 1.0, ratio, height)
    assert found.angle_deg == pytest.approx(100.0, abs=0.2)
    if size[0] == size[1]:
        # The small lamp's formula would be far off: cos^(m + 3) 45° = 2^(-(m + 3) / 2).
        assert -2 * np.log2(ratio) - 3 < m - 1


def test_its_doubt_covers_what_readings_and_lengths_leave_open() -> None:
    """2,000 draws by the closed form: noise of both readings, height and place by tape."""
    random, count, height, m = np.random.default_rng(4), 2_000, 0.5, 1.0
    h = height + PLACING_M * random.standard_normal(count)
    a = height + PLACING_M * random.standard_normal(count)
    noise = 1 + NOISE * random.standard_normal((2, count))
    ratio = (h / np.hypot(h, a)) ** (m + 3) * noise[0] / noise[1]
    found = np.log(ratio) / np.log(np.cos(np.radians(45))) - 3
    angles = 2 * np.degrees(np.arccos(0.5 ** (1 / found)))
    told = beam_of_readings(SMALL, 100.0, 25.0, height)
    assert told.angle_deg == pytest.approx(120.0)
    assert told.doubt_deg / np.sqrt(3) == pytest.approx(angles.std(), rel=0.1)
    # As evenly likely it holds what a half-width of 1.73 standard uncertainties of a normal does.
    assert np.mean(abs(angles - 120) < told.doubt_deg) == pytest.approx(0.917, abs=0.02)


def test_readings_that_fit_no_beam_are_refused_in_words() -> None:
    with pytest.raises(ValueError, match="each must be above 0"):
        beam_of_readings(SMALL, 100.0, 0.0, 0.5)
    with pytest.raises(ValueError, match=r"Aside it read 0\.6 of what .* Keep the sensor level"):
        beam_of_readings(SMALL, 100.0, 60.0, 0.5)


def test_what_is_said() -> None:
    found = beam_of_readings(SMALL, 100.0, 25.0, 0.5)
    assert beam_words(found, SMALL, None) == f"The beam is 120 ± {found.doubt_deg:.0f}°."
    doubted = SMALL.model_copy(update={"beam_uncertainty_deg": 2 * found.doubt_deg})
    assert beam_words(found, doubted, 8.0).endswith(
        "Of the mean's ± the beam alone made 8; with this it makes about 4."
    )
