"""Comparing: what the cards show, the light along one line, and variants made by the dozen."""

from __future__ import annotations

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtWidgets import (
    QAbstractItemView,
    QCheckBox,
    QListWidget,
    QListWidgetItem,
    QWidget,
)

from planner.app.display import Display
from planner.app.document import Document
from planner.app.fields.choosers import Shelf, lining_title, offered_linings
from planner.app.fields.form import NoteLabel, button
from planner.app.fields.panel import FieldForm
from planner.app.pages.side.comparer import Comparer, Linked, Shows
from planner.app.pages.side.variant_steps import VariantSteps
from planner.app.plain import tooltip
from planner.app.plots.ranking import RankingPlot, RankLine
from planner.app.plots.section import Along, SectionCurves
from planner.estimate.odds import verdict
from planner.plan.lining import Lining
from planner.plan.plan import Plan
from planner.plan.quantity import COUNT, HANGING_HEIGHT
from planner.units import in_unit

_SHOWS = (
    ("Light", Shows.LIGHT),
    ("Difference from the baseline", Shows.DIFFERENCE),
    ("Ratio to the baseline", Shows.RATIO),
)


class CompareForm(FieldForm):
    """Choices of the maps, ranking, verdict and section."""

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
        self.baseline.activated.connect(lambda line: linked.update(baseline=line))
        self.own_scale = QCheckBox("Own scale for each map")
        self.own_scale.toggled.connect(lambda on: linked.update(own_scale=on))
        self.add_wide(self.own_scale)
        self.open_air = QCheckBox("Open air, without any walls, as well")
        self.open_air.toggled.connect(lambda on: linked.update(open_air=on))
        self.add_wide(self.open_air)
        self.verdict = NoteLabel()
        self.verdict.setForegroundRole(self.palette().ColorRole.WindowText)
        self.verdict.setAccessibleName("What can be told")
        self.verdict.setContentsMargins(0, 8, 0, 8)
        self.add_wide(self.verdict)
        self.ranking = RankingPlot()
        self.ranking.picked.connect(lambda index: linked.update(chosen=index))
        self.add_wide(self.ranking)
        self.add_heading("Along the line A to B")
        self.curves = SectionCurves(display)
        self.add_wide(self.curves)
        self.end()
        comparer.compared.connect(self.refresh)
        comparer.told.connect(self.refresh)
        linked.changed.connect(lambda _new, _old: self.refresh())
        linked.section_moved.connect(lambda _section: self._cut())

    def _cut(self) -> None:
        """Show the lights along the section line."""
        state = self._linked.state
        lights = tuple(
            Along(side.name, side.estimate, k == state.chosen, k == state.baseline)
            for k, side in enumerate(self._comparer.sides)
            if side.estimate is not None
        )
        self.curves.show_lights(lights, self._linked.section)

    def refresh(self, plan: Plan | None = None) -> None:
        """Show the newest comparison."""
        sides, state = self._comparer.sides, self._linked.state
        names = [side.name for side in sides]
        if [self.baseline.itemText(k) for k in range(self.baseline.count())] != names:
            self.baseline.clear()
            self.baseline.addItems(names)
            self.baseline.widen_list()
        self.baseline.setCurrentIndex(state.baseline)
        self.shows.setCurrentIndex([one for _, one in _SHOWS].index(state.shows))
        self.own_scale.setChecked(state.own_scale)
        self.open_air.setChecked(state.open_air)
        plan = self._document.plan
        band = None if plan.target is None else plan.target.ppfd_band(plan.photoperiod_hours)
        self.ranking.show_lines((*self._estimated(), *self._measured()), band, state.chosen)
        self._cut()
        self.verdict.setText(self._words())

    def _estimated(self) -> tuple[RankLine, ...]:
        lines = []
        for index, side in enumerate(self._comparer.sides):
            if side.estimate is not None:
                found = self._comparer.telling(side)
                alike = found is not None and not found.clear
                f = side.estimate.figures
                lines.append(RankLine(side.name, f.minimum, f.mean, f.maximum, index, alike))
        return tuple(lines)

    def _measured(self) -> tuple[RankLine, ...]:
        from planner.survey.statistics import summarise  # noqa: PLC0415 - only with surveys

        lines = []
        for survey in self._document.plan.surveys:
            found = summarise(survey)
            if found is not None:
                lines.append(RankLine(survey.name, found.minimum, found.mean, found.maximum))
        return tuple(lines)

    def _words(self) -> str:
        """What can be told of the chosen side, or of all where the baseline is chosen."""
        sides, base = self._comparer.sides, self._comparer.baseline
        if base is None or len(sides) < 2:
            return ""
        chosen = sides[min(self._linked.state.chosen, len(sides) - 1)]
        if chosen is not base:
            found = self._comparer.telling(chosen)
            if found is not None:
                return verdict(chosen.name, found, base.name)
            if self._comparer.all_told:
                return f"{chosen.name} and {base.name} cannot be weighed: one of them is dark."
            return "How sure the difference is will be known in a moment."
        tellings = [self._comparer.telling(side) for side in sides if side is not base]
        if any(found is None for found in tellings) and not self._comparer.all_told:
            return "How sure the differences are will be known in a moment."
        known = [found for found in tellings if found is not None]
        alike = sum(not found.clear for found in known)
        if not known:
            return ""
        if alike == 0:
            return f"All {len(known)} can be told from {base.name}." if len(known) > 1 else ""
        return f"{alike} of {len(known)} cannot be told from {base.name}; they are marked ≈."


