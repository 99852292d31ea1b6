"""Every kind of scene against photons walked through triangles that Embree traces."""

from __future__ import annotations

import math

import numpy as np
import pytest
from scipy.integrate import trapezoid

from planner.estimate.evaluate import evaluate
from planner.estimate.result import EstimateOptions, Quality
from planner.light.lobes import bounces, scatter, shading
from tests.reference.comparison import MEAN, RMS, deviation
from tests.reference.embree_walk import FloatArray, bounced, emitted, masking, walk, wrinkled
from tests.reference.scene_list import LOPSIDED, SCENES
from tests.reference.spaces import BLACK, Luminaire, Material, Scene, box, plan_of

pytestmark = pytest.mark.reference


@pytest.fixture(autouse=True, scope="module")
def _extra() -> None:
    pytest.importorskip("embreex", reason="the 'reference' extra is not installed")


PHOTONS = 1_500_000


@pytest.mark.parametrize("scene", SCENES, ids=lambda scene: scene.name)
def test_maps_agree(scene: Scene) -> None:
    walked = walk(scene, PHOTONS)
    found = evaluate(plan_of(scene), EstimateOptions(cells=scene.cells))
    seen = deviation(found, walked.density, walked.error, walked.mean, walked.mean_error)
    assert walked.lost <= 1e-5 * walked.photons
    assert seen.within, seen


@pytest.mark.timeout(300)
@pytest.mark.parametrize("name", ["lamp against a wall", "L-shape with bands", "shelf that shades"])
def test_fine_quality_states_its_error(name: str) -> None:
    # Two fine maps from other seeds differ by their stated errors: with errors from four
    # replicates the squared ratio follows F(1, 6), mean 1.5, over many cells. What both
    # have in common shows against the walk.
    scene = next(one for one in SCENES if one.name == name)
    plan, cells = plan_of(scene), scene.cells
    one, two = (
        evaluate(plan, EstimateOptions(cells=cells, quality=Quality.FINE, seed=seed))
        for seed in (1, 1001)
    )
    assert one.cell_error is not None
    assert two.cell_error is not None
    whole = one.cell_area > one.cell_area.max() / 3
    joint = one.cell_error**2 + two.cell_error**2
    ratio = ((one.ppfd - two.ppfd) ** 2 / joint)[whole].mean()
    assert 0.5 < ratio < 4.0
    walked = walk(scene, 4 * PHOTONS)
    seen = deviation(one, walked.density, walked.error, walked.mean, walked.mean_error)
    slack = 3 * math.sqrt(2 / seen.cells) * seen.chance**2
    assert seen.rms**2 - seen.chance**2 <= (RMS / 2) ** 2 + slack, seen
    assert abs(seen.mean) <= MEAN / 2 + 3 * seen.mean_error, seen


def test_the_walk_lands_by_the_closed_form() -> None:
    # A small Lambertian lamp over the middle of a square between black walls: four times
    # the configuration factor of an element to a parallel rectangle under its corner.
    lamp = Luminaire((0.5, 0.5, 0.6), 1e-6, 1e-6, ppf=1.0)
    scene = Scene("square", box(1.0, 1.0), 1.0, (BLACK,) * 4, BLACK, (lamp,), canopy=0.0)
    walked = walk(scene, 1_000_000)
    a = 0.5 / 0.5
    root = math.sqrt(1 + a * a)
    factor = 4 / (2 * math.pi) * 2 * (a / root * math.atan(a / root))
    assert walked.mean == pytest.approx(factor, abs=4 * walked.mean_error)


@pytest.mark.parametrize("exponent", [0.0, 1.0, 4.0])
def test_the_walk_draws_the_cosine_power(exponent: float) -> None:
    lamp = Luminaire((0.0, 0.0, 1.0), 0.2, 0.1, exponent=exponent)
    _, direction = emitted(lamp, 400_000, np.random.default_rng(5))
    # Mean of cos θ over ∫ cos^m: (m + 1)/(m + 2).
    assert -direction[:, 2].mean() == pytest.approx((exponent + 1) / (exponent + 2), abs=2e-3)


def test_the_walk_draws_the_planes_given() -> None:
    lamp = Luminaire((0.0, 0.0, 1.0), 0.1, 0.1, planes=LOPSIDED, turned_deg=0.0)
    _, direction = emitted(lamp, 400_000, np.random.default_rng(6))
    azimuth = np.degrees(np.arctan2(direction[:, 1], direction[:, 0])) % 360
    # ∫ I sinθ dθ of each plane by the trapezoid on a fine grid, linear in azimuth between.
    theta = np.radians(np.linspace(0, 90, 9001))
    knots = np.radians(LOPSIDED.angles)
    planes = [trapezoid(np.interp(theta, knots, v) * np.sin(theta), theta) for v in LOPSIDED.value]
    turn = np.linspace(0, 360, 36001)
    density = np.interp(turn, [*LOPSIDED.azimuths, 360], [*planes, planes[0]])
    total = trapezoid(density, turn)
    for low, high in ((0, 45), (45, 90), (90, 180), (180, 270), (270, 360)):
        part = (turn >= low) & (turn <= high)
        expected = trapezoid(density[part], turn[part]) / total
        share = float(((azimuth >= low) & (azimuth < high)).mean())
        assert share == pytest.approx(expected, abs=4e-3)


