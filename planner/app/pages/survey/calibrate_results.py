"""What a calibration found: values with standard errors, how they hang together, in words."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtGui import QPalette
from PySide6.QtWidgets import (
    QGridLayout,
    QHBoxLayout,
    QHeaderView,
    QLabel,
    QTableWidget,
    QTableWidgetItem,
    QVBoxLayout,
    QWidget,
)

from planner.app import theme
from planner.app.fields.form import AlertLabel, NoteLabel, button, fold_button
from planner.app.pages.survey.calibration import Answer
from planner.plan.plan import Plan

if TYPE_CHECKING:
    from planner.estimate.calibrate import LeftOut
    from planner.estimate.calibrate_result import Calibration, Fitted

STALE = "The plan has changed since this fit; calibrate again before it is used in the plan."

USED = "The plan now has these values; undo takes them back."


class CalibrationResults(QWidget):
    """Hidden until there is something to show."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.answer: Answer | None = None
        self.values = QGridLayout()
        self.values.setVerticalSpacing(2)
        self.correlation = _table("Correlation of the values")
        self.correlation_fold = fold_button("How they hang together")
        self.sentences = _words("What the fit says")
        self.left_out = _words("Each survey predicted from the others")
        self.use_button = button(
            "Use in the plan", "Lamps and linings of the plan get these values; one undo step."
        )
        self.keep_button = button(
            "Keep in the library", "Under a name with today's date, with their standard errors."
        )
        self.alert = AlertLabel()
        self.note = NoteLabel()
        self.note.hide()
        self._arrange()
        self.correlation_fold.toggled.connect(self.correlation.setVisible)
        self.body.hide()
        self.left_out.hide()

    def _arrange(self) -> None:
        self.body = QWidget()
        inner = QVBoxLayout(self.body)
        inner.setContentsMargins(0, 0, 0, 0)
        inner.setSpacing(theme.RHYTHM)
        title = QLabel("Found")
        font = title.font()
        font.setBold(True)
        title.setFont(font)
        inner.addWidget(title)
        inner.addLayout(self.values)
        buttons = QHBoxLayout()
        buttons.setSpacing(theme.RHYTHM)
        buttons.addWidget(self.use_button)
        buttons.addWidget(self.keep_button)
        inner.addLayout(buttons)
        inner.addWidget(self.alert)
        inner.addWidget(self.note)
        inner.addWidget(self.sentences)
        inner.addWidget(self.correlation_fold)
        inner.addWidget(self.correlation)
        self.correlation.hide()
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(theme.RHYTHM)
        layout.addWidget(self.body)
        layout.addWidget(self.left_out)

    def show_answer(self, answer: Answer) -> None:
        """Show a calibration."""
        self.answer = answer
        found = answer.calibration
        self._fill_values(found)
        self._fill_correlation(found)
        self.sentences.setText("\n\n".join(found.sentences))
        self.say("")
        self.alert.say("")
        self.keep_button.setEnabled(bool(found.lamps or found.linings))
        self.body.show()

    def show_left_out(self, rows: tuple[LeftOut, ...]) -> None:
        """Say how well each survey is predicted from the others."""
        self.left_out.setText("\n\n".join(row.sentence for row in rows))
        self.left_out.show()

    def say(self, sentence: str) -> None:
        """Say what became of the calibration; an empty text says nothing."""
        self.note.setText(sentence)
        self.note.setVisible(bool(sentence))

    def follow(self, plan: Plan) -> None:
        """A fit of another plan is no longer offered for use."""
        if self.answer is None:
            return
        fits = self.answer.fits(plan)
        self.use_button.setEnabled(fits)
        if not fits and not self.note.text():
            self.say(STALE)
        elif fits and self.note.text() in {STALE, USED}:
            self.say("")

    def _fill_values(self, found: Calibration) -> None:
        while (item := self.values.takeAt(0)) is not None:
            widget = item.widget()
            if widget is not None:
                widget.deleteLater()
        for row, one in enumerate(found.fitted):
            label, value = QLabel(f"{row + 1}  {one.label}"), QLabel(value_text(one))
            label.setWordWrap(True)
            label.setForegroundRole(QPalette.ColorRole.PlaceholderText)
            value.setFont(theme.tabular(value.font()))
            value.setAlignment(Qt.AlignmentFlag.AlignRight)
            value.setAccessibleName(f"{one.label}: {value.text()}")
            for part in (label, value):
                part.setToolTip(f"<p>{one.sentence}</p>")
            self.values.addWidget(label, 2 * row, 0)
            self.values.addWidget(value, 2 * row + 1, 0)

    def _fill_correlation(self, found: Calibration) -> None:
        table, count = self.correlation, len(found.fitted)
        table.setRowCount(count)
        table.setColumnCount(count)
        table.setHorizontalHeaderLabels([str(k + 1) for k in range(count)])
        for row in range(count):
            for column in range(count):
                item = QTableWidgetItem(f"{found.correlation[row, column]:+.2f}")
                first, second = found.fitted[row].label, found.fitted[column].label
                item.setToolTip(f"<p>{first} with {second}</p>")
                table.setItem(row, column, item)
        _fit_height(table)
        listed = "; ".join(f"{k}: {one.label}" for k, one in enumerate(found.fitted, start=1))
        table.setAccessibleDescription(listed)
        table.setToolTip(f"<p>{listed}</p>")
        self.correlation_fold.setVisible(count > 1)


def value_text(one: Fitted) -> str:
    """A value before and after the fit with its standard error, or that it is not told."""
    decimals = {"µmol/s": 1, "m": 4}.get(one.unit, 3)
    unit = f" {one.unit}" if one.unit else ""
    text = f"{one.start:.{decimals}f} → {one.value:.{decimals}f}"
    if not one.identifiable:
        return f"{text}{unit}, not identifiable"
    text = f"{text} ± {one.standard_error:.{decimals}f}{unit}"
    return f"{text} ▲ at its bound" if one.at_bound else text


def _words(name: str) -> QLabel:
    made = QLabel()
    made.setWordWrap(True)
    made.setAccessibleName(name)
    made.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
    return made


def _table(name: str) -> QTableWidget:
    table = QTableWidget()
    table.setAccessibleName(name)
    table.verticalHeader().hide()
    table.setEditTriggers(QTableWidget.EditTrigger.NoEditTriggers)
    table.setSelectionMode(QTableWidget.SelectionMode.NoSelection)
    table.setTabKeyNavigation(False)
    table.setShowGrid(False)
    table.setWordWrap(True)
    table.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
    header = table.horizontalHeader()
    header.setHighlightSections(False)
    header.setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
    return table


def _fit_height(table: QTableWidget) -> None:
    table.resizeRowsToContents()
    rows = sum(table.rowHeight(row) for row in range(table.rowCount()))
    table.setFixedHeight(rows + table.horizontalHeader().sizeHint().height() + 4)
