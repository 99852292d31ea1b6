"""Surveys against each other: what is brighter, by how much, and whether that is certain.

Compared hole by hole, what the surveys share drops out: with one meter its gain, and at
each hole the shape of the light. Noise and placement remain, and they are what decides.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np

from planner.plan.survey import Survey
from planner.survey.statistics import FloatArray, gain_standard, hole_means, reading_noise

COVERAGE: Final = 1.96
"""Standard uncertainties either side that make a 95 % interval."""
SAME_PLACE_M: Final = 0.005
_FEW_PAIRS: Final = 4
_FIGURES: Final[dict[str, Callable[[FloatArray], float]]] = {
    "mean": lambda means: float(means.mean()),
    "min": lambda means: float(means.min()),
    "max": lambda means: float(means.max()),
}


@dataclass(frozen=True)
class Pairing:
    """One survey over another, hole by hole.

    ``ratio`` is that of the means over the holes both have; ``uncertainty`` its standard
    uncertainty by noise and placement (and gain, where the meters differ), ``spread`` the
    standard deviation of the single ratios. ``holes`` counts the pairs.
    """

    first: str
    second: str
    ratio: float
    uncertainty: float
    spread: float
    holes: int
    one_meter: bool
    single_hole: float

    @property
    def difference_is_certain(self) -> bool:
        """Whether the ratio differs from 1 by more than its 95 % interval."""
        return abs(self.ratio - 1) > COVERAGE * self.uncertainty

    def words(self) -> str:
        """The verdict in a sentence or two."""
        percent = abs(self.ratio - 1) * 100
        way = "above" if self.ratio >= 1 else "below"
        band = COVERAGE * self.uncertainty * 100
        common = (
            "the meter's gain drops out"
            if self.one_meter
            else "two meters were used, so their gains do not drop out"
        )
        figures = (
            f"'{self.first}' reads {percent:.1f} % {way} '{self.second}', ± {band:.1f} % over "
            f"{self.holes} holes ({common})."
        )
        if self.difference_is_certain:
            return f"{figures} The difference is larger than what the readings can resolve."
        return f"{figures} The readings cannot tell the two apart."


@dataclass(frozen=True)
class Rank:
    """A survey's place in a ranking: its figure in µmol m⁻² s⁻¹ and its ratio to the base."""

    name: str
    key: str
    value: float
    ratio: float


def compare(first: Survey, second: Survey) -> Pairing | None:
    """Compare two surveys over the holes they share (same place within 5 mm).

    None when they share no hole with light in both. The uncertainty of the ratio is the
    larger of what the noise of the readings gives and what the scatter of the single
    ratios about it shows; the scatter also holds true differences in shape, so that the
    statement errs on the careful side where there are few holes.
    """
    means_a, counts_a, at_a = _by_place(first)
    means_b, counts_b, at_b = _by_place(second)
    pairs = [(a, b) for a, b in _matched(at_a, at_b) if means_a[a] > 0 and means_b[b] > 0]
    if not pairs:
        return None
    index_a, index_b = (np.array(column) for column in zip(*pairs, strict=True))
    one, other = means_a[index_a], means_b[index_b]
    ratio = float(one.sum() / other.sum())
    noise_a, noise_b = reading_noise(first)[0], reading_noise(second)[0]
    by_noise = math.sqrt(
        float(((noise_a * one) ** 2 / counts_a[index_a]).sum()) / float(one.sum()) ** 2
        + float(((noise_b * other) ** 2 / counts_b[index_b]).sum()) / float(other.sum()) ** 2
    )
    single = one / other
    spread = float(single.std(ddof=1)) if len(pairs) > 1 else 0.0
    # Scatter of the residuals about the common ratio, as of a ratio estimator.
    residual = one - ratio * other
    by_scatter = (
        math.sqrt(float((residual**2).sum()) / (len(pairs) - 1) * len(pairs)) / float(one.sum())
        if len(pairs) >= _FEW_PAIRS
        else 0.0
    )
    one_meter = first.meter.name == second.meter.name
    gain = 0.0 if one_meter else math.hypot(gain_standard(first.meter), gain_standard(second.meter))
    return Pairing(
        first=first.name,
        second=second.name,
        ratio=ratio,
        uncertainty=ratio * math.hypot(max(by_noise, by_scatter), gain),
        spread=spread,
        holes=len(pairs),
        one_meter=one_meter,
        single_hole=math.hypot(max(spread, math.hypot(noise_a, noise_b) * ratio), gain * ratio),
    )


def ranking(
    surveys: Sequence[Survey], by: str = "mean", base: str | None = None
) -> tuple[Rank, ...]:
    """Surveys from bright to dim by ``mean``, ``min`` or ``max`` of their holes.

    ``base`` is the key of the survey whose figure counts as 1 (the brightest by default).
    Ratios are quotients of the same figures whatever the base, so they agree under any
    change of it: ratio to B = ratio to A / ratio of B to A.

    Raises
    ------
    ValueError
        If the base has no readings or ``by`` is none of the three.
    """
    if by not in _FIGURES:
        raise ValueError(f"a ranking is by mean, min or max, not by '{by}'.")
    rows = []
    for survey in surveys:
        means = hole_means(survey)[1]
        if len(means):
            rows.append((survey, _FIGURES[by](means)))
    rows.sort(key=lambda row: -row[1])
    if not rows:
        return ()
    values = {survey.key: value for survey, value in rows}
    base = rows[0][0].key if base is None else base
    if base not in values or values[base] <= 0:
        raise ValueError("the base of a ranking must be a survey with light in its readings.")
    return tuple(
        Rank(name=survey.name, key=survey.key, value=value, ratio=value / values[base])
        for survey, value in rows
    )


def ratios_by_hole(first: Survey, second: Survey) -> tuple[tuple[float, float, float], ...]:
    """x, y and first over second at each hole both surveys have, for a map of ratios."""
    means_a, _, at_a = _by_place(first)
    means_b, _, at_b = _by_place(second)
    return tuple(
        (float(at_a[a][0]), float(at_a[a][1]), float(means_a[a] / means_b[b]))
        for a, b in _matched(at_a, at_b)
        if means_b[b] > 0
    )


def _by_place(survey: Survey) -> tuple[FloatArray, FloatArray, list[tuple[float, float]]]:
    numbers, means, counts, _ = hole_means(survey)
    return means, counts, [survey.points[k - 1] for k in numbers.tolist()]


def _matched(
    first: Sequence[tuple[float, float]], second: Sequence[tuple[float, float]]
) -> list[tuple[int, int]]:
    """Pairs of indices of points that coincide within 5 mm."""
    cells: dict[tuple[int, int], list[int]] = {}
    for k, (x, y) in enumerate(second):
        cells.setdefault((round(x / SAME_PLACE_M), round(y / SAME_PLACE_M)), []).append(k)
    pairs = []
    for k, (x, y) in enumerate(first):
        i, j = round(x / SAME_PLACE_M), round(y / SAME_PLACE_M)
        near = [n for a in (-1, 0, 1) for b in (-1, 0, 1) for n in cells.get((i + a, j + b), ())]
        near = [n for n in near if math.dist((x, y), second[n]) <= SAME_PLACE_M]
        if near:
            pairs.append((k, min(near, key=lambda n: math.dist((x, y), second[n]))))
    return pairs
