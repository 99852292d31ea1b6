"""The built-in lamps against published efficacies and closed forms of their profiles."""

from __future__ import annotations

import math

import numpy as np
import pytest

from planner.catalogue.library import Catalogue, load_catalogue
from planner.plan.lamp import CosineProfile, LampModel, PointBody, TableProfile

# µmol/J: DLC horticultural thresholds and Kusuma et al. (2020) for plant LEDs; Nelson and Bugbee
# (2014) for sodium and fluorescent lamps; 90-140 lm/W over 69 lm per µmol/s for household LEDs.
BOUNDS = {
    "led-board": (1.9, 3.2),
    "led-bar": (1.9, 3.2),
    "led-panel": (1.3, 2.0),
    "led-strip": (1.3, 2.0),
    "led-bulb": (1.3, 2.0),
    "led-spot": (1.3, 2.0),
    "t5": (0.9, 1.1),
    "cfl": (0.9, 1.1),
    "hps": (1.0, 1.7),
}


@pytest.fixture(scope="module")
def catalogue(tmp_path_factory: pytest.TempPathFactory) -> Catalogue:
    return load_catalogue(tmp_path_factory.mktemp("own"))


def _kind(lamp: LampModel) -> str:
    return next(kind for kind in BOUNDS if lamp.key.startswith(kind))


def test_there_are_lamps_of_every_kind(catalogue: Catalogue) -> None:
    assert 10 <= len(catalogue.lamps) <= 20
    assert {_kind(lamp) for lamp in catalogue.lamps} == set(BOUNDS)
    assert {lamp.body.kind for lamp in catalogue.lamps} == {"point", "panel", "bars"}
    assert {lamp.profile.kind for lamp in catalogue.lamps} == {"cosine", "table"}


def test_efficacies_lie_in_the_published_bounds(catalogue: Catalogue) -> None:
    for lamp in catalogue.lamps:
        low, high = BOUNDS[_kind(lamp)]
        assert low <= lamp.ppf / lamp.watts <= high, lamp.key
        assert lamp.source


def test_a_household_bulb_follows_its_lumens(catalogue: Catalogue) -> None:
    # 100 lm/W over 69 lm per µmol/s (mean of CIE LED-B1 to LED-B5), ±7 % between them
    bulb = catalogue.lamp("led-bulb-10w")
    assert bulb.ppf / bulb.watts == pytest.approx(100 / 69, rel=0.07)


def test_watts_in_the_names_are_those_in_the_data(catalogue: Catalogue) -> None:
    for key, watts in [("led-board-30-100w", 100), ("led-bar-60-20w", 20), ("led-spot-6w", 6)]:
        lamp = catalogue.lamp(key)
        assert lamp.watts == watts
        assert f"{watts} W" in lamp.name


def test_the_spot_has_the_beam_angle_it_is_named_for(catalogue: Catalogue) -> None:
    spot = catalogue.lamp("led-spot-6w")
    assert isinstance(spot.profile, CosineProfile)
    assert math.cos(math.radians(19)) ** spot.profile.exponent == pytest.approx(0.5, rel=0.01)


def _share_below(profile: TableProfile) -> float:
    """Share of the flux below the horizontal, by fine quadrature of I(θ) sin θ."""
    theta = np.radians(np.linspace(0, 180, 18001))
    values = np.interp(np.degrees(theta), profile.angles_deg, profile.relative, right=0.0)
    weights = values * np.sin(theta)
    return float(weights[theta <= math.pi / 2].sum() / weights.sum())


def test_a_bare_bulb_throws_light_upward_and_a_reflector_does_not(catalogue: Catalogue) -> None:
    bulb, sodium = catalogue.lamp("led-bulb-10w"), catalogue.lamp("hps-250w")
    assert isinstance(bulb.profile, TableProfile)
    assert isinstance(sodium.profile, TableProfile)
    assert isinstance(bulb.body, PointBody)
    assert 0.5 < _share_below(bulb.profile) < 0.8
    assert _share_below(sodium.profile) == pytest.approx(1, abs=0.002)


def test_every_name_is_short_enough_for_a_list(catalogue: Catalogue) -> None:
    assert all(len(lamp.name) <= 50 for lamp in catalogue.lamps)


def test_an_unknown_key_is_named(catalogue: Catalogue) -> None:
    with pytest.raises(KeyError, match="no lamp 'torch'"):
        catalogue.lamp("torch")
