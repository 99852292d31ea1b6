"""The light in the drawing: the map, its contours and the wash of the target band."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from itertools import pairwise
from typing import Any

import numpy as np
import numpy.typing as npt
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import (
    QColor,
    QFont,
    QFontMetricsF,
    QImage,
    QPainter,
    QPainterPath,
    QPolygonF,
)
from shiboken6 import VoidPtr

from planner.app import theme
from planner.app.canvas.ink import Kept, Viewport, as_lines, drawn_once, faded, hatch, pen
from planner.app.canvas.plan_layers import footprint_polygon
from planner.app.plots import colours
from planner.estimate.result import CanopyLight, Estimate
from planner.light.cellmap import CellMap
from planner.plan.place import OWN, Place, PlaceKind, band_at
from planner.plan.plan import Plan
from planner.reports.contrast import ink_on
from planner.units import COVERAGE, PPFD_UNIT, format_number

Pixels = npt.NDArray[np.float64]
_MOST_PIXELS = 1000
_FINENESS = 3
"""Among lines the colours have so many pixels for each of the screen's."""
_LABEL_SHARES = (0.4, 0.6, 0.3, 0.7, 0.15, 0.85, 0.35, 0.65, 0.25, 0.75, 0.2, 0.8, 0.45, 0.55)
"""Where along a line its number may stand, the best places first."""
_SHARES = np.array(_LABEL_SHARES)
_APART = (4.0, 2.0)
"""What stays free beside and below a number, in pixels."""
_PIECE_PX = 6.0


@dataclass(frozen=True)
class LightStyle:
    """How the light is shown; ``band`` in µmol m⁻² s⁻¹ is used only with ``wash``.

    ``doubt`` is the relative standard uncertainty of the light: as far as it reaches, the edges
    of the band are soft. ``unit`` stands over the colour bar, line by line, under the ``name`` of
    what is no PPFD. ``dimmed`` colours are for a dark ground, as the window has or has not when
    the style is made.
    """

    levels: colours.Levels
    colour_map: str
    contours: bool = True
    wash: bool = False
    band: colours.Levels | None = None
    doubt: float = 0.0
    unit: tuple[str, ...] = tuple(PPFD_UNIT.split(" ", 1))
    dimmed: bool = field(default_factory=theme.is_dark)
    name: str = ""

    @property
    def table(self) -> colours.Rgba:
        """The colour table in force."""
        if self.wash and self.band is not None:
            return colours.washed_table(
                self.colour_map, self.levels, self.band, doubt=self.doubt, dimmed=self.dimmed
            )
        return colours.table(self.colour_map, dimmed=self.dimmed)

    @property
    def sure(self) -> colours.Levels | None:
        """Under the first and over the second light is surely (95 %) under and over the band."""
        if self.band is None:
            return None
        reach = min(COVERAGE * self.doubt, 0.9)
        return self.band[0] / (1 + reach), self.band[1] / (1 - reach)


@dataclass(frozen=True)
class Contour:
    """The lines of one level: arrays of (x, y) in metres, shape (n, 2)."""

    level: float
    lines: tuple[np.ndarray[Any, np.dtype[np.float64]], ...]


