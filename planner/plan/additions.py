"""What is put into a plan anew: lamps and obstacles to start from, in places where they fit."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import pairwise
from statistics import fmean
from typing import Final

from planner.plan.edits import add_lamp, nearest_inside
from planner.plan.lamp import Lamp, LampModel, PanelBody
from planner.plan.lining import OPENING_KEY
from planner.plan.plan import Plan, Setup
from planner.plan.space import Obstacle, Outline, Point, contains, outlines_overlap, sticks_out

USUAL_HANGING_HEIGHT_M: Final = 0.45
"""18 in, a common first height for a lamp over young plants (common practice, no source)."""

PLAIN_PANEL: Final = LampModel(
    key="plain-panel",
    name="Plain LED panel, 100 W",
    body=PanelBody(length=0.3, width=0.3),
    ppf=250.0,
    watts=100.0,
    source="A round figure to start from (typical, from memory): 2.5 µmol/J.",
)
"""Hung where the catalogue offers no lamp."""


_PLACES: Final = 24
_SIZES: Final = (1.0, 0.75, 0.5, 0.35, 0.2, 0.1)


def middle(plan: Plan) -> Point:
    """A point well inside the footprint: its centroid, or the middle of its widest chord."""
    corners = plan.space.footprint
    area = plan.space.area
    cx = cy = 0.0
    for (x0, y0), (x1, y1) in zip(corners, corners[1:] + corners[:1], strict=True):
        cross = x0 * y1 - x1 * y0
        cx += (x0 + x1) * cross
        cy += (y0 + y1) * cross
    centre = (cx / (6 * area), cy / (6 * area))
    if contains(corners, *centre):
        return centre
    # A horizontal line through the polygon, off every corner, has its midpoint inside.
    heights = sorted({y for _, y in corners})
    best, widest = nearest_inside(corners, centre), 0.0
    for low, high in pairwise(heights):
        y = (low + high) / 2
        cuts = sorted(
            x0 + (y - y0) * (x1 - x0) / (y1 - y0)
            for (x0, y0), (x1, y1) in zip(corners, corners[1:] + corners[:1], strict=True)
            if (y0 > y) != (y1 > y)
        )
        for left, right in zip(cuts[::2], cuts[1::2], strict=False):
            if right - left > widest:
                best, widest = ((left + right) / 2, y), right - left
    return best


def free_place(
    plan: Setup, wanted: Point, outline: Callable[[Point], Outline], others: Sequence[Outline]
) -> tuple[Point, bool] | None:
    """The place nearest to the wanted one where an outline lies inside and on nothing else.

    The second part is False where everything is taken: then it is the place inside that is
    farthest from the others. None where the outline fits nowhere on a grid as fine as a
    twenty-fourth of the space.
    """
    x0, y0, x1, y1 = plan.space.bounds
    step = max(x1 - x0, y1 - y0) / _PLACES
    grid = [
        (round(wanted[0] + i * step, 4), round(wanted[1] + j * step, 4))
        for i in range(-_PLACES, _PLACES + 1)
        for j in range(-_PLACES, _PLACES + 1)
    ]
    inside = [
        place
        for place in sorted(grid, key=lambda place: math.dist(place, wanted))
        if contains(plan.space.footprint, *place)
        and not sticks_out(outline(place), plan.space.footprint)
    ]
    for place in inside:
        body = outline(place)
        if not any(outlines_overlap(body, other) for other in others):
            return place, True
    middles = [tuple(map(fmean, zip(*other, strict=True))) for other in others]
    if not inside:
        return None
    return max(inside, key=lambda place: min(math.dist(place, m) for m in middles)), False


def new_lamp(plan: Plan, model: LampModel, wanted: Point | None = None) -> Lamp:
    """A lamp at a usual height or under the ceiling, where there is room for it.

    As near as can be to the place wanted, first the middle; turned across where it has no room
    along.
    """
    room = plan.headroom
    height = min(USUAL_HANGING_HEIGHT_M, 0.9 * room)
    x, y = middle(plan) if wanted is None else wanted
    return _hung_near(plan, Lamp(model=model, x=x, y=y, hanging_height=height), (x, y))


def _hung_near(plan: Plan, lamp: Lamp, wanted: Point) -> Lamp:
    """The lamp where there is room for it, as near as can be to a place."""
    others = [other.outline() for other in plan.lamps]
    found: list[tuple[bool, Lamp]] = []
    for turn in (0.0, 90.0):
        turned = lamp.model_copy(update={"rotation_deg": (lamp.rotation_deg + turn) % 360})

        def outline(place: Point, turned: Lamp = turned) -> Outline:
            return turned.model_copy(update={"x": place[0], "y": place[1]}).outline()

        place = free_place(plan, wanted, outline, others)
        if place is not None:
            (x, y), free = place
            found.append((free, turned.model_copy(update={"x": x, "y": y})))
    best = [hung for free, hung in found if free] or [hung for _, hung in found]
    return best[0] if best else lamp


def rehung(plan: Plan, lamp: Lamp) -> Lamp:
    """A lamp copied from this or another plan: where it hung, or beside, and under this ceiling."""
    room = plan.headroom
    lower = lamp.model_copy(update={"hanging_height": min(lamp.hanging_height, room)})
    return _hung_near(plan, lower, nearest_inside(plan.space.footprint, (lamp.x, lamp.y)))


def duplicate_lamp(plan: Plan, index: int) -> Plan:
    """Hang a second lamp like this one beside it, across its longer side where there is room."""
    lamp = plan.lamps[index]
    away = max(lamp.model.size[1], 0.05) + 0.02
    angle = math.radians(lamp.rotation_deg)
    wanted = (lamp.x - away * math.sin(angle), lamp.y + away * math.cos(angle))
    return add_lamp(plan, _hung_near(plan, lamp, wanted))


@dataclass(frozen=True)
class Shape:
    """A kind of obstacle to start from: its size in metres, and what it stands on.

    ``over_canopy`` is the height of its underside above the canopy, None on the floor;
    ``black`` ones return no light, the others take the plan's first lining.
    """

    key: str
    name: str
    length: float
    width: float
    thickness: float
    over_canopy: float | None
    black: bool = False


SHAPES: Final = (
    Shape("shelf", "Shelf", 0.4, 0.15, 0.02, 0.1),
    Shape("pot", "Pot", 0.12, 0.12, 0.12, 0.0, black=True),
    Shape("box", "Box", 0.2, 0.2, 0.3, None),
)
"""Round figures to start from; every one of them is a field afterwards."""


def new_obstacle(plan: Plan, shape: Shape) -> Obstacle:
    """An obstacle of a shape as near to the middle as it fits, smaller where it must be."""
    height = plan.space.height
    thickness = min(shape.thickness, height)
    above = 0.0 if shape.over_canopy is None else plan.canopy.height + shape.over_canopy
    plain = shape.black or not plan.linings
    x, y = middle(plan)
    made = Obstacle(
        name=shape.name,
        x=x,
        y=y,
        underside=round(max(min(above, height - thickness), 0.0), 4),
        length=shape.length,
        width=shape.width,
        thickness=thickness,
        lining=OPENING_KEY if plain else plan.linings[0].key,
    )
    beside = [
        other.outline()
        for other in plan.obstacles
        if other.underside < made.top and made.underside < other.top
    ]
    for share in _SIZES:
        size = {
            "length": max(round(shape.length * share, 3), 0.005),
            "width": max(round(shape.width * share, 3), 0.005),
        }
        smaller = made.model_copy(update=size)

        def outline(place: Point, smaller: Obstacle = smaller) -> Outline:
            return smaller.model_copy(update={"x": place[0], "y": place[1]}).outline()

        place = free_place(plan, (x, y), outline, beside)
        if place is not None and place[1]:
            return smaller.model_copy(update={"x": place[0][0], "y": place[0][1]})
    return smaller
