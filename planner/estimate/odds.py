"""Which option is the better one, and with what odds, given how well their inputs are known.

Each uncertain input (reflectance of a lining, photon flux and beam of a kind of lamp, hanging
height of a lamp) is evenly likely inside its stated range, wherever in that range its value lies
(JCGM 101:2008, 6.4.2). For each option a figure's logarithm is followed through the range of each
input by itself, at both ends and in the middle, by the core; a parabola joins them and what
several inputs do adds up. Then all inputs are drawn many times over (JCGM 101: the propagation of
distributions by Monte Carlo). What two options have in common is one unknown thing and drawn once
for both: a lining by its key and range; a lamp's photon flux by the kind of lamp, its beam by the
kind and range; a hanging height when lamp and height are the same. So the flux of the lamp, the
largest uncertainty of a level, drops out of a comparison of linings under one lamp.

The computation's own error is drawn too: that of a map's mean is about a seventh of what is
expected of a cell, found by repeating estimates with other seeds; a quarter is allowed.

Not counted is what the plan leaves out: dirt and age beyond what was entered, a beam of another
shape than its profile, specular shares and wrinkle of the linings.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Hashable, Mapping, Sequence
from dataclasses import dataclass
from enum import StrEnum
from itertools import permutations
from typing import Final

import numpy as np

from planner.estimate.outlook import Input, through_ranges
from planner.estimate.result import (
    QUICK,
    Estimate,
    FloatArray,
    measured_by,
    not_counted,
)
from planner.estimate.sensitivity import Reckoner
from planner.metrics.figures import LOWEST, money, percent
from planner.plan.lit import lit
from planner.plan.plan import Plan

DRAWS: Final = 20_000
_TAIL: Final = 2.5
"""Per cent beyond either end of an interval that holds 95 %."""
_MEAN_OF_CELL_ERROR: Final = 0.25


_TURNED_ROUND: Final = 0.002
"""Ranked the other way round are two only where either ranking parts them by more, relative."""


class By(StrEnum):
    """What options are compared by."""

    MEAN = "mean"
    LOWEST = "lowest"
    EVENNESS = "evenness"


@dataclass(frozen=True)
class Curve:
    """Logarithms of two figures over their present values through the range of an input.

    ``mean`` and ``lowest`` hold them at the low end, in the middle and at the high end.
    """

    mean: tuple[float, float, float]
    lowest: tuple[float, float, float]


@dataclass(frozen=True)
class Sway:
    """How the figures of one plan move with its inputs, each through its whole range.

    ``numeric`` is the relative error of a cell to expect from the computation.
    """

    curves: Mapping[Input, Curve]
    numeric: float = 0.0

    @property
    def relative_mean(self) -> float:
        """Relative standard uncertainty of the mean itself."""
        return float(np.exp(_drawn([self], 4_000)[By.MEAN][0]).std())


def sway(
    plan: Plan,
    estimate: Estimate | None = None,
    *,
    progress: Callable[[float], None] | None = None,
    cancelled: Callable[[], bool] | None = None,
) -> Sway | None:
    """Follow each input of a plan through its range; None for a dark plan.

    Preview quality on a small map is enough, since differences share their paths of light;
    ``estimate`` is the one compared and gives the computation's own error.

    Raises
    ------
    planner.estimate.evaluate.Cancelled
        If ``cancelled`` said so.
    """
    reckoner = Reckoner(plan, QUICK, cancelled)
    base = reckoner.base
    if base.figures.mean <= 0 or base.figures.minimum <= 0:
        return None
    inside = ~np.isnan(base.ppfd)
    areas = base.cell_area[inside]

    def figures(ppfd: FloatArray) -> tuple[float, float]:
        cells = ppfd[inside]
        mean = float(np.average(cells, weights=areas))
        return np.log(mean / base.figures.mean), np.log(cells.min() / base.figures.minimum)

    curves = {}
    for key, maps in through_ranges(reckoner, progress):
        ends = [figures(ppfd) for ppfd in maps]
        mean, lowest = zip(*ends, strict=True)
        curves[key] = Curve(mean, lowest)
    return Sway(curves, (estimate or base).numeric_error or 0.0)


@dataclass(frozen=True)
class Telling:
    """The ratio of a figure of two options, by the draws.

    ``ratio`` is the middle of the draws, ``low`` and ``high`` bound 95 % of them, ``chance``
    is the part of them above 1.
    """

    ratio: float
    low: float
    high: float
    chance: float = 0.5

    @property
    def clear(self) -> bool:
        """Whether the two can be told apart."""
        return self.low > 1 or self.high < 1

    @property
    def same(self) -> bool:
        """Whether the two have the very same light."""
        return self.low == self.high == 1

    def equal_within(self, margin: float) -> bool:
        """Whether the two are equal for a purpose that asks no better than ``margin``."""
        return 1 - margin < self.low and self.high < 1 + margin


@dataclass(frozen=True)
class Saving:
    """What one option costs less than another over a span, at the same light, by the draws."""

    middle: float
    low: float
    high: float
    chance: float


@dataclass(frozen=True)
class Odds:
    """Options set against each other; ``logs`` hold draws of each figure, (options, draws)."""

    logs: Mapping[By, FloatArray]

    @classmethod
    def of(
        cls, options: Sequence[tuple[Estimate, Sway]], draws: int = DRAWS, seed: int = 0
    ) -> Odds:
        """Draw all inputs of some options together; their estimates must not be dark."""
        # The same light reckoned in the same way is off by the same.
        whose = [(lit(one.plan), one.options, one.figures.mean) for one, _ in options]
        logs = _drawn([sway for _, sway in options], draws, seed, whose)
        mean = np.log([[estimate.figures.mean] for estimate, _ in options])
        lowest = np.log([[estimate.figures.minimum] for estimate, _ in options])
        return cls(
            {
                By.MEAN: logs[By.MEAN] + mean,
                By.LOWEST: logs[By.LOWEST] + lowest,
                By.EVENNESS: logs[By.LOWEST] + lowest - logs[By.MEAN] - mean,
            }
        )

    def telling(self, first: int, second: int, by: By = By.MEAN) -> Telling:
        """The ratio of one option's figure to another's."""
        return Telling(*_told(np.exp(self.logs[by][first] - self.logs[by][second]), 1.0))

    def saving(
        self, first: int, second: int, costs: tuple[float, float], runs: tuple[float, float]
    ) -> Saving:
        """What the first option costs less than the second.

        ``costs`` is what has to be bought for each, ``runs`` the energy of the span for each as
        it stands, both in money; the first's energy is brought to the second's light.
        """
        light = np.exp(self.logs[By.MEAN][first] - self.logs[By.MEAN][second])
        saved = costs[1] + runs[1] - costs[0] - runs[0] / light
        return Saving(*_told(saved, 0.0))

    def best(self, by: By = By.MEAN) -> tuple[float, ...]:
        """For each option the probability that it is the best of all; the very same share it."""
        winners = self.logs[by] == self.logs[by].max(axis=0)
        share = (winners / winners.sum(axis=0)).mean(axis=1)
        return tuple(float(part) for part in share)

    def contrary(self, options: Sequence[tuple[str, Estimate, Sway]]) -> str:
        """Which two options figures rank one way and the draws the other, and why; '' for none.

        Figures take the value named for each input, the draws any in its range: where the value is
        not in the middle of what the range brings, they move apart. Of several such pairs that
        which is parted farthest.
        """
        found: tuple[float, int, int] | None = None
        means, logs = [one.figures.mean for _, one, _ in options], self.logs[By.MEAN]
        for first, second in permutations(range(len(options)), 2):
            if means[first] > means[second] * (1 + _TURNED_ROUND):
                drawn = float(np.median(logs[second] - logs[first]))
                apart = min(math.log(means[first] / means[second]), drawn)
                if apart > _TURNED_ROUND and (found is None or apart > found[0]):
                    found = apart, first, second
        if found is None:
            return ""
        _, first, second = found  # so their inputs are not the same
        (name, one, sway_of), (other_name, other, other_sway) = options[first], options[second]

        def shift(sway: Sway, key: Input) -> float:
            low, middle, high = sway.curves[key].mean if key in sway.curves else (0.0, 0.0, 0.0)
            return (low + 4 * middle + high) / 6  # the mean of a parabola (Simpson)

        keys = dict.fromkeys((*sway_of.curves, *other_sway.curves))
        moved = {key: shift(sway_of, key) - shift(other_sway, key) for key in keys}
        why = max(moved, key=lambda key: abs(moved[key]))
        text = (
            f"By the values named '{name}' has more light than '{other_name}', by the odds less: "
            f"these take the {why.words} anywhere in its range"
        )
        linings = {lining.key: lining for plan in (one.plan, other.plan) for lining in plan.linings}
        lining = linings.get(str(why.of)) if why.quantity == "reflectance" else None
        if lining is None:
            return f"{text}."
        ends = f"{percent(lining.low)} to {percent(lining.high)}"
        return f"{text} ({ends}), the figures take {percent(lining.reflectance)}."


def _told(draws: FloatArray, level: float) -> tuple[float, float, float, float]:
    """The middle of some draws, the ends of 95 % of them, and the part of them above a level."""
    low, middle, high = np.percentile(draws, [_TAIL, 50, 100 - _TAIL])
    above = float((draws > level).mean() + 0.5 * (draws == level).mean())
    return float(middle), float(low), float(high), above


def _parabola(at: FloatArray) -> FloatArray:
    """Weights (3, n) of Lagrange's parabola through -1, 0 and 1 at places (n,) between."""
    return np.stack([at * (at - 1) / 2, 1 - at**2, at * (at + 1) / 2])


