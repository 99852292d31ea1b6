"""The comparer: light of the plan and all its variants, and whether they can be told apart.

It follows the open plan while the page is in sight: a quick comparison first, the default
quality after it, and then, one side after another, how its figures move with what is not
known well. What was found about a plan is kept, so that a new variant costs only itself.

What all cards share, the choices and the places pointed at, is ``Linked``.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass, replace
from enum import StrEnum
from typing import TYPE_CHECKING, Any, Final

from PySide6.QtCore import QObject, QTimer, Signal

from planner.app.canvas.sampling import Section
from planner.app.display import Display
from planner.app.document import Document
from planner.app.jobs import Cancelled, Job, Lane, Progress
from planner.estimate.compare import Comparison, Origin, Side, against, compare, served
from planner.estimate.evaluate import Cache
from planner.estimate.result import EstimateOptions, Quality
from planner.plan.edits import changed
from planner.plan.lit import Doubted, Lit, doubted, lit
from planner.plan.plan import Plan
from planner.plan.space import Point
from planner.plan.variant_edits import free_name
from planner.units import COVERAGE

if TYPE_CHECKING:
    from planner.estimate.compare import AgainstMap
    from planner.estimate.odds import Sway, Telling


class Shows(StrEnum):
    """What the maps show."""

    LIGHT = "light"
    DIFFERENCE = "difference"
    RATIO = "ratio"


@dataclass(frozen=True)
class LinkedState:
    """``chosen`` and ``baseline`` count sides (0 the plan itself)."""

    shows: Shows = Shows.LIGHT
    own_scale: bool = False
    open_air: bool = False
    baseline: int = 0
    chosen: int = 0


class Linked(QObject):
    """Emits ``changed(new, old)`` for the choices; pointer and section have their own."""

    changed = Signal(object, object)
    pointer_moved = Signal(object)
    section_moved = Signal(object)

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._state = LinkedState()
        self._pointer: Point | None = None
        self._section: Section | None = None

    @property
    def state(self) -> LinkedState:
        """The choices in force."""
        return self._state

    @property
    def pointer(self) -> Point | None:
        """Where the pointer is in the space, in metres; None where it is not."""
        return self._pointer

    @property
    def section(self) -> Section | None:
        """The two ends of the section line in metres."""
        return self._section

    def update(self, **choices: Any) -> None:
        """Change some choices."""
        old, self._state = self._state, replace(self._state, **choices)
        if old != self._state:
            self.changed.emit(self._state, old)

    def point_at(self, place: Point | None) -> None:
        """Show a place in all maps."""
        if place != self._pointer:
            self._pointer = place
            self.pointer_moved.emit(place)

    def cut_along(self, section: Section) -> None:
        """Move the section line in all maps."""
        if section != self._section:
            self._section = section
            self.section_moved.emit(section)


SETTLE_MS: Final = 120
_MOST_KEPT: Final = 120

Comparing = Callable[..., Comparison]
Swaying = Callable[..., Any]
Swayed = tuple[Lit, Doubted]


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
    how sure it is, ``failed(str)``, ``busy_changed(bool)`` and ``progressed(float)``.
    ``comparing`` and ``swaying`` are the functions of ``estimate.compare`` and
    ``estimate.odds``; tests give their own.
    """

    compared = Signal()
    told = Signal()
    failed = Signal(str)
    busy_changed = Signal(bool)
    progressed = Signal(float)

    def __init__(
        self,
        document: Document,
        display: Display,
        linked: Linked,
        *,
        comparing: Comparing = compare,
        swaying: Swaying | None = None,
        synchronous: bool | None = None,
        parent: QObject | None = None,
    ) -> None:
        super().__init__(parent)
        self._document, self._display, self._linked = document, display, linked
        self._comparing = comparing
        self._swaying = swaying
        self.comparison: Comparison | None = None
        self.coarse = False
        self._cells = 0
        self._asked: _Question | None = None
        self._about: object = None
        self._followed = False
        self._cache = Cache()
        self._sways: dict[Swayed, Sway | None] = {}
        self.lane = Lane("comparer", synchronous=synchronous, parent=self)
        self.lane.done.connect(self._on_done)
        self.lane.failed.connect(self._on_failed)
        self.lane.busy_changed.connect(lambda _on: self._tell_busy())
        self.lane.progressed.connect(lambda _about, fraction: self.progressed.emit(fraction))
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
            self._take(known)
        if known is None or (self._asked is not None and not self._still_asked(new)):
            self._on_changed()

    def _on_linked(self, new: Any, old: Any) -> None:
        if self._followed and new.open_air != old.open_air:
            self._ask()
        if new.baseline != old.baseline and new.baseline < len(self.sides):
            self._name_baseline(self.sides[new.baseline])

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
        comparing, cache, unit = self._comparing, self._cache, self._display.unit

        def job(progress: Progress, cancelled: Cancelled) -> Comparison:
            return comparing(
                question.plan,
                question.options,
                with_open_air=question.with_open_air,
                unit=unit,
                cache=cache,
                progress=progress,
                cancelled=cancelled,
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

    def _show(self, question: _Question, found: Comparison) -> None:
        self.coarse = question.options.quality is Quality.PREVIEW
        self._asked = None
        self._cells = question.options.cells[0]
        self.comparison = found
        self._take(self._served() or found)
        if self.coarse:
            self._put(self._question(Quality.DEFAULT))
        else:
            self._next_sway()

    def _take(self, found: Comparison) -> None:
        before, state = self.sides, self._linked.state
        self.comparison = _named_apart(found)
        now = [side.identity for side in self.sides]

        def same(index: int) -> int:
            """Where a side of before stands now; the plan where it is gone."""
            there = before[index].identity if index < len(before) else now[0]
            return now.index(there) if there in now else 0

        kept = self._document.plan.baseline
        base = next((k for k, side in enumerate(self.sides) if side.key == kept), 0)
        if 0 < state.baseline < len(before) and before[state.baseline].origin is Origin.OPEN_AIR:
            base = same(state.baseline)  # no plan can name open air as its baseline
        self._linked.update(chosen=same(state.chosen), baseline=base)
        self.compared.emit()

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
        swaying = self._swaying or _own_sway
        for index in self._in_order():
            side = self.sides[index]
            key = _key(side.plan)
            if side.estimate is None or key in self._sways:
                continue
            estimate, plan = side.estimate, side.plan
            self._about = _SwayOf(key)
            self.lane.ask(self._about, _swaying_job(swaying, plan, estimate))
            self._tell_busy()
            return

    def _in_order(self) -> list[int]:
        first = self._linked.state.baseline
        return sorted(range(len(self.sides)), key=lambda index: (index != first, index))

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

    @property
    def baseline(self) -> Side | None:
        """The side the others are measured against."""
        sides = self.sides
        return sides[min(self._linked.state.baseline, len(sides) - 1)] if sides else None

    def telling(self, side: Side) -> Telling | None:
        """Whether the mean of a side can be told from the baseline's; None if not known."""
        base = self.baseline
        if base is None or side is base or side.estimate is None or base.estimate is None:
            return None
        from planner.estimate.odds import tell_means  # noqa: PLC0415 - with the page only

        one, two = self._sways.get(_key(side.plan)), self._sways.get(_key(base.plan))
        if one is None or two is None:
            return None
        return tell_means(side.estimate, base.estimate, one, two)

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
        """Stop the work and join the thread."""
        self._settle.stop()
        self.lane.shutdown()


def _named_apart(found: Comparison) -> Comparison:
    """The sides with names made unique: a variant may be called as the plan is."""
    sides: list[Side] = []
    for side in found.sides:
        sides.append(replace(side, name=free_name([one.name for one in sides], side.name)))
    return Comparison(tuple(sides))


def _lights(plan: Plan) -> tuple[Lit, ...]:
    """The light of a plan and of its variants."""
    return lit(plan), *(lit(variant.setup) for variant in plan.variants)


def _swaying_job(swaying: Swaying, plan: Plan, estimate: Any) -> Job:
    return lambda _progress, cancelled: swaying(plan, estimate, cancelled=cancelled)


def _error(side: Side) -> float:
    return 0.0 if side.estimate is None else side.estimate.numeric_error or 0.0


def _key(plan: Plan) -> Swayed:
    """What it depends on how the light of a plan sways with its inputs."""
    return lit(plan), doubted(plan)


def _own_sway(plan: Plan, estimate: Any, **named: Any) -> Any:
    from planner.estimate.odds import sway  # noqa: PLC0415 - heavy

    return sway(plan, estimate, **named)
