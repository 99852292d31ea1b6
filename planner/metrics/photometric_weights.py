"""How bright a watt looks to the eye: the luminous efficiency V(λ) of daylight vision."""

from __future__ import annotations

from typing import Final

import numpy as np
import numpy.typing as npt

FloatArray = npt.NDArray[np.float64]

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
