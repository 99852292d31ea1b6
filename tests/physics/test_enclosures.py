"""Enclosures with known answers: one reflectance everywhere, mirrors, reference boxes."""

from __future__ import annotations

import numpy as np
import pytest

from planner.estimate.result import Estimate, FloatArray, Quality
from planner.plan.plan import Plan
from tests.physics.rooms import BLACK, Rho, box, lamp, light, panel, plan, rms_and_mean

ISOTROPIC = ((0.0, 180.0), (1.0, 1.0))
MEAN = 3e-3
RMS = 1e-2


def mixed(rho: float, share: float) -> Rho:
    return rho * (1 - share), rho * share


def cube(rho: Rho) -> Plan:
    """CIE 171:2006 case 5.8: 4 m cube, isotropic point lamp of 10 000 lm in the centre."""
    lamps = [lamp((2.0, 2.0), 2.0, table=ISOTROPIC, ppf=10000)]
    return plan(box(4.0, 4.0), 4.0, lamps, walls=rho, ceiling=rho, canopy=rho[0])


# -- one reflectance everywhere ------------------------------------------------------------


@pytest.mark.parametrize(
    ("rho", "lux"),
    # Sumpner: mean over all faces = Φ/(S(1 - ρ)); by symmetry every face has it. The cube
    # is that of CIE 171:2006 case 5.8 (geometry from memory).
    [(0.0, 104.17), (0.2, 130.21), (0.5, 208.33), (0.8, 520.83), (0.9, 1041.67), (0.95, 2083.33)],
)
def test_face_mean_of_the_integrating_cube(rho: float, lux: float) -> None:
    found = light(cube((rho, 0.0)))
    assert found.figures.mean == pytest.approx(lux, rel=MEAN)
    for share in found.shares:
        assert share.share == pytest.approx(1 / 6, rel=MEAN)


@pytest.mark.parametrize(
    ("rho", "points"),
    # The same cube point by point: patch radiosity with exact factors, 24² patches a face,
    # extrapolated (±0.1 %); places measured from a corner of the face.
    [
        (0.2, {(2, 2): 227.82, (1, 1): 135.59, (0.5, 0.5): 87.67, (2, 0.25): 111.04}),
        (0.5, {(2, 2): 310.98, (1, 1): 216.07, (0.5, 0.5): 161.06, (2, 0.25): 189.91}),
        (0.9, {(2, 2): 1153.29, (1, 1): 1053.93, (0.5, 0.5): 985.46, (2, 0.25): 1025.86}),
        (0.95, {(2, 2): 2196.36, (1, 1): 2096.34, (0.5, 0.5): 2025.68, (2, 0.25): 2068.08}),
    ],
)
def test_points_of_the_integrating_cube(
    rho: float, points: dict[tuple[float, float], float]
) -> None:
    found = light(cube((rho, 0.0)), (32, 32))
    for place, lux in points.items():
        assert at_corner_of_cells(found, *place) == pytest.approx(lux, rel=RMS)


@pytest.mark.parametrize("size", [(0.4, 0.6, 0.9), (1.0, 1.0, 2.0)])
@pytest.mark.parametrize("share", [0.0, 0.5, 0.9])
def test_mean_over_all_surfaces(size: tuple[float, float, float], share: float) -> None:
    # Sumpner's principle for any mixture of diffuse and mirrored light: the mean over all
    # surfaces is Φ/(S(1 - ρ)). The canopy reflects diffusely only, to the same total.
    width, depth, height = size
    rho = 0.85
    what = plan(
        box(width, depth),
        height,
        [lamp((0.4 * width, 0.6 * depth), 0.7 * height, table=ISOTROPIC)],
        walls=mixed(rho, share),
        ceiling=mixed(rho, share),
        canopy=rho,
    )
    found = light(what)
    surface = 2 * (width * depth + width * height + depth * height)
    incident = sum(share.photon_flux for share in found.shares) / (1 - rho)
    assert incident / surface == pytest.approx(100 / (surface * (1 - rho)), rel=MEAN)
    assert abs(found.closure) < 1e-9
    # The map agrees with the balance.
    assert found.figures.mean * width * depth * (1 - rho) == pytest.approx(
        found.shares[0].photon_flux, rel=1e-6
    )
    assert found.cross_check is not None
    assert abs(found.cross_check) < 2 * MEAN


def test_multiplier_of_an_integrating_enclosure_with_a_port() -> None:
    # M = ρ/(1 - ρ(1 - f)) (Goebel 1967, from memory) for an integrating sphere. A box is
    # not a sphere: the black canopy of a cube (f = 1/6) takes within a few per cent of what
    # the formula says when the direct light goes to the walls alone.
    upward = ((0.0, 89.0, 91.0, 180.0), (0.0, 0.0, 1.0, 1.0))
    for rho in (0.8, 0.9, 0.95):
        what = plan(
            box(1.0, 1.0),
            1.0,
            [lamp((0.5, 0.5), 0.5, table=upward)],
            walls=(rho, 0.0),
            ceiling=(rho, 0.0),
        )
        multiplier = rho / (1 - rho * (1 - 1 / 6))
        assert light(what).figures.utilisation == pytest.approx(multiplier / 6, rel=0.06)


