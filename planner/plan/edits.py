"""Edits: pure functions from one plan to the next, each one undo step.

Every function returns a new, validated plan or raises ``ValueError`` (pydantic's
``ValidationError`` is one) when the result could not be built; nothing is changed then.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from typing import Any, Final, TypeVar

from planner.plan.lamp import Lamp
from planner.plan.lining import OPENING, OPENING_KEY, Band, Lining, WallCover
from planner.plan.plan import Plan, Setup
from planner.plan.quantity import HANGING_HEIGHT, HEIGHT, SPACE_HEIGHT, Quantity, Value
from planner.plan.space import (
    CarriedCanopy,
    Obstacle,
    Point,
    Space,
    contains,
    signed_area,
)
from planner.plan.target import PpfdTarget
from planner.units import said_length

_Setup = TypeVar("_Setup", bound=Setup)
"""A plan, or the setup of a variant: both are edited alike."""
_Value = TypeVar("_Value", bound=Value)
_Placed = TypeVar("_Placed", Lamp, Obstacle)


def changed(value: _Value, **parts: Any) -> _Value:
    """A plan, or a value in it, with some of its parts replaced, validated as a whole."""
    there = {name: getattr(value, name) for name in type(value).model_fields}
    return type(value).model_validate({**there, **parts})


def with_space(plan: _Setup, **parts: Any) -> _Setup:
    """Replace parts of the space that keep the number of walls (height, door)."""
    return changed(plan, space=changed(plan.space, **parts))


# -- footprint --------------------------------------------------------------------------


def move_corner(plan: _Setup, index: int, to: Point) -> _Setup:
    """Move one corner of the footprint; lamps left outside are brought back in."""
    corners = list(plan.space.footprint)
    corners[index] = to
    return _with_footprint(plan, tuple(corners), plan.walls, plan.space.door)


def move_wall(plan: _Setup, index: int, dx: float, dy: float) -> _Setup:
    """Move a wall and its two corners by (dx, dy); the neighbours stretch."""
    corners = list(plan.space.footprint)
    for k in (index, (index + 1) % len(corners)):
        corners[k] = (corners[k][0] + dx, corners[k][1] + dy)
    return _with_footprint(plan, tuple(corners), plan.walls, plan.space.door)


def add_corner(plan: _Setup, wall: int, at: Point) -> _Setup:
    """Split a wall at a point; both parts keep its lining, and the longer one the door."""
    start, end = plan.space.wall(wall)
    corners = (*plan.space.footprint[: wall + 1], at, *plan.space.footprint[wall + 1 :])
    walls = (*plan.walls[: wall + 1], plan.walls[wall], *plan.walls[wall + 1 :])
    door = plan.space.door
    second_is_longer = math.dist(at, end) > math.dist(start, at)
    if door is not None and (door > wall or (door == wall and second_is_longer)):
        door += 1
    return _with_footprint(plan, corners, walls, door)


def cut_corner(plan: _Setup, index: int, cut: float | None = None) -> _Setup:
    """Cut a corner off, as far along both of its walls as ``cut`` says, in metres.

    A third of the shorter wall when left out. The new wall carries the lining of the wall
    that ends at the corner; everything else of the outline stays.
    """
    corners = plan.space.footprint
    before, corner = corners[index - 1], corners[index]
    after = corners[(index + 1) % len(corners)]
    room = min(math.dist(before, corner), math.dist(corner, after))
    if cut is None:
        cut = room / 3
    if not 0 < cut < room:
        raise ValueError(
            f"{said_length(cut)} cannot be cut off here: the shorter of the two walls is "
            f"{said_length(room)} long."
        )

    def towards(end: Point) -> Point:
        share = cut / math.dist(corner, end)
        return corner[0] + (end[0] - corner[0]) * share, corner[1] + (end[1] - corner[1]) * share

    made = (*corners[:index], towards(before), towards(after), *corners[index + 1 :])
    walls = (*plan.walls[:index], plan.walls[index - 1], *plan.walls[index:])
    door = plan.space.door
    if door is not None and door >= index:
        door += 1
    return _with_footprint(plan, made, walls, door)


def remove_corner(plan: _Setup, index: int) -> _Setup:
    """Take a corner out; the wall that ended there runs on to the next corner."""
    if plan.space.wall_count <= 3:
        raise ValueError("a footprint needs at least three corners.")
    corners = plan.space.footprint[:index] + plan.space.footprint[index + 1 :]
    walls = plan.walls[:index] + plan.walls[index + 1 :]
    door = plan.space.door
    if door is not None and door == index:
        door = (index - 1) % len(corners)
    elif door is not None and door > index:
        door -= 1
    return _with_footprint(plan, corners, walls, door)


def set_footprint(plan: _Setup, corners: tuple[Point, ...]) -> _Setup:
    """Replace the whole outline; walls beyond the old count take the first wall's lining."""
    if signed_area(corners) < 0:
        corners = tuple(reversed(corners))
    walls = tuple(plan.walls[min(k, len(plan.walls) - 1)] for k in range(len(corners)))
    door = plan.space.door
    if door is not None and door >= len(corners):
        door = None
    return _with_footprint(plan, corners, walls, door)


