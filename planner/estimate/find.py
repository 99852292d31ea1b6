"""Find: with an aim, under wishes, by turning what may be turned.

Arrangements and heights are looked at coarsely first (at preview quality where they are many),
those that another one clearly beats are dropped, and the rest is settled at the quality asked,
the best height to the grain that a tape can set. What is answered is not one point but those
that no other tried one beats in evenness, energy and money at once (Pareto's order).
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, replace
from enum import StrEnum
from itertools import pairwise
from typing import Final

from planner.estimate.compare import Option, Origin, Side, option, unbeaten
from planner.estimate.evaluate import Cache, Cancelled
from planner.estimate.find_places import arrangements, refined
from planner.estimate.find_question import (
    Aim,
    FindError,
    Held,
    Question,
    Turn,
    check,
    full_output,
)
from planner.estimate.find_tries import TINY, Read, Stand, Tries
from planner.estimate.result import Estimate, EstimateOptions
from planner.estimate.worth import Bill
from planner.language import inside, word
from planner.metrics.figures import FIGURE, daily_light_integral, energy, percent, ppfd
from planner.plan.checks import CLOSE_TO_CANOPY_M
from planner.plan.dials import dial
from planner.plan.lamp import Lamp
from planner.plan.plan import Plan
from planner.plan.tiers import above, lamps_at
from planner.plan.turning import CEILING
from planner.plan.variant_edits import free_name
from planner.units import LengthUnit, capital, format_length, listed, said_length

MOST_ANSWERS: Final = 8
SCAN_HEIGHTS: Final = 9
_FEW: Final = 6
_COARSE: Final = 5
"""Up to so many arrangements are screened at all heights, more of them at so many heights."""
_KEPT: Final = 24
"""How many arrangements are settled at the quality asked."""
_SLACK: Final = 0.05
"""What the quick estimate of the screening may be off."""


class Limit(StrEnum):
    """What keeps the best answer from being better still."""

    NOTHING = "nothing"
    CEILING = "ceiling"
    TIER = "tier"
    CANOPY = "canopy"
    WISHES = "wishes"


@dataclass(frozen=True)
class Answer:
    """One arrangement found: a row of the options' table with its plan and estimate.

    ``missed`` names the wishes it does not keep, and the canopies in the same light that lie out of
    their bands; ``set_up`` says how it is built and set.
    """

    option: Option
    estimate: Estimate
    missed: tuple[str, ...]
    set_up: str

    @property
    def words(self) -> str:
        """How it is set up, and which canopies lie out of their bands."""
        beyond = self.option.beyond
        return f"{self.set_up} {capital(beyond)}." if beyond else self.set_up

    @property
    def plan(self) -> Plan:
        """The plan found."""
        return self.option.side.plan


@dataclass(frozen=True)
class Answers:
    """The answer best by the aim first, then the others that nothing tried beats.

    Where the wishes cannot be kept, ``met`` is False and the only answer is the nearest one.
    ``base`` is the plan itself as a row; ``tried`` counts arrangements; ``stopped`` says that the
    search was ended before its time.
    """

    base: Option
    all: tuple[Answer, ...]
    met: bool
    limit: Limit
    words: str
    tried: int
    stopped: bool = False

    @property
    def best(self) -> Answer:
        """The one answer that is best by the aim."""
        return self.all[0]


def find(
    plan: Plan,
    question: Question,
    options: EstimateOptions | None = None,
    *,
    unit: LengthUnit = LengthUnit.CM,
    cache: Cache | None = None,
    progress: Callable[[float], None] | None = None,
    cancelled: Callable[[], bool] | None = None,
) -> Answers:
    """Search a plan for what a question asks; ``unit`` is for the names of the answers.

    Raises
    ------
    FindError
        If the question cannot be asked of this plan.
    planner.estimate.evaluate.Cancelled
        If ``cancelled`` said so before anything was found.
    """
    check(plan, question)
    tries = Tries(plan, question, options or EstimateOptions(), progress, cancelled, cache)
    base = Side(plan.name, Origin.PLAN, plan, estimate=tries.own())
    stopped = False
    try:
        _settle(tries, _screen(tries))
    except Cancelled:
        if not (tries.seen or tries.quick):
            raise
        stopped, tries.cancelled = True, None
        if not tries.seen:  # stopped while screening: the best so far is settled
            tries.read(min(tries.quick.values(), key=lambda one: one.rank(question.aim)).stand)
    return _answered(tries, option(base, base, Bill(), plan.costs), unit, stopped=stopped)


# -- searching --------------------------------------------------------------------------


def _screen(tries: Tries) -> list[Stand]:
    """The stands worth settling: all where they are few, else those not clearly beaten."""
    question, aim = tries.question, tries.question.aim
    covers = range(len(tries.covers))
    hung = arrangements(
        tries.plan.model_copy(update={"lamps": lamps_at(full_output(tries.plan), tries.turned)}),
        question.counts if Turn.LAMPS in question.turn else (),
        places=Turn.PLACES in question.turn,
        grain=question.grain,
    )
    if not hung:
        raise FindError("So many lamps do not fit side by side in the footprint; ask for fewer.")
    heights = _scan(tries, SCAN_HEIGHTS if len(hung) <= _FEW else _COARSE)
    own = [Stand(0, lamps).at(h) if h else Stand(0, lamps) for lamps in hung for h in heights]
    everywhere = [replace(stand, cover=k) for k in covers for stand in own]
    if len(hung) == 1 and len(everywhere) <= 5 * SCAN_HEIGHTS:
        tries.expected = len(everywhere) + 16
        return everywhere
    moves = _MOVES * 2 * (Turn.PLACES in question.turn)
    tries.expected = len(own) + _KEPT * (len(covers) + 1) + moves + 16
    reads = [tries.read(stand, quick=True) for stand in own]
    kept = _promising(reads, aim)
    if len(covers) > 1:
        others = [replace(one.stand, cover=k) for k in covers[1:] for one in kept]
        reads = kept + [tries.read(stand, quick=True) for stand in others]
        kept = _promising(reads, aim)
    return [one.stand for one in kept]


_MOVES: Final = 90
"""Estimates that moving the lamps one by one may take."""


def _moved(tries: Tries, start: Read) -> Stand:
    """The lamps of a stand moved one by one to where the aim is served best."""
    stand, aim = start.stand, tries.question.aim
    scale = max(abs(start.rank(aim)[2]), TINY)

    def loss(lamps: tuple[Lamp, ...]) -> float:
        short, beyond, value, _ = tries.read(Stand(stand.cover, lamps), quick=True).rank(aim)
        return 10 * (short + beyond) + value / scale

    return Stand(stand.cover, refined(tries.plan, stand.lamps, loss, _MOVES, tries.question.grain))


def _scan(tries: Tries, most: int) -> list[float | None]:
    """At most so many heights to begin with; None stands for those the lamps have."""
    if Turn.HEIGHT not in tries.question.turn:
        return [None]
    heights = tries.heights()
    last = len(heights) - 1
    picked = {round(last * k / (most - 1)) for k in range(most)}
    return [heights[k] for k in sorted(picked)]


def _promising(reads: Sequence[Read], aim: Aim) -> list[Read]:
    """Those that no other clearly beats, at most so many that they can all be settled."""
    nearest = min(one.short for one in reads)
    close = [one for one in reads if one.short <= nearest + _SLACK]
    left = [one for one in close if not any(_clearly_beats(other, one) for other in close)]
    return _spread(left, aim, _KEPT)


def _clearly_beats(one: Read, other: Read) -> bool:
    # One whose money is not known beats none whose is.
    money = other.total is None or (
        one.total is not None and one.total < other.total * (1 - _SLACK)
    )
    return (
        one.short <= other.short
        and one.beyond <= other.beyond
        and one.even > other.even * (1 + _SLACK)
        and one.kwh < other.kwh * (1 - _SLACK)
        and money
    )


def _spread(reads: Iterable[Read], aim: Aim, most: int) -> list[Read]:
    """At most so many: the best by the aim, and then always the one farthest from those taken."""
    rest = sorted(reads, key=lambda one: one.order(aim))
    taken = rest[:1]
    rest = rest[1:]

    def far(one: Read) -> float:
        return min(
            abs(one.even - other.even)
            + abs(math.log((one.kwh + TINY) / (other.kwh + TINY)))
            + abs(math.log(((one.total or 0.0) + 1) / ((other.total or 0.0) + 1)))
            for other in taken
        )

    while rest and len(taken) < most:
        one = max(rest, key=far)
        rest.remove(one)
        taken.append(one)
    return taken


def _settle(tries: Tries, stands: Sequence[Stand]) -> None:
    """Read the stands at the quality asked, and the best ones at other heights."""
    aim = tries.question.aim
    for stand in sorted(stands, key=lambda one: one.cover):
        tries.read(stand)
    if Turn.PLACES in tries.question.turn:
        best_of: dict[int, Read] = {}
        for one in sorted(tries.seen.values(), key=lambda read: read.rank(aim)):
            best_of.setdefault(len(one.stand.lamps), one)
        for one in list(best_of.values())[:2]:
            moved = tries.read(_moved(tries, one))
            if moved.near(one) and moved is not one:
                del tries.seen[moved.stand]  # no better than a regular layout: that is kept
    if Turn.HEIGHT not in tries.question.turn:
        return
    heights = tries.heights()
    best: dict[tuple[object, ...], Read] = {}
    for one in sorted(tries.seen.values(), key=lambda read: read.rank(aim)):
        best.setdefault(one.stand.family, one)
    for one in list(best.values())[:3]:
        _lifted(tries, one, heights)
    front = [one for one in _front(list(tries.seen.values())) if one.stand.family in best]
    if 1 < len(front) < MOST_ANSWERS:  # one more between any two of the same lamps and lining
        for one, other in pairwise(front):
            if one.stand.family == other.stand.family:
                middle = (_index(heights, one.stand) + _index(heights, other.stand)) // 2
                tries.read(one.stand.at(heights[middle]))


def _index(heights: Sequence[float], stand: Stand) -> int:
    return min(range(len(heights)), key=lambda k: abs(heights[k] - stand.height))


def _lifted(tries: Tries, best: Read, heights: Sequence[float]) -> Read:
    """The best of a stand at any height: up and down by steps that are halved to the grain."""
    aim, at = tries.question.aim, _index(heights, best.stand)
    step = max(len(heights) // (2 * (SCAN_HEIGHTS - 1)), 1)
    while True:
        near = [k for k in (at - step, at + step) if 0 <= k < len(heights)]
        for k in near:
            one = tries.read(best.stand.at(heights[k]))
            if one.rank(aim) < best.rank(aim):
                best, at = one, k
                break
        else:
            if step == 1:
                return best
            step = max(step // 2, 1)


def _front(reads: Sequence[Read]) -> list[Read]:
    """Those that no other beats in evenness, energy and, where all of it is known, money.

    Nor in how far canopies in the same light lie out of their bands.
    """
    priced = all(one.total is not None for one in reads)
    points = [
        (one.even, one.kwh, one.off[1], *((one.total or 0.0,) if priced else ())) for one in reads
    ]
    return [reads[k] for k in unbeaten(points)]


# -- answering --------------------------------------------------------------------------


def _answered(tries: Tries, base: Option, unit: LengthUnit, *, stopped: bool) -> Answers:
    question, aim = tries.question, tries.question.aim
    reads = sorted(tries.seen.values(), key=lambda one: one.order(aim))
    best, kept = reads[0], [one for one in reads if one.short <= TINY]
    if not best.off[1]:  # what suits every canopy goes before what suits one
        kept = [one for one in kept if not one.off[1]]
    if math.isinf(best.short):
        raise FindError(
            "The lamps would be in the way of each other, of a wall or of a shelf at every height "
            "tried; let their places be turned as well, or fewer hang."
        )
    shown = [best]
    if kept:
        if aim is Aim.CHEAP or question.wishes.total is not None:
            kept = [one for one in kept if one.total is not None] or kept
        apart: list[Read] = []
        for one in sorted(_front(kept), key=lambda read: read.order(aim)):
            if not any(one.near(other) for other in apart):
                apart.append(one)
        shown = [best, *(one for one in _spread(apart, aim, MOST_ANSWERS) if one is not best)]
        shown = [best, *sorted(shown[1:], key=lambda one: one.order(aim))]
    answers: list[Answer] = []
    for one in shown:
        names = [answer.option.side.name for answer in answers]
        answers.append(_answer(tries, one, base.side, names, unit))
    met = bool(kept)
    limit, said_limit = _limit(tries, best) if met else (Limit.WISHES, "")
    words = _words(tries, answers, said_limit, met=met, stopped=stopped)
    if tries.progress is not None:
        tries.progress(1.0)
    tried = len({*tries.seen, *tries.quick})
    return Answers(base, tuple(answers), met, limit, words, tried, stopped)


def _answer(tries: Tries, read: Read, base: Side, taken: Sequence[str], unit: LengthUnit) -> Answer:
    made = tries.plan_of(read.stand, read.share, read.hours)
    name = free_name(taken, _name(tries, read, unit))
    made = made.model_copy(update={"name": name})
    estimate, key = tries.estimate(made), f"found-{len(taken)}"
    side = Side(name, Origin.VARIANT, made, estimate=estimate, key=key)
    row = option(side, base, tries.bill(read.stand), tries.plan.costs)
    asked = row
    if tries.question.held is Held.LOWEST:
        lowest = _of_a_day(estimate, estimate.figures.minimum)
        asked = replace(row, values={**row.values, "dli": lowest})
    # Wishes that are met to the last bit of a float are met.
    missed = tries.question.wishes.missed(asked) if read.short > TINY else ()
    missed += (row.beyond,) if row.beyond else ()
    return Answer(row, estimate, missed, _set_up(tries, read, made))


def _name(tries: Tries, read: Read, unit: LengthUnit) -> str:
    """What tells an answer from the others, short enough for a table."""
    question = tries.question
    turn, parts = question.turn, []
    if Turn.LINING in turn:
        cover = read.stand.cover
        parts += [question.linings[cover - 1].name] if cover else []
    if Turn.LAMPS in turn:
        count = len(read.stand.lamps)
        parts.append(f"{count} lamp{'s' * (count != 1)}")
    if Turn.PLACES in turn and Turn.LAMPS not in turn:
        there = [(lamp.x, lamp.y) for lamp in lamps_at(tries.plan, tries.turned)]
        same = there == [(lamp.x, lamp.y) for lamp in read.stand.lamps]
        parts.append("As placed" if same else "Moved")
    if Turn.HEIGHT in turn:
        parts.append(format_length(read.stand.height - tries.up, unit))
    if Turn.OUTPUT in turn:
        parts.append(f"{100 * read.share:.0f} %")
    if Turn.HOURS in turn:
        parts.append(f"{read.hours:.4g} h")
    return ", ".join(parts or ["As lined"])[:110]


def _set_up(tries: Tries, read: Read, made: Plan) -> str:
    """How it is built and set, in one sentence."""
    question, count = tries.question, len(read.stand.lamps)
    turn, lamps = question.turn, "lamp" if count == 1 else f"{count} lamps"
    height, over = said_length(round(read.stand.height - tries.up, 3)), ""
    if Turn.HEIGHT in turn or tries.others:
        over = f" {above(tries.plan, lamps_at(tries.plan, tries.turned))}"
    parts = [f"Hang the {lamps} {height}{over}" if Turn.HEIGHT in turn else f"The {lamps}{over}"]
    if Turn.PLACES in turn or Turn.LAMPS in turn:
        hung_at = "; ".join(
            f"{said_length(round(lamp.x, 3))}, {said_length(round(lamp.y, 3))}"
            for lamp in read.stand.lamps
        )
        parts.append(f"at (x, y) {hung_at}")
    parts.append(f"at {100 * read.share:.0f} % output, {read.hours:.4g} h a day")
    if Turn.LINING in turn and read.stand.cover:
        where = "all walls" if question.where is None else inside(question.where.words(made))
        parts.append(f"with {question.linings[read.stand.cover - 1].name} on {where}")
    if tries.others:
        parts.append("and all other lamps as they are")
    return f"{' '.join(parts)}."


def _words(tries: Tries, answers: Sequence[Answer], limit: str, *, met: bool, stopped: bool) -> str:
    best, question = answers[0], tries.question
    figures = best.estimate.figures
    row = best.option.values
    parts = [
        best.set_up,
        f"Mean {ppfd(figures.mean, unit=True)}, min / mean {percent(figures.min_over_mean)}, "
        f"{FIGURE['watts'].text(row['watts'])}, {energy(row['kwh'], unit=True)} a month.",
    ]
    if met:
        lead = f"The {word(question.aim)} of what was tried" + (" so far" if stopped else "")
        parts.insert(0, f"{lead}:")
        parts.append(limit)
    else:
        parts.insert(0, f"The wishes cannot be kept: {'; '.join(best.missed)}. The nearest:")
        parts.append(_what_would(tries, best))
    if met and best.option.beyond:
        parts.append(f"But {best.option.beyond}: {_NO_OTHER}")
    if question.aim is Aim.CHEAP or question.wishes.total is not None:
        unknown: list[str] = []
        for (cover, _), bought in tries.bills.items():
            lined = tries.covers[cover]
            unknown += bought.unpriced({one.key: one.name for one in lined.linings})
        if unknown:
            parts.append(f"Without a price and left out: {', '.join(dict.fromkeys(unknown))}.")
    return " ".join(part for part in parts if part)


def _limit(tries: Tries, best: Read) -> tuple[Limit, str]:
    """What keeps the best answer where it is, from the heights beside it, and in words."""
    if Turn.HEIGHT not in tries.question.turn:
        return Limit.NOTHING, ""
    heights, aim = tries.heights(), tries.question.aim
    at, room = _index(heights, best.stand), dial("height").sound_in(tries.plan, tries.turned)
    if at == len(heights) - 1 and room.why_most != CEILING:
        return Limit.TIER, f"Higher would be {_MORE[aim]}, but {room.why_most}."
    if at == len(heights) - 1:
        return Limit.CEILING, f"The ceiling is the limit: higher would be {_MORE[aim]}."
    if at == 0 and room.minimum > CLOSE_TO_CANOPY_M:
        return Limit.TIER, f"Lower would be {_MORE[aim]}, but {room.why_least}."
    if at == 0:
        least = said_length(room.minimum)
        return Limit.CANOPY, f"The least distance, {least}, is the limit: lower is {_MORE[aim]}."
    for k, way in ((at + 1, "Higher"), (at - 1, "Lower")):
        one = tries.seen.get(best.stand.at(heights[k]))
        gain = one is not None and (
            one.even > best.even if aim is Aim.EVEN else one.need < best.need
        )
        if one is not None and one.missed and gain:
            missed = " and ".join(one.missed)
            words = f"{way} would be {_MORE[aim]}, but {missed} wished would be missed."
            return Limit.WISHES, words
        if one is not None and one.off[1] > best.off[1] and gain:
            out = listed(one.out)
            return Limit.WISHES, f"{way} would be {_MORE[aim]}, but farther from the band of {out}."
    return Limit.NOTHING, f"Higher or lower would not be {_MORE[aim]}."


_NO_OTHER: Final = "nothing tried keeps the wishes and brings every canopy into its band."

_MORE: Final = {Aim.EVEN: "more even", Aim.ENERGY: "less energy", Aim.CHEAP: "cheaper"}


def _of_a_day(estimate: Estimate, light: float) -> float:
    """DLI of a PPFD of an estimate."""
    plan, entered = estimate.plan, estimate.entered
    return daily_light_integral(light, plan.photoperiod_hours, entered, plan.space.room_hours)


def _what_would(tries: Tries, best: Answer) -> str:
    """What would bring the light that is missing."""
    low, figures = tries.question.wishes.dli_low, best.estimate.figures
    lowest = tries.question.held is Held.LOWEST
    light, hours = figures.minimum if lowest else figures.mean, best.plan.photoperiod_hours
    dli = _of_a_day(best.estimate, light)
    if low is None or dli >= low * (1 - TINY):
        return ""
    if dli <= 0:
        return "The canopy is dark; move the lamps."
    flow = FIGURE["photon_flux"]
    flux = best.plan.ppf
    text = (
        f"The light would take {flow.text(flux * low / dli)} of photon flux instead of "
        f"{flow.number(flux)}"
    )
    most = dial("photoperiod").sound_in(best.plan).maximum
    if hours * low / dli <= most:
        text += f", or {hours * low / dli:.1f} h of light a day instead of {hours:g}"
    return f"{text}; brighter linings may bring part of it."
