"""What would help most: a line with a button that does it, and a list of surfaces to line first."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent, QPalette
from PySide6.QtWidgets import (
    QAbstractButton,
    QCheckBox,
    QHBoxLayout,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from planner.app import theme
from planner.app.fields.form import NoteLabel, in_tab_order, link_button
from planner.app.plain import explain
from planner.app.theme import paint_focus
from planner.estimate.result import Estimate
from planner.plan.plan import Plan
from planner.reports.advice import LiningGain, signed

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
            explain(self.words, text)
        for one in self._buttons:
            if one.isHidden() is (one is button):
                one.setVisible(one is button)

    def _do(self) -> None:
        if self._plan is not None:
            self.taken.emit(self._plan, STEP_NAME)


# -- which surface to line first -------------------------------------------------------

WAITING = "This is computed when the plan has rested for a second or two."
NOTHING = "No surface would bring anything: there is no light, or nothing left to gain."
ABOUT = (
    "What ten points more of reflectance would bring to the mean and to the lowest spot, in "
    "µmol m⁻² s⁻¹:"
)
_Flag = Qt.AlignmentFlag


class GainLine(QAbstractButton):
    """One surface: rank and name, its gains, and a thin bar; a click selects it."""

    def __init__(self, gain: LiningGain, rank: int, share: float) -> None:
        super().__init__()
        self.gain, self._rank, self._share = gain, rank, share
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setAccessibleName(gain.sentence)
        explain(self, gain.sentence)

    def sizeHint(self) -> QSize:
        return QSize(200, self.fontMetrics().height() + 14)

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        palette = self.palette()
        if self.underMouse():
            painter.fillRect(self.rect(), palette.color(QPalette.ColorRole.AlternateBase))
        left, width = 2.0, self.width() - 4.0
        text = QRectF(left, 2, width, self.fontMetrics().height())
        metrics = self.fontMetrics()
        column = metrics.horizontalAdvance("+00.0") + theme.RHYTHM
        painter.setPen(palette.color(QPalette.ColorRole.WindowText))
        painter.setFont(theme.tabular(self.font()))
        flags = _Flag.AlignRight | _Flag.AlignVCenter
        painter.drawText(text, flags, signed(self.gain.minimum))
        painter.drawText(text.adjusted(0, 0, -column, 0), flags, signed(self.gain.mean))
        name = metrics.elidedText(
            f"{self._rank}  {self.gain.name}",
            Qt.TextElideMode.ElideRight,
            int(width - 2 * column - theme.RHYTHM),
        )
        painter.drawText(text, _Flag.AlignLeft | _Flag.AlignVCenter, name)
        track = QRectF(left, text.bottom() + 3, width, 4)
        painter.fillRect(track, palette.color(QPalette.ColorRole.Midlight))
        track.setWidth(width * self._share)
        first = self._rank == 1
        role = QPalette.ColorRole.Accent if first else QPalette.ColorRole.Dark
        painter.fillRect(track, palette.color(role))
        paint_focus(self, painter)


class GainList(QWidget):
    """The lines, and the switch that marks them on the drawings.

    Signals: ``asked_for(Place)`` when a line is pressed, ``marks_wanted(bool)``.
    """

    asked_for = Signal(object)
    marks_wanted = Signal(bool)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.lines: list[GainLine] = []
        self.shown: tuple[LiningGain, ...] | None = None
        self.note = NoteLabel(WAITING)
        self.switch = QCheckBox("Mark on the sketch")
        self.switch.setAccessibleName(self.switch.text())
        self.switch.clicked.connect(self.marks_wanted)
        self._layout = QVBoxLayout(self)
        self._layout.setContentsMargins(theme.HALF, 0, theme.RHYTHM, theme.HALF)
        self._layout.setSpacing(theme.HALF)
        self._layout.addWidget(self.switch)
        self._layout.addWidget(self.note)

    def show_gains(self, gains: tuple[LiningGain, ...] | None) -> None:
        """Show the gains; None while they are not known yet."""
        if gains == self.shown:
            return
        self.shown = gains
        for line in self.lines:
            self._layout.removeWidget(line)
            line.hide()
            line.deleteLater()
        self.lines.clear()
        self.note.setText(WAITING if gains is None else ABOUT if gains else NOTHING)
        most = max((gain.mean for gain in gains or ()), default=1.0)
        for rank, gain in enumerate(gains or (), start=1):
            line = GainLine(gain, rank, gain.mean / most)
            line.clicked.connect(lambda _on=False, line=line: self.asked_for.emit(line.gain.place))
            self._layout.addWidget(line)
            self.lines.append(line)
        in_tab_order([self.switch, *self.lines])
