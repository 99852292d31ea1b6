"""Drags on the plan view: from where the hand is to the plan it means. No Qt here."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass, replace

from planner.app.canvas.items import Item, Part, wall_normal
from planner.plan import edits, groups
from planner.plan.alignment import Guide, foot, lined_up
from planner.plan.changes import in_words, moved_besides
from planner.plan.dials import Dial, dial
from planner.plan.groups import Chosen, thing_at, whole_turn
from planner.plan.place import Place, PlaceKind, every
from planner.plan.plan import Plan
from planner.plan.space import Point
from planner.plan.tiers import hangs
from planner.units import said_length

TURN_STEP_DEG = 15.0
INSIDE = {
    PlaceKind.LAMP: "The middle of a lamp stays inside the walls.",
    PlaceKind.OBSTACLE: "The middle of an obstacle stays inside the walls.",
}
ALL_INSIDE = "The middles of all that moves stay inside the walls."


@dataclass(frozen=True)
class Hold:
    """How the hand holds.

    ``step`` of the snapping grid in metres (None: free), ``fine`` for small steps of turning,
    ``reach`` in metres within which what is moved lines up with what stands there.
    """

    step: float | None
    fine: bool = False
    reach: float = 0.0


@dataclass(frozen=True)
class Edit:
    """A finished edit: the plan, the name of its undo step, and what is to be said about it.

    ``stopped`` says what stopped it short and is gone when the hand lets go; ``took`` what it
    took along, and stays. ``guides`` are what it lines up with.
    """

    plan: Plan
    label: str
    stopped: str = ""
    took: str = ""
    guides: tuple[Guide, ...] = ()


@dataclass(frozen=True)
class Number:
    """A number that a drag sets, and that can be typed meanwhile."""

    dial: Dial
    place: Place

    def now(self, plan: Plan) -> float:
        """What it is in a plan."""
        return self.dial.get(plan, self.place) or 0.0


def snapped(value: float, step: float | None) -> float:
    """The nearest line of an absolute grid; the value itself without a step."""
    if step is None:
        return value
    # Seven digits keep 0.1 µm: enough for half inches, and no 0.30000000000000004 in files.
    return round(round(value / step) * step, 7)


def snapped_point(point: Point, step: float | None) -> Point:
    """Both coordinates on the grid."""
    return snapped(point[0], step), snapped(point[1], step)


_NUMBERS = {
    Part.LAMP: ("lamp-x", "lamp-y"),
    Part.OBSTACLE: ("obstacle-x", "obstacle-y"),
    Part.CORNER: ("corner-x", "corner-y"),
    Part.TURN: ("lamp-rotation",),
    Part.TURN_OBSTACLE: ("obstacle-rotation",),
}


@dataclass(frozen=True)
class PlanDrag:
    """A drag of one item that began at a world point; every move starts from ``plan``.

    A lamp or obstacle takes along what is selected with it: ``among``, itself first.
    """

    plan: Plan
    item: Item
    grabbed: Point
    among: Chosen = ()

    @property
    def numbers(self) -> tuple[Number, ...]:
        """What can be typed: both coordinates, the direction, or a length the wall ends."""
        place = self.item.place
        if self.item.part is Part.WALL:
            before = (self.item.index - 1) % self.plan.space.wall_count
            return (Number(dial("wall-length"), Place(PlaceKind.WALL, before)),)
        keys = _NUMBERS.get(self.item.part, ())
        return () if place is None else tuple(Number(dial(key), place) for key in keys)

    @property
    def _places(self) -> Chosen:
        place = self.item.place
        return self.among or (() if place is None else (place.whole,))

    def to(self, at: Point, hold: Hold) -> Edit:
        """The plan with the item dragged to a world point.

        Raises
        ------
        ValueError
            If that plan cannot be built (a self-crossing footprint, say).
        """
        by = at[0] - self.grabbed[0], at[1] - self.grabbed[1]
        part = self.item.part
        if part is Part.WALL:
            moved = shifted_wall(self.plan, self.item.index, by, hold.step)
            return outlined(self.plan, moved, "Move wall")
        if part in {Part.TURN, Part.TURN_OBSTACLE}:
            thing = thing_at(self.plan, self._places[0])
            angle = math.degrees(math.atan2(at[1] - thing.y, at[0] - thing.x))
            step = 1.0 if hold.fine else TURN_STEP_DEG
            return self._turned_to(whole_turn(round(angle / step) * step))
        if part not in {Part.CORNER, Part.LAMP, Part.OBSTACLE}:
            raise ValueError(f"a {part} cannot be dragged.")
        x, y = self._from()
        target = snapped_point((x + by[0], y + by[1]), hold.step)
        if part is Part.CORNER or not hold.reach:
            return self._put(target)
        drawn, guides = lined_up(self.plan, self._places, (x + by[0], y + by[1]), hold.reach)
        # What is not drawn to a line lies on the grid.
        free = (x + by[0], y + by[1])
        spot = tuple(
            line if line != hand else grid
            for line, hand, grid in zip(drawn, free, target, strict=True)
        )
        edit = self._put((spot[0], spot[1]))
        return edit if edit.stopped else replace(edit, guides=guides)

    def typed(self, values: tuple[float | None, ...], at: Point) -> Edit:
        """The plan with numbers as typed; the hand at a world point says the others.

        Raises
        ------
        ValueError
            If a number lies outside its bounds or the plan cannot be built.
        """
        asked = [
            None
            if value is None
            else number.dial.bounded(self.plan, number.place).checked(value, number.dial.label)
            for number, value in zip(self.numbers, values, strict=True)
        ]
        if self.item.part is Part.WALL:
            number, wanted = self.numbers[0], asked[0]
            nx, ny = wall_normal(self.plan, self.item.index)
            start, end = self.plan.space.wall(number.place.index)
            length = math.dist(start, end)
            lean = ((end[0] - start[0]) * nx + (end[1] - start[1]) * ny) / length
            if abs(lean) < 0.05:
                raise ValueError("this wall's place does not follow from the wall before it.")
            move = ((wanted or length) - length) * lean
            moved = shifted_wall(self.plan, self.item.index, (move * nx, move * ny), None)
            return outlined(self.plan, moved, "Move wall")
        if self.item.part in {Part.TURN, Part.TURN_OBSTACLE}:
            return self._turned_to(whole_turn(asked[0] or 0.0))
        x, y = self._from()
        hand = (x + at[0] - self.grabbed[0], y + at[1] - self.grabbed[1])
        spot = [
            own if own is not None else by_hand for own, by_hand in zip(asked, hand, strict=True)
        ]
        return self._put((round(spot[0], 7), round(spot[1], 7)))

    def _from(self) -> Point:
        if self.item.part is Part.CORNER:
            return self.plan.space.footprint[self.item.index]
        thing = thing_at(self.plan, self._places[0])
        return thing.x, thing.y

    def _put(self, target: Point) -> Edit:
        if self.item.part is Part.CORNER:
            moved = edits.move_corner(self.plan, self.item.index, target)
            return outlined(self.plan, moved, "Move corner")
        return moved_to(self.plan, self._places, target)

    def _turned_to(self, angle: float) -> Edit:
        places = self._places
        by = angle - thing_at(self.plan, places[0]).rotation_deg
        return turned(self.plan, places, by)


def outlined(before: Plan, after: Plan, label: str) -> Edit:
    """An edit of the outline, that says which lamps and obstacles had to come inside with it."""
    names, sentence = moved_besides(before, after)
    return Edit(after, f"{label} with {names}" if names else label, took=sentence)


def moved_to(plan: Plan, places: Chosen, to: Point) -> Edit:
    """The leader's middle at a point, or as near to it as the walls allow, the others with it."""
    lead = thing_at(plan, places[0])
    after = groups.moved(plan, places, (to[0] - lead.x, to[1] - lead.y))
    now = thing_at(after, places[0])
    stopped = ""
    if math.dist((now.x, now.y), to) > 1e-6:
        stopped = INSIDE[places[0].kind] if len(places) == 1 else ALL_INSIDE
    return Edit(after, groups.named("Move", places), stopped)


