"""One side of the comparison: its small map with name, what differs, and figures."""

from __future__ import annotations

import math

from PySide6.QtCore import QEvent, QMimeData, QPointF, QRect, QRectF, QSize, QSizeF, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QContextMenuEvent,
    QDrag,
    QDragEnterEvent,
    QDropEvent,
    QEnterEvent,
    QFocusEvent,
    QFontMetricsF,
    QImage,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPixmap,
)
from PySide6.QtWidgets import QApplication, QSizePolicy, QWidget

from planner.app import theme
from planner.app.canvas.ink import Bounds, Ink, Viewport, draw_plate_text, figure_font, pen
from planner.app.canvas.items import Section, value_at
from planner.app.canvas.light_layer import LightStyle, SeenLight, canopy_path, lit_path
from planner.app.canvas.marks import paint_section, paint_section_ends
from planner.app.fields.form import TextLine
from planner.app.pages.side.linked import Linked, Shows
from planner.app.plain import tooltip
from planner.app.plots.difference import DifferenceStyle, dots, picture
from planner.app.spoken import Listed
from planner.estimate.compare import AgainstMap, Origin, Side
from planner.estimate.odds import signed_change
from planner.language import word
from planner.metrics.figures import FIGURE, percent, ppfd

CARD_DRAGGED = "application/x-planner-variant"
_GRIP_PX = 9.0
_PAD = theme.RHYTHM
_Elide = Qt.TextElideMode.ElideRight


