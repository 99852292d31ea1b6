"""Rays, cells and directions of the light core on small cases worked by hand."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planner.light.field import CellGrid
from planner.light.polygon import (
    brought_inside,
    clip_to_rectangle,
    clip_to_rectangles,
    moments,
    moments_of_each,
)
from planner.light.prism import Prism
from planner.light.sequences import cosine_directions, shifted_points
from planner.light.surfaces import Surfaces

SQUARE = np.array([[0.0, 0.0], [1.0, 0.0], [1.0, 1.0], [0.0, 1.0]])
L_SHAPE = np.array([[0.0, 0.0], [1.0, 0.0], [1.0, 0.5], [0.5, 0.5], [0.5, 1.0], [0.0, 1.0]])


def cast(prism: Prism, origin: tuple[float, ...], towards: tuple[float, ...]) -> tuple[float, int]:
    start = np.array(origin)[:, None]
    way = np.array(towards)[:, None] / math.hypot(*towards)
    distance, plane = prism.first_hit(start, way)
    return float(distance[0]), int(plane[0])


@pytest.mark.parametrize(
    ("towards", "distance", "plane"),
    [
        ((1, 0, 0), 0.75, 1),
        ((-1, 0, 0), 0.25, 3),
        ((0, -1, 0), 0.5, 0),
        ((0, 1, 0), 0.5, 2),
        ((0, 0, 1), 1.0, 4),
        ((0, 0, -1), 1.0, 5),
        ((3, 0, 4), 1.25, 1),  # 0.75 sideways and 1.0 up at once: the edge
        ((3, 0, 1), 0.75 * math.sqrt(10) / 3, 1),
    ],
)
def test_rays_in_a_box(towards: tuple[float, ...], distance: float, plane: int) -> None:
    found, where = cast(Prism(SQUARE, 0.0, 2.0), (0.25, 0.5, 1.0), towards)
    assert found == pytest.approx(distance)
    if towards != (3, 0, 4):
        assert where == plane


def test_inner_walls_stand_in_the_way() -> None:
    prism = Prism(L_SHAPE, 0.0, 1.0)
    assert not prism.convex
    # From the upper arm to the right arm the inner corner hides the rest.
    distance, plane = cast(prism, (0.25, 0.9, 0.5), (1.0, -0.2, 0.0))
    assert plane == 3
    assert distance * 1.0 / math.hypot(1.0, 0.2) == pytest.approx(0.25)
    assert cast(prism, (0.25, 0.25, 0.5), (1.0, 0.0, 0.0))[1] == 1


@settings(max_examples=30, deadline=None)
@given(st.integers(0, 10_000), st.sampled_from([SQUARE, L_SHAPE]))
def test_no_ray_leaves_the_room(seed: int, corners: np.ndarray) -> None:
    prism = Prism(corners, 0.0, 1.5)
    random = np.random.default_rng(seed)
    origin = np.concatenate(
        [random.uniform(0.01, 0.49, (2, 200)), random.uniform(0, 1.5, (1, 200))]
    )
    direction = random.normal(size=(3, 200))
    direction /= np.linalg.norm(direction, axis=0)
    for _ in range(6):
        distance, plane = prism.first_hit(origin, direction)
        assert np.isfinite(distance).all()
        origin = origin + distance * direction
        assert prism.contains(origin[0] * (1 - 2e-9) + 5e-10, origin[1] * (1 - 2e-9) + 5e-10).all()
        direction = prism.reflect(direction, plane)
        assert np.linalg.norm(direction, axis=0) == pytest.approx(1.0)


def test_reflection_twice_is_nothing() -> None:
    prism = Prism(L_SHAPE, 0.0, 1.0)
    random = np.random.default_rng(3)
    direction = random.normal(size=(3, 50))
    plane = random.integers(0, 8, 50)
    again = prism.reflect(prism.reflect(direction, plane), plane)
    np.testing.assert_allclose(again, direction, atol=1e-12)
    points = random.normal(size=(3, 50))
    twice = prism.reflect_points(prism.reflect_points(points, plane), plane)
    np.testing.assert_allclose(twice, points, atol=1e-12)


def test_moments_of_a_triangle() -> None:
    # Area half base times height, centre of area a third of the way up (Euclid).
    area, x, y = moments(np.array([[0.0, 0.0], [3.0, 0.0], [0.0, 6.0]]))
    assert (area, x, y) == pytest.approx((9.0, 1.0, 2.0))


def test_polygon_cut_to_a_rectangle() -> None:
    piece = clip_to_rectangle(np.array([[0.0, 0.0], [2.0, 0.0], [0.0, 2.0]]), (0.0, 0.0, 1.0, 1.0))
    assert moments(piece)[0] == pytest.approx(1.0)


@pytest.mark.parametrize("cells", [(7, 5), (24, 24), (3, 40)])
def test_cells_cover_the_footprint(cells: tuple[int, int]) -> None:
    for corners in (SQUARE, L_SHAPE, np.array([[0.0, 0.0], [0.9, 0.1], [0.3, 0.8]])):
        grid = CellGrid.over(Prism(corners, 0.0, 1.0), *cells, 0.0)
        assert grid.area.sum() == pytest.approx(moments(corners)[0], rel=1e-12)


def test_surfaces_add_up_to_the_room() -> None:
    for corners, around in ((SQUARE, 4.0), (L_SHAPE, 4.0)):
        prism = Prism(corners, 0.2, 1.7)
        bands: tuple[tuple[float, ...], ...] = ((0.6,), *((),) * (len(corners) - 1))
        surfaces = Surfaces(prism, bands, 0.13, 3)
        floor = moments(corners)[0]
        assert surfaces.patch_area.sum() == pytest.approx(around * 1.5 + 2 * floor)
        assert surfaces.facet_area[0] == pytest.approx(0.4)
        assert surfaces.facet_area[1] == pytest.approx(1.1)


def test_texel_of_its_own_centre() -> None:
    for corners in (SQUARE, L_SHAPE):
        prism = Prism(corners, 0.0, 1.0)
        surfaces = Surfaces(prism, ((0.37,), *((),) * (len(corners) - 1)), 0.17, 4)
        real = np.flatnonzero(surfaces.texel_area > 1e-9)
        plane = surfaces.facet_plane[surfaces.texel_facet[real]]
        found = surfaces.texel_of(surfaces.texel_centre[:, real], plane)
        np.testing.assert_array_equal(found, real)


def test_points_outside_a_piece_are_brought_inside() -> None:
    random = np.random.default_rng(5)
    x, y = random.uniform(0.3, 0.9, (4, 64)), random.uniform(0.3, 0.9, (4, 64))
    prism = Prism(L_SHAPE, 0.0, 1.0)
    kept = prism.contains(x, y)
    moved = brought_inside(kept, x, y, np.full((2, 4), 0.25))
    assert prism.contains(*moved).all()
    np.testing.assert_array_equal(moved[0][kept], x[kept])


def test_directions_follow_the_cosine() -> None:
    # Cosine law: the share of flux within θ is sin²θ, and the mean of cosθ is 2/3.
    u = shifted_points(1, 4096, 4, np.random.default_rng(0))[:, 0]
    x, y, z = cosine_directions(u[2], u[3])
    assert float(z.mean()) == pytest.approx(2 / 3, abs=1e-3)
    assert float((z > math.cos(math.radians(30))).mean()) == pytest.approx(0.25, abs=2e-3)
    assert abs(float(x.mean())) < 5e-3
    assert abs(float(y.mean())) < 5e-3
    np.testing.assert_allclose(x**2 + y**2 + z**2, 1.0)


@given(st.integers(1, 5), st.integers(1, 300))
def test_spread_points_lie_in_the_unit_cube(groups: int, count: int) -> None:
    points = shifted_points(groups, count, 5, np.random.default_rng(groups))
    assert points.shape == (5, groups, count)
    assert (points >= 0).all()
    assert (points < 1).all()


def test_many_rectangles_are_cut_at_once() -> None:
    # A triangle with legs of 2: whole inside, twice half by its long side, and outside.
    triangle = np.array([[0.0, 0.0], [2.0, 0.0], [0.0, 2.0]])
    low = np.array([[0.2, 0.2], [0.5, 0.5], [1.0, 0.0], [1.5, 1.5]])
    pieces = clip_to_rectangles(
        triangle, low, low + np.array([[0.5, 0.5], [1.0, 1.0], [1.0, 1.0], [0.4, 0.4]])
    )
    areas, centres = moments_of_each(pieces)
    assert areas == pytest.approx([0.25, 0.5, 0.5, 0.0], abs=1e-15)
    assert centres.T[:3] == pytest.approx(
        np.array([[0.45, 0.45], [0.5 + 1 / 3, 0.5 + 1 / 3], [1 + 1 / 3, 1 / 3]])
    )
    assert clip_to_rectangles(triangle, low[:0], low[:0]).shape[0] == 0
