"""The comparer: light of the plan and all its variants, and whether they can be told apart.

It follows the open plan while the page is in sight: a quick comparison first, the default
quality after it, and then, one side after another, how its figures move with what is not
known well. What was found about a plan is kept, so that a new variant costs only itself.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, Final

from PySide6.QtCore import QObject, QTimer, Signal

from planner.app.display import Display
from planner.app.document import Document
from planner.app.jobs import Cancelled, Lane, Progress, shut_down
from planner.app.pages.side.linked import Linked
from planner.estimate.compare import (
    OPEN_AIR_SIDE,
    PLAN_SIDE,
    Comparison,
    Identity,
    Option,
    Origin,
    Side,
    against,
    compare,
    option,
    served,
)
from planner.estimate.evaluate import shared_cache
from planner.estimate.result import Estimate, EstimateOptions, Quality
from planner.estimate.worth import Bill, bill, running
from planner.plan.edits import changed
from planner.plan.lit import Doubted, Lit, doubted, lit
from planner.plan.place import Place, judged
from planner.plan.plan import Plan
from planner.units import COVERAGE

if TYPE_CHECKING:
    from planner.estimate.compare import AgainstMap
    from planner.estimate.odds import By, Odds, Saving, Sway, Telling
    from planner.estimate.outlook import Input


SETTLE_MS: Final = 120
_MOST_KEPT: Final = 120

Swayed = tuple[Lit, Doubted, Place]


@dataclass(frozen=True)
class _Question:
    plan: Plan
    options: EstimateOptions
    with_open_air: bool


@dataclass(frozen=True)
class _SwayOf:
    key: Swayed


class Comparer(QObject):
    """Keeps the newest comparison.

    Signals: ``compared`` when there is a new one, ``told`` when it is known of one more side
    how sure it is, ``priced`` when it is known what has to be bought, ``said(str)`` for what
    happened by the way, ``failed(str)``, ``busy_changed(bool)`` and ``progressed(float)``.
    """

    compared = Signal()
    told = Signal()
    said = Signal(str)
    priced = Signal()
    failed = Signal(str)
    busy_changed = Signal(bool)
    progressed = Signal(float)

    def __init__(
        self,
        document: Document,
        display: Display,
        linked: Linked,
        *,
        parent: QObject | None = None,
    ) -> None:
        super().__init__(parent)
        self._document, self._display, self._linked = document, display, linked
        self.comparison: Comparison | None = None
        self.coarse = False
        self._cells = 0
        self._asked: _Question | None = None
        self._about: object = None
        self._followed = False
        self._sways: dict[Swayed, Sway | None] = {}
        self.lane = Lane("comparer", parent=self)
        self.lane.done.connect(self._on_done)
        self.lane.failed.connect(self._on_failed)
        self.lane.busy_changed.connect(lambda _on: self._tell_busy())
        self.lane.progressed.connect(self._on_progress)
        self._parts: list[Comparison] = []
        self._begun = False
        self.bills = Lane("bills", parent=self)
        self.bills.done.connect(self._on_bills)
        self.bills.failed.connect(lambda _about, sentence: self.failed.emit(sentence))
        self._bills: dict[object, Bill] = {}
        self.whole: Bill | None = None
        self._billed: object = None
        self._odds: tuple[object, list[tuple[Identity, Estimate, Sway]], Odds] | None = None
        self._best: dict[By, tuple[float, ...]] = {}
        self._settle = QTimer(self, singleShot=True, interval=SETTLE_MS)
        self._settle.timeout.connect(self._ask)
        document.changed.connect(self._on_plan)
        display.changed.connect(lambda _state: self._on_changed())
        linked.changed.connect(self._on_linked)

    # -- following the plan -------------------------------------------------------------

    def follow(self, on: bool) -> None:
        """Compute while the page is in sight, and rest while it is not."""
        self._followed = on
        if on:
            self._ask()
        else:
            self._settle.stop()
            self.lane.drop()

    @property
    def computing(self) -> bool:
        """Whether light is being computed (not only how sure it is)."""
        return self.lane.busy and not isinstance(self._about, _SwayOf)

    @property
    def current(self) -> bool:
        """Whether the comparison is of the plan as it stands, at default quality."""
        return self.comparison is not None and not self.coarse and self._asked is None

    def _on_changed(self) -> None:
        if self._followed:
            self._settle.start()

    def _on_plan(self, old: Plan, new: Plan) -> None:
        del old
        known = self._served()
        if known is not None:
            self._take(known)  # this asks for the bills as well
        if known is None or (self._asked is not None and not self._still_asked(new)):
            self._on_changed()

    def _on_linked(self, new: Any, old: Any) -> None:
        if self._followed and new.open_air != old.open_air:
            self._ask()
        if new.baseline != old.baseline:
            base = self.side(new.baseline)
            if base is not None:
                self._name_baseline(base)
            self._ask_bills()

    def _name_baseline(self, side: Side) -> None:
        """Keep with the plan what the others are measured against."""
        plan = self._document.plan
        known = side.key is None or any(one.key == side.key for one in plan.variants)
        if side.origin is not Origin.OPEN_AIR and known and side.key != plan.baseline:
            made = changed(plan, baseline=side.key)
            self._document.apply(made, f"Measure against {side.name}")

    def _question(self, quality: Quality) -> _Question:
        cells = self._display.state.cells
        options = EstimateOptions(cells=(cells, cells), quality=quality)
        return _Question(self._document.plan, options, self._linked.state.open_air)

    def _ask(self) -> None:
        self._settle.stop()
        known = None if self.coarse else self._served()
        if known is None:
            self._put(self._question(Quality.PREVIEW))
            return
        self.lane.drop()
        self._asked = None
        self._take(known)
        self._next_sway()

    def _served(self) -> Comparison | None:
        """The comparison of the plan as it stands, where all of its light is known."""
        if self.comparison is None or self._cells != self._display.state.cells:
            return None
        return served(
            self.comparison,
            self._document.plan,
            with_open_air=self._linked.state.open_air,
            unit=self._display.unit,
        )

    def _still_asked(self, plan: Plan) -> bool:
        """Whether what is being computed is the light of this plan's sides."""
        asked = self._asked
        return asked is not None and _lights(asked.plan) == _lights(plan)

    def _put(self, question: _Question) -> None:
        self._asked = question
        cache, unit = shared_cache(), self._display.unit
        parts = self._parts = []

        def job(progress: Progress, cancelled: Cancelled) -> Comparison:
            return compare(
                question.plan,
                question.options,
                with_open_air=question.with_open_air,
                unit=unit,
                cache=cache,
                progress=progress,
                cancelled=cancelled,
                so_far=parts.append,
            )

        self._about = question
        self.lane.ask(question, job, what="The comparison")

    def _on_done(self, about: object, result: object) -> None:
        if isinstance(about, _SwayOf):
            self._keep_sway(about.key, result)
            self.told.emit()
            self._next_sway()
        elif isinstance(about, _Question) and isinstance(result, Comparison):
            self._show(about, result)

    def _on_progress(self, about: object, fraction: float) -> None:
        """The first maps are shown as they come: nobody waits for the last of many."""
        self.progressed.emit(fraction)
        if about is self._asked and self._parts and not self._begun:
            self.coarse = True
            self._take(self._parts[-1])
            self._parts.clear()

    def _show(self, question: _Question, found: Comparison) -> None:
        self.coarse = question.options.quality is Quality.PREVIEW
        self._asked, self._begun = None, True
        self._cells = question.options.cells[0]
        self.comparison = found
        self._take(self._served() or found)
        if self.coarse:
            self._put(self._question(Quality.DEFAULT))
        else:
            self._next_sway()

    def _take(self, found: Comparison) -> None:
        state, old = self._linked.state, self.baseline
        self.comparison = found
        now = [side.identity for side in self.sides]
        kept = self._document.plan.baseline
        base: Identity = PLAN_SIDE if kept is None else (Origin.VARIANT, kept)
        if state.baseline == OPEN_AIR_SIDE:
            base = OPEN_AIR_SIDE  # no plan can name open air as its baseline
        base = base if base in now else PLAN_SIDE
        if old is not None and old.identity not in now:
            self.said.emit(
                f"'{old.name}' was the baseline and is gone; all are measured against "
                f"'{self.sides[now.index(base)].name}' now."
            )
        chosen = state.chosen if state.chosen in now else PLAN_SIDE
        self._linked.update(chosen=chosen, baseline=base)
        self.compared.emit()
        self._ask_bills()

    def _on_failed(self, about: object, sentence: str) -> None:
        if isinstance(about, _SwayOf):
            self._keep_sway(about.key, None)
            self._next_sway()
        else:
            self._asked = None
            self.failed.emit(sentence)

    def _tell_busy(self) -> None:
        self.busy_changed.emit(self.computing)

    # -- how sure -----------------------------------------------------------------------

    def _next_sway(self) -> None:
        """Find out about the next side that is not known yet; the baseline comes first."""
        for index in self._in_order():
            side = self.sides[index]
            key = _key(side.plan)
            if side.estimate is None or key in self._sways:
                continue
            self._about, of = _SwayOf(key), (side.plan, side.estimate)

            def job(_progress: Progress, cancelled: Cancelled, of: Any = of) -> Any:
                return _own_sway(*of, cancelled=cancelled)

            self.lane.ask(self._about, job, what="The odds")
            self._tell_busy()
            return

    def _in_order(self) -> list[int]:
        first = self._linked.state.baseline
        return sorted(range(len(self.sides)), key=lambda k: (self.sides[k].identity != first, k))

    def _keep_sway(self, key: Swayed, found: Any) -> None:
        while len(self._sways) >= _MOST_KEPT:
            del self._sways[next(iter(self._sways))]
        self._sways[key] = found

    @property
    def all_told(self) -> bool:
        """Whether it is known of every side how sure it is."""
        return self.comparison is not None and all(
            side.estimate is None or _key(side.plan) in self._sways for side in self.sides
        )

    # -- reading ------------------------------------------------------------------------

    @property
    def sides(self) -> tuple[Side, ...]:
        """The sides of the newest comparison."""
        return () if self.comparison is None else self.comparison.sides

    def side(self, identity: Identity) -> Side | None:
        """A side by what tells it from the others; None where it is not there."""
        return next((side for side in self.sides if side.identity == identity), None)

    @property
    def baseline(self) -> Side | None:
        """The side the others are measured against."""
        return self.side(self._linked.state.baseline) or next(iter(self.sides), None)

    @property
    def of_plan(self) -> Estimate | None:
        """The estimate of the plan itself, which is the first side."""
        return self.sides[0].estimate if self.sides else None

    @property
    def chosen(self) -> Side | None:
        """The side that is chosen."""
        return self.side(self._linked.state.chosen) or next(iter(self.sides), None)

    def odds(self) -> tuple[Odds, tuple[Identity, ...]] | None:
        """The odds of all sides whose sway is known, and which these are, in their order."""
        from planner.estimate.odds import Odds  # noqa: PLC0415 - with the page only

        known = [
            (side.identity, side.estimate, sway)
            for side in self.sides
            for sway in [self._sways.get(_key(side.plan))]
            if side.estimate is not None and sway is not None and side.estimate.figures.minimum > 0
        ]
        if not known:
            return None
        # Arrays of light are compared by being the same: an estimate is a frozen value.
        key = tuple((who, id(estimate), id(sway)) for who, estimate, sway in known)
        if self._odds is None or self._odds[0] != key:
            made = Odds.of([(estimate, sway) for _, estimate, sway in known])
            self._odds, self._best = (key, known, made), {}
        return self._odds[2], tuple(who for who, _, _ in known)

    def telling(self, side: Side, by: By | None = None) -> Telling | None:
        """How a figure (the mean) of a side stands to the baseline's; None if not known."""
        base, found = self.baseline, self.odds()
        if base is None or found is None or side is base:
            return None
        odds, known = found
        if side.identity not in known or base.identity not in known:
            return None
        places = known.index(side.identity), known.index(base.identity)
        return odds.telling(*places) if by is None else odds.telling(*places, by)

    def best(self, side: Side, by: By) -> float | None:
        """The probability that a side is the best of all; None until all are known."""
        found = self.odds()
        if found is None or not self.all_told or side.identity not in found[1]:
            return None
        if by not in self._best:
            self._best[by] = found[0].best(by)
        return self._best[by][found[1].index(side.identity)]

    def contrary(self) -> str:
        """What figures and draws rank the other way round, and why; '' while that is not known."""
        if self.odds() is None or self._odds is None or not self.all_told:
            return ""
        names = {side.identity: side.name for side in self.sides}
        return self._odds[2].contrary([(names[who], e, sway) for who, e, sway in self._odds[1]])

    def saving(self, side: Side) -> Saving | None:
        """What a side saves over the span at the baseline's light of a day; None if unknown."""
        base, found, costs = self.baseline, self.odds(), self._document.plan.costs
        bills = self.bill(side), None if base is None else self.bill(base)
        if base is None or found is None or costs.price_per_kwh is None or side is base:
            return None
        if bills[0] is None or bills[1] is None or bills[0].cost is None:
            return None
        odds, known = found
        if side.identity not in known or base.identity not in known:
            return None
        one, two = running(side.plan, costs), running(base.plan, costs)
        hours = side.plan.photoperiod_hours / base.plan.photoperiod_hours
        months = costs.span_months
        # The mean is that of the lit hours: a longer day brings that much more light.
        runs = months * (one.money or 0.0) / hours, months * (two.money or 0.0)
        places = known.index(side.identity), known.index(base.identity)
        return odds.saving(*places, (bills[0].cost, 0.0), runs)

    def deciding(self, side: Side, by: By) -> tuple[tuple[Input, float], ...] | None:
        """Which inputs decide between a side and the baseline; None until that is known."""
        from planner.estimate.odds import deciding  # noqa: PLC0415 - with the page only

        base = self.baseline
        one = self._sways.get(_key(side.plan))
        two = None if base is None else self._sways.get(_key(base.plan))
        return None if one is None or two is None else deciding(one, two, by)

    # -- what is to be bought -----------------------------------------------------------

    def bill(self, side: Side) -> Bill | None:
        """What has to be bought for a side beyond the baseline; None while it is reckoned.

        ``whole`` is all that the baseline takes. Another plan may have options of the same keys.
        """
        return self._bills.get((side.identity, side.plan.setup))

    def option(self, side: Side) -> Option:
        """The row of a side in the table of options."""
        return option(side, self.baseline, self.bill(side), self._document.plan.costs)

    def _ask_bills(self) -> None:
        """Reckon what has to be bought, where that may have changed: cutting takes a while."""
        base = self.baseline
        if base is None:
            return
        costs = self._document.plan.costs
        asked = (costs, base.identity, tuple((s.identity, s.plan.setup) for s in self.sides))
        if asked == self._billed:
            return
        self._billed, self._bills, self.whole = asked, {}, None
        sides = self.sides

        def job(progress: Progress, cancelled: Cancelled) -> tuple[Bill, dict[object, Bill]]:
            made: dict[object, Bill] = {}
            for done, side in enumerate(sides):
                if cancelled():
                    break
                made[side.identity, side.plan.setup] = bill(side.plan, base.plan, costs)
                progress((done + 1) / len(sides))
            return bill(base.plan, None, costs), made

        self.bills.ask(asked, job, what="What has to be bought")

    def _on_bills(self, asked: object, made: object) -> None:
        if asked is self._billed and isinstance(made, tuple):
            self.whole, self._bills = made
            self.priced.emit()

    # -- maps against the baseline ------------------------------------------------------

    def against(self, side: Side) -> AgainstMap | None:
        """The map of a side against the baseline's; None without both."""
        base = self.baseline
        if base is None or side.estimate is None or base.estimate is None:
            return None
        return against(side.estimate, base.estimate)

    def unresolved(self, side: Side) -> float:
        """How far from 1 the ratio of a cell must be to be told apart (as a logarithm).

        The uncertain inputs count as far as they move the two means apart; the
        computation's own error of a cell counts in full.
        """
        base = self.baseline
        if base is None or side is base:
            return 0.0
        numeric = math.hypot(_error(side), _error(base)) * COVERAGE
        found = self.telling(side)
        inputs = 0.0 if found is None else math.log(found.high / found.ratio)
        return math.hypot(inputs, numeric)

    def shutdown(self) -> None:
        """Stop the work and join the threads."""
        self._settle.stop()
        shut_down([self.lane, self.bills])


def _lights(plan: Plan) -> tuple[Lit, ...]:
    """The light of a plan and of its variants."""
    return lit(plan), *(lit(variant.setup) for variant in plan.variants)


def _error(side: Side) -> float:
    return 0.0 if side.estimate is None else side.estimate.numeric_error or 0.0


def _key(plan: Plan) -> Swayed:
    """What it depends on how the light of a plan sways with its inputs."""
    return lit(plan), doubted(plan), judged(plan)


def _own_sway(plan: Plan, estimate: Any, **named: Any) -> Any:
    from planner.estimate.odds import sway  # noqa: PLC0415 - heavy

    return sway(plan, estimate, **named)
