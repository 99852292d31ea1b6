"""How each number of a plan is read, turned and kept within what fits the plan as it is.

One small function for each; ``dials`` is the table that names them. ``of_...`` makes the
function that reads a number at a place (None where there is none), ``put_...`` the one that
makes the plan with another value there, and the others narrow the bounds of a quantity.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from typing import Any, Final, TypeVar

from planner.plan import edits, tiers
from planner.plan.checks import CLOSE_TO_CANOPY_M, LEAST_DARK_HOURS
from planner.plan.lamp import MOST_PER_JOULE, BarsBody, CosineProfile, Lamp, LampModel, PointBody
from planner.plan.lining import OPENING_KEY, Lining
from planner.plan.place import Place, PlaceKind, lining_at, surfaces
from planner.plan.plan import Plan, Setup
from planner.plan.quantity import HANGING_HEIGHT, Quantity
from planner.plan.space import outlines_overlap, sticks_out
from planner.plan.target import PpfdTarget, Target
from planner.units import FLUX_UNIT, said_length

_ALIKE: Final = 1e-9
CEILING: Final = "the ceiling is there"
_LEAST_BAND_M: Final = 0.005

_Setup = TypeVar("_Setup", bound=Setup)
Room = Callable[[Quantity, Setup, Place], Quantity]
Turn = Callable[[Plan, Sequence[Place], float], Plan]


# -- lamps and obstacles ----------------------------------------------------------------


def of_lamp(part: str, inside: Callable[[Setup, Lamp], Any] = lambda _plan, lamp: lamp) -> Any:
    def read(plan: Setup, place: Place) -> float | None:
        value = getattr(inside(plan, plan.lamps[place.index]), part, None)
        return None if value is None else float(value)

    return read


def each(
    change: Callable[[Plan, Place, float], Plan],
) -> Turn:
    def turn(plan: Plan, places: Sequence[Place], value: float) -> Plan:
        for place in places:
            plan = change(plan, place, value)
        return plan

    return turn


def put_lamp(part: str) -> Turn:
    return each(lambda plan, place, value: edits.change_lamp(plan, place.index, **{part: value}))


def with_model(plan: Plan, index: int, **parts: Any) -> Plan:
    """The plan with parts of a lamp's kind replaced."""
    model = edits.changed(plan.lamps[index].model, **parts)
    return edits.change_lamp(plan, index, model=model)


def put_model(part: str) -> Turn:
    return each(lambda plan, place, value: with_model(plan, place.index, **{part: value}))


def put_body(part: str) -> Turn:
    def change(plan: Plan, place: Place, value: float) -> Plan:
        body = plan.lamps[place.index].model.body
        number = round(value) if part == "count" else value
        return with_model(plan, place.index, body=edits.changed(body, **{part: number}))

    return each(change)


def model(_plan: Setup, lamp: Lamp) -> LampModel:
    return lamp.model


def body(_plan: Setup, lamp: Lamp) -> object:
    return None if isinstance(lamp.model.body, PointBody) else lamp.model.body


def beam(plan: Setup, place: Place) -> float | None:
    profile = plan.lamps[place.index].model.profile
    return profile.beam_angle_deg if isinstance(profile, CosineProfile) else None


def put_beam(plan: Plan, place: Place, value: float) -> Plan:
    return with_model(plan, place.index, profile=CosineProfile.from_beam_angle(value))


def height(plan: Setup, place: Place) -> float | None:
    """Of a lamp over the canopy it stands over, of a tier as of the plan."""
    return tiers.hangs(plan, plan.lamps[place.index])


def put_height(plan: _Setup, places: Sequence[Place], value: float) -> _Setup:
    # What each is counted from is told by the lamps as they hang before any of them moves.
    from_own = [tiers.counted_from(plan, plan.lamps[place.index]) for place in places]
    for place, up in zip(places, from_own, strict=True):
        plan = edits.change_lamp(plan, place.index, hanging_height=round(value + up, 9))
    return plan


def under_ceiling(kind: Quantity, plan: Setup, place: Place) -> Quantity:
    lamp = plan.lamps[place.index]
    (least, most), up = plan.hanging_room(lamp), tiers.counted_from(plan, lamp)
    return kind.at_least(least, "the canopy is there").at_most(most - up, CEILING)


def within_tier(kind: Quantity, plan: Setup, place: Place) -> Quantity:
    """Under the ceiling, and on the side of every obstacle where the lamp hangs now."""
    lamp = plan.lamps[place.index]
    (low, high), face, outline = lamp.rise, plan.lamp_height(lamp), lamp.outline()
    now = tiers.hangs(plan, lamp)
    found, level = under_ceiling(kind, plan, place), face - now
    for one in plan.obstacles:
        why = f"lamp {place.index + 1} meets '{one.name}'"
        if not outlines_overlap(outline, one.outline()):
            continue
        if face <= one.underside:
            # Where its housing is in it already, it stays as it is.
            found = found.at_most(max(one.underside - level - high, now), why)
        elif face >= one.top:
            found = found.at_least(min(one.top - level - low, now), why)
    return found


