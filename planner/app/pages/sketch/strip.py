"""The sentence and the few large figures under it; a click on a figure tells what it means."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from PySide6.QtCore import QRect, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QFont,
    QFontMetrics,
    QGuiApplication,
    QPainter,
    QPaintEvent,
    QPalette,
    QResizeEvent,
)
from PySide6.QtWidgets import (
    QAbstractButton,
    QButtonGroup,
    QCheckBox,
    QSizePolicy,
    QWidget,
)

from planner.app import theme
from planner.app.fields.form import AlertLabel, NoteLabel, in_tab_order, link_button
from planner.app.pages.sketch.wish import WishLine
from planner.app.plain import PlainLabel, explain
from planner.app.theme import paint_focus
from planner.estimate.result import Estimate
from planner.metrics.figures import LEADING, LOWEST, NO_VALUE
from planner.plan.place import judged
from planner.plan.plan import Plan
from planner.reports import advice, content
from planner.reports.advice import LiningGain, signed
from planner.reports.content import HeadlineFigure
from planner.units import PPFD_UNIT

if TYPE_CHECKING:
    from planner.estimate.outlook import Outlook, Uncertainty

_Flag = Qt.AlignmentFlag


class FigureButton(QAbstractButton):
    """What both kinds share: the figure, its name for screen readers, the focus frame."""

    def __init__(self) -> None:
        super().__init__()
        self.figure: HeadlineFigure | None = None
        self.setCheckable(True)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setAccessibleName("No figure yet")
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setContextMenuPolicy(Qt.ContextMenuPolicy.ActionsContextMenu)
        self.addAction("Copy this figure").triggered.connect(
            lambda: QGuiApplication.clipboard().setText(self.accessibleName())
        )

    def show_figure(self, figure: HeadlineFigure) -> None:
        """Show a figure."""
        if figure != self.figure:
            self.figure = figure
            self.setAccessibleName(f"{figure.label}: {figure.text}")
            self.setAccessibleDescription(figure.meaning)
            explain(self, figure.meaning)
            self.updateGeometry()
            self.update()

    def _quiet(self) -> QPalette.ColorRole:
        return QPalette.ColorRole.PlaceholderText

    def _paint_focus(self, painter: QPainter) -> None:
        if self.underMouse() or self.isChecked():
            painter.fillRect(self.rect(), self.palette().color(QPalette.ColorRole.AlternateBase))
        paint_focus(self, painter)


class LargeFigure(FigureButton):
    """A large value with its unit, over a small label."""

    def _value_font(self) -> QFont:
        return theme.tabular(theme.sized(self.font(), 2.0))

    def _band_font(self) -> QFont:
        return theme.tabular(theme.sized(self.font(), 1.35))

    def sizeHint(self) -> QSize:
        large, small = QFontMetrics(self._value_font()), self.fontMetrics()
        figure = self.figure
        unit = small.horizontalAdvance(figure.unit) if figure is not None else 0
        # Room for the band is kept from the start, so that nothing moves when it comes.
        band = QFontMetrics(self._band_font()).horizontalAdvance("± 00") if unit else 0
        width = large.horizontalAdvance("0000") + band + unit + 3 * theme.RHYTHM
        return QSize(width, large.height() + small.height() + theme.RHYTHM)

    def minimumSizeHint(self) -> QSize:
        """Room for the value over its label, with the unit beside the one or the other."""
        hint, figure, small = self.sizeHint(), self.figure, self.fontMetrics()
        if figure is None:
            return QSize(0, hint.height())
        value = QFontMetrics(self._value_font()).horizontalAdvance(figure.value)
        band = QFontMetrics(self._band_font()).horizontalAdvance(figure.spread or "± 00") + 6
        label, unit = small.horizontalAdvance(figure.label), small.horizontalAdvance(figure.unit)
        comma = small.horizontalAdvance(", ")
        least = min(max(value + band + 6 + unit, label), max(value + band, label + comma + unit))
        return QSize(theme.RHYTHM + min(least, hint.width()), hint.height())

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        self._paint_focus(painter)
        if self.figure is None:
            return
        font = self._value_font()
        large, small = QFontMetrics(font), self.fontMetrics()
        left, top = theme.RHYTHM, theme.HALF
        value, label = self.figure.value, self.figure.label
        painter.setFont(font)
        painter.setPen(self.palette().color(QPalette.ColorRole.WindowText))
        painter.drawText(left, top + large.ascent(), value)
        width = large.horizontalAdvance(value)
        painter.setPen(self.palette().color(self._quiet()))
        if self.figure.value != NO_VALUE:
            after = left + width + 6
            if self.figure.spread:
                band = self._band_font()
                painter.setFont(band)
                painter.drawText(after, top + large.ascent(), self.figure.spread)
                after += QFontMetrics(band).horizontalAdvance(self.figure.spread) + 6
            painter.setFont(self.font())
            if after + small.horizontalAdvance(self.figure.unit) <= self.width():
                painter.drawText(after, top + large.ascent(), self.figure.unit)
            else:  # with a large font the unit goes on in the line below
                label = f"{label}, {self.figure.unit}"
        painter.setFont(self.font())
        label = small.elidedText(label, Qt.TextElideMode.ElideRight, self.width() - left)
        painter.drawText(left, top + large.height() + small.ascent(), label)


class FigureLine(FigureButton):
    """A label on the left and the value on the right of one line."""

    def sizeHint(self) -> QSize:
        return QSize(160, self.fontMetrics().height() + 6)

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        self._paint_focus(painter)
        if self.figure is None:
            return
        area = QRect(self.rect().adjusted(theme.HALF, 0, -theme.HALF, 0))
        painter.setPen(self.palette().color(self._quiet()))
        number = QFontMetrics(theme.tabular(self.font())).horizontalAdvance(self.figure.text)
        label = self.fontMetrics().elidedText(
            self.figure.label,
            Qt.TextElideMode.ElideRight,
            area.width() - number - theme.RHYTHM,
        )
        painter.drawText(area, _Flag.AlignLeft | _Flag.AlignVCenter, label)
        painter.setFont(theme.tabular(self.font()))
        painter.setPen(self.palette().color(QPalette.ColorRole.WindowText))
        painter.drawText(area, _Flag.AlignRight | _Flag.AlignVCenter, self.figure.text)


# -- the sentence and the few large figures under it -----------------------------------


def uncertainty_of(outlook: Outlook | None, estimate: Estimate) -> Uncertainty | None:
    """The uncertainty of an estimate's figures, None while only that of another is known.

    It is reckoned of the canopy that the plan is judged by.
    """
    if outlook is None or outlook.plan != estimate.plan or estimate.place != judged(estimate.plan):
        return None
    return outlook.uncertainty


class FigureStrip(QWidget):
    """What the light does, in words and in four figures; errors stand beside the old ones.

    Under the mean, unfolded, another one can be wished for (``wish``). ``unfolded`` tells that
    more or less room is taken.
    """

    unfolded = Signal()

    def __init__(self, wish: WishLine) -> None:
        super().__init__()
        self.wish = wish
        self._estimate: Estimate | None = None
        self._outlook: Outlook | None = None
        self.sentence = PlainLabel("No estimate yet.", name="What the light does", wrap=True)
        self.sentence.setAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop)
        self.sentence.setFont(theme.sized(self.sentence.font(), 1.15))
        self.advice = AdviceLine()
        self.failure = AlertLabel()
        self.figures = [LargeFigure() for _ in range(LEADING)]
        self.meaning = NoteLabel()
        self.meaning.hide()
        self.wish.hide()
        # One question at a time: the answer takes the place of what the figure means.
        self.wish.looking.connect(self.meaning.hide)
        self._group = QButtonGroup(self)
        self._group.setExclusive(False)
        self._arrange()

    def _arrange(self) -> None:
        self.sentence.setContentsMargins(theme.RHYTHM, 0, theme.RHYTHM, 0)
        self.failure.setContentsMargins(theme.RHYTHM, 0, theme.RHYTHM, 0)
        row = theme.row(gap=theme.RHYTHM)
        for figure in self.figures:
            row.addWidget(figure)
            figure.clicked.connect(lambda on, figure=figure: self._show_meaning(figure, on=on))
        self.meaning.setContentsMargins(theme.RHYTHM, 0, theme.RHYTHM, 0)
        theme.column(
            self.sentence, self.advice, self.failure, row, self.meaning, self.wish, on=self,
            gap=theme.HALF,
        )  # fmt: skip

    def ask_for(self, wanted: float) -> None:
        """Unfold the mean and look for the ways to another one."""
        if not self.figures[0].isChecked():
            self.figures[0].click()
        self.wish.ask(wanted)

    def show_estimate(self, estimate: Estimate) -> None:
        """Show what an estimate says."""
        self.failure.say("")
        self.advice.show_estimate(estimate)
        self._estimate = estimate
        self._show_figures()

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
            explain(self.sentence, text)
        shown = content.headline_figures(self._estimate, known, slice(LEADING))
        for button, figure in zip(self.figures, shown, strict=True):
            button.show_figure(figure)
            if button.isChecked():
                self.meaning.setText(figure.meaning)

    def show_failure(self, sentence: str) -> None:
        """Say why there is no new estimate; the last one stays."""
        self.failure.say(sentence)

    def _show_meaning(self, figure: LargeFigure, *, on: bool) -> None:
        for other in self.figures:
            if other is not figure:
                other.setChecked(False)
        shown = on and figure.figure is not None
        self.meaning.setText(figure.figure.meaning if shown and figure.figure else "")
        self.meaning.setVisible(shown)
        known = self._estimate
        wishes = shown and figure is self.figures[0] and known is not None
        # What is wished for is looked for on the canopy that the plan is judged by.
        wishes = wishes and known is not None and known.place == judged(known.plan)
        if wishes and known is not None and self.wish.isHidden():
            self.wish.propose(known)
        self.wish.setVisible(wishes)
        self.unfolded.emit()

    def resizeEvent(self, event: QResizeEvent) -> None:
        # Room for two lines from the start where one will not do: the drawing below must
        # not jump while a drag changes the sentence.
        lines = 2 if self.width() < 1120 else 1
        self.sentence.setMinimumHeight(lines * self.sentence.fontMetrics().lineSpacing() + 2)
        super().resizeEvent(event)


# -- what would help most ---------------------------------------------------------------

STEP_NAME: Final = "Set output of all lamps"


class _CutNote(NoteLabel):
    """A line that shows by three dots that there was no room for all of it."""

    def paintEvent(self, _event: QPaintEvent) -> None:
        room = self.contentsRect()
        text = self.fontMetrics().elidedText(self.text(), Qt.TextElideMode.ElideRight, room.width())
        self.style().drawItemText(
            QPainter(self),
            room,
            self.alignment().value,
            self.palette(),
            self.isEnabled(),
            text,
            self.foregroundRole(),
        )


class AdviceLine(QWidget):
    """A quiet line that always has something to say, so that nothing below it jumps.

    Signals: ``taken(plan, name)`` with the advised plan and the name of its undo step,
    ``walls_wanted``, ``lamp_wanted`` and ``target_wanted`` when a button asks for what a space
    that is begun still wants.
    """

    taken = Signal(object, str)
    walls_wanted = Signal()
    lamp_wanted = Signal()
    target_wanted = Signal()

    def __init__(self) -> None:
        super().__init__()
        self._plan: Plan | None = None
        self.words = _CutNote()
        self.words.setWordWrap(False)
        self.words.setAccessibleName("What would help most")
        # A long sentence is cut on a small window rather than asking for a wider one.
        self.words.setSizePolicy(QSizePolicy.Policy.Maximum, QSizePolicy.Policy.Preferred)
        self.words.setMinimumWidth(10)
        self.do_button = link_button("Do it", act=self._do)
        self.walls_button = link_button("Line the walls", act=self.walls_wanted)
        self.lamp_button = link_button("Hang a lamp", act=self.lamp_wanted)
        self.target_button = link_button("Choose a crop or band", act=self.target_wanted)
        self.do_button.setToolTip("Sets the lamps so, as one step that can be undone.")
        self._buttons = (
            self.do_button,
            self.walls_button,
            self.lamp_button,
            self.target_button,
        )
        middle = Qt.AlignmentFlag.AlignVCenter
        theme.row(
            self.words, *((button, 0, middle) for button in self._buttons), theme.REST, on=self,
            gap=theme.HALF, edges=(theme.RHYTHM, 0, theme.RHYTHM, 0),
        )  # fmt: skip
        for button in self._buttons:
            button.hide()
        self.setFixedHeight(self.do_button.sizeHint().height())

    def show_estimate(self, estimate: Estimate) -> None:
        """Say what would help most, or what is wanted where nothing simple would."""
        plan = estimate.plan
        self._plan = None
        if not plan.lamps:
            wanted = [self.walls_button, self.lamp_button]
            wanted += [self.target_button] if estimate.target is None else []
            self._say("What it still wants:", *wanted)
        elif estimate.target is None:
            self._say("No crop and no band of light is chosen yet.", self.target_button)
        else:
            dimming = advice.best_dimming(estimate)
            self._plan = None if dimming is None else advice.turned(plan, dimming.factor)
            text = advice.advice(estimate) or content.wanted_sentence(estimate)
            self._say(text, *(() if dimming is None else (self.do_button,)))
            self.do_button.setAccessibleName(f"Do it: {text}")

    def _say(self, text: str, *buttons: QWidget) -> None:
        if text != self.words.text():
            self.words.setText(text)
            explain(self.words, text)
        for one in self._buttons:
            if one.isHidden() is (one in buttons):
                one.setVisible(one in buttons)

    def _do(self) -> None:
        if self._plan is not None:
            self.taken.emit(self._plan, STEP_NAME)


# -- which surface to line first -------------------------------------------------------

WAITING = "This is computed when the plan has rested for a second or two."
NOTHING = "No surface would bring anything: there is no light, or nothing left to gain."
ABOUT = (
    f"What ten points more of reflectance would bring to the mean and to the {LOWEST}, in "
    f"{PPFD_UNIT}:"
)
EQUAL: Final = " Surfaces of the same rank cannot be told apart."


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

    def __init__(self) -> None:
        super().__init__()
        self.lines: list[GainLine] = []
        self.shown: tuple[LiningGain, ...] | None = None
        self.note = NoteLabel(WAITING)
        self.switch = QCheckBox("Mark on the sketch")
        self.switch.setAccessibleName(self.switch.text())
        self.switch.clicked.connect(self.marks_wanted)
        edges = (theme.HALF, 0, theme.RHYTHM, theme.HALF)
        self._layout = theme.column(self.switch, self.note, on=self, gap=theme.HALF, edges=edges)

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
        most = max((gain.mean for gain in gains or ()), default=1.0)
        told = [(signed(gain.mean), signed(gain.minimum)) for gain in gains or ()]
        same = EQUAL if len(set(told)) < len(told) else ""
        about = f"{ABOUT}{same}" if gains else NOTHING
        self.note.setText(WAITING if gains is None else about)
        for gain, figures in zip(gains or (), told, strict=True):
            rank = told.index(figures) + 1
            line = GainLine(gain, rank, gain.mean / most)
            line.clicked.connect(lambda _on=False, line=line: self.asked_for.emit(line.gain.place))
            self._layout.addWidget(line)
            self.lines.append(line)
        in_tab_order([self.switch, *self.lines])
