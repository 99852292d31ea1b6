"""What spectra mean, against closed forms, exact constants and printed tables."""

from __future__ import annotations

import math
from collections.abc import Callable

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planner.metrics import spectra as constants
from planner.metrics.spectra import (
    band_shares,
    lumens,
    lux_per_umol,
    photon_distribution,
    photon_flux_from_lumens,
    photons_between,
    photopic_weight,
    power_between,
    spectrum_figures,
    umol_per_joule,
    umol_per_joule_of_par,
    umol_per_lumen,
    wavebands_of,
)
from planner.plan.spectrum import Spectrum, SpectrumQuantity

# The molar Planck constant N_A h = 3.990 312 712 893… × 10⁻¹⁰ J Hz⁻¹ mol⁻¹ (CODATA 2018)
# times the speed of light: N_A h c in J nm µmol⁻¹.
C_NM = 3.990312712893e-10 * 299_792_458 * 1e3


def spectrum(
    of: Callable[[float], float],
    first: float = 360.0,
    last: float = 830.0,
    step: float = 1.0,
    quantity: SpectrumQuantity = SpectrumQuantity.POWER,
) -> Spectrum:
    nm = np.arange(first, last + step / 2, step)
    return Spectrum(
        key="test",
        name="Test",
        quantity=quantity,
        wavelengths_nm=tuple(float(x) for x in nm),
        values=tuple(of(float(x)) for x in nm),
    )


def line(nm: float) -> Spectrum:
    """A very narrow triangle, nearly one wavelength."""
    return Spectrum(
        key="line",
        name="Line",
        wavelengths_nm=(nm - 0.01, nm, nm + 0.01),
        values=(0.0, 1.0, 0.0),
    )


def flat(_nm: float) -> float:
    return 1.0


def test_the_molar_photon_constant_is_the_exact_one() -> None:
    molar_photon_energy = constants.MOLAR_PHOTON_ENERGY_J_NM_PER_UMOL
    assert molar_photon_energy == pytest.approx(C_NM, rel=1e-12)
    assert umol_per_joule(np.array(1.0)) == pytest.approx(0.008359347, rel=1e-7)


@pytest.mark.parametrize(
    ("nm", "kj_per_mol", "per_joule"),
    [
        # E = N_A h c / λ, tables of photon energy; to the last digit printed
        (400, 299.066, 3.3437),
        (450, 265.837, 3.7617),
        (500, 239.253, 4.1797),
        (550, 217.503, 4.5976),
        (555, 215.543, 4.6394),
        (650, 184.041, 5.4336),
        (660, 181.252, 5.5172),
        (700, 170.895, 5.8515),
    ],
)
def test_photon_energy(nm: float, kj_per_mol: float, per_joule: float) -> None:
    # 1 J/µmol is 1000 kJ/mol
    assert 1000 / umol_per_joule(np.array(nm)) == pytest.approx(kj_per_mol, abs=0.0006)
    assert umol_per_joule(np.array(nm)) == pytest.approx(per_joule, abs=0.00006)


@pytest.mark.parametrize(
    ("nm", "lux"),
    [
        # 683.002 V(λ) N_A h c / λ with V(λ) of CIE 1924; to the last digit printed
        *[(400, 0.081), (450, 6.90), (500, 52.8), (520, 111.6), (550, 147.8), (555, 147.2)],
        *[(590, 104.8), (620, 50.2), (650, 13.45), (660, 7.55), (700, 0.48)],
    ],
)
def test_lux_of_one_wavelength(nm: float, lux: float) -> None:
    last_digit = 10.0 ** -len(str(lux).partition(".")[2])
    # A very narrow line; at the ends of PAR half of its photons lie outside and do not count.
    counted = 1.0 if 400 < nm < 700 else 0.5
    assert counted * lux_per_umol(line(nm)) == pytest.approx(lux, abs=0.6 * last_digit)


