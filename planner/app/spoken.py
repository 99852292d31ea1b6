"""What a screen reader finds inside a drawing: its parts, as children with names of their own.

A drawing is painted, so to Qt it is one empty surface. Here its parts (the very list its keys go
through) become children of it for programs that read the screen: each with a name, a value, a
place on the screen, and a word when the keys come to it.
"""

from __future__ import annotations

import weakref
from collections.abc import Hashable, Sequence
from dataclasses import dataclass
from typing import Any, Final

import shiboken6
from PySide6.QtCore import QObject, QPoint, QPointF, QRect, QRectF, QTimer
from PySide6.QtGui import QAccessible, QAccessibleEvent, QAccessibleInterface
from PySide6.QtWidgets import QAccessibleWidget, QWidget

_Role = QAccessible.Role
_Text = QAccessible.Text
REACH_PX: Final = 8.0
"""Half the side of the square that stands for a part without an extent."""


@dataclass(frozen=True)
class Told:
    """What is told of one part: name, value, a further word, its middle in pixels of the drawing.

    ``chosen`` where it is among what is selected.
    """

    name: str
    value: str
    at: QPointF
    about: str = ""
    chosen: bool = False


class Spoken(QWidget):
    """A widget whose painted parts are told to screen readers."""

    _to_say = False

    def parts(self) -> Sequence[Any]:
        """The parts, in the order the keys go through them."""
        raise NotImplementedError

    def told(self, part: Any) -> Told:
        """What is told of a part."""
        raise NotImplementedError

    def part_at(self, pixel: QPointF) -> Any | None:
        """The part under a pixel, None where there is none."""
        raise NotImplementedError

    @property
    def part_in_hand(self) -> Any | None:
        """The part the keys act on."""
        raise NotImplementedError

    def say_part(self) -> None:
        """Tell which part has the keys now; nothing where nobody listens."""
        if QAccessible.isActive() and self.hasFocus() and not self._to_say:
            self._to_say = True
            # Qt tells of the widget itself right after the focus came: this is the last word.
            QTimer.singleShot(0, self, self._say_part)

    def _say_part(self) -> None:
        self._to_say = False
        part = self.part_in_hand
        if self.hasFocus() and part is not None and part in self.parts():
            announce(QAccessibleEvent(stand_in(self, part), QAccessible.Event.Focus))


class SpokenList(QWidget):
    """A widget whose child widgets are told as the entries of a list."""


class Listed(QWidget):
    """An entry of such a list, painted by itself: its value, and whether it is the chosen one."""

    chosen = False

    def told_value(self) -> str:
        """What it shows, in a few words."""
        raise NotImplementedError


class _StandIn(QObject):
    """Stands for a part: Qt gives and ends what is read of it with this object.

    An interface without an object of its own is not followed by Qt, and would be freed twice.
    What is made for Qt here is never let go by Python, so it holds everything weakly.
    """

    def __init__(self, drawing: Spoken, part: Hashable) -> None:
        super().__init__(drawing)
        self._drawing, self.part = weakref.ref(drawing), part

    def there(self) -> Spoken | None:
        """The drawing, while it has the part."""
        drawing = self._drawing()
        if drawing is None or not shiboken6.isValid(drawing) or not shiboken6.isValid(self):
            return None
        return drawing if self.part in drawing.parts() else None


def stand_in(drawing: Spoken, part: Hashable) -> QObject:
    """The object that stands for a part; made once for as long as the drawing lives."""
    known: dict[Hashable, _StandIn] = drawing.__dict__.setdefault("_stand_ins", {})
    if part not in known:
        known[part] = _StandIn(drawing, part)
    return known[part]


def announce(event: QAccessibleEvent) -> None:
    """Hand an event to whoever reads the screen."""
    QAccessible.updateAccessibility(event)


