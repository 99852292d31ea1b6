"""A number that may be left out: an empty line means 'as in the plan' or 'not noted'."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QWidget

from planner.app.fields.text_line import TextLine
from planner.app.quantity_box import Quantity
from planner.units import LengthUnit


class OptionalLine(TextLine):
    """Signals: ``entered(float or None)`` for a new value, ``refused(sentence)``."""

    entered = Signal(object)
    refused = Signal(str)

    def __init__(self, quantity: Quantity, name: str, parent: QWidget | None = None) -> None:
        super().__init__(name, parent)
        self._quantity, self._unit = quantity, LengthUnit.CM
        self._number: float | None = None
        self.committed.connect(self._take)

    def show_number(self, number: float | None, without: str) -> None:
        """Show a value; ``without`` stands in the empty line."""
        self._number = number
        self.setPlaceholderText(without)
        self.set_value("" if number is None else self._quantity.text(number, self._unit))

    def set_unit(self, unit: LengthUnit) -> None:
        """Show lengths in another unit; the value stays as it is."""
        if unit is not self._unit:
            self._unit = unit
            self.reset("" if self._number is None else self._quantity.text(self._number, unit))

    def _take(self, text: str) -> None:
        if not text:
            self.entered.emit(None)
            return
        try:
            number = self._quantity.parse(text, self._unit)
        except ValueError as error:
            self.refused.emit(str(error))
        else:
            self.entered.emit(number)
