"""Calibrations as the page uses them: what to free, the work, its results, the way to the plan."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Final

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QGridLayout,
    QHeaderView,
    QProgressBar,
    QTableWidget,
    QTableWidgetItem,
    QVBoxLayout,
    QWidget,
)

from planner.app import theme
from planner.app.fields.choosers import Shelf
from planner.app.fields.form import AlertLabel, NoteLabel, button, fold_button
from planner.app.jobs import Cancelled, Job, Progress
from planner.app.pages.survey.diagnosis import DiagnosisPanel
from planner.app.plain import PlainLabel, explain
from planner.metrics.figures import banded, percent
from planner.plan.edits import changed
from planner.plan.lamp import CosineProfile, LampModel
from planner.plan.lining import Lining
from planner.plan.lit import depends
from planner.plan.plan import Plan
from planner.plan.survey import Survey
from planner.plan.survey_edits import used_in_plan
from planner.units import LengthUnit, in_unit

if TYPE_CHECKING:
    from planner.estimate.calibrate import LeftOut
    from planner.estimate.calibrate_parameters import Freed
    from planner.estimate.calibrate_result import Calibration, Fitted
    from planner.estimate.evaluate import Cache


@dataclass(frozen=True)
class Wish:
    """What is asked of a fit: the surveys, and what may change."""

    surveys: tuple[Survey, ...]
    flux: bool = True
    profile: str = "exponent"
    shift: bool = False
    reflectance: tuple[str, ...] = ()
    specular: tuple[str, ...] = ()

    def freed(self) -> Freed:
        """The wish in the words of the fit."""
        from planner.estimate.calibrate_parameters import Freed  # noqa: PLC0415 - heavy

        return Freed(
            flux=self.flux,
            exponent=self.profile == "exponent",
            curve=self.profile == "curve",
            shift=self.shift,
            reflectance=self.reflectance,
            specular=self.specular,
        )


@dataclass(frozen=True, eq=False)
class Answer:
    """A calibration, and the plan it was made for."""

    plan: Plan
    wish: Wish
    calibration: Calibration

    def fits(self, plan: Plan) -> bool:
        """Whether what was calibrated still holds: same light and readings, as much in doubt."""
        then, now_there = (depends(one, figures=False, doubts=True) for one in (self.plan, plan))
        if then != now_there:
            return False
        now = {survey.key: as_read(survey) for survey in plan.surveys}
        return all(now.get(survey.key) == as_read(survey) for survey in self.wish.surveys)


def as_read(survey: Survey) -> Survey:
    """A survey but for its words, and for its lining, which a calibration itself changes."""
    return changed(survey, name="Survey", note="", date=None, lining=None)


def linings_told(plan: Plan, surveys: Sequence[Survey]) -> tuple[Lining, ...]:
    """Linings a fit of these surveys could tell of, each once: theirs, then the plan's."""
    found: dict[str, Lining] = {}
    for survey in surveys:
        if survey.lining is not None and not survey.open_air:
            found.setdefault(survey.lining.key, survey.lining)
    if any(survey.lining is None for survey in surveys):
        keys = [band.lining for cover in plan.walls for band in cover.bands]
        for key in dict.fromkeys([*keys, plan.ceiling]):
            lining = plan.lining(key)
            if not lining.is_opening:
                found.setdefault(key, lining)
    return tuple(found.values())


def proposed(plan: Plan, surveys: Sequence[Survey]) -> Wish:
    """What these surveys can tell: lamps from open air, linings from lined spaces."""
    open_air = any(survey.open_air for survey in surveys)
    keys = [lining.key for lining in linings_told(plan, surveys)]
    named = [s.lining.key for s in surveys if s.lining is not None and not s.open_air]
    reflectance = tuple(dict.fromkeys(named)) if named or open_air else tuple(keys[:1])
    return Wish(
        tuple(surveys),
        flux=open_air,
        profile="exponent" if open_air else "as it is",
        reflectance=reflectance,
    )


def fit_job(plan: Plan, wish: Wish, kept: dict[str, Cache]) -> Job:
    """The work of fitting; raises ``CalibrationError`` with a sentence.

    ``kept`` holds pieces of former fits, for speed; for one thread only.
    """

    def work(progress: Progress, cancelled: Cancelled) -> Answer:
        from planner.estimate.calibrate import calibrate  # noqa: PLC0415 - heavy
        from planner.estimate.calibrate_parameters import Asked  # noqa: PLC0415 - heavy

        asked = Asked(plan, wish.surveys, wish.freed(), progress=progress, cancelled=cancelled)
        asked = replace(asked, cache=kept.setdefault("fit", asked.cache))
        return Answer(plan, wish, calibrate(asked))

    return work


