"""Boxes in the way of rays: rows against single boxes, the tree against trying each."""

from __future__ import annotations

import itertools
import math
from dataclasses import replace

import numpy as np
import pytest

from planner.light.boxes import FACES, Box, Crowd
from planner.light.emission import CosinePower, Source
from planner.light.prism import Prism
from planner.light.surfaces import Surfaces
from tests.physics.rooms import under_rectangle

ROW = Box(0.3, -0.2, 0.9, 1.0, 0.8, 0.7, 0.4, 6, 0.05)


def rays(count: int, seed: int = 1) -> tuple[np.ndarray, np.ndarray]:
    random = np.random.default_rng(seed)
    origin = random.uniform((-1.0, -1.0, 0.0), (1.5, 1.0, 2.0), (count, 3)).T
    target = random.uniform((-0.2, -0.6, 0.85), (0.8, 0.2, 1.05), (count, 3)).T
    direction = np.where(np.arange(count) % 2, target - origin, random.normal(size=(3, count)))
    # Some nearly level and some upright: the awkward ones.
    direction[2, ::3] *= 0.02
    direction[:2, ::7] *= 1e-9
    return origin, direction / np.sqrt((direction**2).sum(axis=0))


def bars_of(row: Box) -> list[Box]:
    """The boxes of a row one by one, placed by hand: evenly over its width along its y axis."""
    pitch = (row.width - row.each) / (row.count - 1)
    first = -(row.width - row.each) / 2
    return [
        Box(
            row.x - (first + k * pitch) * math.sin(row.rotation),
            row.y + (first + k * pitch) * math.cos(row.rotation),
            row.z0,
            row.z1,
            row.length,
            row.each,
            row.rotation,
        )
        for k in range(row.count)
    ]


def slabs(box: Box, origin: np.ndarray, direction: np.ndarray) -> tuple[float, float, int]:
    """One ray through one box, written out: where it enters and leaves, and the face."""
    cos, sin = math.cos(box.rotation), math.sin(box.rotation)
    dx, dy = origin[0] - box.x, origin[1] - box.y
    place = (dx * cos + dy * sin, dy * cos - dx * sin, origin[2] - (box.z0 + box.z1) / 2)
    way = (
        direction[0] * cos + direction[1] * sin,
        direction[1] * cos - direction[0] * sin,
        direction[2],
    )
    first, last, face = -math.inf, math.inf, -1
    for axis, half in enumerate((box.length / 2, box.width / 2, (box.z1 - box.z0) / 2)):
        if way[axis] == 0:
            if abs(place[axis]) > half:
                return math.inf, math.inf, -1
            continue
        near, far = sorted(((-half - place[axis]) / way[axis], (half - place[axis]) / way[axis]))
        if near > first:
            first, face = near, 2 * axis + (way[axis] > 0)
        last = min(last, far)
    return first, last, face


def test_a_row_is_met_as_its_boxes_are() -> None:
    origin, direction = rays(900)
    distance, face = ROW.enter(origin, direction)
    hits = 0
    for k in range(origin.shape[1]):
        nearest, through = math.inf, -1
        for bar in bars_of(ROW):
            first, last, side = slabs(bar, origin[:, k], direction[:, k])
            if first < last and last > 1e-9 and max(first, 0.0) < nearest:
                nearest, through = max(first, 0.0), side
        assert distance[k] == pytest.approx(nearest, abs=1e-9)
        if 0 < nearest < math.inf:
            assert face[k] == through
            hits += 1
    assert hits > 150


def test_rays_that_start_on_a_bar_see_the_next_one() -> None:
    """From the side of each bar straight to the side of its neighbour, both ways."""
    bars = bars_of(ROW)
    across = np.array([-math.sin(ROW.rotation), math.cos(ROW.rotation), 0.0])
    for here, there in itertools.pairwise(bars):
        for bar, way in ((here, across), (there, -across)):
            start = np.array([bar.x, bar.y, 0.95]) + way * bar.width / 2
            distance, face = ROW.enter(start[:, None], way[:, None])
            gap = math.hypot(there.x - here.x, there.y - here.y) - ROW.each
            assert distance[0] == pytest.approx(gap, abs=1e-9)
            assert face[0] == (3 if way @ across > 0 else 2)
        outward, _ = ROW.enter(
            (np.array([here.x, here.y, ROW.z1]))[:, None], np.array([[0.0], [0.1], [1.0]])
        )
        assert outward[0] == math.inf


