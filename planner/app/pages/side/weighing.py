"""Weighing: what the maps show and what is wished, light against cost, and odds in words."""

from __future__ import annotations

import textwrap
from collections.abc import Callable, Sequence
from dataclasses import replace
from typing import Final

from PySide6.QtCore import Signal
from PySide6.QtWidgets import (
    QCheckBox,
    QWidget,
)

from planner.app import theme
from planner.app.display import Display
from planner.app.document import Document
from planner.app.fields.form import NoteLabel, Row, button
from planner.app.fields.panel import FieldForm, OptionalLine
from planner.app.pages.side.comparer import Comparer
from planner.app.pages.side.linked import Linked, Shows, once
from planner.app.pages.side.options_table import ReadTable
from planner.app.plain import PlainLabel
from planner.app.plots.option_charts import RankingPlot, RankLine, TradeOffPlot
from planner.app.plots.section import Along, SectionCurves
from planner.estimate.compare import (
    COLUMN,
    WISHES,
    Identity,
    Option,
    Side,
    Wishes,
    known_cost,
    trade_off,
)
from planner.estimate.find_question import Aim, Held
from planner.estimate.odds import (
    NOT_COUNTED,
    By,
    Saving,
    Telling,
    chance_words,
    deciding_words,
    saving_verdict,
    signed_change,
    verdict,
)
from planner.language import inside
from planner.metrics.figures import FIGURE, NO_VALUE, money
from planner.plan.costs import Costs
from planner.plan.plan import Plan
from planner.plan.quantity import Quantity

_SHOWS = (
    ("Light", Shows.LIGHT),
    ("Difference from the baseline", Shows.DIFFERENCE),
    ("Ratio to the baseline", Shows.RATIO),
)


NO_WISH: Final = "no wish"
AIMS: Final = (
    ("Most even light", Aim.EVEN),
    ("Least energy", Aim.ENERGY),
    ("Cheapest", Aim.CHEAP),
)
HELD: Final = ((FIGURE["mean"].name, Held.MEAN), (FIGURE["minimum"].name, Held.LOWEST))
"""Of which light a level is asked."""


def add_wishes(
    form: FieldForm, wishes: Callable[[], Wishes], take: Callable[[Wishes], None]
) -> tuple[list[Row], dict[str, OptionalLine]]:
    """A line for each wish, their rows, and the lines by the wish; an empty one is none."""
    rows, lines = [], {}
    for wish in WISHES:
        row, line = form.add_optional(wish.label, wish.quantity, wish.about)
        line.show_number(None, NO_WISH)

        def put(
            value: float | None, key: str = wish.key, row: Row = row, line: OptionalLine = line
        ) -> None:
            row.clear_error()
            line.show_number(value, NO_WISH)
            take(replace(wishes(), **{key: value}))

        line.entered.connect(put)
        rows.append(row)
        lines[wish.key] = line
    return rows, lines


