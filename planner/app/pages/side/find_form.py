"""Finding: what is wanted most under which wishes, and the answers that nothing else beats."""

from __future__ import annotations

from collections.abc import Mapping, Set
from dataclasses import dataclass, field, replace
from typing import Final

import numpy as np
from PySide6.QtCore import Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QCheckBox, QGridLayout, QWidget

from planner.app import theme
from planner.app.display import Display
from planner.app.document import Document
from planner.app.fields.choosers import Shelf, lining_places
from planner.app.fields.form import NoteLabel, TickList, button
from planner.app.fields.panel import FieldForm
from planner.app.jobs import Cancelled, Lane, Progress
from planner.app.pages.side.comparer import Comparer
from planner.app.pages.side.linked import Asker, AskLine
from planner.app.pages.side.options_table import OptionsTable
from planner.app.pages.side.variants import VariantSteps, offer_things
from planner.app.pages.side.weighing import AIMS, HELD, NO_WISH, add_wishes
from planner.app.plain import PlainLabel
from planner.app.plots.option_charts import TradeOffPlot
from planner.estimate.compare import (
    PLAN_SIDE,
    Identity,
    Option,
    Origin,
    Side,
    Wishes,
    option,
    trade_off,
)
from planner.estimate.evaluate import evaluate, shared_cache
from planner.estimate.find import Answers, find
from planner.estimate.find_places import MOST_LAMPS
from planner.estimate.find_question import Aim, Held, Question, Turn, wished_band
from planner.estimate.result import Estimate, EstimateOptions
from planner.estimate.ways import Way, offered, ways
from planner.estimate.worth import Bill, bill
from planner.plan.lining import Lining
from planner.plan.lit import depends
from planner.plan.place import band_at, judged
from planner.plan.plan import Plan
from planner.plan.quantity import COUNT, PPFD
from planner.units import in_unit

_TURNS: Final = (
    ("Height", Turn.HEIGHT),
    ("Output", Turn.OUTPUT),
    ("Hours of light", Turn.HOURS),
    ("Lining", Turn.LINING),
    ("Places of lamps", Turn.PLACES),
    ("Number of lamps", Turn.LAMPS),
)
_MOST_LAMPS: Final = float(MOST_LAMPS)
_LEFT_OUT: Final = frozenset({"of_base", "minimum", "share_inside", "payback"})
_SAME: Final = 0.02
"""Bands that differ by no more, relative, are one: the light of the room in them is estimated."""
_EMPTY: Final = (
    "Say at the right what you want most, what may be turned for it, and what it must keep to. "
    "The answers stand here: each can be used in the plan or kept as an option."
)


@dataclass(frozen=True, eq=False)
class Found:
    """What a question brought: rows of the table, and what to say of each.

    ``tally`` is the answer in short; ``money`` says to draw the rows against their totals.
    """

    of: Plan
    words: str
    tally: str
    rows: tuple[Option, ...] = ()
    told: Mapping[Identity, str] = field(default_factory=dict)
    best: Identity = PLAN_SIDE
    money: bool = False


