"""Lamps and linings learned from synthetic surveys that the core had no part in."""

from __future__ import annotations

import datetime as dt
from functools import cache

import numpy as np
import pytest

from planner.estimate.calibrate import calibrate, leave_one_out
from planner.estimate.calibrate_model import Quantity
from planner.estimate.calibrate_parameters import Asked, CalibrationError, Freed
from planner.estimate.calibrate_result import Calibration
from planner.estimate.evaluate import Cancelled
from planner.estimate.result import EstimateOptions, Quality
from planner.plan.edits import changed
from planner.plan.lamp import CosineProfile
from planner.plan.survey import Doubts, Meter
from tests.unit.estimate.calibration_scenes import (
    METER,
    Case,
    case,
    direct,
    lined,
    mistaken,
    open_air,
    read,
)

DATE = dt.date(2026, 3, 1)
CABINET = "s01_cabinet_white"


def wall_of(what: Case) -> str:
    """The lining of the last wall (x = 0)."""
    return what.plan.walls[3].bands[0].lining


@cache
def fitted(name: str, seed: int = 3, gain: float = 1.03) -> Calibration:
    what, rng = case(name), np.random.default_rng(seed)
    wall = wall_of(what)
    surveys = [
        open_air(what, read(what.open_air, rng, gain, METER.noise)),
        lined(what, read(what.lined, rng, gain, METER.noise)),
    ]
    return calibrate(
        Asked(
            mistaken(what.plan, wall, 0.7),
            surveys,
            Freed(reflectance=(wall,)),
            options=EstimateOptions(cells=what.cells),
        ),
        date=DATE,
    )


@pytest.mark.parametrize(
    "name",
    [
        CABINET,
        "s08_all_walls_different",
        pytest.param("s06_two_lamps_heights", marks=pytest.mark.slow),
    ],
)
def test_flux_profile_and_lining_are_recovered(name: str) -> None:
    what, found = case(name), fitted(name)
    for number, lamp in enumerate(what.plan.lamps):
        flux = found.value(Quantity.FLUX, f"lamp-{number}")
        exponent = found.value(Quantity.EXPONENT, f"lamp-{number}")
        assert isinstance(lamp.model.profile, CosineProfile)
        assert abs(flux.value - lamp.model.ppf) < 3 * flux.standard_error
        assert abs(exponent.value - lamp.model.profile.exponent) < 3 * exponent.standard_error
        assert exponent.standard_error < 0.2
    rho = found.value(Quantity.REFLECTANCE)
    assert abs(rho.value - what.plan.lining(wall_of(what)).reflectance) < 3 * rho.standard_error
    # Heights, board, output and drift are doubted too: 1 cm of 35 alone is 6 % of the light.
    assert rho.standard_error < 0.05
    for survey in found.surveys:
        assert survey.rms_after < 0.03 < survey.rms_before


def test_the_gain_spoils_the_flux_and_hardly_the_lining() -> None:
    """A meter that reads 8 % more: the lamp looks brighter, the lining stays what it is."""
    plain, bright = fitted(CABINET), fitted(CABINET, gain=1.03 * 1.08)
    flux = [found.value(Quantity.FLUX).value for found in (plain, bright)]
    rho = [found.value(Quantity.REFLECTANCE) for found in (plain, bright)]
    assert flux[1] / flux[0] == pytest.approx(1.08, abs=0.01)
    assert rho[1].value == pytest.approx(rho[0].value, abs=0.1 * rho[0].standard_error)
    # what is said of the flux knows of the gain: ± 5 % taken as evenly likely
    error = plain.value(Quantity.FLUX)
    assert error.standard_error / error.value >= 0.05 / np.sqrt(3) * 0.99


