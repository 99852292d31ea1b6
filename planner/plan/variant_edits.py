"""Edits of the list of variants: pure functions from one plan to the next."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Sequence
from itertools import product
from typing import Any

from planner.plan.changes import ALL_WALLS, line, said
from planner.plan.dials import dial
from planner.plan.edits import changed
from planner.plan.lamp import Lamp, LampModel
from planner.plan.lining import Lining
from planner.plan.place import Place
from planner.plan.plan import MAX_VARIANTS, Plan, Setup, Variant
from planner.plan.refusal import refusal
from planner.plan.tiers import lamps_at, lighting, with_lamps
from planner.plan.turning import put_height
from planner.units import LengthUnit, capital, format_length

MAX_NAME = 120
MOST_LETTERS = 60
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
    kept = (changed(one, **parts) if one.key == key else one for one in plan.variants)
    return changed(plan, variants=tuple(kept))


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
    if len(texts) == 1:
        texts = (texts[0].removeprefix(f"{ALL_WALLS}: "),)
    text = ", ".join(texts)
    if len(text) > MOST_LETTERS and len(texts) > 1:
        text = f"{texts[0]} and {len(texts) - 1} more"
    return capital(text)[:MOST_LETTERS]


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
    place: Place | None = None,
    lamps: Sequence[tuple[LampModel, int]] = (),
    heights: Sequence[float] = (),
    unit: LengthUnit = LengthUnit.CM,
    refused: Callable[[str], None] | None = None,
) -> Plan:
    """One more variant for every lining with every kind and number of lamps at every height.

    What is not given stays as in the plan. Linings go onto all walls, or onto one place; so many
    lamps of a kind take the place of those that hang, evenly spread over the footprint; heights
    (metres, from the lamp's face to the canopy) are those of all lamps. ``refused`` is told of
    each combination that cannot be and why; the others are made all the same.

    Raises
    ------
    ValueError
        If they are too many, none of them can be, or one cannot and nobody is told.
    """
    asked = list(product(linings or (None,), lamps or (None,), heights or (None,)))
    room = MAX_VARIANTS - len(plan.variants)
    if len(asked) > room:
        raise ValueError(
            f"{len(asked)} options are asked for, but a plan keeps {MAX_VARIANTS} and has room for "
            f"{room}; try fewer at once, or take some out."
        )
    made: list[tuple[str, Setup]] = []
    problem: ValueError | None = None
    for lining, lamp, height in asked:
        names = []
        if lining is not None:
            lead = "" if place is None else f"{place.words(plan)}: "
            names.append(f"{lead}{lining.name}")
        if lamp is not None:
            names.append(f"{lamp[1]} x {lamp[0].name}")
        if height is not None:
            said = format_length(height, unit)
            names.append(said if names else f"{dial('height').label} {said}")
        name = ", ".join(names)[:MAX_NAME]
        try:
            setup = plan.setup if lining is None else line(plan.setup, place, lining)
            setup = setup if lamp is None else spread_lamps(setup, *lamp)
            if height is not None:
                setup = _all_lamps(setup, height)
        except ValueError as error:
            if refused is None:
                raise
            problem = error
            refused(f"'{name}' cannot be: {refusal(error, unit)}")
        else:
            made.append((name, setup))
    if problem is not None and not made:
        raise problem
    return add_variants(plan, *made)


def spread_lamps(setup: Setup, model: LampModel, count: int) -> Setup:
    """So many lamps of a kind where a row or grid of them spreads most evenly over the space."""
    turned = lighting(setup)
    height = lamps_at(setup, turned)[0].hanging_height if turned else _START_HEIGHT
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
    return changed(setup, lamps=with_lamps(setup, turned, lamps))


def _all_lamps(setup: Setup, height: float) -> Setup:
    if not setup.lamps:
        raise ValueError("no lamp hangs in the space; hang one first.")
    return put_height(setup, lighting(setup), height)
