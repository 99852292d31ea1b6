"""The judge of random rooms: photons walked one by one in compiled code.

Reads a plan by its own rules and shares nothing with the light core. Every photon carries
the same flux; chance decides at each surface whether it is absorbed, leaves by Lambert's law
or is mirrored, so that the map is a count. Independent runs tell the standard error.
The reading of a plan: an open door is no surface; below a closed canopy nothing matters; a
box over each emitting strip is its housing, and leans where its lamp is tilted; obstacles are
boxes; a cell's value is the mean over its part of the canopy, and where an obstacle stands in
the map's plane no canopy is.
"""

from __future__ import annotations

import hashlib
import json
import math
import tempfile
import time
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import numpy as np
import numpy.typing as npt

from planner.plan.lamp import CosineProfile, Lamp, TableProfile
from planner.plan.plan import Plan
from planner.plan.space import sticks_out
from tests.reference import judge_kernel

FloatArray = npt.NDArray[np.float64]
Outline = list[tuple[float, float]]

RUNS = 16
"""Independent runs that tell the standard error."""

UPRIGHT = (1.0, 0.0, 0.0, 0.0)
"""Cosine and sine of a box's tilt, how far aside of its hinge it is, and the hinge's height."""

LEAST_ABOVE_FLOOR = 0.001
"""Metres; an open canopy on the floor is taken this far above it."""


@dataclass(frozen=True)
class Judged:
    """PPFD (ny, nx), its standard error and the canopy's area in each cell (m²).

    ``mean`` is taken over the canopy's area, ``mean_error`` is its standard error; ``lost`` counts
    photons that slipped out of the room.
    """

    ppfd: FloatArray
    error: FloatArray
    area: FloatArray
    mean: float
    mean_error: float
    photons: int
    lost: int
    seconds: float

    @property
    def chance(self) -> float:
        """Root mean square over the canopy of the cells' standard errors, of the mean."""
        lit = self.area > 0
        mean_square = np.average(self.error[lit] ** 2, weights=self.area[lit])
        return math.sqrt(float(mean_square)) / self.mean


def judge(
    plan: Plan, cells: tuple[int, int], photons: int, seed: int = 1, top: int | None = None
) -> Judged:
    """Walk about so many photons through a plan, shared among its lamps by their flux.

    The map is that of the canopy, or of the ``top`` of the obstacle of that number, over its
    bounding rectangle.
    """
    started = time.perf_counter()
    room = _Room(plan, cells, top)
    # numba's stubs tell of no arguments.
    walk: Any = judge_kernel.walk
    flux = sum(lamp.ppf for lamp in plan.lamps)
    runs = np.zeros((RUNS, cells[1], cells[0]))
    lost = walked = 0
    for run in range(RUNS):
        for index, lamp in enumerate(plan.lamps):
            if lamp.ppf == 0:
                continue
            count = max(round(photons / RUNS * lamp.ppf / flux), 1)
            own = np.random.SeedSequence([seed, run, index]).generate_state(1, np.uint64)[0]
            landed = np.zeros((cells[1], cells[0]), dtype=np.int64)
            lost += walk(count, own, *room.lamp(lamp), *room.surfaces, landed)[1]
            runs[run] += lamp.ppf / count * landed
            walked += count
    area = room.area
    with np.errstate(all="ignore"):
        density = np.where(area > 0, runs / area, np.nan)
    totals = runs.sum(axis=(1, 2)) / area.sum()
    return Judged(
        density.mean(axis=0),
        density.std(axis=0, ddof=1) / math.sqrt(RUNS),
        area,
        float(totals.mean()),
        float(totals.std(ddof=1)) / math.sqrt(RUNS),
        walked,
        lost,
        time.perf_counter() - started,
    )


