"""What the context menu of the plan view offers on each item. No Qt here."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from planner.app.canvas.items import Item, Part
from planner.app.canvas.plan_drags import Edit, point_on_wall, turned_lamp, turned_obstacle
from planner.plan import edits
from planner.plan.plan import Plan
from planner.plan.space import Point


@dataclass(frozen=True)
class Choice:
    """An entry of the menu: its text, the edit it makes, what is in hand afterwards."""

    text: str
    make: Callable[[], Edit]
    then: Item | None = None


def added_corner(plan: Plan, wall: int, near: Point, step: float | None) -> Edit:
    """A corner added to a wall, as near to a point as wall and grid allow."""
    at = point_on_wall(plan, wall, near, step)
    return Edit(edits.add_corner(plan, wall, at), "Add corner")


def middle_of_wall(plan: Plan, wall: int) -> Point:
    """The middle of a wall."""
    (x0, y0), (x1, y1) = plan.space.wall(wall)
    return (x0 + x1) / 2, (y0 + y1) / 2


def removed(plan: Plan, item: Item) -> Edit | None:
    """The plan without a lamp, obstacle or corner; None for what cannot be taken away."""
    if item.part in {Part.LAMP, Part.TURN}:
        return Edit(edits.remove_lamp(plan, item.index), "Remove lamp")
    if item.part in {Part.OBSTACLE, Part.TURN_OBSTACLE}:
        return Edit(edits.remove_obstacle(plan, item.index), "Remove obstacle")
    if item.part is Part.CORNER:
        return Edit(edits.remove_corner(plan, item.index), "Remove corner")
    return None


def choices(plan: Plan, item: Item, at: Point, step: float) -> tuple[Choice, ...]:
    """The entries for an item, for a menu called at a world point."""
    index = item.index
    if item.part is Part.WALL:
        return _wall_choices(plan, index, at, step)
    if item.part is Part.CORNER:
        return (
            Choice(
                "Remove corner",
                lambda: Edit(edits.remove_corner(plan, index), "Remove corner"),
            ),
        )
    if item.part in {Part.LAMP, Part.TURN}:
        lamp = Item(Part.LAMP, index)
        return (
            Choice("Rotate by 15°", lambda: turned_lamp(plan, index, 15.0), lamp),
            Choice("Rotate by 90°", lambda: turned_lamp(plan, index, 90.0), lamp),
            Choice("Remove lamp", lambda: Edit(edits.remove_lamp(plan, index), "Remove lamp")),
        )
    if item.part in {Part.OBSTACLE, Part.TURN_OBSTACLE}:
        obstacle = Item(Part.OBSTACLE, index)
        away = Edit(edits.remove_obstacle(plan, index), "Remove obstacle")
        return (
            Choice("Rotate by 15°", lambda: turned_obstacle(plan, index, 15.0), obstacle),
            Choice("Rotate by 90°", lambda: turned_obstacle(plan, index, 90.0), obstacle),
            Choice("Remove obstacle", lambda: away),
        )
    return ()


def _wall_choices(plan: Plan, wall: int, at: Point, step: float) -> tuple[Choice, ...]:
    here = Item(Part.WALL, wall)

    def door(text: str, label: str, **parts: object) -> Choice:
        return Choice(text, lambda: Edit(edits.with_space(plan, **parts), label), here)

    add = Choice(
        "Add corner here",
        lambda: added_corner(plan, wall, at, step),
        Item(Part.CORNER, wall + 1),
    )
    if plan.space.door != wall:
        return add, door("Make this wall the door", "Make door", door=wall, door_open=False)
    if plan.space.door_open:
        swing = door("Close door", "Close door", door_open=False)
    else:
        swing = door("Open door", "Open door", door_open=True)
    return add, swing, door("Make this a plain wall", "Remove door", door=None, door_open=False)