def set_size(plan: _Setup, width: float, depth: float) -> _Setup:
    """Stretch the footprint to a bounding size, keeping its lower left corner; lamps follow."""
    x0, y0, x1, y1 = plan.space.bounds
    sx, sy = width / (x1 - x0), depth / (y1 - y0)
    corners = tuple((x0 + (x - x0) * sx, y0 + (y - y0) * sy) for x, y in plan.space.footprint)

    def moved(thing: _Placed) -> _Placed:
        return changed(thing, x=x0 + (thing.x - x0) * sx, y=y0 + (thing.y - y0) * sy)

    space = changed(plan.space, footprint=corners)
    lamps = tuple(moved(lamp) for lamp in plan.lamps)
    obstacles = tuple(moved(obstacle) for obstacle in plan.obstacles)
    return changed(plan, space=space, lamps=lamps, obstacles=obstacles)


def set_wall_length(plan: _Setup, wall: int, length: float) -> _Setup:
    """Give a wall a length: its far part of the outline moves along the wall's direction.

    Corners on the far side of the wall's start, measured along the wall, move with its
    end, so that a rectangle stays a rectangle and an L stays an L.
    """
    (ax, ay), (bx, by) = plan.space.wall(wall)
    old = plan.space.wall_length(wall)
    ux, uy = (bx - ax) / old, (by - ay) / old
    shift = length - old
    limit = ax * ux + ay * uy + old - 1e-9
    corners = tuple(
        (x + ux * shift, y + uy * shift) if x * ux + y * uy >= limit else (x, y)
        for x, y in plan.space.footprint
    )
    return _with_footprint(plan, corners, plan.walls, plan.space.door)


def _with_footprint(
    plan: _Setup, corners: tuple[Point, ...], walls: tuple[WallCover, ...], door: int | None
) -> _Setup:
    door_open = plan.space.door_open and door is not None
    space = changed(plan.space, footprint=corners, door=door, door_open=door_open)
    lamps = tuple(_brought_inside(lamp, space) for lamp in plan.lamps)
    obstacles = tuple(_brought_inside(obstacle, space) for obstacle in plan.obstacles)
    return changed(plan, space=space, walls=walls, lamps=lamps, obstacles=obstacles)


def _brought_inside(thing: _Placed, space: Space) -> _Placed:
    if contains(space.footprint, thing.x, thing.y):
        return thing
    x, y = nearest_inside(space.footprint, (thing.x, thing.y))
    return changed(thing, x=x, y=y)


def nearest_inside(footprint: tuple[Point, ...], point: Point) -> Point:
    """The point itself if inside, else the nearest point a centimetre inside the outline."""
    if contains(footprint, *point):
        return point
    best, best_distance = footprint[0], math.inf
    for (x0, y0), (x1, y1) in zip(footprint, footprint[1:] + footprint[:1], strict=True):
        length = math.hypot(x1 - x0, y1 - y0)
        ux, uy = (x1 - x0) / length, (y1 - y0) / length
        along = (point[0] - x0) * ux + (point[1] - y0) * uy
        for margin in (0.01, 0.001):
            inset = min(margin, length / 2)
            t = min(max(along, inset), length - inset)
            candidate = (x0 + t * ux - margin * uy, y0 + t * uy + margin * ux)
            if contains(footprint, *candidate):
                # the smaller margin is only for corners too sharp for the larger one
                distance = math.dist(candidate, point)
                if distance < best_distance:
                    best, best_distance = candidate, distance
                break
    return best


# -- lamps ------------------------------------------------------------------------------


def add_lamp(plan: _Setup, lamp: Lamp) -> _Setup:
    """Hang one more lamp."""
    return changed(plan, lamps=(*plan.lamps, lamp))


def remove_lamp(plan: _Setup, index: int) -> _Setup:
    """Take a lamp down."""
    return changed(plan, lamps=plan.lamps[:index] + plan.lamps[index + 1 :])


def change_lamp(plan: _Setup, index: int, **parts: Any) -> _Setup:
    """Replace parts of one lamp (x, y, hanging_height, rotation_deg, output_percent, model)."""
    lamps = list(plan.lamps)
    lamps[index] = changed(lamps[index], **parts)
    return changed(plan, lamps=tuple(lamps))


def change_kind(plan: _Setup, key: str, **parts: Any) -> _Setup:
    """Replace parts of the model of all lamps of one kind."""
    lamps = tuple(
        changed(lamp, model=changed(lamp.model, **parts)) if lamp.model.key == key else lamp
        for lamp in plan.lamps
    )
    return changed(plan, lamps=lamps)


