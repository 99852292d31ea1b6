"""The options one decides between as rows of one table: light, power, money, what to buy.

Each option carries the key of its side, so that it is the same one however it is sorted or
called. Wishes are kept or missed, in words; the trade-off is the set of options that no other
beats in light and in cost at once.
"""

from __future__ import annotations

import contextlib
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, fields
from typing import Final

from planner.estimate.compare import Side
from planner.estimate.worth import Bill, WorthError, running, worth
from planner.metrics.figures import FIGURE, NO_VALUE
from planner.plan.costs import Costs


@dataclass(frozen=True)
class Column:
    """One column: ``better`` is 1 where more is better, -1 where less is, 0 where neither."""

    key: str
    name: str
    unit: str
    about: str
    better: int = 0
    decimals: int | None = None

    def text(self, value: float | None) -> str:
        """A canonical value as the table shows it."""
        if value is None:
            return NO_VALUE
        if self.decimals is None:
            return FIGURE[self.key].number(value)
        return f"{value:.{self.decimals}f}".replace("-", "\u2212")

    def shown(self, value: float | None) -> float | None:
        """A canonical value in the unit shown: shares in per cent."""
        return value if self.decimals is not None else FIGURE[self.key].shown(value)

    def heading(self, currency: str = "") -> str:
        """Name and unit; money in the user's currency."""
        unit = currency if self.unit == "money" else self.unit.replace("money", currency).strip()
        return f"{self.name} ({unit})" if unit else self.name


def _light(key: str, better: int = 0) -> Column:
    figure = FIGURE[key]
    return Column(key, figure.name, figure.unit, figure.sentence(24), better)


COLUMNS: Final = (
    _light("mean", 1),
    Column("of_base", "Of baseline", "%", "Mean PPFD over the baseline's.", 1, 0),
    _light("minimum", 1),
    _light("min_over_mean", 1),
    _light("share_inside", 1),
    _light("dli", 1),
    Column("watts", "Power", "W", "What the lamps draw as they stand.", -1, 0),
    Column("kwh", "Energy", "kWh/month", "Of a month at the hours of the option.", -1, 1),
    Column("money", "Running", "money/month", "The energy of a month at the tariff.", -1, 2),
    Column("cost", "To buy", "money", "All that the baseline does not have already.", -1, 2),
    Column("total", "Total", "money", "To buy, and the energy of the span chosen.", -1, 2),
    Column("payback", "Payback", "months", "When what is bought is paid by what is saved "
           "while the option gives the baseline's light of a day.", -1, 1),
)  # fmt: skip
COLUMN: Final = {column.key: column for column in COLUMNS}


@dataclass(frozen=True)
class Option:
    """A side as a row: ``values`` by the key of the column; ``buy`` says what is to be bought."""

    side: Side
    values: Mapping[str, float | None]
    buy: str


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
    if side.estimate is not None and base is not None and base.estimate is not None:
        before = base.estimate.figures.mean
        values["of_base"] = 100 * side.estimate.figures.mean / before if before > 0 else None
        if bought is not None and side is not base:
            with contextlib.suppress(WorthError):  # a dark one has no payback
                values["payback"] = worth(side.estimate, base.estimate, bought, costs).payback
    plan = side.plan
    words = "" if bought is None else bought.words(lambda key: plan.lining(key).name)
    return Option(side, {column.key: values.get(column.key) for column in COLUMNS}, words)


@dataclass(frozen=True)
class Wishes:
    """What an option must keep to; None where nothing is wished. Evenness is a fraction."""

    dli_low: float | None = None
    dli_high: float | None = None
    min_over_mean: float | None = None
    watts: float | None = None
    total: float | None = None

    def missed(self, one: Option) -> tuple[str, ...]:
        """Which wishes an option does not keep, in words; what is not known is not kept."""
        return tuple(
            words
            for key, bound, least in (
                ("dli", self.dli_low, True),
                ("dli", self.dli_high, False),
                ("min_over_mean", self.min_over_mean, True),
                ("watts", self.watts, False),
                ("total", self.total, False),
            )
            if bound is not None
            for words in [_missed(COLUMN[key], one.values[key], bound, least=least)]
            if words
        )

    @property
    def any(self) -> bool:
        """Whether anything is wished at all."""
        return any(getattr(self, one.name) is not None for one in fields(self))


def _missed(column: Column, value: float | None, bound: float, *, least: bool) -> str:
    name = column.name
    if value is None:
        return f"{name} is not known"
    if (value >= bound) if least else (value <= bound):
        return ""
    word = "under" if least else "over"
    return f"{name} {column.text(value)} is {word} {column.text(bound)}"


def unbeaten(points: Sequence[tuple[float, float]]) -> tuple[int, ...]:
    """Of points (light, cost) those that no other beats in both, by rising cost.

    A point is beaten by one that has at least its light at no more cost, and is better in one
    of the two (Pareto's order).
    """
    order = sorted(range(len(points)), key=lambda k: (points[k][1], -points[k][0]))
    found: list[int] = []
    best = float("-inf")
    for k in order:
        if points[k][0] > best or (found and points[k] == points[found[-1]]):
            found.append(k)
            best = points[k][0]
    return tuple(found)
