"""The side elevation: hanging heights, canopy, ceiling and wall bands, dragged up and down."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QMouseEvent, QPainter, QResizeEvent
from PySide6.QtWidgets import QToolButton

from planner.app.canvas import marks
from planner.app.canvas.drawing import Drawing
from planner.app.canvas.elevation_drags import (
    Axis,
    HeightDrag,
    band_at,
    band_edges,
    caught_from_side,
    extent,
    faces_viewer,
    nudged_across,
    seen_wall,
    side_choices,
    side_wall,
    spot_from_side,
    wall_extent,
)
from planner.app.canvas.elevation_layer import Elevation, light_across
from planner.app.canvas.ink import Bounds, Ink, Kept, figure_font
from planner.app.canvas.items import CORNER_REACH, LINE_REACH, Item, Part, Section
from planner.app.canvas.ladder_scale import hung, in_words, paint_hung, paint_ladder
from planner.app.canvas.marks import paint_side_gains
from planner.app.canvas.plan_drags import Choice, Edit
from planner.app.canvas.plan_layers import WALL_PX, paint_from_side, side_box
from planner.app.canvas.side_light import SideLight, light_along, light_in_words, slice_in_words
from planner.app.canvas.tools import Drag, Span
from planner.app.display import Display, SelectionModel, shown_figure
from planner.app.document import Document
from planner.app.plots import colours
from planner.estimate.result import Estimate
from planner.language import word
from planner.light.cellmap import levels_of
from planner.plan.groups import Chosen, all_things, can_be_chosen
from planner.plan.place import Place, PlaceKind
from planner.plan.space import Point
from planner.plan.tiers import hangs, hung_at
from planner.units import format_length, in_unit

if TYPE_CHECKING:
    # The whole core: not at the start.
    from planner.estimate.ladder import Ladder, Rung
    from planner.estimate.upright import Slice

MARGIN_SIDE = 48.0
_MOVABLE = {Part.LAMP, Part.OBSTACLE, Part.CANOPY, Part.CEILING, Part.BAND_EDGE}
_FOCUSED = {PlaceKind.LAMP, PlaceKind.OBSTACLE, PlaceKind.CANOPY, PlaceKind.CEILING}
"""Places that are taken hold of when they are selected."""


class ElevationView(Drawing):
    """The space from the side, to scale.

    ``cut_changed`` when the light is to be shown in another upright plane, ``column_changed`` when
    it may be another one over the place last pointed at.
    """

    cut_changed = Signal()
    column_changed = Signal()
    outs = ("copy_side", "export_side")

    def __init__(self, document: Document, selection: SelectionModel, display: Display) -> None:
        super().__init__(document, selection, display)
        self._axis: Axis = "y"
        self._estimate: Estimate | None = None
        self._levels: colours.Levels | None = None
        self._ladder: Ladder | None = None
        self._section: Section | None = None
        self._light = SideLight()
        self._along: float | None = None
        self._scale = Kept()
        self._back, self._front = Kept(), Kept()
        self.setAccessibleName("Side elevation")
        self.setMinimumSize(160, 200)
        self.turn_button = QToolButton(self)
        self.turn_button.setAutoRaise(True)
        self.turn_button.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.turn_button.setCursor(Qt.CursorShape.ArrowCursor)
        self.turn_button.clicked.connect(self.turn)
        self._name_button()
        self._follow_selection(selection.current)
        self.setAccessibleDescription(self.words())

    def sizeHint(self) -> QSize:
        return QSize(360, 560)

    # -- view ---------------------------------------------------------------------------

    @property
    def axis(self) -> Axis:
        """The axis looked along."""
        return self._axis

    def turn(self) -> None:
        """Look along the other axis."""
        self._axis = "x" if self._axis == "y" else "y"
        if self.focused is not None and self.focused not in self.items():
            self.set_focused(None)
        self._name_button()
        self.fit()
        self.tell()
        self.cut_changed.emit()

    def _name_button(self) -> None:
        other = "x" if self._axis == "y" else "y"
        self.turn_button.setAccessibleName(f"Look along {other}")
        self._place_button()

    def _place_button(self) -> None:
        whole = self.turn_button.accessibleName()
        for text in (whole, whole[-1]):  # the axis alone where there is no room for words
            self.turn_button.setText(text)
            self.turn_button.adjustSize()
            if self.turn_button.width() + 16 <= self.width():
                break
        self.turn_button.move(self.width() - self.turn_button.width() - 8, 6)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._place_button()

    def set_estimate(self, estimate: Estimate | None) -> None:
        """Show the light of an estimate along the canopy."""
        self._estimate = estimate
        self.follow_light()

    def set_levels(self, levels: colours.Levels | None) -> None:
        """Use the ends of the map's colour scale; None follows the light on the canopy."""
        self._levels = levels
        self._light.show(self._light.found, self._scale_ends())
        self.update()

    # -- the light itself ---------------------------------------------------------------

    @property
    def cut(self) -> float:
        """Where on the axis looked along the light is shown: in the middle of the section line."""
        aside = 1 - self._sideways
        if self._section is None:
            low, high = self.plan.space.bounds[aside], self.plan.space.bounds[aside + 2]
        else:
            low, high = self._section[0][aside], self._section[1][aside]
        return (low + high) / 2

    def set_section(self, section: Section) -> None:
        """Show the light where the middle of this line of the plan is."""
        before, self._section = self.cut, section
        if self.cut != before:
            self.update()
            self.cut_changed.emit()

    def set_slice(self, found: Slice | None) -> None:
        """Show the light in an upright plane as long as it tells of the plan and of the cut."""
        if found is not self._light.found:
            self._light.show(found, self._scale_ends())
            self.tell()
            self.column_changed.emit()

    @property
    def band(self) -> colours.Levels | None:
        """The band wanted on the plan's own canopy, with the light of the room there."""
        return None if self._estimate is None else self._estimate.own.band

    @property
    def column(self) -> tuple[Slice, float] | None:
        """The light over the place last pointed at: the slice, and the place along it."""
        found = self._shown_slice()
        return None if found is None or self._along is None else (found, self._along)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        super().mouseMoveEvent(event)
        if self._pointer is not None and self._pointer[0] != self._along:
            self._along = self._pointer[0]
            self.column_changed.emit()

    def _scale_ends(self) -> colours.Levels:
        """Ends of the colour scale: those given, or of the light on the canopy."""
        if self._levels is not None:
            return self._levels
        return levels_of(self._estimate.own.ppfd) if self._estimate else (0.0, 1.0)

    def set_doubt(self, relative: float) -> None:
        """How far the light may be off (relative standard uncertainty); 0 while not known."""
        self._light.doubt = relative
        self.update()

    def _shown_key(self) -> str:
        return shown_figure(self._estimate, self.display.state).key

    def _shown_slice(self) -> Slice | None:
        """The light, where it is of the plan as it is; none while a hand changes that."""
        found = self._light.found
        # It is PPFD, and no part of a map of anything else.
        if found is None or self.document.moving or self._shown_key() != "mean":
            return None
        return found if found.fits(self.plan, self._axis, self.cut) else None

    def status(self) -> str:
        return self.measure_words() or self.light_at_pointer()

    def light_at_pointer(self) -> str:
        """The light on a level sensor at the pointer, in words; nothing where there is none."""
        found = self._shown_slice()
        if found is None or self._pointer is None:
            return ""
        return light_in_words(found, *self._pointer, self.display.unit)

    def set_ladder(self, ladder: Ladder | None) -> None:
        """Show a scale of heights beside its lamp while it tells of the plan; None shows none."""
        if ladder is not self._ladder:
            self._ladder = ladder
            self.tell()

    def _shown_ladder(self) -> tuple[Ladder, Rung | None] | None:
        """The ladder, where it tells of the plan as it is, and the light where its lamp hangs."""
        known = self._ladder
        if known is None or not known.fits(self.plan):
            return None
        return known, hung(known, hangs(self.plan, self.plan.lamps[known.lamps[0]]), self._estimate)

    def bounds(self) -> Bounds:
        left, right = extent(self.plan, self._axis)
        return left, 0.0, right, self.plan.space.height

    def drawing_area(self) -> QRectF:
        return self.inner_area(MARGIN_SIDE)

    @property
    def _sideways(self) -> int:
        """The plan's axis that runs to the right."""
        return 0 if self._axis == "y" else 1

    def shown_wall(self) -> int:
        """The wall whose bands are shown: the selected one, or the one seen."""
        current = self.selection.current
        selected = current.index if current.kind is PlaceKind.WALL else None
        return seen_wall(self.plan, self._axis, selected)

    def _elevation(self, ink: Ink) -> Elevation:
        return Elevation(self.plan, self._axis, self.viewport, ink, self.display.unit)

    # -- items --------------------------------------------------------------------------

    def items(self) -> tuple[Item, ...]:
        wall = self.shown_wall()
        return (
            *(Item(Part.LAMP, k) for k in range(len(self.plan.lamps))),
            *(Item(Part.OBSTACLE, k) for k in range(len(self.plan.obstacles))),
            Item(Part.CANOPY),
            Item(Part.CEILING),
            *(Item(Part.BAND_EDGE, wall, k) for k in range(len(band_edges(self.plan, wall)))),
        )

    def item_at(self, pixel: QPointF) -> Item:
        elevation = self._elevation(Ink.of(self.palette()))
        box = elevation.inside()
        for k in reversed(range(len(self.plan.lamps))):
            body = elevation.body(self.plan.lamps[k])
            if body.adjusted(-4, -5, 4, 5).contains(pixel):
                return Item(Part.LAMP, k)
        edge = self._edge_at(pixel, box)
        if edge is not None:
            return edge
        for k in reversed(range(len(self.plan.obstacles))):
            body = side_box(self.plan.obstacles[k], self.viewport, self._sideways)
            if body.adjusted(-3, -4, 3, 4).contains(pixel):
                return Item(Part.OBSTACLE, k)
        in_width = box.left() - WALL_PX <= pixel.x() <= box.right() + WALL_PX
        canopy = self.viewport.to_pixel(0, self.plan.canopy.height).y()
        if in_width and abs(pixel.y() - canopy) <= CORNER_REACH:
            return Item(Part.CANOPY)
        if in_width and box.top() - WALL_PX - 3 <= pixel.y() <= box.top() + 4:
            return Item(Part.CEILING)
        if in_width and box.bottom() - 3 <= pixel.y() <= box.bottom() + WALL_PX + 3:
            return Item(Part.FLOOR)
        return self._wall_at(pixel, box)

    def _edge_at(self, pixel: QPointF, box: QRectF) -> Item | None:
        """A band edge under a pixel: of the wall shown, or of a wall cut at either side."""
        sides = (
            (side_wall(self.plan, self._axis, right=False), box.left() - WALL_PX, box.left()),
            (side_wall(self.plan, self._axis, right=True), box.right(), box.right() + WALL_PX),
        )
        shown = self.shown_wall()
        left, right = wall_extent(self.plan, shown, self._axis)
        reach = (self.viewport.to_pixel(left, 0).x(), self.viewport.to_pixel(right, 0).x() + 5)
        for wall, low, high in ((shown, *reach), *sides):
            for k, height in enumerate(band_edges(self.plan, wall)):
                near = abs(pixel.y() - self.viewport.to_pixel(0, height).y()) <= LINE_REACH
                if near and low <= pixel.x() <= high:
                    return Item(Part.BAND_EDGE, wall, k)
        return None

    def _wall_at(self, pixel: QPointF, box: QRectF) -> Item:
        u, height = self.viewport.to_world(pixel)
        if box.top() <= pixel.y() <= box.bottom():
            for right, low in ((False, box.left() - WALL_PX - 2), (True, box.right() - 2)):
                if low <= pixel.x() <= low + WALL_PX + 4:
                    wall = side_wall(self.plan, self._axis, right=right)
                    return Item(Part.WALL, wall, band_at(self.plan, wall, height))
        if box.contains(pixel):
            if self.plan.canopy.closed and height < self.plan.canopy.height:
                return Item(Part.INSIDE)
            shown = self.shown_wall()
            left, right_end = wall_extent(self.plan, shown, self._axis)
            if left <= u <= right_end:
                return Item(Part.WALL, shown, band_at(self.plan, shown, height))
        return Item(Part.OUTSIDE)

    def figures_of(self, item: Item) -> str:
        plan = self.plan

        def length(metres: float) -> str:
            return format_length(metres, self.display.unit)

        match item.part:
            case Part.LAMP:
                lamp = plan.lamps[item.index]
                over = in_unit(hung_at(plan, lamp), self.display.unit)
                return f"{over}, {lamp.leans}" if lamp.leans else over
            case Part.OBSTACLE:
                return f"{length(plan.obstacles[item.index].underside)} above the floor"
            case Part.BAND_EDGE:
                return f"at {length(band_edges(plan, item.index)[item.band])}"
            case Part.CEILING:
                return f"at {length(plan.space.height)}"
        return f"at {length(plan.canopy.height)} above the floor"

    def begin(self, item: Item, at: Point) -> Drag | None:
        if item.part not in _MOVABLE:
            return None
        return HeightDrag(self.plan, item, at, self._axis, self._taken_along(item))

    def _taken_along(self, item: Item) -> Chosen:
        place = item.place
        return self.together(item) if place is not None and can_be_chosen(place) else ()

    def nudged(self, item: Item, by: Point) -> Edit | None:
        return nudged_across(self.plan, item, by, self._axis, self._taken_along(item))

    def is_ground(self, item: Item) -> bool:
        return item.part in {Part.INSIDE, Part.OUTSIDE, Part.WALL, Part.FLOOR}

    def within(self, band: Span) -> Chosen:
        area = self.viewport.to_rect((*band[0], *band[1])).normalized()
        elevation = self._elevation(Ink.of(self.palette()))
        bodies = [
            *(elevation.body(lamp) for lamp in self.plan.lamps),
            *(side_box(one, self.viewport, self._sideways) for one in self.plan.obstacles),
        ]
        places = zip(all_things(self.plan), bodies, strict=True)
        return tuple(place for place, body in places if area.intersects(body))

    def caught(self, at: Point, reach: float) -> Point:
        return caught_from_side(self.plan, self._axis, at, reach)

    def spot_of(self, item: Item) -> Point:
        return spot_from_side(self.plan, item, self._axis)

    def choices_of(self, item: Item, at: Point) -> Sequence[Choice]:
        step = self.display.unit.snap
        return side_choices(self.plan, item, at[1], step, self._taken_along(item))

    def choose(self, item: Item | None) -> None:
        selected = (None if item is None else item.place) or Place()
        focused = item if item is not None and item.part in _MOVABLE else None
        self.set_focused(focused)
        self.selection.lead_with(selected)

    def _follow_selection(self, selection: Place) -> None:
        if selection.kind in _FOCUSED:
            self.set_focused(Item.of(selection))
        elif self.focused is not None and not (
            self.focused.part is Part.BAND_EDGE and selection.kind is PlaceKind.WALL
        ):
            self.set_focused(None)

    def cursor_for(self, item: Item) -> Qt.CursorShape:
        vertical = item.part in _MOVABLE
        return Qt.CursorShape.SizeVerCursor if vertical else Qt.CursorShape.ArrowCursor

    def key_on_item(self, key: Qt.Key) -> bool:
        return key in {Qt.Key.Key_Delete, Qt.Key.Key_Backspace} and self.remove_focused()

    def words(self) -> str:
        plan, unit = self.plan, self.display.unit
        parts = [
            f"Side view along {self._axis}: ceiling at {format_length(plan.space.height, unit)}, "
            f"canopy at {format_length(plan.canopy.height, unit)} above the floor."
        ]
        for number, lamp in enumerate(plan.lamps, start=1):
            leans = f", {lamp.leans}" if lamp.leans else ""
            parts.append(f"Lamp {number} hangs {in_unit(hung_at(plan, lamp), unit)}{leans}.")
        parts += [
            f"{obstacle.name} stands {format_length(obstacle.underside, unit)} above the floor."
            for obstacle in plan.obstacles
        ]
        wall = self.shown_wall()
        for k, height_m in enumerate(band_edges(plan, wall), start=1):
            parts.append(
                f"Wall {wall + 1} changes its lining at {format_length(height_m, unit)} (edge {k})."
            )
        found = self._shown_slice()
        if found is not None:
            parts.append(slice_in_words(plan, found, self.cut, unit))
        shown = self._shown_ladder()
        if shown is not None:
            parts.append(in_words(shown[0].wanted(plan), shown[1]))
        if self.focused is not None:
            counted = self.focused.part in {Part.LAMP, Part.OBSTACLE}
            which = f" {self.focused.index + 1}" if counted else ""
            parts.append(f"In hand: {word(self.focused.part)}{which}.")
        if self.measuring:
            parts.append(self.measure_words())
        return " ".join(parts)

    # -- painting -----------------------------------------------------------------------

    def paint_drawing(self, painter: QPainter, ink: Ink) -> None:
        elevation, current = self._elevation(ink), self.selection.current
        state = self.display.state
        levels = self._scale_ends()
        chosen, focused = self.selection.chosen, self.focused
        selected = frozenset(
            {f"wall {current.index}" if current.kind is PlaceKind.WALL else str(current.kind)}
        )
        wall, plan = self.shown_wall(), self.plan
        # Neither of the two changes while a lamp moves: they are kept as pictures.
        drawn = (plan.space, plan.walls, plan.linings, plan.ceiling, plan.floor)
        key = (drawn, self.viewport, self._axis, ink, wall, selected)

        def paint_sheets(layer: QPainter) -> None:
            for k in range(plan.space.wall_count):
                if k != wall and faces_viewer(plan, k, self._axis):
                    elevation.paint_sheet(layer, k)
            elevation.paint_sheet(layer, wall)

        def paint_frame(layer: QPainter) -> None:
            elevation.paint_enclosure(layer, selected)
            elevation.paint_heights(layer, selected)
            elevation.paint_band_names(layer, wall)

        found = self._shown_slice()
        self._back.paint(painter, key, paint_sheets)
        if found is not None:
            lamps = tuple(elevation.body(lamp) for lamp in plan.lamps)
            band, font = self.band, self.font()
            self._light.paint(painter, self.viewport, levels, state, band, font, lamps)
        elif plan.lamps:
            brightest = colours.table(state.colour_map)[-1].tolist()
            elevation.paint_beams(painter, QColor(*brightest[:3]))
        edge = None
        if focused is not None and focused.part is Part.BAND_EDGE and focused.index == wall:
            edge = focused.band
        painter.setFont(figure_font(self.font(), 0.92))
        self._front.paint(painter, (key, plan.canopy, self.display.unit), paint_frame)
        of = levels, state.colour_map
        light = light_across(self._estimate, self._axis, *of, self._shown_key())
        if found is not None:
            light = light_along(found, plan.canopy.height, *of)
        elevation.paint_canopy(painter, light, active=current.kind is PlaceKind.CANOPY)
        elevation.paint_band_edges(painter, wall, edge)
        paint_from_side(painter, plan, self.viewport, ink, self._sideways, chosen)
        elevation.paint_lamps(painter, chosen)
        shown = self._shown_ladder()
        # The figures of a ladder stand to the right: there the height would be in their way.
        elevation.paint_hanging(painter, chosen, 0.5 if shown is None else 0.15)
        if shown is not None:
            known, now = shown
            band = known.wanted(plan)
            told = (known, band, self.viewport, self._axis, ink)
            self._scale.paint(
                painter, told, lambda layer: paint_ladder(layer, elevation, known, band)
            )
            paint_hung(painter, elevation, known, now, chosen)
        if state.gains:
            paint_side_gains(painter, self._gains, elevation.inside(), ink)
        self._paint_title(painter, ink)

    def _paint_title(self, painter: QPainter, ink: Ink) -> None:
        edge = marks.EDGE_PX
        room = float(self.width()) - self.turn_button.width() - 2 * edge - 8
        top = QRectF(edge, 7, room, marks.line_height(painter))
        title, metrics = f"Side view along {self._axis}", painter.fontMetrics()
        whole = f"{title}, light at {self._axis} {format_length(self.cut, self.display.unit)}"
        if self._shown_slice() is not None and metrics.horizontalAdvance(whole) <= room:
            title = whole
        if metrics.horizontalAdvance(title) <= room:  # its button says as much
            marks.paint_line(painter, top, title, ink.quiet)