def crowd(count: int) -> list[Box]:
    random = np.random.default_rng(count)
    boxes = []
    for k in range(count):
        x, y, turn = random.uniform((-0.9, -0.9, 0.0), (1.4, 0.9, 7.0))
        z0, height = random.uniform((0.0, 0.02), (1.5, 0.5))
        length, width = random.uniform(0.05, 0.4, 2)
        boxes.append(Box(x, y, z0, z0 + height, length, width, turn, 1 + k % 4 * 2, width / 9))
    return boxes


@pytest.mark.parametrize("count", [1, 2, 5, 48])
def test_the_tree_finds_what_trying_each_finds(count: int) -> None:
    boxes = crowd(count)
    origin, direction = rays(4000, seed=2)
    distance, plane = np.full(4000, 1.3), np.full(4000, -1)
    Crowd(tuple(boxes), tuple(range(count))).meet(origin, direction, distance, plane)
    nearest, number = np.full(4000, 1.3), np.full(4000, -1)
    for k, box in enumerate(boxes):
        enters, face = box.enter(origin, direction)
        number = np.where(enters < nearest, FACES * k + face, number)
        nearest = np.minimum(nearest, enters)
    np.testing.assert_allclose(distance, nearest, rtol=1e-12, atol=1e-12)
    # A start inside several boxes meets them all at once.
    outside = nearest > 0
    np.testing.assert_array_equal(plane[outside], number[outside])
    assert (number[outside] >= 0).any()


def test_only_boxes_between_can_stand_in_the_way() -> None:
    boxes = crowd(48)
    everything = Crowd(tuple(boxes), tuple(range(48)))
    random = np.random.default_rng(4)
    for _ in range(40):
        ends = random.uniform((-1.0, -1.0, 0.0), (1.5, 1.0, 2.0), (2, 3))
        way = ends[1] - ends[0]
        length = float(np.linalg.norm(way))
        some = everything.between(ends.min(axis=0), ends.max(axis=0))
        found = []
        for one in (everything, some):
            plane = np.full(1, -1)
            one.meet(ends[0][:, None], (way / length)[:, None], np.full(1, length), plane)
            found.append(plane[0])
        assert found[0] == found[1]


def test_a_lamp_does_not_stand_in_its_own_light() -> None:
    """A housing begins where its lamp's face is, and ends there for a canopy right under it."""
    above = Crowd((Box(0.5, 0.5, 1.0, 1.1, 0.3, 0.3),), (0,))
    assert not above.between(np.array([0.0, 0.0, 0.2]), np.array([1.0, 1.0, 1.0])).boxes
    assert not above.between(np.array([0.0, 0.0, 1.1]), np.array([1.0, 1.0, 2.0])).boxes


SQUARE = np.array([[0.0, 0.0], [1.0, 0.0], [1.0, 1.0], [0.0, 1.0]])
INSIDE = Box(0.5, 0.45, 0.5, 0.56, 0.7, 0.6, 0.3, 5, 0.05)


def test_faces_of_a_row_have_the_area_of_its_boxes() -> None:
    surfaces = Surfaces(Prism(SQUARE, 0.0, 1.0, (INSIDE,)), ((),) * 4, 0.2, 4)
    area = surfaces.facet_area[6:]
    assert area[:2] == pytest.approx(5 * 0.05 * 0.06)
    assert area[2:4] == pytest.approx(5 * 0.7 * 0.06)
    assert area[4:] == pytest.approx(5 * 0.05 * 0.7)


def test_points_of_a_row_lie_on_its_boxes_and_are_found_again() -> None:
    prism = Prism(SQUARE, 0.0, 1.0, (INSIDE,))
    surfaces = Surfaces(prism, ((),) * 4, 0.2, 4)
    u, v = np.random.default_rng(2).uniform(0.01, 0.99, (2, surfaces.patch_count, 64))
    points, plane = surfaces.patch_samples(u, v)
    for patch in np.flatnonzero(plane >= 6):
        outward = -prism.plane_normals()[:, plane[patch], None]
        # A hair above its surface and looking at it, each is met where it lies.
        start = points[:, patch] + 1e-6 * outward
        way = np.broadcast_to(-outward, start.shape)
        distance, hit = prism.first_hit(start, way)
        assert distance == pytest.approx(1e-6, abs=1e-9)
        assert (hit == plane[patch]).all()
        texel = surfaces.texel_of(start + distance * way, hit)
        assert (surfaces.texel_patch[texel] == patch).mean() > 0.97