def lobe_by_quadrature(cosine: float, width: float) -> FloatArray:
    """Reflected share, and its share-weighted mean cosine and mean forward component.

    ∫ f cosθo dωo with f = D(h) G1(i) G1(o) / (4 cosθi cosθo), Walter et al. (2007),
    equations 20, 33 and 34 with a reflectance of 1 on the facets; over facet normals h,
    where dωo = 4 (i·h) dωh.
    """
    view = np.array([math.sqrt(1 - cosine**2), 0.0, cosine])
    # Slopes of the facets as tan θ = α √(u/(1-u)) spread D cosθ evenly over u.
    u = (np.arange(2000) + 0.5) / 2000
    turn = (np.arange(720) + 0.5) / 720 * 2 * math.pi
    uu, tt = (axis.ravel() for axis in np.meshgrid(u, turn))
    theta = np.arctan(width * np.sqrt(uu / (1 - uu)))
    facet = np.column_stack([np.sin(theta) * np.cos(tt), np.sin(theta) * np.sin(tt), np.cos(theta)])
    along = facet @ view
    out = 2 * along[:, None] * facet - view
    lit = (along > 0) & (out[:, 2] > 0)
    w = np.full(len(uu), width)
    shadow = in_sight(np.full(len(uu), cosine), w) * in_sight(np.where(lit, out[:, 2], 1.0), w)
    weight = np.where(lit, along * shadow / (cosine * np.cos(theta)), 0.0) / len(uu)
    return np.array([weight.sum(), (weight * out[:, 2]).sum(), (weight * -out[:, 0]).sum()])


@pytest.mark.parametrize("width", [0.1, 0.25, 0.6])
@pytest.mark.parametrize("cosine", [0.15, 0.5, 0.95])
def test_wrinkled_mirrors_reflect_by_the_published_lobe(cosine: float, width: float) -> None:
    count = 400_000
    expected = lobe_by_quadrature(cosine, width)
    normal = np.tile([0.0, 0.6, 0.8], (count, 1))
    side = np.array([1.0, 0.0, 0.0])
    direction = math.sqrt(1 - cosine**2) * -side - cosine * normal
    widths = np.full(count, width)
    # The walk's first bounce, under the shadowing of the lobe of one bounce.
    view = np.array([math.sqrt(1 - cosine**2), 0.0, cosine])
    once = bounced(np.tile(-view, (count, 1)), widths, np.random.default_rng(8))
    kept = np.where(once[:, 2] > 0, in_sight(np.maximum(once[:, 2], 1e-9), widths), 0.0)
    upright = np.array([0.0, 0.0, 1.0])
    walked = _moments(once, kept, upright, side)
    # The first bounce of the program, under the shadowing of the lobe of one bounce.
    up = np.cross(normal[0], side)
    local = -(np.stack([side, up, normal[0]]) @ direction.T)
    first = next(bounces(local, widths, np.random.default_rng(9)))
    out_z = first.after[2]
    share = np.where(out_z > 0, 1 / (1 + shading(np.maximum(out_z, 1e-9), widths)), 0.0)
    found = _moments(first.after.T, share, np.array([0.0, 0.0, 1.0]), np.array([1.0, 0.0, 0.0]))
    np.testing.assert_allclose(walked, expected, atol=4e-3)
    np.testing.assert_allclose(found, expected, atol=4e-3)


@pytest.mark.parametrize("width", [0.1, 0.25, 0.6, 1.0])
@pytest.mark.parametrize("cosine", [0.05, 0.5, 0.95])
def test_all_bounces_of_walk_and_program_are_alike(cosine: float, width: float) -> None:
    """Two readings of Heitz and others (2016) that share no line; nothing is lost in either."""
    count = 400_000
    normal = np.tile([0.0, 0.6, 0.8], (count, 1))
    side = np.array([1.0, 0.0, 0.0])
    direction = math.sqrt(1 - cosine**2) * -side - cosine * normal
    widths, whole = np.full(count, width), np.ones(count)
    walked = wrinkled(direction, normal, widths, np.random.default_rng(8))
    ours = scatter(direction.T, normal.T, widths, np.random.default_rng(9)).after.T
    one, other = (_moments(out, whole, normal[0], side) for out in (walked, ours))
    np.testing.assert_allclose(one, other, atol=4e-3)
    assert (walked @ normal[0] > 0).all()


def in_sight(cosine: FloatArray, width: FloatArray) -> FloatArray:
    """Share of facets in sight at this angle, G1: Walter et al. (2007), equation 34."""
    return np.asarray(1 / (1 + masking(cosine, width)))


def _moments(
    out: FloatArray, share: FloatArray, normal: FloatArray, side: FloatArray
) -> FloatArray:
    cosine, forward = out @ normal, out @ -side
    return np.array([share.mean(), (share * cosine).mean(), (share * forward).mean()])


def test_mirrors_of_the_walk_keep_what_they_are_given() -> None:
    # Vertical perfect mirrors carry all that falls on them down to a black canopy.
    lamp = Luminaire((0.2, 0.3, 0.9), 0.1, 0.1, ppf=1.0)
    scene = Scene(
        "mirrors", box(0.5, 0.6), 1.0, (Material(0.0, 1.0),) * 4, BLACK, (lamp,), canopy=0.0
    )
    walked = walk(scene, 200_000)
    assert walked.mean * 0.3 == pytest.approx(1.0, abs=1e-4)
