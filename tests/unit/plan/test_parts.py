"""Lamps, linings, canopy and target: bounds, derived values, and messages."""

from __future__ import annotations

import itertools
import math
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pydantic import ValidationError

from planner.plan.lamp import (
    BarsBody,
    CosineProfile,
    Lamp,
    LampModel,
    PanelBody,
    PointBody,
    TableProfile,
)
from planner.plan.lining import OPENING, Band, Lining, WallCover
from planner.plan.space import Canopy
from planner.plan.target import DliTarget, PpfdTarget


def _model(**parts: Any) -> LampModel:
    given = {"key": "a", "name": "A", "body": PointBody(), "ppf": 100.0, "watts": 50.0}
    return LampModel.model_validate(given | parts)


def _lamp(**parts: Any) -> Lamp:
    given = {"model": _model(), "x": 0.0, "y": 0.0, "hanging_height": 0.3}
    return Lamp.model_validate(given | parts)


# -- lamps ------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("beam_angle", "exponent"),
    # m = ln ½ / ln cos(β/2); 120° gives 1 exactly, 90° gives 2 exactly
    [(120.0, 1.0), (90.0, 2.0), (60.0, math.log(0.5) / math.log(math.sqrt(3) / 2))],
)
def test_beam_angle_and_exponent(beam_angle: float, exponent: float) -> None:
    profile = CosineProfile.from_beam_angle(beam_angle)
    assert profile.exponent == pytest.approx(exponent)
    assert CosineProfile(exponent=exponent).beam_angle_deg == pytest.approx(beam_angle)


def test_an_even_half_space_has_a_beam_of_180_degrees() -> None:
    assert CosineProfile(exponent=0).beam_angle_deg == 180


@pytest.mark.parametrize(
    ("angles", "relative", "words"),
    [
        ((0, 90), (1, 0.5, 0), "2 angles but 3 intensities"),
        ((0, 90, 90), (1, 1, 0), "must rise"),
        ((0, 90), (0, 0), "emits nothing"),
        ((0, 190), (1, 0), "less than or equal to 180"),
        ((0, 90), (1, -1), "greater than or equal to 0"),
        ((0,), (1,), "at least 2"),
    ],
)
def test_a_table_profile_that_makes_no_sense_is_explained(
    angles: Any, relative: Any, words: str
) -> None:
    with pytest.raises(ValidationError, match=words):
        TableProfile(angles_deg=angles, relative=relative)


def test_no_lamp_beats_the_energy_of_its_photons() -> None:
    # one mole at 700 nm carries N_A h c / 700 nm = 0.17089 MJ, so a joule is 5.85 µmol at most
    most = 700e-9 / (6.02214076e23 * 6.62607015e-34 * 299792458) * 1e6
    assert _model(ppf=most * 50 * 0.999).ppf > 0
    with pytest.raises(ValidationError, match="even a perfect lamp"):
        _model(ppf=most * 50 * 1.001)


@pytest.mark.parametrize("parts", [{"ppf": 0}, {"ppf": -1}, {"watts": 0}, {"ppf": math.nan}])
def test_a_lamp_needs_light_and_power(parts: dict[str, float]) -> None:
    with pytest.raises(ValidationError):
        _model(**parts)


def test_dimming_scales_light_and_power() -> None:
    lamp = _lamp(output_percent=40)
    assert lamp.ppf == pytest.approx(40)
    assert lamp.watts == pytest.approx(20)


@pytest.mark.parametrize(
    "parts", [{"output_percent": 101}, {"output_percent": -1}, {"hanging_height": 0}, {"x": 11}]
)
def test_a_lamp_hangs_within_bounds(parts: dict[str, float]) -> None:
    with pytest.raises(ValidationError):
        _lamp(**parts)


@given(rotation=st.floats(-360, 360), length=st.floats(0.01, 3), width=st.floats(0.01, 3))
def test_turning_keeps_the_size(rotation: float, length: float, width: float) -> None:
    model = _model(body=PanelBody(length=length, width=width))
    a, b, c, d = _lamp(model=model, x=1, y=2, rotation_deg=rotation).outline()
    assert math.dist(a, b) == pytest.approx(length)
    assert math.dist(b, c) == pytest.approx(width)
    assert math.dist(a, c) == pytest.approx(math.hypot(length, width))
    assert ((a[0] + c[0]) / 2, (a[1] + c[1]) / 2) == pytest.approx((1, 2))
    assert math.dist(b, d) == pytest.approx(math.dist(a, c))


def test_a_quarter_turn_runs_counter_clockwise() -> None:
    model = _model(body=PanelBody(length=0.4, width=0.2))
    first = _lamp(model=model, rotation_deg=90).outline()[0]
    assert first == pytest.approx((0.1, -0.2))