@pytest.mark.parametrize("distance", [0.1, 0.4, 2.0])
@pytest.mark.parametrize("count", [3, 9, 24])
def test_few_points_stand_for_many_bars(distance: float, count: int) -> None:
    """Against the configuration factor of a parallel rectangle: E = Φ F / A for each bar."""
    pitch = 0.9 / (count - 1)
    strips = np.array([(0.0, -0.45 + k * pitch, 0.8, 0.4 * pitch) for k in range(count)])
    source = Source((0.0, 0.0, distance), 0.0, strips, CosinePower(1.0))
    nodes, weights = source.nodes(distance)
    assert weights.sum() == pytest.approx(1.0)
    for receiver in ((0.0, 0.0), (0.4, 0.2), (0.3, -0.9)):
        away = nodes - np.array([*receiver, 0.0])[:, None]
        found = float((weights * away[2] ** 2 / (away**2).sum(axis=0) ** 2).sum() / math.pi)
        expected = sum(
            under_rectangle(receiver, (cx, cy), (a, b), distance) / (a * b) / count
            for cx, cy, a, b in strips
        )
        assert found == pytest.approx(expected, rel=2e-3)
    if distance > 0.3 and count == 24:
        # Two points on each bar would be 48.
        assert len(weights) < 48


@pytest.mark.parametrize("tilt", [0.3, -0.7])
@pytest.mark.parametrize("count", [1, 5])
def test_leaning_boxes_against_rays_turned_by_hand(tilt: float, count: int) -> None:
    """The box turned back about its hinge, and the rays with it, is an upright one."""
    upright = Box(0.3, -0.2, 0.9, 1.0, 0.8, 0.7, 0.4, count, 0.05)
    leaning = replace(upright, tilt=tilt)
    origin, direction = rays(4000)
    along = np.array([math.cos(0.4), math.sin(0.4), 0.0])
    cross = np.cross(np.eye(3), along)
    # Rodrigues' formula for a turn by -tilt.
    back = np.eye(3) - math.sin(tilt) * cross + (1 - math.cos(tilt)) * cross @ cross
    hinge = np.array([[0.3], [-0.2], [0.9]])
    expected, face = upright.enter(hinge + back @ (origin - hinge), back @ direction)
    found, met = leaning.enter(origin, direction)
    assert (np.isfinite(found) == np.isfinite(expected)).mean() > 0.999
    both = np.isfinite(found) & np.isfinite(expected)
    assert both.sum() > 500
    np.testing.assert_allclose(found[both], expected[both], atol=1e-9)
    assert (met[both] == face[both]).mean() > 0.999
    # Bounds hold all faces, and each face lies where rays meet it.
    low, high = leaning.bounds()
    for start, u, v, length, height, normal in leaning.faces():
        corners = np.array([start + a * u + b * v for a in (0, length) for b in (0, height)])
        assert (corners >= low - 1e-9).all()
        assert (corners <= high + 1e-9).all()
        assert abs(np.cross(u, v) @ normal) == pytest.approx(1.0)
    on = origin + found * direction
    starts, normals = (np.array([face[k] for face in leaning.faces()]) for k in (0, 5))
    away = ((on[:, both].T - starts[met[both]]) * normals[met[both]]).sum(axis=1)
    # Sides between the boxes of a row lie one behind the other; what starts inside is met there.
    outer = (met[both] < 2) | (met[both] > 3) | (count == 1)
    outer &= found[both] > 0
    assert np.abs(away[outer]).max() < 1e-9


def test_where_a_leaning_box_stands_at_a_height() -> None:
    """A level cut, against points tried one by one."""
    leaning = Box(0.3, -0.2, 0.9, 1.0, 0.8, 0.3, 0.4, tilt=0.5)
    x, y = np.meshgrid(np.linspace(-0.3, 0.9, 121), np.linspace(-0.8, 0.4, 121))
    for z in (0.85, 0.93, 1.02):
        # In the box's own axes: turned about the vertical, then about its hinge.
        dx, dy, up = x - 0.3, y + 0.2, z - 0.9
        a, b = dx * math.cos(0.4) + dy * math.sin(0.4), dy * math.cos(0.4) - dx * math.sin(0.4)
        across = b * math.cos(0.5) + up * math.sin(0.5)
        over = up * math.cos(0.5) - b * math.sin(0.5)
        inside = (np.abs(a) < 0.4) & (np.abs(across) < 0.15) & (over > 0) & (over < 0.1)
        assert inside.any()
        assert (leaning.at(z).covers(x, y) == inside).mean() > 0.995
