"""Fields of a lamp: where it hangs, how much it gives, and what kind it is."""

from __future__ import annotations

from PySide6.QtWidgets import QWidget

from planner.app.edit_steps import hang_lamp, remove_lamp, twin_lamp
from planner.app.fields.form import NoteLabel, button
from planner.app.fields.lamp_chooser import LampChooser, lamp_facts
from planner.app.fields.lamp_kind_fields import LampKindFields
from planner.app.fields.panel import FieldPanel, Workplace
from planner.plan import edits
from planner.plan.lamp import Lamp, LampModel
from planner.plan.place import Place, PlaceKind
from planner.plan.plan import Plan
from planner.units import format_number


class LampFields(FieldPanel):
    """Shown while a lamp is selected."""

    def __init__(self, workplace: Workplace, parent: QWidget | None = None) -> None:
        super().__init__(workplace, parent)
        self.chooser = LampChooser(workplace.shelf)
        self.chooser_row = self.add_row("Kind of lamp", self.chooser, wide=True)
        self.facts = NoteLabel()
        self.add_wide(self.facts)
        self.label_row, self.label_line = self.add_text(
            "Name of this lamp",
            self._label,
            lambda plan, text: edits.change_lamp(plan, self.selection.index, label=text),
            "Name lamp",
        )
        self.label_line.setPlaceholderText("none; it goes by its number")
        self.add_heading("Where it hangs")
        self.height_field = self.add_dial("height")
        self.x_field = self.add_dial("lamp-x", "x")
        self.y_field = self.add_dial("lamp-y", "y")
        self.rotation_field = self.add_dial("lamp-rotation", "Rotation")
        self.output_field = self.add_dial("output")
        self.add_button = button("Add lamp", "Hangs one more of this kind. Key: L")
        self.duplicate_button = button("Duplicate", "Hangs a second one like this beside it.")
        self.remove_button = button("Remove", "Takes this lamp down.")
        self.add_buttons(self.add_button, self.duplicate_button, self.remove_button)
        self.alert = self.add_alert()
        self.kind_fields = LampKindFields(workplace)
        self.add_panel(self.kind_fields)
        self.end()
        self.chooser.chosen.connect(self._choose)
        self.add_button.clicked.connect(lambda: self.alert.say(hang_lamp(workplace)))
        self.duplicate_button.clicked.connect(
            lambda: self.alert.say(twin_lamp(workplace, self.selection.index))
        )
        self.remove_button.clicked.connect(lambda: remove_lamp(workplace, self.selection.index))
        workplace.shelf.changed.connect(lambda: self.refresh(self.plan))

    def show_selection(self, selection: Place) -> None:
        self.alert.say("")
        self.chooser_row.clear_error()
        super().show_selection(selection)

    def refresh(self, plan: Plan) -> None:
        if self.selection.kind is not PlaceKind.LAMP or not self.selection.fits(plan):
            return
        super().refresh(plan)
        lamp = plan.lamps[self.selection.index]
        self.chooser.show_model(lamp.model)
        self.facts.setText(facts_text(lamp))

    def _label(self, plan: Plan) -> str:
        index = self.selection.index
        return plan.lamps[index].label if index < len(plan.lamps) else ""

    def _choose(self, model: LampModel) -> None:
        self.edit(
            self.chooser_row,
            lambda: edits.change_lamp(self.plan, self.selection.index, model=model),
            f"Choose lamp {model.name}",
        )


def facts_text(lamp: Lamp) -> str:
    """What this lamp gives and takes at its output."""
    if lamp.output_percent == 100:
        return f"Gives {lamp_facts(lamp.model)}."
    output, ppf = format_number(lamp.output_percent, 1), format_number(lamp.ppf, 1)
    return (
        f"At {output} % it gives {ppf} µmol/s from {format_number(lamp.watts, 1)} W; "
        f"at full output {lamp_facts(lamp.model)}."
    )
