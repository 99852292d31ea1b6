"""What is known of a lining, its cautions, and a copy of it with one's own numbers."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QLineEdit, QWidget

from planner.app.fields.form import Form, NoteLabel, button, fold_button
from planner.app.fields.shelf import Shelf
from planner.app.fields.wording import explain
from planner.app.quantity_box import SHARE, QuantityBox
from planner.catalogue.library import CatalogueError
from planner.plan.lining import Lining

REFLECTANCE_HELP: Final = (
    "Of the light that falls on the lining, the part that comes back, over 400-700 nm and all "
    "directions."
)
SPECULAR_HELP: Final = (
    "Of the light that comes back, the part that leaves as from a mirror. The rest is scattered "
    "evenly, as from matt paint."
)


class LiningDetails(Form):
    """Numbers, source and cautions of one lining; ``copied`` carries one's own version."""

    copied = Signal(object)

    def __init__(self, shelf: Shelf, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._shelf = shelf
        self._lining: Lining | None = None
        self._taken: set[str] = set()
        self.facts = NoteLabel()
        self.cautions = NoteLabel()
        self.source = NoteLabel()
        self.source_button = fold_button("Where the numbers come from")
        for widget in (self.facts, self.cautions, self.source_button, self.source):
            self.add_wide(widget)
        self.source.hide()
        self.source_button.toggled.connect(self.source.setVisible)
        self.cautions.setForegroundRole(self.foregroundRole())
        self.copy_button = button(
            "Edit a copy …", "Makes a lining of your own from this one, kept in your library."
        )
        self.copy_button.setCheckable(True)
        self.copy_button.toggled.connect(self._on_copy_toggled)
        self.add_wide(self.copy_button)
        self.name_line = QLineEdit()
        self.reflectance_box = QuantityBox(SHARE, "Reflectance of the copy")
        self.specular_box = QuantityBox(SHARE, "Mirror share of the copy")
        self.save_button = button("Save and use", "Keeps the lining in your library and uses it.")
        self._copy_rows = [
            self.add_row("Name", self.name_line),
            self.add_row("Reflectance", self.reflectance_box, REFLECTANCE_HELP),
            self.add_row("Mirror share", self.specular_box, SPECULAR_HELP),
        ]
        for row, box in zip(
            self._copy_rows[1:], (self.reflectance_box, self.specular_box), strict=True
        ):
            box.committed.connect(box.reset)
            box.stepped.connect(box.reset)
            box.committed.connect(row.clear_error)
            box.refused.connect(row.show_error)
            box.reverted.connect(row.clear_error)
        self.add_wide(self.save_button)
        self.alert = self.add_alert()
        self.save_button.clicked.connect(self._save)
        self._show_copy_rows(shown=False)

    def show_lining(self, lining: Lining, taken: set[str]) -> None:
        """Show a lining; ``taken`` are the keys a copy must not take."""
        self._taken = taken
        if lining == self._lining:
            return
        self._lining = lining
        self.copy_button.setChecked(False)
        self.copy_button.setVisible(not lining.is_opening)
        self.facts.setText("" if lining.is_opening else facts_text(lining))
        self.facts.setVisible(bool(self.facts.text()))
        self.cautions.setText("\n".join(f"▲ {text}" for text in self._shelf.cautions(lining)))
        self.cautions.setVisible(bool(self.cautions.text()))
        parts = (lining.note, f"Source: {lining.source}" if lining.source else "")
        self.source.setText("\n".join(part for part in parts if part))
        self.source_button.setVisible(bool(self.source.text()))
        self.source.setVisible(bool(self.source.text()) and self.source_button.isChecked())

    def _on_copy_toggled(self, shown: bool) -> None:
        if shown and self._lining is not None:
            self.name_line.setText(f"{self._lining.name} (own)")
            self.reflectance_box.reset(self._lining.reflectance)
            self.specular_box.reset(self._lining.specular_share)
        self._show_copy_rows(shown=shown)
        if shown:
            self.name_line.setFocus()
            self.name_line.selectAll()

    def _show_copy_rows(self, *, shown: bool) -> None:
        for row in self._copy_rows:
            row.set_visible(shown)
        self.save_button.setVisible(shown)
        self.alert.say("")

    def _save(self) -> None:
        if self._lining is None:
            return
        self.reflectance_box.commit()
        self.specular_box.commit()
        if self.reflectance_box.is_edited or self.specular_box.is_edited:
            return
        try:
            lining = self._own_version(self._lining)
            self._shelf.save_lining(lining)
        except ValueError as error:
            self.alert.say(explain(error))
        except CatalogueError as error:
            self.alert.say(str(error))
        else:
            self.copy_button.setChecked(False)
            self.copied.emit(lining)

    def _own_version(self, old: Lining) -> Lining:
        reflectance = self.reflectance_box.value
        name = self.name_line.text().strip()
        # A number of one's own keeps the width of the range it was taken from.
        return Lining(
            key=self._shelf.own_lining_key(name, self._taken),
            name=name,
            reflectance=reflectance,
            specular_share=self.specular_box.value,
            low=max(0.0, reflectance - (old.reflectance - old.low)),
            high=min(1.0, reflectance + (old.high - old.reflectance)),
            source=f"Own entry, started from '{old.name}'.",
            cautions=old.cautions,
            note=old.note,
        )


def facts_text(lining: Lining) -> str:
    """Reflectance with its range, and how much of it is mirror-like."""
    return (
        f"Returns {lining.reflectance * 100:.0f} % of the light "
        f"({lining.low * 100:.0f} to {lining.high * 100:.0f} %), "
        f"{lining.specular_share * 100:.0f} % of that as from a mirror."
    )
