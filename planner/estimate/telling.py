"""Whether two variants can be told apart, given how well their inputs are known.

The rule. Each uncertain input (reflectance of a lining, photon flux of a kind of lamp,
hanging height of a lamp) is moved by one standard uncertainty in both plans, and the
relative change of the figure is taken in each, with its sign. An input both plans have is
the same unknown thing in both, so it is moved in both at once and only the difference of
the two relative changes counts; an input only one of them has counts in full. The squares
of these differences add up, together with the computation's own error of both (that of a
map's mean is about a seventh of what is expected of a cell, found by repeating estimates
with other seeds; a quarter is allowed), to the squared relative standard uncertainty u of
the ratio r. The band is r·exp(±1.96 u), 95 % of a log-normal; the two can be told apart
when 1 lies outside it. (GUM, JCGM 100:2008, 5.2, for correlated inputs.)

What is shared: a lining by its key; a lamp's photon flux by the kind of lamp; a hanging
height when lamp and height are the same in both. So the flux of the lamp, the largest
uncertainty of a level, drops out of a comparison of linings under one lamp.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Final

import numpy as np

from planner.estimate.result import Estimate, EstimateOptions, Quality
from planner.estimate.sensitivity import Reckoner
from planner.estimate.uncertainty import Input, moved_inputs
from planner.plan.plan import Plan
from planner.units import COVERAGE

_CELLS: Final = 12
_MEAN_OF_CELL_ERROR: Final = 0.25


@dataclass(frozen=True)
class Sway:
    """How the figures of one plan move with its inputs.

    Relative changes of the mean and of the lowest PPFD for one standard uncertainty of each
    input; ``numeric`` is the relative error of a cell to expect
    from the computation of the estimate that is compared.
    """

    mean: Mapping[Input, float]
    minimum: Mapping[Input, float]
    numeric: float = 0.0

    @property
    def relative_mean(self) -> float:
        """Relative standard uncertainty of the mean itself."""
        return math.hypot(*self.mean.values(), _MEAN_OF_CELL_ERROR * self.numeric)


def sway(
    plan: Plan,
    estimate: Estimate | None = None,
    *,
    progress: Callable[[float], None] | None = None,
    cancelled: Callable[[], bool] | None = None,
) -> Sway | None:
    """Move each input of a plan a little; None for a dark plan.

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
    lowest = int(base.ppfd[inside].argmin())
    mean: dict[Input, float] = {}
    minimum: dict[Input, float] = {}
    for key, change in moved_inputs(reckoner, progress):
        at = change[inside]
        mean[key] = float(np.average(at, weights=areas)) / base.figures.mean
        minimum[key] = float(at[lowest]) / base.figures.minimum
    numeric = (estimate or base).numeric_error or 0.0
    return Sway(mean, minimum, numeric)


@dataclass(frozen=True)
class Telling:
    """A ratio, its 95 % band, and whether 1 lies outside it."""

    ratio: float
    low: float
    high: float

    @property
    def clear(self) -> bool:
        """Whether the two can be told apart."""
        return self.low > 1 or self.high < 1


def tell(
    first: float,
    second: float,
    moved: Mapping[Input, float],
    other: Mapping[Input, float],
    numeric: float = 0.0,
) -> Telling:
    """Compare a figure ``first`` with ``second``, both above 0, by the rule above.

    ``moved`` and ``other`` hold the relative changes of the two by input, ``numeric`` the
    relative standard error of the ratio from the computation.
    """
    keys = {**moved, **other}
    parts = [moved.get(key, 0.0) - other.get(key, 0.0) for key in keys]
    spread = COVERAGE * math.hypot(*parts, numeric)
    ratio = first / second
    return Telling(ratio, ratio * math.exp(-spread), ratio * math.exp(spread))


def tell_means(estimate: Estimate, baseline: Estimate, of: Sway, against: Sway) -> Telling | None:
    """Compare the means of two estimates; None where one is dark."""
    one, two = estimate.figures.mean, baseline.figures.mean
    if one <= 0 or two <= 0:
        return None
    numeric = _MEAN_OF_CELL_ERROR * math.hypot(of.numeric, against.numeric)
    return tell(one, two, of.mean, against.mean, numeric)


def verdict(name: str, telling: Telling, baseline: str = "") -> str:
    """Say the outcome: White board gives 12 % more, between 5 and 19 %; clearly more."""
    than = f" than {baseline}" if baseline else ""
    if not telling.clear:
        return (
            f"{name}{' and ' + baseline if baseline else ''} cannot be told apart: the ratio "
            f"lies between {100 * telling.low:.0f} and {100 * telling.high:.0f} %."
        )
    more = telling.ratio > 1
    change = abs(telling.ratio - 1)
    ends = sorted(abs(end - 1) for end in (telling.low, telling.high))
    word = "more" if more else "less"
    return (
        f"{name} gives {_percent(change)} % {word}{than}, between {_percent(ends[0])} and "
        f"{_percent(ends[1])} %; clearly {word}."
    )


def _percent(fraction: float) -> str:
    """Whole percent, with a decimal where it would otherwise say nothing."""
    value = 100 * fraction
    return f"{value:.1f}" if value < 2 else f"{value:.0f}"
