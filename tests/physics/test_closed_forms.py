"""Direct light against closed forms: black walls, so that nothing else arrives.

The map holds cell means, so each formula is averaged over the cell by an 8 x 8 Gauss rule
made here. Tolerance 0.2 % of the cell's own value.
"""

from __future__ import annotations

import math
from collections.abc import Callable

import numpy as np
import pytest

from planner.estimate.result import Estimate, FloatArray
from planner.plan.lamp import BarsBody, CosineProfile, Lamp, PointBody
from tests.physics.rooms import box, lamp, light, panel, plan, under_rectangle

TOLERANCE = 2e-3
ROOM = box(1.0, 0.8)
CELLS = (10, 8)
HALF_SPACE = ((0.0, 90.0), (1.0, 1.0))
"""A table for equal intensity in every downward direction: Φ/2π."""


def cell_means(formula: Callable[[float, float], float], estimate: Estimate) -> FloatArray:
    x, w = np.polynomial.legendre.leggauss(8)
    dx, dy = estimate.x[1] - estimate.x[0], estimate.y[1] - estimate.y[0]
    result = np.zeros((len(estimate.y), len(estimate.x)))
    for row, cy in enumerate(estimate.y):
        for column, cx in enumerate(estimate.x):
            for a, wa in zip(x, w, strict=True):
                for b, wb in zip(x, w, strict=True):
                    value = formula(float(cx + a * dx / 2), float(cy + b * dy / 2))
                    result[row, column] += wa * wb / 4 * value
    return result


def furthest(estimate: Estimate, formula: Callable[[float, float], float]) -> float:
    expected = cell_means(formula, estimate)
    return float(np.abs(estimate.ppfd / expected - 1).max())


def black_room(*lamps: Lamp) -> Estimate:
    return light(plan(ROOM, 2.0, lamps), CELLS)


@pytest.mark.parametrize("height", [0.3, 0.6, 1.5])
@pytest.mark.parametrize("exponent", [0.5, 1.0, 2.0, 4.8188, 19.9937])
def test_point_lamp_with_cosine_power(height: float, exponent: float) -> None:
    # Photometric distance law, CIE S 017 term 17-25-104; I0 = (m + 1)Φ/2π is ∫ I dΩ = Φ.
    at = (0.33, 0.29)

    def formula(x: float, y: float) -> float:
        squared = height**2 + (x - at[0]) ** 2 + (y - at[1]) ** 2
        cosine = height / math.sqrt(squared)
        return float(100 * (exponent + 1) / (2 * math.pi) * cosine ** (exponent + 1) / squared)

    found = black_room(lamp(at, height, exponent=exponent))
    # Gauss over the cell is less exact under a narrow beam close by; the share of the peak
    # is what matters where the beam has faded to nothing.
    expected = cell_means(formula, found)
    bright = expected > 1e-3 * expected.max()
    assert np.abs(found.ppfd / expected - 1)[bright].max() < TOLERANCE


@pytest.mark.parametrize(
    ("angle_deg", "cubed"), [(15, 0.901221), (30, 0.649519), (45, 0.353553), (60, 0.125)]
)
def test_equal_intensity_below_the_lamp_falls_with_the_cube(angle_deg: float, cubed: float) -> None:
    # E = I cos³θ / h² (photometric distance law); I = Φ/2π over the lower half space.
    height, at = 0.5, (0.05, 0.4)
    away = height * math.tan(math.radians(angle_deg))
    room = box(2.0, 0.8)
    found = light(plan(room, 2.0, [lamp(at, height, table=HALF_SPACE)]), (200, 80))
    column = int((at[0] + away) / 0.01)
    # Between the two cell centres on either side of the place.
    share = (at[0] + away) / 0.01 - 0.5 - (column - 1 if column * 0.01 > at[0] + away else column)
    column = column - 1 if share < 0 else column
    share = (at[0] + away) / 0.01 - 0.5 - column
    rows = found.ppfd[39:41].mean(axis=0)
    value = rows[column] * (1 - share) + rows[column + 1] * share
    assert value == pytest.approx(100 / (2 * math.pi) * cubed / height**2, rel=TOLERANCE)


