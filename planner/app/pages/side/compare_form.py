"""Comparing: what the maps show, what is wished, the ranking, and the light along one line."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from PySide6.QtCore import Signal
from PySide6.QtWidgets import (
    QCheckBox,
    QWidget,
)

from planner.app.display import Display
from planner.app.document import Document
from planner.app.fields.form import NoteLabel
from planner.app.fields.panel import FieldForm
from planner.app.pages.side.comparer import Comparer
from planner.app.pages.side.linked import Linked, Shows
from planner.app.plots.ranking import RankingPlot, RankLine
from planner.app.plots.section import Along, SectionCurves
from planner.app.plots.trade_off import Spot, TradeOffPlot
from planner.app.quantity_box import QuantityBox
from planner.estimate.compare import Identity
from planner.estimate.options import COLUMN, Option
from planner.plan.costs import Costs
from planner.plan.plan import Plan
from planner.plan.quantity import DLI, SHARE, WATTS, Quantity

_SHOWS = (
    ("Light", Shows.LIGHT),
    ("Difference from the baseline", Shows.DIFFERENCE),
    ("Ratio to the baseline", Shows.RATIO),
)


_MONEY = Quantity("", decimals=2, step=1.0)
_WISHES = (
    ("dli_low", "DLI at least", DLI.within(0.0, 100.0), "Light of a day."),
    ("dli_high", "DLI at most", DLI.within(0.0, 100.0), "Light of a day."),
    ("min_over_mean", "Min / mean at least", SHARE, "How even the light is."),
    ("watts", "Power at most", WATTS.within(0.0, 1e5), "What the lamps draw."),
    ("total", "Total at most", _MONEY.within(0.0, 1e6), "To buy and the energy of the span."),
)


class CompareForm(FieldForm):
    """Choices of the maps, wishes, ranking and section."""

    def __init__(
        self,
        document: Document,
        display: Display,
        comparer: Comparer,
        linked: Linked,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(document, display, parent)
        self._document, self._comparer, self._linked = document, comparer, linked
        _, self.shows = self.add_choice("Maps show", list(_SHOWS))
        self.shows.activated.connect(
            lambda line: linked.update(shows=Shows(self.shows.itemData(line)))
        )
        _, self.baseline = self.add_choice(
            "Baseline", [], "What the others are measured against: the plan, a variant or open air."
        )
        self.baseline.activated.connect(
            lambda line: linked.update(baseline=comparer.sides[line].identity)
        )
        self.own_scale = QCheckBox("Own scale for each map")
        self.own_scale.toggled.connect(lambda on: linked.update(own_scale=on))
        self.add_wide(self.own_scale)
        self.open_air = QCheckBox("Open air, without any walls, as well")
        self.open_air.toggled.connect(lambda on: linked.update(open_air=on))
        self.add_wide(self.open_air)
        self.add_heading("Show only what keeps to")
        self.wishes = {
            key: self._wish(label, key, quantity, about) for key, label, quantity, about in _WISHES
        }
        self.kept = NoteLabel()
        self.kept.setAccessibleName("How many keep the wishes")
        self.add_wide(self.kept)
        self.add_heading("Ranking by mean PPFD")
        self.ranking = RankingPlot()
        self.ranking.picked.connect(lambda who: linked.update(chosen=who))
        self.add_wide(self.ranking)
        self.add_heading("Along the line A to B")
        self.curves = SectionCurves(display)
        self.add_wide(self.curves)
        self.end()
        comparer.compared.connect(self.refresh)
        comparer.told.connect(self.refresh)
        linked.changed.connect(lambda _new, _old: self.refresh())
        linked.section_moved.connect(lambda _section: self._cut())

    def _wish(self, label: str, key: str, quantity: Quantity, about: str) -> QuantityBox:
        _, box = self.add_number(label, quantity, 0.0, f"{about} 0: no wish.")

        def take(value: float) -> None:
            wishes = replace(self._linked.state.wishes, **{key: value or None})
            self._linked.update(wishes=wishes)

        box.committed.connect(take)
        box.stepped.connect(take)
        return box

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
        sides, state = self._comparer.sides, self._linked.state
        names = [side.name for side in sides]
        if [self.baseline.itemText(k) for k in range(self.baseline.count())] != names:
            self.baseline.clear()
            for side in sides:
                self.baseline.addItem(side.name)
            self.baseline.widen_list()
        who = [side.identity for side in sides]
        self.baseline.setCurrentIndex(who.index(state.baseline) if state.baseline in who else -1)
        self.shows.setCurrentIndex([one for _, one in _SHOWS].index(state.shows))
        self.own_scale.setChecked(state.own_scale)
        self.open_air.setChecked(state.open_air)
        plan = self._document.plan
        band = None if plan.target is None else plan.target.ppfd_band(plan.photoperiod_hours)
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

    def __init__(self, document: Document, display: Display, parent: QWidget | None = None) -> None:
        super().__init__(document, display, parent)
        _, self.light = self.add_choice("Light", [(COLUMN[key].name, key) for key in _LIGHTS])
        _, self.cost = self.add_choice("Cost", [(COLUMN[key].name, key) for key in _COSTS])
        for combo in (self.light, self.cost):
            combo.activated.connect(lambda _line: self.changed.emit())
        self.words = NoteLabel()
        self.words.setForegroundRole(self.palette().ColorRole.WindowText)
        self.words.setAccessibleName("What the chart says")
        self.add_wide(self.words)
        self.end()

    def fill(
        self, plot: TradeOffPlot, options: Sequence[Option], costs: Costs, chosen: Identity
    ) -> None:
        """Fill the chart; while no total is known, energy stands for it and that is said."""
        light, cost = self.light.currentData(), self.cost.currentData()
        note = ""
        if all(one.values[cost] is None for one in options):
            note = f"{COLUMN[cost].name} is not known of any option: see 'Worth it'. "
            cost = "kwh"
        spots, missing = [], 0
        for one in options:
            y, x = COLUMN[light].shown(one.values[light]), one.values[cost]
            if x is None or y is None:
                missing += 1
            else:
                spots.append(Spot(one.side.name, one.side.identity, y, x))
        y_words = COLUMN[light].heading(costs.currency)
        x_words = COLUMN[cost].heading(costs.currency)
        if cost == "total":
            x_words += f", {costs.span_months:.0f} months"
        plot.show_spots(tuple(spots), y_words, x_words, chosen)
        note += "The options on the line are beaten by none in both at once. "
        note += f"{missing} of {len(options)} cannot be shown: a price is missing." * (missing > 0)
        self.words.setText(note.strip())
