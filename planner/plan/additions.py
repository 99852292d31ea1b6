"""What is put into a plan anew: lamps and obstacles to start from, in places where they fit."""

from __future__ import annotations

import json
import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from statistics import fmean
from typing import Final, TypeVar

from planner.plan.edits import (
    add_lamp,
    add_obstacle,
    changed,
    lowered,
    nearest_inside,
    under_ceiling,
)
from planner.plan.groups import Chosen, Thing, extent, thing_at
from planner.plan.lamp import Lamp, LampModel, PanelBody
from planner.plan.lining import OPENING_KEY, Lining
from planner.plan.place import Place, PlaceKind
from planner.plan.plan import Plan, Setup
from planner.plan.quantity import Value
from planner.plan.space import (
    TOUCH_M,
    CarriedCanopy,
    Obstacle,
    Outline,
    Point,
    contains,
    outlines_overlap,
    sticks_out,
)
from planner.plan.tiers import canopy_under, storey
from planner.units import EFFICACY_UNIT

USUAL_HANGING_HEIGHT_M: Final = 0.45
"""18 in, a common first height for a lamp over young plants (common practice, no source)."""

PLAIN_PANEL: Final = LampModel(
    key="plain-panel",
    name="Plain LED panel, 100 W",
    body=PanelBody(length=0.3, width=0.3),
    ppf=250.0,
    watts=100.0,
    source=f"A round figure to start from (typical, from memory): 2.5 {EFFICACY_UNIT}.",
)
"""Hung where the catalogue offers no lamp."""


_Thing = TypeVar("_Thing", bound=Lamp | Obstacle)

_APART_M: Final = 0.02
"""Left free between a thing and its duplicate."""

_PLACES: Final = 24
_SLACK: Final = 2 * TOUCH_M
"""More than a body may stick out and still count as inside."""

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


def free_shift(
    plan: Setup, bodies: Sequence[tuple[Outline, Sequence[Outline]]]
) -> tuple[Point, bool] | None:
    """The shortest shift by which outlines lie inside and on none of the others given with each.

    The second part is False where everything is taken: then it is the shift inside that brings
    the first farthest from its others. None where they fit nowhere on a grid as fine as a
    twenty-fourth of the space.
    """
    x0, y0, x1, y1 = plan.space.bounds
    step = max(x1 - x0, y1 - y0) / _PLACES
    places = [k * step for k in range(-_PLACES, _PLACES + 1)]
    # All together keep to the space's width and depth: of many things few shifts can do.
    xs, ys = zip(*(corner for body, _ in bodies for corner in body), strict=True)
    across, deep = (
        [by for by in places if low - _SLACK <= min(at) + by and max(at) + by <= high + _SLACK]
        for at, low, high in ((xs, x0, x1), (ys, y0, y1))
    )
    grid = [(dx, dy) for dx in across for dy in deep]
    inside: list[Point] = []
    round_all = [
        (_middle_of(body), _radius(body), [(one, _middle_of(one), _radius(one)) for one in others])
        for body, others in bodies
    ]

    def meets(k: int, body: Outline, by: Point) -> bool:
        """Whether a body meets another: looked at closely only where their circles do."""
        (x, y), radius, others = round_all[k]
        at = (x + by[0], y + by[1])
        return any(
            math.dist(at, middle) < radius + reach and outlines_overlap(body, one)
            for one, middle, reach in others
        )

    footprint = plan.space.footprint
    for by in sorted(grid, key=lambda by: math.hypot(*by)):
        if not all(contains(footprint, x + by[0], y + by[1]) for (x, y), _, _ in round_all):
            continue
        shifted = [_shifted(body, by) for body, _ in bodies]
        if any(sticks_out(body, footprint) for body in shifted):
            continue
        if not any(meets(k, body, by) for k, body in enumerate(shifted)):
            return by, True
        inside.append(by)
    if not inside:
        return None
    body, others = bodies[0]
    middle, taken = _middle_of(body), [_middle_of(other) for other in others]

    def apart(by: Point) -> float:
        at = (middle[0] + by[0], middle[1] + by[1])
        return min((math.dist(at, other) for other in taken), default=0.0)

    return max(inside, key=apart), False


