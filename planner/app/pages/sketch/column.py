"""The column of fields: what is selected, and its panel; among them the canopy's."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import partial
from typing import Final, cast

from PySide6.QtCore import QSize, Qt, QTimer, Signal
from PySide6.QtWidgets import QApplication, QWidget

from planner.app import theme
from planner.app.document import Paced
from planner.app.fields.form import NoteLabel, StillCombo, button
from planner.app.fields.lamp_fields import LampFields
from planner.app.fields.panel import FieldPanel, Workplace
from planner.app.fields.space_fields import (
    ObstacleFields,
    SpaceFields,
    add_leaf_colours,
    lit_in_colours,
)
from planner.app.fields.surface_fields import SurfaceFields, WallFields
from planner.app.plain import PlainLabel
from planner.catalogue.library import Basis, Crop, Stage
from planner.metrics.figures import daily_light_integral, ppfd
from planner.plan import edits
from planner.plan.groups import all_things
from planner.plan.place import OWN as OWN_CANOPY
from planner.plan.place import Place, PlaceKind, band_at, every, judged
from planner.plan.plan import Plan
from planner.plan.target import DliTarget, PpfdTarget, Target
from planner.units import format_number


class _Panels(dict[PlaceKind, FieldPanel]):
    """Panels by what they are for, each made when it is first asked for."""

    def __init__(self, make: Callable[[PlaceKind], FieldPanel]) -> None:
        super().__init__()
        self._make = make

    def __missing__(self, kind: PlaceKind) -> FieldPanel:
        panel = self[kind] = self._make(kind)
        return panel


class FieldColumn(QWidget):
    """A list of all that can be selected, over the fields of the one that is."""

    dragging_changed = Signal(bool)
    corners_listed = Signal(bool)
    """Whether a list that names the corners by number is in sight."""
    wall_made = Signal(object)
    """The fields of a wall, when they are first there."""

    def __init__(self, workplace: Workplace) -> None:
        super().__init__()
        self._workplace = workplace
        self.panels: Mapping[PlaceKind, FieldPanel] = _Panels(self._make_panel)
        self._offered: list[Place] = []
        self.chooser = StillCombo(name="What is selected")
        self.chooser.setMaxVisibleItems(24)
        heading = PlainLabel("Fiel&ds of")
        heading.setBuddy(self.chooser)
        # One panel is visible at a time; hidden ones take no room in the scrolled column.
        holder = QWidget()
        stack = theme.column(theme.REST, on=holder, edges=(0, 0, 8, 8))
        self._stack = stack
        self.space_fields = cast("SpaceFields", self.panels[PlaceKind.SPACE])
        self.space_fields.outline_toggle.toggled.connect(self.corners_listed)
        self._scroll = theme.scrolled(holder)
        top = QWidget()
        theme.column(heading, self.chooser, on=top, gap=4, edges=(0, 0, 8, 0))
        theme.column(top, (self._scroll, 1), on=self, gap=8)
        self.chooser.activated.connect(
            lambda row: self._workplace.selection.select(self._offered[row])
        )
        app = QApplication.instance()
        if isinstance(app, QApplication):
            app.focusChanged.connect(self._on_focus_changed)
        self._fields = Paced(workplace.document, self._refresh, self, turn=1)
        workplace.document.changed.connect(self._on_plan_changed)
        workplace.selection.changed.connect(self._on_selection_changed)
        self._on_selection_changed(workplace.selection.current)

    def _make_panel(self, kind: PlaceKind) -> FieldPanel:
        makers: dict[PlaceKind, Callable[[Workplace], FieldPanel]] = {
            PlaceKind.SPACE: SpaceFields,
            PlaceKind.WALL: WallFields,
            PlaceKind.LAMP: LampFields,
            PlaceKind.OBSTACLE: ObstacleFields,
            PlaceKind.CANOPY: CanopyFields,
        }
        flat = partial(SurfaceFields, kind=kind)
        panel = makers.get(kind, flat)(self._workplace)
        panel.hide()
        panel.dragging_changed.connect(self.dragging_changed)
        self._stack.insertWidget(self._stack.count() - 1, panel)
        if kind is PlaceKind.WALL:
            self.wall_made.emit(panel)
        return panel

    @property
    def canopy_fields(self) -> CanopyFields:
        """The fields of canopy, day and target."""
        return cast("CanopyFields", self.panels[PlaceKind.CANOPY])

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
            *all_things(plan),
            *every(plan, PlaceKind.WALL),
            Place(PlaceKind.CANOPY),
            Place(PlaceKind.CEILING),
            Place(PlaceKind.FLOOR),
        ]
        self.chooser.offer([(selection_title(plan, one), None) for one in offered])
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


# -- the canopy: the plane the light is wanted on, for how long, and how much -------------

TARGET_HELP: Final = (
    "The light that is wanted. PPFD is the light arriving at the moment; DLI is what adds up over "
    "a day. A band is a place to begin, not a pass or a fail."
)
ENDS: Final = (("ppfd-low", "From"), ("ppfd-high", "To"), ("dli-low", "From"), ("dli-high", "To"))
OWN = {"": "No target", "ppfd": "Own PPFD band", "dli": "Own DLI band"}
BASIS_TEXT: Final = {
    Basis.PUBLISHED: "Published.",
    Basis.QUOTED: "Quoted second-hand.",
    Basis.MEMORY: "Typical, from memory.",
}


class TargetFields(FieldPanel):
    """A choice of crop and stage, the ends of the band, and where the band comes from."""

    def __init__(self, workplace: Workplace) -> None:
        super().__init__(workplace)
        self._stages: list[tuple[Crop, Stage]] = []
        self.combo = StillCombo()
        self.row = self.add_row("Target", self.combo, TARGET_HELP, wide=True)
        self._fill()
        self.combo.activated.connect(self._choose)
        self.ends = {key: self.add_dial(key, label) for key, label in ENDS}
        self.equal_note = NoteLabel()
        self.source_note = NoteLabel()
        self.hours_button = button("", act=self._take_hours)
        for widget in (self.equal_note, self.hours_button, self.source_note):
            self.add_wide(widget)
        self.end()

    def _fill(self) -> None:
        for text in OWN.values():
            self.combo.addItem(text)
        for crop in self.workplace.shelf.catalogue.crops:
            self.combo.insertSeparator(self.combo.count())
            for stage in crop.stages:
                self.combo.addItem(f"{crop.name}, {stage.name}", len(self._stages))
                self._stages.append((crop, stage))
        self.combo.widen_list()

    # -- showing ------------------------------------------------------------------------

    def refresh(self, plan: Plan) -> None:
        super().refresh(plan)
        line = self._line_of(plan.target)
        self.combo.setCurrentIndex(line)
        stage = self._stage_at(line)
        self._show_equal(plan)
        self._show_source(plan, stage)
        offered = stage is not None and stage.hours_usual != plan.photoperiod_hours
        self.hours_button.setVisible(offered)
        if stage is not None:
            text = f"Use its usual {format_number(stage.hours_usual, 1)} h of light"
            self.hours_button.setText(text)
            self.hours_button.setAccessibleName(text)

    def _show_equal(self, plan: Plan) -> None:
        text = ""
        if isinstance(plan.target, DliTarget):
            band = plan.target.ppfd_band(plan.photoperiod_hours)
            if band is None:
                text = "Without hours of light no PPFD reaches it."
            else:
                hours = format_number(plan.photoperiod_hours, 2)
                text = f"In {hours} h that is {ppfd(band[0])} to {ppfd(band[1], unit=True)} (PPFD)."
                if plan.room_light > 0:
                    text += " What the room brings is not in it."
        self.equal_note.setText(text)
        self.equal_note.setVisible(bool(text))

    def _show_source(self, plan: Plan, stage: Stage | None) -> None:
        parts = [plan.target.source] if plan.target is not None and plan.target.source else []
        if stage is not None:
            parts = parts or [BASIS_TEXT[stage.basis]]
            parts += [stage.note] if stage.note else []
        self.source_note.setText(" ".join(parts))
        self.source_note.setVisible(bool(parts))

    def _line_of(self, target: Target | None) -> int:
        if target is None:
            return 0
        for number, (crop, stage) in enumerate(self._stages):
            if crop.target(stage.key) == target:
                return self.combo.findData(number)
        return 1 if isinstance(target, PpfdTarget) else 2

    def _stage_at(self, line: int) -> Stage | None:
        number = self.combo.itemData(line)
        return None if number is None else self._stages[number][1]

    # -- edits --------------------------------------------------------------------------

    def _choose(self, line: int) -> None:
        number = self.combo.itemData(line)
        if number is not None:
            crop, stage = self._stages[number]
            target: Target | None = crop.target(stage.key)
        else:
            target = _own_start(self.plan, line)
        name = f"Choose target {self.combo.itemText(line)}" if line else "Remove target"
        self.edit(self.row, lambda: edits.changed(self.plan, target=target), name)

    def _take_hours(self) -> None:
        stage = self._stage_at(self._line_of(self.plan.target))
        if stage is not None:
            self.edit(
                self.row,
                lambda: edits.changed(self.plan, photoperiod_hours=stage.hours_usual),
                "Set photoperiod",
            )


def _own_start(plan: Plan, line: int) -> Target | None:
    """A band of one's own that starts from the one in force, in the unit asked for."""
    if line == 0:
        return None
    hours = plan.photoperiod_hours
    band = band_at(plan, OWN_CANOPY)
    low, high = band or (150.0, 250.0)
    if line == 1:
        return PpfdTarget(low=round(low), high=round(high))
    if hours == 0:
        return DliTarget(low=8.0, high=14.0)
    low, high = (round(daily_light_integral(end, hours), 1) for end in (low, high))
    return DliTarget(low=low, high=high)


