"""Plans for the checks, built in a few words."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import Any, cast

import numpy as np

from planner.estimate.evaluate import Cache, evaluate
from planner.estimate.result import Estimate, EstimateOptions, FloatArray, Quality
from planner.plan.lamp import (
    BarsBody,
    CosineProfile,
    Lamp,
    LampModel,
    PanelBody,
    PointBody,
    TableProfile,
)
from planner.plan.lining import Band, Lining, WallCover
from planner.plan.plan import Plan
from planner.plan.space import Canopy, Space

Rho = tuple[float, float]
"""Diffuse and specular reflectance."""

BLACK: Rho = (0.0, 0.0)


def lining(rho: Rho) -> Lining:
    """A lining with these reflectances, its key made of them."""
    total = min(rho[0] + rho[1], 1.0)
    share = rho[1] / total if total else 0.0
    key = f"d{rho[0]:.6f}-s{rho[1]:.6f}".replace(".", "_")
    return Lining(key=key, name=key, reflectance=total, specular_share=share, low=total, high=total)


def box(width: float, depth: float) -> tuple[tuple[float, float], ...]:
    """A rectangle from the origin; walls are y0, x1, y1, x0 in this order."""
    return ((0.0, 0.0), (width, 0.0), (width, depth), (0.0, depth))


def lamp(
    at: tuple[float, float],
    above: float,
    *,
    body: PointBody | PanelBody | BarsBody | None = None,
    exponent: float = 1.0,
    table: tuple[Sequence[float], Sequence[float]] | None = None,
    ppf: float = 100.0,
    turned: float = 0.0,
    output: float = 100.0,
) -> Lamp:
    """A lamp ``above`` metres over the canopy; a point unless a body is given."""
    profile: CosineProfile | TableProfile = CosineProfile(exponent=exponent)
    if table is not None:
        profile = TableProfile(angles_deg=tuple(table[0]), relative=tuple(table[1]))
    model = LampModel(
        key="lamp",
        name="Lamp",
        body=body or PointBody(),
        profile=profile,
        ppf=ppf,
        watts=min(ppf, 10000.0),
    )
    return Lamp(
        model=model,
        x=at[0],
        y=at[1],
        hanging_height=above,
        rotation_deg=turned,
        output_percent=output,
    )


def panel(length: float, width: float) -> PanelBody:
    return PanelBody(length=length, width=width)


def plan(
    footprint: tuple[tuple[float, float], ...],
    height: float,
    lamps: Sequence[Lamp],
    *,
    walls: Rho | Sequence[Rho | Sequence[tuple[float | None, Rho]]] = BLACK,
    ceiling: Rho = BLACK,
    floor: Rho = BLACK,
    canopy: float = 0.0,
    canopy_height: float = 0.0,
    closed: bool = True,
    open_door: int | None = None,
) -> Plan:
    """A plan; ``walls`` is one pair for all, or per wall a pair or bands (top, pair)."""
    count = len(footprint)
    each: list[Any] = [walls] * count if isinstance(walls[0], float | int) else list(walls)
    linings: dict[str, Lining] = {}

    def key(rho: Rho) -> str:
        made = lining(rho)
        linings[made.key] = made
        return made.key

    covers = []
    for cover in each:
        if isinstance(cover[0], float | int):
            covers.append(WallCover.plain(key(cast("Rho", cover))))
        else:
            banded = cast("Sequence[tuple[float | None, Rho]]", cover)
            bands = tuple(Band(lining=key(rho), top=top) for top, rho in banded)
            covers.append(WallCover(bands=bands))
    ceiling_key, floor_key = key(ceiling), key(floor)
    return Plan(
        space=Space(
            footprint=footprint, height=height, door=open_door, door_open=open_door is not None
        ),
        lamps=tuple(lamps),
        linings=tuple(linings.values()),
        walls=tuple(covers),
        ceiling=ceiling_key,
        floor=floor_key,
        canopy=Canopy(height=canopy_height, closed=closed, reflectance=canopy),
    )


def light(
    what: Plan,
    cells: tuple[int, int] = (12, 12),
    quality: Quality = Quality.DEFAULT,
    seed: int = 1,
    cache: Cache | None = None,
) -> Estimate:
    """Evaluate a plan."""
    return evaluate(what, EstimateOptions(cells=cells, quality=quality, seed=seed), cache=cache)


def rms_and_mean(found: FloatArray, expected: FloatArray) -> tuple[float, float]:
    """Root mean square and mean of the differences as shares of the expected mean."""
    inside = np.isfinite(expected)
    difference = (found - expected)[inside]
    mean = float(expected[inside].mean())
    return float(np.sqrt((difference**2).mean())) / mean, float(difference.mean()) / mean


def corner_factor(a: float, b: float, c: float) -> float:
    """From an element to a parallel rectangle a x b, the element under its corner at c.

    Siegel and Howell, Thermal Radiation Heat Transfer, configuration factors of an element
    and a rectangle. Odd in a and in b, so that four of them place the element anywhere.
    """
    x, y = a / c, b / c
    p, q = math.sqrt(1 + x * x), math.sqrt(1 + y * y)
    return (x / p * math.atan(y / p) + y / q * math.atan(x / q)) / (2 * math.pi)


def under_rectangle(
    point: tuple[float, float], centre: tuple[float, float], size: tuple[float, float], c: float
) -> float:
    """Configuration factor of an element anywhere under a parallel rectangle, at depth c."""
    x = (centre[0] - size[0] / 2 - point[0], centre[0] + size[0] / 2 - point[0])
    y = (centre[1] - size[1] / 2 - point[1], centre[1] + size[1] / 2 - point[1])
    return (
        corner_factor(x[1], y[1], c)
        - corner_factor(x[0], y[1], c)
        - corner_factor(x[1], y[0], c)
        + corner_factor(x[0], y[0], c)
    )