def _shifted(outline: Outline, by: Point) -> Outline:
    return tuple((x + by[0], y + by[1]) for x, y in outline)


def _middle_of(outline: Outline) -> Point:
    xs, ys = zip(*outline, strict=True)
    return fmean(xs), fmean(ys)


def _radius(outline: Outline) -> float:
    """Of the circle round an outline; a point has a little, to meet another on it."""
    middle = _middle_of(outline)
    return max(math.dist(middle, corner) for corner in outline) + 0.01


def _others(plan: Setup, thing: Thing) -> list[Outline]:
    """Outlines of what a thing may not lie on: lamps of its tier, obstacles at its height."""
    if isinstance(thing, Lamp):
        under = canopy_under(plan, thing)
        return [other.outline() for other in plan.lamps if canopy_under(plan, other) == under]
    return [other.outline() for other in plan.obstacles if _at_one_height(plan, thing, other)]


def _at(thing: _Thing, place: Point) -> _Thing:
    return changed(thing, x=round(place[0], 4), y=round(place[1], 4))


def new_lamp(plan: Plan, model: LampModel, at: Point | None = None) -> Lamp:
    """A lamp at a usual height or under the ceiling, where there is room for it.

    As near as can be to the place wanted, first the middle; turned across where it has no room
    along.
    """
    room = plan.headroom
    height = min(USUAL_HANGING_HEIGHT_M, 0.9 * room)
    x, y = at or middle(plan)
    return _put_near(plan, Lamp(model=model, x=x, y=y, hanging_height=height), (x, y))[0]


def _put_near(plan: Setup, thing: _Thing, wanted: Point) -> tuple[_Thing, bool]:
    """A thing where there is room for it, as near as can be to a place, and whether there is."""
    others = _others(plan, thing)
    found: list[tuple[bool, _Thing]] = []
    for turn in (0.0, 90.0):
        angle = (thing.rotation_deg + turn) % 360 if turn else thing.rotation_deg
        turned = changed(_at(thing, wanted), rotation_deg=angle)
        shift = free_shift(plan, [(turned.outline(), others)])
        if shift is not None:
            by, free = shift
            found.append((free, _at(turned, (turned.x + by[0], turned.y + by[1]))))
        if found and found[-1][0]:
            break
    best = [put for free, put in found if free]
    return (best or [put for _, put in found] or [thing])[0], bool(best)


# -- copied, as text too, and put beside ------------------------------------------------


class Clip(Value):
    """What is copied: things of a plan under the names a plan's file has for them."""

    lamps: tuple[Lamp, ...] = ()
    obstacles: tuple[Obstacle, ...] = ()
    linings: tuple[Lining, ...] = ()

    @classmethod
    def of(cls, plan: Setup, places: Chosen) -> Clip:
        """The things at these places, with the linings they need."""
        things = [_unjudged(thing_at(plan, place)) for place in sorted(places)]
        obstacles = tuple(thing for thing in things if isinstance(thing, Obstacle))
        used = {obstacle.lining for obstacle in obstacles}
        return cls(
            lamps=tuple(thing for thing in things if isinstance(thing, Lamp)),
            obstacles=obstacles,
            linings=tuple(lining for lining in plan.linings if lining.key in used),
        )

    @classmethod
    def read(cls, text: str) -> Clip:
        """The things in a text: a clip, a whole plan, or a lamp alone.

        Raises
        ------
        ValueError
            If there are none.
        """
        try:
            found = json.loads(text)
            if isinstance(found, dict) and "model" in found:
                clip = cls(lamps=(Lamp.model_validate_json(text),))
            else:
                parts = {name: found[name] for name in cls.model_fields if name in found}
                clip = cls.model_validate_json(json.dumps(parts))
        except (ValueError, TypeError, RecursionError):
            clip = cls()
        if not clip.things:
            raise ValueError(
                "There is nothing to paste: select a lamp or an obstacle, here or in another "
                "plan, and copy it."
            )
        return clip

    @property
    def things(self) -> tuple[Thing, ...]:
        """Lamps and obstacles."""
        return (*self.lamps, *self.obstacles)

    @property
    def places(self) -> Chosen:
        """Their places, were there nothing else."""
        kinds = [PlaceKind.LAMP] * len(self.lamps) + [PlaceKind.OBSTACLE] * len(self.obstacles)
        return tuple(Place(kind, k) for k, kind in enumerate(kinds))


