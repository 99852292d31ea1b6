"""Photons walked through triangles that Intel Embree traces: an independent reference.

Shares with the program only the description of the scene. Every photon carries one count;
at each hit chance decides whether it is absorbed, leaves by Lambert's law or as from a
mirror, so that the map is a count with the standard error √n. Embree finds the triangle
in single precision; the point on it is then computed in double precision.

Wrinkled mirrors: Walter, Marschner, Li and Torrance (2007), Microfacet Models for
Refraction through Rough Surfaces, EGSR, equations 33 (GGX), 34 (its Smith masking) and 20
(the reflection), every facet a perfect mirror. Facets are drawn among the visible ones
(Heitz, 2018, JCGT 7(4)) by the spherical-cap construction of Dupuy and Benyoub (2023,
Computer Graphics Forum 42(8)); what the outgoing masking takes away is lost.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Any

import numpy as np
import numpy.typing as npt

from tests.reference.spaces import Luminaire, Material, Planes, Scene

FloatArray = npt.NDArray[np.float64]

SCALE = 100.0
"""Units per metre handed to Embree."""

OFF = 2e-5
"""Metres by which a new ray starts off its surface, so that it does not meet it again."""

OVERLAP = 1e-3
"""Metres by which outer surfaces reach beyond the edges they share: nothing slips through."""

BATCH = 1 << 17


@dataclass(frozen=True)
class Mesh:
    """Triangles (T, 3, 3) with ρ_d, ρ_s and lobe width of each (T,)."""

    triangles: FloatArray
    diffuse: FloatArray
    specular: FloatArray
    width: FloatArray


@dataclass(frozen=True)
class Walked:
    """Flux density (ny, nx) in the lamps' unit, and its standard error; NaN where no cell is.

    ``mean`` and ``mean_error`` are area means; ``lost`` counts photons that left the mesh.
    """

    density: FloatArray
    error: FloatArray
    mean: float
    mean_error: float
    lost: int
    photons: int


def mesh_of(scene: Scene) -> Mesh:
    """Triangles of all opaque surfaces; lamps without a housing are not there."""
    quads: list[FloatArray] = []
    materials: list[Material] = []
    corners = np.array(scene.corners)
    z0, bottom = scene.bottom
    following = np.roll(corners, -1, axis=0)
    bulges = _convex(corners)
    for k, (a, b) in enumerate(zip(corners, following, strict=True)):
        along = (b - a) / np.hypot(*(b - a)) * OVERLAP
        # Beyond a corner that points inward the wall would stand in the room.
        start = a - along if bulges[k] else a
        end = b + along if bulges[(k + 1) % len(corners)] else b
        low = z0 - OVERLAP
        stripes = scene.stripes(k)
        for number, (top, material) in enumerate(stripes):
            high = scene.height + OVERLAP if number == len(stripes) - 1 else top
            if high <= low:
                continue
            quads.append(_upright(start, end, low, high))
            materials.append(material)
            low = high
    for z, material in ((scene.height, scene.ceiling), (z0, bottom)):
        low_xy, high_xy = corners.min(axis=0) - OVERLAP, corners.max(axis=0) + OVERLAP
        quads.append(_flat(low_xy, high_xy, z))
        materials.append(material)
    for block in scene.blocks:
        faces = _block(block.at, block.size, block.turned_deg, max(z0, block.at[2]))
        quads += faces
        materials += [block.material] * len(faces)
        if block.leaves is not None:
            materials[-1] = Material(block.leaves)  # the lid above is the last face
    for lamp in scene.lamps:
        if lamp.housing > 0:
            for centre in _bar_centres(lamp):
                size = (lamp.length, lamp.width, lamp.housing)
                faces = _block(centre, size, lamp.turned_deg, lamp.at[2])
                quads += [np.array(lamp.at) + (face - lamp.at) @ _hinge(lamp).T for face in faces]
                materials += [Material(lamp.housing_rho)] * len(faces)
    corner = np.array(quads)
    triangles = np.stack([corner[:, [0, 1, 2]], corner[:, [0, 2, 3]]], axis=1).reshape(-1, 3, 3)
    two = [material for material in materials for _ in range(2)]
    return Mesh(
        triangles,
        np.array([material.diffuse for material in two]),
        np.array([material.specular for material in two]),
        np.array([material.width for material in two]),
    )


def _convex(corners: FloatArray) -> npt.NDArray[np.bool_]:
    before = corners - np.roll(corners, 1, axis=0)
    after = np.roll(corners, -1, axis=0) - corners
    turns: npt.NDArray[np.bool_] = before[:, 0] * after[:, 1] - before[:, 1] * after[:, 0] > 0
    return turns


def _upright(a: FloatArray, b: FloatArray, low: float, high: float) -> FloatArray:
    return np.array([[*a, low], [*b, low], [*b, high], [*a, high]])


def _flat(low: FloatArray, high: FloatArray, z: float) -> FloatArray:
    return np.array([[*low, z], [high[0], low[1], z], [*high, z], [low[0], high[1], z]])


def _block(
    at: tuple[float, float, float],
    size: tuple[float, float, float],
    turned_deg: float,
    low: float,
) -> list[FloatArray]:
    cos, sin = math.cos(math.radians(turned_deg)), math.sin(math.radians(turned_deg))
    a, b, high = size[0] / 2, size[1] / 2, at[2] + size[2]
    ring = np.array(
        [
            (at[0] + u * cos - v * sin, at[1] + u * sin + v * cos)
            for u, v in ((-a, -b), (a, -b), (a, b), (-a, b))
        ]
    )
    sides = [_upright(ring[k], ring[(k + 1) % 4], low, high) for k in range(4)]
    lids = [np.column_stack([ring, np.full(4, z)]) for z in (low, high)]
    return sides + lids


def _hinge(lamp: Luminaire) -> FloatArray:
    """Rotation by its tilt about the lamp's length (Rodrigues' formula), (3, 3)."""
    turned, tilted = math.radians(lamp.turned_deg), math.radians(lamp.tilted_deg)
    x, y = math.cos(turned), math.sin(turned)
    cross = np.array([[0.0, 0.0, y], [0.0, 0.0, -x], [-y, x, 0.0]])
    return np.asarray(np.eye(3) + math.sin(tilted) * cross + (1 - math.cos(tilted)) * cross @ cross)


def _bar_centres(lamp: Luminaire) -> list[tuple[float, float, float]]:
    cos, sin = math.cos(math.radians(lamp.turned_deg)), math.sin(math.radians(lamp.turned_deg))
    x, y, z = lamp.at
    return [(x - v * sin, y + v * cos, z) for v in lamp.offsets()]


def emitted(
    lamp: Luminaire, count: int, random: np.random.Generator
) -> tuple[FloatArray, FloatArray]:
    """Starts and directions of photons, both (count, 3)."""
    bar = np.array(lamp.offsets())[random.integers(lamp.bars, size=count)]
    u = (random.random(count) - 0.5) * lamp.length
    v = (random.random(count) - 0.5) * lamp.width + bar
    if lamp.planes is None:
        down = random.random(count) ** (1 / (lamp.exponent + 1))
        azimuth = 2 * math.pi * random.random(count)
    else:
        down, azimuth = _drawn_from_planes(lamp.planes, count, random)
    turned = math.radians(lamp.turned_deg)
    cos, sin = math.cos(turned), math.sin(turned)
    # A hair below the face, so that a housing is not met from inside.
    z = np.full(count, lamp.at[2] - OFF)
    start = np.column_stack([lamp.at[0] + u * cos - v * sin, lamp.at[1] + u * sin + v * cos, z])
    sine = np.sqrt(1 - down**2)
    angle = azimuth + turned
    direction = np.column_stack([sine * np.cos(angle), sine * np.sin(angle), -down])
    if not lamp.tilted_deg:
        return start, direction
    hinge = _hinge(lamp)
    return np.array(lamp.at) + (start - lamp.at) @ hinge.T, direction @ hinge.T


def _drawn_from_planes(
    planes: Planes, count: int, random: np.random.Generator
) -> tuple[FloatArray, FloatArray]:
    """By rejection: directions even over the lower half, kept as often as they are bright."""
    azimuths = np.radians([*planes.azimuths, planes.azimuths[0] + 360])
    table = np.array([*planes.value, planes.value[0]])
    angles = np.radians(planes.angles)
    brightest = table.max()
    downs: list[FloatArray] = []
    turns: list[FloatArray] = []
    while sum(map(len, downs)) < count:
        down, azimuth = random.random(count), 2 * math.pi * random.random(count)
        polar = np.arccos(down)
        by_plane = np.stack([np.interp(polar, angles, row) for row in table])
        value = np.zeros(count)
        for k in range(len(planes.azimuths)):
            share = (azimuth - azimuths[k]) / (azimuths[k + 1] - azimuths[k])
            here = (share >= 0) & (share < 1)
            value[here] = ((1 - share) * by_plane[k] + share * by_plane[k + 1])[here]
        kept = random.random(count) * brightest < value
        downs.append(down[kept])
        turns.append(azimuth[kept])
    return np.concatenate(downs)[:count], np.concatenate(turns)[:count]


def walk(scene: Scene, photons: int, seed: int = 1) -> Walked:
    """Send ``photons`` from each lamp and count those that come down onto the map plane."""
    mesh = mesh_of(scene)
    tracer = _tracer(mesh)
    low, high = np.array(scene.corners).min(axis=0), np.array(scene.corners).max(axis=0)
    columns, rows = scene.cells
    flux, squares = np.zeros(columns * rows), np.zeros(columns * rows)
    total_variance, lost = 0.0, 0
    for number, lamp in enumerate(scene.lamps):
        counts = np.zeros(columns * rows)
        own_squares = 0.0
        for batch in range(math.ceil(photons / BATCH)):
            size = min(BATCH, photons - batch * BATCH)
            # Lamp and walk draw from streams of their own.
            start, direction = emitted(lamp, size, np.random.default_rng([seed, number, batch, 0]))
            random = np.random.default_rng([seed, number, batch, 1])
            where, times, out = _follow(mesh, tracer, start, direction, scene, random)
            lost += out
            column = np.clip((where[:, 0] - low[0]) / (high - low)[0] * columns, 0, columns - 1)
            row = np.clip((where[:, 1] - low[1]) / (high - low)[1] * rows, 0, rows - 1)
            counts += np.bincount(
                row.astype(int) * columns + column.astype(int), minlength=columns * rows
            )
            own_squares += float((times.astype(float) ** 2).sum())
        each = lamp.ppf / photons
        flux += counts * each
        squares += counts * each**2
        # One photon may land more than once, so the mean varies more than a count would.
        total_variance += each**2 * (own_squares - counts.sum() ** 2 / photons)
    area = _cell_areas(scene).ravel()
    with np.errstate(invalid="ignore", divide="ignore"):
        density, error = flux / area, np.sqrt(squares) / area
    density[area <= 0], error[area <= 0] = np.nan, np.nan
    return Walked(
        density.reshape(rows, columns),
        error.reshape(rows, columns),
        float(flux.sum() / area.sum()),
        math.sqrt(total_variance) / float(area.sum()),
        lost,
        photons * len(scene.lamps),
    )


def _cell_areas(scene: Scene) -> FloatArray:
    """Area of each cell inside the footprint, by a grid of points that no edge falls on."""
    corners = np.array(scene.corners)
    low, span = corners.min(axis=0), np.ptp(corners, axis=0)
    columns, rows = scene.cells
    fine = 64
    x = low[0] + (np.arange(columns * fine) + 0.5) / (columns * fine) * span[0]
    y = low[1] + (np.arange(rows * fine) + 0.5) / (rows * fine) * span[1]
    px, py = np.meshgrid(x, y)
    inside = np.zeros(px.shape, dtype=bool)
    for a, b in zip(corners, np.roll(corners, -1, axis=0), strict=True):
        crosses = (a[1] > py) != (b[1] > py)
        if a[1] != b[1]:
            inside ^= crosses & (px < a[0] + (py - a[1]) / (b[1] - a[1]) * (b[0] - a[0]))
    share = inside.reshape(rows, fine, columns, fine).mean(axis=(1, 3))
    areas: FloatArray = share * span.prod() / (columns * rows)
    return areas


def _tracer(mesh: Mesh) -> Any:
    from embreex import rtcore_scene
    from embreex.mesh_construction import TriangleMesh

    tracer = rtcore_scene.EmbreeScene()
    TriangleMesh(tracer, (mesh.triangles * SCALE).astype(np.float32))
    return tracer


def _follow(
    mesh: Mesh,
    tracer: Any,
    start: FloatArray,
    direction: FloatArray,
    scene: Scene,
    random: np.random.Generator,
) -> tuple[FloatArray, npt.NDArray[np.intp], int]:
    """Walk photons to their end.

    Returns where they came down onto the map plane (n, 2), how often each of them did, and
    how many left the mesh.
    """
    normals = np.cross(
        mesh.triangles[:, 1] - mesh.triangles[:, 0], mesh.triangles[:, 2] - mesh.triangles[:, 0]
    )
    normals /= np.linalg.norm(normals, axis=1)[:, None]
    offset = np.einsum("ij,ij->i", normals, mesh.triangles[:, 0])
    plane = scene.canopy_height if scene.map_height is None else scene.map_height
    any_wrinkled = bool((mesh.width > 0).any())
    who = np.arange(len(start))
    times = np.zeros(len(start), dtype=np.intp)
    landed: list[FloatArray] = []
    lost = 0
    while who.size:
        hits = tracer.run(
            (start * SCALE).astype(np.float32),
            direction.astype(np.float32),
            query="INTERSECT",
            output=True,
        )["primID"]
        found = hits >= 0
        if not found.all():
            lost += int((~found).sum())
            start, direction, hits, who = start[found], direction[found], hits[found], who[found]
        normal = normals[hits]
        approach = np.einsum("ij,ij->i", direction, normal)
        distance = (offset[hits] - np.einsum("ij,ij->i", start, normal)) / approach
        end = start + distance[:, None] * direction
        down = np.flatnonzero((start[:, 2] > plane + 1e-9) & (end[:, 2] <= plane + 1e-6))
        ahead = (plane - start[down, 2]) / direction[down, 2]
        landed.append(start[down, :2] + ahead[:, None] * direction[down, :2])
        times[who[down]] += 1
        fate = random.random(who.size)
        diffuse = fate < mesh.diffuse[hits]
        alive = np.flatnonzero(fate < mesh.diffuse[hits] + mesh.specular[hits])
        facing = np.where(approach > 0, -1.0, 1.0)[alive, None] * normal[alive]
        diffuse, who, hits = diffuse[alive], who[alive], hits[alive]
        before = direction[alive]
        after = before - 2 * np.einsum("ij,ij->i", before, facing)[:, None] * facing
        spread = np.flatnonzero(diffuse)
        after[spread] = _lambert(facing[spread], random)
        start = end[alive] + OFF * facing
        if any_wrinkled:
            rough = np.flatnonzero(~diffuse & (mesh.width[hits] > 0))
            after[rough] = wrinkled(before[rough], facing[rough], mesh.width[hits[rough]], random)
        direction = after
    return np.concatenate(landed), times, lost


def _lambert(normal: FloatArray, random: np.random.Generator) -> FloatArray:
    """Directions by the cosine law: a point on the unit sphere that touches the surface."""
    height, turn = 2 * random.random(len(normal)) - 1, 2 * math.pi * random.random(len(normal))
    radius = np.sqrt(1 - height**2)
    out: FloatArray = normal + np.column_stack(
        [radius * np.cos(turn), radius * np.sin(turn), height]
    )
    length = np.linalg.norm(out, axis=1)
    out /= np.maximum(length, 1e-12)[:, None]
    return out


def wrinkled(
    direction: FloatArray, normal: FloatArray, width: FloatArray, random: np.random.Generator
) -> FloatArray:
    """Directions (n, 3) after a wrinkled mirror: GGX facets in Smith's arrangement.

    Algorithm 1 of Heitz, Hanika, d'Eon and Dachsbacher (2016), heights told by the share of
    the surface that lies lower; facets reflect everything, so that every photon gets away.
    """
    first = np.cross(normal, np.where(np.abs(normal[:, :1]) > 0.7, [[0, 1.0, 0]], [[1.0, 0, 0]]))
    first /= np.linalg.norm(first, axis=1)[:, None]
    second = np.cross(normal, first)
    going = np.column_stack([(direction * axis).sum(axis=1) for axis in (first, second, normal)])
    lower, inside = np.ones(len(width)), np.arange(len(width))
    while inside.size:
        here, alpha = going[inside], width[inside]
        mask = masking(here[:, 2], alpha)
        chance = random.random(inside.size)
        leaves = (here[:, 2] > 0) & (chance > 1 - lower[inside] ** np.maximum(mask, 0))
        inside, here, alpha = inside[~leaves], here[~leaves], alpha[~leaves]
        lower[inside] = np.clip(
            lower[inside] * (1 - chance[~leaves]) ** (-1 / mask[~leaves]), 1e-300, 1
        )
        going[inside] = bounced(here, alpha, random)
    turned: FloatArray = going[:, :1] * first + going[:, 1:2] * second + going[:, 2:] * normal
    return turned


def bounced(going: FloatArray, width: FloatArray, random: np.random.Generator) -> FloatArray:
    """Directions after one facet, drawn among those in sight (Dupuy and Benyoub 2023)."""
    view = -going
    stretched = view * np.column_stack([width, width, np.ones(len(width))])
    stretched /= np.linalg.norm(stretched, axis=1)[:, None]
    turn = 2 * math.pi * random.random(len(width))
    height = 1 - random.random(len(width)) * (1 + stretched[:, 2])
    radius = np.sqrt(np.clip(1 - height**2, 0, 1))
    cap = np.column_stack([radius * np.cos(turn), radius * np.sin(turn), height])
    facet = (cap + stretched) * np.column_stack([width, width, np.ones(len(width))])
    facet /= np.maximum(np.linalg.norm(facet, axis=1), 1e-300)[:, None]
    out: FloatArray = 2 * (view * facet).sum(axis=1)[:, None] * facet - view
    return out


def masking(cosine: FloatArray, width: FloatArray) -> FloatArray:
    """Smith's Λ of the GGX distribution, Walter et al. (2007); below the horizon it is negative."""
    tangent_squared = 1 / np.maximum(cosine**2, 1e-18) - 1
    root = np.sqrt(1 + width**2 * np.maximum(tangent_squared, 0))
    return np.asarray((-1 + np.where(cosine > 0, root, -root)) / 2)