def kept(plan: Plan, cells: tuple[int, int], photons: int, seed: int = 1) -> Judged:
    """As ``judge``, but found again under the user's temporary folder when already done."""
    source = Path(judge_kernel.__file__).read_bytes() + Path(__file__).read_bytes()
    what = f"{plan.model_dump_json()} {cells} {photons} {seed} {hashlib.sha256(source).hexdigest()}"
    folder = Path(tempfile.gettempdir()) / "grow-space-light-planner-judge"
    folder.mkdir(exist_ok=True)
    file = folder / f"{hashlib.sha256(what.encode()).hexdigest()[:24]}.json"
    if file.is_file():
        held: dict[str, Any] = json.loads(file.read_text(encoding="utf-8"))
        for name in ("ppfd", "error", "area"):
            held[name] = np.array(held[name], dtype=np.float64)
        return Judged(**held)
    found = judge(plan, cells, photons, seed)
    held = {k: v.tolist() if isinstance(v, np.ndarray) else v for k, v in vars(found).items()}
    file.write_text(json.dumps(held), encoding="utf-8")
    return found


def closely(plan: Plan, cells: tuple[int, int], photons: int, chance: float, most: int) -> Judged:
    """Mean of independent maps, each ``kept``, so many that little chance is left.

    Maps of so many photons are added until ``Judged.chance`` is at most ``chance``, or there
    are ``most`` of them.
    """
    maps: list[Judged] = []
    while len(maps) < most and (not maps or joined(maps).chance > chance):
        maps.append(kept(plan, cells, photons, len(maps) + 1))
    return joined(maps)


def joined(maps: list[Judged]) -> Judged:
    """The mean of maps of one plan by unlike seeds."""
    count = len(maps)
    return Judged(
        np.mean([each.ppfd for each in maps], axis=0),
        np.sqrt(np.sum([each.error**2 for each in maps], axis=0)) / count,
        maps[0].area,
        float(np.mean([each.mean for each in maps])),
        math.sqrt(sum(each.mean_error**2 for each in maps)) / count,
        sum(each.photons for each in maps),
        sum(each.lost for each in maps),
        sum(each.seconds for each in maps),
    )


