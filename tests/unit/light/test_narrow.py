"""Patches in narrow places: which are divided, and whether nothing is lost or counted twice."""

from __future__ import annotations

import numpy as np
import pytest

from planner.light.boxes import Box
from planner.light.prism import FloatArray, IntArray, Prism
from planner.light.surfaces import Surfaces

CORNERS = np.array([[0.0, 0.0], [0.9, 0.0], [0.9, 0.7], [0.3, 0.8]])
POT = Box(0.65, 0.15, 0.0, 0.2, 0.1, 0.1, 0.3)
SIZE, FINE = 0.1, 4


def shelf(under: float) -> Box:
    return Box(0.45, 0.45, under, under + 0.03, 0.3, 0.2, 0.4)


def divided(*boxes: Box, map_z: float | None = 0.0) -> Surfaces:
    return Surfaces(Prism(CORNERS, 0.0, 0.8, boxes), ((), (0.3,), (), ()), SIZE, FINE, map_z)


def spread(surfaces: Surfaces, count: int = 32) -> tuple[FloatArray, IntArray]:
    """Points on all patches that have any area and the patches in which they are found."""
    u, v = np.random.default_rng(1).random((2, surfaces.patch_count, count))
    points, plane = surfaces.patch_samples(u, v)
    found = surfaces.texel_of(points.reshape(3, -1), np.repeat(plane, count))
    lit = surfaces.patch_area > 1e-12
    return points[:, lit], surfaces.texel_patch[found].reshape(-1, count)[lit]


@pytest.mark.parametrize("under", [0.005, 0.02, 0.05])
def test_points_of_a_piece_are_found_in_it(under: float) -> None:
    surfaces = divided(POT, shelf(under))
    _, patch = spread(surfaces)
    own = np.flatnonzero(surfaces.patch_area > 1e-12)
    np.testing.assert_array_equal(patch, np.repeat(own[:, None], patch.shape[1], axis=1))


def test_pieces_cover_what_they_replace() -> None:
    whole, cut = divided(POT, shelf(0.01), map_z=None), divided(POT, shelf(0.01))
    assert cut.patch_count > whole.patch_count
    # A pot's foot and slanting walls cut texels on a lattice, to a part in some hundreds.
    np.testing.assert_allclose(cut.facet_area, whole.facet_area, rtol=2e-3)
    np.testing.assert_allclose(middle_of_bottom(cut), middle_of_bottom(whole), atol=5e-4)


def middle_of_bottom(surfaces: Surfaces) -> FloatArray:
    bottom = surfaces.facet_plane[surfaces.texel_facet] == surfaces.prism.bottom
    middle: FloatArray = np.average(
        surfaces.texel_centre[:, bottom], axis=1, weights=surfaces.texel_area[bottom]
    )
    return middle


def test_pieces_are_as_narrow_as_the_gap_at_its_edge_and_wide_elsewhere() -> None:
    gap = 0.02
    surfaces = divided(shelf(gap))
    x, y = surfaces.texel_centre[:2]
    bottom = surfaces.facet_plane[surfaces.texel_facet] == surfaces.prism.bottom
    along = (x - 0.45) * np.cos(0.4) + (y - 0.45) * np.sin(0.4)
    across = (y - 0.45) * np.cos(0.4) - (x - 0.45) * np.sin(0.4)
    at_edge = bottom & (np.abs(np.abs(across) - 0.1) < 0.003) & (np.abs(along) < 0.1)
    assert at_edge.sum() > 5
    assert surfaces.texel_area[at_edge].max() < gap**2
    away = bottom & (np.hypot(along, across) > 0.35)
    assert surfaces.texel_size[away].min() > 0.9 * SIZE / FINE


@pytest.mark.parametrize(
    "boxes",
    [
        (),
        (Box(0.5, 0.35, 0.0, 0.2, 0.1, 0.1, 0.3),),
        (Box(0.5, 0.35, 0.35, 0.38, 0.1, 0.1, 0.4),),
        (Box(0.5, 0.35, 0.0, 0.005, 0.1, 0.1),),
        (Box(0.5, 0.35, 0.72, 0.78, 0.1, 0.1),),
        (Box(0.5, 0.35, 0.02, 0.05, 0.1, 0.1, count=3, each=0.03),),
    ],
    ids=["bare", "pot", "high shelf", "rim", "under the ceiling", "bars"],
)
def test_nothing_is_divided_where_no_gap_is_seen_from_the_map(boxes: tuple[Box, ...]) -> None:
    assert divided(*boxes).patch_count == divided(*boxes, map_z=None).patch_count


def test_pieces_are_bounded_by_number() -> None:
    low = tuple(
        Box(0.35 + 0.1 * (k % 4), 0.25 + 0.1 * (k // 4), 0.001, 0.01, 0.08, 0.08, 0.2 * k)
        for k in range(12)
    )
    whole, cut = divided(*low, map_z=None), divided(*low)
    assert whole.patch_count < cut.patch_count < 2 * whole.patch_count + 151
