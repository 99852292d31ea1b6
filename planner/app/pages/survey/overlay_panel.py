"""The column of the overlay: what to show, the figures of agreement, and what they mean."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QPalette
from PySide6.QtWidgets import QGridLayout, QLabel, QRadioButton, QVBoxLayout, QWidget

from planner.app import theme
from planner.app.fields.form import NoteLabel
from planner.app.pages.survey.pictures import PPFD_UNIT, View
from planner.app.plots.scatter import ScatterPlot
from planner.survey.overlay import Residuals
from planner.survey.statistics import SurveySummary

_MEANINGS = {
    "Mean error": "Mean of the sizes of the differences, whichever way they go.",
    "Bias": "Mean of the differences, measured minus estimated: what all readings share.",
    "rms": "Root of the mean square of the differences: large ones count more.",
    "r²": "Share of the variation from hole to hole that the estimate follows.",
}


class OverlayPanel(QWidget):
    """Signal ``view_changed(View)``."""

    view_changed = Signal(object)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.view = View.READINGS
        self.choices: dict[View, QRadioButton] = {}
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(theme.HALF)
        for view in View:
            choice = QRadioButton(view.value)
            choice.setAccessibleName(view.value)
            choice.setChecked(view is self.view)
            choice.toggled.connect(lambda on, view=view: self._choose(view, on=on))
            self.choices[view] = choice
            layout.addWidget(choice)
        layout.addSpacing(theme.RHYTHM)
        layout.addLayout(self._figures())
        layout.addSpacing(theme.RHYTHM)
        self.scatter = ScatterPlot()
        layout.addWidget(self.scatter)
        layout.addWidget(NoteLabel("The line is perfect agreement, the wedge what the meter's own "
                                   "uncertainty explains."))  # fmt: skip
        self.words = QLabel()
        self.words.setWordWrap(True)
        self.words.setAccessibleName("What the figures mean")
        self.words.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        layout.addSpacing(theme.RHYTHM)
        layout.addWidget(self.words)
        layout.addStretch(1)
        self.show_residuals(None, None)

    def _figures(self) -> QGridLayout:
        grid = QGridLayout()
        grid.setHorizontalSpacing(theme.RHYTHM)
        grid.setVerticalSpacing(2)
        grid.setColumnStretch(0, 1)
        self.values: dict[str, QLabel] = {}
        for line, (name, meaning) in enumerate(_MEANINGS.items()):
            label, value = QLabel(name), QLabel("–")
            label.setForegroundRole(QPalette.ColorRole.PlaceholderText)
            value.setFont(theme.tabular(value.font()))
            value.setAlignment(Qt.AlignmentFlag.AlignRight)
            for part in (label, value):
                part.setToolTip(f"<p>{meaning}</p>")
            value.setAccessibleDescription(meaning)
            grid.addWidget(label, line, 0)
            grid.addWidget(value, line, 1)
            self.values[name] = value
        return grid

    def show_residuals(self, found: Residuals | None, summary: SurveySummary | None) -> None:
        """Show the agreement of a survey with its estimate; None while there is none."""
        suspects = frozenset() if summary is None else frozenset(s.hole for s in summary.suspects)
        self.scatter.show_residuals(found, suspects)
        texts = dict.fromkeys(_MEANINGS, "–")
        if found is not None:
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
        words: tuple[str, ...] = (
            "Take readings first; then they are set against the estimate here.",
        )
        if found is not None:
            words = (*found.words(), *suspect_words(summary))
        self.words.setText("\n\n".join(words))

    def _choose(self, view: View, *, on: bool) -> None:
        if on and view is not self.view:
            self.view = view
            self.view_changed.emit(view)


def _both(value: float, relative: float, *, signed: bool) -> str:
    sign = "+" if signed else ""
    text = f"{value:{sign}.1f} {PPFD_UNIT}  ({relative * 100:{sign}.1f} %)"
    return text.replace("-", "−") if signed else text


def suspect_words(summary: SurveySummary | None) -> tuple[str, ...]:
    """What is to be said of readings far off their neighbours."""
    if summary is None or not summary.suspects:
        return ()
    listed = [
        f"hole {one.hole} (reads {one.mean:.0f}, about {one.expected or 0.0:.0f} expected)"
        for one in summary.suspects[:4]
    ]
    more = len(summary.suspects) - len(listed)
    tail = f" and {more} more" if more else ""
    few = len(summary.suspects) == 1
    return (
        f"Far off {'its' if few else 'their'} neighbours: {', '.join(listed)}{tail}. "
        f"{'It is' if few else 'They are'} kept; read again if you can.",
    )
