"""What comes by way of a wall, against quadrature, sums over walls and separate estimates."""

from __future__ import annotations

import numpy as np
import pytest

from planner.estimate.evaluate import evaluate
from planner.estimate.result import EstimateOptions, Quality
from planner.estimate.sensitivity import Reckoner, light_of_wall
from planner.plan.edits import changed, line_wall
from planner.plan.lamp import Lamp, LampModel, PointBody
from planner.plan.lining import OPENING, Lining, WallCover
from planner.plan.plan import Plan
from planner.plan.space import Canopy, Space

PREVIEW = EstimateOptions(cells=(8, 8), quality=Quality.PREVIEW)
CAREFUL = EstimateOptions(cells=(8, 8), quality=Quality.DEFAULT)
WIDTH, DEPTH, HEIGHT, LAMP_Z = 0.6, 0.5, 0.9, 0.6


def matt(key: str, total: float) -> Lining:
    return Lining(key=key, name=key, reflectance=total, low=0.0, high=1.0)


def key_of(total: float) -> str:
    return f"r{round(100 * total)}"


def room(*totals: float) -> Plan:
    """A box whose walls have these reflectances, all else black; a point lamp off its middle."""
    linings = {key_of(total): matt(key_of(total), total) for total in totals if total}
    model = LampModel(key="p", name="Point", body=PointBody(), ppf=100, watts=50)
    return Plan(
        space=Space(footprint=((0, 0), (WIDTH, 0), (WIDTH, DEPTH), (0, DEPTH)), height=HEIGHT),
        walls=tuple(WallCover.plain(key_of(total) if total else "open") for total in totals),
        linings=tuple(linings.values()),
        canopy=Canopy(height=0.0, reflectance=0.0),
        lamps=(Lamp(model=model, x=0.2, y=0.25, hanging_height=LAMP_Z),),
    )


def by_quadrature(total: float) -> np.ndarray:
    """Light on 8 x 8 cells by one bounce on the wall y = 0, point by point."""
    n = 120
    x = (np.arange(n) + 0.5) / n * WIDTH
    z = (np.arange(n) + 0.5) / n * HEIGHT
    wall_x, wall_z = np.meshgrid(x, z)
    # Lamp at (0.2, 0.25, 0.6), I = 100/π cos θ from straight down; nothing goes upwards.
    dx, dy, dz = wall_x - 0.2, -0.25, wall_z - LAMP_Z
    d2 = dx**2 + dy**2 + dz**2
    down = np.maximum(-dz, 0.0) / np.sqrt(d2)
    on_wall = 100 / np.pi * down * (-dy / np.sqrt(d2)) / d2
    patch = (WIDTH / n) * (HEIGHT / n)
    found = np.zeros((8, 8))
    for row in range(8):
        for column in range(8):
            # The mean over the cell, from 4 x 4 points of it.
            for i in range(4):
                for j in range(4):
                    cx = (column + (i + 0.5) / 4) / 8 * WIDTH
                    cy = (row + (j + 0.5) / 4) / 8 * DEPTH
                    r2 = (wall_x - cx) ** 2 + cy**2 + wall_z**2
                    geometry = (cy / np.sqrt(r2)) * (wall_z / np.sqrt(r2)) / r2
                    found[row, column] += (total / np.pi * on_wall * geometry * patch).sum() / 16
    return found


def test_alone_in_a_black_room_a_wall_brings_its_one_bounce() -> None:
    found = light_of_wall(Reckoner(room(0.8, 0, 0, 0), CAREFUL), 0)
    expected = by_quadrature(0.8)
    assert found.mean(found.came) == pytest.approx(float(expected.mean()), rel=0.02)
    off = float(np.sqrt(np.mean((found.came - expected) ** 2))) / float(expected.mean())
    assert off < 0.05
    # Light is proportional to a single bounce's reflectance.
    points = found.mean(found.points)
    assert points == pytest.approx(float(expected.mean()) / 8, rel=0.02)


def test_of_dull_walls_the_shares_add_up_to_all_that_is_reflected() -> None:
    reckoner = Reckoner(room(0.02, 0.02, 0.02, 0.02), PREVIEW)
    direct = Reckoner(room(0, 0, 0, 0), PREVIEW).base
    walls = [light_of_wall(reckoner, wall) for wall in range(4)]
    reflected = reckoner.base.figures.mean - direct.figures.mean
    # At 2 % what meets two walls is about a hundredth of what meets one.
    assert sum(w.mean(w.came) for w in walls) == pytest.approx(reflected, rel=0.02)
    assert walls[0].share > 0


def test_of_bright_walls_they_add_up_to_more_because_light_meets_several() -> None:
    reckoner = Reckoner(room(0.9, 0.9, 0.9, 0.9), PREVIEW)
    direct = Reckoner(room(0, 0, 0, 0), PREVIEW).base
    came = [light_of_wall(reckoner, wall) for wall in range(4)]
    reflected = reckoner.base.figures.mean - direct.figures.mean
    assert sum(w.mean(w.came) for w in came) > 1.2 * reflected
    assert all(w.mean(w.came) < reflected for w in came)


def test_it_is_the_difference_to_the_same_wall_in_black() -> None:
    plan = room(0.9, 0.7, 0.8, 0.6)
    found = light_of_wall(Reckoner(plan, PREVIEW), 2, matt("new", 0.5))
    black = evaluate(line_wall(plan, 2, 0, OPENING), CAREFUL).figures.mean
    whole = evaluate(plan, CAREFUL).figures.mean
    assert found.mean(found.came) == pytest.approx(whole - black, rel=0.05)
    other = evaluate(line_wall(plan, 2, 0, matt("new", 0.5)), CAREFUL).figures.mean
    assert found.brought is not None
    assert found.mean(found.brought) == pytest.approx(other - whole, rel=0.08)
    more = evaluate(line_wall(plan, 2, 0, matt("more", 0.9)), CAREFUL).figures.mean
    # From 0.8 to 0.9 the derivative misses what bends: a few per cent.
    assert found.mean(found.points) == pytest.approx(more - whole, rel=0.12)


def test_an_open_wall_brings_nothing_and_could_gain() -> None:
    found = light_of_wall(Reckoner(room(0.9, 0, 0.9, 0.9), PREVIEW), 1)
    assert found.share == 0
    assert found.mean(found.points) > 0


def test_near_all_that_can_be_reflected_only_the_rest_is_offered() -> None:
    nearly = light_of_wall(Reckoner(room(0.98, 0.5, 0.5, 0.5), PREVIEW), 0)
    dull = light_of_wall(Reckoner(room(0.5, 0.98, 0.5, 0.5), PREVIEW), 0)
    assert nearly.mean(nearly.points) < 0.4 * dull.mean(dull.points)


def test_without_lamps_nothing_comes() -> None:
    plan = changed(room(0.9, 0.9, 0.9, 0.9), lamps=())
    found = light_of_wall(Reckoner(plan, PREVIEW), 0)
    assert (found.share, found.mean(found.came)) == (0.0, 0.0)