def tilt_room(kind: Quantity, plan: Setup, place: Place) -> Quantity:
    """As far as neither side comes through the ceiling or down to the canopy.

    With half the width w and the housing h its highest corner is w sin t + h cos t over the
    middle of the face, its lowest w sin t under it.
    """
    lamp = plan.lamps[place.index]
    flat = lamp.model_copy(update={"tilt_deg": 0.0})
    if sticks_out(flat.outline(), plan.space.footprint):
        return kind.at_least(0.0, "a wall is there").at_most(0.0, "a wall is there")
    half, high = lamp.model.size[1] / 2, flat.rise[1]
    over = plan.headroom - lamp.hanging_height
    under = lamp.hanging_height - HANGING_HEIGHT.minimum
    reach = math.hypot(half, high)
    up = down = kind.maximum
    if over < reach:
        up = math.degrees(math.asin(max(over, 0.0) / reach) - math.atan2(high, half))
    if under < half:
        down = math.degrees(math.asin(max(under, 0.0) / half))
    most, why = (
        max(min(up, down), 0.0),
        CEILING if up < down else "the canopy is there",
    )
    return kind.at_least(-most, why).at_most(most, why)


def put_underside(plan: Plan, places: Sequence[Place], value: float) -> Plan:
    for place in places:
        by = value - plan.obstacles[place.index].underside
        for one in tiers.carried_by(plan, place.index):
            if one in places:
                continue
            if one.kind is PlaceKind.LAMP:
                hung = round(plan.lamps[one.index].hanging_height + by, 9)
                plan = edits.change_lamp(plan, one.index, hanging_height=hung)
            else:
                up = round(plan.obstacles[one.index].underside + by, 9)
                plan = edits.change_obstacle(plan, one.index, underside=up)
        plan = edits.change_obstacle(plan, place.index, underside=value)
    return plan


def with_what_it_carries(kind: Quantity, plan: Setup, place: Place) -> Quantity:
    """Under the ceiling with what stands on it, over the canopy with the lamps under it."""
    shelf, found = plan.obstacles[place.index], room_with("thickness")(kind, plan, place)
    for one in tiers.carried_by(plan, place.index):
        if one.kind is PlaceKind.LAMP:
            lamp = plan.lamps[one.index]
            down = lamp.hanging_height - plan.hanging_room(lamp)[0]
            why = f"lamp {one.index + 1} hangs from it and is at the canopy"
            found = found.at_least(shelf.underside - down, why)
        else:
            up = plan.space.height - plan.obstacles[one.index].top
            why = f"'{plan.obstacles[one.index].name}' stands on it and is at the ceiling"
            found = found.at_most(shelf.underside + up, why)
    return found


def housing_under_ceiling(kind: Quantity, plan: Setup, place: Place) -> Quantity:
    """Where nobody would be warned of the heat, and the housing is under the ceiling.

    A lamp keeps over a canopy on an obstacle over which it hangs, and under one it hangs under.
    """
    lamp = plan.lamps[place.index]
    (low, high), level = lamp.rise, plan.canopy.height + tiers.counted_from(plan, lamp)
    found = kind.at_least(CLOSE_TO_CANOPY_M, "nearer it may scorch the leaves")
    if lamp.tilt_deg:
        found = under_ceiling(found, plan, place)
    else:
        most = plan.space.height - level - lamp.model.housing_height
        found = found.at_most(most, CEILING)
    for top in tiers.hung_over(plan, lamp):
        least = top.top - level - low + CLOSE_TO_CANOPY_M
        found = found.at_least(least, f"nearer it may scorch the leaves on '{top.name}'")
    for tier in tiers.hung_over(plan, lamp, under=True):
        found = found.at_most(tier.underside - level - high, f"'{tier.name}' is there")
    return found


def by_dimmer(kind: Quantity, plan: Setup, place: Place) -> Quantity:
    """Full output where nothing turns it down."""
    dims = plan.lamps[place.index].model.dimmable
    return kind if dims else kind.at_least(100.0, "the lamp cannot be dimmed")


def leaving_a_night(kind: Quantity, _plan: Setup, _place: Place) -> Quantity:
    why = f"most crops need {LEAST_DARK_HOURS:g} dark hours"
    return kind.at_most(24.0 - LEAST_DARK_HOURS, why)


def inside(axis: int) -> Room:
    def room(kind: Quantity, plan: Setup, _place: Place) -> Quantity:
        low, high = plan.space.bounds[axis], plan.space.bounds[axis + 2]
        return kind.at_least(low, "the walls are there").at_most(high, "the walls are there")

    return room