# -- mirrors -------------------------------------------------------------------------------


@pytest.mark.parametrize("height", [0.5, 1.0, 2.0])
@pytest.mark.parametrize("quality", [Quality.PREVIEW, Quality.DEFAULT])
def test_perfect_mirrors_bring_everything_down(height: float, quality: Quality) -> None:
    # Nothing is lost on the way, so the mean is Φ/A at any height (method of images).
    what = plan(box(0.6, 0.4), 2.2, [lamp((0.2, 0.3), height, body=panel(0.1, 0.2))], walls=(0, 1))
    assert light(what, quality=quality).figures.mean == pytest.approx(100 / 0.24, rel=MEAN)


@pytest.mark.parametrize(("ceiling", "floor"), [(0.0, 0.0), (0.9, 0.06), (0.9, 0.9), (0.8, 0.2)])
def test_luminous_ceiling_between_mirrors(ceiling: float, floor: float) -> None:
    # Two endless planes: E = M/(1 - ρ1 ρ2) at every point; 1.05708 M for 0.9 and 0.06,
    # 5.26316 M for 0.9 and 0.9, 1.19048 M for 0.8 and 0.2.
    what = plan(
        box(1.0, 0.5),
        1.0,
        [lamp((0.5, 0.25), 1.0, body=panel(1.0, 0.5))],
        walls=(0.0, 1.0),
        ceiling=(ceiling, 0.0),
        canopy=floor,
    )
    expected = 100 / 0.5 / (1 - ceiling * floor)
    found = light(what)
    assert found.figures.mean == pytest.approx(expected, rel=MEAN)
    np.testing.assert_allclose(found.ppfd, expected, rtol=2e-2)
    assert rms_and_mean(found.ppfd, np.full(found.ppfd.shape, expected))[0] < RMS


# -- reference boxes: patch radiosity with exact factors, extrapolated; image sums ----------


def at_corner_of_cells(found: Estimate, x: float, y: float) -> float:
    """Mean of the four cells that meet at a point: their slopes cancel."""
    dx, dy = found.x[1] - found.x[0], found.y[1] - found.y[0]
    column, row = round(x / dx), round(y / dy)
    return float(found.ppfd[row - 1 : row + 1, column - 1 : column + 1].mean())


@pytest.mark.parametrize(
    ("rho", "diffuse", "centre", "mirror", "mirror_centre", "mirror_corner"),
    # Unit cube, the whole ceiling emits M = 1, ceiling and floor black, walls ρ. Diffuse
    # ±0.0001 by patch radiosity, mirrors ±1e-5 by images.
    [
        (0.2, 0.22704, 0.27122, 0.27891, 0.31630, 0.23269),
        (0.5, 0.28836, 0.34055, 0.44682, 0.47676, 0.40778),
        (0.8, 0.39904, 0.46107, 0.71088, 0.72637, 0.68984),
        (0.9, 0.45776, 0.52356, 0.83649, 0.84498, 0.82484),
        (0.95, 0.49396, 0.56177, 0.91153, 0.91598, 0.90539),
        (1.0, 0.53623, 0.60610, 1.0, 1.0, 1.0),
    ],
)
def test_cube_under_a_luminous_ceiling(
    rho: float,
    diffuse: float,
    centre: float,
    mirror: float,
    mirror_centre: float,
    mirror_corner: float,
) -> None:
    def lit(walls: Rho) -> Estimate:
        lamps = [lamp((0.5, 0.5), 1.0, body=panel(1.0, 1.0), ppf=1.0)]
        return light(plan(box(1.0, 1.0), 1.0, lamps, walls=walls), (20, 20))

    matt, bright = lit((rho, 0.0)), lit((0.0, rho))
    assert matt.figures.mean == pytest.approx(diffuse, rel=MEAN)
    assert at_corner_of_cells(matt, 0.5, 0.5) == pytest.approx(centre, rel=RMS)
    assert bright.figures.mean == pytest.approx(mirror, rel=MEAN)
    assert at_corner_of_cells(bright, 0.5, 0.5) == pytest.approx(mirror_centre, rel=RMS)
    assert at_corner_of_cells(bright, 0.05, 0.05) == pytest.approx(mirror_corner, rel=RMS)


def cabinet(walls: Rho, ceiling: Rho, floor: float) -> Plan:
    """0.6 m cube, Lambertian lamp 0.3 x 0.3 m in the ceiling, 100 µmol/s."""
    lamps = [lamp((0.3, 0.3), 0.6, body=panel(0.3, 0.3))]
    return plan(box(0.6, 0.6), 0.6, lamps, walls=walls, ceiling=ceiling, canopy=floor)


