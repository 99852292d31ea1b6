"""The one numeric field used everywhere: a number with a unit, typed freely.

It shows a value of the plan and asks for another one; it never changes a value by being
looked at, left, or shown in another unit of length.
"""

from __future__ import annotations

import math
import re
from dataclasses import dataclass, replace
from typing import Any, Final, get_args

from PySide6.QtCore import QEvent, QSize, Qt, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent, QWheelEvent
from PySide6.QtWidgets import QAbstractSpinBox, QSizePolicy, QWidget

from planner.app.undo_keys import asks_undo_or_redo
from planner.plan import fields
from planner.units import LengthUnit, format_length, format_number, parse_length

_PLAIN_NUMBER = re.compile(r"[+\-−]?(\d+([.,]\d*)?|[.,]\d+)")


@dataclass(frozen=True)
class Quantity:
    """A kind of number: how it is shown, its step and its bounds.

    The value is what the plan holds; the number shown is ``value / factor`` with
    ``suffix``. Lengths (metres) ignore both and follow the unit chosen for display.
    """

    suffix: str = ""
    decimals: int = 1
    step: float = 1.0
    factor: float = 1.0
    minimum: float = -math.inf
    maximum: float = math.inf
    is_length: bool = False

    def within(self, minimum: float, maximum: float) -> Quantity:
        """The same quantity with other bounds."""
        return replace(self, minimum=minimum, maximum=maximum)

    def step_in(self, unit: LengthUnit) -> float:
        """What one press of an arrow key adds."""
        return unit.snap if self.is_length else self.step

    def text(self, value: float, unit: LengthUnit) -> str:
        """The value as it stands in the field."""
        if self.is_length:
            return format_length(value, unit)
        number = format_number(value / self.factor, self.decimals)
        return f"{number} {self.suffix}" if self.suffix else number

    def parse(self, text: str, unit: LengthUnit) -> float:
        """Read what was typed.

        Raises
        ------
        ValueError
            If it is not a number of this kind, or lies outside the bounds.
        """
        value = parse_length(text, unit) if self.is_length else self._plain(text, unit)
        if not self.minimum - 1e-9 <= value <= self.maximum + 1e-9:
            raise ValueError(self.range_text(unit))
        return min(max(value, self.minimum), self.maximum)

    def range_text(self, unit: LengthUnit) -> str:
        """What would be right, in a sentence."""
        low, high = self.text(self.minimum, unit), self.text(self.maximum, unit)
        if math.isinf(self.maximum):
            return f"Write a value of at least {low}."
        return f"Write a value from {low} to {high}."

    def _plain(self, text: str, unit: LengthUnit) -> float:
        number = text.strip().removesuffix(self.suffix).strip()
        if not _PLAIN_NUMBER.fullmatch(number):
            example = self.text(max(self.step, 0.0 if math.isinf(self.minimum) else 1.0), unit)
            raise ValueError(f"'{text.strip()}' is not a number; write for example {example}.")
        return float(number.replace(",", ".").replace("−", "-")) * self.factor


def _bounded(quantity: Quantity, annotation: Any) -> Quantity:
    """The bounds the plan's own field type states, so that they stand in one place."""
    low, high = -math.inf, math.inf
    for rule in get_args(annotation)[1].metadata:
        low = getattr(rule, "ge", getattr(rule, "gt", low))
        high = getattr(rule, "le", high)
    return quantity.within(low, high)


_LENGTH: Final = Quantity(is_length=True)
POSITION: Final = _bounded(_LENGTH, fields.Coordinate)
EXTENT: Final = _LENGTH.within(0.01, 2 * fields.MAX_EXTENT_M)
SPACE_HEIGHT: Final = _bounded(_LENGTH, fields.SpaceHeight)
HEIGHT: Final = _bounded(_LENGTH, fields.Height)
HANGING_HEIGHT: Final = _bounded(_LENGTH, fields.HangingHeight)
BODY_LENGTH: Final = _bounded(_LENGTH, fields.BodyLength)
ANGLE: Final = _bounded(Quantity("°", decimals=1, step=5.0), fields.AngleDeg)
PERCENT: Final = _bounded(Quantity("%", decimals=1, step=5.0), fields.Percent)
SHARE: Final = _bounded(Quantity("%", decimals=1, step=0.01, factor=0.01), fields.Fraction)
PHOTON_FLUX: Final = _bounded(Quantity("µmol/s", decimals=1, step=5.0), fields.PhotonFlux)
WATTS: Final = _bounded(Quantity("W", decimals=1, step=1.0), fields.Watts)
HOURS: Final = _bounded(Quantity("h", decimals=2, step=0.5), fields.Hours)
PPFD: Final = _bounded(Quantity("µmol/m²/s", decimals=0, step=10.0), fields.Ppfd)
DLI: Final = _bounded(Quantity("mol/m²/d", decimals=1, step=0.5), fields.Dli)
BEAM_ANGLE: Final = Quantity("°", decimals=1, step=5.0).within(10.0, 179.0)
WRINKLE: Final = _bounded(Quantity("", decimals=2, step=0.05), fields.Fraction)
HOUSING: Final = _LENGTH.within(0.0, 0.5)
COUNT: Final = Quantity("", decimals=0, step=1.0).within(1.0, 24.0)


