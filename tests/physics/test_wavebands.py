"""Light by wavebands: colours of lamps and linings, against photons walked band by band."""

from __future__ import annotations

import math

import numpy as np
import pytest

from planner.estimate.evaluate import recount
from planner.estimate.result import EstimateOptions, Quality
from planner.estimate.sensitivity import Reckoner
from planner.estimate.upright import light_in_slice
from planner.plan.place import Place, PlaceKind
from planner.plan.plan import Plan
from planner.plan.wavebands import BAND_WORDS, FAR_RED, PAR_BANDS, Wavebands
from tests.physics.random_walk import Room, cosine_panel, walk
from tests.physics.rooms import Rho, box, lamp, light, panel, plan

LAMP = Wavebands(blue=0.2, green=0.3, red=0.5, far_red=0.1)
WALL = Wavebands(blue=0.7, green=0.8, red=0.9, far_red=0.94)
WHITE: Rho = (0.6, 0.2)
CANOPY = 0.1


def cabinet(
    lamps: Wavebands | None = LAMP,
    linings: Wavebands | None = WALL,
    *,
    closed: bool = True,
    leaves: Wavebands | None = None,
) -> Plan:
    """0.6 m wide, lined all round, a panel above a canopy; its colours as given."""
    made = plan(
        box(0.6, 0.6), 1.2, [lamp((0.3, 0.3), 0.5, body=panel(0.3, 0.2))],
        walls=WHITE, ceiling=WHITE, floor=WHITE, canopy=CANOPY, canopy_height=0.2, closed=closed,
    )  # fmt: skip
    models = [one.model.model_copy(update={"wavebands": lamps}) for one in made.lamps]
    return made.model_copy(
        update={
            "lamps": tuple(
                one.model_copy(update={"model": model})
                for one, model in zip(made.lamps, models, strict=True)
            ),
            "linings": tuple(one.model_copy(update={"wavebands": linings}) for one in made.linings),
            "canopy": made.canopy.model_copy(update={"wavebands": leaves}),
        }
    )


