"""Edits of the list of variants: pure functions from one plan to the next."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Any

from planner.plan.changes import said
from planner.plan.edits import changed, each_lamp, line_all_walls, set_wall_cover
from planner.plan.lining import Lining, WallCover
from planner.plan.plan import Plan, Setup, Variant
from planner.units import LengthUnit, format_length

MAX_NAME = 120
_NAME_LENGTH = 60


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


def try_linings(plan: Plan, linings: Sequence[Lining], wall: int | None = None) -> Plan:
    """One more variant for each lining, on all walls or on one."""
    made: list[tuple[str, Setup]] = []
    for lining in linings:
        if wall is None:
            made.append((lining.name, line_all_walls(plan.setup, lining)))
        else:
            cover = WallCover(
                bands=tuple(
                    band.model_copy(update={"lining": lining.key})
                    for band in plan.walls[wall].bands
                )
            )
            name = f"Wall {wall + 1}: {lining.name}"[:MAX_NAME]
            made.append((name, set_wall_cover(plan.setup, wall, cover, lining)))
    return add_variants(plan, *made)


def try_heights(
    plan: Plan, low: float, high: float, count: int, unit: LengthUnit = LengthUnit.CM
) -> Plan:
    """One more variant for each of ``count`` hanging heights from ``low`` to ``high`` metres.

    Raises
    ------
    ValueError
        If the range does not rise, fewer than two heights are asked, no lamp hangs, or it
        does not fit under the ceiling.
    """
    if count < 2 or high <= low:
        raise ValueError("a range of heights needs a lower end, a higher one and at least two.")
    heights = [round(low + (high - low) * k / (count - 1), 6) for k in range(count)]
    made = (
        (f"Hanging height {format_length(one, unit)}", _all_lamps(plan.setup, hanging_height=one))
        for one in heights
    )
    return add_variants(plan, *made)


def _all_lamps(setup: Setup, **parts: Any) -> Setup:
    if not setup.lamps:
        raise ValueError("no lamp hangs in the space; hang one first.")
    return each_lamp(setup, lambda lamp: lamp.model_copy(update=parts))
