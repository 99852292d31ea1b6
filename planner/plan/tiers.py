"""Which canopy a lamp stands over, how high above it the lamp hangs, and what holds it.

A tier is an obstacle that carries a canopy and has a lamp under it, as the shelves of a rack do:
lamps over it and lamps under it are no lamps of one room. Where nothing hangs under what carries
a canopy (a tray on a pot), all lamps over it light what lies beside it, too.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final, TypeVar

from planner.plan.lamp import Lamp
from planner.plan.place import OWN, Place, PlaceKind, above_own, judged
from planner.plan.plan import Setup
from planner.plan.space import TOUCH_M, Obstacle, contains, outlines_overlap
from planner.units import said_length

_Setup = TypeVar("_Setup", bound=Setup)

_TOUCHING: Final = 1e-6


def hung_over(plan: Setup, lamp: Lamp, *, under: bool = False) -> tuple[Obstacle, ...]:
    """The obstacles with a canopy over which a lamp hangs; ``under``: those it hangs under."""
    face, outline = plan.lamp_height(lamp), lamp.outline()
    return tuple(
        one
        for one in plan.obstacles
        if one.canopy is not None
        and (face <= one.underside) is under
        and outlines_overlap(outline, one.outline())
    )


def held_by(plan: Setup, x: float, y: float, above: float) -> int | None:
    """Which obstacle, counted from 0, a cord meets that goes up there; None: the ceiling."""
    over = [
        (one.underside, index)
        for index, one in enumerate(plan.obstacles)
        if one.underside >= above and contains(one.outline(), x, y)
    ]
    return min(over)[1] if over else None


def carried_by(plan: Setup, index: int) -> tuple[Place, ...]:
    """What goes up and down with an obstacle: lamps that hang from it, obstacles that stand on it.

    And what hangs from these or stands on them in turn.
    """
    found, on = [], [index]
    for holder in on:
        top = plan.obstacles[holder].top
        for k, lamp in enumerate(plan.lamps):
            if held_by(plan, lamp.x, lamp.y, plan.lamp_height(lamp)) == holder:
                found.append(Place(PlaceKind.LAMP, k))
        for k, one in enumerate(plan.obstacles):
            stands = contains(plan.obstacles[holder].outline(), one.x, one.y)
            if stands and abs(one.underside - top) < TOUCH_M and k not in on:
                found.append(Place(PlaceKind.OBSTACLE, k))
                on.append(k)
    return tuple(found)


def _tier_under(plan: Setup, x: float, y: float, height: float) -> int | None:
    """The highest tier straight under a point; None: the plan's own canopy."""
    found: int | None = None
    for k, one in enumerate(plan.obstacles):
        along, across = one.off_middle(x, y)
        below = one.canopy is not None and plan.canopy.height < one.top <= height + 1e-9
        if not below or along > one.length / 2 or across > one.width / 2:
            continue
        if found is None or one.top > plan.obstacles[found].top:
            shelters = (one in hung_over(plan, lamp, under=True) for lamp in plan.lamps)
            found = k if any(shelters) else found
    return found


def canopy_below(plan: Setup, x: float, y: float, height: float) -> Place:
    """The canopy straight under a point over the floor: that of the highest tier, or the own."""
    tier = _tier_under(plan, x, y, height)
    return OWN if tier is None else Place(PlaceKind.TOP, tier)


def storey(plan: Setup, shelf: Obstacle) -> float:
    """From the canopy under a shelf up to its top, metres: how far on the next is of a rack."""
    tier = _tier_under(plan, shelf.x, shelf.y, shelf.underside)
    return shelf.top - level_of(plan, OWN if tier is None else Place(PlaceKind.TOP, tier))


def canopy_under(plan: Setup, lamp: Lamp) -> Place:
    """The canopy that a lamp stands over, from which its height counts.

    That of the tier straight under the middle of its face, or the plan's own. On either the
    canopy that the plan is judged by may stand: then it is that one, for all lamps above it.
    """
    if all(one.canopy is None for one in plan.obstacles):
        return OWN
    face, top = plan.lamp_height(lamp), plan.judged_top
    tier = _tier_under(plan, lamp.x, lamp.y, face)
    if top is not None and tier != top:
        led = plan.obstacles[top]
        stands = tier == _tier_under(plan, led.x, led.y, led.underside)
        sheltering = any(led in hung_over(plan, one, under=True) for one in plan.lamps)
        if stands and not sheltering and plan.canopy.height < led.top < face:
            tier = top
    return OWN if tier is None else Place(PlaceKind.TOP, tier)


