"""Mirrors as windows: in a room that is open to sight, where a lamp behind walls is seen.

A line that mirrors fold inside the room is straight once the room is unfolded, and each wall of
its chain is a window it passes: a strip between two upright edges, since upright walls leave
heights as they are. Whether a line passes beside an edge, and over or under the border of two
bands, is affine in its start and in its end. So the corners of a cell and of a lamp tell of all
lines between the two, without chance; lines are drawn only where an edge crosses a cell.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from planner.light.chains import Images
from planner.light.field import CellGrid
from planner.light.prism import FloatArray, IntArray
from planner.light.surfaces import Surfaces

_MOST_WALLS = 2
"""Longer chains may have several orders of one image, and are faint: rays tell of them."""

_SQUARE = 1e-9


@dataclass(frozen=True)
class _Window:
    """One wall of a chain, unfolded, for each of n images.

    ``wall`` (n,) is -1 where the chain has none at this stage; ``right`` and ``left`` (2, n) are
    its edges as seen from inside, ``normal`` (2, n) points out of the room, ``offset`` (n,) is
    that of its plane.
    """

    wall: IntArray
    right: FloatArray
    left: FloatArray
    normal: FloatArray
    offset: FloatArray


class Windows:
    """What mirrors leave of images (n of them), as far as it can be told by windows.

    ``specular`` is ρ_s of the facets (F,). ``told`` (n,) says of which images it is told: of
    those by way of two walls at most, in a room that is open to sight; together with ceiling or
    floor only where the walls are not divided in bands.
    """

    def __init__(self, surfaces: Surfaces, images: Images, specular: FloatArray) -> None:
        prism = surfaces.prism
        count, walls = len(images), prism.wall_count
        self._specular = specular
        self._first, self._tops = surfaces.bands
        # Of each chain, as a line from the map meets it, the walls come first.
        planes = images.planes[:, ::-1].astype(np.intp)
        upright, flat = (planes >= 0) & (planes < walls), planes >= walls
        divided = (upright & np.isfinite(self._tops).any(axis=0).take(planes)).any(axis=1)
        number = upright.sum(axis=1)
        self.told = (number <= _MOST_WALLS) & ~(flat.any(axis=1) & divided)
        # Walls in one plane show one image, each a part of it.
        self.told &= prism.open_to_sight and not prism.side_by_side
        self._flat = np.where(flat, specular.take(self._first.take(planes)), 1.0).prod(axis=1)
        order = np.argsort(~upright, axis=1, kind="stable")[:, :_MOST_WALLS]
        first = np.full((_MOST_WALLS, count), -1, dtype=np.intp)
        found = np.take_along_axis(np.where(upright, planes, -1), order, axis=1).T
        first[: len(found)] = np.where(self.told, found, -1)
        # Two mirrors at right angles show one image in either order.
        lean = (prism.normals[first[0]] * prism.normals[first[1]]).sum(axis=1)
        second = np.where((first[1] >= 0) & (np.abs(lean) < _SQUARE), first[::-1], -1)
        orders = (first, second)
        self._words = [self._unfolded(surfaces, order) for order in orders]

    def _unfolded(self, surfaces: Surfaces, order: IntArray) -> list[_Window]:
        prism = surfaces.prism
        starts, ends = prism.corners.T, np.roll(prism.corners, -1, axis=0).T
        near, far = order
        first = _Window(
            near, starts[:, near], ends[:, near], prism.normals[near].T, prism.offsets[near]
        )

        def mirrored(points: FloatArray) -> FloatArray:
            away = (points * first.normal).sum(axis=0) - first.offset
            result: FloatArray = points - 2.0 * away * first.normal
            return result

        # A mirror swaps the sides.
        right, left = mirrored(ends[:, far]), mirrored(starts[:, far])
        normal = prism.normals[far].T
        normal = normal - 2.0 * (normal * first.normal).sum(axis=0) * first.normal
        return [first, _Window(far, right, left, normal, (normal * right).sum(axis=0))]

    def known(self, grid: CellGrid, outline: FloatArray) -> FloatArray:
        """What mirrors leave of all lines between a cell and an image, where that is one value.

        ``outline`` (3, n, 4) are corners of a rectangle about each image. Shape (n, C); NaN where
        lines differ, or where it is not told.
        """
        row, column = np.divmod(grid.inside, len(grid.x))
        cells = np.stack([np.ones(row.size), grid.x[column], grid.y[row]])
        half = np.array(grid.step) / 2
        ends, height = outline[:2], (outline[2].min(axis=1), outline[2].max(axis=1))
        shape = (len(self.told), row.size)
        share, found, possible = np.zeros(shape), np.zeros(shape, bool), np.zeros(shape, bool)
        for number, word in enumerate(self._words):
            here = self.told & ((number == 0) | (word[0].wall >= 0))
            through = np.repeat(here[:, None], shape[1], axis=1)
            beside = ~through
            kept = np.repeat(self._flat[:, None], shape[1], axis=1)
            for window in word:
                passed = window.wall >= 0
                if not passed.any():
                    continue
                right = _sides(window.right, ends, cells, half)
                left = _sides(window.left, ends, cells, half)
                beyond = (window.normal[:, :, None] * ends).sum(axis=0) - window.offset[:, None]
                inside = (right[0] >= 0) & (left[1] <= 0) & (beyond.min(axis=1) >= 0)[:, None]
                outside = (right[1] < 0) | (left[0] > 0) | (beyond.max(axis=1) < 0)[:, None]
                through &= inside | ~passed[:, None]
                beside |= outside & passed[:, None]
                lowest = highest = self._first[window.wall][:, None]
                before = _ahead(window, cells, half)
                for top in self._tops[:, window.wall]:
                    if not np.isfinite(top).any():
                        continue
                    over = _over(top, grid.z, height, before, beyond)
                    lowest, highest = lowest + (over[0] > 0), highest + (over[1] > 0)
                through &= (lowest == highest) | ~passed[:, None]
                kept = kept * np.where(passed[:, None], self._specular[lowest], 1.0)
            share = np.where(through, kept, share)
            found |= through
            possible |= ~beside
        share[~found & possible | ~self.told[:, None]] = np.nan
        return share

    def left(self, places: FloatArray, ends: FloatArray, image: IntArray) -> FloatArray:
        """What mirrors leave on lines from places to image points, 0 if cut off; (N, K).

        K lines run to each ``image`` (N,), one of those that are told of, between ``places`` and
        ``ends`` (3, N, K).
        """
        lines = places.shape[2]
        result = np.zeros((image.size, lines))
        for number, word in enumerate(self._words):
            rows = np.arange(image.size)
            if number:
                rows = np.flatnonzero((word[0].wall >= 0).take(image))
            kept = np.repeat(self._flat.take(image.take(rows))[:, None], lines, axis=1)
            for window in word:
                among = np.flatnonzero((window.wall >= 0).take(image.take(rows)))
                if among.size:
                    row = rows.take(among)
                    kept[among] *= self._passed(
                        window, places.take(row, axis=1), ends.take(row, axis=1), image.take(row)
                    )
            result[rows] += kept
        return result

    def _passed(
        self, window: _Window, places: FloatArray, ends: FloatArray, image: IntArray
    ) -> FloatArray:
        """ρ_s of one window where lines (N, K) pass it, else 0."""
        gap = ends[:2] - places[:2]
        right, left = (
            edge.take(image, axis=1)[:, :, None] - places[:2]
            for edge in (window.right, window.left)
        )
        normal = window.normal.take(image, axis=1)[:, :, None]
        offset = window.offset.take(image)[:, None]
        beyond = normal[0] * ends[0] + normal[1] * ends[1] - offset
        through = right[0] * gap[1] >= right[1] * gap[0]
        through &= left[0] * gap[1] <= left[1] * gap[0]
        through &= beyond >= 0
        wall = window.wall.take(image)
        facet = self._first.take(wall)[:, None]
        before = offset - normal[0] * places[0] - normal[1] * places[1]
        for tops in self._tops:
            if np.isfinite(tops[window.wall]).any():
                top = np.where(np.isfinite(tops), tops, _NEVER).take(wall)[:, None]
                over = (ends[2] - top) * before + (places[2] - top) * beyond > 0
                facet = facet + over
        kept: FloatArray = through * self._specular.take(facet)
        return kept


_NEVER = 1e9
"""Metres; the border above the topmost band."""


def _sides(
    edge: FloatArray, ends: FloatArray, cells: FloatArray, half: FloatArray
) -> tuple[FloatArray, FloatArray]:
    """Least and most of how far left of an edge lines pass: (edge - p) x (q - p), both (n, C).

    Over all p of cells (1, x, y by C; ``half`` their edges) and all ends q (2, n, 4).
    """
    x, y = edge[0][:, None], edge[1][:, None]
    factors = np.stack([x * ends[1] - y * ends[0], y - ends[1], ends[0] - x], axis=-1)
    middle = factors @ cells
    reach = (np.abs(factors[..., 1:]) @ half)[..., None]
    return (middle - reach).min(axis=1), (middle + reach).max(axis=1)


def _ahead(window: _Window, cells: FloatArray, half: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Least and most metres from points of cells to the plane of a window, both (n, C)."""
    nx, ny = window.normal
    middle = np.stack([window.offset, -nx, -ny], axis=1) @ cells
    reach = (np.abs(window.normal).T @ half)[:, None]
    return np.maximum(middle - reach, 0.0), np.maximum(middle + reach, 0.0)


def _over(
    top: FloatArray,
    z: float,
    height: tuple[FloatArray, FloatArray],
    before: tuple[FloatArray, FloatArray],
    beyond: FloatArray,
) -> tuple[FloatArray, FloatArray]:
    """Least and most of a number above 0 where lines pass a window over a height; (n, C).

    A line from height z, a way ``before`` the window, to a point between both of ``height`` (n,),
    a way ``beyond`` it (n, 4), is over ``top`` (n,) where (height - top) before +
    (z - top) beyond > 0.
    """
    top = np.where(np.isfinite(top), top, _NEVER)
    down = (z - top)[:, None]
    past = (
        np.maximum(beyond.min(axis=1), 0.0)[:, None],
        np.maximum(beyond.max(axis=1), 0.0)[:, None],
    )
    climbing = [(end - top)[:, None] * way for end in height for way in before]
    falling = [down * way for way in past]
    return np.minimum.reduce(climbing) + np.minimum(*falling), np.maximum.reduce(
        climbing
    ) + np.maximum(*falling)
