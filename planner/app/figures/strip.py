"""The sentence and the few large figures under it, with the state of the estimate."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, QTimer
from PySide6.QtGui import QPalette, QResizeEvent
from PySide6.QtWidgets import QButtonGroup, QHBoxLayout, QVBoxLayout, QWidget

from planner.app import theme
from planner.app.fields.form import AlertLabel, NoteLabel
from planner.app.figures.advice_line import AdviceLine
from planner.app.figures.figure import LargeFigure
from planner.app.plain import PlainLabel, tooltip
from planner.estimate.result import Estimate, Quality
from planner.metrics.figures import LEADING
from planner.reports import content

if TYPE_CHECKING:
    from planner.estimate.outlook import Outlook, Uncertainty

COARSE = "Preview, refining …"
WORKING = "Working …"
PATIENCE_MS = 300
"""Work that is done sooner is not worth a word."""


def uncertainty_of(outlook: Outlook | None, estimate: Estimate) -> Uncertainty | None:
    """The uncertainty of an estimate's figures, None while only that of another is known."""
    if outlook is None or outlook.plan != estimate.plan:
        return None
    return outlook.uncertainty


class FigureStrip(QWidget):
    """What the light does, in words and in four figures; errors stand beside the old ones."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._busy = False
        self._estimate: Estimate | None = None
        self._outlook: Outlook | None = None
        self._coarse = False
        self._patience = QTimer(self)
        self._patience.setSingleShot(True)
        self._patience.setInterval(PATIENCE_MS)
        self._patience.timeout.connect(self._show_state)
        self.sentence = PlainLabel("No estimate yet.")
        self.sentence.setWordWrap(True)
        self.sentence.setAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop)
        self.sentence.setAccessibleName("What the light does")
        font = self.sentence.font()
        font.setPointSizeF(font.pointSizeF() * 1.15)
        self.sentence.setFont(font)
        self.state = PlainLabel("")
        self.state.setForegroundRole(QPalette.ColorRole.PlaceholderText)
        self.state.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignTop)
        self.state.setMinimumWidth(self.state.fontMetrics().horizontalAdvance(COARSE) + 8)
        self.state.setAccessibleName("State of the estimate")
        self.advice = AdviceLine()
        self.failure = AlertLabel()
        self.figures = [LargeFigure() for _ in range(LEADING)]
        self.meaning = NoteLabel()
        self.meaning.hide()
        self._group = QButtonGroup(self)
        self._group.setExclusive(False)
        self._arrange()

    def _arrange(self) -> None:
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(theme.HALF)
        words = QHBoxLayout()
        words.setContentsMargins(theme.RHYTHM, 0, theme.RHYTHM, 0)
        words.setSpacing(theme.RHYTHM)
        words.addWidget(self.sentence, 1)
        words.addWidget(self.state)
        layout.addLayout(words)
        layout.addWidget(self.advice)
        self.failure.setContentsMargins(theme.RHYTHM, 0, theme.RHYTHM, 0)
        layout.addWidget(self.failure)
        row = QHBoxLayout()
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(theme.RHYTHM)
        for figure in self.figures:
            row.addWidget(figure)
            figure.clicked.connect(lambda on, figure=figure: self._show_meaning(figure, on=on))
        layout.addLayout(row)
        self.meaning.setContentsMargins(theme.RHYTHM, 0, theme.RHYTHM, 0)
        layout.addWidget(self.meaning)

    def show_estimate(self, estimate: Estimate) -> None:
        """Show what an estimate says."""
        self.failure.say("")
        self._coarse = estimate.options.quality is Quality.PREVIEW
        self.advice.show_estimate(estimate)
        self._estimate = estimate
        self._show_figures()
        self._show_state()

    def show_outlook(self, outlook: Outlook) -> None:
        """Give the figures their bands, if they are of the plan it speaks of."""
        self._outlook = outlook
        self._show_figures()

    def _show_figures(self) -> None:
        if self._estimate is None:
            return
        known = uncertainty_of(self._outlook, self._estimate)
        text = content.sentence(self._estimate, known)
        if text != self.sentence.text():
            self.sentence.setText(text)
            self.sentence.setToolTip(tooltip(text))
        shown = content.headline_figures(self._estimate, known)[:LEADING]
        for button, figure in zip(self.figures, shown, strict=True):
            button.show_figure(figure)
            if button.isChecked():
                self.meaning.setText(figure.meaning)

    def show_busy(self, busy: bool) -> None:
        """Say that an estimate is being worked on."""
        self._busy = busy
        if busy:
            self._patience.start()
        else:
            self._patience.stop()
        self._show_state()

    def show_failure(self, sentence: str) -> None:
        """Say why there is no new estimate; the last one stays."""
        self.failure.say(sentence)
        self._show_state()

    def _show_state(self) -> None:
        late = self._busy and not self._patience.isActive()
        self.state.setText(COARSE if self._coarse else WORKING if late else "")

    def _show_meaning(self, figure: LargeFigure, *, on: bool) -> None:
        for other in self.figures:
            if other is not figure:
                other.setChecked(False)
        shown = on and figure.figure is not None
        self.meaning.setText(figure.figure.meaning if shown and figure.figure else "")
        self.meaning.setVisible(shown)

    def resizeEvent(self, event: QResizeEvent) -> None:
        # Room for two lines from the start where one will not do: the drawing below must
        # not jump while a drag changes the sentence.
        lines = 2 if self.width() < 1120 else 1
        self.sentence.setMinimumHeight(lines * self.sentence.fontMetrics().lineSpacing() + 2)
        super().resizeEvent(event)
