"""PPFD along the shared section line, one curve for each side."""

from __future__ import annotations

from typing import Any

import numpy as np
from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QFontMetricsF, QPainter, QPaintEvent, QPolygonF
from PySide6.QtWidgets import QSizePolicy, QWidget

from planner.app.canvas.ink import Ink, figure_font, pen
from planner.app.canvas.sampling import profile_along
from planner.app.pages.side.comparer import Comparer
from planner.app.pages.side.linked import Linked
from planner.app.plots.colours import round_values
from planner.units import format_number

_POINTS = 81


class SectionCurves(QWidget):
    """The chosen side in the accent, the baseline dark and dashed, the others quiet."""

    def __init__(self, comparer: Comparer, linked: Linked, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._comparer, self._linked = comparer, linked
        self.setAccessibleName("Light along the section line")
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        comparer.compared.connect(self._on_new)
        linked.section_moved.connect(lambda _section: self._on_new())
        linked.changed.connect(lambda _new, _old: self._on_new())
        self._curves: list[tuple[int, Any, Any]] = []

    def sizeHint(self) -> QSize:
        return QSize(260, 130)

    def _on_new(self) -> None:
        section = self._linked.section
        self._curves = []
        if section is not None:
            for index, side in enumerate(self._comparer.sides):
                if side.estimate is not None:
                    distance, ppfd = profile_along(side.estimate, section, _POINTS)
                    self._curves.append((index, distance, ppfd))
        self.setAccessibleDescription(self.words())
        self.update()

    def words(self) -> str:
        """What the chosen curve shows."""
        chosen = self._linked.state.chosen
        for index, _, ppfd in self._curves:
            known = ppfd[np.isfinite(ppfd)]
            if index == chosen and known.size:
                name = self._comparer.sides[index].name
                return f"{name}: from {known.min():.0f} to {known.max():.0f} µmol m⁻² s⁻¹."
        return "No light along the line."

    def paintEvent(self, _event: QPaintEvent) -> None:
        ink = Ink.of(self.palette())
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setFont(figure_font(self.font(), 0.85))
        metrics = QFontMetricsF(painter.font())
        left = metrics.horizontalAdvance("0000") + 8
        area = QRectF(left, 4, self.width() - left - 8, self.height() - metrics.height() - 8)
        top = max(
            (float(np.nanmax(p)) for _, _, p in self._curves if np.isfinite(p).any()), default=0.0
        )
        top = top * 1.05 or 100.0
        painter.setPen(pen(ink.faint, 1.0))
        painter.drawLine(area.bottomLeft(), area.bottomRight())
        for value in round_values(0.0, top, 3):
            y = area.bottom() - value / top * area.height()
            painter.setPen(pen(ink.faint, 1.0))
            painter.drawLine(QPointF(area.left() - 4, y), QPointF(area.left(), y))
            painter.setPen(ink.quiet)
            box = QRectF(0, y - 8, left - 6, 16)
            flags = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
            painter.drawText(box, flags, format_number(value, 0))
        painter.setPen(ink.quiet)
        for text, flag in (("A", Qt.AlignmentFlag.AlignLeft), ("B", Qt.AlignmentFlag.AlignRight)):
            box = QRectF(area.left(), area.bottom() + 2, area.width(), metrics.height())
            painter.drawText(box, flag, text)
        state = self._linked.state
        for index, distance, ppfd in sorted(
            self._curves, key=lambda one: (one[0] == state.chosen, one[0] == state.baseline)
        ):
            line = pen(ink.faint, 1.2)
            if index == state.baseline:
                line = pen(ink.ink, 1.4, Qt.PenStyle.DashLine)
            if index == state.chosen:
                line = pen(ink.accent, 2.0)
            painter.setPen(line)
            self._paint_curve(painter, area, distance, ppfd, top)
        painter.end()

    def _paint_curve(
        self, painter: QPainter, area: QRectF, distance: Any, ppfd: Any, top: float
    ) -> None:
        length = float(distance[-1]) or 1.0
        run: list[QPointF] = []
        for along, value in zip(distance.tolist(), ppfd.tolist(), strict=True):
            if value == value:  # noqa: PLR0124 - not NaN
                x = area.left() + along / length * area.width()
                run.append(QPointF(x, area.bottom() - value / top * area.height()))
            elif run:
                painter.drawPolyline(QPolygonF(run))
                run = []
        if run:
            painter.drawPolyline(QPolygonF(run))