class CompareForm(FieldForm):
    """Choices of the maps, wishes, ranking and section."""

    def __init__(
        self, document: Document, display: Display, comparer: Comparer, linked: Linked
    ) -> None:
        super().__init__(document, display)
        self._document, self._comparer, self._linked = document, comparer, linked
        soon = once(self.refresh, self)
        _, self.shows = self.add_choice("Maps show", list(_SHOWS))
        self.shows.activated.connect(
            lambda line: linked.update(shows=Shows(self.shows.itemData(line)))
        )
        _, self.baseline = self.add_choice(
            "Baseline", [], "What the others are measured against: the plan, an option or open air."
        )
        self.baseline.activated.connect(
            lambda line: linked.update(baseline=comparer.sides[line].identity)
        )
        self.own_scale = self.add_wide(QCheckBox("Own scale for each map"))
        self.own_scale.toggled.connect(lambda on: linked.update(own_scale=on))
        self.open_air = self.add_wide(QCheckBox("Open air, without any walls, as well"))
        self.open_air.toggled.connect(lambda on: linked.update(open_air=on))
        self.add_heading("Show only what keeps to")
        _, self.wishes = add_wishes(
            self, lambda: linked.state.wishes, lambda wishes: linked.update(wishes=wishes)
        )
        self.kept = self.add_wide(NoteLabel())
        self.kept.setAccessibleName("How many keep the wishes")
        self.add_heading("Ranking by mean PPFD")
        self.ranking = self.add_wide(RankingPlot())
        self.ranking.picked.connect(lambda who: linked.update(chosen=who))
        self.add_heading("Along the line A to B")
        self.curves = self.add_wide(SectionCurves(display))
        self.end()
        for signal in (comparer.compared, comparer.told, linked.changed):
            signal.connect(soon)
        linked.section_moved.connect(lambda _section: self._cut())

    def _cut(self) -> None:
        """Show the lights along the section line."""
        state = self._linked.state
        lights = tuple(
            Along(
                side.name,
                side.estimate,
                side.identity == state.chosen,
                side.identity == state.baseline,
            )
            for side in self._comparer.sides
            if side.estimate is not None
        )
        self.curves.show_lights(lights, self._linked.section)

    def refresh(self, plan: Plan | None = None) -> None:
        """Show the newest comparison."""
        del plan
        sides, state = self._comparer.sides, self._linked.state
        self.baseline.offer([(side.name, None) for side in sides])
        who = [side.identity for side in sides]
        self.baseline.setCurrentIndex(who.index(state.baseline) if state.baseline in who else -1)
        self.shows.setCurrentIndex([one for _, one in _SHOWS].index(state.shows))
        self.own_scale.setChecked(state.own_scale)
        self.open_air.setChecked(state.open_air)
        own = self._comparer.of_plan
        band = None if own is None else own.band
        self.ranking.show_lines((*self._estimated(), *self._measured()), band, state.chosen)
        self._cut()
        missed = sum(bool(state.wishes.missed(self._comparer.option(side))) for side in sides)
        self.kept.setVisible(state.wishes.any)
        self.kept.setText(f"{len(sides) - missed} of {len(sides)} keep these wishes.")

    def _estimated(self) -> tuple[RankLine, ...]:
        lines = []
        for side in self._comparer.sides:
            if side.estimate is not None:
                found = self._comparer.telling(side)
                equal = found is not None and found.equal_within(self._linked.state.margin)
                f, who = side.estimate.figures, side.identity
                lines.append(RankLine(side.name, f.minimum, f.mean, f.maximum, who, equal))
        return tuple(lines)

    def _measured(self) -> tuple[RankLine, ...]:
        from planner.survey.statistics import summarise  # noqa: PLC0415 - only with surveys

        lines = []
        for survey in self._document.plan.surveys:
            found = summarise(survey)
            if found is not None:
                lines.append(RankLine(survey.name, found.minimum, found.mean, found.maximum))
        return tuple(lines)


_COSTS = ("total", "cost", "money", "kwh", "watts")
_LIGHTS = ("dli", "mean", "minimum", "min_over_mean", "share_inside")


class TradeOffForm(FieldForm):
    """Which light against which cost; ``changed`` when another one is chosen."""

    changed = Signal()

    def __init__(self, document: Document, display: Display) -> None:
        super().__init__(document, display)
        _, self.light = self.add_choice("Light", [(COLUMN[key].name, key) for key in _LIGHTS])
        _, self.cost = self.add_choice("Cost", [(COLUMN[key].name, key) for key in _COSTS])
        self._picked = False
        self.cost.activated.connect(lambda _line: setattr(self, "_picked", True))
        for combo in (self.light, self.cost):
            combo.activated.connect(lambda _line: self.changed.emit())
        self.words = self.add_wide(PlainLabel(name="What the chart says", wrap=True))
        self.end()

    def fill(
        self, plot: TradeOffPlot, options: Sequence[Option], costs: Costs, chosen: Identity
    ) -> None:
        """Fill the chart, and say what it shows; until a cost was picked, by one that is known."""
        if not self._picked:
            cost = known_cost(options, _COSTS[:1])
            self.cost.setCurrentIndex(self.cost.findData(cost))
        made = trade_off(options, self.light.currentData(), self.cost.currentData(), costs)
        plot.show_trade_off(made, chosen)
        beaten = "The options on the line are beaten by none in both at once."
        unpriced = known_cost(options, _COSTS[:1]) != _COSTS[0]
        where = "Prices are written under 'Worth it'." if made.note or unpriced else ""
        self.words.setText(" ".join(part for part in (made.note, beaten, where) if part))