def test_the_sodium_line_reads_as_printed_for_low_pressure_sodium() -> None:
    # Thimijan & Heins (1983): 106 lx per µmol and 4.92 µmol/J, quoted second-hand. The
    # lamp has weak lines beside the doublet at 589.0 and 589.6 nm: 0.7 %.
    for nm in (589.0, 589.6):
        assert lux_per_umol(line(nm)) == pytest.approx(106, rel=0.007)
        assert umol_per_joule_of_par(line(nm)) == pytest.approx(4.92, rel=0.002)
    # computed elsewhere with the 1 nm table
    assert lux_per_umol(line(589.0)) == pytest.approx(106.7, abs=0.06)
    assert lux_per_umol(line(589.3)) == pytest.approx(106.1, abs=0.06)


def test_the_weight_of_the_eye() -> None:
    # V = 1 at 555 nm, half near 510 and 610 nm, both 0.503; nothing outside the table
    weights = photopic_weight([359.9, 360.0, 510.0, 555.0, 610.0, 830.0, 830.1])
    assert weights == pytest.approx([0, 3.917e-6, 0.503, 1, 0.503, 4.5181e-7, 0], abs=1e-12)
    # 1 nm values of the CIE table that the 5 nm table does not hold
    between = photopic_weight([507.0, 556.0, 589.0, 632.0])
    assert between == pytest.approx([0.4443096, 0.9998567, 0.7691547, 0.2448896], abs=0.0003)
    fine = photopic_weight(np.linspace(300.0, 900.0, 6001))
    assert fine.min() == 0.0
    assert fine.max() == pytest.approx(1.0, abs=1e-4)


def test_equal_power_has_closed_forms() -> None:
    even = spectrum(flat, step=5.0)
    # mean wavelength of 400-700 nm is 550 nm
    assert umol_per_joule_of_par(even) == pytest.approx(550 / C_NM, rel=1e-12)
    assert photons_between(even, 400, 700) == pytest.approx(300 * 550 / C_NM, rel=1e-12)
    assert power_between(even, 400, 700) == pytest.approx(300, rel=1e-12)
    # photons go as λ: 500² - 400² : 600² - 500² : 700² - 600² : 800² - 700² = 9 : 11 : 13 : 15
    shares = band_shares(even)
    assert (shares.blue, shares.green, shares.red, shares.far_red) == pytest.approx(
        (9 / 33, 11 / 33, 13 / 33, 15 / 33), rel=1e-12
    )
    # the sum of the 1 nm table of V(λ) is 106.8569
    assert lumens(even) == pytest.approx(683.002 * 106.8569, rel=2e-5)


def test_equal_photons_have_closed_forms() -> None:
    even = spectrum(flat, step=5.0, quantity=SpectrumQuantity.PHOTONS)
    assert photons_between(even, 400, 700) == pytest.approx(300, rel=1e-12)
    energy = C_NM * math.log(700 / 400)
    assert power_between(even, 400, 700) == pytest.approx(energy, rel=1e-10)
    assert umol_per_joule_of_par(even) == pytest.approx(300 / energy, rel=1e-10)
    assert band_shares(even).far_red == pytest.approx(1 / 3, rel=1e-12)


def test_power_and_photons_of_one_light_agree() -> None:
    def power(nm: float) -> float:
        return 5 + math.sin(nm / 30)

    as_power = spectrum(power)
    counted = photon_distribution(as_power)
    assert counted[90] == pytest.approx(power(450) * 450 / C_NM, rel=1e-12)
    as_photons = as_power.model_copy(
        update={"values": tuple(counted.tolist()), "quantity": SpectrumQuantity.PHOTONS}
    )
    assert photon_distribution(as_photons).tolist() == counted.tolist()
    # between the samples one is straight in power, the other in photons: parts in 10⁶
    assert lumens(as_photons) == pytest.approx(lumens(as_power), rel=1e-5)
    assert lux_per_umol(as_photons) == pytest.approx(lux_per_umol(as_power), rel=1e-5)
    assert power_between(as_photons, 400, 700) == pytest.approx(
        power_between(as_power, 400, 700), rel=1e-5
    )


