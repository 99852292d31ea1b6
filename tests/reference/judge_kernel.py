"""The compiled inner part of the judge: one photon at a time, one collision at a time.

Wrinkled mirrors are the Smith microsurface walked facet by facet: Heitz, Hanika, d'Eon and
Dachsbacher (2016), Multiple-scattering microfacet BSDFs with the Smith model, ACM
Transactions on Graphics 35(4). GGX facets that reflect all light; heights are kept as the
share of the surface that lies below, so that no distribution of heights need be chosen.
Visible facets by the spherical caps of Dupuy and Benyoub (2023), Computer Graphics Forum
42(8), which hold for views from below the horizon as well.
"""

# mypy: disable-error-code="untyped-decorator"
from __future__ import annotations

import math
from typing import Any

import numba
import numpy as np

Array = Any

compiled = numba.njit(cache=True, nogil=True, error_model="numpy")


@compiled
def uniform(state: Array) -> float:
    """A number in [0, 1): the generator PCG RXS M XS 64 (O'Neill, 2014)."""
    state[0] = state[0] * np.uint64(6364136223846793005) + np.uint64(1442695040888963407)
    old = state[0]
    word = ((old >> ((old >> np.uint64(59)) + np.uint64(5))) ^ old) * np.uint64(
        12605985483714917081
    )
    word = (word >> np.uint64(43)) ^ word
    return float(word >> np.uint64(11)) * (1.0 / 9007199254740992.0)


@compiled
def lambert(state: Array) -> tuple[float, float, float]:
    """A direction by the cosine law about z: a point evenly in the disc, lifted."""
    while True:
        x, y = 2 * uniform(state) - 1, 2 * uniform(state) - 1
        square = x * x + y * y
        if square < 1.0:
            return x, y, math.sqrt(1.0 - square)


@compiled
def smith(z: float, width: float) -> float:
    """Λ of a direction whose cosine to the surface's normal is z; below -1 for one that sinks."""
    if z == 0.0:
        return 1e30
    tangent = math.sqrt(max(1.0 - z * z, 0.0)) / z
    root = math.sqrt(1.0 + (width * tangent) ** 2)
    return (root - 1.0) / 2 if z > 0 else (-root - 1.0) / 2


@compiled
def wrinkled(
    x: float, y: float, z: float, width: float, state: Array
) -> tuple[float, float, float, int]:
    """The way out of a microsurface for a ray that comes down (z < 0), and its bounces."""
    below = 1.0
    bounces = 0
    while True:
        # How far the ray gets before it meets a facet; beyond the highest it is free.
        step = smith(z, width)
        if step != 0.0:
            below *= (1.0 - uniform(state)) ** (-1.0 / step)
        elif z > 0:
            below = 2.0
        if z > 0 and below > 1.0:
            return x, y, z, bounces
        below = min(below, 1.0)
        # A facet seen from where the ray comes.
        vx, vy, vz = -x, -y, -z
        sx, sy = width * vx, width * vy
        length = math.sqrt(sx * sx + sy * sy + vz * vz)
        sx, sy, sz = sx / length, sy / length, vz / length
        turn = 2 * math.pi * uniform(state)
        high = (1.0 - uniform(state)) * (1.0 + sz) - sz
        radius = math.sqrt(max(1.0 - high * high, 0.0))
        mx = width * (radius * math.cos(turn) + sx)
        my = width * (radius * math.sin(turn) + sy)
        mz = max(high + sz, 0.0)
        length = math.sqrt(mx * mx + my * my + mz * mz)
        if length == 0.0:
            mx, my, mz, length = 0.0, 0.0, 1.0, 1.0
        mx, my, mz = mx / length, my / length, mz / length
        along = 2 * (vx * mx + vy * my + vz * mz)
        x, y, z = along * mx - vx, along * my - vy, along * mz - vz
        length = math.sqrt(x * x + y * y + z * z)
        x, y, z = x / length, y / length, z / length
        bounces += 1


