"""Paints the side elevation: enclosure, wall bands, lamps on their cords, the lit canopy."""

from __future__ import annotations

import math
import warnings
from dataclasses import dataclass

import numpy as np
from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QImage, QPainter, QPainterPath, QPolygonF

from planner.app import theme
from planner.app.canvas.elevation_drags import (
    Axis,
    across,
    band_edges,
    beam_half_angle,
    extent,
    lamp_extent,
    side_wall,
    wall_extent,
)
from planner.app.canvas.ink import (
    Ink,
    Viewport,
    draw_handle,
    draw_plate_text,
    faded,
    in_sight,
    mixed,
    pen,
    plate,
)
from planner.app.canvas.plan_layers import (
    WALL_PX,
    paint_dimension,
    paint_gap,
    paint_lining,
    texture,
    tone,
)
from planner.app.plots import colours
from planner.estimate.result import Estimate, FloatArray
from planner.plan.groups import Chosen
from planner.plan.lamp import Lamp
from planner.plan.lining import Lining
from planner.plan.place import Place, PlaceKind
from planner.plan.plan import Plan
from planner.plan.space import hull
from planner.plan.tiers import hangs
from planner.units import LengthUnit, format_length

BODY_PX = 8.0
CANOPY_PX = 7.0
LEAST_NAME_PX = 90.0
"""In less the name of a lining tells nothing."""

_SHEET_ROW_PX = 22.0
ACROSS = 96
"""Pixels of the light along the canopy."""


