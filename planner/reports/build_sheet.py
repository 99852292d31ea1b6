"""The build sheet: what one takes along to the cabinet, on one page.

Where hooks go, measured from two walls; how long the cords are; what is cut from which sheet;
where the meter stands; and the cautions for just these materials. Lengths are what a tape shows:
millimetres, or sixteenths of an inch.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from planner.estimate.worth import Cover, covers, purchase
from planner.language import inside
from planner.plan.costs import Form
from planner.plan.lamp import Lamp
from planner.plan.place import Place, PlaceKind
from planner.plan.plan import Plan
from planner.plan.space import Point, side_of
from planner.plan.survey import Survey
from planner.plan.tiers import held_by
from planner.reports.cautions import at_work
from planner.reports.drawings import plan_drawing
from planner.reports.report import SECTIONS, Block, Pictures, Section, Table, Words
from planner.survey.layout import new_survey
from planner.units import LengthUnit, on_tape

if TYPE_CHECKING:
    from planner.estimate.stages import Schedule

_BROAD_M: Final = 0.20
_MOST_POINTS: Final = 48
_ABREAST: Final = 3


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


# -- distances from two walls ----------------------------------------------------------------


@dataclass(frozen=True)
class Base:
    """Two walls that all is measured from, square to each."""

    plan: Plan
    walls: tuple[int, int]

    def distances(self, point: Point) -> tuple[float, float]:
        """How far a point is from either wall, in metres."""
        first, second = (_from_line(point, *self.plan.space.wall(k)) for k in self.walls)
        return first, second

    @property
    def names(self) -> tuple[str, str]:
        """What the walls are called."""
        first, second = (wall_name(self.plan, k) for k in self.walls)
        return first, second


def wall_name(plan: Plan, index: int) -> str:
    """'Wall 4 (far side)', and which one is the door."""
    name = Place(PlaceKind.WALL, index).words(plan)
    door = ", door" if index == plan.space.door else ""
    return f"{name} ({side_of(plan.space.footprint, index)} side{door})"


def base_of(plan: Plan, points: Sequence[Point]) -> Base:
    """The two walls to measure from.

    Such that the tape meets both walls for as many points as can be, no door where it can be
    helped, as square to each other as there are, and long.
    """
    space = plan.space
    count = space.wall_count

    def worth(i: int, j: int) -> tuple[float, ...]:
        met = sum(_meets(p, *space.wall(i)) and _meets(p, *space.wall(j)) for p in points)
        no_door = space.door not in {i, j}
        long = space.wall_length(i) + space.wall_length(j)
        return met, round(_sine(space.wall(i), space.wall(j)), 2), no_door, round(long, 6), -i, -j

    pairs = [(i, j) for i in range(count) for j in range(i + 1, count)]
    return Base(plan, max(pairs, key=lambda pair: worth(*pair)))


def _from_line(point: Point, a: Point, b: Point) -> float:
    (ax, ay), (bx, by) = a, b
    return abs((bx - ax) * (point[1] - ay) - (by - ay) * (point[0] - ax)) / math.dist(a, b)


def _meets(point: Point, a: Point, b: Point) -> bool:
    """Whether a tape held square to a wall meets it within its ends."""
    along = (point[0] - a[0]) * (b[0] - a[0]) + (point[1] - a[1]) * (b[1] - a[1])
    return -1e-9 <= along <= math.dist(a, b) ** 2 + 1e-9


def _sine(one: tuple[Point, Point], other: tuple[Point, Point]) -> float:
    (a, b), (c, d) = one, other
    u, v = (b[0] - a[0], b[1] - a[1]), (d[0] - c[0], d[1] - c[1])
    return abs(u[0] * v[1] - u[1] * v[0]) / (math.hypot(*u) * math.hypot(*v))


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
        ("Hook", *_from(base), "Cord", "Lamp", "Under")[:columns],
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
    blocks += _stages(schedule, unit)
    blocks += _cuts(plan, unit)
    blocks += _meter_points(survey, said, base, unit)
    blocks += at_work(plan, unit)
    return Section("build", SECTIONS["build"], tuple(blocks), alone=True)


def _from(base: Base) -> tuple[str, str]:
    """Headings of the two distances."""
    first, second = (f"From wall {index + 1}" for index in base.walls)
    return first, second


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
    made = "; obstacles are of their material" if plan.obstacles else ""
    # Where no goods are known nothing can be said of what a piece is cut from.
    columns = 4 if any(row[3] for row in rows) else 3
    return [
        Table(
            ("Piece", "Of", "Cut", "From")[:columns],
            tuple(row[:columns] for row in rows),
            title=f"Cuts; {over} {unit.value} over on every side but at the door{made}; "
            "what is painted or there already needs none",
        )
    ]


def _pieces(plan: Plan, cover: Cover, unit: LengthUnit) -> list[tuple[str, ...]]:
    name = plan.lining(cover.lining).name
    goods = plan.costs.goods_of(cover.lining)
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


def _meter_points(survey: Survey, said: str, base: Base, unit: LengthUnit) -> list[Block]:
    count = len(survey.points)
    if count > _MOST_POINTS:
        return [Words(f"The meter goes to {count} holes {said}: print the survey board for them.")]
    cells = [
        (str(hole), *(on_tape(d, unit) for d in base.distances(point)))
        for hole, point in enumerate(survey.points, start=1)
    ]
    down = math.ceil(count / _ABREAST)
    rows = []
    for row in range(down):
        parts = [cells[k] if k < count else ("", "", "") for k in range(row, _ABREAST * down, down)]
        rows.append(tuple(text for part in parts for text in part))
    heads = ("Hole", *_from(base)) * _ABREAST
    numbers = tuple(range(len(heads)))
    return [Table(heads, tuple(rows), numbers, f"Where the meter stands ({count} holes {said})")]
