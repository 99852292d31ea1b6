"""Spectra against two independent libraries and the values printed in standards.

colour-science (BSD) holds the CIE illuminants and the 1 nm table of V(λ), and computes
luminous flux by its own code; pvlib (BSD) holds the ASTM G173-03 solar spectra. Photons
are counted here by the trapezoid at 1 nm on the straight line between samples, in SI.
"""

from __future__ import annotations

import functools
import importlib
import warnings
from typing import Any

import numpy as np
import pytest

from planner.catalogue.spectra import built_in_spectra
from planner.metrics.spectra import (
    PHOTOPIC,
    PHOTOPIC_WAVELENGTHS_NM,
    lumens,
    lux_per_umol,
    photons_between,
    photopic_weight,
    power_between,
    umol_per_joule_of_par,
    umol_per_lumen,
)
from planner.plan.spectrum import Spectrum

pytestmark = pytest.mark.reference

# Illuminant: lux per µmol m⁻² s⁻¹, µmol per J of PAR; from the same distributions with the
# method above and the 1 nm table of V(λ), computed apart from this program. 0.3 % allows
# for the method with 5 nm data.
NOTED = {
    "A": (50.26, 5.0133),
    "D50": (56.20, 4.6682),
    "D55": (56.15, 4.6130),
    "D65": (55.50, 4.5285),
    "D75": (54.59, 4.4684),
    "E": (52.91, 4.5976),
    "FL1": (69.19, 4.3897),
    "FL2": (76.48, 4.5327),
    "FL3": (79.73, 4.6257),
    "FL4": (80.53, 4.7047),
    "FL7": (60.58, 4.4772),
    "FL8": (59.43, 4.6406),
    "FL10": (74.37, 4.4923),
    "FL11": (76.04, 4.5728),
    "FL12": (78.12, 4.6992),
    "HP1": (85.84, 4.9038),
    "HP2": (52.56, 5.0614),
    "HP3": (69.92, 4.7574),
    "HP4": (67.10, 4.6081),
    "HP5": (61.82, 4.6689),
    "LED-B1": (67.07, 4.8933),
    "LED-B2": (67.91, 4.8479),
    "LED-B3": (69.75, 4.6789),
    "LED-B4": (71.66, 4.5866),
    "LED-B5": (69.40, 4.4919),
    "LED-BH1": (73.27, 4.8023),
    "LED-RGB1": (60.54, 4.8891),
    "LED-V1": (53.08, 4.8739),
    "LED-V2": (56.57, 4.6581),
    "ID65": (56.31, 4.5169),
    "ID50": (57.16, 4.6546),
}


