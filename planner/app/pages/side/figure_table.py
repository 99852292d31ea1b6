"""The table of every figure of every side, with its ratio to the baseline."""

from __future__ import annotations

from typing import Any

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QPersistentModelIndex, Qt, Signal
from PySide6.QtGui import QGuiApplication, QKeyEvent, QKeySequence
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QTableView, QWidget

from planner.app import theme
from planner.app.plain import tooltip
from planner.estimate.compare import Row
from planner.metrics.figures import FIGURES
from planner.reports.exports import comparison_to_csv

_Role = Qt.ItemDataRole
Index = QModelIndex | QPersistentModelIndex
_NAME, _SAID = 0, 1
_LEAD = 2


class FigureModel(QAbstractTableModel):
    """Name, what differs, and two columns for each figure: its value, and its ratio in %."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.rows: list[Row] = []
        self._given: tuple[Row, ...] = ()
        self._sorted: tuple[int, bool] | None = None

    def show_rows(self, rows: tuple[Row, ...]) -> None:
        """Show these; an order that was asked for stays."""
        self.beginResetModel()
        self._given = rows
        self._order()
        self.endResetModel()

    def rowCount(self, parent: Index | None = None) -> int:
        return 0 if parent is not None and parent.isValid() else len(self.rows)

    def columnCount(self, parent: Index | None = None) -> int:
        return 0 if parent is not None and parent.isValid() else _LEAD + 2 * len(FIGURES)

    def headerData(
        self, section: int, orientation: Qt.Orientation, role: int = _Role.DisplayRole
    ) -> Any:
        if orientation is not Qt.Orientation.Horizontal:
            return None
        if role == _Role.TextAlignmentRole and section < _LEAD:
            return Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
        if role != _Role.DisplayRole:
            return None
        if section < _LEAD:
            return ("Name", "Differs in")[section]
        figure = FIGURES[(section - _LEAD) // 2]
        if (section - _LEAD) % 2:
            return "of baseline"
        return f"{figure.name}\n{figure.unit}"

    def value(self, row: Row, column: int) -> Any:
        """What a column holds: text for the first two, else a number or None."""
        if column == _NAME:
            return row.name
        if column == _SAID:
            return "; ".join(row.said)
        figure, ratio = divmod(column - _LEAD, 2)
        return row.ratios[figure] if ratio else row.values[figure]

    def data(self, index: Index, role: int = _Role.DisplayRole) -> Any:
        if not index.isValid():
            return None
        row, column = self.rows[index.row()], index.column()
        if role == _Role.DisplayRole:
            return self._text(row, column)
        if role == _Role.TextAlignmentRole and column >= _LEAD:
            return Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
        if role == _Role.ToolTipRole and column < _LEAD:
            return tooltip(" ".join(filter(None, (self._text(row, column), *row.problems))))
        return None

    def _text(self, row: Row, column: int) -> str:
        value = self.value(row, column)
        if column < _LEAD:
            return str(value)
        if value is None:
            return "–"
        figure, ratio = divmod(column - _LEAD, 2)
        return f"{value:.1f} %" if ratio else FIGURES[figure].written(value)

    def sort(self, column: int, order: Qt.SortOrder = Qt.SortOrder.AscendingOrder) -> None:
        self.layoutAboutToBeChanged.emit()
        self._sorted = (column, order is Qt.SortOrder.DescendingOrder) if column >= 0 else None
        before = self.rows
        self._order()
        # The line that is chosen stays the same side, wherever it has gone.
        for index in self.persistentIndexList():
            to = self.rows.index(before[index.row()])
            self.changePersistentIndex(index, self.index(to, index.column()))
        self.layoutChanged.emit()

    def _order(self) -> None:
        self.rows = list(self._given)
        if self._sorted is None:
            return
        column, falling = self._sorted
        known = [row for row in self.rows if self.value(row, column) is not None]
        rest = [row for row in self.rows if self.value(row, column) is None]
        known.sort(key=lambda row: self.value(row, column), reverse=falling)
        self.rows = known + rest


class FigureTable(QTableView):
    """Sorted by a click on a heading; Ctrl+C copies it whole, tab-separated.

    ``picked(str)`` carries the name of the side in the line that is chosen.
    """

    picked = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.figures = FigureModel(self)
        self.setModel(self.figures)
        self.setAccessibleName("Every figure")
        self.setFont(theme.tabular(self.font()))
        self.setFrameShape(QTableView.Shape.NoFrame)
        self.setShowGrid(False)
        self.setAlternatingRowColors(True)
        self.setTabKeyNavigation(False)
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setHorizontalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.verticalHeader().hide()
        self.verticalHeader().setDefaultSectionSize(round(1.55 * self.fontMetrics().height()))
        header = self.horizontalHeader()
        header.setSectionsClickable(True)
        header.setHighlightSections(False)
        header.setDefaultAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        header.setSortIndicator(-1, Qt.SortOrder.DescendingOrder)
        header.setSortIndicatorClearable(True)
        header.setSectionResizeMode(QHeaderView.ResizeMode.Interactive)
        self.setSortingEnabled(True)
        self.selectionModel().currentRowChanged.connect(self._on_row)
        self._widths_set = False

    def show_rows(self, rows: tuple[Row, ...], chosen: str) -> None:
        """Show the rows of a comparison, with the line of a side chosen."""
        self.figures.show_rows(rows)
        if not self._widths_set and rows:
            self._widths_set = True
            self.resizeColumnsToContents()
            self.setColumnWidth(_NAME, min(self.columnWidth(_NAME), 220))
            self.setColumnWidth(_SAID, min(self.columnWidth(_SAID), 160))
        names = [row.name for row in self.figures.rows]
        if chosen in names:
            blocked = self.selectionModel().blockSignals(True)
            self.selectRow(names.index(chosen))
            self.selectionModel().blockSignals(blocked)
            self.viewport().update()

    def text(self, delimiter: str = "\t") -> str:
        """The whole table in the order shown."""
        return comparison_to_csv(tuple(self.figures.rows), delimiter)

    def copy(self) -> None:
        """Put the table on the clipboard, tab-separated."""
        QGuiApplication.clipboard().setText(self.text())

    def _on_row(self, index: QModelIndex, _before: QModelIndex) -> None:
        if index.isValid() and index.row() < len(self.figures.rows):
            self.picked.emit(self.figures.rows[index.row()].name)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.matches(QKeySequence.StandardKey.Copy):
            self.copy()
            event.accept()
        else:
            super().keyPressEvent(event)