@dataclass(frozen=True)
class Elevation:
    """One painting of the side view: what is drawn, from where, and in which ink."""

    plan: Plan
    axis: Axis
    viewport: Viewport
    ink: Ink
    unit: LengthUnit

    def at(self, u: float, height: float) -> QPointF:
        """Pixel of a place across and a height."""
        return self.viewport.to_pixel(u, height)

    def inside(self) -> QRectF:
        """Pixel rectangle of the space."""
        left, right = extent(self.plan, self.axis)
        return self.viewport.to_rect((left, 0.0, right, self.plan.space.height))

    # -- enclosure ----------------------------------------------------------------------

    def paint_sheet(self, painter: QPainter, wall: int) -> None:
        """The bands of the wall looked at, pale, so that what is before it stands out."""
        left, right = wall_extent(self.plan, wall, self.axis)
        if self.plan.wall_opens(wall):
            return
        edges = (0.0, *band_edges(self.plan, wall), self.plan.space.height)
        for k, band in enumerate(self.plan.walls[wall].bands):
            lining = self.plan.lining(band.lining)
            area = self.viewport.to_rect((left, edges[k], right, edges[k + 1]))
            if not lining.is_opening:
                self._paint_sheet_band(painter, area, lining)

    def paint_band_names(self, painter: QPainter, wall: int) -> None:
        """What each band of the wall shown is lined with, where it has more than one."""
        bands = self.plan.walls[wall].bands
        if len(bands) < 2 or self.plan.wall_opens(wall):
            return
        left, right = wall_extent(self.plan, wall, self.axis)
        edges = (0.0, *band_edges(self.plan, wall), self.plan.space.height)
        metrics = QFontMetricsF(painter.font())
        ground = plate(self.ink)
        for k, band in enumerate(bands):
            area = self.viewport.to_rect((left, edges[k], right, edges[k + 1]))
            name, room = self.plan.lining(band.lining).name, area.width() - 24
            if area.height() < metrics.height() + 4 or room < LEAST_NAME_PX:
                continue
            whole = f"Band {k + 1}: {name}"
            # Where there is no room for both, what it is says more than its number.
            text = whole if metrics.horizontalAdvance(whole) <= room else name
            text = metrics.elidedText(text, Qt.TextElideMode.ElideRight, room)
            half = metrics.horizontalAdvance(text) / 2 + 3
            # Under the band's upper edge at the left, where no lamp hangs over it as a rule.
            at = QPointF(area.left() + 8 + half, area.top() + metrics.height() / 2 + 6)
            draw_plate_text(painter, at, text, self.ink.quiet, ground)

    def _paint_sheet_band(self, painter: QPainter, area: QRectF, lining: Lining) -> None:
        ground = mixed(tone(lining.reflectance), self.ink.paper, 0.62)
        painter.fillRect(area, ground)
        dot_pen = pen(mixed(ground, self.ink.ink, 0.2), 1.6)
        dot_pen.setCapStyle(Qt.PenCapStyle.RoundCap)
        row, seen = area.top() + _SHEET_ROW_PX / 2, in_sight(painter)
        row += max((seen.top() - row) // _SHEET_ROW_PX, 0) * _SHEET_ROW_PX
        # All rows are alike: their dots are reckoned once and shifted.
        ends = QPointF(area.left(), row), QPointF(area.right(), row)
        sideways = QRectF(seen.left(), row - 1, seen.width(), 2)
        dots, dashes = texture(*ends, lining.specular_share, sideways)
        dots, dashes, dash_pen = dots[::2], dashes[::2], pen(dot_pen.color(), 1.2)
        painter.save()
        while row < min(area.bottom() - 2, seen.bottom()):
            painter.setPen(dot_pen)
            painter.drawPoints(dots)
            painter.setPen(dash_pen)
            painter.drawLines(dashes)
            painter.translate(0, _SHEET_ROW_PX)
            row += _SHEET_ROW_PX
        painter.restore()

    def paint_enclosure(self, painter: QPainter, selected: frozenset[str]) -> None:
        """Floor, ceiling and the two walls cut, in their linings; ``selected`` in the accent."""
        box, plan = self.inside(), self.plan
        outer = box.adjusted(-WALL_PX, -WALL_PX, WALL_PX, WALL_PX)
        self._paint_slab(
            painter,
            (outer.topLeft(), outer.topRight(), box.topRight(), box.topLeft()),
            plan.lining(plan.ceiling),
            accent="ceiling" in selected,
        )
        self._paint_slab(
            painter,
            (box.bottomLeft(), box.bottomRight(), outer.bottomRight(), outer.bottomLeft()),
            plan.lining(plan.floor),
            accent="floor" in selected,
        )
        for right in (False, True):
            self._paint_side(painter, box, right=right, selected=selected)

    def _paint_side(
        self, painter: QPainter, box: QRectF, *, right: bool, selected: frozenset[str]
    ) -> None:
        wall = side_wall(self.plan, self.axis, right=right)
        near = box.right() if right else box.left()
        far = near + (WALL_PX if right else -WALL_PX)
        if self.plan.wall_opens(wall):
            paint_gap(painter, QPointF(near, box.top()), QPointF(near, box.bottom()), self.ink)
            return
        edges = (0.0, *band_edges(self.plan, wall), self.plan.space.height)
        for k, band in enumerate(self.plan.walls[wall].bands):
            low, high = self.at(0, edges[k]).y(), self.at(0, edges[k + 1]).y()
            foot = WALL_PX if k == 0 else 0.0
            head = WALL_PX if k + 2 == len(edges) else 0.0
            corners = (
                QPointF(near, low),
                QPointF(near, high),
                QPointF(far, high - head),
                QPointF(far, low + foot),
            )
            on = f"wall {wall}" in selected
            self._paint_slab(painter, corners, self.plan.lining(band.lining), accent=on)
            if on and k > 0:
                draw_handle(
                    painter, QPointF((near + far) / 2, low), self.ink, active=False, round_=False
                )

    def _paint_slab(
        self, painter: QPainter, corners: tuple[QPointF, ...], lining: Lining, *, accent: bool
    ) -> None:
        strip = QPolygonF(corners)
        if lining.is_opening:
            paint_gap(painter, corners[0], corners[1], self.ink)
            return
        paint_lining(painter, strip, lining)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.setPen(pen(self.ink.accent, 3.0) if accent else pen(self.ink.ink, 1.0))
        painter.drawPolygon(strip)

    def paint_band_edges(self, painter: QPainter, wall: int, active: int | None) -> None:
        """The edges between bands, with grips and heights."""
        left, right = wall_extent(self.plan, wall, self.axis)
        for k, height in enumerate(band_edges(self.plan, wall)):
            start, end = self.at(left, height), self.at(right, height)
            on = k == active
            line = pen(self.ink.accent if on else self.ink.quiet, 1.4, dashes=(6, 3))
            painter.setPen(line)
            painter.drawLine(start, end)
            draw_handle(painter, end, self.ink, active=on, round_=False)
            colour = self.ink.ink if on else self.ink.quiet
            text = format_length(height, self.unit)
            if not on and 4 * QFontMetricsF(painter.font()).horizontalAdvance(text) > abs(
                end.x() - start.x()
            ):
                continue  # it would cover what it measures
            spot = QPointF(start.x() + 34, start.y() - 10)
            draw_plate_text(painter, spot, text, colour, self.ink.paper)

    # -- canopy -------------------------------------------------------------------------

    def paint_canopy(self, painter: QPainter, light: QImage | None, *, active: bool) -> None:
        """The canopy plane: a strip in the colours of the light that falls on it."""
        box, height = self.inside(), self.plan.canopy.height
        top = self.at(0, height).y()
        strip = QRectF(box.left(), top, box.width(), CANOPY_PX)
        if self.plan.canopy.closed:
            below = faded(self.ink.ink, 0.07)
            painter.fillRect(QRectF(box.left(), top, box.width(), box.bottom() - top), below)
        if light is not None:
            painter.drawImage(strip, light)
        painter.setPen(pen(self.ink.accent if active else self.ink.ink, 2.4 if active else 1.6))
        painter.drawLine(strip.topLeft(), strip.topRight())
        draw_handle(painter, strip.topLeft(), self.ink, active=active, round_=False)
        draw_handle(painter, strip.topRight(), self.ink, active=active, round_=False)

    # -- lamps --------------------------------------------------------------------------

    def body(self, lamp: Lamp) -> QRectF:
        """Pixel rectangle of a lamp's body; its lower edge is the face of a level one."""
        if lamp.tilt_deg:
            return self.shape(lamp).boundingRect()
        left, right = lamp_extent(lamp, self.axis)
        face = self.plan.lamp_height(lamp)
        start, end = self.at(left, face), self.at(right, face)
        spare = max(0.0, 10.0 - (end.x() - start.x())) / 2
        return QRectF(
            start.x() - spare, start.y() - BODY_PX, end.x() - start.x() + 2 * spare, BODY_PX
        )

    def shape(self, lamp: Lamp) -> QPolygonF:
        """A lamp's body in pixels, turned as it is tilted."""
        if not lamp.tilt_deg:
            return QPolygonF(self.body(lamp))
        face, thick = self.plan.lamp_height(lamp), BODY_PX / self.viewport.scale
        seen = ((across((x, y), self.axis), face + up) for x, y, up in lamp.corners(thick))
        return QPolygonF([self.at(*corner) for corner in hull(seen)])

    def paint_beams(self, painter: QPainter, colour: QColor) -> None:
        """Each lamp's cone of at least half its peak, down to the canopy."""
        glow = faded(colour, 0.2 if self.ink.paper.lightnessF() > 0.5 else 0.09)
        path = QPainterPath()
        path.addRect(self.inside())
        painter.save()
        painter.setClipPath(path)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(glow)
        for lamp in self.plan.lamps:
            if lamp.output_percent <= 0:
                continue
            painter.drawPolygon(QPolygonF(self._cone(lamp)))
        painter.restore()

    def _cone(self, lamp: Lamp) -> list[QPointF]:
        """The ends of a lamp's face and where the edges of its beam from there meet the canopy."""
        foot, half = self.at(0, self.plan.canopy.height).y(), min(beam_half_angle(lamp), 1.5)
        if not lamp.tilt_deg:
            body = self.body(lamp)
            reach = (foot - body.bottom()) * math.tan(half)
            return [
                body.bottomLeft(),
                body.bottomRight(),
                QPointF(body.right() + reach, foot),
                QPointF(body.left() - reach, foot),
            ]
        height = self.plan.lamp_height(lamp)
        face = [(across((x, y), self.axis), height + up) for x, y, up in lamp.corners(0.0)[:4]]
        ends = [self.at(*min(face)), self.at(*max(face))]
        x, y, up = lamp.place(0.0, 0.0, -1.0)
        aside = across((x, y), self.axis) - across((lamp.x, lamp.y), self.axis)
        lean = math.atan2(aside, -up)
        edges = [min(max(lean + way * half, -1.5), 1.5) for way in (-1, 1)]
        feet = [
            QPointF(end.x() + (foot - end.y()) * math.tan(edge), foot)
            for end, edge in zip(ends, edges, strict=True)
        ]
        return [*ends, feet[1], feet[0]]

    def paint_lamps(self, painter: QPainter, chosen: Chosen, *, cords: bool = True) -> None:
        """Lamps to scale on their cords, those chosen in the accent."""
        ceiling = self.inside().top()
        for k, lamp in enumerate(self.plan.lamps):
            body, shape = self.body(lamp), self.shape(lamp)
            on = Place(PlaceKind.LAMP, k) in chosen
            painter.setPen(pen(self.ink.quiet, 1.0))
            inset = min(body.width() / 6, 12.0)
            if cords:
                ends = (body.left() + inset, body.right() - inset)
                painter.drawLines([QLineF(u, ceiling, u, _top_at(shape, u)) for u in ends])
            painter.setPen(pen(self.ink.accent if on else self.ink.ink, 2.2 if on else 1.2))
            painter.setBrush(self.ink.paper)
            if lamp.tilt_deg:
                painter.drawPolygon(shape)
            else:
                painter.drawRect(body)

    def paint_hanging(self, painter: QPainter, chosen: Chosen, across: float = 0.5) -> None:
        """Hanging heights: of the lamps in hand, else of all, where there is room.

        Each stands so far across its lamp.
        """
        taken: list[float] = []
        held = [place.index for place in chosen if place.kind is PlaceKind.LAMP]
        shown = held or range(len(self.plan.lamps))
        for k in shown:
            lamp = self.plan.lamps[k]
            body = self.body(lamp)
            u = body.left() + across * body.width()
            if any(abs(u - other) < 44 for other in taken):
                continue
            taken.append(u)
            paint_dimension(
                painter,
                QPointF(u, self.at(0, self.plan.lamp_height(lamp) - hangs(self.plan, lamp)).y()),
                QPointF(u, self.at(0, self.plan.lamp_height(lamp)).y()),
                QPointF(0, 0),
                format_length(hangs(self.plan, lamp), self.unit),
                self.ink,
                strong=True,
            )

    def paint_heights(self, painter: QPainter, strong: frozenset[str]) -> None:
        """Ceiling height on the left, canopy height on the right, width below."""
        box, plan = self.inside(), self.plan
        side = QPointF(-WALL_PX - 15, 0)
        paint_dimension(
            painter,
            box.bottomLeft(),
            box.topLeft(),
            side,
            format_length(plan.space.height, self.unit),
            self.ink,
            strong="ceiling" in strong,
        )
        if plan.canopy.height > 0:
            paint_dimension(
                painter,
                box.bottomRight(),
                QPointF(box.right(), self.at(0, plan.canopy.height).y()),
                -side,
                format_length(plan.canopy.height, self.unit),
                self.ink,
                strong="canopy" in strong,
            )
        left, right = extent(plan, self.axis)
        paint_dimension(
            painter,
            box.bottomLeft(),
            box.bottomRight(),
            QPointF(0, WALL_PX + 19),
            format_length(right - left, self.unit),
            self.ink,
        )


def _top_at(shape: QPolygonF, u: float) -> float:
    """The pixel row at which an upright line from above meets a convex shape."""
    corners = [shape.at(k) for k in range(shape.count())]
    top = shape.boundingRect().top()
    met = [
        a.y() + (u - a.x()) / (b.x() - a.x()) * (b.y() - a.y())
        for a, b in zip(corners, corners[1:] + corners[:1], strict=True)
        if (a.x() > u) != (b.x() > u)
    ]
    return min(met, default=top)


def light_across(
    estimate: Estimate | None,
    axis: Axis,
    levels: colours.Levels,
    colour_map: str,
    key: str = "mean",
) -> QImage | None:
    """Colours of the mean of one of its maps along an axis, left to right, one pixel high."""
    if estimate is None:
        return None
    with warnings.catch_warnings():  # columns outside the footprint hold nothing but NaN
        warnings.simplefilter("ignore", RuntimeWarning)
        mean = np.nanmean(estimate.own.maps[key].values, axis=0 if axis == "y" else 1)
    places = np.linspace(0, len(mean) - 1, ACROSS)
    known = np.where(np.isfinite(mean), mean, 0.0)
    return colour_row(np.interp(places, np.arange(len(mean)), known), levels, colour_map)


def colour_row(values: FloatArray, levels: colours.Levels, colour_map: str) -> QImage:
    """Values in a row, as a picture one pixel high."""
    rgba = np.ascontiguousarray(
        colours.to_rgba(values, levels, colours.table(colour_map, dimmed=theme.is_dark()))
    )
    row = QImage(rgba.data, len(rgba), 1, rgba.nbytes, QImage.Format.Format_RGBA8888)
    return row.copy()
