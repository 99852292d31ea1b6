"""An independent reference: photons walked one collision at a time, nothing clever.

Shares no code with the program. Footprint edges are tested one by one as segments, every
reflection is decided by chance (absorbed, diffuse or specular), and the map is a count.
Slow and noisy, and therefore easy to trust; its standard error comes with it.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np


@dataclass(frozen=True)
class Room:
    """Corners counter-clockwise; ``wall_rho(k, z)`` gives (ρ_d, ρ_s) arrays of wall k.

    ``width`` (walls, ceiling, floor) is that of their mirror lobes, 0 for flat mirrors.
    """

    corners: np.ndarray
    z_floor: float
    z_ceiling: float
    wall_rho: Callable[[int, np.ndarray], tuple[np.ndarray, np.ndarray]]
    ceiling_rho: tuple[float, float]
    floor_rho: tuple[float, float]
    z_map: float
    width: tuple[float, ...] = ()


Scatter = Callable[[np.ndarray, np.ndarray, float, np.random.Generator], np.ndarray]
"""Directions (3, n) after a wrinkled mirror from those before, the normal (3,) and the width;
0 where the light is lost."""


def walk(
    room: Room,
    start: np.ndarray,
    direction: np.ndarray,
    cells: tuple[int, int],
    seed: int,
    most_steps: int = 2000,
    scatter: Scatter | None = None,
) -> np.ndarray:
    """Downward crossings (or landings) on the map plane per cell, counts (ny, nx)."""
    random = np.random.default_rng(seed)
    position, heading = start.copy(), direction.copy()
    last = np.full(position.shape[1], -1)
    corners = room.corners
    ends = np.roll(corners, -1, axis=0)
    low, high = corners.min(axis=0), corners.max(axis=0)
    counts = np.zeros((cells[1], cells[0]))
    for _ in range(most_steps):
        if position.shape[1] == 0:
            return counts
        best = np.full(position.shape[1], np.inf)
        hit = np.full(position.shape[1], -1)
        for k, (a, b) in enumerate(zip(corners, ends, strict=True)):
            ex, ey = b - a
            det = heading[0] * ey - heading[1] * ex
            wx, wy = a[0] - position[0], a[1] - position[1]
            with np.errstate(all="ignore"):
                t = (wx * ey - wy * ex) / det
                s = (wx * heading[1] - wy * heading[0]) / det
            good = (s >= 0) & (s <= 1) & (t > 1e-9) & (last != k) & (t < best)
            best, hit = np.where(good, t, best), np.where(good, k, hit)
        n = len(corners)
        with np.errstate(all="ignore"):
            up = np.where(heading[2] > 0, (room.z_ceiling - position[2]) / heading[2], np.inf)
            down = np.where(heading[2] < 0, (room.z_floor - position[2]) / heading[2], np.inf)
        up = np.where(last == n, np.inf, up)
        down = np.where(last == n + 1, np.inf, down)
        hit = np.where(up < best, n, hit)
        best = np.minimum(best, up)
        hit = np.where(down < best, n + 1, hit)
        best = np.minimum(best, down)
        assert np.isfinite(best).all()
        end = position + best * heading
        # Count passages of the map plane from above (a landing counts when it is the floor).
        crosses = (position[2] > room.z_map) & (end[2] <= room.z_map + 1e-12)
        share = (position[2] - room.z_map) / np.where(crosses, position[2] - end[2], 1.0)
        cross = position + share * best * heading
        ix = ((cross[0] - low[0]) / (high[0] - low[0]) * cells[0]).astype(int)
        iy = ((cross[1] - low[1]) / (high[1] - low[1]) * cells[1]).astype(int)
        ix, iy = np.clip(ix, 0, cells[0] - 1), np.clip(iy, 0, cells[1] - 1)
        np.add.at(counts, (iy[crosses], ix[crosses]), 1)
        rho_d, rho_s = np.zeros(best.size), np.zeros(best.size)
        normal = np.zeros((3, best.size))
        for k, (a, b) in enumerate(zip(corners, ends, strict=True)):
            here = hit == k
            rho_d[here], rho_s[here] = room.wall_rho(k, end[2, here])
            ex, ey = (b - a) / np.hypot(*(b - a))
            normal[0, here], normal[1, here] = -ey, ex
        for k, rho, nz in ((n, room.ceiling_rho, -1.0), (n + 1, room.floor_rho, 1.0)):
            here = hit == k
            rho_d[here], rho_s[here] = rho
            normal[2, here] = nz
        fate = random.random(best.size)
        diffuse, mirror = fate < rho_d, (fate >= rho_d) & (fate < rho_d + rho_s)
        # Diffuse: a uniform point on the unit sphere touching the surface gives cosine law.
        sphere = random.normal(size=(3, best.size))
        sphere /= np.linalg.norm(sphere, axis=0)
        scattered = normal + sphere
        scattered /= np.maximum(np.linalg.norm(scattered, axis=0), 1e-12)
        mirrored = heading - 2 * (heading * normal).sum(axis=0) * normal
        for k, width in enumerate(room.width):
            here = np.flatnonzero(mirror & (hit == k))
            if width > 0 and here.size:
                bend = scatter or microsurface
                mirrored[:, here] = bend(heading[:, here], normal[:, here[0]], width, random)
                mirror[here] = mirrored[:, here].any(axis=0)
        heading = np.where(diffuse, scattered, mirrored)
        alive = diffuse | mirror
        position, heading, last = end[:, alive], heading[:, alive], hit[alive]
    raise AssertionError("photons are still walking: the room absorbs too little")


def microsurface(
    heading: np.ndarray, normal: np.ndarray, width: float, random: np.random.Generator
) -> np.ndarray:
    """Directions (3, n) after a Smith microsurface of GGX facets that reflect all light.

    Heitz, Hanika, d'Eon and Dachsbacher (2016), ACM Trans. Graph. 35(4) 58: a random walk
    among facets at heights spread evenly over (-1, 1). Facets are drawn by their number and
    kept by how much of each the ray sees.
    """
    side = np.array([1.0, 0.0, 0.0]) if abs(normal[0]) < 0.9 else np.array([0.0, 1.0, 0.0])
    first = np.cross(normal, side)
    first /= np.linalg.norm(first)
    frame = np.stack([first, np.cross(normal, first), normal])
    going = frame @ heading
    result = np.zeros_like(going)
    height = np.ones(going.shape[1])
    index = np.arange(height.size)
    while index.size:
        z = going[2]
        with np.errstate(divide="ignore", over="ignore"):
            slope = np.sqrt(1 - np.minimum(z * z, 1)) / z
            shade = (-1 + np.sign(z) * np.sqrt(1 + width**2 * slope**2)) / 2
            lower = (height + 1) / 2
            # The share of rays that meet nothing up to a height is (C(h) / C(h'))^Λ.
            reached = lower * random.random(index.size) ** (-1 / shade)
        gone = (z > 0) & (reached >= 1)
        result[:, index[gone]] = going[:, gone]
        index, going, reached = index[~gone], going[:, ~gone], reached[~gone]
        height = 2 * reached - 1
        facet = _facets(-going, width, random)
        going = going - 2 * (going * facet).sum(axis=0) * facet
    turned: np.ndarray = frame.T @ result
    return turned


def _facets(view: np.ndarray, width: float, random: np.random.Generator) -> np.ndarray:
    """Facets with density D(m) (view · m)⁺, by drawing and rejecting."""
    cosine = np.linspace(0, 1, 200_001)
    density = 1 / (1 - cosine**2 * (1 - width**2)) ** 2
    summed = np.concatenate([[0], np.cumsum((density[1:] + density[:-1]) / 2)])
    result = np.zeros_like(view)
    left = np.arange(view.shape[1])
    while left.size:
        c = np.interp(random.random(left.size) * summed[-1], summed, cosine)
        turn = 2 * np.pi * random.random(left.size)
        s = np.sqrt(1 - c * c)
        facet = np.stack([s * np.cos(turn), s * np.sin(turn), c])
        kept = random.random(left.size) < (facet * view[:, left]).sum(axis=0)
        result[:, left[kept]] = facet[:, kept]
        left = left[~kept]
    return result


def cosine_panel(
    centre: tuple[float, float, float],
    size: tuple[float, float],
    exponent: float,
    count: int,
    seed: int,
) -> tuple[np.ndarray, np.ndarray]:
    """Photons from a panel that faces down with I ∝ cos^m."""
    random = np.random.default_rng(seed)
    u = random.random((4, count))
    start = np.stack(
        [
            centre[0] + (u[0] - 0.5) * size[0],
            centre[1] + (u[1] - 0.5) * size[1],
            np.full(count, centre[2]),
        ]
    )
    cosine = u[2] ** (1 / (exponent + 1))
    sine, angle = np.sqrt(1 - cosine**2), 2 * np.pi * u[3]
    return start, np.stack([sine * np.cos(angle), sine * np.sin(angle), -cosine])