def ppf_of_watts(kind: Quantity, plan: Setup, place: Place) -> Quantity:
    watts = plan.lamps[place.index].model.watts
    why = f"no lamp gives more than {MOST_PER_JOULE} µmol per joule, and this one draws {watts:g} W"
    return kind.at_most(MOST_PER_JOULE * watts, why)


def watts_of_ppf(kind: Quantity, plan: Setup, place: Place) -> Quantity:
    ppf = plan.lamps[place.index].model.ppf
    why = f"no lamp gives more than {MOST_PER_JOULE} µmol per joule, and this one gives {ppf:g}"
    return kind.at_least(ppf / MOST_PER_JOULE, f"{why} {FLUX_UNIT}")


def bars_fit(part: str) -> Room:
    """Bars side by side take no more than the width over all of them."""

    def room(kind: Quantity, plan: Setup, place: Place) -> Quantity:
        body = plan.lamps[place.index].model.body
        if not isinstance(body, BarsBody) or part == "length":
            return kind
        bars, one = f"{body.count} bars", f"bars of {said_length(body.bar_width)}"
        wide = f"a width of {said_length(body.width)}"
        if part == "width":
            return kind.at_least(body.count * body.bar_width, f"{bars} lie in it")
        if part == "count":
            most = math.floor(body.width / body.bar_width + _ALIKE)
            return kind.at_most(most, f"{one} lie in {wide}")
        return kind.at_most(body.width / body.count, f"{bars} lie in {wide}")

    return room


def of_obstacle(part: str) -> Callable[[Setup, Place], float | None]:
    return lambda plan, place: float(getattr(plan.obstacles[place.index], part))


def put_obstacle(part: str) -> Turn:
    return each(
        lambda plan, place, value: edits.change_obstacle(plan, place.index, **{part: value})
    )


def leaves(plan: Setup, place: Place) -> float | None:
    carried = plan.obstacles[place.index].canopy
    return None if carried is None else carried.reflectance


def put_leaves(plan: Plan, place: Place, value: float) -> Plan:
    return edits.change_carried(plan, place.index, reflectance=value)


def _own_target(plan: Setup, place: Place) -> Target | None:
    carried = plan.obstacles[place.index].canopy
    return None if carried is None else carried.target


def own_end(part: str) -> Callable[[Setup, Place], float | None]:
    def read(plan: Setup, place: Place) -> float | None:
        target = _own_target(plan, place)
        return getattr(target, part) if isinstance(target, PpfdTarget) else None

    return read


def put_own_end(part: str) -> Turn:
    def change(plan: Plan, place: Place, value: float) -> Plan:
        target = _own_target(plan, place)
        assert target is not None  # noqa: S101 - the dial has a place only with a target
        # A band changed by hand is no crop's any more.
        target = edits.changed(target, crop="", source="", **{part: value})
        return edits.change_carried(plan, place.index, target=target)

    return each(change)


def room_with(other: str) -> Room:
    def room(kind: Quantity, plan: Setup, place: Place) -> Quantity:
        taken = getattr(plan.obstacles[place.index], other)
        return kind.at_most(plan.space.height - taken, CEILING)

    return room


# -- space, walls, corners --------------------------------------------------------------


def extent(plan: Setup) -> tuple[float, float]:
    x0, y0, x1, y1 = plan.space.bounds
    return x1 - x0, y1 - y0


def above_canopy(_kind: Quantity, plan: Setup, _place: Place) -> Quantity:
    return edits.ceiling_room(plan)


def under_lamps(_kind: Quantity, plan: Setup, _place: Place) -> Quantity:
    return edits.canopy_room(plan)


def of_corner(axis: int) -> Callable[[Setup, Place], float | None]:
    return lambda plan, place: plan.space.footprint[place.index][axis]


def put_corner(axis: int) -> Turn:
    def change(plan: Plan, place: Place, value: float) -> Plan:
        x, y = plan.space.footprint[place.index]
        return edits.move_corner(plan, place.index, (value, y) if axis == 0 else (x, value))

    return each(change)


def wall_bands(plan: Setup) -> tuple[Place, ...]:
    return tuple(place for place in surfaces(plan) if place.kind is PlaceKind.WALL)


def put_wall_length(plan: Plan, place: Place, value: float) -> Plan:
    return edits.set_wall_length(plan, place.index, value)


def top(plan: Setup, place: Place) -> float | None:
    return None if place.band is None else plan.walls[place.index].bands[place.band].top


def put_top(plan: Plan, place: Place, value: float) -> Plan:
    return edits.change_band(plan, place.index, place.band or 0, top=value)


