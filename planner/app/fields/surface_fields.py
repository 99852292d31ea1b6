"""Fields of walls, ceiling and floor: length, and what each carries."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QGridLayout, QRadioButton, QWidget

from planner.app.estimator import Worth
from planner.app.fields.choosers import LiningChooser
from planner.app.fields.form import AlertLabel, NoteLabel, Row, button, in_tab_order
from planner.app.fields.lining_details import LinedPanel
from planner.app.fields.panel import QuantityField, Workplace
from planner.app.plain import PlainLabel
from planner.app.quantity_box import QuantityBox
from planner.language import word
from planner.plan import edits
from planner.plan.dials import Dial
from planner.plan.lining import Lining
from planner.plan.place import Place, PlaceKind
from planner.plan.plan import Plan
from planner.plan.quantity import HEIGHT
from planner.reports.advice import brought_sentence


class ConsideredNote(NoteLabel):
    """Hidden while no list of linings is open.

    Signal: ``considering(lining or None, place)`` with what the hand rests on, and for where.
    """

    considering = Signal(object, object)

    def __init__(self) -> None:
        super().__init__("")
        self._chooser: LiningChooser | None = None
        self._lining: Lining | None = None
        self.setAccessibleName("What this lining would bring")
        self.hide()

    def follow(self, chooser: LiningChooser, worth: Worth | None) -> None:
        """Tell what is considered in a list."""
        if worth is None:
            return
        chooser.considered.connect(lambda lining: self._consider(chooser, lining))
        worth.told.connect(self._show)

    def _consider(self, chooser: LiningChooser, lining: Lining | None) -> None:
        self._chooser, self._lining = chooser, lining
        self._show()
        self.considering.emit(lining, chooser.place)

    def _show(self) -> None:
        lining, chooser = self._lining, self._chooser
        if lining is None or chooser is None:
            self.hide()
            return
        known = chooser.brings(lining)
        if known is None:
            self.setText(f"{lining.name}: what it would bring is being computed …")
        else:
            self.setText(f"{brought_sentence(lining.name, *known)}.")
        self.show()


class SurfaceFields(LinedPanel):
    """Shown while the ceiling or the floor is selected."""

    def __init__(self, workplace: Workplace, kind: PlaceKind) -> None:
        super().__init__(workplace)
        self._kind = kind
        self.row = self.add_lining(
            "Lining", f"Lining of the {word(kind)}", worth=workplace.worth,
            place=lambda: Place(kind),
        )  # fmt: skip
        self.considered = self.add_wide(ConsideredNote())
        self.considered.follow(self.chooser, workplace.worth)
        self.closed_note = self.add_wide(
            NoteLabel(
                "Under a closed canopy the floor gets no light; its lining counts once the canopy "
                "is open."
            )
        )
        self.add_details("About this lining")

    def refresh(self, plan: Plan) -> None:
        super().refresh(plan)
        key = plan.floor if self._kind is PlaceKind.FLOOR else plan.ceiling
        self.closed_note.setVisible(self._kind is PlaceKind.FLOOR and plan.canopy.closed)
        self.chooser.show_key(plan, key)
        self.show_details(plan, key)

    def line_with(self, lining: Lining) -> None:
        build = edits.line_floor if self._kind is PlaceKind.FLOOR else edits.line_ceiling
        self.edit(
            self.row,
            lambda: build(self.plan, lining),
            f"Line {word(self._kind)} with {lining.name}",
        )


class BandLine:
    """One band in the list: a mark to select it, its lining, and its upper edge."""

    def __init__(self, panel: WallFields, grid: QGridLayout, band: int, line: int) -> None:
        self.mark = QRadioButton(str(band + 1))
        self.mark.setAccessibleName(f"Band {band + 1} from the floor up")
        self.mark.setToolTip("Select this band")
        self.chooser = LiningChooser(
            panel.workplace.shelf,
            f"Lining of band {band + 1}, from the floor up",
            worth=panel.workplace.worth,
            place=lambda: Place(PlaceKind.WALL, panel.selection.index, band),
            for_all=True,
        )
        self.edge_label = PlainLabel("up to")
        self.edge = QuantityBox(HEIGHT, f"Upper edge of band {band + 1}")
        self.edge_label.setBuddy(self.edge)
        self.to_ceiling = NoteLabel("the ceiling")
        self.alert = AlertLabel()
        grid.addWidget(self.mark, line, 0)
        grid.addWidget(self.chooser, line, 1, 1, 2)
        grid.addWidget(self.edge_label, line + 1, 1)
        grid.addWidget(self.edge, line + 1, 2)
        grid.addWidget(self.to_ceiling, line + 1, 2)
        grid.addWidget(self.alert, line + 2, 0, 1, 3)
        self.row = Row(self.edge_label, self.edge, self.edge, self.alert, None, None)

    def widgets(self) -> tuple[QWidget, ...]:
        """Everything to take away with the line."""
        return (
            self.mark,
            self.chooser,
            self.edge_label,
            self.edge,
            self.to_ceiling,
            self.alert,
        )


class WallFields(LinedPanel):
    """Shown while a wall, or one of its bands, is selected."""

    def __init__(self, workplace: Workplace) -> None:
        super().__init__(workplace)
        self.length_field = self.add_dial("wall-length", "Length")
        self.door_note = self.add_wide(
            NoteLabel("This wall is the door and stands open: light leaves here.")
        )
        self.add_heading("Lining, from the floor up")
        self._list = QWidget(self)
        self._bands = QGridLayout(self._list)
        self._bands.setContentsMargins(0, 0, 0, 0)
        self._bands.setHorizontalSpacing(8)
        self._bands.setVerticalSpacing(4)
        self._bands.setColumnStretch(2, 1)
        self.add_wide(self._list)
        self.lines: list[BandLine] = []
        self._edges: list[QuantityField] = []
        self.considered = self.add_wide(ConsideredNote())
        self.dirt_field = self.add_dial("dirt", "Dirt on this band")
        self.split_button = button("Split band", "Divides the selected band at half its height.")
        self.merge_button = button(
            "Merge up", "Takes away the edge above the selected band; its lining runs on upwards."
        )
        self.add_buttons(self.split_button, self.merge_button)
        self.everywhere_button = self.add_wide(
            button("Use on all walls", "Gives every wall the bands and linings of this one.")
        )
        self.light_button = self.add_wide(
            button(
                "Its light on the map",
                "Shows how much of the light at each place met this wall on its way, as long as "
                "the wall is selected. Resting the pointer on a wall shows it too.",
            )
        )
        self.light_button.setCheckable(True)
        self.alert = self.add_alert()
        self.add_details("About this lining")
        self.split_button.clicked.connect(self._split)
        self.merge_button.clicked.connect(self._merge)
        self.everywhere_button.clicked.connect(self._use_everywhere)

    @property
    def _band(self) -> int:
        """The band that is worked on: the lowest while the whole wall is selected."""
        return self.selection.band or 0

    def places_of(self, dial: Dial, _plan: Plan) -> tuple[Place, ...]:
        """The wall, and the band that is worked on for what bands have."""
        band = self._band if dial.key == "dirt" else None
        return (Place(PlaceKind.WALL, self.selection.index, band),)

    def show_selection(self, selection: Place) -> None:
        if selection.index != self.selection.index:
            self._clear_lines()
        self.selection = selection
        self._rebuild(self.plan)
        super().show_selection(selection)

    def refresh(self, plan: Plan) -> None:
        if self.selection.kind is not PlaceKind.WALL or not self.selection.fits(plan):
            return
        self._rebuild(plan)
        super().refresh(plan)
        cover = plan.walls[self.selection.index]
        self.door_note.setVisible(plan.wall_opens(self.selection.index))
        for band, line in enumerate(self.lines):
            line.chooser.show_key(plan, cover.bands[band].lining)
            line.mark.setChecked(band == self._band)
            last = band == len(self.lines) - 1
            line.edge.setVisible(not last)
            line.to_ceiling.setVisible(last)
        self.merge_button.setEnabled(self._band < len(cover.bands) - 1)
        self.show_details(plan, cover.bands[self._band].lining)

    # -- the list of bands --------------------------------------------------------------

    def _clear_lines(self) -> None:
        for field in self._edges:
            self.unbind(field)
        self._edges.clear()
        for line in self.lines:
            for widget in line.widgets():
                self._bands.removeWidget(widget)
                widget.hide()
                widget.deleteLater()
        self.lines.clear()

    def _rebuild(self, plan: Plan) -> None:
        count = len(plan.walls[self.selection.index].bands)
        if count == len(self.lines):
            return
        self._clear_lines()
        for band in range(count):
            line = BandLine(self, self._bands, band, 3 * band)
            line.edge.set_unit(self.workplace.display.unit)
            self.considered.follow(line.chooser, self.workplace.worth)
            line.chooser.chosen.connect(lambda lining, band=band: self._line(band, lining))
            line.mark.clicked.connect(lambda _on, band=band: self._select(band))
            self.lines.append(line)
            self._edges.append(self.bind(self._edge_field(line, band)))
        stops = [stop for line in self.lines for stop in (line.mark, line.chooser, line.edge)]
        dirt = self.dirt_field.row
        before, after = self.length_field.row.last_stop, self.split_button
        in_tab_order([before, *stops, dirt.control, dirt.last_stop, after])

    def _edge_field(self, line: BandLine, band: int) -> QuantityField:
        place = Place(PlaceKind.WALL, self.selection.index, band)
        return self.dial_field("band-edge", line.row, line.edge, place)

    # -- steps --------------------------------------------------------------------------

    def _select(self, band: int) -> None:
        self.workplace.selection.select(Place(PlaceKind.WALL, self.selection.index, band))

    def line_with(self, lining: Lining) -> None:
        self._line(self._band, lining)

    def _line(self, band: int, lining: Lining) -> None:
        wall = self.selection.index
        self._select(band)
        if self.lines[band].chooser.on_all:
            self.edit(
                self.lines[band].row,
                lambda: edits.line_all_walls(self.plan, lining),
                f"Line all walls with {lining.name}",
            )
            return
        self.edit(
            self.lines[band].row,
            lambda: edits.line_wall(self.plan, wall, band, lining),
            f"Line wall {wall + 1} with {lining.name}",
        )

    def _split(self) -> None:
        wall, band = self.selection.index, self._band
        low = _top(self.plan, wall, band - 1) if band else 0.0
        middle = round((low + _top(self.plan, wall, band)) / 2, 2)
        self._attempt(lambda: edits.split_band(self.plan, wall, band, middle), "Split band")

    def _merge(self) -> None:
        wall, band = self.selection.index, self._band
        self._attempt(lambda: edits.merge_band(self.plan, wall, band), "Merge bands")

    def _use_everywhere(self) -> None:
        cover = self.plan.walls[self.selection.index]

        def all_walls() -> Plan:
            plan = self.plan
            return edits.changed(plan, walls=tuple(cover for _ in plan.walls))

        self._attempt(all_walls, "Line all walls alike")

    def _attempt(self, build: Callable[[], Plan], name: str) -> None:
        row = Row(self.alert, self.alert, self.alert, self.alert, None, None)
        self.edit(row, build, name)


def _top(plan: Plan, wall: int, band: int) -> float:
    top = plan.walls[wall].bands[band].top
    return plan.space.height if top is None else top