class _Room:
    """A plan as the arrays the walk wants."""

    def __init__(self, plan: Plan, cells: tuple[int, int], top: int | None = None) -> None:
        self._plan = plan
        self._materials: list[tuple[float, float, float]] = []
        z_map = plan.canopy.height
        if not plan.canopy.closed:
            z_map = max(z_map, LEAST_ABOVE_FLOOR)
        bottom = z_map if plan.canopy.closed else 0.0
        corners = np.array(plan.space.footprint)
        along = np.roll(corners, -1, axis=0) - corners
        length = np.hypot(along[:, 0], along[:, 1])
        walls = np.column_stack([corners, along / length[:, None], length])
        first, tops, band_materials = [0], [], []
        for index, cover in enumerate(plan.walls):
            shut = not (plan.space.door_open and plan.space.door == index)
            for band in cover.bands:
                tops.append(math.inf if band.top is None else band.top)
                band_materials.append(self._lining(band.lining) if shut else self._matt(0.0))
            first.append(len(tops))
        if plan.canopy.closed:
            under = self._matt(plan.canopy.reflectance)
        else:
            under = self._lining(plan.floor)
        boxes, box_materials, on_tops, which = self._boxes(bottom, top)
        outline = corners if top is None else np.array(plan.obstacles[top].outline())
        low = outline.min(axis=0)
        step = (outline.max(axis=0) - low) / cells
        if top is None:
            self.area = canopy_area(plan, z_map, low, step, cells)
        else:
            self.area = areas(list(plan.obstacles[top].outline()), low, step, cells)
        self.surfaces = (
            walls,
            np.array(first),
            np.array(tops),
            np.array(band_materials),
            np.array([bottom, plan.space.height, z_map]),
            np.array(boxes).reshape(-1, 12),
            np.array([self._lining(plan.ceiling), under, *box_materials]),
            np.array(self._materials),
            np.array([*low, *step]),
            np.array(on_tops, dtype=np.int64),
            which,
        )

    def _matt(self, reflectance: float) -> int:
        self._materials.append((reflectance, 0.0, 0.0))
        return len(self._materials) - 1

    def _lining(self, key: str) -> int:
        if key == "open":
            return self._matt(0.0)
        lining = next(each for each in self._plan.linings if each.key == key)
        mirrored = lining.reflectance * lining.specular_share
        self._materials.append((lining.reflectance - mirrored, mirrored, lining.wrinkle))
        return len(self._materials) - 1

    def _boxes(
        self, bottom: float, top: int | None
    ) -> tuple[list[tuple[float, ...]], list[int], list[int], int]:
        boxes: list[tuple[float, ...]] = []
        materials: list[int] = []
        tops: list[int] = []
        which = -1
        for number, item in enumerate(self._plan.obstacles):
            if item.underside + item.thickness <= bottom:
                continue
            turn = math.radians(item.rotation_deg)
            low, high = max(item.underside, bottom), item.underside + item.thickness
            sides = (item.length / 2, item.width / 2, low, high)
            boxes.append((item.x, item.y, math.cos(turn), math.sin(turn), *sides, *UPRIGHT))
            if number == top:
                which = len(boxes) - 1
            materials.append(self._lining(item.lining))
            leaves = item.canopy
            tops.append(materials[-1] if leaves is None else self._matt(leaves.reflectance))
        for lamp in self._plan.lamps:
            turn = math.radians(lamp.rotation_deg)
            cos, sin = math.cos(turn), math.sin(turn)
            low = self._plan.canopy.height + lamp.hanging_height
            high = min(low + lamp.model.housing_height, self._plan.space.height)
            # A leaning box keeps all of its height, and turns about the line that is the hinge.
            tilt = math.radians(lamp.tilt_deg)
            if tilt:
                high = low + lamp.model.housing_height
            leans = (math.cos(tilt), math.sin(tilt), 0.0)
            if high - low < 1e-6 or lamp.model.body.kind == "point":
                continue
            for a, b, length, width in emitting(lamp):
                x, y = lamp.x + a * cos - b * sin, lamp.y + a * sin + b * cos
                if tilt:
                    x, y, leans = lamp.x + a * cos, lamp.y + a * sin, (*leans[:2], b)
                boxes.append((x, y, cos, sin, length / 2, width / 2, low, high, *leans, low))
                materials.append(self._matt(lamp.model.housing_reflectance))
                tops.append(materials[-1])
        return boxes, materials, tops, which

    def lamp(self, lamp: Lamp) -> tuple[FloatArray, FloatArray, FloatArray]:
        """Place and profile, strips and ladder of a lamp (see the kernel)."""
        if sticks_out(lamp.outline(), self._plan.space.footprint):
            raise ValueError("the judge takes only lamps that hang inside the space")
        exponent, sectors, steps = ladder(lamp)
        height = self._plan.canopy.height + lamp.hanging_height
        turn, tilt = math.radians(lamp.rotation_deg), math.radians(lamp.tilt_deg)
        place = (lamp.x, lamp.y, height, turn, exponent, sectors, math.cos(tilt), math.sin(tilt))
        return np.array(place), np.array(emitting(lamp)), steps


def emitting(lamp: Lamp) -> list[tuple[float, float, float, float]]:
    """Rectangles that emit, in the lamp's axes: centre x, y and sides."""
    body = lamp.model.body
    if body.kind == "point":
        return [(0.0, 0.0, 0.0, 0.0)]
    if body.kind == "panel":
        return [(0.0, 0.0, body.length, body.width)]
    if body.count == 1:
        return [(0.0, 0.0, body.length, body.bar_width)]
    gap = (body.width - body.count * body.bar_width) / (body.count - 1)
    edge = -body.width / 2
    return [
        (0.0, edge + k * (body.bar_width + gap) + body.bar_width / 2, body.length, body.bar_width)
        for k in range(body.count)
    ]


