"""Tilted lamps: the judge against closed forms, the Embree walk and the program."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest

from planner.estimate.result import Quality
from tests.reference.spaces import BLACK, Luminaire, Material, Planes, Scene, box, plan_of

pytest.importorskip("numba", reason="the 'reference' extra is not installed")
from tests.reference.judge import judge
from tests.reference.random_plans import random_room
from tests.reference.random_rooms import look

pytestmark = pytest.mark.reference

LOPSIDED = Planes(
    (0.0, 90.0, 180.0, 270.0),
    (0.0, 30.0, 60.0, 90.0),
    ((1.0, 0.9, 0.4, 0.1), (1.0, 0.6, 0.2, 0.0), (1.0, 0.5, 0.5, 0.2), (1.0, 0.9, 0.3, 0.1)),
)
LAMP = Luminaire(
    (0.27, 0.32, 0.72),
    0.3,
    0.03,
    bars=4,
    spread=0.24,
    turned_deg=25.0,
    tilted_deg=22.0,
    housing=0.06,
)
MATT, MIRROR = Material(0.85), Material(0.1, 0.8)


def cabinet(lamp: Luminaire, *, wall: Material = MATT) -> Scene:
    return Scene("tilted", box(0.6, 0.6), 1.0, (wall, MATT, wall, MATT), MATT, (lamp,), 0.2, 0.06)


def test_the_judge_lands_by_the_closed_form() -> None:
    """E = I cosα / d² about the axis; CIE S 017, term 17-25-104."""
    lamp = Luminaire((0.33, 0.29, 0.6), 0.0, 0.0, turned_deg=30.0, tilted_deg=35.0)
    scene = Scene("black", box(1.0, 0.8), 1.0, (BLACK,) * 4, BLACK, (lamp,), 0.0, 0.0)
    found = judge(plan_of(scene), (10, 8), 4_000_000)
    x, y = np.meshgrid((np.arange(100) + 0.5) / 100 - 0.33, (np.arange(80) + 0.5) / 100 - 0.29)
    # The axis leans towards the lamp's y, which its rotation turns.
    turn, tilt = math.radians(30.0), math.radians(35.0)
    axis = (-math.sin(turn) * math.sin(tilt), math.cos(turn) * math.sin(tilt), -math.cos(tilt))
    square = x**2 + y**2 + 0.36
    cosine = np.maximum((axis[0] * x + axis[1] * y - axis[2] * 0.6) / np.sqrt(square), 0.0)
    density = 100 / math.pi * cosine * 0.6 / square**1.5
    expected = density.reshape(8, 10, 10, 10).mean(axis=(1, 3))
    assert (((found.ppfd - expected) / found.error) ** 2).mean() < 1.6


@pytest.mark.timeout(300)
@pytest.mark.parametrize("lamp", [LAMP, replace(LAMP, planes=LOPSIDED, tilted_deg=-40.0)])
@pytest.mark.parametrize("wall", [MATT, MIRROR])
def test_judge_walk_and_program_agree(lamp: Luminaire, wall: Material) -> None:
    pytest.importorskip("embreex", reason="the 'reference' extra is not installed")
    from tests.reference.embree_walk import walk

    scene = cabinet(lamp, wall=wall)
    walked, judged = walk(scene, 2_000_000), judge(plan_of(scene), scene.cells, 4_000_000)
    slack = math.hypot(walked.mean_error, judged.mean_error)
    assert abs(walked.mean - judged.mean) < 4 * slack
    spread = ((walked.density - judged.ppfd) ** 2 / (walked.error**2 + judged.error**2)).mean()
    assert spread < 1.8
    from tests.physics.rooms import light

    found = light(plan_of(scene), scene.cells)
    assert abs(found.figures.mean / judged.mean - 1) < 0.003 + 4 * judged.mean_error / judged.mean
    off = (found.ppfd / judged.ppfd - 1) ** 2 - (judged.error / judged.ppfd) ** 2
    assert math.sqrt(max(float(off.mean()), 0.0)) < 0.007


@pytest.mark.timeout(600)
@pytest.mark.parametrize("number", [16, 17, 21, 50])
@pytest.mark.parametrize("divided", [False, True])
def test_random_rooms_with_tilted_lamps(number: int, divided: bool) -> None:
    room = random_room(number, 41, tilted=True, divided=divided)
    assert any(lamp.tilt_deg for lamp in room.plan.lamps)
    seen = look(room, Quality.DEFAULT, (16, 16), 1)
    assert seen.lost == 0
    assert abs(seen.bias) < 0.6 + 3 * seen.bias_error
    assert seen.own < 1.0