class MapCard(Listed):
    """A small map that shares pointer and section line with all others.

    Signals: ``picked`` when it is clicked or reached by Tab, ``opened`` when it is double-clicked,
    ``stepped(across, down)`` for the arrow keys, ``key_pressed(event)`` for the rest,
    ``renamed(str)`` when another name was written over it, ``dropped(key)`` when the card of
    that variant was dragged onto this one, ``menu_asked(QPoint)`` in global pixels.
    """

    picked = Signal()
    opened = Signal()
    stepped = Signal(int, int)
    key_pressed = Signal(object)
    renamed = Signal(str)
    dropped = Signal(str)
    menu_asked = Signal(object)

    def __init__(self, linked: Linked, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._linked = linked
        self._light = SeenLight()
        self.side: Side | None = None
        self.verdict = self.telling_mark = ""
        self._style = LightStyle((0.0, 1.0), "cividis")
        self._against: AgainstMap | None = None
        self._difference = DifferenceStyle(1.0, ("", ""))
        self._unresolved = 0.0
        self._bounds: Bounds = (0.0, 0.0, 1.0, 1.0)
        self._held: str = ""
        self._picture: tuple[tuple[object, ...], QImage] | None = None
        self._still: QPixmap | None = None
        self._pressed: QPointF | None = None
        self._marked = QRect()
        self.name_line = line = TextLine("Name of the option", self)
        line.hide()
        for ended in (line.committed, line.editingFinished, line.reverted):
            ended.connect(self._end_name)
        line.committed.connect(self.renamed)
        self.setAcceptDrops(True)
        self.chosen = self.baseline = False
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
        self.show_anew()

    def show_light(self, style: LightStyle) -> None:
        """Show light in these colours."""
        self._style, self._against = style, None
        self.show_anew()

    def show_against(
        self, found: AgainstMap | None, style: DifferenceStyle, unresolved: float
    ) -> None:
        """Show the difference or ratio to the baseline."""
        self._against, self._difference, self._unresolved = found, style, unresolved
        self._picture = None
        self.show_anew()

    def show_place(self, *, chosen: bool, baseline: bool, mark: str, verdict: str) -> None:
        """Show whether it is chosen, is the baseline, and what can be told of it."""
        self.chosen, self.baseline = chosen, baseline
        self.telling_mark, self.verdict = mark, verdict
        self._describe()
        self.show_anew()

    def show_anew(self) -> None:
        """Paint all of it again; a pointer alone leaves what stands still as it is."""
        self._still = None
        self.update()

    def show_pointer(self) -> None:
        """The shared pointer has moved: what it covered and what it covers now is painted."""
        self.update(self._marked)
        place, self._marked = self._linked.pointer, QRect()
        if place is not None:
            # The value is written above or below the cross, moved aside at the rim of the card.
            y = self.viewport().to_pixel(*place).toPoint().y()
            self._marked = QRect(0, y - 32, self.width(), 64) & self.rect()
        self.update(self._marked)

    def figure_lines(self) -> tuple[str, str]:
        """The figures under the map."""
        if self.side is None or self.side.estimate is None:
            return ("no light to show", "")
        found = self.side.estimate.figures
        light = f"{ppfd(found.minimum)} to {ppfd(found.maximum)}"
        return (
            f"mean {ppfd(found.mean)} · min / mean {percent(found.min_over_mean)}",
            f"{light} · DLI {FIGURE['dli'].number(found.dli)}",
        )

    def told_value(self) -> str:
        return self.figure_lines()[0]

    def _describe(self) -> None:
        side = self.side
        if side is None:
            return
        self.setAccessibleName(f"{side.name}, {word(side.origin)}")
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
        return "; ".join(sorted(side.said, key=len)) or "just as the plan"  # as many as fit

    def value_at_pointer(self) -> float | None:
        """What the map shows under the shared pointer: PPFD, a difference, or a ratio."""
        place, side = self._linked.pointer, self.side
        if place is None or side is None or side.estimate is None:
            return None
        if self._against is None:
            return value_at(side.estimate, *place)
        if side.estimate.value(*place) is None:
            return None
        difference, ratio = self._against.at(*place)
        value = ratio if self._shows_ratio else difference
        return value if math.isfinite(value) else None

    @property
    def _shows_ratio(self) -> bool:
        return self._linked.state.shows is Shows.RATIO

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

    # -- painting -----------------------------------------------------------------------

    def paintEvent(self, event: QPaintEvent) -> None:
        if self.side is None:
            return
        ratio = self.devicePixelRatioF()
        size = (QSizeF(self.size()) * ratio).toSize()
        if self._still is None or self._still.size() != size:
            self._still = QPixmap(size)
            self._still.setDevicePixelRatio(ratio)
            self._paint_still(self._still)
        painter = QPainter(self)
        painter.setClipRect(event.rect())
        painter.drawPixmap(0, 0, self._still)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        self._paint_pointer(painter, self.viewport(), Ink.of(self.palette()))
        painter.end()

    def _paint_still(self, onto: QPixmap) -> None:
        """All but the pointer: made anew only when something of it changes."""
        side = self.side
        if side is None:
            return
        ink = Ink.of(self.palette())
        onto.fill(ink.paper)  # all of it: at 150 % its last column is half outside the card
        painter = QPainter(onto)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        self._paint_frame(painter, ink)
        self._paint_head(painter, ink)
        viewport = self.viewport()
        outline = viewport.to_polygon(side.plan.space.footprint)
        if self._against is not None:
            self._paint_against(painter, viewport, ink)
        elif side.estimate is not None:
            self._light.paint(painter, viewport, self._style, figure_font(self.font(), 0.78))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.setPen(pen(ink.quiet, 1.0))
        painter.drawPath(lit_path(outline, side.plan, viewport))
        for canopy in () if side.estimate is None else side.estimate.layers[1:]:
            painter.drawPath(canopy_path(canopy, viewport))
        self._paint_section(painter, viewport, ink)
        self._paint_figures(painter, ink)
        painter.end()

    def _paint_frame(self, painter: QPainter, ink: Ink) -> None:
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
        small = figure_font(self.font(), 0.92)
        painter.setPen(ink.ink)
        metrics = QFontMetricsF(small)
        if QFontMetricsF(bold).horizontalAdvance(side.name) > room:
            # A name is read before what differs, which mostly says the same once more.
            flags = Qt.AlignmentFlag.AlignTop | Qt.TextFlag.TextWordWrap
            name = QFontMetricsF(bold).elidedText(side.name, _Elide, 1.8 * room)
            painter.drawText(QRectF(_PAD, 2, room, 2 * line + 6), flags, name)
        else:
            painter.drawText(QPointF(_PAD, line), side.name)
            painter.setFont(small)
            painter.setPen(ink.quiet)
            said = metrics.elidedText(self.said, _Elide, room)
            painter.drawText(QPointF(_PAD, 2 * line + 1), said)
        painter.setFont(small)
        problem = self._problem()
        if problem:
            painter.setPen(ink.alarm)
            text = metrics.elidedText(f"▲ {problem}", _Elide, room)
            painter.drawText(QPointF(_PAD, 3 * line + 1), text)

    def _paint_against(self, painter: QPainter, viewport: Viewport, ink: Ink) -> None:
        found, side = self._against, self.side
        if found is None or side is None or side.estimate is None:
            return
        rect = viewport.to_rect(side.estimate.map.bounds)
        shows_ratio = self._shows_ratio
        size = QSize(round(rect.width()), round(rect.height()))
        # Kept until something of it changes: every move of the pointer paints all cards.
        key = (id(found), shows_ratio, self._difference, self._unresolved, ink.paper.rgb(), size)
        if self._picture is None or self._picture[0] != key:
            difference, ratio = found.raster(*dots(size))
            values = 100 * (ratio - 1) if shows_ratio else difference
            made = picture(values, ratio, self._difference, self._unresolved, ink)
            self._picture = (key, made)
        painter.save()
        painter.setClipPath(canopy_path(side.estimate, viewport))
        painter.drawImage(rect, self._picture[1])
        painter.restore()

    def _paint_section(self, painter: QPainter, viewport: Viewport, ink: Ink) -> None:
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

    def _paint_pointer(self, painter: QPainter, viewport: Viewport, ink: Ink) -> None:
        place = self._linked.pointer
        if place is None:
            return
        painter.setFont(figure_font(self.font(), 0.82))
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
        """The value under the shared pointer, in the unit the map is of."""
        value = self.value_at_pointer()
        if value is None:
            return ""
        if self._against is None:
            return ppfd(value)
        sign = "−" if value < 0 else "+"
        return f"{signed_change(value)} %" if self._shows_ratio else f"{sign}{ppfd(abs(value))}"

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
        # What is told of it stands beside the figures: the name has its line to itself.
        mark = "baseline" if self.baseline else self.telling_mark
        taken = metrics.horizontalAdvance(mark)
        painter.drawText(QPointF(self.width() - _PAD - taken, self.height() - 6), mark)
        text = metrics.elidedText(second, _Elide, room - taken - 6)
        painter.drawText(QPointF(_PAD, self.height() - 6), text)

    # -- mouse and keys -----------------------------------------------------------------

    @property
    def key(self) -> str | None:
        """The key of the variant it shows; None for the plan and open air."""
        return None if self.side is None else self.side.key

    def edit_name(self) -> None:
        """Write the name in its place on the card."""
        if self.key is None or self.side is None:
            return
        self.name_line.set_value(self.side.name)
        self.name_line.setGeometry(_PAD // 2, 0, self.width() - _PAD, round(1.5 * self._line()))
        self.name_line.show()
        self.name_line.setFocus()
        self.name_line.selectAll()

    def _end_name(self) -> None:
        # Hidden with the keyboard it would hand it to the next card, which was renamed instead.
        if self.name_line.hasFocus():
            self.setFocus()
        self.name_line.hide()

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        self.picked.emit()
        self.menu_asked.emit(event.globalPos())

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        if event.button() is Qt.MouseButton.LeftButton:
            self.picked.emit()
            self.opened.emit()

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        if event.mimeData().hasFormat(CARD_DRAGGED):
            event.acceptProposedAction()

    def dropEvent(self, event: QDropEvent) -> None:
        key = bytes(event.mimeData().data(CARD_DRAGGED).data()).decode()
        event.acceptProposedAction()
        self.dropped.emit(key)

    def _drag(self) -> None:
        """Take the card along; where it is dropped says who takes it."""
        data = QMimeData()
        data.setData(CARD_DRAGGED, (self.key or "").encode())
        drag = QDrag(self)
        drag.setMimeData(data)
        drag.setPixmap(self.grab().scaledToWidth(120))
        drag.exec(Qt.DropAction.MoveAction)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        self.picked.emit()
        if event.button() is Qt.MouseButton.LeftButton:
            self._held = self._grip_at(event.position())
            on_head = event.position().y() < self._map_area().top()
            self._pressed = event.position() if on_head and self.key else None
        self.show_anew()

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        if self._pressed is not None and event.buttons() & Qt.MouseButton.LeftButton:
            moved = event.position() - self._pressed
            if moved.manhattanLength() >= QApplication.startDragDistance():
                self._pressed = None
                self._drag()
            return
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
        self._held, self._pressed = "", None
        self.show_anew()

    def leaveEvent(self, event: QEvent) -> None:
        super().leaveEvent(event)
        self._linked.point_at(None)
        self.show_anew()

    def enterEvent(self, event: QEnterEvent) -> None:
        super().enterEvent(event)
        self.show_anew()

    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        self.show_anew()

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
        else:
            event.ignore()
            self.picked.emit()  # what a key does is done to the card that has the keyboard
            self.key_pressed.emit(event)
            if not event.isAccepted():
                super().keyPressEvent(event)

    def focusInEvent(self, event: QFocusEvent) -> None:
        super().focusInEvent(event)
        if event.reason() in {Qt.FocusReason.TabFocusReason, Qt.FocusReason.BacktabFocusReason}:
            self.picked.emit()
        self.show_anew()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        super().focusOutEvent(event)
        self.show_anew()