def between_edges(kind: Quantity, plan: Setup, place: Place) -> Quantity:
    bands, band = plan.walls[place.index].bands, place.band or 0
    below = (bands[band - 1].top or 0.0) if band else 0.0
    above = bands[band + 1].top if band + 1 < len(bands) else None
    limit, what = (plan.space.height, "ceiling") if above is None else (above, "next edge")
    thin = f"the edge below is at {said_length(below)}" if below else "the floor is there"
    return kind.at_least(below + _LEAST_BAND_M, thin).at_most(
        limit - _LEAST_BAND_M, f"the {what} is at {said_length(limit)}"
    )


def dirt(plan: Setup, place: Place) -> float | None:
    return None if place.band is None else plan.walls[place.index].bands[place.band].dirt


def put_dirt(plan: Plan, place: Place, value: float) -> Plan:
    return edits.change_band(plan, place.index, place.band or 0, dirt=value)


def reflectance(plan: Setup, place: Place) -> float | None:
    lining = lining_at(plan, place)
    return None if lining is None or lining.is_opening else lining.reflectance


def put_reflectance(plan: Plan, places: Sequence[Place], value: float) -> Plan:
    """Give these surfaces this reflectance at the specular share their linings have."""
    taken = {lining.key for lining in plan.linings}
    made: dict[str, Lining] = {}
    for place in places:
        old = lining_at(plan, place)
        if old is None or old.key == OPENING_KEY:
            continue
        if old.key not in made:
            key = f"swept-{len(made) + 1}"
            while key in taken:
                key += "-"
            made[old.key] = edits.changed(
                old,
                key=key,
                # Said in the name, for a plan that adopts it; names hold 120 characters.
                name=f"{old.name[:90]}, taken as {100 * value:.0f} %",
                reflectance=value,
                low=value,
                high=value,
                source=f"A value tried in place of {old.reflectance:g}; "
                f"that one came from: {old.source}"[:4000],
            )
        bands = range(len(plan.walls[place.index].bands)) if place.band is None else [place.band]
        for band in bands:
            plan = edits.line_wall(plan, place.index, band, made[old.key])
    return plan


# -- lamps together ---------------------------------------------------------------------


def lamp_spacing(plan: Setup) -> float | None:
    """Smallest distance between the centres of two lamps in metres; None below two."""
    places = [(lamp.x, lamp.y) for lamp in plan.lamps]
    gaps = [math.dist(a, b) for k, a in enumerate(places) for b in places[k + 1 :]]
    smallest = min(gaps, default=0.0)
    return smallest if smallest > 1e-6 else None


def put_spacing(plan: Plan, value: float) -> Plan:
    """Spread the lamps about their middle until the nearest two are this far apart."""
    x = sum(lamp.x for lamp in plan.lamps) / len(plan.lamps)
    y = sum(lamp.y for lamp in plan.lamps) / len(plan.lamps)
    spread = value / (lamp_spacing(plan) or value)

    def moved(lamp: Lamp) -> Lamp:
        return edits.changed(lamp, x=x + (lamp.x - x) * spread, y=y + (lamp.y - y) * spread)

    return edits.each_lamp(plan, moved)


# -- canopy, day, target, costs ---------------------------------------------------------


def band_end(part: str, kind: str) -> Callable[[Setup, Place], float | None]:
    def read(plan: Setup, _place: Place) -> float | None:
        target = getattr(plan, "target", None)
        return getattr(target, part) if target is not None and target.kind == kind else None

    return read


def put_band_end(part: str) -> Turn:
    def turn(plan: Plan, _places: Sequence[Place], value: float) -> Plan:
        assert plan.target is not None  # noqa: S101 - the dial has a place only with a target
        # A band changed by hand is no crop's any more.
        target = edits.changed(plan.target, crop="", source="", **{part: value})
        return edits.changed(plan, target=target)

    return turn


def rising(part: str) -> Room:
    def room(kind: Quantity, plan: Setup, place: Place) -> Quantity:
        target = getattr(plan, "target", None)
        if place.kind is PlaceKind.OBSTACLE:
            target = _own_target(plan, place)
        if target is None:
            return kind
        other = target.high if part == "low" else target.low
        least = 10.0**-kind.decimals
        end = f"the band {'ends' if part == 'low' else 'begins'} at {kind.text(other, None)}"
        if part == "low":
            return kind.at_most(other - least, end)
        return kind.at_least(other + least, end)

    return room


def of_costs(part: str) -> Callable[[Setup, Place], float | None]:
    def read(plan: Setup, _place: Place) -> float | None:
        costs = getattr(plan, "costs", None)
        return None if costs is None else getattr(costs, part) or 0.0

    return read


def put_costs(part: str) -> Turn:
    return lambda plan, _places, value: edits.changed(
        plan, costs=edits.changed(plan.costs, **{part: value})
    )
