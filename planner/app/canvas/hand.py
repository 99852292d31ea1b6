"""The hand on a drawing: one gesture at a time, what it selects, drags, measures and types."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QEvent, QPointF, QRectF, Qt, QTimer, Signal
from PySide6.QtGui import QKeyEvent, QMouseEvent, QPainter

from planner.app.canvas import marks
from planner.app.canvas.ink import FittedWidget, Ink
from planner.app.canvas.items import Item
from planner.app.canvas.plan_drags import Edit, Hold
from planner.app.canvas.tools import BesideDrag, Drag, Span, Typing, measured
from planner.app.display import Display, SelectionModel
from planner.app.document import Document
from planner.plan.alignment import Guide
from planner.plan.groups import Chosen, can_be_chosen
from planner.plan.plan import Plan
from planner.plan.refusal import refusal
from planner.plan.space import Point

DRAG_START_PX = 3.0
GUIDE_PX = 6.0
"""Within so many pixels a lamp is drawn to what it lines up with."""

TAPE_PX = 8.0
BURST_MS = 1000
FREE_KEYS = Qt.KeyboardModifier.AltModifier | Qt.KeyboardModifier.ControlModifier


class Handed(FittedWidget):
    """A drawing of a plan under a hand.

    Every move of the hand sends a whole plan to the document; nothing of the plan is kept
    here. ``dragging_changed`` tells when a drag begins and ends, ``measuring_changed`` whether
    the hand measures.
    """

    dragging_changed = Signal(bool)
    measuring_changed = Signal(bool)

    def __init__(self, document: Document, selection: SelectionModel, display: Display) -> None:
        super().__init__()
        self.document, self.selection, self.display = document, selection, display
        self._focused: Item | None = None
        self._pressed: tuple[Item, QPointF] | None = None
        self._drag: Drag | None = None
        self._before: Plan | None = None
        self._drag_label = ""
        self._typing = Typing(())
        self._guides: tuple[Guide, ...] = ()
        self._hand = QPointF()
        self._band: Span | None = None
        self._tape: Span | None = None
        self._measuring = self._space_held = self._applying = False
        self._notice = ""
        self._refused = self._lasting = False
        self._burst = QTimer(self, singleShot=True, interval=BURST_MS)
        self._burst.timeout.connect(document.end_gesture)
        self.setMouseTracking(True)

    # -- what a drawing must say --------------------------------------------------------

    def item_at(self, pixel: QPointF) -> Item:
        """What lies under a pixel."""
        raise NotImplementedError

    def begin(self, item: Item, at: Point) -> Drag | None:
        """A drag of an item from a world point, or None where it does not move."""
        raise NotImplementedError

    def choose(self, item: Item | None) -> None:
        """Make an item the one keys act on, and select what belongs to it."""
        raise NotImplementedError

    def is_ground(self, item: Item) -> bool:
        """Whether a drag from there draws a rubber band."""
        raise NotImplementedError

    def within(self, band: Span) -> Chosen:
        """The lamps and obstacles between two corners of a rubber band."""
        raise NotImplementedError

    def caught(self, at: Point, reach: float) -> Point:
        """Where an end of the measuring line goes."""
        raise NotImplementedError

    def cursor_for(self, item: Item) -> Qt.CursorShape:
        """Shape of the pointer over an item."""
        raise NotImplementedError

    def follow(self) -> None:
        """Show what has changed: at once, or in the course of a gesture with the next frame."""
        raise NotImplementedError

    def tell(self) -> None:
        """Say anew what is drawn, and draw it."""
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

    def try_edit(self, edit: Edit | None, merge_key: str | None = None) -> bool:
        """Send an edit to the document; True when there was one."""
        if edit is None:
            return False
        self._notice, self._refused = edit.took or edit.stopped, False
        self._guides = edit.guides
        self._lasting = bool(edit.took)
        self._applying = True
        try:
            self.document.apply(edit.plan, edit.label, merge_key)
        finally:
            self._applying = False
        self.follow()
        return True

    def attempt(self, build: Callable[[], Edit | None], merge_key: str | None = None) -> bool:
        """Build an edit and send it; False where there is none, or a sentence said why not."""
        try:
            edit = build()
        except ValueError as error:
            self.say(refusal(error))
            return False
        return self.try_edit(edit, merge_key)

    def say(self, text: str, *, refused: bool = True) -> None:
        """Show a sentence on the drawing until the next edit; plainly where nothing is wrong."""
        self._notice, self._refused, self._lasting = text, refused, False
        self.update()

    # -- drag ---------------------------------------------------------------------------

    def hold(self, modifiers: Qt.KeyboardModifier) -> Hold:
        """How the hand holds, from the keys pressed with it."""
        fine = bool(modifiers & Qt.KeyboardModifier.ShiftModifier)
        if modifiers & FREE_KEYS:
            return Hold(None, fine)
        return Hold(self.display.unit.snap, fine, GUIDE_PX / self.viewport.scale)

    def together(self, item: Item | None) -> Chosen:
        """What an item takes along: itself, and what is selected with it."""
        place = None if item is None else item.place
        return () if place is None else self.selection.with_others(place.whole)

    def _begin_drag(self, item: Item, from_pixel: QPointF) -> None:
        at = self.viewport.to_world(from_pixel)
        if self._measuring:
            self._drag = self._tape_from(self.caught(at, TAPE_PX / self.viewport.scale))
        elif not item.fits(self.plan):
            self._drag = None  # taken away between press and drag
        elif self.is_ground(item):
            self._drag = BesideDrag(self.plan, lambda to, _hold: self._stretch((at, to)), _nothing)
        else:
            self._drag = self.begin(item, at)
        if self._drag is None:
            self._pressed = None
            return
        self._typing = Typing(self._drag.numbers)
        self._before = self.plan
        self.document.hand = self
        self.document.end_gesture()
        self.dragging_changed.emit(True)

    def _stretch(self, band: Span) -> None:
        self._band = band
        self.update()

    def _tape_from(self, start: Point) -> Drag:
        def show(to: Point, hold: Hold) -> None:
            free = hold.step is None
            end = to if free else self.caught(to, TAPE_PX / self.viewport.scale)
            self.set_tape((start, end))

        return BesideDrag(self.plan, show, lambda: self.set_tape(None))

    def _drag_to(self, drag: Drag, pixel: QPointF, modifiers: Qt.KeyboardModifier) -> bool:
        """Follow the hand and what is typed; False where that is refused."""
        at, typing = self.viewport.to_world(pixel), self._typing
        try:
            if typing.begun:
                edit = drag.typed(typing.values(self.display.unit), at)
            else:
                edit = drag.to(at, self.hold(modifiers))
        except ValueError as error:
            self.say(refusal(error))
            return False
        self._drag_label = edit.label
        self.try_edit(edit, "drag")
        return True

    def cancel_drag(self) -> None:
        """Put everything back to where the drag began; no undo step stays."""
        if self._drag is None or self._before is None:
            return
        if isinstance(self._drag, BesideDrag):
            self._drag.back()
        self._band = None
        self.try_edit(Edit(self._before, self._drag_label), "drag")
        self._lasting = False
        self._end_drag()

    def _end_drag(self) -> None:
        self._drag = self._before = self._pressed = None
        self._typing, self._guides = Typing(()), ()
        self.document.hand = None
        if not self._lasting:
            self._notice = ""
        self.document.end_gesture()
        self._refit_if_needed()
        self.dragging_changed.emit(False)
        self.update()

    def _refit_if_needed(self) -> None:
        """Fit again when the space outgrew the area or has become small in it."""
        if not self._fitted or self._drag is not None or self.width() < 10:
            return
        area, drawn = self.drawing_area(), self.viewport.to_rect(self.bounds())
        fills = max(drawn.width() / area.width(), drawn.height() / area.height())
        if not area.adjusted(-6, -6, 6, 6).contains(drawn) or fills < 0.7:
            self.fit()

    def end_burst(self) -> None:
        """End a run of strokes on one item: the next is a step of its own."""
        if self._burst.isActive():
            self._burst.stop()
            self.document.end_gesture()

    # -- numbers typed while dragging ---------------------------------------------------

    def _type(self, drag: Drag, event: QKeyEvent) -> bool:
        """A key while the hand drags: a number typed at the pointer."""
        typing = self._typing
        if event.key() in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            if self._drag_to(drag, self._hand, Qt.KeyboardModifier.NoModifier):
                self._end_drag()
            return True
        if event.key() == Qt.Key.Key_Backspace:
            typing.rub_out()
        elif not typing.take(event.text()):
            return True  # one hand at a time
        self._drag_to(drag, self._hand, Qt.KeyboardModifier.NoModifier)
        self.update()
        return True

    def event(self, event: QEvent) -> bool:
        # What is typed while the hand drags is a number, not a key of the menus.
        if (
            event.type() == QEvent.Type.ShortcutOverride
            and isinstance(event, QKeyEvent)
            and self._drag is not None
            and not event.modifiers() & FREE_KEYS
        ):
            event.accept()
            return True
        return super().event(event)

    # -- mouse --------------------------------------------------------------------------

    def mousePressEvent(self, event: QMouseEvent) -> None:
        self.end_burst()
        left = event.button() is Qt.MouseButton.LeftButton
        if event.button() is Qt.MouseButton.MiddleButton or (left and self._space_held):
            self._pan_from = event.position()
            self.setCursor(Qt.CursorShape.ClosedHandCursor)
        elif left:
            item = self.item_at(event.position())
            self._pressed = (item, event.position())
            place = item.place
            if self._measuring:
                return
            more = bool(event.modifiers() & Qt.KeyboardModifier.ShiftModifier)
            if more and place is not None and can_be_chosen(place):
                self.selection.toggle(place)
            elif not (more and self.is_ground(item)):
                self.choose(item)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        super().mouseMoveEvent(event)
        if self._pan_from is not None:
            return
        at = self._hand = event.position()
        if self._drag is None and self._pressed is not None:
            item, start = self._pressed
            if (at - start).manhattanLength() > DRAG_START_PX:
                self._begin_drag(item, start)
        if self._drag is not None:
            self._drag_to(self._drag, at, event.modifiers())
        elif event.buttons() == Qt.MouseButton.NoButton:
            cross = Qt.CursorShape.CrossCursor
            self.setCursor(cross if self._measuring else self.cursor_for(self.item_at(at)))

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        if self._pan_from is not None:
            self._pan_from = None
            self.unsetCursor()
        elif event.button() is Qt.MouseButton.LeftButton:
            pressed, self._pressed = self._pressed, None
            if self._band is not None:
                self._take_band(event.modifiers())
            if self._drag is not None:
                self._end_drag()
            elif pressed is not None and not event.modifiers() and not self._measuring:
                self._single_out(pressed[0])

    def _take_band(self, modifiers: Qt.KeyboardModifier) -> None:
        band, self._band = self._band, None
        found = () if band is None else self.within(band)
        if modifiers & Qt.KeyboardModifier.ShiftModifier:
            found = (*self.selection.chosen, *found)
        if found:
            self.selection.select_all(found)

    def _single_out(self, item: Item) -> None:
        """A click on one of several, without a drag, selects it alone."""
        place = item.place
        if place is not None and len(self.selection.chosen) > 1:
            self.selection.select(place.whole)

    # -- measuring ----------------------------------------------------------------------

    @property
    def measuring(self) -> bool:
        """Whether the hand draws a measuring line."""
        return self._measuring

    @property
    def tape(self) -> Span | None:
        """The ends of the measuring line in metres."""
        return self._tape

    def measure(self, on: bool) -> None:
        """Begin to measure, or put the measuring line away."""
        if on != self._measuring:
            self._measuring = on
            self.set_tape(None)
            self.unsetCursor()
            self.measuring_changed.emit(on)

    def set_tape(self, tape: Span | None) -> None:
        """Lay the measuring line between two points, or take it up."""
        self._tape = tape
        self.tell()

    def measure_words(self) -> str:
        """What the measuring line says, or how to use it; empty while nobody measures."""
        if not self._measuring:
            return ""
        if self._tape is None:
            return "Measuring: drag from one point to another; Esc ends it."
        return f"Measured: {measured(self._tape, self.display.unit)}"

    # -- painting -----------------------------------------------------------------------

    def paint_hand(self, painter: QPainter, ink: Ink) -> None:
        """What the hand holds: guides, rubber band, measuring line, numbers at the pointer."""
        viewport, unit = self.viewport, self.display.unit
        marks.paint_guides(painter, self._guides, viewport, ink, unit)
        if self._band is not None:
            marks.paint_band(painter, self._band, viewport, ink)
        if self._tape is not None:
            marks.paint_tape(painter, self._tape, measured(self._tape, unit), viewport, ink)
        if self._drag is not None:
            lines = self._typing.lines(self.plan, unit)
            marks.paint_numbers(painter, self._hand, lines, QRectF(self.rect()), ink)


def _nothing() -> None:
    """What is to be put back when a rubber band is let go."""
