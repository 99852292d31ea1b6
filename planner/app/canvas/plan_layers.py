"""What the plan view shows under the light: walls with lining, door and sizes, obstacles."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence

from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPainter, QPolygonF

from planner.app.canvas.ink import (
    Ink,
    Viewport,
    draw_handle,
    draw_plate_text,
    in_sight,
    mixed,
    pen,
    plate,
)
from planner.app.canvas.items import turn_handle, wall_normal
from planner.plan.groups import Chosen
from planner.plan.lamp import Lamp
from planner.plan.lining import Lining
from planner.plan.place import Place, PlaceKind
from planner.plan.plan import Plan
from planner.plan.space import Obstacle, Point, contains
from planner.plan.tiers import from_above
from planner.units import LengthUnit, format_length

WALL_PX = 9.0
"""Thickness walls are drawn with; it lies outside the footprint."""

DOOR_PX = 30.0
"""How far the free end of a door's leaf is drawn from its wall: ajar, to save room."""

_TEXTURE_STEP = 9.0
_LEAST_NAME_PX = 32.0


def tone(reflectance: float) -> QColor:
    """The grey of a reflectance: CIE lightness L* of a surface of that luminance."""
    lightness = 116 * reflectance ** (1 / 3) - 16 if reflectance > 0.008856 else 903.3 * reflectance
    level = min(max(lightness / 100, 0.0), 1.0)
    return QColor.fromRgbF(level, level, level)


def footprint_polygon(plan: Plan, viewport: Viewport) -> QPolygonF:
    """The footprint in pixels."""
    return viewport.to_polygon(plan.space.footprint)


def wall_strip(plan: Plan, wall: int, viewport: Viewport, near: float, far: float) -> QPolygonF:
    """The strip of a wall between two distances outside the footprint, in pixels, mitred."""
    start, end = plan.space.wall(wall)
    count = plan.space.wall_count
    first = _mitre(plan, (wall - 1) % count, wall)
    second = _mitre(plan, wall, (wall + 1) % count)
    a, b = viewport.to_pixel(*start), viewport.to_pixel(*end)
    return QPolygonF([a + first * near, b + second * near, b + second * far, a + first * far])


def _mitre(plan: Plan, before: int, after: int) -> QPointF:
    """Pixel shift of the corner between two walls per pixel of thickness."""
    ax, ay = wall_normal(plan, before)
    bx, by = wall_normal(plan, after)
    # A needle-sharp corner would grow a spike.
    scale = max(1 + ax * bx + ay * by, 0.25)
    return QPointF((ax + bx) / scale, -(ay + by) / scale)


def paint_outline(
    painter: QPainter, plan: Plan, viewport: Viewport, ink: Ink, selected: int | None
) -> None:
    """All walls, the selected one underlaid with the accent."""
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    for wall in range(plan.space.wall_count):
        if wall != selected:
            _paint_wall(painter, plan, wall, viewport, ink)
    if selected is not None and selected < plan.space.wall_count:
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(ink.accent)
        painter.drawPolygon(wall_strip(plan, selected, viewport, -3.0, WALL_PX + 3.0))
        _paint_wall(painter, plan, selected, viewport, ink)


def _paint_wall(painter: QPainter, plan: Plan, wall: int, viewport: Viewport, ink: Ink) -> None:
    start, end = (viewport.to_pixel(*corner) for corner in plan.space.wall(wall))
    if plan.wall_opens(wall):
        paint_gap(painter, start, end, ink)
        _paint_door(painter, plan, wall, viewport, ink, open_=True)
        return
    bands = plan.walls[wall].bands
    thickness = WALL_PX / len(bands)
    for k, band in enumerate(bands):
        lining = plan.lining(band.lining)
        strip = wall_strip(plan, wall, viewport, k * thickness, (k + 1) * thickness)
        if lining.is_opening:
            if len(bands) == 1:
                paint_gap(painter, start, end, ink)
                return
            continue
        paint_lining(painter, strip, lining)
    painter.setPen(pen(ink.ink, 1.0))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawPolygon(wall_strip(plan, wall, viewport, 0, WALL_PX))
    if plan.space.door == wall:
        _paint_door(painter, plan, wall, viewport, ink, open_=False)


