"""What find tries: one arrangement after another, each at the output that suits best.

Light is proportional to output, and min/mean does not depend on it at all; so for each cover
of the walls, each arrangement of lamps and each hanging height one estimate tells all outputs
and all hours of light. ``Tries`` keeps these estimates, counts and stops them.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import Final

from planner.estimate.canopies import called, missed_by
from planner.estimate.evaluate import Cache, Cancelled, evaluate
from planner.estimate.find_question import Aim, Held, Question, Turn, heights_to_set, output_of
from planner.estimate.result import CanopyLight, Estimate, EstimateOptions, Quality
from planner.estimate.worth import Bill, bill, drawing
from planner.metrics.figures import daily_light_integral
from planner.plan.changes import line
from planner.plan.checks import clashes
from planner.plan.dials import dial
from planner.plan.edits import changed
from planner.plan.lamp import Lamp, watts_of
from planner.plan.place import OWN, Place
from planner.plan.plan import Plan
from planner.plan.target import PpfdTarget
from planner.plan.tiers import counted_from, lighting, sharing, with_lamps

ALIKE: Final = 0.02
"""What is closer than this in everything is one answer: the computation cannot tell it apart."""
TINY: Final = 1e-9


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
    all are kept. ``beyond`` is how far the canopies ``out``, not judged but in the same light, lie
    out of their bands. ``need`` is the energy before output and hours were made whole.
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
    beyond: float = 0.0
    out: tuple[str, ...] = ()

    @property
    def off(self) -> tuple[float, float]:
        """What goes before every aim: wishes, then the bands of canopies in the same light."""
        return round(self.short, 9), round(self.beyond, 9)

    def rank(self, aim: Aim) -> tuple[float, float, float, float]:
        """Smaller is better for the search: ``off`` first, then the aim, then the exact need."""
        money = math.inf if self.total is None else self.total
        value = {Aim.EVEN: -self.even, Aim.ENERGY: self.kwh, Aim.CHEAP: money}[aim]
        return *self.off, value, self.need

    def order(self, aim: Aim) -> tuple[float, ...]:
        """Smaller stands first among answers: of equal ones the more even, then the thriftier."""
        return *self.rank(aim)[:3], -self.even, self.kwh

    def near(self, other: Read) -> bool:
        """Whether the computation could not tell the two apart."""
        pairs = [(self.kwh, other.kwh)]
        if self.total is not None and other.total is not None:
            pairs.append((self.total, other.total))
        same = all(math.isclose(a, b, rel_tol=ALIKE, abs_tol=TINY) for a, b in pairs)
        return same and abs(self.even - other.even) < ALIKE


@dataclass(frozen=True)
class _Lit:
    """The light on a canopy in µmol m⁻² s⁻¹: of the lamps set, at full output, and all other.

    ``other`` is that of other tiers and, of the room, ``entered``. ``end`` are the ends of its band
    as wanted of a mean, or of the DLI where ``by_day``.
    """

    name: str
    plan: Plan
    given: float
    other: float
    entered: float
    band: tuple[float, float] | None = None
    by_day: bool = True

    def dli(self, share: float, hours: float) -> float:
        """At a share of full output and so many hours."""
        light, room = self.given * share + self.other, self.plan.space.room_hours
        return daily_light_integral(light, hours, self.entered, room)

    def beyond(self, share: float, hours: float) -> float:
        """By which fraction of an end the band is missed."""
        if self.band is None:
            return 0.0
        light = self.given * share + self.other
        return missed_by(self.dli(share, hours) if self.by_day else light, self.band)

    def ends(self, hours: float) -> tuple[float, ...]:
        """Full-output hours a day that bring it to the ends of its band, at about these hours."""
        if self.band is None or self.given <= 0 or hours <= 0:
            return ()
        there = self.dli(0.0, hours) if self.by_day else self.other
        per_hour = daily_light_integral(self.given, 1.0) if self.by_day else self.given / hours
        return tuple(max(end - there, 0.0) / per_hour for end in self.band)


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
        self._dark: dict[tuple[int, bool], Estimate] = {}
        # Judged by a tray, what lies between the trays is told of, and asks for nothing.
        self._near = [place for place in sharing(plan) if place != OWN]
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
            found = self.estimate(self.plan_of(stand), quick=quick)
            known[stand] = self._set(stand, self._lit(stand, found, quick=quick), found)
            self.done += 1
            if self.progress is not None:
                self.progress(min(0.97, self.done / self.expected))
        return known[stand]

    def _lit(self, stand: Stand, found: Estimate, *, quick: bool) -> tuple[_Lit, ...]:
        """What the canopy judged gets, and those in the same light that have a band."""
        dark: dict[Place, CanopyLight] = {}
        if self.others or any(one.entered for one in found.canopies):
            dark = {one.place: one for one in self._without(stand, quick=quick).canopies}
        held, hours, made = self.question.held, self.plan.photoperiod_hours, []
        for one in sorted(found.canopies, key=lambda canopy: canopy.place != found.place):
            led, target = one.place == found.place, one.target
            if not led and (one.place not in self._near or one.band is None or target is None):
                continue
            key = "minimum" if led and held is Held.LOWEST else "mean"
            full = getattr(one.figures, key)
            other = getattr(dark[one.place].figures, key) if dark else 0.0
            by_day = not isinstance(target, PpfdTarget)
            band = None if led or target is None or hours <= 0 else (target.low, target.high)
            name = called(self.plan, one.place)
            lit = max(full - other, 0.0), other, one.entered
            made.append(_Lit(name, self.plan, *lit, band, by_day))
        return tuple(made)

    def _without(self, stand: Stand, *, quick: bool) -> Estimate:
        """The light without the lamps that are set: that of other tiers and of the room."""
        key = stand.cover, quick
        if key not in self._dark:
            self._dark[key] = self.estimate(self.plan_of(stand, 0.0), quick=quick)
        return self._dark[key]

    def _set(self, stand: Stand, lit: tuple[_Lit, ...], found: Estimate) -> Read:
        """Output and hours of a stand whose light at full output is known.

        Light and energy of a day depend on the product of the two alone; hours stay as they are
        as long as the output can follow. Of products that keep the wishes the one is taken that
        brings the canopies in the same light nearest to their bands.
        """
        question, wishes, led = self.question, self.question.wishes, lit[0]
        per_hour, watts = daily_light_integral(led.given, 1.0), watts_of(stand.lamps)
        even = found.figures.min_over_mean or 0.0
        (s0, s1), (h0, h1) = self._shares(watts), self._hours()
        low, high = wishes.dli_low, wishes.dli_high
        if led.other:  # at the hours of the plan; what is found is reckoned as it is
            given = led.dli(0.0, self.plan.photoperiod_hours)
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
        floor = max(min(least, s1 * h1), s0 * h0)
        best = self._whole(stand, max(min(aimed, most), floor), lit, watts, even)
        if best.beyond and question.turn & {Turn.OUTPUT, Turn.HOURS}:
            ends = [end for one in lit for end in one.ends(self.plan.photoperiod_hours)]
            tried = {max(min(end, most), floor) for end in ends}
            for one in sorted(tried, key=lambda product: abs(product - aimed)):
                other = self._whole(stand, one, lit, watts, even)
                best = other if other.off < best.off else best
        return best

    def _whole(
        self, stand: Stand, product: float, lit: tuple[_Lit, ...], watts: float, even: float
    ) -> Read:
        """A stand at so many full-output hours a day, in numbers that can be set."""
        turn, (s0, s1), (h0, h1) = self.question.turn, self._shares(watts), self._hours()
        now = min(max(self.plan.photoperiod_hours, h0), h1)
        inside = s0 * now <= product <= s1 * now
        hours = now if inside else product / (s1 if product > s1 * now else s0)
        hours = min(max(hours, h0), h1)
        share = min(max(product / hours if hours > 0 else s1, s0), s1)
        fine = self._read(stand, share, hours, lit, watts, even)
        # Whole per cents and quarters of an hour, upwards, where the wishes leave room for it.
        whole = []
        for way in (math.ceil, math.floor):
            off = 1e-6 if way is math.ceil else -1e-6
            if Turn.OUTPUT in turn:
                share = min(max(way(100 * fine.share - off) / 100, s0), s1)
            if Turn.HOURS in turn:
                hours = min(max(way(4 * fine.hours - off) / 4, h0), h1)
            whole.append(self._read(stand, share, hours, lit, watts, even))
        return replace(min(*whole, fine, key=lambda one: one.off), need=fine.kwh)

    def _read(
        self,
        stand: Stand,
        share: float,
        hours: float,
        lit: tuple[_Lit, ...],
        watts: float,
        even: float,
    ) -> Read:
        costs, wishes = self.plan.costs, self.question.wishes
        drawn = watts * share + watts_of(self.others)
        runs = drawing(drawn, hours, costs)
        total = None
        if runs.money is not None:
            total = runs.total(self.bill(stand).cost, costs.span_months)
        dli = lit[0].dli(share, hours)
        values = {"dli": dli, "min_over_mean": even, "watts": drawn, "total": total}
        missing = {
            wish.words: _missing(values[wish.column], bound, least=wish.least)
            for wish, bound in wishes.all()
        }
        missed = tuple(name for name, part in missing.items() if part > 0)
        beyond = {one.name: one.beyond(share, hours) for one in lit[1:]}
        out = tuple(name for name, part in beyond.items() if part > 0)
        short, off = sum(missing.values()), sum(beyond.values())
        return Read(stand, share, hours, even, runs.kwh, total, short, missed, 0.0, off, out)

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
