"""Surveys beside estimates and beside each other: the columns that ask and tell."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QGridLayout,
    QLabel,
    QRadioButton,
    QWidget,
)

from planner.app import theme
from planner.app.fields.form import Form, NoteLabel, StillCombo, button
from planner.app.pages.survey.desk import SurveyDesk
from planner.app.pages.survey.diagnosis import DiagnosisPanel
from planner.app.pages.survey.pictures import View
from planner.app.plain import PlainLabel, explain
from planner.app.plots.survey_charts import IntervalChart, ScatterPlot
from planner.language import word
from planner.plan.survey import Survey
from planner.survey.comparison import Pairing, Ranking, compare, ranking
from planner.survey.statistics import Residuals, SurveySummary
from planner.units import PPFD_UNIT

BY: Final = (("Mean of the holes", "mean"), ("Darkest hole", "min"), ("Brightest hole", "max"))
NEED_TWO: Final = (
    "A comparison needs readings of two surveys. Copy this survey to the same board, change one "
    "thing - the lining, the height - and read again."
)


class ComparePanel(Form):
    """Reads the desk's surveys; the one the shown is set against is chosen here."""

    def __init__(self, desk: SurveyDesk) -> None:
        super().__init__()
        self.desk = desk
        self.pair: Pairing | None = None
        _, self.other = self.add_choice(
            "Set against",
            explanation="The map shows the survey chosen above over this one, hole by hole.",
        )
        self.ratio = self.add_wide(PlainLabel(name="Ratio of the two surveys"))
        self.ratio.setFont(theme.tabular(theme.sized(self.ratio.font(), 1.9)))
        self.verdict = self.add_wide(PlainLabel(name="What the ratio means", wrap=True))
        self.add_heading("Ranking")
        _, self.by = self.add_choice("Ranked by", BY)
        _, self.base = self.add_choice("Base, counts as 1")
        self.chart = self.add_wide(IntervalChart())
        self.add_heading("Can the readings tell them apart?")
        self.verdicts = self.add_wide(PlainLabel(name="Verdicts", wrap=True, selectable=True))
        self.note = self.add_wide(NoteLabel(NEED_TWO))
        self.end()
        self.other.activated.connect(lambda _k: desk.choose_other(self.other.currentData()))
        self.by.activated.connect(lambda _k: self.refresh())
        self.base.activated.connect(lambda _k: self.refresh())

    # -- showing ------------------------------------------------------------------------

    def refresh(self) -> None:
        """Compare what the plan holds now."""
        survey = self.desk.survey
        read = [one for one in self.desk.surveys if one.counted]
        self._fill(self.other, [s for s in self.desk.surveys if s is not survey])
        if self.desk.other is not None:
            self.other.setCurrentIndex(self.other.findData(self.desk.other.key))
        base = self.base.currentData()
        self._fill(self.base, read)
        self.base.setCurrentIndex(max(self.base.findData(base), 0))
        self.note.setVisible(len(read) < 2)
        self._show_pair(survey)
        self._show_ranking(read)

    def _fill(self, combo: StillCombo, surveys: list[Survey]) -> None:
        combo.offer([(survey.name, survey.key) for survey in surveys])
        combo.setEnabled(combo.count() > 0)

    def _show_pair(self, survey: Survey | None) -> None:
        other = self.desk.other
        self.pair = None
        if survey is not None and other is not None:
            self.pair = compare(survey, other, [s for s in self.desk.surveys if s.counted])
        if self.pair is None:
            both = survey is not None and other is not None
            both = both and bool(survey and survey.readings) and bool(other and other.readings)
            self.ratio.setText("–")
            self.verdict.setText("These two share no hole with readings in both." if both else "")
            return
        self.ratio.setText(f"{self.pair.ratio:.3f} ± {self.pair.band:.3f}")
        explain(
            self.ratio,
            f"Mean over {self.pair.holes} holes with its 95 % interval; single holes differ by "
            f"{self.pair.spread:.3f} (standard deviation).",
        )
        self.verdict.setText(self.pair.words())

    def _show_ranking(self, read: list[Survey]) -> None:
        by = str(self.by.currentData())
        try:
            found = ranking(read, by, self.base.currentData())
        except ValueError:
            found = Ranking()  # a base that was dark throughout
        self.verdicts.setText("\n\n".join(found.words()))
        self.chart.show_ranking(found, self.base.currentData() or "")


_MEANINGS = {
    "Mean error": "Mean of the sizes of the differences, whichever way they go.",
    "Bias": "Mean of the differences, measured minus estimated: what all readings share.",
    "rms": "Root of the mean square of the differences: large ones count more.",
    "r²": "Share of the variation from hole to hole that the estimate follows.",
}


