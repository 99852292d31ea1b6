"""The plan view: the footprint to scale with the light in it, edited by hand."""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QMouseEvent, QPainter
from PySide6.QtWidgets import QMenu

from planner.app.canvas import marks, plan_layers
from planner.app.canvas.drawing import Drawing
from planner.app.canvas.ink import Bounds, Ink, Kept, ZoomControl, figure_font
from planner.app.canvas.items import (
    Item,
    Part,
    Section,
    default_section,
    item_at,
    item_figures,
    item_in_words,
    items_in_order,
    middle_of_wall,
    off_walls,
    place_of,
    plan_in_words,
    value_at,
    wall_normal,
    walls_of,
)
from planner.app.canvas.light_layer import LightLayer, LightStyle, TopLayers
from planner.app.canvas.marks import paint_section, paint_section_ends, paint_wall_gains
from planner.app.canvas.plan_drags import (
    Choice,
    Edit,
    Hold,
    PlanDrag,
    added_corner,
    choices,
    nudged,
    turned,
)
from planner.app.canvas.plan_lamps import paint_lamps
from planner.app.canvas.tools import BesideDrag, Drag, Span, dragged_section, turned_section
from planner.app.canvas.wall_light import paint_along_walls, show_wall, style_of, wall_style
from planner.app.display import Display, SelectionModel, shown_figure
from planner.app.document import Document
from planner.app.plots.colours import Levels
from planner.estimate.result import Estimate
from planner.light.cellmap import levels_of
from planner.metrics.figures import FIGURE, Digits
from planner.plan.alignment import caught
from planner.plan.groups import Chosen, within
from planner.plan.place import OWN, Place, PlaceKind, band_at, judged
from planner.plan.space import Point, contains
from planner.reports.advice import wall_sentence
from planner.units import capital, format_length, listed

if TYPE_CHECKING:
    from planner.estimate.sensitivity import WallLight  # the whole core: not at the start

MARGIN_SIDE = 62.0
SCALE_BAR_PX = 210.0
"""Room for the scale at the foot of the drawing."""

_DRAGGED = {Part.CORNER, Part.WALL, Part.LAMP, Part.TURN, Part.OBSTACLE, Part.TURN_OBSTACLE}
_SELECTABLE = {PlaceKind.LAMP, PlaceKind.WALL, PlaceKind.OBSTACLE}
_ANY_WAY = (Part.LAMP, Part.OBSTACLE, Part.CORNER, Part.SECTION_START, Part.SECTION_END)
_CURSORS = {
    **dict.fromkeys(_ANY_WAY, Qt.CursorShape.SizeAllCursor),
    **dict.fromkeys((Part.TURN, Part.TURN_OBSTACLE), Qt.CursorShape.PointingHandCursor),
    Part.SECTION: Qt.CursorShape.OpenHandCursor,
}
EMPTY_HINT = "Press L for a first lamp, or paste a line of its data sheet"


