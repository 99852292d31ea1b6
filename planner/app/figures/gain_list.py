"""Which surface to line first: a line for each, with what ten points would bring."""

from __future__ import annotations

from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent, QPalette
from PySide6.QtWidgets import QAbstractButton, QCheckBox, QSizePolicy, QVBoxLayout, QWidget

from planner.app import theme
from planner.app.fields.form import NoteLabel, in_tab_order
from planner.app.outlines import paint_focus
from planner.app.plain import tooltip
from planner.reports.advice import LiningGain, signed

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
        self.setToolTip(tooltip(gain.sentence))

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
