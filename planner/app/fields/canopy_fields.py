"""Fields of the canopy: the plane the light is wanted on, for how long, and how much."""

from __future__ import annotations

from typing import Final

from PySide6.QtWidgets import QWidget

from planner.app.fields.form import NoteLabel, StillCombo, button
from planner.app.fields.panel import FieldPanel, Workplace
from planner.catalogue.library import Basis, Crop, Stage
from planner.plan import edits
from planner.plan.plan import Plan
from planner.plan.target import DliTarget, PpfdTarget, Target
from planner.units import format_number

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

    def __init__(self, workplace: Workplace, parent: QWidget | None = None) -> None:
        super().__init__(workplace, parent)
        self._stages: list[tuple[Crop, Stage]] = []
        self.combo = StillCombo()
        self.row = self.add_row("Target", self.combo, TARGET_HELP, wide=True)
        self._fill()
        self.combo.activated.connect(self._choose)
        self.ends = {key: self.add_dial(key, label) for key, label in ENDS}
        self.equal_note = NoteLabel()
        self.source_note = NoteLabel()
        self.hours_button = button("")
        self.hours_button.clicked.connect(self._take_hours)
        for widget in (self.equal_note, self.hours_button, self.source_note):
            self.add_wide(widget)
        self.end()

    def _fill(self) -> None:
        for text in OWN.values():
            self.combo.addItem(text)
        for crop in self.workplace.shelf.crops:
            self.combo.insertSeparator(self.combo.count())
            self._stages += [(crop, stage) for stage in crop.stages]
            for stage in crop.stages:
                self.combo.addItem(f"{crop.name}, {stage.name}", (crop.key, stage.key))
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
                text = f"In {hours} h that is {band[0]:.0f} to {band[1]:.0f} µmol m⁻² s⁻¹ (PPFD)."
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
        for crop, stage in self._stages:
            if crop.target(stage.key) == target:
                return self.combo.findText(f"{crop.name}, {stage.name}")
        return 1 if isinstance(target, PpfdTarget) else 2

    def _stage_at(self, line: int) -> Stage | None:
        data = self.combo.itemData(line)
        for crop, stage in self._stages:
            if data is not None and tuple(data) == (crop.key, stage.key):
                return stage
        return None

    # -- edits --------------------------------------------------------------------------

    def _choose(self, line: int) -> None:
        data = self.combo.itemData(line)
        if data is not None:
            crop = next(c for c, _ in self._stages if c.key == data[0])
            target: Target | None = crop.target(data[1])
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
    band = None if plan.target is None else plan.target.ppfd_band(hours)
    low, high = band or (150.0, 250.0)
    if line == 1:
        return PpfdTarget(low=round(low), high=round(high))
    factor = 3600 * hours / 1e6
    if factor == 0:
        return DliTarget(low=8.0, high=14.0)
    return DliTarget(low=round(low * factor, 1), high=round(high * factor, 1))


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
