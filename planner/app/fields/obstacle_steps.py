"""Steps about obstacles that are offered in more than one place."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from planner.app.fields.lamp_steps import middle
from planner.app.fields.panel import Workplace
from planner.app.fields.wording import explain
from planner.plan import edits
from planner.plan.lining import OPENING_KEY
from planner.plan.obstacle import Obstacle
from planner.plan.place import Place, PlaceKind
from planner.plan.plan import Plan


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


def place_obstacle(workplace: Workplace, shape: Shape) -> str:
    """Put one more obstacle into the space and select it; returns any error."""
    plan = workplace.document.plan
    try:
        after = edits.add_obstacle(plan, new_obstacle(plan, shape))
    except ValueError as error:
        return explain(error)
    workplace.document.apply(after, f"Add {shape.name.lower()}")
    workplace.selection.select(Place(PlaceKind.OBSTACLE, len(after.obstacles) - 1))
    return ""


def remove_obstacle(workplace: Workplace, index: int) -> None:
    """Take an obstacle away and show the space again."""
    after = edits.remove_obstacle(workplace.document.plan, index)
    workplace.selection.select(Place())
    workplace.document.apply(after, "Remove obstacle")