def test_a_band_cuts_between_samples_exactly() -> None:
    # a ramp sampled at three wavelengths, none of them an edge of a band
    ramp = Spectrum(
        key="ramp",
        name="Ramp",
        quantity=SpectrumQuantity.PHOTONS,
        wavelengths_nm=(350.0, 390.0, 750.0),
        values=(0.0, 40.0, 400.0),
    )
    # height is λ - 350 throughout
    assert photons_between(ramp, 400, 500) == pytest.approx((150**2 - 50**2) / 2, rel=1e-12)
    assert photons_between(ramp, 700, 800) == pytest.approx((400**2 - 350**2) / 2, rel=1e-12)
    assert photons_between(ramp, 100, 350) == 0
    assert photons_between(ramp, 800, 900) == 0
    assert photons_between(ramp, 500, 400) == 0


def test_lux_count_light_outside_par() -> None:
    # 395-405 nm: half of the photons are no PAR, but the eye sees all
    both = spectrum(flat, 395, 405)
    inside = spectrum(flat, 400, 405)
    assert lumens(both) > 1.2 * lumens(inside)
    assert photons_between(both, 400, 700) == pytest.approx(photons_between(inside, 400, 700))


def test_conversions_are_each_other_s_inverse() -> None:
    light = spectrum(lambda nm: nm / 100)
    figures = spectrum_figures(light)
    assert lux_per_umol(light) * umol_per_lumen(light) == pytest.approx(1, rel=1e-12)
    assert photon_flux_from_lumens(lumens(light), light) == pytest.approx(
        photons_between(light, 400, 700), rel=1e-12
    )
    assert figures.lux_per_umol == lux_per_umol(light)
    assert figures.umol_per_lumen == pytest.approx(umol_per_lumen(light), rel=1e-12)
    assert figures.umol_per_joule_of_par == umol_per_joule_of_par(light)
    assert figures.shares == band_shares(light)


heights = st.lists(st.floats(0.01, 1000), min_size=48, max_size=48)
quantities = st.sampled_from(SpectrumQuantity)


@settings(max_examples=60, deadline=None)
@given(heights, heights, st.floats(1e-6, 1e6), quantities)
def test_sums_are_linear_and_ratios_know_no_scale(
    first: list[float], second: list[float], factor: float, quantity: SpectrumQuantity
) -> None:
    def made(values: list[float]) -> Spectrum:
        return spectrum(lambda nm: values[round((nm - 360) / 10)], step=10.0, quantity=quantity)

    a, b = made(first), made(second)
    together = made([u + v for u, v in zip(first, second, strict=True)])
    scaled = made([factor * u for u in first])
    for total in (
        lumens,
        lambda s: photons_between(s, 400, 700),
        lambda s: photons_between(s, 433.3, 612.1),
        lambda s: power_between(s, 400, 700),
    ):
        assert total(together) == pytest.approx(total(a) + total(b), rel=1e-9)
        assert total(scaled) == pytest.approx(factor * total(a), rel=1e-9)
    assert lux_per_umol(scaled) == pytest.approx(lux_per_umol(a), rel=1e-9)
    assert umol_per_joule_of_par(scaled) == pytest.approx(umol_per_joule_of_par(a), rel=1e-9)
    shares = band_shares(a)
    assert shares.blue + shares.green + shares.red == pytest.approx(1, rel=1e-12)
    # no light between 400 and 700 nm has fewer or more photons per joule than its ends
    assert 3.3437 <= umol_per_joule_of_par(a) <= 5.8516
    # lumens of a mixture over its photons lie between those of the two
    low, high = sorted((lux_per_umol(a), lux_per_umol(b)))
    assert low * (1 - 1e-9) <= lux_per_umol(together) <= high * (1 + 1e-9)


def test_wavebands_of_as_many_photons_at_every_wavelength() -> None:
    """By hand: 100 nm each of blue, green and red, and 50 nm of far-red."""
    even = spectrum(lambda _nm: 1.0, quantity=SpectrumQuantity.PHOTONS)
    found = wavebands_of(even)
    for band in ("blue", "green", "red"):
        assert found.share(band) == pytest.approx(1 / 3)
        assert found.tint(band) == pytest.approx(1.0)
    assert found.share("far_red") == pytest.approx(1 / 6)
    assert found.reflectance("far_red", 0.8) == pytest.approx(0.4)


def test_a_line_lies_in_one_band() -> None:
    assert wavebands_of(line(450.0)).share("blue") == pytest.approx(1.0)
    assert wavebands_of(line(660.0)).share("red") == pytest.approx(1.0)