class LightLayer:
    """Paints a map over a plan; keeps the picture until map, style or scale change."""

    def __init__(self) -> None:
        self._map: CellMap | None = None
        self._plan: Plan | None = None
        self._kept, self._number = Kept(), 0
        self._contours: list[Contour] | None = None
        self._at: Sequence[float] | None = None
        self._above: tuple[CanopyLight, ...] = ()

    def set_estimate(self, estimate: Estimate | None, key: str = "mean") -> None:
        """Show the light of an estimate on the plan's own canopy, or none; see ``set_canopy``."""
        self.set_canopy(estimate and estimate.own, key)
        self._above = estimate.layers[1:] if estimate else ()

    def set_canopy(self, shown: CanopyLight | None, key: str = "mean") -> None:
        """Show the light on a canopy, or another of its ``maps``; or none."""
        plan = shown.plan if shown is not None and shown.place == OWN else None
        self.set_map(shown.maps[key] if shown else None, plan)

    def set_map(
        self,
        shown: CellMap | None,
        plan: Plan | None = None,
        at: Sequence[float] | None = None,
    ) -> None:
        """Show any map over the canopy of a plan, or of another plane without a plan; or none.

        ``at`` are the levels its contours are drawn at, rather than round numbers of its own.
        """
        self._map = shown if shown and shown.valid.any() else None
        self._plan = plan
        self._number += 1
        self._contours, self._at, self._above = None, at, ()

    def paint(
        self,
        painter: QPainter,
        viewport: Viewport,
        footprint: QPolygonF,
        style: LightStyle,
        font: QFont,
        clear: tuple[QRectF, ...] = (),
        rims: tuple[QPolygonF, ...] = (),
    ) -> None:
        """Paint the light, clipped to the footprint (or part of another plane) given in pixels.

        Where others will be painted over it (``clear``, the lines of ``rims``, light of canopies
        above) it writes no numbers.
        """
        shown, plan = self._map, self._plan
        if shown is None:
            return
        own = footprint if plan is None else footprint_polygon(plan, viewport)
        key = (self._number, style, viewport, own, font, clear, rims)

        def compose(layer: QPainter) -> None:
            layer.setClipPath(closed_path(own) if plan is None else lit_path(own, plan, viewport))
            _paint_map(layer, shown, viewport.to_rect(shown.bounds), style)
            if style.wash:
                _paint_hatching(layer, shown, viewport, own.boundingRect(), style)
            if style.contours:
                if self._contours is None:
                    self._contours = contour_lines(shown, self._at, style.levels[1])
                taken = [*clear, *(box for rim in rims for box in _along(rim))]
                room = layer.clipPath()
                for above in self._above:
                    room -= closed_path(viewport.to_polygon(above.outline))
                _paint_contours(layer, self._contours, viewport, style, font, taken, room)

        if footprint == own:
            self._kept.paint(painter, key, compose)
            return
        # A wall has moved since: what is kept of the light is seen inside the walls of now.
        painter.save()
        painter.setClipPath(closed_path(footprint))
        self._kept.paint(painter, key, compose)
        painter.restore()


class SeenLight:
    """Paints the light on all canopies as seen from above the one that an estimate is of."""

    def __init__(self) -> None:
        self._each: list[tuple[CanopyLight, LightLayer]] = []

    def set_estimate(self, estimate: Estimate | None) -> None:
        """Show the light of an estimate, or none."""
        self._each = [(canopy, LightLayer()) for canopy in (estimate.layers if estimate else ())]
        for canopy, layer in self._each:
            layer.set_canopy(canopy)
        if self._each:  # which leaves room for what lies on it
            self._each[0][1].set_estimate(estimate)

    def paint(self, painter: QPainter, viewport: Viewport, style: LightStyle, font: QFont) -> None:
        """Paint it, each by the band wanted there."""
        for canopy, layer in self._each:
            of = replace(style, band=canopy.band)
            layer.paint(painter, viewport, viewport.to_polygon(canopy.outline), of, font)


