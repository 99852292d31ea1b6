"""Opaque boxes in the room: shelves, pots, lamp housings.

A box stands upright, turned about the vertical; the housing of a tilted lamp leans as its lamp.
The housing over a lamp of several bars is a row of equal boxes side by side, and is one ``Box``
too: the boxes of a row share their six faces, numbered after the walls: +x, -x, +y, -y (in its
own axes), top, underside.

A ray meets a row in closed form, whatever the number of boxes in it: where it enters the
outline of the row it lies in one box or in the gap before one. Of many rows only those are
tried whose outlines a ray can reach, by a tree of bounding boxes (Kay and Kajiya, 1986,
SIGGRAPH 20, 269).
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property

import numpy as np
import numpy.typing as npt

FloatArray = npt.NDArray[np.float64]
IntArray = npt.NDArray[np.intp]
Face = tuple[FloatArray, FloatArray, FloatArray, float, float, FloatArray]

FACES = 6
TOP_FACE = 4
_NEAR = 1e-9
_FLAT = 1e-15
"""Least speed along an axis: rays along a face would divide by nothing."""


@dataclass(frozen=True)
class Box:
    """Centre (x, y), height range, size along its own axes (metres) and turn (radians).

    A row of ``count`` equal boxes fills ``width`` with boxes ``each`` wide, evenly spread along
    its own y axis. Where it is tilted (radians) it is turned about its own x axis through
    (x, y, z0), the middle of its underside, as the lamp under it (see ``Source``); its heights
    are those it has without.
    """

    x: float
    y: float
    z0: float
    z1: float
    length: float
    width: float
    rotation: float = 0.0
    count: int = 1
    each: float = 0.0
    tilt: float = 0.0

    @property
    def fill(self) -> float:
        """Share of the row's width that its boxes take."""
        return self.count * self.each / self.width if self.count > 1 else 1.0

    @property
    def pitch(self) -> float:
        """Distance from each box of a row to the next in metres."""
        return (self.width - self.each) / (self.count - 1)

    def bounds(self) -> FloatArray:
        """Lowest and highest corner of a box along the room's axes, shape (2, 3)."""
        if self.tilt:
            axes, centre, half = self._frame
            reach = np.abs(axes.T) @ half
            return np.stack([(centre - reach)[:, 0], (centre + reach)[:, 0]])
        cos, sin = abs(math.cos(self.rotation)), abs(math.sin(self.rotation))
        a = (cos * self.length + sin * self.width) / 2
        b = (sin * self.length + cos * self.width) / 2
        return np.array([[self.x - a, self.y - b, self.z0], [self.x + a, self.y + b, self.z1]])

    @cached_property
    def _frame(self) -> tuple[FloatArray, FloatArray, FloatArray]:
        """Its own axes as rows (3, 3), its centre (3, 1) and half its size (3, 1)."""
        cos, sin = math.cos(self.rotation), math.sin(self.rotation)
        axes = np.array([[cos, sin, 0.0], [-sin, cos, 0.0], [0.0, 0.0, 1.0]])
        centre = np.array([[self.x], [self.y], [(self.z0 + self.z1) / 2]])
        if self.tilt:
            lean, up = math.cos(self.tilt), math.sin(self.tilt)
            axes = np.array([[1.0, 0.0, 0.0], [0.0, lean, up], [0.0, -up, lean]]) @ axes
            centre = np.array([[self.x], [self.y], [self.z0]])
            centre = centre + axes[2][:, None] * (self.z1 - self.z0) / 2
        return axes, centre, np.array([[self.length], [self.width], [self.z1 - self.z0]]) / 2

    def enter(self, origin: FloatArray, direction: FloatArray) -> tuple[FloatArray, IntArray]:
        """Distance at which rays (3, N) enter a box (infinite if not) and the face met.

        Rays that start on a face and leave do not enter; a start inside is met at once.
        """
        axes, centre, half = self._frame
        place, speed = axes @ (origin - centre), _moving(axes @ direction)
        if self.count > 1:
            return self._enter_row(place, speed, half)
        return _enter(place, speed, half)

    def _enter_row(
        self, place: FloatArray, speed: FloatArray, half: FloatArray
    ) -> tuple[FloatArray, IntArray]:
        """As ``enter`` for the boxes of a row, in its own axes about its centre.

        Where the ray enters the row's outline it lies in the period of one box: it meets this
        one, or the next in the direction it moves, or none.
        """
        distance, face = _enter(place, speed, half)
        rays = np.flatnonzero(distance < np.inf)
        place, speed = place.take(rays, axis=1), speed.take(rays, axis=1)
        at = (place[1] + distance[rays] * speed[1] + self.width / 2) / self.pitch
        period = np.clip(np.floor(at), 0, self.count - 1)
        onward = np.clip(period + np.sign(speed[1]), 0, self.count - 1)
        half = half * np.array([[1.0], [self.each / self.width], [1.0]])
        first, side = np.full(rays.size, np.inf), face[rays]
        for number in (onward, period):
            moved = place.copy()
            moved[1] -= (self.each - self.width) / 2 + number * self.pitch
            met, through = _enter(moved, speed, half)
            side = np.where(met < first, through, side)
            np.minimum(first, met, out=first)
        distance[rays], face[rays] = first, side
        return distance, face

    def faces(self) -> list[Face]:
        """For each face: origin (3,), u axis, v axis, size along u and v, outward normal.

        Of a row, those of its outline.
        """
        cos, sin = math.cos(self.rotation), math.sin(self.rotation)
        ex, ey, ez = np.array([cos, sin, 0.0]), np.array([-sin, cos, 0.0]), np.array([0, 0, 1.0])
        centre = np.array([self.x, self.y, 0.0])
        a, b, h = self.length / 2, self.width / 2, self.z1 - self.z0
        low, high = self.z0 * ez, self.z1 * ez
        if self.tilt:
            ex, ey, ez = self._frame[0]
            centre, low, high = np.array([self.x, self.y, self.z0]), 0.0 * ez, h * ez
        corner = centre - a * ex - b * ey
        return [
            (centre + a * ex - b * ey + low, ey, ez, 2 * b, h, ex),
            (corner + low, ey, ez, 2 * b, h, -ex),
            (centre - a * ex + b * ey + low, ex, ez, 2 * a, h, ey),
            (corner + low, ex, ez, 2 * a, h, -ey),
            (corner + high, ex, ey, 2 * a, 2 * b, ez),
            (corner + low, ex, ey, 2 * a, 2 * b, -ez),
        ]

    @property
    def lies(self) -> tuple[float, float]:
        """Its lowest and highest point in metres."""
        if not self.tilt:
            return self.z0, self.z1
        low, high = self.bounds()[:, 2]
        return float(low), float(high)

    def stands(self, z: float, hair: float) -> bool:
        """Whether it stands at a height, give or take a hair (metres)."""
        low, high = self.lies
        return low < z + hair and high > z + hair

    def at(self, z: float) -> Box:
        """Where it stands at a height between its lowest and highest point: an upright box.

        A level plane cuts a box that leans along its own x axis in a rectangle. Of a row it is
        that about all of its boxes.
        """
        if not self.tilt:
            return self
        lean, up, tall = math.cos(self.tilt), math.sin(self.tilt), self.z1 - self.z0
        starts = (
            [-self.width / 2 + k * self.pitch for k in range(self.count)]
            if self.count > 1
            else [-self.width / 2]
        )
        each = self.each if self.count > 1 else self.width
        cut: list[float] = []
        for start in starts:
            ends = [
                (y * lean - h * up, y * up + h * lean + self.z0 - z)
                for y, h in ((start, 0.0), (start + each, 0.0), (start + each, tall), (start, tall))
            ]
            for (y, over), (other, beyond) in zip(ends, ends[1:] + ends[:1], strict=True):
                if (over > 0) != (beyond > 0):
                    cut.append(y + (other - y) * over / (over - beyond))
        low, high = (min(cut), max(cut)) if cut else (0.0, 0.0)
        cos, sin, middle = math.cos(self.rotation), math.sin(self.rotation), (low + high) / 2
        return Box(
            self.x - sin * middle, self.y + cos * middle, *self.lies, self.length, high - low,
            self.rotation,
        )  # fmt: skip

    def covers(self, x: FloatArray, y: FloatArray) -> npt.NDArray[np.bool_]:
        """Whether points of the plan lie over or under the box or its row's outline, any shape."""
        cos, sin = math.cos(self.rotation), math.sin(self.rotation)
        along = (x - self.x) * cos + (y - self.y) * sin
        across = (y - self.y) * cos - (x - self.x) * sin
        return (np.abs(along) < self.length / 2) & (np.abs(across) < self.width / 2)

    def outline(self) -> FloatArray:
        """Its corners on the plan, counter-clockwise, shape (4, 2)."""
        axes, centre, half = self._frame
        signs = np.array([[-1.0, -1.0], [1.0, -1.0], [1.0, 1.0], [-1.0, 1.0]])
        return centre[:2, 0] + signs * half[:2, 0] @ axes[:2, :2]


