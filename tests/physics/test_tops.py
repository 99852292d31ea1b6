"""Canopies that obstacles carry, against closed forms, an enclosure of even light, and laws.

Sources beside each check.
"""

from __future__ import annotations

import math

import numpy as np
import pytest

from planner.estimate.evaluate import Cache, evaluate
from planner.estimate.result import EstimateOptions, Quality, of_plan
from planner.files.store import load_plan
from planner.folders import resource_path
from planner.plan.place import Place, PlaceKind
from planner.plan.plan import Plan
from planner.plan.space import CarriedCanopy, Obstacle
from planner.plan.target import PpfdTarget
from planner.plan.wavebands import Wavebands
from tests.physics.rooms import box, lamp, lining, panel, plan, under_rectangle

MATT = (0.85, 0.0)


def tray(
    at: tuple[float, float],
    size: tuple[float, float],
    heights: tuple[float, float],
    *,
    turned: float = 0.0,
    canopy: CarriedCanopy | None = None,
    of: str = "open",
) -> Obstacle:
    """A box from the lower to the upper of two heights whose top carries a canopy."""
    return Obstacle(
        name="Tray",
        x=at[0],
        y=at[1],
        underside=heights[0],
        length=size[0],
        width=size[1],
        thickness=heights[1] - heights[0],
        rotation_deg=turned,
        lining=of,
        canopy=canopy or CarriedCanopy(),
    )


def on(what: Plan, *trays: Obstacle) -> Plan:
    return what.model_copy(update={"obstacles": trays})


@pytest.mark.parametrize("turned", [0.0, 35.0])
def test_a_point_lamp_over_a_tray_between_black_walls(turned: float) -> None:
    # Photometric distance law, CIE S 017 term 17-25-104, with I0 = Φ/π for a cosine beam:
    # E = I0 cos² θ / d². Cells of 1 cm.
    what = plan(box(1.0, 0.8), 2.0, [lamp((0.4, 0.4), 1.0)], canopy_height=0.2)
    what = on(what, tray((0.5, 0.4), (0.3, 0.2), (0.2, 0.5), turned=turned))
    found = evaluate(what, EstimateOptions(cells=(100, 80)))
    (top,) = found.tops
    assert top.place == Place(PlaceKind.TOP, 0)
    # Slivers of cells are left out.
    assert top.figures.canopy_area == pytest.approx(0.06, rel=1e-4)
    x, y = np.meshgrid(top.x, top.y)
    squared = (x - 0.4) ** 2 + (y - 0.4) ** 2 + 0.7**2
    expected = 100 / math.pi * (0.7 / squared) ** 2
    whole = top.cell_area > 0.999 * top.cell_area.max()
    assert whole.sum() > 400
    assert top.ppfd[whole] == pytest.approx(expected[whole], rel=1e-4)


def test_a_panel_over_a_tray_between_black_walls() -> None:
    # A Lambertian panel of exitance Φ/A seen under a configuration factor F: E = F Φ / A
    # (Siegel and Howell, see ``corner_factor``).
    what = plan(box(1.0, 0.8), 2.0, [lamp((0.45, 0.4), 0.6, body=panel(0.3, 0.2))])
    what = on(what, tray((0.5, 0.4), (0.4, 0.4), (0.0, 0.3)))
    (top,) = evaluate(what, EstimateOptions(cells=(50, 40))).tops
    for row in (2, 10, 17):
        for column in (1, 9, 18):
            at = float(top.x[column]), float(top.y[row])
            expected = 100 / 0.06 * under_rectangle(at, (0.45, 0.4), (0.3, 0.2), 0.3)
            assert top.ppfd[row, column] == pytest.approx(expected, rel=5e-3)


def test_a_tray_over_the_lamp_is_dark_where_nothing_returns() -> None:
    what = plan(box(1.0, 0.8), 2.0, [lamp((0.5, 0.4), 0.4, body=panel(0.2, 0.2))])
    (top,) = evaluate(on(what, tray((0.5, 0.4), (0.4, 0.4), (0.8, 0.83)))).tops
    assert top.figures.mean == 0.0
    assert top.numeric_error is None


