"""Maps made by two independent Monte Carlo codes (tests/data/reference_maps/README.md)."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from planner.estimate.result import Quality
from planner.plan.plan import Plan
from tests.physics.rooms import Rho, box, lamp, light, panel, plan, rms_and_mean

FOLDER = Path(__file__).parents[1] / "data" / "reference_maps"
SINGLE_BOUNCE = "s16_wrinkled_film"
"""Made with a lobe that loses light; what of it the program shares is in test_wrinkled."""

NAMES = sorted(path.stem for path in FOLDER.glob("*.json") if path.stem != SINGLE_BOUNCE)

LIMITS = {Quality.PREVIEW: (0.04, 0.01), Quality.DEFAULT: (0.01, 0.003)}
"""Root mean square over cells, and mean, as shares of the mean."""


def plan_of(scene: dict[str, Any]) -> Plan:
    walls, room = scene["walls"], scene["box"]

    def rho(name: str) -> Rho:
        entry = walls.get(name, walls.get("all"))
        return entry["rho_d"], entry["rho_s"]

    z = scene["canopy"]["z"]
    lamps = [
        lamp(
            (entry["cx"], entry["cy"]),
            entry["z"] - z,
            body=panel(entry["lx"], entry["ly"]),
            exponent=entry.get("m", 1),
            ppf=entry["ppf"],
        )
        for entry in scene["lamps"]
    ]
    return plan(
        box(room["W"], room["D"]),
        room["H"],
        lamps,
        walls=[rho(name) for name in ("y0", "x1", "y1", "x0")],
        ceiling=rho("ceiling"),
        canopy=scene["canopy"]["rho"],
        canopy_height=z,
    )


def test_there_are_maps() -> None:
    assert len(NAMES) >= 6


@pytest.mark.parametrize("seed", [1, 2, 3])
@pytest.mark.parametrize("quality", list(LIMITS))
@pytest.mark.parametrize("name", NAMES)
def test_map(name: str, quality: Quality, seed: int) -> None:
    case = json.loads((FOLDER / f"{name}.json").read_text(encoding="utf-8"))
    columns, rows = case["cells"]
    found = light(plan_of(case["scene"]), (columns, rows), quality, seed)
    rms, mean = rms_and_mean(found.ppfd, np.array(case["map"]))
    limit_rms, limit_mean = LIMITS[quality]
    assert rms <= limit_rms
    assert abs(mean) <= limit_mean
