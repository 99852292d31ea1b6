"""Things that stand in the light: what they cover is no canopy, and bars hide one another."""

from __future__ import annotations

import numpy as np
import pytest

from planner.plan import edits
from planner.plan.obstacle import Obstacle
from planner.plan.place import PlaceKind
from planner.plan.plan import Plan
from tests.physics.rooms import box, lamp, light, panel, plan

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
