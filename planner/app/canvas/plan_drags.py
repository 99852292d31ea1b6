"""Drags on the plan view: from where the hand is to the plan it means. No Qt here."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass

from planner.app.canvas.items import Item, Part, Section, nearest_on_segment, wall_normal
from planner.estimate.result import Estimate
from planner.metrics.figures import ppfd
from planner.plan import edits
from planner.plan.plan import Plan
from planner.plan.space import Point
from planner.units import LengthUnit, format_length, listed

TURN_STEP_DEG = 15.0
LAMP_INSIDE = "The middle of a lamp stays inside the walls."
OBSTACLE_INSIDE = "The middle of an obstacle stays inside the walls."


@dataclass(frozen=True)
class Hold:
    """How the hand holds: ``step`` of the snapping grid in metres (None: free), ``fine``."""

    step: float | None
    fine: bool = False


@dataclass(frozen=True)
class Edit:
    """A finished edit: the plan, the name of its undo step, and what is to be said about it.

    ``stopped`` says what stopped it short and is gone when the hand lets go; ``took`` what it
    took along, and stays.
    """

    plan: Plan
    label: str
    stopped: str = ""
    took: str = ""


def snapped(value: float, step: float | None) -> float:
    """The nearest line of an absolute grid; the value itself without a step."""
    if step is None:
        return value
    # Seven digits keep 0.1 µm: enough for half inches, and no 0.30000000000000004 in files.
    return round(round(value / step) * step, 7)


def snapped_point(point: Point, step: float | None) -> Point:
    """Both coordinates on the grid."""
    return snapped(point[0], step), snapped(point[1], step)


@dataclass(frozen=True)
class PlanDrag:
    """A drag of one item that began at a world point; every move starts from ``plan``."""

    plan: Plan
    item: Item
    grabbed: Point

    def to(self, at: Point, hold: Hold) -> Edit:
        """The plan with the item dragged to a world point.

        Raises
        ------
        ValueError
            If that plan cannot be built (a self-crossing footprint, say).
        """
        dx, dy = at[0] - self.grabbed[0], at[1] - self.grabbed[1]
        index = self.item.index
        if self.item.part is Part.CORNER:
            x, y = self.plan.space.footprint[index]
            target = snapped_point((x + dx, y + dy), hold.step)
            return outlined(self.plan, edits.move_corner(self.plan, index, target), "Move corner")
        if self.item.part is Part.WALL:
            moved = shifted_wall(self.plan, index, (dx, dy), hold.step)
            return outlined(self.plan, moved, "Move wall")
        if self.item.part is Part.LAMP:
            lamp = self.plan.lamps[index]
            target = snapped_point((lamp.x + dx, lamp.y + dy), hold.step)
            return moved_lamp(self.plan, index, target)
        if self.item.part is Part.TURN:
            return Edit(self._turned(at, hold), "Rotate lamp")
        if self.item.part is Part.OBSTACLE:
            obstacle = self.plan.obstacles[index]
            target = snapped_point((obstacle.x + dx, obstacle.y + dy), hold.step)
            return moved_obstacle(self.plan, index, target)
        if self.item.part is Part.TURN_OBSTACLE:
            return Edit(self._turned(at, hold), "Rotate obstacle")
        raise ValueError(f"a {self.item.part} cannot be dragged.")

    def _turned(self, at: Point, hold: Hold) -> Plan:
        index, of_lamp = self.item.index, self.item.part is Part.TURN
        thing = self.plan.lamps[index] if of_lamp else self.plan.obstacles[index]
        angle = math.degrees(math.atan2(at[1] - thing.y, at[0] - thing.x))
        step = 1.0 if hold.fine else TURN_STEP_DEG
        turned = whole_turn(round(angle / step) * step)
        if of_lamp:
            return edits.change_lamp(self.plan, index, rotation_deg=turned)
        return edits.change_obstacle(self.plan, index, rotation_deg=turned)


def outlined(before: Plan, after: Plan, label: str) -> Edit:
    """An edit of the outline, that says which lamps and obstacles had to come inside with it."""
    taken = [
        f"lamp {k + 1}"
        for k, (old, new) in enumerate(zip(before.lamps, after.lamps, strict=True))
        if (old.x, old.y) != (new.x, new.y)
    ]
    taken += [
        new.name
        for old, new in zip(before.obstacles, after.obstacles, strict=True)
        if (old.x, old.y) != (new.x, new.y)
    ]
    if not taken:
        return Edit(after, label)
    names = listed(taken)
    sentence = f"{names[:1].upper()}{names[1:]} moved too, to stay inside the walls."
    return Edit(after, f"{label} with {names}", took=sentence)


def whole_turn(angle_deg: float) -> float:
    """The same direction between -180 (exclusive) and 180 degrees."""
    return -((-angle_deg + 180) % 360 - 180)


def moved_lamp(plan: Plan, index: int, at: Point) -> Edit:
    """A lamp at a point, or as near to it as the footprint allows."""
    x, y = edits.nearest_inside(plan.space.footprint, at)
    stopped = "" if math.dist((x, y), at) < 1e-6 else LAMP_INSIDE
    return Edit(edits.change_lamp(plan, index, x=x, y=y), "Move lamp", stopped)


def moved_obstacle(plan: Plan, index: int, at: Point) -> Edit:
    """An obstacle at a point, or as near to it as the footprint allows."""
    x, y = edits.nearest_inside(plan.space.footprint, at)
    stopped = "" if math.dist((x, y), at) < 1e-6 else OBSTACLE_INSIDE
    return Edit(edits.change_obstacle(plan, index, x=x, y=y), "Move obstacle", stopped)


def shifted_wall(plan: Plan, wall: int, by: Point, step: float | None) -> Plan:
    """A wall moved along its normal only, its distance from the origin on the grid."""
    nx, ny = wall_normal(plan, wall)
    start = plan.space.footprint[wall]
    old = start[0] * nx + start[1] * ny
    move = snapped(old + by[0] * nx + by[1] * ny, step) - old
    moved = edits.move_wall(plan, wall, move * nx, move * ny)
    # Rounding away the last bits of the sum keeps grid numbers clean in the file.
    count = plan.space.wall_count
    for k in (wall, (wall + 1) % count):
        x, y = moved.space.footprint[k]
        moved = edits.move_corner(moved, k, (round(x, 7), round(y, 7)))
    return moved


def point_on_wall(plan: Plan, wall: int, near: Point, step: float | None) -> Point:
    """Where a new corner falls on a wall: on the grid along upright and level walls."""
    start, end = plan.space.wall(wall)
    x, y = nearest_on_segment(near, start, end)
    if abs(start[1] - end[1]) < 1e-9:
        x = snapped(x, step)
    elif abs(start[0] - end[0]) < 1e-9:
        y = snapped(y, step)
    return round(x, 7), round(y, 7)


def nudged(plan: Plan, item: Item, by: Point) -> Edit:
    """An item moved by arrow keys.

    Raises
    ------
    ValueError
        If the plan cannot be built or the item does not move.
    """
    index = item.index
    if item.part is Part.CORNER:
        x, y = plan.space.footprint[index]
        target = (round(x + by[0], 7), round(y + by[1], 7))
        return outlined(plan, edits.move_corner(plan, index, target), "Move corner")
    if item.part is Part.WALL:
        return outlined(plan, shifted_wall(plan, index, by, None), "Move wall")
    if item.part is Part.LAMP:
        lamp = plan.lamps[index]
        target = (round(lamp.x + by[0], 7), round(lamp.y + by[1], 7))
        return moved_lamp(plan, index, target)
    if item.part is Part.OBSTACLE:
        obstacle = plan.obstacles[index]
        target = (round(obstacle.x + by[0], 7), round(obstacle.y + by[1], 7))
        return moved_obstacle(plan, index, target)
    raise ValueError(f"a {item.part} does not move by arrow keys.")


def turned_lamp(plan: Plan, index: int, by_deg: float) -> Edit:
    """A lamp turned by so many degrees, counter-clockwise."""
    turned = whole_turn(plan.lamps[index].rotation_deg + by_deg)
    return Edit(edits.change_lamp(plan, index, rotation_deg=turned), "Rotate lamp")


def levelled(plan: Plan, index: int) -> Edit:
    """Every lamp as high as this one."""
    height = plan.lamps[index].hanging_height
    level = edits.each_lamp(plan, lambda lamp: edits.changed(lamp, hanging_height=height))
    return Edit(level, "Set height of all lamps")


def turned_obstacle(plan: Plan, index: int, by_deg: float) -> Edit:
    """An obstacle turned by so many degrees, counter-clockwise."""
    turned = whole_turn(plan.obstacles[index].rotation_deg + by_deg)
    return Edit(edits.change_obstacle(plan, index, rotation_deg=turned), "Rotate obstacle")


def dragged_section(
    section: Section,
    part: Part,
    by: Point,
    step: float | None,
    bounds: tuple[float, float, float, float],
) -> Section:
    """The section line with an end, or the whole, moved; it stays within the bounds.

    An end that would fall onto the other (closer than 1 cm) leaves the line as it was.
    """
    x0, y0, x1, y1 = bounds

    def kept(point: Point) -> Point:
        return min(max(point[0], x0), x1), min(max(point[1], y0), y1)

    start, end = section
    if part is Part.SECTION:
        dx = min(max(by[0], x0 - min(start[0], end[0])), x1 - max(start[0], end[0]))
        dy = min(max(by[1], y0 - min(start[1], end[1])), y1 - max(start[1], end[1]))
        new_start = snapped_point((start[0] + dx, start[1] + dy), step)
        new_start = kept(new_start)
        shift = (new_start[0] - start[0], new_start[1] - start[1])
        moved = (new_start, kept((end[0] + shift[0], end[1] + shift[1])))
    elif part is Part.SECTION_START:
        moved = (kept(snapped_point((start[0] + by[0], start[1] + by[1]), step)), end)
    else:
        moved = (start, kept(snapped_point((end[0] + by[0], end[1] + by[1]), step)))
    return moved if math.dist(*moved) >= 0.01 else section


# -- What the context menu of the plan view offers on each item. No Qt here ------------


@dataclass(frozen=True)
class Choice:
    """An entry of the menu: its text, the edit it makes, what is in hand afterwards."""

    text: str
    make: Callable[[], Edit]
    then: Item | None = None


def added_corner(plan: Plan, wall: int, near: Point, step: float | None) -> Edit:
    """A corner added to a wall, as near to a point as wall and grid allow."""
    at = point_on_wall(plan, wall, near, step)
    return outlined(plan, edits.add_corner(plan, wall, at), "Add corner")


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
        return outlined(plan, edits.remove_corner(plan, item.index), "Remove corner")
    return None


def choices(plan: Plan, item: Item, at: Point, step: float) -> tuple[Choice, ...]:
    """The entries for an item, for a menu called at a world point."""
    index = item.index
    if item.part is Part.WALL:
        return _wall_choices(plan, index, at, step)
    if item.part is Part.CORNER:
        return (
            Choice(
                "Cut off this corner",
                lambda: outlined(plan, edits.cut_corner(plan, index), "Cut off corner"),
                Item(Part.WALL, index),
            ),
            Choice(
                "Remove corner",
                lambda: outlined(plan, edits.remove_corner(plan, index), "Remove corner"),
            ),
        )
    if item.part in {Part.LAMP, Part.TURN}:
        lamp = Item(Part.LAMP, index)
        level = Choice("All lamps to this height", lambda: levelled(plan, index), lamp)
        return (
            *([level] if len({one.hanging_height for one in plan.lamps}) > 1 else []),
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


# -- The plan drawing in words, for screen readers -------------------------------------


def plan_in_words(
    plan: Plan,
    section: Section,
    unit: LengthUnit,
    focused: Item | None,
    estimate: Estimate | None,
) -> str:
    """What the plan view shows: size, walls, lamps, light, and the item in hand."""
    x0, y0, x1, y1 = plan.space.bounds

    def length(metres: float) -> str:
        return format_length(metres, unit)

    parts = [
        f"Plan of a space of {plan.space.wall_count} walls, {length(x1 - x0)} wide and "
        f"{length(y1 - y0)} deep."
    ]
    if not plan.lamps:
        parts.append("No lamp hangs in it.")
    for number, lamp in enumerate(plan.lamps, start=1):
        parts.append(
            f"Lamp {number}, {lamp.label or lamp.model.name}, hangs at x {length(lamp.x)}, "
            f"y {length(lamp.y)}."
        )
    parts += [
        f"{obstacle.name} stands at x {length(obstacle.x)}, y {length(obstacle.y)}, "
        f"{length(obstacle.underside)} to {length(obstacle.top)} above the floor."
        for obstacle in plan.obstacles
    ]
    if estimate is not None and math.isfinite(estimate.figures.mean):
        figures = estimate.figures
        parts.append(
            f"The light on the canopy runs from {ppfd(figures.minimum)} to "
            f"{ppfd(figures.maximum)}, on average {ppfd(figures.mean)} "
            "micromoles per square metre and second."
        )
    if focused is not None:
        parts.append(f"In hand: {item_in_words(plan, focused, section, unit)}.")
    return " ".join(parts)


def item_in_words(plan: Plan, item: Item, section: Section, unit: LengthUnit) -> str:
    """One item: what it is, and where or how long."""

    def spot(x: float, y: float) -> str:
        return f"x {format_length(x, unit)}, y {format_length(y, unit)}"

    if item.part in {Part.LAMP, Part.TURN}:
        lamp = plan.lamps[item.index]
        return f"lamp {item.index + 1} at {spot(lamp.x, lamp.y)}, turned by {lamp.rotation_deg:g}°"
    if item.part in {Part.OBSTACLE, Part.TURN_OBSTACLE}:
        obstacle = plan.obstacles[item.index]
        turned = f", turned by {obstacle.rotation_deg:g}°" if obstacle.rotation_deg else ""
        return f"{obstacle.name} at {spot(obstacle.x, obstacle.y)}{turned}"
    if item.part is Part.CORNER:
        return f"corner {item.index + 1} at {spot(*plan.space.footprint[item.index])}"
    if item.part is Part.WALL:
        cover = plan.walls[item.index]
        names = ", ".join(plan.lining(band.lining).name for band in cover.bands)
        door = ", the door" if plan.space.door == item.index else ""
        long = format_length(plan.space.wall_length(item.index), unit)
        return f"wall {item.index + 1}{door}, {long} long, lined with {names}"
    return f"section line from {spot(*section[0])} to {spot(*section[1])}"
