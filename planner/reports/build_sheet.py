"""The build sheet: what one takes along to the cabinet, on one page.

Where hooks go, measured from two walls; how long the cords are; what is cut from which sheet;
where the meter stands; and the cautions for just these materials. Lengths are what a tape shows:
millimetres, or sixteenths of an inch.
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Final

from planner.estimate.worth import Cover, covers, purchase
from planner.language import inside
from planner.metrics.figures import FIGURE
from planner.plan.costs import Form
from planner.plan.lamp import Lamp
from planner.plan.plan import Plan
from planner.plan.space import Point
from planner.plan.survey import Survey
from planner.plan.tiers import held_by
from planner.reports.cautions import at_work
from planner.reports.drawings import plan_drawing
from planner.reports.report import SECTIONS, Block, Pictures, Section, Table, Words
from planner.reports.stands import Base, base_of, left_out, standing, stands_at
from planner.survey.layout import new_survey
from planner.units import LengthUnit, on_tape

if TYPE_CHECKING:
    from planner.estimate.stages import Schedule

_BROAD_M: Final = 0.20
_MOST_POINTS: Final = 48
_ABREAST: Final = 3
_OF_THEIR_MATERIAL: Final = (
    "What stands in the space is taken as made of its material; it is cut for only where that is "
    "sold by the roll or sheet, by what was said of costs."
)


# -- hooks ----------------------------------------------------------------------------------


def hooks(lamp: Lamp) -> tuple[Point, ...]:
    """Where a lamp is hung up, seen from above, in metres.

    Over its long middle line, a quarter of its length from either end; a broad panel (20 cm
    and half its length or more) over four such points; a point lamp over itself. A rule of
    this program: where a lamp has eyes of its own, they decide.
    """
    return tuple(lamp.place(*eye)[:2] for eye in _eyes(lamp))


def _eyes(lamp: Lamp) -> tuple[tuple[float, float, float], ...]:
    """Where a lamp's cords end, in its own axes."""
    length, width = lamp.model.size
    if not (length or width):
        return ((0.0, 0.0, lamp.model.housing_height),)
    broad = min(length, width) >= max(_BROAD_M, max(length, width) / 2)
    if broad:
        places = [(-0.25, -0.25), (0.25, -0.25), (0.25, 0.25), (-0.25, 0.25)]
    elif length >= width:
        places = [(-0.25, 0.0), (0.25, 0.0)]
    else:
        places = [(0.0, -0.25), (0.0, 0.25)]
    return tuple((u * length, v * width, lamp.model.housing_height) for u, v in places)


def holder(plan: Plan, lamp: Lamp, hook: int = 0) -> int | None:
    """Which obstacle, counted from 0, a hook of a lamp goes under; None: the ceiling."""
    x, y, top = lamp.place(*_eyes(lamp)[hook])
    return held_by(plan, x, y, plan.lamp_height(lamp) + top)


def cord(plan: Plan, lamp: Lamp, hook: int = 0) -> float:
    """From what holds it down to the top of a lamp's housing under one of its hooks, in metres."""
    top, under = lamp.place(*_eyes(lamp)[hook])[2], holder(plan, lamp, hook)
    level = plan.space.height if under is None else plan.obstacles[under].underside
    return max(level - plan.lamp_height(lamp) - top, 0.0)


# -- the sheet ------------------------------------------------------------------------------


def build_section(plan: Plan, unit: LengthUnit, schedule: Schedule | None = None) -> Section:
    """The build sheet of a plan; with a schedule the cords of every stage too."""
    every = [(number, lamp) for number, lamp in enumerate(plan.lamps, start=1)]
    named = [
        (f"{number}{chr(ord('a') + k)}", point, cord(plan, lamp, k), lamp, holder(plan, lamp, k))
        for number, lamp in every
        for k, point in enumerate(hooks(lamp))
    ]
    survey, said = board_of(plan)
    base = base_of(plan, [point for _, point, *_ in named] or list(survey.points))
    first, second = (inside(name) for name in base.names)
    marks = [(point, name) for name, point, *_ in named]
    shelves = any(under is not None for *_, under in named)
    columns = 6 if shelves else 5
    hung = Table(
        ("Hook", *base.heads, "Cord", "Lamp", "Under")[:columns],
        tuple(
            (
                name,
                *(on_tape(d, unit) for d in base.distances(point)),
                on_tape(long, unit),
                f"{lamp.label or lamp.model.name}{f', {lamp.leans}' if lamp.leans else ''}",
                "ceiling" if under is None else f"{under + 1}: {plan.obstacles[under].name}",
            )[:columns]
            for name, point, long, lamp, under in named
        ),
        numbers=(1, 2, 3),
        title="Hooks and cords down to the lamp, from the ceiling or the obstacle over it"
        if shelves
        else "Hooks in the ceiling, cords from there down to the lamp",
    )
    blocks: list[Block] = [
        Words(
            f"All in {'centimetres' if unit is LengthUnit.CM else 'inches'}, measured inside, "
            f"square from {first} and {second}. Measure the space before "
            "you drill or cut: the plan is as right as what was typed."
        ),
        Pictures((plan_drawing(plan, unit, (64.0, 52.0), marks),), hung if named else None),
    ]
    if named:
        blocks.append(
            Words(
                "Long lamps hang a quarter of their length from either end, broad ones at four "
                "such points; where a lamp has eyes of its own, put the hooks over those. To the "
                "cord add what knots and hooks take.",
                quiet=True,
            )
        )
    blocks += standing(plan, unit, base, built=True)
    blocks += _stages(schedule, unit)
    blocks += _cuts(plan, unit)
    blocks += _meter_points(plan, survey, said, base, unit)
    blocks += at_work(plan, unit)
    return Section("build", SECTIONS["build"], tuple(blocks), alone=True)


