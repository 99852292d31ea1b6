"""The way of a table into the plan: read aside, shown with what it means, taken as one step."""

from __future__ import annotations

import re
from dataclasses import replace
from pathlib import Path
from typing import Final

from PySide6.QtCore import QObject, Qt, Signal, Slot
from PySide6.QtGui import QDropEvent
from PySide6.QtWidgets import (
    QCheckBox,
    QDialog,
    QDialogButtonBox,
    QHBoxLayout,
    QLineEdit,
    QSpinBox,
    QTableWidget,
    QTableWidgetItem,
    QVBoxLayout,
    QWidget,
)

from planner.app import theme
from planner.app.fields.form import AlertLabel, Form, NoteLabel, Row, StillCombo
from planner.app.fields.panel import Workplace
from planner.app.jobs import Lane
from planner.app.pages.survey import table_source
from planner.app.pages.survey.desk import SurveyDesk
from planner.app.pages.survey.table_source import Imported, TableSource, reading_job
from planner.app.plain import PlainLabel
from planner.app.questions import Questions
from planner.app.settings import Settings
from planner.files.store import TABLE_SUFFIXES
from planner.metrics.spectra import lux_per_umol
from planner.plan.plan import Plan
from planner.plan.refusal import refusal
from planner.plan.survey import Survey
from planner.plan.survey_edits import add_readings
from planner.survey.table_cells import TableError
from planner.survey.table_guess import TableGuess, TableKind
from planner.survey.table_headings import Role, TableLength, TableLight
from planner.survey.table_reading import read_table

KINDS: Final = (
    (TableKind.MATRIX, "A picture of the board"),
    (TableKind.PLACES, "Rows of x, y and readings"),
    (TableKind.NUMBERED, "Rows of hole number and readings"),
    (TableKind.IN_ORDER, "Readings in the order of the holes"),
)
_ROLE_WORDS: Final = {
    Role.X: "x", Role.Y: "y", Role.HOLE: "hole", Role.VALUE: "reading", Role.PASSED: "–",
}  # fmt: skip
_ROWS_SHOWN: Final = 40
_COLUMNS_SHOWN: Final = 30


