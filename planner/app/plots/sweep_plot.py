"""Curves of a sweep: PPFD above, evenness and share in the band below, over one number."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from PySide6.QtCore import QEvent, QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QFontMetricsF,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPolygonF,
)
from PySide6.QtWidgets import QSizePolicy, QWidget

from planner.app.canvas.ink import Ink, draw_plate_text, figure_font, mixed, pen
from planner.app.outlines import paint_focus
from planner.app.plots.colours import Levels
from planner.light.cellmap import round_values
from planner.units import format_number

PPFD_UNIT: Final = "PPFD (µmol m⁻² s⁻¹)"
UPPER: Final = (("maximum", "max"), ("mean", "mean"), ("minimum", "min"))
LOWER: Final = (("min_over_mean", "min/mean"), ("share_inside", "in band"))


@dataclass(frozen=True)
class SweepCurves:
    """What is drawn.

    ``xs`` as shown (in ``unit``), rising; ``figures`` holds a list of values for each figure
    by name, None where a point has none, fractions for ratios; ``now`` is where the plan
    stands, None where it has no single place.
    """

    label: str
    unit: str
    xs: tuple[float, ...]
    figures: dict[str, tuple[float | None, ...]]
    now: float | None = None
    band: Levels | None = None
    decimals: int = 1


class SweepPlot(QWidget):
    """Two stacked charts over one axis.

    ``chosen(int)`` when a point is clicked or reached by the arrow keys, ``taken(int)`` on
    Enter or a double click; both carry its number in ``xs``.
    """

    chosen = Signal(int)
    taken = Signal(int)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.curves: SweepCurves | None = None
        self.point: int | None = None
        self._hover: int | None = None
        self.setMouseTracking(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setAccessibleName("Curves of the sweep")

    def show_curves(self, curves: SweepCurves | None) -> None:
        """Show other curves; no point is chosen then."""
        self.curves, self.point, self._hover = curves, None, None
        self._describe()
        self.update()

    def choose(self, point: int | None) -> None:
        """Mark a point."""
        if point != self.point:
            self.point = point
            self._describe()
            self.update()
            if point is not None:
                self.chosen.emit(point)

    def words_at(self, point: int) -> str:
        """A point in words."""
        curves = self.curves
        if curves is None:
            return ""
        value = format_number(curves.xs[point], curves.decimals)
        parts = [f"{curves.label} {value} {curves.unit}".rstrip()]
        for name, label in ((n, t) for n, t in UPPER if n != "maximum"):
            number = self._at(name, point)
            if number is not None:
                parts.append(f"{label} {number:.0f}")
        for name, label in LOWER:
            number = self._at(name, point)
            if number is not None:
                parts.append(f"{label} {100 * number:.0f} %")
        return ", ".join(parts)

    def _at(self, figure: str, point: int) -> float | None:
        values = () if self.curves is None else self.curves.figures.get(figure, ())
        return values[point] if point < len(values) else None

    def _describe(self) -> None:
        if self.curves is None or not self.curves.xs:
            self.setAccessibleDescription("Nothing has been swept yet.")
            return
        first = f"{len(self.curves.xs)} points over {self.curves.label}."
        at = "" if self.point is None else f" {self.words_at(self.point)}"
        self.setAccessibleDescription(first + at)

    def sizeHint(self) -> QSize:
        return QSize(520, 260)

    def minimumSizeHint(self) -> QSize:
        return QSize(240, 150)

    # -- geometry -----------------------------------------------------------------------

    def _metrics(self) -> QFontMetricsF:
        return QFontMetricsF(figure_font(self.font(), 0.88))

    def _areas(self) -> tuple[QRectF, QRectF]:
        metrics = self._metrics()
        line = metrics.height()
        left = metrics.horizontalAdvance("0000") + 12
        right = metrics.horizontalAdvance("min/mean") + 14
        width = max(self.width() - left - right, 20.0)
        height = max(self.height() - 4.4 * line, 40.0)
        upper = QRectF(left, line + 2, width, height * 0.62)
        return upper, QRectF(left, upper.bottom() + 0.9 * line, width, height * 0.38)

    def x_of(self, value: float) -> float:
        """Horizontal pixel of a value of the axis."""
        area, curves = self._areas()[0], self.curves
        if curves is None or not curves.xs:
            return area.left()
        low, high = self._span(curves)
        return area.left() + (value - low) / max(high - low, 1e-12) * area.width()

    @staticmethod
    def _span(curves: SweepCurves) -> Levels:
        low, high = min(curves.xs), max(curves.xs)
        if curves.now is not None and low <= curves.now <= high:
            return low, high
        return (low - 1, high + 1) if low == high else (low, high)

    def _top(self) -> float:
        values = self.curves.figures.get("maximum", ()) if self.curves is not None else ()
        top = max((v for v in values if v is not None), default=0.0)
        return top * 1.04 or 100.0

    # -- painting -----------------------------------------------------------------------

    def paintEvent(self, _event: QPaintEvent) -> None:
        ink = Ink.of(self.palette())
        painter = QPainter(self)
        painter.fillRect(self.rect(), ink.paper)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setFont(figure_font(self.font(), 0.88))
        if self.curves is not None and self.curves.xs:
            self._paint(painter, self.curves, ink)
        else:
            painter.setPen(ink.quiet)
            flags = Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextWordWrap
            text = "Choose over what, from where to where, and press 'Sweep'."
            painter.drawText(self.rect().adjusted(20, 20, -20, -20), flags, text)
        paint_focus(self, painter)
        painter.end()

    def _paint(self, painter: QPainter, curves: SweepCurves, ink: Ink) -> None:
        upper, lower = self._areas()
        metrics = self._metrics()
        painter.setPen(ink.quiet)
        painter.drawText(QPointF(upper.left() - 8, metrics.ascent()), PPFD_UNIT)
        if curves.band is not None:
            shade = QColor(ink.accent)
            shade.setAlphaF(0.12)
            low, high = (
                upper.bottom() - min(end / self._top(), 1.0) * upper.height() for end in curves.band
            )
            painter.fillRect(QRectF(upper.left(), high, upper.width(), low - high), shade)
        self._paint_axes(painter, curves, (upper, lower), ink)
        self._paint_now(painter, curves, upper, lower, ink)
        styles = {
            "maximum": pen(ink.quiet, 1.2, Qt.PenStyle.DashLine),
            "mean": pen(ink.accent, 2.2),
            "minimum": pen(ink.quiet, 1.2),
            "min_over_mean": pen(ink.ink, 1.8),
            "share_inside": pen(mixed(ink.accent, ink.ink, 0.3), 1.4, Qt.PenStyle.DotLine),
        }
        for area, names, top in ((upper, UPPER, self._top()), (lower, LOWER, 1.0)):
            ends: list[float] = []
            for name, label in names:
                painter.setPen(styles[name])
                points = self._points(curves, name, area, top)
                painter.drawPolyline(QPolygonF([at for _, at in points]))
                painter.setBrush(styles[name].color())
                for _, at in points:
                    painter.drawEllipse(at, 1.4, 1.4)
                if points:
                    y = _free(points[-1][1].y(), ends, metrics.height() * 0.92)
                    painter.setPen(styles[name].color())
                    painter.drawText(QPointF(area.right() + 6, y + metrics.capHeight() / 2), label)
        self._paint_point(painter, curves, upper, lower, ink)

    def _paint_axes(
        self, painter: QPainter, curves: SweepCurves, areas: tuple[QRectF, QRectF], ink: Ink
    ) -> None:
        metrics = self._metrics()
        right = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
        for area, top, factor in ((areas[0], self._top(), 1), (areas[1], 1.0, 100)):
            painter.setPen(pen(ink.faint, 1.0))
            painter.drawLine(area.bottomLeft(), area.bottomRight())
            wanted = max(2, int(area.height() / (2.4 * metrics.height())))
            for value in round_values(0.0, top, wanted):
                y = area.bottom() - value / top * area.height()
                painter.setPen(pen(ink.faint, 1.0))
                painter.drawLine(QPointF(area.left() - 4, y), QPointF(area.left(), y))
                painter.setPen(ink.quiet)
                text = format_number(value * factor, 0) + (" %" if factor > 1 else "")
                painter.drawText(QRectF(0, y - 9, area.left() - 6, 18), right, text)
        low, high = self._span(curves)
        y = areas[1].bottom()
        wanted = max(2, int(areas[1].width() / (1.6 * metrics.horizontalAdvance("000000"))))
        for value in round_values(low, high, wanted):
            x = self.x_of(value)
            painter.setPen(pen(ink.faint, 1.0))
            painter.drawLine(QPointF(x, y), QPointF(x, y + 4))
            painter.setPen(ink.quiet)
            box = QRectF(x - 40, y + 4, 80, metrics.height())
            text = format_number(value, max(curves.decimals, 1))
            painter.drawText(box, Qt.AlignmentFlag.AlignCenter, text)
        unit = f" ({curves.unit})" if curves.unit else ""
        box = QRectF(areas[1].left(), y + 4 + metrics.height(), areas[1].width(), 20)
        flags = Qt.AlignmentFlag.AlignHCenter | Qt.AlignmentFlag.AlignTop
        painter.drawText(box, flags, curves.label + unit)

    def _paint_now(
        self, painter: QPainter, curves: SweepCurves, upper: QRectF, lower: QRectF, ink: Ink
    ) -> None:
        if curves.now is None:
            return
        low, high = self._span(curves)
        if not low <= curves.now <= high:
            return
        x = self.x_of(curves.now)
        painter.setPen(pen(ink.quiet, 1.0, Qt.PenStyle.DashLine))
        painter.drawLine(QPointF(x, upper.top()), QPointF(x, lower.bottom()))
        text = "the plan now"
        metrics = self._metrics()
        half = metrics.horizontalAdvance(text) / 2 + 4
        at = min(max(x, upper.left() + half), upper.right() - half)
        draw_plate_text(painter, QPointF(at, upper.top() + 2), text, ink.quiet, ink.paper)

    def _paint_point(
        self, painter: QPainter, curves: SweepCurves, upper: QRectF, lower: QRectF, ink: Ink
    ) -> None:
        at = self._hover if self._hover is not None else self.point
        for point, colour in ((self._hover, ink.faint), (self.point, ink.accent)):
            if point is not None and point < len(curves.xs):
                x = self.x_of(curves.xs[point])
                painter.setPen(pen(colour, 1.4))
                painter.drawLine(QPointF(x, upper.top()), QPointF(x, lower.bottom()))
        if at is None or at >= len(curves.xs):
            return
        text = self.words_at(at)
        half = self._metrics().horizontalAdvance(text) / 2 + 6
        x = min(max(self.x_of(curves.xs[at]), half), self.width() - half)
        y = upper.bottom() + 0.45 * self._metrics().height()
        draw_plate_text(painter, QPointF(x, y), text, ink.ink, ink.paper)

    def _points(
        self, curves: SweepCurves, figure: str, area: QRectF, top: float
    ) -> list[tuple[int, QPointF]]:
        return [
            (k, QPointF(self.x_of(x), area.bottom() - min(y / top, 1.0) * area.height()))
            for k, (x, y) in enumerate(zip(curves.xs, curves.figures.get(figure, ()), strict=False))
            if y is not None
        ]

    # -- mouse and keys -----------------------------------------------------------------

    def point_at(self, x: float) -> int | None:
        """The point nearest to a horizontal pixel."""
        if self.curves is None or not self.curves.xs:
            return None
        places = [abs(self.x_of(value) - x) for value in self.curves.xs]
        return places.index(min(places))

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        point = self.point_at(event.position().x())
        if point != self._hover:
            self._hover = point
            self.update()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        self.choose(self.point_at(event.position().x()))

    def mouseDoubleClickEvent(self, _event: QMouseEvent) -> None:
        if self.point is not None:
            self.taken.emit(self.point)

    def leaveEvent(self, event: QEvent) -> None:
        super().leaveEvent(event)
        self._hover = None
        self.update()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        key = Qt.Key(event.key())
        step = {Qt.Key.Key_Left: -1, Qt.Key.Key_Right: 1}.get(key)
        count = 0 if self.curves is None else len(self.curves.xs)
        if step is not None and count:
            at = 0 if self.point is None else self.point + step
            self.choose(min(max(at, 0), count - 1))
        elif key in {Qt.Key.Key_Return, Qt.Key.Key_Enter} and self.point is not None:
            self.taken.emit(self.point)
        else:
            super().keyPressEvent(event)


def _free(y: float, taken: list[float], apart: float) -> float:
    """A height for a label at least so far from those taken."""
    for other in sorted(taken):
        if abs(y - other) < apart:
            y = other + apart
    taken.append(y)
    return y
