"""Choosing what a surface carries, from the plan's own linings and the catalogue."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QWidget

from planner.app.fields.shelf import Shelf
from planner.app.fields.still_combo import StillCombo
from planner.plan.lining import OPENING, Lining
from planner.plan.plan import Plan


class LiningChooser(StillCombo):
    """A list of linings; ``chosen`` carries the lining asked for."""

    chosen = Signal(object)

    def __init__(self, shelf: Shelf, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._shelf = shelf
        self._offered: tuple[Lining, ...] = ()
        self.setAccessibleName(name)
        self.activated.connect(self._on_activated)

    def show_key(self, plan: Plan, key: str) -> None:
        """Offer the plan's and the catalogue's linings, with this one chosen."""
        offered = offered_linings(plan, self._shelf)
        if offered != self._offered:
            self._offered = offered
            self.clear()
            for lining in offered:
                self.addItem(lining_title(lining), lining.key)
                tip = f"<p>{lining.name}</p>"
                self.setItemData(self.count() - 1, tip, Qt.ItemDataRole.ToolTipRole)
            self.widen_list()
        self.setCurrentIndex(self.findData(key))

    def _on_activated(self, line: int) -> None:
        self.chosen.emit(self._offered[line])


def offered_linings(plan: Plan, shelf: Shelf) -> tuple[Lining, ...]:
    """All that can be chosen: the plan's own copy stands for a catalogue entry of its key."""
    by_key = {lining.key: lining for lining in (*shelf.linings, *plan.linings)}
    return (OPENING, *by_key.values())


def lining_title(lining: Lining) -> str:
    """Reflectance and name, as listed; the number leads, so that it is never cut off."""
    if lining.is_opening:
        return lining.name
    return f"{lining.reflectance * 100:.0f} %  {lining.name}"
