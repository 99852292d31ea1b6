"""The column of fields: what is selected, and its panel."""

from __future__ import annotations

from PySide6.QtCore import QSize, Qt, QTimer, Signal
from PySide6.QtWidgets import QApplication, QFrame, QScrollArea, QVBoxLayout, QWidget

from planner.app.document import Paced
from planner.app.fields.canopy_fields import CanopyFields
from planner.app.fields.form import StillCombo
from planner.app.fields.lamp_fields import LampFields
from planner.app.fields.panel import FieldPanel, Workplace
from planner.app.fields.space_fields import ObstacleFields, SpaceFields
from planner.app.fields.surface_fields import SurfaceFields, WallFields
from planner.app.plain import PlainLabel
from planner.plan.place import Place, PlaceKind
from planner.plan.plan import Plan


class FieldColumn(QWidget):
    """A list of all that can be selected, over the fields of the one that is."""

    dragging_changed = Signal(bool)
    corners_listed = Signal(bool)
    """Whether a list that names the corners by number is in sight."""

    def __init__(self, workplace: Workplace, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._workplace = workplace
        self.space_fields = SpaceFields(workplace)
        self.canopy_fields = CanopyFields(workplace)
        self.space_fields.outline_toggle.toggled.connect(self.corners_listed)
        self._offered: list[Place] = []
        self.chooser = StillCombo()
        self.chooser.setAccessibleName("What is selected")
        self.chooser.setMaxVisibleItems(24)
        heading = PlainLabel("Fiel&ds of")
        heading.setBuddy(self.chooser)
        self.panels: dict[PlaceKind, FieldPanel] = {
            PlaceKind.SPACE: self.space_fields,
            PlaceKind.WALL: WallFields(workplace),
            PlaceKind.LAMP: LampFields(workplace),
            PlaceKind.OBSTACLE: ObstacleFields(workplace),
            PlaceKind.CANOPY: self.canopy_fields,
            PlaceKind.CEILING: SurfaceFields(workplace, PlaceKind.CEILING),
            PlaceKind.FLOOR: SurfaceFields(workplace, PlaceKind.FLOOR),
        }
        # One panel is visible at a time; hidden ones take no room in the scrolled column.
        holder = QWidget()
        stack = QVBoxLayout(holder)
        stack.setContentsMargins(0, 0, 8, 8)
        for panel in self.panels.values():
            panel.hide()
            panel.dragging_changed.connect(self.dragging_changed)
            stack.addWidget(panel)
        stack.addStretch(1)
        self._scroll = QScrollArea()
        self._scroll.setFrameShape(QFrame.Shape.NoFrame)
        self._scroll.setWidgetResizable(True)
        self._scroll.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._scroll.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self._scroll.setWidget(holder)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(8)
        top = QWidget()
        line = QVBoxLayout(top)
        line.setContentsMargins(0, 0, 8, 0)
        line.setSpacing(4)
        line.addWidget(heading)
        line.addWidget(self.chooser)
        layout.addWidget(top)
        layout.addWidget(self._scroll, 1)
        self.chooser.activated.connect(
            lambda row: self._workplace.selection.select(self._offered[row])
        )
        app = QApplication.instance()
        if isinstance(app, QApplication):
            app.focusChanged.connect(self._on_focus_changed)
        self._fields = Paced(workplace.document, self._refresh, self)
        workplace.document.changed.connect(self._on_plan_changed)
        workplace.selection.changed.connect(self._on_selection_changed)
        self._on_selection_changed(workplace.selection.current)

    @property
    def panel(self) -> FieldPanel:
        """The panel that is shown."""
        return self.panels[self._workplace.selection.current.kind]

    def focus_fields(self) -> None:
        """Put the keyboard into the first field."""
        self.panel.setFocus()
        self.panel.focusNextChild()

    def focus_target(self) -> None:
        """Put the keyboard on the choice of crop or band."""
        self.canopy_fields.target_fields.combo.setFocus(Qt.FocusReason.TabFocusReason)

    def _on_focus_changed(self, _old: QWidget | None, new: QWidget | None) -> None:
        holder = self._scroll.widget()
        if new is not None and holder is not None and holder.isAncestorOf(new):
            # What was just unfolded has its place only after the layout has run.
            QTimer.singleShot(0, self, self._reveal_focus)

    def _reveal_focus(self) -> None:
        focused, holder = QApplication.focusWidget(), self._scroll.widget()
        if focused is not None and holder is not None and holder.isAncestorOf(focused):
            self._scroll.ensureWidgetVisible(focused, 0, 32)

    def sizeHint(self) -> QSize:
        return QSize(304, 480)

    def _on_plan_changed(self, _old: Plan, new: Plan) -> None:
        self._workplace.selection.follow(new)
        self._fields.ask()

    def _refresh(self) -> None:
        self._show_chooser(self._workplace.selection.current)
        self.panel.refresh(self._workplace.document.plan)

    def _on_selection_changed(self, selection: Place) -> None:
        self._show_chooser(selection)
        self.panel.show_selection(selection)
        for kind, panel in self.panels.items():
            if kind is not selection.kind:
                panel.leave()
            panel.setVisible(kind is selection.kind)
        listed = self.space_fields.outline_toggle.isChecked() and selection.kind is PlaceKind.SPACE
        self.corners_listed.emit(listed)
        self._scroll.verticalScrollBar().setValue(0)

    def _show_chooser(self, selection: Place) -> None:
        plan = self._workplace.document.plan
        offered = [
            Place(),
            *(Place(PlaceKind.LAMP, index) for index in range(len(plan.lamps))),
            *(Place(PlaceKind.OBSTACLE, index) for index in range(len(plan.obstacles))),
            *(Place(PlaceKind.WALL, index) for index in range(len(plan.walls))),
            Place(PlaceKind.CANOPY),
            Place(PlaceKind.CEILING),
            Place(PlaceKind.FLOOR),
        ]
        titles = [selection_title(plan, one) for one in offered]
        if titles != [self.chooser.itemText(row) for row in range(self.chooser.count())]:
            self.chooser.clear()
            self.chooser.addItems(titles)
            self.chooser.widen_list()
        self._offered = offered
        whole = selection.whole
        self.chooser.setCurrentIndex(offered.index(whole) if whole in offered else 0)


def selection_title(plan: Plan, selection: Place) -> str:
    """What a thing is called in the list."""
    if selection.kind in {PlaceKind.LAMP, PlaceKind.OBSTACLE}:
        return selection.title(plan)
    if selection.kind is PlaceKind.WALL:
        door = " (door)" if plan.space.door == selection.index else ""
        return f"{selection.words(plan)}{door}"
    if selection.kind is PlaceKind.CANOPY:
        return "Canopy, day and target"
    return selection.words(plan)
