"""A list one can search: pictures, names and facts of what is offered, the last used first."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Final

from PySide6.QtCore import (
    QAbstractListModel,
    QEvent,
    QModelIndex,
    QObject,
    QPersistentModelIndex,
    QPoint,
    QRect,
    QRectF,
    QSize,
    Qt,
    Signal,
)
from PySide6.QtGui import QFontMetrics, QHideEvent, QKeyEvent, QPainter, QPalette
from PySide6.QtWidgets import (
    QAbstractItemView,
    QCheckBox,
    QFrame,
    QLineEdit,
    QListView,
    QStyle,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QWidget,
)

from planner.app import theme
from planner.app.fields.form import NoteLabel
from planner.app.plain import TIPS

Index = QModelIndex | QPersistentModelIndex
Picture = Callable[[QPainter, QRectF, QPalette], None]

PICTURE: Final = QSize(44, 26)
_MOST_ROWS: Final = 8
_WIDTH: Final = 380
_ENTRY: Final = Qt.ItemDataRole.UserRole


@dataclass(frozen=True)
class Entry:
    """One thing on offer: its name, facts in a line, more words it is found by, its picture."""

    title: str
    facts: str
    words: str
    picture: Picture

    def found_by(self, text: str) -> bool:
        """Whether every word of a search stands somewhere in it."""
        said = f"{self.title} {self.facts} {self.words}".lower()
        return all(word in said for word in text.lower().split())


class _Entries(QAbstractListModel):
    """The entries that a search leaves, by their number among all."""

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        self.entries: Sequence[Entry] = ()
        self.rows: list[int] = []

    def show_rows(self, entries: Sequence[Entry], rows: list[int]) -> None:
        self.beginResetModel()
        self.entries, self.rows = entries, rows
        self.endResetModel()

    def rowCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008 - Qt's own default
        return 0 if parent.isValid() else len(self.rows)

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        entry = self.entries[self.rows[index.row()]]
        if role == Qt.ItemDataRole.DisplayRole:
            return f"{entry.title}. {entry.facts}"
        if role in TIPS:
            return TIPS[role](entry.title, entry.facts)
        return entry if role == _ENTRY else None


class _EntryDelegate(QStyledItemDelegate):
    """Picture left, name over facts right of it."""

    def sizeHint(self, option: QStyleOptionViewItem, _index: Index) -> QSize:
        lines = 2 * QFontMetrics(option.font).height()
        return QSize(_WIDTH, max(lines, PICTURE.height()) + theme.RHYTHM)

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        entry: Entry = index.data(_ENTRY)
        area, palette = QRect(option.rect), option.palette
        chosen = bool(option.state & QStyle.StateFlag.State_Selected)
        role = QPalette.ColorRole
        if chosen:
            painter.fillRect(area, palette.color(role.Highlight))
        painter.save()
        inner = area.adjusted(theme.RHYTHM, theme.HALF, -theme.RHYTHM, -theme.HALF)
        place = QRectF(inner.left(), 0, PICTURE.width(), PICTURE.height())
        place.moveTop(inner.center().y() - PICTURE.height() / 2)
        entry.picture(painter, place, palette)
        text = inner.adjusted(PICTURE.width() + theme.RHYTHM, 0, 0, 0)
        metrics = QFontMetrics(option.font)
        painter.setFont(option.font)
        flags = Qt.AlignmentFlag.AlignLeft
        for words, shade, side in (
            (entry.title, role.Text, Qt.AlignmentFlag.AlignTop),
            (entry.facts, role.PlaceholderText, Qt.AlignmentFlag.AlignBottom),
        ):
            painter.setPen(palette.color(role.HighlightedText if chosen else shade))
            shown = metrics.elidedText(words, Qt.TextElideMode.ElideRight, text.width())
            painter.drawText(text, flags | side, shown)
        painter.restore()


class SearchList(QFrame):
    """The opened list: a line to search in, the entries, and a switch below where there is one.

    Signals: ``picked(int)`` with the number of an entry, ``rested(int)`` while the hand or a key
    rests on one, ``closed``.
    """

    picked = Signal(int)
    rested = Signal(int)
    closed = Signal()

    def __init__(self, parent: QWidget, switch: str = "") -> None:
        super().__init__(parent, Qt.WindowType.Popup)
        self.setFrameShape(QFrame.Shape.StyledPanel)
        self._entries: Sequence[Entry] = ()
        self._order: list[int] = []
        self.line = QLineEdit()
        self.line.setPlaceholderText("Search by name, finish or caution")
        self.line.setAccessibleName("Search")
        self.line.setClearButtonEnabled(True)
        self.list = QListView()
        self.list.setAccessibleName("What is offered")
        self.list.setFrameShape(QFrame.Shape.NoFrame)
        self.list.setUniformItemSizes(True)
        self.list.setMouseTracking(True)
        self.list.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.list.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.list.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.list.setItemDelegate(_EntryDelegate(self))
        self._model = _Entries(self)
        self.list.setModel(self._model)
        self.none = NoteLabel("Nothing of that name is offered.")
        self.none.hide()
        self.switch = QCheckBox(switch)
        if not switch:  # shown before it has a parent it would be a window, and end open menus
            self.switch.hide()
        theme.column(
            self.line, self.list, self.none, self.switch, on=self, gap=theme.HALF, edges=theme.HALF
        )
        self.setFocusProxy(self.line)
        self.line.textChanged.connect(self._search)
        self.line.installEventFilter(self)
        self.list.clicked.connect(lambda index: self._pick(index.row()))
        self.list.entered.connect(self.list.setCurrentIndex)
        self.list.selectionModel().currentChanged.connect(self._on_current)

    def show_entries(self, entries: Sequence[Entry], order: list[int], current: int) -> None:
        """Offer entries in an order, one of them being the present one."""
        self._entries, self._order = entries, order
        self.line.clear()
        self._search("", current)

    def renew(self, entries: Sequence[Entry]) -> None:
        """The same entries with other facts."""
        self._entries = entries
        self._model.entries = entries
        self.list.viewport().update()

    def _search(self, text: str, current: int | None = None) -> None:
        rows = [k for k in self._order if self._entries[k].found_by(text)]
        self._model.show_rows(self._entries, rows)
        self.none.setVisible(not rows)
        self.list.setVisible(bool(rows))
        if rows:
            row = rows.index(current) if current in rows else 0
            self.list.setCurrentIndex(self._model.index(row))

    def open_under(self, widget: QWidget) -> None:
        """Open below a widget, or above it where there is no room."""
        tall = self.list.sizeHintForRow(0) * min(len(self._order), _MOST_ROWS) + 4
        self.list.setFixedHeight(max(tall, 48))
        self.resize(max(widget.width(), _WIDTH), self.sizeHint().height())
        screen = widget.screen().availableGeometry()
        at = widget.mapToGlobal(QPoint(0, widget.height()))
        if at.y() + self.height() > screen.bottom():
            at.setY(max(at.y() - widget.height() - self.height(), screen.top()))
        at.setX(max(min(at.x(), screen.right() - self.width()), screen.left()))
        self.move(at)
        self.show()
        self.line.setFocus()

    def _on_current(self, index: QModelIndex, _before: QModelIndex) -> None:
        if index.isValid() and self.isVisible():
            self.rested.emit(self._model.rows[index.row()])

    def _pick(self, row: int) -> None:
        if 0 <= row < len(self._model.rows):
            entry = self._model.rows[row]
            self.hide()
            self.picked.emit(entry)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if (
            watched is self.line
            and isinstance(event, QKeyEvent)
            and event.type() == QEvent.Type.KeyPress
            and self._key(Qt.Key(event.key()))
        ):
            return True
        return super().eventFilter(watched, event)

    def _key(self, key: Qt.Key) -> bool:
        """Keys that go through the list while the line has the keyboard."""
        steps = {Qt.Key.Key_Down: 1, Qt.Key.Key_Up: -1, Qt.Key.Key_PageDown: _MOST_ROWS,
                 Qt.Key.Key_PageUp: -_MOST_ROWS}  # fmt: skip
        row = self.list.currentIndex().row()
        if key in steps:
            last = len(self._model.rows) - 1
            self.list.setCurrentIndex(self._model.index(min(max(row + steps[key], 0), last)))
        elif key in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            self._pick(row)
        else:
            return False
        return True

    def hideEvent(self, event: QHideEvent) -> None:
        super().hideEvent(event)
        self.closed.emit()


def recent_first(keys: Sequence[str], recent: Sequence[str]) -> list[int]:
    """Lines by their keys: those used last first, then all others as they stand."""
    last = [keys.index(key) for key in recent if key in keys]
    return [*last, *(line for line in range(len(keys)) if line not in last)]