def leave_out_job(plan: Plan, wish: Wish) -> Job:
    """The work of predicting each survey from the others."""

    def work(progress: Progress, cancelled: Cancelled) -> tuple[LeftOut, ...]:
        from planner.estimate.calibrate import leave_one_out  # noqa: PLC0415 - heavy
        from planner.estimate.calibrate_parameters import Asked  # noqa: PLC0415 - heavy

        # What can be freed differs from one set of surveys to the next, so it is left open.
        return leave_one_out(Asked(plan, wish.surveys, progress=progress, cancelled=cancelled))

    return work


def taken_into(plan: Plan, answer: Answer) -> Plan:
    """The plan with what was calibrated; the surveys' own copies of the linings follow."""
    from planner.estimate.calibrate_model import Quantity  # noqa: PLC0415 - heavy

    found = answer.calibration
    of_lining = {Quantity.REFLECTANCE, Quantity.SPECULAR}
    keys = dict.fromkeys(f.of for f in found.fitted if f.quantity in of_lining)
    known: dict[str, Lining] = {
        survey.lining.key: survey.lining for survey in plan.surveys if survey.lining is not None
    }
    covers: list[tuple[str, object]] = []
    for key, entry in zip(keys, found.linings, strict=True):
        old = known.get(key)
        if old is not None:
            covers.append((key, entry.model_copy(update={"key": key, "name": old.name})))
    return used_in_plan(plan, answer.plan, found.plan, covers)


def keep(answer: Answer, shelf: Shelf) -> tuple[str, ...]:
    """Keep calibrated lamps and linings among the user's own; returns their names.

    Raises
    ------
    planner.catalogue.library.CatalogueError
        If one cannot be kept; the message says why.
    """
    found: list[LampModel | Lining] = [*answer.calibration.lamps, *answer.calibration.linings]
    for entry in found:
        shelf.save(entry)
    return tuple(entry.name for entry in found)


STALE = "The plan has changed since this fit; calibrate again before it is used in the plan."

USE = "Use in the plan"
USE_ALL_THE_SAME = "Use in the plan all the same"

USED = "The plan now has these values; undo takes them back."


class CalibrationResults(QWidget):
    """Hidden until there is something to show.

    Each value with its interval, where its error comes from and what to measure next stands
    in one block; what does not fit stands above them all.
    """

    def __init__(self) -> None:
        super().__init__()
        self.answer: Answer | None = None
        self.unit = LengthUnit.CM
        self.values = QVBoxLayout()
        self.values.setSpacing(theme.HALF)
        self.correlation = _table("Correlation of the values")
        self.correlation_fold = fold_button("How they hang together", self.correlation)
        self.sentences = PlainLabel(name="What the fit says", wrap=True, selectable=True)
        self.sentences_fold = fold_button("All of it in words", self.sentences)
        self.left_out = PlainLabel(
            name="Each survey predicted from the others", wrap=True, selectable=True
        )
        self.diagnosis = DiagnosisPanel()
        self.use_button = button(
            USE, "Lamps and linings of the plan get these values; one undo step."
        )
        self.keep_button = button(
            "Keep in the library", "Under a name with today's date, with their standard errors."
        )
        self.alert = AlertLabel()
        self.note = NoteLabel()
        self.note.hide()
        self._arrange()
        self.body.hide()
        self.left_out.hide()

    def _arrange(self) -> None:
        self.body = QWidget()
        title = PlainLabel("Found", bold=True)
        buttons = theme.row(self.use_button, self.keep_button, gap=theme.RHYTHM)
        theme.column(
            title, self.alert, self.diagnosis, self.values, buttons, self.note, self.sentences_fold,
            self.sentences, self.correlation_fold, self.correlation, on=self.body, gap=theme.RHYTHM,
        )  # fmt: skip
        theme.column(self.body, self.left_out, on=self, gap=theme.RHYTHM)

    def set_unit(self, unit: LengthUnit) -> None:
        """Say lengths in another unit."""
        if unit is not self.unit:
            self.unit = unit
            if self.answer is not None:
                self._fill(self.answer.calibration)

    def _fill(self, found: Calibration) -> None:
        theme.emptied(self.values)
        for row, one in enumerate(found.fitted):
            self.values.addWidget(FoundValue(f"{row + 1}  {one.label}", one, self.unit))
        self.sentences.setText(in_unit("\n\n".join(found.sentences), self.unit))
        # What does not fit is said above the values, before anybody believes them.
        self.alert.say(in_unit(" ".join(found.warnings), self.unit))

    def show_answer(self, answer: Answer) -> None:
        """Show a calibration."""
        self.answer = answer
        found = answer.calibration
        self._fill(found)
        self._fill_correlation(found)
        self.say("")
        self.use_button.setText(USE_ALL_THE_SAME if found.warnings else USE)
        self.diagnosis.clear()
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

    def _fill_correlation(self, found: Calibration) -> None:
        table, count = self.correlation, len(found.fitted)
        table.setRowCount(count)
        table.setColumnCount(count)
        table.setHorizontalHeaderLabels([str(k + 1) for k in range(count)])
        for row in range(count):
            for column in range(count):
                item = QTableWidgetItem(f"{found.correlation[row, column]:+.2f}")
                first, second = found.fitted[row].label, found.fitted[column].label
                explain(item, f"{first} with {second}")
                table.setItem(row, column, item)
        _fit_height(table)
        listed = "; ".join(f"{k}: {one.label}" for k, one in enumerate(found.fitted, start=1))
        explain(table, listed)
        self.correlation_fold.setVisible(count > 1)