def ladder(lamp: Lamp) -> tuple[float, int, FloatArray]:
    """Exponent (-1 for a table), azimuth sectors and cumulative flux of a table's cells.

    Tables are linear in both angles and dark outside the polar angles given; inside a cell
    of 0.125° by 1° the light is spread evenly over the solid angle.
    """
    profile = lamp.model.profile
    if isinstance(profile, CosineProfile):
        return profile.exponent, 1, np.zeros(2)
    rows: list[tuple[float, ...]]
    if isinstance(profile, TableProfile):
        sectors, rows, azimuths = 1, [profile.relative], [0.0]
    else:
        sectors, rows, azimuths = 360, list(profile.relative), list(profile.azimuths_deg)
    edges = np.linspace(0.0, 180.0, 1441)
    middle = (edges[1:] + edges[:-1]) / 2
    value = np.array([np.interp(middle, profile.angles_deg, r, left=0, right=0) for r in rows])
    around = (np.arange(sectors) + 0.5) * 360 / sectors
    closed = np.array([*azimuths, azimuths[0] + 360.0])
    value = np.vstack([value, value[:1]])
    spread = np.array([np.interp(around, closed, value[:, k]) for k in range(len(middle))])
    solid = -np.diff(np.cos(np.radians(edges)))
    flux = (spread * solid[:, None]).ravel()
    return -1.0, sectors, np.concatenate([[0.0], np.cumsum(flux / flux.sum())])


# -- areas ---------------------------------------------------------------------------------


def canopy_area(
    plan: Plan, z_map: float, low: FloatArray, step: FloatArray, cells: tuple[int, int]
) -> FloatArray:
    """Area of each cell (ny, nx) inside the footprint and outside obstacles, m²."""
    through = [
        list(item.outline())
        for item in plan.obstacles
        if item.underside <= z_map < item.underside + item.thickness
    ]
    area = np.zeros((cells[1], cells[0]))
    for row in range(cells[1]):
        for column in range(cells[0]):
            x, y = low + step * (column, row)
            square = [(x, y), (x + step[0], y), (x + step[0], y + step[1]), (x, y + step[1])]
            part = clipped(list(plan.space.footprint), square)
            area[row, column] = shoelace(part) - sum(
                shoelace(clipped(part, outline)) for outline in through
            )
    # What rounding leaves of cells outside or wholly covered.
    area[area < 1e-6 * step[0] * step[1]] = 0.0
    return area


def areas(
    outline: Outline, low: FloatArray, step: FloatArray, cells: tuple[int, int]
) -> FloatArray:
    """Area of each cell (ny, nx) inside a convex outline, m²."""
    area = np.zeros((cells[1], cells[0]))
    for row in range(cells[1]):
        for column in range(cells[0]):
            x, y = low + step * (column, row)
            square = [(x, y), (x + step[0], y), (x + step[0], y + step[1]), (x, y + step[1])]
            area[row, column] = shoelace(clipped(square, outline))
    area[area < 1e-6 * step[0] * step[1]] = 0.0
    return area


def clipped(outline: Outline, convex: Outline) -> Outline:
    """The part of any polygon inside a convex one (Sutherland and Hodgman, 1974)."""
    for (ax, ay), (bx, by) in zip(convex, convex[1:] + convex[:1], strict=True):
        side = [(bx - ax) * (y - ay) - (by - ay) * (x - ax) for x, y in outline]
        made: Outline = []
        for k, (x, y) in enumerate(outline):
            if (side[k - 1] >= 0) != (side[k] >= 0):
                px, py = outline[k - 1]
                share = side[k - 1] / (side[k - 1] - side[k])
                made.append((px + share * (x - px), py + share * (y - py)))
            if side[k] >= 0:
                made.append((x, y))
        outline = made
    return outline


def shoelace(outline: Outline) -> float:
    """Area of a polygon, positive counter-clockwise; bridges of no width count nothing."""
    pairs = zip(outline, outline[1:] + outline[:1], strict=True)
    return sum(ax * by - bx * ay for (ax, ay), (bx, by) in pairs) / 2
