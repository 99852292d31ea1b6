"""The column of calibration: what is asked of a fit, and its runs with progress and cancel."""

from __future__ import annotations

from collections.abc import Collection
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Qt, Signal, Slot
from PySide6.QtWidgets import (
    QCheckBox,
    QWidget,
)

from planner.app import theme
from planner.app.fields.form import AlertLabel, Form, NoteLabel, ProgressLine, TickList, button
from planner.app.jobs import Job, Lane
from planner.app.pages.survey.calibration import (
    USED,
    Answer,
    CalibrationResults,
    Wish,
    fit_job,
    keep,
    leave_out_job,
    linings_told,
    proposed,
    taken_into,
)
from planner.app.pages.survey.desk import SurveyDesk
from planner.app.pages.survey.diagnosis import Diagnosing, Doubtful
from planner.catalogue.library import CatalogueError
from planner.plan.survey import Survey

if TYPE_CHECKING:
    from planner.estimate.calibrate_result import SurveyFit
    from planner.estimate.evaluate import Cache


PROFILES = (
    ("As it is", "as it is"),
    ("How wide its beam is", "exponent"),
    ("A free polar curve", "curve"),
)
ABOUT = (
    "A survey in open air tells the lamp; one in a lined space tells the lining, with the lamp "
    "taken from the first. The gain of each meter is always unknown within its uncertainty."
)


class CalibratePanel(QWidget):
    """What is asked of a fit, and its results; what its buttons do is ``Fitting``'s."""

    def __init__(self, desk: SurveyDesk) -> None:
        super().__init__()
        self.desk = desk
        self._proposed_for: tuple[str, ...] | None = None
        self.form = Form()
        self.surveys = self._list("Surveys to fit together")
        self.linings = self._list("Reflectance of")
        self.shares = self._list("Mirror-like share of")
        self.flux = QCheckBox("Photon flux of the lamps")
        self.shift = QCheckBox("Place of the lamps, sideways")
        self.run_button = button("Calibrate", "Fit all chosen surveys together.")
        self.leave_button = button(
            "Leave one out", "Predict each survey from the others, and say how well it went."
        )
        self.progress = ProgressLine("Progress of the fit")
        self.cancel_button = button("Cancel", "Give the fit up; nothing changes.")
        self.alert = AlertLabel()
        self.results = CalibrationResults()
        self._arrange()
        self.surveys.counted.connect(self._on_surveys)
        self.show_busy(False)

    def _list(self, name: str) -> TickList:
        made = TickList(name)
        made.setSelectionMode(TickList.SelectionMode.SingleSelection)
        made.setFrameShape(TickList.Shape.StyledPanel)
        made.setTextElideMode(Qt.TextElideMode.ElideMiddle)
        return made

    def _arrange(self) -> None:
        form = self.form
        form.add_wide(NoteLabel(ABOUT))
        form.add_row("Surveys", self.surveys, wide=True)
        form.add_heading("What may change")
        for box in (self.flux, self.shift):
            box.setAccessibleName(box.text())
        form.add_wide(self.flux)
        _, self.profile = form.add_choice("Lamps' profile", PROFILES)
        form.add_wide(self.shift)
        self.linings_row = form.add_row("Reflectance of", self.linings, wide=True)
        self.shares_row = form.add_row("Mirror-like share of", self.shares, wide=True)
        form.add_buttons(self.run_button, self.leave_button)
        form.add_wide(self.progress)
        form.add_wide(self.cancel_button)
        form.add_wide(self.alert)
        form.end()
        theme.column(form, self.results, theme.REST, on=self, gap=theme.RHYTHM)

    # -- what is asked ------------------------------------------------------------------

    def chosen(self) -> tuple[Survey, ...]:
        """The surveys that are ticked, in the plan's order."""
        keys = set(self.surveys.ticked())
        return tuple(survey for survey in self.desk.surveys if survey.key in keys)

    def wish(self) -> Wish:
        """What the fields ask for."""
        return Wish(
            self.chosen(),
            flux=self.flux.isChecked(),
            profile=str(self.profile.currentData()),
            shift=self.shift.isChecked(),
            reflectance=tuple(self.linings.ticked()),
            specular=tuple(self.shares.ticked()),
        )

    def refresh(self) -> None:
        """Follow the plan's surveys; ticks stay where the surveys do."""
        read = [survey for survey in self.desk.surveys if survey.readings]
        before = set(self.surveys.ticked())
        known = self.surveys.keys
        ticked = [s.key for s in read if s.key in before or s.key not in known]
        rows = [(survey.key, _named(survey)) for survey in read]
        _fill(self.surveys, rows, ticked)
        self.results.set_unit(self.desk.workplace.display.unit)
        self.results.follow(self.desk.plan)
        self._propose()
        self._enable()

    def _on_surveys(self) -> None:
        self._propose()
        self._enable()

    def _propose(self) -> None:
        """Free what the chosen surveys can tell, when other ones were chosen."""
        surveys = self.chosen()
        state = tuple(f"{s.key}/{'' if s.lining is None else s.lining.key}" for s in surveys)
        if state == self._proposed_for:
            return
        self._proposed_for = state
        wish = proposed(self.desk.plan, surveys)
        self.flux.setChecked(wish.flux)
        self.shift.setChecked(wish.shift)
        self.profile.setCurrentIndex(self.profile.findData(wish.profile))
        told = linings_told(self.desk.plan, surveys)
        rows = [(lining.key, lining.name) for lining in told]
        _fill(self.linings, rows, wish.reflectance)
        _fill(self.shares, rows, wish.specular)
        self.linings_row.set_visible(bool(rows))
        self.shares_row.set_visible(bool(rows))

    # -- the run ------------------------------------------------------------------------

    def show_busy(self, busy: bool) -> None:
        """Show the progress of a run, or what can be started."""
        self.progress.setVisible(busy)
        self.cancel_button.setVisible(busy)
        if busy:
            self.progress.setValue(0)
            self.alert.say("")
        self._enable(busy)

    def show_failure(self, sentence: str) -> None:
        """Say why there is no result."""
        self.alert.say(sentence)

    def show_answer(self, answer: Answer) -> None:
        """Show what a fit found."""
        self.alert.say("")
        self.results.show_answer(answer)
        self.results.follow(self.desk.plan)

    def _enable(self, busy: bool = False) -> None:
        count = len(self.chosen())
        self.run_button.setEnabled(not busy and count > 0)
        self.leave_button.setEnabled(not busy and count > 1)