def pasted(plan: Plan, clip: Clip, at: Point | None = None) -> tuple[Plan, Chosen]:
    """Copied things put in as they stand to one another, and their places in the plan.

    Where they were, or with their middle at a point; beside, where that is taken; under this
    ceiling. A shelf with its lamps that has no room beside goes a tier higher. Where they fit
    nowhere together each looks for a place of its own.
    """
    things = [_under(plan, _unjudged(thing)) for thing in clip.things]
    if at is not None:
        centre = _middle_of(tuple((thing.x, thing.y) for thing in things))
        by = (at[0] - centre[0], at[1] - centre[1])
        things = [_at(thing, (thing.x + by[0], thing.y + by[1])) for thing in things]
    return _put(plan, things, clip.linings, _a_tier_higher(plan, things))


def duplicated(plan: Plan, places: Chosen) -> tuple[Plan, Chosen]:
    """A copy of all of them beside, across the leader's longer side where there is room.

    A tier of a rack, a shelf with its lamps, goes above where there is none; a shelf chosen alone
    takes its lamps along there, where they fit.
    """
    things = [_unjudged(thing_at(plan, place)) for place in sorted(places)]
    lead = thing_at(plan, places[0])
    across = lead.rotation_deg + 90
    low, high = extent([thing.outline() for thing in things], across)
    away, angle = max(high - low, 0.05) + _APART_M, math.radians(across)
    by = (away * math.cos(angle), away * math.sin(angle))
    beside = [_at(thing, (thing.x + by[0], thing.y + by[1])) for thing in things]
    above = _a_tier_higher(plan, things)
    if above and len(things) == 1:
        tier = Place(PlaceKind.TOP, places[0].index)
        lamps = [lamp for lamp in plan.lamps if canopy_under(plan, lamp) == tier]
        above = _a_tier_higher(plan, [*things, *lamps]) or above
    return _put(plan, beside, (), above)


def _unjudged(thing: Thing) -> Thing:
    """A thing to be copied: by its canopy the plan is not judged, whatever it was copied from."""
    if isinstance(thing, Lamp) or thing.canopy is None or not thing.canopy.judged:
        return thing
    return changed(thing, canopy=changed(thing.canopy, judged=False))


def _under(plan: Setup, thing: Thing) -> Thing:
    """A thing of another plan, lowered to fit under this ceiling."""
    if isinstance(thing, Lamp):
        return under_ceiling(thing, plan.headroom)
    return lowered(thing, plan.space.height)


def _a_tier_higher(plan: Setup, things: Sequence[Thing]) -> Sequence[Thing]:
    """A shelf, or one with its lamps, a storey up, as often as it takes; empty where none fits.

    Nothing where they are no shelf: what stands on what is under it has no storey.
    """
    shelves = [thing for thing in things if isinstance(thing, Obstacle)]
    if len(shelves) != 1:
        return ()
    by, least = storey(plan, shelves[0]), shelves[0].thickness if len(things) == 1 else 0.0
    if by <= least + _SLACK:
        return ()
    there: list[Thing] = [*plan.lamps, *plan.obstacles]
    while True:
        things = [_raised(thing, by) for thing in things]
        for thing in things:
            if isinstance(thing, Lamp) and thing.hanging_height > plan.hanging_room(thing)[1]:
                return ()
            if isinstance(thing, Obstacle) and thing.top > plan.space.height + _SLACK:
                return ()
        if not any(
            _at_one_height(plan, thing, other)
            and outlines_overlap(thing.outline(), other.outline())
            for thing in things
            for other in there
        ):
            return things


def _raised(thing: Thing, by: float) -> Thing:
    if isinstance(thing, Lamp):
        return changed(thing, hanging_height=round(thing.hanging_height + by, 7))
    return changed(thing, underside=round(thing.underside + by, 7))


def _at_one_height(plan: Setup, one: Thing, other: Thing) -> bool:
    (low, high), (under, over) = _heights(plan, one), _heights(plan, other)
    return low < over and under < high


