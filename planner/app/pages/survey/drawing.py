"""The drawing of a board: what it shows as data, its marks, and one or two of them side by side."""

from __future__ import annotations

import itertools
import math
from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QFocusEvent,
    QFont,
    QFontMetricsF,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPolygonF,
    QResizeEvent,
)
from PySide6.QtWidgets import QWidget

from planner.app import theme
from planner.app.canvas.ink import (
    ARROWS,
    Bounds,
    FittedWidget,
    Ink,
    Viewport,
    draw_plate_text,
    faded,
    figure_font,
    pen,
)
from planner.app.canvas.light_layer import LightLayer, LightStyle, closed_path
from planner.app.canvas.marks import paint_line, paint_refining
from planner.app.canvas.plan_layers import DOOR_PX, WALL_PX, paint_outline
from planner.app.plots.colour_bar import ColourBar
from planner.app.plots.survey_charts import ResidualMap, paint_cells
from planner.app.spoken import Told
from planner.estimate.result import Estimate
from planner.plan.plan import Plan
from planner.plan.space import Point
from planner.units import LengthUnit, format_length


@dataclass(frozen=True)
class Mark:
    """A hole: its number, its place in metres, and what is said of it.

    ``colour`` fills it (red, green, blue); None leaves it open, as long as nothing was
    read there. ``suspect`` marks a reading far off its neighbours.
    """

    hole: int
    place: Point
    text: str = ""
    colour: tuple[int, int, int] | None = None
    suspect: bool = False


@dataclass(frozen=True, eq=False)
class HolePicture:
    """Everything a drawing paints, from the ground up.

    ``order`` draws the way from hole to hole, ``numbers`` their numbers where they have no
    text; ``left_out`` are places of the grid without a hole; ``next_hole`` is highlighted.
    ``hole_diameter`` in metres. ``caption`` stands above the drawing. ``laid`` is the outline of
    the top that the holes lie on, in metres; empty: the footprint.
    """

    plan: Plan
    marks: tuple[Mark, ...] = ()
    estimate: Estimate | None = None
    style: LightStyle | None = None
    residuals: ResidualMap | None = None
    order: bool = False
    numbers: bool = False
    left_out: tuple[Point, ...] = ()
    next_hole: int | None = None
    hole_diameter: float = 0.024
    caption: str = ""
    words: str = ""
    refining: bool = False
    laid: tuple[Point, ...] = ()


LEAST_RADIUS = 4.0
MOST_RADIUS = 11.0
CROWD = 600
"""Above so many holes rings are drawn plainly."""
_ROOM_FOR_TEXT = 30.0


def _radius(picture: HolePicture, viewport: Viewport) -> float:
    """Of a ring, in pixels: that of the hole, where it is neither lost nor in the way."""
    return min(max(picture.hole_diameter / 2 * viewport.scale, LEAST_RADIUS), MOST_RADIUS)


def hole_spots(picture: HolePicture, viewport: Viewport, font: QFont) -> tuple[QRectF, ...]:
    """Where rings and the texts below them lie on the map, in pixels; none where they crowd."""
    reach, metrics = _radius(picture, viewport) + 2, QFontMetricsF(font)
    if len(picture.marks) > CROWD:
        return ()
    told = metrics.height() + 4 if _room(picture, viewport) >= _ROOM_FOR_TEXT else 0.0
    spots = []
    for mark in picture.marks:
        at = viewport.to_pixel(*mark.place)
        wide = max(reach, metrics.horizontalAdvance(mark.text) / 2 + 4)
        below = reach + (told + 8 if mark.text and told else 0)
        spots.append(QRectF(at - QPointF(wide, reach), at + QPointF(wide, below)))
    return tuple(spots)


