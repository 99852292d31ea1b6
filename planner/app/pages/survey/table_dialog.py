"""The way of a table into the plan: shown with where its readings land, taken in one step."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path
from typing import Final

from PySide6.QtCore import QObject, Qt, Signal, Slot
from PySide6.QtGui import QPalette
from PySide6.QtWidgets import (
    QCheckBox,
    QDialog,
    QDialogButtonBox,
    QLineEdit,
    QSpinBox,
    QStackedWidget,
    QTabBar,
    QWidget,
)

from planner.app import theme
from planner.app.fields.form import AlertLabel, Form, NoteLabel, Row, StillCombo, button
from planner.app.fields.panel import Workplace
from planner.app.jobs import Lane
from planner.app.pages.survey import table_source
from planner.app.pages.survey.desk import SurveyDesk, canopies_read
from planner.app.pages.survey.drawing import HolePicture, SurveyDrawing
from planner.app.pages.survey.pictures import reading_picture
from planner.app.pages.survey.table_source import (
    Choice,
    Imported,
    PasteBox,
    TablePreview,
    TableSource,
    reading_job,
)
from planner.app.plain import PlainLabel
from planner.app.questions import Questions
from planner.app.settings import Settings
from planner.files.store import TABLE_SUFFIXES
from planner.language import word
from planner.metrics.spectra import lux_per_umol
from planner.plan.refusal import refusal
from planner.plan.survey import Survey
from planner.survey.statistics import summarise
from planner.survey.table_cells import SEPARATORS
from planner.survey.table_guess import TableKind
from planner.survey.table_headings import Role, TableLength, TableLight
from planner.units import PPFD_UNIT

_Colour = QPalette.ColorRole
_SIDE_WIDTH: Final = 360


class TableDialog(QDialog):
    """Signals: ``taken(choices, lux per µmol)`` when it is confirmed, ``text_wanted(str)`` for
    other text to be read.
    """  # noqa: D205

    taken = Signal(object, object)
    text_wanted = Signal(str)

    def __init__(
        self,
        source: TableSource,
        workplace: Workplace,
        shown: Survey | None,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self.workplace, self._shown = workplace, shown
        self.source = source
        self.choices: list[Choice] = []
        self.found: list[Imported | str] = []
        self._filling = False
        self.words = PlainLabel(name="What the table seems to mean", wrap=True)
        self.tabs = QTabBar()
        self.tabs.setAccessibleName("Sheets of the workbook")
        self.tabs.setExpanding(False)
        self.wanted = QCheckBox("Take this sheet")
        self.wanted.setAccessibleName(self.wanted.text())
        self.preview = TablePreview()
        self.paste_box = PasteBox()
        self.read_button = button("Read this text")
        self.drawing = SurveyDrawing("Where the readings lie")
        self.drawing.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.outcome = NoteLabel()
        self.alert = AlertLabel()
        self.form = Form()
        self.rows: dict[QWidget, Row] = {}
        self._make_fields()
        self.buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Cancel)
        self.take_button = self.buttons.addButton(
            "Take readings", QDialogButtonBox.ButtonRole.AcceptRole
        )
        self._arrange()
        self._connect()
        self.show_source(source)

    # -- building -----------------------------------------------------------------------

    def _combo(
        self, name: str, items: Sequence[tuple[str, object]], explanation: str = ""
    ) -> StillCombo:
        row, combo = self.form.add_choice(name, items, explanation)
        self.rows[combo] = row
        combo.activated.connect(self._on_edited)
        return combo

    def _make_fields(self) -> None:
        self.picture = self._combo(
            "The table is", (("A picture of the board", True), ("Rows of readings", False))
        )
        self.separator = self._combo(
            "Cells parted by",
            [(word(text).capitalize(), sign) for sign, text in SEPARATORS.items()],
        )
        self.heading = QSpinBox()
        self.heading.setRange(0, 200)
        self.form.add_row("Heading rows", self.heading)
        self.decimal = self._combo("Decimal mark", [("Point", "."), ("Comma", ",")])
        self.beside = self._combo(
            "Beside the values", [(text, k) for k, text in enumerate(table_source.BESIDE)]
        )
        self.top = QCheckBox("First row is the far side")
        self.top.setAccessibleName(self.top.text())
        self.rows[self.top] = self.form.add_row("", self.top)
        self.length = self._combo("Lengths in", [(unit.value, unit) for unit in TableLength])
        spectra = self.workplace.spectra.spectra
        self.light = self._combo(
            "Lamp's spectrum",
            [(spectrum.name, lux_per_umol(spectrum)) for spectrum in spectra],
            f"By it, lux, klx and foot-candles become {PPFD_UNIT}.",
        )
        self.light.setCurrentIndex(self._usual_spectrum())
        surveys = self.workplace.document.plan.surveys
        self.target = self._combo(
            "Goes into",
            [("A new survey", ""), *((f"'{s.name}', beside what it has", s.key) for s in surveys)],
        )
        self.name_line = QLineEdit()
        self.rows[self.name_line] = self.form.add_row("Its name", self.name_line)
        self.lies_on = self._combo("Lies on", canopies_read(self.workplace.document.plan))
        self.like = self._combo(
            "On the board of", [("Choose…", ""), *((s.name, s.key) for s in surveys)],
            "Hole numbers alone say nothing of where the holes are. Board and conditions are taken "
            "from that survey, but for what is on the walls.",
        )  # fmt: skip

    def _arrange(self) -> None:
        self.form.end()
        paste = QWidget()
        theme.column(
            (self.paste_box, 1), (self.read_button, 0, Qt.AlignmentFlag.AlignLeft), on=paste
        )
        self.stack = QStackedWidget()
        self.stack.addWidget(paste)
        self.stack.addWidget(self.preview)
        sheets = theme.row((self.tabs, 1), self.wanted)
        left = theme.column(self.words, sheets, (self.stack, 1), self.outcome, gap=theme.RHYTHM)
        self.side = QWidget()
        self.side.setFixedWidth(_SIDE_WIDTH)
        theme.column((self.drawing, 1), self.form, on=self.side, gap=theme.RHYTHM)
        upper = theme.row((left, 1), self.side, gap=theme.WIDE)
        theme.column(
            (upper, 1), self.alert, self.buttons, on=self, gap=theme.RHYTHM, edges=theme.WIDE
        )
        self.resize(1180, 720)

    def _connect(self) -> None:
        self.tabs.currentChanged.connect(lambda _k: self._show())
        self.wanted.clicked.connect(self._on_edited)
        self.heading.valueChanged.connect(self._on_edited)
        self.top.clicked.connect(self._on_edited)
        self.name_line.textEdited.connect(self._on_name)
        self.preview.heads.chosen.connect(self._on_column)
        self.paste_box.pasted.connect(self.text_wanted)
        self.read_button.clicked.connect(
            lambda: self.text_wanted.emit(self.paste_box.toPlainText())
        )
        self.buttons.accepted.connect(self._take)
        self.buttons.rejected.connect(self.reject)

    def _usual_spectrum(self) -> int:
        """The spectrum chosen for the plan's first lamp, else the first on offer."""
        spectra = self.workplace.spectra
        for lamp in self.workplace.document.plan.lamps:
            chosen = spectra.of_lamp(lamp.model.key)
            if chosen is not None:
                return [one.key for one in spectra.spectra].index(chosen.key)
        return 0

    # -- showing ------------------------------------------------------------------------

    def show_source(self, source: TableSource) -> None:
        """Show other tables, each as it is guessed; without any, a place to paste."""
        self.source = source
        self.setWindowTitle(f"Readings from {source.name}")
        self.choices = [self._with_target(one) for one in source.choices]
        self.found = [self._outcome(one) for one in self.choices]
        if len(self.choices) > 1:
            # A sheet of remarks in a workbook is no survey, unless somebody says so.
            self.choices = [
                replace(one, wanted=not isinstance(found, str))
                for one, found in zip(self.choices, self.found, strict=True)
            ]
        self._filling = True
        while self.tabs.count():
            self.tabs.removeTab(0)
        for one in self.choices:
            self.tabs.addTab(one.cells.sheet)
        self._filling = False
        several = len(self.choices) > 1
        self.tabs.setVisible(several)
        self.wanted.setVisible(several)
        self.side.setVisible(bool(self.choices))
        self.stack.setCurrentIndex(1 if self.choices else 0)
        if not self.choices:
            if source.text and source.text != self.paste_box.toPlainText():
                self.paste_box.setPlainText(source.text[:100_000])
            nothing = source.problem == table_source.HINT
            self.words.setText(source.problem if nothing else "")
            self.alert.say("" if nothing else source.problem)
            self.outcome.setText("")
            self.take_button.setEnabled(False)
            self.paste_box.setFocus()
            return
        self._show()

    def _with_target(self, choice: Choice) -> Choice:
        """Where a table would go: the empty board shown if it fits there, else a new survey.

        A table read into a survey that has readings would average two evenings; and hole
        numbers mean a board without asking only where all surveys have the same one.
        """
        shown, surveys = self._shown, self.workplace.document.plan.surveys
        if shown is not None and not shown.readings and len(self.source.choices) == 1:
            there = replace(choice, onto=shown.key)
            if isinstance(self._outcome(there), Imported) or isinstance(self._outcome(choice), str):
                return there
        if shown is not None and len({survey.points for survey in surveys}) == 1:
            return replace(choice, like=shown.key)
        return choice

    @property
    def number(self) -> int:
        """Which sheet is shown."""
        return max(self.tabs.currentIndex(), 0)

    def _show(self) -> None:
        """Fill everything from the choice shown, and say what comes of all of them."""
        if self._filling or not self.choices:
            return
        self._filling = True
        choice = self.choices[self.number]
        guess = choice.guess
        self.wanted.setChecked(choice.wanted)
        self.picture.setCurrentIndex(0 if guess.kind is TableKind.MATRIX else 1)
        parted: list[str] = list(SEPARATORS.values())
        known = choice.cells.separated in parted
        self.separator.setCurrentIndex(parted.index(choice.cells.separated) if known else -1)
        self.heading.setValue(guess.heading_rows)
        self.decimal.setCurrentIndex(self.decimal.findData(guess.decimal))
        self.beside.setCurrentIndex(table_source.beside_of(guess))
        self.top.setChecked(guess.first_row_is_top)
        self.length.setCurrentIndex(self.length.findData(guess.length))
        self.target.setCurrentIndex(self.target.findData(choice.onto))
        self.lies_on.setCurrentIndex(self.lies_on.findData(choice.on))
        self.like.setCurrentIndex(self.like.findData(choice.like))
        if self.name_line.text() != choice.name:
            self.name_line.setText(choice.name)
        self._show_rows(choice)
        self.words.setText(" ".join(guess.words()))
        self.preview.show_choice(choice)
        self._filling = False
        self._tell()

    def _show_rows(self, choice: Choice) -> None:
        guess = choice.guess
        picture = guess.kind is TableKind.MATRIX
        seen = {
            self.separator: self.source.text is not None,
            self.beside: picture,
            self.top: picture and not guess.axes,
            self.length: guess.kind is TableKind.PLACES or guess.axes,
            self.light: table_source.in_lux(guess),
            self.name_line: not choice.onto,
            self.lies_on: table_source.needs_canopy(choice) and self.lies_on.count() > 1,
            self.like: table_source.needs_board(choice) and self.like.count() > 1,
        }
        for field, visible in seen.items():
            self.rows[field].set_visible(visible)

    def _tell(self) -> None:
        """Draw what comes of the sheet shown, and say what comes of all of them."""
        choice, found = self.choices[self.number], self.found[self.number]
        plan, state = self.workplace.document.plan, self.workplace.display.state
        faults = [
            (one, text)
            for one, text in zip(self.choices, self.found, strict=True)
            if one.wanted and isinstance(text, str)
        ]
        if isinstance(found, Imported):
            survey, new = found.survey, found.readings
            alone = survey.model_copy(update={"readings": new})
            shown = reading_picture(plan, alone, summarise(alone), 0, state)
            caption = f"{len({r.hole for r in new})} of {len(survey.points)} holes read"
            self.drawing.show_picture(replace(shown, next_hole=None, caption=caption))
            told = (found.sentence, *found.remarks[:4])
            self.outcome.setText(" ".join(told))
            self.alert.say("")
        else:
            self.drawing.show_picture(HolePicture(plan=plan, caption="No readings to draw yet"))
            self.outcome.setText("" if choice.wanted else "This sheet is not taken.")
            self.alert.say(found)
        other = next((pair for pair in faults if pair[0] is not choice), None)
        if other is not None and not self.alert.text():
            self.alert.say(f"Sheet '{other[0].cells.sheet}': {other[1]}")
        count = sum(one.wanted for one in self.choices)
        self.take_button.setEnabled(count > 0 and not faults)
        self.take_button.setText(f"Take {count} sheets" if count > 1 else "Take readings")
        for k, one in enumerate(self.choices):
            role = _Colour.WindowText if one.wanted else _Colour.PlaceholderText
            self.tabs.setTabTextColor(k, self.palette().color(role))

    # -- correcting ---------------------------------------------------------------------

    def _on_column(self, column: int, meaning: tuple[Role, TableLight]) -> None:
        choice = self.choices[self.number]
        guess = table_source.with_column(choice.guess, column, *meaning)
        self._replace(replace(choice, guess=guess))

    def _on_name(self, text: str) -> None:
        name = text[:120].strip() or table_source.PASTED
        self.choices[self.number] = replace(self.choices[self.number], name=name)

    def _on_edited(self) -> None:
        if not self._filling and self.choices:
            self._replace(self._corrected(self.choices[self.number]))

    def _replace(self, choice: Choice) -> None:
        self.choices[self.number] = choice
        self.found[self.number] = self._outcome(choice)
        self._show()

    def _outcome(self, choice: Choice) -> Imported | str:
        """What comes of a sheet, or the sentence that says why nothing does."""
        try:
            return table_source.imported(
                choice, self.workplace.document.plan, self.light.currentData()
            )
        except ValueError as error:
            return refusal(error, self.workplace.display.unit)

    def _corrected(self, choice: Choice) -> Choice:
        """The choice as the fields now stand."""
        sign = self.separator.currentData()
        parted = SEPARATORS.get(sign or "", "")
        if self.source.text is not None and sign and parted != choice.cells.separated:
            other = table_source.source_of_text(self.source.text, self.source.name, sign).choices
            return replace(choice, cells=other[0].cells, guess=other[0].guess) if other else choice
        choice = replace(
            choice,
            wanted=self.wanted.isChecked() or len(self.choices) == 1,
            onto=self.target.currentData(),
            like=self.like.currentData(),
            on=self.lies_on.currentData(),
        )
        guess, picture = choice.guess, bool(self.picture.currentData())
        if picture is not (guess.kind is TableKind.MATRIX):
            return replace(choice, guess=table_source.as_picture(guess, picture))
        guess = replace(
            guess,
            heading_rows=min(self.heading.value(), max(len(choice.cells.rows) - 1, 0)),
            decimal=self.decimal.currentData(),
            # Qt hands members of enumerations back as plain text.
            length=TableLength(self.length.currentData()),
            first_row_is_top=self.top.isChecked(),
        )
        if picture and self.beside.currentData() != table_source.beside_of(guess):
            guess = table_source.with_beside(guess, self.beside.currentData())
        return replace(choice, guess=guess)

    def _take(self) -> None:
        self.taken.emit(tuple(self.choices), self.light.currentData())
        self.accept()


