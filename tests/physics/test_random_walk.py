"""Rooms without a closed form, against photons walked one collision at a time.

``random_walk`` shares no code with the program. Its own chance error is known (a count of
n has the standard deviation √n) and is taken off in quadrature from what is found; the
mean is allowed three of its standard errors more.
"""

from __future__ import annotations

import math
from collections.abc import Callable

import numpy as np
import pytest

from planner.estimate.outlook import through_ranges
from planner.estimate.result import EstimateOptions, FloatArray, Quality
from planner.estimate.sensitivity import Reckoner
from planner.plan.lamp import BarsBody
from planner.plan.plan import Plan
from tests.physics.random_walk import Room, cosine_panel, walk
from tests.physics.rooms import BLACK, Rho, box, lamp, light, panel, plan

pytestmark = pytest.mark.slow

PHOTONS = 900_000
BATCHES = 3
RMS, MEAN = 1e-2, 3e-3

Photons = Callable[[int, int], tuple[FloatArray, FloatArray]]
"""From a count and a seed, starts and directions."""

WHITE, FOIL, DARK = (0.8, 0.05), (0.2, 0.65), (0.05, 0.0)
L_SHAPE = ((0.0, 0.0), (1.0, 0.0), (1.0, 0.5), (0.5, 0.5), (0.5, 1.0), (0.0, 1.0))


def room_of(
    what: Plan,
    walls: list[Rho | list[tuple[float, Rho]]],
    ceiling: Rho,
    bottom: Rho,
) -> Room:
    """The same room for the walk; bands as (top, pair) from the floor up."""

    def rho(wall: int, z: FloatArray) -> tuple[FloatArray, FloatArray]:
        cover = walls[wall]
        if isinstance(cover, tuple):
            cover = [(math.inf, cover)]
        diffuse, specular = np.zeros(z.shape), np.zeros(z.shape)
        for top, pair in reversed(cover):
            diffuse = np.where(z <= top, pair[0], diffuse)
            specular = np.where(z <= top, pair[1], specular)
        return diffuse, specular

    height = what.canopy.height
    floor = height if what.canopy.closed else 0.0
    corners = np.array(what.space.footprint)
    return Room(corners, floor, what.space.height, rho, ceiling, bottom, height)


