"""Surfaces: facets that carry one material, patches that exchange light, texels that show it.

A *facet* is a whole wall band, the ceiling or the bottom. It is divided into *patches*
(the unknowns of the exchange) and each patch into ``fine`` x ``fine`` *texels*, on which
the steep light that lamps throw directly is kept. Where a box lies close over something,
patches are replaced by smaller ones (see ``narrow``). Texels, patches and facets are numbered
through; the arrays below map from each to the next coarser.
"""

from __future__ import annotations

import itertools
from dataclasses import dataclass, replace
from functools import cached_property

import numpy as np
import numpy.typing as npt

from planner.light.narrow import Finer, Frames, Narrow, Pieces, wanted_sizes
from planner.light.polygon import brought_inside, clip_cells, is_rectangle
from planner.light.prism import FloatArray, IntArray, Prism, totals
from planner.light.rows import Rows
from planner.light.touching import covered, lies_against, touching

_HAIR = 1e-6
_LATTICE = 8
"""Points along an edge of a texel that tell how much of it a box covers."""

_PIECES = 150
"""Pieces of patches in narrow places that there may be beyond the number of patches; as many again
as there are patches where a box ends on a wall and parts the light on both sides of it."""


@dataclass(frozen=True)
class Facet:
    """Extent of a facet: its plane, and height range (walls only; equal ends elsewhere)."""

    plane: int
    z0: float
    z1: float