def lighting(plan: Setup) -> tuple[Place, ...]:
    """The lamps over the canopy that the plan is judged by: of a rack those of one tier."""
    by = judged(plan)
    return tuple(
        Place(PlaceKind.LAMP, k)
        for k, lamp in enumerate(plan.lamps)
        if canopy_under(plan, lamp) == by
    )


def sharing(plan: Setup) -> tuple[Place, ...]:
    """The canopies in the light of the lamps over the one judged, which is among them.

    Those of one storey: what stands on the same tier and shelters no lamps, and the tier itself.
    """
    tops = (Place(PlaceKind.TOP, k) for k, one in enumerate(plan.obstacles) if one.canopy)
    every, here = (OWN, *tops), _storey_of(plan, judged(plan))
    return tuple(place for place in every if _storey_of(plan, place) == here)


def _storey_of(plan: Setup, place: Place) -> int | None:
    """The tier that a canopy is part of or stands on; None: the plan's own canopy."""
    if place == OWN:
        return None
    one = plan.obstacles[place.index]
    if any(one in hung_over(plan, lamp, under=True) for lamp in plan.lamps):
        return place.index
    return _tier_under(plan, one.x, one.y, one.underside)


def lamps_at(plan: Setup, places: Sequence[Place]) -> tuple[Lamp, ...]:
    """The lamps at these places."""
    return tuple(plan.lamps[place.index] for place in places)


def with_lamps(plan: Setup, places: Sequence[Place], lamps: Sequence[Lamp]) -> tuple[Lamp, ...]:
    """All lamps of a plan with others in place of those at some places, more or fewer of them."""
    old = [place.index for place in places]
    if len(old) == len(lamps):
        new = dict(zip(old, lamps, strict=True))
        return tuple(new.get(k, lamp) for k, lamp in enumerate(plan.lamps))
    return (*lamps, *(lamp for k, lamp in enumerate(plan.lamps) if k not in old))


def level_of(plan: Setup, place: Place) -> float:
    """Height of a canopy above the floor in metres."""
    return plan.canopy.height if place == OWN else plan.obstacles[place.index].top


def from_above(plan: Setup, place: Place) -> tuple[tuple[int, ...], tuple[int, ...]]:
    """Numbers of the obstacles as seen from right above a canopy, each from the lowest top up.

    First those that lie there or stand on one that does, then those that hang higher and are out
    of the way.
    """
    tops = [round(one.top, 6) for one in plan.obstacles]
    order, level = sorted(range(len(tops)), key=tops.__getitem__), level_of(plan, place)
    lying: list[Obstacle] = []
    found: list[int] = []
    for k in order:
        one = plan.obstacles[k]
        below = (other for other in lying if abs(other.top - one.underside) < _TOUCHING)
        if one.underside <= level + 1e-9 or any(
            outlines_overlap(one.outline(), other.outline()) for other in below
        ):
            lying.append(one)
            found.append(k)
    return tuple(found), tuple(k for k in order if k not in found)


def counted_from(plan: Setup, lamp: Lamp) -> float:
    """How far the canopy a lamp stands over lies above the plan's own, in metres."""
    place = canopy_under(plan, lamp)
    return 0.0 if place == OWN else level_of(plan, place) - plan.canopy.height


def hangs(plan: Setup, lamp: Lamp) -> float:
    """From the middle of a lamp's face down to the level of the canopy it stands over, metres."""
    return round(lamp.hanging_height - counted_from(plan, lamp), 9)


def above(plan: Setup, lamps: Sequence[Lamp]) -> str:
    """What the heights of some lamps are counted from, in words."""
    under = {canopy_under(plan, lamp) for lamp in lamps}
    if under <= {OWN}:
        return above_own(plan)
    if len(under) > 1:
        return "above the canopy under each"
    index = under.pop().index
    return f"above the canopy on obstacle {index + 1} ('{plan.obstacles[index].name}')"


def hung_at(plan: Setup, lamp: Lamp) -> str:
    """How high a lamp hangs, in words: '30 cm above the canopy'."""
    return f"{said_length(hangs(plan, lamp))} {above(plan, (lamp,))}"
