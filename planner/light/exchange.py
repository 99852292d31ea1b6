"""Exchange of diffuse light between patches, its balance, and its gathering on the map.

``factors[i, j]`` is the photon flux that arrives on patch j, directly or by way
of mirrors, for unit flux leaving patch i diffusely (Lambert). Estimated by casting the
same number of well spread rays from every patch. Rays that end are counted, so energy is
conserved but for the small remainder where chains are cut; each row is scaled to make

    Σ_j factors[i, j] (1 - ρ_s(j)) = 1

exact: what leaves a patch is absorbed, or diffusely reflected again, somewhere.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from planner.light.field import CellGrid
from planner.light.paths import Arrival, Mirrors, mirror_chains
from planner.light.prism import FloatArray, IntArray, totals
from planner.light.sequences import cosine_directions, shifted_by
from planner.light.surfaces import Surfaces

CHUNK = 1 << 15
"""Rays followed at a time: small enough to stay in cache, large enough for numpy."""

Step = Callable[[], None]


@dataclass(frozen=True)
class Exchange:
    """Factors (P, P) for unit flux leaving each patch diffusely.

    ``straight`` (P,) is the part of it that reaches the bottom without a mirror between.
    ``doubt`` (P, P) is by how much two halves of the rays tell each factor apart, half of that.
    """

    factors: FloatArray
    straight: FloatArray
    doubt: npt.NDArray[np.float16]


def exchange_factors(
    surfaces: Surfaces,
    mirrors: Mirrors,
    rays: int,
    random: np.random.Generator,
    cutoff: float,
    step: Step,
) -> Exchange:
    """Estimate the exchange; ``step`` is called often and may raise to stop."""
    count = surfaces.patch_count
    shift = random.random((4, count))
    halves = np.zeros((2, count * count))
    straight = np.zeros(count)
    at_a_time = max(1, CHUNK // rays)
    for low in range(0, count, at_a_time):
        step()
        which = slice(low, min(low + at_a_time, count))
        u = shifted_by(shift[:, which], rays)
        points, plane = surfaces.patch_samples(u[0], u[1], which)
        direction = _turned(surfaces, cosine_directions(u[2], u[3]), plane)
        source = np.repeat(np.arange(len(plane)), rays)
        chains = mirror_chains(
            surfaces, points.reshape(3, -1), direction.reshape(3, -1), mirrors, cutoff, random
        )
        for stage, arrival in enumerate(chains):
            step()
            if stage == 0:
                lands = (arrival.plane == surfaces.prism.bottom).astype(np.float64)
                straight[which] = totals(source, lands, len(plane))
            target = surfaces.texel_patch[arrival.texel]
            index = source[arrival.ray] * count + target
            span = len(plane) * count
            # Neighbouring rays of the lattice go to different halves.
            added = totals(arrival.ray % 2 * span + index, arrival.weight, 2 * span)
            halves[:, low * count : low * count + span] += added.reshape(2, -1)
    kept = 1.0 - mirrors.specular[surfaces.patch_facet]
    even, odd = halves.reshape(2, count, count) / rays
    flux, area = _reciprocal(even + odd, surfaces.patch_area)
    rows, columns = _balancing(flux, kept, area)
    apart, _ = _reciprocal(even - odd, surfaces.patch_area)
    scale = (rows / area)[:, None] * columns
    return Exchange(flux * scale, straight / rays, (apart * scale).astype(np.float16))


_ROUNDS = 12
"""Rounds of scaling; each divides what is left of the imbalance by about four."""


def _balancing(
    flux: FloatArray, kept: FloatArray, area: FloatArray
) -> tuple[FloatArray, FloatArray]:
    """Factors of rows and columns, near 1: x_i Σ_j flux_ij y_j kept_j = area_i.

    Scaling both alike keeps the exchange reciprocal (as in Sinkhorn, 1964, Ann. Math.
    Statist. 35, 876, for symmetric matrices). The last round is for rows alone: the
    balance is then exact and reciprocity holds to what the rounds left.
    """
    x = np.ones(len(area))
    for _ in range(_ROUNDS):
        x = np.sqrt(x * area / np.maximum(flux @ (x * kept), 1e-300))
    return area / np.maximum(flux @ (x * kept), 1e-300), x


def _reciprocal(matrix: FloatArray, area: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Average of both estimates of each exchange, A_i F_ij = A_j F_ji, times area; and areas.

    A small patch casts its rays from closer together, so of the two its estimate counts for
    more: the variance of a count of hits, times area, goes with the area. Patches without
    area (outside a slanting footprint) get a tiny one, so that their rows stay harmless.
    """
    floor = np.maximum(area, 1e-9 * float(area.max()))
    flux = matrix * (floor[:, None] * (floor / (floor[:, None] + floor)))
    return flux + flux.T, floor