def paint_marks(painter: QPainter, picture: HolePicture, viewport: Viewport, ink: Ink) -> None:
    """The way between holes, places left out, rings and their texts."""
    radius = _radius(picture, viewport)
    if picture.order:
        _paint_way(painter, picture, viewport, ink, radius)
    for place in picture.left_out:
        _paint_left_out(painter, viewport.to_pixel(*place), ink, radius)
    crowd = len(picture.marks) > CROWD
    on_light = not crowd and (picture.estimate is not None or picture.residuals is not None)
    # Smooth rings by the thousand would keep the hand waiting.
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, not crowd)
    for mark in picture.marks:
        _paint_ring(painter, mark, viewport.to_pixel(*mark.place), radius, ink, on_light=on_light)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    here = next((m for m in picture.marks if m.hole == picture.next_hole), None)
    if here is not None:
        _paint_next(painter, viewport.to_pixel(*here.place), radius, ink)
    if _room(picture, viewport) >= _ROOM_FOR_TEXT:
        _paint_texts(painter, picture, viewport, ink, radius)
    elif here is not None:
        text = here.text or str(here.hole)
        _paint_text(painter, viewport.to_pixel(*here.place), text, radius + 8, ink)


def _room(picture: HolePicture, viewport: Viewport) -> float:
    """Pixels between neighbouring holes, about: from the first hole to the one nearest to it."""
    places = [mark.place for mark in picture.marks]
    if len(places) < 2:
        return math.inf
    return min(math.dist(places[0], place) for place in places[1:]) * viewport.scale


def _paint_way(
    painter: QPainter, picture: HolePicture, viewport: Viewport, ink: Ink, radius: float
) -> None:
    spots = [viewport.to_pixel(*mark.place) for mark in picture.marks]
    line = pen(ink.quiet, 1.2, dashes=(4, 4))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    for here, there in itertools.pairwise(spots):
        length = math.hypot(there.x() - here.x(), there.y() - here.y())
        if length <= 2 * radius + 6:
            continue
        along = (there - here) / length
        start, end = here + along * (radius + 2), there - along * (radius + 2)
        painter.setPen(line)
        painter.drawLine(start, end)
        side = QPointF(-along.y(), along.x())
        tip = [end, end - along * 6 + side * 3.2, end - along * 6 - side * 3.2]
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(ink.quiet)
        painter.drawPolygon(QPolygonF(tip))


def _paint_left_out(painter: QPainter, at: QPointF, ink: Ink, radius: float) -> None:
    arm = radius * 0.7
    painter.setPen(pen(ink.quiet, 1.4))
    painter.drawLine(at + QPointF(-arm, -arm), at + QPointF(arm, arm))
    painter.drawLine(at + QPointF(-arm, arm), at + QPointF(arm, -arm))


def _paint_ring(
    painter: QPainter, mark: Mark, at: QPointF, radius: float, ink: Ink, *, on_light: bool
) -> None:
    fill = QColor(*mark.colour) if mark.colour is not None else None
    painter.setBrush(fill if fill is not None else Qt.BrushStyle.NoBrush)
    if on_light:
        # A dark and a light line: one of them stands out on any colour, and both are thin
        # enough for the ring to vanish where its filling is the map's.
        painter.setPen(pen(QColor(255, 255, 255, 190), 2.4))
        painter.drawEllipse(at, radius, radius)
        painter.setPen(pen(QColor(20, 22, 22, 220), 1.1))
    else:
        painter.setPen(pen(ink.ink, 1.3))
    painter.drawEllipse(at, radius, radius)
    if mark.suspect:
        ring = pen(ink.alarm, 2.0, dashes=(2.2, 1.6))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.setPen(pen(ink.paper, 4.5))
        painter.drawEllipse(at, radius + 4, radius + 4)
        painter.setPen(ring)
        painter.drawEllipse(at, radius + 4, radius + 4)
        tip = at + QPointF(radius + 5, -radius - 5)
        painter.setPen(pen(ink.paper, 1.0))
        painter.setBrush(ink.alarm)
        corners = [QPointF(0, -5.5), QPointF(5.5, 4.0), QPointF(-5.5, 4.0)]
        painter.drawPolygon(QPolygonF([tip + corner for corner in corners]))


