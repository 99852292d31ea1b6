"""Flux of a tabulated profile against zonal integration."""

from __future__ import annotations

import math

import numpy as np
import pytest

from planner.light.emission import CosinePower, TabulatedProfile

# Zonal constants 2π(cos θ1 - cos θ2) of ten-degree zones, as tabulated in the IESNA
# Lighting Handbook (values from memory, recomputed from the definition).
ZONAL_CONSTANTS = (0.0955, 0.2835, 0.4629, 0.6282, 0.7744, 0.8972, 0.9926, 1.0579, 1.0911)


def test_zonal_constants_add_up_to_the_half_space() -> None:
    edges = np.radians(np.arange(0, 91, 10))
    constants = 2 * math.pi * (np.cos(edges[:-1]) - np.cos(edges[1:]))
    np.testing.assert_allclose(constants, ZONAL_CONSTANTS, atol=6e-5)


def test_lambertian_table_agrees_with_the_mid_zone_method() -> None:
    # IESNA zonal method: mid-zone intensity times zonal constant, 3153.59 lm for
    # I = 1000 cosθ cd, which is 0.382 % above the exact π · 1000.
    angles = np.arange(0.0, 91.0, 1.0)
    profile = TabulatedProfile(angles, np.cos(np.radians(angles)))
    middles = np.cos(np.radians(np.arange(5.0, 90.0, 10.0)))
    lumens = float(profile.intensity(middles) @ np.array(ZONAL_CONSTANTS))
    assert lumens == pytest.approx(3153.59 / 3141.59, rel=2e-4)


@pytest.mark.parametrize(
    "table",
    [
        ([0.0, 90.0], [1.0, 1.0]),
        ([0.0, 180.0], [1.0, 1.0]),
        ([0.0, 10.0, 35.0, 60.0, 90.0], [1.0, 0.95, 0.5, 0.1, 0.0]),
        ([20.0, 40.0, 70.0], [0.0, 1.0, 0.2]),
        ([0.0, 60.0, 90.0, 120.0, 180.0], [0.2, 1.0, 0.7, 0.4, 0.1]),
    ],
)
def test_any_table_carries_unit_flux(table: tuple[list[float], list[float]]) -> None:
    # ∫ I 2π sinθ dθ = 1 by a fine midpoint rule made here.
    profile = TabulatedProfile(np.array(table[0]), np.array(table[1]))
    edges = np.linspace(0.0, math.pi, 200001)
    middle = (edges[:-1] + edges[1:]) / 2
    ring = 2 * math.pi * (np.cos(edges[:-1]) - np.cos(edges[1:]))
    assert float(profile.intensity(np.cos(middle)) @ ring) == pytest.approx(1.0, rel=1e-5)


@pytest.mark.parametrize("exponent", [0.0, 1.0, 2.5, 30.0])
def test_photons_leave_as_the_cosine_power_says(exponent: float) -> None:
    # Share of the flux inside the cone θ is 1 - cos^(m+1) θ, the integral of cos^m.
    spread = (np.arange(100000) + 0.5) / 100000
    drawn, _ = CosinePower(exponent).sample(spread, spread)
    for cosine in (0.2, 0.5, 0.8, 0.95):
        assert float((drawn > cosine).mean()) == pytest.approx(
            1 - cosine ** (exponent + 1), abs=2e-4
        )


def test_photons_leave_as_the_table_says() -> None:
    angles, relative = np.array([0.0, 30.0, 100.0, 150.0]), np.array([1.0, 0.8, 0.3, 0.0])
    profile = TabulatedProfile(angles, relative)
    spread = (np.arange(100000) + 0.5) / 100000
    drawn = np.degrees(np.arccos(profile.sample(spread, spread)[0]))
    edges = np.radians(np.linspace(0.0, 150.0, 30001))
    middle = (edges[:-1] + edges[1:]) / 2
    flux = np.interp(np.degrees(middle), angles, relative) * -np.diff(np.cos(edges))
    for angle in (20.0, 45.0, 90.0, 120.0):
        within = flux[np.degrees(middle) < angle].sum() / flux.sum()
        assert float((drawn < angle).mean()) == pytest.approx(within, abs=5e-4)
