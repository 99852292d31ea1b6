"""Side by side: the plan and its variants, each with its map and figures, as rows of one table.

``compare`` estimates them all; the rest reads the result: maps of difference and ratio, and the
table one decides by: light, power, money, what to buy. Each row carries the key of its side, so
that it is the same one however it is sorted or called. Wishes are kept or missed, in words; the
trade-off is the set of options that no other beats in light and in cost at once. How sure a
difference is says ``odds``.
"""

from __future__ import annotations

import contextlib
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from enum import StrEnum
from typing import Final

import numpy as np

from planner.estimate.canopies import beside
from planner.estimate.evaluate import Cache, Cancelled, evaluate
from planner.estimate.result import Estimate, EstimateOptions, FloatArray, of_plan
from planner.estimate.scene import build_scene
from planner.estimate.worth import Bill, WorthError, running, worth
from planner.metrics.figures import FIGURE, NO_VALUE, Figure, energy, money
from planner.plan.changes import said
from planner.plan.costs import Costs
from planner.plan.edits import without_walls
from planner.plan.lit import lit
from planner.plan.plan import Plan
from planner.plan.quantity import DLI, SHARE, WATTS, Quantity
from planner.plan.variant_edits import free_name
from planner.units import LengthUnit

OPEN_AIR_NAME: Final = "Open air (no walls)"


class Origin(StrEnum):
    """Where a side of a comparison comes from."""

    PLAN = "plan"
    VARIANT = "variant"
    OPEN_AIR = "open air"


Identity = tuple[Origin, str | None]
"""What tells a side from the others, whatever it is called and wherever it stands."""
PLAN_SIDE: Final[Identity] = (Origin.PLAN, None)
OPEN_AIR_SIDE: Final[Identity] = (Origin.OPEN_AIR, None)


@dataclass(frozen=True)
class Side:
    """One of the things compared.

    ``said`` says what differs from the plan, ``problems`` what could not be estimated;
    ``estimate`` is None where nothing could be. ``key`` is that of the variant.
    """

    name: str
    origin: Origin
    plan: Plan
    said: tuple[str, ...] = ()
    problems: tuple[str, ...] = ()
    estimate: Estimate | None = None
    key: str | None = None

    @property
    def identity(self) -> Identity:
        """What tells this side from the others."""
        return self.origin, self.key


@dataclass(frozen=True)
class Comparison:
    """The plan first, its variants in their order, and open air last where asked."""

    sides: tuple[Side, ...]

    @property
    def brightest(self) -> float:
        """Highest PPFD of all maps, for one shared colour scale."""
        lit = [side.estimate for side in self.sides if side.estimate is not None]
        each = (one.figures.maximum for found in lit for one in found.layers)
        return max(each, default=1.0)


def sides_of(
    plan: Plan, *, with_open_air: bool = False, unit: LengthUnit = LengthUnit.CM
) -> tuple[Side, ...]:
    """What there is to compare in a plan, without any estimate yet."""
    sides = [Side(plan.name, Origin.PLAN, plan)]
    for variant in plan.variants:
        option = plan.with_setup(variant.setup).model_copy(update={"name": variant.name})
        texts = said(plan, option, unit)
        sides.append(Side(variant.name, Origin.VARIANT, option, texts, key=variant.key))
    if with_open_air:
        texts = ("no walls, no ceiling",)
        sides.append(Side(OPEN_AIR_NAME, Origin.OPEN_AIR, without_walls(plan), texts))
    named: list[Side] = []
    for side in sides:  # a variant may be called as the plan is
        name = free_name([one.name for one in named], side.name)
        named.append(side if name == side.name else replace(side, name=name))
    return tuple(named)


def compare(
    plan: Plan,
    options: EstimateOptions | None = None,
    *,
    with_open_air: bool = False,
    unit: LengthUnit = LengthUnit.CM,
    cache: Cache | None = None,
    progress: Callable[[float], None] | None = None,
    cancelled: Callable[[], bool] | None = None,
    so_far: Callable[[Comparison], None] | None = None,
) -> Comparison:
    """Estimate the plan and all its variants.

    ``so_far`` is given what is there after each of them. One that cannot be estimated (no
    surface takes up light) says so in its ``problems``; the others go on.

    Raises
    ------
    planner.estimate.evaluate.Cancelled
        If ``cancelled`` said so.
    """
    options = options or EstimateOptions()
    cache = cache or Cache()
    sides = list(sides_of(plan, with_open_air=with_open_air, unit=unit))
    # Those with the same mirrors one after another: they share the paths of light.
    order = sorted(range(len(sides)), key=lambda k: _paths_of(sides[k].plan))
    for done, index in enumerate(order):
        if cancelled is not None and cancelled():
            raise Cancelled
        sides[index] = estimated(sides[index], options, cache, cancelled)
        if so_far is not None:
            so_far(Comparison(tuple(sides)))
        if progress is not None:
            progress((done + 1) / len(sides))
    return Comparison(tuple(sides))


