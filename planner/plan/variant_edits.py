"""Edits of the list of variants: pure functions from one plan to the next."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from typing import Any

from planner.plan.changes import said
from planner.plan.edits import changed, each_lamp, line_all_walls, set_wall_cover
from planner.plan.lamp import Lamp, LampModel
from planner.plan.lining import Lining, WallCover
from planner.plan.plan import MAX_VARIANTS, Plan, Setup, Variant
from planner.units import LengthUnit, format_length

MAX_NAME = 120
_NAME_LENGTH = 60
_START_HEIGHT = 0.4
"""Where lamps are hung in a space that had none, in metres above the canopy."""


# -- edits of the list ------------------------------------------------------------------


def add_variants(plan: Plan, *named: tuple[str, Setup]) -> Plan:
    """Keep setups under these names; a name already taken gets a number behind it."""
    kept = list(plan.variants)
    for name, setup in named:
        free = free_name([one.name for one in kept], name)
        kept.append(Variant(key=_free_key(kept), name=free, setup=setup.setup))
    return changed(plan, variants=tuple(kept))


def _free_key(variants: Iterable[Variant]) -> str:
    taken = {variant.key for variant in variants}
    number = len(taken) + 1
    while f"variant-{number}" in taken:
        number += 1
    return f"variant-{number}"


def free_name(taken: Sequence[str], name: str) -> str:
    """The name, or the name with the first number that makes it free."""
    found, number = name, 2
    while found in taken:
        tail = f" ({number})"
        found, number = name[: MAX_NAME - len(tail)] + tail, number + 1
    return found


def remove_variant(plan: Plan, key: str) -> Plan:
    """Take a variant out; where it was the baseline, the plan itself is."""
    rest = tuple(one for one in plan.variants if one.key != key)
    baseline = None if plan.baseline == key else plan.baseline
    return changed(plan, variants=rest, baseline=baseline)


def change_variant(plan: Plan, key: str, /, **parts: Any) -> Plan:
    """Replace parts of one variant (name, note, setup)."""

    def put(variant: Variant) -> Variant:
        old = {name: getattr(variant, name) for name in Variant.model_fields}
        return Variant.model_validate({**old, **parts})

    return changed(plan, variants=tuple(put(v) if v.key == key else v for v in plan.variants))


def move_variant(plan: Plan, key: str, to: int) -> Plan:
    """Give a variant another place in the list."""
    variants = list(plan.variants)
    variants.remove(plan.variant(key))
    variants.insert(to, plan.variant(key))
    return changed(plan, variants=tuple(variants))


def duplicate_variant(plan: Plan, key: str) -> Plan:
    """One more variant just as this one, right behind it."""
    one = plan.variant(key)
    place = [variant.key for variant in plan.variants].index(key)
    made = add_variants(plan, (f"{one.name}, copy"[:MAX_NAME], one.setup))
    return move_variant(made, made.variants[-1].key, place + 1)


def open_variant(plan: Plan, key: str) -> Plan:
    """Put a variant's setup into the plan; the plan's own stays as a variant where it is none."""
    setup = plan.variant(key).setup
    known = any(variant.setup == plan.setup for variant in plan.variants)
    kept = plan if known else add_variants(plan, (f"{plan.name}, before"[:MAX_NAME], plan))
    return kept.with_setup(setup)


def adopt_variant(plan: Plan, key: str) -> Plan:
    """Make a variant the plan itself; it leaves the list."""
    return remove_variant(plan.with_setup(plan.variant(key).setup), key)


# -- makers -----------------------------------------------------------------------------


def name_of(before: Setup, setup: Setup, unit: LengthUnit = LengthUnit.CM) -> str:
    """A name for a setup, from what differs; empty where nothing does."""
    texts = said(before, setup, unit)
    if len(texts) == 1 and texts[0].startswith("all walls: "):
        texts = (texts[0].removeprefix("all walls: "),)
    text = ", ".join(texts)
    if len(text) > _NAME_LENGTH and len(texts) > 1:
        text = f"{texts[0]} and {len(texts) - 1} more"
    return (text[:1].upper() + text[1:])[:_NAME_LENGTH]


def heights_between(low: float, high: float, count: int) -> list[float]:
    """So many heights in metres, evenly from the lowest to the highest.

    Raises
    ------
    ValueError
        If the range does not rise or fewer than two heights are asked.
    """
    if count < 2 or high <= low:
        raise ValueError("a range of heights needs a lower end, a higher one and at least two.")
    return [round(low + (high - low) * k / (count - 1), 6) for k in range(count)]


def try_all(
    plan: Plan,
    *,
    linings: Sequence[Lining] = (),
    wall: int | None = None,
    lamps: Sequence[tuple[LampModel, int]] = (),
    heights: Sequence[float] = (),
    unit: LengthUnit = LengthUnit.CM,
) -> Plan:
    """One more variant for every lining with every kind and number of lamps at every height.

    What is not given stays as in the plan. Linings go onto all walls, or onto one; so many
    lamps of a kind take the place of those that hang, evenly spread over the footprint; heights
    (metres, from the lamp's face to the canopy) are those of all lamps.

    Raises
    ------
    ValueError
        If they are too many, do not fit, or a height is asked where no lamp hangs.
    """
    made: list[tuple[str, Setup]] = []
    for lining in linings or (None,):
        for lamp in lamps or (None,):
            for height in heights or (None,):
                setup, names = plan.setup, []
                if lining is not None:
                    setup = _lined(setup, lining, wall)
                    names.append(lining.name if wall is None else f"Wall {wall + 1}: {lining.name}")
                if lamp is not None:
                    setup = _hung(setup, *lamp)
                    names.append(f"{lamp[1]} x {lamp[0].name}")
                if height is not None:
                    setup = _all_lamps(setup, hanging_height=height)
                    said = format_length(height, unit)
                    names.append(said if names else f"Hanging height {said}")
                made.append((", ".join(names)[:MAX_NAME], setup))
    room = MAX_VARIANTS - len(plan.variants)
    if len(made) > room:
        raise ValueError(
            f"{len(made)} options are asked for, but a plan keeps {MAX_VARIANTS} and has room for "
            f"{room}; try fewer at once, or take some out."
        )
    return add_variants(plan, *made)


def _lined(setup: Setup, lining: Lining, wall: int | None) -> Setup:
    if wall is None:
        return line_all_walls(setup, lining)
    bands = tuple(
        band.model_copy(update={"lining": lining.key}) for band in setup.walls[wall].bands
    )
    return set_wall_cover(setup, wall, WallCover(bands=bands), lining)


def _hung(setup: Setup, model: LampModel, count: int) -> Setup:
    """So many lamps of a kind where a row or grid of them spreads most evenly over the space."""
    height = setup.lamps[0].hanging_height if setup.lamps else _START_HEIGHT
    room = setup.space.height - setup.canopy.height
    height = min(height, math.floor(100 * room) / 100)
    x0, y0, x1, y1 = setup.space.bounds
    wide, deep = x1 - x0, y1 - y0
    # As many columns as make the places of the grid most nearly square, and no place empty.
    columns = min(
        (k for k in range(1, count + 1) if count % k == 0),
        key=lambda k: abs(math.log((wide / k) / (deep * k / count))),
    )
    rows = count // columns
    places = [
        (x0 + wide * (i + 0.5) / columns, y0 + deep * (j + 0.5) / rows)
        for j in range(rows)
        for i in range(columns)
    ]
    lamps = tuple(Lamp(model=model, x=x, y=y, hanging_height=height) for x, y in places)
    return changed(setup, lamps=lamps)


def _all_lamps(setup: Setup, **parts: Any) -> Setup:
    if not setup.lamps:
        raise ValueError("no lamp hangs in the space; hang one first.")
    return each_lamp(setup, lambda lamp: lamp.model_copy(update=parts))
