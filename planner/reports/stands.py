"""What stands in the space, and what every canopy gets: two tables of the report.

Shelves, trays and pots are measured as one builds them: how far their nearest edges are from two
walls, their size, and how high their underside and their top lie.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from planner.estimate.result import CanopyLight, Estimate
from planner.language import inside
from planner.metrics.figures import FIGURE, percent
from planner.plan.place import Place, PlaceKind
from planner.plan.plan import Plan
from planner.plan.space import Obstacle, Point, side_of
from planner.reports import content
from planner.reports.report import Table
from planner.units import COVERAGE, DLI_UNIT, PPFD_UNIT, LengthUnit, by_tape, listed, on_tape

if TYPE_CHECKING:
    from planner.estimate.outlook import Uncertainty
    from planner.estimate.stages import Schedule

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

    def gaps(self, obstacle: Obstacle) -> tuple[float, float]:
        """How far the nearest edge or corner of what stands there is from either wall, metres."""
        first, second = zip(*map(self.distances, obstacle.outline()), strict=True)
        return min(first), min(second)

    @property
    def names(self) -> tuple[str, str]:
        """What the walls are called."""
        first, second = (wall_name(self.plan, k) for k in self.walls)
        return first, second

    @property
    def heads(self) -> tuple[str, str]:
        """Headings of the two distances."""
        first, second = (f"From wall {index + 1}" for index in self.walls)
        return first, second


def wall_name(plan: Plan, index: int) -> str:
    """'Wall 4 (far side)', and which one is the door."""
    name = Place(PlaceKind.WALL, index).words(plan)
    door = ", door" if index == plan.space.door else ""
    return f"{name} ({side_of(plan.space.footprint, index)} side{door})"


def base_of(plan: Plan, points: Sequence[Point]) -> Base:
    """The two walls to measure from.

    Such that the tape meets both walls for as many points as can be, no door and none that is
    open where it can be helped, as square to each other as there are, and long.
    """
    space = plan.space
    count = space.wall_count

    def worth(i: int, j: int) -> tuple[float, ...]:
        met = sum(_meets(p, *space.wall(i)) and _meets(p, *space.wall(j)) for p in points)
        there = sum(k != space.door and not _is_open(plan, k) for k in (i, j))
        long = space.wall_length(i) + space.wall_length(j)
        return met, round(_sine(space.wall(i), space.wall(j)), 2), there, round(long, 6), -i, -j

    pairs = [(i, j) for i in range(count) for j in range(i + 1, count)]
    return Base(plan, max(pairs, key=lambda pair: worth(*pair)))


def _is_open(plan: Plan, wall: int) -> bool:
    """Whether nothing stands there that a tape could be held to."""
    return all(plan.lining(band.lining).is_opening for band in plan.walls[wall].bands)


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


# -- what stands there -----------------------------------------------------------------------

STANDS: Final = "What stands in the space"


def standing(plan: Plan, unit: LengthUnit, base: Base, *, built: bool = False) -> list[Table]:
    """A table of every obstacle, none where there is none: place from two walls, size, heights.

    Its lining, its canopy and what is wanted on it stand beside, but not where it is only
    ``built``.
    """
    if not plan.obstacles:
        return []
    u = unit.value
    heads = ("No.", "Name", *base.heads, f"Size ({u})", "Underside at", "Top at")
    rows = []
    for number, one in enumerate(plan.obstacles):
        size = (one.length, one.width, one.thickness)
        turned = f", turned by {one.rotation_deg:g}°" if one.rotation_deg % 180 else ""
        rows.append(
            (
                str(number + 1),
                f"{one.name}{turned}",
                *(on_tape(gap, unit) for gap in base.gaps(one)),
                " × ".join(on_tape(length, unit) for length in size),
                on_tape(one.underside, unit),
                on_tape(one.top, unit),
                *(() if built else (plan.lining(one.lining).name, _grows(plan, number))),
            )
        )
    if built:
        title = f"{STANDS}: its nearest edges from two walls, its heights from the floor"
        return [Table(heads, tuple(rows), (0, 2, 3, 4, 5, 6), title)]
    first, second = (inside(name) for name in base.names)
    title = f"{STANDS}: nearest edges from {first} and {second}, heights from the floor, in {u}"
    return [Table((*heads, "Lining", "On its top"), tuple(rows), (0, 2, 3, 4, 5, 6), title)]


def _grows(plan: Plan, number: int) -> str:
    """What a top carries and what is wanted on it, in a few words."""
    carried = plan.obstacles[number].canopy
    if carried is None:
        return "nothing"
    said = f"a canopy that reflects {percent(carried.reflectance)}"
    target = plan.target_on(number)
    return f"{said}; wanted: {content.wanted_band(target)}" if target is not None else said


def stands_at(plan: Plan, point: Point) -> int | None:
    """Which obstacle, from 0, stands in the plan's own canopy at a point; None: the canopy."""
    for number, one in enumerate(plan.obstacles):
        along, across = one.off_middle(*point)
        inside_it = along <= one.length / 2 + 1e-9 and across <= one.width / 2 + 1e-9
        if inside_it and one in plan.in_canopy:
            return number
    return None


