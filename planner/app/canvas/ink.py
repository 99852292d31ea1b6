"""What every drawing is painted with: inks of the palette, fonts, pictures kept, the viewport."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, replace
from typing import Final

from PySide6.QtCore import QEvent, QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QBrush,
    QColor,
    QFont,
    QFontMetricsF,
    QMouseEvent,
    QPaintEngine,
    QPainter,
    QPainterPath,
    QPalette,
    QPen,
    QPixmap,
    QPixmapCache,
    QPolygonF,
    QResizeEvent,
    QWheelEvent,
)
from PySide6.QtWidgets import QToolButton, QWidget

from planner.app import theme
from planner.app.spoken import Spoken
from planner.app.theme import sized, tabular


def mixed(one: QColor, other: QColor, share: float) -> QColor:
    """The colour ``share`` of the way from ``one`` to ``other``."""
    return QColor.fromRgbF(
        *(
            float(a + (b - a) * share)
            for a, b in zip(one.getRgbF()[:3], other.getRgbF()[:3], strict=True)  # type: ignore[index]
        )
    )


@dataclass(frozen=True)
class Ink:
    """Colours of one theme.

    ``paper`` the ground, ``ink`` lines and text, ``quiet`` text of the second rank,
    ``faint`` construction lines, ``accent`` what is selected, ``alarm`` what went wrong.
    """

    paper: QColor
    ink: QColor
    quiet: QColor
    faint: QColor
    accent: QColor
    alarm: QColor

    @classmethod
    def of(cls, palette: QPalette) -> Ink:
        """The ink for a widget's palette."""
        paper = palette.color(QPalette.ColorRole.Base)
        ink = palette.color(QPalette.ColorRole.Text)
        dark = paper.lightnessF() < ink.lightnessF()
        accent = palette.color(QPalette.ColorRole.Accent)
        if theme.wants_contrast():  # the desktop's own colours; a half tone is for thin lines only
            return cls(paper, ink, ink, mixed(ink, paper, 0.4), accent, alarm=ink)
        return cls(
            paper=paper,
            ink=ink,
            quiet=mixed(ink, paper, 0.32),
            faint=mixed(ink, paper, 0.72),
            accent=accent,
            alarm=QColor("#ff9d90") if dark else QColor("#a4281c"),
        )


def faded(colour: QColor, share: float) -> QColor:
    """The colour with so much of it left, over whatever lies below."""
    made = QColor(colour)
    made.setAlphaF(share)
    return made


def plate(ink: Ink) -> QColor:
    """The ground of a text on a drawing: what lies below is seen through it."""
    return faded(ink.paper, 0.82)


def pen(
    colour: QColor,
    width: float = 1.0,
    style: Qt.PenStyle = Qt.PenStyle.SolidLine,
    *,
    dashes: Sequence[float] = (),
) -> QPen:
    """A pen of constant width on the screen; ``dashes`` and gaps in widths of it."""
    result = QPen(colour, width, style)
    result.setCapStyle(Qt.PenCapStyle.FlatCap)
    if dashes:
        result.setDashPattern(dashes)
    return result


def figure_font(font: QFont, factor: float = 1.0, *, bold: bool = False) -> QFont:
    """The widget's font with figures of equal width."""
    return tabular(sized(font, factor, bold=bold))


def in_sight(painter: QPainter) -> QRectF:
    """The rectangle that is painted on, in the painter's own pixels.

    What lies outside is not seen and costs as much: zoomed in it is most of a drawing.
    """
    device = painter.device()
    ratio = 1.0 if isinstance(device, QWidget) else device.devicePixelRatioF()
    return QRectF(0, 0, device.width() / ratio, device.height() / ratio)


def as_lines(painter: QPainter) -> bool:
    """Whether lines and letters are written down as such, for whatever size they are shown at."""
    return painter.paintEngine().type() is QPaintEngine.Type.SVG


_HATCH_PX: Final = 10.0


_SHADES: Final = {
    (False, False): QColor(255, 255, 255, 105),
    (False, True): QColor(255, 255, 255, 170),
    (True, False): QColor(0, 0, 0, 105),
    (True, True): QColor(0, 0, 0, 150),
}


