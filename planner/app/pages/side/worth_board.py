"""Worth it, under the maps: what is bought of each lining, and how it is cut."""

from __future__ import annotations

from PySide6.QtWidgets import (
    QAbstractItemView,
    QFrame,
    QHBoxLayout,
    QLabel,
    QScrollArea,
    QTableWidget,
    QTableWidgetItem,
    QVBoxLayout,
    QWidget,
)

from planner.app import theme
from planner.app.display import Display
from planner.app.document import Document
from planner.app.pages.side.cutting_drawing import CuttingDrawing
from planner.metrics.cost import Cover, Purchase
from planner.plan.costs import Form
from planner.plan.plan import Plan

HEADINGS = ("Lining", "Area", "Pieces", "To buy", "Waste", "Cost")


class WorthBoard(QWidget):
    """A table of linings over a drawing of the cuts."""

    def __init__(self, document: Document, display: Display, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._document = document
        self.heading = QLabel("To buy and to cut")
        font = self.heading.font()
        font.setBold(True)
        self.heading.setFont(font)
        self.table = QTableWidget(0, len(HEADINGS))
        self.table.setAccessibleName("Linings to buy")
        self.table.setHorizontalHeaderLabels(list(HEADINGS))
        self.table.setFont(theme.tabular(self.table.font()))
        self.table.setFrameShape(QFrame.Shape.NoFrame)
        self.table.setShowGrid(False)
        self.table.setTabKeyNavigation(False)
        self.table.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.table.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.table.verticalHeader().hide()
        self.table.verticalHeader().setDefaultSectionSize(
            round(1.6 * self.table.fontMetrics().height())
        )
        self.table.horizontalHeader().setHighlightSections(False)
        self.drawing = CuttingDrawing(display)
        area = QScrollArea()
        area.setFrameShape(QFrame.Shape.NoFrame)
        area.setWidgetResizable(True)
        area.setWidget(self.drawing)
        both = QHBoxLayout()
        both.setContentsMargins(0, 0, 0, 0)
        both.setSpacing(theme.RHYTHM)
        both.addWidget(self.table, 1)
        both.addWidget(area, 1)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(theme.HALF)
        layout.addWidget(self.heading)
        layout.addLayout(both, 1)

    def show_covers(
        self,
        plan: Plan | None,
        name: str,
        purchases: tuple[Purchase, ...],
        unknown: tuple[Cover, ...],
        there: tuple[Cover, ...],
    ) -> None:
        """Show what is bought for a plan, what has no goods yet, and what is there already."""
        self.heading.setText(f"To buy and to cut for '{name}'" if name else "To buy and to cut")
        lines: list[tuple[Cover, Purchase | None, str]] = [
            (bought.cover, bought, "") for bought in purchases
        ]
        lines += [(cover, None, "say how it is sold") for cover in unknown]
        lines += [(cover, None, "is there") for cover in there]
        self.table.setRowCount(len(lines))
        for row, (cover, bought, words) in enumerate(lines):
            for column, text in enumerate(self._cells(plan, cover, bought, words)):
                self.table.setItem(row, column, QTableWidgetItem(text))
        self.table.resizeColumnsToContents()
        self.table.setColumnWidth(0, min(self.table.columnWidth(0), 190))
        named = tuple((_name(plan, one.cover.lining), one) for one in purchases)
        self.drawing.show_purchases(named)

    def _cells(
        self, plan: Plan | None, cover: Cover, bought: Purchase | None, words: str
    ) -> tuple[str, ...]:
        name = _name(plan, cover.lining)
        area, pieces = f"{cover.area:.2f} m²", str(len(cover.pieces))
        if bought is None:
            return name, area, pieces, words, "", ""
        kind = "roll" if bought.goods.form is Form.ROLL else "sheet"
        count = bought.cutting.rolls
        buy = f"{count} {kind}" + ("" if count == 1 else "s")
        currency = self._document.plan.costs.currency
        cost = "no price" if bought.cost is None else f"{bought.cost:.2f} {currency}".rstrip()
        return name, area, pieces, buy, f"{100 * bought.cutting.waste:.0f} %", cost


def _name(plan: Plan | None, key: str) -> str:
    if plan is None or all(lining.key != key for lining in plan.linings):
        return key
    return plan.lining(key).name
