"""Fields of the ceiling or the floor: what it carries."""

from __future__ import annotations

from PySide6.QtWidgets import QWidget

from planner.app.fields.considered import ConsideredNote
from planner.app.fields.form import NoteLabel
from planner.app.fields.lining_chooser import LiningChooser
from planner.app.fields.lining_details import LiningDetails
from planner.app.fields.panel import FieldPanel, Workplace
from planner.plan import edits
from planner.plan.lining import Lining
from planner.plan.place import Place, PlaceKind
from planner.plan.plan import Plan


class SurfaceFields(FieldPanel):
    """Shown while the ceiling or the floor is selected."""

    def __init__(
        self, workplace: Workplace, kind: PlaceKind, parent: QWidget | None = None
    ) -> None:
        super().__init__(workplace, parent)
        self._kind = kind
        self.chooser = LiningChooser(
            workplace.shelf,
            f"Lining of the {kind.value}",
            worth=workplace.worth,
            place=lambda: Place(kind),
        )
        self.row = self.add_row("Lining", self.chooser, wide=True)
        self.considered = ConsideredNote()
        self.considered.follow(self.chooser, workplace.worth)
        self.add_wide(self.considered)
        self.closed_note = NoteLabel(
            "Under a closed canopy the floor gets no light; its lining counts once the canopy "
            "is open."
        )
        self.add_wide(self.closed_note)
        self.add_heading("About this lining")
        self.details = LiningDetails(workplace.shelf)
        self.add_wide(self.details)
        self.end()
        self.chooser.chosen.connect(self._line)
        self.details.copied.connect(self._line)
        self.details.changed.connect(self.change_lining)
        workplace.shelf.changed.connect(lambda: self.refresh(self.plan))

    def refresh(self, plan: Plan) -> None:
        super().refresh(plan)
        key = plan.floor if self._kind is PlaceKind.FLOOR else plan.ceiling
        self.closed_note.setVisible(self._kind is PlaceKind.FLOOR and plan.canopy.closed)
        self.chooser.show_key(plan, key)
        self.details.show_lining(plan.lining(key), {lining.key for lining in plan.linings})

    def _line(self, lining: Lining) -> None:
        build = edits.line_floor if self._kind is PlaceKind.FLOOR else edits.line_ceiling
        self.edit(
            self.row,
            lambda: build(self.plan, lining),
            f"Line {self._kind.value} with {lining.name}",
        )
