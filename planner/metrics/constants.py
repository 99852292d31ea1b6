"""Physical constants of light, with their sources.

The first three are exact by the definition of the SI (BIPM, The International System of
Units, 9th edition, 2019; the values are those of CODATA 2018 and 2022).
"""

from __future__ import annotations

from typing import Final

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
