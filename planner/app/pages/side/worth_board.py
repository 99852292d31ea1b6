"""What is bought of each lining in a table, and how it is cut, to scale."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QFontMetricsF, QPainter, QPaintEvent
from PySide6.QtWidgets import (
    QAbstractItemView,
    QFrame,
    QScrollArea,
    QSizePolicy,
    QTableWidget,
    QTableWidgetItem,
    QVBoxLayout,
    QWidget,
)

from planner.app import theme
from planner.app.canvas.ink import Ink, figure_font, mixed, pen
from planner.app.display import Display
from planner.app.document import Document
from planner.app.plain import PlainLabel
from planner.estimate.worth import Bill, Cover, Purchase
from planner.metrics.cutting import CuttingList, Placed
from planner.plan.costs import Form
from planner.plan.plan import Plan
from planner.units import format_length

_MOST_ROLLS: Final = 6


class CuttingDrawing(QWidget):
    """Rolls lie on their side, unrolled to the right; only as much as is used is drawn."""

    def __init__(self, display: Display, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._display = display
        self.purchases: tuple[tuple[str, Purchase], ...] = ()
        self.setAccessibleName("Cutting list")
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        display.changed.connect(lambda _state: self.update())

    def show_purchases(self, purchases: tuple[tuple[str, Purchase], ...]) -> None:
        """Show what is cut of what; each with the name of its lining."""
        self.purchases = purchases
        self.setAccessibleDescription(" ".join(self.words()) or "Nothing to cut.")
        self.updateGeometry()
        self.update()

    def words(self) -> list[str]:
        """The cutting list in words, a sentence a piece."""
        unit = self._display.unit
        said = []
        for name, bought in self.purchases:
            kind = "roll" if bought.goods.form is Form.ROLL else "sheet"
            for piece in bought.cutting.placed:
                size = (
                    f"{format_length(piece.size_along, unit, with_unit=False)} x "
                    f"{format_length(piece.size_across, unit)}"
                )
                said.append(f"{name}, {kind} {piece.roll + 1}: {piece.label}, {size}.")
        return said

    def _strips(self) -> list[tuple[str, CuttingList, int]]:
        return [
            (name, bought.cutting, roll)
            for name, bought in self.purchases
            for roll in range(min(bought.cutting.rolls, _MOST_ROLLS))
        ]

    def sizeHint(self) -> QSize:
        return QSize(360, 60 + 80 * len(self._strips()))

    def minimumSizeHint(self) -> QSize:
        return QSize(200, 60 + 56 * len(self._strips()))

    def paintEvent(self, _event: QPaintEvent) -> None:
        ink = Ink.of(self.palette())
        painter = QPainter(self)
        painter.fillRect(self.rect(), ink.paper)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setFont(figure_font(self.font(), 0.88))
        strips = self._strips()
        if not strips:
            painter.setPen(ink.quiet)
            flags = Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextWordWrap
            text = "Say how the linings are sold, and the pieces are laid out here."
            painter.drawText(self.rect().adjusted(20, 10, -20, -10), flags, text)
            painter.end()
            return
        metrics = QFontMetricsF(painter.font())
        line = metrics.height()
        lengths = [_drawn_length(cutting, roll) for _, cutting, roll in strips]
        across = sum(cutting.width for _, cutting, _ in strips)
        room = self.height() - len(strips) * (line + 10) - 8
        scale = min((self.width() - 24) / max(*lengths, 0.01), room / max(across, 0.01))
        y = 4.0
        for (name, cutting, roll), length in zip(strips, lengths, strict=True):
            painter.setPen(ink.ink)
            width = format_length(cutting.width, self._display.unit)
            text = f"{name} {roll + 1} of {cutting.rolls}, {width} wide"
            painter.drawText(QPointF(12, y + metrics.ascent()), text)
            area = QRectF(12, y + line + 2, length * scale, cutting.width * scale)
            painter.fillRect(area, mixed(ink.paper, ink.ink, 0.06))
            painter.setPen(pen(ink.quiet, 1.0))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRect(area)
            for piece in cutting.placed:
                if piece.roll == roll:
                    self._paint_piece(painter, piece, area, scale, ink)
            y = area.bottom() + 8
        painter.end()

    def _paint_piece(
        self, painter: QPainter, piece: Placed, area: QRectF, scale: float, ink: Ink
    ) -> None:
        rect = QRectF(
            area.left() + piece.along * scale, area.top() + piece.across * scale,
            piece.size_along * scale, piece.size_across * scale,
        )  # fmt: skip
        painter.fillRect(rect, mixed(ink.paper, ink.accent, 0.22))
        painter.setPen(pen(ink.accent, 1.2))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRect(rect)
        metrics = QFontMetricsF(painter.font())
        unit = self._display.unit
        size = (
            f"{format_length(piece.size_along, unit, with_unit=False)} x "
            f"{format_length(piece.size_across, unit, with_unit=False)}"
        )
        painter.setPen(ink.ink)
        inside = rect.adjusted(3, 1, -3, -1)
        elide = Qt.TextElideMode.ElideRight
        if inside.width() < metrics.horizontalAdvance("W 1"):
            return
        texts = [metrics.elidedText(piece.label, elide, inside.width())]
        if inside.height() >= 2 * metrics.height():
            texts.append(metrics.elidedText(size, elide, inside.width()))
        if inside.height() >= 0.8 * metrics.height():
            flags = Qt.AlignmentFlag.AlignCenter
            painter.drawText(inside, flags, "\n".join(texts))


def _drawn_length(cutting: CuttingList, roll: int) -> float:
    """How much of a roll is drawn: what is cut from it, and a little more where there is."""
    used = max((p.along + p.size_along for p in cutting.placed if p.roll == roll), default=0.0)
    return min(cutting.length, 1.06 * used)


HEADINGS = ("What", "Area", "Pieces", "To buy", "Waste", "Cost")


class WorthBoard(QWidget):
    """A table of linings over a drawing of the cuts."""

    def __init__(self, document: Document, display: Display, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._document = document
        self.heading = PlainLabel("To buy and to cut")
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
        self.words = PlainLabel()
        self.words.setWordWrap(True)
        self.words.setAccessibleName("Whether it is worth it")
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(theme.HALF)
        layout.addWidget(self.words)
        layout.addWidget(self.heading)
        layout.addWidget(self.table, 1)
        layout.addWidget(area, 2)

    def show_bill(
        self, plan: Plan, name: str, bought: Bill | None, there: tuple[Cover, ...]
    ) -> None:
        """Show what is bought for a plan (None: still being laid out), and what is there."""
        self.heading.setText(f"To buy and to cut for '{name}'")
        if bought is None:
            self.heading.setText(f"Laying out the pieces for '{name}'…")
            bought = Bill()
        lines = [self._cells(plan, one.cover, one, "") for one in bought.purchases]
        lines += [self._cells(plan, one, None, "say how it is sold") for one in bought.unknown]
        for lamp in bought.lamps:
            count = f"{lamp.count} lamp" + ("" if lamp.count == 1 else "s")
            price = None if lamp.price is None else lamp.count * lamp.price
            lines.append((lamp.name, "", "", count, "", self._money(price)))
        if lines:
            area = sum(one.cover.area for one in bought.purchases)
            area += sum(one.area for one in bought.unknown)
            lines.append(("All of it", f"{area:.2f} m²", "", "", "", self._money(bought.cost)))
        lines += [self._cells(plan, one, None, "is there") for one in there]
        self.table.setRowCount(len(lines))
        for row, cells in enumerate(lines):
            for column, text in enumerate(cells):
                self.table.setItem(row, column, QTableWidgetItem(text))
        self.table.resizeColumnsToContents()
        named = tuple((_name(plan, one.cover.lining), one) for one in bought.purchases)
        self.drawing.show_purchases(named)

    def _money(self, value: float | None) -> str:
        currency = self._document.plan.costs.currency
        return "no price" if value is None else f"{value:.2f} {currency}".rstrip()

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
        waste = f"{100 * bought.cutting.waste:.0f} %"
        return name, area, pieces, buy, waste, self._money(bought.cost)


def _name(plan: Plan | None, key: str) -> str:
    if plan is None or all(lining.key != key for lining in plan.linings):
        return key
    return plan.lining(key).name
