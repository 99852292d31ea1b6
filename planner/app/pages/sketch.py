"""The sketch page: the space drawn to scale with its light, and the fields of what is selected."""

from __future__ import annotations

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from planner.app import theme
from planner.app.canvas.elevation_view import ElevationView
from planner.app.canvas.plan_view import PlanView
from planner.app.display import Display
from planner.app.document import Document
from planner.app.fields.column import FieldColumn
from planner.app.fields.lamp_steps import hang_lamp
from planner.app.fields.panel import Workplace
from planner.app.fields.shelf import Shelf
from planner.app.figures.details import FigureDetails
from planner.app.figures.strip import FigureStrip
from planner.app.plots.colour_bar import ColourBar
from planner.app.plots.colours import Levels
from planner.app.plots.section import SectionPlot
from planner.app.selection import SelectionModel
from planner.catalogue.library import Catalogue
from planner.estimate.result import Estimate, Quality
from planner.plan.plan import Plan

COLUMN_WIDTH = 280
SECTION_HEIGHT = 136


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
        self.workplace = Workplace(document, selection, display, self.shelf)
        self.estimate: Estimate | None = None
        self.strip = FigureStrip()
        self.plan_view = PlanView(document, selection, display)
        self.colour_bar = ColourBar()
        self.elevation = ElevationView(document, selection, display)
        self.section = SectionPlot(display)
        self.section.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.section.viewport().setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.section.setFixedHeight(SECTION_HEIGHT)
        self.column = FieldColumn(self.workplace)
        self.details = FigureDetails()
        self._arrange()
        self._connect()
        self.details.show_plan(document.plan)

    # -- building -----------------------------------------------------------------------

    def _arrange(self) -> None:
        drawings = QHBoxLayout()
        drawings.setContentsMargins(0, 0, 0, 0)
        drawings.setSpacing(theme.RHYTHM)
        drawings.addWidget(self.plan_view, 14)
        drawings.addWidget(self.colour_bar)
        drawings.addWidget(self.elevation, 5)
        left = QVBoxLayout()
        left.setContentsMargins(0, 0, 0, 0)
        left.setSpacing(theme.RHYTHM)
        left.addWidget(self.strip)
        left.addLayout(drawings, 1)
        left.addWidget(self.section)
        right = QVBoxLayout()
        right.setContentsMargins(0, 0, 0, 0)
        right.setSpacing(theme.RHYTHM)
        right.addWidget(self.column, 1)
        right.addWidget(self.details)
        column = QWidget()
        column.setLayout(right)
        column.setFixedWidth(COLUMN_WIDTH)
        layout = QHBoxLayout(self)
        layout.setContentsMargins(theme.RHYTHM, theme.RHYTHM, theme.RHYTHM, theme.RHYTHM)
        layout.setSpacing(theme.WIDE)
        layout.addLayout(left, 1)
        layout.addWidget(column)

    def _connect(self) -> None:
        work = self.workplace
        work.document.changed.connect(self._on_plan_changed)
        work.display.changed.connect(lambda _state: self._show_colours())
        for part in (self.plan_view, self.elevation, self.column):
            part.dragging_changed.connect(self.dragging_changed)
        for drawing in (self.plan_view, self.elevation):
            drawing.fields_requested.connect(self.column.focus_fields)
        self.details.asked_for.connect(work.selection.select)
        self.plan_view.levels_changed.connect(self._on_levels_changed)
        self.plan_view.section_changed.connect(lambda _ends: self._show_section())

    # -- showing ------------------------------------------------------------------------

    def show_estimate(self, estimate: Estimate) -> None:
        """Show the light of an estimate everywhere on the page."""
        self.estimate = estimate
        self.plan_view.set_estimate(estimate)
        self.plan_view.set_refining(estimate.options.quality is Quality.PREVIEW)
        self.strip.show_estimate(estimate)
        self.details.show_estimate(estimate)
        self.elevation.set_estimate(estimate)
        self._show_section()

    def show_busy(self, busy: bool) -> None:
        """Say that an estimate is being worked on; what is shown stays."""
        self.strip.show_busy(busy)

    def show_failure(self, sentence: str) -> None:
        """Say why there is no new estimate; the old light stays."""
        self.strip.show_failure(sentence)

    def fit(self) -> None:
        """Show the whole space in both drawings."""
        self.plan_view.fit()
        self.elevation.fit()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_L and event.modifiers() == Qt.KeyboardModifier.NoModifier:
            problem = hang_lamp(self.workplace)
            if problem:
                self.strip.show_failure(problem)
            event.accept()
        else:
            super().keyPressEvent(event)

    def _show_section(self) -> None:
        self.section.show_profile(self.estimate, self.plan_view.section)

    def _show_colours(self) -> None:
        self.colour_bar.show_style(self.plan_view.light_style())

    def _on_levels_changed(self, levels: Levels) -> None:
        self.elevation.set_levels(levels)
        self._show_colours()

    def sizeHint(self) -> QSize:
        return QSize(1280, 740)

    def _on_plan_changed(self, _old: Plan, new: Plan) -> None:
        self._show_colours()
        self.details.show_plan(new)