def served(
    known: Comparison, plan: Plan, *, with_open_air: bool, unit: LengthUnit
) -> Comparison | None:
    """The comparison of a plan from the light of an earlier one; None where some is missing.

    Names, words and figures are those of the plan; nothing is computed.
    """
    light = {lit(side.plan): side for side in known.sides}
    sides = []
    for side in sides_of(plan, with_open_air=with_open_air, unit=unit):
        there = light.get(lit(side.plan))
        if there is None:
            return None
        estimate = None if there.estimate is None else of_plan(there.estimate, side.plan)
        sides.append(replace(side, problems=there.problems, estimate=estimate))
    return Comparison(tuple(sides))


def _paths_of(plan: Plan) -> str:
    scene = build_scene(plan)
    return repr((scene.room, scene.optics.specular, scene.optics.width))


def estimated(
    side: Side,
    options: EstimateOptions,
    cache: Cache,
    cancelled: Callable[[], bool] | None = None,
) -> Side:
    """The side with its estimate, or with the reason why there is none."""
    try:
        estimate = evaluate(side.plan, options, cache=cache, cancelled=cancelled)
    except ValueError as error:
        problems = (*side.problems, f"'{side.name}' cannot be estimated: {error}")
        return replace(side, problems=problems)
    return replace(side, estimate=estimate)


# -- maps against a baseline ------------------------------------------------------------


@dataclass(frozen=True, eq=False)
class AgainstMap:
    """A map against a baseline on the grid of the first: NaN where either has no light value.

    ``difference`` in µmol m⁻² s⁻¹ and ``ratio`` (1 = the same), shapes (ny, nx); the ratio
    is NaN also where the baseline is dark. Between the cells both are made from the light of the
    two maps, never from one another: a ratio is the quotient of the values shown at its place.
    """

    own: Estimate
    base: Estimate
    difference: FloatArray
    ratio: FloatArray

    def at(self, x: float, y: float) -> tuple[float, float]:
        """Difference and ratio at a place in metres; NaN where either map shows no light."""
        place = np.array([x]), np.array([y])
        difference, ratio = _apart(self.own.at(*place), self.base.at(*place))
        return float(difference[0]), float(ratio[0])

    def raster(self, rows: int, columns: int) -> tuple[FloatArray, FloatArray]:
        """Difference and ratio at the centres of rows x columns cells over the first's map."""
        x0, y0, x1, y1 = self.own.map.bounds
        x = x0 + (np.arange(columns) + 0.5) * (x1 - x0) / columns
        y = y0 + (np.arange(rows) + 0.5) * (y1 - y0) / rows
        base = np.where(self.base.shows(x[None], y[:, None]), self.base.map.on(x, y), np.nan)
        return _apart(self.own.map.on(x, y).astype(float), base)

    @property
    def reach(self) -> float:
        """The largest difference either way, for a colour map that diverges from 0."""
        found = np.abs(self.difference[np.isfinite(self.difference)])
        return float(found.max()) if found.size else 0.0


def against(estimate: Estimate, baseline: Estimate) -> AgainstMap:
    """Difference and ratio of two maps, place by place.

    Where the grids differ (another footprint) both are read in the middles of the first's
    cells.
    """
    own, other = estimate.ppfd, baseline.ppfd
    same = own.shape == other.shape
    if not (same and np.allclose(estimate.x, baseline.x) and np.allclose(estimate.y, baseline.y)):
        points = np.stack(np.meshgrid(estimate.x, estimate.y), axis=-1).reshape(-1, 2)
        read = np.where(baseline.map.covers(points), baseline.map.at(points), np.nan)
        other = read.reshape(own.shape)
        own = np.where(estimate.map.valid, estimate.map.at(points).reshape(own.shape), np.nan)
    return AgainstMap(estimate, baseline, *_apart(own, other))


def _apart(own: FloatArray, other: FloatArray) -> tuple[FloatArray, FloatArray]:
    with np.errstate(divide="ignore", invalid="ignore"):
        return own - other, np.where(other > 0, own / other, np.nan)


# -- the table of options -------------------------------------------------------------


