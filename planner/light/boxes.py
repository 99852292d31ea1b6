"""Opaque boxes in the room: shelves, pots, lamp housings.

A box stands upright, turned about the vertical. Its six faces are planes like the walls,
numbered after them: +x, -x, +y, -y (in its own axes), top, underside.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

FloatArray = npt.NDArray[np.float64]

FACES = 6
_NEAR = 1e-9


@dataclass(frozen=True)
class Box:
    """Centre (x, y), height range, size along its own axes (metres) and turn (radians)."""

    x: float
    y: float
    z0: float
    z1: float
    length: float
    width: float
    rotation: float = 0.0

    def enter(
        self, origin: FloatArray, direction: FloatArray
    ) -> tuple[FloatArray, npt.NDArray[np.intp]]:
        """Distance at which rays (3, N) enter the box (infinite if not) and the face met.

        Slab method (Kay and Kajiya, 1986, SIGGRAPH 20, 269). Rays that start on a face
        and leave do not enter.
        """
        cos, sin = math.cos(self.rotation), math.sin(self.rotation)
        px, py = origin[0] - self.x, origin[1] - self.y
        local = (
            (px * cos + py * sin, direction[0] * cos + direction[1] * sin, self.length / 2),
            (py * cos - px * sin, direction[1] * cos - direction[0] * sin, self.width / 2),
            (origin[2] - (self.z0 + self.z1) / 2, direction[2], (self.z1 - self.z0) / 2),
        )
        first = np.full(origin.shape[1], -np.inf)
        last = np.full(origin.shape[1], np.inf)
        face = np.zeros(origin.shape[1], dtype=np.intp)
        for axis, (place, speed, half) in enumerate(local):
            # Rays along a face would divide by nothing; a hair of slope settles them.
            safe = np.where(np.abs(speed) < 1e-15, 1e-15, speed)
            middle, reach = -place / safe, half / np.abs(safe)
            enters = middle - reach
            # A ray moving in +x enters through the -x face.
            face = np.where(enters > first, 2 * axis + (safe > 0), face)
            np.maximum(first, enters, out=first)
            np.minimum(last, middle + reach, out=last)
        # A start inside the box sees nothing: it is met at once.
        met = (last > _NEAR) & (first < last)
        return np.where(met, np.maximum(first, 0.0), np.inf), face

    def faces(self) -> list[tuple[FloatArray, FloatArray, FloatArray, float, float, FloatArray]]:
        """For each face: origin (3,), u axis, v axis, size along u and v, outward normal."""
        cos, sin = math.cos(self.rotation), math.sin(self.rotation)
        ex, ey, ez = np.array([cos, sin, 0.0]), np.array([-sin, cos, 0.0]), np.array([0, 0, 1.0])
        centre = np.array([self.x, self.y, 0.0])
        a, b, h = self.length / 2, self.width / 2, self.z1 - self.z0
        low, high = self.z0 * ez, self.z1 * ez
        corner = centre - a * ex - b * ey
        return [
            (centre + a * ex - b * ey + low, ey, ez, 2 * b, h, ex),
            (corner + low, ey, ez, 2 * b, h, -ex),
            (centre - a * ex + b * ey + low, ex, ez, 2 * a, h, ey),
            (corner + low, ex, ez, 2 * a, h, -ey),
            (corner + high, ex, ey, 2 * a, 2 * b, ez),
            (corner + low, ex, ey, 2 * a, 2 * b, -ez),
        ]