class PlanView(Drawing):
    """The space from above.

    ``figure`` is what the map shows. Signals: ``hovered`` with (x, y, light or None) in metres and
    its unit, or None when the pointer leaves; ``section_changed`` with the section's two ends;
    ``levels_changed`` with the ends of the colour scale; ``wall_hovered`` with the wall the pointer
    rests on, None off all walls; ``inside_clicked`` with the place of the map that was clicked.
    """

    wall_hovered = Signal(object)
    inside_clicked = Signal(object)

    leads = True
    outs = ("copy_plan", "export_plan")
    hovered = Signal(object)
    section_changed = Signal(object)
    levels_changed = Signal(object)

    def __init__(self, document: Document, selection: SelectionModel, display: Display) -> None:
        super().__init__(document, selection, display)
        self._estimate: Estimate | None = None
        self.figure = FIGURE["mean"]
        self._tops = TopLayers()
        self._refining = self._corners_numbered = False
        self._light = LightLayer()
        self._wall_layer, self._wall_tops = LightLayer(), TopLayers()
        self._wall_light: WallLight | None = None
        self._over_wall: int | None = None
        self.sought = ""
        self._doubt = 0.0
        self._walls = Kept()
        self._levels: Levels = (0.0, 1.0)
        self.zoom_control = ZoomControl(self)
        self._section: Section | None = None
        self.setAccessibleName("Plan drawing")
        self.setMinimumSize(240, 200)
        self._follow_selection(selection.current)
        self.setAccessibleDescription(self.words())

    def sizeHint(self) -> QSize:
        return QSize(640, 560)

    # -- light --------------------------------------------------------------------------

    def set_estimate(self, estimate: Estimate | None) -> None:
        """Show the light of an estimate; None shows an empty space."""
        self._estimate = estimate
        self._renew_map()
        if not self.dragging:
            self._tell_pointer()
        self.follow_light()

    def set_refining(self, refining: bool) -> None:
        """Mark that a finer estimate is on its way; the light shown stays."""
        if refining != self._refining:
            self._refining = refining
            self.update()

    def number_corners(self, numbered: bool) -> None:
        """Write the corners' numbers beside them, as a list names them."""
        self._corners_numbered = numbered
        self.update()

    @property
    def levels(self) -> Levels:
        """Ends of the colour scale, in the unit of the map."""
        return self._levels

    @property
    def looked(self) -> Place:
        """The canopy the light is shown on and around; what hangs over it is a line only."""
        told = self._wall_light.canopy if self._wall_light is not None else self._estimate
        place = judged(self.plan) if told is None else told.place
        lies = place == OWN or place.fits(self.plan)
        return place if lies else judged(self.plan)

    def _renew_map(self) -> None:
        """Show what is wanted, or else PPFD, on its own scale: a share over what is present."""
        estimate, state = self._estimate, self.display.state
        figure, levels = shown_figure(estimate, state), (0.0, 1.0)
        self._light.set_estimate(estimate, figure.key)
        self._tops.set_estimate(estimate, figure.key)
        if estimate is not None:
            share = figure.digits is Digits.SHARE
            levels = levels_of(estimate.every(figure.key), stretched=share or state.stretched)
        if (figure, levels) != (self.figure, self._levels):
            self.figure, self._levels = figure, levels
            self.levels_changed.emit(levels)

    def light_style(self) -> LightStyle:
        """How the light is shown now."""
        state = self.display.state
        if self._wall_light is not None:
            return wall_style(self._wall_light, state.colour_map)
        if self.figure.key != "mean":
            return style_of(self.figure, self._levels, state.colour_map)
        return LightStyle(
            self._levels,
            state.colour_map,
            state.contours,
            state.band_wash,
            band_at(self.plan, OWN) if self._estimate is None else self._estimate.own.band,
            self._doubt,
        )

    def set_doubt(self, relative: float) -> None:
        """How far the light may be off (relative standard uncertainty); 0 while not known."""
        if relative != self._doubt:
            self._doubt = relative
            self.levels_changed.emit(self._levels)
            self.update()

    def set_wall_light(self, found: WallLight | None) -> None:
        """Show what one wall does in the place of the light; None shows the light again."""
        if found is not self._wall_light:
            self._wall_light = found
            show_wall(found, self._wall_layer, self._wall_tops)
            self.levels_changed.emit(self._levels)
            self.tell()

    def _on_display(self, state: object) -> None:
        self._renew_map()
        super()._on_display(state)

    # -- section ------------------------------------------------------------------------

    @property
    def section(self) -> Section:
        """The section line's two ends in metres."""
        section = self._section or default_section(self.bounds())
        return off_walls(section, self.plan.space.footprint)

    def set_section(self, section: Section | None) -> None:
        """Move the section line; None puts it back across the middle."""
        before = self.section
        self._section = section
        if self.section != before:
            self.section_changed.emit(self.section)
            self.tell()

    # -- drawing ------------------------------------------------------------------------

    def bounds(self) -> Bounds:
        return self.plan.space.bounds

    def drawing_area(self) -> QRectF:
        return self.inner_area(MARGIN_SIDE)

    def item_at(self, pixel: QPointF) -> Item:
        current = self.selection.current
        turning = current.index if current.kind is PlaceKind.LAMP else None
        held = current.index if current.kind is PlaceKind.OBSTACLE else None
        return item_at(self.plan, self.section, self.viewport, pixel, turning, held, self.looked)

    def items(self) -> tuple[Item, ...]:
        return items_in_order(self.plan)

    def figures_of(self, item: Item) -> str:
        return item_figures(self.plan, item, self.section, self.display.unit)

    def begin(self, item: Item, at: Point) -> Drag | None:
        if item.part in {Part.SECTION, Part.SECTION_START, Part.SECTION_END}:
            start = self.section

            def show(to: Point, hold: Hold) -> None:
                by = (to[0] - at[0], to[1] - at[1])
                self.set_section(dragged_section(start, item.part, by, hold.step, self.bounds()))

            return BesideDrag(self.plan, show, lambda: self.set_section(start))
        if item.part in _DRAGGED:
            return PlanDrag(self.plan, item, at, self.together(item))
        return None

    def nudged(self, item: Item, by: Point) -> Edit | None:
        if item.part is Part.SECTION:
            self.set_section(dragged_section(self.section, item.part, by, None, self.bounds()))
            return None
        return nudged(self.plan, item, by, self.together(item))

    def is_ground(self, item: Item) -> bool:
        return item.part in {Part.INSIDE, Part.OUTSIDE}

    def within(self, band: Span) -> Chosen:
        return within(self.plan, *band)

    def caught(self, at: Point, reach: float) -> Point:
        return caught(self.plan, at, reach)

    def spot_of(self, item: Item) -> Point:
        return place_of(self.plan, item, self.section)

    def choices_of(self, item: Item, at: Point) -> Sequence[Choice]:
        step = self.display.unit.snap
        return choices(self.plan, item, at, step, self.together(item))

    def choose(self, item: Item | None) -> None:
        place = None if item is None else item.place
        if item is None or item.part is Part.OUTSIDE:
            focused, selected = None, Place()
        elif place is None or item.part is Part.CORNER:
            focused = item if item.part is Part.CORNER else Item(Part.SECTION)
            selected = Place()
        else:
            selected = place.whole
            focused = Item.of(selected) if selected.kind in _SELECTABLE else None
            if self.selection.current.whole == selected:
                selected = self.selection.current  # keep the band that is being worked on
        self.set_focused(focused)
        self.selection.lead_with(selected)

    def _follow_selection(self, selection: Place) -> None:
        if selection.kind in _SELECTABLE:
            self.set_focused(Item.of(selection))
        elif self.focused is not None and self.focused.part in {Part(kind) for kind in _SELECTABLE}:
            self.set_focused(None)

    def words(self) -> str:
        words = plan_in_words(
            self.plan, self.section, self.display.unit, self.focused, self._estimate, self.figure
        )
        chosen = self.selection.chosen
        if len(chosen) > 1:
            names = listed([place.words(self.plan) for place in chosen])
            words += f" Selected together: {names}."
        return " ".join(filter(None, (words, self.measure_words())))

    # -- edits --------------------------------------------------------------------------

    def key_on_item(self, key: Qt.Key) -> bool:
        item = self.focused
        if item is None:
            return False
        plan, index = self.plan, item.index
        if key in {Qt.Key.Key_Delete, Qt.Key.Key_Backspace}:
            return self.remove_focused()
        if key == Qt.Key.Key_Insert and item.part is Part.WALL:
            middle = middle_of_wall(plan, index)
            step = self.display.unit.snap
            corner = Item(Part.CORNER, index + 1)
            self.make(Choice("", lambda: added_corner(plan, index, middle, step), corner))
        elif key == Qt.Key.Key_R and item.part in {Part.LAMP, Part.OBSTACLE}:
            self._turn(item)
        else:
            return False
        return True

    def _turn(self, item: Item) -> None:
        places = self.together(item)
        key = f"turn {item.part} {item.index} {len(places)}"
        if self.attempt(lambda: turned(self.plan, places, 15.0), key):
            self._burst.start()

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        item = self.item_at(event.position())
        if event.button() is Qt.MouseButton.LeftButton and item.part is Part.WALL:
            near = self.viewport.to_world(event.position())
            step = self.hold(event.modifiers()).step
            plan, wall = self.plan, item.index
            corner = Item(Part.CORNER, wall + 1)
            self.make(Choice("", lambda: added_corner(plan, wall, near, step), corner))
        else:
            super().mouseDoubleClickEvent(event)

    def menu_for(self, item: Item, at: Point) -> QMenu:
        menu = super().menu_for(item, at)
        if item.part in {Part.SECTION, Part.SECTION_START, Part.SECTION_END}:
            line = turned_section(self.section, self.bounds())
            for text, section in (
                ("Turn section line", line),
                ("Section through middle", None),
            ):
                action = menu.addAction(text)
                action.triggered.connect(lambda _=False, to=section: self.set_section(to))
        return menu

    # -- pointer ------------------------------------------------------------------------

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        clicked = self._pressed is not None and not self.dragging
        super().mouseReleaseEvent(event)
        at = self.place_inside(event.position())
        if clicked and at is not None and self.item_at(event.position()).part is Part.INSIDE:
            self.inside_clicked.emit(at)

    def _tell_wall(self, pixel: QPointF | None) -> None:
        item = Item(Part.OUTSIDE) if pixel is None or self.dragging else self.item_at(pixel)
        wall = item.index if item.part is Part.WALL else None
        if wall != self._over_wall:
            self._over_wall = wall
            self.wall_hovered.emit(wall)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        super().mouseMoveEvent(event)
        self._tell_wall(event.position())
        if not self.dragging:
            self._tell_pointer()

    def leaveEvent(self, event: QEvent) -> None:
        super().leaveEvent(event)
        self._tell_wall(None)
        self.hovered.emit(None)

    @property
    def pointer_inside(self) -> Point | None:
        """The place under the pointer in metres; None where it is not over the space."""
        return self._pointer and self.place_inside(self.viewport.to_pixel(*self._pointer))

    def place_inside(self, pixel: QPointF) -> Point | None:
        """The place under a pixel in metres; None where it is not over the space."""
        at = self.viewport.to_world(pixel)
        return at if contains(self.plan.space.footprint, *at) else None

    def _tell_pointer(self) -> None:
        if self._pointer is not None:
            self.hovered.emit((*self._pointer, self._light_at_pointer()))

    def _light_at_pointer(self) -> float | None:
        if self._pointer is None or self._estimate is None:
            return None
        return value_at(self._estimate, *self._pointer, self.figure.key)

    def readout(self) -> str:
        """The light and the place under the pointer, in words and the chosen unit."""
        if self._pointer is None:
            return ""
        unit = self.display.unit
        x, y = (format_length(part, unit, with_unit=False) for part in self._pointer)
        place = f"x {x}, y {y} {unit.value}"
        light = self._light_at_pointer()
        return place if light is None else f"{self.figure.on_map(light)} at {place}"

    def status(self) -> str:
        # What is being dragged, or what is under the pointer.
        if self.measuring:
            return self.measure_words()
        if self._wall_light is not None:
            return wall_sentence(self._wall_light)
        if self.sought:
            return self.sought
        item, chosen = self.focused, self.selection.chosen
        moved = item is not None and item.part in {Part.LAMP, Part.OBSTACLE, Part.CORNER}
        if item is not None and moved and (self.dragging or self._pointer is None):
            words = item_in_words(self.plan, item, self.section, self.display.unit)
            more = f"; {len(chosen)} selected, this one leads" if len(chosen) > 1 else ""
            return f"{capital(words)}{more}"
        return self.readout()

    def cursor_for(self, item: Item) -> Qt.CursorShape:
        if item.part is not Part.WALL:
            return _CURSORS.get(item.part, Qt.CursorShape.ArrowCursor)
        nx, ny = wall_normal(self.plan, item.index)
        return Qt.CursorShape.SizeHorCursor if abs(nx) > abs(ny) else Qt.CursorShape.SizeVerCursor

    # -- painting -----------------------------------------------------------------------

    def paint_drawing(self, painter: QPainter, ink: Ink) -> None:
        plan, viewport, chosen = self.plan, self.viewport, self.selection.chosen
        footprint = plan_layers.footprint_polygon(plan, viewport)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(self.palette().alternateBase())
        painter.drawPolygon(footprint)
        layer = self._light if self._wall_light is None else self._wall_layer
        style, font = self.light_style(), figure_font(self.font(), 0.85)
        clear = (
            *marks.letter_spots(self.section, viewport, painter.font()),
            *plan_layers.name_spots(plan, viewport, painter.font(), self.looked),
        )
        rims = plan_layers.rims(plan, viewport, self.section)
        layer.paint(painter, viewport, footprint, style, font, clear, rims)
        active = self.focused is not None and self.focused.part is Part.SECTION
        paint_section(painter, self.section, viewport, ink, active=active)
        tops = self._tops if self._wall_light is None else self._wall_tops
        light = partial(tops.paint, painter, viewport, plan, style, font, clear, rims)
        plan_layers.paint_on_plan(painter, plan, viewport, ink, chosen, self.looked, light)
        paint_lamps(painter, plan, viewport, ink, chosen, self.looked)
        if self._estimate is not None and self._wall_light is None and not style.name:
            paint_along_walls(painter, plan, viewport, self._estimate.walls, style)
        self._paint_walls(painter, ink)
        paint_section_ends(painter, self.section, viewport, ink, active=active)
        corner = QPointF(self.width() - marks.EDGE_PX, marks.line_height(painter) / 2 + 6)
        marks.paint_corner(painter, corner, ink, style, refining=self._refining)
        foot = QPointF(corner.x(), self.height() - marks.EDGE_PX - 4)
        plan_layers.paint_scale_bar(painter, foot, viewport, ink, self.display.unit)

    def _paint_walls(self, painter: QPainter, ink: Ink) -> None:
        """What does not change while a lamp moves, as one picture: outline, sizes, gains."""
        plan, viewport, unit = self.plan, self.viewport, self.display.unit
        current, item = self.selection.current, self.focused
        wall = current.index if current.kind is PlaceKind.WALL else None
        strong = walls_of(item, plan.space.wall_count)
        corner = [item.index] if item is not None and item.part is Part.CORNER else []
        numbered = self._corners_numbered or bool(corner)
        gains = tuple(self._gains) if self.display.state.gains else ()
        section = self.section if gains else None

        def compose(layer: QPainter) -> None:
            plan_layers.paint_wall_lengths(layer, plan, viewport, ink, unit, strong)
            plan_layers.paint_outline(layer, plan, viewport, ink, wall)
            if gains:
                ends = [viewport.to_pixel(*end) for end in self.section]
                paint_wall_gains(layer, plan, gains, viewport, ink, ends)
            plan_layers.paint_corners(layer, plan, viewport, ink, corner)
            if numbered:
                plan_layers.paint_corner_numbers(layer, plan, viewport, ink)

        # What of the plan is drawn here; the setup as a whole changes with every lamp.
        drawn = (plan.space, plan.walls, plan.linings)
        chosen = (wall, strong, tuple(corner), numbered, gains, section)
        self._walls.paint(painter, (drawn, viewport, unit, ink, chosen), compose)

    def paint_told(self, painter: QPainter, ink: Ink) -> None:
        if not self.plan.lamps:
            area = self.viewport.to_rect(self.bounds())
            marks.paint_invitation(painter, area.center(), area.width() - 48, EMPTY_HINT, ink)
        super().paint_told(painter, ink)

    def room_at_foot(self, foot: QRectF) -> QRectF:
        area = foot.adjusted(0, 0, -SCALE_BAR_PX, -4)
        if area.width() < SCALE_BAR_PX:  # in a narrow drawing the words stand over the scale
            area = foot.adjusted(0, 4 - foot.height(), 0, -foot.height())
        return area