def paint_lining(painter: QPainter, strip: QPolygonF, lining: Lining) -> None:
    """A strip (four corners, long sides first and third) in the tone and texture of a lining."""
    ground = tone(lining.reflectance)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(ground)
    painter.drawPolygon(strip)
    mark = mixed(
        ground, QColor(0, 0, 0) if ground.lightnessF() > 0.45 else QColor(255, 255, 255), 0.5
    )
    start = (strip.at(0) + strip.at(3)) / 2
    end = (strip.at(1) + strip.at(2)) / 2
    dots, dashes = texture(start, end, lining.specular_share, in_sight(painter))
    if dots:
        dot_pen = pen(mark, 1.9)
        dot_pen.setCapStyle(Qt.PenCapStyle.RoundCap)
        painter.setPen(dot_pen)
        painter.drawPoints(dots)
    if dashes:
        painter.setPen(pen(mark, 1.5))
        painter.drawLines(dashes)


def texture(
    start: QPointF, end: QPointF, specular_share: float, seen: QRectF | None = None
) -> tuple[list[QPointF], list[QLineF]]:
    """Dots (diffuse) and dashes (specular) along a line, in the shares of the reflected light.

    Only those in ``seen``, where that is given.
    """
    length = math.hypot(end.x() - start.x(), end.y() - start.y())
    count = int(length / _TEXTURE_STEP)
    if count < 1:
        return [], []
    along = (end - start) / length
    first = (length - (count - 1) * _TEXTURE_STEP) / 2
    dots: list[QPointF] = []
    dashes: list[QLineF] = []
    low, high = 0.0, length
    if seen is not None:
        for at_, way, near, far in (
            (start.x(), along.x(), seen.left(), seen.right()),
            (start.y(), along.y(), seen.top(), seen.bottom()),
        ):
            ends = [(edge - at_) / way for edge in (near, far)] if abs(way) > 1e-6 else [low, high]
            low, high = max(low, min(ends)), min(high, max(ends))
    begin = max(math.ceil((low - first) / _TEXTURE_STEP) - 1, 0)
    begin -= begin % 2  # every second one is taken of a sheet: always the same
    (x, y), (dx, dy) = (start + along * first).toTuple(), (along * _TEXTURE_STEP).toTuple()
    half = 3.2 / _TEXTURE_STEP
    for k in range(begin, min(math.floor((high - first) / _TEXTURE_STEP) + 2, count)):
        if int((k + 1) * specular_share + 1e-9) > int(k * specular_share + 1e-9):
            a, b = k - half, k + half
            dashes.append(QLineF(x + a * dx, y + a * dy, x + b * dx, y + b * dy))
        else:
            dots.append(QPointF(x + k * dx, y + k * dy))
    return dots, dashes


def paint_gap(painter: QPainter, start: QPointF, end: QPointF, ink: Ink) -> None:
    """Where there is no surface: a dashed line."""
    painter.setPen(pen(ink.quiet, 1.2, dashes=(5, 4)))
    painter.drawLine(start, end)


