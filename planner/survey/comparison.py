"""Surveys against each other: what is brighter, by how much, and whether that is certain.

Compared hole by hole, what the surveys share drops out: with one meter its gain, and at
each hole the shape of the light. Noise and placement remain, and that lamps, board and
lining were set up anew between them; these decide. How much setting up anew scatters is
taken from surveys of one lining under the same conditions where there are such, and from
what the surveys state of their lamps' output until then.

In a ranking every survey is held against every other, so that chance alone would often
show some difference among many. Differences are called certain by Tukey's range test for
unequal errors (J. W. Tukey 1953; C. Y. Kramer 1956, Biometrics 12, 307-310): with any
number of equal linings, at most one evening in twenty calls any two of them different.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field, replace
from functools import lru_cache
from typing import Final, Literal

import numpy as np

from planner.language import word
from planner.plan.survey import SAME_TOP, SHUT_DOOR, Survey
from planner.survey.layout import SAME_PLACE_M
from planner.survey.outliers import FloatArray
from planner.survey.statistics import drift_of, gain_standard, hole_means, reading_noise
from planner.units import COVERAGE, listed

_FEW_PAIRS: Final = 4
_STATED_COUNTS: Final = 3.0
_FIGURES: Final[dict[str, Callable[[FloatArray], float]]] = {
    "mean": lambda means: float(means.mean()),
    "min": lambda means: float(means.min()),
    "max": lambda means: float(means.max()),
}


@dataclass(frozen=True)
class Pairing:
    """One survey over another, hole by hole.

    ``ratio`` is that of the means over the holes both have; ``uncertainty`` its standard
    uncertainty by noise and placement (and gain, where the meters differ), ``set_up`` the
    relative one by setting up anew, ``spread`` the standard deviation of the single ratios.
    ``holes`` counts the pairs, ``among`` the surveys any two of which might be held against each
    other; ``reach`` standard uncertainties are 95 % for all of them together.
    """

    first: str
    second: str
    ratio: float
    uncertainty: float
    spread: float
    holes: int
    one_meter: bool
    set_up: float = 0.0
    among: int = 2
    reach: float = COVERAGE

    @property
    def in_all(self) -> float:
        """Standard uncertainty of the ratio, setting up anew included."""
        return math.hypot(self.uncertainty, self.set_up * self.ratio)

    @property
    def difference_is_certain(self) -> bool:
        """Whether the ratio differs from 1 by more than its 95 % interval."""
        return abs(math.log(self.ratio)) > self.reach * self.in_all / self.ratio

    @property
    def band(self) -> float:
        """Half-width of the 95 % interval of the ratio."""
        return self.reach * self.in_all

    def words(self) -> str:
        """The verdict in a sentence or two."""
        percent = abs(self.ratio - 1) * 100
        way = "above" if self.ratio >= 1 else "below"
        band, anew = 100 * self.band, 100 * self.reach * self.set_up * self.ratio
        together = f", at 95 % for all {self.among} surveys together" if self.among > 2 else ""
        common = (
            "the meter's gain drops out"
            if self.one_meter
            else "two meters were used, so their gains do not drop out"
        )
        figures = (
            f"'{self.first}' reads {percent:.1f} % {way} '{self.second}', ± {band:.1f} % over "
            f"{self.holes} holes ({common}; setting up anew alone makes ± {anew:.1f} %{together})."
        )
        if self.difference_is_certain:
            return f"{figures} The difference is larger than what the readings can resolve."
        return f"{figures} The readings cannot tell the two apart."


@dataclass(frozen=True)
class Rank:
    """A survey's place in a ranking: its figure in µmol m⁻² s⁻¹ and its ratio to the base.

    ``low`` and ``high`` bound the ratio so that two surveys can be told apart just when
    their intervals do not overlap (half of Tukey's least difference either side).
    """

    name: str
    key: str
    value: float
    ratio: float
    low: float
    high: float


@dataclass(frozen=True)
class Ranking:
    """Surveys from bright to dim over the holes all of them share.

    ``alike`` holds runs of rows (first, last) that the readings cannot tell apart;
    ``left_out`` names surveys without shared holes, ``conditions`` says in what else than
    the lining the surveys differ, ``words`` what may be said.
    """

    rows: tuple[Rank, ...] = ()
    holes: int = 0
    alike: tuple[tuple[int, int], ...] = ()
    left_out: tuple[str, ...] = ()
    conditions: tuple[str, ...] = ()
    set_up: SetUp = field(default_factory=lambda: SetUp(0.0, math.inf))

    def words(self) -> tuple[str, ...]:
        """What the ranking says, a sentence each."""
        said = [*self.conditions]
        names = [f"'{row.name}'" for row in self.rows]
        for first, last in self.alike:
            said.append(f"{listed(names[first : last + 1])} cannot be told apart.")
        if len(self.rows) > 1 and not self.alike:
            said.append("All of them can be told apart.")
        elif len(self.rows) > 1 and self.alike[0][0] > 0:
            said.append(f"{names[0]} is brighter than all the others.")
        if self.left_out:
            said.append(f"{listed(list(self.left_out))}: no hole in common with the others.")
        if len(self.rows) > 1:
            said.append(self.set_up.words())
        return tuple(said)


@dataclass(frozen=True)
class SetUp:
    """Relative standard deviation between two times of setting up the same thing.

    ``freedom`` counts the degrees of freedom it is known by; infinite when only stated.
    """

    standard: float
    freedom: float
    within: bool = False
    """Whether it is as large as it is because holes read again at the end were off by more."""

    def words(self) -> str:
        """How well it is known, in a sentence."""
        size = f"{self.standard * 100:.1f} %"
        if self.within:
            return f"Setting up anew scatters by {size} at least: so far off were holes read again."
        if math.isinf(self.freedom):
            return (
                f"That setting up anew scatters by {size} is taken from what the surveys state; "
                "a survey repeated from the start would measure it."
            )
        return f"Setting up anew scatters by {size}, as repeated surveys show."


def compare(first: Survey, second: Survey, among: Sequence[Survey] = ()) -> Pairing | None:
    """Compare two surveys over the holes they share (same place within 5 mm).

    None when they share no hole with light in both. The uncertainty of the ratio is the
    larger of what the noise of the readings gives and what the scatter of the single ratios
    shows about a smooth course over the board, which is the light's and no noise; with few
    holes about their mean, which errs on the careful side. ``among`` are the surveys these two
    stand among: a ranking of all of them and this verdict do not contradict each other.
    """
    means_a, counts_a, at_a = _by_place(first)
    means_b, counts_b, at_b = _by_place(second)
    pairs = [(a, b) for a, b in _matched(at_a, at_b) if means_a[a] > 0 and means_b[b] > 0]
    if not pairs:
        return None
    index_a, index_b = (np.array(column) for column in zip(*pairs, strict=True))
    one, other = means_a[index_a], means_b[index_b]
    ratio = float(one.sum() / other.sum())
    noise_a, noise_b = reading_noise(first), reading_noise(second)
    by_noise = math.sqrt(
        float(((noise_a * one) ** 2 / counts_a[index_a]).sum()) / float(one.sum()) ** 2
        + float(((noise_b * other) ** 2 / counts_b[index_b]).sum()) / float(other.sum()) ** 2
    )
    single = one / other
    spread = float(single.std(ddof=1)) if len(pairs) > 1 else 0.0
    by_scatter = _scatter(np.array(at_a)[index_a, :2], np.log(single)) / math.sqrt(len(pairs))
    read = [survey for survey in among or (first, second) if survey.counted]
    anew = set_up_scatter(read)
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
        set_up=math.sqrt(2) * anew.standard,
        among=max(len(read), 2),
        reach=_range_point(max(len(read), 2), anew.freedom) / math.sqrt(2),
    )


def _scatter(points: FloatArray, logs: FloatArray) -> float:
    """Standard deviation of values at points (n, 2) about a surface of second degree through them.

    About their mean where they are too few to tell a surface from noise, 0 for hardly any.
    """
    x, y = ((points - points.mean(axis=0)) / max(float(np.ptp(points)), 1e-9)).T
    terms = [np.ones_like(x), x, y, x * x, x * y, y * y]
    terms = terms if len(logs) >= 2 * len(terms) else terms[:1]
    table = np.column_stack(terms)
    left = logs - table @ np.linalg.lstsq(table, logs, rcond=None)[0]
    freedom = len(logs) - len(terms)
    return math.sqrt(float(left @ left) / freedom) if freedom >= _FEW_PAIRS - 1 else 0.0


def _stated(survey: Survey) -> float:
    return survey.doubts.output / math.sqrt(3)


def ranking(surveys: Sequence[Survey], by: str = "mean", base: str | None = None) -> Ranking:
    """Surveys from bright to dim by ``mean``, ``min`` or ``max`` over the holes all share.

    ``base`` is the key of the survey whose figure counts as 1 (the brightest by default).
    Ratios are quotients of the same figures whatever the base, so they agree under any
    change of it.

    Raises
    ------
    ValueError
        If the base has no light in its readings or ``by`` is none of the three.
    """
    if by not in _FIGURES:
        raise ValueError(f"a ranking is by mean, min or max, not by '{by}'.")
    read = [survey for survey in surveys if survey.counted]
    shared, left_out = _shared(read)
    lit = [(s, m, c) for s, m, c in shared if len(m) and _FIGURES[by](m) > 0]
    lit.sort(key=lambda row: -_FIGURES[by](row[1]))
    if not lit:
        return Ranking(left_out=left_out)
    values = np.array([_FIGURES[by](means) for _, means, _ in lit])
    keys = [survey.key for survey, _, _ in lit]
    base = keys[0] if base is None else base
    if base not in keys:
        raise ValueError("the base of a ranking must be a survey with light in its readings.")
    set_up = set_up_scatter([survey for survey, _, _ in lit])
    noise = np.array([_noise_of(by, *row) for row in lit])
    gain = np.array([_gain_beside(survey, lit[0][0]) for survey, _, _ in lit])
    error = np.sqrt(noise**2 + gain**2 + set_up.standard**2)
    ratios = values / values[keys.index(base)]
    half = (
        _range_point(len(lit), set_up.freedom) / 2 * error * ratios if len(lit) > 1 else 0 * error
    )
    rows = tuple(
        Rank(s.name, s.key, float(value), float(ratio), float(ratio - by), float(ratio + by))
        for (s, _, _), value, ratio, by in zip(lit, values, ratios, half, strict=True)
    )
    return Ranking(
        rows=rows,
        holes=len(lit[0][1]),
        alike=_runs(np.log(values), error, _range_point(len(lit), set_up.freedom)),
        left_out=left_out,
        conditions=differing_conditions([survey for survey, _, _ in lit]),
        set_up=set_up,
    )


@lru_cache(maxsize=64)
def _range_point(count: int, freedom: float) -> float:
    """The 95 % point of the studentised range of ``count`` values."""
    if count < 2:
        return 0.0
    from scipy.stats import studentized_range

    return float(studentized_range.ppf(0.95, count, freedom))


def _runs(logs: FloatArray, error: FloatArray, point: float) -> tuple[tuple[int, int], ...]:
    """Longest runs of rows of which no two differ by more than chance; rows fall in value."""
    found: list[tuple[int, int]] = []
    for first in range(len(logs)):
        last = first
        while last + 1 < len(logs) and all(
            logs[k] - logs[last + 1] <= point * math.hypot(error[k], error[last + 1]) / math.sqrt(2)
            for k in range(first, last + 1)
        ):
            last += 1
        if last > first and not (found and found[-1][1] >= last):
            found.append((first, last))
    return tuple(found)


def set_up_scatter(surveys: Sequence[Survey]) -> SetUp:
    """How much setting up anew scatters: from repeated surveys, else as the surveys state.

    Surveys of one lining under the same conditions differ in level by it and by the noise
    of their means, which is taken off. What is stated counts as much as three repeats. A hole
    that was read again at the end of its survey was not set up anew: how far it is off, noise
    taken off, is the least that setting up can scatter, but no proof that it scatters so little.
    """
    stated = max((_stated(survey) for survey in surveys), default=0.0)
    groups: dict[object, list[Survey]] = {}
    for survey in surveys:
        if survey.lining is None:  # nobody said what was on the walls
            continue
        where = survey.points, survey.on_top
        alike = survey.lining, *where, survey.meter.name, *conditions_of(survey).values()
        groups.setdefault(alike, []).append(survey)
    squares = freedom = 0.0
    for group in groups.values():
        shared, _ = _shared(group)
        lit = [row for row in shared if len(row[1]) and row[1].mean() > 0]
        if len(lit) < 2:
            continue
        levels = np.log([means.mean() for _, means, _ in lit])
        noise = float(np.mean([_noise_of("mean", *row) ** 2 for row in lit]))
        freedom += len(lit) - 1
        squares += max(float(((levels - levels.mean()) ** 2).sum()) - (len(lit) - 1) * noise, 0.0)
    found = SetUp(stated, math.inf)
    if freedom > 0:
        square = (_STATED_COUNTS * stated**2 + squares) / (_STATED_COUNTS + freedom)
        found = SetUp(math.sqrt(square), _STATED_COUNTS + freedom)
    # Two levels apart by a change have half its square for their variance.
    again = [d.change**2 - d.standard**2 for s in surveys if (d := drift_of(s)) is not None]
    least = math.sqrt(max(sum(again) / max(len(again), 1), 0.0) / 2)
    return replace(found, standard=least, within=True) if least > found.standard else found


Condition = Literal["output", "hanging height", "board", "sensor height", "door"]
"""What besides the lining decides how bright a survey reads."""


def conditions_of(survey: Survey) -> dict[Condition, float | None]:
    """What besides the lining decides how bright a survey reads, by words."""
    return {
        "output": survey.output_percent,
        "hanging height": survey.hanging_height,
        "board": survey.board_reflectance,
        "sensor height": survey.meter.sensor_height,
        "door": survey.doubts.door if survey.doubts.door > SHUT_DOOR else 0.0,
    }


def differing_conditions(surveys: Sequence[Survey]) -> tuple[str, ...]:
    """In what else than the lining surveys differ, a sentence each."""
    said = []
    conditions = [conditions_of(survey) for survey in surveys]
    for words in conditions[0] if conditions else ():
        if len({one[words] for one in conditions}) > 1:
            told = [
                f"'{survey.name}' {_told(words, one[words])}"
                for survey, one in zip(surveys[:4], conditions[:4], strict=True)
            ]
            said.append(f"The {word(words)} was not the same: {listed(told)}. That counts too.")
    return tuple(said)


def _told(words: Condition, value: float | None) -> str:
    if value is None:
        return "as in the plan"
    if words == "door":
        return f"perhaps {value * 100:.0f} % open" if value else "shut"
    if words in {"hanging height", "sensor height"}:
        return f"{value * 100:g} cm"
    return f"{value:g} %" if words == "output" else f"{value * 100:.0f} %"


def _noise_of(by: str, survey: Survey, means: FloatArray, counts: FloatArray) -> float:
    """Relative standard uncertainty of a figure by noise and placement."""
    noise = reading_noise(survey) * means / np.sqrt(counts)
    if by == "mean":
        return math.sqrt(float((noise**2).sum())) / float(means.sum())
    k = int(means.argmin() if by == "min" else means.argmax())
    return float(noise[k] / means[k])


def _gain_beside(survey: Survey, first: Survey) -> float:
    """Relative uncertainty by the gain of another meter than the first survey's."""
    if survey.meter.name == first.meter.name:
        return 0.0
    return math.hypot(gain_standard(survey.meter), gain_standard(first.meter))


def _shared(
    surveys: Sequence[Survey],
) -> tuple[list[tuple[Survey, FloatArray, FloatArray]], tuple[str, ...]]:
    """Means and counts of each survey at the holes all share, and names of those with none."""
    common: list[_Spot] = []
    kept: list[Survey] = []
    left_out: list[str] = []
    for survey in surveys:
        at = _by_place(survey)[2]
        both = at if not kept else [common[a] for a, _ in _matched(common, at)]
        if both:
            common = both
            kept.append(survey)
        else:
            left_out.append(f"'{survey.name}'")
    rows = []
    for survey in kept:
        means, counts, at = _by_place(survey)
        index = [b for _, b in _matched(common, at)]
        rows.append((survey, means[index], counts[index]))
    return rows, tuple(left_out)


def ratios_by_hole(first: Survey, second: Survey) -> tuple[tuple[float, float, float], ...]:
    """x, y and first over second at each hole both surveys have, for a map of ratios."""
    means_a, _, at_a = _by_place(first)
    means_b, _, at_b = _by_place(second)
    return tuple(
        (float(at_a[a][0]), float(at_a[a][1]), float(means_a[a] / means_b[b]))
        for a, b in _matched(at_a, at_b)
        if means_b[b] > 0
    )


_Spot = tuple[float, float, float]
"""x, y and the height of the top that was read; of the plan's own canopy none is written down."""
_OWN_CANOPY: Final = -1.0


def _by_place(survey: Survey) -> tuple[FloatArray, FloatArray, list[_Spot]]:
    numbers, means, counts, _ = hole_means(survey)
    level = _OWN_CANOPY if survey.on_top is None else survey.on_top
    return means, counts, [(*survey.points[k - 1], level) for k in numbers.tolist()]


def _matched(first: Sequence[_Spot], second: Sequence[_Spot]) -> list[tuple[int, int]]:
    """Pairs of indices of points of one canopy that coincide within 5 mm."""
    cells: dict[tuple[int, int], list[int]] = {}
    for k, (x, y, _) in enumerate(second):
        cells.setdefault((round(x / SAME_PLACE_M), round(y / SAME_PLACE_M)), []).append(k)
    pairs = []
    for k, (x, y, level) in enumerate(first):
        i, j = round(x / SAME_PLACE_M), round(y / SAME_PLACE_M)
        near = [n for a in (-1, 0, 1) for b in (-1, 0, 1) for n in cells.get((i + a, j + b), ())]
        near = [n for n in near if abs(second[n][2] - level) <= SAME_TOP]
        near = [n for n in near if math.dist((x, y), second[n][:2]) <= SAME_PLACE_M]
        if near:
            pairs.append((k, min(near, key=lambda n: math.dist((x, y), second[n][:2]))))
    return pairs