class TopLayers:
    """Paints the light on each canopy that an obstacle carries."""

    def __init__(self) -> None:
        self._layers: dict[int, tuple[LightLayer, float]] = {}
        """By obstacle, with what of its light comes from the room."""

    def set_estimate(self, estimate: Estimate | None, key: str = "mean") -> None:
        """As those of ``LightLayer`` on the plan's own canopy."""
        self._layers = {}
        for top in () if estimate is None else estimate.layers[1:]:
            layer = LightLayer()
            layer.set_canopy(top, key)
            self._layers[top.place.index] = layer, top.entered

    def show_alone(self, index: int, shown: CellMap) -> None:
        """Show a map of one of them."""
        layer = LightLayer()
        layer.set_map(shown)
        self._layers = {index: (layer, 0.0)}

    def paint(
        self,
        painter: QPainter,
        viewport: Viewport,
        plan: Plan,
        style: LightStyle,
        font: QFont,
        clear: tuple[QRectF, ...],
        rims: tuple[QPolygonF, ...],
        index: int,
        outline: QPolygonF,
    ) -> bool:
        """Paint what is known of the light on the top of an obstacle; whether anything is."""
        if index not in self._layers or plan.obstacles[index].canopy is None:
            return False
        layer, entered = self._layers[index]
        style = replace(style, band=band_at(plan, Place(PlaceKind.TOP, index), entered))
        layer.paint(painter, viewport, outline, style, font, clear, rims)
        return True


def lit_path(footprint: QPolygonF, plan: Plan, viewport: Viewport) -> QPainterPath:
    """Where there is light to show, in pixels: in the footprint, but not where obstacles stand."""
    path = QPainterPath()
    path.setFillRule(Qt.FillRule.WindingFill)
    for obstacle in plan.in_canopy:
        path.addPolygon(viewport.to_polygon(obstacle.outline()))
        path.closeSubpath()
    inside = closed_path(footprint)
    return inside if path.isEmpty() else inside.subtracted(path)


def canopy_path(shown: CanopyLight, viewport: Viewport) -> QPainterPath:
    """Where there is light of a canopy to show, in pixels."""
    outline = viewport.to_polygon(shown.outline)
    return lit_path(outline, shown.plan, viewport) if shown.place == OWN else closed_path(outline)


def _paint_map(painter: QPainter, shown: CellMap, rect: QRectF, style: LightStyle) -> None:
    """The map at the screen's own resolution, values (not colours) interpolated."""
    lines = as_lines(painter)
    ratio = _FINENESS if lines else painter.device().devicePixelRatioF()
    columns, rows = (
        int(min(max(round(extent * ratio), 1), _MOST_PIXELS))
        for extent in (rect.width(), rect.height())
    )
    low, high = style.levels
    words = np.ascontiguousarray(style.table[:, [2, 1, 0, 3]]).view(np.uint32).ravel()
    fine = shown.raster(rows, columns)[::-1]
    scale = (len(words) - 1) / max(high - low, 1e-12)
    fine *= scale
    fine += 0.5 - low * scale
    np.clip(fine, 0, len(words) - 1, out=fine)
    pixels = words.take(fine.astype(np.uint16))
    image = QImage(pixels.data, columns, rows, 4 * columns, QImage.Format.Format_RGB32)
    if lines or _MOST_PIXELS in {columns, rows}:  # or zoomed far in: the painter enlarges it
        painter.drawImage(rect, image)
        return
    # On whole pixels the picture is copied, not resampled: several times as fast.
    image.setDevicePixelRatio(ratio)
    left, top = round(rect.left() * ratio) / ratio, round(rect.top() * ratio) / ratio
    painter.drawImage(QPointF(left, top), image)


def contour_lines(
    shown: CellMap, at: Sequence[float] | None = None, beside: float = 0.0
) -> list[Contour]:
    """The contour lines of a map, in metres; at round numbers of its own or at given ones.

    ``beside`` as of ``CellMap.contour_levels``.
    """
    levels = shown.contour_levels(beside=beside) if at is None else at
    return [Contour(level, shown.lines(level)) for level in levels]


def contour_colours(under: Sequence[float]) -> tuple[QColor, QColor, QColor]:
    """Line, text and their halo on a colour of the map.

    The halo is that colour itself: unseen on the map, it keeps hatching and other light away
    from them, so that what they are read against is known.
    """
    ink = QColor(*ink_on(under))
    line = faded(ink, 0.8)
    return line, ink, QColor(*(int(part) for part in under[:3]))


