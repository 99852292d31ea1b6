"""One side of the comparison: its small map with name, what differs, and figures."""

from __future__ import annotations

import math

from PySide6.QtCore import QEvent, QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QFocusEvent,
    QFontMetricsF,
    QImage,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPainterPath,
    QPaintEvent,
    QPolygonF,
)
from PySide6.QtWidgets import QSizePolicy, QWidget

from planner.app import theme
from planner.app.canvas.ink import Bounds, Ink, Viewport, draw_plate_text, figure_font, pen
from planner.app.canvas.light_layer import LightLayer, LightStyle
from planner.app.canvas.marks import paint_section, paint_section_ends
from planner.app.canvas.sampling import Section, value_at
from planner.app.pages.side.comparer import Linked, Shows
from planner.app.plain import tooltip
from planner.app.plots.difference import DifferenceStyle, picture
from planner.estimate.compare import AgainstMap, Origin, Side
from planner.metrics.figures import FIGURE, percent, ppfd
from planner.units import format_number

_GRIP_PX = 9.0
_PAD = theme.RHYTHM
_Elide = Qt.TextElideMode.ElideRight


class MapCard(QWidget):
    """A small map that shares pointer and section line with all others.

    Signals: ``picked`` when it is clicked or reached by Tab, ``opened`` on Enter,
    ``stepped(across, down)`` for the arrow keys, ``key_pressed(event)`` for the rest.
    """

    picked = Signal()
    opened = Signal()
    stepped = Signal(int, int)
    key_pressed = Signal(object)

    def __init__(self, linked: Linked, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._linked = linked
        self._light = LightLayer()
        self.side: Side | None = None
        self.verdict = ""
        self.telling_mark = ""
        self._style = LightStyle((0.0, 1.0), "cividis")
        self._against: AgainstMap | None = None
        self._difference = DifferenceStyle(1.0, ("", ""))
        self._unresolved = 0.0
        self._bounds: Bounds = (0.0, 0.0, 1.0, 1.0)
        self._held: str = ""
        self._picture: tuple[tuple[object, ...], QImage] | None = None
        self.chosen = False
        self.baseline = False
        self.setMouseTracking(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Ignored)

    # -- showing ------------------------------------------------------------------------

    def show_side(self, side: Side, bounds: Bounds) -> None:
        """Show a side; ``bounds`` are those of all sides, so that all have one scale."""
        if side.estimate is not (self.side.estimate if self.side is not None else None):
            self._light.set_estimate(side.estimate)
        self.side, self._bounds = side, bounds
        self._describe()
        self.update()

    def show_light(self, style: LightStyle) -> None:
        """Show light in these colours."""
        self._style, self._against = style, None
        self.update()

    def show_against(
        self, found: AgainstMap | None, style: DifferenceStyle, unresolved: float
    ) -> None:
        """Show the difference or ratio to the baseline."""
        self._against, self._difference, self._unresolved = found, style, unresolved
        self._picture = None
        self.update()

    def show_place(self, *, chosen: bool, baseline: bool, mark: str, verdict: str) -> None:
        """Show whether it is chosen, is the baseline, and what can be told of it."""
        self.chosen, self.baseline = chosen, baseline
        self.telling_mark, self.verdict = mark, verdict
        self._describe()
        self.update()

    def figure_lines(self) -> tuple[str, str]:
        """The figures under the map."""
        if self.side is None or self.side.estimate is None:
            return ("no light to show", "")
        found = self.side.estimate.figures
        first = f"mean {ppfd(found.mean)} · min / mean {percent(found.min_over_mean)}"
        light = f"{ppfd(found.minimum)} to {ppfd(found.maximum)}"
        second = f"{light} · DLI {FIGURE['dli'].number(found.dli)}"
        return first, second

    def _describe(self) -> None:
        side = self.side
        if side is None:
            return
        kind = {Origin.PLAN: "plan", Origin.VARIANT: "variant", Origin.OPEN_AIR: "open air"}
        self.setAccessibleName(f"{side.name}, {kind[side.origin]}")
        parts = [self.said, *self.figure_lines(), self.verdict, *side.problems]
        self.setAccessibleDescription(". ".join(part for part in parts if part))
        self.setToolTip(tooltip(side.name, self.said, self.verdict, *side.problems))

    @property
    def light_style(self) -> LightStyle:
        """The colours its light is shown in."""
        return self._style

    @property
    def said(self) -> str:
        """What differs, in one line."""
        side = self.side
        if side is None:
            return ""
        if side.origin is Origin.PLAN:
            return "the plan as it is on the sketch"
        return "; ".join(side.said) or "just as the plan"

    def value_at_pointer(self) -> float | None:
        """PPFD under the shared pointer."""
        place = self._linked.pointer
        if place is None or self.side is None or self.side.estimate is None:
            return None
        return value_at(self.side.estimate, *place)

    # -- geometry -----------------------------------------------------------------------

    def _line(self) -> float:
        return QFontMetricsF(figure_font(self.font(), 0.92)).height()

    def _map_area(self) -> QRectF:
        line = self._line()
        top = 2 * line + 10 + (line if self._problem() else 0)
        return QRectF(_PAD, top, self.width() - 2 * _PAD, self.height() - top - 2 * line - 10)

    def viewport(self) -> Viewport:
        """Where the space falls on the card."""
        area = self._map_area()
        if area.width() < 20 or area.height() < 20:
            return Viewport()
        return Viewport.fitted(self._bounds, area)

    def _problem(self) -> str:
        return "" if self.side is None or not self.side.problems else self.side.problems[0]

    def sizeHint(self) -> QSize:
        return QSize(220, 220)

    # -- painting -----------------------------------------------------------------------

    def paintEvent(self, _event: QPaintEvent) -> None:
        if self.side is None:
            return
        ink = Ink.of(self.palette())
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        self._paint_ground(painter, ink)
        self._paint_head(painter, ink)
        viewport = self.viewport()
        corners = self.side.plan.space.footprint
        outline = QPolygonF([viewport.to_pixel(*corner) for corner in corners])
        if self._against is not None:
            self._paint_against(painter, viewport, outline, ink)
        elif self.side.estimate is not None:
            font = figure_font(self.font(), 0.78)
            self._light.paint(painter, viewport, outline, self._style, font)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.setPen(pen(ink.quiet, 1.0))
        painter.drawPolygon(outline)
        self._paint_links(painter, viewport, ink)
        self._paint_figures(painter, ink)
        painter.end()

    def _paint_ground(self, painter: QPainter, ink: Ink) -> None:
        painter.fillRect(self.rect(), ink.paper)
        if self.chosen or self.hasFocus():
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.setPen(pen(ink.accent, 2.0 if self.hasFocus() else 1.2))
            painter.drawRoundedRect(QRectF(self.rect()).adjusted(1, 1, -1, -1), 3, 3)

    def _paint_head(self, painter: QPainter, ink: Ink) -> None:
        side = self.side
        if side is None:
            return
        line = self._line()
        room = self.width() - 2 * _PAD
        bold = figure_font(self.font(), 1.0, bold=True)
        painter.setFont(bold)
        mark = "baseline" if self.baseline else self.telling_mark
        small = figure_font(self.font(), 0.92)
        taken = QFontMetricsF(small).horizontalAdvance(mark) + 6 if mark else 0
        name = QFontMetricsF(bold).elidedText(side.name, _Elide, max(room - taken, 40))
        painter.setPen(ink.ink)
        painter.drawText(QPointF(_PAD, line), name)
        painter.setFont(small)
        metrics = QFontMetricsF(small)
        painter.setPen(ink.quiet)
        painter.drawText(QPointF(self.width() - _PAD - metrics.horizontalAdvance(mark), line), mark)
        painter.drawText(QPointF(_PAD, 2 * line + 1), metrics.elidedText(self.said, _Elide, room))
        problem = self._problem()
        if problem:
            painter.setPen(ink.alarm)
            text = metrics.elidedText(f"▲ {problem}", _Elide, room)
            painter.drawText(QPointF(_PAD, 3 * line + 1), text)

    def _paint_against(
        self, painter: QPainter, viewport: Viewport, outline: QPolygonF, ink: Ink
    ) -> None:
        found, side = self._against, self.side
        if found is None or side is None or side.estimate is None:
            return
        rect = viewport.to_rect(side.estimate.map.bounds)
        shows_ratio = self._linked.state.shows is Shows.RATIO
        values = 100 * (found.ratio - 1) if shows_ratio else found.difference
        size = QSize(round(rect.width()), round(rect.height()))
        # Kept until something of it changes: every move of the pointer paints all cards.
        key = (id(found), shows_ratio, self._difference, self._unresolved, ink.paper.rgb(), size)
        if self._picture is None or self._picture[0] != key:
            made = picture(values, found.ratio, self._difference, self._unresolved, ink, size)
            self._picture = (key, made)
        image = self._picture[1]
        path = QPainterPath()
        path.addPolygon(outline)
        path.closeSubpath()
        painter.save()
        painter.setClipPath(path)
        painter.drawImage(rect, image)
        painter.restore()

    def _paint_links(self, painter: QPainter, viewport: Viewport, ink: Ink) -> None:
        section = self._linked.section
        painter.setFont(figure_font(self.font(), 0.82))
        if section is not None:
            active = bool(self._held)
            if self._against is None:
                paint_section(painter, section, viewport, ink, active=active)
            else:
                painter.setPen(pen(ink.quiet, 1.2, Qt.PenStyle.DashDotLine))
                painter.drawLine(*(viewport.to_pixel(*end) for end in section))
            if self.underMouse() or active or self.hasFocus():
                paint_section_ends(painter, section, viewport, ink, active=active)
        place = self._linked.pointer
        if place is None:
            return
        at = viewport.to_pixel(*place)
        for width, colour in ((3.0, QColor(0, 0, 0, 110)), (1.2, QColor(255, 255, 255, 235))):
            painter.setPen(pen(colour, width))
            painter.drawLine(at + QPointF(-6, 0), at + QPointF(6, 0))
            painter.drawLine(at + QPointF(0, -6), at + QPointF(0, 6))
        text = self.pointer_text()
        if text:
            above = at.y() > self._map_area().top() + 24
            spot = at + QPointF(0, -16 if above else 16)
            half = QFontMetricsF(painter.font()).horizontalAdvance(text) / 2 + 6
            spot.setX(min(max(spot.x(), half), self.width() - half))
            draw_plate_text(painter, spot, text, ink.ink, ink.paper)

    def pointer_text(self) -> str:
        """The value under the shared pointer, in words."""
        value = self.value_at_pointer()
        return "" if value is None else format_number(value, 0)

    def _paint_figures(self, painter: QPainter, ink: Ink) -> None:
        font = figure_font(self.font(), 0.92)
        metrics = QFontMetricsF(font)
        painter.setFont(font)
        line = self._line()
        first, second = self.figure_lines()
        room = self.width() - 2 * _PAD
        painter.setPen(ink.ink)
        text = metrics.elidedText(first, _Elide, room)
        painter.drawText(QPointF(_PAD, self.height() - line - 7), text)
        painter.setPen(ink.quiet)
        text = metrics.elidedText(second, _Elide, room)
        painter.drawText(QPointF(_PAD, self.height() - 6), text)

    # -- mouse and keys -----------------------------------------------------------------

    def mousePressEvent(self, event: QMouseEvent) -> None:
        self.picked.emit()
        if event.button() is Qt.MouseButton.LeftButton:
            self._held = self._grip_at(event.position())
        self.update()

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        place = self.viewport().to_world(event.position())
        section = self._linked.section
        if self._held and section is not None:
            x0, y0, x1, y1 = self._bounds
            at = (min(max(place[0], x0), x1), min(max(place[1], y0), y1))
            made: Section = (at, section[1]) if self._held == "start" else (section[0], at)
            if math.dist(*made) > 0.01:
                self._linked.cut_along(made)
            return
        inside = self._map_area().contains(event.position())
        self._linked.point_at(place if inside else None)

    def mouseReleaseEvent(self, _event: QMouseEvent) -> None:
        self._held = ""
        self.update()

    def leaveEvent(self, event: QEvent) -> None:
        super().leaveEvent(event)
        self._linked.point_at(None)
        self.update()

    def _grip_at(self, pixel: QPointF) -> str:
        section = self._linked.section
        if section is None:
            return ""
        for name, end in zip(("start", "end"), section, strict=True):
            apart = self.viewport().to_pixel(*end) - pixel
            if math.hypot(apart.x(), apart.y()) <= _GRIP_PX:
                return name
        return ""

    def keyPressEvent(self, event: QKeyEvent) -> None:
        plain = not event.modifiers() & (
            Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.AltModifier
        )
        steps = {
            Qt.Key.Key_Left: (-1, 0), Qt.Key.Key_Right: (1, 0),
            Qt.Key.Key_Up: (0, -1), Qt.Key.Key_Down: (0, 1),
        }  # fmt: skip
        key = Qt.Key(event.key())
        if plain and key in steps:
            self.stepped.emit(*steps[key])
        elif key in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            self.opened.emit()
        else:
            event.ignore()
            self.key_pressed.emit(event)
            if not event.isAccepted():
                super().keyPressEvent(event)

    def focusInEvent(self, event: QFocusEvent) -> None:
        super().focusInEvent(event)
        if event.reason() in {Qt.FocusReason.TabFocusReason, Qt.FocusReason.BacktabFocusReason}:
            self.picked.emit()
        self.update()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        super().focusOutEvent(event)
        self.update()
