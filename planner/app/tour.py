"""A short tour: a few steps in place, each a frame around a part of the window and one sentence."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from PySide6.QtCore import QPoint, QRect, QRectF, QSize, Qt, QTimer, Slot
from PySide6.QtGui import QKeySequence, QPainter, QPaintEvent, QPen, QShortcut
from PySide6.QtWidgets import QFrame, QWidget

from planner.app import theme
from planner.app.fields.form import button
from planner.app.plain import PlainLabel
from planner.plan.place import Place, PlaceKind

if TYPE_CHECKING:
    from planner.app.main_window import MainWindow

WIDTH: Final = 42 * theme.RHYTHM
"""Of the note: some ten words a line, and narrower than any part it could hide whole."""

FOLLOW_MS: Final = 150


@dataclass(frozen=True)
class Step:
    """What is shown, in one sentence; ``selected`` is chosen on the sketch, else the space."""

    title: str
    sentence: str
    shown: Callable[[MainWindow], QWidget]
    selected: Place | None = None


STEPS: Final = (
    Step(
        "Size",
        "Type your space's inside width, depth and height here, or drag its walls and corners in "
        "the drawing.",
        lambda window: window.page.column,
    ),
    Step(
        "Lamp",
        "Drag a lamp to its place here and to its height in the side view; the key L hangs "
        "one more.",
        lambda window: window.page.plan_view,
        Place(PlaceKind.LAMP),
    ),
    Step(
        "Lining",
        "Click a wall and choose here what it is lined with; the list says what each would bring.",
        lambda window: window.page.column,
        Place(PlaceKind.WALL, 1),
    ),
    Step(
        "Figures",
        "Read here how much light falls on the canopy and how even it is, with what is not known "
        "of it; a click on a figure tells what it is.",
        lambda window: window.page.strip,
    ),
    Step(
        "Side by side",
        "Keep the sketch as an option with Ctrl+K, and weigh options against each other on this "
        "page.",
        lambda window: window.page_bar.buttons["side"],
    ),
    Step(
        "Survey",
        "When it is built, print a board with holes, read your meter at each of them, and see on "
        "this page whether the light is as planned.",
        lambda window: window.page_bar.buttons["survey"],
    ),
)


class _Frame(QWidget):
    """A frame in the accent around what is shown; the hand reaches through it."""

    def __init__(self, window: QWidget) -> None:
        super().__init__(window)
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self.hide()

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(QPen(self.palette().color(self.palette().ColorRole.Accent), 3))
        painter.drawRoundedRect(QRectF(self.rect()).adjusted(2, 2, -2, -2), 4, 4)


class Tour(QFrame):
    """The note that leads from step to step; Esc, or its button, leaves at any time.

    It asks for nothing and changes nothing of the plan; everything can be used meanwhile.
    """

    def __init__(self, window: MainWindow) -> None:
        super().__init__(window)
        self._window = window
        self.at = 0
        self._frame = _Frame(window)
        self.title, self.sentence = PlainLabel(), PlainLabel()
        self.title.setFont(theme.sized(self.title.font(), 1.0, bold=True))
        self.sentence.setWordWrap(True)
        self.back_button = button("Back", act=lambda: self._go(self.at - 1))
        self.next_button = button("Next", act=lambda: self._go(self.at + 1))
        self.leave_button = button("Leave the tour", "Esc does the same.", act=self.leave)
        self._arrange()
        self._esc = QShortcut(QKeySequence(Qt.Key.Key_Escape), window, self.leave)
        self._esc.setEnabled(False)
        # A part moves when the window does, a fold opens or another page comes: no one event says.
        self._follow = QTimer(self, interval=FOLLOW_MS)
        self._follow.timeout.connect(self._place)
        self.hide()

    def _arrange(self) -> None:
        self.setFrameStyle(QFrame.Shape.Box | QFrame.Shadow.Plain)
        self.setAutoFillBackground(True)
        self.setBackgroundRole(self.palette().ColorRole.Base)
        self.setFixedWidth(WIDTH)
        buttons = theme.row(
            self.leave_button, theme.REST, self.back_button, self.next_button, gap=theme.RHYTHM
        )
        theme.column(
            self.title, self.sentence, buttons, on=self, gap=theme.RHYTHM, edges=theme.WIDE
        )

    @Slot()
    def begin(self) -> None:
        """Start at the first step, on the sketch."""
        self._window.settings.keep(tour_seen=True)
        self._window.page.welcome.hide()
        self._follow.start()
        self._esc.setEnabled(True)
        self._go(0)

    @Slot()
    def leave(self) -> None:
        """Put the tour away; the keyboard goes back to the drawing."""
        self._esc.setEnabled(False)
        self._follow.stop()
        had = self.isAncestorOf(self._window.focusWidget())
        self.hide()
        self._frame.hide()
        if had and self._window.pages.current == "sketch":
            self._window.page.plan_view.setFocus()

    def _go(self, to: int) -> None:
        if to >= len(STEPS):
            self.leave()
            return
        self.at = to
        self._window.pages.go("sketch")
        step = STEPS[to]
        selected = step.selected or Place()
        if selected.fits(self._window.document.plan):
            self._window.selection.select(selected)
        place = f"{to + 1} of {len(STEPS)}"
        self.title.setText(f"{step.title}  ·  {place}")
        self.sentence.setText(step.sentence)
        self.setAccessibleName(f"Tour, {place}: {step.title}")
        self.next_button.setText("Next" if to + 1 < len(STEPS) else "Done")
        self.next_button.setAccessibleName(f"{self.next_button.text()}; {place}: {step.title}")
        # The keyboard comes to this button: what the step says is read out with it.
        self.next_button.setAccessibleDescription(step.sentence)
        self.back_button.setEnabled(to > 0)
        self.show()
        self._place()
        self.next_button.setFocus(Qt.FocusReason.OtherFocusReason)

    def _place(self) -> None:
        """Lay the frame around what is shown, and the note beside it where there is most room."""
        shown, whole = STEPS[self.at].shown(self._window), self._window.rect()
        there = QRect(shown.mapTo(self._window, QPoint(0, 0)), shown.size())
        self._frame.setVisible(shown.isVisible())
        self._frame.setGeometry(there.adjusted(-4, -4, 4, 4) & whole)
        self.adjustSize()
        self.move(_beside(there, self.size(), whole))
        self._frame.raise_()
        self.raise_()


def _beside(there: QRect, size: QSize, whole: QRect) -> QPoint:
    """Upper left corner of a note of this size beside a part of the window, inside the whole."""
    gap = theme.RHYTHM
    x = there.center().x() - size.width() // 2
    y = there.center().y() - size.height() // 2
    below, above = QPoint(x, there.bottom() + gap), QPoint(x, there.top() - gap - size.height())
    left, right = QPoint(there.left() - gap - size.width(), y), QPoint(there.right() + gap, y)
    lowest = QPoint(whole.right() - size.width() - gap, whole.bottom() - size.height() - gap)
    for corner in (below, left, right, above):
        held = QPoint(min(max(corner.x(), gap), lowest.x()), min(max(corner.y(), gap), lowest.y()))
        if not QRect(held, size).intersects(there):
            return held
    # What is shown fills the window: its lower edge is the part least needed.
    return QPoint(min(max(x, gap), lowest.x()), min(there.bottom() - size.height(), lowest.y()))
