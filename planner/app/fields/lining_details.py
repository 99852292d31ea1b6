"""What is known of a lining, its cautions, and the way to one with one's own numbers."""

from __future__ import annotations

from typing import Any, Final

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QLineEdit, QPushButton

from planner.app.fields.choosers import LiningChooser
from planner.app.fields.form import NoteLabel, Row, button, fold_button
from planner.app.fields.panel import FieldForm, FieldPanel, Workplace
from planner.catalogue.library import CatalogueError
from planner.language import inside
from planner.metrics.figures import percent
from planner.plan.edits import changed
from planner.plan.lining import Lining
from planner.plan.plan import Plan
from planner.plan.quantity import SHARE, WRINKLE
from planner.plan.refusal import refusal
from planner.plan.wavebands import BAND_WORDS, Wavebands

REFLECTANCE_HELP: Final = (
    "Of the light that falls on the lining, the part that comes back, over 400-700 nm and all "
    "directions."
)
SPECULAR_HELP: Final = (
    "Of the light that comes back, the part that leaves as from a mirror. The rest is scattered "
    "evenly, as from matt paint."
)
BAND_HELP: Final = (
    "Reflectance in this part of the spectrum, where you know it: blue 400-500 nm, green 500-600, "
    "red 600-700, far-red 700-750. Only their proportions count, and only for lamps whose colours "
    "the plan counts. No lining of the catalogue has colours: type your own, or leave all empty "
    "for one without."
)
ALIKE: Final = "as all"
WRINKLE_HELP: Final = (
    "How far creases spread the mirror-like part: 0 is a flat mirror, 0.25 a creased film, 1 "
    "hardly a mirror any more. It takes no light away, and counts only where there is a mirror "
    "share."
)


