"""The ranked chart: lowest, mean and highest PPFD of each side, brightest first."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import QEvent, QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QFontMetricsF,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
)
from PySide6.QtWidgets import QSizePolicy, QWidget

from planner.app.canvas.ink import Ink, figure_font, pen
from planner.app.outlines import paint_focus
from planner.app.plots.colours import Levels
from planner.light.cellmap import round_values
from planner.units import format_number

UNIT = "µmol m⁻² s⁻¹"
_ROW = 2.3


@dataclass(frozen=True)
class RankLine:
    """A line of the chart; ``side`` is None for a measured set.

    ``alike`` says that it cannot be told from the baseline.
    """

    name: str
    lowest: float
    mean: float
    highest: float
    side: int | None = None
    alike: bool = False

    @property
    def measured(self) -> bool:
        """Whether it was read from a meter."""
        return self.side is None

    def words(self) -> str:
        """The line in words."""
        kind = "measured, " if self.measured else ""
        told = ", cannot be told from the baseline" if self.alike else ""
        return (
            f"{self.name}: {kind}mean {self.mean:.0f}, from {self.lowest:.0f} to "
            f"{self.highest:.0f}{told}"
        )


class RankingPlot(QWidget):
    """Estimated sides are filled dots on a full line, measured sets rings on a dashed one.

    ``picked(int)`` carries a side that is clicked, or reached by the arrow keys.
    """

    picked = Signal(int)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.lines: tuple[RankLine, ...] = ()
        self._band: Levels | None = None
        self._chosen = 0
        self.setAccessibleName("Ranking by mean PPFD")
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def show_lines(self, lines: tuple[RankLine, ...], band: Levels | None, chosen: int) -> None:
        """Show these, brightest first; ``chosen`` is a side."""
        self.lines = tuple(sorted(lines, key=lambda line: (-line.mean, line.name)))
        self._band, self._chosen = band, chosen
        self.setAccessibleDescription(f"{UNIT}. " + "; ".join(one.words() for one in self.lines))
        self.updateGeometry()
        self.update()

    def _metrics(self) -> QFontMetricsF:
        return QFontMetricsF(figure_font(self.font(), 0.92))

    def sizeHint(self) -> QSize:
        line = self._metrics().height()
        return QSize(260, round(len(self.lines) * _ROW * line + 2.4 * line))

    def minimumSizeHint(self) -> QSize:
        return QSize(160, self.sizeHint().height())

    def _area(self) -> QRectF:
        line = self._metrics().height()
        return QRectF(8, 0, self.width() - 18, max(self.height() - 2.4 * line, 1.0))

    def _top(self) -> float:
        top = max((line.highest for line in self.lines), default=0.0)
        if self._band is not None:
            top = max(top, min(self._band[1], 2 * top))
        return top * 1.04 or 1.0

    def place(self, value: float) -> float:
        """Horizontal pixel of a PPFD."""
        area = self._area()
        return area.left() + value / self._top() * area.width()

    # -- painting -----------------------------------------------------------------------

    def paintEvent(self, _event: QPaintEvent) -> None:
        ink = Ink.of(self.palette())
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setFont(figure_font(self.font(), 0.92))
        area = self._area()
        self._paint_axis(painter, area, ink)
        step = self._metrics().height() * _ROW
        for row, line in enumerate(self.lines):
            self._paint_line(painter, line, row * step, step, ink)
        paint_focus(self, painter)
        painter.end()

    def _paint_axis(self, painter: QPainter, area: QRectF, ink: Ink) -> None:
        metrics = self._metrics()
        if self._band is not None:
            shade = QColor(ink.accent)
            shade.setAlphaF(0.13)
            low, high = (min(self.place(end), area.right()) for end in self._band)
            painter.fillRect(QRectF(low, 0, high - low, area.height()), shade)
        painter.setPen(pen(ink.faint, 1.0))
        painter.drawLine(area.bottomLeft(), area.bottomRight())
        wanted = max(2, min(6, int(area.width() / metrics.horizontalAdvance("00000"))))
        for value in round_values(0.0, self._top(), wanted):
            x = self.place(value)
            painter.setPen(pen(ink.faint, 1.0))
            painter.drawLine(QPointF(x, area.bottom()), QPointF(x, area.bottom() + 4))
            painter.setPen(ink.quiet)
            box = QRectF(x - 30, area.bottom() + 4, 60, metrics.height())
            painter.drawText(box, Qt.AlignmentFlag.AlignCenter, format_number(value, 0))
        box = QRectF(area.left(), area.bottom() + 4 + metrics.height(), area.width(), 20)
        painter.setPen(ink.quiet)
        painter.drawText(box, Qt.AlignmentFlag.AlignHCenter | Qt.AlignmentFlag.AlignTop, UNIT)

    def _paint_line(
        self, painter: QPainter, line: RankLine, top: float, height: float, ink: Ink
    ) -> None:
        chosen = line.side is not None and line.side == self._chosen
        metrics = self._metrics()
        baseline = top + metrics.height()
        value = f"≈ {line.mean:.0f}" if line.alike else f"{line.mean:.0f}"
        taken = metrics.horizontalAdvance(value) + 8
        painter.setPen(ink.accent if chosen else ink.ink)
        name = f"{line.name} (measured)" if line.measured else line.name
        room = self.width() - 14 - taken
        text = metrics.elidedText(name, Qt.TextElideMode.ElideRight, room)
        painter.drawText(QPointF(6, baseline - 1), text)
        painter.drawText(QPointF(self.width() - 6 - taken + 8, baseline - 1), value)
        y = top + 0.78 * height
        colour = ink.accent if chosen else ink.quiet
        style = Qt.PenStyle.DashLine if line.measured else Qt.PenStyle.SolidLine
        painter.setPen(pen(colour, 2.0, style))
        low, mean, high = (self.place(v) for v in (line.lowest, line.mean, line.highest))
        painter.drawLine(QPointF(low, y), QPointF(high, y))
        painter.setPen(pen(colour, 2.0))
        for end in (low, high):
            painter.drawLine(QPointF(end, y - 3), QPointF(end, y + 3))
        painter.setBrush(ink.paper if line.measured else colour)
        painter.drawEllipse(QPointF(mean, y), 3.6, 3.6)

    # -- mouse and keys -----------------------------------------------------------------

    def line_at(self, y: float) -> RankLine | None:
        """The line under a vertical pixel."""
        row = int(y // (self._metrics().height() * _ROW))
        return self.lines[row] if 0 <= row < len(self.lines) else None

    def mousePressEvent(self, event: QMouseEvent) -> None:
        line = self.line_at(event.position().y())
        if line is not None and line.side is not None:
            self.picked.emit(line.side)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        step = {Qt.Key.Key_Up: -1, Qt.Key.Key_Down: 1}.get(Qt.Key(event.key()))
        sides = [line.side for line in self.lines if line.side is not None]
        if step is None or not sides:
            super().keyPressEvent(event)
            return
        at = sides.index(self._chosen) if self._chosen in sides else 0
        self.picked.emit(sides[min(max(at + step, 0), len(sides) - 1)])

    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() in {QEvent.Type.PaletteChange, QEvent.Type.FontChange}:
            self.updateGeometry()
            self.update()
