"""Tilted lamps against closed forms, mirror symmetry and a published factor.

Directions are turned by rotation matrices written here: about the vertical, then about the
lamp's own length, so that its y side rises.
"""

from __future__ import annotations

import json
import math
from collections.abc import Callable

import numpy as np
import pytest

from planner.estimate.evaluate import recount
from planner.estimate.result import EstimateOptions, FloatArray
from planner.estimate.scene import build_scene
from planner.estimate.upright import light_in_slice
from planner.plan import edits
from planner.plan.lamp import Lamp, PlanesProfile
from planner.plan.plan import Plan
from tests.physics.rooms import (
    BLACK,
    box,
    lamp,
    light,
    panel,
    plan,
    rms_and_mean,
)
from tests.physics.test_view_factors import corner_edge_factor

ROOM, HEIGHT = (1.0, 0.8), 2.0
CELLS = (10, 8)
TILTS = [10.0, -25.0, 45.0]


def tilted(one: Lamp, tilt: float) -> Lamp:
    return edits.changed(one, tilt_deg=tilt)


def frame(turned_deg: float, tilt_deg: float) -> FloatArray:
    """Columns: the lamp's x, y and upward axes in the room."""
    r, t = math.radians(turned_deg), math.radians(tilt_deg)
    about_z = np.array([[math.cos(r), -math.sin(r), 0], [math.sin(r), math.cos(r), 0], [0, 0, 1]])
    about_x = np.array([[1, 0, 0], [0, math.cos(t), -math.sin(t)], [0, math.sin(t), math.cos(t)]])
    return np.asarray(about_z @ about_x)


def cell_means(of: Callable[[FloatArray, FloatArray], FloatArray], fine: int = 10) -> FloatArray:
    """Means over the cells of a function of x and y, by fine x fine points each."""
    x = (np.arange(CELLS[0] * fine) + 0.5) * ROOM[0] / (CELLS[0] * fine)
    y = (np.arange(CELLS[1] * fine) + 0.5) * ROOM[1] / (CELLS[1] * fine)
    values = of(*np.meshgrid(x, y))
    means: FloatArray = values.reshape(CELLS[1], fine, CELLS[0], fine).mean(axis=(1, 3))
    return means


def cosine_light(
    at: tuple[float, float, float], axes: FloatArray, exponent: float
) -> Callable[[FloatArray, FloatArray], FloatArray]:
    """E = I cosα / d² with I = (m + 1)Φ/2π cos^m θ about the axis; CIE S 017, 17-25-104."""

    def found(x: FloatArray, y: FloatArray) -> FloatArray:
        way = np.stack([x - at[0], y - at[1], np.full(x.shape, -at[2])])
        length = np.sqrt((way**2).sum(axis=0))
        cosine = np.maximum(np.einsum("i,ijk->jk", -axes[:, 2], way) / length, 0.0)
        peak = 100 * (exponent + 1) / (2 * math.pi)
        return np.asarray(peak * cosine**exponent * np.abs(at[2]) / length**3)

    return found


@pytest.mark.parametrize("tilt", TILTS)
@pytest.mark.parametrize("exponent", [1.0, 4.8188])
def test_point_lamp(tilt: float, exponent: float) -> None:
    at, turned = (0.33, 0.29, 0.6), 30.0
    hung = tilted(lamp(at[:2], at[2], exponent=exponent, turned=turned), tilt)
    found = light(plan(box(*ROOM), HEIGHT, [hung]), CELLS)
    expected = cell_means(cosine_light(at, frame(turned, tilt), exponent))
    assert np.abs(found.ppfd - expected).max() < 2e-3 * expected.max()


@pytest.mark.parametrize("tilt", TILTS)
def test_light_turns_towards_the_side_that_rises(tilt: float) -> None:
    # Unrotated, above 0: to the back (y up on the plan), as the dial says.
    found = light(plan(box(*ROOM), HEIGHT, [tilted(lamp((0.5, 0.4), 0.6), tilt)]), CELLS).ppfd
    back, front = found[4:].sum(), found[:4].sum()
    assert (back > front) == (tilt > 0)
    assert ("back" if tilt > 0 else "front") in tilted(lamp((0.5, 0.4), 0.6), tilt).leans