def walked(
    what: Plan, band: float, photons: int, seed: int, leaves: float = CANOPY
) -> tuple[float, float]:
    """Mean flux density of a walk whose walls return ``band`` as much, and its standard error."""
    pair = (WHITE[0] * band, WHITE[1] * band)

    def rho(_wall: int, z: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
        return np.full(z.shape, pair[0]), np.full(z.shape, pair[1])

    bottom = (leaves, 0.0) if what.canopy.closed else pair
    low = what.canopy.height if what.canopy.closed else 0.0
    room = Room(np.array(what.space.footprint), low, 1.2, rho, pair, bottom, what.canopy.height)
    start, direction = cosine_panel((0.3, 0.3, 0.7), (0.3, 0.2), 1.0, photons, seed)
    counted = float(walk(room, start, direction, (4, 4), seed).sum())
    per_photon = 100.0 / photons / what.space.area
    return counted * per_photon, math.sqrt(counted) * per_photon


@pytest.mark.slow
@pytest.mark.parametrize("closed", [True, False])
def test_each_band_is_what_its_photons_walk_to(closed: bool) -> None:
    """``random_walk`` shares no code with the program; reflectances of each band by hand."""
    what = cabinet(closed=closed)
    found = light(what, (8, 8))
    assert found.bands is not None
    total = spread = 0.0
    for seed, (band, tint) in enumerate(
        # 0.7, 0.8 and 0.9 over their mean 0.8, and 0.94 over it.
        {"blue": 0.875, "green": 1.0, "red": 1.125, FAR_RED: 1.175}.items()
    ):
        share = {"blue": 0.2, "green": 0.3, "red": 0.5, FAR_RED: 0.1}[band]
        mean, error = walked(what, tint, 300_000, seed)
        band_mean = float(np.average(found.bands[band], weights=found.cell_area))
        # A photon that lands again counts again, so counts spread more than their root.
        assert band_mean == pytest.approx(share * mean, rel=3e-3 + 6 * error / mean)
        if band != FAR_RED:
            total += share * mean
            spread = math.hypot(spread, share * error)
    assert found.figures.mean == pytest.approx(total, rel=3e-3 + 6 * spread / total)
    assert found.figures.eppfd == pytest.approx(
        found.figures.mean + float(np.average(found.bands[FAR_RED], weights=found.cell_area))
    )


@pytest.mark.slow
def test_leaves_return_each_band_in_its_own_measure() -> None:
    """As above between grey walls, over leaves whose reflectance of each band is set by hand."""
    green = Wavebands(blue=0.04, green=0.14, red=0.06, far_red=0.32)
    what = cabinet(linings=None, leaves=green)
    found = light(what, (8, 8))
    assert found.bands is not None
    walks = {}
    # Of 0.1 over 400-700 nm: each over 0.08, the mean of blue, green and red.
    for seed, (band, rho) in enumerate(
        {"blue": 0.05, "green": 0.175, "red": 0.075, FAR_RED: 0.4}.items()
    ):
        share = {"blue": 0.2, "green": 0.3, "red": 0.5, FAR_RED: 0.1}[band]
        mean, error = walked(what, 1.0, 300_000, 10 + seed, rho)
        band_mean = float(np.average(found.bands[band], weights=found.cell_area))
        assert band_mean == pytest.approx(share * mean, rel=3e-3 + 6 * error / mean), band
        walks[band] = share * mean
    grey = light(cabinet(linings=None), (8, 8))
    assert grey.figures.far_red_share == pytest.approx(0.1 / 1.1)
    assert found.figures.far_red_share == pytest.approx(
        walks[FAR_RED] / sum(walks.values()), rel=0.01
    )
    # Over an open canopy there are no leaves.
    opened = light(cabinet(linings=None, leaves=green, closed=False), (8, 8))
    assert np.array_equal(opened.ppfd, light(cabinet(linings=None, closed=False), (8, 8)).ppfd)


def test_grey_linings_leave_the_lamps_own_colours() -> None:
    """Where all bands go the same way, each is the lamp's share of the whole, everywhere."""
    plain, coloured = light(cabinet(None, None), (8, 8)), light(cabinet(LAMP, None), (8, 8))
    assert plain.bands is None
    assert plain.figures.eppfd is None
    assert coloured.bands is not None
    assert np.array_equal(coloured.ppfd, plain.ppfd)
    for band, share in (("blue", 0.2), ("green", 0.3), ("red", 0.5), (FAR_RED, 0.1)):
        np.testing.assert_allclose(coloured.bands[band], share * plain.ppfd, rtol=1e-12)
    assert coloured.figures.blue_share == pytest.approx(0.2)
    assert coloured.figures.far_red_share == pytest.approx(0.1 / 1.1)


def test_colour_that_no_lamp_is_known_to_have_changes_nothing() -> None:
    plain, tinted = light(cabinet(None, None), (8, 8)), light(cabinet(None, WALL), (8, 8))
    assert np.array_equal(tinted.ppfd, plain.ppfd)
    assert tinted.bands is None


def test_bands_add_up_and_tinted_walls_give_more_than_grey_ones_of_their_mean() -> None:
    """Light that is thrown to and fro grows faster than the reflectance (Jensen's inequality)."""
    grey, tinted = light(cabinet(LAMP, None), (8, 8)), light(cabinet(), (8, 8))
    assert tinted.bands is not None
    np.testing.assert_allclose(
        sum(tinted.bands[band] for band in PAR_BANDS), tinted.ppfd, rtol=1e-9
    )
    even = cabinet(Wavebands(blue=1, green=1, red=1))
    assert light(even, (8, 8)).figures.mean > grey.figures.mean * 1.01
    assert tinted.bands["blue"].mean() / tinted.bands["red"].mean() < 0.4


def test_the_count_of_photons_knows_colours() -> None:
    what = cabinet()
    found, count = light(what, (8, 8)), recount(what)
    assert count is not None
    assert found.with_recount(count).recount is count
    assert abs(count.difference(found.figures)) < 3e-3 + 3 * count.standard_error / count.flux


def test_the_slice_has_at_canopy_height_the_light_of_the_map() -> None:
    what = cabinet(closed=False)
    options = EstimateOptions((8, 8), Quality.DEFAULT)
    found = light_in_slice(what, "y", 0.3, options)
    here = light(what, (8, 8)).at(np.array([0.3]), np.array([0.3]))[0]
    assert found.at(0.3, what.canopy.height) == pytest.approx(here, rel=0.02)


def test_a_slope_of_reflectance_is_that_of_two_plans() -> None:
    """What a lining is worth, in a tinted room too: by two whole plans beside it."""
    what = cabinet()
    options = EstimateOptions((8, 8), Quality.PREVIEW)
    reckoner = Reckoner(what, options)
    walls = tuple(Place(PlaceKind.WALL, k, 0) for k in range(4))
    places = (*walls, Place(PlaceKind.CEILING))
    lined = reckoner.lined_at(places, 0.7)
    other = what.model_copy(
        update={
            "linings": tuple(one.model_copy(update={"reflectance": 0.7}) for one in what.linings)
        }
    )
    assert lined.mean() == pytest.approx(light(other, (8, 8)).ppfd.mean(), rel=0.02)


def test_fine_quality_and_several_kinds_of_lamps() -> None:
    what = cabinet()
    red = what.lamps[0].model.model_copy(
        update={"key": "red", "wavebands": Wavebands(blue=0, green=0, red=1)}
    )
    both = what.model_copy(
        update={"lamps": (*what.lamps, what.lamps[0].model_copy(update={"model": red, "x": 0.2}))}
    )
    found = light(both, (6, 6), Quality.FINE)
    assert found.bands is not None
    np.testing.assert_allclose(sum(found.bands[band] for band in PAR_BANDS), found.ppfd)
    unknown = red.model_copy(update={"wavebands": None})
    part = both.model_copy(
        update={"lamps": (both.lamps[0], both.lamps[1].model_copy(update={"model": unknown}))}
    )
    mixed = light(part, (6, 6))
    assert mixed.bands is None
    # Only what is known of it changes how the second lamp's light is returned.
    assert mixed.figures.mean == pytest.approx(found.figures.mean, rel=0.1)
    assert mixed.figures.mean < found.figures.mean
    assert set(BAND_WORDS) == set(found.bands)
