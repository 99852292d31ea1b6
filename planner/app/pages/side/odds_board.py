"""Odds in words: what is better than the baseline, how sure that is, and what would settle it."""

from __future__ import annotations

import textwrap
from typing import Final

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QAbstractItemView,
    QFrame,
    QTableWidget,
    QTableWidgetItem,
    QVBoxLayout,
    QWidget,
)

from planner.app import theme
from planner.app.display import Display
from planner.app.document import Document
from planner.app.fields.form import NoteLabel, button
from planner.app.fields.panel import FieldForm
from planner.app.pages.side.comparer import Comparer
from planner.app.pages.side.linked import Linked
from planner.app.plain import PlainLabel, tooltip
from planner.estimate.compare import Side
from planner.estimate.odds import (
    NOT_COUNTED,
    By,
    Saving,
    Telling,
    chance_words,
    deciding_words,
    saving_verdict,
    verdict,
)
from planner.metrics.figures import NO_VALUE
from planner.plan.quantity import Quantity

HEADINGS: Final = ("Option", "Mean", "Lowest", "Evenness", "Money at\nthe same light",
                   "Best in\nmean", "Best in\nlowest", "Best in\nevenness")  # fmt: skip
_BY: Final = (By.MEAN, By.LOWEST, By.EVENNESS)
_MARGIN: Final = Quantity("%", decimals=1, step=1.0, factor=0.01).within(0.0, 0.5)


class OddsBoard(QWidget):
    """A row an option against the baseline, and sentences about the chosen one."""

    def __init__(
        self, document: Document, comparer: Comparer, linked: Linked, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self._document, self._comparer, self._linked = document, comparer, linked
        self.heading = PlainLabel()
        font = self.heading.font()
        font.setBold(True)
        self.heading.setFont(font)
        self.words = PlainLabel()
        self.words.setWordWrap(True)
        self.words.setAccessibleName("What can be told")
        self.words.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        self.table = QTableWidget(0, len(HEADINGS))
        self.table.setAccessibleName("Odds against the baseline")
        self.table.setHorizontalHeaderLabels(list(HEADINGS))
        self.table.setFont(theme.tabular(self.table.font()))
        self.table.setFrameShape(QFrame.Shape.NoFrame)
        self.table.setShowGrid(False)
        self.table.setAlternatingRowColors(True)
        self.table.setTabKeyNavigation(False)
        self.table.setWordWrap(True)
        self.table.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.table.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.table.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.table.setHorizontalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.table.verticalHeader().hide()
        self.table.horizontalHeader().setHighlightSections(False)
        self.table.currentCellChanged.connect(self._on_row)
        self._showing = False
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.addWidget(self.heading)
        layout.addWidget(self.words)
        layout.addWidget(self.table, 1)
        layout.addStretch(0)
        for signal in (comparer.compared, comparer.told, comparer.priced):
            signal.connect(self.refresh)
        linked.changed.connect(lambda _new, _old: self.refresh())

    def refresh(self) -> None:
        """Show the newest odds; nothing is reckoned while nobody looks."""
        base = self._comparer.baseline
        if base is None or not self.isVisible():
            return
        self._showing = True
        sides = self._comparer.sides
        self.heading.setText(f"Against {base.name}")
        self.table.setRowCount(len(sides))
        for row, side in enumerate(sides):
            for column, text in enumerate(self._cells(side)):
                item = QTableWidgetItem(text)
                item.setToolTip(tooltip(text))
                self.table.setItem(row, column, item)
        self.table.resizeColumnsToContents()
        self.table.resizeRowsToContents()
        self.table.setMaximumHeight(self._tall())
        chosen = self._comparer.chosen
        if chosen is not None:
            self.table.selectRow(sides.index(chosen))
        self.words.setText(self.sentences())
        self._showing = False

    def _tall(self) -> int:
        """As tall as its rows."""
        rows = sum(self.table.rowHeight(row) for row in range(self.table.rowCount()))
        bar = self.table.horizontalScrollBar().sizeHint().height()
        return rows + self.table.horizontalHeader().sizeHint().height() + bar + 2

    def _cells(self, side: Side) -> tuple[str, ...]:
        here = side is self._comparer.baseline
        told = ["baseline"] + [""] * 3 if here else [self._told(side, by) for by in _BY]
        if not here:
            saving = self._comparer.saving(side)
            told.append(NO_VALUE if saving is None else _saved(saving))
        best = [self._comparer.best(side, by) for by in _BY]
        name = "\n".join(textwrap.wrap(side.name, 26)) or side.name
        return (name, *told, *(NO_VALUE if p is None else _chance(p) for p in best))

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
            return f"Choose an option below to see how it stands against {base.name}."
        tellings = {by: self._comparer.telling(side, by) for by in _BY}
        if tellings[By.MEAN] is None:
            if self._comparer.all_told:
                return f"{side.name} and {base.name} cannot be weighed: one of them is dark."
            return "How sure the difference is will be known in a moment."
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
            parts.append(f"Of all options it has the most light with {chance_words(best)}.")
        decides = self._comparer.deciding(side, By.MEAN)
        if decides is not None:
            parts.append(deciding_words(decides))
        return "\n".join(parts)

    def _on_row(self, row: int, *_rest: int) -> None:
        sides = self._comparer.sides
        if not self._showing and 0 <= row < len(sides):
            self._linked.update(chosen=sides[row].identity)

    def showEvent(self, event: object) -> None:
        super().showEvent(event)  # type: ignore[arg-type]
        self.refresh()


class OddsForm(FieldForm):
    """The margin inside which options are equal, what is not counted, and the way to measure."""

    survey_asked = Signal()

    def __init__(
        self, document: Document, display: Display, linked: Linked, parent: QWidget | None = None
    ) -> None:
        super().__init__(document, display, parent)
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
                "By 20,000 draws from the ranges of reflectances, photon flux and hanging heights; "
                "what two options share is drawn once for both. Intervals hold 95 %."
            )
        )
        self.add_wide(NoteLabel(NOT_COUNTED))
        self.survey = button("Measure it", "Go to the survey page")
        self.survey.clicked.connect(self.survey_asked)
        self.add_buttons(self.survey)
        self.end()


def _chance(chance: float) -> str:
    percent = 100 * chance
    if percent < 1:
        return "< 1 %"
    return "> 99 %" if percent > 99 else f"{percent:.0f} %"


def _short(found: Telling, margin: float) -> str:
    low, middle, high = (100 * (v - 1) for v in (found.low, found.ratio, found.high))
    span = f"{middle:+.0f} % ({low:+.0f} to {high:+.0f})".replace("-", "−")
    if found.equal_within(margin):
        return f"{span}\nequal for the purpose"
    ahead = found.chance if found.ratio > 1 else 1 - found.chance
    return f"{span}\n{_chance(ahead)}" if found.clear else f"{span}\nnot shown"


def _saved(saving: Saving) -> str:
    word = "saves" if saving.middle >= 0 else "costs"
    ends = sorted((saving.low, saving.high) if saving.middle >= 0 else (-saving.low, -saving.high))
    span = f"{word} {abs(saving.middle):.2f} ({ends[0]:.2f} to {ends[1]:.2f})"
    chance = saving.chance if saving.middle >= 0 else 1 - saving.chance
    return f"{span}\n{_chance(chance)}".replace("-", "−")
