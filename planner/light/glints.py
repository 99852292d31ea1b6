"""What wrinkled mirrors send straight to the map: sharp, however wide or narrow the lobe.

Two reckonings are joined. From where photons meet a wrinkled mirror its lobe is evaluated
towards the cells, which is exact but for chance in the places met: best for wide lobes and
far cells. And photons that go on from there are counted where they land: best for narrow
lobes and cells close by. Each pair of photon and cell is shared between the two by the
balance heuristic (Veach and Guibas, 1995, Optimally Combining Sampling Techniques for Monte
Carlo Rendering, SIGGRAPH 95), which keeps their sum right.

That is best for each cell. A lobe evaluated towards all of them moves them all alike, though,
and few are: of the light on the whole map the photons' own landings, which are many, tell more.
So the map is scaled to the mean of both, each weighted by what chance leaves in it.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from planner.light.emission import Source
from planner.light.field import CellGrid
from planner.light.foot import Foot, Lit
from planner.light.lobes import Bounce, Scattered, scatter, sent, sent_anew, sent_towards
from planner.light.paths import Arrival, Mirrors
from planner.light.prism import FloatArray, IntArray, totals
from planner.light.sequences import shifted_points
from planner.light.surfaces import Surfaces

_PLACES = 61
"""Points in each cell towards which lobes are evaluated in turn."""

_CLOSE = 3.0
"""Edges of a cell within which it is close to a place on a wall."""

_SAMPLES = 8
"""Directions drawn anew from each lobe."""

_PAIRS = 1 << 16
"""Pairs of photon and cell taken at a time; keeps the work in cache."""

_STRIDE, _DEAL = np.sqrt(3.0) - 1, np.sqrt(7.0) - 2
"""Irrational, and none of those of ``sequences``."""

_BATCHES = 6
"""Parts of the photons whose differences tell how far chance goes."""


@dataclass(frozen=True)
class _Leaving:
    """Rays (n,) about to leave wrinkled mirrors.

    Their starts (3, n), batches, the flux each carries, the shares of alike rays that have
    their lobes evaluated towards all cells, and drawn from anew; and which of them are.
    """

    scattered: Scattered
    origin: FloatArray
    batch: IntArray
    flux: FloatArray
    told: FloatArray
    drawn: FloatArray
    is_told: npt.NDArray[np.bool_]
    is_drawn: npt.NDArray[np.bool_]


class Glints:
    """Flux on the cells of a map, (C,), added up arrival by arrival.

    Of ``photons`` sent by a lamp of unit flux ``evaluated`` have their lobes evaluated
    towards every cell; of those that carry little, in proportion fewer. Cells close by,
    which get much from a few, are lit by all.
    """

    def __init__(
        self,
        surfaces: Surfaces,
        grid: CellGrid,
        mirrors: Mirrors,
        photons: int,
        evaluated: int,
        random: np.random.Generator,
    ) -> None:
        self._flux = np.zeros((_BATCHES, len(grid.inside)))
        self._landed = np.zeros(_BATCHES)
        self._surfaces, self._prism, self._grid = surfaces, surfaces.prism, grid
        self._mirrors = mirrors
        self._photons, self._evaluated = photons, min(evaluated, photons)
        u, v = shifted_points(len(grid.inside), _PLACES, 2, random)
        # Half the space and time; the lobes lose nothing that counts.
        places = np.moveaxis(grid.samples(u, v)[:2], 2, 1).astype(np.float32)
        self._places = np.ascontiguousarray(places).reshape(2, -1)
        self._area = grid.inside_area.astype(np.float32)
        self._turn = 0
        # Its own, so that chains are the same with and without.
        self._random = random.spawn(1)[0]
        self._slots = np.full(grid.area.size, -1, dtype=np.intp)
        self._slots[grid.inside] = np.arange(len(grid.inside))
        self._close = _CLOSE * min(grid.step)
        self._around = _around(grid, self._close)
        self._foot = Foot(surfaces, grid, mirrors, self._close)
        self._share = np.ones(photons)
        self._any_yet = False

    def flux(self) -> tuple[FloatArray, FloatArray]:
        """Flux on the cells (C,), without most of its chance, and the variance left in it (C,)."""
        total: FloatArray = self._flux.sum(axis=0)
        if not total.any():
            return total, total
        area = self._grid.inside_area
        density, variance = self._grid.smoothed(self._flux / area)
        two = np.stack([self._flux.sum(axis=1), self._landed])
        sums, chance = two.sum(axis=1), _BATCHES * two.var(axis=1, ddof=1)
        # The surer counts for more; 0 only where both are sure.
        weight = chance[::-1] / max(float(chance.sum()), 1e-300)
        scale = float(weight @ sums) / float(sums[0]) if weight.any() else 1.0
        common = float(weight**2 @ chance) / float(sums[0]) ** 2
        flux = density * area
        return scale * flux, variance * (scale * area) ** 2 + common * flux**2

    def light_foot(self, source: Source, count: int) -> None:
        """Send light of a unit lamp to the foot of wrinkled walls, and on to the map."""
        if self._foot:
            lit = self._foot.lit_by(source, count, self._random)
            self._from_foot(lit, self._batch_of(np.arange(count)), lit.flux, count)

    def add(self, arrival: Arrival, lands: IntArray) -> None:
        """Take one stage of chains; ``lands`` are those arrivals that reach the map."""
        if arrival.wrinkled is None:
            return
        all_landed = lands[arrival.wrinkled[lands]]
        if self._grid.is_part:
            way = (self._grid.z - arrival.origin[2, all_landed]) / arrival.direction[2, all_landed]
            end = arrival.origin[:2, all_landed] + way * arrival.direction[:2, all_landed]
            all_landed = all_landed[self._grid.holds(*end)]
        self._landed += totals(
            self._batch_of(arrival.ray[all_landed]),
            arrival.weight[all_landed] / self._photons,
            _BATCHES,
        )
        is_rough = np.zeros(arrival.ray.size, dtype=bool)
        is_rough[arrival.rough] = True
        later = all_landed[~is_rough[all_landed]]
        if later.size:
            way = (self._grid.z - arrival.origin[2, later]) / arrival.direction[2, later]
            end = arrival.origin[:2, later] + way * arrival.direction[:2, later]
            amount = arrival.weight[later] / self._photons
            self._take(self._batch_of(arrival.ray[later]), self._grid.slot_of(*end), amount)
        leaving = None
        if arrival.scattered is not None:
            leaving = self._leaving(arrival, arrival.scattered)
            self._send(leaving)
        if self._foot:
            self._share_with_foot(arrival, leaving)

    def _leaving(self, arrival: Arrival, scattered: Scattered) -> _Leaving:
        rough = arrival.rough
        ray, guide = arrival.ray.take(rough), arrival.guide.take(rough)
        # Spread over the photons as evenly as they are over the lamp.
        ticket = (ray * _STRIDE) % 1.0
        told = guide * (self._evaluated / self._photons)
        return _Leaving(
            scattered,
            arrival.origin.take(rough, axis=1),
            self._batch_of(ray),
            arrival.weight.take(rough) * self._share.take(ray) / self._photons,
            told,
            guide,
            ticket < told,
            ticket < guide,
        )

    def _share_with_foot(self, arrival: Arrival, leaving: _Leaving | None) -> None:
        """Divide what arrives at the foot between photons and light sent there on purpose."""
        foot = self._foot
        self._share[arrival.ray] = 1.0
        facet = self._surfaces.texel_facet.take(arrival.texel)
        z = arrival.origin[2] + arrival.distance * arrival.direction[2]
        met = foot.holds(facet, z)
        if not self._any_yet:
            # Straight from the lamp: all of it is sent on purpose.
            self._any_yet = True
            self._share[arrival.ray[met]] = 0.0
        if leaving is None:
            return
        scattered = leaving.scattered
        normals = self._prism.plane_normals()
        for bounce in scattered.bounces:
            # Photons that came there of themselves.
            came = np.flatnonzero(bounce.leaves & met.take(arrival.rough.take(bounce.ray)))
            ray = bounce.ray.take(came)
            which = arrival.rough.take(ray)
            direction = arrival.direction.take(which, axis=1)
            onto = (normals.take(arrival.plane.take(which), axis=1) * direction).sum(axis=0)
            density = sent_towards(
                bounce.take(came), scattered.frame.take(ray, axis=2), direction
            ) * np.maximum(onto, 0.0)
            density /= np.maximum(arrival.distance.take(which), 1e-9) ** 2
            placed = leaving.drawn.take(ray) * foot.density(z.take(which))
            self._share[arrival.ray.take(which)] = density / (density + placed)
            # And light sent to it on purpose.
            chosen = np.flatnonzero(leaving.is_drawn.take(bounce.ray))
            ray = bounce.ray.take(chosen)
            lit = foot.lit_from(
                leaving.origin.take(ray, axis=1),
                scattered.frame.take(ray, axis=2),
                bounce.take(chosen),
                self._random,
            )
            some = np.flatnonzero(lit.flux > 0)
            lit, ray = lit.take(some), ray.take(some)
            placed = leaving.drawn.take(ray) * foot.density(lit.point[2])
            # All that leaves, though of what leaves the foot itself the map has its light already.
            flux = arrival.weight.take(arrival.rough.take(ray)) / self._photons
            flux *= lit.flux / (lit.flux + placed)
            self._from_foot(lit, leaving.batch.take(ray), flux, self._photons)

    def _from_foot(self, lit: Lit, batch: IntArray, flux: FloatArray, alike: int) -> None:
        """Send on what arrives at the foot; ``alike`` are the points it is one of."""
        inward = -self._prism.plane_normals().take(lit.plane, axis=1)
        width = self._mirrors.width.take(lit.facet)
        count = flux.size
        told = min(self._evaluated / (4 * alike), 1.0)
        self._send(
            _Leaving(
                scatter(lit.direction, inward, width, self._random),
                lit.point,
                batch,
                flux * self._mirrors.specular.take(lit.facet),
                np.full(count, told),
                np.ones(count),
                self._random.random(count) < told,
                np.ones(count, dtype=bool),
            )
        )

    def _batch_of(self, ray: IntArray) -> IntArray:
        batch: IntArray = ((ray * _DEAL) % 1.0 * _BATCHES).astype(np.intp)
        return batch

    def _take(self, batch: IntArray, slot: IntArray, amount: FloatArray) -> None:
        count = self._flux.shape[1]
        self._flux += totals(batch * count + slot, amount, self._flux.size).reshape(-1, count)

    def _send(self, rays: _Leaving) -> None:
        """Add what rays that leave wrinkled mirrors send to the cells."""
        every = np.arange(self._flux.shape[1])[None]
        height = rays.origin[2] - self._grid.z
        far = rays.is_told & (height > 1e-9)
        drawn = rays.is_drawn & (height > 1e-9)
        near = drawn & (height < self._close)
        for bounce in rays.scattered.bounces:
            of, high = rays.batch.take(bounce.ray), height.take(bounce.ray)
            for part in _parts(far.take(bounce.ray), high, every.size, of):
                ray = bounce.ray.take(part)
                landing = self._evaluate(rays, bounce.take(part), every, False)
                self._flux[of[part[0]]] += rays.flux.take(ray) @ landing
            for part in _parts(near.take(bounce.ray), high, self._around.shape[1]):
                ray = bounce.ray.take(part)
                cells = self._around[self._grid.cell_of(*rays.origin[:2].take(ray, axis=1))]
                landing = self._evaluate(rays, bounce.take(part), cells, True)
                landing *= rays.flux.take(ray)[:, None]
                at = np.broadcast_to(rays.batch.take(ray)[:, None], cells.shape)
                self._take(at.ravel(), np.maximum(cells, 0).ravel(), landing.ravel())
            for part in _parts(drawn.take(bounce.ray), high, _SAMPLES):
                which, slot, landing = self._draw(rays, bounce.take(part))
                ray = bounce.ray.take(part).take(which)
                self._take(rays.batch.take(ray), slot, rays.flux.take(ray) * landing)

    def _hidden(
        self, origin: FloatArray, direction: FloatArray, length: FloatArray
    ) -> npt.NDArray[np.bool_]:
        """Which lines (n,) down to the map something stands in the way of."""
        if length.size == 0:
            return np.zeros(0, dtype=bool)
        corners = self._prism.corners
        low, high = corners.min(axis=0), corners.max(axis=0)
        crowd = self._prism.crowd.between(
            np.append(low, self._grid.z), np.append(high, origin[2].max())
        )
        if self._prism.convex and not crowd.boxes:
            return np.zeros(length.size, dtype=bool)
        return self._prism.blocked(crowd, origin, direction, length)

    def _evaluate(
        self, rays: _Leaving, bounce: Bounce, cells: IntArray, is_near: bool
    ) -> FloatArray:
        """What each bounce (n) sends straight to cells (n or 1, m), its part by evaluation."""
        origin, frame = rays.origin.take(bounce.ray, axis=1), rays.scattered.frame
        frame = frame.take(bounce.ray, axis=2)
        # Each photon has its own points, so that together they stand for all of a cell.
        turn = (self._turn + np.arange(origin.shape[1])[:, None]) % _PLACES
        self._turn += origin.shape[1]
        place = turn * self._area.size + cells
        gap = np.empty((3, *place.shape), dtype=np.float32)
        for axis in range(2):
            self._places[axis].take(place, out=gap[axis], mode="wrap")
        gap[2] = self._grid.z
        gap -= origin.astype(np.float32)[:, :, None]
        squared = np.einsum("inm,inm->nm", gap, gap)
        inverse = 1.0 / np.sqrt(squared)
        view = np.einsum("kin,kn->in", frame, bounce.view)
        cosine, across = (
            np.einsum("inm,in->nm", gap, axis.astype(np.float32)) * inverse
            for axis in (frame[2], view)
        )
        landing, away = sent(bounce, cosine, across)
        landing *= inverse / squared
        landing *= -gap[2] * self._area.take(cells)
        away *= landing
        away *= ((squared <= self._close**2) == is_near) & (cells >= 0)
        drawn = rays.drawn.take(bounce.ray)[:, None].astype(np.float32)
        told = drawn if is_near else rays.told.take(bounce.ray)[:, None].astype(np.float32)
        away /= told + (drawn * _SAMPLES) * landing
        if not self._prism.open_to_sight:
            ray, cell = np.nonzero(away)
            hidden = self._hidden(
                origin.take(ray, axis=1),
                gap[:, ray, cell] * inverse[ray, cell],
                # The map lies on the bottom: what is met there is not between.
                (1 - 1e-5) / inverse[ray, cell].astype(np.float64),
            )
            away[ray[hidden], cell[hidden]] = 0.0
        return away.astype(np.float64)

    def _draw(self, rays: _Leaving, bounce: Bounce) -> tuple[IntArray, IntArray, FloatArray]:
        """Which of the bounces (n) send light to which cells, and how much, its part by chance."""
        origin, frame = rays.origin.take(bounce.ray, axis=1), rays.scattered.frame
        frame = frame.take(bounce.ray, axis=2)
        after = sent_anew(bounce, _SAMPLES, self._random)
        frame = frame.astype(np.float32)
        down = np.einsum("kn,knm->nm", frame[:, 2], after)
        which, turn = np.nonzero((after[2] > 0) & (down < -1e-9))
        after, down = after[:, which, turn], down[which, turn]
        start, frame = origin.take(which, axis=1), frame.take(which, axis=2)
        direction = np.einsum("kin,kn->in", frame, after)
        way = (self._grid.z - start[2]) / down
        end = start[:2] + way * direction[:2]
        slot = self._slots[self._grid.cell_of(*end)]
        seen = np.flatnonzero((slot >= 0) & self._grid.holds(*end))
        if not self._prism.open_to_sight:
            hidden = self._hidden(
                start.take(seen, axis=1),
                direction.take(seen, axis=1),
                (1 - 1e-7) * way.take(seen),
            )
            seen = seen[~hidden]
        which, slot, down, way = which[seen], slot[seen], down[seen], way[seen]
        after, bounce = after[:, seen], bounce.take(which)
        across = (bounce.view * after).sum(axis=0)
        landing, away = (part[:, 0] for part in sent(bounce, after[2][:, None], across[:, None]))
        landing *= -down / way**2 * self._grid.inside_area.take(slot)
        drawn = rays.drawn.take(bounce.ray)
        told = np.where(way <= self._close, drawn, rays.told.take(bounce.ray))
        away *= landing / (told + drawn * _SAMPLES * landing)
        return which, slot, away


def _parts(
    chosen: npt.NDArray[np.bool_], height: FloatArray, each: int, batch: IntArray | None = None
) -> Iterator[IntArray]:
    """Those chosen in pieces of one batch and like heights, with ``each`` results of one.

    From like heights few boxes at most can stand in the way of any.
    """
    size = max(1, _PAIRS // each)
    for number in range(1 if batch is None else _BATCHES):
        own = np.flatnonzero(chosen if batch is None else chosen & (batch == number))
        own = own[np.argsort(height.take(own))]
        for start in range(0, own.size, size):
            yield own[start : start + size]


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
