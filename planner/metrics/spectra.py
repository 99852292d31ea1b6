"""What a spectrum means: photons, light as the eye sees it, and how they convert.

A lux meter weighs light with the eye's V(λ), plants count photons from 400 to 700 nm, so
the same number of photons reads very differently by lamp: a conversion needs a spectrum.

Sums run over the spectrum's own polyline (linear in the quantity it was given in), cut
exactly at the ends of a band and integrated by the three-point Gauss rule piece by piece.

Sources: terms and bands, ANSI/ASABE S640 JUL2017; V(λ) and K_m, CIE 018:2019; the
conversions, R. W. Thimijan, R. D. Heins (1983), Photometric, radiometric, and quantum
light units of measure, HortScience 18(6), 818-822, doi:10.21273/HORTSCI.18.6.818.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass
from typing import Final

import numpy as np
import numpy.typing as npt

from planner.plan.spectrum import Spectrum, SpectrumQuantity
from planner.plan.wavebands import LIMITS_NM, Wavebands

FloatArray = npt.NDArray[np.float64]

_GAUSS_NODES: Final = np.array([-math.sqrt(0.6), 0.0, math.sqrt(0.6)])
_GAUSS_WEIGHTS: Final = np.array([5.0, 8.0, 5.0]) / 9
_NO_EDGES: Final[FloatArray] = np.empty(0)


@dataclass(frozen=True)
class BandShares:
    """Photons of a band per PAR photon; blue, green and red add up to 1."""

    blue: float
    green: float
    red: float
    far_red: float


@dataclass(frozen=True)
class SpectrumFigures:
    """What the program shows of a spectrum."""

    lux_per_umol: float
    umol_per_lumen: float
    umol_per_joule_of_par: float
    shares: BandShares


def umol_per_joule(nm: FloatArray) -> FloatArray:
    """Photons in a joule of light of each wavelength, in µmol J⁻¹: λ / (N_A h c)."""
    return nm / MOLAR_PHOTON_ENERGY_J_NM_PER_UMOL


def photon_distribution(spectrum: Spectrum) -> FloatArray:
    """Photons per nanometre at the spectrum's wavelengths, shape (n,).

    In µmol s⁻¹ nm⁻¹ where the values are W nm⁻¹ (or the same per square metre); as given
    where the values count photons already.
    """
    values: FloatArray = np.array(spectrum.values, dtype=np.float64)
    if spectrum.quantity is SpectrumQuantity.PHOTONS:
        return values
    return values * umol_per_joule(np.array(spectrum.wavelengths_nm, dtype=np.float64))


def photons_between(spectrum: Spectrum, low_nm: float, high_nm: float) -> float:
    """Photons from ``low_nm`` to ``high_nm`` in µmol s⁻¹ on the spectrum's own scale.

    A spectrum in W m⁻² nm⁻¹ gives µmol m⁻² s⁻¹: over 400-700 nm its PPFD.
    """
    if spectrum.quantity is SpectrumQuantity.PHOTONS:
        return _integral(spectrum, np.ones_like, low_nm, high_nm)
    return _integral(spectrum, umol_per_joule, low_nm, high_nm)


def power_between(spectrum: Spectrum, low_nm: float, high_nm: float) -> float:
    """Radiant power from ``low_nm`` to ``high_nm`` in W on the spectrum's own scale."""
    if spectrum.quantity is SpectrumQuantity.POWER:
        return _integral(spectrum, np.ones_like, low_nm, high_nm)
    return _integral(spectrum, _joule_per_umol, low_nm, high_nm)


def lumens(spectrum: Spectrum) -> float:
    """Luminous flux in lm (illuminance in lx, for values per m²), over the whole spectrum."""

    def per_value(nm: FloatArray) -> FloatArray:
        seen = LUMINOUS_EFFICACY_LM_PER_W * photopic_weight(nm)
        return seen if spectrum.quantity is SpectrumQuantity.POWER else seen * _joule_per_umol(nm)

    low, high = float(PHOTOPIC_WAVELENGTHS_NM[0]), float(PHOTOPIC_WAVELENGTHS_NM[-1])
    return _integral(spectrum, per_value, low, high, PHOTOPIC_WAVELENGTHS_NM)


def lux_per_umol(spectrum: Spectrum) -> float:
    """Lux per µmol m⁻² s⁻¹ of PPFD (lumens per µmol s⁻¹ of PPF).

    Lux count the spectrum's whole range, photons 400-700 nm.
    """
    return lumens(spectrum) / photons_between(spectrum, *PAR_NM)