def _paint_door(
    painter: QPainter, plan: Plan, wall: int, viewport: Viewport, ink: Ink, *, open_: bool
) -> None:
    """The leaf and its swing, hinged at the wall's start: strong where it stands open."""
    start, end = plan.space.wall(wall)
    line = QLineF(viewport.to_pixel(*start), viewport.to_pixel(*end))
    hinge, radius = line.p1(), line.length()
    swing = math.degrees(math.asin(min(DOOR_PX / max(radius, 1.0), 0.7)))
    # Outwards is to the right of the wall's direction: clockwise on the plan.
    ajar = QLineF(line)
    ajar.setAngle(line.angle() - swing)
    painter.setPen(pen(ink.ink, 2.4) if open_ else pen(ink.quiet, 1.0))
    painter.drawLine(ajar)
    arc_pen = pen(ink.quiet, 1.0, dashes=(3, 3))
    painter.setPen(arc_pen)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    box = QRectF(hinge.x() - radius, hinge.y() - radius, 2 * radius, 2 * radius)
    painter.drawArc(box, round((line.angle() - swing) * 16), round(swing * 16))
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(ink.ink)
    painter.drawEllipse(hinge, 2.6, 2.6)


def paint_corners(
    painter: QPainter, plan: Plan, viewport: Viewport, ink: Ink, active: Sequence[int]
) -> None:
    """A grip on every corner."""
    for k, corner in enumerate(plan.space.footprint):
        draw_handle(painter, viewport.to_pixel(*corner), ink, active=k in active, round_=False)


# -- Dimensions ------------------------------------------------------------------------

OFFSET_PX = WALL_PX + 19.0
DOOR_OFFSET_PX = DOOR_PX + 14.0
_TICK_PX = 4.0
_NUMBER_PX = 20.0


def paint_dimension(
    painter: QPainter,
    start: QPointF,
    end: QPointF,
    shift: QPointF,
    text: str,
    ink: Ink,
    *,
    strong: bool = False,
    short: str | None = None,
) -> None:
    """A measured length: a line beside two points, ticks at its ends, the figure on it.

    ``shift`` moves the line off the points. Where the figure does not fit along the line
    its ``short`` form stands beside it, further out.
    """
    a, b = start + shift, end + shift
    length = math.hypot(b.x() - a.x(), b.y() - a.y())
    if length < 1:
        return
    along = (b - a) / length
    tick = QPointF(-along.y(), along.x()) * _TICK_PX
    line_pen = pen(ink.quiet if strong else ink.faint, 1.0)
    painter.setPen(line_pen)
    width = QFontMetricsF(painter.font()).horizontalAdvance(text) + 10
    fits = length > width + 14
    if not fits and short is not None:
        text = short
        fits = length > QFontMetricsF(painter.font()).horizontalAdvance(text) + 24
    painter.drawLine(a - tick, a + tick)
    painter.drawLine(b - tick, b + tick)
    painter.drawLine(a, b)
    angle = math.degrees(math.atan2(along.y(), along.x()))
    if angle > 90.01 or angle <= -90.01:
        angle += 180
    if abs(angle - 90) < 0.5:  # upright text reads from the right-hand side
        angle = -90
    middle = (a + b) / 2
    if not fits:
        outward = math.hypot(shift.x(), shift.y())
        middle += shift / outward * 15 if outward else tick / _TICK_PX * 15
    draw_plate_text(painter, middle, text, ink.ink if strong else ink.quiet, ink.paper, angle)


def paint_wall_lengths(
    painter: QPainter,
    plan: Plan,
    viewport: Viewport,
    ink: Ink,
    unit: LengthUnit,
    strong: frozenset[int],
) -> None:
    """Number and length of every wall beside it; those in ``strong`` stand out."""
    for wall in range(plan.space.wall_count):
        start, end = (viewport.to_pixel(*point) for point in plan.space.wall(wall))
        nx, ny = wall_normal(plan, wall)
        offset = DOOR_OFFSET_PX if plan.space.door == wall else OFFSET_PX
        measure = format_length(plan.space.wall_length(wall), unit)
        paint_dimension(
            painter,
            start,
            end,
            QPointF(nx, -ny) * offset,
            f"Wall {wall + 1}: {measure}",
            ink,
            strong=wall in strong,
            short=f"{wall + 1}: {measure}",
        )


