"""Narrow places: where surfaces lie so close together that they must be divided finer.

Light falls off into the gap between two surfaces over about its width g: a point behind the
edge by x sees ½ (1 - x/√(x² + g²)) of the half space before it (a strip between parallel
planes: Siegel and Howell, Thermal Radiation Heat Transfer, configuration factors). Patches
wider than that would carry the light of the open into the gap. So they are halved until none
is wider, across an edge, than the distance from that edge; along it light changes little.
The same spacing by the distance of what is near is used where diffuse light is interpolated
(Ward, Rubinstein and Clear, 1988, SIGGRAPH 22, 85).
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from planner.light.boxes import FACES
from planner.light.prism import FloatArray, IntArray, Prism
from planner.light.touching import SHUT

_HAIR = 1e-9

_DEEPEST = 7
"""Halvings along an edge of a patch."""

_CHINK = 0.05
"""Metres; the light that gets through less breadth may matter however far the map is."""

_FROM_MAP = 0.4
"""Detail is made out from the map up to about this share of the distance."""

_FINENESS = 1.5
"""Widths of a piece that go into its distance from an edge."""

_WIDER = 1.2
"""Pieces may be so many times larger when there would be too many."""

_OF_ROOM, _TIMES = 0.4, 2.0
"""Largest edge of a patch in the distance to what it faces, as light between the near is steep, and
how many times the patches there may be for it, about."""

_LOOKS, _MOST_OF = 6, 0.5
"""Looks from a wall along each edge for that distance, and the share of them that is less."""


@dataclass(frozen=True)
class Pieces:
    """Pieces of patches: ``of`` which patch (n,), corner (n, 2) and size (n, 2) along its axes.

    ``halvings`` (n, 2) tells how often each edge was halved.
    """

    of: IntArray
    low: FloatArray
    size: FloatArray
    halvings: IntArray

    def take(self, which: IntArray) -> Pieces:
        """Some of them."""
        return Pieces(self.of[which], self.low[which], self.size[which], self.halvings[which])


@dataclass(frozen=True)
class Frames:
    """Planes as coordinates along two axes: origins, u and v axes and inward normals, (3, n)."""

    origin: FloatArray
    u: FloatArray
    v: FloatArray
    inward: FloatArray


def _room_before(prism: Prism) -> FloatArray:
    """How far the hull's planes have the other side of the room before them, (planes,).

    The median of each, so that a leg counts and a corner does not; infinite for boxes.
    """
    hull = Prism(prism.corners, prism.z0, prism.z1)
    share = (np.arange(_LOOKS) + 0.5) / _LOOKS
    a, b = (grid.ravel() for grid in np.meshgrid(share, share))
    result = np.full(prism.plane_count, np.inf)
    normals = hull.plane_normals()
    for wall, (corner, way, length) in enumerate(
        zip(prism.corners, prism.tangents, prism.lengths, strict=True)
    ):
        xy = corner[:, None] + a * length * way[:, None]
        start = np.stack([*xy, prism.z0 + b * (prism.z1 - prism.z0)])
        before, _ = hull.first_hit(start, np.repeat(-normals[:, wall, None], a.size, axis=1))
        result[wall] = np.quantile(before, _MOST_OF)
    result[[prism.ceiling, prism.bottom]] = prism.z1 - prism.z0
    return result


def wanted_sizes(
    prism: Prism, planes: IntArray, sizes: FloatArray, patch_size: float
) -> FloatArray:
    """Wanted edges of the patches of each facet, (F, 1), by the room before its plane (F,).

    ``sizes`` (F, 2) are those of the facets, ``patch_size`` what is wanted in the open.
    """
    wanted = np.minimum(patch_size, _OF_ROOM * _room_before(prism)[planes, None])
    times = (sizes / wanted).prod(axis=1).sum() / (sizes / patch_size).prod(axis=1).sum()
    return np.asarray(np.minimum(patch_size, wanted * max(times / _TIMES, 1.0) ** 0.5))


class Narrow:
    """The narrow places of a room, in boxes that stand (or hang) close to something.

    ``z`` is the height of the map: detail far from it is not seen, but for what lies about the
    undersides of boxes and between boxes, for there may be a lamp.
    """

    def __init__(self, prism: Prism, frames: Frames, z: float) -> None:
        self._prism, self._frames, self._z = prism, frames, z
        first = prism.wall_count + 2
        plane = np.arange(len(prism.box_faces))
        single = np.array([box.count == 1 for box in prism.boxes], dtype=bool)
        plane = plane[single[plane // FACES]] if plane.size else plane
        starts, ways = [], []
        for origin, u, v, length, height, _ in (prism.box_faces[k] for k in plane):
            corners = [origin, origin + length * u, origin + length * u + height * v]
            corners.append(origin + height * v)
            starts += corners
            ways += [b - a for a, b in zip(corners, corners[1:] + corners[:1], strict=True)]
        self._start, self._way = np.array(starts).reshape(-1, 3).T, np.array(ways).reshape(-1, 3).T
        self._of = np.repeat(plane + first, 4)
        self._lowest = self._on_undersides()
        flush = self._flush()
        self._keep(self._ends_free())
        self._parting = np.zeros(self._of.size, dtype=bool)
        self._add(*flush)

    def __bool__(self) -> bool:
        return self._of.size > 0

    def _keep(self, which: npt.NDArray[np.bool_]) -> None:
        self._start, self._way = self._start[:, which], self._way[:, which]
        self._of, self._lowest = self._of[which], self._lowest[which]

    def _add(self, edge_start: FloatArray, way: FloatArray, of: IntArray) -> None:
        self._start = np.concatenate([self._start, edge_start], axis=1)
        self._way = np.concatenate([self._way, way], axis=1)
        self._of = np.concatenate([self._of, of])
        self._lowest = np.concatenate([self._lowest, np.zeros(of.size, dtype=bool)])
        self._parting = np.concatenate([self._parting, np.ones(of.size, dtype=bool)])

    def _flush(self) -> tuple[FloatArray, FloatArray, IntArray]:
        """Edges by which a box ends on a plane of the hull: starts, ways (3, E), planes (E,).

        They part the light on both sides of it, as a shelf from wall to wall does. On bottom and
        ceiling only boxes that reach from one to the other part any.
        """
        prism, frames = self._prism, self._frames
        found = [(np.zeros((3, 0)), np.zeros((3, 0)), np.zeros(0, dtype=np.intp))]
        box = (self._of - prism.wall_count - 2) // FACES
        through = np.array(
            [one.z0 < prism.z0 + SHUT and one.z1 > prism.z1 - SHUT for one in prism.boxes]
        )
        for plane in range(prism.wall_count + 2) if self._of.size else ():
            normal = frames.inward[:, plane]
            off = [
                np.abs(normal @ (ends - frames.origin[:, plane, None]))
                for ends in (self._start, self._start + self._way)
            ]
            # Of the two faces at an edge that which does not lie in the plane.
            across = np.abs(normal @ frames.inward[:, self._of]) < 0.5
            on = (off[0] < SHUT) & (off[1] < SHUT) & across
            if plane >= prism.wall_count:
                on &= through[box]
            found.append((self._start[:, on], self._way[:, on], np.full(int(on.sum()), plane)))
        start, way, of = zip(*found, strict=True)
        return np.concatenate(start, axis=1), np.concatenate(way, axis=1), np.concatenate(of)

    def _on_undersides(self) -> npt.NDArray[np.bool_]:
        """Which edges lie in the underside of their box, however it leans: (E,)."""
        if self._of.size == 0:
            return np.zeros(0, dtype=bool)
        under = self._prism.box_faces[FACES - 1 :: FACES]
        origin, normal = (np.array([face[k] for face in under]).T for k in (0, 5))
        box = (self._of - self._prism.wall_count - 2) // FACES
        ends = np.stack([self._start, self._start + self._way])
        over = ((ends - origin[:, box]) * normal[:, box]).sum(axis=1)
        return np.asarray((np.abs(over) < _HAIR).all(axis=0))

    def _ends_free(self) -> npt.NDArray[np.bool_]:
        """Which edges do not lie against something else: (E,)."""
        if self._of.size == 0:
            return np.zeros(0, dtype=bool)
        away = np.cross(self._way.T, self._frames.inward[:, self._of].T).T
        away /= np.maximum(np.sqrt((away**2).sum(axis=0)), _HAIR)
        middle = self._start + self._way / 2
        centre = self._middle_of(self._of)
        away *= np.sign(((middle - centre) * away).sum(axis=0))
        distance, _ = self._prism.first_hit(middle, away)
        return distance > SHUT

    def _middle_of(self, plane: IntArray) -> FloatArray:
        faces = [self._prism.box_faces[k - self._prism.wall_count - 2] for k in plane]
        return np.array([o + length * u / 2 + h * v / 2 for o, u, v, length, h, _ in faces]).T

    def divided(
        self, plane: IntArray, low: FloatArray, size: FloatArray, most: int, more: int
    ) -> Pieces:
        """Pieces of those patches that are to be divided, ``most`` of them at most.

        Patches are given by plane (P,), corner (P, 2) and size (P, 2). Where a box parts the
        light there may be ``more`` pieces on top of the others, which stay as they are.
        """
        whole = Pieces(np.arange(plane.size), low, size, np.zeros((plane.size, 2), dtype=np.intp))
        fineness, parting = _FINENESS, 0.0
        pieces = self._halved(plane, whole, fineness, parting)
        while pieces.of.size > most:
            fineness /= _WIDER
            pieces = self._halved(plane, whole, fineness, parting)
        if self._parting.any():
            most, parting = pieces.of.size + more, _FINENESS
            pieces = self._halved(plane, whole, fineness, parting)
            while pieces.of.size > most:
                parting /= _WIDER
                pieces = self._halved(plane, whole, fineness, parting)
        return pieces

    def _halved(self, plane: IntArray, pieces: Pieces, fineness: float, parting: float) -> Pieces:
        done: list[Pieces] = []
        for level in range(_DEEPEST):
            wanted = self._to_halve(plane[pieces.of], pieces, fineness, parting)
            still = ~wanted.any(axis=1)
            if level > 0:
                done.append(pieces.take(np.flatnonzero(still)))
            pieces, wanted = pieces.take(np.flatnonzero(~still)), wanted[~still]
            for axis in (0, 1):
                pieces, wanted = _in_two(pieces, wanted, axis)
        done.append(pieces)
        return Pieces(
            np.concatenate([part.of for part in done]),
            np.concatenate([part.low for part in done]),
            np.concatenate([part.size for part in done]),
            np.concatenate([part.halvings for part in done]),
        )

    def _to_halve(
        self, plane: IntArray, pieces: Pieces, fineness: float, parting: float
    ) -> npt.NDArray[np.bool_]:
        """Along which of its axes each piece (n,) is too wide, (n, 2).

        ``parting`` is the fineness where a box parts the light.
        """
        result = np.zeros((plane.size, 2), dtype=bool)
        frames, first = self._frames, self._prism.wall_count + 2
        middle = pieces.low + pieces.size / 2
        u, v, inward = (axes[:, plane] for axes in (frames.u, frames.v, frames.inward))
        centre = frames.origin[:, plane] + middle[:, 0] * u + middle[:, 1] * v
        seen_from = np.abs(centre[2] - self._z) * _FROM_MAP
        box = np.where(plane >= first, (plane - first) // FACES, -1)
        for start in range(0, plane.size, _AT_ONCE):
            some = np.arange(start, min(start + _AT_ONCE, plane.size))
            c, n, least = centre[:, some], inward[:, some], seen_from[some]
            free = np.zeros(some.size)
            on_box = np.flatnonzero(box[some] >= 0)
            free[on_box], _ = self._prism.first_hit(c[:, on_box], n[:, on_box])
            # From all edges (E) to all pieces.
            gap = c[:, None] - self._start[:, :, None]
            own = self._of[:, None] == plane[some]
            normal = frames.inward[:, self._of]
            faces = ((self._of[:, None] - first) // FACES != box[some]) & (normal.T @ n < -0.5)
            faces &= np.einsum("ie,ien->en", normal, gap) > _HAIR
            apart = np.einsum("in,ien->en", n, gap)
            faces &= apart < -_HAIR
            length = (self._way**2).sum(axis=0)[:, None]
            foot = np.clip(np.einsum("ie,ien->en", self._way, gap) / length, 0.0, 1.0)
            gap -= foot * self._way[:, :, None]
            distance = np.sqrt((gap**2).sum(axis=0))
            distance[own] = np.hypot(distance, free)[own]
            # Light that a lamp throws beside its housing must not get behind that.
            near_lamp = ~own & (self._lowest[:, None] | (box[some] >= 0))
            parts = self._parting[:, None]
            reach = np.where(near_lamp, distance, np.maximum(distance, least))
            reach = np.where((own | faces) & ~parts, reach, np.inf)
            # All the light behind a box that parts it may come through the chink beside it.
            chink = np.where(own, free < _CHINK, -apart < _CHINK) & (np.abs(n[2]) < 0.5)
            parted = np.where((own | faces) & (parts | chink), distance, np.inf)
            way = self._way / np.sqrt(length.T)
            for axis, along in enumerate((u, v)):
                # Edges that run along the axis ask nothing of it.
                across = np.abs(np.cross(along[:, some].T, n.T) @ way).T
                wide = pieces.size[some, axis] * across
                too_wide = (fineness * wide > reach) | (parting * wide > parted)
                result[some, axis] = too_wide.any(axis=0)
        return result


_AT_ONCE = 1 << 10
"""Pieces held against all edges at a time."""


def _in_two(
    pieces: Pieces, wanted: npt.NDArray[np.bool_], axis: int
) -> tuple[Pieces, npt.NDArray[np.bool_]]:
    """Pieces with those wanted halved along an axis, and what is wanted of each."""
    cut = np.flatnonzero(wanted[:, axis])
    size, halvings = pieces.size.copy(), pieces.halvings.copy()
    size[cut, axis] /= 2
    halvings[cut, axis] += 1
    low = pieces.low[cut].copy()
    low[:, axis] += size[cut, axis]
    return Pieces(
        np.concatenate([pieces.of, pieces.of[cut]]),
        np.concatenate([pieces.low, low]),
        np.concatenate([size, size[cut]]),
        np.concatenate([halvings, halvings[cut]]),
    ), np.concatenate([wanted, wanted[cut]])


class Finer:
    """The texels of pieces, and how they are found from the texels there were before.

    Texels of patches that are left whole keep their order; those of pieces follow.

    Attributes
    ----------
    piece, low, step
        Of each texel of a piece the piece (t,), its corner and size (t, 2).
    is_replaced, kept
        Of each former texel whether its patch was divided, and its number if not.
    """

    def __init__(
        self,
        pieces: Pieces,
        fine: IntArray,
        patch_low: FloatArray,
        patch_size: FloatArray,
        texel_patch: IntArray,
    ) -> None:
        more = np.maximum(np.ceil(np.log2(fine)).astype(np.intp) - pieces.halvings, 0)
        count = 1 << more
        each = count.prod(axis=1)
        self.piece = np.repeat(np.arange(each.size), each)
        local = np.arange(self.piece.size) - np.repeat(np.cumsum(each) - each, each)
        row, column = np.divmod(local, count[self.piece, 0])
        self.step = (pieces.size / count)[self.piece]
        self.low = pieces.low[self.piece] + np.stack([column, row], axis=1) * self.step
        patches, number = np.unique(pieces.of, return_inverse=True)
        number = number.ravel()
        divided = np.full(len(patch_low), -1)
        divided[patches] = np.arange(patches.size)
        self._patch = divided[texel_patch]
        self.is_replaced = self._patch >= 0
        self.kept = np.cumsum(~self.is_replaced) - 1
        # Each patch is a raster as fine as its finest texels.
        deepest = np.zeros((patches.size, 2), dtype=np.intp)
        np.maximum.at(deepest, number, pieces.halvings + more)
        self._shape = 1 << deepest
        cells = self._shape.prod(axis=1)
        self._start = np.cumsum(cells) - cells
        self._raster = np.empty(int(cells.sum()), dtype=np.intp)
        first = int((~self.is_replaced).sum())
        of = number[self.piece]
        unit = (patch_size[patches] / self._shape)[of]
        begin = np.rint((self.low - patch_low[patches[of]]) / unit).astype(np.intp)
        end = begin + np.rint(self.step / unit).astype(np.intp)
        rasters = [
            self._raster[start : start + size].reshape(rows, columns)
            for start, size, (columns, rows) in zip(self._start, cells, self._shape, strict=True)
        ]
        for texel, (patch, (u0, v0), (u1, v1)) in enumerate(zip(of, begin, end, strict=True)):
            rasters[patch][v0:v1, u0:u1] = first + texel

    def found(self, texel: IntArray, across: FloatArray, up: FloatArray) -> IntArray:
        """Texels (n,) at places in the patches of former texels (n,), from 0 to 1."""
        patch = self._patch.take(texel)
        columns, rows = self._shape[patch].T
        column = np.clip((across * columns).astype(np.intp), 0, columns - 1)
        row = np.clip((up * rows).astype(np.intp), 0, rows - 1)
        found: IntArray = self._raster.take(self._start.take(patch) + row * columns + column)
        return found
