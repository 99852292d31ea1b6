"""The judge of random rooms itself, held against laws, closed forms and maps of others."""

from __future__ import annotations

import json
import math
from typing import Any

import numpy as np
import pytest

from tests.physics.rooms import box, lamp, panel, plan
from tests.physics.test_reference_maps import FOLDER, NAMES, plan_of

pytest.importorskip("numba", reason="the 'reference' extra is not installed")
from tests.reference.judge import clipped, judge, shoelace
from tests.reference.judge_kernel import lambertian, scattered
from tests.reference.random_plans import OUTLINES, random_room

pytestmark = pytest.mark.reference

WIDTHS = (0.02, 0.1, 0.25, 0.6, 1.0)


@pytest.fixture(scope="module", params=WIDTHS)
def furnace(request: pytest.FixtureRequest) -> Any:
    """Counts of even light by cos² in, cos² out and the turn between, in equal bins."""
    table = np.zeros((12, 12, 6))
    for run in range(8):
        incoming = -lambertian(4_000_000, 11 + 2 * run)
        out, _ = scattered(incoming, request.param, 12 + 2 * run)
        turn = np.arctan2(out[:, 1], out[:, 0]) - np.arctan2(incoming[:, 1], incoming[:, 0])
        turn = np.abs((turn + np.pi) % (2 * np.pi) - np.pi)
        table += np.histogramdd(
            np.column_stack([incoming[:, 2] ** 2, out[:, 2] ** 2, turn]),
            table.shape,
            ((0, 1), (0, 1), (0, np.pi)),
        )[0]
    return table


@pytest.mark.timeout(300)
def test_white_furnace(furnace: Any) -> None:
    """Albedo 1 at every angle and reciprocity: even light in leaves as even light."""
    counts, even = furnace.sum(axis=(0, 2)), 32_000_000 / 12
    assert counts.sum() == 32_000_000
    assert np.abs(counts / even - 1).max() < 0.002
    assert ((counts - even) ** 2 / even).mean() < 2.5


def test_reciprocity(furnace: Any) -> None:
    """As much goes from a to b as from b to a, in 12 x 12 directions and 6 turns."""
    there, back = furnace, furnace.transpose(1, 0, 2)
    upper = np.triu(np.ones((12, 12)), 1)[:, :, None] * (there + back > 50) > 0
    square = (there - back)[upper] ** 2 / (there + back)[upper]
    assert square.mean() < 1 + 4 * math.sqrt(2 / square.size)


@pytest.mark.parametrize("width", WIDTHS[1:])
@pytest.mark.parametrize("angle", [0.0, 40.0, 75.0])
def test_one_bounce(width: float, angle: float) -> None:
    """The share that leaves after one bounce: ∫ D G₂ / (4 cos θᵢ) with G₂ = 1/(1 + Λᵢ + Λₒ).

    Heitz (2014), Understanding the Masking-Shadowing Function, JCGT 3(2), equations 71 (GGX),
    72 (its Λ) and 99 (the heights of both rays known together).
    """
    theta = math.radians(angle)
    incoming = np.tile([-math.sin(theta), 0.0, -math.cos(theta)], (400_000, 1))
    _, bounces = scattered(incoming, width, 5)
    share = (bounces == 1).mean()

    z, turn = np.meshgrid((np.arange(4000) + 0.5) / 4000, (np.arange(400) + 0.5) * np.pi / 400)
    out = np.stack([np.sqrt(1 - z**2) * np.cos(turn), np.sqrt(1 - z**2) * np.sin(turn), z])
    view = -incoming[0]
    middle = out + view[:, None, None]
    middle /= np.sqrt((middle**2).sum(axis=0))

    def slope_sum(cosine: Any) -> Any:
        return (np.sqrt(1 + width**2 * (1 / cosine**2 - 1)) - 1) / 2

    normal_density = width**2 / (np.pi * ((width**2 - 1) * middle[2] ** 2 + 1) ** 2)
    both = 1 / (1 + slope_sum(view[2]) + slope_sum(z))
    expected = 2 * np.pi * float((normal_density * both / (4 * view[2])).mean())
    assert share == pytest.approx(expected, abs=0.003)


