"""Readings typed hole by hole, and all of them in a table."""

from __future__ import annotations

import re
from typing import Any, Final

from PySide6.QtCore import (
    QAbstractTableModel,
    QEvent,
    QItemSelectionModel,
    QModelIndex,
    QPersistentModelIndex,
    Qt,
    Signal,
)
from PySide6.QtGui import QKeyEvent, QResizeEvent
from PySide6.QtWidgets import (
    QHeaderView,
    QLineEdit,
    QTableView,
    QWidget,
)

from planner.app import theme
from planner.app.fields.form import AlertLabel, NoteLabel, button
from planner.app.pages.survey.desk import SurveyDesk
from planner.app.plain import PlainLabel
from planner.app.quantity_box import asks_undo_or_redo
from planner.plan.quantity import LARGEST_PPFD, beyond_sun
from planner.plan.survey import Survey
from planner.survey.layout import row_and_column
from planner.survey.statistics import HoleSummary, SurveySummary, drift_of, unlikely_reading
from planner.units import (
    PPFD_UNIT,
    LengthUnit,
    format_length,
    format_number,
    parse_number,
)

KEYS: Final = (
    "Enter keeps the reading and goes on; several with spaces between them are all kept. "
    "Enter on an empty line passes the hole over, Backspace goes back, Delete takes the last "
    "reading of this hole out."
)
ALL_READ: Final = "All holes are read. To read one again, go to it; hole 1 again shows the drift."
_NUMBER = re.compile(r"\d+([.,]\d*)?|[.,]\d+")
_ASIDE = re.compile(r"\([^)]*\)")


class ReadingLine(QLineEdit):
    """The big line. Signals: ``entered(str)``, ``back``, ``take_back``, ``moved(int)``."""

    entered = Signal(str)
    back = Signal()
    take_back = Signal()
    moved = Signal(int)

    def __init__(self) -> None:
        super().__init__()
        self.setAccessibleName("Reading")
        self.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self.setFont(theme.tabular(theme.sized(self.font(), 3.4)))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        key = Qt.Key(event.key())
        empty = not self.text()
        if key in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            self.entered.emit(self.text())
        elif key == Qt.Key.Key_Escape and not empty:
            self.clear()
        elif key == Qt.Key.Key_Backspace and empty:
            self.back.emit()
        elif key == Qt.Key.Key_Delete and empty:
            self.take_back.emit()
        elif key in {Qt.Key.Key_Up, Qt.Key.Key_Down}:
            self.moved.emit(-1 if key == Qt.Key.Key_Up else 1)
        else:
            super().keyPressEvent(event)
            return
        event.accept()

    def event(self, event: QEvent) -> bool:
        # An empty line leaves undo and redo to the plan.
        if not self.text() and asks_undo_or_redo(event):
            event.ignore()
            return False
        return super().event(event)


def parse_readings(text: str, lux_per_umol: float | None) -> tuple[float, ...]:
    """Readings typed in one line, in µmol m⁻² s⁻¹; those in brackets are set aside already.

    Raises
    ------
    ValueError
        If one of them is no number, can be read as two, or is more than the sun; the message
        is a sentence.
    """
    found = []
    for part in _ASIDE.sub(" ", text).replace(";", " ").split():
        if not _NUMBER.fullmatch(part):
            raise ValueError(f"'{part}' is not a reading; write a number such as 212 or 98,5.")
        value = parse_number(part) / (lux_per_umol or 1.0)
        if value > LARGEST_PPFD:
            raise ValueError(
                f"{beyond_sun(part, value)}; check the decimal mark, and under Record whether "
                "the meter shows lux."
            )
        found.append(value)
    return tuple(found)


