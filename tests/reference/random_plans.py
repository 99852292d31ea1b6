"""Random valid plans of every kind of room, each made again from a seed and a number.

Kinds are turns of outline, lining and features; sizes, places and values are drawn. What no
one can build (lamps through walls, boxes inside one another) is drawn again. All invented.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np

from planner.plan.lamp import (
    BarsBody,
    CosineProfile,
    Lamp,
    LampModel,
    PanelBody,
    PlanesProfile,
    PointBody,
    TableProfile,
)
from planner.plan.lining import Band, Lining, WallCover
from planner.plan.plan import Plan
from planner.plan.space import Canopy, Obstacle, Space, outlines_overlap, sticks_out

Points = list[tuple[float, float]]

OUTLINES = ("box", "turned box", "chamfer", "trapezoid", "L", "T", "U", "dart")
LININGS = ("matt", "mixed", "mirror", "wrinkled")
FAMILIES = ("wrinkled", "any", "matt", "mixed", "any", "wrinkled", "mirror")
"""Turns of the room's linings; 'any' draws each lining from all."""

TRIES = 400
APART = 0.005
"""Metres that boxes, lamps and walls keep from one another."""


@dataclass(frozen=True)
class RandomRoom:
    """A plan and the kinds it is counted under."""

    number: int
    plan: Plan
    kinds: tuple[str, ...]


