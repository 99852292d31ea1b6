"""Fields of the canopy: the plane the light is wanted on, for how long, and how much."""

from __future__ import annotations

from typing import Final

from PySide6.QtWidgets import QWidget

from planner.app.fields.panel import FieldPanel, Workplace
from planner.app.fields.target_fields import TargetFields
from planner.plan import edits
from planner.plan.plan import Plan

CLOSED_HELP: Final = (
    "Closed: leaves or a survey board fill the plane, and what lies below gets no light. Open: "
    "the plane is only where the meter is held, and light goes on to the floor and comes back."
)


class CanopyFields(FieldPanel):
    """Shown while the canopy is selected."""

    def __init__(self, workplace: Workplace, parent: QWidget | None = None) -> None:
        super().__init__(workplace, parent)
        self.height_field = self.add_dial("canopy", "Height")
        self.closed_row, self.closed_switch = self.add_switch(
            "Closed canopy",
            lambda plan, on: edits.set_canopy(plan, closed=on),
            ("Close canopy", "Open canopy"),
            CLOSED_HELP,
        )
        self.reflectance_field = self.add_dial("canopy-reflectance", "Reflectance")
        self.add_heading("Day and target")
        self.hours_field = self.add_dial("photoperiod")
        self.target_fields = TargetFields(workplace)
        self.add_panel(self.target_fields)
        self.end()

    def refresh(self, plan: Plan) -> None:
        super().refresh(plan)
        self.closed_switch.setChecked(plan.canopy.closed)
        self.reflectance_field.row.set_enabled(plan.canopy.closed)
