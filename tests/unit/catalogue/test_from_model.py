"""Lamps of the catalogue written as photometric files and read back."""

from __future__ import annotations

import math

import numpy as np
import pytest

from planner.catalogue.lamp_files.convert import PLAIN_LUMENS, to_lamp_model, to_photometry
from planner.catalogue.lamp_files.lm63_write import lm63_text
from planner.catalogue.lamp_files.photometry import total_lumens
from planner.catalogue.lamp_files.reading import parse_lamp_file
from planner.plan.lamp import (
    CosineProfile,
    LampModel,
    PanelBody,
    PlanesProfile,
    PointBody,
    Profile,
    TableProfile,
)


def lamp(profile: Profile, **parts: object) -> LampModel:
    whole = {
        "key": "lamp", "name": "Invented lamp", "body": PanelBody(length=0.3, width=0.2),
        "profile": profile, "ppf": 200.0, "watts": 100.0, **parts,
    }  # fmt: skip
    return LampModel.model_validate(whole)


def test_a_cosine_lamp_has_the_peak_of_its_law() -> None:
    # Φ = 2π I₀ / (m + 1) for I = I₀ cos^m θ below the horizon.
    photometry = to_photometry(lamp(CosineProfile(exponent=2.0)), lumens_per_umol=60.0)
    assert total_lumens(photometry) == pytest.approx(12_000.0)
    assert photometry.candela.max() == pytest.approx(12_000 * 3 / (2 * math.pi), rel=2e-4)


def test_without_a_spectrum_the_lamp_gives_a_thousand_lumens_and_says_so() -> None:
    photometry = to_photometry(lamp(CosineProfile()))
    assert total_lumens(photometry) == pytest.approx(PLAIN_LUMENS)
    assert "scaled to 1000 lm" in photometry.keyword("OTHER")


PLANES = PlanesProfile(
    angles_deg=(0.0, 45.0, 90.0),
    azimuths_deg=(0.0, 90.0, 180.0, 270.0),
    relative=((1.0, 0.5, 0.0), (1.0, 0.8, 0.1), (1.0, 0.5, 0.0), (1.0, 0.8, 0.1)),
)
UPWARD = TableProfile(angles_deg=(20.0, 60.0, 120.0), relative=(1.0, 0.5, 0.2))


@pytest.mark.parametrize("profile", [CosineProfile(exponent=3.0), PLANES, UPWARD])
@pytest.mark.parametrize("body", [PanelBody(length=0.3, width=0.2), PointBody()])
def test_what_is_written_reads_back_as_the_same_light(profile: Profile, body: object) -> None:
    model = lamp(profile, body=body)
    text = lm63_text(to_photometry(model))
    read = parse_lamp_file(text.encode())
    back = to_lamp_model(read, key="back", ppf=model.ppf)
    assert back.size == pytest.approx(model.size)
    assert back.watts == 100.0
    assert back.name == "Invented lamp"
    ours, theirs = to_photometry(model), to_photometry(back)
    assert total_lumens(theirs) == pytest.approx(total_lumens(ours))
    for azimuth in range(len(ours.azimuths_deg)):
        at = theirs.candela[min(azimuth, len(theirs.candela) - 1)]
        same = np.interp(ours.polar_deg, theirs.polar_deg, at)
        assert same == pytest.approx(ours.candela[azimuth], abs=2e-3 * ours.candela.max())
