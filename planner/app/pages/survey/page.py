"""The survey page: a printed board, readings, and what they say beside the estimate."""

from __future__ import annotations

import math
from dataclasses import replace
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import (
    QDragEnterEvent,
    QDropEvent,
    QGuiApplication,
    QKeySequence,
    QResizeEvent,
    QShortcut,
    QShowEvent,
)
from PySide6.QtWidgets import (
    QScrollArea,
    QStackedWidget,
    QWidget,
)

from planner.app import theme
from planner.app.fields.panel import Workplace
from planner.app.jobs import Lane
from planner.app.pages.survey import desk as tasks
from planner.app.pages.survey import pictures
from planner.app.pages.survey.board_panel import BoardPanel, ProtocolPanel, print_board
from planner.app.pages.survey.calibrate_panel import CalibratePanel, Fitting
from planner.app.pages.survey.compare_panel import ComparePanel, OverlayPanel, suspect_words
from planner.app.pages.survey.desk import Header, Invitation, SurveyDesk
from planner.app.pages.survey.diagnosis import Diagnosing, Doubtful
from planner.app.pages.survey.drawing import HolePicture, Stage
from planner.app.pages.survey.entry_panel import EntryPanel, ReadingTable
from planner.app.pages.survey.pictures import Answers, Underlay, UnderlayMaker
from planner.app.pages.survey.record_panel import RecordPanel
from planner.app.questions import Questions
from planner.app.settings import Settings
from planner.files.store import TABLE_SUFFIXES
from planner.metrics.figures import percent, ppfd
from planner.plan.survey import Board, Survey
from planner.plan.survey_edits import lay_board, outline_read
from planner.survey.layout import place_number
from planner.survey.statistics import Residuals, SurveySummary, dead_band, summarise, without
from planner.units import COVERAGE, PPFD_UNIT

if TYPE_CHECKING:
    from planner.app.pages.survey.table_dialog import Importing


def sentence(survey: Survey, summary: SurveySummary | None, found: Residuals | None) -> str:
    """How far the survey is, its mean with its uncertainty, and how it stands to the estimate."""
    total = len(survey.points)
    if summary is None:
        return (
            f"'{survey.name}' has {total} holes and no readings yet: print the board, put the "
            "sensor into each hole, and type what it shows."
        )
    first = ""
    if found is not None and found.odd:
        first, summary = f"{found.outlier_words} ", summarise(without(survey, found.odd)) or summary
    doubt = 100 * COVERAGE * summary.mean_uncertainty / summary.mean if summary.mean > 0 else 0.0
    read = len(summary.holes)
    holes = f"all {total} holes" if read == total else f"{read} of {total} holes"
    said = (
        f"'{survey.name}': mean {ppfd(summary.mean)} {PPFD_UNIT} ± {doubt:.0f} % over {holes}, "
        f"from {ppfd(summary.minimum)} to {ppfd(summary.maximum)} "
        f"(min / mean {percent(summary.min_over_mean)})."
    )
    if found is not None:
        said += f" {found.words()[len(found.odd) > 0]}"
    return " ".join((f"{first}{said}", *suspect_words(summary)))


COLUMN_WIDTH = 340
COLUMN_CHARACTERS = 46
REACH_PX = 24.0


