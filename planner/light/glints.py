"""What wrinkled mirrors send straight to the map: sharp, however wide or narrow the lobe.

Two reckonings are joined. From where photons meet a wrinkled mirror its lobe is evaluated
towards the cells, which is exact but for chance in the places met: best for wide lobes and
far cells. And photons that go on from there are counted where they land: best for narrow
lobes and cells close by. Each pair of photon and cell is shared between the two by the
balance heuristic (Veach and Guibas, 1995, Optimally Combining Sampling Techniques for Monte
Carlo Rendering, SIGGRAPH 95), which keeps their sum right.
"""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np
import numpy.typing as npt

from planner.light.field import CellGrid
from planner.light.lobes import Bounce, Scattered, sent
from planner.light.paths import Arrival
from planner.light.prism import FloatArray, IntArray, Prism, totals
from planner.light.sequences import shifted_points

_PLACES = 61
"""Points in each cell towards which lobes are evaluated in turn."""

_CLOSE = 3.0
"""Edges of a cell within which it is close to a place on a wall."""

_PAIRS = 1 << 16
"""Pairs of photon and cell taken at a time; keeps the work in cache."""

_STRIDE, _DEAL = np.sqrt(3.0) - 1, np.sqrt(7.0) - 2
"""Irrational, and none of those of ``sequences``."""

_BATCHES = 6
"""Parts of the photons whose differences tell how far chance goes."""