def moved_by(plan: Plan, places: Chosen, by: Point) -> Edit:
    """All of them shifted by arrow keys."""
    lead = thing_at(plan, places[0])
    return moved_to(plan, places, (round(lead.x + by[0], 7), round(lead.y + by[1], 7)))


def turned(plan: Plan, places: Chosen, by_deg: float) -> Edit:
    """All of them turned by so many degrees, counter-clockwise, about the leader."""
    return Edit(groups.turned(plan, places, by_deg), groups.named("Rotate", places))


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
    x, y = foot(near, start, end)
    if abs(start[1] - end[1]) < 1e-9:
        x = snapped(x, step)
    elif abs(start[0] - end[0]) < 1e-9:
        y = snapped(y, step)
    return round(x, 7), round(y, 7)


def nudged(plan: Plan, item: Item, by: Point, among: Chosen = ()) -> Edit:
    """An item moved by arrow keys, with what is selected with it.

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
    if item.part in {Part.LAMP, Part.OBSTACLE} and item.place is not None:
        return moved_by(plan, among or (item.place,), by)
    raise ValueError(f"a {item.part} does not move by arrow keys.")


def levelled(plan: Plan, index: int) -> Edit:
    """Every lamp as high as this one over the canopy beneath it, where there is room."""
    lead = Place(PlaceKind.LAMP, index)
    places = tuple(dict.fromkeys((lead, *every(plan, PlaceKind.LAMP))))
    after, left = groups.levelled(plan, places)
    done, high = len(places) - len(left), said_length(hangs(plan, plan.lamps[index]))
    took = f"All {done} lamps hang {high} over the canopy beneath."
    if left:
        took = (
            f"{done} of {len(places)} lamps hang {high} over the canopy beneath. "
            f"No room so high: {in_words(plan, left)}."
        )
    return Edit(after, "Set height of all lamps", took=took)


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


def removed(plan: Plan, item: Item, among: Chosen = ()) -> Edit | None:
    """The plan without lamps, obstacles or a corner; None for what cannot be taken away."""
    place = item.place
    if place is not None and groups.can_be_chosen(place):
        places = among or (place,)
        return Edit(groups.removed(plan, places), groups.named("Remove", places))
    if item.part is Part.CORNER:
        return outlined(plan, edits.remove_corner(plan, item.index), "Remove corner")
    return None


def choices(
    plan: Plan, item: Item, at: Point, step: float, among: Chosen = ()
) -> tuple[Choice, ...]:
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
    place = item.place
    if place is not None and groups.can_be_chosen(place):
        return thing_choices(plan, among or (place,))
    return ()


def thing_choices(plan: Plan, places: Chosen, *, turned_too: bool = True) -> tuple[Choice, ...]:
    """The entries for lamps and obstacles, the one that leads first."""
    lead = places[0]
    here = Item.of(lead)

    def turn(by_deg: float) -> Choice:
        return Choice(f"Rotate by {by_deg:g}°", lambda: turned(plan, places, by_deg), here)

    level = Choice("All lamps to this height", lambda: levelled(plan, lead.index), here)
    uneven = len({hangs(plan, one) for one in plan.lamps}) > 1
    away, text = groups.removed(plan, places), groups.named("Remove", places)
    carries = lead.kind is PlaceKind.OBSTACLE and plan.obstacles[lead.index].canopy is not None
    return (
        *([judging(plan, lead)] if carries and len(places) == 1 else []),
        *([level] if lead.kind is PlaceKind.LAMP and uneven else []),
        *([turn(15.0), turn(90.0)] if turned_too else []),
        Choice(text, lambda: Edit(away, text)),
    )


def judging(plan: Plan, place: Place) -> Choice:
    """Judging the plan by the canopy at a place; by its own again where it already is so."""
    item, own = Item.of(place), place.kind is PlaceKind.CANOPY or plan.judged_top == place.index
    text = "Judge the plan by its own canopy" if own else "Judge the plan by this canopy"
    return Choice(
        text, lambda: Edit(edits.judge_by(plan, None if own else place.index), text), item
    )


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