@pytest.mark.parametrize("count", [1, 2, 4, 7])
def test_bars_spread_evenly_to_the_outer_edges(count: int) -> None:
    body = BarsBody(count=count, length=0.6, bar_width=0.03, width=0.5)
    strips = _lamp(model=_model(body=body)).strips()
    assert len(strips) == count
    assert all(strip[2:] == (0.6, 0.03) for strip in strips)
    centres = [strip[1] for strip in strips]
    assert sum(centres) == pytest.approx(0, abs=1e-12)
    if count > 1:
        assert centres[0] - 0.015 == pytest.approx(-0.25)
        assert centres[-1] + 0.015 == pytest.approx(0.25)
        gaps = [b - a for a, b in itertools.pairwise(centres)]
        assert gaps == pytest.approx([gaps[0]] * len(gaps))


def test_bars_must_fit_side_by_side() -> None:
    with pytest.raises(ValidationError, match=r"4 bars of 3.cm do not fit into a width of 10.cm"):
        BarsBody(count=4, length=0.6, bar_width=0.03, width=0.1)


def test_the_strip_of_a_panel_and_of_a_point() -> None:
    panel = _model(body=PanelBody(length=0.4, width=0.2))
    assert _lamp(model=panel).strips() == ((0, 0, 0.4, 0.2),)
    assert _lamp().strips() == ((0, 0, 0, 0),)
    assert _lamp().model.size == (0, 0)


# -- linings ----------------------------------------------------------------------------


def test_diffuse_and_specular_add_up() -> None:
    foil = Lining(key="a", name="A", reflectance=0.8, specular_share=0.75, low=0.7, high=0.9)
    assert foil.specular == pytest.approx(0.6)
    assert foil.diffuse == pytest.approx(0.2)


@pytest.mark.parametrize(
    ("parts", "words"),
    [
        ({"reflectance": 0.95}, "must lie between its range ends 0.7 and 0.9"),
        ({"low": 0.85}, "must lie between"),
        ({"reflectance": 1.1, "high": 1.2}, "less than or equal to 1"),
        ({"specular_share": -0.1}, "greater than or equal to 0"),
        ({"key": "White Board"}, "match pattern"),
        ({"name": ""}, "at least 1 character"),
        ({"cautions": ("explodes",)}, "conducts"),
    ],
)
def test_a_lining_out_of_bounds_is_explained(parts: dict[str, Any], words: str) -> None:
    given = {"key": "a", "name": "A", "reflectance": 0.8, "low": 0.7, "high": 0.9}
    with pytest.raises(ValidationError, match=words):
        Lining.model_validate(given | parts)


def test_an_opening_returns_nothing() -> None:
    assert OPENING.is_opening
    assert OPENING.diffuse == OPENING.specular == 0


@pytest.mark.parametrize(
    ("tops", "words"),
    [
        ((0.5,), "uppermost band of a wall must end at the ceiling"),
        ((None, None), "only the uppermost band"),
        ((0.5, 0.5, None), "from the floor up"),
        ((0.5, 0.3, None), "from the floor up"),
        ((0.004, None), "at least 0.5.cm"),
        ((), "at least 1"),
        ((0.1, 0.2, 0.3, 0.4, 0.5, 0.6, None), "at most 6"),
    ],
)
def test_bands_out_of_order_are_explained(tops: tuple[float | None, ...], words: str) -> None:
    with pytest.raises(ValidationError, match=words):
        WallCover(bands=tuple(Band(lining="a", top=top) for top in tops))


# -- canopy and target ------------------------------------------------------------------


def test_a_green_canopy_returns_little() -> None:
    # ECOSTRESS library: grass 0.062, deciduous 0.069, conifer 0.063 over 400-700 nm
    assert Canopy().reflectance == pytest.approx(0.065, abs=0.01)


def test_a_canopy_reflects_between_nothing_and_all() -> None:
    with pytest.raises(ValidationError):
        Canopy(reflectance=1.01)
    with pytest.raises(ValidationError):
        Canopy(height=-0.01)


@pytest.mark.parametrize(
    ("dli", "hours", "ppfd"),
    [(12.384, 16, 215), (11.16, 20, 155), (17.28, 24, 200)],
)
def test_dli_and_ppfd(dli: float, hours: float, ppfd: float) -> None:
    # settings of Pennisi et al. (2019) and Rahman et al. (2021): DLI = PPFD · h · 0.0036
    band = DliTarget(low=dli / 2, high=dli).ppfd_band(hours)
    assert band == pytest.approx((ppfd / 2, ppfd))


def test_without_hours_no_ppfd_gives_a_dli() -> None:
    assert DliTarget(low=5, high=10).ppfd_band(0) is None


def test_a_ppfd_band_stays_what_it_is() -> None:
    assert PpfdTarget(low=100, high=200).ppfd_band(16) == (100, 200)


@pytest.mark.parametrize("kind", [PpfdTarget, DliTarget])
def test_a_band_must_rise(kind: type[PpfdTarget] | type[DliTarget]) -> None:
    with pytest.raises(ValidationError, match="its upper end 5 is not above 5"):
        kind(low=5, high=5)