class SurveyPage(QWidget):
    """Drawing on the left, the column of the task at hand on the right.

    Wiring only: parts talk to the desk, the page shows what follows. ``told(str)`` holds a
    line for the status bar.
    """

    told = Signal(str)

    def __init__(
        self,
        workplace: Workplace,
        questions: Questions,
        settings: Settings,
        *,
        maker: UnderlayMaker | None = None,
    ) -> None:
        super().__init__()
        self.workplace, self.questions, self.settings = workplace, questions, settings
        self._stale = True
        self.desk = SurveyDesk(workplace, self)
        self.answers = Answers(maker, self)
        self.header = Header(self.desk)
        self.stage = Stage()
        self.invitation = Invitation()
        self.board = BoardPanel(self.desk)
        self.record = RecordPanel(self.desk)
        self.protocol = ProtocolPanel(self.desk)
        self.entry = EntryPanel(self.desk)
        self.table = ReadingTable(self.desk)
        self.overlay = OverlayPanel()
        self.calibrate = CalibratePanel(self.desk)
        self._tables = Lane("survey-table", parent=self)
        self.fitting = Fitting(self.desk, self.calibrate, self)
        self.diagnosing = Diagnosing(self.desk, self.overlay.diagnosis, self)
        self._arrange()
        self._connect()

    # -- building -----------------------------------------------------------------------

    def _arrange(self) -> None:
        reading = QWidget()
        theme.column(self.protocol, self.entry, (self.table, 1), on=reading, gap=theme.RHYTHM)
        self.columns = QStackedWidget()
        for part in (self.board, self.record):
            self.columns.addWidget(_scrolled(part))
        self.columns.addWidget(reading)
        comparing = QWidget()
        self._comparing = theme.column(on=comparing)
        for other in (self.overlay, comparing, self.calibrate):
            self.columns.addWidget(_scrolled(other))
        lower = theme.row((self.stage, 1), self.columns, gap=theme.WIDE)
        survey = QWidget()
        theme.column(self.header, (lower, 1), on=survey, gap=theme.RHYTHM)
        self.sides = QStackedWidget()
        self.sides.addWidget(self.invitation)
        self.sides.addWidget(survey)
        theme.column(self.sides, on=self, edges=theme.RHYTHM)
        self._fit_column()
        self.setAcceptDrops(True)

    def _connect(self) -> None:
        self.desk.changed.connect(self.refresh)
        self.desk.hole_changed.connect(self._on_hole)
        self.answers.ready.connect(self.refresh)
        self.answers.failed.connect(self.header.alert.say)
        self.answers.busy_changed.connect(lambda _busy: self._show_pictures())
        self.workplace.display.changed.connect(lambda _state: self.refresh())
        self.header.task_changed.connect(self._on_task)
        self.overlay.view_changed.connect(lambda _view: self.refresh())
        self.overlay.try_button.clicked.connect(self._try)
        self.board.print_wanted.connect(self._print)
        self.stage.first.hole_chosen.connect(self._on_hole_chosen)
        self.stage.first.place_pressed.connect(self._on_place)
        self.fitting.changed.connect(self.refresh)
        self.fitting.told.connect(self.told)
        for wanted in (self.header.paste_wanted, self.invitation.paste.clicked):
            wanted.connect(self.paste)
        for wanted in (self.header.file_wanted, self.invitation.open_file.clicked):
            wanted.connect(lambda: self.importing.choose_file())  # noqa: PLW0108 - made later
        self.invitation.lay_out.clicked.connect(self._lay_out)
        paste = QShortcut(QKeySequence(QKeySequence.StandardKey.Paste), self)
        paste.setContext(Qt.ShortcutContext.WidgetWithChildrenShortcut)
        paste.activated.connect(self.paste)

    @cached_property
    def compare(self) -> ComparePanel:
        """Surveys side by side; made when they are first compared."""
        made = ComparePanel(self.desk)
        self._comparing.addWidget(made)
        made.show()  # a layout shows what comes late only in the next turn
        return made

    @cached_property
    def importing(self) -> Importing:
        """The way of a table into the plan; made with the first table."""
        from planner.app.pages.survey.table_dialog import Importing  # noqa: PLC0415 - when asked

        made = Importing(self.desk, self.questions, self.settings, self._tables, self)
        made.told.connect(self.told)
        made.refused.connect(self._refuse)
        made.taken.connect(lambda: self.show_task(tasks.OVERLAY))
        return made

    # -- tasks --------------------------------------------------------------------------

    @property
    def task(self) -> int:
        """Which task of ``header.TASKS`` is at hand."""
        return self.header.tasks.currentIndex()

    def show_task(self, task: int) -> None:
        """Turn to a task."""
        self.header.tasks.setCurrentIndex(task)

    def paste(self) -> None:
        """Read the clipboard as a table of readings."""
        self.importing.read_text(QGuiApplication.clipboard().text())

    def fit(self) -> None:
        """Show the whole space."""
        self.stage.fit()

    def shutdown(self) -> None:
        """Stop all work beside the window's thread."""
        self.answers.shutdown()
        self._tables.shutdown()
        self.fitting.shutdown()
        self.diagnosing.shutdown()

    def _try(self) -> None:
        if self.desk.survey is not None:
            self.diagnosing.ask(Doubtful(self.desk.plan, (self.desk.survey,)))

    def _lay_out(self) -> None:
        if self.desk.lay_out():
            self.show_task(tasks.BOARD)
            self.board.rows.box.setFocus()

    def _on_task(self, task: int) -> None:
        self.columns.setCurrentIndex(task)
        self.header.alert.say("")
        self.refresh()
        if task == tasks.READINGS:
            self.entry.line.setFocus()

    def _refuse(self, sentence_: str) -> None:
        self.header.alert.say(sentence_)
        # An empty sentence takes the last one back; there is nothing to tell then.
        if sentence_ and self.desk.survey is None:
            self.questions.tell_failure("These readings cannot be used", sentence_)

    def _print(self, paper: str) -> None:
        survey = self.desk.survey
        if survey is None:
            return
        black = self.board.black.isChecked()
        if survey.board_unsaid:
            # A printed board is paper, never the canopy.
            made_of = Board.BLACK if black else Board.PAPER
            self.desk.edit(
                "Survey: printed board",
                lambda: lay_board(self.desk.plan, self.desk.index, made_of),
            )
            survey = self.desk.survey or survey
        folder = self.settings.folder
        unit = self.workplace.display.unit
        underlay = self.answers.last_underlay(survey)
        same = underlay is not None and underlay.of_board(survey)
        expected = underlay.expected.tolist() if same and underlay is not None else ()
        path = print_board(
            self.desk.plan, survey, paper, unit, self.questions, folder,
            black=black, expected=expected,
        )  # fmt: skip
        if path is not None:
            self.told.emit(f"Wrote {path.name}; print it at 100 %, without fitting")

    # -- showing ------------------------------------------------------------------------

    def refresh(self) -> None:
        """Show the surveys as they are now; put off while nobody looks."""
        if not self.isVisible():
            self._stale = True
            return
        self._stale = False
        survey = self.desk.survey
        self.sides.setCurrentIndex(0 if survey is None else 1)
        if survey is None:
            return
        self.header.refresh()
        summary = self.answers.summary(survey)
        found = None
        case = self.diagnosing.case
        if case is not None and survey not in case.surveys:
            self.diagnosing.clear()  # what was tried was tried on other readings
        if self.task == tasks.OVERLAY:
            underlay = self._underlay(survey)
            found = None if underlay is None else underlay.residuals(survey)
            self.overlay.show_residuals(found, summary)
            self.overlay.scatter.mark(self.desk.hole)
        self.header.sentence.setText(sentence(survey, summary, found))
        self._show_panel()
        self.table.show_summary(summary)
        self._show_pictures()

    def _show_panel(self) -> None:
        if self.task == tasks.BOARD:
            self.board.refresh(self.board.plan)
        elif self.task == tasks.RECORD:
            self.record.refresh(self.record.plan)
        elif self.task == tasks.COMPARE:
            self.compare.refresh()
        elif self.task == tasks.CALIBRATE:
            self.calibrate.refresh()

    def _underlay(self, survey: Survey) -> Underlay | None:
        """The estimate under a survey; the last one of it while a new one is made."""
        cells = self.workplace.display.state.cells
        found = self.answers.underlay(self.desk.plan, survey, cells)
        if found is not None:
            return found
        older = self.answers.last_underlay(survey)
        same_board = older is not None and older.of_board(survey)
        return older if same_board else None

    def _show_pictures(self) -> None:
        survey = self.desk.survey
        if survey is None or not self.isVisible():
            return
        first, second = self._pictures(survey)
        self.stage.show_pictures(first, second, self.workplace.display.unit)

    def _pictures(self, survey: Survey) -> tuple[HolePicture, HolePicture | None]:
        plan, hole = self.desk.plan, self.desk.hole
        summary = self.answers.summary(survey)
        display = self.workplace.display.state
        if self.task == tasks.BOARD:
            return pictures.board_picture(plan, survey, hole), None
        if self.task == tasks.OVERLAY:
            underlay = self._underlay(survey)
            if underlay is not None:
                shown = pictures.overlay_pictures(
                    survey, summary, underlay, self.overlay.view, hole, display
                )
                return pictures.refining(shown, self.answers.busy)
        if self.task == tasks.COMPARE and self.compare.pair and self.desk.other is not None:
            pair = self.compare.pair
            return pictures.comparison_picture(plan, survey, self.desk.other, pair), None
        if self.task == tasks.CALIBRATE:
            fit = self.fitting.fit_of(survey)
            if fit is not None:
                return pictures.fit_pictures(plan, fit, dead_band(survey.meter))
        alone = pictures.reading_picture(plan, survey, summary, hole, display)
        if self.task == tasks.OVERLAY and self.answers.busy:
            alone = replace(alone, caption="The estimate below the readings is being computed")
        return alone, None

    def _on_hole(self) -> None:
        self.overlay.scatter.mark(self.desk.hole)
        self._show_pictures()

    def _on_hole_chosen(self, hole: int) -> None:
        self.desk.go_to(hole)
        if self.task == tasks.READINGS and not self.stage.first.keys_used:
            self.entry.line.setFocus()

    def _on_place(self, x: float, y: float) -> None:
        survey = self.desk.survey
        if self.task != tasks.BOARD or survey is None:
            return
        place = place_number(survey, (x, y), outline_read(self.desk.plan, survey))
        if place is None:
            self.desk.refused.emit(
                "These holes came with a table; change the grid to lay out anew."
            )
            return
        at = pictures.place_at(survey, place, outline_read(self.desk.plan, survey))
        if math.dist(at, (x, y)) * self.stage.first.viewport.scale <= REACH_PX:
            self.desk.toggle_place(place)

    # -- Qt -----------------------------------------------------------------------------

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        if _dropped_table(event) is None:
            event.ignore()  # a plan or a lamp file is the window's
        else:
            event.acceptProposedAction()

    def dropEvent(self, event: QDropEvent) -> None:
        path = _dropped_table(event)
        if path is None:
            event.ignore()
            return
        event.acceptProposedAction()
        self.importing.read_file(path)

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        if self._stale:
            self.refresh()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._fit_column()

    def _fit_column(self) -> None:
        wanted = max(COLUMN_WIDTH, round(COLUMN_CHARACTERS * self.fontMetrics().averageCharWidth()))
        wide = max(wanted, min(460, self.width() // 4))
        self.columns.setFixedWidth(wide)


def _scrolled(part: QWidget) -> QScrollArea:
    area = theme.scrolled(part)
    part.setContentsMargins(0, 0, theme.RHYTHM, 0)
    return area


def _dropped_table(event: QDropEvent) -> Path | None:
    """The one table that is being dropped, if it is one by its ending."""
    urls = event.mimeData().urls()
    if len(urls) != 1 or not urls[0].isLocalFile():
        return None
    path = Path(urls[0].toLocalFile())
    return path if path.suffix.lower() in TABLE_SUFFIXES else None