def _paint_next(painter: QPainter, at: QPointF, radius: float, ink: Ink) -> None:
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.setPen(pen(ink.paper, 6.0))
    painter.drawEllipse(at, radius + 6, radius + 6)
    painter.setPen(pen(ink.accent, 3.4))
    painter.drawEllipse(at, radius + 6, radius + 6)


def _paint_texts(
    painter: QPainter, picture: HolePicture, viewport: Viewport, ink: Ink, radius: float
) -> None:
    for mark in picture.marks:
        text = mark.text or (str(mark.hole) if picture.numbers else "")
        if text:
            wide = 8 if mark.hole == picture.next_hole else 4 if mark.suspect else 0
            at = viewport.to_pixel(*mark.place)
            _paint_text(painter, at, text, radius + wide, ink)


def _paint_text(painter: QPainter, at: QPointF, text: str, radius: float, ink: Ink) -> None:
    metrics = QFontMetricsF(painter.font())
    ground = faded(ink.paper, 0.78)
    below = at + QPointF(0, radius + 3 + metrics.height() / 2)
    draw_plate_text(painter, below, text, ink.ink, ground)


_MARGIN = WALL_PX + 20.0
_TOP = 34.0
_FOOT = DOOR_PX + 10.0
_REACH_PX = 18.0


class SurveyDrawing(FittedWidget):
    """Paints a picture to scale.

    Signals: ``hole_chosen(int)`` for a click on a hole or an arrow key, ``place_pressed
    (x, y)`` in metres for a click or the Space key at any place of the space. ``keys_used``
    is true while an arrow key chooses a hole: the keyboard then stays with the drawing.
    """

    hole_chosen = Signal(int)
    place_pressed = Signal(float, float)

    def __init__(self, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._picture: HolePicture | None = None
        self._light = LightLayer()
        self.unit = LengthUnit.CM
        self.keys_used = False
        self.setAccessibleName(name)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMinimumSize(240, 240)

    @property
    def picture(self) -> HolePicture | None:
        """What is shown."""
        return self._picture

    def show_picture(self, picture: HolePicture) -> None:
        """Show another picture; scale and place stay while the space does."""
        old = self._picture
        self._picture = picture
        if old is None or old.estimate is not picture.estimate:
            self._light.set_canopy(picture.estimate)
        if old is None or old.plan.space != picture.plan.space:
            self._fitted = True
        if self._fitted:
            self.fit()
        self.setAccessibleDescription(picture.words)
        if old is not None and old.next_hole != picture.next_hole:
            self.say_part()
        self.update()

    def bounds(self) -> Bounds:
        return (0.0, 0.0, 1.0, 1.0) if self._picture is None else self._picture.plan.space.bounds

    def drawing_area(self) -> QRectF:
        return QRectF(self.rect()).adjusted(_MARGIN, _TOP + WALL_PX, -_MARGIN, -_FOOT)

    def sizeHint(self) -> QSize:
        return QSize(620, 560)

    # -- told to screen readers: the holes, by number -------------------------------------

    @property
    def _by_hole(self) -> dict[int, Mark]:
        return {} if self._picture is None else {one.hole: one for one in self._picture.marks}

    def parts(self) -> tuple[int, ...]:
        return tuple(self._by_hole)

    def told(self, part: int) -> Told:
        mark = self._by_hole[part]
        x, y = (format_length(one, self.unit) for one in mark.place)
        about = f"at x {x}, y {y}" + ", far off its neighbours" * mark.suspect
        value = mark.text or "read" * (mark.colour is not None)
        at, here = self.viewport.to_pixel(*mark.place), part == self.part_in_hand
        return Told(f"Hole {part}", value, at, about, here)

    def part_at(self, pixel: QPointF) -> int | None:
        return self.hole_at(pixel)

    @property
    def part_in_hand(self) -> int | None:
        return None if self._picture is None else self._picture.next_hole

    # -- hand and keys ------------------------------------------------------------------

    def hole_at(self, pixel: QPointF) -> int | None:
        """The hole under a pixel, or near enough to it."""
        picture = self._picture
        if picture is None or not picture.marks:
            return None
        distance, hole = min(
            (math.dist(pixel.toTuple(), self.viewport.to_pixel(*mark.place).toTuple()), mark.hole)
            for mark in picture.marks
        )
        radius = picture.hole_diameter / 2 * self.viewport.scale
        return hole if distance <= max(radius, _REACH_PX) else None

    def mousePressEvent(self, event: QMouseEvent) -> None:
        super().mousePressEvent(event)
        if event.button() is Qt.MouseButton.LeftButton and self._picture is not None:
            hole = self.hole_at(event.position())
            if hole is not None:
                self.hole_chosen.emit(hole)
            self.place_pressed.emit(*self.viewport.to_world(event.position()))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        key = Qt.Key(event.key())
        picture = self._picture
        if key in ARROWS and picture is not None and picture.marks:
            hole = self._beside(*ARROWS[key])
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
        corners = picture.laid or picture.plan.space.footprint
        laid = self.viewport.to_polygon(corners)
        self._paint_ground(painter, picture, laid, ink)
        paint_outline(painter, picture.plan, self.viewport, ink, None)
        if picture.laid:
            painter.strokePath(closed_path(laid), pen(ink.ink, 1.2))
        paint_marks(painter, picture, self.viewport, ink)
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
        self, painter: QPainter, picture: HolePicture, laid: QPolygonF, ink: Ink
    ) -> None:
        if picture.residuals is not None:
            painter.setClipPath(closed_path(laid))
            paint_cells(painter, self.viewport, laid, picture.residuals, ink)
            painter.setClipping(False)
        elif picture.estimate is not None and picture.style is not None:
            font = figure_font(self.font(), 0.92)
            spots = hole_spots(picture, self.viewport, painter.font())
            self._light.paint(painter, self.viewport, laid, picture.style, font, spots)

    def focusInEvent(self, event: QFocusEvent) -> None:
        super().focusInEvent(event)
        self.say_part()
        self.update()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        super().focusOutEvent(event)
        self.update()


