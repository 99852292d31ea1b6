"""The one thing that would help most, under the sentence, with a button that does it."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QSizePolicy, QWidget

from planner.app import theme
from planner.app.fields.form import NoteLabel, link_button
from planner.app.plain import tooltip
from planner.estimate.result import Estimate
from planner.plan.plan import Plan

STEP_NAME: Final = "Set output of all lamps"


class AdviceLine(QWidget):
    """A quiet line that always has something to say, so that nothing below it jumps.

    Signals: ``taken(plan, name)`` with the advised plan and the name of its undo step,
    ``lamp_wanted`` and ``target_wanted`` when the button asks for a first lamp or a band.
    """

    taken = Signal(object, str)
    lamp_wanted = Signal()
    target_wanted = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._plan: Plan | None = None
        self.words = NoteLabel()
        self.words.setWordWrap(False)
        self.words.setAccessibleName("What would help most")
        # A long sentence is cut on a small window rather than asking for a wider one.
        self.words.setSizePolicy(QSizePolicy.Policy.Maximum, QSizePolicy.Policy.Preferred)
        self.words.setMinimumWidth(10)
        self.do_button = link_button("Do it")
        self.lamp_button = link_button("Hang a lamp")
        self.target_button = link_button("Choose a crop or band")
        self.do_button.setToolTip("Sets the lamps so, as one step that can be undone.")
        self.do_button.clicked.connect(self._do)
        self.lamp_button.clicked.connect(self.lamp_wanted)
        self.target_button.clicked.connect(self.target_wanted)
        self._buttons = (self.do_button, self.lamp_button, self.target_button)
        layout = QHBoxLayout(self)
        layout.setContentsMargins(theme.RHYTHM, 0, theme.RHYTHM, 0)
        layout.setSpacing(theme.HALF)
        layout.addWidget(self.words)
        for button in self._buttons:
            layout.addWidget(button, 0, Qt.AlignmentFlag.AlignVCenter)
            button.hide()
        layout.addStretch(1)
        self.setFixedHeight(self.do_button.sizeHint().height())

    def show_estimate(self, estimate: Estimate) -> None:
        """Say what would help most, or what is wanted where nothing simple would."""
        from planner.reports import advice, content  # noqa: PLC0415 - only when there is light

        plan = estimate.plan
        self._plan = None
        if not plan.lamps:
            self._say("First of all:", self.lamp_button)
        elif plan.target is None:
            self._say("No crop and no band of light is chosen yet.", self.target_button)
        else:
            dimming = advice.best_dimming(estimate)
            self._plan = None if dimming is None else advice.turned(plan, dimming.factor)
            text = advice.advice(estimate) or content.wanted_sentence(estimate)
            self._say(text, None if dimming is None else self.do_button)
            self.do_button.setAccessibleName(f"Do it: {text}")

    def _say(self, text: str, button: QWidget | None) -> None:
        if text != self.words.text():
            self.words.setText(text)
            self.words.setToolTip(tooltip(text))
        for one in self._buttons:
            if one.isHidden() is (one is button):
                one.setVisible(one is button)

    def _do(self) -> None:
        if self._plan is not None:
            self.taken.emit(self._plan, STEP_NAME)
