"""Light of panels and bars whose measured table kinks, against adaptive integration.

Photometric distance law (CIE S 017, term 17-25-104) integrated over the emitting area by
scipy.integrate.quad in the one direction and split where rays cross the angles of the table in
the other.
"""

from __future__ import annotations

import math
from itertools import pairwise

import numpy as np
import pytest
from scipy import integrate

from planner.light.direct import irradiance
from planner.light.emission import CosinePower, Source, TabulatedProfile
from planner.light.prism import FloatArray
from planner.plan.lamp import CosineProfile, Lamp, TableProfile
from tests.physics.rooms import BLACK, box, lamp, light, plan, rms_and_mean

ANGLES = np.linspace(0.0, 90.0, 12)
ROUGH = np.array([0.94, 0.80, 0.91, 0.87, 0.60, 0.60, 0.49, 0.39, 0.20, 0.18, 0.38, 0.0])
HEIGHT = 0.22


def integrated(profile: TabulatedProfile, size: tuple[float, float], x: float, y: float) -> float:
    """Flux density at (x, y) under a panel of unit flux, centred at (0, 0, HEIGHT)."""
    length, width = size

    def density(u: float, v: float) -> float:
        square = (u - x) ** 2 + (v - y) ** 2 + HEIGHT**2
        cosine = HEIGHT / math.sqrt(square)
        return float(profile.intensity(np.array(cosine))) * cosine / square

    def along(v: float) -> float:
        # Where the row crosses a cone of the table: tanθ = r / HEIGHT.
        reach = (HEIGHT * np.tan(np.radians(ANGLES[1:-1]))) ** 2 - (v - y) ** 2
        half = np.sqrt(reach[reach > 0])
        cuts = np.concatenate([x - half, x + half])
        cuts = np.sort(cuts[np.abs(cuts) < length / 2])
        edges = [-length / 2, *cuts.tolist(), length / 2]
        of_row = np.vectorize(lambda u: density(u, v))
        parts = [integrate.fixed_quad(of_row, a, b, n=6)[0] for a, b in pairwise(edges)]
        return float(sum(parts))

    value, _ = integrate.quad(along, -width / 2, width / 2, epsrel=1e-5, limit=200)
    return float(value) / (length * width)


@pytest.mark.parametrize("size", [(0.19, 0.11), (0.40, 0.02)])
def test_a_kinked_table_is_integrated_over_the_panel(size: tuple[float, float]) -> None:
    profile = TabulatedProfile(ANGLES, ROUGH)
    source = Source((0.0, 0.0, HEIGHT), 0.0, np.array([[0.0, 0.0, *size]]), profile)
    x, y = (part.ravel() for part in np.meshgrid(np.linspace(-0.3, 0.3, 7), [0.0, 0.06, 0.17]))
    receivers = np.stack([x, y, np.zeros(x.size)])
    nodes, weights = source.nodes(HEIGHT)
    found = irradiance(receivers, None, nodes, weights, profile)
    expected = np.array([integrated(profile, size, *place) for place in zip(x, y, strict=True)])
    # By the points a smooth profile needs: 1.8 and 3.6 %.
    assert math.sqrt(float(((found - expected) ** 2).mean())) < 0.0025 * float(expected.mean())


def test_a_smooth_profile_takes_no_more_points() -> None:
    strips = np.array([[0.0, 0.0, 0.19, 0.11]])
    fine = np.linspace(0.0, 90.0, 91)
    sources = [
        Source((0.0, 0.0, HEIGHT), 0.0, strips, profile)
        for profile in (CosinePower(1.0), TabulatedProfile(fine, np.cos(np.radians(fine))))
    ]
    assert [len(source.nodes(HEIGHT)[1]) for source in sources] == [9, 9]


AT, SIZE, EDGE = (0.05, 0.47), (1.0, 0.9), 8
SPOT = ((0.0, 15.0, 20.0, 90.0), (1.0, 1.0, 0.0, 0.0))


def summed(one: Lamp, rho: float) -> FloatArray:
    """PPFD by the inverse-square law, straight and by a mirror on x = 0, means of dense points.

    The flux of the profile by a sum of its own: 2π ∫ I sinθ dθ.
    """
    profile, height, fine = one.model.profile, one.hanging_height, 100
    theta = np.linspace(0.0, math.pi / 2, 400001)
    if isinstance(profile, TableProfile):
        relative = np.interp(theta, np.radians(profile.angles_deg), profile.relative)
    else:
        assert isinstance(profile, CosineProfile)
        relative = np.cos(theta) ** profile.exponent
    flux = 2 * math.pi * float(integrate.trapezoid(relative * np.sin(theta), theta))
    x, y = ((np.arange(EDGE * fine) + 0.5) / (EDGE * fine) * length for length in SIZE)
    total = np.zeros((y.size, x.size))
    for place, share in ((one.x, 1.0), (-one.x, rho)):
        square = (x - place) ** 2 + (y[:, None] - one.y) ** 2 + height**2
        cosine = height / np.sqrt(square)
        total += share * np.interp(np.arccos(cosine), theta, relative) * cosine / square
    means: FloatArray = total.reshape(EDGE, fine, EDGE, fine).mean(axis=(1, 3))
    return means * (one.model.ppf / flux)


@pytest.mark.parametrize("rho", [0.0, 0.9])
@pytest.mark.parametrize("beam", ["spot", "cosine", "narrow"])
def test_coarse_cells_average_a_lamp_and_its_image(beam: str, rho: float) -> None:
    # With two points along each edge of a cell 3 to 14 % off, straight or by the mirror.
    table = SPOT if beam == "spot" else None
    one = lamp(AT, 0.24, table=table, exponent=60.0 if beam == "narrow" else 1.0)
    what = plan(box(*SIZE), 1.2, [one], walls=[BLACK, BLACK, BLACK, (0.0, rho)])
    rms, mean = rms_and_mean(light(what, (EDGE, EDGE)).ppfd, summed(one, rho))
    assert rms < 0.002
    assert abs(mean) < 0.0005