@dataclass(frozen=True)
class Column:
    """One column: ``better`` is 1 where more is better, -1 where less is, 0 where neither.

    ``rule`` writes its values; without one it is a figure of that key, or ``of`` all canopies.
    """

    key: str
    name: str
    unit: str
    about: str
    better: int = 0
    rule: Callable[[float | None], str] | None = None
    of: str = ""

    @property
    def figure(self) -> Figure:
        """The figure it is."""
        return FIGURE[self.of or self.key]

    def text(self, value: float | None) -> str:
        """A canonical value as the table shows it."""
        return (self.rule or self.figure.number)(value)

    def texts(self, values: Sequence[float | None]) -> tuple[str, ...]:
        """Canonical values as the table shows them under one another."""
        return self.figure.aligned(values) if self.rule is None else tuple(map(self.text, values))

    def shown(self, value: float | None) -> float | None:
        """A canonical value in the unit shown: shares in per cent."""
        return self.figure.shown(value) if self.rule is None else value

    def heading(self, currency: str = "") -> str:
        """Name and unit; money in the user's currency."""
        unit = currency if self.unit == "money" else self.unit.replace("money", currency).strip()
        return f"{self.name} ({unit})" if unit else self.name


def _figure(key: str, better: int = 0) -> Column:
    figure = FIGURE[key]
    return Column(key, figure.name, figure.unit, figure.sentence(24), better)


def _digits(decimals: int) -> Callable[[float | None], str]:
    return lambda value: NO_VALUE if value is None else f"{value:.{decimals}f}"


COLUMNS: Final = (
    _figure("mean", 1),
    Column("of_base", "Of baseline", "%", "Mean PPFD over the baseline's.", 1, _digits(0)),
    _figure("minimum", 1),
    _figure("min_over_mean", 1),
    _figure("share_inside", 1),
    Column("inside_all", "All canopies inside", "%", "Share of all canopies together whose light "
           "lies inside the band wanted there.", 1, of="share_inside"),
    _figure("dli", 1),
    _figure("watts", -1),
    Column("kwh", "Energy a month", "kWh", "Of a month at the hours of the option.", -1,
           energy),
    Column("money", "Running", "money/month", "The energy of a month at the tariff.", -1,
           money),
    Column("cost", "To buy", "money", "All that the baseline does not have already.", -1, money),
    Column("total", "Total", "money", "To buy, and the energy of the span chosen.", -1, money),
    Column("payback", "Payback", "months", "When what is bought is paid by what is saved "
           "while the option gives the baseline's light of a day.", -1, _digits(1)),
)  # fmt: skip
COLUMN: Final = {column.key: column for column in COLUMNS}


@dataclass(frozen=True)
class Option:
    """A side as a row: ``values`` by the key of the column; ``buy`` says what is to be bought.

    ``beyond`` says which canopies beside the one judged lie out of their bands.
    """

    side: Side
    values: Mapping[str, float | None]
    buy: str
    beyond: str = ""


def option(side: Side, base: Side | None, bought: Bill | None, costs: Costs) -> Option:
    """The row of a side against the baseline; ``bought`` is None while it is not known."""
    runs = running(side.plan, costs)
    cost = None if bought is None else bought.cost
    values: dict[str, float | None] = {
        "watts": runs.watts, "kwh": runs.kwh, "money": runs.money, "cost": cost,
        "total": runs.total(cost, costs.span_months),
    }  # fmt: skip
    found = None if side.estimate is None else side.estimate.figures
    if found is not None:
        for key in ("mean", "minimum", "min_over_mean", "share_inside", "dli"):
            values[key] = FIGURE[key].of(found)
    if side.estimate is not None and side.estimate.tops:
        values["inside_all"] = side.estimate.overall.share_inside
    if side.estimate is not None and base is not None and base.estimate is not None:
        before = base.estimate.figures.mean
        values["of_base"] = 100 * side.estimate.figures.mean / before if before > 0 else None
        if bought is not None and side is not base:
            with contextlib.suppress(WorthError):  # a dark one has no payback
                values["payback"] = worth(side.estimate, base.estimate, bought, costs).payback
    plan = side.plan
    words = "" if bought is None else bought.words(lambda key: plan.lining(key).name)
    beyond = beside(side.estimate, None if base is None else base.estimate, plan)
    return Option(side, {column.key: values.get(column.key) for column in COLUMNS}, words, beyond)


def columns_of(options: Sequence[Option]) -> tuple[Column, ...]:
    """The columns that say something of some options: one of all canopies where several are."""
    several = any(one.side.estimate is not None and one.side.estimate.tops for one in options)
    return tuple(column for column in COLUMNS if several or not column.of)


@dataclass(frozen=True)
class Wish:
    """One thing that may be wished: its field in ``Wishes``, the column it is asked of.

    ``least`` says whether it is a least or a most; ``words`` say what is missed.
    """

    key: str
    column: str
    least: bool
    label: str
    quantity: Quantity
    about: str
    words: str


