"""The growth schedule over the weeks: canopy, lamp and ceiling as they stand, with the light."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from planner.app.canvas.ink import Ink, figure_font, mixed, pen
from planner.app.display import Display
from planner.light.cellmap import round_values
from planner.units import format_number

if TYPE_CHECKING:
    from planner.estimate.schedule import Schedule, StagePlan


class ScheduleChart(QWidget):
    """An elevation drawn over time: the canopy grows, the lamp rises with it."""

    def __init__(self, display: Display, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._display = display
        self._schedule: Schedule | None = None
        self._ceiling = 1.0
        self.setAccessibleName("Schedule over the weeks")
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)

    def show_schedule(self, schedule: Schedule | None, ceiling: float) -> None:
        """Show a schedule under a ceiling (metres)."""
        self._schedule, self._ceiling = schedule, ceiling
        words = "Nothing has been found yet."
        if schedule is not None:
            words = " ".join(stage.words for stage in schedule.stages)
        self.setAccessibleDescription(words)
        self.update()

    def sizeHint(self) -> QSize:
        return QSize(320, 150)

    def minimumSizeHint(self) -> QSize:
        return QSize(200, 96)

    def paintEvent(self, _event: QPaintEvent) -> None:
        ink = Ink.of(self.palette())
        painter = QPainter(self)
        painter.fillRect(self.rect(), ink.paper)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setFont(figure_font(self.font(), 0.88))
        metrics = QFontMetricsF(painter.font())
        left = metrics.horizontalAdvance("0000") + 12
        area = QRectF(
            left, metrics.height() + 4, self.width() - left - 10,
            self.height() - 3.2 * metrics.height() - 4,
        )  # fmt: skip
        schedule = self._schedule
        if schedule is None or schedule.weeks <= 0:
            painter.setPen(ink.quiet)
            flags = Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextWordWrap
            text = "Add stages and press 'Find for each stage' to see them over the weeks."
            painter.drawText(self.rect().adjusted(16, 8, -16, -8), flags, text)
            painter.end()
            return
        for stage in schedule.stages:
            self._paint_stage(painter, stage, area, schedule.weeks, ink)
        self._paint_axes(painter, area, schedule.weeks, ink)
        painter.end()

    def _x(self, week: float, area: QRectF, weeks: float) -> float:
        return area.left() + week / weeks * area.width()

    def _y(self, height: float, area: QRectF) -> float:
        return area.bottom() - min(height / self._ceiling, 1.0) * area.height()

    def _paint_stage(
        self, painter: QPainter, stage: StagePlan, area: QRectF, weeks: float, ink: Ink
    ) -> None:
        metrics = QFontMetricsF(painter.font())
        x0, x1 = (self._x(week, area, weeks) for week in (stage.first_week, stage.last_week))
        canopy = stage.stage.canopy_height
        top = self._y(canopy, area)
        leaves = mixed(ink.paper, QColor(78, 140, 60), 0.45)
        painter.fillRect(QRectF(x0, top, x1 - x0, area.bottom() - top), leaves)
        painter.setPen(pen(ink.faint, 1.0))
        painter.drawLine(QPointF(x1, area.top()), QPointF(x1, area.bottom()))
        room = x1 - x0 - 8
        elide = Qt.TextElideMode.ElideRight
        painter.setPen(ink.quiet)
        name = metrics.elidedText(stage.stage.name, elide, room)
        painter.drawText(QPointF(x0 + 4, metrics.ascent()), name)
        if stage.hanging_height is None or stage.estimate is None:
            painter.setPen(ink.alarm)
            text = metrics.elidedText("▲ cannot be set up", elide, room)
            painter.drawText(QPointF(x0 + 4, area.top() + metrics.height()), text)
            return
        lamp = self._y(canopy + stage.hanging_height, area)
        painter.setPen(pen(ink.accent, 3.0))
        painter.drawLine(QPointF(x0 + 2, lamp), QPointF(x1 - 2, lamp))
        shade = QColor(ink.accent)
        shade.setAlphaF(0.10)
        painter.fillRect(QRectF(x0, lamp, x1 - x0, top - lamp), shade)
        mark = "" if stage.met else "▲ "
        painter.setPen(ink.ink if stage.met else ink.alarm)
        text = f"{mark}{stage.estimate.figures.mean:.0f} µmol, {stage.output_percent:.0f} %"
        text = metrics.elidedText(text, elide, room)
        middle = (lamp + top) / 2 + metrics.capHeight() / 2
        painter.drawText(QPointF(x0 + 4, middle), text)

    def _paint_axes(self, painter: QPainter, area: QRectF, weeks: float, ink: Ink) -> None:
        metrics = QFontMetricsF(painter.font())
        unit = self._display.unit
        painter.setPen(pen(ink.ink, 1.4))
        painter.drawLine(area.topLeft(), area.topRight())
        painter.drawLine(area.bottomLeft(), area.bottomRight())
        right = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
        painter.setPen(ink.quiet)
        top = self._ceiling / unit.metres
        for value in round_values(0.0, top, max(2, int(area.height() / (2.5 * metrics.height())))):
            y = self._y(value * unit.metres, area)
            box = QRectF(0, y - 9, area.left() - 6, 18)
            painter.drawText(box, right, format_number(value, 0))
        painter.drawText(QPointF(4, metrics.ascent()), unit.value)
        wanted = max(2, int(area.width() / (3 * metrics.horizontalAdvance("000"))))
        for value in round_values(0.0, weeks, wanted):
            x = self._x(value, area, weeks)
            box = QRectF(x - 24, area.bottom() + 2, 48, metrics.height())
            painter.drawText(box, Qt.AlignmentFlag.AlignCenter, format_number(value, 1))
        box = QRectF(area.left(), area.bottom() + 2 + metrics.height(), area.width(), 18)
        flags = Qt.AlignmentFlag.AlignHCenter | Qt.AlignmentFlag.AlignTop
        painter.drawText(box, flags, "weeks")
