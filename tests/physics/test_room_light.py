"""Light that comes in at the open door, against closed forms.

A room that is as bright in every direction sends the same flux density onto every part of the
door. In a black box what arrives is that times a configuration factor (Howell, 'A Catalog of
Radiation Heat Transfer Configuration Factors', C-14); in a box that absorbs nothing there is
equilibrium, and every level inside is as bright as the door (Kirchhoff's cavity).
"""

from __future__ import annotations

import math

import numpy as np
import pytest

from planner.estimate.calibrate_model import expected_readings
from planner.estimate.evaluate import recount
from planner.estimate.outlook import outlook
from planner.estimate.result import EstimateOptions, Quality
from planner.plan import edits
from planner.plan.plan import Plan
from planner.plan.space import CarriedCanopy, Obstacle
from planner.plan.survey import Meter, Survey
from planner.plan.wavebands import Wavebands
from planner.reports.content import sentence
from tests.physics.rooms import BLACK, Rho, box, lamp, light, plan
from tests.physics.test_view_factors import corner_edge_factor

WIDTH, DEPTH, HEIGHT = 0.8, 0.5, 1.0
PPFD = 20.0
WHITE = (1.0, 0.0)


def lit_by_the_room(rho: Rho, **parts: object) -> Plan:
    """A box whose near wall is an open door before a room of even light; no lamp hangs."""
    made = plan(box(WIDTH, DEPTH), HEIGHT, [], walls=rho, ceiling=rho, **parts)  # type: ignore[arg-type]
    return edits.with_space(made, door=0, door_open=True, room_light=PPFD)


def test_mean_in_a_black_box() -> None:
    """The factor from the canopy to the door; a number for one size is in the catalogue's form."""
    made = lit_by_the_room(BLACK)
    above = HEIGHT - made.canopy.height
    expected = PPFD * corner_edge_factor(DEPTH, above, WIDTH)
    found = light(made, (24, 24))
    assert found.figures.mean == pytest.approx(expected, rel=3e-3)
    assert found.figures.mean == pytest.approx(found.entered)


def test_each_place_in_a_black_box() -> None:
    """E = L ∫ cosα cosβ / d² over the door, summed up by many small pieces of it."""
    made = lit_by_the_room(BLACK)
    found = light(made, (8, 10))
    above = HEIGHT - made.canopy.height
    fine = 10
    x = (np.arange(8 * fine) + 0.5) * WIDTH / (8 * fine)
    y = (np.arange(10 * fine) + 0.5) * DEPTH / (10 * fine)
    u, z = (np.arange(400) + 0.5) * WIDTH / 400, (np.arange(400) + 0.5) * above / 400
    piece = WIDTH / 400 * above / 400
    expected = np.empty((y.size, x.size))
    for j, far in enumerate(y):
        square = (x[:, None, None] - u[:, None]) ** 2 + far**2 + z**2
        expected[j] = (far * z / square**2).sum(axis=(1, 2)) * piece * PPFD / math.pi
    means = expected.reshape(10, fine, 8, fine).mean(axis=(1, 3))
    # Beside the door itself the pieces are too coarse for the sum.
    assert found.ppfd[1:] == pytest.approx(means[1:], rel=2e-3)


@pytest.mark.parametrize("rho", [WHITE, (0.0, 1.0), (0.5, 0.5)])
def test_a_box_that_absorbs_nothing_is_as_bright_as_the_room(rho: Rho) -> None:
    made = lit_by_the_room(rho, floor=WHITE, closed=False)
    found = light(made, (12, 12))
    assert found.figures.mean == pytest.approx(PPFD, rel=4e-3)
    assert np.sqrt(((found.ppfd / PPFD - 1) ** 2).mean()) < 0.01
    door = next(share for share in found.shares if share.place.index == 0 and share.share > 0.5)
    assert door.share == pytest.approx(1.0, abs=2e-3)


@pytest.mark.parametrize("rho", [(0.8, 0.0), (0.3, 0.5)])
def test_the_count_of_photons_agrees(rho: Rho) -> None:
    made = lit_by_the_room(rho)
    found, counted = light(made, (16, 16)), recount(made)
    assert counted is not None
    assert abs(found.figures.mean * found.figures.canopy_area - counted.flux) < 4 * (
        counted.standard_error
    )
    assert abs(found.closure) < 1e-9


def test_lamps_and_room_add_up_and_the_day_has_the_hours_of_each() -> None:
    hung = plan(box(WIDTH, DEPTH), HEIGHT, [lamp((0.4, 0.25), 0.5)], walls=(0.7, 0.0))
    opened = edits.with_space(hung, door=0, door_open=True, room_hours=6.0)
    alone, both = light(opened), light(edits.with_space(opened, room_light=PPFD))
    dark = light(edits.changed(edits.with_space(opened, room_light=PPFD), lamps=()))
    assert both.ppfd == pytest.approx(alone.ppfd + dark.ppfd, rel=1e-2)
    assert both.entered == pytest.approx(dark.figures.mean, rel=5e-3)
    # Micromoles a second, over an hour, in moles: 3600 / 10⁶.
    expected = 0.0036 * (16 * alone.figures.mean + 6 * dark.figures.mean)
    assert both.figures.dli == pytest.approx(expected, rel=3e-3)
    # What the lamps send counts as use of the lamps, the room's light does not.
    assert both.figures.utilisation == pytest.approx(alone.figures.utilisation, rel=3e-3)