class LiningDetails(FieldForm):
    """Numbers, source and cautions of one lining.

    Signals: ``copied`` carries a new lining of the user's own to be used here, ``changed``
    one whose numbers were changed under the key it has.
    """

    copied = Signal(object)
    changed = Signal(object)

    def __init__(self, workplace: Workplace) -> None:
        super().__init__(workplace.document, workplace.display)
        self._shelf = workplace.shelf
        self._lining: Lining | None = None
        self._taken: set[str] = set()
        self.facts = NoteLabel()
        self.cautions = NoteLabel()
        self.source = NoteLabel()
        self.source_button = fold_button("Where the numbers come from", self.source)
        for widget in (self.facts, self.cautions, self.source_button, self.source):
            self.add_wide(widget)
        self.cautions.setForegroundRole(self.foregroundRole())
        self.copy_button = self._opening(
            "Edit a copy …", "Makes a lining of your own from this one, kept in your library."
        )
        self.edit_button = self._opening(
            "Edit own lining …", "Changes its numbers in your library and in this plan."
        )
        self.delete_button = button(
            "Delete", "Takes it out of your library; plans that use it keep their copy."
        )
        self.add_buttons(self.copy_button)
        self.own_bar = self.add_buttons(self.edit_button, self.delete_button)
        self.name_line = QLineEdit()
        self.name_row = self.add_row("Name", self.name_line)
        self.reflectance_row, self.reflectance_box = self.add_number(
            "Reflectance", SHARE, 0.0, REFLECTANCE_HELP
        )
        self.specular_row, self.specular_box = self.add_number(
            "Mirror share", SHARE, 0.0, SPECULAR_HELP
        )
        self.wrinkle_row, self.wrinkle_box = self.add_number("Wrinkle", WRINKLE, 0.0, WRINKLE_HELP)
        for box in self.boxes:
            box.setAccessibleName(f"{box.accessibleName()} of the lining")
        self.bands_button = self.add_wide(fold_button("Reflectance by colour"))
        self.band_rows = {
            band: self.add_optional(words, SHARE, BAND_HELP) for band, words in BAND_WORDS.items()
        }
        for _, line in self.band_rows.values():
            line.setAccessibleName(f"{line.accessibleName()} of the lining")
            line.entered.connect(lambda number, line=line: line.show_number(number, ALIKE))
        self.save_button = self.add_wide(
            button("Save and use", "Keeps the lining in your library and uses it.", act=self._save)
        )
        self.alert = self.add_alert()
        self.copy_button.toggled.connect(lambda on: self._on_opened(self.copy_button, on=on))
        self.edit_button.toggled.connect(lambda on: self._on_opened(self.edit_button, on=on))
        self.delete_button.clicked.connect(self._delete)
        self.name_line.returnPressed.connect(self._save)
        self.bands_button.toggled.connect(lambda _on: self._show_bands())
        self._show_rows(shown=False)

    def _opening(self, text: str, tip: str) -> QPushButton:
        made = button(text, tip)
        made.setCheckable(True)
        return made

    # -- showing ------------------------------------------------------------------------

    def show_lining(self, lining: Lining, taken: set[str]) -> None:
        """Show a lining; ``taken`` are the keys a copy must not take."""
        self._taken = taken
        self.own_bar.setVisible(lining.key in self._shelf.catalogue.own_linings)
        if lining == self._lining:
            return
        self._lining = lining
        self.copy_button.setChecked(False)
        self.edit_button.setChecked(False)
        self.alert.say("")
        self.copy_button.setVisible(not lining.is_opening)
        self.facts.setText("" if lining.is_opening else facts_text(lining))
        self.facts.setVisible(bool(self.facts.text()))
        self.cautions.setText("\n".join(f"▲ {text}" for text in self._shelf.cautions(lining)))
        self.cautions.setVisible(bool(self.cautions.text()))
        parts = (lining.note, f"Source: {lining.source}" if lining.source else "")
        self.source.setText("\n".join(part for part in parts if part))
        self.source_button.setVisible(bool(self.source.text()))
        self.source.setVisible(bool(self.source.text()) and self.source_button.isChecked())

    def _on_opened(self, opened: QPushButton, *, on: bool) -> None:
        own = opened is self.edit_button
        other = self.copy_button if own else self.edit_button
        if on and self._lining is not None:
            other.setChecked(False)
            name = self._lining.name
            self.name_line.setText(name if own else f"{name} (own)")
            self.reflectance_box.reset(self._lining.reflectance)
            self.specular_box.reset(self._lining.specular_share)
            self.wrinkle_box.reset(self._lining.wrinkle)
            colour, whole = self._lining.wavebands, self._lining.reflectance
            self.bands_button.setChecked(colour is not None)
            for band, (row, line) in self.band_rows.items():
                row.clear_error()
                known = None if colour is None else colour.reflectance(band, whole)
                line.show_number(known, ALIKE)
            self.save_button.setText("Save changes" if own else "Save and use")
            self.save_button.setAccessibleName(self.save_button.text())
        self._show_rows(shown=on or other.isChecked())
        if on:
            self.name_line.setFocus()
            self.name_line.selectAll()

    def _show_rows(self, *, shown: bool) -> None:
        for row in (self.name_row, self.reflectance_row, self.specular_row, self.wrinkle_row):
            row.set_visible(shown)
        self.bands_button.setVisible(shown)
        self._show_bands()
        self.save_button.setVisible(shown)
        self.alert.say("")

    def _show_bands(self) -> None:
        editing = self.copy_button.isChecked() or self.edit_button.isChecked()
        for row, _ in self.band_rows.values():
            row.set_visible(editing and self.bands_button.isChecked())

    # -- own linings --------------------------------------------------------------------

    def _save(self) -> None:
        if self._lining is None:
            return
        self.take_typed()
        lines = (line for _, line in self.band_rows.values())
        if any(box.is_edited for box in (*self.boxes, *lines)):
            return
        own = self.edit_button.isChecked()
        try:
            old = self._lining
            lining = changed(old, **self._typed(old)) if own else self._own_version(old)
            self._shelf.save(lining)
        except ValueError as error:
            self.alert.say(refusal(error))
        except CatalogueError as error:
            self.alert.say(str(error))
        else:
            self.copy_button.setChecked(False)
            self.edit_button.setChecked(False)
            (self.changed if own else self.copied).emit(lining)

    def _delete(self) -> None:
        if self._lining is not None:
            try:
                self._shelf.delete(self._lining)
            except CatalogueError as error:
                self.alert.say(str(error))

    def _own_version(self, old: Lining) -> Lining:
        typed = self._typed(old)
        return Lining(
            key=self._shelf.own_lining_key(typed["name"], self._taken),
            source=f"Own entry, started from '{old.name}'.",
            cautions=old.cautions,
            note=old.note,
            **typed,
        )

    def _typed(self, old: Lining) -> dict[str, Any]:
        reflectance = self.reflectance_box.value
        # A number of one's own keeps the width of the range it was taken from.
        return {
            "name": self.name_line.text().strip(),
            "reflectance": reflectance,
            "specular_share": self.specular_box.value,
            "wrinkle": self.wrinkle_box.value,
            "low": max(0.0, reflectance - (old.reflectance - old.low)),
            "high": min(1.0, reflectance + (old.high - old.reflectance)),
            "wavebands": self._typed_bands(reflectance),
        }

    def _typed_bands(self, reflectance: float) -> Wavebands | None:
        """The colour typed; a band left empty returns what all of them do together."""
        typed = {band: line.number for band, (_, line) in self.band_rows.items()}
        if all(number is None for number in typed.values()):
            return None
        filled = {band: reflectance if n is None else n for band, n in typed.items()}
        return Wavebands(**filled)


