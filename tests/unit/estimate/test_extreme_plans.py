"""Plans at the edge of what is allowed: the balance holds, or a sentence says why not."""

from __future__ import annotations

import math

import numpy as np
import pytest

from planner.estimate.evaluate import evaluate
from planner.estimate.result import EstimateOptions, Quality
from planner.light.exchange import NothingAbsorbsError
from planner.plan.lamp import Lamp, LampModel, PanelBody, PointBody, TableProfile
from planner.plan.lining import Lining, WallCover
from planner.plan.plan import Plan
from planner.plan.space import Canopy, Obstacle, Space
from planner.plan.target import DliTarget

PREVIEW = EstimateOptions(cells=(12, 12), quality=Quality.PREVIEW)
SQUARE = ((0.0, 0.0), (1.0, 0.0), (1.0, 1.0), (0.0, 1.0))
PANEL = LampModel(
    key="panel", name="Panel", body=PanelBody(length=0.3, width=0.2), ppf=200.0, watts=100.0
)
POINT = LampModel(key="point", name="Point", body=PointBody(), ppf=200.0, watts=100.0)


def lined(key: str, reflectance: float, mirrored: float = 0.0) -> Lining:
    return Lining(
        key=key, name=key, reflectance=reflectance, specular_share=mirrored, low=0, high=1
    )


def plan_of(
    corners: tuple[tuple[float, float], ...] = SQUARE,
    height: float = 2.0,
    walls: Lining | None = None,
    floor: Lining | None = None,
    canopy: Canopy | None = None,
    lamp: Lamp | None = None,
    hours: float = 16.0,
) -> Plan:
    walls = walls or lined("wall", 0.9)
    floor = floor or walls
    return Plan(
        space=Space(footprint=corners, height=height),
        walls=(WallCover.plain(walls.key),) * len(corners),
        ceiling=walls.key,
        floor=floor.key,
        linings=tuple({lining.key: lining for lining in (walls, floor)}.values()),
        canopy=canopy or Canopy(),
        lamps=(lamp or Lamp(model=PANEL, x=0.5, y=0.5, hanging_height=0.5),),
        photoperiod_hours=hours,
        target=DliTarget(low=5, high=10),
    )


def star(points: int) -> tuple[tuple[float, float], ...]:
    return tuple(
        (
            (1.0 if k % 2 == 0 else 0.3) * math.cos(math.pi * k / points),
            (1.0 if k % 2 == 0 else 0.3) * math.sin(math.pi * k / points),
        )
        for k in range(2 * points)
    )


def hung(x: float, y: float, height: float = 0.5, model: LampModel = POINT) -> Lamp:
    return Lamp(model=model, x=x, y=y, hanging_height=height)


def crowded() -> Plan:
    """As many lamps and obstacles as a plan may hold, lamps at the walls and low over leaves."""
    wall = lined("wall", 0.9)
    places = [(k % 6 / 5, k // 6 / 3) for k in range(24)]
    return plan_of(walls=wall).model_copy(
        update={
            "lamps": tuple(hung(x, y, 0.02 + 0.05 * k) for k, (x, y) in enumerate(places)),
            "obstacles": tuple(
                Obstacle(
                    x=0.1 + 0.8 * x, y=0.1 + 0.8 * y, width=0.05, length=0.04,
                    underside=0.03 * k, thickness=0.02, lining=wall.key,
                )
                for k, (x, y) in enumerate(places)
            ),
        }
    )  # fmt: skip


EXTREMES = {
    "a cube of 10 cm": plan_of(
        ((0, 0), (0.1, 0), (0.1, 0.1), (0, 0.1)), 0.1, canopy=Canopy(height=0.02),
        lamp=hung(0.05, 0.05, 0.05),
    ),
    "a star of 40 corners": plan_of(star(20), lamp=hung(0.0, 0.0)),
    "a gap of 11 mm": plan_of(((0, 0), (2, 0), (2, 0.011), (0, 0.011)), lamp=hung(1.0, 0.005)),
    "a needle": plan_of(((0, 0), (5, 0), (5, 0.02)), lamp=hung(4.5, 0.005)),
    "corners in a line": plan_of(((0, 0), (0.3, 0), (0.6, 0), (1, 0), (1, 1), (0, 1), (0, 0.5))),
    "a lamp in a corner": plan_of(lamp=hung(0.0, 0.0, model=PANEL)),
    "a lamp 1 cm above the canopy": plan_of(lamp=hung(0.5, 0.5, 0.01, PANEL)),
    "a lamp at the ceiling": plan_of(lamp=hung(0.5, 0.5, 1.8, PANEL)),
    "a canopy just under the ceiling": plan_of(
        canopy=Canopy(height=1.99), lamp=hung(0.5, 0.5, 0.01, PANEL)
    ),
    "a canopy on the floor": plan_of(canopy=Canopy(height=0.0)),
    "an open canopy on a mirror": plan_of(
        canopy=Canopy(height=0.0, closed=False), floor=lined("mirror", 0.9, 0.9)
    ),
    "perfect mirrors over black leaves": plan_of(
        walls=lined("wall", 1.0, 1.0), canopy=Canopy(reflectance=0.0)
    ),
    "white walls that keep nothing": plan_of(
        walls=lined("wall", 1.0), canopy=Canopy(reflectance=0.06)
    ),
    "24 lamps among 24 obstacles": crowded(),
    "a lamp dimmed to nothing": plan_of(
        lamp=Lamp(model=PANEL, x=0.5, y=0.5, hanging_height=0.5, output_percent=0)
    ),
    "no hours": plan_of(hours=0.0),
    "hardly any hours": plan_of(hours=1e-300),
}  # fmt: skip


@pytest.mark.parametrize("name", EXTREMES)
def test_the_light_is_finite_and_balances(name: str) -> None:
    estimate = evaluate(EXTREMES[name], PREVIEW)
    inside = estimate.ppfd[np.isfinite(estimate.ppfd)]
    assert inside.size > 0
    assert inside.min() >= 0
    assert abs(estimate.closure) < 1e-3
    assert all(np.isfinite(v) for v in vars(estimate.figures).values() if v is not None)


def test_nothing_is_lost_between_perfect_mirrors_and_black_leaves() -> None:
    """All 200 µmol/s must end on the one square metre that absorbs."""
    estimate = evaluate(EXTREMES["perfect mirrors over black leaves"], PREVIEW)
    assert estimate.figures.mean == pytest.approx(200.0, rel=1e-3)


@pytest.mark.parametrize("mirrored", [0.0, 0.5, 1.0])
def test_a_space_that_absorbs_nothing_is_refused_in_words(mirrored: float) -> None:
    plan = plan_of(walls=lined("wall", 1.0, mirrored), canopy=Canopy(reflectance=1.0))
    with pytest.raises(NothingAbsorbsError, match="nothing absorbs it"):
        evaluate(plan, PREVIEW)


def test_a_beam_too_narrow_for_numbers_is_refused_in_words() -> None:
    beam = TableProfile(angles_deg=(0, 1e-9, 1e-8, 180), relative=(0, 1e9, 0, 0))
    model = LampModel(key="beam", name="Beam", body=PointBody(), profile=beam, ppf=10.0, watts=10.0)
    with pytest.raises(ValueError, match="too narrow to compute with"):
        evaluate(plan_of(lamp=hung(0.5, 0.5, model=model)), PREVIEW)