def random_room(
    number: int, seed: int, *, low: bool = False, tilted: bool = False, divided: bool = False
) -> RandomRoom:
    """The room of that number; outlines and linings take turns, the rest is chance.

    With ``low`` every room has obstacles that end within a few centimetres of the canopy, with
    ``tilted`` its lamps are tilted where they find room for it, with ``divided`` one of its walls
    has a corner in its midst and is lined otherwise beyond it.
    """
    draw = np.random.default_rng([seed, number])
    outline = OUTLINES[number % len(OUTLINES)]
    family = FAMILIES[number // len(OUTLINES) % len(FAMILIES)]
    while True:
        made = _Maker(draw, outline, family, low).room(number)
        if made is None:
            continue
        if tilted:
            made = _tilted(made, np.random.default_rng([seed, number, 1]))
        return _divided(made, np.random.default_rng([seed, number, 2])) if divided else made


def _divided(room: RandomRoom, draw: np.random.Generator) -> RandomRoom:
    """The room with a corner in the midst of a wall, and beyond it the lining of another."""
    plan, corners = room.plan, list(room.plan.space.footprint)
    wall = int(draw.integers(len(corners)))
    (ax, ay), (bx, by) = plan.space.wall(wall)
    part = float(draw.uniform(0.3, 0.7))
    corners.insert(wall + 1, (ax + part * (bx - ax), ay + part * (by - ay)))
    covers, door = list(plan.walls), plan.space.door
    covers.insert(wall + 1, covers[int(draw.integers(len(covers)))])
    if door is not None and door > wall:
        door += 1
    space = plan.space.model_copy(update={"footprint": tuple(corners), "door": door})
    made = Plan.model_validate({**dict(plan), "space": space, "walls": tuple(covers)})
    return RandomRoom(room.number, made, (*room.kinds, "divided wall"))


def _tilted(room: RandomRoom, draw: np.random.Generator) -> RandomRoom:
    """The room with each lamp tilted by 3 to 45 degrees, less where it would touch something."""
    plan = room.plan
    tilts: list[float] = []
    for index, lamp in enumerate(plan.lamps):
        wanted = float(draw.choice([-1.0, 1.0]) * draw.uniform(3.0, 45.0))
        for tilt in (wanted, -wanted, wanted / 2, -wanted / 2, wanted / 4, -wanted / 4):
            leaning = lamp.model_copy(update={"tilt_deg": round(tilt, 1)})
            lamps = (*plan.lamps[:index], leaning, *plan.lamps[index + 1 :])
            try:
                made = Plan.model_validate({**dict(plan), "lamps": lamps})
            except ValueError:
                continue
            if not _touches(made, index):
                plan, tilts = made, [*tilts, tilt]
                break
    kind = "tilted lamps" if tilts else "no lamp tilted"
    return RandomRoom(room.number, plan, (*room.kinds, kind))


def _touches(plan: Plan, index: int) -> bool:
    """Whether a lamp may touch another one or an obstacle."""
    lamp = plan.lamps[index]
    (below, above), height = lamp.rise, plan.lamp_height(lamp)
    others = [
        (o.outline(), plan.lamp_height(o) + o.rise[0], plan.lamp_height(o) + o.rise[1])
        for k, o in enumerate(plan.lamps)
        if k != index
    ]
    others += [(o.outline(), o.underside, o.top) for o in plan.obstacles]
    return any(
        low < height + above + APART
        and height + below - APART < high
        and outlines_overlap(_grown(lamp.outline(), APART), outline)
        for outline, low, high in others
        if any(lamp.model.size)
    )


class _Maker:
    def __init__(self, draw: np.random.Generator, outline: str, family: str, low: bool) -> None:
        self._draw = draw
        self._low = low
        self._outline = outline
        self._family = family
        self._linings: list[Lining] = []
        self._taken: list[tuple[float, float, Any]] = []
        self._kinds = [outline, f"{family} linings"]

    def room(self, number: int) -> RandomRoom | None:
        draw = self._draw
        corners = self._corners()
        self._corner_list = corners
        self._height = round(float(draw.uniform(0.5, 2.2)), 3)
        self._canopy = round(float(draw.uniform(0.05, 0.35)) * self._height, 3)
        closed = bool(draw.random() < 0.6)
        self._kinds.append("closed canopy" if closed else "open canopy")
        lamps = self._lamps()
        if not lamps:
            return None
        obstacles = self._low_obstacles(closed) if self._low else self._obstacles(closed)
        if self._low and not obstacles:
            return None
        walls = self._walls(len(corners))
        door = int(draw.integers(len(corners))) if draw.random() < 0.3 else None
        door_open = door is not None and bool(draw.random() < 0.6)
        if door_open:
            self._kinds.append("open door")
        ceiling = self._lining() if draw.random() < 0.85 else "open"
        floor = self._lining() if draw.random() < 0.85 else "open"
        if any(lining.wrinkle > 0 for lining in self._linings):
            self._kinds.append("with wrinkles")
        else:
            self._kinds.append("without wrinkles")
        plan = Plan(
            name=f"Random room {number}",
            note="Invented.",
            space=Space(
                footprint=tuple(corners), height=self._height, door=door, door_open=door_open
            ),
            lamps=tuple(lamps),
            obstacles=tuple(obstacles),
            linings=tuple(self._linings),
            walls=tuple(walls),
            ceiling=ceiling,
            floor=floor,
            canopy=Canopy(
                height=self._canopy,
                closed=closed,
                reflectance=round(float(draw.choice([0.0, 0.06, 0.12, 0.3, 0.6])), 3),
            ),
        )
        return RandomRoom(number, plan, tuple(self._kinds))

    # -- outline ---------------------------------------------------------------------------

    def _corners(self) -> Points:
        draw = self._draw
        w = math.exp(draw.uniform(math.log(0.4), math.log(2.0)))
        d = w * float(draw.uniform(0.5, 1.0))
        a, b, c = (float(value) for value in draw.uniform(0.25, 0.6, 3))
        shapes: dict[str, Points] = {
            "chamfer": [(a * w, 0), (w, 0), (w, d * (1 - b)), (w * (1 - b), d), (0, d), (0, a * d)],
            "trapezoid": [(0, 0), (w, 0), (w * (1 - a / 2), d), (w * b / 2, d)],
            "L": [(0, 0), (w, 0), (w, d * b), (w * a, d * b), (w * a, d), (0, d)],
            "T": [
                (w * (0.5 - a / 2), 0),
                (w * (0.5 + a / 2), 0),
                (w * (0.5 + a / 2), d * b),
                (w, d * b),
                (w, d),
                (0, d),
                (0, d * b),
                (w * (0.5 - a / 2), d * b),
            ],
            "U": [
                (0, 0),
                (w, 0),
                (w, d),
                (w * (0.5 + a / 3), d),
                (w * (0.5 + a / 3), d * b),
                (w * (0.5 - c / 3), d * b),
                (w * (0.5 - c / 3), d),
                (0, d),
            ],
            "dart": [(0, 0), (w * (0.3 + a / 2), d * b * 0.7), (w, 0), (w * c, d)],
        }
        points = shapes.get(self._outline, [(0, 0), (w, 0), (w, d), (0, d)])
        turned = self._outline == "turned box" or (self._outline != "box" and draw.random() < 0.4)
        angle = math.radians(float(draw.uniform(5, 85))) if turned else 0.0
        cos, sin = math.cos(angle), math.sin(angle)
        return [(round(x * cos - y * sin, 4), round(x * sin + y * cos, 4)) for x, y in points]

    # -- linings ---------------------------------------------------------------------------

    def _lining(self, family: str | None = None) -> str:
        """Key of a lining of the room's family; half the time one already there."""
        draw = self._draw
        if self._linings and draw.random() < 0.5:
            return self._linings[int(draw.integers(len(self._linings)))].key
        family = family or self._family
        if family == "any":
            family = str(draw.choice(LININGS))
        low, high, least, most = {
            "matt": (0.03, 0.97, 0.0, 0.08),
            "mixed": (0.4, 0.95, 0.15, 0.8),
            "mirror": (0.6, 0.98, 0.85, 1.0),
            "wrinkled": (0.5, 0.97, 0.3, 1.0),
        }[family]
        rho = round(float(draw.uniform(low, high)), 3)
        wrinkle = math.exp(draw.uniform(math.log(0.03), 0.0)) if family == "wrinkled" else 0.0
        key = f"{family}-{len(self._linings) + 1}"
        self._linings.append(
            Lining(
                key=key,
                name=key,
                reflectance=rho,
                specular_share=round(float(draw.uniform(least, most)), 3),
                wrinkle=round(wrinkle, 3),
                low=rho,
                high=rho,
            )
        )
        return key

    def _walls(self, count: int) -> list[WallCover]:
        draw = self._draw
        same = draw.random() < 0.3
        banded = draw.random() < 0.4
        if banded:
            self._kinds.append("bands")
        plain = WallCover.plain(self._lining())
        walls = []
        for _ in range(count):
            if banded and draw.random() < 0.6:
                tops = np.sort(draw.uniform(0.15, 0.9, int(draw.integers(1, 3)))) * self._height
                if len(tops) == 2 and tops[1] - tops[0] < 0.02:
                    tops = tops[:1]
                bands = [Band(lining=self._cover(), top=round(float(top), 3)) for top in tops]
                walls.append(WallCover(bands=(*bands, Band(lining=self._cover()))))
            else:
                walls.append(plain if same else WallCover.plain(self._lining()))
        return walls

    def _cover(self) -> str:
        return "open" if self._draw.random() < 0.08 else self._lining()

    # -- lamps and obstacles ---------------------------------------------------------------

    def _lamps(self) -> list[Lamp]:
        draw = self._draw
        count = int(draw.choice([1, 1, 2, 2, 3, 4]))
        models = [self._model() for _ in range(min(count, 2))]
        lamps = []
        for k in range(count):
            lamp = self._hung(models[k % len(models)])
            if lamp is not None:
                lamps.append(lamp)
        if len(lamps) > 1:
            self._kinds.append("several lamps")
        if any(lamp.model.housing_height > 0 for lamp in lamps):
            self._kinds.append("housings")
        bodies = {lamp.model.body.kind for lamp in lamps}
        self._kinds += sorted(f"{body} lamps" for body in bodies)
        if any(_emits_up(lamp.model) for lamp in lamps):
            self._kinds.append("uplight")
        return lamps

    def _model(self) -> LampModel:
        draw = self._draw
        xs, ys = zip(*self._corner_list, strict=True)
        size = min(max(xs) - min(xs), max(ys) - min(ys))
        body: PointBody | PanelBody | BarsBody
        kind = str(draw.choice(["point", "panel", "panel", "bars"]))
        length = round(size * float(draw.uniform(0.1, 0.55)), 3)
        if kind == "point":
            body = PointBody()
        elif kind == "panel":
            thin = draw.random() < 0.3
            width = 0.03 if thin else max(round(length * float(draw.uniform(0.3, 1.0)), 3), 0.01)
            body = PanelBody(length=length, width=width)
        else:
            bars = int(draw.integers(2, 7))
            width = max(round(length * float(draw.uniform(0.4, 1.0)), 3), bars * 0.012)
            strip = round(min(0.04, width / bars * float(draw.uniform(0.3, 0.8))), 4)
            body = BarsBody(count=bars, length=length, bar_width=max(strip, 0.005), width=width)
        housed = kind != "point" and draw.random() < 0.4
        profile = self._profile(up=not housed)
        return LampModel(
            key=f"lamp-{kind}",
            name="Invented lamp",
            body=body,
            profile=profile,
            ppf=round(float(draw.uniform(50, 800)), 1),
            watts=400.0,
            housing_height=round(float(draw.uniform(0.02, 0.1)), 3) if housed else 0.0,
            housing_reflectance=round(float(draw.uniform(0.0, 0.9)), 2),
        )

    def _profile(self, *, up: bool) -> CosineProfile | TableProfile | PlanesProfile:
        draw = self._draw
        what = draw.random()
        if what < 0.7:
            return CosineProfile(exponent=round(math.exp(draw.uniform(-0.7, 2.3)), 2))
        reach = 180.0 if up and what < 0.85 else 90.0
        angles = np.linspace(0, reach, int(draw.integers(5, 14)))
        relative = np.cos(np.radians(angles)) ** 2 + 0.05 + draw.uniform(0, 0.5, len(angles))
        relative[angles >= 89.9] *= 0.5
        if reach == 90.0:
            relative[-1] = 0.0
        rounded = tuple(round(float(angle), 3) for angle in angles)
        if draw.random() < 0.6:
            return TableProfile(
                angles_deg=rounded, relative=tuple(round(float(v), 4) for v in relative)
            )
        turns = (0.0, 60.0, 120.0, 180.0, 270.0)
        planes = [relative * draw.uniform(0.4, 1.0) for _ in turns]
        return PlanesProfile(
            angles_deg=rounded,
            azimuths_deg=turns,
            relative=tuple(tuple(round(float(v), 4) for v in plane) for plane in planes),
        )

    def _hung(self, model: LampModel) -> Lamp | None:
        draw = self._draw
        room = self._height - self._canopy
        body = model.body.kind != "point"
        for _ in range(TRIES):
            hanging = room * float(draw.uniform(0.3, 1.0 if draw.random() < 0.3 else 0.9))
            lamp = Lamp(
                model=model,
                x=round(float(draw.uniform(*self._span(0))), 3),
                y=round(float(draw.uniform(*self._span(1))), 3),
                hanging_height=max(round(hanging - 0.0005, 3), 0.05),
                rotation_deg=round(float(draw.choice([0.0, 90.0, draw.uniform(0, 180)])), 1),
                output_percent=round(float(draw.uniform(30, 100)), 1),
            )
            face = self._canopy + lamp.hanging_height
            if face > self._height:
                continue
            grown = _grown(lamp.outline(), APART) if body else _square(lamp.x, lamp.y)
            if self._free(grown, face - APART, face + model.housing_height + APART):
                self._taken.append((face - APART, face + model.housing_height + APART, grown))
                return lamp
        return None

    def _obstacles(self, closed: bool) -> list[Obstacle]:
        draw = self._draw
        found: list[Obstacle] = []
        wanted = int(draw.choice([0, 0, 0, 1, 2, 3]))
        xs, ys = zip(*self._corner_list, strict=True)
        size = min(max(xs) - min(xs), max(ys) - min(ys))
        for _ in range(wanted * TRIES):
            if len(found) == wanted:
                break
            shelf = draw.random() < 0.5
            length, width = (float(value) for value in size * draw.uniform(0.08, 0.4, 2))
            thickness = 0.02 if shelf else float(draw.uniform(0.05, 0.3))
            under = float(draw.uniform(0.02, 0.7)) * self._height if shelf else 0.0
            item = self._drawn(shelf, (length, width), 0.01, round(under, 3), round(thickness, 3))
            if item.top > self._height - 0.02 or (closed and item.top < self._canopy + 0.01):
                continue
            if min(abs(item.underside - self._canopy), abs(item.top - self._canopy)) < 0.01:
                continue
            found += self._put(item)
        if found:
            self._kinds.append("obstacles")
        return found

    def _low_obstacles(self, closed: bool) -> list[Obstacle]:
        """Shelves and boxes 1 to 5 cm over the canopy, pots that end within 1 cm of it."""
        draw = self._draw
        found: list[Obstacle] = []
        wanted = int(draw.integers(1, 4))
        xs, ys = zip(*self._corner_list, strict=True)
        size = min(max(xs) - min(xs), max(ys) - min(ys))
        for _ in range(wanted * TRIES):
            if len(found) == wanted:
                break
            over = draw.random() < 0.7
            length, width = (float(value) for value in size * draw.uniform(0.1, 0.5, 2))
            if over:
                under = self._canopy + float(draw.uniform(0.01, 0.05))
                thickness = float(draw.choice([0.02, draw.uniform(0.05, 0.2)]))
            else:
                under = 0.0
                beyond = float(draw.uniform(0.003, 0.01))
                down = not closed and draw.random() < 0.5
                thickness = self._canopy + (-beyond if down else beyond)
            item = self._drawn(over, (length, width), 0.02, round(under, 4), round(thickness, 4))
            if item.top > self._height - 0.02:
                continue
            found += self._put(item)
        if found:
            self._kinds.append("low obstacles")
        return found

    def _drawn(
        self, shelf: bool, size: tuple[float, float], least: float, under: float, thickness: float
    ) -> Obstacle:
        """A shelf or a pot somewhere, turned somehow; sides of at least so many metres."""
        draw = self._draw
        return Obstacle(
            name="Shelf" if shelf else "Pot",
            x=round(float(draw.uniform(*self._span(0))), 3),
            y=round(float(draw.uniform(*self._span(1))), 3),
            underside=under,
            length=max(round(size[0], 3), least),
            width=max(round(size[1], 3), least),
            thickness=thickness,
            rotation_deg=round(float(draw.choice([0.0, draw.uniform(0, 90)])), 1),
            lining="open",
        )

    def _put(self, item: Obstacle) -> list[Obstacle]:
        """The obstacle with a lining, where there is room for it, which it takes."""
        low, high, grown = item.underside - APART, item.top + APART, _grown(item.outline(), APART)
        if not self._free(grown, low, high):
            return []
        self._taken.append((low, high, grown))
        return [item.model_copy(update={"lining": self._cover()})]

    def _span(self, axis: int) -> tuple[float, float]:
        values = [corner[axis] for corner in self._corner_list]
        return min(values), max(values)

    def _free(self, outline: Any, low: float, high: float) -> bool:
        if sticks_out(outline, tuple(self._corner_list)):
            return False
        return not any(
            low < other_high and other_low < high and outlines_overlap(outline, other)
            for other_low, other_high, other in self._taken
        )


def _emits_up(model: LampModel) -> bool:
    profile = model.profile
    return not isinstance(profile, CosineProfile) and profile.angles_deg[-1] > 90.0


def _grown(outline: Sequence[tuple[float, float]], by: float) -> tuple[tuple[float, float], ...]:
    """A rectangle with each side moved outward."""
    x, y = (sum(values) / 4 for values in zip(*outline, strict=True))
    (ax, ay), (bx, by_), _, (dx, dy) = outline
    length, width = math.dist((ax, ay), (bx, by_)), math.dist((ax, ay), (dx, dy))
    ux, uy = (bx - ax) / length, (by_ - ay) / length
    half, side = length / 2 + by, width / 2 + by
    return tuple(
        (x + i * half * ux - j * side * uy, y + i * half * uy + j * side * ux)
        for i, j in ((-1, -1), (1, -1), (1, 1), (-1, 1))
    )


def _square(x: float, y: float) -> tuple[tuple[float, float], ...]:
    return (
        (x - APART, y - APART),
        (x + APART, y - APART),
        (x + APART, y + APART),
        (x - APART, y + APART),
    )