@compiled
def emitted(
    lamp: Array, strips: Array, ladder: Array, u: Array
) -> tuple[float, float, float, float, float, float]:
    """Start (x, y, z) and direction of a photon from five numbers in [0, 1).

    ``lamp``: x, y, z, turn, exponent (negative: take the ladder), azimuth sectors, cosine and sine
    of its tilt.
    ``ladder``: cumulative flux of the cells of a table, sectors within polar steps.
    """
    k = min(int(u[4] * len(strips)), len(strips) - 1)
    a = strips[k, 0] + (u[0] - 0.5) * strips[k, 2]
    b = strips[k, 1] + (u[1] - 0.5) * strips[k, 3]
    cos, sin = math.cos(lamp[3]), math.sin(lamp[3])
    flat = b * lamp[6]
    x, y = lamp[0] + a * cos - flat * sin, lamp[1] + a * sin + flat * cos
    z = lamp[2] - 1e-6 + b * lamp[7]
    if lamp[4] >= 0:
        cosine = (1.0 - u[2]) ** (1.0 / (lamp[4] + 1.0))
        azimuth = 2 * math.pi * u[3]
    else:
        sectors = int(lamp[5])
        steps = (len(ladder) - 1) // sectors
        cell = min(np.searchsorted(ladder, u[2], side="right") - 1, len(ladder) - 2)
        share = (u[2] - ladder[cell]) / (ladder[cell + 1] - ladder[cell])
        upper = math.cos(math.pi * (cell // sectors) / steps)
        lower = math.cos(math.pi * (cell // sectors + 1) / steps)
        cosine = upper + share * (lower - upper)
        azimuth = 2 * math.pi * (cell % sectors + u[3]) / sectors
    sine = math.sqrt(max(1.0 - cosine * cosine, 0.0))
    if lamp[7] == 0.0:
        azimuth += lamp[3]
        return x, y, z, sine * math.cos(azimuth), sine * math.sin(azimuth), -cosine
    # On the hinge: what goes down goes aside by the sine of the tilt.
    along, across = sine * math.cos(azimuth), sine * math.sin(azimuth)
    aside, up = across * lamp[6] + cosine * lamp[7], across * lamp[7] - cosine * lamp[6]
    # The start a hair before the face.
    x, y, z = x - 1e-6 * lamp[7] * sin, y + 1e-6 * lamp[7] * cos, z + 1e-6 * (1 - lamp[6])
    return x, y, z, along * cos - aside * sin, along * sin + aside * cos, up


@compiled
def met_box(
    boxes: Array,
    b: int,
    px: float,
    py: float,
    pz: float,
    dx: float,
    dy: float,
    dz: float,
    most: float,
) -> tuple[float, int]:
    """Distance to box b and the face met.

    A box: centre x, y, cos, sin, half sizes, z low, z high, and, where it leans, cos and sin of its
    tilt about the line through x, y along its x at the height that comes last, from which its
    middle is so far aside as comes before.
    Faces: 0 and 1 the sides along the box's x, 2 and 3 along its y, 4 under, 5 upper; -1 none.
    """
    low, high = boxes[b, 6], boxes[b, 7]
    leans = boxes[b, 9] != 0.0
    if not leans and ((pz <= low and dz <= 0) or (pz >= high and dz >= 0)):
        return most, -1
    rx, ry, cos, sin = px - boxes[b, 0], py - boxes[b, 1], boxes[b, 2], boxes[b, 3]
    qx, qy = rx * cos + ry * sin, ry * cos - rx * sin
    ex, ey = dx * cos + dy * sin, dy * cos - dx * sin
    if leans:
        lean, up, rz = boxes[b, 8], boxes[b, 9], pz - boxes[b, 11]
        qy, pz = qy * lean + rz * up - boxes[b, 10], rz * lean - qy * up + boxes[b, 11]
        ey, dz = ey * lean + dz * up, dz * lean - ey * up
    near, far, face = -1.0, most, -1
    for axis in range(3):
        if axis == 0:
            q, e, low, high = qx, ex, -boxes[b, 4], boxes[b, 4]
        elif axis == 1:
            q, e, low, high = qy, ey, -boxes[b, 5], boxes[b, 5]
        else:
            q, e, low, high = pz, dz, boxes[b, 6], boxes[b, 7]
        if e == 0.0:
            if q <= low or q >= high:
                return most, -1
            continue
        if e > 0:
            enter, leave, side = (low - q) / e, (high - q) / e, 2 * axis
        else:
            enter, leave, side = (high - q) / e, (low - q) / e, 2 * axis + 1
        if enter > near:
            near, face = enter, side
        far = min(far, leave)
    if near < 0.0 or near >= far:
        return most, -1
    return near, face


@compiled
def nearest(
    px: float,
    py: float,
    pz: float,
    dx: float,
    dy: float,
    dz: float,
    last: int,
    walls: Array,
    level: Array,
    boxes: Array,
) -> tuple[float, int, int]:
    """Distance, surface (walls, ceiling, bottom, boxes; -1 none) and face of a box."""
    best, hit, face = 1e30, -1, -1
    walls_in_all = len(walls)
    if dz > 0 and last != walls_in_all:
        best, hit = (level[1] - pz) / dz, walls_in_all
    elif dz < 0 and last != walls_in_all + 1:
        best, hit = (level[0] - pz) / dz, walls_in_all + 1
    for k in range(walls_in_all):
        # Along the inward normal (-ty, tx) the ray must lose.
        tx, ty = walls[k, 2], walls[k, 3]
        approach = dy * tx - dx * ty
        if approach >= 0.0 or k == last:
            continue
        wx, wy = px - walls[k, 0], py - walls[k, 1]
        t = -(wy * tx - wx * ty) / approach
        if -1e-12 < t < best:
            along = (wx + t * dx) * tx + (wy + t * dy) * ty
            if 0.0 <= along <= walls[k, 4]:
                best, hit = t, k
    for b in range(len(boxes)):
        if last != walls_in_all + 2 + b:
            t, side = met_box(boxes, b, px, py, pz, dx, dy, dz, best)
            if side >= 0:
                best, hit, face = t, walls_in_all + 2 + b, side
    return best, hit, face


@compiled
def normal_of(hit: int, face: int, walls: Array, boxes: Array) -> tuple[float, float, float]:
    """The normal on the lit side of a surface."""
    beyond = hit - len(walls)
    if beyond < 0:
        return -walls[hit, 3], walls[hit, 2], 0.0
    if beyond < 2:
        return 0.0, 0.0, -1.0 if beyond == 0 else 1.0
    sign = 1.0 if face % 2 else -1.0
    cos, sin = boxes[beyond - 2, 2], boxes[beyond - 2, 3]
    lean, up = boxes[beyond - 2, 8], boxes[beyond - 2, 9]
    if face >= 4:
        if up == 0.0:
            return 0.0, 0.0, sign
        return sign * up * sin, -sign * up * cos, sign * lean
    if face < 2:
        return sign * cos, sign * sin, 0.0
    if up == 0.0:
        return -sign * sin, sign * cos, 0.0
    return -sign * lean * sin, sign * lean * cos, sign * up


@compiled
def material_of(
    hit: int,
    z: float,
    first_band: Array,
    band_tops: Array,
    band_materials: Array,
    other_materials: Array,
) -> int:
    """Index of the material at a height of a surface."""
    walls_in_all = len(first_band) - 1
    if hit >= walls_in_all:
        return int(other_materials[hit - walls_in_all])
    band = first_band[hit]
    while z > band_tops[band] and band < first_band[hit + 1] - 1:
        band += 1
    return int(band_materials[band])


@compiled
def turned(
    dx: float,
    dy: float,
    dz: float,
    nx: float,
    ny: float,
    nz: float,
    width: float,
    state: Array,
) -> tuple[float, float, float]:
    """Direction after a surface: diffuse where ``width`` is negative, else mirrored."""
    if width == 0.0:
        along = 2 * (dx * nx + dy * ny + dz * nz)
        return dx - along * nx, dy - along * ny, dz - along * nz
    if nz == 0.0:
        ax, ay, az, bx, by, bz = -ny, nx, 0.0, 0.0, 0.0, 1.0
    elif abs(nz) == 1.0:
        ax, ay, az, bx, by, bz = 1.0, 0.0, 0.0, 0.0, 1.0, 0.0
    else:
        level = math.sqrt(nx * nx + ny * ny)
        ax, ay, az = -ny / level, nx / level, 0.0
        bx, by, bz = -nz * ay, nz * ax, nx * ay - ny * ax
    if width < 0.0:
        a, b, c = lambert(state)
    else:
        a, b, c, _ = wrinkled(
            dx * ax + dy * ay + dz * az,
            dx * bx + dy * by + dz * bz,
            min(dx * nx + dy * ny + dz * nz, -1e-12),
            width,
            state,
        )
    return a * ax + b * bx + c * nx, a * ay + b * by + c * ny, a * az + b * bz + c * nz


@compiled
def counted_at(pz: float, ez: float, t: float, top: int, of_box: int, level: float) -> float:
    """How far on a photon is counted that goes t metres from pz to ez and on to the ``top`` of a
    box (-1 none): where it passes the level downward, or lands on the top asked for; or -1."""
    if of_box >= 0:
        return t if top == of_box else -1.0
    return t * (pz - level) / (pz - ez) if pz > level >= ez else -1.0


AFRESH = 4096
"""Photons after which the even sequence gets another start."""


@compiled
def walk(
    count: int,
    seed: int,
    lamp: Array,
    strips: Array,
    ladder: Array,
    walls: Array,
    first_band: Array,
    band_tops: Array,
    band_materials: Array,
    level: Array,
    boxes: Array,
    other_materials: Array,
    materials: Array,
    grid: Array,
    tops: Array,
    of_box: int,
    counts: Array,
) -> tuple[int, int]:
    """Walk photons of one lamp; add downward passages of the map's plane to ``counts``.

    Where ``of_box`` is not negative, landings on the top of that box instead. ``tops`` are the
    materials of the tops of boxes.

    ``walls``: x, y, unit along x, y, length; the room lies to their left. ``level``: bottom,
    ceiling, plane of the map. ``grid``: x, y, step x, y. ``materials``: ρ_d, ρ_s, width;
    ``other_materials`` those of ceiling, bottom and boxes.
    Returns passages in all and photons that left the room through a seam.
    """
    state = np.zeros(1, dtype=np.uint64)
    state[0] = np.uint64(seed)
    for _ in range(8):
        uniform(state)
    # An even sequence for where and whither photons start, begun anew by chance ever so often:
    # kept up, it beats with cells behind a corner. Everything else is chance.
    step, shift, u = np.empty(5), np.empty(5), np.empty(5)
    root = 1.1347241384015194  # g^6 = g + 1
    for k in range(5):
        step[k] = root ** -(k + 1)
    rows, columns = counts.shape
    passages = lost = 0
    for photon in range(count):
        turn = photon % AFRESH
        for k in range(5):
            if turn == 0:
                shift[k] = uniform(state)
            value = shift[k] + turn * step[k]
            u[k] = value - math.floor(value)
        px, py, pz, dx, dy, dz = emitted(lamp, strips, ladder, u)
        last = -1
        while True:
            t, hit, face = nearest(px, py, pz, dx, dy, dz, last, walls, level, boxes)
            if hit < 0:
                lost += 1
                break
            ez = pz + t * dz
            if hit == len(walls) or hit == len(walls) + 1:
                ez = level[1] if hit == len(walls) else level[0]
            on_top = face == 5 and hit >= len(walls) + 2
            there = counted_at(pz, ez, t, hit - len(walls) - 2 if on_top else -1, of_box, level[2])
            if there >= 0.0:
                column = int((px + there * dx - grid[0]) / grid[2])
                row = int((py + there * dy - grid[1]) / grid[3])
                counts[min(max(row, 0), rows - 1), min(max(column, 0), columns - 1)] += 1
                passages += 1
            if on_top:
                material = int(tops[hit - len(walls) - 2])
            else:
                material = material_of(
                    hit, ez, first_band, band_tops, band_materials, other_materials
                )
            fate = uniform(state)
            diffuse, specular = materials[material, 0], materials[material, 1]
            if fate >= diffuse + specular:
                break
            width = -1.0 if fate < diffuse else materials[material, 2]
            nx, ny, nz = normal_of(hit, face, walls, boxes)
            px, py, pz = px + t * dx, py + t * dy, ez
            dx, dy, dz = turned(dx, dy, dz, nx, ny, nz, width, state)
            length = math.sqrt(dx * dx + dy * dy + dz * dz)
            dx, dy, dz = dx / length, dy / length, dz / length
            last = hit
    return passages, lost


@compiled
def scattered(incoming: Array, width: float, seed: int) -> tuple[Array, Array]:
    """Directions (n, 3) after a wrinkled mirror with normal z, and the bounces of each (n,)."""
    state = np.zeros(1, dtype=np.uint64)
    state[0] = np.uint64(seed)
    out, bounces = np.empty_like(incoming), np.empty(len(incoming), dtype=np.int64)
    for k in range(len(incoming)):
        out[k, 0], out[k, 1], out[k, 2], bounces[k] = wrinkled(
            incoming[k, 0], incoming[k, 1], incoming[k, 2], width, state
        )
    return out, bounces


@compiled
def lambertian(count: int, seed: int) -> Array:
    """Directions (n, 3) by the cosine law about z."""
    state = np.zeros(1, dtype=np.uint64)
    state[0] = np.uint64(seed)
    out = np.empty((count, 3))
    for k in range(count):
        out[k, 0], out[k, 1], out[k, 2] = lambert(state)
    return out