def _paint_contours(
    painter: QPainter,
    contours: Sequence[Contour],
    viewport: Viewport,
    style: LightStyle,
    font: QFont,
    taken: list[QRectF],
    within: QPainterPath,
) -> None:
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setFont(font)
    metrics = QFontMetricsF(font)
    table = style.table
    low, high = style.levels
    for contour in contours:
        place = (contour.level - low) / (high - low) if high > low else 0.0
        under = table[min(max(int(place * (len(table) - 1)), 0), len(table) - 1)]
        colour, ink, halo = contour_colours(under.tolist())
        text = format_number(contour.level, 1)
        lines = [_pixels(viewport, line) for line in contour.lines]
        spots = _label_spots(
            lines,
            metrics.horizontalAdvance(text) + 8,
            metrics.height(),
            taken,
            within,
        )
        painter.setBrush(Qt.BrushStyle.NoBrush)
        pieces = [_polygon(piece) for line in lines for piece in _outside(line, spots)]
        # On the map alone the halo is the colour that is there; a wide pen costs thirty thin ones.
        strokes = (pen(halo, 2.6), pen(colour, 1.0)) if style.wash else (pen(colour, 1.0),)
        for stroke in strokes:
            painter.setPen(stroke)
            for piece in pieces:
                painter.drawPolyline(piece)
        for spot in spots:
            _paint_label(painter, spot, text, ink, halo)


def _paint_label(painter: QPainter, spot: QRectF, text: str, ink: QColor, halo: QColor) -> None:
    """A label with its halo, as a picture that is kept: the same few come with every frame."""
    if as_lines(painter):
        paint_haloed(painter, spot, text, ink, halo)
        return
    ratio = painter.device().devicePixelRatioF()
    room = spot.adjusted(-2, -2, 2, 2)
    size = (room.size() * ratio).toSize()
    key = f"contour {text} {painter.font().key()} {ink.name()} {halo.name()} {ratio} {size}"

    def draw(onto: QPainter) -> None:
        onto.setRenderHints(painter.renderHints())
        onto.setFont(painter.font())
        paint_haloed(onto, spot.translated(-room.topLeft()), text, ink, halo)

    picture = drawn_once(key, size, ratio, draw)
    # On whole pixels, or the letters would blur.
    left, top = round(room.left() * ratio) / ratio, round(room.top() * ratio) / ratio
    painter.drawPixmap(QPointF(left, top), picture)


def paint_haloed(painter: QPainter, spot: QRectF, text: str, ink: QColor, halo: QColor) -> None:
    """A text in the middle of a spot, with a rim of another colour round its letters."""
    metrics = QFontMetricsF(painter.font())
    left = spot.center().x() - metrics.horizontalAdvance(text) / 2
    letters = QPainterPath()
    letters.addText(
        QPointF(left, spot.center().y() + metrics.capHeight() / 2), painter.font(), text
    )
    painter.strokePath(letters, pen(halo, 3.0))
    painter.fillPath(letters, ink)


def _paint_hatching(
    painter: QPainter, shown: CellMap, viewport: Viewport, area: QRectF, style: LightStyle
) -> None:
    """Diagonals where light is surely under or over the band, and a line at its very edges."""
    if style.band is None or style.sure is None:
        return
    generator = shown.contouring
    under = _region(viewport, generator.filled(-1.0, style.sure[0]))
    over = _region(viewport, generator.filled(style.sure[1], 1e9))
    hatch(painter, under, area, over=False)
    hatch(painter, over, area, over=True)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    edge = pen(QColor(255, 255, 255, 220), 1.6)
    if style.doubt > 0:  # a line that is not quite there, as the edge is not
        edge = pen(QColor(255, 255, 255, 190), 1.2, dashes=(2, 4))
    painter.setPen(edge)
    for level in style.band:
        for line in shown.lines(level):
            painter.drawPolyline(_polygon(_pixels(viewport, line)))


