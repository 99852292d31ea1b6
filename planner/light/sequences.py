"""Low-discrepancy points: evenly spread 'random' numbers, the same at every run.

Additive recurrence on the generalised golden ratio (M. Roberts, 2018, 'The unreasonable
effectiveness of quasirandom sequences'; a Kronecker sequence). A shift modulo 1 per
group (Cranley and Patterson, 1976, SIAM J. Numer. Anal. 13, 904) makes the errors of the
groups independent while each group stays evenly spread.
"""

from __future__ import annotations

import numpy as np
import numpy.typing as npt

FloatArray = npt.NDArray[np.float64]


_GOLDEN = (np.sqrt(5.0) - 1) / 2
_PLASTIC = np.array([0.7548776662466927, 0.5698402909980532])
_ROOT = np.sqrt(2.0) - 1


def shifted_points(
    groups: int, count: int, dimensions: int, random: np.random.Generator
) -> FloatArray:
    """Points in [0, 1), shape (dimensions, groups, count), one random shift per group.

    Up to five dimensions. The *last two of four* (directions, which matter most) form a
    Fibonacci lattice, the first two (places) the plane recurrence on the plastic number,
    a fifth one a recurrence of its own.
    """
    return shifted_by(random.random((dimensions, groups)), count)


def shifted_by(shift: FloatArray, count: int) -> FloatArray:
    """As ``shifted_points``, with the shifts (dimensions, groups) given."""
    index = np.arange(count)
    lattice = np.stack(
        [
            index * _PLASTIC[0],
            index * _PLASTIC[1],
            (index + 0.5) / count,
            index * _GOLDEN,
            index * _ROOT,
        ]
    )[: len(shift)]
    points = lattice[:, None, :] + shift[:, :, None]
    points -= np.floor(points)
    # x - floor(x) can round up to 1.0; index arithmetic further on relies on < 1.
    return np.minimum(points, np.nextafter(1.0, 0.0), out=points)


def cosine_directions(u: FloatArray, v: FloatArray) -> tuple[FloatArray, FloatArray, FloatArray]:
    """Directions about +z with density cosθ/π from two uniform arrays (any shape).

    Returns (x, y, z) components. Malley's method: a uniform disc lifted to the hemisphere.
    """
    radius = np.sqrt(u)
    angle = (2 * np.pi) * v
    return radius * np.cos(angle), radius * np.sin(angle), np.sqrt(1.0 - u)
