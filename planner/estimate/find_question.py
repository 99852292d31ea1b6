"""What may be asked of find, and what one arrangement brings at the output that suits best.

Light is proportional to output, and min/mean does not depend on it at all; so for each cover
of the walls, each arrangement of lamps and each hanging height one estimate tells all outputs
and all hours of light. ``Tries`` keeps these estimates, counts and stops them.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass, field, replace
from enum import StrEnum
from typing import Final

from planner.estimate.compare import Wishes
from planner.estimate.evaluate import Cache, Cancelled, evaluate
from planner.estimate.find_places import MOST_LAMPS
from planner.estimate.result import Estimate, EstimateOptions, Quality
from planner.estimate.worth import Bill, bill, drawing
from planner.metrics.figures import daily_light_integral
from planner.plan.changes import line
from planner.plan.checks import UNLIT, clashes, findings
from planner.plan.dials import dial
from planner.plan.edits import changed
from planner.plan.lamp import Lamp, watts_of
from planner.plan.lining import Lining
from planner.plan.place import Place, judged
from planner.plan.plan import Plan
from planner.plan.tiers import above, counted_from, lamps_at, lighting, with_lamps
from planner.plan.turning import CEILING
from planner.units import said_length

ALIKE: Final = 0.02
"""What is closer than this in everything is one answer: the computation cannot tell it apart."""
TINY: Final = 1e-9


class Aim(StrEnum):
    """What is wanted most."""

    EVEN = "most even"
    ENERGY = "least energy"
    CHEAP = "cheapest"


class Held(StrEnum):
    """Which light the wished DLI is asked of."""

    MEAN = "mean"
    LOWEST = "minimum"


class Turn(StrEnum):
    """What may be turned: numbers by their dials, and what is no number."""

    HEIGHT = "height"
    OUTPUT = "output"
    HOURS = "photoperiod"
    PLACES = "places"
    LAMPS = "lamps"
    LINING = "lining"


@dataclass(frozen=True)
class Question:
    """What is sought.

    Numbers of lamps in ``counts`` are tried where ``LAMPS`` may be turned, all of the kind of
    the plan's first lamp; ``linings`` at the place ``where`` (None: all walls) where
    ``LINING`` may, beside those there are. ``at`` says where in the wished band the light shall
    be, 0 at its lower end and 1 at its upper, as far as lamps and other wishes allow. Lengths are
    set to whole multiples of ``grain`` in metres.
    """

    aim: Aim = Aim.EVEN
    turn: frozenset[Turn] = frozenset({Turn.HEIGHT, Turn.OUTPUT})
    wishes: Wishes = field(default_factory=Wishes)
    held: Held = Held.MEAN
    counts: tuple[int, ...] = ()
    linings: tuple[Lining, ...] = ()
    where: Place | None = None
    at: float = 0.0
    grain: float = 0.01


class FindError(ValueError):
    """A question that cannot be asked of this plan; the message says what is missing."""


def wished_band(plan: Plan) -> tuple[float, float] | None:
    """The plan's target as a DLI at its hours; None without a target or without hours."""
    band = plan.ppfd_band
    if band is None or plan.photoperiod_hours <= 0:
        return None
    low, high = (daily_light_integral(end, plan.photoperiod_hours) for end in band)
    return low, high