def umol_per_lumen(spectrum: Spectrum) -> float:
    """µmol s⁻¹ of PPF per lumen: turns the lumens of a lamp file into its photon flux.

    Zero light for the eye cannot be: V(λ) is above 0 wherever PAR is.
    """
    return photons_between(spectrum, *PAR_NM) / lumens(spectrum)


def umol_per_joule_of_par(spectrum: Spectrum) -> float:
    """PAR photons per joule of PAR, in µmol J⁻¹: between 3.34 (all at 400 nm) and 5.85."""
    return photons_between(spectrum, *PAR_NM) / power_between(spectrum, *PAR_NM)


def band_shares(spectrum: Spectrum) -> BandShares:
    """Blue (400-500 nm), green (500-600), red (600-700) and far-red (700-800) per PAR photon."""
    par = photons_between(spectrum, *PAR_NM)
    return BandShares(
        blue=photons_between(spectrum, *BLUE_NM) / par,
        green=photons_between(spectrum, *GREEN_NM) / par,
        red=photons_between(spectrum, *RED_NM) / par,
        far_red=photons_between(spectrum, *FAR_RED_NM) / par,
    )


def wavebands_of(spectrum: Spectrum) -> Wavebands:
    """Photons of each waveband of ``plan.wavebands``, per PAR photon."""
    par = photons_between(spectrum, *PAR_NM)
    return Wavebands(
        **{band: photons_between(spectrum, *limits) / par for band, limits in LIMITS_NM.items()}
    )


def spectrum_figures(spectrum: Spectrum) -> SpectrumFigures:
    """All that is shown of a spectrum, at once."""
    per_umol = lux_per_umol(spectrum)
    return SpectrumFigures(
        lux_per_umol=per_umol,
        umol_per_lumen=1 / per_umol,
        umol_per_joule_of_par=umol_per_joule_of_par(spectrum),
        shares=band_shares(spectrum),
    )


def photon_flux_from_lumens(flux_lm: float, spectrum: Spectrum) -> float:
    """PPF in µmol s⁻¹ of a lamp of this spectrum that gives ``flux_lm`` lumens."""
    return flux_lm * umol_per_lumen(spectrum)


def _joule_per_umol(nm: FloatArray) -> FloatArray:
    return MOLAR_PHOTON_ENERGY_J_NM_PER_UMOL / nm


def _integral(
    spectrum: Spectrum,
    weight: Callable[[FloatArray], FloatArray],
    low_nm: float,
    high_nm: float,
    edges_nm: FloatArray = _NO_EDGES,
) -> float:
    """Integral of values times weight; ``edges_nm`` are where the weight bends."""
    nodes = np.array(spectrum.wavelengths_nm)
    low, high = max(low_nm, float(nodes[0])), min(high_nm, float(nodes[-1]))
    if high <= low:
        return 0.0
    cuts = np.concatenate((nodes, edges_nm, [low, high]))
    cuts = np.unique(cuts[(cuts >= low) & (cuts <= high)])
    half = np.diff(cuts) / 2
    nm = (cuts[:-1] + half)[:, None] + half[:, None] * _GAUSS_NODES
    heights = np.interp(nm, nodes, np.array(spectrum.values)) * weight(nm)
    return float(np.sum(heights * _GAUSS_WEIGHTS * half[:, None]))


# -- Physical constants of light, with their sources -----------------------------------
# The first three are exact by the definition of the SI (BIPM, The International System of
# Units, 9th edition, 2019; the values are those of CODATA 2018 and 2022).

PLANCK_J_S: Final = 6.626_070_15e-34
"""Planck constant h in J s, exact."""

LIGHT_SPEED_M_S: Final = 299_792_458.0
"""Speed of light in vacuum c in m s⁻¹, exact."""

AVOGADRO_PER_MOL: Final = 6.022_140_76e23
"""Avogadro constant N_A in mol⁻¹, exact."""

MOLAR_PHOTON_ENERGY_J_NM_PER_UMOL: Final = (
    PLANCK_J_S * LIGHT_SPEED_M_S * AVOGADRO_PER_MOL * 1.0e9 * 1.0e-6
)
"""N_A h c in J nm µmol⁻¹ (119.627): divided by a wavelength in nm, the energy of a µmol."""

LUMINOUS_EFFICACY_LM_PER_W: Final = 683.002
"""K_m, maximum luminous efficacy of daylight vision, in lm W⁻¹.

The SI fixes 683 lm/W at 540 THz (555.016 nm in air), where V(λ) is a little below 1, so
that its maximum is 683.002 (CIE 018:2019, The Basis of Physical Photometry, 3rd edition;
ISO 23539:2023).
"""

