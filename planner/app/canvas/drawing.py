"""What plan view and elevation share: they follow the plan, have keys and menus, and say errors."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace

from PySide6.QtCore import QEvent, QPointF, QRectF, Qt, QTimer, Signal
from PySide6.QtGui import (
    QAction,
    QColor,
    QContextMenuEvent,
    QFocusEvent,
    QImage,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
)
from PySide6.QtWidgets import QMenu

from planner.app import theme
from planner.app.canvas import marks
from planner.app.canvas.hand import FREE_KEYS, Handed
from planner.app.canvas.ink import ARROWS, ZOOM_STEP, Ink, figure_font
from planner.app.canvas.items import Item, Part, item_title
from planner.app.canvas.plan_drags import Choice, Edit, removed
from planner.app.display import Display, SelectionModel
from planner.app.document import BESIDE_MS, TURN_MS, Document
from planner.app.plots.exported import Exported, drawn, painted
from planner.app.spoken import Told
from planner.plan.groups import can_be_chosen
from planner.plan.place import Place
from planner.plan.plan import Plan
from planner.plan.space import Point
from planner.reports.advice import LiningGain
from planner.units import in_unit

USUAL_HEIGHT_PX = 400.0
LEAST_DRAWN_PX = 24.0
MARGIN_TOP = 56.0
MARGIN_BOTTOM = 84.0
"""Room above and below, the same in both drawings, so that they stand on one line."""

LIGHT_WAIT_MS = 16
"""So long a drawing in hand waits for its light, to be painted once with both."""

_ZOOMS = {"+": ZOOM_STEP, "=": ZOOM_STEP, "-": 1 / ZOOM_STEP}
_ON_THINGS = ("duplicate", "cut", "copy")
_HERE = (
    ("add_lamp", "Hang a lamp here"),
    ("add_shelf", "Put a shelf here"),
    ("add_tray", "Put a tray here"),
    ("add_pot", "Put a pot here"),
    ("add_box", "Put a box here"),
    ("paste", "Paste here"),
)


class Drawing(Exported, Handed):
    """A drawing to scale that follows the plan and is edited by hand, keys and menus.

    ``outs`` are the keys of the actions by which it goes out as it is shown.
    ``fields_requested`` tells that the focus should go to the fields of what is selected,
    ``put_here`` what of the menu (key of an action) is to be put near a world point.
    """

    leads = False
    outs: tuple[str, ...] = ()
    fields_requested = Signal()
    put_here = Signal(str, object)

    def __init__(self, document: Document, selection: SelectionModel, display: Display) -> None:
        super().__init__(document, selection, display)
        self._gains: Sequence[LiningGain] = ()
        self._shared: Mapping[str, QAction] = {}
        self._arrange: QMenu | None = None
        self._by_key = False
        self._pointer: Point | None = None
        self._frame = QTimer(self, singleShot=True)
        self._frame.timeout.connect(self._on_frame)
        self._unsaid = False
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        document.changed.connect(self._on_plan)
        document.settled.connect(self._on_settled)
        selection.changed.connect(self._on_selection)
        display.changed.connect(self._on_display)

    # -- what a drawing must say --------------------------------------------------------

    def _follow_selection(self, selection: Place) -> None:
        """Focus the item of what is selected."""
        raise NotImplementedError

    def inner_area(self, side: float) -> QRectF:
        """The widget without its margins, which grow with the font above and below."""
        more = 3.0 * max(self.fontMetrics().height() - theme.USUAL_LINE_PX, 0)
        # In a low drawing the margins keep room for the figures and no more.
        part = min(max(self.height() / USUAL_HEIGHT_PX, 0.8), 1.0)
        area = QRectF(self.rect()).adjusted(
            side, part * (MARGIN_TOP + more / 2), -side, -part * (MARGIN_BOTTOM + more)
        )
        return area if area.height() > LEAST_DRAWN_PX else QRectF(self.rect())

    def items(self) -> tuple[Item, ...]:
        """What the Tab key steps through, in order: the one list of what the drawing holds."""
        raise NotImplementedError

    def figures_of(self, item: Item) -> str:
        """Where an item is, how high or how long, in the unit shown."""
        raise NotImplementedError

    def nudged(self, item: Item, by: Point) -> Edit | None:
        """An item moved by (dx, dy) metres, None if the plan has no part in it."""
        raise NotImplementedError

    def spot_of(self, item: Item) -> Point:
        """A world point on an item, for a menu called by a key."""
        raise NotImplementedError

    def choices_of(self, item: Item, at: Point) -> Sequence[Choice]:
        """The entries of the context menu that are edits of an item."""
        raise NotImplementedError

    def paint_drawing(self, painter: QPainter, ink: Ink) -> None:
        """Paint what goes out with it, too: everything but the ground and what tells the hand."""
        raise NotImplementedError

    def status(self) -> str:
        """The line under the drawing, while no notice stands there."""
        raise NotImplementedError

    def words(self) -> str:
        """What is drawn, in words, for those who do not see it."""
        raise NotImplementedError

    def key_on_item(self, key: Qt.Key) -> bool:
        """Keys of one drawing only; True when used."""
        raise NotImplementedError

    # -- state --------------------------------------------------------------------------

    @property
    def notice(self) -> str:
        """The sentence shown because an edit was refused or stopped short, or nothing."""
        return in_unit(self._notice, self.display.unit)

    def _on_plan(self, _old: Plan, plan: Plan) -> None:
        # First of all: whoever is told that a drag has ended may ask what is in hand.
        if self._focused is not None and not self._focused.fits(plan):
            self._focused = None
        if self._drag is not None and not self._applying:
            self._end_drag()  # undone or replaced under the hand
        if not self._applying:
            self._notice = ""
        self._refit_if_needed()
        self.follow()

    @property
    def is_looked_at(self) -> bool:
        """Whether this drawing is in hand; while a field is, the plan with its light."""
        hand = self.document.hand
        return hand is self or (hand is None and self.leads)

    def follow(self) -> None:
        """Show what has changed: at once, or in the course of a gesture with the next frame."""
        if not self.document.moving:
            self.tell()
            return
        self._unsaid = True
        if not self._frame.isActive():
            self._frame.start(LIGHT_WAIT_MS if self.is_looked_at else BESIDE_MS)

    def _on_frame(self) -> None:
        if self.document.take_turn(leads=self.is_looked_at):
            self.update()
        else:
            self._frame.start(TURN_MS)

    def _on_settled(self) -> None:
        if self._unsaid:
            self.tell()

    def follow_light(self) -> None:
        """Show new light: the drawing looked at at once, the one beside it with its next frame."""
        if self.is_looked_at and self.document.moving:
            self._frame.stop()
            self.document.take_turn(leads=True)
            self.update()
        else:
            self.follow()

    def set_gains(self, gains: Sequence[LiningGain]) -> None:
        """What each surface would bring, marked where the display asks for it."""
        if tuple(gains) != tuple(self._gains):
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

    def notice_ink(self, ink: Ink) -> QColor:
        """Colour of the notice: alarm where an edit was refused, plain where it was stopped."""
        return ink.alarm if self._refused else ink.ink

    # -- told to screen readers: the very items ------------------------------------------

    def parts(self) -> tuple[Item, ...]:
        return self.items()

    def told(self, part: Item) -> Told:
        plan, place = self.plan, part.place
        at = self.viewport.to_pixel(*self.spot_of(part))
        among = {self.selection.current.whole, *self.selection.chosen}
        chosen = place is not None and place.whole in among
        return Told(item_title(plan, part), self.figures_of(part), at, chosen=chosen)

    def part_at(self, pixel: QPointF) -> Item | None:
        item = self.item_at(pixel)
        whole = item if item.part is Part.BAND_EDGE else replace(item, band=0)
        return whole if whole in self.items() else None

    @property
    def part_in_hand(self) -> Item | None:
        return self.focused

    # -- menus --------------------------------------------------------------------------

    def share_actions(self, actions: Mapping[str, QAction], arrange: QMenu) -> None:
        """Offer the window's own steps in the context menus too."""
        self._shared, self._arrange = actions, arrange

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        by_key = event.reason() is QContextMenuEvent.Reason.Keyboard
        if self.dragging:
            return
        if by_key and self.focused is not None:
            item = self.focused
            pixel = self.viewport.to_pixel(*self.spot_of(item))
        else:
            pixel = QPointF(event.pos())
            item = self.item_at(pixel)
            self.choose(item)
        menu = self.menu_for(item, self.viewport.to_world(pixel))
        menu.popup(self.mapToGlobal(pixel.toPoint()))

    def menu_for(self, item: Item, at: Point) -> QMenu:
        """The context menu of an item; it deletes itself when closed."""
        menu = QMenu(self)
        menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)

        def add(text: str, act: Callable[..., object], *told: object) -> None:
            menu.addAction(text).triggered.connect(lambda _checked=False: act(*told))

        for choice in self.choices_of(item, at):
            add(choice.text, self.make, choice)
        if item.place is not None and can_be_chosen(item.place):
            menu.addActions([self._shared[key] for key in _ON_THINGS if key in self._shared])
            if self._arrange is not None and len(self.selection.chosen) > 1:
                # Its entry, not the menu: what is added as a menu goes with the one it is in.
                menu.addAction(self._arrange.menuAction())
        if self._shared and self.is_ground(item):
            for key, text in _HERE:
                add(text, self.put_here.emit, key, at)
        if not menu.isEmpty():
            menu.addSeparator()
        add("Stop measuring" if self.measuring else "Measure", self.measure, not self.measuring)
        add("Fit drawing", self.fit)
        if self._shared:
            menu.addSeparator()
            menu.addActions([self._shared[key] for key in self.outs])
        return menu

    def make(self, choice: Choice) -> None:
        """Carry out an entry of the context menu."""
        if self.attempt(choice.make):
            self.choose(choice.then)

    def remove_focused(self) -> bool:
        """Take away the item in hand with what is selected with it; False where it stays."""
        item = self.focused
        if item is None or item.part not in {Part.LAMP, Part.OBSTACLE, Part.CORNER}:
            return False
        plan, among = self.plan, self.together(item)
        self.make(Choice("", lambda: removed(plan, item, among) or Edit(plan, "")))
        return True

    # -- pointer ------------------------------------------------------------------------

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        super().mouseMoveEvent(event)
        self._pointer = self.viewport.to_world(event.position())
        if not self.dragging:
            self.update()

    def leaveEvent(self, event: QEvent) -> None:
        self._pointer = None
        self.update()
        super().leaveEvent(event)

    # -- keys ---------------------------------------------------------------------------

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if not self._key_pressed(event):
            super().keyPressEvent(event)

    def _key_pressed(self, event: QKeyEvent) -> bool:
        key = Qt.Key(event.key())
        if key == Qt.Key.Key_Escape:
            return self._escape()
        if self._drag is not None:
            return self._type(self._drag, event)
        if key == Qt.Key.Key_Space:
            self._space_held = True
        elif key in ARROWS and self._focused is not None:
            reach = self.display.unit.snap
            if event.modifiers() & Qt.KeyboardModifier.ShiftModifier:
                reach *= 10
            elif event.modifiers() & Qt.KeyboardModifier.ControlModifier:
                reach /= 10
            right, up = ARROWS[key]
            self._nudge(self._focused, (right * reach, up * reach))
        elif key in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            self.fields_requested.emit()
        elif key == Qt.Key.Key_Home or event.text() == "0":
            self.fit()
        elif event.text() in _ZOOMS:
            self.zoom(_ZOOMS[event.text()])
        elif key == Qt.Key.Key_M and not event.modifiers():
            self.measure(not self._measuring)
        else:
            return not event.modifiers() & FREE_KEYS and self.key_on_item(key)
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
        if self._measuring:
            self.measure(False)
            return True
        if self._focused is None and self.selection.current == Place():
            return False
        self.choose(None)
        return True

    def _nudge(self, item: Item, by: Point) -> None:
        """Move by keys; strokes in quick succession on one item make one undo step."""
        key = f"nudge {item.part} {item.index} {item.band} {len(self.together(item))}"
        if self.attempt(lambda: self.nudged(item, by), key):
            self._burst.start()

    def set_focused(self, item: Item | None) -> None:
        """Move the keys to another item; a running burst of strokes ends."""
        if item != self._focused:
            self.end_burst()
            self._focused = item
            self.tell()
            self.say_part()

    def focusNextPrevChild(self, forward: bool) -> bool:
        """Tab goes through the items first and leaves the drawing after the last.

        While the hand drags it goes to the next number that can be typed.
        """
        if self._drag is not None:
            self._typing.step(1 if forward else -1)
            self.update()
            return True
        items = self.items()
        if self._focused in items:
            place = items.index(self._focused) + (1 if forward else -1)
        else:
            place = 0 if forward else len(items) - 1
        if self.hasFocus() and 0 <= place < len(items):
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
        self.say_part()
        self.update()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        self.end_burst()
        self._space_held = False
        super().focusOutEvent(event)
        self.update()

    # -- painting -----------------------------------------------------------------------

    def paintEvent(self, _event: QPaintEvent) -> None:
        ink = Ink.of(self.palette())
        painter = QPainter(self)
        painter.fillRect(self.rect(), ink.paper)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        self._paint_shown(painter)
        self.paint_told(painter, ink)
        self.paint_hand(painter, ink)
        if self.hasFocus() and self._by_key:
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.setPen(ink.accent)
            painter.drawRect(QRectF(self.rect()).adjusted(0.5, 0.5, -0.5, -0.5))
        painter.end()

    def _paint_shown(self, painter: QPainter, _target: QRectF | None = None) -> None:
        painter.setFont(figure_font(self.font(), 0.92))
        self.paint_drawing(painter, Ink.of(self.palette()))

    def paint_told(self, painter: QPainter, ink: Ink) -> None:
        """Paint the line under the drawing."""
        edge, line = marks.EDGE_PX, marks.line_height(painter)
        foot = QRectF(edge, self.height() - edge - line, self.width() - 2 * edge, line + 4)
        colour = self.notice_ink(ink) if self.notice else ink.ink
        marks.paint_words(painter, self.room_at_foot(foot), foot, self.foot_words(), colour, ink)

    def foot_words(self) -> str:
        """The line under the drawing; while a hand drags, what it can type as well."""
        return self.notice or "; ".join(filter(None, (self.status(), self._typing.offer)))

    def room_at_foot(self, foot: QRectF) -> QRectF:
        """The part of the foot where nothing is drawn."""
        return foot

    # -- ways out -----------------------------------------------------------------------

    def called(self) -> str:
        return f"{self.plan.name} {self.accessibleName()}"

    def picture(self) -> QImage:
        return painted(self.size(), Ink.of(self.palette()).paper, self._paint_shown)

    def svg(self) -> bytes:
        names = self.accessibleName(), self.accessibleDescription()
        ground = Ink.of(self.palette()).paper
        return drawn(self.size(), ground, self._paint_shown, *names, cut=True)