@functools.cache
def library(name: str) -> Any:
    """A library imported without its remarks on optional parts that are not there."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        return importlib.import_module(name)


@pytest.fixture(autouse=True)
def quiet() -> Any:
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        yield


def as_spectrum(nm: Any, values: Any) -> Spectrum:
    return Spectrum(
        key="reference",
        name="Reference",
        wavelengths_nm=tuple(float(x) for x in nm),
        values=tuple(float(x) for x in values),
    )


def illuminant(name: str) -> tuple[Spectrum, Any]:
    distribution = library("colour").SDS_ILLUMINANTS[name]
    return as_spectrum(distribution.wavelengths, distribution.values), distribution


def counted(spectrum: Spectrum, low: float = 400.0, high: float = 700.0) -> tuple[float, float]:
    """Photons in µmol and power, by the trapezoid at 1 nm in SI units."""
    nm = np.arange(low, high + 0.5)
    power = np.interp(nm, spectrum.wavelengths_nm, spectrum.values, left=0.0, right=0.0)
    joule_per_photon = 6.62607015e-34 * 299792458 / (nm * 1e-9)
    photons = power / joule_per_photon / 6.02214076e23 * 1e6
    return float(sum(photons[1:] + photons[:-1]) / 2), float(sum(power[1:] + power[:-1]) / 2)


def eye_table() -> Any:
    return library("colour").colorimetry.SDS_LEFS_PHOTOPIC["CIE 1924 Photopic Standard Observer"]


def test_the_table_of_the_eye_is_the_published_one() -> None:
    published = eye_table()
    every_fifth = [published[nm] for nm in PHOTOPIC_WAVELENGTHS_NM]
    assert pytest.approx(every_fifth, rel=1e-6) == PHOTOPIC.tolist()
    between = photopic_weight(published.wavelengths) - published.values
    assert np.abs(between).max() < 0.0003
    assert between.sum() == pytest.approx(0, abs=2e-6 * published.values.sum())


@pytest.mark.parametrize("name", NOTED)
def test_an_illuminant_converts_as_the_library_and_the_notes_say(name: str) -> None:
    spectrum, distribution = illuminant(name)
    photons, power = counted(spectrum)
    assert photons_between(spectrum, 400, 700) == pytest.approx(photons, rel=2e-4)
    assert power_between(spectrum, 400, 700) == pytest.approx(power, rel=2e-4)
    # colour-science weighs with 683 lm/W (0.0003 %), and smooths 5 nm data to 1 nm
    aligned = distribution.copy().interpolate(
        library("colour").SpectralShape(*distribution.wavelengths[[0, -1]], 1),
        interpolator=library("colour").LinearInterpolator,
    )
    seen = float(library("colour").luminous_flux(aligned))
    assert lumens(spectrum) == pytest.approx(seen, rel=5e-4)
    lux, per_joule = NOTED[name]
    assert lux_per_umol(spectrum) == pytest.approx(lux, rel=0.003)
    assert umol_per_joule_of_par(spectrum) == pytest.approx(per_joule, rel=0.003)
    assert umol_per_lumen(spectrum) * 1000 == pytest.approx(photons / seen * 1000, rel=1e-3)


@pytest.mark.parametrize(
    ("column", "ppfd", "par_watts", "lux", "total_watts"),
    [
        # ASTM G173-03, integrals of its tables; 280-4000 nm and 400-700 nm
        ("global", 1977.9, 429.83, 109495, 1000.37),
        ("direct", 1735.2, 374.81, 97143, 900.14),
        ("extraterrestrial", 2413.0, 529.96, 133101, 1347.93),
    ],
)
def test_the_reference_sun(
    column: str, ppfd: float, par_watts: float, lux: float, total_watts: float
) -> None:
    table = library("pvlib").spectrum.get_reference_spectra()
    sun = as_spectrum(table.index, table[column])
    assert photons_between(sun, 400, 700) == pytest.approx(ppfd, abs=0.1)
    assert power_between(sun, 400, 700) == pytest.approx(par_watts, abs=0.02)
    assert power_between(sun, 280, 4000) == pytest.approx(total_watts, abs=0.02)
    assert lumens(sun) == pytest.approx(lux, rel=2e-4)
    if column == "global":
        assert umol_per_joule_of_par(sun) == pytest.approx(4.6015, abs=0.0002)
        assert lux_per_umol(sun) == pytest.approx(55.36, rel=3e-4)
        assert photons_between(sun, 400, 750) == pytest.approx(2341.7, abs=0.2)
        # Thimijan & Heins (1983), sun and sky, quoted second-hand: 54 lx and 4.57 µmol/J
        assert lux_per_umol(sun) == pytest.approx(54, rel=0.03)
        assert umol_per_joule_of_par(sun) == pytest.approx(4.57, rel=0.01)


@pytest.mark.parametrize(("key", "name"), [("incandescent-a", "A"), ("daylight-d65", "D65")])
def test_the_illuminants_that_ship_are_the_published_ones(key: str, name: str) -> None:
    shipped = next(spectrum for spectrum in built_in_spectra() if spectrum.key == key)
    _, published = illuminant(name)
    ours = dict(zip(shipped.wavelengths_nm, shipped.values, strict=True))
    shared = [float(nm) for nm in published.wavelengths if nm in ours]
    assert len(shared) >= 80
    assert [ours[nm] for nm in shared] == pytest.approx([published[nm] for nm in shared], rel=2e-5)


@pytest.mark.parametrize(
    ("key", "name", "kelvin"),
    [
        ("white-led-warm", "LED-B2", 3000),
        ("white-led-neutral", "LED-B3", 4000),
        ("white-led-cool", "LED-B5", 6500),
        ("high-pressure-sodium", "HP1", 1960),
    ],
)
def test_the_models_stand_for_what_they_are_named_for(key: str, name: str, kelvin: float) -> None:
    colour = library("colour")
    model = next(spectrum for spectrum in built_in_spectra() if spectrum.key == key)
    published, _ = illuminant(name)
    assert lux_per_umol(model) == pytest.approx(lux_per_umol(published), rel=0.02)
    for low, high in ((400, 500), (500, 600), (600, 700)):
        ours = photons_between(model, low, high) / photons_between(model, 400, 700)
        theirs = photons_between(published, low, high) / photons_between(published, 400, 700)
        assert ours == pytest.approx(theirs, abs=0.05)
    values = dict(zip(model.wavelengths_nm, model.values, strict=True))
    distribution = colour.SpectralDistribution(values)
    xy = colour.XYZ_to_xy(colour.sd_to_XYZ(distribution, method="Integration"))
    assert colour.temperature.xy_to_CCT_McCamy1992(xy) == pytest.approx(kelvin, rel=0.05)