def test_calibrated_values_enter_the_library_with_date_and_error() -> None:
    found = fitted(CABINET)
    lamp, lining = found.lamps[0], found.linings[0]
    assert lamp.name == "Lamp (calibrated 2026-03-01)"
    assert lamp.key == "lamp-0-20260301"
    flux = found.value(Quantity.FLUX)
    assert lamp.ppf == flux.value
    assert lamp.ppf_uncertainty == pytest.approx(np.sqrt(3) * flux.standard_error / flux.value)
    # The beam's half-width is what √3 standard errors of the exponent make of the angle.
    exponent = found.value(Quantity.EXPONENT)
    ends = exponent.value + np.sqrt(3) * exponent.standard_error * np.array([-1, 1])
    wide, narrow = 2 * np.degrees(np.arccos(0.5 ** (1 / ends)))
    assert lamp.beam_uncertainty_deg == pytest.approx((wide - narrow) / 2)
    for entry in (lamp, lining):
        assert "alibrated 2026-03-01 from 128 readings of 'Open air', 'Lined'" in entry.source
        assert "standard error" in entry.source
    rho = found.value(Quantity.REFLECTANCE)
    assert lining.reflectance == rho.value
    # the plan's uncertainty takes half the range over √3 for the standard uncertainty
    half = (lining.high - lining.low) / 2
    assert half / np.sqrt(3) == pytest.approx(rho.standard_error)
    assert found.plan.lamps[0].model.ppf == flux.value
    assert found.plan.lining(rho.of).reflectance == rho.value


@pytest.mark.slow
def test_a_perfect_mirror_is_at_its_bound_and_that_is_said() -> None:
    found = fitted("s12_perfect_mirror")
    rho = found.value(Quantity.REFLECTANCE)
    assert rho.value == pytest.approx(1.0, abs=0.02)
    if rho.value > 0.998:
        assert rho.at_bound
        assert "lies at its bound 1" in rho.sentence


def test_what_readings_cannot_tell_is_said() -> None:
    """Four holes on a circle around the lamp all see it at one angle: no exponent from that."""
    what, rng = case(CABINET), np.random.default_rng(1)
    centre = np.array([[0.2, 0.2]])
    ring = centre + 0.1 * np.array([[1, 0], [-1, 0], [0, 1], [0, -1]])
    scene = {
        "lamps": [{"cx": 0.2, "cy": 0.2, "z": 0.7, "lx": 0.2, "ly": 0.2, "ppf": 60}],
        "canopy": {"z": 0.15},
    }
    survey = changed(
        open_air(what, ()),
        points=tuple((float(x), float(y)) for x, y in ring),
        readings=read(direct(scene, ring), rng, 1.0, METER.noise),
    )
    plan = mistaken(what.plan, None, 0.0)
    found = calibrate(Asked(plan, [survey], options=EstimateOptions((16, 16))), date=DATE)
    exponent = found.value(Quantity.EXPONENT)
    assert not exponent.identifiable
    assert "not identifiable" in exponent.sentence
    assert any("go together" in sentence for sentence in found.sentences)


def test_a_lining_alone_with_a_lamp_known_before() -> None:
    what, rng = case(CABINET), np.random.default_rng(5)
    survey = lined(what, read(what.lined, rng, 1.0, METER.noise))
    plan = mistaken(what.plan, wall_of(what), 0.6)
    known = tuple(
        lamp.model_copy(update={"model": old.model.model_copy(update={"ppf_uncertainty": 0.02})})
        for lamp, old in zip(plan.lamps, what.plan.lamps, strict=True)
    )
    plan = plan.model_copy(update={"lamps": known})
    found = calibrate(Asked(plan, [survey], options=EstimateOptions(what.cells)), date=DATE)
    rho = found.value(Quantity.REFLECTANCE)
    assert [f.quantity for f in found.fitted] == [Quantity.REFLECTANCE]
    assert abs(rho.value - 0.85) < 3 * rho.standard_error
    # the meter's gain and the lamp's flux limit it, not the noise of 64 readings
    assert rho.standard_error > 0.005


def test_a_freed_specular_share_is_found_or_said_to_be_unknown() -> None:
    what, rng = case("s02_tent60_film"), np.random.default_rng(5)
    wall = wall_of(what)
    survey = lined(what, read(what.lined, rng, 1.0, METER.noise))
    found = calibrate(
        Asked(
            what.plan,
            [survey],
            Freed(flux=False, exponent=False, reflectance=(wall,), specular=(wall,)),
            options=EstimateOptions(what.cells),
        ),
        date=DATE,
    )
    share, lining = found.value(Quantity.SPECULAR), what.plan.lining(wall)
    assert abs(share.value - lining.specular_share) < 3 * share.standard_error + 0.05
    if share.standard_error > 0.2:
        assert "not identifiable" in share.sentence
    assert found.correlation.shape == (2, 2)


