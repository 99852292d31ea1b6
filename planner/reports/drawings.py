"""Drawings of a report as SVG, made without Qt: the sheet, the plan to scale, the elevation.

A drawing counts in millimetres on paper and says how large it wants to be; a drawing to scale
keeps its scale only at that size. Inks carry a class besides their colour, so that a page on a
dark ground can turn them. Only what SVG Tiny 1.2 knows is used, which Qt draws too.
"""

from __future__ import annotations

import base64
import html
import math
import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Final

from planner.language import word
from planner.plan.lamp import Lamp
from planner.plan.lining import Lining
from planner.plan.place import OWN, PlaceKind, lining_at, surfaces
from planner.plan.plan import Plan
from planner.plan.space import Obstacle, Point, hull
from planner.plan.tiers import from_above, hangs, held_by
from planner.units import LengthUnit, by_tape

INK: Final = "#1c2026"
QUIET: Final = "#606670"
FAINT: Final = "#b9bec6"
ACCENT: Final = "#1f6fb4"
LEAF: Final = "#5f9e4a"
LETTER_MM: Final = 2.6
_CLASS: Final = {INK: "ink", QUIET: "grey", FAINT: "pale", ACCENT: "blue"}
_WIDE: Final = 0.6
"""Width of a letter over its height, about: no font is known here."""
_MOST_LEVELS: Final = 4
_LINE_MM: Final = 3.8
"""From one name to the next of those under one another."""
"""Of so many heights of lamps at most the side view tells the number; the table tells all."""
_SCALES: Final = (1, 2, 5, 10, 15, 20, 25, 50, 75, 100, 150, 200, 250, 500)
_RIM: Final = 11.0
_UNPRINTABLE: Final = re.compile(r"[\x00-\x08\x0b\x0c\x0e-\x1f\ud800-\udfff\ufffe\uffff]")


@dataclass(frozen=True)
class Picture:
    """A drawing: its SVG, its width and height in millimetres, what it shows in words.

    ``caption`` is printed under it.
    """

    svg: str
    width: float
    height: float
    words: str
    caption: str = ""


def printable(text: str) -> str:
    """A text without the signs that neither XML nor paper can hold."""
    return _UNPRINTABLE.sub(" ", text)


def plain(text: str) -> str:
    """A text for XML and HTML: printable, its marks escaped."""
    return html.escape(printable(text))


