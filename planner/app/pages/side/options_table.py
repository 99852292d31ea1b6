"""The one table of options: a row an option by its key, its name frozen at the left.

And the plain table of texts that answers are read in.
"""

from __future__ import annotations

import textwrap
from collections.abc import Sequence, Set
from typing import Any, Final

from PySide6.QtCore import (
    QAbstractTableModel,
    QModelIndex,
    QPersistentModelIndex,
    QPoint,
    QSize,
    Qt,
    Signal,
)
from PySide6.QtGui import QGuiApplication, QKeyEvent, QKeySequence
from PySide6.QtWidgets import (
    QAbstractItemView,
    QHeaderView,
    QTableView,
    QTableWidget,
    QTableWidgetItem,
    QWidget,
)

from planner.app import theme
from planner.app.plain import TIPS, explain
from planner.estimate.compare import COLUMNS, Identity, Option, Wishes, columns_of
from planner.plan.costs import Costs
from planner.reports.exports import options_to_csv
from planner.units import capital

_Role = Qt.ItemDataRole
Index = QModelIndex | QPersistentModelIndex
_BUY: Final = len(COLUMNS)
_NAME_CHARACTERS: Final = 30
_BUY_CHARACTERS: Final = 16
_MOST_ROWS: Final = 12


class OptionModel(QAbstractTableModel):
    """Rows in the order of the plan, or by a column; those that miss a wish may be left out."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.rows: list[Option] = []
        self._texts: dict[str, tuple[str, ...]] = {}
        self.hidden = 0
        self._given: tuple[Option, ...] = ()
        self.costs, self._wishes = Costs(), Wishes()
        self._sorted: tuple[int, bool] | None = None
        self._said: object = None

    def show_options(self, options: tuple[Option, ...], costs: Costs, wishes: Wishes) -> None:
        """Show these; an order that was asked for stays.

        Where they say the same as before nothing is told: a reset between the two clicks of a
        double click would take the row from under the hand.
        """
        said = [*map(_said, options)], costs, wishes
        same, self._said = said == self._said, said
        if not same:
            self.beginResetModel()
        self._given, self.costs, self._wishes = options, costs, wishes
        self._order()
        if not same:
            self.endResetModel()

    @property
    def is_sorted(self) -> bool:
        """Whether the rows stand by a column, not in the order of the plan."""
        return self._sorted is not None

    def rowCount(self, parent: Index | None = None) -> int:
        return 0 if parent is not None and parent.isValid() else len(self.rows)

    def columnCount(self, parent: Index | None = None) -> int:
        return 0 if parent is not None and parent.isValid() else len(COLUMNS) + 1

    def headerData(
        self, section: int, orientation: Qt.Orientation, role: int = _Role.DisplayRole
    ) -> Any:
        if orientation is Qt.Orientation.Vertical:
            return self._name(section, role)
        if role in TIPS and section < _BUY:
            return TIPS[role](COLUMNS[section].about)
        if role == _Role.TextAlignmentRole and section == _BUY:
            return Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
        if role != _Role.DisplayRole:
            return None
        if section == _BUY:
            return "What to buy"
        name, _, unit = COLUMNS[section].heading(self.costs.currency).partition(" (")
        return f"{name}\n{unit.removesuffix(')')}"

    def _name(self, row: int, role: int) -> Any:
        side = self.rows[row].side
        if role == _Role.DisplayRole:
            beyond = self.rows[row].beyond
            lines = textwrap.wrap(side.name, _NAME_CHARACTERS) or [side.name]
            return "\n".join((*lines, *textwrap.wrap(capital(beyond), _NAME_CHARACTERS)))
        if role == _Role.TextAlignmentRole:
            return Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
        if role in TIPS:
            missed = self._wishes.missed(self.rows[row])
            beyond = capital(self.rows[row].beyond)
            return TIPS[role](side.name, "; ".join(side.said), beyond, *side.problems, *missed)
        return None

    def data(self, index: Index, role: int = _Role.DisplayRole) -> Any:
        if not index.isValid():
            return None
        one, column = self.rows[index.row()], index.column()
        if role == _Role.DisplayRole:
            if column == _BUY:
                return one.buy
            return self._texts[COLUMNS[column].key][index.row()]
        if role == _Role.TextAlignmentRole:
            side = Qt.AlignmentFlag.AlignLeft if column == _BUY else Qt.AlignmentFlag.AlignRight
            return side | Qt.AlignmentFlag.AlignVCenter
        if role in TIPS and column == _BUY:
            return TIPS[role](one.buy)
        return None

    def sort(self, column: int, order: Qt.SortOrder = Qt.SortOrder.AscendingOrder) -> None:
        self.beginResetModel()
        known = 0 <= column < _BUY
        self._sorted = (column, order is Qt.SortOrder.DescendingOrder) if known else None
        self._order()
        self.endResetModel()

    def _order(self) -> None:
        kept = [one for one in self._given if not self._wishes.missed(one)]
        self.hidden = len(self._given) - len(kept)
        if self._sorted is not None:
            column, falling = self._sorted

            def value(one: Option) -> float | None:
                return one.values[COLUMNS[column].key]

            known = [one for one in kept if value(one) is not None]
            known.sort(key=lambda one: value(one) or 0.0, reverse=falling)
            kept = known + [one for one in kept if value(one) is None]
        self.rows = kept
        self._texts = {one.key: one.texts([row.values[one.key] for row in kept]) for one in COLUMNS}


def _said(one: Option) -> tuple[object, ...]:
    """All that a row says."""
    side = one.side
    values = tuple(one.values.items())
    return side.identity, side.name, side.said, side.problems, values, one.buy, one.beyond


class OptionsTable(QTableView):
    """Sorted by a click on a heading (a third click: as in the plan), as tall as its rows.

    Signals: ``picked(identity)``; ``opened`` on a double click; ``moved(key, onto)`` when a name
    was dragged to the place of another; ``menu_asked(QPoint)``; ``key_pressed(event)``.
    """

    picked = Signal(object)
    opened = Signal()
    moved = Signal(str, object)
    menu_asked = Signal(object)
    key_pressed = Signal(object)

    def __init__(self) -> None:
        super().__init__()
        self.options = OptionModel(self)
        self.setModel(self.options)
        theme.settle(self, "Options")
        self.setContextMenuPolicy(Qt.ContextMenuPolicy.CustomContextMenu)
        self.customContextMenuRequested.connect(
            lambda at: self._ask_menu(self.rowAt(at.y()), self.viewport().mapToGlobal(at))
        )
        self.doubleClicked.connect(lambda _index: self.opened.emit())
        names = self.verticalHeader()
        names.setSectionsClickable(True)
        names.setSectionsMovable(True)
        names.setHighlightSections(False)
        names.setMinimumSectionSize(round(1.5 * self.fontMetrics().height()))
        names.setDefaultAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
        names.sectionDoubleClicked.connect(lambda _row: self.opened.emit())
        names.sectionMoved.connect(self._on_moved)
        names.setContextMenuPolicy(Qt.ContextMenuPolicy.CustomContextMenu)
        names.customContextMenuRequested.connect(
            lambda at: self._ask_menu(names.logicalIndexAt(at), names.mapToGlobal(at))
        )
        header = self.horizontalHeader()
        header.setSectionsClickable(True)
        header.setHighlightSections(False)
        header.setDefaultAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        header.setSortIndicator(-1, Qt.SortOrder.DescendingOrder)
        header.setSortIndicatorClearable(True)
        header.setSectionResizeMode(QHeaderView.ResizeMode.Interactive)
        header.setStretchLastSection(True)
        self.setSortingEnabled(True)
        self._chosen: Identity | None = None
        self.left_out: Set[str] = frozenset()
        """Columns that are not shown, by their keys."""
        self._showing = False
        self.selectionModel().currentRowChanged.connect(self._on_row)
        self.options.modelReset.connect(self._on_reset)

    def show_options(
        self, options: Sequence[Option], costs: Costs, wishes: Wishes, chosen: Identity
    ) -> None:
        """Show the options of a comparison, with the row of one chosen."""
        self._chosen = chosen
        self.options.show_options(tuple(options), costs, wishes)
        self._select()

    def _on_reset(self) -> None:
        self._showing = True
        self.verticalHeader().setSectionsMovable(not self.options.is_sorted)
        self._fit_columns()
        self.resizeRowsToContents()
        for row in range(len(self.options.rows)):  # texts of several lines are not to touch
            self.setRowHeight(row, self.rowHeight(row) + theme.HALF)
        self._showing = False
        self._select()
        self.updateGeometry()

    def _select(self) -> None:
        """The row of the option chosen, wherever it was chosen."""
        who = [one.side.identity for one in self.options.rows]
        if self._chosen in who and self.currentIndex().row() != who.index(self._chosen):
            self._showing = True
            self.selectRow(who.index(self._chosen))
            self._showing = False

    def _fit_columns(self) -> None:
        """As narrow as headings and numbers allow: all that is decided by is to be in sight."""
        model, cell, head = self.options, self.fontMetrics(), self.horizontalHeader().fontMetrics()
        told = columns_of(model.rows)
        for column, one in enumerate(COLUMNS):
            self.setColumnHidden(column, one.key in self.left_out or one not in told)
        for column in range(model.columnCount()):
            title = str(model.headerData(column, Qt.Orientation.Horizontal))
            wide = max(head.horizontalAdvance(part) for part in title.split("\n"))
            for row in range(len(model.rows)):
                text = str(model.data(model.index(row, column)))
                wide = max(wide, cell.horizontalAdvance(text))
            if column == _BUY:  # takes what room is left, at least this; the tip says all of it
                wide = min(wide, cell.averageCharWidth() * _BUY_CHARACTERS)
            self.setColumnWidth(column, wide + 2 * theme.RHYTHM)

    def _on_row(self, index: QModelIndex, _before: QModelIndex) -> None:
        if not self._showing and index.isValid() and index.row() < len(self.options.rows):
            self._chosen = self.options.rows[index.row()].side.identity
            self.picked.emit(self._chosen)

    def _on_moved(self, _row: int, old: int, new: int) -> None:
        """A name was dragged: the plan's order follows, and the model comes back in it."""
        if self._showing:
            return
        rows = [one.side.key for one in self.options.rows]
        names = self.verticalHeader()
        self._showing = True
        names.moveSection(new, old)
        self._showing = False
        if rows[old] is not None:
            self.moved.emit(rows[old], rows[new])

    def _ask_menu(self, row: int, at: QPoint) -> None:
        if row >= 0:
            self.selectRow(row)
            self.menu_asked.emit(at)

    def text(self, delimiter: str = "\t") -> str:
        """The table in the order shown."""
        return options_to_csv(self.options.rows, self.options.costs, delimiter)

    def copy(self) -> None:
        """Put the table on the clipboard, tab-separated."""
        QGuiApplication.clipboard().setText(self.text())

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.matches(QKeySequence.StandardKey.Copy):
            self.copy()
            event.accept()
            return
        event.ignore()
        self.key_pressed.emit(event)
        if not event.isAccepted():
            super().keyPressEvent(event)

    def minimumSizeHint(self) -> QSize:
        return QSize(200, self._tall(2))

    def sizeHint(self) -> QSize:
        return QSize(600, self._tall(_MOST_ROWS))

    def _tall(self, most: int) -> int:
        """Height of the heading and so many rows, as far as there are any."""
        rows = sum(self.rowHeight(row) for row in range(min(len(self.options.rows), most)))
        bar = self.horizontalScrollBar().sizeHint().height()
        return self.horizontalHeader().sizeHint().height() + rows + bar


class ReadTable(QTableWidget):
    """Texts in rows, to be read and one of them chosen (``currentCellChanged`` by the hand)."""

    def __init__(self, name: str, headings: Sequence[str]) -> None:
        super().__init__(0, len(headings))
        theme.settle(self, name)
        self.setHorizontalHeaderLabels(list(headings))
        self.setWordWrap(True)
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.verticalHeader().hide()

    def fill(self, rows: Sequence[Sequence[str]], chosen: int | None = None) -> None:
        """Show these rows, one of them chosen; the table asks for no more room than they take."""
        blocked = self.blockSignals(True)
        self.setRowCount(len(rows))
        for row, texts in enumerate(rows):
            for column, text in enumerate(texts):
                item = QTableWidgetItem(text)
                explain(item, text)
                self.setItem(row, column, item)
        self.resizeColumnsToContents()
        self.resizeRowsToContents()
        tall = sum(self.rowHeight(row) for row in range(len(rows)))
        bar = self.horizontalScrollBar().sizeHint().height()
        self.setMaximumHeight(tall + self.horizontalHeader().sizeHint().height() + bar + 2)
        if chosen is not None:
            self.selectRow(chosen)
        self.blockSignals(blocked)