_PATTERNS: Final = " ".join(f"*{end} *{end.upper()}" for end in sorted(TABLE_SUFFIXES))
TABLE_FILTER: Final = f"Tables ({_PATTERNS});;All files (*)"


class Importing(QObject):
    """Signals: ``told(str)`` for the status bar, ``refused(str)``, ``taken`` when it is done."""

    told = Signal(str)
    refused = Signal(str)
    taken = Signal()

    def __init__(
        self,
        desk: SurveyDesk,
        questions: Questions,
        settings: Settings,
        lane: Lane,
        page: QWidget,
    ) -> None:
        super().__init__(page)
        self._desk, self._questions, self._settings, self._page = desk, questions, settings, page
        self.dialog: TableDialog | None = None
        self._lane = lane
        self._lane.done.connect(self._show)
        self._lane.failed.connect(lambda _path, sentence: self.refused.emit(sentence))

    def choose_file(self) -> None:
        """Ask which table, and read it."""
        path = self._questions.open_file("Import readings", self._settings.folder, TABLE_FILTER)
        if path is not None:
            self.read_file(path)

    def read_file(self, path: Path) -> None:
        """Read a CSV, TSV, text, XLSX or ODS file."""
        self._settings.keep(last_folder=path.absolute().parent)
        self._lane.ask(path, reading_job(path, ""), what="The table")

    def read_text(self, text: str) -> None:
        """Read pasted text."""
        self._lane.ask(None, reading_job(None, text), what="The table")

    @Slot(object, object)
    def _show(self, _path: Path | None, source: TableSource) -> None:
        self.refused.emit("")
        if self.dialog is not None:
            self.dialog.show_source(source)
            return
        dialog = TableDialog(source, self._desk.workplace, self._desk.survey, self._page)
        dialog.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        dialog.taken.connect(self._take)
        dialog.text_wanted.connect(self.read_text)
        dialog.finished.connect(self._forget)
        self.dialog = dialog
        dialog.open()
        (dialog.take_button if source.choices else dialog.paste_box).setFocus()

    def _forget(self) -> None:
        self.dialog = None

    @Slot(object, object)
    def _take(self, choices: tuple[Choice, ...], lux: float) -> None:
        wanted = [choice for choice in choices if choice.wanted]
        first = wanted[0]
        label = f"Import survey {first.name}"
        if len(wanted) > 1:
            label = f"Import {len(wanted)} sheets"
        elif first.onto:
            label = "Import readings"
        before = {survey.key for survey in self._desk.surveys}
        count = sum(len(survey.readings) for survey in self._desk.surveys)
        if not self._desk.edit(
            label, lambda: table_source.with_tables(self._desk.plan, choices, lux)
        ):
            return
        now = self._desk.surveys
        new = [survey.key for survey in now if survey.key not in before]
        self._desk.choose(new[-1] if new else first.onto)
        self.told.emit(f"Took {sum(len(s.readings) for s in now) - count} readings")
        self.taken.emit()