def _moving(speed: FloatArray) -> FloatArray:
    """Speeds with a hair of slope where there is none."""
    moving: FloatArray = np.where(np.abs(speed) < _FLAT, _FLAT, speed)
    return moving


def _enter(place: FloatArray, speed: FloatArray, half: FloatArray) -> tuple[FloatArray, IntArray]:
    """As ``Box.enter`` for a box of half size (3, 1) about the start of its own axes."""
    inverse = 1.0 / speed
    middle = place * -inverse
    reach = np.abs(inverse) * half
    enters = middle - reach
    first = np.maximum(np.maximum(enters[0], enters[1]), enters[2])
    middle += reach
    last = np.minimum(np.minimum(middle[0], middle[1]), middle[2])
    # A ray that moves up along an axis enters by the lower face.
    below = speed > 0
    face = np.where(first == enters[1], 2 + below[1], 4 + below[2])
    face = np.where(first == enters[0], below[0], face)
    met = (last > _NEAR) & (first < last)
    return np.where(met, np.maximum(first, 0.0), np.inf), face


_BRANCHES = 4

_SLACK, _WIDER = 1e-6, np.float32(1 + 1e-6)
"""Shares by which bounds and reach are taken wider than they are: sixteen roundings or more."""


@dataclass(frozen=True)
class Crowd:
    """Boxes that may stand in the way, with their numbers among all boxes of the room."""

    boxes: tuple[Box, ...]
    numbers: tuple[int, ...]

    @cached_property
    def bounds(self) -> FloatArray:
        """Corners of all boxes along the room's axes, shape (B, 2, 3)."""
        return np.array([box.bounds() for box in self.boxes]).reshape(-1, 2, 3)

    def between(self, low: FloatArray, high: FloatArray) -> Crowd:
        """Those that may stand between points within low…high, both (3,), of the room.

        What only touches the range from above or below stands in nobody's way.
        """
        bounds = self.bounds
        slack = np.array([_NEAR, _NEAR, -_NEAR])
        near = (bounds[:, 1] >= low - slack) & (bounds[:, 0] <= high + slack)
        kept = tuple(np.flatnonzero(near.all(axis=1)).tolist())
        if kept not in self._parts:
            self._parts[kept] = self if len(kept) == len(self.boxes) else self._part(kept)
        return self._parts[kept]

    @cached_property
    def _parts(self) -> dict[tuple[int, ...], Crowd]:
        """Parts asked for before, each with its own tree."""
        return {}

    def _part(self, which: Sequence[int]) -> Crowd:
        return Crowd(tuple(self.boxes[k] for k in which), tuple(self.numbers[k] for k in which))

    @cached_property
    def _branches(self) -> tuple[tuple[Crowd, ...], npt.NDArray[np.float32]]:
        """Parts that lie close together, down to single boxes, and their bounds (2, n, 3)."""
        parts = [self]
        while len(parts) < min(_BRANCHES, len(self.boxes)):
            largest = max(parts, key=lambda part: len(part.boxes))
            parts.remove(largest)
            parts += largest._halves()
        low = np.array([part.bounds[:, 0].min(axis=0) for part in parts])
        high = np.array([part.bounds[:, 1].max(axis=0) for part in parts])
        slack = _SLACK * (1.0 + max(np.abs(low).max(), np.abs(high).max()))
        return tuple(parts), np.array([low - slack, high + slack], dtype=np.float32)

    def _halves(self) -> list[Crowd]:
        """The boxes in two halves, divided along the axis on which they spread most."""
        centre = self.bounds.mean(axis=1)
        order = np.argsort(centre[:, np.argmax(np.ptp(centre, axis=0))], kind="stable")
        half = len(order) // 2
        return [self._part(order[:half].tolist()), self._part(order[half:].tolist())]

    def meet(
        self, origin: FloatArray, direction: FloatArray, distance: FloatArray, plane: IntArray
    ) -> None:
        """Bring the nearest hits of rays (3, N) up to date, in place.

        ``distance`` (N,) and ``plane`` (N,) tell the nearest surface so far. A box further on
        is not looked for. Faces are numbered from 0: face f of box b is 6 b + f.
        """
        if not self.boxes:
            return
        if len(self.boxes) == 1:
            enters, face = self.boxes[0].enter(origin, direction)
            np.copyto(plane, FACES * self.numbers[0] + face, where=enters < distance)
            np.minimum(distance, enters, out=distance)
            return
        inverse = 1.0 / _moving(direction)
        quick = np.concatenate([inverse, origin * inverse]).astype(np.float32)
        self._descend((origin, direction), quick, np.arange(len(distance)), distance, plane)

    def _descend(
        self,
        rays: tuple[FloatArray, FloatArray],
        quick: npt.NDArray[np.float32],
        which: IntArray,
        distance: FloatArray,
        plane: IntArray,
    ) -> None:
        """As ``meet`` for some of the rays, ``which`` (n,) of origin and direction.

        ``quick`` (6, n) holds 1/direction and origin/direction of these: single precision is
        enough to pass over what is out of reach, for the bounds are a little wide.
        """
        branches, (low, high) = self._branches
        reach = distance.take(which).astype(np.float32)
        reach *= _WIDER
        first, last = np.empty_like(reach), np.empty_like(reach)
        for branch, bottom, top in zip(branches, low, high, strict=True):
            first.fill(0.0)
            np.copyto(last, reach)
            for axis in range(3):
                one = quick[axis] * bottom[axis]
                one -= quick[axis + 3]
                other = quick[axis] * top[axis]
                other -= quick[axis + 3]
                np.maximum(first, np.minimum(one, other), out=first)
                np.minimum(last, np.maximum(one, other, out=one), out=last)
            among = np.flatnonzero(first <= last)
            if among.size == 0:
                continue
            if len(branch.boxes) == 1:
                branch._try(rays, which.take(among), distance, plane)
            else:
                branch._descend(rays, quick.take(among, axis=1), which.take(among), distance, plane)

    def _try(
        self,
        rays: tuple[FloatArray, FloatArray],
        which: IntArray,
        distance: FloatArray,
        plane: IntArray,
    ) -> None:
        """As ``_descend`` for a single box."""
        enters, face = self.boxes[0].enter(*(part.take(which, axis=1) for part in rays))
        nearer = np.flatnonzero(enters < distance.take(which))
        met = which.take(nearer)
        distance[met] = enters.take(nearer)
        plane[met] = FACES * self.numbers[0] + face.take(nearer)