def test_lambertian_point_lamp_of_the_textbook() -> None:
    # I0 = Φ/π; Φ = 100 µmol/s at 0.5 m gives 127.32 below and a quarter of it at 45°.
    found = light(plan(box(1.5, 0.5), 1.0, [lamp((0.25, 0.25), 0.5)]), (75, 25))
    assert found.ppfd[12, 12] == pytest.approx(127.324, rel=TOLERANCE)
    beside = 0.5 * (found.ppfd[12, 37] + found.ppfd[12, 37])
    assert beside == pytest.approx(31.831, rel=TOLERANCE)


@pytest.mark.parametrize("height", [0.15, 0.3, 0.6, 1.5])
@pytest.mark.parametrize("size", [(0.3, 0.3), (0.6, 0.2), (0.8, 0.02)])
@pytest.mark.parametrize("turned", [0.0, 90.0])
def test_lambertian_panel(height: float, size: tuple[float, float], turned: float) -> None:
    # Configuration factor of an element and a parallel rectangle (Siegel and Howell).
    at = (0.5, 0.4)
    exitance = 100 / (size[0] * size[1])
    seen = size if turned == 0 else (size[1], size[0])
    found = black_room(lamp(at, height, body=panel(*size), turned=turned))
    assert furthest(found, lambda x, y: exitance * under_rectangle((x, y), at, seen, height)) < (
        TOLERANCE
    )


@pytest.mark.parametrize("height", [0.15, 0.25, 0.6])
@pytest.mark.parametrize("beam_deg", [86.0, 44.0, 30.0])
def test_panel_of_a_narrow_beam(height: float, beam_deg: float) -> None:
    # The distance law (CIE S 017, 17-25-104), integrated over the panel by a 40 x 40 Gauss rule.
    at, size = (0.5, 0.4), (0.3, 0.26)
    exponent = math.log(0.5) / math.log(math.cos(math.radians(beam_deg / 2)))
    node, weight = np.polynomial.legendre.leggauss(40)
    x, y = np.meshgrid(at[0] + size[0] / 2 * node, at[1] + size[1] / 2 * node)
    share = np.outer(weight, weight) / 4

    def summed(u: float, v: float) -> float:
        squared = (x - u) ** 2 + (y - v) ** 2 + height**2
        cosine = height / np.sqrt(squared)
        light = (exponent + 1) / (2 * math.pi) * cosine ** (exponent + 1) / squared
        return 100 * float((share * light).sum())

    lit = lamp(at, height, body=panel(*size), exponent=exponent)
    found = black_room(lit)
    expected = cell_means(summed, found)
    # Far from a narrow beam next to nothing arrives.
    assert float(np.abs(found.ppfd - expected).max()) < TOLERANCE / 2 * float(expected.mean())


@pytest.mark.parametrize(
    ("ratio", "expected"),
    # E/M under the centre of a square of side L at h/L, from the configuration factor
    # (Siegel and Howell), worked by hand calculator.
    [(0.5, 0.554126), (0.75, 0.357685), (1.0, 0.239456), (2.0, 0.073478), (5.0, 0.012565)],
)
def test_under_the_centre_of_a_square_panel(ratio: float, expected: float) -> None:
    side = 0.3
    what = plan(box(0.9, 0.9), 2.0, [lamp((0.45, 0.45), ratio * side, body=panel(side, side))])
    found = light(what, (91, 91))
    assert found.ppfd[45, 45] / (100 / side**2) == pytest.approx(expected, rel=TOLERANCE)


def test_below_the_corner_of_a_square_at_its_own_side() -> None:
    # Siegel and Howell: F = 0.1385316 for a = b = c.
    side = 0.4
    what = plan(box(1.2, 1.2), 1.0, [lamp((0.6, 0.6), side, body=panel(side, side))])
    found = light(what, (120, 120)).ppfd
    # The corner lies where four cells meet; their mean cancels the gradient.
    assert found[79:81, 79:81].mean() / (100 / side**2) == pytest.approx(0.1385316, rel=TOLERANCE)


