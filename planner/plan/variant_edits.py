"""Variants applied and edited: pure functions from one plan to the next.

``resolve`` turns a variant into a plan of its own. A change that no longer fits (its wall
is gone, its lamp would hang above the ceiling) is left out and reported in words; the
others still apply.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Any

from planner.plan import edits
from planner.plan.edits import changed
from planner.plan.lamp import Lamp, LampModel
from planner.plan.lining import Lining
from planner.plan.plan import Plan
from planner.plan.variant import (
    Change,
    LineAllWalls,
    LineCeiling,
    LineFloor,
    LineWall,
    SetCanopyHeight,
    SetCanopyReflectance,
    SetDoor,
    SetHangingHeight,
    SetLampModel,
    SetLampPlace,
    SetOutput,
    SetPhotoperiod,
    SetSize,
    SetSpaceHeight,
    Variant,
)
from planner.units import LengthUnit, format_length

MAX_NAME = 120


@dataclass(frozen=True)
class Resolved:
    """A variant as a plan of its own.

    ``said`` says what differs, one text per change that fits; ``problems`` holds one
    sentence per change that does not.
    """

    plan: Plan
    said: tuple[str, ...]
    problems: tuple[str, ...]


def resolve(plan: Plan, variant: Variant, unit: LengthUnit = LengthUnit.CM) -> Resolved:
    """Apply a variant to the plan it stands in; what does not fit is left out and said."""
    found = bare(plan)
    said: list[str] = []
    problems: list[str] = []
    for change in variant.changes:
        words = say(plan, change, unit)
        try:
            found = apply(found, change)
        except ValueError as error:
            problems.append(f"'{variant.name}' leaves out '{words}': {reason(error)}")
        else:
            said.append(words)
    return Resolved(changed(found, name=variant.name), tuple(said), tuple(problems))


def bare(plan: Plan) -> Plan:
    """The plan without what does not belong to its light: variants, surveys, schedule."""
    return plan.model_copy(update={"variants": (), "surveys": (), "schedule": ()})


def reason(error: ValueError) -> str:
    """Say why an edit was refused, in one sentence without the words of the validator."""
    errors: Callable[[], list[Any]] | None = getattr(error, "errors", None)
    text = str(errors()[0]["msg"]) if errors is not None else str(error)
    return text.removeprefix("Value error, ").rstrip(".") + "."


# -- one change -------------------------------------------------------------------------


def apply(plan: Plan, change: Change) -> Plan:
    """The plan with one change made; raises ``ValueError`` when it does not fit."""
    match change:
        case LineAllWalls():
            return edits.line_all_walls(plan, change.lining)
        case LineWall():
            return _line_wall(plan, change)
        case LineCeiling():
            return edits.line_ceiling(plan, change.lining)
        case LineFloor():
            return edits.line_floor(plan, change.lining)
        case SetSize():
            return edits.set_size(plan, change.width, change.depth)
        case SetSpaceHeight():
            return edits.set_height(plan, change.height)
        case SetCanopyHeight():
            return edits.set_canopy_height(plan, change.height)
        case _:
            return _apply_small(plan, change)


def _apply_small(plan: Plan, change: Change) -> Plan:
    match change:
        case SetLampModel():
            return _each(plan, change.lamp, model=change.model)
        case SetHangingHeight():
            return _each(plan, change.lamp, hanging_height=change.hanging_height)
        case SetOutput():
            return _each(plan, change.lamp, output_percent=change.output_percent)
        case SetLampPlace():
            return _each(plan, change.lamp, x=change.x, y=change.y)
        case SetCanopyReflectance():
            return edits.set_canopy(plan, reflectance=change.reflectance)
        case SetPhotoperiod():
            return changed(plan, photoperiod_hours=change.photoperiod_hours)
        case SetDoor():
            return edits.with_space(plan, door_open=change.door_open)
    raise ValueError(f"there is no way to apply '{change.kind}'.")


def _line_wall(plan: Plan, change: LineWall) -> Plan:
    if change.wall >= len(plan.walls):
        raise ValueError(f"the footprint has {len(plan.walls)} walls now.")
    count = len(plan.walls[change.wall].bands)
    if change.band is not None:
        if change.band >= count:
            raise ValueError(f"wall {change.wall + 1} has {count} bands now.")
        return edits.line_wall(plan, change.wall, change.band, change.lining)
    for band in range(count):
        plan = edits.line_wall(plan, change.wall, band, change.lining)
    return plan


def _each(plan: Plan, lamp: int | None, **parts: Any) -> Plan:
    if not plan.lamps:
        raise ValueError("no lamp hangs in the space now.")
    if lamp is not None and lamp >= len(plan.lamps):
        raise ValueError(f"the plan has {len(plan.lamps)} lamps now.")
    which = range(len(plan.lamps)) if lamp is None else (lamp,)
    lamps = list(plan.lamps)
    for index in which:
        one = lamps[index]
        old = {name: getattr(one, name) for name in Lamp.model_fields}
        lamps[index] = Lamp.model_validate({**old, **parts})
    return changed(plan, lamps=tuple(lamps))


def say(plan: Plan, change: Change, unit: LengthUnit = LengthUnit.CM) -> str:
    """What differs, in a few words: 'wall 2: Foil', 'lamps: hanging height 35 cm'."""
    match change:
        case LineAllWalls():
            return f"all walls: {change.lining.name}"
        case LineWall():
            band = "" if change.band is None else f", band {change.band + 1}"
            return f"wall {change.wall + 1}{band}: {change.lining.name}"
        case LineCeiling():
            return f"ceiling: {change.lining.name}"
        case LineFloor():
            return f"floor: {change.lining.name}"
        case SetSize():
            width, depth = format_length(change.width, unit), format_length(change.depth, unit)
            return f"footprint {width} x {depth}"
        case SetSpaceHeight():
            return f"inside height {format_length(change.height, unit)}"
        case SetCanopyHeight():
            return f"canopy at {format_length(change.height, unit)}"
        case _:
            return _say_small(plan, change, unit)


def _say_small(plan: Plan, change: Change, unit: LengthUnit) -> str:
    match change:
        case SetLampModel():
            return f"{_lamps(plan, change.lamp)}: {change.model.name}"
        case SetHangingHeight():
            height = format_length(change.hanging_height, unit)
            return f"{_lamps(plan, change.lamp)}: hanging height {height}"
        case SetOutput():
            return f"{_lamps(plan, change.lamp)}: output {change.output_percent:.3g} %"
        case SetLampPlace():
            x, y = format_length(change.x, unit), format_length(change.y, unit)
            return f"{_lamps(plan, change.lamp)}: at x {x}, y {y}"
        case SetCanopyReflectance():
            return f"canopy reflectance {change.reflectance:.2f}"
        case SetPhotoperiod():
            return f"photoperiod {change.photoperiod_hours:.3g} h"
        case SetDoor():
            return "door open" if change.door_open else "door shut"
    return change.kind


def _lamps(plan: Plan, lamp: int | None) -> str:
    if lamp is not None:
        return f"lamp {lamp + 1}"
    return "lamp" if len(plan.lamps) == 1 else "all lamps"


# -- edits of the list ------------------------------------------------------------------


def add_variants(plan: Plan, *variants: Variant) -> Plan:
    """Put variants into the plan; a name already taken gets a number behind it."""
    kept = list(plan.variants)
    for variant in variants:
        name = free_name([one.name for one in kept], variant.name)
        kept.append(variant.model_copy(update={"name": name}))
    return changed(plan, variants=tuple(kept))


def free_name(taken: Sequence[str], name: str) -> str:
    """The name, or the name with the first number that makes it free."""
    found, number = name, 2
    while found in taken:
        tail = f" ({number})"
        found, number = name[: MAX_NAME - len(tail)] + tail, number + 1
    return found


def remove_variant(plan: Plan, index: int) -> Plan:
    """Take a variant out."""
    return changed(plan, variants=plan.variants[:index] + plan.variants[index + 1 :])


def change_variant(plan: Plan, index: int, **parts: Any) -> Plan:
    """Replace parts of one variant (name, note, changes)."""
    variants = list(plan.variants)
    old = {name: getattr(variants[index], name) for name in Variant.model_fields}
    variants[index] = Variant.model_validate({**old, **parts})
    return changed(plan, variants=tuple(variants))


def move_variant(plan: Plan, index: int, to: int) -> Plan:
    """Give a variant another place in the list."""
    variants = list(plan.variants)
    variants.insert(to, variants.pop(index))
    return changed(plan, variants=tuple(variants))


def adopt_variant(plan: Plan, index: int) -> Plan:
    """Make a variant the plan itself: its changes are carried out, and it leaves the list.

    Changes that do not fit are left out, as on the page. The other variants now follow the
    new plan.
    """
    found = resolve(plan, plan.variants[index]).plan
    rest = plan.variants[:index] + plan.variants[index + 1 :]
    return changed(
        found, name=plan.name, variants=rest, surveys=plan.surveys, schedule=plan.schedule
    )


# -- makers -----------------------------------------------------------------------------


def try_linings(plan: Plan, linings: Sequence[Lining], wall: int | None = None) -> Plan:
    """One more variant for each lining, on all walls or on one."""
    made = []
    for lining in linings:
        change: LineAllWalls | LineWall = LineAllWalls(lining=lining)
        name = lining.name
        if wall is not None:
            change = LineWall(wall=wall, lining=lining)
            name = f"Wall {wall + 1}: {lining.name}"[:MAX_NAME]
        made.append(Variant(name=name, changes=(change,)))
    return add_variants(plan, *made)


def try_lamps(plan: Plan, models: Sequence[LampModel]) -> Plan:
    """One more variant for each kind of lamp, in the place of all lamps."""
    return add_variants(
        plan, *(Variant(name=m.name, changes=(SetLampModel(model=m),)) for m in models)
    )


def try_heights(
    plan: Plan, low: float, high: float, count: int, unit: LengthUnit = LengthUnit.CM
) -> Plan:
    """One more variant for each of ``count`` hanging heights from ``low`` to ``high`` metres.

    Raises
    ------
    ValueError
        If the range does not rise, or fewer than two heights are asked.
    """
    if count < 2 or high <= low:
        raise ValueError("a range of heights needs a lower end, a higher one and at least two.")
    heights = [round(low + (high - low) * k / (count - 1), 6) for k in range(count)]
    return add_variants(
        plan,
        *(
            Variant(
                name=f"Hanging height {format_length(height, unit)}",
                changes=(SetHangingHeight(hanging_height=height),),
            )
            for height in heights
        ),
    )


def differences(plan: Plan, other: Plan) -> tuple[Change, ...]:
    """The changes that lead from one plan to another, for making a variant of a sketch.

    Raises
    ------
    ValueError
        If they differ in what no change can say: the number of walls, bands or lamps, the
        shape of the outline, obstacles, the kind of canopy.
    """
    found: list[Change] = [
        *_space_differences(plan, other),
        *_lining_differences(plan, other),
        *_lamp_differences(plan, other),
    ]
    made = plan
    for change in found:
        made = apply(made, change)
    if not _alike(made, other):
        raise ValueError(
            "the two plans differ in more than a variant can hold: the outline, the number of "
            "walls, bands, lamps or obstacles, or the kind of canopy."
        )
    return tuple(found)


def _space_differences(plan: Plan, other: Plan) -> list[Change]:
    found: list[Change] = []
    if plan.space.footprint != other.space.footprint:
        x0, y0, x1, y1 = other.space.bounds
        found.append(SetSize(width=x1 - x0, depth=y1 - y0))
    if plan.space.height != other.space.height:
        found.append(SetSpaceHeight(height=other.space.height))
    if plan.canopy.height != other.canopy.height:
        found.append(SetCanopyHeight(height=other.canopy.height))
    if plan.canopy.reflectance != other.canopy.reflectance:
        found.append(SetCanopyReflectance(reflectance=other.canopy.reflectance))
    if plan.photoperiod_hours != other.photoperiod_hours:
        found.append(SetPhotoperiod(photoperiod_hours=other.photoperiod_hours))
    if plan.space.door_open != other.space.door_open:
        found.append(SetDoor(door_open=other.space.door_open))
    return found


def _lining_differences(plan: Plan, other: Plan) -> list[Change]:
    found: list[Change] = []
    for wall, (old, new) in enumerate(zip(plan.walls, other.walls, strict=False)):
        for band, (one, two) in enumerate(zip(old.bands, new.bands, strict=False)):
            if one.lining != two.lining:
                which = band if len(new.bands) > 1 else None
                found.append(LineWall(wall=wall, band=which, lining=other.lining(two.lining)))
    if plan.ceiling != other.ceiling:
        found.append(LineCeiling(lining=other.lining(other.ceiling)))
    if plan.floor != other.floor:
        found.append(LineFloor(lining=other.lining(other.floor)))
    return found


def _lamp_differences(plan: Plan, other: Plan) -> list[Change]:
    found: list[Change] = []
    # A change of size or canopy height has moved the lamps already; say all that is not so.
    moved = plan
    for change in _space_differences(plan, other):
        moved = apply(moved, change)
    for k, (old, new) in enumerate(zip(moved.lamps, other.lamps, strict=False)):
        if old.model != new.model:
            found.append(SetLampModel(lamp=k, model=new.model))
        if old.hanging_height != new.hanging_height:
            found.append(SetHangingHeight(lamp=k, hanging_height=new.hanging_height))
        if old.output_percent != new.output_percent:
            found.append(SetOutput(lamp=k, output_percent=new.output_percent))
        if (old.x, old.y) != (new.x, new.y):
            found.append(SetLampPlace(lamp=k, x=new.x, y=new.y))
    return found


def _alike(made: Plan, other: Plan) -> bool:
    """Whether two plans have the same light, whatever their names and notes."""
    parts = ("space", "lamps", "obstacles", "walls", "ceiling", "floor", "canopy")
    return all(getattr(made, part) == getattr(other, part) for part in parts)
