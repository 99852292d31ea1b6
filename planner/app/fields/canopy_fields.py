"""Fields of the canopy: the plane the light is wanted on, for how long, and how much."""

from __future__ import annotations

from typing import Final

from PySide6.QtWidgets import QWidget

from planner.app.fields.panel import FieldPanel, Workplace
from planner.app.fields.target_fields import TargetFields
from planner.plan import edits
from planner.plan.place import Place
from planner.plan.plan import Plan
from planner.plan.quantity import HEIGHT, HOURS, SHARE

HEIGHT_HELP: Final = (
    "How high above the floor the tops of the plants, or the meter, stand. Lamps stay where they "
    "hang, so their hanging height changes with it."
)
CLOSED_HELP: Final = (
    "Closed: leaves or a survey board fill the plane, and what lies below gets no light. Open: "
    "the plane is only where the meter is held, and light goes on to the floor and comes back."
)
REFLECTANCE_HELP: Final = (
    "The part of the light that the leaves send back. Green leaves return about 5 to 10 % "
    "between 400 and 700 nm."
)
PHOTOPERIOD_HELP: Final = (
    "Hours of light in a day. With the PPFD it makes the day's total, the daily light integral "
    "(DLI)."
)


class CanopyFields(FieldPanel):
    """Shown while the canopy is selected."""

    def __init__(self, workplace: Workplace, parent: QWidget | None = None) -> None:
        super().__init__(workplace, parent)
        self.height_field = self.add_quantity(
            "Height",
            HEIGHT,
            lambda plan: plan.canopy.height,
            edits.set_canopy_height,
            "Set canopy height",
            HEIGHT_HELP,
        )
        self.closed_row, self.closed_switch = self.add_switch(
            "Closed canopy",
            lambda plan, on: edits.set_canopy(plan, closed=on),
            ("Close canopy", "Open canopy"),
            CLOSED_HELP,
        )
        self.reflectance_field = self.add_quantity(
            "Reflectance",
            SHARE,
            lambda plan: plan.canopy.reflectance,
            lambda plan, value: edits.set_canopy(plan, reflectance=value),
            "Set canopy reflectance",
            REFLECTANCE_HELP,
        )
        self.add_heading("Day and target")
        self.hours_field = self.add_quantity(
            "Photoperiod",
            HOURS,
            lambda plan: plan.photoperiod_hours,
            lambda plan, value: edits.changed(plan, photoperiod_hours=value),
            "Set photoperiod",
            PHOTOPERIOD_HELP,
        )
        self.target_fields = TargetFields(workplace)
        self.target_fields.dragging_changed.connect(self.dragging_changed)
        self.add_wide(self.target_fields)
        self.end()

    def show_selection(self, selection: Place) -> None:
        super().show_selection(selection)
        self.target_fields.show_selection(selection)

    def refresh(self, plan: Plan) -> None:
        super().refresh(plan)
        self.closed_switch.setChecked(plan.canopy.closed)
        self.reflectance_field.row.set_enabled(plan.canopy.closed)
        self.target_fields.refresh(plan)