def hatch(
    painter: QPainter,
    region: QPainterPath | QRectF,
    area: QRectF,
    *,
    over: bool,
    strong: bool = False,
) -> None:
    """Parallel diagonals over a region: dark and rising over the band, light and falling under it.

    They sit on a fixed raster of the area, so that they do not swim as regions change; ``strong``
    where the region is small.
    """
    colour, rising = _SHADES[over, strong], over
    if isinstance(region, QRectF):
        path = QPainterPath()
        path.addRect(region)
        region = path
    if region.isEmpty():
        return
    if as_lines(painter):
        _hatch_in_lines(painter, region, area, colour, rising)
        return
    # A tenth to a quarter of the time that lines under a clip take.
    ratio = painter.device().devicePixelRatioF()
    pixels = round(_HATCH_PX * ratio)
    edge = pixels / ratio

    def draw(onto: QPainter) -> None:
        """A square of diagonals, each of which goes on in the next square."""
        onto.setRenderHint(QPainter.RenderHint.Antialiasing)
        onto.setPen(pen(colour, 1.0))
        _draw_diagonals(onto, QRectF(0, 0, edge, edge), -edge, edge, rising)

    key = f"hatch {colour.rgba()} {rising} {ratio}"
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setBrushOrigin(area.topLeft())
    painter.fillPath(region, QBrush(drawn_once(key, QSize(pixels, pixels), ratio, draw)))
    painter.restore()


def drawn_once(key: str, size: QSize, ratio: float, draw: Callable[[QPainter], None]) -> QPixmap:
    """A small picture that many frames show, of a size in the device's pixels."""
    picture = QPixmap()
    if not QPixmapCache.find(key, picture):
        picture = QPixmap(size)
        picture.setDevicePixelRatio(ratio)
        picture.fill(Qt.GlobalColor.transparent)
        painter = QPainter(picture)
        draw(painter)
        painter.end()
        QPixmapCache.insert(key, picture)
    return picture


def _hatch_in_lines(
    painter: QPainter, region: QPainterPath, area: QRectF, colour: QColor, rising: bool
) -> None:
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setClipPath(region, Qt.ClipOperation.IntersectClip)
    painter.setPen(pen(colour, 1.0))
    box = region.boundingRect() & area & in_sight(painter)
    before = box.left() - box.height()
    _draw_diagonals(painter, box, before - (before - area.left()) % _HATCH_PX, _HATCH_PX, rising)
    painter.restore()
    if painter.hasClipping():  # or its writer would go on with this clip
        painter.setClipPath(painter.clipPath())


def _draw_diagonals(painter: QPainter, box: QRectF, at: float, apart: float, rising: bool) -> None:
    """Lines across a box, the first from ``at``."""
    tall = box.height()
    low, high = (box.bottom(), box.top()) if rising else (box.top(), box.bottom())
    while at < box.right() + tall:
        painter.drawLine(QPointF(at, low), QPointF(at + tall, high))
        at += apart


def draw_plate_text(
    painter: QPainter, at: QPointF, text: str, colour: QColor, ground: QColor, angle: float = 0.0
) -> QRectF:
    """Text centred at a point on a small plate that keeps lines away from it.

    ``angle`` in degrees, clockwise on the screen. Returns the plate before turning.
    """
    metrics = QFontMetricsF(painter.font())
    size = metrics.boundingRect(text)
    plate = QRectF(0, 0, metrics.horizontalAdvance(text) + 6, size.height() + 1)
    plate.moveCenter(QPointF(0, 0))
    painter.save()
    painter.translate(at)
    painter.rotate(angle)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(ground)
    painter.drawRoundedRect(plate, 3, 3)
    painter.setPen(colour)
    painter.drawText(plate, Qt.AlignmentFlag.AlignCenter, text)
    painter.restore()
    return plate.translated(at)


def draw_handle(painter: QPainter, at: QPointF, ink: Ink, *, active: bool, round_: bool) -> None:
    """A small grip: square for corners and edges, round for turning and ends of lines."""
    half = 5.0 if active else 3.5
    painter.setPen(pen(ink.accent if active else ink.ink, 1.5))
    painter.setBrush(ink.accent if active else ink.paper)
    spot = QRectF(at.x() - half, at.y() - half, 2 * half, 2 * half)
    if round_:
        painter.drawEllipse(spot)
    else:
        painter.drawRect(spot)