def _turned(
    surfaces: Surfaces, local: tuple[FloatArray, FloatArray, FloatArray], plane: IntArray
) -> FloatArray:
    """Directions about +z turned to leave each patch inward, (3, P, R)."""
    prism = surfaces.prism
    inward = -prism.plane_normals()[:, plane]
    tangent = prism.plane_tangents[:, plane]
    bitangent = np.cross(inward.T, tangent.T).T
    turned: FloatArray = (
        local[0] * tangent[:, :, None]
        + local[1] * bitangent[:, :, None]
        + local[2] * inward[:, :, None]
    )
    return turned


@dataclass(frozen=True)
class Gather:
    """Which texels each cell of the map sees, kept as a list of (texel, weight) cell by cell.

    Rays are told apart in two halves, each evenly spread, whose disagreement tells how far
    chance moves the result; ``start`` (2 C,) tells where the entries of each half of each
    cell begin. The mean
    over a cell of the flux density that arrives from diffuse light leaving the texels with
    exitance M (µmol m⁻² s⁻¹) is Σ weight · M[texel]. ``straight`` marks what was seen
    without a mirror between.
    """

    grid: CellGrid
    start: IntArray
    texel: npt.NDArray[np.unsignedinteger]
    weight: npt.NDArray[np.float32]
    straight: npt.NDArray[np.bool_]

    def apply(self, exitance: FloatArray, spots: FloatArray | None = None) -> FloatArray:
        """Flux density on the cells of ``grid`` from texel exitance (T,), in halves (2, C).

        Their sum is what is asked for. Their difference is as large as its standard error
        would be if the rays were independent, and somewhat larger than the true one, since
        all rays together are more evenly spread than each half.
        ``spots`` (T,) is the part of the exitance that is added otherwise where it is seen
        straight, without a mirror between.
        """
        seen = exitance.astype(np.float32).take(self.texel)
        if spots is not None:
            seen -= self.straight * spots.astype(np.float32).take(self.texel)
        seen *= self.weight
        halves: FloatArray = np.add.reduceat(seen, self.start, dtype=np.float64)
        return halves.reshape(-1, 2).T


_Part = tuple[
    npt.NDArray[np.int32],
    npt.NDArray[np.int32],
    npt.NDArray[np.float32],
    npt.NDArray[np.bool_],
]


