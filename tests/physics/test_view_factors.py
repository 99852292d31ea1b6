"""Exchange between patches, added up over whole faces, against published view factors.

J. R. Howell, A Catalog of Radiation Configuration Factors: C-11 (equal parallel rectangles
face to face) and C-14 (rectangles at a right angle with a common edge). Rays are drawn, so
the tolerance is 0.5 % of a factor, or 0.0005 where the factor is small.
"""

from __future__ import annotations

import math
from functools import partial

import numpy as np
import pytest

from planner.light.exchange import exchange_factors
from planner.light.paths import Mirrors
from planner.light.prism import FloatArray, Prism
from planner.light.surfaces import Surfaces


def parallel_factor(a: float, b: float, c: float) -> float:
    """C-11: rectangles a x b at distance c."""
    x, y = a / c, b / c
    p, q = math.sqrt(1 + x * x), math.sqrt(1 + y * y)
    inside = math.log(math.sqrt(p * p * q * q / (1 + x * x + y * y)))
    inside += x * q * math.atan(x / q) + y * p * math.atan(y / p)
    inside -= x * math.atan(x) + y * math.atan(y)
    return 2 * inside / (math.pi * x * y)


def corner_edge_factor(width: float, height: float, length: float) -> float:
    """C-14: from a plate ``width`` deep to one ``height`` high along a common edge."""
    w, h = width / length, height / length
    r = math.hypot(w, h)
    logs = math.log((1 + w * w) * (1 + h * h) / (1 + r * r))
    logs += w * w * math.log(w * w * (1 + r * r) / ((1 + w * w) * r * r))
    logs += h * h * math.log(h * h * (1 + r * r) / ((1 + h * h) * r * r))
    angles = w * math.atan(1 / w) + h * math.atan(1 / h) - r * math.atan(1 / r)
    return (angles + logs / 4) / (math.pi * w)


def face_factors(
    width: float,
    depth: float,
    height: float,
    specular: tuple[float, ...] = (0.0,) * 6,
    rays: int = 8192,
    seed: int = 7,
) -> tuple[FloatArray, FloatArray, Surfaces]:
    """Factors between the faces y0, x1, y1, x0, ceiling, bottom of a box; and per patch."""
    corners = np.array([[0, 0], [width, 0], [width, depth], [0, depth]], dtype=float)
    prism = Prism(corners, 0.0, height)
    area = 2 * (width * depth + width * height + depth * height)
    surfaces = Surfaces(prism, ((), (), (), ()), math.sqrt(area / 150), 1)
    mirrors = Mirrors(np.array(specular), np.zeros(6))
    found = exchange_factors(
        surfaces, mirrors, rays, np.random.default_rng(seed), 1e-4, lambda: None
    ).factors
    flux = found * surfaces.patch_area[:, None]
    faces = np.zeros((6, 6))
    np.add.at(faces, (surfaces.patch_facet[:, None], surfaces.patch_facet[None, :]), flux)
    return faces / surfaces.facet_area[:, None], found, surfaces


def test_the_formulas_give_the_published_numbers() -> None:
    # Siegel and Howell, 4th ed., p. 843: a = 1, b = 1.5, c = 0.5 gives 0.4756; squares of
    # 0.1 at 0.05 give 0.4153 (EES heat transfer library, citing the same); cube from the
    # textbooks (Incropera; Çengel) 0.2, exactly 0.199825 and 0.200044.
    assert parallel_factor(1.0, 1.5, 0.5) == pytest.approx(0.4756, abs=5e-5)
    assert parallel_factor(0.1, 0.1, 0.05) == pytest.approx(0.4153, abs=5e-5)
    assert parallel_factor(1, 1, 1) == pytest.approx(0.1998248957, abs=1e-9)
    assert corner_edge_factor(1, 1, 1) == pytest.approx(0.2000437761, abs=1e-9)


