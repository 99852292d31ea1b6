"""The settings in one small dialog; every choice takes effect at once and is remembered."""

from __future__ import annotations

from typing import Any

from PySide6.QtWidgets import QCheckBox, QDialog, QDialogButtonBox, QFormLayout, QWidget

from planner.app import theme
from planner.app.display import COLOUR_MAPS, MAP_CELLS, DisplayState
from planner.app.fields.still_combo import StillCombo
from planner.app.theme import Theme
from planner.app.view_choices import ViewChoices
from planner.units import LengthUnit

_UNITS = ((LengthUnit.CM, "Centimetres"), (LengthUnit.INCH, "Inches"))
_THEMES = ((Theme.SYSTEM, "As the system"), (Theme.LIGHT, "Light"), (Theme.DARK, "Dark"))


class SettingsDialog(QDialog):
    """How things are shown. Nothing of a plan is changed here, so there is nothing to undo."""

    def __init__(self, choices: ViewChoices, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle("Settings")
        self._choices = choices
        self.unit = _combo("Lengths in", _UNITS)
        self.colour_map = _combo("Colour map", [(name, name.capitalize()) for name in COLOUR_MAPS])
        cells = sorted({*MAP_CELLS, choices.display.state.cells})
        self.cells = _combo("Map cells", [(count, f"{count} x {count}") for count in cells])
        self.theme = _combo("Theme", _THEMES)
        self.contours = QCheckBox("Contour lines")
        self.band_wash = QCheckBox("Mark the target band")
        self._arrange()
        self._show(choices.display.state)
        self.theme.setCurrentIndex(self.theme.findData(choices.theme))
        self._connect()

    def _arrange(self) -> None:
        layout = QFormLayout(self)
        layout.setContentsMargins(theme.WIDE, theme.WIDE, theme.WIDE, theme.WIDE)
        layout.setSpacing(theme.RHYTHM)
        for combo in (self.unit, self.colour_map, self.cells, self.theme):
            layout.addRow(combo.accessibleName(), combo)
        layout.addRow("", self.contours)
        layout.addRow("", self.band_wash)
        buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Close)
        buttons.rejected.connect(self.accept)
        layout.addRow(buttons)

    def _connect(self) -> None:
        for name, combo in (
            ("unit", self.unit), ("colour_map", self.colour_map), ("cells", self.cells)
        ):  # fmt: skip
            combo.activated.connect(
                lambda _row, name=name, combo=combo: self._update(name, combo.currentData())
            )
        self.theme.activated.connect(
            lambda _row: self._choices.choose_theme(Theme(self.theme.currentData()))
        )
        self.contours.toggled.connect(lambda on: self._update("contours", on))
        self.band_wash.toggled.connect(lambda on: self._update("band_wash", on))
        self._choices.display.changed.connect(self._show)

    def _update(self, name: str, value: Any) -> None:
        # Qt hands a member of a StrEnum back as a plain text.
        value = LengthUnit(value) if name == "unit" else value
        self._choices.display.update(**{name: value})

    def _show(self, state: DisplayState) -> None:
        self.unit.setCurrentIndex(self.unit.findData(state.unit))
        self.colour_map.setCurrentIndex(self.colour_map.findData(state.colour_map))
        self.cells.setCurrentIndex(self.cells.findData(state.cells))
        self.contours.setChecked(state.contours)
        self.band_wash.setChecked(state.band_wash)


def _combo(name: str, entries: Any) -> StillCombo:
    made = StillCombo()
    made.setAccessibleName(name)
    for value, text in entries:
        made.addItem(text, value)
    return made