class QuantityBox(QAbstractSpinBox):
    """A field for one quantity.

    Signals: ``committed(value)`` when a new value was typed and Enter pressed or the
    field left; ``stepped(value)`` for each press of an arrow key or turn of the wheel;
    ``refused(sentence)`` when what was typed cannot be read; ``reverted`` after Esc.
    The plan's value comes in through ``set_value`` and is the only thing shown.
    """

    committed = Signal(float)
    stepped = Signal(float)
    refused = Signal(str)
    reverted = Signal()

    def __init__(self, quantity: Quantity, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._quantity = quantity
        self._unit = LengthUnit.CM
        self._value = 0.0
        self._shown = ""
        self._refused_text: str | None = None
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName(name)
        self.setAlignment(Qt.AlignmentFlag.AlignRight)
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)
        self._describe()
        self._show()

    @property
    def value(self) -> float:
        """The plan's value, in the plan's unit."""
        return self._value

    @property
    def quantity(self) -> Quantity:
        """What the field holds."""
        return self._quantity

    @property
    def is_edited(self) -> bool:
        """Whether the text was changed and not yet taken over."""
        return self.lineEdit().text() != self._shown

    def set_value(self, value: float) -> None:
        """Show the plan's value; a text being typed stays while the value is the same."""
        if value == self._value and self.is_edited:
            return
        self.reset(value)

    def reset(self, value: float) -> None:
        """Show the plan's value and drop whatever was typed."""
        self._value = value
        self._show()

    def set_unit(self, unit: LengthUnit) -> None:
        """Show lengths in another unit; the value stays as it is."""
        if unit is not self._unit:
            self._unit = unit
            self._describe()
            self._show()

    def set_quantity(self, quantity: Quantity) -> None:
        """Take other bounds, or another kind of number."""
        if quantity != self._quantity:
            self._quantity = quantity
            self._describe()
            if not self.is_edited:
                self._show()

    def commit(self) -> None:
        """Ask for the value typed, if it differs from the one shown."""
        text = self.lineEdit().text()
        if text in {self._shown, self._refused_text}:
            return
        self._refused_text = text
        try:
            value = self._quantity.parse(text, self._unit)
        except ValueError as error:
            self.refused.emit(str(error))
        else:
            self.committed.emit(value)

    def revert(self) -> None:
        """Go back to the plan's value."""
        self._show()
        self.reverted.emit()

    def _describe(self) -> None:
        self.setAccessibleDescription(self._quantity.range_text(self._unit))

    def _show(self) -> None:
        self._refused_text = None
        self._shown = self._quantity.text(self._value, self._unit)
        self.lineEdit().setText(self._shown)
        if self.hasFocus():
            self.selectAll()

    # -- Qt ---------------------------------------------------------------------------

    def stepBy(self, steps: int) -> None:
        start = self._value
        if self.is_edited:
            try:
                start = self._quantity.parse(self.lineEdit().text(), self._unit)
            except ValueError as error:
                self.refused.emit(str(error))
                return
        step = self._quantity.step_in(self._unit)
        # Whole steps: an odd value goes to the next round one, as on a ruler.
        position = start / step
        rounded = round(position)
        if abs(position - rounded) > 1e-6:
            rounded = math.floor(position) if steps > 0 else math.ceil(position)
        value = round((rounded + steps) * step, 9)
        value = min(max(value, self._quantity.minimum), self._quantity.maximum)
        if value != self._value:
            self._refused_text = None
            self.stepped.emit(value)

    def stepEnabled(self) -> QAbstractSpinBox.StepEnabledFlag:
        flags = QAbstractSpinBox.StepEnabledFlag.StepNone
        if self._value < self._quantity.maximum:
            flags |= QAbstractSpinBox.StepEnabledFlag.StepUpEnabled
        if self._value > self._quantity.minimum:
            flags |= QAbstractSpinBox.StepEnabledFlag.StepDownEnabled
        return flags

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            self.commit()
            self.selectAll()
            event.accept()
        elif event.key() == Qt.Key.Key_Escape and self.is_edited:
            self.revert()
            event.accept()
        else:
            super().keyPressEvent(event)

    def focusOutEvent(self, event: QFocusEvent) -> None:
        super().focusOutEvent(event)
        if event.reason() != Qt.FocusReason.PopupFocusReason:
            self.commit()

    def wheelEvent(self, event: QWheelEvent) -> None:
        if self.hasFocus():
            super().wheelEvent(event)
        else:
            event.ignore()

    def event(self, event: QEvent) -> bool:
        # An untouched field leaves undo and redo to the plan.
        if not self.is_edited and asks_undo_or_redo(event):
            event.ignore()
            return False
        return super().event(event)

    def sizeHint(self) -> QSize:
        sample = "0000.0 " + (self._quantity.suffix or "cm")
        width = self.fontMetrics().horizontalAdvance(sample) + 40
        return QSize(width, super().sizeHint().height())

    def minimumSizeHint(self) -> QSize:
        sample = "000.0 " + (self._quantity.suffix or "cm")[:4]
        arrows = self.buttonSymbols() != QAbstractSpinBox.ButtonSymbols.NoButtons
        width = self.fontMetrics().horizontalAdvance(sample) + (30 if arrows else 12)
        return QSize(width, super().minimumSizeHint().height())