LOPSIDED = ((0.0, 30.0, 60.0, 90.0), (0.0, 90.0, 180.0, 270.0))


@pytest.mark.parametrize("tilt", TILTS)
def test_a_photometric_file(tilt: float) -> None:
    """Planes about the lamp: linear in both angles, held against a reading of them made here."""
    values = (
        (1.0, 0.9, 0.4, 0.1),
        (1.0, 0.6, 0.2, 0.0),
        (1.0, 0.5, 0.5, 0.2),
        (1.0, 0.9, 0.3, 0.1),
    )
    profile = PlanesProfile(angles_deg=LOPSIDED[0], azimuths_deg=LOPSIDED[1], relative=values)
    bare = lamp((0.33, 0.29), 0.6, turned=40.0)
    hung = tilted(edits.changed(bare, model=edits.changed(bare.model, profile=profile)), tilt)
    found = light(plan(box(*ROOM), HEIGHT, [hung]), CELLS)
    closed = np.array([*values, values[0]])

    def intensity(polar: FloatArray, azimuth: FloatArray) -> FloatArray:
        across = np.stack([np.interp(polar, LOPSIDED[0], row, right=0.0) for row in closed])
        k = np.minimum((azimuth // 90).astype(int), 3)
        share = azimuth / 90 - k
        low, high = (np.take_along_axis(across, j[None], axis=0)[0] for j in (k, k + 1))
        return np.asarray((1 - share) * low + share * high)

    theta = np.linspace(0, 90, 9001)
    sine = np.sin(np.radians(theta))
    planes = [
        np.trapezoid(np.interp(theta, LOPSIDED[0], v) * sine, np.radians(theta)) for v in values
    ]
    flux = 2 * math.pi * float(np.mean(planes))
    axes = frame(40.0, tilt)

    def expected(x: FloatArray, y: FloatArray) -> FloatArray:
        way = np.stack([x - 0.33, y - 0.29, np.full(x.shape, -0.6)])
        length = np.sqrt((way**2).sum(axis=0))
        u, v, up = np.einsum("ik,ijl->kjl", axes, way) / length
        polar = np.degrees(np.arccos(np.clip(-up, -1, 1)))
        azimuth = np.degrees(np.arctan2(v, u)) % 360
        return np.asarray(100 / flux * intensity(polar, azimuth) * 0.6 / length**3)

    means = cell_means(expected, 20)
    assert np.abs(found.ppfd - means).max() < 3e-3 * means.max()


# -- a tilted panel over a canopy, by a published factor ------------------------------------


def hinged_factor(a: float, b: float, c: float, angle: float) -> float:
    """From a rectangle c wide to one a wide; they share an edge of length b, ``angle`` apart.

    J. R. Howell, A Catalog of Radiation Configuration Factors, C-16 (after Feingold, 1966),
    written down from memory; what is left as an integral there is summed by a Gauss rule.
    """
    n, big = a / b, c / b
    sin, cos, twice = math.sin(angle), math.cos(angle), math.sin(2 * angle)
    s = n * n + big * big - 2 * n * big * cos
    d = math.sqrt(1 + n * n * sin * sin)
    flat = n * big * sin + (math.pi / 2 - angle) * (n * n + big * big)
    flat += big * big * math.atan((n - big * cos) / (big * sin))
    flat += n * n * math.atan((big - n * cos) / (n * sin))
    power = math.cos(2 * angle)
    logs = (2 / sin**2 - 1) * math.log((1 + n * n) * (1 + big * big) / (1 + s))
    logs += big * big * math.log(big * big * (1 + s) / ((1 + big * big) * s))
    logs += n * n * math.log(n * n * (1 + n * n) ** power / (s * (1 + s) ** power))
    total = (sin * sin * logs - twice * flat) / 4
    total += big * math.atan(1 / big) + n * math.atan(1 / n)
    total -= math.sqrt(s) * math.atan(1 / math.sqrt(s))
    total += sin * twice / 2 * n * d * (math.atan(n * cos / d) + math.atan((big - n * cos) / d))
    x, w = np.polynomial.legendre.leggauss(40)
    z = (x + 1) * big / 2
    root = np.sqrt(1 + (z * sin) ** 2)
    inner = root * (np.arctan(z * cos / root) + np.arctan((n - z * cos) / root))
    total += cos * float((w * inner).sum()) * big / 2
    return total / (math.pi * big)


def test_the_published_factor_at_a_right_angle() -> None:
    """There it is C-14, and from either side as much light goes to the other."""
    for a, b, c in ((0.4, 0.6, 0.3), (1.0, 0.5, 0.2)):
        found = hinged_factor(a, b, c, math.pi / 2)
        assert found == pytest.approx(corner_edge_factor(c, a, b), rel=1e-9)
        for angle in (0.4, 0.8, 2.0):
            there, back = hinged_factor(a, b, c, angle), hinged_factor(c, b, a, angle)
            assert c * there == pytest.approx(a * back, rel=1e-9)


@pytest.mark.parametrize("angle", [20.0, 45.0])
@pytest.mark.parametrize("upper", [0.3, 0.5])
def test_panel_whose_plane_meets_the_canopy_at_the_wall(angle: float, upper: float) -> None:
    """A panel as long as the room is deep, its plane through the edge of the canopy at x = 0.

    It is the part from ``lower`` to ``upper`` of the rectangle that has that edge: what reaches
    the canopy is what the whole sends less what the part below sends.
    """
    depth, width, lower, t = 0.6, 0.8, 0.08, math.radians(angle)
    middle, across = (lower + upper) / 2, upper - lower
    hung = lamp(
        (middle * math.cos(t), depth / 2),
        middle * math.sin(t),
        body=panel(depth, across),
        turned=90.0,
    )
    found = light(plan(box(width, depth), 1.0, [tilted(hung, -angle)]), (24, 18))
    whole, below = hinged_factor(width, depth, upper, t), hinged_factor(width, depth, lower, t)
    expected = (upper * whole - lower * below) / across
    reaches = float((found.ppfd * found.cell_area).sum()) / 100
    assert reaches == pytest.approx(expected, rel=2e-3)


# -- mirrors ----------------------------------------------------------------------------------


@pytest.mark.parametrize("tilt", TILTS)
def test_mirror_wall_shows_a_lamp_tilted_the_other_way(tilt: float) -> None:
    """Half a room with a perfect mirror is the room with both lamps; turned 90°, y looks left."""
    hung = tilted(lamp((0.3, 0.35), 0.5, body=panel(0.2, 0.1), turned=90.0), tilt)
    other = tilted(lamp((0.7, 0.35), 0.5, body=panel(0.2, 0.1), turned=90.0), -tilt)
    whole = light(plan(box(1.0, 0.8), HEIGHT, [hung, other]), (10, 8)).ppfd[:, :5]
    half = plan(box(0.5, 0.8), HEIGHT, [hung], walls=[BLACK, (0.0, 1.0), BLACK, BLACK])
    found = light(half, (5, 8)).ppfd
    assert np.abs(found / whole - 1).max() < 2e-3


def test_mirror_ceiling_shows_it_upside_down() -> None:
    """A lamp tilted by 45° sends light up to the ceiling: direct and mirrored in closed form."""
    height, at, ceiling = 0.3, (0.5, 0.08, 0.2), 0.9
    axes = frame(0.0, 45.0)
    hung = tilted(lamp(at[:2], at[2]), 45.0)
    found = light(plan(box(*ROOM), height, [hung], ceiling=(0.0, ceiling)), CELLS)
    flipped = np.diag([1.0, 1.0, -1.0]) @ axes
    image = cell_means(cosine_light((at[0], at[1], 2 * height - at[2]), flipped, 1.0))
    expected = cell_means(cosine_light(at, axes, 1.0)) + ceiling * image
    assert image.max() > 0.01 * expected.max()
    assert np.abs(found.ppfd / expected - 1).max() < 5e-3


# -- laws -------------------------------------------------------------------------------------


def cabinet(tilt: float, turned: float = 0.0, housing: float = 0.05) -> Plan:
    hung = lamp((0.3, 0.3), 0.5, body=panel(0.4, 0.3), turned=turned)
    model = edits.changed(hung.model, housing_height=housing)
    return plan(
        box(0.6, 0.6),
        1.2,
        [tilted(edits.changed(hung, model=model), tilt)],
        walls=(0.8, 0.0),
        ceiling=(0.8, 0.0),
        canopy=0.06,
        canopy_height=0.25,
    )


def test_half_a_turn_tilts_the_other_way() -> None:
    one, other = (light(cabinet(*how), (8, 8)) for how in ((20.0, 180.0), (-20.0, 0.0)))
    rms, mean = rms_and_mean(one.ppfd, other.ppfd)
    assert rms < 4e-3
    assert abs(mean) < 1e-3


def test_a_little_tilt_is_a_little_change() -> None:
    """The closed forms of level and tilted lamps, and of their housings, meet at 0."""
    level, hardly = (light(cabinet(tilt), (8, 8)) for tilt in (0.0, 1e-4))
    rms, mean = rms_and_mean(hardly.ppfd, level.ppfd)
    assert rms < 2e-3
    assert abs(mean) < 5e-4


@pytest.mark.parametrize("housing", [0.0, 0.08])
def test_agrees_with_a_count_of_photons(housing: float) -> None:
    what = cabinet(25.0, 30.0, housing)
    found, count = light(what), recount(what)
    assert count is not None
    assert abs(count.difference(found.figures)) < 3 * count.standard_error / count.flux + 0.003


def test_level_lamps_are_reckoned_as_ever() -> None:
    """A level lamp takes the way of level lamps, and no number of it is another one."""
    scene = build_scene(cabinet(0.0))
    source = scene.lamps[0].source()
    assert source.looks() is None
    assert source.axes().shape == (2, 2)
    assert not any(one.tilt for one in scene.room.boxes)
    silent = cabinet(0.0)
    kept = silent.model_dump(mode="json")
    for one in kept["lamps"]:
        assert one.pop("tilt_deg") == 0.0
    read = Plan.model_validate_json(json.dumps(kept))
    assert np.array_equal(light(silent, (6, 6)).ppfd, light(read, (6, 6)).ppfd)


@pytest.mark.parametrize("tilt", [20.0, -35.0])
def test_light_in_the_side_view(tilt: float) -> None:
    """Closed form on a slice under a lamp that turns its light along the slice."""
    hung = tilted(lamp((0.5, 0.4), 1.5, turned=90.0), tilt)
    what = plan(box(*ROOM), HEIGHT, [hung])
    found = light_in_slice(what, "y", 0.4, EstimateOptions(cells=(100, 80)))
    axes = frame(90.0, tilt)
    for x in (0.1, 0.4, 0.7):
        for z in (0.1, 0.5, 0.9, 1.3):
            one = np.array([[x]]), np.array([[0.4]])
            expected = float(cosine_light((0.5, 0.4, 1.5 - z), axes, 1.0)(*one)[0, 0])
            assert found.at(x, z) == pytest.approx(expected, rel=0.01, abs=0.5), (x, z)


def test_the_side_view_of_a_panel_with_its_housing() -> None:
    """Turned by 90°, above 0: the left end of the panel is the high one, its light goes left."""
    what = cabinet(30.0, 90.0)
    options = EstimateOptions(cells=(24, 24))
    found, estimate = light_in_slice(what, "y", 0.3, options), light(what, (24, 24))
    row = estimate.ppfd[11:13].mean(axis=0)
    seen = np.array([found.at(float(x), 0.25) for x in estimate.x], dtype=float)
    assert np.sqrt(np.mean((seen / row - 1) ** 2)) < 5e-3
    # In the middle of the housing there is none, at its height behind the face little.
    values, edges = found.light.values, found.light.y
    level = int(np.searchsorted(edges, 0.79)) - 1
    assert np.isnan(values[level, 9:12]).any()
    assert np.isfinite(values[level, [2, 20]]).all()
    known = values[np.isfinite(values)]
    assert known.min() > 0.0
    # A face of 0.4 x 0.3 m sends 100 / 0.12 from each square metre; walls add a little.
    assert known.max() < 100 / 0.12 + 60.0
    left, right = found.at(0.12, 0.74), found.at(0.48, 0.74)
    assert left is not None
    assert right is not None
    assert left > 100.0 > 40.0 > right
