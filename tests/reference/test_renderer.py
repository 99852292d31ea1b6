"""Scenes a general-purpose renderer can be given, against its path and particle tracers."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from planner.estimate.evaluate import evaluate
from planner.estimate.result import EstimateOptions
from tests.reference.comparison import Deviation, deviation
from tests.reference.renderer import Rendered, can_show
from tests.reference.scene_list import SCENES
from tests.reference.spaces import Scene, plan_of

pytestmark = pytest.mark.reference


@pytest.fixture(autouse=True, scope="module")
def _extra() -> None:
    pytest.importorskip("mitsuba", reason="the 'reference' extra is not installed")


CASES = (
    ("1 m x 1 m x 2 m, 0.45 + 0.45", "path"),
    ("1 m x 1 m x 2 m, 0.45 + 0.45", "ptracer"),
    ("lamp against a wall", "ptracer"),
    # Under a shelf the particle tracer's pinhole would not see the whole canopy.
    ("shelf and lamp housing, mirrors", "path"),
    ("wrinkled film, lobe 0.25", "ptracer"),
)
ROUNDS, SAMPLES = 8, 3000


def by_name(name: str) -> Scene:
    return next(scene for scene in SCENES if scene.name == name)


def square_cells(scene: Scene) -> Scene:
    """The scene with a map of about 8 x 8 square cells, as a picture needs them."""
    x, y = (np.ptp(np.array(scene.corners), axis=0) * 10).round().astype(int)
    columns, rows = (int(x), int(y)) if max(x, y) > 5 else (2 * int(x), 2 * int(y))
    return replace(scene, cells=(columns, rows))


def compared(name: str, integrator: str) -> tuple[Deviation, float]:
    """The program's map against the renderer's, and the seconds the program took."""
    scene = square_cells(by_name(name))
    assert can_show(scene)
    rendered = Rendered(scene, integrator=integrator, roulette=20)
    # Independent rounds tell the standard error.
    maps = np.stack([rendered.density(SAMPLES, seed) for seed in range(ROUNDS)])
    error = maps.std(axis=0, ddof=1) / np.sqrt(ROUNDS)
    means = maps.mean(axis=(1, 2))
    found = evaluate(plan_of(scene), EstimateOptions(cells=scene.cells))
    mean_error = float(means.std(ddof=1) / np.sqrt(ROUNDS))
    seen = deviation(found, maps.mean(axis=0), error, float(means.mean()), mean_error)
    return seen, found.seconds


@pytest.mark.timeout(600)
@pytest.mark.parametrize(("name", "integrator"), CASES)
def test_maps_agree(name: str, integrator: str) -> None:
    seen, _ = compared(name, integrator)
    assert seen.chance < 0.02
    assert seen.within, seen