def left_out(plan: Plan, holes: Sequence[tuple[int, int]], unit: LengthUnit) -> str:
    """Which holes, as (hole, obstacle there from 0), have no place for a meter; '' for none."""
    parts = []
    for number in dict.fromkeys(number for _, number in holes):
        there, one = [str(hole) for hole, at in holes if at == number], plan.obstacles[number]
        top = f" (its top is at {by_tape(one.top, unit)})" if one.canopy is not None else ""
        parts.append(f"{listed(there)} where '{one.name}' stands{top}")
    return f"Left out are holes {'; '.join(parts)}." if parts else ""


# -- every canopy ------------------------------------------------------------------------------

_OF_EACH: Final = ("mean", "minimum", "maximum", "min_over_mean", "dli", "share_inside")
EVERY_CANOPY: Final = (
    f"Every canopy, by its own target: light in {PPFD_UNIT}, DLI in {DLI_UNIT}, shares in %, area "
    "in m²"
)


def canopy_rows(estimate: Estimate, known: Uncertainty | None = None) -> list[tuple[str, ...]]:
    """Name and figures of every canopy and of all together; none where there is only one.

    All have the digits that the doubt ``known`` of the canopy judged leaves, which alone has its
    own ± (95 %) beside them.
    """
    if not estimate.tops:
        return []
    places: list[CanopyLight | None] = [*estimate.canopies, None]
    rows = []
    for (name, figures), one in zip(content.each_canopy(estimate), places, strict=True):
        judged = one is not None and one.place == estimate.place
        cells = [name]
        for key in _OF_EACH:
            figure, value = FIGURE[key], getattr(figures, key)
            standard = getattr(known, key, 0.0)
            if value is None or standard <= 0:
                cells.append(figure.number(value))
                continue
            text, half = figure.banded(value, standard, COVERAGE)
            cells.append(f"{text} ± {half}" if judged else text)
        rows.append((*cells, FIGURE["canopy_area"].number(figures.canopy_area)))
    return rows


def canopy_table(estimate: Estimate, known: Uncertainty | None) -> list[Table]:
    """The table of ``canopy_rows``; none where there is only one canopy."""
    return _table(("Canopy",), canopy_rows(estimate, known))


def canopies_of_stages(found: Schedule) -> list[Table]:
    """What every canopy gets in each stage; none where there is only one."""
    rows = [
        (stage.stage.name, *row)
        for stage in found.stages
        if stage.estimate is not None
        for row in canopy_rows(stage.estimate)
    ]
    return _table(("Stage", "Canopy"), rows)


def _table(names: tuple[str, ...], rows: Sequence[tuple[str, ...]]) -> list[Table]:
    heads = (*names, *(FIGURE[key].name for key in (*_OF_EACH, "canopy_area")))
    numbers = tuple(range(len(names), len(heads)))
    return [Table(heads, tuple(rows), numbers, EVERY_CANOPY)] if rows else []