def _drawn(
    sways: Sequence[Sway], draws: int, seed: int = 0, whose: Sequence[Hashable] | None = None
) -> dict[By, FloatArray]:
    """Relative logarithms of mean and lowest, each (options, draws), inputs shared.

    Of options that are the same in ``whose`` the computation's own error is drawn once.
    """
    rng = np.random.default_rng(seed)
    mean, lowest = np.zeros((len(sways), draws)), np.zeros((len(sways), draws))
    keys = dict.fromkeys(key for one in sways for key in one.curves)
    for key in keys:
        weights = _parabola(rng.uniform(-1, 1, draws))
        for k, one in enumerate(sways):
            curve = one.curves.get(key)
            if curve is not None:
                mean[k] += curve.mean @ weights
                lowest[k] += curve.lowest @ weights
    errors: dict[Hashable, FloatArray] = {}
    for k, one in enumerate(sways):
        who = k if whose is None else whose[k]
        if who not in errors:
            errors[who] = rng.standard_normal((2, draws))
        error = one.numeric * errors[who]
        mean[k] += _MEAN_OF_CELL_ERROR * error[0]
        lowest[k] += error[1]
    return {By.MEAN: mean, By.LOWEST: lowest}


def deciding(first: Sway, second: Sway, by: By = By.MEAN) -> tuple[tuple[Input, float], ...]:
    """Each input's share of what is not known of the ratio of two options, largest first.

    The share is of the variance of the ratio's logarithm (JCGM 100:2008, 5.1.3, squares add up).
    """
    at = np.linspace(-1, 1, 201)
    weights = _parabola(at)

    def moved(one: Sway, key: Input) -> FloatArray:
        curve = one.curves.get(key)
        if curve is None:
            return np.zeros(len(at))
        mean, lowest = curve.mean @ weights, curve.lowest @ weights
        return {By.MEAN: mean, By.LOWEST: lowest, By.EVENNESS: lowest - mean}[by]

    keys = dict.fromkeys((*first.curves, *second.curves))
    parts = {key: float(np.var(moved(first, key) - moved(second, key))) for key in keys}
    whole = sum(parts.values())
    if whole <= 0:
        return ()
    found = ((key, part / whole) for key, part in parts.items() if part > 0)
    return tuple(sorted(found, key=lambda one: -one[1]))