class TableDialog(QDialog):
    """Preview of a table; ``taken(Imported)`` when it is confirmed."""

    taken = Signal(object)

    def __init__(
        self,
        source: TableSource,
        guess: TableGuess,
        workplace: Workplace,
        shown: Survey | None,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self.setWindowTitle(f"Readings from {source.name}")
        self.source, self.guess, self.workplace = source, guess, workplace
        self.result_: Imported | None = None
        self._filling = False
        self.words = PlainLabel()
        self.words.setWordWrap(True)
        self.words.setAccessibleName("What the table seems to mean")
        self.preview = QTableWidget()
        self.preview.setAccessibleName("Preview of the table")
        self.preview.setEditTriggers(QTableWidget.EditTrigger.NoEditTriggers)
        self.preview.setTabKeyNavigation(False)
        self.preview.verticalHeader().setDefaultSectionSize(self.fontMetrics().height() + 8)
        self.outcome = NoteLabel()
        self.alert = AlertLabel()
        self.form = Form()
        self.rows: dict[str, Row] = {}
        self._make_fields()
        self._make_target(shown)
        self.buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Cancel)
        self.take_button = self.buttons.addButton(
            "Take readings", QDialogButtonBox.ButtonRole.AcceptRole
        )
        self._arrange()
        self.buttons.accepted.connect(self._take)
        self.buttons.rejected.connect(self.reject)
        self._show()

    # -- building -----------------------------------------------------------------------

    def _combo(
        self, name: str, items: list[tuple[str, object]], explanation: str = ""
    ) -> StillCombo:
        combo = StillCombo()
        for text, value in items:
            combo.addItem(text, value)
        self.rows[name] = self.form.add_row(name, combo, explanation)
        combo.activated.connect(self._on_edited)
        return combo

    def _line(self, name: str, explanation: str = "") -> QLineEdit:
        line = QLineEdit()
        self.rows[name] = self.form.add_row(name, line, explanation)
        line.editingFinished.connect(self._on_edited)
        return line

    def _make_fields(self) -> None:
        self.sheet = self._combo("Sheet", [(one.sheet, one.sheet) for one in self.source.sheets])
        self.kind = self._combo("The table is", [(text, kind) for kind, text in KINDS])
        self.separator = self._combo(
            "Cells parted by", [(text, sign) for sign, text in table_source.SEPARATORS]
        )
        self.heading = QSpinBox()
        self.heading.setRange(0, 200)
        self.rows["Heading rows"] = self.form.add_row("Heading rows", self.heading)
        self.heading.valueChanged.connect(self._on_edited)
        self.decimal = self._combo("Decimal mark", [("Point", "."), ("Comma", ",")])
        self.beside = self._combo(
            "Beside the values", [(text, k) for k, text in enumerate(table_source.BESIDE)]
        )
        self.top = QCheckBox("First row is the far side")
        self.top.setAccessibleName(self.top.text())
        self.rows["top"] = self.form.add_row("", self.top)
        self.top.clicked.connect(self._on_edited)
        self.x_column = self._line("x in column")
        self.y_column = self._line("y in column")
        self.hole_column = self._line("Hole in column")
        self.value_columns = self._line("Readings in", "One column or several: 3, or 3, 4.")
        self.length = self._combo("Lengths in", [(unit.value, unit) for unit in TableLength])
        lights: list[tuple[str, object]] = [("µmol m⁻² s⁻¹", None)]
        lights += [
            (f"Lux of {spectrum.name}", lux_per_umol(spectrum))
            for spectrum in self.workplace.spectra.spectra
        ]
        self.light = self._combo(
            "Values in", lights, "Lux become µmol m⁻² s⁻¹ by the lamp's spectrum."
        )
        self.light.widen_list()

    def _make_target(self, shown: Survey | None) -> None:
        items: list[tuple[str, object]] = [("A new survey", "")]
        items += [
            (f"'{survey.name}', beside what it has", survey.key)
            for survey in self.workplace.document.plan.surveys
        ]
        self.target = self._combo("Goes into", items)
        self.target.widen_list()
        # A table read into a survey that has readings would average two evenings.
        self._shown = shown
        if shown is not None and not shown.readings:
            self.target.setCurrentIndex(self.target.findData(shown.key))
        self.name_line = QLineEdit(self.source.name[:120])
        self.rows["Its name"] = self.form.add_row("Its name", self.name_line)

    def _arrange(self) -> None:
        self.form.end()
        self.form.setFixedWidth(330)
        left = QVBoxLayout()
        left.setSpacing(theme.RHYTHM)
        left.addWidget(self.words)
        left.addWidget(self.preview, 1)
        left.addWidget(self.outcome)
        upper = QHBoxLayout()
        upper.setSpacing(theme.WIDE)
        upper.addLayout(left, 1)
        upper.addWidget(self.form)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(theme.WIDE, theme.WIDE, theme.WIDE, theme.WIDE)
        layout.setSpacing(theme.RHYTHM)
        layout.addLayout(upper, 1)
        layout.addWidget(self.alert)
        layout.addWidget(self.buttons)
        self.resize(940, 620)

    # -- showing ------------------------------------------------------------------------

    def _show(self) -> None:
        """Fill everything from the guess, and read the table by it."""
        self._filling = True
        guess = self.guess
        self.kind.setCurrentIndex(self.kind.findData(guess.kind))
        self._show_separator()
        self.heading.setValue(guess.heading_rows)
        self.decimal.setCurrentIndex(self.decimal.findData(guess.decimal))
        self.beside.setCurrentIndex(table_source.beside_of(guess))
        self.top.setChecked(guess.first_row_is_top)
        for line, role in (
            (self.x_column, Role.X),
            (self.y_column, Role.Y),
            (self.hole_column, Role.HOLE),
            (self.value_columns, Role.VALUE),
        ):
            line.setText(", ".join(str(k + 1) for k, r in enumerate(guess.roles) if r is role))
        self.length.setCurrentIndex(self.length.findData(guess.length))
        if guess.light is TableLight.WATT:
            self.light.setCurrentIndex(-1)
        elif guess.light is TableLight.PPFD:
            self.light.setCurrentIndex(0)
        elif self.light.currentData() is None:
            self.light.setCurrentIndex(self._usual_spectrum())
        self._show_rows(guess)
        self.words.setText(" ".join(guess.words()))
        self._fill_preview()
        self._filling = False
        self._read()

    def _show_separator(self) -> None:
        words = {text.lower(): k for k, (_, text) in enumerate(table_source.SEPARATORS)}
        self.separator.setCurrentIndex(words.get(self.source.cells.separated, -1))

    def _show_rows(self, guess: TableGuess) -> None:
        picture, places = guess.kind is TableKind.MATRIX, guess.kind is TableKind.PLACES
        seen = {
            "Sheet": len(self.source.sheets) > 1,
            "Cells parted by": self.source.text is not None,
            "Beside the values": picture,
            "top": picture and not guess.axes,
            "x in column": places,
            "y in column": places,
            "Hole in column": guess.kind is TableKind.NUMBERED,
            "Readings in": not picture,
            "Lengths in": places or guess.axes,
        }
        for name, visible in seen.items():
            self.rows[name].set_visible(visible)

    def _usual_spectrum(self) -> int:
        """The spectrum chosen for the plan's first lamp, else the first on offer."""
        spectra = self.workplace.spectra
        for lamp in self.workplace.document.plan.lamps:
            chosen = spectra.of_lamp(lamp.model.key)
            if chosen is not None:
                return [one.key for one in spectra.spectra].index(chosen.key) + 1
        return 1

    def _fill_preview(self) -> None:
        cells, guess = self.source.cells, self.guess
        columns = min(cells.width, _COLUMNS_SHOWN)
        rows = min(len(cells.rows), _ROWS_SHOWN)
        self.preview.setRowCount(rows)
        self.preview.setColumnCount(columns)
        roles = [guess.roles[k] if k < len(guess.roles) else Role.PASSED for k in range(columns)]
        self.preview.setHorizontalHeaderLabels(
            [f"{k}: {_ROLE_WORDS[role]}" for k, role in enumerate(roles, start=1)]
        )
        self.preview.setVerticalHeaderLabels([str(cells.numbers[row]) for row in range(rows)])
        for row in range(rows):
            for column in range(columns):
                item = QTableWidgetItem(cells.at(row, column))
                font = item.font()
                font.setBold(row < guess.heading_rows)
                item.setFont(font)
                quiet = row < guess.heading_rows or roles[column] is Role.PASSED
                if quiet:
                    item.setForeground(self.palette().placeholderText())
                self.preview.setItem(row, column, item)
        self.preview.resizeColumnsToContents()

    # -- correcting ---------------------------------------------------------------------

    def _on_edited(self) -> None:
        if self._filling:
            return
        self.alert.say("")
        try:
            self.guess = self._corrected()
        except ValueError as error:
            self._refuse(error)
            return
        self._show()

    def _corrected(self) -> TableGuess:
        """The guess as the fields now stand."""
        sheet = self.sheet.currentData()
        if self.source.sheets and sheet != self.source.cells.sheet:
            self.source = self.source.on_sheet(sheet)
            return table_source.guessed(self.source.cells)
        separator = self.separator.currentData()
        words = dict(table_source.SEPARATORS).get(separator or "", "").lower()
        if self.source.text is not None and separator and words != self.source.cells.separated:
            self.source = self.source.parted_by(separator)
            return table_source.guessed(self.source.cells)
        guess, width = self.guess, self.source.cells.width
        # Qt hands members of enumerations back as plain text.
        kind = TableKind(self.kind.currentData())
        if kind is not guess.kind:
            return table_source.as_kind(guess, kind, width)
        light = self._unit_chosen(guess)
        guess = replace(
            guess,
            heading_rows=min(self.heading.value(), max(len(self.source.cells.rows) - 1, 0)),
            decimal=self.decimal.currentData(),
            length=TableLength(self.length.currentData()),
            light=light,
            first_row_is_top=self.top.isChecked(),
            doubts=(),
        )
        if kind is TableKind.MATRIX:
            if self.beside.currentData() != table_source.beside_of(guess):
                guess = table_source.with_beside(guess, self.beside.currentData(), width)
            return guess
        return table_source.with_roles(
            guess,
            width,
            _column(self.x_column.text()),
            _column(self.y_column.text()),
            _column(self.hole_column.text()),
            tuple(int(k) - 1 for k in re.findall(r"\d+", self.value_columns.text())),
        )

    def _unit_chosen(self, guess: TableGuess) -> TableLight:
        """The unit of the values: as guessed, or the other kind that was chosen."""
        if self.light.currentIndex() < 0:
            return guess.light
        if self.light.currentData() is None:
            return TableLight.PPFD
        return guess.light if guess.light.lux is not None else TableLight.LUX

    def _read(self) -> None:
        """Read the table as the guess says, and say what comes out."""
        self.result_ = None
        onto = self.target.currentData()
        plan = self.workplace.document.plan
        survey = next((one for one in plan.surveys if one.key == onto), None)
        self.rows["Its name"].set_visible(survey is None)
        lux = self.light.currentData()
        try:
            table = read_table(self.source.cells, self.guess, lux_per_umol=lux)
            self.result_ = table_source.imported(
                table, plan, self.name_line.text(), onto=survey, like=self._shown, lux_per_umol=lux
            )
        except ValueError as error:
            self._refuse(error)
            return
        self.alert.say("")
        self.take_button.setEnabled(True)
        self.outcome.setText(" ".join((_said(self.result_), *table.left_out[:3])))

    def _refuse(self, error: ValueError) -> None:
        self.take_button.setEnabled(False)
        self.outcome.setText("")
        text = refusal(error)
        self.alert.say(f"{text[:1].upper()}{text[1:]}" if isinstance(error, TableError) else text)

    def _take(self) -> None:
        self._read()
        if self.result_ is not None:
            self.taken.emit(self.result_)
            self.accept()


