"""The stages of a growth schedule as a table: what is wanted, and what was found for it."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, Any, Final

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QPersistentModelIndex, Qt, Signal
from PySide6.QtWidgets import QAbstractItemView, QTableView, QWidget

from planner.app import theme
from planner.app.document import Document
from planner.metrics.figures import FIGURE, percent, ppfd
from planner.plan.edits import changed
from planner.plan.quantity import DLI, HEIGHT, HOURS, PPFD, Quantity
from planner.plan.refusal import refusal
from planner.plan.stage import GrowthStage
from planner.plan.target import DliTarget
from planner.units import LengthUnit, format_length, format_number

if TYPE_CHECKING:
    from planner.estimate.schedule import Schedule, StagePlan

_Role = Qt.ItemDataRole
Index = QModelIndex | QPersistentModelIndex
_WEEKS: Final = Quantity("weeks", decimals=1, step=0.5).within(0.1, 104.0)
WANTED: Final = ("Stage", "Canopy", "From", "To", "Hours", "Weeks")
FOUND: Final = ("Hang at", "Output", "Mean", "Min / mean", "DLI", "kWh", "Cost", "Heed")


class StageModel(QAbstractTableModel):
    """The first columns are edited in place; each edit is one undo step.

    ``refused(str)`` says why an edit was not taken.
    """

    refused = Signal(str)

    def __init__(self, document: Document, unit: Callable[[], LengthUnit], parent: QWidget) -> None:
        super().__init__(parent)
        self._document, self._unit = document, unit
        self._found: Schedule | None = None

    @property
    def stages(self) -> tuple[GrowthStage, ...]:
        """The stages of the plan."""
        return self._document.plan.schedule

    def refresh(self, found: Schedule | None) -> None:
        """Show the plan's stages and what was found for them (None: nothing yet)."""
        self.beginResetModel()
        self._found = found
        self.endResetModel()

    def rowCount(self, parent: Index | None = None) -> int:
        return 0 if parent is not None and parent.isValid() else len(self.stages)

    def columnCount(self, parent: Index | None = None) -> int:
        return 0 if parent is not None and parent.isValid() else len(WANTED) + len(FOUND)

    def headerData(
        self, section: int, orientation: Qt.Orientation, role: int = _Role.DisplayRole
    ) -> Any:
        if role == _Role.TextAlignmentRole and section in {0, len(WANTED) + len(FOUND) - 1}:
            return Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
        if orientation is Qt.Orientation.Horizontal and role == _Role.DisplayRole:
            return (*WANTED, *FOUND)[section]
        return None

    def flags(self, index: Index) -> Qt.ItemFlag:
        flags = Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsSelectable
        return flags | Qt.ItemFlag.ItemIsEditable if index.column() < len(WANTED) else flags

    def answer(self, row: int) -> StagePlan | None:
        """What was found for a stage."""
        if self._found is None or row >= len(self._found.stages):
            return None
        return self._found.stages[row]

    def data(self, index: Index, role: int = _Role.DisplayRole) -> Any:
        if not index.isValid() or index.row() >= len(self.stages):
            return None
        row, column = index.row(), index.column()
        if role in {_Role.DisplayRole, _Role.EditRole}:
            if column < len(WANTED):
                return self._wanted(self.stages[row], column)
            return self._answered(row, column - len(WANTED))
        if role == _Role.TextAlignmentRole and 0 < column < self.columnCount() - 1:
            return Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
        found = self.answer(row)
        if role == _Role.ToolTipRole and found is not None:
            return "".join(f"<p>{text}</p>" for text in (found.words, *found.warnings))
        return None

    def _wanted(self, stage: GrowthStage, column: int) -> str:
        target = stage.target
        quantity = DLI if isinstance(target, DliTarget) else PPFD
        unit = self._unit()
        return (
            stage.name,
            format_length(stage.canopy_height, unit),
            format_number(target.low, 1),
            quantity.text(target.high, unit),
            HOURS.text(stage.photoperiod_hours, unit),
            format_number(stage.weeks, 1),
        )[column]

    def _answered(self, row: int, column: int) -> str:
        found = self.answer(row)
        if found is None:
            return ""
        if found.estimate is None or found.hanging_height is None or found.output_percent is None:
            return "cannot be set up" if column == len(FOUND) - 1 else "–"
        figures = found.estimate.figures
        return (
            format_length(found.hanging_height, self._unit()),
            f"{found.output_percent:.0f} %",
            ppfd(figures.mean),
            percent(figures.min_over_mean),
            FIGURE["dli"].number(figures.dli),
            f"{found.kwh:.1f}",
            "–" if found.cost is None else f"{found.cost:.2f}",
            "; ".join(_short(text, found.stage.name) for text in found.warnings) or "target met",
        )[column]

    def setData(self, index: Index, value: Any, role: int = _Role.EditRole) -> bool:
        if role != _Role.EditRole or not index.isValid():
            return False
        stage, text = self.stages[index.row()], str(value).strip()
        if text == self._wanted(stage, index.column()):
            return False
        try:
            made = self._edited(stage, index.column(), text)
            stages = list(self.stages)
            stages[index.row()] = made
            plan = changed(self._document.plan, schedule=tuple(stages))
        except ValueError as error:
            self.refused.emit(f"{WANTED[index.column()]}: {refusal(error, self._unit())}")
            return False
        self.refused.emit("")
        self._document.apply(plan, f"Change stage {made.name}")
        return True

    def _edited(self, stage: GrowthStage, column: int, text: str) -> GrowthStage:
        unit = self._unit()
        parts: dict[str, Any] = {name: getattr(stage, name) for name in GrowthStage.model_fields}
        if column == 0:
            parts["name"] = text
        elif column == 1:
            parts["canopy_height"] = HEIGHT.parse(text, unit)
        elif column in {2, 3}:
            quantity = DLI if isinstance(stage.target, DliTarget) else PPFD
            ends = {"low": stage.target.low, "high": stage.target.high}
            ends["low" if column == 2 else "high"] = quantity.parse(text, unit)
            parts["target"] = type(stage.target)(low=ends["low"], high=ends["high"])
        elif column == 4:
            parts["photoperiod_hours"] = HOURS.parse(text, unit)
        else:
            parts["weeks"] = _WEEKS.parse(text, unit)
        return GrowthStage.model_validate(parts)


def _short(warning: str, name: str) -> str:
    return warning.removeprefix(f"{name}: ")


class StageTable(QTableView):
    """The table; Delete takes the chosen stage out."""

    def __init__(self, model: StageModel, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setModel(model)
        self.setAccessibleName("Growth schedule")
        self.setFont(theme.tabular(self.font()))
        self.setFrameShape(QTableView.Shape.NoFrame)
        self.setShowGrid(False)
        self.setAlternatingRowColors(True)
        self.setTabKeyNavigation(False)
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectItems)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setHorizontalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.verticalHeader().hide()
        self.verticalHeader().setDefaultSectionSize(round(1.7 * self.fontMetrics().height()))
        self.horizontalHeader().setHighlightSections(False)
        model.modelReset.connect(self._size)

    def _size(self) -> None:
        self.resizeColumnsToContents()
        self.setColumnWidth(0, min(max(self.columnWidth(0), 120), 200))
        self.setColumnWidth(len(WANTED) + len(FOUND) - 1, 320)