class Sheet:
    """Collects the marks of one drawing; x to the right and y down, in millimetres."""

    def __init__(self, width: float, height: float) -> None:
        self.width, self.height = width, height
        self._marks: list[str] = []

    def picture(self, words: str, caption: str = "") -> Picture:
        """The finished drawing."""
        svg = (
            f'<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" '
            f'width="{self.width:.2f}mm" height="{self.height:.2f}mm" '
            f'viewBox="0 0 {self.width:.2f} {self.height:.2f}" role="img" '
            f"font-family=\"'DejaVu Sans', 'Noto Sans', 'Segoe UI', Arial, sans-serif\">"
            f"<title>{plain(words)}</title>{''.join(self._marks)}</svg>"
        )
        return Picture(svg, self.width, self.height, words, caption)

    def text(
        self,
        x: float,
        y: float,
        words: str,
        *,
        size: float = LETTER_MM,
        anchor: str = "middle",
        colour: str = INK,
        angle: float = 0.0,
        bold: bool = False,
    ) -> None:
        """A line of text about the middle of its height."""
        turn = f' transform="rotate({angle:.2f} {x:.2f} {y:.2f})"' if angle else ""
        weight = ' font-weight="bold"' if bold else ""
        # Spaced by next to nothing: printed letters then stay single ones, none is joined.
        self._marks.append(
            f'<text x="{x:.2f}" y="{y + 0.36 * size:.2f}" font-size="{size:.2f}" '
            f'letter-spacing="0.001" text-anchor="{anchor}" fill="{colour}"'
            f"{_class(colour)}{weight}{turn}>{plain(words)}</text>"
        )

    def line(
        self,
        points: Iterable[Point],
        *,
        colour: str = INK,
        width: float = 0.25,
        dash: str = "",
        closed: bool = False,
        fill: str = "none",
        round_ends: bool = False,
    ) -> None:
        """A line through points, or the outline of an area."""
        at = " ".join(f"{x:.3f},{y:.3f}" for x, y in points)
        kind = "polygon" if closed else "polyline"
        dashes = f' stroke-dasharray="{dash}"' if dash else ""
        dashes += ' stroke-linecap="round"' if round_ends else ""
        self._marks.append(
            f'<{kind} points="{at}" fill="{fill}" stroke="{colour}" stroke-width="{width:.2f}" '
            f'stroke-linejoin="round"{dashes}{_class(colour, "line")}/>'
        )

    def box(
        self,
        x: float,
        y: float,
        width: float,
        height: float,
        *,
        fill: str,
        opacity: float = 1.0,
        colour: str = "none",
    ) -> None:
        """A filled rectangle."""
        clear = f' fill-opacity="{opacity:.2f}"' if opacity < 1 else ""
        rim = f' stroke="{colour}" stroke-width="0.25"' if colour != "none" else ""
        self._marks.append(
            f'<rect x="{x:.3f}" y="{y:.3f}" width="{width:.3f}" height="{height:.3f}" '
            f'fill="{fill}"{clear}{rim}{_class(fill)}/>'
        )

    def ring(
        self, x: float, y: float, radius: float, *, fill: str = "none", colour: str = INK
    ) -> None:
        """A circle."""
        self._marks.append(
            f'<circle cx="{x:.3f}" cy="{y:.3f}" r="{radius:.3f}" fill="{fill}" '
            f'stroke="{colour}" stroke-width="0.25"{_class(colour, "line")}/>'
        )

    def image(self, x: float, y: float, width: float, height: float, png: bytes) -> None:
        """A raster of colours, carried inside the drawing."""
        data = base64.b64encode(png).decode()
        self._marks.append(
            f'<image x="{x:.3f}" y="{y:.3f}" width="{width:.3f}" height="{height:.3f}" '
            f'preserveAspectRatio="none" xlink:href="data:image/png;base64,{data}"/>'
        )

    def place(self, other: Sheet, x: float, y: float) -> None:
        """The marks of another sheet, its upper left corner at a place."""
        self._marks.append(f'<g transform="translate({x:.3f} {y:.3f})">{"".join(other._marks)}</g>')

    def dimension(self, a: Point, b: Point, words: str, *, beside: float = 2.2) -> None:
        """A length between two places, its ends ticked and its words along it.

        ``beside`` is how far the words stand from the line, to the left of a to b.
        """
        self.line((a, b), colour=QUIET, width=0.18)
        dx, dy = b[0] - a[0], b[1] - a[1]
        far = math.hypot(dx, dy) or 1.0
        nx, ny = dy / far, -dx / far
        for x, y in (a, b):
            self.line(((x - nx, y - ny), (x + nx, y + ny)), colour=QUIET, width=0.18)
        x, y = (a[0] + b[0]) / 2 + beside * nx, (a[1] + b[1]) / 2 + beside * ny
        self.text(x, y, words, colour=QUIET, angle=upright(math.degrees(math.atan2(dy, dx))))


def _class(colour: str, kind: str = "") -> str:
    known = _CLASS.get(colour)
    return f' class="{kind or "fill"}-{known}"' if known else ""


def upright(angle: float) -> float:
    """An angle of text turned so that nothing stands on its head, degrees."""
    return (angle + 90.1) % 180 - 90.1


def wide(words: str, size: float = LETTER_MM) -> float:
    """About how wide a text is, in millimetres."""
    return _WIDE * size * len(words)


def shortened(name: str, most: int = 34) -> str:
    """A name that fits where there is little room."""
    return name if len(name) <= most else name[: most - 1].rstrip() + "…"


# -- the plan to scale --------------------------------------------------------------------


@dataclass(frozen=True)
class Frame:
    """Where the space lies on a drawing: millimetres per metre, and its upper left corner."""

    scale: float
    left: float
    top: float
    x0: float
    y1: float

    def at(self, point: Point) -> Point:
        """The place of a point of the plan."""
        x, y = point
        return self.left + (x - self.x0) * self.scale, self.top + (self.y1 - y) * self.scale


def scale_for(size: tuple[float, float], room: tuple[float, float]) -> int:
    """The round scale, 1 to so many, at which a size in metres fits a room in millimetres."""
    needed = max(1000 * long / wide_ for long, wide_ in zip(size, room, strict=True))
    return next((one for one in _SCALES if one >= needed - 1e-9), math.ceil(needed))