def _column(text: str) -> int:
    found = re.search(r"\d+", text)
    return int(found[0]) - 1 if found else -1


def _said(found: Imported) -> str:
    readings = found.survey.readings if found.survey is not None else found.readings
    values = [reading.value for reading in readings]
    count = len({reading.hole for reading in readings})
    return (
        f"{len(values)} readings at {count} holes, from {min(values):.0f} to {max(values):.0f} "
        "µmol m⁻² s⁻¹."
    )


_PATTERNS: Final = " ".join(f"*{end} *{end.upper()}" for end in sorted(TABLE_SUFFIXES))
TABLE_FILTER: Final = f"Tables ({_PATTERNS});;All files (*)"


class Importing(QObject):
    """Signals: ``told(str)`` for the status bar, ``refused(str)``, ``taken`` when it is done."""

    told = Signal(str)
    refused = Signal(str)
    taken = Signal()

    def __init__(
        self, desk: SurveyDesk, questions: Questions, settings: Settings, page: QWidget
    ) -> None:
        super().__init__(page)
        self._desk, self._questions, self._settings, self._page = desk, questions, settings, page
        self.dialog: TableDialog | None = None
        self._lane = Lane("survey-table", parent=self)
        self._lane.done.connect(self._show)
        self._lane.failed.connect(lambda _path, sentence: self.refused.emit(sentence))

    def choose_file(self) -> None:
        """Ask which table, and read it."""
        path = self._questions.open_file("Import readings", self._settings.folder, TABLE_FILTER)
        if path is not None:
            self.read_file(path)

    def read_file(self, path: Path) -> None:
        """Read a CSV, TSV, text or XLSX file."""
        self._settings.keep(last_folder=path.absolute().parent)
        self._lane.ask(path, reading_job(path, ""), what="The table")

    def read_text(self, text: str) -> None:
        """Read pasted text."""
        self._lane.ask(None, reading_job(None, text), what="The table")

    def shutdown(self) -> None:
        """Stop reading."""
        self._lane.shutdown()

    @Slot(object, object)
    def _show(self, _path: Path | None, found: tuple[TableSource, TableGuess]) -> None:
        if self.dialog is not None:
            self.dialog.reject()
        self.refused.emit("")
        workplace = self._desk.workplace
        dialog = TableDialog(*found, workplace, self._desk.survey, self._page)
        dialog.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        dialog.taken.connect(self._take)
        dialog.finished.connect(self._forget)
        self.dialog = dialog
        dialog.open()
        dialog.take_button.setFocus()

    def _forget(self) -> None:
        self.dialog = None

    @Slot(object)
    def _take(self, found: Imported) -> None:
        if found.survey is not None:
            done = self._desk.add(found.survey, f"Import survey {found.survey.name}")
        else:
            done = self._desk.edit(
                f"Import {found.count} readings", lambda: _onto(self._desk.plan, found)
            )
            if done:
                self._desk.choose(found.onto)
        if done:
            self.told.emit(f"Took {found.count} readings")
            self.taken.emit()


def dropped_table(event: QDropEvent) -> Path | None:
    """The one table that is being dropped, if it is one by its ending."""
    urls = event.mimeData().urls()
    if len(urls) != 1 or not urls[0].isLocalFile():
        return None
    path = Path(urls[0].toLocalFile())
    return path if path.suffix.lower() in TABLE_SUFFIXES else None


def _onto(plan: Plan, found: Imported) -> Plan:
    index = [survey.key for survey in plan.surveys].index(found.onto)
    return add_readings(plan, index, found.readings)
