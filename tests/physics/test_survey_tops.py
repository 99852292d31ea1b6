"""Surveys read on a canopy that an obstacle carries, against the distance law and each other."""

from __future__ import annotations

import datetime as dt
import math

import numpy as np
import pytest

from planner.estimate.calibrate import calibrate
from planner.estimate.calibrate_model import Quantity, expected_readings
from planner.estimate.calibrate_parameters import Asked, Freed
from planner.estimate.evaluate import evaluate
from planner.estimate.result import EstimateOptions
from planner.plan.edits import changed, judge_by
from planner.plan.place import OWN
from planner.plan.plan import Plan
from planner.plan.space import CarriedCanopy
from planner.plan.survey import Board, Meter, Reading, Survey
from planner.plan.survey_edits import as_surveyed, lay_board, top_read
from planner.survey.comparison import compare, ranking, ratios_by_hole
from tests.physics.rooms import box, lamp, plan
from tests.physics.test_tops import on, tray

LAMP, FACE, TOP = (0.4, 0.4), 1.2, 0.5
HOLES = tuple((0.38 + 0.08 * i, 0.34 + 0.06 * j) for j in range(3) for i in range(4))
FINE = EstimateOptions(cells=(100, 80))


def black_room() -> Plan:
    """A point lamp 1.0 m over the plan's canopy at 0.2 m, 0.7 m over a tray's."""
    what = plan(box(1.0, 0.8), 2.0, [lamp(LAMP, FACE - 0.2)], canopy_height=0.2)
    return on(what, tray((0.5, 0.4), (0.3, 0.2), (0.2, TOP)))


def survey(**parts: object) -> Survey:
    return changed(Survey(key="up", name="Up", points=HOLES, on_top=TOP), **parts)


def law(points: tuple[tuple[float, float], ...], level: float, ppf: float = 100.0) -> np.ndarray:
    """CIE S 017, 17-25-104, of a cosine beam: E = Φ/π h²/d⁴."""
    h = FACE - level
    square = np.array([(x - LAMP[0]) ** 2 + (y - LAMP[1]) ** 2 + h * h for x, y in points])
    return ppf / math.pi * h * h / square**2


@pytest.mark.parametrize("sensor", [0.0, 0.05])
def test_a_survey_on_a_tray_reads_what_the_distance_law_says_there(sensor: float) -> None:
    read = survey(meter=Meter(sensor_height=sensor))
    found = expected_readings(black_room(), read, FINE)
    assert found == pytest.approx(law(HOLES, TOP + sensor), rel=2e-3)


def test_a_response_by_angle_is_taken_from_the_level_read() -> None:
    # c(θ) = 1 - θ/90°, alone over the light straight from the lamp.
    meter = Meter(response_angles_deg=(0.0, 90.0), response_relative=(1.0, 0.0))
    found = expected_readings(black_room(), survey(meter=meter), FINE)
    away = np.array([math.hypot(x - LAMP[0], y - LAMP[1]) for x, y in HOLES])
    response = 1 - np.degrees(np.arctan(away / (FACE - TOP))) / 90
    assert found == pytest.approx(law(HOLES, TOP) * response, rel=2e-3)


def test_a_board_lies_on_the_tray_alone_and_returns_what_it_is_made_of() -> None:
    what = black_room()
    found = as_surveyed(what, survey(board_reflectance=0.8))
    assert found.obstacles[0].canopy is not None
    assert found.obstacles[0].canopy.reflectance == 0.8
    assert found.canopy == what.canopy


def test_a_board_of_ones_own_number_begins_as_the_canopy_it_lies_on() -> None:
    what = on(
        black_room(),
        tray((0.5, 0.4), (0.3, 0.2), (0.2, TOP), canopy=CarriedCanopy(reflectance=0.3)),
    )
    for top, expected in ((TOP, 0.3), (None, what.canopy.reflectance)):
        laid = lay_board(changed(what, surveys=(survey(on_top=top),)), 0, Board.OWN)
        assert laid.surveys[0].board_reflectance == expected


def test_a_survey_of_the_plans_own_canopy_stays_so_however_the_plan_is_judged() -> None:
    led = judge_by(black_room(), 0)
    assert evaluate(as_surveyed(led, survey(on_top=None))).place == OWN


def test_the_nearest_top_under_all_holes_is_the_one_read() -> None:
    what = black_room()
    lower = tray((0.5, 0.4), (0.3, 0.2), (0.3, TOP - 0.015))
    aside = tray((0.85, 0.4), (0.2, 0.2), (0.2, TOP))
    assert top_read(on(what, aside, *what.obstacles), survey()) == 1
    assert top_read(on(what, lower, aside), survey()) == 0
    bare = changed(what.obstacles[0], canopy=None)
    for others, words in (((aside,), "beside"), ((bare,), "no obstacle"), ((), "no obstacle")):
        with pytest.raises(ValueError, match=words):
            top_read(on(what, *others), survey())
    with pytest.raises(ValueError, match="52"):
        top_read(what, survey(on_top=0.521))


def test_surveys_of_two_canopies_give_back_one_flux() -> None:
    # Readings by the closed form, of a lamp that gives 80 and not 100.
    own = ((0.2, 0.15), (0.4, 0.15), (0.6, 0.15), (0.2, 0.65), (0.4, 0.65), (0.8, 0.7))
    surveys = []
    for key, points, top in (("up", HOLES, TOP), ("down", own, None)):
        values = law(points, TOP if top else 0.2, 80.0)
        readings = tuple(Reading(hole=k + 1, value=float(v)) for k, v in enumerate(values))
        surveys.append(survey(key=key, name=key, points=points, on_top=top, readings=readings))
    asked = Asked(black_room(), surveys, Freed(exponent=False), options=FINE)
    found = calibrate(asked, date=dt.date(2026, 3, 1)).value(Quantity.FLUX)
    assert found.value == pytest.approx(80.0, rel=2e-3)


def test_holes_of_two_canopies_are_never_compared_as_one() -> None:
    readings = tuple(Reading(hole=k + 1, value=100.0) for k in range(len(HOLES)))
    up, down = survey(readings=readings), survey(key="down", readings=readings, on_top=None)
    again = survey(key="again", readings=readings, on_top=TOP + 0.01)
    assert compare(up, down) is None
    assert compare(up, again) is not None
    assert not ratios_by_hole(up, down)
    assert len(ranking([up, down]).left_out) == 1
    assert len(ranking([up, again]).rows) == 2


def test_a_tray_that_no_light_reaches_says_so_and_reads_nothing_else() -> None:
    under = on(black_room(), tray((0.5, 0.4), (0.3, 0.2), (0.0, 0.1)))
    with pytest.raises(ValueError, match="no light"):
        expected_readings(under, survey(on_top=0.1), FINE)
