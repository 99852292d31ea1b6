"""What plan view and elevation share: one gesture at a time, keys, zoom, and a word on errors."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Protocol

from PySide6.QtCore import QPointF, QRectF, Qt, QTimer, Signal
from PySide6.QtGui import (
    QColor,
    QFocusEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QWheelEvent,
)
from PySide6.QtWidgets import QWidget

from planner.app.canvas.ink import Bounds, FittedWidget, Ink, Viewport, figure_font
from planner.app.canvas.items import Item
from planner.app.canvas.plan_drags import Edit, Hold
from planner.app.display import Display, SelectionModel
from planner.app.document import BESIDE_MS, Document
from planner.plan.place import Place
from planner.plan.plan import Plan
from planner.plan.refusal import refusal
from planner.plan.space import Point
from planner.reports.advice import LiningGain
from planner.units import in_unit

USUAL_LINE_PX = 17
USUAL_HEIGHT_PX = 400.0
LEAST_DRAWN_PX = 24.0
MARGIN_TOP = 56.0
MARGIN_BOTTOM = 84.0
"""Room above and below, the same in both drawings, so that they stand on one line."""

LIGHT_WAIT_MS = 16
"""So long a drawing in hand waits for its light, to be painted once with both."""

DRAG_START_PX = 3.0
BURST_MS = 1000
_FREE_KEYS = Qt.KeyboardModifier.AltModifier | Qt.KeyboardModifier.ControlModifier
_ARROWS = {
    Qt.Key.Key_Left: (-1, 0),
    Qt.Key.Key_Right: (1, 0),
    Qt.Key.Key_Up: (0, 1),
    Qt.Key.Key_Down: (0, -1),
}


class Drag(Protocol):
    """A running drag: says which plan a place of the hand means."""

    def to(self, at: Point, hold: Hold) -> Edit:
        """The edit for a world point; raises ValueError where it cannot be built."""
        ...


class Drawing(FittedWidget):
    """A drawing to scale that is edited by hand.

    Every move of the hand sends a whole plan to the document; nothing of the plan is kept
    here. ``dragging_changed`` tells when a drag begins and ends, ``fields_requested``
    that the focus should go to the fields of what is selected.
    """

    dragging_changed = Signal(bool)
    fields_requested = Signal()

    def __init__(
        self,
        document: Document,
        selection: SelectionModel,
        display: Display,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self.document, self.selection, self.display = document, selection, display
        self.viewport = Viewport()
        self._gains: Sequence[LiningGain] = ()
        self._focused: Item | None = None
        self._pressed: tuple[Item, QPointF] | None = None
        self._drag: Drag | None = None
        self._before: Plan | None = None
        self._drag_label = ""
        self._pan_from: QPointF | None = None
        self._space_held = False
        self._by_key = False
        self._applying = False
        self._notice = ""
        self._refused = self._lasting = False
        self._burst = QTimer(self)
        self._burst.setSingleShot(True)
        self._burst.setInterval(BURST_MS)
        self._burst.timeout.connect(document.end_gesture)
        self._frame = QTimer(self, singleShot=True)
        self._frame.timeout.connect(self.update)
        self._unsaid = False
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMouseTracking(True)
        document.changed.connect(self._on_plan)
        document.settled.connect(self._on_settled)
        selection.changed.connect(self._on_selection)
        display.changed.connect(self._on_display)

    # -- what a drawing must say --------------------------------------------------------

    def _follow_selection(self, selection: Place) -> None:
        """Focus the item of what is selected."""
        raise NotImplementedError

    def bounds(self) -> Bounds:
        """World rectangle that ``fit`` shows."""
        raise NotImplementedError

    def drawing_area(self) -> QRectF:
        """Pixel rectangle ``fit`` fills."""
        raise NotImplementedError

    def inner_area(self, side: float) -> QRectF:
        """The widget without its margins, which grow with the font above and below."""
        more = 3.0 * max(self.fontMetrics().height() - USUAL_LINE_PX, 0)
        # In a low drawing the margins keep room for the figures and no more.
        part = min(max(self.height() / USUAL_HEIGHT_PX, 0.65), 1.0)
        area = QRectF(self.rect()).adjusted(
            side, part * (MARGIN_TOP + more / 2), -side, -part * (MARGIN_BOTTOM + more)
        )
        return area if area.height() > LEAST_DRAWN_PX else QRectF(self.rect())

    def item_at(self, pixel: QPointF) -> Item:
        """What lies under a pixel."""
        raise NotImplementedError

    def items(self) -> tuple[Item, ...]:
        """What the Tab key steps through, in order."""
        raise NotImplementedError

    def begin(self, item: Item, at: Point) -> Drag | None:
        """A drag of an item from a world point, or None where it does not move."""
        raise NotImplementedError

    def nudged(self, item: Item, by: Point) -> Edit | None:
        """An item moved by (dx, dy) metres, None if the plan has no part in it."""
        raise NotImplementedError

    def choose(self, item: Item | None) -> None:
        """Make an item the one keys act on, and select what belongs to it."""
        raise NotImplementedError

    def paint_drawing(self, painter: QPainter, ink: Ink) -> None:
        """Paint everything but the ground."""
        raise NotImplementedError

    def words(self) -> str:
        """What is drawn, in words, for those who do not see it."""
        raise NotImplementedError

    def cursor_for(self, item: Item) -> Qt.CursorShape:
        """Shape of the pointer over an item."""
        raise NotImplementedError

    def key_on_item(self, key: Qt.Key) -> bool:
        """Keys of one drawing only; True when used."""
        raise NotImplementedError

    # -- state --------------------------------------------------------------------------

    @property
    def plan(self) -> Plan:
        """The plan as it stands."""
        return self.document.plan

    @property
    def focused(self) -> Item | None:
        """The item keys act on."""
        return self._focused

    @property
    def dragging(self) -> bool:
        """Whether a drag is under way."""
        return self._drag is not None

    @property
    def notice(self) -> str:
        """The sentence shown because an edit was refused or stopped short, or nothing."""
        return in_unit(self._notice, self.display.unit)

    def fit(self) -> None:
        self._fitted = True
        self.viewport = Viewport.fitted(self.bounds(), self.drawing_area())
        self.update()

    def _on_plan(self, _old: Plan, plan: Plan) -> None:
        if self._drag is not None and not self._applying:
            self._end_drag()  # undone or replaced under the hand
        if not self._applying:
            self._notice = ""
        if self._focused is not None and not self._focused.fits(plan):
            self._focused = None
        self._refit_if_needed()
        self.follow()

    def follow(self) -> None:
        """Show what has changed: at once, or in the course of a gesture with the next frame."""
        if not self.document.moving:
            self.tell()
            return
        self._unsaid = True
        if not self._frame.isActive():
            self._frame.start(LIGHT_WAIT_MS if self.dragging else BESIDE_MS)

    def _on_settled(self) -> None:
        if self._unsaid:
            self.tell()

    def follow_light(self) -> None:
        """Show new light: the drawing in hand at once, the one beside it with its next frame."""
        if self.dragging:
            self._frame.stop()
            self.update()
        else:
            self.follow()

    def set_gains(self, gains: Sequence[LiningGain]) -> None:
        """What each surface would bring, marked where the display asks for it."""
        self._gains = gains
        self.update()

    def _on_selection(self, selection: Place) -> None:
        self._follow_selection(selection)
        self.update()

    def _on_display(self, _state: object) -> None:
        self.tell()

    def tell(self) -> None:
        """Say anew what is drawn, and draw it."""
        self._unsaid = False
        self.setAccessibleDescription(self.words())
        self.update()

    def _refit_if_needed(self) -> None:
        """Fit again when the space outgrew the area or has become small in it."""
        if not self._fitted or self._drag is not None or self.width() < 10:
            return
        area, drawn = self.drawing_area(), self.viewport.to_rect(self.bounds())
        fills = max(drawn.width() / area.width(), drawn.height() / area.height())
        if not area.adjusted(-6, -6, 6, 6).contains(drawn) or fills < 0.7:
            self.viewport = Viewport.fitted(self.bounds(), area)

    def try_edit(self, edit: Edit | None, merge_key: str | None = None) -> bool:
        """Send an edit to the document; True when there was one."""
        if edit is None:
            return False
        self._notice, self._refused = edit.took or edit.stopped, False
        self._lasting = bool(edit.took)
        self._applying = True
        try:
            self.document.apply(edit.plan, edit.label, merge_key)
        finally:
            self._applying = False
        self.follow()
        return True

    def say(self, text: str) -> None:
        """Show a sentence on the drawing until the next edit."""
        self._notice, self._refused, self._lasting = text, True, False
        self.update()

    def notice_ink(self, ink: Ink) -> QColor:
        """Colour of the notice: alarm where an edit was refused, plain where it was stopped."""
        return ink.alarm if self._refused else ink.ink

    # -- drag ---------------------------------------------------------------------------

    def hold(self, modifiers: Qt.KeyboardModifier) -> Hold:
        """How the hand holds, from the keys pressed with it."""
        step = None if modifiers & _FREE_KEYS else self.display.unit.snap
        return Hold(step, fine=bool(modifiers & Qt.KeyboardModifier.ShiftModifier))

    def _begin_drag(self, item: Item, from_pixel: QPointF) -> None:
        self._drag = self.begin(item, self.viewport.to_world(from_pixel))
        if self._drag is None:
            self._pressed = None
            return
        self._before = self.plan
        self.document.end_gesture()
        self.dragging_changed.emit(True)

    def _drag_to(self, drag: Drag, pixel: QPointF, modifiers: Qt.KeyboardModifier) -> None:
        try:
            edit = drag.to(self.viewport.to_world(pixel), self.hold(modifiers))
        except ValueError as error:
            self.say(refusal(error))
            return
        self._drag_label = edit.label
        self.try_edit(edit, "drag")

    def cancel_drag(self) -> None:
        """Put everything back to where the drag began; no undo step stays."""
        if self._drag is None or self._before is None:
            return
        self.try_edit(Edit(self._before, self._drag_label), "drag")
        self._lasting = False
        self._end_drag()

    def _end_drag(self) -> None:
        self._drag = self._before = self._pressed = None
        if not self._lasting:
            self._notice = ""
        self.document.end_gesture()
        self._refit_if_needed()
        self.dragging_changed.emit(False)
        self.update()

    # -- mouse --------------------------------------------------------------------------

    def mousePressEvent(self, event: QMouseEvent) -> None:
        self._end_burst()
        middle = event.button() is Qt.MouseButton.MiddleButton
        if middle or (event.button() is Qt.MouseButton.LeftButton and self._space_held):
            self._pan_from = event.position()
            self.setCursor(Qt.CursorShape.ClosedHandCursor)
        elif event.button() is Qt.MouseButton.LeftButton:
            item = self.item_at(event.position())
            self._pressed = (item, event.position())
            self.choose(item)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        at = event.position()
        if self._pan_from is not None:
            self._fitted = False
            self.viewport = self.viewport.panned(at - self._pan_from)
            self._pan_from = at
            self.update()
            return
        if self._drag is None and self._pressed is not None:
            item, start = self._pressed
            if (at - start).manhattanLength() > DRAG_START_PX:
                self._begin_drag(item, start)
        if self._drag is not None:
            self._drag_to(self._drag, at, event.modifiers())
        elif event.buttons() == Qt.MouseButton.NoButton:
            self.setCursor(self.cursor_for(self.item_at(at)))

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        if self._pan_from is not None:
            self._pan_from = None
            self.unsetCursor()
        elif event.button() is Qt.MouseButton.LeftButton:
            self._pressed = None
            if self._drag is not None:
                self._end_drag()

    def wheelEvent(self, event: QWheelEvent) -> None:
        if self._drag is None and event.angleDelta().y():
            self._fitted = False
            factor = 1.0015 ** event.angleDelta().y()
            self.viewport = self.viewport.zoomed(factor, event.position())
            self.update()
        event.accept()

    # -- keys ---------------------------------------------------------------------------

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if not self._key_pressed(event):
            super().keyPressEvent(event)

    def _key_pressed(self, event: QKeyEvent) -> bool:
        key = Qt.Key(event.key())
        if key == Qt.Key.Key_Escape:
            return self._escape()
        if key == Qt.Key.Key_Space:
            self._space_held = True
        elif self._drag is not None:
            pass  # one hand at a time
        elif key in _ARROWS and self._focused is not None:
            reach = self.display.unit.snap
            if event.modifiers() & Qt.KeyboardModifier.ShiftModifier:
                reach *= 10
            elif event.modifiers() & Qt.KeyboardModifier.ControlModifier:
                reach /= 10
            right, up = _ARROWS[key]
            self._nudge(self._focused, (right * reach, up * reach))
        elif key in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            self.fields_requested.emit()
        elif key == Qt.Key.Key_Home:
            self.fit()
        else:
            return not event.modifiers() & _FREE_KEYS and self.key_on_item(key)
        return True

    def keyReleaseEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Space and not event.isAutoRepeat():
            self._space_held = False
        else:
            super().keyReleaseEvent(event)

    def _escape(self) -> bool:
        if self._drag is not None:
            self.cancel_drag()
            return True
        if self._focused is None and self.selection.current == Place():
            return False
        self.choose(None)
        return True

    def _nudge(self, item: Item, by: Point) -> None:
        """Move by keys; strokes in quick succession on one item make one undo step."""
        try:
            edit = self.nudged(item, by)
        except ValueError as error:
            self.say(refusal(error))
            return
        if self.try_edit(edit, f"nudge {item.part} {item.index} {item.band}"):
            self._burst.start()

    def _end_burst(self) -> None:
        if self._burst.isActive():
            self._burst.stop()
            self.document.end_gesture()

    def set_focused(self, item: Item | None) -> None:
        """Move the keys to another item; a running burst of strokes ends."""
        if item != self._focused:
            self._end_burst()
            self._focused = item
            self.tell()

    def focusNextPrevChild(self, forward: bool) -> bool:
        """Tab goes through the items first and leaves the drawing after the last."""
        items = self.items()
        if self._focused in items:
            place = items.index(self._focused) + (1 if forward else -1)
        else:
            place = 0 if forward else len(items) - 1
        if self._drag is None and self.hasFocus() and 0 <= place < len(items):
            self.choose(items[place])
            return True
        return super().focusNextPrevChild(forward)

    def focusInEvent(self, event: QFocusEvent) -> None:
        items = self.items()
        by_tab = event.reason() is Qt.FocusReason.TabFocusReason
        by_backtab = event.reason() is Qt.FocusReason.BacktabFocusReason
        if items and self._focused is None and (by_tab or by_backtab):
            self.choose(items[0] if by_tab else items[-1])
        self._by_key = by_tab or by_backtab or event.reason() is Qt.FocusReason.ShortcutFocusReason
        super().focusInEvent(event)
        self.update()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        self._end_burst()
        self._space_held = False
        super().focusOutEvent(event)
        self.update()

    # -- painting -----------------------------------------------------------------------

    def paintEvent(self, _event: QPaintEvent) -> None:
        ink = Ink.of(self.palette())
        painter = QPainter(self)
        painter.fillRect(self.rect(), ink.paper)
        painter.setFont(figure_font(self.font(), 0.92))
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        self.paint_drawing(painter, ink)
        if self.hasFocus() and self._by_key:
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.setPen(ink.accent)
            painter.drawRect(QRectF(self.rect()).adjusted(0.5, 0.5, -0.5, -0.5))
        painter.end()