class Kept:
    """A part of a drawing kept as a picture; painted anew when its key or the device changes."""

    def __init__(self) -> None:
        self._key: object = None
        self._picture: QPixmap | None = None

    def paint(self, painter: QPainter, key: object, compose: Callable[[QPainter], None]) -> None:
        """Paint the part; ``compose`` is called only where what is kept is of another key."""
        if as_lines(painter):
            painter.save()
            compose(painter)
            painter.restore()
            return
        device = painter.device()
        size = QSize(device.width(), device.height())
        ratio = device.devicePixelRatioF()
        whole = (key, painter.font(), size, ratio)
        if self._picture is None or whole != self._key:
            self._key, self._picture = whole, QPixmap(size * ratio)
            self._picture.setDevicePixelRatio(ratio)
            self._picture.fill(Qt.GlobalColor.transparent)
            layer = QPainter(self._picture)
            layer.setFont(painter.font())
            layer.setRenderHints(painter.renderHints())
            compose(layer)
            layer.end()
        painter.drawPixmap(QPointF(0, 0), self._picture)


# -- Viewport --------------------------------------------------------------------------

Bounds = tuple[float, float, float, float]

MIN_SCALE = 20.0
MAX_SCALE = 20000.0


@dataclass(frozen=True)
class Viewport:
    """A uniform scale and a shift; the second world axis points up, pixels point down.

    ``scale`` in pixels per metre; ``left`` and ``bottom`` are the pixel of the world's
    origin. Pixels are device independent.
    """

    scale: float = 400.0
    left: float = 0.0
    bottom: float = 0.0

    def to_pixel(self, u: float, v: float) -> QPointF:
        """Pixel of a world point in metres."""
        return QPointF(self.left + u * self.scale, self.bottom - v * self.scale)

    def to_polygon(self, corners: Iterable[tuple[float, float]]) -> QPolygonF:
        """Pixels of world points in metres."""
        return QPolygonF([self.to_pixel(*corner) for corner in corners])

    def to_world(self, pixel: QPointF) -> tuple[float, float]:
        """World point in metres under a pixel."""
        return (pixel.x() - self.left) / self.scale, (self.bottom - pixel.y()) / self.scale

    def to_rect(self, bounds: Bounds) -> QRectF:
        """Pixel rectangle of world bounds (u0, v0, u1, v1)."""
        return QRectF(self.to_pixel(bounds[0], bounds[3]), self.to_pixel(bounds[2], bounds[1]))

    @classmethod
    def fitted(cls, bounds: Bounds, area: QRectF) -> Viewport:
        """The largest scale that shows the bounds inside a pixel area, centred."""
        width, height = bounds[2] - bounds[0], bounds[3] - bounds[1]
        scale = min(area.width() / max(width, 1e-6), area.height() / max(height, 1e-6))
        scale = min(max(scale, MIN_SCALE), MAX_SCALE)
        centre = area.center()
        return cls(
            scale=scale,
            left=centre.x() - scale * (bounds[0] + bounds[2]) / 2,
            bottom=centre.y() + scale * (bounds[1] + bounds[3]) / 2,
        )

    def zoomed(self, factor: float, about: QPointF) -> Viewport:
        """Scaled by a factor; the world point under ``about`` stays where it is."""
        u, v = self.to_world(about)
        scale = min(max(self.scale * factor, MIN_SCALE), MAX_SCALE)
        return Viewport(scale, about.x() - u * scale, about.y() + v * scale)

    def panned(self, by: QPointF) -> Viewport:
        """Shifted by so many pixels."""
        return replace(self, left=self.left + by.x(), bottom=self.bottom + by.y())


LEAST_ZOOM = 0.25
MOST_ZOOM = 16.0
"""Limits of zooming, of the size at which the whole space fits."""

ZOOM_STEP = 1.25
_IN_SIGHT_PX = 48.0


ARROWS: Final = {
    Qt.Key.Key_Left: (-1, 0),
    Qt.Key.Key_Right: (1, 0),
    Qt.Key.Key_Up: (0, 1),
    Qt.Key.Key_Down: (0, -1),
}
"""Which way each of the arrow keys points in the plan."""


