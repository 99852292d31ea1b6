"""The two vertical planes of a lamp that a polar plot shows. No Qt here."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from planner.catalogue.lamp_files.convert import to_photometry
from planner.catalogue.lamp_files.photometry import Photometry, polar_curve
from planner.plan.lamp import LampModel

FloatArray = npt.NDArray[np.float64]


@dataclass(frozen=True, eq=False)
class PolarCurves:
    """Intensity along and across the lamp, as shares of the peak of both planes.

    ``angles_deg`` runs from -180 to 180, 0 straight down; ``across`` is None where it is
    the same curve as ``along``. ``upward`` says whether any light goes up.
    """

    angles_deg: FloatArray
    along: FloatArray
    across: FloatArray | None

    @property
    def upward(self) -> bool:
        """Whether light leaves above the horizon (more than a per cent of the peak)."""
        above = np.abs(self.angles_deg) > 91
        curves = [self.along, *([] if self.across is None else [self.across])]
        return any(bool((curve[above] > 0.01).any()) for curve in curves)


def curves_of_model(model: LampModel) -> PolarCurves:
    """The curves of a lamp of the catalogue, whatever its profile."""
    return curves_of(to_photometry(model))


def curves_of(photometry: Photometry) -> PolarCurves:
    """The curves of a lamp file."""
    angles, along = polar_curve(photometry, 0.0)
    _, across = polar_curve(photometry, 90.0)
    peak = max(float(along.max()), float(across.max())) or 1.0
    same = np.allclose(along, across, atol=0.005 * peak)
    return PolarCurves(angles, along / peak, None if same else across / peak)
