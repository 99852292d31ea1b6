"""The balance of diffuse light: φ = φ_lamp + Kᵀ R_d φ, solved for all lamps at once."""

from __future__ import annotations

import numpy as np

from planner.light.prism import FloatArray


class NothingAbsorbsError(ValueError):
    """No surface or opening takes up light, so that it would grow without bound."""


def response(factors: FloatArray, diffuse: FloatArray) -> FloatArray:
    """Matrix (P, P) that turns flux on patches from lamps into total flux on patches.

    ``factors`` is the exchange (see ``exchange``), ``diffuse`` ρ_d of each patch (P,).
    Kept between edits, so that moving a lamp costs one product.

    Raises
    ------
    NothingAbsorbsError
        If light cannot leave: every surface reflects all it receives.
    """
    system = np.eye(len(diffuse)) - factors.T * diffuse
    try:
        inverse: FloatArray = np.asarray(np.linalg.inv(system), dtype=np.float64)
    except np.linalg.LinAlgError as error:
        raise NothingAbsorbsError(_SENTENCE) from error
    if not np.isfinite(inverse).all() or np.abs(inverse).max() > 1e6:
        raise NothingAbsorbsError(_SENTENCE)
    return inverse


def check_something_absorbs(total: FloatArray) -> None:
    """Refuse a room in which no surface takes up light, before rays are cast in vain.

    Parameters
    ----------
    total
        ρ_d + ρ_s of every facet, shape (F,).

    Raises
    ------
    NothingAbsorbsError
        If all are 1.
    """
    if (total >= 1 - 1e-9).all():
        raise NothingAbsorbsError(_SENTENCE)


_SENTENCE = (
    "Every surface of the space reflects all light and nothing absorbs it, so no balance "
    "exists; give the canopy, a wall or the ceiling a reflectance below 1."
)