def check(plan: Plan, question: Question) -> None:
    """Say what is missing for a question to be asked."""
    turn, wishes = question.turn, question.wishes
    low, high = wishes.dli_low, wishes.dli_high
    if not turn:
        raise FindError("Say what may be turned: height, output, hours, lamps or lining.")
    check_lamps(plan)
    if low is not None and high is not None and high <= low:
        raise FindError("The DLI wished must rise: from the lower end to the upper.")
    dims = bool(turn & {Turn.OUTPUT, Turn.HOURS})
    if low is None and dims and question.aim is not Aim.EVEN:
        raise FindError("Say how much light is wanted: without a least DLI no light is the best.")
    if low is not None and plan.photoperiod_hours <= 0 and Turn.HOURS not in turn:
        raise FindError("A DLI needs hours of light: set the photoperiod above 0 h.")
    if plan.costs.price_per_kwh is None and (question.aim is Aim.CHEAP or wishes.total is not None):
        raise FindError("Write the price of 1 kWh first: without it no total is known.")
    if Turn.LAMPS in turn and not question.counts:
        raise FindError("Say how many lamps may hang.")
    hang = len(lighting(plan))
    counts = question.counts if Turn.LAMPS in turn else (hang,)
    sought = turn & {Turn.LAMPS, Turn.PLACES}
    if Turn.PLACES not in turn:  # those that hang stay where they are: no place is sought
        counts = tuple(count for count in counts if count != hang)
    if sought and any(not 1 <= count <= MOST_LAMPS for count in counts):
        raise FindError(f"Places are sought for 1 to {MOST_LAMPS} lamps.")
    if Turn.LINING in turn and not question.linings:
        raise FindError("Tick the linings that may be put on.")
    if Turn.HEIGHT in turn:
        height_range(plan)


def check_lamps(plan: Plan) -> None:
    """Raise ``FindError`` where no lamp gives light, or none can on the canopy that is judged."""
    if not plan.lamps:
        raise FindError("Hang one lamp first.")
    if not any(lamp.output_percent > 0 for lamp in plan.lamps):
        raise FindError("No lamp is lit in the space; hang one first, or raise its output.")
    for one in findings(plan) if plan.judged_top is not None else ():
        if one.key == UNLIT:
            raise FindError(one.sentence)
    if not any(lamp.output_percent > 0 for lamp in lamps_at(plan, lighting(plan))):
        raise FindError(
            f"No lamp that is lit hangs over {judged(plan).inside(plan)}, by which the plan is "
            "judged: hang one there, or judge the plan by another canopy."
        )


def height_range(plan: Plan) -> tuple[float, float]:
    """Lowest and highest hanging height a search sets lamps to, in metres.

    Those over the canopy that the plan is judged by, and counted from it.

    Raises
    ------
    FindError
        If there is no room between them.
    """
    lamps = lighting(plan)
    room, over = dial("height").sound_in(plan, lamps), above(plan, lamps_at(plan, lamps))
    if room.maximum >= room.minimum:
        return room.minimum, room.maximum
    if room.why_most != CEILING:
        raise FindError(
            f"No one height suits all lamps: one must hang {said_length(round(room.minimum, 3))} "
            f"{over} or higher ({room.why_least}), one "
            f"{said_length(round(room.maximum, 3))} or lower ({room.why_most}). Leave their "
            "heights as they are, or hang the tier above higher."
        )
    raise FindError(
        f"Between canopy and ceiling there are {said_length(round(max(room.maximum, 0.0), 3))} "
        f"for the lamp to hang in; it needs {said_length(room.minimum)} {over}. "
        "Lower the canopy or raise the ceiling."
    )


def heights_to_set(plan: Plan, grain: float) -> list[float]:
    """All heights a search sets lamps to, rising, whole multiples of ``grain`` (metres).

    Raises
    ------
    FindError
        If there is no room to hang in.
    """
    low, high = height_range(plan)
    first, last = math.ceil(low / grain - 1e-6), math.floor(high / grain + 1e-6)
    return [round(k * grain, 6) for k in range(first, last + 1)] or [high]


# -- one stand and what it brings -------------------------------------------------------