def plan_drawing(
    plan: Plan,
    unit: LengthUnit,
    room: tuple[float, float] = (74.0, 74.0),
    marks: Sequence[tuple[Point, str]] = (),
) -> Picture:
    """The space from above, to scale: walls with their numbers, lengths and linings, lamps.

    ``room`` is what the space itself may take, in millimetres; ``marks`` are further places
    with a letter or number each, drawn as crosses (hooks) that replace the lamps' numbers.
    """
    x0, y0, x1, y1 = plan.space.bounds
    part = scale_for((x1 - x0, y1 - y0), room)
    scale = 1000 / part
    frame = Frame(scale, _RIM, _RIM, x0, y1)
    sheet = Sheet((x1 - x0) * scale + 2 * _RIM, (y1 - y0) * scale + 2 * _RIM)
    for index in range(plan.space.wall_count):
        _wall(sheet, plan, index, frame, unit)
    lying, higher = from_above(plan, OWN)
    for number in (*lying, *higher):
        corners = [frame.at(point) for point in plan.obstacles[number].outline()]
        sheet.line(corners, colour=QUIET, width=0.3, closed=True, fill="#e3e5e8")
    named: list[Point] = []
    for number, lamp in enumerate(plan.lamps, start=1):
        at = frame.at((lamp.x, lamp.y))
        if lamp.model.size == (0.0, 0.0):
            sheet.ring(*at, 1.2)
        else:
            sheet.line([frame.at(p) for p in lamp.outline()], width=0.35, closed=True)
        if not marks:
            _plate(sheet, at, f"Lamp {number}")
            named.append(at)
    for point, name in marks:
        x, y = frame.at(point)
        sheet.line(((x - 1.6, y), (x + 1.6, y)), colour=ACCENT, width=0.35)
        sheet.line(((x, y - 1.6), (x, y + 1.6)), colour=ACCENT, width=0.35)
        sheet.text(x + 1.2, y - 2.0, name, colour=ACCENT, anchor="start")
    named += [frame.at(point) for point, _ in marks]
    _name_obstacles(sheet, plan, frame, unit, named)
    size = f"{by_tape(x1 - x0, unit)} by {by_tape(y1 - y0, unit)}"
    caption = f"From above, 1 : {part} where it is printed at its size."
    return sheet.picture(f"The space from above, {size}, with its walls and lamps", caption)


def _name_obstacles(
    sheet: Sheet, plan: Plan, frame: Frame, unit: LengthUnit, named: Sequence[Point]
) -> None:
    """Name and height of the top on every obstacle, off each other and off what is ``named``."""
    taken = [(x, y, wide("Lamp 1")) for x, y in named]
    x0, y0, x1, _ = plan.space.bounds
    walls = [frame.at((x, y0))[0] for x in (x0, x1)]
    for one in sorted(plan.obstacles, key=lambda one: one.top):
        words = f"{shortened(one.name, 24)}, {by_tape(one.top, unit)}"
        xs, ys = zip(*(frame.at(point) for point in one.outline()), strict=True)
        (left, right), (top, down) = (min(xs), max(xs)), (min(ys), max(ys))
        long = wide(words) + 1.2
        middle = min(max((left + right) / 2, walls[0] + long / 2), walls[1] - long / 2)
        # Along its edges first, from the near one up; at its middle where no place is free.
        ends = sorted({middle, left + long / 2 + 0.6, right - long / 2 - 0.6})
        columns = ends if right - left > long + 1.2 else [middle]
        rows = max(int((down - top) / _LINE_MM), 1)
        places = ((x, down - 2.4 - row * _LINE_MM) for row in range(rows) for x in columns)
        free = (
            (x, y)
            for x, y in places
            if all(abs(y - b) >= _LINE_MM or abs(x - a) >= (long + c) / 2 for a, b, c in taken)
        )
        x, y = next(free, (middle, (top + down) / 2))
        taken.append((x, y, long))
        _plate(sheet, (x, y), words)


def _plate(sheet: Sheet, at: Point, words: str) -> None:
    wide_ = wide(words) + 1.2
    sheet.box(at[0] - wide_ / 2, at[1] - 1.8, wide_, 3.6, fill="#ffffff", opacity=0.85)
    # Always dark: its plate is white on any page.
    sheet.text(*at, words, colour="#1c2027")