# -- obstacles --------------------------------------------------------------------------


def add_obstacle(plan: _Setup, obstacle: Obstacle, *linings: Lining) -> _Setup:
    """Put one more obstacle into the space."""
    return _relined(plan, linings, obstacles=(*plan.obstacles, obstacle))


def remove_obstacle(plan: _Setup, index: int) -> _Setup:
    """Take an obstacle away."""
    return _relined(plan, (), obstacles=plan.obstacles[:index] + plan.obstacles[index + 1 :])


def change_obstacle(plan: _Setup, index: int, *linings: Lining, **parts: Any) -> _Setup:
    """Replace parts of one obstacle (x, y, underside, length, ..., lining)."""
    obstacles = list(plan.obstacles)
    obstacles[index] = changed(obstacles[index], **parts)
    return _relined(plan, linings, obstacles=tuple(obstacles))


def change_carried(plan: _Setup, index: int, **parts: Any) -> _Setup:
    """Let an obstacle carry a canopy, or replace parts of the one it carries."""
    carried = plan.obstacles[index].canopy or CarriedCanopy()
    return change_obstacle(plan, index, canopy=changed(carried, **parts))


def judge_by(plan: _Setup, index: int | None) -> _Setup:
    """Judge a plan by the canopy on an obstacle; None: by its own."""
    for k, one in enumerate(plan.obstacles):
        if (one.canopy is not None and one.canopy.judged) or k == index:
            plan = change_carried(plan, k, judged=k == index)
    return plan


def set_own_target(plan: Plan, index: int, *, own: bool) -> Plan:
    """Give the canopy on an obstacle a band of its own, at first the plan's, or take it away."""
    if not own:
        return change_carried(plan, index, target=None)
    band = None if plan.target is None else plan.target.ppfd_band(plan.photoperiod_hours)
    low, high = (round(end) for end in band or _USUAL_BAND)
    return change_carried(plan, index, target=PpfdTarget(low=low, high=max(high, low + 1)))


_USUAL_BAND = (150.0, 250.0)
"""µmol m⁻² s⁻¹, where none is wanted yet: for young plants and herbs, common practice."""


# -- surfaces ---------------------------------------------------------------------------


def line_wall(plan: _Setup, wall: int, band: int, lining: Lining) -> _Setup:
    """Put a lining on one band of a wall, clean."""
    bands = list(plan.walls[wall].bands)
    bands[band] = Band(lining=lining.key, top=bands[band].top)
    return set_wall_cover(plan, wall, WallCover(bands=tuple(bands)), lining)


def set_wall_cover(plan: _Setup, wall: int, cover: WallCover, *linings: Lining) -> _Setup:
    """Replace all bands of a wall; ``linings`` are added to the plan where missing."""
    walls = (*plan.walls[:wall], cover, *plan.walls[wall + 1 :])
    return _relined(plan, linings, walls=walls)


def line_all_walls(plan: _Setup, lining: Lining) -> _Setup:
    """Put one lining on every wall, over its whole height."""
    walls = tuple(WallCover.plain(lining.key) for _ in plan.walls)
    return _relined(plan, (lining,), walls=walls)


def line_ceiling(plan: _Setup, lining: Lining) -> _Setup:
    """Put a lining on the ceiling."""
    return _relined(plan, (lining,), ceiling=lining.key)


def without_walls(plan: _Setup) -> _Setup:
    """The same without walls and ceiling, in a dark room: open air.

    Nobody says how light the room is on the other sides than the door's.
    """
    dark = with_space(plan, room_light=0.0)
    return line_ceiling(line_all_walls(dark, OPENING), OPENING)


def line_floor(plan: _Setup, lining: Lining) -> _Setup:
    """Put a lining on the floor."""
    return _relined(plan, (lining,), floor=lining.key)


def split_band(plan: _Setup, wall: int, band: int, at: float) -> _Setup:
    """Divide a band of a wall at a height above the floor; both parts keep the lining."""
    bands = plan.walls[wall].bands
    lower = changed(bands[band], top=at)
    return set_wall_cover(plan, wall, WallCover(bands=(*bands[:band], lower, *bands[band:])))


def merge_band(plan: _Setup, wall: int, band: int) -> _Setup:
    """Take the upper edge of a band away: it grows up through the band above."""
    bands = list(plan.walls[wall].bands)
    if band + 1 >= len(bands):
        raise ValueError("the uppermost band has no edge above it to take away.")
    bands[band : band + 2] = [changed(bands[band], top=bands[band + 1].top)]
    return set_wall_cover(plan, wall, WallCover(bands=tuple(bands)))