def gather_paths(
    surfaces: Surfaces,
    grid: CellGrid,
    mirrors: Mirrors,
    rays: int,
    random: np.random.Generator,
    cutoff: float,
    step: Step,
) -> Gather:
    """Follow ``rays`` cosine-spread rays up from each cell and note what they meet."""
    cells = len(grid.inside)
    shift = random.random((4, cells))
    parts: list[_Part] = []
    at_a_time = max(1, CHUNK // rays)
    for low in range(0, cells, at_a_time):
        step()
        which = slice(low, min(low + at_a_time, cells))
        u = shifted_by(shift[:, which], rays)
        origin = grid.samples(u[0], u[1], which).reshape(3, -1)
        direction = np.stack(cosine_directions(u[2], u[3])).reshape(3, -1)
        # Neighbouring rays of the lattice go to different halves.
        halves = 2 * np.repeat(np.arange(cells)[which], rays)
        halves += np.tile(np.arange(rays) % 2, len(halves) // rays)
        collected = _Collected(halves.astype(np.int32), surfaces.texel_count)
        chains = mirror_chains(surfaces, origin, direction, mirrors, cutoff, random)
        for stage, arrival in enumerate(chains):
            step()
            collected.add(arrival, stage == 0)
        parts.append(collected.part(step))
        step()
    cell, texel, weight, straight = (np.concatenate(a) for a in zip(*parts, strict=True))
    # Every ray meets something, so no half is empty.
    start = np.searchsorted(cell, np.arange(2 * cells))
    if not straight.all():
        kept = 1 - mirrors.specular.astype(np.float32).take(surfaces.texel_facet)
        _complete(start, weight, straight, kept.take(texel), rays)
    weight /= rays
    # Millions, kept for the next edit: as short as the number of texels allows.
    short = np.min_scalar_type(surfaces.texel_count)
    return Gather(grid, start, texel.astype(short), weight, straight)


def _complete(
    start: IntArray,
    weight: npt.NDArray[np.float32],
    straight: npt.NDArray[np.bool_],
    kept: npt.NDArray[np.float32],
    rays: int,
) -> None:
    """Make up for chains cut short: of each cell's rays all end, as rows of the exchange do.

    What mirrors showed is raised by one factor for both halves of a cell; ``kept`` (n,) is
    1 - ρ_s of what was met. Mirrors of ρ_s = 0.88 face to face keep 1 % when they are cut.
    """
    ended = weight * kept
    total = np.add.reduceat(ended, start[::2], dtype=np.float64)
    ended *= straight
    seen = np.add.reduceat(ended, start[::2], dtype=np.float64)
    mirrored = total - seen
    factor = np.where(mirrored > 1e-6 * total, (rays - seen) / np.maximum(mirrored, 1e-300), 1.0)
    lengths = np.diff(np.append(start[::2], weight.size))
    more = np.repeat(factor.astype(np.float32), lengths)
    np.multiply(weight, more, out=weight, where=~straight)


_MOST_PENDING = 1_000_000
"""Entries kept one by one; near-perfect mirrors make very many more, and these are added up."""


class _Collected:
    """What the rays of some neighbouring cells meet: ``source`` (n,) is the half of each ray."""

    def __init__(self, source: npt.NDArray[np.int32], texels: int) -> None:
        self._source, self._texels = source, texels
        self._first = int(source.min())
        self._pending: list[_Part] = []
        self._count = 0
        self._sums: FloatArray | None = None
        self._straight: list[_Part] = []

    def add(self, arrival: Arrival, straight: bool) -> None:
        """Take in one stage of all rays; millions for a fine map, so in half the space."""
        part = (
            self._source.take(arrival.ray),
            arrival.texel.astype(np.int32),
            arrival.weight.astype(np.float32),
            np.full(len(arrival.ray), straight),
        )
        if straight:
            self._straight.append(part)
            return
        self._pending.append(part)
        self._count += len(arrival.ray)
        if self._count > _MOST_PENDING:
            self._add_up()

    def _add_up(self) -> None:
        cell, texel, weight, _ = (np.concatenate(a) for a in zip(*self._pending, strict=True))
        kind = (cell - self._first).astype(np.intp) * self._texels + texel
        if self._sums is None:
            self._sums = np.zeros((int(self._source.max()) - self._first + 1) * self._texels)
        self._sums += totals(kind, weight, len(self._sums))
        self._pending, self._count = [], 0

    def part(self, step: Step) -> _Part:
        """All entries in the order of cells, alike ones added up where there were many."""
        if self._sums is None:
            parts = self._straight + self._pending
        else:
            if self._pending:
                self._add_up()
            table = self._sums.reshape(-1, self._texels)
            found = np.nonzero(table)
            step()
            cell, texel = (part.astype(np.int32) for part in found)
            summed = table[found].astype(np.float32)
            step()
            parts = [
                *self._straight,
                (cell + self._first, texel, summed, np.zeros(len(cell), bool)),
            ]
        cell, texel, weight, straight = (np.concatenate(a) for a in zip(*parts, strict=True))
        step()
        # A block has few cells: sixteen bits are sorted by counting.
        order = np.argsort((cell - self._first).astype(np.uint16), kind="stable")
        return cell.take(order), texel.take(order), weight.take(order), straight.take(order)


# -- The balance φ = φ_lamp + Kᵀ R_d φ, solved for all lamps at once -------------------


class NothingAbsorbsError(ValueError):
    """No surface or opening takes up light, so that it would grow without bound."""


def response(factors: FloatArray, diffuse: FloatArray) -> FloatArray:
    """Matrix (P, P) that turns flux on patches from lamps into total flux on patches.

    ``factors`` is the exchange (see ``exchange_factors``), ``diffuse`` ρ_d of each patch (P,).
    Kept between edits, so that moving a lamp costs one product.

    Raises
    ------
    NothingAbsorbsError
        If light cannot leave: every surface reflects all it receives.
    """
    system = np.eye(len(diffuse)) - factors.T * diffuse
    try:
        inverse: FloatArray = np.asarray(np.linalg.inv(system), dtype=np.float64)
    except np.linalg.LinAlgError as error:
        raise NothingAbsorbsError(_SENTENCE) from error
    if not np.isfinite(inverse).all() or np.abs(inverse).max() > 1e6:
        raise NothingAbsorbsError(_SENTENCE)
    return inverse


def check_something_absorbs(total: FloatArray) -> None:
    """Refuse a room in which no surface takes up light, before rays are cast in vain.

    Parameters
    ----------
    total
        ρ_d + ρ_s of every facet, shape (F,).

    Raises
    ------
    NothingAbsorbsError
        If all are 1.
    """
    if (total >= 1 - 1e-9).all():
        raise NothingAbsorbsError(_SENTENCE)


_SENTENCE = (
    "Every surface of the space reflects all light and nothing absorbs it, so no balance "
    "exists; give the canopy, a wall or the ceiling a reflectance below 1."
)