class Stage(QWidget):
    """Shows one picture or two, and the bar that explains their colours."""

    def __init__(self) -> None:
        super().__init__()
        self.first = SurveyDrawing("Survey drawing")
        self.second = SurveyDrawing("Second survey drawing")
        self.light_bar = ColourBar()
        self.residual_bar = ColourBar()
        self._drawings = theme.row((self.first, 1), (self.second, 1), gap=theme.RHYTHM)
        theme.row((self._drawings, 1), self.light_bar, self.residual_bar, on=self, gap=theme.RHYTHM)
        for part in (self.second, self.light_bar, self.residual_bar):
            part.hide()

    def show_pictures(
        self,
        first: HolePicture,
        second: HolePicture | None = None,
        unit: LengthUnit = LengthUnit.CM,
    ) -> None:
        """Show a picture, or two beside each other; ``unit`` for lengths in what is told."""
        self.first.unit = self.second.unit = unit
        self.first.show_picture(first)
        self.second.setVisible(second is not None)
        if second is not None:
            self.second.show_picture(second)
        if first.style is not None:
            self.light_bar.show_style(first.style)
        self.light_bar.setVisible(first.style is not None)
        if first.residuals is not None:
            self.residual_bar.show_legend(first.residuals.legend)
        self.residual_bar.setVisible(first.residuals is not None)
        self._turn()

    def _turn(self) -> None:
        """Beside each other, or one above the other where that draws them larger."""
        picture = self.first.picture
        if picture is None:
            return
        x0, y0, x1, y1 = picture.plan.space.bounds
        wide, tall = x1 - x0, y1 - y0
        bars = sum(bar.width() for bar in (self.light_bar, self.residual_bar) if bar.isVisible())
        width, height = self.width() - bars, self.height()
        beside = min((width / 2 - 60) / wide, (height - 90) / tall)
        above = min((width - 60) / wide, (height / 2 - 90) / tall)
        theme.lay_beside(self._drawings, above <= 1.05 * beside)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._turn()

    def fit(self) -> None:
        """Show the whole space."""
        self.first.fit()
        self.second.fit()
