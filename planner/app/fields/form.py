"""Forms: small controls, and rows of labels and fields with the error beside the field."""

from __future__ import annotations

from collections.abc import Callable, Collection, Sequence
from itertools import pairwise
from typing import TypeVar

from PySide6.QtCore import QRect, QSize, Qt, Signal, SignalInstance
from PySide6.QtGui import (
    QFont,
    QPainter,
    QPaintEvent,
    QPalette,
    QResizeEvent,
    QWheelEvent,
)
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractItemView,
    QCheckBox,
    QComboBox,
    QGridLayout,
    QLabel,
    QLineEdit,
    QListWidget,
    QListWidgetItem,
    QProgressBar,
    QPushButton,
    QSizePolicy,
    QStyle,
    QStyleOption,
    QToolButton,
    QWidget,
)

from planner.app import theme
from planner.app.plain import PlainLabel, explain, tooltip
from planner.app.quantity_box import TypedField

_ARROW = 16
_PAD = 4
_Flag = Qt.AlignmentFlag
Made = TypeVar("Made", bound=QWidget)
Pressed = TypeVar("Pressed", bound=QAbstractButton)
Act = Callable[..., object] | SignalInstance


class QuietButton(QToolButton):
    """Text without a box, in one role of the palette; framed while it has the keyboard.

    ``arrow`` puts an arrow before it that points down once it is checked; ``underlined``
    draws a line under it while the pointer is on it.
    """

    def __init__(
        self,
        text: str,
        role: QPalette.ColorRole,
        *,
        arrow: bool = False,
        underlined: bool = False,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self._role, self._arrow, self._underlined = role, arrow, underlined
        self.setText(text)
        self.setAccessibleName(text)
        self.setAutoRaise(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)

    def sizeHint(self) -> QSize:
        metrics = self.fontMetrics()
        width = metrics.horizontalAdvance(self.text()) + 2 * _PAD + (_ARROW if self._arrow else 0)
        return QSize(width, metrics.height() + 6)

    def minimumSizeHint(self) -> QSize:
        return self.sizeHint()

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        palette = self.palette()
        area = self.rect().adjusted(_PAD, 0, -_PAD, 0)
        if self._arrow:
            self._paint_arrow(painter, QRect(area.left(), 0, _ARROW - 4, self.height()))
            area.setLeft(area.left() + _ARROW)
        font = QFont(self.font())
        font.setUnderline(self._underlined and self.underMouse())
        painter.setFont(font)
        painter.setPen(palette.color(self._role))
        side = _Flag.AlignLeft if self._arrow else _Flag.AlignHCenter
        text = self.fontMetrics().elidedText(
            self.text(), Qt.TextElideMode.ElideRight, area.width() + 1
        )
        painter.drawText(area, side | _Flag.AlignVCenter, text)
        theme.paint_focus(self, painter)

    def _paint_arrow(self, painter: QPainter, area: QRect) -> None:
        option = QStyleOption()
        option.initFrom(self)
        option.rect = area
        option.palette.setColor(
            QPalette.ColorRole.ButtonText, self.palette().color(QPalette.ColorRole.PlaceholderText)
        )
        element = QStyle.PrimitiveElement.PE_IndicatorArrowRight
        if self.isChecked():
            element = QStyle.PrimitiveElement.PE_IndicatorArrowDown
        self.style().drawPrimitive(element, option, painter, self)


class StillCombo(QComboBox):
    """A combo box that takes the wheel only while it has the focus; see ``offer``."""

    def __init__(
        self,
        parent: QWidget | None = None,
        *,
        name: str = "",
        entries: Sequence[tuple[str, object]] = (),
    ) -> None:
        super().__init__(parent)
        self.setAccessibleName(name)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
        self.setMinimumContentsLength(8)
        self.offer(entries)

    def offer(self, entries: Sequence[tuple[str, object]]) -> None:
        """Offer texts with what they stand for, where they are others; what was chosen stays."""
        if [(self.itemText(k), self.itemData(k)) for k in range(self.count())] == list(entries):
            return
        chosen = self.currentData()
        self.clear()
        for text, data in entries:
            self.addItem(text, data)
        self.widen_list()
        self.setCurrentIndex(next((k for k, (_, data) in enumerate(entries) if data == chosen), 0))

    def widen_list(self) -> None:
        """Let the opened list be as wide as its longest line, however narrow the box."""
        view = self.view()
        view.setMinimumWidth(min(view.sizeHintForColumn(0) + 32, 480))

    def wheelEvent(self, event: QWheelEvent) -> None:
        if self.hasFocus():
            super().wheelEvent(event)
        else:
            event.ignore()


_CUT = "Longer than its line."


class TextLine(TypedField, QLineEdit):
    """Signals: ``committed(text)`` for a new text, ``reverted`` after Esc."""

    committed = Signal(str)
    reverted = Signal()

    def __init__(self, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(name)
        self._value = ""
        self._refused: str | None = None

    @property
    def is_edited(self) -> bool:
        """Whether the text was changed and not yet taken over."""
        return self.text() != self._value

    def set_value(self, value: str) -> None:
        """Show the plan's text; what is being typed stays while the plan's is the same."""
        if value != self._value or not self.is_edited:
            self.reset(value)

    def reset(self, value: str) -> None:
        """Show the plan's text and drop whatever was typed."""
        self._value, self._refused = value, None
        if self.text() != value:
            self.setText(value)
            self.setCursorPosition(0)
        self._tell_what_is_cut()

    def commit(self, *, again: bool = False) -> None:
        """Ask for the text typed, if it differs from the plan's; see ``TypedField``."""
        text = self.text()
        if text != self._value and (again or text != self._refused):
            self._refused = text
            self.committed.emit(text.strip())

    def revert(self) -> None:
        """Go back to the plan's text."""
        self.reset(self._value)
        self.reverted.emit()

    def _tell_what_is_cut(self) -> None:
        """A text longer than the line can be read whole under the pointer."""
        room = self.width() - 12
        cut = self.fontMetrics().horizontalAdvance(self._value) > room
        self.setToolTip(tooltip(self._value) if cut else "")
        if self.accessibleDescription() in {"", _CUT}:  # or Qt would read out the tip
            self.setAccessibleDescription(_CUT if cut else "")

    # -- Qt ---------------------------------------------------------------------------

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._tell_what_is_cut()


# -- rows of labels and fields, with the error and the explanation beside the field ----

ASK_WIDTH = 20


class AlertLabel(PlainLabel):
    """A short sentence about what is wrong; hidden while there is none."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__("", parent, wrap=True)
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Minimum)
        self.setForegroundRole(QPalette.ColorRole.BrightText)
        self.hide()

    def say(self, sentence: str) -> None:
        """Show the sentence; an empty one hides the label."""
        self.setText(f"▲ {sentence}" if sentence else "")
        self.setVisible(bool(sentence))


class NoteLabel(PlainLabel):
    """A quiet line of explanation."""

    def __init__(self, text: str = "", parent: QWidget | None = None) -> None:
        super().__init__(text, parent, wrap=True, quiet=True)


class Row:
    """One line of a form: its label, its field, and what stands beside them."""

    def __init__(
        self,
        label: QLabel,
        control: QWidget,
        holder: QWidget,
        alert: AlertLabel,
        ask: QToolButton | None,
        note: NoteLabel | None,
    ) -> None:
        self.label, self.control = label, control
        self._holder, self._alert, self._ask, self._note = holder, alert, ask, note

    @property
    def error(self) -> str:
        """The error shown, or an empty text."""
        return self._alert.text().removeprefix("▲ ")

    @property
    def last_stop(self) -> QWidget:
        """What the Tab key reaches last in this row."""
        return self.control if self._ask is None else self._ask

    def show_error(self, sentence: str) -> None:
        """Show what is wrong with this field."""
        self._alert.say(sentence)

    def clear_error(self) -> None:
        """Take the error away."""
        self._alert.say("")

    def set_visible(self, visible: bool) -> None:
        """Show or hide the whole row."""
        self.label.setVisible(visible)
        self._holder.setVisible(visible)
        if self._note is not None and self._ask is not None:
            self._note.setVisible(visible and self._ask.isChecked())
        if not visible:
            self.clear_error()

    def set_enabled(self, enabled: bool) -> None:
        """Enable or disable the field."""
        self.label.setEnabled(enabled)
        self.control.setEnabled(enabled)


class Form(QWidget):
    """A column of rows: label left, field right, error and explanation below the field."""

    def __init__(self) -> None:
        super().__init__()
        self._alerts: list[AlertLabel] = []
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setHorizontalSpacing(8)
        self._grid.setVerticalSpacing(4)
        self._grid.setColumnStretch(1, 1)
        self._grid.setColumnMinimumWidth(0, 100)

    def add_heading(self, text: str) -> QLabel:
        """A small heading with room above it."""
        heading = PlainLabel(text, self, bold=True)
        heading.setContentsMargins(0, 12, 0, 0)
        self.add_wide(heading)
        return heading

    def add_row(
        self, label: str, control: QWidget, explanation: str = "", *, wide: bool = False
    ) -> Row:
        """A labelled field; with an explanation it gets a '?' that unfolds it.

        A wide one takes the whole column, with its label above it.
        """
        line = self._grid.rowCount()
        text = PlainLabel(label, self, wrap=True)
        text.setBuddy(control)
        if not control.accessibleName():
            control.setAccessibleName(label)
        holder = QWidget(self)
        layout = theme.row((control, 1), on=holder, gap=4)
        ask: QToolButton | None = None
        note: NoteLabel | None = None
        if explanation:
            ask, note = self._explained(label or control.accessibleName(), control, explanation)
            # The word itself is explained where it stands, in its first sentence.
            explain(text, explanation.partition(". ")[0].rstrip(".") + ".")
        if ask is not None:
            layout.addWidget(ask)
        elif not wide:
            layout.addSpacing(ASK_WIDTH + 4)
        alert = self._alert()
        if wide:
            self._grid.addWidget(text, line, 0, 1, 2)
            self._grid.addWidget(holder, line + 1, 0, 1, 2)
        else:
            self._grid.addWidget(text, line, 0)
            self._grid.addWidget(holder, line, 1)
        self._grid.addWidget(alert, line + 2, 0, 1, 2)
        if note is not None:
            self._grid.addWidget(note, line + 3, 0, 1, 2)
        return Row(text, control, holder, alert, ask, note)

    def _explained(
        self, label: str, control: QWidget, explanation: str
    ) -> tuple[QToolButton, NoteLabel]:
        ask = QToolButton(self)
        ask.setText("?")
        ask.setAutoRaise(True)
        ask.setCheckable(True)
        ask.setFixedWidth(ASK_WIDTH)
        ask.setToolTip("What is this?")
        ask.setAccessibleName(f"What is this? {label}")
        note = NoteLabel(explanation, self)
        note.hide()
        ask.toggled.connect(note.setVisible)
        explain(control, explanation)
        return ask, note

    def add_choice(
        self, label: str, entries: Sequence[tuple[str, object]] = (), explanation: str = ""
    ) -> tuple[Row, StillCombo]:
        """A choice from a list of texts with what they stand for."""
        combo = StillCombo(entries=entries)
        return self.add_row(label, combo, explanation), combo

    def add_wide(self, widget: Made) -> Made:
        """Something over the whole width of the column."""
        self._grid.addWidget(widget, self._grid.rowCount(), 0, 1, 2)
        return widget

    def add_buttons(self, *buttons: QPushButton) -> QWidget:
        """Buttons side by side, over the whole width; none is wider than it must be for that."""
        bar = QWidget(self)
        for one in buttons:
            one.setMinimumWidth(one.fontMetrics().horizontalAdvance(one.text()) + 2 * theme.RHYTHM)
        theme.row(*buttons, on=bar, gap=8, edges=(0, 4, 0, 4))
        self.add_wide(bar)
        return bar

    def add_alert(self) -> AlertLabel:
        """A place for errors that belong to no single field."""
        return self.add_wide(self._alert())

    def _alert(self) -> AlertLabel:
        self._alerts.append(AlertLabel(self))
        return self._alerts[-1]

    def clear_errors(self) -> None:
        """Take away what is said to be wrong, of every field and of none."""
        for alert in self._alerts:
            alert.say("")

    def end(self) -> None:
        """Keep the rows at the top of whatever room there is."""
        self._grid.setRowStretch(self._grid.rowCount(), 1)


def button(text: str, tip: str = "", *, act: Act | None = None) -> QPushButton:
    """A push button that is no dialog's default; ``act`` is what a press of it does."""
    made = QPushButton(text)
    made.setAutoDefault(False)
    made.setAccessibleName(text)
    return _wired(made, tip, act)


def link_button(text: str = "", tip: str = "", *, act: Act | None = None) -> QToolButton:
    """A quiet button in a line of words, told by the colour of links."""
    made = QuietButton(text, QPalette.ColorRole.Link, underlined=True)
    made.setCursor(Qt.CursorShape.PointingHandCursor)
    return _wired(made, tip, act)


def _wired(made: Pressed, tip: str, act: Act | None) -> Pressed:
    if tip:
        explain(made, tip)
    if act is not None:
        made.clicked.connect(act)
    return made


def show_ticks(box: QCheckBox, ticks: Collection[bool]) -> None:
    """Show a switch of several things: half on where they differ; a click then switches all on."""
    box.setTristate(len(set(ticks)) > 1)
    box.setCheckState(Qt.CheckState(1 if box.isTristate() else 2 * any(ticks)))


def in_tab_order(stops: Sequence[QWidget]) -> None:
    """Let the Tab key go through these in this order."""
    for before, after in pairwise(stops):
        QWidget.setTabOrder(before, after)


def fold_button(text: str, below: QWidget | None = None) -> QToolButton:
    """A quiet line that unfolds what stands below it."""
    made = QuietButton(text, QPalette.ColorRole.WindowText, arrow=True)
    made.setCheckable(True)
    if below is not None:
        below.hide()
        made.toggled.connect(below.setVisible)
    return made


_CHECKED = Qt.CheckState.Checked


class TickList(QListWidget):
    """A list of entries to tick; ``counted`` when a tick comes or goes."""

    counted = Signal()

    def __init__(self, name: str) -> None:
        super().__init__()
        self.keys: tuple[str, ...] = ()
        self.setAccessibleName(name)
        self.setSelectionMode(QAbstractItemView.SelectionMode.NoSelection)
        self.setFrameShape(QListWidget.Shape.NoFrame)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setTextElideMode(Qt.TextElideMode.ElideRight)
        self.itemChanged.connect(lambda _item: self.counted.emit())

    def offer(
        self, entries: Sequence[tuple[str, str, str]], ticked: Collection[str] | None = None
    ) -> None:
        """Offer entries (key, title, whole name), with these ticked, or those that were."""
        ticked = self.ticked() if ticked is None else ticked
        blocked = self.blockSignals(True)
        self.clear()
        self.keys = tuple(key for key, _, _ in entries)
        for key, title, name in entries:
            item = QListWidgetItem(title)
            item.setFlags(Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsUserCheckable)
            item.setCheckState(_CHECKED if key in ticked else Qt.CheckState.Unchecked)
            explain(item, name)
            self.addItem(item)
        self.blockSignals(blocked)
        self.counted.emit()

    def ticked(self) -> list[str]:
        """Keys of what is ticked."""
        return [key for row, key in enumerate(self.keys) if self.item(row).checkState() is _CHECKED]

    def tick(self, *keys: str) -> None:
        """Tick entries by key; without any, take all ticks away."""
        for row, key in enumerate(self.keys):
            if key in keys or not keys:
                self.item(row).setCheckState(_CHECKED if keys else Qt.CheckState.Unchecked)


class ProgressLine(QProgressBar):
    """A thin bar that never goes back."""

    def __init__(self, name: str) -> None:
        super().__init__()
        self.setRange(0, 100)
        self.setAccessibleName(name)
        self.setTextVisible(False)
        self.setFixedHeight(theme.RHYTHM)

    def reach(self, fraction: float) -> None:
        """So much is done."""
        self.setValue(max(self.value(), round(100 * fraction)))