def test_a_meter_reads_no_less_of_it_than_its_response_says() -> None:
    """Over an open canopy the door reaches below the sensor: that part does not fall on it."""
    made = edits.set_canopy_height(lit_by_the_room(BLACK, closed=False), 0.5)
    made = edits.changed(made, lamps=(lamp((0.4, 0.25), 0.4, ppf=1e-3),))
    meter = Meter(response_angles_deg=(0, 45, 90), response_relative=(1, 0.9, 0.6))
    holes = ((0.2, 0.1), (0.4, 0.25), (0.6, 0.45))
    survey = Survey(key="holes", name="Holes", points=holes, meter=meter)
    ideal = expected_readings(made, edits.changed(survey, meter=Meter()))
    # A meter without faults reads what the map says, the light of the room with it.
    options = EstimateOptions()
    assert ideal == pytest.approx(light(made, options.cells).map.at(np.array(holes)), rel=1e-6)
    share = expected_readings(made, survey) / ideal
    assert ((share > 0.6) & (share < 1)).all()
    # Light that comes from the side: by hand, of that from 45 degrees and lower at most 0.9.
    assert share[2] < 0.9


def test_doubt_of_a_lamps_flux_is_doubt_of_its_own_light() -> None:
    hung = plan(box(WIDTH, DEPTH), HEIGHT, [lamp((0.4, 0.25), 0.5, ppf=10.0)], walls=(0.7, 0.0))
    opened = edits.with_space(hung, door=0, door_open=True)

    def doubt(what: Plan) -> float:
        found = outlook(what).uncertainty
        assert found is not None
        return sum(part.mean for part in found.parts if part.quantity == "photon flux")

    assert doubt(opened) > 0
    assert doubt(edits.with_space(opened, room_light=PPFD)) == pytest.approx(
        doubt(opened), rel=0.01
    )


def test_it_is_told() -> None:
    made = lit_by_the_room((0.5, 0.0))
    assert "; 12 h of room light give" in sentence(light(made))
    hung = edits.changed(made, lamps=(lamp((0.4, 0.25), 0.5),))
    assert "16 h of lamps and 12 h of room light give" in sentence(light(hung))
    shut = edits.with_space(made, door_open=False)
    assert sentence(light(shut)) == "No lamp hangs in this space yet, so it is dark."


def test_a_shut_door_and_open_air_let_none_in() -> None:
    made = lit_by_the_room((0.5, 0.0))
    shut = edits.with_space(made, door_open=False)
    assert light(shut).figures.mean == 0
    assert light(shut).entered == 0
    assert light(edits.without_walls(made)).figures.mean == 0


def test_fine_quality_and_a_carried_canopy_count_it_too() -> None:
    tray = Obstacle(x=0.4, y=0.3, underside=0.3, length=0.3, width=0.2, thickness=0.1,
                    canopy=CarriedCanopy())  # fmt: skip
    made = edits.changed(lit_by_the_room((0.6, 0.0)), obstacles=(tray,))
    usual, fine = light(made, (12, 12)), light(made, (12, 12), quality=Quality.FINE)
    assert usual.tops[0].entered == pytest.approx(usual.tops[0].figures.mean)
    assert fine.tops[0].figures.dli == pytest.approx(usual.tops[0].figures.dli, rel=0.02)
    assert fine.entered == pytest.approx(fine.figures.mean)
    assert sum(share.share for share in fine.shares) == pytest.approx(1.0, abs=1e-6)


def test_where_colours_are_counted_the_room_has_those_of_daylight() -> None:
    """A lamp of red alone, nearly dark, and the door: what arrives is daylight, whatever the walls.

    Of D65 30.46 % of the photons of PPFD are blue, and 16.24 % as many are far-red (its table).
    """
    red = Wavebands(blue=0.0, green=0.0, red=1.0)
    faint = lamp((0.4, 0.25), 0.5)
    faint = edits.changed(
        faint, output_percent=0.01, model=edits.changed(faint.model, wavebands=red)
    )
    for walls in (BLACK, (0.7, 0.0)):
        made = plan(box(WIDTH, DEPTH), HEIGHT, [faint], walls=walls)
        made = edits.with_space(made, door=0, door_open=True, room_light=PPFD)
        figures = light(made).figures
        assert figures.blue_share == pytest.approx(0.3046, abs=0.01)
        assert figures.eppfd == pytest.approx(1.1624 * figures.mean, rel=0.01)
    # A lamp whose colour nobody knows leaves all unknown.
    grey = edits.changed(made, lamps=(*made.lamps, lamp((0.2, 0.2), 0.5)))
    assert light(grey).figures.eppfd is None
