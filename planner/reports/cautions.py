"""Cautions for just what a plan holds: a sentence each, and the rest for whoever asks.

The words come from ``resources/catalogue/cautions.json`` and, for the rest, from the help page
on cautions; only the plan's own numbers are put in here. They defer to makers' instructions,
local codes and licensed practice and never say that something is safe.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import Final

from planner.catalogue.library import CautionBook, caution_notes, load_cautions
from planner.estimate.worth import air_flow
from planner.metrics.figures import significant
from planner.plan.checks import distance
from planner.plan.lining import Caution, Lining
from planner.plan.place import Place, lining_at, opens, surfaces
from planner.plan.plan import Plan
from planner.reports.report import Warned
from planner.units import LengthUnit, by_tape

RISE_K: Final = 5.0
"""The rise above the room for which a flow of air is named (common practice, no source)."""

_WHILE_BUILDING: Final = (
    Caution.CONDUCTS,
    Caution.BURNS,
    Caution.MELTS,
    Caution.TEARS,
    Caution.HOLDS_MOISTURE,
)
"""What is to be heeded of a lining while it is put up; the rest shows in use."""
_FEEDS_FIRE: Final = {Caution.BURNS, Caution.MELTS}


def cautions(plan: Plan, unit: LengthUnit, book: CautionBook | None = None) -> tuple[Warned, ...]:
    """What a plan asks for care about, the mains first and the linings last."""
    book = book or load_cautions()
    told: set[tuple[str, ...]] = set()
    general = []
    for one in _of_the_whole(plan, unit, book):
        # Two that stand under one heading share its points; they are told once.
        general.append(one if one.rest not in told else replace(one, rest=()))
        told.add(one.rest)
    return (*general, *of_linings(plan, book))


def at_work(plan: Plan, unit: LengthUnit) -> tuple[Warned, ...]:
    """What to heed while building: the mains, the clearance, the load, and the linings."""
    book = load_cautions()
    titles = {book.general[key].title for key in ("mains", "clearance", "hanging")}
    general = (one for one in _of_the_whole(plan, unit, book) if one.title in titles)
    linings = of_linings(plan, book, _WHILE_BUILDING)
    return (
        *(replace(one, rest=()) for one in general),
        *(Warned(one.title, " ".join((one.sentence, *one.rest))) for one in linings),
    )


def of_linings(
    plan: Plan, book: CautionBook, kinds: Sequence[Caution] = tuple(Caution)
) -> tuple[Warned, ...]:
    """What the materials of a plan ask for, each caution once with all it is about."""
    used = _linings_in_use(plan)
    found = []
    for caution in kinds:
        names = [lining.name for lining in used if caution in lining.cautions]
        if names:
            words = book.text(caution)
            first, *rest = _sentences(words.text)
            found.append(Warned(f"{words.title}: {'; '.join(names)}", first, tuple(rest)))
    return tuple(found)


def _of_the_whole(plan: Plan, unit: LengthUnit, book: CautionBook) -> Iterator[Warned]:
    count = len(plan.lamps)
    lamps = f"{count} lamp{'' if count == 1 else 's'}"
    watts = plan.watts
    if count:
        yield _told(book, "mains", lamps=lamps)
    if watts > 0:
        yield _told(
            book, "heat", watts=significant(watts), rise=f"{RISE_K:g}",
            flow=significant(air_flow(watts, RISE_K), 2),
        )  # fmt: skip
    near = nearest_fuel(plan)
    if near is not None:
        place, apart, index = near
        where = f"{_name_at(plan, place)} on {place.inside(plan)}"
        said = by_tape(apart, unit)
        yield _told(book, "clearance", lining=where, distance=said, lamp=str(index + 1))
    if count:
        yield _told(book, "eyes")
        yield _told(book, "hanging", lamps=lamps)
    if _enclosed(plan):
        volume = significant(plan.space.area * plan.space.height, 2)
        yield _told(book, "mould", volume=volume)
        yield _told(book, "co2")


def _told(book: CautionBook, key: str, **values: str) -> Warned:
    words = book.general[key]
    return Warned(words.title, words.sentence.format(**values), caution_notes()[words.page])


def nearest_fuel(plan: Plan) -> tuple[Place, float, int] | None:
    """The place lined with what burns or melts that is nearest to a lamp, how far, and to which."""
    found = [
        (distance(plan, place, lamp), index, place)
        for place in surfaces(plan)
        if _feeds_fire(lining_at(plan, place)) and not opens(plan, place)
        for index, lamp in enumerate(plan.lamps)
    ]
    if not found:
        return None
    apart, index, place = min(found)
    return place, apart, index


def _feeds_fire(lining: Lining | None) -> bool:
    return lining is not None and bool(_FEEDS_FIRE & set(lining.cautions))


def _name_at(plan: Plan, place: Place) -> str:
    lining = lining_at(plan, place)
    return "" if lining is None else lining.name


def _linings_in_use(plan: Plan) -> tuple[Lining, ...]:
    """The linings that are up somewhere, in the plan's order; an open door keeps its own."""
    used = {lining_at(plan, place) for place in surfaces(plan)}
    return tuple(lining for lining in plan.linings if lining in used)


def _enclosed(plan: Plan) -> bool:
    """Whether there is a wall at all; in open air nothing gathers."""
    return any(not plan.lining(b.lining).is_opening for cover in plan.walls for b in cover.bands)


def _sentences(text: str) -> list[str]:
    parts = text.split(". ")
    return [part if part.endswith(".") else f"{part}." for part in parts]