def deciding_words(found: Sequence[tuple[Input, float]]) -> str:
    """Which input decides, and which measurement would settle it."""
    if not found:
        return "No uncertain input tells the two apart; only the computation's own error does."
    key, share = found[0]
    return (
        f"What decides is the {key.words}: {percent(share)} of what is not known of the "
        f"difference; {measured_by(key.quantity, key.words)} narrows it most."
    )


NOT_COUNTED: Final = not_counted("changes of prices")


_BETTER: Final = {
    By.MEAN: ("more light", "less light", "the brighter one"),
    By.LOWEST: (f"more light at its {LOWEST}", f"less light at its {LOWEST}",
                f"the brighter one at its {LOWEST}"),
    By.EVENNESS: ("more even light", "less even light", "the more even one"),
}  # fmt: skip


def verdict(
    name: str, telling: Telling, baseline: str, by: By = By.MEAN, margin: float | None = None
) -> str:
    """Say the outcome: 'Foil beats paint with 98 % probability: 16 % more light (0.5 to 32 %)'.

    Equal are two only inside ``margin``; a difference that is not clear is not called none.
    """
    more_words, less_words, better = _BETTER[by]
    if telling.same:
        return f"{name} and {baseline} have the very same light."
    if margin is not None and telling.equal_within(margin):
        return (
            f"{name} and {baseline} are equal for your purpose: with 95 % probability within "
            f"{_percent(max(telling.high - 1, 1 - telling.low))} % of each other."
        )
    more = telling.ratio > 1
    chance = chance_words(telling.chance if more else 1 - telling.chance)
    if not telling.clear:
        first = name if more else baseline
        return (
            f"Not clear which is {better}: {first} with {chance}; {name} lies "
            f"{signed_change(telling.low)} to {signed_change(telling.high)} % from {baseline}."
        )
    ends = sorted(abs(end - 1) for end in (telling.low, telling.high))
    verb, words = ("beats", more_words) if more else ("is behind", less_words)
    return (
        f"{name} {verb} {baseline} with {chance}: {_percent(abs(telling.ratio - 1))} % {words} "
        f"({_percent(ends[0])} to {_percent(ends[1])} %)."
    )