PAR_NM: Final = (400.0, 700.0)
"""Photosynthetically active radiation (ANSI/ASABE S640 JUL2017)."""

BLUE_NM: Final = (400.0, 500.0)
GREEN_NM: Final = (500.0, 600.0)
RED_NM: Final = (600.0, 700.0)
"""The three customary hundreds of PAR; together they are PAR."""

FAR_RED_NM: Final = (700.0, 800.0)
"""Far-red (ANSI/ASABE S640 JUL2017); not part of PAR."""


# -- How bright a watt looks to the eye ------------------------------------------------

FIRST_NM: Final = 360.0
STEP_NM: Final = 5.0

# CIE 1924 photopic V(λ), every fifth value of the 1 nm table (CIE 018:2019, table 1;
# ISO 23539:2023). A row holds 50 nm. Compared value by value with an independent copy in
# tests/reference/test_spectra_reference.py.
_TABLE: Final[tuple[float, ...]] = (
    # 360 nm
    *(3.917e-06, 6.965e-06, 1.239e-05, 2.202e-05, 3.9e-05),
    *(6.4e-05, 0.00012, 0.000217, 0.000396, 0.00064),
    # 410 nm
    *(0.00121, 0.00218, 0.004, 0.0073, 0.0116),
    *(0.01684, 0.023, 0.0298, 0.038, 0.048),
    # 460 nm
    *(0.06, 0.0739, 0.09098, 0.1126, 0.13902),
    *(0.1693, 0.20802, 0.2586, 0.323, 0.4073),
    # 510 nm
    *(0.503, 0.6082, 0.71, 0.7932, 0.862),
    *(0.91485, 0.954, 0.9803, 0.99495, 1.0),
    # 560 nm
    *(0.995, 0.9786, 0.952, 0.9154, 0.87),
    *(0.8163, 0.757, 0.6949, 0.631, 0.5668),
    # 610 nm
    *(0.503, 0.4412, 0.381, 0.321, 0.265),
    *(0.217, 0.175, 0.1382, 0.107, 0.0816),
    # 660 nm
    *(0.061, 0.04458, 0.032, 0.0232, 0.017),
    *(0.01192, 0.00821, 0.005723, 0.004102, 0.002929),
    # 710 nm
    *(0.002091, 0.001484, 0.001047, 0.00074, 0.00052),
    *(0.0003611, 0.0002492, 0.0001719, 0.00012, 8.48e-05),
    # 760 nm
    *(6e-05, 4.24e-05, 3e-05, 2.12e-05, 1.499e-05),
    *(1.06e-05, 7.4657e-06, 5.2578e-06, 3.7029e-06, 2.6078e-06),
    # 810 to 830 nm
    *(1.8366e-06, 1.2934e-06, 9.1093e-07, 6.4153e-07, 4.5181e-07),
)

PHOTOPIC: Final[FloatArray] = np.array(_TABLE)
"""V at 360, 365 … 830 nm, shape (95,)."""

PHOTOPIC_WAVELENGTHS_NM: Final[FloatArray] = FIRST_NM + STEP_NM * np.arange(
    PHOTOPIC.size, dtype=np.float64
)
"""Wavelengths of ``PHOTOPIC`` in nm, shape (95,)."""


def photopic_weight(wavelengths_nm: npt.ArrayLike) -> FloatArray:
    """V(λ), 0 to 1, at wavelengths in nm of any shape; zero outside 360-830 nm.

    Between the 5 nm values by the cubic through the four nearest: within 0.0003 of the
    1 nm table, where a straight line would be up to 0.002 low at the top.
    """
    nm = np.asarray(wavelengths_nm, dtype=np.float64)
    position = (nm - FIRST_NM) / STEP_NM
    inside = (position >= 0) & (position <= PHOTOPIC.size - 1)
    left = np.clip(np.floor(np.where(inside, position, 0.0)), 1, PHOTOPIC.size - 3).astype(np.intp)
    t = np.where(inside, position, 0.0) - left
    before, here = PHOTOPIC[left - 1], PHOTOPIC[left]
    after, beyond = PHOTOPIC[left + 1], PHOTOPIC[left + 2]
    cubic = (
        -t * (t - 1) * (t - 2) / 6 * before
        + (t + 1) * (t - 1) * (t - 2) / 2 * here
        - (t + 1) * t * (t - 2) / 2 * after
        + (t + 1) * t * (t - 1) / 6 * beyond
    )
    return np.where(inside, np.clip(cubic, 0.0, 1.0), 0.0)