def test_light_is_even_in_a_closed_room_of_one_reflectance() -> None:
    # As in an integrating sphere (Walsh, Photometry, 1926): where all surfaces have ρ near 1, what
    # is reflected comes evenly to all of them, E = Φ ρ / (A (1 - ρ)), A being all that the light
    # meets, sides of the tray too; and what comes straight from the lamp is added.
    rho = 0.98
    what = plan(
        box(0.8, 0.6),
        0.7,
        [lamp((0.3, 0.35), 0.3, body=panel(0.3, 0.3))],
        walls=(rho, 0.0),
        ceiling=(rho, 0.0),
        canopy=rho,
        canopy_height=0.1,
    )
    key = lining((rho, 0.0)).key
    grown = CarriedCanopy(reflectance=rho)
    what = on(what, tray((0.5, 0.3), (0.25, 0.2), (0.25, 0.3), canopy=grown, of=key))
    found = evaluate(what)
    dark = plan(box(0.8, 0.6), 0.7, what.lamps, canopy_height=0.1)
    straight = evaluate(on(dark, tray((0.5, 0.3), (0.25, 0.2), (0.25, 0.3)))).tops[0].figures.mean
    meets = 2 * 0.8 * 0.6 + 2 * (0.8 + 0.6) * 0.6 + 2 * 0.25 * 0.2 + 2 * (0.25 + 0.2) * 0.05
    expected = straight + 100 * rho / (meets * (1 - rho))
    assert found.tops[0].figures.mean == pytest.approx(expected, rel=0.02)
    # Each canopy takes its share of the photons and no more.
    landed = sum(f.mean * f.canopy_area for f in (found.figures, found.tops[0].figures))
    taken = sum(s.photon_flux for s in found.shares if s.place.kind in {"canopy", "top"})
    assert (1 - rho) * landed == pytest.approx(taken, rel=0.01)


def test_reciprocity_of_two_trays() -> None:
    # What a Lambertian lamp over one tray sends to the other, the other's lamp sends back: a
    # figure of two equal trays in a mirror-symmetric room stays the same when lamps change place
    # (Helmholtz reciprocity).
    def lit(x: float) -> Plan:
        room = plan(
            box(1.0, 0.6),
            1.0,
            [lamp((x, 0.3), 0.45, body=panel(0.2, 0.2))],
            walls=MATT,
            ceiling=MATT,
            canopy=0.06,
            canopy_height=0.1,
        )
        return on(
            room,
            tray((0.25, 0.3), (0.2, 0.3), (0.2, 0.25)),
            tray((0.75, 0.3), (0.2, 0.3), (0.2, 0.25)),
        )

    one, other = evaluate(lit(0.25)).tops, evaluate(lit(0.75)).tops
    # Their stated error is of a cell; of the mean less is left.
    assert one[1].figures.mean == pytest.approx(other[0].figures.mean, rel=0.006)
    assert one[0].figures.mean == pytest.approx(other[1].figures.mean, rel=0.006)


def test_the_figures_of_all_canopies_are_weighted_by_area() -> None:
    what = plan(box(0.6, 0.6), 1.2, [lamp((0.3, 0.3), 0.4)], walls=MATT, canopy_height=0.2)
    own = CarriedCanopy(target=PpfdTarget(low=1.0, high=5000.0))
    what = on(what, tray((0.3, 0.3), (0.3, 0.2), (0.2, 0.3), canopy=own))
    what = what.model_copy(update={"target": PpfdTarget(low=4000.0, high=5000.0)})
    cache = Cache()
    found = evaluate(what, cache=cache)
    (top,), whole = found.tops, found.overall
    areas = found.figures.canopy_area, top.figures.canopy_area
    assert whole.canopy_area == pytest.approx(0.36, rel=1e-6)
    means = found.figures.mean, top.figures.mean
    assert whole.mean == pytest.approx(np.average(means, weights=areas), rel=1e-9)
    assert whole.minimum == min(found.figures.minimum, top.figures.minimum)
    # Every cell of the tray lies in its own band, none of the canopy's in the plan's.
    assert top.figures.share_inside == 1.0
    assert found.figures.share_inside == 0.0
    assert whole.share_inside == pytest.approx(0.06 / 0.36)
    wanted = own.model_copy(update={"target": PpfdTarget(low=4000.0, high=5000.0)})
    changed = on(what, what.obstacles[0].model_copy(update={"canopy": wanted}))
    assert of_plan(found, changed).tops[0].figures.share_inside == 0.0


