"""Tilted lamps where plans and surveys are reckoned with: readings, heights in doubt, ladders."""

from __future__ import annotations

import math

import numpy as np
import pytest

from planner.estimate.calibrate_model import Parameter, Quantity, Run, SurveyModel
from planner.estimate.calibrate_parameters import _curve_angles
from planner.estimate.evaluate import Cache
from planner.estimate.ladder import ladder, rungs_between
from planner.estimate.result import EstimateOptions, Quality
from planner.plan import edits
from planner.plan.lining import OPENING
from planner.plan.survey import Meter, Reading, Survey
from planner.units import LengthUnit
from tests.physics.rooms import box, lamp, panel, plan

TILT = 30.0
ANGLES, RELATIVE = (0.0, 30.0, 60.0, 90.0), (1.0, 0.97, 0.88, 0.6)


def surveyed(meter: Meter) -> SurveyModel:
    """25 holes under a point lamp in a black room, tilted towards its y."""
    hung = edits.changed(lamp((0.5, 0.3), 0.5), tilt_deg=TILT)
    # Between cells of a 50 x 40 map.
    points = tuple((0.11 + 0.2 * k, 0.11 + 0.14 * j) for j in range(5) for k in range(5))
    survey = Survey(
        key="evening",
        points=points,
        readings=tuple(Reading(hole=k + 1, value=10.0) for k in range(25)),
        meter=meter,
        lining=OPENING,
    )
    made = edits.changed(plan(box(1.0, 0.8), 1.0, [hung]), surveys=(survey,))
    options = EstimateOptions(cells=(50, 40), quality=Quality.DEFAULT)
    return SurveyModel(survey, made, options, Cache())


def closed_form(points: np.ndarray, meter: bool) -> np.ndarray:
    """I0 cosθ cosα / d², times what the meter makes of the angle α; I0 = Φ/π."""
    x, y = points[:, 0] - 0.5, points[:, 1] - 0.3
    distance = np.sqrt(x**2 + y**2 + 0.25)
    t = math.radians(TILT)
    from_axis = np.maximum((math.sin(t) * y + math.cos(t) * 0.5) / distance, 0.0)
    incidence = 0.5 / distance
    read = np.interp(np.degrees(np.arccos(incidence)), ANGLES, RELATIVE) if meter else 1.0
    found: np.ndarray = 100 / math.pi * from_axis * incidence / distance**2 * read
    return found


@pytest.mark.parametrize("known", [False, True])
def test_what_a_meter_reads_under_a_tilted_lamp(known: bool) -> None:
    meter = Meter(
        response_angles_deg=ANGLES if known else (), response_relative=RELATIVE if known else ()
    )
    model = surveyed(meter)
    found = model.light("lamp", {}, Run(Quality.DEFAULT))
    expected = closed_form(model.points, known)
    assert np.abs(found - expected).max() < 5e-3 * expected.max()


def test_a_free_curve_counts_angles_from_the_axis() -> None:
    """The flattest hole seen is that most behind: in steps of its own no farther than 90°."""
    model = surveyed(Meter())
    angles = _curve_angles([model])
    x, y = model.points[:, 0] - 0.5, model.points[:, 1] - 0.3
    t = math.radians(TILT)
    cosine = (math.sin(t) * y + math.cos(t) * 0.5) / np.sqrt(x**2 + y**2 + 0.25)
    flattest = math.degrees(math.acos(float(cosine.min())))
    step = angles[1] - angles[0]
    assert angles[-1] <= flattest < angles[-1] + step


def test_a_height_in_doubt_keeps_lamp_and_housing_together_and_inside() -> None:
    hung = lamp((0.5, 0.4), 0.5, body=panel(0.3, 0.2))
    model = edits.changed(hung.model, housing_height=0.06)
    hung = edits.changed(hung, model=model, tilt_deg=TILT)
    survey = Survey(
        key="evening", name="Evening", points=((0.5, 0.4),), readings=(Reading(hole=1, value=10.0),)
    )
    made = edits.changed(plan(box(1.0, 0.8), 0.7, [hung]), surveys=(survey,))
    found = SurveyModel(survey, made, EstimateOptions(), Cache())
    for up in (-0.6, -0.02, 0.0, 0.03, 0.4):
        values = {Parameter(Quantity.HEIGHT, "", 0.0, -1.0, 1.0, 0.01): up}
        (one,), room = found._lamp_optics(values), found._room(values)
        (housing,) = room.boxes
        assert (housing.x, housing.y, housing.z0) == pytest.approx(one.centre)
        assert housing.z1 - housing.z0 == pytest.approx(0.06)
        low, high = housing.lies
        assert low > room.z_map
        assert high <= room.z1 + 1e-9
        assert (one.centre[2] == pytest.approx(0.5 + up)) == (abs(up) < 0.1)


def test_a_ladder_of_a_tilted_lamp() -> None:
    hung = edits.changed(lamp((0.5, 0.4), 0.4, body=panel(0.3, 0.2)), tilt_deg=TILT)
    made = plan(box(1.0, 0.8), 1.0, [hung])
    rungs = rungs_between(made, (0,), LengthUnit.CM)
    # Half the width, 10 cm, times sin 30° under and over it.
    assert rungs[0] >= 0.06 - 1e-9
    assert rungs[-1] <= 0.95 + 1e-9
    asked = ladder(made, (0,), (rungs[0], rungs[-1]))
    assert asked.fits(made)
    assert asked.fits(edits.change_lamp(made, 0, hanging_height=0.5))
    assert not asked.fits(edits.change_lamp(made, 0, tilt_deg=-TILT))
