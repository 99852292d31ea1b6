"""Dim, raise or line: three honest ways to one level of light on the canopy.

Each way turns one thing and leaves the rest: the output, the hanging height of all lamps, or the
lining of all walls. A brighter lining gives more than the level asked; where the lamps can be
dimmed, that is turned into fewer watts.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from enum import StrEnum
from itertools import pairwise
from typing import Final

from planner.catalogue.library import Catalogue
from planner.estimate.canopies import beside
from planner.estimate.compare import Origin, Side
from planner.estimate.evaluate import Cache, evaluate
from planner.estimate.find_question import (
    FindError,
    check_lamps,
    heights_to_set,
    output_of,
    scaled_output,
)
from planner.estimate.result import Estimate, EstimateOptions, Quality
from planner.language import inside
from planner.metrics.figures import FIGURE, percent, ppfd
from planner.plan.checks import clashes
from planner.plan.dials import dial
from planner.plan.edits import line_all_walls
from planner.plan.lining import Lining
from planner.plan.place import Place
from planner.plan.plan import Plan
from planner.plan.quantity import Quantity
from planner.plan.tiers import hangs, lamps_at, lighting
from planner.units import PPFD_UNIT, LengthUnit, capital, said_length

NEAR: Final = 0.02
"""A mean this near, relative, is the one asked: whole per cents and centimetres come no nearer."""
_SCAN: Final = 9
MOST_LININGS: Final = 4
"""So many of the catalogue's brightest linings are tried, beside those the plan has."""


class WayKind(StrEnum):
    """What a way turns."""

    OUTPUT = "output"
    HEIGHT = "height"
    LINING = "lining"


@dataclass(frozen=True)
class Way:
    """One way to a level: what to do in a few words, and what comes of it in a sentence.

    ``estimate`` is that of the plan with it done, at the level or as near as it comes (``reached``
    tells which); None where it cannot be done at all, ``words`` say why then. Lengths in ``name``
    and ``words`` are for ``in_unit``.
    """

    kind: WayKind
    name: str
    estimate: Estimate | None
    reached: bool
    words: str

    @property
    def plan(self) -> Plan | None:
        """The plan with it done."""
        return None if self.estimate is None else self.estimate.plan

    @property
    def side(self) -> Side | None:
        """The way as one of the things compared."""
        if self.estimate is None:
            return None
        made = self.estimate.plan
        return Side(self.name, Origin.VARIANT, made, estimate=self.estimate, key=f"way-{self.kind}")


def offered(plan: Plan, catalogue: Catalogue) -> tuple[Lining, ...]:
    """The linings a way may line with: the plan's own and the brightest of all others."""
    own = {lining.key for lining in plan.linings}
    known = [one for one in catalogue.linings_for(plan).values() if not one.is_opening]
    others = sorted((o for o in known if o.key not in own), key=lambda one: -one.reflectance)
    return (*others[:MOST_LININGS], *(one for one in known if one.key in own))


def ways(
    plan: Plan,
    wanted: float,
    linings: Sequence[Lining] = (),
    options: EstimateOptions | None = None,
    *,
    told: Quality | None = None,
    unit: LengthUnit = LengthUnit.CM,
    cache: Cache | None = None,
    progress: Callable[[float], None] | None = None,
    cancelled: Callable[[], bool] | None = None,
) -> tuple[Way, Way, Way]:
    """Dimming, height and lining (those offered, on all walls) to a mean PPFD on the canopy.

    Heights are whole centimetres or half inches, as ``unit`` is. Each way's plan is one edit of
    ``plan``. What is found with ``options`` may be reckoned once more in the quality it is
    ``told`` in, so that its figures are those of the plan at rest.

    Raises
    ------
    FindError
        If no lamp is lit, or the level is not above 0 µmol m⁻² s⁻¹.
    planner.estimate.evaluate.Cancelled
        If ``cancelled`` said so.
    """
    check_lamps(plan)
    if wanted <= 0:
        raise FindError(f"The level wished must be above 0 {PPFD_UNIT}.")
    ask = _Ask(plan, wanted, options or EstimateOptions(), unit, cache or Cache())
    ask.cancelled, ask.progress, ask.told = cancelled, progress, told
    ask.expected = 2 * len(linings) + _SCAN + 8
    found = ask.by_output(), ask.by_height(), ask.by_lining(linings)
    if progress is not None:
        progress(1.0)
    return found