def test_fine_quality_knows_tops_too() -> None:
    what = plan(box(0.4, 0.4), 0.8, [lamp((0.2, 0.2), 0.3)], walls=MATT, canopy_height=0.2)
    what = on(what, tray((0.1, 0.2), (0.1, 0.2), (0.3, 0.35)))
    options = EstimateOptions(cells=(8, 8), quality=Quality.FINE)
    fine = evaluate(what, options).tops[0]
    plain = evaluate(what, EstimateOptions(cells=(8, 8))).tops[0]
    assert fine.figures.mean == pytest.approx(plain.figures.mean, rel=0.01)
    assert fine.numeric_error is not None
    assert plain.numeric_error is not None
    assert fine.numeric_error < plain.numeric_error


def test_what_has_no_room_for_light_is_no_canopy() -> None:
    what = plan(box(0.6, 0.6), 1.0, [lamp((0.3, 0.3), 0.4)], canopy_height=0.2)
    under = tray((0.3, 0.3), (0.2, 0.2), (0.0, 0.15))
    at_ceiling = tray((0.1, 0.3), (0.1, 0.2), (0.9, 1.0))
    assert evaluate(on(what, under, at_ceiling)).tops == ()
    covered = tray((0.3, 0.3), (0.2, 0.2), (0.2, 0.3))
    cover = Obstacle(x=0.3, y=0.3, underside=0.3, length=0.3, width=0.3, thickness=0.1)
    assert evaluate(on(what, covered, cover)).tops == ()


def test_a_pot_on_a_shelf_leaves_the_rest_of_it() -> None:
    what = plan(box(0.6, 0.6), 1.0, [lamp((0.3, 0.3), 0.5)], walls=MATT, canopy_height=0.1)
    shelf = tray((0.3, 0.3), (0.3, 0.2), (0.2, 0.25))
    pot = tray((0.3, 0.3), (0.1, 0.1), (0.25, 0.35))
    low, high = evaluate(on(what, shelf, pot)).tops
    assert [low.place.index, high.place.index] == [0, 1]
    assert low.figures.canopy_area == pytest.approx(0.06 - 0.01, rel=1e-6)
    assert high.figures.canopy_area == pytest.approx(0.01, rel=1e-6)


LAMP_COLOURS = Wavebands(blue=0.2, green=0.3, red=0.5, far_red=0.1)
WALL_COLOURS = Wavebands(blue=0.7, green=0.8, red=0.9, far_red=0.94)
TINTS = {"blue": 0.875, "green": 1.0, "red": 1.125, "far_red": 1.175}
"""Of the wall by hand: each over 0.8, the mean of blue, green and red."""
IN_LAMP = {"blue": 0.2, "green": 0.3, "red": 0.5, "far_red": 0.1}


def coloured(what: Plan, lamps: Wavebands | None, linings: Wavebands | None) -> Plan:
    """The plan with lamps and linings of these colours."""
    return what.model_copy(
        update={
            "lamps": tuple(
                one.model_copy(update={"model": one.model.model_copy(update={"wavebands": lamps})})
                for one in what.lamps
            ),
            "linings": tuple(one.model_copy(update={"wavebands": linings}) for one in what.linings),
        }
    )


def a_tray_in_a_cabinet(
    share: float = 1.0, tint: float = 1.0, grown: CarriedCanopy | None = None
) -> Plan:
    """0.6 m wide, white round about; all of one waveband where it is told so, without colours."""
    white = (0.6 * tint, 0.2 * tint)
    what = plan(
        box(0.6, 0.6), 1.2, [lamp((0.3, 0.3), 0.6, body=panel(0.3, 0.2), ppf=100 * share)],
        walls=white, ceiling=white, canopy=0.1, canopy_height=0.2,
    )  # fmt: skip
    one = tray((0.25, 0.3), (0.3, 0.2), (0.2, 0.35), of=lining(white).key, canopy=grown)
    return on(what, one)


def test_a_tray_between_black_walls_gets_the_lamps_own_colours() -> None:
    what = plan(box(1.0, 0.8), 2.0, [lamp((0.4, 0.4), 1.0)], canopy_height=0.2)
    what = on(what, tray((0.5, 0.4), (0.3, 0.2), (0.2, 0.5)))
    known, bare = evaluate(coloured(what, LAMP_COLOURS, None)), evaluate(what)
    (top,), (plain,) = known.tops, bare.tops
    assert plain.bands is None
    assert (plain.figures.blue_share, bare.overall.eppfd) == (None, None)
    assert np.array_equal(top.ppfd, plain.ppfd, equal_nan=True)
    assert top.bands is not None
    for band, share in IN_LAMP.items():
        np.testing.assert_allclose(top.bands[band], share * plain.ppfd, rtol=1e-12)
    for figures in (top.figures, known.overall):
        assert figures.blue_share == pytest.approx(0.2)
        assert figures.red_share == pytest.approx(0.5)
        assert figures.eppfd == pytest.approx(1.1 * figures.mean)
        assert figures.far_red_share == pytest.approx(0.1 / 1.1)