class FindBoard(QWidget):
    """The answer in words, the trade-off, the table, and what to do with the chosen one."""

    def __init__(self, document: Document, display: Display, steps: VariantSteps) -> None:
        super().__init__()
        self._document, self._display, self._steps = document, display, steps
        self.found: Found | None = None
        self._former = False
        self._chosen: Identity = PLAN_SIDE
        self.words = PlainLabel(_EMPTY, name="Answer", wrap=True, selectable=True)
        self.stale = NoteLabel()
        self.chart = TradeOffPlot()
        self.chart.empty = "The answers will be drawn here: evenness against what it takes."
        self.chart.redraw()
        self.note = NoteLabel()
        self.note.hide()
        self.table = OptionsTable()
        self.table.setAccessibleName("Answers")
        # What an answer is not chosen by leaves the room to what is to be bought.
        self.table.left_out = _LEFT_OUT
        self.told = PlainLabel(name="The chosen answer", wrap=True)
        self.use_button = button("Use in the plan", "Make this the plan, as one undo step")
        self.keep_button = button("Keep as an option", "The plan stays; this stands beside it")
        line = theme.row(
            (self.told, 1), (self.use_button, 0, Qt.AlignmentFlag.AlignTop),
            (self.keep_button, 0, Qt.AlignmentFlag.AlignTop),
        )  # fmt: skip
        theme.column(
            self.words, self.stale, (self.chart, 1), self.note, self.table, line, on=self,
            gap=theme.HALF,
        )  # fmt: skip
        for signal in (self.table.picked, self.chart.picked):
            signal.connect(self.choose)
        self.use_button.clicked.connect(self.use)
        self.table.opened.connect(self.use)
        self.keep_button.clicked.connect(self.keep)
        document.changed.connect(lambda _old, _new: self._on_plan())
        display.changed.connect(lambda _state: self._show())
        self._show()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        # The table is as tall as its rows, and leaves the chart its half.
        self.table.setMaximumHeight(round(0.45 * self.height()))

    def show_found(self, found: Found) -> None:
        """Show answers, the best one chosen."""
        self.found, self._chosen, self._former = found, found.best, False
        self._on_plan()

    def expect(self) -> None:
        """Another question was put: what stands here is of the former one, and not to be used."""
        self._former = True
        self._on_plan()

    @property
    def chosen(self) -> Side | None:
        """The answer chosen; None without one to this question, or where it is the plan."""
        if self._former:
            return None
        sides = [row.side for row in self._rows() if row.side.identity == self._chosen]
        return sides[0] if sides and self._chosen != PLAN_SIDE else None

    def _rows(self) -> tuple[Option, ...]:
        """The answers, lengths in their names in the reader's unit."""
        unit = self._display.unit
        return tuple(
            replace(row, side=replace(row.side, name=in_unit(row.side.name, unit)))
            for row in (() if self.found is None else self.found.rows)
        )

    def choose(self, who: Identity) -> None:
        """Choose an answer."""
        self._chosen = who
        self._show()

    def use(self) -> None:
        """Make the chosen answer the plan."""
        side = self.chosen
        if side is not None:
            made = self._document.plan.with_setup(side.plan)
            self._steps.adopt_plan(made, f"Use {side.name}", f"'{side.name}' is the plan now.")

    def keep(self) -> None:
        """Keep the chosen answer among the options."""
        side = self.chosen
        if side is not None:
            self._steps.keep_as(side.name, side.plan.setup)

    def _on_plan(self) -> None:
        found, now = self.found, self._document.plan
        old = found is not None and bool(found.rows)
        if found is not None and old:  # the table tells totals, so prices count
            old = depends(found.of, costs=True) != depends(now, costs=True)
            self.stale.setText(f"These answers are of '{found.of.name}' before it was changed.")
            if self._former:
                self.stale.setText("These answers are of the former question.")
            old = old or self._former
        self.stale.setVisible(old)
        self._show()

    def _show(self) -> None:
        found = self.found
        rows = self._rows()
        words = _EMPTY if found is None else found.words
        self.words.setText(in_unit(words, self._display.unit))
        self.table.setVisible(bool(rows))
        side = self.chosen
        for part in (self.told, self.use_button, self.keep_button):
            part.setVisible(bool(rows))
        for part in (self.use_button, self.keep_button):
            part.setEnabled(side is not None)
        told = "" if found is None else found.told.get(self._chosen, "")
        self.told.setText(in_unit(told, self._display.unit))
        if found is not None and rows:
            self.table.show_options(rows, found.of.costs, Wishes(), self._chosen)
            self._draw(found, rows)

    def _draw(self, found: Found, rows: tuple[Option, ...]) -> None:
        asked = "total" if found.money else "kwh"
        made = trade_off(rows, "min_over_mean", asked, found.of.costs)
        self.chart.show_trade_off(made, self._chosen)
        self.note.setText(made.note)
        self.note.setVisible(bool(made.note))


