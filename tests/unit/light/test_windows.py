"""What is told of images by windows, against lines walked from wall to wall in plain Python."""

from __future__ import annotations

import math

import numpy as np
import numpy.typing as npt
import pytest

from planner.light.chains import Images
from planner.light.emission import CosinePower, Source
from planner.light.field import CellGrid
from planner.light.paths import Mirrors
from planner.light.photons import follow_photons
from planner.light.prism import Prism
from planner.light.surfaces import Surfaces
from planner.light.windows import Windows

Points = npt.NDArray[np.float64]
HEIGHT = 1.3
TOPS = (0.45, 0.8)


def regular(corners: int) -> Points:
    turns = 2 * math.pi * (np.arange(corners) + 0.3) / corners
    return 0.6 + 0.5 * np.stack([np.cos(turns), np.sin(turns)], axis=1)


ROOMS = {
    "dragged corner": np.array([[0.0, 0.0], [1.0, 0.0], [0.93, 0.9], [0.0, 1.0]]),
    "cut corner": np.array([[0.0, 0.0], [0.8, 0.0], [0.8, 0.36], [0.66, 0.5], [0.0, 0.5]]),
    "slanting": np.array([[0.0, 0.0], [1.0, 0.1], [1.2, 0.9], [0.2, 0.8]]),
    "triangle": regular(3),
    "hexagon": regular(6),
}


def walked(surfaces: Surfaces, specular: Points, start: Points, end: Points, lamp: Points) -> float:
    """What mirrors leave of a line that must end on a point of a lamp; nothing of the core."""
    corners, (z0, z1) = surfaces.prism.corners, (surfaces.prism.z0, surfaces.prism.z1)
    length = float(np.linalg.norm(end - start))
    place, way, kept = start.copy(), (end - start) / length, 1.0
    while True:
        best, normal, facet = math.inf, np.zeros(3), -1
        for k, corner in enumerate(corners):
            along = np.roll(corners, -1, axis=0)[k] - corner
            out = np.array([along[1], -along[0], 0.0]) / np.linalg.norm(along)
            speed = float(out @ way)
            if speed > 1e-12:
                reach = float(out[:2] @ (corner - place[:2])) / speed
                if reach < best:
                    z = place[2] + reach * way[2]
                    of_wall = [i for i, f in enumerate(surfaces.facets) if f.plane == k]
                    best, normal = reach, out
                    facet = next(
                        i for i in of_wall if z <= surfaces.facets[i].z1 or i == of_wall[-1]
                    )
        if way[2] > 0 and (z1 - place[2]) / way[2] < best:
            best, normal = (z1 - place[2]) / way[2], np.array([0.0, 0.0, 1.0])
            facet = len(surfaces.facets) - 2
        if way[2] < 0 and (z0 - place[2]) / way[2] < best:
            best, normal = (z0 - place[2]) / way[2], np.array([0.0, 0.0, -1.0])
            facet = len(surfaces.facets) - 1
        if best >= length:
            at = place + length * way
            return kept if np.abs(at - lamp).max() < 1e-7 else 0.0
        place, length, kept = place + best * way, length - best, kept * specular[facet]
        way = way - 2 * (way @ normal) * normal
        if kept == 0.0:
            return 0.0


@pytest.mark.parametrize("bands", [False, True], ids=["plain", "bands"])
@pytest.mark.parametrize("room", ROOMS)
def test_windows_tell_what_walked_lines_find(room: str, bands: bool) -> None:
    corners = ROOMS[room]
    prism = Prism(corners, 0.1, HEIGHT)
    tops: list[tuple[float, ...]] = [()] * len(corners)
    if bands:
        tops[1] = TOPS
    surfaces = Surfaces(prism, tuple(tops), 0.3, 2)
    random = np.random.default_rng(3)
    specular = random.uniform(0.5, 0.9, len(surfaces.facets))
    specular[-1] = 0.0
    middle = corners.mean(axis=0)
    source = Source(
        (float(middle[0]) + 0.03, float(middle[1]) - 0.05, 0.7),
        0.2,
        np.array([[0.0, 0.0, 0.2, 0.1]]),
        CosinePower(1.0),
    )
    grid = CellGrid.over(prism, 4, 3, 0.1)
    mirrors = Mirrors(specular, np.zeros(len(specular)))
    found = follow_photons(surfaces, grid, source, mirrors, 4000, 1, random, 1e-2, lambda: None)
    images = found.images.some(slice(0, 14))
    windows = Windows(surfaces, images, specular)
    assert windows.told.sum() >= 5
    known = windows.known(grid, images.of(source.outline))
    assert np.isnan(known[~windows.told]).all()
    assert (~np.isnan(known[windows.told])).mean() > 0.2
    seen_two = 0
    for image in np.flatnonzero(windows.told):
        for cell in range(len(grid.inside)):
            u = random.random((2, 1, 4))
            places = grid.samples(u[0], u[1], np.array([cell]))[:, 0]
            lamp = source.points(*random.random((3, 4)))
            ends = images.of(lamp)[:, image]
            told = windows.left(places[:, None], ends[:, None], np.array([image]))[0]
            for k in range(4):
                true = walked(surfaces, specular, places[:, k], ends[:, k], lamp[:, k])
                assert told[k] == pytest.approx(true, abs=1e-12)
                if not math.isnan(known[image, cell]):
                    assert known[image, cell] == pytest.approx(true, abs=1e-12)
                seen_two += true > 0 and (images.planes[image] >= 0).sum() > 1
    assert seen_two > 0


def test_rooms_with_inner_corners_are_left_to_rays() -> None:
    bent = np.array([[0.0, 0.0], [1.0, 0.0], [1.0, 0.4], [0.5, 0.4], [0.5, 1.0], [0.0, 1.0]])
    surfaces = Surfaces(Prism(bent, 0.0, 1.0), ((),) * 6, 0.3, 2)
    one = Images(
        np.eye(3)[None],
        np.zeros((1, 3)),
        np.array([[0]], dtype=np.int16),
        np.ones(1),
        np.ones(1),
        np.ones(1),
        1.0,
    )
    assert not Windows(surfaces, one, np.full(8, 0.5)).told.any()
