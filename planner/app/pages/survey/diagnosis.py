"""What may have gone wrong: the usual mistakes are tried aside, and the winner is offered."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from PySide6.QtCore import QObject, Qt, Signal, Slot
from PySide6.QtWidgets import QGridLayout, QWidget

from planner.app import theme
from planner.app.fields.form import AlertLabel, ProgressLine, button, fold_button
from planner.app.jobs import Cancelled, Job, Lane, Progress
from planner.app.pages.survey.desk import SurveyDesk
from planner.app.plain import PlainLabel
from planner.plan.lamp import CosineProfile
from planner.plan.plan import Plan
from planner.plan.survey import Survey
from planner.plan.survey_edits import beam_in_plan, change_survey
from planner.units import LengthUnit, capital, in_unit

if TYPE_CHECKING:
    from planner.estimate.calibrate_parameters import Freed
    from planner.estimate.diagnose import Diagnosis, Suspect

_SHOWN: Final = 6
TRYING: Final = "Trying what may have gone wrong: mirrored, another height, a door, one hole …"
CHANGED: Final = "The survey has changed since; try again."
LAMP_CHANGED: Final = "The lamp has changed since; try again."


@dataclass(frozen=True)
class Doubtful:
    """Surveys that agree poorly with a plan; ``freed`` is None where nothing may change."""

    plan: Plan
    surveys: tuple[Survey, ...]
    freed: Freed | None = None


def diagnose_job(case: Doubtful) -> Job:
    """The work of trying the usual mistakes; raises ``CalibrationError`` with a sentence."""

    def work(progress: Progress, cancelled: Cancelled) -> Diagnosis:
        from planner.estimate.calibrate_parameters import Asked  # noqa: PLC0415 - heavy
        from planner.estimate.diagnose import diagnose  # noqa: PLC0415 - heavy

        return diagnose(
            Asked(case.plan, case.surveys, case.freed, progress=progress, cancelled=cancelled)
        )

    return work


class DiagnosisPanel(QWidget):
    """What was tried and what came of it; hidden until something is."""

    def __init__(self) -> None:
        super().__init__()
        self.words = PlainLabel(name="What may have gone wrong", wrap=True, bold=True)
        self.progress = ProgressLine("Progress of trying")
        self.cancel_button = button("Cancel", "Stop trying.")
        self.mend_button = button("", "Put it right; undo takes it back.")
        self.alert = AlertLabel()
        self.others = QWidget()
        self.others_fold = fold_button("What else was tried", self.others)
        self.table = QGridLayout(self.others)
        self.table.setContentsMargins(0, 0, 0, 0)
        self.table.setVerticalSpacing(2)
        self.table.setColumnStretch(0, 1)
        theme.column(
            self.words, self.progress, self.cancel_button, self.mend_button, self.alert,
            self.others_fold, self.others, on=self, gap=theme.RHYTHM,
        )  # fmt: skip
        self.clear()

    def clear(self) -> None:
        """Show nothing."""
        self.alert.say("")
        for part in (self.progress, self.cancel_button, self.mend_button, self.others_fold,
                     self.others):  # fmt: skip
            part.hide()
        self.hide()

    def show_busy(self) -> None:
        """Say that it is being tried."""
        self.clear()
        self.words.setText(TRYING)
        self.progress.setValue(0)
        self.progress.show()
        self.cancel_button.show()
        self.show()

    def show_failure(self, sentence: str) -> None:
        """Say why nothing could be tried."""
        self.clear()
        self.words.setText("")
        self.alert.say(sentence)
        self.show()

    def show_diagnosis(self, found: Diagnosis, unit: LengthUnit) -> None:
        """The winner with its button, the rest in a small table."""
        self.clear()
        self.words.setText(in_unit(found.sentence, unit))
        self.show()
        if not found.suspects:
            return
        first = found.suspects[0]
        self.mend_button.setVisible(first.by_button)
        self.mend_button.setText(first.remedy)
        self.mend_button.setAccessibleName(f"{first.remedy}: {in_unit(first.words, unit)}")
        self._fill(found.suspects[1 : 1 + _SHOWN], unit)

    def _fill(self, suspects: Sequence[Suspect], unit: LengthUnit) -> None:
        theme.emptied(self.table)
        self.others_fold.setVisible(bool(suspects))
        self.others_fold.setChecked(False)
        for row, suspect in enumerate(suspects):
            text = capital(in_unit(suspect.words, unit))
            words = PlainLabel(text, wrap=True, quiet=True)
            times = PlainLabel(f"{suspect.times:.1f} × better", quiet=True)
            times.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignTop)
            times.setFont(theme.tabular(times.font()))
            self.table.addWidget(words, row, 0)
            self.table.addWidget(times, row, 1)


class Diagnosing(QObject):
    """Tries in a lane and puts right; ``mended`` once the plan has the survey put right."""

    mended = Signal()

    def __init__(self, desk: SurveyDesk, panel: DiagnosisPanel, parent: QWidget) -> None:
        super().__init__(parent)
        self._desk, self._panel = desk, panel
        self.case: Doubtful | None = None
        self.found: Diagnosis | None = None
        self._lane = Lane("survey-diagnosis", parent=self)
        self._lane.done.connect(self._on_done)
        self._lane.failed.connect(lambda _case, sentence: panel.show_failure(sentence))
        self._lane.progressed.connect(lambda _case, fraction: panel.progress.reach(fraction))
        panel.cancel_button.clicked.connect(self.clear)
        panel.mend_button.clicked.connect(self._mend)

    @property
    def busy(self) -> bool:
        """Whether something is being tried."""
        return self._lane.busy

    def ask(self, case: Doubtful) -> None:
        """Try what may be wrong with these surveys."""
        self.case, self.found = case, None
        self._panel.show_busy()
        self._lane.ask(case, diagnose_job(case), what="What may have gone wrong")

    def clear(self) -> None:
        """Forget it; nothing is tried any more."""
        self.case = self.found = None
        self._lane.drop()
        self._panel.clear()

    def shutdown(self) -> None:
        """Stop trying."""
        self._lane.shutdown()

    @Slot(object, object)
    def _on_done(self, _case: Doubtful, found: Diagnosis) -> None:
        self.found = found
        self._panel.show_diagnosis(found, self._desk.workplace.display.unit)

    @Slot()
    def _mend(self) -> None:
        if self.found is None or self.case is None:
            return
        first = self.found.suspects[0]
        if first.profile is not None:
            self._use_beam(self.case.plan, first.lamp, first.profile)
            return
        right = first.mended
        was = next((s for s in self.case.surveys if s.key == first.survey), None)
        keys = [survey.key for survey in self._desk.surveys]
        if right is None or was is None or first.survey not in keys:
            return
        index = keys.index(first.survey)
        parts = {
            name: getattr(right, name)
            for name in Survey.model_fields
            if getattr(right, name) != getattr(was, name)
        }
        now = self._desk.surveys[index]
        if any(getattr(now, name) != getattr(was, name) for name in parts):
            self._panel.alert.say(CHANGED)
            return
        plan = self._desk.plan
        label = f"{first.remedy}: {right.name}"
        if self._desk.edit(label, lambda: change_survey(plan, index, **parts)):
            self.clear()
            self.mended.emit()

    def _use_beam(self, was: Plan, lamp: str, profile: CosineProfile) -> None:
        """Put the beam into the plan, unless its lamps of this kind are others by now."""
        plan = self._desk.plan
        then, now = (
            {one.model.profile for one in each.lamps if one.model.key == lamp}
            for each in (was, plan)
        )
        if then != now:
            self._panel.alert.say(LAMP_CHANGED)
        elif self._desk.edit("Set beam angle", lambda: beam_in_plan(plan, lamp, profile)):
            self.clear()
            self.mended.emit()