_CHECKED = Qt.CheckState.Checked


class MakeForm(FieldForm):
    """``made`` when variants were added."""

    made = Signal()

    def __init__(
        self,
        document: Document,
        display: Display,
        shelf: Shelf,
        steps: VariantSteps,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(document, display, parent)
        self._document, self._shelf, self._steps = document, shelf, steps
        self._offered: tuple[Lining, ...] = ()
        self.add_heading("Try these on all walls")
        self.linings = QListWidget()
        self.linings.setAccessibleName("Linings to try on all walls")
        self.linings.setSelectionMode(QAbstractItemView.SelectionMode.NoSelection)
        self.linings.setFrameShape(QListWidget.Shape.NoFrame)
        self.linings.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.linings.setTextElideMode(Qt.TextElideMode.ElideRight)
        self.linings.setMinimumHeight(120)
        self.linings.setFixedHeight(152)
        self.linings.itemChanged.connect(lambda _item: self._count())
        self.add_wide(self.linings)
        self.try_button = button("Try them", "One variant for each lining that is ticked")
        self.try_button.clicked.connect(self.try_ticked)
        self.add_buttons(self.try_button)
        self.add_heading("Try hanging heights")
        _, self.low = self.add_number("From", HANGING_HEIGHT, 0.2)
        _, self.high = self.add_number("To", HANGING_HEIGHT, 0.5)
        _, self.count = self.add_number("How many", COUNT.within(2.0, 20.0), 4)
        self.heights_button = button("Try these heights", "One variant for each height")
        self.heights_button.clicked.connect(self.try_heights)
        self.add_buttons(self.heights_button)
        self.alert = self.add_alert()
        steps.refused.connect(self._refuse)
        document.changed.connect(lambda _old, _new: self._fill())
        shelf.changed.connect(self._fill)
        self.end()
        self._fill()

    def sizeHint(self) -> QSize:
        return QSize(280, super().sizeHint().height())

    def _fill(self) -> None:
        plan = self._document.plan
        offered = tuple(one for one in offered_linings(plan, self._shelf) if not one.is_opening)
        if offered == self._offered:
            return
        ticked = {lining.key for lining in self.ticked()}
        self._offered = offered
        self.linings.blockSignals(True)
        self.linings.clear()
        for lining in offered:
            item = QListWidgetItem(lining_title(lining))
            item.setFlags(Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsUserCheckable)
            on = lining.key in ticked
            item.setCheckState(_CHECKED if on else Qt.CheckState.Unchecked)
            item.setToolTip(tooltip(lining.name))
            self.linings.addItem(item)
        self.linings.blockSignals(False)
        self._count()

    def ticked(self) -> list[Lining]:
        """The linings that are ticked."""
        return [
            lining
            for row, lining in enumerate(self._offered)
            if self.linings.item(row).checkState() is _CHECKED
        ]

    def tick(self, *keys: str) -> None:
        """Tick linings by key."""
        for row, lining in enumerate(self._offered):
            if lining.key in keys:
                self.linings.item(row).setCheckState(_CHECKED)

    def _count(self) -> None:
        count = len(self.ticked())
        self.try_button.setEnabled(count > 0)
        text = "Try it" if count == 1 else f"Try these {count}" if count else "Tick linings to try"
        self.try_button.setText(text)
        self.try_button.setAccessibleName(text)

    def try_ticked(self) -> None:
        """Make a variant of each lining that is ticked."""
        self.alert.say("")
        if self._steps.try_linings(self.ticked()):
            for row in range(self.linings.count()):
                self.linings.item(row).setCheckState(Qt.CheckState.Unchecked)
            self.made.emit()

    def try_heights(self) -> None:
        """Make a variant of each height of the range."""
        self.take_typed()
        self.alert.say("")
        unit = self._display.unit
        count = round(self.count.value)
        if self._steps.try_heights(self.low.value, self.high.value, count, unit):
            self.made.emit()

    def _refuse(self, sentence: str) -> None:
        if self.isVisible():
            self.alert.say(in_unit(sentence, self._display.unit))
