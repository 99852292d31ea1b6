"""What is put into a plan anew: lamps and obstacles to start from, in places where they fit."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from typing import Final

from planner.plan.edits import add_lamp, nearest_inside
from planner.plan.lamp import Lamp, LampModel, PanelBody
from planner.plan.lining import OPENING_KEY
from planner.plan.obstacle import Obstacle
from planner.plan.plan import Plan
from planner.plan.space import Point, contains

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


def new_lamp(plan: Plan, model: LampModel) -> Lamp:
    """A lamp over the middle of the space, at a usual height or just under the ceiling."""
    x, y = middle(plan)
    room = plan.space.height - plan.canopy.height
    return Lamp(model=model, x=x, y=y, hanging_height=min(USUAL_HANGING_HEIGHT_M, 0.9 * room))


def duplicate_lamp(plan: Plan, index: int) -> Plan:
    """Hang a second lamp like this one beside it, on the other side where that is outside."""
    lamp = plan.lamps[index]
    away = max(lamp.model.size[0], 0.05) + 0.02
    wanted = (lamp.x + away, lamp.y)
    if not contains(plan.space.footprint, *wanted):
        wanted = (lamp.x - away, lamp.y)
    x, y = nearest_inside(plan.space.footprint, wanted)
    return add_lamp(plan, lamp.model_copy(update={"x": x, "y": y}))


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
    """An obstacle of a shape in the middle of the space, made to fit into it."""
    x, y = middle(plan)
    x0, y0, x1, y1 = plan.space.bounds
    height = plan.space.height
    thickness = min(shape.thickness, height)
    above = 0.0 if shape.over_canopy is None else plan.canopy.height + shape.over_canopy
    plain = shape.black or not plan.linings
    return Obstacle(
        name=shape.name,
        x=x,
        y=y,
        underside=round(max(min(above, height - thickness), 0.0), 4),
        length=round(min(shape.length, max(0.9 * (x1 - x0), 0.005)), 3),
        width=round(min(shape.width, max(0.9 * (y1 - y0), 0.005)), 3),
        thickness=thickness,
        lining=OPENING_KEY if plain else plan.linings[0].key,
    )
