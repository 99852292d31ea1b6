"""Fields of the space, of its outline, height and door, and of what stands in it."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from PySide6.QtWidgets import (
    QApplication,
    QCheckBox,
    QComboBox,
    QGridLayout,
    QPushButton,
    QWidget,
)

from planner.app import theme
from planner.app.canvas.items import middle_of_wall
from planner.app.edit_steps import place_obstacle, remove
from planner.app.fields.form import (
    AlertLabel,
    NoteLabel,
    Row,
    StillCombo,
    button,
    fold_button,
    in_tab_order,
    show_ticks,
)
from planner.app.fields.lining_details import LinedPanel
from planner.app.fields.panel import FieldPanel, QuantityField, Workplace
from planner.app.plain import PlainLabel
from planner.app.quantity_box import QuantityBox
from planner.language import inside
from planner.metrics.figures import ppfd
from planner.plan import edits
from planner.plan.additions import SHAPES as OBSTACLES
from planner.plan.lining import Lining
from planner.plan.place import OWN, Place, PlaceKind, band_at
from planner.plan.plan import Plan
from planner.plan.quantity import EXTENT, POSITION
from planner.plan.space import Point
from planner.plan.wavebands import LEAVES, Wavebands


class OutlineList(QWidget):
    """Corners (x, y, with add and remove) and wall lengths; rebuilt when their number changes."""

    def __init__(self, panel: FieldPanel, after: QWidget) -> None:
        """``after`` is what the Tab key reaches before the list."""
        super().__init__(panel)
        self._after = after
        self._stops: list[QWidget] = []
        self._panel = panel
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setHorizontalSpacing(4)
        self._grid.setVerticalSpacing(4)
        self._grid.setColumnStretch(1, 1)
        self._grid.setColumnStretch(2, 1)
        self._fields: list[QuantityField] = []
        self._count = 0

    def show_plan(self, plan: Plan) -> None:
        """Make as many rows as the footprint has corners; the numbers come by refresh."""
        if plan.space.wall_count == self._count:
            return
        focused = QApplication.focusWidget()
        held = focused.accessibleName() if focused and self.isAncestorOf(focused) else ""
        for field in self._fields:
            self._panel.unbind(field)
        self._fields.clear()
        self._stops = [self._after]
        while (item := self._grid.takeAt(0)) is not None:
            widget = item.widget()
            if widget is not None:
                widget.setParent(None)
                widget.deleteLater()
        self._count = plan.space.wall_count
        for column, text in enumerate(("Corner", "x", "y"), start=0):
            self._grid.addWidget(PlainLabel(text, quiet=True), 0, column)
        for index in range(self._count):
            self._add_corner(index, 2 * index + 1)
        start = 2 * self._count + 1
        self._grid.addWidget(PlainLabel("Wall", quiet=True), start, 0)
        self._grid.addWidget(PlainLabel("length", quiet=True), start, 1)
        for index in range(self._count):
            self._add_wall(index, start + 1 + 2 * index)
        in_tab_order(self._stops)
        self._give_focus_back(held)

    def _give_focus_back(self, name: str) -> None:
        """Keep the keyboard where it was: on the button that was pressed."""
        for widget in self.findChildren(QWidget):
            if name and widget.accessibleName() == name:
                widget.setFocus()

    def _add_corner(self, index: int, line: int) -> None:
        label = PlainLabel(str(index + 1))
        alert = AlertLabel()
        self._grid.addWidget(label, line, 0)
        self._grid.addWidget(alert, line + 1, 0, 1, 5)
        self._add_coordinate(index, 0, Row(label, label, label, alert, None, None), line)
        self._add_coordinate(index, 1, Row(label, label, label, alert, None, None), line)
        add = theme.small_button("+", f"Add a corner on the wall after corner {index + 1}")
        remove = theme.small_button("−", f"Remove corner {index + 1}")
        row = Row(label, add, add, alert, None, None)
        add.clicked.connect(
            lambda: self._panel.edit(
                row,
                lambda: edits.add_corner(
                    self._panel.plan, index, middle_of_wall(self._panel.plan, index)
                ),
                "Add corner",
            )
        )
        remove.clicked.connect(
            lambda: self._panel.edit(
                row, lambda: edits.remove_corner(self._panel.plan, index), "Remove corner"
            )
        )
        self._grid.addWidget(add, line, 3)
        self._grid.addWidget(remove, line, 4)
        self._stops += [add, remove]

    def _add_coordinate(self, index: int, axis: int, row: Row, line: int) -> None:
        box = QuantityBox(POSITION, f"Corner {index + 1}, {'xy'[axis]}")
        place, name = Place(PlaceKind.CORNER, index), f"Move corner {index + 1}"
        self._bind(self._panel.dial_field(f"corner-{'xy'[axis]}", row, box, place, name))
        self._grid.addWidget(box, line, 1 + axis)

    def _add_wall(self, index: int, line: int) -> None:
        label = PlainLabel(str(index + 1))
        alert = AlertLabel()
        box = QuantityBox(EXTENT, f"Length of wall {index + 1}")
        row = Row(label, box, box, alert, None, None)
        place, name = Place(PlaceKind.WALL, index), f"Set length of wall {index + 1}"
        self._bind(self._panel.dial_field("wall-length", row, box, place, name))
        lining = theme.small_button("Lining …", f"Show the lining of wall {index + 1}")
        lining.clicked.connect(
            lambda: self._panel.workplace.selection.select(Place(PlaceKind.WALL, index))
        )
        self._grid.addWidget(label, line, 0)
        self._grid.addWidget(box, line, 1)
        self._grid.addWidget(lining, line, 2, 1, 3)
        self._stops.append(lining)
        self._grid.addWidget(alert, line + 1, 0, 1, 5)

    def _bind(self, field: QuantityField) -> None:
        field.box.set_unit(self._panel.workplace.display.unit)
        field.box.setButtonSymbols(QuantityBox.ButtonSymbols.NoButtons)
        self._fields.append(self._panel.bind(field))
        self._stops.append(field.box)


def rectangle(x0: float, y0: float, x1: float, y1: float) -> tuple[Point, ...]:
    """The whole rectangle."""
    return (x0, y0), (x1, y0), (x1, y1), (x0, y1)


def l_shape(x0: float, y0: float, x1: float, y1: float) -> tuple[Point, ...]:
    """The rectangle without its upper right quarter."""
    xm, ym = (x0 + x1) / 2, (y0 + y1) / 2
    return (x0, y0), (x1, y0), (x1, ym), (xm, ym), (xm, y1), (x0, y1)


def without_corner(plan: Plan) -> Plan:
    """The outline as it is, its upper right corner cut off."""
    corners = plan.space.footprint
    return edits.cut_corner(plan, max(range(len(corners)), key=lambda k: sum(corners[k])))


def _inside_bounds(shape: Callable[..., tuple[Point, ...]]) -> Callable[[Plan], Plan]:
    return lambda plan: edits.set_footprint(plan, shape(*plan.space.bounds))


SHAPES: Final = (
    ("Rectangle", _inside_bounds(rectangle), "The whole of the present width and depth."),
    ("L-shape", _inside_bounds(l_shape), "Width and depth without their upper right quarter."),
    ("Cut corner", without_corner, "Cuts the upper right corner off the outline as it is."),
)


class SpaceFields(FieldPanel):
    """What is shown while nothing in the space is selected."""

    def __init__(self, workplace: Workplace) -> None:
        super().__init__(workplace)
        self.name_row, self.name_line = self.add_text(
            "Name",
            lambda plan: plan.name,
            lambda plan, text: edits.changed(plan, name=text),
            "Rename plan",
        )
        self._add_size()
        self.shape_buttons = [self._shape_button(*shape) for shape in SHAPES]
        self.add_buttons(*self.shape_buttons)
        self.shape_row = self.width_field.row
        self._add_door()
        self._add_obstacles()
        self._add_outline()
        self.end()

    def _add_size(self) -> None:
        self.width_field = self.add_dial("width", "Width")
        self.depth_field = self.add_dial("depth", "Depth")
        self.height_field = self.add_dial("space-height", "Height")

    def _shape_button(self, text: str, shape: Callable[[Plan], Plan], tip: str) -> QPushButton:
        made = button(text, tip)
        made.clicked.connect(
            lambda: self.edit(self.shape_row, lambda: shape(self.plan), f"Shape footprint: {text}")
        )
        return made

    def _add_door(self) -> None:
        self.add_heading("Door")
        self.door_combo: QComboBox = StillCombo()
        self.door_row = self.add_row(
            "Opens at",
            self.door_combo,
            "The wall that opens. While it stands open, light that reaches it leaves the space, "
            "whatever lining it carries.",
        )
        self.door_combo.activated.connect(self._on_door_chosen)
        _, self.open_switch = self.add_switch(
            "Door stands open",
            lambda plan, on: edits.with_space(plan, door_open=on),
            ("Open door", "Close door"),
        )
        self.room_fields = [self.add_dial(key) for key in ("room-light", "room-hours")]

    def _add_obstacles(self) -> None:
        self.add_heading("What stands in the light")
        self.obstacle_buttons = [
            button(shape.name, f"Puts a {inside(shape.name)} into the middle of the space.")
            for shape in OBSTACLES
        ]
        self.add_buttons(*self.obstacle_buttons)
        self._obstacle_alert = self.add_alert()
        for made, shape in zip(self.obstacle_buttons, OBSTACLES, strict=True):
            made.setAccessibleName(f"Add {inside(shape.name)}")
            made.clicked.connect(
                lambda _on=False, shape=shape: self._obstacle_alert.say(
                    place_obstacle(self.workplace, shape)
                )
            )

    def _add_outline(self) -> None:
        self.outline_toggle = fold_button("Corners and walls in numbers")
        self.outline = OutlineList(self, self.outline_toggle)
        self.outline.hide()
        self.outline_toggle.toggled.connect(self.outline.setVisible)
        self.add_wide(self.outline_toggle)
        self.add_wide(self.outline)

    def refresh(self, plan: Plan) -> None:
        self.outline.show_plan(plan)
        super().refresh(plan)
        if self.door_combo.count() != plan.space.wall_count + 1:
            self.door_combo.clear()
            self.door_combo.addItem("No door", None)
            for index in range(plan.space.wall_count):
                self.door_combo.addItem(f"Wall {index + 1}", index)
        self.door_combo.setCurrentIndex(0 if plan.space.door is None else plan.space.door + 1)
        self.open_switch.setEnabled(plan.space.door is not None)
        self.open_switch.setChecked(plan.space.door_open)
        for field, shown in zip(
            self.room_fields, (plan.space.door_open, plan.room_light > 0), strict=True
        ):
            field.row.set_visible(shown)

    def _on_door_chosen(self, _line: int) -> None:
        wall = self.door_combo.currentData()
        opens = self.plan.space.door_open and wall is not None
        name = "Remove door" if wall is None else f"Put door on wall {wall + 1}"
        self.edit(
            self.door_row,
            lambda: edits.with_space(self.plan, door=wall, door_open=opens),
            name,
        )


# -- fields of an obstacle -------------------------------------------------------------

MATERIAL_HELP: Final = (
    "What all its faces return. 'Open' stands for black here: all light that hits it is lost."
)


TOP_HELP: Final = (
    "Plants fill its top: a tray, a shelf or a pot. The drawing shows the light on them, and the "
    "figures tell of each canopy and of all."
)


JUDGED_HELP: Final = (
    "Map, figures, options, searches and schedule speak of this canopy and of its target, no more "
    "of the plan's own."
)


def add_leaf_colours(
    panel: FieldPanel, put: Callable[[Plan, Wavebands | None], Plan]
) -> tuple[Row, QCheckBox]:
    """The switch that gives the leaves of a canopy their colours."""
    return panel.add_switch(
        "Reflects as leaves do",
        lambda plan, on: put(plan, LEAVES if on else None),
        ("Give leaves their colours", "Take leaves as grey"),
        "Leaves return more green than blue and red, and most of the far-red. How much of each is "
        "typical, from memory; together it is the reflectance above, over 400-700 nm. Without this "
        "all colours are returned alike.",
    )


def lit_in_colours(plan: Plan) -> bool:
    """Whether the colour of any lamp is known, without which no other colour counts."""
    return any(lamp.model.wavebands is not None for lamp in plan.lamps)


class ObstacleFields(LinedPanel):
    """Shown while an obstacle is selected."""

    def __init__(self, workplace: Workplace) -> None:
        super().__init__(workplace)
        self.several_note = self.add_wide(NoteLabel())
        self.name_row, self.name_line = self.add_text(
            "Name",
            lambda plan: self._part(plan, "name", ""),
            lambda plan, text: self._with(plan, name=text),
            "Name obstacle",
        )
        self.add_heading("Where it stands")
        self.x_field = self.add_dial("obstacle-x", "x")
        self.y_field = self.add_dial("obstacle-y", "y")
        self.underside_field = self.add_dial("underside")
        self.rotation_field = self.add_dial("obstacle-rotation", "Rotation")
        self.add_heading("How large it is")
        self.length_field = self.add_dial("obstacle-length", "Length")
        self.width_field = self.add_dial("obstacle-width", "Width")
        self.thickness_field = self.add_dial("thickness")
        self.below_note = self.add_wide(
            NoteLabel(
                "It lies wholly below the closed canopy, where no light is: it has no effect."
            )
        )
        self.material_row = self.add_lining("Material", "Material of the obstacle", MATERIAL_HELP)
        self._add_canopy()
        self.remove_button = self.add_wide(button("Remove obstacle", "Takes it out of the space."))
        self.add_details("About this material")
        self.remove_button.clicked.connect(lambda: remove(self.workplace, self.chosen))

    def refresh(self, plan: Plan) -> None:
        if self.selection.kind is not PlaceKind.OBSTACLE or not self.selection.fits(plan):
            return
        super().refresh(plan)
        self.show_several(self.several_note, self.name_row)
        all_ = [plan.obstacles[place.index] for place in self.chosen]
        lead, several = all_[0], len(all_) > 1
        below = plan.canopy.closed and all(one.top <= plan.canopy.height for one in all_)
        self.below_note.setVisible(below)
        carried = [one.canopy for one in all_ if one.canopy is not None]
        show_ticks(self.canopy_switch, [one.canopy is not None for one in all_])
        self.target_row.set_visible(bool(carried))
        self.judged_row.set_visible(bool(carried) and not several)
        self.colours_row.set_visible(bool(carried) and lit_in_colours(plan))
        show_ticks(self.colours_switch, [one.wavebands is not None for one in carried])
        self.judged_switch.setChecked(plan.judged_top == self.selection.index)
        show_ticks(self.target_switch, [one.target is not None for one in carried])
        follow = bool(carried) and all(one.target is None for one in carried)
        self.target_note.setVisible(follow)
        band, without = band_at(plan, OWN), "The plan has no target yet."
        ends = band and f"{ppfd(band[0])} to {ppfd(band[1], unit=True)}"
        self.target_note.setText(f"Wanted on it, as in the plan: {ends}." if ends else without)
        self.chooser.show_key(plan, lead.lining)
        self.show_details(plan, lead.lining)

    def _add_canopy(self) -> None:
        self.add_heading("What grows on it")
        _, self.canopy_switch = self.add_switch(
            "Carries a canopy", self._carrying, ("Put canopy on it", "Take canopy off it"), TOP_HELP
        )
        self.leaves_field = self.add_dial("leaves", "Reflectance of leaves")
        self.colours_row, self.colours_switch = add_leaf_colours(
            self,
            lambda plan, colours: self._of_canopies(
                plan, lambda plan, index: edits.change_carried(plan, index, wavebands=colours)
            ),
        )
        self.target_row, self.target_switch = self.add_switch(
            "Target of its own",
            lambda plan, on: self._of_canopies(
                plan, lambda plan, index: edits.set_own_target(plan, index, own=on)
            ),
            ("Give canopy its own target", "Let canopy follow the plan's target"),
            "Without one it has the target of the plan.",
        )
        self.target_note = self.add_wide(NoteLabel())
        self.low_field = self.add_dial("own-low", "From")
        self.high_field = self.add_dial("own-high", "To")
        self.judged_row, self.judged_switch = self.add_switch(
            "by this canopy",
            lambda plan, on: edits.judge_by(plan, self.selection.index if on else None),
            ("Judge the plan by this canopy", "Judge the plan by its own canopy"),
            JUDGED_HELP,
            "Judge the plan",
        )

    def _carrying(self, plan: Plan, on: bool) -> Plan:
        if on:
            return self.on_each(plan, edits.change_carried)
        return self._with(plan, canopy=None)

    def _of_canopies(self, plan: Plan, change: Callable[[Plan, int], Plan]) -> Plan:
        """A change at each of those chosen that carries a canopy."""

        def each(plan: Plan, index: int) -> Plan:
            return plan if plan.obstacles[index].canopy is None else change(plan, index)

        return self.on_each(plan, each)

    def _part(self, plan: Plan, part: str, missing: str) -> str:
        index = self.selection.index
        return str(getattr(plan.obstacles[index], part)) if index < len(plan.obstacles) else missing

    def _with(self, plan: Plan, *linings: Lining, **parts: object) -> Plan:
        return self.on_each(
            plan, lambda plan, index: edits.change_obstacle(plan, index, *linings, **parts)
        )

    def line_with(self, lining: Lining) -> None:
        name = self.plan.obstacles[self.selection.index].name
        many = len(self.chosen)
        what = name if many == 1 else f"{many} obstacles"
        self.edit(
            self.material_row,
            lambda: self._with(self.plan, lining, lining=lining.key),
            f"Make {what} of {lining.name}",
        )