def _wall(sheet: Sheet, plan: Plan, index: int, frame: Frame, unit: LengthUnit) -> None:
    a, b = (frame.at(point) for point in plan.space.wall(index))
    dx, dy = b[0] - a[0], b[1] - a[1]
    far = math.hypot(dx, dy)
    # Corners run counter-clockwise and y runs down here: outside is to the right of a to b.
    nx, ny = -dy / far, dx / far
    opens = plan.wall_opens(index)
    if opens:
        sheet.line((a, b), colour=QUIET, width=0.5, dash="0.6 1.2")
    else:
        # Lining and wall: the light band inside its ink is as light as the lining reflects.
        top = plan.lining(plan.walls[index].bands[-1].lining)
        low = plan.lining(plan.walls[index].bands[0].lining)
        sheet.line((a, b), width=1.7, round_ends=True)
        _lined(sheet, a, b, low if not low.is_opening else top)
    number = f"{index + 1}"
    x, y = (a[0] + b[0]) / 2 + 4.6 * nx, (a[1] + b[1]) / 2 + 4.6 * ny
    words = f"{number}: {by_tape(plan.space.wall_length(index), unit)}"
    if index == plan.space.door:
        words += ", door" + " (open)" * opens
    fits = wide(words) < far
    angle = upright(math.degrees(math.atan2(dy, dx))) if fits else 0.0
    if not fits:
        x, y = x + nx * wide(words) / 2, y + ny * 1.5
    sheet.text(x, y, words, angle=angle, colour=INK)


def _lined(sheet: Sheet, a: Point, b: Point, lining: Lining) -> None:
    if lining.is_opening:
        sheet.line((a, b), colour="#ffffff", width=1.1, dash="1 1")
        return
    grey = round(60 + 195 * lining.reflectance)
    sheet.line((a, b), colour=f"#{grey:02x}{grey:02x}{grey:02x}", width=1.1)
    # Dots for what scatters, dashes for what mirrors (as on the screen).
    dash = "1.6 1.2" if lining.specular_share > 0.5 else "0.25 1.6"
    sheet.line((a, b), colour="#707680", width=0.3, dash=dash)


def elevation_drawing(
    plan: Plan, unit: LengthUnit, room: tuple[float, float] = (60.0, 74.0)
) -> Picture:
    """The space from its near side, to scale: floor, canopy, obstacles, lamps on their cords."""
    x0, _, x1, _ = plan.space.bounds
    high = plan.space.height
    part = scale_for((x1 - x0, high), room)
    scale = 1000 / part
    levels = _levels(plan, 3.2 / scale)
    tops = _tops(plan)
    said = [words for _, words in (*levels, *tops)]
    left, top = max((wide(words) for words in said), default=0.0) + 3.0, 8.0
    across, up = (x1 - x0) * scale, high * scale
    sheet = Sheet(across + left + 13.0 + 7.0 * (1 + len(levels) + len(tops)), up + top + 10.0)
    floor = top + up

    def level(height: float) -> float:
        return floor - height * scale

    canopy = level(plan.canopy.height)
    if plan.canopy.closed:
        sheet.box(left, canopy, across, floor - canopy, fill=LEAF, opacity=0.35)
    sheet.line(((left, canopy), (left + across, canopy)), colour=LEAF, width=0.6)
    corners = ((left, top), (left + across, top), (left + across, floor), (left, floor))
    sheet.line(corners, width=0.9, closed=True)
    _obstacles_beside(sheet, plan, (left, floor), scale)
    for lamp in plan.lamps:
        xs = [x for x, _ in lamp.outline()] or [lamp.x]
        ends = [left + (x - x0) * scale for x in (min(xs), max(xs))]
        face = level(plan.lamp_height(lamp))
        body = max(lamp.model.housing_height * scale, 1.0)
        for end in (0.25, 0.75):
            cord = ends[0] + end * (ends[1] - ends[0])
            under = held_by(plan, x0 + (cord - left) / scale, lamp.y, plan.lamp_height(lamp))
            hook = top if under is None else level(plan.obstacles[under].underside)
            sheet.line(((cord, hook), (cord, face - body)), colour=QUIET, width=0.2)
        if lamp.tilt_deg:
            seen = hull((x, up) for x, _, up in lamp.corners(body / scale))
            leaning = [(left + (x - x0) * scale, face - up * scale) for x, up in seen]
            sheet.line(leaning, colour=INK, width=0.2, closed=True, fill=INK)
        else:
            sheet.box(ends[0], face - body, max(ends[1] - ends[0], 1.5), body, fill=INK)
    # Beside the space, where no lamp and no shelf is in the way of the words.
    right = left + across + 5
    sheet.dimension((right, floor), (right, canopy), by_tape(plan.canopy.height, unit))
    taken = []
    for lamp, words in levels:
        face, over = level(plan.lamp_height(lamp)), hangs(plan, lamp)
        taken.append(face)
        sheet.text(left - 1.5, face, words, anchor="end")
        right += 7
        sheet.dimension((right, face + over * scale), (right, face), by_tape(over, unit))
    for one, words in tops:
        y = level(one.top - one.thickness / 2)
        while any(abs(y - other) < LETTER_MM + 0.4 for other in taken):
            y -= 0.5
        taken.append(y)
        sheet.text(left - 1.5, y, words, anchor="end")
        right += 7
        sheet.dimension((right, floor), (right, level(one.top)), by_tape(one.top, unit))
    right += 7
    sheet.dimension((right, floor), (right, top), by_tape(high, unit))
    sheet.dimension(
        (left, floor + 4), (left + across, floor + 4), by_tape(x1 - x0, unit), beside=-2.4
    )
    words = (
        f"The space from its near side: {by_tape(high, unit)} high, the canopy at "
        f"{by_tape(plan.canopy.height, unit)}"
    )
    return sheet.picture(words, f"From the near side, 1 : {part} where it is printed at its size.")