def _heights(plan: Setup, thing: Thing) -> tuple[float, float]:
    """Lowest and highest point of a thing above the floor, metres."""
    if isinstance(thing, Obstacle):
        return thing.underside, thing.top
    (low, high), face = thing.rise, plan.lamp_height(thing)
    return face + low, face + high


def _put(
    plan: Plan, things: Sequence[Thing], linings: Sequence[Lining], above: Sequence[Thing]
) -> tuple[Plan, Chosen]:
    """Things put in near where they are, together where that can be; their new places.

    Those of ``above`` instead, where together is nowhere. Obstacles go where they meet no other.
    """
    footprint, settled = plan.space.footprint, False
    if len(things) > 1:
        shift = free_shift(plan, [(thing.outline(), _others(plan, thing)) for thing in things])
        if shift is not None and shift[1]:
            (dx, dy), settled = shift
            things = [_at(thing, (thing.x + dx, thing.y + dy)) for thing in things]
    elif above:
        only = things[0]
        put, settled = _put_near(plan, only, nearest_inside(footprint, (only.x, only.y)))
        things = [put]
    if not settled and above:
        things, settled = above, True
    made: list[Place] = []
    for thing in things:
        put, free = thing, settled
        if not settled:
            put, free = _put_near(plan, thing, nearest_inside(footprint, (thing.x, thing.y)))
        if not contains(footprint, put.x, put.y) or (isinstance(put, Obstacle) and not free):
            raise ValueError("there is no room for one more, neither beside it nor above.")
        if isinstance(put, Lamp):
            made.append(Place(PlaceKind.LAMP, len(plan.lamps)))
            plan = add_lamp(plan, put)
        else:
            made.append(Place(PlaceKind.OBSTACLE, len(plan.obstacles)))
            plan = add_obstacle(plan, put, *linings)
    return plan, tuple(made)


@dataclass(frozen=True)
class Shape:
    """A kind of obstacle to start from: its size in metres, and what it stands on.

    ``over_canopy`` is the height of its underside above the canopy, None on the floor;
    ``black`` ones return no light, the others take the plan's first lining. ``grows``: it carries
    a canopy, so far above a closed one of the plan, where light comes.
    """

    key: str
    name: str
    length: float
    width: float
    thickness: float
    over_canopy: float | None
    black: bool = False
    grows: float | None = None


SHAPES: Final = (
    Shape("shelf", "Shelf", 0.4, 0.15, 0.02, 0.1),
    Shape("tray", "Tray", 0.4, 0.3, 0.1, None, black=True, grows=0.05),
    Shape("pot", "Pot", 0.12, 0.12, 0.12, 0.0, black=True),
    Shape("box", "Box", 0.2, 0.2, 0.3, None),
)
"""Round figures to start from; every one of them is a field afterwards."""


def new_obstacle(plan: Plan, shape: Shape, at: Point | None = None) -> Obstacle:
    """An obstacle of a shape as near to the middle or a point as it fits, smaller if it must."""
    height = plan.space.height
    thickness = shape.thickness
    if shape.grows is not None and plan.canopy.closed:
        thickness = max(thickness, plan.canopy.height + shape.grows)
    thickness = min(thickness, height)
    above = 0.0 if shape.over_canopy is None else plan.canopy.height + shape.over_canopy
    plain = shape.black or not plan.linings
    x, y = at or middle(plan)
    made = Obstacle(
        name=shape.name,
        x=x,
        y=y,
        underside=round(max(min(above, height - thickness), 0.0), 4),
        length=shape.length,
        width=shape.width,
        thickness=thickness,
        lining=OPENING_KEY if plain else plan.linings[0].key,
        canopy=None if shape.grows is None else CarriedCanopy(),
    )
    for share in _SIZES:
        size = {
            "length": max(round(shape.length * share, 3), 0.005),
            "width": max(round(shape.width * share, 3), 0.005),
        }
        smaller = made.model_copy(update=size)
        shift = free_shift(plan, [(smaller.outline(), _others(plan, smaller))])
        if shift is not None and shift[1]:
            return _at(smaller, (x + shift[0][0], y + shift[0][1]))
    return smaller
