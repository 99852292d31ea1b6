"""Canopies that obstacles carry, against photons walked by the judge."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest

from planner.estimate.calibrate_model import expected_readings
from planner.estimate.evaluate import evaluate
from planner.estimate.result import CanopyLight
from planner.plan.lamp import Lamp
from planner.plan.plan import Plan
from planner.plan.space import CarriedCanopy, Obstacle
from planner.plan.survey import Survey
from tests.physics.rooms import Rho, box, lamp, lining, panel, plan
from tests.physics.test_tops import (
    IN_LAMP,
    LAMP_COLOURS,
    TINTS,
    WALL_COLOURS,
    a_tray_in_a_cabinet,
    coloured,
    on,
    tray,
)

pytest.importorskip("numba", reason="the 'reference' extra is not installed")
from tests.reference.judge import judge
from tests.reference.random_plans import random_room
from tests.reference.spaces import Block, Luminaire, Material, Scene, plan_of

pytestmark = pytest.mark.reference

WHITE: Rho = (0.85, 0.0)
PHOTONS = 4_000_000


def held(what: Plan, top: CanopyLight, photons: int = PHOTONS) -> tuple[float, float, float]:
    """Difference of the means, its standard error, and rms of cells with chance taken off; shares
    of the judge's mean."""
    rows, columns = top.ppfd.shape
    found = judge(what, (columns, rows), photons, top=top.place.index)
    cells = top.inside & (found.area > 0)
    off = (top.ppfd - found.ppfd)[cells] / found.mean
    rms = float(np.average(off**2, weights=top.cell_area[cells])) - found.chance**2
    bias = top.figures.mean / found.mean - 1
    return bias, found.mean_error / found.mean, math.sqrt(max(rms, 0.0))


def cabinet(*lamps: Lamp, walls: Rho = WHITE, height: float = 1.2) -> Plan:
    return plan(
        box(0.6, 0.6),
        height,
        list(lamps) or [lamp((0.3, 0.3), 0.4, body=panel(0.3, 0.3))],
        walls=walls,
        ceiling=WHITE,
        canopy=0.06,
        canopy_height=0.25,
    )


@pytest.mark.parametrize("walls", [WHITE, (0.15, 0.75)])
@pytest.mark.parametrize(
    "one",
    [
        tray((0.3, 0.3), (0.5, 0.5), (0.25, 0.3)),
        tray((0.15, 0.3), (0.3, 0.6), (0.25, 0.3)),
        tray((0.3, 0.3), (0.3, 0.15), (0.25, 0.35), turned=30),
    ],
    ids=["with a slit", "from wall to wall", "turned"],
)
def test_a_tray_in_a_cabinet(walls: Rho, one: Obstacle) -> None:
    what = on(cabinet(walls=walls), one)
    (top,) = evaluate(what).tops
    bias, chance, rms = held(what, top)
    assert abs(bias) < 0.006 + 3 * chance
    assert rms < 0.012


def rack() -> Plan:
    """Three tiers: the floor's canopy and two shelves, each with a lamp above it."""
    lamps = [lamp((0.3, 0.3), above, body=panel(0.4, 0.1)) for above in (0.35, 0.75, 1.15)]
    what = cabinet(*lamps, height=1.6)
    white = lining(WHITE).key
    shelves = (
        tray((0.3, 0.3), (0.5, 0.4), (0.63, 0.65), of=white),
        tray((0.3, 0.3), (0.5, 0.4), (1.03, 1.05), of=white),
    )
    return on(what, *shelves)


def test_a_rack_of_three_tiers() -> None:
    what = rack()
    found = evaluate(what)
    below = judge(what, (24, 24), PHOTONS)
    assert found.figures.mean == pytest.approx(below.mean, rel=0.006)
    for top in found.tops:
        bias, chance, rms = held(what, top)
        assert abs(bias) < 0.006 + 3 * chance, top.place
        assert rms < 0.015, top.place


def carrying(number: int) -> Plan:
    """A random room with a canopy on each of its obstacles."""
    what = random_room(number, 11, low=True).plan
    draw = np.random.default_rng(number)
    grown = [
        o.model_copy(update={"canopy": CarriedCanopy(reflectance=round(draw.uniform(0, 0.3), 3))})
        for o in what.obstacles
    ]
    return what.model_copy(update={"obstacles": tuple(grown)})


@pytest.mark.parametrize("number", [0, 1, 3, 4, 6])
def test_random_rooms(number: int) -> None:
    """As near as the maps of such rooms are, each with what chance leaves of the judge's count."""
    what = carrying(number)
    tops = [top for top in evaluate(what).tops if top.numeric_error is not None]
    assert tops
    for top in tops:
        bias, chance, rms = held(what, top)
        assert abs(bias) < 0.012 + 3 * chance, top.place
        assert rms < 0.03, top.place


def test_each_waveband_of_a_tray() -> None:
    """The judge walks the photons of one waveband after the other, in rooms without colours."""
    found = evaluate(coloured(a_tray_in_a_cabinet(), LAMP_COLOURS, WALL_COLOURS))
    (top,) = found.tops
    assert top.bands is not None
    rows, columns = top.ppfd.shape
    area = top.cell_area[top.inside]
    for band, tint in TINTS.items():
        alone = judge(a_tray_in_a_cabinet(IN_LAMP[band], tint), (columns, rows), PHOTONS, top=0)
        mean = float(np.average(top.bands[band][top.inside], weights=area))
        assert mean == pytest.approx(alone.mean, rel=0.005 + 3 * alone.mean_error / alone.mean), (
            band
        )


@pytest.mark.parametrize("board", [None, 0.75])
def test_readings_on_a_tray_with_a_board_and_without(board: float | None) -> None:
    """Photons walked through triangles that Embree traces, the lid of the box being the board.

    Cells are 3 x 5 cm; the box is eight of them wide and eight deep.
    """
    pytest.importorskip("embreex", reason="the 'reference' extra is not installed")
    from tests.reference.embree_walk import walk

    white = Material(WHITE[0])
    block = Block((0.15, 0.25, 0.15), (0.24, 0.4, 0.1), white, leaves=0.1)
    scene = Scene(
        "tray", box(0.6, 0.5), 1.0, (white,) * 4, white, (Luminaire((0.32, 0.25, 0.75), 0.2, 0.2),),
        canopy_height=0.15, blocks=(block,), cells=(20, 10), map_height=0.25,
    )  # fmt: skip
    lid = block if board is None else replace(block, leaves=board)
    walked = walk(replace(scene, blocks=(lid,)), PHOTONS)
    cells = [(i, j) for j in range(1, 9) for i in range(1, 9)]
    read = Survey(
        key="tray", name="Tray", board_reflectance=board, on_top=0.25,
        points=tuple((0.03 * (i + 0.5), 0.05 * (j + 0.5)) for i, j in cells),
    )  # fmt: skip
    there = tuple(np.array(cells).T[::-1])
    off = expected_readings(plan_of(scene), read) / walked.density[there] - 1
    chance = walked.error[there] / walked.density[there]
    assert walked.lost <= 1e-5 * walked.photons
    assert abs(off.mean()) < 0.004
    assert math.sqrt((off**2).mean()) < math.sqrt((chance**2).mean() + 0.006**2)
