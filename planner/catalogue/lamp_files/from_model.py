"""From a lamp of the catalogue back to photometry, for writing it as a file.

Photons have no candela of their own. With the lumens per µmol/s of a spectrum the candela
are absolute; without one they are scaled so that the whole lamp gives 1000 lm, and a
keyword of the file says so.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Final

import numpy as np

from planner.catalogue.lamp_files.integrate import total_lumens
from planner.catalogue.lamp_files.photometry import FloatArray, Opening, Photometry
from planner.plan.lamp import CosineProfile, LampModel, PointBody, TableProfile

PLAIN_LUMENS: Final = 1000.0
_FORMAT: Final = "IES:LM-63-2019"


def to_photometry(model: LampModel, lumens_per_umol: float | None = None) -> Photometry:
    """The light of a lamp as candela; see the module for their scale."""
    polar, azimuths, table = _distribution(model)
    shape = Photometry(
        polar_deg=polar,
        azimuths_deg=azimuths,
        candela=table,
        source_format=_FORMAT,
        watts=model.watts,
        opening=_opening(model),
    )
    if lumens_per_umol is None:
        lumens = PLAIN_LUMENS
        told = f"Candela are scaled to {lumens:g} lm; photon flux {model.ppf:g} umol/s"
    else:
        lumens = model.ppf * lumens_per_umol
        told = (
            f"Photon flux {model.ppf:g} umol/s, lumens by a spectrum of "
            f"{lumens_per_umol:.4g} lm per umol/s"
        )
    keywords = (("LUMINAIRE", model.name), ("OTHER", told))
    candela = table * (lumens / total_lumens(shape))
    return replace(shape, candela=candela, keywords=keywords)


def _distribution(model: LampModel) -> tuple[FloatArray, FloatArray, FloatArray]:
    """Polar angles, azimuths and relative intensities, the polar angles ending at 90 or 180."""
    profile = model.profile
    round_ = np.zeros(1)
    if isinstance(profile, CosineProfile):
        polar = np.arange(0.0, 90.5, 1.0)
        cosine = np.clip(np.cos(np.radians(polar)), 0.0, 1.0)
        # cos⁰ is 1 up to the horizon; rounding must not turn the last 0 into 1e-17.
        cosine[-1] = 0.0
        table = cosine**profile.exponent
        return polar, round_, table[None, :]
    if isinstance(profile, TableProfile):
        azimuths, rows = round_, np.array([profile.relative])
    else:
        azimuths, rows = np.array(profile.azimuths_deg), np.array(profile.relative)
    return (*_to_the_end(np.array(profile.angles_deg), rows, azimuths),)


def _to_the_end(
    polar: FloatArray, rows: FloatArray, azimuths: FloatArray
) -> tuple[FloatArray, FloatArray, FloatArray]:
    """The table from 0 to 90 or 180 as LM-63 wants it, dark where the profile says nothing."""
    end = 90.0 if polar[-1] <= 90 else 180.0
    small = 1.0e-3
    if polar[0] > 0:
        # Dark up to just before the first angle; a linear rise from 0 would add light.
        lead = [0.0, polar[0] - small] if polar[0] > small else [0.0]
        polar = np.concatenate([lead, polar])
        rows = np.hstack([np.zeros((len(rows), len(lead))), rows])
    if polar[-1] < end:
        tail = [polar[-1] + small, end] if end - polar[-1] > small else [end]
        polar = np.concatenate([polar, tail])
        rows = np.hstack([rows, np.zeros((len(rows), len(tail)))])
    return polar, azimuths, rows


def _opening(model: LampModel) -> Opening:
    if isinstance(model.body, PointBody):
        return Opening()
    length, width = model.size
    return Opening("rectangle", length, width)