def paint_corner_numbers(painter: QPainter, plan: Plan, viewport: Viewport, ink: Ink) -> None:
    """The number of every corner, on a small plate inside the footprint."""
    ground = plate(ink)
    count = plan.space.wall_count
    for k, corner in enumerate(plan.space.footprint):
        before, after = wall_normal(plan, (k - 1) % count), wall_normal(plan, k)
        inward = QPointF(-before[0] - after[0], before[1] + after[1])
        reach = math.hypot(inward.x(), inward.y()) or 1.0
        at = viewport.to_pixel(*corner) + inward / reach * _NUMBER_PX
        draw_plate_text(painter, at, str(k + 1), ink.ink, ground)


def scale_bar_length(scale: float, unit: LengthUnit, most_px: float) -> float:
    """The longest round length (1, 2, 5 times a power of ten of the unit) within so many pixels."""
    most = most_px / scale / unit.metres
    power: float = 10.0 ** math.floor(math.log10(most))
    return next(k * power for k in (5.0, 2.0, 1.0) if k * power <= most) * unit.metres


def paint_scale_bar(
    painter: QPainter, right: QPointF, viewport: Viewport, ink: Ink, unit: LengthUnit
) -> None:
    """A bar of a round length that ends at ``right``, its length written before it."""
    length = scale_bar_length(viewport.scale, unit, 90.0)
    pixels = length * viewport.scale
    left = QPointF(right.x() - pixels, right.y())
    text = format_length(length, unit)
    metrics = QFontMetricsF(painter.font())
    box = QRectF(left.x() - 120, right.y() - 14, 112, 20)
    plate = QRectF(left.x() - 14 - metrics.horizontalAdvance(text), right.y() - 12, 0, 17)
    plate.setRight(right.x() + 4)
    painter.fillRect(plate, ink.paper)
    painter.setPen(pen(ink.quiet, 1.4))
    up = QPointF(0, 4)
    painter.drawPolyline([left - up, left, right, right - up])
    painter.drawText(box, Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter, text)


# -- Obstacles on both drawings --------------------------------------------------------


def paint_on_plan(
    painter: QPainter,
    plan: Plan,
    viewport: Viewport,
    ink: Ink,
    chosen: Chosen,
    looked: Place,
    light: Callable[[int, QPolygonF], bool],
) -> None:
    """All obstacles from above; those that hang over the canopy ``looked`` at as a dashed line.

    ``light`` paints what is known of the light on the top of one, and says whether anything is.
    Those chosen are outlined in the accent, and the one that leads has its turning handle.
    """
    lying, higher = from_above(plan, looked)
    for k in (*lying, *higher):
        obstacle = plan.obstacles[k]
        place = Place(PlaceKind.OBSTACLE, k)
        line = pen(ink.accent, 2.4) if place in chosen else pen(ink.ink, 1.2)
        if k in higher:
            line.setDashPattern([5, 3])
        outline = viewport.to_polygon(obstacle.outline())
        open_ = k in higher or light(k, outline)
        painter.setPen(line)
        painter.setBrush(Qt.BrushStyle.NoBrush if open_ else _fill(plan, obstacle))
        painter.drawPolygon(outline)
        if chosen[:1] == (place,):
            paint_turning(painter, obstacle, viewport, ink)
    painter.setBrush(Qt.BrushStyle.NoBrush)


def paint_names(painter: QPainter, plan: Plan, viewport: Viewport, ink: Ink, looked: Place) -> None:
    """Names of obstacles from above, on lamps over them: a lamp's side would strike them out."""
    for text, spot in _names(plan, viewport, painter.font(), looked):
        draw_plate_text(painter, spot.center(), text, ink.ink, plate(ink))


def name_spots(plan: Plan, viewport: Viewport, font: QFont, looked: Place) -> tuple[QRectF, ...]:
    """Where the names of obstacles stand from above."""
    return tuple(spot for _, spot in _names(plan, viewport, font, looked))


