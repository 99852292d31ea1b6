"""Exchange of diffuse light between patches, and its gathering on the map.

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
from planner.light.paths import Mirrors, mirror_chains
from planner.light.prism import FloatArray, IntArray
from planner.light.sequences import cosine_directions, shifted_points
from planner.light.surfaces import Surfaces
from planner.light.totals import totals

CHUNK = 1 << 15
"""Rays followed at a time: small enough to stay in cache, large enough for numpy."""

Step = Callable[[], None]


@dataclass(frozen=True)
class Exchange:
    """Factors (P, P) for unit flux leaving each patch diffusely.

    ``straight`` (P,) is the part of it that reaches the bottom without a mirror between.
    """

    factors: FloatArray
    straight: FloatArray


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
    u = shifted_points(count, rays, 4, random)
    points, plane = surfaces.patch_samples(u[0], u[1])
    local = cosine_directions(u[2], u[3])
    direction = _turned(surfaces, local, plane)
    factors = np.zeros(count * count)
    straight = np.zeros(count)
    source = np.repeat(np.arange(count), rays)
    origin, direction = points.reshape(3, -1), direction.reshape(3, -1)
    for start in range(0, origin.shape[1], CHUNK):
        part = slice(start, start + CHUNK)
        chains = mirror_chains(
            surfaces, origin[:, part], direction[:, part], mirrors, cutoff, random
        )
        for stage, arrival in enumerate(chains):
            step()
            if stage == 0:
                lands = (arrival.plane == surfaces.prism.bottom).astype(np.float64)
                straight += totals(source[part], lands, count)
            target = surfaces.texel_patch[arrival.texel]
            first = source[part]
            low = first[0]
            index = (first[arrival.ray] - low) * count + target
            span = (first[-1] - low + 1) * count
            added = totals(index, arrival.weight, span)
            factors[low * count : low * count + span] += added
    matrix = factors.reshape(count, count)
    kept = 1.0 - mirrors.specular[surfaces.patch_facet]
    flux, area = _reciprocal(matrix / rays, surfaces.patch_area)
    rows, columns = _balancing(flux, kept, area)
    return Exchange(flux * (rows / area)[:, None] * columns, straight / rays)


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

    Patches without area (outside a slanting footprint) get a tiny one, so that their rows
    stay harmless.
    """
    floor = np.maximum(area, 1e-9 * float(area.max()))
    flux = matrix * floor[:, None]
    return 0.5 * (flux + flux.T), floor


def _turned(
    surfaces: Surfaces, local: tuple[FloatArray, FloatArray, FloatArray], plane: IntArray
) -> FloatArray:
    """Directions about +z turned to leave each patch inward, (3, P, R)."""
    prism = surfaces.prism
    inward = -prism.plane_normals()[:, plane]
    is_flat = np.abs(inward[2]) > 0.5
    # Tangent: horizontal along a wall, the x axis on ceiling and bottom.
    tangent = np.where(is_flat, [[1.0], [0.0], [0.0]], [-inward[1], inward[0], 0 * inward[2]])
    bitangent = np.cross(inward.T, tangent.T).T
    turned: FloatArray = (
        local[0] * tangent[:, :, None]
        + local[1] * bitangent[:, :, None]
        + local[2] * inward[:, :, None]
    )
    return turned


@dataclass(frozen=True)
class Gather:
    """Which texels each cell of the map sees, kept as a list of (cell, texel, weight).

    Rays are told apart in two halves, each evenly spread, whose disagreement tells how far
    chance moves the result; ``cell`` holds twice the cell's number plus the half. The mean
    over a cell of the flux density that arrives from diffuse light leaving the texels with
    exitance M (µmol m⁻² s⁻¹) is Σ weight · M[texel]. ``straight`` marks what was seen
    without a mirror between.
    """

    grid: CellGrid
    cell: npt.NDArray[np.int32]
    texel: npt.NDArray[np.int32]
    weight: npt.NDArray[np.float32]
    straight: npt.NDArray[np.bool_]

    def apply(
        self, exitance: FloatArray, spots: FloatArray | None = None
    ) -> tuple[FloatArray, FloatArray]:
        """Flux density on the cells of ``grid`` from texel exitance (T,), and its spread.

        Both of shape (C,). The spread is the difference of the halves: as large as the
        standard error would be if the rays were independent, and somewhat larger than the
        true one, since all rays together are more evenly spread than each half.
        ``spots`` (T,) is the part of the exitance that is added otherwise where it is seen
        straight, without a mirror between.
        """
        seen = exitance.astype(np.float32).take(self.texel)
        if spots is not None:
            seen -= self.straight * spots.astype(np.float32).take(self.texel)
        halves = totals(self.cell, self.weight * seen, 2 * len(self.grid.inside)).reshape(-1, 2)
        return halves.sum(axis=1), np.abs(halves[:, 0] - halves[:, 1])


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
    u = shifted_points(cells, rays, 4, random)
    origin = grid.samples(surfaces.prism, u[0], u[1]).reshape(3, -1)
    direction = np.stack(cosine_directions(u[2], u[3])).reshape(3, -1)
    source = np.repeat(np.arange(cells), rays)
    # Neighbouring rays of the lattice go to different halves.
    source = (2 * source + np.tile(np.arange(rays) % 2, cells)).astype(np.int32)
    parts: list[_Part] = []
    entries = 0
    for start in range(0, origin.shape[1], CHUNK):
        part = slice(start, start + CHUNK)
        chains = mirror_chains(
            surfaces, origin[:, part], direction[:, part], mirrors, cutoff, random
        )
        for stage, arrival in enumerate(chains):
            step()
            # Millions of entries for a fine map: kept in half the space.
            parts.append(
                (
                    source[part].take(arrival.ray).astype(np.int32, copy=False),
                    arrival.texel.astype(np.int32),
                    (arrival.weight / rays).astype(np.float32),
                    np.full(len(arrival.ray), stage == 0),
                )
            )
            entries += len(arrival.ray)
            if entries > _MOST_ENTRIES:
                parts, entries = _merged(parts, surfaces.texel_count)
    cell, texel, weight, straight = (np.concatenate(a) for a in zip(*parts, strict=True))
    return Gather(grid, cell, texel, weight, straight)


_MOST_ENTRIES = 6_000_000


def _merged(parts: list[_Part], texels: int) -> tuple[list[_Part], int]:
    """Entries alike added up; near-perfect mirrors make very many."""
    cell, texel, weight, straight = (np.concatenate(a) for a in zip(*parts, strict=True))
    kind = (cell.astype(np.int64) * texels + texel) * 2 + straight
    kind, where = np.unique(kind, return_inverse=True)
    summed = totals(where, weight, len(kind)).astype(np.float32)
    pair, straight = np.divmod(kind, 2)
    cell, texel = (part.astype(np.int32) for part in np.divmod(pair, texels))
    # At least half as many again are allowed before the next merging.
    return [(cell, texel, summed, straight.astype(bool))], min(len(kind), _MOST_ENTRIES // 2)