class LinedPanel(FieldPanel):
    """A panel of something that carries a lining: what is known of it stands at the end."""

    def add_lining(self, label: str, name: str, explanation: str = "", **rest: Any) -> Row:
        """Offer the linings there are; ``rest`` is for the chooser: what one would bring."""
        self.chooser = LiningChooser(self.workplace.shelf, name, **rest)
        self.chooser.chosen.connect(self.line_with)
        return self.add_row(label, self.chooser, explanation, wide=True)

    def add_details(self, heading: str) -> None:
        """Close the panel with the details of the lining shown."""
        self.add_heading(heading)
        self.details = self.add_wide(LiningDetails(self.workplace))
        self.end()
        self.details.copied.connect(self.line_with)
        self.details.changed.connect(self.change_lining)
        self.workplace.shelf.changed.connect(lambda: self.refresh(self.plan))

    def show_details(self, plan: Plan, key: str) -> None:
        """Tell of the lining of that key."""
        self.details.show_lining(plan.lining(key), {lining.key for lining in plan.linings})

    def line_with(self, lining: Lining) -> None:
        """Give what is selected this lining."""
        raise NotImplementedError


def facts_text(lining: Lining) -> str:
    """Reflectance with its range, and how much of it is mirror-like and how sharp."""
    text = (
        f"Returns {percent(lining.reflectance)} of the light "
        f"({percent(lining.low)} to {percent(lining.high)}), "
        f"{percent(lining.specular_share)} of that as from a mirror"
    )
    if lining.wavebands is not None:
        text += f" ({_by_colour(lining.wavebands, lining.reflectance)})"
    if not lining.specular_share:
        return f"{text}."
    if lining.wrinkle < 0.02:
        return f"{text}, flat and sharp."
    creased = "slightly wavy" if lining.wrinkle < 0.15 else "creased"
    return f"{text}, {creased} (wrinkle {lining.wrinkle:.2f})."


def _by_colour(colour: Wavebands, whole: float) -> str:
    return ", ".join(
        f"{inside(words)} {percent(colour.reflectance(band, whole))}"
        for band, words in BAND_WORDS.items()
    )