class Glints:
    """Flux on the cells of a map, (C,), added up arrival by arrival.

    Of ``photons`` sent by a lamp of unit flux ``evaluated`` have their lobes evaluated
    towards every cell; of those that carry little, in proportion fewer. Cells close by,
    which get much from a few, are lit by all.
    """

    def __init__(
        self,
        prism: Prism,
        grid: CellGrid,
        photons: int,
        evaluated: int,
        random: np.random.Generator,
    ) -> None:
        self._flux = np.zeros((_BATCHES, len(grid.inside)))
        self._prism, self._grid = prism, grid
        self._photons, self._evaluated = photons, min(evaluated, photons)
        u, v = shifted_points(len(grid.inside), _PLACES, 2, random)
        places = np.moveaxis(grid.samples(u, v), 2, 1)
        # Half the space and time; the lobes lose nothing that counts.
        self._places = places.astype(np.float32)
        self._area = grid.inside_area.astype(np.float32)
        self._turn = 0
        self._close = _CLOSE * min(grid.step)
        self._around = _around(grid, self._close)

    def flux(self) -> tuple[FloatArray, FloatArray]:
        """Flux on the cells (C,), without most of its chance, and the variance left in it (C,)."""
        total: FloatArray = self._flux.sum(axis=0)
        if not total.any():
            return total, total
        area = self._grid.inside_area
        density, variance = smoothed(self._grid, self._flux / area)
        flux = density * area
        flux *= float(total.sum()) / float(flux.sum())
        return flux, variance * area**2

    def add(self, arrival: Arrival, lands: IntArray) -> None:
        """Take one stage of chains; ``lands`` are those arrivals that reach the map."""
        if arrival.wrinkled is None:
            return
        lands = lands[arrival.wrinkled[lands]]
        is_rough = np.zeros(arrival.ray.size, dtype=bool)
        is_rough[arrival.rough] = True
        direct, later = lands[is_rough[lands]], lands[~is_rough[lands]]
        if arrival.scattered is not None:
            flux = self._from_lobes(arrival, arrival.scattered, direct)
            # All photons know better how much arrives in all, the lobes where.
            found, due = float(flux.sum()), float(arrival.weight[direct].sum()) / self._photons
            self._flux += flux * (due / found if found > 0 else 0.0)
        if later.size:
            way = (self._grid.z - arrival.origin[2, later]) / arrival.direction[2, later]
            end = arrival.origin[:2, later] + way * arrival.direction[:2, later]
            self._flux += self._batched(
                self._batch_of(arrival.ray[later]),
                self._grid.slot_of(*end),
                arrival.weight[later] / self._photons,
            )

    def _batch_of(self, ray: IntArray) -> IntArray:
        batch: IntArray = ((ray * _DEAL) % 1.0 * _BATCHES).astype(np.intp)
        return batch

    def _batched(self, batch: IntArray, slot: IntArray, amount: FloatArray) -> FloatArray:
        count = self._flux.shape[1]
        return totals(batch * count + slot, amount, self._flux.size).reshape(-1, count)

    def _from_lobes(self, arrival: Arrival, scattered: Scattered, lands: IntArray) -> FloatArray:
        """Flux on cells in batches from where rays left wrinkled mirrors, (batches, C)."""
        rough = arrival.rough
        weight, origin = arrival.weight.take(rough), arrival.origin.take(rough, axis=1)
        direction = arrival.direction.take(rough, axis=1)
        share = self._evaluated * weight
        # Spread over the photons as evenly as they are over the lamp.
        ticket = (arrival.ray.take(rough) * _STRIDE) % 1.0 * self._photons
        batch = self._batch_of(arrival.ray.take(rough))
        height = origin[2] - self._grid.z
        far = (ticket < share) & (height > 1e-9)
        near = (height > 1e-9) & (height < self._close)
        landed = np.zeros(arrival.ray.size, dtype=bool)
        landed[lands] = True
        landed = landed.take(rough)
        every = np.arange(self._flux.shape[1])[None]
        flux = np.zeros_like(self._flux)
        for bounce in scattered.bounces:
            for chosen, is_near in ((far, False), (near, True)):
                size = max(1, _PAIRS // (self._around if is_near else every).shape[1])
                for part in self._parts(
                    np.flatnonzero(chosen.take(bounce.ray)), size, batch.take(bounce.ray)
                ):
                    ray = bounce.ray.take(part)
                    start = origin.take(ray, axis=1)
                    cells = self._around[self._grid.cell_of(*start[:2])] if is_near else every
                    landing = self._evaluate(
                        bounce.take(part), scattered.frame.take(ray, axis=2), start, cells, is_near
                    )
                    of_ray = self._photons if is_near else share.take(ray)[:, None]
                    landing = landing.astype(np.float64)
                    landing *= weight.take(ray)[:, None] / (of_ray + self._photons * landing)
                    if is_near:
                        at = np.broadcast_to(batch.take(ray)[:, None], cells.shape)
                        flux += self._batched(
                            at.ravel(), np.maximum(cells, 0).ravel(), landing.ravel()
                        )
                    else:
                        flux[batch[ray[0]]] += landing.sum(axis=0)
            gone = np.flatnonzero(bounce.leaves & landed.take(bounce.ray))
            ray = bounce.ray.take(gone)
            slot, landing, way = self._landing(
                bounce.take(gone), origin.take(ray, axis=1), direction.take(ray, axis=1)
            )
            of_ray = np.where(way <= self._close, self._photons, share.take(ray))
            landing *= weight.take(ray) / np.maximum(of_ray + self._photons * landing, 1e-300)
            flux += self._batched(batch.take(ray), slot, landing)
        return flux

    def _parts(self, which: IntArray, size: int, batch: IntArray) -> Iterator[IntArray]:
        """Rays in pieces of at most ``size``, each of one batch."""
        for number in range(_BATCHES):
            own = which[batch.take(which) == number]
            for start in range(0, own.size, size):
                yield own[start : start + size]

    def _evaluate(
        self,
        bounce: Bounce,
        frame: FloatArray,
        origin: FloatArray,
        cells: IntArray,
        is_near: bool,
    ) -> FloatArray:
        """Share each bounce (n) sends straight to cells (n or 1, m), to near or to far ones."""
        # Each photon has its own points, so that together they stand for all of a cell.
        turn = (self._turn + np.arange(origin.shape[1])[:, None]) % _PLACES
        self._turn += origin.shape[1]
        gap = np.stack([axis[turn, cells] for axis in self._places])
        gap -= origin.astype(np.float32)[:, :, None]
        squared = np.einsum("inm,inm->nm", gap, gap)
        inverse = 1.0 / np.sqrt(squared)
        view = np.einsum("kin,kn->in", frame, bounce.view)
        cosine, across = (
            np.einsum("inm,in->nm", gap, axis.astype(np.float32)) * inverse
            for axis in (frame[2], view)
        )
        landing = sent(bounce, cosine, across)
        landing *= inverse / squared
        landing *= -gap[2] * self._area.take(cells)
        landing *= ((squared <= self._close**2) == is_near) & (cells >= 0)
        if not self._prism.open_to_sight:
            ray, cell = np.nonzero(landing)
            hidden = self._prism.blocked(
                self._prism.crowd,
                origin.take(ray, axis=1),
                gap[:, ray, cell] * inverse[ray, cell],
                # The map lies on the bottom: what is met there is not between.
                (1 - 1e-5) / inverse[ray, cell].astype(np.float64),
            )
            landing[ray[hidden], cell[hidden]] = 0.0
        return landing

    def _landing(
        self, bounce: Bounce, origin: FloatArray, direction: FloatArray
    ) -> tuple[IntArray, FloatArray, FloatArray]:
        """Cell where rays land, the share that was to be expected there, and the way."""
        way = (self._grid.z - origin[2]) / direction[2]
        end = origin[:2] + way * direction[:2]
        slot = self._grid.slot_of(*end)
        across = (bounce.view * bounce.after).sum(axis=0)
        landing = sent(bounce, bounce.after[2][:, None], across[:, None])[:, 0]
        landing *= -direction[2] / np.maximum(way, 1e-9) ** 2
        return slot, landing * self._grid.inside_area.take(slot), way


def _around(grid: CellGrid, distance: float) -> npt.NDArray[np.intp]:
    """For each cell of the whole table the cells (0…C-1) about it, -1 where none is."""
    rows, columns = grid.area.shape
    reach = [int(np.ceil(distance / step)) for step in grid.step]
    slots = np.full((rows + 2 * reach[1], columns + 2 * reach[0]), -1, dtype=np.intp)
    inner = np.full(rows * columns, -1, dtype=np.intp)
    inner[grid.inside] = np.arange(len(grid.inside))
    slots[reach[1] : rows + reach[1], reach[0] : columns + reach[0]] = inner.reshape(rows, columns)
    window = (2 * reach[1] + 1, 2 * reach[0] + 1)
    views = np.lib.stride_tricks.sliding_window_view(slots, window)
    return np.ascontiguousarray(views.reshape(rows * columns, -1))


# -- Chance taken out of maps that are smooth by nature, as far as the data allow ------
# Penalised least squares: the values nearest to those found whose second differences along
# rows and columns are small (Whittaker, 1923, Proc. Edinburgh Math. Soc. 41, 63). How much
# smoothness is bought is settled place by place: independent parts of the data tell what
# chance does to the smooth map and to what was taken out of it, and what was taken out
# beyond chance is error (an unbiased estimate of risk, as in Mallows, 1973, Technometrics
# 15, 661). Linear fields pass unchanged, and so do peaks that stand out of the chance.

_STRENGTHS = 10.0 ** np.arange(-1.5, 5.1, 0.75)

_ABOUT = 2
"""Cells on each side over which the risk is averaged."""


def smoothed(grid: CellGrid, parts: FloatArray) -> tuple[FloatArray, FloatArray]:
    """The sum (C,) of independent parts of a map (n, C) without most of its chance.

    And the mean square error left in it, by the estimate of risk that chose it; (C,).

    Parts are alike but for chance, such as what every n-th of the photons brought.
    """
    total = parts.sum(axis=0)
    rough = _roughness(grid)
    result, best = total, _about(grid, _variance(parts))
    for strength in _STRENGTHS:
        system = strength * rough
        system[np.diag_indices_from(system)] += 1.0
        fitted = np.linalg.solve(system, parts.T).T
        smooth = fitted.sum(axis=0)
        beyond = (total - smooth) ** 2 - _variance(parts - fitted)
        risk = np.maximum(_about(grid, beyond), 0.0) + _about(grid, _variance(fitted))
        result, best = np.where(risk < best, smooth, result), np.minimum(risk, best)
    return np.maximum(result, 0.0), best


def _variance(parts: FloatArray) -> FloatArray:
    """Variance of the sum of alike parts (n, C), shape (C,)."""
    variance: FloatArray = len(parts) * parts.var(axis=0, ddof=1)
    return variance


def _about(grid: CellGrid, values: FloatArray) -> FloatArray:
    """Means over the cells about each (C,)."""
    table = np.pad(grid.on_map(values), _ABOUT, constant_values=np.nan)
    windows = np.lib.stride_tricks.sliding_window_view(table, (2 * _ABOUT + 1,) * 2)
    means: FloatArray = np.nanmean(windows.reshape(grid.area.size, -1)[grid.inside], axis=1)
    return means


def _roughness(grid: CellGrid) -> FloatArray:
    """Sum of squared second differences of neighbouring cells as a matrix (C, C)."""
    rows, columns = grid.area.shape
    slots = np.full(rows * columns, -1, dtype=np.intp)
    slots[grid.inside] = np.arange(len(grid.inside))
    table = slots.reshape(rows, columns)
    matrix = np.zeros((len(grid.inside),) * 2)
    for lines in (table, table.T):
        three = np.stack([lines[:, :-2], lines[:, 1:-1], lines[:, 2:]]).reshape(3, -1)
        three = three[:, (three >= 0).all(axis=0)]
        for a, first in zip((1.0, -2.0, 1.0), three, strict=True):
            for b, second in zip((1.0, -2.0, 1.0), three, strict=True):
                np.add.at(matrix, (first, second), a * b)
    return matrix
