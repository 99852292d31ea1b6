"""Fields of a lamp: where it hangs, how much it gives, and what kind it is."""

from __future__ import annotations

from typing import Final

from PySide6.QtWidgets import QWidget

from planner.app.edit_steps import hang_lamp, remove_lamp, twin_lamp
from planner.app.fields.form import NoteLabel, button
from planner.app.fields.lamp_chooser import LampChooser, lamp_facts
from planner.app.fields.lamp_kind_fields import LampKindFields
from planner.app.fields.panel import FieldPanel, QuantityField, Workplace
from planner.plan import edits
from planner.plan.lamp import Lamp, LampModel
from planner.plan.place import Place, PlaceKind
from planner.plan.plan import Plan
from planner.plan.quantity import ANGLE, HANGING_HEIGHT, PERCENT, POSITION, Quantity
from planner.units import format_number

HANGING_HELP: Final = (
    "From the lamp's lit face down to the canopy, which is the plane the plants' tops stand at. "
    "Higher gives less light, more evenly."
)
OUTPUT_HELP: Final = (
    "The dimmer: light and watts both follow it in proportion. Real lamps often do a little "
    "better when dimmed."
)


class LampFields(FieldPanel):
    """Shown while a lamp is selected."""

    def __init__(self, workplace: Workplace, parent: QWidget | None = None) -> None:
        super().__init__(workplace, parent)
        self.chooser = LampChooser(workplace.shelf)
        self.chooser_row = self.add_row("PlaceKind of lamp", self.chooser, wide=True)
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
        self.height_field = self._number(
            "Hanging height", HANGING_HEIGHT, "hanging_height", "Set lamp height", HANGING_HELP
        )
        self.x_field = self._number("x", POSITION, "x", "Move lamp", "Right of the zero corner.")
        self.y_field = self._number("y", POSITION, "y", "Move lamp", "Back of the zero corner.")
        self.rotation_field = self._number(
            "Rotation", ANGLE, "rotation_deg", "Rotate lamp", "Counter-clockwise, seen from above."
        )
        self.output_field = self._number(
            "Output", PERCENT, "output_percent", "Set lamp output", OUTPUT_HELP
        )
        self.add_button = button("Add lamp", "Hangs one more of this kind. Key: L")
        self.duplicate_button = button("Duplicate", "Hangs a second one like this beside it.")
        self.remove_button = button("Remove", "Takes this lamp down.")
        self.add_buttons(self.add_button, self.duplicate_button, self.remove_button)
        self.alert = self.add_alert()
        self.kind_fields = LampKindFields(workplace)
        self.kind_fields.dragging_changed.connect(self.dragging_changed)
        self.add_wide(self.kind_fields)
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
        self.kind_fields.show_selection(selection)

    def refresh(self, plan: Plan) -> None:
        if self.selection.kind is not PlaceKind.LAMP or not self.selection.fits(plan):
            return
        super().refresh(plan)
        self.kind_fields.refresh(plan)
        lamp = plan.lamps[self.selection.index]
        self.chooser.show_model(lamp.model)
        self.facts.setText(facts_text(lamp))

    def _label(self, plan: Plan) -> str:
        index = self.selection.index
        return plan.lamps[index].label if index < len(plan.lamps) else ""

    def _number(
        self, label: str, quantity: Quantity, part: str, step_name: str, explanation: str
    ) -> QuantityField:
        return self.add_quantity(
            label,
            quantity,
            lambda plan: getattr(plan.lamps[self.selection.index], part),
            lambda plan, value: edits.change_lamp(plan, self.selection.index, **{part: value}),
            step_name,
            explanation,
        )

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