@pytest.mark.parametrize(("times", "error"), [(1.0, 0.329), (2.0, 0.083), (5.0, 0.0133)])
def test_five_times_rule(times: float, error: float) -> None:
    # ANSI/IES LS-1, 9.1.1: a point stands for a lamp within about 1 % from five times its
    # size on. Errors of the point: E_point = L²/πh² over the configuration factor.
    side = 0.2
    room = box(1.0, 1.0)
    where = ((0.5, 0.5), times * side)
    wide = light(plan(room, 2.0, [lamp(*where, body=panel(side, side))]), (101, 101))
    small = light(plan(room, 2.0, [lamp(*where, body=PointBody())]), (101, 101))
    ratio = small.ppfd[50, 50] / wide.ppfd[50, 50] - 1
    assert ratio == pytest.approx(error, abs=3e-3)


def test_beam_angle_fixes_the_exponent() -> None:
    # m = ln ½ / ln cos(β/2): definition of the half-peak beam angle.
    for beam, exponent in ((120, 1.0), (90, 2.0), (60, 4.8188), (45, 8.7548), (30, 19.9937)):
        profile = CosineProfile.from_beam_angle(beam)
        assert profile.exponent == pytest.approx(exponent, rel=1e-4)
        assert profile.beam_angle_deg == pytest.approx(beam, rel=1e-9)


def test_bars_are_the_sum_of_single_bars() -> None:
    # Superposition (the light of lamps adds); three bars 12 cm apart, centre to centre.
    bars = BarsBody(count=3, length=0.5, bar_width=0.02, width=0.26)
    together = black_room(lamp((0.5, 0.4), 0.25, body=bars, ppf=90))
    single = [
        black_room(lamp((0.5, 0.4 + shift), 0.25, body=panel(0.5, 0.02), ppf=30)).ppfd
        for shift in (-0.12, 0.0, 0.12)
    ]
    np.testing.assert_allclose(together.ppfd, sum(single), rtol=TOLERANCE)


def test_turned_bars_against_the_configuration_factor() -> None:
    bars = BarsBody(count=2, length=0.4, bar_width=0.05, width=0.35)
    found = black_room(lamp((0.4, 0.4), 0.3, body=bars, turned=90.0))
    exitance = 100 / (2 * 0.4 * 0.05)

    def formula(x: float, y: float) -> float:
        return exitance * sum(
            under_rectangle((x, y), (0.4 + side, 0.4), (0.05, 0.4), 0.3) for side in (-0.15, 0.15)
        )

    assert furthest(found, formula) < TOLERANCE


def test_table_of_a_cosine_is_the_cosine() -> None:
    # Linear between 1° steps a cosine is off by at most (1°)²/8 = 4e-5.
    angles = [float(a) for a in range(91)]
    table = (angles, [max(math.cos(math.radians(a)), 0.0) for a in angles])
    where = ((0.3, 0.5), 0.4)
    by_table = black_room(lamp(*where, body=panel(0.2, 0.1), table=table))
    by_law = black_room(lamp(*where, body=panel(0.2, 0.1)))
    np.testing.assert_allclose(by_table.ppfd, by_law.ppfd, rtol=TOLERANCE)


def test_share_on_the_floor_by_reciprocity() -> None:
    # Lambertian point over the centre of a square at its own side: the share that lands
    # equals E/M under the centre of such a panel, 0.239456 (reciprocity; Siegel and Howell).
    found = light(plan(box(0.6, 0.6), 0.7, [lamp((0.3, 0.3), 0.6)]), (24, 24))
    assert found.figures.utilisation == pytest.approx(0.239456, rel=TOLERANCE)


@pytest.mark.parametrize("height", [0.01, 0.02, 0.05, 0.1])
@pytest.mark.parametrize("aside", [0.0, 0.0088, 0.0208])
def test_a_lamp_just_above_the_canopy_gives_it_no_more_than_it_has(
    height: float, aside: float
) -> None:
    # Cells are then wider than the spot of light; the flux that lands is
    # 4 corner factors of the floor as seen from the lamp (reciprocity).
    at = (0.5 + aside, 0.5 + aside)
    found = light(plan(box(1.0, 1.0), 1.0, [lamp(at, height)]), (24, 24))
    due = under_rectangle(at, (0.5, 0.5), (1.0, 1.0), height)
    assert found.figures.utilisation == pytest.approx(due, rel=TOLERANCE)
    assert abs(found.closure) < 3e-3
