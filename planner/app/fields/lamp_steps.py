"""Steps about lamps that are offered in more than one place."""

from __future__ import annotations

from itertools import pairwise
from typing import Final

from planner.app.fields.panel import Workplace
from planner.app.fields.wording import explain
from planner.plan import edits
from planner.plan.lamp import Lamp, LampModel, PanelBody
from planner.plan.place import Place, PlaceKind
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
    best, widest = edits.nearest_inside(corners, centre), 0.0
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


def hang_lamp(workplace: Workplace) -> str:
    """Hang one more lamp, of the kind hung last, and select it.

    Returns an empty text, or a sentence about what prevents it.
    """
    plan = workplace.document.plan
    offered = workplace.shelf.lamps
    model = plan.lamps[-1].model if plan.lamps else offered[0] if offered else PLAIN_PANEL
    try:
        after = edits.add_lamp(plan, new_lamp(plan, model))
    except ValueError as error:
        return explain(error)
    workplace.document.apply(after, "Add lamp")
    workplace.selection.select(Place(PlaceKind.LAMP, len(after.lamps) - 1))
    return ""


def duplicate_lamp(workplace: Workplace, index: int) -> str:
    """Hang a second lamp like this one beside it and select it; returns any error."""
    plan = workplace.document.plan
    lamp = plan.lamps[index]
    away = max(lamp.model.size[0], 0.05) + 0.02
    wanted = (lamp.x + away, lamp.y)
    if not contains(plan.space.footprint, *wanted):
        wanted = (lamp.x - away, lamp.y)
    x, y = edits.nearest_inside(plan.space.footprint, wanted)
    try:
        after = edits.add_lamp(plan, lamp.model_copy(update={"x": x, "y": y}))
    except ValueError as error:
        return explain(error)
    workplace.document.apply(after, "Duplicate lamp")
    workplace.selection.select(Place(PlaceKind.LAMP, len(after.lamps) - 1))
    return ""


def remove_lamp(workplace: Workplace, index: int) -> None:
    """Take a lamp down and show the space again."""
    after = edits.remove_lamp(workplace.document.plan, index)
    workplace.selection.select(Place())
    workplace.document.apply(after, "Remove lamp")