_MONEY: Final = Quantity("", decimals=2, step=1.0).within(0.0, 1e6)
WISHES: Final = (
    Wish("dli_low", "dli", True, "DLI at least", DLI.within(0.0, 100.0), "Light of a day.",
         "the light"),
    Wish("dli_high", "dli", False, "DLI at most", DLI.within(0.0, 100.0), "Light of a day.",
         "the upper end of the light"),
    Wish("min_over_mean", "min_over_mean", True, "Min / mean at least", SHARE,
         "How even the light is.", "the evenness"),
    Wish("watts", "watts", False, "Power at most", WATTS.within(0.0, 1e5),
         "What the lamps draw.", "the power"),
    Wish("total", "total", False, "Total at most", _MONEY,
         "To buy and the energy of the span.", "the total"),
)  # fmt: skip
"""All that can be wished, in the order in which it is asked for."""


@dataclass(frozen=True)
class Wishes:
    """What an option must keep to, as in ``WISHES``; None is no wish, evenness a fraction."""

    dli_low: float | None = None
    dli_high: float | None = None
    min_over_mean: float | None = None
    watts: float | None = None
    total: float | None = None

    def missed(self, one: Option) -> tuple[str, ...]:
        """Which wishes an option does not keep, in words; what is not known is not kept."""
        return tuple(
            words
            for wish, bound in self.all()
            for value in [one.values[wish.column]]
            for words in [_missed(COLUMN[wish.column], value, bound, least=wish.least)]
            if words
        )

    def all(self) -> tuple[tuple[Wish, float], ...]:
        """What is wished, each with its bound."""
        bounds = [(wish, getattr(self, wish.key)) for wish in WISHES]
        return tuple((wish, bound) for wish, bound in bounds if bound is not None)

    @property
    def any(self) -> bool:
        """Whether anything is wished at all."""
        return bool(self.all())


def _missed(column: Column, value: float | None, bound: float, *, least: bool) -> str:
    name = column.name
    if value is None:
        return f"{name} is not known"
    if (value >= bound) if least else (value <= bound):
        return ""
    word = "under" if least else "over"
    return f"{name} {column.text(value)} is {word} {column.text(bound)}"


def unbeaten(points: Sequence[tuple[float, ...]]) -> tuple[int, ...]:
    """Of points (light, cost, more costs) those that no other beats, by rising cost.

    A point is beaten by one that has at least its light at no more of any cost, and is better in
    one of them (Pareto's order).
    """

    def beats(one: tuple[float, ...], other: tuple[float, ...]) -> bool:
        costs = all(a <= b for a, b in zip(one[1:], other[1:], strict=True))
        return one != other and one[0] >= other[0] and costs

    order = sorted(range(len(points)), key=lambda k: (points[k][1:], -points[k][0]))
    return tuple(k for k in order if not any(beats(one, points[k]) for one in points))


@dataclass(frozen=True)
class Spot:
    """An option as a dot: what it brings and what it takes, each as it is shown."""

    name: str
    who: Identity
    light: float
    cost: float


@dataclass(frozen=True)
class TradeOff:
    """Light against cost: dots, the headings of both axes, and what is not as was asked."""

    spots: tuple[Spot, ...]
    light: str
    cost: str
    note: str


def known_cost(options: Sequence[Option], among: Sequence[str]) -> str:
    """The first of some costs that is known of at least two options, else their energy."""
    least = min(2, len(options))
    found = (key for key in among if sum(o.values[key] is not None for o in options) >= least)
    return next(found, "kwh")


def trade_off(options: Sequence[Option], light: str, cost: str, costs: Costs) -> TradeOff:
    """Options by two columns, told by their keys.

    A cost known of fewer than two tells nothing: energy stands for it, and ``note`` says so as it
    says of how many options there is no dot.
    """
    known, note = sum(one.values[cost] is not None for one in options), ""
    if known_cost(options, (cost,)) != cost:
        of = "of one option only" if known else "of any option"
        note = f"{COLUMN[cost].name} is {'' if known else 'not '}known {of}; energy stands for it. "
        cost = "kwh"
    spots = tuple(
        Spot(one.side.name, one.side.identity, y, x)
        for one in options
        for y, x in [(COLUMN[light].shown(one.values[light]), one.values[cost])]
        if x is not None and y is not None
    )
    missing = len(options) - len(spots)
    if missing:
        why = "a price" if any(one.values[cost] is None for one in options) else "the light"
        note += f"{missing} of {len(options)} cannot be shown: {why} is missing."
    words = COLUMN[cost].heading(costs.currency)
    if cost == "total":
        words += f", {costs.span_months:.0f} months"
    return TradeOff(spots, COLUMN[light].heading(costs.currency), words, note.strip())
