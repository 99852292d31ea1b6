"""The one numeric field used everywhere: a number with a unit, typed freely.

It shows a value of the plan and asks for another one; it never changes a value by being
looked at, left, or shown in another unit of length.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QSize, Qt, Signal
from PySide6.QtGui import (
    QFocusEvent,
    QGuiApplication,
    QKeyEvent,
    QKeySequence,
    QResizeEvent,
    QWheelEvent,
)
from PySide6.QtWidgets import QAbstractSpinBox, QSizePolicy, QWidget

from planner.plan.quantity import Quantity
from planner.units import LengthUnit, capital, has_fraction, in_unit

if TYPE_CHECKING:
    _Typed = QWidget
else:
    _Typed = object


class TypedField(_Typed):
    """What fields for numbers and for texts share: when what was typed is asked for.

    Mixed in before the Qt class. Enter and leaving ask, Esc goes back, and an untouched field
    leaves undo and redo to the plan.
    """

    @property
    def is_edited(self) -> bool:
        """Whether the text was changed and not yet taken over."""
        raise NotImplementedError

    def commit(self, *, again: bool = False) -> None:
        """Ask for what was typed; what was refused before is asked for only ``again``."""
        raise NotImplementedError

    def revert(self) -> None:
        """Go back to what the plan says."""
        raise NotImplementedError

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            self.commit(again=True)
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

    def event(self, event: QEvent) -> bool:
        if not self.is_edited and asks_undo_or_redo(event):
            event.ignore()
            return False
        return super().event(event)


class QuantityBox(TypedField, QAbstractSpinBox):
    """A field for one quantity.

    Signals: ``committed(value)`` when a new value was typed and Enter pressed or the
    field left; ``stepped(value)`` for each press of an arrow key or turn of the wheel;
    ``refused(sentence)`` when what was typed cannot be read; ``reverted`` after Esc.
    The plan's value comes in through ``set_value`` and is the only thing shown; of several things
    both ends of theirs, which no arrow key steps. What speaks of a lamp is no number: pasting it
    is left to the window.
    """

    committed = Signal(float)
    stepped = Signal(float)
    refused = Signal(str)
    reverted = Signal()

    def __init__(self, quantity: Quantity, name: str) -> None:
        super().__init__()
        self._quantity = quantity
        self._unit = LengthUnit.CM
        self._value = 0.0
        self._ends: tuple[float, float] | None = None
        self._shown = ""
        self._refused_text: str | None = None
        self.read_as = ""
        """How what was typed last was read, where that does not go without saying."""
        # Who types fractions of an inch reads them there too.
        self._fractions = False
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

    def event(self, event: QEvent) -> bool:
        if pastes_a_lamp(event):
            event.ignore()
            return False
        return super().event(event)

    @property
    def differs(self) -> bool:
        """Whether several things are shown that have other values."""
        return self._ends is not None

    def set_value(self, value: float, others: Iterable[float] = ()) -> None:
        """Show the plan's value; a text being typed stays while the value is the same."""
        if value == self._value and self.is_edited:
            return
        self.reset(value, others)

    def reset(self, value: float, others: Iterable[float] = ()) -> None:
        """Show the plan's value and drop whatever was typed; ``others`` are shown with it."""
        self._value = value
        low, high = min((value, *others)), max((value, *others))
        self._ends = (low, high) if high - low > 1e-9 else None
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

    @property
    def is_refused(self) -> bool:
        """Whether the text typed was asked for and not taken."""
        return self._refused_text is not None and self.lineEdit().text() == self._refused_text

    def commit(self, *, again: bool = False) -> None:
        """Ask for the value typed, if it differs from the one shown.

        What was refused is asked for only ``again``.
        """
        text = self.lineEdit().text()
        if text == self._shown or (text == self._refused_text and not again):
            return
        if has_fraction(text):
            self._fractions = True
        self._refused_text, self.read_as = text, self._quantity.read_as(text)
        try:
            value = self._quantity.parse(text, self._unit)
        except ValueError as error:
            self.refused.emit(self._sentence(error))
        else:
            self.committed.emit(value)

    def revert(self) -> None:
        """Go back to the plan's value."""
        self._show()
        self.reverted.emit()

    def _sentence(self, error: ValueError) -> str:
        text = in_unit(str(error), self._unit)
        return capital(text)

    def _describe(self) -> None:
        self.setAccessibleDescription(self._quantity.range_text(self._unit))

    def _show(self) -> None:
        self._refused_text = None
        if self._ends is None:
            self._shown = self._quantity.text(self._value, self._unit, fractions=self._fractions)
        else:
            self._shown = self._quantity.span_text(*self._ends, self._unit)
            if self.fontMetrics().horizontalAdvance(self._shown) > self.lineEdit().width() - 8:
                # Both ends are wanted more than what stands behind the values of one alone.
                bare = self._shown.removesuffix(self._quantity.unit_in(self._unit))
                self._shown = bare.strip()
        self.lineEdit().setText(self._shown)
        if self.hasFocus():
            self.selectAll()

    # -- Qt ---------------------------------------------------------------------------

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        if self.differs and not self.is_edited:
            self._show()

    def stepBy(self, steps: int) -> None:
        start = self._value
        if self.differs and not self.is_edited:
            return
        if self.is_edited:
            try:
                start = self._quantity.parse(self.lineEdit().text(), self._unit)
            except ValueError as error:
                self.refused.emit(self._sentence(error))
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
        if self.differs:
            return flags
        if self._value < self._quantity.maximum:
            flags |= QAbstractSpinBox.StepEnabledFlag.StepUpEnabled
        if self._value > self._quantity.minimum:
            flags |= QAbstractSpinBox.StepEnabledFlag.StepDownEnabled
        return flags

    def keyPressEvent(self, event: QKeyEvent) -> None:
        super().keyPressEvent(event)
        if event.key() in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            self.selectAll()

    def wheelEvent(self, event: QWheelEvent) -> None:
        if self.hasFocus():
            super().wheelEvent(event)
        else:
            event.ignore()

    def sizeHint(self) -> QSize:
        sample = "0000.0 " + (self._quantity.suffix or "cm")
        width = self.fontMetrics().horizontalAdvance(sample) + 40
        return QSize(width, super().sizeHint().height())

    def minimumSizeHint(self) -> QSize:
        sample = "000.0 " + (self._quantity.suffix or "cm")[:4]
        arrows = self.buttonSymbols() != QAbstractSpinBox.ButtonSymbols.NoButtons
        width = self.fontMetrics().horizontalAdvance(sample) + (30 if arrows else 12)
        return QSize(width, super().minimumSizeHint().height())


# -- keys that belong to the window rather than to a field -------------------------------


def pastes_a_lamp(event: QEvent) -> bool:
    """Whether a field is offered the key of paste while a lamp's data are to be pasted."""
    if not (
        event.type() == QEvent.Type.ShortcutOverride
        and isinstance(event, QKeyEvent)
        and event.matches(QKeySequence.StandardKey.Paste)
    ):
        return False
    from planner.catalogue.data_sheet import says_lamp  # noqa: PLC0415 - when pasted

    return says_lamp(QGuiApplication.clipboard().text())


def asks_undo_or_redo(event: QEvent) -> bool:
    """Whether a field is offered the keys of undo or redo before the menus are."""
    return (
        event.type() == QEvent.Type.ShortcutOverride
        and isinstance(event, QKeyEvent)
        and (
            event.matches(QKeySequence.StandardKey.Undo)
            or event.matches(QKeySequence.StandardKey.Redo)
        )
    )
