"""Zonal integration against published tables, closed forms and an independent quadrature."""

from __future__ import annotations

import math
from pathlib import Path

import numpy as np
import pytest
from scipy import integrate as scipy_integrate

from planner.catalogue.lamp_files import photometry as integrate
from planner.catalogue.lamp_files.convert import summary
from planner.catalogue.lamp_files.photometry import FloatArray, Photometry
from planner.catalogue.lamp_files.reading import read_lamp_file

SAMPLES = Path(__file__).parents[3] / "data" / "lamp_files"

# Zonal constants of the IESNA Lighting Handbook for zones of 10°, and the lumens of
# I = 1000 cosθ: by the published mid-zone convention, and exact π·1000 (sin²θ₂ - sin²θ₁).
CONSTANTS = [0.0955, 0.2835, 0.4629, 0.6282, 0.7744, 0.8972, 0.9926, 1.0579, 1.0911]
MID_ZONE = [95.09, 273.81, 419.50, 514.59, 547.62, 514.59, 419.50, 273.81, 95.09]
EXACT = [94.73, 272.77, 417.90, 512.63, 545.53, 512.63, 417.90, 272.77, 94.73]


def made(polar: FloatArray, candela: FloatArray, azimuths: FloatArray | None = None) -> Photometry:
    around = np.zeros(1) if azimuths is None else azimuths
    table = np.atleast_2d(candela)
    return Photometry(polar, around, table, "made for a test")


def lambertian(step: float) -> Photometry:
    polar = np.linspace(0, 90, round(90 / step) + 1)
    return made(polar, 1000 * np.cos(np.radians(polar)))


def test_a_fine_lambertian_table_gives_the_exact_zones() -> None:
    lamp = lambertian(0.25)
    found = integrate.zonal_lumens(lamp, np.arange(0.0, 91.0, 10.0))
    np.testing.assert_allclose(found, EXACT, atol=0.02)
    assert integrate.total_lumens(lamp) == pytest.approx(1000 * math.pi, rel=3e-6)


def test_a_linear_intensity_is_integrated_exactly() -> None:
    # I = 1000 (1 - 2θ/π): ∫ (1 - 2θ/π) sinθ dθ from 0 to π/2 is 1 - 2/π.
    lamp = made(np.array([0.0, 90.0]), np.array([1000.0, 0.0]))
    assert integrate.total_lumens(lamp) == pytest.approx(2000 * math.pi * (1 - 2 / math.pi))


def test_the_same_light_everywhere_is_4_pi() -> None:
    lamp = made(np.array([0.0, 75.0, 180.0]), np.full(3, 50.0))
    assert integrate.total_lumens(lamp) == pytest.approx(200 * math.pi)
    assert integrate.downward_share(lamp) == pytest.approx(0.5)


def test_a_table_without_symmetry_against_quadrature() -> None:
    polar = np.array([0.0, 20.0, 55.0, 90.0, 130.0])
    azimuths = np.array([0.0, 50.0, 90.0, 200.0, 310.0])
    table = np.random.default_rng(5).uniform(10, 900, (5, 5))
    closed = np.vstack([table, table[:1]])
    around = np.append(azimuths, 360.0)

    def intensity(theta: float, phi: float) -> float:
        rows = [np.interp(math.degrees(theta), polar, row, right=0.0) for row in closed]
        return float(np.interp(math.degrees(phi), around, rows)) * math.sin(theta)

    total = 0.0
    for lower, upper in zip(np.radians(polar), np.radians(polar[1:]), strict=False):
        for start, end in zip(np.radians(around), np.radians(around[1:]), strict=False):
            total += scipy_integrate.dblquad(intensity, start, end, lower, upper - 1e-12)[0]
    assert integrate.total_lumens(made(polar, table, azimuths)) == pytest.approx(total, rel=1e-7)


def test_samples_add_up_to_what_their_formula_gives() -> None:
    # A bend in azimuth cancels: π × 1000 lm, less what chords of 10° cut off a cosine:
    # 3133.6 (0.25 % less). 600 cosθ down and 400 cosθ up in steps of 15°: within 0.6 %.
    for path in SAMPLES.glob("lm63-20*.ies"):
        assert integrate.total_lumens(read_lamp_file(path)) == pytest.approx(3141.59, rel=0.003)
    both = read_lamp_file(SAMPLES / "lm63-up-and-down.ies")
    assert integrate.total_lumens(both) == pytest.approx(1000 * math.pi, rel=0.006)
    assert integrate.downward_share(both) == pytest.approx(0.6)


def test_efficacy_is_lumens_by_watts() -> None:
    lamp = read_lamp_file(SAMPLES / "lm63-2019.ies")
    assert integrate.efficacy(lamp) == pytest.approx(1000 * math.pi / 40, rel=0.003)
    assert integrate.efficacy(lambertian(10)) is None


def test_a_polar_curve_runs_from_one_side_to_the_other() -> None:
    lamp = read_lamp_file(SAMPLES / "lm63-2002-absolute.ies")
    angles, candela = integrate.polar_curve(lamp, 90)
    assert angles[0] == -90
    assert angles[-1] == 90
    assert (np.diff(angles) > 0).all()
    # 1000 cos30° (1 + 0.2 sin30°) towards azimuth 90, minus on the other side.
    assert candela[list(angles).index(30)] == pytest.approx(866.025 * 1.1, abs=0.01)
    assert candela[list(angles).index(-30)] == pytest.approx(866.025 * 0.9, abs=0.01)
    upward = made(np.array([90.0, 180.0]), np.array([0.0, 7.0]))
    assert list(integrate.polar_curve(upward, 0)[0]) == [-180, -90, 90, 180]


def test_beam_angles() -> None:
    # cosθ falls to half at 60° on either side.
    assert integrate.beam_angle(lambertian(1), 30) == pytest.approx(120, abs=1e-6)
    # Linear from 1 at 0° to 0 at 40° ahead and 0 at 20° behind: half at 20° and 10°.
    lopsided = made(
        np.array([0.0, 20.0, 40.0]), np.array([[1, 0.5, 0], [1, 0, 0]]), np.array([0.0, 180.0])
    )
    assert integrate.beam_angle(lopsided, 0) == pytest.approx(30)
    assert integrate.beam_angle(made(np.array([0.0, 180.0]), np.ones(2)), 0) is None


def test_a_summary_says_it_in_words() -> None:
    said = dict(summary(read_lamp_file(SAMPLES / "eulumdat-isym1.ldt")))
    assert said["Lamp"] == "Invented panel"
    assert said["Light in all directions"] == "3134 lm"
    assert said["Lamps as stated"] == "4000 lm; 78.3 % leave the lamp body"
    assert said["Light that goes down"] == "100.0 %"
    assert said["Luminous opening"] == "circle, 25.0 × 25.0 cm"
    assert said["Beam angle across the length"] == "120°"
    assert said["Input power"] == "40 W, 78 lm/W"
    absolute = dict(summary(read_lamp_file(SAMPLES / "lm63-2019.ies")))
    assert absolute["Lamps as stated"] == "absolute photometry, no lumens stated"
