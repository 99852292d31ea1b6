"""Plans full of things that stand in the light: invented, for time and for cancelling."""

from __future__ import annotations

import math

from planner.plan.lamp import BarsBody, CosineProfile, Lamp, LampModel, PanelBody, TableProfile
from planner.plan.lining import Lining, WallCover
from planner.plan.plan import Plan
from planner.plan.space import Canopy, Obstacle, Space


def _lining(key: str, reflectance: float, mirrored: float = 0.0) -> Lining:
    return Lining(
        key=key, name=key, reflectance=reflectance, specular_share=mirrored, low=0, high=1
    )


def bars(count: int, length: float, width: float, housing: float = 0.04) -> LampModel:
    """A lamp of bars, each with a housing over it."""
    return LampModel(
        key="bars",
        name="Bars",
        body=BarsBody(count=count, length=length, bar_width=0.4 * width / count, width=width),
        ppf=300.0,
        watts=120.0,
        housing_height=housing,
        housing_reflectance=0.5,
    )


def crowded(
    lamps: tuple[Lamp, ...],
    obstacles: int = 0,
    *,
    size: tuple[float, float] = (1.2, 1.2),
    height: float = 2.0,
    walls: Lining | None = None,
    closed: bool = True,
    floor: Lining | None = None,
    corners: tuple[tuple[float, float], ...] | None = None,
) -> Plan:
    """Lamps over a canopy of 0.3 m with so many small pots standing on it."""
    walls = walls or _lining("film", 0.9, 0.5)
    floor = floor or _lining("floor", 0.3)
    pot = _lining("pot", 0.2)
    width, depth = size
    across = max(1, math.ceil(math.sqrt(obstacles)))
    pots = tuple(
        Obstacle(
            name=f"Pot {k + 1}",
            x=(k % across + 0.5) * width / across,
            y=(k // across + 0.5) * depth / across,
            length=0.3 * width / across,
            width=0.3 * depth / across,
            underside=0.1,
            thickness=0.35,
            rotation_deg=7.0 * k,
            lining="pot",
        )
        for k in range(obstacles)
    )
    corners = corners or ((0.0, 0.0), (width, 0.0), (width, depth), (0.0, depth))
    return Plan(
        space=Space(footprint=corners, height=height),
        walls=(WallCover.plain(walls.key),) * len(corners),
        ceiling=walls.key,
        floor=floor.key,
        linings=tuple({one.key: one for one in (walls, floor, pot)}.values()),
        canopy=Canopy(height=0.3, closed=closed),
        lamps=lamps,
        obstacles=pots,
    )


def hung(model: LampModel, x: float, y: float, above: float = 0.6, turned: float = 0.0) -> Lamp:
    return Lamp(model=model, x=x, y=y, hanging_height=above, rotation_deg=turned)


def star(points: int, inner: float = 0.45) -> tuple[tuple[float, float], ...]:
    """A star of ``points`` corners, every other one drawn in to ``inner`` metres."""
    return tuple(
        (
            0.8 + (0.8 if k % 2 == 0 else inner) * math.cos(2 * math.pi * k / points),
            0.8 + (0.8 if k % 2 == 0 else inner) * math.sin(2 * math.pi * k / points),
        )
        for k in range(points)
    )


def many(lamps: int, count: int, *, staggered: bool = False) -> tuple[Lamp, ...]:
    """So many lamps of so many bars in rows over 4 m x 4 m."""
    across = math.ceil(math.sqrt(lamps))
    pitch = 4.0 / across
    model = bars(count, 0.8 * pitch, 0.8 * pitch)
    return tuple(
        hung(
            model,
            (k % across + 0.5) * pitch,
            (k // across + 0.5) * pitch,
            0.6 + (0.05 * (k % 7) if staggered else 0.0),
            11.0 * k if staggered else 0.0,
        )
        for k in range(lamps)
    )


def single(count: int) -> tuple[Lamp, ...]:
    return (hung(bars(count, 0.9, 0.9), 0.6, 0.6),)


MIRROR = _lining("mirror", 0.99, 1.0)
FOIL = _lining("foil", 0.97, 0.98)
UP = LampModel(
    key="up",
    name="Up and down",
    body=PanelBody(length=0.4, width=0.3),
    profile=TableProfile(angles_deg=(0, 180), relative=(1, 1)),
    ppf=200.0,
    watts=90.0,
    housing_height=0.03,
)
PLAIN = LampModel(
    key="plain",
    name="Panel",
    body=PanelBody(length=0.4, width=0.3),
    profile=CosineProfile(),
    ppf=200.0,
    watts=90.0,
)

PLANS = {
    "a bare panel": crowded((hung(PLAIN, 0.6, 0.6),)),
    "12 bars with housings": crowded(single(12)),
    "24 bars with housings": crowded(single(24)),
    "4 lamps of 6 bars with housings": crowded(many(4, 6), size=(4.0, 4.0)),
    "light upwards past a housing": crowded((hung(UP, 0.6, 0.6), hung(UP, 0.3, 0.4, 0.9)), 2),
    "24 pots": crowded((hung(PLAIN, 0.6, 0.6),), 24),
    "40-corner star, 24 bars": crowded(
        (hung(bars(24, 0.5, 0.5, 0.0), 0.8, 0.8),), corners=star(40)
    ),
    "40-corner star with thin rays": crowded(
        (hung(bars(24, 0.5, 0.5, 0.0), 0.8, 0.8),), corners=star(40, 0.2)
    ),
    "mirrors of 0.97": crowded((hung(PLAIN, 0.6, 0.6),), walls=FOIL),
    "mirrors of 0.99 over an open mirror floor": crowded(
        (hung(PLAIN, 0.6, 0.6),), walls=MIRROR, floor=MIRROR, closed=False
    ),
    "24 lamps of 24 bars, 24 pots": crowded(many(24, 24), 24, size=(4.0, 4.0)),
    "24 lamps of 24 bars at seven heights, 24 pots, open": crowded(
        many(24, 24, staggered=True), 24, size=(4.0, 4.0), closed=False
    ),
}
