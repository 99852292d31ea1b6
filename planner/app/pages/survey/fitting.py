"""Runs of calibration: beside the window's thread, with progress and cancel."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Signal, Slot
from PySide6.QtWidgets import QWidget

from planner.app.jobs import Job, Lane
from planner.app.pages.survey.calibrate_panel import CalibratePanel
from planner.app.pages.survey.calibrate_results import USED
from planner.app.pages.survey.calibration import (
    Answer,
    Wish,
    fit_job,
    keep,
    leave_out_job,
    taken_into,
)
from planner.app.pages.survey.desk import SurveyDesk
from planner.catalogue.library import CatalogueError
from planner.plan.survey import Survey

if TYPE_CHECKING:
    from planner.estimate.calibrate_result import SurveyFit
    from planner.estimate.evaluate import Cache


class Fitting(QObject):
    """Wires the column of calibration; ``changed`` when there is another result."""

    changed = Signal()
    told = Signal(str)

    def __init__(self, desk: SurveyDesk, panel: CalibratePanel, page: QWidget) -> None:
        super().__init__(page)
        self._desk, self._panel = desk, panel
        self._kept: dict[str, Cache] = {}
        self._lane = Lane("survey-fit", parent=self)
        self._lane.done.connect(self._on_done)
        self._lane.failed.connect(lambda _wish, sentence: panel.show_failure(sentence))
        self._lane.progressed.connect(lambda _wish, fraction: panel.show_progress(fraction))
        self._lane.busy_changed.connect(panel.show_busy)
        panel.run_wanted.connect(self._run)
        panel.leave_out_wanted.connect(self._leave_out)
        panel.cancel_wanted.connect(self._lane.drop)
        panel.use_wanted.connect(self._use)
        panel.keep_wanted.connect(self._keep)

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

    @Slot(object)
    def _run(self, wish: Wish) -> None:
        self._ask(wish, fit_job(self._desk.plan, wish, self._kept))

    @Slot(object)
    def _leave_out(self, wish: Wish) -> None:
        self._ask(wish, leave_out_job(self._desk.plan, wish))

    def _ask(self, wish: Wish, job: Job) -> None:
        self._lane.ask(wish, job, what="The calibration")

    @Slot(object, object)
    def _on_done(self, _wish: Wish, found: object) -> None:
        if isinstance(found, Answer):
            self._panel.show_answer(found)
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