class Surfaces:
    """The inside of a prism, divided.

    Of each texel it tells patch, facet, area, centre, inward normal, edge along a wall
    (``texel_along``), longer edge (``texel_size``), half its height (``texel_rise``, 0 where it
    leans) and whether the footprint leaves it whole.

    Parameters
    ----------
    prism
        The room.
    band_tops
        For each wall the heights (m) at which one band ends and the next begins; those
        outside the prism's own height range must have been dropped.
    patch_size
        Wanted edge of a patch in metres; facets are divided into nearly square patches.
    fine
        Texels along each edge of a patch.
    map_z
        Height of the map, about which narrow places are divided finer; None to leave it.
    """

    def __init__(
        self,
        prism: Prism,
        band_tops: tuple[tuple[float, ...], ...],
        patch_size: float,
        fine: int,
        map_z: float | None = None,
    ) -> None:
        self.prism = prism
        self.facets = _list_facets(prism, band_tops)
        count = len(self.facets)
        width = prism.wall_count
        self._first_facet = np.zeros(prism.plane_count, dtype=np.intp)
        deepest = max((len(tops) for tops in band_tops), default=0)
        self._tops = np.full((max(deepest, 1), prism.plane_count), np.inf)
        for index, facet in reversed(list(enumerate(self.facets))):
            self._first_facet[facet.plane] = index
        for wall, tops in enumerate(band_tops):
            self._tops[: len(tops), wall] = tops
        self._banded = deepest > 0

        low, span = prism.corners.min(axis=0), np.ptp(prism.corners, axis=0)
        sizes = np.array([_facet_size(prism, f, span) for f in self.facets])
        planes = np.array([f.plane for f in self.facets])
        wanted = wanted_sizes(prism, planes, sizes, patch_size)
        divisions = np.maximum(np.rint(sizes / wanted), 1).astype(np.intp)
        self.patch_shape = divisions
        self._fine = _texels_per_patch(prism, self.facets, sizes / divisions / wanted, fine)
        texel_shape = divisions * self._fine
        texel_counts, patch_counts = texel_shape.prod(axis=1), divisions.prod(axis=1)
        self._texel_shape = texel_shape
        self._texel_start = np.concatenate([[0], np.cumsum(texel_counts)]).astype(np.intp)
        self._patch_start = np.concatenate([[0], np.cumsum(patch_counts)]).astype(np.intp)
        self.texel_count = int(self._texel_start[-1])
        self.patch_count = int(self._patch_start[-1])

        self._plane_origin = _plane_origins(prism, low)
        self._u_axis, self._v_axis = _plane_axes(prism)
        self._sizes = sizes
        self._v_start = np.array([f.z0 if f.plane < width else 0.0 for f in self.facets])
        self._rows = Rows(prism)
        self._set_lookup(sizes, texel_shape)

        self.texel_patch = np.empty(self.texel_count, dtype=np.intp)
        self._neighbours = np.empty((4, self.texel_count), dtype=np.intp)
        self._nearness = np.zeros((4, self.texel_count))
        self.texel_facet = np.repeat(np.arange(count), texel_counts)
        self.patch_facet = np.repeat(np.arange(count), patch_counts)
        self.texel_area = np.empty(self.texel_count)
        self.texel_centre = np.empty((3, self.texel_count))
        self._texel_step = (sizes / texel_shape)[self.texel_facet]
        self._patch_step = (sizes / divisions)[self.patch_facet]
        self._patch_low = self._patch_corners()
        self.facet_plane = planes
        for index in range(count):
            self._fill_facet(index)
        self._finer: Finer | None = None
        if map_z is not None and prism.boxes:
            self._divide_narrow(map_z)
        self.patch_area = totals(self.texel_patch, self.texel_area, self.patch_count)
        self.facet_area = totals(self.texel_facet, self.texel_area, count)
        plane = planes[self.texel_facet]
        self.texel_normal = -prism.plane_normals()[:, plane]
        self.texel_along, self.texel_size = self._texel_step[:, 0], self._texel_step.max(axis=1)
        upright = np.where(prism.leaning, 0.0, np.abs(self._v_axis[2]))
        self.texel_rise = upright[plane] * self._texel_step[:, 1] / 2
        whole = self._texel_step.prod(axis=1) * self._rows.share[plane] * (1 - 1e-9)
        self.texel_whole = self.texel_area >= whole

    def _fill_facet(self, index: int) -> None:
        nu, nv = self._texel_shape[index]
        iu, iv = np.meshgrid(np.arange(nu), np.arange(nv))
        texels = slice(self._texel_start[index], self._texel_start[index + 1])
        fu, fv = self._fine[index]
        coarse = self._patch_start[index] + (iv // fv) * (nu // fu) + iu // fu
        self.texel_patch[texels] = coarse.ravel()
        self._neighbours[:, texels] = coarse.ravel()
        self._nearness[0, texels] = 1.0
        du, dv = self._sizes[index] / (nu, nv)
        u, v = (iu + 0.5) * du, (iv + 0.5) * dv
        area = np.full(u.shape, du * dv)
        facet = self.facets[index]
        prism = self.prism
        if facet.plane in (prism.ceiling, prism.bottom):
            u, v, area = self._clip_flat(facet.plane, u, v, du, dv)
        else:
            v = v + self._v_start[index]
            u, v, area = self._uncovered(facet.plane, u, v, area, du, dv)
        if lies_against(self.prism, facet.plane):
            area = np.zeros_like(area)
        if np.ptp(area) == 0:
            self._blend(index, texels, (iu.ravel() + 0.5) / fu, (iv.ravel() + 0.5) / fv)
        plane = facet.plane
        self.texel_area[texels] = area.ravel() * self._rows.share[plane]
        self.texel_centre[:, texels] = self._points(
            np.array([plane]), u.reshape(1, -1), v.reshape(1, -1)
        )[:, 0]

    def _patch_corners(self) -> FloatArray:
        """Lowest corner of each patch along the axes of its plane, (P, 2)."""
        facet = self.patch_facet
        local = np.arange(facet.size) - self._patch_start[facet]
        place = np.stack(np.divmod(local, self.patch_shape[facet, 0])[::-1], axis=1)
        low: FloatArray = place * self._patch_step
        low[:, 1] += self._v_start[facet]
        return low

    def _points(self, plane: IntArray, u: FloatArray, v: FloatArray) -> FloatArray:
        """Points (3, n, R) at places (n, R) along the axes of planes (n,)."""
        u, v, into = self._rows.onto_boxes(plane, u, v)
        points: FloatArray = (
            self._plane_origin[:, plane, None]
            + self._u_axis[:, plane, None] * u
            + self._v_axis[:, plane, None] * v
        )
        if self._rows.any:
            points += self.prism.plane_normals()[:, plane, None] * into
        return points

    def _divide_narrow(self, map_z: float) -> None:
        """Replace patches in narrow places by pieces, numbered after all others."""
        axes = Frames(self._plane_origin, self._u_axis, self._v_axis, -self.prism.plane_normals())
        narrow = Narrow(self.prism, axes, map_z)
        if not narrow:
            return
        plane = self.facet_plane[self.patch_facet]
        shut = np.array([lies_against(self.prism, k) for k in range(self.prism.plane_count)])
        may_be = np.flatnonzero(~(shut | self._rows.on_row)[plane])
        low, size = self._patch_low[may_be], self._patch_step[may_be]
        most, more = self.patch_count + _PIECES, max(_PIECES, self.patch_count)
        pieces = narrow.divided(plane[may_be], low, size, most, more)
        if pieces.of.size:
            self._replace(replace(pieces, of=may_be[pieces.of]))

    def _replace(self, pieces: Pieces) -> None:
        """Put pieces in the place of the patches they are made of."""
        kept = np.ones(self.patch_count, dtype=bool)
        kept[pieces.of] = False
        number = np.where(kept, np.cumsum(kept) - 1, -1)
        texels = np.flatnonzero(kept[self.texel_patch])
        facet = self.patch_facet[pieces.of]
        finer = Finer(
            pieces, self._fine[facet], self._patch_low, self._patch_step, self.texel_patch
        )
        leaf = int(kept.sum()) + finer.piece
        own = np.concatenate([number[self.texel_patch[texels]], leaf])
        near = np.concatenate([number[self._neighbours[:, texels]], np.stack([leaf] * 4)], axis=1)
        nearness = np.concatenate([self._nearness[:, texels], np.zeros((4, leaf.size))], axis=1)
        # Nothing is blended over the edge of a narrow place.
        alone = np.asarray((near < 0).any(axis=0))
        alone[texels.size :] = True
        near[:, alone] = own[alone]
        nearness[:, alone] = [[1.0], [0.0], [0.0], [0.0]]
        self._finer, self._neighbours, self._nearness = finer, near, nearness
        self.texel_patch = own
        self.texel_facet = np.concatenate([self.texel_facet[texels], facet[finer.piece]])
        self._texel_step = np.concatenate([self._texel_step[texels], finer.step])
        area, centre = self._texels_of(finer, self.facet_plane[facet[finer.piece]])
        self.texel_area = np.concatenate([self.texel_area[texels], area])
        self.texel_centre = np.concatenate([self.texel_centre[:, texels], centre], axis=1)
        self.patch_facet = np.concatenate([self.patch_facet[kept], facet])
        self._patch_low = np.concatenate([self._patch_low[kept], pieces.low])
        self._patch_step = np.concatenate([self._patch_step[kept], pieces.size])
        self.texel_count, self.patch_count = self.texel_patch.size, self.patch_facet.size

    def _texels_of(self, finer: Finer, plane: IntArray) -> tuple[FloatArray, FloatArray]:
        """Areas (t,) and centres (3, t) of the texels of pieces on their planes (t,)."""
        area = finer.step.prod(axis=1)
        u, v = (finer.low + finer.step / 2).T
        sizes, kind = np.unique(finer.step, axis=0, return_inverse=True)
        flats = (self.prism.ceiling, self.prism.bottom)
        for hull in range(self.prism.wall_count + 2):
            if hull not in flats and not touching(self.prism, hull):
                continue
            for number, (du, dv) in enumerate(sizes):
                which = np.flatnonzero((plane == hull) & (kind.ravel() == number))
                if which.size == 0:
                    continue
                at = u[None, which], v[None, which]
                if hull in flats:
                    cut = self._clip_flat(hull, *at, du, dv)
                else:
                    cut = self._uncovered(hull, *at, area[None, which], du, dv)
                u[which], v[which], area[which] = (part[0] for part in cut)
        return area, self._points(plane, u[:, None], v[:, None])[:, :, 0]

    def _blend(self, index: int, texels: slice, column: FloatArray, row: FloatArray) -> None:
        """Weights of the four patches around each texel, linear between patch centres.

        Outermost texels extrapolate. Facets cut by a slanting footprint keep the value of
        their own patch, since neighbours there may lie outside.
        """
        columns, rows = self.patch_shape[index]
        left = np.clip(np.floor(column - 0.5), 0, max(columns - 2, 0)).astype(np.intp)
        low = np.clip(np.floor(row - 0.5), 0, max(rows - 2, 0)).astype(np.intp)
        across = column - 0.5 - left if columns > 1 else np.zeros_like(column)
        up = row - 0.5 - low if rows > 1 else np.zeros_like(row)
        right, high = np.minimum(left + 1, columns - 1), np.minimum(low + 1, rows - 1)
        start = self._patch_start[index]
        for k, (c, r, w) in enumerate(
            (
                (left, low, (1 - across) * (1 - up)),
                (right, low, across * (1 - up)),
                (left, high, (1 - across) * up),
                (right, high, across * up),
            )
        ):
            self._neighbours[k, texels] = start + r * columns + c
            self._nearness[k, texels] = w

    def patches_on_bottom(self) -> npt.NDArray[np.bool_]:
        """Which patches belong to the bottom, shape (P,)."""
        return np.asarray(self.facet_plane[self.patch_facet] == self.prism.bottom)

    def smoothed(self, per_patch: FloatArray) -> FloatArray:
        """Values given per patch (P,) as a smooth field on texels (T,), never below 0."""
        return np.maximum(self.blended(per_patch), 0.0)

    def blended(self, per_patch: FloatArray) -> FloatArray:
        """As ``smoothed``, of any sign."""
        blended: FloatArray = (per_patch[self._neighbours] * self._nearness).sum(axis=0)
        return blended

    def _clip_flat(
        self, plane: int, u: FloatArray, v: FloatArray, du: float, dv: float
    ) -> tuple[FloatArray, FloatArray, FloatArray]:
        """Cut the texels of ceiling or bottom to the footprint; move centres into what is left."""
        u, v, area = clip_cells(self.prism.corners - self._plane_origin[:2, plane], u, v, du, dv)
        return self._uncovered(plane, u, v, area, du, dv)

    def _uncovered(
        self, plane: int, u: FloatArray, v: FloatArray, area: FloatArray, du: float, dv: float
    ) -> tuple[FloatArray, FloatArray, FloatArray]:
        """Take what a box stands on, hangs from or stands against out of texels of the hull.

        There is no surface; how much there is besides is counted on a lattice.
        """
        if touching(self.prism, plane):
            step = (np.arange(_LATTICE) + 0.5) / _LATTICE - 0.5
            a, b = np.broadcast_arrays(
                u[..., None, None] + step * du, v[..., None, None] + step[:, None] * dv
            )
            points = self._points(np.array([plane]), a.reshape(1, -1), b.reshape(1, -1))
            free = ~covered(self.prism, plane, points.reshape(3, *a.shape))
            count = free.sum(axis=(2, 3))
            cut = (count > 0) & (count < _LATTICE**2)
            u, v = u.copy(), v.copy()
            u[cut] = (a * free).sum(axis=(2, 3))[cut] / count[cut]
            v[cut] = (b * free).sum(axis=(2, 3))[cut] / count[cut]
            area = area * count / _LATTICE**2
        return u, v, area

    @property
    def bands(self) -> tuple[IntArray, FloatArray]:
        """First facet of each plane (planes,), and where its bands end, (deepest, planes).

        Heights in metres, infinite where a plane has no further band.
        """
        return self._first_facet, self._tops

    def texel_edges(self, texels: IntArray) -> tuple[FloatArray, FloatArray]:
        """Edges of some texels (n,) as vectors (3, n) along their two axes, in metres."""
        plane = self.facet_plane[self.texel_facet[texels]]
        du, dv = self._texel_step[texels].T
        return du * self._u_axis[:, plane], dv * self._v_axis[:, plane]

    def _set_lookup(self, sizes: FloatArray, texel_shape: IntArray) -> None:
        """Constants that turn a hit point into texel coordinates with few array look-ups.

        Bands of one wall are equally long and thus equally divided along it, so the column
        depends on the plane alone; the row also on the facet.
        """
        first = self._first_facet
        per_metre = texel_shape[first, 0] / sizes[first, 0]
        self._u_x, self._u_y = self._u_axis[0] * per_metre, self._u_axis[1] * per_metre
        self._u_0 = (self._plane_origin * self._u_axis).sum(axis=0) * per_metre
        self._v_x, self._v_y, self._v_z = self._v_axis
        self._u_z = self._u_axis[2] * per_metre
        self._leans = bool(self.prism.leaning.any())
        # Only the tops of turned boxes have rows that run along x.
        self._rows_turn = bool(np.abs(self._v_x).max() > 0)
        self._v_0 = (self._plane_origin * self._v_axis).sum(axis=0)
        self._row_scale = texel_shape[:, 1] / sizes[:, 1]
        self._row_last = texel_shape[:, 1] - 1
        self._column_last = texel_shape[first, 0] - 1
        self._columns = texel_shape[:, 0].copy()

    def texel_of(self, points: FloatArray, plane: IntArray) -> IntArray:
        """Texel that holds each hit point; points (3, N), planes (N,)."""
        facet = self._first_facet.take(plane)
        if self._banded:
            for tops in self._tops:
                facet += points[2] > tops.take(plane)
        u = points[0] * self._u_x.take(plane)
        u += points[1] * self._u_y.take(plane)
        if self._leans:
            u += points[2] * self._u_z.take(plane)
        u -= self._u_0.take(plane)
        v = points[1] * self._v_y.take(plane)
        v += points[2] * self._v_z.take(plane)
        if self._rows_turn:
            v += points[0] * self._v_x.take(plane)
        v -= self._v_0.take(plane)
        if self._rows.any:
            self._rows.close_up(plane, u, v, self._column_last + 1)
        v -= self._v_start.take(facet)
        v *= self._row_scale.take(facet)
        # Rounding may put a hit just beyond an edge.
        column = np.clip(u.astype(np.intp), 0, self._column_last.take(plane))
        row = np.clip(v.astype(np.intp), 0, self._row_last.take(facet))
        row *= self._columns.take(facet)
        row += column
        texel: IntArray = row + self._texel_start.take(facet)
        return texel if self._finer is None else self._among_pieces(self._finer, texel, facet, u, v)

    def _among_pieces(
        self, finer: Finer, texel: IntArray, facet: IntArray, u: FloatArray, v: FloatArray
    ) -> IntArray:
        """Texels (N,) for those numbered as if nothing were divided, in which u and v count."""
        which = np.flatnonzero(finer.is_replaced.take(texel))
        facet, old = facet.take(which), texel.take(which)
        fine, local = self._fine[facet], old - self._texel_start.take(facet)
        row, column = np.divmod(local, self._columns.take(facet))
        across = u.take(which) / fine[:, 0] - column // fine[:, 0]
        up = v.take(which) / fine[:, 1] - row // fine[:, 1]
        found = finer.kept.take(texel)
        found[which] = finer.found(old, across, up)
        return found

    def patch_samples(
        self, u: FloatArray, v: FloatArray, which: slice = slice(None)
    ) -> tuple[FloatArray, IntArray]:
        """Points on patches from unit-square samples; ``which`` picks some of them.

        ``u`` and ``v`` have shape (P, R). Returns points (3, P, R) and the plane of each
        patch (P,). On a clipped patch, points outside the footprint are replaced by others of
        the patch, so every sample lies on the surface.
        """
        low, step = self._patch_low[which], self._patch_step[which]
        plane = self.facet_plane[self.patch_facet[which]]
        points = self._points(plane, low[:, :1] + u * step[:, :1], low[:, 1:] + v * step[:, 1:])
        flat = (plane == self.prism.ceiling) | (plane == self.prism.bottom)
        flats = (self.prism.bottom, self.prism.ceiling)
        boxes = any(touching(self.prism, number) for number in flats)
        if flat.any() and (boxes or not is_rectangle(self.prism.corners)):
            x, y = points[0, flat], points[1, flat]
            inside = self.prism.contains(x, y)
            for number in flats:
                on = plane[flat] == number
                inside[on] &= ~covered(self.prism, number, points[:, flat][:, on])
            points[0, flat], points[1, flat] = brought_inside(
                inside, x, y, self.patch_centres[:2, which][:, flat]
            )
        return points, plane

    @cached_property
    def wider(self) -> IntArray:
        """The number of the patch twice as wide that each would be a part of, (P,)."""
        facet, size = self.patch_facet, self._patch_step
        whole = (self._sizes / self.patch_shape)[facet]
        low = self._patch_low - np.stack([np.zeros(facet.size), self._v_start[facet]], axis=1)
        halvings = np.rint(np.log2(whole / size))
        place = np.floor(low / whole + _HAIR)
        within = np.where(halvings > 0, np.floor((low - place * whole) / (2 * size) + _HAIR), 0)
        place //= np.where(halvings.any(axis=1, keepdims=True), 1, 2)
        kinds = np.column_stack([facet, place, halvings, within])
        number: IntArray = np.unique(kinds, axis=0, return_inverse=True)[1].ravel()
        return number

    @cached_property
    def patch_centres(self) -> FloatArray:
        """Centre of area of each patch, shape (3, P)."""
        area = np.maximum(self.patch_area, 1e-30)
        return np.stack(
            [
                totals(self.texel_patch, axis * self.texel_area, self.patch_count) / area
                for axis in self.texel_centre
            ]
        )


def _texels_per_patch(
    prism: Prism, facets: tuple[Facet, ...], step: FloatArray, fine: int
) -> IntArray:
    """Texels along both edges of the patches of each facet, shape (F, 2).

    ``step`` (F, 2) are the edges of its patches as shares of the wanted one. Narrow faces of
    boxes get texels no smaller than others.
    """
    on_box = np.array([facet.plane >= prism.wall_count + 2 for facet in facets])
    wanted = np.clip(np.ceil(fine * step - 1e-9), 1, fine).astype(np.intp)
    return np.where(on_box[:, None], wanted, fine)


def _list_facets(prism: Prism, band_tops: tuple[tuple[float, ...], ...]) -> tuple[Facet, ...]:
    facets = []
    for wall, tops in enumerate(band_tops):
        edges = [prism.z0, *tops, prism.z1]
        facets += [Facet(wall, a, b) for a, b in itertools.pairwise(edges)]
    facets.append(Facet(prism.ceiling, prism.z1, prism.z1))
    facets.append(Facet(prism.bottom, prism.z0, prism.z0))
    first = prism.wall_count + 2
    facets += [Facet(first + k, 0.0, 0.0) for k in range(len(prism.box_faces))]
    return tuple(facets)


def _facet_size(prism: Prism, facet: Facet, span: FloatArray) -> tuple[float, float]:
    if facet.plane < prism.wall_count:
        return float(prism.lengths[facet.plane]), facet.z1 - facet.z0
    if facet.plane < prism.wall_count + 2:
        return float(span[0]), float(span[1])
    _, _, _, length, height, _ = prism.box_faces[facet.plane - prism.wall_count - 2]
    return length, height


def _plane_origins(prism: Prism, low: FloatArray) -> FloatArray:
    walls = np.concatenate([prism.corners.T, np.zeros((1, prism.wall_count))])
    flats = np.array([[low[0]] * 2, [low[1]] * 2, [prism.z1, prism.z0]])
    faces = [face[0][:, None] for face in prism.box_faces]
    return np.concatenate([walls, flats, *faces], axis=1)


def _plane_axes(prism: Prism) -> tuple[FloatArray, FloatArray]:
    count = prism.wall_count
    u = np.concatenate([prism.tangents.T, np.zeros((1, count))])
    v = np.concatenate([np.zeros((2, count)), np.ones((1, count))])
    flat_u, flat_v = np.array([[1.0] * 2, [0.0] * 2, [0.0] * 2]), np.zeros((3, 2))
    flat_v[1] = 1.0
    u = np.concatenate([u, flat_u, *(face[1][:, None] for face in prism.box_faces)], axis=1)
    v = np.concatenate([v, flat_v, *(face[2][:, None] for face in prism.box_faces)], axis=1)
    return u, v