def assert_agree(
    what: Plan, room: Room, photons: Photons, cells: tuple[int, int] = (8, 8), rms: float = RMS
) -> None:
    counts = np.zeros((cells[1], cells[0]))
    for batch in range(BATCHES):
        start, direction = photons(PHOTONS // BATCHES, 11 + batch)
        counts += walk(room, start, direction, cells, batch)
    found = light(what, cells)
    inside = found.cell_area > 0.3 * found.cell_area.max()
    flux = found.ppfd * found.cell_area
    emitted = sum(one.ppf for one in what.lamps)
    walked = counts * emitted / PHOTONS
    density = (walked / np.where(inside, found.cell_area, 1.0))[inside]
    chance = np.sqrt(counts[inside]) * emitted / PHOTONS / found.cell_area[inside]
    difference = found.ppfd[inside] - density
    mean = density.mean()
    own = (difference**2).mean() - (chance**2).mean()
    # The spread of a mean square over n cells is about √(2/n) of the chance part.
    slack = 3 * math.sqrt(2 / inside.sum()) * (chance**2).mean()
    assert own <= (rms * mean) ** 2 + slack
    total, expected = float(np.nansum(flux)), float(walked.sum())
    # Counts of a mean: binomial, and a photon may pass the plane more than once.
    standard_error = 1.3 / math.sqrt(counts.sum())
    assert abs(total / expected - 1) <= MEAN + 3 * standard_error
    assert abs(found.closure) < 1e-9


@pytest.mark.parametrize("closed", [True, False])
@pytest.mark.parametrize("door", [False, True])
def test_l_shape_with_bands_and_a_door(closed: bool, door: bool) -> None:
    walls: list[Rho | list[tuple[float, Rho]]] = [
        WHITE,
        [(0.7, DARK), (math.inf, FOIL)],
        FOIL,
        WHITE,
        FOIL,
        WHITE,
    ]
    lamps = [lamp((0.3, 0.3), 0.8, body=panel(0.3, 0.2), exponent=1.5)]
    what = plan(
        L_SHAPE,
        1.4,
        lamps,
        walls=[WHITE, [(0.7, DARK), (None, FOIL)], FOIL, WHITE, FOIL, WHITE],
        ceiling=WHITE,
        floor=(0.3, 0.5),
        canopy=0.1,
        canopy_height=0.3,
        closed=closed,
        open_door=5 if door else None,
    )
    if door:
        walls[5] = BLACK
    room = room_of(what, walls, WHITE, (0.1, 0.0) if closed else (0.3, 0.5))
    assert_agree(what, room, lambda n, s: cosine_panel((0.3, 0.3, 1.1), (0.3, 0.2), 1.5, n, s))


@pytest.mark.parametrize("size", [(1.5, 0.1, 0.9), (2.4, 1.4, 0.24)], ids=["corridor", "low"])
def test_walls_that_face_each_other_closely(size: tuple[float, float, float]) -> None:
    """By patches as wide as the room is low the low one was 2 % off."""
    width, depth, height = size
    at, above = (0.4 * width, depth / 2), 0.7 * height
    what = plan(
        box(width, depth), height, [lamp(at, above)], walls=WHITE, ceiling=WHITE, canopy=0.1
    )
    room = room_of(what, [WHITE] * 4, WHITE, (0.1, 0.0))
    start = (*at, above)
    assert_agree(what, room, lambda n, s: cosine_panel(start, (0.0, 0.0), 1.0, n, s), rms=0.012)


def test_open_canopy_over_a_mirror() -> None:
    what = plan(
        box(0.6, 0.9),
        1.0,
        [lamp((0.2, 0.5), 0.5, body=panel(0.2, 0.3))],
        walls=WHITE,
        ceiling=WHITE,
        floor=(0.0, 0.9),
        canopy_height=0.25,
        closed=False,
    )
    room = room_of(what, [WHITE] * 4, WHITE, (0.0, 0.9))
    assert_agree(what, room, lambda n, s: cosine_panel((0.2, 0.5, 0.75), (0.2, 0.3), 1.0, n, s))


def everywhere(at: tuple[float, float, float]) -> Photons:
    """An isotropic point: directions uniform on the sphere."""

    def photons(count: int, seed: int) -> tuple[FloatArray, FloatArray]:
        direction = np.random.default_rng(seed).normal(size=(3, count))
        direction /= np.linalg.norm(direction, axis=0)
        return np.repeat(np.array(at)[:, None], count, axis=1), direction

    return photons


@pytest.mark.parametrize("ceiling", [(0.0, 0.9), (0.45, 0.45)])
def test_bare_lamp_under_a_mirror(ceiling: Rho) -> None:
    bare = ((0.0, 180.0), (1.0, 1.0))
    what = plan(
        box(0.8, 0.6),
        1.0,
        [lamp((0.3, 0.35), 0.7, table=bare)],
        walls=FOIL,
        ceiling=ceiling,
        canopy=0.06,
        canopy_height=0.1,
    )
    room = room_of(what, [FOIL] * 4, ceiling, (0.06, 0.0))
    assert_agree(what, room, everywhere((0.3, 0.35, 0.8)))


def turned_bars(centre: tuple[float, float, float], bars: BarsBody, turned_deg: float) -> Photons:
    def photons(count: int, seed: int) -> tuple[FloatArray, FloatArray]:
        start, direction = cosine_panel(
            (0.0, 0.0, centre[2]), (bars.length, bars.bar_width), 1.0, count, seed
        )
        bar = np.random.default_rng(1000 + seed).integers(bars.count, size=count)
        pitch = (bars.width - bars.bar_width) / (bars.count - 1)
        across = start[1] + (bar - (bars.count - 1) / 2) * pitch
        cos, sin = math.cos(math.radians(turned_deg)), math.sin(math.radians(turned_deg))
        x = centre[0] + cos * start[0] - sin * across
        y = centre[1] + sin * start[0] + cos * across
        return np.stack([x, y, start[2]]), direction

    return photons


@pytest.mark.parametrize("rho", [(0.85, 0.0), (0.1, 0.75)])
def test_turned_bars_beside_a_wall(rho: Rho) -> None:
    bars = BarsBody(count=3, length=0.5, bar_width=0.03, width=0.2)
    what = plan(
        box(1.0, 0.7),
        1.0,
        [lamp((0.13, 0.3), 0.5, body=bars, turned=83.0)],
        walls=rho,
        ceiling=rho,
        canopy=0.06,
    )
    room = room_of(what, [rho] * 4, rho, (0.06, 0.0))
    assert_agree(what, room, turned_bars((0.13, 0.3, 0.5), bars, 83.0))


@pytest.mark.parametrize("rho", [(0.85, 0.0), (0.1, 0.75)])
def test_lamp_in_a_corner_just_above_the_canopy(rho: Rho) -> None:
    what = plan(
        box(0.6, 0.6),
        0.8,
        [lamp((0.08, 0.08), 0.05, body=panel(0.15, 0.15))],
        walls=rho,
        ceiling=rho,
        canopy=0.06,
        canopy_height=0.1,
    )
    room = room_of(what, [rho] * 4, rho, (0.06, 0.0))
    photons = lambda n, s: cosine_panel((0.08, 0.08, 0.15), (0.15, 0.15), 1.0, n, s)
    assert_agree(what, room, photons)


@pytest.mark.parametrize("away", [0.01, 0.02, 0.05, 0.1, 0.2])
def test_point_lamp_beside_a_white_wall(away: float) -> None:
    what = plan(
        box(0.6, 0.6), 0.9, [lamp((away, 0.25), 0.4)], walls=(0.85, 0.0), ceiling=(0.85, 0.0)
    )
    room = room_of(what, [(0.85, 0.0)] * 4, (0.85, 0.0), BLACK)
    photons = lambda n, s: cosine_panel((away, 0.25, 0.4), (0.0, 0.0), 1.0, n, s)
    assert_agree(what, room, photons)


def test_cut_corner() -> None:
    # A triangle-like footprint: cells are cut by a slanting wall.
    outline = ((0.0, 0.0), (0.9, 0.0), (0.9, 0.3), (0.3, 0.9), (0.0, 0.9))
    lamps = [lamp((0.3, 0.3), 0.6, body=panel(0.3, 0.3))]
    what = plan(outline, 0.9, lamps, walls=(0.45, 0.45), ceiling=WHITE, canopy=0.06)
    room = room_of(what, [(0.45, 0.45)] * 5, WHITE, (0.06, 0.0))
    assert_agree(what, room, lambda n, s: cosine_panel((0.3, 0.3, 0.6), (0.3, 0.3), 1.0, n, s))


def test_what_a_narrower_beam_does_in_a_small_cabinet() -> None:
    """The end of a beam's range against the walk: cos³ in place of cos, in white, 0.6 m wide.

    120° is the beam of cos, 2 arccos(½^⅓) = 74.9° that of cos³. The same flux brings a fifth to a
    quarter more to the canopy, which no figure would tell if the beam were taken as known.
    """
    narrow = 2 * math.degrees(math.acos(0.5 ** (1 / 3)))
    hung = lamp((0.3, 0.3), 0.5, body=panel(0.2, 0.2), exponent=1.0)
    model = hung.model.model_copy(update={"beam_uncertainty_deg": 120 - narrow})
    what = plan(
        box(0.6, 0.6),
        1.2,
        [hung.model_copy(update={"model": model})],
        walls=WHITE,
        ceiling=WHITE,
        floor=WHITE,
        canopy=0.06,
        canopy_height=0.2,
    )
    room = room_of(what, [WHITE] * 4, WHITE, (0.06, 0.0))

    def walked(exponent: float, seed: int) -> float:
        start, direction = cosine_panel((0.3, 0.3, 0.7), (0.2, 0.2), exponent, PHOTONS // 3, seed)
        return float(walk(room, start, direction, (4, 4), seed).sum())

    counted = walked(3.0, 5) / walked(1.0, 6)
    assert 1.15 < counted < 1.3
    options = EstimateOptions(cells=(12, 12), quality=Quality.PREVIEW)
    moved = {one.quantity: ends for one, ends in through_ranges(Reckoner(what, options))}
    low, middle, _ = moved["beam"]
    assert low.mean() / middle.mean() == pytest.approx(counted, abs=0.015)
