"""The way of a table into the plan: read aside, shown in a preview, taken as one step."""

from __future__ import annotations

from pathlib import Path
from typing import Final

from PySide6.QtCore import QObject, Qt, Signal, Slot
from PySide6.QtGui import QDropEvent
from PySide6.QtWidgets import QWidget

from planner.app.jobs import Lane
from planner.app.pages.survey.desk import SurveyDesk
from planner.app.pages.survey.table_dialog import TableDialog
from planner.app.pages.survey.table_source import Imported, TableSource, reading_job
from planner.app.questions import Questions
from planner.app.settings import Settings
from planner.plan.plan import Plan
from planner.plan.survey_edits import add_readings
from planner.survey.table_guess import TableGuess

SUFFIXES: Final = frozenset({".csv", ".tsv", ".txt", ".xlsx"})
TABLE_FILTER: Final = "Tables (*.csv *.tsv *.txt *.xlsx *.CSV *.TSV *.TXT *.XLSX);;All files (*)"


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
    return path if path.suffix.lower() in SUFFIXES else None


def _onto(plan: Plan, found: Imported) -> Plan:
    index = [survey.key for survey in plan.surveys].index(found.onto)
    return add_readings(plan, index, found.readings)
