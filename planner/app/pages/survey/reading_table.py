"""The readings as a table: one line a hole, values to be typed over, remarks in words."""

from __future__ import annotations

from typing import Any, Final

from PySide6.QtCore import (
    QAbstractTableModel,
    QItemSelectionModel,
    QModelIndex,
    QPersistentModelIndex,
    Qt,
)
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QTableView, QWidget

from planner.app.pages.survey.desk import SurveyDesk
from planner.app.pages.survey.entry_panel import parse_readings
from planner.survey.statistics import HoleSummary, SurveySummary
from planner.units import format_length, format_number

HEADINGS: Final = ("Hole", "x", "y", "Readings", "Mean", "Spread")
_READINGS = 3
Index = QModelIndex | QPersistentModelIndex
_Role = Qt.ItemDataRole


class ReadingModel(QAbstractTableModel):
    """Rows are holes in visiting order; only the readings can be edited."""

    def __init__(self, desk: SurveyDesk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.desk = desk
        self._by_hole: dict[int, HoleSummary] = {}
        self._shape: tuple[str, int] = ("", 0)

    def show_summary(self, summary: SurveySummary | None) -> None:
        """Follow the survey shown and what its readings say."""
        survey = self.desk.survey
        shape = ("", 0) if survey is None else (survey.key, len(survey.points))
        self._by_hole = {} if summary is None else {one.hole: one for one in summary.holes}
        if shape != self._shape:
            self.beginResetModel()
            self._shape = shape
            self.endResetModel()
        elif shape[1]:
            corner = self.index(shape[1] - 1, len(HEADINGS) - 1)
            self.dataChanged.emit(self.index(0, 0), corner)

    def rowCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008 - as Qt has it
        return 0 if parent.isValid() else self._shape[1]

    def columnCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008 - as Qt has it
        return 0 if parent.isValid() else len(HEADINGS)

    def headerData(
        self, section: int, orientation: Qt.Orientation, role: int = _Role.DisplayRole
    ) -> Any:
        if role == _Role.DisplayRole and orientation is Qt.Orientation.Horizontal:
            return HEADINGS[section]
        return None

    def flags(self, index: Index) -> Qt.ItemFlag:
        flags = Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsSelectable
        return flags | Qt.ItemFlag.ItemIsEditable if index.column() == _READINGS else flags

    def data(self, index: Index, role: int = _Role.DisplayRole) -> Any:
        survey = self.desk.survey
        hole = index.row() + 1
        if survey is None or hole > len(survey.points):
            return None
        if role in {_Role.DisplayRole, _Role.EditRole}:
            return self._text(hole, index.column())
        if role == _Role.TextAlignmentRole:
            return int(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        if role in {_Role.ToolTipRole, _Role.AccessibleDescriptionRole}:
            return remark(self._by_hole.get(hole))
        return None

    def _text(self, hole: int, column: int) -> str:
        survey = self.desk.survey
        if survey is None:
            return ""
        one = self._by_hole.get(hole)
        unit = self.desk.workplace.display.unit
        if column == 0:
            return f"{'▲ ' if one is not None and one.suspect else ''}{hole}"
        if column in {1, 2}:
            return format_length(survey.points[hole - 1][column - 1], unit, with_unit=False)
        if column == _READINGS:
            return "; ".join(format_number(value, 1) for value in survey.values_at(hole))
        if one is None:
            return ""
        if column == 4:
            return format_number(one.mean, 1)
        return "" if one.spread is None else f"± {format_number(one.spread, 1)}"

    def setData(self, index: Index, value: Any, role: int = _Role.EditRole) -> bool:
        if role != _Role.EditRole or index.column() != _READINGS:
            return False
        if str(value) == self._text(index.row() + 1, _READINGS):
            return False
        try:
            values = parse_readings(str(value), None)
        except ValueError as error:
            self.desk.refused.emit(str(error))
            return False
        return self.desk.set_readings(index.row() + 1, values)


def remark(one: HoleSummary | None) -> str:
    """What is to be said of a hole beside its figures."""
    if one is None:
        return "Nothing read here yet."
    if one.suspect and one.expected is not None:
        return (
            f"Far off its neighbours, which lead to expect about {one.expected:.0f}. Read it again "
            "if you can; it is kept as it is."
        )
    return ""


class ReadingTable(QTableView):
    """Shows the model; the line chosen is the hole at hand."""

    def __init__(self, desk: SurveyDesk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.desk = desk
        self.readings = ReadingModel(desk, self)
        self.setModel(self.readings)
        self.setAccessibleName("Readings by hole")
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setTabKeyNavigation(False)
        self.setShowGrid(False)
        self.setAlternatingRowColors(True)
        self.setWordWrap(False)
        self.verticalHeader().hide()
        self.verticalHeader().setDefaultSectionSize(self.fontMetrics().height() + 8)
        header = self.horizontalHeader()
        header.setHighlightSections(False)
        header.setMinimumSectionSize(30)
        header.setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        header.setSectionResizeMode(_READINGS, QHeaderView.ResizeMode.Stretch)
        metrics = self.fontMetrics()
        for column, sample in (
            (0, "▲ 000"),
            (1, "00.00"),
            (2, "00.00"),
            (4, "0000.0"),
            (5, "± 00.0"),
        ):
            self.setColumnWidth(column, metrics.horizontalAdvance(sample) + 12)
        self.selectionModel().currentRowChanged.connect(self._on_row)
        desk.hole_changed.connect(self._follow_hole)

    def show_summary(self, summary: SurveySummary | None) -> None:
        """Follow the survey shown."""
        self.readings.show_summary(summary)
        self._follow_hole()

    def _on_row(self, current: QModelIndex, _old: QModelIndex) -> None:
        if current.isValid():
            self.desk.go_to(current.row() + 1)

    def _follow_hole(self) -> None:
        index = self.readings.index(self.desk.hole - 1, _READINGS)
        if index.isValid() and index.row() != self.currentIndex().row():
            flags = QItemSelectionModel.SelectionFlag.ClearAndSelect
            flags |= QItemSelectionModel.SelectionFlag.Rows
            self.selectionModel().setCurrentIndex(index, flags)
            self.scrollTo(index)
