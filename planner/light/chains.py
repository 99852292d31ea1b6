"""Chains of mirrors as images of the lamp, told apart among photons that reach the map."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from planner.light.prism import FloatArray, IntArray, totals
from planner.light.surfaces import Surfaces

_MIX = np.array([0x9E3779B97F4A7C15 - (1 << 64), 0x632BE59BD9B4E019, 0x1B873593CC9E2D51])

_MOST_TRIED = 12000
"""Most images, strongest first, of which the exact light is asked at all."""


@dataclass(frozen=True)
class Images:
    """Mirrored lamps, the strongest first: x -> A x + b for each.

    Attributes
    ----------
    linear, shift
        A and b, shapes (n, 3, 3) and (n, 3).
    planes
        The planes of each chain in order, filled up with -1; shape (n, longest).
    flux
        Flux that photons gave each, shape (n,).
    single
        Flux of one of these photons, shape (n,).
    gathered
        How much brighter the cells are that each lights than if it lit all alike, shape (n,).
    total
        Flux of these and of all that were left out for their number.
    """

    linear: FloatArray
    shift: FloatArray
    planes: npt.NDArray[np.int16]
    flux: FloatArray
    single: FloatArray
    gathered: FloatArray
    total: float

    def __len__(self) -> int:
        return len(self.flux)

    def some(self, which: IntArray | slice) -> Images:
        """Some of them, in the order of ``which``."""
        kept = {name: value[which] for name, value in vars(self).items() if name != "total"}
        return Images(**kept, total=self.total)

    def of(self, points: FloatArray) -> FloatArray:
        """Where points (3, k) of the lamp are seen, shape (3, n, k)."""
        seen: FloatArray = np.einsum("nij,jk->ink", self.linear, points)
        return seen + self.shift.T[:, :, None]

    def meets(self, alike: IntArray) -> npt.NDArray[np.bool_]:
        """Which planes each may be seen by, shape (n, planes).

        Those of its chain, and those that lie in one plane with one of them: mirrors on both
        sides of a niche show a lamp in one place. ``alike`` (planes,) is that of ``Prism``.
        """
        met = np.zeros((len(self), alike.size + 1), dtype=bool)
        # What fills up the chains falls into the last column.
        met[np.arange(len(self))[:, None], np.append(alike, alike.size)[self.planes]] = True
        return met[:, alike]


@dataclass(frozen=True)
class Landings:
    """Where photons reached the map by way of flat mirrors.

    Of each, the image (n,) it shows, as numbered among ``Images`` or beyond their number if left
    out, the cell (n,) and the flux (n,).
    """

    image: IntArray
    cell: IntArray
    flux: FloatArray


_NONE = np.zeros(0)
NO_IMAGES = Images(
    np.zeros((0, 3, 3)), np.zeros((0, 3)), np.zeros((0, 0), np.int16), _NONE, _NONE, _NONE, 0.0
)


NO_LANDINGS = Landings(np.empty(0, dtype=np.intp), np.empty(0, dtype=np.intp), np.zeros(0))


def distinct_images(
    surfaces: Surfaces,
    seen: FloatArray,
    weight: FloatArray,
    cell: IntArray,
    cells: int,
    chains: npt.NDArray[np.int16],
    ray: IntArray,
    length: npt.NDArray[np.int16],
) -> tuple[Images, IntArray]:
    """Distinct images among photon arrivals on the map, strongest first, and whose each is (n,).

    ``seen`` (3, n) is where each arrival sees the lamp's marked point, which tells images
    apart; ``weight`` (n,) its flux and ``cell`` (n,) which of ``cells`` it falls on; ``chains``
    (N, longest) the planes every photon met, ``ray`` (n,) the photon and ``length`` (n,) how many
    of its planes came before.
    """
    if weight.size == 0:
        return NO_IMAGES, np.empty(0, dtype=np.intp)
    # Three rounded coordinates mixed into one number (odd multipliers, wrapping): sorting
    # one column is several times faster than sorting three.
    rounded = np.rint(seen * 1e5).astype(np.int64)
    mixed = (rounded * _MIX[:, None]).sum(axis=0)
    _, first, which = np.unique(mixed, return_index=True, return_inverse=True)
    flux = totals(which.ravel(), weight, len(first))
    count = np.bincount(which.ravel())
    single = flux / count
    lit, times = np.unique(which.ravel() * cells + cell, return_counts=True)
    # Of two photons of one image, how often they share a cell tells without bias how few it lights.
    together = totals(lit // cells, times * (times - 1.0), len(first))
    gathered = cells * together / np.maximum(count * (count - 1.0), 1.0)
    order = np.argsort(-flux)
    rank = np.empty(len(order), dtype=np.intp)
    rank[order] = np.arange(len(order))
    order = order[:_MOST_TRIED]
    depth = length[first[order]]
    planes = chains[ray[first[order]], : int(depth.max())]
    planes = np.where(np.arange(planes.shape[1]) < depth[:, None], planes, np.int16(-1))
    mirror_linear, mirror_shift = surfaces.prism.plane_mirrors()
    linear = np.repeat(np.eye(3)[None], len(order), axis=0)
    shift = np.zeros((len(order), 3))
    for stage in range(planes.shape[1]):
        deep = np.flatnonzero(depth > stage)
        plane = planes[deep, stage]
        linear[deep] = mirror_linear[plane] @ linear[deep]
        turned = np.einsum("kij,kj->ki", mirror_linear[plane], shift[deep])
        shift[deep] = turned + mirror_shift[plane]
    images = Images(
        linear, shift, planes, flux[order], single[order], gathered[order], float(flux.sum())
    )
    return images, rank[which.ravel()]