class FittedWidget(Spoken):
    """A drawing to scale: whole while nobody has zoomed, painted anew in other colours.

    It is zoomed by the wheel about the pointer and shifted by the middle button, within
    limits, and a part of the space always stays in sight. Signal: ``zoomed`` when the scale
    changes.
    """

    zoomed = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._fitted = True
        self._pan_from: QPointF | None = None
        self.viewport = Viewport()

    def bounds(self) -> Bounds:
        """World rectangle that ``fit`` shows."""
        raise NotImplementedError

    def drawing_area(self) -> QRectF:
        """Pixel rectangle ``fit`` fills."""
        raise NotImplementedError

    def fit(self) -> None:
        """Show the whole space and keep it whole when the widget changes size."""
        self._fitted = True
        self.look(Viewport.fitted(self.bounds(), self.drawing_area()))

    def look(self, viewport: Viewport) -> None:
        """Show the space from another place or at another scale."""
        changed = viewport.scale != self.viewport.scale
        self.viewport = viewport
        self.update()
        if changed:
            self.zoomed.emit()

    @property
    def zoom_percent(self) -> int:
        """The scale in percent of the one at which the whole space fits."""
        whole = Viewport.fitted(self.bounds(), self.drawing_area()).scale
        return round(100 * self.viewport.scale / whole)

    def zoom(self, factor: float, about: QPointF | None = None) -> None:
        """Enlarge by a factor about a pixel (the middle), within the limits."""
        whole = Viewport.fitted(self.bounds(), self.drawing_area()).scale
        wanted = self.viewport.scale * factor / whole
        factor *= min(max(wanted, LEAST_ZOOM), MOST_ZOOM) / wanted
        middle = QPointF(self.rect().center()) if about is None else about
        self._fitted = False
        self.look(self._in_sight(self.viewport.zoomed(factor, middle)))

    def pan(self, by: QPointF) -> None:
        """Shift by so many pixels; a part of the space stays in sight."""
        self._fitted = False
        self.look(self._in_sight(self.viewport.panned(by)))

    def _in_sight(self, viewport: Viewport) -> Viewport:
        drawn, room = viewport.to_rect(self.bounds()), QRectF(self.rect())
        room = room.adjusted(_IN_SIGHT_PX, _IN_SIGHT_PX, -_IN_SIGHT_PX, -_IN_SIGHT_PX)
        right = max(room.left() - drawn.right(), 0.0) + min(room.right() - drawn.left(), 0.0)
        down = max(room.top() - drawn.bottom(), 0.0) + min(room.bottom() - drawn.top(), 0.0)
        return viewport.panned(QPointF(right, down)) if right or down else viewport

    def wheelEvent(self, event: QWheelEvent) -> None:
        if event.angleDelta().y():
            self.zoom(1.0015 ** event.angleDelta().y(), event.position())
        event.accept()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        if event.button() is Qt.MouseButton.MiddleButton:
            self._pan_from = event.position()

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        if self._pan_from is not None:
            self.pan(event.position() - self._pan_from)
            self._pan_from = event.position()

    def mouseReleaseEvent(self, _event: QMouseEvent) -> None:
        self._pan_from = None

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        if self._fitted:
            self.fit()

    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() in {QEvent.Type.PaletteChange, QEvent.Type.FontChange}:
            self.update()


class ZoomControl(QWidget):
    """Smaller, the scale in percent of the whole space in sight, larger."""

    def __init__(self, drawing: FittedWidget) -> None:
        super().__init__(drawing)
        self._drawing = drawing
        # Nothing drawn shows between its letters.
        self.setAutoFillBackground(True)
        self.setBackgroundRole(QPalette.ColorRole.Base)
        theme.row(on=self, gap=0)
        self.out_button = self._made("−", "Smaller", lambda: drawing.zoom(1 / ZOOM_STEP))
        self.fit_button = self._made("100 %", "", drawing.fit)
        self.in_button = self._made("+", "Larger", lambda: drawing.zoom(ZOOM_STEP))
        drawing.zoomed.connect(self._show)
        self._show()

    def _made(self, text: str, name: str, act: Callable[[], None]) -> QToolButton:
        made = theme.small_button(text, name)
        made.clicked.connect(lambda: act())  # noqa: PLW0108 - without the state Qt hands on
        self.add(made)
        return made

    def add(self, button: QToolButton) -> None:
        """Put one more button beside them."""
        # Tab goes through the things on the drawing; the keys + - 0 and the menu do the same.
        button.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        button.setCursor(Qt.CursorShape.ArrowCursor)
        layout = self.layout()
        if layout is not None:
            layout.addWidget(button)

    def _show(self) -> None:
        percent = self._drawing.zoom_percent
        self.fit_button.setText(f"{percent} %")
        self.fit_button.setAccessibleName(f"Zoomed to {percent} %; show the whole space")
        self.fit_button.setToolTip("Show the whole space, which is 100 %")
        self.adjustSize()
        self.move(8, 6)
