"""Which option is the better one, and with what odds, given how well their inputs are known.

Each uncertain input (reflectance of a lining, photon flux of a kind of lamp, hanging height
of a lamp) is evenly likely inside its stated range, wherever in that range its value lies
(JCGM 101:2008, 6.4.2). For each option a figure's logarithm is followed through the range of
each input by itself, at both ends and in the middle, by the core; a parabola joins them and
what several inputs do adds up. Then all inputs are drawn many times over (JCGM 101: the
propagation of distributions by Monte Carlo). What two options have in common is one unknown
thing and drawn once for both: a lining by its key and range; a lamp's photon flux by the
kind of lamp; a hanging height when lamp and height are the same. So the flux of the lamp, the
largest uncertainty of a level, drops out of a comparison of linings under one lamp.

The computation's own error is drawn too: that of a map's mean is about a seventh of what is
expected of a cell, found by repeating estimates with other seeds; a quarter is allowed.

Not counted is what the plan leaves out: dirt, ageing, a lamp that does not shine like its
profile, specular shares and wrinkle of the linings.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from enum import StrEnum
from typing import Final

import numpy as np
import numpy.typing as npt

from planner.estimate.outlook import Input, through_ranges
from planner.estimate.result import Estimate, EstimateOptions, Quality
from planner.estimate.sensitivity import Reckoner
from planner.plan.plan import Plan

FloatArray = npt.NDArray[np.float64]

DRAWS: Final = 20_000
_TAIL: Final = 2.5
"""Per cent beyond either end of an interval that holds 95 %."""
_CELLS: Final = 12
_MEAN_OF_CELL_ERROR: Final = 0.25


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
    options = EstimateOptions(cells=(_CELLS, _CELLS), quality=Quality.PREVIEW)
    reckoner = Reckoner(plan, options, cancelled)
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

    def equal_within(self, margin: float) -> bool:
        """Whether the two are equal for a purpose that asks no better than ``margin``."""
        return 1 - margin < self.low and self.high < 1 + margin


@dataclass(frozen=True)
class Odds:
    """Options set against each other; ``logs`` hold draws of each figure, (options, draws)."""

    logs: Mapping[By, FloatArray]

    @classmethod
    def of(
        cls, options: Sequence[tuple[Estimate, Sway]], draws: int = DRAWS, seed: int = 0
    ) -> Odds:
        """Draw all inputs of some options together; their estimates must not be dark."""
        logs = _drawn([sway for _, sway in options], draws, seed)
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
        ratios = np.exp(self.logs[by][first] - self.logs[by][second])
        low, middle, high = np.percentile(ratios, [_TAIL, 50, 100 - _TAIL])
        chance = float((ratios > 1).mean() + 0.5 * (ratios == 1).mean())
        return Telling(float(middle), float(low), float(high), chance)

    def best(self, by: By = By.MEAN) -> tuple[float, ...]:
        """For each option the probability that it is the best of all."""
        winners = self.logs[by].argmax(axis=0)
        count = len(self.logs[by])
        share = np.bincount(winners, minlength=count) / len(winners)
        return tuple(float(part) for part in share)


def _drawn(sways: Sequence[Sway], draws: int, seed: int = 0) -> dict[By, FloatArray]:
    """Relative logarithms of mean and lowest, each (options, draws), inputs shared."""
    rng = np.random.default_rng(seed)
    mean, lowest = np.zeros((len(sways), draws)), np.zeros((len(sways), draws))
    keys = dict.fromkeys(key for one in sways for key in one.curves)
    for key in keys:
        at = rng.uniform(-1, 1, draws)
        # Lagrange's parabola through -1, 0 and 1.
        weights = np.stack([at * (at - 1) / 2, 1 - at**2, at * (at + 1) / 2])
        for k, one in enumerate(sways):
            curve = one.curves.get(key)
            if curve is not None:
                mean[k] += curve.mean @ weights
                lowest[k] += curve.lowest @ weights
    for k, one in enumerate(sways):
        error = one.numeric * rng.standard_normal((2, draws))
        mean[k] += _MEAN_OF_CELL_ERROR * error[0]
        lowest[k] += error[1]
    return {By.MEAN: mean, By.LOWEST: lowest}


def tell_means(estimate: Estimate, baseline: Estimate, of: Sway, against: Sway) -> Telling | None:
    """Compare the means of two estimates; None where one is dark."""
    if any(one.figures.mean <= 0 or one.figures.minimum <= 0 for one in (estimate, baseline)):
        return None
    return Odds.of([(estimate, of), (baseline, against)]).telling(0, 1)


def verdict(name: str, telling: Telling, baseline: str = "") -> str:
    """Say the outcome: 'Foil gives 16 % more, 0.5 to 32 %, with 98 % probability'."""
    than = f" than {baseline}" if baseline else ""
    if not telling.clear:
        return (
            f"{name}{' and ' + baseline if baseline else ''} cannot be told apart: the ratio "
            f"lies between {100 * telling.low:.0f} and {100 * telling.high:.0f} %; {name} is the "
            f"brighter one with {chance_words(telling.chance)}."
        )
    more = telling.ratio > 1
    ends = sorted(abs(end - 1) for end in (telling.low, telling.high))
    word = "more" if more else "less"
    chance = telling.chance if more else 1 - telling.chance
    return (
        f"{name} gives {_percent(abs(telling.ratio - 1))} % {word}{than} ({_percent(ends[0])} to "
        f"{_percent(ends[1])} %), with {chance_words(chance)}; clearly {word}."
    )


def chance_words(chance: float) -> str:
    """A probability in words that never claims certainty."""
    if chance > 0.995:
        return "more than 99 % probability"
    if chance < 0.005:
        return "less than 1 % probability"
    return f"{100 * chance:.0f} % probability"


def _percent(fraction: float) -> str:
    """Whole percent, with a decimal where it would otherwise say nothing."""
    value = 100 * fraction
    return f"{value:.1f}" if value < 2 else f"{value:.0f}"