_SOON: Final = "How sure the difference is will be known in a moment."
_BY: Final = (By.MEAN, By.LOWEST, By.EVENNESS)
_JUDGED: Final = tuple(FIGURE[key].name for key in ("mean", "minimum", "min_over_mean"))
HEADINGS: Final = ("Option", *_JUDGED, "Money at\nthe same light",
                   *(f"Best in\n{inside(name)}" for name in _JUDGED))  # fmt: skip
_MARGIN: Final = Quantity("%", decimals=1, step=1.0, factor=0.01).within(0.0, 0.5)


class OddsBoard(QWidget):
    """A row an option against the baseline, and sentences about the chosen one."""

    def __init__(self, document: Document, comparer: Comparer, linked: Linked) -> None:
        super().__init__()
        self._document, self._comparer, self._linked = document, comparer, linked
        self.heading = PlainLabel(bold=True)
        self.words = PlainLabel(name="What can be told", wrap=True, selectable=True)
        self.table = ReadTable("Odds against the baseline", HEADINGS)
        self.table.currentCellChanged.connect(self._on_row)
        theme.column(self.heading, self.words, (self.table, 1), on=self).addStretch(0)
        for signal in (comparer.compared, comparer.told, comparer.priced):
            signal.connect(self.refresh)
        linked.changed.connect(lambda _new, _old: self.refresh())

    def refresh(self) -> None:
        """Show the newest odds; nothing is reckoned while nobody looks."""
        base = self._comparer.baseline
        if base is None or not self.isVisible():
            return
        sides = self._comparer.sides
        self.heading.setText(f"Against {base.name}")
        chosen = self._comparer.chosen
        at = None if chosen is None else sides.index(chosen)
        self.table.fill([self._cells(side) for side in sides], at)
        self.words.setText(self.sentences())

    def _cells(self, side: Side) -> tuple[str, ...]:
        here = side is self._comparer.baseline
        told = ["baseline"] + [""] * 3 if here else [self._told(side, by) for by in _BY]
        if not here:
            saving = self._comparer.saving(side)
            told.append(NO_VALUE if saving is None else _saved(saving))
        best = [self._comparer.best(side, by) for by in _BY]
        name = "\n".join(textwrap.wrap(side.name, 26)) or side.name
        return (
            name,
            *told,
            *(NO_VALUE if p is None else chance_words(p, short=True) for p in best),
        )

    def _told(self, side: Side, by: By) -> str:
        found = self._comparer.telling(side, by)
        if found is None:
            return "…" if not self._comparer.all_told else NO_VALUE
        return _short(found, self._linked.state.margin)

    def sentences(self) -> str:
        """What can be told of the chosen side, or what to do where the baseline is chosen."""
        side, base = self._comparer.chosen, self._comparer.baseline
        if side is None or base is None:
            return ""
        if len(self._comparer.sides) < 2:
            return "There is nothing to set against the plan yet; try other options first."
        if side is base:
            return self._of_the_first(base)
        tellings = {by: self._comparer.telling(side, by) for by in _BY}
        if tellings[By.MEAN] is None:
            if self._comparer.all_told:
                return f"{side.name} and {base.name} cannot be weighed: one of them is dark."
            return _SOON
        margin = self._linked.state.margin
        parts = [
            verdict(side.name, found, base.name, by, margin)
            for by, found in tellings.items()
            if found is not None
        ]
        costs = self._document.plan.costs
        saving = self._comparer.saving(side)
        if saving is not None:
            parts.append(
                saving_verdict(side.name, saving, base.name, costs.span_months, costs.currency)
            )
        elif costs.price_per_kwh is None:
            parts.append("Write a tariff under 'Worth it', and money is weighed as well.")
        else:
            parts.append("Money is weighed once all prices are known; see 'Worth it'.")
        best = self._comparer.best(side, By.MEAN)
        if best is not None:
            parts.append(_most(side.name, best))
        decides = self._comparer.deciding(side, By.MEAN)
        if decides is not None:
            parts.append(deciding_words(decides))
        return "\n".join(dict.fromkeys(parts))

    def _of_the_first(self, base: Side) -> str:
        """Which option is likely the brightest, where none was chosen yet."""
        choose = f"Choose an option below for all that can be told of it against {base.name}."
        chances = [(self._comparer.best(side, By.MEAN), side) for side in self._comparer.sides]
        known = [(chance, side) for chance, side in chances if chance is not None]
        if not known:
            return choose if self._comparer.all_told else f"{_SOON}\n{choose}"
        chance, first = max(known, key=lambda one: one[0])
        told, margin = self._comparer.telling(first), self._linked.state.margin
        lead = "" if told is None else verdict(first.name, told, base.name, By.MEAN, margin)
        return "\n".join(part for part in (lead, _most(first.name, chance), choose) if part)

    def _on_row(self, row: int, *_rest: int) -> None:
        sides = self._comparer.sides
        if 0 <= row < len(sides):
            self._linked.update(chosen=sides[row].identity)

    def showEvent(self, event: object) -> None:
        super().showEvent(event)  # type: ignore[arg-type]
        self.refresh()