def _obstacles_beside(sheet: Sheet, plan: Plan, foot: Point, scale: float) -> None:
    """What stands there, seen from the near side; ``foot`` is where floor and left wall meet."""
    for one in plan.obstacles:
        xs = [foot[0] + (x - plan.space.bounds[0]) * scale for x, _ in one.outline()]
        left, right, top = min(xs), max(xs), foot[1] - one.top * scale
        height = one.thickness * scale
        sheet.box(left, top, right - left, height, fill="#e3e5e8", colour=QUIET)
        if one.canopy is not None:
            sheet.line(((left, top), (right, top)), colour=LEAF, width=0.6)


def _tops(plan: Plan) -> list[tuple[Obstacle, str]]:
    """An obstacle of each height of a top, with the names of all as high, the lowest first."""
    found: dict[float, list[Obstacle]] = {}
    for one in sorted(plan.obstacles, key=lambda one: one.top):
        found.setdefault(round(one.top, 3), []).append(one)
    return [
        (same[0], shortened(", ".join(dict.fromkeys(one.name for one in same)), 24))
        for same in list(found.values())[:_MOST_LEVELS]
    ]


def _levels(plan: Plan, apart: float) -> list[tuple[Lamp, str]]:
    """A lamp of each height, with all there in words; lamps nearer than ``apart`` are one."""
    found: list[tuple[Lamp, list[int]]] = []
    for number, lamp in enumerate(plan.lamps, start=1):
        hung = lamp.hanging_height
        same = [told for at, told in found if abs(at.hanging_height - hung) <= apart]
        if same:
            same[0].append(number)
        elif len(found) < _MOST_LEVELS:
            found.append((lamp, [number]))
    return [
        (lamp, f"Lamp{'s' * (len(told) > 1)} {', '.join(map(str, told))}") for lamp, told in found
    ]


def lined_with(plan: Plan, lining: Lining) -> str:
    """Where a lining is, in words: 'wall 2, wall 4 band 1, ceiling'."""
    found: dict[PlaceKind, list[str]] = {}
    for place in surfaces(plan):
        there = lining_at(plan, place)
        if there is None or there.key != lining.key:
            continue
        number = str(place.index + 1)
        if place.band is not None and len(plan.walls[place.index].bands) > 1:
            number += f" (band {place.band + 1})"
        found.setdefault(place.kind, []).append(number)
    parts = []
    for kind, numbers in found.items():
        counted = kind in {PlaceKind.WALL, PlaceKind.OBSTACLE}
        several = {PlaceKind.WALL: "walls", PlaceKind.OBSTACLE: "obstacles"}
        name = several[kind] if counted and len(numbers) > 1 else word(kind)
        parts.append(f"{name} {', '.join(numbers)}" if counted else name)
    return "; ".join(parts)