@dataclass(frozen=True)
class Stand:
    """A cover of the walls by number, and lamps of which the brightest is at full output."""

    cover: int
    lamps: tuple[Lamp, ...]

    @property
    def height(self) -> float:
        """Hanging height of the lamps in metres."""
        return self.lamps[0].hanging_height

    @property
    def family(self) -> tuple[object, ...]:
        """What it has in common with those that differ in height only."""
        return (self.cover, *((lamp.x, lamp.y, lamp.rotation_deg) for lamp in self.lamps))

    def at(self, height: float) -> Stand:
        """The same at another hanging height."""
        lamps = (lamp.model_copy(update={"hanging_height": height}) for lamp in self.lamps)
        return Stand(self.cover, tuple(lamps))


@dataclass(frozen=True)
class Read:
    """A stand at the output and hours that suit the question best.

    ``short`` is how far the wishes ``missed`` are missed, as a sum of fractions of each; 0 where
    all are kept. ``need`` is the energy before output and hours were made whole.
    """

    stand: Stand
    share: float
    hours: float
    even: float
    kwh: float
    total: float | None
    short: float
    missed: tuple[str, ...]
    need: float = 0.0

    def rank(self, aim: Aim) -> tuple[float, float, float]:
        """Smaller is better for the search: wishes first, then the aim, then the exact need."""
        money = math.inf if self.total is None else self.total
        value = {Aim.EVEN: -self.even, Aim.ENERGY: self.kwh, Aim.CHEAP: money}[aim]
        return round(self.short, 9), value, self.need

    def order(self, aim: Aim) -> tuple[float, float, float, float]:
        """Smaller stands first among answers: of equal ones the more even, then the thriftier."""
        short, value, _ = self.rank(aim)
        return short, value, -self.even, self.kwh

    def near(self, other: Read) -> bool:
        """Whether the computation could not tell the two apart."""
        pairs = [(self.kwh, other.kwh)]
        if self.total is not None and other.total is not None:
            pairs.append((self.total, other.total))
        same = all(math.isclose(a, b, rel_tol=ALIKE, abs_tol=TINY) for a, b in pairs)
        return same and abs(self.even - other.even) < ALIKE


