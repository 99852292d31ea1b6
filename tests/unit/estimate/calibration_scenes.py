"""Synthetic surveys of the reference scenes, made without the core.

Lined readings are the cells of maps by independent Monte Carlo codes
(tests/data/reference_maps). Open-air readings are sums over many points of the lamp, done
here: E = I cosα / d². Both get the meter's gain, its noise and its directional error.
"""

from __future__ import annotations

import json
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import numpy as np
import numpy.typing as npt

from planner.plan.lining import OPENING
from planner.plan.plan import Plan
from planner.plan.survey import Meter, Reading, Survey
from tests.physics.test_reference_maps import plan_of

FloatArray = npt.NDArray[np.float64]
FOLDER = Path(__file__).parents[2] / "data" / "reference_maps"
METER = Meter(name="invented meter", gain_uncertainty=0.05, noise=0.02)


@dataclass(frozen=True)
class Case:
    """A reference scene: its true plan, where its cells are, and what a perfect meter reads."""

    plan: Plan
    cells: tuple[int, int]
    points: tuple[tuple[float, float], ...]
    lined: FloatArray
    open_air: FloatArray


def case(name: str) -> Case:
    record = json.loads((FOLDER / f"{name}.json").read_text("utf-8"))
    scene = record["scene"]
    columns, rows = record["cells"]
    width, depth = scene["box"]["W"], scene["box"]["D"]
    x = (np.arange(columns) + 0.5) * width / columns
    y = (np.arange(rows) + 0.5) * depth / rows
    u, v = np.meshgrid(x, y)
    points = np.column_stack([u.ravel(), v.ravel()])
    return Case(
        plan_of(scene),
        (columns, rows),
        tuple((float(a), float(b)) for a, b in points),
        in_the_middle(np.array(record["map"])).ravel(),
        direct(scene, points),
    )


def in_the_middle(means: FloatArray) -> FloatArray:
    """Values in the middle of cells from the means over them: less 1/24 of the bend.

    A parabola through three neighbours has its mean over the middle one 1/24 of the second
    difference above its value there. At the border the bend is left out.
    """
    middle = means.copy()
    for row in range(means.shape[0]):
        for column in range(1, means.shape[1] - 1):
            left, here, right = means[row, column - 1 : column + 2]
            middle[row, column] -= (left - 2 * here + right) / 24
    for column in range(means.shape[1]):
        for row in range(1, means.shape[0] - 1):
            below, here, above = means[row - 1 : row + 2, column]
            middle[row, column] -= (below - 2 * here + above) / 24
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
    return Survey(
        key="open-air",
        name="Open air",
        meter=meter,
        lining=OPENING,
        board_reflectance=0.0,
        points=what.points,
        readings=readings,
    )


def lined(what: Case, readings: tuple[Reading, ...], meter: Meter = METER) -> Survey:
    return Survey(key="lined", name="Lined", meter=meter, points=what.points, readings=readings)


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