def test_a_meter_with_a_cosine_error_is_allowed_for() -> None:
    """Flat light read 12 % low at 75°: ignoring it bends the profile, knowing it does not."""
    what, rng = case("s08_all_walls_different"), np.random.default_rng(2)
    angles, relative = (0.0, 30.0, 60.0, 75.0, 90.0), (1.0, 0.99, 0.95, 0.88, 0.6)

    def response(cosine: np.ndarray) -> np.ndarray:
        read_as: np.ndarray = np.interp(np.degrees(np.arccos(cosine)), angles, relative)
        return read_as

    scene = {
        "lamps": [{"cx": 0.35, "cy": 0.4, "z": 0.6, "lx": 0.35, "ly": 0.25, "ppf": 320, "m": 1.2}],
        "canopy": {"z": 0.25},
    }
    readings = read(direct(scene, np.array(what.points), response), rng, 1.0, 0.005)
    plan = mistaken(what.plan, None, 0.0)
    low = tuple(lamp.model_copy(update={"hanging_height": 0.35}) for lamp in plan.lamps)
    plan = plan.model_copy(update={"lamps": low})
    found = []
    for known in (True, False):
        meter = Meter(
            noise=0.005,
            gain_uncertainty=0.001,
            response_angles_deg=angles if known else (),
            response_relative=relative if known else (),
        )
        exact = Doubts(hanging_height=0.0, sensor_height=0.0)
        survey = changed(open_air(what, readings, meter), doubts=exact)
        found.append(calibrate(Asked(plan, [survey], options=EstimateOptions((24, 20))), date=DATE))
    aware, naive = (f.value(Quantity.EXPONENT) for f in found)
    assert abs(aware.value - 1.2) < 3 * aware.standard_error
    assert naive.value > aware.value + 5 * aware.standard_error


def test_a_shifted_lamp_is_found() -> None:
    what, rng = case("s08_all_walls_different"), np.random.default_rng(2)
    survey = open_air(what, read(what.open_air, rng, 1.0, METER.noise))
    plan = mistaken(what.plan, None, 0.0)
    moved = tuple(lamp.model_copy(update={"x": 0.39, "y": 0.37}) for lamp in plan.lamps)
    plan = plan.model_copy(update={"lamps": moved})
    found = calibrate(
        Asked(plan, [survey], Freed(shift=True), options=EstimateOptions(what.cells)), date=DATE
    )
    for quantity, truth in ((Quantity.SHIFT_X, -0.04), (Quantity.SHIFT_Y, 0.03)):
        shift = found.value(quantity)
        assert abs(shift.value - truth) < 3 * shift.standard_error
        assert shift.standard_error < 0.01
    assert found.plan.lamps[0].x == pytest.approx(0.35, abs=0.02)


def test_a_free_polar_curve_follows_the_true_profile() -> None:
    what, rng = case("s08_all_walls_different"), np.random.default_rng(4)
    scene = {
        "lamps": [{"cx": 0.35, "cy": 0.4, "z": 0.6, "lx": 0.35, "ly": 0.25, "ppf": 320, "m": 2.0}],
        "canopy": {"z": 0.25},
    }
    readings = read(direct(scene, np.array(what.points)), rng, 1.0, 0.01)
    plan = mistaken(what.plan, None, 0.0)
    low = tuple(lamp.model_copy(update={"hanging_height": 0.35}) for lamp in plan.lamps)
    plan = plan.model_copy(update={"lamps": low})
    found = calibrate(
        Asked(
            plan,
            [open_air(what, readings, Meter(noise=0.01))],
            Freed(curve=True),
            options=EstimateOptions((24, 20)),
        ),
        date=DATE,
    )
    profile = found.plan.lamps[0].model.profile
    assert profile.kind == "table"
    relative = np.interp([15.0, 30.0, 45.0], profile.angles_deg, profile.relative)
    np.testing.assert_allclose(relative, np.cos(np.radians([15.0, 30.0, 45.0])) ** 2, atol=0.06)
    assert list(profile.relative) == sorted(profile.relative, reverse=True)
    assert any("No hole sees the lamp flatter" in sentence for sentence in found.sentences)