@pytest.mark.parametrize(
    ("rho", "mean", "points", "low", "high", "evenness", "cv"),
    # Walls and ceiling ρ diffuse, floor 0.06; ±0.1 % (±0.5 % at the last point).
    [
        (0.0, 63.461, (81.642, 66.516, 61.672, 47.975), 47.877, 79.138, 0.754, 0.146),
        (0.2, 72.779, (92.27, 76.38, 70.97, 55.66), 55.42, 89.67, 0.761, 0.140),
        (0.5, 97.171, (119.52, 102.00, 95.21, 76.69), 76.04, 116.70, 0.783, 0.125),
        (0.8, 157.81, (186.10, 165.27, 155.23, 131.16), 129.41, 182.82, 0.820, 0.101),
        (0.9, 204.24, (236.73, 213.59, 201.06, 173.58), 170.96, 233.12, 0.837, 0.092),
        (0.95, 240.98, (276.73, 251.79, 237.29, 207.33), 204.00, 272.85, 0.847, 0.086),
    ],
)
def test_white_cabinet(
    rho: float,
    mean: float,
    points: tuple[float, ...],
    low: float,
    high: float,
    evenness: float,
    cv: float,
) -> None:
    what = cabinet((rho, 0.0), (rho, 0.0), 0.06)
    coarse, fine = light(what, (6, 6)), light(what, (24, 24))
    assert coarse.figures.mean == pytest.approx(mean, rel=MEAN + 1e-3)
    assert coarse.figures.minimum == pytest.approx(low, rel=RMS + 1e-3)
    assert coarse.figures.maximum == pytest.approx(high, rel=RMS + 1e-3)
    assert coarse.figures.min_over_mean == pytest.approx(evenness, abs=0.012)
    assert coarse.figures.cv == pytest.approx(cv, abs=0.005)
    places = ((0.3, 0.3), (0.15, 0.15), (0.3, 0.05), (0.05, 0.05))
    for place, expected in zip(places, points, strict=True):
        assert at_corner_of_cells(fine, *place) == pytest.approx(expected, rel=1.5 * RMS)


@pytest.mark.parametrize(
    ("rho", "mean", "points"),
    # Mirror walls, ceiling and floor black: image sums, ±0.001.
    [
        (0.2, 85.027, (102.073, 87.862, 83.669, 69.981)),
        (0.5, 130.213, (144.397, 132.435, 129.444, 117.273)),
        (0.8, 200.641, (210.040, 201.770, 200.400, 192.160)),
        (0.9, 234.102, (241.313, 234.716, 234.025, 227.818)),
        (0.95, 254.118, (260.093, 254.439, 254.122, 249.102)),
        (0.99, 272.609, (277.516, 272.675, 272.677, 268.700)),
    ],
)
def test_mirrored_cabinet(rho: float, mean: float, points: tuple[float, ...]) -> None:
    found = light(cabinet((0.0, rho), BLACK, 0.0), (24, 24))
    assert found.figures.mean == pytest.approx(mean, rel=MEAN)
    places = ((0.3, 0.3), (0.15, 0.15), (0.3, 0.05), (0.05, 0.05))
    for place, expected in zip(places, points, strict=True):
        assert at_corner_of_cells(found, *place) == pytest.approx(expected, rel=RMS / 2)


# One quadrant: rows from the short wall to the middle, columns from the long wall on; ±0.15.
QUADRANTS: dict[float, list[list[float]]] = {
    0.0: [
        [70.9, 78.7, 82.4],
        [82.5, 92.5, 97.4],
        [95.4, 108.1, 114.6],
        [108.5, 124.1, 132.5],
        [119.2, 137.3, 147.3],
        [125.2, 144.7, 155.6],
    ],
    0.5: [
        [82.0, 86.5, 89.0],
        [91.5, 97.3, 100.7],
        [104.1, 111.8, 116.7],
        [117.7, 127.6, 133.9],
        [129.0, 140.7, 148.5],
        [135.3, 148.1, 156.6],
    ],
    1.0: [
        [92.7, 94.8, 96.2],
        [100.7, 103.5, 105.8],
        [113.3, 117.3, 120.6],
        [127.1, 132.7, 137.3],
        [139.0, 145.8, 151.6],
        [145.7, 153.2, 159.5],
    ],
}


@pytest.mark.parametrize(("share", "mean"), [(0.0, 112.05), (0.5, 117.61), (1.0, 124.28)])
@pytest.mark.parametrize("seed", [1, 2, 3])
def test_oblong_tent_from_matt_to_mirror(share: float, mean: float, seed: int) -> None:
    # 1.2 x 0.6 m, lamp 0.6 x 0.2 m at 0.5 m, walls and ceiling 0.85 (ceiling diffuse),
    # floor 0.06; the share of the walls' reflection that is specular varies.
    what = plan(
        box(1.2, 0.6),
        0.5,
        [lamp((0.6, 0.3), 0.5, body=panel(0.6, 0.2))],
        walls=mixed(0.85, share),
        ceiling=(0.85, 0.0),
        canopy=0.06,
    )
    quadrant: FloatArray = np.array(QUADRANTS[share]).T
    half = np.concatenate([quadrant, quadrant[:, ::-1]], axis=1)
    expected = np.concatenate([half, half[::-1]], axis=0)
    found = light(what, (12, 6), seed=seed)
    rms, _ = rms_and_mean(found.ppfd, expected)
    assert rms < RMS + 0.15 / mean
    assert found.figures.mean == pytest.approx(mean, rel=MEAN)