CLOSED_HELP: Final = (
    "Closed: leaves or a survey board fill the plane, and what lies below gets no light. Open: "
    "the plane is only where the meter is held, and light goes on to the floor and comes back."
)


JUDGE_OWN: Final = "Judge the plan by its own canopy"


class CanopyFields(FieldPanel):
    """Shown while the canopy is selected."""

    def __init__(self, workplace: Workplace) -> None:
        super().__init__(workplace)
        self.height_field = self.add_dial("canopy", "Height")
        self.closed_row, self.closed_switch = self.add_switch(
            "Closed canopy",
            lambda plan, on: edits.set_canopy(plan, closed=on),
            ("Close canopy", "Open canopy"),
            CLOSED_HELP,
        )
        self.reflectance_field = self.add_dial("canopy-reflectance", "Reflectance")
        self.colours_row, self.colours_switch = add_leaf_colours(
            self, lambda plan, colours: edits.set_canopy(plan, wavebands=colours)
        )
        self.judged_note = NoteLabel()
        self.judge_button = button(JUDGE_OWN, "Figures, options and searches speak of it again.")
        self.judge_button.clicked.connect(
            lambda: self.edit(self.closed_row, lambda: edits.judge_by(self.plan, None), JUDGE_OWN)
        )
        self.add_wide(self.judged_note)
        self.add_wide(self.judge_button)
        self.add_heading("Day and target")
        self.hours_field = self.add_dial("photoperiod")
        self.target_fields = TargetFields(workplace)
        self.add_panel(self.target_fields)
        self.end()

    def refresh(self, plan: Plan) -> None:
        super().refresh(plan)
        by = judged(plan)
        self.judged_note.setText(f"The plan is judged by {by.inside(plan)}.")
        for one in (self.judged_note, self.judge_button):
            one.setVisible(by != OWN_CANOPY)
        self.closed_switch.setChecked(plan.canopy.closed)
        self.reflectance_field.row.set_enabled(plan.canopy.closed)
        self.colours_row.set_visible(plan.canopy.closed and lit_in_colours(plan))
        self.colours_switch.setChecked(plan.canopy.wavebands is not None)