class EntryPanel(QWidget):
    """Names the hole at hand and takes its reading."""

    def __init__(self, desk: SurveyDesk) -> None:
        super().__init__()
        self.desk = desk
        self.title = PlainLabel(name="Hole at hand")
        self.title.setFont(theme.sized(self.title.font(), 1.9, bold=True))
        self.where = NoteLabel()
        self.line = ReadingLine()
        self.unit = PlainLabel(quiet=True)
        self.unit.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self.alert = AlertLabel()
        self.there = PlainLabel(name="Readings of this hole", wrap=True)
        self.back_button = button("Back", "The hole before (Backspace on an empty line).")
        self.next_button = button("Next unread", "The next hole without a reading.")
        self.first_button = button("Hole 1 again", "Read once more at the end, it shows the drift.")
        self.aside_button = button(
            "Set aside", "The readings of this hole are kept, but count in no figure."
        )
        self._warned = ""
        buttons = theme.row(
            self.back_button, self.next_button, self.first_button, self.aside_button,
            gap=theme.RHYTHM,
        )  # fmt: skip
        theme.column(
            self.title, self.where, self.line, self.unit, self.alert, self.there, buttons,
            NoteLabel(KEYS), on=self, gap=theme.HALF,
        )  # fmt: skip
        self.line.entered.connect(self._enter)
        self.line.back.connect(lambda: self._move(-1))
        self.line.take_back.connect(self._take_back)
        self.line.moved.connect(self._move)
        self.line.textEdited.connect(lambda _text: self.alert.say(""))
        self.back_button.clicked.connect(lambda: self._move(-1))
        self.next_button.clicked.connect(self._next_unread)
        self.first_button.clicked.connect(lambda: self._go(1))
        self.aside_button.clicked.connect(self._set_aside)
        desk.changed.connect(self.refresh)
        desk.hole_changed.connect(self.refresh)
        desk.workplace.display.changed.connect(lambda _state: self.refresh())
        self.refresh()

    def refresh(self) -> None:
        """Name the hole at hand and say what was read there."""
        survey = self.desk.survey
        self.setEnabled(survey is not None)
        if survey is None:
            return
        hole = self.desk.hole
        self.title.setText(
            f"All {len(survey.points)} holes read"
            if self.desk.done
            else f"Hole {hole} of {len(survey.points)}"
        )
        where = _where(survey, hole, self.desk.workplace.display.unit)
        drift = drift_of(survey) if self.desk.done else None
        told = ALL_READ if drift is None else drift.words()
        self.where.setText(told if self.desk.done else where)
        lux = survey.lux_per_umol
        self.unit.setText(
            PPFD_UNIT if lux is None else f"lux, {format_number(lux, 1)} to the {PPFD_UNIT}"
        )
        aside = tuple(r.value for r in survey.readings if r.hole == hole and r.aside)
        self.there.setText(_said(survey.values_at(hole), aside))
        whole = survey.next_hole() is None
        self.next_button.setVisible(not whole)
        self.first_button.setVisible(whole)
        self.aside_button.setText("Take back in" if aside else "Set aside")
        self.aside_button.setAccessibleName(f"{self.aside_button.text()} hole {hole}")
        self.aside_button.setEnabled(bool(aside or survey.values_at(hole)))
        self.line.setAccessibleDescription(f"{self.title.text()}. {self.where.text()} {KEYS}")

    def _enter(self, text: str) -> None:
        survey = self.desk.survey
        if survey is None:
            return
        if not text.strip():
            self._move(1)
            return
        try:
            values = parse_readings(text, survey.lux_per_umol)
        except ValueError as error:
            self.alert.say(str(error))
            self.line.selectAll()
            return
        if self.desk.done:
            self.alert.say(ALL_READ)
            return
        doubt = self._doubt(survey, text, values)
        self.alert.say(doubt)
        if doubt:
            self._warned = text
            self.line.selectAll()
        elif self.desk.read(values):
            self._warned = ""
            self.line.clear()

    def _doubt(self, survey: Survey, text: str, values: tuple[float, ...]) -> str:
        """What is to be asked about readings before they are kept; once, not twice."""
        if text == self._warned:
            return ""
        for value in values:
            beside = unlikely_reading(survey, self.desk.hole, value)
            if beside is not None:
                low, high = (format_number(v * (survey.lux_per_umol or 1.0), 0) for v in beside)
                what = "decimal mark" if value > 0 else "sensor and the lamp"
                return (
                    f"Beside it was read {low} to {high}: check the {what}. Enter once more "
                    "keeps it as it is."
                )
        return ""

    def _go(self, hole: int) -> None:
        self.desk.go_to(hole)
        self.line.setFocus()

    def _set_aside(self) -> None:
        survey, hole = self.desk.survey, self.desk.hole
        if survey is not None:
            aside = any(r.aside for r in survey.readings if r.hole == hole)
            self.desk.set_aside(hole, aside=not aside)
            self.line.setFocus()

    def _move(self, by: int) -> None:
        survey = self.desk.survey
        if survey is not None:
            count = len(survey.points)
            self.desk.go_to((self.desk.hole - 1 + by) % count + 1)
            self.line.setFocus()

    def _next_unread(self) -> None:
        survey = self.desk.survey
        if survey is not None:
            self.desk.go_to(survey.next_hole(self.desk.hole) or self.desk.hole)
            self.line.setFocus()

    def _take_back(self) -> None:
        if not self.desk.take_back():
            self.alert.say("This hole has no reading to take back.")


def _where(survey: Survey, hole: int, unit: LengthUnit) -> str:
    x, y = survey.points[hole - 1]
    x_text, y_text = (format_length(v, unit).replace(" ", "\u00a0") for v in (x, y))
    at = f"x\u00a0{x_text}, y\u00a0{y_text}"
    place = row_and_column(survey, hole)
    if place is None:
        return f"At {at}."
    return f"Row {place[0]} from the near side, column {place[1]} from the left; {at}."


def _said(values: tuple[float, ...], aside: tuple[float, ...] = ()) -> str:
    if aside:
        listed = ", ".join(format_number(value, 1) for value in aside)
        return f"Set aside: {listed}. {_said(values) if values else 'Nothing else read here.'}"
    if not values:
        return "Nothing read here yet."
    listed = ", ".join(format_number(value, 1) for value in values)
    if len(values) == 1:
        return f"Read here: {listed}."
    mean = sum(values) / len(values)
    spread = max(values) - min(values)
    percent = 100 * spread / mean if mean > 0 else 0.0
    return (
        f"Read here: {listed}. Mean {format_number(mean, 1)}, from lowest to highest "
        f"{percent:.1f} %."
    )


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
            here = (reading for reading in survey.readings if reading.hole == hole)
            return "; ".join(
                f"({format_number(r.value, 1)})" if r.aside else format_number(r.value, 1)
                for r in here
            )
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
            "if you can, or set it aside; until then it counts as it is."
        )
    return ""


class ReadingTable(QTableView):
    """Shows the model; the line chosen is the hole at hand."""

    def __init__(self, desk: SurveyDesk) -> None:
        super().__init__()
        self.desk = desk
        self.readings = ReadingModel(desk, self)
        self.setModel(self.readings)
        theme.settle(self, "Readings by hole")
        self.setWordWrap(False)
        self.verticalHeader().hide()
        self.verticalHeader().setDefaultSectionSize(self.fontMetrics().height() + 8)
        header = self.horizontalHeader()
        header.setMinimumSectionSize(30)
        header.setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
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

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        # A header that stretches a section squeezes it to nothing where the font is large.
        others = sum(self.columnWidth(k) for k in range(len(HEADINGS)) if k != _READINGS)
        least = self.fontMetrics().horizontalAdvance("000.0; 000.0") + 12
        self.setColumnWidth(_READINGS, max(self.viewport().width() - others, least))

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