def saving_verdict(name: str, saving: Saving, baseline: str, months: float, sign: str) -> str:
    """Say which is cheaper at the same light over a span, and how sure that is."""
    if saving.low == saving.high == 0:
        return f"{name} and {baseline} cost the same."
    ahead = saving.middle > 0
    chance = chance_words(saving.chance if ahead else 1 - saving.chance)
    first = name if ahead else baseline
    low, high = sorted((saving.low, saving.high)) if ahead else (-saving.high, -saving.low)
    return (
        f"At the same light {first} is the cheaper one over {months:.0f} months with {chance}: by "
        f"{money(abs(saving.middle))} ({money(low)} to {money(high)}) {sign}".rstrip()
        + "."
    )


def signed_change(ratio: float) -> str:
    """By how many per cent a ratio lies off 1, with its sign."""
    change = ratio - 1
    return f"{'+' if change >= 0 else '−'}{_percent(abs(change))}"


def chance_words(chance: float, *, short: bool = False) -> str:
    """A probability in words that never claims certainty; short for a cell of a table."""
    more, less = ("> ", "< ") if short else ("more than ", "less than ")
    percent = f"{100 * chance:.0f} %"
    if chance > 0.995:
        percent = f"{more}99 %"
    elif chance < 0.005:
        percent = f"{less}1 %"
    return percent if short else f"{percent} probability"


def _percent(fraction: float) -> str:
    """Whole percent, with a decimal where it would otherwise say nothing."""
    value = 100 * fraction
    return f"{value:.1f}" if value < 2 else f"{value:.0f}"