def test_each_waveband_of_a_tray_is_that_of_a_room_that_has_it_alone() -> None:
    """Walls that return as much as of one waveband, by hand, and a lamp of its photons alone."""
    found = evaluate(coloured(a_tray_in_a_cabinet(), LAMP_COLOURS, WALL_COLOURS))
    (top,) = found.tops
    assert top.bands is not None
    for band, tint in TINTS.items():
        alone = evaluate(a_tray_in_a_cabinet(IN_LAMP[band], tint)).tops[0]
        np.testing.assert_allclose(top.bands[band], alone.ppfd, rtol=1e-6)
    np.testing.assert_allclose(
        sum(top.bands[band] for band in ("blue", "green", "red")), top.ppfd, rtol=1e-9
    )
    # All canopies together: each band weighted by area, far-red of the whole of 400-750 nm.
    both = (found, top)
    areas = [one.figures.canopy_area for one in both]
    means = [np.average([b.bands[k][b.inside].mean() for b in both if b.bands], weights=areas)
             for k in ("blue", "far_red")]  # fmt: skip
    assert found.overall.blue_share == pytest.approx(means[0] / found.overall.mean, rel=2e-3)
    assert found.overall.eppfd == pytest.approx(found.overall.mean + means[1], rel=2e-3)
    longer = found.plan.model_copy(update={"photoperiod_hours": 9.0})
    kept = of_plan(found, longer).tops[0]
    assert kept.bands is top.bands
    assert kept.figures.blue_share == top.figures.blue_share


def test_leaves_on_a_tray_have_colours_of_their_own() -> None:
    """A red and a far-red room by hand, whose tray returns as much as of that band."""
    green = Wavebands(blue=0.04, green=0.14, red=0.06, far_red=0.32)
    leafy = CarriedCanopy(reflectance=0.4, wavebands=green)
    found = evaluate(coloured(a_tray_in_a_cabinet(grown=leafy), LAMP_COLOURS, None)).tops[0]
    assert found.bands is not None
    # 0.4 over 400-700 nm; far-red would be four times as much, and no more than all comes back.
    for band, rho in (("blue", 0.2), ("green", 0.7), ("red", 0.3), ("far_red", 1.0)):
        own = CarriedCanopy(reflectance=rho)
        alone = evaluate(a_tray_in_a_cabinet(IN_LAMP[band], grown=own)).tops[0]
        np.testing.assert_allclose(found.bands[band], alone.ppfd, rtol=1e-6)


def test_fine_quality_knows_the_colours_of_a_tray() -> None:
    what = coloured(a_tray_in_a_cabinet(), LAMP_COLOURS, WALL_COLOURS)
    options = EstimateOptions(cells=(6, 6), quality=Quality.FINE)
    fine, plain = evaluate(what, options).tops[0], evaluate(what).tops[0]
    assert fine.bands is not None
    np.testing.assert_allclose(sum(fine.bands[b] for b in ("blue", "green", "red")), fine.ppfd)
    for key in ("blue_share", "red_share", "far_red_share"):
        expected = pytest.approx(getattr(plain.figures, key), rel=0.01)
        assert getattr(fine.figures, key) == expected


@pytest.mark.parametrize(("quality", "off"), [(Quality.PREVIEW, 0.03), (Quality.DEFAULT, 0.012)])
def test_the_tiers_of_the_example_are_as_bright_as_photons_say(
    quality: Quality, off: float
) -> None:
    """Against four million photons walked from box to box by a script that shares no code.

    Lambert surfaces, the 6 % gloss of the boards as a mirror; chance 0.15 % of each mean.
    """
    walked = (154.3, 161.2, 185.5)
    rack = load_plan(resource_path("demo/rack.plan.json"))
    found = evaluate(rack, EstimateOptions(quality=quality))
    means = [one.figures.mean for one in found.canopies]
    assert means == pytest.approx(walked, rel=off)