class Tries:
    """Estimates of stands, counted, reported and stopped in one place."""

    def __init__(
        self,
        plan: Plan,
        question: Question,
        options: EstimateOptions,
        progress: Callable[[float], None] | None,
        cancelled: Callable[[], bool] | None,
        cache: Cache | None,
    ) -> None:
        self.plan, self.question, self.options = plan, question, options
        self.progress, self.cancelled = progress, cancelled
        self.cache = cache or Cache()
        lined = question.linings if Turn.LINING in question.turn else ()
        self.covers = (plan, *(line(plan, question.where, lining) for lining in lined))
        self.turned = lighting(plan)
        """The lamps that are set; those of other tiers stay as they are."""
        self.others = with_lamps(plan, self.turned, ())
        self.up = counted_from(plan, plan.lamps[self.turned[0].index])
        self._strays: dict[int, float] = {}
        self.seen: dict[Stand, Read] = {}
        """What is known at the quality asked."""
        self.quick: dict[Stand, Read] = {}
        self.bills: dict[tuple[int, int], Bill] = {}
        self._clashes = clashes(plan)
        self.expected, self.done = 40, 0

    def plan_of(self, stand: Stand, share: float = 1.0, hours: float | None = None) -> Plan:
        """The plan of a stand at a share of its full output and so many hours a day."""
        lamps = (
            # Rounded so that full output taken back is what it was to the last digit.
            lamp.model_copy(update={"output_percent": round(lamp.output_percent * share, 9)})
            for lamp in stand.lamps
        )
        hours = self.plan.photoperiod_hours if hours is None else hours
        every = with_lamps(self.plan, self.turned, tuple(lamps))
        return changed(self.covers[stand.cover], lamps=every, photoperiod_hours=hours)

    def estimate(self, plan: Plan, *, quick: bool = False) -> Estimate:
        """The estimate of a plan, at preview quality or at the one asked."""
        if self.cancelled is not None and self.cancelled():
            raise Cancelled
        options = replace(self.options, quality=Quality.PREVIEW) if quick else self.options
        return evaluate(plan, options, cache=self.cache, cancelled=self.cancelled)

    def heights(self) -> list[float]:
        """The hanging heights that may be set, as the plan holds them."""
        return [round(h + self.up, 9) for h in heights_to_set(self.plan, self.question.grain)]

    def own(self) -> Estimate:
        """The plan's own estimate."""
        return self.estimate(self.plan)

    def bill(self, stand: Stand) -> Bill:
        """What has to be bought beyond what the plan has."""
        key = (stand.cover, len(stand.lamps))
        if key not in self.bills:
            self.bills[key] = bill(self.plan_of(stand), self.plan, self.plan.costs)
        return self.bills[key]

    def read(self, stand: Stand, *, quick: bool = False) -> Read:
        """What a stand brings, at preview quality or at the one asked."""
        known = self.quick if quick else self.seen
        if stand not in known and clashes(self.plan_of(stand)) - self._clashes:
            # Lamps of several heights brought to one may be in each other's way, or in a shelf.
            known[stand] = Read(stand, 1.0, 0.0, 0.0, 0.0, None, math.inf, ("room for lamps",))
        if stand not in known:
            figures = self.estimate(self.plan_of(stand), quick=quick).figures
            light = figures.mean if self.question.held is Held.MEAN else figures.minimum
            stray = self._stray(stand, quick=quick) if self.others else 0.0
            known[stand] = self._set(stand, light, stray, figures.min_over_mean or 0.0)
            self.done += 1
            if self.progress is not None:
                self.progress(min(0.97, self.done / self.expected))
        return known[stand]

    def _stray(self, stand: Stand, *, quick: bool) -> float:
        """The light that lamps of other tiers bring, whatever those that are set do."""
        if stand.cover not in self._strays:
            figures = self.estimate(self.plan_of(stand, 0.0), quick=quick).figures
            mean = self.question.held is Held.MEAN
            self._strays[stand.cover] = figures.mean if mean else figures.minimum
        return self._strays[stand.cover]

    def _set(self, stand: Stand, light: float, stray: float, even: float) -> Read:
        """Output and hours of a stand whose light at full output is known.

        Light and energy of a day depend on the product of the two alone; hours stay as they are
        as long as the output can follow.
        """
        question, wishes = self.question, self.question.wishes
        per_hour = daily_light_integral(max(light - stray, 0.0), 1.0)
        watts, there = watts_of(stand.lamps), daily_light_integral(stray, 1.0)
        (s0, s1), (h0, h1) = self._shares(watts), self._hours()
        low, high = wishes.dli_low, wishes.dli_high
        if there:  # at the hours of the plan; what is found is reckoned as it is
            given = there * self.plan.photoperiod_hours
            low = None if low is None else max(low - given, 0.0)
            high = None if high is None else max(high - given, TINY)
        least = low / per_hour if low and per_hour > 0 else math.inf if low else 0.0
        most = min(s1 * h1, high / per_hour if high and per_hour > 0 else math.inf)
        most = min(most, self._affordable(stand, watts))
        aimed = least
        if low is None:
            aimed = self._share_now() * self.plan.photoperiod_hours
        elif high is not None and per_hour > 0:
            aimed = (low + question.at * (high - low)) / per_hour
        lit = max(min(aimed, most), min(least, s1 * h1), s0 * h0)
        now = min(max(self.plan.photoperiod_hours, h0), h1)
        hours = now if s0 * now <= lit <= s1 * now else lit / (s1 if lit > s1 * now else s0)
        hours = min(max(hours, h0), h1)
        share = min(max(lit / hours if hours > 0 else s1, s0), s1)
        # Whole per cents and quarters of an hour, upwards, where the wishes leave room for it.
        fine = self._read(stand, share, hours, (per_hour, there), watts, even)
        if Turn.OUTPUT in question.turn:
            share = min(math.ceil(100 * share - 1e-6) / 100, s1)
        if Turn.HOURS in question.turn:
            hours = min(math.ceil(4 * hours - 1e-6) / 4, h1)
        whole = self._read(stand, share, hours, (per_hour, there), watts, even)
        return replace(whole if whole.short <= fine.short else fine, need=fine.kwh)

    def _read(
        self,
        stand: Stand,
        share: float,
        hours: float,
        per_hour: tuple[float, float],
        watts: float,
        even: float,
    ) -> Read:
        """``per_hour``: the DLI of an hour from the lamps set at full output, and from others."""
        costs, wishes = self.plan.costs, self.question.wishes
        drawn = watts * share + watts_of(self.others)
        runs = drawing(drawn, hours, costs)
        total = None
        if runs.money is not None:
            total = runs.total(self.bill(stand).cost, costs.span_months)
        dli = (per_hour[0] * share + per_hour[1]) * hours
        values = {"dli": dli, "min_over_mean": even, "watts": drawn, "total": total}
        missing = {
            wish.words: _missing(values[wish.column], bound, least=wish.least)
            for wish, bound in wishes.all()
        }
        missed = tuple(name for name, part in missing.items() if part > 0)
        return Read(stand, share, hours, even, runs.kwh, total, sum(missing.values()), missed)

    def _share_now(self) -> float:
        return output_of(self.plan) / 100

    def _shares(self, watts: float) -> tuple[float, float]:
        """Between which shares of full output the lamps may be set."""
        if Turn.OUTPUT not in self.question.turn:
            return self._share_now(), self._share_now()
        room = dial("output").sound_in(self.plan, self.turned)
        wished = self.question.wishes.watts
        least, most = room.minimum / 100, room.maximum / 100
        if wished is not None and watts > 0:
            most = min(most, max(wished - watts_of(self.others), 0.0) / watts)
        return least, max(most, least, 0.01)

    def _hours(self) -> tuple[float, float]:
        if Turn.HOURS not in self.question.turn:
            return self.plan.photoperiod_hours, self.plan.photoperiod_hours
        room = dial("photoperiod").sound_in(self.plan)
        return room.minimum, room.maximum

    def _affordable(self, stand: Stand, watts: float) -> float:
        """Full-output hours a day that the wished total leaves money for."""
        wished, costs = self.question.wishes.total, self.plan.costs
        if wished is None:
            return math.inf
        price = (drawing(watts, 1.0, costs).money or 0.0) * costs.span_months
        bought = self.bill(stand).cost
        if bought is None or price <= 0:
            return math.inf
        hours = self.plan.photoperiod_hours
        kept = (drawing(watts_of(self.others), hours, costs).money or 0.0) * costs.span_months
        return max(wished - bought - kept, 0.0) / price


def _missing(value: float | None, bound: float, *, least: bool) -> float:
    """By which fraction of a bound a value misses it; what is not known misses it whole."""
    if value is None:
        return 1.0
    over = bound - value if least else value - bound
    return max(over, 0.0) / max(bound, TINY) if over > TINY * max(bound, 1.0) else 0.0


def full_output(plan: Plan) -> Plan:
    """The plan with its brightest lamp at 100 % and the others in proportion."""
    return scaled_output(plan, 100.0 / output_of(plan))


def scaled_output(plan: Plan, share: float) -> Plan:
    """Every output over the canopy judged times a share, at most 100 %."""

    def dimmed(lamp: Lamp) -> Lamp:
        return lamp.model_copy(update={"output_percent": min(lamp.output_percent * share, 100.0)})

    turned = lighting(plan)
    lamps = tuple(dimmed(lamp) for lamp in lamps_at(plan, turned))
    return changed(plan, lamps=with_lamps(plan, turned, lamps))


def output_of(plan: Plan) -> float:
    """Output in per cent of the brightest lamp over the canopy that the plan is judged by."""
    return max(lamp.output_percent for lamp in lamps_at(plan, lighting(plan)))
