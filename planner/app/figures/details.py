"""The foot of the column: cautions, all figures, and where the photons went, folded away."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QFrame, QScrollArea, QToolButton, QVBoxLayout, QWidget

from planner.app import theme
from planner.app.fields.form import NoteLabel, fold_button, in_tab_order
from planner.app.figures.figure import FigureLine
from planner.app.figures.finding_list import FindingList
from planner.app.figures.photon_bars import PhotonBars
from planner.app.figures.strip import LEADING
from planner.app.selection import Selection
from planner.estimate.result import Estimate
from planner.plan.checks import Severity
from planner.plan.plan import Plan
from planner.reports import content


class FigureDetails(QWidget):
    """Three folds of which one is open at a time; ``asked_for`` carries a place to select."""

    asked_for = Signal(object)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.findings = FindingList()
        self.findings.asked_for.connect(self.asked_for)
        self.lines: list[FigureLine] = []
        self._figures_box = QWidget()
        self._figures_layout = QVBoxLayout(self._figures_box)
        self._figures_layout.setContentsMargins(0, 0, theme.RHYTHM, 0)
        self._figures_layout.setSpacing(0)
        self._notes: list[NoteLabel] = []
        self.closure = NoteLabel()
        self.closure.setContentsMargins(theme.HALF, theme.HALF, 0, 0)
        self.bars = PhotonBars()
        bars_box = QWidget()
        bars_layout = QVBoxLayout(bars_box)
        bars_layout.setContentsMargins(0, 0, theme.RHYTHM, 0)
        bars_layout.addWidget(self.bars)
        bars_layout.addWidget(self.closure)
        bars_layout.addStretch(1)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(0)
        self._layout = layout
        self.folds: list[tuple[QToolButton, QScrollArea]] = []
        self._told = 0
        self.findings_fold = self._add_fold("Cautions", self.findings)
        self.figures_fold = self._add_fold("All figures", self._figures_box)
        self.photons_fold = self._add_fold("Where the photons went", bars_box)

    def _add_fold(self, title: str, widget: QWidget) -> QToolButton:
        fold = fold_button(title)
        area = QScrollArea()
        area.setFrameShape(QFrame.Shape.NoFrame)
        area.setWidgetResizable(True)
        area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        area.setWidget(widget)
        area.hide()
        fold.toggled.connect(lambda on: self._on_folded(fold, on=on))
        self._layout.addWidget(fold)
        self._layout.addWidget(area)
        self.folds.append((fold, area))
        return fold

    def _on_folded(self, fold: QToolButton, *, on: bool) -> None:
        for other, area in self.folds:
            if other is fold:
                area.setVisible(on)
            elif on:
                other.setChecked(False)
        self._size_areas()

    def _size_areas(self) -> None:
        """The open fold gets what it needs, but the fields keep most of the column."""
        parent = self.parentWidget()
        column = parent.height() if parent is not None else 600
        for _, area in self.folds:
            widget = area.widget()
            if widget is None:
                continue
            if widget.hasHeightForWidth():
                needed = widget.heightForWidth(max(area.viewport().width(), 260))
            else:
                needed = widget.sizeHint().height()
            most = 0.24 if widget is self.findings else 0.38
            area.setFixedHeight(max(min(needed + theme.HALF, int(most * column)), 48))

    def show_plan(self, plan: Plan) -> None:
        """Show the findings about a plan."""
        found = self.findings.show_plan(plan)
        grave = sum(finding.severity is not Severity.NOTE for finding in found)
        title = f"Cautions ({grave})" if grave else "Cautions and hints"
        self.findings_fold.setText(title)
        self.findings_fold.setAccessibleName(title)
        self.findings_fold.setVisible(bool(found))
        if not found:
            self.findings_fold.setChecked(False)
        # What is grave is not left folded away: it opens by itself whenever there is more of it.
        elif grave > self._told:
            self.findings_fold.setChecked(True)
        self._told = grave
        in_tab_order([self.findings_fold, *self.findings.marks, self.figures_fold])
        self._size_areas()

    def show_estimate(self, estimate: Estimate) -> None:
        """Show the figures of an estimate."""
        figures = content.headline_figures(estimate)[LEADING:]
        if len(self.lines) < len(figures):
            while len(self.lines) < len(figures):
                self._add_line()
            in_tab_order([self.figures_fold, *self.lines, self.photons_fold])
        for line, note, figure in zip(self.lines, self._notes, figures, strict=True):
            line.show_figure(figure)
            note.setText(figure.meaning)
        self.closure.setText(content.closure_sentence(estimate))
        count = len(self.bars.shares)
        self.bars.show_shares(estimate.shares)
        if len(estimate.shares) != count:
            self._size_areas()

    def _add_line(self) -> None:
        line, note = FigureLine(), NoteLabel()
        note.setContentsMargins(theme.HALF, 0, 0, theme.HALF)
        note.hide()
        line.toggled.connect(note.setVisible)
        self.lines.append(line)
        self._notes.append(note)
        self._figures_layout.addWidget(line)
        self._figures_layout.addWidget(note)

    def open_selection(self, selection: Selection) -> None:
        """Pass on a place a finding is about."""
        self.asked_for.emit(selection)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._size_areas()
