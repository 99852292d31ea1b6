"""The spectra that ship: they are what they say, and mean what is published."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

from planner.catalogue.spectra import (
    SpectrumError,
    SpectrumReading,
    built_in_spectra,
    read_spectrum_file,
)
from planner.folders import resource_path
from planner.metrics.spectra import (
    band_shares,
    lux_per_umol,
    photons_between,
    umol_per_joule_of_par,
    wavebands_of,
)
from planner.plan.spectrum import Spectrum, SpectrumQuantity
from planner.plan.wavebands import DAYLIGHT, DAYLIGHT_LUX, FAR_RED, PAR_BANDS
from tests.unit.catalogue.spectrum_formulas import SPECTRA, table


@pytest.fixture(scope="module")
def shelf() -> dict[str, Spectrum]:
    spectra = built_in_spectra()
    assert len({spectrum.key for spectrum in spectra}) == len(spectra)
    return {spectrum.key: spectrum for spectrum in spectra}


def test_all_tables_are_listed_small_and_sourced(shelf: dict[str, Spectrum]) -> None:
    folder = resource_path("catalogue/spectra")
    assert {path.stem for path in folder.glob("*.csv")} == set(shelf)
    assert all(path.stat().st_size < 4000 for path in folder.glob("*.csv"))
    for spectrum in shelf.values():
        kind = "a model" if spectrum.is_model else "definition"
        assert kind in spectrum.source
        assert spectrum.name
        assert spectrum.quantity is SpectrumQuantity.POWER


@pytest.mark.parametrize("name", SPECTRA)
def test_a_table_follows_its_formula(shelf: dict[str, Spectrum], name: str) -> None:
    expected = table(name)
    assert shelf[name].wavelengths_nm == tuple(float(nm) for nm, _ in expected)
    assert shelf[name].values == pytest.approx([v for _, v in expected], rel=1e-5, abs=1e-4)


@pytest.mark.parametrize(
    ("name", "at"),
    [
        # CIE 015:2018, tables of relative spectral power distributions
        ("incandescent-a", {380: 9.7951, 450: 33.0859, 560: 100.0, 700: 198.261, 780: 241.675}),
        ("daylight-d65", {380: 49.9755, 450: 117.008, 560: 100.0, 600: 90.0062, 780: 63.3828}),
    ],
)
def test_illuminants_have_their_printed_values(
    shelf: dict[str, Spectrum], name: str, at: dict[int, float]
) -> None:
    values = dict(zip(shelf[name].wavelengths_nm, shelf[name].values, strict=True))
    assert [values[nm] for nm in at] == pytest.approx(list(at.values()), rel=2e-5)


@pytest.mark.parametrize(
    ("name", "lux", "per_joule", "tolerance"),
    [
        # CIE illuminants by the trapezoid at 1 nm, computed apart from the program: 0.3 %
        ("incandescent-a", 50.26, 5.0133, 0.003),
        ("daylight-d65", 55.50, 4.5285, 0.003),
        ("equal-energy", 52.91, 4.5976, 0.003),
        # The models stand for CIE LED-B2, LED-B3, LED-B5 and HP1 (CIE 015:2018): 2 %
        ("white-led-warm", 67.91, 4.8479, 0.02),
        ("white-led-neutral", 69.75, 4.6789, 0.02),
        ("white-led-cool", 69.40, 4.4919, 0.02),
        ("high-pressure-sodium", 85.84, 4.9038, 0.02),
        # Thimijan & Heins (1983), quoted second-hand; lamps of 1983 and other daylight: 5 %
        ("incandescent-a", 50, 5.00, 0.01),
        ("daylight-d65", 54, 4.57, 0.05),
        ("high-pressure-sodium", 82, 4.98, 0.05),
    ],
)
def test_lux_and_photons_are_as_published(
    shelf: dict[str, Spectrum], name: str, lux: float, per_joule: float, tolerance: float
) -> None:
    assert lux_per_umol(shelf[name]) == pytest.approx(lux, rel=tolerance)
    assert umol_per_joule_of_par(shelf[name]) == pytest.approx(per_joule, rel=tolerance)


def test_shares_say_what_the_names_say(shelf: dict[str, Spectrum]) -> None:
    assert band_shares(shelf["blue-led"]).blue > 0.999
    assert band_shares(shelf["red-led"]).red > 0.999
    assert band_shares(shelf["red-blue-led"]).red == pytest.approx(0.8, abs=0.02)
    white, with_red = shelf["white-led-neutral"], shelf["white-led-with-red"]
    # the same blue: what the red adds to all photons shows in its share
    added = band_shares(white).blue / band_shares(with_red).blue - 1
    assert added == pytest.approx(0.3, abs=0.02)
    cool, warm = shelf["white-led-cool"], shelf["white-led-warm"]
    assert band_shares(cool).blue > 0.25 > 0.15 > band_shares(warm).blue
    # the eye sees little of red and blue: a tenth of what it sees of white
    assert lux_per_umol(shelf["red-blue-led"]) < lux_per_umol(white) / 7


def test_a_file_gets_its_name_key_and_source(tmp_path: Path) -> None:
    path = tmp_path / "My Lamp.csv"
    path.write_text("nm;µmol/s/nm\n400;0\n500;1,5\n600;0\n", "utf-8")
    reading = read_spectrum_file(path, taken={"my-lamp"})
    assert reading.spectrum.name == "My Lamp"
    assert reading.spectrum.key == "my-lamp-2"
    assert "My Lamp.csv" in reading.spectrum.source
    assert reading.spectrum.quantity is SpectrumQuantity.PHOTONS
    assert photons_between(reading.spectrum, 400, 700) == pytest.approx(150)
    as_power = read_spectrum_file(path, quantity=SpectrumQuantity.POWER)
    assert isinstance(as_power, SpectrumReading)
    assert as_power.spectrum.quantity is SpectrumQuantity.POWER


def test_a_file_that_cannot_be_read_is_named(tmp_path: Path) -> None:
    with pytest.raises(SpectrumError, match=r"'gone\.csv' could not be read: No such file"):
        read_spectrum_file(tmp_path / "gone.csv")
    with pytest.raises(SpectrumError, match="could not be read"):
        read_spectrum_file(tmp_path)


def test_a_huge_file_is_not_read_to_its_end(tmp_path: Path) -> None:
    path = tmp_path / "huge.csv"
    with path.open("wb") as stream:
        stream.truncate(10_000_000_000)  # takes no room on the disk
    with pytest.raises(SpectrumError, match="larger than 4 MB"):
        read_spectrum_file(path)


def test_reading_spectra_brings_neither_qt_nor_numpy() -> None:
    code = (
        "import sys\nfrom planner.catalogue.spectra import built_in_spectra\nbuilt_in_spectra()\n"
        "sys.exit(', '.join({'PySide6', 'numpy', 'scipy'} & set(sys.modules)) or 0)"
    )
    run = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=False)
    assert run.returncode == 0, run.stderr


def test_the_daylight_of_a_room_is_that_of_the_table() -> None:
    d65 = next(one for one in built_in_spectra() if one.key == "daylight-d65")
    found = wavebands_of(d65)
    for band in (*PAR_BANDS, FAR_RED):
        assert DAYLIGHT.share(band) == pytest.approx(found.share(band), abs=2e-4)
    assert pytest.approx(lux_per_umol(d65), abs=0.05) == DAYLIGHT_LUX