class OverlayPanel(QWidget):
    """Signal ``view_changed(View)``."""

    view_changed = Signal(object)

    def __init__(self) -> None:
        super().__init__()
        self.view = View.READINGS
        self.choices: dict[View, QRadioButton] = {}
        for view in View:
            choice = QRadioButton(word(view))
            choice.setAccessibleName(word(view))
            choice.setChecked(view is self.view)
            choice.toggled.connect(lambda on, view=view: self._choose(view, on=on))
            self.choices[view] = choice
        figures = self._figures()
        self.scatter = ScatterPlot()
        about = NoteLabel("The line is perfect agreement, the wedge what the meter's own "
                          "uncertainty explains.")  # fmt: skip
        self.words = PlainLabel(name="What the figures mean", wrap=True, selectable=True)
        self.try_button = button(
            "Try what may be wrong",
            "Mirrored, another order, lamp height, door, board: the usual mistakes, one by one.",
        )
        self.diagnosis = DiagnosisPanel()
        theme.column(
            *self.choices.values(), theme.RHYTHM, figures, theme.RHYTHM, self.scatter, about,
            theme.RHYTHM, self.words, (self.try_button, 0, Qt.AlignmentFlag.AlignLeft),
            self.diagnosis, theme.REST, on=self, gap=theme.HALF,
        )  # fmt: skip
        self.show_residuals(None, None)

    def _figures(self) -> QGridLayout:
        grid = QGridLayout()
        grid.setHorizontalSpacing(theme.RHYTHM)
        grid.setVerticalSpacing(2)
        grid.setColumnStretch(0, 1)
        self.values: dict[str, QLabel] = {}
        for line, (name, meaning) in enumerate(_MEANINGS.items()):
            label, value = PlainLabel(name, quiet=True), PlainLabel("–")
            value.setFont(theme.tabular(value.font()))
            value.setAlignment(Qt.AlignmentFlag.AlignRight)
            for part in (label, value):
                explain(part, meaning)
            grid.addWidget(label, line, 0)
            grid.addWidget(value, line, 1)
            self.values[name] = value
        return grid

    def show_residuals(self, found: Residuals | None, summary: SurveySummary | None) -> None:
        """Show the agreement of a survey with its estimate; None while there is none."""
        suspects = frozenset() if summary is None else frozenset(s.hole for s in summary.suspects)
        odd = frozenset() if found is None else found.odd
        self.scatter.show_residuals(found, suspects)
        texts = dict.fromkeys(_MEANINGS, "–")
        if found is not None and not found.dark:
            level = float(found.estimated.mean()) or 1.0
            texts = {
                "Mean error": _both(found.mean_error, found.mean_error / level, signed=False),
                "Bias": _both(found.bias, found.relative_bias, signed=True),
                "rms": _both(found.rms, found.relative_rms, signed=False),
                "r²": "–" if found.r2 is None else f"{found.r2:.2f}",
            }
        for name, text in texts.items():
            self.values[name].setText(text)
            self.values[name].setAccessibleName(f"{name}: {text}")
        self.try_button.setVisible(found is not None and found.poor)
        words: tuple[str, ...] = (
            "Take readings first; then they are set against the estimate here.",
        )
        if found is not None:
            words = (*found.words(), *suspect_words(summary, odd))
        elif summary is not None:
            words = ("As soon as the estimate is there, the readings are set against it here.",)
        self.words.setText("\n\n".join(words))

    def _choose(self, view: View, *, on: bool) -> None:
        if on and view is not self.view:
            self.view = view
            self.view_changed.emit(view)


def _both(value: float, relative: float, *, signed: bool) -> str:
    sign = "+" if signed else ""
    text = f"{value:{sign}.1f} {PPFD_UNIT}  ({relative * 100:{sign}.1f} %)"
    return text.replace("-", "−") if signed else text


def suspect_words(
    summary: SurveySummary | None, said: frozenset[int] = frozenset()
) -> tuple[str, ...]:
    """What is to be said of readings far off their neighbours, but for holes ``said`` already."""
    suspects = [one for one in (summary.suspects if summary else ()) if one.hole not in said]
    if not suspects:
        return ()
    listed = [
        f"hole {one.hole} (reads {one.mean:.0f}, about {one.expected or 0.0:.0f} expected)"
        for one in suspects[:4]
    ]
    more = len(suspects) - len(listed)
    tail = f" and {more} more" if more else ""
    few = len(suspects) == 1
    return (
        f"Far off {'its' if few else 'their'} neighbours: {', '.join(listed)}{tail}. "
        f"{'It is' if few else 'They are'} kept; read again if you can.",
    )
