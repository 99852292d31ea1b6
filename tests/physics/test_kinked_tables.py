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