class OddsForm(FieldForm):
    """The margin inside which options are equal, what is not counted, and the way to measure."""

    survey_asked = Signal()

    def __init__(self, document: Document, display: Display, linked: Linked) -> None:
        super().__init__(document, display)
        _, self.margin = self.add_number(
            "Equal within",
            _MARGIN,
            linked.state.margin,
            "Options that differ by less than this are equal for your purpose.",
        )
        for signal in (self.margin.committed, self.margin.stepped):
            signal.connect(lambda value: linked.update(margin=value))
        self.add_wide(
            NoteLabel(
                "By 20,000 draws from the ranges of reflectances, photon flux, beams and hanging "
                "heights; what two options share is drawn once for both. Intervals hold 95 %."
            )
        )
        self.add_wide(
            NoteLabel(
                "The draws take each lining anywhere in its stated range; the table takes the "
                "value named, so the two may differ where a range is not even about its value."
            )
        )
        self.add_wide(NoteLabel(NOT_COUNTED))
        self.survey = button("Measure it", "Go to the survey page", act=self.survey_asked)
        self.add_buttons(self.survey)
        self.end()


def _most(name: str, chance: float) -> str:
    return f"Of all options {name} has the most light with {chance_words(chance)}."


def _short(found: Telling, margin: float) -> str:
    if found.same:
        return "the very same"
    low, middle, high = (signed_change(v) for v in (found.low, found.ratio, found.high))
    span = f"{middle} % ({low} to {high})"
    if found.equal_within(margin):
        return f"{span}\nequal for the purpose"
    ahead = found.chance if found.ratio > 1 else 1 - found.chance
    return f"{span}\n{chance_words(ahead, short=True)}" if found.clear else f"{span}\nnot clear"


def _saved(saving: Saving) -> str:
    if saving.low == saving.high == 0:
        return "the very same"
    word = "saves" if saving.middle >= 0 else "costs"
    ends = sorted((saving.low, saving.high) if saving.middle >= 0 else (-saving.low, -saving.high))
    span = f"{word} {money(abs(saving.middle))} ({money(ends[0])} to {money(ends[1])})"
    chance = saving.chance if saving.middle >= 0 else 1 - saving.chance
    return f"{span}\n{chance_words(chance, short=True)}"