def change_band(plan: _Setup, wall: int, band: int, **parts: Any) -> _Setup:
    """Replace parts of one band of a wall (its upper edge, how dirty it is)."""
    bands = list(plan.walls[wall].bands)
    bands[band] = changed(bands[band], **parts)
    return set_wall_cover(plan, wall, WallCover(bands=tuple(bands)))


def change_lining(plan: _Setup, lining: Lining) -> _Setup:
    """Replace the plan's own copy of a lining by one with the same key."""
    linings = tuple(lining if old.key == lining.key else old for old in plan.linings)
    return changed(plan, linings=linings)


def _relined(plan: _Setup, added: tuple[Lining, ...], **parts: Any) -> _Setup:
    """Change covers, bring new linings along and drop those no longer used.

    The plan's own copy of a lining wins over an added one of the same key: a plan may
    hold a calibrated value of its own.
    """
    linings = {lining.key: lining for lining in (*added, *plan.linings)}
    walls = parts.get("walls", plan.walls)
    used = {band.lining for cover in walls for band in cover.bands}
    used |= {obstacle.lining for obstacle in parts.get("obstacles", plan.obstacles)}
    used |= {parts.get("ceiling", plan.ceiling), parts.get("floor", plan.floor)}
    kept = tuple(lining for key, lining in linings.items() if key in used and key != OPENING_KEY)
    return changed(plan, linings=kept, **parts)


# -- heights, canopy, target ------------------------------------------------------------


LEAST_GAP_M: Final = HANGING_HEIGHT.minimum
"""Least distance from a lamp's face or the ceiling down to the canopy."""


def canopy_room(plan: Setup) -> Quantity:
    """How high the canopy may stand under the ceiling and the lamps as they hang."""
    ceiling = plan.space.height
    room = HEIGHT.at_most(ceiling - LEAST_GAP_M, f"the ceiling is at {said_length(ceiling)}")
    for number, lamp in enumerate(plan.lamps, start=1):
        face, least = plan.lamp_height(lamp), lamp.needs[0]
        room = room.at_most(face - least, f"lamp {number} hangs at {said_length(face)}")
    return room


def ceiling_room(plan: Setup) -> Quantity:
    """How low the ceiling may come over the canopy as it stands."""
    height = plan.canopy.height
    return SPACE_HEIGHT.at_least(height + LEAST_GAP_M, f"the canopy is at {said_length(height)}")


def set_canopy_height(plan: _Setup, height: float) -> _Setup:
    """Raise or lower the canopy; lamps stay where they hang, so their distance changes."""
    height = canopy_room(plan).checked(height, "Canopy height")
    lamps = tuple(
        changed(lamp, hanging_height=plan.lamp_height(lamp) - height) for lamp in plan.lamps
    )
    canopy = changed(plan.canopy, height=height)
    return changed(plan, canopy=canopy, lamps=lamps)


def set_canopy(plan: _Setup, **parts: Any) -> _Setup:
    """Replace canopy parts other than the height (closed, reflectance)."""
    return changed(plan, canopy=changed(plan.canopy, **parts))


def set_height(plan: _Setup, height: float) -> _Setup:
    """Raise or lower the ceiling; what is above it comes down, bands above it merge."""
    height = ceiling_room(plan).checked(height, "Inside height")
    room = height - plan.canopy.height
    lamps = tuple(changed(under_ceiling(lamp, room)) for lamp in plan.lamps)
    walls = tuple(_cut_to(cover, height) for cover in plan.walls)
    obstacles = tuple(lowered(obstacle, height) for obstacle in plan.obstacles)
    space = changed(plan.space, height=height)
    lower = changed(plan, space=space, lamps=lamps, obstacles=obstacles)
    return _relined(lower, (), walls=walls)


def under_ceiling(lamp: Lamp, room: float) -> Lamp:
    """The lamp, lowered where it needs more than ``room`` metres from canopy to ceiling."""
    most = room - lamp.needs[1]
    return lamp.model_copy(update={"hanging_height": min(lamp.hanging_height, most)})


def lowered(obstacle: Obstacle, height: float) -> Obstacle:
    """The obstacle, lowered and made thinner where it does not fit under ``height`` metres."""
    thickness = min(obstacle.thickness, height)
    underside = min(obstacle.underside, height - thickness)
    return obstacle.model_copy(update={"thickness": thickness, "underside": underside})


def _cut_to(cover: WallCover, height: float) -> WallCover:
    kept: list[Band] = []
    for band in cover.bands:
        if band.top is None or band.top >= height - 0.005:
            kept.append(changed(band, top=None))
            break
        kept.append(band)
    return WallCover(bands=tuple(kept))


def each_lamp(plan: _Setup, change: Callable[[Lamp], Lamp]) -> _Setup:
    """Apply one change to every lamp."""
    return changed(plan, lamps=tuple(change(lamp) for lamp in plan.lamps))