def test_a_free_curve_needs_enough_holes_that_see_the_lamp_flat() -> None:
    what = case(CABINET)
    survey = open_air(what, read(what.open_air, np.random.default_rng(1), 1.0, 0.02))
    with pytest.raises(CalibrationError, match="free polar curve needs"):
        calibrate(Asked(what.plan, [survey], Freed(curve=True)))


def test_leaving_a_survey_out_shows_how_well_the_others_predict_it() -> None:
    what, rng = case(CABINET), np.random.default_rng(6)
    first, second = (
        changed(lined(what, read(what.lined, rng, 1.02, METER.noise)), key=key, name=key)
        for key in ("one", "two")
    )
    air = open_air(what, read(what.open_air, rng, 1.02, METER.noise))
    wall = wall_of(what)
    rows = leave_one_out(
        Asked(
            mistaken(what.plan, wall, 0.7),
            [air, first, second],
            Freed(reflectance=(wall,)),
            options=EstimateOptions(what.cells, Quality.PREVIEW),
        )
    )
    assert [row.key for row in rows] == ["open-air", "one", "two"]
    for row in rows[1:]:
        assert row.ratio == pytest.approx(1.0, abs=0.02)
        assert row.scatter == pytest.approx(METER.noise, abs=0.01)


def test_a_lining_read_once_is_predicted_with_its_listed_reflectance() -> None:
    what, rng = case(CABINET), np.random.default_rng(6)
    wall = what.plan.lining(wall_of(what))
    air = open_air(what, read(what.open_air, rng, 1.02, METER.noise))
    for listed in (wall.reflectance, wall.reflectance - 0.3):
        lining = wall.model_copy(update={"reflectance": listed, "low": listed, "high": listed})
        survey = lined(what, read(what.lined, np.random.default_rng(6), 1.02, METER.noise))
        _, row = leave_one_out(
            Asked(
                what.plan,
                [air, changed(survey, lining=lining)],
                Freed(exponent=False, reflectance=(wall.key,)),
                options=EstimateOptions(what.cells, Quality.PREVIEW),
            )
        )
        assert row.ratio is not None
        assert f"the listed reflectance of '{wall.name}', {100 * listed:.0f} %" in row.sentence
        if listed == wall.reflectance:
            assert row.ratio == pytest.approx(1.0, abs=0.03)
        else:
            assert row.ratio > 1.1, "a lining listed far too dark lets read far more"


def test_progress_rises_and_cancelling_stops() -> None:
    what = case(CABINET)
    survey = open_air(what, read(what.open_air, np.random.default_rng(1), 1.0, 0.02))
    told: list[float] = []
    options = EstimateOptions(what.cells, Quality.PREVIEW)
    calibrate(Asked(what.plan, [survey], options=options, progress=told.append))
    assert told == sorted(told)
    assert told[-1] == 1.0
    with pytest.raises(Cancelled):
        calibrate(Asked(what.plan, [survey], options=options, cancelled=lambda: True))


def test_too_little_is_refused_in_a_sentence() -> None:
    what = case(CABINET)
    with pytest.raises(CalibrationError, match="no readings with light"):
        calibrate(Asked(what.plan, [open_air(what, ())]))
    one = open_air(what, read(what.open_air[:1], np.random.default_rng(1), 1.0, 0.02))
    with pytest.raises(CalibrationError, match="1 readings cannot tell 2 unknowns"):
        calibrate(Asked(what.plan, [one]))
    with pytest.raises(CalibrationError, match="no survey was read with the lining"):
        calibrate(Asked(what.plan, [one], Freed(reflectance=("unheard-of",))))
    with pytest.raises(CalibrationError, match="at least two surveys"):
        leave_one_out(Asked(what.plan, [one]))