class FoundValue(QWidget):
    """One value: its name, itself with its interval, its error's causes, what to do next."""

    def __init__(self, name: str, one: Fitted, unit: LengthUnit) -> None:
        super().__init__()
        layout = QGridLayout(self)
        layout.setContentsMargins(0, 0, 0, theme.HALF)
        layout.setHorizontalSpacing(theme.RHYTHM)
        layout.setVerticalSpacing(2)
        layout.setColumnStretch(0, 1)
        label, value = PlainLabel(name, quiet=True), PlainLabel(value_text(one, unit))
        value.setFont(theme.tabular(theme.sized(value.font(), 1.15)))
        value.setAccessibleName(f"{one.label}: {value.text()}")
        causes = [part for part in one.budget[:_CAUSES] if part.share >= _LEAST_SHARE]
        if not one.identifiable:
            causes = []
        for row, part in enumerate((label, value)):
            part.setWordWrap(True)
            explain(part, in_unit(one.sentence, unit))
            layout.addWidget(part, row, 0, 1, 2)
        for row, cause in enumerate(causes, start=2):
            said = in_unit(cause.words, unit)
            words, bar = PlainLabel(said), QProgressBar()
            words.setWordWrap(True)
            bar.setRange(0, 100)
            bar.setValue(round(100 * cause.share))
            bar.setTextVisible(False)
            bar.setFixedSize(_BAR_WIDTH, theme.HALF + 2)
            told = f"{said}: {percent(cause.share)} of the variance"
            bar.setAccessibleName(told)
            for made in (words, bar):
                explain(made, told)
            words.setFont(theme.sized(words.font(), 0.92))
            layout.addWidget(words, row, 0)
            layout.addWidget(bar, row, 1, Qt.AlignmentFlag.AlignVCenter)
        if one.advice and one.identifiable:
            layout.addWidget(NoteLabel(in_unit(one.advice, unit)), 2 + len(causes), 0, 1, 2)


_CAUSES: Final = 3
_LEAST_SHARE: Final = 0.05
_BAR_WIDTH: Final = 72


def value_text(one: Fitted, length: LengthUnit = LengthUnit.CM) -> str:
    """A value with its 95 % interval, or how far the readings tell it at all.

    In the unit its dial has: lengths as shown, shares in per cent, a beam by its angle.
    """
    if not one.identifiable:
        return "not told by these readings"
    unit, (low, high), above = one.unit, one.interval(), one.value > one.start
    values = [one.value, low, high]
    if one.quantity == "exponent":
        # A greater exponent makes a beam narrower.
        values = [
            CosineProfile(exponent=max(m, 0.0)).beam_angle_deg for m in (one.value, high, low)
        ]
        unit, above = "°", not above
    elif one.quantity in {"reflectance", "specular share"}:
        values, unit = [100 * m for m in values], "%"
    elif unit == "m":
        values, unit = [m / length.metres for m in values], length.value
    found, low, high = values
    gap = "" if unit in {"", "°"} else " "
    if one.at_bound:
        reach = low if above else high
        return f"at {'least' if above else 'most'} {reach:.3g}{gap}{unit}, at its bound"
    value, _ = banded(found, (high - low) / 2)
    decimals = len(re.split(r"[.,]", f"{value}.")[1])
    return f"{value}{gap}{unit}, {low:.{decimals}f} to {high:.{decimals}f}"


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