class _PartRead(QAccessibleInterface):
    """A part of a drawing as it is read."""

    def __init__(self, stands: _StandIn) -> None:
        super().__init__()
        self._stands = weakref.ref(stands)

    def _told(self) -> tuple[Spoken, Told] | None:
        stands = self._stands()
        drawing = None if stands is None else stands.there()
        if stands is None or drawing is None:
            return None
        return drawing, drawing.told(stands.part)

    def isValid(self) -> bool:
        return self._told() is not None

    def object(self) -> Any:
        return self._stands()

    def window(self) -> Any:
        found = self._told()
        return None if found is None else found[0].window().windowHandle()

    def role(self) -> _Role:
        return _Role.ListItem

    def state(self) -> QAccessible.State:
        found, stands = self._told(), self._stands()
        if found is None or stands is None:
            return _state(QAccessible.State(), invalid=True)
        drawing, told = found
        return _state(
            QAccessible.State(),
            focusable=True,
            selectable=True,
            selected=told.chosen,
            focused=drawing.part_in_hand == stands.part and drawing.hasFocus(),
            invisible=not drawing.isVisible(),
        )

    def text(self, kind: _Text) -> str:
        found = self._told()
        if found is None:
            return ""
        told = found[1]
        if kind == _Text.Name:
            return ", ".join(filter(None, (told.name, told.value)))
        return {_Text.Value: told.value, _Text.Description: told.about}.get(kind, "")

    def setText(self, _kind: _Text, _text: str) -> None:
        """Nothing is written this way: the fields are for that."""

    def rect(self) -> QRect:
        found = self._told()
        if found is None:
            return QRect()
        drawing, told = found
        around = QRectF(-REACH_PX, -REACH_PX, 2 * REACH_PX, 2 * REACH_PX)
        here = around.translated(told.at).toRect()
        return QRect(drawing.mapToGlobal(here.topLeft()), here.size())

    def parent(self) -> Any:
        found = self._told()
        return None if found is None else QAccessible.queryAccessibleInterface(found[0])

    def child(self, _index: int) -> Any:
        return None

    def childCount(self) -> int:
        return 0

    def childAt(self, _x: int, _y: int) -> Any:
        return None

    def indexOfChild(self, _child: QAccessibleInterface) -> int:
        return -1


class _DrawingRead(QAccessibleWidget):
    """A drawing as it is read: its parts first, then the buttons that lie on it."""

    def __init__(self, drawing: Spoken) -> None:
        super().__init__(drawing, _Role.List)
        self._drawing = weakref.ref(drawing)

    def _parts(self) -> Sequence[Any]:
        drawing = self._drawing()
        return () if drawing is None else drawing.parts()

    def _read(self, part: Hashable | None) -> Any:
        drawing = self._drawing()
        if drawing is None or part is None or part not in drawing.parts():
            return None
        return QAccessible.queryAccessibleInterface(stand_in(drawing, part))

    def childCount(self) -> int:
        return len(self._parts()) + super().childCount()

    def child(self, index: int) -> Any:
        parts = self._parts()
        inside = 0 <= index < len(parts)
        return self._read(parts[index]) if inside else super().child(index - len(parts))

    def indexOfChild(self, child: QAccessibleInterface) -> int:
        parts, found = self._parts(), child.object()
        if isinstance(found, _StandIn):
            return parts.index(found.part) if found.part in parts else -1
        index = super().indexOfChild(child)
        return index + len(parts) if index >= 0 else -1

    def childAt(self, x: int, y: int) -> Any:
        above, drawing = super().childAt(x, y), self._drawing()
        if above is not None or drawing is None:
            return above
        return self._read(drawing.part_at(QPointF(drawing.mapFromGlobal(QPoint(x, y)))))

    def focusChild(self) -> Any:
        drawing = self._drawing()
        if drawing is None or not drawing.hasFocus():
            return super().focusChild()
        return self._read(drawing.part_in_hand) or super().focusChild()


class _ListedRead(QAccessibleWidget):
    """An entry of a list as it is read."""

    def __init__(self, entry: Listed) -> None:
        super().__init__(entry, _Role.ListItem)
        self._entry = weakref.ref(entry)

    def state(self) -> QAccessible.State:
        entry = self._entry()
        chosen = entry is not None and entry.chosen
        return _state(super().state(), selectable=True, selected=chosen)

    def text(self, kind: _Text) -> str:
        entry = self._entry()
        if kind == _Text.Value and entry is not None:
            return entry.told_value()
        return super().text(kind)


def _state(state: QAccessible.State, **flags: bool) -> QAccessible.State:
    for name, on in flags.items():
        setattr(state, name, on)
    return state


def _made(_kind: str, what: QObject | None) -> Any:
    if isinstance(what, _StandIn):
        return _PartRead(what)
    if isinstance(what, Spoken):
        return _DrawingRead(what)
    if isinstance(what, Listed):
        return _ListedRead(what)
    if isinstance(what, SpokenList):
        return QAccessibleWidget(what, _Role.List)
    return None


QAccessible.installFactory(_made)
