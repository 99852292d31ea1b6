"""A drawing of the board in its space: light or residuals below, holes and values above."""

from __future__ import annotations

import math

from PySide6.QtCore import QEvent, QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QFocusEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPolygonF,
    QResizeEvent,
    QWheelEvent,
)
from PySide6.QtWidgets import QWidget

from planner.app.canvas.ink import Ink, figure_font
from planner.app.canvas.light_layer import LightLayer
from planner.app.canvas.notices import paint_line, paint_refining
from planner.app.canvas.outline_layer import DOOR_PX, WALL_PX, footprint_polygon, paint_outline
from planner.app.canvas.viewport import Viewport
from planner.app.pages.survey import marks
from planner.app.pages.survey.picture import Picture
from planner.app.plots.residual_map import paint_cells

_MARGIN = WALL_PX + 20.0
_TOP = 34.0
_FOOT = DOOR_PX + 10.0
_REACH_PX = 18.0
_ARROWS = {
    Qt.Key.Key_Left: (-1.0, 0.0),
    Qt.Key.Key_Right: (1.0, 0.0),
    Qt.Key.Key_Up: (0.0, 1.0),
    Qt.Key.Key_Down: (0.0, -1.0),
}


class SurveyDrawing(QWidget):
    """Paints a picture to scale.

    Signals: ``hole_chosen(int)`` for a click on a hole or an arrow key, ``place_pressed
    (x, y)`` in metres for a click or the Space key at any place of the space. ``keys_used``
    is true while an arrow key chooses a hole: the keyboard then stays with the drawing.
    """

    hole_chosen = Signal(int)
    place_pressed = Signal(float, float)

    def __init__(self, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._picture: Picture | None = None
        self._viewport = Viewport()
        self._fitted = True
        self._pan_from: QPointF | None = None
        self._light = LightLayer()
        self.keys_used = False
        self.setAccessibleName(name)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMinimumSize(240, 240)

    @property
    def picture(self) -> Picture | None:
        """What is shown."""
        return self._picture

    def show_picture(self, picture: Picture) -> None:
        """Show another picture; scale and place stay while the space does."""
        old = self._picture
        self._picture = picture
        if old is None or old.estimate is not picture.estimate:
            self._light.set_estimate(picture.estimate)
        if old is None or old.plan.space != picture.plan.space:
            self._fitted = True
        if self._fitted:
            self.fit()
        self.setAccessibleDescription(picture.words)
        self.update()

    def fit(self) -> None:
        """Show the whole space."""
        self._fitted = True
        if self._picture is not None:
            area = QRectF(self.rect()).adjusted(_MARGIN, _TOP + WALL_PX, -_MARGIN, -_FOOT)
            self._viewport = Viewport.fitted(self._picture.plan.space.bounds, area)
        self.update()

    @property
    def scale(self) -> float:
        """Pixels per metre."""
        return self._viewport.scale

    def pixel(self, x: float, y: float) -> QPointF:
        """Where a place of the space lies on the drawing."""
        return self._viewport.to_pixel(x, y)

    def sizeHint(self) -> QSize:
        return QSize(620, 560)

    # -- hand and keys ------------------------------------------------------------------

    def hole_at(self, pixel: QPointF) -> int | None:
        """The hole under a pixel, or near enough to it."""
        picture = self._picture
        if picture is None or not picture.marks:
            return None
        distance, hole = min(
            (math.dist(pixel.toTuple(), self.pixel(*mark.place).toTuple()), mark.hole)
            for mark in picture.marks
        )
        radius = picture.hole_diameter / 2 * self._viewport.scale
        return hole if distance <= max(radius, _REACH_PX) else None

    def mousePressEvent(self, event: QMouseEvent) -> None:
        if event.button() is Qt.MouseButton.MiddleButton:
            self._pan_from = event.position()
        elif event.button() is Qt.MouseButton.LeftButton and self._picture is not None:
            hole = self.hole_at(event.position())
            if hole is not None:
                self.hole_chosen.emit(hole)
            self.place_pressed.emit(*self._viewport.to_world(event.position()))

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        if self._pan_from is not None:
            self._fitted = False
            self._viewport = self._viewport.panned(event.position() - self._pan_from)
            self._pan_from = event.position()
            self.update()

    def mouseReleaseEvent(self, _event: QMouseEvent) -> None:
        self._pan_from = None

    def wheelEvent(self, event: QWheelEvent) -> None:
        if event.angleDelta().y():
            self._fitted = False
            factor = 1.0015 ** event.angleDelta().y()
            self._viewport = self._viewport.zoomed(factor, event.position())
            self.update()
        event.accept()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        key = Qt.Key(event.key())
        picture = self._picture
        if key in _ARROWS and picture is not None and picture.marks:
            hole = self._beside(*_ARROWS[key])
            if hole is not None:
                self.keys_used = True
                self.hole_chosen.emit(hole)
                self.keys_used = False
        elif key == Qt.Key.Key_Space and picture is not None and picture.next_hole is not None:
            place = next((m.place for m in picture.marks if m.hole == picture.next_hole), None)
            if place is not None:
                self.place_pressed.emit(*place)
        elif key == Qt.Key.Key_Home:
            self.fit()
        else:
            super().keyPressEvent(event)

    def _beside(self, right: float, up: float) -> int | None:
        """The nearest hole in a direction from the highlighted one."""
        picture = self._picture
        if picture is None:
            return None
        here = next((m for m in picture.marks if m.hole == picture.next_hole), None)
        if here is None:
            return picture.marks[0].hole
        best: tuple[float, int] | None = None
        for mark in picture.marks:
            dx, dy = mark.place[0] - here.place[0], mark.place[1] - here.place[1]
            along, across = dx * right + dy * up, abs(dx * up) + abs(dy * right)
            if along > 1e-6 and along >= across and (best is None or along + 3 * across < best[0]):
                best = (along + 3 * across, mark.hole)
        return None if best is None else best[1]

    # -- painting -----------------------------------------------------------------------

    def paintEvent(self, _event: QPaintEvent) -> None:
        picture = self._picture
        ink = Ink.of(self.palette())
        painter = QPainter(self)
        painter.fillRect(self.rect(), ink.paper)
        if picture is None:
            return
        painter.setFont(figure_font(self.font(), 0.92))
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        footprint = footprint_polygon(picture.plan, self._viewport)
        self._paint_ground(painter, picture, footprint, ink)
        paint_outline(painter, picture.plan, self._viewport, ink, None)
        marks.paint_marks(painter, picture, self._viewport, ink)
        head = QRectF(12, 4, self.width() - 24, 24)
        painter.setFont(figure_font(self.font(), 1.0))
        if picture.refining:
            paint_refining(painter, QPointF(self.width() - 12, 16), ink)
            head.setWidth(max(head.width() - 150, 40))
        paint_line(painter, head, picture.caption, ink.quiet)
        if self.hasFocus():
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.setPen(ink.accent)
            painter.drawRect(QRectF(self.rect()).adjusted(0.5, 0.5, -0.5, -0.5))
        painter.end()

    def _paint_ground(
        self, painter: QPainter, picture: Picture, footprint: QPolygonF, ink: Ink
    ) -> None:
        if picture.residuals is not None:
            marks.clip_to(painter, footprint)
            paint_cells(painter, self._viewport, footprint, picture.residuals, ink)
            painter.setClipping(False)
        elif picture.estimate is not None and picture.style is not None:
            font = figure_font(self.font(), 0.92)
            self._light.paint(painter, self._viewport, footprint, picture.style, font)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        if self._fitted:
            self.fit()

    def focusInEvent(self, event: QFocusEvent) -> None:
        super().focusInEvent(event)
        self.update()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        super().focusOutEvent(event)
        self.update()

    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() in {QEvent.Type.PaletteChange, QEvent.Type.FontChange}:
            self.update()
