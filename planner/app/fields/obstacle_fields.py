"""Fields of an obstacle: what it is called, where it stands, how large and of what."""

from __future__ import annotations

from typing import Final

from PySide6.QtWidgets import QWidget

from planner.app.edit_steps import remove_obstacle
from planner.app.fields.choosers import LiningChooser
from planner.app.fields.form import NoteLabel, button
from planner.app.fields.lining_details import LiningDetails
from planner.app.fields.panel import FieldPanel, Workplace
from planner.plan import edits
from planner.plan.lining import Lining
from planner.plan.place import Place, PlaceKind
from planner.plan.plan import Plan

MATERIAL_HELP: Final = (
    "What all its faces return. 'Open' stands for black here: all light that hits it is lost."
)


class ObstacleFields(FieldPanel):
    """Shown while an obstacle is selected."""

    def __init__(self, workplace: Workplace, parent: QWidget | None = None) -> None:
        super().__init__(workplace, parent)
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
        self.below_note = NoteLabel(
            "It lies wholly below the closed canopy, where no light is: it has no effect."
        )
        self.add_wide(self.below_note)
        self.chooser = LiningChooser(workplace.shelf, "Material of the obstacle")
        self.material_row = self.add_row("Material", self.chooser, MATERIAL_HELP, wide=True)
        self.remove_button = button("Remove obstacle", "Takes it out of the space.")
        self.add_wide(self.remove_button)
        self.add_heading("About this material")
        self.details = LiningDetails(workplace.shelf)
        self.add_wide(self.details)
        self.end()
        self.chooser.chosen.connect(self._line)
        self.details.copied.connect(self._line)
        self.details.changed.connect(self.change_lining)
        self.remove_button.clicked.connect(
            lambda: remove_obstacle(self.workplace, self.selection.index)
        )
        workplace.shelf.changed.connect(lambda: self.refresh(self.plan))

    def show_selection(self, selection: Place) -> None:
        self.material_row.clear_error()
        super().show_selection(selection)

    def refresh(self, plan: Plan) -> None:
        if self.selection.kind is not PlaceKind.OBSTACLE or not self.selection.fits(plan):
            return
        super().refresh(plan)
        obstacle = plan.obstacles[self.selection.index]
        self.below_note.setVisible(plan.canopy.closed and obstacle.top <= plan.canopy.height)
        self.chooser.show_key(plan, obstacle.lining)
        self.details.show_lining(
            plan.lining(obstacle.lining), {lining.key for lining in plan.linings}
        )

    def _part(self, plan: Plan, part: str, missing: str) -> str:
        index = self.selection.index
        return str(getattr(plan.obstacles[index], part)) if index < len(plan.obstacles) else missing

    def _with(self, plan: Plan, **parts: object) -> Plan:
        return edits.change_obstacle(plan, self.selection.index, **parts)

    def _line(self, lining: Lining) -> None:
        index = self.selection.index
        self.edit(
            self.material_row,
            lambda: edits.change_obstacle(self.plan, index, lining, lining=lining.key),
            f"Make {self.plan.obstacles[index].name} of {lining.name}",
        )
