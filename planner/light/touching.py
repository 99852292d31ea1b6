"""Where boxes touch the hull of a room.

What stands on the bottom, hangs from the ceiling or stands against a wall covers it there, and
the face it does so with is no surface either.
"""

from __future__ import annotations

import numpy as np
import numpy.typing as npt

from planner.light.boxes import FACES, Box
from planner.light.prism import FloatArray, Prism

SHUT = 1e-3
"""Metres; what ends so close to something else has no gap there."""

_HAIR = 1e-9


def touching(prism: Prism, plane: int) -> list[Box]:
    """Boxes that touch a plane of the hull; rows, open between, and what leans are left out."""
    single = [box for box in prism.boxes if box.count == 1 and not box.tilt]
    if plane == prism.bottom:
        return [box for box in single if box.z0 < prism.z0 + _HAIR]
    if plane == prism.ceiling:
        return [box for box in single if box.z1 > prism.z1 - _HAIR]
    if plane >= prism.wall_count:
        return []  # the face of a box
    corner, normal = prism.corners[plane], prism.plane_normals()[:2, plane]
    off = [np.abs((box.outline() - corner) @ normal) for box in single]
    return [box for box, each in zip(single, off, strict=True) if (each < SHUT).sum() >= 2]


def covered(prism: Prism, plane: int, points: FloatArray) -> npt.NDArray[np.bool_]:
    """Which points (3, ...) of a plane of the hull lie behind a box that touches it."""
    flat = points.reshape(3, -1)
    x, y, z = flat - 1.5 * SHUT * prism.plane_normals()[:, plane, None]
    result = np.zeros(x.size, dtype=bool)
    for box in touching(prism, plane):
        behind = box.covers(x, y)
        if plane < prism.wall_count:
            behind &= (z > box.z0) & (z < box.z1)
        result |= behind
    return result.reshape(points.shape[1:])


def lies_against(prism: Prism, plane: int) -> bool:
    """Whether a plane is the face of a box that lies against bottom, ceiling or a wall."""
    number, face = divmod(plane - prism.wall_count - 2, FACES)
    if number < 0:
        return False
    box = prism.boxes[number]
    if face >= FACES - 2:
        return box in touching(prism, prism.bottom if face == FACES - 1 else prism.ceiling)
    origin, along, _, length, _, _ = prism.box_faces[plane - prism.wall_count - 2]
    ends = np.stack([origin, origin + length * along])[:, None, :2] - prism.corners
    off = np.abs((ends * prism.plane_normals()[:2, : prism.wall_count].T).sum(axis=2))
    at = (ends * prism.tangents).sum(axis=2)
    on = (off < SHUT) & (at > -SHUT) & (at < prism.lengths + SHUT)
    return box.count == 1 and not box.tilt and bool(on.all(axis=0).any())
