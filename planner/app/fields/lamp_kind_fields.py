"""Fields of a lamp's kind: photon flux, watts, beam, and the size of what shines."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, Final

from PySide6.QtWidgets import QLineEdit, QWidget

from planner.app.fields.form import NoteLabel, button
from planner.app.fields.lamp_light_fields import LampLightFields
from planner.app.fields.panel import FieldPanel, Workplace
from planner.app.fields.profile_words import profile_words
from planner.app.fields.still_combo import StillCombo
from planner.catalogue.library import CatalogueError
from planner.plan import edits
from planner.plan.lamp import (
    BarsBody,
    Body,
    LampModel,
    PanelBody,
    PointBody,
)
from planner.plan.place import Place, PlaceKind
from planner.plan.plan import Plan
from planner.plan.refusal import refusal

BODY_KINDS: Final = (("point", "Small bulb or spot"), ("panel", "Board or bar"), ("bars", "Bars"))


class LampKindFields(FieldPanel):
    """The lower part of a lamp's fields: edits the kind of this one lamp."""

    def __init__(self, workplace: Workplace, parent: QWidget | None = None) -> None:
        super().__init__(workplace, parent)
        self.add_heading("What kind it is")
        self.ppf_field = self.add_dial("ppf")
        self.watts_field = self.add_dial("watts")
        self.beam_field = self.add_dial("beam")
        self.profile_note = NoteLabel()
        self.add_wide(self.profile_note)
        self.light_fields = LampLightFields(workplace.spectra)
        self.add_wide(self.light_fields)
        self.body_combo = StillCombo()
        for kind, text in BODY_KINDS:
            self.body_combo.addItem(text, kind)
        self.body_row = self.add_row("Shines from", self.body_combo)
        self.body_combo.activated.connect(self._choose_body)
        self.length_field = self.add_dial("lamp-length", "Length")
        self.width_field = self.add_dial("lamp-width", "Width")
        self.count_field = self.add_dial("bars", "Bars")
        self.bar_width_field = self.add_dial("bar-width")
        self.housing_field = self.add_dial("housing")
        self._add_keeping()
        self.end()

    def _add_keeping(self) -> None:
        self.keep_button = button(
            "Save as own lamp …", "Keeps this kind of lamp in your library, under a name."
        )
        self.keep_button.setCheckable(True)
        self.add_wide(self.keep_button)
        self.keep_line = QLineEdit()
        self.keep_row = self.add_row("Name", self.keep_line)
        self.save_button = button("Save", "Keeps the lamp in your library.")
        self.add_wide(self.save_button)
        self.update_button = button(
            "Update own lamp", "Writes these numbers into the entry of your library."
        )
        self.delete_button = button(
            "Delete own lamp", "Takes the entry out of your library; plans that use it keep it."
        )
        self.own_bar = self.add_buttons(self.update_button, self.delete_button)
        self.update_button.clicked.connect(
            lambda: self._in_library(self.workplace.shelf.save_lamp, self._model(self.plan))
        )
        self.delete_button.clicked.connect(
            lambda: self._in_library(self.workplace.shelf.delete_lamp, self._model(self.plan).key)
        )
        self.own_alert = self.add_alert()
        self.keep_button.toggled.connect(self._show_keeping)
        self.save_button.clicked.connect(self._save)
        self.keep_line.returnPressed.connect(self._save)
        self._show_keeping(False)

    # -- showing ------------------------------------------------------------------------

    def show_selection(self, selection: Place) -> None:
        self.keep_button.setChecked(False)
        self.body_row.clear_error()
        self.own_alert.say("")
        super().show_selection(selection)

    def refresh(self, plan: Plan) -> None:
        if self.selection.kind is not PlaceKind.LAMP or not self.selection.fits(plan):
            return
        model = self._model(plan)
        self.body_combo.setCurrentIndex(self.body_combo.findData(model.body.kind))
        self.profile_note.setText(profile_words(model.profile))
        self.light_fields.show_model(model)
        own = model.key in self.workplace.shelf.catalogue.own_lamps
        self.own_bar.setVisible(own)
        self.update_button.setEnabled(
            own and self.workplace.shelf.catalogue.lamp(model.key) != model
        )
        super().refresh(plan)

    def _show_keeping(self, shown: bool) -> None:
        self.keep_row.set_visible(shown)
        self.save_button.setVisible(shown)
        if shown:
            self.keep_line.setText(f"{self._model(self.plan).name} (own)")
            self.keep_line.setFocus()
            self.keep_line.selectAll()

    # -- edits --------------------------------------------------------------------------

    def _model(self, plan: Plan) -> LampModel:
        return plan.lamps[self.selection.index].model

    def _with(self, plan: Plan, **parts: Any) -> Plan:
        old = self._model(plan)
        kept = {name: getattr(old, name) for name in LampModel.model_fields}
        model = LampModel.model_validate({**kept, **parts})
        return edits.change_lamp(plan, self.selection.index, model=model)

    def _choose_body(self, _line: int) -> None:
        kind = self.body_combo.currentData()
        if kind != self._model(self.plan).body.kind:
            self.edit(
                self.body_row,
                lambda: self._with(self.plan, body=body_of(kind, self._model(self.plan))),
                "Set lamp shape",
            )

    def _in_library(self, act: Callable[[Any], None], what: Any) -> None:
        """Change the library, which is no part of the plan: nothing to undo."""
        try:
            act(what)
        except CatalogueError as error:
            self.own_alert.say(str(error))
        else:
            self.own_alert.say("")

    def _save(self) -> None:
        name = self.keep_line.text().strip()
        shelf = self.workplace.shelf
        old = self._model(self.plan)
        kept = {part: getattr(old, part) for part in LampModel.model_fields}
        try:
            model = LampModel.model_validate(
                {**kept, "name": name, "key": shelf.own_lamp_key(name), "source": "Own entry."}
            )
            shelf.save_lamp(model)
        except ValueError as error:
            self.keep_row.show_error(refusal(error, self.workplace.display.unit))
        except CatalogueError as error:
            self.keep_row.show_error(str(error))
        else:
            self.keep_button.setChecked(False)
            self.edit(
                self.keep_row,
                lambda: edits.change_lamp(self.plan, self.selection.index, model=model),
                "Save as own lamp",
            )


def body_of(kind: str, model: LampModel) -> Body:
    """A body of another kind, as large as the old one where that had a size."""
    length, width = model.size
    length, width = length or 0.3, width or 0.3
    if kind == "point":
        return PointBody()
    if kind == "panel":
        return PanelBody(length=length, width=width)
    return BarsBody(count=4, length=length, width=width, bar_width=max(width / 10, 0.005))