@pytest.mark.parametrize(
    "size", [(1.0, 1.0, 1.0), (1.0, 1.5, 0.5), (0.1, 0.1, 0.05), (0.4, 1.0, 2.0), (2.0, 2.0, 0.2)]
)
def test_faces_of_a_box(size: tuple[float, float, float]) -> None:
    width, depth, height = size
    faces, _, _ = face_factors(*size)
    # Slender boxes have faces with few patches and thus few rays.
    close = partial(pytest.approx, rel=5e-3, abs=5e-4)
    assert faces[4, 5] == close(parallel_factor(width, depth, height))
    assert faces[0, 2] == close(parallel_factor(width, height, depth))
    assert faces[1, 3] == close(parallel_factor(depth, height, width))
    assert faces[5, 0] == close(corner_edge_factor(depth, height, width))
    assert faces[0, 5] == close(corner_edge_factor(height, depth, width))
    assert faces[1, 4] == close(corner_edge_factor(height, width, depth))
    assert faces[0, 1] == close(corner_edge_factor(width, depth, height))


@pytest.mark.parametrize("x", [0.2, 0.5, 1.0, 2.0, 5.0])
def test_parallel_plates_down_the_catalogue(x: float) -> None:
    # Howell C-11, a row of its table at Y = 1.
    table = {0.2: 0.049407, 0.5: 0.116654, 1.0: 0.199825, 2.0: 0.285875, 5.0: 0.359167}
    faces, _, _ = face_factors(x, 1.0, 1.0)
    assert faces[4, 5] == pytest.approx(table[x], rel=5e-3, abs=5e-4)


@pytest.mark.parametrize("w", [0.2, 0.5, 1.0, 2.0, 5.0])
def test_plates_with_a_common_edge_down_the_catalogue(w: float) -> None:
    # Howell C-14, a row of its table at H = 1: bottom w deep against a wall 1 high, edge 1.
    table = {0.2: 0.387194, 0.5: 0.292373, 1.0: 0.200044, 2.0: 0.116426, 5.0: 0.049380}
    faces, _, _ = face_factors(1.0, w, 1.0)
    assert faces[5, 0] == pytest.approx(table[w], rel=5e-3, abs=5e-4)


@pytest.mark.parametrize("specular", [(0.0,) * 6, (0.3, 0.9, 0.0, 0.6, 0.5, 0.2)])
def test_what_leaves_arrives_and_both_ways_alike(specular: tuple[float, ...]) -> None:
    # Energy and reciprocity: Σ_j F_ij (1 - ρ_s j) = 1 and A_i F_ij = A_j F_ji, which hold
    # with mirrors too (Siegel and Howell, exchange factors of diffuse-specular enclosures).
    _, factors, surfaces = face_factors(0.8, 1.0, 1.5, specular, rays=2048)
    kept = 1 - np.array(specular)[surfaces.patch_facet]
    np.testing.assert_allclose(factors @ kept, 1.0, rtol=1e-12)
    flux = factors * surfaces.patch_area[:, None]
    # Rows are scaled last, so reciprocity holds to the noise of row sums.
    assert np.abs(flux - flux.T).sum() / flux.sum() < 2e-2


def test_one_mirror_doubles_the_room() -> None:
    # An ideal mirror shows the room once more: with the wall x = 0 a mirror, ceiling and
    # bottom exchange as halves of plates twice as wide (method of images).
    faces, _, _ = face_factors(0.5, 1.0, 1.0, (0.0, 0.0, 0.0, 1.0, 0.0, 0.0))
    assert faces[5, 4] == pytest.approx(parallel_factor(1.0, 1.0, 1.0), rel=5e-3)


def test_mirrors_all_round_carry_everything_up() -> None:
    # Four perfect mirrors: what leaves the bottom reaches the ceiling, at any height.
    faces, _, _ = face_factors(0.6, 0.8, 1.7, (1.0, 1.0, 1.0, 1.0, 0.0, 0.0), rays=512)
    assert faces[5, 4] == pytest.approx(1.0, abs=1e-12)