def _names(plan: Plan, viewport: Viewport, font: QFont, looked: Place) -> list[tuple[str, QRectF]]:
    """Each name as far as its obstacle reaches, and where; none under what is stacked on it.

    What hangs higher than the canopy looked at has its name where no other one lies.
    """
    metrics, found = QFontMetricsF(font), []
    lying, higher = from_above(plan, looked)
    order = (*higher, *lying)
    for place, k in enumerate(order):
        one = plan.obstacles[k]
        above = (plan.obstacles[other] for other in order[place + 1 :])
        if any(contains(other.outline(), one.x, one.y) for other in above):
            continue
        name = f"{one.name} (above)" if k in higher else one.name
        text = _within(name, viewport.scale * _reach_across(one.outline()), metrics)
        spot = QRectF(0, 0, metrics.horizontalAdvance(text) + 6, metrics.height())
        spot.moveCenter(viewport.to_pixel(one.x, one.y))
        found.append((text, spot))
    return found


def _reach_across(outline: Sequence[Point]) -> float:
    places = [x for x, _ in outline]
    return max(places) - min(places)


def _within(name: str, width: float, metrics: QFontMetricsF) -> str:
    """A name that does not run over into what stands beside it."""
    room = max(width - 8, _LEAST_NAME_PX)
    return metrics.elidedText(name, Qt.TextElideMode.ElideRight, room)


def rims(plan: Plan, viewport: Viewport, section: tuple[Point, Point]) -> tuple[QPolygonF, ...]:
    """The lines drawn over the light: lamps and obstacles from above, and the section."""
    things: tuple[Lamp | Obstacle, ...] = (*plan.lamps, *plan.obstacles)
    outlines = [thing.outline() for thing in things]
    return tuple(viewport.to_polygon(outline) for outline in (*outlines, section))


def paint_turning(
    painter: QPainter,
    thing: Lamp | Obstacle,
    viewport: Viewport,
    ink: Ink,
    back: QColor | None = None,
) -> None:
    """The handle that turns a thing, on a line from its end; ``back`` sets it off from the map."""
    end, handle = turn_handle(thing, viewport, 0.0), turn_handle(thing, viewport)
    for colour, width in ((back, 3.0), (ink.accent, 1.6)):
        if colour is not None:
            painter.setPen(pen(colour, width))
            painter.drawLine(end, handle)
    draw_handle(painter, handle, ink, active=False, round_=True)


def side_box(obstacle: Obstacle, viewport: Viewport, axis: int) -> QRectF:
    """Pixel rectangle of an obstacle from the side; ``axis`` 0 shows x to the right, 1 y."""
    places = [corner[axis] for corner in obstacle.outline()]
    return QRectF(
        viewport.to_pixel(min(places), obstacle.top),
        viewport.to_pixel(max(places), obstacle.underside),
    )


def paint_from_side(
    painter: QPainter,
    plan: Plan,
    viewport: Viewport,
    ink: Ink,
    axis: int,
    chosen: Chosen = (),
) -> None:
    """All obstacles from the side; ``axis`` 0 shows x to the right, 1 shows y."""
    for k, obstacle in enumerate(plan.obstacles):
        box = side_box(obstacle, viewport, axis)
        on = Place(PlaceKind.OBSTACLE, k) in chosen
        painter.setPen(pen(ink.accent, 2.4) if on else pen(ink.ink, 1.2))
        painter.setBrush(_fill(plan, obstacle))
        painter.drawRect(box)
        if box.height() > 24:
            name = _within(obstacle.name, box.width(), QFontMetricsF(painter.font()))
            draw_plate_text(painter, box.center(), name, ink.ink, plate(ink))
    painter.setBrush(Qt.BrushStyle.NoBrush)


def _fill(plan: Plan, obstacle: Obstacle) -> QColor:
    """The tone of its material, half transparent: the light behind it stays readable."""
    lining = plan.lining(obstacle.lining)
    colour = tone(0.0 if lining.is_opening else lining.reflectance)
    colour.setAlphaF(0.55)
    return colour
