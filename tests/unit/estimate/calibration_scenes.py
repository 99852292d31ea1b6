"""Synthetic surveys of the reference scenes, made without the core.

Lined readings are the cells of maps by independent Monte Carlo codes
(tests/data/reference_maps). Open-air readings are sums over many points of the lamp, done
here: E = I cosα / d². Both get the meter's gain, its noise and its directional error.
"""

from __future__ import annotations

import json
from collections.abc import Callable
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

import numpy as np
import numpy.typing as npt

from planner.plan.lining import OPENING
from planner.plan.plan import Plan
from planner.plan.space import CarriedCanopy
from planner.plan.survey import Meter, Reading, Survey
from tests.physics.rooms import lining
from tests.physics.test_reference_maps import plan_of
from tests.physics.test_tops import on, tray

FloatArray = npt.NDArray[np.float64]
FOLDER = Path(__file__).parents[2] / "data" / "reference_maps"
METER = Meter(name="invented meter", gain_uncertainty=0.05, noise=0.02)


@dataclass(frozen=True)
class Case:
    """A reference scene: its true plan, where its cells are, and what a perfect meter reads.

    ``on_top`` is the height of the tray that the cells lie on; ``air`` is where the lamp was read
    in open air, if not at the same cells.
    """

    plan: Plan
    cells: tuple[int, int]
    points: tuple[tuple[float, float], ...]
    lined: FloatArray
    open_air: FloatArray
    on_top: float | None = None
    air: Case | None = None


TRAY, BESIDE, BOTH = "tops/tray", "tops/beside_tray", "tops/both"
"""Of a cabinet with a tray: read on the tray, beside it, or in open air on it and lined beside."""


def case(name: str) -> Case:
    if name == BOTH:
        return replace(case(BESIDE), air=case(TRAY))
    record = json.loads((FOLDER / f"{name}.json").read_text("utf-8"))
    scene = record["scene"]
    columns, rows = record["cells"]
    (x0, y0), (x1, y1) = (0.0, 0.0), (scene["box"]["W"], scene["box"]["D"])
    plan, top, level = plan_of(scene), scene.get("tray"), scene["canopy"]["z"]
    if top is not None:
        grown, sides = CarriedCanopy(reflectance=top["rho"]), lining((top["rho_sides"], 0.0)).key
        centre, size = (top["cx"], top["cy"]), (top["lx"], top["ly"])
        plan = on(plan, tray(centre, size, (top["z0"], top["z1"]), canopy=grown, of=sides))
    if record.get("on_tray"):
        level = top["z1"]
        x0, x1 = (top["cx"] + side * top["lx"] / 2 for side in (-1, 1))
        y0, y1 = (top["cy"] + side * top["ly"] / 2 for side in (-1, 1))
    x = x0 + (np.arange(columns) + 0.5) * (x1 - x0) / columns
    y = y0 + (np.arange(rows) + 0.5) * (y1 - y0) / rows
    u, v = np.meshgrid(x, y)
    total = in_the_middle(np.array(record["map"], dtype=np.float64)).ravel()
    given = np.isfinite(total)
    points = np.column_stack([u.ravel(), v.ravel()])[given]
    return Case(
        plan,
        (columns, rows),
        tuple((float(a), float(b)) for a, b in points),
        total[given],
        direct({**scene, "canopy": {"z": level}}, points),
        level if record.get("on_tray") else None,
    )


def in_the_middle(means: FloatArray) -> FloatArray:
    """Values in the middle of cells from the means over them: less 1/24 of the bend.

    A parabola through three neighbours has its mean over the middle one 1/24 of the second
    difference above its value there. At the border, or beside no value, the bend is left out.
    """
    middle = means.copy()
    for row in range(means.shape[0]):
        for column in range(1, means.shape[1] - 1):
            left, here, right = means[row, column - 1 : column + 2]
            middle[row, column] -= np.nan_to_num(left - 2 * here + right) / 24
    for column in range(means.shape[1]):
        for row in range(1, means.shape[0] - 1):
            below, here, above = means[row - 1 : row + 2, column]
            middle[row, column] -= np.nan_to_num(below - 2 * here + above) / 24
    return middle


def direct(
    scene: dict[str, Any],
    points: FloatArray,
    response: Callable[[FloatArray], FloatArray] = np.ones_like,
    count: int = 40,
) -> FloatArray:
    """Light straight from the lamps of a scene, each cut into count x count small ones."""
    total = np.zeros(len(points))
    middle = (np.arange(count) + 0.5) / count - 0.5
    for lamp in scene["lamps"]:
        m = lamp.get("m", 1)
        a, b = np.meshgrid(lamp["cx"] + middle * lamp["lx"], lamp["cy"] + middle * lamp["ly"])
        height = lamp["z"] - scene["canopy"]["z"]
        dx = a.ravel() - points[:, :1]
        dy = b.ravel() - points[:, 1:]
        square = dx**2 + dy**2 + height**2
        cosine = height / np.sqrt(square)
        part = (m + 1) / (2 * np.pi) * cosine ** (m + 1) / square * response(cosine)
        total += lamp["ppf"] * part.mean(axis=1)
    return total


def read(
    truth: FloatArray,
    rng: np.random.Generator,
    gain: float,
    noise: float,
) -> tuple[Reading, ...]:
    """What a meter reads at all holes: truth times gain, each with noise of its own."""
    values = truth * gain * (1 + noise * rng.standard_normal(len(truth)))
    return tuple(Reading(hole=k, value=float(v)) for k, v in enumerate(values, start=1))


def open_air(what: Case, readings: tuple[Reading, ...], meter: Meter = METER) -> Survey:
    where = what.air or what
    return Survey(
        key="open-air",
        name="Open air",
        meter=meter,
        lining=OPENING,
        board_reflectance=0.0,
        points=where.points,
        on_top=where.on_top,
        readings=readings,
    )


def lined(what: Case, readings: tuple[Reading, ...], meter: Meter = METER) -> Survey:
    return Survey(
        key="lined",
        name="Lined",
        meter=meter,
        points=what.points,
        on_top=what.on_top,
        readings=readings,
    )


def mistaken(plan: Plan, key: str | None, reflectance: float) -> Plan:
    """A plan that knows neither the lamp's flux and profile nor the lining."""
    lamps = tuple(
        lamp.model_copy(
            update={
                "model": lamp.model.model_copy(
                    update={
                        "key": f"lamp-{k}",
                        "ppf": lamp.model.ppf * 0.8,
                        "profile": lamp.model.profile.model_copy(update={"exponent": 1.8}),
                    }
                )
            }
        )
        for k, lamp in enumerate(plan.lamps)
    )
    linings = tuple(
        lining.model_copy(update={"reflectance": reflectance, "low": 0.0, "high": 1.0})
        if lining.key == key
        else lining
        for lining in plan.linings
    )
    fields = {name: getattr(plan, name) for name in Plan.model_fields}
    return Plan.model_validate({**fields, "lamps": lamps, "linings": linings})
