"""Things that stand in the light: what they cover is no canopy, and bars hide one another."""

from __future__ import annotations

import json
from pathlib import Path

import numpy as np
import pytest

from planner.estimate.result import Quality
from planner.files.store import open_plan
from planner.plan import edits
from planner.plan.lamp import Lamp, LampModel, TableProfile
from planner.plan.place import PlaceKind
from planner.plan.plan import Plan
from planner.plan.space import Obstacle
from planner.reports.exports import estimate_to_csv, estimate_to_json
from tests.physics.rooms import box, lamp, light, panel, plan
from tests.reference.random_plans import random_room

DATA = Path(__file__).parents[1] / "data" / "plans"
GREY = (0.4, 0.0)


def with_pot(*, closed: bool, top: float = 0.5, size: float = 0.25) -> Plan:
    """A pot about the middle of a 1 m tent whose canopy is at 0.3 m."""
    bare = plan(
        box(1.0, 1.0),
        1.5,
        [lamp((0.5, 0.5), 0.9, body=panel(0.4, 0.4), ppf=400)],
        walls=GREY,
        ceiling=GREY,
        floor=GREY,
        canopy_height=0.3,
        closed=closed,
    )
    pot = Obstacle(name="Pot", x=0.5, y=0.5, length=size, width=size, underside=0.0, thickness=top)
    return edits.changed(bare, obstacles=(pot,))


@pytest.mark.parametrize("closed", [True, False])
def test_what_lies_in_a_pot_is_no_canopy(closed: bool) -> None:
    found = light(with_pot(closed=closed), (8, 8))
    # Cells of 12.5 cm: the pot of 25 cm fills the middle four.
    covered = np.zeros((8, 8), dtype=bool)
    covered[3:5, 3:5] = True
    np.testing.assert_array_equal(np.isnan(found.ppfd), covered)
    free = found.ppfd[~covered]
    assert found.figures.canopy_area == pytest.approx(1 - 0.0625)
    assert found.figures.minimum == free.min() > 0
    assert found.figures.mean == pytest.approx(free.mean())
    assert found.figures.utilisation == pytest.approx(free.mean() * (1 - 0.0625) / 400)


def test_files_leave_out_what_is_covered() -> None:
    found = light(with_pot(closed=False), (8, 8))
    rows = json.loads(estimate_to_json(found))["map"]["ppfd"]
    assert sum(value is None for row in rows for value in row) == 4
    assert rows[3][3:5] == [None, None]
    # A header, and a line for each cell that is canopy.
    assert len(estimate_to_csv(found).splitlines()) == 1 + 60


@pytest.mark.parametrize("closed", [True, False])
def test_cells_partly_covered_count_what_is_free(closed: bool) -> None:
    found = light(with_pot(closed=closed, size=0.375), (8, 8))
    assert found.figures.canopy_area == pytest.approx(1 - 0.375**2)
    # The pot ends in the middle of cells: half is left along its sides, more at its corners.
    assert found.cell_area[4, 2] == pytest.approx(0.5 / 64)
    assert found.cell_area[2, 2] == pytest.approx(0.75 / 64)
    assert np.isfinite(found.ppfd[2, 2])


def test_a_pot_below_the_canopy_takes_nothing_of_it() -> None:
    found = light(with_pot(closed=False, top=0.3), (8, 8))
    assert np.isfinite(found.ppfd).all()
    assert found.figures.canopy_area == pytest.approx(1.0)


@pytest.mark.parametrize("closed", [True, False])
def test_photons_add_up_around_a_pot(closed: bool) -> None:
    found = light(with_pot(closed=closed), (8, 8))
    assert sum(share.share for share in found.shares) == pytest.approx(1.0, abs=1e-6)
    if closed:
        canopy = next(s for s in found.shares if s.place.kind is PlaceKind.CANOPY)
        # Black leaves: what the map adds up to is what they take.
        added = float(np.nansum(found.ppfd * found.cell_area))
        assert canopy.photon_flux == pytest.approx(added, rel=2e-3)


def test_light_sent_up_into_a_housing_comes_from_its_face() -> None:
    """A lamp that sends half of its light into its own housing loses what that absorbs.

    In a black room the lamp gives below what it sends down, and what the housing's face, the
    size of the lamp, sends back as Lambertian light. The lamp is small against its height, so
    that the inverse square law holds for both.
    """
    both = LampModel(
        key="both",
        name="Both ways",
        body=panel(0.02, 0.02),
        profile=TableProfile(angles_deg=(0, 180), relative=(1, 1)),
        ppf=400,
        watts=200,
        housing_height=0.05,
        housing_reflectance=0.6,
    )
    bare = plan(box(2.0, 2.0), 1.6, [lamp((1.0, 1.0), 1.0)], canopy_height=0.3)
    hung = Lamp(model=both, x=1.0, y=1.0, hanging_height=1.0)
    found = light(edits.changed(bare, lamps=(hung,)), (9, 9))
    # Isotropic: I = Φ/4π; Lambertian of ρ Φ/2: I = ρ (Φ/2)/π. Right below, E = I/d².
    expected = 400 / (4 * np.pi) + 0.6 * 200 / np.pi
    assert found.ppfd[4, 4] == pytest.approx(expected, rel=0.03)
    housing = next(s for s in found.shares if s.place.kind is PlaceKind.HOUSING)
    assert housing.photon_flux == pytest.approx(0.4 * 200, rel=2e-3)


def test_a_lamp_hidden_from_the_middles_of_texels_gives_no_endless_light() -> None:
    """Cells by their parts see a little light that texels by their middles miss.

    The light of the preview is that of the default to what its grid can tell; made up by a factor
    it was 1e297 on one texel.
    """
    shut_in = open_plan(DATA / "lamp_among_boxes.plan.json").plan
    quick = light(shut_in, (12, 12), Quality.PREVIEW)
    careful = light(shut_in, (12, 12))
    assert quick.figures.mean == pytest.approx(careful.figures.mean, rel=0.15)
    assert quick.figures.maximum == pytest.approx(careful.figures.maximum, rel=0.15)


def test_the_foot_of_an_obstacle_is_no_bright_spot() -> None:
    """Where hardly any canopy is left between an obstacle and the edge of a cell.

    A lamp lights the foot no better than free canopy, and half of what walls send is missing
    there: no cell beside the obstacle is brighter than the brightest of the whole ones. In this
    room, drawn at random, such cells had up to 116 times the mean.
    """
    found = light(random_room(0, seed=31).plan, (24, 24))
    whole = found.cell_area > 0.99 * found.cell_area.max()
    assert np.nanmax(found.ppfd[~whole]) < np.nanmax(found.ppfd[whole])
