"""The table as it came: its cells, what each column is taken for, and a place to paste text."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QMimeData, QSize, Qt, Signal
from PySide6.QtGui import QPalette, QResizeEvent
from PySide6.QtWidgets import (
    QHeaderView,
    QPlainTextEdit,
    QTableWidget,
    QTableWidgetItem,
    QWidget,
)

from planner.app.fields.form import StillCombo
from planner.app.pages.survey.table_source import Choice
from planner.app.plain import tooltip
from planner.survey.table_guess import TableGuess, TableKind
from planner.survey.table_headings import Role, TableLight

_ROLES: Final = ((Role.PASSED, "–"), (Role.X, "x"), (Role.Y, "y"), (Role.HOLE, "hole"))
_ROWS_SHOWN: Final = 60
_COLUMNS_SHOWN: Final = 40
_HEAD_WIDTH: Final = 116


class ColumnHeads(QHeaderView):
    """Above each column a choice of what it holds: a place, or readings in a unit.

    Signal ``chosen(column, (role, unit))``.
    """

    chosen = Signal(int, object)

    def __init__(self, table: QTableWidget) -> None:
        super().__init__(Qt.Orientation.Horizontal, table)
        self.boxes: list[StillCombo] = []
        self.setHighlightSections(False)
        self.setSectionsClickable(False)
        self.sectionResized.connect(lambda *_: self.place())
        table.horizontalScrollBar().valueChanged.connect(lambda _value: self.place())

    def show_guess(self, guess: TableGuess, columns: int) -> None:
        """Say what each of the columns of the source is taken for; None of it where hidden."""
        for box in self.boxes:
            box.hide()
            box.deleteLater()
        self.boxes = []
        shown = [guess.number_of(k) for k in range(len(guess.roles))]
        for number in range(1, columns + 1):
            box = StillCombo(self.viewport())
            box.setMinimumContentsLength(4)
            box.setAccessibleName(f"What column {number} holds")
            if number in shown:
                self._fill(box, guess, shown.index(number))
            else:
                box.addItem("hidden")
                box.setEnabled(False)
            box.show()
            self.boxes.append(box)
        self.place()

    def _fill(self, box: StillCombo, guess: TableGuess, column: int) -> None:
        places = guess.kind is not TableKind.MATRIX
        choices = [(text, (role, TableLight.PPFD)) for role, text in _ROLES[: 4 if places else 1]]
        choices += [(unit.value, (Role.VALUE, unit)) for unit in TableLight]
        for text, meaning in choices:
            box.addItem(text, meaning)
        role = guess.roles[column]
        light = guess.light(column) if role is Role.VALUE else TableLight.PPFD
        box.setCurrentIndex([meaning for _, meaning in choices].index((role, light)))
        box.setToolTip(tooltip("What this column holds: a place, readings in a unit, or nothing."))
        box.widen_list()
        box.activated.connect(lambda k: self.chosen.emit(column, choices[k][1]))

    def sectionSizeFromContents(self, logical: int) -> QSize:
        return QSize(_HEAD_WIDTH, super().sectionSizeFromContents(logical).height())

    def sizeHint(self) -> QSize:
        high = self.boxes[0].sizeHint().height() + 4 if self.boxes else super().sizeHint().height()
        return QSize(super().sizeHint().width(), high)

    def updateGeometries(self) -> None:
        super().updateGeometries()
        self.place()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self.place()

    def place(self) -> None:
        """Put each choice over its column."""
        for k, box in enumerate(self.boxes):
            left, wide = self.sectionViewportPosition(k), self.sectionSize(k)
            box.setGeometry(left + 1, 1, wide - 2, self.height() - 2)


class TablePreview(QTableWidget):
    """The first rows of a sheet under their ``heads``; what is not read is grey."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName("Preview of the table")
        self.setEditTriggers(QTableWidget.EditTrigger.NoEditTriggers)
        self.setTabKeyNavigation(False)
        self.verticalHeader().setDefaultSectionSize(self.fontMetrics().height() + 8)
        self.heads = ColumnHeads(self)
        self.setHorizontalHeader(self.heads)

    def show_choice(self, choice: Choice) -> None:
        """Show a sheet as its program does, with what is made of it."""
        cells, guess = choice.cells, choice.guess
        whole = cells.whole or tuple(zip(cells.numbers, cells.rows, strict=True))
        whole = whole[:_ROWS_SHOWN]
        columns = min(max((len(row) for _, row in whole), default=0), _COLUMNS_SHOWN)
        self.setRowCount(len(whole))
        self.setColumnCount(columns)
        self.setVerticalHeaderLabels([str(number) for number, _ in whole])
        self.heads.show_guess(guess, columns)
        read = {guess.number_of(k) for k, role in enumerate(guess.roles) if role is not Role.PASSED}
        quiet = self.palette().brush(QPalette.ColorRole.PlaceholderText)
        ground = self.palette().brush(QPalette.ColorRole.AlternateBase)
        heading = set(cells.numbers[: guess.heading_rows])
        for row, (number, texts) in enumerate(whole):
            kept = number in cells.numbers
            for column in range(columns):
                item = QTableWidgetItem(texts[column] if column < len(texts) else "")
                font = item.font()
                font.setBold(number in heading)
                item.setFont(font)
                if not kept or column + 1 not in read or number in heading:
                    item.setForeground(quiet)
                if not kept or (cells.columns and column + 1 not in cells.columns):
                    item.setBackground(ground)
                    item.setToolTip(tooltip("Hidden or a remark: not read."))
                self.setItem(row, column, item)
        self.resizeColumnsToContents()
        self.heads.place()


class PasteBox(QPlainTextEdit):
    """A place for text; ``pasted(str)`` with the whole of it when something is pasted."""

    pasted = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName("Text to be read")
        self.setPlaceholderText("Paste the readings here (Ctrl+V), or write them line by line.")
        self.setTabChangesFocus(True)

    def insertFromMimeData(self, source: QMimeData) -> None:
        super().insertFromMimeData(source)
        self.pasted.emit(self.toPlainText())
