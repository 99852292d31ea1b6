"""Lamps whose light begins or ends at the height of their face, against closed forms."""

from __future__ import annotations

import math

import numpy as np
import pytest

from planner.light.close_up import direct_on_texels
from planner.light.emission import CosinePower, Profile, Source, TabulatedProfile
from planner.light.prism import FloatArray, Prism, totals
from planner.light.surfaces import Surfaces

WIDTH, DEPTH, HEIGHT = 0.9, 0.7, 1.0
EVEN_DOWN = CosinePower(0.0)
EVEN_UP = TabulatedProfile(np.array([90.0, 180.0]), np.array([1.0, 1.0]))


def solid_angle(across: tuple[float, float], along: tuple[float, float], gap: float) -> float:
    """Of a rectangle seen from ``gap`` before the origin of its plane.

    A corner at the foot of the perpendicular: Ω = atan(a b / (d √(a² + b² + d²))); four of
    these, with signs, make any rectangle.
    """
    return sum(
        i * j * math.atan2(a * b, gap * math.sqrt(a * a + b * b + gap * gap))
        for i, a in zip((-1, 1), across, strict=True)
        for j, b in zip((-1, 1), along, strict=True)
    )


def facet_flux(
    profile: Profile, z: float, at: tuple[float, float] = (0.4, 0.3), patch: float = 0.12
) -> FloatArray:
    """Flux on the facets of a box: walls y0, x1, y1, x0, ceiling, bottom."""
    corners = np.array([[0, 0], [WIDTH, 0], [WIDTH, DEPTH], [0, DEPTH]], dtype=float)
    prism = Prism(corners, 0.0, HEIGHT)
    surfaces = Surfaces(prism, ((),) * 4, patch, 4)
    source = Source((*at, z), 0.0, np.zeros((1, 4)), profile)
    density = direct_on_texels(surfaces, source, -1.0, 5, lambda: None)
    return totals(surfaces.texel_facet, density * surfaces.texel_area, 6)


def even_flux(z: float, at: tuple[float, float], *, up: bool) -> FloatArray:
    """The solid angle of each facet by 2π, as ``facet_flux`` orders them."""
    rise = HEIGHT - z if up else z
    across, along = (-at[0], WIDTH - at[0]), (-at[1], DEPTH - at[1])
    flat = solid_angle(across, along, rise)
    walls = [
        solid_angle(across, (0, rise), at[1]),
        solid_angle(along, (0, rise), WIDTH - at[0]),
        solid_angle(across, (0, rise), DEPTH - at[1]),
        solid_angle(along, (0, rise), at[0]),
    ]
    return np.array([*walls, *((flat, 0.0) if up else (0.0, flat))]) / (2 * math.pi)


@pytest.mark.parametrize("z", [0.5, 0.512, 0.53, 0.548])
@pytest.mark.parametrize("profile", [EVEN_DOWN, EVEN_UP])
def test_each_surface_gets_its_solid_angle(profile: Profile, z: float) -> None:
    """The same intensity everywhere in a half space: flux is the solid angle by 2π."""
    expected = even_flux(z, (0.4, 0.3), up=profile is EVEN_UP)
    assert abs(expected.sum() - 1) < 1e-12
    assert np.abs(facet_flux(profile, z) - expected).max() < 2e-3


@pytest.mark.parametrize("z", [0.5, 0.512, 0.53, 0.548])
def test_a_bulb_close_to_a_corner_gives_each_wall_its_solid_angle(z: float) -> None:
    """1.5 cm from one wall and 1.8 cm from the next, with texels of 1.9 cm."""
    at = (WIDTH - 0.015, DEPTH - 0.018)
    expected = even_flux(z, at, up=False)
    assert abs(expected.sum() - 1) < 1e-12
    assert np.abs(facet_flux(EVEN_DOWN, z, at, 0.075) - expected).max() < 2e-3