class FindForm(FieldForm):
    """The question: an aim under wishes, or one level by three ways."""

    def __init__(
        self,
        document: Document,
        display: Display,
        lane: Lane,
        shelf: Shelf,
        board: FindBoard,
        comparer: Comparer,
    ) -> None:
        super().__init__(document, display)
        self._shelf, self._board, self._comparer = shelf, board, comparer
        self._linings: dict[str, Lining] = {}
        self.wished = Wishes()
        self._proposed: tuple[float, float] | None = None
        self._hung = 0
        asks = [("The best", True), ("Three ways", False)]
        _, self.kind = self.add_choice("Find", asks)
        aim_row, self.aim = self.add_choice("Wanted most", AIMS)
        self._turning = self.add_heading("May be turned")
        self.turns = self._turn_boxes()
        self._counts = [
            self.add_number(label, COUNT.within(1.0, _MOST_LAMPS), value)
            for label, value in (("Lamps, from", 1.0), ("to", 4.0))
        ]
        self.own_count = self.add_wide(NoteLabel())
        level_row, self.level = self.add_number(
            "Mean light", PPFD.within(1.0, 5000.0), 200.0, "The PPFD wanted on the canopy."
        )
        self._on_walls = self.add_heading("Linings to try")
        self.where_row, self.where = self.add_choice("They go onto", [])
        self.linings = self.add_wide(TickList("Linings to try"))
        # Low enough for the button below all fields to be in sight.
        self.linings.setFixedHeight(6 * self.fontMetrics().lineSpacing())
        self._keeping = self.add_heading("It must keep to")
        at = [("Just enough", 0.0), ("The middle", 0.5)]
        rows = [self.add_choice("DLI of", HELD), self.add_choice("Aim at", at)]
        (_, self.held), (_, self.at) = rows
        self._wish_rows, self.wishes = add_wishes(self, lambda: self.wished, self._take)
        self._prices = [self.add_dial("tariff"), self.add_dial("span")]
        self.line = AskLine(self, "Find", "Search by estimates; it can be stopped at any time")
        self.asker = Asker(lane, self.line, self)
        self.end()
        self._of_best = [aim_row, *(row for row, _ in rows), *self._wish_rows]
        self._of_ways = [level_row]
        self.line.ask.clicked.connect(self.ask)
        self.asker.answered.connect(self._on_answer)
        for combo in (self.kind, self.aim):
            combo.activated.connect(lambda _line: self._show_rows())
        for box in self.turns.values():
            box.toggled.connect(lambda _on: self._show_rows())
        document.changed.connect(lambda _old, _new: self._on_plan())
        shelf.changed.connect(self._on_plan)
        comparer.compared.connect(self._on_plan)
        self._on_plan()
        self._show_rows()

    def _turn_boxes(self) -> dict[Turn, QCheckBox]:
        """Switches in two columns."""
        holder = QWidget()
        grid = QGridLayout(holder)
        grid.setContentsMargins(0, 0, 0, 0)
        boxes = {}
        for number, (text, turn) in enumerate(_TURNS):
            box = boxes[turn] = QCheckBox(text)
            box.setChecked(turn in {Turn.HEIGHT, Turn.OUTPUT})
            grid.addWidget(box, number // 2, number % 2)
        self.add_wide(holder)
        self._turn_holder = holder
        return boxes

    @property
    def best(self) -> bool:
        """Whether the best arrangement is asked for, and not three ways to one level."""
        return bool(self.kind.currentData())

    def _take(self, wishes: Wishes) -> None:
        self.wished = wishes
        self._show_rows()

    def _on_plan(self) -> None:
        plan = self.plan
        self.refresh(plan)
        self._linings = self._shelf.catalogue.linings_for(plan)
        offer_things(self.linings, self._linings)
        self.where.offer(lining_places(plan))
        if len(plan.lamps) != self._hung:
            self._hung = len(plan.lamps)
            self._counts[1][1].reset(min(max(4.0, self._hung), _MOST_LAMPS))
            self.own_count.setText(f"The {self._hung} lamps of the plan are tried as well.")
            self._show_rows()
        known = self._comparer.of_plan
        entered = 0.0 if known is None else known.entered
        band = wished_band(plan, entered)
        if band is not None and not np.allclose(band, self._proposed or (0.0, 0.0), _SAME):
            # The target of the plan is what is wished, until somebody writes something else.
            self._proposed = band
            ends = {"dli_low": round(band[0], 2), "dli_high": round(band[1], 2)}
            self.wished = Wishes(**{**vars(self.wished), **ends})
            for key, value in ends.items():
                self.wishes[key].show_number(value, NO_WISH)
            level = band_at(plan, judged(plan), entered)
            if level is not None:
                self.level.reset(float(round((level[0] + level[1]) / 2)))

    def _show_rows(self) -> None:
        best = self.best
        turned = {turn for turn, box in self.turns.items() if box.isChecked()}
        for row in self._of_best:
            row.set_visible(best)
        for row in self._of_ways:
            row.set_visible(not best)
        for widget in (self._turning, self._turn_holder, self._keeping):
            widget.setVisible(best)
        for row, _ in self._counts:
            row.set_visible(best and Turn.LAMPS in turned)
        self.own_count.setVisible(best and self._own_counts(turned))
        lined = Turn.LINING in turned or not best
        for widget in (self._on_walls, self.linings):
            widget.setVisible(lined)
        self.where_row.set_visible(best and lined)
        money = best and (self.aim.currentData() == Aim.CHEAP or self.wished.total is not None)
        for price in self._prices:
            price.row.set_visible(money)
        self.line.ask.setText("Find" if best else "Find three ways")
        self.line.ask.setAccessibleName(self.line.ask.text())

    def _own_counts(self, turned: Set[Turn]) -> bool:
        """Whether the plan has more lamps than can be typed, and they may stay where they are."""
        return Turn.LAMPS in turned and Turn.PLACES not in turned and self._hung > MOST_LAMPS

    # -- asking -------------------------------------------------------------------------

    def question(self) -> Question:
        """What is asked, as it stands in the fields."""
        (_, low), (_, high) = self._counts
        first, last = sorted((round(low.value), round(high.value)))
        turned = frozenset(turn for turn, box in self.turns.items() if box.isChecked())
        own = (self._hung,) if self._own_counts(turned) else ()
        return Question(
            aim=Aim(self.aim.currentData()),
            turn=turned,
            wishes=self.wished,
            held=Held(self.held.currentData()),
            counts=(*range(first, last + 1), *own),
            linings=self._ticked(),
            where=self.where.currentData(),
            at=float(self.at.currentData()),
            grain=self.unit.snap,
        )

    def _ticked(self) -> tuple[Lining, ...]:
        return tuple(self._linings[key] for key in self.linings.ticked())

    def ask(self) -> None:
        """Put the question about the plan as it stands."""
        self.take_typed()
        plan, unit, cells = self.plan, self.unit, self._display.state.cells
        options = EstimateOptions(cells=(cells, cells))
        question, best, linings = self.question(), self.best, self._ticked()
        level, catalogue = self.level.value, self._shelf.catalogue

        def job(progress: Progress, cancelled: Cancelled) -> Found:
            if best:
                return answers_found(
                    find(plan, question, options, unit=unit, progress=progress,
                         cancelled=cancelled),
                    money=question.aim is Aim.CHEAP,
                )  # fmt: skip
            # Without a tick those are tried that the Sketch's wish tries.
            tried = linings or offered(plan, catalogue)
            cache = shared_cache()
            own = evaluate(plan, options, cache=cache, cancelled=cancelled)
            return ways_found(
                own,
                ways(plan, level, tried, options, unit=unit, cache=cache, progress=progress,
                     cancelled=cancelled),
            )  # fmt: skip

        self._board.expect()
        self.asker.ask(object(), job)

    def _on_answer(self, _asked: object, found: Found) -> None:
        self._board.show_found(found)
        self.line.say(found.tally)


def answers_found(answers: Answers, *, money: bool = False) -> Found:
    """The answers of a search for the board."""
    told = {one.option.side.identity: one.words for one in answers.all}
    told[PLAN_SIDE] = "The plan as it was."
    rows = (answers.base, *(one.option for one in answers.all))
    count = len(answers.all)
    tally = f"{count} answer{'s' * (count != 1)} that none of {answers.tried} tried beats."
    if not answers.met:
        tally = f"None of {answers.tried} tried keeps to all of it; the nearest is shown."
    best = answers.best.option.side.identity
    return Found(answers.base.side.plan, answers.words, tally, rows, told, best, money=money)


def ways_found(own: Estimate, found: tuple[Way, ...]) -> Found:
    """Three ways to one level beside the plan as it is; those that cannot be are said."""
    plan = own.plan
    base = Side(plan.name, Origin.PLAN, plan, estimate=own)
    rows = [option(base, base, Bill(), plan.costs)]
    told = {PLAN_SIDE: "The plan as it was."}
    ranks: dict[Identity, tuple[bool, float]] = {}
    for way in found:
        side = way.side
        if side is not None:
            rows.append(option(side, base, bill(side.plan, plan, plan.costs), plan.costs))
            told[side.identity] = way.words
            ranks[side.identity] = not way.reached, rows[-1].values["watts"] or 0.0
    words = "\n".join(way.words for way in found)
    tally = f"{sum(way.reached for way in found)} of 3 ways reach it."
    best = min(ranks, key=ranks.__getitem__, default=PLAN_SIDE)
    return Found(plan, words, tally, tuple(rows), told, best)