def _pixels(viewport: Viewport, points: Pixels) -> Pixels:
    """Points in metres (n, 2) in pixels."""
    return points * (viewport.scale, -viewport.scale) + (viewport.left, viewport.bottom)


def _along(rim: QPolygonF) -> list[QRectF]:
    """Boxes over the sides of an outline, or over a line; over a slanted one many small ones."""
    corners = [corner.toTuple() for corner in rim.toList()]
    boxes = []
    for (ax, ay), (bx, by) in zip(corners, [*corners[1:], corners[0]], strict=True):
        across, down = bx - ax, by - ay
        parts = 1 + int(min(abs(across), abs(down)) / _PIECE_PX)
        boxes += [
            QRectF(ax + k * across / parts, ay + k * down / parts, across / parts, down / parts)
            .normalized()
            .adjusted(-1, -1, 1, 1)
            for k in range(parts)
        ]
    return boxes


def _polygon(pixels: Pixels) -> QPolygonF:
    """Pixels (n, 2) as Qt takes them."""
    line = QPolygonF()
    line.resize(len(pixels))
    # A point of Qt is two doubles: all are written where they lie, not by one call for each.
    memory = VoidPtr(line.data(), pixels.size * 8, True)  # type: ignore[arg-type, call-arg]
    np.frombuffer(memory, np.float64)[:] = pixels.ravel()  # type: ignore[call-overload]
    return line


def _region(viewport: Viewport, filled: Any) -> QPainterPath:
    path = QPainterPath()
    path.setFillRule(Qt.FillRule.OddEvenFill)
    for points, offsets in zip(*filled, strict=True):
        for first, last in pairwise(offsets):
            path.addPolygon(_polygon(_pixels(viewport, points[first:last])))
            path.closeSubpath()
    return path


def _label_spots(
    lines: Sequence[Pixels],
    width: float,
    height: float,
    taken: list[QRectF],
    within: QPainterPath,
) -> list[QRectF]:
    """One spot on each line long enough, away from other labels and whole inside; fills ``taken``.

    A number that is cut at the rim reads as another one.
    """
    spots: list[QRectF] = []
    half = np.array((width, height)) / 2
    for line in lines:
        if np.ptp(line, axis=0).sum() < 2.4 * width:
            continue
        places = line[np.minimum((len(line) * _SHARES).astype(int), len(line) - 1)]
        boxes = np.array([box.getCoords() for box in taken]).reshape(-1, 4)
        low, high = boxes[:, :2] - half - _APART, boxes[:, 2:] + half + _APART
        hit = ((places[:, None] > low) & (places[:, None] < high)).all(axis=2).any(axis=1)
        for x, y in (places[~hit] - half).tolist():
            spot = QRectF(x, y, width, height)
            if within.isEmpty() or within.contains(spot):
                taken.append(spot)
                spots.append(spot)
                break
    return spots


def _outside(line: Pixels, spots: Sequence[QRectF]) -> list[Pixels]:
    """The pieces of a line outside the spots where labels of one size stand.

    Cut between its points, which lie closer together than a label is wide: a clip over the
    whole drawing would cost more than all the lines.
    """
    if not spots:
        return [line]
    middles = np.array([spot.center().toTuple() for spot in spots])
    half = (spots[0].width() / 2, spots[0].height() / 2)
    free = (np.abs(line[:, None] - middles) > half).any(axis=2).all(axis=1)
    if free.all():
        return [line]
    ends = np.flatnonzero(np.diff(np.concatenate(([False], free, [False]))))
    pairs = zip(ends[::2].tolist(), ends[1::2].tolist(), strict=True)
    return [line[first:last] for first, last in pairs if last - first > 1]


def closed_path(outline: QPolygonF) -> QPainterPath:
    """What lies inside an outline."""
    path = QPainterPath()
    path.addPolygon(outline)
    path.closeSubpath()
    return path