@dataclass
class _Ask:
    """One question on its way."""

    plan: Plan
    wanted: float
    options: EstimateOptions
    unit: LengthUnit
    cache: Cache
    cancelled: Callable[[], bool] | None = None
    progress: Callable[[float], None] | None = None
    told: Quality | None = None
    expected: int = 1
    done: int = 0

    @property
    def dimmer(self) -> Quantity:
        """Between which outputs in per cent the lamps may be set."""
        return dial("output").sound_in(self.plan, self.turned).at_least(1.0)

    @property
    def turned(self) -> tuple[Place, ...]:
        """The lamps that are set: those over the canopy judged."""
        return lighting(self.plan)

    @property
    def dimmable(self) -> bool:
        return self.dimmer.minimum < self.dimmer.maximum

    def light(self, plan: Plan) -> Estimate:
        found = evaluate(plan, self.options, cache=self.cache, cancelled=self.cancelled)
        self.done += 1
        if self.progress is not None:
            self.progress(min(0.97, self.done / self.expected))
        return found

    def off(self, estimate: Estimate) -> float:
        """By how much the level is missed, relative."""
        return abs(estimate.figures.mean / self.wanted - 1)

    def way(self, kind: WayKind, name: str, estimate: Estimate, why: str = "") -> Way:
        """A way with its sentence; ``why`` says what keeps it from the level."""
        careful = replace(self.options, quality=self.told or self.options.quality)
        if careful != self.options:
            estimate = evaluate(estimate.plan, careful, cache=self.cache, cancelled=self.cancelled)
        reached = self.off(estimate) <= NEAR
        figures = estimate.figures
        before = self.plan.watts
        same = abs(figures.watts - before) < 0.05
        power = FIGURE["watts"]
        watts = f"{power.text(figures.watts)} "
        watts += "as now" if same else f"instead of {power.number(before)}"
        words = (
            f"{name}: mean {ppfd(figures.mean, unit=True)}, min / mean "
            f"{percent(figures.min_over_mean)}, {watts}."
        )
        if estimate.tops:
            base = evaluate(self.plan, careful, cache=self.cache, cancelled=self.cancelled)
            beyond = beside(estimate, base, estimate.plan)
            words = f"{words} {capital(beyond)}." if beyond else words
        return Way(kind, name, estimate, reached, words if reached else f"{words} {why}".strip())

    def dimmed(self, estimate: Estimate) -> tuple[Estimate, str]:
        """The plan of an estimate at the whole per cent nearest to the level, and its words."""
        made = estimate.plan
        now = output_of(made)
        wished = now * self.wanted / estimate.figures.mean if estimate.figures.mean > 0 else 100.0
        output = round(min(max(wished, self.dimmer.minimum), self.dimmer.maximum))
        if abs(output - now) < 0.5:
            return estimate, "Full output" if output == 100 else f"Output as it is, {output} %"
        verb = "Dim" if output < now else "Turn up"
        there = self.light(scaled_output(made, output / now))
        step = (there.figures.mean - estimate.figures.mean) / (output - now)
        if self.off(there) > NEAR / 4 and step > 0:  # the room or other tiers bring light too
            better = output + (self.wanted - there.figures.mean) / step
            better = round(min(max(better, self.dimmer.minimum), self.dimmer.maximum))
            if better != output:
                return self.light(scaled_output(made, better / now)), f"{verb} to {better} %"
        return there, f"{verb} to {output} %"

    # -- the three of them --------------------------------------------------------------

    def by_output(self) -> Way:
        kind = WayKind.OUTPUT
        if not self.dimmable:
            return Way(kind, "Dim", None, False, "The lamps cannot be dimmed.")
        estimate, name = self.dimmed(self.light(self.plan))
        flow = FIGURE["photon_flux"]
        flux = sum(lamp.full_ppf for lamp in lamps_at(self.plan, self.turned))
        mean = estimate.figures.mean
        needed = (
            f"it would take {flow.text(flux * self.wanted / mean)} of lamps" if mean else "dark"
        )
        why = f"More they do not give: {needed}, not {flow.number(flux)}."
        return self.way(kind, name, estimate, why)

    def by_height(self) -> Way:
        kind, (lead, *_) = WayKind.HEIGHT, lamps_at(self.plan, self.turned)
        now = hangs(self.plan, lead)
        try:
            heights = heights_to_set(self.plan, self.unit.snap)
        except FindError as error:
            return Way(kind, "Raise", None, False, str(error))
        turn, there = dial("height"), clashes(self.plan)
        heights = [h for h in heights if not clashes(turn.put(self.plan, self.turned, h)) - there]
        if not heights:
            return Way(
                kind,
                "Raise",
                None,
                False,
                "At one height the lamps are in the way of each other or of a shelf.",
            )
        known: dict[int, Estimate] = {}

        def at(k: int) -> Estimate:
            if k not in known:
                known[k] = self.light(turn.put(self.plan, self.turned, heights[k]))
            return known[k]

        last = len(heights) - 1
        scan = sorted({round(last * k / (_SCAN - 1)) for k in range(_SCAN)})
        above = {k: at(k).figures.mean >= self.wanted for k in scan}
        crossings = [(a, b) for a, b in pairwise(scan) if above[a] != above[b]]
        if crossings:  # of several the one nearest to where the lamps hang
            a, b = min(crossings, key=lambda pair: abs(heights[pair[0]] - now))
            first = above[a]
            while b - a > 1:
                middle = (a + b) // 2
                if (at(middle).figures.mean >= self.wanted) == first:
                    a = middle
                else:
                    b = middle
        best = min(known, key=lambda k: (self.off(known[k]), abs(heights[k] - now)))
        verb = "Raise" if heights[best] > now else "Lower"
        name = f"{verb} to {said_length(round(heights[best], 4))}"
        room = turn.sound_in(self.plan, self.turned)
        bound = room.why_most if known[best].figures.mean > self.wanted else room.why_least
        why = "No height comes nearer" + (f": {bound}." if best in {0, last} and bound else ".")
        return self.way(kind, name, known[best], why)

    def by_lining(self, linings: Sequence[Lining]) -> Way:
        kind, now = WayKind.LINING, self.light(self.plan).figures.mean
        lit = {one.key: self.light(line_all_walls(self.plan, one)) for one in linings}
        names = {one.key: one.name for one in linings}
        if self.dimmable:  # the brightest needs the fewest watts
            lit = {k: one for k, one in lit.items() if one.figures.mean > now * (1 + NEAR / 4)}
            best = max(lit, key=lambda key: lit[key].figures.mean, default="")
        else:
            best = min(lit, key=lambda key: self.off(lit[key]), default="")
        if not best:
            nothing = "No lining is offered."
            if linings:
                nothing = "No lining offered gives more light than what is on the walls."
            return Way(kind, "Line", None, False, nothing)
        estimate, name = lit[best], f"Line with {names[best]}"
        if self.dimmable and self.off(estimate) > NEAR / 4:
            before, (estimate, dim) = estimate, self.dimmed(estimate)
            name += "" if estimate is before else f", {inside(dim)}"
        why = "No lining offered comes nearer."
        return self.way(kind, name, estimate, why)