def _stages(schedule: Schedule | None, unit: LengthUnit) -> list[Block]:
    """How long the cords are in each stage."""
    rows = []
    for stage in () if schedule is None else schedule.stages:
        if stage.plan is not None:
            lengths = [
                on_tape(cord(stage.plan, lamp, k), unit)
                for lamp in stage.plan.lamps
                for k in range(len(hooks(lamp)))
            ]
            canopy = on_tape(stage.stage.canopy_height, unit)
            rows.append((stage.stage.name, canopy, " / ".join(dict.fromkeys(lengths))))
    if not rows:
        return []
    return [Table(("Stage", "Canopy at", "Cord"), tuple(rows), (1, 2), "Cords over the stages")]


def _cuts(plan: Plan, unit: LengthUnit) -> list[Block]:
    """The pieces of each lining, and where they lie on the roll or sheet it is bought as."""
    found = covers(plan)
    if not found:
        return []
    rows = [row for cover in found for row in _pieces(plan, cover, unit)]
    over = on_tape(plan.costs.overlap, unit)
    # Where no goods are known nothing can be said of what a piece is cut from.
    columns = 4 if any(row[3] for row in rows) else 3
    painted = any(plan.lining(cover.lining).is_paint for cover in found)
    uncut = [one for one in plan.obstacles if plan.costs.goods_of(one.lining) is None]
    made = [Words(_OF_THEIR_MATERIAL, quiet=True)] if uncut else []
    return [
        Table(
            ("Piece", "Of", "Cut or paint" if painted else "Cut", "From")[:columns],
            tuple(row[:columns] for row in rows),
            title=f"Cuts; {over} {unit.value} over on every side but of boards and at the door; "
            "what is there already needs none",
        ),
        *made,
    ]


def _pieces(plan: Plan, cover: Cover, unit: LengthUnit) -> list[tuple[str, ...]]:
    lining = plan.lining(cover.lining)
    name, goods = lining.name, plan.costs.goods_of(cover.lining)
    if lining.is_paint:
        area = FIGURE["canopy_area"]
        return [
            (part.piece.label, name, f"paint {area.text(part.area)}", "") for part in cover.parts
        ]
    if goods is None:
        return [(one.label, name, _by(one.length, one.width, unit), "") for one in cover.pieces]
    kind = "Roll" if goods.form is Form.ROLL else "Sheet"
    return [
        (
            one.label,
            name,
            _by(one.size_along, one.size_across, unit),
            f"{kind} {one.roll + 1}: {on_tape(one.along, unit)} along, "
            f"{on_tape(one.across, unit)} across",
        )
        for one in purchase(cover, goods, plan.costs).cutting.placed
    ]


def _by(one: float, other: float, unit: LengthUnit) -> str:
    return f"{on_tape(one, unit)} × {on_tape(other, unit)}"


def board_of(plan: Plan, number: int | None = None) -> tuple[Survey, str]:
    """A survey by its number from 1, else the first, else the board EN 12464-1 asks for.

    And whose holes they are. Raises ``ValueError`` where there is no survey of that number.
    """
    count = len(plan.surveys)
    if number is not None and not 1 <= number <= count:
        has = f"{count} survey{'' if count == 1 else 's'}" if count else "no survey"
        raise ValueError(f"There is no survey {number}: this plan has {has}.")
    if plan.surveys:
        found = plan.surveys[(number or 1) - 1]
        return found, f"of '{found.name}'"
    return new_survey(plan), "by the rule of EN 12464-1"


def _meter_points(
    plan: Plan, survey: Survey, said: str, base: Base, unit: LengthUnit
) -> list[Block]:
    """Where the meter stands on the canopy that is read; where something stands in it none does."""
    every = list(enumerate(survey.points, start=1))
    there = [(hole, stands_at(plan, point)) for hole, point in every if survey.on_top is None]
    taken = {hole: number for hole, number in there if number is not None}
    cells = [
        (str(hole), *(on_tape(d, unit) for d in base.distances(point)))
        for hole, point in every
        if hole not in taken
    ]
    count = len(cells)
    if count > _MOST_POINTS:
        return [Words(f"The meter goes to {count} holes {said}: print the survey board for them.")]
    down = math.ceil(count / _ABREAST)
    rows = []
    for row in range(down):
        parts = [cells[k] if k < count else ("", "", "") for k in range(row, _ABREAST * down, down)]
        rows.append(tuple(text for part in parts for text in part))
    heads = ("Hole", *base.heads) * _ABREAST
    numbers = tuple(range(len(heads)))
    of = f"{count} of {len(every)}" if taken else f"{count}"
    where = f"Where the meter stands ({of} holes {said})"
    blocks: list[Block] = [Table(heads, tuple(rows), numbers, where)] if rows else []
    out = left_out(plan, list(taken.items()), unit)
    return [*blocks, Words(out, quiet=True)] if out else blocks
