"""The sketch page: the space drawn to scale with its light, and the fields of what is selected."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QSize, Qt, Signal
from PySide6.QtGui import QKeyEvent, QResizeEvent
from PySide6.QtWidgets import QBoxLayout, QWidget

from planner.app import theme
from planner.app.actions import WindowActions
from planner.app.canvas.drawing import Drawing
from planner.app.canvas.elevation_drags import seen_as_one
from planner.app.canvas.elevation_view import ElevationView
from planner.app.canvas.items import value_at
from planner.app.canvas.light_layer import LightStyle
from planner.app.canvas.plan_view import PlanView
from planner.app.display import Display, SelectionModel
from planner.app.document import Document, Paced
from planner.app.edit_steps import hang_lamp
from planner.app.estimator import Worth
from planner.app.fields.choosers import Shelf, SpectrumChoice
from planner.app.fields.panel import Workplace
from planner.app.pages.sketch.asked import Asked, LightInSide, WallOnMap
from planner.app.pages.sketch.canopies import CanopyLine
from planner.app.pages.sketch.column import FieldColumn
from planner.app.pages.sketch.details import FigureDetails
from planner.app.pages.sketch.growing import GrowingLine
from planner.app.pages.sketch.strip import FigureStrip
from planner.app.pages.sketch.welcome import Welcome
from planner.app.pages.sketch.wish import WishLine
from planner.app.plots.colour_bar import ColourBar
from planner.app.plots.colours import Levels
from planner.app.plots.section import SectionPlot
from planner.app.questions import Questions
from planner.catalogue.library import Catalogue
from planner.estimate.result import Estimate, Quality
from planner.plan.dials import dial
from planner.plan.place import OWN, Place, PlaceKind, judged
from planner.plan.plan import Plan
from planner.plan.space import Point
from planner.plan.tiers import canopy_under
from planner.reports.advice import doubt_sentence, lining_gains

if TYPE_CHECKING:
    from planner.estimate.outlook import Outlook, Uncertainty


COLUMN_WIDTH = 280
COLUMN_CHARACTERS = 40
SECTION_HEIGHT = 136
LOW_PAGE = 600
"""Below this height of the page the section gives its room to the drawings."""

WISH_PX = 110
"""Room that a wish with its three ways takes, at the usual size of the font."""


class SketchPage(QWidget):
    """Drawing, elevation, section and figures on the left; fields and folds on the right.

    Wiring only: the parts talk to the document and the selection, never to each other.
    ``dragging_changed`` is true while a hand or a key is still moving something.
    """

    dragging_changed = Signal(bool)

    def __init__(
        self,
        document: Document,
        selection: SelectionModel,
        display: Display,
        catalogue: Catalogue,
        parent: QWidget | None = None,
        *,
        shelf: Shelf | None = None,
    ) -> None:
        super().__init__(parent)
        self.shelf = shelf or Shelf(catalogue, self)
        self.worth = Worth(document, self)
        self.spectra = SpectrumChoice(self)
        self.workplace = Workplace(
            document, selection, display, self.shelf, self.worth, self.spectra, self._doubt
        )
        self.estimate: Estimate | None = None
        self.welcome = Welcome(catalogue, display)
        self.welcome.hide()
        self.asked = Asked(self)
        self.strip = FigureStrip(WishLine(self.asked, self.workplace))
        self.canopies = CanopyLine()
        self._look: Place | None = None
        self._upright = False
        self.growing = GrowingLine(self.asked, self.workplace)
        self.plan_view = PlanView(document, selection, display)
        self.map_button = theme.small_button("", "What the map shows")
        self.map_button.hide()
        self.plan_view.zoom_control.add(self.map_button)
        self.colour_bar = ColourBar()
        self.elevation = ElevationView(document, selection, display)
        self.section = SectionPlot(display)
        self.section.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.section.viewport().setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.section.setFixedHeight(SECTION_HEIGHT)
        self.column = FieldColumn(self.workplace)
        self.details = FigureDetails()
        self._wall_on_map = WallOnMap(self.asked, self.workplace, self.plan_view)
        self.column.wall_made.connect(self._wall_on_map.take)
        self.side_light = LightInSide(self.workplace, self.elevation, self)
        self._raising = False
        self._known: Uncertainty | None = None
        # One after the other, so that none of them keeps the hand waiting long.
        self._beside = [
            Paced(document, show, self, turn)
            for turn, show in (
                (0, self._show_strip),
                (2, self._show_details),
                (3, self._show_section),
            )
        ]
        self.elevation.set_section(self.plan_view.section)
        self._arrange()
        self._connect()
        self.details.show_plan(document.plan, display.unit)
        self._on_display_changed()

    # -- building -----------------------------------------------------------------------

    def _arrange(self) -> None:
        drawings = theme.row(
            (self.plan_view, 11), self.colour_bar, (self.elevation, 6), gap=theme.RHYTHM
        )
        self._drawings = drawings
        left = theme.column(
            self.welcome, self.strip, self.canopies, (drawings, 1), self.growing, self.section,
            gap=theme.RHYTHM,
        )  # fmt: skip
        column = QWidget()
        self._right = theme.column((self.column, 1), self.details, on=column, gap=theme.RHYTHM)
        column.setFixedWidth(self._column_width())
        self._side = column
        theme.row((left, 1), column, on=self, gap=theme.WIDE, edges=theme.RHYTHM)

    def _connect(self) -> None:
        work = self.workplace
        work.document.changed.connect(self._on_plan_changed)
        work.document.path_changed.connect(self.welcome.hide)
        work.display.changed.connect(lambda _state: self._on_display_changed())
        for part in (self.plan_view, self.elevation, self.column, self.growing):
            part.dragging_changed.connect(self.dragging_changed)
        self._side_large = False
        for drawing in (self.plan_view, self.elevation):
            drawing.fields_requested.connect(self.column.focus_fields)
        self.elevation.dragging_changed.connect(self._on_raising)
        self.asked.climbed.connect(self.elevation.set_ladder)
        work.selection.changed.connect(lambda _place: self._climb())
        work.selection.changed.connect(self._look_where)
        self.canopies.looked.connect(self._look_at)
        work.document.settled.connect(self._climb)
        self.strip.wish.taken.connect(work.document.apply)
        self.strip.unfolded.connect(self._fit_section)
        self.colour_bar.level_wanted.connect(self.strip.ask_for)
        self.plan_view.inside_clicked.connect(self._tell_doubt)
        self.details.asked_for.connect(work.selection.select)
        gains = self.details.gains
        gains.marks_wanted.connect(lambda on: work.display.update(gains=on))
        self.column.corners_listed.connect(self.plan_view.number_corners)
        advice = self.strip.advice
        advice.taken.connect(self._take_advice)
        advice.lamp_wanted.connect(self._hang_lamp)
        advice.target_wanted.connect(self._choose_target)
        advice.walls_wanted.connect(lambda: work.selection.select(Place(PlaceKind.WALL, 0)))
        self.plan_view.levels_changed.connect(self._on_levels_changed)
        self.plan_view.section_changed.connect(lambda _ends: self._chart_of(upright=False))
        self.plan_view.hovered.connect(self._on_plan_hovered)
        self.elevation.column_changed.connect(lambda: self._chart_of(upright=True))
        self.plan_view.section_changed.connect(self.elevation.set_section)

    # -- showing ------------------------------------------------------------------------

    def show_estimate(self, estimate: Estimate) -> None:
        """Show the light of an estimate everywhere on the page, as of the canopy looked at."""
        looked = self._look
        if looked is not None and looked in {one.place for one in estimate.canopies}:
            estimate = estimate.on(looked)
        self.estimate = estimate
        self.plan_view.set_estimate(estimate)
        self._show_colours()
        self.plan_view.set_refining(estimate.options.quality is Quality.PREVIEW)
        self.elevation.set_estimate(estimate)
        self.side_light.follow(estimate)
        for part in self._beside:
            part.ask()

    def _look_at(self, place: Place | None) -> None:
        """Let map and figures speak of a canopy; None: of the one the plan is judged by."""
        if place != self._look and self.estimate is not None:
            self._look = place
            self.show_estimate(self.estimate.on(place or judged(self.estimate.plan)))

    def _look_where(self, place: Place) -> None:
        """Look at the canopy that is chosen, or with the whole space at the one judged."""
        plan = self.workplace.document.plan
        if place.kind is PlaceKind.OBSTACLE and plan.obstacles[place.index].canopy is not None:
            self._look_at(Place(PlaceKind.TOP, place.index))
        elif place.kind is PlaceKind.LAMP and self.estimate is not None:
            # Of a rack the tier that the lamp is of; beside a tray it lights all.
            of = [canopy_under(plan, lamp) for lamp in plan.lamps]
            if of[place.index] != OWN or self.estimate.place in of:
                self._look_at(of[place.index])
        elif place.kind in {PlaceKind.CANOPY, PlaceKind.SPACE}:
            self._look_at(OWN if place.kind is PlaceKind.CANOPY else None)

    def _doubt(self) -> Uncertainty | None:
        return self._known

    def show_outlook(self, outlook: Outlook) -> None:
        """Show how sure the figures are and which surface to line first."""
        gains = lining_gains(outlook.plan, outlook.gains)
        self._known = outlook.uncertainty
        doubt = 0.0 if self._known is None else self._known.relative_mean
        for drawing in (self.plan_view, self.elevation):
            drawing.set_doubt(doubt)
        self.strip.show_outlook(outlook)
        self.details.show_outlook(outlook, gains)
        self.plan_view.set_gains(gains)
        self.elevation.set_gains(gains)

    def show_failure(self, sentence: str) -> None:
        """Say why there is no new estimate; the old light stays."""
        self.strip.show_failure(sentence)

    def fit(self) -> None:
        """Show the whole space in both drawings."""
        self.plan_view.fit()
        self.elevation.fit()

    @property
    def drawing_in_hand(self) -> Drawing:
        """The drawing that has the keyboard, or else the plan."""
        return self.elevation if self.elevation.hasFocus() else self.plan_view

    def ways_out(self, questions: Questions) -> dict[str, Callable[[], None]]:
        """How the two drawings go out as they are shown, by the keys of the actions."""
        shown = {"plan": self.plan_view, "side": self.elevation}
        return {
            **{f"copy_{key}": view.copy_picture for key, view in shown.items()},
            **{
                f"export_{key}": partial(view.ask_and_save, questions)
                for key, view in shown.items()
            },
        }

    def choose_map_by(self, actions: WindowActions) -> None:
        """Let the window's steps be chosen by the map's own button and at the colour bar."""
        button, menus = self.map_button, actions.menus
        button.clicked.connect(
            lambda: menus["shows"].popup(button.mapToGlobal(button.rect().bottomLeft()))
        )
        self.colour_bar.addActions([menus[key].menuAction() for key in ("shows", "colour_map")])
        self.colour_bar.addActions([actions["stretched"], actions["band_wash"]])

    def enlarge_side(self, on: bool) -> None:
        """Give the side view the room of the plan, and the plan that of the side view."""
        self._side_large = on
        self._share_room()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_L and event.modifiers() == Qt.KeyboardModifier.NoModifier:
            self._hang_lamp()
            event.accept()
        else:
            super().keyPressEvent(event)

    def _hang_lamp(self) -> None:
        problem = hang_lamp(self.workplace)
        if problem:
            self.strip.show_failure(problem)

    def _choose_target(self) -> None:
        self.workplace.selection.select(Place(PlaceKind.CANOPY))
        self.column.focus_target()

    def _take_advice(self, advised: Plan, name: str) -> None:
        # Advice on a plan that has moved on meanwhile is not taken.
        if self.estimate is not None and self.estimate.plan == self.workplace.document.plan:
            self.workplace.document.apply(advised, name)

    def _show_strip(self) -> None:
        if self.estimate is not None:
            self.strip.show_estimate(self.estimate)
            self.canopies.show_estimate(self.estimate)

    def _show_details(self) -> None:
        self.details.show_plan(self.workplace.document.plan, self.workplace.display.unit)
        if self.estimate is not None:
            self.details.show_estimate(self.estimate)

    def _on_plan_hovered(self, at: object) -> None:
        if at is not None and self._upright:
            self._chart_of(upright=False)

    def _chart_of(self, *, upright: bool) -> None:
        """The chart at the foot belongs to the drawing last pointed in."""
        self._upright = upright
        self._show_section()

    def _show_section(self) -> None:
        column = self.elevation.column if self._upright else None
        if column is not None:
            self.section.show_upright(*column, self.elevation.band)
        else:
            self.section.show_profile(self.estimate, self.plan_view.section)

    def _tell_doubt(self, at: Point) -> None:
        """How sure the light at a place is, while the band is marked."""
        light = None if self.estimate is None else value_at(self.estimate, *at)
        if self.estimate is None or self._known is None or light is None:
            return
        if not self.plan_view.light_style().wash:
            return
        band = self.estimate.top_at(*at).band
        self.plan_view.say(doubt_sentence(self._known, light, band), refused=False)

    # -- the ladder of heights ----------------------------------------------------------

    def _on_raising(self, raising: bool) -> None:
        self._raising = raising
        self._climb()

    def _climb(self, *, raising: bool = False) -> None:
        """Show what each height would give: while a lamp is raised, or as long as it is asked."""
        work = self.workplace
        place, plan = work.selection.current, work.document.plan
        # Lamps that hang apart in height have no one rung.
        alone = len(work.selection.chosen) == 1
        held = place.kind is PlaceKind.LAMP and alone and place.fits(plan)
        if held and (raising or self._raising or work.display.state.ladder):
            lamps = seen_as_one(plan, place.index, self.elevation.axis)
            self.asked.climb(plan, lamps, work.display.state)
        else:
            self.elevation.set_ladder(None)

    def _on_display_changed(self) -> None:
        self._climb()
        self.details.show_plan(self.workplace.document.plan, self.workplace.display.unit)
        self.details.gains.switch.setChecked(self.workplace.display.state.gains)
        self._show_colours()

    def _show_colours(self) -> None:
        style = self.plan_view.light_style()
        self.colour_bar.show_style(style)
        # What a wall does is no level of light that could be wished for.
        self.colour_bar.wishes = not style.name and style.unit == LightStyle.unit
        self.map_button.setText(f"{self.plan_view.figure.map_name} ▾")
        self.map_button.setVisible(self.estimate is not None and len(self.estimate.maps) > 1)
        self.plan_view.zoom_control.adjustSize()

    def _on_levels_changed(self, levels: Levels) -> None:
        self.elevation.set_levels(levels)
        self._show_colours()

    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() == QEvent.Type.PaletteChange:
            self._show_colours()

    def sizeHint(self) -> QSize:
        return QSize(1280, 740)

    def minimumSizeHint(self) -> QSize:
        least = super().minimumSizeHint()
        if not self.section.isHidden():
            least.setHeight(least.height() - self.section.height() - theme.RHYTHM)
        return least

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._fit_section()
        side = self._share_room()
        beside = side > self._column_width()
        self.details.fit_column(self.height() - 2 * theme.RHYTHM, alone=beside)

    def _share_room(self) -> int:
        """Divide the page's width among drawings and fields; what the fields take."""
        # The larger drawing has at least half of the page; of more, the other gets its part.
        side = self._arrange_side()
        gaps = 4 * theme.RHYTHM + theme.WIDE + side + self.colour_bar.sizeHint().width()
        room = max(self.width() - gaps, 2)
        large = min(max(self.width() // 2, room * 11 // 17), room - 1)
        at = (2, 0) if self._side_large else (0, 2)
        self._drawings.setStretch(at[0], large)
        self._drawings.setStretch(at[1], room - large)
        return side

    def _fit_section(self) -> None:
        """In a low page the section gives its room to the drawings, sooner while a wish is open."""
        lines = self.fontMetrics().height() / theme.USUAL_LINE_PX
        more = 0.0 if self.strip.wish.isHidden() else WISH_PX * max(lines, 1.0)
        # A large font needs more height for everything.
        self.section.setFixedHeight(round(SECTION_HEIGHT * max(lines, 1.0)))
        self.section.setVisible(self.height() >= LOW_PAGE * max(lines, 1.0) + more)

    def _column_width(self) -> int:
        """Width of a column of fields: wider where the font is large."""
        return max(COLUMN_WIDTH, round(COLUMN_CHARACTERS * self.fontMetrics().averageCharWidth()))

    def _arrange_side(self) -> int:
        """Put the folds below the fields, or beside them on a wide page; the width of both."""
        one = self._column_width()
        both = 2 * one + theme.WIDE
        wide = self.width() >= theme.WIDE_PAGE and both <= 0.4 * self.width()
        direction = QBoxLayout.Direction.LeftToRight if wide else QBoxLayout.Direction.TopToBottom
        if self._right.direction() != direction:
            self._right.setDirection(direction)
            self._right.setStretch(1, 1 if wide else 0)
            self._right.setSpacing(theme.WIDE if wide else theme.RHYTHM)
        width = both if wide else one
        self._side.setFixedWidth(width)
        return width

    def _on_plan_changed(self, old: Plan, new: Plan) -> None:
        if (old.target, old.photoperiod_hours) != (new.target, new.photoperiod_hours):
            self._show_colours()
        if (old.space, old.walls) != (new.space, new.walls):
            # Marks at walls that have changed would tell of others.
            self.plan_view.set_gains(())
            self.elevation.set_gains(())
            self.elevation.set_section(self.plan_view.section)
        self._beside[1].ask()
        if self.workplace.document.moving:
            # By keys and by the field's arrows a lamp is raised too, until they come to rest.
            if not self._raising and self._raised(old, new):
                self._climb(raising=True)
        elif self.workplace.display.state.ladder:
            self._climb()

    def _raised(self, old: Plan, new: Plan) -> bool:
        """Whether nothing but the height of the selected lamp was turned."""
        place, key = self.workplace.selection.current, dial("height")
        if place.kind is not PlaceKind.LAMP or old.canopy != new.canopy:
            return False
        return key.get(old, place) != key.get(new, place)