def _fill(listed: TickList, rows: list[tuple[str, str]], ticked: Collection[str]) -> None:
    listed.offer([(key, text, text) for key, text in rows], ticked)
    line = max(listed.sizeHintForRow(0), listed.fontMetrics().height())
    listed.setFixedHeight(line * min(max(len(rows), 1), 6) + 2 * listed.frameWidth() + 4)


def _named(survey: Survey) -> str:
    if survey.open_air:
        return f"{survey.name} (open air)"
    return survey.name if survey.lining is None else f"{survey.name} ({survey.lining.name})"


class Fitting(QObject):
    """Wires the column of calibration; ``changed`` when there is another result."""

    changed = Signal()
    told = Signal(str)

    def __init__(self, desk: SurveyDesk, panel: CalibratePanel, page: QWidget) -> None:
        super().__init__(page)
        self._desk, self._panel = desk, panel
        self._kept: dict[str, Cache] = {}
        self.diagnosing = Diagnosing(desk, panel.results.diagnosis, page)
        self.diagnosing.mended.connect(self._run)
        self._lane = Lane("survey-fit", parent=self)
        self._lane.done.connect(self._on_done)
        self._lane.failed.connect(lambda _wish, sentence: panel.show_failure(sentence))
        self._lane.progressed.connect(lambda _wish, fraction: panel.progress.reach(fraction))
        self._lane.busy_changed.connect(panel.show_busy)
        panel.run_button.clicked.connect(self._run)
        panel.leave_button.clicked.connect(self._leave_out)
        panel.cancel_button.clicked.connect(self._cancel)
        panel.results.use_button.clicked.connect(self._use)
        panel.results.keep_button.clicked.connect(self._keep)

    @property
    def busy(self) -> bool:
        """Whether a fit is under way."""
        return self._lane.busy

    @property
    def answer(self) -> Answer | None:
        """The calibration shown."""
        return self._panel.results.answer

    def fit_of(self, survey: Survey) -> SurveyFit | None:
        """How the calibration shown stands to a survey, if it was part of it."""
        if self.answer is None:
            return None
        fits = self.answer.calibration.surveys
        return next((fit for fit in fits if fit.key == survey.key), None)

    def shutdown(self) -> None:
        """Stop the fit."""
        self._lane.shutdown()
        self.diagnosing.shutdown()

    @Slot()
    def _run(self) -> None:
        wish = self._panel.wish()
        self._ask(wish, fit_job(self._desk.plan, wish, self._kept))

    @Slot()
    def _leave_out(self) -> None:
        wish = self._panel.wish()
        self._ask(wish, leave_out_job(self._desk.plan, wish))

    @Slot()
    def _cancel(self) -> None:
        self._lane.drop()

    def _ask(self, wish: Wish, job: Job) -> None:
        self.diagnosing.clear()
        self._lane.ask(wish, job, what="The calibration")

    @Slot(object, object)
    def _on_done(self, _wish: Wish, found: object) -> None:
        if isinstance(found, Answer):
            self._panel.show_answer(found)
            if found.calibration.warnings:
                self.diagnosing.ask(Doubtful(found.plan, found.wish.surveys, found.wish.freed()))
        elif isinstance(found, tuple):
            self._panel.results.show_left_out(found)
        self.changed.emit()

    @Slot()
    def _use(self) -> None:
        answer = self.answer
        if answer is None or not answer.fits(self._desk.plan):
            return
        plan = self._desk.plan
        if self._desk.edit("Use calibration in the plan", lambda: taken_into(plan, answer)):
            results = self._panel.results
            results.say(USED)
            results.use_button.setEnabled(False)
            self.told.emit("The plan has the calibrated lamps and linings")

    @Slot()
    def _keep(self) -> None:
        answer = self.answer
        if answer is None:
            return
        results = self._panel.results
        try:
            names = keep(answer, self._desk.workplace.shelf)
        except CatalogueError as error:
            results.alert.say(str(error))
            return
        results.alert.say("")
        results.say(f"Kept in the library: {', '.join(names)}.")
        self.told.emit("Kept in the library")