@pytest.mark.parametrize("name", [name for name in NAMES if "wrinkled" not in name])
def test_maps_of_other_codes(name: str) -> None:
    """Both with chance errors; the wrinkled one was made with a lobe of one bounce."""
    case = json.loads((FOLDER / f"{name}.json").read_text(encoding="utf-8"))
    columns, rows = case["cells"]
    found = judge(plan_of(case["scene"]), (columns, rows), 2_000_000)
    expected, error = np.array(case["map"]), np.array(case["map_standard_error"])
    square = (found.ppfd - expected) ** 2 / (found.error**2 + error**2)
    # Sixteen runs know a variance to 2/15, hence the heavy tail of each term.
    assert square.mean() < 1.2 + 5 * math.sqrt(3 / square.size)
    assert found.lost == 0
    assert found.mean == pytest.approx(expected.mean(), rel=0.0015)


def test_point_over_a_black_plane() -> None:
    """E = I cos θ / d², at the middle of small cells."""
    what = plan(box(1.0, 1.0), 1.0, [lamp((0.3, 0.4), 0.5, exponent=2.0)])
    found = judge(what, (40, 40), 4_000_000)
    x, y = np.meshgrid((np.arange(40) + 0.5) / 40 - 0.3, (np.arange(40) + 0.5) / 40 - 0.4)
    distance = np.sqrt(x**2 + y**2 + 0.25)
    expected = 100 * 3 / (2 * np.pi) * (0.5 / distance) ** 3 / distance**2
    assert np.abs((found.ppfd - expected) / np.maximum(found.error, 0.002 * expected)).max() < 7
    assert found.ppfd.mean() == pytest.approx(expected.mean(), rel=5e-4)


def test_table_as_the_law_it_tabulates() -> None:
    angles = np.linspace(0, 90, 91)
    table = (tuple(angles), tuple(np.cos(np.radians(angles)) ** 3))
    law, tabulated = (
        judge(
            plan(box(0.8, 0.5), 1.0, [lamp((0.3, 0.2), 0.6, body=panel(0.2, 0.1), **how)]),
            (6, 6),
            2_000_000,
        )
        for how in ({"exponent": 3.0}, {"table": table})
    )
    # Straight lines between whole degrees lie below the law by up to 2e-4 of the peak.
    assert np.abs(tabulated.ppfd / law.ppfd - 1).max() < 0.01
    assert tabulated.mean == pytest.approx(law.mean, rel=1e-3)


def test_polygons_cut() -> None:
    ell = [(0.0, 0.0), (1.0, 0.0), (1.0, 0.5), (0.5, 0.5), (0.5, 1.0), (0.0, 1.0)]
    square = [(0.25, 0.25), (0.75, 0.25), (0.75, 0.75), (0.25, 0.75)]
    assert shoelace(clipped(ell, square)) == pytest.approx(0.25 - 0.0625)
    tipped = [(0.5, 0.2), (0.8, 0.5), (0.5, 0.8), (0.2, 0.5)]
    assert shoelace(clipped(ell, tipped)) == pytest.approx(0.75 * 0.18)


def test_every_kind_is_drawn_and_drawn_again() -> None:
    rooms = [random_room(number, 3) for number in range(56)]
    kinds = {kind for room in rooms for kind in room.kinds}
    assert kinds >= {*OUTLINES, "bands", "open door", "obstacles", "housings", "uplight"}
    assert kinds >= {"with wrinkles", "open canopy", "point lamps", "panel lamps", "bars lamps"}
    assert all(random_room(room.number, 3).plan == room.plan for room in rooms[::7])


@pytest.mark.parametrize("number", range(0, 56, 9))
def test_no_photon_slips_out(number: int) -> None:
    room = random_room(number, 3)
    found = judge(room.plan, (8, 8), 300_000)
    assert found.lost == 0
    assert np.isfinite(found.ppfd[found.area > 0]).all()
    assert found.area.sum() <= room.plan.space.area + 1e-9
