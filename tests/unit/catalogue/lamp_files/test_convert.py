"""Lamps of the catalogue made from files."""

from __future__ import annotations

import dataclasses
import math
from pathlib import Path

import numpy as np
import pytest

from planner.catalogue.lamp_files.convert import to_lamp_model
from planner.catalogue.lamp_files.photometry import LampFileError, Opening, Photometry
from planner.catalogue.lamp_files.reading import read_lamp_file
from planner.catalogue.library import MAX_FILE_BYTES
from planner.plan.lamp import PanelBody, PlanesProfile, PointBody, TableProfile

SAMPLES = Path(__file__).parents[3] / "data" / "lamp_files"


def sample(name: str) -> Photometry:
    return read_lamp_file(SAMPLES / name)


def test_planes_and_panel_come_from_the_file() -> None:
    model = to_lamp_model(sample("lm63-2002-absolute.ies"), key="a", ppf=100)
    assert isinstance(model.profile, PlanesProfile)
    assert model.profile.azimuths_deg == tuple(range(0, 360, 30))
    # cos60° (1 + 0.3 sin60°) at azimuth 0, relative to the peak of the table: the peak is
    # near azimuth 30, polar 20: cos20° (1 + sin20° (0.3 cos30° + 0.2 sin30°)).
    sine, cosine = math.sin(math.radians(20)), math.cos(math.radians(20))
    top = cosine * (1 + sine * (0.3 * math.cos(math.pi / 6) + 0.1))
    wanted = 0.5 * (1 + 0.3 * math.sin(math.pi / 3)) / top
    assert model.profile.relative[0][6] == pytest.approx(wanted, abs=2e-5)
    assert model.body == PanelBody(length=0.6, width=0.3)
    assert (model.ppf, model.watts) == (100, 48)
    assert model.name == "Invented panel 60 x 30 cm"
    assert "shape of the light only; the photon flux was given by hand" in model.note


def test_one_plane_becomes_a_table() -> None:
    model = to_lamp_model(sample("lm63-1986.ies"), key="a", ppf=100)
    assert isinstance(model.profile, TableProfile)
    assert model.profile.relative[6] == pytest.approx(0.5, abs=1e-5)


def test_a_circle_becomes_a_square_of_the_same_area() -> None:
    model = to_lamp_model(sample("eulumdat-isym1.ldt"), key="a", ppf=90)
    assert isinstance(model.body, PanelBody)
    assert model.body.length * model.body.width == pytest.approx(math.pi * 0.125**2)
    assert model.body.length == model.body.width
    assert "rectangle of the same area" in model.note


def test_photons_from_lumens() -> None:
    # 70 lm per µmol/s is about what a white lamp gives: π × 1000 lm / 70 = 44.88 µmol/s.
    model = to_lamp_model(sample("lm63-2019.ies"), key="a", lumens_per_umol=70)
    assert model.ppf == pytest.approx(44.88, rel=0.003)
    assert "computed from its 3134 lm with 70 lm per µmol s⁻¹" in model.note


def test_a_quarter_turn() -> None:
    model = to_lamp_model(sample("lm63-1995-half.ies"), key="a", ppf=90, quarter_turns=1)
    plain = to_lamp_model(sample("lm63-1995-half.ies"), key="a", ppf=90)
    assert isinstance(model.profile, PlanesProfile)
    assert isinstance(plain.profile, PlanesProfile)
    at = model.profile.azimuths_deg.index(90)
    assert model.profile.relative[at] == plain.profile.relative[0]
    assert model.body == plain.body


def test_a_type_a_lamp_can_be_aimed_down() -> None:
    lamp = sample("lm63-type-a.ies")
    model = to_lamp_model(lamp, key="a", ppf=90, aim_down=True)
    assert isinstance(model.profile, PlanesProfile)
    assert {row[0] for row in model.profile.relative} == {1.0}
    assert "was aimed straight down" in model.note
    assert "aim it down" not in model.note


@pytest.mark.parametrize(
    ("opening", "body", "told"),
    [
        (Opening("point"), PointBody(), "taken as a point"),
        (Opening("rectangle", 0.004, 0.002), PointBody(), "taken as a point"),
        (Opening("rectangle", 1.2, 0.0), PanelBody(length=1.2, width=0.005), ""),
        (Opening("rectangle", 4.0, 2.0), PanelBody(length=3.0, width=2.0), "in feet"),
        (Opening("box", 0.6, 0.3, 0.1), PanelBody(length=0.6, width=0.3), "seen from below"),
    ],
)
def test_bodies(opening: Opening, body: PanelBody | PointBody, told: str) -> None:
    lamp = dataclasses.replace(sample("lm63-2019.ies"), opening=opening)
    model = to_lamp_model(lamp, key="a", ppf=90)
    assert model.body == body
    assert told in model.note


def test_a_very_fine_table_is_thinned_and_keeps_its_beam() -> None:
    polar = np.linspace(0, 180, 721)
    azimuths = np.arange(361, dtype=np.float64) * (360 / 361)
    beam = np.exp(-((polar / 3) ** 2)) + 0.01 * np.cos(np.radians(polar / 2))
    lamp = Photometry(polar, azimuths, np.tile(beam, (361, 1)), "made for a test", watts=50)
    model = to_lamp_model(lamp, key="a", ppf=90)
    assert isinstance(model.profile, PlanesProfile)
    assert "thinned out" in model.note
    found = np.interp(polar, model.profile.angles_deg, model.profile.relative[0])
    np.testing.assert_allclose(found, beam / beam.max(), atol=2e-4)
    # A lamp of the user's own must stay small enough to be read again.
    assert len(model.model_dump_json(indent=2).encode()) < MAX_FILE_BYTES


@pytest.mark.parametrize(
    ("ppf", "lumens_per_umol", "watts", "told"),
    [
        (None, None, None, "gives candela, not photons"),
        (10, 70, None, "not both"),
        (0, None, None, "0 is not possible for a photon flux"),
        (math.nan, None, None, "nan is not possible for a photon flux"),
        (10, None, -1, "-1 is not possible for input watts"),
        (None, 0, None, "a number above 0 is expected"),
        (500, None, None, r"500 µmol s⁻¹ from 40 W would be 12.5 µmol J⁻¹"),
    ],
)
def test_impossible_lamps_are_refused_in_a_sentence(
    ppf: float | None, lumens_per_umol: float | None, watts: float | None, told: str
) -> None:
    lamp = sample("lm63-2019.ies")
    with pytest.raises(LampFileError, match=told):
        to_lamp_model(lamp, key="a", ppf=ppf, lumens_per_umol=lumens_per_umol, watts=watts)


def test_watts_are_asked_for_where_the_file_has_none() -> None:
    lamp = dataclasses.replace(sample("lm63-2019.ies"), watts=None)
    with pytest.raises(LampFileError, match="type the watts"):
        to_lamp_model(lamp, key="a", ppf=50)
    assert to_lamp_model(lamp, key="a", ppf=50, watts=25).watts == 25
