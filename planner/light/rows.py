"""Rows of boxes, such as the housings over the bars of a lamp, as surfaces that are divided."""

from __future__ import annotations

import numpy as np

from planner.light.boxes import FACES
from planner.light.prism import FloatArray, IntArray, Prism


class Rows:
    """Where on the faces of rows of boxes (see ``Box``) there is a box and where a gap.

    Faces of a row are divided as if its boxes stood side by side without gaps. The sides
    between boxes lie one behind the other; they are taken as one face, and points on it are
    spread over all of them.

    Attributes
    ----------
    share
        Area of a face as a share of its outline, shape (planes,).
    any
        Whether there are rows of more than one box.
    on_row
        Which planes are faces of such rows, shape (planes,).
    """

    def __init__(self, prism: Prism) -> None:
        self.share = np.ones(prism.plane_count)
        self._count = np.ones(prism.plane_count, dtype=np.intp)
        self._width, self._each, self._pitch = np.ones((3, prism.plane_count))
        self._axis = np.full(prism.plane_count, -1)
        for number, box in enumerate(prism.boxes):
            if box.count == 1:
                continue
            planes = prism.wall_count + 2 + FACES * number + np.arange(FACES)
            self._axis[planes] = _ROW_AXIS
            self.share[planes] = np.where(_ROW_AXIS == _BEHIND, box.count, box.fill)
            self._count[planes], self._width[planes] = box.count, box.width
            self._each[planes], self._pitch[planes] = box.each, box.pitch
        self.on_row = self._axis >= 0
        self.any = bool(self.on_row.any())

    def onto_boxes(
        self, plane: IntArray, u: FloatArray, v: FloatArray
    ) -> tuple[FloatArray, FloatArray, FloatArray]:
        """Points of the faces as divided (m) to points on boxes, and the way inward (m).

        ``u`` and ``v`` have shape (n, R), ``plane`` (n,).
        """
        into = np.zeros_like(u)
        if not self.any:
            return u, v, into
        u, v = u.copy(), v.copy()
        for axis, place in ((0, u), (1, v)):
            rows = np.flatnonzero(self._axis[plane] == axis)
            which = plane[rows, None]
            closed = place[rows] / self._width[which] * self._count[which]
            box = np.minimum(np.floor(closed), self._count[which] - 1)
            place[rows] = box * self._pitch[which] + (closed - box) * self._each[which]
        rows = np.flatnonzero(self._axis[plane] == _BEHIND)
        which = plane[rows, None]
        turn = np.arange(u.shape[1]) * _TURN % 1.0
        into[rows] = np.floor(turn * self._count[which]) * self._pitch[which]
        return u, v, into

    def close_up(self, plane: IntArray, u: FloatArray, v: FloatArray, columns: IntArray) -> None:
        """Points met on boxes to those of the faces as divided, in place.

        ``u`` (N,) is in texels, of which a plane has ``columns``, ``v`` in metres.
        """
        axis = self._axis.take(plane)
        for number, place in ((0, u), (1, v)):
            rays = np.flatnonzero(axis == number)
            which = plane[rays]
            width, count, pitch = self._width[which], self._count[which], self._pitch[which]
            scale = columns[which] / width if number == 0 else 1.0
            across = place[rays] / scale
            box = np.clip(np.floor(across / pitch), 0, count - 1)
            within = np.clip((across - box * pitch) / self._each[which], 0.0, 1.0)
            place[rays] = (box + within) / count * width * scale


_BEHIND = 2
_ROW_AXIS = np.array([0, 0, _BEHIND, _BEHIND, 1, 1])
"""Along which axis of each face of a row its boxes follow one another."""

_TURN = np.sqrt(3.0) - 1
"""Spreads points over the boxes of a row, independently of the points' other places."""
